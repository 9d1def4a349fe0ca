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
    if (math::is_nan(value)) return refuse(LVB_E_NAN, place, field, value);
    const Range *range = stage_range(kind, field);
    if (range == nullptr) return refuse(LVB_E_UNUSED, place, field, value);
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

bool is_computed(const lvb_stage &cable) noexcept { return cable.cable_type != 0 || cable.cable_table != nullptr; }

// Either a type or a table with a length, or a gain as measured; never two of them.
Refusal check_cable(const lvb_stage &in, double frequency_mhz, Place place) noexcept {
    if (in.cable_type < 0 || in.cable_type > tables::cable_types)
        return refuse(LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_CABLE_TYPE, in.cable_type, 0.0, tables::cable_types);
    if (!is_computed(in)) {
        const bool measured = in.gain_db != 0.0 || in.gain_table != nullptr;
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
    cable::Table table = {};
    if (in.cable_table != nullptr) {
        if (const Refusal refusal = take_cable_table(in.cable_table, place.stage, table)) return refusal;
    } else {
        table = tables::cable_table(in.cable_type);
    }
    return check_usable(table, frequency_mhz, {LVB_STRUCT_CABLE_TABLE, place.stage});
}

// The window's values are stated, and rise from the floor to the ceiling.
Refusal check_window(const lvb_stage &in, Place place) noexcept {
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
    return {};
}

const char *element_at(const lvb_link &link, std::uint32_t index) noexcept {
    return reinterpret_cast<const char *>(link.stages) + static_cast<std::size_t>(index) * link.stage_size;
}

lvb_stage stage_at(const lvb_link &link, std::uint32_t index) noexcept {
    const char *element = element_at(link, index);
    lvb_stage stage;
    std::memcpy(&stage, element, sizeof stage);
    return stage;
}

Refusal check_stage(const lvb_link &link, const lvb_stage &in, Place place) noexcept {
    if (const Refusal refusal = check_common(in, place)) return refusal;
    if (in.gain_table != nullptr) {
        const Range &range = *stage_range(in.kind, LVB_FIELD_GAIN_DB);
        chain::GainTable table;
        if (const Refusal refusal = take_gain_table(in.gain_table, place.stage, range, link.frequency_mhz, table))
            return refusal;
    }
    switch (in.kind) {
    case LVB_KIND_CABLE:
        return check_cable(in, link.frequency_mhz, place);
    case LVB_KIND_RECEIVER:
        return check_window(in, place);
    case LVB_KIND_AIR:
        if (link.far_distance_m != 0.0) return {};
        return refuse(LVB_E_MISSING, {LVB_STRUCT_LINK, place.stage}, LVB_FIELD_FAR_DISTANCE_M, 0.0,
                      distance_range.minimum, distance_range.maximum);
    default:
        return {};
    }
}

// The order of stages: one source first, antennas on both sides of the air, the receiver last.
class Order {
  public:
    Refusal next(std::int32_t kind, std::int32_t index) noexcept;
    Refusal end() const noexcept;

  private:
    int antennas_ = 0;
    std::int32_t air_ = -1;
    bool receiver_ = false;
};

Refusal Order::next(std::int32_t kind, std::int32_t index) noexcept {
    const Place place{LVB_STRUCT_STAGE, index};
    const auto refuse_here = [&](lvb_status status) { return refuse(status, place, LVB_FIELD_KIND, kind); };
    if (index == 0) return kind == LVB_KIND_SOURCE ? Refusal{} : refuse_here(LVB_E_NO_SOURCE);
    if (receiver_) return refuse_here(LVB_E_AFTER_RECEIVER);
    const bool radiated = antennas_ == 1; // between the two antennas
    switch (kind) {
    case LVB_KIND_SOURCE:
        return refuse_here(LVB_E_SECOND_SOURCE);
    case LVB_KIND_AIR:
        if (air_ >= 0) return refuse_here(LVB_E_SECOND_AIR);
        if (antennas_ == 0) return refuse_here(LVB_E_NO_TRANSMIT_ANTENNA);
        air_ = index;
        return {};
    case LVB_KIND_ANTENNA:
        if (antennas_ == 2 || (radiated && air_ < 0)) return refuse_here(LVB_E_ANTENNA_OUT_OF_PLACE);
        ++antennas_;
        return {};
    case LVB_KIND_ALLOWANCE:
        return {};
    case LVB_KIND_RECEIVER:
        if (radiated) return refuse_here(air_ < 0 ? LVB_E_STAGE_IN_AIR : LVB_E_NO_RECEIVE_ANTENNA);
        receiver_ = true;
        return {};
    case LVB_KIND_PASSIVE:
    case LVB_KIND_CABLE:
    case LVB_KIND_AMPLIFIER:
    default:
        return radiated ? refuse_here(LVB_E_STAGE_IN_AIR) : Refusal{};
    }
}

Refusal Order::end() const noexcept {
    if (air_ < 0 || antennas_ == 2) return {};
    return refuse(LVB_E_NO_RECEIVE_ANTENNA, {LVB_STRUCT_STAGE, air_}, LVB_FIELD_KIND, LVB_KIND_AIR);
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

Refusal check_chain(const lvb_link &link) noexcept {
    Order order;
    for (std::uint32_t i = 0; i < link.stage_count; ++i) {
        const Place place{LVB_STRUCT_STAGE, static_cast<std::int32_t>(i)};
        if (const Refusal refusal = check_tail(element_at(link, i), link.stage_size, sizeof(lvb_stage), place))
            return refusal;
        const lvb_stage in = stage_at(link, i);
        if (const Refusal refusal = check_stage(link, in, place)) return refusal;
        if (const Refusal refusal = order.next(in.kind, place.stage)) return refusal;
    }
    return order.end();
}

void read_stage(const lvb_link &link, std::uint32_t index, chain::Stage &stage) noexcept {
    const lvb_stage in = stage_at(link, index);
    stage.kind = static_cast<Kind>(in.kind);
    stage.basis = static_cast<chain::Basis>(in.basis);
    stage.level_dbm = in.level_dbm;
    stage.gain_db = in.gain_db;
    stage.tolerance_db = in.tolerance_db;
    stage.gain_table = in.gain_table != nullptr ? read_gain_table(in.gain_table) : chain::GainTable{};
    stage.has_cable = is_computed(in);
    const bool not_looked_up = stage.basis == chain::Basis::not_looked_up;
    switch (stage.kind) {
    case Kind::cable:
        if (!stage.has_cable) break;
        stage.cable = {in.cable_table != nullptr ? read_cable_table(in.cable_table)
                                                 : tables::cable_table(in.cable_type),
                       in.length_m, in.connector_count, in.connector_loss_db};
        if (not_looked_up && in.cable_table == nullptr) stage.basis = chain::Basis::handbook;
        break;
    case Kind::air:
        if (not_looked_up && in.gain_db == 0.0 && in.gain_table == nullptr) stage.basis = chain::Basis::formula;
        break;
    case Kind::receiver:
        stage.window = {(in.stated & LVB_STATED_FLOOR) != 0,
                        (in.stated & LVB_STATED_WANTED) != 0,
                        (in.stated & LVB_STATED_CEILING) != 0,
                        in.floor_dbm,
                        in.wanted_low_dbm,
                        in.wanted_high_dbm,
                        in.ceiling_dbm};
        break;
    default:
        break;
    }
}

} // namespace lvb::door
