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
          "antennas[1].link.frequency_mhz is missing; allowed 0.1 to 300000."}},
        {[](Stage &s) { s.links[1].frequency_mhz = 601.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, -1, 1, 601.0, none, none,
          "antennas[1].link.frequency_mhz differs from that of an antenna before it; all chains of a site have one "
          "frequency "
          "and window."}},
        {[](Stage &s) { s.chains[1].back().floor_dbm = -84.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_STAGE, LVB_FIELD_FLOOR_DBM, 6, 1}},
        {[](Stage &s) { s.chains[1].back().ceiling_dbm = -19.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_STAGE, LVB_FIELD_CEILING_DBM, 6, 1, none, none, none,
          "antennas[1].link.stages[6].ceiling_dbm differs from that of an antenna before it; all chains of a site have "
          "one "
          "frequency and window."}},
        {[](Stage &s) {
             s.chains[1].back().stated &= ~std::uint32_t{LVB_STATED_WANTED};
             s.chains[1].back().wanted_low_dbm = s.chains[1].back().wanted_high_dbm = 0.0;
         },
         {LVB_E_CONFLICT, LVB_STRUCT_STAGE, LVB_FIELD_WANTED_LOW_DBM, 6, 1}},
        {[](Stage &s) { s.chains[1].back().wanted_high_dbm = -46.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_STAGE, LVB_FIELD_WANTED_HIGH_DBM, 6, 1}},
        {[](Stage &s) {
             s.chains[1].pop_back();
             --s.links[1].stage_count;
         },
         {LVB_E_CONFLICT, LVB_STRUCT_LINK, LVB_FIELD_STAGES, -1, 1, none, none, none,
          "antennas[1].link.stages differs from that of an antenna before it; all chains of a site have one frequency "
          "and "
          "window."}},
        {[](Stage &s) { s.chains[1][1].gain_db = 3.0; },
         {LVB_E_ABOVE_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1, 1, 3.0, -200.0, 0.0,
          "antennas[1].link.stages[1].gain_db is 3, which is too high; allowed -200 to 0."}},
        {[](Stage &s) { s.links[0].stage_count = 3; },
         {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_STAGES, -1, 0, 0.0, none, none,
          "antennas[0].link.stages hold no air, which a site needs."}},
        {[](Stage &s) { s.links[0].stage_count = 5; },
         {LVB_E_NO_RECEIVE_ANTENNA, LVB_STRUCT_STAGE, LVB_FIELD_KIND, 3, 0, LVB_KIND_AIR, none, none,
          "antennas[0].link.stages[3] (air): the air needs an antenna after it."}},
        {[](Stage &s) { s.chains[1][2].pattern = &s.patterns[0]; },
         {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATTERN, 2, 1, LVB_KIND_ANTENNA, none, none,
          "antennas[1].link.stages[2].pattern is filled, but this is the site's own antenna: give the pattern to its "
          "lvb_antenna instead."}},
        {[](Stage &s) { s.chains[1][1].pattern = &s.patterns[0]; },
         {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATTERN, 1, 1, none, none, none,
          "antennas[1].link.stages[1].pattern is filled, but this kind of stage has no use for it."}},
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
        {[](Stage &s) { // tenths, whose products are rounded
             s.corners[0] = {0.1, 0.4, 0.7};
             s.corners[1] = {0.3, 1.2, 2.1};
         },
         {LVB_E_TABLE_DUPLICATE, LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, -1, 0, 3.0}},
        {[](Stage &s) { // 0.9 mm wide, far out
             s.corners[0] = {1000.0, 1010.0, 1020.0};
             s.corners[1] = {2000.1, 2000.1009, 2000.1};
         },
         {LVB_E_TABLE_DUPLICATE, LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, -1, 0, 3.0}},
        {[](Stage &s) { s.placed[1].polarization_deg = 45.0; },
         {LVB_E_UNUSED, LVB_STRUCT_ANTENNA, LVB_FIELD_POLARIZATION_DEG, -1, 1, 45.0, none, none,
          "antennas[1].polarization_deg is filled, but counts only with a pack_antenna of the site, and never with a "
          "half-wave dipole: turn that by roll_deg."}},
        {[](Stage &s) { s.placed[0].ellipticity = -1.0; },
         {LVB_E_UNUSED, LVB_STRUCT_ANTENNA, LVB_FIELD_ELLIPTICITY, -1, 0, -1.0}},
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
          "antennas[1] stands less than 0.01 m from screens[0]."}},
        {[](Stage &s) { s.site.facing = LVB_FACING_POINT; },
         {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING, -1, -1, 1.0, none, none,
          "lvb_site.facing is filled, but without a body_table or pack_antenna it changes nothing: give one, or leave "
          "facing 0."}},
        {[](Stage &s) { s.site.facing_azimuth_deg = 20.0; },
         {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING_AZIMUTH_DEG, -1, -1, 20.0, none, none,
          "lvb_site.facing_azimuth_deg is filled, but counts only with LVB_FACING_AZIMUTH, and a body_table or "
          "pack_antenna."}},
        {[](Stage &s) { s.site.most_polarization_loss_db = 20.0; },
         {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_MOST_POLARIZATION_LOSS_DB, -1, -1, 20.0, none, none,
          "lvb_site.most_polarization_loss_db is filled, but counts only with a pack_antenna."}},
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
        Way office(LVB_PATH_SITE_GENERAL);
        office.path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT;
        Sound sound;
        sound.stage.add(with(office), 9.0, 9.0, 2.0, 200.0);
        sound.refused({LVB_E_BELOW_RANGE, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, 3, 2, 200.0, 300.0, 83500.0,
                       "antennas[2].link.frequency_mhz is 200, which is too low; allowed 300 to 83500."});
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
    sound.refused(
        {LVB_E_UNUSED, LVB_STRUCT_SITE, LVB_FIELD_FACING_X_M, -1, -1, 2.0, none, none,
         "lvb_site.facing_x_m is filled, but counts only with LVB_FACING_POINT, and a body_table or pack_antenna."});
    sound.stage.site.facing_x_m = 0.0;
    table.row_count = 0;
    sound.refused({LVB_E_TABLE_EMPTY, LVB_STRUCT_BODY_TABLE, LVB_FIELD_ROW_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_ROWS});
}

