// Solving inverts lvb_compute_budget: the unknown that was taken away comes back, the answer gives what is wanted when
// it is entered, and what is out of reach says by how much and what stops it.
#include "decide/rich_chain.hpp"
#include "door/refusal.hpp"

#include <gtest/gtest.h>

#include <map>
#include <string>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

const std::vector<std::int32_t> link_fields = {LVB_FIELD_FREQUENCY_MHZ, LVB_FIELD_FAR_DISTANCE_M,
                                               LVB_FIELD_NEAR_DISTANCE_M, LVB_FIELD_TEMPERATURE_DEGC};
const std::vector<std::int32_t> stage_fields = {
    LVB_FIELD_LEVEL_DBM,      LVB_FIELD_GAIN_DB,           LVB_FIELD_TOLERANCE_DB,
    LVB_FIELD_LENGTH_M,       LVB_FIELD_CONNECTOR_LOSS_DB, LVB_FIELD_FLOOR_DBM,
    LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM,   LVB_FIELD_CEILING_DBM};

struct Unknown {
    std::int32_t structure, field;
    std::uint32_t stage;
};
struct Goal {
    std::int32_t goal, tolerances;
};

double &member_of(Chain &chain, const Unknown &unknown) {
    return unknown.structure == LVB_STRUCT_LINK ? link_field(chain.link, unknown.field)
                                                : stage_field(chain.stages[unknown.stage], unknown.field);
}

// The goal as the public budget tells it.
double goal_of(const lvb_budget &b, const Goal &goal) { return support::goal_of(b, goal.goal, goal.tolerances); }

// The goal with the unknown at x; NaN where the budget refuses it.
double goal_at(Chain &chain, const Unknown &unknown, const Goal &goal, double x) {
    double &member = member_of(chain, unknown);
    const double before = member;
    member = x;
    const bool good = chain.compute() == LVB_OK;
    member = before;
    return good ? goal_of(chain.budget, goal) : std::numeric_limits<double>::quiet_NaN();
}

struct Solved {
    lvb_status status;
    lvb_solution solution;
    lvb_fault fault;
};
Solved solve(Chain &chain, const Unknown &unknown, const Goal &goal, double wanted) {
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    auto in = sized<lvb_solve>();
    in.structure = unknown.structure;
    in.stage_index = unknown.stage;
    in.field = unknown.field;
    in.goal = goal.goal;
    in.tolerances = goal.tolerances;
    in.link = &chain.link;
    in.wanted = wanted;
    Solved out{LVB_OK, sized<lvb_solution>(), sized<lvb_fault>()};
    out.status = lvb_compute_solution(&in, &out.solution, &out.fault);
    return out;
}

Goal random_goal(Random &random) {
    Goal goal{1 + static_cast<std::int32_t>(random.below(8)), LVB_TOLERANCES_NONE};
    if (goal.goal <= LVB_GOAL_HEADROOM) goal.tolerances = static_cast<std::int32_t>(random.below(3));
    if (goal.goal == LVB_GOAL_EIRP) goal.tolerances = static_cast<std::int32_t>(random.below(2));
    return goal;
}

