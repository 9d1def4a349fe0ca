// How sure a link is: its tolerances, shadowing and fading drawn many times over.
#include "decide_common.hpp"

#include "faults.hpp"
#include "print_budget.hpp"
#include "tuning.hpp"
#include "verdict.hpp"

#include <cmath>

namespace desk {
namespace {

// What moves the level at the far end beside the tolerances.
struct Moves {
    std::int32_t fading = LVB_FADING_NONE;
    double rice_factor_db = 0.0;
    double nakagami_shape = 0.0;
    double shadowing_db = 0.0;
    bool shadowing_of_path = false;
};

Moves moves_of(const Link &link, const Computed &computed) {
    Moves moves;
    if (link.fading) {
        switch (link.fading->model) {
        case Fading::Model::rice:
            moves.fading = LVB_FADING_RICE;
            moves.rice_factor_db = link.fading->parameter;
            break;
        case Fading::Model::nakagami:
            moves.fading = LVB_FADING_NAKAGAMI;
            moves.nakagami_shape = link.fading->parameter;
            break;
        case Fading::Model::log_normal:
            moves.shadowing_db = link.fading->parameter;
            break;
        case Fading::Model::suzuki:
            moves.fading = LVB_FADING_RAYLEIGH;
            moves.shadowing_db = link.fading->parameter;
            break;
        default:
            moves.fading = LVB_FADING_RAYLEIGH;
        }
    }
    // Where the fading says nothing of shadowing, the path's own standard deviation is what is known of it.
    if (moves.shadowing_db == 0.0 && computed.path && computed.path->far.standard_deviation_db > 0.0) {
        moves.shadowing_db = computed.path->far.standard_deviation_db;
        moves.shadowing_of_path = true;
    }
    return moves;
}

struct Drawn {
    Moves moves;
    lvb_sureness sureness{};
    std::vector<lvb_quantile> far;
    std::vector<lvb_quantile> near;
};

std::vector<double> probabilities_of(const SureQuestion &question) {
    const std::vector<double> usual = {1.0, 10.0, 50.0, 90.0, 99.0};
    const std::vector<double> &percents = question.quantiles_percent.empty() ? usual : question.quantiles_percent;
    for (const double percent : percents)
        if (!(percent >= 0.0 && percent <= 100.0))
            throw Refusal("--quantiles takes percents from 0 to 100, not " + plain(percent));
    return percents;
}

std::vector<lvb_quantile> quantiles(std::vector<double> &levels, const std::vector<double> &percents) {
    std::vector<lvb_quantile> asked;
    for (const double percent : percents) asked.push_back({percent / 100.0, 0.0, 0.0});
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_quantiles(levels.data(), levels.size(), asked.data(), static_cast<std::uint32_t>(asked.size()),
                              sizeof asked[0], &fault) != LVB_OK)
        throw Refusal(fault_words(fault));
    if (levels.size() == 1) // one level tells nothing of how far others lie
        for (lvb_quantile &quantile : asked) quantile.error_db = std::nan("");
    return asked;
}

Drawn draw(const Book &book, const Link &link, const SureQuestion &question) {
    const std::vector<double> percents = probabilities_of(question);
    const Computed computed = compute(book.document, link);
    const std::unique_ptr<Lent> lent = lend(book.document, link);
    std::vector<lvb_spread> spreads;
    for (const Stage &stage : link.stages) spreads.push_back(stage.spread);
    std::vector<double> far(question.trials);
    std::vector<double> near(question.trials);
    Drawn drawn;
    drawn.moves = moves_of(link, computed);
    lvb_trials trials = sized<lvb_trials>();
    trials.instructions = lvb_best_instructions();
    trials.spread_count = static_cast<std::uint32_t>(spreads.size());
    trials.spread_size = sizeof(lvb_spread);
    trials.fading = drawn.moves.fading;
    trials.link = &lent->link();
    trials.spreads = spreads.data();
    trials.rice_factor_db = drawn.moves.rice_factor_db;
    trials.nakagami_shape = drawn.moves.nakagami_shape;
    trials.shadowing_db = drawn.moves.shadowing_db;
    trials.seed = question.seed;
    trials.trial_count = question.trials;
    trials.far_dbm = far.data();
    trials.near_dbm = near.data();
    lvb_tally tally = sized<lvb_tally>();
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_trials(&trials, &tally, &fault) != LVB_OK) {
        if (fault.structure == LVB_STRUCT_TRIALS && link.fading)
            book.document.refuse(*link.fading->value, fault_words(fault) + "; in link " + in_quotes(link.name));
        refuse_fault(book.document, link, fault);
    }
    drawn.sureness.size = sizeof drawn.sureness;
    if (lvb_compute_sureness(&tally, 1, sizeof tally, &drawn.sureness, &fault) != LVB_OK)
        throw Refusal(fault_words(fault));
    drawn.far = quantiles(far, percents);
    drawn.near = quantiles(near, percents);
    return drawn;
}

