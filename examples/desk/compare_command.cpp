// Two links side by side, stage by stage.
#include "decide_common.hpp"

#include "print_budget.hpp"
#include "tuning.hpp"

#include <cmath>

namespace desk {
namespace {

using Pairs = std::vector<lvb_pair>;

const std::string &label_of(const Link &link, std::int32_t stage) {
    return link.stages[static_cast<std::size_t>(stage)].label;
}

// "RG-58C/U > RG-213/U" where the labels differ.
std::string pair_name(const Link &first, const Link &second, const lvb_pair &pair) {
    if (pair.first_stage < 0) return label_of(second, pair.second_stage);
    if (pair.second_stage < 0) return label_of(first, pair.first_stage);
    const std::string &from = label_of(first, pair.first_stage);
    const std::string &to = label_of(second, pair.second_stage);
    return from == to ? from : from + " > " + to;
}

// "566 MHz, far 28 m, near 3 m"
std::string walk_words(const Link &link, const Computed &computed) {
    std::string words = plain(link.frequency_mhz) + " MHz";
    const lvb_budget &budget = computed.budget;
    if (budget.far_end.distance_m > 0.0)
        words += ", far " + short_number(budget.far_end.distance_m) + " m, near " +
                 short_number(budget.near_end.distance_m) + " m";
    if (link.tuning) words += "; its tuning " + range_words(*link.tuning) + " is not considered";
    return words;
}

struct Compared {
    const Link *link;
    Computed computed;
};

std::string page(const Book &book, const Compared &one, const Compared &other, const lvb_comparison &told,
                 const Pairs &pairs) {
    const Link &first = *one.link, &second = *other.link;
    std::string out = page_title("COMPARE", "'" + second.name + "' with '" + first.name + "'", book);
    out += labelled("First:", ascii("'" + first.name + "': " + walk_words(first, one.computed)));
    out += labelled("Second:", ascii("'" + second.name + "': " + walk_words(second, other.computed))) + "\n";
    out += table_row("Stage", {"far", "near", "tolerance", "far after"}, "stands");
    for (const lvb_pair &pair : pairs)
        out += table_row(pair_name(first, second, pair),
                         {signed_two(pair.far_change_difference_db), signed_two(pair.near_change_difference_db),
                          signed_two(pair.tolerance_difference_db), signed_two(pair.far_level_difference_db)},
                         pair.matched == LVB_PAIR_FIRST_ONLY    ? "in the first only"
                         : pair.matched == LVB_PAIR_SECOND_ONLY ? "in the second only"
                                                                : "in both");
    out += "\n" + labelled("Reads:", "every figure is the second link's less the first's, in dB");
    out += labelled("Levels:", "far " + signed_two(told.far_level_db) + " dB, near " + signed_two(told.near_level_db) +
                                   " dB; margin " + signed_two(told.margin_db) + " dB, headroom " +
                                   signed_two(told.headroom_db) + " dB" +
                                   (std::isnan(told.eirp_db) ? "" : "; e.i.r.p. " + signed_two(told.eirp_db) + " dB") +
                                   "; worst-case tolerance far " + signed_two(told.far_worst_db) + " dB, near " +
                                   signed_two(told.near_worst_db) + " dB");
    if (told.largest_pair >= 0)
        out += labelled("Largest:",
                        ascii("'" + pair_name(first, second, pairs[static_cast<std::size_t>(told.largest_pair)]) +
                              "' makes " + signed_two(told.largest_db) + " dB"));
    else out += labelled("Largest:", "nothing: the chains are alike");
    out += labelled("Verdicts:", ascii("'" + first.name + "' " + lvb_verdict_name(told.first_verdict) + ", '" +
                                       second.name + "' " + lvb_verdict_name(told.second_verdict)));
    return out + print_cautions({&first, &second});
}

std::string json(const Book &book, const std::string &second_file, const Link &first, const Link &second,
                 const lvb_comparison &told, const Pairs &pairs) {
    Json out = json_head("compare", book, nullptr);
    out["first"] = first.name;
    out["second"] = second.name;
    out["second_scenario"] = second_file;
    out["first_verdict"] = lvb_verdict_name(told.first_verdict);
    out["second_verdict"] = lvb_verdict_name(told.second_verdict);
    out["far_level_db"] = told.far_level_db;
    out["near_level_db"] = told.near_level_db;
    out["margin_db"] = told.margin_db;
    out["headroom_db"] = told.headroom_db;
    out["far_worst_db"] = told.far_worst_db;
    out["near_worst_db"] = told.near_worst_db;
    out["eirp_db"] = told.eirp_db;
    out["largest_pair"] = told.largest_pair < 0 ? Json(nullptr) : Json(told.largest_pair);
    out["largest_db"] = told.largest_db;
    out["pairs"] = Json::array();
    for (const lvb_pair &pair : pairs) {
        Json line;
        line["first_label"] = pair.first_stage < 0 ? Json(nullptr) : Json(label_of(first, pair.first_stage));
        line["second_label"] = pair.second_stage < 0 ? Json(nullptr) : Json(label_of(second, pair.second_stage));
        line["matched"] = lvb_pair_name(pair.matched);
        line["far_change_difference_db"] = pair.far_change_difference_db;
        line["near_change_difference_db"] = pair.near_change_difference_db;
        line["tolerance_difference_db"] = pair.tolerance_difference_db;
        line["far_level_difference_db"] = pair.far_level_difference_db;
        line["near_level_difference_db"] = pair.near_level_difference_db;
        out["pairs"].push_back(line);
    }
    return json_text(std::move(out), {&first, &second});
}

// The library pairs stages by their labels: the one place where it reads them.
std::vector<lvb_stage> with_labels(const Link &link, const Lent &lent) {
    std::vector<lvb_stage> stages;
    for (std::size_t i = 0; i < link.stages.size(); ++i) {
        stages.push_back(lent.stage(i));
        stages.back().label = link.stages[i].label.c_str();
    }
    return stages;
}

} // namespace

Outcome answer_compare(const CompareQuestion &question) {
    const Book book(question.file);
    const std::string second_file = question.other_file.empty() ? question.file : question.other_file;
    const Book other(second_file);
    const Link &first = link_named(book.scenario, question.link);
    const Link &second = link_named(other.scenario, question.other);
    // What is wrong with a link is told at its line; the comparison does not say whose.
    const Compared one{&first, compute(book.document, first)}, another{&second, compute(other.document, second)};
    const std::unique_ptr<Lent> first_lent = lend(book.document, first);
    const std::unique_ptr<Lent> second_lent = lend(other.document, second);
    const std::vector<lvb_stage> first_stages = with_labels(first, *first_lent);
    const std::vector<lvb_stage> second_stages = with_labels(second, *second_lent);
    lvb_link first_link = first_lent->link();
    lvb_link second_link = second_lent->link();
    first_link.stages = first_stages.data();
    second_link.stages = second_stages.data();
    std::vector<std::uint8_t> scratch(lvb_comparison_scratch_bytes(first_link.stage_count, second_link.stage_count));
    Pairs pairs(first_stages.size() + second_stages.size());
    lvb_compare compare = sized<lvb_compare>();
    compare.pair_size = sizeof pairs[0];
    compare.first = &first_link;
    compare.second = &second_link;
    compare.scratch_bytes = scratch.size();
    compare.scratch = scratch.data();
    compare.pairs = pairs.data();
    lvb_comparison told = sized<lvb_comparison>();
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_comparison(&compare, &told, &fault) != LVB_OK) throw Refusal(fault_words(fault));
    pairs.resize(told.pair_count);
    return {question.as_json ? json(book, second_file, first, second, told, pairs)
                             : page(book, one, another, told, pairs)};
}

} // namespace desk
