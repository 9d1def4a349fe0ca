// Properties of fading and diversity: limits in which one model becomes another, round trips, order.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <vector>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

void expect_near_relative(double value, double expected, double tolerance) {
    EXPECT_NEAR(value, expected, tolerance * std::fabs(expected));
}

/// Outages of every size, and their complements.
double an_outage(proof::Random &random) {
    switch (random.below(3)) {
    case 0:
        return random.log_uniform(-300.0, 0.0);
    case 1:
        return 1.0 - random.log_uniform(-15.0, 0.0);
    default:
        return random.uniform(0.0, 1.0);
    }
}

struct Pair {
    const char *name;
    double (*outage)(double margin_db, double parameter);
    double (*margin_db)(double outage, double parameter);
    double low, high; // of the parameter
    double steepest;  // change of ln(outage) per dB, over that of Rayleigh fading, at most; for the tolerance
};

const Pair pairs[] = {
    {"rayleigh below mean", [](double m, double) { return lvb_rayleigh_outage_below_mean(m); },
     [](double p, double) { return lvb_rayleigh_margin_below_mean_db(p); }, 0.0, 1.0, 1.0},
    {"rayleigh below median", [](double m, double) { return lvb_rayleigh_outage_below_median(m); },
     [](double p, double) { return lvb_rayleigh_margin_below_median_db(p); }, 0.0, 1.0, 1.0},
    {"rice", lvb_rice_outage_below_mean, lvb_rice_margin_below_mean_db, -40.0, 25.0, 100.0},
    {"nakagami", lvb_nakagami_outage_below_mean, lvb_nakagami_margin_below_mean_db, 0.5, 100.0, 100.0},
    {"lognormal", lvb_lognormal_outage_below_median, lvb_lognormal_margin_below_median_db, 0.5, 20.0, 200.0},
    {"suzuki", lvb_suzuki_outage_below_median_of_means, lvb_suzuki_margin_below_median_of_means_db, 0.0, 30.0, 1.0},
};

void PrintTo(const Pair &pair, std::ostream *stream) { *stream << pair.name; }

class Model : public testing::TestWithParam<Pair> {};

TEST_P(Model, MarginAndOutageAreInverses) {
    const Pair &pair = GetParam();
    proof::Random random(71);
    for (int i = 0; i < 60; ++i) {
        const double parameter = random.uniform(pair.low, pair.high);
        const double outage = an_outage(random);
        const double margin = pair.margin_db(outage, parameter);
        // A margin is rounded to half a unit in its last place, which its slope multiplies.
        const double rounding = std::fabs(margin) * 1.2e-16 * pair.steepest + 1e-13;
        if (outage < 0.5) expect_near_relative(pair.outage(margin, parameter), outage, rounding);
        else EXPECT_NEAR(pair.outage(margin, parameter), outage, 3e-15);
    }
}

TEST_P(Model, OutageFallsWithTheMarginFromOneToZero) {
    const Pair &pair = GetParam();
    proof::Random random(72);
    for (int i = 0; i < 12; ++i) {
        const double parameter = random.uniform(pair.low, pair.high);
        double before = 1.0;
        for (double margin = -60.0; margin <= 60.0; margin += 0.37) {
            const double outage = pair.outage(margin, parameter);
            EXPECT_LE(outage, before + 3e-16) << margin << ' ' << parameter;
            EXPECT_GE(outage, 0.0);
            before = outage;
        }
        EXPECT_EQ(pair.outage(-infinity, parameter), 1.0);
        EXPECT_EQ(pair.outage(infinity, parameter), 0.0);
        EXPECT_EQ(pair.margin_db(1.0, parameter), -infinity);
    }
}

TEST_P(Model, MarginFallsWithTheOutage) {
    const Pair &pair = GetParam();
    const double parameter = 0.5 * (pair.low + pair.high);
    double before = infinity;
    for (double exponent = -300.0; exponent < -0.01; exponent += 1.7) {
        const double margin = pair.margin_db(std::pow(10.0, exponent), parameter);
        EXPECT_LT(margin, before) << exponent;
        before = margin;
    }
}

INSTANTIATE_TEST_SUITE_P(Fading, Model, testing::ValuesIn(pairs), [](const auto &pair) {
    std::string name = pair.param.name;
    for (char &c : name)
        if (c == ' ') c = '_';
    return name;
});

