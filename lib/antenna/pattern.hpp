// An antenna's gain over direction.
#pragma once

#include "math/constants.hpp"

#include <cstddef>

namespace lvb::antenna {

/// As an antenna sees it: azimuth from the boresight, positive clockwise seen from above; elevation upwards.
struct Direction {
    double azimuth_deg, elevation_deg;
};

/// Gains relative to the pattern's own over rising angles; no rows: 0 dB everywhere.
struct Cut {
    const double *angle_deg;
    const double *gain_db;
    std::size_t rows;
};

enum class Shape { even, half_wave_dipole, cosine, cuts };

struct Pattern {
    Shape shape = Shape::even;
    double gain_dbi = 0.0;
    double exponent = 0.0;              ///< cosine
    bool extrapolated = false;          ///< a helix of another pitch than its formulas were measured for
    bool circular = false;              ///< radiates an ellipse next to a circle, of a sense that is not known here
    double floor_dbi = -math::infinity; ///< no direction has less
    Cut azimuth{}, elevation{};         ///< cuts; the azimuths close to a circle, the elevations reach from -90 to 90
};

double gain_dbi(const Pattern &pattern, const Direction &direction) noexcept;

/// In the direction of maximum radiation.
double maximum_dbi(const Pattern &pattern) noexcept;

/// The axial-mode helix: its estimated gain, and the cosine that has its estimated beam width.
Pattern helix(double turns, double spacing_wavelengths, double circumference_wavelengths) noexcept;

} // namespace lvb::antenna
