// Trials of a link: the same bits in any split and on every instruction set, tallies that add up, and what is refused.
// Their laws and what they come to are checked against SciPy in tests/reference/trials_test.py.
#include "chain/random_chain.hpp"
#include "door/refusal.hpp"

#include <numeric>

namespace {

using namespace proof;

constexpr std::int32_t in_trials = LVB_STRUCT_TRIALS, in_spread = LVB_STRUCT_SPREAD, in_tally = LVB_STRUCT_TALLY;
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

std::vector<lvb_stage> spread_out(lvb_stage end = receiver(-77.0, -20.0)) {
    std::vector<lvb_stage> stages = ordinary(end);
    const double tolerances[] = {0.5, 0.3, 0.4, 1.0, 2.0, 4.0, 1.5, 0.0};
    for (std::size_t i = 0; i < stages.size(); ++i) stages[i].tolerance_db = tolerances[i];
    return stages;
}

struct Trials {
    Chain chain;
    std::vector<lvb_spread> spreads;
    lvb_trials request = sized<lvb_trials>();
    lvb_tally tally = sized<lvb_tally>();
    lvb_fault fault = sized<lvb_fault>();
    std::vector<double> far, near;

    explicit Trials(std::vector<lvb_stage> stages = spread_out()) : chain(std::move(stages)) {
        if (chain.has_air()) chain.link.near_distance_m = 3.0;
        EXPECT_EQ(chain.compute(), LVB_OK);
        const std::int32_t laws[] = {LVB_LAW_NORMAL, LVB_LAW_ARC_SINE, LVB_LAW_TRIANGULAR, LVB_LAW_RECTANGULAR};
        for (std::size_t i = 0; i < chain.stages.size(); ++i) spreads.push_back({laws[i % 4], 0, 0.0});
        request.seed = 0x123456789abcdef;
        request.spread_size = sizeof(lvb_spread);
        request.fading = LVB_FADING_NAKAGAMI;
        request.nakagami_shape = 1.7;
        request.shadowing_db = 3.0;
        request.trial_count = 1000;
    }
    lvb_status run() {
        chain.link.stages = chain.stages.data();
        request.link = &chain.link;
        request.spreads = spreads.empty() ? nullptr : spreads.data();
        request.spread_count = static_cast<std::uint32_t>(spreads.size());
        far.assign(request.trial_count, 0.0);
        near.assign(request.trial_count, 0.0);
        request.far_dbm = far.data();
        request.near_dbm = near.data();
        return lvb_compute_trials(&request, &tally, &fault);
    }
    lvb_status run(std::uint64_t first, std::uint64_t count) {
        request.first_trial = first;
        request.trial_count = count;
        return run();
    }
};

bool same_bits(const std::vector<double> &a, const std::vector<double> &b) {
    return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof a[0]) == 0;
}

lvb_sureness sureness_of(const std::vector<lvb_tally> &tallies) {
    lvb_sureness made = sized<lvb_sureness>();
    EXPECT_EQ(lvb_compute_sureness(tallies.data(), static_cast<std::uint32_t>(tallies.size()), sizeof(lvb_tally), &made,
                                   nullptr),
              LVB_OK);
    return made;
}

std::vector<std::int32_t> instruction_sets() {
    std::vector<std::int32_t> sets = {LVB_INSTRUCTIONS_BASELINE, LVB_INSTRUCTIONS_AUTOMATIC};
    const std::int32_t best = lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED;
    for (std::int32_t set = LVB_INSTRUCTIONS_AVX2; set <= best; ++set) sets.push_back(set);
    return sets;
}

void set_fading(Trials &trials, std::int32_t fading) {
    trials.request.fading = fading;
    trials.request.rice_factor_db = fading == LVB_FADING_RICE ? 5.0 : 0.0;
    trials.request.nakagami_shape = fading == LVB_FADING_NAKAGAMI ? 0.7 : 0.0;
}

