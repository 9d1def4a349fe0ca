// A piece of a column as a number: models are written once, for one double and for a piece of many.
//
// A View is a piece of the caller's column; logarithms and powers of it stay unevaluated until they are stored or used,
// so that a formula which is nothing else runs from the caller's memory to the caller's memory.
#pragma once

#include "math/loops.hpp"

#include <cstring>

namespace lvb::math {

template <class Number>
struct Parts;

struct View {
    const Loops *loops;
    const double *at;
};

struct Column {
    const Loops *loops;
    alignas(64) double at[piece];
};

struct Decibels {
    View x;
    double scale, offset;
};
struct DecibelSum {
    View x;
    double scale, more_high, more_low;
};
struct Ratio {
    View x;
    double scale, offset;
};

inline Decibels decibels(const View &x, double scale, double offset) noexcept { return {x, scale, offset}; }
inline Ratio ratio_of_db(const View &x, double scale, double offset) noexcept { return {x, scale, offset}; }
Parts<Column> decibel_parts(const View &x, double scale) noexcept;
Column rooted_ratio_of_db(const View &x, const View &db, double scale, double offset) noexcept;
Column rooted_ratio_of_db(const View &x, double db, double scale, double offset) noexcept;
Column rooted_ratio_of_db(double x, const View &db, double scale, double offset) noexcept;

// The four operations, element by element; every combination of a piece with a piece or a single number.
Column add(const View &a, const View &b) noexcept;
Column add(const View &a, double b) noexcept;
Column subtract(const View &a, const View &b) noexcept;
Column subtract(const View &a, double b) noexcept;
Column subtract(double a, const View &b) noexcept;
Column multiply(const View &a, const View &b) noexcept;
Column multiply(const View &a, double b) noexcept;
Column divide(const View &a, const View &b) noexcept;
Column divide(const View &a, double b) noexcept;
Column divide(double a, const View &b) noexcept;
Column evaluate(const Ratio &ratio) noexcept;

inline View view(const View &x) noexcept { return x; }
inline View view(const Column &x) noexcept { return {x.loops, x.at}; }

template <class T>
concept Piece = requires(const T &x) {
    view(x);
};

template <Piece A, Piece B>
Column operator+(const A &a, const B &b) noexcept {
    return add(view(a), view(b));
}
template <Piece A>
Column operator+(const A &a, double b) noexcept {
    return add(view(a), b);
}
template <Piece B>
Column operator+(double a, const B &b) noexcept {
    return add(view(b), a);
}
template <Piece A, Piece B>
Column operator-(const A &a, const B &b) noexcept {
    return subtract(view(a), view(b));
}
template <Piece A>
Column operator-(const A &a, double b) noexcept {
    return subtract(view(a), b);
}
template <Piece B>
Column operator-(double a, const B &b) noexcept {
    return subtract(a, view(b));
}
template <Piece A, Piece B>
Column operator*(const A &a, const B &b) noexcept {
    return multiply(view(a), view(b));
}
template <Piece A>
Column operator*(const A &a, double b) noexcept {
    return multiply(view(a), b);
}
template <Piece B>
Column operator*(double a, const B &b) noexcept {
    return multiply(view(b), a);
}
template <Piece A, Piece B>
Column operator/(const A &a, const B &b) noexcept {
    return divide(view(a), view(b));
}
template <Piece A>
Column operator/(const A &a, double b) noexcept {
    return divide(view(a), b);
}
template <Piece B>
Column operator/(double a, const B &b) noexcept {
    return divide(a, view(b));
}
inline Column operator*(double a, const Ratio &b) noexcept { return multiply(view(evaluate(b)), a); }
template <class B>
Column operator/(const Ratio &a, const B &b) noexcept {
    return evaluate(a) / b;
}

inline void store(const Column &x, double *y) noexcept { std::memcpy(y, x.at, sizeof x.at); }
inline void store(const View &x, double *y) noexcept { std::memcpy(y, x.at, piece * sizeof *y); }
inline void store(const Decibels &d, double *y) noexcept { d.x.loops->decibels(d.x.at, y, d.scale, d.offset); }
inline void store(const DecibelSum &d, double *y) noexcept {
    d.x.loops->decibel_sum(d.x.at, y, d.scale, d.more_high, d.more_low);
}
inline void store(const Ratio &r, double *y) noexcept { r.x.loops->ratio(r.x.at, y, r.scale, r.offset); }

} // namespace lvb::math
