#include "decide/completion.hpp"

#include "math/constants.hpp"

#include <cstring>

namespace lvb::decide {
namespace {

// Tables grow while the search does not end: cells of a layer, and how many steps the search gets with them.
struct Effort {
    std::uint64_t cells, steps;
};
constexpr Effort efforts[] = {
    {std::uint64_t{1} << 12, 2000},
    {std::uint64_t{1} << 15, 40000},
    {std::uint64_t{1} << 18, ~std::uint64_t{0}},
};
constexpr std::uint64_t least_cells = 64;
// A miss is searched to this, where it cannot be found in one search.
constexpr double miss_resolution_db = 1e-6;
constexpr double largest_noise_miss_db = 2900.0; // a noise figure of more than 3000 dB is no number any more
// Prices are found in units of 2^-8 of a cost, in so many rounds; a step is halved when so many did not help.
constexpr std::uint32_t fine_units = 8;
constexpr int price_rounds = 60, patience = 5;
constexpr std::uint64_t largest_sum = std::uint64_t{1} << 60; // of all that is added
constexpr std::uint64_t miss_step_limit = 200000;
constexpr std::size_t noise_index = 3;
static_assert(Requirements{1} << noise_index == needs_noise);

/// A way to go on from a state; those of one depth stand in a heap, the least bound and then the lowest item on top.
struct Way {
    std::uint64_t bound;
    std::uint32_t candidate;
};
bool before(const Way &a, const Way &b) noexcept {
    return a.bound < b.bound || (a.bound == b.bound && a.candidate < b.candidate);
}
void sink(Way *heap, std::uint32_t count, std::uint32_t at) noexcept {
    const Way way = heap[at];
    for (std::uint32_t child = 2 * at + 1; child < count; child = 2 * at + 1) {
        if (child + 1 < count && before(heap[child + 1], heap[child])) ++child;
        if (!before(heap[child], way)) break;
        heap[at] = heap[child];
        at = child;
    }
    heap[at] = way;
}
Way pop(Way *heap, std::uint32_t &count) noexcept {
    const Way top = heap[0];
    heap[0] = heap[--count];
    if (count > 1) sink(heap, count, 0);
    return top;
}

/// The best sets so far: by cost, then by item numbers.
struct Sets {
    std::uint32_t *items; ///< rows of `width`
    std::uint64_t *costs;
    std::uint32_t width, most, count;

