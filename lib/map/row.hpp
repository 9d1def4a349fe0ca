// Power along a piece of a map's row, in linear numbers: one logarithm per point comes after. Compiled once for each
// instruction set; all give the same bits.
#pragma once

#include "math/loops.hpp"

#include <cstddef>

namespace lvb::map {

inline constexpr std::size_t piece = math::piece;

/// A vector in metres, or a direction.
struct Vector {
    double x, y, z;
};

/// Points of a row, all at the same y and z.
struct Points {
    double x[piece];
    double y, z;
};

/// An antenna of the site with all that stands before and behind it, as linear power. The pattern is a cosine to the
/// power 2 half_exponent in the front half space, never below `back`; an exponent of zero with no back is the same
/// everywhere.
struct Emitter {
    Vector at;
    Vector aim;            ///< of length 1
    double power_at_1m;    ///< mW at the end of the chain for a point at 1 m toward the aim in free space
    double back;           ///< least gain relative to the aim's
    double half_exponent;  ///< 0: isotropic
};

/// A vertical rectangle from (x1, y1) to (x2, y2). With a fixed factor the power through it is multiplied by that;
/// otherwise waves bend around its edges.
struct Screen {
    double x1, y1, x2, y2, bottom, top;
    bool fixed;
    double factor;
};

/// The loops of one instruction set, each over one piece.
struct RowLoops {
    /// power[i] = free-space power of the emitter at each point; squares[i] = the cosine's square, where that is asked
    void (*isotropic)(const Points &points, const Emitter &emitter, double *power);
    void (*cosine)(const Points &points, const Emitter &emitter, double *power);
    /// power[i] = the same times the pattern, given the pattern's gain at each point
    void (*squared_cosine)(const Points &points, const Emitter &emitter, double *power, double *squared);
    void (*with_pattern)(double *power, const double *gain, double back);
    /// power[i] is multiplied by what the screen leaves
    void (*screen)(const Points &points, const Vector &from, const Screen &screen, double per_wavelength, double *power);
    /// best[i] = the greater power, serving[i] = its antenna
    void (*best)(const double *power, double antenna, double *best, double *serving);
    void (*add)(const double *power, double *sum);
};

const RowLoops &row_loops_of(math::InstructionSet set) noexcept;

} // namespace lvb::map
