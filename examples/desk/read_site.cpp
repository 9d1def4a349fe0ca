#include "read_site.hpp"

#include "faults.hpp"
#include "read_points.hpp"
#include "read_terms.hpp"

#include <algorithm>
#include <unordered_set>

namespace desk {
namespace {

double same(double x) { return x; }
double per_hour(double x) { return x / 3.6; }
double per_second(double x) { return x * 3.6; }

constexpr std::uint32_t every = ~0u;

// Numbers of this program that no struct of the library has.
enum OwnField : std::int32_t { stage_front = -101, positions = -102, antennas_to_place = -103 };

const std::vector<NumberKey> &azimuth_keys() {
    static const std::vector<NumberKey> keys = {
        {"azimuth_deg", LVB_FIELD_FACING_AZIMUTH_DEG, same, same, every, "degrees"}};
    return keys;
}

const std::vector<NumberKey> &crossed_keys() {
    static const std::vector<NumberKey> keys = {
        {"most_polarization_loss_db", LVB_FIELD_MOST_POLARIZATION_LOSS_DB, same, same, every, "dB"}};
    return keys;
}

const std::vector<NumberKey> &placing_keys() {
    static const std::vector<NumberKey> keys = {
        {"least_headroom_db", LVB_FIELD_LEAST_HEADROOM_DB, same, same, every, "dB"},
        {"antennas", antennas_to_place, same, same, every, "antennas"},
    };
    return keys;
}

const std::vector<NumberKey> &candidate_keys() {
    static const std::vector<NumberKey> keys = {{"positions", positions, same, same, every, "positions"}};
    return keys;
}

const std::vector<const Value *> &list_of(const Checks &checks, const Value &value, const char *what) {
    checks.expect(value, Value::Kind::list);
    if (value.items.empty()) checks.document().refuse(value, std::string("there must be at least one ") + what);
    return value.items;
}

// Refuses a name that stands twice in its list.
class Names {
  public:
    Names(const Checks &checks, const char *what) : checks_(checks), what_(what) {}
    std::string take(const Value &owner, const char *key) {
        const Value &value = checks_.need(owner, key);
        std::string name = checks_.text(value);
        if (!names_.insert(name).second)
            checks_.document().refuse(value, std::string("a second ") + what_ + " named " + in_quotes(name));
        return name;
    }

  private:
    const Checks &checks_;
    const char *what_;
    std::unordered_set<std::string> names_;
};

class SiteReader {
  public:
    SiteReader(const Checks &checks, const std::vector<Link> &links) : checks_(checks), tables_(checks), links_(links) {
        for (const Link &link : links) link_names_.push_back(link.name);
    }
    Site read(const Value &value);

  private:
    [[noreturn]] void refuse(const Value &value, const std::string &why) const {
        checks_.document().refuse(value, why);
    }
    void check_chain(const Site &site, const Value &name, std::size_t link) const;
    std::size_t link_of(const Site &site, const Value &name) const;
    Path read_site_path(const Value &value) const;
    Area read_area(const Value &value, Names &names) const;
    Screen read_screen(const Value &value) const;
    SiteAntenna read_antenna(const Site &site, const Value &value, Names &names);
    Wearer read_wearer(const Site &site, const Value &value);
    void read_facing(const Site &site, const Value &value, Wearer &wearer) const;
    void read_polarization(const Value &value, Wearer &wearer);
    void check_packs(const Site &site) const;
    void check_replaced(const Site &site) const;
    Walk read_walk(const Value &value, Names &names) const;
    void read_candidate(const Site &site, const Value &value, Names &names, std::vector<SiteAntenna> &into);
    void spread(const SiteAntenna &first, const Value &value, const GivenNumbers &numbers,
                std::vector<SiteAntenna> &into) const;
    Placing read_placing(const Site &site, const Value &value);

