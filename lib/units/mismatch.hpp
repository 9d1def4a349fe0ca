// The four ways to state a mismatch, by way of the reflection coefficient's magnitude. Source: Pozar, Microwave
// Engineering, 2.3 (terminated lossless line).
#pragma once

#include "math/elementary.hpp"

namespace lvb::units {

inline double reflection_from_vswr(double vswr) noexcept {
    return vswr == math::infinity ? 1.0 : (vswr - 1.0) / (vswr + 1.0);
}
inline double vswr_from_reflection(double reflection) noexcept { return (1.0 + reflection) / (1.0 - reflection); }
template <class N>
auto return_loss_db_from_reflection(const N &reflection) noexcept {
    using math::decibels;
    return decibels(reflection, -2.0, 0.0);
}
template <class N>
auto reflection_from_return_loss_db(const N &return_loss_db) noexcept {
    using math::ratio_of_db;
    return ratio_of_db(return_loss_db, -0.5, 0.0);
}
inline double mismatch_loss_db_from_reflection(double reflection) noexcept {
    if (reflection < math::tiny) return reflection * (math::db_per_neper * reflection);
    // 1 - r^2 is (1 - r) (1 + r), which keeps its digits near total reflection.
    return reflection < 0.5 ? 0.0 - math::ten_log10_1p(-reflection * reflection)
                            : 0.0 - math::ten_log10((1.0 - reflection) * (1.0 + reflection));
}
inline double reflection_from_mismatch_loss_db(double mismatch_loss_db) noexcept {
    constexpr double root = 0x1.eb5e7a48be17dp-2; // of ln(10) / 10
    if (mismatch_loss_db < math::tiny) return root * math::sqrt(math::abs(mismatch_loss_db));
    return math::sqrt(0.0 - math::power_of_db_m1(-mismatch_loss_db));
}
// 1 - r^2 is 4 s / (s + 1)^2: no difference of near numbers, however large the ratio is.
inline double mismatch_loss_db_from_vswr(double vswr) noexcept {
    if (vswr == math::infinity) return math::infinity;
    const double excess = vswr - 1.0;
    return math::ten_log10_1p(excess * (0.25 * (excess / vswr)));
}
inline double vswr_from_mismatch_loss_db(double mismatch_loss_db) noexcept {
    // (1 + r) / (1 - r) = (1 + r)^2 / (1 - r^2)
    const double sum = 1.0 + reflection_from_mismatch_loss_db(mismatch_loss_db);
    return sum * sum * math::power_of_db(mismatch_loss_db);
}
// With q = 10^(L/20): (1 + 1/q) / (1 - 1/q) = 1 + 2 / (q - 1).
inline double vswr_from_return_loss_db(double return_loss_db) noexcept {
    const double loss_db = math::abs(return_loss_db); // of +0, not -0
    if (loss_db < math::tiny) return (4.0 / math::nepers_per_db) / loss_db;
    return 1.0 + 2.0 / math::power_of_db_m1(loss_db / 2.0);
}
inline double return_loss_db_from_vswr(double vswr) noexcept {
    if (vswr > 1.0 / math::tiny) return 4.0 * math::db_per_neper / vswr;
    return 2.0 * math::ten_log10_1p(2.0 / (vswr - 1.0)); // (s + 1) / (s - 1) = 1 + 2 / (s - 1)
}
// The power that is not reflected: 10^(-a/10) + 10^(-b/10) = 1 joins the two losses in both directions.
inline double complementary_loss_db(double loss_db) noexcept {
    if (loss_db < math::tiny) return 0.0 - math::ten_log10(math::nepers_per_db) - math::ten_log10(loss_db);
    if (loss_db > math::ordinary_db) {
        const double r = math::ratio_of_db(-loss_db, 0.5, 0.0);
        return math::db_per_neper * r * r;
    }
    return loss_db < 3.0 ? 0.0 - math::ten_log10(0.0 - math::power_of_db_m1(-loss_db))
                         : 0.0 - math::ten_log10_1p(-math::power_of_db(-loss_db));
}
inline double reflection_from_resistances(double load_ohm, double reference_ohm) noexcept {
    const double sum = load_ohm + reference_ohm;
    if (sum == math::infinity) [[unlikely]]
        return math::abs(0.5 * load_ohm - 0.5 * reference_ohm) / (0.5 * load_ohm + 0.5 * reference_ohm);
    return math::abs(load_ohm - reference_ohm) / sum;
}
inline double mismatch_uncertainty_high_db(double reflection_1, double reflection_2) noexcept {
    const double product = reflection_1 * reflection_2;
    if (product < math::tiny) return 0.0 + reflection_1 * (2.0 * math::db_per_neper * reflection_2);
    return 2.0 * math::ten_log10_1p(product);
}
inline double mismatch_uncertainty_low_db(double reflection_1, double reflection_2) noexcept {
    const double product = reflection_1 * reflection_2;
    if (product < math::tiny) return 0.0 - reflection_1 * (2.0 * math::db_per_neper * reflection_2);
    if (product < 0.5) return 2.0 * math::ten_log10_1p(-product);
    return math::twenty_log10((1.0 - reflection_1) + reflection_1 * (1.0 - reflection_2)); // 1 - r1 r2, no cancelling
}

} // namespace lvb::units
