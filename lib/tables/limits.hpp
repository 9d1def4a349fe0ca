// Published limits of power. Rules change: each row says what was read.
#pragma once

#include "units/quantity.hpp"

#include <cstddef>

namespace lvb::tables {

struct LimitRule {
    double lowest_mhz, highest_mhz;
    units::Quantity quantity;
    double power_mw;
    const char *citation, *remark;
};

inline constexpr const char *limit_country = "United States";
inline constexpr const char *limit_edition = "read in the published text; the date of reading was not recorded";

std::size_t limit_rules() noexcept;
LimitRule limit_rule(std::size_t index) noexcept; ///< below limit_rules()

} // namespace lvb::tables
