#include "read_parts.hpp"

namespace desk {

std::shared_ptr<const Table> Tables::read(const Value &value, const Columns &columns) {
    std::shared_ptr<const Table> &table = known_[&value];
    if (table == nullptr) table = std::make_shared<const Table>(read_table(checks_, value, columns));
    return table;
}

Members members_of(const Value &object) {
    Members members;
    for (const Value *member : object.items) members[member->key] = member;
    return members;
}

std::shared_ptr<const Table> read_body_table(Tables &tables, const Value &value) {
    return tables.read(value, over_facing());
}

Pattern read_pattern(const Checks &checks, Tables &tables, const Value &value) {
    checks.expect(value, Value::Kind::object);
    Pattern pattern;
    pattern.value = &value;
    lvb_pattern &entry = pattern.entry;
    entry.size = sizeof entry;
    entry.kind = checks.choose(checks.need(value, "kind"), words(lvb_pattern_name, 0), "kind of pattern");
    std::vector<std::string> known = {"kind", "source"};
    if (entry.kind == LVB_PATTERN_CUTS) known.insert(known.end(), {"azimuth_cut", "elevation_cut"});
    checks.check_keys(value, with_names(known, pattern_keys(), kind_of_pattern(entry.kind)),
                      std::string("a pattern of kind '") + lvb_pattern_name(entry.kind) + "'");
    pattern.source = checks.text_or_empty(value, "source");
    if (const Value *cut = value.find("azimuth_cut")) pattern.azimuth_cut = tables.read(*cut, over_azimuth());
    if (const Value *cut = value.find("elevation_cut")) pattern.elevation_cut = tables.read(*cut, over_elevation());
    pattern.numbers = numbers_of(checks, members_of(value), pattern_keys(), LVB_STRUCT_PATTERN, entry.kind);
    entry.gain_dbi = taken(pattern.numbers, LVB_FIELD_GAIN_DBI);
    entry.beam_width_deg = taken(pattern.numbers, LVB_FIELD_BEAM_WIDTH_DEG);
    entry.front_to_back_db = taken(pattern.numbers, LVB_FIELD_FRONT_TO_BACK_DB);
    entry.turns = taken(pattern.numbers, LVB_FIELD_TURNS);
    entry.spacing_wavelengths = taken(pattern.numbers, LVB_FIELD_SPACING_WAVELENGTHS);
    entry.circumference_wavelengths = taken(pattern.numbers, LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS);
    // To the library no gain is 0 dBi. Here nothing is guessed: who means 0 writes it.
    const bool needs_gain = entry.kind == LVB_PATTERN_ISOTROPIC || entry.kind == LVB_PATTERN_CUTS;
    if (needs_gain && !pattern.numbers.contains(LVB_FIELD_GAIN_DBI))
        checks.document().refuse(value, "gain_dbi or gain_dbd is missing");
    if (entry.kind == LVB_PATTERN_CUTS && !pattern.azimuth_cut && !pattern.elevation_cut)
        checks.document().refuse(value, "azimuth_cut or elevation_cut is missing");
    return pattern;
}

namespace {

void turn(lvb_antenna &antenna, const GivenNumbers &numbers) {
    antenna.azimuth_deg = taken(numbers, LVB_FIELD_AZIMUTH_DEG);
    antenna.tilt_deg = taken(numbers, LVB_FIELD_TILT_DEG);
    antenna.roll_deg = taken(numbers, LVB_FIELD_ROLL_DEG);
    antenna.polarization_deg = taken(numbers, LVB_FIELD_POLARIZATION_DEG);
    antenna.ellipticity = taken(numbers, LVB_FIELD_ELLIPTICITY);
}

} // namespace

PackAntenna read_pack_antenna(const Checks &checks, Tables &tables, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"pattern", "note"}, turn_keys(), 0), "a pack's antenna");
    checks.text_or_empty(value, "note");
    PackAntenna worn;
    worn.value = &value;
    worn.numbers = numbers_of(checks, members_of(value), turn_keys(), LVB_STRUCT_ANTENNA, 0);
    worn.entry.size = sizeof worn.entry;
    turn(worn.entry, worn.numbers);
    if (const Value *pattern = value.find("pattern")) worn.pattern = read_pattern(checks, tables, *pattern);
    return worn;
}

