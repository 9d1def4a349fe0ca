#include "keys.hpp"

namespace desk {
namespace {

double same(double x) { return x; }
double turned(double x) { return 0.0 - x; } // a loss is a negative gain
double thousandfold(double x) { return x * 1000.0; }
double thousandth(double x) { return x / 1000.0; }
double millionfold(double x) { return x * 1e6; }
double millionth(double x) { return x / 1e6; }

constexpr std::uint32_t bit(std::int32_t kind) { return 1u << static_cast<std::uint32_t>(kind); }

constexpr std::uint32_t source = bit(LVB_KIND_SOURCE);
constexpr std::uint32_t cable = bit(LVB_KIND_CABLE);
constexpr std::uint32_t receiver = bit(LVB_KIND_RECEIVER);
constexpr std::uint32_t antenna = bit(LVB_KIND_ANTENNA);
constexpr std::uint32_t air = bit(LVB_KIND_AIR);
constexpr std::uint32_t losing = bit(LVB_KIND_PASSIVE) | cable | bit(LVB_KIND_ALLOWANCE);
constexpr std::uint32_t with_plain_gain = losing | source | receiver | bit(LVB_KIND_AMPLIFIER);
constexpr std::uint32_t every = with_plain_gain | antenna | air;

} // namespace

const std::vector<NumberKey> &link_keys() {
    static const std::vector<NumberKey> keys = {
        {"frequency_mhz", LVB_FIELD_FREQUENCY_MHZ, same, same, every, "MHz"},
        {"frequency_ghz", LVB_FIELD_FREQUENCY_MHZ, thousandfold, thousandth, every, "GHz"},
        {"far_distance_m", LVB_FIELD_FAR_DISTANCE_M, same, same, every, "m"},
        {"far_distance_ft", LVB_FIELD_FAR_DISTANCE_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"near_distance_m", LVB_FIELD_NEAR_DISTANCE_M, same, same, every, "m"},
        {"near_distance_ft", LVB_FIELD_NEAR_DISTANCE_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"temperature_degc", LVB_FIELD_TEMPERATURE_DEGC, same, same, every, "degC"},
        {"temperature_degf", LVB_FIELD_TEMPERATURE_DEGC, lvb_degc_from_degf, lvb_degf_from_degc, every, "degF"},
    };
    return keys;
}

const std::vector<NumberKey> &stage_keys() {
    static const std::vector<NumberKey> keys = {
        {"power_mw", LVB_FIELD_LEVEL_DBM, lvb_dbm_from_mw, lvb_mw_from_dbm, source, "mW"},
        {"power_w", LVB_FIELD_LEVEL_DBM, lvb_dbm_from_w, lvb_w_from_dbm, source, "W"},
        {"power_dbm", LVB_FIELD_LEVEL_DBM, same, same, source, "dBm"},
        {"power_dbw", LVB_FIELD_LEVEL_DBM, lvb_dbm_from_dbw, lvb_dbw_from_dbm, source, "dBW"},
        {"gain_db", LVB_FIELD_GAIN_DB, same, same, with_plain_gain, "dB gain"},
        {"loss_db", LVB_FIELD_GAIN_DB, turned, turned, losing, "dB loss"},
        {"gain_dbi", LVB_FIELD_GAIN_DB, same, same, antenna, "dBi"},
        {"gain_dbd", LVB_FIELD_GAIN_DB, lvb_dbi_from_dbd, lvb_dbd_from_dbi, antenna, "dBd"},
        {"beyond_free_space_db", LVB_FIELD_GAIN_DB, same, same, air, "dB beyond free space"},
        {"tolerance_db", LVB_FIELD_TOLERANCE_DB, same, same, every, "dB"},
        {"length_m", LVB_FIELD_LENGTH_M, same, same, cable, "m"},
        {"length_ft", LVB_FIELD_LENGTH_M, lvb_metres_from_feet, lvb_feet_from_metres, cable, "ft"},
        {"connectors", LVB_FIELD_CONNECTOR_COUNT, same, same, cable, "connectors"},
        {"connector_loss_db", LVB_FIELD_CONNECTOR_LOSS_DB, same, same, cable, "dB"},
        {"floor_dbm", LVB_FIELD_FLOOR_DBM, same, same, receiver, "dBm"},
        {"wanted_low_dbm", LVB_FIELD_WANTED_LOW_DBM, same, same, receiver, "dBm"},
        {"wanted_high_dbm", LVB_FIELD_WANTED_HIGH_DBM, same, same, receiver, "dBm"},
        {"ceiling_dbm", LVB_FIELD_CEILING_DBM, same, same, receiver, "dBm"},
    };
    return keys;
}

const std::vector<NumberKey> &frequency_keys() {
    static const std::vector<NumberKey> keys = {
        {"frequency_mhz", LVB_FIELD_FREQUENCY_MHZ, same, same, every, "MHz"},
        {"frequency_hz", LVB_FIELD_FREQUENCY_MHZ, millionth, millionfold, every, "Hz"},
        {"frequency_khz", LVB_FIELD_FREQUENCY_MHZ, thousandth, thousandfold, every, "kHz"},
        {"frequency_ghz", LVB_FIELD_FREQUENCY_MHZ, thousandfold, thousandth, every, "GHz"},
    };
    return keys;
}

const std::vector<NumberKey> &attenuation_keys() {
    static const std::vector<NumberKey> keys = {
        {"attenuation_db_per_100m", LVB_FIELD_ATTENUATION_DB_PER_100M, same, same, cable, "dB/100 m"},
        {"attenuation_db_per_100ft", LVB_FIELD_ATTENUATION_DB_PER_100M, lvb_db_per_100m_from_db_per_100ft,
         lvb_db_per_100ft_from_db_per_100m, cable, "dB/100 ft"},
    };
    return keys;
}

bool serves(const NumberKey &key, std::int32_t kind) { return kind == 0 || (key.kinds & bit(kind)) != 0; }

std::string ways_to_write(const std::vector<NumberKey> &keys, std::int32_t field, std::int32_t kind) {
    std::string ways;
    for (const NumberKey &key : keys) {
        if (key.field != field || !serves(key, kind)) continue;
        ways += (ways.empty() ? "" : " or ") + std::string(key.name);
    }
    return ways;
}

std::string_view quantity_of(std::string_view key) {
    constexpr std::string_view units[] = {"_mw",   "_w",    "_dbm",         "_dbw",          "_dbi", "_dbd",
                                          "_m",    "_ft",   "_mhz",         "_hz",           "_khz", "_ghz",
                                          "_degc", "_degf", "_db_per_100m", "_db_per_100ft", "_db"};
    for (const std::string_view unit : units)
        if (key.ends_with(unit)) return key.substr(0, key.size() - unit.size());
    return key;
}

} // namespace desk
