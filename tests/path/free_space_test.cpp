// Properties of free space: scaling, additivity, inverses, and that the five functions are one physics.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
const double twice_db = 20.0 * std::log10(2.0); // 6.0206 dB

TEST(FreeSpace, TwiceTheDistanceOrFrequencyCostsSixDecibels) {
    proof::Random random(31);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-1, 5);
        const double metres = random.log_uniform(-2, 9);
        const double loss = lvb_free_space_loss_db(mhz, metres);
        EXPECT_NEAR(lvb_free_space_loss_db(mhz, 2.0 * metres) - loss, twice_db, 1e-12);
        EXPECT_NEAR(lvb_free_space_loss_db(2.0 * mhz, metres) - loss, twice_db, 1e-12);
        EXPECT_NEAR(lvb_free_space_loss_db(mhz / 2.0, 2.0 * metres), loss, 1e-12);
        EXPECT_NEAR(lvb_free_space_loss_db(metres, mhz), loss, 1e-12); // the formula knows only the product
        EXPECT_NEAR(lvb_field_strength_dbuv_per_m(loss, 2.0 * metres),
                    lvb_field_strength_dbuv_per_m(loss, metres) - twice_db, 1e-12);
        EXPECT_NEAR(lvb_power_density_w_per_m2(30.0, 2.0 * metres) * 4.0 / lvb_power_density_w_per_m2(30.0, metres),
                    1.0, 1e-13);
        EXPECT_NEAR(lvb_far_field_distance_m(mhz, 2.0 * metres) / lvb_far_field_distance_m(mhz, metres), 4.0, 1e-13);
        EXPECT_NEAR(lvb_far_field_distance_m(2.0 * mhz, metres) / lvb_far_field_distance_m(mhz, metres), 2.0, 1e-13);
    }
}

TEST(FreeSpace, InversesGiveTheValueBack) {
    proof::Random random(32);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-1, 5);
        const double metres = random.log_uniform(-2, 9);
        const double eirp = random.uniform(-100.0, 100.0);
        EXPECT_NEAR(lvb_free_space_distance_m(mhz, lvb_free_space_loss_db(mhz, metres)) / metres, 1.0, 1e-12);
        EXPECT_NEAR(lvb_eirp_dbm_from_field_strength(lvb_field_strength_dbuv_per_m(eirp, metres), metres), eirp, 1e-12);
    }
}

TEST(FreeSpace, LossFieldAndDensityAreOnePhysics) {
    proof::Random random(33);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-1, 5);
        const double metres = random.log_uniform(-2, 6);
        const double eirp = random.uniform(-100.0, 100.0);
        const double field = lvb_field_strength_dbuv_per_m(eirp, metres);
        // received by an isotropic antenna: through the loss, and through the field
        EXPECT_NEAR(eirp - lvb_free_space_loss_db(mhz, metres), lvb_isotropic_dbm_from_dbuv_per_m(field, mhz), 3e-12);
        // E^2 / Z0 is the density
        const double volts = lvb_v_per_m_from_dbuv_per_m(field);
        EXPECT_NEAR(volts * volts / (4.0 * std::numbers::pi * 29.9792458) / lvb_power_density_w_per_m2(eirp, metres),
                    1.0, 1e-12);
    }
}

// At lambda / (4 pi) the isotropic loss is 0 dB: the definition of the loss.
TEST(FreeSpace, LosesNothingAtOneOverFourPiWavelengths) {
    for (const double mhz : {0.5, 100.0, 600.0, 5800.0})
        EXPECT_NEAR(lvb_free_space_loss_db(mhz, lvb_wavelength_m_from_mhz(mhz) / (4.0 * std::numbers::pi)), 0.0, 1e-12);
}

TEST(FreeSpace, IsMonotone) {
    proof::Random random(34);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-1, 5);
        const double near = random.log_uniform(-2, 6);
        const double far = near * (1.0 + random.log_uniform(-9, 2));
        EXPECT_LT(lvb_free_space_loss_db(mhz, near), lvb_free_space_loss_db(mhz, far));
        EXPECT_GT(lvb_power_density_w_per_m2(0.0, near), lvb_power_density_w_per_m2(0.0, far));
        EXPECT_GT(lvb_field_strength_dbuv_per_m(0.0, near), lvb_field_strength_dbuv_per_m(0.0, far));
    }
}

TEST(FreeSpace, Limits) {
    EXPECT_EQ(lvb_free_space_distance_m(600.0, infinity), infinity);
    EXPECT_EQ(lvb_free_space_distance_m(600.0, -infinity), 0.0);
    EXPECT_EQ(lvb_field_strength_dbuv_per_m(-infinity, 3.0), -infinity);
    EXPECT_EQ(lvb_power_density_w_per_m2(-infinity, 3.0), 0.0);
    EXPECT_EQ(lvb_far_field_distance_m(600.0, 0.0), 0.0);
}

} // namespace
