// What the page says of a link beside its levels, where the scenario has the data.
#pragma once

#include "compute.hpp"

namespace desk {

/// Places of the antennas, and how far the path's model can be trusted.
std::string print_walk(const Link &link, const Computed &computed);
/// How often fading takes the far end below the floor.
std::string print_fading(const Link &link, const Computed &computed);
/// Noise and linearity of the receive side.
std::string print_noise(const Link &link, const Computed &computed);
/// Limits of power and the distance that people must keep.
std::string print_limits(const Answer &answer);

/// Two systems side by side.
std::string print_pairs(const std::vector<Pair> &pairs);

/// "3.56 W/m2 for the general public by 47 CFR 1.1310"
std::string exposure_limit_words(const Exposure &exposure, double limit_w_per_m2);
/// "100 mW" or "1.5 W"
std::string power_words(double dbm);

} // namespace desk
