// What maps refuse, with every number of the fault, and that nothing is written then.
#include "door/refusal.hpp"
#include "map/sites.hpp"
#include "path/paths.hpp"

#include <cmath>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

/// A sound site and map, to be spoilt.
struct Sound {
    Stage stage;
    Mapped mapped;
    Sound() : mapped((fill(stage), stage), 0.0, 0.0, 1.0, 3, 2) {}
    static void fill(Stage &stage) {
        stage.pattern(stage.add(chain_out(), 0.0, -3.0, 2.0), LVB_PATTERN_COSINE).gain_dbi = 6.0;
        stage.add(chain_out(), 5.0, -3.0, 2.0);
        stage.area({0.0, 4.0, 4.0}, {0.0, 0.0, 3.0});
        stage.screen(1.0, 1.0, 2.0, 1.0, 0.0, 2.0);
    }
    void refused(const Expected &expected) {
        stage.lent();
        Untouched<lvb_map_summary> summary;
        const std::vector<double> before = mapped.level;
        EXPECT_EQ(lvb_compute_map(&mapped.map, &summary.result, &stage.fault), expected.status);
        EXPECT_TRUE(summary.holds());
        EXPECT_TRUE(std::equal(before.begin(), before.end(), mapped.level.begin(), identical));
        expect_fault(stage.fault, expected);
    }
};

TEST(MapRefusals, BeginWithNothing) {
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_map(nullptr, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_MAP});
    Sound sound;
    EXPECT_EQ(sound.mapped.compute(sound.stage.fault), LVB_OK);
    sound.mapped.map.site = nullptr;
    sound.refused({LVB_E_NULL, LVB_STRUCT_MAP, LVB_FIELD_SITE});
}

TEST(MapRefusals, OfTheGrid) {
    struct Case {
        double lvb_map::*member;
        double value;
        Expected expected;
    };
    const Case cases[] = {
        {&lvb_map::x_m, none, {LVB_E_NAN, LVB_STRUCT_MAP, LVB_FIELD_X_M, -1, -1, none, -1e6, 1e6}},
        {&lvb_map::y_m, -infinity, {LVB_E_INFINITE, LVB_STRUCT_MAP, LVB_FIELD_Y_M, -1, -1, -infinity, -1e6, 1e6}},
        {&lvb_map::step_x_m, 0.0, {LVB_E_MISSING, LVB_STRUCT_MAP, LVB_FIELD_STEP_X_M, -1, -1, 0.0, 1e-6, 1e6}},
        {&lvb_map::step_y_m, -1.0, {LVB_E_BELOW_RANGE, LVB_STRUCT_MAP, LVB_FIELD_STEP_Y_M, -1, -1, -1.0, 1e-6, 1e6}},
        {&lvb_map::step_x_m, 1e6, {LVB_E_COUNT, LVB_STRUCT_MAP, LVB_FIELD_COLUMN_COUNT, -1, -1, 3.0, 0.0, 2.0}},
        {&lvb_map::fading_parameter, 3.0, {LVB_E_UNUSED, LVB_STRUCT_MAP, LVB_FIELD_FADING_PARAMETER, -1, -1, 3.0}},
    };
    for (const Case &each : cases) {
        Sound sound;
        sound.mapped.map.*each.member = each.value;
        sound.refused(each.expected);
    }
    {
        Sound sound;
        sound.mapped.map.column_count = std::uint64_t{LVB_MAX_VALUES} + 1;
        sound.refused({LVB_E_COUNT, LVB_STRUCT_MAP, LVB_FIELD_COLUMN_COUNT, -1, -1, 1073741825.0, 0.0, LVB_MAX_VALUES});
    }
    {
        Sound sound;
        sound.mapped.map.row_count = LVB_MAX_VALUES / 2;
        sound.refused(
            {LVB_E_COUNT, LVB_STRUCT_MAP, LVB_FIELD_ROW_COUNT, -1, -1, LVB_MAX_VALUES / 2, 0.0, LVB_MAX_VALUES / 3});
    }
    {
        Sound sound;
        sound.mapped.map.first_row = std::uint64_t{LVB_MAX_VALUES} + 1;
        sound.refused({LVB_E_COUNT, LVB_STRUCT_MAP, LVB_FIELD_FIRST_ROW, -1, -1, 1073741825.0, 0.0, LVB_MAX_VALUES});
    }
    {
        Sound sound;
        sound.mapped.map.reserved = 7;
        sound.refused({LVB_E_RESERVED, LVB_STRUCT_MAP, LVB_FIELD_RESERVED, -1, -1, 7.0, 0.0, 0.0});
    }
    {
        Sound sound;
        sound.mapped.map.margin_db = sound.mapped.map.level_dbm + 5;
        sound.refused({LVB_E_CONFLICT, LVB_STRUCT_MAP, LVB_FIELD_MARGIN_DB, -1, -1, none, none, none,
                       "lvb_map.margin_db overlaps another array of the call."});
    }
    {
        Sound sound;
        sound.mapped.map.instructions = 9;
        sound.stage.lent();
        EXPECT_EQ(sound.mapped.compute(sound.stage.fault), LVB_E_UNKNOWN_VALUE);
    }
}

