// A link over the frequencies that it may be tuned to, judged at its worst.
#pragma once

#include "compute.hpp"

namespace desk {

/// Only for a link with a tuning, as it is lent; throws Refusal.
Tuned tune(const Document &document, const Link &link, const Lent &lent);

/// "DROPS OUT at 608 MHz", or empty where the link holds wherever it may be tuned.
std::string tuning_failure(const Tuned &tuned);

/// The line of the page; empty without a tuning.
std::string print_tuning(const Link &link, const Computed &computed);

} // namespace desk
