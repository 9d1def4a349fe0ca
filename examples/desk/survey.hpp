// What the library says of a site: maps, walks and places for antennas.
#pragma once

#include "grid.hpp"
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
    double floor_dbm; ///< that levels are judged against, and the ceiling; 0 where not stated
    double ceiling_dbm;
    double far_worst_db;  ///< tolerances together, which levels do not hold: against the floor,
    double near_worst_db; ///< and against the ceiling
    /// Whether a room above the floor or under the ceiling is one, but less than the tolerances.
    bool is_doubtful(double margin_db, double headroom_db) const;
};

/// Where levels do not hold: nearer to an antenna than a wavelength, or than its pattern needs to form.
class NearField {
  public:
    NearField(double frequency_mhz, const std::vector<SiteAntenna> &antennas);
    bool holds(double x_m, double y_m, double z_m) const;

  private:
    struct Ball {
        double x_m, y_m, z_m, radius_m;
    };
    std::vector<Ball> balls_;
};

/// How many of the points that have a level are not to be relied on.
struct Counts {
    std::uint64_t doubtful = 0;
    std::uint64_t near_field = 0;
    std::uint64_t over_outage = 0; ///< more often below the floor than wanted; 0 without fading
};

/// What arrives at the points of a map or a walk, which are numbered.
struct Points : Grounds {
    using Grounds::Grounds;
    std::vector<double> level_dbm; ///< as those below; NaN where there is none: outside the areas, or where a path
                                   ///< does not hold
    std::vector<double> margin_db;
    std::vector<double> headroom_db;
    std::vector<double> outage; ///< of the best of all branches; empty where the site has no fading
    std::vector<std::int32_t> zone;
    std::vector<std::int32_t> serving;

    std::size_t size() const { return level_dbm.size(); }
    void resize(std::size_t points); ///< outage too, where the site has fading
    /// Lends the arrays, as they are sized, to a map or a walk, with the site's law of fading.
    template <class Call>
    void lend(Call &call) {
        call.level_dbm = level_dbm.data();
        call.margin_db = margin_db.data();
        call.headroom_db = headroom_db.data();
        call.zone = zone.data();
        call.serving = serving.data();
        if (!site->fading) return;
        call.outage = outage.data();
        call.fading = site->fading->law();
        call.fading_parameter = site->fading->parameter;
    }
    bool is_blank(std::size_t i) const { return std::isnan(level_dbm[i]); }
    double wanted_outage() const { return site->fading->outage; }
    std::size_t most_outage() const; ///< the first point with the highest outage; some must not be blank
    double highest_outage() const { return outage[most_outage()]; }
    /// Adds a point that is not blank.
    void count(std::size_t i, bool in_near_field, Counts &into) const;
    /// Makes the outage of one branch that of the best of the site's branches.
    void take_best_branch();
};

/// Throws Refusal where the site only asks where to put antennas.
void need_antennas(const Document &document, const Site &site);

/// What the points of a map come to, all of them or those of one area.
struct Tally {
    lvb_map_summary summary{};
    Counts counts;
    std::uint64_t inside() const { return summary.points + summary.unmodelled; } ///< the area, with a level or without
};

/// What arrives in the middle of every square of a grid over the areas of a site.
struct Survey : Points {
    using Points::Points;
    Grid grid;
    std::vector<bool> unmodelled; ///< inside the areas, but a path does not hold there; empty without such a point
    Tally all;
    std::vector<Tally> areas; ///< in the order of the site's
};

/// The points with a level that lie in the near field of one of the antennas.
std::vector<bool> near_points(const Survey &survey, const std::vector<SiteAntenna> &antennas);

Survey survey_map(const Document &document, const Scenario &scenario, const Site &site);

/// A piece of a walk on which the link is under the floor or over the ceiling, or fades more often than wanted.
struct Stretch {
    double from_m = 0.0;
    double to_m = 0.0;
};

/// The polyline of a walk.
class Way {
  public:
    struct At {
        double x_m, y_m, z_m;
    };
    /// Corners without a height lie at that of the packs.
    Way(const Corners &corners, double pack_height_m);
    const std::vector<double> &heights_m() const { return z_m_; } ///< of the corners
    At at(double distance_m) const;                               ///< where the walker is then

  private:
    const Corners *corners_;
    std::vector<double> z_m_;
    std::vector<double> along_m_; ///< of each corner
};

/// What arrives along a walk.
struct WalkSurvey : Points {
    WalkSurvey(const Site &around, const LentSite &lent, const Walk &of)
        : Points(around, lent), walk(&of), way(of.corners, around.pack_height_m) {}
    const Walk *walk;
    Way way;
    std::vector<double> distance_m;             ///< of every point
    std::size_t point_at(double along_m) const; ///< the first that is so far along the walk
    lvb_walk_result result{};                   ///< its outage is that of the best of all branches
    Counts counts;
    std::vector<Stretch> under_floor;
    std::vector<Stretch> over_ceiling;
    std::vector<Stretch> over_outage; ///< empty without fading
    double over_outage_s = 0.0;
};

WalkSurvey survey_walk(const Document &document, const Scenario &scenario, const Site &site, const Walk &walk);

struct PlacingSurvey : Grounds {
    using Grounds::Grounds;
    std::uint64_t looked_at = 0;
    std::vector<lvb_placement> best;       ///< best first
    std::vector<std::uint64_t> near_field; ///< points that lie in the near field of some antenna, with each of them
    std::shared_ptr<const Site> placed; ///< the site with the best placement; where there is none, with some candidate
    std::optional<Survey> map;          ///< of that site
};

PlacingSurvey survey_places(const Document &document, const Scenario &scenario, const Site &site, std::size_t most);

} // namespace desk
