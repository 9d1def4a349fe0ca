#include "read_decisions.hpp"
#include "read_site.hpp"
#include "read_stage.hpp"
#include "read_terms.hpp"

#include <algorithm>

#include <unordered_set>

namespace desk {
namespace {

// A distance without air would go unheard.
void refuse_useless_distance(const Document &document, const Link &link) {
    if (link.air() != nullptr) return;
    for (const std::int32_t field : {LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M})
        if (link.numbers.contains(field))
            document.refuse_key(*link.numbers.at(field).value, "this link has no air, so a distance has no use");
}

// A distance, a direction or a height would be said twice: by its key and by the places of the antennas.
void check_placed(const Document &document, const Link &link) {
    for (const std::int32_t which : {0, 1}) {
        const std::int32_t at = link.antenna(which);
        if (at < 0 || link.air() == nullptr)
            document.refuse(*link.value,
                            "places tell how two antennas see each other; this link has no air between two");
        const Stage &stage = link.stages[static_cast<std::size_t>(at)];
        if (!stage.placed())
            document.refuse(*stage.value, "the other antenna has a place, so this one needs its place");
    }
    for (const std::int32_t field : {LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M})
        if (const auto given = link.numbers.find(field); given != link.numbers.end())
            document.refuse_key(*given->second.value, "the places of the antennas tell the distance");
    const std::optional<Path> &path = link.air()->path;
    if (path && (path->has_heights() || !path->edges.empty()))
        document.refuse(*path->value,
                        "heights would be said twice: a path with heights takes distances in place of places");
    if (path && path->entry.model == LVB_PATH_RADIATING_CABLE)
        document.refuse(*path->value, "along a radiating cable the distance counts; give it in place of places");
}

// Towards where an antenna's pattern counts. Nothing is guessed: who means straight ahead writes 0.
void check_directions(const Document &document, const Link &link) {
    if (link.air() == nullptr) return;
    for (const Stage &stage : link.stages) {
        if (!stage.pattern || stage.placed() || stage.pattern->entry.kind == LVB_PATTERN_ISOTROPIC) continue;
        const bool near = link.numbers.contains(LVB_FIELD_NEAR_DISTANCE_M);
        for (const std::int32_t field : {LVB_FIELD_FAR_AZIMUTH_DEG, LVB_FIELD_NEAR_AZIMUTH_DEG})
            if ((near || field == LVB_FIELD_FAR_AZIMUTH_DEG) && !stage.numbers.contains(field))
                document.refuse(*stage.value, ways_to_write(stage_keys(), field, 0) +
                                                  " is missing: where the pattern sees the other antenna; or give both "
                                                  "antennas a place");
    }
}

void read_terms(const Checks &checks, const Value &value, Link &link) {
    if (const Value *noise = value.find("noise")) link.noise = read_noise(checks, *noise);
    if (const Value *exposure = value.find("exposure")) link.exposure = read_exposure(checks, *exposure);
    if (const Value *fading = value.find("fading")) link.fading = read_fading(checks, *fading);
    const Value *limits = value.find("limits");
    if (limits == nullptr) return;
    checks.expect(*limits, Value::Kind::list);
    if (limits->items.empty()) checks.document().refuse(*limits, "there must be at least one limit");
    for (const Value *item : limits->items)
        for (Limit &limit : read_limit(checks, *item, link.frequency_mhz)) link.limits.push_back(std::move(limit));
}

Link read_link(const Checks &checks, StageReader &stages, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value,
                      with_names({"name", "direction", "note", "stages", "noise", "limits", "exposure", "fading",
                                  "tuning", "wanted", "readings"},
                                 link_keys(), 0),
                      "a link");
    Link link;
    link.value = &value;
    link.name = checks.text(checks.need(value, "name"));
    link.note = checks.text_or_empty(value, "note");
    if (const Value *direction = value.find("direction")) {
        checks.choose(*direction, words(lvb_direction_name, 0), "direction");
        link.direction = direction->text;
    }
    link.numbers = numbers_of(checks, members_of(value), link_keys(), LVB_STRUCT_LINK, 0);
    link.frequency_mhz = taken(link.numbers, LVB_FIELD_FREQUENCY_MHZ);
    link.far_distance_m = taken(link.numbers, LVB_FIELD_FAR_DISTANCE_M);
    link.near_distance_m = taken(link.numbers, LVB_FIELD_NEAR_DISTANCE_M);
    if (link.numbers.contains(LVB_FIELD_TEMPERATURE_DEGC))
        link.temperature_degc = taken(link.numbers, LVB_FIELD_TEMPERATURE_DEGC);
    const Value &list = checks.need(value, "stages");
    checks.expect(list, Value::Kind::list);
    for (const Value *stage : list.items) link.stages.push_back(stages.read(*stage));
    refuse_useless_distance(checks.document(), link);
    if (link.placed()) check_placed(checks.document(), link);
    check_directions(checks.document(), link);
    read_terms(checks, value, link);
    read_decisions(checks, value, link);
    return link;
}

} // namespace

