// Walks: the points of the map along a polyline, times under the floor and over the ceiling, refusals.
#include "door/refusal.hpp"
#include "map/sites.hpp"
#include "path/paths.hpp"

#include <cmath>

namespace {

using namespace proof;

struct Walked {
    std::vector<double> x, y, z;
    lvb_walk walk = sized<lvb_walk>();
    lvb_walk_result result = sized<lvb_walk_result>();
    std::vector<double> distance, level, margin, headroom, outage;
    std::vector<std::int32_t> zone, serving;
    lvb_fault fault = sized<lvb_fault>();

    Walked(std::vector<double> xs, std::vector<double> ys, double speed, double step, std::vector<double> zs = {})
        : x(std::move(xs)), y(std::move(ys)), z(std::move(zs)) {
        walk.corner_count = static_cast<std::uint32_t>(x.size());
        walk.x_m = x.data();
        walk.y_m = y.data();
        walk.z_m = z.empty() ? nullptr : z.data();
        walk.speed_m_per_s = speed;
        walk.step_m = step;
        walk.instructions = all_instructions(instruction_sets());
    }
    void fade(std::int32_t law, double parameter) {
        outage.resize(1);
        walk.outage = outage.data(); // its place while the points are not counted
        walk.fading = law;
        walk.fading_parameter = parameter;
    }
    lvb_status compute(Stage &stage) {
        walk.site = stage.lent();
        std::uint64_t points = 0;
        const lvb_status status = lvb_walk_point_count(&walk, &points, &fault);
        if (status != LVB_OK) return status;
        for (std::vector<double> *each : {&distance, &level, &margin, &headroom}) each->assign(points, -7.25e77);
        if (walk.outage != nullptr) outage.assign(points, -7.25e77);
        if (walk.outage != nullptr) walk.outage = outage.data();
        zone.assign(points, -9);
        serving.assign(points, -9);
        walk.distance_m = distance.data();
        walk.level_dbm = level.data();
        walk.margin_db = margin.data();
        walk.headroom_db = headroom.data();
        walk.zone = zone.data();
        walk.serving = serving.data();
        return lvb_compute_walk(&walk, &result, &fault);
    }
};

TEST(Walk, HasThePointsOfTheMapOnItsWay) {
    Stage stage(1.2);
    stage.pattern(stage.add(chain_out(), 3.0, -4.0, 2.5), LVB_PATTERN_COSINE).gain_dbi = 7.0;
    stage.add(chain_out(11.0), 0.0, 9.0, 2.5);
    stage.screen(2.0, 1.0, 4.0, 1.0, 0.0, 2.0);
    stage.area({50.0, 51.0, 51.0}, {0.0, 0.0, 1.0}); // not asked
    Walked walked({0.0, 100.0}, {2.0, 2.0}, 1.0, 0.25);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    stage.areas.clear();
    Mapped mapped(stage, 0.0, 2.0, 0.25, 401, 1);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
    ASSERT_EQ(walked.level.size(), 401u);
    for (std::size_t k = 0; k < 401; ++k) {
        EXPECT_NEAR(walked.level[k], mapped.level[k], 1e-9);
        EXPECT_NEAR(walked.headroom[k], mapped.headroom[k], 1e-9);
        EXPECT_EQ(walked.zone[k], mapped.zone[k]);
        EXPECT_EQ(walked.serving[k], mapped.serving[k]);
        EXPECT_EQ(walked.distance[k], 0.25 * static_cast<double>(k));
    }
    EXPECT_EQ(walked.result.worst_level_dbm, *std::min_element(walked.level.begin(), walked.level.end()));
    EXPECT_EQ(walked.result.hottest_headroom_db, *std::min_element(walked.headroom.begin(), walked.headroom.end()));
}

// A pack's antenna turns with a walker as it does at the points of a map.
TEST(Walk, HasThePacksAntennaOfTheMapOnItsWay) {
    for (const std::int32_t facing : {LVB_FACING_AZIMUTH, LVB_FACING_POINT, LVB_FACING_ANTENNA, LVB_FACING_AWAY}) {
        Stage stage(1.2);
        stage.add(chain_out(), 3.0, -4.0, 2.5).polarization_deg = 25.0;
        stage.add(chain_out(11.0), 0.0, 9.0, 2.5).ellipticity = -0.5;
        stage.worn.roll_deg = 50.0;
        stage.pattern(stage.worn, LVB_PATTERN_HALF_WAVE_DIPOLE);
        stage.site.pack_antenna = &stage.worn;
        stage.site.most_polarization_loss_db = 15.0;
        stage.site.facing = facing;
        if (facing == LVB_FACING_POINT) stage.site.facing_y_m = 30.0;
        Walked walked({0.0, 25.0}, {2.0, 2.0}, 1.0, 0.25);
        ASSERT_EQ(walked.compute(stage), LVB_OK) << lvb_field_name(walked.fault.field);
        Mapped mapped(stage, 0.0, 2.0, 0.25, 101, 1);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
        stage.site.pack_antenna = nullptr; // at some point it makes a difference
        stage.site.most_polarization_loss_db = stage.site.facing_y_m = 0.0;
        stage.site.facing = 0;
        for (lvb_antenna &each : stage.placed) each.polarization_deg = each.ellipticity = 0.0;
        Mapped plain(stage, 0.0, 2.0, 0.25, 101, 1);
        ASSERT_EQ(plain.compute(stage.fault), LVB_OK);
        double most_db = 0.0;
        ASSERT_EQ(walked.level.size(), 101u);
        for (std::size_t k = 0; k < 101; ++k) {
            EXPECT_NEAR(walked.level[k], mapped.level[k], 1e-9) << facing << " " << k;
            EXPECT_NEAR(walked.headroom[k], mapped.headroom[k], 1e-9);
            EXPECT_EQ(walked.serving[k], mapped.serving[k]);
            most_db = std::max(most_db, std::abs(walked.level[k] - plain.level[k]));
        }
        EXPECT_GT(most_db, 3.0);
    }
}

TEST(Walk, TurnsAtItsCornersAndClimbs) {
    Stage stage(0.0);
    stage.add({source(0.0), antenna(), air(), antenna()}, 0.0, 0.0, 50.0, 600.0);
    // 3-4-5: 3 along, 4 along, then 5 up in no time of its own
    Walked walked({0.0, 3.0, 3.0, 3.0}, {0.0, 0.0, 4.0, 4.0}, 2.0, 1.0, {1.0, 1.0, 1.0, 6.0});
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_EQ(walked.result.length_m, 12.0);
    EXPECT_EQ(walked.result.duration_s, 6.0);
    ASSERT_EQ(walked.level.size(), 13u);
    for (std::size_t k = 0; k < 13; ++k) {
        const double s = static_cast<double>(k);
        const double x = std::min(s, 3.0), y = std::min(std::max(s - 3.0, 0.0), 4.0), z = 1.0 + std::max(s - 7.0, 0.0);
        const double distance = std::sqrt(x * x + y * y + (z - 50.0) * (z - 50.0));
        EXPECT_NEAR(walked.level[k], -lvb_free_space_loss_db(600.0, distance), 1e-12) << k;
    }
}

TEST(Walk, EndsAtItsEnd) {
    Stage stage;
    stage.add(chain_out(), 0.0, -5.0, 2.0);
    Walked uneven({0.0, 1.0}, {0.0, 0.0}, 1.0, 0.3);
    ASSERT_EQ(uneven.compute(stage), LVB_OK);
    ASSERT_EQ(uneven.distance.size(), 5u);
    EXPECT_NEAR(uneven.distance[3], 0.9, 1e-15);
    EXPECT_EQ(uneven.distance[4], 1.0);
    Walked longer({0.0, 1.0}, {0.0, 0.0}, 1.0, 5.0);
    ASSERT_EQ(longer.compute(stage), LVB_OK);
    EXPECT_EQ(longer.distance, (std::vector<double>{0.0, 1.0}));
}

/// A chain whose level is that of free space in dB and whose floor or ceiling stands at a distance.
double level_at(double distance_m) { return -lvb_free_space_loss_db(600.0, distance_m); }

TEST(Walk, TellsForHowLongTheFloorIsMissed) {
    // away from the antenna and back: under the floor beyond 20 m
    Stage stage(2.0);
    stage.add({source(0.0), antenna(), air(), antenna(), receiver(level_at(20.0), level_at(2.0))}, 0.0, 0.0, 2.0);
    Walked walked({1.0, 30.0, 1.0, 25.0}, {0.0, 0.0, 0.0, 0.0}, 1.5, 0.01);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    const lvb_walk_result &told = walked.result;
    EXPECT_NEAR(told.under_floor_s, (20.0 + 5.0) / 1.5, 1e-4);
    EXPECT_NEAR(told.longest_under_floor_s, 20.0 / 1.5, 1e-4);
    EXPECT_NEAR(told.longest_under_floor_m, 19.0, 1e-4);
    EXPECT_NEAR(told.over_ceiling_s, (1.0 + 2.0) / 1.5, 1e-4);
    EXPECT_NEAR(told.longest_over_ceiling_s, 2.0 / 1.5, 1e-4);
    EXPECT_NEAR(told.longest_over_ceiling_m, 29.0 + 28.0, 1e-4);
    EXPECT_NEAR(told.worst_m, 29.0, 1e-9);
    EXPECT_NEAR(told.worst_level_dbm, level_at(30.0), 1e-12);
    EXPECT_NEAR(told.hottest_m, 0.0, 1e-9);
    EXPECT_NEAR(told.hottest_headroom_db, level_at(2.0) - level_at(1.0), 1e-12);
}

TEST(Walk, HasTheOutageOfTheMapOnItsWay) {
    Stage stage(1.2);
    stage.add(chain_out(), 3.0, -4.0, 2.5);
    for (std::int32_t law = LVB_FADING_RAYLEIGH; law <= LVB_FADING_SUZUKI; ++law) {
        const double parameter = law == LVB_FADING_RAYLEIGH ? 0.0 : 4.0;
        Walked walked({0.0, 100.0}, {2.0, 2.0}, 1.25, 0.25);
        walked.fade(law, parameter);
        ASSERT_EQ(walked.compute(stage), LVB_OK);
        Mapped mapped(stage, 0.0, 2.0, 0.25, 401, 1);
        mapped.fade(law, parameter);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
        double sum = 0.0; // of the trapezoids
        for (std::size_t k = 0; k < 401; ++k) {
            EXPECT_NEAR(walked.outage[k], mapped.outage[k], 1e-10);
            sum += mapped.outage[k] * (k == 0 || k == 400 ? 0.5 : 1.0);
        }
        EXPECT_NEAR(walked.result.expected_under_floor_s, sum * 0.25 / 1.25, 1e-9);
        EXPECT_NEAR(walked.result.mean_outage, sum / 400.0, 1e-11);
    }
}

// Rayleigh's outage for a mean level of free space, 1 - exp(-(d / d0)^2) where d0 is the floor's distance, has an error
// function for its integral along a way straight from the antenna.
TEST(Walk, ExpectsTheIntegralOfTheOutage) {
    Stage stage(2.0);
    stage.add({source(0.0), antenna(), air(), antenna(), receiver(level_at(20.0), level_at(0.5))}, 0.0, 0.0, 2.0);
    Walked walked({1.0, 60.0}, {0.0, 0.0}, 2.0, 0.005);
    walked.fade(LVB_FADING_RAYLEIGH, 0.0);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    const double clear_m = 20.0 * std::sqrt(std::acos(-1.0)) / 2.0 * (std::erf(60.0 / 20.0) - std::erf(1.0 / 20.0));
    EXPECT_NEAR(walked.result.expected_under_floor_s, (59.0 - clear_m) / 2.0, 1e-6);
    EXPECT_NEAR(walked.result.mean_outage, (59.0 - clear_m) / 59.0, 1e-7);
    EXPECT_NEAR(walked.result.under_floor_s, 20.0, 1e-4); // the mean alone: beyond 20 m
    walked.walk.outage = nullptr;                         // the result may be asked alone, and is the same
    const double expected = walked.result.expected_under_floor_s;
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_TRUE(identical(walked.result.expected_under_floor_s, expected));
    walked.walk.fading = LVB_FADING_NONE;
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_TRUE(std::isnan(walked.result.expected_under_floor_s) && std::isnan(walked.result.mean_outage));
}

TEST(Walk, ExpectsNothingWhereAPathDoesNotHold) {
    std::vector<lvb_stage> chain = chain_out();
    auto path = sized<lvb_path>();
    path.model = LVB_PATH_SITE_GENERAL;
    path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT;
    chain[3].path = &path;
    Stage stage(2.0);
    stage.add(chain, 0.0, 0.0, 2.0, 2400.0);
    Walked walked({0.5, 1.5}, {0.0, 0.0}, 1.0, 0.5);
    walked.fade(LVB_FADING_RAYLEIGH, 0.0);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_EQ(walked.result.unmodelled, 3u);
    EXPECT_EQ(walked.result.expected_under_floor_s, 0.0);
    EXPECT_TRUE(std::isnan(walked.result.mean_outage) && std::isnan(walked.outage[0]));
}

TEST(Walk, CountsNothingWhereNothingIsStated) {
    Stage stage(2.0);
    stage.add({source(0.0), antenna(), air(), antenna()}, 0.0, 0.0, 2.0);
    Walked walked({1.0, 30.0}, {0.0, 0.0}, 1.5, 0.5);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_EQ(walked.result.under_floor_s, 0.0);
    EXPECT_EQ(walked.result.over_ceiling_s, 0.0);
    EXPECT_TRUE(std::isnan(walked.result.longest_under_floor_m) && std::isnan(walked.result.worst_margin_db));
    EXPECT_FALSE(std::isnan(walked.result.worst_level_dbm));
}

TEST(Walk, BehindACosineIsUnderTheFloorAllTheTime) {
    Stage stage(2.0);
    stage.pattern(stage.add(chain_out(), 0.0, 0.0, 2.0), LVB_PATTERN_COSINE).gain_dbi = 6.0;
    Walked walked({-4.0, 4.0}, {-3.0, -3.0}, 2.0, 0.5);
    ASSERT_EQ(walked.compute(stage), LVB_OK);
    EXPECT_EQ(walked.result.under_floor_s, 4.0);
    EXPECT_EQ(walked.result.longest_under_floor_m, 0.0);
    EXPECT_EQ(walked.result.over_ceiling_s, 0.0);
}

TEST(Walk, HasTheSameBitsOnEveryInstructionSet) {
    Stage stage(1.1);
    stage.pattern(stage.add(chain_out(), 1.0, -4.0, 2.5), LVB_PATTERN_COSINE).beam_width_deg = 71.0;
    stage.add(chain_out(4.0, 1.0, -12.0), -5.0, 7.0, 2.0);
    stage.screen(-1.0, 0.0, 2.0, 0.5, 0.0, 2.2);
    Walked baseline({-7.0, 7.0, 0.0, -3.0}, {-3.0, 4.0, 6.0, -3.0}, 1.3, 0.037);
    baseline.walk.instructions = LVB_INSTRUCTIONS_BASELINE;
    ASSERT_EQ(baseline.compute(stage), LVB_OK);
    for (std::int32_t set = LVB_INSTRUCTIONS_AUTOMATIC; set <= instruction_sets(); ++set) {
        Walked other({-7.0, 7.0, 0.0, -3.0}, {-3.0, 4.0, 6.0, -3.0}, 1.3, 0.037);
        other.walk.instructions = set;
        ASSERT_EQ(other.compute(stage), LVB_OK);
        EXPECT_TRUE(std::equal(baseline.level.begin(), baseline.level.end(), other.level.begin(), identical));
        EXPECT_TRUE(std::equal(baseline.headroom.begin(), baseline.headroom.end(), other.headroom.begin(), identical));
        EXPECT_TRUE(identical(baseline.result.under_floor_s, other.result.under_floor_s));
    }
}

// A walk that brings its heights does not ask for the packs': two rays over it need theirs at its corners only.
TEST(Walk, OverTwoRaysTakesItsOwnHeights) {
    Way rays(LVB_PATH_TWO_RAY);
    rays.ground(5.0, 0.01);
    std::vector<lvb_stage> chain = chain_out();
    chain[3].path = rays.lent();
    std::vector<double> levels[2];
    for (const double pack_m : {1.5, 0.0}) { // the second was never filled
        Stage stage(pack_m);
        stage.add(chain, 0.0, -5.0, 2.0);
        Walked walked({-3.0, 3.0}, {0.0, 0.0}, 1.0, 0.5, {1.5, 1.5});
        ASSERT_EQ(walked.compute(stage), LVB_OK) << text_of(walked.fault);
        levels[pack_m == 0.0] = walked.level;
    }
    EXPECT_TRUE(std::equal(levels[0].begin(), levels[0].end(), levels[1].begin(), identical));
    Stage stage(0.0);
    stage.add(chain, 0.0, -5.0, 2.0);
    Walked low({-3.0, 3.0}, {0.0, 0.0}, 1.0, 0.5, {1.5, 0.0});
    EXPECT_EQ(low.compute(stage), LVB_E_BELOW_RANGE);
    expect_fault(low.fault, {LVB_E_BELOW_RANGE, LVB_STRUCT_WALK, LVB_FIELD_Z_M, -1, 1, 0.0, 0.01, 1000.0});
    Walked without({-3.0, 3.0}, {0.0, 0.0}, 1.0, 0.5);
    EXPECT_EQ(without.compute(stage), LVB_E_BELOW_RANGE);
    expect_fault(without.fault,
                 {LVB_E_BELOW_RANGE, LVB_STRUCT_SITE, LVB_FIELD_PACK_HEIGHT_M, -1, -1, 0.0, 0.01, 1000.0});
}

TEST(WalkRefusals, AreToldWithTheirNumbers) {
    Stage stage;
    stage.add(chain_out(), 0.0, -5.0, 2.0);
    const auto refused = [&](Walked &walked, const Expected &expected) {
        Untouched<lvb_walk_result> untouched;
        walked.walk.site = stage.lent();
        EXPECT_EQ(lvb_compute_walk(&walked.walk, &untouched.result, &walked.fault), expected.status);
        EXPECT_TRUE(untouched.holds());
        expect_fault(walked.fault, expected);
    };
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_walk(nullptr, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_WALK});
    {
        Walked walked({0.0}, {0.0}, 1.0, 1.0);
        refused(walked, {LVB_E_COUNT, LVB_STRUCT_WALK, LVB_FIELD_CORNER_COUNT, -1, -1, 1.0, 2.0, 1024.0});
    }
    {
        Walked walked({0.0, none}, {0.0, 1.0}, 1.0, 1.0);
        refused(walked, {LVB_E_NAN, LVB_STRUCT_WALK, LVB_FIELD_X_M, -1, 1, none, -1e6, 1e6});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 1.0, {1.0, 2000.0});
        refused(walked, {LVB_E_ABOVE_RANGE, LVB_STRUCT_WALK, LVB_FIELD_Z_M, -1, 1, 2000.0, -1000.0, 1000.0});
    }
    {
        Walked walked({2.0, 2.0}, {3.0, 3.0}, 1.0, 1.0);
        refused(walked, {LVB_E_MISSING, LVB_STRUCT_WALK, LVB_FIELD_CORNER_COUNT, -1, -1, 0.0, none, none,
                         "lvb_walk.corner_count: the walk has no length, all its corners are in one place."});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 0.0, 1.0);
        refused(walked, {LVB_E_MISSING, LVB_STRUCT_WALK, LVB_FIELD_SPEED_M_PER_S, -1, -1, 0.0, 0.001, 1000.0});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 1e-4);
        refused(walked, {LVB_E_BELOW_RANGE, LVB_STRUCT_WALK, LVB_FIELD_STEP_M, -1, -1, 1e-4, 0.001, 1e6});
    }
    {
        Walked walked({-1e6, 1e6}, {0.0, 0.0}, 1.0, 0.001);
        refused(walked, {LVB_E_COUNT, LVB_STRUCT_WALK, LVB_FIELD_STEP_M, -1, -1, 2000000001.0, 2.0, 1073741824.0});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 0.5);
        std::vector<double> shared(20);
        walked.walk.level_dbm = shared.data();
        walked.walk.headroom_db = shared.data() + 1;
        refused(walked, {LVB_E_CONFLICT, LVB_STRUCT_WALK, LVB_FIELD_HEADROOM_DB});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 0.5);
        std::vector<double> shared(20);
        walked.walk.level_dbm = shared.data();
        walked.walk.fading = LVB_FADING_RAYLEIGH;
        walked.walk.outage = shared.data() + 2;
        refused(walked, {LVB_E_CONFLICT, LVB_STRUCT_WALK, LVB_FIELD_OUTAGE});
    }
    {
        Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 0.5);
        walked.fade(LVB_FADING_NONE, 0.0);
        walked.outage.resize(9);
        walked.walk.outage = walked.outage.data();
        refused(walked, {LVB_E_MISSING, LVB_STRUCT_WALK, LVB_FIELD_FADING, -1, -1, 0.0, 1.0, 5.0});
        walked.walk.fading = 6;
        refused(walked, {LVB_E_UNKNOWN_VALUE, LVB_STRUCT_WALK, LVB_FIELD_FADING, -1, -1, 6.0, 0.0, 5.0});
        walked.walk.fading = LVB_FADING_NAKAGAMI;
        refused(walked, {LVB_E_MISSING, LVB_STRUCT_WALK, LVB_FIELD_FADING_PARAMETER, -1, -1, 0.0, 0.5, 100.0});
        walked.walk.fading = LVB_FADING_RAYLEIGH;
        walked.walk.fading_parameter = 2.0;
        refused(walked, {LVB_E_UNUSED, LVB_STRUCT_WALK, LVB_FIELD_FADING_PARAMETER, -1, -1, 2.0});
        walked.walk.fading_parameter = 0.0;
        walked.walk.outage = nullptr;
        EXPECT_EQ(lvb_compute_walk(&walked.walk, nullptr, &fault), LVB_E_UNUSED);
        expect_fault(fault,
                     {LVB_E_UNUSED, LVB_STRUCT_WALK, LVB_FIELD_FADING, -1, -1, 1.0, none, none,
                      "lvb_walk.fading is filled, but the walk has neither an array `outage` nor a result: give one, "
                      "or no law of fading."});
        stage.chains.back().back() = receiver();
        refused(walked, {LVB_E_MISSING, LVB_STRUCT_WALK, LVB_FIELD_FLOOR_DBM, -1, -1, 0.0});
    }
    Walked walked({0.0, 1.0}, {0.0, 1.0}, 1.0, 0.5);
    EXPECT_EQ(lvb_walk_point_count(&walked.walk, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_POINT_COUNT});
}

} // namespace
