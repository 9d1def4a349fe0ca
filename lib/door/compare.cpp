#include "decide/compare.hpp"

#include "door/check_chain.hpp"
#include "door/many.hpp"
#include "door/names.hpp"

namespace lvb::door {
namespace {

using decide::Pairing;

static_assert(decide::most_compared == LVB_MAX_STAGES);

constexpr std::int32_t pair_of(Pairing step) noexcept { return static_cast<std::int32_t>(step) + LVB_PAIR_FIRST_ONLY; }
static_assert(pair_of(Pairing::label) == LVB_PAIR_BY_LABEL && pair_of(Pairing::second_only) == LVB_PAIR_SECOND_ONLY);

struct Side {
    lvb_link link;
    chain::Conditions conditions;
    chain::Result result;
};

// What pairs are made by.
struct Name {
    std::int32_t kind;
    const char *label; // null for none
};

Name name_of(const lvb_link &link, std::uint32_t index) noexcept {
    const char *element = reinterpret_cast<const char *>(link.stages) + std::size_t{index} * link.stage_size;
    Name name;
    std::memcpy(&name.kind, element + offsetof(lvb_stage, kind), sizeof name.kind);
    std::memcpy(&name.label, element + offsetof(lvb_stage, label), sizeof name.label);
    if (name.label != nullptr && *name.label == '\0') name.label = nullptr;
    return name;
}

Pairing match(const Name &first, const Name &second) noexcept {
    if (first.kind != second.kind) return Pairing::first_only;
    const bool named = first.label != nullptr && second.label != nullptr && same_text(first.label, second.label);
    return named ? Pairing::label : Pairing::kind;
}

bool take_side(Refusal &refusal, const lvb_link *lent, Side &side) noexcept {
    if (!take_link(refusal, lent, side.link, side.conditions)) return false;
    chain::Ledger ledger(side.conditions);
    if (!walk_stages(refusal, side.link, [&](const chain::Stage &stage) noexcept { ledger.enter(stage); }))
        return false;
    side.result = ledger.close();
    return true;
}

// One chain while pairs are told: its levels after the last stage that was taken.
struct Teller {
    explicit Teller(const Side &side) noexcept : link(side.link), ledger(side.conditions) {}

    // The next stage's change and tolerance, or none.
    void take(bool has_stage) noexcept {
        tolerance_db = far_change_db = near_change_db = 0.0;
        index = -1;
        if (!has_stage) return;
        chain::Stage stage;
        Refusal refusal;
        take_stage(refusal, link, next, stage);
        const chain::Line &line = ledger.enter(stage);
        index = static_cast<std::int32_t>(next++);
        tolerance_db = stage.tolerance_db;
        far_change_db = line.far_end.change_db;
        near_change_db = line.near_end.change_db;
        far_level_dbm = line.far_end.level_dbm;
        near_level_dbm = line.near_end.level_dbm;
    }

