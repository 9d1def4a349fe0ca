// Kernel: the arc tangent in degrees. Coefficients and error bound: recipes/arctangent.sollya.
#pragma once

#include "math/kernel_namespace.hpp"

namespace lvb::math::LVB_KERNEL {

/// Up to tan(22.5 degrees) in size.
inline double small_arctangent_deg(double t) noexcept {
    const double z = t * t;
    const double z2 = z * z;
    const double z4 = z2 * z2;
    const double low =
        (-0x1.3193d66ed2bfap4 + z * 0x1.6eb167b82fc3dp3) + z2 * (-0x1.05ec6ea7d3982p3 + z * 0x1.976fc85afc32dp2);
    const double middle =
        (-0x1.4d5b6b0b082f7p2 + z * 0x1.1a112ba93dcbcp2) + z2 * (-0x1.e8c4cf10379eap1 + z * 0x1.ada6e12e5d2afp1);
    const double high = (-0x1.75136d8814cabp1 + z * 0x1.2009b6752c793p1) + z2 * -0x1.1a05fff8d7f05p0;
    const double rest = z * (low + z4 * (middle + z4 * high)) + -0x1.1e7ab456405f9p-49;
    return t * 0x1.ca5dc1a63c1f8p5 + t * rest;
}

/// Of a point whose coordinates are not both zero and at most 1e300 in size: -180 to 180 degrees.
inline double arctangent_deg(double y, double x) noexcept {
    const double height = y < 0.0 ? -y : y;
    const double width = x < 0.0 ? -x : x;
    const bool steep = height > width;
    const double small = steep ? width : height;
    const double large = steep ? height : width;
    // beyond 22.5 degrees: 45 + atan((q - 1) / (q + 1)), q = small / large
    const bool upper = small > 0x1.a827999fcef32p-2 * large;
    const double t = upper ? (small - large) / (small + large) : small / large;
    // a tiny quotient may be no normal number though its degrees are
    const bool tiny = !upper && t < 0x1p-900;
    const double low = tiny ? small * 0x1.ca5dc1a63c1f8p5 / large : small_arctangent_deg(t);
    const double eighth = upper ? 45.0 + low : low;
    const double quarter = steep ? 90.0 - eighth : eighth;
    const double half = x < 0.0 ? 180.0 - quarter : quarter;
    return y < 0.0 ? -half : half;
}

} // namespace lvb::math::LVB_KERNEL
