// What a wearer's body costs, over the direction in which the wearer faces: the host's measurement.
#pragma once

#include "math/search.hpp"

#include <cstddef>

namespace lvb::body {

/// Rising angles that close to a circle.
struct Table {
    const double *facing_deg;
    const double *loss_db;
    std::size_t rows;
};

inline double loss_db(const Table &table, double facing_deg) noexcept {
    return math::interpolated_on_circle(table.facing_deg, table.loss_db, table.rows, facing_deg);
}

} // namespace lvb::body
