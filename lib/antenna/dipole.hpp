// The half-wave dipole: gain over it and over an isotropic antenna, and its own over direction.
#pragma once

#include "math/elementary.hpp"
#include "units/dipole.hpp"

namespace lvb::antenna {

using units::half_wave_dipole_dbi;

template <class N>
auto dbi_from_dbd(const N &gain_dbd) noexcept {
    return gain_dbd + half_wave_dipole_dbi;
}
template <class N>
auto dbd_from_dbi(const N &gain_dbi) noexcept {
    return gain_dbi - half_wave_dipole_dbi;
}

/// Over the angle from its axis: cos(90 cos t) is sin(180 sin^2(t / 2)), and sin t is 2 sin(t / 2) cos(t / 2), which
/// lose no digits near the axis.
inline double dipole_gain_dbi(double angle_deg) noexcept {
    // next to the axis it is pi / 4 sin t of the maximum; the square of a tiny sine would vanish
    constexpr double of_a_degree_dbi = -35.109774646310787070;
    if (math::abs(angle_deg) < math::tiny) return math::twenty_log10(math::abs(angle_deg)) + of_a_degree_dbi;
    const double sine = math::abs_sin_deg(0.5 * angle_deg);
    const double cosine = math::abs(math::cos_deg(0.5 * angle_deg));
    const double small = sine < cosine ? sine : cosine;
    const double large = sine < cosine ? cosine : sine;
    if (small == 0.0) return -math::infinity;
    return math::twenty_log10(math::abs_sin_deg(180.0 * (small * small)) / (2.0 * small * large)) +
           half_wave_dipole_dbi;
}

} // namespace lvb::antenna
