// Placements: where to put one or two antennas, and candidates along a rail.
#include "map/place.hpp"
#include "door/fields.hpp"
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "door/patterns.hpp"
#include "door/site.hpp"
#include "door/site_fields.hpp"

namespace lvb::door {
namespace {

constexpr std::uint32_t most_placements = 1000;

bool check_count(Refusal &refusal, double value, double least, double most, std::int32_t field) noexcept {
    return (value >= least && value <= most) ||
           refuse(refusal, LVB_E_COUNT, {LVB_STRUCT_PLACE}, field, value, least, most);
}

// Counts and the grid; no more is needed to tell the scratch.
bool take_counts(Refusal &refusal, const lvb_place *lent, lvb_place &in, map::Grid &grid) noexcept {
    const Place place{LVB_STRUCT_PLACE};
    if (!take(refusal, lent, in, place, LVB_FIELD_PLACE)) return false;
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (!check_count(refusal, in.place_count, 1.0, 2.0, LVB_FIELD_PLACE_COUNT) ||
        !check_count(refusal, in.candidate_count, in.place_count, LVB_MAX_CANDIDATES, LVB_FIELD_CANDIDATE_COUNT) ||
        !check_count(refusal, static_cast<double>(in.column_count), 1.0, LVB_MAX_VALUES, LVB_FIELD_COLUMN_COUNT))
        return false;
    const std::uint64_t most_rows = LVB_MAX_VALUES / in.column_count;
    if (!check_count(refusal, static_cast<double>(in.row_count), 1.0, static_cast<double>(most_rows),
                     LVB_FIELD_ROW_COUNT) ||
        !check_axis(refusal, in.x_m, in.step_x_m, in.column_count - 1, place, LVB_FIELD_X_M, LVB_FIELD_STEP_X_M,
                    LVB_FIELD_COLUMN_COUNT) ||
        !check_axis(refusal, in.y_m, in.step_y_m, in.row_count - 1, place, LVB_FIELD_Y_M, LVB_FIELD_STEP_Y_M,
                    LVB_FIELD_ROW_COUNT))
        return false;
    grid = {in.x_m, in.y_m, in.step_x_m, in.step_y_m, in.column_count, in.row_count, 0};
    return true;
}

std::uint64_t room_of(const lvb_place &in) noexcept {
    return map::Powers::room(in.column_count * in.row_count, in.candidate_count);
}

bool check_place(Refusal &refusal, const lvb_place &in) noexcept {
    const Place place{LVB_STRUCT_PLACE};
    if (in.site == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SITE);
    if (in.candidates == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_CANDIDATES);
    if (in.scratch == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SCRATCH);
    const auto room = static_cast<double>(room_of(in));
    if (in.scratch_count < room_of(in))
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_SCRATCH_COUNT, static_cast<double>(in.scratch_count), room,
                      math::infinity);
    return check_size(refusal, in.candidate_size, sizeof(lvb_site_antenna), LVB_E_ELEMENT_SIZE, place,
                      LVB_FIELD_CANDIDATE_SIZE) &&
           check_field(refusal, in.least_headroom_db, least_headroom_range, place, LVB_FIELD_LEAST_HEADROOM_DB);
}

// Where results go.
struct Results {
    char *first;
    std::uint32_t size, most;
};
bool check_results(Refusal &refusal, const Results &results) noexcept {
    if (results.first == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_PLACEMENTS);
    if (results.most < 1 || results.most > most_placements)
        return refuse(refusal, LVB_E_COUNT, {}, LVB_FIELD_PLACEMENT_COUNT, results.most, 1.0, most_placements);
    return check_size(refusal, results.size, sizeof(lvb_placement), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_PLACEMENT_SIZE);
}

// Powers are written into the scratch while placements are kept.
bool check_scratch(Refusal &refusal, const lvb_place &in, const Results &results,
                   const std::uint32_t *found_count) noexcept {
    const Place place{LVB_STRUCT_PLACE};
    const Room scratch{in.scratch, room_of(in) * sizeof(double), LVB_FIELD_SCRATCH};
    const Room placements[] = {{results.first, std::uint64_t{results.most} * results.size, LVB_FIELD_PLACEMENTS},
                               scratch};
    const Room count[] = {{found_count, sizeof *found_count, LVB_FIELD_FOUND_COUNT}, scratch};
    return check_apart(refusal, placements, place) && check_apart(refusal, count, place);
}

// The best placements so far, in the caller's memory and in order. While they are sought, levels hold powers.
class Kept {
  public:
    explicit Kept(const Results &results) noexcept : results_(results) {}