// The unknowns that this chain has in use, as the fields' own comments say.
std::vector<Unknown> unknowns_of(const Chain &chain) {
    std::vector<Unknown> all;
    for (const std::int32_t field : link_fields)
        if (chain.has_air() || (field != LVB_FIELD_FAR_DISTANCE_M && field != LVB_FIELD_NEAR_DISTANCE_M))
            all.push_back({LVB_STRUCT_LINK, field, 0});
    for (std::uint32_t i = 0; i < chain.stages.size(); ++i) {
        const lvb_stage &s = chain.stages[i];
        const bool computed = s.cable_type != 0 || s.cable_table != nullptr;
        const auto add = [&](std::int32_t field, bool used) {
            if (used) all.push_back({LVB_STRUCT_STAGE, field, i});
        };
        add(LVB_FIELD_LEVEL_DBM, s.kind == LVB_KIND_SOURCE);
        add(LVB_FIELD_GAIN_DB, s.gain_table == nullptr && s.pattern == nullptr && s.body_table == nullptr && !computed);
        add(LVB_FIELD_TOLERANCE_DB, true);
        add(LVB_FIELD_LENGTH_M, computed);
        add(LVB_FIELD_CONNECTOR_LOSS_DB, computed && s.connector_count != 0);
        add(LVB_FIELD_FLOOR_DBM, (s.stated & LVB_STATED_FLOOR) != 0);
        add(LVB_FIELD_WANTED_LOW_DBM, (s.stated & LVB_STATED_WANTED) != 0);
        add(LVB_FIELD_WANTED_HIGH_DBM, (s.stated & LVB_STATED_WANTED) != 0);
        add(LVB_FIELD_CEILING_DBM, (s.stated & LVB_STATED_CEILING) != 0);
    }
    return all;
}

bool is_distance(const Unknown &unknown) {
    return unknown.field == LVB_FIELD_FAR_DISTANCE_M || unknown.field == LVB_FIELD_NEAR_DISTANCE_M;
}

// Takes the unknown away from a sound chain and solves for it again. The error allowed is 1e-9, and what the rounding
// of the levels leaves where a unit of the unknown makes little of a dB: so much the problem itself cannot tell.
struct Tally {
    int inverted = 0, earlier = 0, no_effect = 0, not_steady = 0, by_rounding = 0;
    double worst = 0.0;
};
// A radiating cable has no antenna whose gain could be asked for.
bool is_gain_of_feed(const Chain &chain, const Unknown &unknown) {
    if (unknown.field != LVB_FIELD_GAIN_DB) return false;
    bool first = true;
    for (std::size_t i = 0; i < chain.stages.size(); ++i) {
        const lvb_stage &one = chain.stages[i];
        if (one.kind == LVB_KIND_ANTENNA) {
            if (!first || i != unknown.stage) return false;
            first = false;
        }
        if (one.path != nullptr) return !first && one.path->model == LVB_PATH_RADIATING_CABLE;
    }
    return false;
}
void invert(RichChain &rich, const Unknown &unknown, const Goal &goal, Random &random, Tally &tally) {
    Chain &chain = rich.chain;
    if (chain.compute() != LVB_OK) return;
    double &member = member_of(chain, unknown);
    const double was = unknown.field == LVB_FIELD_NEAR_DISTANCE_M && member == 0.0 ? chain.link.far_distance_m : member;
    if (unknown.field == LVB_FIELD_CONNECTOR_LOSS_DB && was == 0.0) return; // stands for the usual loss
    member = was;
    ASSERT_EQ(chain.compute(), LVB_OK);
    const double wanted = goal_of(chain.budget, goal);
    if (!(std::fabs(wanted) <= 1000.0)) return;
    // somewhere else to start from, where the chain is sound too
    member = was * random.uniform(0.5, 1.5);
    if (chain.compute() != LVB_OK) member = was;
    const Solved solved = solve(chain, unknown, goal, wanted);
    if (is_gain_of_feed(chain, unknown)) {
        EXPECT_EQ(solved.status, LVB_E_UNUSED);
        return;
    }
    ASSERT_EQ(solved.status, LVB_OK) << text_of(solved.fault);
    const lvb_solution &s = solved.solution;
    const std::string what = std::string(lvb_field_name(unknown.field)) + " for goal " + std::to_string(goal.goal);
    const double low = goal_at(chain, unknown, goal, s.lowest), high = goal_at(chain, unknown, goal, s.highest);
    EXPECT_FALSE(std::isnan(low) || std::isnan(high)) << what; // the bounds are values that the budget takes
    EXPECT_EQ(s.entered, member) << what;
    if (s.outcome == LVB_SOLUTION_NOT_STEADY) {
        ++tally.not_steady;
        EXPECT_EQ(unknown.field, LVB_FIELD_FREQUENCY_MHZ);
        const lvb_stage &at = chain.stages[static_cast<std::size_t>(s.bound_stage)];
        EXPECT_TRUE(s.bound_field == LVB_FIELD_PATH ? at.path != nullptr : at.gain_table != nullptr);
        return;
    }
    if (s.outcome == LVB_SOLUTION_NO_EFFECT) {
        ++tally.no_effect;
        EXPECT_EQ(low, high) << what;
        EXPECT_EQ(s.missing_db, wanted - s.reached) << what;
        return;
    }
    ASSERT_EQ(s.outcome, LVB_SOLUTION_FOUND) << what << ' ' << was << " in " << s.lowest << ' ' << s.highest;
    const double again = goal_at(chain, unknown, goal, s.value);
    EXPECT_EQ(again, s.reached) << what << ' ' << s.value; // the budget takes it, and gives these very bits
    EXPECT_EQ(s.missing_db, wanted - s.reached);
    // A warm cable's loss has small steps at the rows of its table, so that another frequency may come first.
    const bool warm = (chain.link.stated & LVB_STATED_TEMPERATURE) != 0 && unknown.field == LVB_FIELD_FREQUENCY_MHZ;
    const bool inwards =
        goal.goal == LVB_GOAL_HEADROOM || goal.goal == LVB_GOAL_NEAR_FROM_MIDDLE || goal.goal == LVB_GOAL_NEAR_LEVEL;
    if (warm && std::fabs(s.missing_db) < 0.1 && (inwards ? s.value > was * 1.0001 : s.value < was * 0.9999)) {
        ++tally.earlier;
        return;
    }
    ++tally.inverted;
    EXPECT_NEAR(s.reached, wanted, 1e-9) << what << ' ' << was;
    const double size = std::max(1.0, std::fabs(was)), error = std::fabs(s.value - was) / size;
    const double h = 1e-3 * size;
    double slope = std::fabs(goal_at(chain, unknown, goal, was + h) - goal_at(chain, unknown, goal, was - h)) / 2e-3;
    if (std::isnan(slope)) // at a bound
        slope = std::fabs(high - low) / (s.highest - s.lowest) * size;
    const double rounding = 1e-13 * static_cast<double>(chain.stages.size()) / slope;
    EXPECT_LE(error, std::max(1e-9, rounding)) << what << ' ' << was << ' ' << s.value << " slope " << slope;
    if (error > 1e-9) ++tally.by_rounding;
    else tally.worst = std::max(tally.worst, error);
}