TEST(Limits, NoMarginExcludesEveryOutage) {
    EXPECT_EQ(lvb_rayleigh_margin_below_mean_db(0.0), infinity);
    EXPECT_EQ(lvb_rayleigh_margin_below_median_db(0.0), infinity);
    EXPECT_EQ(lvb_lognormal_margin_below_median_db(0.0, 8.0), infinity);
    EXPECT_TRUE(std::isnan(lvb_rice_margin_below_mean_db(0.0, 6.0))); // searched only down to 1e-300
}

/// All of them become Rayleigh fading; the bar is 1e-12.
TEST(Limits, ManyModelsHoldRayleighFading) {
    for (double margin = -15.0; margin <= 300.0; margin += 3.1) {
        const double rayleigh = lvb_rayleigh_outage_below_mean(margin);
        expect_near_relative(lvb_rice_outage_below_mean(margin, -infinity), rayleigh, 1e-12);
        expect_near_relative(lvb_nakagami_outage_below_mean(margin, 1.0), rayleigh, 1e-12);
        expect_near_relative(lvb_maximal_ratio_outage_below_mean(margin, 1.0), rayleigh, 1e-12);
        expect_near_relative(lvb_suzuki_outage_below_median_of_means(margin, 0.0), rayleigh, 1e-12);
    }
    for (const double outage : {1e-200, 1e-9, 0.01, 0.3, 0.9, 0.999999}) {
        const double rayleigh = lvb_rayleigh_margin_below_mean_db(outage);
        EXPECT_NEAR(lvb_rice_margin_below_mean_db(outage, -infinity), rayleigh, 1e-12);
        EXPECT_NEAR(lvb_nakagami_margin_below_mean_db(outage, 1.0), rayleigh, 1e-12);
        EXPECT_NEAR(lvb_suzuki_margin_below_median_of_means_db(outage, 0.0), rayleigh, 1e-12);
    }
}

TEST(Limits, TheMedianOfRayleighFadingLiesBelowItsMean) {
    EXPECT_NEAR(lvb_rayleigh_outage_below_median(0.0), 0.5, 1e-16);
    const double between = lvb_rayleigh_margin_below_mean_db(0.5);
    EXPECT_NEAR(between, -10.0 * std::log10(std::log(2.0)), 1e-14);
    for (double margin = -20.0; margin < 40.0; margin += 0.7)
        expect_near_relative(lvb_rayleigh_outage_below_median(margin), lvb_rayleigh_outage_below_mean(margin + between),
                             1e-13);
}

TEST(Limits, AStrongDirectPathDoesNotFade) {
    EXPECT_LT(lvb_rice_outage_below_mean(1.0, 40.0), 1e-50);
    EXPECT_EQ(lvb_rice_outage_below_mean(-1.0, 40.0), 1.0);
    EXPECT_LT(lvb_rice_margin_below_mean_db(1e-9, 40.0), 0.5);
    EXPECT_LT(lvb_nakagami_outage_below_mean(3.0, 100.0), 1e-9);
    double before = infinity;
    for (double k_db = -20.0; k_db <= 40.0; k_db += 2.5) { // the stronger, the milder
        const double margin = lvb_rice_margin_below_mean_db(0.001, k_db);
        EXPECT_LT(margin, before) << k_db;
        before = margin;
    }
}

TEST(Limits, WithoutDeviationNothingIsShadowed) {
    EXPECT_EQ(lvb_lognormal_outage_below_median(1e-9, 0.0), 0.0);
    EXPECT_EQ(lvb_lognormal_outage_below_median(-1e-9, 0.0), 1.0);
    EXPECT_EQ(lvb_lognormal_outage_below_median(0.0, 0.0), 0.5);
    EXPECT_EQ(lvb_lognormal_margin_below_median_db(0.01, 0.0), 0.0);
    EXPECT_EQ(lvb_area_coverage(0.2, 0.0, 3.0), 1.0); // the edge is where levels meet the need
}

/// The mean over both kinds of fading is no better than the milder of the two alone.
TEST(Limits, SuzukiFadingIsWorseThanEitherPart) {
    for (const double deviation : {3.0, 8.0, 14.0})
        for (const double margin : {15.0, 25.0, 40.0}) {
            const double both = lvb_suzuki_outage_below_median_of_means(margin, deviation);
            EXPECT_GT(both, lvb_rayleigh_outage_below_mean(margin));
            EXPECT_GT(both, lvb_lognormal_outage_below_median(margin, deviation));
        }
}