TEST(MapRefusals, OfThePacksAntenna) {
    constexpr std::int32_t worn = LVB_STRUCT_ANTENNA, at = LVB_STAGE_PACK;
    auto pack = sized<lvb_antenna>();
    auto pattern = sized<lvb_pattern>();
    Sound sound;
    sound.stage.site.pack_antenna = &pack;
    const auto refused = [&](double lvb_antenna::*member, double value, Expected expected) {
        pack.*member = value;
        sound.refused(expected);
        pack.*member = 0.0;
    };
    pack.size = 8;
    sound.refused({LVB_E_STRUCT_SIZE, worn, LVB_FIELD_SIZE, at, -1, 8.0, sizeof pack, 4096.0,
                   "pack_antenna.size is 8; allowed 96 to 4096."});
    pack.size = sizeof pack;
    pack.reserved = 1;
    sound.refused({LVB_E_RESERVED, worn, LVB_FIELD_RESERVED, at, -1, 1.0, 0.0, 0.0});
    pack.reserved = 0;
    refused(&lvb_antenna::tilt_deg, 90.5,
            {LVB_E_ABOVE_RANGE, worn, LVB_FIELD_TILT_DEG, at, -1, 90.5, -90.0, 90.0,
             "pack_antenna.tilt_deg is 90.5, which is too high; allowed -90 to 90."});
    refused(&lvb_antenna::ellipticity, none, {LVB_E_NAN, worn, LVB_FIELD_ELLIPTICITY, at, -1, none, -1.0, 1.0});
    refused(&lvb_antenna::x_m, 1.0,
            {LVB_E_UNUSED, worn, LVB_FIELD_X_M, at, -1, 1.0, none, none,
             "pack_antenna.x_m is filled, but the pack has no place of its own: it is wherever the map or walk asks."});
    refused(&lvb_antenna::y_m, -1.0, {LVB_E_UNUSED, worn, LVB_FIELD_Y_M, at, -1, -1.0});
    refused(&lvb_antenna::z_m, 1.2, {LVB_E_UNUSED, worn, LVB_FIELD_Z_M, at, -1, 1.2});
    pack.pattern = &pattern;
    pattern.kind = 9;
    sound.refused({LVB_E_UNKNOWN_VALUE, LVB_STRUCT_PATTERN, LVB_FIELD_KIND, at, -1, 9.0, 0.0, 4.0,
                   "pack_antenna.pattern.kind is 9, which this library does not know; allowed 0 to 4."});
    pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    refused(&lvb_antenna::polarization_deg, 90.0,
            {LVB_E_UNUSED, worn, LVB_FIELD_POLARIZATION_DEG, at, -1, 90.0, none, none,
             "pack_antenna.polarization_deg is filled, but this antenna's pattern has no use for it."});
    pattern.kind = LVB_PATTERN_HELIX;
    pattern.turns = 5.0;
    pattern.spacing_wavelengths = 0.24;
    pattern.circumference_wavelengths = 1.0;
    sound.refused({LVB_E_MISSING, worn, LVB_FIELD_ELLIPTICITY, at, -1, 0.0, -1.0, 1.0,
                   "pack_antenna.ellipticity is missing; allowed -1 to 1."});
    pack.pattern = nullptr;
    // the antennas of the site, which have a polarization now
    lvb_antenna &own = sound.stage.placed[1];
    own.pattern = &pattern;
    sound.refused({LVB_E_MISSING, worn, LVB_FIELD_ELLIPTICITY, -1, 1, 0.0, -1.0, 1.0});
    own.ellipticity = 0.8;
    EXPECT_EQ(sound.mapped.compute(sound.stage.fault), LVB_OK);
}

