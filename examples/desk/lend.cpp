#include "lend.hpp"

#include <algorithm>

namespace desk {
namespace {

// A table as the library borrows it: its size, its rows and its two columns, whatever it is called.
template <class Lent>
Lent lend_table(const Table &table) {
    return {sizeof(Lent), static_cast<std::uint32_t>(table.values.size()), table.points.data(), table.values.data()};
}

} // namespace

lvb_cable_table lend_cable_table(const Table &table) { return lend_table<lvb_cable_table>(table); }

lvb_stage judged_receiver(const Link &link) {
    lvb_stage receiver = link.stages.back().entry;
    const bool has_floor = (receiver.stated & LVB_STATED_FLOOR) != 0;
    if (!has_floor || !link.needed_dbm || !(*link.needed_dbm > receiver.floor_dbm)) return receiver;
    constexpr double highest_dbm = 150.0; // that a window may have
    const bool has_ceiling = (receiver.stated & LVB_STATED_CEILING) != 0;
    receiver.floor_dbm = std::min(*link.needed_dbm, has_ceiling ? receiver.ceiling_dbm : highest_dbm);
    if ((receiver.stated & LVB_STATED_WANTED) == 0) return receiver;
    receiver.wanted_low_dbm = std::max(receiver.wanted_low_dbm, receiver.floor_dbm);
    receiver.wanted_high_dbm = std::max(receiver.wanted_high_dbm, receiver.floor_dbm);
    return receiver;
}

// Room for every part of every stage before the first pointer to one is taken.
Lent::Lent(const Link &link)
    : stages_(link.stages.size()), gains_(link.stages.size()), cables_(link.stages.size()), bodies_(link.stages.size()),
      patterns_(link.stages.size()), azimuth_cuts_(link.stages.size()), elevation_cuts_(link.stages.size()),
      paths_(link.stages.size()) {
    for (std::size_t i = 0; i < stages_.size(); ++i) lend(link.stages[i], i);
    if (link.needed_dbm) {
        const lvb_stage judged = judged_receiver(link);
        stages_.back().floor_dbm = judged.floor_dbm;
        stages_.back().wanted_low_dbm = judged.wanted_low_dbm;
        stages_.back().wanted_high_dbm = judged.wanted_high_dbm;
    }
    link_.size = sizeof link_;
    link_.stages = stages_.data();
    link_.stage_count = static_cast<std::uint32_t>(stages_.size());
    link_.stage_size = sizeof(lvb_stage);
    link_.frequency_mhz = link.frequency_mhz;
    link_.far_distance_m = link.far_distance_m;
    link_.near_distance_m = link.near_distance_m;
    if (link.temperature_degc) {
        link_.stated = LVB_STATED_TEMPERATURE;
        link_.temperature_degc = *link.temperature_degc;
    }
}

void Lent::lend(const Stage &stage, std::size_t index) {
    lvb_stage &lent = stages_[index];
    lent = stage.entry;
    if (stage.gain_table) lent.gain_table = &(gains_[index] = lend_table<lvb_gain_table>(*stage.gain_table));
    if (stage.cable_table) lent.cable_table = &(cables_[index] = lend_cable_table(*stage.cable_table));
    if (stage.body_table) lent.body_table = &(bodies_[index] = lend_table<lvb_body_table>(*stage.body_table));
    if (stage.pattern) {
        lvb_pattern &pattern = patterns_[index] = stage.pattern->entry;
        if (stage.pattern->azimuth_cut)
            pattern.azimuth_cut = &(azimuth_cuts_[index] = lend_table<lvb_azimuth_cut>(*stage.pattern->azimuth_cut));
        if (stage.pattern->elevation_cut)
            pattern.elevation_cut =
                &(elevation_cuts_[index] = lend_table<lvb_elevation_cut>(*stage.pattern->elevation_cut));
        lent.pattern = &pattern;
    }
    if (stage.path) {
        lvb_path &path = paths_[index] = stage.path->entry;
        if (!stage.path->edges.empty()) {
            path.edges = stage.path->edges.data();
            path.edge_count = static_cast<std::uint32_t>(stage.path->edges.size());
            path.edge_size = sizeof(lvb_edge);
        }
        lent.path = &path;
    }
    // Where no near distance is given, the near end is the far one, and so are its directions.
    const bool near_given = stage.numbers.contains(LVB_FIELD_NEAR_AZIMUTH_DEG);
    if (stage.pattern && !near_given) {
        lent.near_azimuth_deg = lent.far_azimuth_deg;
        if (!stage.numbers.contains(LVB_FIELD_NEAR_ELEVATION_DEG)) lent.near_elevation_deg = lent.far_elevation_deg;
    }
}

void Lent::take(const Link &link, const Sights &sights) {
    link_.far_distance_m = sights.far.distance_m;
    link_.near_distance_m = sights.near_given ? sights.near.distance_m : 0.0;
    lvb_stage &transmit = stages_[static_cast<std::size_t>(link.antenna(0))];
    lvb_stage &receive = stages_[static_cast<std::size_t>(link.antenna(1))];
    if (transmit.pattern != nullptr) {
        transmit.far_azimuth_deg = sights.far.transmit_azimuth_deg;
        transmit.far_elevation_deg = sights.far.transmit_elevation_deg;
        transmit.near_azimuth_deg = sights.near.transmit_azimuth_deg;
        transmit.near_elevation_deg = sights.near.transmit_elevation_deg;
    }
    if (receive.pattern != nullptr) {
        receive.far_azimuth_deg = sights.far.receive_azimuth_deg;
        receive.far_elevation_deg = sights.far.receive_elevation_deg;
        receive.near_azimuth_deg = sights.near.receive_azimuth_deg;
        receive.near_elevation_deg = sights.near.receive_elevation_deg;
    }
}

} // namespace desk
