#include "site_words.hpp"

#include "site_verdict.hpp"
#include "tuning.hpp"

#include <algorithm>

namespace desk {

Links links_of(const Scenario &scenario, const Site &site) {
    Links links;
    visit_antennas(site, [&](const SiteAntenna &antenna) {
        const Link *link = &scenario.links[antenna.link];
        if (std::find(links.begin(), links.end(), link) == links.end()) links.push_back(link);
    });
    return links;
}

std::string site_words(const Site &site, std::size_t antennas, const std::string &remark) {
    return std::string(lvb_direction_name(site.direction)) + ", " +
           (site.combine == LVB_COMBINE_SUM ? "sum of the powers of " : "best of ") + counted(antennas, "antenna") +
           remark + "; packs at " + plain(site.pack_height_m) + " m";
}

std::string strongest_words(const Site &site, std::int32_t antenna) {
    return "; strongest there is " +
           (antenna < 0 ? "nothing" : ascii(in_quotes(site.antennas[static_cast<std::size_t>(antenna)].label)));
}

std::string floor_room(double margin_db) {
    if (std::isnan(margin_db)) return "no floor is stated";
    return two(std::abs(margin_db)) + " dB " + (margin_db < 0.0 ? "under the floor" : "above the floor");
}

std::string ceiling_room(double headroom_db) {
    if (std::isnan(headroom_db)) return "no ceiling is stated";
    return two(std::abs(headroom_db)) + " dB " + (headroom_db < 0.0 ? "over the ceiling" : "under the ceiling");
}

std::string print_fading(const Fading &fading, const std::string &words) {
    std::string law = lvb_fading_name(fading.law());
    if (fading.branches > 1.0) law += ", best of " + plain(fading.branches) + " branches";
    return labelled("Fading:", law + ": " + words + "; an allowance that holds fading too would count it twice");
}

std::string percent(std::uint64_t part, std::uint64_t whole) {
    const double share = 100.0 * static_cast<double>(part) / static_cast<double>(whole);
    constexpr double least = 0.05, most = 99.95; // which would print as 0.0 and 100.0
    if (part > 0 && share < least) return "<0.1 %";
    if (part < whole && share >= most) return ">99.9 %";
    return format("%.1f %%", share);
}

std::string in_hundredths(double number) { return plain(std::round(number * 100.0) / 100.0); }

std::string print_shares(const std::string &of_what, const View &view, std::uint64_t unmodelled) {
    std::uint64_t whole = unmodelled;
    for (const Step &step : view.steps) whole += step.points;
    std::string out = "\n  Shares of the " + of_what + " (" + counted(whole, "point") + ")\n";
    const auto row = [&](char mark, const std::string &share, const std::string &words) {
        out += "  " + std::string(2, mark) + format(" %7s  ", share.c_str()) + words + "\n";
    };
    for (const Step &step : view.steps)
        if (step.points > 0 || step.mark != '?')
            row(step.mark, step.judged ? percent(step.points, whole) : "-", step.words);
    if (unmodelled > 0)
        row(unmodelled_mark, percent(unmodelled, whole),
            "not judged: nearer to an antenna, or farther from it, than its path holds");
    return out;
}

std::string print_areas(const Survey &map, const std::string &title) {
    if (map.areas.size() < 2) return "";
    constexpr std::size_t name_columns = 22;
    std::string out = format("\n  %-*s %7s %9s %9s %11s %11s\n", static_cast<int>(name_columns), title.c_str(),
                             "points", "worst/dBm", "margin/dB", "hottest/dBm", "headroom/dB");
    for (std::size_t i = 0; i < map.areas.size(); ++i) {
        const Tally &area = map.areas[i];
        const std::string row =
            format("  %-*s %7llu %9s %9s %11s %11s  ", static_cast<int>(name_columns),
                   shorten(ascii(map.site->areas[i].name), name_columns).c_str(),
                   static_cast<unsigned long long>(area.inside()), two(area.summary.worst_level_dbm).c_str(),
                   two(area.summary.worst_margin_db).c_str(), two(area.summary.hottest_level_dbm).c_str(),
                   two(area.summary.hottest_headroom_db).c_str());
        out += wrap(area_verdict(map, area), page_columns, row, std::string(row.size(), ' '));
    }
    return out;
}

std::string print_missed_areas(const Survey &map) {
    const std::vector<const Area *> missed = missed_areas(map);
    if (missed.empty()) return "";
    std::vector<std::string> names;
    for (const Area *area : missed) names.push_back(area->name);
    return labelled("NOTE:",
                    ascii("no point of the grid lies in the area" + std::string(names.size() == 1 ? " " : "s ") +
                          listed(names) + ", of which this answer knows nothing: take a smaller step"));
}

std::string facing_words(const Site &site) {
    const Wearer &wearer = *site.wearer;
    const auto faced = [&] { return in_quotes(site.antennas[wearer.antenna].label); };
    switch (wearer.facing) {
    case LVB_FACING_AZIMUTH:
        return "azimuth " + plain(wearer.azimuth_deg) + " degrees";
    case LVB_FACING_POINT:
        return "the point x " + in_hundredths(wearer.x_m) + " m, y " + in_hundredths(wearer.y_m) + " m";
    case LVB_FACING_ANTENNA:
        return "the antenna " + faced();
    default:
        return "away from the antenna " + faced();
    }
}

std::string print_wearer(const Site &site) {
    if (!site.wearer) return "";
    const Wearer &wearer = *site.wearer;
    std::string words = "faces " + facing_words(site);
    if (wearer.body_table) words += "; the body counts by its table";
    if (const auto &worn = wearer.antenna_on_pack) {
        words += "; the pack's antenna is turned with it";
        std::string turns;
        for (const auto &[field, given] : worn->numbers)
            turns += (turns.empty() ? " (" : ", ") + std::string(given.key->name) + " " + plain(given.value->number);
        words += turns + (turns.empty() ? "" : ")") + ", and polarization is computed";
        if (!wearer.in_place_of.empty()) words += " in place of the allowance " + in_quotes(wearer.in_place_of);
        if (wearer.most_polarization_loss_db > 0.0)
            words += ", " + plain(wearer.most_polarization_loss_db) + " dB at most";
    }
    return labelled("Wearer:", ascii(words));
}

// Each as often as the links differ in it.
std::string print_allowances(const Site &site, const Links &links) {
    std::vector<std::string> all;
    for (const Link *link : links)
        for (const Stage &stage : link->stages) {
            if (stage.entry.kind != LVB_KIND_ALLOWANCE || is_replaced(site, stage)) continue;
            const bool by_table = stage.body_table != nullptr || stage.gain_table != nullptr;
            const std::string words =
                in_quotes(stage.label) + (by_table ? " by its table" : " " + plain(0.0 - stage.entry.gain_db) + " dB");
            if (std::find(all.begin(), all.end(), words) == all.end()) all.push_back(words);
        }
    if (all.empty()) return "";
    std::string words;
    for (const std::string &one : all) words += (words.empty() ? "" : ", ") + one;
    const bool body = site.wearer && site.wearer->body_table, turned = site.wearer && site.wearer->antenna_on_pack;
    const char *const computed = body && turned ? "a body or polarization" : body ? "a body" : "polarization";
    if (body || turned) words += std::string("; what they hold for ") + computed + " counts twice";
    return labelled("Allowed:", ascii(words));
}

std::string verdict_line(const std::vector<std::string> &failures, const char *holds) {
    std::string words;
    for (const std::string &failure : failures) words += (words.empty() ? "" : "; ") + failure;
    return labelled("Verdict:", words.empty() ? std::string("HOLDS ") + holds : words);
}

std::string print_left_out(const Grounds &grounds, const Links &links, bool fades) {
    std::string words;
    const auto add = [&](const std::string &what) { words += (words.empty() ? "" : "; ") + what; };
    if (grounds.far_worst_db > 0.0)
        add("tolerances of +-" + two(grounds.far_worst_db) + " dB at the floor and +-" + two(grounds.near_worst_db) +
            " dB at the ceiling (the verdict takes them)");
    if (!fades && grounds.site->fading) add("the site's fading (map and walk take it)");
    for (const Link *link : links) {
        const std::string of = " of " + in_quotes(link->name);
        if (link->fading) add("the fading" + of);
        if (!link->limits.empty()) add("the limits" + of);
        if (link->tuning)
            add("the tuning" + of + " " + range_words(*link->tuning) + " (at " + plain(grounds.frequency_mhz) +
                " MHz only)");
    }
    return words.empty() ? "" : labelled("Left out:", ascii(words));
}

std::string print_cancelling(const Site &site, std::size_t antennas) {
    if (antennas < 2 || (site.combine != LVB_COMBINE_SUM && site.direction != LVB_DIRECTION_OUTBOUND)) return "";
    return labelled("NOTE:", "waves of several antennas on one frequency also cancel, in places less than a "
                             "wavelength apart; " +
                                 std::string(site.combine == LVB_COMBINE_SUM
                                                 ? "the sum of their powers is the mean over such places"
                                                 : "the best of them counts here as if it were alone"));
}

std::string print_near_field(std::uint64_t points) {
    if (points == 0) return "";
    return labelled("NOTE:", "near field: " + counted(points, "point") + (points == 1 ? " lies" : " lie") +
                                 " nearer to an antenna than one wavelength, or than its pattern needs to form, "
                                 "where levels do not hold");
}

} // namespace desk
