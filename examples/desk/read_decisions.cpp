#include "read_decisions.hpp"

#include "faults.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_set>

namespace desk {
namespace {

double same(double x) { return x; }
double thousandfold(double x) { return x * 1000.0; }
double thousandth(double x) { return x / 1000.0; }

const std::vector<NumberKey> &tuning_keys() {
    static const std::vector<NumberKey> keys = {
        {"first_mhz", LVB_FIELD_FIRST_MHZ, same, same, 0, "MHz"},
        {"first_ghz", LVB_FIELD_FIRST_MHZ, thousandfold, thousandth, 0, "GHz"},
        {"last_mhz", LVB_FIELD_LAST_MHZ, same, same, 0, "MHz"},
        {"last_ghz", LVB_FIELD_LAST_MHZ, thousandfold, thousandth, 0, "GHz"},
        {"count", LVB_FIELD_FREQUENCY_COUNT, same, same, 0, "frequencies"},
    };
    return keys;
}

const std::vector<NumberKey> &wanted_keys() {
    static const std::vector<NumberKey> keys = {
        {"margin_db", LVB_FIELD_MARGIN_DB, same, same, 0, "dB"},
        {"headroom_db", LVB_FIELD_HEADROOM_DB, same, same, 0, "dB"},
        {"eirp_limit_dbm", LVB_FIELD_EIRP_LIMIT_DBM, same, same, 0, "dBm"},
        {"eirp_limit_mw", LVB_FIELD_EIRP_LIMIT_DBM, lvb_dbm_from_mw, lvb_mw_from_dbm, 0, "mW"},
        {"noise_figure_limit_db", LVB_FIELD_NOISE_FIGURE_LIMIT_DB, same, same, 0, "dB"},
    };
    return keys;
}

const std::vector<NumberKey> &uncertainty_keys() {
    static const std::vector<NumberKey> keys = {{"uncertainty_db", LVB_FIELD_UNCERTAINTY_DB, same, same, 0, "dB"}};
    return keys;
}

const std::vector<NumberKey> &reading_keys() {
    static const std::vector<NumberKey> keys = {
        {"level_dbm", LVB_FIELD_LEVEL_DBM, same, same, 0, "dBm"},
        {"uncertainty_db", LVB_FIELD_UNCERTAINTY_DB, same, same, 0, "dB"},
        {"distance_m", LVB_FIELD_DISTANCE_M, same, same, 0, "m"},
        {"distance_ft", LVB_FIELD_DISTANCE_M, lvb_metres_from_feet, lvb_feet_from_metres, 0, "ft"},
    };
    return keys;
}

const std::vector<NumberKey> &stock_keys() {
    static const std::vector<NumberKey> keys = {
        {"cost", LVB_FIELD_COST, same, same, 0, "cost"},
        {"count", LVB_FIELD_COUNT, same, same, 0, "count"},
        {"lowest_mhz", LVB_FIELD_LOWEST_MHZ, same, same, 0, "MHz"},
        {"highest_mhz", LVB_FIELD_HIGHEST_MHZ, same, same, 0, "MHz"},
    };
    return keys;
}

// A whole number that the person wrote, or `otherwise` where there is none.
std::uint64_t whole_or(const Checks &checks, const GivenNumbers &numbers, std::int32_t field, double least, double most,
                       std::uint64_t otherwise) {
    const auto given = numbers.find(field);
    if (given == numbers.end()) return otherwise;
    const double number = given->second.value->number;
    if (number >= least && number <= most && number == std::floor(number)) return static_cast<std::uint64_t>(number);
    checks.document().refuse(*given->second.value, plain(number) + " will not do; allowed are whole numbers from " +
                                                       plain(least) + " to " + plain(most));
}

void check_object(const Checks &checks, const Value &value, std::vector<std::string> names,
                  const std::vector<NumberKey> &keys, const char *owner) {
    checks.expect(value, Value::Kind::object);
    names.emplace_back("note");
    checks.check_keys(value, with_names(std::move(names), keys, 0), owner);
    checks.text_or_empty(value, "note");
}

Tuning read_tuning(const Checks &checks, const Value &value) {
    check_object(checks, value, {"channels_mhz"}, tuning_keys(), "a tuning");
    constexpr double most = 10000.0;
    Tuning tuning;
    tuning.value = &value;
    tuning.numbers = numbers_of(checks, members_of(value), tuning_keys(), LVB_STRUCT_SWEEP, 0);
    tuning.channels = value.find("channels_mhz");
    if (tuning.channels != nullptr) {
        if (!tuning.numbers.empty())
            checks.document().refuse_key(*tuning.numbers.begin()->second.value,
                                         "channels_mhz stands in place of a range; give one of them");
        checks.expect(*tuning.channels, Value::Kind::list);
        const auto &items = tuning.channels->items;
        if (items.empty() || items.size() > static_cast<std::size_t>(most))
            checks.document().refuse(*tuning.channels, "a list of channels has 1 to " + plain(most) + " of them");
        std::unordered_set<double> channels;
        for (const Value *item : items) {
            tuning.channels_mhz.push_back(checks.number(*item));
            if (!channels.insert(item->number).second)
                checks.document().refuse(*item, plain(item->number) + " MHz stands in this list before");
        }
        tuning.count = items.size();
        return tuning;
    }
    if (tuning.numbers.empty())
        checks.document().refuse(value, "first_mhz with last_mhz and count, or channels_mhz, is missing");
    for (const std::int32_t field : {LVB_FIELD_FIRST_MHZ, LVB_FIELD_LAST_MHZ, LVB_FIELD_FREQUENCY_COUNT})
        need_number(checks, value, tuning.numbers, tuning_keys(), field);
    tuning.first_mhz = taken(tuning.numbers, LVB_FIELD_FIRST_MHZ);
    tuning.last_mhz = taken(tuning.numbers, LVB_FIELD_LAST_MHZ);
    if (const Given &last = tuning.numbers.at(LVB_FIELD_LAST_MHZ); !(tuning.first_mhz < tuning.last_mhz))
        checks.document().refuse(*last.value, plain(last.value->number) + " does not lie above the first frequency; " +
                                                  "write one frequency, or some in any order, as channels_mhz");
    tuning.count = whole_or(checks, tuning.numbers, LVB_FIELD_FREQUENCY_COUNT, 2.0, most, 0);
    return tuning;
}

Wanted read_wanted(const Checks &checks, const Value &value) {
    check_object(checks, value, {"tolerances"}, wanted_keys(), "wanted");
    Wanted wanted;
    wanted.value = &value;
    wanted.numbers = numbers_of(checks, members_of(value), wanted_keys(), LVB_STRUCT_NEED, 0);
    lvb_need &entry = wanted.entry;
    entry.margin_db = taken(wanted.numbers, LVB_FIELD_MARGIN_DB);
    entry.headroom_db = taken(wanted.numbers, LVB_FIELD_HEADROOM_DB);
    entry.eirp_limit_dbm = taken(wanted.numbers, LVB_FIELD_EIRP_LIMIT_DBM);
    entry.noise_figure_limit_db = taken(wanted.numbers, LVB_FIELD_NOISE_FIGURE_LIMIT_DB);
    if (wanted.numbers.contains(LVB_FIELD_EIRP_LIMIT_DBM)) entry.stated = LVB_STATED_EIRP_LIMIT;
    if (const Value *tolerances = value.find("tolerances"))
        if (checks.choose(*tolerances, {"as entered", "against you"}, "way to count tolerances") == 1)
            entry.worst_case = LVB_WORST_LEVELS | LVB_WORST_EIRP;
    return wanted;
}

Reading read_reading(const Checks &checks, const Value &value, const Link &link) {
    check_object(checks, value, {"after"}, reading_keys(), "a reading");
    Reading reading;
    reading.value = &value;
    reading.numbers = numbers_of(checks, members_of(value), reading_keys(), LVB_STRUCT_READING, 0);
    need_number(checks, value, reading.numbers, reading_keys(), LVB_FIELD_LEVEL_DBM);
    const Value &after = checks.need(value, "after");
    try {
        reading.entry.stage = static_cast<std::uint32_t>(stage_named(link, checks.text(after)));
    } catch (const Refusal &why) {
        if (after.kind != Value::Kind::text || after.text.empty()) throw; // it tells its line itself
        checks.document().refuse(after, why.what());
    }
    reading.entry.level_dbm = taken(reading.numbers, LVB_FIELD_LEVEL_DBM);
    reading.entry.uncertainty_db = taken(reading.numbers, LVB_FIELD_UNCERTAINTY_DB);
    reading.entry.distance_m = taken(reading.numbers, LVB_FIELD_DISTANCE_M);
    return reading;
}

Readings read_readings(const Checks &checks, const Value &value, const Link &link) {
    check_object(checks, value, {"levels"}, uncertainty_keys(), "readings");
    Readings readings;
    readings.value = &value;
    readings.numbers = numbers_of(checks, members_of(value), uncertainty_keys(), LVB_STRUCT_LOCATE, 0);
    need_number(checks, value, readings.numbers, uncertainty_keys(), LVB_FIELD_UNCERTAINTY_DB);
    readings.uncertainty_db = taken(readings.numbers, LVB_FIELD_UNCERTAINTY_DB);
    const Value &levels = checks.need(value, "levels");
    checks.expect(levels, Value::Kind::list);
    if (levels.items.size() > LVB_MAX_READINGS)
        checks.document().refuse(levels, "at most " + std::to_string(LVB_MAX_READINGS) + " readings are taken");
    for (const Value *item : levels.items) readings.list.push_back(read_reading(checks, *item, link));
    return readings;
}

} // namespace

void read_decisions(const Checks &checks, const Value &value, Link &link) {
    if (const Value *tuning = value.find("tuning")) link.tuning = read_tuning(checks, *tuning);
    if (const Value *wanted = value.find("wanted")) link.wanted = read_wanted(checks, *wanted);
    if (const Value *readings = value.find("readings")) link.readings = read_readings(checks, *readings, link);
}

lvb_spread read_spread(const Checks &checks, const Members &members) {
    lvb_spread spread{};
    const auto law = members.find("tolerance_law");
    if (law != members.end()) spread.law = checks.choose(*law->second, words(lvb_law_name, 0), "law of a tolerance");
    const auto factor = members.find("coverage_factor");
    if (factor == members.end()) return spread;
    const Value &value = *factor->second;
    constexpr double least = 1.0, most = 10.0; // of the library's lvb_spread
    spread.coverage_factor = checks.number(value);
    if (spread.law != LVB_LAW_NORMAL)
        checks.document().refuse_key(value, "a coverage_factor has a use only with the tolerance_law 'normal'");
    if (!(spread.coverage_factor >= least && spread.coverage_factor <= most))
        checks.document().refuse(value, plain(spread.coverage_factor) + " is out of range; allowed " + plain(least) +
                                            " to " + plain(most));
    return spread;
}

std::vector<StockItem> read_stock(const Checks &checks, StageReader &stages, const Value &value) {
    checks.expect(value, Value::Kind::object);
    constexpr double most_cost = 1e12, most_count = 4294967295.0; // of the library's lvb_item
    std::vector<StockItem> stock;
    for (const Value *object : value.items) {
        check_object(checks, *object, {"stage"}, stock_keys(), "an item of the stock");
        StockItem &item = stock.emplace_back();
        item.value = object;
        item.name = object->key;
        const Value &stage = checks.need(*object, "stage");
        item.stage = stages.read(stage);
        if (item.stage.from_stock != nullptr)
            checks.document().refuse_key(*item.stage.from_stock, "an item of the stock has no use for from_stock");
        if (item.stage.placed())
            checks.document().refuse(stage, "a place belongs to the link's stage, not to an item of the stock");
        item.numbers = numbers_of(checks, members_of(*object), stock_keys(), LVB_STRUCT_ITEM, 0);
        need_number(checks, *object, item.numbers, stock_keys(), LVB_FIELD_COST);
        item.cost = whole_or(checks, item.numbers, LVB_FIELD_COST, 0.0, most_cost, 0);
        item.count = static_cast<std::uint32_t>(whole_or(checks, item.numbers, LVB_FIELD_COUNT, 0.0, most_count, 1));
        item.lowest_mhz = taken(item.numbers, LVB_FIELD_LOWEST_MHZ);
        item.highest_mhz = taken(item.numbers, LVB_FIELD_HIGHEST_MHZ);
    }
    if (stock.empty()) checks.document().refuse(value, "there must be at least one item");
    return stock;
}

std::vector<std::uint32_t> read_candidates(const Checks &checks, const Value &names, const Scenario &scenario) {
    checks.expect(names, Value::Kind::list);
    std::vector<std::string> known;
    for (const StockItem &item : scenario.stock) known.push_back(item.name);
    std::vector<std::uint32_t> candidates;
    for (const Value *name : names.items) {
        const auto found = std::find(known.begin(), known.end(), checks.text(*name));
        if (found == known.end())
            checks.document().refuse(
                *name, in_quotes(name->text) + " is not in the stock" +
                           suggestion(name->text, known, known.empty() ? "" : "; it holds " + listed(known)));
        const auto index = static_cast<std::uint32_t>(found - known.begin());
        if (std::find(candidates.begin(), candidates.end(), index) != candidates.end())
            checks.document().refuse(*name, in_quotes(name->text) + " stands here twice");
        candidates.push_back(index);
    }
    if (candidates.empty()) checks.document().refuse(names, "there must be at least one item");
    std::sort(candidates.begin(), candidates.end());
    return candidates;
}

std::size_t stage_named(const Link &link, const std::string &name) {
    std::vector<std::string> labels;
    std::vector<std::size_t> found;
    std::string numbers;
    for (std::size_t i = 0; i < link.stages.size(); ++i) {
        labels.push_back(link.stages[i].label);
        if (link.stages[i].label != name) continue;
        found.push_back(i);
        numbers += (numbers.empty() ? "" : ", ") + std::to_string(i + 1);
    }
    if (found.size() == 1) return found.front();
    if (found.size() > 1)
        throw Refusal("link " + in_quotes(link.name) + " has " + std::to_string(found.size()) + " stages " +
                      in_quotes(name) + "; give the number of one: " + numbers);
    const std::optional<double> number = number_in(name);
    const auto count = static_cast<double>(link.stages.size());
    if (number && *number >= 1.0 && *number <= count && *number == std::floor(*number))
        return static_cast<std::size_t>(*number) - 1;
    throw Refusal("link " + in_quotes(link.name) + " has no stage " + in_quotes(name) + suggestion(name, labels, "") +
                  "; it has " + listed(labels));
}

void refuse_fault(const Document &document, const Part &part, const lvb_fault &fault, const std::string &where) {
    const auto given = part.numbers.find(fault.field);
    if (given == part.numbers.end()) document.refuse(*part.value, fault_words(fault) + where);
    const Given &number = given->second;
    const bool range = (fault.status == LVB_E_BELOW_RANGE || fault.status == LVB_E_ABOVE_RANGE) &&
                       !std::isnan(fault.minimum) && !std::isnan(fault.maximum);
    if (range) {
        const auto [low, high] =
            std::minmax({number.key->from_library(fault.minimum), number.key->from_library(fault.maximum)});
        document.refuse(*number.value, plain(number.value->number) + " is out of range; allowed " + plain(low) +
                                           " to " + plain(high) + where);
    }
    document.refuse(*number.value, fault_words(fault) + where);
}

} // namespace desk
