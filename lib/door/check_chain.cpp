#include "door/check_chain.hpp"

#include "door/fields.hpp"
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

// A number that this kind of stage uses lies in its range; one that it does not use is zero.
Refusal check_number(double value, std::int32_t kind, std::int32_t field, Place place) noexcept {
    if (value == 0.0) return {};
    const Range *range = stage_range(kind, field);
    if (range == nullptr) return refuse(math::is_nan(value) ? LVB_E_NAN : LVB_E_UNUSED, place, field, value);
    return check_range(value, range->minimum, range->maximum, place, field);
}

Refusal check_common(const lvb_stage &in, Place place) noexcept {
    if (in.kind == 0) return refuse(LVB_E_MISSING, place, LVB_FIELD_KIND, 0.0, LVB_KIND_SOURCE, LVB_KIND_RECEIVER);
    if (in.kind < LVB_KIND_SOURCE || in.kind > LVB_KIND_RECEIVER)
        return refuse(LVB_E_UNKNOWN_KIND, place, LVB_FIELD_KIND, in.kind, LVB_KIND_SOURCE, LVB_KIND_RECEIVER);
    if (in.basis < LVB_BASIS_NOT_LOOKED_UP || in.basis > LVB_BASIS_FORMULA)
        return refuse(LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_BASIS, in.basis, LVB_BASIS_NOT_LOOKED_UP,
                      LVB_BASIS_FORMULA);
    if (in.reserved != 0) return refuse(LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (const Refusal refusal = check_flags(in.stated, in.kind == LVB_KIND_RECEIVER ? window_bits : 0u, place))
        return refusal;
    for (const Field &number : numbers)
        if (const Refusal refusal = check_number(in.*number.member, in.kind, number.id, place)) return refusal;
    if (in.gain_table != nullptr && in.gain_db != 0.0)
        return refuse(LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB, in.gain_db);
    if (in.kind == LVB_KIND_CABLE) return {};
    if (in.cable_type != 0) return refuse(LVB_E_UNUSED, place, LVB_FIELD_CABLE_TYPE, in.cable_type);
    if (in.connector_count != 0) return refuse(LVB_E_UNUSED, place, LVB_FIELD_CONNECTOR_COUNT, in.connector_count);
    if (in.cable_table != nullptr) return refuse(LVB_E_UNUSED, place, LVB_FIELD_CABLE_TABLE);
    return {};
}

// Either a type or a table with a length, or a gain as measured; never two of them.
Refusal take_cable(const lvb_stage &in, double frequency_mhz, Place place, chain::Stage &out) noexcept {
    if (in.cable_type < 0 || in.cable_type > tables::cable_types)
        return refuse(LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_CABLE_TYPE, in.cable_type, 0.0, tables::cable_types);
    const bool computed = in.cable_type != 0 || in.cable_table != nullptr;
    const bool measured = in.gain_db != 0.0 || in.gain_table != nullptr;
    if (!computed) {
        const bool described = in.length_m != 0.0 || in.connector_count != 0 || in.connector_loss_db != 0.0;
        if (measured && !described) return {};
        return refuse(LVB_E_MISSING, place, LVB_FIELD_CABLE_TYPE, 0.0, 1.0, tables::cable_types);
    }
    if (in.cable_type != 0 && in.cable_table != nullptr) return refuse(LVB_E_CONFLICT, place, LVB_FIELD_CABLE_TABLE);
    if (in.gain_table != nullptr) return refuse(LVB_E_CONFLICT, place, LVB_FIELD_GAIN_TABLE);
    if (in.gain_db != 0.0) return refuse(LVB_E_CONFLICT, place, LVB_FIELD_GAIN_DB, in.gain_db);
    if (const Refusal refusal = check_field(in.length_m, length_range, place, LVB_FIELD_LENGTH_M)) return refusal;
    if (const Refusal refusal =
            check_field(in.connector_count, connector_count_range, place, LVB_FIELD_CONNECTOR_COUNT))
        return refusal;
    if (in.connector_count == 0 && in.connector_loss_db != 0.0)
        return refuse(LVB_E_MISSING, place, LVB_FIELD_CONNECTOR_COUNT, 0.0, 1.0, connector_count_range.maximum);

    out.has_cable = true;
    out.cable.length_m = in.length_m;
    out.cable.connectors = in.connector_count;
    out.cable.connector_loss_db = in.connector_loss_db;
    if (in.cable_table != nullptr) {
        if (const Refusal refusal = take_cable_table(in.cable_table, place.stage, out.cable.table)) return refusal;
        return check_usable(out.cable.table, frequency_mhz, {LVB_STRUCT_CABLE_TABLE, place.stage});
    }
    out.cable.table = tables::cable_table(in.cable_type);
    if (out.basis == chain::Basis::not_looked_up) out.basis = chain::Basis::handbook;
    return check_usable(out.cable.table, frequency_mhz, {LVB_STRUCT_CABLE_TABLE, place.stage});
}

// The window's values are stated, and rise from the floor to the ceiling.
Refusal take_window(const lvb_stage &in, Place place, chain::Window &window) noexcept {
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
            if (limit.value != 0.0) return refuse(LVB_E_NOT_STATED, place, limit.field, limit.value);
            continue;
        }
        if (limit.value < least) return refuse(LVB_E_ORDER, place, limit.field, limit.value, least, range.maximum);
        least = limit.value;
    }
    window = {(in.stated & LVB_STATED_FLOOR) != 0,
              (in.stated & LVB_STATED_WANTED) != 0,
              (in.stated & LVB_STATED_CEILING) != 0,
              in.floor_dbm,
              in.wanted_low_dbm,
              in.wanted_high_dbm,
              in.ceiling_dbm};
    return {};
}

} // namespace

