// Properties of the budget: levels are sums of changes, both ends, tolerances, references, zones, verdict, bases.
#include "chain/random_chain.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>

namespace {

using namespace proof;

constexpr double allowed_per_stage = 1e-12; // the header's accuracy of lvb_compute_budget

template <class Check>
void with_random_chains(std::uint64_t seed, int count, Check check) {
    Random random(seed);
    for (int i = 0; i < count; ++i) {
        Lent lent;
        Chain chain = ChainMaker(random, lent).make();
        ASSERT_EQ(chain.compute(), LVB_OK)
            << "chain " << i << ": " << lvb_field_name(chain.fault.field) << " of stage " << chain.fault.stage;
        check(chain, random);
        if (testing::Test::HasFailure()) FAIL() << "chain " << i;
    }
}

// ---- What a stage changes, in long double, from the plain functions that have oracles of their own.

long double gain_of(const lvb_stage &in, double frequency_mhz) {
    if (in.gain_table == nullptr) return in.gain_db;
    const lvb_gain_table &table = *in.gain_table;
    for (std::uint32_t i = 1; i < table.row_count; ++i)
        if (frequency_mhz <= table.frequency_mhz[i]) {
            const long double f0 = table.frequency_mhz[i - 1], f1 = table.frequency_mhz[i];
            const long double part = (frequency_mhz - f0) / (f1 - f0);
            return (1.0L - part) * table.gain_db[i - 1] + part * table.gain_db[i];
        }
    return table.gain_db[table.row_count - 1];
}

long double cable_gain(const lvb_stage &in, const lvb_link &link) {
    auto run = sized<lvb_cable_run>();
    auto loss = sized<lvb_cable_loss>();
    run.cable_type = in.cable_type;
    run.connector_count = in.connector_count;
    run.frequency_mhz = link.frequency_mhz;
    run.length_m = in.length_m;
    run.connector_loss_db = in.connector_loss_db;
    run.stated = link.stated;
    run.temperature_degc = link.temperature_degc;
    EXPECT_EQ(lvb_compute_cable_loss(&run, in.cable_table, &loss, nullptr), LVB_OK);
    return -static_cast<long double>(loss.loss_db);
}

long double pattern_gain(const lvb_stage &in, bool far_end) {
    auto gain = sized<lvb_pattern_gain>();
    EXPECT_EQ(lvb_compute_pattern_gain(in.pattern, far_end ? in.far_azimuth_deg : in.near_azimuth_deg,
                                       far_end ? in.far_elevation_deg : in.near_elevation_deg, &gain, nullptr),
              LVB_OK);
    return gain.gain_dbi;
}

long double body_loss(const lvb_stage &in) {
    double loss_db = 0.0;
    EXPECT_EQ(lvb_compute_body_loss(in.body_table, in.facing_deg, &loss_db, nullptr), LVB_OK);
    return loss_db;
}

double distance_of(const lvb_link &link, bool far_end) {
    return far_end || link.near_distance_m == 0.0 ? link.far_distance_m : link.near_distance_m;
}

long double air_loss(const lvb_stage &in, const lvb_link &link, bool far_end) {
    if (in.path == nullptr) return lvb_free_space_loss_db(link.frequency_mhz, distance_of(link, far_end));
    auto loss = sized<lvb_path_loss>();
    EXPECT_EQ(lvb_compute_path_loss(in.path, link.frequency_mhz, distance_of(link, far_end), &loss, nullptr), LVB_OK);
    return loss.loss_db;
}

long double change_of(const lvb_stage &in, const lvb_link &link, bool far_end) {
    if (in.kind == LVB_KIND_ALLOWANCE && !far_end) return 0.0L;
    if (in.cable_type != 0 || in.cable_table != nullptr) return cable_gain(in, link);
    if (in.pattern != nullptr) return pattern_gain(in, far_end);
    if (in.body_table != nullptr) return -body_loss(in);
    const long double own = gain_of(in, link.frequency_mhz) + (in.kind == LVB_KIND_SOURCE ? in.level_dbm : 0.0);
    return in.kind == LVB_KIND_AIR ? own - air_loss(in, link, far_end) : own;
}

TEST(Levels, AreTheSumsOfTheStatedChanges) {
    with_random_chains(61, 500, [](Chain &chain, Random &) {
        long double far_level = 0.0L, near_level = 0.0L;
        double far_base = 0.0, near_base = 0.0, far_since = 0.0, near_since = 0.0;
        for (std::size_t i = 0; i < chain.stages.size(); ++i) {
            const lvb_level &line = chain.levels[i];
            const long double far_change = change_of(chain.stages[i], chain.link, true);
            const long double near_change = change_of(chain.stages[i], chain.link, false);
            far_level += far_change;
            near_level += near_change;
            const double tolerance = allowed_per_stage * static_cast<double>(i + 1);
            EXPECT_NEAR(line.far_change_db, static_cast<double>(far_change), allowed_per_stage) << i;
            EXPECT_NEAR(line.near_change_db, static_cast<double>(near_change), allowed_per_stage) << i;
            EXPECT_NEAR(line.far_level_dbm, static_cast<double>(far_level), tolerance) << i;
            EXPECT_NEAR(line.near_level_dbm, static_cast<double>(near_level), tolerance) << i;
            // the written order of the sum, bit for bit: the level right after the air, and what has come since
            if (chain.stages[i].kind == LVB_KIND_AIR) {
                far_base = line.far_level_dbm;
                near_base = line.near_level_dbm;
                far_since = near_since = 0.0;
            } else {
                far_since += line.far_change_db;
                near_since += line.near_change_db;
            }
            EXPECT_EQ(line.far_level_dbm, far_base + far_since) << i;
            EXPECT_EQ(line.near_level_dbm, near_base + near_since) << i;
        }
        EXPECT_EQ(chain.budget.far_end.level_dbm, chain.levels.back().far_level_dbm);
        EXPECT_EQ(chain.budget.near_end.level_dbm, chain.levels.back().near_level_dbm);
        EXPECT_EQ(chain.budget.reference, chain.levels.back().reference);
    });
}

TEST(Levels, AreTheSameBitsWithAndWithoutTheLines) {
    with_random_chains(62, 300, [](Chain &chain, Random &) {
        auto alone = sized<lvb_budget>();
        ASSERT_EQ(lvb_compute_budget(&chain.link, &alone, nullptr, 0, nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&alone, &chain.budget, sizeof alone), 0);
        auto again = sized<lvb_budget>();
        std::vector<lvb_level> lines(chain.stages.size());
        ASSERT_EQ(lvb_compute_budget(&chain.link, &again, lines.data(), sizeof(lvb_level), nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&again, &chain.budget, sizeof again), 0);
        EXPECT_EQ(std::memcmp(lines.data(), chain.levels.data(), lines.size() * sizeof(lvb_level)), 0);
    });
}

TEST(Tolerances, AddUpInTheWorstCaseAndBySquares) {
    with_random_chains(63, 500, [](Chain &chain, Random &) {
        long double far_worst = 0.0L, far_squares = 0.0L, near_worst = 0.0L, near_squares = 0.0L;
        for (std::size_t i = 0; i < chain.stages.size(); ++i) {
            const long double t = chain.stages[i].tolerance_db;
            far_worst += t;
            far_squares += t * t;
            if (chain.stages[i].kind != LVB_KIND_ALLOWANCE) near_worst += t, near_squares += t * t;
            EXPECT_NEAR(chain.levels[i].far_worst_db, static_cast<double>(far_worst), 1e-12);
            EXPECT_NEAR(chain.levels[i].near_worst_db, static_cast<double>(near_worst), 1e-12);
            EXPECT_NEAR(chain.levels[i].far_rss_db, static_cast<double>(sqrtl(far_squares)), 1e-12);
            EXPECT_NEAR(chain.levels[i].near_rss_db, static_cast<double>(sqrtl(near_squares)), 1e-12);
            EXPECT_LE(chain.levels[i].far_rss_db, chain.levels[i].far_worst_db + 1e-12);
        }
        EXPECT_EQ(chain.budget.far_end.worst_db, chain.levels.back().far_worst_db);
        EXPECT_EQ(chain.budget.far_end.rss_db, chain.levels.back().far_rss_db);
        EXPECT_EQ(chain.budget.near_end.worst_db, chain.levels.back().near_worst_db);
        EXPECT_EQ(chain.budget.near_end.rss_db, chain.levels.back().near_rss_db);
    });
}

TEST(Order, OfConductedStagesDoesNotChangeTheEnd) {
    with_random_chains(64, 300, [](Chain &chain, Random &random) {
        Chain turned = chain;
        // shuffle each run of conducted stages and allowances that may change places
        for (std::size_t from = 1; from < turned.stages.size();) {
            std::size_t to = from;
            const auto may_move = [&](std::size_t i) {
                const std::int32_t kind = turned.stages[i].kind;
                return kind != LVB_KIND_ANTENNA && kind != LVB_KIND_AIR && kind != LVB_KIND_RECEIVER;
            };
            while (to < turned.stages.size() && may_move(to)) ++to;
            for (std::size_t i = to; i > from + 1; --i)
                std::swap(turned.stages[i - 1], turned.stages[from + random.below(i - from)]);
            from = to + 1;
        }
        ASSERT_EQ(turned.compute(), LVB_OK);
        EXPECT_NEAR(turned.budget.far_end.level_dbm, chain.budget.far_end.level_dbm, 1e-11);
        EXPECT_NEAR(turned.budget.near_end.level_dbm, chain.budget.near_end.level_dbm, 1e-11);
        EXPECT_NEAR(turned.budget.far_end.worst_db, chain.budget.far_end.worst_db, 1e-12);
        EXPECT_NEAR(turned.budget.guess_share, chain.budget.guess_share, 1e-12);
        EXPECT_EQ(turned.budget.verdict, chain.budget.verdict);
        EXPECT_EQ(turned.budget.handbook, chain.budget.handbook);
    });
}

TEST(Ends, DifferByTheDistancesTheDirectionsAndTheAllowances) {
    with_random_chains(65, 500, [](Chain &chain, Random &) {
        long double difference = 0.0L;
        const bool has_air = chain.has_air();
        const double near_m = distance_of(chain.link, false);
        for (const lvb_stage &in : chain.stages) {
            if (in.body_table != nullptr) difference -= body_loss(in);
            else if (in.kind == LVB_KIND_ALLOWANCE) difference += gain_of(in, chain.link.frequency_mhz);
            else if (in.pattern != nullptr) difference += pattern_gain(in, true) - pattern_gain(in, false);
            else if (in.path != nullptr) difference -= air_loss(in, chain.link, true) - air_loss(in, chain.link, false);
            else if (in.kind == LVB_KIND_AIR)
                difference -= 20.0L * log10l(static_cast<long double>(chain.link.far_distance_m) / near_m);
        }
        EXPECT_NEAR(chain.budget.far_end.level_dbm - chain.budget.near_end.level_dbm, static_cast<double>(difference),
                    allowed_per_stage * static_cast<double>(chain.stages.size()));
        EXPECT_EQ(chain.budget.far_end.distance_m, has_air ? chain.link.far_distance_m : 0.0);
        EXPECT_EQ(chain.budget.near_end.distance_m, has_air ? near_m : 0.0);
    });
}

TEST(Ends, TwelveToThirteenMetresAndTwiceTheDistance) {
    Chain chain(ordinary(), 600.0, 13.0, 12.0);
    chain.stages[5].gain_db = 0.0; // no allowance
    ASSERT_EQ(chain.compute(), LVB_OK);
    // 20 log10(13/12) = 0.695 dB: the definition
    EXPECT_NEAR(chain.budget.near_end.level_dbm - chain.budget.far_end.level_dbm, 0.695, 0.0005);
    chain.link.far_distance_m = 24.0;
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_NEAR(chain.budget.near_end.level_dbm - chain.budget.far_end.level_dbm, 6.0206, 0.00005);
}

TEST(Ends, NearZeroMeansTheSameAsFar) {
    Chain one(ordinary(), 600.0, 40.0, 0.0);
    Chain two(ordinary(), 600.0, 40.0, 40.0);
    ASSERT_EQ(one.compute(), LVB_OK);
    ASSERT_EQ(two.compute(), LVB_OK);
    EXPECT_EQ(one.budget.notes, static_cast<std::uint32_t>(LVB_NOTE_NEAR_NOT_GIVEN));
    EXPECT_EQ(two.budget.notes, 0u);
    one.budget.notes = two.budget.notes; // all the rest is the same, bit for bit
    EXPECT_EQ(std::memcmp(&one.budget, &two.budget, sizeof one.budget), 0);
}

TEST(References, ChangeAtAntennasAndAir) {
    Chain chain(ordinary());
    ASSERT_EQ(chain.compute(), LVB_OK);
    const std::int32_t expected[] = {LVB_REFERENCE_CONDUCTED, LVB_REFERENCE_CONDUCTED, LVB_REFERENCE_CONDUCTED,
                                     LVB_REFERENCE_EIRP,      LVB_REFERENCE_ISOTROPIC, LVB_REFERENCE_ISOTROPIC,
                                     LVB_REFERENCE_CONDUCTED, LVB_REFERENCE_CONDUCTED};
    for (std::size_t i = 0; i < chain.stages.size(); ++i) EXPECT_EQ(chain.levels[i].reference, expected[i]) << i;
    EXPECT_EQ(chain.budget.eirp_dbm, chain.levels[3].near_level_dbm);
    EXPECT_NEAR(chain.budget.eirp_dbm, 15.0 - 3.5 + 6.0 + static_cast<double>(cable_gain(chain.stages[2], chain.link)),
                1e-12);
}

TEST(References, EirpLeavesAllowancesOut) {
    Chain chain({source(20.0, 1.0), stage(LVB_KIND_ALLOWANCE, -7.0, 2.0), antenna(3.0)});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.eirp_dbm, 23.0);
    EXPECT_EQ(chain.budget.eirp_worst_db, 1.0);
    EXPECT_EQ(chain.budget.far_end.level_dbm, 16.0);
}