    const std::uint32_t *row(std::uint32_t set) const noexcept { return &items[std::uint64_t{set} * width]; }
    bool full() const noexcept { return count == most; }
    std::uint64_t worst_cost() const noexcept { return costs[count - 1]; }
    void insert(const std::uint32_t *set, std::uint64_t cost) noexcept;
};

int compare(const std::uint32_t *a, const std::uint32_t *b, std::uint32_t count) noexcept {
    for (std::uint32_t i = 0; i < count; ++i)
        if (a[i] != b[i]) return a[i] < b[i] ? -1 : 1;
    return 0;
}

void Sets::insert(const std::uint32_t *set, std::uint64_t cost) noexcept {
    std::uint32_t at = count;
    for (; at > 0 && cost <= costs[at - 1]; --at) {
        const int order = cost < costs[at - 1] ? -1 : compare(set, row(at - 1), width);
        if (order == 0) return; // found again with finer tables
        if (order > 0) break;
    }
    if (at == most) return;
    if (!full()) ++count;
    const std::size_t behind = count - 1 - at;
    std::uint32_t *to = items + std::uint64_t{at} * width;
    std::memmove(to + width, to, behind * width * sizeof *to);
    std::memmove(costs + at + 1, costs + at, behind * sizeof *costs);
    std::memcpy(to, set, width * sizeof *to);
    costs[at] = cost;
}

/// What a search works with; everything lies in the caller's room.
struct Work {
    Effect *effects;          ///< of each candidate
    Step *steps;              ///< of each candidate
    std::uint64_t *objective; ///< of each candidate
    std::uint64_t *priced;    ///< of each candidate: its objective in fine units, and the price of its item
    Way *ways;                ///< of each candidate
    Frame *frames;            ///< of each link
    Completion *completions;  ///< of each link
    std::uint64_t *beyond;    ///< least cost of the links after each link
    Layer *layers;            ///< slot_count + link_count
    State *states;            ///< before each slot, and one more
    std::uint64_t *costs;     ///< before each slot, and one more
    std::uint64_t *paid;      ///< as costs, of what is priced
    std::uint32_t *way_counts, *chosen, *set; ///< of each slot: ways left, candidate taken, its item
    std::uint32_t *used;                      ///< of each item
    double *prices, *best_prices;             ///< of each item
    std::uint64_t rebate;                     ///< what the whole stock comes to at these prices
    std::uint32_t price_shift;                ///< fine units: 2^-price_shift
    std::uint32_t *miss_set;
    float *cells;
    std::uint64_t cell_count;
};

void take_fixed(const Problem &p, Arena &arena, Work &work) noexcept {
    work.effects = arena.take<Effect>(p.candidate_count);
    work.steps = arena.take<Step>(p.candidate_count);
    work.objective = arena.take<std::uint64_t>(p.candidate_count);
    work.priced = arena.take<std::uint64_t>(p.candidate_count);
    work.ways = arena.take<Way>(p.candidate_count);
    work.frames = arena.take<Frame>(p.link_count);
    work.completions = arena.take<Completion>(p.link_count);
    work.beyond = arena.take<std::uint64_t>(p.link_count);
    work.layers = arena.take<Layer>(std::uint64_t{p.slot_count} + p.link_count);
    work.states = arena.take<State>(std::uint64_t{p.slot_count} + 1);
    work.costs = arena.take<std::uint64_t>(std::uint64_t{p.slot_count} + 1);
    work.paid = arena.take<std::uint64_t>(std::uint64_t{p.slot_count} + 1);
    work.way_counts = arena.take<std::uint32_t>(p.slot_count);
    work.chosen = arena.take<std::uint32_t>(p.slot_count);
    work.set = arena.take<std::uint32_t>(p.slot_count);
    work.used = arena.take<std::uint32_t>(p.item_count);
    work.prices = arena.take<double>(p.item_count);
    work.best_prices = arena.take<double>(p.item_count);
    work.miss_set = arena.take<std::uint32_t>(p.slot_count);
}

// No set that comes to `priced` or more costs less than this: what it does not use of the stock it gets no rebate for.
std::uint64_t bound_of(const Work &work, std::uint64_t priced) noexcept {
    if (priced <= work.rebate) return 0;
    return ((priced - work.rebate) + ((std::uint64_t{1} << work.price_shift) - 1)) >> work.price_shift;
}

/// Links [first, last) of a problem, with what is required of them in this search.
struct Part {
    std::uint32_t first, last;
    Requirements required; ///< of those that a link has
    double noise_grace_db; ///< by so much the limit of noise may be missed
    bool any;              ///< the first set ends the search
};

struct Found {
    bool complete; ///< nothing was left out
    std::uint64_t lower_bound;
};

class Search {
  public:
    Search(const Problem &problem, const Work &work, const Part &part, Sets &sets) noexcept
        : problem_(problem), work_(work), part_(part), sets_(sets), begin_(problem.links[part.first].first_slot),
          end_(problem.links[part.last - 1].first_slot + problem.links[part.last - 1].slot_count) {}

    Found run(std::uint64_t step_limit, std::uint64_t &steps) noexcept;

  private:
    const Completion &completion(std::uint32_t slot) const noexcept {
        return work_.completions[problem_.slots[slot].link];
    }
    bool is_last(std::uint32_t slot) const noexcept {
        const Completion &c = completion(slot);
        return slot + 1 == c.first_slot + c.slot_count;
    }
    bool cannot_help(const Way &way, std::uint32_t slot) const noexcept;
    void expand(std::uint32_t slot) noexcept;
    bool enter(const Way &way, std::uint32_t slot) noexcept;
    // NOLINTNEXTLINE(readability-make-member-function-const): it undoes `enter`, behind a pointer of the work
    void leave(std::uint32_t slot) noexcept { --work_.used[work_.set[slot]]; }
    bool holds(std::uint32_t slot) const noexcept;
    std::uint64_t open_bound(std::uint32_t slot) const noexcept;

