// What a drawing of a site shows: a step for every point, by zone, margin or outage.
#pragma once

#include "survey.hpp"

namespace desk {

/// What stands for a point where a path does not hold.
constexpr char unmodelled_mark = 'x';

/// A kind of point on a drawing.
struct Step {
    char mark;
    std::string words;
    int badness;        ///< of several points that share a character, the one with the most is drawn
    bool judged = true; ///< whether there can be such points: not below a floor that is not stated
    std::uint64_t points = 0;
};

/// The steps as a legend lists them, and the step of each point, blank ones left aside.
struct View {
    std::vector<Step> steps;
    std::vector<std::size_t> at;
    const Step &step(std::size_t point) const { return steps[at[point]]; }
};

/// `what` is zones (or empty), margin or outage; throws Refusal for what the points do not have.
View view_of(const Points &points, const std::string &what);

} // namespace desk
