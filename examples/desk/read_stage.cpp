#include "read_stage.hpp"

#include "cables.hpp"
#include "read_decisions.hpp"

#include <unordered_set>

namespace desk {

void StageReader::read_gear(const Value &gear) {
    checks_.expect(gear, Value::Kind::object);
    for (const Value *item : gear.items) {
        checks_.expect(*item, Value::Kind::object);
        const std::int32_t kind = kind_of(*item);
        check_stage_keys(*item, kind, false);
        parse(joined(*item, nullptr), kind);
        gear_[item->key] = item;
        gear_names_.push_back(item->key);
    }
}

Stage StageReader::read(const Value &value) {
    checks_.expect(value, Value::Kind::object);
    const Value *gear = gear_of(value);
    const std::int32_t kind = kind_of(gear == nullptr ? value : *gear);
    check_stage_keys(value, kind, true);
    Stage stage = parse(joined(value, gear), kind);
    stage.value = &value;
    if (gear != nullptr) stage.gear = gear->key;
    if (stage.label.empty()) stage.label = gear == nullptr ? lvb_kind_name(kind) : gear->key;
    check_complete(stage);
    return stage;
}

// The item that a stage names, or null where it names none.
const Value *StageReader::gear_of(const Value &stage) const {
    const Value *name = stage.find("gear");
    if (name == nullptr) return nullptr;
    const auto known = gear_.find(checks_.text(*name));
    if (known != gear_.end()) return known->second;
    const std::string otherwise = gear_names_.empty() ? "" : "; it holds " + listed(gear_names_);
    checks_.document().refuse(*name, in_quotes(name->text) + " is not in the gear list" +
                                         suggestion(name->text, gear_names_, otherwise));
}

std::int32_t StageReader::cable_type(const Value &name) const {
    const std::int32_t type = lvb_cable_type_from_name(name.text.c_str());
    if (type != LVB_CABLE_NONE && name.text.find('\0') == std::string::npos) return type;
    checks_.document().refuse(name, not_in_catalogue(name.text));
}

std::int32_t StageReader::kind_of(const Value &object) const {
    return checks_.choose(checks_.need(object, "kind"), words(lvb_kind_name, 1), "kind of stage",
                          "source (transmitter, generator), passive (splitter, combiner, filter, pad), cable, "
                          "amplifier (active combiner or splitter), antenna, air, allowance (body, fading, "
                          "polarization), receiver") +
           1;
}

void StageReader::check_stage_keys(const Value &object, std::int32_t kind, bool in_link) const {
    std::vector<std::string> known = {"kind", "label", "basis", "note", "gain_table"};
    known.insert(known.end(), {"tolerance_law", "coverage_factor"});
    if (in_link) known.insert(known.end(), {"gear", "from_stock"});
    if (kind == LVB_KIND_CABLE) known.insert(known.end(), {"cable_type", "attenuation_table"});
    if (kind == LVB_KIND_ANTENNA) known.insert(known.end(), {"pattern", "place", "far_place", "near_place"});
    if (kind == LVB_KIND_AIR) known.emplace_back("path");
    if (kind == LVB_KIND_ALLOWANCE) known.emplace_back("body_table");
    const std::string name = std::string("a stage of kind '") + lvb_kind_name(kind) + "'";
    checks_.check_keys(object, with_names(known, stage_keys(), kind), name);
}

// Gear and stage together: the stage may replace what gear says of these, and otherwise only add.
Members StageReader::joined(const Value &value, const Value *gear) const {
    static const std::unordered_set<std::string> replaceable = {"label",        "basis",         "note",
                                                                "tolerance_db", "tolerance_law", "coverage_factor"};
    Members members;
    if (gear != nullptr)
        for (const Value *member : gear->items) members[member->key] = member;
    for (const Value *member : value.items) {
        const auto known = members.find(member->key);
        if (known != members.end() && !replaceable.contains(member->key))
            checks_.document().refuse_key(*member,
                                          "the gear already says this on line " +
                                              std::to_string(checks_.document().line_of(known->second->offset)));
        members[member->key] = member;
    }
    return members;
}

// All that the members say, checked one by one but not yet for completeness.
Stage StageReader::parse(const Members &members, std::int32_t kind) {
    const auto member = [&](const char *key) {
        const auto found = members.find(key);
        return found == members.end() ? nullptr : found->second;
    };
    Stage stage;
    stage.entry.kind = kind;
    if (const Value *label = member("label")) stage.label = checks_.text(*label);
    if (const Value *note = member("note")) stage.note = checks_.text(*note);
    if (const Value *basis = member("basis"))
        stage.entry.basis = checks_.choose(*basis, words(lvb_basis_name, 0), "basis");
    if (const Value *table = member("gain_table"))
        stage.gain_table = tables_.read(*table, over_frequency(keys_of_field(stage_keys(), LVB_FIELD_GAIN_DB, kind)));
    if (const Value *table = member("attenuation_table"))
        stage.cable_table = tables_.read(
            *table, over_frequency(keys_of_field(attenuation_keys(), LVB_FIELD_ATTENUATION_DB_PER_100M, kind)));
    if (const Value *table = member("body_table")) stage.body_table = read_body_table(tables_, *table);
    if (const Value *pattern = member("pattern")) stage.pattern = read_pattern(checks_, tables_, *pattern);
    if (const Value *place = member("place")) stage.place = read_place(checks_, *place);
    if (const Value *place = member("far_place")) stage.far_place = read_place(checks_, *place);
    if (const Value *place = member("near_place")) stage.near_place = read_place(checks_, *place);
    if (const Value *path = member("path")) stage.path = read_path(checks_, *path);
    if (const Value *type = member("cable_type")) {
        stage.cable_name = checks_.text(*type);
        stage.entry.cable_type = cable_type(*type);
    }
    stage.spread = read_spread(checks_, members);
    stage.from_stock = member("from_stock");
    stage.numbers = numbers_of(checks_, members, stage_keys(), LVB_STRUCT_STAGE, kind);
    fill(stage);
    return stage;
}

void StageReader::fill(Stage &stage) const {
    lvb_stage &entry = stage.entry;
    entry.level_dbm = taken(stage.numbers, LVB_FIELD_LEVEL_DBM);
    entry.gain_db = taken(stage.numbers, LVB_FIELD_GAIN_DB);
    entry.tolerance_db = taken(stage.numbers, LVB_FIELD_TOLERANCE_DB);
    entry.length_m = taken(stage.numbers, LVB_FIELD_LENGTH_M);
    entry.connector_loss_db = taken(stage.numbers, LVB_FIELD_CONNECTOR_LOSS_DB);
    entry.floor_dbm = taken(stage.numbers, LVB_FIELD_FLOOR_DBM);
    entry.wanted_low_dbm = taken(stage.numbers, LVB_FIELD_WANTED_LOW_DBM);
    entry.wanted_high_dbm = taken(stage.numbers, LVB_FIELD_WANTED_HIGH_DBM);
    entry.ceiling_dbm = taken(stage.numbers, LVB_FIELD_CEILING_DBM);
    if (stage.numbers.contains(LVB_FIELD_FLOOR_DBM)) entry.stated |= LVB_STATED_FLOOR;
    if (stage.numbers.contains(LVB_FIELD_WANTED_LOW_DBM)) entry.stated |= LVB_STATED_WANTED;
    if (stage.numbers.contains(LVB_FIELD_CEILING_DBM)) entry.stated |= LVB_STATED_CEILING;
    entry.connector_count = whole(checks_, stage.numbers, LVB_STRUCT_STAGE, entry.kind, LVB_FIELD_CONNECTOR_COUNT);
    entry.far_azimuth_deg = taken(stage.numbers, LVB_FIELD_FAR_AZIMUTH_DEG);
    entry.far_elevation_deg = taken(stage.numbers, LVB_FIELD_FAR_ELEVATION_DEG);
    entry.near_azimuth_deg = taken(stage.numbers, LVB_FIELD_NEAR_AZIMUTH_DEG);
    entry.near_elevation_deg = taken(stage.numbers, LVB_FIELD_NEAR_ELEVATION_DEG);
    entry.facing_deg = taken(stage.numbers, LVB_FIELD_FACING_DEG);
    entry.noise_figure_db = taken(stage.numbers, LVB_FIELD_NOISE_FIGURE_DB);
    entry.intercept_dbm = taken(stage.numbers, LVB_FIELD_INTERCEPT_DBM);
    entry.compression_dbm = taken(stage.numbers, LVB_FIELD_COMPRESSION_DBM);
    if (stage.numbers.contains(LVB_FIELD_NOISE_FIGURE_DB)) entry.stated |= LVB_STATED_NOISE_FIGURE;
    if (stage.numbers.contains(LVB_FIELD_INTERCEPT_DBM)) entry.stated |= LVB_STATED_INTERCEPT;
    if (stage.numbers.contains(LVB_FIELD_COMPRESSION_DBM)) entry.stated |= LVB_STATED_COMPRESSION;
}

// To the library a number that is not given is 0 dB or 0 dBm. Here nothing is guessed: who means 0 writes it.
void StageReader::check_complete(const Stage &stage) const {
    const std::int32_t kind = stage.entry.kind;
    const auto given = [&](std::int32_t field) { return stage.numbers.contains(field); };
    if (kind == LVB_KIND_SOURCE && !given(LVB_FIELD_LEVEL_DBM))
        checks_.document().refuse(*stage.value, ways_to_write(stage_keys(), LVB_FIELD_LEVEL_DBM, kind) + " is missing");
    check_gain(stage);
    check_places(stage);
    if (stage.body_table && !given(LVB_FIELD_FACING_DEG))
        checks_.document().refuse(*stage.value,
                                  "facing_deg is missing: which way the wearer faces, 0 towards the other "
                                  "antenna");
    if (!stage.body_table && given(LVB_FIELD_FACING_DEG))
        checks_.document().refuse_key(*stage.numbers.at(LVB_FIELD_FACING_DEG).value,
                                      "facing_deg has a use only with a body_table");
    if (given(LVB_FIELD_WANTED_LOW_DBM) != given(LVB_FIELD_WANTED_HIGH_DBM))
        checks_.document().refuse(*stage.value,
                                  std::string(given(LVB_FIELD_WANTED_LOW_DBM) ? "wanted_high_dbm" : "wanted_low_dbm") +
                                      " is missing; a wanted band has two ends");
}

// A gain is given once: as a number, a table, a pattern or a body.
void StageReader::check_gain(const Stage &stage) const {
    const std::int32_t kind = stage.entry.kind;
    const bool needed = kind == LVB_KIND_PASSIVE || kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_ANTENNA ||
                        kind == LVB_KIND_ALLOWANCE;
    const bool written = stage.numbers.contains(LVB_FIELD_GAIN_DB);
    if (needed && !written && !stage.gain_table && !stage.pattern && !stage.body_table)
        checks_.document().refuse(*stage.value,
                                  ways_to_write(stage_keys(), LVB_FIELD_GAIN_DB, kind) + " or gain_table is missing");
    const std::string number = written ? stage.numbers.at(LVB_FIELD_GAIN_DB).key->name : "";
    const auto in_place_of = [&](const Value &value, const std::string &other) {
        if (other.empty()) return;
        checks_.document().refuse_key(value, "a " + value.key + " stands in place of " + other + "; give one of them");
    };
    if (stage.gain_table) in_place_of(*stage.gain_table->value, number);
    const std::string other = stage.gain_table ? "a gain_table" : number;
    if (stage.pattern) in_place_of(*stage.pattern->value, other);
    if (stage.body_table) in_place_of(*stage.body_table->value, other);
}

// An antenna has one place, or one for the far and one for the near end; then nobody writes the directions.
void StageReader::check_places(const Stage &stage) const {
    const Document &document = checks_.document();
    if (stage.place && stage.far_place)
        document.refuse_key(*stage.far_place->value, "this antenna has a place for both ends of the walk already");
    if (stage.near_place && !stage.far_place)
        document.refuse_key(*stage.near_place->value, "a near_place needs a far_place beside it");
    for (const std::int32_t field : {LVB_FIELD_FAR_AZIMUTH_DEG, LVB_FIELD_FAR_ELEVATION_DEG, LVB_FIELD_NEAR_AZIMUTH_DEG,
                                     LVB_FIELD_NEAR_ELEVATION_DEG}) {
        const auto given = stage.numbers.find(field);
        if (given == stage.numbers.end()) continue;
        if (!stage.pattern) document.refuse_key(*given->second.value, "a direction has a use only with a pattern");
        if (stage.placed()) document.refuse_key(*given->second.value, "the places of the antennas tell the directions");
    }
}

} // namespace desk