TEST(MapRefusals, OfTheOutage) {
    const Expected missing{LVB_E_MISSING, LVB_STRUCT_MAP, LVB_FIELD_FADING, -1, -1, 0.0, 1.0, 5.0};
    Sound sound;
    sound.mapped.fade(LVB_FADING_NONE, 0.0);
    sound.refused(missing);
    sound.mapped.map.fading = LVB_FADING_NAKAGAMI;
    sound.refused({LVB_E_MISSING, LVB_STRUCT_MAP, LVB_FIELD_FADING_PARAMETER, -1, -1, 0.0, 0.5, 100.0});
    sound.mapped.map.fading = 6;
    sound.refused({LVB_E_UNKNOWN_VALUE, LVB_STRUCT_MAP, LVB_FIELD_FADING, -1, -1, 6.0, 0.0, 5.0});
    sound.mapped.map.fading = LVB_FADING_RAYLEIGH;
    sound.mapped.map.outage = nullptr;
    sound.refused({LVB_E_UNUSED, LVB_STRUCT_MAP, LVB_FIELD_FADING, -1, -1, 1.0, none, none,
                   "lvb_map.fading is filled, but the map has no array `outage` to put its result in: give one, or no "
                   "law of fading."});
    sound.mapped.map.outage = sound.mapped.outage.data();
    for (auto &chain : sound.stage.chains) chain.back() = receiver();
    sound.refused({LVB_E_MISSING, LVB_STRUCT_MAP, LVB_FIELD_FLOOR_DBM, -1, -1, 0.0});
}

