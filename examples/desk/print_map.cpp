#include "print_site.hpp"
#include "site_drawing.hpp"
#include "site_verdict.hpp"
#include "site_words.hpp"

namespace desk {
namespace {

std::string point_words(const Survey &survey, std::uint64_t column, std::uint64_t row) {
    return "at x " + plain(survey.grid.x_of(column)) + " m, y " + plain(survey.grid.y_of(row)) + " m";
}

std::string print_extremes(const Survey &survey) {
    const lvb_map_summary &summary = survey.all.summary;
    const Site &site = *survey.site;
    const std::string among_judged = summary.unmodelled > 0 ? "; among the points that are judged" : "";
    std::string out =
        labelled("Worst:", "W " + point_words(survey, summary.worst_column, summary.worst_row) + ": " +
                               two(summary.worst_level_dbm) + " dBm, " + floor_room(summary.worst_margin_db) +
                               strongest_words(site, summary.worst_serving) + among_judged);
    out += labelled("Hottest:", "H " + point_words(survey, summary.hottest_column, summary.hottest_row) + ": " +
                                    two(summary.hottest_level_dbm) + " dBm with no allowance taken, " +
                                    ceiling_room(summary.hottest_headroom_db) +
                                    strongest_words(site, summary.hottest_serving) + among_judged);
    if (summary.dropout > 0 && summary.overloaded > summary.overload)
        out += labelled("Both:", counted(summary.overloaded - summary.overload, "point") +
                                     " below the floor would overload with no allowance taken");
    if (!site.fading) return out;
    return out +
           print_fading(*site.fading, "at the worst point below the floor " + share_words(survey.highest_outage()) +
                                          " of the time; " + percent(survey.all.counts.over_outage, summary.points) +
                                          " of the points more often than the " +
                                          plain(100.0 * survey.wanted_outage()) + " % that are allowed");
}

std::string turn_words(const char *name, double angle_deg) {
    return angle_deg == 0.0 ? "" : std::string(", ") + name + " " + plain(angle_deg);
}

std::string print_antennas(const Survey &survey, const std::vector<bool> &on_map) {
    std::string out = "\n  Antennas\n";
    for (std::size_t i = 0; i < on_map.size(); ++i) {
        const SiteAntenna &antenna = survey.site->antennas[i];
        const lvb_antenna &at = antenna.place.entry;
        out += wrap(ascii(antenna.label) + " at x " + plain(at.x_m) + " m, y " + plain(at.y_m) + " m, z " +
                        plain(at.z_m) + " m" + (on_map[i] ? "" : ", off the map") + "; azimuth " +
                        plain(at.azimuth_deg) + turn_words("tilt", at.tilt_deg) + turn_words("roll", at.roll_deg) +
                        turn_words("polarization", at.polarization_deg) + " degrees",
                    page_columns, format("  %c  ", static_cast<char>('a' + static_cast<char>(i % 26))), "     ");
    }
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

std::string print_legend(const Site &site, const Drawing &drawing) {
    std::string legend = "Seen from above: ahead (y) is up the page, right (x) is right.";
    if (site.stage_front_y_m)
        legend += " The stage front is at y " + plain(*site.stage_front_y_m) + " m" +
                  (drawing.reaches(*site.stage_front_y_m) ? "." : ", outside this drawing.");
    if (const std::string scale = drawing.scale_words(); !scale.empty()) legend += " " + scale;
    legend += " W is the worst point, H the hottest, small letters are antennas; two marks in one place may show as *. "
              "Blank is outside the areas.";
    return wrap(legend, page_columns, "  ", "  ");
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
    const lvb_map_summary &summary = survey.all.summary;
    drawing.mark(summary.worst_column, summary.worst_row, 'W');
    drawing.mark(summary.hottest_column, summary.hottest_row, 'H');
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz; " +
                               std::to_string(survey.grid.columns) + " by " + std::to_string(survey.grid.rows) +
                               " squares of " + plain(site.step_m) + " m, each judged in its middle",
                           page_columns, "  ", "  ");
    if (!site.note.empty() && !brief) out += wrap(ascii(site.note), page_columns, "  ", "  ");
    out += "\n       y/m\n" + drawing.print();
    const std::string answer =
        print_shares("area", view, summary.unmodelled) + print_areas(survey, "Areas") + "\n" + print_extremes(survey) +
        verdict_line(failures(survey), "at every point of the areas") + print_wearer(site) +
        print_allowances(site, links) + print_left_out(survey, links, true) + print_missed_areas(survey) +
        print_cancelling(site, site.antennas.size()) + print_near_field(survey.all.counts.near_field);
    if (brief) return out + answer;
    return out + print_legend(site, drawing) + print_antennas(survey, on_map) + print_screens(site) + answer;
}

} // namespace desk
