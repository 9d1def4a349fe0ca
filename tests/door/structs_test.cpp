// Null pointers, sizes and tails of every struct, zeroed structs, and guard pages behind everything that is lent.
#include "door/refusal.hpp"

#include <sys/mman.h>
#include <unistd.h>

#include <functional>
#include <limits>

namespace {

using namespace proof;

// ---- Every struct that a call takes, with a call that succeeds when the struct is sound.

struct Entry {
    const char *name;
    std::int32_t structure, argument;
    std::uint32_t size;
    bool result; // written by the call
    std::function<lvb_status(void *object, lvb_fault *fault)> call;
    std::function<void(void *object)> fill; // makes it sound
};

const double rows_mhz[] = {100.0, 1000.0};
const double rows_db[] = {5.0, 17.0};
const double rows_gain[] = {-2.0, -3.0};

lvb_cable_run run_by_type() {
    auto run = sized<lvb_cable_run>();
    run.cable_type = LVB_CABLE_RG_213_U;
    run.frequency_mhz = 600.0;
    run.length_m = 10.0;
    return run;
}

lvb_antenna elsewhere() {
    auto antenna = sized<lvb_antenna>();
    antenna.y_m = 12.0;
    return antenna;
}

lvb_columns sound_columns() {
    static double result[2];
    auto columns = sized<lvb_columns>();
    columns.formula = LVB_FORMULA_FREE_SPACE_LOSS_DB;
    columns.count = 2;
    columns.argument_1 = rows_mhz;
    columns.argument_2 = rows_db;
    columns.result = result;
    return columns;
}

lvb_grid sound_grid() {
    static const std::vector<lvb_stage> stages = ordinary();
    static Chain chain({});
    static double scratch[4], levels[4];
    chain.link.stages = stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
    auto grid = sized<lvb_grid>();
    grid.frequency_count = grid.distance_count = 2;
    grid.link = &chain.link;
    grid.frequency_mhz = rows_mhz;
    grid.distance_m = rows_db;
    grid.scratch = scratch;
    grid.level_dbm = levels;
    return grid;
}

lvb_coaxial_line sound_line() {
    auto line = sized<lvb_coaxial_line>();
    line.frequency_mhz = 600.0;
    line.inner_diameter_mm = 2.0;
    line.outer_diameter_mm = 7.0;
    return line;
}

lvb_neighbours sound_neighbours() {
    auto neighbours = sized<lvb_neighbours>();
    neighbours.separation_m = 2.0;
    neighbours.transmit_mhz = 600.0;
    return neighbours;
}

lvb_limit sound_limit() {
    auto limit = sized<lvb_limit>();
    limit.quantity = LVB_QUANTITY_EIRP;
    return limit;
}

// A link that the calls which decide take, and their structs.
const lvb_link &decided_link() {
    static Chain chain(ordinary());
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    return chain.link;
}
lvb_sweep sound_sweep() {
    auto sweep = sized<lvb_sweep>();
    sweep.link = &decided_link();
    sweep.frequency_mhz = rows_mhz;
    sweep.frequency_count = 2;
    return sweep;
}
lvb_solve sound_solve() {
    auto solve = sized<lvb_solve>();
    solve.structure = LVB_STRUCT_LINK;
    solve.field = LVB_FIELD_FAR_DISTANCE_M;
    solve.goal = LVB_GOAL_MARGIN;
    solve.link = &decided_link();
    return solve;
}
lvb_compare sound_compare() {
    static std::uint8_t scratch[64];
    auto compare = sized<lvb_compare>();
    compare.first = compare.second = &decided_link();
    compare.scratch_bytes = sizeof scratch;
    compare.scratch = scratch;
    return compare;
}

// A chain with everything that a call for its noise needs.
struct NoiseCall {
    std::vector<lvb_stage> stages = ordinary();
    Chain chain{std::vector<lvb_stage>(stages)};
    lvb_noise_conditions conditions = sized<lvb_noise_conditions>();
    lvb_noise noise = sized<lvb_noise>();
    NoiseCall() {
        chain.link.stages = stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
        conditions.bandwidth_mhz = 0.2;
    }
};

lvb_locate sound_locate() {
    static const std::vector<lvb_stage> stages = ordinary();
    static Chain chain({});
    chain.link.stages = stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
    auto locate = sized<lvb_locate>();
    locate.link = &chain.link;
    locate.uncertainty_db = 0.3;
    return locate;
}

lvb_trials sound_trials() {
    auto trials = sized<lvb_trials>();
    trials.link = sound_locate().link;
    trials.trial_count = 3;
    return trials;
}

std::vector<Entry> entries() {
    return {
        {"link", LVB_STRUCT_LINK, LVB_FIELD_LINK, sizeof(lvb_link), false,
         [](void *object, lvb_fault *fault) {
             auto budget = sized<lvb_budget>();
             return lvb_compute_budget(static_cast<lvb_link *>(object), &budget, nullptr, 0, fault);
         },
         [](void *object) {
             static const std::vector<lvb_stage> stages = ordinary();
             Chain chain({});
             chain.link.stages = stages.data();
             chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
             std::memcpy(object, &chain.link, sizeof chain.link);
         }},
        {"budget", LVB_STRUCT_BUDGET, LVB_FIELD_BUDGET, sizeof(lvb_budget), true,
         [](void *object, lvb_fault *fault) {
             const std::vector<lvb_stage> stages = ordinary();
             Chain chain(stages);
             chain.link.stages = stages.data();
             chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
             return lvb_compute_budget(&chain.link, static_cast<lvb_budget *>(object), nullptr, 0, fault);
         },
         [](void *) {}},
        {"run", LVB_STRUCT_CABLE_RUN, LVB_FIELD_RUN, sizeof(lvb_cable_run), false,
         [](void *object, lvb_fault *fault) {
             auto loss = sized<lvb_cable_loss>();
             return lvb_compute_cable_loss(static_cast<lvb_cable_run *>(object), nullptr, &loss, fault);
         },
         [](void *object) {
             const lvb_cable_run run = run_by_type();
             std::memcpy(object, &run, sizeof run);
         }},
        {"loss", LVB_STRUCT_CABLE_LOSS, LVB_FIELD_LOSS, sizeof(lvb_cable_loss), true,
         [](void *object, lvb_fault *fault) {
             const lvb_cable_run run = run_by_type();
             return lvb_compute_cable_loss(&run, nullptr, static_cast<lvb_cable_loss *>(object), fault);
         },
         [](void *) {}},
        {"info", LVB_STRUCT_CABLE_INFO, LVB_FIELD_INFO, sizeof(lvb_cable_info), true,
         [](void *object, lvb_fault *fault) {
             return lvb_describe_cable(LVB_CABLE_RG_213_U, static_cast<lvb_cable_info *>(object), fault);
         },
         [](void *) {}},
        {"row", LVB_STRUCT_CABLE_ROW, LVB_FIELD_ROW, sizeof(lvb_cable_row), true,
         [](void *object, lvb_fault *fault) {
             return lvb_describe_cable_row(LVB_CABLE_RG_213_U, 0, static_cast<lvb_cable_row *>(object), fault);
         },
         [](void *) {}},
        {"range", LVB_STRUCT_RANGE, LVB_FIELD_RANGE, sizeof(lvb_range), true,
         [](void *object, lvb_fault *fault) {
             return lvb_describe_field(LVB_STRUCT_LINK, 0, LVB_FIELD_FREQUENCY_MHZ, static_cast<lvb_range *>(object),
                                       fault);
         },
         [](void *) {}},
        {"columns", LVB_STRUCT_COLUMNS, LVB_FIELD_COLUMNS, sizeof(lvb_columns), false,
         [](void *object, lvb_fault *fault) {
             return lvb_compute_columns(static_cast<lvb_columns *>(object), nullptr, fault);
         },
         [](void *object) {
             const lvb_columns columns = sound_columns();
             std::memcpy(object, &columns, sizeof columns);
         }},
        {"bad of columns", LVB_STRUCT_BAD, LVB_FIELD_BAD, sizeof(lvb_bad), true,
         [](void *object, lvb_fault *fault) {
             const lvb_columns columns = sound_columns();
             return lvb_compute_columns(&columns, static_cast<lvb_bad *>(object), fault);
         },
         [](void *) {}},
        {"grid", LVB_STRUCT_GRID, LVB_FIELD_GRID, sizeof(lvb_grid), false,
         [](void *object, lvb_fault *fault) {
             return lvb_compute_grid(static_cast<lvb_grid *>(object), nullptr, fault);
         },
         [](void *object) {
             const lvb_grid grid = sound_grid();
             std::memcpy(object, &grid, sizeof grid);
         }},
        {"bad of a grid", LVB_STRUCT_BAD, LVB_FIELD_BAD, sizeof(lvb_bad), true,
         [](void *object, lvb_fault *fault) {
             const lvb_grid grid = sound_grid();
             return lvb_compute_grid(&grid, static_cast<lvb_bad *>(object), fault);
         },
         [](void *) {}},
        {"link of a grid", LVB_STRUCT_LINK, LVB_FIELD_LINK, sizeof(lvb_link), false,
         [](void *object, lvb_fault *fault) {
             lvb_grid grid = sound_grid();
             grid.link = static_cast<lvb_link *>(object);
             return lvb_compute_grid(&grid, nullptr, fault);
         },
         [](void *object) { std::memcpy(object, sound_grid().link, sizeof(lvb_link)); }},
        {"line", LVB_STRUCT_COAXIAL_LINE, LVB_FIELD_LINE, sizeof(lvb_coaxial_line), false,
         [](void *object, lvb_fault *fault) {
             auto properties = sized<lvb_coaxial_properties>();
             return lvb_compute_coaxial_line(static_cast<lvb_coaxial_line *>(object), &properties, fault);
         },
         [](void *object) {
             const lvb_coaxial_line line = sound_line();
             std::memcpy(object, &line, sizeof line);
         }},
        {"properties", LVB_STRUCT_COAXIAL_PROPERTIES, LVB_FIELD_PROPERTIES, sizeof(lvb_coaxial_properties), true,
         [](void *object, lvb_fault *fault) {
             const lvb_coaxial_line line = sound_line();
             return lvb_compute_coaxial_line(&line, static_cast<lvb_coaxial_properties *>(object), fault);
         },
         [](void *) {}},
        {"neighbours", LVB_STRUCT_NEIGHBOURS, LVB_FIELD_NEIGHBOURS, sizeof(lvb_neighbours), false,
         [](void *object, lvb_fault *fault) {
             auto coexistence = sized<lvb_coexistence>();
             return lvb_compute_coexistence(static_cast<lvb_neighbours *>(object), &coexistence, fault);
         },
         [](void *object) {
             const lvb_neighbours neighbours = sound_neighbours();
             std::memcpy(object, &neighbours, sizeof neighbours);
         }},
        {"coexistence", LVB_STRUCT_COEXISTENCE, LVB_FIELD_COEXISTENCE, sizeof(lvb_coexistence), true,
         [](void *object, lvb_fault *fault) {
             const lvb_neighbours neighbours = sound_neighbours();
             return lvb_compute_coexistence(&neighbours, static_cast<lvb_coexistence *>(object), fault);
         },
         [](void *) {}},
        {"limit", LVB_STRUCT_LIMIT, LVB_FIELD_LIMIT, sizeof(lvb_limit), false,
         [](void *object, lvb_fault *fault) {
             auto result = sized<lvb_limit_result>();
             return lvb_check_limit(sound_grid().link, static_cast<lvb_limit *>(object), &result, fault);
         },
         [](void *object) {
             const lvb_limit limit = sound_limit();
             std::memcpy(object, &limit, sizeof limit);
         }},
        {"result of a limit", LVB_STRUCT_LIMIT_RESULT, LVB_FIELD_RESULT, sizeof(lvb_limit_result), true,
         [](void *object, lvb_fault *fault) {
             const lvb_limit limit = sound_limit();
             return lvb_check_limit(sound_grid().link, &limit, static_cast<lvb_limit_result *>(object), fault);
         },
         [](void *) {}},
        {"link of a limit", LVB_STRUCT_LINK, LVB_FIELD_LINK, sizeof(lvb_link), false,
         [](void *object, lvb_fault *fault) {
             const lvb_limit limit = sound_limit();
             auto result = sized<lvb_limit_result>();
             return lvb_check_limit(static_cast<lvb_link *>(object), &limit, &result, fault);
         },
         [](void *object) { std::memcpy(object, sound_grid().link, sizeof(lvb_link)); }},
        {"rule", LVB_STRUCT_LIMIT_RULE, LVB_FIELD_RULE, sizeof(lvb_limit_rule), true,
         [](void *object, lvb_fault *fault) {
             return lvb_describe_limit_rule(0, static_cast<lvb_limit_rule *>(object), fault);
         },
         [](void *) {}},
        {"path", LVB_STRUCT_PATH, LVB_FIELD_PATH, sizeof(lvb_path), false,
         [](void *object, lvb_fault *fault) {
             auto loss = sized<lvb_path_loss>();
             return lvb_compute_path_loss(static_cast<lvb_path *>(object), 600.0, 10.0, &loss, fault);
         },
         [](void *) {}},
        {"loss of a path", LVB_STRUCT_PATH_LOSS, LVB_FIELD_LOSS, sizeof(lvb_path_loss), true,
         [](void *object, lvb_fault *fault) {
             const auto path = sized<lvb_path>();
             return lvb_compute_path_loss(&path, 600.0, 10.0, static_cast<lvb_path_loss *>(object), fault);
         },
         [](void *) {}},
        {"link of noise", LVB_STRUCT_LINK, LVB_FIELD_LINK, sizeof(lvb_link), false,
         [](void *object, lvb_fault *fault) {
             NoiseCall call;
             return lvb_compute_noise(static_cast<lvb_link *>(object), &call.conditions, &call.noise, nullptr, 0,
                                      fault);
         },
         [](void *object) {
             static const NoiseCall call;
             std::memcpy(object, &call.chain.link, sizeof call.chain.link);
         }},
        {"noise conditions", LVB_STRUCT_NOISE_CONDITIONS, LVB_FIELD_CONDITIONS, sizeof(lvb_noise_conditions), false,
         [](void *object, lvb_fault *fault) {
             NoiseCall call;
             return lvb_compute_noise(&call.chain.link, static_cast<lvb_noise_conditions *>(object), &call.noise,
                                      nullptr, 0, fault);
         },
         [](void *object) {
             const NoiseCall call;
             std::memcpy(object, &call.conditions, sizeof call.conditions);
         }},
        {"noise", LVB_STRUCT_NOISE, LVB_FIELD_NOISE, sizeof(lvb_noise), true,
         [](void *object, lvb_fault *fault) {
             NoiseCall call;
             return lvb_compute_noise(&call.chain.link, &call.conditions, static_cast<lvb_noise *>(object), nullptr, 0,
                                      fault);
         },
         [](void *) {}},
        {"locate", LVB_STRUCT_LOCATE, LVB_FIELD_LOCATE, sizeof(lvb_locate), false,
         [](void *object, lvb_fault *fault) {
             auto result = sized<lvb_locate_result>();
             return lvb_locate_fault(static_cast<lvb_locate *>(object), &result, nullptr, 0, fault);
         },
         [](void *object) {
             const lvb_locate locate = sound_locate();
             std::memcpy(object, &locate, sizeof locate);
         }},
        {"result of locate", LVB_STRUCT_LOCATE_RESULT, LVB_FIELD_RESULT, sizeof(lvb_locate_result), true,
         [](void *object, lvb_fault *fault) {
             const lvb_locate locate = sound_locate();
             return lvb_locate_fault(&locate, static_cast<lvb_locate_result *>(object), nullptr, 0, fault);
         },
         [](void *) {}},
        {"trials", LVB_STRUCT_TRIALS, LVB_FIELD_TRIALS, sizeof(lvb_trials), false,
         [](void *object, lvb_fault *fault) {
             return lvb_compute_trials(static_cast<lvb_trials *>(object), nullptr, fault);
         },
         [](void *object) {
             const lvb_trials trials = sound_trials();
             std::memcpy(object, &trials, sizeof trials);
         }},
        {"tally", LVB_STRUCT_TALLY, LVB_FIELD_TALLY, sizeof(lvb_tally), true,
         [](void *object, lvb_fault *fault) {
             const lvb_trials trials = sound_trials();
             return lvb_compute_trials(&trials, static_cast<lvb_tally *>(object), fault);
         },
         [](void *) {}},
        {"sureness", LVB_STRUCT_SURENESS, LVB_FIELD_SURENESS, sizeof(lvb_sureness), true,
         [](void *object, lvb_fault *fault) {
             const lvb_trials trials = sound_trials();
             auto tally = sized<lvb_tally>();
             lvb_compute_trials(&trials, &tally, nullptr);
             return lvb_compute_sureness(&tally, 1, sizeof tally, static_cast<lvb_sureness *>(object), fault);
         },
         [](void *) {}},
        {"cable_table", LVB_STRUCT_CABLE_TABLE, LVB_FIELD_CABLE_TABLE, sizeof(lvb_cable_table), false,
         [](void *object, lvb_fault *fault) {
             lvb_cable_run run = run_by_type();
             run.cable_type = LVB_CABLE_NONE;
             auto loss = sized<lvb_cable_loss>();
             return lvb_compute_cable_loss(&run, static_cast<lvb_cable_table *>(object), &loss, fault);
         },
         [](void *object) {
             auto table = sized<lvb_cable_table>();
             table.row_count = 2;
             table.frequency_mhz = rows_mhz;
             table.attenuation_db_per_100m = rows_db;
             std::memcpy(object, &table, sizeof table);
         }},
        {"gain_table", LVB_STRUCT_GAIN_TABLE, LVB_FIELD_GAIN_TABLE, sizeof(lvb_gain_table), false,
         [](void *object, lvb_fault *fault) {
             Chain chain({source(0.0), stage(LVB_KIND_PASSIVE)});
             chain.stages[1].gain_table = static_cast<lvb_gain_table *>(object);
             chain.compute();
             if (fault != nullptr) std::memcpy(fault, &chain.fault, sizeof chain.fault);
             return chain.fault.status;
         },
         [](void *object) {
             auto table = sized<lvb_gain_table>();
             table.row_count = 2;
             table.frequency_mhz = rows_mhz;
             table.gain_db = rows_gain;
             std::memcpy(object, &table, sizeof table);
         }},
        {"pattern", LVB_STRUCT_PATTERN, LVB_FIELD_PATTERN, sizeof(lvb_pattern), false,
         [](void *object, lvb_fault *fault) {
             auto gain = sized<lvb_pattern_gain>();
             return lvb_compute_pattern_gain(static_cast<lvb_pattern *>(object), 10.0, 5.0, &gain, fault);
         },
         [](void *object) {
             auto pattern = sized<lvb_pattern>();
             pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
             std::memcpy(object, &pattern, sizeof pattern);
         }},
        {"gain of a pattern", LVB_STRUCT_PATTERN_GAIN, LVB_FIELD_RESULT, sizeof(lvb_pattern_gain), true,
         [](void *object, lvb_fault *fault) {
             const auto pattern = sized<lvb_pattern>();
             return lvb_compute_pattern_gain(&pattern, 10.0, 5.0, static_cast<lvb_pattern_gain *>(object), fault);
         },
         [](void *) {}},
        {"azimuth_cut", LVB_STRUCT_AZIMUTH_CUT, LVB_FIELD_AZIMUTH_CUT, sizeof(lvb_azimuth_cut), false,
         [](void *object, lvb_fault *fault) {
             auto pattern = sized<lvb_pattern>();
             pattern.kind = LVB_PATTERN_CUTS;
             pattern.azimuth_cut = static_cast<lvb_azimuth_cut *>(object);
             auto gain = sized<lvb_pattern_gain>();
             return lvb_compute_pattern_gain(&pattern, 10.0, 5.0, &gain, fault);
         },
         [](void *object) {
             auto cut = sized<lvb_azimuth_cut>();
             cut.row_count = 2;
             cut.azimuth_deg = rows_db;
             cut.gain_db = rows_gain;
             std::memcpy(object, &cut, sizeof cut);
         }},
        {"elevation_cut", LVB_STRUCT_ELEVATION_CUT, LVB_FIELD_ELEVATION_CUT, sizeof(lvb_elevation_cut), false,
         [](void *object, lvb_fault *fault) {
             auto pattern = sized<lvb_pattern>();
             pattern.kind = LVB_PATTERN_CUTS;
             pattern.elevation_cut = static_cast<lvb_elevation_cut *>(object);
             auto gain = sized<lvb_pattern_gain>();
             return lvb_compute_pattern_gain(&pattern, 10.0, 5.0, &gain, fault);
         },
         [](void *object) {
             static const double elevation[] = {-90.0, 90.0};
             auto cut = sized<lvb_elevation_cut>();
             cut.row_count = 2;
             cut.elevation_deg = elevation;
             cut.gain_db = rows_gain;
             std::memcpy(object, &cut, sizeof cut);
         }},
        {"transmit", LVB_STRUCT_ANTENNA, LVB_FIELD_TRANSMIT, sizeof(lvb_antenna), false,
         [](void *object, lvb_fault *fault) {
             const lvb_antenna other = elsewhere();
             auto pointing = sized<lvb_pointing>();
             return lvb_compute_pointing(static_cast<lvb_antenna *>(object), &other, 600.0, &pointing, fault);
         },
         [](void *) {}},
        {"receive", LVB_STRUCT_ANTENNA, LVB_FIELD_RECEIVE, sizeof(lvb_antenna), false,
         [](void *object, lvb_fault *fault) {
             const lvb_antenna other = elsewhere();
             auto pointing = sized<lvb_pointing>();
             return lvb_compute_pointing(&other, static_cast<lvb_antenna *>(object), 600.0, &pointing, fault);
         },
         [](void *) {}},
        {"pointing", LVB_STRUCT_POINTING, LVB_FIELD_POINTING, sizeof(lvb_pointing), true,
         [](void *object, lvb_fault *fault) {
             const auto here = sized<lvb_antenna>();
             const lvb_antenna other = elsewhere();
             return lvb_compute_pointing(&here, &other, 600.0, static_cast<lvb_pointing *>(object), fault);
         },
         [](void *) {}},
        {"body_table", LVB_STRUCT_BODY_TABLE, LVB_FIELD_TABLE, sizeof(lvb_body_table), false,
         [](void *object, lvb_fault *fault) {
             double loss = 0.0;
             return lvb_compute_body_loss(static_cast<lvb_body_table *>(object), 10.0, &loss, fault);
         },
         [](void *object) {
             auto table = sized<lvb_body_table>();
             table.row_count = 2;
             table.facing_deg = rows_db;
             table.loss_db = rows_db;
             std::memcpy(object, &table, sizeof table);
         }},
        {"sweep", LVB_STRUCT_SWEEP, LVB_FIELD_SWEEP, sizeof(lvb_sweep), false,
         [](void *object, lvb_fault *fault) {
             auto result = sized<lvb_sweep_result>();
             return lvb_compute_sweep(static_cast<lvb_sweep *>(object), &result, fault);
         },
         [](void *object) {
             const lvb_sweep made = sound_sweep();
             std::memcpy(object, &made, sizeof made);
         }},
        {"result of a sweep", LVB_STRUCT_SWEEP_RESULT, LVB_FIELD_RESULT, sizeof(lvb_sweep_result), true,
         [](void *object, lvb_fault *fault) {
             const lvb_sweep sweep = sound_sweep();
             return lvb_compute_sweep(&sweep, static_cast<lvb_sweep_result *>(object), fault);
         },
         [](void *) {}},
        {"solve", LVB_STRUCT_SOLVE, LVB_FIELD_SOLVE, sizeof(lvb_solve), false,
         [](void *object, lvb_fault *fault) {
             auto solution = sized<lvb_solution>();
             return lvb_compute_solution(static_cast<lvb_solve *>(object), &solution, fault);
         },
         [](void *object) {
             const lvb_solve made = sound_solve();
             std::memcpy(object, &made, sizeof made);
         }},
        {"solution", LVB_STRUCT_SOLUTION, LVB_FIELD_SOLUTION, sizeof(lvb_solution), true,
         [](void *object, lvb_fault *fault) {
             const lvb_solve solve = sound_solve();
             return lvb_compute_solution(&solve, static_cast<lvb_solution *>(object), fault);
         },
         [](void *) {}},
        {"ranking", LVB_STRUCT_RANKING, LVB_FIELD_RANKING, sizeof(lvb_ranking), true,
         [](void *object, lvb_fault *fault) {
             return lvb_compute_ranking(&decided_link(), static_cast<lvb_ranking *>(object), nullptr, 0, fault);
         },
         [](void *) {}},
        {"compare", LVB_STRUCT_COMPARE, LVB_FIELD_COMPARE, sizeof(lvb_compare), false,
         [](void *object, lvb_fault *fault) {
             auto comparison = sized<lvb_comparison>();
             return lvb_compute_comparison(static_cast<lvb_compare *>(object), &comparison, fault);
         },
         [](void *object) {
             const lvb_compare made = sound_compare();
             std::memcpy(object, &made, sizeof made);
         }},
        {"comparison", LVB_STRUCT_COMPARISON, LVB_FIELD_COMPARISON, sizeof(lvb_comparison), true,
         [](void *object, lvb_fault *fault) {
             const lvb_compare compare = sound_compare();
             return lvb_compute_comparison(&compare, static_cast<lvb_comparison *>(object), fault);
         },
         [](void *) {}},
        {"info of an allowance", LVB_STRUCT_ALLOWANCE_INFO, LVB_FIELD_INFO, sizeof(lvb_allowance_info), true,
         [](void *object, lvb_fault *fault) {
             return lvb_describe_allowance(0, static_cast<lvb_allowance_info *>(object), fault);
         },
         [](void *) {}},
    };
}

// The stage that a fault in an entry's struct names.
std::int32_t stage_of(const Entry &entry) {
    if (entry.structure == LVB_STRUCT_GAIN_TABLE) return 1;
    if (entry.argument == LVB_FIELD_TRANSMIT) return LVB_STAGE_TRANSMIT;
    if (entry.argument == LVB_FIELD_RECEIVE) return LVB_STAGE_RECEIVE;
    return -1;
}

struct alignas(16) Room {
    unsigned char bytes[5000];
    explicit Room(int pattern) { std::memset(bytes, pattern, sizeof bytes); }
    void set_size(std::uint32_t size) { std::memcpy(bytes, &size, sizeof size); }
};

TEST(Sizes, TooSmallAndAbsurdAreRefusedAndNothingIsWritten) {
    for (const Entry &entry : entries())
        for (const std::uint32_t size :
             {0u, 1u, 4u, entry.size - 8u, entry.size - 1u, 4097u, 0x7FFFFFFFu, 0xFFFFFFFFu}) {
            SCOPED_TRACE(std::string(entry.name) + " of " + std::to_string(size));
            Room room(0);
            entry.fill(room.bytes);
            room.set_size(size);
            const Room before = room;
            auto fault = sized<lvb_fault>();
            EXPECT_EQ(entry.call(room.bytes, &fault), LVB_E_STRUCT_SIZE);
            EXPECT_EQ(std::memcmp(&before, &room, sizeof room), 0);
            const std::int32_t at = stage_of(entry);
            expect_fault(fault, {LVB_E_STRUCT_SIZE, entry.structure, LVB_FIELD_SIZE, at, -1, static_cast<double>(size),
                                 static_cast<double>(entry.size), 4096.0});
            EXPECT_EQ(entry.call(room.bytes, nullptr), LVB_E_STRUCT_SIZE);
        }
    Room room(0);
    auto fault = sized<lvb_fault>();
    ASSERT_EQ(entries()[0].call(room.bytes, &fault), LVB_E_STRUCT_SIZE);
    EXPECT_EQ(text_of(fault), "lvb_link.size is 0; allowed " + std::to_string(sizeof(lvb_link)) + " to 4096.");
}

TEST(Sizes, ALongerStructMustHaveAZeroTailAndGetsOne) {
    for (const Entry &entry : entries())
        for (const std::uint32_t size : {entry.size + 1u, entry.size + 8u, 4096u}) {
            SCOPED_TRACE(std::string(entry.name) + " of " + std::to_string(size));
            Room room(entry.result ? 0xA5 : 0);
            entry.fill(room.bytes);
            room.set_size(size);
            for (std::size_t i = size; i < sizeof room.bytes; ++i) room.bytes[i] = 0xEE; // beyond the struct
            auto fault = sized<lvb_fault>();
            EXPECT_EQ(entry.call(room.bytes, &fault), LVB_OK);
            for (std::size_t i = entry.size; i < size; ++i) ASSERT_EQ(room.bytes[i], 0) << "tail byte " << i;
            for (std::size_t i = size; i < sizeof room.bytes; ++i)
                ASSERT_EQ(room.bytes[i], 0xEE) << "beyond, byte " << i;
            std::uint32_t told = 0;
            std::memcpy(&told, room.bytes, sizeof told);
            EXPECT_EQ(told, size); // the caller's own size comes back
            if (entry.result) continue;
            for (const std::size_t at : {std::size_t{entry.size}, std::size_t{size - 1u}}) {
                room.bytes[at] = 1;
                EXPECT_EQ(entry.call(room.bytes, &fault), LVB_E_UNKNOWN_TAIL);
                const std::int32_t stage = stage_of(entry);
                expect_fault(fault, {LVB_E_UNKNOWN_TAIL, entry.structure, LVB_FIELD_SIZE, stage, -1,
                                     static_cast<double>(size), 0.0, static_cast<double>(entry.size)});
                room.bytes[at] = 0;
            }
        }
}

TEST(Sizes, TheSentenceOfAnUnknownTail) {
    const Entry entry = entries()[2];
    Room room(0);
    entry.fill(room.bytes);
    room.set_size(entry.size + 8);
    room.bytes[entry.size] = 1;
    auto fault = sized<lvb_fault>();
    ASSERT_EQ(entry.call(room.bytes, &fault), LVB_E_UNKNOWN_TAIL);
    EXPECT_EQ(text_of(fault),
              "lvb_cable_run.size: the struct is longer than the 48 bytes that this library knows, and the "
              "rest is not zero.");
}

TEST(Zeroed, IsValidOrNamesTheMissingField) {
    auto fault = sized<lvb_fault>();
    struct Missing {
        lvb_status status;
        std::int32_t field;
    };
    const auto expected = [](const Entry &entry) -> Missing {
        switch (entry.structure) {
        case LVB_STRUCT_LINK: // a grid brings frequencies of its own
            if (std::string(entry.name) == "link of a grid") return {LVB_E_NO_SOURCE, LVB_FIELD_STAGE_COUNT};
            return {LVB_E_MISSING, LVB_FIELD_FREQUENCY_MHZ};
        case LVB_STRUCT_NOISE_CONDITIONS:
            return {LVB_E_MISSING, LVB_FIELD_BANDWIDTH_MHZ};
        case LVB_STRUCT_COLUMNS:
            return {LVB_E_MISSING, LVB_FIELD_FORMULA};
        case LVB_STRUCT_GRID:
        case LVB_STRUCT_SWEEP:
            return {LVB_E_NULL, LVB_FIELD_LINK};
        case LVB_STRUCT_SOLVE:
            return {LVB_E_MISSING, LVB_FIELD_STRUCTURE};
        case LVB_STRUCT_COMPARE:
            return {LVB_E_NULL, LVB_FIELD_FIRST};
        case LVB_STRUCT_TRIALS:
            return {LVB_E_MISSING, LVB_FIELD_TRIAL_COUNT};
        case LVB_STRUCT_LOCATE:
            return {LVB_E_MISSING, LVB_FIELD_UNCERTAINTY_DB};
        case LVB_STRUCT_CABLE_RUN:
        case LVB_STRUCT_COAXIAL_LINE:
            return {LVB_E_MISSING, LVB_FIELD_FREQUENCY_MHZ};
        case LVB_STRUCT_NEIGHBOURS:
            return {LVB_E_MISSING, LVB_FIELD_SEPARATION_M};
        case LVB_STRUCT_LIMIT:
            return {LVB_E_MISSING, LVB_FIELD_QUANTITY};
        case LVB_STRUCT_CABLE_TABLE:
        case LVB_STRUCT_GAIN_TABLE:
        case LVB_STRUCT_AZIMUTH_CUT:
        case LVB_STRUCT_ELEVATION_CUT:
        case LVB_STRUCT_BODY_TABLE:
            return {LVB_E_TABLE_EMPTY, LVB_FIELD_ROW_COUNT};
        default:
            return {LVB_OK, LVB_FIELD_NONE};
        }
    };
    for (const Entry &entry : entries()) {
        Room room(0);
        room.set_size(entry.size);
        const Missing missing = expected(entry);
        EXPECT_STREQ(lvb_status_name(entry.call(room.bytes, &fault)), lvb_status_name(missing.status)) << entry.name;
        EXPECT_STREQ(lvb_field_name(fault.field), lvb_field_name(missing.field)) << entry.name;
    }
    Chain chain({lvb_stage{}}); // the elements of an array
    EXPECT_EQ(chain.compute(), LVB_E_MISSING);
    EXPECT_EQ(chain.fault.field, LVB_FIELD_KIND);
    EXPECT_EQ(text_of(sized<lvb_fault>()), "nothing was refused."); // and the fault itself
    lvb_level level{};
    Chain one({source(1.0)});
    one.link.stages = one.stages.data();
    one.link.stage_count = 1;
    EXPECT_EQ(lvb_compute_budget(&one.link, &one.budget, &level, sizeof level, nullptr), LVB_OK);
    EXPECT_EQ(level.far_level_dbm, 1.0);
}

TEST(Null, EachPointerThatMustBeGiven) {
    for (const Entry &entry : entries()) {
        if (entry.structure == LVB_STRUCT_CABLE_TABLE || entry.structure == LVB_STRUCT_GAIN_TABLE ||
            entry.structure == LVB_STRUCT_BAD || entry.structure == LVB_STRUCT_TALLY ||
            entry.structure == LVB_STRUCT_AZIMUTH_CUT || entry.structure == LVB_STRUCT_ELEVATION_CUT)
            continue; // may be null
        auto fault = sized<lvb_fault>();
        EXPECT_EQ(entry.call(nullptr, &fault), LVB_E_NULL) << entry.name;
        // an argument of the call, or a field of the grid
        const bool in_grid = std::string(entry.name) == "link of a grid";
        expect_fault(fault,
                     {LVB_E_NULL, in_grid ? LVB_STRUCT_GRID : LVB_STRUCT_NONE, entry.argument, -1, -1, none, none, none,
                      std::string(in_grid ? "lvb_grid." : "") + lvb_field_name(entry.argument) +
                          " is null, but must be given."});
        EXPECT_EQ(entry.call(nullptr, nullptr), LVB_E_NULL) << entry.name;
    }
    Chain chain({source(0.0)});
    chain.link.stage_count = 1;
    auto budget = sized<lvb_budget>();
    EXPECT_EQ(lvb_compute_budget(&chain.link, &budget, nullptr, 0, &chain.fault), LVB_E_NULL);
    expect_fault(chain.fault, {LVB_E_NULL, LVB_STRUCT_LINK, LVB_FIELD_STAGES, -1, -1, none, none, none,
                               "lvb_link.stages is null, but must be given."});
}

TEST(Fault, OfAWrongSizeRefusesTheCallAndIsNotWritten) {
    for (const Entry &entry : entries()) {
        if (entry.structure == LVB_STRUCT_GAIN_TABLE) continue; // its call lends a fault of its own
        for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_fault)) - 1u, 4097u, 0xFFFFFFFFu}) {
            Room object(entry.result ? 0xA5 : 0), fault(0x5A);
            entry.fill(object.bytes);
            object.set_size(entry.size);
            fault.set_size(size);
            const Room object_before = object, fault_before = fault;
            EXPECT_EQ(entry.call(object.bytes, reinterpret_cast<lvb_fault *>(fault.bytes)), LVB_E_STRUCT_SIZE);
            EXPECT_EQ(std::memcmp(&object, &object_before, sizeof object), 0) << entry.name;
            EXPECT_EQ(std::memcmp(&fault, &fault_before, sizeof fault), 0) << entry.name;
        }
    }
}

