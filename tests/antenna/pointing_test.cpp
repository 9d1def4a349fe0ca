// Two antennas that see each other: known scenes, reciprocity, turned and mirrored scenes, polarization, notes.
#include "chain/chains.hpp"
#include "units/random.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace {

using proof::Random;
using proof::sized;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double degree = std::numbers::pi / 180.0;

lvb_antenna antenna(double x, double y, double z, double azimuth = 0.0, double tilt = 0.0) {
    auto made = sized<lvb_antenna>();
    made.x_m = x;
    made.y_m = y;
    made.z_m = z;
    made.azimuth_deg = azimuth;
    made.tilt_deg = tilt;
    return made;
}
lvb_pointing see(const lvb_antenna &transmit, const lvb_antenna &receive, double mhz = 600.0) {
    auto pointing = sized<lvb_pointing>();
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pointing(&transmit, &receive, mhz, &pointing, &fault), LVB_OK) << lvb_field_name(fault.field);
    for (const double number :
         {pointing.distance_m, pointing.transmit_azimuth_deg, pointing.transmit_elevation_deg,
          pointing.receive_azimuth_deg, pointing.receive_elevation_deg, pointing.transmit_gain_dbi,
          pointing.receive_gain_dbi, pointing.polarization_loss_db, pointing.far_field_distance_m})
        EXPECT_FALSE(std::isnan(number));
    return pointing;
}

TEST(Pointing, SeesTheQuartersOfTheCompass) {
    const auto here = antenna(0, 0, 0);
    const auto sees = [&](double x, double y, double z, double azimuth, double elevation) {
        const lvb_pointing pointing = see(here, antenna(x, y, z));
        EXPECT_EQ(pointing.transmit_azimuth_deg, azimuth);
        EXPECT_EQ(pointing.transmit_elevation_deg, elevation);
    };
    sees(0, 5, 0, 0, 0);
    sees(5, 0, 0, 90, 0); // clockwise seen from above
    sees(-5, 0, 0, -90, 0);
    sees(0, -5, 0, 180, 0);
    sees(0, 0, 5, 0, 90);
    sees(0, 0, -5, 0, -90);
    sees(3, 3, 0, 45, 0);
    sees(0, 3, 3, 0, 45);
    EXPECT_EQ(see(here, antenna(2, 3, 6)).distance_m, 7.0);
}

TEST(Pointing, FollowsBoresightTiltAndRoll) {
    // an antenna turned to the right sees ahead on its left
    EXPECT_EQ(see(antenna(0, 0, 0, 90), antenna(0, 9, 0)).transmit_azimuth_deg, -90.0);
    // tilted up by 30 degrees it sees the horizon below
    EXPECT_NEAR(see(antenna(0, 0, 0, 0, 30), antenna(0, 9, 0)).transmit_elevation_deg, -30.0, 1e-13);
    // rolled clockwise seen from behind, what is right comes up
    auto rolled = antenna(0, 0, 0);
    rolled.roll_deg = 90.0;
    EXPECT_EQ(see(rolled, antenna(4, 0, 0)).transmit_elevation_deg, -90.0 + 180.0);
    EXPECT_EQ(see(rolled, antenna(0, 0, 4)).transmit_azimuth_deg, -90.0);
}

// A half-wave dipole that lies on its side has its null where its axis points.
TEST(Pointing, TurnsThePatternWithTheAntenna) {
    auto dipole = sized<lvb_pattern>();
    dipole.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    auto lying = antenna(0, 0, 0);
    lying.roll_deg = 90.0;
    lying.pattern = &dipole;
    const lvb_pointing along = see(lying, antenna(6, 0, 0)), across = see(lying, antenna(0, 6, 0));
    EXPECT_EQ(along.transmit_gain_dbi, -infinity);
    EXPECT_EQ(along.notes, std::uint32_t{LVB_NOTE_NULL});
    EXPECT_EQ(along.polarization_loss_db, infinity);
    EXPECT_NEAR(across.transmit_gain_dbi, 2.1508803745, 1e-9);
    EXPECT_EQ(across.polarization_loss_db, infinity); // horizontal against vertical
    EXPECT_NEAR(see(lying, antenna(0, 0, 6)).transmit_gain_dbi, 2.1508803745, 1e-9);
}

