// The tools of the door: refuse with a fault, copy structs in and out by their declared size.
#pragma once

#include <levelbook/levelbook.h>

#include "math/elementary.hpp"

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace lvb::door {

/// A struct's size may be anything from its first version up to this: more is taken for garbage.
inline constexpr std::uint32_t largest_struct = 4096;

/// Where a check looks: which struct, and which stage or row of it (-1 where there is none).
struct Place {
    std::int32_t structure = LVB_STRUCT_NONE;
    std::int32_t stage = -1;
    std::int32_t row = -1;
};

/// A refusal in numbers; `status` LVB_OK means that nothing was refused.
struct Refusal {
    lvb_status status = LVB_OK;
    Place place{};
    std::int32_t field = LVB_FIELD_NONE;
    double value = math::not_a_number;
    double minimum = math::not_a_number;
    double maximum = math::not_a_number;

    explicit operator bool() const noexcept { return status != LVB_OK; }
};

inline Refusal refuse(lvb_status status, Place place, std::int32_t field) noexcept { return {status, place, field}; }
inline Refusal refuse(lvb_status status, Place place, std::int32_t field, double value,
                      double minimum = math::not_a_number, double maximum = math::not_a_number) noexcept {
    return {status, place, field, value, minimum, maximum};
}

// Each check is a short test that stands inline, because a call passes dozens of them, and a function that tells what
// is wrong, which a valid call never enters.

/// NaN, infinity, below or above the range: which of these it is.
Refusal refuse_range(double value, double minimum, double maximum, Place place, std::int32_t field) noexcept;
inline Refusal check_range(double value, double minimum, double maximum, Place place, std::int32_t field) noexcept {
    if (value >= minimum && value <= maximum) return {};
    return refuse_range(value, minimum, maximum, place, field);
}

/// Refuses flags that are not in `known`.
inline Refusal check_flags(std::uint32_t flags, std::uint32_t known, Place place) noexcept {
    if ((flags & ~known) == 0) return {};
    return refuse(LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_STATED, flags, 0.0, known);
}

/// Sizes: `first` is the size of the struct's first version.
inline Refusal check_size(std::uint32_t size, std::size_t first, lvb_status status, Place place,
                          std::int32_t field) noexcept {
    if (size >= first && size <= largest_struct) return {};
    return refuse(status, place, field, size, static_cast<double>(first), largest_struct);
}

/// The tail of a caller's struct beyond what is known must be zero (input only).
Refusal check_unknown_tail(const void *object, std::uint32_t size, std::size_t known, Place place) noexcept;
inline Refusal check_tail(const void *object, std::uint32_t size, std::size_t known, Place place) noexcept {
    if (size <= known) return {};
    return check_unknown_tail(object, size, known, place);
}

bool fault_is_usable(const lvb_fault *fault) noexcept;
/// Fills a usable fault with a refusal, or clears it where nothing was refused.
void fill(lvb_fault *fault, const Refusal &refusal) noexcept;

/// Every call with a fault goes through here: `body` does the work and returns what it refused. A fault of a wrong size
/// refuses the call before it starts, and is not written.
template <class Body>
lvb_status answer(lvb_fault *fault, Body body) noexcept {
    if (fault != nullptr && !fault_is_usable(fault)) return LVB_E_STRUCT_SIZE;
    const Refusal refusal = body();
    if (fault != nullptr) fill(fault, refusal);
    return refusal.status;
}

/// The size that a caller's struct declares; of the struct itself nothing more is known yet, not even its alignment.
inline std::uint32_t declared_size(const void *object) noexcept {
    std::uint32_t size;
    std::memcpy(&size, object, sizeof size);
    return size;
}

/// Copies a caller's struct in: what its size leaves out is zero.
template <class T>
Refusal take(const T *object, T &copy, Place place, std::int32_t argument) noexcept {
    if (object == nullptr) return refuse(LVB_E_NULL, {}, argument);
    const std::uint32_t size = declared_size(object);
    if (const Refusal refusal = check_size(size, sizeof(T), LVB_E_STRUCT_SIZE, place, LVB_FIELD_SIZE)) return refusal;
    if (const Refusal refusal = check_tail(object, size, sizeof(T), place)) return refusal;
    copy = T{};
    std::memcpy(&copy, object, size < sizeof(T) ? size : sizeof(T));
    return {};
}

/// Checks a caller's struct for a result, before anything is computed.
template <class T>
Refusal check_result(const T *object, std::int32_t structure, std::int32_t argument) noexcept {
    if (object == nullptr) return refuse(LVB_E_NULL, {}, argument);
    return check_size(declared_size(object), sizeof(T), LVB_E_STRUCT_SIZE, {structure}, LVB_FIELD_SIZE);
}

/// Copies a result out in the caller's size; a tail that this library does not know is set to zero.
template <class T>
void give(void *object, const T &result, std::uint32_t size) noexcept {
    if (size < sizeof(T)) {
        std::memcpy(object, &result, size);
        return;
    }
    std::memcpy(object, &result, sizeof(T)); // of a constant size, which is the usual one
    if (size > sizeof(T)) std::memset(static_cast<char *>(object) + sizeof(T), 0, size - sizeof(T));
}
template <class T>
void give(T *object, T &result) noexcept {
    result.size = declared_size(object);
    give(object, result, result.size);
}

} // namespace lvb::door
