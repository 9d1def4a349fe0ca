// Domains of the arguments of plain functions, as the "Range:" lines of the header state them.
#pragma once

#include "antenna/cosine.hpp"
#include "antenna/helix.hpp"
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
inline bool one_to_four(double x) noexcept { return x >= 1.0 && x <= 4.0; }             // [1, 4]
inline bool half_space_gain(double x) noexcept { return x >= antenna::half_space_dbi; } // [3.0103, inf]
inline bool half_circle(double x) noexcept { return x >= 0.0 && x <= 180.0; }           // [0, 180]
inline bool beam_width(double x) noexcept { return x > 0.0 && x <= 360.0; }             // (0, 360]
inline bool helix_turns(double x) noexcept { return x >= antenna::fewest_turns && x <= antenna::most_turns; }
inline bool helix_spacing(double x) noexcept { return x >= antenna::least_spacing && x <= antenna::most_spacing; }
inline bool helix_circumference(double x) noexcept {
    return x >= antenna::least_circumference && x <= antenna::most_circumference;
}
inline bool a_loss(double x) noexcept { return x >= -1000.0 && x <= 1000.0; }         // [-1000, 1000]
inline bool an_exponent(double x) noexcept { return x >= 0.1 && x <= 10.0; }          // [0.1, 10]
inline bool an_indoor_mhz(double x) noexcept { return x >= 300.0 && x <= 1e5; }       // [300, 100000]
inline bool an_indoor_distance(double x) noexcept { return x >= 1.0 && x <= 1000.0; } // [1, 1000]
inline bool a_power_loss(double x) noexcept { return x >= 0.0 && x <= 100.0; }        // [0, 100]
inline bool a_level(double x) noexcept { return an_angle(x); }                        // [-1e12, 1e12]
inline bool a_figure(double x) noexcept { return x >= 0.0 && x <= 1e12; }             // [0, 1e12]
inline bool a_number_of_carriers(double x) noexcept { return x >= 1.0 && x <= 1e6; }  // [1, 1e6]
inline bool man_made_mhz(double x) noexcept { return x >= 0.3 && x <= 250.0; }        // [0.3, 250]
inline bool quiet_rural_mhz(double x) noexcept { return x >= 0.3 && x <= 30.0; }      // [0.3, 30]
inline bool business_mhz(double x) noexcept { return x >= 200.0 && x <= 900.0; }      // [200, 900]
inline bool galactic_mhz(double x) noexcept { return x >= 10.0 && x <= 100.0; }       // [10, 100]
inline bool outage_to_search(double x) noexcept { return x >= 1e-300 && x <= 1.0; }   // [1e-300, 1]
inline bool up_to_30(double x) noexcept { return x >= 0.0 && x <= 30.0; }             // [0, 30]
inline bool up_to_40(double x) noexcept { return x <= 40.0; }                         // [-inf, 40]
inline bool from_half_to_100(double x) noexcept { return x >= 0.5 && x <= 100.0; }    // [0.5, 100]
inline bool from_1_to_100(double x) noexcept { return x >= 1.0 && x <= 100.0; }       // [1, 100]
inline bool below_unity(double x) noexcept { return x >= 0.0 && x <= 0.999; }         // [0, 0.999]
inline bool above_absolute_zero_degc(double x) noexcept { return x >= units::absolute_zero_degc; }
inline bool above_absolute_zero_degf(double x) noexcept { return x >= units::absolute_zero_degf; }

} // namespace lvb::door
