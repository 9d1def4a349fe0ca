#include "compute.hpp"

#include "faults.hpp"
#include "tuning.hpp"

#include <cmath>

namespace desk {
namespace {

// One end of the walk, as the two antennas see each other.
lvb_pointing look(const Document &document, const Link &link, const Lent &lent, const Place &transmit_place,
                  const Place &receive_place) {
    const auto transmit_at = static_cast<std::size_t>(link.antenna(0));
    const auto receive_at = static_cast<std::size_t>(link.antenna(1));
    lvb_antenna transmit = transmit_place.entry;
    transmit.pattern = lent.stage(transmit_at).pattern;
    lvb_antenna receive = receive_place.entry;
    receive.pattern = lent.stage(receive_at).pattern;
    lvb_pointing pointing{};
    pointing.size = sizeof pointing;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_pointing(&transmit, &receive, link.frequency_mhz, &pointing, &fault) == LVB_OK) return pointing;
    // The fault names an antenna; the scenario has it as a stage, or in one of its places.
    const bool receiving = fault.stage == LVB_STAGE_RECEIVE;
    if (fault.structure == LVB_STRUCT_ANTENNA) {
        const Place &place = receiving ? receive_place : transmit_place;
        const auto given = place.numbers.find(fault.field);
        if (given != place.numbers.end())
            document.refuse(*given->second.value, plain(given->second.value->number) + " is out of range; allowed " +
                                                      plain(given->second.key->from_library(fault.minimum)) + " to " +
                                                      plain(given->second.key->from_library(fault.maximum)));
    }
    if (fault.field == LVB_FIELD_DISTANCE_M)
        document.refuse(*receive_place.value, "this is " + plain(fault.value) +
                                                  " m from the other antenna; they must be " + plain(fault.minimum) +
                                                  " m apart or more");
    if (fault.structure == LVB_STRUCT_NONE) fault.structure = LVB_STRUCT_LINK; // the link's frequency
    else fault.stage = static_cast<std::int32_t>(receiving ? receive_at : transmit_at);
    refuse_fault(document, link, fault);
}

Sights sights_of(const Document &document, const Link &link, const Lent &lent) {
    const Stage &transmit = link.stages[static_cast<std::size_t>(link.antenna(0))];
    const Stage &receive = link.stages[static_cast<std::size_t>(link.antenna(1))];
    const auto far_place = [](const Stage &stage) -> const Place & {
        return stage.place ? *stage.place : *stage.far_place;
    };
    const auto near_place = [&](const Stage &stage) -> const Place & {
        return stage.near_place ? *stage.near_place : far_place(stage);
    };
    Sights sights;
    sights.far = look(document, link, lent, far_place(transmit), far_place(receive));
    sights.near = look(document, link, lent, near_place(transmit), near_place(receive));
    sights.near_given = transmit.near_place || receive.near_place;
    if (sights.near.distance_m > sights.far.distance_m) {
        const Place &place = receive.near_place ? *receive.near_place : *transmit.near_place;
        document.refuse(*place.value, "this is " + plain(sights.near.distance_m) +
                                          " m from the other antenna, farther than the far place with " +
                                          plain(sights.far.distance_m) + " m");
    }
    return sights;
}

std::vector<std::optional<PatternGains>> pattern_gains(const Link &link, const Lent &lent) {
    std::vector<std::optional<PatternGains>> all(link.stages.size());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const lvb_stage &stage = lent.stage(i);
        if (stage.pattern == nullptr) continue;
        PatternGains gains;
        gains.far_azimuth_deg = stage.far_azimuth_deg;
        gains.far_elevation_deg = stage.far_elevation_deg;
        gains.near_azimuth_deg = stage.near_azimuth_deg;
        gains.near_elevation_deg = stage.near_elevation_deg;
        gains.far.size = gains.near.size = sizeof gains.far;
        lvb_compute_pattern_gain(stage.pattern, stage.far_azimuth_deg, stage.far_elevation_deg, &gains.far, nullptr);
        lvb_compute_pattern_gain(stage.pattern, stage.near_azimuth_deg, stage.near_elevation_deg, &gains.near, nullptr);
        all[i] = gains;
    }
    return all;
}

