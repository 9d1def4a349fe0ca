// Computes what the reference files state, through the public header only, and judges it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reference/reader.hpp"

namespace reference {

enum class Verdict {
    agrees,            ///< within the tolerance
    disagrees_as_said, ///< differs from its source by the stated amount
    memory_only,       ///< known from memory: whatever it says is not counted
    fails
};

/// One line of the table of evidence.
struct Row {
    const Case *from = nullptr;
    const Check *check = nullptr;
    Verdict verdict = Verdict::fails;
    double value = 0.0;      // what levelbook gives
    double difference = 0.0; // less the printed value
    double tolerance = 0.0;  // in the unit of the printed value
    std::string inputs;
    std::string message; // what a person should know of a failure or of a row from memory
};

std::vector<Row> judge(const Case &one);

/// Results that a set-up offers to expressions: number of arguments, or -1 where there is none of that name.
int result_arity(SetUp::Kind kind, std::string_view name);
bool is_cable_field(std::string_view name);
bool is_link_field(std::string_view name);
bool is_stage_field(std::string_view name);
bool is_coaxial_field(std::string_view name);
bool is_neighbours_field(std::string_view name);
bool is_path_field(std::string_view name);
bool is_rule_field(std::string_view name);
/// Whether a published limit of the library has this citation.
bool is_rule(std::string_view citation);
/// LVB_PATH_ of a model's name, or -1.
int path_model(std::string_view name);

/// How well a table predicts a row of its own that is left out: one entry for each row between two others.
struct LeftOut {
    std::string table;
    double frequency_mhz;
    double below_mhz; // the neighbours that remain
    double above_mhz;
    double printed_db_per_100m;
    double percent; // predicted less printed
};
std::vector<LeftOut> leave_one_out(const Table &table);
/// The built-in catalogue as tables.
std::vector<Table> catalogue();

} // namespace reference
