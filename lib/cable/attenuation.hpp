// Attenuation of coaxial cable between and beyond tabulated frequencies, with temperature, length and connectors.
//
// Law: conductor loss grows with sqrt(f) (skin effect), dielectric loss with f (Pozar, Microwave Engineering, 2.7).
// Valid input only: rows rise in frequency, attenuations are positive, the frequency lies in the usable range.
#pragma once

#include <cstddef>

namespace lvb::cable {

/// Attenuation table at 20 degC; at least one row.
struct Table {
    const double *frequency_mhz;
    const double *attenuation_db_per_100m;
    std::size_t rows;
};

struct Attenuation {
    double db_per_100m;
    bool extrapolated;
};

/// The temperature at which tables hold.
inline constexpr double table_temperature_degc = 20.0;

/// How far beyond its ends a table may be used: to one tenth of the first, twice the last frequency.
inline constexpr double usable_below = 0.1;
inline constexpr double usable_above = 2.0;

Attenuation attenuation(const Table &table, double frequency_mhz, double temperature_degc) noexcept;

/// Loss of one connector where none is given: 0.05 sqrt(frequency in GHz) dB.
double usual_connector_loss_db(double frequency_mhz) noexcept;

struct Run {
    Table table;
    double length_m;
    unsigned connectors;
    double connector_loss_db; ///< of each; 0 takes the usual one
};

struct Loss {
    Attenuation attenuation;
    double cable_db;
    double connectors_db;
};

Loss loss(const Run &run, double frequency_mhz, double temperature_degc) noexcept;

/// Factor by which conductor loss grows from 20 degC: the square root of copper's resistance (IEC 60028).
double conductor_factor(double temperature_degc) noexcept;

} // namespace lvb::cable
