// Stages of every kind for the targets that take chains: mostly right, now and then not.
#pragma once

#include "fuzz/paths.hpp"
#include "fuzz/patterns.hpp"
#include "fuzz/tables.hpp"

#include <utility>

namespace fuzz {

// The span that gain_db has for a kind, as lvb_describe_field tells it; a span of any kind where it tells none.
inline lvb_range gain_range(std::int32_t kind) {
    lvb_range range{};
    range.size = sizeof range;
    if (lvb_describe_field(LVB_STRUCT_STAGE, kind, LVB_FIELD_GAIN_DB, &range, nullptr) != LVB_OK) {
        range.minimum = -300.0;
        range.maximum = 300.0;
    }
    return range;
}

/// What stages borrow, kept as long as they are used.
struct Lenders {
    Tables tables;
    Patterns patterns;
    Paths paths;
};

// An antenna gets a pattern in place of its gain, an allowance a body.
inline void lend(Bytes &bytes, lvb_stage &stage, Patterns &patterns) {
    if (stage.kind == LVB_KIND_ANTENNA) {
        stage.pattern = patterns.pattern(bytes);
        stage.far_azimuth_deg = bytes.number(-360.0, 360.0);
        stage.far_elevation_deg = bytes.number(-90.0, 90.0);
        stage.near_azimuth_deg = bytes.number(-360.0, 360.0);
        stage.near_elevation_deg = bytes.number(-90.0, 90.0);
    } else {
        stage.body_table = patterns.body(bytes);
        stage.facing_deg = bytes.number(-360.0, 360.0);
    }
    if (bytes.once_in(24)) return; // with its gain too
    stage.gain_db = 0.0;
    stage.gain_table = nullptr;
}

inline lvb_stage make_stage(Bytes &bytes, std::int32_t kind, Lenders &lenders) {
    const lvb_range gain = gain_range(kind);
    lvb_stage stage{};
    stage.kind = kind;
    stage.basis = static_cast<std::int32_t>(bytes.below(6));
    stage.tolerance_db = bytes.once_in(3) ? bytes.number(0.0, 100.0) : 0.0;
    const bool table = bytes.once_in(6);
    if (table) stage.gain_table = lenders.tables.gain(bytes, gain.minimum, gain.maximum);
    else if (kind != LVB_KIND_CABLE) stage.gain_db = bytes.number(gain.minimum, gain.maximum);
    switch (kind) {
    case LVB_KIND_SOURCE:
        stage.level_dbm = bytes.number(-200.0, 150.0);
        break;
    case LVB_KIND_CABLE:
        if (table || bytes.once_in(3)) {
            if (!table) stage.gain_db = bytes.number(-200.0, 0.0);
            break;
        }
        if (bytes.once_in(2)) stage.cable_table = lenders.tables.cable(bytes);
        else stage.cable_type = static_cast<std::int32_t>(bytes.below(lvb_cable_type_count() + 1));
        stage.length_m = bytes.number(0.001, 10000.0);
        stage.connector_count = bytes.below(8);
        if (stage.connector_count > 0 && bytes.once_in(2)) stage.connector_loss_db = bytes.number(0.0, 10.0);
        break;
    case LVB_KIND_RECEIVER: {
        stage.stated = (LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING) & bytes.byte();
        double limit = bytes.between(-250.0, 0.0);
        for (const auto &[bit, member] : {std::pair{LVB_STATED_FLOOR, &lvb_stage::floor_dbm},
                                          std::pair{LVB_STATED_WANTED, &lvb_stage::wanted_low_dbm},
                                          std::pair{LVB_STATED_WANTED, &lvb_stage::wanted_high_dbm},
                                          std::pair{LVB_STATED_CEILING, &lvb_stage::ceiling_dbm}}) {
            limit += bytes.between(0.0, 40.0);
            if ((stage.stated & static_cast<std::uint32_t>(bit)) != 0) stage.*member = limit;
        }
        break;
    }
    default:
        break;
    }
    if (kind == LVB_KIND_ANTENNA || kind == LVB_KIND_ALLOWANCE ? bytes.once_in(3) : bytes.once_in(128))
        lend(bytes, stage, lenders.patterns);
    // now and then another way than free space
    if (kind == LVB_KIND_AIR ? bytes.once_in(2) : bytes.once_in(200)) stage.path = lenders.paths.make(bytes);
    return stage;
}

// One field of a stage gets what does not belong there.
inline void spoil(Bytes &bytes, lvb_stage &stage, Lenders &lenders) {
    double lvb_stage::*const numbers[] = {
        &lvb_stage::level_dbm,         &lvb_stage::gain_db,         &lvb_stage::tolerance_db,
        &lvb_stage::length_m,          &lvb_stage::floor_dbm,       &lvb_stage::wanted_low_dbm,
        &lvb_stage::connector_loss_db, &lvb_stage::wanted_high_dbm, &lvb_stage::ceiling_dbm};
    const std::uint32_t which = bytes.below(17);
    if (which < 9) stage.*numbers[which] = bytes.any_number();
    else if (which == 9) stage.kind = bytes.raw<std::int32_t>();
    else if (which == 10) stage.basis = bytes.raw<std::int32_t>();
    else if (which == 11) stage.stated = bytes.raw<std::uint32_t>();
    else if (which == 12) stage.cable_type = bytes.raw<std::int32_t>();
    else if (which == 13) stage.connector_count = bytes.raw<std::uint32_t>();
    else if (which == 14) stage.reserved = bytes.raw<std::uint32_t>();
    else if (which == 15) stage.cable_table = lenders.tables.cable(bytes);
    else stage.gain_table = lenders.tables.gain(bytes, -60.0, 60.0);
    // never read, so it may point anywhere
    stage.label = reinterpret_cast<const char *>(std::uintptr_t{bytes.byte()});
    stage.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()});
}

