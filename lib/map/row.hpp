// Loops over pieces of a map, in factors by which power is lost: one logarithm per point comes after. Compiled once for
// each instruction set; all give the same bits.
#pragma once

#include "math/loops.hpp"

#include <cstddef>
#include <cstdint>

namespace lvb::map {

inline constexpr std::size_t piece = math::piece;

/// A vector in metres, or a direction.
struct Vector {
    double x, y, z;
};

struct Points {
    alignas(64) double x[piece], y[piece], z[piece];
    bool on_row = false; ///< y and z are the same for all: the loops, which then read the first ones, take less time
};

/// Nearer than this a point counts as so far away.
inline constexpr double nearest_m = 0.01;

/// A loss of so much and more lets nothing through.
inline constexpr double no_way = 1e150;
/// What an empty sum of powers holds: a logarithm can be taken of it.
inline constexpr double no_power = 1e-300;

/// A pattern that is a cosine to the power 2 half_exponent in the front half space, and never loses more than `behind`.
struct Cosine {
    Vector aim; ///< of length 1
    double half_exponent, behind;
};

/// What a row of points along x sees of an antenna, whose place and aim are taken apart along the row and across.
struct RowSight {
    double x, across2;    ///< of its place; the square of the way across
    double aim_x, ahead;  ///< of its aim; what the way across adds to the way ahead
    double behind, scale; ///< of its pattern; of all its losses
};

inline constexpr std::size_t abreast = 2;

/// A vertical rectangle from (x1, y1) to (x2, y2). With a fixed share the power through it is multiplied by that;
/// otherwise waves bend around its edges, the lower one only where it is free.
struct Screen {
    double x1, y1, x2, y2, bottom, top;
    bool bottom_is_free, fixed;
    double share;
};

/// Limits of a window; NaN where not stated, which no comparison prefers.
struct Limits {
    double floor, low, high, ceiling;
};

inline constexpr std::size_t zones = 6;
/// What becomes of a point: its zone, or one of these. A point that drops out and is overloaded has a fate of its own,
/// so that a count of one fate tells everything.
enum Fate : std::int32_t {
    not_judged,
    dropout,
    low,
    wanted,
    high,
    overload,
    dropped_overloaded,
    is_outside,
    is_unmodelled,
    is_beyond,
    fates
};
/// The zone of a fate: not judged where a point is not counted.
constexpr std::int32_t zone_of(std::int32_t fate) noexcept {
    if (fate > dropped_overloaded) return not_judged;
    return fate == dropped_overloaded ? dropout : fate;
}

/// What stands in a mask: that a point is counted, or its fate.
inline constexpr double counted = -1.0, outside = is_outside, unmodelled = is_unmodelled, beyond = is_beyond;

/// Near levels: a change of others, or of none.
struct Near {
    const double *level;
    double change;

    double at(std::size_t i) const noexcept { return level[i] + change; }
};

/// Where goes what a receiver makes of the levels of a piece.
struct Judged {
    double *margin, *headroom;
    std::int32_t *fate;
};
struct PieceTally {
    std::int32_t with_fate[fates];
    double lowest, hottest; ///< +infinity and -infinity where nothing is counted
};

/// The loops of one instruction set, each over one piece. A loss is the power at 1 m toward an antenna's maximum in
/// free space over that which arrives: 1 and more but next to the antenna, infinite where nothing does.
struct RowLoops {
    void (*fill)(double *values, double value);
    /// whole numbers, or `otherwise` where a point is not counted
    void (*codes)(const double *values, const double *mask, double otherwise, std::int32_t *out);
    /// x of columns from `first` on
    void (*columns)(double first, double origin, double step, double *x);
    /// loss[i] of free space
    void (*free_space)(const Points &points, const Vector &from, double *loss);
    /// the same with the pattern's; whole half exponents up to most_whole_exponent take no logarithm
    void (*cosine)(const Points &points, const Vector &from, const Cosine &pattern, double *loss);
    /// loss[i] where kept[i] is left of the power
    void (*weaken)(double *loss, const double *kept);
    /// loss[i] with that of the screen
    void (*screen)(const Points &points, const Vector &from, const Screen &screen, double per_wavelength, double *loss);
    /// least[i] = the lesser one of itself and scale times the loss
    void (*least)(const double *loss, double scale, double *least);
    /// the same, and serving[i] = its antenna
    void (*serve)(const double *loss, double scale, double antenna, double *least, double *serving);
    /// the same of `abreast` antennas in free space, from index `first` on, whose patterns have the same half exponent:
    /// a whole one up to most_row_exponent, or 0 of isotropic antennas
    void (*serve_row)(const double *x, const RowSight *sights, std::uint32_t half_exponent, double first, double *least,
                      double *serving);
    /// sum[i] += the power that scale times the loss leaves
    void (*add)(const double *loss, double scale, double *sum);
    /// inside[i] changes its sign where x lies before an edge that the row crosses
    void (*cross)(const double *x, double at, double *inside);
    /// mask[i] = counted where x lies in [from, to]
    void (*touch)(const double *x, double from, double to, double *mask);
    /// level[i] = reference + scale 10 log10(value[i]): -infinity where value[i] is `nothing`, and NaN where the point
    /// is not counted
    void (*levels)(const double *value, const double *mask, double scale, double nothing, double reference,
                   double *level);
    void (*judge)(const double *level, const Near &near, const double *mask, const Limits &limits, bool judged,
                  const Judged &to);
    /// the zones of fates, 0 where a point is not counted
    void (*zones)(const std::int32_t *fate, std::int32_t *zone);
    void (*tally)(const double *level, const Near &near, const std::int32_t *fate, PieceTally &tally);
    /// the least of the greatest (or the sum) of three powers at each point, and the greatest of it
    double (*weakest)(const double *a, const double *b, const double *c, bool sum);
    double (*strongest)(const double *a, const double *b, const double *c, bool sum);
};

inline constexpr double most_whole_exponent = 64.0, most_row_exponent = 2.0;

const RowLoops &row_loops_of(math::InstructionSet set) noexcept;

} // namespace lvb::map
