// Gear from stock: everything that the search takes is checked and copied into the caller's scratch.
#include "decide/choose.hpp"

#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "door/many.hpp"

namespace lvb::door {
namespace {

using chain::Kind;

static_assert(static_cast<int>(decide::Outcome::undecided) == LVB_OUTCOME_UNDECIDED);
static_assert(sizeof(lvb_miss) == 2 * decide::requirement_count * sizeof(double));

constexpr Range band_range{0.1, 300000.0, false};
constexpr Range figure_range{0.001, 100.0, false};
constexpr Range room_range{0.0, 100.0, false};
constexpr Range limit_range{-200.0, 150.0, false};
constexpr double largest_cost = 1e12;
constexpr double largest_bytes = 0x1p53;
constexpr std::uint64_t usual_step_limit = 4000000;

/// A choice as it was lent, and how much its lists come to.
struct Asked {
    lvb_choice in;
    std::uint64_t stages, candidates;
};

/// Where everything lies in the scratch.
struct Laid {
    decide::Item *items;
    decide::Slot *slots;
    decide::Link *links;
    chain::Stage *stages;
    std::uint32_t *candidates;
};
Laid lay(const Asked &asked, decide::Arena &arena) noexcept {
    return {arena.take<decide::Item>(asked.in.item_count), arena.take<decide::Slot>(asked.in.slot_count),
            arena.take<decide::Link>(asked.in.need_count), arena.take<chain::Stage>(asked.stages),
            arena.take<std::uint32_t>(asked.candidates)};
}

// The most that the candidates of a problem can be: no item is passed over.
decide::Problem problem_of(const Asked &asked, const Laid &laid) noexcept {
    return {laid.items,         asked.in.item_count,
            laid.slots,         asked.in.slot_count,
            laid.links,         asked.in.need_count,
            laid.candidates,    static_cast<std::uint32_t>(asked.candidates),
            asked.in.set_count, asked.in.step_limit != 0 ? asked.in.step_limit : usual_step_limit};
}

decide::Room room_of(const Asked &asked) noexcept {
    decide::Arena arena;
    const Laid laid = lay(asked, arena);
    const decide::Room room = decide::room_for(problem_of(asked, laid));
    return {arena.needed() + room.least_bytes, arena.needed() + room.ample_bytes};
}

bool check_array(Refusal &refusal, const void *array, std::int32_t array_field, std::uint32_t count,
                 std::int32_t count_field, double most, std::uint32_t size, std::size_t known,
                 std::int32_t size_field) noexcept {
    const Place place{LVB_STRUCT_CHOICE};
    if (count == 0) return refuse(refusal, LVB_E_MISSING, place, count_field, 0.0, 1.0, most);
    if (count > most) return refuse(refusal, LVB_E_COUNT, place, count_field, count, 1.0, most);
    if (array == nullptr) return refuse(refusal, LVB_E_NULL, place, array_field);
    return check_size(refusal, size, known, LVB_E_ELEMENT_SIZE, place, size_field);
}

bool check_frame(Refusal &refusal, const lvb_choice &in) noexcept {
    const Place place{LVB_STRUCT_CHOICE};
    if (!check_array(refusal, in.needs, LVB_FIELD_NEEDS, in.need_count, LVB_FIELD_NEED_COUNT, LVB_MAX_NEEDS,
                     in.need_size, sizeof(lvb_need), LVB_FIELD_NEED_SIZE) ||
        !check_array(refusal, in.items, LVB_FIELD_ITEMS, in.item_count, LVB_FIELD_ITEM_COUNT, LVB_MAX_ITEMS,
                     in.item_size, sizeof(lvb_item), LVB_FIELD_ITEM_SIZE) ||
        !check_array(refusal, in.slots, LVB_FIELD_SLOTS, in.slot_count, LVB_FIELD_SLOT_COUNT, LVB_MAX_SLOTS,
                     in.slot_size, sizeof(lvb_slot), LVB_FIELD_SLOT_SIZE) ||
        !check_size(refusal, in.stage_size, sizeof(lvb_stage), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_STAGE_SIZE))
        return false;
    if (in.set_count == 0) return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_SET_COUNT, 0.0, 1.0, LVB_MAX_SETS);
    if (in.set_count > LVB_MAX_SETS)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_SET_COUNT, in.set_count, 1.0, LVB_MAX_SETS);
    if (in.misses != nullptr)
        return check_size(refusal, in.miss_size, sizeof(lvb_miss), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_MISS_SIZE);
    return in.miss_size == 0 || refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_MISS_SIZE, in.miss_size);
}

