// Patterns: each kind against the plain function it stands for, symmetry, floors, nulls, cuts.
#include "chain/chains.hpp"
#include "units/random.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

using proof::sized;

constexpr double infinity = std::numeric_limits<double>::infinity();

lvb_pattern pattern_of(std::int32_t kind) {
    auto made = sized<lvb_pattern>();
    made.kind = kind;
    return made;
}
lvb_pattern cosine_of(double gain_dbi, double front_to_back_db = 0.0) {
    auto made = pattern_of(LVB_PATTERN_COSINE);
    made.gain_dbi = gain_dbi;
    made.front_to_back_db = front_to_back_db;
    return made;
}
lvb_pattern_gain ask(const lvb_pattern &pattern, double azimuth_deg, double elevation_deg) {
    auto result = sized<lvb_pattern_gain>();
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pattern_gain(&pattern, azimuth_deg, elevation_deg, &result, &fault), LVB_OK)
        << lvb_field_name(fault.field);
    EXPECT_FALSE(std::isnan(result.gain_dbi));
    EXPECT_EQ(result.notes & ~std::uint32_t{LVB_NOTE_EXTRAPOLATED},
              result.gain_dbi == -infinity ? std::uint32_t{LVB_NOTE_NULL} : 0u);
    EXPECT_LE(result.gain_dbi, result.maximum_dbi);
    return result;
}
double gain(const lvb_pattern &pattern, double azimuth_deg, double elevation_deg) {
    return ask(pattern, azimuth_deg, elevation_deg).gain_dbi;
}

TEST(Pattern, ZeroedIsIsotropic) {
    proof::Random random(101);
    auto pattern = pattern_of(LVB_PATTERN_ISOTROPIC);
    for (int i = 0; i < 200; ++i) {
        const double azimuth = random.uniform(-360.0, 360.0), elevation = random.uniform(-90.0, 90.0);
        EXPECT_EQ(gain(pattern, azimuth, elevation), 0.0);
    }
    pattern.gain_dbi = -6.0; // a lossy whip
    EXPECT_EQ(gain(pattern, 123.0, -45.0), -6.0);
    EXPECT_EQ(ask(pattern, 0.0, 0.0).maximum_dbi, -6.0);
}

TEST(Pattern, OfADipoleHasItsAxisUp) {
    proof::Random random(102);
    const auto pattern = pattern_of(LVB_PATTERN_HALF_WAVE_DIPOLE);
    for (int i = 0; i < 500; ++i) {
        const double elevation = random.uniform(-90.0, 90.0);
        EXPECT_EQ(gain(pattern, random.uniform(-360.0, 360.0), elevation),
                  lvb_dipole_gain_dbi(90.0 - std::fabs(elevation)));
    }
    EXPECT_EQ(gain(pattern, 0.0, 90.0), -infinity);
    EXPECT_EQ(gain(pattern, 10.0, -90.0), -infinity);
    EXPECT_EQ(gain(pattern, 10.0, 0.0), ask(pattern, 0.0, 30.0).maximum_dbi);
}