// ---- Numbers at their bounds and beyond, which lvb_describe_field must tell alike.

/// A walk and a placement beside the map, and a wearer who faces a point or an azimuth.
struct Everything : Sound {
    const double angle = 0.0, loss = 0.0;
    lvb_body_table body = sized<lvb_body_table>();
    lvb_antenna pack = sized<lvb_antenna>();
    std::vector<double> x = {0.0, 3.0}, y = {0.0, 4.0}, z = {1.0, 1.5};
    lvb_walk walk = sized<lvb_walk>();
    lvb_place place = sized<lvb_place>();
    std::vector<double> scratch = std::vector<double>(1 << 16);

    Everything() {
        body.row_count = 1;
        body.facing_deg = &angle;
        body.loss_db = &loss;
        walk.corner_count = 2;
        walk.speed_m_per_s = walk.step_m = 1.0;
        place.place_count = 1;
        place.candidate_count = 2;
        place.candidate_size = sizeof(lvb_site_antenna);
        place.column_count = place.row_count = 2;
        place.step_x_m = place.step_y_m = 1.0;
        place.scratch_count = scratch.size();
    }
    void face(std::int32_t facing) {
        stage.site.body_table = &body;
        stage.site.facing = facing;
    }
    /// What the call that takes a struct says.
    lvb_status ask(std::int32_t structure) {
        walk.x_m = x.data();
        walk.y_m = y.data();
        walk.z_m = z.data();
        walk.site = place.site = stage.lent();
        place.candidates = stage.antennas.data();
        place.scratch = scratch.data();
        lvb_placement placements[1];
        std::uint32_t found = 0;
        switch (structure) {
        case LVB_STRUCT_WALK:
            return lvb_compute_walk(&walk, nullptr, &stage.fault);
        case LVB_STRUCT_PLACE:
            return lvb_compute_placements(&place, placements, sizeof(lvb_placement), 1, &found, &stage.fault);
        default:
            return mapped.compute(stage.fault);
        }
    }
};

