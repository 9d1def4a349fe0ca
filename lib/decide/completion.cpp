#include "decide/completion.hpp"

#include "decide/relax.hpp"
#include "math/bits.hpp"
#include "math/constants.hpp"

namespace lvb::decide {
namespace {

using math::LVB_KERNEL::bits_of;
using math::LVB_KERNEL::from_bits;

constexpr float blocked = 1e30f;
constexpr double need_rounding = 0x1p-12; // of sums of positive floats: three roundings for each of up to 1024 slots
constexpr std::uint64_t largest_table_cost = std::uint64_t{1} << 24; // whole numbers up to it are floats

std::uint64_t common(std::uint64_t a, std::uint64_t b) noexcept {
    while (b != 0) {
        const std::uint64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

std::int64_t least(std::int64_t a, std::int64_t b) noexcept { return a < b ? a : b; }
std::int64_t greatest(std::int64_t a, std::int64_t b) noexcept { return a > b ? a : b; }

std::int64_t floor_ratio(std::int64_t a, std::int64_t unit) noexcept {
    const std::int64_t ratio = a / unit;
    return ratio * unit > a ? ratio - 1 : ratio;
}
std::int64_t ceiling_ratio(std::int64_t a, std::int64_t unit) noexcept { return -floor_ratio(-a, unit); }

// Above every sum of levels in any units, and far enough from the end of the range to add to.
constexpr std::int64_t unbounded = std::int64_t{1} << 61;

// The extremes of what a slot's steps add.
struct Extent {
    std::int64_t most_level = 0, most_spread = 0;
};
Extent extent_of(const Completion &c, std::uint32_t slot) noexcept {
    Extent extent;
    for (std::uint32_t i = 0; i < c.slots[slot].count; ++i) {
        const Step &step = c.steps[c.slots[slot].first + i];
        extent.most_level = greatest(extent.most_level, step.level);
        extent.most_spread = greatest(extent.most_spread, step.spread);
    }
    return extent;
}

// The levels above which no state holds the ceiling, and spreads likewise once the level is what is needed.
std::int64_t level_cap(const Completion &c) noexcept {
    return (c.required & needs_ceiling) != 0 ? floor_ratio(c.high_allowed, c.level_unit) : unbounded;
}
std::int64_t spread_cap(const Completion &c) noexcept {
    if ((c.required & needs_ceiling) == 0) return unbounded;
    return floor_ratio(c.high_allowed - greatest(c.level_needed, 0) * c.level_unit, c.spread_unit);
}
bool spread_matters(const Completion &c) noexcept { return (c.required & (needs_ceiling | needs_power)) != 0; }
bool level_matters(const Completion &c) noexcept {
    return (c.required & (needs_floor | needs_ceiling | needs_power)) != 0;
}

// Noise of the slots to come at least and at most, and the most that those before can leave of the allowance.
void lay_noise(Completion &c) noexcept {
    Layer &end = c.layers[c.slot_count];
    end.least_noise = end.most_noise = 0.0;
    for (std::uint32_t slot = c.slot_count; slot-- > 0;) {
        const Layer &next = c.layers[slot + 1];
        Layer &layer = c.layers[slot];
        layer.least_noise = math::infinity;
        layer.most_noise = 0.0;
        for (std::uint32_t i = 0; i < c.slots[slot].count; ++i) {
            const Noise &noise = c.steps[c.slots[slot].first + i].noise;
            const double low = noise.excess + next.least_noise / noise.gain;
            const double high = noise.excess + next.most_noise / noise.gain;
            layer.least_noise = low < layer.least_noise ? low : layer.least_noise;
            layer.most_noise = high > layer.most_noise ? high : layer.most_noise;
        }
    }
    c.layers[0].largest_allowance = c.frame.noise_allowed;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) {
        double largest = -math::infinity;
        for (std::uint32_t i = 0; i < c.slots[slot].count; ++i) {
            const Noise &noise = c.steps[c.slots[slot].first + i].noise;
            const double left = (c.layers[slot].largest_allowance - noise.excess) * noise.gain;
            largest = left > largest ? left : largest;
        }
        c.layers[slot + 1].largest_allowance = largest;
    }
}

// Ranges of a layer, between the least that is needed and the most that makes a difference and can be left.
void range_noise(Layer &layer, std::uint32_t ranges) noexcept {
    constexpr double widest = 1e-4; // of the most: a lesser noise makes no difference to speak of
    const double most = layer.largest_allowance < layer.most_noise ? layer.largest_allowance : layer.most_noise;
    const double from = layer.least_noise > most * widest ? layer.least_noise : most * widest;
    layer.noise_bits = bits_of(from);
    layer.noise_shift = 0;
    layer.noise_ranges = 1;
    layer.last_range_from = most;
    if (ranges < 2 || !(most > from)) return;
    const std::uint64_t width = bits_of(most) - layer.noise_bits;
    while ((width >> layer.noise_shift) + 2 > ranges) ++layer.noise_shift;
    layer.noise_ranges = static_cast<std::uint32_t>(width >> layer.noise_shift) + 2;
}

std::int64_t aligned(std::int64_t level, std::uint32_t shift) noexcept {
    return (level >> shift) * (std::int64_t{1} << shift);
}

// Columns of each layer: what the slots before can reach, and from where those to come reach what is needed.
void lay_levels(Completion &c) noexcept {
    std::int64_t to_come = 0;
    for (std::uint32_t slot = c.slot_count + 1; slot-- > 0;) {
        if (slot < c.slot_count) to_come += extent_of(c, slot).most_level;
        const std::int64_t from = (c.required & needs_floor) != 0 ? greatest(c.level_needed - to_come, 0) : 0;
        c.layers[slot].first_level = from;
    }
    std::int64_t reached = 0;
    for (std::uint32_t slot = 0; slot <= c.slot_count; ++slot) {
        Layer &layer = c.layers[slot];
        const std::int64_t last = least(reached, level_cap(c));
        layer.first_level = aligned(layer.first_level, c.level_shift);
        layer.columns = last < layer.first_level
                            ? 0
                            : static_cast<std::uint32_t>(((last - layer.first_level) >> c.level_shift) + 1);
        if (slot < c.slot_count) reached += extent_of(c, slot).most_level;
    }
}

std::uint64_t widest_layer(const Completion &c) noexcept {
    std::uint64_t widest = 0;
    for (std::uint32_t slot = 0; slot <= c.slot_count; ++slot)
        widest = c.layers[slot].columns > widest ? c.layers[slot].columns : widest;
    return widest;
}

std::int64_t most_spread(const Completion &c) noexcept {
    std::int64_t sum = 0;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) sum += extent_of(c, slot).most_spread;
    return greatest(least(sum, spread_cap(c)), 0);
}

std::uint64_t level_width(const Completion &c) noexcept {
    std::int64_t sum = 0;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) sum += extent_of(c, slot).most_level;
    return static_cast<std::uint64_t>(greatest(least(sum, level_cap(c)), 0));
}

float *row_of(const Completion &c, const Layer &layer, std::uint32_t noise_range, std::uint32_t row) noexcept {
    return &layer.cells[(std::uint64_t{noise_range} * c.rows + row) * c.stride + 1]; // a blocked cell on each side
}

// The plane behind the last range of noise holds what noise is needed, which needs no ranges: it tells more of what is
// possible than the costs do, whose ranges are rounded up at every slot.
std::uint32_t planes_of(const Completion &c, const Layer &layer) noexcept {
    return layer.noise_ranges + (c.needs ? 1 : 0);
}

std::uint64_t cells_of(const Completion &c, const Layer &layer) noexcept {
    return std::uint64_t{planes_of(c, layer)} * c.rows * c.stride;
}

float held(double noise) noexcept { return noise < static_cast<double>(blocked) ? static_cast<float>(noise) : blocked; }

// After the last slot: free where the range has a state that holds both limits.
void fill_end(const Completion &c, const Layer &layer) noexcept {
    for (std::uint32_t row = 0; row < c.rows; ++row) {
        float *cells = row_of(c, layer, 0, row);
        float *needs = row_of(c, layer, planes_of(c, layer) - 1, row);
        const std::int64_t spread = std::int64_t{row} << c.spread_shift;
        for (std::uint32_t i = 0; i < layer.columns; ++i) {
            const std::int64_t low = layer.first_level + (std::int64_t{i} << c.level_shift);
            const std::int64_t high = low + ((std::int64_t{1} << c.level_shift) - 1);
            const bool far = (c.required & needs_floor) == 0 || high >= c.level_needed;
            const bool near =
                (c.required & needs_ceiling) == 0 || low * c.level_unit + spread * c.spread_unit <= c.high_allowed;
            if (far && near) cells[i] = needs[i] = 0.0f;
        }
    }
}

void fill_step(const Completion &c, const Layer &layer, const Layer &next, const Step &step) noexcept {
    // A range of levels and a step land in one range of the next layer, or across the border of two.
    const std::int64_t offset = layer.first_level + step.level - next.first_level;
    const std::int64_t shift = offset >> c.level_shift;
    const bool two = offset != shift * (std::int64_t{1} << c.level_shift);
    const std::int64_t begin = greatest(0, -shift - (two ? 1 : 0));
    const std::int64_t end = least(layer.columns, std::int64_t{next.columns} - shift);
    if (begin >= end) return;
    const std::int64_t rows_up = step.spread >> c.spread_shift;
    for (std::uint32_t range = 0; range < layer.noise_ranges; ++range) {
        const double allowed = (layer.noise_end(range) - step.noise.excess) * step.noise.gain;
        if ((c.required & needs_noise) != 0 && allowed < next.least_noise) continue;
        const std::uint32_t next_range = (c.required & needs_noise) != 0 ? next.noise_range(allowed) : 0;
        for (std::uint32_t row = 0; row + rows_up < c.rows; ++row)
            relax(row_of(c, layer, range, row) + begin,
                  row_of(c, next, next_range, row + static_cast<std::uint32_t>(rows_up)) + begin + shift,
                  static_cast<std::size_t>(end - begin), step.table_cost, two);
    }
    if (!c.needs) return;
    const float excess = held(step.noise.excess), part = held(1.0 / step.noise.gain);
    for (std::uint32_t row = 0; row + rows_up < c.rows; ++row)
        relax_need(row_of(c, layer, layer.noise_ranges, row) + begin,
                   row_of(c, next, next.noise_ranges, row + static_cast<std::uint32_t>(rows_up)) + begin + shift,
                   static_cast<std::size_t>(end - begin), excess, part, two);
}

// At the transmitting antenna: the radiated power is level + part spread + a rest whose least is known; it blocks the
// ranges whose least power is too much. `part` in halves: without tolerance, with half of it, with all.
void limit_radiated(const Completion &c, const Layer &layer, std::uint32_t slots) noexcept {
    for (std::int64_t halves = 0; halves <= 2; ++halves) {
        std::int64_t rest = 0; // in half grains
        for (std::uint32_t slot = 0; slot < slots; ++slot) {
            std::int64_t slot_rest = unbounded;
            for (std::uint32_t i = 0; i < c.slots[slot].count; ++i) {
                const Step &step = c.steps[c.slots[slot].first + i];
                slot_rest = least(slot_rest, 2 * step.radiated - 2 * step.level * c.level_unit -
                                                 halves * step.spread * c.spread_unit);
            }
            rest += slot_rest;
        }
        for (std::uint32_t plane = 0; plane < planes_of(c, layer); ++plane)
            for (std::uint32_t row = 0; row < c.rows; ++row) {
                float *cells = row_of(c, layer, plane, row);
                const std::int64_t spread = (std::int64_t{row} << c.spread_shift) * c.spread_unit;
                for (std::uint32_t i = 0; i < layer.columns; ++i) {
                    const std::int64_t level = (layer.first_level + (std::int64_t{i} << c.level_shift)) * c.level_unit;
                    if (2 * level + halves * spread + rest > 2 * c.radiated_allowed) cells[i] = blocked;
                }
            }
    }
}

} // namespace

