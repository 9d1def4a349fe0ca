// Plain formulas over columns: whole pieces of ordinary numbers go through the loops of an instruction set, all others
// through the plain function, value by value. Both give the same bits.
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "door/models.hpp"
#include "door/names.hpp"

namespace lvb::door {
namespace {

using math::Loops;
using math::piece;
using math::View;

// The ordinary range of an argument: no special number comes up between there and the result.
struct Ordinary {
    double low, high;
};
constexpr Ordinary sized{1e-290, 1e290};
constexpr Ordinary reals{-1e290, 1e290};
constexpr Ordinary middling{math::least_middling, math::most_middling};
constexpr Ordinary levels{-math::ordinary_db, math::ordinary_db};
constexpr Ordinary losses{0.0, math::ordinary_db};
constexpr Ordinary fractions{1e-290, 1.0};
constexpr Ordinary degrees_c{units::absolute_zero_degc, 1e290};
constexpr Ordinary degrees_f{units::absolute_zero_degf, 1e290};
constexpr Ordinary kelvins{0.0, 1e290};
constexpr Ordinary bounded_levels{-1e12, 1e12};
constexpr Ordinary ways{1.0, 1e290};

using Program = void (*)(const Loops &loops, const double *const *arguments, double *result);

// A formula's plain function, and its programs over one piece: with all arguments columns, and with the first or the
// second a single value. Without a program every value goes through the function.
struct Formula {
    std::uint32_t arguments;
    double (*one)(double);
    double (*two)(double, double);
    double (*three)(double, double, double);
    Ordinary ordinary[2];
    Program programs[4]; // by the bits of `single`
};

template <auto model>
void run(const Loops &loops, const double *const *a, double *y) {
    store(model(View{&loops, a[0]}), y);
}
template <auto model>
void run_both(const Loops &loops, const double *const *a, double *y) {
    store(model(View{&loops, a[0]}, View{&loops, a[1]}), y);
}
template <auto model>
void run_second(const Loops &loops, const double *const *a, double *y) {
    store(model(*a[0], View{&loops, a[1]}), y);
}
template <auto model>
void run_first(const Loops &loops, const double *const *a, double *y) {
    store(model(View{&loops, a[0]}, *a[1]), y);
}

// A template as a function object.
#define LVB_MODEL_1(model) [](const auto &x) noexcept { return model(x); }
#define LVB_MODEL_2(model) [](const auto &x, const auto &y) noexcept { return model(x, y); }

#define LVB_FORMULA_ONE(name, a, a_domain, a_ordinary, model)                                                          \
    {1, lvb_##name, nullptr, nullptr, {a_ordinary, {}}, {run<LVB_MODEL_1(model)>, nullptr, nullptr}},
#define LVB_FORMULA_ONE_PLAIN(name, a, a_domain, model) {1, lvb_##name, nullptr, nullptr, {}, {}},
#define LVB_FORMULA_TWO(name, a, a_domain, b, b_domain, a_ordinary, b_ordinary, model)                                 \
    {2,                                                                                                                \
     nullptr,                                                                                                          \
     lvb_##name,                                                                                                       \
     nullptr,                                                                                                          \
     {a_ordinary, b_ordinary},                                                                                         \
     {run_both<LVB_MODEL_2(model)>, run_second<LVB_MODEL_2(model)>, run_first<LVB_MODEL_2(model)>}},
#define LVB_FORMULA_TWO_PLAIN(name, a, a_domain, b, b_domain, model) {2, nullptr, lvb_##name, nullptr, {}, {}},
#define LVB_FORMULA_THREE_PLAIN(name, a, a_domain, b, b_domain, c, c_domain, model)                                    \
    {3, nullptr, nullptr, lvb_##name, {}, {}},

constexpr Formula formulas[] = {
#include "door/formulas.inc"
};
static_assert(sizeof formulas / sizeof formulas[0] == formula_count); // every plain function of the header

// Columns that were checked: where each argument stands, and by how many values it moves on with each result.
struct Work {
    const Formula *formula = nullptr;
    const Loops *loops = nullptr;
    std::uint64_t count = 0;
    const double *arguments[3] = {};
    std::size_t step[3] = {}; // 0 for a single value, and for an argument that the formula does not have
    double single[3];         // single values, read before a result is written that may lie over them
    double *result = nullptr;
    Program program = nullptr; // null where every value goes through the function
};

double plain(const Formula &formula, const double *const *a) noexcept {
    switch (formula.arguments) {
    case 1:
        return formula.one(*a[0]);
    case 2:
        return formula.two(*a[0], *a[1]);
    default:
        return formula.three(*a[0], *a[1], *a[2]);
    }
}

// Whether the loops can take a whole piece that starts at these arguments; programs have one or two.
bool is_ordinary(const Work &work, const double *const *a) noexcept {
    for (std::uint32_t i = 0; i < 2 && i < work.formula->arguments; ++i) {
        const Ordinary &range = work.formula->ordinary[i];
        const bool inside = work.step[i] == 0 ? *a[i] >= range.low && *a[i] <= range.high
                                              : work.loops->within(a[i], range.low, range.high);
        if (!inside) return false;
    }
    return true;
}

void compute(const Work &work, lvb_bad &bad) noexcept {
    bad.count = 0;
    bad.first = work.count;
    const double *a[3] = {work.arguments[0], work.arguments[1], work.arguments[2]};
    double *y = work.result;
    for (std::uint64_t done = 0; done < work.count;) {
        const std::size_t left = work.count - done < piece ? static_cast<std::size_t>(work.count - done) : piece;
        if (left == piece && work.program != nullptr && is_ordinary(work, a)) {
            work.program(*work.loops, a, y);
            for (std::size_t i = 0; i < 3; ++i) a[i] += work.step[i] * piece;
        } else {
            for (std::size_t k = 0; k < left; ++k) {
                y[k] = plain(*work.formula, a);
                if (math::is_nan(y[k]) && bad.count++ == 0) bad.first = done + k;
                for (std::size_t i = 0; i < 3; ++i) a[i] += work.step[i];
            }
        }
        y += left;
        done += left;
    }
}

bool check_arguments(Refusal &refusal, const lvb_columns &columns, Place place, Work &work) noexcept {
    const double *given[] = {columns.argument_1, columns.argument_2, columns.argument_3};
    constexpr std::int32_t fields[] = {LVB_FIELD_ARGUMENT_1, LVB_FIELD_ARGUMENT_2, LVB_FIELD_ARGUMENT_3};
    const std::uint32_t used = work.formula->arguments;
    for (std::uint32_t i = 0; i < 3; ++i) {
        if (i < used && given[i] == nullptr && columns.count != 0) return refuse(refusal, LVB_E_NULL, place, fields[i]);
        if (i >= used && given[i] != nullptr) return refuse(refusal, LVB_E_UNUSED, place, fields[i]);
    }
    if (columns.single >> used != 0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_SINGLE, columns.single, 0.0, (1u << used) - 1u);
    if (columns.result == nullptr && columns.count != 0) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_RESULT);
    for (std::uint32_t i = 0; i < 3; ++i) {
        const bool column = i < used && (columns.single >> i & 1u) == 0;
        if (column && given[i] != columns.result && overlap(given[i], columns.count, columns.result, columns.count))
            return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_RESULT);
        work.arguments[i] = given[i];
        work.step[i] = column ? 1 : 0;
        if (column || given[i] == nullptr || columns.count == 0) continue;
        work.single[i] = *given[i];
        work.arguments[i] = &work.single[i];
    }
    return true;
}

bool take_columns(Refusal &refusal, const lvb_columns *lent, Work &work) noexcept {
    const Place place{LVB_STRUCT_COLUMNS};
    lvb_columns columns{};
    if (!take(refusal, lent, columns, place, LVB_FIELD_COLUMNS)) return false;
    if (columns.formula == LVB_FORMULA_NONE)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FORMULA, 0.0, 1.0, formula_count);
    if (columns.formula < 1 || columns.formula > formula_count)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_FORMULA, columns.formula, 1.0, formula_count);
    if (columns.count > LVB_MAX_VALUES)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_COUNT, static_cast<double>(columns.count), 0.0,
                      LVB_MAX_VALUES);
    work.formula = &formulas[columns.formula - 1];
    work.count = columns.count;
    work.result = columns.result;
    if (!check_arguments(refusal, columns, place, work) ||
        !choose_loops(refusal, columns.instructions, columns.count, place, work.loops))
        return false;
    work.program = work.formula->programs[columns.single & 3u];
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_columns(const lvb_columns *columns, lvb_bad *bad, lvb_fault *fault) {
    using namespace lvb::door;
    return answer_many<Work>(
        bad, fault, [&](Refusal &refusal, Work &work) noexcept { return take_columns(refusal, columns, work); },
        compute);
}
