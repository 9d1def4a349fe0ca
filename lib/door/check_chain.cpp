#include "door/check_chain.hpp"

#include "door/fields.hpp"
#include "door/paths.hpp"
#include "door/patterns.hpp"
#include "door/tables.hpp"
#include "tables/cables.hpp"

namespace lvb::door {
namespace {

using chain::Kind;

static_assert(static_cast<int>(Kind::source) == LVB_KIND_SOURCE &&
              static_cast<int>(Kind::receiver) == LVB_KIND_RECEIVER);
static_assert(static_cast<int>(chain::Basis::formula) == LVB_BASIS_FORMULA);
static_assert(static_cast<int>(chain::Reference::isotropic) == LVB_REFERENCE_ISOTROPIC);
static_assert(static_cast<int>(chain::Zone::overload) == LVB_ZONE_OVERLOAD);
static_assert(static_cast<int>(chain::Verdict::drops_out_and_overloads) == LVB_VERDICT_DROPS_OUT_AND_OVERLOADS);
static_assert(static_cast<int>(chain::Decision::near_ceiling) == LVB_DECIDED_BY_NEAR_CEILING);

constexpr std::uint32_t window_bits = LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING;
constexpr std::uint32_t noise_bits = LVB_STATED_NOISE_FIGURE | LVB_STATED_INTERCEPT | LVB_STATED_COMPRESSION;

// Which bits of `stated` a kind of stage may set.
constexpr std::uint32_t stated_bits(std::int32_t kind) noexcept {
    switch (kind) {
    case LVB_KIND_PASSIVE:
        return LVB_STATED_INTERCEPT | LVB_STATED_COMPRESSION;
    case LVB_KIND_AMPLIFIER:
        return noise_bits;
    case LVB_KIND_RECEIVER:
        return window_bits | noise_bits;
    default:
        return 0;
    }
}

struct Field {
    std::int32_t id;
    double lvb_stage::*member;
};
constexpr Field numbers[] = {
    {LVB_FIELD_LEVEL_DBM, &lvb_stage::level_dbm},
    {LVB_FIELD_GAIN_DB, &lvb_stage::gain_db},
    {LVB_FIELD_TOLERANCE_DB, &lvb_stage::tolerance_db},
    {LVB_FIELD_LENGTH_M, &lvb_stage::length_m},
    {LVB_FIELD_CONNECTOR_LOSS_DB, &lvb_stage::connector_loss_db},
    {LVB_FIELD_FLOOR_DBM, &lvb_stage::floor_dbm},
    {LVB_FIELD_WANTED_LOW_DBM, &lvb_stage::wanted_low_dbm},
    {LVB_FIELD_WANTED_HIGH_DBM, &lvb_stage::wanted_high_dbm},
    {LVB_FIELD_CEILING_DBM, &lvb_stage::ceiling_dbm},
};
constexpr Field directions[] = {
    {LVB_FIELD_FAR_AZIMUTH_DEG, &lvb_stage::far_azimuth_deg},
    {LVB_FIELD_FAR_ELEVATION_DEG, &lvb_stage::far_elevation_deg},
    {LVB_FIELD_NEAR_AZIMUTH_DEG, &lvb_stage::near_azimuth_deg},
    {LVB_FIELD_NEAR_ELEVATION_DEG, &lvb_stage::near_elevation_deg},
};
constexpr Field noise_numbers[] = {
    {LVB_FIELD_NOISE_FIGURE_DB, &lvb_stage::noise_figure_db},
    {LVB_FIELD_INTERCEPT_DBM, &lvb_stage::intercept_dbm},
    {LVB_FIELD_COMPRESSION_DBM, &lvb_stage::compression_dbm},
};

// A number that this kind of stage uses lies in its range; one that it does not use is zero. Most are zero, which is
// asked before anything is called: a chain has many of them.
bool check_filled(Refusal &refusal, double value, std::int32_t kind, std::int32_t field, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_STAGE, index};
    const Range *range = stage_range(kind, field);
    if (range == nullptr) return refuse_unused(refusal, value, place, field);
    return check_range(refusal, value, range->minimum, range->maximum, place, field);
}
template <std::size_t count>
inline bool check_numbers(Refusal &refusal, const lvb_stage &in, const Field (&fields)[count],
                          std::int32_t index) noexcept {
    for (const Field &field : fields) {
        const double value = in.*field.member;
        if (value != 0.0 && !check_filled(refusal, value, in.kind, field.id, index)) return false;
    }
    return true;
}

// An angle that belongs to what a stage lends, and is filled only beside it.
inline bool check_beside(Refusal &refusal, const void *lent, double angle_deg, std::int32_t kind, std::int32_t field,
                         std::int32_t index) noexcept {
    if (angle_deg == 0.0) return true;
    if (lent == nullptr) return refuse_unused(refusal, angle_deg, {LVB_STRUCT_STAGE, index}, field);
    return check_filled(refusal, angle_deg, kind, field, index);
}

// Whether a stage lends no pattern, body or path, has no angle and tells nothing of noise, as most do: one look at the
// bytes of these members, which stand together.
inline bool is_plain(const lvb_stage &in) noexcept {
    constexpr std::size_t from = offsetof(lvb_stage, pattern);
    constexpr std::size_t to = offsetof(lvb_stage, compression_dbm) + sizeof in.compression_dbm;
    static_assert(to == sizeof(lvb_stage)); // none stands behind them
    std::uint64_t words[(to - from) / sizeof(std::uint64_t)];
    static_assert(sizeof words == to - from);
    std::memcpy(words, reinterpret_cast<const char *>(&in) + from, sizeof words);
    std::uint64_t any = 0;
    for (const std::uint64_t word : words) any |= word;
    return any == 0;
}

// An element where it stands, or, where a host's step leaves it unaligned, its copy.
inline const lvb_stage &element_at(const char *element, lvb_stage &copy) noexcept {
    if (reinterpret_cast<std::uintptr_t>(element) % alignof(lvb_stage) == 0)
        return *reinterpret_cast<const lvb_stage *>(element);
    std::memcpy(&copy, element, sizeof copy);
    return copy;
}

// What an antenna or an allowance lends in place of its gain, and the way that air takes.
bool check_lent(Refusal &refusal, const lvb_stage &in, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_STAGE, index};
    if (in.pattern != nullptr && in.kind != LVB_KIND_ANTENNA)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_PATTERN);
    if (in.body_table != nullptr && in.kind != LVB_KIND_ALLOWANCE)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_BODY_TABLE);
    if (in.path != nullptr && in.kind != LVB_KIND_AIR) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_PATH);
    for (const Field &angle : directions)
        if (!check_beside(refusal, in.pattern, in.*angle.member, in.kind, angle.id, index)) return false;
    if (!check_beside(refusal, in.body_table, in.facing_deg, in.kind, LVB_FIELD_FACING_DEG, index)) return false;
    if (in.pattern == nullptr && in.body_table == nullptr) return true;
    if (in.gain_table != nullptr) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_TABLE);
    return in.gain_db == 0.0 || refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB, in.gain_db);
}

