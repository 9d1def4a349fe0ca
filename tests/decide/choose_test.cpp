// Gear from stock, against every combination judged one by one, and by its own laws.
#include "decide/exhaustive.hpp"

#include "chain/random_chain.hpp"

#include <gtest/gtest.h>

#include <cstring>

namespace {

using namespace proof;

/// Small productions with everything at once: links that share a stock, ties in cost, bands, tables, counts, limits.
class SmallMaker {
  public:
    SmallMaker(Random &random, Lent &lent) : random_(random), lent_(lent) {}

    Choosing make() {
        Choosing made;
        step_db_ = random_.below(3) == 0 ? 0.0 : random_.below(2) ? 0.5 : 0.1;
        const std::uint32_t links = random_.below(3) ? 1 : 2 + static_cast<std::uint32_t>(random_.below(2));
        slots_ = links == 1 ? 1 + random_.below(5) : 1 + random_.below(2);
        const std::uint32_t conducted = stock(made, 2 + random_.below(5), false);
        const std::uint32_t antennas = stock(made, random_.below(3), true);
        for (std::uint32_t i = 0; i < links; ++i) add_link(made, conducted, antennas);
        return made;
    }

  private:
    double db(double low, double high) { return rounded_to(random_.uniform(low, high), step_db_); }

