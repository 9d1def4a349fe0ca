#include "print_site.hpp"
#include "site_verdict.hpp"
#include "site_words.hpp"

namespace desk {

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
    const std::string standing_words =
        ", " + (standing == 0 ? "none" : std::to_string(standing)) + " of them in place already";
    std::string out = wrap(
        site_words(site, standing + placing.antennas, standing_words) + "; looked at all " +
            counted(survey.looked_at, "placement") + " of " + counted(placing.candidates.size(), "candidate") + "; " +
            plain(survey.frequency_mhz) + " MHz; " +
            (survey.has_ceiling ? "every point must keep " + plain(placing.least_headroom_db) + " dB under the ceiling"
                                : "no ceiling is stated, so least_headroom_db counts for nothing"),
        page_columns, "  ", "  ");
    const std::string verdict = verdict_line(failures(survey), "at every point of the areas with the best of them") +
                                print_wearer(site) + print_allowances(site, links) +
                                print_left_out(survey, links, false) + print_missed_areas(*survey.map) +
                                print_cancelling(site, standing + placing.antennas) +
                                print_near_field(survey.best.empty() ? 0 : survey.near_field.front());
    if (survey.best.empty())
        return out +
               labelled("None:", "every placement leaves some point less than " + plain(placing.least_headroom_db) +
                                     " dB under the ceiling") +
               verdict;
    for (std::size_t i = 0; i < survey.best.size(); ++i) {
        const lvb_placement &placement = survey.best[i];
        const std::uint64_t near_points = survey.near_field[i];
        const std::string near =
            near_points == 0 ? "" : "; " + counted(near_points, "point") + " in the near field of an antenna";
        out +=
            wrap(ascii(placed_words(survey, placement)) + ": worst point " + two(placement.worst_level_dbm) + " dBm, " +
                     floor_room(placement.worst_margin_db) + "; hottest " + two(placement.hottest_level_dbm) +
                     " dBm, " + ceiling_room(placement.hottest_headroom_db) + near,
                 page_columns, format("  %3zu. ", i + 1), "       ");
        for (const std::int32_t index : {placement.first, placement.second}) {
            if (index < 0) continue;
            const lvb_antenna &at = placing.candidates[static_cast<std::size_t>(index)].place.entry;
            out += format("       at x %s m, y %s m, z %s m, azimuth %s degrees\n", in_hundredths(at.x_m).c_str(),
                          in_hundredths(at.y_m).c_str(), in_hundredths(at.z_m).c_str(), plain(at.azimuth_deg).c_str());
        }
    }
    const std::string areas = print_areas(*survey.map, "Areas with placement 1");
    return out + (areas.empty() ? "" : areas + "\n") + verdict;
}

} // namespace desk
