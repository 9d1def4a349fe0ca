#include "keys.hpp"

#include <utility>

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
constexpr std::uint32_t amplifier = bit(LVB_KIND_AMPLIFIER);
constexpr std::uint32_t allowance = bit(LVB_KIND_ALLOWANCE);
constexpr std::uint32_t bending = bit(LVB_KIND_PASSIVE) | amplifier | receiver;

constexpr std::uint32_t isotropic = bit(kind_of_pattern(LVB_PATTERN_ISOTROPIC));
constexpr std::uint32_t cosine = bit(kind_of_pattern(LVB_PATTERN_COSINE));
constexpr std::uint32_t cuts = bit(kind_of_pattern(LVB_PATTERN_CUTS));
constexpr std::uint32_t helix = bit(kind_of_pattern(LVB_PATTERN_HELIX));

constexpr std::uint32_t free_space = bit(kind_of_path(LVB_PATH_FREE_SPACE));
constexpr std::uint32_t two_ray = bit(kind_of_path(LVB_PATH_TWO_RAY));
constexpr std::uint32_t log_distance = bit(kind_of_path(LVB_PATH_LOG_DISTANCE));
constexpr std::uint32_t indoor = bit(kind_of_path(LVB_PATH_INDOOR));
constexpr std::uint32_t site_general = bit(kind_of_path(LVB_PATH_SITE_GENERAL));
constexpr std::uint32_t radiating_cable = bit(kind_of_path(LVB_PATH_RADIATING_CABLE));
constexpr std::uint32_t with_heights = free_space | two_ray | log_distance | indoor | site_general;
constexpr std::uint32_t any_path = with_heights | radiating_cable;

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
        {"far_azimuth_deg", LVB_FIELD_FAR_AZIMUTH_DEG, same, same, antenna, "degrees"},
        {"far_elevation_deg", LVB_FIELD_FAR_ELEVATION_DEG, same, same, antenna, "degrees"},
        {"near_azimuth_deg", LVB_FIELD_NEAR_AZIMUTH_DEG, same, same, antenna, "degrees"},
        {"near_elevation_deg", LVB_FIELD_NEAR_ELEVATION_DEG, same, same, antenna, "degrees"},
        {"facing_deg", LVB_FIELD_FACING_DEG, same, same, allowance, "degrees"},
        {"noise_figure_db", LVB_FIELD_NOISE_FIGURE_DB, same, same, amplifier | receiver, "dB"},
        {"noise_temperature_k", LVB_FIELD_NOISE_FIGURE_DB, lvb_noise_figure_db_from_noise_temperature_k,
         lvb_noise_temperature_k_from_noise_figure_db, amplifier | receiver, "K"},
        {"intercept_dbm", LVB_FIELD_INTERCEPT_DBM, same, same, bending, "dBm"},
        {"compression_dbm", LVB_FIELD_COMPRESSION_DBM, same, same, bending, "dBm"},
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

const std::vector<NumberKey> &pattern_keys() {
    static const std::vector<NumberKey> keys = {
        {"gain_dbi", LVB_FIELD_GAIN_DBI, same, same, isotropic | cosine | cuts, "dBi"},
        {"gain_dbd", LVB_FIELD_GAIN_DBI, lvb_dbi_from_dbd, lvb_dbd_from_dbi, isotropic | cosine | cuts, "dBd"},
        {"beam_width_deg", LVB_FIELD_BEAM_WIDTH_DEG, same, same, cosine, "degrees"},
        {"front_to_back_db", LVB_FIELD_FRONT_TO_BACK_DB, same, same, cosine | cuts | helix, "dB"},
        {"turns", LVB_FIELD_TURNS, same, same, helix, "turns"},
        {"spacing_wavelengths", LVB_FIELD_SPACING_WAVELENGTHS, same, same, helix, "wavelengths"},
        {"circumference_wavelengths", LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS, same, same, helix, "wavelengths"},
    };
    return keys;
}

