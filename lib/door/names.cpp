// Names of statuses, fields, structs and of the values in results, as the header writes or describes them.
#include "door/names.hpp"

namespace lvb::door {

const char *struct_name(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_FAULT:
        return "lvb_fault";
    case LVB_STRUCT_LINK:
        return "lvb_link";
    case LVB_STRUCT_STAGE:
        return "lvb_stage";
    case LVB_STRUCT_LEVEL:
        return "lvb_level";
    case LVB_STRUCT_BUDGET:
        return "lvb_budget";
    case LVB_STRUCT_GAIN_TABLE:
        return "lvb_gain_table";
    case LVB_STRUCT_CABLE_TABLE:
        return "lvb_cable_table";
    case LVB_STRUCT_CABLE_RUN:
        return "lvb_cable_run";
    case LVB_STRUCT_CABLE_LOSS:
        return "lvb_cable_loss";
    case LVB_STRUCT_CABLE_INFO:
        return "lvb_cable_info";
    case LVB_STRUCT_CABLE_ROW:
        return "lvb_cable_row";
    case LVB_STRUCT_RANGE:
        return "lvb_range";
    case LVB_STRUCT_END:
        return "lvb_end";
    case LVB_STRUCT_COLUMNS:
        return "lvb_columns";
    case LVB_STRUCT_BAD:
        return "lvb_bad";
    case LVB_STRUCT_GRID:
        return "lvb_grid";
    default:
        return "unknown";
    }
}

} // namespace lvb::door

