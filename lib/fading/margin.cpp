#include "fading/margin.hpp"

namespace lvb::fading {
namespace {

// Outside, no outage of the models is told from 0 or 1.
constexpr double lowest_db = -1000.0, highest_db = 7000.0;

// Outages that are no normal numbers lie at an end, so that the search takes one way whether or not they are flushed.
double place_of(const math::Tails &tails) noexcept {
    constexpr double least = 0x1p-1022;
    if (tails.below < least) return math::infinity;
    return tails.above < least ? -math::infinity : rayleigh_margin_db(tails);
}

} // namespace

double rayleigh_margin_db(const math::Tails &tails) noexcept {
    const double above_db = tails.below < 0.5 ? math::ten_log10_1p(-tails.below) : math::ten_log10(tails.above);
    return 0.0 - math::ten_log10(-above_db * math::nepers_per_db);
}

double margin_db(double outage, Model model, double parameter) noexcept {
    const double wanted = rayleigh_margin_db({outage, 1.0 - outage});
    if (math::abs(wanted) == math::infinity) return wanted;
    double low = lowest_db, high = highest_db;
    double too_low = -math::infinity, too_high = math::infinity;
    double margin = wanted, reach = 1.0;
    // Longer and longer steps until the margin lies between two ends; then false position with a halved end (the
    // Illinois rule), and a bisection where it has no use of an end or is slow: the interval is at least halved in
    // every fourth step.
    int side = 0;
    for (int step = 0; step < 240; ++step) {
        const double error = place_of(model(margin, parameter)) - wanted;
        if (error == 0.0) break;
        if (error < 0.0) {
            low = margin;
            too_low = error;
            if (side < 0) too_high *= 0.5;
            side = -1;
        } else {
            high = margin;
            too_high = error;
            if (side > 0) too_low *= 0.5;
            side = 1;
        }
        if (high == highest_db) margin = low + reach;
        else if (low == lowest_db) margin = high - reach;
        else margin = low + (high - low) * (too_low / (too_low - too_high));
        const bool enclosed = low != lowest_db && high != highest_db;
        if (!(margin > low && margin < high) || (enclosed && step % 4 == 3)) margin = low + 0.5 * (high - low);
        if (margin == low || margin == high) break;
        reach *= 2.0;
    }
    return margin;
}

} // namespace lvb::fading
