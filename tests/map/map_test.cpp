// Maps: every point against the single link, symmetry, splits into rows, instruction sets, areas, screens, bodies.
#include "map/sites.hpp"
#include "path/paths.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>

namespace {

using namespace proof;

/// What lvb_compute_pointing and lvb_compute_budget give for one antenna of a stage and one point.
struct Single {
    lvb_budget far = sized<lvb_budget>();
    lvb_pointing pointing = sized<lvb_pointing>();
};
Single single(const Stage &stage, std::size_t index, double x_m, double y_m, bool inbound = false) {
    Single out;
    lvb_antenna pack = sized<lvb_antenna>();
    pack.x_m = x_m;
    pack.y_m = y_m;
    pack.z_m = stage.site.pack_height_m;
    lvb_antenna antenna = *stage.antennas[index].antenna;
    if (antenna.pattern != nullptr && antenna.pattern->kind == LVB_PATTERN_HELIX) antenna.ellipticity = 1.0; // as wound
    lvb_link link = *stage.antennas[index].link;
    EXPECT_EQ(lvb_compute_pointing(&antenna, &pack, link.frequency_mhz, &out.pointing, nullptr), LVB_OK);
    link.far_distance_m = out.pointing.distance_m;
    std::vector<lvb_stage> chain(link.stages, link.stages + link.stage_count);
    if (antenna.pattern != nullptr) {
        std::size_t own = 0;
        for (std::size_t i = 0, seen = 0; i < chain.size(); ++i)
            if (chain[i].kind == LVB_KIND_ANTENNA && seen++ == (inbound ? 1u : 0u)) own = i;
        chain[own].gain_db = 0.0;
        chain[own].pattern = antenna.pattern;
        chain[own].far_azimuth_deg = chain[own].near_azimuth_deg = out.pointing.transmit_azimuth_deg;
        chain[own].far_elevation_deg = chain[own].near_elevation_deg = out.pointing.transmit_elevation_deg;
    }
    link.stages = chain.data();
    EXPECT_EQ(lvb_compute_budget(&link, &out.far, nullptr, 0, nullptr), LVB_OK);
    return out;
}

std::int32_t zone_of(const lvb_budget &budget) {
    if (budget.far_end.margin_db < 0.0) return LVB_ZONE_DROPOUT;
    if (budget.near_end.headroom_db < 0.0) return LVB_ZONE_OVERLOAD;
    return budget.far_end.zone;
}

TEST(Map, OfAnIsotropicAntennaIsFreeSpaceAtEachPoint) {
    Stage stage(1.3);
    stage.add({source(0.0), antenna(), air(), antenna()}, 2.0, -1.5, 3.0, 614.25);
    Mapped mapped(stage, -7.0, 0.5, 0.37, 137, 19);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
    double worst = 0.0;
    for (std::size_t k = 0; k < mapped.level.size(); ++k) {
        const double dx = mapped.x(k) - 2.0, dy = mapped.y(k) + 1.5, dz = 1.3 - 3.0;
        const double loss = lvb_free_space_loss_db(614.25, std::sqrt(dx * dx + dy * dy + dz * dz));
        worst = std::max(worst, std::abs(mapped.level[k] + loss));
        EXPECT_TRUE(std::isnan(mapped.margin[k]) && std::isnan(mapped.headroom[k]));
        EXPECT_EQ(mapped.zone[k], LVB_ZONE_NOT_JUDGED);
    }
    EXPECT_LT(worst, 1e-12);
    EXPECT_EQ(mapped.summary.not_judged, mapped.level.size());
}

/// Sites of every pattern against the budget of each point.
void compare(Stage &stage, std::size_t antennas, bool inbound, double tolerance_db) {
    Mapped mapped(stage, -6.0, -3.0, 0.71, 23, 11);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK) << lvb_field_name(stage.fault.field);
    for (std::size_t k = 0; k < mapped.level.size(); ++k) {
        Single best;
        std::int32_t serving = -1;
        double near = -std::numeric_limits<double>::infinity(), level = near;
        for (std::size_t a = 0; a < antennas; ++a) {
            const Single one = single(stage, a, mapped.x(k), mapped.y(k), inbound);
            near = std::max(near, one.far.near_end.level_dbm);
            if (!(one.far.far_end.level_dbm > level)) continue;
            level = one.far.far_end.level_dbm;
            best = one;
            serving = static_cast<std::int32_t>(a);
        }
        if (level < -300.0) { // next to a null, where directions lose digits
            EXPECT_LT(mapped.level[k], -250.0);
            continue;
        }
        EXPECT_NEAR(mapped.level[k], level, tolerance_db) << mapped.x(k) << " " << mapped.y(k);
        EXPECT_NEAR(mapped.margin[k], best.far.far_end.margin_db, tolerance_db);
        EXPECT_NEAR(mapped.headroom[k], -20.0 - near, tolerance_db);
        EXPECT_EQ(mapped.serving[k], serving);
        if (antennas == 1) {
            EXPECT_EQ(mapped.zone[k], zone_of(best.far));
        }
    }
}

