#include "antenna/pointing.hpp"

#include "antenna/polarization.hpp"
#include "math/elementary.hpp"

namespace lvb::antenna {
namespace {

// A part of the power that is rounding and no power.
constexpr double nothing = 1e-28;

double dot(const Vector &a, const Vector &b) noexcept { return a.x * b.x + a.y * b.y + a.z * b.z; }
Vector combined(double s, const Vector &a, double t, const Vector &b) noexcept {
    return {s * a.x + t * b.x, s * a.y + t * b.y, s * a.z + t * b.z};
}
Vector across(const Vector &line, const Vector &a) noexcept {
    return combined(1.0, a, -(dot(a, line) / dot(line, line)), line);
}

} // namespace

double length(const Vector &a) noexcept { return math::sqrt(dot(a, a)); }

Axes turned(const Turn &turn) noexcept {
    const double sa = math::sin_deg(turn.azimuth_deg), ca = math::cos_deg(turn.azimuth_deg);
    const double st = math::sin_deg(turn.tilt_deg), ct = math::cos_deg(turn.tilt_deg);
    const double sr = math::sin_deg(turn.roll_deg), cr = math::cos_deg(turn.roll_deg);
    const double sp = math::sin_deg(turn.polarization_deg), cp = math::cos_deg(turn.polarization_deg);
    const Vector level_right{ca, -sa, 0.0};
    const Vector tilted_up{-(sa * st), -(ca * st), ct};
    Axes axes{};
    axes.boresight = {sa * ct, ca * ct, st};
    axes.up = combined(cr, tilted_up, sr, level_right);
    axes.right = combined(cr, level_right, -sr, tilted_up);
    axes.element = combined(cp, axes.up, sp, axes.right);
    axes.cross_element = combined(turn.ellipticity * cp, axes.right, -(turn.ellipticity * sp), axes.up);
    return axes;
}

Axes carried(const Axes &axes, double azimuth_deg) noexcept {
    const double s = math::sin_deg(azimuth_deg), c = math::cos_deg(azimuth_deg);
    const auto turn = [s, c](const Vector &a) { return Vector{c * a.x + s * a.y, c * a.y - s * a.x, a.z}; };
    return {turn(axes.boresight), turn(axes.right), turn(axes.up), turn(axes.element), turn(axes.cross_element)};
}

Direction direction_of(const Axes &axes, const Vector &line) noexcept {
    const double ahead = dot(line, axes.boresight), aside = dot(line, axes.right), above = dot(line, axes.up);
    return {math::arctangent_deg(aside, ahead), math::arctangent_deg(above, math::sqrt(ahead * ahead + aside * aside))};
}

double polarization_fraction(const Axes &one, const Axes &other, const Vector &line) noexcept {
    // Fields across the line of sight, as complex amplitudes; that of an antenna that receives is the one it would
    // radiate.
    const Vector a = across(line, one.element), a_later = across(line, one.cross_element);
    const Vector b = across(line, other.element), b_later = across(line, other.cross_element);
    const double a_power = dot(a, a) + dot(a_later, a_later), b_power = dot(b, b) + dot(b_later, b_later);
    if (a_power < nothing || b_power < nothing) return 0.0;
    const double in_phase = dot(a, b) - dot(a_later, b_later);
    const double in_quadrature = dot(a, b_later) + dot(a_later, b);
    const double fraction = (in_phase * in_phase + in_quadrature * in_quadrature) / (a_power * b_power);
    return fraction < nothing ? 0.0 : fraction;
}

double polarization_loss_db(const Axes &one, const Axes &other, const Vector &line) noexcept {
    return loss_db_of_fraction(polarization_fraction(one, other, line));
}

} // namespace lvb::antenna