TEST(WithoutAir, AChainMayEndAnywhereAndIsNotJudged) {
    Chain check({source(0.0), cable(LVB_CABLE_RG_213_U, 100.0)}, 450.0); // a line check needs no distance
    ASSERT_EQ(check.compute(), LVB_OK);
    EXPECT_EQ(check.budget.far_end.level_dbm, -16.3); // the catalogue's row
    EXPECT_EQ(check.budget.far_end.distance_m, 0.0);
    EXPECT_EQ(check.budget.verdict, LVB_VERDICT_NOT_JUDGED);
    EXPECT_EQ(check.budget.decided_by, LVB_DECIDED_BY_NOTHING);
    EXPECT_TRUE(std::isnan(check.budget.decided_by_db));
    EXPECT_TRUE(std::isnan(check.budget.eirp_dbm));
    EXPECT_TRUE(std::isnan(check.budget.eirp_worst_db));
    EXPECT_TRUE(std::isnan(check.budget.far_end.margin_db));
    EXPECT_TRUE(std::isnan(check.budget.far_end.headroom_db));
    EXPECT_TRUE(std::isnan(check.budget.far_end.from_middle_db));
    EXPECT_EQ(check.budget.far_end.zone, LVB_ZONE_NOT_JUDGED);

    Chain radiated({source(10.0), antenna(5.0)});
    ASSERT_EQ(radiated.compute(), LVB_OK);
    EXPECT_EQ(radiated.budget.reference, LVB_REFERENCE_EIRP);
    EXPECT_EQ(radiated.budget.eirp_dbm, 15.0);
    EXPECT_EQ(radiated.budget.verdict, LVB_VERDICT_NOT_JUDGED);

    Chain judged({source(10.0), stage(LVB_KIND_PASSIVE, -20.0), receiver(-30.0, 0.0)});
    ASSERT_EQ(judged.compute(), LVB_OK);
    EXPECT_EQ(judged.budget.verdict, LVB_VERDICT_HOLDS);
    EXPECT_EQ(judged.budget.far_end.margin_db, 20.0);
    EXPECT_EQ(judged.budget.near_end.headroom_db, 10.0);

    Chain alone({source(-3.0)});
    ASSERT_EQ(alone.compute(), LVB_OK);
    EXPECT_EQ(alone.budget.far_end.level_dbm, -3.0);
    EXPECT_EQ(alone.levels[0].far_change_db, -3.0);
}

