// Exposure to radiated power. Sources: ITU-R P.525 (power density, see units/power_density.hpp), 47 CFR 1.1310 and
// ICNIRP 2020 (limits).
#pragma once

#include "math/elementary.hpp"

namespace lvb::limits {

/// Where a radiated power has fallen to a limit of power density.
inline double exposure_distance_m(double eirp_dbm, double limit_w_per_m2, double reflection_factor) noexcept {
    constexpr double ordinary_dbm = 1000.0, smallest = 1e-150, largest = 1e150; // their quotient is a number
    const double share = reflection_factor / (4.0 * math::pi);
    if (math::abs(eirp_dbm) <= ordinary_dbm && limit_w_per_m2 >= smallest && limit_w_per_m2 <= largest)
        return math::sqrt(math::ratio_of_db(eirp_dbm, 1.0, -30.0) / limit_w_per_m2 * share);
    const double quarter = math::ratio_of_db(eirp_dbm, 0.25, -30.0); // as in the power density, far out
    return quarter / math::sqrt(limit_w_per_m2) * math::sqrt(share) * quarter;
}

/// Between its corners a limit grows with the frequency; outside it is flat.
struct ExposureRule {
    double first_corner_mhz, second_corner_mhz, highest_mhz;
};
inline constexpr double lowest_exposure_mhz = 30.0;
inline constexpr ExposureRule cfr_1_1310{300.0, 1500.0, 100000.0};
inline constexpr ExposureRule icnirp_2020{400.0, 2000.0, 300000.0};

/// 2 W/m2 up to the first corner for the general public, five times that for people at work.
inline double exposure_limit_w_per_m2(const ExposureRule &rule, bool at_work, double frequency_mhz) noexcept {
    const double f = frequency_mhz < rule.first_corner_mhz    ? rule.first_corner_mhz
                     : frequency_mhz > rule.second_corner_mhz ? rule.second_corner_mhz
                                                              : frequency_mhz;
    return f / (rule.first_corner_mhz / (at_work ? 10.0 : 2.0));
}

} // namespace lvb::limits
