// The search for a fault: a small case by hand, and what must hold in every case.
#include "decide/search.hpp"
#include "units/random.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

bool same_bits(const Search &a, const Search &b) {
    return std::memcmp(&a.result, &b.result, sizeof a.result) == 0 && a.suspects.size() == b.suspects.size() &&
           std::memcmp(a.suspects.data(), b.suspects.data(), a.suspects.size() * sizeof(lvb_suspect)) == 0;
}

std::vector<lvb_stage> three_stages() {
    return {source(0.0, 0.3), stage(LVB_KIND_PASSIVE, -3.0, 0.6), stage(LVB_KIND_AMPLIFIER, 10.0, 0.3)};
}

// Source, pad and amplifier; nothing is amiss after the source, 6 dB are missing at the end. By hand: the stages have
// the variances 0.03, 0.12 and 0.03, a reading 0.09. The jump behind the source is -6 with 0.0225 + 0.15 + 0.09 =
// 0.2625; that of the source -6 * 0.09 / 0.33 with 0.03 + 0.24 * 0.09 / 0.33. Densities, each 1 / 6 before, against 1 /
// 2 for no fault; last digits by NumPy with the covariance matrices of both readings.
TEST(ByHand, ThreeStagesAndTwoReadings) {
    const Search search(three_stages(), {{0, 0.0}, {2, -6.0}});
    const double jump[] = {-6.0 * 0.09 / 0.33, -6.0}, variance[] = {0.03 + 0.24 * 0.09 / 0.33, 0.2625};
    double ratio[2];
    for (int i = 0; i < 2; ++i)
        ratio[i] = std::sqrt(variance[i] / (variance[i] + 100.0)) *
                   std::exp(jump[i] * jump[i] * 100.0 / (2.0 * variance[i] * (variance[i] + 100.0)));
    const double sum = 0.5 + ratio[0] / 6.0 + 2.0 * ratio[1] / 6.0;
    EXPECT_NEAR(search.result.none_probability, 0.5 / sum, 1e-12);
    EXPECT_NEAR(search.suspects[0].probability, ratio[0] / 6.0 / sum, 1e-12);
    for (std::size_t i = 1; i < 3; ++i) {
        EXPECT_NEAR(search.suspects[i].probability, ratio[1] / 6.0 / sum, 1e-12);
        EXPECT_NEAR(search.suspects[i].fault_db, -6.0 * 100.0 / 100.2625, 1e-12);
        EXPECT_NEAR(search.suspects[i].standard_deviation_db, std::sqrt(26.25 / 100.2625), 1e-12);
        EXPECT_EQ(search.suspects[i].span, 1u);
    }
    EXPECT_EQ(search.suspects[0].span, 0u);
    EXPECT_NEAR(search.result.chi_square, 36.0 / 0.2625, 1e-9);
    EXPECT_NEAR(search.result.p_value, std::exp(-18.0 / 0.2625), 1e-36); // of two degrees of freedom
    EXPECT_EQ(search.result.consistent, 0);
    EXPECT_EQ(search.result.reading_count, 2u);
    EXPECT_EQ(search.result.stage, 1u);
    EXPECT_EQ(search.result.span_first, 1u);
    EXPECT_EQ(search.result.span_last, 2u);
    EXPECT_NEAR(search.result.span_probability, 1.0, 1e-12);
    EXPECT_NEAR(search.result.probability, 0.5, 1e-12);
    EXPECT_EQ(search.result.next_stage, 1u);             // between the two suspects
    EXPECT_NEAR(search.result.expected_bits, 1.0, 1e-6); // which it tells apart
}

// With a fault of any size in the second stage nothing ties the readings before it to those behind it: 0.6 dB against
// 0.03 + 0.09 before, and 0.9 dB between two of 0.09 with 0.03 between. Chi-square of two degrees: exp(-x / 2).
TEST(ByHand, WhatAFaultLeavesUnexplained) {
    const double left = 0.36 / 0.12 + 0.81 / 0.21;
    const Search search(three_stages(), {{0, 0.6}, {1, -6.0}, {2, -6.9}});
    EXPECT_EQ(search.result.stage, 1u);
    EXPECT_NEAR(search.result.fault_p_value, std::exp(-0.5 * left), 1e-12);
    EXPECT_LT(search.result.p_value, 1e-20);
}