TEST(Map, HoldsTheBudgetOfEveryPatternAtEachPoint) {
    for (const std::int32_t kind :
         {LVB_PATTERN_ISOTROPIC, LVB_PATTERN_HALF_WAVE_DIPOLE, LVB_PATTERN_COSINE, LVB_PATTERN_HELIX, LVB_PATTERN_CUTS})
        for (const bool inbound : {false, true})
            for (int variant = 0; variant < 4; ++variant) {
                Stage stage;
                stage.site.direction = inbound ? LVB_DIRECTION_INBOUND : LVB_DIRECTION_OUTBOUND;
                lvb_antenna &antenna = stage.add(chain_out(17.0, 6.0), 1.1, -4.0, 2.9);
                antenna.azimuth_deg = 12.0;
                antenna.tilt_deg = -11.0;
                antenna.roll_deg = 5.0 * variant;
                lvb_pattern &pattern = stage.pattern(antenna, kind);
                const double azimuths[] = {-90.0, 0.0, 90.0, 180.0}, elevations[] = {-90.0, 0.0, 90.0};
                const double around[] = {-10.0, 0.0, -11.0, -24.0}, up[] = {-18.0, 0.0, -17.0};
                auto azimuth_cut = sized<lvb_azimuth_cut>();
                azimuth_cut.row_count = 4;
                azimuth_cut.azimuth_deg = azimuths;
                azimuth_cut.gain_db = around;
                auto elevation_cut = sized<lvb_elevation_cut>();
                elevation_cut.row_count = 3;
                elevation_cut.elevation_deg = elevations;
                elevation_cut.gain_db = up;
                if (kind == LVB_PATTERN_ISOTROPIC) pattern.gain_dbi = 2.0;
                if (kind == LVB_PATTERN_COSINE && variant == 0) pattern.gain_dbi = 9.0;
                if (kind == LVB_PATTERN_COSINE && variant == 1) pattern.beam_width_deg = 90.0;        // n = 2
                if (kind == LVB_PATTERN_COSINE && variant == 2) pattern.gain_dbi = 3.010299956639812; // n = 0
                if (kind == LVB_PATTERN_COSINE && variant == 3) pattern.beam_width_deg = 65.0;
                if (kind == LVB_PATTERN_HELIX) {
                    pattern.turns = 6.0;
                    pattern.spacing_wavelengths = 0.24;
                    pattern.circumference_wavelengths = 1.1;
                }
                if (kind == LVB_PATTERN_CUTS) {
                    pattern.gain_dbi = 7.0;
                    pattern.azimuth_cut = &azimuth_cut;
                    if (variant != 1) pattern.elevation_cut = &elevation_cut;
                }
                if (kind >= LVB_PATTERN_COSINE && variant >= 2) pattern.front_to_back_db = 18.0;
                SCOPED_TRACE(kind * 10 + variant);
                compare(stage, 1, inbound, kind == LVB_PATTERN_CUTS ? 1e-10 : 1e-11);
            }
}

TEST(Map, TheStrongestOfSeveralAntennasCounts) {
    Stage stage;
    stage.add(chain_out(15.0, 3.0), -5.0, -4.0, 2.5);
    stage.pattern(stage.add(chain_out(12.0, 0.0, -14.0), 5.0, -4.0, 3.5), LVB_PATTERN_COSINE).gain_dbi = 8.0;
    stage.add(chain_out(10.0, 1.0, -22.0), 0.0, 9.0, 2.0);
    compare(stage, 3, false, 1e-11);
}

TEST(Map, OverAPathTakesItsModelAtEachPoint) {
    std::vector<Way> ways;
    ways.push_back(Way(LVB_PATH_LOG_DISTANCE));
    ways.back().path.exponent = 2.7;
    ways.back().path.wall_count = 2;
    ways.back().path.wall_loss_db = 4.5;
    ways.push_back(Way(LVB_PATH_INDOOR));
    ways.back().path.power_loss_coefficient = 28.0;
    ways.push_back(Way(LVB_PATH_SITE_GENERAL));
    ways.back().path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT;
    ways.push_back(Way(LVB_PATH_FREE_SPACE));
    ways.back().path.wall_count = 1;
    ways.back().path.wall_loss_db = 7.0;
    for (Way &way : ways) {
        Stage stage;
        std::vector<lvb_stage> chain = chain_out();
        chain[3].path = way.lent();
        stage.add(chain, 0.3, -6.5, 2.5);
        compare(stage, 1, false, 1e-11);
    }
}

