// Sentences that the pages of a map, a walk and a placing have in common.
#pragma once

#include "print_budget.hpp"
#include "site_view.hpp"

namespace desk {

/// The links that are chains of a site, its candidates among them, each once.
Links links_of(const Scenario &scenario, const Site &site);

/// "outbound, best of 2 antennas; packs at 1.1 m"
std::string site_words(const Site &site, std::size_t antennas);
/// "3.20 dB above the floor"
std::string floor_room(double margin_db);
/// "3.20 dB under the ceiling"
std::string ceiling_room(double headroom_db);
/// "Rayleigh, best of 2 branches: "
std::string fading_law(const Fading &fading);
/// Metres in hundredths.
std::string metres(double length_m);

/// The legend of a view, with the share that each of its steps has; unmodelled points count beside those of the view.
std::string print_shares(const std::string &of_what, const View &view, std::uint64_t unmodelled);
/// A row for every area, so that one sees which is bad; empty where there is only one.
std::string print_areas(const Survey &map, const std::string &title);
/// A note that names the areas without a point; empty where there are none.
std::string print_missed_areas(const Survey &map);
std::string verdict_line(const std::vector<std::string> &failures, const char *holds);
/// What the scenario has of the links, and of the site, that an answer does not take into account.
std::string print_left_out(const Grounds &grounds, const Links &links, bool fades);
/// What a person must know of waves that meet.
std::string print_cancelling(const Site &site, std::size_t antennas);
/// What a person must know of points that are near antennas; empty where there are none.
std::string print_near_field(std::uint64_t points);

} // namespace desk
