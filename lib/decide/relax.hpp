// The loop that tables of least costs are made with.
#pragma once

#include <cstddef>

namespace lvb::decide {

/// Lowers each of `count` costs to that of a step and what follows it: the one after the step, or with `two` the lesser
/// of it and its right neighbour.
void relax(float *to, const float *from, std::size_t count, float cost, bool two) noexcept;

} // namespace lvb::decide
