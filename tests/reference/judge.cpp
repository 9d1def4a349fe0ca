#include "reference/judge.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace reference {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// A named number of a struct of the header.
template <typename Struct>
struct Number {
    std::string_view name;
    double Struct::*member;
};

constexpr Number<lvb_cable_run> run_numbers[] = {
    {"frequency_mhz", &lvb_cable_run::frequency_mhz},
    {"length_m", &lvb_cable_run::length_m},
    {"temperature_degc", &lvb_cable_run::temperature_degc},
    {"connector_loss_db", &lvb_cable_run::connector_loss_db},
};
constexpr Number<lvb_link> link_numbers[] = {
    {"frequency_mhz", &lvb_link::frequency_mhz},
    {"far_distance_m", &lvb_link::far_distance_m},
    {"near_distance_m", &lvb_link::near_distance_m},
    {"temperature_degc", &lvb_link::temperature_degc},
};
constexpr Number<lvb_noise_conditions> condition_numbers[] = {
    {"bandwidth_mhz", &lvb_noise_conditions::bandwidth_mhz},
    {"antenna_temperature_k", &lvb_noise_conditions::antenna_temperature_k},
    {"external_noise_figure_db", &lvb_noise_conditions::external_noise_figure_db},
    {"carrier_to_noise_db", &lvb_noise_conditions::carrier_to_noise_db},
};
constexpr Number<lvb_stage> stage_numbers[] = {
    {"level_dbm", &lvb_stage::level_dbm},
    {"gain_db", &lvb_stage::gain_db},
    {"tolerance_db", &lvb_stage::tolerance_db},
    {"floor_dbm", &lvb_stage::floor_dbm},
    {"wanted_low_dbm", &lvb_stage::wanted_low_dbm},
    {"wanted_high_dbm", &lvb_stage::wanted_high_dbm},
    {"ceiling_dbm", &lvb_stage::ceiling_dbm},
    {"length_m", &lvb_stage::length_m},
    {"connector_loss_db", &lvb_stage::connector_loss_db},
    {"noise_figure_db", &lvb_stage::noise_figure_db},
    {"intercept_dbm", &lvb_stage::intercept_dbm},
    {"compression_dbm", &lvb_stage::compression_dbm},
};
constexpr Number<lvb_noise> noise_numbers[] = {
    {"noise_figure_db", &lvb_noise::noise_figure_db},
    {"noise_temperature_k", &lvb_noise::noise_temperature_k},
    {"antenna_noise_dbm", &lvb_noise::antenna_noise_dbm},
    {"receiver_noise_dbm", &lvb_noise::receiver_noise_dbm},
    {"far_carrier_to_noise_db", &lvb_noise::far_carrier_to_noise_db},
    {"near_carrier_to_noise_db", &lvb_noise::near_carrier_to_noise_db},
    {"sensitivity_dbm", &lvb_noise::sensitivity_dbm},
    {"noise_margin_db", &lvb_noise::margin_db},
    {"input_intercept_dbm", &lvb_noise::input_intercept_dbm},
    {"output_intercept_dbm", &lvb_noise::output_intercept_dbm},
    {"compression_dbm", &lvb_noise::compression_dbm},
    {"two_tone_dbm", &lvb_noise::two_tone_dbm},
    {"spurious_free_range_db", &lvb_noise::spurious_free_range_db},
};
constexpr Number<lvb_cable_loss> loss_numbers[] = {
    {"attenuation_db_per_100m", &lvb_cable_loss::attenuation_db_per_100m},
    {"cable_loss_db", &lvb_cable_loss::cable_loss_db},
    {"connectors_loss_db", &lvb_cable_loss::connectors_loss_db},
    {"loss_db", &lvb_cable_loss::loss_db},
};
constexpr Number<lvb_path> path_numbers[] = {
    {"transmit_height_m", &lvb_path::transmit_height_m},
    {"receive_height_m", &lvb_path::receive_height_m},
    {"relative_permittivity", &lvb_path::relative_permittivity},
    {"conductivity_s_per_m", &lvb_path::conductivity_s_per_m},
    {"exponent", &lvb_path::exponent},
    {"reference_distance_m", &lvb_path::reference_distance_m},
    {"reference_loss_db", &lvb_path::reference_loss_db},
    {"power_loss_coefficient", &lvb_path::power_loss_coefficient},
    {"floor_loss_db", &lvb_path::floor_loss_db},
    {"wall_loss_db", &lvb_path::wall_loss_db},
    {"longitudinal_loss_db_per_100m", &lvb_path::longitudinal_loss_db_per_100m},
    {"coupling_loss_db", &lvb_path::coupling_loss_db},
    {"lateral_distance_m", &lvb_path::lateral_distance_m},
};
constexpr Number<lvb_path_loss> path_loss_numbers[] = {
    {"loss_db", &lvb_path_loss::loss_db},
    {"base_loss_db", &lvb_path_loss::base_loss_db},
    {"diffraction_loss_db", &lvb_path_loss::diffraction_loss_db},
    {"obstacle_loss_db", &lvb_path_loss::obstacle_loss_db},
    {"free_space_loss_db", &lvb_path_loss::free_space_loss_db},
    {"standard_deviation_db", &lvb_path_loss::standard_deviation_db},
    {"break_point_m", &lvb_path_loss::break_point_m},
    {"grazing_angle_deg", &lvb_path_loss::grazing_angle_deg},
    {"reflection_magnitude", &lvb_path_loss::reflection_magnitude},
    {"reflection_phase_deg", &lvb_path_loss::reflection_phase_deg},
};
// What a path is computed with besides its numbers; one edge, or two, where its place is given.
constexpr std::string_view other_path_fields[] = {
    "frequency_mhz", "distance_m",      "environment",   "polarization",           "floor_count",
    "wall_count",    "edge_distance_m", "edge_height_m", "second_edge_distance_m", "second_edge_height_m"};
