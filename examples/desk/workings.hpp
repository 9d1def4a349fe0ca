// What each stage was computed from, in words that a person can follow with a pocket calculator.
#pragma once

#include "compute.hpp"

namespace desk {

/// "free space 20 log10(m x MHz) - 27.552: 60.05 dB over 40 m, 37.55 dB over 3 m"
std::string workings(const Link &link, const Computed &computed, std::size_t index);

/// "40 m" or "40 ft (12.192 m)": a number as it was given, and in the library's unit where that differs.
std::string as_given(const Given &given);

/// What a reader must know of the LVB_NOTE_ bits, one sentence each.
std::vector<std::string> note_sentences(std::uint32_t notes);

} // namespace desk
