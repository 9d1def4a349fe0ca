// One unknown of a link for a wanted margin, headroom, level or e.i.r.p.
#include "decide_common.hpp"

#include "faults.hpp"
#include "print_budget.hpp"
#include "read_decisions.hpp"
#include "tuning.hpp"
#include "verdict.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace desk {
namespace {

struct Goal {
    const char *option;
    std::int32_t goal;
    const char *words;
    const char *unit;
};

constexpr Goal goals[] = {
    {"margin", LVB_GOAL_MARGIN, "margin of the far end above the floor", "dB"},
    {"headroom", LVB_GOAL_HEADROOM, "headroom of the near end under the ceiling", "dB"},
    {"balance", LVB_GOAL_BALANCE, "far margin less near headroom; 0 puts the walk into the middle of the window", "dB"},
    {"far-from-middle", LVB_GOAL_FAR_FROM_MIDDLE, "far level above the middle of the wanted band", "dB"},
    {"near-from-middle", LVB_GOAL_NEAR_FROM_MIDDLE, "near level above the middle of the wanted band", "dB"},
    {"far-level", LVB_GOAL_FAR_LEVEL, "level at the far end", "dBm"},
    {"near-level", LVB_GOAL_NEAR_LEVEL, "level at the near end", "dBm"},
    {"eirp", LVB_GOAL_EIRP, "radiated power, e.i.r.p.", "dBm"},
};

constexpr std::int32_t fields_of_link[] = {LVB_FIELD_FREQUENCY_MHZ, LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M,
                                           LVB_FIELD_TEMPERATURE_DEGC};
constexpr std::int32_t fields_of_stage[] = {
    LVB_FIELD_LEVEL_DBM,      LVB_FIELD_GAIN_DB,           LVB_FIELD_TOLERANCE_DB,
    LVB_FIELD_LENGTH_M,       LVB_FIELD_CONNECTOR_LOSS_DB, LVB_FIELD_FLOOR_DBM,
    LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM,   LVB_FIELD_CEILING_DBM};

const Goal &goal_of(const SolveQuestion &question) {
    const Goal *found = nullptr;
    for (const Goal &goal : goals) {
        if (!question.goals.contains(goal.option)) continue;
        if (found != nullptr)
            throw Refusal(std::string("one thing is solved for: give --") + found->option + " or --" + goal.option);
        found = &goal;
    }
    if (found != nullptr) return *found;
    std::vector<std::string> names;
    for (const Goal &goal : goals) names.push_back(std::string("--") + goal.option);
    throw Refusal("what is wanted is missing; say one of " + listed(names));
}

std::int32_t tolerances_of(const std::string &word) {
    if (word.empty() || word == "none") return LVB_TOLERANCES_NONE;
    if (word == "worst") return LVB_TOLERANCES_WORST;
    if (word == "rss") return LVB_TOLERANCES_RSS;
    throw Refusal(in_quotes(word) + " is no way to count tolerances; there are " + listed({"none", "worst", "rss"}));
}

// What is sought: a key of the link, or of one of its stages.
struct Unknown {
    const NumberKey *key = nullptr;
    std::int32_t structure = LVB_STRUCT_LINK;
    std::size_t stage = 0;
    bool of_stage() const { return structure == LVB_STRUCT_STAGE; }
};

template <std::size_t Count>
std::vector<const NumberKey *> solvable(const std::vector<NumberKey> &keys, const std::int32_t (&fields)[Count],
                                        std::int32_t kind) {
    std::vector<const NumberKey *> found;
    for (const NumberKey &key : keys)
        if (std::find(std::begin(fields), std::end(fields), key.field) != std::end(fields) && serves(key, kind))
            found.push_back(&key);
    return found;
}

const NumberKey *key_named(const std::vector<const NumberKey *> &keys, const std::string &name) {
    const auto found = std::find_if(keys.begin(), keys.end(), [&](const NumberKey *key) { return name == key->name; });
    return found == keys.end() ? nullptr : *found;
}

Unknown unknown_of(const Link &link, const SolveQuestion &question) {
    Unknown unknown;
    std::vector<const NumberKey *> keys = solvable(link_keys(), fields_of_link, 0);
    std::string owner = "the link";
    if (!question.stage.empty()) {
        unknown.structure = LVB_STRUCT_STAGE;
        unknown.stage = stage_named(link, question.stage);
        const Stage &stage = link.stages[unknown.stage];
        keys = solvable(stage_keys(), fields_of_stage, stage.entry.kind);
        owner = std::string(in_quotes(stage.label)) + ", " + lvb_kind_name(stage.entry.kind) + ",";
    }
    unknown.key = key_named(keys, question.unknown);
    if (unknown.key != nullptr) return unknown;
    if (question.stage.empty() && key_named(solvable(stage_keys(), fields_of_stage, 0), question.unknown) != nullptr)
        throw Refusal(in_quotes(question.unknown) + " belongs to a stage; say which one with --stage");
    std::vector<std::string> names;
    for (const NumberKey *key : keys) names.emplace_back(key->name);
    if (question.unknown.empty())
        throw Refusal("say with --unknown what is sought: of " + owner + " " + listed(names) +
                      (question.stage.empty() ? "; with --stage a number of a stage" : ""));
    throw Refusal(owner + " has no " + in_quotes(question.unknown) + " to solve for" +
                  suggestion(question.unknown, names, "; there are " + listed(names)));
}

[[noreturn]] void refuse(const Document &document, const Link &link, const Unknown &unknown, const Goal &goal,
                         const lvb_fault &fault) {
    const std::string where = "; in link " + in_quotes(link.name);
    const Value &stage = *link.stages[unknown.stage].value;
    if (fault.structure == LVB_STRUCT_SOLVE && fault.field == LVB_FIELD_GOAL)
        document.refuse(*link.stages.back().value, std::string("there is no ") + goal.option +
                                                       " to solve for: the receiver's limit, or the "
                                                       "antenna, that it takes is not given" +
                                                       where);
    if (fault.structure == LVB_STRUCT_SOLVE && fault.field == LVB_FIELD_TOLERANCES)
        throw Refusal(std::string("tolerances do not count in --") + goal.option);
    if (fault.structure == LVB_STRUCT_SOLVE && fault.field == LVB_FIELD_WANTED)
        throw Refusal(plain(fault.value) + " is out of range; allowed " + plain(fault.minimum) + " to " +
                      plain(fault.maximum));
    if (unknown.of_stage() && fault.status == LVB_E_CONFLICT)
        document.refuse(stage, "a table, a pattern or a computed cable stands here in place of " +
                                   std::string(unknown.key->name) + where);
    if (unknown.of_stage() && (fault.status == LVB_E_UNUSED || fault.status == LVB_E_NOT_STATED))
        document.refuse(stage,
                        std::string(unknown.key->name) + " is not given here, so there is nothing to solve" + where);
    if (fault.structure == LVB_STRUCT_SOLVE) document.refuse(*link.value, fault_words(fault) + where);
    refuse_fault(document, link, fault);
}

// What an unknown's bound stands for.
std::string bound_words(const Link &link, const Unknown &unknown, const lvb_solution &solution) {
    if (solution.bound_structure == LVB_STRUCT_NONE) return "";
    const bool own = solution.bound_field == unknown.key->field &&
                     (unknown.of_stage() ? solution.bound_stage == static_cast<std::int32_t>(unknown.stage)
                                         : solution.bound_stage < 0);
    if (own) return "its own range ends there";
    std::string words = std::string(lvb_field_name(solution.bound_field));
    if (solution.bound_stage >= 0)
        words += " of " + in_quotes(link.stages[static_cast<std::size_t>(solution.bound_stage)].label);
    return words + " bounds it";
}

const char *outcome_word(std::int32_t outcome) {
    switch (outcome) {
    case LVB_SOLUTION_FOUND:
        return "found";
    case LVB_SOLUTION_AT_LOWEST:
    case LVB_SOLUTION_AT_HIGHEST:
        return "out of reach";
    case LVB_SOLUTION_NO_EFFECT:
        return "no effect";
    default:
        return "not steady";
    }
}

std::string in_unit(const NumberKey &key, double value) {
    return std::isnan(value) ? "-" : short_number(key.from_library(value)) + " " + key.unit;
}

std::string answer_words(const Link &link, const Unknown &unknown, const Goal &goal, const lvb_solution &solution) {
    const NumberKey &key = *unknown.key;
    const std::string bound = bound_words(link, unknown, solution);
    switch (solution.outcome) {
    case LVB_SOLUTION_FOUND:
        return std::string(key.name) + " = " + in_unit(key, solution.value) + " gives " + two(solution.reached) + " " +
               goal.unit;
    case LVB_SOLUTION_AT_LOWEST:
    case LVB_SOLUTION_AT_HIGHEST:
        return "OUT OF REACH: nearest comes " + std::string(key.name) + " = " + in_unit(key, solution.value) +
               " with " + two(solution.reached) + " " + goal.unit + ", " + two(std::abs(solution.missing_db)) +
               " dB off" + (bound.empty() ? "" : "; " + bound);
    case LVB_SOLUTION_NO_EFFECT:
        return std::string("NO EFFECT: ") + key.name + " changes nothing of what is wanted";
    default:
        return "NOT STEADY: there may be many answers or none" + (bound.empty() ? "" : "; " + bound) +
               "; give the link a tuning instead";
    }
}

// Where a link keeps the number that a field of it stands for.
double &number_of(Link &link, std::int32_t field) {
    switch (field) {
    case LVB_FIELD_FREQUENCY_MHZ:
        return link.frequency_mhz;
    case LVB_FIELD_FAR_DISTANCE_M:
        return link.far_distance_m;
    case LVB_FIELD_NEAR_DISTANCE_M:
        return link.near_distance_m;
    default:
        return link.temperature_degc.emplace();
    }
}

double &number_of(Stage &stage, std::int32_t field) {
    lvb_stage &entry = stage.entry;
    switch (field) {
    case LVB_FIELD_LEVEL_DBM:
        return entry.level_dbm;
    case LVB_FIELD_TOLERANCE_DB:
        return entry.tolerance_db;
    case LVB_FIELD_LENGTH_M:
        return entry.length_m;
    case LVB_FIELD_CONNECTOR_LOSS_DB:
        return entry.connector_loss_db;
    case LVB_FIELD_FLOOR_DBM:
        return entry.floor_dbm;
    case LVB_FIELD_WANTED_LOW_DBM:
        return entry.wanted_low_dbm;
    case LVB_FIELD_WANTED_HIGH_DBM:
        return entry.wanted_high_dbm;
    case LVB_FIELD_CEILING_DBM:
        return entry.ceiling_dbm;
    default:
        return entry.gain_db;
    }
}

// The whole link with the answer in it; nothing is said where there is none.
Judged with_answer(const Document &document, Link link, const Unknown &unknown, const lvb_solution &solution) {
    if (solution.outcome != LVB_SOLUTION_FOUND) return {};
    if (unknown.of_stage()) number_of(link.stages[unknown.stage], unknown.key->field) = solution.value;
    else number_of(link, unknown.key->field) = solution.value;
    try {
        return judge(document, link);
    } catch (const Refusal &) { // the goal is met, but the other end cannot be so
        Judged judged;
        judged.words = "NOT JUDGED: with this number the link is no longer one that budget takes";
        return judged;
    }
}

std::string page(const Book &book, const Link &link, const Unknown &unknown, const Goal &goal, double wanted,
                 std::int32_t tolerances, const lvb_solution &solution, const Judged &judged) {
    const NumberKey &key = *unknown.key;
    const char *counted = tolerances == LVB_TOLERANCES_WORST ? ", with every tolerance against you"
                          : tolerances == LVB_TOLERANCES_RSS ? ", less the root-sum-square of the tolerances"
                                                             : ", as entered, without tolerances";
    std::string out = page_title("SOLVE", link.name + ", " + plain(link.frequency_mhz) + " MHz", book);
    out += labelled("Unknown:", ascii(std::string(key.name) +
                                      (unknown.of_stage() ? " of '" + link.stages[unknown.stage].label + "'" : "") +
                                      "; now " + in_unit(key, solution.entered) + ", which gives " +
                                      two(solution.reached_entered) + " " + goal.unit));
    out += labelled("Wanted:", std::string(goal.words) + ": " + short_number(wanted) + " " + goal.unit + counted);
    out += labelled("Answer:", answer_words(link, unknown, goal, solution));
    const std::string over = link.tuning && judged.holds ? ", and over its tuning " + range_words(*link.tuning) : "";
    if (!judged.words.empty()) out += labelled("With it:", ascii(judged.words + over));
    else if (unknown.key->field != LVB_FIELD_FREQUENCY_MHZ) out += print_untuned(link, "sought");
    return out + print_cautions({&link});
}

std::string json(const Book &book, const Link &link, const Unknown &unknown, const Goal &goal, double wanted,
                 std::int32_t tolerances, const lvb_solution &solution, const Judged &judged) {
    const NumberKey &key = *unknown.key;
    double lowest = key.from_library(solution.lowest);
    double highest = key.from_library(solution.highest);
    if (lowest > highest) std::swap(lowest, highest);
    const auto value = [&](double number) {
        return std::isnan(number) ? Json(nullptr) : Json(key.from_library(number));
    };
    Json out = json_head("solve", book, &link);
    out["unknown"] = key.name;
    out["stage"] = unknown.of_stage() ? Json(link.stages[unknown.stage].label) : Json(nullptr);
    out["goal"] = goal.option;
    out["wanted"] = wanted;
    out["tolerances"] = tolerances == LVB_TOLERANCES_WORST ? "worst"
                        : tolerances == LVB_TOLERANCES_RSS ? "rss"
                                                           : "none";
    out["outcome"] = outcome_word(solution.outcome);
    out["value"] = value(solution.value);
    out["reached"] = solution.reached;
    out["missing_db"] = solution.missing_db;
    out["entered"] = value(solution.entered);
    out["reached_entered"] = solution.reached_entered;
    out["lowest"] = lowest;
    out["highest"] = highest;
    const std::string bound = bound_words(link, unknown, solution);
    out["bound"] = bound.empty() ? Json(nullptr) : Json(bound);
    out["verdict"] = lvb_verdict_name(judged.budget.verdict);
    out["failures"] = judged.failures;
    out["holds"] = judged.holds;
    return json_text(std::move(out), {&link});
}

} // namespace

