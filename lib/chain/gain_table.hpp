// Measured gain over frequency: linear in dB over MHz between rows, exact at every row.
#pragma once

#include "math/search.hpp"

namespace lvb::chain {

struct GainTable {
    const double *frequency_mhz = nullptr;
    const double *gain_db = nullptr;
    std::size_t rows = 0;
};

/// The frequency lies within the table, which has at least one row.
inline double gain_db_at(const GainTable &table, double frequency_mhz) noexcept {
    const double *f = table.frequency_mhz;
    const double *g = table.gain_db;
    if (table.rows == 1) return g[0];
    const std::size_t i = math::interval(f, table.rows, frequency_mhz);
    if (frequency_mhz == f[i + 1]) return g[i + 1];
    return g[i] + (frequency_mhz - f[i]) / (f[i + 1] - f[i]) * (g[i + 1] - g[i]);
}

} // namespace lvb::chain