TEST(Fault, ALongerOneGetsAZeroTail) {
    Room fault(0x5A);
    fault.set_size(sizeof(lvb_fault) + 24);
    EXPECT_EQ(lvb_describe_cable(99, nullptr, reinterpret_cast<lvb_fault *>(fault.bytes)), LVB_E_NULL);
    for (std::size_t i = sizeof(lvb_fault); i < sizeof(lvb_fault) + 24; ++i) EXPECT_EQ(fault.bytes[i], 0);
    EXPECT_EQ(fault.bytes[sizeof(lvb_fault) + 24], 0x5A);
}

// ---- Elements of arrays.

TEST(Elements, OfAWrongSizeAreRefused) {
    for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_stage)) - 1u, 4097u, 0xFFFFFFFFu}) {
        Chain chain(ordinary());
        chain.link.stage_size = size;
        refused(chain, {LVB_E_ELEMENT_SIZE, LVB_STRUCT_LINK, LVB_FIELD_STAGE_SIZE, -1, -1, static_cast<double>(size),
                        sizeof(lvb_stage), 4096});
    }
    for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_level)) - 1u, 4097u, 0xFFFFFFFFu}) {
        Chain chain(ordinary());
        ASSERT_EQ(chain.compute(), LVB_OK);
        Untouched<lvb_budget> budget;
        std::memset(chain.levels.data(), 0x5A, chain.levels.size() * sizeof(lvb_level));
        const auto before = chain.levels;
        EXPECT_EQ(lvb_compute_budget(&chain.link, &budget.result, chain.levels.data(), size, &chain.fault),
                  LVB_E_ELEMENT_SIZE);
        EXPECT_TRUE(budget.holds());
        EXPECT_EQ(std::memcmp(before.data(), chain.levels.data(), before.size() * sizeof(lvb_level)), 0);
        expect_fault(chain.fault, {LVB_E_ELEMENT_SIZE, LVB_STRUCT_NONE, LVB_FIELD_LEVEL_SIZE, -1, -1,
                                   static_cast<double>(size), sizeof(lvb_level), 4096});
    }
}

