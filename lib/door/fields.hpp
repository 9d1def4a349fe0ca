// The ranges of numeric fields: one table serves the checks and lvb_describe_field.
#pragma once

#include "cable/attenuation.hpp"
#include "door/check.hpp"
#include "tables/cables.hpp"

namespace lvb::door {

struct Range {
    double minimum;
    double maximum;
    bool required; ///< zero is refused as missing
};

inline constexpr Range frequency_range{0.1, 300000.0, true};
inline constexpr Range distance_range{0.01, 1e9, false}; // a chain with air must have one
inline constexpr Range power_level_range{-200.0, 150.0, false};
inline constexpr Range received_level_range{-250.0, 150.0, false}; // windows of a receiver, noise
inline constexpr Range temperature_range{-100.0, 200.0, false};
inline constexpr Range length_range{0.001, 10000.0, true};
inline constexpr Range connector_loss_range{0.0, 10.0, false};
inline constexpr Range connector_count_range{0.0, 1000.0, false};
inline constexpr Range turn_range{-360.0, 360.0, false}; // angles around a circle
inline constexpr Range elevation_range{-90.0, 90.0, false};
inline constexpr Range position_range{-1e6, 1e6, false};
inline constexpr Range height_range{-1000.0, 1000.0, false};
inline constexpr Range height_over_floor_range{0.01, 1000.0, false}; // of the ends of two rays

/// Range of a stage's field for a kind of stage, or null where this kind does not use the field.
const Range *stage_range(std::int32_t kind, std::int32_t field) noexcept;
/// The same for a struct whose fields do not depend on a kind.
const Range *struct_range(std::int32_t structure, std::int32_t field) noexcept;

/// Range of a pattern's field for a kind of pattern, or null where this kind does not use the field.
const Range *pattern_range(std::int32_t kind, std::int32_t field) noexcept;

/// Range of a map's or a walk's field for a law of fading, or null where this law does not use the field.
const Range *faded_range(std::int32_t structure, std::int32_t fading, std::int32_t field) noexcept;

/// A field that must lie in its range; zero is missing where the range says so, and neutral otherwise.
inline bool check_field(Refusal &refusal, double value, const Range &range, Place place, std::int32_t field) noexcept {
    if (value != 0.0) return check_range(refusal, value, range.minimum, range.maximum, place, field);
    return !range.required || refuse(refusal, LVB_E_MISSING, place, field, value, range.minimum, range.maximum);
}

/// A number whose zero stands for a usual value.
inline double or_else(double value, double usual) noexcept { return value != 0.0 ? value : usual; }

/// A field that its kind uses lies in its range; one that it does not use (null) is zero.
inline bool check_used(Refusal &refusal, double value, const Range *range, Place place, std::int32_t field) noexcept {
    if (range != nullptr) return check_field(refusal, value, *range, place, field);
    return value == 0.0 || refuse_unused(refusal, value, place, field);
}

/// A temperature and its bit in `stated`.
inline bool check_temperature(Refusal &refusal, double temperature_degc, std::uint32_t stated, Place place) noexcept {
    if (!check_field(refusal, temperature_degc, temperature_range, place, LVB_FIELD_TEMPERATURE_DEGC)) return false;
    return (stated & LVB_STATED_TEMPERATURE) != 0 || temperature_degc == 0.0 ||
           refuse(refusal, LVB_E_NOT_STATED, place, LVB_FIELD_TEMPERATURE_DEGC, temperature_degc);
}
inline double temperature_of(double temperature_degc, std::uint32_t stated) noexcept {
    return (stated & LVB_STATED_TEMPERATURE) != 0 ? temperature_degc : cable::table_temperature_degc;
}

/// A type of the catalogue, or none.
inline bool check_cable_type(Refusal &refusal, std::int32_t type, Place place) noexcept {
    return (type >= LVB_CABLE_NONE && type <= tables::cable_types) ||
           refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_CABLE_TYPE, type, 0.0, tables::cable_types);
}

/// Connectors of a cable; a loss of each without a count is refused, since it would have no effect.
inline bool check_connectors(Refusal &refusal, std::uint32_t count, double loss_db, Place place) noexcept {
    return check_field(refusal, count, connector_count_range, place, LVB_FIELD_CONNECTOR_COUNT) &&
           check_field(refusal, loss_db, connector_loss_range, place, LVB_FIELD_CONNECTOR_LOSS_DB) &&
           (count != 0 || loss_db == 0.0 ||
            refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_CONNECTOR_COUNT, 0.0, 1.0, connector_count_range.maximum));
}

} // namespace lvb::door