Refusal take_link(const lvb_link *link, lvb_link &copy, chain::Conditions &conditions) noexcept {
    const Place place{LVB_STRUCT_LINK};
    if (const Refusal refusal = take(link, copy, place, LVB_FIELD_LINK)) return refusal;
    if (const Refusal refusal = check_flags(copy.stated, LVB_STATED_TEMPERATURE, place)) return refusal;
    struct Number {
        std::int32_t field;
        double value;
    };
    const Number link_numbers[] = {
        {LVB_FIELD_FREQUENCY_MHZ, copy.frequency_mhz},
        {LVB_FIELD_FAR_DISTANCE_M, copy.far_distance_m},
        {LVB_FIELD_NEAR_DISTANCE_M, copy.near_distance_m},
        {LVB_FIELD_TEMPERATURE_DEGC, copy.temperature_degc},
    };
    for (const Number &number : link_numbers)
        if (const Refusal refusal =
                check_field(number.value, *struct_range(LVB_STRUCT_LINK, number.field), place, number.field))
            return refusal;
    const bool warm = (copy.stated & LVB_STATED_TEMPERATURE) != 0;
    if (!warm && copy.temperature_degc != 0.0)
        return refuse(LVB_E_NOT_STATED, place, LVB_FIELD_TEMPERATURE_DEGC, copy.temperature_degc);
    if (copy.far_distance_m != 0.0 && copy.near_distance_m > copy.far_distance_m)
        return refuse(LVB_E_ORDER, place, LVB_FIELD_NEAR_DISTANCE_M, copy.near_distance_m, distance_range.minimum,
                      copy.far_distance_m);
    if (copy.stage_count == 0) return refuse(LVB_E_NO_SOURCE, place, LVB_FIELD_STAGE_COUNT, 0.0, 1.0, LVB_MAX_STAGES);
    if (copy.stage_count > LVB_MAX_STAGES)
        return refuse(LVB_E_COUNT, place, LVB_FIELD_STAGE_COUNT, copy.stage_count, 1.0, LVB_MAX_STAGES);
    if (copy.stages == nullptr) return refuse(LVB_E_NULL, place, LVB_FIELD_STAGES);
    if (const Refusal refusal =
            check_size(copy.stage_size, sizeof(lvb_stage), LVB_E_ELEMENT_SIZE, place, LVB_FIELD_STAGE_SIZE))
        return refusal;
    conditions = {copy.frequency_mhz, copy.far_distance_m,
                  copy.near_distance_m != 0.0 ? copy.near_distance_m : copy.far_distance_m,
                  warm ? copy.temperature_degc : cable::table_temperature_degc};
    return {};
}

