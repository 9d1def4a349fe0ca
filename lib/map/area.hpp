// Polygons in plan: which points lie inside or on the edge.
#pragma once

#include <cstddef>

namespace lvb::map {

/// Corners in the caller's memory, in order; the last is joined to the first.
struct Area {
    const double *x, *y;
    std::size_t corners;
};

/// What a line along x meets of an edge: where it crosses, and what of it lies on the edge.
struct Meeting {
    bool crosses, touches;
    double from, to; ///< of what lies on the edge; a crossing has both at the same x
};

/// Of the edge between a corner and the next. Each edge owns its lower end, so that a corner is crossed once or twice
/// as the polygon passes it or turns there.
inline Meeting meeting(const Area &area, std::size_t corner, double y) noexcept {
    const std::size_t next = corner + 1 == area.corners ? 0 : corner + 1;
    const double x1 = area.x[corner], y1 = area.y[corner], x2 = area.x[next], y2 = area.y[next];
    const bool below_1 = y1 <= y, below_2 = y2 <= y;
    const bool touches = y1 == y || y2 == y || below_1 != below_2;
    if (y1 == y2) return {false, touches, x1 < x2 ? x1 : x2, x1 < x2 ? x2 : x1};
    const double between = x1 + (y - y1) / (y2 - y1) * (x2 - x1);
    const double at = y == y1 ? x1 : y == y2 ? x2 : between;
    return {below_1 != below_2, touches, at, at};
}

} // namespace lvb::map
