#include "survey.hpp"

#include "faults.hpp"

#include <algorithm>

namespace desk {
namespace {

constexpr double most_points = 1e6;

// The squares that cover all areas of a site.
struct Grid {
    double x_m, y_m;
    std::size_t columns, rows;
};

Grid grid_of(const Document &document, const Site &site) {
    double low_x = HUGE_VAL, low_y = HUGE_VAL, high_x = -HUGE_VAL, high_y = -HUGE_VAL;
    for (const Area &area : site.areas) {
        const auto [x0, x1] = std::minmax_element(area.corners.x_m.begin(), area.corners.x_m.end());
        const auto [y0, y1] = std::minmax_element(area.corners.y_m.begin(), area.corners.y_m.end());
        low_x = std::min(low_x, *x0);
        low_y = std::min(low_y, *y0);
        high_x = std::max(high_x, *x1);
        high_y = std::max(high_y, *y1);
    }
    constexpr double rounding = 1e-9; // 0.3 m in steps of 0.1 m are three
    const auto steps = [&](double length_m) { return std::max(1.0, std::ceil(length_m / site.step_m - rounding)); };
    const double columns = steps(high_x - low_x), rows = steps(high_y - low_y);
    if (columns * rows > most_points)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        "this step makes " + plain(columns * rows) + " points; allowed are " + plain(most_points));
    const double half = 0.5 * site.step_m;
    return {low_x + half, low_y + half, static_cast<std::size_t>(columns), static_cast<std::size_t>(rows)};
}

std::int32_t law_of(Fading::Model model) {
    switch (model) {
    case Fading::Model::rice:
        return LVB_FADING_RICE;
    case Fading::Model::nakagami:
        return LVB_FADING_NAKAGAMI;
    case Fading::Model::log_normal:
        return LVB_FADING_LOGNORMAL;
    case Fading::Model::suzuki:
        return LVB_FADING_SUZUKI;
    default:
        return LVB_FADING_RAYLEIGH;
    }
}

void need_antennas(const Document &document, const Site &site) {
    if (site.antennas.empty())
        document.refuse(*site.value, "antennas is missing; this site only asks where to put them");
}

bool states(const lvb_stage *receiver, std::uint32_t what) {
    return receiver != nullptr && (receiver->stated & what) != 0;
}

lvb_map map_of(const LentSite &lent, const Grid &grid, const Site &site) {
    lvb_map map{};
    map.size = sizeof map;
    map.instructions = lvb_best_instructions();
    map.site = &lent.site();
    map.column_count = grid.columns;
    map.row_count = grid.rows;
    map.x_m = grid.x_m;
    map.y_m = grid.y_m;
    map.step_x_m = map.step_y_m = site.step_m;
    return map;
}

// The points without a level that would have one in free space, which holds everywhere: they lie inside the areas.
std::vector<bool> unmodelled_points(const Document &document, const Scenario &scenario, Site site, const Grid &grid,
                                    const std::vector<double> &level_dbm) {
    site.path.emplace();
    site.path->entry.size = sizeof(lvb_path);
    site.path->entry.model = LVB_PATH_FREE_SPACE;
    const LentSite lent(document, scenario, site, false);
    std::vector<double> free_dbm(level_dbm.size());
    lvb_map map = map_of(lent, grid, site);
    map.level_dbm = free_dbm.data();
    auto fault = sized<lvb_fault>();
    if (lvb_compute_map(&map, nullptr, &fault) != LVB_OK) lent.refuse(fault);
    std::vector<bool> unmodelled(level_dbm.size());
    for (std::size_t i = 0; i < unmodelled.size(); ++i)
        unmodelled[i] = std::isnan(level_dbm[i]) && !std::isnan(free_dbm[i]);
    return unmodelled;
}

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

} // namespace

Grounds::Grounds(const Site &of, const LentSite &lent)
    : site(&of), frequency_mhz(lent.frequency_mhz()), has_floor(states(lent.receiver(), LVB_STATED_FLOOR)),
      has_wanted(states(lent.receiver(), LVB_STATED_WANTED)), has_ceiling(states(lent.receiver(), LVB_STATED_CEILING)),
      far_worst_db(lent.far_worst_db()), near_worst_db(lent.near_worst_db()) {}

bool Grounds::is_doubtful(double margin_db, double headroom_db) const {
    return !(margin_db < 0.0) && !(headroom_db < 0.0) && (margin_db < far_worst_db || headroom_db < near_worst_db);
}

