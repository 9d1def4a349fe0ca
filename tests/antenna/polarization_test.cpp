// Properties of polarization and dipole gain.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Dipole, FourConversionsShareOneFigure) {
    proof::Random random(21);
    for (int i = 0; i < 500; ++i) {
        const double x = random.uniform(-100.0, 100.0);
        EXPECT_NEAR(lvb_dbd_from_dbi(lvb_dbi_from_dbd(x)), x, 1e-13);
        EXPECT_NEAR(lvb_erp_dbm_from_eirp_dbm(lvb_eirp_dbm_from_erp_dbm(x)), x, 1e-13);
        EXPECT_EQ(lvb_eirp_dbm_from_erp_dbm(x), lvb_dbi_from_dbd(x));
        EXPECT_EQ(lvb_erp_dbm_from_eirp_dbm(x), lvb_dbd_from_dbi(x));
    }
    EXPECT_NEAR(lvb_dbi_from_dbd(0.0), 2.15, 0.001); // as regulations print it
}

TEST(Linear, QuarterTurnsAreExact) {
    for (int quarter = -40; quarter <= 40; ++quarter)
        EXPECT_EQ(lvb_linear_polarization_loss_db(90.0 * quarter), quarter % 2 ? infinity : 0.0) << quarter;
    EXPECT_EQ(lvb_linear_polarization_loss_db(90.0 * 1e10), 0.0);
    EXPECT_EQ(lvb_linear_polarization_loss_db(90.0 * (1e10 + 1.0)), infinity);
    EXPECT_NEAR(lvb_linear_polarization_loss_db(60.0), 20.0 * std::log10(2.0), 1e-13);
    EXPECT_NEAR(lvb_linear_polarization_loss_db(45.0), 10.0 * std::log10(2.0), 1e-13);
    EXPECT_FALSE(std::signbit(lvb_linear_polarization_loss_db(0.0)));
}

TEST(Linear, IsEvenPeriodicAndRisesToNinety) {
    proof::Random random(22);
    for (int i = 0; i < 1000; ++i) {
        const double t = std::floor(random.uniform(0.0, 90.0) * 1024.0) / 1024.0; // turns of it are exact
        EXPECT_EQ(lvb_linear_polarization_loss_db(-t), lvb_linear_polarization_loss_db(t));
        EXPECT_NEAR(lvb_linear_polarization_loss_db(180.0 - t), lvb_linear_polarization_loss_db(t), 1e-12);
        EXPECT_EQ(lvb_linear_polarization_loss_db(t + 360.0), lvb_linear_polarization_loss_db(t));
        EXPECT_GE(lvb_linear_polarization_loss_db(t + 1.0 / 1024.0), lvb_linear_polarization_loss_db(t));
    }
    EXPECT_LT(lvb_linear_polarization_loss_db(std::nextafter(90.0, 0.0)), infinity);
    EXPECT_LT(lvb_linear_polarization_loss_db(std::nextafter(90.0, 91.0)), infinity);
}

TEST(LinearToElliptical, CircularCostsThreeAndLinearIsLinear) {
    proof::Random random(23);
    for (int i = 0; i < 500; ++i) {
        const double t = random.uniform(-400.0, 400.0);
        EXPECT_NEAR(lvb_linear_to_elliptical_loss_db(0.0, t), 10.0 * std::log10(2.0), 1e-13);
        EXPECT_NEAR(lvb_linear_to_elliptical_loss_db(infinity, t), lvb_linear_polarization_loss_db(t), 1e-11);
    }
    EXPECT_EQ(lvb_linear_to_elliptical_loss_db(infinity, 90.0), infinity);
    EXPECT_EQ(lvb_linear_to_elliptical_loss_db(infinity, 0.0), 0.0);
}

TEST(Elliptical, HoldsTheOtherTwoAsSpecialCases) {
    proof::Random random(24);
    for (int i = 0; i < 1000; ++i) {
        const double t = random.uniform(-400.0, 400.0);
        const double ratio = random.uniform(0.0, 60.0);
        const double e = lvb_ellipticity_from_axial_ratio_db(ratio);
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(0.0, 0.0, t), lvb_linear_polarization_loss_db(t), 1e-11);
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(0.0, e, t), lvb_linear_to_elliptical_loss_db(ratio, t), 1e-11);
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(0.0, -e, t), lvb_linear_to_elliptical_loss_db(ratio, t), 1e-11);
    }
}

