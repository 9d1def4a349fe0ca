#include "decide/rank.hpp"

#include "math/elementary.hpp"
#include "path/free_space.hpp"

namespace lvb::decide {
namespace {

using chain::Kind;
using math::not_a_number;

constexpr double twice_db = 0x1.8151824c7587fp+1; // 10 log10(2)
constexpr double small_part = 1.0 / 8192.0;
constexpr double small_angle = 1.0 / 64.0;

double number(double x) noexcept { return math::abs(x) < math::infinity ? x : not_a_number; }

// The difference of a figure around x; on one side where the other does not hold.
template <class Holds, class Figure>
double slope(double x, double h, Holds holds, Figure figure) noexcept {
    const double below = holds(x - h) ? x - h : x;
    const double above = holds(x + h) ? x + h : x;
    if (!(above > below)) return not_a_number;
    return number((figure(above) - figure(below)) / (above - below));
}

double air_loss_db(const chain::Stage &stage, double frequency_mhz, double distance_m) noexcept {
    return stage.has_path ? path::loss_db(stage.path, frequency_mhz, distance_m)
                          : path::free_space_loss_db(frequency_mhz, distance_m);
}

bool reaches(const chain::Stage &stage, double distance_m, const Spans &spans) noexcept {
    if (!spans.distance_m.holds(distance_m)) return false;
    if (!stage.has_path) return true;
    const path::Reach reach = path::reach_of(stage.path);
    return Span{reach.nearest_m, reach.farthest_m}.holds(path::direct_m(stage.path, distance_m));
}

Span frequencies_of(const chain::Stage &stage, const Spans &spans) noexcept {
    Span span = spans.frequency_mhz;
    if (stage.gain_table.rows > 0)
        span.narrow(stage.gain_table.frequency_mhz[0], stage.gain_table.frequency_mhz[stage.gain_table.rows - 1]);
    if (stage.has_cable) {
        const cable::Table &table = stage.cable.table;
        span.narrow(cable::usable_below * table.frequency_mhz[0],
                    cable::usable_above * table.frequency_mhz[table.rows - 1]);
    }
    if (stage.has_path) {
        const path::Reach reach = path::reach_of(stage.path);
        span.narrow(reach.lowest_mhz, reach.highest_mhz);
    }
    return span;
}

double frequency_slope(const chain::Stage &stage, const chain::Conditions &conditions, bool far,
                       const Spans &spans) noexcept {
    const double distance = far ? conditions.far_distance_m : conditions.near_distance_m;
    const Span span = frequencies_of(stage, spans);
    const double f = conditions.frequency_mhz;
    return slope(
        f, f * small_part, [&](double x) noexcept { return span.holds(x); },
        [&](double x) noexcept {
            const chain::Change change = chain::own_change(stage, x, conditions.temperature_degc);
            const double db = far ? change.far_db : change.near_db;
            return stage.kind == Kind::air ? db - air_loss_db(stage, x, distance) : db;
        });
}

double distance_slope(const chain::Stage &stage, double frequency_mhz, double distance_m, const Spans &spans) noexcept {
    return slope(
        distance_m, distance_m * small_part, [&](double x) noexcept { return reaches(stage, x, spans); },
        [&](double x) noexcept { return -air_loss_db(stage, frequency_mhz, x); });
}

double azimuth_slope(const antenna::Pattern &pattern, const antenna::Direction &direction,
                     const Spans &spans) noexcept {
    return slope(
        direction.azimuth_deg, small_angle, [&](double x) noexcept { return spans.azimuth_deg.holds(x); },
        [&](double x) noexcept {
            return antenna::gain_dbi(pattern, {x, direction.elevation_deg});
        });
}
double elevation_slope(const antenna::Pattern &pattern, const antenna::Direction &direction,
                       const Spans &spans) noexcept {
    return slope(
        direction.elevation_deg, small_angle, [&](double x) noexcept { return spans.elevation_deg.holds(x); },
        [&](double x) noexcept {
            return antenna::gain_dbi(pattern, {direction.azimuth_deg, x});
        });
}

void take_cable(const chain::Stage &stage, const chain::Conditions &conditions, Slopes &slopes) noexcept {
    cable::Run one = stage.cable;
    one.connectors = 1;
    const cable::Loss loss = cable::loss(one, conditions.frequency_mhz, conditions.temperature_degc);
    slopes.by_length = -loss.attenuation.db_per_100m / 100.0;
    slopes.by_connector = -loss.connectors_db;
    slopes.by_connector_loss = -static_cast<double>(stage.cable.connectors);
}

// By how much the loss of the air changes if the way goes from one distance to another, or as far there as it reaches.
double way_help_db(const chain::Stage &stage, double frequency_mhz, double from_m, double to_m,
                   const Spans &spans) noexcept {
    if (!reaches(stage, to_m, spans)) {
        double low = from_m, high = to_m; // reached, and not
        for (int i = 0; i < 60; ++i) {
            const double middle = low + (high - low) / 2.0;
            (reaches(stage, middle, spans) ? low : high) = middle;
        }
        to_m = low;
    }
    return air_loss_db(stage, frequency_mhz, from_m) - air_loss_db(stage, frequency_mhz, to_m);
}

} // namespace

Slopes slopes_of(const chain::Stage &stage, const chain::Conditions &conditions, const Spans &spans) noexcept {
    Slopes slopes{not_a_number, not_a_number, not_a_number, not_a_number, 0.0,          0.0,          0.0,
                  not_a_number, not_a_number, not_a_number, not_a_number, not_a_number, not_a_number, not_a_number};
    const bool replaced = stage.gain_table.rows > 0 || stage.has_pattern || stage.has_body || stage.has_cable;
    if (!replaced || stage.kind == Kind::source) slopes.by_gain = 1.0; // a source has its level besides
    slopes.far_by_frequency = frequency_slope(stage, conditions, true, spans);
    slopes.near_by_frequency = frequency_slope(stage, conditions, false, spans);
    if (stage.has_cable) {
        take_cable(stage, conditions, slopes);
        slopes.by_temperature = slope(
            conditions.temperature_degc, small_angle,
            [&](double x) noexcept { return spans.temperature_degc.holds(x); },
            [&](double x) noexcept { return chain::own_change(stage, conditions.frequency_mhz, x).far_db; });
    }
    if (stage.kind == Kind::air) {
        slopes.far_by_distance = distance_slope(stage, conditions.frequency_mhz, conditions.far_distance_m, spans);
        slopes.near_by_distance = distance_slope(stage, conditions.frequency_mhz, conditions.near_distance_m, spans);
    }
    if (stage.has_pattern) {
        slopes.far_by_azimuth = azimuth_slope(stage.pattern, stage.far_direction, spans);
        slopes.far_by_elevation = elevation_slope(stage.pattern, stage.far_direction, spans);
        slopes.near_by_azimuth = azimuth_slope(stage.pattern, stage.near_direction, spans);
        slopes.near_by_elevation = elevation_slope(stage.pattern, stage.near_direction, spans);
    }
    if (stage.has_body)
        slopes.by_facing = slope(
            stage.facing_deg, small_angle, [&](double x) noexcept { return spans.azimuth_deg.holds(x); },
            [&](double x) noexcept { return -body::loss_db(stage.body, x); });
    return slopes;
}

double far_help_db(const chain::Stage &stage, const chain::Conditions &conditions, double changes_db,
                   const Spans &spans) noexcept {
    switch (stage.kind) {
    case Kind::source:
    case Kind::amplifier:
    case Kind::antenna:
        return twice_db;
    case Kind::passive:
    case Kind::cable:
    case Kind::allowance:
        return changes_db < 0.0 ? -changes_db / 2.0 : 0.0;
    case Kind::air:
        return way_help_db(stage, conditions.frequency_mhz, conditions.far_distance_m, conditions.far_distance_m / 2.0,
                           spans);
    case Kind::receiver:
        break;
    }
    return 0.0;
}

double near_help_db(const chain::Stage &stage, const chain::Conditions &conditions, double changes_db,
                    const Spans &spans) noexcept {
    const double twice_m = 2.0 * conditions.near_distance_m, far_m = conditions.far_distance_m;
    switch (stage.kind) {
    case Kind::source:
    case Kind::amplifier:
    case Kind::antenna:
        return twice_db;
    case Kind::passive:
    case Kind::cable:
        return changes_db < 0.0 ? -changes_db : 0.0;
    case Kind::air:
        return -way_help_db(stage, conditions.frequency_mhz, conditions.near_distance_m,
                            twice_m < far_m ? twice_m : far_m, spans);
    case Kind::allowance:
    case Kind::receiver:
        break;
    }
    return 0.0;
}

} // namespace lvb::decide
