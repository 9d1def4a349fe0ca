// A direct ray and one that the floor reflects. Source: ITU-R P.1411 (break point), P.2040 (reflection coefficients and
// their sign) and P.527 (the ground's permittivity); sum of the rays: Rappaport, Wireless Communications, 4.6.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::path {

inline double two_ray_break_point_m(double frequency_mhz, double transmit_height_m, double receive_height_m) noexcept {
    if (math::is_middling(frequency_mhz) && math::is_middling(transmit_height_m) && math::is_middling(receive_height_m))
        return 4.0 * transmit_height_m * (receive_height_m / units::light_m_mhz) * frequency_mhz;
    constexpr double factor_root = 0x1.d92107d4bd40dp-4; // sqrt(4 / 299.792458)
    const double root =
        math::sqrt(transmit_height_m) * math::sqrt(receive_height_m) * math::sqrt(frequency_mhz) * factor_root;
    return root * root;
}

struct Complex {
    double real, imaginary;
};

struct Ground {
    double relative_permittivity;
    double conductivity_s_per_m;
    bool horizontal; ///< the electric field lies in the ground's plane; otherwise in the plane of incidence
};

/// The rays over a floor distance: their lengths, the excess of the reflected one, sine and cosine of its grazing
/// angle.
struct Rays {
    double direct_m, reflected_m, excess_m, sine, cosine;
};
inline Rays rays(double transmit_height_m, double receive_height_m, double distance_m) noexcept {
    const double across = distance_m * distance_m;
    const double down = transmit_height_m - receive_height_m;
    const double up = transmit_height_m + receive_height_m;
    const double direct = math::sqrt(across + down * down);
    const double reflected = math::sqrt(across + up * up);
    // (r^2 - d^2) / (r + d): no difference of near numbers
    const double excess = 4.0 * transmit_height_m * receive_height_m / (reflected + direct);
    return {direct, reflected, excess, up / reflected, distance_m / reflected};
}

/// The reflection coefficient and 1 plus it, each to its own full accuracy.
struct Reflection {
    Complex coefficient, one_plus;
};
Reflection reflection(const Ground &ground, double frequency_mhz, double sine) noexcept;

/// What the reflected ray adds to the loss of the direct one; negative where it helps.
double reflected_ray_loss_db(const Rays &rays, const Reflection &reflection, double frequency_mhz) noexcept;

} // namespace lvb::path
