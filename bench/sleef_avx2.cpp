// SLEEF's loops with AVX2. Compiled for it.
#include "sleef.hpp"

#include <immintrin.h>
#include <sleef.h>

namespace bench {
namespace {

void decibels(const double *x, double *y, std::size_t count) {
    const __m256d twenty = _mm256_set1_pd(20.0);
    for (std::size_t i = 0; i < count; i += 4)
        _mm256_storeu_pd(y + i, _mm256_mul_pd(twenty, Sleef_log10d4_u10avx2(_mm256_loadu_pd(x + i))));
}

void milliwatts(const double *x, double *y, std::size_t count) {
    const __m256d tenth = _mm256_set1_pd(0.1);
    for (std::size_t i = 0; i < count; i += 4)
        _mm256_storeu_pd(y + i, Sleef_exp10d4_u10avx2(_mm256_mul_pd(tenth, _mm256_loadu_pd(x + i))));
}

} // namespace

const SleefLoops sleef_avx2{decibels, milliwatts};

} // namespace bench
