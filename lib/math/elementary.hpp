// Elementary functions. Every model takes them from here; none calls the platform's mathematics library.
#pragma once

#include "math/column.hpp"
#include "math/constants.hpp"
#include "math/parts.hpp"
#include "math/square_root.hpp"

namespace lvb::math {

inline double abs(double x) noexcept { return x < 0.0 ? -x : x + 0.0; } // of -0 it is 0
inline bool is_nan(double x) noexcept { return x != x; }
using kernel::sqrt;

/// Levels up to this size are ordinary: their ratios, of powers as of amplitudes, are normal numbers with room around.
inline constexpr double ordinary_db = 3000.0;

/// Between them numbers are of middling size: products and quotients of three are normal numbers.
inline constexpr double least_middling = 1e-100, most_middling = 1e100;
inline bool is_middling(double x) noexcept { return x >= least_middling && x <= most_middling; }

/// scale 10 log10(x) + offset, for a scale of 1 or 2, perhaps negative, and a whole offset up to 1000; with scale 2
/// decibels of an amplitude ratio. 0 gives -infinity (times the scale's sign), below 0 NaN. Rounded once.
double decibels(double x, double scale, double offset) noexcept;

/// scale 10 log10(x) for x >= 0 in two parts that add up further.
Parts<double> decibel_parts(double x, double scale) noexcept;

/// The value of scale 10 log10(x) + more; where only x is a column, it is one loop.
template <class X, class Number>
auto decibel_sum(const X &x, double scale, const Parts<Number> &more) noexcept {
    return value(decibel_parts(x, scale) + more);
}
inline DecibelSum decibel_sum(const View &x, double scale, const Parts<double> &more) noexcept {
    return {x, scale, more.high, more.low};
}

inline double ten_log10(double x) noexcept { return decibels(x, 1.0, 0.0); }
inline double twenty_log10(double x) noexcept { return decibels(x, 2.0, 0.0); }

/// 10 log10(1 + x), accurate also for small x down to tiny ones. -1 gives -infinity, below it NaN. Error below 2 ULP.
double ten_log10_1p(double x) noexcept;

/// 10^(scale (db + offset) / 10), for a scale of 1, 1/2, 1/4 or 1/8, perhaps negative, and a whole offset up to 1000;
/// with scale 1/2 an amplitude ratio. Rounds once more below the normal numbers.
double ratio_of_db(double db, double scale, double offset) noexcept;

/// sqrt(x) 10^(scale (db + offset) / 10) of x > 0, rounded once, for the same scales and offsets.
double rooted_ratio_of_db(double x, double db, double scale, double offset) noexcept;

/// 10^(db / 10): the power ratio of decibels.
inline double power_of_db(double db) noexcept { return ratio_of_db(db, 1.0, 0.0); }

/// 10^(db / 10) - 1, accurate also for small db, down to tiny ones. Error below 3 ULP.
double power_of_db_m1(double db) noexcept;

/// Below it 10^(db / 10) - 1 is db ln(10) / 10, and 10 log10(1 + x) is 10 x / ln(10), to all digits. A product of
/// tiny numbers may be none, so the models take their own limits there.
inline constexpr double tiny = 0x1p-400;
inline constexpr double nepers_per_db = 0x1.d791c5f888822p-3; // of power: ln(10) / 10
inline constexpr double db_per_neper = 0x1.15f2ced384f29p+2;

/// 10^(db / 10) of finite decibels in two parts, the lower one at most 1 dB. Error below 1 ULP.
double power_of_db(const Parts<double> &db) noexcept;

/// Cosine of an angle in degrees up to 1e12, exact at every multiple of 90 degrees. Error below 1.5 ULP.
double cos_deg(double angle_deg) noexcept;

/// Magnitude of the sine of an angle in degrees up to 1e12, exact at every multiple of 90 degrees. Error below 1.5 ULP.
double abs_sin_deg(double angle_deg) noexcept;

/// Sine of an angle in degrees, as its magnitude.
double sin_deg(double angle_deg) noexcept;

/// Angle of a point from the x axis in degrees, -180 to 180; 0 of the origin, never -180. Coordinates up to 1e300 in
/// size. Error below 2.5 ULP.
double arctangent_deg(double y, double x) noexcept;

/// x^y for x > 0 and results of ordinary size. Relative error about 1e-16 (1 + |10 y log10 x|).
inline double power(double x, double y) noexcept { return power_of_db(y * ten_log10(x)); }

} // namespace lvb::math