// Links by their counts alone.
bool count_stages(Refusal &refusal, Asked &asked) noexcept {
    for (std::uint32_t i = 0; i < asked.in.need_count; ++i) {
        const Place place{LVB_STRUCT_NEED, LVB_STAGE_LINK, static_cast<std::int32_t>(i)};
        lvb_need need;
        lvb_link link;
        if (!take_element(refusal, asked.in.needs, asked.in.need_size, row_of(LVB_STRUCT_NEED, i), need)) return false;
        if (need.link == nullptr) return refuse(refusal, LVB_E_NULL, row_of(LVB_STRUCT_NEED, i), LVB_FIELD_LINK);
        if (!take(refusal, need.link, link, place, LVB_FIELD_LINK)) return false;
        if (link.stage_count > LVB_MAX_STAGES)
            return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_STAGE_COUNT, link.stage_count, 1.0, LVB_MAX_STAGES);
        asked.stages += link.stage_count;
    }
    return true;
}

// Slots in order, one or more for each link, with lists of rising items.
bool check_slots(Refusal &refusal, Asked &asked) noexcept {
    const lvb_choice &in = asked.in;
    lvb_slot before{};
    for (std::uint32_t i = 0; i < in.slot_count; ++i) {
        const Place place = row_of(LVB_STRUCT_SLOT, i);
        lvb_slot slot;
        if (!take_element(refusal, in.slots, in.slot_size, place, slot)) return false;
        if (slot.reserved != 0)
            return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, slot.reserved, 0.0, 0.0);
        const std::uint32_t next = i == 0 ? 0 : before.need + 1; // no link is left out
        const std::uint32_t least = i == 0 ? 0 : before.need;
        if (slot.need >= in.need_count)
            return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_NEED, slot.need, 0.0, in.need_count - 1);
        if (slot.need < least || slot.need > next)
            return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_NEED, slot.need, least, next);
        if (i > 0 && slot.need == before.need && slot.stage <= before.stage)
            return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_STAGE, slot.stage, before.stage + 1.0, LVB_MAX_STAGES);
        if (slot.item_count == 0)
            return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_ITEM_COUNT, 0.0, 1.0, LVB_MAX_ITEMS);
        if (slot.item_count > LVB_MAX_ITEMS)
            return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_ITEM_COUNT, slot.item_count, 1.0, LVB_MAX_ITEMS);
        if (slot.items == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_ITEMS);
        for (std::uint32_t k = 0; k < slot.item_count; ++k) {
            const std::uint32_t least_item = k == 0 ? 0 : slot.items[k - 1] + 1;
            if (slot.items[k] >= in.item_count)
                return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_ITEMS, slot.items[k], 0.0, in.item_count - 1);
            if (slot.items[k] < least_item)
                return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_ITEMS, slot.items[k], least_item,
                              in.item_count - 1);
        }
        asked.candidates += slot.item_count;
        before = slot;
    }
    if (before.need + 1 == in.need_count) return true;
    return refuse(refusal, LVB_E_MISSING, {LVB_STRUCT_CHOICE}, LVB_FIELD_SLOTS, 0.0);
}

bool take_choice(Refusal &refusal, const lvb_choice *lent, Asked &asked) noexcept {
    asked.stages = asked.candidates = 0;
    return take(refusal, lent, asked.in, {LVB_STRUCT_CHOICE}, LVB_FIELD_CHOICE) && check_frame(refusal, asked.in) &&
           count_stages(refusal, asked) && check_slots(refusal, asked);
}

bool check_room(Refusal &refusal, const lvb_choice &in, const decide::Room &room) noexcept {
    const Place place{LVB_STRUCT_CHOICE};
    if (in.sets == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SETS);
    if (in.costs == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_COSTS);
    if (in.scratch == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SCRATCH);
    return in.scratch_bytes >= room.least_bytes ||
           refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_SCRATCH_BYTES, static_cast<double>(in.scratch_bytes),
                  static_cast<double>(room.least_bytes), largest_bytes);
}

