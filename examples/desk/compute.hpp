// The library's answer for a link.
#pragma once

#include "scenario.hpp"

namespace desk {

struct Computed {
    lvb_budget budget{};
    std::vector<lvb_level> levels;
};

/// A link of a scenario with what the library says of it.
struct Answer {
    const Link *link;
    Computed computed;
};

/// Computes a link; throws Refusal at the line and key that the library does not accept.
Computed compute(const Document &document, const Link &link);

/// What a computed cable consists of. Only for a stage that has a cable type or table, in a link that was computed.
lvb_cable_loss cable_loss(double frequency_mhz, std::optional<double> temperature_degc, const Stage &stage);

/// Whether a stage's cable is computed from a type or a table.
bool is_computed_cable(const Stage &stage);

} // namespace desk
