// Antennas in their places, and how they see a point or each other. A map places an antenna once and asks for many
// points.
#pragma once

#include "antenna/pattern.hpp"

namespace lvb::antenna {

/// x to the right, y ahead, z up.
struct Vector {
    double x, y, z;
};
inline Vector operator-(const Vector &a, const Vector &b) noexcept { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
double length(const Vector &a) noexcept;

/// How an antenna is turned: azimuth of its boresight clockwise from y, tilt upwards, roll around the boresight
/// clockwise seen from behind; the polarization axis by its angle from the antenna's own up, turning as the roll does.
struct Turn {
    double azimuth_deg, tilt_deg, roll_deg, polarization_deg, ellipticity;
};

/// An antenna's own axes, and the two crossed elements whose polarization it has; the second is the weaker one, a
/// quarter period later.
struct Axes {
    Vector boresight, right, up, element, cross_element;
};
Axes turned(const Turn &turn) noexcept;

/// Axes that turn with what carries the antenna, clockwise seen from above.
Axes carried(const Axes &axes, double azimuth_deg) noexcept;

/// Direction of a line of sight of any length.
Direction direction_of(const Axes &axes, const Vector &line) noexcept;

/// What two antennas on one line of sight receive of each other, 0 to 1 (and a rounding more).
double polarization_fraction(const Axes &one, const Axes &other, const Vector &line) noexcept;

/// The same in decibels. +infinity where nothing is received.
double polarization_loss_db(const Axes &one, const Axes &other, const Vector &line) noexcept;

} // namespace lvb::antenna
