// A way through the air: one of several models of the loss, and on top of it edges, walls and floors.
//
// Valid input only: each model gets the fields that it uses, a frequency and distance within its reach, and heights
// with edges and with two rays.
#pragma once

#include "path/diffraction.hpp"
#include "path/indoor.hpp"
#include "path/two_ray.hpp"

namespace lvb::path {

enum class Model : std::int32_t { free_space, two_ray, log_distance, indoor, site_general, radiating_cable };

/// A cable that radiates along its whole length.
struct RadiatingCable {
    double longitudinal_db_per_100m;
    double coupling_db; ///< to a half-wave dipole at coupling_distance_m
    double lateral_m;
    double exponent; ///< of the fall-off across; any at 2 m
};
inline constexpr double coupling_distance_m = 2.0;

struct Path {
    Model model;
    Environment environment;
    bool has_heights; ///< then a distance is along the floor, otherwise that of the antennas
    double transmit_height_m, receive_height_m;
    Ground ground;
    double exponent, reference_distance_m, reference_loss_db; ///< loss 0: that of free space there
    double power_loss_coefficient;
    double standard_deviation_db; ///< of the loss around the host's figures; NaN where not stated
    RadiatingCable cable;
    double obstacles_db; ///< of walls and floors
    Edges edges;
};

struct Loss {
    double db, base_db, diffraction_db, obstacles_db, free_space_db;
    double standard_deviation_db;                                        ///< NaN where none is stated
    double break_point_m, grazing_deg, reflection, reflection_phase_deg; ///< NaN but for two rays
    bool near_field;
};

Reach reach_of(const Path &path) noexcept;

/// Whether the model holds at a frequency and a distance.
bool holds(const Path &path, double frequency_mhz, double distance_m) noexcept;

/// Whether the way begins at a cable's feed and not at an antenna.
inline bool is_fed_by_cable(const Path &path) noexcept { return path.model == Model::radiating_cable; }

/// Length of the direct ray.
double direct_m(const Path &path, double distance_m) noexcept;

/// The whole loss.
double loss_db(const Path &path, double frequency_mhz, double distance_m) noexcept;

/// Standard deviation of the loss from place to place; NaN where none is stated.
double standard_deviation_db(const Path &path) noexcept;

/// Whether the way is shorter than a wavelength.
bool is_near_field(const Path &path, double frequency_mhz, double distance_m) noexcept;

/// The loss and what it consists of.
Loss loss(const Path &path, double frequency_mhz, double distance_m) noexcept;

} // namespace lvb::path