TEST(WithAir, AChainWithoutReceiverIsNotJudged) {
    Chain chain({source(10.0), antenna(), air(), antenna()});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.verdict, LVB_VERDICT_NOT_JUDGED);
    EXPECT_EQ(chain.budget.reference, LVB_REFERENCE_CONDUCTED);
}

// ---- Zones and verdict, at every boundary.

struct Judged {
    double level, tolerance;
    std::int32_t zone, lowest, highest;
};

TEST(Zones, AtEveryBoundary) { // a level on a limit lies inside it
    const Judged cases[] = {
        {-90.0, 0, LVB_ZONE_LOW, LVB_ZONE_LOW, LVB_ZONE_LOW},
        {-90.5, 0, LVB_ZONE_DROPOUT, LVB_ZONE_DROPOUT, LVB_ZONE_DROPOUT},
        {-80.0, 0, LVB_ZONE_WANTED, LVB_ZONE_WANTED, LVB_ZONE_WANTED},
        {-80.5, 0, LVB_ZONE_LOW, LVB_ZONE_LOW, LVB_ZONE_LOW},
        {-40.0, 0, LVB_ZONE_WANTED, LVB_ZONE_WANTED, LVB_ZONE_WANTED},
        {-39.5, 0, LVB_ZONE_HIGH, LVB_ZONE_HIGH, LVB_ZONE_HIGH},
        {-20.0, 0, LVB_ZONE_HIGH, LVB_ZONE_HIGH, LVB_ZONE_HIGH},
        {-19.5, 0, LVB_ZONE_OVERLOAD, LVB_ZONE_OVERLOAD, LVB_ZONE_OVERLOAD},
        {-90.0, 0.5, LVB_ZONE_LOW, LVB_ZONE_DROPOUT, LVB_ZONE_LOW},
        {-80.0, 10.0, LVB_ZONE_WANTED, LVB_ZONE_LOW, LVB_ZONE_WANTED},
        {-60.0, 40.5, LVB_ZONE_WANTED, LVB_ZONE_DROPOUT, LVB_ZONE_OVERLOAD},
        {-60.0, 40.0, LVB_ZONE_WANTED, LVB_ZONE_DROPOUT, LVB_ZONE_HIGH},
    };
    for (const Judged &one : cases) {
        Chain chain({source(one.level, one.tolerance), receiver(-90.0, -80.0, -40.0, -20.0)});
        ASSERT_EQ(chain.compute(), LVB_OK);
        EXPECT_EQ(chain.budget.far_end.zone, one.zone) << one.level;
        EXPECT_EQ(chain.budget.far_end.zone_lowest, one.lowest) << one.level << ' ' << one.tolerance;
        EXPECT_EQ(chain.budget.far_end.zone_highest, one.highest) << one.level << ' ' << one.tolerance;
        EXPECT_EQ(chain.budget.far_end.margin_db, one.level + 90.0);
        EXPECT_EQ(chain.budget.far_end.headroom_db, -20.0 - one.level);
        EXPECT_EQ(chain.budget.far_end.from_middle_db, one.level + 60.0);
    }
    // one unit in the last place decides
    Chain chain({source(std::nextafter(-90.0, -91.0)), receiver(-90.0, -20.0)});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.far_end.zone, LVB_ZONE_DROPOUT);
    EXPECT_EQ(chain.budget.verdict, LVB_VERDICT_DROPS_OUT);
}

