// Seeded random values that are the same on every platform (the standard's distributions are not).
#pragma once

#include <cmath>
#include <cstdint>
#include <random>

namespace proof {

class Random {
  public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}

    std::uint64_t bits() { return engine_(); }
    std::uint64_t below(std::uint64_t count) { return engine_() % count; }
    double uniform(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_() >> 11) * 0x1p-53);
    }
    double log_uniform(double low_exponent, double high_exponent) {
        return std::pow(10.0, uniform(low_exponent, high_exponent));
    }
    double sign() { return below(2) ? 1.0 : -1.0; }

  private:
    std::mt19937_64 engine_;
};

} // namespace proof