TEST(Pattern, OfACosineHasItsGainItsWidthAndNothingBehind) {
    proof::Random random(103);
    for (int i = 0; i < 500; ++i) {
        const double dbi = random.uniform(4.0, 25.0);
        const auto pattern = cosine_of(dbi);
        EXPECT_EQ(gain(pattern, 0.0, 0.0), dbi);
        const double exponent = lvb_cosine_exponent_from_gain_dbi(dbi);
        const double half = 0.5 * lvb_beam_width_deg_from_cosine_exponent(exponent);
        EXPECT_NEAR(gain(pattern, half, 0.0), dbi - 3.0103, 1e-4);
        EXPECT_NEAR(gain(pattern, 0.0, -half), dbi - 3.0103, 1e-4);
        // it depends on the angle off the boresight alone
        const double off = random.uniform(0.0, 85.0), around = random.uniform(0.0, 6.28);
        const double up = std::sin(off * 0.0174532925199433) * std::sin(around);
        const double aside = std::sin(off * 0.0174532925199433) * std::cos(around);
        const double elevation = std::asin(up) / 0.0174532925199433;
        const double azimuth = std::atan2(aside, std::cos(off * 0.0174532925199433)) / 0.0174532925199433;
        EXPECT_NEAR(gain(pattern, azimuth, elevation), gain(pattern, off, 0.0), 1e-9);
        for (const double behind : {90.0, 90.001, 135.0, 180.0, -180.0, 225.0, 270.0, -90.0})
            EXPECT_EQ(gain(pattern, behind, random.uniform(-90.0, 90.0)), -infinity) << behind;
        EXPECT_EQ(gain(pattern, 0.0, 90.0), -infinity);

        auto by_width = pattern_of(LVB_PATTERN_COSINE);
        by_width.beam_width_deg = 2.0 * half;
        EXPECT_NEAR(ask(by_width, off, 0.0).maximum_dbi, dbi, 1e-9);
        EXPECT_NEAR(gain(by_width, off, 0.0), gain(pattern, off, 0.0), 1e-6);
    }
    auto even = pattern_of(LVB_PATTERN_COSINE); // the even half space: no NaN where its edge is
    even.beam_width_deg = 180.0;
    EXPECT_NEAR(gain(even, 60.0, 0.0), 3.0103, 1e-4);
    EXPECT_EQ(gain(even, 90.0, 0.0), -infinity);
    EXPECT_EQ(gain(even, 180.0, 0.0), -infinity);
}

// A data sheet prints both: the width gives the shape and the gain, with its losses, the level.
TEST(Pattern, OfACosineTakesAMeasuredGainBesideItsWidth) {
    proof::Random random(120);
    for (int i = 0; i < 300; ++i) {
        auto lossless = pattern_of(LVB_PATTERN_COSINE);
        lossless.beam_width_deg = random.uniform(20.0, 120.0);
        lvb_pattern measured = lossless;
        measured.gain_dbi = random.uniform(3.1, 15.0);
        EXPECT_EQ(ask(measured, 0.0, 0.0).maximum_dbi, measured.gain_dbi);
        EXPECT_EQ(gain(measured, 0.0, 0.0), measured.gain_dbi);
        EXPECT_NEAR(gain(measured, lossless.beam_width_deg / 2.0, 0.0), measured.gain_dbi - 3.0103, 1e-4);
        const double azimuth = random.uniform(-80.0, 80.0), elevation = random.uniform(-80.0, 80.0);
        EXPECT_NEAR(gain(measured, azimuth, elevation) - measured.gain_dbi,
                    gain(lossless, azimuth, elevation) - gain(lossless, 0.0, 0.0), 1e-11);
    }
}

TEST(Pattern, HasAFloorWhereFrontToBackIsGiven) {
    const auto pattern = cosine_of(9.0, 18.0);
    EXPECT_EQ(gain(pattern, 180.0, 0.0), -9.0);
    EXPECT_EQ(gain(pattern, 90.0, 0.0), -9.0);
    EXPECT_EQ(gain(pattern, 0.0, 90.0), -9.0);
    EXPECT_GT(gain(pattern, 45.0, 0.0), -9.0);
    EXPECT_EQ(gain(pattern, 89.9, 0.0), -9.0); // in front too
}