bool check_common(Refusal &refusal, const lvb_stage &in, Place place) noexcept {
    if (in.kind == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_KIND, 0.0, LVB_KIND_SOURCE, LVB_KIND_RECEIVER);
    if (in.kind < LVB_KIND_SOURCE || in.kind > LVB_KIND_RECEIVER)
        return refuse(refusal, LVB_E_UNKNOWN_KIND, place, LVB_FIELD_KIND, in.kind, LVB_KIND_SOURCE, LVB_KIND_RECEIVER);
    if (in.basis < LVB_BASIS_NOT_LOOKED_UP || in.basis > LVB_BASIS_FORMULA)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_BASIS, in.basis, LVB_BASIS_NOT_LOOKED_UP,
                      LVB_BASIS_FORMULA);
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.stated != 0 && !check_stated(refusal, in.stated, stated_bits(in.kind), place)) return false;
    if (!check_numbers(refusal, in, numbers, place.stage)) return false;
    if (!is_plain(in) &&
        (!check_lent(refusal, in, place.stage) || !check_numbers(refusal, in, noise_numbers, place.stage)))
        return false;
    if (in.gain_table != nullptr && in.gain_db != 0.0)
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB, in.gain_db);
    if (in.kind == LVB_KIND_CABLE) return true;
    if (in.cable_type != 0) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_CABLE_TYPE, in.cable_type);
    if (in.connector_count != 0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_CONNECTOR_COUNT, in.connector_count);
    if (in.cable_table != nullptr) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_CABLE_TABLE);
    return true;
}

