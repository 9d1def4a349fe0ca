#include "map/sweep.hpp"
#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "door/many.hpp"

namespace lvb::door {
namespace {

constexpr Range axis_range{frequency_range.minimum, frequency_range.maximum, false};

// A list of values, or as many in even steps between two ends.
struct Axis {
    const double *list;
    double first, last;
    std::uint64_t count;

    double operator[](std::uint64_t i) const noexcept {
        if (list != nullptr) return list[i];
        if (i == 0) return first;
        if (i == count - 1) return last;
        return first + (last - first) * (static_cast<double>(i) / static_cast<double>(count - 1));
    }
};

struct Work {
    lvb_sweep in;
    lvb_link link;
    Axis mhz, metres;
    double nearest_m; // of all points
};

bool check_counts(Refusal &refusal, const lvb_sweep &in, Place place) noexcept {
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.link == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_LINK);
    if (in.frequency_count == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FREQUENCY_COUNT, 0.0, 1.0, LVB_MAX_VALUES);
    if (in.frequency_count > LVB_MAX_VALUES)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_FREQUENCY_COUNT, static_cast<double>(in.frequency_count),
                      1.0, LVB_MAX_VALUES);
    const std::uint64_t most = LVB_MAX_VALUES / in.frequency_count;
    if (in.distance_m != nullptr && in.distance_count == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_DISTANCE_COUNT, 0.0, 1.0, static_cast<double>(most));
    return in.distance_count <= most || refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_DISTANCE_COUNT,
                                               static_cast<double>(in.distance_count), 0.0, static_cast<double>(most));
}

bool check_list(Refusal &refusal, const double *list, std::uint64_t count, const Range &range,
                std::int32_t field) noexcept {
    for (std::uint64_t i = 0; i < count; ++i)
        if (!check_range(refusal, list[i], range.minimum, range.maximum,
                         {LVB_STRUCT_SWEEP, -1, static_cast<std::int32_t>(i)}, field))
            return false;
    return true;
}

bool take_frequencies(Refusal &refusal, const lvb_sweep &in, Place place, Axis &axis) noexcept {
    axis = {in.frequency_mhz, in.first_mhz, in.last_mhz, in.frequency_count};
    struct End {
        std::int32_t field;
        double mhz;
    };
    const End ends[] = {{LVB_FIELD_FIRST_MHZ, in.first_mhz}, {LVB_FIELD_LAST_MHZ, in.last_mhz}};
    for (const End &end : ends) {
        if (axis.list != nullptr && end.mhz != 0.0) return refuse(refusal, LVB_E_CONFLICT, place, end.field, end.mhz);
        const Range range{axis_range.minimum, axis_range.maximum, axis.list == nullptr};
        if (!check_field(refusal, end.mhz, range, place, end.field)) return false;
    }
    return axis.list == nullptr || check_list(refusal, axis.list, axis.count, axis_range, LVB_FIELD_FREQUENCY_MHZ);
}

bool has_air(const lvb_link &link) noexcept {
    for (std::uint32_t i = 0; i < link.stage_count; ++i) {
        std::int32_t kind = 0;
        std::memcpy(&kind, reinterpret_cast<const char *>(link.stages) + std::size_t{i} * link.stage_size, sizeof kind);
        if (kind == LVB_KIND_AIR) return true;
    }
    return false;
}

// The link gets the nearest and the farthest of all distances, so that what holds for both holds for all.
bool take_distances(Refusal &refusal, Work &work, Place place) noexcept {
    const lvb_sweep &in = work.in;
    lvb_link &link = work.link;
    const double near = link.near_distance_m != 0.0 ? link.near_distance_m : link.far_distance_m;
    work.metres = {in.distance_m, near, link.far_distance_m, in.distance_count};
    work.nearest_m = near;
    if (in.distance_count == 0) return true;
    if (!has_air(link))
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_DISTANCE_COUNT, static_cast<double>(in.distance_count));
    if (in.distance_m == nullptr) return true;
    if (!check_list(refusal, in.distance_m, in.distance_count, distance_range, LVB_FIELD_DISTANCE_M)) return false;
    double least = in.distance_m[0], most = least;
    for (std::uint64_t i = 1; i < in.distance_count; ++i) {
        if (in.distance_m[i] < least) least = in.distance_m[i];
        if (in.distance_m[i] > most) most = in.distance_m[i];
    }
    work.nearest_m = link.near_distance_m = least;
    link.far_distance_m = most;
    return true;
}

bool check_results(Refusal &refusal, const lvb_sweep &in, Place place) noexcept {
    const std::uint64_t n = in.frequency_count, m = in.distance_count;
    const auto meets_list = [&](const double *result) noexcept {
        return (in.frequency_mhz != nullptr && overlap(result, n, in.frequency_mhz, n)) ||
               (in.distance_m != nullptr && overlap(result, n, in.distance_m, m));
    };
    if (in.lowest_margin_db != nullptr && meets_list(in.lowest_margin_db))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_LOWEST_MARGIN_DB);
    if (in.lowest_headroom_db == nullptr) return true;
    if (meets_list(in.lowest_headroom_db) ||
        (in.lowest_margin_db != nullptr && overlap(in.lowest_headroom_db, n, in.lowest_margin_db, n)))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_LOWEST_HEADROOM_DB);
    return true;
}

bool take_sweep(Refusal &refusal, const lvb_sweep *lent, Work &work) noexcept {
    const Place place{LVB_STRUCT_SWEEP};
    return take(refusal, lent, work.in, place, LVB_FIELD_SWEEP) && check_counts(refusal, work.in, place) &&
           take(refusal, work.in.link, work.link, {LVB_STRUCT_LINK}, LVB_FIELD_LINK) &&
           check_link_frame(refusal, work.link) && take_frequencies(refusal, work.in, place, work.mhz) &&
           take_distances(refusal, work, place) && check_results(refusal, work.in, place);
}

