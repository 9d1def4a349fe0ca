// SLEEF's loops with AVX-512. Compiled for it.
#include "sleef.hpp"

#include <immintrin.h>
#include <sleef.h>

namespace bench {
namespace {

void decibels(const double *x, double *y, std::size_t count) {
    const __m512d twenty = _mm512_set1_pd(20.0);
    for (std::size_t i = 0; i < count; i += 8)
        _mm512_storeu_pd(y + i, _mm512_mul_pd(twenty, Sleef_log10d8_u10avx512f(_mm512_loadu_pd(x + i))));
}

void milliwatts(const double *x, double *y, std::size_t count) {
    const __m512d tenth = _mm512_set1_pd(0.1);
    for (std::size_t i = 0; i < count; i += 8)
        _mm512_storeu_pd(y + i, Sleef_exp10d8_u10avx512f(_mm512_mul_pd(tenth, _mm512_loadu_pd(x + i))));
}

} // namespace

const SleefLoops sleef_avx512{decibels, milliwatts};

} // namespace bench
