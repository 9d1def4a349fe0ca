// Where a figure of a link meets what is wanted, as one unknown goes from one bound to the other.
//
// A figure is called with a value of the unknown. It is asked only between its bounds, and is a number there.
#pragma once

#include "math/arithmetic.hpp"
#include "math/elementary.hpp"
#include "path/two_ray.hpp"
#include "units/length.hpp"

#include <cstdint>

namespace lvb::decide {

/// Numbers in the order of their values, as integers: halving them ends at neighbours, whatever their size. Subnormal
/// numbers are left out, since a thread may flush them.
inline constexpr std::int64_t below_normal = (std::int64_t{1} << 52) - 1;
inline std::int64_t order_of(double x) noexcept {
    const auto bits = static_cast<std::int64_t>(__builtin_bit_cast(std::uint64_t, x < 0.0 ? -x : x));
    const std::int64_t order = bits > below_normal ? bits - below_normal : 0;
    return x < 0.0 ? -order : order;
}
inline double number_of(std::int64_t order) noexcept {
    if (order == 0) return 0.0;
    const double x = __builtin_bit_cast(double, (order < 0 ? -order : order) + below_normal);
    return order < 0 ? -x : x;
}

/// The last number from `from`, where it holds, towards `to`, where it does not. (Where it ceases to hold and holds
/// again between them: one such place.)
template <class Holds>
double last_holding(double from, double to, Holds holds) noexcept {
    std::int64_t a = order_of(from), b = order_of(to);
    for (;;) {
        const std::int64_t middle = (a & b) + ((a ^ b) >> 1); // of no sum that overflows
        if (middle == a || middle == b) return number_of(a);
        if (holds(number_of(middle))) a = middle;
        else b = middle;
    }
}

/// Where the figure is `wanted` between two values of the unknown, at one of which it is that or more and at the other
/// that or less. Of several numbers that give it exactly an end, or the middle; of none, that which gives at least it.
template <class Figure>
double met_between(double a, double b, double wanted, Figure figure) noexcept {
    const double at_a = figure(a), at_b = figure(b);
    if (at_a == wanted) return a;
    if (at_b == wanted) return b;
    const double from = at_a > at_b ? a : b, to = at_a > at_b ? b : a;
    const double last = last_holding(from, to, [&](double x) noexcept { return figure(x) >= wanted; });
    if (figure(last) != wanted) return last;
    const double above = last_holding(from, last, [&](double x) noexcept { return figure(x) > wanted; });
    const double first = number_of(order_of(above) + (order_of(last) > order_of(above) ? 1 : -1));
    return first + (last - first) / 2.0;
}

/// The way along which one walks where the figure goes up and down with the unknown.
struct Walk {
    bool two_ray;
    double transmit_height_m, receive_height_m, frequency_mhz;

    /// How far the next value to look at may be: near enough that no lobe of two rays is stepped over.
    double step(double distance_m) const noexcept {
        const double usual = distance_m / 100.0;
        if (!two_ray) return usual;
        const path::Rays rays = path::rays(transmit_height_m, receive_height_m, distance_m);
        const double largest = 2.0 * (transmit_height_m < receive_height_m ? transmit_height_m : receive_height_m);
        const double sixteenth = units::wavelength_m_from_mhz(frequency_mhz) / 16.0, least = largest / 16384.0;
        const double part = sixteenth > least ? sixteenth : least;
        const double slope = distance_m / rays.direct_m / rays.reflected_m * rays.excess_m; // of the path difference
        return slope * usual > part ? part / slope : usual;
    }
};

/// A step of the figure at `where`, between `at` and `next`, is looked at from both sides: the first of its neighbours,
/// itself and its other neighbour that comes before `next`.
inline double up_to_step(double at, double next, double where) noexcept {
    for (std::int64_t aside = -1; aside <= 1; ++aside) {
        const double x = number_of(order_of(where) + (at < next ? aside : -aside));
        if (at < next ? x > at && x < next : x < at && x > next) return x;
    }
    return next;
}

/// What a walk found: a place, or none.
struct Place {
    bool found;
    double at;
};

/// A place between a and b where `lack` is not above 0, which it is at both; it has a minimum between them. By golden
/// section.
template <class Lack>
Place dip_between(double a, double b, Lack lack) noexcept {
    constexpr double part = 0x1.8722191a02d61p-2; // (3 - sqrt(5)) / 2
    double c = a + part * (b - a), d = b - part * (b - a);
    double at_c = lack(c), at_d = lack(d);
    for (int i = 0; i < 40; ++i) {
        if (at_c <= 0.0) return {true, c};
        if (at_d <= 0.0) return {true, d};
        if (at_c < at_d) {
            b = d, d = c, at_d = at_c;
            c = a + part * (b - a), at_c = lack(c);
        } else {
            a = c, c = d, at_c = at_d;
            d = b - part * (b - a), at_d = lack(d);
        }
    }
    return {false, 0.0};
}

/// The first place on the way from one value to another where the figure is `wanted`; at `from` it is not. `next_of`
/// gives the value to look at after another one.
template <class Next, class Figure>
Place first_met(double from, double to, double wanted, Next next_of, Figure figure) noexcept {
    const bool above = figure(from) > wanted;
    const auto room = [&](double x) noexcept { return above ? figure(x) - wanted : wanted - figure(x); };
    double before = from, at = from;
    double room_before = room(from), room_at = room_before;
    while (at != to) {
        const double next = next_of(at);
        const double room_next = room(next);
        if (room_at <= room_before && room_at <= room_next && before != at) {
            const Place dip = dip_between(before, next, room);
            if (dip.found) return {true, met_between(before, dip.at, wanted, figure)};
        }
        if (room_next <= 0.0) return {true, met_between(at, next, wanted, figure)};
        before = at, room_before = room_at;
        at = next, room_at = room_next;
    }
    return {false, 0.0};
}

} // namespace lvb::decide
