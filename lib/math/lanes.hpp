// Words side by side in a register of the instruction set, for the one product that compilers do not find themselves:
// that of lower halves.
#pragma once

#include "math/kernel_namespace.hpp"

#include <cstdint>

#if defined(__SSE2__) && defined(__GNUC__)
#include <immintrin.h>
#endif

namespace lvb::math::LVB_KERNEL {

inline constexpr std::uint64_t low_word = 0xffffffff;

/// The product of the lower halves; a factor has no upper one.
inline std::uint64_t product(std::uint64_t word, std::uint64_t factor) noexcept { return (word & low_word) * factor; }

#if defined(__SSE2__) && defined(__GNUC__)
#if defined(__AVX512F__)
using Lanes = std::uint64_t __attribute__((vector_size(64)));
inline Lanes product(Lanes word, std::uint64_t factor) noexcept {
    return (Lanes)_mm512_maskz_mul_epu32(0xff, (__m512i)word, (__m512i)(Lanes{} + factor));
}
#elif defined(__AVX2__)
using Lanes = std::uint64_t __attribute__((vector_size(32)));
inline Lanes product(Lanes word, std::uint64_t factor) noexcept {
    return (Lanes)_mm256_mul_epu32((__m256i)word, (__m256i)(Lanes{} + factor));
}
#else
using Lanes = std::uint64_t __attribute__((vector_size(16)));
inline Lanes product(Lanes word, std::uint64_t factor) noexcept {
    return (Lanes)_mm_mul_epu32((__m128i)word, (__m128i)(Lanes{} + factor));
}
#endif
#else
using Lanes = std::uint64_t;
#endif

} // namespace lvb::math::LVB_KERNEL
