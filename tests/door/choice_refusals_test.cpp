// Bad choices: each gets its own status and a fault that names the item, slot or link; results stay untouched.
#include "decide/stocks.hpp"
#include "door/refusal.hpp"
#include "path/paths.hpp"

#include <functional>

namespace {

using namespace proof;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// A sound choice: two links over air, four items, limits of everything.
Choosing sound() {
    Choosing c;
    const std::uint32_t pad = c.item(stage(LVB_KIND_PASSIVE, -3.0), 5, 2);
    const std::uint32_t wire = c.item(stage(LVB_KIND_CABLE, -1.0), 7, 2);
    const std::uint32_t amplifier = c.item(stage(LVB_KIND_AMPLIFIER, 10.0), 9, 2, 3.0);
    const std::uint32_t whip = c.item(antenna(2.0), 1, 2);
    lvb_stage end = receiver(-90.0, -20.0);
    with_noise(end, 6.0);
    for (int i = 0; i < 2; ++i) {
        const std::uint32_t need = c.link({source(10.0), stage(LVB_KIND_PASSIVE), antenna(2.0), air(),
                                           stage(LVB_KIND_ALLOWANCE, -3.0), antenna(), stage(LVB_KIND_PASSIVE), end},
                                          600.0, 40.0, 10.0);
        c.slot(need, 1, {pad, wire, amplifier});
        c.slot(need, 5, {whip});
        c.slot(need, 6, {pad, wire, amplifier});
        c.needs[need].stated = LVB_STATED_EIRP_LIMIT;
        c.needs[need].eirp_limit_dbm = 30.0;
        c.needs[need].noise_figure_limit_db = 12.0;
    }
    return c;
}

void refused(const std::function<void(Choosing &)> &spoil, const Expected &expected) {
    Choosing c = sound();
    c.fill(2);
    spoil(c);
    Untouched<lvb_chosen> result;
    const auto sets = c.sets;
    const auto costs = c.costs;
    EXPECT_EQ(lvb_compute_choice(&c.choice, &result.result, &c.fault), expected.status);
    expect_fault(c.fault, expected);
    EXPECT_TRUE(result.holds());
    EXPECT_EQ(c.sets, sets);
    EXPECT_EQ(c.costs, costs);
    EXPECT_EQ(lvb_compute_choice(&c.choice, &result.result, nullptr), expected.status);
}

constexpr std::int32_t in_choice = LVB_STRUCT_CHOICE, in_item = LVB_STRUCT_ITEM, in_slot = LVB_STRUCT_SLOT,
                       in_need = LVB_STRUCT_NEED;

TEST(ChoiceRefusals, TheSoundOneHolds) {
    Choosing c = sound();
    ASSERT_EQ(c.compute(2), LVB_OK);
    EXPECT_EQ(c.chosen.outcome, LVB_OUTCOME_PROVEN);
    for (const char *name : {"proven", "not proven", "infeasible", "short of stock", "undecided"}) {
        bool found = false;
        for (std::int32_t outcome = 1; outcome <= 5; ++outcome) found |= std::string(lvb_outcome_name(outcome)) == name;
        EXPECT_TRUE(found) << name;
    }
    EXPECT_STREQ(lvb_outcome_name(0), "unknown");
    EXPECT_STREQ(lvb_outcome_name(6), "unknown");
}

TEST(ChoiceRefusals, CountsSizesAndPointers) {
    refused([](Choosing &c) { c.choice.size = 8; },
            {LVB_E_STRUCT_SIZE, in_choice, LVB_FIELD_SIZE, -1, -1, 8.0, sizeof(lvb_choice), 4096.0});
    refused([](Choosing &c) { c.choice.need_count = 0; },
            {LVB_E_MISSING, in_choice, LVB_FIELD_NEED_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_NEEDS});
    refused([](Choosing &c) { c.choice.item_count = LVB_MAX_ITEMS + 1; },
            {LVB_E_COUNT, in_choice, LVB_FIELD_ITEM_COUNT, -1, -1, LVB_MAX_ITEMS + 1, 1.0, LVB_MAX_ITEMS});
    refused([](Choosing &c) { c.choice.slots = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_SLOTS});
    refused([](Choosing &c) { c.choice.needs = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_NEEDS});
    refused([](Choosing &c) { c.choice.items = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_ITEMS});
    refused([](Choosing &c) { c.choice.sets = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_SETS});
    refused([](Choosing &c) { c.choice.costs = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_COSTS});
    refused([](Choosing &c) { c.choice.scratch = nullptr; }, {LVB_E_NULL, in_choice, LVB_FIELD_SCRATCH});
    refused([](Choosing &c) { c.choice.item_size = 8; },
            {LVB_E_ELEMENT_SIZE, in_choice, LVB_FIELD_ITEM_SIZE, -1, -1, 8.0, sizeof(lvb_item), 4096.0});
    refused([](Choosing &c) { c.choice.stage_size = 8; },
            {LVB_E_ELEMENT_SIZE, in_choice, LVB_FIELD_STAGE_SIZE, -1, -1, 8.0, sizeof(lvb_stage), 4096.0});
    refused([](Choosing &c) { c.choice.miss_size = 8; },
            {LVB_E_ELEMENT_SIZE, in_choice, LVB_FIELD_MISS_SIZE, -1, -1, 8.0, sizeof(lvb_miss), 4096.0});
    refused([](Choosing &c) { c.choice.misses = nullptr; },
            {LVB_E_UNUSED, in_choice, LVB_FIELD_MISS_SIZE, -1, -1, sizeof(lvb_miss)});
    refused([](Choosing &c) { c.choice.set_count = 0; },
            {LVB_E_MISSING, in_choice, LVB_FIELD_SET_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_SETS});
    refused([](Choosing &c) { c.choice.set_count = LVB_MAX_SETS + 1; },
            {LVB_E_COUNT, in_choice, LVB_FIELD_SET_COUNT, -1, -1, LVB_MAX_SETS + 1, 1.0, LVB_MAX_SETS});
    Choosing c = sound();
    c.fill(1);
    auto room = sized<lvb_choice_scratch>();
    ASSERT_EQ(lvb_compute_choice_scratch(&c.choice, &room, nullptr), LVB_OK);
    const double least = static_cast<double>(room.least_bytes);
    refused([&](Choosing &small) { small.choice.scratch_bytes = room.least_bytes - 1; },
            {LVB_E_COUNT, in_choice, LVB_FIELD_SCRATCH_BYTES, -1, -1, least - 1.0, least, 0x1p53});
    EXPECT_EQ(lvb_compute_choice(nullptr, &c.chosen, &c.fault), LVB_E_NULL);
    expect_fault(c.fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_CHOICE});
    EXPECT_EQ(lvb_compute_choice(&c.choice, nullptr, &c.fault), LVB_E_NULL);
    expect_fault(c.fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_RESULT});
    EXPECT_EQ(lvb_compute_choice_scratch(&c.choice, nullptr, &c.fault), LVB_E_NULL);
    expect_fault(c.fault, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_SCRATCH});
}

