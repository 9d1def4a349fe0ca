#include "map/place.hpp"

#include "math/elementary.hpp"

#include <cstring>

namespace lvb::map {
namespace {

// A power that is never the least one of all points, where the last piece has no more of them.
constexpr double no_limit = 1e300;

void load(const Site &site, const Powers &powers, std::uint64_t at, Points &points) noexcept {
    std::memcpy(points.x, powers.x() + at, sizeof points.x);
    std::memcpy(points.y, powers.y() + at, sizeof points.y);
    site.row->fill(points.z, site.height_m);
}

// Behind the last point nothing limits a placement.
void fill_up(const Powers &powers, double *far, double *near, std::uint64_t points) noexcept {
    for (std::uint64_t i = points; i < powers.length(); ++i) {
        far[i] = no_limit;
        near[i] = 0.0;
    }
}

} // namespace

std::uint64_t gather(const Site &site, const Grid &grid, const Powers &powers) noexcept {
    std::uint64_t points = 0;
    alignas(64) double x[piece], mask[piece];
    for (std::uint64_t r = 0; r < grid.rows; ++r) {
        const double y = grid.y_at(r);
        for (std::uint64_t c = 0; c < grid.columns; c += piece) {
            site.row->columns(static_cast<double>(c), grid.x, grid.step_x, x);
            mask_row(site, x, y, mask);
            for (std::size_t i = 0; i < piece && c + i < grid.columns; ++i) {
                if (mask[i] != counted) continue;
                powers.x()[points] = x[i];
                powers.y()[points++] = y;
            }
        }
    }
    for (std::uint64_t i = points; i < Powers::rounded(points); ++i) powers.x()[i] = powers.y()[i] = 0.0;
    return points;
}

double off_reach_m(const Site &site, const Antenna &antenna, const Powers &powers, std::uint64_t points) noexcept {
    if (!antenna.has_path) return math::not_a_number;
    const path::Reach reach = path::reach_of(antenna.path);
    for (std::uint64_t i = 0; i < points; ++i) {
        const double direct = direct_m(antenna, powers.x()[i], powers.y()[i], site.height_m);
        if (direct < reach.nearest_m || direct > reach.farthest_m) return direct;
    }
    return math::not_a_number;
}

void take_own(const Site &site, const Powers &powers, std::uint64_t points) noexcept {
    const bool sums = site.combine == Combine::sum;
    alignas(64) double mask[piece], least_far[piece], least_near[piece];
    Points at;
    Losses losses;
    for (std::uint64_t p = 0; p < powers.length(); p += piece) {
        double *far = powers.own_far() + p, *near = powers.own_near() + p;
        site.row->fill(far, 0.0);
        site.row->fill(near, 0.0);
        site.row->fill(least_far, no_way);
        site.row->fill(least_near, no_way);
        load(site, powers, p, at);
        for (std::size_t a = 0; a < site.antenna_count; ++a) {
            const Antenna &antenna = site.antennas[a];
            site.row->fill(mask, counted);
            losses_of(site, antenna, at, mask, losses);
            const double *past_body = far_losses(site, losses);
            if (sums) {
                site.row->add(past_body, antenna.far_loss, far);
                site.row->add(losses.near, antenna.near_loss, near);
            } else {
                site.row->least(past_body, antenna.far_loss, least_far);
                site.row->least(losses.near, antenna.near_loss, least_near);
            }
        }
        if (sums) continue;
        site.row->add(least_far, 1.0, far);
        site.row->add(least_near, 1.0, near);
    }
    fill_up(powers, powers.own_far(), powers.own_near(), points);
}

void take_candidate(const Site &site, const Antenna &antenna, std::uint64_t candidate, const Powers &powers,
                    std::uint64_t points) noexcept {
    alignas(64) double mask[piece];
    Points at;
    Losses losses;
    for (std::uint64_t p = 0; p < powers.length(); p += piece) {
        load(site, powers, p, at);
        site.row->fill(mask, counted);
        losses_of(site, antenna, at, mask, losses);
        double *far = powers.far(candidate) + p, *near = powers.near(candidate) + p;
        site.row->fill(far, 0.0);
        site.row->fill(near, 0.0);
        site.row->add(far_losses(site, losses), antenna.far_loss, far);
        site.row->add(losses.near, antenna.near_loss, near);
    }
    fill_up(powers, powers.far(candidate), powers.near(candidate), points);
}

bool Search::try_out(std::uint32_t first, std::int32_t second, double least, Placement &placement) const noexcept {
    const bool sums = site->combine == Combine::sum, two = second >= 0;
    double nothing[piece];
    site->row->fill(nothing, 0.0);
    const auto other = static_cast<std::uint64_t>(two ? second : 0);
    placement = {static_cast<std::int32_t>(first), second, math::infinity, 0.0};
    for (std::uint64_t p = 0; p < powers->length(); p += piece) {
        const double *third = two ? powers->far(other) + p : nothing;
        const double worst = site->row->weakest(powers->own_far() + p, powers->far(first) + p, third, sums);
        if (worst < placement.worst) placement.worst = worst;
        if (placement.worst <= least) return false;
    }
    for (std::uint64_t p = 0; p < powers->length(); p += piece) {
        const double *third = two ? powers->near(other) + p : nothing;
        const double hottest = site->row->strongest(powers->own_near() + p, powers->near(first) + p, third, sums);
        if (hottest > placement.hottest) placement.hottest = hottest;
    }
    const double headroom = site->window.ceiling_dbm - level_of(placement.hottest, site->near_reference_db);
    return !site->window.has_ceiling || headroom >= least_headroom_db;
}

double level_of(double power, double reference_db) noexcept {
    return power > no_power ? reference_db + math::ten_log10(power) : -math::infinity;
}

} // namespace lvb::map
