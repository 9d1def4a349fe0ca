// A chain over frequencies and distances. Three walks over the stages: one checks them, one per frequency finds what
// depends on it, and the loops join that with what depends on the distance.
#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "path/free_space.hpp"

namespace lvb::door {
namespace {

using math::Loops;
using math::piece;

// So many stages that depend on the frequency are kept at hand; further ones are taken from the caller again.
constexpr std::uint32_t kept_stages = 16;

struct Grid {
    lvb_link link;
    const Loops *loops;
    std::uint64_t frequencies, distances;
    const double *frequency_mhz, *distance_m;
    double *scratch; // the high and then the low parts of what depends on the distances
    double *level_dbm;
    double temperature_degc;
    bool near_end;
    std::uint32_t air;              // index of the air; the number of stages where there is none
    double flat_db[LVB_MAX_STAGES]; // what each stage changes, where that is the same at every frequency
    chain::Stage kept[kept_stages]; // the first of those that are not flat
    bool has_path;                  // the air is another way than free space
    path::Path path;
};

bool within(double value, const Range &range) noexcept { return value >= range.minimum && value <= range.maximum; }

bool check_grid(Refusal &refusal, const lvb_grid &in, Place place) noexcept {
    const std::uint64_t most = LVB_MAX_VALUES;
    if (in.end != LVB_END_FAR && in.end != LVB_END_NEAR)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_END, in.end, LVB_END_FAR, LVB_END_NEAR);
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.frequency_count > most)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_FREQUENCY_COUNT, static_cast<double>(in.frequency_count),
                      0.0, LVB_MAX_VALUES);
    const std::uint64_t most_distances = in.frequency_count == 0 ? most : most / in.frequency_count;
    if (in.distance_count > most_distances)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_DISTANCE_COUNT, static_cast<double>(in.distance_count),
                      0.0, static_cast<double>(most_distances));
    if (in.link == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_LINK);
    return true;
}

// The arrays: none is used where there are no levels, and without air neither the distances nor the working room.
bool check_arrays(Refusal &refusal, const lvb_grid &in, Place place, bool air) noexcept {
    const std::uint64_t levels = in.frequency_count * in.distance_count, room = 2 * in.distance_count;
    if (levels == 0) return true;
    if (in.frequency_mhz == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_FREQUENCY_MHZ);
    if (air && in.distance_m == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_DISTANCE_M);
    if (air && in.scratch == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SCRATCH);
    if (in.level_dbm == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_LEVEL_DBM);
    if (air && (overlap(in.scratch, room, in.frequency_mhz, in.frequency_count) ||
                overlap(in.scratch, room, in.distance_m, in.distance_count)))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_SCRATCH);
    if (overlap(in.level_dbm, levels, in.frequency_mhz, in.frequency_count) ||
        (air && (overlap(in.level_dbm, levels, in.distance_m, in.distance_count) ||
                 overlap(in.level_dbm, levels, in.scratch, room))))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_LEVEL_DBM);
    return true;
}

// What a stage changes at this end of the walk.
double change_of(const Grid &grid, const chain::Stage &stage, double frequency_mhz) noexcept {
    const chain::Change change = chain::own_change(stage, frequency_mhz, grid.temperature_degc);
    return grid.near_end ? change.near_db : change.far_db;
}

constexpr double depends_on_frequency = math::not_a_number;

// Checks all stages; notes what those change that are flat.
bool take_stages(Refusal &refusal, Grid &grid) noexcept {
    Order order;
    chain::Stage stage;
    std::uint32_t kept = 0;
    grid.air = grid.link.stage_count;
    grid.has_path = false;
    for (std::uint32_t i = 0; i < grid.link.stage_count; ++i) {
        if (!take_stage(refusal, grid.link, i, stage) || !order.next(refusal, stage, static_cast<std::int32_t>(i)))
            return false;
        const bool flat = chain::is_flat(stage);
        grid.flat_db[i] = flat ? change_of(grid, stage, 0.0) : depends_on_frequency;
        if (!flat && kept < kept_stages) grid.kept[kept++] = stage;
        if (!stage.has_path) continue;
        grid.has_path = true;
        grid.path = stage.path;
    }
    if (order.air() >= 0) grid.air = static_cast<std::uint32_t>(order.air());
    return order.end(refusal);
}

bool has_air(const Grid &grid) noexcept { return grid.air < grid.link.stage_count; }

bool take_grid(Refusal &refusal, const lvb_grid *lent, Grid &grid) noexcept {
    const Place place{LVB_STRUCT_GRID};
    lvb_grid in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_GRID) || !check_grid(refusal, in, place) ||
        !take(refusal, in.link, grid.link, {LVB_STRUCT_LINK}, LVB_FIELD_LINK) ||
        !check_link_frame(refusal, grid.link) ||
        !choose_loops(refusal, in.instructions, in.frequency_count * in.distance_count, place, grid.loops))
        return false;
    grid.frequencies = in.frequency_count;
    grid.distances = in.distance_count;
    grid.frequency_mhz = in.frequency_mhz;
    grid.distance_m = in.distance_m;
    grid.scratch = in.scratch;
    grid.level_dbm = in.level_dbm;
    grid.temperature_degc = temperature_of(grid.link.temperature_degc, grid.link.stated);
    grid.near_end = in.end == LVB_END_NEAR;
    return take_stages(refusal, grid) && check_arrays(refusal, in, place, has_air(grid));
}

