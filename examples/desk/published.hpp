// Limits of power, limits of exposure and allowances as they are published: what the library knows, with its sources.
#pragma once

#include <levelbook/levelbook.h>

#include <string>
#include <vector>

namespace desk {

/// Every published limit of power.
std::vector<lvb_limit_rule> published_rules();

std::string print_rules();
std::string print_allowances();

} // namespace desk
