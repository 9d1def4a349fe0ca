// The exponential, and distribution functions of fading: normal, gamma, and the two of Marcum. Each of these gives both
// sides of its distribution, so that neither is a difference of near numbers. Sums have positive terms only, and their
// lengths follow from the arguments.
#pragma once

#include "math/parts.hpp"

namespace lvb::math {

inline constexpr double root_two_pi = 2.5066282746310005024;

/// e^(high + low), low being small. Error below 1 ULP.
double exponential(double high, double low = 0.0) noexcept;

/// e^x - 1, accurate also for small x. Error below 4 ULP.
double exponential_m1(double x) noexcept;

/// Probability to lie below and above a threshold; each keeps its digits where it is small.
struct Tails {
    double below, above;
};

/// Q(z + rest): probability that a standard normal variable lies above z + rest, rest being small against z.
double normal_above(double z, double rest) noexcept;

/// The z that a standard normal variable exceeds with a probability of 0 to 1; 0 gives +infinity, 1 -infinity.
double normal_threshold(double above) noexcept;

/// Mills' ratio Q(z) / phi(z) of a z >= 0.
double mills_ratio(double z) noexcept;

/// P(a, x) and Q(a, x), the regularized incomplete gamma functions, of a from 0.5 to 100 and x = a 10^(level_db / 10).
Tails gamma_tails(double a, const Parts<double> &level_db) noexcept;

/// 1 - Q1 and Q1(sqrt(2 x), sqrt(2 y)), Marcum's function, of x up to 1e4 and any y; the caller knows x - y better than
/// its rounded terms do.
Tails marcum_tails(double x, double y, double x_minus_y) noexcept;

} // namespace lvb::math