TEST(Elements, LongerOnesAreSteppedOverAndTheirTailsChecked) {
    const std::vector<lvb_stage> stages = ordinary();
    constexpr std::uint32_t stage_size = sizeof(lvb_stage) + 16, level_size = sizeof(lvb_level) + 24;
    std::vector<unsigned char> long_stages(stages.size() * stage_size), long_levels(stages.size() * level_size, 0xA5);
    for (std::size_t i = 0; i < stages.size(); ++i)
        std::memcpy(&long_stages[i * stage_size], &stages[i], sizeof stages[i]);
    Chain plain(stages);
    ASSERT_EQ(plain.compute(), LVB_OK);
    Chain chain(stages);
    chain.link.stages = reinterpret_cast<lvb_stage *>(long_stages.data());
    chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
    chain.link.stage_size = stage_size;
    auto *levels = reinterpret_cast<lvb_level *>(long_levels.data());
    ASSERT_EQ(lvb_compute_budget(&chain.link, &chain.budget, levels, level_size, &chain.fault), LVB_OK);
    EXPECT_EQ(std::memcmp(&chain.budget, &plain.budget, sizeof chain.budget), 0);
    for (std::size_t i = 0; i < stages.size(); ++i) {
        EXPECT_EQ(std::memcmp(&long_levels[i * level_size], &plain.levels[i], sizeof(lvb_level)), 0) << i;
        for (std::size_t k = sizeof(lvb_level); k < level_size; ++k) EXPECT_EQ(long_levels[i * level_size + k], 0);
    }
    for (const std::size_t at : {std::size_t{0}, stages.size() - 1}) {
        long_stages[at * stage_size + stage_size - 1] = 1;
        EXPECT_EQ(lvb_compute_budget(&chain.link, &chain.budget, nullptr, 0, &chain.fault), LVB_E_UNKNOWN_TAIL);
        expect_fault(chain.fault, {LVB_E_UNKNOWN_TAIL, LVB_STRUCT_STAGE, LVB_FIELD_SIZE, static_cast<std::int32_t>(at),
                                   -1, stage_size, 0.0, sizeof(lvb_stage)});
        long_stages[at * stage_size + stage_size - 1] = 0;
    }
}

