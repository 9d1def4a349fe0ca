// Gear from stock: the cheapest sets of items with which every link keeps its limits.
//
// Valid input only: slots rise by link and stage, the candidates of a slot rise by item, every item stands where its
// kind may stand and serves its link's frequency.
#pragma once

#include "chain/ledger.hpp"
#include "decide/arena.hpp"

namespace lvb::decide {

struct Item {
    chain::Stage stage;
    std::uint64_t cost;
    std::uint32_t count; ///< how many are left, at most the number of slots
};

/// A place in a link, with the candidates for it: `count` item numbers from `first` on.
struct Slot {
    std::uint32_t link, stage, first, count;
};

/// Requirements of a link, as bits.
using Requirements = std::uint32_t;
inline constexpr std::size_t requirement_count = 4;
inline constexpr Requirements needs_floor = 1, needs_ceiling = 2, needs_power = 4, needs_noise = 8;

struct Link {
    chain::Conditions conditions;
    const chain::Stage *stages; ///< those in slots are not read
    std::uint32_t stage_count;
    std::uint32_t first_slot, slot_count;
    Requirements required;
    bool worst_levels, worst_radiated; ///< with every tolerance against the limit
    double margin_db, headroom_db, radiated_limit_dbm, noise_limit_db;
};

struct Problem {
    const Item *items;
    std::uint32_t item_count;
    const Slot *slots;
    std::uint32_t slot_count;
    const Link *links;
    std::uint32_t link_count;
    const std::uint32_t *candidates;
    std::uint32_t candidate_count;
    std::uint32_t set_count; ///< how many sets are wanted, 1 or more
    std::uint64_t step_limit;
};

enum class Outcome : std::int32_t { none, proven, not_proven, infeasible, short_of_stock, undecided };

/// By how many dB the best set misses each requirement; 0 where one holds it, NaN where it was not found out.
struct Miss {
    double alone_db[requirement_count];         ///< with no other requirement
    double beside_others_db[requirement_count]; ///< with every other requirement held; infinity where none can
};

struct Choice {
    Outcome outcome;
    std::uint32_t set_count;
    bool coarse;               ///< more working room would have allowed finer tables
    std::uint64_t lower_bound; ///< no set is cheaper
    std::uint64_t steps;
};

/// Working room: the least with which choose() runs, and as much as it can use.
struct Room {
    std::uint64_t least_bytes, ample_bytes;
};
Room room_for(const Problem &problem) noexcept;

/// `sets` takes set_count rows of slot_count item numbers, `costs` their costs, best first; `misses` (or null) one for
/// each link, and is filled where the outcome is infeasible. The arena has least_bytes or more left.
Choice choose(const Problem &problem, Arena &arena, std::uint32_t *sets, std::uint64_t *costs, Miss *misses) noexcept;

} // namespace lvb::decide