std::string share(double probability, double error) {
    return format("%.3f %% (+-%.3f)", 100.0 * probability, 100.0 * error);
}

std::string three(double value) { return std::isnan(value) ? "-" : format("%.3f", value); }

std::string move_words(const Link &link, const Moves &moves) {
    std::string words = "every tolerance by its law";
    if (moves.fading == LVB_FADING_RAYLEIGH) words += "; Rayleigh fading";
    if (moves.fading == LVB_FADING_RICE) words += "; Rice fading, k " + plain(moves.rice_factor_db) + " dB";
    if (moves.fading == LVB_FADING_NAKAGAMI) words += "; Nakagami fading, shape " + plain(moves.nakagami_shape);
    if (moves.shadowing_db > 0.0)
        words +=
            "; shadowing of " + plain(moves.shadowing_db) + " dB" + (moves.shadowing_of_path ? " of the path" : "");
    if (link.fading && link.fading->branches > 1.0)
        words += "; NOTE: one branch is drawn, though the receiver has " + plain(link.fading->branches) +
                 ", so this is on the safe side";
    return words;
}

std::string page(const Book &book, const Link &link, const SureQuestion &question, const Drawn &drawn) {
    const lvb_sureness &sureness = drawn.sureness;
    const std::uint32_t stated = link.stages.back().entry.stated;
    std::string out = page_title("SURE", link.name + ", " + plain(link.frequency_mhz) + " MHz", book);
    out += labelled("Drawn:", std::to_string(sureness.trials) + (sureness.trials == 1 ? " trial" : " trials") +
                                  ", seed " + std::to_string(question.seed) + ": " + move_words(link, drawn.moves));
    out += labelled("Inside:", (stated & (LVB_STATED_FLOOR | LVB_STATED_CEILING)) == 0
                                   ? "not judged: the chain ends in no floor and no ceiling"
                                   : share(sureness.inside_probability, sureness.inside_error) +
                                         " of the trials lie inside the window at both ends");
    if ((stated & LVB_STATED_FLOOR) != 0)
        out += labelled("Below:", "the floor: far " + share(sureness.far_below_probability, sureness.far_below_error) +
                                      ", near " + share(sureness.near_below_probability, sureness.near_below_error));
    if ((stated & LVB_STATED_CEILING) != 0)
        out +=
            labelled("Above:", "the ceiling: far " + share(sureness.far_above_probability, sureness.far_above_error) +
                                   ", near " + share(sureness.near_above_probability, sureness.near_above_error));
    const auto mean = [](double mean_dbm, double error_db, double standard_deviation_db) {
        return two(mean_dbm) + " dBm (" +
               (std::isnan(error_db)
                    ? std::string("one trial tells no spread)")
                    : "+-" + three(error_db) + "), standard deviation " + two(standard_deviation_db) + " dB");
    };
    out += labelled(
        "Means:", "far " + mean(sureness.far_mean_dbm, sureness.far_mean_error_db, sureness.far_standard_deviation_db) +
                      "; near " +
                      mean(sureness.near_mean_dbm, sureness.near_mean_error_db, sureness.near_standard_deviation_db));
    out += "\n" + table_row("Share of trials up to", {"far dBm", "+-", "near dBm", "+-"});
    for (std::size_t i = 0; i < drawn.far.size(); ++i)
        out += table_row(plain(100.0 * drawn.far[i].probability) + " %",
                         {two(drawn.far[i].level_dbm), three(drawn.far[i].error_db), two(drawn.near[i].level_dbm),
                          three(drawn.near[i].error_db)});
    out += "\n" + labelled("Counts:", "+- behind a figure is its standard error; every quantity is drawn as if it did "
                                      "not depend on the others, and only a walk test shows how they go together");
    return out + print_untuned(link, "drawn") + print_cautions({&link});
}

