#include "math/special.hpp"

#include "math/decibel.hpp"
#include "math/elementary.hpp"
#include "math/exact.hpp"

namespace lvb::math {
namespace {

// Up to here Q(z) is taken from the middle, beyond from its tail.
constexpr double shoulder = 1.25;

// e^-760 is less than every double: the probability is 0 or 1.
constexpr double vanished = 760.0;

// The parts of the incomplete gamma functions beside x^a e^-x / Gamma(a).
// P: 1/a + x/(a (a+1)) + ..., for x up to a. Source: Abramowitz & Stegun, 6.5.29.
double gamma_series(double a, double x) noexcept {
    double sum = 1.0;
    for (int n = 20 + static_cast<int>(8.0 * sqrt(a)); n > 0; --n) sum = 1.0 + x / (a + n) * sum;
    return sum / a;
}
// Q: 1/(x+1-a - 1(1-a)/(x+3-a - 2(2-a)/(x+5-a - ...))), for x from a. Source: Abramowitz & Stegun, 6.5.31, contracted.
double gamma_fraction(double a, double x) noexcept {
    const int steps = 14 + static_cast<int>(3.0 * sqrt(a) + 105.0 / x);
    double rest = x + (2 * steps + 1) - a;
    for (int n = steps; n > 0; --n) rest = (x + (2 * n - 1) - a) - n * (n - a) / rest;
    return 1.0 / rest;
}

// 1/2 - Q(z) is sign(z) P(1/2, z^2/2) / 2.
double normal_between(double z) noexcept {
    const double half_square = 0.5 * z * z;
    return exponential(-half_square) * (z * (0.5 * gamma_series(0.5, half_square))) / root_two_pi;
}

} // namespace

double exponential(double high, double low) noexcept {
    constexpr double largest = 1000.0;
    if (!(abs(high) <= largest)) return high < 0.0 ? 0.0 : high;
    const Parts<double> main = exact_product(high, kernel::per_neper_high);
    const double rest = high * kernel::per_neper_low + low * (kernel::per_neper_high + kernel::per_neper_low);
    return power_of_db(Parts<double>{main.high, main.low + rest});
}

double exponential_m1(double x) noexcept {
    // Products of the smallest numbers would not be normal.
    return abs(x) < 0x1p-60 ? x : power_of_db_m1(x * (kernel::per_neper_high + kernel::per_neper_low));
}

double mills_ratio(double z) noexcept {
    const double half_square = 0.5 * z * z;
    if (z < shoulder) return (0.5 - normal_between(z)) * root_two_pi / exponential(-half_square);
    if (half_square == infinity) return 0.0;
    return z * (0.5 * gamma_fraction(0.5, half_square)); // Q(z) = Q(1/2, z^2/2) / 2
}

double normal_above(double z, double rest) noexcept {
    if (z < -shoulder) return 1.0 - normal_above(-z, -rest);
    if (z < shoulder) return 0.5 - normal_between(z);
    if (z > 40.0) return 0.0;
    const Parts<double> square = exact_product(z, z);
    return exponential(-0.5 * square.high, -0.5 * square.low - z * rest) * mills_ratio(z) / root_two_pi;
}

double normal_threshold(double above) noexcept {
    if (above > 0.5) return -normal_threshold(1.0 - above);
    if (above == 0.0) return infinity;
    // First approximation: Abramowitz & Stegun, 26.2.23, within 4.5e-4. Each step of Halley's method cubes the error.
    const double t = sqrt(2.0 / kernel::per_neper_high * -ten_log10(above));
    double z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    for (int step = 0; step < 3; ++step) {
        double excess; // (Q(z) - above) / phi(z)
        if (z < shoulder) {
            excess = ((0.5 - above) - normal_between(z)) * root_two_pi * exponential(0.5 * z * z);
        } else {
            const Parts<double> square = exact_product(z, z);
            const double root = exponential(0.25 * square.high, 0.25 * square.low); // its square may overflow
            excess = mills_ratio(z) - above * root * root * root_two_pi;
        }
        z += excess / (1.0 - 0.5 * z * excess);
    }
    return z;
}

Tails gamma_tails(double a, const Parts<double> &level_db) noexcept {
    if (level_db.high < -1e5) return {0.0, 1.0};
    if (level_db.high > 1e5) return {1.0, 0.0};
    const Parts<double> level = exact_sum(level_db.high, level_db.low);
    // Against its own value at x = a, where both sides add up to 1, x^a e^-x / Gamma(a) needs no gamma function.
    const double middle = 1.0 / (gamma_series(a, a) + gamma_fraction(a, a));
    const double excess = power_of_db_m1(level.high); // x/a - 1
    const Parts<double> shape =                       // 10 log10(x/a) - (x/a - 1) 10 log10(e), never above 0
        exact_sum(level.high, level.low - excess * (kernel::per_neper_high + kernel::per_neper_low));
    if (shape.high < -1e5) return {1.0, 0.0};
    const Parts<double> exponent = exact_product(a, shape.high);
    const double power = power_of_db(Parts<double>{exponent.high, exponent.low + a * shape.low});
    const double x = a * power_of_db(level.high);
    if (x < a) {
        const double below = power * (middle * gamma_series(a, x));
        return {below, 1.0 - below};
    }
    const double above = power * (middle * gamma_fraction(a, x));
    return {1.0 - above, above};
}

// With z = 2 sqrt(x y) and Bessel functions: Q1 = e^-(x+y) sum of (x/y)^(k/2) I_k(z) over k >= 0, and 1 - Q1 the sum of
// (y/x)^(k/2) I_k(z) over k >= 1; e^z = I_0(z) + 2 sum of I_k(z). Source: Proakis, Digital Communications, 2.1
// (Marcum's function); Abramowitz & Stegun, 9.6.33 and 9.6.36. Backwards along the continued fraction of I_k / I_(k-1),
// each sum is a product of ratios that neither overflows nor cancels.
Tails marcum_tails(double x, double y, double x_minus_y) noexcept {
    if (y == 0.0) return {0.0, 1.0};
    if (y == infinity) return {1.0, 0.0};
    const double root_x = sqrt(x), root_y = sqrt(y);
    const double distance = x_minus_y / (root_x + root_y);
    const Parts<double> square = exact_product(distance, distance);
    const bool above_is_small = y > x + 1.0;
    if (square.high > vanished) return above_is_small ? Tails{1.0, 0.0} : Tails{0.0, 1.0};
    const double root = root_x * root_y, product = x * y, towards = above_is_small ? x : y;
    double ratio = 0.0;    // I_k / I_(k-1) / root
    double sum = 0.0;      // of I_k / I_0
    double side_sum = 0.0; // of (y/x)^(k/2) I_k / I_0, or its inverse
    for (int k = 32 + static_cast<int>(12.5 * sqrt(root)); k > 0; --k) {
        ratio = 1.0 / (k + product * ratio);
        sum = root * ratio * (1.0 + sum);
        side_sum = towards * ratio * (1.0 + side_sum);
    }
    const double side =
        exponential(-square.high, -square.low) * ((above_is_small ? 1.0 + side_sum : side_sum) / (1.0 + 2.0 * sum));
    return above_is_small ? Tails{1.0 - side, side} : Tails{side, 1.0 - side};
}

} // namespace lvb::math
