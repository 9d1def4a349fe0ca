#include "survey.hpp"

#include "faults.hpp"

#include <algorithm>

namespace desk {
namespace {

// The antennas of a placement; none stands for second.
std::vector<SiteAntenna> antennas_of(const Placing &placing, const lvb_placement &placement) {
    std::vector<SiteAntenna> antennas;
    for (const std::int32_t index : {placement.first, placement.second})
        if (index >= 0) antennas.push_back(placing.candidates[static_cast<std::size_t>(index)]);
    return antennas;
}

// The site as it is with some antennas placed. Its fading is left out, as a placing leaves it out.
Site with_placed(const Site &site, const std::vector<SiteAntenna> &antennas) {
    Site placed = site;
    if (!site.placing->keeps_antennas) placed.antennas.clear();
    placed.antennas.insert(placed.antennas.end(), antennas.begin(), antennas.end());
    placed.placing.reset();
    placed.fading.reset();
    return placed;
}

std::vector<double> working_room(const Document &document, const LentSite &lent, const Site &site,
                                 const lvb_place &place) {
    constexpr std::uint64_t most_values = 1u << 26; // half a gibibyte
    auto fault = sized<lvb_fault>();
    std::uint64_t values = 0;
    if (lvb_place_scratch_count(&place, &values, &fault) != LVB_OK) lent.refuse(fault);
    if (values > most_values)
        document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                        "this step and " + plain(static_cast<double>(place.candidate_count)) +
                            " candidates need more working room than this program takes; take a wider step");
    return std::vector<double>(values);
}

// At most so many placements, the best first.
std::vector<lvb_placement> best_placements(const Document &document, const LentSite &lent, const Site &site,
                                           std::size_t most) {
    const Placing &placing = *site.placing;
    const Grid grid = grid_of(document, site);
    lvb_site around = lent.site();
    if (!placing.keeps_antennas) around.antenna_count = 0, around.antennas = nullptr;
    lvb_place place{};
    place.size = sizeof place;
    place.instructions = lvb_best_instructions();
    place.place_count = placing.antennas;
    place.candidate_count = static_cast<std::uint32_t>(lent.candidates().size());
    place.candidate_size = sizeof(lvb_site_antenna);
    place.site = &around;
    place.candidates = lent.candidates().data();
    place.column_count = grid.columns;
    place.row_count = grid.rows;
    place.x_m = grid.x_m;
    place.y_m = grid.y_m;
    place.step_x_m = place.step_y_m = grid.step_m;
    place.least_headroom_db = placing.least_headroom_db;
    std::vector<double> scratch = working_room(document, lent, site, place);
    place.scratch = scratch.data();
    place.scratch_count = scratch.size();
    std::vector<lvb_placement> best(most);
    std::uint32_t found = 0;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_placements(&place, best.data(), sizeof(lvb_placement), static_cast<std::uint32_t>(most), &found,
                               &fault) != LVB_OK) {
        if (fault.status == LVB_E_MISSING)
            document.refuse(*site.numbers.at(LVB_FIELD_STEP_X_M).value,
                            "no square of this step has its middle in an area");
        lent.refuse(fault);
    }
    best.resize(found);
    return best;
}

} // namespace

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most) {
    if (!site.placing) document.refuse(*site.value, "placing is missing: where antennas may be put");
    const Placing &placing = *site.placing;
    if (placing.keeps_antennas && site.antennas.size() + placing.antennas > LVB_MAX_SITE_ANTENNAS)
        document.refuse(*placing.value, "this site has " + std::to_string(site.antennas.size()) +
                                            " antennas already, and a site has " +
                                            std::to_string(LVB_MAX_SITE_ANTENNAS) + " at most");
    const LentSite lent(document, scenario, site, true);
    PlacingSurvey survey(site, lent);
    const std::uint64_t count = placing.candidates.size();
    survey.looked_at = placing.antennas == 1 ? count : count * (count - 1) / 2;
    survey.best = best_placements(document, lent, site, most);
    constexpr lvb_placement some{0, -1, 0.0, 0.0, 0.0, 0.0};
    const lvb_placement &shown = survey.best.empty() ? some : survey.best.front();
    survey.placed = std::make_shared<const Site>(with_placed(site, antennas_of(placing, shown)));
    survey.map = survey_map(document, scenario, *survey.placed);
    for (const lvb_placement &placement : survey.best) {
        const Site with = with_placed(site, antennas_of(placing, placement));
        const std::vector<bool> near = near_points(*survey.map, with.antennas);
        survey.near_field.push_back(static_cast<std::uint64_t>(std::count(near.begin(), near.end(), true)));
    }
    return survey;
}

} // namespace desk
