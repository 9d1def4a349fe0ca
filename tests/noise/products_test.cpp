// Third-order products, sensitivity, passive losses, external noise and power sums.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// ---- Counting, one by one.

struct Counts {
    double two_tone = 0.0, three_tone = 0.0;
};
Counts counted(int carriers, int middle) {
    Counts counts;
    for (int a = 1; a <= carriers; ++a)
        for (int b = 1; b <= carriers; ++b) {
            if (a != b && 2 * a - b == middle) ++counts.two_tone;
            const int c = a + b - middle;
            if (a < b && c >= 1 && c <= carriers && c != a && c != b) ++counts.three_tone;
        }
    return counts;
}

TEST(Products, AreCountedAsOneByOne) {
    for (int carriers = 1; carriers <= 200; ++carriers) {
        const int middle = (carriers + 1) / 2;
        const Counts counts = counted(carriers, middle);
        EXPECT_EQ(lvb_two_tone_product_count(carriers), counts.two_tone) << carriers;
        EXPECT_EQ(lvb_three_tone_product_count(carriers), counts.three_tone) << carriers;
        if (carriers % 2 != 0) continue;
        const Counts other = counted(carriers, middle + 1); // an even number has two in the middle
        EXPECT_EQ(other.two_tone, counts.two_tone) << carriers;
        EXPECT_EQ(other.three_tone, counts.three_tone) << carriers;
    }
}

TEST(Products, ThreeTonesNearThreeEighthsOfTheSquare) {
    EXPECT_NEAR(lvb_three_tone_product_count(1e6) / 1e12, 3.0 / 8.0, 1e-5);
    EXPECT_EQ(lvb_three_tone_product_count(7.9), lvb_three_tone_product_count(7.0)); // a fraction is dropped
    EXPECT_EQ(lvb_two_tone_product_count(7.9), lvb_two_tone_product_count(7.0));
}

// Independent of every formula: three cosines through y = x + c x^3, and the amplitudes at the products' frequencies by
// correlation over one period.
TEST(Products, OfThreeTonesLieSixDecibelsAboveThoseOfTwo) {
    constexpr int samples = 4096;
    const double pi = std::acos(-1.0);
    double two = 0.0, three = 0.0;
    for (int i = 0; i < samples; ++i) {
        const double t = 2.0 * pi * i / samples;
        const double x = std::cos(100 * t) + std::cos(107 * t) + std::cos(118 * t);
        const double y = x * x * x;
        two += y * std::cos((2 * 100 - 107) * t);
        three += y * std::cos((100 + 107 - 118) * t);
    }
    const double apart = 20.0 * std::log10(three / two);
    const double of_three = lvb_middle_channel_products_dbm(-10.0, 20.0, 3.0); // a single three-tone product
    EXPECT_EQ(lvb_three_tone_product_count(3.0), 1.0);
    EXPECT_EQ(lvb_two_tone_product_count(3.0), 0.0);
    EXPECT_NEAR(of_three - lvb_third_order_product_dbm(-10.0, 20.0), apart, 1e-9);
}

TEST(Products, SumIsThePowerOfAllOfThem) {
    proof::Random random(71);
    for (int carriers = 1; carriers < 60; ++carriers) {
        const double level = random.uniform(-80.0, 10.0), intercept = random.uniform(-20.0, 50.0);
        const long double each = std::pow(
            10.0L, (3.0L * static_cast<long double>(level) - 2.0L * static_cast<long double>(intercept)) / 10.0L);
        const Counts counts = counted(carriers, (carriers + 1) / 2);
        const long double power = each * static_cast<long double>(counts.two_tone + 4.0 * counts.three_tone);
        const double sum = lvb_middle_channel_products_dbm(level, intercept, carriers);
        if (power == 0.0L) EXPECT_EQ(sum, -infinity);
        else EXPECT_NEAR(sum, static_cast<double>(10.0L * std::log10(power)), 1e-11) << carriers;
    }
}

TEST(Intercept, IsWhereCarriersAndProductsMeet) {
    proof::Random random(72);
    for (int i = 0; i < 500; ++i) {
        const double level = random.uniform(-100.0, 30.0), intercept = random.uniform(-30.0, 60.0);
        const double product = lvb_third_order_product_dbm(level, intercept);
        EXPECT_NEAR(lvb_third_order_intercept_dbm(level, product), intercept, 1e-12);
        EXPECT_NEAR(lvb_third_order_product_dbm(level + 1.0, intercept) - product, 3.0, 1e-12); // 3 dB for 1
        EXPECT_NEAR(lvb_third_order_product_dbm(intercept, intercept), intercept, 1e-13);
        // with both carriers at the top of the range their products are as high as the noise
        const double noise = random.uniform(-130.0, -60.0);
        const double range = lvb_spurious_free_range_db(intercept, noise);
        EXPECT_NEAR(lvb_third_order_product_dbm(noise + range, intercept), noise, 1e-12);
    }
}

TEST(Sensitivity, IsNoiseFigureAndNeedAboveTheFloor) {
    proof::Random random(73);
    for (int i = 0; i < 500; ++i) {
        const double mhz = random.log_uniform(-4, 2), figure = random.uniform(0.0, 30.0),
                     needed = random.uniform(-10.0, 40.0);
        EXPECT_NEAR(lvb_sensitivity_dbm(mhz, figure, needed), lvb_thermal_noise_dbm(mhz, 290.0) + figure + needed,
                    1e-12);
        // the same through the temperature: k (290 + Te) B
        const double te = lvb_noise_temperature_k_from_noise_figure_db(figure);
        EXPECT_NEAR(lvb_sensitivity_dbm(mhz, figure, 0.0), lvb_thermal_noise_dbm(mhz, 290.0 + te), 1e-11);
    }
}

