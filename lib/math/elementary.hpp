// Elementary functions. Every model takes them from here; none calls the platform's mathematics library.
#pragma once

#include "math/angle.hpp"
#include "math/constants.hpp"
#include "math/decibel.hpp"

#include <cmath>

namespace lvb::math {

// IEEE operations: correctly rounded on every machine, and instructions rather than calls.
inline double sqrt(double x) noexcept { return std::sqrt(x); }
inline double abs(double x) noexcept { return std::fabs(x); }
inline bool is_nan(double x) noexcept { return x != x; }

/// x^y for x > 0 and results of ordinary size. Relative error about 1e-16 (1 + |10 y log10 x|).
inline double power(double x, double y) noexcept { return power_of_db(y * ten_log10(x)); }

} // namespace lvb::math