// ---- Guard pages: memory that ends where the data ends, so that one byte too far kills the test.

class Guarded {
  public:
    explicit Guarded(std::size_t bytes) {
        const auto page = static_cast<std::size_t>(sysconf(_SC_PAGESIZE));
        length_ = (bytes + page - 1) / page * page + page;
        start_ =
            static_cast<char *>(mmap(nullptr, length_, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0));
        if (start_ == MAP_FAILED || mprotect(start_ + length_ - page, page, PROT_NONE) != 0) std::abort();
        data_ = start_ + length_ - page - bytes;
    }
    Guarded(const Guarded &) = delete;
    Guarded &operator=(const Guarded &) = delete;
    ~Guarded() { munmap(start_, length_); }
    template <class T>
    T *at() const {
        return reinterpret_cast<T *>(data_);
    }

  private:
    char *start_, *data_;
    std::size_t length_;
};

template <class T>
const T *copy(const Guarded &memory, const T *from, std::size_t count) {
    std::memcpy(memory.at<void>(), from, count * sizeof(T));
    return memory.at<T>();
}

TEST(GuardPages, BehindColumnsAndGrids) {
    for (const std::size_t count : std::initializer_list<std::size_t>{1, 2, 127, 128, 129, 255, 256}) {
        const std::vector<double> values(count, 500.0);
        Guarded first(count * 8), second(count * 8), result(count * 8), scratch(2 * count * 8);
        Guarded columns_memory(sizeof(lvb_columns)), grid_memory(sizeof(lvb_grid)), bad_memory(sizeof(lvb_bad));
        bad_memory.at<lvb_bad>()->size = sizeof(lvb_bad);
        lvb_columns columns = sound_columns();
        columns.count = count;
        columns.argument_1 = copy(first, values.data(), count);
        columns.argument_2 = copy(second, values.data(), count);
        columns.result = result.at<double>();
        lvb_grid grid = sound_grid();
        grid.frequency_count = 1;
        grid.distance_count = count;
        grid.frequency_mhz = copy(first, values.data(), count);
        grid.distance_m = columns.argument_2;
        grid.scratch = scratch.at<double>();
        grid.level_dbm = result.at<double>();
        for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= (lvb_best_instructions() & 255); ++set) {
            columns.instructions = grid.instructions = set | LVB_INSTRUCTIONS_ASKED;
            EXPECT_EQ(lvb_compute_columns(copy(columns_memory, &columns, 1), bad_memory.at<lvb_bad>(), nullptr),
                      LVB_OK);
            EXPECT_EQ(lvb_compute_grid(copy(grid_memory, &grid, 1), bad_memory.at<lvb_bad>(), nullptr), LVB_OK);
        }
    }
}