Refusal take_stage(const lvb_link &link, std::uint32_t index, chain::Stage &stage) noexcept {
    const Place place{LVB_STRUCT_STAGE, static_cast<std::int32_t>(index)};
    const char *element = reinterpret_cast<const char *>(link.stages) + std::size_t{index} * link.stage_size;
    if (const Refusal refusal = check_tail(element, link.stage_size, sizeof(lvb_stage), place)) return refusal;
    lvb_stage in;
    std::memcpy(&in, element, sizeof in);
    if (const Refusal refusal = check_common(in, place)) return refusal;

    stage = {};
    stage.kind = static_cast<Kind>(in.kind);
    stage.basis = static_cast<chain::Basis>(in.basis);
    stage.level_dbm = in.level_dbm;
    stage.gain_db = in.gain_db;
    stage.tolerance_db = in.tolerance_db;
    if (in.gain_table != nullptr) {
        const Range &range = *stage_range(in.kind, LVB_FIELD_GAIN_DB);
        if (const Refusal refusal =
                take_gain_table(in.gain_table, place.stage, range, link.frequency_mhz, stage.gain_table))
            return refusal;
    }
    switch (stage.kind) {
    case Kind::cable:
        return take_cable(in, link.frequency_mhz, place, stage);
    case Kind::receiver:
        return take_window(in, place, stage.window);
    case Kind::air:
        if (link.far_distance_m == 0.0)
            return refuse(LVB_E_MISSING, {LVB_STRUCT_LINK, place.stage}, LVB_FIELD_FAR_DISTANCE_M, 0.0,
                          distance_range.minimum, distance_range.maximum);
        if (stage.basis == chain::Basis::not_looked_up && in.gain_db == 0.0 && in.gain_table == nullptr)
            stage.basis = chain::Basis::formula;
        return {};
    default:
        return {};
    }
}

Refusal Order::next(Kind kind, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_STAGE, index};
    const auto refuse_here = [&](lvb_status status) {
        return refuse(status, place, LVB_FIELD_KIND, static_cast<double>(kind));
    };
    if (index == 0) return kind == Kind::source ? Refusal{} : refuse_here(LVB_E_NO_SOURCE);
    if (receiver_) return refuse_here(LVB_E_AFTER_RECEIVER);
    const bool radiated = antennas_ == 1; // between the two antennas
    switch (kind) {
    case Kind::source:
        return refuse_here(LVB_E_SECOND_SOURCE);
    case Kind::air:
        if (air_ >= 0) return refuse_here(LVB_E_SECOND_AIR);
        if (antennas_ == 0) return refuse_here(LVB_E_NO_TRANSMIT_ANTENNA);
        air_ = index;
        return {};
    case Kind::antenna:
        if (antennas_ == 2 || (radiated && air_ < 0)) return refuse_here(LVB_E_ANTENNA_OUT_OF_PLACE);
        ++antennas_;
        return {};
    case Kind::allowance:
        return {};
    case Kind::receiver:
        if (radiated) return refuse_here(air_ < 0 ? LVB_E_STAGE_IN_AIR : LVB_E_NO_RECEIVE_ANTENNA);
        receiver_ = true;
        return {};
    case Kind::passive:
    case Kind::cable:
    case Kind::amplifier:
        return radiated ? refuse_here(LVB_E_STAGE_IN_AIR) : Refusal{};
    }
    return {};
}

Refusal Order::end() const noexcept {
    if (air_ < 0 || antennas_ == 2) return {};
    return refuse(LVB_E_NO_RECEIVE_ANTENNA, {LVB_STRUCT_STAGE, air_}, LVB_FIELD_KIND, LVB_KIND_AIR);
}

} // namespace lvb::door
