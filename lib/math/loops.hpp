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
    /// v gets a number between -1 and 1, by the quantity and attempt, for each trial of the piece of that number
    void (*draw)(std::uint64_t number, std::uint64_t seed, std::uint32_t quantity, std::uint32_t attempt, double *v);
    /// y = x + scale law(v); x may be y
    void (*deviate[laws])(const double *v, double scale, const double *x, double *y);
    /// y = an exponential deviate of mean 1
    void (*exponential)(const double *v, double *y);
    /// y = x + its decibels; x may be y
    void (*exponential_decibels)(const double *v, const double *x, double *y);
};

const Loops &loops_of(InstructionSet set) noexcept;

/// Asks the processor, which may take some microseconds on a virtual machine.
bool has(InstructionSet set) noexcept;
InstructionSet best_instruction_set() noexcept;

} // namespace lvb::math