// A figure with its bit in `stated`; not a number without.
bool take_stated(Refusal &refusal, const lvb_stage &in, std::uint32_t bit, std::int32_t field, double value,
                 Place place, double &taken) noexcept {
    const bool stated = (in.stated & bit) != 0;
    taken = stated ? value : math::not_a_number;
    return stated || value == 0.0 || refuse(refusal, LVB_E_NOT_STATED, place, field, value);
}
bool take_noise(Refusal &refusal, const lvb_stage &in, Place place, chain::Stage &out) noexcept {
    return take_stated(refusal, in, LVB_STATED_NOISE_FIGURE, LVB_FIELD_NOISE_FIGURE_DB, in.noise_figure_db, place,
                       out.noise_figure_db) &&
           take_stated(refusal, in, LVB_STATED_INTERCEPT, LVB_FIELD_INTERCEPT_DBM, in.intercept_dbm, place,
                       out.intercept_dbm) &&
           take_stated(refusal, in, LVB_STATED_COMPRESSION, LVB_FIELD_COMPRESSION_DBM, in.compression_dbm, place,
                       out.compression_dbm);
}

// Either a type or a table with a length, or a gain as measured; never two of them.
bool take_cable(Refusal &refusal, const lvb_stage &in, Place place, chain::Stage &out) noexcept {
    if (!check_cable_type(refusal, in.cable_type, place)) return false;
    const bool computed = in.cable_type != 0 || in.cable_table != nullptr;
    const bool measured = in.gain_db != 0.0 || in.gain_table != nullptr;
    if (!computed) {
        if (!measured)
            return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_CABLE_TYPE, 0.0, 1.0, tables::cable_types);
        // What was measured is the whole cable: a length beside it would have no effect.
        if (in.length_m != 0.0) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_LENGTH_M, in.length_m);
        if (in.connector_count != 0)
            return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_CONNECTOR_COUNT, in.connector_count);
        return in.connector_loss_db == 0.0 ||
               refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_CONNECTOR_LOSS_DB, in.connector_loss_db);
    }
    if (in.cable_type != 0 && in.cable_table != nullptr)
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_CABLE_TABLE);
    if (in.gain_table != nullptr) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_TABLE);
    if (in.gain_db != 0.0) return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB, in.gain_db);
    if (!check_field(refusal, in.length_m, length_range, place, LVB_FIELD_LENGTH_M) ||
        !check_connectors(refusal, in.connector_count, in.connector_loss_db, place))
        return false;

    out.has_cable = true;
    out.cable.length_m = in.length_m;
    out.cable.connectors = in.connector_count;
    out.cable.connector_loss_db = in.connector_loss_db;
    if (in.cable_table != nullptr) return take_cable_table(refusal, in.cable_table, place.stage, out.cable.table);
    out.cable.table = tables::cable_table(in.cable_type);
    if (out.basis == chain::Basis::not_looked_up) out.basis = chain::Basis::handbook;
    return true;
}

// The window's values are stated, and rise from the floor to the ceiling.
bool take_window(Refusal &refusal, const lvb_stage &in, Place place, chain::Window &window) noexcept {
    struct Limit {
        std::uint32_t bit;
        std::int32_t field;
        double value;
    };
    const Limit limits[] = {
        {LVB_STATED_FLOOR, LVB_FIELD_FLOOR_DBM, in.floor_dbm},
        {LVB_STATED_WANTED, LVB_FIELD_WANTED_LOW_DBM, in.wanted_low_dbm},
        {LVB_STATED_WANTED, LVB_FIELD_WANTED_HIGH_DBM, in.wanted_high_dbm},
        {LVB_STATED_CEILING, LVB_FIELD_CEILING_DBM, in.ceiling_dbm},
    };
    const Range &range = *stage_range(LVB_KIND_RECEIVER, LVB_FIELD_FLOOR_DBM);
    double least = range.minimum;
    for (const Limit &limit : limits) {
        if ((in.stated & limit.bit) == 0) {
            if (limit.value != 0.0) return refuse(refusal, LVB_E_NOT_STATED, place, limit.field, limit.value);
            continue;
        }
        if (limit.value < least)
            return refuse(refusal, LVB_E_ORDER, place, limit.field, limit.value, least, range.maximum);
        least = limit.value;
    }
    window = {(in.stated & LVB_STATED_FLOOR) != 0,
              (in.stated & LVB_STATED_WANTED) != 0,
              (in.stated & LVB_STATED_CEILING) != 0,
              in.floor_dbm,
              in.wanted_low_dbm,
              in.wanted_high_dbm,
              in.ceiling_dbm};
    return true;
}

} // namespace

