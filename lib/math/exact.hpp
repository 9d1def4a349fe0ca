// Sums and products of two numbers together with what rounding takes from them: where a large exponent would multiply
// the rounding of its argument.
#pragma once

#include "math/decibel.hpp"
#include "math/parts.hpp"

namespace lvb::math {

/// a + b, exactly.
inline Parts<double> exact_sum(double a, double b) noexcept {
    const double sum = a + b;
    const double from_b = sum - a;
    return {sum, (a - (sum - from_b)) + (b - from_b)};
}

/// a b, exact but for a part in 2^106.
inline Parts<double> exact_product(double a, double b) noexcept {
    const double a_high = kernel::first_half(a), a_low = a - a_high;
    const double b_high = kernel::first_half(b), b_low = b - b_high;
    const double product = a * b;
    return {product, ((a_high * b_high - product) + (a_high * b_low + a_low * b_high)) + a_low * b_low};
}

} // namespace lvb::math