// A level that is right again behind the suspect: the culprit looks certain, and no single fault explains the readings.
TEST(ByHand, ReadingsThatContradictEachOther) {
    std::vector<lvb_stage> stages = three_stages();
    for (lvb_stage &each : stages) each.tolerance_db = 0.0;
    const Search search(stages, {{0, 0.0}, {1, -6.0}, {2, 0.0}});
    EXPECT_EQ(search.result.stage, 1u);
    EXPECT_GT(search.result.probability, 0.99);
    EXPECT_NEAR(search.result.fault_p_value / std::exp(-100.0), 1.0, 1e-9); // 36 / 0.18, of two degrees
    const Search plain(stages, {{0, 0.0}, {1, -6.0}, {2, -6.0}});
    EXPECT_EQ(plain.result.fault_p_value, 1.0);
    const Search single(stages, {{1, -6.0}}); // one reading contradicts nothing
    EXPECT_EQ(single.result.fault_p_value, 1.0);
    // Behind the last reading a fault explains nothing of them.
    const Search behind(stages, {{0, 0.3}});
    EXPECT_EQ(behind.result.stage, 1u);
    EXPECT_EQ(behind.result.fault_p_value, behind.result.p_value);
    const Search none(stages, std::vector<At>{});
    EXPECT_EQ(none.result.fault_p_value, 1.0);
}

TEST(Nothing, IsKnownWithoutReadings) {
    const Search search(bench_chain(8, 0.5), std::vector<At>{});
    EXPECT_EQ(search.result.p_value, 1.0);
    EXPECT_EQ(search.result.chi_square, 0.0);
    EXPECT_EQ(search.result.consistent, 1);
    EXPECT_EQ(search.result.none_probability, 0.5);
    EXPECT_EQ(search.result.span_last, 7u);
    EXPECT_GE(search.result.next_stage, 6u); // near the end: whether there is a fault at all
    EXPECT_GT(search.result.expected_bits, 0.5);
    for (const lvb_suspect &suspect : search.suspects) {
        EXPECT_EQ(suspect.span, 0u);
        EXPECT_EQ(suspect.probability, 0.5 / 8.0);
        EXPECT_EQ(suspect.fault_db, 0.0);
        EXPECT_EQ(suspect.standard_deviation_db, 10.0);
    }
}

TEST(Options, ZeroMeansTheStatedDefault) {
    Search plain(bench_chain(8, 0.5), {{2, 0.1}, {7, -2.0}});
    Search stated = plain;
    stated.request.fault_probability = 0.5;
    stated.request.fault_spread_db = 10.0;
    stated.request.false_alarm = 0.01;
    for (lvb_reading &reading : stated.readings) reading.uncertainty_db = 0.3;
    ASSERT_EQ(stated.run(), LVB_OK);
    EXPECT_TRUE(same_bits(plain, stated));
    stated.request.false_alarm = std::nextafter(stated.result.p_value, 1.0);
    ASSERT_EQ(stated.run(), LVB_OK);
    EXPECT_EQ(stated.result.consistent, 0);
    stated.request.false_alarm = stated.result.p_value;
    ASSERT_EQ(stated.run(), LVB_OK);
    EXPECT_EQ(stated.result.consistent, 1);
}

TEST(Readings, InAnyOrderGiveTheSameBits) {
    Random random(4);
    for (int round = 0; round < 200; ++round) {
        Search search(bench_chain(2 + static_cast<std::uint32_t>(random.below(20)), 0.5));
        for (std::uint64_t n = random.below(12); n > 0; --n)
            search.read({static_cast<std::uint32_t>(random.below(search.stage_count())), random.uniform(-5.0, 5.0),
                         random.below(2) ? random.uniform(0.1, 1.0) : 0.0});
        ASSERT_EQ(search.run(), LVB_OK);
        Search again = search;
        for (std::size_t i = again.readings.size(); i > 1; --i)
            std::swap(again.readings[i - 1], again.readings[random.below(i)]);
        ASSERT_EQ(again.run(), LVB_OK);
        EXPECT_TRUE(same_bits(search, again));
    }
}

TEST(Readings, OfInfiniteUncertaintyAreNone) {
    const Search search(bench_chain(9, 0.5), {{3, 0.2}, {8, -4.0}});
    const Search more(bench_chain(9, 0.5), {{5, -100.0, infinity}, {3, 0.2}, {3, 7.0, infinity}, {8, -4.0}});
    EXPECT_TRUE(same_bits(search, more));
    const Search none(bench_chain(9, 0.5), {{5, -100.0, infinity}});
    EXPECT_TRUE(same_bits(none, Search(bench_chain(9, 0.5), std::vector<At>{})));
}

