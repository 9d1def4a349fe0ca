// Why the points of a map or walk, or the best placement, do not all hold.
#pragma once

#include "survey.hpp"

namespace desk {

/// Why not every point of the areas, of the walk, or of the best placement is over the floor and under the ceiling,
/// with the tolerances too, both being stated and no area without a point, and seldom enough below the floor where the
/// site says what is allowed; one clause each, empty where all holds.
std::vector<std::string> failures(const Survey &survey);
std::vector<std::string> failures(const WalkSurvey &survey);
std::vector<std::string> failures(const PlacingSurvey &survey);

/// Areas in which no square has its middle, so that nothing is known of them.
std::vector<const Area *> missed_areas(const Survey &survey);
/// What is wrong in one area, in a word or two: "DROPS OUT, DOUBTFUL", "holds".
std::string area_verdict(const Survey &survey, const Tally &area);
/// Whether nothing is wrong in an area.
bool holds(const Survey &survey, const Tally &area);

/// "1 point", "2 points"
std::string counted(std::uint64_t count, const std::string &what);

} // namespace desk
