// The page of a site: the map in characters, the walk, the best places.
#pragma once

#include "print_budget.hpp"
#include "survey.hpp"

namespace desk {

/// The links that are chains of a site, its candidates among them, each once.
Links links_of(const Scenario &scenario, const Site &site);

/// `show` is zones (or empty), margin or outage; throws Refusal for what the survey does not have. The links are the
/// site's.
std::string print_map(const Survey &survey, const Links &links, const std::string &show, bool brief);
std::string print_walk(const WalkSurvey &survey, const Links &links);
std::string print_places(const PlacingSurvey &survey, const Links &links);

/// The candidates of a placement: "paddle left" or "paddle left and paddle right".
std::string placed_words(const PlacingSurvey &survey, const lvb_placement &placement);

} // namespace desk
