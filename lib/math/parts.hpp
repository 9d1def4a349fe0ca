// Decibels in two parts. The high part is a multiple of 2^-38, so that high parts add exactly up to 2^14 dB; what is
// left stands in the low part. A sum of several logarithms is thus rounded once, when its value is taken.
#pragma once

#include "math/column.hpp"
#include "math/constants.hpp"

namespace lvb::math {

template <class Number>
struct Parts {
    Number high;
    Number low;
};

template <class A, class B>
auto operator+(const Parts<A> &a, const Parts<B> &b) noexcept {
    auto high = a.high + b.high;
    return Parts<decltype(high)>{high, a.low + b.low};
}
template <class A, class B>
auto operator-(const Parts<A> &a, const Parts<B> &b) noexcept {
    auto high = a.high - b.high;
    return Parts<decltype(high)>{high, a.low - b.low};
}

/// Adds any level, and what the sum loses in rounding with it; then the sum of all is rounded.
template <class A, class B>
auto sum_with(const Parts<A> &a, const B &level) noexcept {
    const auto sum = a.high + level;
    const auto from_level = sum - a.high;
    const auto lost = (a.high - (sum - from_level)) + (level - from_level);
    return sum + (a.low + lost);
}
inline double sum_with(const Parts<double> &a, double level) noexcept {
    const double sum = a.high + level;
    const bool finite = sum - sum == 0.0;
    return finite ? sum_with<double, double>(a, level) : sum;
}

template <class A>
auto value(const Parts<A> &a) noexcept {
    return a.high + a.low;
}

} // namespace lvb::math
