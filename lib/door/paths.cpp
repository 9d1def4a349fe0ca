#include "door/paths.hpp"

namespace lvb::door {
namespace {

using path::Environment;
using path::Model;
using path::Path;

static_assert(static_cast<int>(Model::radiating_cable) == LVB_PATH_RADIATING_CABLE);
static_assert(static_cast<int>(Environment::industrial_out_of_sight) == LVB_ENVIRONMENT_INDUSTRIAL_OUT_OF_SIGHT);
static_assert(sizeof(lvb_edge) == sizeof(path::Edge));

// Sets of models, a bit for each.
constexpr std::uint32_t bit_of(std::int32_t model) noexcept { return 1u << model; }
constexpr std::uint32_t none = 0, all = (bit_of(LVB_PATH_RADIATING_CABLE) << 1) - 1;
constexpr std::uint32_t two_ray = bit_of(LVB_PATH_TWO_RAY), log_distance = bit_of(LVB_PATH_LOG_DISTANCE),
                        indoor = bit_of(LVB_PATH_INDOOR), site_general = bit_of(LVB_PATH_SITE_GENERAL),
                        cable = bit_of(LVB_PATH_RADIATING_CABLE);
// The indoor figures were measured through the walls and over the obstacles of one floor: to add some counts them
// twice.
constexpr std::uint32_t walled = all & ~(indoor | site_general);

// A number of lvb_path, and the models that use and need it.
struct Number {
    std::int32_t id;
    double lvb_path::*member;
    Range range;
    std::uint32_t used, needed;
};
constexpr Range height{0.01, 1000.0, false};
constexpr Range obstacle{0.0, 100.0, false};
constexpr Number numbers[] = {
    {LVB_FIELD_TRANSMIT_HEIGHT_M, &lvb_path::transmit_height_m, height, all & ~cable, two_ray},
    {LVB_FIELD_RECEIVE_HEIGHT_M, &lvb_path::receive_height_m, height, all & ~cable, two_ray},
    {LVB_FIELD_RELATIVE_PERMITTIVITY, &lvb_path::relative_permittivity, {1.0, 1000.0, false}, two_ray, two_ray},
    {LVB_FIELD_CONDUCTIVITY_S_PER_M, &lvb_path::conductivity_s_per_m, {0.0, 1e8, false}, two_ray, none},
    {LVB_FIELD_EXPONENT, &lvb_path::exponent, {0.1, 10.0, false}, log_distance | cable, log_distance},
    {LVB_FIELD_REFERENCE_DISTANCE_M, &lvb_path::reference_distance_m, {0.01, 1e6, false}, log_distance, none},
    {LVB_FIELD_REFERENCE_LOSS_DB, &lvb_path::reference_loss_db, {0.001, 300.0, false}, log_distance, none},
    {LVB_FIELD_POWER_LOSS_COEFFICIENT, &lvb_path::power_loss_coefficient, {1.0, 100.0, false}, indoor, indoor},
    {LVB_FIELD_FLOOR_LOSS_DB, &lvb_path::floor_loss_db, obstacle, all, none},
    {LVB_FIELD_WALL_LOSS_DB, &lvb_path::wall_loss_db, obstacle, walled, none},
    {LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M,
     &lvb_path::longitudinal_loss_db_per_100m,
     {0.01, 1000.0, false},
     cable,
     cable},
    {LVB_FIELD_COUPLING_LOSS_DB, &lvb_path::coupling_loss_db, {10.0, 200.0, false}, cable, cable},
    {LVB_FIELD_LATERAL_DISTANCE_M, &lvb_path::lateral_distance_m, {0.1, 1000.0, false}, cable, none},
    {LVB_FIELD_STANDARD_DEVIATION_DB,
     &lvb_path::standard_deviation_db,
     {0.1, 30.0, false},
     log_distance | indoor,
     none},
};
constexpr Range count_range{0.0, 100.0, false};
constexpr Range edge_distance{0.01, 1e9, true};
constexpr Range edge_height{-1000.0, 1000.0, false};

bool check_choice(Refusal &refusal, std::int32_t value, std::int32_t last, Place place, std::int32_t field) noexcept {
    return (value >= 0 && value <= last) || refuse(refusal, LVB_E_UNKNOWN_VALUE, place, field, value, 0.0, last);
}

bool check_choices(Refusal &refusal, const lvb_path &in, Place place) noexcept {
    if (!check_choice(refusal, in.model, LVB_PATH_RADIATING_CABLE, place, LVB_FIELD_MODEL) ||
        !check_choice(refusal, in.environment, path::environments, place, LVB_FIELD_ENVIRONMENT) ||
        !check_choice(refusal, in.polarization, LVB_POLARIZATION_HORIZONTAL, place, LVB_FIELD_POLARIZATION))
        return false;
    const bool by_site = in.model == LVB_PATH_SITE_GENERAL;
    if (by_site && in.environment == LVB_ENVIRONMENT_NONE)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_ENVIRONMENT, 0.0, 1.0, path::environments);
    if (!by_site && in.environment != LVB_ENVIRONMENT_NONE)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_ENVIRONMENT, in.environment);
    if (in.model != LVB_PATH_TWO_RAY && in.polarization != 0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_POLARIZATION, in.polarization);
    return true;
}

