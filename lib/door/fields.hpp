// The ranges of numeric fields: one table serves the checks and lvb_describe_field.
#pragma once

#include "door/check.hpp"

namespace lvb::door {

struct Range {
    double minimum;
    double maximum;
    bool required; ///< zero is refused as missing
};

inline constexpr Range frequency_range{0.1, 300000.0, true};
inline constexpr Range distance_range{0.01, 1e9, true};
inline constexpr Range temperature_range{-100.0, 200.0, false};
inline constexpr Range length_range{0.001, 10000.0, true};
inline constexpr Range connector_loss_range{0.0, 10.0, false};
inline constexpr Range connector_count_range{0.0, 1000.0, false};

/// Range of a stage's field for a kind of stage, or null where this kind does not use the field.
const Range *stage_range(std::int32_t kind, std::int32_t field) noexcept;
/// The same for a link or a cable run.
const Range *struct_range(std::int32_t structure, std::int32_t field) noexcept;

/// A field that must lie in its range; zero is missing where the range says so.
inline Refusal check_field(double value, const Range &range, Place place, std::int32_t field) noexcept {
    if (value != 0.0) return check_range(value, range.minimum, range.maximum, place, field);
    if (!range.required) return {};
    return refuse(LVB_E_MISSING, place, field, value, range.minimum, range.maximum);
}

} // namespace lvb::door
