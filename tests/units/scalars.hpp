// The plain functions of doubles as the header tells them: each with its "Range:" and its "Accuracy:" line, read from
// the table that the build derives. Tests walk through it, so that a new function is tested from its first day.
#pragma once

#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <cmath>
#include <limits>
#include <regex>
#include <stdexcept>
#include <string>
#include <vector>

namespace proof {

struct Scalar {
    const char *name;
    std::size_t arity;
    const char *range;
    const char *accuracy;
    double (*call)(const double *arguments);
};

inline const std::vector<Scalar> &scalars() {
#define LVB_SCALAR_1(f, range, accuracy) {#f, 1, range, accuracy, [](const double *x) { return f(x[0]); }},
#define LVB_SCALAR_2(f, range, accuracy) {#f, 2, range, accuracy, [](const double *x) { return f(x[0], x[1]); }},
#define LVB_SCALAR_3(f, range, accuracy) {#f, 3, range, accuracy, [](const double *x) { return f(x[0], x[1], x[2]); }},
    static const std::vector<Scalar> rows = {
#include "levelbook_scalars.inc"
    };
#undef LVB_SCALAR_1
#undef LVB_SCALAR_2
#undef LVB_SCALAR_3
    return rows;
}

struct Interval {
    std::string argument;
    double low, high;
    bool low_inside, high_inside;

    bool holds(double x) const { return (low_inside ? x >= low : x > low) && (high_inside ? x <= high : x < high); }
};

inline double bound(const std::string &text) {
    if (text == "inf") return std::numeric_limits<double>::infinity();
    if (text == "-inf") return -std::numeric_limits<double>::infinity();
    std::size_t used = 0;
    const double value = std::stod(text, &used);
    if (used != text.size()) throw std::runtime_error("cannot read the bound '" + text + "'");
    return value;
}

/// "power_mw [0, inf], impedance_ohm (0, inf)": one interval for each argument, and nothing else in the line.
inline std::vector<Interval> intervals(const Scalar &scalar) {
    static const std::regex one(R"((, )?([a-z0-9_]+) ([\[(])([^,]+), ([^\])]+)([\])]))");
    std::vector<Interval> found;
    const std::string line = scalar.range;
    auto from = line.cbegin();
    for (std::smatch match; from != line.cend(); from = match[0].second) {
        if (!std::regex_search(from, line.cend(), match, one, std::regex_constants::match_continuous) ||
            match[1].matched == found.empty())
            throw std::runtime_error(std::string(scalar.name) + ": cannot read the range '" + line + "'");
        found.push_back({match[2], bound(match[4]), bound(match[5]), match[3] == "[", match[6] == "]"});
    }
    if (found.size() != scalar.arity) throw std::runtime_error(std::string(scalar.name) + ": arguments without range");
    return found;
}

/// Units in the last place of the exact result; where `absolute` is larger than these, it counts.
struct Accuracy {
    double ulp = 0.0;
    double absolute = 0.0;
};

/// "0.9 ULP", "0.9 ULP, or 1e-15 dB where that is larger".
inline Accuracy accuracy(const Scalar &scalar) {
    static const std::regex one("^([0-9.]+) ULP(, or ([0-9.e-]+) [A-Za-z]+ where that is larger)?$");
    const std::string line = scalar.accuracy;
    std::smatch match;
    if (!std::regex_match(line, match, one))
        throw std::runtime_error(std::string(scalar.name) + ": cannot read the accuracy '" + line + "'");
    return {bound(match[1]), match[2].matched ? bound(match[3]) : 0.0};
}

/// A finite value of an interval: its ends and their neighbourhood, ordinary sizes, and every size a double can have.
inline double sample(const Interval &interval, Random &random) {
    for (;;) {
        double x = 0.0;
        switch (random.below(7)) {
        case 0: // close to an end
            x = random.below(2) ? interval.low + random.log_uniform(-18.0, 0.0)
                                : interval.high - random.log_uniform(-18.0, 0.0);
            break;
        case 1: // any size
            x = random.sign() * random.log_uniform(-323.0, 308.0);
            break;
        case 2: // small and ordinary sizes
            x = random.sign() * random.log_uniform(-15.0, 6.0);
            break;
        case 3: // close to a multiple of 45, where angles have their corners
            x = 45.0 * std::floor(random.uniform(-16.0, 17.0)) + random.sign() * random.log_uniform(-14.0, 0.0);
            break;
        case 4: // an end, one, zero, a corner
            x = std::vector<double>{interval.low, interval.high, 0.0, 1.0, -1.0, 90.0, 180.0, 270.0}[random.below(8)];
            break;
        default: // ordinary
            x = std::isfinite(interval.low) && std::isfinite(interval.high)
                    ? random.uniform(interval.low, interval.high)
                    : random.uniform(-400.0, 400.0);
            break;
        }
        if (std::isfinite(x) && interval.holds(x)) return x;
    }
}

} // namespace proof
