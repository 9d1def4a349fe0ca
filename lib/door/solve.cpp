#include "decide/solve.hpp"
#include "decide/goal.hpp"
#include "door/check_chain.hpp"
#include "door/fields.hpp"

namespace lvb::door {
namespace {

using math::not_a_number;

static_assert(static_cast<int>(decide::Goal::eirp) == LVB_GOAL_EIRP &&
              static_cast<int>(decide::Tolerances::rss) == LVB_TOLERANCES_RSS);

constexpr Range wanted_range{-1000.0, 1000.0, false};
constexpr double smallest = 0x1p-1022; // stands for a zero that would mean something else

struct Bound {
    double at;
    std::int32_t structure, field, stage;
};

struct Problem {
    lvb_solve in;
    lvb_link link;
    chain::Conditions conditions;
    std::int32_t stage; // -1 for a field of the link
    double entered, reached_entered;
    Bound lowest, highest;
    Bound unsteady; // what keeps a frequency from being solved; no structure where nothing does
    std::int32_t air = -1;
    path::Path path{}; // of the air, where it has one
    bool has_path = false;
    bool wavers = false; // the goal goes up and down with the unknown
};

bool is_link_field(std::int32_t field) noexcept {
    return field == LVB_FIELD_FREQUENCY_MHZ || field == LVB_FIELD_FAR_DISTANCE_M ||
           field == LVB_FIELD_NEAR_DISTANCE_M || field == LVB_FIELD_TEMPERATURE_DEGC;
}

using Unknown = double *;
// The member of the model that a field of a stage is; null for a field that cannot be solved for.
Unknown unknown_of(chain::Stage &stage, std::int32_t field) noexcept {
    switch (field) {
    case LVB_FIELD_LEVEL_DBM:
        return &stage.level_dbm;
    case LVB_FIELD_GAIN_DB:
        return &stage.gain_db;
    case LVB_FIELD_TOLERANCE_DB:
        return &stage.tolerance_db;
    case LVB_FIELD_LENGTH_M:
        return &stage.cable.length_m;
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return &stage.cable.connector_loss_db;
    case LVB_FIELD_FLOOR_DBM:
        return &stage.window.floor_dbm;
    case LVB_FIELD_WANTED_LOW_DBM:
        return &stage.window.wanted_low_dbm;
    case LVB_FIELD_WANTED_HIGH_DBM:
        return &stage.window.wanted_high_dbm;
    case LVB_FIELD_CEILING_DBM:
        return &stage.window.ceiling_dbm;
    default:
        return nullptr;
    }
}

bool is_window_field(std::int32_t field) noexcept {
    return field == LVB_FIELD_FLOOR_DBM || field == LVB_FIELD_WANTED_LOW_DBM || field == LVB_FIELD_WANTED_HIGH_DBM ||
           field == LVB_FIELD_CEILING_DBM;
}

double goal_of(const chain::Result &result, const Problem &problem) noexcept {
    return decide::figure_of(result, static_cast<decide::Goal>(problem.in.goal),
                             static_cast<decide::Tolerances>(problem.in.tolerances));
}

// The goal of the checked link with the unknown at x.
double goal_at(const Problem &problem, double x) noexcept {
    chain::Conditions conditions = problem.conditions;
    if (problem.stage < 0) switch (problem.in.field) {
        case LVB_FIELD_FREQUENCY_MHZ:
            conditions.frequency_mhz = x;
            break;
        case LVB_FIELD_FAR_DISTANCE_M:
            conditions.far_distance_m = x;
            if (!conditions.near_is_given) conditions.near_distance_m = x;
            break;
        case LVB_FIELD_NEAR_DISTANCE_M:
            conditions.near_distance_m = x;
            break;
        default:
            conditions.temperature_degc = x;
        }
    chain::Ledger ledger(conditions);
    chain::Stage stage;
    Refusal refusal;
    for (std::uint32_t i = 0; i < problem.link.stage_count; ++i) {
        take_stage(refusal, problem.link, i, stage);
        if (static_cast<std::int32_t>(i) == problem.stage) *unknown_of(stage, problem.in.field) = x;
        ledger.enter(stage);
    }
    return goal_of(ledger.close(), problem);
}

bool check_code(Refusal &refusal, std::int32_t code, std::int32_t least, std::int32_t most, std::int32_t field,
                Place place) noexcept {
    if (code == 0 && least > 0) return refuse(refusal, LVB_E_MISSING, place, field, 0.0, least, most);
    return (code >= least && code <= most) || refuse(refusal, LVB_E_UNKNOWN_VALUE, place, field, code, least, most);
}

bool check_solve(Refusal &refusal, const lvb_solve &in, Place place) noexcept {
    if (in.structure == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_STRUCTURE, 0.0, LVB_STRUCT_LINK, LVB_STRUCT_STAGE);
    if (!check_code(refusal, in.structure, LVB_STRUCT_LINK, LVB_STRUCT_STAGE, LVB_FIELD_STRUCTURE, place)) return false;
    if (in.field == 0) return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FIELD, 0.0);
    chain::Stage any;
    const bool of_link = in.structure == LVB_STRUCT_LINK;
    if (of_link ? !is_link_field(in.field) : unknown_of(any, in.field) == nullptr)
        return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_FIELD, in.field);
    if (of_link && in.stage_index != 0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_STAGE_INDEX, in.stage_index);
    if (!check_code(refusal, in.goal, LVB_GOAL_MARGIN, LVB_GOAL_EIRP, LVB_FIELD_GOAL, place) ||
        !check_code(refusal, in.tolerances, LVB_TOLERANCES_NONE, LVB_TOLERANCES_RSS, LVB_FIELD_TOLERANCES, place))
        return false;
    const bool room = in.goal == LVB_GOAL_MARGIN || in.goal == LVB_GOAL_HEADROOM;
    const bool counted = room || (in.goal == LVB_GOAL_EIRP && in.tolerances == LVB_TOLERANCES_WORST);
    if (in.tolerances != LVB_TOLERANCES_NONE && !counted)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_TOLERANCES, in.tolerances);
    return check_field(refusal, in.wanted, wanted_range, place, LVB_FIELD_WANTED);
}

