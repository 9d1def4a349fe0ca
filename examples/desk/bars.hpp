// Bars made of letters, for a terminal without colour.
#pragma once

#include "compute.hpp"

namespace desk {

/// A piece of the dBm axis, and the columns it is drawn in.
struct Scale {
    double low_dbm = 0.0;
    double high_dbm = 0.0;
    std::size_t columns = 0;

    /// The column of a level; levels outside stand at the edge.
    std::size_t column(double level_dbm) const;
};

/// Holds all levels of a chain and the limits of its receiver, ends on whole tens of dB.
Scale scale_of_chain(const Computed &computed, std::size_t columns);

/// One stage: f where the far level lies, n the near level, * where both fall on one column.
std::string level_bar(const Scale &scale, double far_dbm, double near_dbm);

/// The receiver's window with both ends and their tolerances; empty where no limit is stated.
std::string window_drawing(const Link &link, const Computed &computed, std::size_t columns);

} // namespace desk
