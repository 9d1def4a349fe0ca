// Bit patterns of binary64, for kernels that take numbers apart without branches.
#pragma once

#include "math/arithmetic.hpp"
#include "math/kernel_namespace.hpp"

#include <cstdint>

namespace lvb::math::LVB_KERNEL {

constexpr std::uint64_t bits_of(double x) noexcept { return __builtin_bit_cast(std::uint64_t, x); }
constexpr double from_bits(std::uint64_t bits) noexcept { return __builtin_bit_cast(double, bits); }

/// Adding it to a number of moderate size rounds to the nearest integer, which then stands in the lowest bits.
inline constexpr double rounder = 0x1.8p52;

/// 2^n for an integer that was rounded by `rounder`, -1022 to 1023.
constexpr double power_of_two(double rounded) noexcept { return from_bits((bits_of(rounded) + 1023) << 52); }

} // namespace lvb::math::LVB_KERNEL
