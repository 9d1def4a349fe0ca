// The "Range:" line of a plain function, as levelbook_scalars.inc carries it: one interval for each argument.
#pragma once

#include <cctype>
#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

namespace support {

struct Interval {
    std::string name;
    double low;
    double high;
    bool low_belongs;
    bool high_belongs;

    bool holds(double x) const { return (low_belongs ? x >= low : x > low) && (high_belongs ? x <= high : x < high); }
};

/// Reads "name [low, high), name (low, high]"; an unreadable line ends the program.
inline std::vector<Interval> read_range(const std::string &line) {
    std::vector<Interval> intervals;
    const char *at = line.c_str();
    while (*at != '\0') {
        Interval interval{};
        while (*at != '\0' && *at != '[' && *at != '(') interval.name += *at++;
        while (!interval.name.empty() && interval.name.back() == ' ') interval.name.pop_back();
        char *end = nullptr;
        interval.low_belongs = *at == '[';
        if (*at != '\0') interval.low = std::strtod(at + 1, &end);
        if (end == nullptr || *end != ',') std::abort();
        interval.high = std::strtod(end + 1, &end);
        interval.high_belongs = *end == ']';
        if (*end != ']' && *end != ')') std::abort();
        intervals.push_back(interval);
        at = end + 1;
        while (*at == ',' || *at == ' ') ++at;
    }
    return intervals;
}

/// A value of ordinary size inside an interval: `part` from 0 to 1 goes from its lower to its upper part.
inline double within(const Interval &interval, double part) {
    const double low = std::isfinite(interval.low) ? interval.low : -100.0;
    const double high = std::isfinite(interval.high) ? interval.high : low + 200.0;
    return low + (high - low) * (0.05 + 0.9 * part);
}

} // namespace support