    std::uint32_t stock(Choosing &made, std::uint64_t count, bool antenna) {
        for (std::uint64_t i = 0; i < count; ++i) {
            lvb_stage stage = proof::stage(LVB_KIND_ANTENNA, db(-3.0, 9.0), std::abs(db(0.0, 1.0)));
            double figure = 0.0;
            if (!antenna) {
                const bool amplifier = random_.below(3) == 0;
                stage.kind = amplifier ? LVB_KIND_AMPLIFIER : LVB_KIND_PASSIVE;
                stage.gain_db = amplifier ? db(0.0, 20.0) : db(-12.0, 0.0);
                if (amplifier) figure = random_.uniform(0.5, 8.0);
                if (!amplifier && random_.below(4) == 0) {
                    stage.gain_db = 0.0;
                    stage.gain_table = lent_.gain({400.0, 600.0}, {db(-9.0, 0.0), db(-9.0, 0.0)});
                } else if (!amplifier && random_.below(4) == 0) {
                    stage = cable(LVB_CABLE_RG_213_U, random_.uniform(1.0, 60.0), 2);
                    stage.tolerance_db = std::abs(db(0.0, 1.0));
                }
            }
            const std::uint64_t cost = random_.below(2) ? random_.below(4) : random_.below(1000);
            const auto left = static_cast<std::uint32_t>(random_.below(8));
            const std::uint32_t number = made.item(stage, cost, left, figure);
            if (random_.below(5) == 0) made.items[number].highest_mhz = 550.0;
            if (random_.below(5) == 0) made.items[number].lowest_mhz = 450.0;
        }
        return static_cast<std::uint32_t>(made.items.size());
    }
    std::vector<std::uint32_t> some(std::uint32_t from, std::uint32_t to) {
        std::vector<std::uint32_t> list;
        for (std::uint32_t i = from; i < to; ++i)
            if (random_.below(4) != 0) list.push_back(i);
        if (list.empty()) list.push_back(from);
        if (list.size() > 5) list.resize(5);
        return list;
    }
    void add_link(Choosing &made, std::uint32_t conducted, std::uint32_t antennas) {
        const double mhz[] = {500.0, 600.0, 700.0, 400.0};
        const bool radiates = random_.below(6) != 0;
        std::vector<lvb_stage> stages = {source(db(0.0, 20.0), std::abs(db(0.0, 1.0)))};
        std::vector<std::pair<std::uint32_t, bool>> places; // stage, antenna
        const auto place = [&](bool antenna) {
            places.emplace_back(static_cast<std::uint32_t>(stages.size()), antenna);
            stages.push_back(proof::stage(antenna ? LVB_KIND_ANTENNA : LVB_KIND_PASSIVE));
        };
        const std::uint64_t before = radiates ? random_.below(slots_ + 1) : slots_;
        const bool antenna_slot = radiates && antennas > conducted && random_.below(2);
        for (std::uint64_t i = 0; i < before; ++i) place(false);
        if (random_.below(3) == 0) stages.push_back(proof::stage(LVB_KIND_PASSIVE, db(-3.0, 0.0)));
        if (radiates) {
            if (antenna_slot) place(true);
            else stages.push_back(antenna(2.0));
            stages.push_back(air());
            stages.push_back(proof::stage(LVB_KIND_ALLOWANCE, db(-20.0, 0.0), std::abs(db(0.0, 3.0))));
            stages.push_back(antenna());
            if (random_.below(3) == 0) stages.push_back(proof::stage(LVB_KIND_PASSIVE, db(-3.0, 0.0)));
            for (std::uint64_t i = before; i < slots_; ++i) place(false);
        }
        if (places.empty()) place(false);
        const double far = radiates ? random_.uniform(20.0, 60.0) : 0.0;
        const double middle = radiates ? db(-70.0, -50.0) : db(-10.0, 15.0), half = db(1.0, 25.0);
        const bool receiver_there = random_.below(8) != 0;
        if (receiver_there) {
            lvb_stage end = receiver();
            end.tolerance_db = std::abs(db(0.0, 1.0));
            if (random_.below(4) != 0) end.stated |= LVB_STATED_FLOOR, end.floor_dbm = middle - half;
            if (random_.below(4) != 0) end.stated |= LVB_STATED_CEILING, end.ceiling_dbm = middle + half + 6.0;
            stages.push_back(end);
        }
        const lvb_stage end = stages.back();
        const double frequency_mhz = mhz[random_.below(4)];
        const std::uint32_t need = made.link(stages, frequency_mhz, far, radiates && random_.below(3) ? far / 2 : 0.0);
        for (const auto &[stage, antenna] : places)
            made.slot(need, stage, antenna ? some(conducted, antennas) : some(0, conducted));
        lvb_need &in = made.needs[need];
        in.worst_case = static_cast<std::uint32_t>(random_.below(4));
        if ((end.stated & LVB_STATED_FLOOR) != 0 && random_.below(2)) in.margin_db = std::abs(db(0.0, 5.0));
        if ((end.stated & LVB_STATED_CEILING) != 0 && random_.below(2)) in.headroom_db = std::abs(db(0.0, 5.0));
        if (radiates && random_.below(2)) in.stated = LVB_STATED_EIRP_LIMIT, in.eirp_limit_dbm = db(5.0, 40.0);
        if (radiates && random_.below(2)) {
            in.noise_figure_limit_db = random_.uniform(3.0, 25.0);
            if (receiver_there) with_noise(made.link_stages[need].back(), random_.uniform(2.0, 12.0));
        }
    }

