// Units, and the library's conversions between them, as a map that `convert` finds its way through.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace desk {

/// What a conversion may need besides the value.
enum Need : unsigned {
    needs_nothing = 0,
    needs_mhz = 1,
    needs_ohm = 2,
    needs_metres = 4,
    needs_kelvin = 8,
    needs_angle = 16,
    needs_with = 32,
};

struct Inputs {
    double value = 0.0;
    double mhz = 0.0;
    double ohm = 0.0;
    double metres = 0.0;
    double kelvin = 0.0;
    double angle_deg = 0.0;
    double with = 0.0;
    unsigned given = needs_nothing; ///< Need bits
};

/// A name of a unit; `base` is the unit in which the library's functions take it, and one of this is `factor` of those.
struct Unit {
    const char *name;
    const char *base;
    double factor;
};

/// One function of the library.
struct Rule {
    const char *from;
    const char *to;
    bool same_quantity; ///< another way to say the same; a path holds at most one rule that is not
    unsigned needs;
    double (*compute)(const Inputs &);
    const char *formula;
};

const std::vector<Unit> &units();
const std::vector<Rule> &rules();

} // namespace desk
