// Which stage has a fault, from levels measured along the chain.
#include "decide_common.hpp"

#include "faults.hpp"
#include "print_budget.hpp"
#include "read_decisions.hpp"
#include "tuning.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

// STAGE=LEVEL or STAGE=LEVEL@METRES, as it stands on the command line.
Reading reading_in(const Link &link, const std::string &text) {
    const std::size_t equals = text.rfind('=');
    if (equals == std::string::npos || equals == 0)
        throw Refusal(in_quotes(text) + " is no reading; write the stage and the level in dBm after it: STAGE=LEVEL");
    Reading reading;
    reading.entry.stage = static_cast<std::uint32_t>(stage_named(link, text.substr(0, equals)));
    std::string level = text.substr(equals + 1);
    const std::size_t at = level.find('@');
    if (at != std::string::npos) {
        const std::optional<double> metres = number_in(level.substr(at + 1));
        if (!metres || !(*metres > 0.0))
            throw Refusal(in_quotes(text) + ": after the @ stands the distance over the air in metres");
        reading.entry.distance_m = *metres;
        level.resize(at);
    }
    if (level.ends_with("dBm")) level.resize(level.size() - 3);
    const std::optional<double> dbm = number_in(level);
    if (!dbm) throw Refusal(in_quotes(text) + ": " + in_quotes(level) + " is no level in dBm");
    reading.entry.level_dbm = *dbm;
    return reading;
}

std::vector<Reading> readings_of(const Link &link, const LocateQuestion &question) {
    std::vector<Reading> readings;
    for (const std::string &text : question.readings) readings.push_back(reading_in(link, text));
    if (readings.empty() && link.readings) return link.readings->list;
    return readings;
}

double uncertainty_of(const Link &link, const LocateQuestion &question) {
    if (question.uncertainty_db) return *question.uncertainty_db;
    if (link.readings) return link.readings->uncertainty_db;
    throw Refusal("--uncertainty is missing: the standard uncertainty of a reading in dB (of a data sheet's limit of "
                  "error, plus and minus, a 1.73rd)");
}

// What was read is told by its line where it stands in the scenario, and by its words otherwise.
[[noreturn]] void refuse(const Book &book, const Link &link, const std::vector<Reading> &readings,
                         const LocateQuestion &question, lvb_fault fault) {
    const std::string where = "; in link " + in_quotes(link.name);
    const bool of_reading = fault.structure == LVB_STRUCT_READING && fault.row >= 0 &&
                            static_cast<std::size_t>(fault.row) < readings.size();
    if (of_reading) {
        const auto row = static_cast<std::size_t>(fault.row);
        const Reading &reading = readings[row];
        std::string why = fault_words(fault);
        if (fault.status == LVB_E_NOT_FOUND)
            why = "there is no point to measure at after " + in_quotes(link.stages[reading.entry.stage].label) +
                  ": the level is radiated there, or nothing is left in a null";
        if (fault.status == LVB_E_UNUSED) why = "a distance has a use only after the air";
        if (reading.value == nullptr) throw Refusal(in_quotes(question.readings[row]) + ": " + why + where);
        if (fault.status == LVB_E_NOT_FOUND) book.document.refuse(*reading.value, why + where);
        refuse_fault(book.document, reading, fault, where);
    }
    if (fault.structure == LVB_STRUCT_LOCATE && fault.field == LVB_FIELD_UNCERTAINTY_DB) {
        if (!question.uncertainty_db && link.readings) refuse_fault(book.document, *link.readings, fault, where);
        throw Refusal("--uncertainty " + plain(fault.value) + " is out of range; allowed 0.001 to 100");
    }
    if (fault.structure == LVB_STRUCT_LOCATE) throw Refusal(fault_words(fault) + where);
    fault.row = -1; // the link holds at its own distance: what is wrong is a reading's, not a row of a table
    refuse_fault(book.document, link, fault);
}

