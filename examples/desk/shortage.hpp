// Which items a stock has too few of to fill every place, whatever the levels.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace desk {

/// Places that can only be filled from items of which too few are left.
struct Shortage {
    std::vector<std::size_t> places;  ///< rising
    std::vector<std::uint32_t> items; ///< rising; all that may stand there
    std::uint64_t left = 0;           ///< of these items altogether, fewer than the places
};

/// The shortages of places that each take one of some items. No place stands in two of them; empty where all can be
/// filled.
std::vector<Shortage> shortages(const std::vector<std::vector<std::uint32_t>> &candidates,
                                const std::vector<std::uint32_t> &counts);

} // namespace desk