struct Bounded {
    std::int32_t structure, field;
    void (*set)(Everything &all, double value);
    bool ends = true; ///< a value at either end is sound by itself
};
const Bounded bounded[] = {
    {LVB_STRUCT_SITE, LVB_FIELD_PACK_HEIGHT_M, [](Everything &e, double v) { e.stage.site.pack_height_m = v; }},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_AZIMUTH_DEG,
     [](Everything &e, double v) {
         e.face(LVB_FACING_AZIMUTH);
         e.stage.site.facing_azimuth_deg = v;
     }},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_X_M,
     [](Everything &e, double v) {
         e.face(LVB_FACING_POINT);
         e.stage.site.facing_x_m = v;
     }},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_Y_M,
     [](Everything &e, double v) {
         e.face(LVB_FACING_POINT);
         e.stage.site.facing_y_m = v;
     }},
    {LVB_STRUCT_SITE, LVB_FIELD_MOST_POLARIZATION_LOSS_DB,
     [](Everything &e, double v) {
         e.stage.site.pack_antenna = &e.pack;
         e.stage.site.most_polarization_loss_db = v;
     }},
    {LVB_STRUCT_AREA, LVB_FIELD_X_M, [](Everything &e, double v) { e.stage.corners[0][0] = v; }},
    {LVB_STRUCT_AREA, LVB_FIELD_Y_M, [](Everything &e, double v) { e.stage.corners[1][2] = v; }},
    {LVB_STRUCT_SCREEN, LVB_FIELD_X1_M, [](Everything &e, double v) { e.stage.screens[0].x1_m = v; }},
    {LVB_STRUCT_SCREEN, LVB_FIELD_Y1_M, [](Everything &e, double v) { e.stage.screens[0].y1_m = v; }},
    {LVB_STRUCT_SCREEN, LVB_FIELD_X2_M, [](Everything &e, double v) { e.stage.screens[0].x2_m = v; }},
    {LVB_STRUCT_SCREEN, LVB_FIELD_Y2_M, [](Everything &e, double v) { e.stage.screens[0].y2_m = v; }},
    {LVB_STRUCT_SCREEN, LVB_FIELD_BOTTOM_M, [](Everything &e, double v) { e.stage.screens[0].bottom_m = v; }, false},
    {LVB_STRUCT_SCREEN, LVB_FIELD_TOP_M, [](Everything &e, double v) { e.stage.screens[0].top_m = v; }, false},
    {LVB_STRUCT_SCREEN, LVB_FIELD_LOSS_DB, [](Everything &e, double v) { e.stage.screens[0].loss_db = v; }},
    // at the highest position the second column would lie beyond
    {LVB_STRUCT_MAP, LVB_FIELD_X_M, [](Everything &e, double v) { e.mapped.map.x_m = v; }, false},
    {LVB_STRUCT_MAP, LVB_FIELD_Y_M, [](Everything &e, double v) { e.mapped.map.y_m = v; }, false},
    {LVB_STRUCT_MAP, LVB_FIELD_STEP_X_M, [](Everything &e, double v) { e.mapped.map.step_x_m = v; }, false},
    {LVB_STRUCT_MAP, LVB_FIELD_STEP_Y_M, [](Everything &e, double v) { e.mapped.map.step_y_m = v; }},
    {LVB_STRUCT_WALK, LVB_FIELD_X_M, [](Everything &e, double v) { e.x[1] = v; }, false}, // too long a way
    {LVB_STRUCT_WALK, LVB_FIELD_Y_M, [](Everything &e, double v) { e.y[0] = v; }, false},
    {LVB_STRUCT_WALK, LVB_FIELD_Z_M, [](Everything &e, double v) { e.z[1] = v; }},
    {LVB_STRUCT_WALK, LVB_FIELD_SPEED_M_PER_S, [](Everything &e, double v) { e.walk.speed_m_per_s = v; }},
    {LVB_STRUCT_WALK, LVB_FIELD_STEP_M, [](Everything &e, double v) { e.walk.step_m = v; }},
    {LVB_STRUCT_PLACE, LVB_FIELD_X_M, [](Everything &e, double v) { e.place.x_m = v; }, false},
    {LVB_STRUCT_PLACE, LVB_FIELD_Y_M, [](Everything &e, double v) { e.place.y_m = v; }, false},
    {LVB_STRUCT_PLACE, LVB_FIELD_STEP_X_M, [](Everything &e, double v) { e.place.step_x_m = v; }, false},
    {LVB_STRUCT_PLACE, LVB_FIELD_STEP_Y_M, [](Everything &e, double v) { e.place.step_y_m = v; }, false},
    {LVB_STRUCT_PLACE, LVB_FIELD_LEAST_HEADROOM_DB, [](Everything &e, double v) { e.place.least_headroom_db = v; }},
};

