#include "verdict.hpp"

#include "tuning.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

bool stated(const Link &link, std::uint32_t bit) { return (link.stages.back().entry.stated & bit) != 0; }

// How far a level lies from a limit, as the difference of the printed figures; a positive room is on the right side.
std::string room_words(double room, std::int64_t printed, const char *right, const char *wrong) {
    if (std::isinf(room)) return std::string("infinitely far ") + (room < 0.0 ? wrong : right);
    if (printed == 0 && room != 0.0) return std::string("less than 0.01 dB ") + (room < 0.0 ? wrong : right);
    return two_decimals(std::abs(printed)) + " dB " + (room < 0.0 ? wrong : right);
}

// Guesses without a tolerance: the verdict cannot take them into account.
std::string bare_guesses(const lvb_budget &budget) {
    const std::uint32_t count = budget.guesses_without_tolerance;
    return std::to_string(count) + (count == 1 ? " guess carries" : " guesses carry") + " no tolerance";
}

std::string holds_words(const Link &link, const lvb_budget &budget) {
    const bool far = stated(link, LVB_STATED_FLOOR);
    const bool near = stated(link, LVB_STATED_CEILING) && !near_distance_missing(budget);
    const bool bare = budget.guesses_without_tolerance > 0;
    std::string words = bare ? "HOLDS as entered" : "HOLDS";
    if (far && near) {
        if (bare) return words;
        words += " at both ends";
        const bool tolerated = budget.far_end.worst_db > 0.0 || budget.near_end.worst_db > 0.0;
        return words + (tolerated ? ", even with every tolerance against you" : " as entered; no tolerance is given");
    }
    if (far) return words + " at the far end";
    return words + (near ? " at the near end" : " as far as it was judged");
}

// The far end can reach the ceiling too: an allowance may be smaller than its tolerance.
std::string doubtful_words(const lvb_budget &budget) {
    const struct {
        bool can;
        const char *words;
    } ways[] = {
        {budget.far_end.margin_db < budget.far_end.worst_db, " the far end below the floor"},
        {budget.near_end.headroom_db < budget.near_end.worst_db, " the near end above the ceiling"},
        {budget.far_end.headroom_db < budget.far_end.worst_db, " the far end above the ceiling"},
    };
    std::string reached;
    for (const auto &way : ways)
        if (way.can) reached += (reached.empty() ? "" : " and") + std::string(way.words);
    return "DOUBTFUL: inside as entered, but the tolerances together can push" + reached;
}

std::string outcome_words(const Link &link, const lvb_budget &budget) {
    const lvb_stage receiver = judged_receiver(link);
    const std::string far = "the far end lies " + floor_words(receiver, budget.far_end);
    const std::string near = "the near end lies " + ceiling_words(receiver, budget.near_end);
    switch (budget.verdict) {
    case LVB_VERDICT_HOLDS:
        return holds_words(link, budget);
    case LVB_VERDICT_DROPS_OUT:
        return "DROPS OUT: " + far;
    case LVB_VERDICT_OVERLOADS:
        return "OVERLOADS: " + near;
    case LVB_VERDICT_DROPS_OUT_AND_OVERLOADS:
        return "DROPS OUT AND OVERLOADS: " + far + ", " + near;
    default:
        return doubtful_words(budget);
    }
}

} // namespace

bool has_window(const lvb_stage &receiver) {
    return (receiver.stated & (LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING)) != 0;
}

bool near_distance_missing(const lvb_budget &budget) { return (budget.notes & LVB_NOTE_NEAR_NOT_GIVEN) != 0; }

std::string raised_floor_words(const Link &link, const char *judged) {
    const lvb_stage &entered = link.stages.back().entry;
    const double judged_dbm = judged_receiver(link).floor_dbm;
    if (judged_dbm == entered.floor_dbm) return "";
    std::string words = "the entered floor of " + plain(entered.floor_dbm) +
                        " dBm lies below what noise and the needed C/N allow (" +
                        two_decimals(hundredths(*link.needed_dbm)) + " dBm), and " + judged;
    if (judged_dbm < *link.needed_dbm) words += "; no level under the ceiling is enough";
    return words;
}

std::vector<std::string> not_judged(const Link &link, const lvb_budget &budget) {
    std::vector<std::string> reasons;
    if (!stated(link, LVB_STATED_FLOOR)) reasons.emplace_back("the far end is not judged: no floor stated");
    if (!stated(link, LVB_STATED_CEILING)) reasons.emplace_back("the near end is not judged: no ceiling stated");
    if (near_distance_missing(budget))
        reasons.emplace_back("the near distance was not given, so near stands for the far distance");
    return reasons;
}

std::string floor_words(const lvb_stage &receiver, const lvb_end &end) {
    const std::int64_t printed = hundredths(end.level_dbm) - hundredths(receiver.floor_dbm);
    return room_words(end.margin_db, printed, "above the floor", "BELOW the floor");
}

