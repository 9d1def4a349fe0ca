// Compiled with -O3 for the machine that runs it, apart from the rest, so that the loops can be compared fairly.
#include "plain.hpp"

#include <algorithm>
#include <cmath>

namespace bench::plain {
namespace {

const double loss_at_1_mhz_1_m = 20.0 * std::log10(4.0 * std::acos(-1.0) / 299.792458);

// All that a frequency gives to its row, but for its free-space loss.
double conducted(const Link &link, double frequency_mhz) {
    return link.level_dbm + link.gains_db -
           cable_loss(link.cable, link.first_length_m, link.connectors, frequency_mhz) -
           cable_loss(link.cable, link.second_length_m, link.connectors, frequency_mhz);
}

} // namespace

void decibels(const double *x, double *y, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) y[i] = 20.0 * std::log10(x[i]);
}

void milliwatts(const double *x, double *y, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) y[i] = std::pow(10.0, x[i] / 10.0);
}

void free_space_loss(double frequency_mhz, const double *x, double *y, std::size_t count) {
    const double at_1_m = loss_at_1_mhz_1_m + 20.0 * std::log10(frequency_mhz);
    for (std::size_t i = 0; i < count; ++i) y[i] = at_1_m + 20.0 * std::log10(x[i]);
}

void dbm(const double *x, double *y, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) y[i] = 10.0 * std::log10(x[i]);
}

double cable_loss(const Cable &cable, double length_m, unsigned connectors, double frequency_mhz) {
    const std::vector<double> &f = cable.frequency_mhz, &a = cable.attenuation_db_per_100m;
    const auto above = std::upper_bound(f.begin() + 1, f.end() - 1, frequency_mhz) - f.begin();
    const auto i = static_cast<std::size_t>(above) - 1;
    const double root = std::sqrt(frequency_mhz), root_0 = std::sqrt(f[i]), root_1 = std::sqrt(f[i + 1]);
    const double dielectric = (a[i + 1] / root_1 - a[i] / root_0) / (root_1 - root_0);
    const double conductor = a[i] / root_0 - dielectric * root_0;
    double db_per_100m = conductor * root + dielectric * frequency_mhz;
    if (dielectric < 0.0 || conductor < 0.0)
        db_per_100m = a[i] * std::pow(frequency_mhz / f[i], std::log(a[i + 1] / a[i]) / std::log(f[i + 1] / f[i]));
    return db_per_100m * length_m / 100.0 + connectors * 0.05 * std::sqrt(frequency_mhz / 1000.0);
}

void cable_sweep(const Cable &cable, double length_m, unsigned connectors, const double *x, double *y,
                 std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) y[i] = cable_loss(cable, length_m, connectors, x[i]);
}

void grid(const Link &link, const std::vector<double> &frequency_mhz, const std::vector<double> &distance_m,
          double *y) {
    for (const double f : frequency_mhz) {
        const double at_1_m = conducted(link, f) - loss_at_1_mhz_1_m - 20.0 * std::log10(f);
        for (const double d : distance_m) *y++ = at_1_m - 20.0 * std::log10(d);
    }
}

void grid_by_parts(const Link &link, const std::vector<double> &frequency_mhz, const std::vector<double> &distance_m,
                   double *scratch, double *y) {
    decibels(distance_m.data(), scratch, distance_m.size());
    for (const double f : frequency_mhz) {
        const double at_1_m = conducted(link, f) - loss_at_1_mhz_1_m - 20.0 * std::log10(f);
        for (std::size_t i = 0; i < distance_m.size(); ++i) y[i] = at_1_m - scratch[i];
        y += distance_m.size();
    }
}

void map(const std::vector<Antenna> &antennas, double exponent, double pack_m, double step_m, std::size_t columns,
         std::size_t rows, double *y) {
    std::vector<double> power_at_1m;
    for (const Antenna &antenna : antennas) power_at_1m.push_back(std::pow(10.0, antenna.level_at_1m_dbm / 10.0));
    for (std::size_t r = 0; r < rows; ++r)
        for (std::size_t c = 0; c < columns; ++c) {
            double best = 0.0;
            for (std::size_t a = 0; a < antennas.size(); ++a) {
                const double dx = static_cast<double>(c) * step_m - antennas[a].x_m;
                const double dy = static_cast<double>(r) * step_m - antennas[a].y_m, dz = pack_m - antennas[a].z_m;
                const double square = dx * dx + dy * dy + dz * dz;
                double power = power_at_1m[a] / square;
                if (exponent > 0.0) {
                    const double ahead = std::max(dx * antennas[a].aim_x + dy * antennas[a].aim_y, 0.0);
                    power *= std::pow(ahead / std::sqrt(square), exponent);
                }
                best = std::max(best, power);
            }
            *y++ = 10.0 * std::log10(best);
        }
}

} // namespace bench::plain
