// A link of the scenario as the structs that the library takes.
#pragma once

#include "scenario.hpp"

namespace desk {

/// How the two antennas see each other at both ends of the walk, from their places.
struct Sights {
    lvb_pointing far{};
    lvb_pointing near{}; ///< the far one where no near place is given
    bool near_given = false;
};

lvb_cable_table lend_cable_table(const Table &table);

/// The last stage as levels are judged by it: a floor that was entered below what noise and the needed carrier to noise
/// allow is raised to that, with the wanted band above it, but not over the ceiling.
lvb_stage judged_receiver(const Link &link);

/// Holds what the library borrows; it must stay where it is as long as the library reads the link.
class Lent {
  public:
    explicit Lent(const Link &link);
    Lent(const Lent &) = delete;

    const lvb_link &link() const { return link_; }
    const lvb_stage &stage(std::size_t index) const { return stages_[index]; }
    /// Distances and directions that the places of the antennas tell.
    void take(const Link &link, const Sights &sights);

  private:
    void lend(const Stage &stage, std::size_t index);

    std::vector<lvb_stage> stages_;
    std::vector<lvb_gain_table> gains_;
    std::vector<lvb_cable_table> cables_;
    std::vector<lvb_body_table> bodies_;
    std::vector<lvb_pattern> patterns_;
    std::vector<lvb_azimuth_cut> azimuth_cuts_;
    std::vector<lvb_elevation_cut> elevation_cuts_;
    std::vector<lvb_path> paths_;
    lvb_link link_{};
};

} // namespace desk
