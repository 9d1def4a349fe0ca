// Questions about a link as a caller lends it: its stages may be longer than this header knows, and stand anywhere.
#pragma once

#include <levelbook/levelbook.h>

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace support {

inline bool has_air(const lvb_link &link) {
    for (std::uint32_t i = 0; i < link.stage_count; ++i) {
        std::int32_t kind;
        std::memcpy(&kind, reinterpret_cast<const char *>(link.stages) + std::size_t{i} * link.stage_size, sizeof kind);
        if (kind == LVB_KIND_AIR) return true;
    }
    return false;
}

} // namespace support
