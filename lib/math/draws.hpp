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

/// Two words, which move on from round to round.
struct Key {
    std::uint64_t low, high;

    Key next() const noexcept { return {(low + 0x9e3779b9) & low_word, (high + 0xbb67ae85) & low_word}; }
};
inline constexpr int philox_rounds = 10;

/// Upper halves of the words are of no account, before and after.
template <class Word>
inline Words<Word> philox_round(const Words<Word> &w, const Key &key) noexcept {
    const Word first = product(w.a, 0xd2511f53), third = product(w.c, 0xcd9e8d57);
    return {(third >> 32) ^ w.b ^ key.low, third, (first >> 32) ^ w.d ^ key.high, first};
}
template <class Word>
inline Words<Word> philox_from(Words<Word> words, Key key, int round) noexcept {
#if defined(__GNUC__)
#pragma GCC unroll 10
#endif
    for (; round < philox_rounds; ++round, key = key.next()) words = philox_round(words, key);
    return words;
}
inline Words<std::uint64_t> philox(const Words<std::uint64_t> &counter, std::uint64_t seed) noexcept {
    return philox_from(counter, Key{seed & low_word, seed >> 32}, 0);
}
/// The words of counters that differ in their lowest word alone: after a round the first word is the same for all, and
/// after two the last.
template <class Word>
inline Words<Word> philox_of(const Word &lowest, const Words<std::uint64_t> &rest, std::uint64_t seed) noexcept {
    const Key key{seed & low_word, seed >> 32}, second = key.next();
    const Words<std::uint64_t> same = philox_round(Words<std::uint64_t>{0, rest.b, rest.c, rest.d}, key);
    const Word first = product(lowest, 0xd2511f53), third = product((first >> 32) ^ same.c, 0xcd9e8d57);
    const std::uint64_t last = product(same.a, 0xd2511f53);
    return philox_from(
        Words<Word>{(third >> 32) ^ (same.b ^ second.low), third, first ^ ((last >> 32) ^ second.high), Word{} ^ last},
        second.next(), 2);
}

/// Trials share counters by four, in pieces of 128: trial t has word t % 128 / 32 of counter t / 128 * 32 + t % 32.
inline constexpr std::uint64_t trials_of_counter = 4, counters_of_piece = 32;

/// A word as a number between -1 and 1: the middle of one of 2^32 equal steps, exact, and never 0.
inline double signed_unit(std::uint64_t word) noexcept { // the word is the first half of a mantissa
    return from_bits(((word << 20) & 0x000ffffffff00000) | bits_of(2.0)) - (3.0 - 0x1p-32);
}
/// 2^32 times the probability to lie above that number, exact.
inline double steps_above(std::uint64_t word) noexcept {
    return from_bits((~word & low_word) | bits_of(0x1p52)) - (0x1p52 - 0.5);
}

inline double size_of(double x) noexcept { return from_bits(bits_of(x) & 0x7fffffffffffffff); }
inline double with_sign_of(double x, double size) noexcept {
    return from_bits(bits_of(size) | (bits_of(x) & 0x8000000000000000));
}

// Logarithms no finer than the steps of the words.

/// ln(m) = s times this, within 3e-10 for m from sqrt(1/2) to sqrt(2); s = (m - 1) / (m + 1).
inline double log_over(double s) noexcept {
    const double z = s * s;
    return 2.0 + z * (0x1.55557a28add29p-1 + z * (0x1.995eb6e724cbbp-2 + z * 0x1.31e34bdcf78f9p-2));
}
inline constexpr double log_of_two = 0x1.62e42fefa39efp-1;

/// x = 2^k m, m from sqrt(1/2) to sqrt(2), and s as above.
struct Scaled {
    double k, s;
};
/// ln(x), within 3e-10, and within 9e-10 |ln(x)|.
inline double natural_log(const Scaled &x) noexcept { return x.k * log_of_two + x.s * log_over(x.s); }
inline Scaled scaled_near_one(double x) noexcept {
    const Reduced reduced = reduce(x);
    return {reduced.k, reduced.s};
}
inline double natural_log(double x) noexcept { return natural_log(scaled_near_one(x)); }

/// x = 2^k m, m from 1 to 2, and s = (m / sqrt(2) - 1) / (m / sqrt(2) + 1): quicker, but leaves no ln(x) near 0 its
/// digits.
inline Scaled scaled(double x) noexcept {
    constexpr double root_two = 0x1.6a09e667f3bcdp0;
    const double k = from_bits((bits_of(x) >> 52) | bits_of(0x1p52)) - (0x1p52 + 1023.0);
    const double m = from_bits((bits_of(x) & 0x000fffffffffffff) | bits_of(1.0));
    return {k, (m - root_two) / (m + root_two)};
}
/// 10 log10(x) of an x that is `scaled`, within 2e-9.
inline double fading_decibels(const Scaled &x) noexcept {
    constexpr double octave = 0x1.8151824c7587fp+1;
    return (x.k * octave + 0.5 * octave) + x.s * (per_neper * log_over(x.s));
}
inline double fading_decibels(double x) noexcept { return fading_decibels(scaled(x)); }

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
/// Positive, with mean 1, of a word: -ln of the probability to lie above its number. Within 3e-10, and 9e-10 of itself.
inline double exponential_deviate(const Scaled &above) noexcept {
    return (32.0 - above.k) * log_of_two - above.s * log_over(above.s);
}
inline double exponential_deviate(std::uint64_t word) noexcept {
    return exponential_deviate(scaled_near_one(steps_above(word)));
}

/// Power of a steady amplitude less another of that power, which is turned by 180 v degrees: no digits are lost where
/// they nearly cancel.
inline double rice_power(double steady, double power, double v) noexcept {
    const double amplitude = sqrt(power), apart = steady - amplitude, half = ArcSine::of(v);
    return apart * apart + 4.0 * (steady * amplitude) * (half * half);
}

/// Gamma deviates of shape d + 1/3 by Marsaglia & Tsang (2000): d times the cube of a shifted normal deviate, taken or
/// drawn again.
struct Gamma {
    double d, c;

    static Gamma of_shape(double shape) noexcept {
        const double d = shape - 1.0 / 3.0;
        return {d, 1.0 / sqrt(9.0 * d)};
    }
    /// What is cubed; held where it is not taken, so that it has a logarithm.
    double base(double x) const noexcept {
        const double shifted = 1.0 + c * x;
        return shifted > 0x1p-100 ? shifted : 0x1p-100;
    }
    /// Takes a normal deviate x where this is positive; with the decibels of the cube and an exponential deviate.
    double margin(double x, double base, double cube_db, double exponential) const noexcept {
        return ((0.5 * x * x + d) - d * (base * base * base)) + (d * (cube_db * nepers_per_db) + exponential);
    }
};

} // namespace lvb::math::LVB_KERNEL
