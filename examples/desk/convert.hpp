// Unit questions: "30mW" into "dBm".
#pragma once

#include "units.hpp"

namespace desk {

/// `with` is the second operand that some conversions take, as value and unit; empty where none is given.
/// Answers with the value and the steps that lead to it; throws Refusal.
std::string convert(const std::string &value_and_unit, const std::string &target, Inputs inputs,
                    const std::string &with);

/// All units and conversions, for a person who looks for one.
std::string print_units();

} // namespace desk
