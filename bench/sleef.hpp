// The same columns through SLEEF's kernels of 1 ULP, one instruction set each. Counts are multiples of 8.
#pragma once

#include <cstddef>

namespace bench {

using ColumnLoop = void (*)(const double *x, double *y, std::size_t count);

/// y = 20 log10(x) and y = 10^(x / 10)
struct SleefLoops {
    ColumnLoop decibels, milliwatts;
};
extern const SleefLoops sleef_baseline, sleef_avx2, sleef_avx512;

} // namespace bench