TEST(ChoiceRefusals, ResultsThatOverlap) {
    const auto overlaps = [](std::int32_t field, const std::string &text = "") {
        return Expected{LVB_E_CONFLICT, in_choice, field, -1, -1, none, none, none, text};
    };
    refused([](Choosing &c) { c.choice.costs = reinterpret_cast<std::uint64_t *>(c.sets.data()); },
            overlaps(LVB_FIELD_COSTS, "lvb_choice.costs overlaps another array of the call."));
    refused([](Choosing &c) { c.choice.misses = reinterpret_cast<lvb_miss *>(c.costs.data()); },
            overlaps(LVB_FIELD_MISSES));
    refused([](Choosing &c) { c.choice.scratch = c.sets.data(); }, overlaps(LVB_FIELD_SCRATCH));
    Choosing c = sound();
    c.fill(1);
    c.choice.sets = reinterpret_cast<std::uint32_t *>(&c.chosen);
    EXPECT_EQ(c.compute(), LVB_E_CONFLICT);
    expect_fault(c.fault, overlaps(LVB_FIELD_SETS));
}

TEST(ChoiceRefusals, Slots) {
    refused([](Choosing &c) { c.slots[0].need = 1; },
            {LVB_E_ORDER, in_slot, LVB_FIELD_NEED, -1, 0, 1.0, 0.0, 0.0,
             "slots[0].need is 1, which is above the next in order (0); allowed 0 to 0."});
    refused([](Choosing &c) { c.slots[3].need = 2; }, {LVB_E_NOT_FOUND, in_slot, LVB_FIELD_NEED, -1, 3, 2.0, 0.0, 1.0,
                                                       "slots[3].need is 2, of which there is none; allowed 0 to 1."});
    refused([](Choosing &c) { c.slots[1].stage = 1; },
            {LVB_E_ORDER, in_slot, LVB_FIELD_STAGE, -1, 1, 1.0, 2.0, LVB_MAX_STAGES,
             "slots[1].stage is 1, which is below the next in order (2); allowed 2 to 1024."});
    refused([](Choosing &c) { c.slots[5].stage = 8; },
            {LVB_E_NOT_FOUND, in_slot, LVB_FIELD_STAGE, -1, 5, 8.0, 0.0, 7.0,
             "slots[5].stage is 8, of which there is none; allowed 0 to 7."});
    refused([](Choosing &c) { c.slots[2].item_count = 0; },
            {LVB_E_MISSING, in_slot, LVB_FIELD_ITEM_COUNT, -1, 2, 0.0, 1.0, LVB_MAX_ITEMS});
    refused([](Choosing &c) { c.slots[2].items = nullptr; }, {LVB_E_NULL, in_slot, LVB_FIELD_ITEMS, -1, 2});
    refused([](Choosing &c) { c.slots[2].reserved = 1; },
            {LVB_E_RESERVED, in_slot, LVB_FIELD_RESERVED, -1, 2, 1.0, 0.0, 0.0});
    refused([](Choosing &c) { c.lists[2][1] = 0; }, {LVB_E_ORDER, in_slot, LVB_FIELD_ITEMS, -1, 2, 0.0, 1.0, 3.0});
    refused([](Choosing &c) { c.lists[2][2] = 4; }, {LVB_E_NOT_FOUND, in_slot, LVB_FIELD_ITEMS, -1, 2, 4.0, 0.0, 3.0,
                                                     "slots[2].items is 4, of which there is none; allowed 0 to 3."});
    refused([](Choosing &c) { c.choice.slot_count = 3; }, {LVB_E_MISSING, in_choice, LVB_FIELD_SLOTS, -1, -1, 0.0});
    refused([](Choosing &c) { c.lists[0][2] = 3; }, // an antenna among the pads
            {LVB_E_CONFLICT, in_item, LVB_FIELD_KIND, -1, 3, LVB_KIND_ANTENNA, none, none,
             "items[3].kind cannot stand in for the first item of its slot."});
}

