// Median external noise over k T0 B. Source: ITU-R P.372, Fam = c - d log10(f), each within its range of frequency.
#pragma once

#include "math/elementary.hpp"

namespace lvb::noise {

/// c and d in whole tenths, so that the logarithm's high part and c are multiplied and added exactly.
inline double external_figure_db(double tenths_c, double tenths_d, double frequency_mhz) noexcept {
    const math::Parts<double> ten_log = math::decibel_parts(frequency_mhz, 1.0);
    return ((10.0 * tenths_c - tenths_d * ten_log.high) - tenths_d * ten_log.low) / 100.0;
}
inline double city_figure_db(double frequency_mhz) noexcept { return external_figure_db(768.0, 277.0, frequency_mhz); }
inline double residential_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(725.0, 277.0, frequency_mhz);
}
inline double rural_figure_db(double frequency_mhz) noexcept { return external_figure_db(672.0, 277.0, frequency_mhz); }
inline double quiet_rural_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(536.0, 286.0, frequency_mhz);
}
inline double business_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(443.0, 123.0, frequency_mhz);
}
inline double galactic_figure_db(double frequency_mhz) noexcept {
    return external_figure_db(520.0, 230.0, frequency_mhz);
}

} // namespace lvb::noise