TEST(Trials, GiveTheSameBitsInAnySplitAndOnEveryInstructionSet) {
    Random random(61);
    for (std::int32_t fading = LVB_FADING_NONE; fading <= LVB_FADING_NAKAGAMI; ++fading) {
        Trials whole;
        set_fading(whole, fading);
        whole.request.instructions = LVB_INSTRUCTIONS_BASELINE;
        const std::uint64_t first = fading == LVB_FADING_RICE ? (std::uint64_t{1} << 36) - 200 : 0; // carries
        ASSERT_EQ(whole.run(first, 3000), LVB_OK);
        const lvb_sureness expected = sureness_of({whole.tally});
        for (const std::int32_t set : instruction_sets()) {
            std::vector<double> far, near;
            std::vector<lvb_tally> tallies;
            Trials part;
            set_fading(part, fading);
            part.request.instructions = set;
            for (std::uint64_t at = 0; at < 3000;) {
                const std::uint64_t count = std::min<std::uint64_t>(3000 - at, 1 + random.below(700));
                ASSERT_EQ(part.run(first + at, count), LVB_OK);
                far.insert(far.end(), part.far.begin(), part.far.end());
                near.insert(near.end(), part.near.begin(), part.near.end());
                tallies.push_back(part.tally);
                at += count;
            }
            EXPECT_TRUE(same_bits(far, whole.far));
            EXPECT_TRUE(same_bits(near, whole.near));
            std::reverse(tallies.begin(), tallies.end());
            const lvb_sureness told = sureness_of(tallies);
            EXPECT_EQ(std::memcmp(&told, &expected, sizeof told), 0);
        }
    }
}

// Source: the first of the known answers that the authors of Philox publish (file kat_vectors, philox4x32 10): counter
// and key 0 give 6627e8d5 e169c58d bc57ac4c 9b00dbd8. The others are beyond a stage's index; trials_test.py has them
// all.
TEST(Trials, AreDrawnFromThePublishedWords) {
    Trials trials({source(0.0, 1.0)});
    trials.spreads.clear();
    set_fading(trials, LVB_FADING_NONE);
    trials.request.shadowing_db = 0.0;
    trials.request.seed = 0;
    ASSERT_EQ(trials.run(0, 128), LVB_OK);
    const std::uint32_t words[] = {0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8};
    for (std::size_t i = 0; i < 4; ++i) EXPECT_EQ(trials.far[32 * i], (2.0 * words[i] + 1.0) / 0x1p32 - 1.0);
}

TEST(Trials, CountTheLevelsThatTheyGive) {
    Trials trials;
    ASSERT_EQ(trials.run(0, 5000), LVB_OK);
    std::uint64_t far_below = 0, far_above = 0, near_below = 0, near_above = 0, inside = 0;
    for (std::size_t i = 0; i < 5000; ++i) {
        const double far = trials.far[i], near = trials.near[i];
        far_below += far < -77.0;
        far_above += far > -20.0;
        near_below += near < -77.0;
        near_above += near > -20.0;
        inside += far >= -77.0 && far <= -20.0 && near >= -77.0 && near <= -20.0;
    }
    EXPECT_EQ(trials.tally.trials, 5000u);
    EXPECT_EQ(trials.tally.far_below, far_below);
    EXPECT_EQ(trials.tally.far_above, far_above);
    EXPECT_EQ(trials.tally.near_below, near_below);
    EXPECT_EQ(trials.tally.near_above, near_above);
    EXPECT_EQ(trials.tally.inside, inside);
    EXPECT_GT(far_below, 0u);
    EXPECT_GT(near_above, 0u);
    EXPECT_EQ(trials.tally.far_level_dbm, trials.chain.budget.far_end.level_dbm);
    EXPECT_EQ(trials.tally.near_level_dbm, trials.chain.budget.near_end.level_dbm);
}

