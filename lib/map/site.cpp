#include "map/site.hpp"

#include "math/elementary.hpp"
#include "path/free_space.hpp"

namespace lvb::map {
namespace {

antenna::Vector way_to(const Antenna &antenna, const Points &points, std::size_t i) noexcept {
    return {points.x[i] - antenna.at.x, points.y[i] - antenna.at.y, points.z[i] - antenna.at.z};
}

/// Less than this is nothing, and takes no exponential.
double share_of_db(double db) noexcept { return db < -1500.0 ? 0.0 : math::power_of_db(db); }

bool is_even(const Antenna &antenna) noexcept {
    return !antenna.has_pattern || antenna.pattern.shape == antenna::Shape::even;
}

// A pattern's gain along a line, over its maximum.
double gain_share(const antenna::Pattern &pattern, const antenna::Axes &axes, const antenna::Vector &line) noexcept {
    return share_of_db(antenna::gain_dbi(pattern, antenna::direction_of(axes, line)) - antenna::maximum_dbi(pattern));
}

// The same point by point.
void multiply_by_pattern(const Site &site, const Antenna &antenna, const Points &points, double *share) noexcept {
    double gain[piece];
    for (std::size_t i = 0; i < piece; ++i) {
        const antenna::Vector way = way_to(antenna, points, i);
        const bool has_direction = antenna::length(way) >= nearest_m;
        gain[i] = has_direction ? gain_share(antenna.pattern, antenna.axes, way) : 1.0;
    }
    site.row->multiply(share, gain, 0.0);
}

// A path whose heights are those of the site, and the distance that its model takes.
double take_way(const Antenna &antenna, const antenna::Vector &way, double z, path::Path &path) noexcept {
    const double along = math::sqrt(way.x * way.x + way.y * way.y);
    path.has_heights = path.model == path::Model::two_ray;
    path.transmit_height_m = antenna.swaps_heights ? z : antenna.at.z;
    path.receive_height_m = antenna.swaps_heights ? antenna.at.z : z;
    const double whole = path.has_heights ? along : antenna::length(way);
    return whole > nearest_m ? whole : nearest_m;
}

// Shares over a path's model.
void spread_over_path(const Site &site, const Antenna &antenna, const Points &points, double *mask,
                      double *share) noexcept {
    const path::Reach reach = path::reach_of(antenna.path);
    const double at_1m = loss_at_1m_db(site.frequency_mhz);
    path::Path path = antenna.path;
    for (std::size_t i = 0; i < piece; ++i) {
        const double distance = take_way(antenna, way_to(antenna, points, i), points.z[i], path);
        const double direct = path::direct_m(path, distance);
        const bool holds = direct >= reach.nearest_m && direct <= reach.farthest_m;
        if (!holds && mask[i] == counted) mask[i] = unmodelled;
        share[i] = holds ? share_of_db(at_1m - path::loss_db(path, site.frequency_mhz, distance)) : 0.0;
    }
}

void spread(const Site &site, const Antenna &antenna, const Points &points, double *mask, double *share) noexcept {
    const bool is_cosine = antenna.has_pattern && antenna.pattern.shape == antenna::Shape::cosine;
    if (antenna.has_path) spread_over_path(site, antenna, points, mask, share);
    else if (is_cosine) return site.row->cosine(points, antenna.at, antenna.cosine, share);
    else site.row->free_space(points, antenna.at, share);
    if (!is_even(antenna)) multiply_by_pattern(site, antenna, points, share);
}

double azimuth_deg(double x, double y) noexcept { return math::arctangent_deg(x, y); } // clockwise from y

double faced_deg(const Wearer &wearer, double x, double y) noexcept {
    if (wearer.facing == Facing::azimuth) return wearer.azimuth_deg;
    const double toward = azimuth_deg(wearer.x - x, wearer.y - y);
    return wearer.facing == Facing::away ? toward + 180.0 : toward;
}

double body_share(const Wearer &wearer, double faced, const Antenna &antenna, double x, double y) noexcept {
    return share_of_db(-body::loss_db(wearer.body, faced - azimuth_deg(antenna.at.x - x, antenna.at.y - y)));
}

// What the turned antenna of a pack receives of its greatest gain and of the other's polarization.
double turn_share(const Worn &worn, double faced, const Antenna &antenna, const antenna::Vector &way) noexcept {
    if (antenna::length(way) < nearest_m) return 1.0; // no direction
    const antenna::Axes axes = antenna::carried(worn.axes, faced);
    const double matched = antenna::polarization_fraction(antenna.axes, axes, way);
    const double received = matched > worn.least_polarization ? matched : worn.least_polarization;
    if (!worn.has_pattern) return received;
    const antenna::Vector back{-way.x, -way.y, -way.z};
    return received * gain_share(worn.pattern, axes, back);
}

// What a wearer leaves of a piece of powers.
void multiply_by_wearer(const Site &site, const Antenna &antenna, const Points &points, double *share) noexcept {
    const Wearer &wearer = site.wearer;
    double kept[piece];
    for (std::size_t i = 0; i < piece; ++i) {
        const double x = points.x[i], y = points.y[i], faced = faced_deg(wearer, x, y);
        kept[i] = wearer.has_body ? body_share(wearer, faced, antenna, x, y) : 1.0;
        if (wearer.has_antenna) kept[i] *= turn_share(wearer.antenna, faced, antenna, way_to(antenna, points, i));
    }
    site.row->multiply(share, kept, 0.0);
}

// Levels of powers over a reference.
void take_levels(const Site &site, double reference_db, const double *power, const double *mask,
                 double *level) noexcept {
    const double high = (reference_db + 0x1.8p14) - 0x1.8p14; // see math::Parts
    site.loops->decibel_sum(power, level, 1.0, high, reference_db - high);
    site.row->finish(power, mask, level);
}

} // namespace

double loss_at_1m_db(double frequency_mhz) noexcept { return path::free_space_loss_db(frequency_mhz, 1.0); }

void refer(const Site &site, Antenna &antenna) noexcept {
    antenna.far_scale = share_of_db(antenna.far_db - site.far_reference_db);
    antenna.near_scale = share_of_db(antenna.near_db - site.near_reference_db);
}

void shares_of(const Site &site, const Antenna &antenna, const Points &points, double *mask, Shares &shares) noexcept {
    spread(site, antenna, points, mask, shares.near);
    const double per_wavelength = site.frequency_mhz / units::light_m_mhz;
    for (std::size_t i = 0; i < site.screen_count; ++i)
        site.row->screen(points, antenna.at, site.screens[i], per_wavelength, shares.near);
    if (!wears(site)) return;
    for (std::size_t i = 0; i < piece; ++i) shares.far[i] = shares.near[i];
    multiply_by_wearer(site, antenna, points, shares.far);
}

void hear(const Site &site, const Points &points, double *mask, bool wants_serving, Heard &heard) noexcept {
    alignas(64) double far[piece], near[piece], sum[piece], near_sum[piece];
    const bool sums = site.combine == Combine::sum, follows = site.near_follows;
    const RowLoops &row = *site.row;
    row.fill(far, no_power);
    if (wants_serving) row.fill(heard.serving, -1.0);
    if (sums) row.fill(sum, no_power);
    if (!follows && sums) row.fill(near_sum, no_power);
    if (!follows && !sums) row.fill(near, no_power);
    Shares shares;
    for (std::size_t a = 0; a < site.antenna_count; ++a) {
        const Antenna &antenna = site.antennas[a];
        shares_of(site, antenna, points, mask, shares);
        const double *past_body = far_shares(site, shares);
        if (wants_serving) row.serve(past_body, antenna.far_scale, static_cast<double>(a), far, heard.serving);
        else if (!sums) row.best(past_body, antenna.far_scale, far);
        if (sums) row.add(past_body, antenna.far_scale, sum);
        if (follows) continue;
        if (sums) row.add(shares.near, antenna.near_scale, near_sum);
        else row.best(shares.near, antenna.near_scale, near);
    }
    take_levels(site, site.far_reference_db, sums ? sum : far, mask, heard.level);
    if (follows) row.add_scaled(heard.level, 1.0, site.near_reference_db - site.far_reference_db, heard.near);
    else take_levels(site, site.near_reference_db, sums ? near_sum : near, mask, heard.near);
}

double direct_m(const Antenna &antenna, double x, double y, double z) noexcept {
    path::Path path = antenna.path;
    const antenna::Vector way{x - antenna.at.x, y - antenna.at.y, z - antenna.at.z};
    const double distance = take_way(antenna, way, z, path);
    return path::direct_m(path, distance);
}

void mask_row(const Site &site, const double *x, double y, double *mask) noexcept {
    site.row->fill(mask, site.area_count == 0 ? counted : outside);
    for (std::size_t a = 0; a < site.area_count; ++a) {
        const Area &area = site.areas[a];
        double inside[piece];
        site.row->fill(inside, -1.0);
        for (std::size_t i = 0; i < area.corners; ++i) {
            const Meeting met = meeting(area, i, y);
            if (met.crosses) site.row->cross(x, met.at, inside);
            if (met.touches) site.row->touch(x, met.from, met.to, mask);
        }
        site.row->touch(inside, 1.0, 1.0, mask);
    }
}

} // namespace lvb::map
