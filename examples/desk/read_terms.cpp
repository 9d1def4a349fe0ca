#include "read_terms.hpp"

#include "published.hpp"
#include "read_parts.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

double same(double x) { return x; }
double tenfold(double x) { return x * 10.0; } // 1 mW/cm2 is 10 W/m2
double tenth(double x) { return x / 10.0; }

// Numbers of this program that no struct of the library has.
enum OwnField : std::int32_t {
    power_density = -1,
    reflection_factor = -2,
    transmitters = -3,
    outage = -4,
    fading_parameter = -5,
    branches = -6
};

const std::vector<NumberKey> &exposure_keys() {
    static const std::vector<NumberKey> keys = {
        {"limit_w_per_m2", power_density, same, same, 0, "W/m2"},
        {"limit_mw_per_cm2", power_density, tenfold, tenth, 0, "mW/cm2"},
        {"reflection_factor", reflection_factor, same, same, 0, ""},
        {"transmitters", transmitters, same, same, 0, "transmitters"},
    };
    return keys;
}

double hundredfold(double x) { return x * 100.0; }
double hundredth(double x) { return x / 100.0; }

constexpr std::uint32_t bit_of(Fading::Model model) { return 1u << (static_cast<std::uint32_t>(model) + 1u); }

const std::vector<NumberKey> &fading_keys() {
    constexpr std::uint32_t every = ~0u;
    constexpr std::uint32_t shadowed = bit_of(Fading::Model::log_normal) | bit_of(Fading::Model::suzuki);
    static const std::vector<NumberKey> keys = {
        {"outage_percent", outage, hundredth, hundredfold, every, "%"},
        {"branches", branches, same, same, every, "branches"},
        {"k_db", fading_parameter, same, same, bit_of(Fading::Model::rice), "dB"},
        {"shape", fading_parameter, same, same, bit_of(Fading::Model::nakagami), ""},
        {"standard_deviation_db", fading_parameter, same, same, shadowed, "dB"},
    };
    return keys;
}

// A level and the place where it was measured: both, or none. The answer is an LVB_PLACE_.
std::int32_t read_measured(const Checks &checks, const Value &value, const GivenNumbers &numbers, std::int32_t field,
                           const char *place_key) {
    const Value *place = value.find(place_key);
    const bool given = numbers.contains(field);
    if (place != nullptr && !given)
        checks.document().refuse(value, ways_to_write(noise_keys(), field, 0) + " is missing");
    if (place == nullptr && given)
        checks.document().refuse(value, std::string(place_key) + " is missing: antenna (at its terminal) or receiver "
                                                                 "(at its input)");
    return place == nullptr ? std::int32_t{LVB_PLACE_NONE}
                            : checks.choose(*place, words(lvb_place_name, 1), "place of a measured level") + 1;
}

Limit limit_of(const Value &value, const lvb_limit_rule &rule) {
    Limit limit;
    limit.value = &value;
    limit.rule = rule;
    limit.entry = {sizeof limit.entry, rule.quantity, rule.limit_dbm, rule.lowest_mhz, rule.highest_mhz};
    return limit;
}

std::vector<Limit> read_published_limit(const Checks &checks, const Value &value, double frequency_mhz) {
    checks.check_keys(value, {"rule", "note"}, "a published limit");
    const std::vector<lvb_limit_rule> rules = published_rules();
    std::vector<std::string> names;
    for (const lvb_limit_rule &rule : rules)
        if (std::find(names.begin(), names.end(), rule.citation) == names.end()) names.emplace_back(rule.citation);
    const std::int32_t chosen = checks.choose(*value.find("rule"), names, "rule that the library knows");
    const std::string &name = names[static_cast<std::size_t>(chosen)];
    std::vector<Limit> limits;
    for (const lvb_limit_rule &rule : rules)
        if (name == rule.citation && frequency_mhz >= rule.lowest_mhz && frequency_mhz <= rule.highest_mhz)
            limits.push_back(limit_of(value, rule));
    if (!limits.empty()) return limits;
    // None for this frequency: the first tells that the rule does not cover it.
    for (const lvb_limit_rule &rule : rules)
        if (name == rule.citation) return {limit_of(value, rule)};
    return limits;
}

Limit read_own_limit(const Checks &checks, const Value &value) {
    checks.check_keys(value, with_names({"label", "quantity", "rule", "note"}, limit_keys(), 0), "a limit");
    Limit limit;
    limit.value = &value;
    limit.label = checks.text(checks.need(value, "label"));
    const std::int32_t quantity =
        checks.choose(checks.need(value, "quantity"), words(lvb_quantity_name, 1), "quantity that a rule limits") + 1;
    limit.numbers = numbers_of(checks, members_of(value), limit_keys(), LVB_STRUCT_LIMIT, 0);
    need_number(checks, value, limit.numbers, limit_keys(), LVB_FIELD_LIMIT_DBM);
    limit.entry = {sizeof limit.entry, quantity, taken(limit.numbers, LVB_FIELD_LIMIT_DBM),
                   taken(limit.numbers, LVB_FIELD_LOWEST_MHZ), taken(limit.numbers, LVB_FIELD_HIGHEST_MHZ)};
    return limit;
}

