#include "decide/trials.hpp"

#include "math/draws.hpp"
#include "math/elementary.hpp"

namespace lvb::decide {
namespace {

using math::Loops;
using math::piece;

// Grains of 2^-16 dB, at most 2^14 dB: squares and the sums of 2^32 of them stay whole numbers.
constexpr double grains_per_db = 0x1p16, largest_half = 0x1p32;
constexpr double largest_grains = static_cast<double>(Moments::largest_deviation);

// Nothing, to begin a sum with.
alignas(64) constexpr double nothing[piece] = {};

// Fading in decibels of the mean power, y = x + it. A steady part, and a Rayleigh one at a random angle.
void add_rice(const Loops &loops, const math::Drawn &power, const math::Drawn &angle, double factor_db, const double *x,
              double *y) noexcept {
    const double share = 1.0 / (1.0 + math::power_of_db(factor_db)); // of what is not steady
    loops.rice(power, angle, x, y, math::sqrt(1.0 / (1.0 + math::power_of_db(0.0 - factor_db))), share);
}

// Decibels of cubes that are taken, in place of those that were not. They are drawn side by side, as few wait for none.
void draw_again(const math::kernel::Gamma &gamma, const math::Drawn &drawn, const double *margin,
                double *cube_db) noexcept {
    using namespace math::kernel;
    // Few are not taken: the least margins of columns tell where to look.
    constexpr std::size_t columns = 16;
    double least[columns];
    for (std::size_t i = 0; i < columns; ++i) least[i] = margin[i];
    for (std::size_t row = columns; row < piece; row += columns)
        for (std::size_t i = 0; i < columns; ++i) least[i] = margin[row + i] < least[i] ? margin[row + i] : least[i];
    std::size_t open[piece], count = 0;
    for (std::size_t column = 0; column < columns; ++column) {
        if (least[column] > 0.0) continue;
        for (std::size_t i = column; i < piece; i += columns)
            if (!(margin[i] > 0.0)) open[count++] = i;
    }
    double x[piece], exponential[piece];
    for (std::uint32_t attempt = 1; count > 0; ++attempt) {
        for (std::size_t i = 0; i < count; ++i) { // a counter for each trial by itself
            const std::uint64_t trial = drawn.number * piece + open[i];
            const auto words =
                philox(Words<std::uint64_t>{trial & low_word, trial >> 32, drawn.quantity, attempt}, drawn.seed);
            x[i] = Normal::of(signed_unit(words.a));
            exponential[i] = exponential_deviate(words.b);
        }
        std::size_t left = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const double base = gamma.base(x[i]), db = 3.0 * fading_decibels(base);
            cube_db[open[i]] = db;
            const std::size_t kept = open[i];
            open[left] = kept;
            left += gamma.margin(x[i], base, db, exponential[i]) > 0.0 ? 0u : 1u;
        }
        count = left;
    }
}

void add_nakagami(const Loops &loops, const math::Drawn &normal, const math::Drawn &exponential, double shape,
                  const double *x, double *y) noexcept {
    // Below 1 the deviate of one more is multiplied by a power of a uniform one.
    const bool low = shape < 1.0;
    const auto gamma = math::kernel::Gamma::of_shape(low ? shape + 1.0 : shape);
    alignas(64) double db[piece], margin[piece];
    loops.gamma(normal, exponential, db, margin, gamma.d, gamma.c);
    draw_again(gamma, normal, margin, db);
    loops.shift(db, db, math::ten_log10(gamma.d / shape)); // over the mean
    loops.add(x, y, db);
    if (!low) return;
    const math::Drawn power{normal.seed, normal.number, fading_quantity + 2, 0};
    loops.exponential(power, y, y, 0.0 - math::db_per_neper / shape);
}

void swap(double &a, double &b) noexcept {
    const double kept = a;
    a = b;
    b = kept;
}

// Puts the level of a rank where it belongs, lower ones before and higher ones behind it (Hoare's selection). Pivots
// are drawn, so that no order of the levels is a bad one.
double select(double *levels, std::int64_t count, std::int64_t rank) noexcept {
    std::int64_t first = 0, last = count - 1;
    std::uint64_t drawn = 0;
    while (first < last) {
        drawn = drawn * 0x5851f42d4c957f2d + 0x14057b7ef767814f;
        const auto length = static_cast<std::uint64_t>(last - first + 1);
        const double pivot = levels[first + static_cast<std::int64_t>((drawn >> 33) % length)];
        std::int64_t i = first, j = last;
        for (;;) {
            while (levels[i] < pivot) ++i;
            while (levels[j] > pivot) --j;
            if (i >= j) break;
            swap(levels[i++], levels[j--]);
        }
        // up to j nothing is higher than the pivot, from i on nothing lower, and what lies between is the pivot
        if (i == j) ++i, --j;
        if (rank <= j) last = j;
        else if (rank >= i) first = i;
        else break;
    }
    return levels[rank];
}

} // namespace

