// Sums and products of two numbers together with what rounding takes from them, and powers of such pairs: where a large
// exponent would multiply the rounding of its argument.
#pragma once

#include "math/bits.hpp"
#include "math/elementary.hpp"

namespace lvb::math {

/// a + b, exactly.
inline Parts<double> exact_sum(double a, double b) noexcept {
    const double sum = a + b;
    const double from_b = sum - a;
    return {sum, (a - (sum - from_b)) + (b - from_b)};
}

/// a b, exact but for a part in 2^106.
inline Parts<double> exact_product(double a, double b) noexcept {
    constexpr std::uint64_t upper_half = 0xfffffffff8000000;
    const double a_high = kernel::from_bits(kernel::bits_of(a) & upper_half), a_low = a - a_high;
    const double b_high = kernel::from_bits(kernel::bits_of(b) & upper_half), b_low = b - b_high;
    const double product = a * b;
    return {product, ((a_high * b_high - product) + (a_high * b_low + a_low * b_high)) + a_low * b_low};
}

/// 10^(db / 10) of finite decibels in two parts. Error below 2 ULP.
double power_of_db(const Parts<double> &db) noexcept;

/// e^(high + low). Error below 2 ULP.
double exponential(double high, double low = 0.0) noexcept;

/// e^x - 1, accurate also for small x. Error below 4 ULP.
double exponential_m1(double x) noexcept;

} // namespace lvb::math
