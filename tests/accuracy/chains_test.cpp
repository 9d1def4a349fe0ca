// Whole chains against a sum in 192 bits: every stage's change computed anew from the header's laws, nothing rounded
// before the end.
#include "accuracy/real.hpp"
#include "chain/random_chain.hpp"

#include <gtest/gtest.h>

namespace {

using accuracy::Real;

constexpr double allowed_db = 1e-12; // over a whole chain

struct Row {
    Real mhz, db;
};

std::vector<Row> rows_of(const lvb_stage &stage) {
    std::vector<Row> rows;
    if (stage.cable_table != nullptr) {
        for (std::uint32_t i = 0; i < stage.cable_table->row_count; ++i)
            rows.push_back({stage.cable_table->frequency_mhz[i], stage.cable_table->attenuation_db_per_100m[i]});
        return rows;
    }
    auto row = proof::sized<lvb_cable_row>();
    for (std::uint32_t i = 0; lvb_describe_cable_row(stage.cable_type, i, &row, nullptr) == LVB_OK; ++i)
        rows.push_back({row.frequency_mhz, row.attenuation_db_per_100m});
    return rows;
}

// The law of lvb_cable_table: c sqrt(f) + d f through both neighbours, the conductor part c warmed; where c or d would
// be negative a power law, warmed as a whole.
Real attenuation(const std::vector<Row> &rows, const Real &mhz, const Real &temperature_degc) {
    const Real warm = sqrt(1.0 + Real::decimal("0.00393") * (temperature_degc - 20.0));
    std::size_t i = 0;
    while (i + 2 < rows.size() && !(mhz < rows[i + 1].mhz)) ++i;
    const Row &low = rows[i], &high = rows[i + 1];
    const Real det = sqrt(low.mhz) * high.mhz - sqrt(high.mhz) * low.mhz; // Cramer's rule
    const Real c = (low.db * high.mhz - high.db * low.mhz) / det;
    const Real d = (sqrt(low.mhz) * high.db - sqrt(high.mhz) * low.db) / det;
    if (!(c < 0.0) && !(d < 0.0)) return c * sqrt(mhz) * warm + d * mhz;
    const Real exponent = log10(high.db / low.db) / log10(high.mhz / low.mhz);
    return low.db * ten_to(exponent * log10(mhz / low.mhz)) * warm;
}

Real cable_loss(const lvb_stage &stage, const lvb_link &link) {
    const Real temperature = link.stated & LVB_STATED_TEMPERATURE ? link.temperature_degc : 20.0;
    const Real each =
        stage.connector_loss_db > 0.0 ? Real(stage.connector_loss_db) : sqrt(Real(link.frequency_mhz) / 1000.0) / 20.0;
    return attenuation(rows_of(stage), link.frequency_mhz, temperature) * Real(stage.length_m) / 100.0 +
           Real(stage.connector_count) * each;
}

Real gain(const lvb_stage &stage, double mhz) {
    if (stage.gain_table == nullptr) return stage.gain_db;
    const lvb_gain_table &table = *stage.gain_table;
    std::uint32_t i = 1;
    while (i + 1 < table.row_count && mhz > table.frequency_mhz[i]) ++i;
    const Real part =
        (Real(mhz) - table.frequency_mhz[i - 1]) / (Real(table.frequency_mhz[i]) - table.frequency_mhz[i - 1]);
    return table.gain_db[i - 1] + part * (Real(table.gain_db[i]) - table.gain_db[i - 1]);
}

Real change(const lvb_stage &stage, const lvb_link &link, double distance_m, bool far_end) {
    if (stage.kind == LVB_KIND_ALLOWANCE && !far_end) return 0.0;
    if (stage.cable_type != 0 || stage.cable_table != nullptr) return -cable_loss(stage, link);
    const Real own = gain(stage, link.frequency_mhz);
    if (stage.kind == LVB_KIND_SOURCE) return own + Real(stage.level_dbm);
    if (stage.kind != LVB_KIND_AIR) return own;
    // ITU-R P.525: 20 log10(4 pi d f / c)
    return own - 20.0 * log10(4.0 * Real::pi() * distance_m * link.frequency_mhz / Real::decimal("299.792458"));
}

double worst_of(proof::Chain &chain) {
    double worst = 0.0;
    for (const bool far_end : {true, false}) {
        const double near_m = chain.link.near_distance_m;
        const double distance = far_end || near_m == 0.0 ? chain.link.far_distance_m : near_m;
        Real sum = 0.0;
        for (std::size_t i = 0; i < chain.stages.size(); ++i) {
            sum = sum + change(chain.stages[i], chain.link, distance, far_end);
            const double level = far_end ? chain.levels[i].far_level_dbm : chain.levels[i].near_level_dbm;
            worst = std::fmax(worst, abs(Real(level) - sum).rounded());
        }
    }
    return worst;
}

TEST(Chains, AtRandomLieWithinAPicodecibel) {
    proof::Random random(71);
    double worst = 0.0;
    for (int i = 0; i < 4000; ++i) {
        proof::Lent lent;
        proof::Chain chain = proof::ChainMaker(random, lent, proof::Lending::tables).make();
        ASSERT_EQ(chain.compute(), LVB_OK);
        worst = std::fmax(worst, worst_of(chain));
        ASSERT_LE(worst, allowed_db) << "chain " << i;
    }
    RecordProperty("worst_db", std::to_string(worst * 1e12) + "e-12");
    EXPECT_GT(worst, 0.0); // the sum in 192 bits is not the library's own
}

// At every type of the catalogue, over its usable frequencies.
TEST(Chains, WithEveryCableOfTheCatalogue) {
    proof::Random random(72);
    for (std::int32_t type = 1; type <= static_cast<std::int32_t>(lvb_cable_type_count()); ++type) {
        auto info = proof::sized<lvb_cable_info>();
        ASSERT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
        for (int i = 0; i < 200; ++i) {
            const double mhz = std::exp(random.uniform(std::log(std::fmax(0.11, info.usable_lowest_mhz * 1.01)),
                                                       std::log(info.usable_highest_mhz * 0.99)));
            proof::Chain chain({proof::source(10.0), proof::cable(type, random.log_uniform(-1.0, 2.0), 2)}, mhz);
            chain.link.stated = LVB_STATED_TEMPERATURE;
            chain.link.temperature_degc = random.uniform(-40.0, 80.0);
            if (chain.compute() != LVB_OK) continue; // so lossy that the level leaves its range
            EXPECT_LE(worst_of(chain), allowed_db) << info.name << " at " << mhz << " MHz";
        }
    }
}

} // namespace
