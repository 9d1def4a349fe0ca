// A sweep says what lvb_compute_budget says at every point, bit for bit, and of all of them the worst and the best.
#include "decide/rich_chain.hpp"
#include "door/refusal.hpp"
#include "math/values.hpp"

#include <gtest/gtest.h>

namespace {

using namespace proof;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

struct Swept {
    lvb_sweep sweep = sized<lvb_sweep>();
    lvb_sweep_result result = sized<lvb_sweep_result>();
    lvb_fault fault = sized<lvb_fault>();
    std::vector<double> mhz, metres, margins, headrooms;

    explicit Swept(Chain &chain) {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        sweep.link = &chain.link;
    }
    Swept(const Swept &) = delete;
    lvb_status compute() { return lvb_compute_sweep(&sweep, &result, &fault); }
    void lists() {
        sweep.frequency_mhz = mhz.data();
        sweep.frequency_count = mhz.size();
        sweep.distance_m = metres.empty() ? nullptr : metres.data();
        sweep.distance_count = metres.size();
        margins.assign(mhz.size(), 0.0);
        headrooms.assign(mhz.size(), 0.0);
        sweep.lowest_margin_db = margins.data();
        sweep.lowest_headroom_db = headrooms.data();
    }
};

// What the points say, kept in order with strict comparisons: of equal ones the first.
struct Kept {
    lvb_extreme lowest{nan, nan, nan}, highest{nan, nan, nan};
    void take(double value, double mhz, double metres) {
        if (std::isnan(value)) return;
        if (std::isnan(lowest.value) || value < lowest.value) lowest = {value, mhz, metres};
        if (std::isnan(highest.value) || value > highest.value) highest = {value, mhz, metres};
    }
};
void expect_same(const lvb_extreme &a, const lvb_extreme &b) {
    EXPECT_TRUE(identical(a.value, b.value)) << a.value << ' ' << b.value;
    EXPECT_TRUE(identical(a.frequency_mhz, b.frequency_mhz)) << a.frequency_mhz << ' ' << b.frequency_mhz;
    EXPECT_TRUE(identical(a.distance_m, b.distance_m)) << a.distance_m << ' ' << b.distance_m;
}

// Compares a computed sweep with budgets at its points.
void expect_budgets(Chain chain, const Swept &swept, const std::vector<double> &mhz,
                    const std::vector<double> &metres) {
    Kept margin, headroom, far_level, near_level, eirp;
    bool drops = false, overloads = false, doubtful = false, judged = false;
    std::uint32_t notes = 0;
    for (std::size_t i = 0; i < mhz.size(); ++i) {
        chain.link.frequency_mhz = mhz[i];
        Kept margin_here, headroom_here;
        for (std::size_t k = 0; k < std::max<std::size_t>(metres.size(), 1); ++k) {
            if (!metres.empty()) {
                chain.link.far_distance_m = metres[k];
                chain.link.near_distance_m = metres[k];
            }
            ASSERT_EQ(chain.compute(), LVB_OK);
            const lvb_budget &b = chain.budget;
            const double far_m = b.far_end.distance_m, near_m = b.near_end.distance_m;
            for (Kept *kept : {&margin, &margin_here}) kept->take(b.far_end.margin_db, mhz[i], far_m);
            for (Kept *kept : {&headroom, &headroom_here}) kept->take(b.near_end.headroom_db, mhz[i], near_m);
            far_level.take(b.far_end.level_dbm, mhz[i], far_m);
            near_level.take(b.near_end.level_dbm, mhz[i], near_m);
            if (k == 0) eirp.take(b.eirp_dbm, mhz[i], 0.0);
            judged = b.verdict != LVB_VERDICT_NOT_JUDGED;
            drops |= b.verdict == LVB_VERDICT_DROPS_OUT || b.verdict == LVB_VERDICT_DROPS_OUT_AND_OVERLOADS;
            overloads |= b.verdict == LVB_VERDICT_OVERLOADS || b.verdict == LVB_VERDICT_DROPS_OUT_AND_OVERLOADS;
            doubtful |= b.verdict == LVB_VERDICT_DOUBTFUL;
            notes |= b.notes;
            EXPECT_EQ(swept.result.far_worst_db, b.far_end.worst_db);
            EXPECT_EQ(swept.result.near_worst_db, b.near_end.worst_db);
        }
        if (!swept.margins.empty()) {
            EXPECT_TRUE(identical(swept.margins[i], margin_here.lowest.value));
            EXPECT_TRUE(identical(swept.headrooms[i], headroom_here.lowest.value));
        }
    }
    const lvb_sweep_result &r = swept.result;
    expect_same(r.lowest_margin, margin.lowest);
    expect_same(r.highest_margin, margin.highest);
    expect_same(r.lowest_headroom, headroom.lowest);
    expect_same(r.highest_headroom, headroom.highest);
    expect_same(r.lowest_level, far_level.lowest);
    expect_same(r.highest_level, near_level.highest);
    expect_same(r.lowest_eirp, eirp.lowest);
    expect_same(r.highest_eirp, eirp.highest);
    const std::int32_t verdict = !judged              ? LVB_VERDICT_NOT_JUDGED
                                 : drops && overloads ? LVB_VERDICT_DROPS_OUT_AND_OVERLOADS
                                 : drops              ? LVB_VERDICT_DROPS_OUT
                                 : overloads          ? LVB_VERDICT_OVERLOADS
                                 : doubtful           ? LVB_VERDICT_DOUBTFUL
                                                      : LVB_VERDICT_HOLDS;
    EXPECT_EQ(r.verdict, verdict);
    const double m = margin.lowest.value, h = headroom.lowest.value;
    const bool by_headroom = !std::isnan(h) && !(m <= h);
    EXPECT_EQ(r.decided_by, by_headroom     ? LVB_DECIDED_BY_NEAR_CEILING
                            : std::isnan(m) ? LVB_DECIDED_BY_NOTHING
                                            : LVB_DECIDED_BY_FAR_FLOOR);
    EXPECT_TRUE(identical(r.decided_by_db, by_headroom ? h : m));
    EXPECT_EQ(r.notes, notes);
}

TEST(Sweep, IsTheWorstAndTheBestOfTheBudgetsOfAllItsPoints) {
    Random random(65);
    int computed = 0, with_path = 0, verdicts[6] = {};
    for (int i = 0; i < 1500; ++i) {
        RichChain rich(random);
        Swept swept(rich.chain);
        for (std::uint64_t n = 1 + random.below(6); n > 0; --n) swept.mhz.push_back(random.uniform(310.0, 840.0));
        if (rich.chain.has_air() && random.below(3) != 0)
            for (std::uint64_t n = 1 + random.below(6); n > 0; --n) swept.metres.push_back(random.uniform(6.0, 40.0));
        swept.lists();
        if (swept.compute() != LVB_OK) { // outside a path's reach; then so is a budget
            EXPECT_NE(rich.way.path.model, LVB_PATH_FREE_SPACE);
            continue;
        }
        ++computed;
        with_path += rich.chain.has_air() && !rich.way.edges.empty();
        ++verdicts[swept.result.verdict];
        expect_budgets(rich.chain, swept, swept.mhz, swept.metres);
        if (HasFatalFailure()) return;
        // without arrays the same
        const lvb_sweep_result before = swept.result;
        swept.sweep.lowest_margin_db = swept.sweep.lowest_headroom_db = nullptr;
        ASSERT_EQ(swept.compute(), LVB_OK);
        EXPECT_EQ(std::memcmp(&before, &swept.result, sizeof before), 0);
    }
    EXPECT_GT(computed, 1200);
    EXPECT_GT(with_path, 50);
    for (const int count : verdicts) EXPECT_GT(count, 10);
}

TEST(Sweep, OfARangeTakesEvenStepsWithExactEnds) {
    Chain chain(ordinary());
    chain.link.near_distance_m = 3.0;
    Swept swept(chain);
    swept.sweep.first_mhz = 606.1;
    swept.sweep.last_mhz = 630.3;
    swept.sweep.frequency_count = 7;
    swept.sweep.distance_count = 5;
    ASSERT_EQ(swept.compute(), LVB_OK);
    std::vector<double> mhz, metres;
    for (int i = 0; i < 7; ++i) mhz.push_back(i == 6 ? 630.3 : 606.1 + (630.3 - 606.1) * (i / 6.0));
    for (int i = 0; i < 5; ++i) metres.push_back(i == 4 ? 40.0 : 3.0 + (40.0 - 3.0) * (i / 4.0));
    expect_budgets(chain, swept, mhz, metres);
    EXPECT_EQ(swept.result.lowest_margin.frequency_mhz, 630.3);
    EXPECT_EQ(swept.result.lowest_margin.distance_m, 40.0);
    EXPECT_EQ(swept.result.lowest_headroom.frequency_mhz, 606.1);
    EXPECT_EQ(swept.result.lowest_headroom.distance_m, 3.0);
    // downwards it is the same range
    std::swap(swept.sweep.first_mhz, swept.sweep.last_mhz);
    const lvb_sweep_result up = swept.result;
    ASSERT_EQ(swept.compute(), LVB_OK);
    EXPECT_NEAR(swept.result.lowest_margin.value, up.lowest_margin.value, 1e-12);
    EXPECT_EQ(swept.result.lowest_margin.frequency_mhz, 630.3);
    // one value is the first; without distances the link's two ends
    swept.sweep.frequency_count = 1;
    swept.sweep.distance_count = 0;
    ASSERT_EQ(swept.compute(), LVB_OK);
    expect_budgets(chain, swept, {630.3}, {});
}

TEST(Sweep, OfASingleFrequencyIsTheBudget) {
    Chain chain(ordinary());
    ASSERT_EQ(chain.compute(), LVB_OK);
    Swept swept(chain);
    swept.mhz = {chain.link.frequency_mhz};
    swept.lists();
    ASSERT_EQ(swept.compute(), LVB_OK);
    EXPECT_EQ(swept.result.verdict, chain.budget.verdict);
    EXPECT_EQ(swept.result.lowest_margin.value, chain.budget.far_end.margin_db);
    EXPECT_EQ(swept.result.notes, chain.budget.notes);
    EXPECT_TRUE((swept.result.notes & LVB_NOTE_NEAR_NOT_GIVEN) != 0);
}

// A link that holds on one channel and not on another is judged by the other.
TEST(Sweep, JudgesALinkAtItsWorstChannel) {
    Lent lent;
    Chain chain(ordinary());
    chain.stages[1].gain_db = 0.0;
    chain.stages[1].gain_table = lent.gain({500.0, 600.0, 610.0, 700.0}, {-3.0, -3.0, -60.0, -60.0});
    Swept swept(chain);
    swept.mhz = {590.0, 600.0};
    swept.lists();
    ASSERT_EQ(swept.compute(), LVB_OK);
    EXPECT_EQ(swept.result.verdict, LVB_VERDICT_HOLDS);
    swept.mhz.push_back(615.0);
    swept.lists();
    ASSERT_EQ(swept.compute(), LVB_OK);
    EXPECT_EQ(swept.result.verdict, LVB_VERDICT_DROPS_OUT);
    EXPECT_EQ(swept.result.lowest_margin.frequency_mhz, 615.0);
    EXPECT_GT(swept.margins[0], 0.0);
    EXPECT_LT(swept.margins[2], 0.0);
}

// In a hole of two rays the walk is worse than both of its ends.
TEST(Sweep, SeesTheHoleInsideAWalk) {
    Way way = two_ray(3.0, 1.5);
    way.path.polarization = LVB_POLARIZATION_HORIZONTAL;
    Chain chain({source(10.0), antenna(), air(), antenna(), receiver(-90.0, 0.0)}, 600.0, 24.0, 1.0);
    chain.stages[2].path = way.lent();
    ASSERT_EQ(chain.compute(), LVB_OK);
    Swept swept(chain);
    swept.sweep.first_mhz = 600.0;
    swept.sweep.last_mhz = 600.0;
    swept.sweep.frequency_count = 1;
    swept.sweep.distance_count = 2001;
    ASSERT_EQ(swept.compute(), LVB_OK);
    EXPECT_LT(swept.result.lowest_margin.value, chain.budget.far_end.margin_db - 3.0);
    EXPECT_GT(swept.result.lowest_margin.distance_m, 1.0);
    EXPECT_LT(swept.result.lowest_margin.distance_m, 24.0);
}

} // namespace
