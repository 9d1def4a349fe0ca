#include <levelbook/levelbook.h>
#include <stdio.h>

int main(void) {
    const lvb_stage stages[] = {
        {.kind = LVB_KIND_SOURCE, .level_dbm = lvb_dbm_from_mw(30.0)},
        {.kind = LVB_KIND_PASSIVE, .gain_db = -3.5}, /* combiner */
        {.kind = LVB_KIND_CABLE, .cable_type = LVB_CABLE_RG_213_U, .length_m = 15.0},
        {.kind = LVB_KIND_ANTENNA, .gain_db = 6.0},
        {.kind = LVB_KIND_AIR},
        {.kind = LVB_KIND_ALLOWANCE, .gain_db = -28.0}, /* polarization, body and fading */
        {.kind = LVB_KIND_ANTENNA},                     /* the pack's whip, 0 dBi */
        {.kind = LVB_KIND_RECEIVER, .stated = LVB_STATED_FLOOR | LVB_STATED_CEILING, .floor_dbm = -90, .ceiling_dbm = -20}};
    const lvb_link link = {.size = sizeof link, .stages = stages, .stage_count = 8, .stage_size = sizeof stages[0],
                           .frequency_mhz = 600.0, .far_distance_m = 40.0, .near_distance_m = 3.0};
    lvb_budget budget = {.size = sizeof budget};
    lvb_fault fault = {.size = sizeof fault};
    if (lvb_compute_budget(&link, &budget, NULL, 0, &fault) != LVB_OK) {
        char text[256];
        lvb_fault_text(&fault, text, sizeof text);
        return printf("refused: %s\n", text), 1;
    }
    printf("far:  %.2f dBm, %.2f dB above the floor\n", budget.far_end.level_dbm, budget.far_end.margin_db);
    printf("near: %.2f dBm, %.2f dB under the ceiling\n", budget.near_end.level_dbm, budget.near_end.headroom_db);
    printf("the link %s\n", lvb_verdict_name(budget.verdict));
    return 0;
}
