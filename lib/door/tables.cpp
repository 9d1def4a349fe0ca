#include "door/tables.hpp"

namespace lvb::door {
namespace {

constexpr Range table_frequency{0.001, 1e6, true};
constexpr Range table_attenuation{0.001, 1e5, true};
constexpr double steepest_gain_step_db = 100.0;

bool check_rows(Refusal &refusal, std::uint32_t rows, const double *frequency_mhz, const double *values,
                std::int32_t value_field, Place place) noexcept {
    if (rows == 0) return refuse(refusal, LVB_E_TABLE_EMPTY, place, LVB_FIELD_ROW_COUNT, rows, 1.0, LVB_MAX_ROWS);
    if (rows > LVB_MAX_ROWS) return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_ROW_COUNT, rows, 1.0, LVB_MAX_ROWS);
    if (frequency_mhz == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_FREQUENCY_MHZ);
    if (values == nullptr) return refuse(refusal, LVB_E_NULL, place, value_field);
    return true;
}

// One row's frequency: in range, and above that of the row before.
bool check_frequency(Refusal &refusal, const double *frequency_mhz, std::uint32_t row, Place place) noexcept {
    const double f = frequency_mhz[row];
    if (!check_field(refusal, f, table_frequency, place, LVB_FIELD_FREQUENCY_MHZ)) return false;
    if (row == 0 || f > frequency_mhz[row - 1]) return true;
    const lvb_status status = f == frequency_mhz[row - 1] ? LVB_E_TABLE_DUPLICATE : LVB_E_TABLE_UNSORTED;
    return refuse(refusal, status, place, LVB_FIELD_FREQUENCY_MHZ, f, frequency_mhz[row - 1], table_frequency.maximum);
}

} // namespace

bool take_cable_table(Refusal &refusal, const lvb_cable_table *lent, std::int32_t stage, cable::Table &table) noexcept {
    Place place{LVB_STRUCT_CABLE_TABLE, stage};
    lvb_cable_table copy{};
    if (!take(refusal, lent, copy, place, LVB_FIELD_CABLE_TABLE)) return false;
    const double *f = copy.frequency_mhz;
    const double *a = copy.attenuation_db_per_100m;
    if (!check_rows(refusal, copy.row_count, f, a, LVB_FIELD_ATTENUATION_DB_PER_100M, place)) return false;
    for (std::uint32_t i = 0; i < copy.row_count; ++i) {
        place.row = static_cast<std::int32_t>(i);
        if (!check_frequency(refusal, f, i, place) ||
            !check_field(refusal, a[i], table_attenuation, place, LVB_FIELD_ATTENUATION_DB_PER_100M))
            return false;
        if (i == 0) continue;
        const double growth = f[i] / f[i - 1];
        const double most = a[i - 1] * growth * growth;
        if (a[i] < a[i - 1] || a[i] > most)
            return refuse(refusal, LVB_E_TABLE_TOO_STEEP, place, LVB_FIELD_ATTENUATION_DB_PER_100M, a[i], a[i - 1],
                          most);
    }
    table = {f, a, copy.row_count};
    return true;
}

bool check_usable(Refusal &refusal, const cable::Table &table, double frequency_mhz, std::int32_t stage) noexcept {
    const double lowest = cable::usable_below * table.frequency_mhz[0];
    const double highest = cable::usable_above * table.frequency_mhz[table.rows - 1];
    return (frequency_mhz >= lowest && frequency_mhz <= highest) ||
           refuse(refusal, LVB_E_OUTSIDE_TABLE, {LVB_STRUCT_CABLE_TABLE, stage}, LVB_FIELD_FREQUENCY_MHZ, frequency_mhz,
                  lowest, highest);
}

bool take_gain_table(Refusal &refusal, const lvb_gain_table *lent, std::int32_t stage, const Range &range,
                     chain::GainTable &table) noexcept {
    Place place{LVB_STRUCT_GAIN_TABLE, stage};
    lvb_gain_table copy{};
    if (!take(refusal, lent, copy, place, LVB_FIELD_GAIN_TABLE)) return false;
    const double *f = copy.frequency_mhz;
    const double *g = copy.gain_db;
    if (!check_rows(refusal, copy.row_count, f, g, LVB_FIELD_GAIN_DB, place)) return false;
    for (std::uint32_t i = 0; i < copy.row_count; ++i) {
        place.row = static_cast<std::int32_t>(i);
        if (!check_frequency(refusal, f, i, place) ||
            !check_range(refusal, g[i], range.minimum, range.maximum, place, LVB_FIELD_GAIN_DB))
            return false;
        if (i == 0) continue;
        const double least = g[i - 1] - steepest_gain_step_db;
        const double most = g[i - 1] + steepest_gain_step_db;
        if (g[i] < least || g[i] > most)
            return refuse(refusal, LVB_E_TABLE_TOO_STEEP, place, LVB_FIELD_GAIN_DB, g[i], least, most);
    }
    table = {f, g, copy.row_count};
    return true;
}

bool check_inside(Refusal &refusal, const chain::GainTable &table, double frequency_mhz, std::int32_t stage) noexcept {
    const double first = table.frequency_mhz[0];
    const double last = table.frequency_mhz[table.rows - 1];
    return (frequency_mhz >= first && frequency_mhz <= last) ||
           refuse(refusal, LVB_E_OUTSIDE_TABLE, {LVB_STRUCT_GAIN_TABLE, stage}, LVB_FIELD_FREQUENCY_MHZ, frequency_mhz,
                  first, last);
}

} // namespace lvb::door
