// What a scenario says for decisions: the frequencies that a link may be tuned to, what it needs of the gear that is
// chosen for it, the stock, what was measured, and by which law a tolerance is spread.
#pragma once

#include "read_parts.hpp"
#include "read_stage.hpp"

namespace desk {

/// Tuning, wanted and readings of a link whose stages are read.
void read_decisions(const Checks &checks, const Value &value, Link &link);

/// The law of a stage's tolerance.
lvb_spread read_spread(const Checks &checks, const Members &members);

std::vector<StockItem> read_stock(const Checks &checks, StageReader &stages, const Value &value);

/// The names of what may stand in a stage's place, as rising indices into the stock.
std::vector<std::uint32_t> read_candidates(const Checks &checks, const Value &names, const Scenario &scenario);

/// The index of the stage that a person names by its label, or by its number from 1; throws the Refusal of `refuse`.
std::size_t stage_named(const Link &link, const std::string &name);

/// Throws the Refusal of a fault in an object that gives these numbers.
[[noreturn]] void refuse_fault(const Document &document, const Part &part, const lvb_fault &fault,
                               const std::string &where);

} // namespace desk
