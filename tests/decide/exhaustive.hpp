// The oracle: every combination of items, each judged by lvb_compute_budget and by Friis's formula in long double.
#pragma once

#include "decide/stocks.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace proof {

/// One combination for one link, and by how much it misses each requirement (at most 0: it holds).
struct Combination {
    std::vector<std::uint32_t> items;
    std::uint64_t cost = 0;
    double shortfall[4] = {};
    bool holds = true;
};

struct ExactSet {
    std::uint64_t cost;
    std::vector<std::uint32_t> items;
    bool operator<(const ExactSet &other) const { return cost != other.cost ? cost < other.cost : items < other.items; }
    bool operator==(const ExactSet &other) const = default;
};

class Exhaustive {
  public:
    explicit Exhaustive(const Choosing &choosing) : c_(choosing), used_(choosing.items.size()) {
        for (std::uint32_t i = 0; i < c_.needs.size(); ++i) {
            combinations_.emplace_back();
            std::vector<std::uint32_t> items;
            combine(i, items);
        }
        join(0, 0, {});
        std::sort(sets_.begin(), sets_.end());
    }

    /// All sets that hold, best first.
    const std::vector<ExactSet> &sets() const { return sets_; }
    /// Whether the stock fills all slots at all.
    bool stock_serves() const { return stock_serves_; }
    bool asked(std::uint32_t need, int requirement) const { return asked_of(need) >> requirement & 1u; }
    /// The least miss of a requirement, alone or among the combinations that hold the others.
    double miss(std::uint32_t need, int requirement, bool alone) const {
        double least = std::numeric_limits<double>::infinity();
        for (const Combination &one : combinations_[need]) {
            bool others_hold = true;
            for (int r = 0; r < 4; ++r) others_hold &= r == requirement || !asked(need, r) || one.shortfall[r] <= 0.0;
            if (alone || others_hold) least = std::min(least, std::max(0.0, one.shortfall[requirement]));
        }
        return asked(need, requirement) ? least : 0.0;
    }

  private:
    std::vector<const lvb_slot *> slots_of(std::uint32_t need) const {
        std::vector<const lvb_slot *> found;
        for (const lvb_slot &slot : c_.slots)
            if (slot.need == need) found.push_back(&slot);
        return found;
    }
    unsigned asked_of(std::uint32_t need) const {
        const lvb_need &in = c_.needs[need];
        const lvb_stage &last = in.link->stages[in.link->stage_count - 1];
        const bool receiver = last.kind == LVB_KIND_RECEIVER;
        return (receiver && (last.stated & LVB_STATED_FLOOR) ? 1u : 0u) |
               (receiver && (last.stated & LVB_STATED_CEILING) ? 2u : 0u) |
               ((in.stated & LVB_STATED_EIRP_LIMIT) ? 4u : 0u) | (in.noise_figure_limit_db != 0.0 ? 8u : 0u);
    }
    bool serves(const lvb_item &item, double mhz) const {
        if (mhz < item.lowest_mhz || (item.highest_mhz != 0.0 && mhz > item.highest_mhz)) return false;
        const lvb_gain_table *table = item.stage->gain_table;
        return table == nullptr ||
               (mhz >= table->frequency_mhz[0] && mhz <= table->frequency_mhz[table->row_count - 1]);
    }
    // All combinations of one link that the stock allows by itself.
    void combine(std::uint32_t need, std::vector<std::uint32_t> &items) {
        const auto slots = slots_of(need);
        if (items.size() == slots.size()) {
            combinations_[need].push_back(judge(need, items));
            return;
        }
        const lvb_slot &slot = *slots[items.size()];
        for (std::uint32_t k = 0; k < slot.item_count; ++k) {
            const std::uint32_t number = slot.items[k];
            const lvb_item &item = c_.items[number];
            if (used_[number] >= item.count || !serves(item, c_.needs[need].link->frequency_mhz)) continue;
            ++used_[number];
            items.push_back(number);
            combine(need, items);
            items.pop_back();
            --used_[number];
        }
    }
    Combination judge(std::uint32_t need, const std::vector<std::uint32_t> &items) const {
        const lvb_need &in = c_.needs[need];
        const auto slots = slots_of(need);
        std::vector<lvb_stage> stages(in.link->stages, in.link->stages + in.link->stage_count);
        Combination made;
        made.items = items;
        for (std::size_t i = 0; i < items.size(); ++i) {
            stages[slots[i]->stage] = *c_.items[items[i]].stage;
            made.cost += c_.items[items[i]].cost;
        }
        lvb_link link = *in.link;
        link.stages = stages.data();
        lvb_budget budget = sized<lvb_budget>();
        std::vector<lvb_level> levels(stages.size());
        if (lvb_compute_budget(&link, &budget, levels.data(), sizeof(lvb_level), nullptr) != LVB_OK) std::abort();
        const bool worst = in.worst_case & LVB_WORST_LEVELS, worst_power = in.worst_case & LVB_WORST_EIRP;
        made.shortfall[0] = in.margin_db - (budget.far_end.margin_db - (worst ? budget.far_end.worst_db : 0.0));
        made.shortfall[1] = in.headroom_db - (budget.near_end.headroom_db - (worst ? budget.near_end.worst_db : 0.0));
        made.shortfall[2] = budget.eirp_dbm + (worst_power ? budget.eirp_worst_db : 0.0) - in.eirp_limit_dbm;
        long double factor = 1.0L, gain = 1.0L;
        bool receiving = false;
        for (std::size_t i = 0; i < stages.size(); ++i) {
            const lvb_stage &stage = stages[i];
            const long double change = levels[i].far_change_db;
            const bool passive = stage.kind == LVB_KIND_PASSIVE || stage.kind == LVB_KIND_CABLE;
            if (receiving && (passive || stage.kind == LVB_KIND_AMPLIFIER)) {
                const long double figure = passive ? -change : static_cast<long double>(stage.noise_figure_db);
                factor += (powl(10.0L, figure / 10.0L) - 1.0L) / gain;
                gain *= powl(10.0L, change / 10.0L);
            }
            if (receiving && stage.kind == LVB_KIND_RECEIVER)
                factor += (powl(10.0L, static_cast<long double>(stage.noise_figure_db) / 10.0L) - 1.0L) / gain;
            receiving |= stage.kind == LVB_KIND_AIR;
        }
        made.shortfall[3] = static_cast<double>(10.0L * log10l(factor)) - in.noise_figure_limit_db;
        for (int r = 0; r < 4; ++r) made.holds &= !asked(need, r) || made.shortfall[r] <= 0.0;
        return made;
    }
    // All links together, from the one stock.
    void join(std::uint32_t need, std::uint64_t cost, std::vector<std::uint32_t> items, bool holds = true) {
        if (need == combinations_.size()) {
            stock_serves_ = true;
            if (holds) sets_.push_back({cost, items});
            return;
        }
        for (const Combination &one : combinations_[need]) {
            bool enough = true;
            for (const std::uint32_t item : one.items) enough &= ++used_[item] <= c_.items[item].count;
            if (enough && (!stock_serves_ || (holds && one.holds))) {
                std::vector<std::uint32_t> more = items;
                more.insert(more.end(), one.items.begin(), one.items.end());
                join(need + 1, cost + one.cost, more, holds && one.holds);
            }
            for (const std::uint32_t item : one.items) --used_[item];
        }
    }

    const Choosing &c_;
    std::vector<std::uint32_t> used_;
    std::vector<std::vector<Combination>> combinations_;
    std::vector<ExactSet> sets_;
    bool stock_serves_ = false;
};

} // namespace proof