void narrow_from(Bound &bound, const Bound &other) noexcept {
    if (other.at > bound.at) bound = other;
}
void narrow_to(Bound &bound, const Bound &other) noexcept {
    if (other.at < bound.at) bound = other;
}

// The limits of the window beside the unknown one; in the order in which they rise.
void bound_window(Problem &problem, const chain::Window &window) noexcept {
    struct Limit {
        std::int32_t field;
        bool stated;
        double dbm;
    };
    const Limit limits[] = {{LVB_FIELD_FLOOR_DBM, window.has_floor, window.floor_dbm},
                            {LVB_FIELD_WANTED_LOW_DBM, window.has_wanted, window.wanted_low_dbm},
                            {LVB_FIELD_WANTED_HIGH_DBM, window.has_wanted, window.wanted_high_dbm},
                            {LVB_FIELD_CEILING_DBM, window.has_ceiling, window.ceiling_dbm}};
    bool below = true;
    for (const Limit &limit : limits) {
        const Bound bound{limit.dbm, LVB_STRUCT_STAGE, limit.field, problem.stage};
        if (limit.field == problem.in.field) below = false;
        else if (limit.stated && below) narrow_from(problem.lowest, bound);
        else if (limit.stated) narrow_to(problem.highest, bound);
    }
}

// The stage that has the unknown: it must use the field, and nothing may stand in its place.
bool take_unknown(Refusal &refusal, Problem &problem, const chain::Stage &stage) noexcept {
    const std::int32_t field = problem.in.field;
    const Place place{LVB_STRUCT_STAGE, problem.stage};
    const Range *range = stage_range(static_cast<std::int32_t>(stage.kind), field);
    const bool of_cable = field == LVB_FIELD_LENGTH_M || field == LVB_FIELD_CONNECTOR_LOSS_DB;
    if (range == nullptr || (of_cable && !stage.has_cable)) return refuse(refusal, LVB_E_UNUSED, place, field);
    problem.lowest = {range->minimum, LVB_STRUCT_STAGE, field, problem.stage};
    problem.highest = {range->maximum, LVB_STRUCT_STAGE, field, problem.stage};
    if (field == LVB_FIELD_CONNECTOR_LOSS_DB) {
        problem.lowest.at = smallest;
        return stage.cable.connectors != 0 || refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_CONNECTOR_COUNT, 0.0, 1.0,
                                                     connector_count_range.maximum);
    }
    if (is_window_field(field)) {
        const chain::Window &window = stage.window;
        const bool stated = field == LVB_FIELD_FLOOR_DBM     ? window.has_floor
                            : field == LVB_FIELD_CEILING_DBM ? window.has_ceiling
                                                             : window.has_wanted;
        if (!stated) return refuse(refusal, LVB_E_NOT_STATED, place, field, 0.0);
        bound_window(problem, window);
    }
    if (field != LVB_FIELD_GAIN_DB) return true;
    if (stage.gain_table.rows > 0) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_TABLE);
    if (stage.has_pattern) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_PATTERN);
    if (stage.has_body) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_BODY_TABLE);
    if (stage.has_cable) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB);
    if (stage.kind == chain::Kind::cable) problem.highest.at = -smallest;
    return true;
}