const std::vector<std::pair<std::string, std::string>> &solve_goals() {
    static const std::vector<std::pair<std::string, std::string>> all = [] {
        std::vector<std::pair<std::string, std::string>> named;
        for (const Goal &goal : goals)
            named.emplace_back(goal.option, std::string("wanted in ") + goal.unit + ": " + goal.words);
        return named;
    }();
    return all;
}

Outcome answer_solve(const SolveQuestion &question) {
    const Book book(question.file);
    Link link = link_named(book.scenario, question.link);
    const Goal &goal = goal_of(question);
    const Unknown unknown = unknown_of(link, question);
    const bool distance =
        unknown.key->field == LVB_FIELD_FAR_DISTANCE_M || unknown.key->field == LVB_FIELD_NEAR_DISTANCE_M;
    if (!unknown.of_stage() && link.placed() && distance)
        book.document.refuse(*link.value, "the places of the antennas tell the distance, so it cannot be solved for");
    compute(book.document, link); // what is wrong with the link itself is told first
    if (unknown.key->field == LVB_FIELD_FLOOR_DBM) link.needed_dbm.reset(); // the floor itself is sought
    const std::unique_ptr<Lent> lent = lend(book.document, link);
    lvb_solve solve = sized<lvb_solve>();
    solve.link = &lent->link();
    solve.structure = unknown.structure;
    solve.stage_index = static_cast<std::uint32_t>(unknown.stage);
    solve.field = unknown.key->field;
    solve.goal = goal.goal;
    solve.tolerances = tolerances_of(question.tolerances);
    solve.wanted = question.goals.at(goal.option);
    lvb_solution solution = sized<lvb_solution>();
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_solution(&solve, &solution, &fault) != LVB_OK) refuse(book.document, link, unknown, goal, fault);
    const Judged judged = with_answer(book.document, link, unknown, solution);
    const auto write = question.as_json ? json : page;
    return {write(book, link, unknown, goal, solve.wanted, solve.tolerances, solution, judged),
            judged.holds ? exit_holds : exit_does_not_hold};
}

} // namespace desk