bool check_results(Refusal &refusal, const lvb_choice &in, const lvb_chosen *result) noexcept {
    const std::uint64_t sets = in.set_count;
    const Room rooms[] = {{result, declared_size(result), LVB_FIELD_RESULT},
                          {in.sets, sets * in.slot_count * sizeof(std::uint32_t), LVB_FIELD_SETS},
                          {in.costs, sets * sizeof(std::uint64_t), LVB_FIELD_COSTS},
                          {in.misses, std::uint64_t{in.need_count} * in.miss_size, LVB_FIELD_MISSES},
                          {in.scratch, in.scratch_bytes, LVB_FIELD_SCRATCH}};
    return check_apart(refusal, rooms, {LVB_STRUCT_CHOICE});
}

bool may_be_item(std::int32_t kind) noexcept {
    return kind == LVB_KIND_SOURCE || kind == LVB_KIND_PASSIVE || kind == LVB_KIND_CABLE ||
           kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_ANTENNA;
}

bool take_item(Refusal &refusal, const lvb_choice &in, std::uint32_t index, decide::Item &item) noexcept {
    const auto number = static_cast<std::int32_t>(index);
    const Place place = row_of(LVB_STRUCT_ITEM, index);
    lvb_item lent;
    if (!take_element(refusal, in.items, in.item_size, place, lent)) return false;
    if (lent.stage == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_STAGE);
    if (lent.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, lent.reserved, 0.0, 0.0);
    if (static_cast<double>(lent.cost) > largest_cost)
        return refuse(refusal, LVB_E_ABOVE_RANGE, place, LVB_FIELD_COST, static_cast<double>(lent.cost), 0.0,
                      largest_cost);
    if (!check_field(refusal, lent.lowest_mhz, band_range, place, LVB_FIELD_LOWEST_MHZ) ||
        !check_field(refusal, lent.highest_mhz, band_range, place, LVB_FIELD_HIGHEST_MHZ))
        return false;
    if (lent.highest_mhz != 0.0 && lent.highest_mhz < lent.lowest_mhz)
        return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_HIGHEST_MHZ, lent.highest_mhz, lent.lowest_mhz,
                      band_range.maximum);
    lvb_link one{}; // the stage as the only one of a link
    one.stages = lent.stage;
    one.stage_size = in.stage_size;
    if (!take_stage(refusal, one, 0, item.stage)) {
        if (refusal.place.structure == LVB_STRUCT_STAGE) refusal.place = place;
        else refusal.place.stage = number;
        return false;
    }
    const auto kind = static_cast<std::int32_t>(item.stage.kind);
    if (!may_be_item(kind)) return refuse(refusal, LVB_E_UNKNOWN_KIND, place, LVB_FIELD_KIND, kind);
    item.cost = lent.cost;
    item.count = lent.count < in.slot_count ? lent.count : in.slot_count; // more make no difference
    return true;
}

bool serves(const lvb_choice &in, std::uint32_t index, const decide::Item &item, double frequency_mhz) noexcept {
    Refusal passed_over;
    lvb_item lent;
    take_element(passed_over, in.items, in.item_size, row_of(LVB_STRUCT_ITEM, index), lent);
    return item.count > 0 && frequency_mhz >= lent.lowest_mhz &&
           (lent.highest_mhz == 0.0 || frequency_mhz <= lent.highest_mhz) &&
           check_tables(passed_over, item.stage, frequency_mhz, -1);
}

// What adds noise of its own, and does not say how much.
bool lacks_figure(const chain::Stage &stage) noexcept {
    return (stage.kind == Kind::amplifier || stage.kind == Kind::receiver) && math::is_nan(stage.noise_figure_db);
}

bool is_conducted(Kind kind) noexcept {
    return kind == Kind::passive || kind == Kind::cable || kind == Kind::amplifier;
}

/// What a walk over a link's stages found.
struct Seen {
    std::int32_t air = -1, antenna = -1;
    lvb_slot feed{}; ///< that of the first antenna, where it is one
    bool receiver = false;
    bool along_cable = false; ///< a radiating cable has no e.i.r.p.
};

/// Fills one link: its stages and its slots with the candidates that serve its frequency.
class LinkTaker {
  public:
    LinkTaker(Refusal &refusal, const Asked &asked, Laid &laid) noexcept
        : refusal_(refusal), asked_(asked), laid_(laid) {}

    bool take(std::uint32_t index) noexcept;
    std::uint32_t candidates() const noexcept { return candidates_; }