std::string ceiling_words(const lvb_stage &receiver, const lvb_end &end) {
    const std::int64_t printed = hundredths(receiver.ceiling_dbm) - hundredths(end.level_dbm);
    return room_words(end.headroom_db, printed, "under the ceiling", "ABOVE the ceiling");
}

std::string verdict_words(const Link &link, const lvb_budget &budget) {
    if (budget.verdict == LVB_VERDICT_NOT_JUDGED)
        return "NOT JUDGED: no receiver with a floor or a ceiling ends this chain";
    std::string words = outcome_words(link, budget);
    if (const std::string raised = raised_floor_words(link, "the level is judged against that"); !raised.empty())
        words += "; " + raised;
    for (const std::string &reason : not_judged(link, budget)) words += "; " + reason;
    const bool rests_on_tolerances = budget.verdict == LVB_VERDICT_HOLDS || budget.verdict == LVB_VERDICT_DOUBTFUL;
    if (rests_on_tolerances && budget.guesses_without_tolerance > 0) words += "; " + bare_guesses(budget);
    return words;
}

namespace {

std::string noise_failure(const NoiseTerms &terms, const lvb_noise &noise) {
    const bool asked = (terms.entry.stated & LVB_STATED_CARRIER_TO_NOISE) != 0;
    switch (noise.verdict) {
    case LVB_VERDICT_HOLDS:
        return "";
    case LVB_VERDICT_DOUBTFUL:
        return "noise or compression DOUBTFUL";
    case LVB_VERDICT_DROPS_OUT:
        return "TOO NOISY at the far end";
    case LVB_VERDICT_OVERLOADS:
        return "COMPRESSES at the near end";
    case LVB_VERDICT_DROPS_OUT_AND_OVERLOADS:
        return "TOO NOISY at the far end, COMPRESSES at the near end";
    default:
        return asked ? "noise not judged" : "";
    }
}

// Without a needed carrier to noise nobody can say how far the floor must lie above the noise, but not below it.
std::string buried_floor(const Link &link, const lvb_noise &noise) {
    const lvb_stage &receiver = link.stages.back().entry;
    const double noise_dbm = noise.receiver_noise_dbm + receiver.gain_db;
    const bool asked = (link.noise->entry.stated & LVB_STATED_CARRIER_TO_NOISE) != 0;
    if (asked || !stated(link, LVB_STATED_FLOOR) || !(receiver.floor_dbm < noise_dbm)) return "";
    return "the floor of " + plain(receiver.floor_dbm) + " dBm lies BELOW THE NOISE (" +
           two_decimals(hundredths(noise_dbm)) + " dBm): say which carrier_to_noise_db the receiver needs";
}

const char *limit_failure(std::int32_t verdict) {
    switch (verdict) {
    case LVB_LIMIT_HOLDS:
        return "";
    case LVB_LIMIT_DOUBTFUL:
        return "a limit of power is DOUBTFUL";
    case LVB_LIMIT_EXCEEDED:
        return "a limit of power is EXCEEDED";
    default:
        return "a limit does not cover this frequency";
    }
}

} // namespace

std::vector<std::string> further_failures(const Answer &answer) {
    std::vector<std::string> failures;
    const auto add = [&](const std::string &words) {
        const bool told = std::find(failures.begin(), failures.end(), words) != failures.end();
        if (!words.empty() && !told) failures.push_back(words);
    };
    if (answer.computed.noise) {
        add(noise_failure(*answer.link->noise, answer.computed.noise->noise));
        add(buried_floor(*answer.link, answer.computed.noise->noise));
    }
    if (answer.computed.fade && answer.computed.fade->margin_db < answer.computed.fade->needed_db)
        add("FADES below the floor too often");
    for (const lvb_limit_result &limit : answer.computed.limits) add(limit_failure(limit.verdict));
    if (answer.computed.tuned) add(tuning_failure(*answer.computed.tuned));
    return failures;
}

std::string whole_verdict(const Answer &answer) {
    std::string words = verdict_words(*answer.link, answer.computed.budget);
    for (const std::string &failure : further_failures(answer)) words += "; " + failure;
    return words;
}

bool holds(const Answer &answer) {
    const lvb_budget &budget = answer.computed.budget;
    return budget.verdict == LVB_VERDICT_HOLDS && not_judged(*answer.link, budget).empty() &&
           further_failures(answer).empty();
}

Judged judge(const Document &document, Link link) {
    link.needed_dbm = needed_level(document, link);
    const Answer answer{&link, compute(document, link), std::nullopt};
    return {answer.computed.budget, whole_verdict(answer), further_failures(answer), holds(answer)};
}

bool holds(const Coexistence &pair) {
    const lvb_coexistence &result = pair.result;
    return !(result.more_receive_filter_db > 0.0) && !(result.more_transmit_filter_db > 0.0);
}

} // namespace desk
