// Exposure limits against the printed formulas in 192 bits, in milliwatts per square centimetre as 47 CFR 1.1310 prints
// them.
#include "accuracy/real.hpp"
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>

namespace {

using accuracy::Real;

constexpr double allowed_ulp = 0.5; // the header's: rounded once

// 47 CFR 1.1310, table 1: 1.0, f/300, 5 at work; 0.2, f/1500, 1.0 otherwise. 1 mW/cm2 is 10 W/m2.
Real cfr(bool at_work, double mhz) {
    if (mhz <= 300.0) return 10.0 * Real::decimal(at_work ? "1.0" : "0.2");
    if (mhz <= 1500.0) return 10.0 * Real(mhz) / (at_work ? 300.0 : 1500.0);
    return 10.0 * Real(at_work ? 5.0 : 1.0);
}

// ICNIRP 2020, table 5 (from memory: that the library computes what it states, not that the guideline says it).
Real icnirp(bool at_work, double mhz) {
    if (mhz <= 400.0) return at_work ? 10.0 : 2.0;
    if (mhz <= 2000.0) return Real(mhz) / (at_work ? 40.0 : 200.0);
    return at_work ? 50.0 : 10.0;
}

TEST(ExposureLimits, AreRoundedOnce) {
    proof::Random random(95);
    double worst = 0.0;
    for (int i = 0; i < 20000; ++i)
        for (const std::int32_t rule : {LVB_EXPOSURE_47_CFR_1_1310, LVB_EXPOSURE_ICNIRP_2020})
            for (const std::int32_t audience : {LVB_AUDIENCE_GENERAL, LVB_AUDIENCE_OCCUPATIONAL}) {
                const bool at_work = audience == LVB_AUDIENCE_OCCUPATIONAL;
                const double corners[] = {30.0, 300.0, 400.0, 1500.0, 2000.0, 100000.0};
                const double mhz = i < 6 ? corners[i] : random.uniform(30.0, i % 2 != 0 ? 2500.0 : 100000.0);
                const double got = lvb_exposure_limit_w_per_m2(rule, audience, mhz);
                const Real exact = rule == LVB_EXPOSURE_ICNIRP_2020 ? icnirp(at_work, mhz) : cfr(at_work, mhz);
                const double ulp = std::nextafter(got, HUGE_VAL) - got;
                worst = std::fmax(worst, abs(Real(got) - exact).rounded() / ulp);
                ASSERT_LE(worst, allowed_ulp) << rule << ' ' << audience << ' ' << mhz;
            }
    EXPECT_GT(worst, 0.4); // the exact limits are no binary numbers
}

} // namespace