    Random &random_;
    Lent &lent_;
    double step_db_ = 0.0;
    std::uint64_t slots_ = 0;
};

void expect_miss(double told, double exact, double tolerance) {
    if (std::isinf(exact)) EXPECT_EQ(told, exact);
    else EXPECT_NEAR(told, exact, tolerance);
}

void expect_misses(const Choosing &c, const Exhaustive &exact) {
    for (std::uint32_t i = 0; i < c.needs.size(); ++i) {
        const lvb_miss &miss = c.misses[i];
        const double alone[] = {miss.far_alone_db, miss.near_alone_db, miss.eirp_alone_db, miss.noise_alone_db};
        const double besides[] = {miss.far_besides_db, miss.near_besides_db, miss.eirp_besides_db,
                                  miss.noise_besides_db};
        for (int r = 0; r < 4; ++r) {
            SCOPED_TRACE("need " + std::to_string(i) + ", requirement " + std::to_string(r));
            const double tolerance = r == 3 ? 1.001e-6 : 1e-8; // as the header says; grains of 1e-9 dB
            expect_miss(alone[r], exact.miss(i, r, true), tolerance);
            expect_miss(besides[r], exact.miss(i, r, false), tolerance);
        }
    }
}

void expect_exact(Choosing &c, const Exhaustive &exact, std::uint32_t set_count) {
    ASSERT_EQ(c.compute(set_count), LVB_OK) << c.fault.status << " field " << lvb_field_name(c.fault.field) << " row "
                                            << c.fault.row << " stage " << c.fault.stage;
    const std::vector<ExactSet> &sets = exact.sets();
    if (sets.empty()) {
        EXPECT_EQ(c.chosen.set_count, 0u);
        ASSERT_EQ(c.chosen.outcome, exact.stock_serves() ? LVB_OUTCOME_INFEASIBLE : LVB_OUTCOME_SHORT_OF_STOCK);
        if (exact.stock_serves()) expect_misses(c, exact);
        return;
    }
    ASSERT_EQ(c.chosen.outcome, LVB_OUTCOME_PROVEN);
    ASSERT_EQ(c.chosen.set_count, std::min<std::size_t>(set_count, sets.size()));
    EXPECT_EQ(c.chosen.cost, sets[0].cost);
    EXPECT_EQ(c.chosen.lower_bound, sets[0].cost);
    EXPECT_EQ(c.chosen.gap, 0u);
    for (std::uint32_t i = 0; i < c.chosen.set_count; ++i) {
        const ExactSet told{c.costs[i], std::vector<std::uint32_t>(c.set(i), c.set(i) + c.slots.size())};
        ASSERT_EQ(told.cost, sets[i].cost) << "set " << i;
        ASSERT_EQ(told.items, sets[i].items) << "set " << i;
    }
}

TEST(Choose, EqualsEveryCombinationTried) {
    Random random(6001);
    std::map<int, int> outcomes;
    for (int i = 0; i < 6000; ++i) {
        SCOPED_TRACE("case " + std::to_string(i));
        Lent lent;
        Choosing c = SmallMaker(random, lent).make();
        const Exhaustive exact(c);
        const std::uint32_t wanted[] = {1, 1, 2, 7, 60};
        expect_exact(c, exact, wanted[random.below(5)]);
        if (HasFatalFailure() || HasNonfatalFailure()) return;
        ++outcomes[c.chosen.outcome];
    }
    EXPECT_GT(outcomes[LVB_OUTCOME_PROVEN], 1500);
    EXPECT_GT(outcomes[LVB_OUTCOME_INFEASIBLE], 500);
    EXPECT_GT(outcomes[LVB_OUTCOME_SHORT_OF_STOCK], 50);
}

Shape shape_of(Random &random) {
    Shape shape;
    shape.transmit_slots = static_cast<std::uint32_t>(random.below(4));
    shape.receive_slots = 5 - shape.transmit_slots;
    shape.items = 6;
    shape.level_step_db = random.below(2) ? 0.0 : 0.5;
    shape.tolerance_step_db = random.below(2) ? 0.0 : 0.25;
    shape.largest_cost = random.below(2) ? 10 : 1000000000;
    shape.cost_follows_gain = random.below(2);
    shape.worst_levels = random.below(2);
    shape.limited_power = random.below(2);
    shape.limited_noise = random.below(2);
    shape.window_db = random.uniform(0.02, 6.0);
    shape.tightness = random.uniform(0.1, 0.9);
    return shape;
}

TEST(Choose, EqualsEveryCombinationOfLongerChains) {
    Random random(6002);
    for (int i = 0; i < 60; ++i) {
        SCOPED_TRACE("case " + std::to_string(i));
        Choosing c = make_choosing(random, shape_of(random));
        const Exhaustive exact(c);
        expect_exact(c, exact, 1 + static_cast<std::uint32_t>(random.below(20)));
        if (HasFatalFailure() || HasNonfatalFailure()) return;
    }
}

// The least room gives the same sets, only more slowly.
TEST(Choose, IsTheSameWithTheLeastScratch) {
    Random random(6003);
    int proven = 0;
    for (int i = 0; i < 150; ++i) {
        SCOPED_TRACE("case " + std::to_string(i));
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(5), LVB_OK);
        const std::vector<std::uint32_t> sets = c.sets;
        const std::vector<std::uint64_t> costs = c.costs;
        const lvb_chosen ample = c.chosen;
        auto room = sized<lvb_choice_scratch>();
        ASSERT_EQ(lvb_compute_choice_scratch(&c.choice, &room, nullptr), LVB_OK);
        ASSERT_LT(room.least_bytes, room.ample_bytes);
        c.scratch_bytes = room.least_bytes;
        ASSERT_EQ(c.compute(5), LVB_OK);
        ASSERT_EQ(c.chosen.outcome, ample.outcome);
        EXPECT_EQ(c.sets, sets);
        EXPECT_EQ(c.costs, costs);
        if (c.chosen.outcome == LVB_OUTCOME_PROVEN) { // it was not stopped: nothing is left to be made sharper
            ++proven;
            EXPECT_EQ(c.chosen.coarse, 0u);
        }
        c.choice.scratch = c.scratch.data() + 1; // memory may begin anywhere; a byte less is too little
        --c.choice.scratch_bytes;
        EXPECT_EQ(c.compute(), LVB_E_COUNT);
    }
    EXPECT_GT(proven, 50);
}