TEST(MapRefusals, OfTheSite) {
    struct Case {
        void (*spoil)(Stage &stage);
        Expected expected;
    };
    const Case cases[] = {
        {[](Stage &s) { s.site.direction = 2; },
         {LVB_E_UNKNOWN_VALUE, LVB_STRUCT_SITE, LVB_FIELD_DIRECTION, -1, -1, 2.0, 0.0, 1.0}},
        {[](Stage &s) { s.site.combine = -1; },
         {LVB_E_UNKNOWN_VALUE, LVB_STRUCT_SITE, LVB_FIELD_COMBINE, -1, -1, -1.0, 0.0, 1.0}},
        {[](Stage &s) { s.site.reserved = 1; },
         {LVB_E_RESERVED, LVB_STRUCT_SITE, LVB_FIELD_RESERVED, -1, -1, 1.0, 0.0, 0.0}},
        {[](Stage &s) { s.site.pack_height_m = none; },
         {LVB_E_NAN, LVB_STRUCT_SITE, LVB_FIELD_PACK_HEIGHT_M, -1, -1, none, -1000.0, 1000.0}},
        {[](Stage &s) { s.antennas.clear(); },
         {LVB_E_COUNT, LVB_STRUCT_SITE, LVB_FIELD_ANTENNA_COUNT, -1, -1, 0.0, 1.0, 32.0}},
        {[](Stage &s) { s.antennas.resize(33, s.antennas[0]); },
         {LVB_E_COUNT, LVB_STRUCT_SITE, LVB_FIELD_ANTENNA_COUNT, -1, -1, 33.0, 1.0, 32.0}},
        {[](Stage &s) { s.antennas[1].antenna = nullptr; },
         {LVB_E_NULL, LVB_STRUCT_SITE_ANTENNA, LVB_FIELD_ANTENNA, -1, 1, none, none, none,
          "antennas[1].antenna is null, but must be given."}},
        {[](Stage &s) { s.antennas[0].link = nullptr; }, {LVB_E_NULL, LVB_STRUCT_SITE_ANTENNA, LVB_FIELD_LINK, -1, 0}},
        {[](Stage &s) { s.placed[1].x_m = none; },
         {LVB_E_NAN, LVB_STRUCT_ANTENNA, LVB_FIELD_X_M, -1, 1, none, -1e6, 1e6,
          "antennas[1].x_m is not a number; allowed -1000000 to 1000000."}},
        {[](Stage &s) { s.patterns[0].gain_dbi = 1.0; },
         {LVB_E_BELOW_RANGE, LVB_STRUCT_PATTERN, LVB_FIELD_GAIN_DBI, -1, 0, 1.0, 3.010299956639812, 60.0,
          "antennas[0].pattern.gain_dbi is 1, which is too low; allowed 3.01029996 to 60."}},
        {[](Stage &s) { s.links[1].frequency_mhz = 0.0; },
         {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, -1, 1, 0.0, 0.1, 300000.0,
          "links[1].frequency_mhz is missing; allowed 0.1 to 300000."}},
        {[](Stage &s) { s.links[1].frequency_mhz = 601.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_SITE_ANTENNA, LVB_FIELD_FREQUENCY_MHZ, -1, 1, 601.0, none, none,
          "antennas[1].frequency_mhz differs from that of the first antenna."}},
        {[](Stage &s) { s.chains[1].back().floor_dbm = -84.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_SITE_ANTENNA, LVB_FIELD_FLOOR_DBM, -1, 1}},
        {[](Stage &s) { s.chains[1][1].gain_db = 3.0; },
         {LVB_E_ABOVE_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1, 1, 3.0, -200.0, 0.0,
          "links[1].stages[1].gain_db is 3, which is too high; allowed -200 to 0."}},
        {[](Stage &s) { s.links[0].stage_count = 3; },
         {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_STAGES, -1, 0, 0.0, none, none,
          "links[0].stages hold no air, which a site needs."}},
        {[](Stage &s) { s.links[0].stage_count = 5; },
         {LVB_E_NO_RECEIVE_ANTENNA, LVB_STRUCT_STAGE, LVB_FIELD_KIND, 3, 0, LVB_KIND_AIR, none, none,
          "links[0].stages[3] (air): the air needs an antenna after it."}},
        {[](Stage &s) { s.chains[1][2].pattern = &s.patterns[0]; },
         {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATTERN, 2, 1, LVB_KIND_ANTENNA, none, none,
          "links[1].stages[2].pattern is filled, but this is the site's own antenna: give the pattern to its "
          "lvb_antenna instead."}},
        {[](Stage &s) { s.chains[1][1].pattern = &s.patterns[0]; },
         {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATTERN, 1, 1, none, none, none,
          "links[1].stages[1].pattern is filled, but this kind of stage has no use for it."}},
        {[](Stage &s) { s.areas[0].corner_count = 2; },
         {LVB_E_COUNT, LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, -1, 0, 2.0, 3.0, 1024.0,
          "areas[0].corner_count is 2; allowed 3 to 1024."}},
        {[](Stage &s) { s.areas[0].y_m = nullptr; }, {LVB_E_NULL, LVB_STRUCT_AREA, LVB_FIELD_Y_M, -1, 0}},
        {[](Stage &s) { s.areas[0].reserved = 2; },
         {LVB_E_RESERVED, LVB_STRUCT_AREA, LVB_FIELD_RESERVED, -1, 0, 2.0, 0.0, 0.0}},
        {[](Stage &s) { s.corners[0][2] = none; },
         {LVB_E_NAN, LVB_STRUCT_AREA, LVB_FIELD_X_M, 0, 2, none, -1e6, 1e6,
          "areas[0].x_m[2] is not a number; allowed -1000000 to 1000000."}},
        {[](Stage &s) {
             s.corners[1] = {0.0, 0.0, 0.0};
         },
         {LVB_E_TABLE_DUPLICATE, LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, -1, 0, 3.0, none, none,
          "the corners of an area lie on one line."}},
        {[](Stage &s) {
             s.corners[0] = {1.0, 1.0, 1.0};
             s.corners[1] = {1.0, 1.0, 1.0};
         },
         {LVB_E_TABLE_DUPLICATE, LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, -1, 0, 3.0}},
        {[](Stage &s) { s.screens[0].x2_m = 1.0; },
         {LVB_E_BELOW_RANGE, LVB_STRUCT_SCREEN, LVB_FIELD_X2_M, -1, 0, 0.0, 0.001, 4e6}},
        {[](Stage &s) { s.screens[0].top_m = 0.0; },
         {LVB_E_ORDER, LVB_STRUCT_SCREEN, LVB_FIELD_TOP_M, -1, 0, 0.0, 0.0, 1000.0,
          "screens[0].top_m is 0, which is not above bottom_m (0); allowed 0 to 1000."}},
        {[](Stage &s) { s.screens[0].top_m = -1.0; },
         {LVB_E_ORDER, LVB_STRUCT_SCREEN, LVB_FIELD_TOP_M, -1, 0, -1.0, 0.0, 1000.0,
          "screens[0].top_m is -1, which is below bottom_m (0); allowed 0 to 1000."}},
        {[](Stage &s) { s.screens[0].loss_db = -3.0; },
         {LVB_E_BELOW_RANGE, LVB_STRUCT_SCREEN, LVB_FIELD_LOSS_DB, -1, 0, -3.0, 0.001, 200.0}},
        {[](Stage &s) { s.screens[0].y1_m = none; },
         {LVB_E_NAN, LVB_STRUCT_SCREEN, LVB_FIELD_Y1_M, -1, 0, none, -1e6, 1e6}},
        {[](Stage &s) {
             s.placed[1].x_m = 1.5;
             s.placed[1].y_m = 1.0;
             s.placed[1].z_m = 1.0;
         },
         {LVB_E_CONFLICT, LVB_STRUCT_SCREEN, LVB_FIELD_ANTENNA, -1, 0, 1.0, none, none,
          "screens[0].antenna 1 stands less than 0.01 m from the screen."}},
        {[](Stage &s) { s.site.facing = LVB_FACING_POINT; },
         {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING, -1, -1, 1.0, none, none,
          "lvb_site.facing is filled, but without a body_table it changes nothing: give one, or leave facing 0."}},
        {[](Stage &s) { s.site.facing_azimuth_deg = 20.0; },
         {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING_AZIMUTH_DEG, -1, -1, 20.0, none, none,
          "lvb_site.facing_azimuth_deg is filled, but counts only with a body_table and LVB_FACING_AZIMUTH."}},
    };
    for (const Case &each : cases) {
        Sound sound;
        each.spoil(sound.stage);
        SCOPED_TRACE(&each - cases);
        sound.refused(each.expected);
    }
}

