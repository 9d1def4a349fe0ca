// What sweeps, solutions, rankings and comparisons refuse: status, every number of the fault, and nothing written.
#include "chain/random_chain.hpp"
#include "door/refusal.hpp"
#include "path/paths.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace proof;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// ---- Sweep.

struct SweepCall {
    Chain chain{ordinary()};
    lvb_sweep sweep = sized<lvb_sweep>();
    std::vector<double> mhz = {500.0, 600.0, 700.0}, metres = {5.0, 10.0, 20.0}, results = std::vector<double>(8, 7.0);
    SweepCall() {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        sweep.link = &chain.link;
        sweep.frequency_mhz = mhz.data();
        sweep.frequency_count = mhz.size();
        sweep.distance_m = metres.data();
        sweep.distance_count = metres.size();
        sweep.lowest_margin_db = results.data();
        sweep.lowest_headroom_db = results.data() + 3;
    }
    SweepCall(const SweepCall &) = delete;
};
template <class Change>
void refused_sweep(Change change, const Expected &expected) {
    SweepCall call;
    Untouched<lvb_sweep_result> result;
    auto fault = sized<lvb_fault>();
    ASSERT_EQ(lvb_compute_sweep(&call.sweep, &result.result, &fault), LVB_OK) << text_of(fault);
    call.results.assign(8, 7.0);
    Untouched<lvb_sweep_result> untouched;
    change(call);
    EXPECT_EQ(lvb_compute_sweep(&call.sweep, &untouched.result, &fault), expected.status);
    expect_fault(fault, expected);
    EXPECT_TRUE(untouched.holds());
    for (const double x : call.results) EXPECT_EQ(x, 7.0);
    EXPECT_EQ(lvb_compute_sweep(&call.sweep, &untouched.result, nullptr), expected.status);
}

