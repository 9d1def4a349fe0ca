#include "units.hpp"

#include <levelbook/levelbook.h>

namespace desk {

const std::vector<Unit> &units() {
    static const std::vector<Unit> all = {
        {"mW", "mW", 1.0},
        {"uW", "mW", 1e-3},
        {"nW", "mW", 1e-6},
        {"pW", "mW", 1e-9},
        {"W", "W", 1.0},
        {"kW", "W", 1e3},
        {"dBm", "dBm", 1.0},
        {"dBW", "dBW", 1.0},
        {"V", "V", 1.0},
        {"mV", "V", 1e-3},
        {"uV", "V", 1e-6},
        {"dBuV", "dBuV", 1.0},
        {"V/m", "V/m", 1.0},
        {"mV/m", "V/m", 1e-3},
        {"uV/m", "V/m", 1e-6},
        {"dBuV/m", "dBuV/m", 1.0},
        {"power_ratio", "power_ratio", 1.0},
        {"amplitude_ratio", "amplitude_ratio", 1.0},
        {"dB", "dB", 1.0},
        {"m", "m", 1.0},
        {"cm", "m", 1e-2},
        {"mm", "m", 1e-3},
        {"km", "m", 1e3},
        {"ft", "ft", 1.0},
        {"in", "in", 1.0},
        {"yd", "yd", 1.0},
        {"mi", "mi", 1.0},
        {"MHz", "MHz", 1.0},
        {"Hz", "MHz", 1e-6},
        {"kHz", "MHz", 1e-3},
        {"GHz", "MHz", 1e3},
        {"vswr", "vswr", 1.0},
        {"reflection", "reflection", 1.0},
        {"dB_return", "dB_return", 1.0},
        {"dB_mismatch", "dB_mismatch", 1.0},
        {"ohm", "ohm", 1.0},
        {"dB_mismatch_high", "dB_mismatch_high", 1.0},
        {"dB_mismatch_low", "dB_mismatch_low", 1.0},
        {"dBi", "dBi", 1.0},
        {"dBd", "dBd", 1.0},
        {"dBm_eirp", "dBm_eirp", 1.0},
        {"dBm_erp", "dBm_erp", 1.0},
        {"mW_eirp", "mW_eirp", 1.0},
        {"W_eirp", "mW_eirp", 1e3},
        {"mW_erp", "mW_erp", 1.0},
        {"W_erp", "mW_erp", 1e3},
        {"dB_noise_figure", "dB_noise_figure", 1.0},
        {"K_noise", "K_noise", 1.0},
        {"dBm_noise", "dBm_noise", 1.0},
        {"dB/100m", "dB/100m", 1.0},
        {"dB/100ft", "dB/100ft", 1.0},
        {"degC", "degC", 1.0},
        {"degF", "degF", 1.0},
        {"K", "K", 1.0},
        {"dB_free_space", "dB_free_space", 1.0},
        {"m_far_field", "m_far_field", 1.0},
        {"W/m2", "W/m2", 1.0},
        {"mW/cm2", "W/m2", 10.0},
        {"deg", "deg", 1.0},
        {"dB_linear", "dB_linear", 1.0},
        {"dB_elliptical", "dB_elliptical", 1.0},
        {"dB_axial", "dB_axial", 1.0},
        {"ellipticity", "ellipticity", 1.0},
        {"dB_cross_polar", "dB_cross_polar", 1.0},
        {"cosine_exponent", "cosine_exponent", 1.0},
        {"deg_beam_width", "deg_beam_width", 1.0},
    };
    return all;
}

namespace {

using In = const Inputs &;
template <double (*function)(double)>
double one(In in) {
    return function(in.value);
}
template <double (*function)(double, double)>
double at_mhz(In in) {
    return function(in.value, in.mhz);
}
template <double (*function)(double, double)>
double mhz_then(In in) {
    return function(in.mhz, in.value);
}
template <double (*function)(double, double)>
double at_ohm(In in) {
    return function(in.value, in.ohm);
}
template <double (*function)(double, double)>
double at_metres(In in) {
    return function(in.value, in.metres);
}
template <double (*function)(double, double)>
double at_kelvin(In in) {
    return function(in.value, in.kelvin);
}
template <double (*function)(double, double)>
double at_angle(In in) {
    return function(in.value, in.angle_deg);
}
template <double (*function)(double, double)>
double with(In in) {
    return function(in.value, in.with);
}
double elliptical_pair(In in) { return lvb_elliptical_polarization_loss_db(in.value, in.with, in.angle_deg); }

} // namespace

const std::vector<Rule> &rules() {
    constexpr bool same = true;
    constexpr bool other = false;
    static const std::vector<Rule> all = {
        {"mW", "dBm", same, 0, one<lvb_dbm_from_mw>, "10 log10(mW)"},
        {"dBm", "mW", same, 0, one<lvb_mw_from_dbm>, "10^(dBm / 10)"},
        {"W", "dBm", same, 0, one<lvb_dbm_from_w>, "10 log10(W) + 30"},
        {"dBm", "W", same, 0, one<lvb_w_from_dbm>, "10^((dBm - 30) / 10)"},
        {"W", "dBW", same, 0, one<lvb_dbw_from_w>, "10 log10(W)"},
        {"dBW", "W", same, 0, one<lvb_w_from_dbw>, "10^(dBW / 10)"},
        {"mW", "dBW", same, 0, one<lvb_dbw_from_mw>, "10 log10(mW) - 30"},
        {"dBW", "mW", same, 0, one<lvb_mw_from_dbw>, "10^((dBW + 30) / 10)"},
        {"dBW", "dBm", same, 0, one<lvb_dbm_from_dbw>, "dBW + 30"},
        {"dBm", "dBW", same, 0, one<lvb_dbw_from_dbm>, "dBm - 30"},
        {"W", "mW", same, 0, one<lvb_mw_from_w>, "1000 W"},
        {"mW", "W", same, 0, one<lvb_w_from_mw>, "mW / 1000"},
        {"V", "dBm", same, needs_ohm, at_ohm<lvb_dbm_from_volts>, "20 log10(V) - 10 log10(ohm) + 30, r.m.s."},
        {"dBm", "V", same, needs_ohm, at_ohm<lvb_volts_from_dbm>, "sqrt(ohm) 10^((dBm - 30) / 20), r.m.s."},
        {"V", "dBuV", same, 0, one<lvb_dbuv_from_volts>, "20 log10(V) + 120"},
        {"dBuV", "V", same, 0, one<lvb_volts_from_dbuv>, "10^((dBuV - 120) / 20)"},
        {"dBm", "dBuV", same, needs_ohm, at_ohm<lvb_dbuv_from_dbm>, "dBm + 10 log10(ohm) + 90"},
        {"dBuV", "dBm", same, needs_ohm, at_ohm<lvb_dbm_from_dbuv>, "dBuV - 10 log10(ohm) - 90"},
        {"V/m", "dBuV/m", same, 0, one<lvb_dbuv_per_m_from_v_per_m>, "20 log10(V/m) + 120"},
        {"dBuV/m", "V/m", same, 0, one<lvb_v_per_m_from_dbuv_per_m>, "10^((dBuV/m - 120) / 20)"},
        {"dBuV/m", "dBm", other, needs_mhz, at_mhz<lvb_isotropic_dbm_from_dbuv_per_m>,
         "dBuV/m - 20 log10(MHz) - 77.216, received by an isotropic antenna"},
        {"dBm", "dBuV/m", other, needs_mhz, at_mhz<lvb_dbuv_per_m_from_isotropic_dbm>,
         "dBm + 20 log10(MHz) + 77.216, received by an isotropic antenna"},
        {"power_ratio", "dB", same, 0, one<lvb_db_from_power_ratio>, "10 log10(ratio of powers)"},
        {"dB", "power_ratio", same, 0, one<lvb_power_ratio_from_db>, "10^(dB / 10)"},
        {"amplitude_ratio", "dB", same, 0, one<lvb_db_from_amplitude_ratio>, "20 log10(ratio of amplitudes)"},
        {"dB", "amplitude_ratio", same, 0, one<lvb_amplitude_ratio_from_db>, "10^(dB / 20)"},
        {"ft", "m", same, 0, one<lvb_metres_from_feet>, "0.3048 ft"},
        {"m", "ft", same, 0, one<lvb_feet_from_metres>, "m / 0.3048"},
        {"in", "m", same, 0, one<lvb_metres_from_inches>, "0.0254 in"},
        {"m", "in", same, 0, one<lvb_inches_from_metres>, "m / 0.0254"},
        {"yd", "m", same, 0, one<lvb_metres_from_yards>, "0.9144 yd"},
        {"m", "yd", same, 0, one<lvb_yards_from_metres>, "m / 0.9144"},
        {"mi", "m", same, 0, one<lvb_metres_from_miles>, "1609.344 mi"},
        {"m", "mi", same, 0, one<lvb_miles_from_metres>, "m / 1609.344"},
        {"MHz", "m", other, 0, one<lvb_wavelength_m_from_mhz>, "wavelength 299.792458 / MHz"},
        {"m", "MHz", other, 0, one<lvb_mhz_from_wavelength_m>, "299.792458 / wavelength in m"},
        {"vswr", "reflection", same, 0, one<lvb_reflection_from_vswr>, "(vswr - 1) / (vswr + 1)"},
        {"reflection", "vswr", same, 0, one<lvb_vswr_from_reflection>, "(1 + r) / (1 - r)"},
        {"reflection", "dB_return", same, 0, one<lvb_return_loss_db_from_reflection>, "-20 log10(r)"},
        {"dB_return", "reflection", same, 0, one<lvb_reflection_from_return_loss_db>, "10^(-return loss / 20)"},
        {"reflection", "dB_mismatch", same, 0, one<lvb_mismatch_loss_db_from_reflection>, "-10 log10(1 - r^2)"},
        {"dB_mismatch", "reflection", same, 0, one<lvb_reflection_from_mismatch_loss_db>,
         "sqrt(1 - 10^(-mismatch loss / 10))"},
        {"vswr", "dB_return", same, 0, one<lvb_return_loss_db_from_vswr>, "20 log10((vswr + 1) / (vswr - 1))"},
        {"dB_return", "vswr", same, 0, one<lvb_vswr_from_return_loss_db>, "(1 + r) / (1 - r), r = 10^(-dB / 20)"},
        {"vswr", "dB_mismatch", same, 0, one<lvb_mismatch_loss_db_from_vswr>, "10 log10((vswr + 1)^2 / (4 vswr))"},
        {"dB_mismatch", "vswr", same, 0, one<lvb_vswr_from_mismatch_loss_db>,
         "(1 + r) / (1 - r), r = sqrt(1 - 10^(-dB / 10))"},
        {"dB_return", "dB_mismatch", same, 0, one<lvb_mismatch_loss_db_from_return_loss_db>,
         "-10 log10(1 - 10^(-return loss / 10))"},
        {"dB_mismatch", "dB_return", same, 0, one<lvb_return_loss_db_from_mismatch_loss_db>,
         "-10 log10(1 - 10^(-mismatch loss / 10))"},
        {"ohm", "reflection", other, needs_ohm, at_ohm<lvb_reflection_from_resistances>,
         "|load - line| / (load + line), resistive"},
        {"reflection", "dB_mismatch_high", other, needs_with, with<lvb_mismatch_uncertainty_high_db>,
         "20 log10(1 + r1 r2)"},
        {"reflection", "dB_mismatch_low", other, needs_with, with<lvb_mismatch_uncertainty_low_db>,
         "20 log10(1 - r1 r2)"},
        {"dBd", "dBi", same, 0, one<lvb_dbi_from_dbd>, "dBd + 2.150880"},
        {"dBi", "dBd", same, 0, one<lvb_dbd_from_dbi>, "dBi - 2.150880"},
        {"dBm_erp", "dBm_eirp", same, 0, one<lvb_eirp_dbm_from_erp_dbm>, "e.r.p. + 2.150880"},
        {"dBm_eirp", "dBm_erp", same, 0, one<lvb_erp_dbm_from_eirp_dbm>, "e.i.r.p. - 2.150880"},
        {"mW_eirp", "dBm_eirp", same, 0, one<lvb_dbm_from_mw>, "10 log10(mW)"},
        {"dBm_eirp", "mW_eirp", same, 0, one<lvb_mw_from_dbm>, "10^(dBm / 10)"},
        {"mW_erp", "dBm_erp", same, 0, one<lvb_dbm_from_mw>, "10 log10(mW)"},
        {"dBm_erp", "mW_erp", same, 0, one<lvb_mw_from_dbm>, "10^(dBm / 10)"},
        {"dB_noise_figure", "K_noise", same, 0, one<lvb_noise_temperature_k_from_noise_figure_db>,
         "290 (10^(noise figure / 10) - 1)"},
        {"K_noise", "dB_noise_figure", same, 0, one<lvb_noise_figure_db_from_noise_temperature_k>,
         "10 log10(1 + noise temperature / 290)"},
        {"MHz", "dBm_noise", other, needs_kelvin, at_kelvin<lvb_thermal_noise_dbm>,
         "10 log10(k K Hz) + 30, k = 1.380649e-23 J/K, the value being the bandwidth"},
        {"dB/100ft", "dB/100m", same, 0, one<lvb_db_per_100m_from_db_per_100ft>, "dB/100 ft / 0.3048"},
        {"dB/100m", "dB/100ft", same, 0, one<lvb_db_per_100ft_from_db_per_100m>, "0.3048 dB/100 m"},
        {"degF", "degC", same, 0, one<lvb_degc_from_degf>, "(degF - 32) / 1.8"},
        {"degC", "degF", same, 0, one<lvb_degf_from_degc>, "1.8 degC + 32"},
        {"degC", "K", same, 0, one<lvb_kelvin_from_degc>, "degC + 273.15"},
        {"K", "degC", same, 0, one<lvb_degc_from_kelvin>, "K - 273.15"},
        {"m", "dB_free_space", other, needs_mhz, mhz_then<lvb_free_space_loss_db>,
         "20 log10(m) + 20 log10(MHz) - 27.552, between isotropic antennas"},
        {"dB_free_space", "m", other, needs_mhz, mhz_then<lvb_free_space_distance_m>, "10^((dB + 27.552) / 20) / MHz"},
        {"dBm_eirp", "dBuV/m", other, needs_metres, at_metres<lvb_field_strength_dbuv_per_m>,
         "e.i.r.p. - 20 log10(m) + 104.768, in free space"},
        {"dBuV/m", "dBm_eirp", other, needs_metres, at_metres<lvb_eirp_dbm_from_field_strength>,
         "dBuV/m + 20 log10(m) - 104.768, in free space"},
        {"dBm_eirp", "W/m2", other, needs_metres, at_metres<lvb_power_density_w_per_m2>,
         "W e.i.r.p. / (4 pi m^2), in free space; exposure is judged by the rules in force, not by this figure"},
        {"m", "m_far_field", other, needs_mhz, mhz_then<lvb_far_field_distance_m>,
         "2 D^2 / wavelength, the value being the antenna's largest dimension"},
        {"deg", "dB_linear", other, 0, one<lvb_linear_polarization_loss_db>,
         "-20 log10 |cos(angle)|, between two linear antennas"},
        {"dB_axial", "dB_elliptical", other, needs_angle, at_angle<lvb_linear_to_elliptical_loss_db>,
         "a linear antenna at an angle to the major axis of an elliptical one"},
        {"ellipticity", "dB_elliptical", other, needs_angle | needs_with, elliptical_pair,
         "two elliptical antennas with an angle between their major axes"},
        {"dB_axial", "ellipticity", same, 0, one<lvb_ellipticity_from_axial_ratio_db>, "10^(-axial ratio / 20)"},
        {"ellipticity", "dB_axial", same, 0, one<lvb_axial_ratio_db_from_ellipticity>, "-20 log10 |ellipticity|"},
        {"dB_axial", "dB_cross_polar", other, 0, one<lvb_cross_polar_discrimination_db>,
         "20 log10((R + 1) / (R - 1)), R = 10^(axial ratio / 20)"},
        {"dBi", "cosine_exponent", other, 0, one<lvb_cosine_exponent_from_gain_dbi>,
         "10^(dBi / 10) / 2 - 1, an antenna that radiates cos^n of power into the half space before it"},
        {"cosine_exponent", "dBi", other, 0, one<lvb_gain_dbi_from_cosine_exponent>, "10 log10(2 (n + 1))"},
        {"cosine_exponent", "deg_beam_width", same, 0, one<lvb_beam_width_deg_from_cosine_exponent>,
         "2 acos(2^(-1 / n)), at half power"},
        {"deg_beam_width", "cosine_exponent", same, 0, one<lvb_cosine_exponent_from_beam_width_deg>,
         "log(1/2) / log(cos(width / 2))"},
    };
    return all;
}

} // namespace desk
