// How long a budget for both ends of the walk takes, and how that grows with the chain.
#include "chains.hpp"

#include <benchmark/benchmark.h>

namespace {

void compute(benchmark::State &state, const bench::Chain &chain, bool with_levels) {
    std::vector<lvb_level> levels(chain.size());
    lvb_budget budget{};
    budget.size = sizeof budget;
    lvb_level *wanted = with_levels ? levels.data() : nullptr;
    for (auto _ : state) {
        if (lvb_compute_budget(&chain.link(), &budget, wanted, sizeof(lvb_level), nullptr) != LVB_OK) {
            state.SkipWithError("the chain was refused");
            break;
        }
        benchmark::DoNotOptimize(budget);
        benchmark::ClobberMemory();
    }
    state.SetComplexityN(static_cast<std::int64_t>(chain.size()));
    state.counters["stages"] = static_cast<double>(chain.size());
}

void budget_line_check(benchmark::State &state) { compute(state, bench::Chain::line_check(), false); }
void budget_bare_link(benchmark::State &state) { compute(state, bench::Chain::bare_link(), false); }
void budget(benchmark::State &state) { compute(state, bench::Chain(static_cast<std::size_t>(state.range(0))), false); }
void budget_with_levels(benchmark::State &state) {
    compute(state, bench::Chain(static_cast<std::size_t>(state.range(0))), true);
}

BENCHMARK(budget_line_check); // 3 stages
BENCHMARK(budget_bare_link);  // 6 stages
BENCHMARK(budget)->Arg(12)->Arg(24)->Arg(48)->Arg(96)->Complexity(benchmark::oN);
BENCHMARK(budget_with_levels)->Arg(12)->Arg(24)->Arg(48)->Arg(96)->Complexity(benchmark::oN);

} // namespace
