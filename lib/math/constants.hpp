// Constants that the kernels share.
#pragma once

#include <limits>

#if defined(__FAST_MATH__)
#error "levelbook: fast-math changes results; it is not allowed in library files"
#endif

namespace lvb::math {

inline constexpr double infinity = std::numeric_limits<double>::infinity();
inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
inline constexpr double pi = 3.141592653589793238;

} // namespace lvb::math
