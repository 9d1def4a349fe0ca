// Patterns asked for a direction, and two antennas that see each other.
#include "antenna/aperture.hpp"
#include "antenna/pointing.hpp"
#include "door/patterns.hpp"

namespace lvb::door {
namespace {

constexpr double none = -math::infinity; // the gain in a null

bool check_direction(Refusal &refusal, const antenna::Direction &direction) noexcept {
    return check_range(refusal, direction.azimuth_deg, turn_range.minimum, turn_range.maximum, {},
                       LVB_FIELD_AZIMUTH_DEG) &&
           check_range(refusal, direction.elevation_deg, elevation_range.minimum, elevation_range.maximum, {},
                       LVB_FIELD_ELEVATION_DEG);
}

bool compute_gain(Refusal &refusal, const lvb_pattern *lent, const antenna::Direction &direction,
                  lvb_pattern_gain *result) noexcept {
    antenna::Pattern pattern;
    if (!take_pattern(refusal, lent, LVB_STAGE_NONE, pattern) || !check_direction(refusal, direction) ||
        !check_result(refusal, result, LVB_STRUCT_PATTERN_GAIN, LVB_FIELD_RESULT))
        return false;
    lvb_pattern_gain out{};
    out.gain_dbi = antenna::gain_dbi(pattern, direction);
    out.maximum_dbi = antenna::maximum_dbi(pattern);
    out.notes = (out.gain_dbi == none ? std::uint32_t{LVB_NOTE_NULL} : 0u) |
                (pattern.extrapolated ? std::uint32_t{LVB_NOTE_EXTRAPOLATED} : 0u);
    give(result, out);
    return true;
}

// An antenna as the model of pointing takes it.
struct Placed {
    antenna::Vector place;
    antenna::Axes axes;
    antenna::Pattern pattern;
    double far_field_distance_m;
};

bool take_antenna(Refusal &refusal, const lvb_antenna *lent, std::int32_t stage, double frequency_mhz,
                  Placed &placed) noexcept {
    const Place place{LVB_STRUCT_ANTENNA, stage};
    lvb_antenna in{};
    if (!take(refusal, lent, in, place, stage == LVB_STAGE_TRANSMIT ? LVB_FIELD_TRANSMIT : LVB_FIELD_RECEIVE) ||
        !check_antenna(refusal, in, place) ||
        (in.pattern != nullptr && !take_pattern(refusal, in.pattern, stage, placed.pattern)) ||
        !check_polarization(refusal, in, in.pattern != nullptr ? &placed.pattern : nullptr, place))
        return false;
    placed.place = {in.x_m, in.y_m, in.z_m};
    placed.axes = axes_of(in);
    placed.far_field_distance_m = antenna::far_field_distance_m(frequency_mhz, in.largest_dimension_m);
    return true;
}

std::uint32_t notes_of(const lvb_pointing &pointing, double frequency_mhz) noexcept {
    const bool near_field = units::is_near_field(frequency_mhz, pointing.distance_m);
    const bool inside = pointing.distance_m < pointing.far_field_distance_m;
    const bool null = pointing.transmit_gain_dbi == none || pointing.receive_gain_dbi == none;
    return (near_field ? std::uint32_t{LVB_NOTE_NEAR_FIELD} : 0u) |
           (inside ? std::uint32_t{LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE} : 0u) |
           (null ? std::uint32_t{LVB_NOTE_NULL} : 0u);
}

bool compute_pointing(Refusal &refusal, const lvb_antenna *transmit, const lvb_antenna *receive, double frequency_mhz,
                      lvb_pointing *pointing) noexcept {
    Placed from, to;
    if (!check_field(refusal, frequency_mhz, frequency_range, {}, LVB_FIELD_FREQUENCY_MHZ) ||
        !take_antenna(refusal, transmit, LVB_STAGE_TRANSMIT, frequency_mhz, from) ||
        !take_antenna(refusal, receive, LVB_STAGE_RECEIVE, frequency_mhz, to) ||
        !check_result(refusal, pointing, LVB_STRUCT_POINTING, LVB_FIELD_POINTING))
        return false;
    const antenna::Vector out = to.place - from.place, back = from.place - to.place;
    lvb_pointing told{};
    told.distance_m = antenna::length(out);
    if (!check_range(refusal, told.distance_m, distance_range.minimum, distance_range.maximum, {LVB_STRUCT_POINTING},
                     LVB_FIELD_DISTANCE_M))
        return false;
    const antenna::Direction transmit_direction = antenna::direction_of(from.axes, out);
    const antenna::Direction receive_direction = antenna::direction_of(to.axes, back);
    told.transmit_azimuth_deg = transmit_direction.azimuth_deg;
    told.transmit_elevation_deg = transmit_direction.elevation_deg;
    told.receive_azimuth_deg = receive_direction.azimuth_deg;
    told.receive_elevation_deg = receive_direction.elevation_deg;
    told.transmit_gain_dbi = antenna::gain_dbi(from.pattern, transmit_direction);
    told.receive_gain_dbi = antenna::gain_dbi(to.pattern, receive_direction);
    told.polarization_loss_db = antenna::polarization_loss_db(from.axes, to.axes, out);
    told.far_field_distance_m =
        from.far_field_distance_m > to.far_field_distance_m ? from.far_field_distance_m : to.far_field_distance_m;
    told.notes = notes_of(told, frequency_mhz);
    if (from.pattern.extrapolated || to.pattern.extrapolated) told.notes |= LVB_NOTE_EXTRAPOLATED;
    give(pointing, told);
    return true;
}

} // namespace

bool check_antenna(Refusal &refusal, const lvb_antenna &in, Place place) noexcept {
    struct Field {
        std::int32_t id;
        double lvb_antenna::*member;
    };
    static constexpr Field numbers[] = {{LVB_FIELD_X_M, &lvb_antenna::x_m},
                                        {LVB_FIELD_Y_M, &lvb_antenna::y_m},
                                        {LVB_FIELD_Z_M, &lvb_antenna::z_m},
                                        {LVB_FIELD_AZIMUTH_DEG, &lvb_antenna::azimuth_deg},
                                        {LVB_FIELD_TILT_DEG, &lvb_antenna::tilt_deg},
                                        {LVB_FIELD_ROLL_DEG, &lvb_antenna::roll_deg},
                                        {LVB_FIELD_POLARIZATION_DEG, &lvb_antenna::polarization_deg},
                                        {LVB_FIELD_ELLIPTICITY, &lvb_antenna::ellipticity},
                                        {LVB_FIELD_LARGEST_DIMENSION_M, &lvb_antenna::largest_dimension_m}};
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    for (const Field &number : numbers)
        if (!check_field(refusal, in.*number.member, *struct_range(LVB_STRUCT_ANTENNA, number.id), place, number.id))
            return false;
    return true;
}

antenna::Axes axes_of(const lvb_antenna &in) noexcept {
    return antenna::turned({in.azimuth_deg, in.tilt_deg, in.roll_deg, in.polarization_deg, in.ellipticity});
}

// A dipole's field lies along its axis: another polarization would contradict the pattern. It is turned by its roll.
// A helix is never linear, and only the host knows in which sense it is wound.
bool check_polarization(Refusal &refusal, const lvb_antenna &in, const antenna::Pattern *pattern,
                        Place place) noexcept {
    if (pattern == nullptr) return true;
    if (pattern->circular && in.ellipticity == 0.0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_ELLIPTICITY, 0.0, -1.0, 1.0);
    if (pattern->shape != antenna::Shape::half_wave_dipole) return true;
    if (in.polarization_deg != 0.0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_POLARIZATION_DEG, in.polarization_deg);
    return in.ellipticity == 0.0 || refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_ELLIPTICITY, in.ellipticity);
}

} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_pattern_gain(const lvb_pattern *pattern, double azimuth_deg, double elevation_deg,
                                    lvb_pattern_gain *result, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return compute_gain(refusal, pattern, {azimuth_deg, elevation_deg}, result);
    });
}

lvb_status lvb_compute_pointing(const lvb_antenna *transmit, const lvb_antenna *receive, double frequency_mhz,
                                lvb_pointing *pointing, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return compute_pointing(refusal, transmit, receive, frequency_mhz, pointing);
    });
}

} // extern "C"
