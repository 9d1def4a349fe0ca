// Rows of a map: what is heard at each point of a grid, and a summary that joins with that of other rows.
#pragma once

#include "map/site.hpp"

namespace lvb::map {

/// Columns along x and rows along y; the rows of one call begin with first_row.
struct Grid {
    double x, y, step_x, step_y;
    std::uint64_t columns, rows, first_row;

    double x_at(std::uint64_t column) const noexcept { return x + static_cast<double>(column) * step_x; }
    double y_at(std::uint64_t row) const noexcept { return y + static_cast<double>(row) * step_y; }
};

/// The probability that a level fades below a floor which lies a margin under it.
struct Fading {
    double (*outage)(double margin_db, double parameter) noexcept; ///< or null
    double parameter;

    /// NaN without a law or a level.
    double at(double margin_db) const noexcept {
        return outage == nullptr || math::is_nan(margin_db) ? math::not_a_number : outage(margin_db, parameter);
    }
};

/// Where results go, each a value for every point of the rows, or null.
struct Outputs {
    double *level, *margin, *headroom, *outage;
    std::int32_t *zone, *serving;
};

/// The point with the least far or the greatest near level, and its room: margin or headroom.
struct Extreme {
    double level, room;
    std::uint64_t row, column;
    std::int32_t serving;
};

struct Summary {
    std::uint64_t points = 0, outside = 0, unmodelled = 0, overloaded = 0;
    std::uint64_t in_zone[zones] = {};
    Extreme worst{math::infinity, math::not_a_number, 0, 0, -1};
    Extreme hottest{-math::infinity, math::not_a_number, 0, 0, -1};
};

/// Joins the summaries of different rows, in any order.
void join(Summary &summary, const Summary &other) noexcept;

Limits limits_of(const chain::Window &window) noexcept;
bool judges(const chain::Window &window) noexcept;

/// `told` may be null.
void survey(const Site &site, const Grid &grid, const Fading &fading, const Outputs &out, Summary *told) noexcept;

} // namespace lvb::map
