#include "print_site.hpp"
#include "site_drawing.hpp"
#include "site_verdict.hpp"
#include "site_words.hpp"

namespace desk {
namespace {

std::string time_words(double seconds) { return in_hundredths(seconds) + " s"; }

std::string print_stretches(const WalkSurvey &survey, const std::vector<Stretch> &stretches, double total_s,
                            bool stated, const std::string &name, const std::string &where) {
    if (!stated) return labelled(name, "not judged: none is stated");
    if (stretches.empty()) return labelled(name, "never " + where);
    std::string out =
        labelled(name, where + " for " + time_words(total_s) + " in all, in " + std::to_string(stretches.size()) +
                           (stretches.size() == 1 ? " stretch:" : " stretches:"));
    for (const Stretch &stretch : stretches) {
        const Way::At from = survey.way.at(stretch.from_m), to = survey.way.at(stretch.to_m);
        out += wrap(in_hundredths(stretch.from_m) + " m to " + in_hundredths(stretch.to_m) + " m of the walk (x " +
                        in_hundredths(from.x_m) + " m, y " + in_hundredths(from.y_m) + " m to x " +
                        in_hundredths(to.x_m) + " m, y " + in_hundredths(to.y_m) +
                        " m): " + time_words((stretch.to_m - stretch.from_m) / survey.walk->speed_m_per_s),
                    page_columns, "    - ", "      ");
    }
    return out;
}

std::string place_words(const WalkSurvey &survey, double at_m) {
    const Way::At at = survey.way.at(at_m);
    return "at " + in_hundredths(at_m) + " m of the walk (x " + in_hundredths(at.x_m) + " m, y " +
           in_hundredths(at.y_m) + " m)";
}

std::string print_strip(const WalkSurvey &survey, const std::string &show, bool brief) {
    const View view = view_of(survey, show);
    const Strip strip(survey, view);
    std::string out = "\n" + strip.print();
    if (!brief) {
        std::string legend = "From the beginning of the walk to its end. ";
        if (const std::string scale = strip.scale_words(); !scale.empty()) legend += scale + " ";
        out += wrap(legend + "W is under the worst point, H under the hottest; both in one place show as *.",
                    page_columns, "  ", "  ");
    }
    return out + print_shares("walk", view, survey.result.unmodelled) + "\n";
}

std::string print_outage(const WalkSurvey &survey) {
    const lvb_walk_result &result = survey.result;
    if (!survey.site->fading || result.points == result.unmodelled) return "";
    constexpr double least_s = 0.005; // which would print as 0
    const bool tiny = result.expected_under_floor_s > 0.0 && result.expected_under_floor_s < least_s;
    const std::size_t most = survey.most_outage();
    return print_fading(*survey.site->fading,
                        "below the floor for " +
                            (tiny ? "less than 0.01 s" : time_words(result.expected_under_floor_s)) +
                            " must be expected, on average over many such walks: " + share_words(result.mean_outage) +
                            " of the time; at the worst place " + share_words(survey.outage[most]) + " " +
                            place_words(survey, survey.distance_m[most])) +
           print_stretches(survey, survey.over_outage, survey.over_outage_s, true, "Outage:",
                           "more often below the floor than the " + plain(100.0 * survey.wanted_outage()) +
                               " % that are allowed");
}

} // namespace

std::string print_walk(const WalkSurvey &survey, const Links &links, const std::string &show, bool brief) {
    const Site &site = *survey.site;
    const lvb_walk_result &result = survey.result;
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz",
                           page_columns, "  ", "  ");
    out += labelled("Walk:", ascii(survey.walk->name) + ": " + in_hundredths(result.length_m) + " m at " +
                                 plain(survey.walk->speed_m_per_s) + " m/s, " + time_words(result.duration_s) +
                                 "; looked at every " + plain(survey.walk->step_m) + " m");
    out += print_strip(survey, show, brief);
    if (result.unmodelled > 0)
        out += labelled("Unjudged:", "of " + counted(result.points, "point") + " " + std::to_string(result.unmodelled) +
                                         " lie where an antenna's path does not hold, and count for nothing");
    if (result.points > result.unmodelled) {
        out +=
            labelled("Worst:", two(result.worst_level_dbm) + " dBm, " + floor_room(result.worst_margin_db) + ", " +
                                   place_words(survey, result.worst_m) + strongest_words(site, result.worst_serving));
        out += labelled("Hottest:", two(result.hottest_level_dbm) + " dBm with no allowance taken, " +
                                        ceiling_room(result.hottest_headroom_db) + ", " +
                                        place_words(survey, result.hottest_m) +
                                        strongest_words(site, result.hottest_serving));
    }
    out += print_stretches(survey, survey.under_floor, result.under_floor_s, survey.has_floor,
                           "Floor:", "under the floor");
    out += print_stretches(survey, survey.over_ceiling, result.over_ceiling_s, survey.has_ceiling,
                           "Ceiling:", "over the ceiling");
    out += print_outage(survey);
    return out + verdict_line(failures(survey), "at every point of the walk") + print_wearer(site) +
           print_allowances(site, links) + print_left_out(survey, links, true) +
           print_cancelling(site, site.antennas.size()) + print_near_field(survey.counts.near_field);
}

} // namespace desk
