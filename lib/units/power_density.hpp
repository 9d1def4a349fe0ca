// Power density of a radiated power. Source: ITU-R P.525. Written once, for a number and for a piece of a column.
#pragma once

#include "math/elementary.hpp"

namespace lvb::units {

/// The factor multiplies the power: what reflections add.
template <class P, class D>
auto power_density_w_per_m2(const P &eirp_dbm, const D &distance_m, double factor = 1.0) noexcept {
    return factor * math::ratio_of_db(eirp_dbm, 1.0, -30.0) / distance_m / (4.0 * math::pi) / distance_m;
}
inline double power_density_w_per_m2(double eirp_dbm, double distance_m, double factor = 1.0) noexcept {
    if (math::abs(eirp_dbm) <= math::ordinary_db)
        return power_density_w_per_m2<double, double>(eirp_dbm, distance_m, factor);
    // Far out a factor may leave the numbers though the result does not: the result's root is computed there.
    const double quarter = math::ratio_of_db(eirp_dbm, 0.25, -30.0); // the fourth root of the power
    const double root = quarter / distance_m * quarter;
    return factor * root / (4.0 * math::pi) * root;
}

} // namespace lvb::units