constexpr std::string_view path_models[] = {"free_space", "two_ray",      "log_distance",
                                            "indoor",     "site_general", "radiating_cable"};
constexpr Number<lvb_end> end_numbers[] = {
    {"distance_m", &lvb_end::distance_m},
    {"level_dbm", &lvb_end::level_dbm},
    {"margin_db", &lvb_end::margin_db},
    {"headroom_db", &lvb_end::headroom_db},
    {"worst_db", &lvb_end::worst_db},
    {"rss_db", &lvb_end::rss_db},
    {"from_middle_db", &lvb_end::from_middle_db},
};

constexpr Number<lvb_coaxial_line> coaxial_numbers[] = {
    {"frequency_mhz", &lvb_coaxial_line::frequency_mhz},
    {"inner_diameter_mm", &lvb_coaxial_line::inner_diameter_mm},
    {"outer_diameter_mm", &lvb_coaxial_line::outer_diameter_mm},
    {"inner_conductivity", &lvb_coaxial_line::inner_conductivity},
    {"outer_conductivity", &lvb_coaxial_line::outer_conductivity},
    {"inner_factor", &lvb_coaxial_line::inner_factor},
    {"outer_factor", &lvb_coaxial_line::outer_factor},
    {"relative_permittivity", &lvb_coaxial_line::relative_permittivity},
    {"loss_tangent", &lvb_coaxial_line::loss_tangent},
    {"temperature_degc", &lvb_coaxial_line::temperature_degc},
};
constexpr Number<lvb_coaxial_properties> property_numbers[] = {
    {"impedance_ohm", &lvb_coaxial_properties::impedance_ohm},
    {"velocity_factor", &lvb_coaxial_properties::velocity_factor},
    {"capacitance_pf_per_m", &lvb_coaxial_properties::capacitance_pf_per_m},
    {"conductor_db_per_100m", &lvb_coaxial_properties::conductor_db_per_100m},
    {"dielectric_db_per_100m", &lvb_coaxial_properties::dielectric_db_per_100m},
    {"attenuation_db_per_100m", &lvb_coaxial_properties::attenuation_db_per_100m},
    {"cutoff_mhz", &lvb_coaxial_properties::cutoff_mhz},
};
constexpr Number<lvb_neighbours> neighbours_numbers[] = {
    {"transmit_dbm", &lvb_neighbours::transmit_dbm},
    {"transmit_gain_dbi", &lvb_neighbours::transmit_gain_dbi},
    {"receive_gain_dbi", &lvb_neighbours::receive_gain_dbi},
    {"separation_m", &lvb_neighbours::separation_m},
    {"coupling_loss_db", &lvb_neighbours::coupling_loss_db},
    {"transmit_mhz", &lvb_neighbours::transmit_mhz},
    {"receive_mhz", &lvb_neighbours::receive_mhz},
    {"receive_loss_db", &lvb_neighbours::receive_loss_db},
    {"receive_filter_db", &lvb_neighbours::receive_filter_db},
    {"transmit_filter_db", &lvb_neighbours::transmit_filter_db},
    {"blocking_dbm", &lvb_neighbours::blocking_dbm},
    {"transmit_noise_dbm", &lvb_neighbours::transmit_noise_dbm},
    {"transmit_noise_dbc_per_hz", &lvb_neighbours::transmit_noise_dbc_per_hz},
    {"receiver_bandwidth_mhz", &lvb_neighbours::receiver_bandwidth_mhz},
    {"receiver_noise_dbm", &lvb_neighbours::receiver_noise_dbm},
    {"wanted_margin_db", &lvb_neighbours::wanted_margin_db},
    {"wanted_rise_db", &lvb_neighbours::wanted_rise_db},
};
constexpr Number<lvb_coexistence> coexistence_numbers[] = {
    {"coupling_loss_db", &lvb_coexistence::coupling_loss_db},
    {"noise_coupling_loss_db", &lvb_coexistence::noise_coupling_loss_db},
    {"blocker_dbm", &lvb_coexistence::blocker_dbm},
    {"blocking_margin_db", &lvb_coexistence::blocking_margin_db},
    {"noise_dbm", &lvb_coexistence::noise_dbm},
    {"noise_rise_db", &lvb_coexistence::noise_rise_db},
    {"more_receive_filter_db", &lvb_coexistence::more_receive_filter_db},
    {"more_transmit_filter_db", &lvb_coexistence::more_transmit_filter_db},
    {"blocking_separation_m", &lvb_coexistence::blocking_separation_m},
    {"noise_separation_m", &lvb_coexistence::noise_separation_m},
};
constexpr Number<lvb_limit_result> limit_numbers[] = {
    {"transmitter_output_dbm", &lvb_limit_result::transmitter_output_dbm},
    {"antenna_input_dbm", &lvb_limit_result::antenna_input_dbm},
    {"erp_dbm", &lvb_limit_result::erp_dbm},
};
constexpr Number<lvb_limit_rule> rule_numbers[] = {
    {"lowest_mhz", &lvb_limit_rule::lowest_mhz},
    {"highest_mhz", &lvb_limit_rule::highest_mhz},
    {"limit_dbm", &lvb_limit_rule::limit_dbm},
    {"power_mw", &lvb_limit_rule::power_mw},
};