// Stopped early it says so, and its bound and its sets are true.
TEST(Choose, TellsTheTruthWhenItIsStopped) {
    Random random(6004);
    int stopped = 0, with_gap = 0, coarse = 0;
    for (int i = 0; i < 300; ++i) {
        SCOPED_TRACE("case " + std::to_string(i));
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(1), LVB_OK);
        if (c.chosen.outcome != LVB_OUTCOME_PROVEN) continue;
        const std::uint64_t best = c.chosen.cost, steps = c.chosen.steps;
        auto room = sized<lvb_choice_scratch>();
        ASSERT_EQ(lvb_compute_choice_scratch(&c.choice, &room, nullptr), LVB_OK);
        c.scratch_bytes = room.least_bytes;
        c.choice.step_limit = 1 + random.below(steps * 3);
        ASSERT_EQ(c.compute(1), LVB_OK);
        EXPECT_LE(c.chosen.steps, c.choice.step_limit);
        EXPECT_LE(c.chosen.lower_bound, best);
        if (c.chosen.outcome == LVB_OUTCOME_PROVEN) {
            EXPECT_EQ(c.chosen.cost, best);
            continue;
        }
        ++stopped;
        coarse += c.chosen.coarse == 1; // some choices have their finest tables in the least room
        if (c.chosen.outcome == LVB_OUTCOME_UNDECIDED) {
            EXPECT_EQ(c.chosen.set_count, 0u);
            continue;
        }
        ASSERT_EQ(c.chosen.outcome, LVB_OUTCOME_NOT_PROVEN);
        EXPECT_GE(c.chosen.cost, best);
        EXPECT_EQ(c.chosen.gap, c.chosen.cost - c.chosen.lower_bound);
        with_gap += c.chosen.gap > 0;
    }
    EXPECT_GT(stopped, 30);
    EXPECT_GT(with_gap, 10);
    EXPECT_GT(coarse, 10);
}

// Links that want the same scarce items, more than a brute force can try: the bound is kept, and what is proven stays.
TEST(Choose, SharesAStockAmongLinks) {
    Random random(6005);
    for (int i = 0; i < 40; ++i) {
        Choosing c;
        std::vector<std::uint32_t> all;
        for (int k = 0; k < 8; ++k) {
            const double loss_db = random.uniform(0.5, 9.0);
            all.push_back(c.item(stage(LVB_KIND_PASSIVE, -loss_db), 1 + random.below(50), 1));
        }
        for (int l = 0; l < 3; ++l) {
            const std::uint32_t need = c.link({source(10.0), stage(LVB_KIND_PASSIVE), antenna(2.0), air(), antenna(),
                                               stage(LVB_KIND_PASSIVE), receiver(-70.0, -20.0)},
                                              600.0, random.uniform(30.0, 120.0), 0.0);
            c.slot(need, 1, all);
            c.slot(need, 5, all);
        }
        const Exhaustive exact(c);
        expect_exact(c, exact, 10);
        if (HasFatalFailure()) return;
    }
}

