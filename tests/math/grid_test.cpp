// The grid: every level has the bits that lvb_compute_budget gives for its frequency and distance, on every instruction
// set, and what the budget refuses there is NaN and counted.
#include "chain/random_chain.hpp"
#include "math/values.hpp"
#include "path/paths.hpp"
#include "support/link.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>

namespace {

using namespace proof;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double mark = -7.25e77;

bool is_frequency_or_distance(std::int32_t field) {
    return field == LVB_FIELD_FREQUENCY_MHZ || field == LVB_FIELD_FAR_DISTANCE_M;
}

/// The budget's level for one frequency and distance; NaN where it refuses one of the two.
double level_of(lvb_link link, double frequency_mhz, double distance_m, std::int32_t end) {
    link.frequency_mhz = frequency_mhz;
    link.far_distance_m = distance_m;
    link.near_distance_m = 0.0; // the same as far
    if (!support::has_air(link))
        link.far_distance_m = 0.0; // a budget without air takes no distance, a grid does not use it
    auto budget = sized<lvb_budget>();
    auto fault = sized<lvb_fault>();
    if (lvb_compute_budget(&link, &budget, nullptr, 0, &fault) != LVB_OK) {
        EXPECT_TRUE(is_frequency_or_distance(fault.field)) << lvb_field_name(fault.field);
        return nan;
    }
    return end == LVB_END_FAR ? budget.far_end.level_dbm : budget.near_end.level_dbm;
}

/// Computes the grid of a link at both ends on every instruction set; gives how many levels were good.
std::uint64_t check(const lvb_link &link, const std::vector<double> &frequencies,
                    const std::vector<double> &distances) {
    const std::size_t values = frequencies.size() * distances.size();
    std::vector<double> scratch(2 * distances.size()), levels(values + 1, mark), expected(values);
    auto grid = sized<lvb_grid>();
    grid.frequency_count = frequencies.size();
    grid.distance_count = distances.size();
    grid.link = &link;
    grid.frequency_mhz = frequencies.data();
    grid.distance_m = distances.data();
    grid.scratch = scratch.data();
    grid.level_dbm = levels.data();
    std::uint64_t good = 0;
    for (const std::int32_t end : {LVB_END_FAR, LVB_END_NEAR}) {
        std::uint64_t bad = 0, first = values;
        for (std::size_t k = 0; k < values; ++k) {
            expected[k] = level_of(link, frequencies[k / distances.size()], distances[k % distances.size()], end);
            if (std::isnan(expected[k]) && bad++ == 0) first = k;
        }
        good += values - bad;
        grid.end = end;
        for (std::int32_t set = LVB_INSTRUCTIONS_AUTOMATIC; set <= instruction_sets(); ++set) {
            grid.instructions = set == LVB_INSTRUCTIONS_AUTOMATIC ? set : set | LVB_INSTRUCTIONS_ASKED;
            std::fill(levels.begin(), levels.end(), mark);
            auto told = sized<lvb_bad>();
            auto fault = sized<lvb_fault>();
            EXPECT_EQ(lvb_compute_grid(&grid, &told, &fault), LVB_OK) << lvb_field_name(fault.field);
            for (std::size_t k = 0; k < values; ++k)
                if (!identical(levels[k], expected[k])) {
                    ADD_FAILURE() << "end " << end << ", instructions " << set << ", "
                                  << frequencies[k / distances.size()] << " MHz, " << distances[k % distances.size()]
                                  << " m: " << std::hexfloat << levels[k] << ", but the budget gives " << expected[k];
                    return good;
                }
            EXPECT_EQ(levels[values], mark);
            EXPECT_EQ(told.count, bad);
            EXPECT_EQ(told.first, first);
        }
    }
    return good;
}

std::uint64_t check(Chain &chain, const std::vector<double> &frequencies, const std::vector<double> &distances) {
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    return check(chain.link, frequencies, distances);
}

std::vector<double> some_frequencies(Random &random, std::size_t count) {
    std::vector<double> made;
    const double odd[] = {99.0, 851.0, 0.0, -600.0, nan, infinity, 0.09, 300001.0, 0.1, 300000.0, 100.0, 850.0, 500.0};
    while (made.size() < count)
        made.push_back(random.below(4) ? random.uniform(100.0, 850.0) : odd[random.below(std::size(odd))]);
    return made;
}
std::vector<double> some_distances(Random &random, std::size_t count, bool some_bad) {
    std::vector<double> made;
    const double odd[] = {0.0,
                          -0.0,
                          -1.0,
                          nan,
                          infinity,
                          -infinity,
                          0.0099,
                          1.1e9,
                          std::nextafter(1e9, infinity),
                          0.01,
                          std::nextafter(0.01, 0.0),
                          1e9,
                          1e-310};
    while (made.size() < count)
        made.push_back(some_bad && random.below(20) == 0 ? odd[random.below(std::size(odd))]
                                                         : random.log_uniform(-2.0, 9.0));
    return made;
}

TEST(Grid, GivesTheBitsOfTheBudgetOnRandomChains) {
    Random random(101);
    std::uint64_t good = 0;
    std::size_t without_air = 0;
    for (int i = 0; i < 200; ++i) {
        Lent lent;
        Chain chain = ChainMaker(random, lent).make();
        without_air += std::none_of(chain.stages.begin(), chain.stages.end(),
                                    [](const lvb_stage &stage) { return stage.kind == LVB_KIND_AIR; });
        // the link's own frequency and distances are not used, whatever they are
        if (random.below(2)) chain.link.frequency_mhz = chain.link.far_distance_m = chain.link.near_distance_m = nan;
        const std::size_t columns = std::vector<std::size_t>{1, 2, 127, 128, 129, 270}[random.below(6)];
        const std::vector<double> frequencies = some_frequencies(random, 1 + random.below(6));
        good += check(chain, frequencies, some_distances(random, columns, random.below(2) != 0));
        if (HasFailure()) return;
    }
    EXPECT_GT(good, 50000u);
    EXPECT_GT(without_air, 10u);
}

TEST(Grid, ServesChainsWithEveryCableOfTheCatalogue) {
    Random random(102);
    for (std::int32_t type = 1; type <= static_cast<std::int32_t>(lvb_cable_type_count()); ++type) {
        Chain chain({source(15.0), cable(type, 12.5, 2), antenna(2.0), air(), stage(LVB_KIND_ALLOWANCE, -20.0),
                     antenna(6.0), cable(type, 30.0), receiver(-90.0, -20.0)});
        chain.link.stated = LVB_STATED_TEMPERATURE;
        chain.link.temperature_degc = 35.0;
        auto info = sized<lvb_cable_info>();
        ASSERT_EQ(lvb_describe_cable(type, &info, nullptr), LVB_OK);
        // inside, at the ends of, and beyond what the table serves
        EXPECT_GT(check(chain,
                        {info.lowest_mhz, 600.0, info.highest_mhz, info.usable_lowest_mhz * 0.99,
                         info.usable_lowest_mhz, info.usable_highest_mhz, info.usable_highest_mhz * 1.01},
                        some_distances(random, 130, true)),
                  500u);
    }
}

// Frequencies that a table does not serve, at each place of the chain, give rows of NaN.
TEST(Grid, GivesRowsOfNaNOutsideTables) {
    for (const std::size_t at : std::initializer_list<std::size_t>{0, 1, 2, 3, 4, 5, 6}) {
        Lent lent;
        Chain chain({source(15.0), stage(LVB_KIND_PASSIVE, -1.0), antenna(2.0), air(), stage(LVB_KIND_ALLOWANCE, -20.0),
                     antenna(6.0), receiver()});
        chain.stages[at].gain_db = 0.0;
        chain.stages[at].gain_table = lent.gain({470.0, 600.0, 700.0}, {-3.0, -1.0, -2.0});
        const std::vector<double> frequencies = {469.0, 470.0, 600.0, 650.0, 700.0, 701.0}, distances = {1.0, 10.0};
        EXPECT_EQ(check(chain, frequencies, distances), 2u * 4u * 2u) << at; // ends, served frequencies, distances
    }
}

// The library keeps the first sixteen stages that depend on the frequency at hand; there may be any number.
TEST(Grid, ServesAnyNumberOfStagesThatDependOnTheFrequency) {
    Random random(103);
    for (const std::size_t varying : std::initializer_list<std::size_t>{0, 1, 15, 16, 17, 18, 40, 200}) {
        Lent lent;
        std::vector<lvb_stage> stages = {source(30.0)};
        const auto add = [&](std::size_t count) {
            for (std::size_t i = 0; i < count; ++i) {
                if (random.below(2)) stages.push_back(stage(LVB_KIND_PASSIVE, -random.uniform(0.0, 0.3)));
                lvb_stage made = cable(LVB_CABLE_RG_213_U, random.uniform(0.1, 2.0), 1);
                if (random.below(3) == 0) {
                    made.cable_type = LVB_CABLE_NONE;
                    made.cable_table = lent.cable({200.0, 500.0, 800.0}, {7.0, 12.0, 16.0});
                } else if (random.below(3) == 0) {
                    made = stage(LVB_KIND_AMPLIFIER);
                    made.gain_table = lent.gain({120.0, 400.0, 800.0}, {1.0, random.uniform(0.0, 3.0), 2.0});
                }
                stages.push_back(made);
            }
        };
        add(varying / 2);
        stages.insert(stages.end(), {antenna(1.0), air(), antenna(2.0)});
        add(varying - varying / 2);
        Chain chain(std::move(stages));
        EXPECT_GT(check(chain, {119.0, 125.0, 470.0, 600.0, 799.0, 801.0}, some_distances(random, 129, true)), 500u)
            << varying;
    }
}

TEST(Grid, OfTheLongestChainIsServed) {
    std::vector<lvb_stage> stages = {source(30.0), antenna(), air(), antenna()};
    while (stages.size() < LVB_MAX_STAGES) stages.push_back(cable(LVB_CABLE_RG_213_U, 0.1));
    Chain chain(std::move(stages));
    EXPECT_EQ(check(chain, {470.0, 600.0}, {1.0, 10.0, 100.0}), 2u * 2u * 3u);
}

TEST(Grid, GivesTheBitsOfTheBudgetOverEveryPath) {
    Random random(104);
    std::uint64_t good = 0;
    for (int i = 0; i < 120; ++i) {
        Way way = random_way(random);
        Lent lent;
        Chain chain = ChainMaker(random, lent).make();
        for (lvb_stage &stage : chain.stages)
            if (stage.kind == LVB_KIND_AIR) stage.path = way.lent();
        bare_feed(chain.stages);
        std::vector<double> distances = some_distances(random, 20, random.below(2) != 0);
        for (int k = 0; k < 20; ++k) distances.push_back(random.uniform(1.0, 200.0)); // where every model holds
        good += check(chain, some_frequencies(random, 1 + random.below(6)), distances);
        if (HasFailure()) return;
    }
    EXPECT_GT(good, 5000u);
}

// Without air distances and scratch are not used, and a count of zero uses no array: what is not used may be null.
TEST(Grid, NeedsOnlyTheArraysThatItUses) {
    Chain chain({source(10.0), cable(LVB_CABLE_RG_213_U, 10.0)});
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    const double frequencies[] = {500.0, nan, 700.0};
    double levels[6];
    auto grid = sized<lvb_grid>();
    grid.link = &chain.link;
    grid.frequency_count = 3;
    grid.distance_count = 2;
    grid.frequency_mhz = frequencies;
    grid.level_dbm = levels;
    auto bad = sized<lvb_bad>();
    ASSERT_EQ(lvb_compute_grid(&grid, &bad, nullptr), LVB_OK);
    EXPECT_EQ(bad.count, 2u);
    EXPECT_EQ(bad.first, 2u);
    for (std::size_t k = 0; k < 6; ++k)
        EXPECT_TRUE(identical(levels[k], level_of(chain.link, frequencies[k / 2], 1.0, LVB_END_FAR))) << k;
}

TEST(Grid, OfNoValuesNeedsNoArrays) {
    struct Counts {
        std::uint64_t frequencies, distances;
    };
    for (const bool air : {true, false})
        for (const Counts &counts :
             {Counts{0, 0}, Counts{0, 3}, Counts{3, 0}, Counts{0, LVB_MAX_VALUES}, Counts{LVB_MAX_VALUES, 0}}) {
            Chain chain(air ? ordinary() : std::vector<lvb_stage>{source(10.0)});
            chain.link.stages = chain.stages.data();
            chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
            auto grid = sized<lvb_grid>();
            grid.link = &chain.link;
            grid.frequency_count = counts.frequencies;
            grid.distance_count = counts.distances;
            auto bad = sized<lvb_bad>();
            EXPECT_EQ(lvb_compute_grid(&grid, &bad, nullptr), LVB_OK);
            EXPECT_EQ(bad.count, 0u);
            EXPECT_EQ(bad.first, 0u);
            // arrays that are there stay as they are
            double frequencies[] = {500.0, 600.0, 700.0}, room[6];
            std::fill(std::begin(room), std::end(room), mark);
            grid.frequency_mhz = grid.distance_m = frequencies;
            grid.scratch = grid.level_dbm = room;
            EXPECT_EQ(lvb_compute_grid(&grid, &bad, nullptr), LVB_OK);
            for (const double value : room) EXPECT_EQ(value, mark);
        }
}

// Elements of a later version's size, and a link of one, are stepped over.
TEST(Grid, TakesLongerStages) {
    const std::vector<lvb_stage> stages = ordinary();
    constexpr std::uint32_t step = sizeof(lvb_stage) + 16;
    std::vector<unsigned char> longer(stages.size() * step);
    for (std::size_t i = 0; i < stages.size(); ++i) std::memcpy(&longer[i * step], &stages[i], sizeof stages[i]);
    Chain chain(stages);
    chain.link.stages = reinterpret_cast<lvb_stage *>(longer.data());
    chain.link.stage_count = static_cast<std::uint32_t>(stages.size());
    chain.link.stage_size = step;
    EXPECT_EQ(check(chain.link, {600.0, 700.0}, {1.0, 2.0}), 8u);
}

} // namespace