Deviations::Deviations(const Loops &loops, const Trials &trials, std::uint64_t number) noexcept
    : far_db(nothing), near_db(nothing) {
    const auto drawn = [&](std::uint32_t quantity) noexcept { return math::Drawn{trials.seed, number, quantity, 0}; };
    // both ends first, and on top of these the far one
    for (int end = 0; end < 2; ++end) {
        const bool far_only = end == 1;
        double *sum = far_only ? far_ : near_;
        const double *&so_far = far_only ? far_db : near_db;
        for (std::uint32_t i = 0; i < trials.spread_count; ++i) {
            const Spread &spread = trials.spreads[i];
            if (spread.far_only != far_only) continue;
            loops.deviate[static_cast<std::size_t>(spread.law)](drawn(spread.quantity), so_far, sum, spread.scale_db);
            so_far = sum;
        }
        if (!far_only) far_db = near_db;
    }
    if (trials.fading == Fading::none) return;
    const math::Drawn first = drawn(fading_quantity), second = drawn(fading_quantity_2);
    if (trials.fading == Fading::rayleigh) loops.rayleigh(first, far_db, far_);
    if (trials.fading == Fading::rice) add_rice(loops, first, second, trials.rice_factor_db, far_db, far_);
    if (trials.fading == Fading::nakagami) add_nakagami(loops, first, second, trials.nakagami_shape, far_db, far_);
    far_db = far_;
}

void give_levels(const Loops &loops, double level_dbm, const double *deviation_db, std::size_t count,
                 double *levels_dbm) noexcept {
    if (count == piece) loops.shift(deviation_db, levels_dbm, level_dbm);
    else
        for (std::size_t i = 0; i < count; ++i) levels_dbm[i] = level_dbm + deviation_db[i];
}

void Moments::enter(double deviation_db) noexcept {
    const double grains = deviation_db * grains_per_db;
    const double held = grains > largest_grains ? largest_grains : grains < -largest_grains ? -largest_grains : grains;
    const auto whole = static_cast<std::int64_t>((held + math::kernel::rounder) - math::kernel::rounder);
    const auto square = static_cast<std::uint64_t>(whole * whole);
    sum += whole;
    squares_low += square;
    squares_high += squares_low < square ? 1 : 0;
}

void Moments::add(const Moments &more) noexcept {
    sum += more.sum;
    squares_low += more.squares_low;
    squares_high += more.squares_high + (squares_low < more.squares_low ? 1 : 0);
}

double Moments::mean_db(std::uint64_t count) const noexcept {
    return static_cast<double>(sum) / static_cast<double>(count) / grains_per_db;
}

double Moments::standard_deviation_db(std::uint64_t count) const noexcept {
    if (count < 2) return math::not_a_number;
    const double n = static_cast<double>(count);
    const double squares =
        static_cast<double>(squares_high) * largest_half * largest_half + static_cast<double>(squares_low);
    const double mean = static_cast<double>(sum) / n;
    const double variance = (squares - mean * mean * n) / (n - 1.0);
    return variance > 0.0 ? math::sqrt(variance) / grains_per_db : 0.0;
}

void enter(Tally &tally, const chain::Window &window, const Levels &levels, const Deviations &deviations,
           std::size_t from, std::size_t to) noexcept {
    double floor = -math::infinity, ceiling = math::infinity;
    if (window.has_floor) floor = window.floor_dbm;
    if (window.has_ceiling) ceiling = window.ceiling_dbm;
    for (std::size_t i = from; i < to; ++i) {
        const double far = levels.far_dbm + deviations.far_db[i], near = levels.near_dbm + deviations.near_db[i];
        const std::uint64_t far_below = far<floor, far_above = far> ceiling;
        const std::uint64_t near_below = near<floor, near_above = near> ceiling;
        tally.far_below += far_below;
        tally.far_above += far_above;
        tally.near_below += near_below;
        tally.near_above += near_above;
        tally.inside += 1 - (far_below | far_above | near_below | near_above);
        tally.far.enter(deviations.far_db[i]);
        tally.near.enter(deviations.near_db[i]);
    }
    tally.trials += to - from;
}

double probability_error(std::uint64_t hits, std::uint64_t count) noexcept {
    const double n = static_cast<double>(count), h = static_cast<double>(hits);
    const double p = (h + 1.0) / (n + 2.0), others = (n - h + 1.0) / (n + 2.0);
    return math::sqrt(p * others / (n + 3.0));
}

Quantile quantile(double *levels_dbm, std::uint64_t count, double probability) noexcept {
    const double n = static_cast<double>(count), last = n - 1.0;
    const auto at = [&](double rank) noexcept { // counted from 0
        const double held = rank < 0.0 ? 0.0 : rank > last ? last : rank;
        return select(levels_dbm, static_cast<std::int64_t>(count), static_cast<std::int64_t>(held));
    };
    // the least level that at least this share of all does not exceed
    const double share = probability * n, whole = static_cast<double>(static_cast<std::int64_t>(share));
    const double rank = whole < share ? whole : whole > 0.0 ? whole - 1.0 : 0.0;
    const double side =
        // NOLINTNEXTLINE(bugprone-incorrect-roundings): far below 2^52, and a rank more or less is as good
        static_cast<double>(static_cast<std::int64_t>(math::sqrt(n * probability * (1.0 - probability)) + 0.5));
    const double away = side < 1.0 ? 1.0 : side;
    const double level = at(rank), high = at(rank + away), low = at(rank - away);
    return {level, high > low ? (high - low) / 2.0 : 0.0};
}

} // namespace lvb::decide