// Facing each other: the formula of two ellipses; both turn clockwise as seen from behind, each from its own side.
TEST(Pointing, PolarizationOfAntennasThatFaceEachOtherIsThatOfTwoEllipses) {
    Random random(111);
    for (int i = 0; i < 2000; ++i) {
        auto one = antenna(1, 2, 3, 0), other = antenna(1, 12, 3, 180);
        one.ellipticity = random.uniform(-1.0, 1.0);
        other.ellipticity = random.uniform(-1.0, 1.0);
        one.polarization_deg = random.uniform(-180.0, 180.0);
        other.roll_deg = random.uniform(-180.0, 180.0);
        const double expected = lvb_elliptical_polarization_loss_db(one.ellipticity, other.ellipticity,
                                                                    one.polarization_deg + other.roll_deg);
        if (expected < 60.0) {
            EXPECT_NEAR(see(one, other).polarization_loss_db, expected, 1e-10);
        }
    }
    auto right = antenna(0, 0, 0), left = antenna(0, 9, 0, 180);
    right.ellipticity = 1.0;
    left.ellipticity = -1.0;
    EXPECT_EQ(see(right, left).polarization_loss_db, infinity);
    EXPECT_EQ(see(right, antenna(0, 9, 0, 180)).polarization_loss_db, lvb_linear_to_elliptical_loss_db(0.0, 0.0));
    left.ellipticity = 1.0;
    EXPECT_NEAR(see(right, left).polarization_loss_db, 0.0, 1e-14);
}

TEST(Pointing, LinearAxesAreProjectedAcrossTheLineOfSight) {
    // two vertical antennas at any heights lie in one plane with the line of sight: nothing is lost
    EXPECT_NEAR(see(antenna(0, 0, 0), antenna(3, 4, 12)).polarization_loss_db, 0.0, 1e-13);
    // an axis that leans in the plane across the line loses its cosine, one that leans along the line nothing
    auto leaning = antenna(0, 9, 0, 180);
    leaning.roll_deg = 60.0;
    EXPECT_NEAR(see(antenna(0, 0, 0), leaning).polarization_loss_db, 6.0206, 1e-4);
    leaning.roll_deg = 0.0;
    leaning.tilt_deg = 60.0;
    EXPECT_NEAR(see(antenna(0, 0, 0), leaning).polarization_loss_db, 0.0, 1e-13);
    EXPECT_EQ(see(antenna(0, 0, 0), antenna(0, 0, 7)).polarization_loss_db, infinity); // along the axis
    Random random(112);
    for (int i = 0; i < 500; ++i) { // crossed in any turned pair: nothing, not a number that rounding makes
        auto one = antenna(0, 0, 0, random.uniform(-180.0, 180.0)), other = antenna(0, 0, 0);
        const double far = random.uniform(1.0, 50.0);
        other.x_m = far * std::sin(one.azimuth_deg * degree);
        other.y_m = far * std::cos(one.azimuth_deg * degree);
        other.azimuth_deg = one.azimuth_deg > 0.0 ? one.azimuth_deg - 180.0 : one.azimuth_deg + 180.0;
        other.roll_deg = 90.0;
        EXPECT_EQ(see(one, other).polarization_loss_db, infinity);
    }
}

lvb_antenna any(Random &random, const lvb_pattern *pattern) {
    const double x = random.uniform(-30.0, 30.0), y = random.uniform(-30.0, 30.0), z = random.uniform(0.0, 10.0);
    const double azimuth = random.uniform(-180.0, 180.0), tilt = random.uniform(-80.0, 80.0);
    auto made = antenna(x, y, z, azimuth, tilt);
    made.roll_deg = random.uniform(-180.0, 180.0);
    made.polarization_deg = random.uniform(-180.0, 180.0);
    made.ellipticity = random.below(3) ? random.uniform(-1.0, 1.0) : 0.0;
    made.largest_dimension_m = random.uniform(0.0, 2.0);
    made.pattern = random.below(4) ? pattern : nullptr;
    if (made.pattern != nullptr && pattern->kind == LVB_PATTERN_HALF_WAVE_DIPOLE)
        made.polarization_deg = made.ellipticity = 0.0;
    return made;
}

