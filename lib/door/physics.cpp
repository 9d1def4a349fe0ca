// Plain formulas of physics: each checks its domain and calls one model function.
#include <levelbook/levelbook.h>

#include "antenna/polarization.hpp"
#include "door/domain.hpp"
#include "path/free_space.hpp"

using namespace lvb;
using namespace lvb::door;

extern "C" {

double lvb_free_space_loss_db(double frequency_mhz, double distance_m) {
    return positive(frequency_mhz) && positive(distance_m) ? path::free_space_loss_db(frequency_mhz, distance_m)
                                                           : not_a_number;
}

double lvb_free_space_distance_m(double frequency_mhz, double loss_db) {
    return positive(frequency_mhz) && a_number(loss_db) ? path::free_space_distance_m(frequency_mhz, loss_db)
                                                        : not_a_number;
}

double lvb_field_strength_dbuv_per_m(double eirp_dbm, double distance_m) {
    return a_number(eirp_dbm) && positive(distance_m) ? path::field_strength_dbuv_per_m(eirp_dbm, distance_m)
                                                      : not_a_number;
}

double lvb_eirp_dbm_from_field_strength(double field_dbuv_per_m, double distance_m) {
    return a_number(field_dbuv_per_m) && positive(distance_m)
               ? path::eirp_dbm_from_field_strength(field_dbuv_per_m, distance_m)
               : not_a_number;
}

double lvb_power_density_w_per_m2(double eirp_dbm, double distance_m) {
    return a_number(eirp_dbm) && positive(distance_m) ? path::power_density_w_per_m2(eirp_dbm, distance_m)
                                                      : not_a_number;
}

double lvb_far_field_distance_m(double frequency_mhz, double aperture_m) {
    return positive(frequency_mhz) && not_negative_finite(aperture_m)
               ? path::far_field_distance_m(frequency_mhz, aperture_m)
               : not_a_number;
}

double lvb_linear_polarization_loss_db(double angle_deg) {
    return an_angle(angle_deg) ? antenna::linear_loss_db(angle_deg) : not_a_number;
}

double lvb_linear_to_elliptical_loss_db(double axial_ratio_db, double angle_deg) {
    return not_negative(axial_ratio_db) && an_angle(angle_deg)
               ? antenna::linear_to_elliptical_loss_db(axial_ratio_db, angle_deg)
               : not_a_number;
}

double lvb_elliptical_polarization_loss_db(double ellipticity_1, double ellipticity_2, double angle_deg) {
    return signed_unit(ellipticity_1) && signed_unit(ellipticity_2) && an_angle(angle_deg)
               ? antenna::elliptical_loss_db(ellipticity_1, ellipticity_2, angle_deg)
               : not_a_number;
}

double lvb_ellipticity_from_axial_ratio_db(double axial_ratio_db) {
    return not_negative(axial_ratio_db) ? antenna::ellipticity_from_axial_ratio_db(axial_ratio_db) : not_a_number;
}

double lvb_axial_ratio_db_from_ellipticity(double ellipticity) {
    return signed_unit(ellipticity) ? antenna::axial_ratio_db_from_ellipticity(ellipticity) : not_a_number;
}

double lvb_cross_polar_discrimination_db(double axial_ratio_db) {
    return not_negative(axial_ratio_db) ? antenna::cross_polar_discrimination_db(axial_ratio_db) : not_a_number;
}

} // extern "C"
