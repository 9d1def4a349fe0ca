// Fading by many paths: Rayleigh, Rice, Nakagami. Sources: Rappaport, Wireless Communications, 5.6 (Rayleigh, Rice);
// Proakis, Digital Communications, 2.1 (Marcum's function, Nakagami).
#pragma once

#include "math/special.hpp"

namespace lvb::fading {

double rayleigh_outage_below_mean(double margin_db) noexcept;
double rayleigh_margin_below_mean_db(double outage) noexcept;
double rayleigh_outage_below_median(double margin_db) noexcept;
double rayleigh_margin_below_median_db(double outage) noexcept;
double rice_outage_below_mean(double margin_db, double k_db) noexcept;
double rice_margin_below_mean_db(double outage, double k_db) noexcept;
double nakagami_outage_below_mean(double margin_db, double shape) noexcept;
double nakagami_margin_below_mean_db(double outage, double shape) noexcept;

} // namespace lvb::fading
