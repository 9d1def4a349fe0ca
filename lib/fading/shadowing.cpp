#include "fading/shadowing.hpp"

#include "fading/margin.hpp"
#include "math/elementary.hpp"
#include "math/exact.hpp"

namespace lvb::fading {
namespace {

// The mean of Rayleigh's outage over normally distributed local means, by the trapezoidal rule over z, the deviation in
// units of the standard deviation. The integrand is analytic, so that the error falls exponentially with the step; it
// lies on both sides of its peak within 9, below 1e-17 of it further out.
math::Tails suzuki(double margin_db, double standard_deviation_db) noexcept {
    const double deviation = standard_deviation_db * math::nepers_per_db;
    const double step = 1.0 / (2.0 + (margin_db < 0.0 ? 6.0 : 4.2) * deviation); // finer for the smaller of the two
    // The peak of the outage: where nearly all local means are sufficient it lies at z = -deviation or, if these come
    // first, at the means that are not. That of the rest lies as far on the other side, and 9 is far enough.
    const double turn = margin_db / math::abs(standard_deviation_db);
    const double peak = margin_db > 0.0 ? -(turn < deviation ? turn : deviation) : 0.0;
    const double rest_peak = margin_db < 0.0 ? (turn > -9.0 ? -turn : 9.0) : 0.0;
    const int steps = static_cast<int>((rest_peak - peak + 18.0) / step);
    // Terms of the smallest outages would not be normal numbers: all are lifted. So small an outage is the threshold
    // itself.
    constexpr double small_db = -200.0, lift_db = 300.0, lift = 1e30;
    double below = 0.0, above = 0.0;
    for (int i = 0; i <= steps; ++i) {
        const double z = (peak - 9.0) + i * step;
        const double weight = math::exponential(-0.5 * z * z);
        const double level_db = -(margin_db + standard_deviation_db * z);
        const double threshold = math::power_of_db(level_db);
        below += weight * (level_db < small_db ? math::power_of_db(level_db + lift_db)
                                               : -math::exponential_m1(-threshold) * lift);
        above += weight * math::exponential(-threshold);
    }
    const double scale = step / math::root_two_pi;
    return {below * scale / lift, above * scale};
}

} // namespace

double lognormal_outage_below_median(double margin_db, double standard_deviation_db) noexcept {
    if (margin_db == 0.0) return 0.5;                              // without any deviation too
    const double z = margin_db / math::abs(standard_deviation_db); // of +0, not -0
    if (!(math::abs(z) < 100.0)) return z > 0.0 ? 0.0 : 1.0;
    // What the quotient lost, of numbers that are large enough for the digits of products.
    const double lift = math::abs(standard_deviation_db) < 0x1p-500 ? 0x1p500 : 1.0;
    const double margin = lift * margin_db, deviation = lift * math::abs(standard_deviation_db);
    const math::Parts<double> back = math::exact_product(z, deviation);
    return math::normal_above(z, ((margin - back.high) - back.low) / deviation);
}
double lognormal_margin_below_median_db(double outage, double standard_deviation_db) noexcept {
    return standard_deviation_db == 0.0 && (outage == 0.0 || outage == 1.0)
               ? math::normal_threshold(outage)
               : standard_deviation_db * math::normal_threshold(outage);
}
double suzuki_outage_below_median_of_means(double margin_db, double standard_deviation_db) noexcept {
    const math::Tails tails = suzuki(margin_db, standard_deviation_db);
    return tails.below < 0.5 ? tails.below : 1.0 - tails.above; // never above 1
}
double suzuki_margin_below_median_of_means_db(double outage, double standard_deviation_db) noexcept {
    return margin_db(outage, suzuki, standard_deviation_db);
}

// With z the margin at the edge and s = deviation / (10 n log10(e)): Phi(z) + exp(2 s (s + z)) Q(z + 2 s), the second
// term as phi(z) times Mills' ratio where the exponential could overflow.
double area_coverage(double edge_coverage, double standard_deviation_db, double path_loss_exponent) noexcept {
    if (edge_coverage == 0.0 || edge_coverage == 1.0) return edge_coverage;
    const double z = -math::normal_threshold(edge_coverage);
    const double s = math::nepers_per_db * (standard_deviation_db / path_loss_exponent);
    const double far = z + 2.0 * s;
    double share = 0.0;
    if (far < 0.0) share = edge_coverage + math::exponential(2.0 * s * (s + z)) * math::normal_above(far, 0.0);
    else if (z < 0.0)
        share = edge_coverage * (1.0 + math::mills_ratio(far) / math::mills_ratio(-z)); // phi = Phi / Mills
    else share = edge_coverage + math::exponential(-0.5 * z * z) * math::mills_ratio(far) / math::root_two_pi;
    return share < 1.0 ? share : 1.0;
}

} // namespace lvb::fading