TEST(Elliptical, IsSymmetricAndNeverAGain) {
    proof::Random random(25);
    for (int i = 0; i < 2000; ++i) {
        const double a = random.uniform(-1.0, 1.0);
        const double b = random.uniform(-1.0, 1.0);
        const double t = random.uniform(-400.0, 400.0);
        const double loss = lvb_elliptical_polarization_loss_db(a, b, t);
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(b, a, t), loss, 1e-11);
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(-a, -b, t), loss, 1e-11);
        EXPECT_EQ(lvb_elliptical_polarization_loss_db(a, b, -t), loss);
        EXPECT_GE(loss, 0.0);
        EXPECT_GE(lvb_elliptical_polarization_loss_db(1.0, 1.0, t), 0.0);          // cos^2 + sin^2 may round to above 1
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(a, a, 0.0), 0.0, 1e-13);   // its own match
        EXPECT_NEAR(lvb_elliptical_polarization_loss_db(1.0, 1.0, t), 0.0, 1e-13); // circular to circular
        EXPECT_GT(lvb_elliptical_polarization_loss_db(a, -a, 90.0), 250.0);        // its orthogonal
        EXPECT_EQ(lvb_elliptical_polarization_loss_db(1.0, -1.0, t), infinity);
        // the formula as the header prints it
        const double fraction =
            0.5 + (4.0 * a * b + (1.0 - a * a) * (1.0 - b * b) * std::cos(2.0 * t * std::numbers::pi / 180.0)) /
                      (2.0 * (1.0 + a * a) * (1.0 + b * b));
        if (fraction > 1e-3) {
            EXPECT_NEAR(loss, -10.0 * std::log10(fraction), 1e-11);
        }
        // what one polarization loses, its orthogonal gains: the two fractions add up to one
        EXPECT_NEAR(lvb_power_ratio_from_db(-loss) +
                        lvb_power_ratio_from_db(-lvb_elliptical_polarization_loss_db(a, -b, t + 90.0)),
                    1.0, 1e-12);
    }
}

TEST(AxialRatio, RoundTripAndLimits) {
    proof::Random random(26);
    EXPECT_EQ(lvb_ellipticity_from_axial_ratio_db(0.0), 1.0);
    EXPECT_EQ(lvb_ellipticity_from_axial_ratio_db(infinity), 0.0);
    EXPECT_EQ(lvb_axial_ratio_db_from_ellipticity(0.0), infinity);
    EXPECT_EQ(lvb_axial_ratio_db_from_ellipticity(-1.0), 0.0);
    EXPECT_EQ(lvb_cross_polar_discrimination_db(0.0), infinity);
    EXPECT_EQ(lvb_cross_polar_discrimination_db(infinity), 0.0);
    for (int i = 0; i < 500; ++i) {
        const double ratio = random.uniform(0.0, 200.0);
        EXPECT_NEAR(lvb_axial_ratio_db_from_ellipticity(lvb_ellipticity_from_axial_ratio_db(ratio)), ratio, 1e-11);
        EXPECT_EQ(lvb_axial_ratio_db_from_ellipticity(-lvb_ellipticity_from_axial_ratio_db(ratio)),
                  lvb_axial_ratio_db_from_ellipticity(lvb_ellipticity_from_axial_ratio_db(ratio)));
        // the discrimination is what the two circular senses receive of the ellipse
        const double e = lvb_ellipticity_from_axial_ratio_db(ratio);
        if (ratio < 1e-3) continue;
        EXPECT_NEAR(
            lvb_cross_polar_discrimination_db(ratio),
            lvb_elliptical_polarization_loss_db(e, -1.0, 0.0) - lvb_elliptical_polarization_loss_db(e, 1.0, 0.0), 1e-9);
    }
}

} // namespace
