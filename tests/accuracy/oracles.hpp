// Every plain function of the header written anew from the formula and source that the header names.
#pragma once

#include "accuracy/real.hpp"

#include <map>
#include <string>

namespace accuracy {

/// The exact value of a function at its arguments; throws for a name without oracle.
using Oracle = Real (*)(const double *arguments);
Oracle oracle_of(const std::string &function);
std::size_t oracle_count();

/// Those of fading and diversity, which take sums and searches of their own.
const std::map<std::string, Oracle> &fading_oracles();

} // namespace accuracy
