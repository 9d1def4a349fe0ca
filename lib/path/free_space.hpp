// Free space. Source: ITU-R P.525.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::path {

// 20 log10(4 pi / 299.792458): loss at 1 MHz and 1 m.
inline constexpr double loss_db_at_1_mhz_1_m = -27.55221677811662619;
// 10 log10(29.9792458) + 90: field strength in dBuV/m of 1 mW e.i.r.p. at 1 m.
inline constexpr double field_dbuv_per_m_at_1_mw_1_m = 104.76820702927927554;

inline double free_space_loss_db(double frequency_mhz, double distance_m) noexcept {
    return math::twenty_log10(distance_m) + math::twenty_log10(frequency_mhz) + loss_db_at_1_mhz_1_m;
}
inline double free_space_distance_m(double frequency_mhz, double loss_db) noexcept {
    return math::amplitude_of_db(loss_db - loss_db_at_1_mhz_1_m) / frequency_mhz;
}
inline double field_strength_dbuv_per_m(double eirp_dbm, double distance_m) noexcept {
    return eirp_dbm - math::twenty_log10(distance_m) + field_dbuv_per_m_at_1_mw_1_m;
}
inline double eirp_dbm_from_field_strength(double field_dbuv_per_m, double distance_m) noexcept {
    return field_dbuv_per_m + math::twenty_log10(distance_m) - field_dbuv_per_m_at_1_mw_1_m;
}
inline double power_density_w_per_m2(double eirp_dbm, double distance_m) noexcept {
    return math::power_of_db(eirp_dbm - 30.0) / distance_m / (4.0 * math::pi) / distance_m;
}
inline double far_field_distance_m(double frequency_mhz, double aperture_m) noexcept {
    return 2.0 * aperture_m * (aperture_m / units::light_m_mhz) * frequency_mhz;
}

} // namespace lvb::path
