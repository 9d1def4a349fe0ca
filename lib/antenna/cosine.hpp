// The antenna that radiates cos^n of power into the half space before it. Source: Kraus, Antennas, example 2-4.2.
#pragma once

#include "math/elementary.hpp"

namespace lvb::antenna {

/// 10 log10(2): the gain of an even half space, and half power in dB; in two parts.
inline constexpr double half_space_dbi = 3.010299956639812, half_space_rest_dbi = -1.3905958374036735e-16;

/// Every degree of a sphere, as the estimate from two beam widths takes it.
inline constexpr double square_degrees = 41253.0;

inline double cosine_exponent_from_gain_dbi(double gain_dbi) noexcept {
    if (gain_dbi > math::ordinary_db) {
        const double root = math::ratio_of_db(gain_dbi, 0.5, 0.0);
        return 0.5 * root * root;
    }
    if (gain_dbi > 6.0) return 0.5 * math::power_of_db(gain_dbi) - 1.0;
    return math::power_of_db_m1((gain_dbi - half_space_dbi) - half_space_rest_dbi); // near an even half space
}
inline double gain_dbi_from_cosine_exponent(double exponent) noexcept {
    return math::ten_log10_1p(exponent) + half_space_dbi;
}
inline double cosine_exponent_from_beam_width_deg(double beam_width_deg) noexcept {
    constexpr double narrow = 18203.74372667940156; // 8 ln 2 (180 / pi)^2
    if (beam_width_deg < math::tiny) return narrow / math::abs(beam_width_deg) / math::abs(beam_width_deg);
    const double half = 0.5 * beam_width_deg;
    const double sine = math::abs_sin_deg(half);
    const double power_db =
        half > 45.0 ? math::twenty_log10(math::cos_deg(half)) : math::ten_log10_1p(-(sine * sine)); // of n = 2
    return 2.0 * half_space_dbi / math::abs(power_db);
}
inline double beam_width_deg_from_cosine_exponent(double exponent) noexcept {
    constexpr double narrow = 134.9212500930798579; // 360 / pi sqrt(2 ln 2)
    if (exponent > 1.0 / math::tiny) return narrow / math::sqrt(exponent);
    // cos^2 of half the width, and what it lacks to one
    const double db = -2.0 * half_space_dbi / math::abs(exponent); // of -0 it is that of 0
    return 2.0 * math::arctangent_deg(math::sqrt(-math::power_of_db_m1(db)), math::sqrt(math::power_of_db(db)));
}
inline double gain_dbi_from_beam_widths(double beam_width_1_deg, double beam_width_2_deg) noexcept {
    return math::value(math::decibel_parts(square_degrees, 1.0) + math::decibel_parts(beam_width_1_deg, -1.0) +
                       math::decibel_parts(beam_width_2_deg, -1.0));
}

/// 10 n log10 cos of the angle off the boresight; -infinity at right angles and behind.
inline double cosine_pattern_db(double exponent, double azimuth_deg, double elevation_deg) noexcept {
    const double forward = math::cos_deg(azimuth_deg) * math::cos_deg(elevation_deg);
    if (!(forward > 0.0)) return -math::infinity;
    if (forward < 0.75) return exponent * math::ten_log10(forward);
    // near the boresight by the sine, which loses no digits there
    const double up = math::abs_sin_deg(elevation_deg);
    const double aside = math::abs_sin_deg(azimuth_deg) * math::cos_deg(elevation_deg);
    return exponent * (0.5 * math::ten_log10_1p(-(up * up + aside * aside)));
}

} // namespace lvb::antenna
