// Lengths, wavelength, attenuation per length, temperature scales. Sources: 85 FR 62698 (international foot), SI
// Brochure (c), NIST SP 811 B.8 (temperature scales).
#pragma once

namespace lvb::units {

inline constexpr double foot_m = 0.3048;
inline constexpr double inch_m = 0.0254;
inline constexpr double yard_m = 0.9144;
inline constexpr double mile_m = 1609.344;
inline constexpr double light_m_mhz = 299.792458; // speed of light as metres times MHz

inline double wavelength_m_from_mhz(double frequency_mhz) noexcept { return light_m_mhz / frequency_mhz; }
inline double mhz_from_wavelength_m(double wavelength_m) noexcept { return light_m_mhz / wavelength_m; }

inline double degc_from_degf(double temperature_degf) noexcept { return (temperature_degf - 32.0) / 1.8; }
inline double degf_from_degc(double temperature_degc) noexcept { return 1.8 * temperature_degc + 32.0; }

inline constexpr double absolute_zero_degc = -273.15;
inline constexpr double absolute_zero_degf = -459.67;

} // namespace lvb::units
