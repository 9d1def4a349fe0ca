// Kernels: logarithm and exponential in the forms that decibels need, 10 log10(x) and 10^(d / 10), and both around one.
//
// Built of correctly rounded IEEE operations only, in one written order and without branches: the same bits on every
// machine, for one number as for a column. They take ordinary numbers; elementary.cpp adds the special ones.
// Coefficients and the bounds of their approximation errors come from recipes/decibel.sollya.
#pragma once

#include "math/bits.hpp"
#include "math/square_root.hpp"

namespace lvb::math::LVB_KERNEL {

// 10 / ln(10), 10 log10(2) and ln(10) / 10, each in two parts; the high parts are short, so that their products with
// the short parts below are exact.
inline constexpr double per_neper_high = 0x1.15f2cfp2, per_neper_low = -0x1.63d86b902bea7p-25;
inline constexpr double octave_high = 0x1.8151824c76p1, octave_low = -0x1.e0540a64a27f4p-41;
inline constexpr double neper_high = 0x1.d791c6p-3, neper_low = -0x1.dddf765411542p-33;
inline constexpr double octaves_per_db = 0x1.542a5a12e1c5bp-2;
inline constexpr double per_neper = 0x1.15f2ced384f29p+2, nepers_per_db = 0x1.d791c5f888822p-3; // in one part

inline constexpr double smallest_normal = 0x1p-1022;
/// Up to this size 10^(d / 10) and its inverse are normal numbers.
inline constexpr double largest_ordinary_db = 3070.0;

/// A logarithm as the sum of a number and a remainder.
struct Log {
    double sum, rest;
};

/// x = 2^k (1 + f), 1 + f in [sqrt(1/2), sqrt(2)), and s = f / (2 + f).
struct Reduced {
    double k, f, s;
};
inline Reduced reduce(double x) noexcept {
    // m = 1 + f; the offset lets the exponent change at sqrt(2) in place of 2.
    constexpr std::uint64_t root_half = 0x3fe6a09e00000000;
    const std::uint64_t u = bits_of(x) + (bits_of(1.0) - root_half);
    const double k = from_bits((u >> 52) | bits_of(0x1p52)) - (0x1p52 + 1023.0);
    const double m = from_bits((u & 0x000fffffffffffff) + root_half);
    const double f = m - 1.0;
    return {k, f, f / (m + 1.0)};
}

/// R in log(1 + f) = 2 s + s R = f - f^2/2 + s (f^2/2 + R).
inline double log_series(double s) noexcept {
    const double z = s * s;
    const double w = z * z;
    const double even =
        (0x1.5555555555558p-1 + w * 0x1.2492492deec37p-2) + (w * w) * (0x1.7462b4ab7b36ap-3 + w * 0x1.2b58abb5a535ap-3);
    const double odd = 0x1.9999999995323p-2 + w * (0x1.c71c62e684aaap-3 + w * 0x1.39fe5b524b232p-3);
    return z * (even + z * odd);
}

/// scale 10 log10(x) + offset of a reduced x, for a scale of 1 or 2, perhaps negative, and a whole offset up to 1000:
/// whole octaves and the offset add exactly, so that the sum is rounded once.
inline Log log_of_reduced(const Reduced &x, double scale, double offset) noexcept {
    const double k = x.k, f = x.f, s = x.s;

    const double half_square = 0.5 * f * f;
    const double r = log_series(s);

    // The logarithm in two parts, the high one short; then the sum of exact products and small remainders.
    const double high = from_bits(bits_of(f - half_square) & 0xffffffff00000000);
    const double low = ((f - high) - half_square) + s * (half_square + r);
    const double octaves = k * (scale * octave_high) + offset;
    const double main = high * (scale * per_neper_high);
    const double sum = octaves + main;
    const double rest =
        k * (scale * octave_low) + ((low + high) * (scale * per_neper_low) + low * (scale * per_neper_high));
    return {sum, ((octaves - sum) + main) + rest};
}

/// The same of a normal x > 0.
inline Log log_of_normal(double x, double scale, double offset) noexcept {
    return log_of_reduced(reduce(x), scale, offset);
}

/// Rounds decibels to multiples of 2^-38: such numbers add exactly up to 2^14 dB.
inline double coarse_db(double db) noexcept { return (db + 0x1.8p14) - 0x1.8p14; }

/// d = db + offset = k 10 log10(2) + near - far, without the rounding of db + offset; near is exact without an offset,
/// and far is small. The offset is a multiple of 2^-38 up to 1000.
struct ReducedDb {
    double k, near, far;
};
inline ReducedDb reduce_db(double db, double offset) noexcept {
    const double k = ((db * octaves_per_db + offset * octaves_per_db) + rounder) - rounder;
    return {k, db + (offset - k * octave_high), k * octave_low};
}

/// q in 10^(r / 10) = 1 + ln(10) / 10 r + q r^2.
inline double power_series(double r) noexcept {
    const double r2 = r * r;
    const double r4 = r2 * r2;
    const double c12 = 0x1.b254dcbd317a3p-6 + r * 0x1.0ab07c0606f49p-9;
    const double c34 = 0x1.eb42906207474p-14 + r * 0x1.69f9481951ab7p-18;
    const double c56 = 0x1.bc852bf768e5ep-23 + r * 0x1.d3e814090cfb8p-28;
    const double c78 = 0x1.aef4c82070bdap-33 + r * 0x1.60d29323efa34p-38;
    const double c9a = 0x1.04aaa36137aadp-43 + r * 0x1.5d314a6733a48p-49;
    return (c12 + r2 * c34) + r4 * ((c56 + r2 * c78) + r4 * c9a);
}

/// With r = near - far: 10^(r / 10) = 1 + y in two parts.
struct Power {
    double k, y_high, y_low;
};
inline Power power_parts(const ReducedDb &db) noexcept {
    const double k = db.k, near = db.near, far = db.far;
    const double r = near - far;
    const double near_high = from_bits(bits_of(near) & 0xfffffffff8000000);
    return {k, near_high * neper_high,
            (near_high * neper_low + ((near - near_high) - far) * nepers_per_db) + (r * r) * power_series(r)};
}
struct Sum {
    double high, rest;
};
inline Sum one_and(const Power &p) noexcept {
    const double sum = 1.0 + p.y_high;
    return {sum, ((1.0 - sum) + p.y_high) + p.y_low};
}
inline double mantissa(const Power &p) noexcept {
    const Sum sum = one_and(p);
    return sum.high + sum.rest;
}

/// 10^(d / 10) of a reduced d of a size up to largest_ordinary_db.
inline double power_of_reduced(const ReducedDb &db) noexcept {
    return mantissa(power_parts(db)) * power_of_two(db.k + rounder);
}

// In one part only, where errors of a few units in the last place do no harm.

/// ln(x) of x = 2^k (1 + f), with log(1 + f) = s (2 + R).
inline double plain_log(double k, double log) noexcept { return k * 0x1.62e42fefa39efp-1 + log; }

/// 10^(r / 10) of a reduced r.
inline double plain_mantissa(double r) noexcept { return 1.0 + (r * nepers_per_db + (r * r) * power_series(r)); }

/// Half of a number's digits: products of two such halves are exact.
inline double first_half(double x) noexcept { return from_bits(bits_of(x) & 0xfffffffff8000000); }

/// The root of a normal x > 0 is 2^k (high + low), from 1 to 2, and high is its first half.
struct Root {
    double k, high, low;
};
inline Root root_of(double x) noexcept {
    // x = 4^k m, m from 1 to 4: one bit of the exponent stays with m.
    const std::uint64_t u = bits_of(x) + (std::uint64_t{1} << 52);
    const double k = from_bits((u >> 53) | bits_of(0x1p52)) - (0x1p52 + 512.0);
    const double m = from_bits((u & 0x001fffffffffffff) + bits_of(1.0));
    const double root = sqrt(m);
    const double high = first_half(root), low = root - high;
    const double lost = ((m - high * high) - 2.0 * high * low) - low * low;
    return {k, high, low + lost / (2.0 * root)};
}

/// The product of a power's mantissa and a root's, rounded once.
inline double mantissa(const Power &p, const Root &root) noexcept {
    const Sum sum = one_and(p);
    const double high = first_half(sum.high), low = (sum.high - high) + sum.rest;
    return high * root.high + (high * root.low + low * (root.high + root.low));
}

} // namespace lvb::math::LVB_KERNEL
