// Free space written anew, in long double, from ITU-R P.525 and IEEE Std 145.
#pragma once

#include "units/long_math.hpp"

namespace proof::path_oracle {

inline const std::vector<Oracle> rows = {
    // 20 log10(4 pi d / lambda)
    {"lvb_free_space_loss_db", [](const Reals &x) { return 20.0L * log10l(4.0L * pi * x[1] * x[0] / light); }},
    {"lvb_free_space_distance_m", [](const Reals &x) { return ten_to(x[1] / 20.0L) * light / (4.0L * pi * x[0]); }},
    // E^2 / Z0 = p / (4 pi d^2) with Z0 = 4 pi 29.9792458 ohm
    {"lvb_field_strength_dbuv_per_m",
     [](const Reals &x) { return x[0] - 30.0L + 10.0L * log10l(29.9792458L / power2(x[1])) + 120.0L; }},
    {"lvb_eirp_dbm_from_field_strength",
     [](const Reals &x) { return x[0] - 120.0L + 10.0L * log10l(power2(x[1]) / 29.9792458L) + 30.0L; }},
    {"lvb_power_density_w_per_m2",
     [](const Reals &x) { return ten_to((x[0] - 30.0L) / 10.0L) / (4.0L * pi * power2(x[1])); }},
    {"lvb_far_field_distance_m", [](const Reals &x) { return 2.0L * power2(x[1]) / (light / x[0]); }},
};

} // namespace proof::path_oracle