struct Patterns {
    lvb_pattern dipole = sized<lvb_pattern>(), cosine = sized<lvb_pattern>();
    Patterns() {
        dipole.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
        cosine.kind = LVB_PATTERN_COSINE;
        cosine.gain_dbi = 8.0;
        cosine.front_to_back_db = 20.0;
    }
    const lvb_pattern *any(Random &random) const { return random.below(2) ? &dipole : &cosine; }
};

void expect_same_scene(const lvb_pointing &a, const lvb_pointing &b, double off) {
    EXPECT_NEAR(a.distance_m, b.distance_m, off);
    EXPECT_NEAR(a.transmit_elevation_deg, b.transmit_elevation_deg, 1e4 * off);
    EXPECT_NEAR(a.receive_elevation_deg, b.receive_elevation_deg, 1e4 * off);
    if (std::fabs(a.transmit_elevation_deg) < 85.0) {
        EXPECT_NEAR(std::cos(a.transmit_azimuth_deg * degree), std::cos(b.transmit_azimuth_deg * degree), 1e3 * off);
        EXPECT_NEAR(std::sin(a.transmit_azimuth_deg * degree), std::sin(b.transmit_azimuth_deg * degree), 1e3 * off);
    }
    if (a.transmit_gain_dbi > -60.0) {
        EXPECT_NEAR(a.transmit_gain_dbi, b.transmit_gain_dbi, 1e5 * off);
    }
    if (a.receive_gain_dbi > -60.0) {
        EXPECT_NEAR(a.receive_gain_dbi, b.receive_gain_dbi, 1e5 * off);
    }
    if (a.polarization_loss_db < 40.0) {
        EXPECT_NEAR(a.polarization_loss_db, b.polarization_loss_db, 1e5 * off);
    }
    EXPECT_EQ(a.notes, b.notes);
}

TEST(Pointing, IsReciprocal) {
    Random random(113);
    const Patterns patterns;
    for (int i = 0; i < 3000; ++i) {
        const lvb_antenna one = any(random, patterns.any(random)), other = any(random, patterns.any(random));
        const lvb_pointing there = see(one, other), back = see(other, one);
        EXPECT_EQ(there.distance_m, back.distance_m);
        EXPECT_EQ(there.transmit_azimuth_deg, back.receive_azimuth_deg);
        EXPECT_EQ(there.transmit_elevation_deg, back.receive_elevation_deg);
        EXPECT_EQ(there.receive_azimuth_deg, back.transmit_azimuth_deg);
        EXPECT_EQ(there.transmit_gain_dbi, back.receive_gain_dbi);
        EXPECT_EQ(there.receive_gain_dbi, back.transmit_gain_dbi);
        EXPECT_EQ(there.far_field_distance_m, back.far_field_distance_m);
        EXPECT_EQ(there.notes, back.notes);
        if (there.polarization_loss_db < 60.0) {
            EXPECT_NEAR(there.polarization_loss_db, back.polarization_loss_db, 1e-10);
        }
    }
}

TEST(Pointing, StaysTheSameWhenTheWholeSceneIsTurnedOrMoved) {
    Random random(114);
    const Patterns patterns;
    for (int i = 0; i < 3000; ++i) {
        const lvb_antenna one = any(random, patterns.any(random)), other = any(random, patterns.any(random));
        const double turn = random.uniform(-180.0, 180.0);
        const auto turned = [turn](lvb_antenna a) { // clockwise about the vertical
            const double s = std::sin(turn * degree), c = std::cos(turn * degree), x = a.x_m;
            a.x_m = c * x + s * a.y_m;
            a.y_m = c * a.y_m - s * x;
            a.azimuth_deg += turn;
            if (a.azimuth_deg > 360.0) a.azimuth_deg -= 360.0;
            if (a.azimuth_deg < -360.0) a.azimuth_deg += 360.0;
            return a;
        };
        expect_same_scene(see(one, other), see(turned(one), turned(other)), 1e-13);
        const auto moved = [](lvb_antenna a) {
            a.x_m += 5.0;
            a.y_m -= 8.0;
            a.z_m += 2.0;
            return a;
        };
        expect_same_scene(see(one, other), see(moved(one), moved(other)), 1e-13);
        // a roll by the same angle of both at opposite sides of one line turns the scene about that line
        const auto whole_turn = [](lvb_antenna a) {
            a.roll_deg += a.roll_deg > 0.0 ? -360.0 : 360.0;
            return a;
        };
        expect_same_scene(see(one, other), see(whole_turn(one), whole_turn(other)), 1e-13);
    }
}

