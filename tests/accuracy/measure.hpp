// How far the plain functions lie from the exact results, over many points of their ranges.
#pragma once

#include "units/scalars.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace accuracy {

/// The worst of many errors, and the arguments where it stands.
struct Worst {
    double error = 0.0;
    std::vector<double> at;
    void take(double candidate, const std::vector<double> &arguments) {
        if (candidate <= error) return; // NaN is taken
        error = candidate;
        at = arguments;
    }
};

struct Measured {
    std::uint64_t points = 0;
    Worst ulp;       ///< in units in the last place, where the accuracy line counts in them
    Worst near_zero; ///< in the result's unit, where the accuracy line states it so
    Worst plain;     ///< in the plain unit; temperatures as they occur, everything else everywhere
};

/// The unit that the plain error of a function is taken in: "dB", "degrees", or "relative".
std::string plain_unit(const support::Function &scalar);

/// The smallest and the largest values of an argument, those where products of two of them leave the numbers, and
/// ordinary ones.
std::vector<double> extremes(const support::Interval &interval);

/// The first `points` points of the one sequence that belongs to a function: the more, the harder; never other ones.
Measured measure(const support::Function &scalar, std::uint64_t points);

} // namespace accuracy