template <typename Struct, std::size_t n>
const Number<Struct> *find(const Number<Struct> (&numbers)[n], std::string_view name) {
    for (const Number<Struct> &number : numbers)
        if (number.name == name) return &number;
    return nullptr;
}

double field_value(const Field &field) {
    return evaluate(field.value, [](std::string_view, std::span<const double>) { return nan; });
}

// A chain as it is lent, with the tables that its stages borrow; moved, never copied.
struct Lent {
    std::vector<lvb_stage> stages;
    std::vector<lvb_cable_table> tables;
    lvb_link link{};
    lvb_noise_conditions conditions{};

    Lent() = default;
    Lent(Lent &&) = default;
    Lent &operator=(Lent &&) = default;
};

// What came of a set-up.
struct Computed {
    Lent chain;
    lvb_status status = LVB_OK;
    std::string fault;
    lvb_cable_loss loss{};
    lvb_path_loss path_loss{};
    bool is_path = false;
    lvb_budget budget{};
    std::vector<lvb_level> levels;
    lvb_limit_result limit{}; // the conducted and radiated powers of a chain with an antenna
    lvb_coaxial_properties coaxial{};
    lvb_coexistence coexistence{};
    lvb_noise noise{};
    std::vector<lvb_noise_line> lines;
    std::vector<lvb_limit_rule> rules; // those of a citation that hold at a frequency
};

