#include "convert.hpp"

#include "text.hpp"

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

// The unit of that name; letter case counts only where two names differ by nothing else.
const Unit &unit_of(std::string_view name) {
    const Unit *found = nullptr;
    std::vector<std::string> known;
    for (const Unit &unit : units()) {
        if (name == unit.name) return unit;
        if (folded(name) == folded(unit.name)) found = &unit;
        known.emplace_back(unit.name);
    }
    if (found != nullptr) return *found;
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
    {needs_mhz, "--at (MHz)"},  {needs_ohm, "--ohm"},     {needs_metres, "--m (metres)"},
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

} // namespace

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
            throw Refusal(in_quotes(value_and_unit) + " lies outside what this conversion allows: " + rule->formula);
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
    return out;
}

} // namespace desk
