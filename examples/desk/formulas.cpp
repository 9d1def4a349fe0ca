#include "formulas.hpp"

#include "checks.hpp"
#include "text.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace desk {
namespace {

constexpr std::size_t page = 100; // columns
constexpr std::string_view prefix = "lvb_";

struct Formula {
    std::string name;   ///< without its prefix
    std::string ranges; ///< "turns [3, 100], spacing_wavelengths [0.1, 0.5]"
    std::vector<std::string> arguments;
    double (*compute)(const double *);
    std::string note; ///< what numbers that stand for something stand for
};

// The names before each bracket.
std::vector<std::string> names_in(const std::string &ranges) {
    std::vector<std::string> names;
    for (std::size_t at = 0; at < ranges.size();) {
        const std::size_t bracket = ranges.find_first_of("[(", at);
        names.push_back(ranges.substr(at, bracket - 1 - at));
        at = std::min(ranges.find_first_of("])", bracket), ranges.size());
        at = std::min(ranges.find_first_not_of("]), ", at), ranges.size());
    }
    return names;
}

Formula formula(std::string_view function, const char *ranges, double (*compute)(const double *)) {
    return {std::string(function.substr(prefix.size())), ranges, names_in(ranges), compute, ""};
}

// "1 is 47 CFR 1.1310, 2 is ICNIRP 2020"
std::string numbered(const std::vector<std::string> &words) {
    std::string all;
    for (std::size_t i = 0; i < words.size(); ++i)
        all += (i == 0 ? "" : ", ") + std::to_string(i + 1) + " is " + words[i];
    return all;
}

// The one plain function that takes values of an enumeration, which the header's table of functions leaves out.
Formula exposure_limit() {
    Formula limit = formula("lvb_exposure_limit_w_per_m2",
                            "exposure [1, 2], audience [1, 2], frequency_mhz [30, 300000]", [](const double *x) {
                                const auto whole = [](double value) { return value == 1.0 || value == 2.0; };
                                if (!whole(x[0]) || !whole(x[1])) return std::nan("");
                                return lvb_exposure_limit_w_per_m2(static_cast<std::int32_t>(x[0]),
                                                                   static_cast<std::int32_t>(x[1]), x[2]);
                            });
    limit.note = "exposure " + numbered(words(lvb_exposure_name, 1)) + " (as others quote it); audience " +
                 numbered(words(lvb_audience_name, 1));
    return limit;
}

const std::vector<Formula> &formulas() {
#define LVB_SCALAR_1(f, ranges, accuracy) formula(#f, ranges, [](const double *x) { return f(x[0]); }),
#define LVB_SCALAR_2(f, ranges, accuracy) formula(#f, ranges, [](const double *x) { return f(x[0], x[1]); }),
#define LVB_SCALAR_3(f, ranges, accuracy) formula(#f, ranges, [](const double *x) { return f(x[0], x[1], x[2]); }),
    static const std::vector<Formula> all = {
#include "levelbook_scalars.inc"
        exposure_limit(),
    };
#undef LVB_SCALAR_1
#undef LVB_SCALAR_2
#undef LVB_SCALAR_3
    return all;
}

std::string with_note(const Formula &formula) { return formula.note.empty() ? "" : "; " + formula.note; }

// By its name in the header, or without the header's prefix.
const Formula &formula_named(const std::string &written) {
    const std::string name = written.starts_with(prefix) ? written.substr(prefix.size()) : written;
    std::vector<std::string> names;
    for (const Formula &one : formulas()) {
        if (one.name == name) return one;
        names.push_back(one.name);
    }
    throw Refusal("the library has no function " + in_quotes(written) +
                  suggestion(name, names, "; 'levelbook-desk units' lists them all"));
}

} // namespace

bool asks_for_formula(const std::vector<std::string> &words) {
    if (words.empty()) return false;
    if (words[0].starts_with(prefix) || lvb_formula_from_name(words[0].c_str()) != LVB_FORMULA_NONE) return true;
    return std::any_of(words.begin() + 1, words.end(),
                       [](const std::string &word) { return word.find('=') != std::string::npos; });
}

std::string answer_formula(const std::vector<std::string> &words) {
    const Formula &asked = formula_named(words[0]);
    std::array<double, 3> values{};
    std::vector<bool> given(asked.arguments.size());
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::size_t equals = std::min(words[i].find('='), words[i].size());
        const std::string name = words[i].substr(0, equals);
        const auto argument = std::find(asked.arguments.begin(), asked.arguments.end(), name);
        if (argument == asked.arguments.end() || equals == words[i].size())
            throw Refusal(in_quotes(words[i]) + " is no argument; " + asked.name + " takes " + asked.ranges +
                          ", each as name=value");
        const auto at = static_cast<std::size_t>(argument - asked.arguments.begin());
        if (given[at]) throw Refusal(name + " is given twice");
        const std::optional<double> number = number_in(words[i].substr(equals + 1));
        if (!number) throw Refusal(in_quotes(words[i]) + " holds no number; write it as name=value, without a unit");
        values[at] = *number;
        given[at] = true;
    }
    for (std::size_t at = 0; at < given.size(); ++at)
        if (!given[at])
            throw Refusal(asked.name + " needs " + asked.arguments[at] + "; it takes " + asked.ranges +
                          with_note(asked));
    const double answer = asked.compute(values.data());
    if (std::isnan(answer))
        throw Refusal("this lies outside what " + asked.name + " allows: " + asked.ranges + with_note(asked));
    std::string out = asked.name + " = " + (std::isinf(answer) ? plain(answer) : format("%.7g", answer + 0.0)) + "\n";
    for (std::size_t at = 0; at < given.size(); ++at)
        out += "  " + asked.arguments[at] + " " + plain(values[at]) + "\n";
    return out + (asked.note.empty() ? "" : wrap(asked.note, page, "  ", "    "));
}

std::string print_formulas() {
    std::string out =
        "Functions of the library by name, with the range of each argument (levelbook.h says what they are):\n";
    for (const Formula &one : formulas())
        out += wrap(one.name + ": " + one.ranges + with_note(one), page, "  ", "      ");
    return out;
}

} // namespace desk
