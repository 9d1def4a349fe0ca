// Chains whose antennas have patterns and whose allowances have bodies: off-axis levels, e.i.r.p., nulls, grids.
#include "chain/random_chain.hpp"
#include "math/values.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

lvb_pattern cosine(double gain_dbi, double front_to_back_db = 0.0) {
    auto made = sized<lvb_pattern>();
    made.kind = LVB_PATTERN_COSINE;
    made.gain_dbi = gain_dbi;
    made.front_to_back_db = front_to_back_db;
    return made;
}

TEST(PatternStage, OnItsBoresightIsItsGain) {
    const lvb_pattern pattern = cosine(8.0);
    Chain plain(ordinary()), with(ordinary());
    plain.stages[3].gain_db = 8.0;
    with.stages[3].gain_db = 0.0;
    with.stages[3].pattern = &pattern;
    ASSERT_EQ(plain.compute(), LVB_OK);
    ASSERT_EQ(with.compute(), LVB_OK);
    EXPECT_TRUE(identical(plain.budget.far_end.level_dbm, with.budget.far_end.level_dbm));
    EXPECT_TRUE(identical(plain.budget.near_end.level_dbm, with.budget.near_end.level_dbm));
    EXPECT_TRUE(identical(plain.budget.eirp_dbm, with.budget.eirp_dbm));
    EXPECT_EQ(plain.budget.verdict, with.budget.verdict);
}

TEST(PatternStage, HasAGainForEachEndAndTheLicencesEirp) {
    const lvb_pattern pattern = cosine(10.0, 25.0);
    Chain chain(ordinary());
    chain.link.near_distance_m = 3.0;
    lvb_stage &antenna = chain.stages[3];
    antenna.gain_db = 0.0;
    antenna.pattern = &pattern;
    antenna.far_azimuth_deg = 20.0;
    antenna.far_elevation_deg = -5.0;
    antenna.near_azimuth_deg = -60.0;
    antenna.near_elevation_deg = 40.0;
    antenna.tolerance_db = 1.0;
    ASSERT_EQ(chain.compute(), LVB_OK);
    auto far = sized<lvb_pattern_gain>(), near = sized<lvb_pattern_gain>();
    ASSERT_EQ(lvb_compute_pattern_gain(&pattern, 20.0, -5.0, &far, nullptr), LVB_OK);
    ASSERT_EQ(lvb_compute_pattern_gain(&pattern, -60.0, 40.0, &near, nullptr), LVB_OK);
    EXPECT_EQ(chain.levels[3].far_change_db, far.gain_dbi);
    EXPECT_EQ(chain.levels[3].near_change_db, near.gain_dbi);
    EXPECT_LT(near.gain_dbi, far.gain_dbi);
    // the licence's e.i.r.p. is that of the direction of maximum radiation; the levels take that of the receiver
    EXPECT_NEAR(chain.budget.eirp_dbm, chain.levels[2].near_level_dbm + 10.0, 1e-12);
    EXPECT_NEAR(chain.levels[3].near_level_dbm, chain.levels[2].near_level_dbm + near.gain_dbi, 1e-12);
    EXPECT_EQ(chain.budget.eirp_worst_db, chain.levels[3].near_worst_db);
    EXPECT_EQ(chain.budget.notes & LVB_NOTE_NULL, 0u);
}

