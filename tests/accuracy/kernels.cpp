#include "accuracy/kernels.hpp"

#include "accuracy/oracles.hpp"

#include <cstring>

namespace accuracy {
namespace {

bool is_logarithm(const std::string &function) { return function == "lvb_db_from_power_ratio"; }

const support::Function &scalar_of(const std::string &function) {
    for (const support::Function &scalar : support::functions())
        if (function == scalar.name) return scalar;
    throw std::runtime_error(function + " is no plain function");
}

double with_bits(std::uint64_t exponent, std::uint64_t mantissa) {
    const std::uint64_t bits = exponent << 52 | (mantissa & 0x000fffffffffffff);
    double x;
    std::memcpy(&x, &bits, sizeof x);
    return x;
}

void check(const support::Function &scalar, Oracle oracle, double x, Measured &measured) {
    const double got = scalar.call(&x);
    const Real exact = oracle(&x);
    const double error = abs(Real(got) - exact).rounded();
    ++measured.points;
    measured.ulp.take(error / exact.ulp(), {x});
    measured.plain.take(error, {x});
}

// The exponential's argument with octave k and a rest from -1/2 to 1/2 octave.
double decibels_of(double k, double rest) { return (k + rest) * 10.0 * std::log10(2.0); }

} // namespace

const std::vector<Kernel> &kernels() {
    static const std::vector<Kernel> all = {{"lvb_db_from_power_ratio", 0.81}, {"lvb_power_ratio_from_db", 0.90}};
    return all;
}

Measured search(const Kernel &kernel, std::uint64_t points) {
    const support::Function &scalar = scalar_of(kernel.function);
    const Oracle oracle = oracle_of(kernel.function);
    const bool logarithm = is_logarithm(kernel.function);
    proof::Random random(logarithm ? 51 : 52);
    Measured measured;
    for (int mantissa = 0; mantissa < 16; ++mantissa) {
        const double rest = random.uniform(-0.5, 0.5);
        const std::uint64_t bits = random.bits();
        for (int exponent = 1; exponent <= 2046; ++exponent)
            check(scalar, oracle,
                  logarithm ? with_bits(static_cast<std::uint64_t>(exponent), bits)
                            : decibels_of(static_cast<double>(exponent - 1023) * (1021.0 / 1023.0), rest),
                  measured);
    }
    for (std::uint64_t i = 0; i < points; ++i) {
        // Half of the points near 1, or near 0 dB, where the result's own digits are finest.
        const bool close = random.below(2) != 0;
        double x;
        if (logarithm) {
            const std::uint64_t exponent = close ? 1020 + random.below(6) : 1 + random.below(2046);
            x = with_bits(exponent, random.bits());
        } else {
            x = close ? random.uniform(-10.0, 10.0) : random.uniform(-3070.0, 3070.0);
        }
        check(scalar, oracle, x, measured);
    }
    return measured;
}

} // namespace accuracy