TEST(Trials, StayInsideTheWorstCase) {
    Trials trials;
    trials.spreads.clear(); // all rectangular
    set_fading(trials, LVB_FADING_NONE);
    trials.request.shadowing_db = 0.0;
    ASSERT_EQ(trials.run(0, 20000), LVB_OK);
    const lvb_end &far = trials.chain.budget.far_end, &near = trials.chain.budget.near_end;
    for (std::size_t i = 0; i < trials.far.size(); ++i) {
        EXPECT_LE(std::abs(trials.far[i] - far.level_dbm), far.worst_db);
        EXPECT_LE(std::abs(trials.near[i] - near.level_dbm), near.worst_db);
        // what differs between the ends is the allowance's tolerance, of 4 dB
        EXPECT_LE(std::abs((trials.far[i] - far.level_dbm) - (trials.near[i] - near.level_dbm)), 4.0 + 1e-12);
    }
}

TEST(Trials, WithoutTolerancesAreTheBudget) {
    Trials trials(ordinary());
    set_fading(trials, LVB_FADING_NONE);
    trials.request.shadowing_db = 0.0;
    ASSERT_EQ(trials.run(), LVB_OK);
    for (const double level : trials.far) EXPECT_EQ(level, trials.chain.budget.far_end.level_dbm);
    for (const double level : trials.near) EXPECT_EQ(level, trials.chain.budget.near_end.level_dbm);
    const lvb_sureness told = sureness_of({trials.tally});
    EXPECT_EQ(told.inside_probability, 1.0);
    EXPECT_EQ(told.far_below_probability, 0.0);
    EXPECT_EQ(told.far_mean_dbm, trials.chain.budget.far_end.level_dbm);
    EXPECT_EQ(told.far_standard_deviation_db, 0.0);
    EXPECT_NEAR(told.far_below_error, 0.001, 0.0001); // none of 1000: about one of so many
    EXPECT_EQ(told.far_below_error, told.inside_error);
}

TEST(Trials, OfANullStayBelowEverything) {
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    std::vector<lvb_stage> stages = spread_out();
    stages[6].pattern = &pattern;
    stages[6].far_elevation_deg = 90.0;
    Trials trials(stages);
    ASSERT_EQ(trials.run(), LVB_OK);
    EXPECT_EQ(trials.tally.far_below, 1000u);
    for (const double level : trials.far) EXPECT_EQ(level, -infinity);
    const lvb_sureness told = sureness_of({trials.tally});
    EXPECT_EQ(told.far_mean_dbm, -infinity);
    EXPECT_GT(told.far_standard_deviation_db, 1.0);
}

// The draws of a stage depend on its own index, not on what else is spread.
TEST(Trials, DrawEachStageByItself) {
    const auto alone = [](std::size_t stage) {
        std::vector<lvb_stage> stages = spread_out();
        for (std::size_t i = 0; i < stages.size(); ++i)
            if (i != stage) stages[i].tolerance_db = 0.0;
        Trials trials(stages);
        set_fading(trials, LVB_FADING_NONE);
        trials.request.shadowing_db = 0.0;
        EXPECT_EQ(trials.run(), LVB_OK);
        for (double &level : trials.far) level -= trials.chain.budget.far_end.level_dbm;
        return trials.far;
    };
    Trials all;
    set_fading(all, LVB_FADING_NONE);
    all.request.shadowing_db = 0.0;
    ASSERT_EQ(all.run(), LVB_OK);
    std::vector<double> sum(1000, all.chain.budget.far_end.level_dbm);
    for (std::size_t stage = 0; stage < all.chain.stages.size(); ++stage) {
        const std::vector<double> one = alone(stage);
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += one[i];
    }
    for (std::size_t i = 0; i < sum.size(); ++i) EXPECT_NEAR(sum[i], all.far[i], 1e-9);
}

