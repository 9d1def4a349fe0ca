#include "budget_json.hpp"

#include "print_budget.hpp"
#include "verdict.hpp"
#include "workings.hpp"

#include <nlohmann/json.hpp>

namespace desk {
namespace {

// Keeps the order in which fields are written. A number that is not finite becomes null.
using Json = nlohmann::ordered_json;

Json text_or_null(const std::string &text) { return text.empty() ? Json(nullptr) : Json(text); }

Json notes_json(std::uint32_t notes) {
    Json names = Json::array();
    if ((notes & LVB_NOTE_EXTRAPOLATED) != 0) names.push_back("extrapolated");
    if ((notes & LVB_NOTE_NEAR_FIELD) != 0) names.push_back("near field");
    return names;
}

Json cable_json(const Link &link, const Stage &stage) {
    if (!is_computed_cable(stage)) return nullptr;
    const lvb_cable_loss loss = cable_loss(link.frequency_mhz, link.temperature_degc, stage);
    Json out;
    out["type"] = text_or_null(stage.cable_name);
    out["length_m"] = stage.entry.length_m;
    out["attenuation_db_per_100m"] = loss.attenuation_db_per_100m;
    out["cable_loss_db"] = loss.cable_loss_db;
    out["connectors"] = stage.entry.connector_count;
    out["connectors_loss_db"] = loss.connectors_loss_db;
    return out;
}

Json stage_json(const Link &link, const Stage &stage, const lvb_level &level) {
    Json out;
    out["label"] = stage.label;
    out["gear"] = text_or_null(stage.gear);
    out["kind"] = lvb_kind_name(stage.entry.kind);
    out["workings"] = workings(link, stage, level);
    out["note"] = text_or_null(stage.note);
    out["cable"] = cable_json(link, stage);
    out["basis"] = lvb_basis_name(level.basis);
    out["tolerance_db"] = stage.entry.tolerance_db;
    out["reference"] = lvb_reference_name(level.reference);
    out["far_change_db"] = level.far_change_db;
    out["far_level_dbm"] = level.far_level_dbm;
    out["far_worst_db"] = level.far_worst_db;
    out["far_rss_db"] = level.far_rss_db;
    out["near_change_db"] = level.near_change_db;
    out["near_level_dbm"] = level.near_level_dbm;
    out["near_worst_db"] = level.near_worst_db;
    out["near_rss_db"] = level.near_rss_db;
    out["notes"] = notes_json(level.notes);
    return out;
}

Json window_json(const lvb_stage &receiver) {
    const auto stated = [&](std::uint32_t bit, double level) {
        return (receiver.stated & bit) != 0 ? Json(level) : Json(nullptr);
    };
    Json out;
    out["floor_dbm"] = stated(LVB_STATED_FLOOR, receiver.floor_dbm);
    out["wanted_low_dbm"] = stated(LVB_STATED_WANTED, receiver.wanted_low_dbm);
    out["wanted_high_dbm"] = stated(LVB_STATED_WANTED, receiver.wanted_high_dbm);
    out["ceiling_dbm"] = stated(LVB_STATED_CEILING, receiver.ceiling_dbm);
    return out;
}

Json end_json(const lvb_end &end) {
    Json out;
    out["distance_m"] = end.distance_m > 0.0 ? Json(end.distance_m) : Json(nullptr);
    out["level_dbm"] = end.level_dbm;
    out["worst_db"] = end.worst_db;
    out["rss_db"] = end.rss_db;
    out["margin_db"] = end.margin_db;
    out["headroom_db"] = end.headroom_db;
    out["from_middle_db"] = end.from_middle_db;
    out["zone"] = lvb_zone_name(end.zone);
    out["zone_lowest"] = lvb_zone_name(end.zone_lowest);
    out["zone_highest"] = lvb_zone_name(end.zone_highest);
    return out;
}

Json decided_json(const lvb_budget &budget) {
    if (budget.decided_by == LVB_DECIDED_BY_NOTHING) return nullptr;
    const bool far = budget.decided_by == LVB_DECIDED_BY_FAR_FLOOR;
    Json out;
    out["end"] = far ? "far" : "near";
    out["limit"] = far ? "floor" : "ceiling";
    out["room_db"] = budget.decided_by_db;
    return out;
}

Json guesses_json(const lvb_budget &budget) {
    Json out;
    out["entries"] = budget.entries;
    out["guesses"] = budget.guesses;
    out["guesses_without_tolerance"] = budget.guesses_without_tolerance;
    out["not_looked_up"] = budget.not_looked_up;
    out["estimated"] = budget.estimated;
    out["handbook"] = budget.handbook;
    out["data_sheet"] = budget.data_sheet;
    out["measured"] = budget.measured;
    out["formula"] = budget.formula;
    out["guess_worst_db"] = budget.guess_worst_db;
    out["guess_share"] = budget.guess_share;
    return out;
}

Json link_json(const Answer &answer) {
    const Link &link = *answer.link;
    const lvb_budget &budget = answer.computed.budget;
    Json out;
    out["name"] = link.name;
    out["direction"] = text_or_null(link.direction);
    out["note"] = text_or_null(link.note);
    out["frequency_mhz"] = link.frequency_mhz;
    out["temperature_degc"] = link.temperature_degc ? Json(*link.temperature_degc) : Json(nullptr);
    out["stages"] = Json::array();
    for (std::size_t i = 0; i < link.stages.size(); ++i)
        out["stages"].push_back(stage_json(link, link.stages[i], answer.computed.levels[i]));
    out["window"] = window_json(link.stages.back().entry);
    out["reference"] = lvb_reference_name(budget.reference);
    out["far_end"] = end_json(budget.far_end);
    out["near_end"] = end_json(budget.near_end);
    out["verdict"] = lvb_verdict_name(budget.verdict);
    out["holds"] = budget.verdict == LVB_VERDICT_HOLDS;
    out["not_judged"] = not_judged(link, budget);
    out["decided_by"] = decided_json(budget);
    out["eirp_dbm"] = budget.eirp_dbm;
    out["eirp_worst_db"] = budget.eirp_worst_db;
    out["basis"] = guesses_json(budget);
    out["notes"] = notes_json(budget.notes);
    if (near_distance_missing(budget)) out["notes"].push_back("near distance not given");
    return out;
}

} // namespace

std::string budget_json(const Scenario &scenario, const std::string &file, const std::vector<Answer> &answers) {
    Json out;
    out["version"] = lvb_version_text();
    out["scenario"] = file;
    out["production"] = scenario.production;
    out["note"] = text_or_null(scenario.note);
    out["links"] = Json::array();
    for (const Answer &answer : answers) out["links"].push_back(link_json(answer));
    out["cautions"] = cautions();
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace desk
