// How sure a link is: its tolerances, shadowing and fading drawn many times over.
//
// What is drawn in a trial depends on the seed, the trial's number and the quantity alone, so that trials can be split
// in any way. Valid input only.
#pragma once

#include "chain/ledger.hpp"
#include "math/loops.hpp"

namespace lvb::decide {

/// A quantity that is spread by a law; `scale_db` is its half width, of a normal law the standard deviation.
struct Spread {
    math::Law law;
    bool far_only;
    std::uint32_t quantity;
    double scale_db;
};
/// Quantities: a stage's tolerance has the stage's index; these lie beyond all of them.
inline constexpr std::uint32_t shadowing_quantity = 0x10000, fading_quantity = 0x10001, fading_quantity_2 = 0x10002;

enum class Fading : std::int32_t { none, rayleigh, rice, nakagami };

struct Trials {
    const Spread *spreads;
    std::uint32_t spread_count;
    Fading fading;
    double rice_factor_db, nakagami_shape;
    std::uint64_t seed;
};

/// The deviations in the trials of one piece; where nothing differs at the far end, both are the near ones.
class Deviations {
  public:
    Deviations(const math::Loops &loops, const Trials &trials, std::uint64_t number) noexcept;
    Deviations(const Deviations &) = delete;
    Deviations &operator=(const Deviations &) = delete;

    const double *far_db, *near_db;

  private:
    alignas(64) double near_[math::piece], far_[math::piece];
};
/// Sums of whole grains, which add up to the same in any order.
struct Moments {
    static constexpr std::uint64_t largest_deviation = std::uint64_t{1} << 30; ///< in grains; greater ones count as it

    std::int64_t sum = 0;
    std::uint64_t squares_high = 0, squares_low = 0;

    void enter(double deviation_db) noexcept;
    void add(const Moments &more) noexcept;
    double mean_db(std::uint64_t count) const noexcept;
    /// Standard deviation of what was drawn from, as so many draws estimate it; NaN of fewer than 2.
    double standard_deviation_db(std::uint64_t count) const noexcept;
};

struct Tally {
    std::uint64_t trials = 0, inside = 0, far_below = 0, far_above = 0, near_below = 0, near_above = 0;
    Moments far, near;
};

/// The level at an end of the walk without deviations.
struct Levels {
    double far_dbm, near_dbm;
};

/// The levels of `count` trials.
void give_levels(const math::Loops &loops, double level_dbm, const double *deviation_db, std::size_t count,
                 double *levels_dbm) noexcept;

/// Enters trials `from` to `to` of a piece.
void enter(Tally &tally, const chain::Window &window, const Levels &levels, const Deviations &deviations,
           std::size_t from, std::size_t to) noexcept;

/// What is known of a probability after `hits` of `count` trials, none known before: the mean is the share of hits, the
/// standard deviation that of Laplace's rule of succession, which is never 0.
double probability_error(std::uint64_t hits, std::uint64_t count) noexcept;

/// Quantile of `count` levels by inverting their distribution function, and half the distance of those that lie one
/// standard deviation of the rank to both sides. The levels are put into another order.
struct Quantile {
    double level_dbm, error_db;
};
Quantile quantile(double *levels_dbm, std::uint64_t count, double probability) noexcept;

} // namespace lvb::decide