TEST(Solve, InvertsTheBudgetOnRandomChains) {
    Random random(61);
    std::map<std::int32_t, Tally> tallies;
    for (int i = 0; i < 6000; ++i) {
        RichChain rich(random, true);
        const std::vector<Unknown> all = unknowns_of(rich.chain);
        for (int k = 0; k < 4; ++k) {
            const Unknown unknown = all[random.below(all.size())];
            const lvb_link link = rich.chain.link;
            const std::vector<lvb_stage> stages = rich.chain.stages;
            invert(rich, unknown, random_goal(random), random, tallies[unknown.field]);
            rich.chain.link = link;
            rich.chain.stages = stages;
            if (HasFatalFailure()) return;
        }
    }
    for (const std::int32_t field : link_fields) EXPECT_GT(tallies[field].inverted, 30) << lvb_field_name(field);
    for (const std::int32_t field : stage_fields) EXPECT_GT(tallies[field].inverted, 30) << lvb_field_name(field);
    int inverted = 0, by_rounding = 0;
    for (const auto &[field, tally] : tallies) {
        std::printf("%-20s inverted %5d, worst error %.1e, of rounding alone %d, no effect %d\n", lvb_field_name(field),
                    tally.inverted, tally.worst, tally.by_rounding, tally.no_effect);
        inverted += tally.inverted;
        by_rounding += tally.by_rounding;
    }
    EXPECT_GT(inverted, 5000);
    EXPECT_LT(tallies[LVB_FIELD_FREQUENCY_MHZ].earlier, 20);
    EXPECT_LT(by_rounding, inverted / 100); // nearly all meet 1e-9 itself
}

