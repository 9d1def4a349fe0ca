// Elementary functions in the forms that work in decibels needs. Every model takes them from here, so that the
// platform's mathematics library is called in this one place.
#pragma once

#include <cmath>
#include <limits>

#if defined(__FAST_MATH__)
#error "levelbook: fast-math changes results; it is not allowed in library files"
#endif

namespace lvb::math {

inline constexpr double infinity = std::numeric_limits<double>::infinity();
inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
inline constexpr double ln10 = 2.302585092994045684;
inline constexpr double pi = 3.141592653589793238;

inline double sqrt(double x) noexcept { return std::sqrt(x); }
inline double abs(double x) noexcept { return std::fabs(x); }
inline bool is_nan(double x) noexcept { return x != x; }

/// 10 log10(x) and 20 log10(x): decibels of a power ratio and of an amplitude ratio.
inline double ten_log10(double x) noexcept { return 10.0 * std::log10(x); }
inline double twenty_log10(double x) noexcept { return 20.0 * std::log10(x); }

/// 10^(db / 10) and 10^(db / 20): the power ratio and the amplitude ratio of decibels.
inline double power_of_db(double db) noexcept { return std::pow(10.0, db / 10.0); }
inline double amplitude_of_db(double db) noexcept { return std::pow(10.0, db / 20.0); }

/// 10 log10(1 + x), and 10^(db / 10) - 1, both accurate for small arguments.
inline double ten_log10_1p(double x) noexcept { return (10.0 / ln10) * std::log1p(x); }
inline double power_of_db_m1(double db) noexcept { return std::expm1(db * (ln10 / 10.0)); }

/// x^y for x > 0.
inline double power(double x, double y) noexcept { return std::pow(x, y); }

/// Cosine of an angle in degrees, exact at every multiple of 90 degrees.
inline double cos_deg(double angle_deg) noexcept {
    const double turn = std::fabs(std::fmod(angle_deg, 360.0)); // exact: fmod does not round
    const double half = turn > 180.0 ? 360.0 - turn : turn;     // cos(360 - t) = cos t
    if (half > 90.0) return half == 180.0 ? -1.0 : -std::sin((half - 90.0) * (pi / 180.0));
    return half > 45.0 ? std::sin((90.0 - half) * (pi / 180.0)) : std::cos(half * (pi / 180.0));
}

/// Magnitude of the sine of an angle in degrees, exact at every multiple of 90 degrees.
inline double abs_sin_deg(double angle_deg) noexcept {
    const double turn = std::fabs(std::fmod(angle_deg, 180.0)); // exact, and |sin| repeats every half turn
    const double quarter = turn > 90.0 ? 180.0 - turn : turn;
    return quarter > 45.0 ? std::cos((90.0 - quarter) * (pi / 180.0)) : std::sin(quarter * (pi / 180.0));
}

} // namespace lvb::math
