// One chain over frequencies and distances: the levels at one frequency over any distance, and the extremes of many.
//
// Valid input only, as for the ledger, whose levels these are, bit for bit.
#pragma once

#include "chain/ledger.hpp"

namespace lvb::map {

/// The chain at one frequency: enter each stage in order. What the distance does not change is summed once.
class Row {
  public:
    Row(double frequency_mhz, double temperature_degc) noexcept
        : frequency_mhz_(frequency_mhz), temperature_degc_(temperature_degc) {}
    void enter(const chain::Stage &stage) noexcept;

    double far_level_dbm(double distance_m) const noexcept { return level_dbm(far_, distance_m); }
    double near_level_dbm(double distance_m) const noexcept { return level_dbm(near_, distance_m); }
    bool is_near_field(double distance_m) const noexcept;
    bool has_air() const noexcept { return has_air_; }
    double frequency_mhz() const noexcept { return frequency_mhz_; }
    double far_worst_db() const noexcept { return far_.worst_db; }
    double near_worst_db() const noexcept { return near_.worst_db; }
    double eirp_dbm() const noexcept { return eirp_dbm_; }
    const chain::Notes &notes() const noexcept { return notes_; } ///< without those of the distance
    const chain::Window &window() const noexcept { return window_; }

  private:
    /// The sum so far, or since the air; before the air, what it was there with the air's own gain.
    struct End {
        chain::Sum sum;
        double before_air_dbm = 0.0, worst_db = 0.0;
    };
    double level_dbm(const End &end, double distance_m) const noexcept;
    double loss_db(double distance_m) const noexcept;

    double frequency_mhz_, temperature_degc_;
    End far_, near_;
    bool has_air_ = false, has_path_ = false;
    path::Path path_{};
    double eirp_dbm_ = math::not_a_number;
    chain::Notes notes_;
    chain::Window window_{};
};

/// A value and where it was met first.
struct SweepExtreme {
    double value = math::not_a_number, frequency_mhz = math::not_a_number, distance_m = math::not_a_number;
};

struct Extremes {
    SweepExtreme lowest, highest;

    /// What is not a number is no value.
    void take(double value, double frequency_mhz, double distance_m) noexcept {
        if (math::is_nan(value)) return;
        if (!(lowest.value <= value)) lowest = {value, frequency_mhz, distance_m};
        if (!(highest.value >= value)) highest = {value, frequency_mhz, distance_m};
    }
};

/// The worst and the best over all points.
class Sweep {
  public:
    /// What a row says without a distance; it comes before its ends.
    void take_row(const Row &row) noexcept;
    /// An end of a row at a distance.
    void take_far(const Row &row, double distance_m) noexcept;
    void take_near(const Row &row, double distance_m) noexcept;

    chain::Verdict verdict() const noexcept;
    chain::Decided decided() const noexcept;

    Extremes margin, headroom, far_level, near_level, eirp;
    double far_worst_db = 0.0, near_worst_db = 0.0;

  private:
    chain::Window window_{};
};

} // namespace lvb::map
