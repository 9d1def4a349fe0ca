// The square root: an IEEE operation, correctly rounded on every machine. The builtin stays an instruction also where
// nothing is optimized; a call would import the platform's mathematics library.
#pragma once

#include "math/kernel_namespace.hpp"

#if !defined(__GNUC__)
#include <cmath>
#endif

namespace lvb::math::LVB_KERNEL {

inline double sqrt(double x) noexcept {
#if defined(__GNUC__)
    return __builtin_sqrt(x);
#else
    return std::sqrt(x);
#endif
}

} // namespace lvb::math::LVB_KERNEL
