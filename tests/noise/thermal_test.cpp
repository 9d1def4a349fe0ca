// Properties of noise figure, noise temperature and thermal noise.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Noise, FigureAndTemperatureRoundTrip) {
    proof::Random random(41);
    for (int i = 0; i < 1000; ++i) {
        const double kelvin = random.log_uniform(-6, 6);
        EXPECT_NEAR(lvb_noise_temperature_k_from_noise_figure_db(lvb_noise_figure_db_from_noise_temperature_k(kelvin)) /
                        kelvin,
                    1.0, 1e-12);
    }
    EXPECT_EQ(lvb_noise_temperature_k_from_noise_figure_db(0.0), 0.0);
    EXPECT_EQ(lvb_noise_figure_db_from_noise_temperature_k(0.0), 0.0);
    EXPECT_EQ(lvb_noise_temperature_k_from_noise_figure_db(infinity), infinity);
    EXPECT_EQ(lvb_noise_figure_db_from_noise_temperature_k(infinity), infinity);
    EXPECT_NEAR(lvb_noise_figure_db_from_noise_temperature_k(290.0), 10.0 * std::log10(2.0),
                1e-13); // T0 doubles the noise
}

TEST(Noise, ThermalNoiseScalesWithBandwidthAndTemperature) {
    proof::Random random(42);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-6, 4);
        const double kelvin = random.log_uniform(-1, 5);
        const double noise = lvb_thermal_noise_dbm(mhz, kelvin);
        EXPECT_NEAR(lvb_thermal_noise_dbm(10.0 * mhz, kelvin) - noise, 10.0, 1e-12);
        EXPECT_NEAR(lvb_thermal_noise_dbm(mhz, 10.0 * kelvin) - noise, 10.0, 1e-12);
        EXPECT_NEAR(lvb_thermal_noise_dbm(kelvin, mhz), noise, 1e-12); // only the product counts
    }
    EXPECT_EQ(lvb_thermal_noise_dbm(0.0, 290.0), -infinity);
    EXPECT_EQ(lvb_thermal_noise_dbm(1.0, 0.0), -infinity);
    EXPECT_EQ(lvb_thermal_noise_dbm(1.0, infinity), infinity);
    EXPECT_TRUE(std::isnan(lvb_thermal_noise_dbm(0.0, infinity)));
    EXPECT_TRUE(std::isnan(lvb_thermal_noise_dbm(infinity, 0.0)));
}

TEST(Noise, MonotoneInEveryArgument) {
    proof::Random random(43);
    for (int i = 0; i < 500; ++i) {
        const double a = random.log_uniform(-3, 3);
        const double b = a * 1.0001;
        EXPECT_LT(lvb_noise_temperature_k_from_noise_figure_db(a / 10.0),
                  lvb_noise_temperature_k_from_noise_figure_db(b / 10.0));
        EXPECT_LT(lvb_noise_figure_db_from_noise_temperature_k(a), lvb_noise_figure_db_from_noise_temperature_k(b));
        EXPECT_LT(lvb_thermal_noise_dbm(a, 290.0), lvb_thermal_noise_dbm(b, 290.0));
        EXPECT_LT(lvb_thermal_noise_dbm(1.0, a), lvb_thermal_noise_dbm(1.0, b));
    }
}

} // namespace
