// The command lines of solve, rank, compare, choose, locate and sure.
#pragma once

#include "decide.hpp"

#include <CLI/CLI.hpp>

namespace desk {

class DecideCommands {
  public:
    void declare(CLI::App &app);
    /// The answer where one of these commands was asked; nothing otherwise. Throws Refusal.
    std::optional<Outcome> answer();

  private:
    CLI::App *link_command(CLI::App &app, const char *name, const char *help, Asked &question);

    CLI::App *solve_ = nullptr;
    CLI::App *rank_ = nullptr;
    CLI::App *compare_ = nullptr;
    CLI::App *choose_ = nullptr;
    CLI::App *locate_ = nullptr;
    CLI::App *sure_ = nullptr;
    SolveQuestion solve_question_;
    Asked rank_question_;
    CompareQuestion compare_question_;
    ChooseQuestion choose_question_;
    LocateQuestion locate_question_;
    SureQuestion sure_question_;
    std::map<std::string, double> goals_; ///< where CLI11 puts them
};

} // namespace desk
