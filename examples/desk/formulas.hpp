// Any plain function of the library by its name. The list is derived from the header, so that it is never out of date.
#pragma once

#include <string>
#include <vector>

namespace desk {

/// "helix_gain_dbi turns=10 spacing_wavelengths=0.25 circumference_wavelengths=1.1"; throws Refusal.
std::string answer_formula(const std::vector<std::string> &words);

/// Whether the words ask for a function rather than for a unit.
bool asks_for_formula(const std::vector<std::string> &words);

/// All functions with their arguments and ranges.
std::string print_formulas();

} // namespace desk
