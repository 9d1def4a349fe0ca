/* The program of every consumer: one budget with one number that is known from elsewhere. */
#include <levelbook/levelbook.h>

#include <stdio.h>

/* 30 mW is 14.77 dBm, and free space takes 49.73 dB over 40 ft at 600 MHz (ITU-R P.525; both are the printed figures of
 * the trade's worked example): isotropic antennas receive -34.96 dBm. Each figure is printed to 0.005 dB. */
static int run_consumer(void) {
    lvb_stage stages[4] = {{0}};
    lvb_link link = {0};
    lvb_budget budget = {0};
    lvb_fault fault = {0};
    stages[0].kind = LVB_KIND_SOURCE;
    stages[0].level_dbm = lvb_dbm_from_mw(30.0);
    stages[1].kind = LVB_KIND_ANTENNA;
    stages[2].kind = LVB_KIND_AIR;
    stages[3].kind = LVB_KIND_ANTENNA;
    link.size = sizeof link;
    link.stages = stages;
    link.stage_count = 4;
    link.stage_size = sizeof stages[0];
    link.frequency_mhz = 600.0;
    link.far_distance_m = lvb_metres_from_feet(40.0);
    budget.size = sizeof budget;
    fault.size = sizeof fault;
    if (lvb_compute_budget(&link, &budget, NULL, 0, &fault) != LVB_OK) {
        char text[256];
        lvb_fault_text(&fault, text, sizeof text);
        printf("refused: %s\n", text);
        return 1;
    }
    printf("levelbook %s: %.2f dBm\n", lvb_version_text(), budget.far_end.level_dbm);
    return budget.far_end.level_dbm > -34.97 && budget.far_end.level_dbm < -34.95 ? 0 : 1;
}
