// What the oracles share: long double constants and the few functions that need care.
#pragma once

#include <cfloat>
#include <cmath>
#include <vector>

namespace proof {

static_assert(LDBL_MANT_DIG >= 64, "the oracles need a long double that is longer than a double");

using Reals = std::vector<long double>;

struct Oracle {
    const char *function;
    long double (*value)(const Reals &arguments);
};

inline constexpr long double pi = 3.14159265358979323846264338327950288L;
inline constexpr long double ln10 = 2.30258509299404568401799145468436421L;
inline constexpr long double light = 299.792458L; // metres times MHz

inline long double ten_to(long double x) { return powl(10.0L, x); }
inline long double power2(long double x) { return x * x; }

/// Cosine and sine of degrees: reduced exactly to a quarter turn before any rounding.
inline long double cos_of_degrees(long double degrees) {
    const long double from_axis = fabsl(remainderl(degrees, 360.0L)); // 0 to 180
    return from_axis > 45.0L && from_axis < 135.0L ? sinl((90.0L - from_axis) * (pi / 180.0L))
           : from_axis <= 45.0L                    ? cosl(from_axis * (pi / 180.0L))
                                                   : -cosl((180.0L - from_axis) * (pi / 180.0L));
}
inline long double sin_of_degrees(long double degrees) {
    const long double part = remainderl(degrees, 360.0L); // -180 to 180
    const long double size = fabsl(part) > 90.0L ? 180.0L - fabsl(part) : fabsl(part);
    return copysignl(size > 45.0L ? cosl((90.0L - size) * (pi / 180.0L)) : sinl(size * (pi / 180.0L)), part);
}

} // namespace proof
