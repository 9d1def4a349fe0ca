// The plain functions of doubles as levelbook_scalars.inc has them, which the build derives from the header.
#pragma once

#include "support/range.hpp"

#include <levelbook/levelbook.h>

#include <cstdlib>
#include <ostream>
#include <string>
#include <vector>

namespace support {

/// Functions that search or integrate, a hundred to ten thousand times slower than the others. Columns have no loops of
/// their own for them, so that they need few of the cases there.
inline bool is_slow(const std::string &name) {
    return name.find("suzuki") != std::string::npos || name == "lvb_rice_margin_below_mean_db" ||
           name == "lvb_nakagami_margin_below_mean_db" || name == "lvb_lognormal_margin_below_median_db";
}

/// A plain function of the header with its "Range:" and its "Accuracy:" line, and the range of each argument.
struct Function {
    using Call = double (*)(const double *arguments);

    std::string name, range_line, accuracy_line;
    std::vector<Interval> range;
    Call call;

    /// A range line that is not one interval for each argument ends the program.
    Function(const char *function, std::size_t arguments, const char *range_text, const char *accuracy_text, Call value)
        : name(function), range_line(range_text), accuracy_line(accuracy_text), range(read_range(range_text)),
          call(value) {
        if (range.size() != arguments) std::abort();
    }
    std::size_t arity() const { return range.size(); }
    /// As googletest names a test's parameter.
    friend void PrintTo(const Function &function, std::ostream *out) { *out << function.name; }
    /// So many of that many cases, or fewer where the function is slow.
    int share_of(int cases) const { return is_slow(name) ? (cases + 19) / 20 : cases; }
};

/// All of them, in the order of the header: a test that walks through them tests a new function from its first day.
inline const std::vector<Function> &functions() {
#define LVB_SCALAR_1(f, range, accuracy) {#f, 1, range, accuracy, [](const double *x) { return f(x[0]); }},
#define LVB_SCALAR_2(f, range, accuracy) {#f, 2, range, accuracy, [](const double *x) { return f(x[0], x[1]); }},
#define LVB_SCALAR_3(f, range, accuracy) {#f, 3, range, accuracy, [](const double *x) { return f(x[0], x[1], x[2]); }},
    static const std::vector<Function> all = {
#include "levelbook_scalars.inc"
    };
#undef LVB_SCALAR_1
#undef LVB_SCALAR_2
#undef LVB_SCALAR_3
    return all;
}

} // namespace support
