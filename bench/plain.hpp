// What a host would write by hand: plain loops over the platform's mathematics library.
#pragma once

#include <cstddef>
#include <vector>

namespace bench::plain {

/// A table of cable attenuation, rows rising in frequency.
struct Cable {
    std::vector<double> frequency_mhz, attenuation_db_per_100m;
};

/// y = 20 log10(x); y = 10^(x / 10); y = free-space loss at a frequency over distances x
void decibels(const double *x, double *y, std::size_t count);
void milliwatts(const double *x, double *y, std::size_t count);
void free_space_loss(double frequency_mhz, const double *x, double *y, std::size_t count);
/// y = 10 log10(x), as a host would write it in place of single calls.
void dbm(const double *x, double *y, std::size_t count);

/// Loss of a piece of cable with its connectors at 20 degC, by the same law as levelbook's; and over frequencies x.
double cable_loss(const Cable &cable, double length_m, unsigned connectors, double frequency_mhz);
void cable_sweep(const Cable &cable, double length_m, unsigned connectors, const double *x, double *y,
                 std::size_t count);

/// A link of two cables of a type and a sum of gains that are the same at every frequency.
struct Link {
    Cable cable;
    double first_length_m, second_length_m;
    unsigned connectors; // of each cable
    double level_dbm, gains_db;
};

/// Level at the end of the link, row after row; the logarithm of each distance taken for each level, or once.
void grid(const Link &link, const std::vector<double> &frequency_mhz, const std::vector<double> &distance_m, double *y);
void grid_by_parts(const Link &link, const std::vector<double> &frequency_mhz, const std::vector<double> &distance_m,
                   double *scratch, double *y);

/// An antenna with its aim in plan, and the level that it gives 1 m before it.
struct Antenna {
    double x_m, y_m, z_m, aim_x, aim_y, level_at_1m_dbm;
};
/// Level of the strongest of some antennas at each point of a grid, row after row; patterns are cos^exponent of power.
void map(const std::vector<Antenna> &antennas, double exponent, double pack_m, double step_m, std::size_t columns,
         std::size_t rows, double *y);

} // namespace bench::plain
