// Words side by side in a register of the instruction set, for the one product that compilers do not find themselves:
// that of lower halves.
#pragma once

#include "math/kernel_namespace.hpp"

#include <cstddef>
#include <cstdint>
#include <cstring>

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

inline void load(Lanes &lanes, const std::uint64_t *words) noexcept { std::memcpy(&lanes, words, sizeof lanes); }
inline void store(const Lanes &lanes, std::uint64_t *words) noexcept { std::memcpy(words, &lanes, sizeof lanes); }

/// Counters that are worked on at once: where the registers are many, four side by side, so that each has something to
/// do while another waits.
#if defined(__AVX512F__) && defined(__GNUC__)
struct Counters {
    static constexpr std::size_t abreast = 4;
    Lanes of[abreast];
};
inline Counters operator^(Counters a, const Counters &b) noexcept {
    for (std::size_t i = 0; i < Counters::abreast; ++i) a.of[i] ^= b.of[i];
    return a;
}
inline Counters operator^(Counters a, std::uint64_t b) noexcept {
    for (Lanes &lanes : a.of) lanes ^= b;
    return a;
}
inline Counters operator>>(Counters a, int bits) noexcept {
    for (Lanes &lanes : a.of) lanes >>= bits;
    return a;
}
inline Counters product(Counters a, std::uint64_t factor) noexcept {
    for (Lanes &lanes : a.of) lanes = product(lanes, factor);
    return a;
}
inline void load(Counters &counters, const std::uint64_t *words) noexcept {
    for (Lanes &lanes : counters.of) load(lanes, words), words += sizeof lanes / sizeof *words;
}
inline void store(const Counters &counters, std::uint64_t *words) noexcept {
    for (const Lanes &lanes : counters.of) store(lanes, words), words += sizeof lanes / sizeof *words;
}
#else
using Counters = Lanes;
#endif

} // namespace lvb::math::LVB_KERNEL