    const Problem &problem_;
    const Work &work_;
    Part part_;
    Sets &sets_;
    std::uint32_t begin_, end_;
};

// Nothing below this way comes before the last of the sets that are kept.
bool Search::cannot_help(const Way &way, std::uint32_t slot) const noexcept {
    if (!sets_.full()) return false;
    if (way.bound != sets_.worst_cost()) return way.bound > sets_.worst_cost();
    const std::uint32_t *worst = sets_.row(sets_.count - 1);
    const int order = compare(work_.set + begin_, worst, slot - begin_);
    return order > 0 || (order == 0 && problem_.candidates[way.candidate] > worst[slot - begin_]);
}

// All ways on from the state before a slot.
void Search::expand(std::uint32_t slot) noexcept {
    const Completion &c = completion(slot);
    const Slot &here = problem_.slots[slot];
    const std::uint32_t next = slot + 1 - c.first_slot;
    const std::uint64_t paid = work_.paid[slot], beyond = work_.beyond[here.link];
    Way *heap = work_.ways + here.first;
    std::uint32_t count = 0;
    for (std::uint32_t i = here.first; i < here.first + here.count; ++i) {
        const std::uint32_t item = problem_.candidates[i];
        if (work_.used[item] >= problem_.items[item].count) continue;
        const Step &step = work_.steps[i];
        const std::uint64_t to_come = c.cost_from(next, work_.states[slot] + step);
        if (to_come == no_way) continue;
        const Way way{bound_of(work_, paid + step.cost + to_come + beyond), i};
        if (!sets_.full() || way.bound <= sets_.worst_cost()) heap[count++] = way;
    }
    work_.way_counts[slot] = count;
    for (std::uint32_t i = count / 2; i-- > 0;) sink(heap, count, i);
}

// Takes a way; false where a link that it completes does not hold.
bool Search::enter(const Way &way, std::uint32_t slot) noexcept {
    const std::uint32_t item = problem_.candidates[way.candidate];
    work_.chosen[slot] = way.candidate;
    work_.set[slot] = item;
    ++work_.used[item];
    work_.costs[slot + 1] = work_.costs[slot] + work_.objective[way.candidate];
    work_.paid[slot + 1] = work_.paid[slot] + work_.steps[way.candidate].cost;
    if (!is_last(slot)) {
        work_.states[slot + 1] = work_.states[slot] + work_.steps[way.candidate];
        return true;
    }
    if (slot + 1 < end_) work_.states[slot + 1] = completion(slot + 1).start();
    return holds(slot);
}

// The ledger's own word on the link that ends with this slot.
bool Search::holds(std::uint32_t slot) const noexcept {
    const Link &link = problem_.links[problem_.slots[slot].link];
    const Requirements required = link.required & part_.required;
    if (required == 0) return true;
    const Shortfall shortfall = shortfall_of(problem_, link, work_.chosen + link.first_slot);
    for (std::size_t i = 0; i < requirement_count; ++i)
        if ((required >> i & 1u) != 0 && !(shortfall.db[i] <= (i == noise_index ? part_.noise_grace_db : 0.0)))
            return false;
    return true;
}

std::uint64_t Search::open_bound(std::uint32_t slot) const noexcept {
    std::uint64_t bound = no_way;
    for (std::uint32_t i = begin_; i <= slot; ++i)
        if (work_.way_counts[i] > 0 && work_.ways[problem_.slots[i].first].bound < bound)
            bound = work_.ways[problem_.slots[i].first].bound;
    return bound;
}

// Depth first, the way with the least bound first. A search that is stopped knows the bounds of all ways left.
Found Search::run(std::uint64_t step_limit, std::uint64_t &steps) noexcept {
    for (std::uint32_t i = 0; i < problem_.item_count; ++i) work_.used[i] = 0;
    std::uint32_t slot = begin_;
    work_.states[slot] = completion(slot).start();
    work_.costs[slot] = work_.paid[slot] = 0;
    expand(slot);
    for (;;) {
        if (work_.way_counts[slot] == 0) {
            if (slot == begin_) return {true, no_way};
            leave(--slot);
            continue;
        }
        const Way way = pop(work_.ways + problem_.slots[slot].first, work_.way_counts[slot]);
        if (cannot_help(way, slot)) {
            if (way.bound > sets_.worst_cost()) work_.way_counts[slot] = 0; // nor can those after it
            continue;
        }
        if (!enter(way, slot)) {
            leave(slot);
            continue;
        }
        if (slot + 1 == end_) {
            sets_.insert(work_.set + begin_, work_.costs[end_]);
            if (part_.any) return {true, no_way};
            leave(slot);
            continue;
        }
        expand(++slot);
        if (++steps >= step_limit) return {false, open_bound(slot)};
    }
}

// Tables of a part's links, with at most so many cells in a layer.
struct Built {
    bool possible; ///< the tables do not rule out every set
    bool finest;   ///< more cells would tell no more
    bool fits;     ///< the room held so many cells
    std::uint64_t least_cost;
};
Built build(Work &work, const Part &part, std::uint64_t cells) noexcept {
    Built built{true, true, true, 0};
    for (;; cells /= 2) {
        std::uint64_t total = 0;
        for (std::uint32_t i = part.first; i < part.last; ++i) total += shape(work.completions[i], cells);
        if (total <= work.cell_count) break;
        built.fits = false;
    }
    float *at = work.cells;
    for (std::uint32_t i = part.last; i-- > part.first;) {
        Completion &c = work.completions[i];
        at = fill(c, at);
        built.finest = built.finest && is_finest(c);
        work.beyond[i] = built.least_cost;
        const std::uint64_t cost = c.cost_from(0, c.start());
        if (cost == no_way) built.possible = false;
        else built.least_cost += cost;
    }
    built.least_cost = bound_of(work, built.least_cost);
    return built;
}

// ---- Prices. A bound that knows nothing of the stock would let every link take the same cheap item. A price on each
// scarce item, less what the whole stock comes to at these prices, is a bound as well (Lagrange); the best prices are
// neared by steps along what is asked too much or too little of each item.

// What each item is used for by the cheapest ways through the tables.
void trace(const Problem &p, const Work &work, const Part &part) noexcept {
    for (std::uint32_t i = 0; i < p.item_count; ++i) work.used[i] = 0;
    for (std::uint32_t link = part.first; link < part.last; ++link) {
        const Completion &c = work.completions[link];
        State state = c.start();
        for (std::uint32_t slot = 0; slot < c.slot_count; ++slot) {
            std::uint64_t least = no_way;
            std::uint32_t best = c.slots[slot].first;
            for (std::uint32_t i = best; i < c.slots[slot].first + c.slots[slot].count; ++i) {
                const std::uint64_t to_come = c.cost_from(slot + 1, state + work.steps[i]);
                if (to_come == no_way || work.steps[i].cost + to_come >= least) continue;
                least = work.steps[i].cost + to_come;
                best = i;
            }
            if (least == no_way) return;
            ++work.used[p.candidates[best]];
            state = state + work.steps[best];
        }
    }
}

// Puts prices on the candidates.
void set_prices(const Problem &p, Work &work, const Part &part, const double *prices) noexcept {
    work.rebate = 0;
    for (std::uint32_t i = 0; i < p.item_count; ++i)
        work.rebate += static_cast<std::uint64_t>(prices[i]) * p.items[i].count;
    for (std::uint32_t link = part.first; link < part.last; ++link) {
        Completion &c = work.completions[link];
        for (std::uint32_t slot = 0; slot < c.slot_count; ++slot)
            for (std::uint32_t i = c.slots[slot].first; i < c.slots[slot].first + c.slots[slot].count; ++i)
                work.priced[i] =
                    (work.objective[i] << work.price_shift) + static_cast<std::uint64_t>(prices[p.candidates[i]]);
        set_costs(c, work.priced, work.steps);
    }
}

// A step of all prices; false where there is nothing to step along. `used` is what the cheapest ways ask for.
bool step_prices(const Problem &p, const Work &work, double length, double largest) noexcept {
    double square = 0.0;
    const auto excess = [&](std::uint32_t i) noexcept {
        const double over = static_cast<double>(work.used[i]) - static_cast<double>(p.items[i].count);
        return over < 0.0 && work.prices[i] == 0.0 ? 0.0 : over;
    };
    for (std::uint32_t i = 0; i < p.item_count; ++i) square += excess(i) * excess(i);
    if (square == 0.0) return false;
    for (std::uint32_t i = 0; i < p.item_count; ++i) {
        const double moved = work.prices[i] + length / square * excess(i);
        work.prices[i] = moved < 0.0 ? 0.0 : moved > largest ? largest : moved;
    }
    return true;
}

bool is_short(const Problem &p, const Work &work) noexcept {
    for (std::uint32_t i = 0; i < p.item_count; ++i)
        if (work.used[i] > p.items[i].count) return true;
    return false;
}

// As fine units as sums of the dearest candidates leave room for.
std::uint32_t shift_for(const Problem &p, const Work &work, const Part &part) noexcept {
    std::uint64_t sum = 0;
    for (std::uint32_t slot = p.links[part.first].first_slot; slot < p.slot_count; ++slot) {
        std::uint64_t most = 0;
        for (std::uint32_t i = p.slots[slot].first; i < p.slots[slot].first + p.slots[slot].count; ++i)
            most = work.objective[i] > most ? work.objective[i] : most;
        sum += most;
    }
    std::uint32_t shift = fine_units;
    while (shift > 0 && sum > largest_sum >> shift) --shift;
    return shift;
}

void find_prices(const Problem &p, Work &work, const Part &part, std::uint64_t cells) noexcept {
    work.price_shift = 0;
    for (std::uint32_t i = 0; i < p.item_count; ++i) work.prices[i] = work.best_prices[i] = 0.0;
    set_prices(p, work, part, work.prices);
    const Built first = build(work, part, cells);
    if (!first.possible) return;
    trace(p, work, part);
    if (!is_short(p, work)) return;
    work.price_shift = shift_for(p, work, part);
    const double unit = static_cast<double>(std::uint64_t{1} << work.price_shift);
    std::uint64_t best = 0, stock = p.slot_count;
    for (std::uint32_t i = 0; i < p.item_count; ++i) stock += p.items[i].count;
    const std::uint64_t most = largest_sum / stock; // rounded down: all prices together stay within the sum
    const double largest = static_cast<double>(most);
    double reach = 0.5 * static_cast<double>(first.least_cost) * unit + unit;
    for (int round = 0, idle = 0; round < price_rounds; ++round) {
        set_prices(p, work, part, work.prices);
        const std::uint64_t bound = build(work, part, cells).least_cost;
        if (bound > best) {
            best = bound;
            idle = 0;
            std::memcpy(work.best_prices, work.prices, p.item_count * sizeof *work.prices);
        } else if (++idle == patience) {
            reach /= 2.0;
            idle = 0;
        }
        trace(p, work, part);
        if (!step_prices(p, work, reach, largest)) break;
    }
    set_prices(p, work, part, work.best_prices);
}

struct Solved {
    bool complete, coarse;
    std::uint64_t lower_bound;
};

// Searches with ever finer tables until nothing is left open or the steps are used up. work.objective holds the costs.
Solved solve(const Problem &p, Work &work, const Part &part, Sets &sets, std::uint64_t step_limit,
             std::uint64_t &steps) noexcept {
    Layer *layers = work.layers;
    for (std::uint32_t i = part.first; i < part.last; ++i) {
        Link link = p.links[i];
        if ((part.required & needs_noise) != 0) link.noise_limit_db += part.noise_grace_db;
        work.frames[i] = find_effects(p, link, work.effects);
        prepare(work.completions[i], p, link, link.required & part.required, work.frames[i], work.effects, work.steps,
                layers);
        layers += link.slot_count + 1;
    }
    find_prices(p, work, part, efforts[0].cells);
    Solved solved{false, false, 0};
    for (const Effort &effort : efforts) {
        const Built built = build(work, part, effort.cells);
        if (!built.possible) return {true, false, no_way};
        if (built.least_cost > solved.lower_bound) solved.lower_bound = built.least_cost;
        const bool last = built.finest || !built.fits || effort.steps > step_limit - steps;
        const Found found = Search(p, work, part, sets).run(last ? step_limit : steps + effort.steps, steps);
        solved.coarse = !built.fits && !found.complete;
        if (found.lower_bound > solved.lower_bound) solved.lower_bound = found.lower_bound;
        solved.complete = found.complete;
        if (found.complete || last) break;
    }
    return solved;
}

// What a requirement is missed by grows with these sums.
void set_objective(const Problem &p, const Link &link, Work &work, Requirements requirement) noexcept {
    for (std::uint32_t slot = link.first_slot; slot < link.first_slot + link.slot_count; ++slot) {
        const Slot &here = p.slots[slot];
        const auto measure = [&](std::uint32_t i) noexcept -> std::int64_t {
            const Effect &effect = work.effects[i];
            if (requirement == needs_floor) return -effect.low;
            if (requirement == needs_ceiling) return effect.high;
            return requirement == needs_power ? effect.radiated : 0;
        };
        std::int64_t least = measure(here.first);
        for (std::uint32_t i = here.first; i < here.first + here.count; ++i)
            if (measure(i) < least) least = measure(i);
        for (std::uint32_t i = here.first; i < here.first + here.count; ++i)
            work.objective[i] = static_cast<std::uint64_t>(measure(i) - least);
    }
}

struct Attempt {
    bool complete, exists;
    double miss_db;
};
Attempt attempt(const Problem &p, Work &work, const Part &part, std::size_t requirement) noexcept {
    std::uint64_t cost = 0, steps = 0;
    Sets sets{work.miss_set, &cost, p.links[part.first].slot_count, 1, 0};
    const Solved solved = solve(p, work, part, sets, miss_step_limit, steps);
    if (sets.count == 0) return {solved.complete, false, math::infinity};
    const Link &link = p.links[part.first];
    for (std::uint32_t slot = 0; slot < link.slot_count; ++slot) { // back from items to candidates
        const Slot &here = p.slots[link.first_slot + slot];
        std::uint32_t i = here.first;
        while (p.candidates[i] != sets.items[slot]) ++i;
        work.chosen[link.first_slot + slot] = i;
    }
    const double miss = shortfall_of(p, link, work.chosen + link.first_slot).db[requirement];
    return {solved.complete, true, miss > 0.0 ? miss : 0.0};
}

// The least miss of one requirement among the sets that hold the others; NaN where a search did not end.
double least_miss(const Problem &p, Work &work, std::uint32_t index, std::size_t requirement,
                  Requirements others) noexcept {
    const Requirements bit = Requirements{1} << requirement;
    Part part{index, index + 1, others, 0.0, bit == needs_noise};
    find_effects(p, p.links[index], work.effects);
    set_objective(p, p.links[index], work, bit);
    Attempt best = attempt(p, work, part, requirement);
    if (bit != needs_noise || !best.exists) return best.complete ? best.miss_db : math::not_a_number;
    // Noise is no sum: its limit is moved between what was found and what cannot be.
    part.required |= needs_noise;
    if (best.miss_db == math::infinity) { // behind thousands of dB: does a set have a noise figure at all?
        part.noise_grace_db = largest_noise_miss_db;
        best = attempt(p, work, part, requirement);
        if (!best.complete) return math::not_a_number;
        if (!best.exists) return math::infinity;
    }
    double impossible = -1.0;
    while (best.miss_db > 0.0 && best.miss_db - impossible > miss_resolution_db) {
        part.noise_grace_db = impossible < 0.0 ? 0.0 : (impossible + best.miss_db) / 2.0;
        const Attempt next = attempt(p, work, part, requirement);
        if (!next.complete) return math::not_a_number;
        if (next.exists) best = next;
        else impossible = part.noise_grace_db;
    }
    return best.miss_db;
}

void find_misses(const Problem &p, Work &work, Miss *misses) noexcept {
    for (std::uint32_t i = 0; i < p.link_count; ++i)
        for (std::size_t r = 0; r < requirement_count; ++r) {
            const Requirements bit = Requirements{1} << r, required = p.links[i].required;
            const bool asked = (required & bit) != 0;
            misses[i].alone_db[r] = asked ? least_miss(p, work, i, r, 0) : 0.0;
            misses[i].beside_others_db[r] = asked ? least_miss(p, work, i, r, required & ~bit) : 0.0;
        }
}

// Whether the stock fills all slots, whatever the levels.
bool stock_serves_all(const Problem &p, Work &work) noexcept {
    for (std::uint32_t i = 0; i < p.candidate_count; ++i) work.objective[i] = 0;
    std::uint64_t cost = 0, steps = 0;
    Sets sets{work.miss_set, &cost, p.slot_count, 1, 0};
    const Solved solved = solve(p, work, {0, p.link_count, 0, 0.0, true}, sets, miss_step_limit, steps);
    return sets.count > 0 || !solved.complete;
}

Choice short_of_stock(const Problem &p, Miss *misses) noexcept {
    for (std::uint32_t i = 0; misses != nullptr && i < p.link_count; ++i)
        for (std::size_t r = 0; r < requirement_count; ++r)
            misses[i].alone_db[r] = misses[i].beside_others_db[r] = math::not_a_number;
    return {Outcome::short_of_stock, 0, false, no_way, 0};
}

bool a_slot_is_empty(const Problem &p) noexcept {
    for (std::uint32_t i = 0; i < p.slot_count; ++i)
        if (p.slots[i].count == 0) return true;
    return false;
}

} // namespace

Room room_for(const Problem &problem) noexcept {
    Arena arena;
    Work work{};
    take_fixed(problem, arena, work);
    const std::uint64_t layers = std::uint64_t{problem.slot_count} + problem.link_count;
    const std::uint64_t most = efforts[sizeof efforts / sizeof *efforts - 1].cells;
    return {arena.needed() + layers * least_cells * sizeof(float), arena.needed() + layers * most * sizeof(float)};
}

// NOLINTNEXTLINE(readability-non-const-parameter): the sets are written through both
Choice choose(const Problem &problem, Arena &arena, std::uint32_t *items, std::uint64_t *costs, Miss *misses) noexcept {
    Choice choice{Outcome::infeasible, 0, false, 0, 0};
    Work work{};
    take_fixed(problem, arena, work);
    work.cell_count = arena.left() / sizeof(float);
    work.cells = arena.take<float>(work.cell_count);
    if (a_slot_is_empty(problem)) return short_of_stock(problem, misses);
    for (std::uint32_t i = 0; i < problem.candidate_count; ++i)
        work.objective[i] = problem.items[problem.candidates[i]].cost;
    Sets sets{items, costs, problem.slot_count, problem.set_count, 0};
    const Part all{0, problem.link_count, ~Requirements{0}, 0.0, false};
    const Solved solved = solve(problem, work, all, sets, problem.step_limit, choice.steps);
    choice.set_count = sets.count;
    choice.coarse = solved.coarse;
    choice.lower_bound = solved.lower_bound;
    if (sets.count > 0 && (solved.complete || costs[0] < choice.lower_bound)) choice.lower_bound = costs[0];
    if (sets.count > 0) choice.outcome = solved.complete ? Outcome::proven : Outcome::not_proven;
    else if (!solved.complete) choice.outcome = Outcome::undecided;
    else if (!stock_serves_all(problem, work)) return short_of_stock(problem, misses);
    else if (misses != nullptr) find_misses(problem, work, misses);
    return choice;
}

} // namespace lvb::decide
