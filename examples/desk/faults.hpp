// What the library refuses, told as line and key of the scenario.
#pragma once

#include "scenario.hpp"

namespace desk {

/// A struct of the library, zeroed, with its size.
template <class Struct>
Struct sized() {
    Struct fresh{};
    fresh.size = sizeof fresh;
    return fresh;
}

/// The library's sentence of a fault as a clause: without its full stop, and the names of structs before the field's.
std::string fault_words(const lvb_fault &fault);

/// Throws the Refusal of a fault in a link.
[[noreturn]] void refuse_fault(const Document &document, const Link &link, const lvb_fault &fault);

/// The same of two systems side by side.
[[noreturn]] void refuse_fault(const Document &document, const Neighbours &pair, const lvb_fault &fault);

} // namespace desk