Place read_place(const Checks &checks, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"note"}, place_keys(), 0), "a place");
    checks.text_or_empty(value, "note");
    Place place;
    place.value = &value;
    place.numbers = numbers_of(checks, members_of(value), place_keys(), LVB_STRUCT_ANTENNA, 0);
    for (const std::int32_t field : {LVB_FIELD_X_M, LVB_FIELD_Y_M, LVB_FIELD_Z_M})
        need_number(checks, value, place.numbers, place_keys(), field);
    lvb_antenna &entry = place.entry;
    entry.size = sizeof entry;
    entry.x_m = taken(place.numbers, LVB_FIELD_X_M);
    entry.y_m = taken(place.numbers, LVB_FIELD_Y_M);
    entry.z_m = taken(place.numbers, LVB_FIELD_Z_M);
    turn(entry, place.numbers);
    entry.largest_dimension_m = taken(place.numbers, LVB_FIELD_LARGEST_DIMENSION_M);
    return place;
}

namespace {

void read_edges(const Checks &checks, const Value &list, Path &path) {
    checks.expect(list, Value::Kind::list);
    for (const Value *item : list.items) {
        checks.expect(*item, Value::Kind::object);
        checks.check_keys(*item, with_names({"note"}, edge_keys(), 0), "an edge");
        checks.text_or_empty(*item, "note");
        const GivenNumbers numbers = numbers_of(checks, members_of(*item), edge_keys(), LVB_STRUCT_EDGE, 0);
        for (const std::int32_t field : {LVB_FIELD_DISTANCE_M, LVB_FIELD_HEIGHT_M})
            need_number(checks, *item, numbers, edge_keys(), field);
        path.edges.push_back({taken(numbers, LVB_FIELD_DISTANCE_M), taken(numbers, LVB_FIELD_HEIGHT_M)});
        path.edge_numbers.push_back(numbers);
    }
}

} // namespace

Path read_path(const Checks &checks, const Value &value) {
    checks.expect(value, Value::Kind::object);
    Path path;
    path.value = &value;
    lvb_path &entry = path.entry;
    entry.size = sizeof entry;
    entry.model = checks.choose(checks.need(value, "model"), words(lvb_path_name, 0), "model of a path");
    std::vector<std::string> known = {"model", "note"};
    if (entry.model == LVB_PATH_SITE_GENERAL) known.emplace_back("environment");
    if (entry.model == LVB_PATH_TWO_RAY) known.emplace_back("polarization");
    if (entry.model != LVB_PATH_RADIATING_CABLE) known.emplace_back("edges");
    checks.check_keys(value, with_names(known, path_keys(), kind_of_path(entry.model)),
                      std::string("a path of model '") + lvb_path_name(entry.model) + "'");
    checks.text_or_empty(value, "note");
    if (entry.model == LVB_PATH_SITE_GENERAL)
        entry.environment =
            checks.choose(checks.need(value, "environment"), words(lvb_environment_name, 1), "environment") + 1;
    if (entry.model == LVB_PATH_TWO_RAY)
        entry.polarization =
            checks.choose(checks.need(value, "polarization"), words(lvb_polarization_name, 0), "polarization");
    if (const Value *edges = value.find("edges")) read_edges(checks, *edges, path);
    const GivenNumbers &numbers = path.numbers = numbers_of(checks, members_of(value), path_keys(), LVB_STRUCT_PATH, 0);
    entry.floor_count = whole(checks, numbers, LVB_STRUCT_PATH, 0, LVB_FIELD_FLOOR_COUNT);
    entry.wall_count = whole(checks, numbers, LVB_STRUCT_PATH, 0, LVB_FIELD_WALL_COUNT);
    entry.transmit_height_m = taken(numbers, LVB_FIELD_TRANSMIT_HEIGHT_M);
    entry.receive_height_m = taken(numbers, LVB_FIELD_RECEIVE_HEIGHT_M);
    entry.relative_permittivity = taken(numbers, LVB_FIELD_RELATIVE_PERMITTIVITY);
    entry.conductivity_s_per_m = taken(numbers, LVB_FIELD_CONDUCTIVITY_S_PER_M);
    entry.exponent = taken(numbers, LVB_FIELD_EXPONENT);
    entry.reference_distance_m = taken(numbers, LVB_FIELD_REFERENCE_DISTANCE_M);
    entry.reference_loss_db = taken(numbers, LVB_FIELD_REFERENCE_LOSS_DB);
    entry.power_loss_coefficient = taken(numbers, LVB_FIELD_POWER_LOSS_COEFFICIENT);
    entry.floor_loss_db = taken(numbers, LVB_FIELD_FLOOR_LOSS_DB);
    entry.wall_loss_db = taken(numbers, LVB_FIELD_WALL_LOSS_DB);
    entry.longitudinal_loss_db_per_100m = taken(numbers, LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M);
    entry.coupling_loss_db = taken(numbers, LVB_FIELD_COUPLING_LOSS_DB);
    entry.lateral_distance_m = taken(numbers, LVB_FIELD_LATERAL_DISTANCE_M);
    return path;
}

} // namespace desk
