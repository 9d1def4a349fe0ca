// Patterns and body tables that a host may lend, well made or not; their memory is exactly as long as they say.
#pragma once

#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"

#include <deque>

namespace fuzz {

/// Owns what antennas and allowances point to for the time of one call.
class Patterns {
  public:
    const lvb_pattern *pattern(Bytes &bytes) {
        lvb_pattern made{};
        made.size = bytes.size_of(sizeof made);
        made.kind = bytes.once_in(24) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(5));
        switch (made.kind) {
        case LVB_PATTERN_COSINE:
            if (bytes.once_in(2)) made.beam_width_deg = bytes.number(0.1, 180.0);
            if (made.beam_width_deg == 0.0 || bytes.once_in(2)) made.gain_dbi = bytes.number(3.010299956639812, 60.0);
            break;
        case LVB_PATTERN_CUTS:
            made.gain_dbi = bytes.number(-60.0, 60.0);
            if (!bytes.once_in(3)) made.azimuth_cut = azimuth_cut(bytes);
            if (!bytes.once_in(3)) made.elevation_cut = elevation_cut(bytes);
            break;
        case LVB_PATTERN_HELIX:
            made.turns = bytes.between(3.0, 100.0);
            made.spacing_wavelengths = bytes.number(0.1, 0.5);
            made.circumference_wavelengths = bytes.between(0.75, 1.33);
            break;
        default:
            break;
        }
        if (made.kind >= LVB_PATTERN_COSINE && bytes.once_in(2)) made.front_to_back_db = bytes.number(0.1, 200.0);
        if (bytes.once_in(24)) spoil(bytes, made);
        return keep(bytes, made);
    }
    const lvb_body_table *body(Bytes &bytes) {
        const Rows rows = circle(bytes, 0.0, 200.0);
        lvb_body_table made{};
        fill(bytes, made, rows, made.facing_deg, made.loss_db);
        return keep(bytes, made);
    }

  private:
    struct Rows {
        std::vector<double> angles, values;
    };
    static void add(Bytes &bytes, Rows &rows, bool wild, double angle, double low, double high) {
        rows.angles.push_back(wild && bytes.once_in(4) ? bytes.any_number() : angle);
        double from = low, to = high;
        if (!wild && !rows.values.empty()) {
            const double last = rows.values[0]; // near the first, so that the seam is no step
            from = last - 50.0 < low ? low : last - 50.0;
            to = last + 50.0 > high ? high : last + 50.0;
        }
        rows.values.push_back(wild && bytes.once_in(4) ? bytes.any_number() : bytes.between(from, to));
    }
    static Rows circle(Bytes &bytes, double low, double high) {
        const bool wild = bytes.once_in(6);
        Rows rows;
        double angle = bytes.between(-180.0, 0.0);
        for (std::uint32_t n = bytes.below(12); n > 0; --n) {
            add(bytes, rows, wild, angle, low, high);
            angle += bytes.between(wild ? 0.0 : 0.001, 30.0);
        }
        return rows;
    }
    const lvb_azimuth_cut *azimuth_cut(Bytes &bytes) {
        const Rows rows = circle(bytes, -200.0, 60.0);
        lvb_azimuth_cut made{};
        fill(bytes, made, rows, made.azimuth_deg, made.gain_db);
        return keep(bytes, made);
    }
    const lvb_elevation_cut *elevation_cut(Bytes &bytes) {
        const bool wild = bytes.once_in(6);
        Rows rows;
        add(bytes, rows, wild, -90.0, -200.0, 60.0);
        double angle = -90.0;
        for (std::uint32_t n = bytes.below(8); n > 0; --n) {
            angle += bytes.between(wild ? 0.0 : 0.001, 20.0);
            add(bytes, rows, wild, angle, -200.0, 60.0);
        }
        add(bytes, rows, wild, 90.0, -200.0, 60.0);
        lvb_elevation_cut made{};
        fill(bytes, made, rows, made.elevation_deg, made.gain_db);
        return keep(bytes, made);
    }
    // One field gets what does not belong there.
    void spoil(Bytes &bytes, lvb_pattern &made) {
        double lvb_pattern::*const numbers[] = {
            &lvb_pattern::gain_dbi, &lvb_pattern::beam_width_deg,      &lvb_pattern::front_to_back_db,
            &lvb_pattern::turns,    &lvb_pattern::spacing_wavelengths, &lvb_pattern::circumference_wavelengths};
        const std::uint32_t which = bytes.below(8);
        if (which < 6) made.*numbers[which] = bytes.any_number();
        else if (which == 6) made.azimuth_cut = azimuth_cut(bytes);
        else made.elevation_cut = elevation_cut(bytes);
    }
    const double *lend(const std::vector<double> &values) {
        columns_.emplace_back(values.size() * sizeof(double));
        for (std::size_t i = 0; i < values.size(); ++i) columns_.back().put(values[i], i * sizeof(double));
        return columns_.back().as<double>();
    }
    template <class Table>
    void fill(Bytes &bytes, Table &table, const Rows &rows, const double *&angles, const double *&values) {
        table.size = bytes.size_of(sizeof table);
        table.row_count = static_cast<std::uint32_t>(rows.angles.size());
        angles = bytes.once_in(64) ? nullptr : lend(rows.angles);
        values = bytes.once_in(64) ? nullptr : lend(rows.values);
        // more rows than there is memory for are only given where the count alone must be refused
        if (bytes.once_in(64)) table.row_count = LVB_MAX_ROWS + 1 + bytes.raw<std::uint16_t>();
    }
    template <class Struct>
    const Struct *keep(Bytes &bytes, const Struct &made) {
        structs_.push_back(result<Struct>(made.size));
        structs_.back().put(made);
        if (!bytes.once_in(8)) structs_.back().zero_from(sizeof made);
        return structs_.back().template as<Struct>();
    }

    std::deque<Memory> columns_;
    std::deque<Memory> structs_;
};

} // namespace fuzz