TEST(Map, TwoRaysTakeTheirHeightsFromTheSite) {
    Way way(LVB_PATH_TWO_RAY);
    way.heights(9.0, 9.0).ground(5.0, 0.01, LVB_POLARIZATION_HORIZONTAL);
    for (const bool inbound : {false, true}) {
        Stage stage(1.2);
        stage.site.direction = inbound ? LVB_DIRECTION_INBOUND : LVB_DIRECTION_OUTBOUND;
        std::vector<lvb_stage> chain = {source(0.0), antenna(), air(), antenna()};
        chain[2].path = way.lent();
        stage.add(chain, 0.0, 0.0, 2.5);
        Mapped mapped(stage, 1.0, 0.0, 0.5, 60, 3);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
        Way heights(LVB_PATH_TWO_RAY);
        heights.heights(inbound ? 1.2 : 2.5, inbound ? 2.5 : 1.2).ground(5.0, 0.01, LVB_POLARIZATION_HORIZONTAL);
        for (std::size_t k = 0; k < mapped.level.size(); ++k)
            EXPECT_NEAR(mapped.level[k], -heights.at(600.0, std::hypot(mapped.x(k), mapped.y(k))), 1e-9);
    }
}

TEST(Map, WhereAPathDoesNotHoldAPointIsNotCounted) {
    Way way(LVB_PATH_SITE_GENERAL);
    way.path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT; // 2 to 27 m
    Stage stage(1.0);
    std::vector<lvb_stage> chain = chain_out();
    chain[3].path = way.lent();
    stage.add(chain, 0.0, 0.0, 1.0);
    Mapped mapped(stage, 0.0, 0.0, 1.0, 40, 1);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
    for (std::size_t k = 0; k < 40; ++k) EXPECT_EQ(std::isnan(mapped.level[k]), k < 2 || k > 27) << k;
    EXPECT_EQ(mapped.summary.points, 26u);
    EXPECT_EQ(mapped.summary.unmodelled, 14u);
    EXPECT_EQ(mapped.summary.worst_column, 27u);
    EXPECT_EQ(mapped.summary.hottest_column, 2u);
}

/// A site with something of everything, made at random.
void make_site(Stage &stage, Random &random, bool with_body, const lvb_body_table *table) {
    const std::size_t antennas = 1 + random.below(4);
    for (std::size_t a = 0; a < antennas; ++a) {
        const double power_dbm = random.uniform(0.0, 20.0), gain_dbi = random.uniform(-3.0, 9.0);
        const double allowance_db = random.below(2) ? -20.0 : random.uniform(-30.0, 0.0);
        const double x = random.uniform(-10.0, 10.0), y = random.uniform(-10.0, 10.0), z = random.uniform(0.5, 5.0);
        lvb_antenna &antenna = stage.add(chain_out(power_dbm, gain_dbi, allowance_db), x, y, z);
        antenna.azimuth_deg = random.uniform(-180.0, 180.0);
        antenna.tilt_deg = random.uniform(-30.0, 30.0);
        switch (random.below(4)) {
        case 0:
            break;
        case 1:
            stage.pattern(antenna, LVB_PATTERN_COSINE).beam_width_deg =
                random.below(2) ? 90.0 : random.uniform(20.0, 120.0);
            break;
        case 2:
            stage.pattern(antenna, LVB_PATTERN_HALF_WAVE_DIPOLE);
            break;
        default:
            stage.pattern(antenna, LVB_PATTERN_COSINE).gain_dbi = random.uniform(4.0, 12.0);
            stage.patterns.back().front_to_back_db = random.uniform(5.0, 40.0);
        }
    }
    for (std::size_t n = random.below(3); n > 0; --n) {
        const double x = random.uniform(-8.0, 4.0), y = random.uniform(-8.0, 4.0), w = random.uniform(2.0, 9.0);
        stage.area({x, x + w, x + w, x + 0.3 * w}, {y, y, y + w, y + 0.5 * w});
    }
    for (std::size_t n = random.below(3); n > 0; --n) {
        const double x = random.uniform(-8.0, 8.0), y = random.uniform(-8.0, 8.0);
        const double along = random.uniform(0.5, 4.0), ahead = random.uniform(-2.0, 2.0);
        const double bottom = random.below(2) ? 0.0 : 0.7, top = random.uniform(1.0, 4.0);
        stage.screen(x, y, x + along, y + ahead, bottom, top, random.below(2) ? 0.0 : random.uniform(3.0, 30.0));
    }
    stage.site.combine = static_cast<std::int32_t>(random.below(2));
    if (!with_body) return;
    const std::size_t worn = random.below(3); // a body, an antenna that is turned with it, or both
    if (worn != 1) stage.site.body_table = table;
    if (worn != 0) {
        stage.worn.roll_deg = random.uniform(-180.0, 180.0);
        stage.worn.tilt_deg = random.uniform(-90.0, 90.0);
        stage.site.pack_antenna = &stage.worn;
        stage.site.most_polarization_loss_db = random.below(2) ? 0.0 : random.uniform(6.0, 30.0);
    }
    stage.site.facing = static_cast<std::int32_t>(random.below(4));
    if (stage.site.facing == LVB_FACING_AZIMUTH) stage.site.facing_azimuth_deg = random.uniform(-180.0, 180.0);
    if (stage.site.facing == LVB_FACING_POINT) stage.site.facing_y_m = random.uniform(-20.0, 20.0);
    if (stage.site.facing >= LVB_FACING_ANTENNA)
        stage.site.facing_antenna = static_cast<std::uint32_t>(random.below(antennas));
}

