// Published limits of power, of bands that the rules in force leave to wireless microphones. Rules change: the edition
// says which text was read.
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
inline constexpr const char *limit_edition =
    "as before the amendment of 18 November 2024 (89 FR 83789), less the bands that have passed to mobile services; "
    "15.236 as revised on 1 September 2021";

std::size_t limit_rules() noexcept;
LimitRule limit_rule(std::size_t index) noexcept; ///< below limit_rules()

} // namespace lvb::tables