std::uint32_t read_transmitters(const Checks &checks, const GivenNumbers &numbers) {
    constexpr double most = 1000.0;
    if (!numbers.contains(transmitters)) return 1;
    const double number = within(checks, numbers, transmitters, 1.0, most);
    if (number != std::floor(number))
        checks.document().refuse(*numbers.at(transmitters).value, plain(number) + " is no number of transmitters");
    return static_cast<std::uint32_t>(number);
}

// The index of the link that is named.
std::size_t link_named(const Checks &checks, const Value &name, const std::vector<Link> &links) {
    std::vector<std::string> names;
    for (const Link &link : links) names.push_back(link.name);
    return static_cast<std::size_t>(checks.choose(name, names, "link of this scenario"));
}

} // namespace

NoiseTerms read_noise(const Checks &checks, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"noise_at", "interference_at", "note"}, noise_keys(), 0), "noise");
    checks.text_or_empty(value, "note");
    NoiseTerms noise;
    noise.value = &value;
    const GivenNumbers &numbers = noise.numbers =
        numbers_of(checks, members_of(value), noise_keys(), LVB_STRUCT_NOISE_CONDITIONS, 0);
    lvb_noise_conditions &entry = noise.entry;
    entry.size = sizeof entry;
    entry.bandwidth_mhz = taken(numbers, LVB_FIELD_BANDWIDTH_MHZ);
    entry.carriers = whole(checks, numbers, LVB_STRUCT_NOISE_CONDITIONS, 0, LVB_FIELD_CARRIERS);
    entry.antenna_temperature_k = taken(numbers, LVB_FIELD_ANTENNA_TEMPERATURE_K);
    entry.external_noise_figure_db = taken(numbers, LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB);
    entry.noise_at = read_measured(checks, value, numbers, LVB_FIELD_NOISE_DBM, "noise_at");
    entry.noise_dbm = taken(numbers, LVB_FIELD_NOISE_DBM);
    entry.interference_at = read_measured(checks, value, numbers, LVB_FIELD_INTERFERENCE_DBM, "interference_at");
    entry.interference_dbm = taken(numbers, LVB_FIELD_INTERFERENCE_DBM);
    entry.carrier_to_noise_db = taken(numbers, LVB_FIELD_CARRIER_TO_NOISE_DB);
    if (numbers.contains(LVB_FIELD_CARRIER_TO_NOISE_DB)) entry.stated |= LVB_STATED_CARRIER_TO_NOISE;
    return noise;
}

std::vector<Limit> read_limit(const Checks &checks, const Value &value, double frequency_mhz) {
    checks.expect(value, Value::Kind::object);
    checks.text_or_empty(value, "note");
    if (value.find("rule") != nullptr) return read_published_limit(checks, value, frequency_mhz);
    return {read_own_limit(checks, value)};
}

Exposure read_exposure(const Checks &checks, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"rule", "audience", "note"}, exposure_keys(), 0), "exposure");
    checks.text_or_empty(value, "note");
    Exposure exposure;
    exposure.value = &value;
    const GivenNumbers &numbers = exposure.numbers =
        numbers_of(checks, members_of(value), exposure_keys(), LVB_STRUCT_NONE, 0);
    const Value *rule = value.find("rule");
    const Value *audience = value.find("audience");
    const bool own = numbers.contains(power_density);
    if (rule != nullptr && own)
        checks.document().refuse_key(*rule, std::string("the limit stands here as ") +
                                                numbers.at(power_density).key->name + " too; give one of them");
    if (rule == nullptr && !own) checks.document().refuse(value, "rule, limit_w_per_m2 or limit_mw_per_cm2 is missing");
    if (rule != nullptr) {
        exposure.rule = checks.choose(*rule, words(lvb_exposure_name, 1), "exposure rule that the library knows") + 1;
        exposure.audience = checks.choose(checks.need(value, "audience"), words(lvb_audience_name, 1), "audience") + 1;
    } else {
        constexpr double least = 1e-6, most = 1e6;
        if (audience != nullptr) checks.document().refuse_key(*audience, "an own limit says already whom it protects");
        exposure.limit_w_per_m2 = within(checks, numbers, power_density, least, most);
    }
    if (!numbers.contains(reflection_factor))
        checks.document().refuse(value, "reflection_factor is missing: of the power, 1 in free space to 4 where a "
                                        "reflection doubles the field");
    constexpr double free_space = 1.0, doubled_field = 4.0;
    exposure.reflection_factor = within(checks, numbers, reflection_factor, free_space, doubled_field);
    exposure.transmitters = read_transmitters(checks, numbers);
    return exposure;
}

