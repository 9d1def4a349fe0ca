#include "grid.hpp"

#include <algorithm>
#include <cmath>

namespace desk {

Grid grid_of(const Document &document, const Site &site) {
    double low_x = HUGE_VAL, low_y = HUGE_VAL, high_x = -HUGE_VAL, high_y = -HUGE_VAL;
    for (const Area &area : site.areas) {
        const auto [x0, x1] = std::minmax_element(area.corners.x_m.begin(), area.corners.x_m.end());
        const auto [y0, y1] = std::minmax_element(area.corners.y_m.begin(), area.corners.y_m.end());
        low_x = std::min(low_x, *x0);
        low_y = std::min(low_y, *y0);
        high_x = std::max(high_x, *x1);
        high_y = std::max(high_y, *y1);
    }
    constexpr double rounding = 1e-9; // 0.3 m in steps of 0.1 m are three
    const auto steps = [&](double length_m) { return std::max(1.0, std::ceil(length_m / site.step_m - rounding)); };
    const double columns = steps(high_x - low_x), rows = steps(high_y - low_y);
    if (columns * rows > most_points)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        "this step makes " + plain(columns * rows) + " points; allowed are " + plain(most_points));
    const double half = 0.5 * site.step_m;
    return {low_x + half, low_y + half, site.step_m, static_cast<std::size_t>(columns), static_cast<std::size_t>(rows)};
}

} // namespace desk
