// Constants that the kernels share.
#pragma once

#include "math/arithmetic.hpp"

#include <limits>

namespace lvb::math {

inline constexpr double infinity = std::numeric_limits<double>::infinity();
inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
inline constexpr double pi = 3.141592653589793238;

} // namespace lvb::math
