// Loops over columns, compiled once for each instruction set and chosen at run time. All give the same bits.
#pragma once

#include <cstddef>
#include <cstdint>

namespace lvb::math {

/// Columns are worked on in pieces of this length, which stay in the nearest cache.
inline constexpr std::size_t piece = 128;

enum class InstructionSet : std::int32_t { baseline = 1, avx2 = 2, avx512 = 3 };

/// What is the same along a row of a grid of levels: the parts of its loss, the level before the air, and the sum of
/// the changes after it.
struct Row {
    double high, low, before, after;
};

/// Square roots of a piece, taken apart: see kernel::Root.
struct Roots {
    alignas(64) double k[piece], high[piece], low[piece];
};

/// Laws of a draw that is spread around 0: see draws.hpp.
enum class Law : std::int32_t { rectangular, triangular, normal, arc_sine };
inline constexpr std::size_t laws = 4;

/// What is drawn: a number between -1 and 1, by the quantity and attempt, for each trial of the piece of that number.
struct Drawn {
    std::uint64_t seed, number;
    std::uint32_t quantity, attempt;
};

/// The loops of one instruction set, each over one piece. Numbers are ordinary: see decibel.hpp.
struct Loops {
    /// y = scale 10 log10(x) + offset
    void (*decibels)(const double *x, double *y, double scale, double offset);
    /// high + low = scale 10 log10(x)
    void (*decibel_parts)(const double *x, double *high, double *low, double scale);
    /// y = scale 10 log10(x) + more, the parts added one by one
    void (*decibel_sum)(const double *x, double *y, double scale, double more_high, double more_low);
    /// y = 10^(scale (x + offset) / 10)
    void (*ratio)(const double *x, double *y, double scale, double offset);
    void (*roots)(const double *x, Roots &roots);
    /// y = root 10^(scale (x + offset) / 10)
    void (*rooted_ratio)(const double *x, const Roots &roots, double *y, double scale, double offset);
    /// whether all lie in [low, high]
    bool (*within)(const double *x, double low, double high);
    /// y = (before - loss) + after, where loss is the sum of the parts of the row and of the column
    void (*levels)(const double *high, const double *low, double *y, std::size_t length, const Row &row);
    /// y = offset + x
    void (*shift)(const double *x, double *y, double offset);
    // Of those below, x may be y.
    /// y = x + more
    void (*add)(const double *x, double *y, const double *more);
    /// y = x + scale law(v)
    void (*deviate[laws])(const Drawn &drawn, const double *x, double *y, double scale);
    /// y = x + scale times an exponential deviate of mean 1
    void (*exponential)(const Drawn &drawn, const double *x, double *y, double scale);
    /// y = x + the decibels of an exponential deviate of mean 1
    void (*rayleigh)(const Drawn &drawn, const double *x, double *y);
    /// y = x + the decibels of the power of a steady amplitude and one of that mean power at a random angle
    void (*rice)(const Drawn &power, const Drawn &angle, const double *x, double *y, double steady,
                 double fading_power);
    /// Of kernel::Gamma: the decibels of each trial's cube, and whether it is taken: where the margin is positive
    void (*gamma)(const Drawn &normal, const Drawn &exponential, double *cube_db, double *margin, double d, double c);
};

const Loops &loops_of(InstructionSet set) noexcept;

/// Asks the processor, which may take some microseconds on a virtual machine.
bool has(InstructionSet set) noexcept;
InstructionSet best_instruction_set() noexcept;

} // namespace lvb::math