TEST(Zones, WithPartOfTheWindow) {
    const auto with = [](std::uint32_t stated, double level) {
        lvb_stage end = receiver();
        end.stated = stated;
        if (stated & LVB_STATED_FLOOR) end.floor_dbm = -90.0;
        if (stated & LVB_STATED_WANTED) end.wanted_low_dbm = -80.0, end.wanted_high_dbm = -40.0;
        if (stated & LVB_STATED_CEILING) end.ceiling_dbm = -20.0;
        Chain chain({source(level), end});
        EXPECT_EQ(chain.compute(), LVB_OK);
        return chain.budget;
    };
    EXPECT_EQ(with(0, -50.0).far_end.zone, LVB_ZONE_NOT_JUDGED);
    EXPECT_EQ(with(LVB_STATED_FLOOR, -50.0).far_end.zone, LVB_ZONE_WANTED);
    EXPECT_EQ(with(LVB_STATED_FLOOR, -95.0).far_end.zone, LVB_ZONE_DROPOUT);
    EXPECT_EQ(with(LVB_STATED_FLOOR, 50.0).far_end.zone, LVB_ZONE_WANTED);
    EXPECT_EQ(with(LVB_STATED_CEILING, -150.0).far_end.zone, LVB_ZONE_WANTED);
    EXPECT_EQ(with(LVB_STATED_CEILING, -10.0).far_end.zone, LVB_ZONE_OVERLOAD);
    EXPECT_EQ(with(LVB_STATED_WANTED, -95.0).far_end.zone, LVB_ZONE_LOW);
    EXPECT_EQ(with(LVB_STATED_WANTED, -10.0).far_end.zone, LVB_ZONE_HIGH);
    EXPECT_EQ(with(LVB_STATED_WANTED, -60.0).verdict, LVB_VERDICT_NOT_JUDGED);
    EXPECT_EQ(with(LVB_STATED_WANTED, -60.0).far_end.from_middle_db, 0.0);
    EXPECT_TRUE(std::isnan(with(LVB_STATED_WANTED, -60.0).far_end.margin_db));
    EXPECT_TRUE(std::isnan(with(LVB_STATED_FLOOR, -60.0).far_end.headroom_db));
    EXPECT_TRUE(std::isnan(with(LVB_STATED_FLOOR, -60.0).far_end.from_middle_db));
}

