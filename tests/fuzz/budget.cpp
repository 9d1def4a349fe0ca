// lvb_compute_budget with chains of every kind: whatever comes, it is refused whole or the book adds up.
#include "fuzz/stages.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

// What an antenna's null leaves of a level.
constexpr double null = -std::numeric_limits<double>::infinity();

void require_end(const lvb_end &end) {
    REQUIRE((std::isfinite(end.level_dbm) || end.level_dbm == null) && end.distance_m >= 0.0);
    REQUIRE(end.worst_db >= 0.0 && end.rss_db >= 0.0 && end.rss_db <= end.worst_db * (1.0 + 1e-12));
    REQUIRE(fuzz::known(lvb_zone_name(end.zone)) && end.reserved == 0);
    REQUIRE((end.zone == LVB_ZONE_NOT_JUDGED) == (end.zone_lowest == LVB_ZONE_NOT_JUDGED));
    REQUIRE(end.zone_lowest <= end.zone && end.zone <= end.zone_highest);
    if (!fuzz::is_nan(end.margin_db)) REQUIRE((end.margin_db < 0.0) == (end.zone == LVB_ZONE_DROPOUT));
    if (!fuzz::is_nan(end.headroom_db) && end.zone != LVB_ZONE_DROPOUT)
        REQUIRE((end.headroom_db < 0.0) == (end.zone == LVB_ZONE_OVERLOAD));
}

void require_budget(const lvb_budget &budget, std::uint32_t stages) {
    require_end(budget.far_end);
    require_end(budget.near_end);
    REQUIRE(fuzz::known(lvb_verdict_name(budget.verdict)));
    REQUIRE(fuzz::known(lvb_reference_name(budget.reference)));
    const bool judged = !fuzz::is_nan(budget.far_end.margin_db) || !fuzz::is_nan(budget.near_end.headroom_db);
    REQUIRE(judged == (budget.verdict != LVB_VERDICT_NOT_JUDGED));
    REQUIRE(judged == (budget.decided_by != LVB_DECIDED_BY_NOTHING));
    REQUIRE(judged != fuzz::is_nan(budget.decided_by_db));
    const bool drops = budget.far_end.margin_db < 0.0;
    const bool overloads = budget.near_end.headroom_db < 0.0;
    REQUIRE(drops ==
            (budget.verdict == LVB_VERDICT_DROPS_OUT || budget.verdict == LVB_VERDICT_DROPS_OUT_AND_OVERLOADS));
    REQUIRE(overloads ==
            (budget.verdict == LVB_VERDICT_OVERLOADS || budget.verdict == LVB_VERDICT_DROPS_OUT_AND_OVERLOADS));
    REQUIRE(budget.entries == stages);
    REQUIRE(budget.not_looked_up + budget.estimated + budget.handbook + budget.data_sheet + budget.measured +
                budget.formula ==
            stages);
    REQUIRE(budget.guesses == budget.not_looked_up + budget.estimated);
    REQUIRE(budget.guesses_without_tolerance <= budget.guesses);
    REQUIRE(budget.guess_share >= 0.0 && budget.guess_share <= 1.0 + 1e-12);
    REQUIRE(budget.guess_worst_db <= budget.far_end.worst_db * (1.0 + 1e-12));
    REQUIRE(fuzz::is_nan(budget.eirp_dbm) == fuzz::is_nan(budget.eirp_worst_db));
}