struct Found {
    map::Sweep sweep;
    chain::Notes notes;
};

bool of_value(Refusal &refusal, std::uint64_t index, std::int32_t field) noexcept {
    const auto row = static_cast<std::int32_t>(index);
    refusal.field = field;
    // what is wrong with a table keeps its name, and a table's own row is never that of a frequency outside it
    if (refusal.place.structure == LVB_STRUCT_LINK) refusal.place = {LVB_STRUCT_SWEEP, -1, row};
    else refusal.place.row = row;
    return false;
}

// A refusal of what a list gave the link names the value of the list.
bool of_list(Refusal &refusal, const Work &work, std::uint64_t index) noexcept {
    const lvb_sweep &in = work.in;
    const bool link = refusal.place.structure == LVB_STRUCT_LINK;
    if (in.frequency_mhz != nullptr && refusal.field == LVB_FIELD_FREQUENCY_MHZ &&
        (link || refusal.status == LVB_E_OUTSIDE_TABLE))
        return of_value(refusal, index, LVB_FIELD_FREQUENCY_MHZ);
    const bool far = refusal.field == LVB_FIELD_FAR_DISTANCE_M, near = refusal.field == LVB_FIELD_NEAR_DISTANCE_M;
    if (in.distance_m == nullptr || in.distance_count == 0 || !link || !(far || near)) return false;
    const double metres = far ? work.link.far_distance_m : work.link.near_distance_m;
    std::uint64_t i = 0;
    while (in.distance_m[i] != metres) ++i;
    return of_value(refusal, i, LVB_FIELD_DISTANCE_M);
}

// The row of one frequency, with every check of a budget there.
bool take_row(Refusal &refusal, Work &work, std::uint64_t index, Found &found) noexcept {
    work.link.size = sizeof work.link;
    work.link.frequency_mhz = work.mhz[index];
    lvb_link link;
    chain::Conditions conditions;
    if (!take_link(refusal, &work.link, link, conditions)) return of_list(refusal, work, index);
    map::Row row(conditions.frequency_mhz, conditions.temperature_degc);
    if (!walk_stages(refusal, link, [&](const chain::Stage &stage) noexcept { row.enter(stage); }))
        return of_list(refusal, work, index);
    const bool walks = work.metres.count != 0;
    chain::Notes notes = row.notes();
    notes.near_field = row.is_near_field(work.nearest_m);
    notes.near_not_given = row.has_air() && !conditions.near_is_given && !walks;
    found.notes.add(notes);
    map::Sweep &sweep = found.sweep;
    sweep.take_row(row);
    if (!walks) {
        sweep.take_far(row, conditions.far_distance_m);
        sweep.take_near(row, conditions.near_distance_m);
    }
    for (std::uint64_t i = 0; i < work.metres.count; ++i) {
        sweep.take_far(row, work.metres[i]);
        sweep.take_near(row, work.metres[i]);
    }
    return true;
}

// Of each frequency by itself; nothing can be refused any more.
void write_arrays(Work &work) noexcept {
    const lvb_sweep &in = work.in;
    if (in.lowest_margin_db == nullptr && in.lowest_headroom_db == nullptr) return;
    for (std::uint64_t i = 0; i < work.mhz.count; ++i) {
        Refusal none;
        Found here;
        take_row(none, work, i, here);
        if (in.lowest_margin_db != nullptr) in.lowest_margin_db[i] = here.sweep.margin.lowest.value;
        if (in.lowest_headroom_db != nullptr) in.lowest_headroom_db[i] = here.sweep.headroom.lowest.value;
    }
}

lvb_extreme extreme_of(const map::SweepExtreme &extreme) noexcept {
    return {extreme.value, extreme.frequency_mhz, extreme.distance_m};
}

lvb_sweep_result result_of(const Found &found) noexcept {
    const map::Sweep &sweep = found.sweep;
    const chain::Decided decided = sweep.decided();
    lvb_sweep_result out{};
    out.verdict = static_cast<std::int32_t>(sweep.verdict());
    out.decided_by = static_cast<std::int32_t>(decided.by);
    out.notes = bits_of(found.notes);
    out.decided_by_db = decided.room_db;
    out.far_worst_db = sweep.far_worst_db;
    out.near_worst_db = sweep.near_worst_db;
    out.lowest_margin = extreme_of(sweep.margin.lowest);
    out.highest_margin = extreme_of(sweep.margin.highest);
    out.lowest_headroom = extreme_of(sweep.headroom.lowest);
    out.highest_headroom = extreme_of(sweep.headroom.highest);
    out.lowest_level = extreme_of(sweep.far_level.lowest);
    out.highest_level = extreme_of(sweep.near_level.highest);
    out.lowest_eirp = extreme_of(sweep.eirp.lowest);
    out.highest_eirp = extreme_of(sweep.eirp.highest);
    return out;
}

bool sweep(Refusal &refusal, const lvb_sweep *lent, lvb_sweep_result *result) noexcept {
    Work work{};
    if (!take_sweep(refusal, lent, work) || !check_result(refusal, result, LVB_STRUCT_SWEEP_RESULT, LVB_FIELD_RESULT))
        return false;
    Found found;
    for (std::uint64_t i = 0; i < work.mhz.count; ++i)
        if (!take_row(refusal, work, i, found)) return false;
    write_arrays(work);
    lvb_sweep_result out = result_of(found);
    give(result, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_sweep(const lvb_sweep *sweep, lvb_sweep_result *result, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return lvb::door::sweep(refusal, sweep, result); });
}
