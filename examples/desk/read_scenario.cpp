#include "cables.hpp"
#include "scenario.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_map>
#include <unordered_set>

namespace desk {
namespace {

using Kind = Value::Kind;

const char *name_of(Kind kind) {
    switch (kind) {
    case Kind::null:
        return "null";
    case Kind::boolean:
        return "true or false";
    case Kind::number:
        return "a number";
    case Kind::text:
        return "a text";
    case Kind::list:
        return "a list";
    case Kind::object:
        return "an object";
    }
    return "unknown";
}

std::vector<std::string> with_names(std::vector<std::string> names, const std::vector<NumberKey> &keys,
                                    std::int32_t kind) {
    for (const NumberKey &key : keys)
        if (serves(key, kind)) names.emplace_back(key.name);
    return names;
}

// The words for a value of the library, from 1 or 0 up to the first that it does not know.
std::vector<std::string> words(const char *(*name)(std::int32_t), std::int32_t first) {
    std::vector<std::string> all;
    for (std::int32_t i = first; std::string_view(name(i)) != "unknown"; ++i) all.emplace_back(name(i));
    return all;
}

// Members of a stage by key: those of its gear, then its own.
using Members = std::unordered_map<std::string, const Value *>;

class Reader {
  public:
    explicit Reader(const Document &document) : document_(document) {}

    Scenario read() {
        const Value &root = document_.root();
        expect(root, Kind::object);
        check_keys(root, {"production", "note", "gear", "links"}, "a scenario");
        Scenario scenario;
        scenario.production = text(need(root, "production"));
        scenario.note = text_or_empty(root, "note");
        if (const Value *gear = root.find("gear")) read_gear(*gear);
        const Value &links = need(root, "links");
        expect(links, Kind::list);
        if (links.items.empty()) document_.refuse(links, "there must be at least one link");
        std::unordered_set<std::string> names;
        for (const Value *item : links.items) {
            scenario.links.push_back(read_link(*item));
            if (!names.insert(scenario.links.back().name).second)
                document_.refuse(*item->find("name"), "a second link named " + in_quotes(scenario.links.back().name));
        }
        return scenario;
    }

  private:
    void expect(const Value &value, Kind kind) const {
        if (value.kind != kind)
            document_.refuse(value, std::string("this must be ") + name_of(kind) + ", not " + name_of(value.kind));
    }
    const Value &need(const Value &object, const char *key) const {
        const Value *value = object.find(key);
        if (value == nullptr) document_.refuse(object, std::string(key) + " is missing");
        return *value;
    }
    std::string text(const Value &value) const {
        expect(value, Kind::text);
        if (value.text.empty()) document_.refuse(value, "this text is empty");
        return value.text;
    }
    std::string text_or_empty(const Value &object, const char *key) const {
        const Value *value = object.find(key);
        return value == nullptr ? "" : text(*value);
    }
    double number(const Value &value) const {
        expect(value, Kind::number);
        return value.number;
    }

    void check_keys(const Value &object, const std::vector<std::string> &known, const std::string &where) const {
        for (const Value *member : object.items) {
            if (std::find(known.begin(), known.end(), member->key) != known.end()) continue;
            document_.refuse_key(*member, in_quotes(member->key) + " is no key of " + where + "; the nearest is " +
                                              in_quotes(nearest(member->key, known)));
        }
    }

    // A word out of a list; the answer is its place in the list.
    std::int32_t choose(const Value &value, const std::vector<std::string> &known, const char *what) const {
        const std::string word = text(value);
        for (std::size_t i = 0; i < known.size(); ++i)
            if (known[i] == word) return static_cast<std::int32_t>(i);
        document_.refuse(value,
                         in_quotes(word) + " is no " + what + "; the nearest is " + in_quotes(nearest(word, known)));
    }

