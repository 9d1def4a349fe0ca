// What follows from an antenna's size.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::antenna {

template <class F, class A>
auto far_field_distance_m(const F &frequency_mhz, const A &aperture_m) noexcept {
    return 2.0 * aperture_m * (aperture_m / units::light_m_mhz) * frequency_mhz;
}
inline double far_field_distance_m(double frequency_mhz, double aperture_m) noexcept {
    if (math::is_middling(frequency_mhz) && math::is_middling(aperture_m))
        return far_field_distance_m<double, double>(frequency_mhz, aperture_m);
    constexpr double factor_root = 0x1.4e8d8087f2f16p-4; // sqrt(2 / 299.792458)
    const double root = factor_root * math::sqrt(frequency_mhz) * aperture_m;
    return root * root;
}

} // namespace lvb::antenna