// The columns of the book: changes add up to levels, tolerances only grow, and the last line is the result.
void require_levels(const Memory &levels, std::uint32_t level_size, std::uint32_t stages, const lvb_budget &budget) {
    lvb_level before{};
    std::uint32_t notes = 0;
    double far_base = 0.0, near_base = 0.0, far_since = 0.0, near_since = 0.0; // the sum starts anew after the air
    for (std::uint32_t i = 0; i < stages; ++i) {
        const auto level = levels.get<lvb_level>(std::size_t{i} * level_size);
        const bool air = level.reference == LVB_REFERENCE_ISOTROPIC && before.reference != LVB_REFERENCE_ISOTROPIC;
        far_base = air ? level.far_level_dbm : far_base;
        near_base = air ? level.near_level_dbm : near_base;
        far_since = air ? 0.0 : far_since + level.far_change_db;
        near_since = air ? 0.0 : near_since + level.near_change_db;
        REQUIRE(level.far_level_dbm == far_base + far_since && level.near_level_dbm == near_base + near_since);
        if (air && before.far_level_dbm != null)
            REQUIRE(std::fabs(before.far_level_dbm + level.far_change_db - level.far_level_dbm) < 1e-9);
        REQUIRE(level.far_worst_db >= before.far_worst_db && level.near_worst_db >= before.near_worst_db);
        REQUIRE(level.far_rss_db >= before.far_rss_db && level.near_rss_db >= before.near_rss_db);
        REQUIRE(fuzz::known(lvb_reference_name(level.reference)) && fuzz::known(lvb_basis_name(level.basis)));
        REQUIRE(level.reserved == 0);
        for (std::size_t tail = sizeof level; tail < level_size; ++tail)
            REQUIRE(levels.get<unsigned char>(std::size_t{i} * level_size + tail) == 0);
        notes |= level.notes;
        before = level;
    }
    REQUIRE(notes == budget.notes && before.reference == budget.reference);
    REQUIRE(before.far_level_dbm == budget.far_end.level_dbm && before.near_level_dbm == budget.near_end.level_dbm);
    REQUIRE(before.far_worst_db == budget.far_end.worst_db && before.near_worst_db == budget.near_end.worst_db);
    REQUIRE(before.far_rss_db == budget.far_end.rss_db && before.near_rss_db == budget.near_end.rss_db);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;

    lvb_link link = fuzz::make_link(bytes);
    if (bytes.once_in(32)) link.stated = bytes.raw<std::uint32_t>();

    // stages, of this or a later version's size
    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    link.stage_size = bytes.size_of(sizeof(lvb_stage));
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    const bool element_size_is_good = link.stage_size >= sizeof(lvb_stage) && link.stage_size <= 4096;
    const std::size_t step = element_size_is_good ? link.stage_size : 0;
    Memory stages(kinds.size() * step);
    stages.zero_from(0);
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        if (bytes.once_in(24)) fuzz::spoil(bytes, stage, lenders);
        if (step != 0) stages.put(stage, i * step);
        if (step > sizeof stage && bytes.once_in(16)) stages.put(bytes.byte(), i * step + step - 1);
    }
    link.stages = bytes.once_in(64) ? nullptr : stages.as<const lvb_stage>();
    // a count without memory behind it is only given where the count alone must be refused
    if (bytes.once_in(32)) link.stage_count = bytes.once_in(2) ? 0 : LVB_MAX_STAGES + 1 + bytes.raw<std::uint16_t>();
    const std::vector<unsigned char> stages_before = stages.copy();

    Memory lent = fuzz::result<lvb_link>(link.size);
    lent.put(link);
    if (!bytes.once_in(16)) lent.zero_from(sizeof link);
    const bool give_link = !bytes.once_in(64);

    const std::uint32_t budget_size = bytes.size_of(sizeof(lvb_budget));
    Memory budget = fuzz::result<lvb_budget>(budget_size);
    const bool give_budget = !bytes.once_in(64);
    const std::uint32_t level_size = bytes.size_of(sizeof(lvb_level));
    const bool level_size_is_good = level_size >= sizeof(lvb_level) && level_size <= 4096;
    Memory levels(level_size_is_good ? kinds.size() * level_size : 1);
    const bool give_levels = !bytes.once_in(4);
    const std::vector<unsigned char> budget_before = budget.copy(), levels_before = levels.copy();

    fuzz::Fault fault(bytes);
    const lvb_link *link_pointer = give_link ? lent.as<const lvb_link>() : nullptr;
    const lvb_status status =
        lvb_compute_budget(link_pointer, give_budget ? budget.as<lvb_budget>() : nullptr,
                           give_levels ? levels.as<lvb_level>() : nullptr, level_size, fault.pointer());
    fault.require(status);
    REQUIRE(stages.copy() == stages_before);
    if (status != LVB_OK) {
        REQUIRE(budget.copy() == budget_before && levels.copy() == levels_before);
        return 0;
    }
    const auto told = budget.get<lvb_budget>();
    REQUIRE(told.size == budget_size && budget.is_zero_from(sizeof told));
    require_budget(told, link.stage_count);
    if (give_levels) require_levels(levels, level_size, link.stage_count, told);

    // The same call again, with and without lines, gives the same bytes.
    Memory again = fuzz::result<lvb_budget>(budget_size);
    REQUIRE(lvb_compute_budget(link_pointer, again.as<lvb_budget>(), nullptr, 0, nullptr) == LVB_OK);
    REQUIRE(again.copy() == budget.copy());
    return 0;
}
