// Values that columns meet, and how their bits are compared.
#pragma once

#include "units/scalars.hpp"

#include <levelbook/levelbook.h>

#include <bit>
#include <limits>

namespace proof {

inline std::uint64_t bits(double x) { return std::bit_cast<std::uint64_t>(x); }

/// The same bits; any NaN is a NaN.
inline bool identical(double a, double b) { return std::isnan(a) ? std::isnan(b) : bits(a) == bits(b); }

enum class Kind { ordinary, mixed, special, any_bits };

/// A value for an argument. Ordinary ones lie well inside its range, so that whole pieces of a column are ordinary;
/// mixed ones are ordinary but for one in two hundred; special ones may be anything that the header names.
inline double value_of(Kind kind, const Interval &range, Random &random) {
    using limits = std::numeric_limits<double>;
    constexpr double special[] = {0.0,
                                  -0.0,
                                  1.0,
                                  -1.0,
                                  limits::infinity(),
                                  -limits::infinity(),
                                  limits::quiet_NaN(),
                                  limits::denorm_min(),
                                  -limits::denorm_min(),
                                  1e-310,
                                  limits::min(),
                                  limits::max(),
                                  -limits::max(),
                                  1e300,
                                  -1e300,
                                  1e-300,
                                  3069.9,
                                  -3070.1,
                                  3083.0,
                                  -3240.0};
    if (kind == Kind::mixed) kind = random.below(200) == 0 ? Kind::special : Kind::ordinary;
    if (kind == Kind::special && random.below(3) == 0) return sample(range, random);
    if (kind == Kind::special) return special[random.below(std::size(special))];
    if (kind == Kind::any_bits) return std::bit_cast<double>(random.below(~std::uint64_t{0}));
    const bool bounded_below = std::isfinite(range.low), bounded_above = std::isfinite(range.high);
    if (bounded_below && bounded_above) return random.uniform(range.low, range.high);
    if (bounded_below) return range.low + random.log_uniform(-3.0, 4.0);
    return random.uniform(-150.0, 150.0);
}

inline std::int32_t instruction_sets() { return lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED; }

} // namespace proof
