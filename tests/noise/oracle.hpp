// Noise written anew, in long double, from IEEE Std 100 (T0 = 290 K) and the SI Brochure (k).
#pragma once

#include "units/long_math.hpp"

namespace proof::noise_oracle {

inline const std::vector<Oracle> rows = {
    {"lvb_noise_temperature_k_from_noise_figure_db", // 290 (10^(x/10) - 1) without cancelling
     [](const Reals &x) { return 290.0L * expm1l(x[0] * ln10 / 10.0L); }},
    {"lvb_noise_figure_db_from_noise_temperature_k",
     [](const Reals &x) { return 10.0L * log10l(1.0L + x[0] / 290.0L); }},
    {"lvb_thermal_noise_dbm",
     [](const Reals &x) { return 10.0L * log10l(1.380649e-23L * x[1] * x[0] * 1e6L / 1e-3L); }},
};

} // namespace proof::noise_oracle