TEST(SweepRefusals, EachFieldAndValue) {
    constexpr std::int32_t at = LVB_STRUCT_SWEEP;
    constexpr double most = LVB_MAX_VALUES;
    refused_sweep([](SweepCall &c) { c.sweep.reserved = 3; },
                  {LVB_E_RESERVED, at, LVB_FIELD_RESERVED, -1, -1, 3, 0, 0});
    refused_sweep([](SweepCall &c) { c.sweep.link = nullptr; }, {LVB_E_NULL, at, LVB_FIELD_LINK, -1, -1, none, none,
                                                                 none, "lvb_sweep.link is null, but must be given."});
    refused_sweep([](SweepCall &c) { c.sweep.frequency_count = 0; },
                  {LVB_E_MISSING, at, LVB_FIELD_FREQUENCY_COUNT, -1, -1, 0, 1, most});
    refused_sweep([](SweepCall &c) { c.sweep.frequency_count = LVB_MAX_VALUES + 1u; },
                  {LVB_E_COUNT, at, LVB_FIELD_FREQUENCY_COUNT, -1, -1, most + 1, 1, most});
    refused_sweep([](SweepCall &c) { c.sweep.distance_count = LVB_MAX_VALUES; },
                  {LVB_E_COUNT, at, LVB_FIELD_DISTANCE_COUNT, -1, -1, most, 0, std::floor(most / 3)});
    refused_sweep([](SweepCall &c) { c.sweep.distance_count = 0; },
                  {LVB_E_MISSING, at, LVB_FIELD_DISTANCE_COUNT, -1, -1, 0, 1, std::floor(most / 3),
                   "lvb_sweep.distance_count is missing; allowed 1 to 357913941."});
    refused_sweep([](SweepCall &c) { c.sweep.first_mhz = 500.0; },
                  {LVB_E_CONFLICT, at, LVB_FIELD_FIRST_MHZ, -1, -1, 500, none, none,
                   "lvb_sweep.first_mhz says again what another field already says; give one of them."});
    refused_sweep([](SweepCall &c) { c.sweep.last_mhz = 500.0; },
                  {LVB_E_CONFLICT, at, LVB_FIELD_LAST_MHZ, -1, -1, 500});
    refused_sweep([](SweepCall &c) { c.sweep.frequency_mhz = nullptr; },
                  {LVB_E_MISSING, at, LVB_FIELD_FIRST_MHZ, -1, -1, 0, 0.1, 300000});
    refused_sweep([](SweepCall &c) { c.sweep.frequency_mhz = nullptr, c.sweep.first_mhz = 500.0; },
                  {LVB_E_MISSING, at, LVB_FIELD_LAST_MHZ, -1, -1, 0, 0.1, 300000});
    refused_sweep([](SweepCall &c) { c.sweep.frequency_mhz = nullptr, c.sweep.first_mhz = 0.05; },
                  {LVB_E_BELOW_RANGE, at, LVB_FIELD_FIRST_MHZ, -1, -1, 0.05, 0.1, 300000});
    refused_sweep([](SweepCall &c) { c.mhz[2] = 0.0; },
                  {LVB_E_BELOW_RANGE, at, LVB_FIELD_FREQUENCY_MHZ, -1, 2, 0, 0.1, 300000,
                   "lvb_sweep.frequency_mhz[2] is 0, which is too low; allowed 0.1 to 300000."});
    refused_sweep([](SweepCall &c) { c.mhz[1] = nan; },
                  {LVB_E_NAN, at, LVB_FIELD_FREQUENCY_MHZ, -1, 1, nan, 0.1, 300000});
    refused_sweep([](SweepCall &c) { c.metres[2] = 2e9; },
                  {LVB_E_ABOVE_RANGE, at, LVB_FIELD_DISTANCE_M, -1, 2, 2e9, 0.01, 1e9});
    refused_sweep([](SweepCall &c) { c.sweep.lowest_headroom_db = c.results.data() + 2; },
                  {LVB_E_CONFLICT, at, LVB_FIELD_LOWEST_HEADROOM_DB, -1, -1, none, none, none,
                   "lvb_sweep.lowest_headroom_db overlaps another array of the call."});
    refused_sweep([](SweepCall &c) { c.sweep.lowest_margin_db = c.mhz.data() + 2; },
                  {LVB_E_CONFLICT, at, LVB_FIELD_LOWEST_MARGIN_DB});
    refused_sweep([](SweepCall &c) { c.sweep.lowest_headroom_db = c.metres.data(); },
                  {LVB_E_CONFLICT, at, LVB_FIELD_LOWEST_HEADROOM_DB});
    // at one of its points the chain is refused as a budget is
    refused_sweep([](SweepCall &c) { c.mhz[1] = 50000.0; },
                  {LVB_E_OUTSIDE_TABLE, LVB_STRUCT_CABLE_TABLE, LVB_FIELD_FREQUENCY_MHZ, 2, 1, 50000, 5, 4800,
                   "frequency_mhz[1] is 50000, too far outside the table of stages[2]; allowed 5 to 4800."});
    static Way office(LVB_PATH_SITE_GENERAL); // 300 to 83500 MHz, 2 to 27 m
    office.path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT;
    office.lent();
    const auto indoors = [](SweepCall &c) { c.chain.stages[4].path = &office.path; };
    refused_sweep(
        [&](SweepCall &c) {
            indoors(c), c.metres = {5.0, 28.0, 28.0};
        },
        {LVB_E_ABOVE_RANGE, at, LVB_FIELD_DISTANCE_M, -1, 1, 28, 2, 27,
         "lvb_sweep.distance_m[1] is 28, which is too high; allowed 2 to 27."});
    refused_sweep(
        [&](SweepCall &c) {
            indoors(c), c.metres = {5.0, 20.0, 1.5};
        },
        {LVB_E_BELOW_RANGE, at, LVB_FIELD_DISTANCE_M, -1, 2, 1.5, 2, 27});
    refused_sweep([&](SweepCall &c) { indoors(c), c.mhz[2] = 299.0; },
                  {LVB_E_BELOW_RANGE, at, LVB_FIELD_FREQUENCY_MHZ, -1, 2, 299, 300, 83500});
    refused_sweep( // without a list it is the link's own
        [&](SweepCall &c) {
            indoors(c);
            c.sweep.distance_m = nullptr;
            c.chain.link.far_distance_m = 28.0;
            c.chain.link.near_distance_m = 0.0;
        },
        {LVB_E_ABOVE_RANGE, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 4, -1, 28, 2, 27});
    refused_sweep([](SweepCall &c) { c.chain.stages[1].gain_db = 1.0; },
                  {LVB_E_ABOVE_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1, -1, 1, -200, 0});
    refused_sweep([](SweepCall &c) { c.chain.link.stage_count = 0; },
                  {LVB_E_NO_SOURCE, LVB_STRUCT_LINK, LVB_FIELD_STAGE_COUNT, -1, -1, 0, 1, LVB_MAX_STAGES});
    static Chain wired({source(10.0), receiver(-90.0, 20.0)});
    wired.link.stages = wired.stages.data();
    wired.link.stage_count = 2;
    refused_sweep([](SweepCall &c) { c.sweep.link = &wired.link; },
                  {LVB_E_UNUSED, at, LVB_FIELD_DISTANCE_COUNT, -1, -1, 3, none, none,
                   "lvb_sweep.distance_count is filled, but this chain has no use for it."});
    SweepCall call;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_sweep(&call.sweep, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_RESULT});
}

