#include "table_file.hpp"

#include "read_csv.hpp"

#include <filesystem>

namespace desk {
namespace {

constexpr std::size_t largest = 16u * 1024u * 1024u; // bytes

void check_rising(const Document &document, const Value &frequencies) {
    for (std::size_t i = 1; i < frequencies.items.size(); ++i) {
        const Value &value = *frequencies.items[i];
        const double before = frequencies.items[i - 1]->number;
        if (value.number < before)
            document.refuse(value, plain(value.number) + " is lower than the row before it; frequencies must rise");
        if (value.number == before) document.refuse(value, plain(value.number) + " stands in the row before it too");
    }
}

} // namespace

std::vector<std::string> column_names(const std::vector<const NumberKey *> &columns) {
    std::vector<std::string> names;
    for (const NumberKey &key : frequency_keys()) names.emplace_back(key.name);
    for (const NumberKey *key : columns) names.emplace_back(key->name);
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

TableFile read_table_file(const std::string &file, const std::vector<const NumberKey *> &columns,
                          const Parameter &parameter) {
    const bool touchstone = is_touchstone(file);
    Document document = Document::load(file, largest);
    std::string origin = std::filesystem::path(file).filename().string();
    if (touchstone) {
        const std::string resistance = plant_touchstone(document, parameter);
        origin += ", " + name_of(parameter) + ", " + resistance;
    } else {
        plant_csv(document, column_names(columns));
    }
    for (const NumberKey &key : frequency_keys())
        if (const Value *frequencies = document.root().find(key.name)) check_rising(document, *frequencies);
    return {std::make_shared<const Document>(std::move(document)), origin};
}

} // namespace desk
