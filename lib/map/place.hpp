// Where to put an antenna: candidates' powers at all points, side by side, and the placements that leave the most.
//
// Everything lies in the caller's memory: arrays of as many values as there are points, filled up to whole pieces.
#pragma once

#include "map/site.hpp"
#include "map/survey.hpp"

namespace lvb::map {

/// Arrays of `length` values, one after the other: points, what the site's own antennas give, and each candidate.
class Powers {
  public:
    /// Room for the points of a grid, of which fewer may lie in the areas.
    Powers(double *memory, std::uint64_t points) noexcept : memory_(memory), step_(rounded(points)), length_(step_) {}

    static std::uint64_t rounded(std::uint64_t points) noexcept { return (points + piece - 1) / piece * piece; }
    static std::uint64_t room(std::uint64_t points, std::uint64_t candidates) noexcept {
        return rounded(points) * (4 + 2 * candidates);
    }
    std::uint64_t length() const noexcept { return length_; }
    double *x() const noexcept { return memory_; }
    double *y() const noexcept { return memory_ + step_; }
    double *own_far() const noexcept { return memory_ + 2 * step_; }
    double *own_near() const noexcept { return memory_ + 3 * step_; }
    double *far(std::uint64_t candidate) const noexcept { return memory_ + (4 + 2 * candidate) * step_; }
    double *near(std::uint64_t candidate) const noexcept { return memory_ + (5 + 2 * candidate) * step_; }
    void shorten(std::uint64_t points) noexcept { length_ = rounded(points); }

  private:
    double *memory_;
    std::uint64_t step_, length_;
};

/// Gathers the points of a grid that lie in the areas; gives how many.
std::uint64_t gather(const Site &site, const Grid &grid, const Powers &powers) noexcept;

/// Length of the first way from an antenna to a point at which its path does not hold; NaN where it holds at all.
double off_reach_m(const Site &site, const Antenna &antenna, const Powers &powers, std::uint64_t points) noexcept;

/// What the site's own antennas give at the points.
void take_own(const Site &site, const Powers &powers, std::uint64_t points) noexcept;

/// What a candidate gives.
void take_candidate(const Site &site, const Antenna &antenna, std::uint64_t candidate, const Powers &powers,
                    std::uint64_t points) noexcept;

/// A placement with its least far and greatest near power over the points; `second` is -1 where one is placed.
struct Placement {
    std::int32_t first, second;
    double worst, hottest;
};

/// All placements of candidates, in the order of their indices.
struct Search {
    const Site *site;
    const Powers *powers;
    std::uint32_t candidates;
    double least_headroom_db; ///< that every point must keep, where a ceiling is stated

    /// One or two candidates (`second` is -1): false where the placement overloads someone, or its worst is not above
    /// `least`.
    bool try_out(std::uint32_t first, std::int32_t second, double least, Placement &placement) const noexcept;

    /// Hands every placement that is better than kept.least() to kept.keep().
    template <class Kept>
    void run(bool two, Kept &kept) const noexcept {
        Placement placement;
        for (std::uint32_t first = 0; first < candidates; ++first) {
            if (!two && try_out(first, -1, kept.least(), placement)) kept.keep(placement);
            for (std::uint32_t second = first + 1; two && second < candidates; ++second)
                if (try_out(first, static_cast<std::int32_t>(second), kept.least(), placement)) kept.keep(placement);
        }
    }
};

/// The i-th of `count` places in equal steps from one end of a rail to the other.
inline Vector on_rail(const Vector &from, const Vector &to, std::uint32_t i, std::uint32_t count) noexcept {
    if (i + 1 == count) return to;
    const double share = static_cast<double>(i) / static_cast<double>(count - 1);
    return {from.x + share * (to.x - from.x), from.y + share * (to.y - from.y), from.z + share * (to.z - from.z)};
}

/// A level in dBm of a power over a reference.
double level_of(double power, double reference_db) noexcept;

} // namespace lvb::map
