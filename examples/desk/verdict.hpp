// What a budget lets one say of a link, in words: which ends were judged, how it came out, and what it rests on.
#pragma once

#include "compute.hpp"

namespace desk {

/// Whether the near end had to be taken at the far distance, because the scenario gives no near distance.
bool near_distance_missing(const lvb_budget &budget);

/// Every reason why an end of the walk was not judged, one clause each; empty where both were.
std::vector<std::string> not_judged(const Link &link, const lvb_budget &budget);

/// "23.70 dB above the floor", as the difference of the printed figures.
std::string floor_words(const lvb_stage &receiver, const lvb_end &end);
/// "10.99 dB under the ceiling".
std::string ceiling_words(const lvb_stage &receiver, const lvb_end &end);

/// The verdict, what was not judged, and which guesses it leaves out of account.
std::string verdict_words(const Link &link, const lvb_budget &budget);

} // namespace desk
