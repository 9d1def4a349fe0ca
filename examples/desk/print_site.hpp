// The page of a site: the map in characters, the walk, the best places.
#pragma once

#include "print_budget.hpp"
#include "survey.hpp"

namespace desk {

/// The links that are chains of a site, its candidates among them, each once.
Links links_of(const Scenario &scenario, const Site &site);

/// `show` is zones (or empty), margin or outage; throws Refusal for what the survey does not have.
std::string print_map(const Survey &survey, const std::string &show, bool brief);
std::string print_walk(const WalkSurvey &survey);
std::string print_places(const PlacingSurvey &survey);

/// Whether every point of the areas, or of the walk, is over the floor and under the ceiling, both being stated, and
/// seldom enough below the floor where the site says what is wanted.
bool holds(const Survey &survey);
bool holds(const WalkSurvey &survey);
/// Whether there is a placement with every point over the floor.
bool holds(const PlacingSurvey &survey);

/// The candidates of a placement: "paddle left" or "paddle left and paddle right".
std::string placed_words(const PlacingSurvey &survey, const lvb_placement &placement);

} // namespace desk
