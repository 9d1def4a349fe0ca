// Polarization loss. Source: Balanis, Antenna Theory, 2.12.
#pragma once

#include "math/elementary.hpp"

namespace lvb::antenna {

/// Loss of a received fraction; the fraction is never above 1, and exactly 0 gives +infinity.
inline double loss_db_of_fraction(double fraction) noexcept {
    return 0.0 - math::ten_log10(fraction < 1.0 ? fraction : 1.0);
}
inline double linear_loss_db(double angle_deg) noexcept {
    return 0.0 - math::twenty_log10(math::abs(math::cos_deg(angle_deg)));
}
inline double linear_to_elliptical_loss_db(double axial_ratio_db, double angle_deg) noexcept {
    const double minor = math::power_of_db(-axial_ratio_db); // 1 / R^2: 1 circular, 0 linear
    const double c = math::cos_deg(angle_deg);
    if (c == 0.0) return axial_ratio_db + math::ten_log10_1p(minor); // also where the minor axis vanishes
    return loss_db_of_fraction((c * c + minor * (1.0 - c * c)) / (1.0 + minor));
}
inline double elliptical_loss_db(double ellipticity_1, double ellipticity_2, double angle_deg) noexcept {
    // Half sum and half difference of the two ellipses' senses, each a sum of squares: nothing cancels, and
    // orthogonal ellipses give an exact zero.
    const double c = math::cos_deg(angle_deg);
    const double s = math::abs_sin_deg(angle_deg);
    const double product = ellipticity_1 * ellipticity_2;
    const double size_1 = math::abs(ellipticity_1);
    const double one_plus_product =
        product < 0.0 ? (1.0 - size_1) + size_1 * (1.0 - math::abs(ellipticity_2)) : 1.0 + product;
    const double along = c * one_plus_product;
    const double across = s * (ellipticity_1 + ellipticity_2);
    // The square of a tiny part would vanish. Both ellipses are next to linear then: their norm is 1.
    if (along == 0.0 && math::abs(across) < math::tiny) return 0.0 - math::twenty_log10(math::abs(across));
    const double norm = (1.0 + ellipticity_1 * ellipticity_1) * (1.0 + ellipticity_2 * ellipticity_2);
    return loss_db_of_fraction((along * along + across * across) / norm);
}
template <class N>
auto ellipticity_from_axial_ratio_db(const N &axial_ratio_db) noexcept {
    using math::ratio_of_db;
    return ratio_of_db(axial_ratio_db, -0.5, 0.0);
}
inline double axial_ratio_db_from_ellipticity(double ellipticity) noexcept {
    return 0.0 - math::twenty_log10(math::abs(ellipticity));
}
inline double cross_polar_discrimination_db(double axial_ratio_db) noexcept {
    // (R + 1) / (R - 1) is 1 + 2 / (R - 1); of +0, not -0
    const double ratio_db = math::abs(axial_ratio_db);
    if (ratio_db < math::tiny) return math::twenty_log10(4.0 / math::nepers_per_db) - math::twenty_log10(ratio_db);
    if (ratio_db > math::ordinary_db) {
        const double root = math::ratio_of_db(-ratio_db, 0.25, 0.0);
        return 4.0 * math::db_per_neper * root * root;
    }
    return 2.0 * math::ten_log10_1p(2.0 / math::power_of_db_m1(ratio_db / 2.0));
}

} // namespace lvb::antenna
