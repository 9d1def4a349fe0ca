#include "accuracy/measure.hpp"

#include "accuracy/oracles.hpp"

#include <cstring>

namespace accuracy {
namespace {

using proof::Random;
using support::Function;
using support::Interval;

constexpr double highest_temperature =
    1000.0; // in degrees: beyond it, an error in degrees tells of nothing that occurs

bool in_decibels(const std::string &name) { return name.find("_db") != std::string::npos; }

// Where the accuracy lines hold, as the header says above the conversions.
bool covered(const Interval &interval, double x) {
    if (!std::isfinite(x) || !interval.holds(x)) return false;
    const double size = std::fabs(x);
    return x == 0.0 || (size >= 1e-100 && size <= (in_decibels(interval.name) ? 1000.0 : 1e100));
}

double any_bits(Random &random) {
    const std::uint64_t bits = random.bits();
    double x;
    std::memcpy(&x, &bits, sizeof x);
    return x;
}

double a_few_steps_from(double x, Random &random) {
    const double towards = random.below(2) ? HUGE_VAL : -HUGE_VAL;
    for (std::uint64_t n = random.below(4); n > 0; --n) x = std::nextafter(x, towards);
    return x;
}

/// Spots where a formula or its kernels turn: powers of ten, one, both sides of the ends of the logarithm's interval
/// sqrt(1/2) and sqrt(2) at any exponent, powers of two, odd halves of 10 log10(2) (the ends of the exponential's).
double hard_spot(Random &random) {
    const double exponent = std::floor(random.uniform(-30.0, 31.0));
    switch (random.below(6)) {
    case 0:
        return a_few_steps_from(std::pow(10.0, exponent), random);
    case 1:
        return 1.0 + random.sign() * random.log_uniform(-17.0, 0.0);
    case 2:
        return a_few_steps_from(std::ldexp(std::sqrt(0.5), static_cast<int>(exponent)), random);
    case 3:
        return a_few_steps_from(std::ldexp(1.0, static_cast<int>(exponent)), random);
    case 4:
        return a_few_steps_from((exponent + 0.5) * 10.0 * std::log10(2.0) * (random.below(2) ? 1.0 : 2.0), random) +
               30.0 * (random.uniform(0.0, 5.0) < 2.0 ? std::floor(random.uniform(-4.0, 5.0)) : 0.0);
    default:
        return random.sign() * std::ldexp(random.uniform(0.5, 1.0), static_cast<int>(exponent / 4.0));
    }
}

double argument(const Interval &interval, Random &random) {
    for (;;) {
        const std::uint64_t way = random.below(8);
        const double x = way == 0 ? any_bits(random) : way < 4 ? hard_spot(random) : proof::sample(interval, random);
        if (covered(interval, x)) return x;
    }
}

bool gives_decibels(const Function &scalar) {
    const std::string name = scalar.name.substr(4); // without "lvb_"
    if (name.starts_with("db")) return !name.starts_with("db_per_100");
    return in_decibels(name.substr(0, name.find("_from"))) || name == "eirp_dbm_from_field_strength";
}

bool gives_degrees(const Function &scalar) {
    const std::string name = scalar.name;
    return name.starts_with("lvb_kelvin") || name.starts_with("lvb_degc") || name.starts_with("lvb_degf");
}

/// Moves one argument so that a level comes close to 0 dB, where it does not reach it by itself.
void steer_to_zero(const Function &scalar, const std::vector<Interval> &intervals, std::vector<double> &x,
                   Random &random) {
    const double result = scalar.call(x.data());
    if (!std::isfinite(result)) return;
    const std::size_t k = random.below(x.size());
    const double old = x[k];
    double best = result;
    for (const double candidate :
         {old - result, old * std::pow(10.0, result / 20.0), old * std::pow(10.0, -result / 20.0),
          old * std::pow(10.0, result / 10.0), old * std::pow(10.0, -result / 10.0)}) {
        if (!covered(intervals[k], candidate)) continue;
        std::vector<double> moved = x;
        moved[k] = candidate;
        const double there = scalar.call(moved.data());
        if (!(std::fabs(there) < std::fabs(best))) continue;
        best = there;
        x[k] = candidate;
    }
}

} // namespace

std::string plain_unit(const Function &scalar) {
    return gives_decibels(scalar) ? "dB" : gives_degrees(scalar) ? "degrees" : "relative";
}

std::vector<double> extremes(const Interval &interval) {
    using limits = std::numeric_limits<double>;
    std::vector<double> all = {0.0, interval.low, interval.high, std::nextafter(1.0, 0.0), std::nextafter(1.0, 2.0)};
    for (const double size : {limits::denorm_min(),
                              limits::min(),
                              1e-300,
                              1e-200,
                              1e-155,
                              1e-100,
                              1e-8,
                              0.5,
                              1.0,
                              45.0,
                              90.0,
                              100.0,
                              1e8,
                              1e12,
                              1e100,
                              1e155,
                              1e200,
                              1e300,
                              1.7e308,
                              limits::max()})
        for (const double x : {size, -size}) all.push_back(x);
    if (in_decibels(interval.name))
        for (const double size : {1000.0, 3000.0, 3100.0, 4000.0, 5000.0, 6000.0, 6150.0, 6300.0, 7000.0, 9200.0})
            for (const double x : {size, -size}) all.push_back(x);
    std::erase_if(all, [&](double x) { return !std::isfinite(x) || !interval.holds(x); });
    return all;
}

Measured measure(const Function &scalar, std::uint64_t points) {
    const Oracle oracle = oracle_of(scalar.name);
    const std::vector<Interval> &intervals = scalar.range;
    const proof::Accuracy stated = proof::accuracy(scalar);
    const bool decibels = gives_decibels(scalar), degrees = gives_degrees(scalar);
    std::uint64_t seed = 20250101;
    for (const char c : scalar.name) seed = seed * 31 + static_cast<unsigned char>(c);
    Random random(seed);

    Measured measured;
    measured.points = points;
    for (std::uint64_t i = 0; i < points; ++i) {
        std::vector<double> x;
        for (const Interval &interval : intervals) x.push_back(argument(interval, random));
        if (decibels && i % 4 == 0) steer_to_zero(scalar, intervals, x, random);
        const double got = scalar.call(x.data());
        const Real exact = oracle(x.data());
        if (!exact.is_number() || !std::isfinite(got)) {
            // Infinity is right for itself, and only for itself.
            if (got != exact.rounded()) measured.ulp.take(HUGE_VAL, x);
            continue;
        }
        const double error = abs(Real(got) - exact).rounded();
        const double size = abs(exact).rounded();
        if (stated.ulp * exact.ulp() < stated.absolute) measured.near_zero.take(error, x);
        else measured.ulp.take(error / exact.ulp(), x);
        if (degrees && size > highest_temperature) continue;
        measured.plain.take(decibels || degrees || size == 0.0 ? error : error / size, x);
    }
    return measured;
}

} // namespace accuracy
