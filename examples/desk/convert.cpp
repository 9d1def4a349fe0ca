#include "convert.hpp"

#include "formulas.hpp"
#include "text.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <deque>
#include <map>

namespace desk {
namespace {

std::string folded(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c); });
    return out;
}

// The micro sign, in both of its code points, is written u here.
std::string without_micro_sign(std::string_view name) {
    std::string out(name);
    for (const std::string_view sign : {"\u00B5", "\u03BC"})
        for (std::size_t at = 0; (at = out.find(sign)) != std::string::npos;) out.replace(at, sign.size(), "u");
    return out;
}

// Other spellings that can mean nothing else.
std::string_view usual_name(std::string_view name) {
    struct Spelling {
        std::string_view written;
        std::string_view unit;
    };
    constexpr Spelling spellings[] = {
        {"f", "degF"},       {"\u00B0f", "degF"}, {"fahrenheit", "degF"}, {"c", "degC"},      {"\u00B0c", "degC"},
        {"celsius", "degC"}, {"'", "ft"},         {"foot", "ft"},         {"feet", "ft"},     {"\"", "in"},
        {"inch", "in"},      {"inches", "in"},    {"metre", "m"},         {"metres", "m"},    {"meter", "m"},
        {"meters", "m"},     {"watt", "W"},       {"watts", "W"},         {":1vswr", "vswr"}, {":1 vswr", "vswr"},
    };
    for (const Spelling &spelling : spellings)
        if (folded(name) == spelling.written) return spelling.unit;
    return name;
}

// Milli and mega differ by nothing but their case, so a wrong case is not let pass.
void ask_milli_or_mega(std::string_view name, const Unit &unit) {
    const std::string_view known = unit.name;
    const bool milli = known.starts_with("mW") || known.starts_with("mV");
    if (!milli || name[0] != 'M') return;
    const std::string mega(known.substr(1));
    throw Refusal(in_quotes(name) + " can mean milli or mega: write " + unit.name + " for a thousandth, or a million " +
                  mega);
}

// The unit of that name; letter case counts only where it decides.
const Unit &unit_of(std::string_view written) {
    const std::string name = without_micro_sign(usual_name(written));
    const Unit *found = nullptr;
    std::vector<std::string> known;
    for (const Unit &unit : units()) {
        if (name == unit.name) return unit;
        if (folded(name) == folded(unit.name)) found = &unit;
        known.emplace_back(unit.name);
    }
    if (found != nullptr) {
        ask_milli_or_mega(name, *found);
        return *found;
    }
    throw Refusal("unknown unit " + in_quotes(name) +
                  suggestion(name, known, "; 'levelbook-desk units' lists them all"));
}

struct Amount {
    double value;
    const Unit *unit;
};

// "30mW" or "30 mW".
Amount read_amount(const std::string &text) {
    double value = 0.0;
    const char *begin = text.data();
    const char *end = begin + text.size();
    if (begin != end && *begin == '+') ++begin;
    const auto [rest, error] = std::from_chars(begin, end, value);
    if (error == std::errc::result_out_of_range)
        throw Refusal("the number in " + in_quotes(text) + " is too large or small");
    if (error != std::errc() || !std::isfinite(value))
        throw Refusal(in_quotes(text) +
                      " does not begin with a number; write the value and its unit, for example 30mW");
    if (rest != end && *rest == ',' && rest + 1 != end && rest[1] >= '0' && rest[1] <= '9')
        throw Refusal(in_quotes(text) + " has a decimal comma: write " + std::string(begin, rest) + "." +
                      std::string(rest + 1, end));
    const char *unit = std::find_if(rest, end, [](char c) { return c != ' '; });
    if (unit == end) throw Refusal(in_quotes(text) + " has no unit; write the value and its unit, for example 30mW");
    return {value, &unit_of(std::string_view(unit, static_cast<std::size_t>(end - unit)))};
}

using Path = std::vector<const Rule *>;

// The shortest way from unit to unit, over at most one rule that changes the quantity; false when there is none.
bool find_path(std::string_view from, std::string_view to, Path &path) {
    struct Point {
        std::string_view unit;
        bool changed;
        bool operator<(const Point &other) const {
            return unit != other.unit ? unit < other.unit : changed < other.changed;
        }
    };
    std::map<Point, std::pair<Point, const Rule *>> reached = {{{from, false}, {{from, false}, nullptr}}};
    std::deque<Point> open = {{from, false}};
    for (; !open.empty(); open.pop_front()) {
        const Point at = open.front();
        if (at.unit == to) {
            for (Point back = at; reached.at(back).second != nullptr; back = reached.at(back).first)
                path.insert(path.begin(), reached.at(back).second);
            return true;
        }
        for (const Rule &rule : rules()) {
            if (at.unit != rule.from || (at.changed && !rule.same_quantity)) continue;
            const Point next{rule.to, at.changed || !rule.same_quantity};
            if (reached.insert({next, {at, &rule}}).second) open.push_back(next);
        }
    }
    return false;
}

std::string reachable(std::string_view from) {
    std::string names;
    for (const Unit &unit : units()) {
        Path path;
        if (std::string_view(unit.base) != unit.name || from == unit.name || !find_path(from, unit.base, path))
            continue;
        names += (names.empty() ? "" : ", ") + std::string(unit.name);
    }
    return names;
}

struct Option {
    unsigned need;
    const char *name;
};
constexpr Option options[] = {
    {needs_mhz, "--at (MHz)"},  {needs_ohm, "--ohm"},     {needs_metres, "--m (metres) or --ft"},
    {needs_kelvin, "--kelvin"}, {needs_angle, "--angle"}, {needs_with, "--with"},
};