bool check_numbers(Refusal &refusal, const lvb_path &in, Heights heights, Place place) noexcept {
    const std::uint32_t model = bit_of(in.model);
    const bool has_heights = in.transmit_height_m != 0.0 || in.receive_height_m != 0.0 || in.edge_count != 0;
    for (const Number &number : numbers) {
        const double value = in.*number.member;
        const bool is_height = number.id == LVB_FIELD_TRANSMIT_HEIGHT_M || number.id == LVB_FIELD_RECEIVE_HEIGHT_M;
        if ((number.used & model) == 0) {
            if (value != 0.0) return refuse_unused(refusal, value, place, number.id);
        } else if (value != 0.0) {
            if (!check_range(refusal, value, number.range.minimum, number.range.maximum, place, number.id))
                return false;
        } else if (is_height ? has_heights || (heights == Heights::of_path && (number.needed & model) != 0)
                             : (number.needed & model) != 0) {
            return refuse(refusal, LVB_E_MISSING, place, number.id, 0.0, number.range.minimum, number.range.maximum);
        }
    }
    return true;
}

// So many walls or floors, each of a loss: both are given, or none.
bool check_obstacles(Refusal &refusal, std::uint32_t count, std::int32_t count_field, double loss_db,
                     std::int32_t loss_field, Place place) noexcept {
    if (!check_field(refusal, count, count_range, place, count_field)) return false;
    if (count == 0 && loss_db != 0.0)
        return refuse(refusal, LVB_E_MISSING, place, count_field, 0.0, 1.0, count_range.maximum);
    return count == 0 || loss_db != 0.0 ||
           refuse(refusal, LVB_E_MISSING, place, loss_field, 0.0, obstacle.minimum, obstacle.maximum);
}

// Two metres from a radiating cable its coupling loss holds as it was measured; elsewhere the fall-off across is
// needed.
bool check_across(Refusal &refusal, const lvb_path &in, Place place) noexcept {
    const bool elsewhere = in.lateral_distance_m != 0.0 && in.lateral_distance_m != path::coupling_distance_m;
    if (!elsewhere || in.exponent != 0.0) return true;
    const Range &range = *path_range(LVB_FIELD_EXPONENT);
    return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_EXPONENT, 0.0, range.minimum, range.maximum);
}

bool check_walls(Refusal &refusal, const lvb_path &in, Place place) noexcept {
    return in.wall_count == 0 || (walled & bit_of(in.model)) != 0 ||
           refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_WALL_COUNT, in.wall_count);
}

// Whether the model's figures hold obstacles across the path already.
bool holds_edges(const lvb_path &in) noexcept {
    return in.model == LVB_PATH_INDOOR || in.environment == LVB_ENVIRONMENT_OFFICE_OUT_OF_SIGHT ||
           in.environment == LVB_ENVIRONMENT_CORRIDOR_OUT_OF_SIGHT ||
           in.environment == LVB_ENVIRONMENT_INDUSTRIAL_OUT_OF_SIGHT;
}

bool take_edges(Refusal &refusal, const lvb_path &in, Place place, path::Edges &edges) noexcept {
    edges = {in.edges, in.edge_size, in.edge_count};
    if (in.edge_count == 0)
        return check_counted(refusal, in.edges, LVB_FIELD_EDGES, 0, LVB_FIELD_EDGE_COUNT, LVB_MAX_EDGES, place);
    if (in.model == LVB_PATH_RADIATING_CABLE || holds_edges(in))
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_EDGE_COUNT, in.edge_count);
    if (in.edge_count > LVB_MAX_EDGES)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_EDGE_COUNT, in.edge_count, 0.0, LVB_MAX_EDGES);
    if (in.edges == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_EDGES);
    if (!check_size(refusal, in.edge_size, sizeof(lvb_edge), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_EDGE_SIZE))
        return false;
    for (std::uint32_t i = 0; i < in.edge_count; ++i) {
        const Place here{LVB_STRUCT_EDGE, place.stage, static_cast<std::int32_t>(i)};
        lvb_edge edge;
        if (!take_element(refusal, in.edges, in.edge_size, here, edge) ||
            !check_field(refusal, edge.distance_m, edge_distance, here, LVB_FIELD_DISTANCE_M) ||
            !check_range(refusal, edge.height_m, edge_height.minimum, edge_height.maximum, here, LVB_FIELD_HEIGHT_M))
            return false;
    }
    return true;
}

