// Maps: what arrives everywhere.
#include "door/fields.hpp"
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "door/outage.hpp"
#include "door/site.hpp"
#include "map/survey.hpp"

namespace lvb::door {
namespace {

struct Map {
    TakenSite taken;
    map::Grid grid;
    map::Fading fading;
    map::Outputs out;
};

bool check_outputs(Refusal &refusal, const lvb_map &in, std::uint64_t values, Place place) noexcept {
    const std::uint64_t wide = values * sizeof(double), narrow = values * sizeof(std::int32_t);
    const Room rooms[] = {{in.level_dbm, wide, LVB_FIELD_LEVEL_DBM},
                          {in.margin_db, wide, LVB_FIELD_MARGIN_DB},
                          {in.headroom_db, wide, LVB_FIELD_HEADROOM_DB},
                          {in.outage, wide, LVB_FIELD_OUTAGE},
                          {in.zone, narrow, LVB_FIELD_ZONE},
                          {in.serving, narrow, LVB_FIELD_SERVING}};
    return check_apart(refusal, rooms, place);
}

bool check_grid(Refusal &refusal, const lvb_map &in, Place place) noexcept {
    const std::uint64_t most = LVB_MAX_VALUES;
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.column_count > most)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_COLUMN_COUNT, static_cast<double>(in.column_count), 0.0,
                      LVB_MAX_VALUES);
    const std::uint64_t most_rows = in.column_count == 0 ? most : most / in.column_count;
    if (in.row_count > most_rows)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_ROW_COUNT, static_cast<double>(in.row_count), 0.0,
                      static_cast<double>(most_rows));
    if (in.first_row > most)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_FIRST_ROW, static_cast<double>(in.first_row), 0.0,
                      LVB_MAX_VALUES);
    const std::uint64_t last_column = in.column_count == 0 ? 0 : in.column_count - 1;
    const std::uint64_t last_row = in.row_count == 0 ? in.first_row : in.first_row + in.row_count - 1;
    return check_axis(refusal, in.x_m, in.step_x_m, last_column, place, LVB_FIELD_X_M, LVB_FIELD_STEP_X_M,
                      LVB_FIELD_COLUMN_COUNT) &&
           check_axis(refusal, in.y_m, in.step_y_m, last_row, place, LVB_FIELD_Y_M, LVB_FIELD_STEP_Y_M,
                      LVB_FIELD_ROW_COUNT);
}

bool take_map(Refusal &refusal, const lvb_map *lent, Map &taken) noexcept {
    const Place place{LVB_STRUCT_MAP};
    lvb_map in;
    math::InstructionSet set;
    if (!take(refusal, lent, in, place, LVB_FIELD_MAP) || !check_grid(refusal, in, place)) return false;
    const std::uint64_t values = in.column_count * in.row_count;
    if (in.site == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SITE);
    if (!choose_set(refusal, in.instructions, values, place, set) || !check_outputs(refusal, in, values, place) ||
        !take_site(refusal, in.site, 1, set, taken.taken))
        return false;
    taken.grid = {in.x_m, in.y_m, in.step_x_m, in.step_y_m, in.column_count, in.row_count, in.first_row};
    taken.out = {in.level_dbm, in.margin_db, in.headroom_db, in.outage, in.zone, in.serving};
    const bool asks = in.outage != nullptr;
    return take_outage(refusal, {in.fading, in.fading_parameter, asks, asks}, taken.taken.site.window, place,
                       taken.fading);
}

lvb_map_summary told(const map::Summary &summary) noexcept {
    const bool any = summary.points != 0;
    lvb_map_summary out{};
    out.points = summary.points;
    out.outside = summary.outside;
    out.unmodelled = summary.unmodelled;
    out.not_judged = summary.in_zone[LVB_ZONE_NOT_JUDGED];
    out.dropout = summary.in_zone[LVB_ZONE_DROPOUT];
    out.low = summary.in_zone[LVB_ZONE_LOW];
    out.wanted = summary.in_zone[LVB_ZONE_WANTED];
    out.high = summary.in_zone[LVB_ZONE_HIGH];
    out.overload = summary.in_zone[LVB_ZONE_OVERLOAD];
    out.overloaded = summary.overloaded;
    out.worst_row = summary.worst.row;
    out.worst_column = summary.worst.column;
    out.hottest_row = summary.hottest.row;
    out.hottest_column = summary.hottest.column;
    out.worst_serving = summary.worst.serving;
    out.hottest_serving = summary.hottest.serving;
    out.worst_level_dbm = any ? summary.worst.level : math::not_a_number;
    out.worst_margin_db = summary.worst.room;
    out.hottest_level_dbm = any ? summary.hottest.level : math::not_a_number;
    out.hottest_headroom_db = summary.hottest.room;
    return out;
}