std::optional<PathLosses> path_losses(const Link &link, const Lent &lent, const lvb_budget &budget) {
    for (std::size_t i = 0; i < link.stages.size(); ++i) {
        const lvb_path *path = lent.stage(i).path;
        if (path == nullptr) continue;
        PathLosses losses;
        losses.far.size = losses.near.size = sizeof losses.far;
        lvb_compute_path_loss(path, link.frequency_mhz, budget.far_end.distance_m, &losses.far, nullptr);
        lvb_compute_path_loss(path, link.frequency_mhz, budget.near_end.distance_m, &losses.near, nullptr);
        return losses;
    }
    return std::nullopt;
}

NoiseBook noise_book(const Document &document, const Link &link, const Lent &lent) {
    NoiseBook book;
    book.noise.size = sizeof book.noise;
    book.lines.resize(link.stages.size());
    auto fault = sized<lvb_fault>();
    if (lvb_compute_noise(&lent.link(), &link.noise->entry, &book.noise, book.lines.data(), sizeof(lvb_noise_line),
                          &fault) != LVB_OK)
        refuse_fault(document, link, fault);
    return book;
}

// Of one branch.
double outage_of(const Fading &fading, double margin_db) {
    switch (fading.model) {
    case Fading::Model::rice:
        return lvb_rice_outage_below_mean(margin_db, fading.parameter);
    case Fading::Model::nakagami:
        return lvb_nakagami_outage_below_mean(margin_db, fading.parameter);
    case Fading::Model::log_normal:
        return lvb_lognormal_outage_below_median(margin_db, fading.parameter);
    case Fading::Model::suzuki:
        return lvb_suzuki_outage_below_median_of_means(margin_db, fading.parameter);
    default:
        return lvb_rayleigh_outage_below_mean(margin_db);
    }
}

double margin_for(const Fading &fading, double outage) {
    switch (fading.model) {
    case Fading::Model::rice:
        return lvb_rice_margin_below_mean_db(outage, fading.parameter);
    case Fading::Model::nakagami:
        return lvb_nakagami_margin_below_mean_db(outage, fading.parameter);
    case Fading::Model::log_normal:
        return lvb_lognormal_margin_below_median_db(outage, fading.parameter);
    case Fading::Model::suzuki:
        return lvb_suzuki_margin_below_median_of_means_db(outage, fading.parameter);
    default:
        return lvb_rayleigh_margin_below_mean_db(outage);
    }
}

Fade fade_of(const Document &document, const Fading &fading, const lvb_budget &budget) {
    Fade fade;
    fade.margin_db = budget.far_end.margin_db;
    if (std::isnan(fade.margin_db))
        document.refuse(*fading.value, "fading asks how often the level falls below the floor; no floor_dbm is given");
    fade.outage = lvb_selection_outage(outage_of(fading, fade.margin_db), fading.branches);
    // The best of several branches fails only where all do: each may fail more often.
    fade.needed_db = margin_for(fading, std::pow(fading.outage, 1.0 / fading.branches));
    return fade;
}

lvb_limit_result check(const Document &document, const Link &link, const Lent &lent, const Limit &limit) {
    lvb_limit_result result{};
    result.size = sizeof result;
    auto fault = sized<lvb_fault>();
    if (lvb_check_limit(&lent.link(), &limit.entry, &result, &fault) == LVB_OK) return result;
    if (fault.status == LVB_E_NO_TRANSMIT_ANTENNA)
        document.refuse(*limit.value, "this limits " + std::string(lvb_quantity_name(limit.entry.quantity)) +
                                          ", but the link has no antenna; in link " + in_quotes(link.name));
    if (fault.structure == LVB_STRUCT_LIMIT) {
        const auto given = limit.numbers.find(fault.field);
        if (given != limit.numbers.end() && fault.status == LVB_E_ORDER)
            document.refuse(*given->second.value, plain(given->second.value->number) + " lies below lowest_mhz " +
                                                      plain(limit.entry.lowest_mhz));
        if (given != limit.numbers.end())
            document.refuse(*given->second.value, plain(given->second.value->number) + " is out of range; allowed " +
                                                      plain(given->second.key->from_library(fault.minimum)) + " to " +
                                                      plain(given->second.key->from_library(fault.maximum)));
    }
    refuse_fault(document, link, fault);
}