TEST(Zones, ZeroDbmIsAStatedLimit) {
    lvb_stage end = receiver();
    end.stated = LVB_STATED_CEILING; // 0 dBm
    Chain chain({source(0.5), end});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.verdict, LVB_VERDICT_OVERLOADS);
    EXPECT_EQ(chain.budget.near_end.headroom_db, -0.5);
}

// Both ends differ by an allowance, which the near end does not take.
lvb_budget walk(double near_dbm, double allowance_db, double tolerance_db, std::uint32_t stated) {
    lvb_stage end = receiver();
    end.stated = stated;
    if (stated & LVB_STATED_FLOOR) end.floor_dbm = -90.0;
    if (stated & LVB_STATED_CEILING) end.ceiling_dbm = -20.0;
    Chain chain({source(near_dbm, tolerance_db), stage(LVB_KIND_ALLOWANCE, allowance_db), end});
    EXPECT_EQ(chain.compute(), LVB_OK);
    return chain.budget;
}

TEST(Verdict, AtEveryBoundary) {
    constexpr std::uint32_t both = LVB_STATED_FLOOR | LVB_STATED_CEILING;
    EXPECT_EQ(walk(-50, -10, 0, both).verdict, LVB_VERDICT_HOLDS);
    EXPECT_EQ(walk(-50, -40, 0, both).verdict, LVB_VERDICT_HOLDS); // on the floor
    EXPECT_EQ(walk(-50, -40.5, 0, both).verdict, LVB_VERDICT_DROPS_OUT);
    EXPECT_EQ(walk(-20, -10, 0, both).verdict, LVB_VERDICT_HOLDS); // on the ceiling
    EXPECT_EQ(walk(-19.5, -10, 0, both).verdict, LVB_VERDICT_OVERLOADS);
    EXPECT_EQ(walk(-19.5, -71, 0, both).verdict, LVB_VERDICT_DROPS_OUT_AND_OVERLOADS);
    EXPECT_EQ(walk(-50, -30, 10, both).verdict, LVB_VERDICT_HOLDS); // the tolerances reach the floor, no further
    EXPECT_EQ(walk(-50, -30, 10.5, both).verdict, LVB_VERDICT_DOUBTFUL);
    EXPECT_EQ(walk(-30, -10, 10, both).verdict, LVB_VERDICT_HOLDS);
    EXPECT_EQ(walk(-30, -10, 10.5, both).verdict, LVB_VERDICT_DOUBTFUL);
    EXPECT_EQ(walk(-50, -40.5, 5, both).verdict, LVB_VERDICT_DROPS_OUT); // as entered counts first
    EXPECT_EQ(walk(-10, -100, 0, LVB_STATED_CEILING).verdict, LVB_VERDICT_OVERLOADS);
    EXPECT_EQ(walk(-30, -100, 0, LVB_STATED_CEILING).verdict, LVB_VERDICT_HOLDS);
    EXPECT_EQ(walk(-10, -10, 0, LVB_STATED_FLOOR).verdict, LVB_VERDICT_HOLDS);
    EXPECT_EQ(walk(-10, -10, 0, 0).verdict, LVB_VERDICT_NOT_JUDGED);
}