const std::vector<NumberKey> &turn_keys() {
    static const std::vector<NumberKey> keys = {
        {"azimuth_deg", LVB_FIELD_AZIMUTH_DEG, same, same, antenna, "degrees"},
        {"tilt_deg", LVB_FIELD_TILT_DEG, same, same, antenna, "degrees"},
        {"roll_deg", LVB_FIELD_ROLL_DEG, same, same, antenna, "degrees"},
        {"polarization_deg", LVB_FIELD_POLARIZATION_DEG, same, same, antenna, "degrees"},
        {"ellipticity", LVB_FIELD_ELLIPTICITY, same, same, antenna, "ellipticity"},
    };
    return keys;
}

const std::vector<NumberKey> &place_keys() {
    static const std::vector<NumberKey> keys = [] {
        std::vector<NumberKey> all = {
            {"x_m", LVB_FIELD_X_M, same, same, antenna, "m"},
            {"x_ft", LVB_FIELD_X_M, lvb_metres_from_feet, lvb_feet_from_metres, antenna, "ft"},
            {"y_m", LVB_FIELD_Y_M, same, same, antenna, "m"},
            {"y_ft", LVB_FIELD_Y_M, lvb_metres_from_feet, lvb_feet_from_metres, antenna, "ft"},
            {"z_m", LVB_FIELD_Z_M, same, same, antenna, "m"},
            {"z_ft", LVB_FIELD_Z_M, lvb_metres_from_feet, lvb_feet_from_metres, antenna, "ft"},
        };
        all.insert(all.end(), turn_keys().begin(), turn_keys().end());
        all.push_back({"largest_dimension_m", LVB_FIELD_LARGEST_DIMENSION_M, same, same, antenna, "m"});
        return all;
    }();
    return keys;
}

const std::vector<NumberKey> &path_keys() {
    static const std::vector<NumberKey> keys = {
        {"transmit_height_m", LVB_FIELD_TRANSMIT_HEIGHT_M, same, same, with_heights, "m"},
        {"transmit_height_ft", LVB_FIELD_TRANSMIT_HEIGHT_M, lvb_metres_from_feet, lvb_feet_from_metres, with_heights,
         "ft"},
        {"receive_height_m", LVB_FIELD_RECEIVE_HEIGHT_M, same, same, with_heights, "m"},
        {"receive_height_ft", LVB_FIELD_RECEIVE_HEIGHT_M, lvb_metres_from_feet, lvb_feet_from_metres, with_heights,
         "ft"},
        {"relative_permittivity", LVB_FIELD_RELATIVE_PERMITTIVITY, same, same, two_ray, ""},
        {"conductivity_s_per_m", LVB_FIELD_CONDUCTIVITY_S_PER_M, same, same, two_ray, "S/m"},
        {"exponent", LVB_FIELD_EXPONENT, same, same, log_distance | radiating_cable, ""},
        {"reference_distance_m", LVB_FIELD_REFERENCE_DISTANCE_M, same, same, log_distance, "m"},
        {"reference_loss_db", LVB_FIELD_REFERENCE_LOSS_DB, same, same, log_distance, "dB"},
        {"power_loss_coefficient", LVB_FIELD_POWER_LOSS_COEFFICIENT, same, same, indoor, ""},
        {"floors", LVB_FIELD_FLOOR_COUNT, same, same, any_path, "floors"},
        {"floor_loss_db", LVB_FIELD_FLOOR_LOSS_DB, same, same, any_path, "dB"},
        {"walls", LVB_FIELD_WALL_COUNT, same, same, any_path, "walls"},
        {"wall_loss_db", LVB_FIELD_WALL_LOSS_DB, same, same, any_path, "dB"},
        {"longitudinal_loss_db_per_100m", LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M, same, same, radiating_cable,
         "dB/100 m"},
        {"longitudinal_loss_db_per_100ft", LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M, lvb_db_per_100m_from_db_per_100ft,
         lvb_db_per_100ft_from_db_per_100m, radiating_cable, "dB/100 ft"},
        {"coupling_loss_db", LVB_FIELD_COUPLING_LOSS_DB, same, same, radiating_cable, "dB"},
        {"lateral_distance_m", LVB_FIELD_LATERAL_DISTANCE_M, same, same, radiating_cable, "m"},
        {"lateral_distance_ft", LVB_FIELD_LATERAL_DISTANCE_M, lvb_metres_from_feet, lvb_feet_from_metres,
         radiating_cable, "ft"},
    };
    return keys;
}

