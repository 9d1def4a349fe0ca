// Numbers and tables out of the file, with the units of their keys.
#pragma once

#include "checks.hpp"
#include "scenario.hpp"

#include <unordered_map>

namespace desk {

/// Members of an object by key.
using Members = std::unordered_map<std::string, const Value *>;

/// The numbers among the members, one for each field. structure and kind are those of lvb_describe_field.
GivenNumbers numbers_of(const Checks &checks, const Members &members, const std::vector<NumberKey> &keys,
                        std::int32_t structure, std::int32_t kind);

/// A field in the library's unit; 0 where it is not given.
double taken(const GivenNumbers &numbers, std::int32_t field);

/// Throws Refusal where the field is not given; the keys of a kind of thing tell how to write it (0: all keys).
void need_number(const Checks &checks, const Value &owner, const GivenNumbers &numbers,
                 const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind = 0);

/// A field that is given, in the library's unit and within bounds of this program's own; whole_within: a whole number.
double within(const Checks &checks, const GivenNumbers &numbers, std::int32_t field, double low, double high);
std::uint32_t whole_within(const Checks &checks, const GivenNumbers &numbers, std::int32_t field, double low,
                           double high);

/// A whole number within the range that the library has for the field; 0 where it is not given.
std::uint32_t whole(const Checks &checks, const GivenNumbers &numbers, std::int32_t structure, std::int32_t kind,
                    std::int32_t field);

/// Two columns of equal length out of an object. The keys must outlive the table.
Table read_columns(const Checks &checks, const Value &value, const Columns &columns);

/// The same of a table of the scenario, whose columns stand in it or in a file that it names.
Table read_table(const Checks &checks, const Value &value, const Columns &columns);

/// Where the files lie that a scenario's tables name.
std::vector<std::string> table_files(const Document &scenario);

} // namespace desk
