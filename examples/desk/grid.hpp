// The squares that cover the areas of a site.
#pragma once

#include "document.hpp"
#include "scenario.hpp"

namespace desk {

/// More points than this no survey looks at.
constexpr double most_points = 1e6;

/// Squares in columns along x and rows along y, each looked at in its middle. They are counted row by row.
struct Grid {
    double x_m = 0.0; ///< of the first column
    double y_m = 0.0; ///< of the first row
    double step_m = 0.0;
    std::size_t columns = 0;
    std::size_t rows = 0;

    std::size_t size() const { return columns * rows; }
    std::size_t column_of(std::size_t i) const { return i % columns; }
    std::size_t row_of(std::size_t i) const { return i / columns; }
    double x_of(std::size_t column) const { return x_m + static_cast<double>(column) * step_m; }
    double y_of(std::size_t row) const { return y_m + static_cast<double>(row) * step_m; }
};

/// Throws Refusal where the site's step makes more than most_points.
Grid grid_of(const Document &document, const Site &site);

} // namespace desk
