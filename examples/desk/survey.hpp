// What the library says of a site: maps, walks and places for antennas.
#pragma once

#include "lend_site.hpp"

#include <cmath>

namespace desk {

/// What arrives in the middle of every square of a grid over the areas of a site.
struct Survey {
    const Site *site = nullptr;
    double frequency_mhz = 0.0;
    bool has_floor = false;
    bool has_wanted = false;
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
    lvb_map_summary summary{};

    double x_of(std::size_t column) const { return x_m + static_cast<double>(column) * site->step_m; }
    double y_of(std::size_t row) const { return y_m + static_cast<double>(row) * site->step_m; }
    /// Outside the areas, or where the path of an antenna does not hold.
    bool is_blank(std::size_t i) const { return std::isnan(level_dbm[i]); }
    double wanted_outage() const { return site->fading->outage; }
    std::size_t over_outage() const; ///< points whose outage is larger than wanted
};

Survey survey_map(const Document &document, const Scenario &scenario, const Site &site);

/// A piece of a walk on which the link is under the floor or over the ceiling.
struct Stretch {
    double from_m = 0.0;
    double to_m = 0.0;
};

struct WalkSurvey {
    const Site *site = nullptr;
    const Walk *walk = nullptr;
    bool has_floor = false;
    bool has_ceiling = false;
    std::vector<double> distance_m; ///< of every point, as those below
    std::vector<double> level_dbm;
    std::vector<double> margin_db;
    std::vector<double> headroom_db;
    std::vector<std::int32_t> zone;
    std::vector<std::int32_t> serving;
    lvb_walk_result result{};
    std::vector<Stretch> under_floor;
    std::vector<Stretch> over_ceiling;

    struct At {
        double x_m, y_m, z_m;
    };
    At at(double distance_m) const; ///< where the walker is then
};

WalkSurvey survey_walk(const Document &document, const Scenario &scenario, const Site &site, const Walk &walk);

struct PlacingSurvey {
    const Site *site = nullptr;
    std::size_t points = 0; ///< of the grid
    std::uint64_t looked_at = 0;
    std::vector<lvb_placement> best; ///< best first
};

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most);

} // namespace desk