const std::vector<NumberKey> &edge_keys() {
    static const std::vector<NumberKey> keys = {
        {"distance_m", LVB_FIELD_DISTANCE_M, same, same, air, "m"},
        {"distance_ft", LVB_FIELD_DISTANCE_M, lvb_metres_from_feet, lvb_feet_from_metres, air, "ft"},
        {"height_m", LVB_FIELD_HEIGHT_M, same, same, air, "m"},
        {"height_ft", LVB_FIELD_HEIGHT_M, lvb_metres_from_feet, lvb_feet_from_metres, air, "ft"},
    };
    return keys;
}

const std::vector<NumberKey> &noise_keys() {
    static const std::vector<NumberKey> keys = {
        {"bandwidth_mhz", LVB_FIELD_BANDWIDTH_MHZ, same, same, every, "MHz"},
        {"bandwidth_khz", LVB_FIELD_BANDWIDTH_MHZ, thousandth, thousandfold, every, "kHz"},
        {"carriers", LVB_FIELD_CARRIERS, same, same, every, "carriers"},
        {"antenna_temperature_k", LVB_FIELD_ANTENNA_TEMPERATURE_K, same, same, every, "K"},
        {"external_noise_figure_db", LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB, same, same, every, "dB"},
        {"noise_dbm", LVB_FIELD_NOISE_DBM, same, same, every, "dBm"},
        {"interference_dbm", LVB_FIELD_INTERFERENCE_DBM, same, same, every, "dBm"},
        {"carrier_to_noise_db", LVB_FIELD_CARRIER_TO_NOISE_DB, same, same, every, "dB"},
    };
    return keys;
}

const std::vector<NumberKey> &limit_keys() {
    static const std::vector<NumberKey> keys = {
        {"limit_dbm", LVB_FIELD_LIMIT_DBM, same, same, every, "dBm"},
        {"limit_mw", LVB_FIELD_LIMIT_DBM, lvb_dbm_from_mw, lvb_mw_from_dbm, every, "mW"},
        {"limit_w", LVB_FIELD_LIMIT_DBM, lvb_dbm_from_w, lvb_w_from_dbm, every, "W"},
        {"lowest_mhz", LVB_FIELD_LOWEST_MHZ, same, same, every, "MHz"},
        {"highest_mhz", LVB_FIELD_HIGHEST_MHZ, same, same, every, "MHz"},
    };
    return keys;
}

const std::vector<NumberKey> &neighbour_keys() {
    static const std::vector<NumberKey> keys = {
        {"separation_m", LVB_FIELD_SEPARATION_M, same, same, every, "m"},
        {"separation_ft", LVB_FIELD_SEPARATION_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"coupling_loss_db", LVB_FIELD_COUPLING_LOSS_DB, same, same, every, "dB"},
        {"transmit_gain_dbi", LVB_FIELD_TRANSMIT_GAIN_DBI, same, same, every, "dBi"},
        {"receive_gain_dbi", LVB_FIELD_RECEIVE_GAIN_DBI, same, same, every, "dBi"},
        {"receive_filter_db", LVB_FIELD_RECEIVE_FILTER_DB, same, same, every, "dB"},
        {"transmit_filter_db", LVB_FIELD_TRANSMIT_FILTER_DB, same, same, every, "dB"},
        {"blocking_dbm", LVB_FIELD_BLOCKING_DBM, same, same, every, "dBm"},
        {"transmit_noise_dbm", LVB_FIELD_TRANSMIT_NOISE_DBM, same, same, every, "dBm"},
        {"transmit_noise_dbc_per_hz", LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ, same, same, every, "dBc/Hz"},
        {"wanted_margin_db", LVB_FIELD_WANTED_MARGIN_DB, same, same, every, "dB"},
        {"wanted_rise_db", LVB_FIELD_WANTED_RISE_DB, same, same, every, "dB"},
    };
    return keys;
}

