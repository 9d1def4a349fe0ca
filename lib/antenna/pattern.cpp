#include "antenna/pattern.hpp"

#include "antenna/cosine.hpp"
#include "antenna/dipole.hpp"
#include "antenna/helix.hpp"
#include "math/search.hpp"

namespace lvb::antenna {
namespace {

double larger(double a, double b) noexcept { return a > b ? a : b; }

double largest(const Cut &cut) noexcept {
    if (cut.rows == 0) return 0.0;
    double most = cut.gain_db[0];
    for (std::size_t i = 1; i < cut.rows; ++i) most = larger(most, cut.gain_db[i]);
    return most;
}

// Without the floor.
double free_gain_dbi(const Pattern &pattern, const Direction &direction) noexcept {
    switch (pattern.shape) {
    case Shape::half_wave_dipole:
        return dipole_gain_dbi(90.0 - math::abs(direction.elevation_deg));
    case Shape::cosine:
        return pattern.gain_dbi + cosine_pattern_db(pattern.exponent, direction.azimuth_deg, direction.elevation_deg);
    case Shape::cuts: {
        const Cut &a = pattern.azimuth, &e = pattern.elevation;
        const double around =
            a.rows == 0 ? 0.0 : math::interpolated_on_circle(a.angle_deg, a.gain_db, a.rows, direction.azimuth_deg);
        const double up =
            e.rows == 0 ? 0.0 : math::interpolated(e.angle_deg, e.gain_db, e.rows, direction.elevation_deg);
        return pattern.gain_dbi + (around + up);
    }
    default:
        return pattern.gain_dbi;
    }
}

} // namespace

double gain_dbi(const Pattern &pattern, const Direction &direction) noexcept {
    return larger(free_gain_dbi(pattern, direction), pattern.floor_dbi);
}

double maximum_dbi(const Pattern &pattern) noexcept {
    switch (pattern.shape) {
    case Shape::half_wave_dipole:
        return half_wave_dipole_dbi;
    case Shape::cuts:
        return larger(pattern.gain_dbi + (largest(pattern.azimuth) + largest(pattern.elevation)), pattern.floor_dbi);
    default:
        return pattern.gain_dbi;
    }
}

Pattern helix(double turns, double spacing_wavelengths, double circumference_wavelengths) noexcept {
    Pattern pattern;
    pattern.shape = Shape::cosine;
    pattern.circular = true;
    pattern.extrapolated = !is_measured_pitch(spacing_wavelengths, circumference_wavelengths);
    pattern.gain_dbi = helix_gain_dbi(turns, spacing_wavelengths, circumference_wavelengths);
    pattern.exponent = cosine_exponent_from_beam_width_deg(
        helix_beam_width_deg(turns, spacing_wavelengths, circumference_wavelengths));
    return pattern;
}

} // namespace lvb::antenna
