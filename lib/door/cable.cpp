#include "cable/attenuation.hpp"
#include "door/fields.hpp"
#include "door/tables.hpp"
#include "tables/cables.hpp"

namespace lvb::door {
namespace {

Refusal check_run(const lvb_cable_run &run, Place place) noexcept {
    if (const Refusal refusal = check_flags(run.stated, LVB_STATED_TEMPERATURE, place)) return refusal;
    struct Number {
        std::int32_t field;
        double value;
    };
    const Number numbers[] = {
        {LVB_FIELD_FREQUENCY_MHZ, run.frequency_mhz},
        {LVB_FIELD_LENGTH_M, run.length_m},
        {LVB_FIELD_TEMPERATURE_DEGC, run.temperature_degc},
        {LVB_FIELD_CONNECTOR_LOSS_DB, run.connector_loss_db},
        {LVB_FIELD_CONNECTOR_COUNT, static_cast<double>(run.connector_count)},
    };
    for (const Number &number : numbers)
        if (const Refusal refusal =
                check_field(number.value, *struct_range(LVB_STRUCT_CABLE_RUN, number.field), place, number.field))
            return refusal;
    if ((run.stated & LVB_STATED_TEMPERATURE) == 0 && run.temperature_degc != 0.0)
        return refuse(LVB_E_NOT_STATED, place, LVB_FIELD_TEMPERATURE_DEGC, run.temperature_degc);
    if (run.connector_count == 0 && run.connector_loss_db != 0.0)
        return refuse(LVB_E_MISSING, place, LVB_FIELD_CONNECTOR_COUNT, 0.0, 1.0, connector_count_range.maximum);
    return {};
}

Refusal take_table(const lvb_cable_run &run, const lvb_cable_table *lent, Place place, cable::Table &table) noexcept {
    if (run.cable_type < 0 || run.cable_type > tables::cable_types)
        return refuse(LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_CABLE_TYPE, run.cable_type, 0.0, tables::cable_types);
    if (run.cable_type != 0 && lent != nullptr) return refuse(LVB_E_CONFLICT, {}, LVB_FIELD_CABLE_TABLE);
    if (lent != nullptr) return take_cable_table(lent, -1, table);
    if (run.cable_type == 0) return refuse(LVB_E_MISSING, place, LVB_FIELD_CABLE_TYPE, 0.0, 1.0, tables::cable_types);
    table = tables::cable_table(run.cable_type);
    return {};
}

Refusal compute(const lvb_cable_run *lent, const lvb_cable_table *lent_table, lvb_cable_loss *loss) noexcept {
    const Place place{LVB_STRUCT_CABLE_RUN};
    lvb_cable_run run;
    if (const Refusal refusal = take(lent, run, place, LVB_FIELD_RUN)) return refusal;
    if (const Refusal refusal = check_result(loss, LVB_STRUCT_CABLE_LOSS, LVB_FIELD_LOSS)) return refusal;
    if (const Refusal refusal = check_run(run, place)) return refusal;
    cable::Run model{{}, run.length_m, run.connector_count, run.connector_loss_db};
    if (const Refusal refusal = take_table(run, lent_table, place, model.table)) return refusal;
    if (const Refusal refusal = check_usable(model.table, run.frequency_mhz, {LVB_STRUCT_CABLE_TABLE})) return refusal;

    const bool warm = (run.stated & LVB_STATED_TEMPERATURE) != 0;
    const cable::Loss result =
        cable::loss(model, run.frequency_mhz, warm ? run.temperature_degc : cable::table_temperature_degc);
    lvb_cable_loss out{};
    out.notes = result.attenuation.extrapolated ? std::uint32_t{LVB_NOTE_EXTRAPOLATED} : 0u;
    out.attenuation_db_per_100m = result.attenuation.db_per_100m;
    out.cable_loss_db = result.cable_db;
    out.connectors_loss_db = result.connectors_db;
    out.loss_db = result.cable_db + result.connectors_db;
    give(loss, out);
    return {};
}

Refusal check_type(std::int32_t type) noexcept {
    if (type >= 1 && type <= tables::cable_types) return {};
    return refuse(LVB_E_NOT_FOUND, {}, LVB_FIELD_CABLE_TYPE, type, 1.0, tables::cable_types);
}

Refusal describe(std::int32_t type, lvb_cable_info *info) noexcept {
    if (const Refusal refusal = check_result(info, LVB_STRUCT_CABLE_INFO, LVB_FIELD_INFO)) return refusal;
    if (const Refusal refusal = check_type(type)) return refusal;
    const cable::Table table = tables::cable_table(type);
    lvb_cable_info out{};
    out.cable_type = type;
    out.row_count = static_cast<std::uint32_t>(table.rows);
    out.lowest_mhz = table.frequency_mhz[0];
    out.highest_mhz = table.frequency_mhz[table.rows - 1];
    out.usable_lowest_mhz = cable::usable_below * out.lowest_mhz;
    out.usable_highest_mhz = cable::usable_above * out.highest_mhz;
    out.name = tables::cable_name(type);
    out.description = tables::cable_description(type);
    give(info, out);
    return {};
}

Refusal describe_row(std::int32_t type, std::uint32_t index, lvb_cable_row *row) noexcept {
    if (const Refusal refusal = check_result(row, LVB_STRUCT_CABLE_ROW, LVB_FIELD_ROW)) return refusal;
    if (const Refusal refusal = check_type(type)) return refusal;
    const std::size_t rows = tables::cable_table(type).rows;
    if (index >= rows)
        return refuse(LVB_E_NOT_FOUND, {}, LVB_FIELD_ROW_INDEX, index, 0.0, static_cast<double>(rows - 1));
    const tables::CableRow found = tables::cable_row(type, index);
    lvb_cable_row out{};
    out.frequency_mhz = found.frequency_mhz;
    out.attenuation_db_per_100m = found.attenuation_db_per_100m;
    out.source = found.source;
    out.remark = found.remark;
    give(row, out);
    return {};
}

// Next letter or digit of a designation, in upper case; 0 at its end. Everything else does not count.
char next_significant(const char *&text) noexcept {
    while (*text != '\0') {
        const char c = *text++;
        if (c >= 'a' && c <= 'z') return static_cast<char>(c - 'a' + 'A');
        if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) return c;
    }
    return '\0';
}

// Whether a given name is a designation, with or without a final "/U".
bool names(const char *given, const char *designation) noexcept {
    for (;;) {
        const char g = next_significant(given);
        const char d = next_significant(designation);
        if (g == d) {
            if (g == '\0') return true;
            continue;
        }
        return g == '\0' && d == 'U' && next_significant(designation) == '\0';
    }
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_cable_loss(const lvb_cable_run *run, const lvb_cable_table *table, lvb_cable_loss *loss,
                                  lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&]() noexcept { return compute(run, table, loss); });
}

uint32_t lvb_cable_type_count(void) { return lvb::tables::cable_types; }

int32_t lvb_cable_type_from_name(const char *name) {
    if (name == nullptr) return LVB_CABLE_NONE;
    for (int32_t type = 1; type <= lvb::tables::cable_types; ++type)
        if (lvb::door::names(name, lvb::tables::cable_name(type))) return type;
    return LVB_CABLE_NONE;
}

lvb_status lvb_describe_cable(int32_t cable_type, lvb_cable_info *info, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&]() noexcept { return describe(cable_type, info); });
}

lvb_status lvb_describe_cable_row(int32_t cable_type, uint32_t row_index, lvb_cable_row *row, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&]() noexcept { return describe_row(cable_type, row_index, row); });
}

} // extern "C"
