// The commands that ask about a site: map, walk, place.
#pragma once

#include "survey.hpp"

namespace desk {

/// What the person asks for beside the page.
struct SiteQuestion {
    std::string file;
    std::string site;
    std::string walk; ///< of the command walk
    std::string csv;  ///< file to write, or empty
    std::string pgm;  ///< file to write, or empty
    bool as_json = false;
    std::string show;       ///< what a map or a walk draws
    bool brief = false;     ///< only the answer: no legend, no list of antennas, no cautions
    std::uint32_t most = 5; ///< placements to tell
};

struct SiteAnswer {
    std::string text;
    bool holds = false; ///< at every point that was asked for
};

SiteAnswer answer_map(const SiteQuestion &question);
SiteAnswer answer_walk(const SiteQuestion &question);
SiteAnswer answer_place(const SiteQuestion &question);

} // namespace desk
