// What calls over many values have in common.
#pragma once

#include "door/check.hpp"

namespace lvb::door {

/// Whether two arrays of numbers share memory. Addresses are compared as numbers and not added to, so that nothing
/// wraps around.
inline bool overlap(const double *a, std::uint64_t a_count, const double *b, std::uint64_t b_count) noexcept {
    const auto at = reinterpret_cast<std::uintptr_t>(a), bt = reinterpret_cast<std::uintptr_t>(b);
    return at <= bt ? bt - at < a_count * sizeof(double) : at - bt < b_count * sizeof(double);
}

/// A call over many values: `take` checks everything and fills the work, then `compute` does it, which cannot fail, and
/// counts what is bad.
template <class Work, class Take, class Compute>
lvb_status answer_many(lvb_bad *bad, lvb_fault *fault, Take take, Compute compute) noexcept {
    return answer(fault, [&](Refusal &refusal) noexcept {
        Work work;
        if (!take(refusal, work)) return false;
        if (bad != nullptr && !check_result(refusal, bad, LVB_STRUCT_BAD, LVB_FIELD_BAD)) return false;
        lvb_bad told{};
        compute(work, told);
        if (bad != nullptr) give(bad, told);
        return true;
    });
}

} // namespace lvb::door
