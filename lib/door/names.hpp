// How many formulas the header has, and when two texts are one; its names are public functions.
#pragma once

#include <levelbook/levelbook.h>

#include <cstdint>

namespace lvb::door {

// NOLINTBEGIN(bugprone-macro-parentheses): terms of one sum
inline constexpr std::int32_t formula_count = 0
#define LVB_SCALAR_1(name, range, accuracy) +1
#define LVB_SCALAR_2(name, range, accuracy) +1
#define LVB_SCALAR_3(name, range, accuracy) +1
#include "levelbook_scalars.inc"
    ;
#undef LVB_SCALAR_1
#undef LVB_SCALAR_2
#undef LVB_SCALAR_3
// NOLINTEND(bugprone-macro-parentheses)

/// Bytes up to the first zero, whatever they encode.
inline bool same_text(const char *a, const char *b) noexcept {
    for (; *a == *b; ++a, ++b)
        if (*a == '\0') return true;
    return false;
}

} // namespace lvb::door
