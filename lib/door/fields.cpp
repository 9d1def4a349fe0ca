#include "antenna/cosine.hpp"
#include "antenna/helix.hpp"
#include "door/paths.hpp"
#include "door/site_fields.hpp"
#include "door/struct_fields.hpp"

namespace lvb::door {
namespace {

constexpr Range tolerance{0.0, 100.0, false};
constexpr Range loss_only{-200.0, 0.0, false};
constexpr Range around_zero{-60.0, 60.0, false};
constexpr Range amplifier_gain{-60.0, 120.0, false};
constexpr Range air_gain{-200.0, 30.0, false};
constexpr Range noise_figure{0.0, 100.0, false};
constexpr Range linear_level{-100.0, 150.0, false};     // third-order intercept and 1 dB compression
constexpr Range optional_length{0.001, 10000.0, false}; // only a cable by type or table must have one

const Range *antenna_range(std::int32_t field) noexcept {
    static constexpr Range ellipticity{-1.0, 1.0, false};
    static constexpr Range dimension{0.0, 1000.0, false};
    switch (field) {
    case LVB_FIELD_X_M:
    case LVB_FIELD_Y_M:
    case LVB_FIELD_Z_M:
        return &position_range;
    case LVB_FIELD_AZIMUTH_DEG:
    case LVB_FIELD_ROLL_DEG:
    case LVB_FIELD_POLARIZATION_DEG:
        return &turn_range;
    case LVB_FIELD_TILT_DEG:
        return &elevation_range;
    case LVB_FIELD_ELLIPTICITY:
        return &ellipticity;
    case LVB_FIELD_LARGEST_DIMENSION_M:
        return &dimension;
    default:
        return nullptr;
    }
}

const Range *noise_conditions_range(std::int32_t field) noexcept {
    static constexpr Range carriers{2.0, LVB_MAX_CARRIERS, false};
    static constexpr Range bandwidth{1e-6, 1e5, true};
    static constexpr Range antenna_temperature{1e-3, 1e12, false};
    static constexpr Range external_noise_figure{-60.0, 120.0, false};
    static constexpr Range carrier_to_noise{-100.0, 100.0, false};
    switch (field) {
    case LVB_FIELD_CARRIERS:
        return &carriers;
    case LVB_FIELD_BANDWIDTH_MHZ:
        return &bandwidth;
    case LVB_FIELD_ANTENNA_TEMPERATURE_K:
        return &antenna_temperature;
    case LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB:
        return &external_noise_figure;
    case LVB_FIELD_NOISE_DBM:
    case LVB_FIELD_INTERFERENCE_DBM:
        return &received_level_range;
    case LVB_FIELD_CARRIER_TO_NOISE_DB:
        return &carrier_to_noise;
    default:
        return nullptr;
    }
}

const Range *site_range(std::int32_t structure, std::int32_t field) noexcept {
    for (const FieldOfSite &each : site_fields)
        if (each.structure == structure && each.field == field) return &each.range;
    return nullptr;
}

} // namespace

const Range *stage_range(std::int32_t kind, std::int32_t field) noexcept {
    switch (field) {
    case LVB_FIELD_TOLERANCE_DB:
        return &tolerance;
    case LVB_FIELD_LEVEL_DBM:
        return kind == LVB_KIND_SOURCE ? &power_level_range : nullptr;
    case LVB_FIELD_LENGTH_M:
        return kind == LVB_KIND_CABLE ? &optional_length : nullptr;
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return kind == LVB_KIND_CABLE ? &connector_loss_range : nullptr;
    case LVB_FIELD_CONNECTOR_COUNT:
        return kind == LVB_KIND_CABLE ? &connector_count_range : nullptr;
    case LVB_FIELD_FLOOR_DBM:
    case LVB_FIELD_WANTED_LOW_DBM:
    case LVB_FIELD_WANTED_HIGH_DBM:
    case LVB_FIELD_CEILING_DBM:
        return kind == LVB_KIND_RECEIVER ? &received_level_range : nullptr;
    case LVB_FIELD_FAR_AZIMUTH_DEG:
    case LVB_FIELD_NEAR_AZIMUTH_DEG:
        return kind == LVB_KIND_ANTENNA ? &turn_range : nullptr;
    case LVB_FIELD_FAR_ELEVATION_DEG:
    case LVB_FIELD_NEAR_ELEVATION_DEG:
        return kind == LVB_KIND_ANTENNA ? &elevation_range : nullptr;
    case LVB_FIELD_FACING_DEG:
        return kind == LVB_KIND_ALLOWANCE ? &turn_range : nullptr;
    case LVB_FIELD_NOISE_FIGURE_DB:
        return kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_RECEIVER ? &noise_figure : nullptr;
    case LVB_FIELD_INTERCEPT_DBM:
    case LVB_FIELD_COMPRESSION_DBM:
        return kind == LVB_KIND_PASSIVE || kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_RECEIVER ? &linear_level
                                                                                                   : nullptr;
    case LVB_FIELD_GAIN_DB:
        switch (kind) {
        case LVB_KIND_SOURCE:
        case LVB_KIND_ANTENNA:
        case LVB_KIND_RECEIVER:
            return &around_zero;
        case LVB_KIND_PASSIVE:
        case LVB_KIND_CABLE:
        case LVB_KIND_ALLOWANCE:
            return &loss_only;
        case LVB_KIND_AMPLIFIER:
            return &amplifier_gain;
        case LVB_KIND_AIR:
            return &air_gain;
        default:
            return nullptr;
        }
    default:
        return nullptr;
    }
}

const Range *pattern_range(std::int32_t kind, std::int32_t field) noexcept {
    static constexpr Range cosine_gain{antenna::half_space_dbi, 60.0, false}; // or a beam width
    static constexpr Range beam_width{0.1, 180.0, false};
    static constexpr Range front_to_back{0.1, 200.0, false};
    static constexpr Range turns{antenna::fewest_turns, antenna::most_turns, true};
    static constexpr Range spacing{antenna::least_spacing, antenna::most_spacing, true};
    static constexpr Range circumference{antenna::least_circumference, antenna::most_circumference, true};
    const bool cosine = kind == LVB_PATTERN_COSINE, cuts = kind == LVB_PATTERN_CUTS, helix = kind == LVB_PATTERN_HELIX;
    switch (field) {
    case LVB_FIELD_GAIN_DBI:
        if (cosine) return &cosine_gain;
        return kind == LVB_PATTERN_ISOTROPIC || cuts ? &around_zero : nullptr;
    case LVB_FIELD_BEAM_WIDTH_DEG:
        return cosine ? &beam_width : nullptr;
    case LVB_FIELD_FRONT_TO_BACK_DB:
        return cosine || cuts || helix ? &front_to_back : nullptr;
    case LVB_FIELD_TURNS:
        return helix ? &turns : nullptr;
    case LVB_FIELD_SPACING_WAVELENGTHS:
        return helix ? &spacing : nullptr;
    case LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS:
        return helix ? &circumference : nullptr;
    default:
        return nullptr;
    }
}

const Range *faded_range(std::int32_t structure, std::int32_t fading, std::int32_t field) noexcept {
    return field == LVB_FIELD_FADING_PARAMETER ? fading_range(fading) : site_range(structure, field);
}

const Range *struct_range(std::int32_t structure, std::int32_t field) noexcept {
    static constexpr Range stage_count{1.0, LVB_MAX_STAGES, true};
    if (structure == LVB_STRUCT_ANTENNA) return antenna_range(field);
    if (structure == LVB_STRUCT_COAXIAL_LINE) return find_range(coaxial_fields, field);
    if (structure == LVB_STRUCT_NEIGHBOURS) return find_range(neighbours_fields, field);
    if (structure == LVB_STRUCT_LIMIT) return find_range(limit_fields, field);
    if (structure == LVB_STRUCT_PATH) return path_range(field);
    if (structure == LVB_STRUCT_EDGE) return edge_range(field);
    if (structure == LVB_STRUCT_NOISE_CONDITIONS) return noise_conditions_range(field);
    const bool link = structure == LVB_STRUCT_LINK;
    const bool run = structure == LVB_STRUCT_CABLE_RUN;
    if (!link && !run) return site_range(structure, field);
    switch (field) {
    case LVB_FIELD_FREQUENCY_MHZ:
        return &frequency_range;
    case LVB_FIELD_TEMPERATURE_DEGC:
        return &temperature_range;
    case LVB_FIELD_STAGE_COUNT:
        return link ? &stage_count : nullptr;
    case LVB_FIELD_FAR_DISTANCE_M:
    case LVB_FIELD_NEAR_DISTANCE_M:
        return link ? &distance_range : nullptr;
    case LVB_FIELD_LENGTH_M:
        return run ? &length_range : nullptr;
    case LVB_FIELD_CONNECTOR_COUNT:
        return run ? &connector_count_range : nullptr;
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return run ? &connector_loss_range : nullptr;
    default:
        return nullptr;
    }
}

} // namespace lvb::door
