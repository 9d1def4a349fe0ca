// Paths against 192 bits: two rays with complex numbers, and the sums of the other models. Nothing here is shared with
// the library but the formulas of the header.
#include "accuracy/real.hpp"
#include "path/paths.hpp"

#include <gtest/gtest.h>

namespace {

using accuracy::Real;
using proof::Random;
using proof::Way;

struct Complex {
    Real re, im;
};
Complex operator+(const Complex &a, const Complex &b) { return {a.re + b.re, a.im + b.im}; }
Complex operator-(const Complex &a, const Complex &b) { return {a.re - b.re, a.im - b.im}; }
Complex operator*(const Complex &a, const Complex &b) { return {a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re}; }
Complex operator/(const Complex &a, const Complex &b) {
    const Real size = squared(b.re) + squared(b.im);
    return {(a.re * b.re + a.im * b.im) / size, (a.im * b.re - a.re * b.im) / size};
}
Real size_of(const Complex &a) { return sqrt(squared(a.re) + squared(a.im)); }
Complex root(const Complex &a) {
    const Real re = sqrt((size_of(a) + a.re) / 2.0);
    return {re, a.im / (2.0 * re)};
}

const Real &light() {
    static const Real value = Real::decimal("299.792458");
    return value;
}
Real free_space(const Real &mhz, const Real &metres) { return 20.0 * log10(4.0 * Real::pi() * metres * mhz / light()); }

struct Exact {
    Real loss, below_free_space; // of the sum of the rays
};
Exact two_ray(const lvb_path &path, double mhz, double metres) {
    const Real down = Real(path.transmit_height_m) - path.receive_height_m;
    const Real up = Real(path.transmit_height_m) + path.receive_height_m;
    const Real direct = sqrt(squared(Real(metres)) + squared(down));
    const Real reflected = sqrt(squared(Real(metres)) + squared(up));
    // 1 / e0 is mu0 c^2, mu0 = 4 pi 1e-7 H/m; the frequency in Hz
    const Real lossy =
        2.0 * Real::decimal("1e-7") * squared(light() * 1e6) * path.conductivity_s_per_m / (Real(mhz) * 1e6);
    const Complex permittivity{path.relative_permittivity, -lossy};
    const Real sine = up / reflected, cosine = Real(metres) / reflected;
    const Complex w = root(permittivity - Complex{squared(cosine), 0.0});
    const Complex q =
        path.polarization == LVB_POLARIZATION_HORIZONTAL ? Complex{sine, 0.0} : permittivity * Complex{sine, 0.0};
    const Complex r = (q - w) / (q + w);
    const Real degrees = (reflected - direct) * mhz / light() * 360.0;
    const Complex turned{cos_of_degrees(degrees), -sin_of_degrees(degrees)};
    const Complex sum = Complex{1.0, 0.0} + r * turned * Complex{direct / reflected, 0.0};
    const Real gain = 20.0 * log10(size_of(sum));
    return {free_space(mhz, direct) - gain, -gain};
}

// The error grows where the two rays cancel; the header says how.
TEST(Paths, TwoRaysLieWithinTheStatedError) {
    Random random(91);
    double worst_share = 0.0;
    for (int i = 0; i < 20000; ++i) {
        const double transmit_m = random.log_uniform(-2, 3), receive_m = random.log_uniform(-2, 3);
        const double permittivity = random.below(8) ? random.log_uniform(0, 3) : 1.0;
        const double conductivity = random.below(3) ? random.log_uniform(-6, 8) : 0.0;
        Way way = proof::two_ray(transmit_m, receive_m);
        way.ground(permittivity, conductivity, static_cast<std::int32_t>(random.below(2)));
        const double mhz = random.log_uniform(-1, 5.4), metres = random.log_uniform(-2, 9);
        ASSERT_EQ(way.compute(mhz, metres), LVB_OK);
        const Exact exact = two_ray(way.path, mhz, metres);
        const double below = std::max(0.0, exact.below_free_space.rounded());
        const double lower = std::min(way.path.transmit_height_m, way.path.receive_height_m);
        const double allowed =
            1e-13 * (1.0 + 2.0 * lower / lvb_wavelength_m_from_mhz(mhz)) * std::pow(10.0, below / 20.0);
        worst_share = std::max(worst_share, abs(Real(way.loss.loss_db) - exact.loss).rounded() / allowed);
    }
    EXPECT_LT(worst_share, 1.0);
    EXPECT_GT(worst_share, 0.1); // the header promises no less than was measured
}

// What a path costs with the other models, summed anew.
Real base(const lvb_path &path, double mhz, double metres) {
    static const Real sites[6][3] = {{Real::decimal("1.46"), Real::decimal("34.62"), Real::decimal("2.03")},
                                     {Real::decimal("2.46"), Real::decimal("29.53"), Real::decimal("2.38")},
                                     {Real::decimal("1.63"), Real::decimal("28.12"), Real::decimal("2.25")},
                                     {Real::decimal("2.77"), Real::decimal("29.27"), Real::decimal("2.48")},
                                     {Real::decimal("2.31"), Real::decimal("24.52"), Real::decimal("2.06")},
                                     {Real::decimal("3.79"), Real::decimal("21.01"), Real::decimal("1.34")}};
    const Real down = Real(path.transmit_height_m) - path.receive_height_m;
    const Real direct = path.transmit_height_m > 0.0 ? sqrt(squared(Real(metres)) + squared(down)) : Real(metres);
    switch (path.model) {
    case LVB_PATH_TWO_RAY:
        return two_ray(path, mhz, metres).loss;
    case LVB_PATH_LOG_DISTANCE: {
        const Real reference = path.reference_distance_m > 0.0 ? path.reference_distance_m : 1.0;
        const Real there = path.reference_loss_db > 0.0 ? Real(path.reference_loss_db) : free_space(mhz, reference);
        return there + 10.0 * Real(path.exponent) * log10(direct / reference);
    }
    case LVB_PATH_INDOOR:
        return 20.0 * log10(Real(mhz)) + Real(path.power_loss_coefficient) * log10(direct) - 28.0;
    case LVB_PATH_SITE_GENERAL: {
        const Real(&site)[3] = sites[path.environment - 1];
        return 10.0 * site[0] * log10(direct) + site[1] + 10.0 * site[2] * log10(Real(mhz) / 1000.0);
    }
    case LVB_PATH_RADIATING_CABLE: {
        const Real lateral = path.lateral_distance_m > 0.0 ? path.lateral_distance_m : 2.0;
        return Real(path.longitudinal_loss_db_per_100m) * metres / 100.0 + path.coupling_loss_db +
               Real::decimal("2.150880374549228") + 10.0 * path.exponent * log10(lateral / 2.0);
    }
    default:
        return free_space(mhz, direct);
    }
}

TEST(Paths, OfEveryModelLieWithinTheStatedError) {
    Random random(92);
    int checked = 0;
    for (int i = 0; i < 20000; ++i) {
        Way way = proof::random_way(random);
        const double mhz = random.uniform(650.0, 6000.0), metres = random.uniform(4.0, 27.0);
        if (way.compute(mhz, metres) != LVB_OK) continue;
        ++checked;
        EXPECT_LT(abs(Real(way.loss.base_loss_db) - base(way.path, mhz, metres)).rounded(), 1e-11);
        const Real obstacles =
            Real(way.path.wall_count) * way.path.wall_loss_db + Real(way.path.floor_count) * way.path.floor_loss_db;
        EXPECT_LT(abs(Real(way.loss.obstacle_loss_db) - obstacles).rounded(), 1e-12);
    }
    EXPECT_GT(checked, 15000);
}

} // namespace