// An array whose count was forgotten would have no effect, and nobody would see it.
TEST(MapRefusals, OfArraysWithoutACount) {
    Sound sound;
    lvb_site &site = sound.stage.site;
    const auto refused = [&](std::uint32_t lvb_site::*count, std::int32_t field, double most, const std::string &text) {
        sound.stage.lent();
        site.*count = 0;
        Untouched<lvb_map_summary> summary;
        EXPECT_EQ(lvb_compute_map(&sound.mapped.map, &summary.result, &sound.stage.fault), LVB_E_MISSING);
        EXPECT_TRUE(summary.holds());
        expect_fault(sound.stage.fault, {LVB_E_MISSING, LVB_STRUCT_SITE, field, -1, -1, 0.0, 1.0, most, text});
    };
    refused(&lvb_site::area_count, LVB_FIELD_AREA_COUNT, LVB_MAX_AREAS,
            "lvb_site.area_count is missing; allowed 1 to 64.");
    refused(&lvb_site::screen_count, LVB_FIELD_SCREEN_COUNT, LVB_MAX_SCREENS,
            "lvb_site.screen_count is missing; allowed 1 to 64.");
}

TEST(MapRefusals, OfWhatHasNoPlaceOnASite) {
    const auto with = [](Way &way) {
        std::vector<lvb_stage> chain = chain_out();
        chain[3].path = way.lent();
        return chain;
    };
    {
        Way cable(LVB_PATH_RADIATING_CABLE);
        cable.path.longitudinal_loss_db_per_100m = 5.0;
        cable.path.coupling_loss_db = 70.0;
        Sound sound;
        sound.stage.add(with(cable), 9.0, 9.0, 2.0);
        sound.refused({LVB_E_UNUSED, LVB_STRUCT_PATH, LVB_FIELD_MODEL, 3, -1, LVB_PATH_RADIATING_CABLE});
    }
    {
        Way edges;
        edges.heights(2.0, 2.0).edges.push_back({3.0, 2.0});
        Sound sound;
        sound.stage.add(with(edges), 9.0, 9.0, 2.0);
        sound.refused({LVB_E_UNUSED, LVB_STRUCT_PATH, LVB_FIELD_EDGES, 3});
    }
    {
        Way rays(LVB_PATH_TWO_RAY);
        rays.heights(2.0, 2.0).ground(5.0, 0.0);
        Sound sound;
        sound.stage.add(with(rays), 9.0, 9.0, 0.0);
        sound.refused({LVB_E_BELOW_RANGE, LVB_STRUCT_ANTENNA, LVB_FIELD_Z_M, -1, 2, 0.0, 0.01, 1000.0});
        sound.stage.placed[2].z_m = 2.0;
        sound.stage.site.pack_height_m = -1.0;
        sound.refused({LVB_E_BELOW_RANGE, LVB_STRUCT_SITE, LVB_FIELD_PACK_HEIGHT_M, -1, -1, -1.0, 0.01, 1000.0});
    }
}