    void read_gear(const Value &gear) {
        expect(gear, Kind::object);
        for (const Value *item : gear.items) {
            expect(*item, Kind::object);
            const std::int32_t kind = kind_of(*item);
            check_stage_keys(*item, kind);
            parse(members_of(*item, nullptr), kind); // refuses bad values also in gear that no link uses
            gear_[item->key] = item;
            gear_names_.push_back(item->key);
        }
    }
    std::int32_t kind_of(const Value &object) const {
        return choose(need(object, "kind"), words(lvb_kind_name, 1), "kind of stage") + 1;
    }
    // The keys that a stage of this kind may have, besides "gear" and "kind" which come first.
    void check_stage_keys(const Value &object, std::int32_t kind, bool in_link = false) const {
        std::vector<std::string> known = {"kind", "label", "basis", "note", "gain_table"};
        if (in_link) known.emplace_back("gear");
        if (kind == LVB_KIND_CABLE) known.insert(known.end(), {"cable_type", "attenuation_table"});
        const std::string name = std::string("a stage of kind '") + lvb_kind_name(kind) + "'";
        check_keys(object, with_names(known, stage_keys(), kind), name);
    }

    Link read_link(const Value &value) {
        expect(value, Kind::object);
        check_keys(value, with_names({"name", "direction", "note", "stages"}, link_keys(), 0), "a link");
        Link link;
        link.value = &value;
        link.name = text(need(value, "name"));
        link.note = text_or_empty(value, "note");
        if (const Value *direction = value.find("direction")) {
            choose(*direction, {"outbound", "inbound"}, "direction");
            link.direction = direction->text;
        }
        Members members;
        for (const Value *member : value.items) members[member->key] = member;
        link.numbers = numbers_of(members, link_keys(), LVB_STRUCT_LINK, 0);
        link.frequency_mhz = taken(link.numbers, LVB_FIELD_FREQUENCY_MHZ);
        link.far_distance_m = taken(link.numbers, LVB_FIELD_FAR_DISTANCE_M);
        link.near_distance_m = taken(link.numbers, LVB_FIELD_NEAR_DISTANCE_M);
        if (link.numbers.contains(LVB_FIELD_TEMPERATURE_DEGC))
            link.temperature_degc = taken(link.numbers, LVB_FIELD_TEMPERATURE_DEGC);
        const Value &stages = need(value, "stages");
        expect(stages, Kind::list);
        for (const Value *stage : stages.items) link.stages.push_back(read_stage(*stage));
        return link;
    }

    // The numbers among the members, one for each field.
    GivenNumbers numbers_of(const Members &members, const std::vector<NumberKey> &keys, std::int32_t structure,
                            std::int32_t kind) const {
        GivenNumbers numbers;
        for (const NumberKey &key : keys) {
            const auto member = members.find(key.name);
            if (member == members.end()) continue;
            const Value &value = *member->second;
            number(value);
            const auto [place, fresh] = numbers.insert({key.field, {&value, &key}});
            if (!fresh)
                document_.refuse_key(value, "the same quantity stands on line " +
                                                std::to_string(document_.line_of(place->second.value->offset)) +
                                                " as " + place->second.key->name + "; give one of them");
            refuse_stated_zero(value, key, structure, kind);
        }
        return numbers;
    }
    // To the library a zero says "not given" where zero is no possible value. Whoever writes one means something else.
    void refuse_stated_zero(const Value &value, const NumberKey &key, std::int32_t structure, std::int32_t kind) const {
        if (value.number != 0.0) return;
        if (key.field == LVB_FIELD_CONNECTOR_LOSS_DB)
            document_.refuse(value, "0 would stand for the usual loss; for no loss leave the connectors out");
        lvb_range range{};
        range.size = sizeof range;
        if (lvb_describe_field(structure, kind, key.field, &range, nullptr) != LVB_OK) return;
        if (range.minimum > 0.0)
            document_.refuse(value, "0 is out of range; allowed " + plain(key.from_library(range.minimum)) + " to " +
                                        plain(key.from_library(range.maximum)));
    }
    static double taken(const GivenNumbers &numbers, std::int32_t field) {
        const auto given = numbers.find(field);
        return given == numbers.end() ? 0.0 : given->second.key->to_library(given->second.value->number);
    }

