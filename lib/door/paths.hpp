// Checks of a path, lent with a stage or alone.
#pragma once

#include "door/fields.hpp"
#include "path/path.hpp"

namespace lvb::door {

/// A host's path, checked whole and turned into what the model takes; `stage` is -1 where it is lent alone.
bool take_path(Refusal &refusal, const lvb_path *lent, std::int32_t stage, Heights heights, path::Path &path) noexcept;

/// Refuses a frequency at which a path's model does not hold.
bool check_reach(Refusal &refusal, const path::Path &path, double frequency_mhz, Place place) noexcept;

/// The same for a distance, which stands in the field given.
bool check_reach_of_distance(Refusal &refusal, const path::Path &path, double distance_m, Place place,
                             std::int32_t field) noexcept;

/// Range of a field of lvb_path, or null where there is no such number.
const Range *path_range(std::int32_t field) noexcept;
/// The same of lvb_edge.
const Range *edge_range(std::int32_t field) noexcept;

} // namespace lvb::door
