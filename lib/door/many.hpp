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

/// An array that a call writes, or none.
struct Room {
    const void *first;
    std::uint64_t bytes;
    std::int32_t field;
};
inline bool overlap(const Room &a, const Room &b) noexcept {
    if (a.first == nullptr || b.first == nullptr) return false;
    const auto at = reinterpret_cast<std::uintptr_t>(a.first), bt = reinterpret_cast<std::uintptr_t>(b.first);
    return at <= bt ? bt - at < a.bytes : at - bt < b.bytes;
}

/// Refuses the later of two arrays that share memory.
template <std::size_t count>
bool check_apart(Refusal &refusal, const Room (&rooms)[count], Place place) noexcept {
    for (std::size_t i = 1; i < count; ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (overlap(rooms[k], rooms[i])) return refuse(refusal, LVB_E_CONFLICT, place, rooms[i].field);
    return true;
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