TEST(Readings, AtOnePointCountAsTheirMean) {
    const Search two(bench_chain(9, 0.5), {{3, 0.5}, {3, -0.1}, {8, -4.0}});
    const Search mean(bench_chain(9, 0.5), {{3, 0.2, 0.3 / std::sqrt(2.0)}, {8, -4.0}});
    for (std::size_t i = 0; i < 9; ++i) {
        EXPECT_EQ(two.suspects[i].span, mean.suspects[i].span);
        EXPECT_NEAR(two.suspects[i].probability, mean.suspects[i].probability, 1e-12);
        EXPECT_NEAR(two.suspects[i].fault_db, mean.suspects[i].fault_db, 1e-12);
        EXPECT_NEAR(two.suspects[i].standard_deviation_db, mean.suspects[i].standard_deviation_db, 1e-12);
        EXPECT_NEAR(two.suspects[i].expected_bits, mean.suspects[i].expected_bits, 1e-12);
    }
    EXPECT_NEAR(two.result.chi_square - mean.result.chi_square, 0.6 * 0.6 / (2.0 * 0.09), 1e-9); // between the two
}

TEST(Shift, OfAllReadingsBlamesTheFirstSpan) {
    for (const double shift_db : {-20.0, -3.0, 3.0, 20.0}) {
        const Search at_source(bench_chain(12, 0.5), {{0, shift_db}, {4, shift_db}, {7, shift_db}, {11, shift_db}});
        EXPECT_EQ(at_source.result.stage, 0u);
        EXPECT_EQ(at_source.result.span_last, 0u);
        EXPECT_NEAR(at_source.result.fault_db, shift_db, 0.02 * std::fabs(shift_db));
        EXPECT_GT(at_source.result.probability, 0.9);
        const Search behind(bench_chain(12, 0.5), {{4, shift_db}, {7, shift_db}, {11, shift_db}});
        EXPECT_EQ(behind.result.span_first, 0u);
        EXPECT_EQ(behind.result.span_last, 4u);
    }
}

TEST(Sign, TurnsTheFaultAndNothingElse) {
    const Search loss(bench_chain(9, 0.5), {{3, 0.5}, {6, -3.5}, {8, -4.0}});
    const Search gain(bench_chain(9, 0.5), {{3, -0.5}, {6, 3.5}, {8, 4.0}});
    for (std::size_t i = 0; i < 9; ++i) {
        EXPECT_NEAR(loss.suspects[i].probability, gain.suspects[i].probability, 1e-12);
        EXPECT_NEAR(loss.suspects[i].fault_db, -gain.suspects[i].fault_db, 1e-12);
        EXPECT_NEAR(loss.suspects[i].expected_bits, gain.suspects[i].expected_bits, 1e-12);
    }
}

// A level as predicted speaks against a fault, wherever it is measured, and every reading makes the faults better
// known.
TEST(AsPredicted, EachReadingMakesAFaultLessLikelyAndBetterKnown) {
    Random random(5);
    for (int round = 0; round < 100; ++round) {
        const auto count = static_cast<std::uint32_t>(2 + random.below(15));
        Search search(bench_chain(count, 0.5));
        ASSERT_EQ(search.run(), LVB_OK);
        for (int k = 0; k < 8; ++k) {
            const Search before = search;
            search.read({static_cast<std::uint32_t>(random.below(count)), 0.0});
            ASSERT_EQ(search.run(), LVB_OK);
            EXPECT_GT(search.result.none_probability, before.result.none_probability);
            EXPECT_EQ(search.result.chi_square, 0.0);
            EXPECT_EQ(search.result.p_value, 1.0);
            for (std::uint32_t i = 0; i < count; ++i) {
                EXPECT_EQ(search.suspects[i].fault_db, 0.0);
                EXPECT_LE(search.suspects[i].standard_deviation_db,
                          before.suspects[i].standard_deviation_db * (1.0 + 1e-12));
            }
        }
    }
}

// A reading as predicted behind a stage makes the fault of that stage smaller, whatever the end says.
TEST(AsPredicted, AReadingAcquitsTheStagesBeforeIt) {
    for (const double end_db : {-12.0, -3.0, 5.0}) {
        const Search before(bench_chain(10, 0.5), {{9, end_db}});
        for (std::uint32_t at = 0; at < 9; ++at) {
            const Search after(bench_chain(10, 0.5), {{at, 0.0}, {9, end_db}});
            for (std::uint32_t i = 0; i <= at; ++i) {
                EXPECT_LT(std::fabs(after.suspects[i].fault_db), std::fabs(before.suspects[i].fault_db));
                EXPECT_LT(after.suspects[i].probability, before.suspects[i].probability);
            }
            for (std::uint32_t i = at + 1; i < 10; ++i)
                EXPECT_GT(after.suspects[i].probability, before.suspects[i].probability);
        }
    }
}

