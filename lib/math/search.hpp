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

/// Value at x between the rows of a column of one row or more, on straight lines; exact at every row. x lies within.
inline double interpolated(const double *rising, const double *values, std::size_t rows, double x) noexcept {
    if (rows == 1) return values[0];
    const std::size_t i = interval(rising, rows, x);
    if (x == rising[i + 1]) return values[i + 1];
    return values[i] + (x - rising[i]) / (rising[i + 1] - rising[i]) * (values[i + 1] - values[i]);
}

/// The same on a circle of 360 degrees: after the last row comes the first again. The rows span less than the circle.
inline double interpolated_on_circle(const double *rising_deg, const double *values, std::size_t rows,
                                     double angle_deg) noexcept {
    const double first = rising_deg[0], last = rising_deg[rows - 1];
    const double again = first + 360.0;
    while (angle_deg < first) angle_deg += 360.0;
    while (angle_deg >= again) angle_deg -= 360.0;
    if (angle_deg <= last) return interpolated(rising_deg, values, rows, angle_deg);
    return values[rows - 1] + (angle_deg - last) / (again - last) * (values[0] - values[rows - 1]);
}

} // namespace lvb::math
