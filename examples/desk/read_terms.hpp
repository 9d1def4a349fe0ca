// What a link must meet beside its receiver's window: noise, limits of power, exposure.
#pragma once

#include "numbers.hpp"

namespace desk {

NoiseTerms read_noise(const Checks &checks, const Value &value);
/// One limit for an own one, and for a published one each row that its designation has for the frequency.
std::vector<Limit> read_limit(const Checks &checks, const Value &value, double frequency_mhz);
Exposure read_exposure(const Checks &checks, const Value &value);
Fading read_fading(const Checks &checks, const Value &value);

/// Two systems side by side; the links are those that were read before.
Neighbours read_neighbours(const Checks &checks, const Value &value, const std::vector<Link> &links);

} // namespace desk
