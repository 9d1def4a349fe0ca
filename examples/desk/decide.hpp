// Decisions about the links of a scenario: solve, rank, compare, choose, locate, sure. Each takes what the person asked
// and gives the page or JSON; each throws Refusal.
#pragma once

#include "outcome.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace desk {

/// A link of a scenario.
struct Asked {
    std::string file;
    std::string link;
    bool as_json = false;
};

struct SolveQuestion : Asked {
    std::string unknown;                 ///< the key as a scenario writes it
    std::string stage;                   ///< empty for a key of the link
    std::map<std::string, double> goals; ///< what is wanted, by the name of its option
    std::string tolerances;              ///< empty, "worst" or "rss"
};

struct CompareQuestion : Asked {
    std::string other;      ///< the second link
    std::string other_file; ///< its scenario; empty for the same
};

struct ChooseQuestion {
    std::string file;
    std::vector<std::string> links; ///< empty for all that have a stage to choose
    std::uint32_t sets = 3;
    std::uint64_t step_limit = 0; ///< 0: the library's
    bool as_json = false;
};

struct LocateQuestion : Asked {
    std::vector<std::string> readings; ///< STAGE=LEVEL or STAGE=LEVEL@METRES; empty: those of the scenario
    std::optional<double> uncertainty_db;
};

struct SureQuestion : Asked {
    std::uint64_t trials = 100000;
    std::uint64_t seed = 1;
    std::vector<double> quantiles_percent;
    std::optional<double> at_least_percent; ///< of trials inside the window, for the exit code
};

/// The options of solve that name what is wanted, with their help.
const std::vector<std::pair<std::string, std::string>> &solve_goals();

Outcome answer_solve(const SolveQuestion &question);
Outcome answer_rank(const Asked &question);
Outcome answer_compare(const CompareQuestion &question);
Outcome answer_choose(const ChooseQuestion &question);
Outcome answer_locate(const LocateQuestion &question);
Outcome answer_sure(const SureQuestion &question);

} // namespace desk
