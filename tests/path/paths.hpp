// Paths for tests: one of each model, and paths made at random.
#pragma once

#include "chain/chains.hpp"
#include "units/random.hpp"

namespace proof {

/// A path with its edges and everything that a call needs.
struct Way {
    lvb_path path = sized<lvb_path>();
    std::vector<lvb_edge> edges;
    lvb_path_loss loss = sized<lvb_path_loss>();
    lvb_fault fault = sized<lvb_fault>();

    explicit Way(std::int32_t model = LVB_PATH_FREE_SPACE) { path.model = model; }

    const lvb_path *lent() {
        path.edges = edges.empty() ? nullptr : edges.data();
        path.edge_count = static_cast<std::uint32_t>(edges.size());
        path.edge_size = sizeof(lvb_edge);
        return &path;
    }
    lvb_status compute(double frequency_mhz, double distance_m) {
        return lvb_compute_path_loss(lent(), frequency_mhz, distance_m, &loss, &fault);
    }
    /// The whole loss; NaN where it is refused.
    double at(double frequency_mhz, double distance_m) {
        return compute(frequency_mhz, distance_m) == LVB_OK ? loss.loss_db : std::numeric_limits<double>::quiet_NaN();
    }
    Way &heights(double transmit_m, double receive_m) {
        path.transmit_height_m = transmit_m;
        path.receive_height_m = receive_m;
        return *this;
    }
    Way &ground(double permittivity, double conductivity, std::int32_t polarization = LVB_POLARIZATION_VERTICAL) {
        path.relative_permittivity = permittivity;
        path.conductivity_s_per_m = conductivity;
        path.polarization = polarization;
        return *this;
    }
};

inline Way two_ray(double transmit_m = 3.0, double receive_m = 1.5) {
    Way way(LVB_PATH_TWO_RAY);
    return way.heights(transmit_m, receive_m).ground(5.0, 0.03);
}
inline Way log_distance(double exponent = 3.0) {
    Way way(LVB_PATH_LOG_DISTANCE);
    way.path.exponent = exponent;
    return way;
}
inline Way indoor(double coefficient = 30.0) {
    Way way(LVB_PATH_INDOOR);
    way.path.power_loss_coefficient = coefficient;
    return way;
}
inline Way site(std::int32_t environment = LVB_ENVIRONMENT_CORRIDOR_IN_SIGHT) {
    Way way(LVB_PATH_SITE_GENERAL);
    way.path.environment = environment;
    return way;
}
inline Way radiating_cable() {
    Way way(LVB_PATH_RADIATING_CABLE);
    way.path.longitudinal_loss_db_per_100m = 4.0;
    way.path.coupling_loss_db = 65.0;
    return way;
}
inline std::vector<Way> one_of_each() {
    return {Way(), two_ray(), log_distance(), indoor(), site(), radiating_cable()};
}

/// Whether walls may stand in it: the indoor models hold them already.
inline bool takes_walls(const Way &way) {
    return way.path.model != LVB_PATH_INDOOR && way.path.model != LVB_PATH_SITE_GENERAL;
}
/// The same of edges; in sight none is held.
inline bool takes_edges(const Way &way) {
    if (way.path.model == LVB_PATH_SITE_GENERAL) return way.path.environment % 2 == 1;
    return way.path.model != LVB_PATH_INDOOR && way.path.model != LVB_PATH_RADIATING_CABLE;
}

/// A valid path, with edges, walls and floors now and then.
inline Way random_way(Random &random) {
    Way way = one_of_each()[random.below(6)];
    const bool cable = way.path.model == LVB_PATH_RADIATING_CABLE;
    if (way.path.model == LVB_PATH_TWO_RAY || (!cable && random.below(2))) {
        const double transmit_m = random.log_uniform(-1.0, 1.5), receive_m = random.log_uniform(-1.0, 1.5);
        way.heights(transmit_m, receive_m);
    }
    if (way.path.model == LVB_PATH_TWO_RAY) {
        const double permittivity = random.uniform(1.0, 30.0);
        const double conductivity = random.below(2) ? random.log_uniform(-4.0, 7.0) : 0.0;
        way.ground(permittivity, conductivity, static_cast<std::int32_t>(random.below(2)));
    }
    if (way.path.model == LVB_PATH_LOG_DISTANCE) {
        way.path.exponent = random.uniform(1.5, 5.0);
        if (random.below(2)) way.path.reference_loss_db = random.uniform(20.0, 60.0);
        if (random.below(2)) way.path.reference_distance_m = random.log_uniform(-1.0, 0.6);
    }
    if (way.path.model == LVB_PATH_INDOOR) way.path.power_loss_coefficient = random.uniform(15.0, 45.0);
    if (way.path.model == LVB_PATH_SITE_GENERAL) way.path.environment = 1 + static_cast<std::int32_t>(random.below(6));
    if (cable) {
        way.path.longitudinal_loss_db_per_100m = random.uniform(1.0, 20.0);
        way.path.coupling_loss_db = random.uniform(50.0, 90.0);
        if (random.below(2)) way.path.lateral_distance_m = random.log_uniform(-1.0, 2.0);
        if (way.path.lateral_distance_m != 0.0 || random.below(2)) way.path.exponent = random.uniform(0.5, 3.0);
    }
    if (takes_edges(way) && way.path.transmit_height_m != 0.0)
        for (std::uint64_t n = random.below(6); n > 0; --n)
            way.edges.push_back({random.log_uniform(-1.0, 3.0), random.uniform(-2.0, 20.0)});
    if ((way.path.model == LVB_PATH_LOG_DISTANCE || way.path.model == LVB_PATH_INDOOR) && random.below(2))
        way.path.standard_deviation_db = random.uniform(2.0, 14.0);
    if (takes_walls(way) && random.below(3) == 0) {
        way.path.wall_count = 1 + static_cast<std::uint32_t>(random.below(4));
        way.path.wall_loss_db = random.uniform(1.0, 15.0);
    }
    if (random.below(3) == 0) {
        way.path.floor_count = 1 + static_cast<std::uint32_t>(random.below(3));
        way.path.floor_loss_db = random.uniform(5.0, 25.0);
    }
    return way;
}

} // namespace proof