    const lvb_link &link;
    chain::Ledger ledger;
    std::uint32_t next = 0;
    std::int32_t index = -1;
    double tolerance_db = 0.0, far_change_db = 0.0, near_change_db = 0.0, far_level_dbm = 0.0, near_level_dbm = 0.0;
};

double difference(double second, double first) noexcept {
    const double less = second - first;
    return math::is_nan(less) ? math::not_a_number : less;
}

lvb_pair pair_from(const Teller &first, const Teller &second, Pairing step) noexcept {
    lvb_pair pair{};
    pair.first_stage = first.index;
    pair.second_stage = second.index;
    pair.matched = pair_of(step);
    pair.far_change_difference_db = difference(second.far_change_db, first.far_change_db);
    pair.near_change_difference_db = difference(second.near_change_db, first.near_change_db);
    pair.tolerance_difference_db = difference(second.tolerance_db, first.tolerance_db);
    pair.far_level_difference_db = difference(second.far_level_dbm, first.far_level_dbm);
    pair.near_level_difference_db = difference(second.near_level_dbm, first.near_level_dbm);
    return pair;
}

void count(lvb_comparison &out, const lvb_pair &pair) noexcept {
    const auto index = static_cast<std::int32_t>(out.pair_count++);
    switch (pair.matched) {
    case LVB_PAIR_BY_LABEL:
        ++out.by_label;
        break;
    case LVB_PAIR_BY_KIND:
        ++out.by_kind;
        break;
    case LVB_PAIR_FIRST_ONLY:
        ++out.first_only;
        break;
    default:
        ++out.second_only;
    }
    const double both[] = {pair.far_change_difference_db, pair.near_change_difference_db};
    for (const double db : both)
        if (math::abs(db) > math::abs(out.largest_db)) {
            out.largest_db = db;
            out.largest_pair = index;
        }
}

lvb_comparison tell(const Side &first, const Side &second, const std::uint8_t *steps, char *pairs,
                    std::uint32_t pair_size) noexcept {
    lvb_comparison out{};
    out.largest_pair = -1;
    Teller a(first), b(second);
    const std::uint32_t first_count = first.link.stage_count, second_count = second.link.stage_count;
    while (a.next < first_count || b.next < second_count) {
        Pairing step = Pairing::first_only;
        if (a.next == first_count) step = Pairing::second_only;
        else if (b.next < second_count) step = static_cast<Pairing>(steps[std::size_t{a.next} * second_count + b.next]);
        a.take(step != Pairing::second_only);
        b.take(step != Pairing::first_only);
        const lvb_pair pair = pair_from(a, b, step);
        if (pairs != nullptr) give(pairs + std::size_t{out.pair_count} * pair_size, pair, pair_size);
        count(out, pair);
    }
    const chain::Result &was = first.result, &is = second.result;
    out.first_verdict = static_cast<std::int32_t>(was.verdict);
    out.second_verdict = static_cast<std::int32_t>(is.verdict);
    out.far_level_db = difference(is.far_end.level_dbm, was.far_end.level_dbm);
    out.near_level_db = difference(is.near_end.level_dbm, was.near_end.level_dbm);
    out.margin_db = difference(is.far_end.margin_db, was.far_end.margin_db);
    out.headroom_db = difference(is.near_end.headroom_db, was.near_end.headroom_db);
    out.far_worst_db = difference(is.far_end.worst_db, was.far_end.worst_db);
    out.near_worst_db = difference(is.near_end.worst_db, was.near_end.worst_db);
    out.eirp_db = difference(is.eirp_dbm, was.eirp_dbm);
    return out;
}

// The scratch is large enough, and it and the results share no memory.
bool check_scratch(Refusal &refusal, const lvb_compare &in, const Side &first, const Side &second,
                   const lvb_comparison *comparison) noexcept {
    const Place place{LVB_STRUCT_COMPARE};
    const std::uint32_t first_count = first.link.stage_count, second_count = second.link.stage_count;
    const std::uint64_t needed = lvb_comparison_scratch_bytes(first_count, second_count);
    if (in.scratch_bytes < needed)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_SCRATCH_BYTES, static_cast<double>(in.scratch_bytes),
                      static_cast<double>(needed), math::infinity);
    const std::uint64_t most_pairs = std::uint64_t{first_count} + second_count;
    const Room rooms[] = {{comparison, declared_size(comparison), LVB_FIELD_COMPARISON},
                          {in.pairs, most_pairs * in.pair_size, LVB_FIELD_PAIRS},
                          {in.scratch, needed, LVB_FIELD_SCRATCH}};
    return check_apart(refusal, rooms, place);
}

bool compare(Refusal &refusal, const lvb_compare *lent, lvb_comparison *comparison) noexcept {
    const Place place{LVB_STRUCT_COMPARE};
    lvb_compare in{};
    Side first, second;
    if (!take(refusal, lent, in, place, LVB_FIELD_COMPARE)) return false;
    if (in.first == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_FIRST);
    if (in.second == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SECOND);
    if (in.scratch == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_SCRATCH);
    if (in.pairs == nullptr && in.pair_size != 0) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_PAIRS);
    if ((in.pairs != nullptr &&
         !check_size(refusal, in.pair_size, sizeof(lvb_pair), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_PAIR_SIZE)) ||
        !check_result(refusal, comparison, LVB_STRUCT_COMPARISON, LVB_FIELD_COMPARISON) ||
        !take_side(refusal, in.first, first) || !take_side(refusal, in.second, second) ||
        !check_scratch(refusal, in, first, second, comparison))
        return false;
    decide::align(first.link.stage_count, second.link.stage_count, in.scratch,
                  [&](std::uint32_t i, std::uint32_t j) noexcept {
                      return match(name_of(first.link, i), name_of(second.link, j));
                  });
    lvb_comparison out = tell(first, second, in.scratch, reinterpret_cast<char *>(in.pairs), in.pair_size);
    give(comparison, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" uint64_t lvb_comparison_scratch_bytes(uint32_t first_count, uint32_t second_count) {
    const auto least = [](std::uint32_t count) noexcept {
        return count < LVB_MAX_STAGES ? std::uint64_t{count} : std::uint64_t{LVB_MAX_STAGES};
    };
    return least(first_count) * least(second_count);
}

extern "C" lvb_status lvb_compute_comparison(const lvb_compare *compare, lvb_comparison *comparison, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return lvb::door::compare(refusal, compare, comparison); });
}