bool is_allowance(const Stage &stage, const std::string &label) {
    return stage.entry.kind == LVB_KIND_ALLOWANCE && stage.label == label;
}

bool is_replaced(const Site &site, const Stage &stage) {
    if (!site.wearer) return false;
    const Wearer &wearer = *site.wearer;
    return (wearer.body_table && stage.body_table) ||
           (!wearer.in_place_of.empty() && is_allowance(stage, wearer.in_place_of));
}

std::int32_t Link::antenna(int which) const {
    for (std::size_t i = 0; i < stages.size(); ++i)
        if (stages[i].entry.kind == LVB_KIND_ANTENNA && which-- == 0) return static_cast<std::int32_t>(i);
    return -1;
}

const Stage *Link::air() const {
    for (const Stage &stage : stages)
        if (stage.entry.kind == LVB_KIND_AIR) return &stage;
    return nullptr;
}

bool Link::placed() const {
    return std::any_of(stages.begin(), stages.end(), [](const Stage &stage) { return stage.placed(); });
}

Scenario read_scenario(const Document &document) {
    const Checks checks(document);
    StageReader stages(document);
    const Value &root = document.root();
    checks.expect(root, Value::Kind::object);
    checks.check_keys(root, {"production", "note", "gear", "stock", "links", "side_by_side", "sites"}, "a scenario");
    Scenario scenario;
    scenario.production = checks.text(checks.need(root, "production"));
    scenario.note = checks.text_or_empty(root, "note");
    if (const Value *gear = root.find("gear")) stages.read_gear(*gear);
    if (const Value *stock = root.find("stock")) scenario.stock = read_stock(checks, stages, *stock);
    const Value &links = checks.need(root, "links");
    checks.expect(links, Value::Kind::list);
    if (links.items.empty()) document.refuse(links, "there must be at least one link");
    std::unordered_set<std::string> names;
    for (const Value *item : links.items) {
        scenario.links.push_back(read_link(checks, stages, *item));
        if (!names.insert(scenario.links.back().name).second)
            document.refuse(*item->find("name"), "a second link named " + in_quotes(scenario.links.back().name));
    }
    for (Link &link : scenario.links)
        for (Stage &stage : link.stages)
            if (stage.from_stock != nullptr) stage.candidates = read_candidates(checks, *stage.from_stock, scenario);
    if (const Value *pairs = root.find("side_by_side")) {
        checks.expect(*pairs, Value::Kind::list);
        for (const Value *item : pairs->items)
            scenario.neighbours.push_back(read_neighbours(checks, *item, scenario.links));
    }
    if (const Value *sites = root.find("sites")) scenario.sites = read_sites(checks, *sites, scenario.links);
    return scenario;
}

} // namespace desk