const double facings[] = {-90.0, 0.0, 90.0, 180.0}, losses[] = {5.0, 0.0, 6.0, 22.0};
lvb_body_table body_table() {
    auto table = sized<lvb_body_table>();
    table.row_count = 4;
    table.facing_deg = facings;
    table.loss_db = losses;
    return table;
}

bool same_bits(const std::vector<double> &a, const std::vector<double> &b) {
    return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), identical);
}
void expect_same(const lvb_map_summary &a, const lvb_map_summary &b) {
    std::uint64_t a_words[sizeof a / 8], b_words[sizeof a / 8];
    std::memcpy(a_words, &a, sizeof a);
    std::memcpy(b_words, &b, sizeof b);
    for (std::size_t i = 0; i < sizeof a / 8; ++i) EXPECT_EQ(a_words[i], b_words[i]) << "word " << i;
}

TEST(Map, HasTheSameBitsOnEveryInstructionSetAndInAnySplitIntoRows) {
    Random random(515);
    const lvb_body_table table = body_table();
    for (int turn = 0; turn < 60; ++turn) {
        Stage stage;
        make_site(stage, random, random.below(2) != 0, &table);
        const std::uint64_t columns = 1 + random.below(300), rows = 1 + random.below(9);
        const double step = random.uniform(0.05, 0.5);
        Mapped whole(stage, -9.0, -8.5, step, columns, rows);
        whole.map.instructions = LVB_INSTRUCTIONS_BASELINE;
        const lvb_status status = whole.compute(stage.fault);
        if (status == LVB_E_CONFLICT) continue; // an antenna in a screen
        ASSERT_EQ(status, LVB_OK) << lvb_field_name(stage.fault.field);
        for (std::int32_t set = LVB_INSTRUCTIONS_AUTOMATIC; set <= instruction_sets(); ++set) {
            Mapped other(stage, -9.0, -8.5, step, columns, rows);
            other.map.instructions = set;
            auto joined = sized<lvb_map_summary>();
            std::vector<std::uint64_t> order(rows);
            for (std::uint64_t r = 0; r < rows; ++r) order[r] = r;
            for (std::uint64_t r = rows; r > 1; --r) std::swap(order[r - 1], order[random.below(r)]);
            for (const std::uint64_t r : order) {
                lvb_map part = other.map;
                part.first_row = r;
                part.row_count = 1;
                part.level_dbm += r * columns;
                part.margin_db += r * columns;
                part.headroom_db += r * columns;
                part.zone += r * columns;
                part.serving += r * columns;
                auto summary = sized<lvb_map_summary>();
                ASSERT_EQ(lvb_compute_map(&part, &summary, &stage.fault), LVB_OK);
                ASSERT_EQ(lvb_join_map_summaries(&joined, &summary, &stage.fault), LVB_OK);
            }
            EXPECT_TRUE(same_bits(whole.level, other.level)) << turn << " " << set;
            EXPECT_TRUE(same_bits(whole.margin, other.margin));
            EXPECT_TRUE(same_bits(whole.headroom, other.headroom));
            EXPECT_EQ(whole.zone, other.zone);
            EXPECT_EQ(whole.serving, other.serving);
            expect_same(whole.summary, joined);
        }
    }
}

TEST(Map, IsSymmetricInAMirror) {
    Random random(77);
    for (int turn = 0; turn < 20; ++turn) {
        Stage stage, mirrored;
        make_site(stage, random, false, nullptr);
        for (std::size_t a = 0; a < stage.antennas.size(); ++a) {
            const lvb_antenna &from = stage.placed[a];
            lvb_antenna &to = mirrored.add(stage.chains[a], -from.x_m, from.y_m, from.z_m);
            to.azimuth_deg = -from.azimuth_deg;
            to.tilt_deg = from.tilt_deg;
            to.pattern = from.pattern;
        }
        for (const lvb_area &area : stage.areas) {
            std::vector<double> x(area.x_m, area.x_m + area.corner_count), y(area.y_m, area.y_m + area.corner_count);
            for (double &each : x) each = -each;
            mirrored.area(x, y);
        }
        for (lvb_screen screen : stage.screens)
            mirrored.screen(-screen.x1_m, screen.y1_m, -screen.x2_m, screen.y2_m, screen.bottom_m, screen.top_m,
                            screen.loss_db);
        mirrored.site.combine = stage.site.combine;
        Mapped one(stage, -8.0, -8.0, 0.5, 33, 33), other(mirrored, -8.0, -8.0, 0.5, 33, 33);
        const lvb_status status = one.compute(stage.fault);
        ASSERT_EQ(other.compute(mirrored.fault), status);
        if (status != LVB_OK) continue;
        for (std::size_t r = 0; r < 33; ++r)
            for (std::size_t c = 0; c < 33; ++c) {
                const double here = one.level[33 * r + c], there = other.level[33 * r + (32 - c)];
                if (std::isnan(here) || here < -250.0) EXPECT_EQ(std::isnan(here), std::isnan(there));
                else EXPECT_NEAR(here, there, 1e-9);
            }
        EXPECT_EQ(one.summary.points, other.summary.points);
    }
}

