// Values that columns meet, and how their bits are compared.
#pragma once

#include "support/functions.hpp"
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <bit>
#include <limits>
#include <string>
#include <vector>

namespace proof {

inline std::uint64_t bits(double x) { return std::bit_cast<std::uint64_t>(x); }

/// The same bits, those of NaN too.
inline bool identical(double a, double b) { return bits(a) == bits(b); }

using support::Function;
using support::functions;

enum class Kind { ordinary, mixed, special, any_bits };

/// A special value, an end of the range or what lies beside it, or any size that a double can have.
inline double special_value(const support::Interval &range, Random &random) {
    using limits = std::numeric_limits<double>;
    const double infinity = limits::infinity();
    const double all[] = {0.0,
                          -0.0,
                          1.0,
                          -1.0,
                          infinity,
                          -infinity,
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
                          -3240.0,
                          range.low,
                          range.high,
                          std::nextafter(range.low, infinity),
                          std::nextafter(range.low, -infinity),
                          std::nextafter(range.high, infinity),
                          std::nextafter(range.high, -infinity)};
    if (random.below(4) == 0) return random.sign() * random.log_uniform(-323.0, 308.0);
    return all[random.below(std::size(all))];
}

/// A value for an argument. Ordinary ones lie well inside its range, so that whole pieces of a column are ordinary;
/// mixed ones are ordinary but for one in two hundred.
inline double value_of(Kind kind, const support::Interval &range, Random &random) {
    if (kind == Kind::mixed) kind = random.below(200) == 0 ? Kind::special : Kind::ordinary;
    if (kind == Kind::special) return special_value(range, random);
    if (kind == Kind::any_bits) return std::bit_cast<double>(random.below(~std::uint64_t{0}));
    const bool bounded_below = std::isfinite(range.low), bounded_above = std::isfinite(range.high);
    if (bounded_below && bounded_above) return random.uniform(range.low, range.high);
    if (bounded_below) return range.low + random.log_uniform(-3.0, 4.0);
    if (bounded_above) return range.high - random.log_uniform(-3.0, 4.0);
    return random.uniform(-150.0, 150.0);
}

inline std::int32_t instruction_sets() { return lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED; }

} // namespace proof
