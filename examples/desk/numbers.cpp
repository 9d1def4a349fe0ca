#include "numbers.hpp"

namespace desk {
namespace {

// To the library a zero says "not given" where zero is no possible value. Whoever writes one means something else.
void refuse_stated_zero(const Checks &checks, const Value &value, const NumberKey &key, std::int32_t structure,
                        std::int32_t kind) {
    if (value.number != 0.0) return;
    if (key.field == LVB_FIELD_CONNECTOR_LOSS_DB)
        checks.document().refuse(value, "0 would stand for the usual loss; for no loss leave the connectors out");
    lvb_range range{};
    range.size = sizeof range;
    if (lvb_describe_field(structure, kind, key.field, &range, nullptr) != LVB_OK) return;
    if (range.minimum > 0.0)
        checks.document().refuse(value, "0 is out of range; allowed " + plain(key.from_library(range.minimum)) +
                                            " to " + plain(key.from_library(range.maximum)));
}

// The one column that stands in the table under one of the keys.
Given column(const Checks &checks, const Value &table, const std::vector<const NumberKey *> &keys,
             std::vector<double> &into) {
    Given given;
    std::string ways;
    for (const NumberKey *key : keys) {
        ways += (ways.empty() ? "" : " or ") + std::string(key->name);
        const Value *value = table.find(key->name);
        if (value == nullptr) continue;
        if (given.value != nullptr)
            checks.document().refuse_key(*value, std::string("this column stands here as ") + given.key->name +
                                                     " too; give one of them");
        given = {value, key};
    }
    if (given.value == nullptr) checks.document().refuse(table, ways + " is missing");
    checks.expect(*given.value, Value::Kind::list);
    for (const Value *item : given.value->items) into.push_back(given.key->to_library(checks.number(*item)));
    return given;
}

} // namespace

GivenNumbers numbers_of(const Checks &checks, const Members &members, const std::vector<NumberKey> &keys,
                        std::int32_t structure, std::int32_t kind) {
    GivenNumbers numbers;
    for (const NumberKey &key : keys) {
        const auto member = members.find(key.name);
        if (member == members.end()) continue;
        const Value &value = *member->second;
        checks.number(value);
        const auto [place, fresh] = numbers.insert({key.field, {&value, &key}});
        if (!fresh)
            checks.document().refuse_key(value,
                                         "the same quantity stands on line " +
                                             std::to_string(checks.document().line_of(place->second.value->offset)) +
                                             " as " + place->second.key->name + "; give one of them");
        refuse_stated_zero(checks, value, key, structure, kind);
    }
    return numbers;
}

double taken(const GivenNumbers &numbers, std::int32_t field) {
    const auto given = numbers.find(field);
    return given == numbers.end() ? 0.0 : given->second.key->to_library(given->second.value->number);
}

std::vector<const NumberKey *> keys_of_field(const std::vector<NumberKey> &keys, std::int32_t field,
                                             std::int32_t kind) {
    std::vector<const NumberKey *> found;
    for (const NumberKey &key : keys)
        if (key.field == field && serves(key, kind)) found.push_back(&key);
    return found;
}

Table read_table(const Checks &checks, const Value &value, const std::vector<const NumberKey *> &columns) {
    const std::vector<const NumberKey *> frequencies = keys_of_field(link_keys(), LVB_FIELD_FREQUENCY_MHZ, 0);
    checks.expect(value, Value::Kind::object);
    std::vector<std::string> known = {"source"};
    for (const std::vector<const NumberKey *> *keys : {&frequencies, &columns})
        for (const NumberKey *key : *keys) known.emplace_back(key->name);
    checks.check_keys(value, known, "this table");
    Table table;
    table.value = &value;
    table.origin = checks.text_or_empty(value, "source");
    table.frequency_column = column(checks, value, frequencies, table.frequency_mhz);
    table.value_column = column(checks, value, columns, table.values);
    if (table.frequency_mhz.size() != table.values.size())
        checks.document().refuse(*table.value_column.value, "this column has " + std::to_string(table.values.size()) +
                                                                " rows, the frequencies have " +
                                                                std::to_string(table.frequency_mhz.size()));
    return table;
}

} // namespace desk
