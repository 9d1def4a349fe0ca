// The tools of the door: refuse with a fault, copy structs in and out by their declared size.
//
// Every check gives true when all is well; otherwise it fills the refusal and gives false, so that checks chain with
// &&.
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
inline Place row_of(std::int32_t structure, std::uint32_t index) noexcept {
    return {structure, -1, static_cast<std::int32_t>(index)};
}

/// A refusal about a link that an array's element lends, or about a stage of it, is told as one about the element. Of
/// tables in it nothing is told anew: they keep their rows.
inline void tell_as_element(Place &place, std::int32_t structure, std::int32_t row) noexcept {
    if (place.structure != LVB_STRUCT_LINK && place.structure != LVB_STRUCT_STAGE) return;
    if (place.structure == LVB_STRUCT_LINK) place.stage = LVB_STAGE_LINK;
    place.structure = structure;
    place.row = row;
}

/// Whence the heights of a path's antennas come: from the path itself, or from where a site's antennas and packs are.
enum class Heights { of_path, of_site };

/// What was refused, in numbers; NaN where there is none.
struct Refusal {
    lvb_status status = LVB_OK;
    Place place{};
    std::int32_t field = LVB_FIELD_NONE;
    double value = math::not_a_number;
    double minimum = math::not_a_number;
    double maximum = math::not_a_number;
};

/// Fills the refusal; always false.
bool refuse(Refusal &refusal, lvb_status status, Place place, std::int32_t field, double value = math::not_a_number,
            double minimum = math::not_a_number, double maximum = math::not_a_number) noexcept;

/// Refuses a value that is not in its range as NaN, infinite, below or above it; always false.
bool refuse_outside(Refusal &refusal, double value, double minimum, double maximum, Place place,
                    std::int32_t field) noexcept;

/// Refuses a number that has no use where it stands; always false.
bool refuse_unused(Refusal &refusal, double value, Place place, std::int32_t field) noexcept;

inline bool check_range(Refusal &refusal, double value, double minimum, double maximum, Place place,
                        std::int32_t field) noexcept {
    return (value >= minimum && value <= maximum) || refuse_outside(refusal, value, minimum, maximum, place, field);
}

/// Refuses bits of a member `stated` that are not in `known`.
inline bool check_stated(Refusal &refusal, std::uint32_t stated, std::uint32_t known, Place place) noexcept {
    return (stated & ~known) == 0 || refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_STATED, stated, 0.0, known);
}

/// A size is at least that of the struct's first version, and not absurd.
inline bool check_size(Refusal &refusal, std::uint32_t size, std::size_t first, lvb_status status, Place place,
                       std::int32_t field) noexcept {
    return (size >= first && size <= largest_struct) ||
           refuse(refusal, status, place, field, size, static_cast<double>(first), largest_struct);
}

/// What a caller's struct holds beyond the `known` bytes must be zero.
bool check_unknown_tail(Refusal &refusal, const void *object, std::uint32_t size, std::size_t known,
                        Place place) noexcept;
inline bool check_tail(Refusal &refusal, const void *object, std::uint32_t size, std::size_t known,
                       Place place) noexcept {
    return size <= known || check_unknown_tail(refusal, object, size, known, place);
}

/// The size that a caller's struct declares; of the struct itself nothing more is known yet, not even its alignment.
inline std::uint32_t declared_size(const void *object) noexcept {
    std::uint32_t size;
    std::memcpy(&size, object, sizeof size);
    return size;
}

/// Copies a caller's struct in.
template <class T>
bool take(Refusal &refusal, const T *object, T &copy, Place place, std::int32_t argument) noexcept {
    if (object == nullptr) {
        refuse(refusal, LVB_E_NULL, {}, argument);
        return false; // said here, where analyzers see that nobody goes on without a copy
    }
    const std::uint32_t size = declared_size(object);
    if (!check_size(refusal, size, sizeof(T), LVB_E_STRUCT_SIZE, place, LVB_FIELD_SIZE) ||
        !check_tail(refusal, object, size, sizeof(T), place))
        return false;
    std::memcpy(&copy, object, sizeof(T));
    return true;
}

/// An array without a count would be passed over in silence. With one, its pointer and its element's size are given.
inline bool check_counted(Refusal &refusal, const void *array, std::int32_t array_field, std::uint32_t count,
                          std::int32_t count_field, double most, Place place) noexcept {
    if (count == 0) return array == nullptr || refuse(refusal, LVB_E_MISSING, place, count_field, 0.0, 1.0, most);
    return array != nullptr || refuse(refusal, LVB_E_NULL, place, array_field);
}

/// An array whose elements may be longer than this library knows.
struct Lent {
    const void *first;
    std::uint32_t count, size;
    std::int32_t field, count_field, size_field;
};
inline bool check_lent(Refusal &refusal, const Lent &lent, std::size_t known, double most, Place place) noexcept {
    return check_counted(refusal, lent.first, lent.field, lent.count, lent.count_field, most, place) &&
           (lent.count == 0 || check_size(refusal, lent.size, known, LVB_E_ELEMENT_SIZE, place, lent.size_field));
}

/// Copies the element of a caller's array that stands in the row of `place`; its size was checked.
template <class T>
bool take_element(Refusal &refusal, const T *array, std::uint32_t size, Place place, T &copy) noexcept {
    const char *element = reinterpret_cast<const char *>(array) + static_cast<std::size_t>(place.row) * size;
    std::memcpy(&copy, element, sizeof copy);
    return check_tail(refusal, element, size, sizeof copy, place);
}

/// Checks a caller's struct for a result, before anything is computed.
template <class T>
bool check_result(Refusal &refusal, const T *object, std::int32_t structure, std::int32_t argument) noexcept {
    if (object == nullptr) return refuse(refusal, LVB_E_NULL, {}, argument);
    return check_size(refusal, declared_size(object), sizeof(T), LVB_E_STRUCT_SIZE, {structure}, LVB_FIELD_SIZE);
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

inline bool fault_is_usable(const lvb_fault *fault) noexcept {
    if (fault == nullptr) return false;
    const std::uint32_t size = declared_size(fault);
    return size >= sizeof(lvb_fault) && size <= largest_struct;
}

/// Fills a usable fault with a refusal, or clears it where nothing was refused.
void fill(lvb_fault *fault, const Refusal &refusal) noexcept;

/// Every call with a fault goes through here: `body` does the work and fills a refusal where it gives false. A fault of
/// a wrong size refuses the call before it starts, and is not written.
template <class Body>
lvb_status answer(lvb_fault *fault, Body body) noexcept {
    if (fault != nullptr && !fault_is_usable(fault)) return LVB_E_STRUCT_SIZE;
    Refusal refusal;
    body(refusal);
    if (fault != nullptr) fill(fault, refusal);
    return refusal.status;
}

} // namespace lvb::door
