#include "read_points.hpp"

#include <cmath>

namespace desk {

void check_over_floor(const Checks &checks, const Value &value, double height_m) {
    if (height_m < 0.0)
        checks.document().refuse(value, plain(value.number) + " lies under the floor, which is 0; count heights from "
                                                              "the floor of the site");
}

Lengths lengths_of(const Checks &checks, const Value &owner, const std::string &name) {
    const Value *metres = owner.find(name + "_m");
    const Value *feet = owner.find(name + "_ft");
    if (metres != nullptr && feet != nullptr)
        checks.document().refuse_key(*feet, "the same stands here as " + name + "_m too; give one of them");
    if (feet != nullptr) return {feet, lvb_metres_from_feet};
    if (metres == nullptr) checks.document().refuse(owner, name + "_m or " + name + "_ft is missing");
    return {metres, [](double length_m) { return length_m; }};
}

std::vector<double> point_of(const Checks &checks, const Value &value, double (*to_metres)(double), std::size_t fewest,
                             std::size_t most) {
    constexpr double farthest = 1e6, highest = 1000.0;
    checks.expect(value, Value::Kind::list);
    if (value.items.size() < fewest || value.items.size() > most)
        checks.document().refuse(value, std::string("a point is ") + (fewest == 3 ? "[x, y, z]" : "[x, y]") +
                                            (most > fewest ? " or [x, y, z]" : "") + "; here stand " +
                                            std::to_string(value.items.size()) + " numbers");
    std::vector<double> point;
    for (const Value *item : value.items) {
        const double bound = point.size() == 2 ? highest : farthest;
        const double number = to_metres(checks.number(*item));
        if (!(std::abs(number) <= bound))
            checks.document().refuse(*item, plain(item->number) + " is out of range; allowed -" + plain(bound) +
                                                " to " + plain(bound) + " m");
        if (point.size() == 2) check_over_floor(checks, *item, number);
        point.push_back(number);
    }
    return point;
}

Corners read_corners(const Checks &checks, const Value &owner, std::size_t fewest, std::size_t most_coordinates) {
    const Lengths corners = lengths_of(checks, owner, "corners");
    checks.expect(*corners.value, Value::Kind::list);
    const std::size_t count = corners.value->items.size();
    if (count < fewest || count > LVB_MAX_CORNERS)
        checks.document().refuse(*corners.value, "there must be " + std::to_string(fewest) + " to " +
                                                     std::to_string(LVB_MAX_CORNERS) + " corners; here stand " +
                                                     std::to_string(count));
    Corners read;
    for (const Value *item : corners.value->items) {
        const std::vector<double> point = point_of(checks, *item, corners.to_metres, 2, most_coordinates);
        read.x_m.push_back(point[0]);
        read.y_m.push_back(point[1]);
        read.z_m.push_back(point.size() > 2 ? std::optional<double>(point[2]) : std::nullopt);
        read.values.push_back(item);
    }
    return read;
}

} // namespace desk
