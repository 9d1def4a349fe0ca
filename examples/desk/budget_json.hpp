// The budget as JSON; README.md documents every field.
#pragma once

#include "compute.hpp"

namespace desk {

std::string budget_json(const Scenario &scenario, const std::string &file, const std::vector<Answer> &answers,
                        const std::vector<Pair> &pairs);

} // namespace desk
