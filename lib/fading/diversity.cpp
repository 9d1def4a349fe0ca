#include "fading/diversity.hpp"

#include "math/elementary.hpp"
#include "math/exact.hpp"
#include "math/special.hpp"

namespace lvb::fading {
namespace {

// Thresholds that every power lies below: e^-760 is less than every double.
constexpr double always_below = 760.0;

// 1 - c of c^2 = correlation, without the rounding of c.
double gap_of(double correlation, double c) noexcept { return (1.0 - correlation) / (1.0 + c); }

// Probability that the smaller of two correlated powers of mean 1 lies below y: 1 - e^-y (1 - Q1(a, b) + Q1(b, a)),
// a^2 = 2 y / (1 - c^2), b^2 = c^2 a^2, c^2 their correlation. In Bessel functions of z = a b that is
// 1 - e^(-2 y / (1 + c)) (I_0 + 2 sum of c^k I_k) / (I_0 + 2 sum of I_k); the sums' difference is summed as it is.
double smaller_below(double y, double correlation) noexcept {
    const double c = math::sqrt(correlation), gap = gap_of(correlation, c), half_z = c * y / (1.0 - correlation);
    double ratio = 0.0; // I_k / I_(k-1)
    double sum = 0.0;   // of I_k / I_0
    double lack = 0.0;  // of (1 - c^k) I_k / I_0
    for (int k = 32 + static_cast<int>(12.5 * math::sqrt(half_z)); k > 0; --k) {
        ratio = half_z / (k + half_z * ratio);
        lack = ratio * (gap * (1.0 + sum) + c * lack);
        sum = ratio * (1.0 + sum);
    }
    const double exponent = -2.0 * y / (1.0 + c);
    return math::exponential(exponent) * (2.0 * lack / (1.0 + 2.0 * sum)) - math::exponential_m1(exponent);
}

} // namespace

double selection_outage(double outage, double branches) noexcept {
    if (outage == 0.0 || branches == 1.0) return outage;
    const math::Parts<double> db = math::decibel_parts(outage, 1.0);
    const math::Parts<double> power = math::exact_product(branches, db.high);
    return math::power_of_db(math::Parts<double>{power.high, power.low + branches * db.low});
}

double maximal_ratio_outage_below_mean(double margin_db, double branches) noexcept {
    const math::Parts<double> count = math::decibel_parts(branches, 1.0);
    const math::Parts<double> level = math::exact_sum(-margin_db, -count.high);
    return math::gamma_tails(branches, {level.high, level.low - count.low}).below;
}

double correlated_selection_outage_below_mean(double margin_db, double correlation) noexcept {
    const double y = math::power_of_db(-margin_db);
    if (y > always_below) return 1.0;
    const double apart = 1.0 - correlation, x = y / apart;
    if (x >= 1.0) {
        const double one = 0.0 - math::exponential_m1(-y);
        return 2.0 * one - smaller_below(y, correlation);
    }
    // Where both terms are near each other: (1 - c^2) times the sum of c^2k P(k + 1, x)^2.
    double side = 1.0; // P(k + 1, x) against its first term
    double sum = 0.0;
    for (int k = 24; k >= 0; --k) {
        const double next = x / (k + 2);
        side = 1.0 + next * side;
        sum = side * side + correlation * (next * next) * sum;
    }
    const double first = x * math::exponential(-x);
    return apart * (first * first) * sum;
}

double correlated_maximal_ratio_outage_below_mean(double margin_db, double correlation) noexcept {
    const double y = math::power_of_db(-margin_db);
    if (y > always_below) return 1.0;
    const double apart = 1.0 - correlation, x = y / apart, c = math::sqrt(correlation);
    if (x >= 2.0) {
        // 1 - (p e^(-y/p) - q e^(-y/q)) / (p - q) of the eigenvalues p = 1 + c and q = 1 - c
        const double exponent = -y / (1.0 + c);
        const double spread = c == 0.0 ? x : math::exponential_m1(-2.0 * c * x) / (-2.0 * c);
        return -math::exponential_m1(exponent) - math::exponential(exponent) * (gap_of(correlation, c) * spread);
    }
    // Its series: e^-x times the sum of (1 - c^2j) (x^2j / (2j)! + x^(2j+1) / (2j+1)!) over j >= 1.
    double geometric[16]; // (1 - c^2j) / (1 - c^2)
    geometric[0] = 0.0;
    for (int j = 1; j < 16; ++j) geometric[j] = 1.0 + correlation * geometric[j - 1];
    double sum = 0.0;
    for (int j = 15; j >= 1; --j)
        sum = (geometric[j] * (1.0 + x / (2 * j + 1)) + sum) * (x * x / ((2 * j - 1) * (2 * j)));
    return math::exponential(-x) * (apart * sum);
}

} // namespace lvb::fading
