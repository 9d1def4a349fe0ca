// Shadowing: levels in decibels that are normally distributed, with and without Rayleigh fading on top. Sources:
// Rappaport, Wireless Communications, 4.9 (log-normal shadowing, share of the area); Suzuki, A Statistical Model for
// Urban Radio Propagation.
#pragma once

namespace lvb::fading {

double lognormal_outage_below_median(double margin_db, double standard_deviation_db) noexcept;
double lognormal_margin_below_median_db(double outage, double standard_deviation_db) noexcept;
double suzuki_outage_below_median_of_means(double margin_db, double standard_deviation_db) noexcept;
double suzuki_margin_below_median_of_means_db(double outage, double standard_deviation_db) noexcept;
double area_coverage(double edge_coverage, double standard_deviation_db, double path_loss_exponent) noexcept;

} // namespace lvb::fading