// Worst sizes: sums of squares carry into their upper half, and deviations beyond the grains' range are held.
TEST(Trials, AddUpTheLargestDeviations) {
    std::vector<lvb_stage> stages = {source(0.0, 100.0)};
    while (stages.size() < LVB_MAX_STAGES) stages.push_back(stage(LVB_KIND_AMPLIFIER, 0.0, 100.0));
    Trials trials(stages);
    for (lvb_spread &spread : trials.spreads) spread = {LVB_LAW_NORMAL, 0, 1.0};
    set_fading(trials, LVB_FADING_NONE);
    trials.request.shadowing_db = 0.0;
    ASSERT_EQ(trials.run(0, 20000), LVB_OK);
    const lvb_sureness told = sureness_of({trials.tally, trials.tally, trials.tally});
    EXPECT_NEAR(told.far_standard_deviation_db, 100.0 * std::sqrt(double{LVB_MAX_STAGES}),
                4 * 3200.0 / std::sqrt(40000.0));
    lvb_tally huge = trials.tally;
    huge.far_squares_low = ~std::uint64_t{0};
    huge.far_squares_high = 0;
    huge.far_sum = 0;
    const lvb_sureness twice = sureness_of({huge, huge});
    // 2 (2^64 - 1) grains squared over 40000 trials
    EXPECT_NEAR(twice.far_standard_deviation_db, std::sqrt(0x1p65 / 39999.0) / 65536.0, 1e-6);
}

TEST(Quantiles, AreThoseOfTheSortedLevels) {
    Random random(62);
    for (int round = 0; round < 300; ++round) {
        const std::size_t count = 1 + random.below(300);
        std::vector<double> levels(count);
        for (double &level : levels)
            level = random.below(3) ? random.uniform(-90.0, 0.0) : static_cast<double>(random.below(5)) - 2.0;
        if (random.below(4) == 0) levels[random.below(count)] = -infinity;
        std::vector<double> sorted = levels;
        std::sort(sorted.begin(), sorted.end());
        lvb_quantile asked[5] = {{0.0, 1, 1}, {1.0, 1, 1}, {0.5, 1, 1}, {random.uniform(0.0, 1.0), 1, 1}, {0.9, 1, 1}};
        ASSERT_EQ(lvb_compute_quantiles(levels.data(), count, asked, 5, sizeof asked[0], nullptr), LVB_OK);
        const double n = static_cast<double>(count);
        for (const lvb_quantile &told : asked) {
            const double rank = std::max(1.0, std::ceil(told.probability * n));
            EXPECT_EQ(told.level_dbm, sorted[static_cast<std::size_t>(rank) - 1]);
            const double side =
                std::max(1.0, std::floor(std::sqrt(n * told.probability * (1 - told.probability)) + 0.5));
            const double high = sorted[static_cast<std::size_t>(std::min(n, rank + side)) - 1];
            const double low = sorted[static_cast<std::size_t>(std::max(1.0, rank - side)) - 1];
            EXPECT_EQ(told.error_db, high > low ? (high - low) / 2.0 : 0.0);
        }
        std::sort(levels.begin(), levels.end());
        EXPECT_TRUE(same_bits(levels, sorted));
    }
}

// ---- Refusals.

template <class Change>
void refused(Change change, const Expected &expected) {
    Trials trials;
    trials.far.assign(1000, 1.0);
    trials.chain.link.stages = trials.chain.stages.data();
    trials.request.link = &trials.chain.link;
    trials.request.spreads = trials.spreads.data();
    trials.request.spread_count = static_cast<std::uint32_t>(trials.spreads.size());
    trials.request.far_dbm = trials.far.data();
    change(trials);
    Untouched<lvb_tally> result;
    EXPECT_EQ(lvb_compute_trials(&trials.request, &result.result, &trials.fault), expected.status);
    expect_fault(trials.fault, expected);
    EXPECT_TRUE(result.holds());
    EXPECT_EQ(std::count(trials.far.begin(), trials.far.end(), 1.0), 1000);
}

