// How long each plain function of doubles takes. The list is derived from the header, with the range of each argument.
#include "support/range.hpp"

#include <levelbook/levelbook.h>

#include <benchmark/benchmark.h>

#include <array>

namespace {

constexpr std::size_t samples = 64; // a power of two

// Arguments spread over the range, so that no branch is taken every time.
std::array<std::array<double, samples>, 3> arguments(const char *range) {
    std::array<std::array<double, samples>, 3> values{};
    const std::vector<support::Interval> intervals = support::read_range(range);
    for (std::size_t a = 0; a < intervals.size(); ++a)
        for (std::size_t i = 0; i < samples; ++i)
            values.at(a)[i] = support::within(intervals[a], static_cast<double>(i * 37 % samples) / samples);
    return values;
}

template <class Function, class Call>
void measure(benchmark::State &state, Function function, const char *range, Call call) {
    const auto values = arguments(range);
    std::size_t i = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(call(function, values, i));
        i = (i + 1) % samples;
    }
}

int register_all() {
#define LVB_SCALAR_1(name, range, accuracy)                                                                            \
    benchmark::RegisterBenchmark(#name, [](benchmark::State &state) {                                                  \
        measure(state, name, range, [](auto f, const auto &x, std::size_t i) { return f(x[0][i]); });                  \
    });
#define LVB_SCALAR_2(name, range, accuracy)                                                                            \
    benchmark::RegisterBenchmark(#name, [](benchmark::State &state) {                                                  \
        measure(state, name, range, [](auto f, const auto &x, std::size_t i) { return f(x[0][i], x[1][i]); });         \
    });
#define LVB_SCALAR_3(name, range, accuracy)                                                                            \
    benchmark::RegisterBenchmark(#name, [](benchmark::State &state) {                                                  \
        measure(state, name, range,                                                                                    \
                [](auto f, const auto &x, std::size_t i) { return f(x[0][i], x[1][i], x[2][i]); });                    \
    });
#include "levelbook_scalars.inc"
    return 0;
}

[[maybe_unused]] const int registered = register_all();

} // namespace