// A link without its stages: frequency, distances, temperature.
inline lvb_link make_link(Bytes &bytes) {
    lvb_link link{};
    link.size = bytes.size_of(sizeof link);
    link.frequency_mhz = bytes.number(30.0, 3000.0);
    link.far_distance_m = bytes.number(0.01, 1000.0);
    if (bytes.once_in(2)) link.near_distance_m = bytes.number(0.01, 10.0);
    if (bytes.once_in(3)) {
        link.stated = LVB_STATED_TEMPERATURE;
        link.temperature_degc = bytes.number(-100.0, 200.0);
    }
    return link;
}

// Kinds in an order that is mostly right.
inline std::vector<std::int32_t> make_kinds(Bytes &bytes) {
    std::vector<std::int32_t> kinds = {LVB_KIND_SOURCE};
    const std::int32_t conducted[] = {LVB_KIND_PASSIVE, LVB_KIND_CABLE, LVB_KIND_AMPLIFIER, LVB_KIND_ALLOWANCE};
    for (std::uint32_t n = bytes.below(6); n > 0; --n) kinds.push_back(conducted[bytes.below(4)]);
    if (!bytes.once_in(4)) {
        kinds.push_back(LVB_KIND_ANTENNA);
        for (std::uint32_t n = bytes.below(2); n > 0; --n) kinds.push_back(LVB_KIND_ALLOWANCE);
        if (!bytes.once_in(8)) {
            kinds.push_back(LVB_KIND_AIR);
            for (std::uint32_t n = bytes.below(3); n > 0; --n) kinds.push_back(LVB_KIND_ALLOWANCE);
            kinds.push_back(LVB_KIND_ANTENNA);
            for (std::uint32_t n = bytes.below(4); n > 0; --n) kinds.push_back(conducted[bytes.below(4)]);
        }
    }
    if (!bytes.once_in(4)) kinds.push_back(LVB_KIND_RECEIVER);
    if (bytes.once_in(4))
        kinds[bytes.below(static_cast<std::uint32_t>(kinds.size()))] = 1 + static_cast<std::int32_t>(bytes.below(8));
    return kinds;
}

} // namespace fuzz
