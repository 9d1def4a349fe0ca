// Domains of the arguments of plain functions, as the "Range:" lines of the header state them.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::door {

using math::infinity;
using math::not_a_number;

inline bool a_number(double x) noexcept { return x == x; }                              // [-inf, inf]
inline bool an_angle(double x) noexcept { return x >= -1e12 && x <= 1e12; }             // [-1e12, 1e12]
inline bool not_negative(double x) noexcept { return x >= 0.0; }                        // [0, inf]
inline bool not_negative_finite(double x) noexcept { return x >= 0.0 && x < infinity; } // [0, inf)
inline bool positive(double x) noexcept { return x > 0.0 && x < infinity; }             // (0, inf)
inline bool one_or_more(double x) noexcept { return x >= 1.0; }                         // [1, inf]
inline bool unit(double x) noexcept { return x >= 0.0 && x <= 1.0; }                    // [0, 1]
inline bool signed_unit(double x) noexcept { return x >= -1.0 && x <= 1.0; }            // [-1, 1]
inline bool outage_to_search(double x) noexcept { return x >= 1e-300 && x <= 1.0; }     // [1e-300, 1]
inline bool up_to_30(double x) noexcept { return x >= 0.0 && x <= 30.0; }               // [0, 30]
inline bool up_to_40(double x) noexcept { return x <= 40.0; }                           // [-inf, 40]
inline bool from_half_to_100(double x) noexcept { return x >= 0.5 && x <= 100.0; }      // [0.5, 100]
inline bool from_1_to_100(double x) noexcept { return x >= 1.0 && x <= 100.0; }         // [1, 100]
inline bool below_unity(double x) noexcept { return x >= 0.0 && x <= 0.999; }           // [0, 0.999]
inline bool above_absolute_zero_degc(double x) noexcept { return x >= units::absolute_zero_degc; }
inline bool above_absolute_zero_degf(double x) noexcept { return x >= units::absolute_zero_degf; }

} // namespace lvb::door
