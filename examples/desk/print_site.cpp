#include "print_site.hpp"

#include "site_drawing.hpp"
#include "site_verdict.hpp"
#include "tuning.hpp"

#include <algorithm>

namespace desk {
namespace {

std::string site_words(const Site &site, std::size_t antennas) {
    return std::string(site.direction == LVB_DIRECTION_OUTBOUND ? "outbound" : "inbound") + ", " +
           (site.combine == LVB_COMBINE_SUM ? "sum of the powers of " : "best of ") + counted(antennas, "antenna") +
           "; packs at " + plain(site.pack_height_m) + " m";
}

std::string label_of(const Site &site, std::int32_t antenna) {
    return antenna < 0 ? "nothing" : in_quotes(site.antennas[static_cast<std::size_t>(antenna)].label);
}

std::string floor_room(double margin_db) {
    if (std::isnan(margin_db)) return "no floor is stated";
    return two(std::abs(margin_db)) + " dB " + (margin_db < 0.0 ? "under the floor" : "above the floor");
}

std::string ceiling_room(double headroom_db) {
    if (std::isnan(headroom_db)) return "no ceiling is stated";
    return two(std::abs(headroom_db)) + " dB " + (headroom_db < 0.0 ? "over the ceiling" : "under the ceiling");
}

std::string percent(std::uint64_t part, std::uint64_t whole, int width) {
    return format("%*.1f %%", width, 100.0 * static_cast<double>(part) / static_cast<double>(whole));
}

std::string print_shares(const Survey &survey, const View &view) {
    const lvb_map_summary &summary = survey.summary;
    const std::uint64_t whole = summary.points + summary.unmodelled;
    std::string out = "\n  Shares of the area (" + counted(whole, "point") + ")\n";
    const auto row = [&](char mark, std::uint64_t count, const std::string &words, bool judged) {
        out +=
            "  " + std::string(2, mark) + " " + (judged ? percent(count, whole, 5) : "      -") + "  " + words + "\n";
    };
    for (const Step &step : view.steps)
        if (step.points > 0 || step.mark != '?') row(step.mark, step.points, step.words, step.judged);
    if (summary.unmodelled > 0)
        row(unmodelled_mark, summary.unmodelled,
            "not judged: nearer to an antenna, or farther from it, than its path holds", true);
    return out;
}

std::string point_words(const Survey &survey, std::uint64_t column, std::uint64_t row) {
    return "at x " + plain(survey.grid.x_of(column)) + " m, y " + plain(survey.grid.y_of(row)) + " m";
}

std::string print_extremes(const Survey &survey) {
    const lvb_map_summary &summary = survey.summary;
    const Site &site = *survey.site;
    const std::string among_judged = summary.unmodelled > 0 ? "; among the points that are judged" : "";
    std::string out =
        labelled("Worst:", "W " + point_words(survey, summary.worst_column, summary.worst_row) + ": " +
                               two(summary.worst_level_dbm) + " dBm, " + floor_room(summary.worst_margin_db) +
                               "; strongest there is " + ascii(label_of(site, summary.worst_serving)) + among_judged);
    out += labelled("Hottest:", "H " + point_words(survey, summary.hottest_column, summary.hottest_row) + ": " +
                                    two(summary.hottest_level_dbm) + " dBm with no allowance taken, " +
                                    ceiling_room(summary.hottest_headroom_db) + "; strongest there is " +
                                    ascii(label_of(site, summary.hottest_serving)) + among_judged);
    if (summary.dropout > 0 && summary.overloaded > summary.overload)
        out += labelled("Both:", counted(summary.overloaded - summary.overload, "point") +
                                     " below the floor would overload with no allowance taken");
    if (survey.outage.empty()) return out;
    return out + labelled("Fading:", "below the floor in up to " + share_words(survey.highest_outage()) +
                                         " of the time; " + percent(survey.counts.over_outage, summary.points, 0) +
                                         " of the points more often than the " + plain(100.0 * survey.wanted_outage()) +
                                         " % that are allowed");
}

std::string print_antennas(const Survey &survey, const std::vector<bool> &on_map) {
    std::string out = "\n  Antennas\n";
    for (std::size_t i = 0; i < on_map.size(); ++i) {
        const SiteAntenna &antenna = survey.site->antennas[i];
        const lvb_antenna &at = antenna.place.entry;
        out += wrap(ascii(antenna.label) + " at x " + plain(at.x_m) + " m, y " + plain(at.y_m) + " m, z " +
                        plain(at.z_m) + " m" + (on_map[i] ? "" : ", off the map"),
                    page_columns, format("  %c  ", static_cast<char>('a' + static_cast<char>(i % 26))), "     ");
    }
    return out;
}

std::string time_words(double seconds) { return plain(std::round(seconds * 100.0) / 100.0) + " s"; }

std::string metres(double length) { return plain(std::round(length * 100.0) / 100.0); }

std::string print_stretches(const WalkSurvey &survey, const std::vector<Stretch> &stretches, double total_s,
                            bool stated, const std::string &name, const std::string &where) {
    if (!stated) return labelled(name, "not judged: none is stated");
    if (stretches.empty()) return labelled(name, "never " + where);
    std::string out =
        labelled(name, where + " for " + time_words(total_s) + " in all, in " + std::to_string(stretches.size()) +
                           (stretches.size() == 1 ? " stretch:" : " stretches:"));
    for (const Stretch &stretch : stretches) {
        const Way::At from = survey.way.at(stretch.from_m), to = survey.way.at(stretch.to_m);
        out += wrap(metres(stretch.from_m) + " m to " + metres(stretch.to_m) + " m of the walk (x " + metres(from.x_m) +
                        " m, y " + metres(from.y_m) + " m to x " + metres(to.x_m) + " m, y " + metres(to.y_m) +
                        " m): " + time_words((stretch.to_m - stretch.from_m) / survey.walk->speed_m_per_s),
                    page_columns, "    - ", "      ");
    }
    return out;
}

} // namespace

Links links_of(const Scenario &scenario, const Site &site) {
    Links links;
    const auto add = [&](const std::vector<SiteAntenna> &antennas) {
        for (const SiteAntenna &antenna : antennas)
            if (const Link *link = &scenario.links[antenna.link];
                std::find(links.begin(), links.end(), link) == links.end())
                links.push_back(link);
    };
    add(site.antennas);
    if (site.placing) add(site.placing->candidates);
    return links;
}

namespace {

std::string verdict_line(const std::vector<std::string> &failures, const char *holds) {
    std::string words;
    for (const std::string &failure : failures) words += (words.empty() ? "" : "; ") + failure;
    return labelled("Verdict:", words.empty() ? std::string("HOLDS ") + holds : words);
}

// What the scenario has of the links, and of the site, that this answer does not take into account.
std::string print_left_out(const Grounds &grounds, const Links &links, bool fades) {
    std::string words;
    const auto add = [&](const std::string &what) { words += (words.empty() ? "" : "; ") + what; };
    if (grounds.far_worst_db > 0.0)
        add("tolerances of +-" + two(grounds.far_worst_db) + " dB at the floor and +-" + two(grounds.near_worst_db) +
            " dB at the ceiling (the verdict takes them)");
    if (!fades && grounds.site->fading) add("the site's fading (map takes it)");
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

// What a person must know of waves that meet, and of antennas that are near.
std::string print_notes(const Grounds &grounds, std::size_t antennas, std::uint64_t near_field) {
    const Site &site = *grounds.site;
    std::string out;
    if (antennas > 1 && (site.combine == LVB_COMBINE_SUM || site.direction == LVB_DIRECTION_OUTBOUND))
        out += labelled("NOTE:", "waves of several antennas on one frequency also cancel, in places less than a "
                                 "wavelength apart; " +
                                     std::string(site.combine == LVB_COMBINE_SUM
                                                     ? "the sum of their powers is the mean over such places"
                                                     : "the best of them counts here as if it were alone"));
    if (near_field > 0)
        out += labelled("NOTE:", "near field: " + counted(near_field, "point") + (near_field == 1 ? " lies" : " lie") +
                                     " nearer to an antenna than one wavelength, or than its pattern needs to form, "
                                     "where levels do not hold");
    return out;
}

std::string print_screens(const Site &site) {
    if (site.screens.empty()) return "";
    std::string out = "\n  Screens\n";
    for (const Screen &screen : site.screens) {
        const lvb_screen &at = screen.entry;
        out += wrap(ascii(screen.label) + " from x " + plain(at.x1_m) + " m, y " + plain(at.y1_m) + " m to x " +
                        plain(at.x2_m) + " m, y " + plain(at.y2_m) + " m, z " + plain(at.bottom_m) + " to " +
                        plain(at.top_m) + " m, " +
                        (at.loss_db > 0.0 ? plain(at.loss_db) + " dB through it" : "opaque, with edges"),
                    page_columns, "  -  ", "     ");
    }
    return out;
}

} // namespace

std::string print_map(const Survey &survey, const Links &links, const std::string &show, bool brief) {
    const Site &site = *survey.site;
    const View view = view_of(survey, show);
    Drawing drawing(survey, view);
    std::vector<bool> on_map;
    for (std::size_t i = 0; i < site.antennas.size(); ++i)
        on_map.push_back(drawing.mark_at(site.antennas[i].place.entry.x_m, site.antennas[i].place.entry.y_m,
                                         static_cast<char>('a' + static_cast<char>(i % 26))));
    const lvb_map_summary &summary = survey.summary;
    drawing.mark(summary.worst_column, summary.worst_row, 'W');
    drawing.mark(summary.hottest_column, summary.hottest_row, 'H');
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz; " +
                               std::to_string(survey.grid.columns) + " by " + std::to_string(survey.grid.rows) +
                               " squares of " + plain(site.step_m) + " m, each judged in its middle",
                           page_columns, "  ", "  ");
    if (!site.note.empty() && !brief) out += wrap(ascii(site.note), page_columns, "  ", "  ");
    out += "\n       y/m\n" + drawing.print();
    const std::string answer = print_shares(survey, view) + "\n" + print_extremes(survey) +
                               verdict_line(failures(survey), "at every point of the areas") +
                               print_left_out(survey, links, true) +
                               print_notes(survey, site.antennas.size(), survey.counts.near_field);
    if (brief) return out + answer;
    std::string legend = "Seen from above: ahead (y) is up the page, right (x) is right.";
    if (site.stage_front_y_m)
        legend += " The stage front is at y " + plain(*site.stage_front_y_m) + " m" +
                  (drawing.reaches(*site.stage_front_y_m) ? "." : ", outside this drawing.");
    if (const std::string scale = drawing.scale_words(); !scale.empty()) legend += " " + scale;
    legend += " W is the worst point, H the hottest, small letters are antennas; two marks in one place may show as *. "
              "Blank is outside the areas.";
    out += wrap(legend, page_columns, "  ", "  ");
    return out + print_antennas(survey, on_map) + print_screens(site) + answer;
}

std::string print_walk(const WalkSurvey &survey, const Links &links) {
    const Site &site = *survey.site;
    const lvb_walk_result &result = survey.result;
    const auto place = [&](double at_m) {
        const Way::At at = survey.way.at(at_m);
        return "at " + metres(at_m) + " m of the walk (x " + metres(at.x_m) + " m, y " + metres(at.y_m) + " m)";
    };
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz",
                           page_columns, "  ", "  ");
    out += labelled("Walk:", ascii(survey.walk->name) + ": " + metres(result.length_m) + " m at " +
                                 plain(survey.walk->speed_m_per_s) + " m/s, " + time_words(result.duration_s) +
                                 "; looked at every " + plain(survey.walk->step_m) + " m");
    if (result.unmodelled > 0)
        out += labelled("Unjudged:", "of " + counted(result.points, "point") + " " + std::to_string(result.unmodelled) +
                                         " lie where an antenna's path does not hold, and count for nothing");
    if (result.points > result.unmodelled) {
        out += labelled("Worst:", two(result.worst_level_dbm) + " dBm, " + floor_room(result.worst_margin_db) + ", " +
                                      place(result.worst_m));
        out += labelled("Hottest:", two(result.hottest_level_dbm) + " dBm with no allowance taken, " +
                                        ceiling_room(result.hottest_headroom_db) + ", " + place(result.hottest_m));
    }
    out += print_stretches(survey, survey.under_floor, result.under_floor_s, survey.has_floor,
                           "Floor:", "under the floor");
    out += print_stretches(survey, survey.over_ceiling, result.over_ceiling_s, survey.has_ceiling,
                           "Ceiling:", "over the ceiling");
    return out + verdict_line(failures(survey), "at every point of the walk") + print_left_out(survey, links, false) +
           print_notes(survey, site.antennas.size(), survey.counts.near_field);
}