std::string text_of(const lvb_fault &fault) {
    char text[256];
    lvb_fault_text(&fault, text, sizeof text);
    return text;
}

// The header's view of a table; it borrows.
lvb_cable_table lend(const Table &from) {
    lvb_cable_table table{};
    table.size = sizeof table;
    table.row_count = static_cast<std::uint32_t>(from.frequency_mhz.size());
    table.frequency_mhz = from.frequency_mhz.data();
    table.attenuation_db_per_100m = from.attenuation_db_per_100m.data();
    return table;
}

Computed compute_cable(const SetUp &set_up) {
    lvb_cable_run run{};
    run.size = sizeof run;
    run.cable_type = set_up.cable_type;
    for (const Field &field : set_up.fields) {
        const double value = field_value(field);
        if (const auto *number = find(run_numbers, field.name)) run.*(number->member) = value;
        if (field.name == "connector_count") run.connector_count = static_cast<std::uint32_t>(value);
        if (field.name == "temperature_degc") run.stated |= LVB_STATED_TEMPERATURE;
    }
    const lvb_cable_table table = lend(set_up.table);
    Computed computed;
    computed.loss.size = sizeof computed.loss;
    lvb_fault fault{};
    fault.size = sizeof fault;
    computed.status = lvb_compute_cable_loss(&run, table.row_count == 0 ? nullptr : &table, &computed.loss, &fault);
    if (computed.status != LVB_OK) computed.fault = text_of(fault);
    return computed;
}

Lent make_chain(const SetUp &set_up) {
    Lent made;
    made.tables.reserve(set_up.stages.size()); // stages point into it
    for (const Stage &from : set_up.stages) {
        lvb_stage &stage = made.stages.emplace_back();
        stage.kind = from.kind;
        stage.label = from.label.c_str();
        stage.cable_type = from.cable_type;
        if (!from.table.frequency_mhz.empty()) stage.cable_table = &made.tables.emplace_back(lend(from.table));
        for (const Field &field : from.fields) {
            stage.*(find(stage_numbers, field.name)->member) = field_value(field);
            if (field.name == "floor_dbm") stage.stated |= LVB_STATED_FLOOR;
            if (field.name == "ceiling_dbm") stage.stated |= LVB_STATED_CEILING;
            if (field.name.starts_with("wanted_")) stage.stated |= LVB_STATED_WANTED;
            if (field.name == "noise_figure_db") stage.stated |= LVB_STATED_NOISE_FIGURE;
            if (field.name == "intercept_dbm") stage.stated |= LVB_STATED_INTERCEPT;
            if (field.name == "compression_dbm") stage.stated |= LVB_STATED_COMPRESSION;
        }
    }
    lvb_link &link = made.link;
    link.size = sizeof link;
    link.stages = made.stages.data();
    link.stage_count = static_cast<std::uint32_t>(made.stages.size());
    link.stage_size = sizeof(lvb_stage);
    lvb_noise_conditions &conditions = made.conditions;
    conditions.size = sizeof conditions;
    for (const Field &field : set_up.fields) {
        if (const auto *number = find(link_numbers, field.name)) link.*(number->member) = field_value(field);
        else conditions.*(find(condition_numbers, field.name)->member) = field_value(field);
        if (field.name == "temperature_degc") link.stated |= LVB_STATED_TEMPERATURE;
        if (field.name == "carrier_to_noise_db") conditions.stated |= LVB_STATED_CARRIER_TO_NOISE;
    }
    return made;
}

