// Gains out of Touchstone files, versions 1.0, 1.1, 2.0 and 2.1 (IBIS Open Forum, Touchstone File Format
// Specification).
#pragma once

#include "document.hpp"

namespace desk {

/// An S-parameter: the wave that leaves a port over the one that enters another.
struct Parameter {
    std::size_t to = 2;
    std::size_t from = 1;
};

/// "s21", or "s12_3" where a port has two digits; nothing for any other text.
std::optional<Parameter> parameter_in(std::string_view text);
std::string name_of(const Parameter &parameter);

/// Plants a frequency column and gain_db of one parameter; throws Refusal for what is no such file. The answer is the
/// reference resistance of the two ports in words: "50 ohm".
std::string plant_touchstone(Document &document, const Parameter &parameter);

/// The number of ports that a file's name tells (combiner.s2p); 0 where it tells none.
std::size_t ports_in_name(std::string_view file);

} // namespace desk
