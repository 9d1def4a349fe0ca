// Properties of exposure: density and distance are inverse, limits are continuous, cautions are whole sentences.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <limits>
#include <set>
#include <string>

namespace {

using proof::Random;

TEST(Exposure, DensityAndDistanceAreInverse) {
    Random random(701);
    for (int i = 0; i < 1000; ++i) {
        const double eirp = random.uniform(-30.0, 60.0), limit = random.log_uniform(-2, 3);
        const double factor = random.uniform(1.0, 4.0);
        const double distance = lvb_exposure_distance_m(eirp, limit, factor);
        EXPECT_NEAR(lvb_exposure_power_density_w_per_m2(eirp, distance, factor) / limit, 1.0, 1e-14);
        EXPECT_NEAR(lvb_exposure_distance_m(eirp + 20.0, limit, factor) / distance, 10.0, 1e-13);
        EXPECT_NEAR(lvb_exposure_distance_m(eirp, limit / 4.0, factor) / distance, 2.0, 1e-14);
    }
}

TEST(Exposure, ReflectionMultipliesThePower) {
    Random random(702);
    for (int i = 0; i < 500; ++i) {
        const double eirp = random.uniform(-30.0, 60.0), distance = random.log_uniform(-1, 2);
        const double free_space = lvb_power_density_w_per_m2(eirp, distance);
        EXPECT_EQ(lvb_exposure_power_density_w_per_m2(eirp, distance, 1.0), free_space);
        EXPECT_EQ(lvb_exposure_power_density_w_per_m2(eirp, distance, 4.0), 4.0 * free_space); // twice the field
        EXPECT_NEAR(lvb_exposure_distance_m(eirp, 2.0, 4.0) / lvb_exposure_distance_m(eirp, 2.0, 1.0), 2.0, 1e-14);
        EXPECT_NEAR(lvb_exposure_distance_m(eirp, 2.0, 2.56) / lvb_exposure_distance_m(eirp, 2.0, 1.0), 1.6, 1e-14);
    }
}

TEST(Exposure, LimitsAreContinuousAndNeverFall) {
    for (const std::int32_t rule : {LVB_EXPOSURE_47_CFR_1_1310, LVB_EXPOSURE_ICNIRP_2020}) {
        double before = 0.0;
        for (double mhz = 30.0; mhz <= 100000.0; mhz *= 1.001) {
            const double limit = lvb_exposure_limit_w_per_m2(rule, LVB_AUDIENCE_GENERAL, mhz);
            EXPECT_NEAR(lvb_exposure_limit_w_per_m2(rule, LVB_AUDIENCE_OCCUPATIONAL, mhz) / limit, 5.0, 1e-14);
            if (before != 0.0) {
                EXPECT_GE(limit, before);
                EXPECT_LE(limit, before * 1.0010001);
            }
            before = limit;
        }
        EXPECT_EQ(before, 10.0);
    }
    // between 400 and 1500 MHz the American limit is the higher one, by a third
    for (const double mhz : {400.0, 600.0, 900.0, 1500.0})
        EXPECT_NEAR(lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_47_CFR_1_1310, LVB_AUDIENCE_GENERAL, mhz) /
                        lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_ICNIRP_2020, LVB_AUDIENCE_GENERAL, mhz),
                    4.0 / 3.0, 1e-14);
}

TEST(Exposure, RefusesOtherFrequenciesRulesAndAudiences) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double mhz : {nan, -1.0, 0.0, std::nextafter(30.0, 0.0), std::nextafter(300000.0, HUGE_VAL), HUGE_VAL})
        for (const std::int32_t rule : {LVB_EXPOSURE_47_CFR_1_1310, LVB_EXPOSURE_ICNIRP_2020})
            EXPECT_TRUE(std::isnan(lvb_exposure_limit_w_per_m2(rule, LVB_AUDIENCE_GENERAL, mhz))) << mhz;
    EXPECT_TRUE(std::isnan(lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_47_CFR_1_1310, LVB_AUDIENCE_GENERAL,
                                                       std::nextafter(100000.0, HUGE_VAL))));
    EXPECT_EQ(lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_ICNIRP_2020, LVB_AUDIENCE_GENERAL, 300000.0), 10.0);
    EXPECT_EQ(lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_47_CFR_1_1310, LVB_AUDIENCE_GENERAL, 30.0), 2.0);
    for (const std::int32_t bad : {-1, 0, 3}) {
        EXPECT_TRUE(std::isnan(lvb_exposure_limit_w_per_m2(bad, LVB_AUDIENCE_GENERAL, 600.0)));
        EXPECT_TRUE(std::isnan(lvb_exposure_limit_w_per_m2(LVB_EXPOSURE_47_CFR_1_1310, bad, 600.0)));
    }
}

TEST(Cautions, AreWholeSentencesOnTheThreeSubjects) {
    ASSERT_GE(lvb_caution_count(), 4u);
    std::set<std::string> texts;
    std::string all;
    for (std::uint32_t i = 0; i < lvb_caution_count(); ++i) {
        const std::string text = lvb_caution_text(i);
        EXPECT_TRUE(texts.insert(text).second);
        EXPECT_EQ(text.back(), '.');
        all += text;
    }
    for (const char *subject : {"walk test", "licence", "regulator", "exposure", "rules win"})
        EXPECT_NE(all.find(subject), std::string::npos) << subject;
    EXPECT_STREQ(lvb_caution_text(lvb_caution_count()), "");
    EXPECT_STREQ(lvb_caution_text(0xFFFFFFFFu), "");
}

} // namespace
