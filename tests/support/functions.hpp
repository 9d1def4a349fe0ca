// The plain functions of doubles as levelbook_scalars.inc has them, which the build derives from the header.
#pragma once

#include "support/range.hpp"

#include <levelbook/levelbook.h>

#include <string>
#include <vector>

namespace support {

/// Functions that search or integrate, a hundred to ten thousand times slower than the others. Columns have no loops of
/// their own for them, so that they need few of the cases there.
inline bool is_slow(const std::string &name) {
    return name.find("suzuki") != std::string::npos || name == "lvb_rice_margin_below_mean_db" ||
           name == "lvb_nakagami_margin_below_mean_db" || name == "lvb_lognormal_margin_below_median_db";
}

/// A plain function of the header with the range of each argument.
struct Function {
    std::string name;
    std::vector<Interval> range;
    double (*call)(const double *arguments);

    std::size_t arity() const { return range.size(); }
    /// So many of that many cases, or fewer where the function is slow.
    int share_of(int cases) const { return is_slow(name) ? (cases + 19) / 20 : cases; }
};

/// All of them, in the order of the header.
inline const std::vector<Function> &functions() {
#define LVB_SCALAR_1(f, range, accuracy) {#f, read_range(range), [](const double *x) { return f(x[0]); }},
#define LVB_SCALAR_2(f, range, accuracy) {#f, read_range(range), [](const double *x) { return f(x[0], x[1]); }},
#define LVB_SCALAR_3(f, range, accuracy) {#f, read_range(range), [](const double *x) { return f(x[0], x[1], x[2]); }},
    static const std::vector<Function> all = {
#include "levelbook_scalars.inc"
    };
#undef LVB_SCALAR_1
#undef LVB_SCALAR_2
#undef LVB_SCALAR_3
    return all;
}

} // namespace support
