// What the header states of a plain function's accuracy, and values for its arguments.
#pragma once

#include "support/functions.hpp"
#include "units/random.hpp"

#include <cmath>
#include <limits>
#include <regex>
#include <stdexcept>
#include <string>
#include <vector>

namespace proof {

/// Units in the last place of the exact result; where `absolute` is larger than these, it counts.
struct Accuracy {
    double ulp = 0.0;
    double absolute = 0.0;
};

/// "0.9 ULP", "0.9 ULP, or 1e-15 dB where that is larger".
inline Accuracy accuracy(const support::Function &function) {
    static const std::regex one("^([0-9.]+) ULP(, or ([0-9.e-]+) [A-Za-z]+ where that is larger)?$");
    const std::string &line = function.accuracy_line;
    std::smatch match;
    if (!std::regex_match(line, match, one))
        throw std::runtime_error(function.name + ": cannot read the accuracy '" + line + "'");
    return {std::stod(match[1]), match[2].matched ? std::stod(match[3]) : 0.0};
}

/// A finite value of an interval: its ends and their neighbourhood, ordinary sizes, and every size a double can have.
inline double sample(const support::Interval &interval, Random &random) {
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
