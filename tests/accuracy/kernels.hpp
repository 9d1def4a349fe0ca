// The two kernels, logarithm and exponential, searched densely for their worst rounding errors.
#pragma once

#include "accuracy/measure.hpp"

#include <string>
#include <vector>

namespace accuracy {

struct Kernel {
    const char *function; ///< the plain function that is the kernel and nothing else
    double bound_ulp;     ///< what its error stays below
};
const std::vector<Kernel> &kernels();

/// All exponents for a fixed set of mantissas, and then the first `points` of a fixed sequence of random points.
Measured search(const Kernel &kernel, std::uint64_t points);

} // namespace accuracy
