// Properties of cable attenuation: the law between rows, what lies beyond them, temperature, length and connectors.
#include "chain/chains.hpp"
#include "units/random.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <string>

namespace {

using proof::sized;

struct Table {
    std::vector<double> frequency_mhz, attenuation;
    lvb_cable_table lent() const {
        auto table = sized<lvb_cable_table>();
        table.row_count = static_cast<std::uint32_t>(frequency_mhz.size());
        table.frequency_mhz = frequency_mhz.data();
        table.attenuation_db_per_100m = attenuation.data();
        return table;
    }
};

Table catalogue(std::int32_t type) {
    auto info = sized<lvb_cable_info>();
    EXPECT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
    Table table;
    for (std::uint32_t i = 0; i < info.row_count; ++i) {
        auto row = sized<lvb_cable_row>();
        EXPECT_EQ(lvb_describe_cable_row(type, i, &row, nullptr), LVB_OK);
        table.frequency_mhz.push_back(row.frequency_mhz);
        table.attenuation.push_back(row.attenuation_db_per_100m);
    }
    return table;
}

lvb_cable_run run_of(double frequency_mhz, double length_m = 100.0, std::int32_t type = LVB_CABLE_NONE) {
    auto run = sized<lvb_cable_run>();
    run.cable_type = type;
    run.frequency_mhz = frequency_mhz;
    run.length_m = length_m;
    return run;
}

lvb_cable_run at_temperature(lvb_cable_run run, double degc) {
    run.stated = LVB_STATED_TEMPERATURE;
    run.temperature_degc = degc;
    return run;
}

lvb_cable_loss loss_of(const lvb_cable_run &run, const Table *table = nullptr) {
    auto loss = sized<lvb_cable_loss>();
    const lvb_cable_table lent = table ? table->lent() : lvb_cable_table{};
    EXPECT_EQ(lvb_compute_cable_loss(&run, table ? &lent : nullptr, &loss, nullptr), LVB_OK)
        << "type " << run.cable_type << " at " << run.frequency_mhz;
    return loss;
}

lvb_status status_of(const lvb_cable_run &run, const Table *table = nullptr) {
    auto loss = sized<lvb_cable_loss>();
    const lvb_cable_table lent = table ? table->lent() : lvb_cable_table{};
    return lvb_compute_cable_loss(&run, table ? &lent : nullptr, &loss, nullptr);
}

double per_100m(double frequency_mhz, const Table &table) {
    return loss_of(run_of(frequency_mhz), &table).attenuation_db_per_100m;
}

// The law as the header states it, in long double: a sqrt(f) + b f through both neighbours by Cramer's rule, the
// conductor part growing with the square root of copper's resistance (IEC 60028); otherwise a power law.
long double law(const Table &table, long double f, long double degc) {
    const long double warm = sqrtl(1.0L + 0.00393L * (degc - 20.0L));
    const std::size_t n = table.frequency_mhz.size();
    if (n == 1) return table.attenuation[0] * sqrtl(f / table.frequency_mhz[0]) * warm;
    std::size_t k = 1;
    while (k + 1 < n && f >= static_cast<long double>(table.frequency_mhz[k])) ++k;
    const long double f0 = table.frequency_mhz[k - 1], f1 = table.frequency_mhz[k];
    const long double a0 = table.attenuation[k - 1], a1 = table.attenuation[k];
    const long double determinant = sqrtl(f0) * f1 - sqrtl(f1) * f0;
    const long double a = (a0 * f1 - a1 * f0) / determinant;
    const long double b = (sqrtl(f0) * a1 - sqrtl(f1) * a0) / determinant;
    if (a >= 0.0L && b >= 0.0L) return a * sqrtl(f) * warm + b * f;
    return a0 * powl(f / f0, logl(a1 / a0) / logl(f1 / f0)) * warm;
}

void for_each_type(void (*check)(std::int32_t)) {
    const auto count = static_cast<std::int32_t>(lvb_cable_type_count());
    ASSERT_GT(count, 0);
    for (std::int32_t type = 1; type <= count; ++type) check(type);
}

TEST(Catalogue, EveryRowIsReproducedExactly) {
    for_each_type([](std::int32_t type) {
        const Table table = catalogue(type);
        for (std::size_t i = 0; i < table.attenuation.size(); ++i) {
            const lvb_cable_loss loss = loss_of(run_of(table.frequency_mhz[i], 100.0, type));
            EXPECT_EQ(loss.attenuation_db_per_100m, table.attenuation[i]) << type << " row " << i;
            EXPECT_EQ(loss.cable_loss_db, table.attenuation[i]);
            EXPECT_EQ(loss.notes, 0u);
        }
    });
}

TEST(Catalogue, FollowsTheStatedLaw) {
    for_each_type([](std::int32_t type) {
        const Table table = catalogue(type);
        proof::Random random(51);
        for (int i = 0; i < 500; ++i) {
            const double f =
                table.frequency_mhz.front() *
                std::pow(table.frequency_mhz.back() / table.frequency_mhz.front(), random.uniform(0.0, 1.0));
            const double degc = random.uniform(-100.0, 200.0);
            const double metres = random.log_uniform(-3, 2);
            const lvb_cable_loss loss = loss_of(at_temperature(run_of(f, metres, type), degc));
            EXPECT_NEAR(loss.cable_loss_db, static_cast<double>(law(table, f, degc) * metres / 100.0L), 1e-12)
                << type << " at " << f;
        }
    });
}

TEST(Catalogue, FollowsTheLawBeyondItsEndsAndSaysSo) {
    for_each_type([](std::int32_t type) {
        const Table table = catalogue(type);
        auto info = sized<lvb_cable_info>();
        ASSERT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
        EXPECT_EQ(info.lowest_mhz, table.frequency_mhz.front());
        EXPECT_EQ(info.highest_mhz, table.frequency_mhz.back());
        EXPECT_EQ(info.usable_lowest_mhz, 0.1 * info.lowest_mhz);
        EXPECT_EQ(info.usable_highest_mhz, 2.0 * info.highest_mhz);
        for (const double f :
             {info.usable_lowest_mhz, info.lowest_mhz / 3.0, std::nextafter(info.lowest_mhz, 0.0),
              std::nextafter(info.highest_mhz, 1e9), 1.5 * info.highest_mhz, info.usable_highest_mhz}) {
            const lvb_cable_loss loss = loss_of(run_of(f, 100.0, type));
            EXPECT_EQ(loss.notes, static_cast<std::uint32_t>(LVB_NOTE_EXTRAPOLATED)) << type << " at " << f;
            EXPECT_NEAR(loss.attenuation_db_per_100m, static_cast<double>(law(table, f, 20.0L)), 1e-11)
                << type << " at " << f;
        }
        EXPECT_EQ(status_of(run_of(std::nextafter(info.usable_lowest_mhz, 0.0), 1.0, type)), LVB_E_OUTSIDE_TABLE);
        EXPECT_EQ(status_of(run_of(std::nextafter(info.usable_highest_mhz, 1e9), 1.0, type)), LVB_E_OUTSIDE_TABLE);
    });
}

TEST(Catalogue, IsMonotoneInFrequency) {
    for_each_type([](std::int32_t type) {
        auto info = sized<lvb_cable_info>();
        ASSERT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
        double last = 0.0;
        for (int i = 0; i <= 2000; ++i) {
            const double f = std::min(info.usable_highest_mhz,
                                      info.usable_lowest_mhz *
                                          std::pow(info.usable_highest_mhz / info.usable_lowest_mhz, i / 2000.0));
            const double now = loss_of(run_of(f, 100.0, type)).attenuation_db_per_100m;
            EXPECT_GT(now, last) << type << " at " << f;
            last = now;
        }
    });
}

TEST(Catalogue, AHostsTableOfTheSameRowsGivesTheSameBits) {
    for_each_type([](std::int32_t type) {
        const Table table = catalogue(type);
        proof::Random random(52);
        for (int i = 0; i < 200; ++i) {
            const double f = random.uniform(0.1 * table.frequency_mhz.front(), 2.0 * table.frequency_mhz.back());
            const double length_m = random.log_uniform(-3, 4);
            lvb_cable_run run = at_temperature(run_of(f, length_m, type), random.uniform(-100.0, 200.0));
            run.connector_count = static_cast<std::uint32_t>(random.below(5));
            const lvb_cable_loss own = loss_of(run);
            run.cable_type = LVB_CABLE_NONE;
            const lvb_cable_loss lent = loss_of(run, &table);
            EXPECT_EQ(std::memcmp(&own, &lent, sizeof own), 0) << type << " at " << f;
        }
    });
}

TEST(Catalogue, NamesLeadBackToTheirTypes) {
    for_each_type([](std::int32_t type) {
        auto info = sized<lvb_cable_info>();
        ASSERT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
        EXPECT_EQ(info.cable_type, type);
        EXPECT_EQ(info.reserved, 0u);
        EXPECT_NE(std::string(info.description), "");
        EXPECT_EQ(lvb_cable_type_from_name(info.name), type);
        std::string plain;
        for (const char c : std::string(info.name))
            if (std::isalnum(static_cast<unsigned char>(c)) || c == '.') plain += static_cast<char>(std::tolower(c));
        EXPECT_EQ(lvb_cable_type_from_name(plain.c_str()), type) << plain;
        const std::string name = info.name;
        if (name.size() > 2 && name.substr(name.size() - 2) == "/U") {
            EXPECT_EQ(lvb_cable_type_from_name(name.substr(0, name.size() - 2).c_str()), type);
        }
        for (std::uint32_t i = 0; i < info.row_count; ++i) {
            auto row = sized<lvb_cable_row>();
            ASSERT_EQ(lvb_describe_cable_row(type, i, &row, nullptr), LVB_OK);
            EXPECT_NE(std::string(row.source), "") << "a row without a source: type " << type << " row " << i;
            ASSERT_NE(row.remark, nullptr);
        }
    });
    EXPECT_EQ(lvb_cable_type_from_name("rg213u"), LVB_CABLE_RG_213_U);
    EXPECT_EQ(lvb_cable_type_from_name(" R G - 213 "), LVB_CABLE_RG_213_U);
    for (const char *none : {"", " ", "u", "/U", "RG", "RG-213/UU", "RG-213/V", "RG-2133", "RG-21", "213"})
        EXPECT_EQ(lvb_cable_type_from_name(none), LVB_CABLE_NONE) << none;
    EXPECT_EQ(lvb_cable_type_from_name(nullptr), LVB_CABLE_NONE);
}

Table random_table(proof::Random &random, double a, double b) {
    Table table;
    double f = random.log_uniform(0.0, 1.5);
    for (std::uint64_t rows = 2 + random.below(10); rows > 0; --rows, f *= random.uniform(1.2, 2.5)) {
        table.frequency_mhz.push_back(f);
        table.attenuation.push_back(a * std::sqrt(f) + b * f);
    }
    return table;
}

TEST(HostTable, TheLawIsRecoveredFromItsOwnRows) {
    proof::Random random(53);
    for (int i = 0; i < 500; ++i) {
        const double a = random.below(4) ? random.log_uniform(-2, 0) : 0.0;
        const double b = random.below(4) && a > 0.0 ? random.log_uniform(-5, -2) : a > 0.0 ? 0.0 : 0.01;
        const Table table = random_table(random, a, b);
        for (int j = 0; j < 20; ++j) {
            const double f =
                random.uniform(0.1 * table.frequency_mhz.front() * 1.0000001, 2.0 * table.frequency_mhz.back());
            const double want = a * std::sqrt(f) + b * f;
            EXPECT_NEAR(per_100m(f, table) / want, 1.0, 1e-11) << a << ' ' << b << " at " << f;
        }
    }
}

TEST(HostTable, FollowsTheStatedLawWhateverItHolds) {
    proof::Random random(54);
    for (int i = 0; i < 500; ++i) { // rows that rise by anything between nothing and the square of the frequency
        Table table;
        double f = random.log_uniform(-1, 2);
        double attenuation = random.log_uniform(-1, 1);
        for (std::uint64_t rows = 1 + random.below(8); rows > 0; --rows) {
            table.frequency_mhz.push_back(f);
            table.attenuation.push_back(attenuation);
            const double step = random.uniform(1.2, 3.0);
            f *= step;
            attenuation *= std::pow(step, random.below(5) ? random.uniform(0.0, 1.99) : 0.0);
        }
        for (int j = 0; j < 20; ++j) {
            const double at = std::clamp(
                random.uniform(0.11 * table.frequency_mhz.front(), 1.99 * table.frequency_mhz.back()), 0.1, 300000.0);
            const double degc = random.uniform(-100.0, 200.0);
            const double want = static_cast<double>(law(table, at, degc));
            EXPECT_NEAR(loss_of(at_temperature(run_of(at), degc), &table).attenuation_db_per_100m / want, 1.0, 1e-10);
        }
        for (std::size_t row = 0; row < table.attenuation.size(); ++row) {
            if (table.frequency_mhz[row] < 0.1) continue;
            EXPECT_EQ(per_100m(table.frequency_mhz[row], table), table.attenuation[row]); // exact at every row
        }
    }
}

TEST(HostTable, APowerLawServesWhereACoefficientWouldBeNegative) {
    const Table flat{{100.0, 400.0}, {10.0, 10.0}};    // needs b < 0
    const Table square{{100.0, 400.0}, {10.0, 160.0}}; // needs a < 0; as steep as is allowed
    const Table slow{{100.0, 400.0}, {10.0, 15.0}};
    EXPECT_NEAR(per_100m(200.0, flat), 10.0, 1e-12);
    EXPECT_NEAR(per_100m(200.0, square), 40.0, 1e-11);
    EXPECT_NEAR(per_100m(200.0, slow), std::sqrt(150.0), 1e-12); // half way in log f
    EXPECT_NEAR(per_100m(800.0, square), 640.0, 1e-10);          // continued upwards
    EXPECT_NEAR(per_100m(25.0, slow), 10.0 / 1.5, 1e-12);        // and downwards
    // the whole grows with temperature where the power law applies
    EXPECT_NEAR(loss_of(at_temperature(run_of(200.0), 80.0), &slow).attenuation_db_per_100m,
                std::sqrt(150.0) * std::sqrt(1.0 + 0.00393 * 60.0), 1e-12);
}

TEST(HostTable, IsContinuousAtEveryRow) {
    proof::Random random(55);
    for (int i = 0; i < 300; ++i) {
        Table table = random_table(random, 0.3, 0.004);
        for (double &attenuation : table.attenuation) attenuation *= random.uniform(0.98, 1.02); // laws that differ
        for (std::size_t row = 0; row < table.frequency_mhz.size(); ++row) {
            const double f = table.frequency_mhz[row];
            EXPECT_NEAR(per_100m(std::nextafter(f, 0.0), table), table.attenuation[row],
                        1e-12 * table.attenuation[row]);
            EXPECT_NEAR(per_100m(std::nextafter(f, 1e9), table), table.attenuation[row],
                        1e-12 * table.attenuation[row]);
        }
    }
}

TEST(HostTable, OfOneRowFollowsTheRootOfFrequency) {
    const Table table{{400.0}, {12.0}};
    EXPECT_EQ(per_100m(400.0, table), 12.0);
    EXPECT_EQ(loss_of(run_of(400.0), &table).notes, 0u);
    EXPECT_NEAR(per_100m(100.0, table), 6.0, 1e-13);
    EXPECT_NEAR(per_100m(800.0, table), 12.0 * std::sqrt(2.0), 1e-12);
    EXPECT_EQ(loss_of(run_of(100.0), &table).notes, static_cast<std::uint32_t>(LVB_NOTE_EXTRAPOLATED));
    EXPECT_EQ(status_of(run_of(39.99), &table), LVB_E_OUTSIDE_TABLE);
    EXPECT_EQ(status_of(run_of(800.01), &table), LVB_E_OUTSIDE_TABLE);
    EXPECT_NEAR(loss_of(at_temperature(run_of(400.0), 120.0), &table).attenuation_db_per_100m, 12.0 * std::sqrt(1.393),
                1e-12);
}

TEST(Temperature, ActsOnTheConductorOnly) {
    const Table conductor{{100.0, 400.0}, {5.0, 10.0}};
    const Table mixed{{100.0, 400.0}, {5.0 + 1.0, 10.0 + 4.0}};
    for (const double degc : {-100.0, -20.0, 0.0, 20.0, 40.0, 85.0, 200.0}) {
        const double warm = std::sqrt(1.0 + 0.00393 * (degc - 20.0));
        EXPECT_NEAR(loss_of(at_temperature(run_of(225.0), degc), &conductor).attenuation_db_per_100m, 7.5 * warm,
                    1e-12);
        EXPECT_NEAR(loss_of(at_temperature(run_of(225.0), degc), &mixed).attenuation_db_per_100m, 7.5 * warm + 2.25,
                    1e-12);
    }
}

// Two neighbouring intervals may differ in how much of the attenuation is conductor: a row takes that of the interval
// above it, the last row that of the interval below.
TEST(Temperature, AtARowTheIntervalAboveDecides) {
    const Table table{{100.0, 400.0, 1600.0}, {5.0, 10.0, 30.0}}; // conductor only, then half dielectric
    const double warm = std::sqrt(1.0 + 0.00393 * 60.0);
    const auto hot = [&](double f) { return loss_of(at_temperature(run_of(f), 80.0), &table).attenuation_db_per_100m; };
    EXPECT_NEAR(hot(100.0), 5.0 * warm, 1e-12);
    for (const double f : {400.0, std::nextafter(400.0, 500.0), 900.0, 1600.0})
        EXPECT_NEAR(hot(f), static_cast<double>(law(table, f, 80.0L)), 1e-11) << f;
    EXPECT_NEAR(hot(std::nextafter(400.0, 0.0)), 10.0 * warm, 1e-11);
    EXPECT_GT(std::fabs(hot(400.0) - 10.0 * warm), 0.1); // the two laws are apart there
}

TEST(Temperature, TwentyDegreesStatedIsTheSameAsNotStated) {
    for_each_type([](std::int32_t type) {
        const Table table = catalogue(type);
        const double f = (table.frequency_mhz[0] + table.frequency_mhz[1]) / 2.0;
        const lvb_cable_loss stated = loss_of(at_temperature(run_of(f, 30.0, type), 20.0));
        const lvb_cable_loss silent = loss_of(run_of(f, 30.0, type));
        EXPECT_EQ(std::memcmp(&stated, &silent, sizeof stated), 0);
        // 0 degC is a temperature of its own: less than at 20 degC
        EXPECT_LT(loss_of(at_temperature(run_of(f, 30.0, type), 0.0)).loss_db, silent.loss_db);
    });
}

TEST(Run, LengthsAddUp) {
    proof::Random random(56);
    for (int i = 0; i < 200; ++i) {
        const double f = random.uniform(50.0, 2400.0);
        const double one = random.log_uniform(-2, 2);
        const double two = random.log_uniform(-2, 2);
        const auto loss = [&](double metres) { return loss_of(run_of(f, metres, LVB_CABLE_RG_213_U)).loss_db; };
        EXPECT_NEAR(loss(one) + loss(two), loss(one + two), 1e-12);
        EXPECT_EQ(loss(2.0 * one), 2.0 * loss(one));
    }
}

TEST(Run, ConnectorsAddTheirLoss) {
    for (const std::uint32_t count : {0u, 1u, 2u, 7u, 1000u}) {
        lvb_cable_run run = run_of(900.0, 10.0, LVB_CABLE_RG_213_U);
        run.connector_count = count;
        lvb_cable_loss loss = loss_of(run);
        EXPECT_NEAR(loss.connectors_loss_db, count * 0.05 * std::sqrt(0.9), 1e-12); // common practice, no source
        EXPECT_EQ(loss.loss_db, loss.cable_loss_db + loss.connectors_loss_db);
        if (count == 0) continue;
        run.connector_loss_db = 0.25;
        loss = loss_of(run);
        EXPECT_EQ(loss.connectors_loss_db, count * 0.25);
        // connectors do not care for the length or the temperature of the cable
        run.length_m = 1000.0;
        EXPECT_EQ(loss_of(at_temperature(run, 90.0)).connectors_loss_db, count * 0.25);
    }
}

} // namespace