bool goes_up_and_down(const path::Path &path) noexcept {
    return path.model == path::Model::two_ray || path.edges.count != 0;
}

// What a stage asks of the frequency.
void bound_frequency(Problem &problem, const chain::Stage &stage, std::int32_t index) noexcept {
    const auto narrow = [&](double low, double high, std::int32_t field) noexcept {
        narrow_from(problem.lowest, {low, LVB_STRUCT_STAGE, field, index});
        narrow_to(problem.highest, {high, LVB_STRUCT_STAGE, field, index});
    };
    const auto unsteady = [&](std::int32_t field) noexcept {
        if (problem.unsteady.structure == LVB_STRUCT_NONE)
            problem.unsteady = {not_a_number, LVB_STRUCT_STAGE, field, index};
    };
    if (stage.gain_table.rows > 0) {
        const chain::GainTable &table = stage.gain_table;
        narrow(table.frequency_mhz[0], table.frequency_mhz[table.rows - 1], LVB_FIELD_GAIN_TABLE);
        unsteady(LVB_FIELD_GAIN_TABLE);
    }
    if (stage.has_cable) {
        const cable::Table &table = stage.cable.table;
        narrow(cable::usable_below * table.frequency_mhz[0], cable::usable_above * table.frequency_mhz[table.rows - 1],
               LVB_FIELD_CABLE_TABLE);
        // Another temperature than the table's leaves small steps at its rows.
        if (problem.conditions.temperature_degc != cable::table_temperature_degc) problem.wavers = true;
    }
    if (!stage.has_path) return;
    const path::Reach reach = path::reach_of(stage.path);
    narrow(reach.lowest_mhz, reach.highest_mhz, LVB_FIELD_PATH);
    if (goes_up_and_down(stage.path)) unsteady(LVB_FIELD_PATH);
}

bool is_distance(std::int32_t field) noexcept {
    return field == LVB_FIELD_FAR_DISTANCE_M || field == LVB_FIELD_NEAR_DISTANCE_M;
}

// A field of the link starts with its own range.
void take_link_unknown(Problem &problem) noexcept {
    const std::int32_t field = problem.in.field;
    const Range &range = *struct_range(LVB_STRUCT_LINK, field);
    problem.lowest = {range.minimum, LVB_STRUCT_LINK, field, -1};
    problem.highest = {range.maximum, LVB_STRUCT_LINK, field, -1};
    const chain::Conditions &conditions = problem.conditions;
    switch (field) {
    case LVB_FIELD_FREQUENCY_MHZ:
        problem.entered = conditions.frequency_mhz;
        break;
    case LVB_FIELD_FAR_DISTANCE_M:
        problem.entered = conditions.far_distance_m;
        break;
    case LVB_FIELD_NEAR_DISTANCE_M:
        problem.entered = conditions.near_distance_m;
        break;
    default:
        problem.entered = conditions.temperature_degc;
    }
}

// Distances: near under far, and both where the path holds.
bool bound_distance(Refusal &refusal, Problem &problem) noexcept {
    const chain::Conditions &conditions = problem.conditions;
    if (problem.air < 0) return refuse(refusal, LVB_E_UNUSED, {LVB_STRUCT_LINK}, problem.in.field);
    if (problem.in.field == LVB_FIELD_NEAR_DISTANCE_M)
        narrow_to(problem.highest, {conditions.far_distance_m, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, -1});
    else if (conditions.near_is_given)
        narrow_from(problem.lowest, {conditions.near_distance_m, LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, -1});
    if (!problem.has_path) return true;
    problem.wavers = goes_up_and_down(problem.path);
    const path::Reach reach = path::reach_of(problem.path);
    const auto holds = [&](double distance_m) noexcept {
        const double direct = path::direct_m(problem.path, distance_m);
        return direct >= reach.nearest_m && direct <= reach.farthest_m;
    };
    Bound *const bounds[] = {&problem.lowest, &problem.highest};
    for (Bound *bound : bounds)
        if (!holds(bound->at))
            *bound = {decide::last_holding(problem.entered, bound->at, holds), LVB_STRUCT_STAGE, LVB_FIELD_PATH,
                      problem.air};
    return true;
}

