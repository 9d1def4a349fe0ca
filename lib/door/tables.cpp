#include "door/tables.hpp"

namespace lvb::door {
namespace {

constexpr Range table_frequency{0.001, 1e6, true};
constexpr Range table_attenuation{0.001, 1e5, true};
constexpr double steepest_gain_step_db = 100.0;

Refusal check_rows(std::uint32_t rows, const double *frequency_mhz, const double *values, std::int32_t value_field,
                   Place place) noexcept {
    if (rows == 0) return refuse(LVB_E_TABLE_EMPTY, place, LVB_FIELD_ROW_COUNT, rows, 1.0, LVB_MAX_ROWS);
    if (rows > LVB_MAX_ROWS) return refuse(LVB_E_COUNT, place, LVB_FIELD_ROW_COUNT, rows, 1.0, LVB_MAX_ROWS);
    if (frequency_mhz == nullptr) return refuse(LVB_E_NULL, place, LVB_FIELD_FREQUENCY_MHZ);
    if (values == nullptr) return refuse(LVB_E_NULL, place, value_field);
    return {};
}

// One row's frequency: in range, and above that of the row before.
Refusal check_frequency(const double *frequency_mhz, std::uint32_t row, Place place) noexcept {
    const double f = frequency_mhz[row];
    if (const Refusal refusal = check_field(f, table_frequency, place, LVB_FIELD_FREQUENCY_MHZ)) return refusal;
    if (row == 0 || f > frequency_mhz[row - 1]) return {};
    const lvb_status status = f == frequency_mhz[row - 1] ? LVB_E_TABLE_DUPLICATE : LVB_E_TABLE_UNSORTED;
    return refuse(status, place, LVB_FIELD_FREQUENCY_MHZ, f, frequency_mhz[row - 1], table_frequency.maximum);
}

} // namespace

cable::Table read_cable_table(const lvb_cable_table *checked) noexcept {
    lvb_cable_table copy;
    std::memcpy(&copy, checked, sizeof copy);
    return {copy.frequency_mhz, copy.attenuation_db_per_100m, copy.row_count};
}

chain::GainTable read_gain_table(const lvb_gain_table *checked) noexcept {
    lvb_gain_table copy;
    std::memcpy(&copy, checked, sizeof copy);
    return {copy.frequency_mhz, copy.gain_db, copy.row_count};
}

Refusal take_cable_table(const lvb_cable_table *lent, std::int32_t stage, cable::Table &table) noexcept {
    Place place{LVB_STRUCT_CABLE_TABLE, stage};
    lvb_cable_table copy;
    if (const Refusal refusal = take(lent, copy, place, LVB_FIELD_CABLE_TABLE)) return refusal;
    const double *f = copy.frequency_mhz;
    const double *a = copy.attenuation_db_per_100m;
    if (const Refusal refusal = check_rows(copy.row_count, f, a, LVB_FIELD_ATTENUATION_DB_PER_100M, place))
        return refusal;
    for (std::uint32_t i = 0; i < copy.row_count; ++i) {
        place.row = static_cast<std::int32_t>(i);
        if (const Refusal refusal = check_frequency(f, i, place)) return refusal;
        if (const Refusal refusal = check_field(a[i], table_attenuation, place, LVB_FIELD_ATTENUATION_DB_PER_100M))
            return refusal;
        if (i == 0) continue;
        const double growth = f[i] / f[i - 1];
        const double most = a[i - 1] * growth * growth;
        if (a[i] < a[i - 1] || a[i] > most)
            return refuse(LVB_E_TABLE_TOO_STEEP, place, LVB_FIELD_ATTENUATION_DB_PER_100M, a[i], a[i - 1], most);
    }
    table = {f, a, copy.row_count};
    return {};
}

Refusal check_usable(const cable::Table &table, double frequency_mhz, Place place) noexcept {
    const double lowest = cable::usable_below * table.frequency_mhz[0];
    const double highest = cable::usable_above * table.frequency_mhz[table.rows - 1];
    if (frequency_mhz >= lowest && frequency_mhz <= highest) return {};
    return refuse(LVB_E_OUTSIDE_TABLE, place, LVB_FIELD_FREQUENCY_MHZ, frequency_mhz, lowest, highest);
}

Refusal take_gain_table(const lvb_gain_table *lent, std::int32_t stage, const Range &range, double frequency_mhz,
                        chain::GainTable &table) noexcept {
    Place place{LVB_STRUCT_GAIN_TABLE, stage};
    lvb_gain_table copy;
    if (const Refusal refusal = take(lent, copy, place, LVB_FIELD_GAIN_TABLE)) return refusal;
    const double *f = copy.frequency_mhz;
    const double *g = copy.gain_db;
    if (const Refusal refusal = check_rows(copy.row_count, f, g, LVB_FIELD_GAIN_DB, place)) return refusal;
    for (std::uint32_t i = 0; i < copy.row_count; ++i) {
        place.row = static_cast<std::int32_t>(i);
        if (const Refusal refusal = check_frequency(f, i, place)) return refusal;
        if (const Refusal refusal = check_range(g[i], range.minimum, range.maximum, place, LVB_FIELD_GAIN_DB))
            return refusal;
        if (i == 0) continue;
        const double least = g[i - 1] - steepest_gain_step_db;
        const double most = g[i - 1] + steepest_gain_step_db;
        if (g[i] < least || g[i] > most)
            return refuse(LVB_E_TABLE_TOO_STEEP, place, LVB_FIELD_GAIN_DB, g[i], least, most);
    }
    const double first = f[0];
    const double last = f[copy.row_count - 1];
    if (frequency_mhz < first || frequency_mhz > last) {
        place.row = -1;
        return refuse(LVB_E_OUTSIDE_TABLE, place, LVB_FIELD_FREQUENCY_MHZ, frequency_mhz, first, last);
    }
    table = {f, g, copy.row_count};
    return {};
}

} // namespace lvb::door
