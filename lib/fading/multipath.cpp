#include "fading/multipath.hpp"

#include "fading/margin.hpp"
#include "math/elementary.hpp"
#include "math/exact.hpp"

namespace lvb::fading {
namespace {

constexpr double ln_2 = 0.69314718055994530942;
constexpr double ten_log10_ln_2 = -1.5917453895486159239;

math::Tails rice(double margin_db, double k_db) noexcept {
    // Powers against half of the scattered power's mean: the direct path's is 2 x, the threshold's 2 y.
    const double direct = math::power_of_db(k_db);
    const double threshold = math::power_of_db(-margin_db);
    const double below_mean = 0.0 - math::power_of_db_m1(-margin_db); // 1 - threshold
    return math::marcum_tails(direct, (1.0 + direct) * threshold, direct * below_mean - threshold);
}

math::Tails nakagami(double margin_db, double shape) noexcept { return math::gamma_tails(shape, {-margin_db, 0.0}); }

} // namespace

double rayleigh_outage_below_mean(double margin_db) noexcept {
    return 0.0 - math::exponential_m1(-math::power_of_db(-margin_db));
}
double rayleigh_margin_below_mean_db(double outage) noexcept { return rayleigh_margin_db({outage, 1.0 - outage}); }
double rayleigh_outage_below_median(double margin_db) noexcept {
    return 0.0 - math::exponential_m1(-ln_2 * math::power_of_db(-margin_db));
}
double rayleigh_margin_below_median_db(double outage) noexcept {
    return rayleigh_margin_below_mean_db(outage) + ten_log10_ln_2;
}
double rice_outage_below_mean(double margin_db, double k_db) noexcept { return rice(margin_db, k_db).below; }
double rice_margin_below_mean_db(double outage, double k_db) noexcept { return margin_db(outage, rice, k_db); }
double nakagami_outage_below_mean(double margin_db, double shape) noexcept { return nakagami(margin_db, shape).below; }
double nakagami_margin_below_mean_db(double outage, double shape) noexcept {
    return margin_db(outage, nakagami, shape);
}

} // namespace lvb::fading
