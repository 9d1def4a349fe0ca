// SLEEF's loops with SSE2. Compiled for it.
#include "sleef.hpp"

#include <immintrin.h>
#include <sleef.h>

namespace bench {
namespace {

void decibels(const double *x, double *y, std::size_t count) {
    const __m128d twenty = _mm_set1_pd(20.0);
    for (std::size_t i = 0; i < count; i += 2)
        _mm_storeu_pd(y + i, _mm_mul_pd(twenty, Sleef_log10d2_u10sse2(_mm_loadu_pd(x + i))));
}

void milliwatts(const double *x, double *y, std::size_t count) {
    const __m128d tenth = _mm_set1_pd(0.1);
    for (std::size_t i = 0; i < count; i += 2)
        _mm_storeu_pd(y + i, Sleef_exp10d2_u10sse2(_mm_mul_pd(tenth, _mm_loadu_pd(x + i))));
}

} // namespace

const SleefLoops sleef_baseline{decibels, milliwatts};

} // namespace bench