TEST(PassiveLoss, HasItsLossAsFigureAt290K) {
    proof::Random random(74);
    for (int i = 0; i < 500; ++i) {
        const double loss = random.uniform(0.0, 60.0), kelvin = random.uniform(1.0, 400.0);
        EXPECT_NEAR(lvb_passive_noise_figure_db(loss, 290.0), loss, 1e-12);
        EXPECT_LT(lvb_passive_noise_figure_db(loss, kelvin), lvb_passive_noise_figure_db(loss, kelvin * 1.01));
        EXPECT_LE(lvb_passive_noise_figure_db(loss, kelvin), lvb_passive_noise_figure_db(loss + 0.1, kelvin));
        // two losses in a row are one of their sum, by Friis's formula in temperatures
        const double other = random.uniform(0.0, 30.0);
        const double t1 = lvb_noise_temperature_k_from_noise_figure_db(lvb_passive_noise_figure_db(loss, kelvin));
        const double t2 = lvb_noise_temperature_k_from_noise_figure_db(lvb_passive_noise_figure_db(other, kelvin));
        EXPECT_NEAR(lvb_noise_figure_db_from_noise_temperature_k(t1 + t2 * lvb_power_ratio_from_db(loss)),
                    lvb_passive_noise_figure_db(loss + other, kelvin), 1e-10);
    }
    EXPECT_EQ(lvb_passive_noise_figure_db(0.0, 300.0), 0.0);
    EXPECT_EQ(lvb_passive_noise_figure_db(infinity, 300.0), infinity);
    EXPECT_TRUE(std::isnan(lvb_passive_noise_figure_db(3.0, 0.0)));
}

TEST(Combiner, DividesPowerEqually) {
    EXPECT_EQ(lvb_combiner_loss_db(1.0, 0.0), 0.0);
    for (int ways = 1; ways < 40; ++ways) {
        EXPECT_NEAR(ways * std::pow(10.0, -lvb_combiner_loss_db(ways, 0.0) / 10.0), 1.0, 1e-12); // all ways together
        EXPECT_NEAR(lvb_combiner_loss_db(ways, 0.7) - lvb_combiner_loss_db(ways, 0.0), 0.7, 1e-12);
        EXPECT_NEAR(lvb_combiner_loss_db(2.0 * ways, 0.3),
                    lvb_combiner_loss_db(2.0, 0.1) + lvb_combiner_loss_db(ways, 0.2),
                    1e-12); // in two stages
    }
}

TEST(PowerSum, IsThatOfTheMilliwatts) {
    proof::Random random(75);
    for (int i = 0; i < 1000; ++i) {
        const double a = random.uniform(-150.0, 60.0), b = a + random.uniform(-40.0, 40.0);
        EXPECT_NEAR(lvb_power_sum_dbm(a, b), lvb_dbm_from_mw(lvb_mw_from_dbm(a) + lvb_mw_from_dbm(b)), 1e-12);
        EXPECT_EQ(lvb_power_sum_dbm(a, b), lvb_power_sum_dbm(b, a));
        EXPECT_NEAR(lvb_power_sum_dbm(a, a) - a, 10.0 * std::log10(2.0), 1e-13);
        EXPECT_EQ(lvb_power_sum_dbm(a, -infinity), a);
    }
    EXPECT_EQ(lvb_power_sum_dbm(-infinity, -infinity), -infinity);
    EXPECT_EQ(lvb_power_sum_dbm(infinity, infinity), infinity);
    EXPECT_EQ(lvb_power_sum_dbm(-infinity, infinity), infinity);
}

TEST(ExternalNoise, FallsWithFrequencyAndRisesWithPeople) {
    proof::Random random(76);
    for (int i = 0; i < 500; ++i) {
        const double mhz = random.log_uniform(std::log10(0.3), std::log10(29.0));
        EXPECT_GT(lvb_city_noise_figure_db(mhz), lvb_residential_noise_figure_db(mhz));
        EXPECT_GT(lvb_residential_noise_figure_db(mhz), lvb_rural_noise_figure_db(mhz));
        EXPECT_GT(lvb_rural_noise_figure_db(mhz), lvb_quiet_rural_noise_figure_db(mhz));
        EXPECT_GT(lvb_city_noise_figure_db(mhz), lvb_city_noise_figure_db(mhz * 1.01));
        // a decade costs the slope
        EXPECT_NEAR(lvb_city_noise_figure_db(mhz) - lvb_city_noise_figure_db(mhz / 10.0 < 0.3 ? mhz * 8.0 : mhz / 10.0),
                    mhz / 10.0 < 0.3 ? 27.7 * std::log10(8.0) : -27.7, 1e-12);
    }
    EXPECT_GT(lvb_galactic_noise_figure_db(20.0), lvb_quiet_rural_noise_figure_db(20.0)); // as its comment says
    for (const auto function : {lvb_city_noise_figure_db, lvb_residential_noise_figure_db, lvb_rural_noise_figure_db}) {
        EXPECT_FALSE(std::isnan(function(250.0)));
        EXPECT_TRUE(std::isnan(function(250.1)));
        EXPECT_TRUE(std::isnan(function(0.29)));
    }
    EXPECT_TRUE(std::isnan(lvb_quiet_rural_noise_figure_db(30.1)));
    EXPECT_TRUE(std::isnan(lvb_business_noise_figure_db(199.0)));
    EXPECT_TRUE(std::isnan(lvb_business_noise_figure_db(901.0)));
    EXPECT_TRUE(std::isnan(lvb_galactic_noise_figure_db(9.9)));
    EXPECT_TRUE(std::isnan(lvb_galactic_noise_figure_db(100.1)));
}

} // namespace
