// What a budget lets one say of a link, in words: which ends were judged, how it came out, and what it rests on.
#pragma once

#include "compute.hpp"

namespace desk {

/// Whether a stage states a window that levels are judged against.
bool has_window(const lvb_stage &receiver);

/// Whether the near end had to be taken at the far distance, because the scenario gives no near distance.
bool near_distance_missing(const lvb_budget &budget);

/// "the entered floor of -110 dBm lies below what noise and the needed C/N allow (-98.30 dBm), and the level is judged
/// against that"; empty where the floor is judged as it was entered.
std::string raised_floor_words(const Link &link, const char *judged);

/// Every reason why an end of the walk was not judged, one clause each; empty where both were.
std::vector<std::string> not_judged(const Link &link, const lvb_budget &budget);

/// "23.70 dB above the floor", as the difference of the printed figures.
std::string floor_words(const lvb_stage &receiver, const lvb_end &end);
/// "10.99 dB under the ceiling".
std::string ceiling_words(const lvb_stage &receiver, const lvb_end &end);

/// What fails beside the window: noise, compression, limits; one clause each.
std::vector<std::string> further_failures(const Answer &answer);
/// The verdict of the levels, and what fails beside it.
std::string whole_verdict(const Answer &answer);
/// Whether a link holds in everything that was asked of it: at both ends, over its noise, under its limits.
bool holds(const Answer &answer);
/// What is said of a link that a command has changed.
struct Judged {
    lvb_budget budget{};
    std::string words;
    std::vector<std::string> failures;
    bool holds = false;
};
/// As `budget` judges it: by its own noise, under its limits, and over its tuning; throws Refusal.
Judged judge(const Document &document, Link link);
/// Whether the receiver is neither blocked nor covered by noise, with the room that was asked for.
bool holds(const Coexistence &pair);

/// The verdict, what was not judged, and which guesses it leaves out of account.
std::string verdict_words(const Link &link, const lvb_budget &budget);

} // namespace desk
