// Published figures for allowances, and rules of the trade.
#pragma once

#include <cstddef>

namespace lvb::tables {

/// Losses in dB; NaN where the source gives none.
struct Allowance {
    double low_db, usual_db, high_db;
    const char *subject, *name, *source, *remark;
};

inline constexpr std::size_t allowances = 6;
const Allowance &allowance(std::size_t row) noexcept; ///< below `allowances`

} // namespace lvb::tables
