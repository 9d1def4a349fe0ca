#include "door/patterns.hpp"

#include "antenna/cosine.hpp"

namespace lvb::door {
namespace {

constexpr Range cut_gain{-200.0, 60.0, false};
constexpr Range body_loss{0.0, 200.0, false};
constexpr double steepest_step_db = 100.0;

// Angles and what belongs to them, as a table lends them.
struct Rows {
    std::uint32_t count;
    const double *angle_deg;
    const double *values;
    std::int32_t angle_field, value_field;
    Range angles, range;
};

bool check_count(Refusal &refusal, const Rows &rows, Place place) noexcept {
    if (rows.count == 0) return refuse(refusal, LVB_E_TABLE_EMPTY, place, LVB_FIELD_ROW_COUNT, 0.0, 1.0, LVB_MAX_ROWS);
    if (rows.count > LVB_MAX_ROWS)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_ROW_COUNT, rows.count, 1.0, LVB_MAX_ROWS);
    if (rows.angle_deg == nullptr) return refuse(refusal, LVB_E_NULL, place, rows.angle_field);
    return rows.values != nullptr || refuse(refusal, LVB_E_NULL, place, rows.value_field);
}

bool check_step(Refusal &refusal, const Rows &rows, double before, double value, Place place) noexcept {
    const double least = before - steepest_step_db, most = before + steepest_step_db;
    return (value >= least && value <= most) ||
           refuse(refusal, LVB_E_TABLE_TOO_STEEP, place, rows.value_field, value, least, most);
}

bool check_rows(Refusal &refusal, const Rows &rows, Place &place) noexcept {
    if (!check_count(refusal, rows, place)) return false;
    const double *angle = rows.angle_deg;
    for (std::uint32_t i = 0; i < rows.count; ++i) {
        place.row = static_cast<std::int32_t>(i);
        if (!check_range(refusal, angle[i], rows.angles.minimum, rows.angles.maximum, place, rows.angle_field) ||
            !check_range(refusal, rows.values[i], rows.range.minimum, rows.range.maximum, place, rows.value_field))
            return false;
        if (i == 0) continue;
        if (!(angle[i] > angle[i - 1]))
            return refuse(refusal, angle[i] == angle[i - 1] ? LVB_E_TABLE_DUPLICATE : LVB_E_TABLE_UNSORTED, place,
                          rows.angle_field, angle[i], angle[i - 1], rows.angles.maximum);
        if (!check_step(refusal, rows, rows.values[i - 1], rows.values[i], place)) return false;
    }
    return true;
}

// Rows that close to a circle: they span less than it, and the seam from the last row to the first is no steeper than
// the rest; what is wrong there is told of the first row.
bool check_circle(Refusal &refusal, const Rows &rows, Place place) noexcept {
    if (!check_rows(refusal, rows, place)) return false;
    const double first = rows.angle_deg[0], last = rows.angle_deg[rows.count - 1];
    if (last > first + 360.0)
        return refuse(refusal, LVB_E_ABOVE_RANGE, place, rows.angle_field, last, first, first + 360.0);
    place.row = 0;
    if (last == first + 360.0)
        return refuse(refusal, LVB_E_TABLE_DUPLICATE, place, rows.angle_field, first, last, rows.angles.maximum);
    return check_step(refusal, rows, rows.values[rows.count - 1], rows.values[0], place);
}

bool take_azimuth_cut(Refusal &refusal, const lvb_azimuth_cut *lent, std::int32_t stage, antenna::Cut &cut) noexcept {
    const Place place{LVB_STRUCT_AZIMUTH_CUT, stage};
    lvb_azimuth_cut in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_AZIMUTH_CUT) ||
        !check_circle(
            refusal,
            {in.row_count, in.azimuth_deg, in.gain_db, LVB_FIELD_AZIMUTH_DEG, LVB_FIELD_GAIN_DB, turn_range, cut_gain},
            place))
        return false;
    cut = {in.azimuth_deg, in.gain_db, in.row_count};
    return true;
}

bool take_elevation_cut(Refusal &refusal, const lvb_elevation_cut *lent, std::int32_t stage,
                        antenna::Cut &cut) noexcept {
    Place place{LVB_STRUCT_ELEVATION_CUT, stage};
    lvb_elevation_cut in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_ELEVATION_CUT) ||
        !check_rows(refusal,
                    {in.row_count, in.elevation_deg, in.gain_db, LVB_FIELD_ELEVATION_DEG, LVB_FIELD_GAIN_DB,
                     elevation_range, cut_gain},
                    place))
        return false;
    const double last = in.elevation_deg[in.row_count - 1];
    if (!check_range(refusal, last, elevation_range.maximum, elevation_range.maximum, place, LVB_FIELD_ELEVATION_DEG))
        return false;
    place.row = 0;
    if (!check_range(refusal, in.elevation_deg[0], elevation_range.minimum, elevation_range.minimum, place,
                     LVB_FIELD_ELEVATION_DEG))
        return false;
    cut = {in.elevation_deg, in.gain_db, in.row_count};
    return true;
}

