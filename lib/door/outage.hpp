// The law of fading that a host asks an outage of.
#pragma once

#include "door/check.hpp"
#include "map/survey.hpp"

namespace lvb::door {

/// What a host asks for: a law and its parameter, whether anything takes what it gives, and whether that must have one.
struct AskedOutage {
    std::int32_t law;
    double parameter;
    bool is_taken, is_needed;
};

/// The law and its parameter belong to an outage, which needs a floor. A law of none gives a null outage.
bool take_outage(Refusal &refusal, const AskedOutage &asked, const chain::Window &window, Place place,
                 map::Fading &fading) noexcept;

} // namespace lvb::door