    const Checks &checks_;
    Tables tables_;
    const std::vector<Link> &links_;
    std::vector<std::string> link_names_;
};

// What a map cannot take of a chain.
void SiteReader::check_chain(const Site &site, const Value &name, std::size_t index) const {
    const Link &link = links_[index];
    const std::string whose = "link " + in_quotes(link.name);
    if (link.air() == nullptr) refuse(name, whose + " has no air");
    const std::string direction = lvb_direction_name(site.direction);
    if (!link.direction.empty() && link.direction != direction)
        refuse(name, whose + " is " + link.direction + ", the site is " + direction);
    if (!site.path && link.air()->path) {
        const Path &path = *link.air()->path;
        if (path.entry.model == LVB_PATH_RADIATING_CABLE)
            refuse(name, whose + " goes along a radiating cable, which has no place on a map");
        if (!path.edges.empty()) refuse(name, whose + " has edges in its path; on a map screens take their place");
    }
}

std::size_t SiteReader::link_of(const Site &site, const Value &name) const {
    const auto index = static_cast<std::size_t>(checks_.choose(name, link_names_, "link of this scenario"));
    check_chain(site, name, index);
    return index;
}

// The site tells every height and shade.
Path SiteReader::read_site_path(const Value &value) const {
    Path path = read_path(checks_, value);
    if (path.entry.model == LVB_PATH_RADIATING_CABLE) refuse(value, "a radiating cable has no place on a map");
    if (!path.edges.empty()) refuse(value, "on a map screens take the place of edges");
    if (path.has_heights()) refuse(value, "the heights are those of the antennas and packs; leave them out here");
    // The library wants heights for two rays, and a map then takes its own.
    constexpr double any_height_m = 1.0;
    if (path.entry.model == LVB_PATH_TWO_RAY) path.entry.transmit_height_m = path.entry.receive_height_m = any_height_m;
    return path;
}

Area SiteReader::read_area(const Value &value, Names &names) const {
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(value, {"name", "corners_m", "corners_ft", "note"}, "an area");
    checks_.text_or_empty(value, "note");
    return {&value, names.take(value, "name"), read_corners(checks_, value, 3, 2)};
}

Screen SiteReader::read_screen(const Value &value) const {
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(value, with_names({"label", "from_m", "from_ft", "to_m", "to_ft", "note"}, screen_keys(), 0),
                       "a screen");
    checks_.text_or_empty(value, "note");
    Screen screen;
    screen.value = &value;
    screen.label = checks_.text(checks_.need(value, "label"));
    screen.numbers = numbers_of(checks_, members_of(value), screen_keys(), LVB_STRUCT_SCREEN, 0);
    need_number(checks_, value, screen.numbers, screen_keys(), LVB_FIELD_TOP_M);
    const Lengths from = lengths_of(checks_, value, "from");
    const Lengths to = lengths_of(checks_, value, "to");
    const std::vector<double> first = point_of(checks_, *from.value, from.to_metres, 2, 2);
    const std::vector<double> second = point_of(checks_, *to.value, to.to_metres, 2, 2);
    screen.ends[0] = from.value;
    screen.ends[1] = to.value;
    screen.entry = {first[0],
                    first[1],
                    second[0],
                    second[1],
                    taken(screen.numbers, LVB_FIELD_BOTTOM_M),
                    taken(screen.numbers, LVB_FIELD_TOP_M),
                    taken(screen.numbers, LVB_FIELD_LOSS_DB)};
    return screen;
}

SiteAntenna SiteReader::read_antenna(const Site &site, const Value &value, Names &names) {
    SiteAntenna antenna;
    antenna.value = &value;
    antenna.label = names.take(value, "label");
    antenna.link = link_of(site, checks_.need(value, "link"));
    antenna.place = read_place(checks_, checks_.need(value, "place"));
    check_over_floor(checks_, *antenna.place.numbers.at(LVB_FIELD_Z_M).value, antenna.place.entry.z_m);
    if (const Value *pattern = value.find("pattern")) antenna.pattern = read_pattern(checks_, tables_, *pattern);
    checks_.text_or_empty(value, "note");
    return antenna;
}

// Which way everybody faces.
void SiteReader::read_facing(const Site &site, const Value &value, Wearer &wearer) const {
    if (wearer.facing == LVB_FACING_AZIMUTH) {
        wearer.numbers = numbers_of(checks_, members_of(value), azimuth_keys(), LVB_STRUCT_SITE, 0);
        need_number(checks_, value, wearer.numbers, azimuth_keys(), LVB_FIELD_FACING_AZIMUTH_DEG);
        constexpr double turn = 360.0;
        wearer.azimuth_deg = within(checks_, wearer.numbers, LVB_FIELD_FACING_AZIMUTH_DEG, -turn, turn);
    } else if (wearer.facing == LVB_FACING_POINT) {
        const Lengths point = lengths_of(checks_, value, "point");
        const std::vector<double> at = point_of(checks_, *point.value, point.to_metres, 2, 2);
        wearer.x_m = at[0];
        wearer.y_m = at[1];
    } else {
        if (site.antennas.empty())
            refuse(value, "this site has no antennas of its own to face; candidates cannot be faced");
        std::vector<std::string> labels;
        for (const SiteAntenna &antenna : site.antennas) labels.push_back(antenna.label);
        wearer.antenna =
            static_cast<std::uint32_t>(checks_.choose(checks_.need(value, "antenna"), labels, "antenna of this site"));
    }
}

// A pattern of the pack's that the places of its link turn has no direction on a map, unless the wearer's replaces it.
void SiteReader::check_packs(const Site &site) const {
    if (site.wearer && site.wearer->antenna_on_pack && site.wearer->antenna_on_pack->pattern) return;
    visit_antennas(site, [&](const SiteAntenna &antenna) {
        const Link &link = links_[antenna.link];
        const Stage &pack = link.stages[static_cast<std::size_t>(link.antenna(1 - site.direction))];
        if (pack.pattern && pack.placed())
            refuse(*antenna.value->find("link"),
                   "the places in link " + in_quotes(link.name) + " turn the pattern of " + in_quotes(pack.label) +
                       "; on a map its gain must hold for every direction, or its directions be given");
    });
}

// An allowance that no link has would be replaced in words only.
void SiteReader::check_replaced(const Site &site) const {
    if (!site.wearer || site.wearer->in_place_of.empty()) return;
    const std::string &label = site.wearer->in_place_of;
    bool has = false;
    visit_antennas(site, [&](const SiteAntenna &antenna) {
        for (const Stage &stage : links_[antenna.link].stages) has = has || is_allowance(stage, label);
    });
    if (!has) refuse(*site.wearer->value->find("in_place_of"), "no link of this site has an allowance with this label");
}

// The pack's antenna, and the allowance of the links in whose place it stands.
void SiteReader::read_polarization(const Value &value, Wearer &wearer) {
    wearer.antenna_on_pack = read_pack_antenna(checks_, tables_, checks_.need(value, "pack_antenna"));
    const GivenNumbers crossed = numbers_of(checks_, members_of(value), crossed_keys(), LVB_STRUCT_SITE, 0);
    if (crossed.contains(LVB_FIELD_MOST_POLARIZATION_LOSS_DB)) {
        constexpr double least = 0.001, most = 200.0;
        wearer.most_polarization_loss_db = within(checks_, crossed, LVB_FIELD_MOST_POLARIZATION_LOSS_DB, least, most);
    }
    if (const Value *in_place_of = value.find("in_place_of")) wearer.in_place_of = checks_.text(*in_place_of);
}

Wearer SiteReader::read_wearer(const Site &site, const Value &value) {
    const std::vector<std::string> rules = words(lvb_facing_name, 0);
    checks_.expect(value, Value::Kind::object);
    Wearer wearer;
    wearer.value = &value;
    wearer.facing = checks_.choose(checks_.need(value, "facing"), rules, "rule of facing");
    const Value *body = value.find("body_table"), *worn = value.find("pack_antenna");
    std::vector<std::string> known = {"facing", "body_table", "pack_antenna", "note"};
    if (worn != nullptr) known.insert(known.end(), {"most_polarization_loss_db", "in_place_of"});
    if (wearer.facing == LVB_FACING_AZIMUTH) known.emplace_back("azimuth_deg");
    if (wearer.facing == LVB_FACING_POINT) known.insert(known.end(), {"point_m", "point_ft"});
    if (wearer.facing >= LVB_FACING_ANTENNA) known.emplace_back("antenna");
    checks_.check_keys(value, known,
                       std::string("a wearer ") + (worn == nullptr ? "without pack_antenna " : "") + "with facing '" +
                           rules[static_cast<std::size_t>(wearer.facing)] + "'");
    checks_.text_or_empty(value, "note");
    if (body == nullptr && worn == nullptr)
        refuse(value,
               "body_table or pack_antenna is missing: without either it makes no difference which way anybody faces");
    read_facing(site, value, wearer);
    if (body != nullptr) wearer.body_table = read_body_table(tables_, *body);
    if (worn != nullptr) read_polarization(value, wearer);
    return wearer;
}

Walk SiteReader::read_walk(const Value &value, Names &names) const {
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(value, with_names({"name", "corners_m", "corners_ft", "note"}, walk_keys(), 0), "a walk");
    checks_.text_or_empty(value, "note");
    Walk walk;
    walk.value = &value;
    walk.name = names.take(value, "name");
    walk.corners = read_corners(checks_, value, 2, 3);
    walk.numbers = numbers_of(checks_, members_of(value), walk_keys(), LVB_STRUCT_WALK, 0);
    for (const std::int32_t field : {LVB_FIELD_SPEED_M_PER_S, LVB_FIELD_STEP_M})
        need_number(checks_, value, walk.numbers, walk_keys(), field);
    constexpr double slowest = 0.001, fastest = 1000.0, shortest = 0.001, longest = 1e6;
    walk.speed_m_per_s = within(checks_, walk.numbers, LVB_FIELD_SPEED_M_PER_S, slowest, fastest);
    walk.step_m = within(checks_, walk.numbers, LVB_FIELD_STEP_M, shortest, longest);
    return walk;
}

// Copies of the first antenna along a rail, each a candidate.
void SiteReader::spread(const SiteAntenna &first, const Value &value, const GivenNumbers &numbers,
                        std::vector<SiteAntenna> &into) const {
    constexpr double fewest = 2.0, most = LVB_MAX_CANDIDATES;
    need_number(checks_, value, numbers, candidate_keys(), positions);
    const std::uint32_t count = whole_within(checks_, numbers, positions, fewest, most);
    const Lengths rail = lengths_of(checks_, value, "rail_to");
    const std::vector<double> to = point_of(checks_, *rail.value, rail.to_metres, 3, 3);
    const lvb_antenna &begin = first.place.entry;
    if (to[0] == begin.x_m && to[1] == begin.y_m && to[2] == begin.z_m)
        refuse(*rail.value, "the rail ends in the place where it begins; leave it out");
    std::vector<lvb_antenna> places(count);
    auto fault = sized<lvb_fault>();
    if (lvb_spread_on_rail(&first.place.entry, to[0], to[1], to[2], count, places.data(), &fault) != LVB_OK) {
        refuse(value, fault_words(fault));
    }
    for (std::uint32_t i = 0; i < count; ++i) {
        SiteAntenna &candidate = into.emplace_back(first);
        candidate.place.entry = places[i];
        candidate.label += ", position " + std::to_string(i + 1);
    }
}

void SiteReader::read_candidate(const Site &site, const Value &value, Names &names, std::vector<SiteAntenna> &into) {
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(
        value,
        with_names({"label", "link", "place", "pattern", "rail_to_m", "rail_to_ft", "note"}, candidate_keys(), 0),
        "a candidate");
    const SiteAntenna first = read_antenna(site, value, names);
    const GivenNumbers numbers = numbers_of(checks_, members_of(value), candidate_keys(), LVB_STRUCT_NONE, 0);
    const bool on_rail = value.find("rail_to_m") != nullptr || value.find("rail_to_ft") != nullptr;
    if (on_rail) return spread(first, value, numbers, into);
    if (numbers.contains(positions))
        checks_.document().refuse_key(*numbers.at(positions).value, "positions have a use only on a rail");
    into.push_back(first);
}

Placing SiteReader::read_placing(const Site &site, const Value &value) {
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(value, with_names({"candidates", "site_antennas", "note"}, placing_keys(), 0), "a placing");
    checks_.text_or_empty(value, "note");
    Placing placing;
    placing.value = &value;
    placing.numbers = numbers_of(checks_, members_of(value), placing_keys(), LVB_STRUCT_PLACE, 0);
    for (const std::int32_t field : {std::int32_t{antennas_to_place}, std::int32_t{LVB_FIELD_LEAST_HEADROOM_DB}})
        need_number(checks_, value, placing.numbers, placing_keys(), field);
    constexpr double most_antennas = 2.0, most_headroom = 100.0;
    placing.antennas = whole_within(checks_, placing.numbers, antennas_to_place, 1.0, most_antennas);
    placing.least_headroom_db = within(checks_, placing.numbers, LVB_FIELD_LEAST_HEADROOM_DB, 0.0, most_headroom);
    if (const Value *others = value.find("site_antennas"))
        placing.keeps_antennas = checks_.choose(*others, {"stay", "leave out"}, "fate of the site's antennas") == 0;
    const Value &list = checks_.need(value, "candidates");
    Names names(checks_, "candidate");
    for (const Value *item : list_of(checks_, list, "candidate"))
        read_candidate(site, *item, names, placing.candidates);
    const std::size_t count = placing.candidates.size();
    if (count < placing.antennas || count > LVB_MAX_CANDIDATES)
        refuse(list, "there are " + std::to_string(count) + " candidates; allowed " + std::to_string(placing.antennas) +
                         " to " + std::to_string(LVB_MAX_CANDIDATES));
    return placing;
}

Site SiteReader::read(const Value &value) {
    constexpr double least_step_m = 0.01, most_step_m = 1000.0, farthest = 1e6;
    checks_.expect(value, Value::Kind::object);
    checks_.check_keys(value,
                       with_names({"name", "note", "direction", "combining", "areas", "antennas", "screens", "path",
                                   "wearer", "fading", "walks", "placing"},
                                  site_keys(), 0),
                       "a site");
    Site site;
    site.value = &value;
    site.name = checks_.text(checks_.need(value, "name"));
    site.note = checks_.text_or_empty(value, "note");
    site.direction = checks_.choose(checks_.need(value, "direction"), words(lvb_direction_name, 0), "direction");
    site.combine = checks_.choose(checks_.need(value, "combining"), words(lvb_combine_name, 0), "way of combining");
    site.numbers = numbers_of(checks_, members_of(value), site_keys(), LVB_STRUCT_SITE, 0);
    for (const std::int32_t field : {LVB_FIELD_PACK_HEIGHT_M, LVB_FIELD_STEP_X_M})
        need_number(checks_, value, site.numbers, site_keys(), field);
    site.pack_height_m = taken(site.numbers, LVB_FIELD_PACK_HEIGHT_M);
    check_over_floor(checks_, *site.numbers.at(LVB_FIELD_PACK_HEIGHT_M).value, site.pack_height_m);
    site.step_m = within(checks_, site.numbers, LVB_FIELD_STEP_X_M, least_step_m, most_step_m);
    if (site.numbers.contains(stage_front))
        site.stage_front_y_m = within(checks_, site.numbers, stage_front, -farthest, farthest);
    Names areas(checks_, "area"), antennas(checks_, "antenna"), walks(checks_, "walk");
    for (const Value *item : list_of(checks_, checks_.need(value, "areas"), "area"))
        site.areas.push_back(read_area(*item, areas));
    if (const Value *path = value.find("path")) site.path = read_site_path(*path);
    if (const Value *list = value.find("antennas"))
        for (const Value *item : list_of(checks_, *list, "antenna")) {
            checks_.expect(*item, Value::Kind::object);
            checks_.check_keys(*item, {"label", "link", "place", "pattern", "note"}, "an antenna of a site");
            site.antennas.push_back(read_antenna(site, *item, antennas));
        }
    if (const Value *wearer = value.find("wearer")) site.wearer = read_wearer(site, *wearer);
    if (const Value *list = value.find("screens"))
        for (const Value *item : list_of(checks_, *list, "screen")) site.screens.push_back(read_screen(*item));
    if (const Value *fading = value.find("fading")) site.fading = read_fading(checks_, *fading);
    if (const Value *list = value.find("walks"))
        for (const Value *item : list_of(checks_, *list, "walk")) site.walks.push_back(read_walk(*item, walks));
    if (const Value *placing = value.find("placing")) site.placing = read_placing(site, *placing);
    if (site.antennas.empty() && !site.placing) refuse(value, "antennas or placing is missing");
    check_packs(site);
    check_replaced(site);
    return site;
}

} // namespace

const std::vector<NumberKey> &site_keys() {
    static const std::vector<NumberKey> keys = {
        {"pack_height_m", LVB_FIELD_PACK_HEIGHT_M, same, same, every, "m"},
        {"pack_height_ft", LVB_FIELD_PACK_HEIGHT_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"step_m", LVB_FIELD_STEP_X_M, same, same, every, "m"},
        {"step_ft", LVB_FIELD_STEP_X_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"stage_front_y_m", stage_front, same, same, every, "m"},
        {"stage_front_y_ft", stage_front, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
    };
    return keys;
}

const std::vector<NumberKey> &screen_keys() {
    static const std::vector<NumberKey> keys = {
        {"bottom_m", LVB_FIELD_BOTTOM_M, same, same, every, "m"},
        {"bottom_ft", LVB_FIELD_BOTTOM_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"top_m", LVB_FIELD_TOP_M, same, same, every, "m"},
        {"top_ft", LVB_FIELD_TOP_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
        {"loss_db", LVB_FIELD_LOSS_DB, same, same, every, "dB"},
    };
    return keys;
}

const std::vector<NumberKey> &walk_keys() {
    static const std::vector<NumberKey> keys = {
        {"speed_m_per_s", LVB_FIELD_SPEED_M_PER_S, same, same, every, "m/s"},
        {"speed_km_per_h", LVB_FIELD_SPEED_M_PER_S, per_hour, per_second, every, "km/h"},
        {"step_m", LVB_FIELD_STEP_M, same, same, every, "m"},
        {"step_ft", LVB_FIELD_STEP_M, lvb_metres_from_feet, lvb_feet_from_metres, every, "ft"},
    };
    return keys;
}

std::vector<Site> read_sites(const Checks &checks, const Value &list, const std::vector<Link> &links) {
    SiteReader reader(checks, links);
    Names names(checks, "site");
    std::vector<Site> sites;
    for (const Value *item : list_of(checks, list, "site")) {
        sites.push_back(reader.read(*item));
        names.take(*item, "name");
    }
    return sites;
}

} // namespace desk
