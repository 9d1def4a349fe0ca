// Paths of every model for the targets: mostly right, now and then not.
#pragma once

#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"

#include <deque>

namespace fuzz {

/// Owns what paths point to for the time of one call; its memory is exactly as long as it says.
class Paths {
  public:
    const lvb_path *make(Bytes &bytes) {
        lvb_path path{};
        path.size = bytes.size_of(sizeof path);
        path.model = static_cast<std::int32_t>(bytes.below(6));
        const bool cable = path.model == LVB_PATH_RADIATING_CABLE;
        if (path.model == LVB_PATH_TWO_RAY || (!cable && bytes.once_in(2))) add_heights(bytes, path);
        switch (path.model) {
        case LVB_PATH_TWO_RAY:
            path.relative_permittivity = bytes.number(1.0, 1000.0);
            path.conductivity_s_per_m = bytes.once_in(2) ? bytes.number(0.0, 10.0) : bytes.number(0.0, 1e8);
            path.polarization = static_cast<std::int32_t>(bytes.below(2));
            break;
        case LVB_PATH_LOG_DISTANCE:
            path.exponent = bytes.number(0.1, 10.0);
            if (bytes.once_in(2)) path.reference_distance_m = bytes.number(0.01, 1e6);
            if (bytes.once_in(2)) path.reference_loss_db = bytes.number(0.001, 300.0);
            break;
        case LVB_PATH_INDOOR:
            path.power_loss_coefficient = bytes.number(1.0, 100.0);
            break;
        case LVB_PATH_SITE_GENERAL:
            path.environment = 1 + static_cast<std::int32_t>(bytes.below(6));
            break;
        case LVB_PATH_RADIATING_CABLE:
            path.longitudinal_loss_db_per_100m = bytes.number(0.01, 1000.0);
            path.coupling_loss_db = bytes.number(10.0, 200.0);
            if (bytes.once_in(2)) path.lateral_distance_m = bytes.number(0.1, 1000.0);
            if (!bytes.once_in(8)) path.exponent = bytes.number(0.1, 10.0);
            break;
        default:
            break;
        }
        const bool measured = path.model == LVB_PATH_LOG_DISTANCE || path.model == LVB_PATH_INDOOR;
        if (measured && bytes.once_in(2)) path.standard_deviation_db = bytes.number(0.1, 30.0);
        const bool walled = path.model == LVB_PATH_INDOOR || path.model == LVB_PATH_SITE_GENERAL;
        if (bytes.once_in(walled ? 24 : 3)) {
            path.wall_count = bytes.below(5);
            path.wall_loss_db = bytes.number(0.0, 100.0);
        }
        if (bytes.once_in(3)) {
            path.floor_count = bytes.below(5);
            path.floor_loss_db = bytes.number(0.0, 100.0);
        }
        if (bytes.once_in(12)) spoil(bytes, path);
        structs_.push_back(result<lvb_path>(path.size));
        structs_.back().put(path);
        if (!bytes.once_in(8)) structs_.back().zero_from(sizeof path);
        return structs_.back().as<lvb_path>();
    }

  private:
    void add_heights(Bytes &bytes, lvb_path &path) {
        path.transmit_height_m = bytes.number(0.01, 100.0);
        path.receive_height_m = bytes.number(0.01, 10.0);
        if (bytes.once_in(3)) return;
        path.edge_size = bytes.size_of(sizeof(lvb_edge));
        path.edge_count = bytes.below(6);
        const bool good = path.edge_size >= sizeof(lvb_edge) && path.edge_size <= 4096;
        const std::size_t step = good ? path.edge_size : 0;
        edges_.emplace_back(path.edge_count * step);
        edges_.back().zero_from(0);
        for (std::size_t i = 0; i < path.edge_count && step != 0; ++i) {
            const lvb_edge edge{bytes.number(0.01, 200.0), bytes.number(-10.0, 20.0)};
            edges_.back().put(edge, i * step);
            if (step > sizeof edge && bytes.once_in(16)) edges_.back().put(bytes.byte(), i * step + step - 1);
        }
        if (path.edge_count != 0 && !bytes.once_in(64)) path.edges = edges_.back().as<lvb_edge>();
        // a count without memory behind it is only given where the count alone must be refused
        if (bytes.once_in(64)) path.edge_count = LVB_MAX_EDGES + 1 + bytes.raw<std::uint16_t>();
    }

    static void spoil(Bytes &bytes, lvb_path &path) {
        double lvb_path::*const numbers[] = {&lvb_path::transmit_height_m,
                                             &lvb_path::receive_height_m,
                                             &lvb_path::relative_permittivity,
                                             &lvb_path::conductivity_s_per_m,
                                             &lvb_path::exponent,
                                             &lvb_path::reference_distance_m,
                                             &lvb_path::reference_loss_db,
                                             &lvb_path::power_loss_coefficient,
                                             &lvb_path::floor_loss_db,
                                             &lvb_path::wall_loss_db,
                                             &lvb_path::longitudinal_loss_db_per_100m,
                                             &lvb_path::coupling_loss_db,
                                             &lvb_path::lateral_distance_m,
                                             &lvb_path::standard_deviation_db};
        const std::uint32_t which = bytes.below(19);
        if (which < 14) path.*numbers[which] = bytes.any_number();
        else if (which == 14) path.model = bytes.raw<std::int32_t>();
        else if (which == 15) path.environment = bytes.raw<std::int32_t>();
        else if (which == 16) path.polarization = bytes.raw<std::int32_t>();
        else if (which == 17) path.wall_count = bytes.raw<std::uint32_t>();
        else path.floor_count = bytes.raw<std::uint32_t>();
        path.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()}); // never read
    }

    std::deque<Memory> structs_;
    std::deque<Memory> edges_;
};

} // namespace fuzz
