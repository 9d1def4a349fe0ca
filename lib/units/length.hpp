// Lengths, wavelength, attenuation per length, temperature scales. Sources: 85 FR 62698 (international foot), SI
// Brochure (c), NIST SP 811 B.8 (temperature scales). Each formula is written once, for a number and for a piece of a
// column.
#pragma once

#include "math/column.hpp"

namespace lvb::units {

inline constexpr double foot_m = 0.3048;
inline constexpr double inch_m = 0.0254;
inline constexpr double yard_m = 0.9144;
inline constexpr double mile_m = 1609.344;
inline constexpr double light_m_mhz = 299.792458; // speed of light as metres times MHz

template <class N>
auto wavelength_m_from_mhz(const N &frequency_mhz) noexcept {
    return light_m_mhz / frequency_mhz;
}
/// Whether a distance is under one wavelength, where waves have not formed.
inline bool is_near_field(double frequency_mhz, double distance_m) noexcept {
    return distance_m < wavelength_m_from_mhz(frequency_mhz);
}
template <class N>
auto mhz_from_wavelength_m(const N &wavelength_m) noexcept {
    return light_m_mhz / wavelength_m;
}

template <class N>
auto degc_from_degf(const N &temperature_degf) noexcept {
    return (temperature_degf - 32.0) / 1.8;
}
template <class N>
auto degf_from_degc(const N &temperature_degc) noexcept {
    return 1.8 * temperature_degc + 32.0;
}

template <class N>
auto metres_from_feet(const N &length_feet) noexcept {
    return foot_m * length_feet;
}
template <class N>
auto feet_from_metres(const N &length_m) noexcept {
    return length_m / foot_m;
}
template <class N>
auto metres_from_inches(const N &length_inches) noexcept {
    return inch_m * length_inches;
}
template <class N>
auto inches_from_metres(const N &length_m) noexcept {
    return length_m / inch_m;
}
template <class N>
auto metres_from_yards(const N &length_yards) noexcept {
    return yard_m * length_yards;
}
template <class N>
auto yards_from_metres(const N &length_m) noexcept {
    return length_m / yard_m;
}
template <class N>
auto metres_from_miles(const N &length_miles) noexcept {
    return mile_m * length_miles;
}
template <class N>
auto miles_from_metres(const N &length_m) noexcept {
    return length_m / mile_m;
}
template <class N>
auto db_per_100m_from_db_per_100ft(const N &db_per_100ft) noexcept {
    return db_per_100ft / foot_m;
}
template <class N>
auto db_per_100ft_from_db_per_100m(const N &db_per_100m) noexcept {
    return foot_m * db_per_100m;
}

inline constexpr double absolute_zero_degc = -273.15;
inline constexpr double absolute_zero_degf = -459.67;

template <class N>
auto kelvin_from_degc(const N &temperature_degc) noexcept {
    return temperature_degc - absolute_zero_degc;
}
template <class N>
auto degc_from_kelvin(const N &temperature_k) noexcept {
    return temperature_k + absolute_zero_degc;
}

} // namespace lvb::units
