// Gain over a half-wave dipole and over an isotropic antenna.
#pragma once

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

} // namespace lvb::antenna