bool check_distances(Refusal &refusal, const lvb_link &link, std::int32_t air) noexcept {
    const Place place{LVB_STRUCT_LINK, air};
    if (air >= 0)
        return link.far_distance_m != 0.0 || refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_FAR_DISTANCE_M, 0.0,
                                                    distance_range.minimum, distance_range.maximum);
    if (link.far_distance_m != 0.0)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_FAR_DISTANCE_M, link.far_distance_m);
    return link.near_distance_m == 0.0 ||
           refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_NEAR_DISTANCE_M, link.near_distance_m);
}

bool check_link_frame(Refusal &refusal, const lvb_link &link) noexcept {
    const Place place{LVB_STRUCT_LINK};
    if (!check_stated(refusal, link.stated, LVB_STATED_TEMPERATURE, place) ||
        !check_temperature(refusal, link.temperature_degc, link.stated, place))
        return false;
    if (link.stage_count == 0)
        return refuse(refusal, LVB_E_NO_SOURCE, place, LVB_FIELD_STAGE_COUNT, 0.0, 1.0, LVB_MAX_STAGES);
    if (link.stage_count > LVB_MAX_STAGES)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_STAGE_COUNT, link.stage_count, 1.0, LVB_MAX_STAGES);
    if (link.stages == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_STAGES);
    return check_size(refusal, link.stage_size, sizeof(lvb_stage), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_STAGE_SIZE);
}

bool take_link(Refusal &refusal, const lvb_link *link, lvb_link &copy, chain::Conditions &conditions) noexcept {
    const Place place{LVB_STRUCT_LINK};
    if (!take(refusal, link, copy, place, LVB_FIELD_LINK) ||
        !check_field(refusal, copy.frequency_mhz, frequency_range, place, LVB_FIELD_FREQUENCY_MHZ) ||
        !check_field(refusal, copy.far_distance_m, distance_range, place, LVB_FIELD_FAR_DISTANCE_M) ||
        !check_field(refusal, copy.near_distance_m, distance_range, place, LVB_FIELD_NEAR_DISTANCE_M))
        return false;
    if (copy.far_distance_m != 0.0 && copy.near_distance_m > copy.far_distance_m)
        return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_NEAR_DISTANCE_M, copy.near_distance_m,
                      distance_range.minimum, copy.far_distance_m);
    if (!check_link_frame(refusal, copy)) return false;
    conditions.frequency_mhz = copy.frequency_mhz;
    conditions.far_distance_m = copy.far_distance_m;
    conditions.near_distance_m = copy.near_distance_m != 0.0 ? copy.near_distance_m : copy.far_distance_m;
    conditions.near_is_given = copy.near_distance_m != 0.0;
    conditions.temperature_degc = temperature_of(copy.temperature_degc, copy.stated);
    return true;
}

bool check_tables(Refusal &refusal, const chain::Stage &stage, double frequency_mhz, std::int32_t index) noexcept {
    if (stage.gain_table.rows > 0 && !check_inside(refusal, stage.gain_table, frequency_mhz, index)) return false;
    return !stage.has_cable || check_usable(refusal, stage.cable.table, frequency_mhz, index);
}

bool check_walk(Refusal &refusal, const lvb_link &link, const chain::Stage &stage, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_LINK, index};
    const double far = link.far_distance_m, near = link.near_distance_m; // one that is missing is refused at the end
    return check_reach(refusal, stage.path, link.frequency_mhz, place) &&
           (far == 0.0 || check_reach_of_distance(refusal, stage.path, far, place, LVB_FIELD_FAR_DISTANCE_M)) &&
           (near == 0.0 || check_reach_of_distance(refusal, stage.path, near, place, LVB_FIELD_NEAR_DISTANCE_M));
}