// Where antennas and packs stand is where the rays begin and end: the path's own heights are neither needed nor used.
TEST(MapRefusals, AreNotOfTwoRaysWithoutHeights) {
    std::vector<std::vector<double>> levels;
    for (const double height_m : {0.0, 3.0}) {
        Way rays(LVB_PATH_TWO_RAY);
        rays.ground(5.0, 0.01);
        if (height_m != 0.0) rays.heights(height_m, 2.0 * height_m);
        std::vector<lvb_stage> chain = chain_out();
        chain[3].path = rays.lent();
        Stage stage;
        stage.add(chain, 0.0, -3.0, 2.0);
        Mapped mapped(stage, 0.0, 0.0, 1.0, 5, 4);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK) << text_of(stage.fault);
        levels.push_back(mapped.level);
        // what a budget gives over the same ways, with the heights of the places
        rays.heights(2.0, stage.site.pack_height_m);
        Chain alone(chain);
        alone.stages[3].path = rays.lent();
        alone.link.frequency_mhz = 600.0;
        alone.link.far_distance_m = alone.link.near_distance_m = std::hypot(4.0, 3.0 + 3.0);
        ASSERT_EQ(alone.compute(), LVB_OK);
        EXPECT_NEAR(mapped.level[3 * 5 + 4], alone.budget.far_end.level_dbm, 1e-9);
    }
    EXPECT_TRUE(std::equal(levels[0].begin(), levels[0].end(), levels[1].begin(), identical));
    // One without the other is a slip all the same.
    Way half(LVB_PATH_TWO_RAY);
    half.ground(5.0, 0.0);
    half.path.transmit_height_m = 2.0;
    std::vector<lvb_stage> chain = chain_out();
    chain[3].path = half.lent();
    Sound sound;
    sound.stage.add(chain, 9.0, 9.0, 2.0);
    sound.refused({LVB_E_MISSING, LVB_STRUCT_PATH, LVB_FIELD_RECEIVE_HEIGHT_M, 3, -1, 0.0, 0.01, 1000.0});
}

TEST(MapRefusals, OfTheWearersFacing) {
    const double angles[] = {0.0, 180.0}, losses[] = {0.0, 20.0};
    auto table = sized<lvb_body_table>();
    table.row_count = 2;
    table.facing_deg = angles;
    table.loss_db = losses;
    Sound sound;
    sound.stage.site.body_table = &table;
    sound.stage.site.facing = 4;
    sound.refused({LVB_E_UNKNOWN_VALUE, LVB_STRUCT_SITE, LVB_FIELD_FACING, -1, -1, 4.0, 0.0, 3.0});
    sound.stage.site.facing = LVB_FACING_AWAY;
    sound.stage.site.facing_antenna = 2;
    sound.refused({LVB_E_NOT_FOUND, LVB_STRUCT_SITE, LVB_FIELD_FACING_ANTENNA, -1, -1, 2.0, 0.0, 1.0,
                   "lvb_site.facing_antenna is 2, of which there is none; allowed 0 to 1."});
    sound.stage.site.facing_antenna = 1;
    sound.stage.site.facing_x_m = 2.0;
    sound.refused({LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING_X_M, -1, -1, 2.0, none, none,
                   "lvb_site.facing_x_m is filled, but counts only with a body_table and LVB_FACING_POINT."});
    sound.stage.site.facing_x_m = 0.0;
    table.row_count = 0;
    sound.refused({LVB_E_TABLE_EMPTY, LVB_STRUCT_BODY_TABLE, LVB_FIELD_ROW_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_ROWS});
}

TEST(MapRefusals, OfSummaries) {
    auto fault = sized<lvb_fault>();
    auto summary = sized<lvb_map_summary>();
    EXPECT_EQ(lvb_join_map_summaries(nullptr, &summary, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_SUMMARY});
    EXPECT_EQ(lvb_join_map_summaries(&summary, nullptr, &fault), LVB_E_NULL);
    auto other = summary;
    other.size = 3;
    EXPECT_EQ(lvb_join_map_summaries(&summary, &other, &fault), LVB_E_STRUCT_SIZE);
    received().insert(LVB_E_STRUCT_SIZE);
}

} // namespace