void expect_refusal(const Bounded &number, double value, lvb_status status, const lvb_range &range) {
    Everything all;
    number.set(all, value);
    EXPECT_EQ(all.ask(number.structure), status) << value;
    EXPECT_EQ(all.stage.fault.structure, number.structure);
    EXPECT_EQ(all.stage.fault.field, number.field);
    EXPECT_EQ(all.stage.fault.minimum, range.minimum);
    EXPECT_EQ(all.stage.fault.maximum, range.maximum);
}

TEST(MapRefusals, NumbersKeepToTheRangesThatAreTold) {
    for (const Bounded &number : bounded) {
        SCOPED_TRACE(std::to_string(number.structure) + "." + lvb_field_name(number.field));
        auto range = sized<lvb_range>();
        ASSERT_EQ(lvb_describe_field(number.structure, 0, number.field, &range, nullptr), LVB_OK);
        const double under = std::nextafter(range.minimum, -infinity);
        if (under != 0.0) expect_refusal(number, under, LVB_E_BELOW_RANGE, range);
        expect_refusal(number, std::nextafter(range.maximum, infinity), LVB_E_ABOVE_RANGE, range);
        expect_refusal(number, none, LVB_E_NAN, range);
        expect_refusal(number, infinity, LVB_E_INFINITE, range);
        if (range.required == 1) expect_refusal(number, 0.0, LVB_E_MISSING, range);
        if (!number.ends) continue;
        for (const double end : {range.minimum, range.maximum}) {
            Everything all;
            number.set(all, end);
            EXPECT_EQ(all.ask(number.structure), LVB_OK) << end << lvb_field_name(all.stage.fault.field);
        }
    }
}

TEST(MapRefusals, EveryLawHasItsParameterAsToldOrNone) {
    for (std::int32_t law = LVB_FADING_RAYLEIGH; law <= LVB_FADING_SUZUKI; ++law) {
        Everything all;
        all.mapped.fade(law, 1e6);
        auto range = sized<lvb_range>();
        const bool has_parameter =
            lvb_describe_field(LVB_STRUCT_MAP, law, LVB_FIELD_FADING_PARAMETER, &range, nullptr) == LVB_OK;
        EXPECT_EQ(has_parameter, law != LVB_FADING_RAYLEIGH);
        EXPECT_EQ(all.ask(LVB_STRUCT_MAP), has_parameter ? LVB_E_ABOVE_RANGE : LVB_E_UNUSED);
        if (!has_parameter) continue;
        EXPECT_EQ(all.stage.fault.minimum, range.minimum);
        EXPECT_EQ(all.stage.fault.maximum, range.maximum);
        for (const double end : {range.minimum, range.maximum}) {
            all.mapped.map.fading_parameter = end;
            EXPECT_EQ(all.ask(LVB_STRUCT_MAP), LVB_OK) << law;
        }
    }
    auto range = sized<lvb_range>();
    EXPECT_EQ(lvb_describe_field(LVB_STRUCT_MAP, LVB_FADING_NONE, LVB_FIELD_FADING_PARAMETER, &range, nullptr),
              LVB_E_NOT_FOUND);
    EXPECT_EQ(lvb_describe_field(LVB_STRUCT_MAP, 6, LVB_FIELD_X_M, &range, nullptr), LVB_E_NOT_FOUND);
}