    // Gear and stage together: the stage may replace what gear says of these, and otherwise only add.
    Members members_of(const Value &value, const Value *gear) const {
        static const std::unordered_set<std::string> replaceable = {"label", "basis", "note", "tolerance_db"};
        Members members;
        if (gear != nullptr)
            for (const Value *member : gear->items) members[member->key] = member;
        for (const Value *member : value.items) {
            const auto known = members.find(member->key);
            if (known != members.end() && !replaceable.contains(member->key))
                document_.refuse_key(*member, "the gear already says this on line " +
                                                  std::to_string(document_.line_of(known->second->offset)));
            members[member->key] = member;
        }
        return members;
    }

    Stage read_stage(const Value &value) const {
        expect(value, Kind::object);
        const Value *gear = nullptr;
        if (const Value *name = value.find("gear")) {
            const auto known = gear_.find(text(*name));
            if (known == gear_.end()) {
                const std::string near = nearest(name->text, gear_names_);
                document_.refuse(*name, in_quotes(name->text) + " is not in the gear list" +
                                            (near.empty() ? "" : "; the nearest is " + in_quotes(near)));
            }
            gear = known->second;
        }
        const std::int32_t kind = kind_of(gear == nullptr ? value : *gear);
        check_stage_keys(value, kind, true);
        Stage stage = parse(members_of(value, gear), kind);
        stage.value = &value;
        if (const Value *name = value.find("gear")) stage.gear = name->text;
        if (stage.label.empty()) stage.label = stage.gear.empty() ? lvb_kind_name(kind) : stage.gear;
        check_complete(stage);
        return stage;
    }

    // All that the members say, checked one by one but not yet for completeness.
    Stage parse(const Members &members, std::int32_t kind) const {
        const auto member = [&](const char *key) {
            const auto found = members.find(key);
            return found == members.end() ? nullptr : found->second;
        };
        Stage stage;
        stage.entry.kind = kind;
        if (const Value *label = member("label")) stage.label = text(*label);
        if (const Value *note = member("note")) stage.note = text(*note);
        if (const Value *basis = member("basis")) stage.entry.basis = choose(*basis, words(lvb_basis_name, 0), "basis");
        if (const Value *table = member("gain_table")) stage.gain_table = read_table(*table, gain_columns(kind));
        if (const Value *table = member("attenuation_table"))
            stage.cable_table = read_table(*table, attenuation_keys());
        if (const Value *type = member("cable_type")) {
            stage.cable_name = text(*type);
            stage.entry.cable_type = lvb_cable_type_from_name(stage.cable_name.c_str());
            if (stage.entry.cable_type == LVB_CABLE_NONE || stage.cable_name.find('\0') != std::string::npos)
                document_.refuse(*type, in_quotes(stage.cable_name) +
                                            " is not in the catalogue of cables; the nearest is " +
                                            in_quotes(nearest(stage.cable_name, catalogue_names())));
        }
        stage.numbers = numbers_of(members, stage_keys(), LVB_STRUCT_STAGE, kind);
        fill(stage);
        return stage;
    }

    static std::vector<NumberKey> gain_columns(std::int32_t kind) {
        std::vector<NumberKey> columns;
        for (const NumberKey &key : stage_keys())
            if (key.field == LVB_FIELD_GAIN_DB && serves(key, kind)) columns.push_back(key);
        return columns;
    }

    void fill(Stage &stage) const {
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
        const auto count = stage.numbers.find(LVB_FIELD_CONNECTOR_COUNT);
        if (count != stage.numbers.end()) entry.connector_count = connector_count(*count->second.value);
    }
    std::uint32_t connector_count(const Value &value) const {
        lvb_range range{};
        range.size = sizeof range;
        lvb_describe_field(LVB_STRUCT_STAGE, LVB_KIND_CABLE, LVB_FIELD_CONNECTOR_COUNT, &range, nullptr);
        if (value.number >= range.minimum && value.number <= range.maximum && value.number == std::floor(value.number))
            return static_cast<std::uint32_t>(value.number);
        document_.refuse(value, plain(value.number) + " is no number of connectors; allowed are whole numbers from " +
                                    plain(range.minimum) + " to " + plain(range.maximum));
    }

