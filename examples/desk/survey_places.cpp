#include "survey.hpp"

#include "faults.hpp"

namespace desk {

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most) {
    if (!site.placing) document.refuse(*site.value, "placing is missing: where antennas may be put");
    const Placing &placing = *site.placing;
    const Grid grid = grid_of(document, site);
    const LentSite lent(document, scenario, site, true);
    PlacingSurvey survey(site, lent);
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
    place.step_x_m = place.step_y_m = grid.step_m;
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
