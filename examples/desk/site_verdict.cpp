#include "site_verdict.hpp"

namespace desk {
namespace {

void add_unjudged(const Grounds &grounds, std::vector<std::string> &failures) {
    if (!grounds.has_floor) failures.emplace_back("NOT JUDGED at the floor: none is stated");
    if (!grounds.has_ceiling) failures.emplace_back("NOT JUDGED at the ceiling: none is stated");
}

std::string at_points(std::uint64_t some, std::uint64_t whole) {
    return " at " + std::to_string(some) + " of " + counted(whole, "point");
}

void add_missed(const Survey &survey, std::vector<std::string> &failures) {
    if (const std::size_t missed = missed_areas(survey).size(); missed > 0)
        failures.push_back("NOT JUDGED in " + std::to_string(missed) + " of " + counted(survey.areas.size(), "area") +
                           ": no point of the grid lies in " + (missed == 1 ? "it" : "them"));
}

std::vector<const char *> area_failures(const Survey &survey, const Tally &area) {
    if (area.inside() == 0) return {"NO POINT"};
    std::vector<const char *> all;
    if (area.summary.dropout > 0) all.push_back("DROPS OUT");
    if (area.summary.overloaded > 0) all.push_back("OVERLOADS");
    if (area.counts.over_outage > 0) all.push_back("FADES");
    if (area.counts.doubtful > 0) all.push_back("DOUBTFUL");
    if (area.summary.unmodelled > 0 || !survey.has_floor || !survey.has_ceiling) all.push_back("NOT JUDGED");
    return all;
}

// Which limit the tolerances reach, by the least room there is above the one and under the other.
std::string doubtful_words(const Grounds &grounds, double margin_db, double headroom_db) {
    const bool far = margin_db < grounds.far_worst_db, near = headroom_db < grounds.near_worst_db;
    return std::string(": the tolerances together can push it ") + (far ? "below the floor" : "") +
           (far && near ? " or " : "") + (near ? "above the ceiling" : "");
}

} // namespace

std::string counted(std::uint64_t count, const std::string &what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

std::vector<const Area *> missed_areas(const Survey &survey) {
    std::vector<const Area *> missed;
    for (std::size_t i = 0; i < survey.areas.size(); ++i)
        if (survey.areas[i].inside() == 0) missed.push_back(&survey.site->areas[i]);
    return missed;
}

std::string area_verdict(const Survey &survey, const Tally &area) {
    std::string words;
    for (const char *what : area_failures(survey, area)) words += (words.empty() ? "" : ", ") + std::string(what);
    return words.empty() ? "holds" : words;
}

bool holds(const Survey &survey, const Tally &area) { return area_failures(survey, area).empty(); }

std::vector<std::string> failures(const Survey &survey) {
    const lvb_map_summary &summary = survey.all.summary;
    const Counts &counts = survey.all.counts;
    std::vector<std::string> all;
    const auto add = [&](std::uint64_t count, const std::string &what, const std::string &why) {
        if (count > 0) all.push_back(what + at_points(count, survey.all.inside()) + why);
    };
    add(summary.dropout, "DROPS OUT", "");
    add(summary.overloaded, "OVERLOADS", "");
    add(counts.over_outage, "FADES below the floor too often", "");
    add(counts.doubtful, "DOUBTFUL", doubtful_words(survey, summary.worst_margin_db, summary.hottest_headroom_db));
    add(summary.unmodelled, "NOT JUDGED", ": a path does not hold there");
    add_missed(survey, all);
    add_unjudged(survey, all);
    return all;
}

std::vector<std::string> failures(const WalkSurvey &survey) {
    const lvb_walk_result &result = survey.result;
    std::vector<std::string> all;
    if (result.worst_margin_db < 0.0) all.emplace_back("DROPS OUT");
    if (result.hottest_headroom_db < 0.0) all.emplace_back("OVERLOADS");
    if (survey.counts.over_outage > 0)
        all.push_back("FADES below the floor too often" + at_points(survey.counts.over_outage, result.points));
    if (survey.counts.doubtful > 0)
        all.push_back("DOUBTFUL" + at_points(survey.counts.doubtful, result.points) +
                      doubtful_words(survey, result.worst_margin_db, result.hottest_headroom_db));
    if (result.unmodelled > 0)
        all.push_back("NOT JUDGED" + at_points(result.unmodelled, result.points) + ": a path does not hold there");
    add_unjudged(survey, all);
    return all;
}

std::vector<std::string> failures(const PlacingSurvey &survey) {
    std::vector<std::string> all;
    if (survey.best.empty()) {
        all.emplace_back("NO PLACEMENT keeps the headroom at every point");
    } else {
        const lvb_placement &best = survey.best.front();
        if (best.worst_margin_db < 0.0) all.emplace_back("DROPS OUT at some point of the best placement");
        if (survey.is_doubtful(best.worst_margin_db, best.hottest_headroom_db))
            all.push_back("DOUBTFUL at the worst or hottest point of the best placement" +
                          doubtful_words(survey, best.worst_margin_db, best.hottest_headroom_db));
    }
    add_missed(*survey.map, all);
    add_unjudged(survey, all);
    return all;
}

} // namespace desk
