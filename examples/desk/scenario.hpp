// A scenario as the program keeps it: what the library gets, and beside it where each number stands in the file.
#pragma once

#include "document.hpp"
#include "keys.hpp"

#include <memory>
#include <optional>

namespace desk {

/// A table of values over frequency, in the library's units.
struct Table {
    const Value *value = nullptr;         ///< the table in the scenario
    std::shared_ptr<const Document> file; ///< where its columns stand; null where that is the scenario itself
    std::vector<double> frequency_mhz;
    std::vector<double> values;
    Given frequency_column;
    Given value_column;
    std::string origin; ///< where the person has it from
};

struct Stage {
    lvb_stage entry{}; ///< without its pointers, which are set when the library is called
    std::string label;
    std::string gear; ///< the gear's name; empty for a stage written in place
    std::string note;
    std::string cable_name;
    const Value *value = nullptr; ///< the stage in the file
    GivenNumbers numbers;
    std::shared_ptr<const Table> gain_table;  ///< null where there is none
    std::shared_ptr<const Table> cable_table; ///< null where there is none
};

struct Link {
    std::string name;
    std::string direction; ///< "outbound", "inbound" or empty
    std::string note;
    const Value *value = nullptr;
    double frequency_mhz = 0.0;
    double far_distance_m = 0.0;
    double near_distance_m = 0.0;
    std::optional<double> temperature_degc;
    GivenNumbers numbers;
    std::vector<Stage> stages;
};

struct Scenario {
    std::string production;
    std::string note;
    std::vector<Link> links;
};

/// Takes a scenario out of a document; throws Refusal at the first thing that is wrong. The scenario points into the
/// document.
Scenario read_scenario(const Document &document);

} // namespace desk