TEST(Pattern, IsSymmetric) {
    proof::Random random(104);
    auto helix = pattern_of(LVB_PATTERN_HELIX);
    helix.turns = 10.0;
    helix.spacing_wavelengths = 0.236;
    helix.circumference_wavelengths = 1.0;
    for (const auto &pattern : {cosine_of(8.0), cosine_of(12.0, 20.0), pattern_of(LVB_PATTERN_HALF_WAVE_DIPOLE), helix})
        for (int i = 0; i < 500; ++i) {
            const double a = std::floor(random.uniform(-180.0, 180.0) * 1024.0) / 1024.0,
                         e = random.uniform(-90.0, 90.0);
            EXPECT_EQ(gain(pattern, -a, e), gain(pattern, a, e));
            EXPECT_EQ(gain(pattern, a, -e), gain(pattern, a, e));
            EXPECT_EQ(gain(pattern, a > 0.0 ? a - 360.0 : a + 360.0, e), gain(pattern, a, e));
        }
    EXPECT_EQ(gain(helix, 0.0, 0.0), lvb_helix_gain_dbi(10.0, 0.236, 1.0));
    const double half = 0.5 * lvb_helix_beam_width_deg(10.0, 0.236, 1.0);
    EXPECT_NEAR(gain(helix, half, 0.0), lvb_helix_gain_dbi(10.0, 0.236, 1.0) - 3.0103, 1e-4);
}

// Measured helices had pitch angles of 12 to 14 degrees; any other is an estimate beyond what it rests on.
TEST(Pattern, OfAHelixNotesAnotherPitchThanWasMeasured) {
    auto helix = pattern_of(LVB_PATTERN_HELIX);
    helix.turns = 10.0;
    for (double pitch = 4.6; pitch < 33.0; pitch += 0.2)
        for (const double circumference : {0.76, 1.0, 1.3}) {
            helix.circumference_wavelengths = circumference;
            helix.spacing_wavelengths = circumference * std::tan(pitch * 0.0174532925199433);
            if (helix.spacing_wavelengths < 0.1 || helix.spacing_wavelengths > 0.5) continue;
            const bool noted = (ask(helix, 10.0, 0.0).notes & LVB_NOTE_EXTRAPOLATED) != 0;
            EXPECT_EQ(noted, pitch < 11.5 || pitch > 14.5) << pitch;

            auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
            here.pattern = &helix;
            here.ellipticity = 0.95;
            there.y_m = 20.0;
            auto pointing = sized<lvb_pointing>();
            ASSERT_EQ(lvb_compute_pointing(&there, &here, 600.0, &pointing, nullptr), LVB_OK);
            EXPECT_EQ((pointing.notes & LVB_NOTE_EXTRAPOLATED) != 0, noted);
            proof::Chain chain({proof::source(0.0), proof::antenna()});
            chain.stages[1].pattern = &helix;
            ASSERT_EQ(chain.compute(), LVB_OK);
            EXPECT_EQ(chain.levels[1].notes, noted ? std::uint32_t{LVB_NOTE_EXTRAPOLATED} : 0u);
            EXPECT_EQ(chain.budget.notes, chain.levels[1].notes);
        }
    helix.circumference_wavelengths = 1.0;
    helix.spacing_wavelengths = 0.25; // the helix of the book's example
    EXPECT_EQ(ask(helix, 0.0, 0.0).notes, 0u);
}

struct Cuts {
    std::vector<double> azimuth, around, elevation, up;
    lvb_azimuth_cut azimuth_cut = sized<lvb_azimuth_cut>();
    lvb_elevation_cut elevation_cut = sized<lvb_elevation_cut>();

    lvb_pattern pattern(double gain_dbi, double front_to_back_db = 0.0) {
        azimuth_cut.row_count = static_cast<std::uint32_t>(azimuth.size());
        azimuth_cut.azimuth_deg = azimuth.data();
        azimuth_cut.gain_db = around.data();
        elevation_cut.row_count = static_cast<std::uint32_t>(elevation.size());
        elevation_cut.elevation_deg = elevation.data();
        elevation_cut.gain_db = up.data();
        auto made = pattern_of(LVB_PATTERN_CUTS);
        made.gain_dbi = gain_dbi;
        made.front_to_back_db = front_to_back_db;
        if (!azimuth.empty()) made.azimuth_cut = &azimuth_cut;
        if (!elevation.empty()) made.elevation_cut = &elevation_cut;
        return made;
    }
};