TEST(Solve, InvertsTheBudgetWithTablesAndPathsThatGoUpAndDown) {
    Random random(62);
    Tally tally;
    for (int i = 0; i < 4000; ++i) {
        RichChain rich(random);
        std::vector<Unknown> all = unknowns_of(rich.chain);
        std::erase_if(all, is_distance); // those over two rays and edges: below
        const Unknown unknown = all[random.below(all.size())];
        invert(rich, unknown, random_goal(random), random, tally);
        if (HasFatalFailure()) return;
    }
    EXPECT_GT(tally.inverted, 500);
    EXPECT_GT(tally.not_steady, 30);
}

TEST(Solve, OutOfReachSaysByHowMuchAndIsNearestAtTheBound) {
    Random random(63);
    int found = 0;
    for (int i = 0; i < 6000; ++i) {
        RichChain rich(random, true);
        Chain &chain = rich.chain;
        const std::vector<Unknown> all = unknowns_of(chain);
        const Unknown unknown = all[random.below(all.size())];
        const Goal goal = random_goal(random);
        if (std::isnan(goal_of(chain.budget, goal)) || std::isinf(goal_of(chain.budget, goal))) continue;
        if (is_gain_of_feed(chain, unknown)) continue;
        const double wanted = random.sign() * random.uniform(400.0, 1000.0);
        const Solved solved = solve(chain, unknown, goal, wanted);
        ASSERT_EQ(solved.status, LVB_OK);
        const lvb_solution &s = solved.solution;
        if (s.outcome == LVB_SOLUTION_NO_EFFECT || s.outcome == LVB_SOLUTION_FOUND) continue;
        ASSERT_TRUE(s.outcome == LVB_SOLUTION_AT_LOWEST || s.outcome == LVB_SOLUTION_AT_HIGHEST) << s.outcome;
        ++found;
        EXPECT_EQ(s.value, s.outcome == LVB_SOLUTION_AT_LOWEST ? s.lowest : s.highest);
        EXPECT_EQ(goal_at(chain, unknown, goal, s.value), s.reached);
        EXPECT_EQ(s.missing_db, wanted - s.reached);
        EXPECT_NE(s.bound_structure, LVB_STRUCT_NONE);
        for (int k = 0; k < 20; ++k) {
            const double x = s.lowest + (s.highest - s.lowest) * random.uniform(0.0, 1.0);
            EXPECT_GE(std::fabs(wanted - goal_at(chain, unknown, goal, x)), std::fabs(s.missing_db) - 1e-9);
        }
    }
    EXPECT_GT(found, 1000);
}

