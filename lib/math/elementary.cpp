#include "math/elementary.hpp"

#include "math/angle.hpp"
#include "math/arc.hpp"
#include "math/decibel.hpp"
#include "math/exact.hpp"

namespace lvb::math {
namespace {

// Beyond these a power overflows or vanishes, with every offset up to 1000; halves of their exponents, offset and all,
// still make normal powers of two.
constexpr double largest_db = 5000.0;

// 2^k in two halves, for exponents that one power of two does not hold.
struct Halves {
    double first, second, inverse_of_first;
};
Halves halves_of(double k) noexcept {
    const double half = (0.5 * k + kernel::rounder) - kernel::rounder;
    return {kernel::power_of_two(half + kernel::rounder), kernel::power_of_two((k - half) + kernel::rounder),
            kernel::power_of_two(kernel::rounder - half)};
}

double limited(double db) noexcept {
    if (db < -largest_db) return -largest_db;
    return db > largest_db ? largest_db : db;
}

// scale 10 log10(x) + offset for every x >= 0.
kernel::Log log_of(double x, double scale, double offset) noexcept {
    if (x == 0.0) return {scale * -infinity, 0.0};
    if (x == infinity) return {scale * infinity, 0.0};
    if (x >= kernel::smallest_normal) return kernel::log_of_normal(x, scale, offset);
    constexpr double lift = 0x1p54;
    const kernel::Log lifted = kernel::log_of_normal(x * lift, scale, offset);
    const kernel::Log by = kernel::log_of_normal(lift, scale, 0.0);
    return {lifted.sum - by.sum, lifted.rest - by.rest};
}

} // namespace

double decibels(double x, double scale, double offset) noexcept {
    if (!(x >= 0.0)) return not_a_number;
    const kernel::Log log = log_of(x, scale, offset);
    return log.sum + log.rest;
}

Parts<double> decibel_parts(double x, double scale) noexcept {
    const kernel::Log log = log_of(x, scale, 0.0);
    if (abs(log.sum) == infinity) return {log.sum, 0.0};
    const double high = kernel::coarse_db(log.sum);
    return {high, (log.sum - high) + log.rest};
}

double ten_log10_1p(double x) noexcept {
    const double sum = 1.0 + x;
    if (!(sum >= 0.0)) return not_a_number;
    const kernel::Log log = log_of(sum, 1.0, 0.0);
    if (sum == 0.0 || sum == infinity) return log.sum;
    // What the sum lost in rounding, as a change of the logarithm.
    const double lost = x < 1.0 ? x - (sum - 1.0) : 1.0 - (sum - x);
    return log.sum + (log.rest + lost / sum * (kernel::per_neper_high + kernel::per_neper_low));
}

double ratio_of_db(double db, double scale, double offset) noexcept {
    const double scaled = scale * db, scaled_offset = scale * offset;
    if (abs(scaled + scaled_offset) <= kernel::largest_ordinary_db)
        return kernel::power_of_reduced(kernel::reduce_db(scaled, scaled_offset));
    const kernel::Power p = kernel::power_parts(kernel::reduce_db(limited(scaled), scaled_offset));
    const Halves halves = halves_of(p.k);
    return kernel::mantissa(p) * halves.first * halves.second;
}

double rooted_ratio_of_db(double x, double db, double scale, double offset) noexcept {
    constexpr double lift = 0x1p54, lifted_root = 0x1p-27;
    constexpr double largest_k = 1000.0; // of an ordinary power of two; at twice that every product is 0 or infinite
    const bool is_normal = x >= kernel::smallest_normal;
    const kernel::Root root = kernel::root_of(is_normal ? x : x * lift);
    const kernel::ReducedDb reduced = kernel::reduce_db(limited(scale * db), scale * offset);
    const double value = kernel::mantissa(kernel::power_parts(reduced), root);
    const double k = reduced.k + root.k;
    if (is_normal && abs(k) <= largest_k) return value * kernel::power_of_two(k + kernel::rounder);
    const double most = 2.0 * largest_k;
    const Halves halves = halves_of(k < -most ? -most : k > most ? most : k);
    return value * (is_normal ? 1.0 : lifted_root) * halves.first * halves.second;
}

double power_of_db_m1(double db) noexcept {
    const kernel::Power p = kernel::power_parts(kernel::reduce_db(limited(db), 0.0));
    const Halves halves = halves_of(p.k);
    const double y = p.y_high + p.y_low;
    return ((halves.second - halves.inverse_of_first) + halves.second * y) * halves.first; // 2^k (1 + y) - 1
}

double power_of_db(const Parts<double> &db) noexcept {
    const Parts<double> sum = exact_sum(db.high, db.low);
    kernel::ReducedDb reduced = kernel::reduce_db(limited(sum.high), 0.0);
    reduced.far -= sum.low;
    const kernel::Power p = kernel::power_parts(reduced);
    const Halves halves = halves_of(p.k);
    return kernel::mantissa(p) * halves.first * halves.second;
}

double cos_deg(double angle_deg) noexcept { return kernel::cos_deg(angle_deg); }
double abs_sin_deg(double angle_deg) noexcept { return kernel::abs_sin_deg(angle_deg); }
double sin_deg(double angle_deg) noexcept {
    const double size = abs_sin_deg(angle_deg);
    return kernel::sine_is_negative(angle_deg) ? -size : size;
}
double arctangent_deg(double y, double x) noexcept { return x == 0.0 && y == 0.0 ? 0.0 : kernel::arctangent_deg(y, x); }

} // namespace lvb::math
