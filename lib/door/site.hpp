// Checks of a site, lent with a map, a walk or a placement.
#pragma once

#include "door/check.hpp"
#include "map/site.hpp"

namespace lvb::door {

/// A site as the models take it, with room for what it lends.
struct TakenSite {
    map::Site site;
    bool inbound;
    bool has_own_heights = false; ///< the points bring theirs; the packs' height is not used
    bool has_receiver = false;    ///< the chains so far end in one
    bool has_chain = false;       ///< the frequency and window are those of the chains so far
    map::Antenna antennas[LVB_MAX_SITE_ANTENNAS];
    map::Screen screens[LVB_MAX_SCREENS];
    map::Area areas[LVB_MAX_AREAS];
};

/// A host's site, checked whole. With `fewest` 0 it may be without antennas.
bool take_site(Refusal &refusal, const lvb_site *lent, std::uint32_t fewest, math::InstructionSet set,
               TakenSite &taken) noexcept;

/// One antenna of an array with its chain, which must have the frequency and window of the ones before.
bool take_site_antenna(Refusal &refusal, const lvb_site_antenna *elements, std::uint32_t element_size,
                       std::uint32_t index, TakenSite &taken, map::Antenna &antenna) noexcept;

/// The reference levels are raised to those of an antenna.
void raise_references(map::Site &site, const map::Antenna &antenna) noexcept;

/// Every antenna's losses are taken under the references as they stand now.
void settle_references(TakenSite &taken) noexcept;

/// Positions of a grid's points: steps, and both ends within the allowed positions.
bool check_axis(Refusal &refusal, double first_m, double step_m, std::uint64_t last, Place place,
                std::int32_t first_field, std::int32_t step_field, std::int32_t count_field) noexcept;

} // namespace lvb::door
