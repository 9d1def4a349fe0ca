// A link over the frequencies that it may be tuned to, judged at its worst.
#pragma once

#include "compute.hpp"

#include <utility>

namespace desk {

/// The lowest and the highest frequency.
std::pair<double, double> ends_of(const Tuning &tuning);
/// "518 to 598 MHz", or "566 MHz" of a single channel.
std::string range_words(const Tuning &tuning);

/// What is answered at the link's own frequency only: "answered at 566 MHz only; the link's tuning 518 to 598 MHz is
/// not considered", as a line of the page; empty without a tuning.
std::string print_untuned(const Link &link, const char *what);

/// Only for a link with a tuning, as it is lent; throws Refusal.
Tuned tune(const Document &document, const Link &link, const Lent &lent);

/// "DROPS OUT at 608 MHz", or empty where the link holds wherever it may be tuned.
std::string tuning_failure(const Tuned &tuned);

/// The line of the page; empty without a tuning.
std::string print_tuning(const Link &link, const Computed &computed);

} // namespace desk