TEST(Any, SearchGivesProbabilitiesThatAddUpAndSpansThatEndAtReadings) {
    Random random(6);
    for (int round = 0; round < 500; ++round) {
        const auto count = static_cast<std::uint32_t>(1 + random.below(30));
        Search search(bench_chain(count, random.below(3) ? random.uniform(0.0, 2.0) : 0.0));
        search.request.fault_probability = random.uniform(0.01, 0.99);
        std::vector<bool> read(count);
        for (std::uint64_t n = random.below(LVB_MAX_READINGS + 1); n > 0; --n) {
            const auto at = static_cast<std::uint32_t>(random.below(count));
            read[at] = true;
            search.read({at, random.uniform(-1.0, 1.0) * random.log_uniform(-1.0, 2.0)});
        }
        ASSERT_EQ(search.run(), LVB_OK);
        double sum = search.result.none_probability, largest = 0.0, most_bits = 0.0;
        std::uint32_t span = 0;
        for (std::uint32_t i = 0; i < count; ++i) {
            const lvb_suspect &suspect = search.suspects[i];
            sum += suspect.probability;
            largest = std::max(largest, suspect.probability);
            most_bits = std::max(most_bits, suspect.expected_bits);
            EXPECT_EQ(suspect.span, span);
            span += read[i];
            EXPECT_GE(suspect.expected_bits, 0.0);
            EXPECT_LE(suspect.expected_bits, std::log2(count + 1.0) + 1e-9);
            EXPECT_GT(suspect.standard_deviation_db, 0.0);
            EXPECT_LE(suspect.standard_deviation_db, 10.0);
        }
        EXPECT_NEAR(sum, 1.0, 1e-12);
        EXPECT_EQ(search.result.probability, largest);
        EXPECT_EQ(search.result.expected_bits, most_bits);
        EXPECT_EQ(search.suspects[search.result.stage].probability, largest);
        EXPECT_EQ(search.suspects[search.result.next_stage].expected_bits, most_bits);
        EXPECT_EQ(search.suspects[search.result.span_first].span, search.suspects[search.result.span_last].span);
        const lvb_locate_result with = search.result;
        ASSERT_EQ(lvb_locate_fault(&search.request, &search.result, nullptr, 0, nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&with, &search.result, sizeof with), 0); // the same without suspects
    }
}

// ---- Over the air.

std::vector<lvb_stage> outbound() {
    std::vector<lvb_stage> stages = ordinary();
    for (lvb_stage &in : stages) in.tolerance_db = 1.0;
    return stages;
}

TEST(OverTheAir, PointsAreWhereTheLevelIsConducted) {
    const Search search(outbound(), {{7, -8.0}});
    for (std::uint32_t i = 0; i < 8; ++i)
        EXPECT_EQ(std::isnan(search.suspects[i].expected_bits), i >= 3 && i <= 5) << i; // antenna, air, allowance
}

TEST(OverTheAir, AnAllowanceBelongsToThePointBeforeIt) {
    std::vector<lvb_stage> stages = outbound();
    stages.insert(stages.begin() + 1, stage(LVB_KIND_ALLOWANCE, -1.0));
    stages.insert(stages.end() - 1, stage(LVB_KIND_ALLOWANCE, -2.0));
    const Search search(stages, {{9, -8.0}});
    EXPECT_TRUE(std::isnan(search.suspects[0].expected_bits));
    EXPECT_FALSE(std::isnan(search.suspects[1].expected_bits));
    EXPECT_TRUE(std::isnan(search.suspects[7].expected_bits)); // the antenna
    EXPECT_FALSE(std::isnan(search.suspects[8].expected_bits));
}

TEST(OverTheAir, AReadingAtAnotherDistanceIsComparedWithTheLevelThere) {
    const Search far_end(outbound(), {{2, 0.1}, {7, -8.0}});
    Search nearer(outbound());
    Chain at_five_metres(outbound(), 600.0, 5.0);
    ASSERT_EQ(at_five_metres.compute(), LVB_OK);
    nearer.read({2, 0.1});
    nearer.read({7, 0.0});
    nearer.readings[1].level_dbm = at_five_metres.budget.far_end.level_dbm - 8.0;
    nearer.readings[1].distance_m = 5.0;
    ASSERT_EQ(nearer.run(), LVB_OK);
    for (std::size_t i = 0; i < 8; ++i) {
        EXPECT_NEAR(nearer.suspects[i].probability, far_end.suspects[i].probability, 1e-12);
        EXPECT_NEAR(nearer.suspects[i].fault_db, far_end.suspects[i].fault_db, 1e-12);
    }
}

} // namespace