// ---- Solve.

struct SolveCall {
    Lent lent;
    Chain chain{ordinary(receiver(-90.0, -20.0))};
    lvb_solve solve = sized<lvb_solve>();
    SolveCall() {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        solve.structure = LVB_STRUCT_STAGE;
        solve.field = LVB_FIELD_GAIN_DB;
        solve.stage_index = 1;
        solve.goal = LVB_GOAL_MARGIN;
        solve.link = &chain.link;
        solve.wanted = 10.0;
    }
    SolveCall(const SolveCall &) = delete;
};
template <class Change>
void refused_solve(Change change, const Expected &expected) {
    SolveCall call;
    auto fault = sized<lvb_fault>();
    auto sound = sized<lvb_solution>();
    ASSERT_EQ(lvb_compute_solution(&call.solve, &sound, &fault), LVB_OK) << text_of(fault);
    Untouched<lvb_solution> solution;
    change(call);
    EXPECT_EQ(lvb_compute_solution(&call.solve, &solution.result, &fault), expected.status);
    expect_fault(fault, expected);
    EXPECT_TRUE(solution.holds());
    EXPECT_EQ(lvb_compute_solution(&call.solve, &solution.result, nullptr), expected.status);
}

TEST(SolveRefusals, TheQuestion) {
    constexpr std::int32_t at = LVB_STRUCT_SOLVE;
    refused_solve([](SolveCall &c) { c.solve.structure = 0; },
                  {LVB_E_MISSING, at, LVB_FIELD_STRUCTURE, -1, -1, 0, LVB_STRUCT_LINK, LVB_STRUCT_STAGE,
                   "lvb_solve.structure is missing; allowed 2 (lvb_link) to 3 (lvb_stage)."});
    for (const std::int32_t structure : {1, 4, -1})
        refused_solve([&](SolveCall &c) { c.solve.structure = structure; },
                      {LVB_E_UNKNOWN_VALUE, at, LVB_FIELD_STRUCTURE, -1, -1, double(structure), LVB_STRUCT_LINK,
                       LVB_STRUCT_STAGE});
    refused_solve([](SolveCall &c) { c.solve.field = 0; }, {LVB_E_MISSING, at, LVB_FIELD_FIELD, -1, -1, 0});
    // every other field of the header, for both structs
    for (std::int32_t field = -1; field < 400; ++field) {
        const bool of_link = field == LVB_FIELD_FREQUENCY_MHZ || field == LVB_FIELD_FAR_DISTANCE_M ||
                             field == LVB_FIELD_NEAR_DISTANCE_M || field == LVB_FIELD_TEMPERATURE_DEGC;
        const bool of_stage = (field >= LVB_FIELD_LEVEL_DBM && field <= LVB_FIELD_CEILING_DBM);
        if (field == 0) continue;
        if (!of_stage)
            refused_solve(
                [&](SolveCall &c) { c.solve.field = field; },
                {LVB_E_NOT_FOUND, at, LVB_FIELD_FIELD, -1, -1, double(field), none, none,
                 field == LVB_FIELD_KIND ? "lvb_solve.field is 4 (kind), which cannot be solved for there." : ""});
        if (!of_link)
            refused_solve(
                [&](SolveCall &c) {
                    c.solve.field = field;
                    c.solve.structure = LVB_STRUCT_LINK;
                },
                {LVB_E_NOT_FOUND, at, LVB_FIELD_FIELD, -1, -1, double(field)});
    }
    refused_solve(
        [](SolveCall &c) {
            c.solve.structure = LVB_STRUCT_LINK;
            c.solve.field = LVB_FIELD_FREQUENCY_MHZ;
        },
        {LVB_E_UNUSED, at, LVB_FIELD_STAGE_INDEX, -1, -1, 1, none, none,
         "lvb_solve.stage_index is filled, but this question has no use for it."});
    refused_solve([](SolveCall &c) { c.solve.stage_index = 8; },
                  {LVB_E_NOT_FOUND, at, LVB_FIELD_STAGE_INDEX, -1, -1, 8, 0, 7,
                   "lvb_solve.stage_index is 8, which this link does not have; allowed 0 to 7."});
    refused_solve([](SolveCall &c) { c.solve.goal = 0; },
                  {LVB_E_MISSING, at, LVB_FIELD_GOAL, -1, -1, 0, LVB_GOAL_MARGIN, LVB_GOAL_EIRP});
    refused_solve([](SolveCall &c) { c.solve.goal = 9; },
                  {LVB_E_UNKNOWN_VALUE, at, LVB_FIELD_GOAL, -1, -1, 9, LVB_GOAL_MARGIN, LVB_GOAL_EIRP});
    for (const std::int32_t tolerances : {-1, 3})
        refused_solve([&](SolveCall &c) { c.solve.tolerances = tolerances; },
                      {LVB_E_UNKNOWN_VALUE, at, LVB_FIELD_TOLERANCES, -1, -1, double(tolerances), 0, 2});
    for (std::int32_t goal = LVB_GOAL_BALANCE; goal <= LVB_GOAL_EIRP; ++goal)
        for (const std::int32_t tolerances : {LVB_TOLERANCES_WORST, LVB_TOLERANCES_RSS}) {
            if (goal == LVB_GOAL_EIRP && tolerances == LVB_TOLERANCES_WORST) continue;
            refused_solve([&](SolveCall &c) { c.solve.goal = goal, c.solve.tolerances = tolerances; },
                          {LVB_E_UNUSED, at, LVB_FIELD_TOLERANCES, -1, -1, double(tolerances)});
        }
    refused_solve([](SolveCall &c) { c.solve.wanted = 1001.0; },
                  {LVB_E_ABOVE_RANGE, at, LVB_FIELD_WANTED, -1, -1, 1001, -1000, 1000});
    refused_solve([](SolveCall &c) { c.solve.wanted = nan; },
                  {LVB_E_NAN, at, LVB_FIELD_WANTED, -1, -1, nan, -1000, 1000});
    refused_solve([](SolveCall &c) { c.solve.link = nullptr; }, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_LINK});
}

