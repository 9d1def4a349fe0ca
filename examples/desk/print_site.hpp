// The pages of a site: the map in characters, the walk, the best places.
#pragma once

#include "print_budget.hpp"
#include "survey.hpp"

namespace desk {

/// `show` is zones (or empty), margin or outage; throws Refusal for what the survey does not have. The links are the
/// site's.
std::string print_map(const Survey &survey, const Links &links, const std::string &show, bool brief);
std::string print_walk(const WalkSurvey &survey, const Links &links, const std::string &show, bool brief);
std::string print_places(const PlacingSurvey &survey, const Links &links);

} // namespace desk