// Allowances have tolerances too, which only the far end takes: a doubtful allowance can leave it above the ceiling.
TEST(Verdict, IsDoubtfulWhereTheFarEndCanOverload) {
    const auto with_doubtful_allowance = [](double tolerance_db) {
        lvb_stage end = receiver();
        end.stated = LVB_STATED_CEILING;
        end.ceiling_dbm = -20.0;
        Chain chain({source(-40.0), stage(LVB_KIND_ALLOWANCE, -10.0, tolerance_db), end});
        EXPECT_EQ(chain.compute(), LVB_OK);
        return chain.budget.verdict;
    };
    EXPECT_EQ(with_doubtful_allowance(30.0), LVB_VERDICT_HOLDS); // up to the ceiling, no further
    EXPECT_EQ(with_doubtful_allowance(30.5), LVB_VERDICT_DOUBTFUL);
}

TEST(Verdict, SaysWhatDecides) {
    constexpr std::uint32_t both = LVB_STATED_FLOOR | LVB_STATED_CEILING;
    const auto decided = [](const lvb_budget &budget, std::int32_t by, double room) {
        EXPECT_EQ(budget.decided_by, by);
        EXPECT_EQ(budget.decided_by_db, room);
    };
    decided(walk(-50, -20, 0, both), LVB_DECIDED_BY_FAR_FLOOR, 20.0);
    decided(walk(-30, -20, 0, both), LVB_DECIDED_BY_NEAR_CEILING, 10.0);
    decided(walk(-50, -10, 0, both), LVB_DECIDED_BY_FAR_FLOOR, 30.0); // equal room: the far end
    decided(walk(-50, -60, 0, both), LVB_DECIDED_BY_FAR_FLOOR, -20.0);
    decided(walk(-10, -20, 0, both), LVB_DECIDED_BY_NEAR_CEILING, -10.0);
    decided(walk(-10, -90, 0, both), LVB_DECIDED_BY_FAR_FLOOR, -10.0); // equally bad: the far end
}

TEST(Verdict, WithOneLimitThatOneDecides) {
    EXPECT_EQ(walk(-30, -10, 0, LVB_STATED_FLOOR).decided_by, LVB_DECIDED_BY_FAR_FLOOR);
    EXPECT_EQ(walk(-30, -10, 0, LVB_STATED_FLOOR).decided_by_db, 50.0);
    EXPECT_EQ(walk(-30, -10, 0, LVB_STATED_CEILING).decided_by, LVB_DECIDED_BY_NEAR_CEILING);
    EXPECT_EQ(walk(-30, -10, 0, LVB_STATED_CEILING).decided_by_db, 10.0);
}

// The verdict once more, in the words of the header, over chains of every shape.
TEST(Verdict, FollowsItsDefinition) {
    int seen[6] = {};
    with_random_chains(66, 3000, [&](Chain &chain, Random &) {
        const lvb_budget &b = chain.budget;
        const lvb_stage &last = chain.stages.back();
        const bool is_receiver = last.kind == LVB_KIND_RECEIVER;
        const bool floor = is_receiver && (last.stated & LVB_STATED_FLOOR) != 0;
        const bool ceiling = is_receiver && (last.stated & LVB_STATED_CEILING) != 0;
        EXPECT_EQ(std::isnan(b.far_end.margin_db), !floor);
        EXPECT_EQ(std::isnan(b.near_end.headroom_db), !ceiling);
        std::int32_t expected = LVB_VERDICT_NOT_JUDGED;
        if (floor || ceiling) {
            const bool out = floor && b.far_end.level_dbm < last.floor_dbm;
            const bool over = ceiling && b.near_end.level_dbm > last.ceiling_dbm;
            const bool doubt = (floor && b.far_end.level_dbm - last.floor_dbm < b.far_end.worst_db) ||
                               (ceiling && last.ceiling_dbm - b.near_end.level_dbm < b.near_end.worst_db) ||
                               (ceiling && last.ceiling_dbm - b.far_end.level_dbm < b.far_end.worst_db);
            expected = out && over ? LVB_VERDICT_DROPS_OUT_AND_OVERLOADS
                       : out       ? LVB_VERDICT_DROPS_OUT
                       : over      ? LVB_VERDICT_OVERLOADS
                       : doubt     ? LVB_VERDICT_DOUBTFUL
                                   : LVB_VERDICT_HOLDS;
        }
        EXPECT_EQ(b.verdict, expected);
        ++seen[b.verdict];
    });
    for (const int count : seen) EXPECT_GT(count, 0); // every verdict was met
}

TEST(Window, TheMiddleIsThatOfTheWantedBandOrOfTheWindow) {
    Chain narrow({source(-50.0), receiver(-90.0, -20.0)});
    ASSERT_EQ(narrow.compute(), LVB_OK);
    EXPECT_EQ(narrow.budget.far_end.from_middle_db, 5.0); // middle of floor and ceiling, where no band is stated
    Chain wanted({source(-50.0), receiver(-90.0, -70.0, -40.0, -20.0)});
    ASSERT_EQ(wanted.compute(), LVB_OK);
    EXPECT_EQ(wanted.budget.far_end.from_middle_db, 5.0);
}

