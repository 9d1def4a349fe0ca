// The numbers of a site and of what is asked of it: their ranges, which the checks share, and one table of them for
// lvb_describe_field.
#pragma once

#include "door/fields.hpp"

namespace lvb::door {

inline constexpr Range screen_loss_range{0.001, 200.0, false};            // or opaque, with edges
inline constexpr Range most_polarization_loss_range{0.001, 200.0, false}; // or no limit
inline constexpr Range grid_step_range{1e-6, 1e6, true};
inline constexpr Range speed_range{0.001, 1000.0, true};
inline constexpr Range walk_step_range{0.001, 1e6, true};
inline constexpr Range least_headroom_range{0.0, 100.0, false};

/// Range of the parameter of a law of fading, or null where the law has none.
inline const Range *fading_range(std::int32_t law) noexcept {
    static constexpr Range rice_factor_db{-100.0, 40.0, false}, nakagami_shape{0.5, 100.0, true};
    static constexpr Range standard_deviation_db{0.0, 100.0, false}, suzuki_standard_deviation_db{0.0, 30.0, false};
    switch (law) {
    case LVB_FADING_RICE:
        return &rice_factor_db;
    case LVB_FADING_NAKAGAMI:
        return &nakagami_shape;
    case LVB_FADING_LOGNORMAL:
        return &standard_deviation_db;
    case LVB_FADING_SUZUKI:
        return &suzuki_standard_deviation_db;
    default:
        return nullptr;
    }
}

struct FieldOfSite {
    std::int32_t structure, field;
    Range range;
};
inline constexpr FieldOfSite site_fields[] = {
    {LVB_STRUCT_SITE, LVB_FIELD_ANTENNA_COUNT, {1.0, LVB_MAX_SITE_ANTENNAS, false}}, // a placement's may have none
    {LVB_STRUCT_SITE, LVB_FIELD_AREA_COUNT, {0.0, LVB_MAX_AREAS, false}},
    {LVB_STRUCT_SITE, LVB_FIELD_SCREEN_COUNT, {0.0, LVB_MAX_SCREENS, false}},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_ANTENNA, {0.0, LVB_MAX_SITE_ANTENNAS - 1, false}},
    {LVB_STRUCT_SITE, LVB_FIELD_PACK_HEIGHT_M, height_range},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_AZIMUTH_DEG, turn_range},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_X_M, position_range},
    {LVB_STRUCT_SITE, LVB_FIELD_FACING_Y_M, position_range},
    {LVB_STRUCT_SITE, LVB_FIELD_MOST_POLARIZATION_LOSS_DB, most_polarization_loss_range},
    {LVB_STRUCT_AREA, LVB_FIELD_CORNER_COUNT, {3.0, LVB_MAX_CORNERS, true}},
    {LVB_STRUCT_AREA, LVB_FIELD_X_M, position_range},
    {LVB_STRUCT_AREA, LVB_FIELD_Y_M, position_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_X1_M, position_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_Y1_M, position_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_X2_M, position_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_Y2_M, position_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_BOTTOM_M, height_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_TOP_M, height_range},
    {LVB_STRUCT_SCREEN, LVB_FIELD_LOSS_DB, screen_loss_range},
    {LVB_STRUCT_MAP, LVB_FIELD_COLUMN_COUNT, {0.0, LVB_MAX_VALUES, false}},
    {LVB_STRUCT_MAP, LVB_FIELD_ROW_COUNT, {0.0, LVB_MAX_VALUES, false}},
    {LVB_STRUCT_MAP, LVB_FIELD_FIRST_ROW, {0.0, LVB_MAX_VALUES, false}},
    {LVB_STRUCT_MAP, LVB_FIELD_X_M, position_range},
    {LVB_STRUCT_MAP, LVB_FIELD_Y_M, position_range},
    {LVB_STRUCT_MAP, LVB_FIELD_STEP_X_M, grid_step_range},
    {LVB_STRUCT_MAP, LVB_FIELD_STEP_Y_M, grid_step_range},
    {LVB_STRUCT_WALK, LVB_FIELD_CORNER_COUNT, {2.0, LVB_MAX_CORNERS, true}},
    {LVB_STRUCT_WALK, LVB_FIELD_X_M, position_range},
    {LVB_STRUCT_WALK, LVB_FIELD_Y_M, position_range},
    {LVB_STRUCT_WALK, LVB_FIELD_Z_M, height_range},
    {LVB_STRUCT_WALK, LVB_FIELD_SPEED_M_PER_S, speed_range},
    {LVB_STRUCT_WALK, LVB_FIELD_STEP_M, walk_step_range},
    {LVB_STRUCT_PLACE, LVB_FIELD_PLACE_COUNT, {1.0, 2.0, true}},
    {LVB_STRUCT_PLACE, LVB_FIELD_CANDIDATE_COUNT, {1.0, LVB_MAX_CANDIDATES, true}},
    {LVB_STRUCT_PLACE, LVB_FIELD_COLUMN_COUNT, {1.0, LVB_MAX_VALUES, true}},
    {LVB_STRUCT_PLACE, LVB_FIELD_ROW_COUNT, {1.0, LVB_MAX_VALUES, true}},
    {LVB_STRUCT_PLACE, LVB_FIELD_X_M, position_range},
    {LVB_STRUCT_PLACE, LVB_FIELD_Y_M, position_range},
    {LVB_STRUCT_PLACE, LVB_FIELD_STEP_X_M, grid_step_range},
    {LVB_STRUCT_PLACE, LVB_FIELD_STEP_Y_M, grid_step_range},
    {LVB_STRUCT_PLACE, LVB_FIELD_LEAST_HEADROOM_DB, least_headroom_range},
};

} // namespace lvb::door