// What stops it, one by one: outside the bound the budget refuses the link.
TEST(Solve, TellsTheBoundThatStopsIt) {
    struct Case {
        Unknown unknown;
        Goal goal;
        double wanted;
        std::int32_t outcome;
        double value;
        std::int32_t bound_structure, bound_field, bound_stage;
    };
    const Unknown far{LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0},
        near{LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, 0}, frequency{LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, 0};
    const Goal margin{LVB_GOAL_MARGIN, 0}, headroom{LVB_GOAL_HEADROOM, 0}, middle{LVB_GOAL_FAR_FROM_MIDDLE, 0};
    const auto in_stage = [](std::uint32_t stage, std::int32_t field) {
        return Unknown{LVB_STRUCT_STAGE, field, stage};
    };
    // ordinary(): source, passive, cable, antenna, air, allowance, antenna, receiver
    const Case cases[] = {
        {far, margin, 200, LVB_SOLUTION_AT_LOWEST, 3, LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, -1},
        {far, margin, -200, LVB_SOLUTION_AT_HIGHEST, 1e9, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, -1},
        {near, headroom, 200, LVB_SOLUTION_AT_HIGHEST, 40, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, -1},
        {near, headroom, -200, LVB_SOLUTION_AT_LOWEST, 0.01, LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, -1},
        {frequency, margin, 300, LVB_SOLUTION_AT_LOWEST, 5, LVB_STRUCT_STAGE, LVB_FIELD_CABLE_TABLE, 2},
        {in_stage(0, LVB_FIELD_LEVEL_DBM), margin, 500, LVB_SOLUTION_AT_HIGHEST, 150, LVB_STRUCT_STAGE,
         LVB_FIELD_LEVEL_DBM, 0},
        {in_stage(1, LVB_FIELD_GAIN_DB), margin, 100, LVB_SOLUTION_AT_HIGHEST, 0, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB,
         1},
        {in_stage(2, LVB_FIELD_LENGTH_M), margin, 100, LVB_SOLUTION_AT_LOWEST, 0.001, LVB_STRUCT_STAGE,
         LVB_FIELD_LENGTH_M, 2},
        {in_stage(7, LVB_FIELD_FLOOR_DBM), margin, -100, LVB_SOLUTION_AT_HIGHEST, -70, LVB_STRUCT_STAGE,
         LVB_FIELD_WANTED_LOW_DBM, 7},
        {in_stage(7, LVB_FIELD_CEILING_DBM), headroom, -100, LVB_SOLUTION_AT_LOWEST, -40, LVB_STRUCT_STAGE,
         LVB_FIELD_WANTED_HIGH_DBM, 7},
        {in_stage(7, LVB_FIELD_WANTED_LOW_DBM), middle, 100, LVB_SOLUTION_AT_LOWEST, -90, LVB_STRUCT_STAGE,
         LVB_FIELD_FLOOR_DBM, 7},
        {in_stage(7, LVB_FIELD_WANTED_HIGH_DBM), middle, -100, LVB_SOLUTION_AT_HIGHEST, -20, LVB_STRUCT_STAGE,
         LVB_FIELD_CEILING_DBM, 7},
    };
    for (const Case &c : cases) {
        Chain chain(ordinary(receiver(-90.0, -70.0, -40.0, -20.0)));
        chain.link.near_distance_m = 3.0;
        const Solved solved = solve(chain, c.unknown, c.goal, c.wanted);
        SCOPED_TRACE(std::string(lvb_field_name(c.unknown.field)) + " for " + std::to_string(c.wanted));
        ASSERT_EQ(solved.status, LVB_OK);
        const lvb_solution &s = solved.solution;
        EXPECT_EQ(s.outcome, c.outcome);
        EXPECT_EQ(s.value, c.value);
        EXPECT_EQ(s.bound_structure, c.bound_structure);
        EXPECT_STREQ(lvb_field_name(s.bound_field), lvb_field_name(c.bound_field));
        EXPECT_EQ(s.bound_stage, c.bound_stage);
        const bool lowest = c.outcome == LVB_SOLUTION_AT_LOWEST;
        const double beyond = c.value == 0.0 ? 1e-300 : std::nextafter(c.value, lowest ? -infinity : infinity);
        EXPECT_TRUE(std::isnan(goal_at(chain, c.unknown, c.goal, beyond)));
        EXPECT_FALSE(std::isnan(goal_at(chain, c.unknown, c.goal, c.value)));
    }
    // the reach of a path: ITU-R P.1238 from 1 to 1000 m, here 2.5 m above the floor
    Way way = indoor();
    way.heights(4.0, 1.5);
    Chain chain(ordinary());
    chain.stages[4].path = way.lent();
    const Solved out = solve(chain, far, margin, -500.0), in = solve(chain, far, margin, 500.0);
    EXPECT_EQ(out.solution.outcome, LVB_SOLUTION_AT_HIGHEST);
    EXPECT_NEAR(out.solution.value, std::sqrt(1e6 - 6.25), 1e-9);
    EXPECT_EQ(out.solution.bound_field, LVB_FIELD_PATH);
    EXPECT_EQ(out.solution.bound_stage, 4);
    EXPECT_TRUE(std::isnan(goal_at(chain, far, margin, std::nextafter(out.solution.value, infinity))));
    EXPECT_EQ(in.solution.outcome, LVB_SOLUTION_AT_LOWEST);
    EXPECT_EQ(in.solution.value, 0.01); // the antennas are further apart than the path asks, wherever one stands
    way.heights(2.0, 1.5);
    EXPECT_NEAR(solve(chain, far, margin, 500.0).solution.value, std::sqrt(1.0 - 0.25), 1e-12);
}

