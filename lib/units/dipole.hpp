// The half-wave dipole as a unit of gain.
#pragma once

namespace lvb::units {

// Directivity of the half-wave dipole, 4 / Cin(2 pi) = 1.640922..., in dB. Regulations print it as 2.15.
inline constexpr double half_wave_dipole_dbi = 2.15088037454922796;

} // namespace lvb::units