// The level that a healthy chain has where a reading was taken.
double expected_dbm(const Link &link, const Lent &lent, const lvb_reading &reading) {
    lvb_link at = lent.link();
    if (reading.distance_m > 0.0) {
        at.far_distance_m = reading.distance_m;
        at.near_distance_m = 0.0;
    }
    lvb_budget budget = sized<lvb_budget>();
    std::vector<lvb_level> levels(link.stages.size());
    if (lvb_compute_budget(&at, &budget, levels.data(), sizeof levels[0], nullptr) != LVB_OK) return std::nan("");
    return levels[reading.stage].far_level_dbm;
}

struct Found {
    lvb_locate_result result{};
    std::vector<lvb_suspect> suspects;
    std::vector<double> expected_dbm; ///< of each reading
};

std::string label_of(const Link &link, std::uint32_t stage) { return "'" + ascii(link.stages[stage].label) + "'"; }

std::string percent(double share) { return format("%.1f %%", 100.0 * share); }

std::string suspect_words(const Link &link, const lvb_locate_result &result) {
    const bool lost = result.fault_db < 0.0;
    const std::string size = two(std::abs(result.fault_db)) + " dB are " + (lost ? "lost" : "too many") + " there, +-" +
                             two(result.standard_deviation_db) + " dB";
    if (result.span_first == result.span_last)
        return label_of(link, result.stage) + " with " + percent(result.probability) + "; if so, " + size;
    return "between " + label_of(link, result.span_first) + " and " + label_of(link, result.span_last) + " with " +
           percent(result.span_probability) + " altogether; these readings cannot tell them apart; if so, " + size;
}

// Not even a fault of the best size in the most likely stage brings the readings together.
bool contradict(const lvb_locate_result &result) {
    constexpr double seldom = 0.01;
    return result.fault_p_value < seldom;
}

// Readings that fit a healthy chain leave no suspect, however likely the likeliest stage is.
std::string fit_words(const Link &link, const lvb_locate_result &result) {
    const std::string odds =
        format(", which reads so far off or farther with a probability of %.3g %%", 100.0 * result.p_value);
    if (result.consistent == 1) return labelled("Suspect:", "none: the readings fit a healthy chain" + odds);
    const std::string but = contradict(result)
                                ? labelled("But:", "no single fault explains these readings; repeat the one after " +
                                                       label_of(link, result.span_last))
                                : "";
    return labelled("Suspect:", suspect_words(link, result)) + but +
           labelled("Fits:", "the readings DO NOT FIT a healthy chain" + odds);
}

std::string page(const Book &book, const Link &link, const std::vector<Reading> &readings, double uncertainty_db,
                 const Found &found) {
    const lvb_locate_result &result = found.result;
    std::string out = page_title("LOCATE", link.name + ", " + plain(link.frequency_mhz) + " MHz", book);
    if (!readings.empty()) out += table_row("Measured after", {"due dBm", "read dBm", "apart dB"});
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const lvb_reading &reading = readings[i].entry;
        const std::string distance = reading.distance_m > 0.0 ? "at " + plain(reading.distance_m) + " m" : "";
        out += table_row(
            link.stages[reading.stage].label,
            {two(found.expected_dbm[i]), two(reading.level_dbm), signed_two(reading.level_dbm - found.expected_dbm[i])},
            distance);
    }
    if (!readings.empty()) out += "\n" + fit_words(link, result) + "\n";
    out += table_row("Suspect", {"probable", "fault dB", "+- dB"}, "span of stages that look alike");
    for (std::size_t i = 0; i < found.suspects.size(); ++i) {
        const lvb_suspect &suspect = found.suspects[i];
        out +=
            table_row(link.stages[i].label,
                      {percent(suspect.probability), signed_two(suspect.fault_db), two(suspect.standard_deviation_db)},
                      std::to_string(suspect.span + 1));
    }
    out += table_row("no stage at all", {percent(result.none_probability)}) + "\n";
    constexpr double hardly = 0.05; // bits: not worth the walk
    if (result.expected_bits < hardly) out += labelled("Next:", "one more reading would hardly tell more");
    else out += labelled("Next:", "measure after " + label_of(link, result.next_stage) + ", which should tell most");
    out += print_untuned(link, "expected");
    out += labelled("Counts:", "a reading is taken as certain to +-" + short_number(uncertainty_db) +
                                   " dB (standard uncertainty), and at most one stage as faulty; where the walk "
                                   "fades, take means; a meter that reads all levels alike too high looks like a "
                                   "fault of the source; what is due behind the air holds every allowance, near the "
                                   "antenna too, as with the body in between, where the near end of budget takes "
                                   "none");
    return out + print_cautions({&link});
}