TEST(Choose, GivesTheBudgetThatItPromises) {
    Random random(6006);
    for (int i = 0; i < 60; ++i) {
        Shape shape = shape_of(random);
        shape.transmit_slots = shape.receive_slots = 6;
        shape.items = 12;
        shape.window_db = 3.0;
        Choosing c = make_choosing(random, shape);
        ASSERT_EQ(c.compute(3), LVB_OK);
        for (std::uint32_t s = 0; s < c.chosen.set_count; ++s) {
            std::vector<lvb_stage> stages = c.link_stages[0];
            std::uint64_t cost = 0;
            for (std::size_t k = 0; k < c.slots.size(); ++k) {
                stages[c.slots[k].stage] = c.item_stages[c.set(s)[k]];
                cost += c.items[c.set(s)[k]].cost;
            }
            Chain chain(stages, 600.0, 40.0, 39.0);
            ASSERT_EQ(chain.compute(), LVB_OK);
            const lvb_need &need = c.needs[0];
            const bool worst = need.worst_case != 0;
            EXPECT_GE(chain.budget.far_end.margin_db - (worst ? chain.budget.far_end.worst_db : 0.0), 0.0);
            EXPECT_GE(chain.budget.near_end.headroom_db - (worst ? chain.budget.near_end.worst_db : 0.0), 0.0);
            if (need.stated != 0) {
                EXPECT_LE(chain.budget.eirp_dbm + (worst ? chain.budget.eirp_worst_db : 0.0), need.eirp_limit_dbm);
            }
            EXPECT_EQ(c.costs[s], cost);
            if (s > 0) {
                EXPECT_GE(c.costs[s], c.costs[s - 1]);
            }
        }
    }
}

// ---- Laws.

bool found(const Choosing &c) { return c.chosen.outcome == LVB_OUTCOME_PROVEN; }

TEST(Choose, GetsNoDearerByAnotherItem) {
    Random random(6007);
    for (int i = 0; i < 200; ++i) {
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(1), LVB_OK);
        const lvb_chosen before = c.chosen;
        std::vector<std::uint32_t> list = c.lists[0];
        const double loss_db = random.uniform(0.0, 9.0);
        list.push_back(c.item(stage(LVB_KIND_PASSIVE, -loss_db), random.below(100), 1));
        c.lists[0] = list;
        c.slots[0].items = c.lists[0].data();
        c.slots[0].item_count = static_cast<std::uint32_t>(list.size());
        ASSERT_EQ(c.compute(1), LVB_OK);
        if (before.outcome != LVB_OUTCOME_PROVEN) continue;
        ASSERT_TRUE(found(c));
        EXPECT_LE(c.chosen.cost, before.cost);
    }
}

TEST(Choose, ScalesWithAllCosts) {
    Random random(6008);
    for (int i = 0; i < 200; ++i) {
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(4), LVB_OK);
        const lvb_chosen before = c.chosen;
        const std::vector<std::uint32_t> sets = c.sets;
        for (lvb_item &item : c.items) item.cost *= 37;
        ASSERT_EQ(c.compute(4), LVB_OK);
        EXPECT_EQ(c.chosen.outcome, before.outcome);
        EXPECT_EQ(c.chosen.cost, before.cost * 37);
        EXPECT_EQ(c.sets, sets);
    }
}