TEST(Pointing, IsMirroredWithTheScene) {
    Random random(115);
    const Patterns patterns;
    const auto mirrored = [](lvb_antenna a) { // left and right
        a.x_m = -a.x_m;
        a.azimuth_deg = -a.azimuth_deg;
        a.roll_deg = -a.roll_deg;
        a.polarization_deg = -a.polarization_deg;
        a.ellipticity = -a.ellipticity;
        return a;
    };
    for (int i = 0; i < 3000; ++i) {
        const lvb_antenna one = any(random, patterns.any(random)), other = any(random, patterns.any(random));
        const lvb_pointing plain = see(one, other), mirror = see(mirrored(one), mirrored(other));
        EXPECT_EQ(mirror.transmit_azimuth_deg, -plain.transmit_azimuth_deg);
        EXPECT_EQ(mirror.transmit_elevation_deg, plain.transmit_elevation_deg);
        EXPECT_EQ(mirror.receive_azimuth_deg, -plain.receive_azimuth_deg);
        EXPECT_EQ(mirror.transmit_gain_dbi, plain.transmit_gain_dbi);
        EXPECT_EQ(mirror.receive_gain_dbi, plain.receive_gain_dbi);
        EXPECT_EQ(mirror.polarization_loss_db, plain.polarization_loss_db);
    }
}

TEST(Pointing, NotesWhatIsTooNear) {
    auto large = antenna(0, 0, 0);
    large.largest_dimension_m = 1.0;
    EXPECT_NEAR(see(large, antenna(0, 9, 0), 900.0).far_field_distance_m, 6.0, 0.01); // Rappaport, example 4.1
    EXPECT_EQ(see(large, antenna(0, 9, 0), 900.0).notes, 0u);
    EXPECT_EQ(see(large, antenna(0, 5, 0), 900.0).notes, std::uint32_t{LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE});
    EXPECT_EQ(see(antenna(0, 5, 0), large, 900.0).notes, std::uint32_t{LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE});
    EXPECT_EQ(see(antenna(0, 0, 0), antenna(0, 0.3, 0), 900.0).notes, std::uint32_t{LVB_NOTE_NEAR_FIELD});
    EXPECT_EQ(see(antenna(0, 0, 0), antenna(0, 0.4, 0), 900.0).notes, 0u);
    EXPECT_EQ(see(antenna(0, 0, 0), antenna(0, 9, 0)).far_field_distance_m, 0.0);
}

// What a pointing gives is what an antenna stage takes.
TEST(Pointing, FeedsAChain) {
    const Patterns patterns;
    auto stage_left = antenna(-4, 0, 3, 60, -10), pack = antenna(2, 5, 1.2);
    stage_left.pattern = &patterns.cosine;
    pack.pattern = &patterns.dipole;
    const lvb_pointing sight = see(stage_left, pack);
    proof::Chain chain({proof::source(15.0), proof::antenna(), proof::air(), proof::antenna()}, 600.0,
                       sight.distance_m);
    chain.stages[1].pattern = &patterns.cosine;
    chain.stages[1].far_azimuth_deg = sight.transmit_azimuth_deg;
    chain.stages[1].far_elevation_deg = sight.transmit_elevation_deg;
    chain.stages[3].pattern = &patterns.dipole;
    chain.stages[3].far_azimuth_deg = sight.receive_azimuth_deg;
    chain.stages[3].far_elevation_deg = sight.receive_elevation_deg;
    ASSERT_EQ(chain.compute(), LVB_OK);
    EXPECT_EQ(chain.levels[1].far_change_db, sight.transmit_gain_dbi);
    EXPECT_EQ(chain.levels[3].far_change_db, sight.receive_gain_dbi);
    EXPECT_EQ(chain.budget.eirp_dbm, 15.0 + 8.0);
}

} // namespace