struct Counted {
    std::int32_t structure, field;
    void (*set)(Everything &all, std::uint64_t value);
};
const Counted counted[] = {
    {LVB_STRUCT_SITE, LVB_FIELD_ANTENNA_COUNT,
     [](Everything &e, std::uint64_t n) { e.stage.antennas.resize(n, e.stage.antennas[0]); }},
    {LVB_STRUCT_SITE, LVB_FIELD_AREA_COUNT,
     [](Everything &e, std::uint64_t n) { e.stage.areas.resize(n, e.stage.areas[0]); }},
    {LVB_STRUCT_SITE, LVB_FIELD_SCREEN_COUNT,
     [](Everything &e, std::uint64_t n) { e.stage.screens.resize(n, e.stage.screens[0]); }},
    {LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT,
     [](Everything &e, std::uint64_t n) { e.stage.areas[0].corner_count = static_cast<std::uint32_t>(n); }},
    {LVB_STRUCT_MAP, LVB_FIELD_COLUMN_COUNT, [](Everything &e, std::uint64_t n) { e.mapped.map.column_count = n; }},
    {LVB_STRUCT_MAP, LVB_FIELD_ROW_COUNT,
     [](Everything &e, std::uint64_t n) {
         e.mapped.map.column_count = 1;
         e.mapped.map.row_count = n;
     }},
    {LVB_STRUCT_MAP, LVB_FIELD_FIRST_ROW, [](Everything &e, std::uint64_t n) { e.mapped.map.first_row = n; }},
    {LVB_STRUCT_WALK, LVB_FIELD_CORNER_COUNT,
     [](Everything &e, std::uint64_t n) { e.walk.corner_count = static_cast<std::uint32_t>(n); }},
    {LVB_STRUCT_PLACE, LVB_FIELD_PLACE_COUNT,
     [](Everything &e, std::uint64_t n) { e.place.place_count = static_cast<std::uint32_t>(n); }},
    {LVB_STRUCT_PLACE, LVB_FIELD_CANDIDATE_COUNT,
     [](Everything &e, std::uint64_t n) { e.place.candidate_count = static_cast<std::uint32_t>(n); }},
    {LVB_STRUCT_PLACE, LVB_FIELD_COLUMN_COUNT, [](Everything &e, std::uint64_t n) { e.place.column_count = n; }},
    {LVB_STRUCT_PLACE, LVB_FIELD_ROW_COUNT,
     [](Everything &e, std::uint64_t n) {
         e.place.column_count = 1;
         e.place.row_count = n;
     }},
};

