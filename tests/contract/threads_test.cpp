// Eight threads compute on the same constant inputs: all get the same bits. Under the thread sanitizer this also shows
// that nothing is shared in secret.
#include "chain/random_chain.hpp"

#include <gtest/gtest.h>

#include <cstring>
#include <deque>
#include <thread>

namespace {

using namespace proof;

TEST(Threads, SharedInputsGiveTheSameBitsEverywhere) {
    Random random(81);
    Lent lent;
    std::deque<Chain> chains;
    for (int i = 0; i < 50; ++i) {
        chains.push_back(ChainMaker(random, lent).make());
        ASSERT_EQ(chains.back().compute(), LVB_OK);
    }
    constexpr int threads = 8;
    int differences[threads] = {};
    std::vector<std::thread> running;
    for (int t = 0; t < threads; ++t)
        running.emplace_back([&chains, &differences, t] {
            for (int round = 0; round < 20; ++round)
                for (std::size_t k = 0; k < chains.size(); ++k) {
                    const Chain &chain = chains[(k + static_cast<std::size_t>(t)) % chains.size()];
                    auto budget = sized<lvb_budget>();
                    auto fault = sized<lvb_fault>();
                    std::vector<lvb_level> levels(chain.stages.size());
                    const lvb_status status =
                        lvb_compute_budget(&chain.link, &budget, levels.data(), sizeof(lvb_level), &fault);
                    differences[t] += status != LVB_OK;
                    differences[t] += std::memcmp(&budget, &chain.budget, sizeof budget) != 0;
                    differences[t] +=
                        std::memcmp(levels.data(), chain.levels.data(), levels.size() * sizeof(lvb_level)) != 0;
                }
        });
    for (std::thread &thread : running) thread.join();
    for (const int count : differences) EXPECT_EQ(count, 0);
}

TEST(Threads, SharedColumnsAndGridsGiveTheSameBitsEverywhere) {
    Random random(82);
    Lent lent;
    Chain chain = ChainMaker(random, lent).make();
    ASSERT_EQ(chain.compute(), LVB_OK);
    std::vector<double> distances(500), frequencies(6);
    for (double &d : distances) d = random.log_uniform(-1.0, 4.0);
    distances[77] = -1.0;
    for (double &f : frequencies) f = random.uniform(100.0, 850.0);
    const std::int32_t best = lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED;

    // Results of one thread: every formula of one argument, then the grid.
    const auto compute = [&] {
        std::vector<double> all;
        std::vector<double> result(distances.size()), scratch(2 * distances.size());
        auto columns = sized<lvb_columns>();
        columns.count = distances.size();
        columns.argument_1 = distances.data();
        columns.result = result.data();
        auto bad = sized<lvb_bad>();
        const auto keep = [&](lvb_status status, const std::vector<double> &values) {
            all.push_back(status);
            all.push_back(static_cast<double>(bad.count));
            all.push_back(static_cast<double>(bad.first));
            all.insert(all.end(), values.begin(), values.end());
        };
        for (std::int32_t set = LVB_INSTRUCTIONS_AUTOMATIC; set <= best; ++set) {
            columns.instructions = set;
            for (columns.formula = 1; std::strcmp(lvb_formula_name(columns.formula), "unknown") != 0; ++columns.formula)
                keep(lvb_compute_columns(&columns, &bad, nullptr), result);
            std::vector<double> levels(frequencies.size() * distances.size());
            auto grid = sized<lvb_grid>();
            grid.instructions = set;
            grid.frequency_count = frequencies.size();
            grid.distance_count = distances.size();
            grid.link = &chain.link;
            grid.frequency_mhz = frequencies.data();
            grid.distance_m = distances.data();
            grid.scratch = scratch.data();
            grid.level_dbm = levels.data();
            keep(lvb_compute_grid(&grid, &bad, nullptr), levels);
        }
        return all;
    };
    const std::vector<double> expected = compute();
    constexpr int threads = 8;
    std::vector<double> results[threads];
    std::vector<std::thread> running;
    for (auto &result : results) running.emplace_back([&compute, &result] { result = compute(); });
    for (std::thread &thread : running) thread.join();
    for (const auto &result : results) {
        ASSERT_EQ(result.size(), expected.size());
        EXPECT_EQ(std::memcmp(result.data(), expected.data(), expected.size() * sizeof(double)), 0);
    }
}

} // namespace