std::string placed_words(const PlacingSurvey &survey, const lvb_placement &placement) {
    const std::vector<SiteAntenna> &candidates = survey.site->placing->candidates;
    std::string words = candidates[static_cast<std::size_t>(placement.first)].label;
    if (placement.second >= 0) words += " and " + candidates[static_cast<std::size_t>(placement.second)].label;
    return words;
}

std::string print_places(const PlacingSurvey &survey, const Links &links) {
    const Site &site = *survey.site;
    const Placing &placing = *site.placing;
    const std::size_t standing = placing.keeps_antennas ? site.antennas.size() : 0;
    std::string out = wrap(
        site_words(site, standing + placing.antennas) + "; " + (standing == 0 ? "none" : std::to_string(standing)) +
            " of them in place already; looked at all " + counted(survey.looked_at, "placement") + " of " +
            counted(placing.candidates.size(), "candidate") + "; " + plain(survey.frequency_mhz) + " MHz; " +
            (survey.has_ceiling ? "every point must keep " + plain(placing.least_headroom_db) + " dB under the ceiling"
                                : "no ceiling is stated, so least_headroom_db counts for nothing"),
        page_columns, "  ", "  ");
    const std::string verdict = verdict_line(failures(survey), "at every point of the areas with the best of them") +
                                print_left_out(survey, links, false) +
                                print_notes(survey, standing + placing.antennas, 0);
    if (survey.best.empty())
        return out +
               labelled("None:", "every placement leaves some point less than " + plain(placing.least_headroom_db) +
                                     " dB under the ceiling") +
               verdict;
    std::size_t rank = 0;
    for (const lvb_placement &placement : survey.best) {
        out += wrap(ascii(placed_words(survey, placement)) + ": worst point " + two(placement.worst_level_dbm) +
                        " dBm, " + floor_room(placement.worst_margin_db) + "; hottest " +
                        two(placement.hottest_level_dbm) + " dBm, " + ceiling_room(placement.hottest_headroom_db),
                    page_columns, format("  %3zu. ", ++rank), "       ");
        for (const std::int32_t index : {placement.first, placement.second}) {
            if (index < 0) continue;
            const lvb_antenna &at = placing.candidates[static_cast<std::size_t>(index)].place.entry;
            out += format("       at x %s m, y %s m, z %s m, azimuth %s degrees\n", metres(at.x_m).c_str(),
                          metres(at.y_m).c_str(), metres(at.z_m).c_str(), plain(at.azimuth_deg).c_str());
        }
    }
    return out + verdict;
}

} // namespace desk
