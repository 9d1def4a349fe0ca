#include "tables/cautions.hpp"

namespace lvb::tables {
namespace {

constexpr const char *rows[cautions] = {
    "A prediction does not replace a walk test with the real packs over the whole area.",
    "Radiated power and frequencies are set by the national regulator and the licence: check what is in force.",
    "Keep people away from radiating antennas by the exposure rules in force.",
    "Where national rules or local codes and this prediction differ, the rules win.",
};

} // namespace

const char *caution(std::size_t row) noexcept { return rows[row]; }

} // namespace lvb::tables