TEST(MapRefusals, CountsKeepToTheRangesThatAreTold) {
    for (const Counted &count : counted) {
        SCOPED_TRACE(std::to_string(count.structure) + "." + lvb_field_name(count.field));
        auto range = sized<lvb_range>();
        ASSERT_EQ(lvb_describe_field(count.structure, 0, count.field, &range, nullptr), LVB_OK);
        std::vector<double> beyond = {range.maximum + 1.0};
        if (range.minimum > 0.0) beyond.push_back(range.minimum - 1.0);
        for (const double value : beyond) {
            Everything all;
            count.set(all, static_cast<std::uint64_t>(value));
            EXPECT_EQ(all.ask(count.structure), LVB_E_COUNT) << value;
            EXPECT_EQ(all.stage.fault.structure, count.structure);
            EXPECT_EQ(all.stage.fault.field, count.field);
            EXPECT_EQ(all.stage.fault.minimum, range.minimum);
            EXPECT_EQ(all.stage.fault.maximum, range.maximum);
        }
    }
    auto range = sized<lvb_range>();
    ASSERT_EQ(lvb_describe_field(LVB_STRUCT_SITE, 0, LVB_FIELD_FACING_ANTENNA, &range, nullptr), LVB_OK);
    EXPECT_EQ(range.maximum, LVB_MAX_SITE_ANTENNAS - 1);
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
    // what no map gives, as the one and as the other
    Sound sound;
    ASSERT_EQ(sound.mapped.compute(sound.stage.fault), LVB_OK);
    const lvb_map_summary whole = sound.mapped.summary;
    ASSERT_GT(whole.points, 0u);
    const double points = static_cast<double>(whole.points);
    constexpr double infinite = std::numeric_limits<double>::infinity();
    const auto refused = [&](auto change, Expected expected) {
        for (int which = 0; which < 2; ++which) {
            lvb_map_summary both[2] = {whole, whole};
            change(both[which]);
            const lvb_map_summary before = both[0];
            EXPECT_EQ(lvb_join_map_summaries(&both[0], &both[1], &fault), expected.status);
            expected.row = which;
            expect_fault(fault, expected);
            EXPECT_EQ(std::memcmp(&before, &both[0], sizeof before), 0);
        }
    };
    constexpr std::int32_t at = LVB_STRUCT_MAP_SUMMARY;
    refused([](lvb_map_summary &s) { s.reserved = 5; }, {LVB_E_RESERVED, at, LVB_FIELD_RESERVED, -1, 0, 5.0, 0.0, 0.0});
    refused([](lvb_map_summary &s) { ++s.points; },
            {LVB_E_COUNT, at, LVB_FIELD_POINTS, -1, 0, points + 1.0, points, points});
    refused([](lvb_map_summary &s) { s.dropout = UINT64_MAX; },
            {LVB_E_COUNT, at, LVB_FIELD_POINTS, -1, 0, points, 0x1p61, 0x1p61});
    refused([](lvb_map_summary &s) { s.outside = UINT64_MAX; },
            {LVB_E_COUNT, at, LVB_FIELD_OUTSIDE, -1, 0, 0x1p64, 0.0, 0x1p61});
    refused([](lvb_map_summary &s) { s.unmodelled = (1ull << 61) + 1024; },
            {LVB_E_COUNT, at, LVB_FIELD_UNMODELLED, -1, 0, 0x1p61 + 1024.0, 0.0, 0x1p61});
    refused([](lvb_map_summary &s) { s.overloaded = s.points + 1; },
            {LVB_E_ABOVE_RANGE, at, LVB_FIELD_OVERLOADED, -1, 0, points + 1.0, 0.0, points});
    refused([](lvb_map_summary &s) { s.worst_level_dbm = none; },
            {LVB_E_NAN, at, LVB_FIELD_WORST_LEVEL_DBM, -1, 0, none});
    refused([](lvb_map_summary &s) { s.hottest_level_dbm = infinite; },
            {LVB_E_INFINITE, at, LVB_FIELD_HOTTEST_LEVEL_DBM, -1, 0, infinite});
    refused([](lvb_map_summary &s) { s.worst_serving = 32; },
            {LVB_E_UNKNOWN_VALUE, at, LVB_FIELD_WORST_SERVING, -1, 0, 32.0, -1.0, 31.0});
    refused([](lvb_map_summary &s) { s.hottest_serving = -2; },
            {LVB_E_UNKNOWN_VALUE, at, LVB_FIELD_HOTTEST_SERVING, -1, 0, -2.0, -1.0, 31.0});
}

} // namespace
