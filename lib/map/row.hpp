// Loops over pieces of a map, in linear power: one logarithm per point comes after. Compiled once for each instruction
// set; all give the same bits.
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

/// A share of power below it counts as nothing: a product of two shares is then a normal number, or nothing.
inline constexpr double least_share = 1e-150;
/// What an empty sum of powers holds: a logarithm can be taken of it.
inline constexpr double no_power = 1e-300;

/// A pattern that is a cosine to the power 2 half_exponent in the front half space, never below `back`.
struct Cosine {
    Vector aim; ///< of length 1
    double half_exponent, back;
};

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

/// What stands in a mask.
inline constexpr double counted = 1.0, outside = 0.0, unmodelled = -1.0, beyond = 2.0;

inline constexpr std::size_t zones = 6;
/// Of a point that is not counted: a count then asks one thing only, which g++ 12 for AVX2 gets right, and two it does
/// not.
inline constexpr double no_zone = -1.0;
struct PieceTally {
    double in_zone[zones];
    double outside, unmodelled, overloaded;
    double lowest, hottest; ///< +infinity and -infinity where nothing is counted
};

/// The loops of one instruction set, each over one piece. A share is a power relative to that at 1 m toward an
/// antenna's maximum in free space.
struct RowLoops {
    void (*fill)(double *values, double value);
    /// y = scale x + offset
    void (*add_scaled)(const double *x, double scale, double offset, double *y);
    /// whole numbers, or `otherwise` where a point is not counted
    void (*codes)(const double *values, const double *mask, double otherwise, std::int32_t *out);
    /// x of columns from `first` on
    void (*columns)(double first, double origin, double step, double *x);
    /// share[i] of free space
    void (*free_space)(const Points &points, const Vector &from, double *share);
    /// the same times the pattern; whole half exponents up to most_whole_exponent take no logarithm
    void (*cosine)(const Points &points, const Vector &from, const Cosine &pattern, double *share);
    /// share[i] *= factor[i] or `least`, whichever is greater
    void (*multiply)(double *share, const double *factor, double least);
    /// share[i] is multiplied by what the screen leaves
    void (*screen)(const Points &points, const Vector &from, const Screen &screen, double per_wavelength,
                   double *share);
    /// best[i] = the greater power
    void (*best)(const double *share, double scale, double *best);
    /// the same, and serving[i] = its antenna
    void (*serve)(const double *share, double scale, double antenna, double *best, double *serving);
    void (*add)(const double *share, double scale, double *sum);
    /// inside[i] changes its sign where x lies before an edge that the row crosses
    void (*cross)(const double *x, double at, double *inside);
    /// value[i] = 1 where x lies in [from, to]
    void (*touch)(const double *x, double from, double to, double *value);
    /// level[i] is made -infinity where there is no power, and NaN where the point is not counted
    void (*finish)(const double *power, const double *mask, double *level);
    void (*zones)(const double *level, const double *near, const double *mask, const Limits &limits, bool judged,
                  double *zone);
    void (*tally)(const double *level, const double *near, const double *mask, const double *zone, double ceiling,
                  PieceTally &tally);
    /// the least of the greatest (or the sum) of three powers at each point, and the greatest of it
    double (*weakest)(const double *a, const double *b, const double *c, bool sum);
    double (*strongest)(const double *a, const double *b, const double *c, bool sum);
};

inline constexpr double most_whole_exponent = 64.0;

const RowLoops &row_loops_of(math::InstructionSet set) noexcept;

} // namespace lvb::map