TEST(RefusedTrials, TheirFrame) {
    refused([](Trials &t) { t.request.reserved = 1; },
            {LVB_E_RESERVED, in_trials, LVB_FIELD_RESERVED, -1, -1, 1.0, 0.0, 0.0});
    refused([](Trials &t) { t.request.link = nullptr; }, {LVB_E_NULL, in_trials, LVB_FIELD_LINK});
    refused([](Trials &t) { t.request.spreads = nullptr; }, {LVB_E_NULL, in_trials, LVB_FIELD_SPREADS});
    refused([](Trials &t) { t.request.spread_size = 8; },
            {LVB_E_ELEMENT_SIZE, in_trials, LVB_FIELD_SPREAD_SIZE, -1, -1, 8.0, sizeof(lvb_spread), 4096.0});
    refused([](Trials &t) { t.request.spread_count = 0; },
            {LVB_E_MISSING, in_trials, LVB_FIELD_SPREAD_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_STAGES});
    refused([](Trials &t) { t.request.spread_count = 3; },
            {LVB_E_COUNT, in_trials, LVB_FIELD_SPREAD_COUNT, -1, -1, 3.0, 8.0, 8.0});
    refused([](Trials &t) { t.request.trial_count = 0; },
            {LVB_E_MISSING, in_trials, LVB_FIELD_TRIAL_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_VALUES});
    refused([](Trials &t) { t.request.trial_count = LVB_MAX_VALUES + 1ull; },
            {LVB_E_COUNT, in_trials, LVB_FIELD_TRIAL_COUNT, -1, -1, 0x1p30 + 1, 1.0, LVB_MAX_VALUES});
    refused([](Trials &t) { t.request.first_trial = (1ull << 52) + 1; },
            {LVB_E_ABOVE_RANGE, in_trials, LVB_FIELD_FIRST_TRIAL, -1, -1, 0x1p52 + 1, 0.0, 0x1p52});
    const double best = lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED;
    refused([](Trials &t) { t.request.instructions = 77; },
            {LVB_E_UNKNOWN_VALUE, in_trials, LVB_FIELD_INSTRUCTIONS, -1, -1, 77.0, 0.0, best});
    refused([](Trials &t) { t.chain.stages[2].length_m = -1.0; },
            {LVB_E_BELOW_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_LENGTH_M, 2, -1, -1.0, 0.001, 10000.0});
    EXPECT_EQ(lvb_compute_trials(nullptr, nullptr, nullptr), LVB_E_NULL);
}

TEST(RefusedTrials, ResultsThatOverlap) {
    constexpr const char *text = "lvb_trials.near_dbm overlaps another array of the call.";
    Trials trials;
    ASSERT_EQ(trials.run(), LVB_OK);
    const std::vector<double> before = trials.far;
    trials.request.near_dbm = trials.far.data();
    EXPECT_EQ(lvb_compute_trials(&trials.request, &trials.tally, &trials.fault), LVB_E_CONFLICT);
    expect_fault(trials.fault, {LVB_E_CONFLICT, in_trials, LVB_FIELD_NEAR_DBM, -1, -1, none, none, none, text});
    trials.request.near_dbm = trials.near.data();
    trials.request.far_dbm = reinterpret_cast<double *>(&trials.tally);
    EXPECT_EQ(lvb_compute_trials(&trials.request, &trials.tally, &trials.fault), LVB_E_CONFLICT);
    expect_fault(trials.fault, {LVB_E_CONFLICT, in_trials, LVB_FIELD_FAR_DBM});
    EXPECT_EQ(trials.far, before);
}

