#include "tuning.hpp"

#include "faults.hpp"
#include "read_decisions.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

// The link holds at its own frequency: what is wrong has to do with one that it may be tuned to.
[[noreturn]] void refuse_tuning(const Document &document, const Link &link, lvb_fault fault) {
    const Tuning &tuning = *link.tuning;
    const std::string where = "; in link " + in_quotes(link.name);
    const bool frequency = fault.field == LVB_FIELD_FREQUENCY_MHZ && fault.stage < 0;
    if (tuning.channels != nullptr && frequency && fault.row >= 0)
        document.refuse(*tuning.channels->items[static_cast<std::size_t>(fault.row)],
                        plain(fault.value) + " is out of range; allowed " + plain(fault.minimum) + " to " +
                            plain(fault.maximum) + where);
    if (fault.structure == LVB_STRUCT_SWEEP) refuse_fault(document, tuning, fault, where);
    fault.row = -1; // the index of a channel, not a row of a stage's table
    refuse_fault(document, link, fault);
}

// Exceeded is worse than doubtful, and that is worse than not covered.
int badness(std::int32_t verdict) {
    switch (verdict) {
    case LVB_LIMIT_EXCEEDED:
        return 3;
    case LVB_LIMIT_DOUBTFUL:
        return 2;
    case LVB_LIMIT_NOT_COVERED:
        return 1;
    default:
        return 0;
    }
}

std::vector<double> frequencies_of(const Tuning &tuning) {
    if (tuning.channels != nullptr) return tuning.channels_mhz;
    std::vector<double> all(tuning.count);
    const double last = static_cast<double>(tuning.count - 1);
    for (std::size_t i = 0; i < all.size(); ++i)
        all[i] = tuning.first_mhz + (tuning.last_mhz - tuning.first_mhz) * (static_cast<double>(i) / last);
    all.back() = tuning.last_mhz;
    return all;
}

// A limit at every frequency. Each of them was swept before, so nothing is refused here but the limit itself.
TunedLimit tune_limit(const Document &document, const Link &link, const Lent &lent, const Limit &limit) {
    TunedLimit worst;
    lvb_link tuned = lent.link();
    for (const double mhz : frequencies_of(*link.tuning)) {
        tuned.frequency_mhz = mhz;
        lvb_limit_result result{};
        result.size = sizeof result;
        auto fault = sized<lvb_fault>();
        if (lvb_check_limit(&tuned, &limit.entry, &result, &fault) != LVB_OK)
            refuse_fault(document, limit, fault, "; in link " + in_quotes(link.name));
        const int now = badness(result.verdict);
        const int before = badness(worst.verdict);
        const bool first = worst.frequency_mhz == 0.0;
        if (first || now > before || (now == before && result.room_db < worst.room_db))
            worst = {result.verdict, result.room_db, mhz};
    }
    return worst;
}

