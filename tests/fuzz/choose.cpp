// lvb_compute_choice with small stocks of every kind: refused whole, or the sets hold, come in order, and none is
// better.
#include "fuzz/stages.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

/// One link of a choice as lent, so that sets can be judged again.
struct Lent {
    lvb_link link;
    std::vector<lvb_stage> stages;
};

// Whether a link with some items in its slots holds all but its noise, by the budget.
bool holds(const lvb_choice &choice, const std::vector<Lent> &links, const lvb_slot *slots, const std::uint32_t *set,
           std::uint32_t need) {
    std::vector<lvb_stage> stages = links[need].stages;
    for (std::uint32_t i = 0; i < choice.slot_count; ++i)
        if (slots[i].need == need) stages[slots[i].stage] = *choice.items[set[i]].stage;
    lvb_link link = links[need].link;
    link.size = sizeof link;
    link.stages = stages.data();
    lvb_budget budget{};
    budget.size = sizeof budget;
    if (lvb_compute_budget(&link, &budget, nullptr, 0, nullptr) != LVB_OK) return false;
    const lvb_need &in = choice.needs[need];
    const double far_worst = (in.worst_case & LVB_WORST_LEVELS) != 0 ? budget.far_end.worst_db : 0.0;
    const double near_worst = (in.worst_case & LVB_WORST_LEVELS) != 0 ? budget.near_end.worst_db : 0.0;
    const double power = budget.eirp_dbm + ((in.worst_case & LVB_WORST_EIRP) != 0 ? budget.eirp_worst_db : 0.0);
    return !(budget.far_end.margin_db - far_worst < in.margin_db) &&
           !(budget.near_end.headroom_db - near_worst < in.headroom_db) &&
           !((in.stated & LVB_STATED_EIRP_LIMIT) != 0 && power > in.eirp_limit_dbm);
}

bool serves(const lvb_item &item, double mhz) {
    return item.count > 0 && mhz >= item.lowest_mhz && (item.highest_mhz == 0.0 || mhz <= item.highest_mhz);
}

// Every combination: none that holds comes before the best set. Noise is left out, so only where it is not limited.
void require_none_better(const lvb_choice &choice, const std::vector<Lent> &links, const lvb_slot *slots,
                         const lvb_chosen &chosen) {
    std::uint64_t combinations = 1;
    for (std::uint32_t i = 0; i < choice.slot_count; ++i) combinations *= slots[i].item_count;
    if (combinations > 256) return;
    std::vector<std::uint32_t> set(choice.slot_count);
    for (std::uint64_t number = 0; number < combinations; ++number) {
        std::vector<std::uint32_t> used(choice.item_count);
        std::uint64_t rest = number, cost = 0;
        bool possible = true;
        for (std::uint32_t i = 0; i < choice.slot_count; ++i) {
            set[i] = slots[i].items[rest % slots[i].item_count];
            rest /= slots[i].item_count;
            const lvb_item &item = choice.items[set[i]];
            cost += item.cost;
            possible =
                possible && ++used[set[i]] <= item.count && serves(item, links[slots[i].need].link.frequency_mhz);
        }
        for (std::uint32_t need = 0; possible && need < choice.need_count; ++need)
            possible = holds(choice, links, slots, set.data(), need);
        if (!possible) continue;
        REQUIRE(chosen.outcome != LVB_OUTCOME_INFEASIBLE && chosen.outcome != LVB_OUTCOME_SHORT_OF_STOCK);
        REQUIRE(cost >= chosen.lower_bound);
        if (chosen.outcome == LVB_OUTCOME_PROVEN) REQUIRE(cost >= chosen.cost);
    }
}

