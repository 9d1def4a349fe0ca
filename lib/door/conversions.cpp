// The conversions: each checks its domain and calls one model function.
#include <levelbook/levelbook.h>

#include "antenna/dipole.hpp"
#include "door/domain.hpp"
#include "noise/thermal.hpp"
#include "units/length.hpp"
#include "units/mismatch.hpp"
#include "units/power.hpp"

using namespace lvb;
using namespace lvb::door;

extern "C" {

double lvb_dbm_from_mw(double power_mw) { return not_negative(power_mw) ? units::dbm_from_mw(power_mw) : not_a_number; }

double lvb_mw_from_dbm(double level_dbm) { return a_number(level_dbm) ? units::mw_from_dbm(level_dbm) : not_a_number; }

double lvb_dbm_from_w(double power_w) { return not_negative(power_w) ? units::dbm_from_w(power_w) : not_a_number; }

double lvb_w_from_dbm(double level_dbm) { return a_number(level_dbm) ? units::w_from_dbm(level_dbm) : not_a_number; }

double lvb_dbw_from_w(double power_w) { return not_negative(power_w) ? units::dbw_from_w(power_w) : not_a_number; }

double lvb_w_from_dbw(double level_dbw) { return a_number(level_dbw) ? units::w_from_dbw(level_dbw) : not_a_number; }

double lvb_dbw_from_mw(double power_mw) { return not_negative(power_mw) ? units::dbw_from_mw(power_mw) : not_a_number; }

double lvb_mw_from_dbw(double level_dbw) { return a_number(level_dbw) ? units::mw_from_dbw(level_dbw) : not_a_number; }

double lvb_dbm_from_dbw(double level_dbw) {
    return a_number(level_dbw) ? units::dbm_from_dbw(level_dbw) : not_a_number;
}

double lvb_dbw_from_dbm(double level_dbm) {
    return a_number(level_dbm) ? units::dbw_from_dbm(level_dbm) : not_a_number;
}

double lvb_mw_from_w(double power_w) { return not_negative(power_w) ? units::mw_from_w(power_w) : not_a_number; }

double lvb_w_from_mw(double power_mw) { return not_negative(power_mw) ? units::w_from_mw(power_mw) : not_a_number; }

double lvb_dbm_from_volts(double voltage_v, double impedance_ohm) {
    return not_negative(voltage_v) && positive(impedance_ohm) ? units::dbm_from_volts(voltage_v, impedance_ohm)
                                                              : not_a_number;
}

double lvb_volts_from_dbm(double level_dbm, double impedance_ohm) {
    return a_number(level_dbm) && positive(impedance_ohm) ? units::volts_from_dbm(level_dbm, impedance_ohm)
                                                          : not_a_number;
}

double lvb_dbuv_from_volts(double voltage_v) {
    return not_negative(voltage_v) ? units::db_micro_from_unit(voltage_v) : not_a_number;
}

double lvb_volts_from_dbuv(double level_dbuv) {
    return a_number(level_dbuv) ? units::unit_from_db_micro(level_dbuv) : not_a_number;
}

double lvb_dbuv_from_dbm(double level_dbm, double impedance_ohm) {
    return a_number(level_dbm) && positive(impedance_ohm) ? units::dbuv_from_dbm(level_dbm, impedance_ohm)
                                                          : not_a_number;
}

double lvb_dbm_from_dbuv(double level_dbuv, double impedance_ohm) {
    return a_number(level_dbuv) && positive(impedance_ohm) ? units::dbm_from_dbuv(level_dbuv, impedance_ohm)
                                                           : not_a_number;
}

double lvb_dbuv_per_m_from_v_per_m(double field_v_per_m) {
    return not_negative(field_v_per_m) ? units::db_micro_from_unit(field_v_per_m) : not_a_number;
}

double lvb_v_per_m_from_dbuv_per_m(double field_dbuv_per_m) {
    return a_number(field_dbuv_per_m) ? units::unit_from_db_micro(field_dbuv_per_m) : not_a_number;
}

double lvb_isotropic_dbm_from_dbuv_per_m(double field_dbuv_per_m, double frequency_mhz) {
    return a_number(field_dbuv_per_m) && positive(frequency_mhz)
               ? units::isotropic_dbm_from_dbuv_per_m(field_dbuv_per_m, frequency_mhz)
               : not_a_number;
}

double lvb_dbuv_per_m_from_isotropic_dbm(double level_dbm, double frequency_mhz) {
    return a_number(level_dbm) && positive(frequency_mhz)
               ? units::dbuv_per_m_from_isotropic_dbm(level_dbm, frequency_mhz)
               : not_a_number;
}

double lvb_db_from_power_ratio(double ratio) { return not_negative(ratio) ? math::ten_log10(ratio) : not_a_number; }

double lvb_power_ratio_from_db(double gain_db) { return a_number(gain_db) ? math::power_of_db(gain_db) : not_a_number; }

double lvb_db_from_amplitude_ratio(double ratio) {
    return not_negative(ratio) ? math::twenty_log10(ratio) : not_a_number;
}

double lvb_amplitude_ratio_from_db(double gain_db) {
    return a_number(gain_db) ? math::amplitude_of_db(gain_db) : not_a_number;
}

double lvb_metres_from_feet(double length_feet) {
    return a_number(length_feet) ? units::foot_m * length_feet : not_a_number;
}

double lvb_feet_from_metres(double length_m) { return a_number(length_m) ? length_m / units::foot_m : not_a_number; }

double lvb_metres_from_inches(double length_inches) {
    return a_number(length_inches) ? units::inch_m * length_inches : not_a_number;
}

double lvb_inches_from_metres(double length_m) { return a_number(length_m) ? length_m / units::inch_m : not_a_number; }

double lvb_metres_from_yards(double length_yards) {
    return a_number(length_yards) ? units::yard_m * length_yards : not_a_number;
}

double lvb_yards_from_metres(double length_m) { return a_number(length_m) ? length_m / units::yard_m : not_a_number; }

double lvb_metres_from_miles(double length_miles) {
    return a_number(length_miles) ? units::mile_m * length_miles : not_a_number;
}

double lvb_miles_from_metres(double length_m) { return a_number(length_m) ? length_m / units::mile_m : not_a_number; }

double lvb_wavelength_m_from_mhz(double frequency_mhz) {
    return positive(frequency_mhz) ? units::wavelength_m_from_mhz(frequency_mhz) : not_a_number;
}

double lvb_mhz_from_wavelength_m(double wavelength_m) {
    return positive(wavelength_m) ? units::mhz_from_wavelength_m(wavelength_m) : not_a_number;
}

double lvb_reflection_from_vswr(double vswr) {
    return one_or_more(vswr) ? units::reflection_from_vswr(vswr) : not_a_number;
}

double lvb_vswr_from_reflection(double reflection) {
    return unit(reflection) ? units::vswr_from_reflection(reflection) : not_a_number;
}

double lvb_return_loss_db_from_reflection(double reflection) {
    return unit(reflection) ? units::return_loss_db_from_reflection(reflection) : not_a_number;
}

double lvb_reflection_from_return_loss_db(double return_loss_db) {
    return not_negative(return_loss_db) ? units::reflection_from_return_loss_db(return_loss_db) : not_a_number;
}

double lvb_mismatch_loss_db_from_reflection(double reflection) {
    return unit(reflection) ? units::mismatch_loss_db_from_reflection(reflection) : not_a_number;
}

double lvb_reflection_from_mismatch_loss_db(double mismatch_loss_db) {
    return not_negative(mismatch_loss_db) ? units::reflection_from_mismatch_loss_db(mismatch_loss_db) : not_a_number;
}

double lvb_return_loss_db_from_vswr(double vswr) {
    return one_or_more(vswr) ? units::return_loss_db_from_vswr(vswr) : not_a_number;
}

double lvb_vswr_from_return_loss_db(double return_loss_db) {
    return not_negative(return_loss_db) ? units::vswr_from_return_loss_db(return_loss_db) : not_a_number;
}

double lvb_mismatch_loss_db_from_vswr(double vswr) {
    return one_or_more(vswr) ? units::mismatch_loss_db_from_vswr(vswr) : not_a_number;
}

double lvb_vswr_from_mismatch_loss_db(double mismatch_loss_db) {
    return not_negative(mismatch_loss_db) ? units::vswr_from_mismatch_loss_db(mismatch_loss_db) : not_a_number;
}

double lvb_mismatch_loss_db_from_return_loss_db(double return_loss_db) {
    return not_negative(return_loss_db) ? units::complementary_loss_db(return_loss_db) : not_a_number;
}

double lvb_return_loss_db_from_mismatch_loss_db(double mismatch_loss_db) {
    return not_negative(mismatch_loss_db) ? units::complementary_loss_db(mismatch_loss_db) : not_a_number;
}

double lvb_reflection_from_resistances(double load_ohm, double reference_ohm) {
    return not_negative_finite(load_ohm) && positive(reference_ohm)
               ? units::reflection_from_resistances(load_ohm, reference_ohm)
               : not_a_number;
}

double lvb_mismatch_uncertainty_high_db(double reflection_1, double reflection_2) {
    return unit(reflection_1) && unit(reflection_2) ? units::mismatch_uncertainty_high_db(reflection_1, reflection_2)
                                                    : not_a_number;
}

double lvb_mismatch_uncertainty_low_db(double reflection_1, double reflection_2) {
    return unit(reflection_1) && unit(reflection_2) ? units::mismatch_uncertainty_low_db(reflection_1, reflection_2)
                                                    : not_a_number;
}

double lvb_dbi_from_dbd(double gain_dbd) { return a_number(gain_dbd) ? antenna::dbi_from_dbd(gain_dbd) : not_a_number; }

double lvb_dbd_from_dbi(double gain_dbi) { return a_number(gain_dbi) ? antenna::dbd_from_dbi(gain_dbi) : not_a_number; }

double lvb_eirp_dbm_from_erp_dbm(double erp_dbm) {
    return a_number(erp_dbm) ? antenna::dbi_from_dbd(erp_dbm) : not_a_number;
}

double lvb_erp_dbm_from_eirp_dbm(double eirp_dbm) {
    return a_number(eirp_dbm) ? antenna::dbd_from_dbi(eirp_dbm) : not_a_number;
}

double lvb_noise_temperature_k_from_noise_figure_db(double noise_figure_db) {
    return not_negative(noise_figure_db) ? noise::temperature_k_from_figure_db(noise_figure_db) : not_a_number;
}

double lvb_noise_figure_db_from_noise_temperature_k(double noise_temperature_k) {
    return not_negative(noise_temperature_k) ? noise::figure_db_from_temperature_k(noise_temperature_k) : not_a_number;
}

double lvb_thermal_noise_dbm(double bandwidth_mhz, double temperature_k) {
    return not_negative(bandwidth_mhz) && not_negative(temperature_k)
               ? noise::thermal_noise_dbm(bandwidth_mhz, temperature_k)
               : not_a_number;
}

double lvb_db_per_100m_from_db_per_100ft(double attenuation_db_per_100ft) {
    return a_number(attenuation_db_per_100ft) ? attenuation_db_per_100ft / units::foot_m : not_a_number;
}

double lvb_db_per_100ft_from_db_per_100m(double attenuation_db_per_100m) {
    return a_number(attenuation_db_per_100m) ? units::foot_m * attenuation_db_per_100m : not_a_number;
}

double lvb_degc_from_degf(double temperature_degf) {
    return above_absolute_zero_degf(temperature_degf) ? units::degc_from_degf(temperature_degf) : not_a_number;
}

double lvb_degf_from_degc(double temperature_degc) {
    return above_absolute_zero_degc(temperature_degc) ? units::degf_from_degc(temperature_degc) : not_a_number;
}

double lvb_kelvin_from_degc(double temperature_degc) {
    return above_absolute_zero_degc(temperature_degc) ? temperature_degc - units::absolute_zero_degc : not_a_number;
}

double lvb_degc_from_kelvin(double temperature_k) {
    return not_negative(temperature_k) ? temperature_k + units::absolute_zero_degc : not_a_number;
}

} // extern "C"