  private:
    bool refuse_at(lvb_status status, Place place, std::int32_t field, double value = math::not_a_number) noexcept {
        return refuse(refusal_, status, place, field, value);
    }
    bool take_stages(const lvb_link &lent, std::uint32_t index, decide::Link &link, bool noise, Seen &seen) noexcept;
    bool take_slot(const lvb_slot &slot, double frequency_mhz, bool noise, Kind &kind) noexcept;
    bool check_feed(const lvb_slot &slot) noexcept;
    bool take_needs(const lvb_need &need, std::int32_t row, const Seen &seen, decide::Link &link) noexcept;

    Refusal &refusal_;
    const Asked &asked_;
    Laid &laid_;
    std::uint32_t slot_ = 0, candidates_ = 0;
    std::uint64_t stages_ = 0;
};

// A slot's candidates; `kind` is that of its first item.
bool LinkTaker::take_slot(const lvb_slot &slot, double frequency_mhz, bool noise, Kind &kind) noexcept {
    kind = laid_.items[slot.items[0]].stage.kind;
    decide::Slot &out = laid_.slots[slot_];
    out = {slot.need, slot.stage, candidates_, 0};
    for (std::uint32_t k = 0; k < slot.item_count; ++k) {
        const std::uint32_t number = slot.items[k];
        const decide::Item &item = laid_.items[number];
        const Place place = row_of(LVB_STRUCT_ITEM, number);
        if (item.stage.kind != kind && !(is_conducted(kind) && is_conducted(item.stage.kind)))
            return refuse_at(LVB_E_CONFLICT, place, LVB_FIELD_KIND, static_cast<double>(item.stage.kind));
        if (noise && lacks_figure(item.stage)) return refuse_at(LVB_E_MISSING, place, LVB_FIELD_NOISE_FIGURE_DB, 0.0);
        if (!serves(asked_.in, number, item, frequency_mhz)) continue;
        laid_.candidates[candidates_++] = number;
        ++out.count;
    }
    return true;
}

// What may feed a radiating cable: nothing with a gain, whichever is taken.
bool LinkTaker::check_feed(const lvb_slot &slot) noexcept {
    for (std::uint32_t k = 0; k < slot.item_count; ++k) {
        const chain::Stage &stage = laid_.items[slot.items[k]].stage;
        const std::int32_t field = gain_field(stage);
        if (field != 0)
            return refuse_at(LVB_E_UNUSED, row_of(LVB_STRUCT_ITEM, slot.items[k]), field,
                             field == LVB_FIELD_GAIN_DB ? stage.gain_db : math::not_a_number);
    }
    return true;
}

bool LinkTaker::take_stages(const lvb_link &lent, std::uint32_t index, decide::Link &link, bool noise,
                            Seen &seen) noexcept {
    Order order;
    chain::Stage *stages = laid_.stages + stages_;
    link.stages = stages;
    link.stage_count = lent.stage_count;
    link.first_slot = slot_;
    for (std::uint32_t i = 0; i < lent.stage_count; ++i) {
        const auto number = static_cast<std::int32_t>(i);
        lvb_slot slot{};
        if (slot_ < asked_.in.slot_count)
            take_element(refusal_, asked_.in.slots, asked_.in.slot_size, row_of(LVB_STRUCT_SLOT, slot_), slot);
        const bool limited = noise && order.air() >= 0;
        Kind kind;
        if (slot_ < asked_.in.slot_count && slot.need == index && slot.stage == i) {
            if (!take_slot(slot, lent.frequency_mhz, limited, kind)) return false;
            stages[i] = laid_.items[slot.items[0]].stage;
            if (kind == Kind::antenna && seen.antenna < 0) seen.feed = slot;
            ++slot_;
        } else {
            if (!take_stage(refusal_, lent, i, stages[i]) ||
                !check_tables(refusal_, stages[i], lent.frequency_mhz, number) ||
                (stages[i].has_path && !check_walk(refusal_, lent, stages[i], number)))
                return false;
            kind = stages[i].kind;
        }
        if (kind == Kind::air && stages[i].has_path && path::is_fed_by_cable(stages[i].path) && !check_feed(seen.feed))
            return false;
        if (!order.next(refusal_, stages[i], number)) return false;
        if (limited && lacks_figure(stages[i]))
            return refuse_at(LVB_E_MISSING, {LVB_STRUCT_STAGE, number}, LVB_FIELD_NOISE_FIGURE_DB, 0.0);
        if (kind == Kind::antenna && seen.antenna < 0) seen.antenna = number;
        seen.receiver = kind == Kind::receiver;
        seen.along_cable = seen.along_cable || (stages[i].has_path && path::is_fed_by_cable(stages[i].path));
    }
    stages_ += lent.stage_count;
    link.slot_count = slot_ - link.first_slot;
    seen.air = order.air();
    return order.end(refusal_) && check_distances(refusal_, lent, order.air());
}

