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
    return math::interpolated(table.frequency_mhz, table.gain_db, table.rows, frequency_mhz);
}

} // namespace lvb::chain
