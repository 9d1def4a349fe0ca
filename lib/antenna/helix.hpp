// Estimates for the axial-mode helix, its spacing and circumference in wavelengths. Source: Kraus, Antennas, 8-5.
#pragma once

#include "math/elementary.hpp"

namespace lvb::antenna {

inline constexpr double fewest_turns = 3.0, most_turns = 100.0;
inline constexpr double least_spacing = 0.1, most_spacing = 0.5;
inline constexpr double least_circumference = 0.75, most_circumference = 1.33;

inline double helix_gain_dbi(double turns, double spacing, double circumference) noexcept {
    return math::ten_log10(12.0 * turns * spacing * (circumference * circumference));
}
inline double helix_beam_width_deg(double turns, double spacing, double circumference) noexcept {
    return 52.0 / (circumference * math::sqrt(turns * spacing));
}
/// Whether the pitch, atan(spacing / circumference), is one of those that were measured: 12 to 14 to the whole degree.
inline bool is_measured_pitch(double spacing, double circumference) noexcept {
    constexpr double least = 0x1.a0ab996290f98p-3, most = 0x1.08d30c4bea915p-2; // tan 11.5 and 14.5 degrees
    return spacing >= least * circumference && spacing <= most * circumference;
}
inline double helix_axial_ratio_db(double turns) noexcept { return 2.0 * math::ten_log10_1p(0.5 / turns); }

} // namespace lvb::antenna