    std::uint32_t count() const noexcept { return count_; }
    double least() const noexcept { return count_ < results_.most ? -1.0 : at(count_ - 1).worst_level_dbm; }
    void keep(const map::Placement &placement) noexcept {
        if (count_ < results_.most) ++count_;
        std::uint32_t i = count_ - 1;
        for (; i > 0 && at(i - 1).worst_level_dbm < placement.worst; --i) put(i, at(i - 1));
        put(i, {placement.first, placement.second, placement.worst, 0.0, placement.hottest, 0.0});
    }
    void finish(const map::Site &site) noexcept {
        const map::Limits limits = map::limits_of(site.window);
        for (std::uint32_t i = 0; i < count_; ++i) {
            lvb_placement out = at(i);
            out.worst_level_dbm = map::level_of(out.worst_level_dbm, site.far_reference_db);
            out.worst_margin_db = out.worst_level_dbm - limits.floor;
            out.hottest_level_dbm = map::level_of(out.hottest_level_dbm, site.near_reference_db);
            out.hottest_headroom_db = limits.ceiling - out.hottest_level_dbm;
            put(i, out);
        }
    }

  private:
    char *element(std::uint32_t i) const noexcept { return &results_.first[std::size_t{i} * results_.size]; }
    lvb_placement at(std::uint32_t i) const noexcept {
        lvb_placement copy;
        std::memcpy(&copy, element(i), sizeof copy);
        return copy;
    }
    // NOLINTNEXTLINE(readability-make-member-function-const): what is kept lies in the caller's memory
    void put(std::uint32_t i, const lvb_placement &placement) noexcept { give(element(i), placement, results_.size); }

