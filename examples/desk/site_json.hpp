// A site's answers as JSON.
#pragma once

#include "survey.hpp"

namespace desk {

std::string map_json(const Scenario &scenario, const std::string &file, const Survey &survey);
std::string walk_json(const Scenario &scenario, const std::string &file, const WalkSurvey &survey);
std::string place_json(const Scenario &scenario, const std::string &file, const PlacingSurvey &survey);

} // namespace desk
