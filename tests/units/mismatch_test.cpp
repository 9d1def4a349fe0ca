// The four ways to state a mismatch commute: every way from one to another gives the same.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

void near_relative(double got, double want, double tolerance) {
    EXPECT_NEAR(got, want, tolerance * std::fmax(1.0, std::fabs(want)));
}

TEST(Mismatch, TheFourQuantitiesCommute) {
    proof::Random random(11);
    for (int i = 0; i < 5000; ++i) {
        const double r = random.uniform(0.001, 0.999);
        const double s = lvb_vswr_from_reflection(r);
        const double back = lvb_return_loss_db_from_reflection(r);
        const double lost = lvb_mismatch_loss_db_from_reflection(r);
        near_relative(lvb_return_loss_db_from_vswr(s), back, 1e-11);
        near_relative(lvb_mismatch_loss_db_from_vswr(s), lost, 1e-11);
        near_relative(lvb_vswr_from_return_loss_db(back), s, 1e-11);
        near_relative(lvb_vswr_from_mismatch_loss_db(lost), s, 1e-9);
        near_relative(lvb_mismatch_loss_db_from_return_loss_db(back), lost, 1e-11);
        near_relative(lvb_return_loss_db_from_mismatch_loss_db(lost), back, 1e-9);
        near_relative(lvb_reflection_from_vswr(s), r, 1e-12);
        near_relative(lvb_reflection_from_return_loss_db(back), r, 1e-12);
        near_relative(lvb_reflection_from_mismatch_loss_db(lost), r, 1e-9);
    }
}

TEST(Mismatch, PowerIsConserved) { // reflected and absorbed fractions add up to one
    proof::Random random(12);
    for (int i = 0; i < 1000; ++i) {
        const double back = random.uniform(0.01, 60.0);
        EXPECT_NEAR(lvb_power_ratio_from_db(-back) +
                        lvb_power_ratio_from_db(-lvb_mismatch_loss_db_from_return_loss_db(back)),
                    1.0, 1e-13);
    }
}

TEST(Mismatch, Limits) {
    EXPECT_EQ(lvb_reflection_from_vswr(1.0), 0.0);
    EXPECT_EQ(lvb_reflection_from_vswr(infinity), 1.0);
    EXPECT_EQ(lvb_vswr_from_reflection(0.0), 1.0);
    EXPECT_EQ(lvb_vswr_from_reflection(1.0), infinity);
    EXPECT_EQ(lvb_return_loss_db_from_reflection(0.0), infinity);
    EXPECT_EQ(lvb_return_loss_db_from_reflection(1.0), 0.0);
    EXPECT_EQ(lvb_reflection_from_return_loss_db(0.0), 1.0);
    EXPECT_EQ(lvb_reflection_from_return_loss_db(infinity), 0.0);
    EXPECT_EQ(lvb_mismatch_loss_db_from_reflection(0.0), 0.0);
    EXPECT_EQ(lvb_mismatch_loss_db_from_reflection(1.0), infinity);
    EXPECT_EQ(lvb_reflection_from_mismatch_loss_db(0.0), 0.0);
    EXPECT_EQ(lvb_reflection_from_mismatch_loss_db(infinity), 1.0);
    EXPECT_EQ(lvb_return_loss_db_from_vswr(1.0), infinity);
    EXPECT_EQ(lvb_return_loss_db_from_vswr(infinity), 0.0);
    EXPECT_EQ(lvb_vswr_from_return_loss_db(0.0), infinity);
    EXPECT_EQ(lvb_vswr_from_return_loss_db(infinity), 1.0);
    EXPECT_EQ(lvb_mismatch_loss_db_from_vswr(1.0), 0.0);
    EXPECT_EQ(lvb_mismatch_loss_db_from_vswr(infinity), infinity);
    EXPECT_EQ(lvb_vswr_from_mismatch_loss_db(0.0), 1.0);
    EXPECT_EQ(lvb_vswr_from_mismatch_loss_db(infinity), infinity);
    EXPECT_EQ(lvb_mismatch_loss_db_from_return_loss_db(0.0), infinity);
    EXPECT_EQ(lvb_mismatch_loss_db_from_return_loss_db(infinity), 0.0);
    EXPECT_EQ(lvb_return_loss_db_from_mismatch_loss_db(0.0), infinity);
    EXPECT_EQ(lvb_return_loss_db_from_mismatch_loss_db(infinity), 0.0);
}

