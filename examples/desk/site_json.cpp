#include "site_json.hpp"

#include "print_budget.hpp"
#include "site_verdict.hpp"
#include "site_words.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace desk {
namespace {

// Keeps the order in which fields are written. A number that is not finite becomes null.
using Json = nlohmann::ordered_json;

// Null without one; the pack's antenna is null where polarization is not computed.
Json wearer_json(const Site &site) {
    if (!site.wearer) return nullptr;
    const Wearer &wearer = *site.wearer;
    Json out = {
        {"faces", facing_words(site)}, {"body_counts", wearer.body_table != nullptr}, {"pack_antenna", nullptr}};
    if (!wearer.antenna_on_pack) return out;
    const lvb_antenna &worn = wearer.antenna_on_pack->entry;
    out["pack_antenna"] = {{"azimuth_deg", worn.azimuth_deg},
                           {"tilt_deg", worn.tilt_deg},
                           {"roll_deg", worn.roll_deg},
                           {"polarization_deg", worn.polarization_deg},
                           {"ellipticity", worn.ellipticity}};
    const double most_db = wearer.most_polarization_loss_db;
    out["most_polarization_loss_db"] = most_db > 0.0 ? Json(most_db) : Json(nullptr);
    out["in_place_of"] = wearer.in_place_of.empty() ? Json(nullptr) : Json(wearer.in_place_of);
    return out;
}

Json heading(const Scenario &scenario, const std::string &file, const Site &site) {
    Json out;
    out["version"] = lvb_version_text();
    out["scenario"] = file;
    out["production"] = scenario.production;
    out["site"] = site.name;
    out["direction"] = lvb_direction_name(site.direction);
    out["combining"] = lvb_combine_name(site.combine);
    out["pack_height_m"] = site.pack_height_m;
    out["wearer"] = wearer_json(site);
    return out;
}

std::string told(const Scenario &scenario, const Site &site, const std::vector<std::string> &failures, Json out) {
    out["failures"] = failures;
    out["holds"] = failures.empty();
    out["cautions"] = cautions(links_of(scenario, site), true);
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json serving_json(const Site &site, std::int32_t antenna) {
    return antenna < 0 ? Json(nullptr) : Json(site.antennas[static_cast<std::size_t>(antenna)].label);
}

// Null without fading.
Json fading_json(const Points &points, const Counts &counts) {
    if (points.outage.empty()) return nullptr;
    return {{"wanted_outage", points.wanted_outage()},
            {"points_over_wanted", counts.over_outage},
            {"highest_outage", points.highest_outage()}};
}

Json stretches_json(const WalkSurvey &survey, const std::vector<Stretch> &stretches) {
    Json list = Json::array();
    for (const Stretch &stretch : stretches) {
        const Way::At from = survey.way.at(stretch.from_m), to = survey.way.at(stretch.to_m);
        Json item;
        item["from_m"] = stretch.from_m;
        item["to_m"] = stretch.to_m;
        item["seconds"] = (stretch.to_m - stretch.from_m) / survey.walk->speed_m_per_s;
        item["from_x_m"] = from.x_m;
        item["from_y_m"] = from.y_m;
        item["to_x_m"] = to.x_m;
        item["to_y_m"] = to.y_m;
        list.push_back(item);
    }
    return list;
}

Json walk_point_json(const WalkSurvey &survey, double at_m, double level_dbm, const char *room_name, double room_db,
                     std::int32_t serving) {
    if (std::isnan(at_m) || survey.result.points == survey.result.unmodelled) return nullptr;
    const Way::At at = survey.way.at(at_m);
    Json out;
    out["at_m"] = at_m;
    out["x_m"] = at.x_m;
    out["y_m"] = at.y_m;
    out["z_m"] = at.z_m;
    out["level_dbm"] = level_dbm;
    out[room_name] = room_db;
    out["serving"] = serving_json(*survey.site, serving);
    return out;
}

// The worst or the hottest point; null where there is no point with a level.
Json extreme_json(const Survey &map, const Tally &tally, bool hottest) {
    if (tally.summary.points == 0) return nullptr;
    const lvb_map_summary &all = tally.summary;
    Json out;
    out["x_m"] = map.grid.x_of(hottest ? all.hottest_column : all.worst_column);
    out["y_m"] = map.grid.y_of(hottest ? all.hottest_row : all.worst_row);
    out["level_dbm"] = hottest ? all.hottest_level_dbm : all.worst_level_dbm;
    if (hottest) out["headroom_db"] = all.hottest_headroom_db;
    else out["margin_db"] = all.worst_margin_db;
    out["serving"] = serving_json(*map.site, hottest ? all.hottest_serving : all.worst_serving);
    return out;
}

void add_grounds(Json &out, const Grounds &grounds) {
    out["frequency_mhz"] = grounds.frequency_mhz;
    out["floor_dbm"] = grounds.has_floor ? Json(grounds.floor_dbm) : Json(nullptr);
    out["ceiling_dbm"] = grounds.has_ceiling ? Json(grounds.ceiling_dbm) : Json(nullptr);
    out["far_worst_db"] = grounds.far_worst_db;
    out["near_worst_db"] = grounds.near_worst_db;
}

void add_tally(Json &out, const Survey &map, const Tally &tally) {
    const lvb_map_summary &summary = tally.summary;
    out["points"] = summary.points;
    out["doubtful"] = tally.counts.doubtful;
    out["near_field"] = tally.counts.near_field;
    out["unmodelled"] = summary.unmodelled;
    Json zones;
    zones[lvb_zone_name(LVB_ZONE_DROPOUT)] = summary.dropout;
    zones[lvb_zone_name(LVB_ZONE_LOW)] = summary.low;
    zones[lvb_zone_name(LVB_ZONE_WANTED)] = summary.wanted;
    zones[lvb_zone_name(LVB_ZONE_HIGH)] = summary.high;
    zones[lvb_zone_name(LVB_ZONE_OVERLOAD)] = summary.overload;
    zones[lvb_zone_name(LVB_ZONE_NOT_JUDGED)] = summary.not_judged;
    out["zones"] = zones;
    out["overloaded"] = summary.overloaded;
    out["worst"] = extreme_json(map, tally, false);
    out["hottest"] = extreme_json(map, tally, true);
}

Json areas_json(const Survey &map) {
    Json list = Json::array();
    for (std::size_t i = 0; i < map.areas.size(); ++i) {
        Json area;
        area["name"] = map.site->areas[i].name;
        add_tally(area, map, map.areas[i]);
        if (!map.outage.empty()) area["points_over_wanted"] = map.areas[i].counts.over_outage;
        area["holds"] = holds(map, map.areas[i]);
        list.push_back(area);
    }
    return list;
}

Json missed_areas_json(const Survey &map) {
    Json list = Json::array();
    for (const Area *area : missed_areas(map)) list.push_back(area->name);
    return list;
}

} // namespace

std::string map_json(const Scenario &scenario, const std::string &file, const Survey &survey) {
    const Site &site = *survey.site;
    Json out = heading(scenario, file, site);
    add_grounds(out, survey);
    out["grid"] = {{"x_m", survey.grid.x_m},
                   {"y_m", survey.grid.y_m},
                   {"step_m", site.step_m},
                   {"columns", survey.grid.columns},
                   {"rows", survey.grid.rows}};
    add_tally(out, survey, survey.all);
    out["areas"] = areas_json(survey);
    out["missed_areas"] = missed_areas_json(survey);
    out["fading"] = fading_json(survey, survey.all.counts);
    return told(scenario, *survey.site, failures(survey), std::move(out));
}

std::string walk_json(const Scenario &scenario, const std::string &file, const WalkSurvey &survey) {
    const lvb_walk_result &result = survey.result;
    Json out = heading(scenario, file, *survey.site);
    add_grounds(out, survey);
    out["walk"] = survey.walk->name;
    out["length_m"] = result.length_m;
    out["speed_m_per_s"] = survey.walk->speed_m_per_s;
    out["duration_s"] = result.duration_s;
    out["points"] = result.points;
    out["doubtful"] = survey.counts.doubtful;
    out["near_field"] = survey.counts.near_field;
    out["unmodelled"] = result.unmodelled;
    out["worst"] = walk_point_json(survey, result.worst_m, result.worst_level_dbm, "margin_db", result.worst_margin_db,
                                   result.worst_serving);
    out["hottest"] = walk_point_json(survey, result.hottest_m, result.hottest_level_dbm, "headroom_db",
                                     result.hottest_headroom_db, result.hottest_serving);
    out["under_floor_s"] = survey.has_floor ? Json(result.under_floor_s) : Json(nullptr);
    out["under_floor"] = stretches_json(survey, survey.under_floor);
    out["over_ceiling_s"] = survey.has_ceiling ? Json(result.over_ceiling_s) : Json(nullptr);
    out["over_ceiling"] = stretches_json(survey, survey.over_ceiling);
    out["fading"] = fading_json(survey, survey.counts);
    if (survey.site->fading) {
        out["fading"]["mean_outage"] = result.mean_outage;
        out["fading"]["expected_under_floor_s"] = result.expected_under_floor_s;
        out["fading"]["over_wanted_s"] = survey.over_outage_s;
        out["fading"]["over_wanted"] = stretches_json(survey, survey.over_outage);
    }
    return told(scenario, *survey.site, failures(survey), std::move(out));
}

std::string place_json(const Scenario &scenario, const std::string &file, const PlacingSurvey &survey) {
    const Placing &placing = *survey.site->placing;
    Json out = heading(scenario, file, *survey.site);
    add_grounds(out, survey);
    out["candidates"] = placing.candidates.size();
    out["looked_at"] = survey.looked_at;
    out["least_headroom_db"] = placing.least_headroom_db;
    out["placements"] = Json::array();
    for (std::size_t i = 0; i < survey.best.size(); ++i) {
        const lvb_placement &placement = survey.best[i];
        Json item;
        item["antennas"] = Json::array();
        for (const std::int32_t index : {placement.first, placement.second}) {
            if (index < 0) continue;
            const SiteAntenna &antenna = placing.candidates[static_cast<std::size_t>(index)];
            Json place;
            place["label"] = antenna.label;
            place["x_m"] = antenna.place.entry.x_m;
            place["y_m"] = antenna.place.entry.y_m;
            place["z_m"] = antenna.place.entry.z_m;
            place["azimuth_deg"] = antenna.place.entry.azimuth_deg;
            place["tilt_deg"] = antenna.place.entry.tilt_deg;
            item["antennas"].push_back(place);
        }
        item["worst_level_dbm"] = placement.worst_level_dbm;
        item["worst_margin_db"] = placement.worst_margin_db;
        item["hottest_level_dbm"] = placement.hottest_level_dbm;
        item["hottest_headroom_db"] = placement.hottest_headroom_db;
        item["near_field"] = survey.near_field[i];
        out["placements"].push_back(item);
    }
    out["areas"] = survey.best.empty() ? Json(nullptr) : areas_json(*survey.map);
    out["missed_areas"] = missed_areas_json(*survey.map);
    return told(scenario, *survey.site, failures(survey), std::move(out));
}

} // namespace desk