/// The outage of large margins is the threshold itself, whose log-normal mean is exp(s^2 / 2), s in nepers.
TEST(Limits, SuzukiFadingFarDownIsTheMeanOfItsThreshold) {
    for (const double deviation : {0.5, 4.0, 8.0, 12.0}) {
        const double s = deviation * std::log(10.0) / 10.0, margin = 160.0;
        const double outage = std::pow(10.0, -margin / 10.0) * std::exp(0.5 * s * s);
        expect_near_relative(lvb_suzuki_outage_below_median_of_means(margin, deviation), outage, 1e-8);
        EXPECT_NEAR(lvb_suzuki_margin_below_median_of_means_db(outage, deviation), margin, 1e-7);
    }
}

TEST(LogNormal, IsSymmetrical) {
    proof::Random random(73);
    for (int i = 0; i < 300; ++i) {
        const double margin = random.uniform(0.0, 30.0), deviation = random.uniform(2.0, 12.0);
        EXPECT_NEAR(lvb_lognormal_outage_below_median(margin, deviation) +
                        lvb_lognormal_outage_below_median(-margin, deviation),
                    1.0, 3e-16);
        expect_near_relative(lvb_lognormal_outage_below_median(margin, deviation),
                             0.5 * std::erfc(margin / deviation * std::sqrt(0.5)), 1e-13);
    }
}

TEST(Selection, OfOneBranchIsNoDiversityExactly) {
    proof::Random random(74);
    for (int i = 0; i < 300; ++i) {
        const double outage = an_outage(random);
        EXPECT_EQ(lvb_selection_outage(outage, 1.0), outage);
        expect_near_relative(lvb_selection_outage(outage, 3.0), outage * outage * outage, 4e-16);
    }
    EXPECT_EQ(lvb_selection_outage(0.0, 4.0), 0.0);
    EXPECT_EQ(lvb_selection_outage(1.0, 4.0), 1.0);
}

/// Nakagami fading is the sum of as many Rayleigh branches as its shape tells, against the mean of the sum.
TEST(MaximalRatio, IsNakagamiFadingOfTheSum) {
    for (const double branches : {1.0, 2.0, 3.5, 8.0})
        for (const double outage : {1e-200, 1e-6, 0.01, 0.5, 0.9}) {
            const double margin =
                lvb_nakagami_margin_below_mean_db(outage, branches) - lvb_db_from_power_ratio(branches);
            expect_near_relative(lvb_maximal_ratio_outage_below_mean(margin, branches), outage, 1e-12);
        }
}

TEST(MaximalRatio, IsBetterThanSelectionAndByTheKnownFactorInTheTail) {
    for (int branches = 2; branches <= 6; ++branches) {
        double factorial = 1.0;
        for (int k = 2; k <= branches; ++k) factorial *= k;
        for (const double margin : {-5.0, 3.0, 10.0, 40.0}) {
            const double one = lvb_rayleigh_outage_below_mean(margin);
            EXPECT_LT(lvb_maximal_ratio_outage_below_mean(margin, branches), lvb_selection_outage(one, branches));
        }
        // y^N / N! against y^N
        expect_near_relative(lvb_maximal_ratio_outage_below_mean(50.0, branches) * factorial,
                             lvb_selection_outage(1e-5, branches), 1e-4);
    }
}

TEST(Correlated, WithoutCorrelationTheBranchesAreIndependent) {
    for (double margin = -15.0; margin <= 100.0; margin += 1.3) {
        const double one = lvb_rayleigh_outage_below_mean(margin);
        expect_near_relative(lvb_correlated_selection_outage_below_mean(margin, 0.0), one * one, 1e-13);
        expect_near_relative(lvb_correlated_maximal_ratio_outage_below_mean(margin, 0.0),
                             lvb_maximal_ratio_outage_below_mean(margin, 2.0), 1e-13);
    }
}

