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

const char *const doubtful_words = "the tolerances together can push it below the floor or above the ceiling";

} // namespace

std::string counted(std::uint64_t count, const std::string &what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

std::vector<std::string> failures(const Survey &survey) {
    const lvb_map_summary &summary = survey.summary;
    const std::uint64_t whole = summary.points + summary.unmodelled;
    std::vector<std::string> all;
    const auto add = [&](std::uint64_t count, const std::string &what, const std::string &why) {
        if (count > 0) all.push_back(what + at_points(count, whole) + why);
    };
    add(summary.dropout, "DROPS OUT", "");
    add(summary.overloaded, "OVERLOADS", "");
    add(survey.counts.over_outage, "FADES below the floor too often", "");
    add(survey.counts.doubtful, "DOUBTFUL", std::string(": ") + doubtful_words);
    add(summary.unmodelled, "NOT JUDGED", ": a path does not hold there");
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
        all.push_back("DOUBTFUL" + at_points(survey.counts.doubtful, result.points) + ": " + doubtful_words);
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
            all.push_back(std::string("DOUBTFUL at the worst or hottest point of the best placement: ") +
                          doubtful_words);
    }
    add_unjudged(survey, all);
    return all;
}

} // namespace desk