bool take_stage(Refusal &refusal, const lvb_link &link, std::uint32_t index, chain::Stage &stage,
                Heights heights) noexcept {
    const Place place{LVB_STRUCT_STAGE, static_cast<std::int32_t>(index)};
    const char *element = reinterpret_cast<const char *>(link.stages) + std::size_t{index} * link.stage_size;
    lvb_stage copy;
    const lvb_stage &in = element_at(element, copy);
    if (!check_tail(refusal, element, link.stage_size, sizeof in, place) || !check_common(refusal, in, place))
        return false;

    stage.kind = static_cast<Kind>(in.kind);
    stage.basis = static_cast<chain::Basis>(in.basis);
    stage.level_dbm = in.level_dbm;
    stage.gain_db = in.gain_db;
    stage.tolerance_db = in.tolerance_db;
    stage.gain_table.rows = 0;
    stage.has_cable = stage.has_pattern = stage.has_body = false;
    stage.has_path = in.path != nullptr;
    if (!take_noise(refusal, in, place, stage)) return false;
    if (in.gain_table != nullptr) {
        const Range &range = *stage_range(in.kind, LVB_FIELD_GAIN_DB);
        if (!take_gain_table(refusal, in.gain_table, place.stage, range, stage.gain_table)) return false;
    }
    if (in.pattern != nullptr) {
        stage.has_pattern = true;
        stage.far_direction = {in.far_azimuth_deg, in.far_elevation_deg};
        stage.near_direction = {in.near_azimuth_deg, in.near_elevation_deg};
        if (!take_pattern(refusal, in.pattern, place.stage, stage.pattern)) return false;
    }
    if (in.body_table != nullptr) {
        stage.has_body = true;
        stage.facing_deg = in.facing_deg;
        if (!take_body_table(refusal, in.body_table, place.stage, LVB_FIELD_BODY_TABLE, stage.body)) return false;
    }
    switch (stage.kind) {
    case Kind::cable:
        return take_cable(refusal, in, place, stage);
    case Kind::receiver:
        return take_window(refusal, in, place, stage.window);
    case Kind::air:
        if (stage.basis == chain::Basis::not_looked_up && in.gain_db == 0.0 && in.gain_table == nullptr)
            stage.basis = chain::Basis::formula;
        return in.path == nullptr || take_path(refusal, in.path, place.stage, heights, stage.path);
    default:
        return true;
    }
}

std::int32_t gain_field(const chain::Stage &stage) noexcept {
    if (stage.has_pattern) return LVB_FIELD_PATTERN;
    if (stage.gain_table.rows > 0) return LVB_FIELD_GAIN_TABLE;
    return stage.gain_db != 0.0 ? LVB_FIELD_GAIN_DB : 0;
}

// A radiating cable has no antenna: its coupling loss begins at its feed, and a gain there would be counted beside it.
bool Order::enter_air(Refusal &refusal, const chain::Stage &stage, std::int32_t index) noexcept {
    air_ = index;
    if (!stage.has_path || !path::is_fed_by_cable(stage.path) || transmit_gain_ == 0) return true;
    return refuse(refusal, LVB_E_UNUSED, {LVB_STRUCT_STAGE, transmit_}, transmit_gain_, transmit_gain_dbi_);
}

bool Order::next(Refusal &refusal, const chain::Stage &stage, std::int32_t index) noexcept {
    const Kind kind = stage.kind;
    const Place place{LVB_STRUCT_STAGE, index};
    const auto refuse_here = [&](lvb_status status) noexcept {
        return refuse(refusal, status, place, LVB_FIELD_KIND, static_cast<double>(kind));
    };
    if (index == 0) return kind == Kind::source || refuse_here(LVB_E_NO_SOURCE);
    if (receiver_) return refuse_here(LVB_E_AFTER_RECEIVER);
    const bool radiated = antennas_ == 1; // between the two antennas
    switch (kind) {
    case Kind::source:
        return refuse_here(LVB_E_SECOND_SOURCE);
    case Kind::air:
        if (air_ >= 0) return refuse_here(LVB_E_SECOND_AIR);
        if (antennas_ == 0) return refuse_here(LVB_E_NO_TRANSMIT_ANTENNA);
        return enter_air(refusal, stage, index);
    case Kind::antenna:
        if (antennas_ == 2 || (radiated && air_ < 0)) return refuse_here(LVB_E_ANTENNA_OUT_OF_PLACE);
        if (antennas_++ == 0) {
            transmit_ = index;
            transmit_gain_ = gain_field(stage);
            transmit_gain_dbi_ = transmit_gain_ == LVB_FIELD_GAIN_DB ? stage.gain_db : math::not_a_number;
        }
        return true;
    case Kind::allowance:
        return true;
    case Kind::receiver:
        if (radiated) return refuse_here(air_ < 0 ? LVB_E_STAGE_IN_AIR : LVB_E_NO_RECEIVE_ANTENNA);
        receiver_ = true;
        return true;
    case Kind::passive:
    case Kind::cable:
    case Kind::amplifier:
        return !radiated || refuse_here(LVB_E_STAGE_IN_AIR);
    }
    return true;
}

bool Order::end(Refusal &refusal) const noexcept {
    if (air_ < 0 || antennas_ == 2) return true;
    return refuse(refusal, LVB_E_NO_RECEIVE_ANTENNA, {LVB_STRUCT_STAGE, air_}, LVB_FIELD_KIND, LVB_KIND_AIR);
}

} // namespace lvb::door