TEST(Solve, ABoundThatWouldMeanSomethingElseIsTheSmallestNumber) {
    Chain chain({source(10.0), stage(LVB_KIND_CABLE, -3.0), cable(LVB_CABLE_RG_213_U, 10.0, 2), receiver(-90.0, 20.0)});
    const Goal level{LVB_GOAL_FAR_LEVEL, 0};
    const Solved gain = solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1}, level, 100.0);
    EXPECT_EQ(gain.solution.outcome, LVB_SOLUTION_AT_HIGHEST);
    EXPECT_EQ(gain.solution.value, -0x1p-1022);
    const Solved loss = solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_CONNECTOR_LOSS_DB, 2}, level, 100.0);
    EXPECT_EQ(loss.solution.outcome, LVB_SOLUTION_AT_LOWEST);
    EXPECT_EQ(loss.solution.value, 0x1p-1022);
    chain.stages[1].gain_db = gain.solution.value;
    chain.stages[2].connector_loss_db = loss.solution.value;
    EXPECT_EQ(chain.compute(), LVB_OK);
}

TEST(Solve, GivesRoundNumbersWhereTheyAreExact) {
    Chain chain({source(15.0), stage(LVB_KIND_PASSIVE, -3.5), stage(LVB_KIND_AMPLIFIER, 7.0), receiver(-90.0, -20.0)});
    const Goal level{LVB_GOAL_FAR_LEVEL, 0};
    EXPECT_EQ(solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 2}, level, 18.5).solution.value, 7.0);
    EXPECT_EQ(solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1}, level, 20.0).solution.value, -2.0);
    EXPECT_EQ(solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_LEVEL_DBM, 0}, level, 3.5).solution.value, 0.0);
}

// ---- Two rays and edges.

// The first place, walking in steps of a millimetre, where the margin is no longer met.
double first_failure(Chain &chain, double from_m, double to_m, double wanted) {
    const Unknown far{LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0};
    for (double d = from_m; d <= to_m; d += 1e-3)
        if (goal_at(chain, far, {LVB_GOAL_MARGIN, 0}, d) < wanted) return d;
    return infinity;
}

TEST(Solve, OverTwoRaysGivesTheDistanceUpToWhichAMarginHolds) {
    Random random(64);
    int inside = 0, deep = 0;
    for (int i = 0; i < 60; ++i) {
        const double transmit_m = random.uniform(2.0, 6.0), receive_m = random.uniform(0.5, 2.0);
        Way way = two_ray(transmit_m, receive_m);
        Chain chain({source(10.0), antenna(), air(), antenna(), receiver(-110.0, 0.0)}, random.uniform(400.0, 1500.0),
                    30.0, 1.0);
        chain.stages[2].path = way.lent();
        const double wanted = random.uniform(35.0, 62.0);
        const Solved solved =
            solve(chain, {LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0}, {LVB_GOAL_MARGIN, 0}, wanted);
        ASSERT_EQ(solved.status, LVB_OK);
        const double fails = first_failure(chain, 1.0, 200.0, wanted);
        if (solved.solution.outcome == LVB_SOLUTION_AT_LOWEST) {
            EXPECT_EQ(fails, 1.0);
            continue;
        }
        if (fails == infinity) {
            EXPECT_GT(solved.solution.value, 199.0);
            continue;
        }
        ASSERT_EQ(solved.solution.outcome, LVB_SOLUTION_FOUND);
        ++inside;
        EXPECT_NEAR(solved.solution.reached, wanted, 1e-9);
        // nothing fails before it on the millimetre walk, and what the walk meets lies at most a step beyond, unless
        // the dip is narrower than a millimetre
        EXPECT_LE(solved.solution.value, fails);
        if (solved.solution.value < fails - 1e-3) ++deep;
    }
    EXPECT_GT(inside, 30);
    EXPECT_LE(deep, 1);
}