TEST(Window, TheReceiversOwnGainStandsBeforeIt) {
    lvb_stage end = receiver(-90.0, -20.0);
    end.gain_db = -6.0;
    Chain chain({source(-50.0), end});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.far_end.level_dbm, -56.0);
    EXPECT_EQ(chain.budget.far_end.margin_db, 34.0);
}

TEST(Source, ItsGainIsAddedToItsLevel) {
    lvb_stage start = source(10.0);
    start.gain_db = -4.0;
    Chain chain({start});
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.levels[0].far_change_db, 6.0);
}

// ---- On what the numbers rest.

TEST(Bases, AreCountedAndGuessesCarryTheirShare) {
    with_random_chains(67, 500, [](Chain &chain, Random &) {
        std::uint32_t by[6] = {};
        std::uint32_t silent = 0;
        long double guessed = 0.0L, all = 0.0L;
        for (std::size_t i = 0; i < chain.stages.size(); ++i) {
            const lvb_stage &in = chain.stages[i];
            std::int32_t basis = in.basis;
            if (basis == LVB_BASIS_NOT_LOOKED_UP && in.cable_type != 0) basis = LVB_BASIS_HANDBOOK;
            if (basis == LVB_BASIS_NOT_LOOKED_UP && in.kind == LVB_KIND_AIR && in.gain_db == 0.0 && !in.gain_table)
                basis = LVB_BASIS_FORMULA;
            EXPECT_EQ(chain.levels[i].basis, basis);
            ++by[basis];
            all += in.tolerance_db;
            if (basis > LVB_BASIS_ESTIMATE) continue;
            guessed += in.tolerance_db;
            silent += in.tolerance_db == 0.0 ? 1u : 0u;
        }
        const lvb_budget &b = chain.budget;
        EXPECT_EQ(b.entries, chain.stages.size());
        EXPECT_EQ(b.not_looked_up, by[LVB_BASIS_NOT_LOOKED_UP]);
        EXPECT_EQ(b.estimated, by[LVB_BASIS_ESTIMATE]);
        EXPECT_EQ(b.handbook, by[LVB_BASIS_HANDBOOK]);
        EXPECT_EQ(b.data_sheet, by[LVB_BASIS_DATA_SHEET]);
        EXPECT_EQ(b.measured, by[LVB_BASIS_MEASURED]);
        EXPECT_EQ(b.formula, by[LVB_BASIS_FORMULA]);
        EXPECT_EQ(b.guesses, b.not_looked_up + b.estimated);
        EXPECT_EQ(b.guesses_without_tolerance, silent);
        EXPECT_NEAR(b.guess_worst_db, static_cast<double>(guessed), 1e-12);
        EXPECT_NEAR(b.guess_share, all > 0.0L ? static_cast<double>(guessed / all) : 0.0, 1e-12);
    });
}

// ---- Gain tables stand in place of a number on every kind of stage.

TEST(GainTables, ServeEveryKindAsTheNumberWould) {
    for (std::int32_t kind = LVB_KIND_SOURCE; kind <= LVB_KIND_RECEIVER; ++kind) {
        const auto chain_with = [&](double gain_db, const lvb_gain_table *table) {
            std::vector<lvb_stage> stages = {source(10.0),
                                             stage(LVB_KIND_PASSIVE),
                                             stage(LVB_KIND_AMPLIFIER),
                                             stage(LVB_KIND_CABLE, -1.0),
                                             antenna(),
                                             air(),
                                             stage(LVB_KIND_ALLOWANCE),
                                             antenna(),
                                             receiver(-90.0, -20.0)};
            for (lvb_stage &in : stages)
                if (in.kind == kind) {
                    in.gain_db = gain_db;
                    in.gain_table = table;
                    in.basis = LVB_BASIS_MEASURED;
                }
            Chain chain(stages);
            EXPECT_EQ(chain.compute(), LVB_OK) << kind;
            return chain.budget;
        };
        Lent lent;
        const lvb_budget by_number = chain_with(-4.25, nullptr);
        const lvb_budget by_table = chain_with(0.0, lent.gain({500.0, 600.0, 700.0}, {-1.0, -4.25, -9.0}));
        EXPECT_EQ(std::memcmp(&by_number, &by_table, sizeof by_table), 0) << kind;           // 600 MHz is a row
        const lvb_budget between = chain_with(0.0, lent.gain({500.0, 700.0}, {-1.0, -7.5})); // half way: -4.25
        EXPECT_NEAR(between.near_end.level_dbm, by_number.near_end.level_dbm, 1e-12) << kind;
    }
}

