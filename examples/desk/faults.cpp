#include "faults.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace desk {
namespace {

// The table of a stage that a fault names, or null.
const Table *faulty_table(const Stage &stage, std::int32_t structure) {
    switch (structure) {
    case LVB_STRUCT_CABLE_TABLE:
        return stage.cable_table.get();
    case LVB_STRUCT_GAIN_TABLE:
        return stage.gain_table.get();
    case LVB_STRUCT_BODY_TABLE:
        return stage.body_table.get();
    case LVB_STRUCT_AZIMUTH_CUT:
        return stage.pattern ? stage.pattern->azimuth_cut.get() : nullptr;
    case LVB_STRUCT_ELEVATION_CUT:
        return stage.pattern ? stage.pattern->elevation_cut.get() : nullptr;
    default:
        return nullptr;
    }
}

// The part of a link or a stage that a fault names, or null.
const Part *faulty_part(const Link &link, const lvb_fault &fault) {
    if (fault.structure == LVB_STRUCT_NOISE_CONDITIONS) return link.noise ? &*link.noise : nullptr;
    if (fault.stage < 0) return nullptr;
    const Stage &stage = link.stages[static_cast<std::size_t>(fault.stage)];
    if (fault.structure == LVB_STRUCT_PATTERN && stage.pattern) return &*stage.pattern;
    const bool path = fault.structure == LVB_STRUCT_PATH || fault.structure == LVB_STRUCT_EDGE;
    return path && stage.path ? &*stage.path : nullptr;
}

// Where in the file the field stands that a fault names; its value is null where the field is not given.
Given find_given(const Link &link, const lvb_fault &fault) {
    const auto in = [&](const GivenNumbers &numbers) {
        const auto given = numbers.find(fault.field);
        return given == numbers.end() ? Given{} : given->second;
    };
    if (fault.structure == LVB_STRUCT_LINK) return in(link.numbers);
    const Part *part = faulty_part(link, fault);
    if (fault.structure == LVB_STRUCT_NOISE_CONDITIONS) return part == nullptr ? Given{} : in(part->numbers);
    if (fault.stage < 0) return {};
    const Stage &stage = link.stages[static_cast<std::size_t>(fault.stage)];
    if (fault.structure == LVB_STRUCT_STAGE) return in(stage.numbers);
    if (fault.structure == LVB_STRUCT_EDGE && stage.path && fault.row >= 0)
        return in(stage.path->edge_numbers[static_cast<std::size_t>(fault.row)]);
    if (part != nullptr) return in(part->numbers);
    const Table *table = faulty_table(stage, fault.structure);
    if (table == nullptr || fault.row < 0) return {};
    const Given &column = fault.field == table->point_column.key->field ? table->point_column : table->value_column;
    return {column.value->items[static_cast<std::size_t>(fault.row)], column.key};
}

// A converted bound to five digits, rounded to the inner side of the range.
double short_bound(double bound, bool low) {
    if (bound == 0.0) return bound;
    const double step = std::pow(10.0, std::floor(std::log10(std::abs(bound))) - 4.0);
    const double nearest = std::round(bound / step);
    const bool same = std::abs(bound / step - nearest) < 1e-6; // the bound is such a number but for its last bits
    return step * (same ? nearest : low ? std::ceil(bound / step) : std::floor(bound / step));
}

// The allowed range, in the unit of the key that was used.
std::string allowed(const lvb_fault &fault, const NumberKey &key) {
    if (std::isnan(fault.minimum) || std::isnan(fault.maximum)) return "";
    double low = key.from_library(fault.minimum);
    double high = key.from_library(fault.maximum);
    if (low > high) std::swap(low, high);
    const bool converted = key.from_library(1.0) != 1.0 && key.from_library(1.0) != -1.0;
    if (converted) low = short_bound(low, true);
    if (converted) high = short_bound(high, false);
    return "; allowed " + plain(low) + " to " + plain(high);
}

// The number that a fault about order compares with: the far distance, or the limit of the window below this one.
Given neighbour(const Link &link, const lvb_fault &fault) {
    if (fault.structure == LVB_STRUCT_LINK) return link.numbers.at(LVB_FIELD_FAR_DISTANCE_M);
    const GivenNumbers &numbers = link.stages[static_cast<std::size_t>(fault.stage)].numbers;
    Given found;
    for (const std::int32_t field : {LVB_FIELD_FLOOR_DBM, LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM})
        if (const auto given = numbers.find(field); given != numbers.end() && field < fault.field)
            found = given->second;
    return found;
}

// "-20 lies below floor_dbm 95 (line 6)", behind the path of the first
std::string tell_order(const Document &document, const Link &link, const lvb_fault &fault, const Given &given) {
    const Given other = neighbour(link, fault);
    const bool distances = fault.structure == LVB_STRUCT_LINK;
    std::string words = plain(given.value->number) + (distances ? " lies beyond " : " lies below ") + other.key->name +
                        " " + plain(other.value->number) + " (line " +
                        std::to_string(document.line_of(other.value->offset)) + ")";
    const bool positive = given.value->number > 0.0 || other.value->number > 0.0;
    if (!distances && positive) words += "; is a minus sign missing?";
    return words;
}

// How a cable is given, by every key that says so.
std::string cable_keys_of(const Stage &stage) {
    std::string names;
    const auto add = [&](bool given, const char *name) {
        if (given) names += (names.empty() ? "" : " and ") + std::string(name);
    };
    add(!stage.cable_name.empty(), "cable_type");
    add(stage.cable_table != nullptr, "attenuation_table");
    add(stage.gain_table != nullptr, "gain_table");
    if (const auto gain = stage.numbers.find(LVB_FIELD_GAIN_DB); gain != stage.numbers.end())
        add(true, gain->second.key->name);
    return names;
}

// The place of a stage in the chain; empty for any other fault.
std::string tell_chain(const lvb_fault &fault, const Stage &stage) {
    const std::string kind = lvb_kind_name(stage.entry.kind);
    const std::string with_article =
        (std::string_view("aeiou").find(kind[0]) != std::string::npos ? "an " : "a ") + kind;
    switch (fault.status) {
    case LVB_E_NO_SOURCE:
        return "the chain must begin with a source, not with " + with_article;
    case LVB_E_SECOND_SOURCE:
        return "a chain has only one source";
    case LVB_E_NO_TRANSMIT_ANTENNA:
        return "the air needs an antenna before it";
    case LVB_E_NO_RECEIVE_ANTENNA:
        return "an antenna must follow the air" + (kind == "air" ? "" : " before " + with_article);
    case LVB_E_SECOND_AIR:
        return "a chain has only one air";
    case LVB_E_ANTENNA_OUT_OF_PLACE:
        return "an antenna stands before the air and one after it, and no other";
    case LVB_E_AFTER_RECEIVER:
        return "nothing follows the receiver";
    default:
        return "";
    }
}

// Between the two antennas stands what only a cable carries.
std::string tell_stage_in_air(const Link &link, const lvb_fault &fault) {
    const auto end = link.stages.begin() + fault.stage;
    const bool after_air =
        std::any_of(link.stages.begin(), end, [](const Stage &stage) { return stage.entry.kind == LVB_KIND_AIR; });
    return std::string(after_air ? "an antenna must follow the air first" : "the air must follow the antenna first") +
           "; only air and allowances stand between the two antennas";
}

std::string tell_missing(const lvb_fault &fault) {
    if (fault.structure == LVB_STRUCT_PATTERN && fault.field == LVB_FIELD_GAIN_DBI)
        return "gain_dbi, gain_dbd or beam_width_deg is missing";
    if (fault.structure != LVB_STRUCT_STAGE)
        if (const std::vector<NumberKey> *keys = keys_of_structure(fault.structure)) {
            const std::string ways = ways_to_write(*keys, fault.field, 0);
            return (ways.empty() ? lvb_field_name(fault.field) : ways) + " is missing";
        }
    if (fault.field == LVB_FIELD_CABLE_TYPE) return "cable_type, attenuation_table, gain_table or loss_db is missing";
    return ways_to_write(stage_keys(), fault.field, 0) + " is missing";
}

std::string tell(const Document &document, const Link &link, const lvb_fault &fault, const Given &given) {
    const Stage *stage = fault.stage < 0 ? nullptr : &link.stages[static_cast<std::size_t>(fault.stage)];
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
        if (given.value != nullptr) return tell_order(document, link, fault, given);
        break;
    case LVB_E_TABLE_UNSORTED:
        if (given.value != nullptr)
            return written + " is lower than the row before it; " +
                   (given.key->field == LVB_FIELD_FREQUENCY_MHZ ? "frequencies" : "angles") + " must rise";
        break;
    case LVB_E_TABLE_DUPLICATE:
        if (given.value != nullptr && fault.row == 0)
            return written + " is the last row's angle again, a full turn later; a circle ends before its beginning";
        if (given.value != nullptr) return written + " stands in the row before it too";
        break;
    case LVB_E_TABLE_TOO_STEEP:
        if (given.value != nullptr && fault.structure != LVB_STRUCT_CABLE_TABLE)
            return written + " differs by more than 100 dB from the " +
                   (fault.row == 0 ? "last row" : "row before it") + allowed(fault, *given.key);
        if (given.value != nullptr) return written + " is too far from the row before it" + allowed(fault, *given.key);
        break;
    case LVB_E_TABLE_EMPTY:
        return "this table has no rows";
    case LVB_E_OUTSIDE_TABLE:
        return "the link's " + plain(fault.value) + " MHz lie outside this table; it serves " + plain(fault.minimum) +
               " to " + plain(fault.maximum) + " MHz";
    case LVB_E_CONFLICT:
        if (fault.structure == LVB_STRUCT_NOISE_CONDITIONS)
            return "the antenna's noise is given by antenna_temperature_k or by external_noise_figure_db; give one of "
                   "them";
        return "a cable is given by one of cable_type, attenuation_table, gain_table and loss_db or gain_db" +
               (stage == nullptr ? "" : "; here stand " + cable_keys_of(*stage));
    case LVB_E_STAGE_IN_AIR:
        return tell_stage_in_air(link, fault);
    default:
        break;
    }
    if (stage != nullptr)
        if (const std::string words = tell_chain(fault, *stage); !words.empty()) return words;
    return fault_words(fault);
}

} // namespace

