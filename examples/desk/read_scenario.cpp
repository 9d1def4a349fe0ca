#include "read_stage.hpp"

#include <unordered_set>

namespace desk {
namespace {

// A distance without air would go unheard.
void refuse_useless_distance(const Document &document, const Link &link) {
    for (const Stage &stage : link.stages)
        if (stage.entry.kind == LVB_KIND_AIR) return;
    for (const std::int32_t field : {LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M})
        if (link.numbers.contains(field))
            document.refuse_key(*link.numbers.at(field).value, "this link has no air, so a distance has no use");
}

Link read_link(const Checks &checks, StageReader &stages, const Value &value) {
    checks.expect(value, Value::Kind::object);
    checks.check_keys(value, with_names({"name", "direction", "note", "stages"}, link_keys(), 0), "a link");
    Link link;
    link.value = &value;
    link.name = checks.text(checks.need(value, "name"));
    link.note = checks.text_or_empty(value, "note");
    if (const Value *direction = value.find("direction")) {
        checks.choose(*direction, {"outbound", "inbound"}, "direction");
        link.direction = direction->text;
    }
    Members members;
    for (const Value *member : value.items) members[member->key] = member;
    link.numbers = numbers_of(checks, members, link_keys(), LVB_STRUCT_LINK, 0);
    link.frequency_mhz = taken(link.numbers, LVB_FIELD_FREQUENCY_MHZ);
    link.far_distance_m = taken(link.numbers, LVB_FIELD_FAR_DISTANCE_M);
    link.near_distance_m = taken(link.numbers, LVB_FIELD_NEAR_DISTANCE_M);
    if (link.numbers.contains(LVB_FIELD_TEMPERATURE_DEGC))
        link.temperature_degc = taken(link.numbers, LVB_FIELD_TEMPERATURE_DEGC);
    const Value &list = checks.need(value, "stages");
    checks.expect(list, Value::Kind::list);
    for (const Value *stage : list.items) link.stages.push_back(stages.read(*stage));
    refuse_useless_distance(checks.document(), link);
    return link;
}

} // namespace

Scenario read_scenario(const Document &document) {
    const Checks checks(document);
    StageReader stages(document);
    const Value &root = document.root();
    checks.expect(root, Value::Kind::object);
    checks.check_keys(root, {"production", "note", "gear", "links"}, "a scenario");
    Scenario scenario;
    scenario.production = checks.text(checks.need(root, "production"));
    scenario.note = checks.text_or_empty(root, "note");
    if (const Value *gear = root.find("gear")) stages.read_gear(*gear);
    const Value &links = checks.need(root, "links");
    checks.expect(links, Value::Kind::list);
    if (links.items.empty()) document.refuse(links, "there must be at least one link");
    std::unordered_set<std::string> names;
    for (const Value *item : links.items) {
        scenario.links.push_back(read_link(checks, stages, *item));
        if (!names.insert(scenario.links.back().name).second)
            document.refuse(*item->find("name"), "a second link named " + in_quotes(scenario.links.back().name));
    }
    return scenario;
}

} // namespace desk