TEST(GainTables, AreExactAtRowsContinuousAndMonotoneBetween) {
    Random random(68);
    for (int i = 0; i < 200; ++i) {
        Lent lent;
        std::vector<double> mhz, db;
        double f = random.uniform(0.5, 100.0);
        for (std::uint64_t rows = 1 + random.below(12); rows > 0; --rows, f *= random.uniform(1.01, 1.6)) {
            mhz.push_back(f);
            db.push_back(random.uniform(-20.0, 20.0));
        }
        const lvb_gain_table *table = lent.gain(mhz, db);
        const auto gain_at = [&](double at) {
            lvb_stage amplifier = stage(LVB_KIND_AMPLIFIER);
            amplifier.gain_table = table;
            Chain chain({source(0.0), amplifier}, at);
            EXPECT_EQ(chain.compute(), LVB_OK) << at;
            return chain.budget.far_end.level_dbm;
        };
        for (std::size_t row = 0; row < mhz.size(); ++row) {
            EXPECT_EQ(gain_at(mhz[row]), db[row]);
            if (row == 0) continue;
            EXPECT_NEAR(gain_at(std::nextafter(mhz[row], 0.0)), db[row], 1e-12);
            const double part = random.uniform(0.0, 1.0);
            const double at = std::clamp(mhz[row - 1] + part * (mhz[row] - mhz[row - 1]), mhz[row - 1], mhz[row]);
            lvb_stage in = stage(LVB_KIND_AMPLIFIER);
            in.gain_table = table;
            EXPECT_NEAR(gain_at(at), static_cast<double>(gain_of(in, at)), 1e-12);
        }
    }
}

// ---- Notes.

TEST(Notes, NearFieldUnderOneWavelengthOfTheNearEnd) {
    const double wavelength = lvb_wavelength_m_from_mhz(600.0);
    Chain chain(ordinary(), 600.0, 40.0, wavelength);
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.notes, 0u);
    chain.link.near_distance_m = std::nextafter(wavelength, 0.0);
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.notes, static_cast<std::uint32_t>(LVB_NOTE_NEAR_FIELD));
    for (std::size_t i = 0; i < chain.levels.size(); ++i)
        EXPECT_EQ(chain.levels[i].notes,
                  chain.stages[i].kind == LVB_KIND_AIR ? static_cast<std::uint32_t>(LVB_NOTE_NEAR_FIELD) : 0u);
}

TEST(Notes, ANearDistanceThatIsNotGivenIsMarkedOnTheAir) {
    with_random_chains(70, 300, [](Chain &chain, Random &) {
        const bool missing = chain.has_air() && chain.link.near_distance_m == 0.0;
        EXPECT_EQ((chain.budget.notes & LVB_NOTE_NEAR_NOT_GIVEN) != 0, missing);
        for (std::size_t i = 0; i < chain.levels.size(); ++i)
            EXPECT_EQ((chain.levels[i].notes & LVB_NOTE_NEAR_NOT_GIVEN) != 0,
                      missing && chain.stages[i].kind == LVB_KIND_AIR);
    });
}

TEST(Notes, AnExtrapolatedCableIsMarkedOnItsOwnLine) {
    Chain chain(
        {source(0.0), cable(LVB_CABLE_RG_213_U, 10.0), cable(LVB_CABLE_FOAM_405_IN, 10.0), stage(LVB_KIND_PASSIVE)},
        40.0);
    ASSERT_EQ(chain.compute(), LVB_OK); // the first table begins at 50 MHz, the second at 30 MHz
    EXPECT_EQ(chain.levels[1].notes, static_cast<std::uint32_t>(LVB_NOTE_EXTRAPOLATED));
    EXPECT_EQ(chain.levels[2].notes, 0u);
    EXPECT_EQ(chain.levels[3].notes, 0u);
    EXPECT_EQ(chain.budget.notes, static_cast<std::uint32_t>(LVB_NOTE_EXTRAPOLATED));
}

// ---- Large and plain.

TEST(Length, TheLongestChainIsSummedLikeAShortOne) {
    std::vector<lvb_stage> stages = {source(100.0)};
    while (stages.size() < LVB_MAX_STAGES) stages.push_back(stage(LVB_KIND_PASSIVE, -0.125, 0.0625));
    Chain chain(stages);
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.budget.far_end.level_dbm, 100.0 - 0.125 * (LVB_MAX_STAGES - 1)); // exact in binary
    EXPECT_EQ(chain.budget.far_end.worst_db, 0.0625 * (LVB_MAX_STAGES - 1));
    EXPECT_EQ(chain.budget.entries, static_cast<std::uint32_t>(LVB_MAX_STAGES));
}

TEST(Cable, InAChainIsTheCableFunction) {
    Random random(69);
    for (int i = 0; i < 200; ++i) {
        const auto type = 1 + static_cast<std::int32_t>(random.below(lvb_cable_type_count()));
        const double length_m = random.log_uniform(-3.0, 3.0);
        lvb_stage line = cable(type, length_m, static_cast<std::uint32_t>(random.below(5)));
        if (line.connector_count != 0 && random.below(2)) line.connector_loss_db = random.uniform(0.01, 10.0);
        Chain chain({source(0.0), line}, random.uniform(60.0, 250.0));
        if (random.below(2)) {
            chain.link.stated = LVB_STATED_TEMPERATURE;
            chain.link.temperature_degc = random.uniform(-100.0, 200.0);
        }
        ASSERT_EQ(chain.compute(), LVB_OK);
        EXPECT_EQ(chain.levels[1].far_change_db, static_cast<double>(cable_gain(line, chain.link)));
        EXPECT_EQ(chain.levels[1].near_change_db, chain.levels[1].far_change_db);
    }
}

} // namespace