Computed compute_chain(const SetUp &set_up) {
    Computed computed;
    computed.chain = make_chain(set_up);
    const lvb_link &link = computed.chain.link;
    const lvb_noise_conditions &conditions = computed.chain.conditions;
    computed.budget.size = sizeof computed.budget;
    computed.levels.resize(link.stage_count);
    lvb_fault fault{};
    fault.size = sizeof fault;
    computed.status = lvb_compute_budget(&link, &computed.budget, computed.levels.data(), sizeof(lvb_level), &fault);
    if (conditions.bandwidth_mhz != 0.0 && computed.status == LVB_OK) {
        computed.noise.size = sizeof computed.noise;
        computed.lines.resize(link.stage_count);
        computed.status = lvb_compute_noise(&link, &conditions, &computed.noise, computed.lines.data(),
                                            sizeof(lvb_noise_line), &fault);
    }
    if (computed.status != LVB_OK) computed.fault = text_of(fault);
    lvb_limit limit{};
    limit.size = sizeof limit;
    limit.quantity = LVB_QUANTITY_EIRP;
    computed.limit.size = sizeof computed.limit;
    if (lvb_check_limit(&link, &limit, &computed.limit, nullptr) != LVB_OK)
        for (const auto &number : limit_numbers) computed.limit.*number.member = nan;
    return computed;
}

// A struct of numbers in, a struct of numbers out.
template <typename In, typename Out, std::size_t n>
Computed compute_struct(const SetUp &set_up, const Number<In> (&numbers)[n], Out Computed::*result,
                        lvb_status (*call)(const In *, Out *, lvb_fault *)) {
    In in{};
    in.size = sizeof in;
    for (const Field &field : set_up.fields) {
        in.*(find(numbers, field.name)->member) = field_value(field);
        if (field.name == "temperature_degc") in.stated |= LVB_STATED_TEMPERATURE;
        if (field.name == "blocking_dbm") in.stated |= LVB_STATED_BLOCKING;
        if (field.name == "transmit_noise_dbm") in.stated |= LVB_STATED_TRANSMIT_NOISE;
        if (field.name == "receiver_noise_dbm") in.stated |= LVB_STATED_RECEIVER_NOISE;
    }
    Computed computed;
    (computed.*result).size = sizeof(Out);
    lvb_fault fault{};
    fault.size = sizeof fault;
    computed.status = call(&in, &(computed.*result), &fault);
    if (computed.status != LVB_OK) computed.fault = text_of(fault);
    return computed;
}

Computed compute_path(const SetUp &set_up) {
    lvb_path path{};
    path.size = sizeof path;
    path.model = set_up.path_model;
    path.edge_size = sizeof(lvb_edge);
    lvb_edge edges[2]{};
    double frequency = 0.0, distance = 0.0;
    for (const Field &field : set_up.fields) {
        const double value = field_value(field);
        const auto whole = static_cast<std::uint32_t>(value);
        if (const auto *number = find(path_numbers, field.name)) path.*(number->member) = value;
        if (field.name == "frequency_mhz") frequency = value;
        if (field.name == "distance_m") distance = value;
        if (field.name == "environment") path.environment = static_cast<std::int32_t>(whole);
        if (field.name == "polarization") path.polarization = static_cast<std::int32_t>(whole);
        if (field.name == "floor_count") path.floor_count = whole;
        if (field.name == "wall_count") path.wall_count = whole;
        for (const std::uint32_t at : {0u, 1u}) {
            const std::string edge = at == 0 ? "edge" : "second_edge";
            if (field.name == edge + "_height_m") edges[at].height_m = value;
            if (field.name == edge + "_distance_m")
                edges[at].distance_m = value, path.edge_count = std::max(path.edge_count, at + 1);
        }
    }
    if (path.edge_count > 0) path.edges = edges;
    Computed computed;
    computed.is_path = true;
    computed.path_loss.size = sizeof computed.path_loss;
    lvb_fault fault{};
    fault.size = sizeof fault;
    computed.status = lvb_compute_path_loss(&path, frequency, distance, &computed.path_loss, &fault);
    if (computed.status != LVB_OK) computed.fault = text_of(fault);
    return computed;
}

std::vector<lvb_limit_rule> rules_of(std::string_view citation) {
    std::vector<lvb_limit_rule> rules;
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        lvb_limit_rule rule{};
        rule.size = sizeof rule;
        if (lvb_describe_limit_rule(i, &rule, nullptr) == LVB_OK && rule.citation == citation) rules.push_back(rule);
    }
    return rules;
}

