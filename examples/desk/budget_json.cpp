#include "budget_json.hpp"

#include "print_budget.hpp"
#include "tuning.hpp"
#include "verdict.hpp"
#include "workings.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace desk {
namespace {

// Keeps the order in which fields are written. A number that is not finite becomes null.
using Json = nlohmann::ordered_json;

Json text_or_null(const std::string &text) { return text.empty() ? Json(nullptr) : Json(text); }

Json notes_json(std::uint32_t notes) {
    Json names = Json::array();
    for (const std::uint32_t note : {LVB_NOTE_EXTRAPOLATED, LVB_NOTE_NEAR_FIELD, LVB_NOTE_NULL})
        if ((notes & note) != 0) names.push_back(lvb_note_name(note));
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

Json pattern_json(const Stage &stage, const std::optional<PatternGains> &gains) {
    if (!gains) return nullptr;
    Json out;
    out["kind"] = lvb_pattern_name(stage.pattern->entry.kind);
    out["maximum_dbi"] = gains->far.maximum_dbi;
    out["far_gain_dbi"] = gains->far.gain_dbi;
    out["far_azimuth_deg"] = gains->far_azimuth_deg;
    out["far_elevation_deg"] = gains->far_elevation_deg;
    out["near_gain_dbi"] = gains->near.gain_dbi;
    out["near_azimuth_deg"] = gains->near_azimuth_deg;
    out["near_elevation_deg"] = gains->near_elevation_deg;
    return out;
}

Json stage_json(const Link &link, const Computed &computed, std::size_t index) {
    const Stage &stage = link.stages[index];
    const lvb_level &level = computed.levels[index];
    Json out;
    out["label"] = stage.label;
    out["gear"] = text_or_null(stage.gear);
    out["kind"] = lvb_kind_name(stage.entry.kind);
    out["workings"] = workings(link, computed, index);
    out["note"] = text_or_null(stage.note);
    out["pattern"] = pattern_json(stage, computed.patterns[index]);
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

Json window_json(const Link &link) {
    const lvb_stage &receiver = link.stages.back().entry;
    const auto stated = [&](std::uint32_t bit, double level) {
        return (receiver.stated & bit) != 0 ? Json(level) : Json(nullptr);
    };
    Json out;
    out["floor_dbm"] = stated(LVB_STATED_FLOOR, receiver.floor_dbm);
    out["judged_floor_dbm"] = stated(LVB_STATED_FLOOR, judged_receiver(link).floor_dbm);
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

Json places_json(const Computed &computed) {
    if (!computed.sights) return nullptr;
    Json out;
    out["far_polarization_loss_db"] = computed.sights->far.polarization_loss_db;
    out["near_polarization_loss_db"] = computed.sights->near.polarization_loss_db;
    out["far_field_distance_m"] = computed.sights->far.far_field_distance_m;
    return out;
}

Json path_json(const Link &link, const Computed &computed) {
    if (!computed.path) return nullptr;
    Json out;
    out["model"] = lvb_path_name(link.air()->path->entry.model);
    out["standard_deviation_db"] = computed.path->far.standard_deviation_db;
    const auto end = [&](const std::string &name, const lvb_path_loss &loss) {
        out[name + "_loss_db"] = loss.loss_db;
        out[name + "_diffraction_loss_db"] = loss.diffraction_loss_db;
        out[name + "_obstacle_loss_db"] = loss.obstacle_loss_db;
        out[name + "_free_space_loss_db"] = loss.free_space_loss_db;
    };
    end("far", computed.path->far);
    end("near", computed.path->near);
    return out;
}

Json label_or_null(const Link &link, std::int32_t stage) {
    return stage < 0 ? Json(nullptr) : Json(link.stages[static_cast<std::size_t>(stage)].label);
}

Json noise_json(const Link &link, const Computed &computed) {
    if (!computed.noise) return nullptr;
    const lvb_noise &noise = computed.noise->noise;
    Json out;
    out["verdict"] = lvb_verdict_name(noise.verdict);
    out["bandwidth_mhz"] = link.noise->entry.bandwidth_mhz;
    out["noise_figure_db"] = noise.noise_figure_db;
    out["antenna_temperature_k"] = noise.antenna_temperature_k;
    out["antenna_noise_dbm"] = noise.antenna_noise_dbm;
    out["receiver_noise_dbm"] = noise.receiver_noise_dbm;
    out["far_carrier_to_noise_db"] = noise.far_carrier_to_noise_db;
    out["near_carrier_to_noise_db"] = noise.near_carrier_to_noise_db;
    out["far_carrier_to_noise_plus_interference_db"] = noise.far_carrier_to_noise_plus_interference_db;
    out["near_carrier_to_noise_plus_interference_db"] = noise.near_carrier_to_noise_plus_interference_db;
    out["sensitivity_dbm"] = noise.sensitivity_dbm;
    out["needed_level_dbm"] = link.needed_dbm ? Json(*link.needed_dbm) : Json(nullptr);
    out["margin_db"] = noise.margin_db;
    out["compressing_stage"] = label_or_null(link, noise.compressing_stage);
    out["compression_dbm"] = noise.compression_dbm;
    out["compression_headroom_db"] = noise.compression_headroom_db;
    out["input_intercept_dbm"] = noise.input_intercept_dbm;
    out["two_tone_dbm"] = noise.two_tone_dbm;
    out["products_dbm"] = noise.products_dbm;
    out["spurious_free_range_db"] = noise.spurious_free_range_db;
    out["range_lowering_stage"] = label_or_null(link, noise.range_lowering_stage);
    return out;
}

Json extreme_json(const char *name, const lvb_extreme &extreme) {
    if (std::isnan(extreme.value)) return nullptr;
    Json out;
    out[name] = extreme.value;
    out["frequency_mhz"] = extreme.frequency_mhz;
    return out;
}

Json tuning_json(const Link &link, const Computed &computed) {
    if (!computed.tuned) return nullptr;
    const lvb_sweep_result &sweep = computed.tuned->sweep;
    Json out;
    out["frequencies"] = link.tuning->count;
    out["verdict"] = lvb_verdict_name(sweep.verdict);
    out["lowest_margin"] = extreme_json("margin_db", sweep.lowest_margin);
    out["highest_margin"] = extreme_json("margin_db", sweep.highest_margin);
    out["lowest_headroom"] = extreme_json("headroom_db", sweep.lowest_headroom);
    out["highest_headroom"] = extreme_json("headroom_db", sweep.highest_headroom);
    out["highest_eirp"] = extreme_json("eirp_dbm", sweep.highest_eirp);
    out["limits"] = Json::array();
    for (const TunedLimit &limit : computed.tuned->limits) {
        Json line;
        line["verdict"] = lvb_limit_verdict_name(limit.verdict);
        line["room_db"] = limit.room_db;
        line["frequency_mhz"] = limit.frequency_mhz;
        out["limits"].push_back(line);
    }
    out["holds"] = tuning_failure(*computed.tuned).empty();
    return out;
}

Json fading_json(const Link &link, const Computed &computed) {
    if (!computed.fade) return nullptr;
    Json out;
    out["model"] = lvb_fading_name(link.fading->law());
    out["outage"] = computed.fade->outage;
    out["wanted_outage"] = link.fading->outage;
    out["needed_margin_db"] = computed.fade->needed_db;
    return out;
}

Json limit_json(const Limit &limit, const lvb_limit_result &result) {
    Json out;
    out["rule"] = limit.rule ? Json(limit.rule->citation) : Json(nullptr);
    out["edition"] = limit.rule ? Json(limit.rule->edition) : Json(nullptr);
    out["label"] = text_or_null(limit.label);
    out["quantity"] = lvb_quantity_name(limit.entry.quantity);
    out["limit_dbm"] = limit.entry.limit_dbm;
    out["level_dbm"] = result.level_dbm;
    out["worst_db"] = result.worst_db;
    out["room_db"] = result.room_db;
    out["verdict"] = lvb_limit_verdict_name(result.verdict);
    return out;
}

Json exposure_json(const Answer &answer) {
    if (!answer.keep_away) return nullptr;
    Json out;
    out["limit_w_per_m2"] = answer.keep_away->limit_w_per_m2;
    out["eirp_dbm"] = answer.keep_away->eirp_dbm;
    out["reflection_factor"] = answer.link->exposure->reflection_factor;
    out["transmitters"] = answer.link->exposure->transmitters;
    out["keep_distance_m"] = answer.keep_away->keep_distance_m;
    out["distance_m"] = answer.keep_away->distance_m;
    out["near_field"] = answer.keep_away->near_field();
    return out;
}

Json pair_json(const Pair &pair) {
    const lvb_coexistence &result = pair.coexistence.result;
    Json out;
    out["name"] = pair.neighbours->name;
    out["transmitter"] = pair.transmitter->name;
    out["receiver"] = pair.receiver->name;
    out["coupling_loss_db"] = result.coupling_loss_db;
    out["blocker_dbm"] = result.blocker_dbm;
    out["blocking_margin_db"] = result.blocking_margin_db;
    out["noise_dbm"] = result.noise_dbm;
    out["noise_rise_db"] = result.noise_rise_db;
    out["more_receive_filter_db"] = result.more_receive_filter_db;
    out["more_transmit_filter_db"] = result.more_transmit_filter_db;
    out["blocking_separation_m"] = result.blocking_separation_m;
    out["noise_separation_m"] = result.noise_separation_m;
    out["holds"] = holds(pair.coexistence);
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
    for (std::size_t i = 0; i < link.stages.size(); ++i) out["stages"].push_back(stage_json(link, answer.computed, i));
    out["window"] = window_json(link);
    out["reference"] = lvb_reference_name(budget.reference);
    out["far_end"] = end_json(budget.far_end);
    out["near_end"] = end_json(budget.near_end);
    out["verdict"] = lvb_verdict_name(budget.verdict);
    out["holds"] = budget.verdict == LVB_VERDICT_HOLDS && further_failures(answer).empty();
    out["not_judged"] = not_judged(link, budget);
    out["decided_by"] = decided_json(budget);
    out["eirp_dbm"] = budget.eirp_dbm;
    out["eirp_worst_db"] = budget.eirp_worst_db;
    out["basis"] = guesses_json(budget);
    out["tuning"] = tuning_json(link, answer.computed);
    out["places"] = places_json(answer.computed);
    out["path"] = path_json(link, answer.computed);
    out["noise"] = noise_json(link, answer.computed);
    out["fading"] = fading_json(link, answer.computed);
    out["limits"] = Json::array();
    for (std::size_t i = 0; i < link.limits.size(); ++i)
        out["limits"].push_back(limit_json(link.limits[i], answer.computed.limits[i]));
    out["exposure"] = exposure_json(answer);
    out["failures"] = further_failures(answer);
    out["notes"] = notes_json(budget.notes);
    if (near_distance_missing(budget)) out["notes"].push_back("near distance not given");
    return out;
}

} // namespace

std::string budget_json(const Scenario &scenario, const std::string &file, const std::vector<Answer> &answers,
                        const std::vector<Pair> &pairs) {
    Json out;
    out["version"] = lvb_version_text();
    out["scenario"] = file;
    out["production"] = scenario.production;
    out["note"] = text_or_null(scenario.note);
    out["links"] = Json::array();
    for (const Answer &answer : answers) out["links"].push_back(link_json(answer));
    out["side_by_side"] = Json::array();
    for (const Pair &pair : pairs) out["side_by_side"].push_back(pair_json(pair));
    Links links;
    for (const Answer &answer : answers) links.push_back(answer.link);
    out["cautions"] = cautions(links);
    return out.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace desk
