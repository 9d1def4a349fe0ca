// Kernel: cosine of degrees. Coefficients and error bounds: recipes/cosine.sollya.
#pragma once

#include "math/bits.hpp"

namespace lvb::math::kernel {

/// On 0 to 45 degrees.
inline double small_cosine(double d) noexcept {
    const double z = d * d;
    const double z2 = z * z;
    const double low = -0x1.3f6a1db141fbap-13 + z * 0x1.09b116a83dd51p-28;
    const double middle = -0x1.619b85bbe2eap-45 + z * 0x1.f83ab5ef24f87p-63;
    const double high = (-0x1.bf62614da5fe5p-81 + z * 0x1.0eb105f3b023fp-99) + z2 * -0x1.dfd34533337b3p-119;
    return 1.0 + z * (low + z2 * (middle + z2 * high));
}
inline double small_sine(double d) noexcept {
    const double z = d * d;
    const double z2 = z * z;
    const double low = -0x1.dbb820d942f4p-21 + z * 0x1.dad94eae0badcp-37;
    const double middle = -0x1.c368d9f40a0fep-54 + z * 0x1.f4a5fc601161ap-72;
    const double high = -0x1.6b6b59262c1a2p-90 + z * 0x1.701680e74945bp-109;
    return d * (0x1.1df46a2529d39p-6 + z * (low + z2 * (middle + z2 * high)));
}

/// Cosine of an angle in degrees, exact at every multiple of 90 degrees; for angles up to 1e12 degrees, beyond which a
/// binary64 no longer tells one degree from the next few. Error below 1.5 ULP.
inline double cos_deg(double angle_deg) noexcept {
    const double turns = (angle_deg / 360.0 + rounder) - rounder;
    const double rest = angle_deg - 360.0 * turns; // exact
    const double size = rest < 0.0 ? -rest : rest;
    const double half_turn = size > 180.0 ? 360.0 - size : size;             // cos(360 - t) = cos t
    const double quarter = half_turn > 90.0 ? 180.0 - half_turn : half_turn; // cos(180 - t) = -cos t
    const double cosine = small_cosine(quarter);
    const double sine = small_sine(90.0 - quarter);
    const double value = quarter > 45.0 ? sine : cosine;
    return half_turn > 90.0 ? -value : value;
}

} // namespace lvb::math::kernel