TEST(Map, OfTwiceTheSizeIs6DecibelsLower) {
    const auto make = [](Stage &stage, double scale) {
        stage.pattern(stage.add(chain_out(), 1.0 * scale, -3.0 * scale, 2.5 * scale), LVB_PATTERN_COSINE).gain_dbi =
            8.0;
        stage.add(chain_out(9.0), -4.0 * scale, 5.0 * scale, 2.0 * scale);
        stage.screen(-1.0 * scale, 0.0, 2.0 * scale, 1.0 * scale, 0.0, 2.0 * scale, 13.0);
    };
    Stage small(1.2), large(2.4);
    make(small, 1.0);
    make(large, 2.0);
    Mapped one(small, -6.0, -6.0, 0.31, 40, 40), two(large, -12.0, -12.0, 0.62, 40, 40);
    ASSERT_EQ(one.compute(small.fault), LVB_OK);
    ASSERT_EQ(two.compute(large.fault), LVB_OK);
    for (std::size_t k = 0; k < one.level.size(); ++k)
        EXPECT_NEAR(one.level[k] - two.level[k], 20.0 * std::log10(2.0), 1e-11);
}

TEST(Map, AnotherAntennaNeverLowersTheBestNorTheSum) {
    Random random(3);
    for (int turn = 0; turn < 30; ++turn) {
        Stage stage;
        make_site(stage, random, false, nullptr);
        Mapped before(stage, -8.0, -8.0, 0.4, 40, 9);
        if (before.compute(stage.fault) != LVB_OK) continue;
        const bool sums = stage.site.combine == LVB_COMBINE_SUM;
        lvb_antenna &more = stage.add(chain_out(random.uniform(0.0, 20.0), 0.0, -13.0), 20.0, 20.0, 3.0);
        stage.pattern(more, LVB_PATTERN_COSINE).gain_dbi = 6.0;
        more.azimuth_deg = 225.0;
        Mapped after(stage, -8.0, -8.0, 0.4, 40, 9);
        ASSERT_EQ(after.compute(stage.fault), LVB_OK);
        stage.site.combine = LVB_COMBINE_BEST;
        Mapped best(stage, -8.0, -8.0, 0.4, 40, 9);
        ASSERT_EQ(best.compute(stage.fault), LVB_OK);
        for (std::size_t k = 0; k < before.level.size(); ++k) {
            if (std::isnan(before.level[k])) continue;
            EXPECT_GE(after.level[k], before.level[k] - 1e-12);
            EXPECT_LE(after.headroom[k], before.headroom[k] + 1e-12);
            if (sums) {
                EXPECT_GE(after.level[k], best.level[k] - 1e-12);
                EXPECT_LE(after.level[k],
                          best.level[k] + 10.0 * std::log10(static_cast<double>(stage.antennas.size())) + 1e-9);
            }
        }
    }
}

TEST(Map, TwoEqualAntennasInOnePlaceSumTo3DecibelsMore) {
    Stage stage;
    stage.add(chain_out(), 0.0, -3.0, 2.0);
    Mapped one(stage, -3.0, 0.0, 0.5, 13, 5);
    ASSERT_EQ(one.compute(stage.fault), LVB_OK);
    stage.add(chain_out(), 0.0, -3.0, 2.0);
    stage.site.combine = LVB_COMBINE_SUM;
    Mapped two(stage, -3.0, 0.0, 0.5, 13, 5);
    ASSERT_EQ(two.compute(stage.fault), LVB_OK);
    for (std::size_t k = 0; k < one.level.size(); ++k) {
        EXPECT_NEAR(two.level[k] - one.level[k], 10.0 * std::log10(2.0), 1e-12);
        EXPECT_EQ(two.serving[k], 0);
    }
}

