// Screens: edges against ITU-R P.526, fixed losses, what is shaded and what is not.
#include "map/sites.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>

namespace {

using namespace proof;

/// By how many dB a point is weaker with the screens of a stage than without them.
double loss_at(Stage &stage, double x, double y) {
    std::vector<lvb_screen> screens;
    std::swap(screens, stage.screens);
    Mapped clear(stage, x, y, 1.0, 1, 1);
    EXPECT_EQ(clear.compute(stage.fault), LVB_OK);
    std::swap(screens, stage.screens);
    Mapped shaded(stage, x, y, 1.0, 1, 1);
    EXPECT_EQ(shaded.compute(stage.fault), LVB_OK) << lvb_field_name(stage.fault.field);
    return clear.level[0] - shaded.level[0];
}

/// A screen so wide that its top alone counts, half way between antenna and point, which are 20 m apart.
double loss_over_top(double parameter, double frequency_mhz) {
    Stage stage(20.0);
    stage.add(chain_out(), 0.0, 0.0, 20.0, frequency_mhz);
    const double height = parameter / std::sqrt(2.0 / (299.792458 / frequency_mhz) * (1.0 / 10.0 + 1.0 / 10.0));
    stage.screen(-1e5, 10.0, 1e5, 10.0, 0.0, 20.0 + height);
    return loss_at(stage, 0.0, 20.0);
}

TEST(Screens, OneEdgeLosesWhatIsPublished) {
    // ITU-R P.526-15, equation 31, evaluated to three decimals (tests/reference/paths.ref, known D)
    for (const double mhz : {300.0, 600.0, 2400.0}) {
        EXPECT_NEAR(loss_over_top(0.0, mhz), 6.033, 5.1e-4);
        EXPECT_NEAR(loss_over_top(1.0, mhz), 13.926, 5.1e-4);
        EXPECT_NEAR(loss_over_top(2.0, mhz), 19.043, 5.1e-4);
        EXPECT_NEAR(loss_over_top(3.0, mhz), 22.416, 5.1e-4);
        EXPECT_NEAR(loss_over_top(-0.781, mhz), 0.0, 1e-11);
        EXPECT_NEAR(loss_over_top(-1.5, mhz), 0.0, 1e-11);
    }
    // Rappaport, Wireless Communications 2e, example 4.7: 21.7 dB at v = 2.74 (the book's approximation, within 0.5 dB)
    EXPECT_NEAR(loss_over_top(2.74, 900.0), 21.7, 0.5);
}

TEST(Screens, OneEdgeIsThePlainFunctionOfItsGeometry) {
    Random random(526);
    for (int turn = 0; turn < 300; ++turn) {
        const double mhz = random.uniform(200.0, 3000.0), up = random.uniform(0.5, 6.0),
                     pack = random.uniform(0.5, 2.0);
        const double before = random.uniform(1.0, 20.0), behind = random.uniform(1.0, 20.0);
        const double line = up + (pack - up) * before / (before + behind), top = line + random.uniform(-0.5, 2.0);
        Stage stage(pack);
        stage.add(chain_out(), 0.0, 0.0, up, mhz);
        stage.screen(-1e5, before, 1e5, before, -1.0, top);
        const double whole = std::hypot(before + behind, up - pack);
        const double radius =
            lvb_fresnel_radius_m(mhz, whole * before / (before + behind), whole * behind / (before + behind));
        const double expected = lvb_knife_edge_loss_db(lvb_knife_edge_parameter(top - line, radius));
        EXPECT_NEAR(loss_at(stage, 0.0, before + behind), expected,
                    2e-5); // 1e5 m away, the sides leave next to nothing
    }
}

TEST(Screens, EdgesAddTheirPowers) {
    Random random(5261);
    for (int turn = 0; turn < 300; ++turn) {
        const double mhz = 700.0, left = random.uniform(-1.0, 3.0), right = random.uniform(-left + 0.1, 3.0);
        const double bottom = random.uniform(-0.5, 1.0), top = random.uniform(1.1, 4.0);
        Stage stage(1.5);
        stage.add(chain_out(), 0.0, 0.0, 1.5, mhz);
        stage.screen(-left, 6.0, right, 6.0, bottom, top);
        const double radius = lvb_fresnel_radius_m(mhz, 6.0, 4.0);
        double sum = 0.0;
        for (const double inside : {left, right, top - 1.5, bottom > 0.0 ? 1.5 - bottom : 1e6})
            if (inside < 1e5)
                sum += std::pow(10.0, -lvb_knife_edge_loss_db(lvb_knife_edge_parameter(inside, radius)) / 10.0);
        EXPECT_NEAR(loss_at(stage, 0.0, 10.0), -10.0 * std::log10(std::min(sum, 1.0)), 1e-10);
    }
}

/// Fresnel's integrals C + jS from 0 to x by Simpson's rule.
std::complex<double> fresnel(double x) {
    const int steps = 2 * static_cast<int>(200.0 + 60.0 * x * x);
    const auto f = [](double t) { return std::polar(1.0, std::acos(-1.0) / 2.0 * t * t); };
    std::complex<double> sum = f(0.0) + f(x);
    for (int i = 1; i < steps; ++i) sum += (i % 2 != 0 ? 4.0 : 2.0) * f(x * i / steps);
    return sum * (x / steps / 3.0);
}

TEST(Screens, AFiniteScreenIsWithinDecibelsOfTheExactFieldOnAverage) {
    // Babinet: the field behind a rectangle is the free field less that through the rectangle's opening, which is a
    // product of Fresnel integrals (Born and Wolf, Principles of Optics, 8.7). The sum of powers leaves out how the
    // edges' waves meet; over random places that averages.
    Random random(8);
    double model = 0.0, exact = 0.0;
    for (int turn = 0; turn < 400; ++turn) {
        const double mhz = 1200.0, left = random.uniform(0.6, 1.4), right = random.uniform(0.6, 1.4);
        const double top = random.uniform(0.6, 1.4), below = random.uniform(0.6, 1.4);
        Stage stage(3.0);
        stage.add(chain_out(), 0.0, 0.0, 3.0, mhz);
        stage.screen(-left, 5.0, right, 5.0, 3.0 - below, 3.0 + top);
        model += std::pow(10.0, -loss_at(stage, 0.0, 10.0) / 10.0);
        const double per_metre = std::sqrt(2.0 / (299.792458 / mhz) * (2.0 / 5.0));
        const std::complex<double> across = fresnel(left * per_metre) + fresnel(right * per_metre);
        const std::complex<double> upright = fresnel(top * per_metre) + fresnel(below * per_metre);
        exact += std::norm(1.0 - across * upright / std::complex<double>(0.0, 2.0));
    }
    EXPECT_NEAR(10.0 * std::log10(model / exact), 0.0, 2.0);
}

TEST(Screens, AFixedLossTakesWhatPassesThroughAndNothingElse) {
    Stage stage(1.5);
    stage.add(chain_out(), 0.0, 0.0, 1.5);
    stage.screen(-1.0, 5.0, 1.0, 5.0, 0.0, 3.0, 12.5);
    EXPECT_NEAR(loss_at(stage, 0.0, 10.0), 12.5, 1e-12);
    EXPECT_NEAR(loss_at(stage, 1.9, 10.0), 12.5, 1e-12); // x = 0.95 in the screen's plane
    EXPECT_EQ(loss_at(stage, 2.1, 10.0), 0.0);
    EXPECT_EQ(loss_at(stage, 0.0, 4.9), 0.0); // before it
    EXPECT_EQ(loss_at(stage, 0.0, 5.0), 0.0); // in its plane
    EXPECT_EQ(loss_at(stage, 0.0, -10.0), 0.0);
    stage.screen(-5.0, 7.0, 5.0, 7.5, 0.0, 3.0, 7.0);
    EXPECT_NEAR(loss_at(stage, 0.0, 10.0), 19.5, 1e-12); // two of them add
    stage.site.pack_height_m = 9.0;
    stage.placed[0].z_m = 9.0;
    EXPECT_EQ(loss_at(stage, 0.0, 10.0), 0.0); // above them
}

TEST(Screens, ItDoesNotMatterWhichEndComesFirst) {
    Random random(4);
    for (int turn = 0; turn < 50; ++turn) {
        const double x1 = random.uniform(-5.0, 5.0), y1 = random.uniform(2.0, 8.0), x2 = random.uniform(-5.0, 5.0),
                     y2 = random.uniform(2.0, 8.0), loss = random.below(2) ? 0.0 : 9.0;
        Stage one(1.2), other(1.2);
        one.add(chain_out(), 0.0, 0.0, 3.0);
        other.add(chain_out(), 0.0, 0.0, 3.0);
        one.screen(x1, y1, x2, y2, 0.3, 2.5, loss);
        other.screen(x2, y2, x1, y1, 0.3, 2.5, loss);
        EXPECT_NEAR(loss_at(one, 0.5, 10.0), loss_at(other, 0.5, 10.0), 1e-10);
    }
}

TEST(Screens, NeverHelpAndCountOncePerAntenna) {
    Random random(41);
    Stage stage(1.2);
    stage.add(chain_out(), 0.0, 0.0, 3.0);
    stage.screen(-2.0, 4.0, 3.0, 5.0, 0.0, 2.5);
    stage.screen(-4.0, 7.0, 1.0, 6.0, 0.5, 3.5);
    for (int turn = 0; turn < 300; ++turn) {
        const double x = random.uniform(-9.0, 9.0), y = random.uniform(-9.0, 15.0);
        EXPECT_GE(loss_at(stage, x, y), 0.0);
    }
    // the shadow of one antenna is served by another
    stage.add(chain_out(), 0.0, 15.0, 3.0);
    Mapped mapped(stage, 0.0, 9.0, 1.0, 1, 1);
    ASSERT_EQ(mapped.compute(stage.fault), LVB_OK);
    EXPECT_EQ(mapped.serving[0], 1);
}

} // namespace
