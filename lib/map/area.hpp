// Polygons in plan: which points lie inside or on the edge.
#pragma once

#include <cstddef>

namespace lvb::map {

/// Corners in the caller's memory, in order; the last is joined to the first.
struct Area {
    const double *x, *y;
    std::size_t corners;
};

/// So far from an edge a point still lies on it: far more than rounding makes of any position, far less than it
/// matters.
inline constexpr double on_edge_m = 1e-9;

/// What a line along x meets of an edge: where it crosses, and what of it lies on the edge.
struct Meeting {
    bool crosses, touches;
    double at;       ///< where it crosses
    double from, to; ///< of what lies on the edge
};

/// Of the edge between a corner and the next. Each edge owns its lower end, so that a corner is crossed once or twice
/// as the polygon passes it or turns there.
inline Meeting meeting(const Area &area, std::size_t corner, double y) noexcept {
    const std::size_t next = corner + 1 == area.corners ? 0 : corner + 1;
    const double x1 = area.x[corner], y1 = area.y[corner], x2 = area.x[next], y2 = area.y[next];
    const bool below_1 = y1 <= y, below_2 = y2 <= y;
    const double low = y1 < y2 ? y1 : y2, high = y1 < y2 ? y2 : y1;
    const double left = (x1 < x2 ? x1 : x2) - on_edge_m, right = (x1 < x2 ? x2 : x1) + on_edge_m;
    const bool touches = y >= low - on_edge_m && y <= high + on_edge_m;
    if (y1 == y2) return {false, touches, x1, left, right};
    const double held = y < low ? low : y > high ? high : y;
    const double between = x1 + (held - y1) / (y2 - y1) * (x2 - x1);
    const double at = held == y1 ? x1 : held == y2 ? x2 : between;
    const double slope = (x2 - x1) / (y2 - y1); // the flatter the edge, the more of the line lies next to it
    const double reach = on_edge_m * (1.0 + (slope < 0.0 ? -slope : slope));
    const double from = at - reach, to = at + reach;
    return {below_1 != below_2, touches, at, from < left ? left : from, to > right ? right : to};
}

} // namespace lvb::map