void require_answer(const lvb_choice &choice, const std::vector<Lent> &links, const lvb_slot *slots,
                    const lvb_chosen &chosen, bool noise) {
    REQUIRE(fuzz::known(lvb_outcome_name(chosen.outcome)));
    REQUIRE(chosen.set_count <= choice.set_count && chosen.coarse <= 1);
    const bool found = chosen.outcome == LVB_OUTCOME_PROVEN || chosen.outcome == LVB_OUTCOME_NOT_PROVEN;
    REQUIRE(found == (chosen.set_count > 0));
    if (chosen.outcome == LVB_OUTCOME_PROVEN) REQUIRE(chosen.gap == 0);
    if (found) REQUIRE(chosen.cost - chosen.lower_bound == chosen.gap && chosen.gap <= chosen.cost);
    for (std::uint32_t s = 0; s < chosen.set_count; ++s) {
        const std::uint32_t *set = choice.sets + std::size_t{s} * choice.slot_count;
        std::uint64_t cost = 0;
        for (std::uint32_t i = 0; i < choice.slot_count; ++i) cost += choice.items[set[i]].cost;
        REQUIRE(cost == choice.costs[s]);
        if (s > 0) REQUIRE(choice.costs[s] >= choice.costs[s - 1]);
        for (std::uint32_t need = 0; need < choice.need_count; ++need) REQUIRE(holds(choice, links, slots, set, need));
    }
    if (chosen.outcome == LVB_OUTCOME_INFEASIBLE && choice.misses != nullptr)
        for (std::uint32_t need = 0; need < choice.need_count; ++need) {
            const lvb_miss &miss = choice.misses[need];
            REQUIRE(!(miss.far_alone_db < 0.0) && !(miss.far_besides_db < miss.far_alone_db - 1e-8));
            REQUIRE(!(miss.near_alone_db < 0.0) && !(miss.near_besides_db < miss.near_alone_db - 1e-8));
            REQUIRE(!(miss.eirp_alone_db < 0.0) && !(miss.eirp_besides_db < miss.eirp_alone_db - 1e-8));
            REQUIRE(!(miss.noise_alone_db < 0.0));
        }
    if (!noise) require_none_better(choice, links, slots, chosen);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;
    const std::uint32_t link_count = 1 + bytes.below(2), gear = 1 + bytes.below(5);
    std::vector<lvb_stage> gear_stages(gear);
    std::vector<lvb_item> items(gear);
    const std::int32_t kinds[] = {LVB_KIND_PASSIVE, LVB_KIND_PASSIVE, LVB_KIND_AMPLIFIER, LVB_KIND_CABLE};
    bool tabled = false;
    for (std::uint32_t i = 0; i < gear; ++i) {
        const std::int32_t kind = kinds[bytes.below(4)];
        gear_stages[i].kind = kind;
        gear_stages[i].gain_db = kind == LVB_KIND_AMPLIFIER ? bytes.between(0.0, 20.0) : -bytes.between(0.5, 12.0);
        if (bytes.once_in(3)) gear_stages[i].tolerance_db = bytes.between(0.0, 3.0);
        if (bytes.once_in(16)) gear_stages[i] = fuzz::make_stage(bytes, kind, lenders);
        tabled = tabled || gear_stages[i].gain_table != nullptr || gear_stages[i].cable_table != nullptr ||
                 gear_stages[i].cable_type != 0;
        if (bytes.once_in(64)) fuzz::spoil(bytes, gear_stages[i], lenders);
        items[i].stage = bytes.once_in(255) ? nullptr : &gear_stages[i];
        items[i].label = reinterpret_cast<const char *>(std::uintptr_t{bytes.byte()});
        items[i].cost = bytes.once_in(64) ? bytes.raw<std::uint64_t>() : bytes.below(32);
        items[i].count = bytes.once_in(16) ? bytes.raw<std::uint32_t>() : 1 + bytes.below(3);
        if (kind == LVB_KIND_AMPLIFIER && gear_stages[i].stated == 0 && !bytes.once_in(64)) {
            gear_stages[i].stated = LVB_STATED_NOISE_FIGURE;
            gear_stages[i].noise_figure_db = bytes.number(0.0, 100.0);
        }
        if (bytes.once_in(8)) items[i].lowest_mhz = bytes.number(0.1, 3000.0);
        if (bytes.once_in(8)) items[i].highest_mhz = bytes.number(0.1, 3000.0);
        if (bytes.once_in(255)) items[i].reserved = 1;
    }
    std::vector<Lent> links(link_count);
    std::deque<lvb_path> cables;
    std::vector<lvb_need> needs(link_count);
    std::vector<lvb_slot> slots;
    std::vector<std::uint32_t> lists[2];
    bool noise = false;
    for (std::uint32_t i = 0; i < gear; ++i)
        for (std::vector<std::uint32_t> &list : lists)
            if (!bytes.once_in(4)) list.push_back(i);
    for (std::uint32_t l = 0; l < link_count; ++l) {
        Lent &lent = links[l];
        const auto add = [&](std::int32_t kind, double gain_db) {
            lvb_stage stage{};
            stage.kind = kind;
            stage.gain_db = gain_db;
            lent.stages.push_back(bytes.once_in(32) ? fuzz::make_stage(bytes, kind, lenders) : stage);
            if (bytes.once_in(128)) fuzz::spoil(bytes, lent.stages.back(), lenders);
        };
        const auto reserve = [&](std::uint32_t count) {
            for (; count > 0; --count) {
                const std::vector<std::uint32_t> &list = lists[bytes.below(2)];
                slots.push_back({bytes.once_in(128) ? bytes.byte() : l,
                                 bytes.once_in(128) ? bytes.byte() : static_cast<std::uint32_t>(lent.stages.size()),
                                 static_cast<std::uint32_t>(list.size()), 0, list.data()});
                lent.stages.push_back({}); // not read
            }
        };
        const bool radiates = !bytes.once_in(6);
        add(LVB_KIND_SOURCE, bytes.between(0.0, 20.0));
        reserve(bytes.below(3));
        if (radiates) {
            const bool along_cable = bytes.once_in(8); // which has no antenna, and no e.i.r.p.
            add(LVB_KIND_ANTENNA, along_cable ? 0.0 : bytes.between(0.0, 9.0));
            add(LVB_KIND_AIR, 0.0);
            if (along_cable) {
                cables.push_back({});
                lvb_path &path = cables.back();
                path.size = sizeof path;
                path.model = LVB_PATH_RADIATING_CABLE;
                path.longitudinal_loss_db_per_100m = bytes.between(1.0, 20.0);
                path.coupling_loss_db = bytes.between(40.0, 80.0);
                path.exponent = bytes.between(1.0, 2.0);
                lent.stages.back().path = &path;
            }
            add(LVB_KIND_ALLOWANCE, -bytes.between(0.0, 20.0));
            add(LVB_KIND_ANTENNA, 0.0);
        }
        reserve(1 + bytes.below(2));
        if (!bytes.once_in(8)) {
            lvb_stage end{};
            end.kind = LVB_KIND_RECEIVER;
            end.stated = (LVB_STATED_FLOOR | LVB_STATED_CEILING) & bytes.byte();
            const double floor = radiates ? bytes.between(-80.0, -40.0) : bytes.between(-20.0, 20.0);
            if ((end.stated & LVB_STATED_FLOOR) != 0) end.floor_dbm = floor;
            if ((end.stated & LVB_STATED_CEILING) != 0) end.ceiling_dbm = floor + bytes.between(0.0, 30.0);
            lent.stages.push_back(end);
            if ((end.stated & LVB_STATED_FLOOR) != 0 && bytes.once_in(3)) needs[l].margin_db = bytes.number(0.0, 20.0);
            if ((end.stated & LVB_STATED_CEILING) != 0 && bytes.once_in(3))
                needs[l].headroom_db = bytes.number(0.0, 20.0);
        }
        lent.link.size = bytes.once_in(64) ? bytes.raw<std::uint32_t>() % 4096 : sizeof lent.link;
        if (lent.link.size > sizeof lent.link) lent.link.size = 0;
        lent.link.stages = lent.stages.data();
        lent.link.stage_count = static_cast<std::uint32_t>(lent.stages.size());
        lent.link.stage_size = sizeof(lvb_stage);
        lent.link.frequency_mhz = bytes.once_in(16) ? bytes.any_number() : bytes.between(100.0, 1000.0);
        if (radiates) lent.link.far_distance_m = bytes.between(5.0, 100.0);
        needs[l].link = bytes.once_in(255) ? nullptr : &lent.link;
        needs[l].worst_case = bytes.once_in(64) ? bytes.byte() : bytes.below(4);
        if (bytes.once_in(3)) {
            needs[l].stated = LVB_STATED_EIRP_LIMIT;
            needs[l].eirp_limit_dbm = bytes.number(-20.0, 50.0);
        }
        if (bytes.once_in(4)) {
            noise = true;
            needs[l].noise_figure_limit_db = bytes.number(0.001, 60.0);
            if (lent.stages.back().kind == LVB_KIND_RECEIVER) {
                lent.stages.back().stated |= LVB_STATED_NOISE_FIGURE;
                lent.stages.back().noise_figure_db = bytes.number(0.0, 60.0);
            }
        }
    }

    lvb_choice choice{};
    choice.size = sizeof choice;
    choice.need_count = bytes.once_in(255) ? bytes.raw<std::uint32_t>() % (link_count + 1) : link_count;
    choice.need_size =
        static_cast<std::uint32_t>(bytes.once_in(255) ? bytes.byte() % sizeof(lvb_need) : sizeof(lvb_need));
    choice.item_count = bytes.once_in(128) ? bytes.byte() % (gear + 1) : gear;
    choice.item_size =
        static_cast<std::uint32_t>(bytes.once_in(255) ? bytes.byte() % sizeof(lvb_item) : sizeof(lvb_item));
    choice.slot_count = static_cast<std::uint32_t>(slots.size());
    choice.slot_size =
        static_cast<std::uint32_t>(bytes.once_in(255) ? bytes.byte() % sizeof(lvb_slot) : sizeof(lvb_slot));
    choice.stage_size =
        static_cast<std::uint32_t>(bytes.once_in(255) ? bytes.byte() % sizeof(lvb_stage) : sizeof(lvb_stage));
    choice.set_count = bytes.once_in(255) ? 0 : 1 + bytes.below(4);
    choice.needs = bytes.once_in(255) ? nullptr : needs.data();
    choice.items = bytes.once_in(255) ? nullptr : items.data();
    choice.slots = slots.data();
    choice.step_limit = 1 + bytes.raw<std::uint16_t>() % 2000;
    choice.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()}); // never read

    lvb_choice_scratch room{};
    room.size = sizeof room;
    fuzz::Fault fault(bytes);
    const lvb_status told = lvb_compute_choice_scratch(bytes.once_in(255) ? nullptr : &choice, &room, fault.pointer());
    fault.require(told);
    if (told == LVB_OK) REQUIRE(room.least_bytes > 0 && room.least_bytes < room.ample_bytes && room.reserved == 0);
    Memory sets((std::size_t{choice.set_count} * choice.slot_count + 1) * sizeof(std::uint32_t));
    Memory costs((choice.set_count + std::size_t{1}) * sizeof(std::uint64_t));
    Memory misses(link_count * sizeof(lvb_miss));
    Memory scratch((told == LVB_OK ? static_cast<std::size_t>(room.least_bytes) : 64) + bytes.raw<std::uint16_t>());
    choice.sets = sets.as<std::uint32_t>();
    choice.costs = costs.as<std::uint64_t>();
    choice.scratch = scratch.as<void>();
    choice.scratch_bytes = bytes.once_in(32) ? bytes.byte() : scratch.size();
    if (bytes.once_in(2)) {
        choice.misses = misses.as<lvb_miss>();
        choice.miss_size = sizeof(lvb_miss);
    }

    const std::uint32_t declared = bytes.size_of(sizeof(lvb_chosen));
    Memory result = fuzz::result<lvb_chosen>(declared);
    const std::vector<unsigned char> before = result.copy(), sets_before = sets.copy(), costs_before = costs.copy();
    const lvb_status status = lvb_compute_choice(&choice, result.as<lvb_chosen>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before && sets.copy() == sets_before && costs.copy() == costs_before);
        return 0;
    }
    REQUIRE(result.get<lvb_chosen>().size == declared && result.is_zero_from(sizeof(lvb_chosen)));
    require_answer(choice, links, slots.data(), result.get<lvb_chosen>(), noise || tabled);
    return 0;
}