bool Grounds::in_near_field(double x_m, double y_m, double z_m) const {
    const double wavelength_m = lvb_wavelength_m_from_mhz(frequency_mhz);
    return std::any_of(site->antennas.begin(), site->antennas.end(), [&](const SiteAntenna &antenna) {
        const lvb_antenna &at = antenna.place.entry;
        const double far_m = std::max(wavelength_m, lvb_far_field_distance_m(frequency_mhz, at.largest_dimension_m));
        return std::hypot(x_m - at.x_m, y_m - at.y_m, z_m - at.z_m) < far_m;
    });
}

double Survey::highest_outage() const {
    double highest = 0.0;
    for (const double share : outage)
        if (share > highest) highest = share; // a point outside the areas has NaN
    return highest;
}

std::size_t Survey::over_outage() const {
    return static_cast<std::size_t>(
        std::count_if(outage.begin(), outage.end(), [&](double share) { return share > wanted_outage(); }));
}

Survey survey_map(const Document &document, const Scenario &scenario, const Site &site) {
    need_antennas(document, site);
    const Grid grid = grid_of(document, site);
    const LentSite lent(document, scenario, site, false);
    Survey survey(site, lent);
    survey.x_m = grid.x_m;
    survey.y_m = grid.y_m;
    survey.columns = grid.columns;
    survey.rows = grid.rows;
    const std::size_t points = grid.columns * grid.rows;
    for (std::vector<double> *values : {&survey.level_dbm, &survey.margin_db, &survey.headroom_db})
        values->resize(points);
    survey.zone.resize(points);
    survey.serving.resize(points);
    lvb_map map = map_of(lent, grid, site);
    map.level_dbm = survey.level_dbm.data();
    map.margin_db = survey.margin_db.data();
    map.headroom_db = survey.headroom_db.data();
    map.zone = survey.zone.data();
    map.serving = survey.serving.data();
    if (site.fading) {
        survey.outage.resize(points);
        map.outage = survey.outage.data();
        map.fading = law_of(site.fading->model);
        map.fading_parameter = site.fading->parameter;
    }
    survey.summary.size = sizeof survey.summary;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_map(&map, &survey.summary, &fault) != LVB_OK) lent.refuse(fault);
    if (survey.summary.points == 0)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        survey.summary.unmodelled == 0 ? "no square of this step has its middle in an area"
                                                       : "the antennas' paths hold at no point of the areas");
    if (site.fading)
        for (double &outage : survey.outage)
            if (!std::isnan(outage)) outage = lvb_selection_outage(outage, site.fading->branches);
    if (survey.summary.unmodelled > 0)
        survey.unmodelled = unmodelled_points(document, scenario, site, grid, survey.level_dbm);
    for (std::size_t i = 0; i < points; ++i) {
        if (survey.is_blank(i)) continue;
        if (survey.is_doubtful(survey.margin_db[i], survey.headroom_db[i])) ++survey.doubtful;
        const double x_m = survey.x_of(i % survey.columns), y_m = survey.y_of(i / survey.columns);
        if (survey.in_near_field(x_m, y_m, site.pack_height_m)) ++survey.near_field;
    }
    return survey;
}

WalkSurvey::At WalkSurvey::at(double distance) const {
    const Corners &corners = walk->corners;
    const auto height = [&](std::size_t i) { return corners.z_m[i].value_or(site->pack_height_m); };
    double begin_m = 0.0;
    for (std::size_t i = 1;; ++i) {
        const double dx = corners.x_m[i] - corners.x_m[i - 1], dy = corners.y_m[i] - corners.y_m[i - 1];
        const double dz = height(i) - height(i - 1), leg_m = std::hypot(dx, dy, dz);
        const bool last = i + 1 == corners.x_m.size();
        if (distance > begin_m + leg_m && !last) {
            begin_m += leg_m;
            continue;
        }
        const double share = leg_m > 0.0 ? std::min((distance - begin_m) / leg_m, 1.0) : 0.0;
        return {corners.x_m[i - 1] + share * dx, corners.y_m[i - 1] + share * dy, height(i - 1) + share * dz};
    }
}

