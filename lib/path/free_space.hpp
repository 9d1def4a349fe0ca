// Free space. Source: ITU-R P.525. Each formula is written once, for a number and for a piece of a column.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::path {

using math::decibel_parts;
using math::decibel_sum;
using math::Parts;
using math::ratio_of_db;
using math::sum_with;

// 20 log10(4 pi / 299.792458): loss at 1 MHz and 1 m.
inline constexpr Parts<double> loss_at_1_mhz_1_m{-0x1.b8d5e142a5000p+4, -0x1.d6cb72864b4c1p-43};
// 10 log10(29.9792458) + 90: field strength in dBuV/m of 1 mW e.i.r.p. at 1 m.
inline constexpr Parts<double> field_at_1_mw_1_m{0x1.a312a4dd0d400p+6, -0x1.6d799ae7a7ad3p-43};

// 299.792458 / (4 pi): distance in metres at which 1 MHz loses 0 dB.
inline constexpr double lossless_m_at_1_mhz = 0x1.7db5261bc40bep+4;

/// Decibels of the loss grow with the square of frequency and distance.
inline constexpr double loss_scale = 2.0;

/// The part of the loss that depends on the frequency alone, and that on the distance alone.
template <class F>
auto frequency_parts(const F &frequency_mhz) noexcept {
    return decibel_parts(frequency_mhz, loss_scale) + loss_at_1_mhz_1_m;
}
template <class D>
auto distance_parts(const D &distance_m) noexcept {
    return decibel_parts(distance_m, loss_scale);
}

template <class F, class D>
auto free_space_loss_db(const F &frequency_mhz, const D &distance_m) noexcept {
    return decibel_sum(distance_m, loss_scale, frequency_parts(frequency_mhz));
}
template <class F, class L>
auto free_space_distance_m(const F &frequency_mhz, const L &loss_db) noexcept {
    return lossless_m_at_1_mhz * ratio_of_db(loss_db, 0.5, 0.0) / frequency_mhz;
}
// Far out a factor may leave the numbers though the result does not: the result's root is computed there.
inline double free_space_distance_m(double frequency_mhz, double loss_db) noexcept {
    if (math::abs(loss_db) <= math::ordinary_db) return free_space_distance_m<double, double>(frequency_mhz, loss_db);
    const double quarter = ratio_of_db(loss_db, 0.125, 0.0); // the fourth root of the ratio
    const double root = quarter / math::sqrt(frequency_mhz) * quarter;
    return root * lossless_m_at_1_mhz * root;
}
template <class P, class D>
auto field_strength_dbuv_per_m(const P &eirp_dbm, const D &distance_m) noexcept {
    return sum_with(decibel_parts(distance_m, -2.0) + field_at_1_mw_1_m, eirp_dbm);
}
template <class E, class D>
auto eirp_dbm_from_field_strength(const E &field_dbuv_per_m, const D &distance_m) noexcept {
    return sum_with(decibel_parts(distance_m, 2.0) - field_at_1_mw_1_m, field_dbuv_per_m);
}

} // namespace lvb::path