const std::vector<Vocabulary> &vocabularies() {
    static const std::vector<Vocabulary> all = {
        {LVB_STRUCT_LINK, &link_keys(), "the link"},    {LVB_STRUCT_PATTERN, &pattern_keys(), "a pattern"},
        {LVB_STRUCT_ANTENNA, &place_keys(), "a place"}, {LVB_STRUCT_PATH, &path_keys(), "a path"},
        {LVB_STRUCT_EDGE, &edge_keys(), "an edge"},     {LVB_STRUCT_NOISE_CONDITIONS, &noise_keys(), "noise"},
        {LVB_STRUCT_LIMIT, &limit_keys(), "a limit"},   {LVB_STRUCT_NEIGHBOURS, &neighbour_keys(), "neighbours"},
        {LVB_STRUCT_STAGE, &stage_keys(), "a stage"},
    };
    return all;
}

const std::vector<NumberKey> *keys_of_structure(std::int32_t structure) {
    for (const Vocabulary &vocabulary : vocabularies())
        if (vocabulary.structure == structure) return vocabulary.keys;
    return nullptr;
}

Columns over_frequency(std::vector<const NumberKey *> values) {
    return {keys_of_field(frequency_keys(), LVB_FIELD_FREQUENCY_MHZ, 0), std::move(values)};
}

namespace {

const std::vector<NumberKey> &azimuth_keys() {
    static const std::vector<NumberKey> keys = {{"azimuth_deg", LVB_FIELD_AZIMUTH_DEG, same, same, antenna, "degrees"}};
    return keys;
}

const std::vector<NumberKey> &elevation_keys() {
    static const std::vector<NumberKey> keys = {
        {"elevation_deg", LVB_FIELD_ELEVATION_DEG, same, same, antenna, "degrees"}};
    return keys;
}

const std::vector<NumberKey> &cut_gain_keys() {
    static const std::vector<NumberKey> keys = {{"gain_db", LVB_FIELD_GAIN_DB, same, same, antenna, "dB"},
                                                {"loss_db", LVB_FIELD_GAIN_DB, turned, turned, antenna, "dB"}};
    return keys;
}

const std::vector<NumberKey> &facing_keys() {
    static const std::vector<NumberKey> keys = {{"facing_deg", LVB_FIELD_FACING_DEG, same, same, allowance, "degrees"}};
    return keys;
}

const std::vector<NumberKey> &body_loss_keys() {
    static const std::vector<NumberKey> keys = {{"loss_db", LVB_FIELD_LOSS_DB, same, same, allowance, "dB"}};
    return keys;
}

Columns over_angle(const std::vector<NumberKey> &angles, const std::vector<NumberKey> &values) {
    Columns columns;
    for (const NumberKey &key : angles) columns.points.push_back(&key);
    for (const NumberKey &key : values) columns.values.push_back(&key);
    return columns;
}

} // namespace

Columns over_azimuth() { return over_angle(azimuth_keys(), cut_gain_keys()); }
Columns over_elevation() { return over_angle(elevation_keys(), cut_gain_keys()); }
Columns over_facing() { return over_angle(facing_keys(), body_loss_keys()); }

std::vector<const NumberKey *> keys_of_field(const std::vector<NumberKey> &keys, std::int32_t field,
                                             std::int32_t kind) {
    std::vector<const NumberKey *> found;
    for (const NumberKey &key : keys)
        if (key.field == field && serves(key, kind)) found.push_back(&key);
    return found;
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
    constexpr std::string_view units[] = {
        "_mw", "_w",   "_dbm",         "_dbw",      "_dbi",        "_dbd",          "_s_per_m",     "_m",
        "_ft", "_mhz", "_khz",         "_ghz",      "_degc",       "_degf",         "_db_per_100m", "_deg",
        "_db", "_k",   "_wavelengths", "_w_per_m2", "_mw_per_cm2", "_db_per_100ft", "_dbc_per_hz",  "_hz"};
    for (const std::string_view unit : units)
        if (key.ends_with(unit)) return key.substr(0, key.size() - unit.size());
    return key;
}

} // namespace desk