Computed compute_rule(const SetUp &set_up) {
    const double frequency = field_value(set_up.fields.front());
    Computed computed;
    for (const lvb_limit_rule &rule : rules_of(set_up.citation))
        if (rule.lowest_mhz <= frequency && frequency <= rule.highest_mhz) computed.rules.push_back(rule);
    return computed;
}

Computed compute(const SetUp &set_up) {
    switch (set_up.kind) {
    case SetUp::Kind::cable:
        return compute_cable(set_up);
    case SetUp::Kind::chain:
        return compute_chain(set_up);
    case SetUp::Kind::coaxial:
        return compute_struct(set_up, coaxial_numbers, &Computed::coaxial, lvb_compute_coaxial_line);
    case SetUp::Kind::neighbours:
        return compute_struct(set_up, neighbours_numbers, &Computed::coexistence, lvb_compute_coexistence);
    case SetUp::Kind::path:
        return compute_path(set_up);
    case SetUp::Kind::rule:
        return compute_rule(set_up);
    case SetUp::Kind::none:
        break;
    }
    return {};
}

// What lvb_compute_solution finds in a chain: `..._for_level` for a level at the far end, `..._for_margin` for a
// margin.
struct Solvable {
    std::string_view name;
    std::int32_t structure, field, goal;
    int arity; // the goal, and before it the stage, counted from 1, where it is 2
};
constexpr Solvable solvable[] = {
    {"far_distance_for_level", LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, LVB_GOAL_FAR_LEVEL, 1},
    {"far_distance_for_margin", LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, LVB_GOAL_MARGIN, 1},
    {"frequency_for_level", LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, LVB_GOAL_FAR_LEVEL, 1},
    {"source_for_level", LVB_STRUCT_STAGE, LVB_FIELD_LEVEL_DBM, LVB_GOAL_FAR_LEVEL, 1},
    {"source_for_margin", LVB_STRUCT_STAGE, LVB_FIELD_LEVEL_DBM, LVB_GOAL_MARGIN, 1},
    {"gain_for_level", LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, LVB_GOAL_FAR_LEVEL, 2},
};
const Solvable *find_solvable(std::string_view name) {
    for (const Solvable &one : solvable)
        if (one.name == name) return &one;
    return nullptr;
}

double solve(const Lent &chain, const Solvable &what, std::span<const double> arguments) {
    lvb_solve in{};
    in.size = sizeof in;
    in.structure = what.structure;
    if (what.arity == 2) in.stage_index = static_cast<std::uint32_t>(arguments[0]) - 1;
    in.field = what.field;
    in.goal = what.goal;
    in.link = &chain.link;
    in.wanted = arguments.back();
    lvb_solution out{};
    out.size = sizeof out;
    if (lvb_compute_solution(&in, &out, nullptr) != LVB_OK || out.outcome != LVB_SOLUTION_FOUND) return nan;
    return out.value;
}

bool is_rule_result(std::string_view name) {
    return name == "rule_count" || name == "is_eirp" || name == "is_output" || find(rule_numbers, name) != nullptr;
}

// How many published limits hold, or what the only one says.
double rule_result(const std::vector<lvb_limit_rule> &rules, std::string_view name) {
    if (name == "rule_count") return static_cast<double>(rules.size());
    if (rules.size() != 1) return nan;
    if (const auto *number = find(rule_numbers, name)) return rules[0].*(number->member);
    return rules[0].quantity == (name == "is_eirp" ? LVB_QUANTITY_EIRP : LVB_QUANTITY_TRANSMITTER_OUTPUT);
}

