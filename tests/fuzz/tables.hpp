// Tables that a host may lend, well made or not; their memory is exactly as long as they say.
#pragma once

#include "fuzz/bytes.hpp"
#include "fuzz/require.hpp"

#include <deque>

namespace fuzz {

/// Owns what stages point to for the time of one call.
class Tables {
  public:
    const lvb_gain_table *gain(Bytes &bytes, double low, double high) {
        const bool wild = bytes.once_in(6);
        std::vector<double> gains;
        const std::vector<double> frequencies = rising(bytes, wild);
        double last = bytes.between(low, high);
        for (std::size_t i = 0; i < frequencies.size(); ++i) {
            gains.push_back(wild ? bytes.number(low, high) : last);
            last = bytes.between(last - 50.0 < low ? low : last - 50.0, last + 50.0 > high ? high : last + 50.0);
        }
        lvb_gain_table table{};
        fill(bytes, table, frequencies, gains, table.gain_db);
        return keep(table);
    }
    const lvb_cable_table *cable(Bytes &bytes) {
        const bool wild = bytes.once_in(6);
        std::vector<double> values;
        const std::vector<double> frequencies = rising(bytes, wild);
        double value = bytes.between(0.01, 50.0);
        for (std::size_t i = 0; i < frequencies.size(); ++i) {
            const double growth = i == 0 ? 1.0 : frequencies[i] / frequencies[i - 1];
            value *= bytes.between(1.0, wild ? growth * growth * growth : growth);
            values.push_back(wild && bytes.once_in(4) ? bytes.any_number() : value);
        }
        lvb_cable_table table{};
        fill(bytes, table, frequencies, values, table.attenuation_db_per_100m);
        return keep(table);
    }

  private:
    static std::vector<double> rising(Bytes &bytes, bool wild) {
        std::vector<double> frequencies;
        double frequency = bytes.between(0.01, 200.0);
        for (std::uint32_t rows = bytes.below(12); rows > 0; --rows) {
            frequencies.push_back(wild && bytes.once_in(4) ? bytes.any_number() : frequency);
            frequency += bytes.between(wild ? 0.0 : 0.001, 900.0);
        }
        return frequencies;
    }
    const double *lend(const std::vector<double> &values) {
        columns_.emplace_back(values.size() * sizeof(double));
        for (std::size_t i = 0; i < values.size(); ++i) columns_.back().put(values[i], i * sizeof(double));
        return columns_.back().as<double>();
    }
    template <class Table>
    void fill(Bytes &bytes, Table &table, const std::vector<double> &frequencies, const std::vector<double> &values,
              const double *&column) {
        table.size = bytes.size_of(sizeof table);
        table.row_count = static_cast<std::uint32_t>(frequencies.size());
        table.frequency_mhz = bytes.once_in(64) ? nullptr : lend(frequencies);
        column = bytes.once_in(64) ? nullptr : lend(values);
        // more rows than there is memory for are only given where the count alone must be refused
        if (bytes.once_in(64)) table.row_count = LVB_MAX_ROWS + 1 + bytes.raw<std::uint16_t>();
        tail_ = bytes.once_in(8);
    }
    template <class Table>
    const Table *keep(const Table &table) {
        structs_.push_back(result<Table>(table.size));
        structs_.back().put(table);
        if (!tail_) structs_.back().zero_from(sizeof table);
        return structs_.back().template as<Table>();
    }

    bool tail_ = false;
    std::deque<Memory> columns_;
    std::deque<Memory> structs_;
};

} // namespace fuzz
