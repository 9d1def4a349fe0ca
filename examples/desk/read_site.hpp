// Sites of a scenario: areas, antennas in their places, screens, walks and where antennas may be put.
#pragma once

#include "read_parts.hpp"

namespace desk {

std::vector<Site> read_sites(const Checks &checks, const Value &list, const std::vector<Link> &links);

/// The keys of numbers of a site's parts, for what the library refuses.
const std::vector<NumberKey> &site_keys();
const std::vector<NumberKey> &screen_keys();
const std::vector<NumberKey> &walk_keys();

} // namespace desk
