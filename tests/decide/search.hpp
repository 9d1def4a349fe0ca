// A search for a fault, with its chain, its readings and everything that a call needs.
#pragma once

#include "chain/chains.hpp"

#include <gtest/gtest.h>

#include <utility>

namespace proof {

/// A reading at its predicted level plus `excess_db`; where `uncertainty_db` is 0 the search's own counts.
struct At {
    std::uint32_t stage;
    double excess_db;
    double uncertainty_db = 0.0;
};

struct Search {
    Chain chain;
    std::vector<lvb_reading> readings;
    std::vector<lvb_suspect> suspects;
    lvb_locate request = sized<lvb_locate>();
    lvb_locate_result result = sized<lvb_locate_result>();
    lvb_fault fault = sized<lvb_fault>();

    explicit Search(std::vector<lvb_stage> stages, double uncertainty_db = 0.3) : chain(std::move(stages)) {
        EXPECT_EQ(chain.compute(), LVB_OK);
        request.uncertainty_db = uncertainty_db;
        request.reading_size = sizeof(lvb_reading);
    }
    Search(std::vector<lvb_stage> stages, const std::vector<At> &given, double uncertainty_db = 0.3)
        : Search(std::move(stages), uncertainty_db) {
        for (const At &at : given) read(at);
        EXPECT_EQ(run(), LVB_OK);
    }
    std::uint32_t stage_count() const { return static_cast<std::uint32_t>(chain.stages.size()); }
    double predicted_dbm(std::uint32_t stage) const { return chain.levels[stage].far_level_dbm; }
    void read(const At &at) {
        lvb_reading reading{};
        reading.stage = at.stage;
        reading.level_dbm = predicted_dbm(at.stage) + at.excess_db;
        reading.uncertainty_db = at.uncertainty_db;
        readings.push_back(reading);
    }
    lvb_status run() {
        chain.link.stages = chain.stages.data();
        request.link = &chain.link;
        request.readings = readings.data();
        request.reading_count = static_cast<std::uint32_t>(readings.size());
        suspects.assign(chain.stages.size(), lvb_suspect{});
        return lvb_locate_fault(&request, &result, suspects.data(), sizeof(lvb_suspect), &fault);
    }
};

/// A conducted chain of so many stages: source, pads and amplifiers in turn, a receiver. Each can be measured after.
inline std::vector<lvb_stage> bench_chain(std::uint32_t count, double tolerance_db) {
    std::vector<lvb_stage> stages = {source(10.0, tolerance_db)};
    while (stages.size() + 1 < count)
        stages.push_back(stages.size() % 2 ? stage(LVB_KIND_PASSIVE, -6.0, tolerance_db)
                                           : stage(LVB_KIND_AMPLIFIER, 6.0, tolerance_db));
    if (count > 1) stages.push_back(stage(LVB_KIND_RECEIVER, 0.0, tolerance_db));
    return stages;
}

} // namespace proof
