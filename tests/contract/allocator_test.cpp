// No call of the library allocates: every function of the header is called, valid and refused, while every way to get
// memory fails and counts. Replaces the allocator of glibc, so it runs without sanitizers only.
#include <levelbook/levelbook.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <initializer_list>
#include <limits>
#include <new>

extern "C" {
void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *memory, size_t size);
void __libc_free(void *memory);
}

namespace {

bool forbidden = false;
int asked = 0;

bool refused() {
    if (forbidden) ++asked;
    return forbidden;
}

// The names of the functions that were called, to be compared with the header's list.
constexpr int most = 512;
const char *called[most];
int call_count = 0;
void note(const char *name) {
    for (int i = 0; i < call_count; ++i)
        if (std::strcmp(called[i], name) == 0) return;
    called[call_count++] = name;
}
bool was_called(const char *name) {
    for (int i = 0; i < call_count; ++i)
        if (std::strcmp(called[i], name) == 0) return true;
    return false;
}

// Calls with the allocator forbidden and keeps the result.
#define CALL(function, ...)                                                                                            \
    (note(#function), forbidden = true, kept = static_cast<double>(function(__VA_ARGS__)), forbidden = false)
#define CALL_TEXT(function, ...)                                                                                       \
    (note(#function), forbidden = true, kept_text = function(__VA_ARGS__), forbidden = false)
double kept;
const char *kept_text;

} // namespace

extern "C" {
void *malloc(size_t size) { return refused() ? nullptr : __libc_malloc(size); }
void *calloc(size_t count, size_t size) { return refused() ? nullptr : __libc_calloc(count, size); }
void *realloc(void *memory, size_t size) { return refused() ? nullptr : __libc_realloc(memory, size); }
void free(void *memory) {
    refused();
    __libc_free(memory);
}
}
void *operator new(size_t size) {
    if (void *memory = malloc(size)) return memory;
    throw std::bad_alloc();
}
void operator delete(void *memory) noexcept { free(memory); }
void operator delete(void *memory, size_t) noexcept { free(memory); }

namespace {

void call_plain_functions() {
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double x : {0.25, 1.0, 40.0, -3.0, 0.0, infinity, std::numeric_limits<double>::quiet_NaN()}) {
#define LVB_SCALAR_1(function, range, accuracy) CALL(function, x);
#define LVB_SCALAR_2(function, range, accuracy) CALL(function, x, 0.5);
#define LVB_SCALAR_3(function, range, accuracy) CALL(function, x, 0.5, 0.5);
#include "levelbook_scalars.inc"
    }
}

template <class T>
T sized() {
    T made{};
    made.size = sizeof(T);
    return made;
}

void call_the_rest() {
    auto fault = sized<lvb_fault>();
    char text[256];
    CALL(lvb_version_number);
    CALL_TEXT(lvb_version_text);
    CALL(lvb_cable_type_count);
    CALL(lvb_formula_from_name, "elliptical_polarization_loss_db");
    for (int32_t i = -2; i < 400; ++i) {
        CALL(lvb_struct_size, i);
        CALL_TEXT(lvb_field_name, i);
        CALL_TEXT(lvb_formula_name, i);
        CALL_TEXT(lvb_kind_name, i);
        CALL_TEXT(lvb_basis_name, i);
        CALL_TEXT(lvb_reference_name, i);
        CALL_TEXT(lvb_zone_name, i);
        CALL_TEXT(lvb_verdict_name, i);
        CALL_TEXT(lvb_struct_name, i);
        CALL_TEXT(lvb_instructions_name, i);
        CALL_TEXT(lvb_decided_by_name, i);
        CALL_TEXT(lvb_end_name, i);
        CALL_TEXT(lvb_note_name, static_cast<uint32_t>(i));
        CALL_TEXT(lvb_pattern_name, i);
        CALL_TEXT(lvb_path_name, i);
        CALL_TEXT(lvb_environment_name, i);
        CALL_TEXT(lvb_polarization_name, i);
        CALL_TEXT(lvb_place_name, i);
        CALL_TEXT(lvb_exposure_name, i);
        CALL_TEXT(lvb_audience_name, i);
        CALL_TEXT(lvb_direction_name, i);
        CALL_TEXT(lvb_combine_name, i);
        CALL_TEXT(lvb_facing_name, i);
        CALL_TEXT(lvb_fading_name, i);
        CALL_TEXT(lvb_goal_name, i);
        CALL_TEXT(lvb_tolerances_name, i);
        CALL_TEXT(lvb_solution_name, i);
        CALL_TEXT(lvb_pair_name, i);
        CALL_TEXT(lvb_law_name, i);
        auto info = sized<lvb_cable_info>();
        auto row = sized<lvb_cable_row>();
        auto range = sized<lvb_range>();
        CALL(lvb_describe_cable, i, &info, &fault);
        CALL(lvb_describe_cable_row, i, 0, &row, &fault);
        CALL(lvb_describe_field, LVB_STRUCT_STAGE, LVB_KIND_CABLE, i, &range, &fault);
        CALL(lvb_fault_text, &fault, text, sizeof text);
    }
    for (lvb_status status = -600; status < 2; ++status) {
        CALL_TEXT(lvb_status_name, status);
        fault.status = status;
        CALL(lvb_fault_text, &fault, text, sizeof text);
    }
    for (const char *name : {"RG-213/U", "no such cable", ""}) CALL(lvb_cable_type_from_name, name);

    const double mhz[] = {100.0, 500.0, 1000.0}, attenuation[] = {5.0, 12.0, 18.0}, gain[] = {-1.0, -2.0, -3.0};
    auto cable = sized<lvb_cable_table>();
    cable.row_count = 3;
    cable.frequency_mhz = mhz;
    cable.attenuation_db_per_100m = attenuation;
    auto gains = sized<lvb_gain_table>();
    gains.row_count = 3;
    gains.frequency_mhz = mhz;
    gains.gain_db = gain;
    auto run = sized<lvb_cable_run>();
    run.frequency_mhz = 600.0;
    run.length_m = 10.0;
    auto loss = sized<lvb_cable_loss>();
    CALL(lvb_compute_cable_loss, &run, &cable, &loss, &fault);
    CALL(lvb_compute_cable_loss, &run, nullptr, &loss, &fault);
    CALL(lvb_compute_cable_loss, nullptr, nullptr, nullptr, &fault);

    lvb_stage stages[8] = {};
    const int32_t kinds[8] = {LVB_KIND_SOURCE, LVB_KIND_PASSIVE,   LVB_KIND_CABLE,   LVB_KIND_ANTENNA,
                              LVB_KIND_AIR,    LVB_KIND_ALLOWANCE, LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
    for (int i = 0; i < 8; ++i) stages[i].kind = kinds[i];
    stages[1].gain_table = &gains;
    stages[2].cable_table = &cable;
    stages[2].length_m = 10.0;
    stages[7].stated = LVB_STATED_FLOOR;
    stages[7].floor_dbm = -90.0;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 8;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    link.far_distance_m = 40.0;
    auto budget = sized<lvb_budget>();
    lvb_level levels[8];
    CALL(lvb_compute_budget, &link, &budget, levels, sizeof(lvb_level), &fault);
    if (kept != 0.0) { // LVB_OK
        std::printf("the sound link is refused: %g\n", kept);
        std::exit(1);
    }
    for (int i = 0; i < 8; ++i) { // refused at every stage
        stages[i].reserved = 1;
        CALL(lvb_compute_budget, &link, &budget, levels, sizeof(lvb_level), &fault);
        CALL(lvb_fault_text, &fault, text, sizeof text);
        stages[i].reserved = 0;
    }
}

// Columns of every formula, and grids, on every instruction set; refused ones as well.
void call_columns_and_grids() {
    static double x[300], y[300], scratch[600];
    for (double &value : x) value = 0.75;
    x[299] = -1e300;
    CALL(lvb_best_instructions);
    const int32_t best = static_cast<int32_t>(kept) & ~LVB_INSTRUCTIONS_ASKED;
    auto fault = sized<lvb_fault>();
    auto bad = sized<lvb_bad>();
    for (int32_t set = LVB_INSTRUCTIONS_AUTOMATIC; set <= best; ++set)
        for (int32_t formula = -1; formula < 200; ++formula)
            for (int arguments = 0; arguments <= 3; ++arguments) {
                auto columns = sized<lvb_columns>();
                columns.formula = formula;
                columns.instructions = set;
                columns.count = 300;
                columns.argument_1 = arguments > 0 ? x : nullptr;
                columns.argument_2 = arguments > 1 ? x : nullptr;
                columns.argument_3 = arguments > 2 ? x : nullptr;
                columns.result = y;
                CALL(lvb_compute_columns, &columns, &bad, &fault);
            }
    lvb_stage stages[8] = {};
    const int32_t kinds[8] = {LVB_KIND_SOURCE, LVB_KIND_PASSIVE,   LVB_KIND_CABLE,   LVB_KIND_ANTENNA,
                              LVB_KIND_AIR,    LVB_KIND_ALLOWANCE, LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
    for (int i = 0; i < 8; ++i) stages[i].kind = kinds[i];
    stages[2].cable_type = LVB_CABLE_RG_213_U;
    stages[2].length_m = 10.0;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 8;
    link.stage_size = sizeof(lvb_stage);
    const double mhz[] = {600.0};
    auto grid = sized<lvb_grid>();
    grid.frequency_count = 1;
    grid.distance_count = 300;
    grid.link = &link;
    grid.frequency_mhz = mhz;
    grid.distance_m = x;
    grid.scratch = scratch;
    grid.level_dbm = y;
    for (grid.instructions = LVB_INSTRUCTIONS_AUTOMATIC; grid.instructions <= best + 1; ++grid.instructions)
        CALL(lvb_compute_grid, &grid, &bad, &fault);
    grid.instructions = LVB_INSTRUCTIONS_BASELINE;
    CALL(lvb_compute_grid, &grid, &bad, &fault);
    if (kept != 0.0 || bad.count != 1) { // LVB_OK
        std::printf("the sound grid is refused: %g\n", kept);
        std::exit(1);
    }
    CALL(lvb_compute_grid, nullptr, nullptr, &fault);
}

// ---- antennas and bodies

void call_antennas() {
    auto fault = sized<lvb_fault>();
    const double angles[] = {-90.0, 0.0, 90.0}, gains[] = {-20.0, 0.0, -3.0}, losses[] = {20.0, 0.0, 3.0};
    auto around = sized<lvb_azimuth_cut>();
    around.row_count = 3;
    around.azimuth_deg = angles;
    around.gain_db = gains;
    auto up = sized<lvb_elevation_cut>();
    up.row_count = 3;
    up.elevation_deg = angles;
    up.gain_db = gains;
    auto body = sized<lvb_body_table>();
    body.row_count = 3;
    body.facing_deg = angles;
    body.loss_db = losses;
    double loss = 0.0;
    CALL(lvb_compute_body_loss, &body, 30.0, &loss, &fault);
    CALL(lvb_compute_body_loss, nullptr, 30.0, &loss, &fault);
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    there.x_m = 3.0;
    there.tilt_deg = 20.0;
    auto pointing = sized<lvb_pointing>();
    auto gain = sized<lvb_pattern_gain>();
    for (int32_t kind = LVB_PATTERN_ISOTROPIC; kind <= LVB_PATTERN_HELIX + 1; ++kind) {
        auto pattern = sized<lvb_pattern>();
        pattern.kind = kind;
        if (kind == LVB_PATTERN_COSINE) pattern.beam_width_deg = 60.0;
        if (kind == LVB_PATTERN_CUTS) pattern.azimuth_cut = &around, pattern.elevation_cut = &up;
        if (kind == LVB_PATTERN_HELIX)
            pattern.turns = 8.0, pattern.spacing_wavelengths = 0.25, pattern.circumference_wavelengths = 1.0;
        CALL(lvb_compute_pattern_gain, &pattern, 100.0, 20.0, &gain, &fault);
        if ((kept == 0.0) != (kind <= LVB_PATTERN_HELIX)) { // LVB_OK
            std::printf("a pattern of kind %d gives %g\n", static_cast<int>(kind), kept);
            std::exit(1);
        }
        here.pattern = &pattern;
        CALL(lvb_compute_pointing, &here, &there, 600.0, &pointing, &fault);
        lvb_stage stages[3] = {};
        stages[0].kind = LVB_KIND_SOURCE;
        stages[1].kind = LVB_KIND_ALLOWANCE;
        stages[1].body_table = &body;
        stages[2].kind = LVB_KIND_ANTENNA;
        stages[2].pattern = &pattern;
        auto link = sized<lvb_link>();
        link.stages = stages;
        link.stage_count = 3;
        link.stage_size = sizeof(lvb_stage);
        link.frequency_mhz = 600.0;
        auto budget = sized<lvb_budget>();
        CALL(lvb_compute_budget, &link, &budget, nullptr, 0, &fault);
    }
    CALL(lvb_allowance_count);
    auto info = sized<lvb_allowance_info>();
    for (uint32_t i = 0; i < 20; ++i) CALL(lvb_describe_allowance, i, &info, &fault);
}

// ---- other paths

void call_paths() {
    const lvb_edge edges[] = {{4.0, 2.5}, {7.0, 2.0}, {2.0, 1.8}};
    auto fault = sized<lvb_fault>();
    auto loss = sized<lvb_path_loss>();
    auto path = sized<lvb_path>();
    path.edges = edges;
    path.edge_count = 3;
    path.edge_size = sizeof(lvb_edge);
    path.transmit_height_m = 3.0;
    path.receive_height_m = 1.5;
    for (path.model = -1; path.model <= LVB_PATH_RADIATING_CABLE + 1; ++path.model)
        CALL(lvb_compute_path_loss, &path, 600.0, 10.0, &loss, &fault);
    path.model = LVB_PATH_TWO_RAY;
    path.relative_permittivity = 5.0;
    CALL(lvb_compute_path_loss, &path, 600.0, 10.0, &loss, &fault);
    if (kept != 0.0) { // LVB_OK
        std::printf("the sound path is refused: %g\n", kept);
        std::exit(1);
    }
    CALL(lvb_compute_path_loss, nullptr, 600.0, 10.0, &loss, &fault);
}

// ---- fading

// ---- noise and linearity

void call_noise() {
    lvb_stage stages[6] = {};
    const int32_t kinds[6] = {LVB_KIND_SOURCE,    LVB_KIND_PASSIVE,   LVB_KIND_CABLE,
                              LVB_KIND_AMPLIFIER, LVB_KIND_ALLOWANCE, LVB_KIND_RECEIVER};
    for (int i = 0; i < 6; ++i) stages[i].kind = kinds[i];
    stages[1].gain_db = -3.0;
    stages[2].cable_type = LVB_CABLE_RG_213_U;
    stages[2].length_m = 10.0;
    for (int i : {3, 5}) stages[i].stated = LVB_STATED_NOISE_FIGURE | LVB_STATED_INTERCEPT | LVB_STATED_COMPRESSION;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 6;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    auto conditions = sized<lvb_noise_conditions>();
    conditions.bandwidth_mhz = 0.2;
    conditions.carriers = 20;
    auto noise = sized<lvb_noise>();
    auto fault = sized<lvb_fault>();
    lvb_noise_line lines[6];
    CALL(lvb_compute_noise, &link, &conditions, &noise, lines, sizeof(lvb_noise_line), &fault);
    if (kept != 0.0) { // LVB_OK
        std::printf("the sound noise is refused: %g\n", kept);
        std::exit(1);
    }
    conditions.reserved = 1;
    CALL(lvb_compute_noise, &link, &conditions, &noise, lines, sizeof(lvb_noise_line), &fault);
    CALL(lvb_compute_noise, nullptr, nullptr, nullptr, nullptr, 0, &fault);
}

// ---- two systems

void call_two_systems() {
    auto fault = sized<lvb_fault>();
    auto neighbours = sized<lvb_neighbours>();
    auto coexistence = sized<lvb_coexistence>();
    neighbours.separation_m = 2.0;
    neighbours.transmit_mhz = 600.0;
    CALL(lvb_compute_coexistence, &neighbours, &coexistence, &fault);
    CALL(lvb_compute_coexistence, nullptr, nullptr, &fault);
    auto line = sized<lvb_coaxial_line>();
    auto properties = sized<lvb_coaxial_properties>();
    line.frequency_mhz = 600.0;
    line.inner_diameter_mm = 2.0;
    line.outer_diameter_mm = 7.0;
    CALL(lvb_compute_coaxial_line, &line, &properties, &fault);
    CALL(lvb_compute_coaxial_line, nullptr, nullptr, &fault);
}

// ---- limits

void call_limits() {
    auto fault = sized<lvb_fault>();
    lvb_stage stages[2] = {};
    stages[0].kind = LVB_KIND_SOURCE;
    stages[1].kind = LVB_KIND_ANTENNA;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 2;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    auto limit = sized<lvb_limit>();
    auto result = sized<lvb_limit_result>();
    for (limit.quantity = 0; limit.quantity <= LVB_QUANTITY_EIRP; ++limit.quantity)
        CALL(lvb_check_limit, &link, &limit, &result, &fault);
    CALL(lvb_limit_rule_count);
    CALL(lvb_caution_count);
    for (uint32_t i = 0; i < 30; ++i) {
        auto rule = sized<lvb_limit_rule>();
        CALL(lvb_describe_limit_rule, i, &rule, &fault);
        CALL_TEXT(lvb_caution_text, i);
        CALL_TEXT(lvb_quantity_name, static_cast<int32_t>(i));
        CALL_TEXT(lvb_limit_verdict_name, static_cast<int32_t>(i));
        CALL(lvb_exposure_limit_w_per_m2, LVB_EXPOSURE_47_CFR_1_1310, LVB_AUDIENCE_GENERAL, 100.0 * i);
    }
}

// ---- sweeps, maps and walks

// A chain over air with a window, as the calls that decide take it.
struct Walked {
    lvb_stage stages[6] = {};
    lvb_link link = sized<lvb_link>();
    Walked() {
        const int32_t kinds[] = {LVB_KIND_SOURCE, LVB_KIND_PASSIVE, LVB_KIND_ANTENNA,
                                 LVB_KIND_AIR,    LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
        for (int i = 0; i < 6; ++i) stages[i].kind = kinds[i];
        stages[5].stated = LVB_STATED_FLOOR | LVB_STATED_CEILING;
        stages[5].floor_dbm = -90.0;
        stages[5].ceiling_dbm = -20.0;
        link.stages = stages;
        link.stage_count = 6;
        link.stage_size = sizeof(lvb_stage);
        link.frequency_mhz = 600.0;
        link.far_distance_m = 40.0;
        link.near_distance_m = 3.0;
    }
};

void call_sweep() {
    const Walked walked;
    double margins[8];
    auto sweep = sized<lvb_sweep>();
    auto result = sized<lvb_sweep_result>();
    auto fault = sized<lvb_fault>();
    sweep.link = &walked.link;
    sweep.first_mhz = 500.0;
    sweep.last_mhz = 700.0;
    sweep.frequency_count = 8;
    sweep.distance_count = 4;
    sweep.lowest_margin_db = margins;
    CALL(lvb_compute_sweep, &sweep, &result, &fault);
    sweep.last_mhz = -1.0;
    CALL(lvb_compute_sweep, &sweep, &result, &fault);
    CALL(lvb_compute_sweep, nullptr, nullptr, &fault);
}

void call_maps() {
    const Walked walked;
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    auto antenna = sized<lvb_antenna>();
    antenna.z_m = 2.0;
    antenna.pattern = &pattern;
    auto pack = sized<lvb_antenna>();
    pack.pattern = &pattern;
    const lvb_site_antenna antennas[2] = {{&antenna, &walked.link}, {&antenna, &walked.link}};
    const double x[3] = {0.0, 9.0, 9.0}, y[3] = {1.0, 1.0, 9.0}, angles[2] = {0.0, 180.0}, losses[2] = {0.0, 20.0};
    const lvb_area area = {3, 0, x, y};
    const lvb_screen screen = {1.0, 3.0, 4.0, 3.0, 0.0, 2.0, 0.0};
    auto body = sized<lvb_body_table>();
    body.row_count = 2;
    body.facing_deg = angles;
    body.loss_db = losses;
    auto site = sized<lvb_site>();
    site.antennas = antennas;
    site.antenna_count = 1;
    site.antenna_size = sizeof(lvb_site_antenna);
    site.areas = &area;
    site.area_count = 1;
    site.area_size = sizeof(lvb_area);
    site.screens = &screen;
    site.screen_count = 1;
    site.screen_size = sizeof(lvb_screen);
    site.body_table = &body;
    site.pack_antenna = &pack;
    site.pack_height_m = 1.2;
    double level[200], outage[200];
    auto fault = sized<lvb_fault>();
    auto map = sized<lvb_map>();
    auto summary = sized<lvb_map_summary>();
    map.site = &site;
    map.step_x_m = map.step_y_m = 1.0;
    map.column_count = 20;
    map.row_count = 10;
    map.level_dbm = level;
    map.outage = outage;
    map.fading = LVB_FADING_RAYLEIGH;
    CALL(lvb_compute_map, &map, &summary, &fault);
    CALL(lvb_join_map_summaries, &summary, &summary, &fault);
    auto walk = sized<lvb_walk>();
    auto result = sized<lvb_walk_result>();
    walk.site = &site;
    walk.corner_count = 3;
    walk.x_m = x;
    walk.y_m = y;
    walk.speed_m_per_s = 1.0;
    walk.step_m = 0.5;
    uint64_t count = 0;
    CALL(lvb_walk_point_count, &walk, &count, &fault);
    walk.level_dbm = level;
    CALL(lvb_compute_walk, &walk, &result, &fault);
    static double scratch[256 * 8];
    auto place = sized<lvb_place>();
    lvb_placement placements[2];
    uint32_t found = 0;
    place.site = &site;
    place.candidates = antennas;
    place.candidate_count = place.place_count = 2;
    place.candidate_size = sizeof(lvb_site_antenna);
    place.step_x_m = place.step_y_m = 1.0;
    place.column_count = 20;
    place.row_count = 10;
    place.scratch = scratch;
    CALL(lvb_place_scratch_count, &place, &place.scratch_count, &fault);
    CALL(lvb_compute_placements, &place, placements, sizeof(lvb_placement), 2, &found, &fault);
    lvb_antenna rail[3];
    CALL(lvb_spread_on_rail, &antenna, 3.0, 0.0, 2.0, 3, rail, &fault);
    if (kept != 0.0) { // LVB_OK
        std::printf("the sound site is refused: %g\n", kept);
        std::exit(1);
    }
    site.antenna_count = 0;
    CALL(lvb_compute_map, &map, &summary, &fault);
}

// ---- choose

void call_choose() {
    lvb_stage stages[4] = {};
    const int32_t kinds[4] = {LVB_KIND_SOURCE, LVB_KIND_PASSIVE, LVB_KIND_PASSIVE, LVB_KIND_RECEIVER};
    for (int i = 0; i < 4; ++i) stages[i].kind = kinds[i];
    stages[3].stated = LVB_STATED_FLOOR;
    stages[3].floor_dbm = -5.0;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 4;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    lvb_stage gear[3] = {};
    lvb_item items[3] = {};
    const uint32_t list[3] = {0, 1, 2};
    for (int i = 0; i < 3; ++i) {
        gear[i].kind = LVB_KIND_PASSIVE;
        gear[i].gain_db = -1.0 - i;
        items[i].stage = &gear[i];
        items[i].cost = 30u - 10u * static_cast<uint32_t>(i);
        items[i].count = 1;
    }
    const lvb_slot slots[2] = {{0, 1, 3, 0, list}, {0, 2, 3, 0, list}};
    lvb_need need = {};
    need.link = &link;
    static unsigned char scratch[65536];
    uint32_t sets[8] = {};
    uint64_t costs[4] = {};
    lvb_miss miss = {};
    auto choice = sized<lvb_choice>();
    choice.need_count = 1;
    choice.need_size = sizeof need;
    choice.item_count = 3;
    choice.item_size = sizeof(lvb_item);
    choice.slot_count = 2;
    choice.slot_size = sizeof(lvb_slot);
    choice.stage_size = sizeof(lvb_stage);
    choice.set_count = 4;
    choice.miss_size = sizeof miss;
    choice.needs = &need;
    choice.items = items;
    choice.slots = slots;
    choice.scratch = scratch;
    choice.scratch_bytes = sizeof scratch;
    choice.sets = sets;
    choice.costs = costs;
    choice.misses = &miss;
    auto room = sized<lvb_choice_scratch>();
    auto chosen = sized<lvb_chosen>();
    auto fault = sized<lvb_fault>();
    CALL(lvb_compute_choice_scratch, &choice, &room, &fault);
    CALL(lvb_compute_choice, &choice, &chosen, &fault);
    if (kept != 0.0 || chosen.outcome != LVB_OUTCOME_PROVEN) { // LVB_OK
        std::printf("the sound choice is refused: %g\n", kept);
        std::exit(1);
    }
    need.margin_db = 3.0; // misses are searched
    CALL(lvb_compute_choice, &choice, &chosen, &fault);
    CALL(lvb_compute_choice, nullptr, nullptr, &fault);
    for (int32_t outcome = -1; outcome < 8; ++outcome) CALL_TEXT(lvb_outcome_name, outcome);
}

// ---- locate

void call_locate() {
    lvb_stage stages[3] = {};
    stages[0].kind = LVB_KIND_SOURCE;
    stages[1].kind = LVB_KIND_PASSIVE;
    stages[2].kind = LVB_KIND_RECEIVER;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 3;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    lvb_reading readings[2] = {};
    readings[1].stage = 2;
    readings[1].level_dbm = -6.0;
    auto locate = sized<lvb_locate>();
    locate.link = &link;
    locate.readings = readings;
    locate.reading_count = 2;
    locate.reading_size = sizeof(lvb_reading);
    locate.uncertainty_db = 0.3;
    auto result = sized<lvb_locate_result>();
    lvb_suspect suspects[3];
    auto fault = sized<lvb_fault>();
    CALL(lvb_locate_fault, &locate, &result, suspects, sizeof(lvb_suspect), &fault);
    if (kept != 0.0 || result.stage != 1) { // LVB_OK
        std::printf("the sound search is refused: %g\n", kept);
        std::exit(1);
    }
    readings[1].stage = 3;
    CALL(lvb_locate_fault, &locate, &result, suspects, sizeof(lvb_suspect), &fault);
    CALL(lvb_locate_fault, nullptr, nullptr, nullptr, 0, &fault);
}

// ---- how sure

void call_how_sure() {
    lvb_stage stages[2] = {};
    stages[0].kind = LVB_KIND_SOURCE;
    stages[1].kind = LVB_KIND_RECEIVER;
    stages[0].tolerance_db = stages[1].tolerance_db = 1.0;
    lvb_spread spreads[2] = {};
    spreads[1].law = LVB_LAW_NORMAL;
    auto link = sized<lvb_link>();
    link.stages = stages;
    link.stage_count = 2;
    link.stage_size = sizeof(lvb_stage);
    link.frequency_mhz = 600.0;
    double levels[300];
    auto trials = sized<lvb_trials>();
    trials.link = &link;
    trials.spreads = spreads;
    trials.spread_count = 2;
    trials.spread_size = sizeof(lvb_spread);
    trials.trial_count = 300;
    trials.far_dbm = levels;
    auto tally = sized<lvb_tally>();
    auto sureness = sized<lvb_sureness>();
    lvb_quantile quantile = {0.5, 0.0, 0.0};
    auto fault = sized<lvb_fault>();
    CALL(lvb_compute_trials, &trials, &tally, &fault);
    if (kept != 0.0 || tally.trials != 300) { // LVB_OK
        std::printf("sound trials are refused: %g\n", kept);
        std::exit(1);
    }
    CALL(lvb_compute_sureness, &tally, 1, sizeof tally, &sureness, &fault);
    CALL(lvb_compute_quantiles, levels, 300, &quantile, 1, sizeof quantile, &fault);
    CALL(lvb_compute_trials, nullptr, nullptr, &fault);
    CALL(lvb_compute_sureness, nullptr, 0, 0, nullptr, &fault);
    CALL(lvb_compute_quantiles, nullptr, 0, nullptr, 0, 0, &fault);
}

// ---- solve, rank, compare

void call_decisions() {
    const Walked walked;
    auto fault = sized<lvb_fault>();
    auto solve = sized<lvb_solve>();
    auto solution = sized<lvb_solution>();
    solve.structure = LVB_STRUCT_LINK;
    solve.field = LVB_FIELD_FAR_DISTANCE_M;
    solve.goal = LVB_GOAL_MARGIN;
    solve.link = &walked.link;
    solve.wanted = 20.0;
    CALL(lvb_compute_solution, &solve, &solution, &fault);
    if (kept != 0.0 || solution.outcome != LVB_SOLUTION_FOUND) {
        std::printf("the sound link is not solved: %g\n", kept);
        std::exit(1);
    }
    solve.field = LVB_FIELD_LENGTH_M;
    CALL(lvb_compute_solution, &solve, &solution, &fault);
    CALL(lvb_compute_solution, nullptr, nullptr, &fault);
    auto ranking = sized<lvb_ranking>();
    lvb_contribution lines[6];
    CALL(lvb_compute_ranking, &walked.link, &ranking, lines, sizeof(lvb_contribution), &fault);
    CALL(lvb_compute_ranking, nullptr, nullptr, nullptr, 0, &fault);
    CALL(lvb_comparison_scratch_bytes, 6, 6);
    uint8_t scratch[36];
    lvb_pair pairs[12];
    auto compare = sized<lvb_compare>();
    auto comparison = sized<lvb_comparison>();
    compare.first = compare.second = &walked.link;
    compare.scratch_bytes = sizeof scratch;
    compare.scratch = scratch;
    compare.pairs = pairs;
    compare.pair_size = sizeof(lvb_pair);
    CALL(lvb_compute_comparison, &compare, &comparison, &fault);
    CALL(lvb_compute_comparison, nullptr, nullptr, &fault);
}

} // namespace

int main(int count, char **arguments) {
    if (count < 2) return 2;
    // the trap works: what allocates is caught
    forbidden = true;
    void *volatile memory = malloc(16);
    forbidden = false;
    if (memory != nullptr || asked != 1) return std::printf("the trap does not catch malloc\n"), 1;
    asked = 0;

    call_plain_functions();
    call_the_rest();
    call_columns_and_grids();
    // antennas and bodies
    call_antennas();
    // other paths
    call_paths();
    // fading
    // noise and linearity
    call_noise();
    // two systems
    call_two_systems();
    // limits
    call_limits();
    // sweeps, maps and walks
    call_sweep();
    call_maps();
    // choose
    call_choose();
    // locate
    call_locate();
    // how sure
    call_how_sure();
    // solve, rank, compare
    call_decisions();

    int missed = 0;
    int listed = 0;
    std::FILE *index = std::fopen(arguments[1], "r");
    if (index == nullptr) return std::printf("cannot read %s\n", arguments[1]), 1;
    for (char line[512]; std::fgets(line, sizeof line, index) != nullptr; ++listed) {
        line[std::strcspn(line, " |\n")] = '\0';
        if (was_called(line)) continue;
        std::printf("not called: %s\n", line);
        ++missed;
    }
    std::fclose(index);
    std::printf("%d functions of %d called, memory asked for %d times\n", call_count, listed, asked);
    return asked != 0 || missed != 0 || listed != call_count;
}
