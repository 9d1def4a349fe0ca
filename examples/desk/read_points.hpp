// Places on a site: points in plan, with heights where they have them. Each throws Refusal at the value's line and key.
#pragma once

#include "checks.hpp"
#include "scenario.hpp"

namespace desk {

/// The floor is z = 0, and no pack or antenna of a site lies under it.
void check_over_floor(const Checks &checks, const Value &value, double height_m);

/// A list of coordinates under a name with _m or _ft, and what makes metres of it.
struct Lengths {
    const Value *value;
    double (*to_metres)(double);
};

Lengths lengths_of(const Checks &checks, const Value &owner, const std::string &name);

/// Metres of so many coordinates: [x, y] or [x, y, z].
std::vector<double> point_of(const Checks &checks, const Value &value, double (*to_metres)(double), std::size_t fewest,
                             std::size_t most);

/// What stands as corners_m or corners_ft; each has two coordinates or more.
Corners read_corners(const Checks &checks, const Value &owner, std::size_t fewest, std::size_t most_coordinates);

} // namespace desk
