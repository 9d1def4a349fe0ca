// Gain over a half-wave dipole and over an isotropic antenna.
#pragma once

namespace lvb::antenna {

// Directivity of the half-wave dipole, 4 / Cin(2 pi) = 1.640922..., in dB. Regulations print it as 2.15.
inline constexpr double half_wave_dipole_dbi = 2.15088037454922796;

template <class N>
auto dbi_from_dbd(const N &gain_dbd) noexcept {
    return gain_dbd + half_wave_dipole_dbi;
}
template <class N>
auto dbd_from_dbi(const N &gain_dbi) noexcept {
    return gain_dbi - half_wave_dipole_dbi;
}

} // namespace lvb::antenna
