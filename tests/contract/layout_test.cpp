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
    SIZE(lvb_stage, LVB_STRUCT_STAGE, 152);
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
    OFFSET(lvb_stage, noise_figure_db, 128);
    OFFSET(lvb_stage, intercept_dbm, 136);
    OFFSET(lvb_stage, compression_dbm, 144);
    SIZE(lvb_noise_conditions, LVB_STRUCT_NOISE_CONDITIONS, 72);
    OFFSET(lvb_noise_conditions, size, 0);
    OFFSET(lvb_noise_conditions, stated, 4);
    OFFSET(lvb_noise_conditions, noise_at, 8);
    OFFSET(lvb_noise_conditions, interference_at, 12);
    OFFSET(lvb_noise_conditions, carriers, 16);
    OFFSET(lvb_noise_conditions, reserved, 20);
    OFFSET(lvb_noise_conditions, bandwidth_mhz, 24);
    OFFSET(lvb_noise_conditions, antenna_temperature_k, 32);
    OFFSET(lvb_noise_conditions, external_noise_figure_db, 40);
    OFFSET(lvb_noise_conditions, noise_dbm, 48);
    OFFSET(lvb_noise_conditions, interference_dbm, 56);
    OFFSET(lvb_noise_conditions, carrier_to_noise_db, 64);
    SIZE(lvb_noise_line, LVB_STRUCT_NOISE_LINE, 128);
    OFFSET(lvb_noise_line, notes, 0);
    OFFSET(lvb_noise_line, reserved, 4);
    OFFSET(lvb_noise_line, gain_db, 8);
    OFFSET(lvb_noise_line, stage_noise_figure_db, 16);
    OFFSET(lvb_noise_line, noise_figure_db, 24);
    OFFSET(lvb_noise_line, noise_temperature_k, 32);
    OFFSET(lvb_noise_line, noise_dbm, 40);
    OFFSET(lvb_noise_line, far_carrier_to_noise_db, 48);
    OFFSET(lvb_noise_line, near_carrier_to_noise_db, 56);
    OFFSET(lvb_noise_line, input_intercept_dbm, 64);
    OFFSET(lvb_noise_line, output_intercept_dbm, 72);
    OFFSET(lvb_noise_line, compression_dbm, 80);
    OFFSET(lvb_noise_line, compression_headroom_db, 88);
    OFFSET(lvb_noise_line, two_tone_dbm, 96);
    OFFSET(lvb_noise_line, products_dbm, 104);
    OFFSET(lvb_noise_line, range_change_db, 112);
    OFFSET(lvb_noise_line, carrier_to_noise_change_db, 120);
    SIZE(lvb_noise, LVB_STRUCT_NOISE, 208);
    OFFSET(lvb_noise, size, 0);
    OFFSET(lvb_noise, verdict, 4);
    OFFSET(lvb_noise, notes, 8);
    OFFSET(lvb_noise, first_stage, 12);
    OFFSET(lvb_noise, no_noise_figure_stage, 16);
    OFFSET(lvb_noise, no_intercept_stage, 20);
    OFFSET(lvb_noise, compressing_stage, 24);
    OFFSET(lvb_noise, range_lowering_stage, 28);
    OFFSET(lvb_noise, gain_db, 32);
    OFFSET(lvb_noise, noise_figure_db, 40);
    OFFSET(lvb_noise, noise_temperature_k, 48);
    OFFSET(lvb_noise, antenna_temperature_k, 56);
    OFFSET(lvb_noise, antenna_noise_dbm, 64);
    OFFSET(lvb_noise, receiver_noise_dbm, 72);
    OFFSET(lvb_noise, receiver_interference_dbm, 80);
    OFFSET(lvb_noise, far_level_dbm, 88);
    OFFSET(lvb_noise, near_level_dbm, 96);
    OFFSET(lvb_noise, far_carrier_to_noise_db, 104);
    OFFSET(lvb_noise, near_carrier_to_noise_db, 112);
    OFFSET(lvb_noise, far_carrier_to_noise_plus_interference_db, 120);
    OFFSET(lvb_noise, near_carrier_to_noise_plus_interference_db, 128);
    OFFSET(lvb_noise, sensitivity_dbm, 136);
    OFFSET(lvb_noise, margin_db, 144);
    OFFSET(lvb_noise, input_intercept_dbm, 152);
    OFFSET(lvb_noise, output_intercept_dbm, 160);
    OFFSET(lvb_noise, compression_dbm, 168);
    OFFSET(lvb_noise, compression_headroom_db, 176);
    OFFSET(lvb_noise, two_tone_dbm, 184);
    OFFSET(lvb_noise, products_dbm, 192);
    OFFSET(lvb_noise, spurious_free_range_db, 200);
    // two systems
    // limits
    // sweeps, maps and walks
    // choose
    // locate
    // how sure
    // solve, rank, compare
}

} // namespace