TEST(Choose, GetsNoDearerWithoutALimit) {
    Random random(6009);
    for (int i = 0; i < 300; ++i) {
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(1), LVB_OK);
        const lvb_chosen before = c.chosen;
        lvb_need &need = c.needs[0];
        switch (random.below(5)) {
        case 0:
            need.stated = 0;
            need.eirp_limit_dbm = 0.0;
            break;
        case 1:
            need.noise_figure_limit_db = 0.0;
            break;
        case 2:
            need.worst_case = 0;
            break;
        case 3:
            c.link_stages[0].back().ceiling_dbm += 3.0;
            break;
        default:
            c.link_stages[0].back().floor_dbm -= 3.0;
        }
        ASSERT_EQ(c.compute(1), LVB_OK);
        if (before.outcome != LVB_OUTCOME_PROVEN) continue;
        ASSERT_TRUE(found(c));
        EXPECT_LE(c.chosen.cost, before.cost);
    }
}

TEST(Choose, GivesTheFirstOfMoreSets) {
    Random random(6010);
    for (int i = 0; i < 60; ++i) {
        Choosing c = make_choosing(random, shape_of(random));
        ASSERT_EQ(c.compute(30), LVB_OK);
        const std::vector<std::uint32_t> sets = c.sets;
        const std::uint32_t count = c.chosen.set_count;
        for (const std::uint32_t few : {1u, 7u}) {
            ASSERT_EQ(c.compute(few), LVB_OK);
            EXPECT_EQ(c.chosen.set_count, std::min(few, count));
            EXPECT_EQ(std::memcmp(c.sets.data(), sets.data(), c.chosen.set_count * c.slots.size() * sizeof sets[0]), 0);
        }
    }
}

// Friis's cascade as textbooks work it out: the miss over a limit far below tells the noise figure.
double noise_figure_of(const std::vector<std::pair<lvb_stage, double>> &parts, double receiver_db) {
    Choosing c;
    std::vector<lvb_stage> stages = {source(10.0), antenna(), air(), antenna()};
    for (std::size_t i = 0; i < parts.size(); ++i) stages.push_back(stage(LVB_KIND_PASSIVE));
    if (receiver_db > 0.0) {
        stages.push_back(receiver());
        with_noise(stages.back(), receiver_db);
    }
    const std::uint32_t need = c.link(stages, 600.0, 10.0, 0.0);
    for (std::size_t i = 0; i < parts.size(); ++i)
        c.slot(need, static_cast<std::uint32_t>(4 + i), {c.item(parts[i].first, 1, 1, parts[i].second)});
    c.needs[0].noise_figure_limit_db = 0.01;
    EXPECT_EQ(c.compute(1), LVB_OK);
    EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_INFEASIBLE);
    EXPECT_EQ(c.misses[0].noise_alone_db, c.misses[0].noise_besides_db);
    return 0.01 + c.misses[0].noise_alone_db;
}

TEST(Choose, TakesNoiseFiguresAsPrinted) {
    const auto amplifier = [](double gain_db) { return stage(LVB_KIND_AMPLIFIER, gain_db); };
    // Rappaport, Wireless Communications, example B.2: cable of 3 dB before 6 dB gives 9 dB
    EXPECT_NEAR(noise_figure_of({{stage(LVB_KIND_PASSIVE, -3.0), 0.0}}, 6.0), 9.0, 0.005);
    // Mishra, example 2.12: NF 3 and 5 dB, gains of 20 dB: 3.047 dB; swapped 5.014 dB
    EXPECT_NEAR(noise_figure_of({{amplifier(20.0), 3.0}, {amplifier(20.0), 5.0}}, 0.0), 3.047, 0.0005);
    EXPECT_NEAR(noise_figure_of({{amplifier(20.0), 5.0}, {amplifier(20.0), 3.0}}, 0.0), 5.014, 0.0005);
    // Blake, example 1.12: power gains 10, 25, 30 and noise factors 2, 4, 5 give 2.316
    const double blake = noise_figure_of({{amplifier(10.0), 10.0 * std::log10(2.0)},
                                          {amplifier(10.0 * std::log10(25.0)), 10.0 * std::log10(4.0)},
                                          {amplifier(10.0 * std::log10(30.0)), 10.0 * std::log10(5.0)}},
                                         0.0);
    EXPECT_NEAR(std::pow(10.0, blake / 10.0), 2.316, 0.0005);
}

