// The common scale of all fading: the margin at which Rayleigh fading has the same outage. It is the margin itself for
// Rayleigh fading and nearly straight for the others, so that a margin is found from an outage in few steps.
#pragma once

#include "math/elementary.hpp"
#include "math/special.hpp"

namespace lvb::fading {

/// A distribution of levels: what lies below and above a level that lies a margin in dB below its reference.
using Model = math::Tails (*)(double margin_db, double parameter);

/// -10 log10(-ln(1 - outage)): the margin below the mean of Rayleigh fading.
double rayleigh_margin_db(const math::Tails &tails) noexcept;

/// The margin in dB at which the model has an outage.
double margin_db(double outage, Model model, double parameter) noexcept;

} // namespace lvb::fading
