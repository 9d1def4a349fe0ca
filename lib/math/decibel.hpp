// Kernels: logarithm and exponential in the forms that decibels need: 10 log10(x) and 10^(d / 10), and both around one.
//
// Built of correctly rounded IEEE operations only, in one written order and without branches: the same bits on every
// machine. Coefficients and the bounds of their approximation errors come from recipes/decibel.sollya.
#pragma once

#include "math/bits.hpp"
#include "math/constants.hpp"

namespace lvb::math::kernel {

// 10 / ln(10), 10 log10(2) and ln(10) / 10, each in two parts; the high parts are short, so that their products with
// the short parts below are exact.
inline constexpr double per_neper_high = 0x1.15f2cfp2, per_neper_low = -0x1.63d86b902bea7p-25;
inline constexpr double octave_high = 0x1.8151824c76p1, octave_low = -0x1.e0540a64a27f4p-41;
inline constexpr double neper_high = 0x1.d791c6p-3, neper_low = -0x1.dddf765411542p-33;
inline constexpr double octaves_per_db = 0x1.542a5a12e1c5bp-2;

inline constexpr std::uint64_t root_half_bits = 0x3fe6a09e00000000; // just below sqrt(1/2)
inline constexpr std::uint64_t one_bits = 0x3ff0000000000000;
inline constexpr std::uint64_t fraction_bits = 0x000fffffffffffff;

// Beyond these a power overflows or vanishes; their halves as powers of two stay normal.
inline constexpr double largest_db = 6150.0;

/// 10 log10(x) + small, for x > 0 and finite; `small` is far below the last digit of the logarithm.
inline double log_of_positive(double x, double small) noexcept {
    // x = 2^k m, m in [sqrt(1/2), sqrt(2)); numbers below the normal ones are lifted first.
    const bool tiny = x < 0x1p-1022;
    const std::uint64_t u = bits_of(tiny ? x * 0x1p54 : x) + (one_bits - root_half_bits);
    const double biased = from_bits((u >> 52) | 0x4330000000000000) - 0x1p52;
    const double k = biased - (tiny ? 1023.0 + 54.0 : 1023.0);
    const double m = from_bits((u & fraction_bits) + root_half_bits);

    // log(m) = f - f^2/2 + s (f^2/2 + R(s^2)), f = m - 1, s = f / (2 + f)
    const double f = m - 1.0;
    const double half_square = 0.5 * f * f;
    const double s = f / (2.0 + f);
    const double z = s * s;
    const double w = z * z;
    const double even =
        0x1.5555555555558p-1 + w * (0x1.2492492deec37p-2 + w * (0x1.7462b4ab7b36ap-3 + w * 0x1.2b58abb5a535ap-3));
    const double odd = 0x1.9999999995323p-2 + w * (0x1.c71c62e684aaap-3 + w * 0x1.39fe5b524b232p-3);
    const double r = z * (even + z * odd);

    // The logarithm in two parts, the high one short; then the sum of exact products and small remainders.
    const double high = from_bits(bits_of(f - half_square) & 0xffffffff00000000);
    const double low = ((f - high) - half_square) + s * (half_square + r);
    const double octaves = k * octave_high;
    const double main = high * per_neper_high;
    const double sum = octaves + main;
    const double rest = ((k * octave_low + (low + high) * per_neper_low) + low * per_neper_high) + small;
    return sum + (((octaves - sum) + main) + rest);
}

/// 10^(d / 10) = 2^k (1 + y): the two halves of 2^k, and y in two parts.
struct Power {
    double half_1, half_2, inverse_1; // 2^k = half_1 half_2, inverse_1 = 1 / half_1
    double y_high, y_low;
};
inline Power power_parts(double db) noexcept {
    const double above = db < -largest_db ? -largest_db : db;
    const double d = above > largest_db ? largest_db : above;
    const double k = (d * octaves_per_db + rounder) - rounder;
    // d - k 10 log10(2), the first difference exact
    const double near = d - k * octave_high;
    const double far = k * octave_low;
    const double r = near - far;
    const double near_high = from_bits(bits_of(near) & 0xfffffffff8000000);
    const double r2 = r * r;
    const double r4 = r2 * r2;
    const double c12 = 0x1.b254dcbd31799p-6 + r * 0x1.0ab07c0607031p-9;
    const double c34 = 0x1.eb42906209fcdp-14 + r * 0x1.69f948190a477p-18;
    const double c56 = 0x1.bc852bf0254abp-23 + r * 0x1.d3e81528ef8p-28;
    const double c78 = 0x1.aef4d77200396p-33 + r * 0x1.60d096b698162p-38;
    const double c9a = 0x1.049f83cb9fb4dp-43 + r * 0x1.5fbe8dbeaab2fp-49;
    const double q = (c12 + r2 * c34) + r4 * ((c56 + r2 * c78) + r4 * c9a);

    const double k_1_rounded = 0.5 * k + rounder;
    const double k_1 = k_1_rounded - rounder;
    Power parts;
    parts.half_1 = power_of_two(k_1_rounded);
    parts.half_2 = power_of_two((k - k_1) + rounder);
    parts.inverse_1 = power_of_two(rounder - k_1);
    parts.y_high = near_high * neper_high;
    parts.y_low = (near_high * neper_low + ((near - near_high) - far) * 0x1.d791c5f888822p-3) + r2 * q;
    return parts;
}

/// 10 log10(x): decibels of a power ratio. 0 gives -infinity, below 0 NaN. Error below 0.75 ULP.
inline double ten_log10(double x) noexcept {
    const double log = log_of_positive(x, 0.0);
    const double up = x == infinity ? infinity : log;
    const double down = x == 0.0 ? -infinity : up;
    return x >= 0.0 ? down : not_a_number;
}

/// 10 log10(1 + x), accurate also for small x. -1 gives -infinity, below it NaN. Error below 2 ULP.
inline double ten_log10_1p(double x) noexcept {
    const double sum = 1.0 + x;
    const double lost = x < 1.0 ? x - (sum - 1.0) : 1.0 - (sum - x);
    const double log = log_of_positive(sum, lost / sum * (per_neper_high + per_neper_low));
    const double up = x == infinity ? infinity : log;
    const double down = sum == 0.0 ? -infinity : up;
    return sum >= 0.0 ? down : not_a_number;
}

/// 10^(db / 10): the power ratio of decibels. Error below 0.9 ULP; rounds once below the normal numbers.
inline double power_of_db(double db) noexcept {
    const Power p = power_parts(db);
    const double sum = 1.0 + p.y_high;
    const double m = sum + (((1.0 - sum) + p.y_high) + p.y_low);
    return m * p.half_1 * p.half_2;
}

/// 10^(db / 10) - 1, accurate also for small db. Error below 3 ULP.
inline double power_of_db_m1(double db) noexcept {
    const Power p = power_parts(db);
    const double y = p.y_high + p.y_low;
    return ((p.half_2 - p.inverse_1) + p.half_2 * y) * p.half_1;
}

} // namespace lvb::math::kernel