std::string fault_words(const lvb_fault &fault) {
    char text[256];
    lvb_fault_text(&fault, text, sizeof text);
    std::string words = text;
    if (words.ends_with('.')) words.pop_back();
    // "needs[0].margin_db is": which struct of the library it is tells a reader of the scenario nothing.
    const std::size_t dot = words.rfind('.', words.find(' '));
    if (dot != std::string::npos) words.erase(0, dot + 1);
    return words;
}

void refuse_fault(const Document &document, const Link &link, const lvb_fault &fault) {
    const Given given = find_given(link, fault);
    std::string words = tell(document, link, fault, given);
    const Stage *stage = fault.stage < 0 ? nullptr : &link.stages[static_cast<std::size_t>(fault.stage)];
    const Value *at = given.value;
    const Document *where = &document;
    if (const Table *table = stage == nullptr ? nullptr : faulty_table(*stage, fault.structure)) {
        if (at != nullptr && table->file != nullptr) where = table->file.get();
        if (at == nullptr) at = table->value;
    }
    if (const Part *part = faulty_part(link, fault); part != nullptr && at == nullptr) at = part->value;
    const bool link_fault = fault.structure == LVB_STRUCT_LINK;
    if (at == nullptr && link_fault && fault.field == LVB_FIELD_STAGE_COUNT) at = link.value->find("stages");
    if (at == nullptr) at = stage != nullptr && !link_fault ? stage->value : link.value;
    // A fault in gear or in a table's file is told where it stands; the link tells whose stage it is.
    const bool in_gear = stage != nullptr && !link_fault && at->path().rfind("gear", 0) == 0;
    if (in_gear || where != &document) words += " (used in " + stage->value->path() + ")";
    words += "; in link " + in_quotes(link.name);
    if (stage != nullptr && !link_fault) words += ", " + in_quotes(stage->label);
    where->refuse(*at, words);
}

void refuse_fault(const Document &document, const Neighbours &pair, const lvb_fault &fault) {
    const auto found = pair.numbers.find(fault.field);
    const Given given = found == pair.numbers.end() ? Given{} : found->second;
    const std::string ways = ways_to_write(neighbour_keys(), fault.field, 0);
    if (fault.status == LVB_E_CONFLICT && fault.field == LVB_FIELD_COUPLING_LOSS_DB)
        document.refuse(*pair.value, "the coupling is computed from separation_m and the gains, or measured as "
                                     "coupling_loss_db; give one of them");
    if (fault.status == LVB_E_MISSING && given.value == nullptr && !ways.empty())
        document.refuse(*pair.value,
                        ways + " is missing" +
                            (fault.field == LVB_FIELD_SEPARATION_M ? "; or coupling_loss_db as measured" : ""));
    const bool range = fault.status == LVB_E_BELOW_RANGE || fault.status == LVB_E_ABOVE_RANGE;
    if (given.value != nullptr && range)
        document.refuse(*given.value, plain(given.value->number) + " is out of range" + allowed(fault, *given.key));
    document.refuse(given.value == nullptr ? *pair.value : *given.value, fault_words(fault));
}

} // namespace desk
