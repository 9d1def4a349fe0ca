// Chains for tests, in one line per stage.
#pragma once

#include <levelbook/levelbook.h>

#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

namespace proof {

inline lvb_stage stage(std::int32_t kind, double gain_db = 0.0, double tolerance_db = 0.0,
                       std::int32_t basis = LVB_BASIS_NOT_LOOKED_UP) {
    lvb_stage made{};
    made.kind = kind;
    made.gain_db = gain_db;
    made.tolerance_db = tolerance_db;
    made.basis = basis;
    return made;
}
inline lvb_stage source(double level_dbm, double tolerance_db = 0.0) {
    lvb_stage made = stage(LVB_KIND_SOURCE, 0.0, tolerance_db);
    made.level_dbm = level_dbm;
    return made;
}
inline lvb_stage cable(std::int32_t type, double length_m, std::uint32_t connectors = 0) {
    lvb_stage made = stage(LVB_KIND_CABLE);
    made.cable_type = type;
    made.length_m = length_m;
    made.connector_count = connectors;
    return made;
}
inline lvb_stage air() { return stage(LVB_KIND_AIR); }
inline lvb_stage antenna(double gain_dbi = 0.0) { return stage(LVB_KIND_ANTENNA, gain_dbi); }
inline lvb_stage receiver() { return stage(LVB_KIND_RECEIVER); }
inline lvb_stage receiver(double floor_dbm, double ceiling_dbm) {
    lvb_stage made = receiver();
    made.stated = LVB_STATED_FLOOR | LVB_STATED_CEILING;
    made.floor_dbm = floor_dbm;
    made.ceiling_dbm = ceiling_dbm;
    return made;
}
inline lvb_stage receiver(double floor_dbm, double low_dbm, double high_dbm, double ceiling_dbm) {
    lvb_stage made = receiver(floor_dbm, ceiling_dbm);
    made.stated |= LVB_STATED_WANTED;
    made.wanted_low_dbm = low_dbm;
    made.wanted_high_dbm = high_dbm;
    return made;
}

/// A receiver or an amplifier with its noise figure.
inline lvb_stage &with_noise(lvb_stage &stage, double noise_figure_db) {
    stage.stated |= LVB_STATED_NOISE_FIGURE;
    stage.noise_figure_db = noise_figure_db;
    return stage;
}

template <class Struct>
Struct sized() {
    Struct made{};
    made.size = sizeof(Struct);
    return made;
}

/// A link with its stages and everything that a call needs.
struct Chain {
    std::vector<lvb_stage> stages;
    lvb_link link = sized<lvb_link>();
    lvb_budget budget = sized<lvb_budget>();
    lvb_fault fault = sized<lvb_fault>();
    std::vector<lvb_level> levels;

    /// Over 40 m, where there is air or the stages come later; a link without air has no distances.
    explicit Chain(std::vector<lvb_stage> given, double frequency_mhz = 600.0)
        : Chain(std::move(given), frequency_mhz, 0.0) {
        if (stages.empty() || has_air()) link.far_distance_m = 40.0;
    }
    Chain(std::vector<lvb_stage> given, double frequency_mhz, double far_m, double near_m = 0.0)
        : stages(std::move(given)) {
        link.stage_size = sizeof(lvb_stage);
        link.frequency_mhz = frequency_mhz;
        link.far_distance_m = far_m;
        link.near_distance_m = near_m;
    }
    bool has_air() const {
        return std::any_of(stages.begin(), stages.end(), [](const lvb_stage &in) { return in.kind == LVB_KIND_AIR; });
    }
    lvb_status compute() {
        link.stages = stages.data();
        link.stage_count = static_cast<std::uint32_t>(stages.size());
        levels.assign(stages.size(), lvb_level{});
        return lvb_compute_budget(&link, &budget, levels.data(), sizeof(lvb_level), &fault);
    }
};

/// The ordinary chain: outbound, with two antennas and air.
inline std::vector<lvb_stage> ordinary(lvb_stage end = receiver(-90.0, -20.0)) {
    return {source(15.0),
            stage(LVB_KIND_PASSIVE, -3.5),
            cable(LVB_CABLE_RG_213_U, 15.0),
            antenna(6.0),
            air(),
            stage(LVB_KIND_ALLOWANCE, -28.0),
            antenna(),
            end};
}

} // namespace proof
