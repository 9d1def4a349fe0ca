// Fading and diversity from their definitions: the distributions as mixtures with positive weights, Suzuki's as a
// trapezoidal sum with a finer step than the library's. Margins are searched: long doubles come near, Reals finish.
#include "accuracy/oracles.hpp"

#include <algorithm>
#include <limits>
#include <type_traits>

namespace accuracy {
namespace {

using Wide = long double;

double rounded(const Real &x) { return x.rounded(); }
double rounded(Wide x) { return static_cast<double>(x); }

template <class N>
N pi();
template <>
Real pi<Real>() {
    return Real::pi();
}
template <>
Wide pi<Wide>() {
    return std::acos(Wide(-1.0));
}

using std::exp, std::expm1, std::log, std::log1p, std::erfc, std::lgamma, std::sqrt; // of long doubles

/// The power ratio of decibels.
template <class N>
N level_of(const N &db) {
    return exp(db * (log(N(10.0)) / N(10.0)));
}

/// Rayleigh fading: the power is exponentially distributed around its mean.
template <class N>
N rayleigh(const N &level) {
    return -expm1(-level);
}

/// Calls visit(k, P(k + 1, y)) for k from last down to first; P(k, y) = P(k + 1, y) + e^-y y^k / k! adds up what is
/// positive.
template <class N, class Visit>
void gamma_from_above(const N &y, double first, double last, Visit visit) {
    N term(1.0), series(1.0);
    for (double n = 1.0; rounded(term / series) > 1e-45; ++n) {
        term = term * y / N(last + 1.0 + n);
        series = series + term;
    }
    N poisson = exp(N(last + 1.0) * log(y) - y - lgamma(N(last + 2.0)));
    N below = poisson * series;
    poisson = poisson * N(last + 1.0) / y;
    for (double k = last; k >= first; --k) {
        visit(k, below);
        below = below + poisson;
        poisson = poisson * N(k) / y;
    }
}

/// P(a, x): x^a e^-x / Gamma(a + 1) (1 + x/(a+1) + x^2/((a+1)(a+2)) + ...).
template <class N>
N gamma_below(const N &a, const N &x) {
    if (rounded(x) == 0.0) return N(0.0);
    if (rounded(x) > 4.0 * rounded(a) + 400.0) return N(1.0); // but for less than 1e-100
    N term(1.0), sum(1.0);
    for (double n = 1.0; n <= rounded(x) || rounded(term / sum) > 1e-50; ++n) {
        term = term * x / (a + N(n));
        sum = sum + term;
    }
    return exp(a * log(x) - x - lgamma(a + N(1.0))) * sum;
}
template <class N>
N nakagami(const N &margin_db, double shape) {
    return gamma_below(N(shape), N(shape) * level_of(-margin_db));
}

/// 1 - Q1(sqrt(2 x), sqrt(2 y)): P(k + 1, y), k Poisson distributed with mean x.
template <class N>
N rice(const N &margin_db, double k_db) {
    const N x = level_of(N(k_db)), y = (N(1.0) + x) * level_of(-margin_db);
    const double direct = rounded(x), threshold = rounded(y);
    if (threshold == 0.0) return N(0.0);
    if (direct < 1e-60) return rayleigh(y);
    const double apart = std::sqrt(threshold) - std::sqrt(direct);
    if (apart > 15.0) return N(1.0);  // but for less than 1e-97
    if (apart < -30.0) return N(0.0); // less than the least double
    const double middle = std::min(direct, std::sqrt(direct * threshold)), reach = 13.0 * std::sqrt(middle) + 60.0;
    const double last = std::floor(middle + reach);
    N weight = exp(N(last) * log(x) - x - lgamma(N(last + 1.0))), sum(0.0);
    gamma_from_above(y, std::floor(std::max(0.0, middle - reach)), last, [&](double k, const N &below) {
        sum = sum + weight * below;
        weight = weight * N(k) / x;
    });
    return sum;
}

/// P(first_order + k, y) with weights first and falling by a factor.
Real geometric_mixture(const Real &y, double first_order, const Real &factor, bool squared_terms) {
    const double mean = y.rounded(), f = factor.rounded();
    double last = std::ceil(mean + 15.0 * std::sqrt(mean) + 60.0);
    if (f < 1.0 && f > 0.0) last = std::min(last, std::ceil(120.0 / -std::log(f)) + 2.0);
    Real sum = 0.0;
    gamma_from_above(y, first_order - 1.0, last + first_order,
                     [&](double, const Real &below) { sum = factor * sum + (squared_terms ? squared(below) : below); });
    return sum;
}

/// Two correlated exponential powers are a mixture: (1 - c) sum of c^k times two independent gamma variables of order k
/// + 1.
Real correlated_selection(double margin_db, double correlation) {
    const Real apart = 1.0 - Real(correlation), y = level_of(-Real(margin_db));
    if (y.rounded() == 0.0) return 0.0;
    if (y.rounded() > 200.0) return 1.0; // but for less than 1e-86
    return apart * geometric_mixture(y / apart, 1.0, correlation, true);
}

/// The sum of exponential powers of means p > q is a gamma variable of mean order 2 + k times q, k geometrically
/// distributed with q/p.
Real correlated_maximal_ratio(double margin_db, double correlation) {
    const Real c = sqrt(Real(correlation)), y = level_of(-Real(margin_db));
    if (y.rounded() == 0.0) return 0.0;
    if (y.rounded() > 400.0) return 1.0; // but for less than 1e-86
    const Real q = (1.0 - Real(correlation)) / (1.0 + c), p = 1.0 + c;
    return q / p * geometric_mixture(y / q, 2.0, 2.0 * c / p, false);
}

/// The mean of Rayleigh's outage, or of what is left of 1, over normally distributed local means; powers along equal
/// steps are products.
template <class N>
N suzuki(const N &margin_db, double standard_deviation_db) {
    const double deviation = standard_deviation_db * std::log(10.0) / 10.0,
                 margin = rounded(margin_db) * std::log(10.0) / 10.0;
    const double peak = margin <= 0.0 ? 0.0 : margin > deviation * deviation ? -deviation : -margin / deviation;
    // What is left of 1 takes a finer and longer sum to be exact where it is small; a Wide only has to come near.
    const bool exact = std::is_same_v<N, Real>, low = margin < 0.0;
    const double width = exact ? 1.0 / (2.6 + (low ? 8.4 : 6.2) * deviation) : 1.0 / (2.0 + 4.0 * deviation);
    const double count = std::ceil((low ? 13.5 : 11.5) / width);
    const N step(width), start = N(peak) - N(count) * step;
    N weight = exp(-start * start / N(2.0)), ratio = exp(-(start + step / N(2.0)) * step), sum(0.0);
    N level = level_of(-margin_db - N(standard_deviation_db) * start);
    const N ratio_step = exp(-step * step), level_step = level_of(-N(standard_deviation_db) * step);
    for (double i = -count; i <= count; ++i) {
        sum = sum + weight * rayleigh(level);
        weight = weight * ratio;
        ratio = ratio * ratio_step;
        level = level * level_step;
    }
    return sum * step / sqrt(N(2.0) * pi<N>());
}

template <class N>
N normal_above(const N &z) {
    return erfc(z / sqrt(N(2.0))) / N(2.0);
}

/// Nearly straight in the margin for all these distributions: the Rayleigh margin of an outage, in nepers.
template <class N>
N straightened(const N &outage) {
    if (!(outage < N(1.0))) return N(-std::numeric_limits<double>::infinity());
    return -log(-log1p(-outage));
}

/// The argument at which a falling distribution, given for both kinds of numbers, has an outage.
template <class Model>
Real solved(double outage, Model model) {
    if (outage == 0.0) return std::numeric_limits<double>::infinity();
    if (outage == 1.0) return -std::numeric_limits<double>::infinity();
    const double wanted = straightened(Real(outage)).rounded();
    const bool near_one = outage > 1.0 - 1e-11; // a Wide does not tell what is left
    double low = -1000.0, high = 4000.0;
    for (int i = 0; i < (near_one ? 30 : 44); ++i) {
        const double middle = (low + high) / 2.0;
        const double here =
            near_one ? straightened(model(Real(middle))).rounded() : rounded(straightened(model(Wide(middle))));
        (here < wanted ? low : high) = middle;
    }
    const Real exact = straightened(Real(outage));
    Real before = low - (near_one ? 1e-5 : 1e-9), x = low;
    Real error_before = straightened(model(before)) - exact;
    for (int i = 0; i < 8; ++i) { // secants: the error is of the size of the product of the last two steps
        const Real error = straightened(model(x)) - exact;
        const Real step = error * (x - before) / (error_before - error);
        const bool reached = abs(step * (x - before)) < 1e-20 * abs(x);
        before = x;
        error_before = error;
        x = x + step;
        if (reached || step.is_zero()) break;
    }
    return x;
}

Real normal_threshold(double above) {
    if (above == 0.5) return 0.0;
    return solved(above, [](const auto &z) { return normal_above(z); });
}

/// p + exp(2 s (s + z)) Q(z + 2 s); far out, exp() Q() is phi(z) times the expansion of Mills' ratio.
Real area_coverage(double edge, double standard_deviation_db, double exponent) {
    if (edge == 0.0 || edge == 1.0) return edge;
    const Real z = -normal_threshold(edge), s = Real(standard_deviation_db) * log(Real(10.0)) / 10.0 / Real(exponent);
    const Real far = z + 2.0 * s;
    if (far < 1e4) return edge + exp(2.0 * s * (s + z)) * normal_above(far);
    const Real square = 1.0 / far / far;
    return edge +
           exp(-z * z / 2.0) / sqrt(2.0 * Real::pi()) / far * (1.0 - square * (1.0 - square * (3.0 - 15.0 * square)));
}

Real two() { return 2.0; }

} // namespace

const std::map<std::string, Oracle> &fading_oracles() {
    static const std::map<std::string, Oracle> all = {
        {"lvb_rayleigh_outage_below_mean", [](const double *x) { return rayleigh(level_of(-Real(x[0]))); }},
        {"lvb_rayleigh_margin_below_mean_db", [](const double *x) { return -10.0 * log10(-log1p(-Real(x[0]))); }},
        {"lvb_rayleigh_outage_below_median",
         [](const double *x) { return rayleigh(log(two()) * level_of(-Real(x[0]))); }},
        {"lvb_rayleigh_margin_below_median_db",
         [](const double *x) { return -10.0 * log10(-log1p(-Real(x[0])) / log(two())); }},
        {"lvb_rice_outage_below_mean", [](const double *x) { return rice(Real(x[0]), x[1]); }},
        {"lvb_rice_margin_below_mean_db",
         [](const double *x) { return solved(x[0], [x](const auto &m) { return rice(m, x[1]); }); }},
        {"lvb_nakagami_outage_below_mean", [](const double *x) { return nakagami(Real(x[0]), x[1]); }},
        {"lvb_nakagami_margin_below_mean_db",
         [](const double *x) { return solved(x[0], [x](const auto &m) { return nakagami(m, x[1]); }); }},
        {"lvb_lognormal_outage_below_median",
         [](const double *x) { return x[0] == 0.0 ? Real(0.5) : normal_above(Real(x[0]) / Real(x[1])); }},
        {"lvb_lognormal_margin_below_median_db",
         [](const double *x) {
             const Real z = normal_threshold(x[0]);
             return z.is_number() ? Real(x[1]) * z : z;
         }},
        {"lvb_suzuki_outage_below_median_of_means", [](const double *x) { return suzuki(Real(x[0]), x[1]); }},
        {"lvb_suzuki_margin_below_median_of_means_db",
         [](const double *x) { return solved(x[0], [x](const auto &m) { return suzuki(m, x[1]); }); }},
        {"lvb_selection_outage", [](const double *x) { return exp(Real(x[1]) * log(Real(x[0]))); }},
        {"lvb_maximal_ratio_outage_below_mean",
         [](const double *x) { return gamma_below(Real(x[1]), level_of(-Real(x[0]))); }},
        {"lvb_correlated_selection_outage_below_mean",
         [](const double *x) { return correlated_selection(x[0], x[1]); }},
        {"lvb_correlated_maximal_ratio_outage_below_mean",
         [](const double *x) { return correlated_maximal_ratio(x[0], x[1]); }},
        {"lvb_area_coverage", [](const double *x) { return area_coverage(x[0], x[1], x[2]); }},
    };
    return all;
}

} // namespace accuracy
