// Median external noise over k T0 B. Source: ITU-R P.372, Fam = c - d log10(f), each within its range of frequency.
#pragma once

#include "math/elementary.hpp"

namespace lvb::noise {

inline double external_figure_db(double c, double d, double frequency_mhz) noexcept {
    return c - d / 10.0 * math::ten_log10(frequency_mhz);
}
inline double city_figure_db(double frequency_mhz) noexcept { return external_figure_db(76.8, 27.7, frequency_mhz); }
inline double residential_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(72.5, 27.7, frequency_mhz);
}
inline double rural_figure_db(double frequency_mhz) noexcept { return external_figure_db(67.2, 27.7, frequency_mhz); }
inline double quiet_rural_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(53.6, 28.6, frequency_mhz);
}
inline double business_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(44.3, 12.3, frequency_mhz);
}
inline double galactic_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(52.0, 23.0, frequency_mhz);
}

} // namespace lvb::noise