// The fields that belong to the kind lie in their ranges, and those that it needs are given; the others are empty.
bool check_fields(Refusal &refusal, const lvb_pattern &in, Place place) noexcept {
    struct Field {
        std::int32_t id;
        double value;
    };
    const Field numbers[] = {{LVB_FIELD_GAIN_DBI, in.gain_dbi},
                             {LVB_FIELD_BEAM_WIDTH_DEG, in.beam_width_deg},
                             {LVB_FIELD_FRONT_TO_BACK_DB, in.front_to_back_db},
                             {LVB_FIELD_TURNS, in.turns},
                             {LVB_FIELD_SPACING_WAVELENGTHS, in.spacing_wavelengths},
                             {LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS, in.circumference_wavelengths}};
    if (in.kind < LVB_PATTERN_ISOTROPIC || in.kind > LVB_PATTERN_HELIX)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_KIND, in.kind, LVB_PATTERN_ISOTROPIC,
                      LVB_PATTERN_HELIX);
    for (const Field &number : numbers)
        if (!check_used(refusal, number.value, pattern_range(in.kind, number.id), place, number.id)) return false;
    if (in.kind == LVB_PATTERN_CUTS) return true;
    if (in.azimuth_cut != nullptr) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_AZIMUTH_CUT);
    return in.elevation_cut == nullptr || refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_ELEVATION_CUT);
}

bool take_cosine(Refusal &refusal, const lvb_pattern &in, Place place, antenna::Pattern &pattern) noexcept {
    pattern.shape = antenna::Shape::cosine;
    if (in.beam_width_deg != 0.0) {
        pattern.exponent = antenna::cosine_exponent_from_beam_width_deg(in.beam_width_deg);
        // A gain beside the width was measured, losses and all; otherwise the antenna counts as lossless.
        if (in.gain_dbi == 0.0) pattern.gain_dbi = antenna::gain_dbi_from_cosine_exponent(pattern.exponent);
        return true;
    }
    const Range &gain = *pattern_range(in.kind, LVB_FIELD_GAIN_DBI);
    if (in.gain_dbi == 0.0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_GAIN_DBI, 0.0, gain.minimum, gain.maximum);
    pattern.exponent = antenna::cosine_exponent_from_gain_dbi(in.gain_dbi);
    return true;
}

bool take_cuts(Refusal &refusal, const lvb_pattern &in, Place place, antenna::Pattern &pattern) noexcept {
    if (in.azimuth_cut == nullptr && in.elevation_cut == nullptr)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_AZIMUTH_CUT, 0.0);
    pattern.shape = antenna::Shape::cuts;
    return (in.azimuth_cut == nullptr || take_azimuth_cut(refusal, in.azimuth_cut, place.stage, pattern.azimuth)) &&
           (in.elevation_cut == nullptr ||
            take_elevation_cut(refusal, in.elevation_cut, place.stage, pattern.elevation));
}

bool take_shape(Refusal &refusal, const lvb_pattern &in, Place place, antenna::Pattern &pattern) noexcept {
    switch (in.kind) {
    case LVB_PATTERN_HALF_WAVE_DIPOLE:
        pattern.shape = antenna::Shape::half_wave_dipole;
        return true;
    case LVB_PATTERN_COSINE:
        return take_cosine(refusal, in, place, pattern);
    case LVB_PATTERN_CUTS:
        return take_cuts(refusal, in, place, pattern);
    case LVB_PATTERN_HELIX:
        pattern = antenna::helix(in.turns, in.spacing_wavelengths, in.circumference_wavelengths);
        return true;
    default:
        return true;
    }
}

} // namespace

bool take_pattern(Refusal &refusal, const lvb_pattern *lent, std::int32_t stage, antenna::Pattern &pattern) noexcept {
    const Place place{LVB_STRUCT_PATTERN, stage};
    lvb_pattern in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_PATTERN) || !check_fields(refusal, in, place)) return false;
    pattern = {};
    pattern.gain_dbi = in.gain_dbi;
    if (!take_shape(refusal, in, place, pattern)) return false;
    if (in.front_to_back_db != 0.0) pattern.floor_dbi = pattern.gain_dbi - in.front_to_back_db;
    return true;
}

bool take_body_table(Refusal &refusal, const lvb_body_table *lent, std::int32_t stage, std::int32_t argument,
                     body::Table &table) noexcept {
    const Place place{LVB_STRUCT_BODY_TABLE, stage};
    lvb_body_table in{};
    if (!take(refusal, lent, in, place, argument) ||
        !check_circle(
            refusal,
            {in.row_count, in.facing_deg, in.loss_db, LVB_FIELD_FACING_DEG, LVB_FIELD_LOSS_DB, turn_range, body_loss},
            place))
        return false;
    table = {in.facing_deg, in.loss_db, in.row_count};
    return true;
}

} // namespace lvb::door
