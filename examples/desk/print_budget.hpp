// The budget as a page of plain ASCII, at most 100 columns wide.
#pragma once

#include "compute.hpp"

namespace desk {

std::string print_heading(const Scenario &scenario, const std::string &file, bool brief);
std::string print_link(const Answer &answer, bool brief);
/// One line for each link.
std::string print_summary(const std::vector<Answer> &answers);
/// The links that an answer is about.
using Links = std::vector<const Link *>;

std::string print_cautions(const Links &links, bool of_site = false);

/// A sentence for every one of the links whose floor was entered below what its noise allows. The chains of a site are
/// judged together.
std::vector<std::string> raised_floors(const Links &links, bool of_site);

/// The cautions that belong under every prediction, one sentence each.
std::vector<std::string> cautions(const Links &links, bool of_site = false);

} // namespace desk
