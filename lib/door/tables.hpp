// Checks of the tables that a host lends.
#pragma once

#include "cable/attenuation.hpp"
#include "chain/gain_table.hpp"
#include "door/fields.hpp"

namespace lvb::door {

/// What the model reads of a table that was checked.
cable::Table read_cable_table(const lvb_cable_table *checked) noexcept;
chain::GainTable read_gain_table(const lvb_gain_table *checked) noexcept;

/// A host's cable table, checked whole.
Refusal take_cable_table(const lvb_cable_table *lent, std::int32_t stage, cable::Table &table) noexcept;

/// Refuses a frequency beyond the range to which a cable table may be extrapolated.
Refusal check_usable(const cable::Table &table, double frequency_mhz, Place place) noexcept;

/// A host's gain table, checked whole against the range of gain_db and the frequency that it must hold.
Refusal take_gain_table(const lvb_gain_table *lent, std::int32_t stage, const Range &range, double frequency_mhz,
                        chain::GainTable &table) noexcept;

} // namespace lvb::door