TEST(Solve, OverTwoRaysHeadroomIsWalkedFromOutside) {
    Way way = two_ray(3.0, 1.5);
    Chain chain({source(10.0), antenna(), air(), antenna(), receiver(-110.0, -20.0)}, 600.0, 40.0, 5.0);
    chain.stages[2].path = way.lent();
    const Unknown near{LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, 0};
    const Goal headroom{LVB_GOAL_HEADROOM, 0};
    for (const double wanted : {6.0, 10.0, 15.0, 20.0}) {
        const Solved solved = solve(chain, near, headroom, wanted);
        ASSERT_EQ(solved.solution.outcome, LVB_SOLUTION_FOUND) << wanted;
        EXPECT_GE(solved.solution.reached, wanted);
        EXPECT_NEAR(solved.solution.reached, wanted, 1e-9);
        for (double d = solved.solution.value + 1e-6; d < 40.0; d += 1e-3)
            ASSERT_GE(goal_at(chain, near, headroom, d), wanted) << d;
        EXPECT_LT(goal_at(chain, near, headroom, solved.solution.value - 1e-6), wanted);
    }
    EXPECT_EQ(solve(chain, near, headroom, 60.0).solution.outcome, LVB_SOLUTION_AT_HIGHEST);
    EXPECT_EQ(solve(chain, near, headroom, 60.0).solution.value, 40.0);
}

TEST(Solve, AtAnEdgeTheAnswerIsItsSafeSide) {
    Way way(LVB_PATH_FREE_SPACE);
    way.heights(3.0, 1.5);
    way.edges = {{20.0, 4.0}};
    Chain chain({source(10.0), antenna(), air(), antenna(), receiver(-90.0, 0.0)}, 600.0, 30.0, 1.0);
    chain.stages[2].path = way.lent();
    const Unknown far{LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0};
    const Goal margin{LVB_GOAL_MARGIN, 0};
    const double before = goal_at(chain, far, margin, 20.0), behind = goal_at(chain, far, margin, 20.001);
    ASSERT_GT(before, behind + 6.0); // a step
    const Solved solved = solve(chain, far, margin, before - 3.0);
    ASSERT_EQ(solved.solution.outcome, LVB_SOLUTION_FOUND);
    EXPECT_GE(solved.solution.reached, before - 3.0);
    EXPECT_NEAR(solved.solution.value, 20.0, 1e-3);
    EXPECT_NEAR(solved.solution.missing_db, -3.0, 0.1);
}