// The part of the free-space loss that depends on the distance, NaN for a bad one. Gives how many are bad, and the
// first.
lvb_bad take_distances(const Grid &grid) noexcept {
    lvb_bad bad{};
    bad.first = grid.distances;
    double *high = grid.scratch, *low = high + grid.distances;
    for (std::uint64_t i = 0; i < grid.distances;) {
        const double *d = grid.distance_m + i;
        if (grid.distances - i >= piece && grid.loops->within(d, distance_range.minimum, distance_range.maximum)) {
            grid.loops->decibel_parts(d, high + i, low + i, path::loss_scale);
            i += piece;
            continue;
        }
        const std::uint64_t end = grid.distances - i < piece ? grid.distances : i + piece;
        for (; i < end; ++i) {
            const bool good = within(grid.distance_m[i], distance_range);
            const math::Parts<double> parts = path::distance_parts(good ? grid.distance_m[i] : 1.0);
            high[i] = good ? parts.high : math::not_a_number;
            low[i] = parts.low;
            if (!good && bad.count++ == 0) bad.first = i;
        }
    }
    return bad;
}

// What a stage changes at a frequency; false where its tables do not serve it. `varying` counts the stages that are not
// flat.
bool take_change(const Grid &grid, std::uint32_t index, double frequency_mhz, std::uint32_t &varying,
                 double &change) noexcept {
    change = grid.flat_db[index];
    if (!math::is_nan(change)) return true;
    Refusal refusal;
    chain::Stage again{};
    const bool is_kept = varying < kept_stages;
    const chain::Stage &stage = is_kept ? grid.kept[varying] : again;
    ++varying;
    if ((!is_kept && !take_stage(refusal, grid.link, index, again)) ||
        !check_tables(refusal, stage, frequency_mhz, static_cast<std::int32_t>(index)))
        return false;
    change = change_of(grid, stage, frequency_mhz);
    return true;
}

// What a frequency gives to its row; false for a bad frequency. Without air the level is row.after.
bool take_frequency(const Grid &grid, double frequency_mhz, math::Row &row) noexcept {
    if (!within(frequency_mhz, frequency_range)) return false;
    const math::Parts<double> parts = path::frequency_parts(frequency_mhz);
    chain::Sum sum;
    row = {parts.high, parts.low, 0.0, 0.0};
    std::uint32_t varying = 0;
    for (std::uint32_t i = 0; i < grid.link.stage_count; ++i) {
        double change;
        if (!take_change(grid, i, frequency_mhz, varying, change)) return false;
        if (i != grid.air) {
            sum.add(change);
            continue;
        }
        row.before = sum.level() + change;
        sum = {};
    }
    row.after = sum.since;
    return true;
}

// A row over a path: element by element, as its models do not fall into parts. Gives how many are bad, and the first.
lvb_bad fill_path_row(const Grid &grid, double frequency_mhz, double *y, const math::Row &row) noexcept {
    lvb_bad bad{};
    for (std::uint64_t i = 0; i < grid.distances; ++i) {
        const double distance = grid.distance_m[i];
        const bool good = within(distance, distance_range) && path::holds(grid.path, frequency_mhz, distance);
        y[i] = good ? (row.before - path::loss_db(grid.path, frequency_mhz, distance)) + row.after : math::not_a_number;
        if (!good && bad.count++ == 0) bad.first = i;
    }
    return bad;
}

// Gives how many are bad in a row, and the first.
lvb_bad fill_free_space_row(const Grid &grid, double *y, const math::Row &row, const lvb_bad &bad_distances) noexcept {
    grid.loops->levels(grid.scratch, grid.scratch + grid.distances, y, static_cast<std::size_t>(grid.distances), row);
    return bad_distances;
}

lvb_bad fill_with(const Grid &grid, double *y, double value) noexcept {
    for (std::uint64_t i = 0; i < grid.distances; ++i) y[i] = value;
    lvb_bad bad{};
    bad.count = math::is_nan(value) ? grid.distances : 0;
    return bad;
}

void compute(const Grid &grid, lvb_bad &bad) noexcept {
    bad.count = 0;
    bad.first = grid.frequencies * grid.distances;
    if (bad.first == 0) return; // no levels: the arrays may be null
    const lvb_bad bad_distances = has_air(grid) && !grid.has_path ? take_distances(grid) : lvb_bad{};
    for (std::uint64_t i = 0; i < grid.frequencies; ++i) {
        double *y = grid.level_dbm + i * grid.distances;
        math::Row row;
        lvb_bad here;
        if (!take_frequency(grid, grid.frequency_mhz[i], row)) here = fill_with(grid, y, math::not_a_number);
        else if (!has_air(grid)) here = fill_with(grid, y, row.after);
        else if (grid.has_path) here = fill_path_row(grid, grid.frequency_mhz[i], y, row);
        else here = fill_free_space_row(grid, y, row, bad_distances);
        if (here.count != 0 && bad.count == 0) bad.first = i * grid.distances + here.first;
        bad.count += here.count;
    }
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_grid(const lvb_grid *grid, lvb_bad *bad, lvb_fault *fault) {
    using namespace lvb::door;
    return answer_many<Grid>(
        bad, fault, [&](Refusal &refusal, Grid &taken) noexcept { return take_grid(refusal, grid, taken); }, compute);
}
