#include "survey.hpp"

#include "faults.hpp"

#include <algorithm>

namespace desk {
namespace {

// The pieces of a way on which a room that runs straight between points is below 0; as lvb_compute_walk counts them.
std::vector<Stretch> stretches_below_zero(const std::vector<double> &at_m, const std::vector<double> &room) {
    std::vector<Stretch> all;
    for (std::size_t i = 1; i < room.size(); ++i) {
        const double before = room[i - 1], after = room[i];
        if (std::isnan(before) || std::isnan(after) || (before >= 0.0 && after >= 0.0)) continue;
        double from_m = at_m[i - 1], to_m = at_m[i];
        const bool finite = std::isfinite(before) && std::isfinite(after);
        const double crossing_m = finite ? from_m + (to_m - from_m) * before / (before - after) : 0.0;
        if (finite && before >= 0.0) from_m = crossing_m;
        if (finite && after >= 0.0) to_m = crossing_m;
        if (!all.empty() && all.back().to_m == from_m) all.back().to_m = to_m;
        else if (to_m > from_m) all.push_back({from_m, to_m});
    }
    return all;
}

double seconds_of(const std::vector<Stretch> &stretches, double speed_m_per_s) {
    double metres = 0.0;
    for (const Stretch &stretch : stretches) metres += stretch.to_m - stretch.from_m;
    return metres / speed_m_per_s;
}

// Of several branches, each of which fades for itself, the receiver has the best at every point: the library's sums
// over the walk, which are those of one branch, are made anew as it makes them.
void expect_best_branch(WalkSurvey &survey) {
    survey.take_best_branch();
    double metres = 0.0, under_floor_m = 0.0;
    for (std::size_t i = 1; i < survey.size(); ++i) {
        if (survey.is_blank(i - 1) || survey.is_blank(i)) continue;
        const double step_m = survey.distance_m[i] - survey.distance_m[i - 1];
        metres += step_m;
        under_floor_m += 0.5 * (survey.outage[i - 1] + survey.outage[i]) * step_m;
    }
    survey.result.mean_outage = under_floor_m / metres; // NaN where no step counts
    survey.result.expected_under_floor_s = under_floor_m / survey.walk->speed_m_per_s;
}

// Points of the walk; throws Refusal where it has no length or they are too many.
std::size_t count_points(const Document &document, const Walk &of, const lvb_walk &walk) {
    auto fault = sized<lvb_fault>();
    std::uint64_t points = 0;
    const lvb_status counted = lvb_walk_point_count(&walk, &points, &fault);
    if (counted == LVB_E_MISSING) document.refuse(*of.value, "this walk has no length; all its corners are one place");
    if (counted != LVB_OK || static_cast<double>(points) > most_points)
        document.refuse(*of.numbers.at(LVB_FIELD_STEP_M).value,
                        "this step makes " + (counted == LVB_OK ? plain(static_cast<double>(points)) : "too many") +
                            " points; allowed are " + plain(most_points));
    return points;
}

[[noreturn]] void refuse(const Document &document, const LentSite &lent, const Walk &of, const lvb_fault &fault) {
    if (fault.structure == LVB_STRUCT_WALK && fault.row >= 0)
        document.refuse(*of.corners.values[static_cast<std::size_t>(fault.row)],
                        plain(fault.value) + " m over the floor; two rays need " + plain(fault.minimum) + " to " +
                            plain(fault.maximum) + " m");
    lent.refuse(fault);
}

} // namespace

Way::Way(const Corners &corners, double pack_height_m) : corners_(&corners) {
    for (const std::optional<double> &z : corners.z_m) z_m_.push_back(z.value_or(pack_height_m));
    along_m_.push_back(0.0);
    for (std::size_t i = 1; i < z_m_.size(); ++i)
        along_m_.push_back(along_m_.back() + std::hypot(corners.x_m[i] - corners.x_m[i - 1],
                                                        corners.y_m[i] - corners.y_m[i - 1], z_m_[i] - z_m_[i - 1]));
}

Way::At Way::at(double distance_m) const {
    const auto behind = std::lower_bound(along_m_.begin() + 1, along_m_.end() - 1, distance_m);
    const auto to = static_cast<std::size_t>(behind - along_m_.begin()), from = to - 1;
    const double leg_m = along_m_[to] - along_m_[from];
    const double share = leg_m > 0.0 ? std::min((distance_m - along_m_[from]) / leg_m, 1.0) : 0.0;
    const auto between = [&](const std::vector<double> &values) {
        return values[from] + share * (values[to] - values[from]);
    };
    return {between(corners_->x_m), between(corners_->y_m), between(z_m_)};
}

std::size_t WalkSurvey::point_at(double along_m) const {
    const auto at = std::lower_bound(distance_m.begin(), distance_m.end() - 1, along_m);
    return static_cast<std::size_t>(at - distance_m.begin());
}

WalkSurvey survey_walk(const Document &document, const Scenario &scenario, const Site &site, const Walk &of) {
    need_antennas(document, site);
    const LentSite lent(document, scenario, site, false);
    WalkSurvey survey(site, lent, of);
    lvb_walk walk{};
    walk.size = sizeof walk;
    walk.instructions = lvb_best_instructions();
    walk.corner_count = static_cast<std::uint32_t>(of.corners.x_m.size());
    walk.site = &lent.site();
    walk.x_m = of.corners.x_m.data();
    walk.y_m = of.corners.y_m.data();
    walk.z_m = survey.way.heights_m().data();
    walk.speed_m_per_s = of.speed_m_per_s;
    walk.step_m = of.step_m;
    const std::size_t points = count_points(document, of, walk);
    survey.resize(points);
    survey.distance_m.resize(points);
    walk.distance_m = survey.distance_m.data();
    survey.lend(walk);
    survey.result.size = sizeof survey.result;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_walk(&walk, &survey.result, &fault) != LVB_OK) refuse(document, lent, of, fault);
    if (site.fading && site.fading->branches > 1.0) expect_best_branch(survey);
    const NearField near_field(survey.frequency_mhz, site.antennas);
    for (std::size_t i = 0; i < points; ++i) {
        if (survey.is_blank(i)) continue;
        const Way::At at = survey.way.at(survey.distance_m[i]);
        survey.count(i, near_field.holds(at.x_m, at.y_m, at.z_m), survey.counts);
    }
    survey.under_floor = stretches_below_zero(survey.distance_m, survey.margin_db);
    survey.over_ceiling = stretches_below_zero(survey.distance_m, survey.headroom_db);
    std::vector<double> outage_room;
    for (const double outage : survey.outage) outage_room.push_back(survey.wanted_outage() - outage);
    survey.over_outage = stretches_below_zero(survey.distance_m, outage_room);
    survey.over_outage_s = seconds_of(survey.over_outage, of.speed_m_per_s);
    return survey;
}

} // namespace desk
