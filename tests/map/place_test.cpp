// Placements: against brute force over maps on small random sites, ties, refusals; candidates along a rail.
#include "door/refusal.hpp"
#include "map/sites.hpp"
#include "path/paths.hpp"

#include <cmath>
#include <memory>

namespace {

using namespace proof;

constexpr double nothing = -std::numeric_limits<double>::infinity();

/// A site with candidates, and room for everything.
struct Placing {
    Stage stage, candidates;
    lvb_place place = sized<lvb_place>();
    std::vector<double> scratch;
    std::vector<lvb_placement> placements;
    std::uint32_t found = 77;
    lvb_fault fault = sized<lvb_fault>();
    const lvb_site_antenna *forgotten = nullptr; // antennas that the site lends without a count

    Placing(std::uint64_t columns, std::uint64_t rows, std::uint32_t wanted) {
        place.x_m = -4.0;
        place.y_m = -3.0;
        place.step_x_m = place.step_y_m = 1.0;
        place.column_count = columns;
        place.row_count = rows;
        place.place_count = 1;
        place.instructions = all_instructions(instruction_sets());
        placements.resize(wanted);
    }
    lvb_status compute() {
        place.site = stage.lent();
        if (forgotten != nullptr) stage.site.antennas = forgotten;
        place.candidates = candidates.antennas.data();
        place.candidate_count = static_cast<std::uint32_t>(candidates.antennas.size());
        place.candidate_size = sizeof(lvb_site_antenna);
        std::uint64_t room = 0;
        const lvb_status status = lvb_place_scratch_count(&place, &room, &fault);
        if (status != LVB_OK) return status;
        scratch.assign(room, 5.0);
        place.scratch = scratch.data();
        place.scratch_count = room;
        return lvb_compute_placements(&place, placements.data(), sizeof(lvb_placement),
                                      static_cast<std::uint32_t>(placements.size()), &found, &fault);
    }
    /// What a map of the site with these candidates tells.
    lvb_map_summary map_with(std::int32_t first, std::int32_t second) {
        const std::vector<lvb_site_antenna> own = stage.antennas;
        stage.antennas.push_back(candidates.antennas[static_cast<std::size_t>(first)]);
        if (second >= 0) stage.antennas.push_back(candidates.antennas[static_cast<std::size_t>(second)]);
        auto map = sized<lvb_map>();
        auto summary = sized<lvb_map_summary>();
        map.site = stage.lent();
        map.x_m = place.x_m;
        map.y_m = place.y_m;
        map.step_x_m = place.step_x_m;
        map.step_y_m = place.step_y_m;
        map.column_count = place.column_count;
        map.row_count = place.row_count;
        EXPECT_EQ(lvb_compute_map(&map, &summary, &fault), LVB_OK);
        stage.antennas = own;
        return summary;
    }
};

bool close(double a, double b) { return a == b || std::abs(a - b) < 1e-9; }

TEST(Place, AgreesWithBruteForceOnSmallRandomSites) {
    Random random(1905);
    const double facings[] = {-90.0, 0.0, 90.0, 180.0}, losses[] = {5.0, 0.0, 6.0, 22.0};
    auto table = sized<lvb_body_table>();
    table.row_count = 4;
    table.facing_deg = facings;
    table.loss_db = losses;
    std::size_t none_found = 0, some_found = 0;
    for (int turn = 0; turn < 400; ++turn) {
        const std::size_t columns = 1 + random.below(14), rows = 1 + random.below(12);
        Placing placing(columns, rows, 1 + static_cast<std::uint32_t>(random.below(8)));
        Stage &stage = placing.stage;
        const auto add = [&](Stage &to) {
            const double power_dbm = random.uniform(-5.0, 20.0), gain_dbi = random.uniform(-2.0, 6.0);
            const double allowance_db = random.below(2) ? -20.0 : random.uniform(-30.0, -5.0);
            std::vector<lvb_stage> chain = chain_out(power_dbm, gain_dbi, allowance_db);
            chain.back() = receiver(-80.0, -22.0);
            const double x = random.uniform(-9.0, 9.0), y = random.uniform(-9.0, 9.0), z = random.uniform(1.5, 4.0);
            lvb_antenna &made = to.add(chain, x, y, z);
            made.azimuth_deg = random.uniform(-180.0, 180.0);
            if (random.below(2)) to.pattern(made, LVB_PATTERN_COSINE).beam_width_deg = random.uniform(40.0, 120.0);
            if (made.pattern != nullptr && random.below(2)) to.patterns.back().front_to_back_db = 15.0;
        };
        for (std::size_t n = random.below(2); n > 0; --n) add(stage);
        for (std::size_t n = 2 + random.below(7); n > 0; --n) add(placing.candidates);
        if (random.below(2)) stage.area({-3.0, 8.0, 6.0}, {-4.0, -2.0, 9.0});
        if (random.below(3) == 0) stage.screen(-2.0, 1.3, 2.0, 1.7, 0.0, 2.0);
        stage.site.combine = static_cast<std::int32_t>(random.below(2));
        if (random.below(3) == 0) {
            stage.site.body_table = &table;
            stage.site.facing_azimuth_deg = 10.0;
        }
        if (random.below(3) == 0) {
            stage.worn.roll_deg = random.uniform(-180.0, 180.0);
            stage.site.pack_antenna = &stage.worn;
        }
        placing.place.place_count = 1 + static_cast<std::uint32_t>(random.below(2));
        placing.place.least_headroom_db = random.below(2) ? 0.0 : random.uniform(0.0, 6.0);
        const lvb_status status = placing.compute();
        if (status == LVB_E_CONFLICT || status == LVB_E_MISSING) continue; // in a screen; no point in the area
        ASSERT_EQ(status, LVB_OK) << lvb_field_name(placing.fault.field);
        std::vector<lvb_placement> all;
        const auto candidates = static_cast<std::int32_t>(placing.candidates.antennas.size());
        for (std::int32_t i = 0; i < candidates; ++i)
            for (std::int32_t k = placing.place.place_count == 2 ? i + 1 : -1;
                 k < (placing.place.place_count == 2 ? candidates : 0); ++k) {
                const lvb_map_summary told = placing.map_with(i, k);
                if (told.hottest_headroom_db < placing.place.least_headroom_db) continue;
                all.push_back({i, k, told.worst_level_dbm, told.worst_margin_db, told.hottest_level_dbm,
                               told.hottest_headroom_db});
            }
        std::stable_sort(all.begin(), all.end(), [](const lvb_placement &a, const lvb_placement &b) {
            return a.worst_level_dbm > b.worst_level_dbm && !close(a.worst_level_dbm, b.worst_level_dbm);
        });
        ASSERT_EQ(placing.found, std::min(all.size(), placing.placements.size())) << turn;
        (all.empty() ? none_found : some_found) += 1;
        for (std::size_t n = 0; n < placing.found; ++n) {
            const lvb_placement &ours = placing.placements[n], &theirs = all[n];
            EXPECT_TRUE(close(ours.worst_level_dbm, theirs.worst_level_dbm)) << turn << " " << n;
            EXPECT_TRUE(close(ours.worst_margin_db, theirs.worst_margin_db));
            const bool tie = (n > 0 && close(all[n - 1].worst_level_dbm, theirs.worst_level_dbm)) ||
                             (n + 1 < all.size() && close(all[n + 1].worst_level_dbm, theirs.worst_level_dbm));
            if (tie && theirs.worst_level_dbm != nothing) continue; // equal but for rounding: the order may differ
            EXPECT_EQ(ours.first, theirs.first) << turn << " " << n;
            EXPECT_EQ(ours.second, theirs.second);
            EXPECT_TRUE(close(ours.hottest_level_dbm, theirs.hottest_level_dbm));
            EXPECT_TRUE(close(ours.hottest_headroom_db, theirs.hottest_headroom_db));
        }
    }
    EXPECT_GT(some_found, 200u);
    EXPECT_GT(none_found, 5u);
}

TEST(Place, OfEqualPlacementsTheLowestIndexComesFirst) {
    for (const std::uint32_t count : {1u, 2u}) {
        Placing placing(9, 5, 3);
        for (int i = 0; i < 4; ++i) placing.candidates.add(chain_out(), 1.0, -6.0, 2.0);
        placing.place.place_count = count;
        ASSERT_EQ(placing.compute(), LVB_OK);
        ASSERT_EQ(placing.found, 3u);
        for (std::int32_t n = 0; n < 3; ++n) {
            EXPECT_EQ(placing.placements[static_cast<std::size_t>(n)].first, count == 1 ? n : 0);
            EXPECT_EQ(placing.placements[static_cast<std::size_t>(n)].second, count == 1 ? -1 : n + 1);
        }
    }
}

TEST(Place, HasTheSameBitsOnEveryInstructionSet) {
    std::vector<lvb_placement> first;
    for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) {
        Placing placing(40, 30, 6);
        Random random(17);
        for (int i = 0; i < 12; ++i) {
            lvb_antenna &made = placing.candidates.add(chain_out(), random.uniform(-9.0, 40.0), -6.0, 2.5);
            placing.candidates.pattern(made, LVB_PATTERN_COSINE).beam_width_deg = 77.0;
            placing.candidates.patterns.back().front_to_back_db = 20.0;
        }
        placing.stage.screen(0.0, 3.0, 3.0, 3.0, 0.0, 2.0);
        placing.place.place_count = 2;
        placing.place.instructions = set;
        ASSERT_EQ(placing.compute(), LVB_OK);
        ASSERT_EQ(placing.found, 6u);
        if (first.empty()) first = placing.placements;
        EXPECT_EQ(std::memcmp(first.data(), placing.placements.data(), 6 * sizeof(lvb_placement)), 0);
    }
}