Json quantiles_json(const std::vector<lvb_quantile> &quantiles) {
    Json list = Json::array();
    for (const lvb_quantile &quantile : quantiles)
        list.push_back({{"percent", 100.0 * quantile.probability},
                        {"level_dbm", quantile.level_dbm},
                        {"error_db", quantile.error_db}});
    return list;
}

std::string json(const Book &book, const Link &link, const SureQuestion &question, const Drawn &drawn) {
    const lvb_sureness &sureness = drawn.sureness;
    Json out = json_head("sure", book, &link);
    out["trials"] = sureness.trials;
    out["seed"] = question.seed;
    out["shadowing_db"] = drawn.moves.shadowing_db;
    out["fading"] = drawn.moves.fading == LVB_FADING_NONE ? Json(nullptr) : Json(lvb_fading_name(drawn.moves.fading));
    out["inside_probability"] = sureness.inside_probability;
    out["inside_error"] = sureness.inside_error;
    out["far_below_probability"] = sureness.far_below_probability;
    out["far_below_error"] = sureness.far_below_error;
    out["far_above_probability"] = sureness.far_above_probability;
    out["far_above_error"] = sureness.far_above_error;
    out["near_below_probability"] = sureness.near_below_probability;
    out["near_below_error"] = sureness.near_below_error;
    out["near_above_probability"] = sureness.near_above_probability;
    out["near_above_error"] = sureness.near_above_error;
    out["far_mean_dbm"] = sureness.far_mean_dbm;
    out["far_mean_error_db"] = sureness.far_mean_error_db;
    out["far_standard_deviation_db"] = sureness.far_standard_deviation_db;
    out["near_mean_dbm"] = sureness.near_mean_dbm;
    out["near_mean_error_db"] = sureness.near_mean_error_db;
    out["near_standard_deviation_db"] = sureness.near_standard_deviation_db;
    out["far_quantiles"] = quantiles_json(drawn.far);
    out["near_quantiles"] = quantiles_json(drawn.near);
    return json_text(std::move(out), {&link});
}

} // namespace

Outcome answer_sure(const SureQuestion &question) {
    constexpr std::uint64_t most_trials = 10000000; // both ends of each are kept for the quantiles
    if (question.trials < 1 || question.trials > most_trials)
        throw Refusal("--trials takes 1 to " + std::to_string(most_trials));
    if (question.at_least_percent && !(*question.at_least_percent >= 0.0 && *question.at_least_percent <= 100.0))
        throw Refusal("--at-least takes a percent from 0 to 100");
    const Book book(question.file);
    const Link &link = link_named(book.scenario, question.link);
    const Drawn drawn = draw(book, link, question);
    const double wanted = question.at_least_percent ? *question.at_least_percent / 100.0 : 0.0;
    const auto write = question.as_json ? json : page;
    return {write(book, link, question, drawn),
            drawn.sureness.inside_probability >= wanted ? exit_holds : exit_does_not_hold};
}

} // namespace desk