TEST(RefusedTrials, LawsAndFading) {
    refused([](Trials &t) { t.spreads[2].law = 4; },
            {LVB_E_UNKNOWN_VALUE, in_spread, LVB_FIELD_LAW, -1, 2, 4.0, 0.0, 3.0,
             "spreads[2].law is 4, which this library does not know; allowed 0 to 3."});
    refused([](Trials &t) { t.spreads[7].reserved = 2; }, // also of a stage without a tolerance
            {LVB_E_RESERVED, in_spread, LVB_FIELD_RESERVED, -1, 7, 2.0, 0.0, 0.0});
    refused([](Trials &t) { t.spreads[1].coverage_factor = 2.0; },
            {LVB_E_UNUSED, in_spread, LVB_FIELD_COVERAGE_FACTOR, -1, 1, 2.0, none, none,
             "spreads[1].coverage_factor is filled, but this law has no use for it."});
    refused([](Trials &t) { t.spreads[0].coverage_factor = 0.5; },
            {LVB_E_BELOW_RANGE, in_spread, LVB_FIELD_COVERAGE_FACTOR, -1, 0, 0.5, 1.0, 10.0});
    refused([](Trials &t) { t.request.fading = 4; },
            {LVB_E_UNKNOWN_VALUE, in_trials, LVB_FIELD_FADING, -1, -1, 4.0, 0.0, 3.0});
    refused([](Trials &t) { t.request.rice_factor_db = 3.0; },
            {LVB_E_UNUSED, in_trials, LVB_FIELD_RICE_FACTOR_DB, -1, -1, 3.0});
    refused([](Trials &t) { t.request.fading = LVB_FADING_RICE; },
            {LVB_E_UNUSED, in_trials, LVB_FIELD_NAKAGAMI_SHAPE, -1, -1, 1.7});
    refused([](Trials &t) { set_fading(t, LVB_FADING_RICE), t.request.rice_factor_db = 101.0; },
            {LVB_E_ABOVE_RANGE, in_trials, LVB_FIELD_RICE_FACTOR_DB, -1, -1, 101.0, -100.0, 100.0});
    refused([](Trials &t) { t.request.nakagami_shape = 0.0; },
            {LVB_E_MISSING, in_trials, LVB_FIELD_NAKAGAMI_SHAPE, -1, -1, 0.0, 0.5, 100.0});
    refused([](Trials &t) { t.request.shadowing_db = nan; },
            {LVB_E_NAN, in_trials, LVB_FIELD_SHADOWING_DB, -1, -1, nan, 0.0, 50.0});
    const auto conducted = [](Trials &t) {
        t.chain.stages = {source(10.0, 1.0), stage(LVB_KIND_PASSIVE, -3.0, 1.0)};
        t.chain.link.stages = t.chain.stages.data();
        t.chain.link.stage_count = 2;
        t.chain.link.far_distance_m = t.chain.link.near_distance_m = 0.0;
        t.request.spread_count = 2;
    };
    refused(conducted, {LVB_E_UNUSED, in_trials, LVB_FIELD_FADING, -1, -1, LVB_FADING_NAKAGAMI});
    refused([&](Trials &t) { conducted(t), set_fading(t, LVB_FADING_NONE); },
            {LVB_E_UNUSED, in_trials, LVB_FIELD_SHADOWING_DB, -1, -1, 3.0});
}

