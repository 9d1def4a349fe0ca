// The numbers of some structs with their ranges: one table for each serves its checks and lvb_describe_field.
#pragma once

#include "door/fields.hpp"

namespace lvb::door {

template <class T>
struct NumberField {
    std::int32_t id;
    double T::*member;
    Range range;
};

inline constexpr Range diameter_range{0.01, 1000.0, true};
inline constexpr Range conductivity_range{0.001, 1.1, false};
inline constexpr Range resistance_factor_range{1.0, 10.0, false};
inline constexpr NumberField<lvb_coaxial_line> coaxial_fields[] = {
    {LVB_FIELD_FREQUENCY_MHZ, &lvb_coaxial_line::frequency_mhz, frequency_range},
    {LVB_FIELD_INNER_DIAMETER_MM, &lvb_coaxial_line::inner_diameter_mm, diameter_range},
    {LVB_FIELD_OUTER_DIAMETER_MM, &lvb_coaxial_line::outer_diameter_mm, diameter_range},
    {LVB_FIELD_INNER_CONDUCTIVITY, &lvb_coaxial_line::inner_conductivity, conductivity_range},
    {LVB_FIELD_OUTER_CONDUCTIVITY, &lvb_coaxial_line::outer_conductivity, conductivity_range},
    {LVB_FIELD_INNER_FACTOR, &lvb_coaxial_line::inner_factor, resistance_factor_range},
    {LVB_FIELD_OUTER_FACTOR, &lvb_coaxial_line::outer_factor, resistance_factor_range},
    {LVB_FIELD_RELATIVE_PERMITTIVITY, &lvb_coaxial_line::relative_permittivity, {1.0, 100.0, false}},
    {LVB_FIELD_LOSS_TANGENT, &lvb_coaxial_line::loss_tangent, {0.0, 0.1, false}},
    {LVB_FIELD_TEMPERATURE_DEGC, &lvb_coaxial_line::temperature_degc, temperature_range},
};

inline constexpr Range toward_gain_range{-100.0, 60.0, false};
inline constexpr Range attenuation_range{0.0, 200.0, false};
inline constexpr Range optional_frequency_range{0.1, 300000.0, false};
inline constexpr NumberField<lvb_neighbours> neighbours_fields[] = {
    {LVB_FIELD_TRANSMIT_DBM, &lvb_neighbours::transmit_dbm, power_level_range},
    {LVB_FIELD_TRANSMIT_GAIN_DBI, &lvb_neighbours::transmit_gain_dbi, toward_gain_range},
    {LVB_FIELD_RECEIVE_GAIN_DBI, &lvb_neighbours::receive_gain_dbi, toward_gain_range},
    {LVB_FIELD_SEPARATION_M, &lvb_neighbours::separation_m, distance_range},
    {LVB_FIELD_COUPLING_LOSS_DB, &lvb_neighbours::coupling_loss_db, {0.0, 250.0, false}},
    {LVB_FIELD_TRANSMIT_MHZ, &lvb_neighbours::transmit_mhz, optional_frequency_range},
    {LVB_FIELD_RECEIVE_MHZ, &lvb_neighbours::receive_mhz, optional_frequency_range},
    {LVB_FIELD_RECEIVE_LOSS_DB, &lvb_neighbours::receive_loss_db, attenuation_range},
    {LVB_FIELD_RECEIVE_FILTER_DB, &lvb_neighbours::receive_filter_db, attenuation_range},
    {LVB_FIELD_TRANSMIT_FILTER_DB, &lvb_neighbours::transmit_filter_db, attenuation_range},
    {LVB_FIELD_BLOCKING_DBM, &lvb_neighbours::blocking_dbm, power_level_range},
    {LVB_FIELD_TRANSMIT_NOISE_DBM, &lvb_neighbours::transmit_noise_dbm, {-300.0, 150.0, false}},
    {LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ, &lvb_neighbours::transmit_noise_dbc_per_hz, {-250.0, -1.0, false}},
    {LVB_FIELD_RECEIVER_BANDWIDTH_MHZ, &lvb_neighbours::receiver_bandwidth_mhz, {1e-6, 1000.0, false}},
    {LVB_FIELD_RECEIVER_NOISE_DBM, &lvb_neighbours::receiver_noise_dbm, received_level_range},
    {LVB_FIELD_WANTED_MARGIN_DB, &lvb_neighbours::wanted_margin_db, {0.0, 100.0, false}},
    {LVB_FIELD_WANTED_RISE_DB, &lvb_neighbours::wanted_rise_db, {0.01, 100.0, false}},
};

inline constexpr Range rule_frequency_range{0.001, 1e6, false};
inline constexpr NumberField<lvb_limit> limit_fields[] = {
    {LVB_FIELD_LIMIT_DBM, &lvb_limit::limit_dbm, power_level_range},
    {LVB_FIELD_LOWEST_MHZ, &lvb_limit::lowest_mhz, rule_frequency_range},
    {LVB_FIELD_HIGHEST_MHZ, &lvb_limit::highest_mhz, rule_frequency_range},
};

/// Every number of a struct lies in its range; zero is missing where the range says so, and neutral otherwise.
template <class T, std::size_t count>
bool check_numbers(Refusal &refusal, const T &object, const NumberField<T> (&fields)[count], Place place) noexcept {
    for (const NumberField<T> &field : fields)
        if (!check_field(refusal, object.*field.member, field.range, place, field.id)) return false;
    return true;
}

template <class T, std::size_t count>
const Range *find_range(const NumberField<T> (&fields)[count], std::int32_t id) noexcept {
    for (const NumberField<T> &field : fields)
        if (field.id == id) return &field.range;
    return nullptr;
}

} // namespace lvb::door
