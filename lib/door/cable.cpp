#include "cable/attenuation.hpp"
#include "door/fields.hpp"
#include "door/tables.hpp"
#include "tables/cables.hpp"

namespace lvb::door {
namespace {

bool check_run(Refusal &refusal, const lvb_cable_run &run, Place place) noexcept {
    return check_stated(refusal, run.stated, LVB_STATED_TEMPERATURE, place) &&
           check_field(refusal, run.frequency_mhz, frequency_range, place, LVB_FIELD_FREQUENCY_MHZ) &&
           check_field(refusal, run.length_m, length_range, place, LVB_FIELD_LENGTH_M) &&
           check_temperature(refusal, run.temperature_degc, run.stated, place) &&
           check_connectors(refusal, run.connector_count, run.connector_loss_db, place);
}

bool take_table(Refusal &refusal, const lvb_cable_run &run, const lvb_cable_table *lent, Place place,
                cable::Table &table) noexcept {
    if (!check_cable_type(refusal, run.cable_type, place)) return false;
    if (run.cable_type != 0 && lent != nullptr) return refuse(refusal, LVB_E_CONFLICT, {}, LVB_FIELD_TABLE);
    if (lent != nullptr) return take_cable_table(refusal, lent, -1, table);
    if (run.cable_type == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_CABLE_TYPE, 0.0, 1.0, tables::cable_types);
    table = tables::cable_table(run.cable_type);
    return true;
}

bool compute(Refusal &refusal, const lvb_cable_run *lent, const lvb_cable_table *lent_table,
             lvb_cable_loss *loss) noexcept {
    const Place place{LVB_STRUCT_CABLE_RUN};
    lvb_cable_run run{};
    if (!take(refusal, lent, run, place, LVB_FIELD_RUN) ||
        !check_result(refusal, loss, LVB_STRUCT_CABLE_LOSS, LVB_FIELD_LOSS) || !check_run(refusal, run, place))
        return false;
    cable::Run model{{}, run.length_m, run.connector_count, run.connector_loss_db};
    if (!take_table(refusal, run, lent_table, place, model.table) ||
        !check_usable(refusal, model.table, run.frequency_mhz, -1))
        return false;

    const cable::Loss result = cable::loss(model, run.frequency_mhz, temperature_of(run.temperature_degc, run.stated));
    lvb_cable_loss out{};
    out.notes = result.attenuation.extrapolated ? std::uint32_t{LVB_NOTE_EXTRAPOLATED} : 0u;
    out.attenuation_db_per_100m = result.attenuation.db_per_100m;
    out.cable_loss_db = result.cable_db;
    out.connectors_loss_db = result.connectors_db;
    out.loss_db = result.cable_db + result.connectors_db;
    give(loss, out);
    return true;
}

bool check_type(Refusal &refusal, std::int32_t type) noexcept {
    if (type >= 1 && type <= tables::cable_types) return true;
    return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_CABLE_TYPE, type, 1.0, tables::cable_types);
}

bool describe(Refusal &refusal, std::int32_t type, lvb_cable_info *info) noexcept {
    if (!check_result(refusal, info, LVB_STRUCT_CABLE_INFO, LVB_FIELD_INFO)) return false;
    if (!check_type(refusal, type)) return false;
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
    return true;
}

bool describe_row(Refusal &refusal, std::int32_t type, std::uint32_t index, lvb_cable_row *row) noexcept {
    if (!check_result(refusal, row, LVB_STRUCT_CABLE_ROW, LVB_FIELD_ROW)) return false;
    if (!check_type(refusal, type)) return false;
    const std::size_t rows = tables::cable_table(type).rows;
    if (index >= rows)
        return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_ROW_INDEX, index, 0.0, static_cast<double>(rows - 1));
    const tables::CableRow found = tables::cable_row(type, index);
    lvb_cable_row out{};
    out.frequency_mhz = found.frequency_mhz;
    out.attenuation_db_per_100m = found.attenuation_db_per_100m;
    out.source = found.source;
    out.remark = found.remark;
    give(row, out);
    return true;
}

// Next character of a designation that counts, in upper case; 0 at its end. Spaces, hyphens and slashes do not count.
char next_significant(const char *&text) noexcept {
    while (*text == ' ' || *text == '-' || *text == '/') ++text;
    if (*text == '\0') return '\0';
    const char c = *text++;
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
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
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, run, table, loss); });
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
    return answer(fault, [&](Refusal &refusal) noexcept { return describe(refusal, cable_type, info); });
}

lvb_status lvb_describe_cable_row(int32_t cable_type, uint32_t row_index, lvb_cable_row *row, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return describe_row(refusal, cable_type, row_index, row); });
}

} // extern "C"
