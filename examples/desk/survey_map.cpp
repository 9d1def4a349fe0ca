#include "survey.hpp"

#include "faults.hpp"

namespace desk {
namespace {

lvb_map map_of(const LentSite &lent, const Grid &grid) {
    lvb_map map{};
    map.size = sizeof map;
    map.instructions = lvb_best_instructions();
    map.site = &lent.site();
    map.column_count = grid.columns;
    map.row_count = grid.rows;
    map.x_m = grid.x_m;
    map.y_m = grid.y_m;
    map.step_x_m = map.step_y_m = grid.step_m;
    return map;
}

void compute(const LentSite &lent, Survey &survey) {
    lvb_map map = map_of(lent, survey.grid);
    survey.lend(map);
    survey.all.summary.size = sizeof survey.all.summary;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_map(&map, &survey.all.summary, &fault) != LVB_OK) lent.refuse(fault);
    survey.take_best_branch();
}

// The points without a level that would have one in free space, which holds everywhere: they lie inside the areas.
std::vector<bool> unmodelled_points(const Document &document, const Scenario &scenario, const Survey &survey) {
    Site site = *survey.site;
    site.path.emplace();
    site.path->entry.size = sizeof(lvb_path);
    site.path->entry.model = LVB_PATH_FREE_SPACE;
    const LentSite lent(document, scenario, site, false);
    std::vector<double> free_dbm(survey.size());
    lvb_map map = map_of(lent, survey.grid);
    map.level_dbm = free_dbm.data();
    auto fault = sized<lvb_fault>();
    if (lvb_compute_map(&map, nullptr, &fault) != LVB_OK) lent.refuse(fault);
    std::vector<bool> unmodelled(survey.size());
    for (std::size_t i = 0; i < unmodelled.size(); ++i) unmodelled[i] = survey.is_blank(i) && !std::isnan(free_dbm[i]);
    return unmodelled;
}

// Of the points to which some levels belong.
Counts counts_of(const Survey &survey, const std::vector<bool> &near, const std::vector<double> &level_dbm) {
    Counts counts;
    for (std::size_t i = 0; i < level_dbm.size(); ++i)
        if (!std::isnan(level_dbm[i])) survey.count(i, near[i], counts);
    return counts;
}

// What the points of one area come to, by a map of a site that has no other.
Tally tally_of(const LentSite &lent, const lvb_area &area, const Survey &survey, const std::vector<bool> &near) {
    lvb_site site = lent.site();
    site.areas = &area;
    site.area_count = 1;
    std::vector<double> level_dbm(survey.size());
    lvb_map map = map_of(lent, survey.grid);
    map.site = &site;
    map.level_dbm = level_dbm.data();
    Tally tally;
    tally.summary.size = sizeof tally.summary;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_map(&map, &tally.summary, &fault) != LVB_OK) lent.refuse(fault);
    tally.counts = counts_of(survey, near, level_dbm);
    return tally;
}

} // namespace

std::vector<bool> near_points(const Survey &survey, const std::vector<SiteAntenna> &antennas) {
    const NearField near_field(survey.frequency_mhz, antennas);
    const Grid &grid = survey.grid;
    std::vector<bool> near(survey.size());
    for (std::size_t i = 0; i < near.size(); ++i)
        near[i] = !survey.is_blank(i) &&
                  near_field.holds(grid.x_of(grid.column_of(i)), grid.y_of(grid.row_of(i)), survey.site->pack_height_m);
    return near;
}

Survey survey_map(const Document &document, const Scenario &scenario, const Site &site) {
    need_antennas(document, site);
    const Grid grid = grid_of(document, site);
    const LentSite lent(document, scenario, site, false);
    Survey survey(site, lent);
    survey.grid = grid;
    survey.resize(grid.size());
    compute(lent, survey);
    if (survey.all.summary.points == 0)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        survey.all.summary.unmodelled == 0 ? "no square of this step has its middle in an area"
                                                           : "the antennas' paths hold at no point of the areas");
    if (survey.all.summary.unmodelled > 0) survey.unmodelled = unmodelled_points(document, scenario, survey);
    const std::vector<bool> near = near_points(survey, site.antennas);
    survey.all.counts = counts_of(survey, near, survey.level_dbm);
    for (const lvb_area &area : lent.areas())
        survey.areas.push_back(site.areas.size() == 1 ? survey.all : tally_of(lent, area, survey, near));
    return survey;
}

} // namespace desk
