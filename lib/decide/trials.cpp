#include "decide/trials.hpp"

#include "math/draws.hpp"
#include "math/elementary.hpp"

namespace lvb::decide {
namespace {

using math::Loops;
using math::piece;

constexpr std::size_t normal = static_cast<std::size_t>(math::Law::normal);

// Grains of 2^-16 dB, at most 2^14 dB: squares and the sums of 2^32 of them stay whole numbers.
constexpr double grains_per_db = 0x1p16, largest_grains = 0x1p30, largest_half = 0x1p32;

struct Piece {
    alignas(64) double at[piece];
};

// Nothing, to begin a sum with.
constexpr Piece nothing{};

// The fading of a piece, in decibels of the mean power, on top of what is there.
class Fader {
  public:
    Fader(const Loops &loops, std::uint64_t seed, std::uint64_t number, const double *before_db,
          double *after_db) noexcept
        : loops_(loops), seed_(seed), number_(number), before_db_(before_db), after_db_(after_db) {}

    void rayleigh() noexcept {
        Piece v;
        draw(fading_quantity, 0, v);
        loops_.exponential_decibels(v.at, before_db_, after_db_);
    }
    // A steady part and two normal ones at right angles.
    void rice(double factor_db) noexcept {
        const double share = 1.0 / (1.0 + math::power_of_db(factor_db)); // of what is not steady
        const double steady = math::sqrt(1.0 / (1.0 + math::power_of_db(0.0 - factor_db)));
        const double deviation = math::sqrt(0.5 * share);
        Piece v, a, b, y, db;
        draw(fading_quantity, 0, v);
        loops_.deviate[normal](v.at, deviation, nothing.at, a.at);
        draw(fading_quantity_2, 0, v);
        loops_.deviate[normal](v.at, deviation, nothing.at, b.at);
        for (std::size_t i = 0; i < piece; ++i) {
            const double along = steady + a.at[i];
            y.at[i] = along * along + b.at[i] * b.at[i];
        }
        loops_.decibels(y.at, db.at, 1.0, 0.0);
        for (std::size_t i = 0; i < piece; ++i) after_db_[i] = before_db_[i] + db.at[i];
    }
    void nakagami(double shape) noexcept;

  private:
    void draw(std::uint32_t quantity, std::uint32_t attempt, Piece &v) const noexcept {
        loops_.draw(number_, seed_, quantity, attempt, v.at);
    }
    // The same number as loops_.draw gives this trial, by itself.
    double draw_one(std::size_t trial, std::uint32_t quantity, std::uint32_t attempt) const noexcept {
        using namespace math::kernel;
        const std::uint64_t counter = number_ * counters_of_piece + trial % counters_of_piece;
        const auto words = philox(Words<std::uint64_t>{counter & low_word, counter >> 32, quantity, attempt}, seed_);
        const std::uint64_t of_trial[] = {words.a, words.b, words.c, words.d};
        return signed_unit(of_trial[trial / counters_of_piece]);
    }

    const Loops &loops_;
    std::uint64_t seed_, number_;
    const double *before_db_;
    double *after_db_;
};

// Gamma deviates by Marsaglia & Tsang (2000): a cube of a shifted normal deviate, taken or drawn again.
struct Gamma {
    double d, c;

    explicit Gamma(double shape) noexcept : d(shape - 1.0 / 3.0), c(1.0 / math::sqrt(9.0 * d)) {}
    /// Of a normal deviate, the decibels of its cube and an exponential deviate.
    bool takes(double x, double cube_db, double exponential) const noexcept {
        const double cube = 1.0 + c * x;
        if (!(cube > 0.0)) return false;
        const double volume = cube * cube * cube;
        return 0.0 - exponential < ((0.5 * x * x + d) - d * volume) + d * (cube_db * math::nepers_per_db);
    }
    /// A base that has a logarithm, also where it is not taken.
    double base(double x) const noexcept {
        const double cube = 1.0 + c * x;
        return cube > 0.0 ? cube : 1.0;
    }
};

void Fader::nakagami(double shape) noexcept {
    // Below 1 the deviate of one more is multiplied by a power of a uniform one.
    const bool low = shape < 1.0;
    const Gamma gamma(low ? shape + 1.0 : shape);
    const double mean_db = math::ten_log10(gamma.d / shape);
    Piece v, x, base, db, exponential;
    draw(fading_quantity, 0, v);
    loops_.deviate[normal](v.at, 1.0, nothing.at, x.at);
    draw(fading_quantity_2, 0, v);
    loops_.exponential(v.at, exponential.at);
    for (std::size_t i = 0; i < piece; ++i) base.at[i] = gamma.base(x.at[i]);
    loops_.decibels(base.at, db.at, 1.0, 0.0);
    for (std::size_t i = 0; i < piece; ++i) {
        double cube_db = 3.0 * db.at[i];
        bool taken = gamma.takes(x.at[i], cube_db, exponential.at[i]);
        for (std::uint32_t attempt = 1; !taken; ++attempt) {
            const double again = math::kernel::Normal::of(draw_one(i, fading_quantity, attempt));
            cube_db = 3.0 * math::ten_log10(gamma.base(again));
            taken =
                gamma.takes(again, cube_db, math::kernel::exponential_deviate(draw_one(i, fading_quantity_2, attempt)));
        }
        after_db_[i] = before_db_[i] + (cube_db + mean_db);
    }
    if (!low) return;
    draw(fading_quantity + 2, 0, v);
    loops_.exponential(v.at, exponential.at); // -ln u
    for (std::size_t i = 0; i < piece; ++i) after_db_[i] -= exponential.at[i] / shape * math::db_per_neper;
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
    : far_db(nothing.at), near_db(nothing.at) {
    alignas(64) double v[piece];
    // both ends first, and on top of these the far one
    for (int end = 0; end < 2; ++end) {
        const bool far_only = end == 1;
        double *sum = far_only ? far_.at : near_.at;
        const double *&so_far = far_only ? far_db : near_db;
        for (std::uint32_t i = 0; i < trials.spread_count; ++i) {
            const Spread &spread = trials.spreads[i];
            if (spread.far_only != far_only) continue;
            loops.draw(number, trials.seed, spread.quantity, 0, v);
            loops.deviate[static_cast<std::size_t>(spread.law)](v, spread.scale_db, so_far, sum);
            so_far = sum;
        }
        if (!far_only) far_db = near_db;
    }
    if (trials.fading == Fading::none) return;
    Fader fader(loops, trials.seed, number, far_db, far_.at);
    if (trials.fading == Fading::rayleigh) fader.rayleigh();
    if (trials.fading == Fading::rice) fader.rice(trials.rice_factor_db);
    if (trials.fading == Fading::nakagami) fader.nakagami(trials.nakagami_shape);
    far_db = far_.at;
}

void give_levels(double level_dbm, const double *deviation_db, std::size_t count, double *levels_dbm) noexcept {
    if (count == piece)
        for (std::size_t i = 0; i < piece; ++i) levels_dbm[i] = level_dbm + deviation_db[i];
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

double Moments::deviation_db(std::uint64_t count) const noexcept {
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
    const double floor = window.has_floor ? window.floor_dbm : -math::infinity;
    const double ceiling = window.has_ceiling ? window.ceiling_dbm : math::infinity;
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
        static_cast<double>(static_cast<std::int64_t>(math::sqrt(n * probability * (1.0 - probability)) + 0.5));
    const double away = side < 1.0 ? 1.0 : side;
    const double level = at(rank), high = at(rank + away), low = at(rank - away);
    return {level, high > low ? (high - low) / 2.0 : 0.0};
}

} // namespace lvb::decide