// Options are what the path needs: no less, and nothing that would go unheard.
void check_options(const Path &path, unsigned given) {
    unsigned needed = needs_nothing;
    for (const Rule *rule : path) needed |= rule->needs;
    for (const Option &option : options) {
        if ((needed & option.need) != 0 && (given & option.need) == 0)
            throw Refusal(std::string("this conversion needs ") + option.name);
        if ((needed & option.need) == 0 && (given & option.need) != 0)
            throw Refusal(std::string("this conversion has no use for ") + option.name);
    }
}

Path path_between(const Unit &from, const Unit &to) {
    Path path;
    if (find_path(from.base, to.base, path)) return path;
    const std::string radiated = std::string(from.name) + "_eirp";
    for (const Unit &unit : units())
        if (radiated == unit.name && find_path(unit.base, to.base, path))
            throw Refusal(std::string(from.name) + " cannot be converted to " + to.name +
                          "; radiated power can: write " + radiated);
    const std::string names = reachable(from.base);
    throw Refusal(std::string(from.name) + " cannot be converted to " + to.name +
                  (names.empty() ? "" : "; it can be to " + names));
}

// A second operand, in the unit that the rule takes it in, which is the one it takes the value in.
double read_with(const std::string &text, const Path &path) {
    const Amount amount = read_amount(text);
    double value = amount.value * amount.unit->factor;
    for (const Rule *rule : path) {
        if ((rule->needs & needs_with) == 0) continue;
        Path way;
        if (!find_path(amount.unit->base, rule->from, way)) break;
        Inputs inputs;
        for (const Rule *step : way) {
            inputs.value = value;
            value = step->compute(inputs);
        }
        if (!std::isnan(value)) return value;
    }
    throw Refusal("--with " + in_quotes(text) + " does not fit this conversion");
}

// "600", "600MHz" or "0.6GHz": in the unit named, if no other stands behind the number.
double read_option(const std::string &text, const char *name, std::string_view unit) {
    double value = 0.0;
    const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error == std::errc() && rest == text.data() + text.size()) return value;
    const Amount amount = read_amount(text);
    Path path;
    Inputs inputs;
    inputs.value = amount.value * amount.unit->factor;
    bool same = find_path(amount.unit->base, unit, path);
    for (const Rule *rule : path) {
        same = same && rule->same_quantity && rule->needs == needs_nothing;
        if (same) inputs.value = rule->compute(inputs);
    }
    if (!same) throw Refusal(std::string(name) + " is given in " + std::string(unit) + ", not in " + amount.unit->name);
    return inputs.value;
}

bool is_power(std::string_view base) { return base == "W" || base.starts_with("mW"); }

} // namespace

Inputs read_options(const OptionTexts &texts) {
    Inputs inputs;
    const auto take = [&](const std::string &text, unsigned need, const char *name, const char *unit, double &into) {
        if (text.empty()) return;
        into = read_option(text, name, unit);
        inputs.given |= need;
    };
    take(texts.mhz, needs_mhz, "--at", "MHz", inputs.mhz);
    take(texts.ohm, needs_ohm, "--ohm", "ohm", inputs.ohm);
    take(texts.metres, needs_metres, "--m", "m", inputs.metres);
    if (!texts.feet.empty()) {
        inputs.metres = lvb_metres_from_feet(read_option(texts.feet, "--ft", "ft"));
        inputs.given |= needs_metres;
    }
    take(texts.kelvin, needs_kelvin, "--kelvin", "K", inputs.kelvin);
    take(texts.angle, needs_angle, "--angle", "deg", inputs.angle_deg);
    return inputs;
}

std::string convert(const std::string &value_and_unit, const std::string &target, Inputs inputs,
                    const std::string &with) {
    const Amount amount = read_amount(value_and_unit);
    const Unit &to = unit_of(target);
    const Path path = path_between(*amount.unit, to);
    if (!with.empty()) inputs.given |= needs_with;
    check_options(path, inputs.given);
    if (!with.empty()) inputs.with = read_with(with, path);

    std::string steps;
    inputs.value = amount.value * amount.unit->factor;
    for (const Rule *rule : path) {
        inputs.value = rule->compute(inputs);
        if (std::isnan(inputs.value))
            throw Refusal(in_quotes(value_and_unit) + " lies outside what this conversion allows: " + rule->formula +
                          (amount.value < 0.0 && is_power(amount.unit->base) ? "; a power is 0 or more" : ""));
        steps += std::string("  ") + rule->from + " to " + rule->to + ": " + rule->formula + "\n";
    }
    const double answer = inputs.value / to.factor;
    return plain(amount.value) + " " + amount.unit->name + " = " +
           (std::isinf(answer) ? plain(answer) : format("%.7g", answer + 0.0)) + " " + to.name + "\n" + steps;
}

std::string print_units() {
    std::string out = "Units:";
    for (const Unit &unit : units()) out += std::string(" ") + unit.name;
    out = wrap(out, 100, "", "  ") + "\nConversions, which may follow on one another:\n";
    for (const Rule &rule : rules()) {
        std::string words = std::string(rule.from) + " to " + rule.to + ": " + rule.formula;
        for (const Option &option : options)
            if ((rule.needs & option.need) != 0) words += std::string("; needs ") + option.name;
        out += wrap(words, 100, "  ", "      ");
    }
    return out + print_formulas();
}

} // namespace desk
