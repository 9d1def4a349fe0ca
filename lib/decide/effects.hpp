// What an item changes in its place, and what a whole link comes to, both by the ledger.
#pragma once

#include "decide/choose.hpp"

namespace lvb::decide {

/// Levels are searched in whole grains, which add exactly in any order; the ledger has the last word.
inline constexpr double grains_per_db = 1e9;

/// What stands between two points of a receive side: its noise factor less one, and its power gain.
struct Noise {
    double excess = 0.0;
    double gain = 1.0;

    /// This, and then what follows it (Friis).
    Noise operator+(const Noise &next) const noexcept { return {excess + next.excess / gain, gain * next.gain}; }
};

/// What a candidate adds, in grains: to the far level with its tolerance against it, to the near level with its
/// tolerance against it, and to the radiated power.
struct Effect {
    std::int64_t low, high, radiated;
    Noise noise; ///< with the fixed stages that follow, up to the next slot
};

/// What the fixed stages of a link come to, and the room that its requirements leave.
struct Frame {
    std::int64_t low_needed, high_allowed, radiated_allowed; ///< in grains, of the sum over the slots
    std::uint32_t radiated_slots;                            ///< slots up to the transmitting antenna
    double noise_allowed;                                    ///< noise factor less one at the first slot
};

/// Fills the effects of all candidates in a link's slots.
Frame find_effects(const Problem &problem, const Link &link, Effect *effects) noexcept;

/// By how many dB each requirement is missed by a link whose slots hold `chosen` (candidates); at most 0 where it
/// holds.
struct Shortfall {
    double db[requirement_count];
};
Shortfall shortfall_of(const Problem &problem, const Link &link, const std::uint32_t *chosen) noexcept;

} // namespace lvb::decide
