// Several receiving branches. Sources: Rappaport, Wireless Communications, 7.10 (selection, maximal ratio); Schwartz,
// Bennett and Stein, Communication Systems and Techniques, chapter 10 (two correlated branches).
#pragma once

namespace lvb::fading {

double selection_outage(double outage, double branches) noexcept;
double maximal_ratio_outage_below_mean(double margin_db, double branches) noexcept;
double correlated_selection_outage_below_mean(double margin_db, double correlation) noexcept;
double correlated_maximal_ratio_outage_below_mean(double margin_db, double correlation) noexcept;

} // namespace lvb::fading