TEST(SolveRefusals, WhatTheLinkDoesNotHave) {
    constexpr std::int32_t stage = LVB_STRUCT_STAGE;
    // a field that a kind has no use for
    const std::int32_t fields[] = {LVB_FIELD_LEVEL_DBM,  LVB_FIELD_LENGTH_M,       LVB_FIELD_CONNECTOR_LOSS_DB,
                                   LVB_FIELD_FLOOR_DBM,  LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM,
                                   LVB_FIELD_CEILING_DBM};
    for (const std::int32_t field : fields)
        refused_solve([&](SolveCall &c) { c.solve.field = field; }, {LVB_E_UNUSED, stage, field, 1});
    refused_solve(
        [](SolveCall &c) {
            c.chain.stages[2] = proof::stage(LVB_KIND_CABLE, -3.0); // as measured: it has no length
            c.solve.stage_index = 2;
            c.solve.field = LVB_FIELD_LENGTH_M;
        },
        {LVB_E_UNUSED, stage, LVB_FIELD_LENGTH_M, 2});
    // what stands in place of a gain
    refused_solve([](SolveCall &c) { c.solve.stage_index = 2; }, {LVB_E_CONFLICT, stage, LVB_FIELD_GAIN_DB, 2});
    refused_solve(
        [](SolveCall &c) {
            c.chain.stages[1].gain_db = 0.0;
            c.chain.stages[1].gain_table = c.lent.gain({500.0, 700.0}, {-3.0, -4.0});
        },
        {LVB_E_CONFLICT, stage, LVB_FIELD_GAIN_TABLE, 1});
    static auto pattern = sized<lvb_pattern>();
    refused_solve(
        [](SolveCall &c) {
            c.chain.stages[3].gain_db = 0.0;
            c.chain.stages[3].pattern = &pattern;
            c.solve.stage_index = 3;
        },
        {LVB_E_CONFLICT, stage, LVB_FIELD_PATTERN, 3});
    static const double row[] = {3.0};
    static auto body = sized<lvb_body_table>();
    body.row_count = 1;
    body.facing_deg = body.loss_db = row;
    refused_solve(
        [](SolveCall &c) {
            c.chain.stages[5].gain_db = 0.0;
            c.chain.stages[5].body_table = &body;
            c.solve.stage_index = 5;
        },
        {LVB_E_CONFLICT, stage, LVB_FIELD_BODY_TABLE, 5});
    refused_solve([](SolveCall &c) { c.solve.stage_index = 2, c.solve.field = LVB_FIELD_CONNECTOR_LOSS_DB; },
                  {LVB_E_MISSING, stage, LVB_FIELD_CONNECTOR_COUNT, 2, -1, 0, 1, 1000});
    refused_solve([](SolveCall &c) { c.solve.stage_index = 7, c.solve.field = LVB_FIELD_WANTED_LOW_DBM; },
                  {LVB_E_NOT_STATED, stage, LVB_FIELD_WANTED_LOW_DBM, 7, -1, 0});
    // a goal that the link does not have
    refused_solve([](SolveCall &c) { c.chain.stages[7] = receiver(); },
                  {LVB_E_NOT_FOUND, LVB_STRUCT_SOLVE, LVB_FIELD_GOAL, -1, -1, LVB_GOAL_MARGIN, none, none,
                   "lvb_solve.goal is 1, which this link does not have."});
    refused_solve(
        [](SolveCall &c) {
            c.chain.link.stage_count = 3;
            c.chain.link.far_distance_m = 0.0;
            c.solve.goal = LVB_GOAL_EIRP;
        },
        {LVB_E_NOT_FOUND, LVB_STRUCT_SOLVE, LVB_FIELD_GOAL, -1, -1, LVB_GOAL_EIRP});
    for (const std::int32_t field : {LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M})
        refused_solve(
            [&](SolveCall &c) {
                c.chain.link.stage_count = 3;
                c.chain.link.far_distance_m = 0.0;
                c.solve.goal = LVB_GOAL_FAR_LEVEL;
                c.solve.structure = LVB_STRUCT_LINK;
                c.solve.stage_index = 0;
                c.solve.field = field;
            },
            {LVB_E_UNUSED, LVB_STRUCT_LINK, field});
    // a chain that a budget refuses
    refused_solve([](SolveCall &c) { c.chain.stages[6].kind = LVB_KIND_SOURCE; },
                  {LVB_E_SECOND_SOURCE, stage, LVB_FIELD_KIND, 6, -1, LVB_KIND_SOURCE});
    SolveCall call;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_solution(&call.solve, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_SOLUTION});
}

