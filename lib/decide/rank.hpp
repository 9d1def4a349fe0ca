// What one stage contributes to a link: what a unit of each of its fields does, and what it would do by a factor of
// two.
//
// Derivatives are of what the stage changes. NaN where a field is not in use.
#pragma once

#include "chain/ledger.hpp"

namespace lvb::decide {

/// From where to where something holds.
struct Span {
    double low, high;
    bool holds(double x) const noexcept { return x >= low && x <= high; }
    void narrow(double from, double to) noexcept {
        if (from > low) low = from;
        if (to < high) high = to;
    }
};

/// Where the fields hold that derivatives are taken by: beyond it nothing is computed.
struct Spans {
    Span frequency_mhz, distance_m, temperature_degc, azimuth_deg, elevation_deg;
};

struct Slopes {
    double by_gain, by_length, by_connector, by_connector_loss, by_temperature;
    double far_by_frequency, near_by_frequency, far_by_distance, near_by_distance;
    double far_by_azimuth, far_by_elevation, near_by_azimuth, near_by_elevation, by_facing;
};
Slopes slopes_of(const chain::Stage &stage, const chain::Conditions &conditions, const Spans &spans) noexcept;

/// What the link would win at the far end against the floor if this stage were better by a factor of two, or at the
/// near end against the ceiling if it were worse; `changes_db` is what it changes there.
double far_help_db(const chain::Stage &stage, const chain::Conditions &conditions, double changes_db,
                   const Spans &spans) noexcept;
double near_help_db(const chain::Stage &stage, const chain::Conditions &conditions, double changes_db,
                    const Spans &spans) noexcept;

} // namespace lvb::decide
