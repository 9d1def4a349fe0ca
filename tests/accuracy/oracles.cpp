// Nothing here is shared with the library. Where a formula would cancel at 192 bits, another exact form of it stands
// here.
#include "accuracy/oracles.hpp"

#include <cmath>
#include <map>
#include <stdexcept>

namespace accuracy {
namespace {

Real decibels(const Real &ratio) { return 10.0 * log10(ratio); }     // of powers
Real amplitude_db(const Real &ratio) { return 20.0 * log10(ratio); } // of voltages and field strengths
Real ratio(const Real &db) { return ten_to(db / 10.0); }
Real amplitude(const Real &db) { return ten_to(db / 20.0); }
Real remainder_db(const Real &db) { return -decibels(-ten_to_m1(-db / 10.0)); } // -10 log10(1 - 10^(-db/10))

const Real &foot() {
    static const Real metres = Real::decimal("0.3048");
    return metres;
}
/// Metres times MHz; Z0 is 4 pi times a tenth of it, in ohm.
const Real &light() {
    static const Real value = Real::decimal("299.792458");
    return value;
}
/// Power of 1 uV/m across an isotropic antenna at 1 MHz, in dBm: E^2 lambda^2 / (4 pi Z0).
const Real &isotropic_dbm_at_1_mhz() {
    static const Real value =
        decibels(squared(light()) / (squared(4.0 * Real::pi()) * (light() / 10.0)) * Real::decimal("1e-12") * 1000.0);
    return value;
}
/// Loss at 1 m and 1 MHz: 20 log10(4 pi d / lambda).
const Real &loss_at_1_mhz_1_m() {
    static const Real value = amplitude_db(4.0 * Real::pi() / light());
    return value;
}
/// Field of 1 mW at 1 m, in dBuV/m: E^2 / Z0 = p / (4 pi d^2).
const Real &field_at_1_mw_1_m() {
    static const Real value = decibels(light() / 10.0 / 1000.0 * 1e12);
    return value;
}
const Real &zero_celsius() {
    static const Real kelvin = Real::decimal("273.15");
    return kelvin;
}
const Real &boltzmann() {
    static const Real value = Real::decimal("1.380649e-23");
    return value;
}

/// Directivity of the half-wave dipole in dB: 4 / Cin(2 pi), Cin(x) = sum of (-1)^(k+1) x^2k / (2k (2k)!), summed here.
/// Source: the exact integral (Balanis, Antenna Theory, 4.6).
const Real &dipole_dbi() {
    static const Real value = [] {
        const Real square = squared(2.0 * Real::pi());
        Real sum = 0.0, term = 1.0; // x^2k / (2k)!
        for (int k = 1; k < 80; ++k) {
            term = term * square / (2.0 * k * (2.0 * k - 1.0));
            sum = k % 2 ? sum + term / (2.0 * k) : sum - term / (2.0 * k);
        }
        return decibels(4.0 / sum);
    }();
    return value;
}

/// Power between two ellipses: the square of the inner product of their Jones vectors, (cos x, j sin x) each in the
/// frame of its own axes, tan x the ellipticity: cos^2 t cos^2(x1 - x2) + sin^2 t sin^2(x1 + x2).
Real elliptical_fraction(const Real &e1, const Real &e2, const Real &degrees) {
    return (squared(cos_of_degrees(degrees) * (1.0 + e1 * e2)) + squared(sin_of_degrees(degrees) * (e1 + e2))) /
           ((1.0 + squared(e1)) * (1.0 + squared(e2)));
}

/// -10 log10 of a half: what half power lacks.
const Real &half_power_db() {
    static const Real value = decibels(2.0);
    return value;
}

/// Source: ITU-R P.372, Fam = c - d log10(f).
Real external_noise(const char *c, const char *d, double mhz) {
    return Real::decimal(c) - Real::decimal(d) * log10(Real(mhz));
}

/// Third-order products on the r-th of n equal steps, as the literature on satellite transponders writes them (the
/// tests of lib/noise count them one by one).
struct Counts {
    double two_tone, three_tone;
};
Counts products_on_middle(double carriers) {
    const double n = std::floor(carriers), r = std::floor((n + 1.0) / 2.0);
    const auto sign = [](double k) { return std::fmod(k, 2.0) == 0.0 ? 1.0 : -1.0; };
    const double odd = 0.5 * (1.0 - sign(n));
    return {0.5 * (n - 2.0 - odd * sign(r)),
            r / 2.0 * (n - r + 1.0) + 0.25 * ((n - 3.0) * (n - 3.0) - 5.0 - odd * sign(n + r))};
}

const std::map<std::string, Oracle> &oracles() {
    static const std::map<std::string, Oracle> all = {
        // IEC 60027-3: a level is 10 log10 of a power ratio, 20 log10 of an amplitude ratio
        {"lvb_dbm_from_mw", [](const double *x) { return decibels(x[0]); }},
        {"lvb_mw_from_dbm", [](const double *x) { return ratio(x[0]); }},
        {"lvb_dbm_from_w", [](const double *x) { return decibels(Real(x[0]) * 1000.0); }},
        {"lvb_w_from_dbm", [](const double *x) { return ratio(Real(x[0]) - 30.0); }},
        {"lvb_dbw_from_w", [](const double *x) { return decibels(x[0]); }},
        {"lvb_w_from_dbw", [](const double *x) { return ratio(x[0]); }},
        {"lvb_dbw_from_mw", [](const double *x) { return decibels(Real(x[0]) / 1000.0); }},
        {"lvb_mw_from_dbw", [](const double *x) { return ratio(Real(x[0]) + 30.0); }},
        {"lvb_dbm_from_dbw", [](const double *x) { return Real(x[0]) + 30.0; }},
        {"lvb_dbw_from_dbm", [](const double *x) { return Real(x[0]) - 30.0; }},
        {"lvb_mw_from_w", [](const double *x) { return Real(x[0]) * 1000.0; }},
        {"lvb_w_from_mw", [](const double *x) { return Real(x[0]) / 1000.0; }},
        // P = V^2 / R
        {"lvb_dbm_from_volts", [](const double *x) { return decibels(squared(x[0]) / Real(x[1]) * 1000.0); }},
        {"lvb_volts_from_dbm", [](const double *x) { return sqrt(ratio(x[0]) / 1000.0 * Real(x[1])); }},
        {"lvb_dbuv_from_volts", [](const double *x) { return amplitude_db(Real(x[0]) * 1e6); }},
        {"lvb_volts_from_dbuv", [](const double *x) { return amplitude(Real(x[0]) - 120.0); }},
        {"lvb_dbuv_from_dbm", [](const double *x) { return x[0] + decibels(Real(x[1]) * 1e9); }},
        {"lvb_dbm_from_dbuv", [](const double *x) { return x[0] - decibels(Real(x[1]) * 1e9); }},
        {"lvb_dbuv_per_m_from_v_per_m", [](const double *x) { return amplitude_db(Real(x[0]) * 1e6); }},
        {"lvb_v_per_m_from_dbuv_per_m", [](const double *x) { return amplitude(Real(x[0]) - 120.0); }},
        // ITU-R P.525
        {"lvb_isotropic_dbm_from_dbuv_per_m",
         [](const double *x) { return x[0] - amplitude_db(x[1]) + isotropic_dbm_at_1_mhz(); }},
        {"lvb_dbuv_per_m_from_isotropic_dbm",
         [](const double *x) { return x[0] + amplitude_db(x[1]) - isotropic_dbm_at_1_mhz(); }},
        {"lvb_db_from_power_ratio", [](const double *x) { return decibels(x[0]); }},
        {"lvb_power_ratio_from_db", [](const double *x) { return ratio(x[0]); }},
        {"lvb_db_from_amplitude_ratio", [](const double *x) { return amplitude_db(x[0]); }},
        {"lvb_amplitude_ratio_from_db", [](const double *x) { return amplitude(x[0]); }},
        // 85 FR 62698: the foot is 0.3048 m; 12 inches, a third of a yard, a 5280th of a mile
        {"lvb_metres_from_feet", [](const double *x) { return x[0] * foot(); }},
        {"lvb_feet_from_metres", [](const double *x) { return x[0] / foot(); }},
        {"lvb_metres_from_inches", [](const double *x) { return x[0] * foot() / 12.0; }},
        {"lvb_inches_from_metres", [](const double *x) { return x[0] / foot() * 12.0; }},
        {"lvb_metres_from_yards", [](const double *x) { return x[0] * foot() * 3.0; }},
        {"lvb_yards_from_metres", [](const double *x) { return x[0] / foot() / 3.0; }},
        {"lvb_metres_from_miles", [](const double *x) { return x[0] * foot() * 5280.0; }},
        {"lvb_miles_from_metres", [](const double *x) { return x[0] / foot() / 5280.0; }},
        {"lvb_wavelength_m_from_mhz", [](const double *x) { return light() / x[0]; }},
        {"lvb_mhz_from_wavelength_m", [](const double *x) { return light() / x[0]; }},
        // Pozar, 2.3: r = (s - 1)/(s + 1), return loss -20 log10 r, mismatch loss -10 log10(1 - r^2)
        {"lvb_reflection_from_vswr", [](const double *x) { return (Real(x[0]) - 1.0) / (Real(x[0]) + 1.0); }},
        {"lvb_vswr_from_reflection", [](const double *x) { return (1.0 + Real(x[0])) / (1.0 - Real(x[0])); }},
        {"lvb_return_loss_db_from_reflection", [](const double *x) { return -amplitude_db(x[0]); }},
        {"lvb_reflection_from_return_loss_db", [](const double *x) { return amplitude(-Real(x[0])); }},
        {"lvb_mismatch_loss_db_from_reflection", [](const double *x) { return -10.0 * log10_1p(-squared(x[0])); }},
        {"lvb_reflection_from_mismatch_loss_db", [](const double *x) { return sqrt(-ten_to_m1(-Real(x[0]) / 10.0)); }},
        {"lvb_return_loss_db_from_vswr", // (s + 1)/(s - 1) is 1 + 2/(s - 1)
         [](const double *x) { return 20.0 * log10_1p(2.0 / (Real(x[0]) - 1.0)); }},
        {"lvb_vswr_from_return_loss_db", // (1 + r)/(1 - r), the denominator without cancelling
         [](const double *x) { return (1.0 + amplitude(-Real(x[0]))) / -ten_to_m1(-Real(x[0]) / 20.0); }},
        {"lvb_mismatch_loss_db_from_vswr", // (s + 1)^2/(4 s) is 1 + (s - 1)^2/(4 s)
         [](const double *x) { return 10.0 * log10_1p(squared(Real(x[0]) - 1.0) / (4.0 * Real(x[0]))); }},
        {"lvb_vswr_from_mismatch_loss_db", // m = (s + 1)^2/(4 s) solved for s: 2 m - 1 + 2 sqrt(m (m - 1))
         [](const double *x) {
             const Real excess = ten_to_m1(Real(x[0]) / 10.0);
             return 1.0 + 2.0 * (excess + sqrt((1.0 + excess) * excess));
         }},
        {"lvb_mismatch_loss_db_from_return_loss_db", [](const double *x) { return remainder_db(x[0]); }},
        {"lvb_return_loss_db_from_mismatch_loss_db", [](const double *x) { return remainder_db(x[0]); }},
        {"lvb_reflection_from_resistances",
         [](const double *x) { return abs(Real(x[0]) - Real(x[1])) / (Real(x[0]) + Real(x[1])); }},
        {"lvb_mismatch_uncertainty_high_db", [](const double *x) { return 20.0 * log10_1p(Real(x[0]) * Real(x[1])); }},
        {"lvb_mismatch_uncertainty_low_db",
         [](const double *x) { return 20.0 * log10_1p(-(Real(x[0]) * Real(x[1]))); }},
        {"lvb_dbi_from_dbd", [](const double *x) { return x[0] + dipole_dbi(); }},
        {"lvb_dbd_from_dbi", [](const double *x) { return x[0] - dipole_dbi(); }},
        {"lvb_eirp_dbm_from_erp_dbm", [](const double *x) { return x[0] + dipole_dbi(); }},
        {"lvb_erp_dbm_from_eirp_dbm", [](const double *x) { return x[0] - dipole_dbi(); }},
        // IEEE Std 100: T0 = 290 K; SI Brochure: k
        {"lvb_noise_temperature_k_from_noise_figure_db",
         [](const double *x) { return 290.0 * ten_to_m1(Real(x[0]) / 10.0); }},
        {"lvb_noise_figure_db_from_noise_temperature_k",
         [](const double *x) { return 10.0 * log10_1p(Real(x[0]) / 290.0); }},
        {"lvb_thermal_noise_dbm",
         [](const double *x) { return decibels(boltzmann() * Real(x[1]) * Real(x[0]) * 1e6 * 1000.0); }},
        {"lvb_db_per_100m_from_db_per_100ft", [](const double *x) { return x[0] / foot(); }},
        {"lvb_db_per_100ft_from_db_per_100m", [](const double *x) { return x[0] * foot(); }},
        // NIST SP 811, B.8
        {"lvb_degc_from_degf", [](const double *x) { return (Real(x[0]) - 32.0) * 5.0 / 9.0; }},
        {"lvb_degf_from_degc", [](const double *x) { return Real(x[0]) * 9.0 / 5.0 + 32.0; }},
        {"lvb_kelvin_from_degc", [](const double *x) { return x[0] + zero_celsius(); }},
        {"lvb_degc_from_kelvin", [](const double *x) { return x[0] - zero_celsius(); }},
        // ITU-R P.525; IEEE Std 145
        {"lvb_free_space_loss_db",
         [](const double *x) { return amplitude_db(Real(x[1]) * Real(x[0])) + loss_at_1_mhz_1_m(); }},
        {"lvb_free_space_distance_m",
         [](const double *x) { return amplitude(x[1]) * light() / (4.0 * Real::pi() * x[0]); }},
        {"lvb_field_strength_dbuv_per_m",
         [](const double *x) { return x[0] - amplitude_db(x[1]) + field_at_1_mw_1_m(); }},
        {"lvb_eirp_dbm_from_field_strength",
         [](const double *x) { return x[0] + amplitude_db(x[1]) - field_at_1_mw_1_m(); }},
        {"lvb_power_density_w_per_m2",
         [](const double *x) { return ratio(Real(x[0]) - 30.0) / (4.0 * Real::pi() * squared(x[1])); }},
        {"lvb_far_field_distance_m", [](const double *x) { return 2.0 * squared(x[1]) * Real(x[0]) / light(); }},
        // Balanis, 2.12
        {"lvb_linear_polarization_loss_db", [](const double *x) { return -amplitude_db(abs(cos_of_degrees(x[0]))); }},
        {"lvb_linear_to_elliptical_loss_db",
         [](const double *x) { // divided through by R^2
             const Real inverse = ratio(-Real(x[0]));
             return -decibels((squared(cos_of_degrees(x[1])) + inverse * squared(sin_of_degrees(x[1]))) /
                              (1.0 + inverse));
         }},
        {"lvb_elliptical_polarization_loss_db",
         [](const double *x) { return -decibels(elliptical_fraction(x[0], x[1], x[2])); }},
        {"lvb_ellipticity_from_axial_ratio_db", [](const double *x) { return amplitude(-Real(x[0])); }},
        {"lvb_axial_ratio_db_from_ellipticity", [](const double *x) { return -amplitude_db(abs(Real(x[0]))); }},
        {"lvb_cross_polar_discrimination_db", // (R + 1)/(R - 1) is 1 + 2/(R - 1)
         [](const double *x) { return 20.0 * log10_1p(2.0 / ten_to_m1(Real(x[0]) / 20.0)); }},
        // Balanis, 4.6; cos(90 cos t) is sin(90 (1 - |cos t|)), and 1 - |cos t| twice the square of a half angle's sine
        {"lvb_dipole_gain_dbi",
         [](const double *x) {
             const Real half = Real(x[0]) / 2.0;
             const Real sine = squared(sin_of_degrees(half)), cosine = squared(cos_of_degrees(half));
             const Real lack = 2.0 * (sine < cosine ? sine : cosine);
             if (lack.is_zero()) return amplitude_db(0.0); // on the axis
             return amplitude_db(sin_of_degrees(90.0 * lack) / abs(sin_of_degrees(x[0]))) + dipole_dbi();
         }},
        // Kraus, example 2-4.2
        {"lvb_cosine_exponent_from_gain_dbi", // 10^(g/10)/2 - 1
         [](const double *x) { return ten_to_m1((Real(x[0]) - half_power_db()) / 10.0); }},
        {"lvb_gain_dbi_from_cosine_exponent", [](const double *x) { return decibels(2.0 * (Real(x[0]) + 1.0)); }},
        {"lvb_cosine_exponent_from_beam_width_deg", // log cos is half of log(1 - sin^2)
         [](const double *x) {
             return half_power_db() / (-5.0 * log10_1p(-squared(sin_of_degrees(Real(x[0]) / 2.0))));
         }},
        {"lvb_beam_width_deg_from_cosine_exponent", // by the sine, 1 - cos^2
         [](const double *x) {
             return 2.0 * arc_sine_in_degrees(sqrt(-ten_to_m1(-2.0 * half_power_db() / 10.0 / Real(x[0]))));
         }},
        {"lvb_gain_dbi_from_beam_widths", [](const double *x) { return decibels(41253.0 / (Real(x[0]) * Real(x[1]))); }},
        {"lvb_helix_gain_dbi", [](const double *x) { return decibels(12.0 * Real(x[0]) * Real(x[1]) * squared(x[2])); }},
        {"lvb_helix_beam_width_deg", [](const double *x) { return 52.0 / (Real(x[2]) * sqrt(Real(x[0]) * Real(x[1]))); }},
        {"lvb_helix_axial_ratio_db",
         [](const double *x) { return amplitude_db((2.0 * Real(x[0]) + 1.0) / (2.0 * Real(x[0]))); }},
        // ITU-R P.525, with a factor for reflections
        {"lvb_exposure_power_density_w_per_m2",
         [](const double *x) { return x[2] * (ratio(Real(x[0]) - 30.0) / (4.0 * Real::pi() * squared(x[1]))); }},
        {"lvb_exposure_distance_m",
         [](const double *x) { return sqrt(x[2] * ratio(Real(x[0]) - 30.0) / (4.0 * Real::pi() * Real(x[1]))); }},
        // two rays: 4 ht hr / lambda
        {"lvb_two_ray_break_point_m",
         [](const double *x) { return 4.0 * Real(x[1]) * Real(x[2]) * Real(x[0]) / light(); }},
        {"lvb_log_distance_loss_db", [](const double *x) { return x[0] + Real(x[1]) * decibels(x[2]); }},
        // ITU-R P.1238
        {"lvb_indoor_loss_db",
         [](const double *x) { return amplitude_db(x[0]) + Real(x[2]) * log10(Real(x[1])) - 28.0; }},
        // ITU-R P.526
        {"lvb_fresnel_radius_m",
         [](const double *x) {
             return sqrt(light() / x[0] * (Real(x[1]) * Real(x[2]) / (Real(x[1]) + Real(x[2]))));
         }},
        {"lvb_knife_edge_parameter", [](const double *x) { return sqrt(Real(2.0)) * x[0] / x[1]; }},
        {"lvb_knife_edge_loss_db",
         [](const double *x) {
             if (x[0] <= -0.78) return Real(0.0);
             const Real w = x[0] - Real::decimal("0.1");
             return Real::decimal("6.9") + amplitude_db(sqrt(squared(w) + 1.0) + w);
         }},
        // noise and linearity
        {"lvb_third_order_product_dbm", [](const double *x) { return 3.0 * Real(x[0]) - 2.0 * Real(x[1]); }},
        {"lvb_third_order_intercept_dbm", [](const double *x) { return (3.0 * Real(x[0]) - Real(x[1])) / 2.0; }},
        {"lvb_spurious_free_range_db", [](const double *x) { return (Real(x[0]) - Real(x[1])) * 2.0 / 3.0; }},
        {"lvb_sensitivity_dbm",
         [](const double *x) { return decibels(boltzmann() * 290.0 * 1e9 * Real(x[0])) + Real(x[1]) + Real(x[2]); }},
        {"lvb_passive_noise_figure_db",
         [](const double *x) { return 10.0 * log10_1p(ten_to_m1(Real(x[0]) / 10.0) * Real(x[1]) / 290.0); }},
        {"lvb_combiner_loss_db", [](const double *x) { return decibels(x[0]) + Real(x[1]); }},
        {"lvb_power_sum_dbm", [](const double *x) { return decibels(ratio(x[0]) + ratio(x[1])); }},
        {"lvb_city_noise_figure_db", [](const double *x) { return external_noise("76.8", "27.7", x[0]); }},
        {"lvb_residential_noise_figure_db", [](const double *x) { return external_noise("72.5", "27.7", x[0]); }},
        {"lvb_rural_noise_figure_db", [](const double *x) { return external_noise("67.2", "27.7", x[0]); }},
        {"lvb_quiet_rural_noise_figure_db", [](const double *x) { return external_noise("53.6", "28.6", x[0]); }},
        {"lvb_business_noise_figure_db", [](const double *x) { return external_noise("44.3", "12.3", x[0]); }},
        {"lvb_galactic_noise_figure_db", [](const double *x) { return external_noise("52", "23", x[0]); }},
        {"lvb_two_tone_product_count", [](const double *x) { return Real(products_on_middle(x[0]).two_tone); }},
        {"lvb_three_tone_product_count", [](const double *x) { return Real(products_on_middle(x[0]).three_tone); }},
        {"lvb_middle_channel_products_dbm",
         [](const double *x) {
             const Counts counts = products_on_middle(x[2]);
             return 3.0 * Real(x[0]) - 2.0 * Real(x[1]) + decibels(counts.two_tone + 4.0 * counts.three_tone);
         }},
    };
    return all;
}

} // namespace

Oracle oracle_of(const std::string &function) {
    for (const auto *part : {&oracles(), &fading_oracles()})
        if (const auto found = part->find(function); found != part->end()) return found->second;
    throw std::runtime_error(function + " has no oracle");
}

std::size_t oracle_count() { return oracles().size() + fading_oracles().size(); }

} // namespace accuracy