    Results results_;
    std::uint32_t count_ = 0;
};

// What would be told as one of the site's antennas, or of their links, is told as a candidate. Tables keep their rows.
bool of_candidate(Refusal &refusal) noexcept {
    std::int32_t &structure = refusal.place.structure;
    tell_as_element(refusal.place, LVB_STRUCT_PLACE, refusal.place.row);
    const bool own_pattern = structure == LVB_STRUCT_PATTERN && refusal.place.stage < 0;
    if (own_pattern || structure == LVB_STRUCT_SITE_ANTENNA || structure == LVB_STRUCT_ANTENNA)
        structure = LVB_STRUCT_PLACE;
    if (structure == LVB_STRUCT_SCREEN && refusal.field == LVB_FIELD_ANTENNA) refusal.field = LVB_FIELD_CANDIDATES;
    return false;
}

// A placement must be judged at every point, so a path that does not hold at one of them is refused.
bool check_reach_of_all(Refusal &refusal, const map::Site &site, const map::Antenna &antenna, const map::Powers &powers,
                        std::uint64_t points, Place place) noexcept {
    const double off_m = map::off_reach_m(site, antenna, powers, points);
    if (math::is_nan(off_m)) return true;
    const path::Reach reach = path::reach_of(antenna.path);
    return refuse_outside(refusal, off_m, reach.nearest_m, reach.farthest_m, place, LVB_FIELD_DISTANCE_M);
}

bool compute(Refusal &refusal, const lvb_place *lent, const Results &results, std::uint32_t *found_count) noexcept {
    const Place place{LVB_STRUCT_PLACE};
    lvb_place in;
    map::Grid grid;
    math::InstructionSet set;
    TakenSite taken;
    map::Antenna antenna;
    if (!take_counts(refusal, lent, in, grid) || !check_place(refusal, in) || !check_results(refusal, results))
        return false;
    if (found_count == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_FOUND_COUNT);
    if (!check_scratch(refusal, in, results, found_count) ||
        !choose_set(refusal, in.instructions, in.column_count * in.row_count * in.candidate_count, place, set) ||
        !take_site(refusal, in.site, 0, set, taken))
        return false;
    map::Site &site = taken.site;
    // one reference for all: every candidate is looked at before any power is computed
    if (site.antenna_count == 0) site.far_reference_db = site.near_reference_db = math::not_a_number;
    for (std::uint32_t i = 0; i < in.candidate_count; ++i) {
        if (!take_site_antenna(refusal, in.candidates, in.candidate_size, i, taken, antenna))
            return of_candidate(refusal);
        raise_references(site, antenna);
    }
    settle_references(taken);
    map::Powers powers(in.scratch, in.column_count * in.row_count);
    const std::uint64_t points = map::gather(site, grid, powers);
    if (points == 0) return refuse(refusal, LVB_E_MISSING, {LVB_STRUCT_SITE}, LVB_FIELD_AREAS, 0.0);
    powers.shorten(points);
    for (std::size_t a = 0; a < site.antenna_count; ++a)
        if (!check_reach_of_all(refusal, site, taken.antennas[a], powers, points,
                                {LVB_STRUCT_SITE_ANTENNA, -1, static_cast<std::int32_t>(a)}))
            return false;
    map::take_own(site, powers, points);
    for (std::uint32_t i = 0; i < in.candidate_count; ++i) {
        take_site_antenna(refusal, in.candidates, in.candidate_size, i, taken, antenna);
        map::refer(site, antenna);
        if (!check_reach_of_all(refusal, site, antenna, powers, points,
                                {LVB_STRUCT_PLACE, -1, static_cast<std::int32_t>(i)}))
            return false;
        map::take_candidate(site, antenna, i, powers, points);
    }
    Kept kept(results);
    map::Search{&site, &powers, in.candidate_count, in.least_headroom_db}.run(in.place_count == 2, kept);
    kept.finish(site);
    *found_count = kept.count();
    return true;
}

bool tell_scratch(Refusal &refusal, const lvb_place *lent, std::uint64_t *scratch_count) noexcept {
    lvb_place in;
    map::Grid grid;
    if (!take_counts(refusal, lent, in, grid)) return false;
    if (scratch_count == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_SCRATCH_COUNT);
    *scratch_count = room_of(in);
    return true;
}

bool spread(Refusal &refusal, const lvb_antenna *lent, const map::Vector &to, std::uint32_t count,
            lvb_antenna *antennas) noexcept {
    const Place place{LVB_STRUCT_ANTENNA};
    lvb_antenna in;
    if (!take(refusal, lent, in, place, LVB_FIELD_ANTENNA) || !check_antenna(refusal, in, place) ||
        !check_field(refusal, to.x, position_range, {}, LVB_FIELD_TO_X_M) ||
        !check_field(refusal, to.y, position_range, {}, LVB_FIELD_TO_Y_M) ||
        !check_field(refusal, to.z, position_range, {}, LVB_FIELD_TO_Z_M))
        return false;
    if (count < 2 || count > LVB_MAX_CANDIDATES)
        return refuse(refusal, LVB_E_COUNT, {}, LVB_FIELD_ANTENNA_COUNT, count, 2.0, LVB_MAX_CANDIDATES);
    if (antennas == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_ANTENNAS);
    for (std::uint32_t i = 0; i < count; ++i) {
        const map::Vector at = map::on_rail({in.x_m, in.y_m, in.z_m}, to, i, count);
        lvb_antenna out = in;
        out.size = sizeof out;
        out.x_m = at.x;
        out.y_m = at.y;
        out.z_m = at.z;
        antennas[i] = out;
    }
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_place_scratch_count(const lvb_place *place, uint64_t *scratch_count, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return tell_scratch(refusal, place, scratch_count); });
}

lvb_status lvb_compute_placements(const lvb_place *place, lvb_placement *placements, uint32_t placement_size,
                                  uint32_t placement_count, uint32_t *found_count, lvb_fault *fault) {
    using namespace lvb::door;
    const Results results{reinterpret_cast<char *>(placements), placement_size, placement_count};
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, place, results, found_count); });
}

lvb_status lvb_spread_on_rail(const lvb_antenna *antenna, double to_x_m, double to_y_m, double to_z_m,
                              uint32_t antenna_count, lvb_antenna *antennas, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return spread(refusal, antenna, {to_x_m, to_y_m, to_z_m}, antenna_count, antennas);
    });
}

} // extern "C"
