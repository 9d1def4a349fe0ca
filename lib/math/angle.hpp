// Kernel: cosine of degrees. Coefficients and error bounds: recipes/cosine.sollya.
#pragma once

#include "math/bits.hpp"

namespace lvb::math::LVB_KERNEL {

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

/// An angle less whole turns, about -180 to 180 degrees; exact up to 1e12 degrees, beyond which a binary64 no longer
/// tells one degree from the next few.
inline double less_turns(double angle_deg) noexcept {
    const double turns = (angle_deg / 360.0 + rounder) - rounder;
    return angle_deg - 360.0 * turns;
}

/// An angle folded into 0 to 180 degrees, where its cosine is the same; exact as less_turns.
inline double half_turn_of(double angle_deg) noexcept {
    const double rest = less_turns(angle_deg);
    const double size = rest < 0.0 ? -rest : rest;
    return size > 180.0 ? 360.0 - size : size; // cos(360 - t) = cos t
}

inline double cos_deg(double angle_deg) noexcept {
    const double half = half_turn_of(angle_deg);
    const double quarter = half > 90.0 ? 180.0 - half : half; // cos(180 - t) = -cos t
    const double value = quarter > 45.0 ? small_sine(90.0 - quarter) : small_cosine(quarter);
    return half > 90.0 ? -value : value;
}
inline double abs_sin_deg(double angle_deg) noexcept {
    const double half = half_turn_of(angle_deg);
    const double quarter = half > 90.0 ? 180.0 - half : half; // sin(180 - t) = sin t
    return quarter > 45.0 ? small_cosine(90.0 - quarter) : small_sine(quarter);
}
/// Whether the sine of an angle is negative.
inline bool sine_is_negative(double angle_deg) noexcept {
    const double rest = less_turns(angle_deg);
    return rest > 180.0 || (rest < 0.0 && rest >= -180.0);
}

} // namespace lvb::math::LVB_KERNEL
