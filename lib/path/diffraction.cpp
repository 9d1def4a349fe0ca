#include "path/diffraction.hpp"

namespace lvb::path {
namespace {

// An edge on a path between two points, and its parameter there.
struct Found {
    Edge edge;
    double parameter;
};

double parameter_of(const Edge &edge, const Edge &from, const Edge &to, double frequency_mhz) noexcept {
    const double before = edge.distance_m - from.distance_m;
    const double behind = to.distance_m - edge.distance_m;
    const double line = from.height_m + (to.height_m - from.height_m) * (before / (before + behind));
    return knife_edge_parameter(edge.height_m - line, fresnel_radius_m(frequency_mhz, before, behind));
}

// How far from the middle of a path.
double off_middle_m(const Edge &edge, const Edge &from, const Edge &to) noexcept {
    return math::abs((edge.distance_m - from.distance_m) - (to.distance_m - edge.distance_m));
}

// The edge with the largest parameter between two points; of equal ones that nearest to the middle, so that the order
// of the edges does not matter. Its parameter is -infinity where there is none.
Found principal(const Edges &edges, const Edge &from, const Edge &to, double frequency_mhz) noexcept {
    Found found{{}, -math::infinity};
    for (std::size_t i = 0; i < edges.count; ++i) {
        const Edge edge = edges[i];
        if (!(edge.distance_m > from.distance_m && edge.distance_m < to.distance_m)) continue;
        const double parameter = parameter_of(edge, from, to, frequency_mhz);
        if (parameter > found.parameter ||
            (parameter == found.parameter && off_middle_m(edge, from, to) < off_middle_m(found.edge, from, to)))
            found = {edge, parameter};
    }
    return found;
}

// P.526, double isolated edges: what to take off the second edge's loss, with a, b and c the distances from the antenna
// on the principal edge's side to that edge, to the second and to the other antenna, and p and q the edges' parameters
// over the whole path: (12 - 20 log10(2 / (1 - alpha / 180 deg))) (q / p)^2p, tan^2 alpha = b (a + b + c) / (a c).
double correction_db(double a, double b, double c, double p, double q) noexcept {
    const double alpha_deg = math::arctangent_deg(math::sqrt(b / a * ((a + b + c) / c)), 1.0);
    const double whole = 12.0 - math::twenty_log10(2.0 / (1.0 - alpha_deg / 180.0));
    if (!(p > 0.0)) return whole;
    // The power is stated for q > 0 only. A ratio of no less than this keeps the loss continuous where an edge sinks
    // below the line of sight.
    constexpr double least_ratio = 0.001;
    const double ratio = q / p > least_ratio ? q / p : least_ratio;
    return whole * math::power(ratio, 2.0 * p);
}

// Loss at the second edge, between the principal one and an antenna.
double second_loss_db(const Edges &edges, const Found &main, const Edge &antenna, const Edge &other,
                      double frequency_mhz) noexcept {
    const bool ahead = antenna.distance_m > main.edge.distance_m;
    const Found second = ahead ? principal(edges, main.edge, antenna, frequency_mhz)
                               : principal(edges, antenna, main.edge, frequency_mhz);
    const double loss = knife_edge_loss_db(second.parameter);
    if (loss == 0.0) return 0.0;
    const double a = math::abs(main.edge.distance_m - other.distance_m);
    const double b = math::abs(second.edge.distance_m - main.edge.distance_m);
    const double c = math::abs(antenna.distance_m - second.edge.distance_m);
    const double q = ahead ? parameter_of(second.edge, other, antenna, frequency_mhz)
                           : parameter_of(second.edge, antenna, other, frequency_mhz);
    const double corrected = loss - correction_db(a, b, c, main.parameter, q);
    return corrected > 0.0 ? corrected : 0.0;
}

} // namespace

double diffraction_loss_db(const Edges &edges, double frequency_mhz, double transmit_height_m, double receive_height_m,
                           double distance_m) noexcept {
    const Edge transmitter{0.0, transmit_height_m};
    const Edge receiver{distance_m, receive_height_m};
    const Found main = principal(edges, transmitter, receiver, frequency_mhz);
    const double loss = knife_edge_loss_db(main.parameter);
    if (loss == 0.0) return 0.0;
    return (loss + second_loss_db(edges, main, transmitter, receiver, frequency_mhz)) +
           second_loss_db(edges, main, receiver, transmitter, frequency_mhz);
}

} // namespace lvb::path
