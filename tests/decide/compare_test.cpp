// Comparing: pairs in order, as many as can be by label and then by kind, against every other way of pairing;
// differences that add up.
#include "decide/rich_chain.hpp"
#include "door/refusal.hpp"

#include <gtest/gtest.h>

#include <array>

namespace {

using namespace proof;

struct Compared {
    std::vector<std::uint8_t> scratch;
    std::vector<lvb_pair> pairs;
    lvb_comparison out = sized<lvb_comparison>();
    lvb_fault fault = sized<lvb_fault>();

    Compared(Chain &first, Chain &second) {
        for (Chain *chain : {&first, &second}) EXPECT_EQ(chain->compute(), LVB_OK);
        const std::size_t n = first.stages.size(), m = second.stages.size();
        const std::uint64_t room =
            lvb_comparison_scratch_bytes(static_cast<std::uint32_t>(n), static_cast<std::uint32_t>(m));
        scratch.assign(room + 8, 0xEE);
        pairs.resize(n + m);
        auto in = sized<lvb_compare>();
        in.first = &first.link;
        in.second = &second.link;
        in.scratch_bytes = room;
        in.scratch = scratch.data();
        in.pairs = pairs.data();
        in.pair_size = sizeof(lvb_pair);
        EXPECT_EQ(lvb_compute_comparison(&in, &out, &fault), LVB_OK) << text_of(fault);
        for (std::size_t i = room; i < scratch.size(); ++i) EXPECT_EQ(scratch[i], 0xEE); // no more than was told
        pairs.resize(out.pair_count);
        auto alone = sized<lvb_comparison>();
        in.pairs = nullptr;
        in.pair_size = 0;
        EXPECT_EQ(lvb_compute_comparison(&in, &alone, nullptr), LVB_OK);
        EXPECT_EQ(std::memcmp(&alone, &out, sizeof out), 0);
    }
};

bool same_label(const lvb_stage &a, const lvb_stage &b) {
    return a.label != nullptr && b.label != nullptr && *a.label != '\0' && std::strcmp(a.label, b.label) == 0;
}

// As many by label as can be, and of these ways as many by kind, by trying every way.
std::array<int, 2> best_of(const std::vector<lvb_stage> &a, const std::vector<lvb_stage> &b, std::size_t i,
                           std::size_t j) {
    if (i == a.size() || j == b.size()) return {0, 0};
    std::array<int, 2> best = std::max(best_of(a, b, i + 1, j), best_of(a, b, i, j + 1));
    if (a[i].kind == b[j].kind) {
        std::array<int, 2> met = best_of(a, b, i + 1, j + 1);
        ++met[same_label(a[i], b[j]) ? 0 : 1];
        best = std::max(best, met);
    }
    return best;
}

// Every stage in order, once, and every figure the difference of the budgets' own.
void expect_sound(const Chain &first, const Chain &second, const Compared &c) {
    std::int32_t next[2] = {0, 0};
    std::uint32_t counts[5] = {};
    double far = 0.0, near = 0.0, far_level[2] = {}, near_level[2] = {}, largest = 0.0;
    for (std::size_t k = 0; k < c.pairs.size(); ++k) {
        const lvb_pair &pair = c.pairs[k];
        ++counts[pair.matched];
        const Chain *chains[2] = {&first, &second};
        const std::int32_t index[2] = {pair.first_stage, pair.second_stage};
        double change[2] = {}, near_change[2] = {}, tolerance[2] = {};
        for (int s = 0; s < 2; ++s) {
            if (index[s] < 0) continue;
            ASSERT_EQ(index[s], next[s]++);
            const auto at = static_cast<std::size_t>(index[s]);
            change[s] = chains[s]->levels[at].far_change_db;
            near_change[s] = chains[s]->levels[at].near_change_db;
            tolerance[s] = chains[s]->stages[at].tolerance_db;
            far_level[s] = chains[s]->levels[at].far_level_dbm;
            near_level[s] = chains[s]->levels[at].near_level_dbm;
        }
        EXPECT_EQ(pair.far_change_difference_db, change[1] - change[0]);
        EXPECT_EQ(pair.near_change_difference_db, near_change[1] - near_change[0]);
        EXPECT_EQ(pair.tolerance_difference_db, tolerance[1] - tolerance[0]);
        EXPECT_EQ(pair.far_level_difference_db, far_level[1] - far_level[0]);
        EXPECT_EQ(pair.near_level_difference_db, near_level[1] - near_level[0]);
        far += pair.far_change_difference_db;
        near += pair.near_change_difference_db;
        largest =
            std::max({largest, std::fabs(pair.far_change_difference_db), std::fabs(pair.near_change_difference_db)});
        const bool both = index[0] >= 0 && index[1] >= 0;
        EXPECT_EQ(both, pair.matched >= LVB_PAIR_BY_KIND);
        if (!both) {
            EXPECT_EQ(pair.matched, index[0] >= 0 ? LVB_PAIR_FIRST_ONLY : LVB_PAIR_SECOND_ONLY);
            continue;
        }
        const lvb_stage &a = first.stages[static_cast<std::size_t>(index[0])],
                        &b = second.stages[static_cast<std::size_t>(index[1])];
        EXPECT_EQ(a.kind, b.kind);
        EXPECT_EQ(pair.matched == LVB_PAIR_BY_LABEL, same_label(a, b));
    }
    EXPECT_EQ(static_cast<std::size_t>(next[0]), first.stages.size());
    EXPECT_EQ(static_cast<std::size_t>(next[1]), second.stages.size());
    EXPECT_EQ(c.out.first_only, counts[LVB_PAIR_FIRST_ONLY]);
    EXPECT_EQ(c.out.second_only, counts[LVB_PAIR_SECOND_ONLY]);
    EXPECT_EQ(c.out.by_kind, counts[LVB_PAIR_BY_KIND]);
    EXPECT_EQ(c.out.by_label, counts[LVB_PAIR_BY_LABEL]);
    const lvb_budget &a = first.budget, &b = second.budget;
    EXPECT_NEAR(far, b.far_end.level_dbm - a.far_end.level_dbm, 1e-9);
    EXPECT_NEAR(near, b.near_end.level_dbm - a.near_end.level_dbm, 1e-9);
    EXPECT_EQ(c.out.far_level_db, b.far_end.level_dbm - a.far_end.level_dbm);
    EXPECT_EQ(c.out.near_level_db, b.near_end.level_dbm - a.near_end.level_dbm);
    EXPECT_TRUE(same(c.out.margin_db, b.far_end.margin_db - a.far_end.margin_db));
    EXPECT_TRUE(same(c.out.headroom_db, b.near_end.headroom_db - a.near_end.headroom_db));
    EXPECT_TRUE(same(c.out.eirp_db, b.eirp_dbm - a.eirp_dbm));
    EXPECT_EQ(c.out.far_worst_db, b.far_end.worst_db - a.far_end.worst_db);
    EXPECT_EQ(c.out.near_worst_db, b.near_end.worst_db - a.near_end.worst_db);
    EXPECT_EQ(c.out.first_verdict, a.verdict);
    EXPECT_EQ(c.out.second_verdict, b.verdict);
    EXPECT_EQ(std::fabs(c.out.largest_db), largest);
    EXPECT_EQ(c.out.largest_pair < 0, largest == 0.0);
}

const char *label_of(Random &random) {
    static const char *const labels[] = {nullptr, "", "north", "south", "pad", "pad 2"};
    return labels[random.below(6)];
}

TEST(Compare, PairsAsManyAsCanBe) {
    Random random(70);
    for (int i = 0; i < 3000; ++i) {
        std::vector<Chain> chains;
        for (int s = 0; s < 2; ++s) {
            std::vector<lvb_stage> stages = {source(random.uniform(0.0, 20.0))};
            const std::int32_t kinds[] = {LVB_KIND_PASSIVE, LVB_KIND_AMPLIFIER, LVB_KIND_ALLOWANCE};
            for (std::uint64_t n = random.below(7); n > 0; --n) {
                const std::int32_t kind = kinds[random.below(3)];
                const double loss_db = random.uniform(0.0, 6.0);
                stages.push_back(stage(kind, -loss_db, random.uniform(0.0, 1.0)));
            }
            if (random.below(2)) stages.push_back(receiver(-90.0, 30.0));
            for (lvb_stage &made : stages) made.label = label_of(random);
            chains.emplace_back(stages);
        }
        const Compared c(chains[0], chains[1]);
        expect_sound(chains[0], chains[1], c);
        const std::array<int, 2> best = best_of(chains[0].stages, chains[1].stages, 0, 0);
        EXPECT_EQ(static_cast<int>(c.out.by_label), best[0]);
        EXPECT_EQ(static_cast<int>(c.out.by_kind), best[1]);
    }
}

TEST(Compare, DifferencesAreThoseOfTheBudgets) {
    Random random(71);
    for (int i = 0; i < 1000; ++i) {
        RichChain a(random), b(random);
        for (Chain *chain : {&a.chain, &b.chain})
            for (lvb_stage &made : chain->stages) made.label = label_of(random);
        const Compared c(a.chain, b.chain);
        expect_sound(a.chain, b.chain, c);
        if (HasFailure()) return;
    }
}

TEST(Compare, AChainWithItselfIsAlike) {
    Random random(72);
    for (int i = 0; i < 200; ++i) {
        RichChain a(random);
        const Compared c(a.chain, a.chain);
        EXPECT_EQ(c.out.pair_count, a.chain.stages.size());
        EXPECT_EQ(c.out.by_kind, a.chain.stages.size()); // without labels
        EXPECT_EQ(c.out.largest_pair, -1);
        EXPECT_EQ(c.out.far_level_db, 0.0);
        for (const lvb_pair &pair : c.pairs) EXPECT_EQ(pair.first_stage, pair.second_stage);
    }
}

// Labels weigh more than any number of kinds: the pads of one name are a pair, though that leaves others alone.
TEST(Compare, ALabelWeighsMoreThanKinds) {
    Chain first(
        {source(10.0), stage(LVB_KIND_PASSIVE, -1.0), stage(LVB_KIND_PASSIVE, -2.0), stage(LVB_KIND_PASSIVE, -3.0)});
    Chain second(
        {source(10.0), stage(LVB_KIND_PASSIVE, -3.0), stage(LVB_KIND_PASSIVE, -4.0), stage(LVB_KIND_PASSIVE, -5.0)});
    first.stages[3].label = "pad";
    const std::string copy = "pad"; // the same bytes elsewhere
    second.stages[1].label = copy.c_str();
    const Compared c(first, second);
    expect_sound(first, second, c);
    ASSERT_EQ(c.out.pair_count, 6u);
    EXPECT_EQ(c.out.by_label, 1u);
    EXPECT_EQ(c.out.by_kind, 1u); // the sources
    EXPECT_EQ(c.pairs[1].matched, LVB_PAIR_FIRST_ONLY);
    EXPECT_EQ(c.pairs[3].matched, LVB_PAIR_BY_LABEL);
    EXPECT_EQ(c.pairs[3].far_change_difference_db, 0.0);
    EXPECT_EQ(c.pairs[5].matched, LVB_PAIR_SECOND_ONLY);
    // a label that another kind bears is none
    second.stages[1].kind = LVB_KIND_AMPLIFIER;
    EXPECT_EQ(Compared(first, second).out.by_label, 0u);
}

// Of ways that are equally good: earlier stages are paired, and what only the first has comes first.
TEST(Compare, EqualWaysAreDecidedInOneWay) {
    Chain first({source(10.0), stage(LVB_KIND_PASSIVE, -1.0), stage(LVB_KIND_PASSIVE, -2.0)});
    Chain second({source(10.0), stage(LVB_KIND_PASSIVE, -1.0)});
    const Compared c(first, second);
    EXPECT_EQ(c.pairs[1].first_stage, 1);
    EXPECT_EQ(c.pairs[1].second_stage, 1);
    EXPECT_EQ(c.pairs[2].second_stage, -1);
    second.stages[1] = stage(LVB_KIND_AMPLIFIER, 3.0);
    const Compared d(first, second);
    EXPECT_EQ(d.pairs[1].matched, LVB_PAIR_FIRST_ONLY);
    EXPECT_EQ(d.pairs[2].matched, LVB_PAIR_FIRST_ONLY);
    EXPECT_EQ(d.pairs[3].matched, LVB_PAIR_SECOND_ONLY);
    EXPECT_EQ(d.out.largest_pair, 3);
    EXPECT_EQ(d.out.largest_db, 3.0);
}

TEST(Compare, TheLongestChainsNeedTheRoomThatIsTold) {
    std::vector<lvb_stage> stages(LVB_MAX_STAGES, stage(LVB_KIND_PASSIVE, -0.01));
    stages[0] = source(10.0);
    Chain first(stages), second(stages);
    second.stages[500].gain_db = -1.01;
    const Compared c(first, second);
    EXPECT_EQ(c.out.by_kind, std::uint32_t{LVB_MAX_STAGES});
    EXPECT_EQ(c.out.largest_pair, 500);
    EXPECT_EQ(lvb_comparison_scratch_bytes(LVB_MAX_STAGES, LVB_MAX_STAGES), std::uint64_t{1} << 20);
    EXPECT_EQ(lvb_comparison_scratch_bytes(0xFFFFFFFF, 3), std::uint64_t{3} * LVB_MAX_STAGES);
    EXPECT_EQ(lvb_comparison_scratch_bytes(7, 0), 0u);
}

} // namespace