    // To the library a number that is not given is 0 dB or 0 dBm. Here nothing is guessed: who means 0 writes it.
    void check_complete(const Stage &stage) const {
        const std::int32_t kind = stage.entry.kind;
        const auto given = [&](std::int32_t field) { return stage.numbers.contains(field); };
        if (kind == LVB_KIND_SOURCE && !given(LVB_FIELD_LEVEL_DBM))
            document_.refuse(*stage.value, ways_to_write(stage_keys(), LVB_FIELD_LEVEL_DBM, kind) + " is missing");
        const bool needs_gain = kind == LVB_KIND_PASSIVE || kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_ANTENNA ||
                                kind == LVB_KIND_ALLOWANCE;
        if (needs_gain && !given(LVB_FIELD_GAIN_DB) && !stage.gain_table)
            document_.refuse(*stage.value,
                             ways_to_write(stage_keys(), LVB_FIELD_GAIN_DB, kind) + " or gain_table is missing");
        if (given(LVB_FIELD_GAIN_DB) && stage.gain_table)
            document_.refuse_key(*stage.gain_table->value,
                                 "a gain_table stands in place of " +
                                     std::string(stage.numbers.at(LVB_FIELD_GAIN_DB).key->name) + "; give one of them");
        if (given(LVB_FIELD_WANTED_LOW_DBM) != given(LVB_FIELD_WANTED_HIGH_DBM))
            document_.refuse(*stage.value,
                             std::string(given(LVB_FIELD_WANTED_LOW_DBM) ? "wanted_high_dbm" : "wanted_low_dbm") +
                                 " is missing; a wanted band has two ends");
    }

    // Two columns of equal length: frequencies, and one of the given columns.
    Table read_table(const Value &value, const std::vector<NumberKey> &columns) const {
        expect(value, Kind::object);
        std::vector<std::string> known = with_names({"source"}, frequency_keys(), 0);
        check_keys(value, with_names(known, columns, 0), "this table");
        Table table;
        table.value = &value;
        table.origin = text_or_empty(value, "source");
        table.frequency_column = column(value, frequency_keys(), table.frequency_mhz);
        table.value_column = column(value, columns, table.values);
        if (table.frequency_mhz.size() != table.values.size())
            document_.refuse(*table.value_column.value, "this column has " + std::to_string(table.values.size()) +
                                                            " rows, the frequencies have " +
                                                            std::to_string(table.frequency_mhz.size()));
        return table;
    }
    Given column(const Value &table, const std::vector<NumberKey> &keys, std::vector<double> &into) const {
        Given given;
        for (const NumberKey &key : keys) {
            const Value *value = table.find(key.name);
            if (value == nullptr) continue;
            if (given.value != nullptr)
                document_.refuse_key(*value, std::string("this column stands here as ") + given.key->name +
                                                 " too; give one of them");
            // The keys outlive the columns: every one is found again in its own list.
            given = {value, find_key(key.field == LVB_FIELD_GAIN_DB ? stage_keys() : keys, key.name)};
        }
        if (given.value == nullptr) document_.refuse(table, ways_to_write(keys, keys.front().field, 0) + " is missing");
        expect(*given.value, Kind::list);
        for (const Value *item : given.value->items) into.push_back(given.key->to_library(number(*item)));
        return given;
    }

    const Document &document_;
    std::unordered_map<std::string, const Value *> gear_;
    std::vector<std::string> gear_names_;
};

} // namespace

Scenario read_scenario(const Document &document) { return Reader(document).read(); }

} // namespace desk