TEST(Place, OneAntennaStandsBestInTheMiddleOfARail) {
    Placing placing(9, 1, 1);
    placing.place.y_m = 0.0; // -4 to 4
    std::vector<lvb_antenna> rail(21);
    auto from = sized<lvb_antenna>();
    from.x_m = -5.0;
    from.y_m = -3.0;
    from.z_m = 2.0;
    ASSERT_EQ(lvb_spread_on_rail(&from, 5.0, -3.0, 2.0, 21, rail.data(), &placing.fault), LVB_OK);
    for (const lvb_antenna &each : rail) placing.candidates.add(chain_out(), each.x_m, each.y_m, each.z_m);
    ASSERT_EQ(placing.compute(), LVB_OK);
    EXPECT_EQ(placing.placements[0].first, 10);
    EXPECT_EQ(rail[10].x_m, 0.0);
    EXPECT_EQ(rail[20].x_m, 5.0);
    EXPECT_EQ(rail[1].x_m, -4.5);
}

TEST(PlaceRefusals, AreToldWithTheirNumbers) {
    const auto sound = [] {
        auto placing = std::make_unique<Placing>(4, 3, 2);
        placing->candidates.add(chain_out(), 1.0, -6.0, 2.0);
        placing->candidates.add(chain_out(), 3.0, -6.0, 2.0);
        return placing;
    };
    struct Case {
        void (*spoil)(Placing &);
        Expected expected;
    };
    const Case cases[] = {
        {[](Placing &p) { p.place.place_count = 3; },
         {LVB_E_COUNT, LVB_STRUCT_PLACE, LVB_FIELD_PLACE_COUNT, -1, -1, 3.0, 1.0, 2.0}},
        {[](Placing &p) { p.place.reserved = 1; },
         {LVB_E_RESERVED, LVB_STRUCT_PLACE, LVB_FIELD_RESERVED, -1, -1, 1.0, 0.0, 0.0}},
        {[](Placing &p) {
             p.candidates.antennas.resize(1);
             p.place.place_count = 2;
         },
         {LVB_E_COUNT, LVB_STRUCT_PLACE, LVB_FIELD_CANDIDATE_COUNT, -1, -1, 1.0, 2.0, 4096.0}},
        {[](Placing &p) { p.place.column_count = 0; },
         {LVB_E_COUNT, LVB_STRUCT_PLACE, LVB_FIELD_COLUMN_COUNT, -1, -1, 0.0, 1.0, 1073741824.0}},
        {[](Placing &p) { p.place.step_y_m = none; },
         {LVB_E_NAN, LVB_STRUCT_PLACE, LVB_FIELD_STEP_Y_M, -1, -1, none, 1e-6, 1e6}},
        {[](Placing &p) { p.place.least_headroom_db = -1.0; },
         {LVB_E_BELOW_RANGE, LVB_STRUCT_PLACE, LVB_FIELD_LEAST_HEADROOM_DB, -1, -1, -1.0, 0.0, 100.0}},
        {[](Placing &p) {
             p.stage.area({50.0, 51.0, 51.0}, {0.0, 0.0, 1.0});
         },
         {LVB_E_MISSING, LVB_STRUCT_SITE, LVB_FIELD_AREAS, -1, -1, 0.0, none, none,
          "lvb_site.areas: no point of the grid lies in them."}},
        {[](Placing &p) { // antennas that stand already, and their count was forgotten
             static const lvb_site_antenna standing{};
             p.forgotten = &standing;
         },
         {LVB_E_MISSING, LVB_STRUCT_SITE, LVB_FIELD_ANTENNA_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_SITE_ANTENNAS}},
        {[](Placing &p) { p.candidates.links[1].frequency_mhz = 500.0; },
         {LVB_E_CONFLICT, LVB_STRUCT_PLACE, LVB_FIELD_FREQUENCY_MHZ, LVB_STAGE_LINK, 1, 500.0, none, none,
          "candidates[1].link.frequency_mhz differs from that of an antenna before it; all chains of a site have one "
          "frequency and window."}},
        {[](Placing &p) { p.candidates.placed[1].z_m = none; },
         {LVB_E_NAN, LVB_STRUCT_PLACE, LVB_FIELD_Z_M, -1, 1, none, -1e6, 1e6,
          "candidates[1].z_m is not a number; allowed -1000000 to 1000000."}},
        {[](Placing &p) { p.candidates.antennas[0].link = nullptr; },
         {LVB_E_NULL, LVB_STRUCT_PLACE, LVB_FIELD_LINK, -1, 0, none, none, none,
          "candidates[0].link is null, but must be given."}},
        {[](Placing &p) { p.candidates.links[1].size = 8; },
         {LVB_E_STRUCT_SIZE, LVB_STRUCT_PLACE, LVB_FIELD_SIZE, LVB_STAGE_LINK, 1, 8.0, sizeof(lvb_link), 4096.0,
          "candidates[1].link.size is 8; allowed 64 to 4096."}},
        {[](Placing &p) { p.candidates.placed[0].polarization_deg = 90.0; },
         {LVB_E_UNUSED, LVB_STRUCT_PLACE, LVB_FIELD_POLARIZATION_DEG, -1, 0, 90.0, none, none,
          "candidates[0].polarization_deg is filled, but counts only with a pack_antenna of the site, and never with a "
          "half-wave dipole: turn that by roll_deg."}},
        {[](Placing &p) { p.candidates.pattern(p.candidates.placed[1], 9); },
         {LVB_E_UNKNOWN_VALUE, LVB_STRUCT_PLACE, LVB_FIELD_KIND, -1, 1, 9.0, 0.0, 4.0,
          "candidates[1].kind is 9, which this library does not know; allowed 0 to 4."}},
        {[](Placing &p) { p.candidates.pattern(p.candidates.placed[1], LVB_PATTERN_HALF_WAVE_DIPOLE).turns = 4.0; },
         {LVB_E_UNUSED, LVB_STRUCT_PLACE, LVB_FIELD_TURNS, -1, 1, 4.0, none, none,
          "candidates[1].turns is filled, but this kind of pattern has no use for it."}},
        {[](Placing &p) { p.candidates.chains[1][1].gain_db = 3.0; },
         {LVB_E_ABOVE_RANGE, LVB_STRUCT_PLACE, LVB_FIELD_GAIN_DB, 1, 1, 3.0, -200.0, 0.0,
          "candidates[1].link.stages[1].gain_db is 3, which is too high; allowed -200 to 0."}},
        {[](Placing &p) { p.candidates.links[0].stage_count = 3; },
         {LVB_E_MISSING, LVB_STRUCT_PLACE, LVB_FIELD_STAGES, LVB_STAGE_LINK, 0, 0.0, none, none,
          "candidates[0].link.stages hold no air, which a site needs."}},
        {[](Placing &p) { p.candidates.links[0].stage_count = 5; },
         {LVB_E_NO_RECEIVE_ANTENNA, LVB_STRUCT_PLACE, LVB_FIELD_KIND, 3, 0, LVB_KIND_AIR, none, none,
          "candidates[0].link.stages[3] (air): the air needs an antenna after it."}},
        {[](Placing &p) { p.stage.screen(0.5, -6.0, 1.5, -6.0, 0.0, 3.0); },
         {LVB_E_CONFLICT, LVB_STRUCT_SCREEN, LVB_FIELD_CANDIDATES, -1, 0, 0.0, none, none,
          "candidates[0] stands less than 0.01 m from screens[0]."}},
        {[](Placing &p) { p.placements.clear(); },
         {LVB_E_COUNT, LVB_STRUCT_NONE, LVB_FIELD_PLACEMENT_COUNT, -1, -1, 0.0, 1.0, 1000.0}},
    };
    for (const Case &each : cases) {
        const auto placing = sound();
        each.spoil(*placing);
        SCOPED_TRACE(&each - cases);
        EXPECT_EQ(placing->compute(), each.expected.status);
        EXPECT_EQ(placing->found, 77u);
        expect_fault(placing->fault, each.expected);
    }
    Way office(LVB_PATH_SITE_GENERAL);
    office.path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT; // from 2 m
    const auto indoors = sound();
    indoors->candidates.chains[1][3].path = office.lent();
    indoors->candidates.placed[1].x_m = indoors->place.x_m;
    indoors->candidates.placed[1].y_m = indoors->place.y_m;
    EXPECT_EQ(indoors->compute(), LVB_E_BELOW_RANGE);
    expect_fault(indoors->fault, {LVB_E_BELOW_RANGE, LVB_STRUCT_PLACE, LVB_FIELD_DISTANCE_M, -1, 1, 2.0 - 1.2, 2.0,
                                  27.0, "candidates[1].distance_m is 0.8, which is too low; allowed 2 to 27."});
    const auto placing = sound();
    ASSERT_EQ(placing->compute(), LVB_OK);
    placing->place.scratch_count -= 1;
    const auto room = static_cast<double>(placing->scratch.size());
    EXPECT_EQ(lvb_compute_placements(&placing->place, placing->placements.data(), sizeof(lvb_placement), 2,
                                     &placing->found, &placing->fault),
              LVB_E_COUNT);
    expect_fault(placing->fault, {LVB_E_COUNT, LVB_STRUCT_PLACE, LVB_FIELD_SCRATCH_COUNT, -1, -1, room - 1.0, room,
                                  std::numeric_limits<double>::infinity()});
    // Results within the scratch would be written over.
    const auto overlapping = sound();
    ASSERT_EQ(overlapping->compute(), LVB_OK);
    overlapping->found = 77;
    const std::vector<double> before = overlapping->scratch;
    const auto written_to = [&](lvb_placement *placements, std::uint32_t *found) {
        EXPECT_EQ(lvb_compute_placements(&overlapping->place, placements, sizeof(lvb_placement), 2, found,
                                         &overlapping->fault),
                  LVB_E_CONFLICT);
        expect_fault(overlapping->fault, {LVB_E_CONFLICT, LVB_STRUCT_PLACE, LVB_FIELD_SCRATCH, -1, -1, none, none, none,
                                          "lvb_place.scratch overlaps another array of the call."});
        EXPECT_EQ(overlapping->scratch, before);
    };
    written_to(reinterpret_cast<lvb_placement *>(overlapping->scratch.data()), &overlapping->found);
    written_to(overlapping->placements.data(), reinterpret_cast<std::uint32_t *>(overlapping->scratch.data()));
    auto antenna = sized<lvb_antenna>();
    std::vector<lvb_antenna> rail(2);
    EXPECT_EQ(lvb_spread_on_rail(&antenna, 0.0, none, 0.0, 2, rail.data(), &placing->fault), LVB_E_NAN);
    expect_fault(placing->fault, {LVB_E_NAN, LVB_STRUCT_NONE, LVB_FIELD_TO_Y_M, -1, -1, none, -1e6, 1e6});
    EXPECT_EQ(lvb_spread_on_rail(&antenna, 0.0, 0.0, 0.0, 1, rail.data(), &placing->fault), LVB_E_COUNT);
    EXPECT_EQ(lvb_spread_on_rail(&antenna, 0.0, 0.0, 0.0, 2, nullptr, &placing->fault), LVB_E_NULL);
}

} // namespace