double result_of(const Computed &computed, std::string_view name, std::span<const double> arguments) {
    if (is_rule_result(name)) return rule_result(computed.rules, name);
    if (computed.is_path) return computed.path_loss.*(find(path_loss_numbers, name)->member);
    if (const auto *number = find(loss_numbers, name); number != nullptr && computed.loss.size != 0)
        return computed.loss.*(number->member);
    if (const auto *number = find(property_numbers, name); number != nullptr && computed.coaxial.size != 0)
        return computed.coaxial.*(number->member);
    if (const auto *number = find(coexistence_numbers, name); number != nullptr && computed.coexistence.size != 0)
        return computed.coexistence.*(number->member);
    if (const auto *number = find(limit_numbers, name)) return computed.limit.*(number->member);
    if (name == "eirp_dbm") return computed.budget.eirp_dbm;
    if (const auto *number = find(noise_numbers, name))
        return computed.lines.empty() ? nan : computed.noise.*(number->member);
    if (const Solvable *what = find_solvable(name)) return solve(computed.chain, *what, arguments);
    if (name == "far_level_after") {
        const double stage = arguments[0];
        if (!(stage >= 1.0 && stage <= static_cast<double>(computed.levels.size()))) return nan;
        return computed.levels[static_cast<std::size_t>(stage) - 1].far_level_dbm;
    }
    if (name == "input_intercept_after") {
        const double stage = arguments[0];
        if (!(stage >= 1.0 && stage <= static_cast<double>(computed.lines.size()))) return nan;
        return computed.lines[static_cast<std::size_t>(stage) - 1].input_intercept_dbm;
    }
    const lvb_end &end = name.starts_with("far_") ? computed.budget.far_end : computed.budget.near_end;
    return end.*(find(end_numbers, name.substr(name.find('_') + 1))->member);
}

Row judge_value(const Check &check, const Computed &computed) {
    Row row;
    if (computed.status != LVB_OK) {
        row.message = "refused: " + computed.fault;
        row.value = row.difference = nan;
        return row;
    }
    row.value = evaluate(check.expression, [&](std::string_view name, std::span<const double> arguments) {
        return result_of(computed, name, arguments);
    });
    const bool relative = check.tolerance.unit == "%";
    row.tolerance = relative ? std::fabs(check.printed) * check.tolerance.amount / 100.0 : check.tolerance.amount;
    row.difference = row.value == check.printed ? 0.0 : row.value - check.printed; // two infinities agree
    const double stated = check.disagrees.value_or(0.0) * (relative ? std::fabs(check.printed) / 100.0 : 1.0);
    // The last digits of a double are not the source's: a value on the very edge of the tolerance is inside.
    const bool inside = std::fabs(row.difference - stated) <= row.tolerance * (1.0 + 1e-9);
    if (inside) row.verdict = check.disagrees ? Verdict::disagrees_as_said : Verdict::agrees;
    else row.message = check.disagrees ? "does not differ from its source by what is stated" : "outside the tolerance";
    return row;
}

Row judge_refusal(const Check &check, const Computed &computed) {
    Row row;
    row.value = nan;
    if (check.refusal_status.empty()) {
        row.value = evaluate(check.expression, [](std::string_view, std::span<const double>) { return nan; });
        if (std::isnan(row.value)) row.verdict = Verdict::agrees;
        else row.message = "was not refused";
    } else if (check.refusal_status == lvb_status_name(computed.status)) row.verdict = Verdict::agrees;
    else row.message = "gave " + std::string(lvb_status_name(computed.status)) + " " + computed.fault;
    return row;
}

} // namespace

int result_arity(SetUp::Kind kind, std::string_view name) {
    switch (kind) {
    case SetUp::Kind::none:
        return -1;
    case SetUp::Kind::cable:
        return find(loss_numbers, name) != nullptr ? 0 : -1;
    case SetUp::Kind::path:
        return find(path_loss_numbers, name) != nullptr ? 0 : -1;
    case SetUp::Kind::rule:
        return is_rule_result(name) ? 0 : -1;
    case SetUp::Kind::chain:
        if (name == "eirp_dbm" || find(limit_numbers, name) != nullptr) return 0;
        if (const Solvable *what = find_solvable(name)) return what->arity;
        if (name == "far_level_after") return 1;
        if (name == "input_intercept_after") return 1;
        if (find(noise_numbers, name) != nullptr) return 0;
        for (const std::string_view end : {"far_", "near_"})
            if (name.starts_with(end)) return find(end_numbers, name.substr(end.size())) != nullptr ? 0 : -1;
        return -1;
    case SetUp::Kind::coaxial:
        return find(property_numbers, name) != nullptr ? 0 : -1;
    case SetUp::Kind::neighbours:
        return find(coexistence_numbers, name) != nullptr ? 0 : -1;
    }
    return -1;
}

