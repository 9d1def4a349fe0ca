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
double loss_of_db(double db) noexcept { return db > 1500.0 ? math::infinity : math::power_of_db(db); }

bool is_even(const Antenna &antenna) noexcept {
    return !antenna.has_pattern || antenna.pattern.shape == antenna::Shape::even;
}

// A pattern's gain along a line, over its maximum.
double gain_share(const antenna::Pattern &pattern, const antenna::Axes &axes, const antenna::Vector &line) noexcept {
    return share_of_db(antenna::gain_dbi(pattern, antenna::direction_of(axes, line)) - antenna::maximum_dbi(pattern));
}

// The same point by point.
void weaken_by_pattern(const Site &site, const Antenna &antenna, const Points &points, double *loss) noexcept {
    double gain[piece];
    for (std::size_t i = 0; i < piece; ++i) {
        const antenna::Vector way = way_to(antenna, points, i);
        const bool has_direction = antenna::length(way) >= nearest_m;
        gain[i] = has_direction ? gain_share(antenna.pattern, antenna.axes, way) : 1.0;
    }
    site.row->weaken(loss, gain);
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

// Losses over a path's model.
void spread_over_path(const Site &site, const Antenna &antenna, const Points &points, double *mask,
                      double *loss) noexcept {
    const path::Reach reach = path::reach_of(antenna.path);
    const double at_1m = loss_at_1m_db(site.frequency_mhz);
    path::Path path = antenna.path;
    for (std::size_t i = 0; i < piece; ++i) {
        const double distance = take_way(antenna, way_to(antenna, points, i), points.z[i], path);
        const double direct = path::direct_m(path, distance);
        const bool holds = direct >= reach.nearest_m && direct <= reach.farthest_m;
        if (!holds && mask[i] == counted) mask[i] = unmodelled;
        loss[i] = holds ? loss_of_db(path::loss_db(path, site.frequency_mhz, distance) - at_1m) : math::infinity;
    }
}

void spread(const Site &site, const Antenna &antenna, const Points &points, double *mask, double *loss) noexcept {
    const bool is_cosine = antenna.has_pattern && antenna.pattern.shape == antenna::Shape::cosine;
    if (antenna.has_path) spread_over_path(site, antenna, points, mask, loss);
    else if (is_cosine) return site.row->cosine(points, antenna.at, antenna.cosine, loss);
    else site.row->free_space(points, antenna.at, loss);
    if (!is_even(antenna)) weaken_by_pattern(site, antenna, points, loss);
}

double azimuth_deg(double x, double y) noexcept { return math::arctangent_deg(x, y); } // clockwise from y

double faced_deg(const Wearer &wearer, double x, double y) noexcept {
    const double toward = azimuth_deg(wearer.x - x, wearer.y - y);
    return wearer.facing == Facing::away ? toward + 180.0 : toward;
}

double body_share(const Wearer &wearer, double faced, const Antenna &antenna, double x, double y) noexcept {
    return share_of_db(-body::loss_db(wearer.body, faced - azimuth_deg(antenna.at.x - x, antenna.at.y - y)));
}

// What the antenna of a pack, turned as it is worn, receives of its greatest gain and of the other's polarization.
double turn_share(const Worn &worn, const antenna::Axes &axes, const Antenna &antenna,
                  const antenna::Vector &way) noexcept {
    if (antenna::length(way) < nearest_m) return 1.0; // no direction
    const double matched = antenna::polarization_fraction(antenna.axes, axes, way);
    const double received = matched > worn.least_polarization ? matched : worn.least_polarization;
    if (!worn.has_pattern) return received;
    const antenna::Vector back{-way.x, -way.y, -way.z};
    return received * gain_share(worn.pattern, axes, back);
}

// What a wearer leaves of the power at a piece of points.
void weaken_by_wearer(const Site &site, const Antenna &antenna, const Points &points, double *loss) noexcept {
    const Wearer &wearer = site.wearer;
    const bool turns = wearer.facing != Facing::azimuth; // from point to point
    double kept[piece], faced = wearer.azimuth_deg;
    antenna::Axes axes{};
    for (std::size_t i = 0; i < piece; ++i) {
        const double x = points.x[i], y = points.y[i];
        if (turns) faced = faced_deg(wearer, x, y);
        if (wearer.has_antenna && (turns || i == 0)) axes = antenna::carried(wearer.antenna.axes, faced);
        kept[i] = wearer.has_body ? body_share(wearer, faced, antenna, x, y) : 1.0;
        if (wearer.has_antenna) kept[i] *= turn_share(wearer.antenna, axes, antenna, way_to(antenna, points, i));
    }
    site.row->weaken(loss, kept);
}

// What arrives by one rule, far or near: the least loss, or the sum of powers; and its levels.
void start(const Site &site, double *arrived) noexcept {
    site.row->fill(arrived, site.combine == Combine::sum ? no_power : no_way);
}
void join(const Site &site, const double *loss, double scale, double *arrived) noexcept {
    if (site.combine == Combine::sum) site.row->add(loss, scale, arrived);
    else site.row->least(loss, scale, arrived);
}
void take_levels(const Site &site, double reference_db, const double *arrived, const double *mask,
                 double *level) noexcept {
    const bool sums = site.combine == Combine::sum;
    site.row->levels(arrived, mask, sums ? 1.0 : -1.0, sums ? no_power : no_way, reference_db, level);
}

// The half exponent that a row of points takes of an antenna at once with others: 0 of an isotropic one, -1 where it
// must be looked at on its own.
double row_exponent(const Antenna &antenna) noexcept {
    if (antenna.has_path) return -1.0;
    if (is_even(antenna)) return 0.0;
    const double exponent = antenna.cosine.half_exponent;
    const bool is_small = exponent == 1.0 || exponent == most_row_exponent;
    return antenna.pattern.shape == antenna::Shape::cosine && is_small ? exponent : -1.0;
}

// Whether near levels follow far ones: nothing is lost to the wearer, and the same allowances in every chain.
bool near_follows(const Site &site) noexcept {
    constexpr double rounding_db = 1e-12;
    const double difference = site.near_reference_db - site.far_reference_db;
    for (std::size_t a = 0; a < site.antenna_count; ++a) {
        const Antenna &antenna = site.antennas[a];
        if (!(math::abs((antenna.near_db - antenna.far_db) - difference) <= rounding_db)) return false;
    }
    return !wears(site);
}

// Whether the least loss of free space and patterns tells everything.
bool is_bare(const Site &site) noexcept {
    for (std::size_t a = 0; a < site.antenna_count; ++a)
        if (row_exponent(site.antennas[a]) < 0.0) return false;
    return site.combine == Combine::best && site.screen_count == 0 && site.near_follows;
}

RowSight sight_of(const Antenna &antenna, double y, double z) noexcept {
    const double dy = y - antenna.at.y, dz = z - antenna.at.z;
    const Cosine &cosine = antenna.cosine;
    return {antenna.at.x,  dy * dy + dz * dz, cosine.aim.x, dy * cosine.aim.y + dz * cosine.aim.z,
            cosine.behind, antenna.far_loss};
}

// What arrives at a row from antennas of a bare site, some of one kind at a time as they follow each other.
void serve_row(const Site &site, const Points &points, double *least, double *serving) noexcept {
    RowSight sights[abreast];
    for (std::size_t first = 0, count = 0; first < site.antenna_count; first += count) {
        const double exponent = row_exponent(site.antennas[first]);
        for (RowSight &sight : sights) sight = {0.0, 1.0, 0.0, 1.0, 1.0, math::infinity}; // nobody
        for (count = 0; count < abreast && first + count < site.antenna_count; ++count) {
            const Antenna &antenna = site.antennas[first + count];
            if (row_exponent(antenna) != exponent) break;
            sights[count] = sight_of(antenna, points.y[0], points.z[0]);
        }
        site.row->serve_row(points.x, sights, static_cast<std::uint32_t>(exponent), static_cast<double>(first), least,
                            serving);
    }
}

} // namespace