std::uint32_t Layer::noise_range(double allowed) const noexcept {
    if (!(allowed < last_range_from)) return noise_ranges - 1;
    const std::uint64_t bits = bits_of(allowed);
    if (bits <= noise_bits) return 0;
    const std::uint64_t range = (bits - noise_bits) >> noise_shift;
    return range + 1 < noise_ranges ? static_cast<std::uint32_t>(range) : noise_ranges - 1;
}

double Layer::noise_end(std::uint32_t range) const noexcept {
    if (range + 1 >= noise_ranges) return largest_allowance;
    return from_bits(noise_bits + ((std::uint64_t{range} + 1) << noise_shift));
}

std::uint64_t Completion::cost_from(std::uint32_t slot, const State &state) const noexcept {
    const Layer &layer = layers[slot];
    if ((required & needs_noise) != 0 && state.noise_allowed < layer.least_noise) return no_way;
    if ((required & needs_power) != 0 && state.radiated > radiated_allowed) return no_way;
    if (state.level < layer.first_level) return no_way;
    const std::int64_t column = (state.level - layer.first_level) >> level_shift;
    const std::int64_t row = spread_matters(*this) ? state.spread >> spread_shift : 0;
    if (column >= layer.columns || row >= rows) return no_way;
    const std::uint32_t range = (required & needs_noise) != 0 ? layer.noise_range(state.noise_allowed) : 0;
    const auto at = static_cast<std::uint32_t>(row);
    if (needs && static_cast<double>(row_of(*this, layer, layer.noise_ranges, at)[column]) * (1.0 - need_rounding) >
                     state.noise_allowed)
        return no_way;
    const float cost = row_of(*this, layer, range, at)[column];
    return cost < blocked ? static_cast<std::uint64_t>(cost) * cost_unit : no_way;
}