bool take_problem(Refusal &refusal, const lvb_solve *lent, Problem &problem) noexcept {
    const Place place{LVB_STRUCT_SOLVE};
    if (!take(refusal, lent, problem.in, place, LVB_FIELD_SOLVE) || !check_solve(refusal, problem.in, place) ||
        !take_link(refusal, problem.in.link, problem.link, problem.conditions))
        return false;
    const bool of_link = problem.in.structure == LVB_STRUCT_LINK;
    if (!of_link && problem.in.stage_index >= problem.link.stage_count)
        return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_STAGE_INDEX, problem.in.stage_index, 0.0,
                      problem.link.stage_count - 1);
    problem.stage = of_link ? -1 : static_cast<std::int32_t>(problem.in.stage_index);
    problem.unsteady = {not_a_number, LVB_STRUCT_NONE, LVB_FIELD_NONE, -1};
    if (of_link) take_link_unknown(problem);

    chain::Ledger ledger(problem.conditions);
    chain::Stage unknown{};
    std::int32_t index = 0;
    if (!walk_stages(refusal, problem.link, [&](const chain::Stage &stage) noexcept {
            ledger.enter(stage);
            if (index == problem.stage) unknown = stage;
            if (stage.kind == chain::Kind::air) problem.air = index;
            if (stage.has_path) problem.has_path = true, problem.path = stage.path;
            if (of_link && problem.in.field == LVB_FIELD_FREQUENCY_MHZ) bound_frequency(problem, stage, index);
            ++index;
        }))
        return false;
    if (!of_link) {
        const bool feeds_cable = problem.has_path && path::is_fed_by_cable(problem.path) &&
                                 unknown.kind == chain::Kind::antenna && problem.stage < problem.air;
        if (feeds_cable && problem.in.field == LVB_FIELD_GAIN_DB) // a radiating cable has no antenna
            return refuse(refusal, LVB_E_UNUSED, {LVB_STRUCT_STAGE, problem.stage}, LVB_FIELD_GAIN_DB);
        if (!take_unknown(refusal, problem, unknown)) return false;
        problem.entered = *unknown_of(unknown, problem.in.field);
    }
    if (of_link && is_distance(problem.in.field) && !bound_distance(refusal, problem)) return false;
    problem.reached_entered = goal_of(ledger.close(), problem);
    return !math::is_nan(problem.reached_entered) ||
           refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_GOAL, problem.in.goal);
}

lvb_solution answered(lvb_solution out, double value, double reached, double wanted, std::int32_t outcome) noexcept {
    out.outcome = outcome;
    out.value = value;
    out.reached = reached;
    out.missing_db = wanted - reached;
    return out;
}

lvb_solution stopped(lvb_solution out, const Bound &bound, double value, double reached, double wanted,
                     std::int32_t outcome) noexcept {
    out.bound_structure = bound.structure;
    out.bound_field = bound.field;
    out.bound_stage = bound.stage;
    return answered(out, value, reached, wanted, outcome);
}

double distance_between(double a, double b) noexcept { return math::abs(a - b); }

// Out of reach: the bound that comes nearest.
lvb_solution out_of_reach(const lvb_solution &out, const Problem &problem, double at_lowest,
                          double at_highest) noexcept {
    const double wanted = problem.in.wanted;
    if (distance_between(at_lowest, wanted) <= distance_between(at_highest, wanted))
        return stopped(out, problem.lowest, problem.lowest.at, at_lowest, wanted, LVB_SOLUTION_AT_LOWEST);
    return stopped(out, problem.highest, problem.highest.at, at_highest, wanted, LVB_SOLUTION_AT_HIGHEST);
}

bool is_near_goal(std::int32_t goal) noexcept {
    return goal == LVB_GOAL_HEADROOM || goal == LVB_GOAL_NEAR_FROM_MIDDLE || goal == LVB_GOAL_NEAR_LEVEL;
}

// The tables of the chain's cables, whose loss has a step at each row; none where the unknown is no frequency.
struct CableTables {
    explicit CableTables(const Problem &problem) noexcept {
        if (problem.in.field != LVB_FIELD_FREQUENCY_MHZ) return;
        chain::Stage stage;
        Refusal refusal;
        for (std::uint32_t i = 0; i < problem.link.stage_count; ++i) {
            take_stage(refusal, problem.link, i, stage);
            if (stage.has_cable) all[count++] = stage.cable.table;
        }
    }

