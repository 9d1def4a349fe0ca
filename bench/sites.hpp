// The sites that are measured: antennas in a row before the stage, each with the bare chain of a link.
#pragma once

#include "chains.hpp"

#include <cmath>
#include <deque>

namespace bench {

/// Antennas 2 m apart at y = -2 and z = 3; with an exponent n above 0 each is a cosine, cos^n of power, turned by a few
/// degrees more than the last; screens stand in a row across the stage.
class Site {
  public:
    Site(std::size_t antennas, double exponent, std::size_t screens = 0) : chain_(Chain::bare_link()) {
        pattern_.size = sizeof pattern_;
        pattern_.kind = LVB_PATTERN_COSINE;
        pattern_.gain_dbi = lvb_gain_dbi_from_cosine_exponent(exponent);
        for (std::size_t i = 0; i < antennas; ++i) {
            lvb_antenna one{};
            one.size = sizeof one;
            one.x_m = x_of(i);
            one.y_m = y_m;
            one.z_m = z_m;
            one.azimuth_deg = azimuth_of(i);
            if (exponent > 0.0) one.pattern = &pattern_;
            placed_.push_back(one);
            antennas_.push_back({&placed_.back(), &chain_.link()});
        }
        for (std::size_t i = 0; i < screens; ++i) {
            const double y = 1.0 + 0.2 * static_cast<double>(i);
            screens_.push_back({2.0, y, 6.0, y + 0.1, 0.0, 2.0, 0.0});
        }
        site_.size = sizeof site_;
        site_.antennas = antennas_.data();
        site_.antenna_count = static_cast<std::uint32_t>(antennas_.size());
        site_.antenna_size = sizeof(lvb_site_antenna);
        site_.screens = screens_.data();
        site_.screen_count = static_cast<std::uint32_t>(screens_.size());
        site_.screen_size = sizeof(lvb_screen);
        site_.pack_height_m = pack_m;
    }
    Site(const Site &) = delete;
    Site &operator=(const Site &) = delete;

    static constexpr double y_m = -2.0, z_m = 3.0, pack_m = 1.25, step_m = 0.02;
    static double x_of(std::size_t i) { return 2.0 + 2.0 * static_cast<double>(i); }
    static double azimuth_of(std::size_t i) { return -10.0 + 5.0 * static_cast<double>(i); }

    /// Level at the end of the chain 1 m before an antenna.
    double level_at_1m_dbm() const {
        lvb_link link = chain_.link();
        link.far_distance_m = 1.0;
        link.near_distance_m = 0.0;
        lvb_budget budget{};
        budget.size = sizeof budget;
        if (lvb_compute_budget(&link, &budget, nullptr, 0, nullptr) != LVB_OK) return std::nan("");
        const double own_dbi = 6.0; // that the pattern replaces
        return budget.far_end.level_dbm + (placed_[0].pattern != nullptr ? pattern_.gain_dbi - own_dbi : 0.0);
    }
    lvb_map map(std::uint64_t columns, std::uint64_t rows, std::int32_t instructions, double *level_dbm) const {
        lvb_map made{};
        made.size = sizeof made;
        made.instructions = instructions;
        made.site = &site_;
        made.step_x_m = made.step_y_m = step_m;
        made.column_count = columns;
        made.row_count = rows;
        made.level_dbm = level_dbm;
        return made;
    }

  private:
    Chain chain_;
    lvb_pattern pattern_{};
    std::deque<lvb_antenna> placed_;
    std::vector<lvb_site_antenna> antennas_;
    std::vector<lvb_screen> screens_;
    lvb_site site_{};
};

} // namespace bench
