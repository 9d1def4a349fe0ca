// Kernel: arctangent in degrees. Coefficients and error bound: recipes/arctangent.sollya.
#pragma once

#include "math/bits.hpp"

namespace lvb::math::LVB_KERNEL {

/// Of -tan 22.5 degrees to tan 22.5 degrees.
inline double small_arctangent(double t) noexcept {
    const double z = t * t;
    const double z2 = z * z;
    const double low =
        (-0x1.3193d66ed2d4bp4 + z * 0x1.6eb167b84d631p3) + z2 * (-0x1.05ec6eb1976f5p3 + z * 0x1.976fcbfec498p2);
    const double middle =
        (-0x1.4d5bd72fc8247p2 + z * 0x1.1a196980784a3p2) + z2 * (-0x1.e99da16e81a4fp1 + z * 0x1.b53594b1a4455p1);
    const double high =
        (-0x1.a225ee320e3c2p1 + z * 0x1.cbf60c0e158afp1) + z2 * (-0x1.0406043252422p2 + z * 0x1.6f3927bc51626p1);
    const double z4 = z2 * z2;
    return t * (0x1.ca5dc1a63c1f8p5 + z * (low + z4 * (middle + z4 * high)));
}

/// Angle of the point (x, y), both 0 or more and not both 0, from the x axis: 0 to 90 degrees.
inline double quarter_angle_deg(double y, double x) noexcept {
    constexpr double tangent_of_22_5_deg = 0x1.a827999fcef32p-2;
    double base = 0.0, rise = y, run = x;
    if (x <= tangent_of_22_5_deg * y) { // from the y axis, backwards
        base = 90.0;
        rise = -x;
        run = y;
    } else if (y > tangent_of_22_5_deg * x) { // from the bisector
        base = 45.0;
        rise = y - x;
        run = y + x;
    }
    return base + small_arctangent(rise / run);
}

} // namespace lvb::math::LVB_KERNEL