extern "C" {

const char *lvb_status_name(lvb_status status) {
    switch (status) {
    case LVB_OK:
        return "LVB_OK";
    case LVB_E_NULL:
        return "LVB_E_NULL";
    case LVB_E_STRUCT_SIZE:
        return "LVB_E_STRUCT_SIZE";
    case LVB_E_ELEMENT_SIZE:
        return "LVB_E_ELEMENT_SIZE";
    case LVB_E_UNKNOWN_TAIL:
        return "LVB_E_UNKNOWN_TAIL";
    case LVB_E_COUNT:
        return "LVB_E_COUNT";
    case LVB_E_RESERVED:
        return "LVB_E_RESERVED";
    case LVB_E_NAN:
        return "LVB_E_NAN";
    case LVB_E_INFINITE:
        return "LVB_E_INFINITE";
    case LVB_E_BELOW_RANGE:
        return "LVB_E_BELOW_RANGE";
    case LVB_E_ABOVE_RANGE:
        return "LVB_E_ABOVE_RANGE";
    case LVB_E_MISSING:
        return "LVB_E_MISSING";
    case LVB_E_NOT_STATED:
        return "LVB_E_NOT_STATED";
    case LVB_E_UNUSED:
        return "LVB_E_UNUSED";
    case LVB_E_CONFLICT:
        return "LVB_E_CONFLICT";
    case LVB_E_ORDER:
        return "LVB_E_ORDER";
    case LVB_E_UNKNOWN_VALUE:
        return "LVB_E_UNKNOWN_VALUE";
    case LVB_E_NO_SOURCE:
        return "LVB_E_NO_SOURCE";
    case LVB_E_SECOND_SOURCE:
        return "LVB_E_SECOND_SOURCE";
    case LVB_E_UNKNOWN_KIND:
        return "LVB_E_UNKNOWN_KIND";
    case LVB_E_NO_TRANSMIT_ANTENNA:
        return "LVB_E_NO_TRANSMIT_ANTENNA";
    case LVB_E_NO_RECEIVE_ANTENNA:
        return "LVB_E_NO_RECEIVE_ANTENNA";
    case LVB_E_SECOND_AIR:
        return "LVB_E_SECOND_AIR";
    case LVB_E_ANTENNA_OUT_OF_PLACE:
        return "LVB_E_ANTENNA_OUT_OF_PLACE";
    case LVB_E_STAGE_IN_AIR:
        return "LVB_E_STAGE_IN_AIR";
    case LVB_E_AFTER_RECEIVER:
        return "LVB_E_AFTER_RECEIVER";
    case LVB_E_TABLE_EMPTY:
        return "LVB_E_TABLE_EMPTY";
    case LVB_E_TABLE_UNSORTED:
        return "LVB_E_TABLE_UNSORTED";
    case LVB_E_TABLE_DUPLICATE:
        return "LVB_E_TABLE_DUPLICATE";
    case LVB_E_TABLE_TOO_STEEP:
        return "LVB_E_TABLE_TOO_STEEP";
    case LVB_E_OUTSIDE_TABLE:
        return "LVB_E_OUTSIDE_TABLE";
    case LVB_E_NOT_FOUND:
        return "LVB_E_NOT_FOUND";
    default:
        return "unknown";
    }
}

const char *lvb_field_name(int32_t field) {
    switch (field) {
    case LVB_FIELD_SIZE:
        return "size";
    case LVB_FIELD_STATED:
        return "stated";
    case LVB_FIELD_RESERVED:
        return "reserved";
    case LVB_FIELD_KIND:
        return "kind";
    case LVB_FIELD_BASIS:
        return "basis";
    case LVB_FIELD_CABLE_TYPE:
        return "cable_type";
    case LVB_FIELD_CONNECTOR_COUNT:
        return "connector_count";
    case LVB_FIELD_STAGE_COUNT:
        return "stage_count";
    case LVB_FIELD_STAGE_SIZE:
        return "stage_size";
    case LVB_FIELD_ROW_COUNT:
        return "row_count";
    case LVB_FIELD_STAGES:
        return "stages";
    case LVB_FIELD_GAIN_TABLE:
        return "gain_table";
    case LVB_FIELD_CABLE_TABLE:
        return "cable_table";
    case LVB_FIELD_FREQUENCY_MHZ:
        return "frequency_mhz";
    case LVB_FIELD_FAR_DISTANCE_M:
        return "far_distance_m";
    case LVB_FIELD_NEAR_DISTANCE_M:
        return "near_distance_m";
    case LVB_FIELD_TEMPERATURE_DEGC:
        return "temperature_degc";
    case LVB_FIELD_LEVEL_DBM:
        return "level_dbm";
    case LVB_FIELD_GAIN_DB:
        return "gain_db";
    case LVB_FIELD_TOLERANCE_DB:
        return "tolerance_db";
    case LVB_FIELD_LENGTH_M:
        return "length_m";
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return "connector_loss_db";
    case LVB_FIELD_FLOOR_DBM:
        return "floor_dbm";
    case LVB_FIELD_WANTED_LOW_DBM:
        return "wanted_low_dbm";
    case LVB_FIELD_WANTED_HIGH_DBM:
        return "wanted_high_dbm";
    case LVB_FIELD_CEILING_DBM:
        return "ceiling_dbm";
    case LVB_FIELD_ATTENUATION_DB_PER_100M:
        return "attenuation_db_per_100m";
    case LVB_FIELD_LINK:
        return "link";
    case LVB_FIELD_BUDGET:
        return "budget";
    case LVB_FIELD_LEVEL_SIZE:
        return "level_size";
    case LVB_FIELD_RUN:
        return "run";
    case LVB_FIELD_LOSS:
        return "loss";
    case LVB_FIELD_INFO:
        return "info";
    case LVB_FIELD_ROW:
        return "row";
    case LVB_FIELD_ROW_INDEX:
        return "row_index";
    case LVB_FIELD_RANGE:
        return "range";
    case LVB_FIELD_STRUCTURE:
        return "structure";
    case LVB_FIELD_FIELD:
        return "field";
    case LVB_FIELD_COLUMNS:
        return "columns";
    case LVB_FIELD_BAD:
        return "bad";
    case LVB_FIELD_FORMULA:
        return "formula";
    case LVB_FIELD_INSTRUCTIONS:
        return "instructions";
    case LVB_FIELD_SINGLE:
        return "single";
    case LVB_FIELD_COUNT:
        return "count";
    case LVB_FIELD_ARGUMENT_1:
        return "argument_1";
    case LVB_FIELD_ARGUMENT_2:
        return "argument_2";
    case LVB_FIELD_ARGUMENT_3:
        return "argument_3";
    case LVB_FIELD_RESULT:
        return "result";
    case LVB_FIELD_GRID:
        return "grid";
    case LVB_FIELD_END:
        return "end";
    case LVB_FIELD_FREQUENCY_COUNT:
        return "frequency_count";
    case LVB_FIELD_DISTANCE_COUNT:
        return "distance_count";
    case LVB_FIELD_DISTANCE_M:
        return "distance_m";
    case LVB_FIELD_SCRATCH:
        return "scratch";
    case LVB_FIELD_TABLE:
        return "table";
    default:
        return "unknown";
    }
}

const char *lvb_kind_name(int32_t kind) {
    switch (kind) {
    case LVB_KIND_SOURCE:
        return "source";
    case LVB_KIND_PASSIVE:
        return "passive";
    case LVB_KIND_CABLE:
        return "cable";
    case LVB_KIND_AMPLIFIER:
        return "amplifier";
    case LVB_KIND_ANTENNA:
        return "antenna";
    case LVB_KIND_AIR:
        return "air";
    case LVB_KIND_ALLOWANCE:
        return "allowance";
    case LVB_KIND_RECEIVER:
        return "receiver";
    default:
        return "unknown";
    }
}

const char *lvb_basis_name(int32_t basis) {
    switch (basis) {
    case LVB_BASIS_NOT_LOOKED_UP:
        return "not looked up";
    case LVB_BASIS_ESTIMATE:
        return "estimate";
    case LVB_BASIS_HANDBOOK:
        return "handbook";
    case LVB_BASIS_DATA_SHEET:
        return "data sheet";
    case LVB_BASIS_MEASURED:
        return "measured";
    case LVB_BASIS_FORMULA:
        return "formula";
    default:
        return "unknown";
    }
}

const char *lvb_reference_name(int32_t reference) {
    switch (reference) {
    case LVB_REFERENCE_CONDUCTED:
        return "conducted";
    case LVB_REFERENCE_EIRP:
        return "e.i.r.p.";
    case LVB_REFERENCE_ISOTROPIC:
        return "isotropic";
    default:
        return "unknown";
    }
}

const char *lvb_zone_name(int32_t zone) {
    switch (zone) {
    case LVB_ZONE_NOT_JUDGED:
        return "not judged";
    case LVB_ZONE_DROPOUT:
        return "dropout";
    case LVB_ZONE_LOW:
        return "below the wanted band";
    case LVB_ZONE_WANTED:
        return "wanted band";
    case LVB_ZONE_HIGH:
        return "above the wanted band";
    case LVB_ZONE_OVERLOAD:
        return "overload";
    default:
        return "unknown";
    }
}

const char *lvb_verdict_name(int32_t verdict) {
    switch (verdict) {
    case LVB_VERDICT_NOT_JUDGED:
        return "not judged";
    case LVB_VERDICT_HOLDS:
        return "holds";
    case LVB_VERDICT_DOUBTFUL:
        return "doubtful";
    case LVB_VERDICT_DROPS_OUT:
        return "drops out";
    case LVB_VERDICT_OVERLOADS:
        return "overloads";
    case LVB_VERDICT_DROPS_OUT_AND_OVERLOADS:
        return "drops out and overloads";
    default:
        return "unknown";
    }
}

} // extern "C"
