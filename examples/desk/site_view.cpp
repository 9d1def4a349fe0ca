#include "site_view.hpp"

#include <algorithm>
#include <array>

namespace desk {
namespace {

Step zone_step(std::int32_t zone, const Grounds &grounds) {
    const bool wanted = grounds.has_wanted, floor = grounds.has_floor, ceiling = grounds.has_ceiling;
    switch (zone) {
    case LVB_ZONE_DROPOUT:
        return {'#', floor ? "drops out: below the floor" : "not judged: no floor is stated", 5, floor};
    case LVB_ZONE_LOW:
        return {'-', wanted ? "below the wanted band" : "below a wanted band: none is stated", 2, wanted};
    case LVB_ZONE_WANTED:
        return {'.',
                wanted             ? "inside the wanted band"
                : floor && ceiling ? "inside the window"
                : floor            ? "not below the floor"
                                   : "not above the ceiling",
                0, wanted || floor || ceiling};
    case LVB_ZONE_HIGH:
        return {'+', wanted ? "above the wanted band" : "above a wanted band: none is stated", 1, wanted};
    case LVB_ZONE_OVERLOAD:
        return {'!', ceiling ? "overloads: near level above the ceiling" : "not judged: no ceiling is stated", 4,
                ceiling};
    default:
        return {'?', "not judged: no floor or ceiling is stated", 3};
    }
}

View view_of_zones(const Points &points) {
    constexpr std::int32_t listed_zones[] = {LVB_ZONE_DROPOUT, LVB_ZONE_LOW,      LVB_ZONE_WANTED,
                                             LVB_ZONE_HIGH,    LVB_ZONE_OVERLOAD, LVB_ZONE_NOT_JUDGED};
    View view;
    std::array<std::size_t, std::size(listed_zones)> step_of{}; // by LVB_ZONE_
    for (const std::int32_t zone : listed_zones) {
        step_of[static_cast<std::size_t>(zone)] = view.steps.size();
        view.steps.push_back(zone_step(zone, points));
    }
    for (const std::int32_t zone : points.zone) view.at.push_back(step_of[static_cast<std::size_t>(zone)]);
    return view;
}

// Steps of 3 dB: a factor of two of power each.
View view_of_margins(const Points &points) {
    constexpr double step_db = 3.0;
    constexpr int last = 9;
    View view;
    view.steps.push_back({'#', "drops out: below the floor", last + 1});
    for (int i = 0; i < last; ++i)
        view.steps.push_back({static_cast<char>('0' + i),
                              format("%.0f to %.0f dB above the floor", step_db * i, step_db * (i + 1)), last - i});
    view.steps.push_back({static_cast<char>('0' + last), format("%.0f dB or more above the floor", step_db * last), 0});
    for (const double margin_db : points.margin_db)
        view.at.push_back(!(margin_db >= 0.0)
                              ? 0
                              : 1 + static_cast<std::size_t>(std::min(std::floor(margin_db / step_db), double{last})));
    return view;
}

// Decades of the share of time.
View view_of_outage(const Points &points) {
    constexpr double bounds[] = {1e-5, 1e-4, 1e-3, 1e-2, 1e-1}; // above each begins the next digit
    const char *const words[] = {"up to 0.001 % of the time below the floor",
                                 "up to 0.01 %",
                                 "up to 0.1 %",
                                 "up to 1 %",
                                 "up to 10 %",
                                 "more than 10 %"};
    constexpr int digits = std::size(words);
    View view;
    view.steps.push_back(
        {'#', "more often below the floor than the allowed " + plain(100.0 * points.wanted_outage()) + " %", digits});
    for (int i = 0; i < digits; ++i) view.steps.push_back({static_cast<char>('0' + i), words[i], i});
    for (const double outage : points.outage) {
        const auto above = [&](double bound) { return outage > bound; };
        const auto decade = static_cast<std::size_t>(std::count_if(std::begin(bounds), std::end(bounds), above));
        view.at.push_back(outage > points.wanted_outage() ? 0 : 1 + decade);
    }
    return view;
}

View uncounted_view_of(const Points &points, const std::string &what) {
    if (what.empty() || what == "zones") return view_of_zones(points);
    if (what == "margin" && !points.has_floor)
        throw Refusal("a margin stands over the floor, and the receivers of this site state none");
    if (what == "margin") return view_of_margins(points);
    if (what == "outage" && points.outage.empty())
        throw Refusal("an outage needs a law of fading: the site has no fading");
    if (what == "outage") return view_of_outage(points);
    const std::vector<std::string> known = {"zones", "margin", "outage"};
    throw Refusal("--show does not know " + in_quotes(what) + suggestion(what, known, "") + "; it shows " +
                  listed(known));
}

} // namespace

View view_of(const Points &points, const std::string &what) {
    View view = uncounted_view_of(points, what);
    for (std::size_t i = 0; i < points.size(); ++i)
        if (!points.is_blank(i)) ++view.steps[view.at[i]].points;
    return view;
}

} // namespace desk
