// The built-in catalogue of cables: military and generic types with published values, each row with its source.
#pragma once

#include "cable/attenuation.hpp"

#include <cstddef>
#include <cstdint>

namespace lvb::tables {

/// Numbers are pinned in the public header; types are only appended, without gaps.
inline constexpr std::int32_t cable_types = 14;

struct CableRow {
    double frequency_mhz;
    double attenuation_db_per_100m;
    const char *source;
    const char *remark;
};

// `type` is 1 to cable_types in all of these.
cable::Table cable_table(std::int32_t type) noexcept;
const char *cable_name(std::int32_t type) noexcept;
const char *cable_description(std::int32_t type) noexcept;
CableRow cable_row(std::int32_t type, std::size_t row) noexcept;

} // namespace lvb::tables
