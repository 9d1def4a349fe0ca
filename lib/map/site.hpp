// A site: antennas with their chains, screens and bodies, and the power that comes from each antenna at many points.
//
// Valid input only. Losses and powers are relative to a reference level, that of the strongest antenna at 1 m, so that
// none leaves the range of numbers; far ones have every allowance, near ones none.
#pragma once

#include "antenna/pointing.hpp"
#include "body/facing.hpp"
#include "chain/ledger.hpp"
#include "map/area.hpp"
#include "map/row.hpp"
#include "path/path.hpp"

namespace lvb::map {

enum class Combine : std::int32_t { best, sum };
enum class Facing : std::int32_t { azimuth, point, antenna, away };

/// The antenna of a pack, on one who faces along y.
struct Worn {
    antenna::Axes axes;
    bool has_pattern;
    antenna::Pattern pattern;
    double least_polarization; ///< that crossed antennas still receive of each other
};

/// How a wearer faces, and what the body and the pack's antenna make of that.
struct Wearer {
    bool has_body, has_antenna;
    body::Table body;
    Worn antenna;
    Facing facing;
    double azimuth_deg, x, y; ///< the azimuth, or the point in plan; of an antenna its place
};

struct Antenna {
    Vector at;
    bool has_pattern;
    antenna::Pattern pattern;
    antenna::Axes axes;
    Cosine cosine{};            ///< read with other antennas', whatever the pattern
    double far_db, near_db;     ///< level at 1 m toward the maximum in free space
    double far_loss, near_loss; ///< the site's references over these, as factors of power
    bool has_path;              ///< another way than free space
    bool swaps_heights;         ///< the antenna receives: its height is the path's second one
    path::Path path;
};

struct Site {
    const Antenna *antennas;
    std::size_t antenna_count;
    const Screen *screens;
    std::size_t screen_count;
    const Area *areas;
    std::size_t area_count;
    Wearer wearer;
    Combine combine;
    double height_m;
    double frequency_mhz;
    chain::Window window;
    double far_reference_db, near_reference_db;
    bool near_follows; ///< near levels are far ones and a difference, the same everywhere
    bool is_bare;      ///< a row of points takes several antennas at once
    const RowLoops *row;
};

/// The level at 1 m that is lost to free space: what an antenna's chain leaves less it is far_db and near_db.
double loss_at_1m_db(double frequency_mhz) noexcept;

/// Losses under the references; a level so far below is nothing.
void refer(const Site &site, Antenna &antenna) noexcept;

/// What holds at all points, once the antennas and their references are settled.
void settle(Site &site) noexcept;

/// Losses from one antenna to a piece of points. The mask tells where the antenna's path does not hold.
struct Losses {
    alignas(64) double near[piece]; ///< of what comes through the air
    alignas(64) double far[piece];  ///< and what the wearer leaves of it; not filled where nothing is lost
};
void losses_of(const Site &site, const Antenna &antenna, const Points &points, double *mask, Losses &losses) noexcept;
/// Whether the wearer makes a difference.
inline bool wears(const Site &site) noexcept { return site.wearer.has_body || site.wearer.has_antenna; }
inline const double *far_losses(const Site &site, const Losses &losses) noexcept {
    return wears(site) ? losses.far : losses.near;
}

/// Where what is heard at a piece of points goes.
struct Heard {
    double *level;   ///< far, in dBm; NaN where a point is not counted
    double *near;    ///< near levels that do not follow; may be null
    double *serving; ///< index of the strongest antenna, -1 where there is none; may be null
};
inline Near near_of(const Site &site, const Heard &heard) noexcept {
    if (site.near_follows) return {heard.level, site.near_reference_db - site.far_reference_db};
    return {heard.near, 0.0};
}
/// `mask` says which points count, and is changed where a path does not hold.
void hear(const Site &site, const Points &points, double *mask, const Heard &heard) noexcept;

/// Index of the antenna that is strongest at a point by the near rule, the first of equal ones; -1 where nothing
/// arrives.
std::int32_t strongest_near(const Site &site, const Vector &point) noexcept;

/// Length of the straight way from an antenna with a path to a point, as its model counts it.
double direct_m(const Antenna &antenna, double x, double y, double z) noexcept;

/// Which points of one y lie in an area, as a mask; all of them where there is none.
void mask_row(const Site &site, const double *x, double y, double *mask) noexcept;

} // namespace lvb::map