bool compute(Refusal &refusal, const lvb_path *lent, double frequency_mhz, double distance_m,
             lvb_path_loss *loss) noexcept {
    Path path;
    if (!take_path(refusal, lent, -1, Heights::of_path, path) ||
        !check_result(refusal, loss, LVB_STRUCT_PATH_LOSS, LVB_FIELD_LOSS) ||
        !check_field(refusal, frequency_mhz, frequency_range, {}, LVB_FIELD_FREQUENCY_MHZ) ||
        !check_field(refusal, distance_m, {distance_range.minimum, distance_range.maximum, true}, {},
                     LVB_FIELD_DISTANCE_M) ||
        !check_reach(refusal, path, frequency_mhz, {}) ||
        !check_reach_of_distance(refusal, path, distance_m, {}, LVB_FIELD_DISTANCE_M))
        return false;
    const path::Loss found = path::loss(path, frequency_mhz, distance_m);
    lvb_path_loss out{};
    out.notes = found.near_field ? std::uint32_t{LVB_NOTE_NEAR_FIELD} : 0u;
    out.loss_db = found.db;
    out.base_loss_db = found.base_db;
    out.diffraction_loss_db = found.diffraction_db;
    out.obstacle_loss_db = found.obstacles_db;
    out.free_space_loss_db = found.free_space_db;
    out.standard_deviation_db = found.standard_deviation_db;
    out.break_point_m = found.break_point_m;
    out.grazing_angle_deg = found.grazing_deg;
    out.reflection_magnitude = found.reflection;
    out.reflection_phase_deg = found.reflection_phase_deg;
    give(loss, out);
    return true;
}

} // namespace

const Range *path_range(std::int32_t field) noexcept {
    static constexpr Range edge_count{0.0, LVB_MAX_EDGES, false};
    for (const Number &number : numbers)
        if (number.id == field) return &number.range;
    if (field == LVB_FIELD_FLOOR_COUNT || field == LVB_FIELD_WALL_COUNT) return &count_range;
    return field == LVB_FIELD_EDGE_COUNT ? &edge_count : nullptr;
}

const Range *edge_range(std::int32_t field) noexcept {
    if (field == LVB_FIELD_DISTANCE_M) return &edge_distance;
    return field == LVB_FIELD_HEIGHT_M ? &edge_height : nullptr;
}

bool take_path(Refusal &refusal, const lvb_path *lent, std::int32_t stage, Heights heights, Path &path) noexcept {
    const Place place{LVB_STRUCT_PATH, stage};
    lvb_path in;
    if (!take(refusal, lent, in, place, LVB_FIELD_PATH) || !check_choices(refusal, in, place) ||
        !take_edges(refusal, in, place, path.edges) || !check_numbers(refusal, in, heights, place) ||
        !check_across(refusal, in, place) ||
        !check_obstacles(refusal, in.floor_count, LVB_FIELD_FLOOR_COUNT, in.floor_loss_db, LVB_FIELD_FLOOR_LOSS_DB,
                         place) ||
        !check_walls(refusal, in, place) ||
        !check_obstacles(refusal, in.wall_count, LVB_FIELD_WALL_COUNT, in.wall_loss_db, LVB_FIELD_WALL_LOSS_DB, place))
        return false;
    path.model = static_cast<Model>(in.model);
    path.environment = static_cast<Environment>(in.environment);
    path.has_heights = in.transmit_height_m != 0.0;
    path.transmit_height_m = in.transmit_height_m;
    path.receive_height_m = in.receive_height_m;
    path.ground = {in.relative_permittivity, in.conductivity_s_per_m, in.polarization == LVB_POLARIZATION_HORIZONTAL};
    path.exponent = in.exponent;
    path.reference_distance_m = or_else(in.reference_distance_m, 1.0);
    path.reference_loss_db = in.reference_loss_db;
    path.power_loss_coefficient = in.power_loss_coefficient;
    path.standard_deviation_db = or_else(in.standard_deviation_db, math::not_a_number);
    path.cable = {in.longitudinal_loss_db_per_100m, in.coupling_loss_db,
                  or_else(in.lateral_distance_m, path::coupling_distance_m), in.exponent};
    path.obstacles_db = in.floor_count * in.floor_loss_db + in.wall_count * in.wall_loss_db;
    return true;
}

bool check_reach(Refusal &refusal, const Path &path, double frequency_mhz, Place place) noexcept {
    const path::Reach reach = path::reach_of(path);
    return check_range(refusal, frequency_mhz, reach.lowest_mhz, reach.highest_mhz, place, LVB_FIELD_FREQUENCY_MHZ);
}

bool check_reach_of_distance(Refusal &refusal, const Path &path, double distance_m, Place place,
                             std::int32_t field) noexcept {
    const path::Reach reach = path::reach_of(path);
    return check_range(refusal, path::direct_m(path, distance_m), reach.nearest_m, reach.farthest_m, place, field);
}

} // namespace lvb::door

extern "C" lvb_status lvb_compute_path_loss(const lvb_path *path, double frequency_mhz, double distance_m,
                                            lvb_path_loss *loss, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault,
                  [&](Refusal &refusal) noexcept { return compute(refusal, path, frequency_mhz, distance_m, loss); });
}
