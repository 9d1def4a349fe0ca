// Knife edges. Source: ITU-R P.526.
#pragma once

#include "math/elementary.hpp"
#include "units/length.hpp"

#include <cstddef>
#include <cstring>

namespace lvb::path {

/// Radius of the first Fresnel zone between its two ends.
inline double fresnel_radius_m(double frequency_mhz, double first_distance_m, double second_distance_m) noexcept {
    const bool first_is_near = first_distance_m < second_distance_m;
    const double near = first_is_near ? first_distance_m : second_distance_m;
    const double far = first_is_near ? second_distance_m : first_distance_m;
    // roots apart, so that nothing on the way leaves the range of numbers
    constexpr double root_of_light = 0x1.150841bceecb3p+4; // sqrt(299.792458)
    return root_of_light / math::sqrt(frequency_mhz) * (math::sqrt(near) / math::sqrt(1.0 + near / far));
}
inline double knife_edge_parameter(double height_m, double fresnel_radius_m) noexcept {
    constexpr double root_2 = 0x1.6a09e667f3bcdp+0, root_half = 0x1.6a09e667f3bcdp-1;
    return fresnel_radius_m < 1.0 ? height_m / fresnel_radius_m * root_2 : height_m / (root_half * fresnel_radius_m);
}
/// P.526-15, section 4.1.
inline double knife_edge_loss_db(double parameter) noexcept {
    constexpr double clear = -0.78;
    if (parameter <= clear) return 0.0;
    constexpr double twice_db = 6.020599913279624;
    const double w = parameter - 0.1;
    const double root = w > 1e9 ? w : math::sqrt(w * w + 1.0);
    return math::twenty_log10(0.5 * root + 0.5 * w) + (6.9 + twice_db); // halves: the largest numbers have a sum
}

/// Top of an edge: its distance from the transmitting antenna and its height above the floor.
struct Edge {
    double distance_m, height_m;
};

/// Edges in the caller's memory, in any order.
struct Edges {
    const void *first;
    std::size_t step, count;

    Edge operator[](std::size_t i) const noexcept {
        Edge edge;
        std::memcpy(&edge, static_cast<const char *>(first) + i * step, sizeof edge);
        return edge;
    }
};

/// Loss behind the edges between two antennas on a floor distance; edges beyond the receiver do not count.
double diffraction_loss_db(const Edges &edges, double frequency_mhz, double transmit_height_m, double receive_height_m,
                           double distance_m) noexcept;

} // namespace lvb::path
