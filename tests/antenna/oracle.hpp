// Dipole gain and polarization written anew, in long double, from the sources that the header names.
#pragma once

#include "units/long_math.hpp"

namespace proof::antenna_oracle {

/// Directivity of the half-wave dipole in dB: 4 / Cin(2 pi), Cin(x) = sum of (-1)^(k+1) x^2k / (2k (2k)!), summed here.
/// Source: the exact integral (Balanis, Antenna Theory, 4.6); regulations print 2.15.
inline long double dipole_dbi() {
    const long double square = power2(2.0L * pi);
    long double sum = 0.0L;
    long double term = 1.0L; // x^2k / (2k)!
    for (int k = 1; k < 40; ++k) {
        term *= square / (static_cast<long double>(2 * k) * static_cast<long double>(2 * k - 1));
        sum += (k % 2 ? term : -term) / static_cast<long double>(2 * k);
    }
    return 10.0L * log10l(4.0L / sum);
}

/// Fraction of power between two ellipses as the square of the inner product of their Jones vectors,
/// (cos x, j sin x) each in the frame of its own axes, tan x the ellipticity, the frames turned by the angle:
/// cos^2 t cos^2(x1 - x2) + sin^2 t sin^2(x1 + x2).
inline long double elliptical_fraction(long double e1, long double e2, long double degrees) {
    const long double length = (1.0L + e1 * e1) * (1.0L + e2 * e2);
    return (power2(cos_of_degrees(degrees) * fmal(e1, e2, 1.0L)) + power2(sin_of_degrees(degrees) * (e1 + e2))) /
           length;
}

inline const std::vector<Oracle> rows = {
    {"lvb_dbi_from_dbd", [](const Reals &x) { return x[0] + dipole_dbi(); }},
    {"lvb_dbd_from_dbi", [](const Reals &x) { return x[0] - dipole_dbi(); }},
    {"lvb_eirp_dbm_from_erp_dbm", [](const Reals &x) { return x[0] + dipole_dbi(); }},
    {"lvb_erp_dbm_from_eirp_dbm", [](const Reals &x) { return x[0] - dipole_dbi(); }},
    // Balanis, 2.12
    {"lvb_linear_polarization_loss_db", [](const Reals &x) { return -20.0L * log10l(fabsl(cos_of_degrees(x[0]))); }},
    {"lvb_linear_to_elliptical_loss_db",
     [](const Reals &x) { // (R^2 cos^2 + sin^2)/(R^2 + 1), divided through by R^2
         const long double inverse = ten_to(-x[0] / 10.0L);
         return -10.0L *
                log10l((power2(cos_of_degrees(x[1])) + inverse * power2(sin_of_degrees(x[1]))) / (1.0L + inverse));
     }},
    {"lvb_elliptical_polarization_loss_db",
     [](const Reals &x) { return -10.0L * log10l(elliptical_fraction(x[0], x[1], x[2])); }},
    {"lvb_ellipticity_from_axial_ratio_db", [](const Reals &x) { return ten_to(-x[0] / 20.0L); }},
    {"lvb_axial_ratio_db_from_ellipticity", [](const Reals &x) { return -20.0L * log10l(fabsl(x[0])); }},
    {"lvb_cross_polar_discrimination_db", // (R + 1)/(R - 1) is the hyperbolic cotangent of half ln R
     [](const Reals &x) { return -20.0L * log10l(tanhl(x[0] * ln10 / 40.0L)); }},
};

} // namespace proof::antenna_oracle
