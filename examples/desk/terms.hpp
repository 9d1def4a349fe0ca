// The program's words for the library's values that have no name there, in the order of the values.
#pragma once

#include <string>
#include <vector>

namespace desk {

const std::vector<std::string> &pattern_words();      ///< LVB_PATTERN_, from 0
const std::vector<std::string> &path_words();         ///< LVB_PATH_, from 0
const std::vector<std::string> &environment_words();  ///< LVB_ENVIRONMENT_, from 1
const std::vector<std::string> &polarization_words(); ///< LVB_POLARIZATION_, from 0
const std::vector<std::string> &place_words();        ///< LVB_PLACE_, from 1
const std::vector<std::string> &exposure_words();     ///< LVB_EXPOSURE_, from 1
const std::vector<std::string> &audience_words();     ///< LVB_AUDIENCE_, from 1
const std::vector<std::string> &fading_words();       ///< Fading::Model, from 0

const std::vector<std::string> &law_words(); ///< LVB_LAW_, from 0

} // namespace desk
