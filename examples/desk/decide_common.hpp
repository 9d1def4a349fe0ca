// What the commands that decide have in common: reading their scenario, and the frame of their answers.
#pragma once

#include "compute.hpp"
#include "decide.hpp"
#include "faults.hpp"
#include "print_budget.hpp"

#include <nlohmann/json.hpp>

namespace desk {

/// Keeps the order in which fields are written. A number that is not finite becomes null.
using Json = nlohmann::ordered_json;

/// A scenario with the file that it points into.
struct Book {
    explicit Book(const std::string &file);
    Book(const Book &) = delete;
    Document document;
    Scenario scenario;
};

/// The link of that name; throws Refusal.
const Link &link_named(const Scenario &scenario, const std::string &name);

/// A figure as a person notes it, up to six significant digits.
std::string short_number(double value);

/// "SOLVE  Monitors A, 534.2 MHz, of Nine Tin Herons (file)" over a line.
std::string page_title(const char *command, const std::string &what, const Book &book);
/// A row of a table: a name, then the columns, each right-aligned in ten characters, then free words.
std::string table_row(const std::string &name, const std::vector<std::string> &columns, const std::string &rest = "");

/// version, command, scenario, production and, where there is one, link.
Json json_head(const char *command, const Book &book, const Link *link);
/// The whole answer, with the cautions.
std::string json_text(Json answer, const Links &links);

} // namespace desk
