// Empirical indoor loss: log-distance, and both forms of ITU-R P.1238.
#pragma once

#include "math/elementary.hpp"

#include <cstdint>

namespace lvb::path {

/// Source: Rappaport, Wireless Communications, 4.9 (log-distance).
inline double log_distance_loss_db(double loss_at_1m_db, double exponent, double distance_m) noexcept {
    return loss_at_1m_db + exponent * math::ten_log10(distance_m);
}

/// Source: ITU-R P.1238-9, equation (1), without its floors.
inline double indoor_loss_db(double frequency_mhz, double distance_m, double power_loss_coefficient) noexcept {
    return (math::decibels(frequency_mhz, 2.0, -28.0)) + power_loss_coefficient * (math::ten_log10(distance_m) / 10.0);
}

/// Where a model holds.
struct Reach {
    double lowest_mhz, highest_mhz, nearest_m, farthest_m;
};

enum class Environment : std::int32_t {
    none,
    office_in_sight,
    office_out_of_sight,
    corridor_in_sight,
    corridor_out_of_sight,
    industrial_in_sight,
    industrial_out_of_sight
};
inline constexpr std::int32_t environments = 6;

/// A row of the site-general model: loss 10 distance log10(d) + offset_db + 10 frequency log10(f in GHz).
struct Site {
    double distance, offset_db, frequency, standard_deviation_db;
    Reach reach;
};
/// Source: ITU-R P.1238-11, table 2.
inline constexpr Site sites[environments] = {
    {1.46, 34.62, 2.03, 3.76, {300.0, 83500.0, 2.0, 27.0}},  {2.46, 29.53, 2.38, 5.04, {300.0, 82000.0, 4.0, 30.0}},
    {1.63, 28.12, 2.25, 4.07, {300.0, 83500.0, 2.0, 160.0}}, {2.77, 29.27, 2.48, 7.63, {625.0, 83500.0, 4.0, 94.0}},
    {2.31, 24.52, 2.06, 2.69, {625.0, 70280.0, 2.0, 101.0}}, {3.79, 21.01, 1.34, 9.05, {625.0, 70280.0, 5.0, 108.0}},
};
inline const Site &site_of(Environment environment) noexcept {
    return sites[static_cast<std::int32_t>(environment) - 1];
}

inline double site_general_loss_db(const Site &site, double frequency_mhz, double distance_m) noexcept {
    const double ghz_db = math::decibels(frequency_mhz, 1.0, -30.0);
    return (site.distance * math::ten_log10(distance_m) + site.offset_db) + site.frequency * ghz_db;
}

} // namespace lvb::path