TEST(Map, ABodyCostsWhatItsTableSaysAtTheFarRuleOnly) {
    const lvb_body_table table = body_table();
    struct Rule {
        std::int32_t facing;
        double (*wearer_deg)(double x, double y); // azimuth in which the wearer looks
    };
    const auto azimuth = [](double dx, double dy) { return std::atan2(dx, dy) * 180.0 / std::acos(-1.0); };
    static const auto to = azimuth;
    const Rule rules[] = {{LVB_FACING_AZIMUTH, [](double, double) { return 30.0; }},
                          {LVB_FACING_POINT, [](double x, double y) { return to(1.0 - x, -20.0 - y); }},
                          {LVB_FACING_ANTENNA, [](double x, double y) { return to(6.0 - x, 7.0 - y); }},
                          {LVB_FACING_AWAY, [](double x, double y) { return to(6.0 - x, 7.0 - y) + 180.0; }}};
    for (const Rule &rule : rules) {
        Stage stage;
        stage.add(chain_out(), 0.5, -4.0, 2.5);
        Mapped bare(stage, -5.0, -3.0, 0.6, 21, 11);
        ASSERT_EQ(bare.compute(stage.fault), LVB_OK);
        stage.antennas.clear();
        stage.placed.clear();
        stage.add(chain_out(), 0.5, -4.0, 2.5);
        stage.add(chain_out(-150.0), 6.0, 7.0, 2.5); // so weak that it only serves to be looked at
        stage.site.body_table = &table;
        stage.site.facing = rule.facing;
        if (rule.facing == LVB_FACING_AZIMUTH) stage.site.facing_azimuth_deg = 30.0;
        if (rule.facing == LVB_FACING_POINT) {
            stage.site.facing_x_m = 1.0;
            stage.site.facing_y_m = -20.0;
        }
        if (rule.facing >= LVB_FACING_ANTENNA) stage.site.facing_antenna = 1;
        Mapped dressed(stage, -5.0, -3.0, 0.6, 21, 11);
        ASSERT_EQ(dressed.compute(stage.fault), LVB_OK) << lvb_field_name(stage.fault.field);
        for (std::size_t k = 0; k < bare.level.size(); ++k) {
            const double x = bare.x(k), y = bare.y(k);
            double loss;
            const double facing = std::remainder(rule.wearer_deg(x, y) - to(0.5 - x, -4.0 - y), 360.0);
            ASSERT_EQ(lvb_compute_body_loss(&table, facing, &loss, nullptr), LVB_OK);
            EXPECT_NEAR(dressed.level[k], bare.level[k] - loss, 1e-11);
            EXPECT_NEAR(dressed.headroom[k], bare.headroom[k], 1e-11);
        }
    }
}

TEST(Map, CountsWhatLiesInTheAreasTheirEdgesIncluded) {
    Stage stage;
    stage.add(chain_out(), 0.0, -3.0, 2.0);
    stage.area({0.0, 4.0, 4.0, 0.0}, {0.0, 0.0, 2.0, 2.0});
    Mapped square(stage, -2.0, -1.0, 0.5, 17, 9);
    ASSERT_EQ(square.compute(stage.fault), LVB_OK);
    EXPECT_EQ(square.summary.points, 9u * 5u); // 0 to 4 by 0 to 2 in steps of a half, both ends in
    EXPECT_EQ(square.summary.outside, 17u * 9u - 45u);
    for (std::size_t k = 0; k < square.level.size(); ++k) {
        const bool inside = square.x(k) >= 0.0 && square.x(k) <= 4.0 && square.y(k) >= 0.0 && square.y(k) <= 2.0;
        EXPECT_EQ(std::isnan(square.level[k]), !inside);
        EXPECT_EQ(square.serving[k], inside ? 0 : -1);
    }
    stage.area({1.0, 3.0, 3.0, 1.0}, {1.0, 1.0, 3.0, 3.0}); // overlaps: a union
    Mapped both(stage, -2.0, -1.0, 0.5, 17, 9);
    ASSERT_EQ(both.compute(stage.fault), LVB_OK);
    EXPECT_EQ(both.summary.points, 45u + 5u * 2u);
}

// Positions and edges are rounded, and what lies on an edge must not hang on that: a point of a sloping edge counts as
// one of a straight edge does, and so does 3 * 0.1 on an edge at 0.3.
TEST(Map, CountsPointsOnEdgesWhateverRoundingMakesOfThem) {
    for (const bool turned : {false, true}) { // the edges' order, and inside on either side
        Stage stage;
        stage.add(chain_out(), 0.0, -9.0, 2.0);
        if (turned) stage.area({0.1, 0.1, 1.6, 1.6}, {0.3, 0.9, 1.4, 0.8});
        else stage.area({0.1, 1.6, 1.6, 0.1}, {0.3, 0.8, 1.4, 0.9});
        Mapped mapped(stage, 0.1, 0.3, 0.1, 16, 12);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK) << stage.fault.status;
        for (std::uint64_t column = 0; column < 16; ++column)
            for (std::uint64_t row = 0; row < 12; ++row) {
                // in tenths: between 3 y = x + 8 and 3 y = x + 26, x from 1 to 16
                const std::int64_t x = static_cast<std::int64_t>(column) + 1, y = static_cast<std::int64_t>(row) + 3;
                const bool inside = 3 * y >= x + 8 && 3 * y <= x + 26;
                EXPECT_EQ(std::isnan(mapped.level[row * 16 + column]), !inside) << x << ' ' << y;
            }
    }
    Stage narrow; // 1.2 mm is an area
    narrow.add(chain_out(), 0.0, -9.0, 2.0);
    narrow.area({1000.0, 1010.0, 1020.0}, {2000.1, 2000.1012, 2000.1});
    Mapped line(narrow, 1000.0, 2000.1, 0.5, 41, 1);
    ASSERT_EQ(line.compute(narrow.fault), LVB_OK) << narrow.fault.status;
    EXPECT_EQ(line.summary.points, 41u);
}