std::string verdict_words_of(std::int32_t verdict) {
    std::string words = lvb_verdict_name(verdict);
    std::transform(words.begin(), words.end(), words.begin(),
                   [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    return words;
}

std::string limit_failure(const TunedLimit &limit) {
    const std::string at = " at " + plain(limit.frequency_mhz) + " MHz";
    switch (limit.verdict) {
    case LVB_LIMIT_EXCEEDED:
        return "a limit of power is EXCEEDED" + at;
    case LVB_LIMIT_DOUBTFUL:
        return "a limit of power is DOUBTFUL" + at;
    case LVB_LIMIT_NOT_COVERED:
        return "a limit does not cover" + at.substr(3);
    default:
        return "";
    }
}

// Where the figure that the verdict rests on is met.
std::string level_failure(const lvb_sweep_result &sweep) {
    if (sweep.verdict == LVB_VERDICT_HOLDS || sweep.verdict == LVB_VERDICT_NOT_JUDGED) return "";
    const bool far = sweep.lowest_margin.value < sweep.far_worst_db;
    const bool near = sweep.lowest_headroom.value < sweep.near_worst_db;
    std::string words = verdict_words_of(sweep.verdict);
    if (far) words += " at " + plain(sweep.lowest_margin.frequency_mhz) + " MHz (far end)";
    if (near)
        words +=
            (far ? std::string(" and") : "") + " at " + plain(sweep.lowest_headroom.frequency_mhz) + " MHz (near end)";
    return words;
}

std::string extreme_words(const char *name, const lvb_extreme &extreme) {
    return std::isnan(extreme.value) ? ""
                                     : std::string("; ") + name + " " + two(extreme.value) + " dB at " +
                                           plain(extreme.frequency_mhz) + " MHz";
}

} // namespace

std::pair<double, double> ends_of(const Tuning &tuning) {
    if (tuning.channels == nullptr) return {tuning.first_mhz, tuning.last_mhz};
    const auto [lowest, highest] = std::minmax_element(tuning.channels_mhz.begin(), tuning.channels_mhz.end());
    return {*lowest, *highest};
}

std::string range_words(const Tuning &tuning) {
    const auto [lowest, highest] = ends_of(tuning);
    return (lowest == highest ? "" : plain(lowest) + " to ") + plain(highest) + " MHz";
}

std::string print_untuned(const Link &link, const char *what) {
    if (!link.tuning) return "";
    return labelled("Tuning:", std::string(what) + " at " + plain(link.frequency_mhz) +
                                   " MHz only; the link's tuning " + range_words(*link.tuning) + " is not considered");
}

Tuned tune(const Document &document, const Link &link, const Lent &lent) {
    const Tuning &tuning = *link.tuning;
    lvb_sweep sweep{};
    sweep.size = sizeof sweep;
    sweep.link = &lent.link();
    sweep.frequency_count = tuning.count;
    if (tuning.channels != nullptr) sweep.frequency_mhz = tuning.channels_mhz.data();
    sweep.first_mhz = tuning.first_mhz;
    sweep.last_mhz = tuning.last_mhz;
    Tuned tuned;
    tuned.sweep.size = sizeof tuned.sweep;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_sweep(&sweep, &tuned.sweep, &fault) != LVB_OK) refuse_tuning(document, link, fault);
    for (const Limit &limit : link.limits) tuned.limits.push_back(tune_limit(document, link, lent, limit));
    return tuned;
}

std::string tuning_failure(const Tuned &tuned) {
    std::string words = level_failure(tuned.sweep);
    for (const TunedLimit &limit : tuned.limits)
        if (const std::string failure = limit_failure(limit); !failure.empty())
            words += (words.empty() ? "" : ", ") + failure;
    return words.empty() ? "" : "over its tuning " + words;
}

std::string print_tuning(const Link &link, const Computed &computed) {
    if (!computed.tuned) return "";
    const Tuning &tuning = *link.tuning;
    const lvb_sweep_result &sweep = computed.tuned->sweep;
    std::string words = std::to_string(tuning.count);
    words += tuning.channels != nullptr
                 ? (tuning.count == 1 ? " channel" : " channels")
                 : " frequencies from " + plain(tuning.first_mhz) + " to " + plain(tuning.last_mhz) + " MHz";
    words += extreme_words("lowest margin", sweep.lowest_margin);
    words += extreme_words("lowest headroom", sweep.lowest_headroom);
    if (!std::isnan(sweep.highest_eirp.value))
        words += "; highest e.i.r.p. " + two(sweep.highest_eirp.value) + " dBm at " +
                 plain(sweep.highest_eirp.frequency_mhz) + " MHz";
    for (std::size_t i = 0; i < link.limits.size(); ++i) {
        const TunedLimit &limit = computed.tuned->limits[i];
        if (limit.verdict == LVB_LIMIT_NOT_COVERED) continue;
        const std::string name = link.limits[i].rule ? link.limits[i].rule->citation : link.limits[i].label;
        words +=
            "; least room under " + name + ": " + two(limit.room_db) + " dB at " + plain(limit.frequency_mhz) + " MHz";
    }
    if (const auto [lowest, highest] = ends_of(tuning); link.frequency_mhz < lowest || link.frequency_mhz > highest)
        words += "; NOTE: the link's own " + plain(link.frequency_mhz) + " MHz lie outside";
    const std::string failure = tuning_failure(*computed.tuned);
    words += "; " + (failure.empty() ? "at its worst: " + verdict_words_of(sweep.verdict) : failure);
    return labelled("Tuning:", ascii(words));
}

} // namespace desk
