// What a host must tell its users beside every prediction.
#pragma once

#include <cstddef>

namespace lvb::tables {

inline constexpr std::size_t cautions = 4;
const char *caution(std::size_t row) noexcept; ///< below `cautions`

} // namespace lvb::tables
