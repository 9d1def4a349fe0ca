// Search in a rising column.
#pragma once

#include <cstddef>

namespace lvb::math {

/// Index of the first of the two neighbouring rows that enclose x; the end interval where x lies outside, and 0 in a
/// column of one row.
inline std::size_t interval(const double *rising, std::size_t rows, double x) noexcept {
    std::size_t low = 0;
    std::size_t high = rows - 1;
    while (high > low + 1) {
        const std::size_t middle = low + (high - low) / 2;
        if (rising[middle] <= x) low = middle;
        else high = middle;
    }
    return low;
}

} // namespace lvb::math