TEST(GuardPages, BehindStagesTablesLevelsAndStructs) {
    Guarded mhz(sizeof rows_mhz), db(sizeof rows_db), gain(sizeof rows_gain);
    Guarded cable_memory(sizeof(lvb_cable_table)), gain_memory(sizeof(lvb_gain_table));
    auto cables = sized<lvb_cable_table>();
    cables.row_count = 2;
    cables.frequency_mhz = copy(mhz, rows_mhz, 2);
    cables.attenuation_db_per_100m = copy(db, rows_db, 2);
    auto gains = sized<lvb_gain_table>();
    gains.row_count = 2;
    gains.frequency_mhz = cables.frequency_mhz;
    gains.gain_db = copy(gain, rows_gain, 2);

    std::vector<lvb_stage> stages = ordinary();
    stages[1].gain_db = 0.0;
    stages[1].gain_table = copy(gain_memory, &gains, 1);
    stages[2].cable_type = LVB_CABLE_NONE;
    stages[2].cable_table = copy(cable_memory, &cables, 1);
    Guarded stage_memory(stages.size() * sizeof(lvb_stage)), level_memory(stages.size() * sizeof(lvb_level));
    Guarded link_memory(sizeof(lvb_link)), budget_memory(sizeof(lvb_budget)), fault_memory(sizeof(lvb_fault));
    Chain chain(stages);
    chain.link.stages = copy(stage_memory, stages.data(), stages.size());
    chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
    budget_memory.at<lvb_budget>()->size = sizeof(lvb_budget);
    fault_memory.at<lvb_fault>()->size = sizeof(lvb_fault);
    auto *link = link_memory.at<lvb_link>();
    for (const double frequency : {100.0, 600.0, 999.0, 1000.0}) {
        chain.link.frequency_mhz = frequency;
        copy(link_memory, &chain.link, 1);
        EXPECT_EQ(lvb_compute_budget(link, budget_memory.at<lvb_budget>(), level_memory.at<lvb_level>(),
                                     sizeof(lvb_level), fault_memory.at<lvb_fault>()),
                  LVB_OK);
    }
    // refused at the last stage, and beyond the end of tables
    for (const double frequency : {99.0, 1001.0}) {
        link->frequency_mhz = frequency;
        EXPECT_EQ(lvb_compute_budget(link, budget_memory.at<lvb_budget>(), level_memory.at<lvb_level>(),
                                     sizeof(lvb_level), fault_memory.at<lvb_fault>()),
                  LVB_E_OUTSIDE_TABLE);
    }
    // a struct with a size one byte short of its first version is not read beyond that size
    Guarded small(8); // aligned as a struct must be
    *small.at<std::uint32_t>() = sizeof(lvb_link) - 1;
    EXPECT_EQ(lvb_compute_budget(small.at<lvb_link>(), budget_memory.at<lvb_budget>(), nullptr, 0, nullptr),
              LVB_E_STRUCT_SIZE);
    *small.at<std::uint32_t>() = sizeof(lvb_cable_run) - 1;
    EXPECT_EQ(lvb_compute_cable_loss(small.at<lvb_cable_run>(), nullptr, nullptr, nullptr), LVB_E_STRUCT_SIZE);
    *small.at<std::uint32_t>() = 4;
    EXPECT_EQ(lvb_describe_cable(1, small.at<lvb_cable_info>(), nullptr), LVB_E_STRUCT_SIZE);
    EXPECT_EQ(lvb_describe_cable_row(1, 0, small.at<lvb_cable_row>(), nullptr), LVB_E_STRUCT_SIZE);
    EXPECT_EQ(lvb_describe_field(2, 0, 14, small.at<lvb_range>(), nullptr), LVB_E_STRUCT_SIZE);
    EXPECT_EQ(lvb_describe_cable(1, nullptr, small.at<lvb_fault>()), LVB_E_STRUCT_SIZE);
    char text[8];
    EXPECT_EQ(lvb_fault_text(small.at<lvb_fault>(), text, sizeof text), 0u);
}

