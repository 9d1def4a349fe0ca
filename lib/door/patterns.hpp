// Checks of the antennas, patterns and body tables that a host lends.
#pragma once

#include "antenna/pointing.hpp"
#include "body/facing.hpp"
#include "door/fields.hpp"

namespace lvb::door {

/// A host's pattern with its cuts, checked whole; `stage` is that of the fault. `pattern` is what the model reads.
bool take_pattern(Refusal &refusal, const lvb_pattern *lent, std::int32_t stage, antenna::Pattern &pattern) noexcept;

/// The numbers of a host's antenna; its pattern is taken by take_pattern.
bool check_antenna(Refusal &refusal, const lvb_antenna &in, Place place) noexcept;

/// How a host's antenna, whose numbers are checked, is turned.
antenna::Axes axes_of(const lvb_antenna &in) noexcept;

/// Whether an antenna's polarization goes with its pattern, where it has one.
bool check_polarization(Refusal &refusal, const lvb_antenna &in, const antenna::Pattern *pattern, Place place) noexcept;

/// A host's body table, checked whole.
bool take_body_table(Refusal &refusal, const lvb_body_table *lent, std::int32_t stage, std::int32_t argument,
                     body::Table &table) noexcept;

} // namespace lvb::door