TEST(PatternStage, ANullDropsOutWithoutAnyNan) {
    const lvb_pattern nothing_behind = cosine(8.0);
    for (const std::size_t which : {std::size_t{3}, std::size_t{6}})
        for (const int end : {1, 2, 3}) { // far, near, both
            Chain chain(ordinary(receiver(-90.0, -60.0, -40.0, 10.0)));
            chain.link.near_distance_m = 3.0;
            lvb_stage &antenna = chain.stages[which];
            antenna.gain_db = 0.0;
            antenna.pattern = &nothing_behind;
            antenna.tolerance_db = 2.0;
            antenna.far_azimuth_deg = end & 1 ? 180.0 : 0.0;
            antenna.near_azimuth_deg = end & 2 ? 180.0 : 0.0;
            ASSERT_EQ(chain.compute(), LVB_OK);
            const lvb_budget &b = chain.budget;
            for (const double x : {b.eirp_dbm, b.eirp_worst_db, b.decided_by_db, b.guess_worst_db, b.guess_share})
                EXPECT_FALSE(std::isnan(x));
            for (const lvb_end *e : {&b.far_end, &b.near_end})
                for (const double x :
                     {e->level_dbm, e->worst_db, e->rss_db, e->margin_db, e->headroom_db, e->from_middle_db})
                    EXPECT_FALSE(std::isnan(x));
            for (const lvb_level &line : chain.levels)
                for (const double x :
                     {line.far_change_db, line.far_level_dbm, line.near_change_db, line.near_level_dbm})
                    EXPECT_FALSE(std::isnan(x));
            EXPECT_TRUE(std::isfinite(b.eirp_dbm));
            EXPECT_EQ(b.far_end.level_dbm == -infinity, (end & 1) != 0);
            EXPECT_EQ(b.near_end.level_dbm == -infinity, (end & 2) != 0);
            EXPECT_EQ(b.notes & LVB_NOTE_NULL, std::uint32_t{LVB_NOTE_NULL});
            EXPECT_EQ(chain.levels[which].notes & LVB_NOTE_NULL, std::uint32_t{LVB_NOTE_NULL});
            EXPECT_EQ(chain.levels[which - 1].notes & LVB_NOTE_NULL, 0u);
            if (end & 1) {
                EXPECT_EQ(b.verdict, LVB_VERDICT_DROPS_OUT);
                EXPECT_EQ(b.far_end.zone, LVB_ZONE_DROPOUT);
                EXPECT_EQ(b.far_end.margin_db, -infinity);
                EXPECT_EQ(b.decided_by, LVB_DECIDED_BY_FAR_FLOOR);
                EXPECT_EQ(b.decided_by_db, -infinity);
            }
            if (end & 2) {
                EXPECT_EQ(b.near_end.headroom_db, infinity);
            }
        }
}

TEST(BodyStage, CostsItsLossAtTheFarEndOnly) {
    const double facing[] = {0.0, 90.0, 180.0, 270.0}, loss[] = {3.0, 10.0, 25.0, 12.0};
    auto table = sized<lvb_body_table>();
    table.row_count = 4;
    table.facing_deg = facing;
    table.loss_db = loss;
    Chain plain(ordinary()), with(ordinary());
    plain.stages[5].gain_db = -17.5;
    with.stages[5].gain_db = 0.0;
    with.stages[5].body_table = &table;
    with.stages[5].facing_deg = 135.0;
    with.stages[5].tolerance_db = plain.stages[5].tolerance_db = 4.0;
    ASSERT_EQ(plain.compute(), LVB_OK);
    ASSERT_EQ(with.compute(), LVB_OK);
    EXPECT_TRUE(identical(plain.budget.far_end.level_dbm, with.budget.far_end.level_dbm));
    EXPECT_TRUE(identical(plain.budget.near_end.level_dbm, with.budget.near_end.level_dbm));
    EXPECT_EQ(with.levels[5].near_change_db, 0.0);
    EXPECT_EQ(with.budget.far_end.worst_db, plain.budget.far_end.worst_db);
    EXPECT_EQ(with.budget.near_end.worst_db, 0.0);
}

// Chains at random, their antennas given patterns and their allowances bodies.
struct Dressed {
    Lent lent;
    std::deque<lvb_pattern> patterns;
    std::deque<lvb_azimuth_cut> cuts;
    std::deque<lvb_body_table> bodies;

    const lvb_pattern *pattern(Random &random) {
        auto made = sized<lvb_pattern>();
        made.kind = static_cast<std::int32_t>(random.below(5));
        switch (made.kind) {
        case LVB_PATTERN_COSINE:
            made.gain_dbi = random.uniform(3.1, 15.0);
            break;
        case LVB_PATTERN_HELIX:
            made.turns = 8.0;
            made.spacing_wavelengths = 0.24;
            made.circumference_wavelengths = random.uniform(0.8, 1.2);
            break;
        case LVB_PATTERN_CUTS: {
            auto cut = sized<lvb_azimuth_cut>();
            cut.row_count = 3;
            cut.azimuth_deg = lent.columns.emplace_back(std::vector<double>{-100.0, 0.0, 120.0}).data();
            cut.gain_db =
                lent.columns.emplace_back(std::vector<double>{-10.0, random.uniform(-3.0, 0.0), -14.0}).data();
            made.azimuth_cut = &cuts.emplace_back(cut);
            made.gain_dbi = random.uniform(-3.0, 9.0);
            break;
        }
        default:
            break;
        }
        if (made.kind >= LVB_PATTERN_COSINE && random.below(2)) made.front_to_back_db = random.uniform(5.0, 40.0);
        return &patterns.emplace_back(made);
    }
    const lvb_body_table *body(Random &random) {
        auto made = sized<lvb_body_table>();
        made.row_count = 3;
        made.facing_deg = lent.columns.emplace_back(std::vector<double>{-120.0, 10.0, 140.0}).data();
        made.loss_db = lent.columns.emplace_back(std::vector<double>{9.0, random.uniform(0.0, 5.0), 20.0}).data();
        return &bodies.emplace_back(made);
    }
    Chain make(Random &random) {
        Chain chain = ChainMaker(random, lent, Lending::tables).make();
        for (lvb_stage &stage : chain.stages) {
            if (stage.kind != LVB_KIND_ANTENNA && stage.kind != LVB_KIND_ALLOWANCE) continue;
            stage.gain_db = 0.0;
            stage.gain_table = nullptr;
            if (stage.kind == LVB_KIND_ALLOWANCE) {
                stage.body_table = body(random);
                stage.facing_deg = random.uniform(-360.0, 360.0);
                continue;
            }
            stage.pattern = pattern(random);
            stage.far_azimuth_deg = random.uniform(-120.0, 120.0);
            stage.near_azimuth_deg = random.uniform(-120.0, 120.0);
            stage.far_elevation_deg = random.uniform(-60.0, 60.0);
            stage.near_elevation_deg = random.below(9) ? random.uniform(-60.0, 60.0) : 90.0;
        }
        return chain;
    }
};