// Only for a link with an exposure.
KeepAway keep_away(const Document &document, const Link &link, const Computed &computed) {
    const Exposure &exposure = *link.exposure;
    KeepAway result;
    if (std::isnan(computed.budget.eirp_dbm))
        document.refuse(*exposure.value, "this link has no antenna, so nobody is exposed to it");
    result.limit_w_per_m2 = exposure.rule == 0
                                ? exposure.limit_w_per_m2
                                : lvb_exposure_limit_w_per_m2(exposure.rule, exposure.audience, link.frequency_mhz);
    if (std::isnan(result.limit_w_per_m2))
        document.refuse(*exposure.value->find("rule"),
                        "this rule says nothing of the link's " + plain(link.frequency_mhz) + " MHz");
    result.eirp_dbm = computed.budget.eirp_dbm + computed.budget.eirp_worst_db +
                      lvb_db_from_power_ratio(static_cast<double>(exposure.transmitters));
    result.distance_m = lvb_exposure_distance_m(result.eirp_dbm, result.limit_w_per_m2, exposure.reflection_factor);
    result.keep_distance_m = std::fmax(result.distance_m, lvb_wavelength_m_from_mhz(link.frequency_mhz));
    return result;
}

} // namespace

bool is_computed_cable(const Stage &stage) {
    return stage.entry.kind == LVB_KIND_CABLE &&
           (stage.entry.cable_type != LVB_CABLE_NONE || stage.cable_table != nullptr);
}

Computed compute(const Document &document, const Link &link) {
    Lent lent(link);
    Computed computed;
    if (link.placed()) lent.take(link, *(computed.sights = sights_of(document, link, lent)));
    computed.budget.size = sizeof(lvb_budget);
    computed.levels.resize(link.stages.size());
    auto fault = sized<lvb_fault>();
    const lvb_status status =
        lvb_compute_budget(&lent.link(), &computed.budget, computed.levels.data(), sizeof(lvb_level), &fault);
    if (status != LVB_OK) refuse_fault(document, link, fault);
    computed.patterns = pattern_gains(link, lent);
    computed.path = path_losses(link, lent, computed.budget);
    if (link.noise) computed.noise = noise_book(document, link, lent);
    if (link.fading) computed.fade = fade_of(document, *link.fading, computed.budget);
    for (const Limit &limit : link.limits) computed.limits.push_back(check(document, link, lent, limit));
    if (link.tuning) computed.tuned = tune(document, link, lent);
    return computed;
}

namespace {

std::unique_ptr<Lent> lend_as_placed(const Document &document, const Link &link) {
    auto lent = std::make_unique<Lent>(link);
    if (link.placed()) lent->take(link, sights_of(document, link, *lent));
    return lent;
}

} // namespace

std::optional<double> needed_level(const Document &document, const Link &link) {
    if (!link.noise || link.stages.empty() || (link.stages.back().entry.stated & LVB_STATED_FLOOR) == 0) return {};
    if ((link.noise->entry.stated & LVB_STATED_CARRIER_TO_NOISE) == 0) return {};
    const std::unique_ptr<Lent> lent = lend_as_placed(document, link);
    const lvb_noise noise = noise_book(document, link, *lent).noise;
    if (std::isnan(noise.receiver_noise_dbm)) return {};
    // The noise stands at the receiver's input, its window behind its gain.
    return lvb_power_sum_dbm(noise.receiver_noise_dbm, noise.receiver_interference_dbm) +
           link.noise->entry.carrier_to_noise_db + link.stages.back().entry.gain_db;
}

Scenario open_scenario(const Document &document) {
    Scenario scenario = read_scenario(document);
    for (Link &link : scenario.links) {
        try {
            link.needed_dbm = needed_level(document, link);
        } catch (const Refusal &) { // compute and lend refuse it again
            link.needed_dbm.reset();
        }
    }
    return scenario;
}

