#include "decide_common.hpp"

#include "json_tree.hpp"

#include <cmath>

namespace desk {

Book::Book(const std::string &file) : document(read_json(file)), scenario(open_scenario(document)) {}

const Link &link_named(const Scenario &scenario, const std::string &name) {
    return named(scenario.links, name, "link");
}

std::string short_number(double value) { return std::isfinite(value) ? format("%.6g", value + 0.0) : plain(value); }

std::string page_title(const char *command, const std::string &what, const Book &book) {
    return wrap(ascii(std::string(command) + " " + what + ", of " + book.scenario.production + " (" +
                      book.document.file() + ")"),
                page_columns, "", "  ") +
           std::string(page_columns, '-') + "\n";
}

std::string table_row(const std::string &name, const std::vector<std::string> &columns, const std::string &rest) {
    constexpr std::size_t name_columns = 26;
    std::string out = format("  %-*s", static_cast<int>(name_columns), shorten(ascii(name), name_columns).c_str());
    for (const std::string &column : columns) out += format(" %10s", column.c_str());
    if (!rest.empty()) out += "  " + rest;
    out.erase(out.find_last_not_of(' ') + 1);
    return out + "\n";
}

Json json_head(const char *command, const Book &book, const Link *link) {
    Json out;
    out["version"] = lvb_version_text();
    out["command"] = command;
    out["scenario"] = book.document.file();
    out["production"] = book.scenario.production;
    if (link != nullptr) out["link"] = link->name;
    return out;
}

std::string json_text(Json answer, const Links &links) {
    answer["cautions"] = cautions(links);
    return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace desk
