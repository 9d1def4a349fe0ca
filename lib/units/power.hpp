// Power, voltage and field levels. Source of the definitions: IEC 60027-3, ITU-R V.574, ITU-R P.525.
#pragma once

#include "math/elementary.hpp"

namespace lvb::units {

using math::amplitude_of_db;
using math::power_of_db;
using math::ten_log10;
using math::twenty_log10;

inline double dbm_from_mw(double power_mw) noexcept { return ten_log10(power_mw); }
inline double mw_from_dbm(double level_dbm) noexcept { return power_of_db(level_dbm); }
inline double dbm_from_w(double power_w) noexcept { return ten_log10(power_w) + 30.0; }
inline double w_from_dbm(double level_dbm) noexcept { return power_of_db(level_dbm - 30.0); }
inline double dbw_from_w(double power_w) noexcept { return ten_log10(power_w); }
inline double w_from_dbw(double level_dbw) noexcept { return power_of_db(level_dbw); }
inline double dbw_from_mw(double power_mw) noexcept { return ten_log10(power_mw) - 30.0; }
inline double mw_from_dbw(double level_dbw) noexcept { return power_of_db(level_dbw + 30.0); }
inline double dbm_from_dbw(double level_dbw) noexcept { return level_dbw + 30.0; }
inline double dbw_from_dbm(double level_dbm) noexcept { return level_dbm - 30.0; }
inline double mw_from_w(double power_w) noexcept { return 1000.0 * power_w; }
inline double w_from_mw(double power_mw) noexcept { return power_mw / 1000.0; }

inline double dbm_from_volts(double voltage_v, double impedance_ohm) noexcept {
    return twenty_log10(voltage_v) - ten_log10(impedance_ohm) + 30.0;
}
inline double volts_from_dbm(double level_dbm, double impedance_ohm) noexcept {
    return math::sqrt(impedance_ohm) * amplitude_of_db(level_dbm - 30.0);
}
inline double db_micro_from_unit(double amplitude) noexcept { return twenty_log10(amplitude) + 120.0; }
inline double unit_from_db_micro(double level) noexcept { return amplitude_of_db(level - 120.0); }
inline double dbuv_from_dbm(double level_dbm, double impedance_ohm) noexcept {
    return level_dbm + ten_log10(impedance_ohm) + 90.0;
}
inline double dbm_from_dbuv(double level_dbuv, double impedance_ohm) noexcept {
    return level_dbuv - ten_log10(impedance_ohm) - 90.0;
}

// P = E^2 lambda^2 / (4 pi Z0) with Z0 = 4 pi 29.9792458 ohm, E in uV/m, f in MHz, P in mW:
// 20 log10(299.792458) - 10 log10((4 pi)^2 29.9792458) - 90.
inline constexpr double isotropic_dbm_at_1_mhz = -77.21599025116264935;

inline double isotropic_dbm_from_dbuv_per_m(double field_dbuv_per_m, double frequency_mhz) noexcept {
    return field_dbuv_per_m - twenty_log10(frequency_mhz) + isotropic_dbm_at_1_mhz;
}
inline double dbuv_per_m_from_isotropic_dbm(double level_dbm, double frequency_mhz) noexcept {
    return level_dbm + twenty_log10(frequency_mhz) - isotropic_dbm_at_1_mhz;
}

} // namespace lvb::units
