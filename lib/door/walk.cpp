// Walks: what arrives along a polyline.
#include "map/walk.hpp"
#include "door/fields.hpp"
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "door/outage.hpp"
#include "door/site.hpp"
#include "door/site_fields.hpp"

namespace lvb::door {
namespace {

// Corners, speed and step; the number of points is known then.
bool take_way(Refusal &refusal, const lvb_walk *lent, lvb_walk &in, map::Walk &walk, double &points) noexcept {
    const Place place{LVB_STRUCT_WALK};
    if (!take(refusal, lent, in, place, LVB_FIELD_WALK)) return false;
    if (in.corner_count < 2 || in.corner_count > LVB_MAX_CORNERS)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_CORNER_COUNT, in.corner_count, 2.0, LVB_MAX_CORNERS);
    if (in.x_m == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_X_M);
    if (in.y_m == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_Y_M);
    for (std::uint32_t i = 0; i < in.corner_count; ++i) {
        const Place corner{LVB_STRUCT_WALK, -1, static_cast<std::int32_t>(i)};
        if (!check_range(refusal, in.x_m[i], position_range.minimum, position_range.maximum, corner, LVB_FIELD_X_M) ||
            !check_range(refusal, in.y_m[i], position_range.minimum, position_range.maximum, corner, LVB_FIELD_Y_M) ||
            (in.z_m != nullptr &&
             !check_range(refusal, in.z_m[i], height_range.minimum, height_range.maximum, corner, LVB_FIELD_Z_M)))
            return false;
    }
    if (!check_field(refusal, in.speed_m_per_s, speed_range, place, LVB_FIELD_SPEED_M_PER_S) ||
        !check_field(refusal, in.step_m, walk_step_range, place, LVB_FIELD_STEP_M))
        return false;
    walk = {in.x_m, in.y_m, in.z_m, in.corner_count, in.speed_m_per_s, in.step_m};
    const double length = map::length_m(walk);
    if (length == 0.0) return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_CORNER_COUNT, 0.0);
    points = map::point_count(walk, length);
    constexpr double most = LVB_MAX_VALUES;
    return points <= most || refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_STEP_M, points, 2.0, most);
}

bool check_outputs(Refusal &refusal, const lvb_walk &in, std::uint64_t values, Place place) noexcept {
    const std::uint64_t wide = values * sizeof(double), narrow = values * sizeof(std::int32_t);
    const Room rooms[] = {{in.distance_m, wide, LVB_FIELD_DISTANCE_M}, {in.level_dbm, wide, LVB_FIELD_LEVEL_DBM},
                          {in.margin_db, wide, LVB_FIELD_MARGIN_DB},   {in.headroom_db, wide, LVB_FIELD_HEADROOM_DB},
                          {in.zone, narrow, LVB_FIELD_ZONE},           {in.serving, narrow, LVB_FIELD_SERVING},
                          {in.outage, wide, LVB_FIELD_OUTAGE}};
    return check_apart(refusal, rooms, place);
}

// Two rays need a height above the floor at every corner, and so in between.
bool check_two_ray(Refusal &refusal, const map::Site &site, const lvb_walk &in) noexcept {
    const double least = height_over_floor_range.minimum, most = height_over_floor_range.maximum;
    for (std::size_t a = 0; a < site.antenna_count; ++a) {
        if (!site.antennas[a].has_path || site.antennas[a].path.model != path::Model::two_ray) continue;
        for (std::uint32_t i = 0; in.z_m != nullptr && i < in.corner_count; ++i)
            if (!check_range(refusal, in.z_m[i], least, most, {LVB_STRUCT_WALK, -1, static_cast<std::int32_t>(i)},
                             LVB_FIELD_Z_M))
                return false;
    }
    return true;
}

lvb_walk_result told(const map::WalkSummary &summary, double speed_m_per_s) noexcept {
    lvb_walk_result out{};
    out.points = summary.points;
    out.unmodelled = summary.unmodelled;
    out.length_m = summary.length_m;
    out.duration_s = summary.length_m / speed_m_per_s;
    out.under_floor_s = summary.under_floor.total_s;
    out.longest_under_floor_s = summary.under_floor.longest_s;
    out.longest_under_floor_m = summary.under_floor.longest_at_m;
    out.over_ceiling_s = summary.over_ceiling.total_s;
    out.longest_over_ceiling_s = summary.over_ceiling.longest_s;
    out.longest_over_ceiling_m = summary.over_ceiling.longest_at_m;
    out.worst_level_dbm = summary.worst.level;
    out.worst_margin_db = summary.worst.room;
    out.worst_m = summary.worst.at_m;
    out.hottest_level_dbm = summary.hottest.level;
    out.hottest_headroom_db = summary.hottest.room;
    out.hottest_m = summary.hottest.at_m;
    const bool has_mean = summary.judged_s > 0.0 && !math::is_nan(summary.outage_s);
    out.mean_outage = has_mean ? summary.outage_s / summary.judged_s : math::not_a_number;
    out.expected_under_floor_s = summary.outage_s;
    out.worst_serving = summary.worst.serving;
    out.hottest_serving = summary.hottest.serving;
    return out;
}

bool compute(Refusal &refusal, const lvb_walk *lent, lvb_walk_result *result) noexcept {
    const Place place{LVB_STRUCT_WALK};
    lvb_walk in;
    map::Walk walk;
    double points = 0.0;
    math::InstructionSet set;
    TakenSite taken;
    map::Fading fading;
    if (!take_way(refusal, lent, in, walk, points)) return false;
    if (in.site == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SITE);
    taken.has_own_heights = in.z_m != nullptr;
    const auto values = static_cast<std::uint64_t>(points);
    if (!choose_set(refusal, in.instructions, values, place, set) || !check_outputs(refusal, in, values, place) ||
        !take_site(refusal, in.site, 1, set, taken) || !check_two_ray(refusal, taken.site, in) ||
        !take_outage(refusal,
                     {in.fading, in.fading_parameter, in.outage != nullptr || result != nullptr, in.outage != nullptr},
                     taken.site.window, place, fading) ||
        (result != nullptr && !check_result(refusal, result, LVB_STRUCT_WALK_RESULT, LVB_FIELD_RESULT)))
        return false;
    lvb_walk_result out =
        told(map::follow(taken.site, walk, fading,
                         {in.distance_m, in.level_dbm, in.margin_db, in.headroom_db, in.outage, in.zone, in.serving}),
             in.speed_m_per_s);
    if (result != nullptr) give(result, out);
    return true;
}

bool count(Refusal &refusal, const lvb_walk *lent, std::uint64_t *point_count) noexcept {
    lvb_walk in;
    map::Walk walk;
    double points = 0.0;
    if (!take_way(refusal, lent, in, walk, points)) return false;
    if (point_count == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_POINT_COUNT);
    *point_count = static_cast<std::uint64_t>(points);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_walk_point_count(const lvb_walk *walk, uint64_t *point_count, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return count(refusal, walk, point_count); });
}

lvb_status lvb_compute_walk(const lvb_walk *walk, lvb_walk_result *result, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, walk, result); });
}

} // extern "C"
