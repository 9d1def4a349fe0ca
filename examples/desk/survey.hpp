// What the library says of a site: maps, walks and places for antennas.
#pragma once

#include "lend_site.hpp"

#include <cmath>

namespace desk {

/// What an answer about a site rests on.
struct Grounds {
    Grounds(const Site &site, const LentSite &lent);
    const Site *site;
    double frequency_mhz;
    bool has_floor;
    bool has_wanted;
    bool has_ceiling;
    double far_worst_db;  ///< tolerances together, which levels do not hold: against the floor,
    double near_worst_db; ///< and against the ceiling
    /// Whether a room above the floor or under the ceiling is one, but less than the tolerances.
    bool is_doubtful(double margin_db, double headroom_db) const;
    /// Whether the point lies nearer to an antenna of the site than a wavelength, or than its pattern needs to form.
    bool in_near_field(double x_m, double y_m, double z_m) const;
};

/// What arrives in the middle of every square of a grid over the areas of a site.
struct Survey : Grounds {
    using Grounds::Grounds;
    double x_m = 0.0; ///< of the first column
    double y_m = 0.0; ///< of the first row
    std::size_t columns = 0;
    std::size_t rows = 0;
    std::vector<double> level_dbm; ///< as those below, row by row; NaN outside the areas
    std::vector<double> margin_db;
    std::vector<double> headroom_db;
    std::vector<double> outage; ///< with every branch fading; empty where the site has no fading
    std::vector<std::int32_t> zone;
    std::vector<std::int32_t> serving;
    std::vector<bool>
        unmodelled; ///< inside the areas, but a path does not hold there; empty where there is no such point
    std::uint64_t doubtful = 0;   ///< points
    std::uint64_t near_field = 0; ///< points with a level, see Grounds
    lvb_map_summary summary{};

    double x_of(std::size_t column) const { return x_m + static_cast<double>(column) * site->step_m; }
    double y_of(std::size_t row) const { return y_m + static_cast<double>(row) * site->step_m; }
    /// Outside the areas, or where the path of an antenna does not hold.
    bool is_blank(std::size_t i) const { return std::isnan(level_dbm[i]); }
    double wanted_outage() const { return site->fading->outage; }
    double highest_outage() const;   ///< of all points; 0 without fading
    std::size_t over_outage() const; ///< points whose outage is larger than wanted
};

Survey survey_map(const Document &document, const Scenario &scenario, const Site &site);

/// A piece of a walk on which the link is under the floor or over the ceiling.
struct Stretch {
    double from_m = 0.0;
    double to_m = 0.0;
};

struct WalkSurvey : Grounds {
    using Grounds::Grounds;
    const Walk *walk = nullptr;
    std::vector<double> distance_m; ///< of every point, as those below
    std::vector<double> level_dbm;
    std::vector<double> margin_db;
    std::vector<double> headroom_db;
    std::vector<std::int32_t> zone;
    std::vector<std::int32_t> serving;
    std::uint64_t doubtful = 0;   ///< points
    std::uint64_t near_field = 0; ///< points with a level, see Grounds
    lvb_walk_result result{};
    std::vector<Stretch> under_floor;
    std::vector<Stretch> over_ceiling;

    struct At {
        double x_m, y_m, z_m;
    };
    At at(double distance_m) const; ///< where the walker is then
};

WalkSurvey survey_walk(const Document &document, const Scenario &scenario, const Site &site, const Walk &walk);

struct PlacingSurvey : Grounds {
    using Grounds::Grounds;
    std::size_t points = 0; ///< of the grid
    std::uint64_t looked_at = 0;
    std::vector<lvb_placement> best; ///< best first
};

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most);

} // namespace desk
