#include "path/path.hpp"

#include "path/free_space.hpp"
#include "units/dipole.hpp"

namespace lvb::path {
namespace {

// The rays over the floor and what it does to the reflected one.
struct Floor {
    Rays rays;
    Reflection reflection;
};

Floor floor_of(const Path &path, double frequency_mhz, double distance_m) noexcept {
    const Rays both = rays(path.transmit_height_m, path.receive_height_m, distance_m);
    return {both, reflection(path.ground, frequency_mhz, both.sine)};
}

double two_ray_loss_db(const Floor &floor, double frequency_mhz) noexcept {
    return free_space_loss_db(frequency_mhz, floor.rays.direct_m) +
           reflected_ray_loss_db(floor.rays, floor.reflection, frequency_mhz);
}

double referred_loss_db(const Path &path, double frequency_mhz, double direct) noexcept {
    const double reference_m = path.reference_distance_m;
    const double at_reference =
        path.reference_loss_db != 0.0 ? path.reference_loss_db : free_space_loss_db(frequency_mhz, reference_m);
    return log_distance_loss_db(at_reference, path.exponent, direct / reference_m);
}

double radiating_cable_loss_db(const RadiatingCable &cable, double distance_m) noexcept {
    const double across = cable.exponent * math::ten_log10(cable.lateral_m / coupling_distance_m);
    const double along = cable.longitudinal_db_per_100m * (distance_m / 100.0);
    return ((along + cable.coupling_db) + units::half_wave_dipole_dbi) + across;
}

double base_loss_db(const Path &path, double frequency_mhz, double distance_m) noexcept {
    switch (path.model) {
    case Model::two_ray:
        return two_ray_loss_db(floor_of(path, frequency_mhz, distance_m), frequency_mhz);
    case Model::log_distance:
        return referred_loss_db(path, frequency_mhz, direct_m(path, distance_m));
    case Model::indoor:
        return indoor_loss_db(frequency_mhz, direct_m(path, distance_m), path.power_loss_coefficient);
    case Model::site_general:
        return site_general_loss_db(site_of(path.environment), frequency_mhz, direct_m(path, distance_m));
    case Model::radiating_cable:
        return radiating_cable_loss_db(path.cable, distance_m);
    default:
        return free_space_loss_db(frequency_mhz, direct_m(path, distance_m));
    }
}

// What the waves cross between cable or antenna and antenna.
double through_air_m(const Path &path, double distance_m) noexcept {
    return is_fed_by_cable(path) ? path.cable.lateral_m : direct_m(path, distance_m);
}

double edges_loss_db(const Path &path, double frequency_mhz, double distance_m) noexcept {
    return diffraction_loss_db(path.edges, frequency_mhz, path.transmit_height_m, path.receive_height_m, distance_m);
}

double sum_db(double base, double diffraction, double obstacles) noexcept { return (base + diffraction) + obstacles; }

// The loss of two rays, and how the floor reflects.
void tell_two_rays(const Path &path, double frequency_mhz, double distance_m, Loss &out) noexcept {
    const Floor floor = floor_of(path, frequency_mhz, distance_m);
    const Complex r = floor.reflection.coefficient;
    out.base_db = two_ray_loss_db(floor, frequency_mhz);
    out.break_point_m = two_ray_break_point_m(frequency_mhz, path.transmit_height_m, path.receive_height_m);
    out.grazing_deg = math::arctangent_deg(floor.rays.sine, floor.rays.cosine);
    out.reflection = math::sqrt(r.real * r.real + r.imaginary * r.imaginary);
    out.reflection_phase_deg = math::arctangent_deg(r.imaginary, r.real);
}

} // namespace

Reach reach_of(const Path &path) noexcept {
    switch (path.model) {
    case Model::log_distance:
        return {0.0, math::infinity, path.reference_distance_m, math::infinity};
    case Model::indoor:
        return {300.0, 100000.0, 1.0, 1000.0};
    case Model::site_general:
        return site_of(path.environment).reach;
    case Model::radiating_cable:
        return {0.0, math::infinity, 0.0, 10000.0};
    default:
        return {0.0, math::infinity, 0.0, math::infinity};
    }
}

bool holds(const Path &path, double frequency_mhz, double distance_m) noexcept {
    const Reach reach = reach_of(path);
    const double direct = direct_m(path, distance_m);
    return frequency_mhz >= reach.lowest_mhz && frequency_mhz <= reach.highest_mhz && direct >= reach.nearest_m &&
           direct <= reach.farthest_m;
}

double direct_m(const Path &path, double distance_m) noexcept {
    if (!path.has_heights) return distance_m;
    const double down = path.transmit_height_m - path.receive_height_m;
    return math::sqrt(distance_m * distance_m + down * down);
}

double loss_db(const Path &path, double frequency_mhz, double distance_m) noexcept {
    return sum_db(base_loss_db(path, frequency_mhz, distance_m), edges_loss_db(path, frequency_mhz, distance_m),
                  path.obstacles_db);
}

double standard_deviation_db(const Path &path) noexcept {
    return path.model == Model::site_general ? site_of(path.environment).standard_deviation_db
                                             : path.standard_deviation_db;
}

bool is_near_field(const Path &path, double frequency_mhz, double distance_m) noexcept {
    return units::is_near_field(frequency_mhz, through_air_m(path, distance_m));
}

Loss loss(const Path &path, double frequency_mhz, double distance_m) noexcept {
    Loss out;
    out.break_point_m = out.grazing_deg = out.reflection = out.reflection_phase_deg = math::not_a_number;
    if (path.model == Model::two_ray) tell_two_rays(path, frequency_mhz, distance_m, out);
    else out.base_db = base_loss_db(path, frequency_mhz, distance_m);
    out.diffraction_db = edges_loss_db(path, frequency_mhz, distance_m);
    out.obstacles_db = path.obstacles_db;
    out.db = sum_db(out.base_db, out.diffraction_db, out.obstacles_db);
    out.free_space_db = free_space_loss_db(frequency_mhz, through_air_m(path, distance_m));
    out.standard_deviation_db = standard_deviation_db(path);
    out.near_field = is_near_field(path, frequency_mhz, distance_m);
    return out;
}

} // namespace lvb::path
