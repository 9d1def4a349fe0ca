// What a chain may hold and in which order: the checks of lvb_compute_budget.
#pragma once

#include "chain/ledger.hpp"
#include "door/check.hpp"

namespace lvb::door {

/// A link's own fields, checked; its stages are checked by check_chain.
Refusal take_link(const lvb_link *link, lvb_link &copy, chain::Conditions &conditions) noexcept;

/// Every stage of a checked link, and the order of all of them.
Refusal check_chain(const lvb_link &link) noexcept;

/// One stage of a checked chain, turned into what the model takes; what its kind does not use keeps its old value.
void read_stage(const lvb_link &link, std::uint32_t index, chain::Stage &stage) noexcept;

} // namespace lvb::door
