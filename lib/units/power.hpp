// Power, voltage and field levels. Source of the definitions: IEC 60027-3, ITU-R V.574, ITU-R P.525.
// Each formula is written once, for a number and for a piece of a column.
#pragma once

#include "math/elementary.hpp"

namespace lvb::units {

using math::decibel_parts;
using math::decibels;
using math::Parts;
using math::ratio_of_db;
using math::rooted_ratio_of_db;
using math::sum_with;

// Powers in milliwatts or watts against levels in dBm or dBW: the unit that differs is 30 dB away.
template <class N>
auto level_of_power(const N &power) noexcept {
    return decibels(power, 1.0, 0.0);
}
template <class N>
auto power_of_level(const N &level) noexcept {
    return ratio_of_db(level, 1.0, 0.0);
}
template <class N>
auto dbm_from_w(const N &power_w) noexcept {
    return decibels(power_w, 1.0, 30.0);
}
template <class N>
auto w_from_dbm(const N &level_dbm) noexcept {
    return ratio_of_db(level_dbm, 1.0, -30.0);
}
template <class N>
auto dbw_from_mw(const N &power_mw) noexcept {
    return decibels(power_mw, 1.0, -30.0);
}
template <class N>
auto mw_from_dbw(const N &level_dbw) noexcept {
    return ratio_of_db(level_dbw, 1.0, 30.0);
}
template <class N>
auto dbm_from_dbw(const N &level_dbw) noexcept {
    return level_dbw + 30.0;
}
template <class N>
auto dbw_from_dbm(const N &level_dbm) noexcept {
    return level_dbm - 30.0;
}
template <class N>
auto mw_from_w(const N &power_w) noexcept {
    return 1000.0 * power_w;
}
template <class N>
auto w_from_mw(const N &power_mw) noexcept {
    return power_mw / 1000.0;
}

// Amplitudes (voltage, field strength) against their level, plain and over a millionth of the unit.
template <class N>
auto level_of_amplitude(const N &amplitude) noexcept {
    return decibels(amplitude, 2.0, 0.0);
}
template <class N>
auto amplitude_of_level(const N &level) noexcept {
    return ratio_of_db(level, 0.5, 0.0);
}
template <class N>
auto micro_level_of_amplitude(const N &amplitude) noexcept {
    return decibels(amplitude, 2.0, 120.0);
}
template <class N>
auto amplitude_of_micro_level(const N &level) noexcept {
    return ratio_of_db(level, 0.5, -120.0);
}

// A resistance joins voltage and power.
template <class V, class Z>
auto dbm_from_volts(const V &voltage_v, const Z &impedance_ohm) noexcept {
    return value((decibel_parts(voltage_v, 2.0) - decibel_parts(impedance_ohm, 1.0)) + Parts<double>{30.0, 0.0});
}
template <class L, class Z>
auto volts_from_dbm(const L &level_dbm, const Z &impedance_ohm) noexcept {
    return rooted_ratio_of_db(impedance_ohm, level_dbm, 0.5, -30.0);
}
template <class L, class Z>
auto dbuv_from_dbm(const L &level_dbm, const Z &impedance_ohm) noexcept {
    return sum_with(decibel_parts(impedance_ohm, 1.0) + Parts<double>{90.0, 0.0}, level_dbm);
}
template <class L, class Z>
auto dbm_from_dbuv(const L &level_dbuv, const Z &impedance_ohm) noexcept {
    return sum_with(decibel_parts(impedance_ohm, -1.0) - Parts<double>{90.0, 0.0}, level_dbuv);
}

// P = E^2 lambda^2 / (4 pi Z0) with Z0 = 4 pi 29.9792458 ohm, E in uV/m, f in MHz, P in mW:
// 20 log10(299.792458) - 10 log10((4 pi)^2 29.9792458) - 90.
inline constexpr Parts<double> isotropic_dbm_at_1_mhz{-0x1.34dd2c8c64000p+6, 0x1.a22286b6f97cap-42};

template <class E, class F>
auto isotropic_dbm_from_dbuv_per_m(const E &field_dbuv_per_m, const F &frequency_mhz) noexcept {
    return sum_with(decibel_parts(frequency_mhz, -2.0) + isotropic_dbm_at_1_mhz, field_dbuv_per_m);
}
template <class L, class F>
auto dbuv_per_m_from_isotropic_dbm(const L &level_dbm, const F &frequency_mhz) noexcept {
    return sum_with(decibel_parts(frequency_mhz, 2.0) - isotropic_dbm_at_1_mhz, level_dbm);
}

/// Level of two powers that are not coherent. Not a number in either gives none, but beside +infinity.
inline double power_sum_db(double a, double b) noexcept {
    const double high = a < b ? b : a;
    const double low = a < b ? a : b;
    if (low == -math::infinity || high == math::infinity) return high;
    return high + math::ten_log10_1p(math::power_of_db(low - high));
}

/// Loss of a combiner or splitter of equal ways, and an excess.
template <class W, class E>
auto combiner_loss_db(const W &ways, const E &excess_db) noexcept {
    return sum_with(decibel_parts(ways, 1.0), excess_db);
}

} // namespace lvb::units