TEST(Correlated, OutageRisesWithTheCorrelationUpToThatOfOneBranch) {
    for (const double margin : {-3.0, 0.0, 5.0, 20.0, 60.0}) {
        double selection = 0.0, ratio = 0.0;
        for (double correlation = 0.0; correlation <= 0.999; correlation += 0.037) {
            const double s = lvb_correlated_selection_outage_below_mean(margin, correlation);
            const double m = lvb_correlated_maximal_ratio_outage_below_mean(margin, correlation);
            EXPECT_GT(s, selection) << margin << ' ' << correlation;
            EXPECT_LT(m, s); // adding is better than selecting
            // The same power in both branches is twice that of one: spread most, the sum has most outage far below.
            if (margin > 3.0) {
                EXPECT_GT(m, ratio);
            }
            selection = s;
            ratio = m;
        }
        EXPECT_LT(selection, lvb_rayleigh_outage_below_mean(margin));
    }
    // In the tail: y^2 / (1 - c^2), and half of it.
    for (const double correlation : {0.0, 0.3, 0.9}) {
        expect_near_relative(lvb_correlated_selection_outage_below_mean(100.0, correlation),
                             1e-20 / (1.0 - correlation), 1e-8);
        expect_near_relative(lvb_correlated_maximal_ratio_outage_below_mean(100.0, correlation),
                             0.5e-20 / (1.0 - correlation), 1e-8);
    }
}

/// Where a function changes its form, both forms give the same: the step there is the slope's.
TEST(Seams, AreSmooth) {
    const auto smooth = [](const std::function<double(double)> &f, double at, double allowed) {
        const double near = 1e-9;
        const double left = f(at - 2.0 * near) - f(at - near), across = f(at - near) - f(at + near);
        EXPECT_NEAR(across, 2.0 * left, allowed * std::fabs(f(at))) << at;
    };
    for (const double correlation : {0.0, 0.2, 0.7, 0.99}) {
        const double x_is_1 = -10.0 * std::log10(1.0 - correlation);
        smooth([&](double m) { return lvb_correlated_selection_outage_below_mean(m, correlation); }, x_is_1, 1e-13);
        smooth([&](double m) { return lvb_correlated_maximal_ratio_outage_below_mean(m, correlation); },
               x_is_1 - 10.0 * std::log10(2.0), 1e-13);
    }
    for (const double shape : {0.5, 1.0, 7.3, 100.0})
        smooth([&](double m) { return lvb_nakagami_outage_below_mean(m, shape); }, 0.0, 1e-13);
    for (const double sign : {-1.0, 1.0})
        smooth([&](double m) { return lvb_lognormal_outage_below_median(m, 1.0); }, 1.25 * sign, 1e-13);
    for (const double k_db : {0.0, 10.0, 30.0}) { // y = x + 1: the threshold is at the mean
        smooth([&](double m) { return lvb_rice_outage_below_mean(m, k_db); }, 0.0, 1e-12);
    }
}

TEST(Area, LiesAboveItsEdgeAndReachesItWithSteepShadowing) {
    proof::Random random(75);
    for (int i = 0; i < 300; ++i) {
        const double edge = random.uniform(0.001, 0.999), deviation = random.uniform(0.1, 15.0);
        const double share = lvb_area_coverage(edge, deviation, random.uniform(1.5, 6.0));
        EXPECT_GT(share, edge);
        EXPECT_LE(share, 1.0);
    }
    EXPECT_NEAR(lvb_area_coverage(0.4, 1e6, 2.0), 0.4, 1e-5);
    EXPECT_EQ(lvb_area_coverage(0.0, 8.0, 3.0), 0.0);
    EXPECT_EQ(lvb_area_coverage(1.0, 8.0, 3.0), 1.0);
}

/// The closed form against the sum over rings.
TEST(Area, IsTheMeanOverTheRings) {
    for (const double edge : {0.1, 0.5, 0.75, 0.9})
        for (const double exponent : {2.0, 3.5}) {
            const double deviation = 7.0, margin = -lvb_lognormal_margin_below_median_db(edge, deviation);
            double sum = 0.0;
            const int rings = 4000;
            for (int i = 0; i < rings; ++i) {
                const double radius = (i + 0.5) / rings;
                const double here = margin - 10.0 * exponent * std::log10(radius);
                sum += 2.0 * radius / rings * (1.0 - lvb_lognormal_outage_below_median(here, deviation));
            }
            EXPECT_NEAR(lvb_area_coverage(edge, deviation, exponent), sum, 1e-6);
        }
}

} // namespace
