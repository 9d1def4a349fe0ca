// The loops that tables of least costs are made with.
#pragma once

#include <cstddef>

namespace lvb::decide {

/// Lowers each of `count` costs to that of a step and what follows it: the one after the step, or with `two` the lesser
/// of it and its right neighbour.
void relax(float *to, const float *from, std::size_t count, float cost, bool two) noexcept;

inline constexpr float largest_need = 1e25f;
/// The same of what noise is needed: before a step it is `excess` and `part` of what is needed after it, and no more
/// than largest_need, from which on nothing is told. None of the numbers is negative or above 1e30.
void relax_need(float *to, const float *from, std::size_t count, float excess, float part, bool two) noexcept;

} // namespace lvb::decide