TEST(ChoiceRefusals, Items) {
    refused([](Choosing &c) { c.items[1].stage = nullptr; }, {LVB_E_NULL, in_item, LVB_FIELD_STAGE, -1, 1});
    refused([](Choosing &c) { c.items[1].reserved = 2; },
            {LVB_E_RESERVED, in_item, LVB_FIELD_RESERVED, -1, 1, 2.0, 0.0, 0.0});
    refused([](Choosing &c) { c.items[1].cost = 1000000000001; },
            {LVB_E_ABOVE_RANGE, in_item, LVB_FIELD_COST, -1, 1, 1000000000001.0, 0.0, 1e12,
             "items[1].cost is 1e12, which is too high; allowed 0 to 1e12."});
    refused([](Choosing &c) { c.item_stages[2].noise_figure_db = 101.0; },
            {LVB_E_ABOVE_RANGE, in_item, LVB_FIELD_NOISE_FIGURE_DB, -1, 2, 101.0, 0.0, 100.0});
    refused(
        [](Choosing &c) { c.item_stages[2].stated = 0, c.item_stages[2].noise_figure_db = 0.0; }, // noise is limited
        {LVB_E_MISSING, in_item, LVB_FIELD_NOISE_FIGURE_DB, -1, 2, 0.0});
    refused([](Choosing &c) { c.items[0].lowest_mhz = nan; },
            {LVB_E_NAN, in_item, LVB_FIELD_LOWEST_MHZ, -1, 0, nan, 0.1, 300000.0});
    refused([](Choosing &c) { c.items[0].lowest_mhz = 500.0, c.items[0].highest_mhz = 400.0; },
            {LVB_E_ORDER, in_item, LVB_FIELD_HIGHEST_MHZ, -1, 0, 400.0, 500.0, 300000.0,
             "items[0].highest_mhz is 400, which is below lowest_mhz (500); allowed 500 to 300000."});
    refused([](Choosing &c) { c.item_stages[0].gain_db = 3.0; },
            {LVB_E_ABOVE_RANGE, in_item, LVB_FIELD_GAIN_DB, -1, 0, 3.0, -200.0, 0.0,
             "items[0].gain_db is 3, which is too high; allowed -200 to 0."});
    for (const std::int32_t kind : {LVB_KIND_AIR, LVB_KIND_ALLOWANCE, LVB_KIND_RECEIVER})
        refused([&](Choosing &c) { c.item_stages[0] = stage(kind); },
                {LVB_E_UNKNOWN_KIND, in_item, LVB_FIELD_KIND, -1, 0, static_cast<double>(kind), none, none,
                 "items[0].kind is " + std::to_string(kind) + " (" + lvb_kind_name(kind) +
                     "), which cannot be an item of a stock."});
    const double mhz[] = {500.0, 400.0}, db[] = {-1.0, -1.0};
    auto table = sized<lvb_gain_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.gain_db = db;
    refused([&](Choosing &c) { c.item_stages[1].gain_db = 0.0, c.item_stages[1].gain_table = &table; },
            {LVB_E_TABLE_UNSORTED, LVB_STRUCT_GAIN_TABLE, LVB_FIELD_FREQUENCY_MHZ, 1, 1, 400.0, 500.0, 1000000.0});
}