// A worked case: which combiner and which cable, by hand.
// 10 km of cable at 2 GHz lose thousands of dB, and their noise figure is no number: the search for how far it is
// missed ends all the same. Beside a pad of 20 dB, which is its own noise figure, 8 dB are missing.
TEST(Choose, EndsWhereANoiseFigureIsNoNumber) {
    for (const bool hopeless : {true, false}) {
        Choosing c;
        std::vector<std::uint32_t> list = {c.item(cable(LVB_CABLE_RG_213_U, 10000.0), 1, 1)};
        if (!hopeless) list.push_back(c.item(stage(LVB_KIND_PASSIVE, -20.0), 5, 1));
        const std::uint32_t need =
            c.link({source(10.0), antenna(), air(), antenna(), stage(LVB_KIND_PASSIVE)}, 2000.0, 40.0, 0.0);
        c.slot(need, 4, list);
        c.needs[need].noise_figure_limit_db = 12.0;
        ASSERT_EQ(c.compute(1), LVB_OK) << c.fault.status;
        EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_INFEASIBLE);
        if (hopeless) EXPECT_EQ(c.misses[0].noise_alone_db, std::numeric_limits<double>::infinity());
        else EXPECT_NEAR(c.misses[0].noise_alone_db, 8.0, 2e-6);
    }
}

TEST(Choose, WorksOutASmallProduction) {
    Choosing c;
    const std::uint32_t dear = c.item(stage(LVB_KIND_PASSIVE, -3.5), 400, 1);
    const std::uint32_t cheap = c.item(stage(LVB_KIND_PASSIVE, -7.0), 100, 4);
    const std::uint32_t thin = c.item(stage(LVB_KIND_CABLE, -9.0), 20, 9);
    const std::uint32_t thick = c.item(stage(LVB_KIND_CABLE, -3.0), 120, 2);
    // free space over 12.192 m (40 ft) at 600 MHz: 49.73 dB (ITU-R P.525)
    const std::uint32_t need = c.link({source(15.0), stage(LVB_KIND_PASSIVE), stage(LVB_KIND_CABLE, -1.0), antenna(),
                                       air(), antenna(), receiver(-46.0, -20.0)},
                                      600.0, 12.192, 0.0);
    c.slot(need, 1, {dear, cheap});
    c.slot(need, 2, {thin, thick});
    // 15 - 49.73 = -34.73; floor -46 leaves 11.27 dB: 3.5 + 3, 7 + 3; not 3.5 + 9, 7 + 9
    ASSERT_EQ(c.compute(4), LVB_OK);
    EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_PROVEN);
    ASSERT_EQ(c.chosen.set_count, 2u);
    EXPECT_EQ(c.costs[0], 220u);
    EXPECT_EQ(c.costs[1], 520u);
    EXPECT_EQ(c.set(0)[0], cheap);
    EXPECT_EQ(c.set(0)[1], thick);
    EXPECT_EQ(c.set(1)[0], dear);
    c.needs[0].margin_db = 5.0; // 6.27 dB are left: not even 3.5 + 3
    ASSERT_EQ(c.compute(1), LVB_OK);
    EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_INFEASIBLE);
    EXPECT_NEAR(c.misses[0].far_alone_db, 0.23, 0.005);
    EXPECT_NEAR(c.misses[0].far_besides_db, 0.23, 0.005);
    EXPECT_EQ(c.misses[0].near_besides_db, std::numeric_limits<double>::infinity());
    EXPECT_EQ(c.misses[0].near_alone_db, 0.0);
    c.items[thick].count = c.items[thin].count = 0;
    ASSERT_EQ(c.compute(1), LVB_OK);
    EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_SHORT_OF_STOCK);
}

} // namespace