std::unique_ptr<Lent> lend(const Document &document, const Link &link) {
    if (!link.needed_dbm) needed_level(document, link); // refuses what open_scenario let pass
    return lend_as_placed(document, link);
}

Answer answer_link(const Document &document, const Link &link) {
    Answer answer{&link, compute(document, link), std::nullopt};
    if (link.exposure) answer.keep_away = keep_away(document, link, answer.computed);
    return answer;
}

Coexistence compute(const Document &document, const Neighbours &pair, const Answer &transmitter,
                    const Answer &receiver) {
    const auto missing = [&](const char *key, const char *why) { document.refuse(*pair.value->find(key), why); };
    const std::int32_t transmit_antenna = transmitter.link->antenna(0);
    const std::int32_t receive_antenna = receiver.link->antenna(1);
    if (transmit_antenna < 1) missing("transmitter", "this link has no transmit antenna");
    if (receive_antenna < 0) missing("receiver", "this link has no receive antenna");
    Coexistence out;
    lvb_neighbours &entry = out.neighbours = pair.entry;
    const auto level = [](const Answer &answer, std::int32_t stage) {
        return answer.computed.levels[static_cast<std::size_t>(stage)].near_level_dbm;
    };
    entry.transmit_dbm = level(transmitter, transmit_antenna - 1);
    if (pair.numbers.contains(LVB_FIELD_SEPARATION_M)) {
        entry.transmit_mhz = transmitter.link->frequency_mhz;
        entry.receive_mhz = receiver.link->frequency_mhz;
    }
    // From the antenna's terminal to the receiver. A chain that gains has its blocking level at the amplifier instead.
    double gain = 0.0;
    for (std::size_t i = static_cast<std::size_t>(receive_antenna) + 1; i < receiver.link->stages.size(); ++i)
        gain += receiver.computed.levels[i].near_change_db;
    if (gain > 0.0)
        missing("receiver", "this link's receive side gains level, so an amplifier is blocked before the receiver; "
                            "give a receiver whose chain loses");
    entry.receive_loss_db = 0.0 - gain;
    if (receiver.computed.noise && entry.transmit_noise_dbc_per_hz != 0.0)
        entry.receiver_bandwidth_mhz = receiver.link->noise->entry.bandwidth_mhz;
    const bool noise = entry.transmit_noise_dbc_per_hz != 0.0 || (entry.stated & LVB_STATED_TRANSMIT_NOISE) != 0;
    if (noise) {
        if (!receiver.computed.noise)
            missing("receiver", "this link says nothing of its noise, which the transmitter's is compared with");
        const double floor = receiver.computed.noise->noise.receiver_noise_dbm;
        if (std::isnan(floor)) missing("receiver", "this link's noise floor is not known: a noise figure is missing");
        entry.receiver_noise_dbm = floor;
        entry.stated |= LVB_STATED_RECEIVER_NOISE;
    }
    out.result.size = sizeof out.result;
    auto fault = sized<lvb_fault>();
    if (lvb_compute_coexistence(&entry, &out.result, &fault) != LVB_OK) refuse_fault(document, pair, fault);
    return out;
}

lvb_cable_loss cable_loss(double frequency_mhz, std::optional<double> temperature_degc, const Stage &stage) {
    lvb_cable_run run{};
    run.size = sizeof run;
    run.cable_type = stage.entry.cable_type;
    run.frequency_mhz = frequency_mhz;
    run.length_m = stage.entry.length_m;
    run.connector_count = stage.entry.connector_count;
    run.connector_loss_db = stage.entry.connector_loss_db;
    if (temperature_degc) {
        run.stated = LVB_STATED_TEMPERATURE;
        run.temperature_degc = *temperature_degc;
    }
    lvb_cable_table table{};
    if (stage.cable_table) table = lend_cable_table(*stage.cable_table);
    lvb_cable_loss loss{};
    loss.size = sizeof loss;
    lvb_compute_cable_loss(&run, stage.cable_table ? &table : nullptr, &loss, nullptr);
    return loss;
}

} // namespace desk
