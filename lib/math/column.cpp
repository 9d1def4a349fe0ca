#include "math/column.hpp"

#include "math/decibel.hpp"
#include "math/parts.hpp"

namespace lvb::math {
namespace {

template <class Operation>
Column each(const Loops *loops, Operation operation) noexcept {
    Column y;
    y.loops = loops;
    for (std::size_t i = 0; i < piece; ++i) y.at[i] = operation(i);
    return y;
}

Column rooted(const Roots &roots, const View &db, double scale, double offset) noexcept {
    Column y;
    y.loops = db.loops;
    db.loops->rooted_ratio(db.at, roots, y.at, scale, offset);
    return y;
}

} // namespace

Parts<Column> decibel_parts(const View &x, double scale) noexcept {
    Parts<Column> parts;
    parts.high.loops = parts.low.loops = x.loops;
    x.loops->decibel_parts(x.at, parts.high.at, parts.low.at, scale);
    return parts;
}

Column evaluate(const Ratio &ratio) noexcept {
    Column y;
    y.loops = ratio.x.loops;
    store(ratio, y.at);
    return y;
}

Column rooted_ratio_of_db(const View &x, const View &db, double scale, double offset) noexcept {
    Roots roots;
    x.loops->roots(x.at, roots);
    return rooted(roots, db, scale, offset);
}
Column rooted_ratio_of_db(const View &x, double db, double scale, double offset) noexcept {
    const Column all = each(x.loops, [&](std::size_t) { return db; });
    return rooted_ratio_of_db(x, view(all), scale, offset);
}
Column rooted_ratio_of_db(double x, const View &db, double scale, double offset) noexcept {
    const kernel::Root root = kernel::root_of(x);
    Roots roots;
    for (std::size_t i = 0; i < piece; ++i) {
        roots.k[i] = root.k;
        roots.high[i] = root.high;
        roots.low[i] = root.low;
    }
    return rooted(roots, db, scale, offset);
}
Column add(const View &a, const View &b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] + b.at[i]; });
}
Column add(const View &a, double b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] + b; });
}
Column subtract(const View &a, const View &b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] - b.at[i]; });
}
Column subtract(const View &a, double b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] - b; });
}
Column subtract(double a, const View &b) noexcept {
    return each(b.loops, [&](std::size_t i) { return a - b.at[i]; });
}
Column multiply(const View &a, const View &b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] * b.at[i]; });
}
Column multiply(const View &a, double b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] * b; });
}
Column divide(const View &a, const View &b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] / b.at[i]; });
}
Column divide(const View &a, double b) noexcept {
    return each(a.loops, [&](std::size_t i) { return a.at[i] / b; });
}
Column divide(double a, const View &b) noexcept {
    return each(b.loops, [&](std::size_t i) { return a / b.at[i]; });
}

} // namespace lvb::math