TEST(RefusedTrials, Tallies) {
    Trials trials;
    ASSERT_EQ(trials.run(), LVB_OK);
    const auto refused_tallies = [&](auto change, const Expected &expected) {
        lvb_tally tallies[2] = {trials.tally, trials.tally};
        std::uint32_t count = 2, size = sizeof(lvb_tally);
        change(tallies, count, size);
        Untouched<lvb_sureness> result;
        lvb_fault fault = sized<lvb_fault>();
        EXPECT_EQ(lvb_compute_sureness(tallies, count, size, &result.result, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_TRUE(result.holds());
    };
    using Count = std::uint32_t;
    refused_tallies([](lvb_tally *, Count &count, Count &) { count = 0; },
                    {LVB_E_MISSING, LVB_STRUCT_NONE, LVB_FIELD_TALLY_COUNT, -1, -1, 0.0, 1.0, 65536.0});
    refused_tallies([](lvb_tally *, Count &count, Count &) { count = 65537; },
                    {LVB_E_COUNT, LVB_STRUCT_NONE, LVB_FIELD_TALLY_COUNT, -1, -1, 65537.0, 1.0, 65536.0});
    refused_tallies(
        [](lvb_tally *, Count &, Count &size) { size = 8; },
        {LVB_E_ELEMENT_SIZE, LVB_STRUCT_NONE, LVB_FIELD_TALLY_SIZE, -1, -1, 8.0, sizeof(lvb_tally), 4096.0});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].reserved = 1; },
                    {LVB_E_RESERVED, in_tally, LVB_FIELD_RESERVED, -1, 1, 1.0, 0.0, 0.0});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].far_above = 1001; },
                    {LVB_E_BELOW_RANGE, in_tally, LVB_FIELD_TRIALS, -1, 1, 1000.0, 1001.0, 0x1p32});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].far_level_dbm = -50.0; },
                    {LVB_E_CONFLICT, in_tally, LVB_FIELD_FAR_LEVEL_DBM, -1, 1, -50.0});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].near_level_dbm = -40.0; },
                    {LVB_E_CONFLICT, in_tally, LVB_FIELD_NEAR_LEVEL_DBM, -1, 1, -40.0});
    // a trial is inside, or it misses something; at one end it does not miss both limits
    refused_tallies(
        [](lvb_tally *t, Count &, Count &) {
            t[1].inside = 1, t[1].far_below = 600, t[1].far_above = 400, t[1].near_below = 0, t[1].near_above = 7;
        },
        {LVB_E_BELOW_RANGE, in_tally, LVB_FIELD_TRIALS, -1, 1, 1000.0, 1001.0, 1008.0});
    refused_tallies(
        [](lvb_tally *t, Count &, Count &) {
            t[1].inside = t[1].far_below = t[1].near_below = 333;
            t[1].far_above = t[1].near_above = 0;
        },
        {LVB_E_ABOVE_RANGE, in_tally, LVB_FIELD_TRIALS, -1, 1, 1000.0, 666.0, 999.0});
    // sums of so many deviations of 16384 dB at most, in grains of 1/65536 dB
    constexpr double most = 1000.0 * 0x1p30;
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].far_sum = std::int64_t{1000} * (1 << 30) + 1; },
                    {LVB_E_ABOVE_RANGE, in_tally, LVB_FIELD_FAR_SUM, -1, 1, most + 1.0, -most, most});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].near_sum = INT64_MIN; },
                    {LVB_E_BELOW_RANGE, in_tally, LVB_FIELD_NEAR_SUM, -1, 1, -0x1p63, -most, most});
    // 1000 * 2^60 = 62.5 * 2^64
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].far_squares_high = 63, t[1].far_squares_low = 0; },
                    {LVB_E_ABOVE_RANGE, in_tally, LVB_FIELD_FAR_SQUARES_HIGH, -1, 1, 63.0, 0.0, 62.0});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].near_squares_high = 1ull << 63; },
                    {LVB_E_ABOVE_RANGE, in_tally, LVB_FIELD_NEAR_SQUARES_HIGH, -1, 1, 0x1p63, 0.0, 62.0});
    constexpr double infinite = std::numeric_limits<double>::infinity();
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[0].far_level_dbm = t[1].far_level_dbm = none; },
                    {LVB_E_NAN, in_tally, LVB_FIELD_FAR_LEVEL_DBM, -1, 0, none});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[0].near_level_dbm = t[1].near_level_dbm = infinite; },
                    {LVB_E_INFINITE, in_tally, LVB_FIELD_NEAR_LEVEL_DBM, -1, 0, infinite});
    refused_tallies([](lvb_tally *t, Count &, Count &) { t[1].trials = (1ull << 32) - 999; },
                    {LVB_E_COUNT, in_tally, LVB_FIELD_TRIALS, -1, 1, 0x1p32 - 999, 0.0, 0x1p32 - 1000});
    refused_tallies(
        [](lvb_tally *t, Count &count, Count &) {
            t[0] = sized<lvb_tally>();
            count = 1;
        },
        {LVB_E_MISSING, in_tally, LVB_FIELD_TRIALS, -1, 0, 0.0, 1.0, 0x1p32,
         "tallies[0].trials is missing; allowed 1 to 4294967296."});
    EXPECT_EQ(lvb_compute_sureness(nullptr, 1, sizeof(lvb_tally), nullptr, nullptr), LVB_E_NULL);
    EXPECT_EQ(lvb_compute_sureness(&trials.tally, 1, sizeof(lvb_tally), nullptr, nullptr), LVB_E_NULL);
}

