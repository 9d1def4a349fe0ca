// Unit questions: "30mW" into "dBm".
#pragma once

#include "units.hpp"

namespace desk {

/// The options of a question, as they were written; empty where not given. Each may carry its unit ("600MHz").
struct OptionTexts {
    std::string mhz;
    std::string ohm;
    std::string metres;
    std::string feet; ///< in place of metres
    std::string kelvin;
    std::string angle;
};

/// The options as numbers; throws Refusal.
Inputs read_options(const OptionTexts &texts);

/// `with` is the second operand that some conversions take, as value and unit; empty where none is given.
/// Answers with the value and the steps that lead to it; throws Refusal.
std::string convert(const std::string &value_and_unit, const std::string &target, Inputs inputs,
                    const std::string &with);

/// All units and conversions, for a person who looks for one.
std::string print_units();

} // namespace desk