TEST(ChoiceRefusals, Links) {
    refused([](Choosing &c) { c.needs[1].link = nullptr; }, {LVB_E_NULL, in_need, LVB_FIELD_LINK, -1, 1});
    refused([](Choosing &c) { c.links[1].frequency_mhz = 0.0; },
            {LVB_E_MISSING, in_need, LVB_FIELD_FREQUENCY_MHZ, LVB_STAGE_LINK, 1, 0.0, 0.1, 300000.0,
             "needs[1].link.frequency_mhz is missing; allowed 0.1 to 300000."});
    refused([](Choosing &c) { c.link_stages[1][4].gain_db = 4.0; },
            {LVB_E_ABOVE_RANGE, in_need, LVB_FIELD_GAIN_DB, 4, 1, 4.0, -200.0, 0.0,
             "needs[1].link.stages[4].gain_db is 4, which is too high; allowed -200 to 0."});
    refused([](Choosing &c) { c.links[1].stated = 4; },
            {LVB_E_UNKNOWN_VALUE, in_need, LVB_FIELD_STATED, LVB_STAGE_LINK, 1, 4.0, 0.0, LVB_STATED_TEMPERATURE,
             "needs[1].link.stated has the bit LVB_STATED_WANTED, which this struct has no use for."});
    refused([](Choosing &c) { c.link_stages[1][4].stated = LVB_STATED_FLOOR; },
            {LVB_E_UNKNOWN_VALUE, in_need, LVB_FIELD_STATED, 4, 1, LVB_STATED_FLOOR, 0.0, 0.0,
             "needs[1].link.stages[4].stated has the bit LVB_STATED_FLOOR, which this kind of stage has no use for."});
    refused([](Choosing &c) { c.needs[1].worst_case = 4; },
            {LVB_E_UNKNOWN_VALUE, in_need, LVB_FIELD_WORST_CASE, -1, 1, 4.0, 0.0, 3.0,
             "needs[1].worst_case has the bit 4, which this library does not know."});
    refused([](Choosing &c) { c.needs[1].stated = 0; },
            {LVB_E_NOT_STATED, in_need, LVB_FIELD_EIRP_LIMIT_DBM, -1, 1, 30.0, none, none,
             "needs[1].eirp_limit_dbm is 30, but its bit LVB_STATED_EIRP_LIMIT in `stated` is not set."});
    refused([](Choosing &c) { c.needs[1].stated = 1; },
            {LVB_E_UNKNOWN_VALUE, in_need, LVB_FIELD_STATED, -1, 1, 1.0, 0.0, LVB_STATED_EIRP_LIMIT});
    refused([](Choosing &c) { c.needs[1].margin_db = -1.0; },
            {LVB_E_BELOW_RANGE, in_need, LVB_FIELD_MARGIN_DB, -1, 1, -1.0, 0.0, 100.0});
    refused([](Choosing &c) { c.needs[1].headroom_db = 101.0; },
            {LVB_E_ABOVE_RANGE, in_need, LVB_FIELD_HEADROOM_DB, -1, 1, 101.0, 0.0, 100.0});
    refused(
        [](Choosing &c) {
            c.link_stages[1][7].stated ^= LVB_STATED_NOISE_FIGURE, c.link_stages[1][7].noise_figure_db = 0.0;
        },
        {LVB_E_MISSING, in_need, LVB_FIELD_NOISE_FIGURE_DB, 7, 1, 0.0});
    refused(
        [](Choosing &c) {
            lvb_stage &end = c.link_stages[1][7];
            end.stated = LVB_STATED_CEILING | LVB_STATED_NOISE_FIGURE;
            end.floor_dbm = 0.0;
            c.needs[1].margin_db = 3.0;
        },
        {LVB_E_UNUSED, in_need, LVB_FIELD_MARGIN_DB, -1, 1, 3.0});
    refused(
        [](Choosing &c) {
            lvb_stage &end = c.link_stages[1][7];
            end.stated = LVB_STATED_FLOOR | LVB_STATED_NOISE_FIGURE;
            end.ceiling_dbm = 0.0;
            c.needs[1].headroom_db = 3.0;
        },
        {LVB_E_UNUSED, in_need, LVB_FIELD_HEADROOM_DB, -1, 1, 3.0});
    refused([](Choosing &c) { c.link_stages[1][4] = stage(LVB_KIND_RECEIVER); },
            {LVB_E_NO_RECEIVE_ANTENNA, in_need, LVB_FIELD_KIND, 4, 1, LVB_KIND_RECEIVER, none, none,
             "needs[1].link.stages[4] (receiver): the air needs an antenna after it."});
}

