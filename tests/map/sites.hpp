// Sites for tests, with everything that a call needs.
#pragma once

#include "chain/chains.hpp"
#include "math/values.hpp"

#include <array>
#include <deque>
#include <limits>

namespace proof {

inline std::int32_t all_instructions(std::int32_t set) { return set | LVB_INSTRUCTIONS_ASKED; }

/// Antennas with their chains, areas and screens; they stay in their places while more come.
struct Stage {
    std::deque<std::vector<lvb_stage>> chains;
    std::deque<lvb_link> links;
    std::deque<lvb_pattern> patterns;
    std::deque<lvb_antenna> placed;
    std::deque<std::vector<double>> corners;
    std::vector<lvb_site_antenna> antennas;
    std::vector<lvb_area> areas;
    std::vector<lvb_screen> screens;
    lvb_antenna worn = sized<lvb_antenna>(); ///< a pack's, lent where a test does so
    lvb_site site = sized<lvb_site>();
    lvb_fault fault = sized<lvb_fault>();

    explicit Stage(double height_m = 1.2) { site.pack_height_m = height_m; }
    Stage(const Stage &) = delete;
    Stage &operator=(const Stage &) = delete;

    /// An antenna with a chain; its pattern is added by pattern().
    lvb_antenna &add(std::vector<lvb_stage> chain, double x_m, double y_m, double z_m, double frequency_mhz = 600.0) {
        chains.push_back(std::move(chain));
        links.push_back(sized<lvb_link>());
        links.back().stages = chains.back().data();
        links.back().stage_count = static_cast<std::uint32_t>(chains.back().size());
        links.back().stage_size = sizeof(lvb_stage);
        links.back().frequency_mhz = frequency_mhz;
        placed.push_back(sized<lvb_antenna>());
        placed.back().x_m = x_m;
        placed.back().y_m = y_m;
        placed.back().z_m = z_m;
        antennas.push_back({&placed.back(), &links.back()});
        return placed.back();
    }
    lvb_pattern &pattern(lvb_antenna &antenna, std::int32_t kind) {
        patterns.push_back(sized<lvb_pattern>());
        patterns.back().kind = kind;
        antenna.pattern = &patterns.back();
        return patterns.back();
    }
    void area(const std::vector<double> &x, const std::vector<double> &y) {
        corners.push_back(x);
        const double *xs = corners.back().data();
        corners.push_back(y);
        areas.push_back({static_cast<std::uint32_t>(x.size()), 0, xs, corners.back().data()});
    }
    void screen(double x1, double y1, double x2, double y2, double bottom, double top, double loss_db = 0.0) {
        screens.push_back({x1, y1, x2, y2, bottom, top, loss_db});
    }
    template <class T>
    static const T *lent(const std::vector<T> &of) {
        return of.empty() ? nullptr : of.data();
    }
    const lvb_site *lent() {
        site.antennas = lent(antennas);
        site.antenna_count = static_cast<std::uint32_t>(antennas.size());
        site.antenna_size = sizeof(lvb_site_antenna);
        site.areas = lent(areas);
        site.area_count = static_cast<std::uint32_t>(areas.size());
        site.area_size = sizeof(lvb_area);
        site.screens = lent(screens);
        site.screen_count = static_cast<std::uint32_t>(screens.size());
        site.screen_size = sizeof(lvb_screen);
        return &site;
    }
};

/// A chain out to a pack whose receiver has a window, with an allowance for the far rule.
inline std::vector<lvb_stage> chain_out(double level_dbm = 15.0, double gain_dbi = 0.0, double allowance_db = -20.0) {
    return {source(level_dbm),
            stage(LVB_KIND_PASSIVE, -3.5),
            antenna(gain_dbi),
            air(),
            stage(LVB_KIND_ALLOWANCE, allowance_db),
            antenna(-2.0),
            receiver(-85.0, -70.0, -45.0, -20.0)};
}

/// Everything that a map gives.
struct Mapped {
    lvb_map map = sized<lvb_map>();
    lvb_map_summary summary = sized<lvb_map_summary>();
    std::vector<double> level, margin, headroom, outage;
    std::vector<std::int32_t> zone, serving;

    Mapped(Stage &stage, double x_m, double y_m, double step_m, std::uint64_t columns, std::uint64_t rows) {
        map.site = stage.lent();
        map.x_m = x_m;
        map.y_m = y_m;
        map.step_x_m = map.step_y_m = step_m;
        map.column_count = columns;
        map.row_count = rows;
        map.instructions = all_instructions(instruction_sets());
        const std::size_t values = columns * rows;
        for (std::vector<double> *each : {&level, &margin, &headroom}) each->assign(values, -7.25e77);
        zone.assign(values, -9);
        serving.assign(values, -9);
        map.level_dbm = level.data();
        map.margin_db = margin.data();
        map.headroom_db = headroom.data();
        map.zone = zone.data();
        map.serving = serving.data();
    }
    void fade(std::int32_t law, double parameter) {
        outage.assign(level.size(), -7.25e77);
        map.outage = outage.data();
        map.fading = law;
        map.fading_parameter = parameter;
    }
    lvb_status compute(lvb_fault &fault) { return lvb_compute_map(&map, &summary, &fault); }
    double x(std::size_t k) const { return map.x_m + static_cast<double>(k % map.column_count) * map.step_x_m; }
    double y(std::size_t k) const { return map.y_m + static_cast<double>(k / map.column_count) * map.step_y_m; }
};

} // namespace proof
