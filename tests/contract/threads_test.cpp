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

} // namespace