bool LinkTaker::take_needs(const lvb_need &need, std::int32_t row, const Seen &seen, decide::Link &link) noexcept {
    const Place place{LVB_STRUCT_NEED, -1, row};
    constexpr std::uint32_t known = LVB_WORST_LEVELS | LVB_WORST_EIRP;
    const chain::Window none{};
    const chain::Window &window = seen.receiver ? link.stages[link.stage_count - 1].window : none;
    const bool has_limit = (need.stated & LVB_STATED_EIRP_LIMIT) != 0;
    const bool has_noise = need.noise_figure_limit_db != 0.0;
    if (!check_stated(refusal_, need.stated, LVB_STATED_EIRP_LIMIT, place)) return false;
    if ((need.worst_case & ~known) != 0)
        return refuse(refusal_, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_WORST_CASE, need.worst_case, 0.0, known);
    if (!check_field(refusal_, need.margin_db, room_range, place, LVB_FIELD_MARGIN_DB) ||
        !check_field(refusal_, need.headroom_db, room_range, place, LVB_FIELD_HEADROOM_DB) ||
        !check_field(refusal_, need.eirp_limit_dbm, limit_range, place, LVB_FIELD_EIRP_LIMIT_DBM) ||
        !check_field(refusal_, need.noise_figure_limit_db, figure_range, place, LVB_FIELD_NOISE_FIGURE_LIMIT_DB))
        return false;
    if (!has_limit && need.eirp_limit_dbm != 0.0)
        return refuse_at(LVB_E_NOT_STATED, place, LVB_FIELD_EIRP_LIMIT_DBM, need.eirp_limit_dbm);
    if (!window.has_floor && need.margin_db != 0.0)
        return refuse_at(LVB_E_UNUSED, place, LVB_FIELD_MARGIN_DB, need.margin_db);
    if (!window.has_ceiling && need.headroom_db != 0.0)
        return refuse_at(LVB_E_UNUSED, place, LVB_FIELD_HEADROOM_DB, need.headroom_db);
    if (has_limit && (seen.antenna < 0 || seen.along_cable))
        return refuse_at(LVB_E_UNUSED, place, LVB_FIELD_EIRP_LIMIT_DBM, need.eirp_limit_dbm);
    if (has_noise && seen.air < 0)
        return refuse_at(LVB_E_UNUSED, place, LVB_FIELD_NOISE_FIGURE_LIMIT_DB, need.noise_figure_limit_db);
    link.required = (window.has_floor ? decide::needs_floor : 0u) | (window.has_ceiling ? decide::needs_ceiling : 0u) |
                    (has_limit ? decide::needs_power : 0u) | (has_noise ? decide::needs_noise : 0u);
    link.worst_levels = (need.worst_case & LVB_WORST_LEVELS) != 0;
    link.worst_radiated = (need.worst_case & LVB_WORST_EIRP) != 0;
    link.margin_db = need.margin_db;
    link.headroom_db = need.headroom_db;
    link.radiated_limit_dbm = need.eirp_limit_dbm;
    link.noise_limit_db = need.noise_figure_limit_db;
    return true;
}

bool LinkTaker::take(std::uint32_t index) noexcept {
    const auto row = static_cast<std::int32_t>(index);
    decide::Link &link = laid_.links[index];
    lvb_need need;
    lvb_link lent;
    Seen seen;
    if (!take_element(refusal_, asked_.in.needs, asked_.in.need_size, row_of(LVB_STRUCT_NEED, index), need))
        return false;
    if (!take_link(refusal_, need.link, lent, link.conditions) ||
        !take_stages(lent, index, link, need.noise_figure_limit_db != 0.0, seen)) {
        tell_as_element(refusal_.place, LVB_STRUCT_NEED, row);
        return false;
    }
    return take_needs(need, row, seen, link);
}

// All links; every slot must have been met at its stage.
bool take_links(Refusal &refusal, const Asked &asked, Laid &laid, std::uint32_t &candidates) noexcept {
    LinkTaker taker(refusal, asked, laid);
    for (std::uint32_t i = 0; i < asked.in.need_count; ++i)
        if (!taker.take(i)) return false;
    candidates = taker.candidates();
    return true;
}

