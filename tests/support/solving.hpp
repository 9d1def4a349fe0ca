// What lvb_compute_solution asks for and answers, by the public budget alone.
#pragma once

#include <levelbook/levelbook.h>

namespace support {

/// The members of a link and a stage by their fields' numbers.
inline double &link_field(lvb_link &link, std::int32_t field) {
    switch (field) {
    case LVB_FIELD_FREQUENCY_MHZ:
        return link.frequency_mhz;
    case LVB_FIELD_FAR_DISTANCE_M:
        return link.far_distance_m;
    case LVB_FIELD_NEAR_DISTANCE_M:
        return link.near_distance_m;
    default:
        link.stated = LVB_STATED_TEMPERATURE;
        return link.temperature_degc;
    }
}
inline double &stage_field(lvb_stage &stage, std::int32_t field) {
    switch (field) {
    case LVB_FIELD_LEVEL_DBM:
        return stage.level_dbm;
    case LVB_FIELD_GAIN_DB:
        return stage.gain_db;
    case LVB_FIELD_TOLERANCE_DB:
        return stage.tolerance_db;
    case LVB_FIELD_LENGTH_M:
        return stage.length_m;
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return stage.connector_loss_db;
    case LVB_FIELD_FLOOR_DBM:
        return stage.floor_dbm;
    case LVB_FIELD_WANTED_LOW_DBM:
        return stage.wanted_low_dbm;
    case LVB_FIELD_WANTED_HIGH_DBM:
        return stage.wanted_high_dbm;
    default:
        return stage.ceiling_dbm;
    }
}

/// A goal's figure in a budget, with the tolerances against it where they count.
inline double goal_of(const lvb_budget &b, std::int32_t goal, std::int32_t tolerances) {
    const auto against = [&](const lvb_end &end) {
        return tolerances == LVB_TOLERANCES_WORST ? end.worst_db : tolerances == LVB_TOLERANCES_RSS ? end.rss_db : 0.0;
    };
    switch (goal) {
    case LVB_GOAL_MARGIN:
        return b.far_end.margin_db - against(b.far_end);
    case LVB_GOAL_HEADROOM:
        return b.near_end.headroom_db - against(b.near_end);
    case LVB_GOAL_BALANCE:
        return b.far_end.margin_db - b.near_end.headroom_db;
    case LVB_GOAL_FAR_FROM_MIDDLE:
        return b.far_end.from_middle_db;
    case LVB_GOAL_NEAR_FROM_MIDDLE:
        return b.near_end.from_middle_db;
    case LVB_GOAL_FAR_LEVEL:
        return b.far_end.level_dbm;
    case LVB_GOAL_NEAR_LEVEL:
        return b.near_end.level_dbm;
    default:
        return tolerances == LVB_TOLERANCES_WORST ? b.eirp_dbm + b.eirp_worst_db : b.eirp_dbm;
    }
}

} // namespace support
