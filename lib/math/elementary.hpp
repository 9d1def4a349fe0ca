// Elementary functions. Every model takes them from here; none calls the platform's mathematics library.
#pragma once

#include "math/column.hpp"
#include "math/constants.hpp"
#include "math/parts.hpp"

#include <cmath>

namespace lvb::math {

// IEEE operations: correctly rounded on every machine, and instructions rather than calls.
inline double sqrt(double x) noexcept {
#if defined(__GNUC__)
    return __builtin_sqrt(x); // gcc makes std::sqrt a call where it does not optimize
#else
    return std::sqrt(x);
#endif
}
inline double abs(double x) noexcept { return std::fabs(x); }
inline bool is_nan(double x) noexcept { return x != x; }

/// scale 10 log10(x) + offset, for a scale that is a power of two, perhaps negative; with scale 2 decibels of an
/// amplitude ratio. 0 gives -infinity (times the scale's sign), below 0 NaN. The logarithm's error is below 0.75 ULP.
double decibels(double x, double scale, double offset) noexcept;

/// scale 10 log10(x) for x >= 0 in two parts that add up further.
Parts<double> decibel_parts(double x, double scale) noexcept;

inline double ten_log10(double x) noexcept { return decibels(x, 1.0, 0.0); }
inline double twenty_log10(double x) noexcept { return decibels(x, 2.0, 0.0); }

/// 10 log10(1 + x), accurate also for small x. -1 gives -infinity, below it NaN. Error below 2 ULP.
double ten_log10_1p(double x) noexcept;

/// 10^(db / 10): the power ratio of decibels. Error below 0.9 ULP; rounds once below the normal numbers.
double power_of_db(double db) noexcept;

/// 10^(scale (db + offset) / 10), for a scale that is a power of two, perhaps negative; with scale 1/2 an amplitude
/// ratio.
inline double ratio_of_db(double db, double scale, double offset) noexcept {
    return power_of_db(scale * (db + offset));
}
inline double amplitude_of_db(double db) noexcept { return power_of_db(0.5 * db); }

/// 10^(db / 10) - 1, accurate also for small db. Error below 3 ULP.
double power_of_db_m1(double db) noexcept;

/// Cosine of an angle in degrees up to 1e12, exact at every multiple of 90 degrees. Error below 1.5 ULP.
double cos_deg(double angle_deg) noexcept;

/// Magnitude of the sine of an angle in degrees up to 1e12, exact at every multiple of 90 degrees. Error below 1.5 ULP.
double abs_sin_deg(double angle_deg) noexcept;

/// x^y for x > 0 and results of ordinary size. Relative error about 1e-16 (1 + |10 y log10 x|).
inline double power(double x, double y) noexcept { return power_of_db(y * ten_log10(x)); }

} // namespace lvb::math