// A slot's stage is one of its link's.
bool check_slot_stages(Refusal &refusal, const Asked &asked) noexcept {
    for (std::uint32_t i = 0; i < asked.in.slot_count; ++i) {
        lvb_slot slot;
        lvb_need need;
        lvb_link link;
        if (!take_element(refusal, asked.in.slots, asked.in.slot_size, row_of(LVB_STRUCT_SLOT, i), slot) ||
            !take_element(refusal, asked.in.needs, asked.in.need_size, row_of(LVB_STRUCT_NEED, slot.need), need) ||
            !take(refusal, need.link, link, {LVB_STRUCT_LINK}, LVB_FIELD_LINK))
            return false;
        if (slot.stage >= link.stage_count)
            return refuse(refusal, LVB_E_NOT_FOUND, row_of(LVB_STRUCT_SLOT, i), LVB_FIELD_STAGE, slot.stage, 0.0,
                          link.stage_count - 1.0);
    }
    return true;
}

// Misses are pairs of arrays in the model, and one struct of named members in the header.
void give_misses(const lvb_choice &in, const decide::Miss *misses) noexcept {
    for (std::uint32_t i = 0; i < in.need_count; ++i) {
        const decide::Miss &miss = misses[i];
        const lvb_miss out{miss.alone_db[0],         miss.alone_db[1],         miss.alone_db[2],
                           miss.alone_db[3],         miss.beside_others_db[0], miss.beside_others_db[1],
                           miss.beside_others_db[2], miss.beside_others_db[3]};
        give(reinterpret_cast<char *>(in.misses) + std::size_t{i} * in.miss_size, out, in.miss_size);
    }
}

bool compute_scratch(Refusal &refusal, const lvb_choice *lent, lvb_choice_scratch *scratch) noexcept {
    Asked asked;
    if (!take_choice(refusal, lent, asked) ||
        !check_result(refusal, scratch, LVB_STRUCT_CHOICE_SCRATCH, LVB_FIELD_SCRATCH))
        return false;
    const decide::Room room = room_of(asked);
    lvb_choice_scratch out{};
    out.least_bytes = room.least_bytes;
    out.ample_bytes = room.ample_bytes;
    give(scratch, out);
    return true;
}

bool compute(Refusal &refusal, const lvb_choice *lent, lvb_chosen *result) noexcept {
    Asked asked;
    if (!take_choice(refusal, lent, asked) || !check_result(refusal, result, LVB_STRUCT_CHOSEN, LVB_FIELD_RESULT) ||
        !check_room(refusal, asked.in, room_of(asked)) || !check_results(refusal, asked.in, result) ||
        !check_slot_stages(refusal, asked))
        return false;
    decide::Arena arena(asked.in.scratch, asked.in.scratch_bytes);
    Laid laid = lay(asked, arena);
    for (std::uint32_t i = 0; i < asked.in.item_count; ++i)
        if (!take_item(refusal, asked.in, i, laid.items[i])) return false;
    std::uint32_t candidates = 0;
    if (!take_links(refusal, asked, laid, candidates)) return false;

    decide::Miss misses[LVB_MAX_NEEDS];
    decide::Problem problem = problem_of(asked, laid);
    problem.candidate_count = candidates;
    const decide::Choice choice =
        decide::choose(problem, arena, asked.in.sets, asked.in.costs, asked.in.misses != nullptr ? misses : nullptr);
    const bool found = choice.set_count > 0;
    const bool bounded = found || choice.outcome == decide::Outcome::undecided;
    lvb_chosen out{};
    out.outcome = static_cast<std::int32_t>(choice.outcome);
    out.set_count = choice.set_count;
    out.coarse = choice.coarse ? 1 : 0;
    out.cost = found ? asked.in.costs[0] : 0;
    out.lower_bound = bounded ? choice.lower_bound : 0;
    out.gap = found ? out.cost - out.lower_bound : 0;
    out.steps = choice.steps;
    if (choice.outcome == decide::Outcome::infeasible && asked.in.misses != nullptr) give_misses(asked.in, misses);
    give(result, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_choice_scratch(const lvb_choice *choice, lvb_choice_scratch *scratch, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute_scratch(refusal, choice, scratch); });
}

lvb_status lvb_compute_choice(const lvb_choice *choice, lvb_chosen *result, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, choice, result); });
}

} // extern "C"
