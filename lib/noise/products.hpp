// Third-order products of equal carriers, and the range between noise and products. Source: Pozar, Microwave
// Engineering, 10.3.
#pragma once

#include "math/elementary.hpp"

#include <cstdint>

namespace lvb::noise {

template <class P, class I>
auto third_order_product_dbm(const P &level_dbm, const I &intercept_dbm) noexcept {
    return 3.0 * level_dbm - 2.0 * intercept_dbm;
}
template <class P, class M>
auto third_order_intercept_dbm(const P &level_dbm, const M &product_dbm) noexcept {
    return (3.0 * level_dbm - product_dbm) / 2.0;
}
template <class I, class N>
auto spurious_free_range_db(const I &intercept_dbm, const N &noise_dbm) noexcept {
    return (intercept_dbm - noise_dbm) / 1.5;
}

/// Products that fall on the middle one of `carriers` in equal steps: with the middle as 0, of which h stand on the one
/// side and h or h - 1 on the other, those of 2 a - b = 0 and of a + b - c = 0, all different.
inline std::uint64_t two_tone_products(std::uint64_t carriers) noexcept {
    const std::uint64_t h = carriers / 2;
    return carriers % 2 != 0 ? 2 * (h / 2) : h - 1;
}
inline std::uint64_t three_tone_products(std::uint64_t carriers) noexcept {
    const std::uint64_t h = carriers / 2;
    return carriers % 2 != 0 ? (3 * h * h - h) / 2 - h / 2 : (3 * h - 2) * (h - 1) / 2;
}
/// All of them over a single two-tone product; a three-tone product has twice its amplitude.
inline double all_products_db(std::uint64_t carriers) noexcept {
    return math::ten_log10(static_cast<double>(two_tone_products(carriers) + 4 * three_tone_products(carriers)));
}

inline double two_tone_product_count(double carriers) noexcept {
    return static_cast<double>(two_tone_products(static_cast<std::uint64_t>(carriers)));
}
inline double three_tone_product_count(double carriers) noexcept {
    return static_cast<double>(three_tone_products(static_cast<std::uint64_t>(carriers)));
}
inline double middle_channel_products_dbm(double level_dbm, double intercept_dbm, double carriers) noexcept {
    return third_order_product_dbm(level_dbm, intercept_dbm) + all_products_db(static_cast<std::uint64_t>(carriers));
}

} // namespace lvb::noise