// A warm cable's loss has a small step at each row of its table: going up from the lowest frequency, none of the
// frequencies just before a row is passed over, though the margin may be there again behind the row.
TEST(Solve, TheFirstFrequencyBeforeARowOfAWarmCableIsNotPassedOver) {
    Chain chain({source(20.0), cable(LVB_CABLE_RG_213_U, 30.0), antenna(), air(), antenna(), receiver(-90.0, 20.0)});
    chain.link.stated |= LVB_STATED_TEMPERATURE;
    const Unknown frequency{LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, 0};
    const Goal margin{LVB_GOAL_MARGIN, 0};
    int rows_behind = 0;
    for (const double degc : {-10.0, 60.0}) {
        chain.link.temperature_degc = degc;
        for (std::uint32_t k = 1;; ++k) {
            auto row = sized<lvb_cable_row>();
            if (lvb_describe_cable_row(LVB_CABLE_RG_213_U, k, &row, nullptr) != LVB_OK) break;
            for (const double part : {1e-9, 1e-7, 1e-6, 1e-5, 1e-4}) {
                const double before = row.frequency_mhz * (1.0 - part), behind = row.frequency_mhz * (1.0 + part);
                const double wanted = goal_at(chain, frequency, margin, before);
                if (goal_at(chain, frequency, margin, behind) > wanted) ++rows_behind;
                const Solved solved = solve(chain, frequency, margin, wanted);
                ASSERT_EQ(solved.solution.outcome, LVB_SOLUTION_FOUND);
                EXPECT_NEAR(solved.solution.reached, wanted, 1e-12);
                EXPECT_LE(solved.solution.value, before * (1.0 + 1e-11)) << degc << " degC";
            }
        }
    }
    EXPECT_GT(rows_behind, 10); // where a walk that steps over the row finds a later frequency
}

// ---- Published examples, solved back for what was given there.

// Rappaport, Wireless Communications 2e, example 4.2, p. 109: 50 W, unity gains, 900 MHz; -64.5 dBm at 10 km, -24.5 dBm
// at 100 m. The printed digit is 0.1 dB: half of it is 0.58 % of the distance.
TEST(Solve, GivesBackTheDistanceOfAPublishedExample) {
    Chain chain({source(lvb_dbm_from_w(50.0)), antenna(), air(), antenna()}, 900.0, 500.0, 1.0);
    const Goal far_level{LVB_GOAL_FAR_LEVEL, 0}, near_level{LVB_GOAL_NEAR_LEVEL, 0};
    EXPECT_NEAR(solve(chain, {LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0}, far_level, -64.5).solution.value, 10000.0,
                58.0);
    EXPECT_NEAR(solve(chain, {LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, 0}, near_level, -24.5).solution.value, 100.0,
                0.58);
    chain.link.far_distance_m = 10000.0;
    const Solved power = solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_LEVEL_DBM, 0}, far_level, -64.5);
    EXPECT_NEAR(lvb_w_from_dbm(power.solution.value), 50.0, 0.6);
    EXPECT_NEAR(solve(chain, {LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, 0}, far_level, -64.5).solution.value, 900.0,
                5.3);
}

// The same book, example 4.3, p. 112: a receive gain of 2 gives -91.5 dBW at 10 km.
TEST(Solve, GivesBackTheGainOfAPublishedExample) {
    Chain chain({source(lvb_dbm_from_w(50.0)), antenna(), air(), antenna()}, 900.0, 10000.0);
    const Solved gain =
        solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 3}, {LVB_GOAL_FAR_LEVEL, 0}, lvb_dbm_from_dbw(-91.5));
    EXPECT_NEAR(gain.solution.value, lvb_db_from_power_ratio(2.0), 0.05);
}

// Pozar, Microwave Engineering 3e, example 12.2, p. 666: 120 W, 42 dB, 31 dB, 0.05 m, 3.59e7 m; -75.31 dBm as the
// reference rows have it. Half the printed digit is 0.0006 of the distance.
TEST(Solve, GivesBackASatellite) {
    Chain chain({source(lvb_dbm_from_w(120.0)), antenna(42.0), air(), antenna(31.0)}, lvb_mhz_from_wavelength_m(0.05),
                1e6);
    const Goal level{LVB_GOAL_FAR_LEVEL, 0};
    EXPECT_NEAR(solve(chain, {LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 0}, level, -75.31).solution.value, 3.59e7,
                2.2e4);
    chain.link.far_distance_m = 3.59e7;
    EXPECT_NEAR(solve(chain, {LVB_STRUCT_STAGE, LVB_FIELD_GAIN_DB, 1}, level, -75.31).solution.value, 42.0, 0.006);
}

} // namespace
