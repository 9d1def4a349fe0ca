#include "numbers.hpp"

#include "table_file.hpp"

#include <cmath>
#include <filesystem>

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

std::uint32_t whole(const Checks &checks, const GivenNumbers &numbers, std::int32_t structure, std::int32_t kind,
                    std::int32_t field) {
    const auto given = numbers.find(field);
    if (given == numbers.end()) return 0;
    const Value &value = *given->second.value;
    lvb_range range{};
    range.size = sizeof range;
    lvb_describe_field(structure, kind, field, &range, nullptr);
    if (value.number >= range.minimum && value.number <= range.maximum && value.number == std::floor(value.number))
        return static_cast<std::uint32_t>(value.number);
    checks.document().refuse(value, plain(value.number) + " is no number of " + given->second.key->name +
                                        "; allowed are whole numbers from " + plain(range.minimum) + " to " +
                                        plain(range.maximum));
}

void need_number(const Checks &checks, const Value &owner, const GivenNumbers &numbers,
                 const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind) {
    if (!numbers.contains(field)) checks.document().refuse(owner, ways_to_write(keys, field, kind) + " is missing");
}

double within(const Checks &checks, const GivenNumbers &numbers, std::int32_t field, double low, double high) {
    const Given &given = numbers.at(field);
    const double number = taken(numbers, field);
    if (number >= low && number <= high) return number;
    checks.document().refuse(*given.value, plain(given.value->number) + " is out of range; allowed " +
                                               plain(given.key->from_library(low)) + " to " +
                                               plain(given.key->from_library(high)));
}

std::uint32_t whole_within(const Checks &checks, const GivenNumbers &numbers, std::int32_t field, double low,
                           double high) {
    const double number = within(checks, numbers, field, low, high);
    if (number != std::floor(number))
        checks.document().refuse(*numbers.at(field).value, plain(number) + " is not a whole number");
    return static_cast<std::uint32_t>(number);
}

Table read_columns(const Checks &checks, const Value &value, const Columns &columns) {
    Table table;
    table.value = &value;
    table.point_column = column(checks, value, columns.points, table.points);
    table.value_column = column(checks, value, columns.values, table.values);
    if (table.points.size() == table.values.size()) return table;
    std::string points(quantity_of(table.point_column.key->name));
    points = points == "frequency" ? "frequencies" : points == "facing" ? "facings" : points + "s";
    checks.document().refuse(*table.value_column.value, "this column has " + std::to_string(table.values.size()) +
                                                            " rows, the " + points + " have " +
                                                            std::to_string(table.points.size()));
}

namespace {

// Which parameter of a Touchstone file the table takes. A reflection is no gain of a stage.
Parameter parameter_of(const Checks &checks, const Value &table, bool touchstone) {
    const Value *value = table.find("parameter");
    if (value == nullptr) return {};
    if (!touchstone) checks.document().refuse_key(*value, "only a Touchstone file has parameters");
    const std::optional<Parameter> parameter = parameter_in(checks.text(*value));
    if (!parameter)
        checks.document().refuse(*value, in_quotes(value->text) +
                                             " is no parameter; write s21 for the way from port 1 to "
                                             "port 2, s12_3 where a port has two digits");
    if (parameter->to == parameter->from)
        checks.document().refuse(*value, name_of(*parameter) +
                                             " is a reflection; a stage's gain leads from one port to another");
    return *parameter;
}

// A table's file, named from the scenario's folder.
std::string path_from(const Document &scenario, const std::string &file) {
    return (std::filesystem::path(scenario.file()).parent_path() / file).string();
}

void collect_files(const Document &scenario, const Value &value, std::vector<std::string> &files) {
    if (const Value *file = value.find("file"); file != nullptr && file->kind == Value::Kind::text)
        files.push_back(path_from(scenario, file->text));
    for (const Value *item : value.items) collect_files(scenario, *item, files);
}

// A table whose columns stand in a file beside the scenario.
Table read_table_in_file(const Checks &checks, const Value &value, const Columns &columns) {
    const Document &scenario = checks.document();
    for (const std::string &name : column_names(columns))
        if (const Value *column = value.find(name))
            scenario.refuse_key(*column, "the columns of this table stand in its file; give one of them");
    checks.check_keys(value, {"file", "parameter", "source"}, "a table that stands in a file");
    const Value &file = *value.find("file");
    const std::string path = path_from(scenario, checks.text(file));
    TableFile read;
    try {
        const bool touchstone = is_touchstone(path);
        const Parameter parameter = parameter_of(checks, value, touchstone);
        if (touchstone && columns.points.front()->field != LVB_FIELD_FREQUENCY_MHZ)
            scenario.refuse(file, "a Touchstone file holds gains over frequency; this table takes " +
                                      std::string(columns.points.front()->name));
        if (touchstone && std::string_view(columns.values.front()->name) != "gain_db")
            scenario.refuse(file, "a Touchstone file holds gains in dB; this table takes " +
                                      std::string(columns.values.front()->name));
        read = read_table_file(path, columns, parameter);
    } catch (const Unreadable &why) {
        scenario.refuse(file, why.what());
    }
    Table table = read_columns(Checks(*read.document), read.document->root(), columns);
    table.file = read.document;
    const std::string source = checks.text_or_empty(value, "source");
    table.origin = source.empty() ? read.origin : source + " (" + read.origin + ")";
    return table;
}

} // namespace

Table read_table(const Checks &checks, const Value &value, const Columns &columns) {
    checks.expect(value, Value::Kind::object);
    Table table;
    if (value.find("file") != nullptr) {
        table = read_table_in_file(checks, value, columns);
    } else {
        std::vector<std::string> known = column_names(columns);
        known.insert(known.end(), {"file", "source"});
        checks.check_keys(value, known, "this table");
        table = read_columns(checks, value, columns);
        table.origin = checks.text_or_empty(value, "source");
    }
    table.value = &value;
    return table;
}

std::vector<std::string> table_files(const Document &scenario) {
    std::vector<std::string> files;
    collect_files(scenario, scenario.root(), files);
    return files;
}

} // namespace desk