void prepare(Completion &c, const Problem &problem, const Link &link, Requirements required, const Frame &frame,
             const Effect *effects, Step *steps, Layer *layers) noexcept {
    c.first_slot = link.first_slot;
    c.slot_count = link.slot_count;
    c.frame = frame;
    c.required = required;
    c.slots = problem.slots + link.first_slot;
    c.steps = steps;
    c.layers = layers;
    c.needs = (required & needs_noise) != 0;
    std::uint64_t level_unit = 0, spread_unit = 0;
    std::int64_t low = 0, high = 0, power = 0;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) {
        const std::uint32_t first = c.slots[slot].first, count = c.slots[slot].count;
        std::int64_t least_low = unbounded, least_spread = unbounded, least_power = unbounded;
        for (std::uint32_t i = first; i < first + count; ++i) {
            const Effect &effect = effects[i];
            least_low = least(least_low, effect.low);
            least_spread = least(least_spread, effect.high - effect.low);
            least_power = least(least_power, effect.radiated);
        }
        for (std::uint32_t i = first; i < first + count; ++i) {
            const Effect &effect = effects[i];
            steps[i] = {effect.low - least_low,
                        effect.high - effect.low - least_spread,
                        effect.radiated - least_power,
                        effect.noise,
                        0,
                        0.0f};
            c.needs = c.needs && effect.noise.excess >= 0.0;
            level_unit = common(level_unit, static_cast<std::uint64_t>(steps[i].level));
            spread_unit = common(spread_unit, static_cast<std::uint64_t>(steps[i].spread));
        }
        low += least_low;
        high += least_low + least_spread;
        power += least_power;
    }
    c.level_unit = static_cast<std::int64_t>(level_unit != 0 ? level_unit : 1);
    c.spread_unit = static_cast<std::int64_t>(spread_unit != 0 ? spread_unit : 1);
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot)
        for (std::uint32_t i = c.slots[slot].first; i < c.slots[slot].first + c.slots[slot].count; ++i) {
            steps[i].level = level_matters(c) ? steps[i].level / c.level_unit : 0;
            steps[i].spread = spread_matters(c) ? steps[i].spread / c.spread_unit : 0;
        }
    c.level_needed = ceiling_ratio(frame.low_needed - low, c.level_unit);
    if ((required & needs_floor) == 0) c.level_needed = 0;
    c.high_allowed = frame.high_allowed - high;
    c.radiated_allowed = frame.radiated_allowed - power;
    lay_noise(c);
}

