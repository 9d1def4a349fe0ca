// What the library refuses, told as line and key of the scenario.
#pragma once

#include "scenario.hpp"

namespace desk {

/// Throws the Refusal of a fault in a link.
[[noreturn]] void refuse_fault(const Document &document, const Link &link, const lvb_fault &fault);

/// The same of two systems side by side.
[[noreturn]] void refuse_fault(const Document &document, const Neighbours &pair, const lvb_fault &fault);

} // namespace desk