// ---- Rank.

TEST(RankRefusals, LeaveEverythingAsItWas) {
    SolveCall call;
    auto fault = sized<lvb_fault>();
    std::vector<lvb_contribution> lines(8);
    std::memset(lines.data(), 0x5A, lines.size() * sizeof lines[0]);
    const std::vector<lvb_contribution> before = lines;
    Untouched<lvb_ranking> ranking;
    constexpr std::uint32_t size = sizeof(lvb_contribution);
    const auto refused = [&](const lvb_link *link, std::uint32_t step, const Expected &expected) {
        EXPECT_EQ(lvb_compute_ranking(link, &ranking.result, lines.data(), step, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_TRUE(ranking.holds());
        EXPECT_EQ(std::memcmp(before.data(), lines.data(), lines.size() * size), 0);
    };
    refused(nullptr, size, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_LINK});
    for (const std::uint32_t step : {0u, size - 1u, 4097u})
        refused(&call.chain.link, step,
                {LVB_E_ELEMENT_SIZE, LVB_STRUCT_NONE, LVB_FIELD_CONTRIBUTION_SIZE, -1, -1, double(step), size, 4096});
    call.chain.stages[7].gain_db = 100.0;
    refused(&call.chain.link, size, {LVB_E_ABOVE_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 7, -1, 100, -60, 60});
    EXPECT_EQ(lvb_compute_ranking(&call.chain.link, nullptr, nullptr, 0, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_RANKING});
}

// ---- Compare.

TEST(CompareRefusals, LeaveEverythingAsItWas) {
    SolveCall first, second;
    std::vector<std::uint8_t> scratch(64, 0x11);
    std::vector<lvb_pair> pairs(16);
    std::memset(pairs.data(), 0x5A, pairs.size() * sizeof pairs[0]);
    const std::vector<lvb_pair> before = pairs;
    Untouched<lvb_comparison> comparison;
    constexpr std::int32_t at = LVB_STRUCT_COMPARE;
    const auto refused = [&](auto change, const Expected &expected) {
        auto in = sized<lvb_compare>();
        in.pair_size = sizeof(lvb_pair);
        in.first = &first.chain.link;
        in.second = &second.chain.link;
        in.scratch_bytes = scratch.size();
        in.scratch = scratch.data();
        in.pairs = pairs.data();
        change(in);
        auto fault = sized<lvb_fault>();
        EXPECT_EQ(lvb_compute_comparison(&in, &comparison.result, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_TRUE(comparison.holds());
        EXPECT_EQ(scratch, std::vector<std::uint8_t>(64, 0x11));
        EXPECT_EQ(std::memcmp(before.data(), pairs.data(), pairs.size() * sizeof pairs[0]), 0);
    };
    refused([](lvb_compare &in) { in.first = nullptr; }, {LVB_E_NULL, at, LVB_FIELD_FIRST});
    refused([](lvb_compare &in) { in.second = nullptr; }, {LVB_E_NULL, at, LVB_FIELD_SECOND});
    refused([](lvb_compare &in) { in.scratch = nullptr; }, {LVB_E_NULL, at, LVB_FIELD_SCRATCH});
    refused([](lvb_compare &in) { in.pairs = nullptr; }, {LVB_E_NULL, at, LVB_FIELD_PAIRS});
    for (const std::uint32_t size : {0u, 47u, 4097u})
        refused([&](lvb_compare &in) { in.pair_size = size; },
                {LVB_E_ELEMENT_SIZE, at, LVB_FIELD_PAIR_SIZE, -1, -1, double(size), sizeof(lvb_pair), 4096});
    const std::uint32_t count = first.chain.link.stage_count;
    const std::uint64_t room = lvb_comparison_scratch_bytes(count, count);
    ASSERT_LE(room, scratch.size());
    for (const std::uint64_t bytes : {std::uint64_t{0}, room - 1})
        refused([&](lvb_compare &in) { in.scratch_bytes = bytes; },
                {LVB_E_COUNT, at, LVB_FIELD_SCRATCH_BYTES, -1, -1, double(bytes), double(room), HUGE_VAL});
    // the scratch begins in the last byte of a result, or a result in its last bytes
    const Expected overlapping{LVB_E_CONFLICT,
                               at,
                               LVB_FIELD_SCRATCH,
                               -1,
                               -1,
                               none,
                               none,
                               none,
                               "lvb_compare.scratch overlaps another array of the call."};
    const auto last_byte = [](auto &result) { return reinterpret_cast<std::uint8_t *>(&result) + sizeof result - 1; };
    refused([&](lvb_compare &in) { in.scratch = last_byte(pairs[std::size_t{2} * count - 1]); }, overlapping);
    refused([&](lvb_compare &in) { in.scratch = last_byte(comparison.result); }, overlapping);
    refused([&](lvb_compare &in) { in.pairs = reinterpret_cast<lvb_pair *>(scratch.data() + room - 8); }, overlapping);
    refused([&](lvb_compare &in) { in.pairs = reinterpret_cast<lvb_pair *>(&comparison.result.size + 2); },
            {LVB_E_CONFLICT, at, LVB_FIELD_PAIRS, -1, -1, none, none, none,
             "lvb_compare.pairs overlaps another array of the call."});
    second.chain.stages[1].gain_db = 3.0;
    refused([](lvb_compare &) {}, {LVB_E_ABOVE_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1, -1, 3, -200, 0});
    first.chain.link.frequency_mhz = -1.0;
    refused([](lvb_compare &) {},
            {LVB_E_BELOW_RANGE, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, -1, -1, -1, 0.1, 300000});
    auto in = sized<lvb_compare>();
    auto fault = sized<lvb_fault>();
    in.first = &first.chain.link;
    in.second = &second.chain.link;
    in.scratch_bytes = scratch.size();
    in.scratch = scratch.data();
    EXPECT_EQ(lvb_compute_comparison(&in, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_COMPARISON});
}

} // namespace
