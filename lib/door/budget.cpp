#include "door/check_chain.hpp"

namespace lvb::door {
namespace {

lvb_level level_of(const chain::Line &line) noexcept {
    lvb_level level{};
    level.reference = static_cast<std::int32_t>(line.reference);
    level.basis = static_cast<std::int32_t>(line.basis);
    level.notes = bits_of(line.notes);
    level.far_change_db = line.far_end.change_db;
    level.far_level_dbm = line.far_end.level_dbm;
    level.far_worst_db = line.far_end.worst_db;
    level.far_rss_db = line.far_end.rss_db();
    level.near_change_db = line.near_end.change_db;
    level.near_level_dbm = line.near_end.level_dbm;
    level.near_worst_db = line.near_end.worst_db;
    level.near_rss_db = line.near_end.rss_db();
    return level;
}

lvb_end end_of(const chain::End &end) noexcept {
    lvb_end out{};
    out.distance_m = end.distance_m;
    out.level_dbm = end.level_dbm;
    out.worst_db = end.worst_db;
    out.rss_db = end.rss_db;
    out.margin_db = end.margin_db;
    out.headroom_db = end.headroom_db;
    out.from_middle_db = end.from_middle_db;
    out.zone = static_cast<std::int32_t>(end.zone);
    out.zone_lowest = static_cast<std::int32_t>(end.zone_lowest);
    out.zone_highest = static_cast<std::int32_t>(end.zone_highest);
    return out;
}

lvb_budget budget_of(const chain::Result &result, std::uint32_t stages) noexcept {
    const std::uint32_t *by_basis = result.entries.by_basis;
    lvb_budget budget{};
    budget.verdict = static_cast<std::int32_t>(result.verdict);
    budget.decided_by = static_cast<std::int32_t>(result.decided_by);
    budget.reference = static_cast<std::int32_t>(result.reference);
    budget.notes = bits_of(result.notes);
    budget.entries = stages;
    budget.not_looked_up = by_basis[LVB_BASIS_NOT_LOOKED_UP];
    budget.estimated = by_basis[LVB_BASIS_ESTIMATE];
    budget.handbook = by_basis[LVB_BASIS_HANDBOOK];
    budget.data_sheet = by_basis[LVB_BASIS_DATA_SHEET];
    budget.measured = by_basis[LVB_BASIS_MEASURED];
    budget.formula = by_basis[LVB_BASIS_FORMULA];
    budget.guesses = budget.not_looked_up + budget.estimated;
    budget.guesses_without_tolerance = result.entries.guesses_without_tolerance;
    budget.decided_by_db = result.decided_by_db;
    budget.eirp_dbm = result.eirp_dbm;
    budget.eirp_worst_db = result.eirp_worst_db;
    budget.guess_worst_db = result.entries.guess_worst_db;
    const double worst = result.far_end.worst_db;
    budget.guess_share = worst > 0.0 ? result.entries.guess_worst_db / worst : 0.0;
    budget.far_end = end_of(result.far_end);
    budget.near_end = end_of(result.near_end);
    budget.path_standard_deviation_db = result.path_standard_deviation_db;
    return budget;
}

// Checks every stage and their order, and enters them into the ledger where there is one. With `levels` it also writes
// a line for each.
bool walk(Refusal &refusal, const lvb_link &link, chain::Ledger *ledger, lvb_level *levels,
          std::uint32_t level_size) noexcept {
    char *line = reinterpret_cast<char *>(levels);
    return walk_stages(refusal, link, [&](const chain::Stage &stage) noexcept {
        if (ledger == nullptr) return;
        const chain::Line &entered = ledger->enter(stage);
        if (line == nullptr) return;
        give(line, level_of(entered), level_size);
        line += level_size;
    });
}

bool compute(Refusal &refusal, const lvb_link *lent, lvb_budget *budget, lvb_level *levels,
             std::uint32_t level_size) noexcept {
    lvb_link link;
    chain::Conditions conditions;
    if (!take_link(refusal, lent, link, conditions) ||
        !check_result(refusal, budget, LVB_STRUCT_BUDGET, LVB_FIELD_BUDGET))
        return false;
    // Levels are written while the chain is walked, so a walk without them meets every refusal first.
    if (levels != nullptr)
        if (!check_size(refusal, level_size, sizeof(lvb_level), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_LEVEL_SIZE) ||
            !walk(refusal, link, nullptr, nullptr, 0))
            return false;
    chain::Ledger ledger(conditions);
    if (!walk(refusal, link, &ledger, levels, level_size)) return false;
    lvb_budget out = budget_of(ledger.close(), link.stage_count);
    give(budget, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_budget(const lvb_link *link, lvb_budget *budget, lvb_level *levels,
                                         uint32_t level_size, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, link, budget, levels, level_size); });
}