TEST(PatternStage, GivesTheSameBitsInAGrid) {
    Random random(131);
    int nulls = 0, compared = 0;
    for (int i = 0; i < 2000; ++i) {
        Dressed dressed;
        Chain chain = dressed.make(random);
        ASSERT_EQ(chain.compute(), LVB_OK) << lvb_field_name(chain.fault.field);
        if (!chain.has_air()) continue;
        for (const std::int32_t end : {LVB_END_FAR, LVB_END_NEAR}) {
            const double near_m = chain.link.near_distance_m;
            const double mhz = chain.link.frequency_mhz,
                         metres = end == LVB_END_NEAR && near_m != 0.0 ? near_m : chain.link.far_distance_m;
            double scratch[2], level = 0.0;
            auto grid = sized<lvb_grid>();
            grid.end = end;
            grid.frequency_count = grid.distance_count = 1;
            grid.link = &chain.link;
            grid.frequency_mhz = &mhz;
            grid.distance_m = &metres;
            grid.scratch = scratch;
            grid.level_dbm = &level;
            auto bad = sized<lvb_bad>();
            ASSERT_EQ(lvb_compute_grid(&grid, &bad, nullptr), LVB_OK);
            EXPECT_EQ(bad.count, 0u);
            const lvb_end &single = end == LVB_END_FAR ? chain.budget.far_end : chain.budget.near_end;
            EXPECT_TRUE(identical(level, single.level_dbm)) << level << ' ' << single.level_dbm;
            nulls += level == -infinity;
            ++compared;
        }
    }
    EXPECT_GT(nulls, 100);
    EXPECT_GT(compared, 1000);
}

// The book still adds up: levels are the sums of the changes.
TEST(PatternStage, AddsUp) {
    Random random(132);
    for (int i = 0; i < 2000; ++i) {
        Dressed dressed;
        Chain chain = dressed.make(random);
        ASSERT_EQ(chain.compute(), LVB_OK);
        double far = 0.0, near = 0.0, peak = 0.0;
        bool radiated = false;
        for (std::size_t k = 0; k < chain.stages.size(); ++k) {
            if (chain.stages[k].kind == LVB_KIND_ANTENNA && !radiated) {
                radiated = true;
                auto gain = sized<lvb_pattern_gain>();
                ASSERT_EQ(lvb_compute_pattern_gain(chain.stages[k].pattern, 0.0, 0.0, &gain, nullptr), LVB_OK);
                peak = near + gain.maximum_dbi;
                EXPECT_NEAR(chain.budget.eirp_dbm, peak, 1e-11);
            }
            far += chain.levels[k].far_change_db;
            near += chain.levels[k].near_change_db;
            if (far > -infinity) {
                EXPECT_NEAR(chain.levels[k].far_level_dbm, far, 1e-10);
            } else {
                EXPECT_EQ(chain.levels[k].far_level_dbm, -infinity);
            }
            if (near > -infinity) {
                EXPECT_NEAR(chain.levels[k].near_level_dbm, near, 1e-10);
            } else {
                EXPECT_EQ(chain.levels[k].near_level_dbm, -infinity);
            }
        }
        EXPECT_NE(radiated, std::isnan(chain.budget.eirp_dbm));
    }
}

} // namespace
