// Properties of the plain functions of antennas, and their patterns integrated over the sphere.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double degree = std::numbers::pi / 180.0;

/// Mean over the sphere of a gain that depends on the angle from an axis: 1 for every antenna without losses. Simpson's
/// rule, 20000 steps.
double mean_over_sphere(const std::function<double(double angle_deg)> &gain_dbi) {
    const int steps = 20000;
    double sum = 0.0;
    for (int i = 0; i <= steps; ++i) {
        const double angle = 180.0 * i / steps;
        const double weight = i == 0 || i == steps ? 1.0 : i % 2 ? 4.0 : 2.0;
        const double gain = gain_dbi(angle);
        if (gain > -infinity) sum += weight * std::pow(10.0, gain / 10.0) * std::sin(angle * degree);
    }
    return 0.5 * sum * (180.0 / steps) * degree / 3.0;
}

TEST(DipoleGain, IsLosslessOverTheSphere) { EXPECT_NEAR(mean_over_sphere(lvb_dipole_gain_dbi), 1.0, 1e-12); }

TEST(DipoleGain, AgreesWithItsFormulaAndItsNulls) {
    proof::Random random(91);
    for (int i = 0; i < 2000; ++i) {
        const double t = random.uniform(0.5, 179.5);
        const double ratio = std::cos(90.0 * degree * std::cos(t * degree)) / std::sin(t * degree);
        EXPECT_NEAR(lvb_dipole_gain_dbi(t), 2.1508803745 + 20.0 * std::log10(std::fabs(ratio)), 1e-9);
        EXPECT_EQ(lvb_dipole_gain_dbi(-t), lvb_dipole_gain_dbi(t));
        const double dyadic = std::floor(t * 1024.0) / 1024.0; // turns of it are exact
        EXPECT_NEAR(lvb_dipole_gain_dbi(180.0 - dyadic), lvb_dipole_gain_dbi(dyadic), 1e-12);
        EXPECT_EQ(lvb_dipole_gain_dbi(dyadic + 360.0), lvb_dipole_gain_dbi(dyadic));
        EXPECT_LE(lvb_dipole_gain_dbi(t), lvb_dipole_gain_dbi(90.0));
    }
    for (int half_turns = -4; half_turns <= 4; ++half_turns)
        EXPECT_EQ(lvb_dipole_gain_dbi(180.0 * half_turns), -infinity);
    EXPECT_EQ(lvb_dipole_gain_dbi(90.0), lvb_dbi_from_dbd(0.0));
    // near the axis a dipole of any length is a short one: pi / 4 sin t, falling 20 dB in a decade
    for (double t = 1e-2; t > 1e-60; t /= 10.0)
        EXPECT_NEAR(lvb_dipole_gain_dbi(t), 2.1508803745 + 20.0 * std::log10(std::numbers::pi / 4.0 * t * degree),
                    1e-6);
}

TEST(CosineGain, IsLosslessOverTheHalfSpace) {
    for (const double n : {0.0, 0.5, 1.0, 2.0, 4.0, 10.0, 50.0})
        EXPECT_NEAR(mean_over_sphere([n](double t) {
                        if (t > 90.0 || (t == 90.0 && n > 0.0)) return -infinity;
                        // at the edge of an even half space Simpson's rule counts half
                        const double edge = t == 90.0 ? 10.0 * std::log10(0.5) : 0.0;
                        return lvb_gain_dbi_from_cosine_exponent(n) + edge +
                               (n == 0.0 ? 0.0 : 10.0 * n * std::log10(std::cos(t * degree)));
                    }),
                    1.0, n < 1.0 ? 1e-4 : 1e-6)
            << n;
}

TEST(CosineGain, RoundTrips) {
    proof::Random random(92);
    for (int i = 0; i < 2000; ++i) {
        const double n = random.log_uniform(-1.0, 5.0); // below, the width is 180 less than a double tells
        EXPECT_NEAR(lvb_cosine_exponent_from_gain_dbi(lvb_gain_dbi_from_cosine_exponent(n)) / n, 1.0,
                    1e-12 / n + 1e-13);
        const double width = lvb_beam_width_deg_from_cosine_exponent(n);
        EXPECT_NEAR(lvb_cosine_exponent_from_beam_width_deg(width) / n, 1.0, 1e-9);
        // half the power at half the width
        EXPECT_NEAR(n * std::log2(std::cos(0.5 * width * degree)), -1.0, 1e-9);
        EXPECT_LT(lvb_beam_width_deg_from_cosine_exponent(n * 1.1), width);
    }
    EXPECT_EQ(lvb_beam_width_deg_from_cosine_exponent(0.0), 180.0);
    EXPECT_EQ(lvb_beam_width_deg_from_cosine_exponent(infinity), 0.0);
    EXPECT_EQ(lvb_cosine_exponent_from_beam_width_deg(180.0), 0.0);
    EXPECT_EQ(lvb_cosine_exponent_from_beam_width_deg(0.0), infinity);
    EXPECT_NEAR(lvb_cosine_exponent_from_beam_width_deg(90.0), 2.0, 1e-14);
    EXPECT_NEAR(lvb_cosine_exponent_from_beam_width_deg(120.0), 1.0, 1e-14);
    EXPECT_NEAR(lvb_cosine_exponent_from_gain_dbi(10.0 * std::log10(2.0)), 0.0, 1e-15);
    EXPECT_GE(lvb_cosine_exponent_from_gain_dbi(3.010299956639812), 0.0);
    EXPECT_EQ(lvb_gain_dbi_from_cosine_exponent(infinity), infinity);
}

// Of a narrow cosine beam the estimate from its widths is pi / (4 ln 2) times its gain, 0.54 dB too much.
TEST(BeamWidths, EstimateTheGainOfANarrowBeamFromAbove) {
    for (const double n : {100.0, 1000.0, 1e6}) {
        const double width = lvb_beam_width_deg_from_cosine_exponent(n);
        const double over = lvb_gain_dbi_from_beam_widths(width, width) - lvb_gain_dbi_from_cosine_exponent(n);
        EXPECT_NEAR(over, 10.0 * std::log10(std::numbers::pi / (4.0 * std::numbers::ln2)), 5.0 / n + 1e-5) << n;
    }
    EXPECT_EQ(lvb_gain_dbi_from_beam_widths(20.0, 70.0), lvb_gain_dbi_from_beam_widths(70.0, 20.0));
}

TEST(Helix, GrowsWithItsLengthAndNarrows) {
    proof::Random random(93);
    for (int i = 0; i < 1000; ++i) {
        const double n = random.uniform(3.0, 50.0), s = random.uniform(0.1, 0.5), c = random.uniform(0.75, 1.33);
        EXPECT_NEAR(lvb_helix_gain_dbi(2.0 * n, s, c) - lvb_helix_gain_dbi(n, s, c), 10.0 * std::log10(2.0), 1e-12);
        EXPECT_NEAR(lvb_helix_beam_width_deg(2.0 * n, s, c) * std::sqrt(2.0), lvb_helix_beam_width_deg(n, s, c), 1e-10);
        EXPECT_LT(lvb_helix_axial_ratio_db(2.0 * n), lvb_helix_axial_ratio_db(n));
        // gain times the square of the beam width is the same for every helix: 12 times 52^2
        const double area =
            std::pow(10.0, lvb_helix_gain_dbi(n, s, c) / 10.0) * std::pow(lvb_helix_beam_width_deg(n, s, c), 2);
        EXPECT_NEAR(area, 12.0 * 52.0 * 52.0, 1e-7);
    }
}

} // namespace