std::string json(const Book &book, const Link &link, const std::vector<Reading> &readings, double uncertainty_db,
                 const Found &found) {
    const lvb_locate_result &result = found.result;
    Json out = json_head("locate", book, &link);
    out["uncertainty_db"] = uncertainty_db;
    out["readings"] = Json::array();
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const lvb_reading &reading = readings[i].entry;
        Json line;
        line["after"] = link.stages[reading.stage].label;
        line["level_dbm"] = reading.level_dbm;
        line["expected_dbm"] = found.expected_dbm[i];
        line["distance_m"] = reading.distance_m > 0.0 ? Json(reading.distance_m) : Json(nullptr);
        out["readings"].push_back(line);
    }
    out["consistent"] = result.consistent == 1;
    out["p_value"] = result.p_value;
    out["chi_square"] = result.chi_square;
    out["none_probability"] = result.none_probability;
    out["stage"] = link.stages[result.stage].label;
    out["probability"] = result.probability;
    out["span_first"] = link.stages[result.span_first].label;
    out["span_last"] = link.stages[result.span_last].label;
    out["span_probability"] = result.span_probability;
    out["fault_db"] = result.fault_db;
    out["standard_deviation_db"] = result.standard_deviation_db;
    out["fault_p_value"] = result.fault_p_value;
    out["next_stage"] = link.stages[result.next_stage].label;
    out["expected_bits"] = result.expected_bits;
    out["suspects"] = Json::array();
    for (std::size_t i = 0; i < found.suspects.size(); ++i) {
        const lvb_suspect &suspect = found.suspects[i];
        Json line;
        line["label"] = link.stages[i].label;
        line["span"] = suspect.span;
        line["probability"] = suspect.probability;
        line["fault_db"] = suspect.fault_db;
        line["standard_deviation_db"] = suspect.standard_deviation_db;
        line["expected_bits"] = suspect.expected_bits;
        out["suspects"].push_back(line);
    }
    return json_text(std::move(out), {&link});
}

} // namespace

Outcome answer_locate(const LocateQuestion &question) {
    const Book book(question.file);
    const Link &link = link_named(book.scenario, question.link);
    const std::vector<Reading> readings = readings_of(link, question);
    compute(book.document, link); // what is wrong with the link itself is told first
    const std::unique_ptr<Lent> lent = lend(book.document, link);
    std::vector<lvb_reading> entries;
    for (const Reading &reading : readings) entries.push_back(reading.entry);
    lvb_locate locate = sized<lvb_locate>();
    locate.reading_count = static_cast<std::uint32_t>(entries.size());
    locate.reading_size = sizeof(lvb_reading);
    locate.link = &lent->link();
    locate.readings = entries.data();
    locate.uncertainty_db = uncertainty_of(link, question);
    if (entries.size() > LVB_MAX_READINGS)
        throw Refusal("at most " + std::to_string(LVB_MAX_READINGS) + " readings are taken");
    Found found;
    found.result.size = sizeof found.result;
    found.suspects.resize(link.stages.size());
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_locate_fault(&locate, &found.result, found.suspects.data(), sizeof found.suspects[0], &fault) != LVB_OK)
        refuse(book, link, readings, question, fault);
    for (const lvb_reading &reading : entries) found.expected_dbm.push_back(expected_dbm(link, *lent, reading));
    const auto write = question.as_json ? json : page;
    return {write(book, link, readings, locate.uncertainty_db, found),
            found.result.consistent == 1 ? exit_holds : exit_does_not_hold};
}

} // namespace desk