double loss_at_1m_db(double frequency_mhz) noexcept { return path::free_space_loss_db(frequency_mhz, 1.0); }

void refer(const Site &site, Antenna &antenna) noexcept {
    antenna.far_loss = loss_of_db(site.far_reference_db - antenna.far_db);
    antenna.near_loss = loss_of_db(site.near_reference_db - antenna.near_db);
}

void settle(Site &site) noexcept {
    site.near_follows = near_follows(site);
    site.is_bare = is_bare(site);
}

void losses_of(const Site &site, const Antenna &antenna, const Points &points, double *mask, Losses &losses) noexcept {
    spread(site, antenna, points, mask, losses.near);
    const double per_wavelength = site.frequency_mhz / units::light_m_mhz;
    for (std::size_t i = 0; i < site.screen_count; ++i)
        site.row->screen(points, antenna.at, site.screens[i], per_wavelength, losses.near);
    if (!wears(site)) return;
    for (std::size_t i = 0; i < piece; ++i) losses.far[i] = losses.near[i];
    weaken_by_wearer(site, antenna, points, losses.far);
}

void hear(const Site &site, const Points &points, double *mask, const Heard &heard) noexcept {
    alignas(64) double far[piece], near[piece], strongest[piece];
    const bool sums = site.combine == Combine::sum, serves = heard.serving != nullptr;
    const bool has_own_near = heard.near != nullptr && !site.near_follows;
    start(site, far);
    if (has_own_near) start(site, near);
    if (serves) site.row->fill(heard.serving, -1.0);
    if (serves && sums) site.row->fill(strongest, no_way);
    const bool at_once = serves && points.on_row && site.is_bare;
    if (at_once) serve_row(site, points, far, heard.serving);
    Losses losses;
    for (std::size_t a = 0; a < site.antenna_count && !at_once; ++a) {
        const Antenna &antenna = site.antennas[a];
        losses_of(site, antenna, points, mask, losses);
        const double *past_body = far_losses(site, losses);
        if (serves)
            site.row->serve(past_body, antenna.far_loss, static_cast<double>(a), sums ? strongest : far, heard.serving);
        if (sums || !serves) join(site, past_body, antenna.far_loss, far);
        if (has_own_near) join(site, losses.near, antenna.near_loss, near);
    }
    take_levels(site, site.far_reference_db, far, mask, heard.level);
    if (has_own_near) take_levels(site, site.near_reference_db, near, mask, heard.near);
}

std::int32_t strongest_near(const Site &site, const Vector &point) noexcept {
    Points points;
    alignas(64) double mask[piece];
    site.row->fill(points.x, point.x);
    site.row->fill(points.y, point.y);
    site.row->fill(points.z, point.z);
    site.row->fill(mask, counted);
    std::int32_t strongest = -1;
    double least = no_way;
    Losses losses;
    for (std::size_t a = 0; a < site.antenna_count; ++a) {
        const Antenna &antenna = site.antennas[a];
        losses_of(site, antenna, points, mask, losses);
        const double here = losses.near[0] * antenna.near_loss;
        if (!(here < least)) continue;
        least = here;
        strongest = static_cast<std::int32_t>(a);
    }
    return strongest;
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
