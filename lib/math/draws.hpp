// Kernels: random words by counter, and the laws that draws from them follow.
//
// Philox4x32-10 (Salmon, Moraes, Dror & Shaw, Parallel random numbers: as easy as 1, 2, 3, 2011) turns a counter and a
// key into four words without any state: every draw can be had by itself. Laws are inverses of their distribution
// functions, in correctly rounded operations and without branches. Coefficients: recipes/draws.py.
#pragma once

#include "math/decibel.hpp"
#include "math/lanes.hpp"

namespace lvb::math::LVB_KERNEL {

/// Four words of 32 bits, each in the lower half of its place; or of several counters, lane by lane.
template <class Word>
struct Words {
    Word a, b, c, d;
};

/// Upper halves of the words are of no account, before and after.
template <int rounds, class Word>
inline Words<Word> philox(const Words<Word> &counter, std::uint64_t key_low, std::uint64_t key_high) noexcept {
    const Word first = product(counter.a, 0xd2511f53), third = product(counter.c, 0xcd9e8d57);
    const Words<Word> next{(third >> 32) ^ counter.b ^ key_low, third, (first >> 32) ^ counter.d ^ key_high, first};
    if constexpr (rounds == 1) return next;
    else return philox<rounds - 1>(next, (key_low + 0x9e3779b9) & low_word, (key_high + 0xbb67ae85) & low_word);
}
template <class Word>
inline Words<Word> philox(const Words<Word> &counter, std::uint64_t key) noexcept {
    return philox<10>(counter, key & low_word, key >> 32);
}

/// Trials share counters by four, in pieces of 128: trial t has word t % 128 / 32 of counter t / 128 * 32 + t % 32.
inline constexpr std::uint64_t trials_of_counter = 4, counters_of_piece = 32;

/// A word as a number between -1 and 1: the middle of one of 2^32 equal steps, exact, and never 0.
inline double signed_unit(std::uint64_t word) noexcept {
    return (from_bits((word & low_word) | bits_of(0x1p52)) - 0x1p52) * 0x1p-31 + (0x1p-32 - 1.0);
}

inline double size_of(double x) noexcept { return from_bits(bits_of(x) & 0x7fffffffffffffff); }
inline double with_sign_of(double x, double size) noexcept {
    return from_bits(bits_of(size) | (bits_of(x) & 0x8000000000000000));
}

/// ln(x) of a normal x > 0, within 1e-14 (1 + |ln x|).
inline double natural_log(const Reduced &x) noexcept {
    const double s = x.s, z = s * s, w = z * z;
    const double r = (0x1.55555556b1dddp-1 + z * 0x1.9999956ce1cf0p-2) +
                     w * ((0x1.2494828ea529ap-2 + z * 0x1.c60a57de29e8fp-3) + w * 0x1.92c280be78d42p-3);
    return x.k * 0x1.62e42fefa39efp-1 + s * (2.0 + z * r);
}
inline double natural_log(double x) noexcept { return natural_log(reduce(x)); }

// The laws, each from a number between -1 and 1 that is uniform. Those of a tolerance are odd functions of it, so that
// their means are exactly 0, and reach from -1 to 1 but for the normal law.

struct Rectangular {
    static double of(double v) noexcept { return v; }
};
struct Triangular {
    static double of(double v) noexcept { return with_sign_of(v, 1.0 - sqrt(1.0 - size_of(v))); }
};
/// Sine of an angle that is uniform. Within 1e-13.
struct ArcSine {
    static double of(double v) noexcept {
        const double z = v * v, w = z * z;
        const double low =
            (0x1.921fb544422b0p+0 + z * -0x1.4abbce622b63bp-1) + w * (0x1.466bc666f7fecp-4 + z * -0x1.32d2c803ddc62p-8);
        const double high = (0x1.5076b5a5f5557p-13 + z * -0x1.e2898ee0e4576p-19) + w * 0x1.d3d9381d52c7dp-25;
        return v * (low + (w * w) * high);
    }
};
/// Standard deviation 1. Within 2e-9: at the middle a step of the words is 6e-10, and wider everywhere else.
struct Normal {
    static double of(double v) noexcept { return of(v, 0.0 - natural_log(room(v))); }
    /// 1 - v^2
    static double room(double v) noexcept { return (1.0 - v) * (1.0 + v); }
    /// With w = -ln(1 - v^2).
    static double of(double v, double w) noexcept {
        const double w2 = w * w, w4 = w2 * w2;
        const double p = ((0x1.40d9322b3244cp+0 + w * 0x1.a4c179473208bp-2) +
                          w2 * (0x1.4186a3f47a1e3p-4 + w * 0x1.4db90758a3d69p-7)) +
                         w4 * ((0x1.bf00d22a95feep-11 + w * 0x1.38e0c5456fa6ep-15) +
                               w2 * (0x1.10326af9be4aep-21 + w * 0x1.06c505b8d4faep-25));
        const double q = ((1.0 + w * 0x1.0e873a0780389p-4) + w2 * (0x1.08abd721fe455p-5 + w * 0x1.7a20bf1b70958p-10)) +
                         w4 * ((0x1.a26f9d263aadap-13 + w * 0x1.23f534e60b516p-20) +
                               w2 * (0x1.55fb3341b1b82p-23 + w * 0x1.14ad3c87e7fa9p-30));
        return v * (p / q);
    }
};
/// Of a uniform v, the probability to lie above it.
inline double above(double v) noexcept { return 0.5 - 0.5 * v; }
/// Positive, with mean 1. Within 1e-14 of it, and a few units of the last place where it is small.
inline double exponential_deviate(double v) noexcept { return 0.0 - natural_log(above(v)); }

} // namespace lvb::math::LVB_KERNEL
