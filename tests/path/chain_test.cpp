// A path in a chain: the air takes what lvb_compute_path_loss gives, at both ends of the walk.
#include "path/paths.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace proof;

Chain chain_over(Way &way, double far_m, double near_m, double mhz = 900.0) {
    Chain chain(
        {source(15.0), antenna(2.0), air(), stage(LVB_KIND_ALLOWANCE, -10.0), antenna(3.0), receiver(-95.0, -20.0)},
        mhz, far_m, near_m);
    chain.stages[2].path = way.lent();
    if (way.path.model == LVB_PATH_RADIATING_CABLE) chain.stages[1].gain_db = 0.0; // a feed
    return chain;
}

TEST(PathInAChain, CostsWhatItCostsAlone) {
    Random random(81);
    int computed = 0;
    for (int i = 0; i < 2000; ++i) {
        Way way = random_way(random);
        const double near = random.uniform(4.0, 15.0), far = near + random.uniform(0.0, 12.0);
        const double mhz = random.uniform(650.0, 6000.0);
        Chain chain = chain_over(way, far, near, mhz);
        const lvb_status status = chain.compute();
        if (way.compute(mhz, near) != LVB_OK) {
            EXPECT_EQ(status, way.fault.status);
            continue;
        }
        const lvb_path_loss near_loss = way.loss;
        if (way.compute(mhz, far) != LVB_OK) {
            EXPECT_EQ(status, way.fault.status);
            continue;
        }
        ASSERT_EQ(status, LVB_OK);
        ++computed;
        EXPECT_EQ(chain.levels[2].far_change_db, -way.loss.loss_db);
        EXPECT_EQ(chain.levels[2].near_change_db, -near_loss.loss_db);
        EXPECT_EQ(chain.levels[2].far_level_dbm, chain.levels[1].far_level_dbm - way.loss.loss_db);
        EXPECT_EQ(chain.levels[2].notes & LVB_NOTE_NEAR_FIELD, near_loss.notes);
        EXPECT_EQ(std::isnan(chain.budget.path_standard_deviation_db), std::isnan(way.loss.standard_deviation_db));
        if (!std::isnan(way.loss.standard_deviation_db)) {
            EXPECT_EQ(chain.budget.path_standard_deviation_db, way.loss.standard_deviation_db);
        }
        EXPECT_EQ(chain.levels[2].basis, LVB_BASIS_FORMULA);
    }
    EXPECT_GT(computed, 1000);
}

// A cable radiates along its length: no antenna, and no e.i.r.p. that a licence could take.
TEST(PathInAChain, OfARadiatingCableHasNoRadiatedPower) {
    Way way = radiating_cable();
    Chain chain = chain_over(way, 40.0, 2.0);
    chain.stages[1].tolerance_db = 1.0;
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_TRUE(std::isnan(chain.budget.eirp_dbm));
    EXPECT_TRUE(std::isnan(chain.budget.eirp_worst_db));
    EXPECT_EQ(chain.levels[1].far_level_dbm, 15.0);

    auto limit = sized<lvb_limit>();
    auto result = sized<lvb_limit_result>();
    limit.limit_dbm = 20.0;
    for (const std::int32_t quantity : {LVB_QUANTITY_ERP, LVB_QUANTITY_EIRP}) {
        limit.quantity = quantity;
        EXPECT_EQ(lvb_check_limit(&chain.link, &limit, &result, &chain.fault), LVB_E_NO_TRANSMIT_ANTENNA);
        EXPECT_EQ(chain.fault.structure, LVB_STRUCT_LIMIT);
        EXPECT_EQ(chain.fault.field, LVB_FIELD_QUANTITY);
    }
    for (const std::int32_t quantity : {LVB_QUANTITY_TRANSMITTER_OUTPUT, LVB_QUANTITY_ANTENNA_INPUT}) {
        limit.quantity = quantity;
        ASSERT_EQ(lvb_check_limit(&chain.link, &limit, &result, &chain.fault), LVB_OK);
        EXPECT_EQ(result.level_dbm, 15.0);
        EXPECT_TRUE(std::isnan(result.erp_dbm));
        EXPECT_TRUE(std::isnan(result.eirp_dbm));
    }
}

TEST(PathInAChain, ThatIsZeroedIsTheSameAsNone) {
    Way way;
    Chain with = chain_over(way, 40.0, 2.0), without = chain_over(way, 40.0, 2.0);
    without.stages[2].path = nullptr;
    ASSERT_EQ(with.compute(), LVB_OK);
    ASSERT_EQ(without.compute(), LVB_OK);
    EXPECT_EQ(with.budget.far_end.level_dbm, without.budget.far_end.level_dbm);
    EXPECT_EQ(with.budget.near_end.level_dbm, without.budget.near_end.level_dbm);
    EXPECT_TRUE(std::isnan(with.budget.path_standard_deviation_db));
    EXPECT_TRUE(std::isnan(without.budget.path_standard_deviation_db));
}

TEST(PathInAChain, AddsWhatIsMeasuredBeyondIt) {
    Way way = log_distance();
    Chain chain = chain_over(way, 40.0, 2.0);
    ASSERT_EQ(chain.compute(), LVB_OK);
    const double level = chain.budget.far_end.level_dbm;
    chain.stages[2].gain_db = -4.5;
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_NEAR(chain.budget.far_end.level_dbm, level - 4.5, 1e-12);
}

} // namespace