void set_costs(Completion &c, const std::uint64_t *costs, Step *steps) noexcept {
    std::uint64_t unit = 0, sum = 0;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) {
        std::uint64_t most = 0;
        for (std::uint32_t i = c.slots[slot].first; i < c.slots[slot].first + c.slots[slot].count; ++i) {
            steps[i].cost = costs[i];
            unit = common(unit, costs[i]);
            most = costs[i] > most ? costs[i] : most;
        }
        sum += most;
    }
    c.cost_unit = unit != 0 ? unit : 1;
    while (sum / c.cost_unit >= largest_table_cost) c.cost_unit *= 2;
    for (std::uint32_t slot = 0; slot < c.slot_count; ++slot)
        for (std::uint32_t i = c.slots[slot].first; i < c.slots[slot].first + c.slots[slot].count; ++i) {
            const std::uint64_t units = costs[i] / c.cost_unit; // whole ones: a bound is never more than the cost
            steps[i].table_cost = static_cast<float>(units);
        }
}

std::uint64_t shape(Completion &c, std::uint64_t cells) noexcept {
    // Where noise is limited it takes its ranges first; a row of levels is many times finer than what it crosses.
    constexpr std::uint64_t levels_per_spread = 16;
    std::uint32_t ranges = 1;
    if ((c.required & needs_noise) != 0) {
        ranges = most_noise_ranges;
        while (ranges > 4 && std::uint64_t{ranges} * ranges * 64 > cells) ranges /= 2;
    }
    std::uint64_t most_ranges = 1;
    for (std::uint32_t slot = 0; slot <= c.slot_count; ++slot) {
        Layer &layer = c.layers[slot];
        range_noise(layer, ranges);
        most_ranges = layer.noise_ranges > most_ranges ? layer.noise_ranges : most_ranges;
    }
    const std::uint64_t spread = spread_matters(c) ? static_cast<std::uint64_t>(most_spread(c)) : 0;
    const std::uint64_t plane = cells / (most_ranges + (c.needs ? 1 : 0));
    c.spread_shift = 0;
    const auto rows = [&] { return (spread >> c.spread_shift) + 1; };
    while (rows() > 1 && rows() * rows() * levels_per_spread > plane) ++c.spread_shift;
    c.rows = static_cast<std::uint32_t>(rows());
    c.level_shift = 0;
    while (c.level_shift < 62 && ((level_width(c) >> c.level_shift) + 4) * c.rows > plane) ++c.level_shift;
    lay_levels(c);
    c.stride = static_cast<std::uint32_t>(widest_layer(c)) + 2;
    std::uint64_t sum = 0;
    for (std::uint32_t slot = 0; slot <= c.slot_count; ++slot) sum += cells_of(c, c.layers[slot]);
    return sum;
}

bool is_finest(const Completion &c) noexcept {
    return c.level_shift == 0 && c.spread_shift == 0 && (c.required & needs_noise) == 0;
}

float *fill(Completion &c, float *cells) noexcept {
    for (std::uint32_t slot = c.slot_count + 1; slot-- > 0;) {
        Layer &layer = c.layers[slot];
        layer.cells = cells;
        const std::uint64_t count = cells_of(c, layer);
        for (std::uint64_t i = 0; i < count; ++i) cells[i] = blocked;
        cells += count;
        if (slot == c.slot_count) fill_end(c, layer);
        else
            for (std::uint32_t i = 0; i < c.slots[slot].count; ++i)
                fill_step(c, layer, c.layers[slot + 1], c.steps[c.slots[slot].first + i]);
        if (slot == c.frame.radiated_slots && (c.required & needs_power) != 0) limit_radiated(c, layer, slot);
    }
    return cells;
}

} // namespace lvb::decide
