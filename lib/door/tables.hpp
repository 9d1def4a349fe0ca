// Checks of the tables that a host lends.
#pragma once

#include "cable/attenuation.hpp"
#include "chain/gain_table.hpp"
#include "door/fields.hpp"

namespace lvb::door {

/// A host's cable table, checked whole. `table` is what the model reads.
bool take_cable_table(Refusal &refusal, const lvb_cable_table *lent, std::int32_t stage, cable::Table &table) noexcept;

/// Refuses a frequency beyond the range to which a cable table may be extrapolated.
bool check_usable(Refusal &refusal, const cable::Table &table, double frequency_mhz, std::int32_t stage) noexcept;

/// A host's gain table, checked whole against the range of gain_db.
bool take_gain_table(Refusal &refusal, const lvb_gain_table *lent, std::int32_t stage, const Range &range,
                     chain::GainTable &table) noexcept;

/// Refuses a frequency outside a gain table.
bool check_inside(Refusal &refusal, const chain::GainTable &table, double frequency_mhz, std::int32_t stage) noexcept;

} // namespace lvb::door