TEST(Map, AnAreaMayHaveAnyShape) {
    // a diamond whose corners are on the grid, and a star that crosses itself: its middle is outside
    Stage stage;
    stage.add(chain_out(), 0.0, -9.0, 2.0);
    stage.area({0.0, 3.0, 0.0, -3.0}, {-3.0, 0.0, 3.0, 0.0});
    Mapped diamond(stage, -4.0, -4.0, 1.0, 9, 9);
    ASSERT_EQ(diamond.compute(stage.fault), LVB_OK);
    EXPECT_EQ(diamond.summary.points, 25u); // |x| + |y| <= 3
    Stage other;
    other.add(chain_out(), 0.0, -9.0, 2.0);
    const double tau = 2.0 * std::acos(-1.0);
    std::vector<double> x, y;
    for (int i = 0; i < 5; ++i) {
        x.push_back(5.0 * std::sin(tau * 2 * i / 5.0));
        y.push_back(5.0 * std::cos(tau * 2 * i / 5.0));
    }
    other.area(x, y);
    Mapped star(other, 0.0, 0.0, 0.1, 1, 1);
    ASSERT_EQ(star.compute(other.fault), LVB_OK);
    EXPECT_EQ(star.summary.outside, 1u);
    Mapped tip(other, 0.0, 4.0, 0.1, 1, 1);
    ASSERT_EQ(tip.compute(other.fault), LVB_OK);
    EXPECT_EQ(tip.summary.points, 1u);
}

TEST(Map, TellsTheWorstAndTheHottestPointAndTheZones) {
    Random random(11);
    for (int turn = 0; turn < 40; ++turn) {
        Stage stage;
        make_site(stage, random, false, nullptr);
        for (auto &chain : stage.chains) chain.back() = receiver(-62.0, -55.0, -40.0, -18.0);
        Mapped mapped(stage, -9.0, -9.0, 0.3, 61, 7);
        if (mapped.compute(stage.fault) != LVB_OK) continue;
        const lvb_map_summary &told = mapped.summary;
        std::uint64_t zones[6] = {}, points = 0, overloaded = 0;
        std::size_t worst = 0, hottest = 0;
        for (std::size_t k = 0; k < mapped.level.size(); ++k) {
            if (std::isnan(mapped.level[k])) {
                EXPECT_EQ(mapped.zone[k], LVB_ZONE_NOT_JUDGED);
                continue;
            }
            if (points++ == 0) worst = hottest = k;
            if (mapped.level[k] < mapped.level[worst]) worst = k;
            if (mapped.headroom[k] < mapped.headroom[hottest]) hottest = k;
            ++zones[mapped.zone[k]];
            overloaded += mapped.headroom[k] < 0.0 ? 1u : 0u;
            const double level = mapped.level[k];
            const std::int32_t by_level = level < -55.0   ? LVB_ZONE_LOW
                                          : level > -40.0 ? LVB_ZONE_HIGH
                                                          : LVB_ZONE_WANTED;
            EXPECT_EQ(mapped.zone[k], level < -62.0              ? LVB_ZONE_DROPOUT
                                      : mapped.headroom[k] < 0.0 ? LVB_ZONE_OVERLOAD
                                                                 : by_level);
        }
        EXPECT_EQ(told.points, points);
        EXPECT_EQ(told.outside, mapped.level.size() - points);
        EXPECT_EQ(told.dropout, zones[LVB_ZONE_DROPOUT]);
        EXPECT_EQ(told.low, zones[LVB_ZONE_LOW]);
        EXPECT_EQ(told.wanted, zones[LVB_ZONE_WANTED]);
        EXPECT_EQ(told.high, zones[LVB_ZONE_HIGH]);
        EXPECT_EQ(told.overload, zones[LVB_ZONE_OVERLOAD]);
        EXPECT_EQ(told.overloaded, overloaded);
        if (points == 0) {
            EXPECT_TRUE(std::isnan(told.worst_level_dbm) && std::isnan(told.hottest_level_dbm));
            EXPECT_EQ(told.worst_serving, -1);
            continue;
        }
        EXPECT_EQ(told.worst_row * 61 + told.worst_column, worst);
        EXPECT_EQ(told.worst_level_dbm, mapped.level[worst]);
        EXPECT_EQ(told.worst_margin_db, mapped.margin[worst]);
        EXPECT_EQ(told.worst_serving, mapped.serving[worst]);
        EXPECT_EQ(told.hottest_row * 61 + told.hottest_column, hottest);
        EXPECT_EQ(told.hottest_headroom_db, mapped.headroom[hottest]);
    }
}