    cable::Table all[LVB_MAX_STAGES];
    std::uint32_t count = 0;
};

// The next value to look at on a walk; not past a row of a cable's table.
double next_of(const decide::Walk &way, const CableTables &tables, double at, double to) noexcept {
    const double step = way.step(at);
    double next = at < to ? at + step : at - step;
    if (at < to ? next > to : next < to) next = to;
    for (std::uint32_t i = 0; i < tables.count; ++i) {
        const cable::Table &table = tables.all[i];
        for (std::size_t k = 0; k < table.rows; ++k) next = decide::up_to_step(at, next, table.frequency_mhz[k]);
    }
    return next;
}

// Where the goal goes up and down: from the side on which a margin, or a headroom, holds.
template <class Figure>
lvb_solution walk(const lvb_solution &out, const Problem &problem, double at_lowest, double at_highest,
                  Figure figure) noexcept {
    const double wanted = problem.in.wanted;
    const bool inwards = is_near_goal(problem.in.goal);
    const bool room = problem.in.goal == LVB_GOAL_MARGIN || problem.in.goal == LVB_GOAL_HEADROOM;
    const Bound &from = inwards ? problem.highest : problem.lowest, &to = inwards ? problem.lowest : problem.highest;
    const double at_from = inwards ? at_highest : at_lowest, at_to = inwards ? at_lowest : at_highest;
    const std::int32_t outcome_from = inwards ? LVB_SOLUTION_AT_HIGHEST : LVB_SOLUTION_AT_LOWEST;
    const std::int32_t outcome_to = inwards ? LVB_SOLUTION_AT_LOWEST : LVB_SOLUTION_AT_HIGHEST;
    if (at_from == wanted) return answered(out, from.at, at_from, wanted, LVB_SOLUTION_FOUND);
    if (room && at_from < wanted) return stopped(out, from, from.at, at_from, wanted, outcome_from);
    const bool two_ray = problem.path.model == path::Model::two_ray && is_distance(problem.in.field);
    const decide::Walk way{two_ray, problem.path.transmit_height_m, problem.path.receive_height_m,
                           problem.conditions.frequency_mhz};
    const CableTables tables(problem);
    const auto next = [&](double at) noexcept { return next_of(way, tables, at, to.at); };
    const decide::Place place = decide::first_met(from.at, to.at, wanted, next, figure);
    if (place.found) return answered(out, place.at, figure(place.at), wanted, LVB_SOLUTION_FOUND);
    return room ? stopped(out, to, to.at, at_to, wanted, outcome_to)
                : out_of_reach(out, problem, at_lowest, at_highest);
}

lvb_solution solve(const Problem &problem) noexcept {
    const auto figure = [&](double x) noexcept { return goal_at(problem, x); };
    const double wanted = problem.in.wanted;
    lvb_solution out{};
    out.entered = problem.entered;
    out.reached_entered = problem.reached_entered;
    out.lowest = problem.lowest.at;
    out.highest = problem.highest.at;
    out.bound_stage = -1;
    if (problem.unsteady.structure != LVB_STRUCT_NONE)
        return stopped(out, problem.unsteady, not_a_number, out.reached_entered, wanted, LVB_SOLUTION_NOT_STEADY);
    const double at_lowest = figure(out.lowest), at_highest = figure(out.highest);
    if (at_lowest == at_highest && out.lowest != out.highest)
        return answered(out, not_a_number, out.reached_entered, wanted, LVB_SOLUTION_NO_EFFECT);
    if (problem.wavers) return walk(out, problem, at_lowest, at_highest, figure);
    const bool within = at_lowest < at_highest ? at_lowest <= wanted && wanted <= at_highest
                                               : at_highest <= wanted && wanted <= at_lowest;
    if (!within) return out_of_reach(out, problem, at_lowest, at_highest);
    const double value = decide::met_between(out.lowest, out.highest, wanted, figure);
    return answered(out, value, figure(value), wanted, LVB_SOLUTION_FOUND);
}

bool compute(Refusal &refusal, const lvb_solve *lent, lvb_solution *solution) noexcept {
    Problem problem{};
    if (!take_problem(refusal, lent, problem) ||
        !check_result(refusal, solution, LVB_STRUCT_SOLUTION, LVB_FIELD_SOLUTION))
        return false;
    lvb_solution out = solve(problem);
    give(solution, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_solution(const lvb_solve *solve, lvb_solution *solution, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, solve, solution); });
}