WalkSurvey survey_walk(const Document &document, const Scenario &scenario, const Site &site, const Walk &of) {
    need_antennas(document, site);
    const LentSite lent(document, scenario, site, false);
    WalkSurvey survey(site, lent);
    survey.walk = &of;
    std::vector<double> heights;
    for (const std::optional<double> &z : of.corners.z_m) heights.push_back(z.value_or(site.pack_height_m));
    lvb_walk walk{};
    walk.size = sizeof walk;
    walk.instructions = lvb_best_instructions();
    walk.corner_count = static_cast<std::uint32_t>(of.corners.x_m.size());
    walk.site = &lent.site();
    walk.x_m = of.corners.x_m.data();
    walk.y_m = of.corners.y_m.data();
    walk.z_m = heights.data();
    walk.speed_m_per_s = of.speed_m_per_s;
    walk.step_m = of.step_m;
    auto fault = sized<lvb_fault>();
    std::uint64_t points = 0;
    const Value &step = *of.numbers.at(LVB_FIELD_STEP_M).value;
    const lvb_status counted = lvb_walk_point_count(&walk, &points, &fault);
    if (counted == LVB_E_MISSING) document.refuse(*of.value, "this walk has no length; all its corners are one place");
    if (counted != LVB_OK || static_cast<double>(points) > most_points)
        document.refuse(step, "this step makes " +
                                  (counted == LVB_OK ? plain(static_cast<double>(points)) : "too many") +
                                  " points; allowed are " + plain(most_points));
    for (std::vector<double> *values : {&survey.distance_m, &survey.level_dbm, &survey.margin_db, &survey.headroom_db})
        values->resize(points);
    survey.zone.resize(points);
    survey.serving.resize(points);
    walk.distance_m = survey.distance_m.data();
    walk.level_dbm = survey.level_dbm.data();
    walk.margin_db = survey.margin_db.data();
    walk.headroom_db = survey.headroom_db.data();
    walk.zone = survey.zone.data();
    walk.serving = survey.serving.data();
    survey.result.size = sizeof survey.result;
    if (lvb_compute_walk(&walk, &survey.result, &fault) != LVB_OK) {
        if (fault.structure == LVB_STRUCT_WALK && fault.row >= 0)
            document.refuse(*of.corners.values[static_cast<std::size_t>(fault.row)],
                            plain(fault.value) + " m over the floor; two rays need " + plain(fault.minimum) + " to " +
                                plain(fault.maximum) + " m");
        lent.refuse(fault);
    }
    for (std::size_t i = 0; i < points; ++i) {
        if (std::isnan(survey.level_dbm[i])) continue;
        if (survey.is_doubtful(survey.margin_db[i], survey.headroom_db[i])) ++survey.doubtful;
        const WalkSurvey::At at = survey.at(survey.distance_m[i]);
        if (survey.in_near_field(at.x_m, at.y_m, at.z_m)) ++survey.near_field;
    }
    survey.under_floor = stretches_below_zero(survey.distance_m, survey.margin_db);
    survey.over_ceiling = stretches_below_zero(survey.distance_m, survey.headroom_db);
    return survey;
}

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most) {
    if (!site.placing) document.refuse(*site.value, "placing is missing: where antennas may be put");
    const Placing &placing = *site.placing;
    const Grid grid = grid_of(document, site);
    const LentSite lent(document, scenario, site, true);
    PlacingSurvey survey(site, lent);
    survey.points = grid.columns * grid.rows;
    const std::uint64_t count = placing.candidates.size();
    survey.looked_at = placing.antennas == 1 ? count : count * (count - 1) / 2;
    lvb_place place{};
    place.size = sizeof place;
    place.instructions = lvb_best_instructions();
    place.place_count = placing.antennas;
    place.candidate_count = static_cast<std::uint32_t>(count);
    place.candidate_size = sizeof(lvb_site_antenna);
    lvb_site around = lent.site();
    if (!placing.keeps_antennas) around.antenna_count = 0, around.antennas = nullptr;
    place.site = &around;
    place.candidates = lent.candidates().data();
    place.column_count = grid.columns;
    place.row_count = grid.rows;
    place.x_m = grid.x_m;
    place.y_m = grid.y_m;
    place.step_x_m = place.step_y_m = site.step_m;
    place.least_headroom_db = placing.least_headroom_db;
    auto fault = sized<lvb_fault>();
    std::uint64_t values = 0;
    if (lvb_place_scratch_count(&place, &values, &fault) != LVB_OK) lent.refuse(fault);
    constexpr std::uint64_t most_values = 1u << 26; // half a gibibyte
    if (values > most_values)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        "this step and " + plain(static_cast<double>(count)) +
                            " candidates need more working room than this program takes; take a wider step");
    std::vector<double> scratch(values);
    place.scratch = scratch.data();
    place.scratch_count = values;
    survey.best.resize(most);
    std::uint32_t found = 0;
    if (lvb_compute_placements(&place, survey.best.data(), sizeof(lvb_placement), static_cast<std::uint32_t>(most),
                               &found, &fault) != LVB_OK) {
        if (fault.status == LVB_E_MISSING)
            document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                            "no square of this step has its middle in an area");
        lent.refuse(fault);
    }
    survey.best.resize(found);
    return survey;
}

} // namespace desk
