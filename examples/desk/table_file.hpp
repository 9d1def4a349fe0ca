// Tables that stand in files of their own.
#pragma once

#include "keys.hpp"
#include "read_touchstone.hpp"

#include <memory>

namespace desk {

/// A file as a tree: an object with a list for each column, named as in a scenario's table.
struct TableFile {
    std::shared_ptr<const Document> document;
    std::string origin; ///< "combiner.s2p, s21, 50 ohm"
};

/// The names of all of these columns.
std::vector<std::string> column_names(const Columns &columns);

/// Whether a name is that of a Touchstone file (.ts or .s1p to .s99p) rather than of a CSV file; throws Unreadable
/// where it is neither.
bool is_touchstone(const std::string &file);

/// Reads a CSV file with the columns of these keys, or one parameter of a Touchstone file; throws Refusal.
TableFile read_table_file(const std::string &file, const Columns &columns, const Parameter &parameter);

} // namespace desk