TEST(Cuts, AreExactAtTheirRowsAndStraightBetween) {
    Cuts cuts{
        {-90.0, 0.0, 90.0, 180.0}, {-10.0, 0.0, -12.0, -25.0}, {-90.0, 0.0, 45.0, 90.0}, {-20.0, 0.0, -6.0, -15.0}};
    const auto pattern = cuts.pattern(7.0);
    EXPECT_EQ(ask(pattern, 0.0, 0.0).maximum_dbi, 7.0);
    for (std::size_t i = 0; i < cuts.azimuth.size(); ++i)
        EXPECT_EQ(gain(pattern, cuts.azimuth[i], 0.0), 7.0 + cuts.around[i]);
    for (std::size_t i = 0; i < cuts.elevation.size(); ++i)
        EXPECT_EQ(gain(pattern, 0.0, cuts.elevation[i]), 7.0 + cuts.up[i]);
    EXPECT_EQ(gain(pattern, 45.0, 0.0), 7.0 - 6.0);
    EXPECT_EQ(gain(pattern, -45.0, 22.5), 7.0 - 5.0 - 3.0); // both cuts are added
    EXPECT_EQ(gain(pattern, 180.0, 22.5), 7.0 - 25.0 - 3.0);
    // the circle closes: from 180 (-25 dB) to -90 or 270 (-10 dB)
    EXPECT_EQ(gain(pattern, 225.0, 0.0), 7.0 - 17.5);
    EXPECT_EQ(gain(pattern, -135.0, 0.0), 7.0 - 17.5);
    EXPECT_EQ(gain(pattern, -360.0, 0.0), 7.0);
    EXPECT_EQ(gain(pattern, 360.0, 0.0), 7.0);
    EXPECT_EQ(gain(pattern, -180.0, 0.0), 7.0 - 25.0);
    EXPECT_NEAR(gain(pattern, std::nextafter(-90.0, -180.0), 0.0), gain(pattern, std::nextafter(270.0, 180.0), 0.0),
                1e-13);
}

TEST(Cuts, MayStandAloneAndHaveAFloor) {
    Cuts around{{0.0, 120.0, 240.0}, {0.0, -9.0, -9.0}, {}, {}};
    EXPECT_EQ(gain(around.pattern(3.0), 60.0, 33.0), 3.0 - 4.5);
    Cuts one{{17.0}, {-2.0}, {}, {}};
    EXPECT_EQ(gain(one.pattern(3.0), -311.0, 5.0), 1.0);
    Cuts up{{}, {}, {-90.0, 90.0}, {-100.0, 0.0}};
    EXPECT_EQ(gain(up.pattern(0.0), 200.0, 0.0), -50.0);
    EXPECT_EQ(gain(up.pattern(0.0, 30.0), 200.0, 0.0), -30.0);
    EXPECT_EQ(ask(up.pattern(2.0, 30.0), 200.0, 0.0).maximum_dbi, 2.0);
    Cuts absolute{{0.0, 180.0}, {8.5, -11.5}, {}, {}}; // in dBi as it is
    EXPECT_EQ(ask(absolute.pattern(0.0), 0.0, 0.0).maximum_dbi, 8.5);
    EXPECT_EQ(gain(absolute.pattern(0.0), 90.0, 0.0), -1.5);
}

// A dipole's own pattern, lent as a cut of one row each degree, comes back between the rows too.
TEST(Cuts, FollowAPatternThatTheySample) {
    Cuts cuts;
    for (int e = -90; e <= 90; ++e) {
        cuts.elevation.push_back(e);
        cuts.up.push_back(std::fmax(-60.0, lvb_dipole_gain_dbi(90.0 - std::abs(e)) - lvb_dbi_from_dbd(0.0)));
    }
    const auto sampled = cuts.pattern(lvb_dbi_from_dbd(0.0));
    const auto exact = pattern_of(LVB_PATTERN_HALF_WAVE_DIPOLE);
    proof::Random random(105);
    for (int i = 0; i < 1000; ++i) {
        const double elevation = random.uniform(-80.0, 80.0);
        EXPECT_NEAR(gain(sampled, random.uniform(-360.0, 360.0), elevation), gain(exact, 0.0, elevation), 0.02);
    }
}

} // namespace
