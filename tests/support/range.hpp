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

/// Reads "name [low, high), name (low, high]"; anything else in the line ends the program.
inline std::vector<Interval> read_range(const std::string &line) {
    const auto need = [](bool good) {
        if (!good) std::abort();
    };
    std::vector<Interval> intervals;
    const char *at = line.c_str();
    for (bool first = true; first || *at != '\0'; first = false) {
        if (!first) need(*at++ == ',' && *at++ == ' ');
        Interval interval{};
        while (std::islower(static_cast<unsigned char>(*at)) || std::isdigit(static_cast<unsigned char>(*at)) ||
               *at == '_')
            interval.name += *at++;
        need(!interval.name.empty() && *at++ == ' ' && (*at == '[' || *at == '('));
        interval.low_belongs = *at == '[';
        char *end = nullptr;
        interval.low = std::strtod(at + 1, &end);
        need(end != at + 1 && *end == ',');
        at = end + 1;
        interval.high = std::strtod(at, &end);
        need(end != at && (*end == ']' || *end == ')'));
        interval.high_belongs = *end == ']';
        intervals.push_back(interval);
        at = end + 1;
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
