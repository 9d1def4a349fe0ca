// Tables in CSV files (RFC 4180, with comments): a header that names the columns as a table of the scenario does, and a
// row of numbers for each frequency.
#pragma once

#include "document.hpp"

namespace desk {

/// Plants the columns, each a list under its name; throws Refusal for what is no such table. A column `note` is for
/// people.
void plant_csv(Document &document, const std::vector<std::string> &known);

} // namespace desk
