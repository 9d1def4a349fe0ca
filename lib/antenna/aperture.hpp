// What follows from an antenna's size.
#pragma once

#include "units/length.hpp"

namespace lvb::antenna {

template <class F, class A>
auto far_field_distance_m(const F &frequency_mhz, const A &aperture_m) noexcept {
    return 2.0 * aperture_m * (aperture_m / units::light_m_mhz) * frequency_mhz;
}

} // namespace lvb::antenna