Fading read_fading(const Checks &checks, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.text_or_empty(value, "note");
    Fading fading;
    fading.value = &value;
    const std::int32_t model =
        checks.choose(checks.need(value, "model"), words(lvb_fading_name, LVB_FADING_RAYLEIGH), "model of fading");
    fading.model = static_cast<Fading::Model>(model);
    checks.check_keys(value, with_names({"model", "note"}, fading_keys(), fading.law()),
                      std::string("fading of model '") + lvb_fading_name(fading.law()) + "'");
    const GivenNumbers &numbers = fading.numbers =
        numbers_of(checks, members_of(value), fading_keys(), LVB_STRUCT_NONE, 0);
    const auto need = [&](std::int32_t field) {
        need_number(checks, value, numbers, fading_keys(), field, fading.law());
    };
    need(outage);
    constexpr double least_outage = 1e-9, most_outage = 0.999999, most_branches = 100.0;
    fading.outage = within(checks, numbers, outage, least_outage, most_outage);
    if (numbers.contains(branches)) fading.branches = whole_within(checks, numbers, branches, 1.0, most_branches);
    if (fading.model == Fading::Model::rayleigh) return fading;
    need(fading_parameter);
    const bool rice = fading.model == Fading::Model::rice;
    const bool nakagami = fading.model == Fading::Model::nakagami;
    constexpr double least_k = -100.0, most_k = 40.0, least_shape = 0.5, most_shape = 100.0, most_deviation = 30.0;
    fading.parameter = within(checks, numbers, fading_parameter,
                              rice       ? least_k
                              : nakagami ? least_shape
                                         : 0.0,
                              rice       ? most_k
                              : nakagami ? most_shape
                                         : most_deviation);
    return fading;
}

Neighbours read_neighbours(const Checks &checks, const Value &value, const std::vector<Link> &links) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"name", "transmitter", "receiver", "note"}, neighbour_keys(), 0),
                      "two systems side by side");
    checks.text_or_empty(value, "note");
    Neighbours pair;
    pair.value = &value;
    pair.name = checks.text(checks.need(value, "name"));
    pair.transmitter = link_named(checks, checks.need(value, "transmitter"), links);
    pair.receiver = link_named(checks, checks.need(value, "receiver"), links);
    if (pair.transmitter == pair.receiver)
        checks.document().refuse(*value.find("receiver"), "transmitter and receiver belong to the same link");
    const GivenNumbers &numbers = pair.numbers =
        numbers_of(checks, members_of(value), neighbour_keys(), LVB_STRUCT_NEIGHBOURS, 0);
    lvb_neighbours &entry = pair.entry;
    entry.size = sizeof entry;
    entry.separation_m = taken(numbers, LVB_FIELD_SEPARATION_M);
    entry.coupling_loss_db = taken(numbers, LVB_FIELD_COUPLING_LOSS_DB);
    entry.transmit_gain_dbi = taken(numbers, LVB_FIELD_TRANSMIT_GAIN_DBI);
    entry.receive_gain_dbi = taken(numbers, LVB_FIELD_RECEIVE_GAIN_DBI);
    entry.receive_filter_db = taken(numbers, LVB_FIELD_RECEIVE_FILTER_DB);
    entry.transmit_filter_db = taken(numbers, LVB_FIELD_TRANSMIT_FILTER_DB);
    entry.blocking_dbm = taken(numbers, LVB_FIELD_BLOCKING_DBM);
    entry.transmit_noise_dbm = taken(numbers, LVB_FIELD_TRANSMIT_NOISE_DBM);
    entry.transmit_noise_dbc_per_hz = taken(numbers, LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ);
    entry.wanted_margin_db = taken(numbers, LVB_FIELD_WANTED_MARGIN_DB);
    entry.wanted_rise_db = taken(numbers, LVB_FIELD_WANTED_RISE_DB);
    if (numbers.contains(LVB_FIELD_BLOCKING_DBM)) entry.stated |= LVB_STATED_BLOCKING;
    if (numbers.contains(LVB_FIELD_TRANSMIT_NOISE_DBM)) entry.stated |= LVB_STATED_TRANSMIT_NOISE;
    if (numbers.contains(LVB_FIELD_SEPARATION_M))
        for (const std::int32_t field : {LVB_FIELD_TRANSMIT_GAIN_DBI, LVB_FIELD_RECEIVE_GAIN_DBI})
            if (!numbers.contains(field))
                checks.document().refuse(value, ways_to_write(neighbour_keys(), field, 0) +
                                                    " is missing: the gain towards the other antenna");
    return pair;
}

} // namespace desk
