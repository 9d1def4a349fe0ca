// The layout of every public struct, pinned for targets with pointers of 64 bits. A change here breaks every caller.
#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cstddef>

namespace {

#define OFFSET(type, member, value) EXPECT_EQ(offsetof(type, member), std::size_t{value}) << #type "." #member
#define SIZE(type, structure, value)                                                                                   \
    EXPECT_EQ(sizeof(type), std::size_t{value}) << #type;                                                              \
    EXPECT_EQ(lvb_struct_size(structure), sizeof(type)) << #type

TEST(Layout, IsPinned) {
    if constexpr (sizeof(void *) != 8)
        GTEST_SKIP() << "targets of 32 bits align double differently (4 bytes on i386, 8 on ARM): no figures to pin";
    SIZE(lvb_fault, LVB_STRUCT_FAULT, 48);
    OFFSET(lvb_fault, size, 0);
    OFFSET(lvb_fault, status, 4);
    OFFSET(lvb_fault, structure, 8);
    OFFSET(lvb_fault, field, 12);
    OFFSET(lvb_fault, stage, 16);
    OFFSET(lvb_fault, row, 20);
    OFFSET(lvb_fault, value, 24);
    OFFSET(lvb_fault, minimum, 32);
    OFFSET(lvb_fault, maximum, 40);
    SIZE(lvb_cable_table, LVB_STRUCT_CABLE_TABLE, 24);
    OFFSET(lvb_cable_table, size, 0);
    OFFSET(lvb_cable_table, row_count, 4);
    OFFSET(lvb_cable_table, frequency_mhz, 8);
    OFFSET(lvb_cable_table, attenuation_db_per_100m, 16);
    SIZE(lvb_cable_run, LVB_STRUCT_CABLE_RUN, 48);
    OFFSET(lvb_cable_run, size, 0);
    OFFSET(lvb_cable_run, cable_type, 4);
    OFFSET(lvb_cable_run, stated, 8);
    OFFSET(lvb_cable_run, connector_count, 12);
    OFFSET(lvb_cable_run, frequency_mhz, 16);
    OFFSET(lvb_cable_run, length_m, 24);
    OFFSET(lvb_cable_run, temperature_degc, 32);
    OFFSET(lvb_cable_run, connector_loss_db, 40);
    SIZE(lvb_cable_loss, LVB_STRUCT_CABLE_LOSS, 40);
    OFFSET(lvb_cable_loss, size, 0);
    OFFSET(lvb_cable_loss, notes, 4);
    OFFSET(lvb_cable_loss, attenuation_db_per_100m, 8);
    OFFSET(lvb_cable_loss, cable_loss_db, 16);
    OFFSET(lvb_cable_loss, connectors_loss_db, 24);
    OFFSET(lvb_cable_loss, loss_db, 32);
    SIZE(lvb_cable_info, LVB_STRUCT_CABLE_INFO, 64);
    OFFSET(lvb_cable_info, size, 0);
    OFFSET(lvb_cable_info, cable_type, 4);
    OFFSET(lvb_cable_info, row_count, 8);
    OFFSET(lvb_cable_info, reserved, 12);
    OFFSET(lvb_cable_info, lowest_mhz, 16);
    OFFSET(lvb_cable_info, highest_mhz, 24);
    OFFSET(lvb_cable_info, usable_lowest_mhz, 32);
    OFFSET(lvb_cable_info, usable_highest_mhz, 40);
    OFFSET(lvb_cable_info, name, 48);
    OFFSET(lvb_cable_info, description, 56);
    SIZE(lvb_cable_row, LVB_STRUCT_CABLE_ROW, 40);
    OFFSET(lvb_cable_row, size, 0);
    OFFSET(lvb_cable_row, reserved, 4);
    OFFSET(lvb_cable_row, frequency_mhz, 8);
    OFFSET(lvb_cable_row, attenuation_db_per_100m, 16);
    OFFSET(lvb_cable_row, source, 24);
    OFFSET(lvb_cable_row, remark, 32);
    SIZE(lvb_gain_table, LVB_STRUCT_GAIN_TABLE, 24);
    OFFSET(lvb_gain_table, size, 0);
    OFFSET(lvb_gain_table, row_count, 4);
    OFFSET(lvb_gain_table, frequency_mhz, 8);
    OFFSET(lvb_gain_table, gain_db, 16);
    SIZE(lvb_stage, LVB_STRUCT_STAGE, 128);
    OFFSET(lvb_stage, kind, 0);
    OFFSET(lvb_stage, basis, 4);
    OFFSET(lvb_stage, stated, 8);
    OFFSET(lvb_stage, cable_type, 12);
    OFFSET(lvb_stage, connector_count, 16);
    OFFSET(lvb_stage, reserved, 20);
    OFFSET(lvb_stage, label, 24);
    OFFSET(lvb_stage, user, 32);
    OFFSET(lvb_stage, gain_table, 40);
    OFFSET(lvb_stage, cable_table, 48);
    OFFSET(lvb_stage, level_dbm, 56);
    OFFSET(lvb_stage, gain_db, 64);
    OFFSET(lvb_stage, tolerance_db, 72);
    OFFSET(lvb_stage, length_m, 80);
    OFFSET(lvb_stage, connector_loss_db, 88);
    OFFSET(lvb_stage, floor_dbm, 96);
    OFFSET(lvb_stage, wanted_low_dbm, 104);
    OFFSET(lvb_stage, wanted_high_dbm, 112);
    OFFSET(lvb_stage, ceiling_dbm, 120);
    SIZE(lvb_link, LVB_STRUCT_LINK, 64);
    OFFSET(lvb_link, size, 0);
    OFFSET(lvb_link, stated, 4);
    OFFSET(lvb_link, stage_count, 8);
    OFFSET(lvb_link, stage_size, 12);
    OFFSET(lvb_link, stages, 16);
    OFFSET(lvb_link, label, 24);
    OFFSET(lvb_link, frequency_mhz, 32);
    OFFSET(lvb_link, far_distance_m, 40);
    OFFSET(lvb_link, near_distance_m, 48);
    OFFSET(lvb_link, temperature_degc, 56);
    SIZE(lvb_level, LVB_STRUCT_LEVEL, 80);
    OFFSET(lvb_level, reference, 0);
    OFFSET(lvb_level, basis, 4);
    OFFSET(lvb_level, notes, 8);
    OFFSET(lvb_level, reserved, 12);
    OFFSET(lvb_level, far_change_db, 16);
    OFFSET(lvb_level, far_level_dbm, 24);
    OFFSET(lvb_level, far_worst_db, 32);
    OFFSET(lvb_level, far_rss_db, 40);
    OFFSET(lvb_level, near_change_db, 48);
    OFFSET(lvb_level, near_level_dbm, 56);
    OFFSET(lvb_level, near_worst_db, 64);
    OFFSET(lvb_level, near_rss_db, 72);
    SIZE(lvb_end, LVB_STRUCT_END, 72);
    OFFSET(lvb_end, distance_m, 0);
    OFFSET(lvb_end, level_dbm, 8);
    OFFSET(lvb_end, worst_db, 16);
    OFFSET(lvb_end, rss_db, 24);
    OFFSET(lvb_end, margin_db, 32);
    OFFSET(lvb_end, headroom_db, 40);
    OFFSET(lvb_end, from_middle_db, 48);
    OFFSET(lvb_end, zone, 56);
    OFFSET(lvb_end, zone_lowest, 60);
    OFFSET(lvb_end, zone_highest, 64);
    OFFSET(lvb_end, reserved, 68);
    SIZE(lvb_budget, LVB_STRUCT_BUDGET, 240);
    OFFSET(lvb_budget, size, 0);
    OFFSET(lvb_budget, verdict, 4);
    OFFSET(lvb_budget, decided_by, 8);
    OFFSET(lvb_budget, reference, 12);
    OFFSET(lvb_budget, notes, 16);
    OFFSET(lvb_budget, entries, 20);
    OFFSET(lvb_budget, guesses, 24);
    OFFSET(lvb_budget, guesses_without_tolerance, 28);
    OFFSET(lvb_budget, not_looked_up, 32);
    OFFSET(lvb_budget, estimated, 36);
    OFFSET(lvb_budget, handbook, 40);
    OFFSET(lvb_budget, data_sheet, 44);
    OFFSET(lvb_budget, measured, 48);
    OFFSET(lvb_budget, formula, 52);
    OFFSET(lvb_budget, decided_by_db, 56);
    OFFSET(lvb_budget, eirp_dbm, 64);
    OFFSET(lvb_budget, eirp_worst_db, 72);
    OFFSET(lvb_budget, guess_worst_db, 80);
    OFFSET(lvb_budget, guess_share, 88);
    OFFSET(lvb_budget, far_end, 96);
    OFFSET(lvb_budget, near_end, 168);
    SIZE(lvb_range, LVB_STRUCT_RANGE, 24);
    OFFSET(lvb_range, size, 0);
    OFFSET(lvb_range, required, 4);
    OFFSET(lvb_range, minimum, 8);
    OFFSET(lvb_range, maximum, 16);
    SIZE(lvb_columns, LVB_STRUCT_COLUMNS, 56);
    OFFSET(lvb_columns, size, 0);
    OFFSET(lvb_columns, formula, 4);
    OFFSET(lvb_columns, instructions, 8);
    OFFSET(lvb_columns, single, 12);
    OFFSET(lvb_columns, count, 16);
    OFFSET(lvb_columns, argument_1, 24);
    OFFSET(lvb_columns, argument_2, 32);
    OFFSET(lvb_columns, argument_3, 40);
    OFFSET(lvb_columns, result, 48);
    SIZE(lvb_bad, LVB_STRUCT_BAD, 24);
    OFFSET(lvb_bad, size, 0);
    OFFSET(lvb_bad, reserved, 4);
    OFFSET(lvb_bad, count, 8);
    OFFSET(lvb_bad, first, 16);
    SIZE(lvb_grid, LVB_STRUCT_GRID, 80);
    OFFSET(lvb_grid, size, 0);
    OFFSET(lvb_grid, end, 4);
    OFFSET(lvb_grid, instructions, 8);
    OFFSET(lvb_grid, reserved, 12);
    OFFSET(lvb_grid, frequency_count, 16);
    OFFSET(lvb_grid, distance_count, 24);
    OFFSET(lvb_grid, link, 32);
    OFFSET(lvb_grid, frequency_mhz, 40);
    OFFSET(lvb_grid, distance_m, 48);
    OFFSET(lvb_grid, scratch, 56);
    OFFSET(lvb_grid, level_dbm, 64);
    OFFSET(lvb_grid, user, 72);
    // cable
    // antennas and bodies
    // other paths
    // fading
    // noise and linearity
    // two systems
    // limits
    // sweeps, maps and walks
    // choose
    // locate
    SIZE(lvb_reading, LVB_STRUCT_READING, 32);
    OFFSET(lvb_reading, stage, 0);
    OFFSET(lvb_reading, reserved, 4);
    OFFSET(lvb_reading, level_dbm, 8);
    OFFSET(lvb_reading, uncertainty_db, 16);
    OFFSET(lvb_reading, distance_m, 24);
    SIZE(lvb_locate, LVB_STRUCT_LOCATE, 72);
    OFFSET(lvb_locate, size, 0);
    OFFSET(lvb_locate, reading_count, 4);
    OFFSET(lvb_locate, reading_size, 8);
    OFFSET(lvb_locate, reserved, 12);
    OFFSET(lvb_locate, link, 16);
    OFFSET(lvb_locate, readings, 24);
    OFFSET(lvb_locate, user, 32);
    OFFSET(lvb_locate, uncertainty_db, 40);
    OFFSET(lvb_locate, fault_probability, 48);
    OFFSET(lvb_locate, fault_spread_db, 56);
    OFFSET(lvb_locate, false_alarm, 64);
    SIZE(lvb_suspect, LVB_STRUCT_SUSPECT, 40);
    OFFSET(lvb_suspect, span, 0);
    OFFSET(lvb_suspect, reserved, 4);
    OFFSET(lvb_suspect, probability, 8);
    OFFSET(lvb_suspect, fault_db, 16);
    OFFSET(lvb_suspect, deviation_db, 24);
    OFFSET(lvb_suspect, expected_bits, 32);
    SIZE(lvb_locate_result, LVB_STRUCT_LOCATE_RESULT, 96);
    OFFSET(lvb_locate_result, size, 0);
    OFFSET(lvb_locate_result, consistent, 4);
    OFFSET(lvb_locate_result, reading_count, 8);
    OFFSET(lvb_locate_result, stage, 12);
    OFFSET(lvb_locate_result, span_first, 16);
    OFFSET(lvb_locate_result, span_last, 20);
    OFFSET(lvb_locate_result, next_stage, 24);
    OFFSET(lvb_locate_result, reserved, 28);
    OFFSET(lvb_locate_result, chi_square, 32);
    OFFSET(lvb_locate_result, p_value, 40);
    OFFSET(lvb_locate_result, none_probability, 48);
    OFFSET(lvb_locate_result, probability, 56);
    OFFSET(lvb_locate_result, span_probability, 64);
    OFFSET(lvb_locate_result, fault_db, 72);
    OFFSET(lvb_locate_result, deviation_db, 80);
    OFFSET(lvb_locate_result, expected_bits, 88);
    // how sure
    // solve, rank, compare
}

} // namespace
