#include "compute.hpp"

#include <cmath>
#include <utility>

namespace desk {
namespace {

lvb_gain_table lend_gain_table(const Table &table) {
    return {sizeof(lvb_gain_table), static_cast<std::uint32_t>(table.values.size()), table.frequency_mhz.data(),
            table.values.data()};
}

lvb_cable_table lend_cable_table(const Table &table) {
    return {sizeof(lvb_cable_table), static_cast<std::uint32_t>(table.values.size()), table.frequency_mhz.data(),
            table.values.data()};
}

// Where in the file the field stands that a fault names; its value is null where the field is not given.
Given find_given(const Link &link, const lvb_fault &fault) {
    const auto in = [&](const GivenNumbers &numbers) {
        const auto given = numbers.find(fault.field);
        return given == numbers.end() ? Given{} : given->second;
    };
    if (fault.structure == LVB_STRUCT_LINK) return in(link.numbers);
    if (fault.stage < 0) return {};
    const Stage &stage = link.stages[static_cast<std::size_t>(fault.stage)];
    if (fault.structure == LVB_STRUCT_STAGE) return in(stage.numbers);
    const std::shared_ptr<const Table> &table =
        fault.structure == LVB_STRUCT_CABLE_TABLE ? stage.cable_table : stage.gain_table;
    if (!table || fault.row < 0) return {};
    const Given &column = fault.field == LVB_FIELD_FREQUENCY_MHZ ? table->frequency_column : table->value_column;
    return {column.value->items[static_cast<std::size_t>(fault.row)], column.key};
}

// The allowed range, in the unit of the key that was used.
std::string allowed(const lvb_fault &fault, const NumberKey &key) {
    if (std::isnan(fault.minimum) || std::isnan(fault.maximum)) return "";
    double low = key.from_library(fault.minimum);
    double high = key.from_library(fault.maximum);
    if (low > high) std::swap(low, high);
    return "; allowed " + plain(low) + " to " + plain(high);
}

std::string tell_missing(const lvb_fault &fault) {
    if (fault.structure == LVB_STRUCT_LINK) return ways_to_write(link_keys(), fault.field, 0) + " is missing";
    if (fault.field == LVB_FIELD_CABLE_TYPE) return "cable_type, attenuation_table, gain_table or loss_db is missing";
    return ways_to_write(stage_keys(), fault.field, 0) + " is missing";
}

std::string tell(const lvb_fault &fault, const Given &given) {
    const std::string written = given.value == nullptr ? "" : plain(given.value->number);
    switch (fault.status) {
    case LVB_E_MISSING:
        if (given.value == nullptr) return tell_missing(fault);
        [[fallthrough]]; // a zero in a table
    case LVB_E_NAN:
    case LVB_E_INFINITE:
    case LVB_E_BELOW_RANGE:
    case LVB_E_ABOVE_RANGE:
        if (given.value != nullptr) return written + " is out of range" + allowed(fault, *given.key);
        break;
    case LVB_E_ORDER:
        if (given.value != nullptr) return written + " is the wrong way round" + allowed(fault, *given.key);
        break;
    case LVB_E_TABLE_UNSORTED:
        if (given.value != nullptr) return written + " is lower than the row before it; frequencies must rise";
        break;
    case LVB_E_TABLE_DUPLICATE:
        if (given.value != nullptr) return written + " stands in the row before it too";
        break;
    case LVB_E_TABLE_TOO_STEEP:
        if (given.value != nullptr) return written + " is too far from the row before it" + allowed(fault, *given.key);
        break;
    case LVB_E_TABLE_EMPTY:
        return "this table has no rows";
    case LVB_E_OUTSIDE_TABLE:
        return "the link's " + plain(fault.value) + " MHz lie outside this table; it serves " + plain(fault.minimum) +
               " to " + plain(fault.maximum) + " MHz";
    case LVB_E_CONFLICT:
        return "a cable is given by one of cable_type, attenuation_table, gain_table and loss_db or gain_db";
    default:
        break;
    }
    char text[256];
    lvb_fault_text(&fault, text, sizeof text);
    return text;
}

[[noreturn]] void refuse(const Document &document, const Link &link, const lvb_fault &fault) {
    const Given given = find_given(link, fault);
    std::string words = tell(fault, given);
    const Stage *stage = fault.stage < 0 ? nullptr : &link.stages[static_cast<std::size_t>(fault.stage)];
    const Value *at = given.value;
    const bool table_fault = fault.structure == LVB_STRUCT_CABLE_TABLE || fault.structure == LVB_STRUCT_GAIN_TABLE;
    if (at == nullptr && stage != nullptr && table_fault) {
        const bool cable = fault.structure == LVB_STRUCT_CABLE_TABLE;
        const std::shared_ptr<const Table> &table = cable ? stage->cable_table : stage->gain_table;
        if (table != nullptr) at = table->value; // null for a cable of the catalogue
    }
    const bool link_fault = fault.structure == LVB_STRUCT_LINK;
    if (at == nullptr && link_fault && fault.field == LVB_FIELD_STAGE_COUNT) at = link.value->find("stages");
    if (at == nullptr) at = stage != nullptr && !link_fault ? stage->value : link.value;
    // A fault in gear is told where the gear stands; the link tells whose stage it is.
    const bool in_gear = stage != nullptr && !link_fault && at->path().rfind("gear", 0) == 0;
    if (in_gear) words += " (used in " + stage->value->path() + ")";
    document.refuse(*at, words);
}

} // namespace

bool is_computed_cable(const Stage &stage) {
    return stage.entry.kind == LVB_KIND_CABLE &&
           (stage.entry.cable_type != LVB_CABLE_NONE || stage.cable_table != nullptr);
}

Computed compute(const Document &document, const Link &link) {
    // Room for every table before the first pointer to one is taken.
    std::vector<lvb_gain_table> gains(link.stages.size());
    std::vector<lvb_cable_table> cables(link.stages.size());
    std::vector<lvb_stage> stages(link.stages.size());
    for (std::size_t i = 0; i < stages.size(); ++i) {
        const Stage &stage = link.stages[i];
        stages[i] = stage.entry;
        if (stage.gain_table) stages[i].gain_table = &(gains[i] = lend_gain_table(*stage.gain_table));
        if (stage.cable_table) stages[i].cable_table = &(cables[i] = lend_cable_table(*stage.cable_table));
    }

    lvb_link lent{};
    lent.size = sizeof lent;
    lent.stages = stages.data();
    lent.stage_count = static_cast<std::uint32_t>(stages.size());
    lent.stage_size = sizeof(lvb_stage);
    lent.frequency_mhz = link.frequency_mhz;
    lent.far_distance_m = link.far_distance_m;
    lent.near_distance_m = link.near_distance_m;
    if (link.temperature_degc) {
        lent.stated = LVB_STATED_TEMPERATURE;
        lent.temperature_degc = *link.temperature_degc;
    }

    Computed computed;
    computed.budget.size = sizeof(lvb_budget);
    computed.levels.resize(stages.size());
    lvb_fault fault{};
    fault.size = sizeof fault;
    const lvb_status status =
        lvb_compute_budget(&lent, &computed.budget, computed.levels.data(), sizeof(lvb_level), &fault);
    if (status != LVB_OK) refuse(document, link, fault);
    return computed;
}

lvb_cable_loss cable_loss(const Link &link, const Stage &stage) {
    lvb_cable_run run{};
    run.size = sizeof run;
    run.cable_type = stage.entry.cable_type;
    run.frequency_mhz = link.frequency_mhz;
    run.length_m = stage.entry.length_m;
    run.connector_count = stage.entry.connector_count;
    run.connector_loss_db = stage.entry.connector_loss_db;
    if (link.temperature_degc) {
        run.stated = LVB_STATED_TEMPERATURE;
        run.temperature_degc = *link.temperature_degc;
    }
    lvb_cable_table table{};
    if (stage.cable_table) table = lend_cable_table(*stage.cable_table);
    lvb_cable_loss loss{};
    loss.size = sizeof loss;
    lvb_compute_cable_loss(&run, stage.cable_table ? &table : nullptr, &loss, nullptr);
    return loss;
}

} // namespace desk
