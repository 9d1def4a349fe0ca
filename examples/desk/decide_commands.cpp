#include "decide_commands.hpp"

#include "text.hpp"

#include <charconv>

namespace desk {
namespace {

// CLI11 itself would take -1 for the greatest number that there is.
std::string whole_number(const std::string &text) {
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error == std::errc() && end == text.data() + text.size()) return "";
    return in_quotes(text) + " is no whole number from 0 to 18446744073709551615";
}

} // namespace

CLI::App *DecideCommands::link_command(CLI::App &app, const char *name, const char *help, Asked &question) {
    CLI::App *command = app.add_subcommand(name, help);
    command->add_option("scenario", question.file, "scenario file (JSON)")->required();
    command->add_option("link", question.link, "name of the link (left out: tells which there are)");
    command->add_flag("--json", question.as_json, "print JSON");
    return command;
}

void DecideCommands::declare(CLI::App &app) {
    solve_ = link_command(app, "solve", "find one number of a link for a wanted margin, headroom, level or e.i.r.p.",
                          solve_question_);
    solve_->add_option("--unknown", solve_question_.unknown, "key of the number as a scenario writes it: length_m");
    solve_->add_option("--stage", solve_question_.stage,
                       "stage that the key belongs to: its label, or its number from 1");
    for (const auto &[name, help] : solve_goals()) solve_->add_option("--" + name, goals_[name], help);
    solve_->add_option("--tolerances", solve_question_.tolerances, "count tolerances against you: none, worst, rss");

    solve_->footer(exit_codes("the number was found, and the link with it holds", "it was not found, or the link "
                                                                                  "does not hold with it"));

    rank_ = link_command(app, "rank", "tell what matters in a link, what helps most and what to measure next",
                         rank_question_);

    compare_ = link_command(app, "compare", "set a second link beside a link, stage by stage", compare_question_);
    compare_->add_option("other", compare_question_.other, "name of the second link");
    compare_->add_option("--in", compare_question_.other_file,
                         "scenario file of the second link, where that is another");

    choose_ = app.add_subcommand("choose", "choose the cheapest gear from the scenario's stock");
    choose_->footer(exit_codes("there are such sets, and every printed one holds", "there is none, or a printed one "
                                                                                   "does not hold"));
    choose_->add_option("scenario", choose_question_.file, "scenario file (JSON)")->required();
    choose_->add_option("links", choose_question_.links, "names of the links (left out: all with something to choose)");
    choose_->add_option("--sets", choose_question_.sets, "how many sets to print, the cheapest first (3)")
        ->check(whole_number);
    choose_->add_option("--steps", choose_question_.step_limit, "stop the search after so many steps")
        ->check(whole_number);
    choose_->add_flag("--json", choose_question_.as_json, "print JSON");

    locate_ = link_command(app, "locate", "find the stage with a fault from levels measured along the chain",
                           locate_question_);
    locate_->footer(exit_codes("the readings fit a healthy chain", "they do not"));
    locate_->add_option("readings", locate_question_.readings,
                        "STAGE=LEVEL in dBm after that stage, or STAGE=LEVEL@METRES over the air (left out: those of "
                        "the scenario)");
    locate_->add_option("--uncertainty", locate_question_.uncertainty_db, "standard uncertainty of a reading in dB");

    sure_ = link_command(app, "sure", "draw tolerances, shadowing and fading many times over", sure_question_);
    sure_->footer(exit_codes("answered", "fewer percent lie inside than --at-least asks for"));
    sure_->add_option("--trials", sure_question_.trials, "how many times (100000)")->check(whole_number);
    sure_->add_option("--seed", sure_question_.seed, "number that the draws begin from (1)")->check(whole_number);
    sure_->add_option("--quantiles", sure_question_.quantiles_percent, "percents of the trials (1 10 50 90 99)");
    sure_->add_option("--at-least", sure_question_.at_least_percent,
                      "exit with 1 where fewer percent lie inside the window");
}

std::optional<Outcome> DecideCommands::answer() {
    if (solve_->parsed()) {
        for (const auto &[name, value] : goals_)
            if (solve_->count("--" + name) > 0) solve_question_.goals[name] = value;
        return answer_solve(solve_question_);
    }
    if (rank_->parsed()) return answer_rank(rank_question_);
    if (compare_->parsed()) return answer_compare(compare_question_);
    if (choose_->parsed()) return answer_choose(choose_question_);
    if (locate_->parsed()) return answer_locate(locate_question_);
    if (sure_->parsed()) return answer_sure(sure_question_);
    return std::nullopt;
}

} // namespace desk