// Limits that a chain has no place for, and an amplifier whose noise is not known.
TEST(ChoiceRefusals, LimitsWithoutTheirStage) {
    Choosing c;
    const std::uint32_t pad = c.item(stage(LVB_KIND_PASSIVE, -3.0), 5, 2);
    const std::uint32_t check = c.link({source(10.0), stage(LVB_KIND_PASSIVE), receiver(0.0, 10.0)}, 600.0, 0.0, 0.0);
    c.slot(check, 1, {pad});
    c.needs[0].noise_figure_limit_db = 6.0;
    EXPECT_EQ(c.compute(1), LVB_E_UNUSED);
    expect_fault(c.fault, {LVB_E_UNUSED, in_need, LVB_FIELD_NOISE_FIGURE_LIMIT_DB, -1, 0, 6.0});
    c.needs[0].noise_figure_limit_db = 0.0;
    c.needs[0].stated = LVB_STATED_EIRP_LIMIT;
    EXPECT_EQ(c.compute(1), LVB_E_UNUSED);
    expect_fault(c.fault, {LVB_E_UNUSED, in_need, LVB_FIELD_EIRP_LIMIT_DBM, -1, 0, 0.0});
    // What a radiating cable sends out has no e.i.r.p.: no set could ever hold its limit.
    Way way = radiating_cable();
    Choosing along;
    const std::uint32_t loss = along.item(stage(LVB_KIND_PASSIVE, -3.0), 5, 2);
    lvb_stage cable = air();
    cable.path = way.lent();
    const std::uint32_t led = along.link(
        {source(10.0), stage(LVB_KIND_PASSIVE), antenna(), cable, antenna(), receiver(-90.0, 0.0)}, 600.0, 40.0, 0.0);
    along.slot(led, 1, {loss});
    ASSERT_EQ(along.compute(1), LVB_OK) << text_of(along.fault);
    EXPECT_EQ(along.chosen.outcome, LVB_OUTCOME_PROVEN);
    along.needs[0].stated = LVB_STATED_EIRP_LIMIT;
    along.needs[0].eirp_limit_dbm = 30.0;
    EXPECT_EQ(along.compute(1), LVB_E_UNUSED);
    expect_fault(along.fault, {LVB_E_UNUSED, in_need, LVB_FIELD_EIRP_LIMIT_DBM, -1, 0, 30.0, none, none,
                               "needs[0].eirp_limit_dbm is filled, but this link has no use for it."});
    Choosing fixed;
    const std::uint32_t other = fixed.item(stage(LVB_KIND_PASSIVE, -3.0), 5, 2);
    const std::uint32_t need = fixed.link(
        {source(10.0), antenna(), air(), antenna(), stage(LVB_KIND_AMPLIFIER, 10.0), stage(LVB_KIND_PASSIVE)}, 600.0,
        40.0, 0.0);
    fixed.slot(need, 5, {other});
    fixed.needs[0].noise_figure_limit_db = 6.0;
    EXPECT_EQ(fixed.compute(1), LVB_E_MISSING);
    expect_fault(fixed.fault, {LVB_E_MISSING, in_need, LVB_FIELD_NOISE_FIGURE_DB, 4, 0, 0.0});
    with_noise(fixed.link_stages[0][4], 3.0);
    EXPECT_EQ(fixed.compute(1), LVB_OK);
}

