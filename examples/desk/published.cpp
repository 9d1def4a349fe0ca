#include "published.hpp"

#include "print_terms.hpp"
#include "text.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace desk {
namespace {

std::string with(const char *words) { return words[0] == '\0' ? "" : std::string("; ") + words; }

std::string print_rule(const lvb_limit_rule &rule) {
    const std::string words = plain(rule.lowest_mhz) + " to " + plain(rule.highest_mhz) +
                              " MHz: " + lvb_quantity_name(rule.quantity) + " at most " + plain(rule.power_mw) +
                              " mW (" + two(rule.limit_dbm) + " dBm)" + with(rule.remark);
    return wrap(ascii(words), page_columns, "    ", "        ");
}

// Each rule with its bands; what was read stands once, under a letter.
std::string print_power_rules() {
    std::string out;
    std::string name;
    std::vector<std::string> editions;
    for (const lvb_limit_rule &rule : published_rules()) {
        const auto known = std::find(editions.begin(), editions.end(), rule.edition);
        const auto letter = static_cast<char>('a' + (known - editions.begin()));
        if (known == editions.end()) editions.emplace_back(rule.edition);
        if (name != rule.citation)
            out += ascii("  " + in_quotes(rule.citation) + ", " + rule.country + ", edition " + letter) + "\n";
        name = rule.citation;
        out += print_rule(rule);
    }
    out += "\nEditions that were read\n";
    for (std::size_t i = 0; i < editions.size(); ++i)
        out += wrap(ascii(editions[i]), page_columns, format("  %c  ", static_cast<char>('a' + i)), "     ");
    return out;
}

// What an exposure rule allows at some frequencies; a dash where it says nothing.
std::string print_exposure_rules() {
    constexpr double frequencies_mhz[] = {100.0, 300.0, 470.0, 600.0, 900.0, 1500.0, 2000.0, 2450.0, 5800.0};
    std::string out = format("  %-32s", "MHz");
    for (const double mhz : frequencies_mhz) out += format(" %6s", plain(mhz).c_str());
    out += "\n";
    const auto known = [](const char *name) { return std::string_view(name) != "unknown"; };
    for (std::int32_t rule = 1; known(lvb_exposure_name(rule)); ++rule)
        for (std::int32_t audience = 1; known(lvb_audience_name(audience)); ++audience) {
            out += format("  %-32s", (in_quotes(lvb_exposure_name(rule)) + ", " + lvb_audience_name(audience)).c_str());
            for (const double mhz : frequencies_mhz) {
                const double limit = lvb_exposure_limit_w_per_m2(rule, audience, mhz);
                out += format(" %6s", std::isnan(limit) ? "-" : format("%.4g", limit).c_str());
            }
            out += "\n";
        }
    return out;
}

// "20 to 30 dB", "3 dB" or both.
std::string loss_words(const lvb_allowance_info &allowance) {
    const bool range = !std::isnan(allowance.low_db) && !std::isnan(allowance.high_db);
    const bool usual = !std::isnan(allowance.usual_db);
    std::string words = range ? plain(allowance.low_db) + " to " + plain(allowance.high_db) + " dB" : "";
    if (usual) words += (range ? ", usually " : "") + plain(allowance.usual_db) + " dB";
    return words;
}

} // namespace

std::vector<lvb_limit_rule> published_rules() {
    std::vector<lvb_limit_rule> rules;
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        lvb_limit_rule rule{};
        rule.size = sizeof rule;
        lvb_describe_limit_rule(i, &rule, nullptr);
        rules.push_back(rule);
    }
    return rules;
}

std::string print_rules() {
    std::string out = "Limits of power that a link's limits may name as their rule. Rules change: what is in force is "
                      "for you to look up.";
    out = wrap(out, page_columns, "", "") + "\n";
    out += print_power_rules();
    out += "\n" + wrap("Limits of exposure in W/m2 that a link's exposure may name as its rule, at some frequencies; "
                       "'47 CFR 1.1310' (United States) was read in the published text, 'ICNIRP 2020' (whole body, 30 "
                       "min) was read where others quote it: check it against the guideline.",
                       page_columns, "", "");
    return out + "\n" + print_exposure_rules();
}

std::string print_allowances() {
    std::string out =
        wrap("Published losses for a scenario's stages of kind allowance, and rules of the trade. None is taken by "
             "itself: enter the loss_db that fits, with its tolerance_db.",
             page_columns, "", "") +
        "\n";
    for (std::uint32_t i = 0; i < lvb_allowance_count(); ++i) {
        lvb_allowance_info allowance{};
        allowance.size = sizeof allowance;
        lvb_describe_allowance(i, &allowance, nullptr);
        out += wrap(ascii(std::string(allowance.name) + ": " + loss_words(allowance) + "; from: " + allowance.source +
                          with(allowance.remark)),
                    page_columns, "  ", "      ");
    }
    return out;
}

} // namespace desk
