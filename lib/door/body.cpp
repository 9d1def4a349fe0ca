// Bodies and allowances.
#include "door/patterns.hpp"
#include "tables/allowances.hpp"

namespace lvb::door {
namespace {

bool compute(Refusal &refusal, const lvb_body_table *lent, double facing_deg, double *loss_db) noexcept {
    body::Table table{};
    if (!take_body_table(refusal, lent, LVB_STAGE_NONE, LVB_FIELD_TABLE, table) ||
        !check_range(refusal, facing_deg, turn_range.minimum, turn_range.maximum, {}, LVB_FIELD_FACING_DEG))
        return false;
    if (loss_db == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_LOSS_DB);
    const double loss = body::loss_db(table, facing_deg);
    std::memcpy(loss_db, &loss, sizeof loss);
    return true;
}

bool describe(Refusal &refusal, std::uint32_t index, lvb_allowance_info *info) noexcept {
    if (!check_result(refusal, info, LVB_STRUCT_ALLOWANCE_INFO, LVB_FIELD_INFO)) return false;
    if (index >= tables::allowances)
        return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_ROW_INDEX, index, 0.0,
                      static_cast<double>(tables::allowances - 1));
    const tables::Allowance &found = tables::allowance(index);
    lvb_allowance_info out{};
    out.low_db = found.low_db;
    out.usual_db = found.usual_db;
    out.high_db = found.high_db;
    out.subject = found.subject;
    out.name = found.name;
    out.source = found.source;
    out.remark = found.remark;
    give(info, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_body_loss(const lvb_body_table *table, double facing_deg, double *loss_db, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, table, facing_deg, loss_db); });
}

uint32_t lvb_allowance_count(void) { return lvb::tables::allowances; }

lvb_status lvb_describe_allowance(uint32_t row_index, lvb_allowance_info *info, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return describe(refusal, row_index, info); });
}

} // extern "C"