// What feeds a radiating cable has no gain, whichever item is taken.
TEST(ChoiceRefusals, AFeedOfARadiatingCableWithAGain) {
    Way way = radiating_cable();
    const double mhz[] = {500.0, 1000.0}, db[] = {0.0, 1.0};
    auto table = sized<lvb_gain_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.gain_db = db;
    auto pattern = sized<lvb_pattern>();
    Choosing c;
    const std::uint32_t first = c.item(antenna(0.0), 1, 1), second = c.item(antenna(0.0), 2, 1);
    const std::uint32_t need =
        c.link({source(15.0), antenna(0.0), air(), antenna(3.0), receiver(-95.0, -20.0)}, 900.0, 20.0, 2.0);
    c.link_stages[0][2].path = way.lent();
    c.slot(need, 1, {first, second});
    EXPECT_EQ(c.compute(1), LVB_OK);
    for (const std::uint32_t item : {first, second}) {
        const auto number = static_cast<std::int32_t>(item);
        lvb_stage &spoiled = c.item_stages[item];
        spoiled.gain_db = 9.0;
        EXPECT_EQ(c.compute(1), LVB_E_UNUSED);
        expect_fault(c.fault, {LVB_E_UNUSED, in_item, LVB_FIELD_GAIN_DB, -1, number, 9.0});
        spoiled.gain_db = 0.0;
        spoiled.gain_table = &table;
        EXPECT_EQ(c.compute(1), LVB_E_UNUSED);
        expect_fault(c.fault, {LVB_E_UNUSED, in_item, LVB_FIELD_GAIN_TABLE, -1, number});
        spoiled.gain_table = nullptr;
        spoiled.pattern = &pattern;
        EXPECT_EQ(c.compute(1), LVB_E_UNUSED);
        expect_fault(c.fault, {LVB_E_UNUSED, in_item, LVB_FIELD_PATTERN, -1, number});
        spoiled.pattern = nullptr;
    }
    c.item_stages[second].gain_db = 9.0;
    c.link_stages[0][2].path = nullptr; // an antenna may
    EXPECT_EQ(c.compute(1), LVB_OK);
}

} // namespace