map::Summary taken(const lvb_map_summary &in) noexcept {
    map::Summary summary;
    summary.points = in.points;
    summary.outside = in.outside;
    summary.unmodelled = in.unmodelled;
    summary.overloaded = in.overloaded;
    const std::uint64_t in_zone[map::zones] = {in.not_judged, in.dropout, in.low, in.wanted, in.high, in.overload};
    std::memcpy(summary.in_zone, in_zone, sizeof in_zone);
    if (in.points == 0) return summary;
    summary.worst = {in.worst_level_dbm, in.worst_margin_db, in.worst_row, in.worst_column, in.worst_serving};
    summary.hottest = {in.hottest_level_dbm, in.hottest_headroom_db, in.hottest_row, in.hottest_column,
                       in.hottest_serving};
    return summary;
}

bool compute(Refusal &refusal, const lvb_map *lent, lvb_map_summary *summary) noexcept {
    Map map;
    if (!take_map(refusal, lent, map) ||
        (summary != nullptr && !check_result(refusal, summary, LVB_STRUCT_MAP_SUMMARY, LVB_FIELD_SUMMARY)))
        return false;
    map::Summary found;
    map::survey(map.taken.site, map.grid, map.fading, map.out, summary != nullptr ? &found : nullptr);
    if (summary == nullptr) return true;
    lvb_map_summary out = told(found);
    give(summary, out);
    return true;
}

// What a map can give; `index` is 0 of the summary that grows and 1 of the other.
bool check_summary(Refusal &refusal, const lvb_map_summary &in, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_MAP_SUMMARY, -1, index};
    constexpr std::uint64_t most = std::uint64_t{1} << 61; // of rows up to 2^31, of 2^30 columns
    struct Count {
        std::int32_t field;
        std::uint64_t count;
    };
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    const Count counts[] = {
        {LVB_FIELD_POINTS, in.points}, {LVB_FIELD_OUTSIDE, in.outside}, {LVB_FIELD_UNMODELLED, in.unmodelled}};
    for (const Count &each : counts)
        if (each.count > most)
            return refuse(refusal, LVB_E_COUNT, place, each.field, static_cast<double>(each.count), 0.0,
                          static_cast<double>(most));
    std::uint64_t zoned = 0; // never more than one zone beyond `points`, so that it does not wrap around
    const std::uint64_t in_zone[] = {in.not_judged, in.dropout, in.low, in.wanted, in.high, in.overload};
    for (const std::uint64_t zone : in_zone) {
        zoned += zone <= most ? zone : most + 1;
        if (zoned > in.points) break;
    }
    if (zoned != in.points)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_POINTS, static_cast<double>(in.points),
                      static_cast<double>(zoned), static_cast<double>(zoned));
    if (in.overloaded > in.points)
        return refuse(refusal, LVB_E_ABOVE_RANGE, place, LVB_FIELD_OVERLOADED, static_cast<double>(in.overloaded), 0.0,
                      static_cast<double>(in.points));
    if (in.points == 0) return true; // nothing else counts
    struct Level {
        std::int32_t field;
        double dbm;
        std::int32_t serving_field, serving;
    };
    const Level levels[] = {
        {LVB_FIELD_WORST_LEVEL_DBM, in.worst_level_dbm, LVB_FIELD_WORST_SERVING, in.worst_serving},
        {LVB_FIELD_HOTTEST_LEVEL_DBM, in.hottest_level_dbm, LVB_FIELD_HOTTEST_SERVING, in.hottest_serving}};
    for (const Level &each : levels) {
        if (math::is_nan(each.dbm)) return refuse(refusal, LVB_E_NAN, place, each.field, each.dbm);
        if (each.dbm == math::infinity) return refuse(refusal, LVB_E_INFINITE, place, each.field, each.dbm);
        if (each.serving < -1 || each.serving >= LVB_MAX_SITE_ANTENNAS)
            return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, each.serving_field, each.serving, -1.0,
                          LVB_MAX_SITE_ANTENNAS - 1);
    }
    return true;
}

bool join(Refusal &refusal, lvb_map_summary *summary, const lvb_map_summary *lent) noexcept {
    const Place place{LVB_STRUCT_MAP_SUMMARY};
    lvb_map_summary first, other;
    if (!take(refusal, summary, first, place, LVB_FIELD_SUMMARY) ||
        !take(refusal, lent, other, place, LVB_FIELD_SUMMARY) || !check_summary(refusal, first, 0) ||
        !check_summary(refusal, other, 1))
        return false;
    map::Summary joined = taken(first);
    map::join(joined, taken(other));
    lvb_map_summary out = told(joined);
    give(summary, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_map(const lvb_map *map, lvb_map_summary *summary, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, map, summary); });
}

lvb_status lvb_join_map_summaries(lvb_map_summary *summary, const lvb_map_summary *other, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return join(refusal, summary, other); });
}

} // extern "C"