TEST(Mismatch, ZeroLossIsNeverWrittenAsMinusZero) {
    EXPECT_FALSE(std::signbit(lvb_return_loss_db_from_reflection(1.0)));
    EXPECT_FALSE(std::signbit(lvb_mismatch_loss_db_from_reflection(0.0)));
    EXPECT_FALSE(std::signbit(lvb_mismatch_loss_db_from_return_loss_db(infinity)));
    EXPECT_FALSE(std::signbit(lvb_mismatch_loss_db_from_vswr(1.0)));
    EXPECT_FALSE(std::signbit(lvb_reflection_from_mismatch_loss_db(0.0)));
}

TEST(Mismatch, OfResistancesIsSymmetricAndKnowsItsVswr) { // s = R/R0 or R0/R
    proof::Random random(13);
    EXPECT_EQ(lvb_reflection_from_resistances(0.0, 50.0), 1.0);
    EXPECT_EQ(lvb_reflection_from_resistances(50.0, 50.0), 0.0);
    for (int i = 0; i < 1000; ++i) {
        const double a = random.log_uniform(-2, 5);
        const double b = random.log_uniform(-2, 5);
        EXPECT_EQ(lvb_reflection_from_resistances(a, b), lvb_reflection_from_resistances(b, a));
        EXPECT_NEAR(lvb_vswr_from_reflection(lvb_reflection_from_resistances(a, b)) / std::fmax(a / b, b / a), 1.0,
                    1e-8);
    }
}

TEST(Mismatch, UncertaintyIsSymmetricAndEnclosesZero) {
    proof::Random random(14);
    for (int i = 0; i < 2000; ++i) {
        const double a = i % 2 ? random.uniform(0.0, 1.0) : 1.0 - random.log_uniform(-9, -1);
        const double b = i % 3 ? random.uniform(0.0, 1.0) : 1.0 - random.log_uniform(-9, -1);
        EXPECT_NEAR(lvb_mismatch_uncertainty_high_db(a, b), lvb_mismatch_uncertainty_high_db(b, a), 1e-14);
        EXPECT_NEAR(lvb_mismatch_uncertainty_low_db(a, b), lvb_mismatch_uncertainty_low_db(b, a), 1e-12);
        EXPECT_GE(lvb_mismatch_uncertainty_high_db(a, b), 0.0);
        EXPECT_LE(lvb_mismatch_uncertainty_low_db(a, b), 0.0);
        // the low limit lies further out than the high one
        EXPECT_GE(-lvb_mismatch_uncertainty_low_db(a, b), lvb_mismatch_uncertainty_high_db(a, b));
        // a mismatch faced by its own image: the limits multiply to 1 - (a b)^2, a mismatch loss of a b
        EXPECT_NEAR(-(lvb_mismatch_uncertainty_high_db(a, b) + lvb_mismatch_uncertainty_low_db(a, b)) / 2.0,
                    lvb_mismatch_loss_db_from_reflection(a * b), 1e-12 + 1e-15 / (1.0 - a * b));
        EXPECT_EQ(lvb_mismatch_uncertainty_high_db(a, 0.0), 0.0);
        EXPECT_EQ(lvb_mismatch_uncertainty_low_db(0.0, b), 0.0);
    }
    EXPECT_EQ(lvb_mismatch_uncertainty_low_db(1.0, 1.0), -infinity);
}

} // namespace
