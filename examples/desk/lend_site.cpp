#include "lend_site.hpp"

#include "compute.hpp"
#include "faults.hpp"

#include <algorithm>

namespace desk {
namespace {

// The antennas' patterns, the path, the body and the polarization of a site stand in place of those of its chains, and
// all are judged by the floor of the one whose noise asks for most.
Link changed(const Site &site, const SiteAntenna &antenna, Link link, std::optional<double> needed_dbm) {
    link.needed_dbm = needed_dbm;
    const auto give = [&](std::int32_t index, const std::optional<Pattern> &pattern) {
        if (!pattern) return;
        Stage &stage = link.stages[static_cast<std::size_t>(index)];
        stage.pattern = pattern;
        stage.gain_table = nullptr;
        stage.entry.gain_db = 0.0;
    };
    give(link.antenna(site.direction), antenna.pattern);
    if (site.wearer && site.wearer->antenna_on_pack) {
        const Wearer &wearer = *site.wearer;
        give(link.antenna(1 - site.direction), wearer.antenna_on_pack->pattern);
    }
    std::erase_if(link.stages, [&](const Stage &stage) { return is_replaced(site, stage); });
    if (site.path)
        for (Stage &stage : link.stages)
            if (stage.entry.kind == LVB_KIND_AIR) stage.path = site.path;
    return link;
}

double tolerances_of(const Link &link, bool with_allowances) {
    double sum = 0.0;
    for (const Stage &stage : link.stages)
        if (with_allowances || stage.entry.kind != LVB_KIND_ALLOWANCE) sum += stage.entry.tolerance_db;
    return sum;
}

} // namespace

LentSite::Chain::Chain(const Site &site, const SiteAntenna &antenna, const Link &original,
                       std::optional<double> needed_dbm)
    : pattern(antenna.pattern ? antenna.pattern->value : nullptr), index(antenna.link),
      link(changed(site, antenna, original, needed_dbm)), own(static_cast<std::size_t>(link.antenna(site.direction))),
      pack(static_cast<std::size_t>(link.antenna(1 - site.direction))), lent(link) {}

// Antennas of one link and pattern share their chain; the link must hold by itself, as the budget sees it.
const LentSite::Chain &LentSite::chain_of(const SiteAntenna &antenna) {
    const Value *pattern = antenna.pattern ? antenna.pattern->value : nullptr;
    for (const Chain &chain : chains_)
        if (chain.index == antenna.link && chain.pattern == pattern) return chain;
    const Link &link = scenario_.links[antenna.link];
    compute(document_, link);
    return chains_.emplace_back(of_, antenna, link, needed_dbm_);
}

void LentSite::need_floor_of(const std::vector<SiteAntenna> &antennas) {
    for (const SiteAntenna &antenna : antennas)
        if (const std::optional<double> needed_dbm = scenario_.links[antenna.link].needed_dbm)
            needed_dbm_ = std::max(needed_dbm_.value_or(*needed_dbm), *needed_dbm);
}

void LentSite::lend(const std::vector<SiteAntenna> &antennas, std::vector<lvb_antenna> &places,
                    std::vector<lvb_site_antenna> &lent) {
    places.reserve(antennas.size());
    for (const SiteAntenna &antenna : antennas) {
        const Chain &chain = chain_of(antenna);
        lvb_antenna &place = places.emplace_back(antenna.place.entry);
        place.pattern = chain.lent.stage(chain.own).pattern;
        lent.push_back({&place, &chain.lent.link()});
    }
}

LentSite::LentSite(const Document &document, const Scenario &scenario, const Site &site, bool with_candidates)
    : document_(document), scenario_(scenario), of_(site) {
    static const std::vector<SiteAntenna> none;
    const std::vector<SiteAntenna> &candidates = with_candidates ? site.placing->candidates : none;
    for (const Area &area : site.areas)
        areas_.push_back(
            {static_cast<std::uint32_t>(area.corners.x_m.size()), 0, area.corners.x_m.data(), area.corners.y_m.data()});
    for (const Screen &screen : site.screens) screens_.push_back(screen.entry);
    site_.size = sizeof site_;
    site_.direction = site.direction;
    site_.combine = site.combine;
    site_.antenna_size = sizeof(lvb_site_antenna);
    site_.areas = areas_.data();
    site_.area_count = static_cast<std::uint32_t>(areas_.size());
    site_.area_size = sizeof(lvb_area);
    site_.screens = screens_.data();
    site_.screen_count = static_cast<std::uint32_t>(screens_.size());
    site_.screen_size = sizeof(lvb_screen);
    site_.pack_height_m = site.pack_height_m;
    need_floor_of(site.antennas);
    need_floor_of(candidates);
    lend(site.antennas, places_, lent_antennas_);
    lend(candidates, candidate_places_, lent_candidates_);
    if (site.wearer) lend_pack_antenna(*site.wearer);
    for (std::size_t i = 0; i < site.antennas.size(); ++i) check(site.antennas[i], lent_antennas_[i]);
    for (std::size_t i = 0; i < candidates.size(); ++i) check(candidates[i], lent_candidates_[i]);
    site_.antennas = lent_antennas_.data();
    site_.antenna_count = static_cast<std::uint32_t>(lent_antennas_.size());
    if (!lent_antennas_.empty())
        if (const lvb_fault fault = fault_of(site_); fault.status == LVB_E_CONFLICT)
            refuse_chain(site.antennas[static_cast<std::size_t>(fault.row)], fault);
    if (site.wearer) lend_facing(*site.wearer);
}

// How the pack's antenna is turned, which the antennas are checked with.
void LentSite::lend_pack_antenna(const Wearer &wearer) {
    if (!wearer.antenna_on_pack) return;
    pack_antenna_ = wearer.antenna_on_pack->entry;
    if (const Chain &chain = chains_.front(); wearer.antenna_on_pack->pattern)
        pack_antenna_.pattern = chain.lent.stage(chain.pack).pattern;
    site_.pack_antenna = &pack_antenna_;
    site_.most_polarization_loss_db = wearer.most_polarization_loss_db;
}

void LentSite::lend_facing(const Wearer &wearer) {
    if (wearer.body_table) {
        body_ = {sizeof body_, static_cast<std::uint32_t>(wearer.body_table->values.size()),
                 wearer.body_table->points.data(), wearer.body_table->values.data()};
        site_.body_table = &body_;
    }
    site_.facing = wearer.facing;
    site_.facing_azimuth_deg = wearer.azimuth_deg;
    site_.facing_x_m = wearer.x_m;
    site_.facing_y_m = wearer.y_m;
    site_.facing_antenna = wearer.antenna;
}

const lvb_stage *LentSite::receiver() const {
    const Chain &chain = chains_.front();
    const std::size_t last = chain.link.stages.size() - 1;
    return chain.link.stages[last].entry.kind == LVB_KIND_RECEIVER ? &chain.lent.stage(last) : nullptr;
}

double LentSite::far_worst_db() const {
    double worst = 0.0;
    for (const Chain &chain : chains_) worst = std::max(worst, tolerances_of(chain.link, true));
    return worst;
}

double LentSite::near_worst_db() const {
    double worst = 0.0;
    for (const Chain &chain : chains_) worst = std::max(worst, tolerances_of(chain.link, false));
    return worst;
}

// A map without columns is checked, not computed.
lvb_fault LentSite::fault_of(const lvb_site &site) const {
    lvb_map map{};
    map.size = sizeof map;
    map.instructions = lvb_best_instructions();
    map.site = &site;
    map.step_x_m = map.step_y_m = of_.step_m;
    auto fault = sized<lvb_fault>();
    lvb_compute_map(&map, nullptr, &fault);
    return fault;
}

// With one antenna only, a fault can only be this antenna's, an area's or a screen's.
void LentSite::check(const SiteAntenna &antenna, const lvb_site_antenna &lent) const {
    lvb_site alone = site_;
    alone.antennas = &lent;
    alone.antenna_count = 1;
    if (const lvb_fault fault = fault_of(alone); fault.status != LVB_OK) refuse_antenna(antenna, fault);
}

void LentSite::refuse_chain(const SiteAntenna &antenna, const lvb_fault &fault) const {
    document_.refuse(*antenna.value->find("link"),
                     fault.field == LVB_FIELD_FREQUENCY_MHZ
                         ? "this chain has " + plain(fault.value) + " MHz; all chains of a site have one frequency"
                         : "this chain's receiver has another window; all chains of a site have one");
}

void LentSite::refuse_number(const GivenNumbers &numbers, const Value &owner, const lvb_fault &fault) const {
    const auto given = numbers.find(fault.field);
    const bool range = fault.status == LVB_E_BELOW_RANGE || fault.status == LVB_E_ABOVE_RANGE;
    if (given != numbers.end() && range)
        document_.refuse(*given->second.value, plain(given->second.value->number) + " is out of range; allowed " +
                                                   plain(given->second.key->from_library(fault.minimum)) + " to " +
                                                   plain(given->second.key->from_library(fault.maximum)));
    if (given != numbers.end() && fault.status == LVB_E_ORDER)
        document_.refuse(*given->second.value, plain(given->second.value->number) + " is not above bottom_m");
    document_.refuse(given == numbers.end() ? owner : *given->second.value, fault_words(fault));
}

// What is wrong with the pack's antenna, or with its pattern, which stands in the chains.
void LentSite::refuse_pack_antenna(lvb_fault fault) const {
    const PackAntenna &worn = *of_.wearer->antenna_on_pack;
    if (fault.structure == LVB_STRUCT_ANTENNA) refuse_number(worn.numbers, *worn.value, fault);
    const Chain &chain = chains_.front();
    fault.stage = static_cast<std::int32_t>(chain.pack);
    refuse_fault(document_, chain.link, fault);
}

void LentSite::refuse_antenna(const SiteAntenna &antenna, lvb_fault fault) const {
    if (fault.stage == LVB_STAGE_PACK) refuse_pack_antenna(fault);
    switch (fault.structure) {
    case LVB_STRUCT_AREA:
    case LVB_STRUCT_SCREEN:
        if (fault.structure == LVB_STRUCT_SCREEN && fault.field == LVB_FIELD_ANTENNA)
            document_.refuse(*antenna.place.value,
                             "this antenna stands in the screen " +
                                 in_quotes(of_.screens[static_cast<std::size_t>(fault.row)].label));
        refuse(fault);
    case LVB_STRUCT_ANTENNA:
        refuse_number(antenna.place.numbers, *antenna.place.value, fault);
    case LVB_STRUCT_SITE:
        refuse_number(of_.numbers, *of_.value, fault);
    default:
        break;
    }
    for (const Chain &chain : chains_) {
        if (chain.index != antenna.link || chain.pattern != (antenna.pattern ? antenna.pattern->value : nullptr))
            continue;
        const bool of_pattern = fault.structure == LVB_STRUCT_PATTERN || fault.structure == LVB_STRUCT_AZIMUTH_CUT ||
                                fault.structure == LVB_STRUCT_ELEVATION_CUT;
        if (of_pattern && fault.stage < 0) fault.stage = static_cast<std::int32_t>(chain.own);
        refuse_fault(document_, chain.link, fault);
    }
    refuse_number({}, *antenna.value, fault);
}

void LentSite::refuse(const lvb_fault &fault) const {
    const auto row = static_cast<std::size_t>(std::max(fault.row, 0));
    switch (fault.structure) {
    case LVB_STRUCT_AREA:
        if (fault.status == LVB_E_TABLE_DUPLICATE)
            document_.refuse(*of_.areas[row].value, "all corners lie on one line; this area has no inside");
        break;
    case LVB_STRUCT_SCREEN:
        if (fault.field == LVB_FIELD_X2_M)
            document_.refuse(*of_.screens[row].ends[1], "both ends of this screen are in one place");
        refuse_number(of_.screens[row].numbers, *of_.screens[row].value, fault);
    case LVB_STRUCT_PLACE: // candidates; the site's own antennas were checked before
        if (fault.status == LVB_E_CONFLICT && fault.row >= 0) refuse_chain(of_.placing->candidates[row], fault);
        break;
    case LVB_STRUCT_BODY_TABLE: {
        const Table &table = *of_.wearer->body_table;
        const Document &where = table.file != nullptr ? *table.file : document_;
        const Given &column = fault.field == LVB_FIELD_LOSS_DB ? table.value_column : table.point_column;
        const std::string text = fault_words(fault);
        if (fault.row >= 0 && row < column.value->items.size()) where.refuse(*column.value->items[row], text);
        document_.refuse(*table.value, text);
    }
    case LVB_STRUCT_MAP:
    case LVB_STRUCT_WALK:
        if (fault.field == LVB_FIELD_FLOOR_DBM)
            document_.refuse(*of_.fading->value, "an outage needs a floor, and the chains' receivers state none");
        break;
    default:
        break;
    }
    if (fault.field == LVB_FIELD_FACING_ANTENNA)
        document_.refuse(*of_.wearer->value->find("antenna"),
                         "everybody faces this antenna, and placing leaves it out");
    if (fault.field == LVB_FIELD_DISTANCE_M)
        document_.refuse(*of_.value, "a point of the areas is " + plain(fault.value) +
                                         " m from an antenna, where its path does not hold; it does from " +
                                         plain(fault.minimum) + " to " + plain(fault.maximum) + " m");
    refuse_number(of_.numbers, *of_.value, fault);
}

} // namespace desk
