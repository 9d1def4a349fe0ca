// A walk along a polyline: what is heard at its points, and for how long there is too little or too much of it.
#pragma once

#include "map/survey.hpp"

namespace lvb::map {

struct Walk {
    const double *x, *y, *z; ///< corners; z may be null: the site's height
    std::size_t corners;
    double speed_m_per_s, step_m;
};

double length_m(const Walk &walk) noexcept;

/// Points of a walk of a length: at the beginning, after every step, and at the end.
double point_count(const Walk &walk, double length_m) noexcept;

struct WalkOutputs {
    double *distance, *level, *margin, *headroom, *outage;
    std::int32_t *zone, *serving;
};

/// For how long a room is below 0, and the longest stretch of that with its beginning along the walk.
struct Shortfall {
    double total_s = 0.0, longest_s = 0.0, longest_at_m = math::not_a_number;
};
/// A point, its level and its room: margin or headroom; and the antenna that is strongest there by the rule of the
/// level.
struct WalkExtreme {
    double level = math::not_a_number, room = math::not_a_number, at_m = math::not_a_number;
    std::int32_t serving = -1;
};
struct WalkSummary {
    std::uint64_t points = 0, unmodelled = 0;
    double length_m;
    Shortfall under_floor, over_ceiling;
    WalkExtreme worst, hottest;
    double outage_s, judged_s = 0.0; ///< expected time under the floor, NaN without a law; and the time that counts
};

WalkSummary follow(const Site &site, const Walk &walk, const Fading &fading, const WalkOutputs &out) noexcept;

} // namespace lvb::map