TEST(Map, TellsTheOutageOfEachMargin) {
    struct Law {
        std::int32_t fading;
        double parameter, (*outage)(double margin_db, double parameter);
    };
    const Law laws[] = {{LVB_FADING_RAYLEIGH, 0.0, [](double m, double) { return lvb_rayleigh_outage_below_mean(m); }},
                        {LVB_FADING_RICE, 6.0, lvb_rice_outage_below_mean},
                        {LVB_FADING_RICE, 0.0, lvb_rice_outage_below_mean},
                        {LVB_FADING_NAKAGAMI, 2.5, lvb_nakagami_outage_below_mean},
                        {LVB_FADING_LOGNORMAL, 5.0, lvb_lognormal_outage_below_median},
                        {LVB_FADING_SUZUKI, 4.0, lvb_suzuki_outage_below_median_of_means}};
    for (const Law &law : laws) {
        Stage stage;
        stage.add(chain_out(0.0, 3.0), 0.0, -3.0, 2.0);
        stage.area({-2.0, 6.0, 6.0}, {-1.0, -1.0, 9.0});
        Mapped mapped(stage, -4.0, -2.0, 1.0, 12, 12);
        mapped.fade(law.fading, law.parameter);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK) << law.fading;
        for (std::size_t k = 0; k < mapped.level.size(); ++k)
            EXPECT_TRUE(identical(mapped.outage[k], law.outage(mapped.margin[k], law.parameter))) << law.fading;
    }
}

TEST(Map, OnAnAntennaAPointCountsAsOneCentimetreAway) {
    for (const bool directive : {false, true}) {
        Stage stage(2.0);
        lvb_antenna &antenna = stage.add({source(0.0), proof::antenna(), air(), proof::antenna()}, 1.0, 1.0, 2.0);
        if (directive) stage.pattern(antenna, LVB_PATTERN_COSINE).gain_dbi = 10.0;
        Mapped mapped(stage, 1.0, 1.0, 0.005, 2, 1);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
        for (const double level : mapped.level)
            EXPECT_NEAR(level, -lvb_free_space_loss_db(600.0, 0.01) + (directive ? 10.0 : 0.0), 1e-12);
    }
}

TEST(Map, BehindACosineNothingArrives) {
    Stage stage(2.0);
    stage.pattern(stage.add(chain_out(), 0.0, 0.0, 2.0), LVB_PATTERN_COSINE).gain_dbi = 6.0;
    Mapped mapped(stage, -3.0, -3.0, 1.0, 7, 7);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
    const double nothing = -std::numeric_limits<double>::infinity();
    for (std::size_t k = 0; k < mapped.level.size(); ++k) {
        const bool on_it = mapped.x(k) == 0.0 && mapped.y(k) == 0.0;
        EXPECT_EQ(mapped.level[k] == nothing, mapped.y(k) <= 0.0 && !on_it) << k;
        if (mapped.level[k] != nothing) continue;
        EXPECT_EQ(mapped.margin[k], nothing);
        EXPECT_EQ(mapped.headroom[k], -nothing);
        EXPECT_EQ(mapped.zone[k], LVB_ZONE_DROPOUT);
        EXPECT_EQ(mapped.serving[k], -1);
    }
    EXPECT_EQ(mapped.summary.worst_level_dbm, nothing);
    EXPECT_EQ(mapped.summary.worst_column, 0u);
}

TEST(Map, WithoutColumnsOrRowsIsCheckedAndEmpty) {
    Stage stage;
    stage.add(chain_out(), 0.0, 0.0, 2.0);
    for (const bool columns : {false, true}) {
        Mapped mapped(stage, 0.0, 0.0, 1.0, 1, 1);
        (columns ? mapped.map.column_count : mapped.map.row_count) = 0;
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
        EXPECT_EQ(mapped.summary.points, 0u);
        EXPECT_TRUE(std::isnan(mapped.summary.worst_level_dbm));
        EXPECT_EQ(mapped.summary.worst_serving, -1);
        EXPECT_EQ(mapped.level[0], -7.25e77);
    }
}

TEST(Map, OfChainsFarFromOneAnotherStaysInTheRangeOfNumbers) {
    std::vector<lvb_stage> weak = {source(-200.0), antenna(), air(), antenna()};
    for (int i = 0; i < 20; ++i) weak.insert(weak.begin() + 1, stage(LVB_KIND_PASSIVE, -200.0));
    Stage stage;
    stage.add(weak, 0.0, 0.0, 3.2);
    Mapped alone(stage, 0.0, 0.0, 1.0, 3, 1);
    ASSERT_EQ(alone.compute(stage.fault), LVB_OK);
    EXPECT_NEAR(alone.level[0], -4200.0 - lvb_free_space_loss_db(600.0, 2.0), 1e-9);
    stage.add({source(150.0), antenna(), air(), antenna()}, 0.0, 0.0, 3.2);
    Mapped both(stage, 0.0, 0.0, 1.0, 3, 1);
    ASSERT_EQ(both.compute(stage.fault), LVB_OK);
    EXPECT_NEAR(both.level[0], 150.0 - lvb_free_space_loss_db(600.0, 2.0), 1e-12);
    EXPECT_EQ(both.serving[0], 1);
}

} // namespace
