// The conversions written anew, in long double, from the sources that the header names. Nothing here is shared with the
// library; where a formula would cancel, another exact form of it is used and said.
#pragma once

#include "units/long_math.hpp"

namespace proof::units_oracle {

// IEC 60027-3: a level is 10 log10 of a power ratio, 20 log10 of an amplitude ratio.
inline const std::vector<Oracle> rows = {
    {"lvb_dbm_from_mw", [](const Reals &x) { return 10.0L * log10l(x[0]); }},
    {"lvb_mw_from_dbm", [](const Reals &x) { return ten_to(x[0] / 10.0L); }},
    {"lvb_dbm_from_w", [](const Reals &x) { return 10.0L * log10l(x[0] / 1e-3L); }},
    {"lvb_w_from_dbm", [](const Reals &x) { return ten_to((x[0] - 30.0L) / 10.0L); }},
    {"lvb_dbw_from_w", [](const Reals &x) { return 10.0L * log10l(x[0]); }},
    {"lvb_w_from_dbw", [](const Reals &x) { return ten_to(x[0] / 10.0L); }},
    {"lvb_dbw_from_mw", [](const Reals &x) { return 10.0L * log10l(x[0] * 1e-3L); }},
    {"lvb_mw_from_dbw", [](const Reals &x) { return ten_to((x[0] + 30.0L) / 10.0L); }},
    {"lvb_dbm_from_dbw", [](const Reals &x) { return x[0] + 30.0L; }},
    {"lvb_dbw_from_dbm", [](const Reals &x) { return x[0] - 30.0L; }},
    {"lvb_mw_from_w", [](const Reals &x) { return x[0] * 1000.0L; }},
    {"lvb_w_from_mw", [](const Reals &x) { return x[0] / 1000.0L; }},
    // P = V^2 / R
    {"lvb_dbm_from_volts", [](const Reals &x) { return 10.0L * log10l(x[0] * x[0] / x[1] / 1e-3L); }},
    {"lvb_volts_from_dbm", [](const Reals &x) { return sqrtl(1e-3L * ten_to(x[0] / 10.0L) * x[1]); }},
    {"lvb_dbuv_from_volts", [](const Reals &x) { return 20.0L * log10l(x[0] / 1e-6L); }},
    {"lvb_volts_from_dbuv", [](const Reals &x) { return ten_to((x[0] - 120.0L) / 20.0L); }},
    {"lvb_dbuv_from_dbm", [](const Reals &x) { return x[0] + 10.0L * log10l(x[1] * 1e9L); }},
    {"lvb_dbm_from_dbuv", [](const Reals &x) { return x[0] - 10.0L * log10l(x[1] * 1e9L); }},
    {"lvb_dbuv_per_m_from_v_per_m", [](const Reals &x) { return 20.0L * log10l(x[0] / 1e-6L); }},
    {"lvb_v_per_m_from_dbuv_per_m", [](const Reals &x) { return ten_to((x[0] - 120.0L) / 20.0L); }},
    // ITU-R P.525: P = E^2 / Z0 times lambda^2 / (4 pi), Z0 = 4 pi 29.9792458 ohm; E in V/m, P in W
    {"lvb_isotropic_dbm_from_dbuv_per_m",
     [](const Reals &x) {
         return x[0] - 120.0L + 10.0L * log10l(power2(light / x[1]) / (power2(4.0L * pi) * 29.9792458L)) + 30.0L;
     }},
    {"lvb_dbuv_per_m_from_isotropic_dbm",
     [](const Reals &x) {
         return x[0] - 30.0L + 10.0L * log10l(power2(4.0L * pi) * 29.9792458L * power2(x[1] / light)) + 120.0L;
     }},
    {"lvb_db_from_power_ratio", [](const Reals &x) { return 10.0L * log10l(x[0]); }},
    {"lvb_power_ratio_from_db", [](const Reals &x) { return ten_to(x[0] / 10.0L); }},
    {"lvb_db_from_amplitude_ratio", [](const Reals &x) { return 20.0L * log10l(x[0]); }},
    {"lvb_amplitude_ratio_from_db", [](const Reals &x) { return ten_to(x[0] / 20.0L); }},
    // 85 FR 62698: the foot is 0.3048 m; 12 inches, a third of a yard, a 5280th of a mile
    {"lvb_metres_from_feet", [](const Reals &x) { return x[0] * 3048.0L / 10000.0L; }},
    {"lvb_feet_from_metres", [](const Reals &x) { return x[0] * 10000.0L / 3048.0L; }},
    {"lvb_metres_from_inches", [](const Reals &x) { return x[0] * 3048.0L / 120000.0L; }},
    {"lvb_inches_from_metres", [](const Reals &x) { return x[0] * 120000.0L / 3048.0L; }},
    {"lvb_metres_from_yards", [](const Reals &x) { return x[0] * 3.0L * 3048.0L / 10000.0L; }},
    {"lvb_yards_from_metres", [](const Reals &x) { return x[0] * 10000.0L / 3048.0L / 3.0L; }},
    {"lvb_metres_from_miles", [](const Reals &x) { return x[0] * 5280.0L * 3048.0L / 10000.0L; }},
    {"lvb_miles_from_metres", [](const Reals &x) { return x[0] * 10000.0L / 3048.0L / 5280.0L; }},
    {"lvb_wavelength_m_from_mhz", [](const Reals &x) { return 299792458.0L / (x[0] * 1e6L); }},
    {"lvb_mhz_from_wavelength_m", [](const Reals &x) { return 299792458.0L / x[0] / 1e6L; }},
    {"lvb_db_per_100m_from_db_per_100ft", [](const Reals &x) { return x[0] * 10000.0L / 3048.0L; }},
    {"lvb_db_per_100ft_from_db_per_100m", [](const Reals &x) { return x[0] * 3048.0L / 10000.0L; }},
    // NIST SP 811, B.8
    {"lvb_degc_from_degf", [](const Reals &x) { return (x[0] - 32.0L) * 5.0L / 9.0L; }},
    {"lvb_degf_from_degc", [](const Reals &x) { return x[0] * 9.0L / 5.0L + 32.0L; }},
    {"lvb_kelvin_from_degc", [](const Reals &x) { return x[0] + 273.15L; }},
    {"lvb_degc_from_kelvin", [](const Reals &x) { return x[0] - 273.15L; }},
    // Pozar, 2.3: r = (s - 1)/(s + 1), return loss -20 log10 r, mismatch loss -10 log10(1 - r^2)
    {"lvb_reflection_from_vswr", [](const Reals &x) { return (x[0] - 1.0L) / (x[0] + 1.0L); }},
    {"lvb_vswr_from_reflection", [](const Reals &x) { return (1.0L + x[0]) / (1.0L - x[0]); }},
    {"lvb_return_loss_db_from_reflection", [](const Reals &x) { return -20.0L * log10l(x[0]); }},
    {"lvb_reflection_from_return_loss_db", [](const Reals &x) { return ten_to(-x[0] / 20.0L); }},
    {"lvb_mismatch_loss_db_from_reflection", [](const Reals &x) { return -10.0L * log10l(fmal(-x[0], x[0], 1.0L)); }},
    {"lvb_reflection_from_mismatch_loss_db",
     [](const Reals &x) { return sqrtl(-expm1l(-x[0] * ln10 / 10.0L)); }}, // 1 - 10^(-x/10) without cancelling
    {"lvb_return_loss_db_from_vswr", [](const Reals &x) { return 20.0L * log10l((x[0] + 1.0L) / (x[0] - 1.0L)); }},
    {"lvb_vswr_from_return_loss_db", // (1 + r)/(1 - r) with r = e^-2u is the hyperbolic cotangent of u
     [](const Reals &x) { return 1.0L / tanhl(x[0] * ln10 / 40.0L); }},
    {"lvb_mismatch_loss_db_from_vswr",
     [](const Reals &x) { return 10.0L * log10l(power2(x[0] + 1.0L) / (4.0L * x[0])); }},
    {"lvb_vswr_from_mismatch_loss_db", // m = (s + 1)^2 / (4 s) solved for s: 2 m - 1 + 2 sqrt(m (m - 1))
     [](const Reals &x) {
         const long double excess = expm1l(x[0] * ln10 / 10.0L);
         return 1.0L + 2.0L * (excess + sqrtl((1.0L + excess) * excess));
     }},
    {"lvb_mismatch_loss_db_from_return_loss_db",
     [](const Reals &x) { return -10.0L * log10l(-expm1l(-x[0] * ln10 / 10.0L)); }},
    {"lvb_return_loss_db_from_mismatch_loss_db",
     [](const Reals &x) { return -10.0L * log10l(-expm1l(-x[0] * ln10 / 10.0L)); }},
    {"lvb_reflection_from_resistances", [](const Reals &x) { return fabsl(x[0] - x[1]) / (x[0] + x[1]); }},
    // two mismatches facing each other: 20 log10 |1 +- r1 r2|
    {"lvb_mismatch_uncertainty_high_db", [](const Reals &x) { return 20.0L * log10l(fmal(x[0], x[1], 1.0L)); }},
    {"lvb_mismatch_uncertainty_low_db", [](const Reals &x) { return 20.0L * log10l(fmal(-x[0], x[1], 1.0L)); }},
};

} // namespace proof::units_oracle
