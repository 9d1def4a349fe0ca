// Noise figure, noise temperature and thermal noise. Sources: IEEE (T0 = 290 K), SI Brochure (k), ITU-R P.372.
#pragma once

#include "math/elementary.hpp"
#include "units/power.hpp"

namespace lvb::noise {

inline constexpr double reference_temperature_k = 290.0;
// 10 log10(1.380649e-23 * 1e6) + 30: thermal noise in dBm of 1 MHz at 1 K.
inline constexpr math::Parts<double> dbm_at_1_mhz_1_k{-0x1.1532c60a2ba00p+7, 0x1.8012b20694d19p-40};

inline double temperature_k_from_figure_db(double noise_figure_db) noexcept {
    if (noise_figure_db < math::tiny) return reference_temperature_k * math::nepers_per_db * math::abs(noise_figure_db);
    return reference_temperature_k * math::power_of_db_m1(noise_figure_db);
}
inline double figure_db_from_temperature_k(double noise_temperature_k) noexcept {
    if (noise_temperature_k < math::tiny)
        return math::db_per_neper / reference_temperature_k * math::abs(noise_temperature_k);
    return math::ten_log10_1p(noise_temperature_k / reference_temperature_k);
}
template <class B, class T>
auto thermal_noise_dbm(const B &bandwidth_mhz, const T &temperature_k) noexcept {
    using math::decibel_parts;
    return value((decibel_parts(bandwidth_mhz, 1.0) + decibel_parts(temperature_k, 1.0)) + dbm_at_1_mhz_1_k);
}
/// No bandwidth at an infinite temperature, or none of it in an infinite bandwidth, has no level.
inline double thermal_noise_dbm(double bandwidth_mhz, double temperature_k) noexcept {
    const double level = thermal_noise_dbm<double, double>(bandwidth_mhz, temperature_k);
    return math::is_nan(level) ? math::not_a_number : level; // the processor's own has a sign of its choice
}
inline double sensitivity_dbm(double bandwidth_mhz, double noise_figure_db, double carrier_to_noise_db) noexcept {
    return thermal_noise_dbm(bandwidth_mhz, reference_temperature_k) + (noise_figure_db + carrier_to_noise_db);
}

/// Noise temperatures also count in dB over T0, so that those of long chains neither overflow nor vanish.
inline double over_reference_db(double temperature_k) noexcept {
    return math::ten_log10(temperature_k) - math::ten_log10(reference_temperature_k);
}
/// 10 log10(10^(db / 10) - 1): the noise temperature over T0 that a figure stands for. The 1 is lost beyond 160 dB.
inline double excess_db(double db) noexcept { return db > 200.0 ? db : math::ten_log10(math::power_of_db_m1(db)); }
/// Noise temperature over T0, at its input, of a matched loss at a physical temperature.
inline double passive_noise_db(double loss_db, double temperature_k) noexcept {
    return excess_db(loss_db) + over_reference_db(temperature_k);
}
inline double passive_figure_db(double loss_db, double temperature_k) noexcept {
    const double hotter = temperature_k / reference_temperature_k;
    if (loss_db < math::tiny) { // of any temperature a multiple of the loss, unless that grows out of it
        const double figure_db = math::abs(loss_db) * hotter;
        return figure_db < math::tiny ? figure_db : math::ten_log10_1p(math::nepers_per_db * figure_db);
    }
    const double excess = math::power_of_db_m1(loss_db);
    const double x = temperature_k > 1.0 ? excess * hotter : excess * temperature_k / reference_temperature_k;
    if (x == math::infinity) return units::power_sum_db(0.0, passive_noise_db(loss_db, temperature_k));
    if (x < math::tiny) return math::db_per_neper * excess * temperature_k / reference_temperature_k;
    return math::ten_log10_1p(x);
}

} // namespace lvb::noise
