// The least that it costs to complete a link from any state: tables from the last slot back to the first.
//
// A state is what the slots so far come to: the low level, how far the high level lies above it, and the noise that is
// still allowed. Tables hold ranges of states; each takes the best state of its range, so that what a table says is
// never more than the true cost, and is the true cost where ranges hold one state. The search prunes by it.
#pragma once

#include "decide/effects.hpp"

namespace lvb::decide {

inline constexpr std::uint32_t most_noise_ranges = 64;

/// A candidate in the units of its link's tables; level and spread above the least of its slot.
struct Step {
    std::int64_t level, spread;
    std::int64_t radiated; ///< grains above the least of its slot
    Noise noise;
    std::uint64_t cost;
    float table_cost;
};

/// What the slots so far come to.
struct State {
    std::int64_t level = 0, spread = 0, radiated = 0;
    double noise_allowed = 0.0;

    State operator+(const Step &step) const noexcept {
        return {level + step.level, spread + step.spread, radiated + step.radiated,
                (noise_allowed - step.noise.excess) * step.noise.gain};
    }
};

/// States before one of the slots, or after the last.
struct Layer {
    std::int64_t first_level; ///< of the first column
    std::uint32_t columns, noise_ranges;
    double least_noise, most_noise; ///< what the slots to come make at least and at most
    std::uint64_t noise_bits;       ///< ranges of noise are even in the bits of a double, which is nearly a logarithm
    std::uint32_t noise_shift;
    double last_range_from;   ///< from here on an allowance is in the last range
    double largest_allowance; ///< the most that the slots before can leave
    float *cells; ///< by noise, spread, level; behind the last range of noise the noise that is needed at least

    /// Range of an allowance of least_noise or more.
    std::uint32_t noise_range(double allowed) const noexcept;
    /// The upper end of a range.
    double noise_end(std::uint32_t range) const noexcept;
};

/// One link's tables. Costs in tables are whole multiples of cost_unit, which sum exactly in a float.
struct Completion {
    std::uint32_t first_slot, slot_count;
    Frame frame;
    Requirements required;
    std::int64_t level_needed, level_unit, spread_unit; ///< units in grains
    std::int64_t high_allowed, radiated_allowed;        ///< grains, above the least of all slots
    std::uint64_t cost_unit;
    std::uint32_t level_shift, spread_shift, rows, stride;
    const Slot *slots;
    const Step *steps;
    bool needs;    ///< whether the tables hold what noise is needed
    Layer *layers; ///< slot_count + 1; the first holds the start alone

    State start() const noexcept { return {0, 0, 0, frame.noise_allowed}; }
    /// The least cost of slots from `slot` on (counted in the link) after those before came to `state`, or no_way.
    std::uint64_t cost_from(std::uint32_t slot, const State &state) const noexcept;
};
inline constexpr std::uint64_t no_way = ~std::uint64_t{0};

/// Prepares steps and units of a link, all but the costs.
void prepare(Completion &completion, const Problem &problem, const Link &link, Requirements required,
             const Frame &frame, const Effect *effects, Step *steps, Layer *layers) noexcept;

/// Gives each candidate its cost.
void set_costs(Completion &completion, const std::uint64_t *costs, Step *steps) noexcept;

/// Chooses how fine a link's tables are: at most `cells` in a layer. Gives the cells of all layers.
std::uint64_t shape(Completion &completion, std::uint64_t cells) noexcept;

/// Whether no finer tables would tell more of levels and spreads.
bool is_finest(const Completion &completion) noexcept;

/// Fills the tables of the shape that was chosen last; gives the end of their cells.
float *fill(Completion &completion, float *cells) noexcept;

} // namespace lvb::decide