TEST(RefusedTrials, Quantiles) {
    const std::vector<double> levels = {3.0, 1.0, 2.0};
    const auto refused_quantiles = [&](auto change, const Expected &expected) {
        std::vector<double> moved = levels;
        double *lent = moved.data();
        lvb_quantile asked[2] = {{0.5, 7.0, 7.0}, {0.9, 7.0, 7.0}};
        std::uint64_t count = 3;
        std::uint32_t quantiles = 2, size = sizeof asked[0];
        change(lent, count, asked, quantiles, size);
        lvb_fault fault = sized<lvb_fault>();
        EXPECT_EQ(lvb_compute_quantiles(lent, count, asked, quantiles, size, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_EQ(asked[0].level_dbm, 7.0);
        for (std::size_t i = 0; i < 3; ++i) EXPECT_TRUE(moved[i] == levels[i] || std::isnan(moved[i]));
    };
    using Wide = std::uint64_t;
    using Count = std::uint32_t;
    const std::int32_t no = LVB_STRUCT_NONE;
    refused_quantiles([](double *&lent, Wide &, lvb_quantile *, Count &, Count &) { lent = nullptr; },
                      {LVB_E_NULL, no, LVB_FIELD_LEVELS_DBM});
    refused_quantiles([](double *&, Wide &count, lvb_quantile *, Count &, Count &) { count = 0; },
                      {LVB_E_MISSING, no, LVB_FIELD_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_VALUES});
    refused_quantiles([](double *&, Wide &count, lvb_quantile *, Count &, Count &) { count = 1ull << 31; },
                      {LVB_E_COUNT, no, LVB_FIELD_COUNT, -1, -1, 0x1p31, 1.0, LVB_MAX_VALUES});
    refused_quantiles([](double *&, Wide &, lvb_quantile *, Count &quantiles, Count &) { quantiles = 0; },
                      {LVB_E_MISSING, no, LVB_FIELD_QUANTILE_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_ROWS});
    refused_quantiles([](double *&, Wide &, lvb_quantile *, Count &quantiles, Count &) { quantiles = 65537; },
                      {LVB_E_COUNT, no, LVB_FIELD_QUANTILE_COUNT, -1, -1, 65537.0, 1.0, LVB_MAX_ROWS});
    refused_quantiles([](double *&, Wide &, lvb_quantile *, Count &, Count &size) { size = 16; },
                      {LVB_E_ELEMENT_SIZE, no, LVB_FIELD_QUANTILE_SIZE, -1, -1, 16.0, 24.0, 4096.0});
    refused_quantiles([](double *&, Wide &, lvb_quantile *asked, Count &, Count &) { asked[1].probability = 1.5; },
                      {LVB_E_ABOVE_RANGE, LVB_STRUCT_QUANTILE, LVB_FIELD_PROBABILITY, -1, 1, 1.5, 0.0, 1.0,
                       "quantiles[1].probability is 1.5, which is too high; allowed 0 to 1."});
    refused_quantiles([](double *&lent, Wide &, lvb_quantile *, Count &, Count &) { lent[1] = nan; },
                      {LVB_E_NAN, no, LVB_FIELD_LEVELS_DBM, -1, -1, nan});
    EXPECT_EQ(lvb_compute_quantiles(nullptr, 0, nullptr, 0, 0, nullptr), LVB_E_NULL);
    double level = 1.0;
    EXPECT_EQ(lvb_compute_quantiles(&level, 1, nullptr, 1, 24, nullptr), LVB_E_NULL);
}

} // namespace