TEST(GuardPages, BehindTheOtherCalls) {
    Guarded run_memory(sizeof(lvb_cable_run)), loss(sizeof(lvb_cable_loss)), info(sizeof(lvb_cable_info));
    Guarded row(sizeof(lvb_cable_row)), range(sizeof(lvb_range)), fault(sizeof(lvb_fault));
    const lvb_cable_run run = run_by_type();
    loss.at<lvb_cable_loss>()->size = sizeof(lvb_cable_loss);
    info.at<lvb_cable_info>()->size = sizeof(lvb_cable_info);
    row.at<lvb_cable_row>()->size = sizeof(lvb_cable_row);
    range.at<lvb_range>()->size = sizeof(lvb_range);
    fault.at<lvb_fault>()->size = sizeof(lvb_fault);
    auto *told = fault.at<lvb_fault>();
    EXPECT_EQ(lvb_compute_cable_loss(copy(run_memory, &run, 1), nullptr, loss.at<lvb_cable_loss>(), told), LVB_OK);
    EXPECT_EQ(lvb_describe_cable(4, info.at<lvb_cable_info>(), told), LVB_OK);
    EXPECT_EQ(lvb_describe_cable_row(4, 0, row.at<lvb_cable_row>(), told), LVB_OK);
    EXPECT_EQ(lvb_describe_field(LVB_STRUCT_LINK, 0, LVB_FIELD_FREQUENCY_MHZ, range.at<lvb_range>(), told), LVB_OK);
    const char name[] = "rg213u";
    Guarded name_memory(sizeof name);
    EXPECT_EQ(lvb_cable_type_from_name(copy(name_memory, name, sizeof name)), LVB_CABLE_RG_213_U);
}

TEST(GuardPages, BehindTheTextOfEveryCapacity) {
    Chain chain({source(0.0), stage(99)});
    EXPECT_EQ(chain.compute(), LVB_E_UNKNOWN_KIND);
    const std::string whole = text_of(chain.fault);
    for (std::size_t capacity = 0; capacity <= whole.size() + 3; ++capacity) {
        Guarded text(capacity);
        if (capacity > 0) std::memset(text.at<char>(), 'x', capacity);
        EXPECT_EQ(lvb_fault_text(&chain.fault, text.at<char>(), capacity), whole.size()) << capacity;
        if (capacity > 0) {
            EXPECT_EQ(std::string(text.at<char>()), whole.substr(0, capacity - 1)) << capacity;
        }
    }
}

// ---- Labels and user pointers are never read.

TEST(Labels, AreNeverRead) {
    const char *wild = reinterpret_cast<const char *>(std::uintptr_t{8});
    Chain chain(ordinary());
    chain.link.label = wild;
    for (lvb_stage &in : chain.stages) in.label = wild, in.user = wild;
    EXPECT_EQ(chain.compute(), LVB_OK);
}

} // namespace
