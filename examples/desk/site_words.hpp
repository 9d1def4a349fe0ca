// Sentences that the pages of a map, a walk and a placing have in common.
#pragma once

#include "print_budget.hpp"
#include "site_view.hpp"

namespace desk {

/// The links that are chains of a site, its candidates among them, each once.
Links links_of(const Scenario &scenario, const Site &site);

/// "outbound, best of 2 antennas; packs at 1.1 m", with a remark behind the antennas where there is one.
std::string site_words(const Site &site, std::size_t antennas, const std::string &remark = "");
/// "; strongest there is 'paddle left'"
std::string strongest_words(const Site &site, std::int32_t antenna);
/// "3.20 dB above the floor"
std::string floor_room(double margin_db);
/// "3.20 dB under the ceiling"
std::string ceiling_room(double headroom_db);
/// The line of a site's fading, with its law before the words.
std::string print_fading(const Fading &fading, const std::string &words);
/// One decimal, but never 0.0 or 100.0 where it is not quite so.
std::string percent(std::uint64_t part, std::uint64_t whole);
/// Rounded to hundredths, without zeros behind: metres and seconds.
std::string in_hundredths(double number);

/// Which way everybody faces: a direction, a point or an antenna. The site has a wearer.
std::string facing_words(const Site &site);

/// What the wearer makes of levels; empty where the site has none.
std::string print_wearer(const Site &site);

/// The allowances of the links that count on the site; empty where there are none.
std::string print_allowances(const Site &site, const Links &links);

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
