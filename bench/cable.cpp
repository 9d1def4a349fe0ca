// How long a look-up of one piece of cable takes: from the catalogue, and from a host's own table.
#include <levelbook/levelbook.h>

#include <benchmark/benchmark.h>

#include <vector>

namespace {

void look_up(benchmark::State &state, const lvb_cable_run &run, const lvb_cable_table *table) {
    lvb_cable_loss loss{};
    loss.size = sizeof loss;
    for (auto _ : state) {
        if (lvb_compute_cable_loss(&run, table, &loss, nullptr) != LVB_OK) {
            state.SkipWithError("the cable was refused");
            break;
        }
        benchmark::DoNotOptimize(loss);
        benchmark::ClobberMemory();
    }
}

lvb_cable_run fifteen_metres(std::int32_t type) {
    lvb_cable_run run{};
    run.size = sizeof run;
    run.cable_type = type;
    run.connector_count = 2;
    run.frequency_mhz = 610.0;
    run.length_m = 15.0;
    return run;
}

void cable_of_catalogue(benchmark::State &state) { look_up(state, fifteen_metres(LVB_CABLE_RG_213_U), nullptr); }

// A table is checked whole in every call, so its cost grows with its rows.
void cable_of_own_table(benchmark::State &state) {
    const auto rows = static_cast<std::size_t>(state.range(0));
    std::vector<double> frequency_mhz, attenuation;
    for (std::size_t i = 0; i < rows; ++i) {
        const double part = static_cast<double>(i + 1) / static_cast<double>(rows);
        frequency_mhz.push_back(1000.0 * part);
        attenuation.push_back(20.0 * part);
    }
    lvb_cable_table table{};
    table.size = sizeof table;
    table.row_count = static_cast<std::uint32_t>(rows);
    table.frequency_mhz = frequency_mhz.data();
    table.attenuation_db_per_100m = attenuation.data();
    look_up(state, fifteen_metres(LVB_CABLE_NONE), &table);
    state.SetComplexityN(state.range(0));
}

void cable_name(benchmark::State &state) {
    for (auto _ : state) benchmark::DoNotOptimize(lvb_cable_type_from_name("corrugated 1/2 in"));
}

BENCHMARK(cable_of_catalogue);
BENCHMARK(cable_of_own_table)->Arg(8)->Arg(64)->Arg(512)->Complexity(benchmark::oN);
BENCHMARK(cable_name);

} // namespace
