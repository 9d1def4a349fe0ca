#include "table_file.hpp"

#include "read_csv.hpp"

#include <filesystem>

namespace desk {
namespace {

constexpr std::size_t largest = 16u * 1024u * 1024u; // bytes

void check_rising(const Document &document, const Value &points) {
    const char *what = points.key.starts_with("frequency") ? "frequencies" : "angles";
    for (std::size_t i = 1; i < points.items.size(); ++i) {
        const Value &value = *points.items[i];
        const double before = points.items[i - 1]->number;
        if (value.number < before)
            document.refuse(value, plain(value.number) + " is lower than the row before it; " + what + " must rise");
        if (value.number == before) document.refuse(value, plain(value.number) + " stands in the row before it too");
    }
}

} // namespace

std::vector<std::string> column_names(const Columns &columns) {
    std::vector<std::string> names;
    for (const NumberKey *key : columns.points) names.emplace_back(key->name);
    for (const NumberKey *key : columns.values) names.emplace_back(key->name);
    return names;
}

bool is_touchstone(const std::string &file) {
    const std::string name = lower_case(file);
    const bool nameable = name.find('\0') == std::string::npos; // the system would see only the part before it
    if (nameable && (name.ends_with(".ts") || ports_in_name(file) > 0)) return true;
    if (nameable && name.ends_with(".csv")) return false;
    throw Unreadable(in_quotes(std::filesystem::path(file).filename().string()) +
                     " is no name of a table: it must end in .csv, .ts, or .s2p with the number of ports");
}

TableFile read_table_file(const std::string &file, const Columns &columns, const Parameter &parameter) {
    const bool touchstone = is_touchstone(file);
    Document document = Document::load(file, largest);
    std::string origin = std::filesystem::path(file).filename().string();
    if (touchstone) {
        const std::string resistance = plant_touchstone(document, parameter);
        origin += ", " + name_of(parameter) + ", " + resistance;
    } else {
        plant_csv(document, column_names(columns));
    }
    for (const NumberKey *key : columns.points)
        if (const Value *points = document.root().find(key->name)) check_rising(document, *points);
    return {std::make_shared<const Document>(std::move(document)), origin};
}

} // namespace desk
