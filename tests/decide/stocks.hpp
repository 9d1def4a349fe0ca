// Stocks with links to be served from them, made at random, and everything that a call needs.
#pragma once

#include "chain/chains.hpp"
#include "units/random.hpp"

#include <cstdint>
#include <deque>
#include <vector>

namespace proof {

/// A choice with its memory. Stages of items and links stay where they are.
struct Choosing {
    std::deque<lvb_stage> item_stages;
    std::deque<std::vector<lvb_stage>> link_stages;
    std::deque<lvb_link> links;
    std::deque<std::vector<std::uint32_t>> lists;
    std::vector<lvb_item> items;
    std::vector<lvb_slot> slots;
    std::vector<lvb_need> needs;
    lvb_choice choice = sized<lvb_choice>();
    lvb_chosen chosen = sized<lvb_chosen>();
    lvb_fault fault = sized<lvb_fault>();
    std::vector<std::uint32_t> sets;
    std::vector<std::uint64_t> costs;
    std::vector<lvb_miss> misses;
    std::vector<unsigned char> scratch;
    std::uint64_t scratch_bytes = 0; ///< 0: as many as make a difference

    std::uint32_t item(const lvb_stage &stage, std::uint64_t cost, std::uint32_t count, double noise_figure_db = 0.0) {
        lvb_item made{};
        lvb_stage &kept = item_stages.emplace_back(stage);
        if (noise_figure_db != 0.0) with_noise(kept, noise_figure_db);
        made.stage = &kept;
        made.cost = cost;
        made.count = count;
        items.push_back(made);
        return static_cast<std::uint32_t>(items.size() - 1);
    }
    std::uint32_t link(std::vector<lvb_stage> stages, double frequency_mhz, double far_m, double near_m) {
        const std::vector<lvb_stage> &kept = link_stages.emplace_back(std::move(stages));
        lvb_link made = sized<lvb_link>();
        made.stages = kept.data();
        made.stage_count = static_cast<std::uint32_t>(kept.size());
        made.stage_size = sizeof(lvb_stage);
        made.frequency_mhz = frequency_mhz;
        made.far_distance_m = far_m;
        made.near_distance_m = near_m;
        lvb_need need{};
        need.link = &links.emplace_back(made);
        needs.push_back(need);
        return static_cast<std::uint32_t>(needs.size() - 1);
    }
    void slot(std::uint32_t need, std::uint32_t stage, std::vector<std::uint32_t> list) {
        const std::vector<std::uint32_t> &kept = lists.emplace_back(std::move(list));
        slots.push_back({need, stage, static_cast<std::uint32_t>(kept.size()), 0, kept.data()});
    }
    void fill(std::uint32_t set_count = 1) {
        choice.needs = needs.data();
        choice.need_count = static_cast<std::uint32_t>(needs.size());
        choice.need_size = sizeof(lvb_need);
        choice.items = items.data();
        choice.item_count = static_cast<std::uint32_t>(items.size());
        choice.item_size = sizeof(lvb_item);
        choice.slots = slots.data();
        choice.slot_count = static_cast<std::uint32_t>(slots.size());
        choice.slot_size = sizeof(lvb_slot);
        choice.stage_size = sizeof(lvb_stage);
        choice.set_count = set_count;
        sets.assign(std::size_t{set_count} * slots.size(), 0xabababab);
        costs.assign(set_count, 0);
        misses.assign(needs.size(), lvb_miss{});
        choice.sets = sets.data();
        choice.costs = costs.data();
        choice.misses = misses.data();
        choice.miss_size = sizeof(lvb_miss);
        lvb_choice_scratch room = sized<lvb_choice_scratch>();
        if (lvb_compute_choice_scratch(&choice, &room, nullptr) == LVB_OK) {
            scratch.resize(static_cast<std::size_t>(scratch_bytes != 0 ? scratch_bytes : room.ample_bytes));
            choice.scratch = scratch.data();
            choice.scratch_bytes = scratch.size();
        }
    }
    lvb_status compute() { return lvb_compute_choice(&choice, &chosen, &fault); }
    lvb_status compute(std::uint32_t set_count) {
        fill(set_count);
        return compute();
    }
    const std::uint32_t *set(std::uint32_t index) const { return sets.data() + std::size_t{index} * slots.size(); }
};

/// What a random choice looks like.
struct Shape {
    std::uint32_t transmit_slots = 2, receive_slots = 2, items = 3;
    double level_step_db = 0.0, tolerance_step_db = 0.0; ///< 0: any real number
    std::uint64_t largest_cost = 1000;
    bool cost_follows_gain = false; ///< dear items lose little: the hard case
    bool worst_levels = false, limited_power = false, limited_noise = false;
    double window_db = 20.0; ///< between the least far level and the greatest near level that are wanted
    double tightness = 0.5;  ///< where the window lies between the least and the greatest level that can be had
};

inline double rounded_to(double value, double step) { return step == 0.0 ? value : std::round(value / step) * step; }

/// One link of conducted slots on both sides of the air; every slot has its own items.
inline Choosing make_choosing(Random &random, const Shape &shape) {
    Choosing made;
    std::vector<lvb_stage> stages = {source(rounded_to(random.uniform(0.0, 20.0), shape.level_step_db))};
    struct Place {
        std::uint32_t stage;
        bool receiving;
    };
    std::vector<Place> places;
    const auto reserve = [&](std::uint32_t count, bool receiving) {
        for (std::uint32_t i = 0; i < count; ++i) {
            places.push_back({static_cast<std::uint32_t>(stages.size()), receiving});
            stages.push_back(stage(LVB_KIND_PASSIVE));
        }
    };
    reserve(shape.transmit_slots, false);
    stages.push_back(antenna(2.0));
    stages.push_back(air());
    stages.push_back(stage(LVB_KIND_ALLOWANCE, -20.0));
    stages.push_back(antenna());
    reserve(shape.receive_slots, true);
    double least_db = 0.0, most_db = 0.0, least_power_db = 0.0, most_power_db = 0.0, tolerance_db = 0.0;
    const std::size_t last = stages.size();
    stages.push_back(receiver());
    const std::uint32_t index = made.link(stages, 600.0, 40.0, 39.0);
    for (const Place &place : places) {
        std::vector<std::uint32_t> list;
        const bool amplifier = random.below(3) == 0;
        double least = 1e9, most = -1e9, sum = 0.0;
        for (std::uint32_t i = 0; i < shape.items; ++i) {
            const double gain =
                rounded_to(amplifier ? random.uniform(0.0, 15.0) : random.uniform(-12.0, 0.0), shape.level_step_db);
            const double tolerance = rounded_to(random.uniform(0.0, 1.5), shape.tolerance_step_db);
            const double figure = amplifier ? random.uniform(0.5, 8.0) : 0.0;
            double cost = random.uniform(0.0, static_cast<double>(shape.largest_cost));
            if (shape.cost_follows_gain)
                cost = (amplifier ? gain : gain + 12.0) / 15.0 * 0.8 * static_cast<double>(shape.largest_cost) +
                       0.2 * cost;
            const std::uint32_t count = 1 + static_cast<std::uint32_t>(random.below(2));
            list.push_back(made.item(stage(amplifier ? LVB_KIND_AMPLIFIER : LVB_KIND_PASSIVE, gain, tolerance),
                                     static_cast<std::uint64_t>(cost), count, figure));
            least = std::min(least, gain);
            most = std::max(most, gain);
            sum += tolerance / shape.items;
        }
        least_db += least;
        most_db += most;
        tolerance_db += sum;
        if (!place.receiving) least_power_db += least, most_power_db += most;
        made.slot(index, place.stage, list);
    }
    // The window is laid by the levels of the chain without its slots.
    lvb_link bare = made.links[0];
    std::vector<lvb_stage> &kept = made.link_stages[0];
    lvb_budget budget = sized<lvb_budget>();
    lvb_compute_budget(&bare, &budget, nullptr, 0, nullptr);
    const double middle = budget.far_end.level_dbm + least_db + (most_db - least_db) * shape.tightness;
    const double widening = shape.worst_levels ? tolerance_db : 0.0;
    const double near_over_far = budget.near_end.level_dbm - budget.far_end.level_dbm;
    kept[last] = receiver(rounded_to(middle - shape.window_db / 2 - widening, shape.level_step_db),
                          rounded_to(middle + shape.window_db / 2 + widening + near_over_far, shape.level_step_db));
    lvb_need &need = made.needs[0];
    if (shape.worst_levels) need.worst_case |= LVB_WORST_LEVELS | LVB_WORST_EIRP;
    if (shape.limited_power) {
        need.stated = LVB_STATED_EIRP_LIMIT;
        need.eirp_limit_dbm =
            rounded_to(budget.eirp_dbm + least_power_db + (most_power_db - least_power_db) * 0.5, shape.level_step_db);
    }
    if (shape.limited_noise) {
        need.noise_figure_limit_db = random.uniform(8.0, 20.0);
        with_noise(kept[last], 6.0);
    }
    return made;
}

} // namespace proof