bool is_cable_field(std::string_view name) { return find(run_numbers, name) != nullptr || name == "connector_count"; }
bool is_link_field(std::string_view name) {
    return find(link_numbers, name) != nullptr || find(condition_numbers, name) != nullptr;
}
bool is_stage_field(std::string_view name) { return find(stage_numbers, name) != nullptr; }
bool is_coaxial_field(std::string_view name) { return find(coaxial_numbers, name) != nullptr; }
bool is_neighbours_field(std::string_view name) { return find(neighbours_numbers, name) != nullptr; }
bool is_path_field(std::string_view name) {
    return find(path_numbers, name) != nullptr ||
           std::find(std::begin(other_path_fields), std::end(other_path_fields), name) != std::end(other_path_fields);
}
bool is_rule(std::string_view citation) { return !rules_of(citation).empty(); }
bool is_rule_field(std::string_view name) { return name == "frequency_mhz"; }
int path_model(std::string_view name) {
    const auto at = std::find(std::begin(path_models), std::end(path_models), name);
    return at == std::end(path_models) ? -1 : static_cast<int>(at - std::begin(path_models));
}

std::vector<Row> judge(const Case &one) {
    std::vector<Computed> computed;
    for (const SetUp &set_up : one.set_ups) computed.push_back(compute(set_up));
    std::vector<Row> rows;
    for (const Check &check : one.checks) {
        const Computed &of = computed[check.set_up];
        Row row = check.refusal ? judge_refusal(check, of) : judge_value(check, of);
        row.from = &one;
        row.check = &check;
        const std::string &set_up = one.set_ups[check.set_up].text;
        row.inputs = set_up.empty() ? check.text : set_up + " => " + check.text;
        if (one.known == Known::memory) {
            row.message = row.verdict == Verdict::fails ? "from memory, and differs" : "from memory, and agrees";
            row.verdict = Verdict::memory_only;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<LeftOut> leave_one_out(const Table &table) {
    std::vector<LeftOut> found;
    for (std::size_t i = 1; i + 1 < table.frequency_mhz.size(); ++i) {
        SetUp set_up;
        set_up.kind = SetUp::Kind::cable;
        set_up.table = table;
        const auto at = static_cast<std::ptrdiff_t>(i);
        set_up.table.frequency_mhz.erase(set_up.table.frequency_mhz.begin() + at);
        set_up.table.attenuation_db_per_100m.erase(set_up.table.attenuation_db_per_100m.begin() + at);
        Expression frequency;
        frequency.number = table.frequency_mhz[i];
        Expression length;
        length.number = 100.0;
        set_up.fields = {{"frequency_mhz", frequency}, {"length_m", length}};
        const double printed = table.attenuation_db_per_100m[i];
        const Computed computed = compute(set_up);
        const double predicted = computed.status == LVB_OK ? computed.loss.attenuation_db_per_100m : nan;
        found.push_back({table.name, table.frequency_mhz[i], table.frequency_mhz[i - 1], table.frequency_mhz[i + 1],
                         printed, (predicted / printed - 1.0) * 100.0});
    }
    return found;
}

std::vector<Table> catalogue() {
    std::vector<Table> tables;
    for (std::uint32_t type = 1; type <= lvb_cable_type_count(); ++type) {
        const auto number = static_cast<std::int32_t>(type);
        lvb_cable_info info{};
        info.size = sizeof info;
        if (lvb_describe_cable(number, &info, nullptr) != LVB_OK) continue;
        Table table;
        table.name = info.name;
        table.source = "built-in catalogue";
        for (std::uint32_t i = 0; i < info.row_count; ++i) {
            lvb_cable_row row{};
            row.size = sizeof row;
            if (lvb_describe_cable_row(number, i, &row, nullptr) != LVB_OK) continue;
            table.frequency_mhz.push_back(row.frequency_mhz);
            table.attenuation_db_per_100m.push_back(row.attenuation_db_per_100m);
        }
        tables.push_back(std::move(table));
    }
    return tables;
}

} // namespace reference
