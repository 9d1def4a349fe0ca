// levelbook-choices: how long the search for the cheapest sets takes, over many random stocks of several shapes, each
// without the answer's being known before. It prints median, nine of ten, and worst; nothing is asserted.
#include "decide/stocks.hpp"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace {

using namespace proof;

struct Tally {
    std::vector<double> milliseconds;
    std::vector<std::uint64_t> steps;
    int proven = 0, infeasible = 0, stopped = 0;
    double worst_gap = 0.0;

    void add(Choosing &c) {
        c.fill(1);
        c.choice.misses = nullptr;
        c.choice.miss_size = 0;
        const auto before = std::chrono::steady_clock::now();
        if (c.compute() != LVB_OK) std::abort();
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - before;
        milliseconds.push_back(took.count());
        steps.push_back(c.chosen.steps);
        proven += c.chosen.outcome == LVB_OUTCOME_PROVEN;
        infeasible += c.chosen.outcome == LVB_OUTCOME_INFEASIBLE || c.chosen.outcome == LVB_OUTCOME_SHORT_OF_STOCK;
        stopped += c.chosen.outcome == LVB_OUTCOME_NOT_PROVEN || c.chosen.outcome == LVB_OUTCOME_UNDECIDED;
        if (c.chosen.cost != 0)
            worst_gap =
                std::max(worst_gap, 100.0 * static_cast<double>(c.chosen.gap) / static_cast<double>(c.chosen.cost));
    }
    void print(const char *name) {
        std::sort(milliseconds.begin(), milliseconds.end());
        std::sort(steps.begin(), steps.end());
        const std::size_t n = steps.size();
        std::printf("%-44s %8.2f %8.2f %8.2f %9llu %7d %7d %7d %6.1f\n", name, milliseconds[n / 2],
                    milliseconds[n * 9 / 10], milliseconds[n - 1], static_cast<unsigned long long>(steps[n - 1]),
                    proven, infeasible, stopped, worst_gap);
        std::fflush(stdout);
    }
};

void run(const char *name, const Shape &shape, std::uint64_t seed, int count) {
    Tally tally;
    for (int i = 0; i < count; ++i) {
        Random random(seed + static_cast<std::uint64_t>(i));
        Choosing c = make_choosing(random, shape);
        tally.add(c);
    }
    tally.print(name);
}

// Links whose slots all take from one stock of pads with few of each.
void run_shared(std::uint32_t links, std::uint32_t slots, std::uint32_t gear, std::uint32_t copies, int count) {
    Tally tally;
    for (int i = 0; i < count; ++i) {
        Random random(77 + static_cast<std::uint64_t>(i));
        Choosing c;
        std::vector<std::uint32_t> all;
        for (std::uint32_t k = 0; k < gear; ++k)
            all.push_back(c.item(stage(LVB_KIND_PASSIVE, -random.uniform(0.3, 9.0), random.uniform(0.0, 0.5)),
                                 10 + random.below(500), 1 + static_cast<std::uint32_t>(random.below(copies))));
        for (std::uint32_t l = 0; l < links; ++l) {
            std::vector<lvb_stage> stages = {source(15.0), antenna(2.0), air(), antenna()};
            for (std::uint32_t k = 0; k < slots; ++k) stages.push_back(stage(LVB_KIND_PASSIVE));
            stages.push_back(receiver(-46.0 - 3.3 * slots, -20.0));
            const std::uint32_t need = c.link(stages, 500.0 + 10.0 * l, random.uniform(20.0, 60.0), 0.0);
            for (std::uint32_t k = 0; k < slots; ++k) c.slot(need, 4 + k, all);
        }
        tally.add(c);
    }
    const std::string name = std::to_string(links) + " links of " + std::to_string(slots) + " slots, " +
                             std::to_string(gear) + " items, 1 to " + std::to_string(copies) + " each";
    tally.print(name.c_str());
}

} // namespace

int main(int count, char **arguments) {
    const int instances = count > 1 ? std::atoi(arguments[1]) : 200;
    if (instances < 1) return std::fprintf(stderr, "usage: %s [INSTANCES]\n", arguments[0]), 2;
    std::printf("%-44s %8s %8s %8s %9s %7s %7s %7s %6s\n", "cheapest set", "median", "9 of 10", "worst ms", "steps",
                "proven", "no set", "stopped", "gap %");
    Shape base;
    base.transmit_slots = base.receive_slots = 6;
    base.items = 12;
    std::uint64_t seed = 1;
    const auto shape = [&](const char *name, auto change) {
        Shape made = base;
        change(made);
        run(name, made, seed, instances);
        seed += 1000;
    };
    std::printf("one link, 12 slots of 12 items (8.9e12 combinations)\n");
    shape("20 dB window, levels in 0.1 dB", [](Shape &s) { s.window_db = 20.0, s.level_step_db = 0.1; });
    shape("1 dB window", [](Shape &s) { s.window_db = 1.0; });
    shape("0.01 dB window", [](Shape &s) { s.window_db = 0.01; });
    shape("0.0001 dB window", [](Shape &s) { s.window_db = 0.0001; });
    shape("1 dB window, cost follows gain", [](Shape &s) { s.window_db = 1.0, s.cost_follows_gain = true; });
    shape("the same with costs up to 30 (many ties)",
          [](Shape &s) { s.window_db = 1.0, s.cost_follows_gain = true, s.largest_cost = 30; });
    shape("1 dB, tolerances, cost follows gain",
          [](Shape &s) { s.window_db = 1.0, s.worst_levels = s.cost_follows_gain = true; });
    shape("3 dB, tolerances, radiated power",
          [](Shape &s) { s.window_db = 3.0, s.worst_levels = s.limited_power = true; });
    shape("3 dB, noise", [](Shape &s) { s.window_db = 3.0, s.limited_noise = true; });
    shape("3 dB, tolerances, power, noise",
          [](Shape &s) { s.window_db = 3.0, s.worst_levels = s.limited_power = s.limited_noise = true; });
    shape("1 dB, all, cost follows gain", [](Shape &s) {
        s.window_db = 1.0, s.worst_levels = s.limited_power = s.limited_noise = s.cost_follows_gain = true;
    });
    const int few = instances < 20 ? instances : 20;
    Shape hostile = base;
    hostile.transmit_slots = 0;
    hostile.receive_slots = 12;
    hostile.window_db = 1.0;
    hostile.worst_levels = hostile.limited_noise = hostile.cost_follows_gain = true;
    run("1 dB, tolerances, noise, all 12 behind the air", hostile, 14001, few);
    std::printf("larger stocks\n");
    for (const std::uint32_t items : {24u, 48u, 96u}) {
        Shape large = base;
        large.items = items;
        large.window_db = 1.0;
        large.worst_levels = large.limited_power = large.cost_follows_gain = true;
        run(("12 slots of " + std::to_string(items) + ", 1 dB, tolerances, power").c_str(), large, 20001, few);
    }
    for (const std::uint32_t half : {9u, 12u}) {
        Shape large = base;
        large.transmit_slots = large.receive_slots = half;
        large.window_db = 1.0;
        large.worst_levels = large.limited_power = large.cost_follows_gain = true;
        run((std::to_string(2 * half) + " slots of 12, 1 dB, tolerances, power").c_str(), large, 30001, few);
    }
    std::printf("links that share one stock\n");
    run_shared(2, 2, 12, 2, few);
    run_shared(4, 2, 12, 2, few);
    run_shared(2, 4, 12, 2, few);
    run_shared(3, 4, 12, 2, few);
    run_shared(8, 2, 24, 2, few);
    run_shared(4, 4, 24, 2, few);
    return 0;
}
