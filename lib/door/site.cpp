#include "door/site.hpp"

#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "door/paths.hpp"
#include "door/patterns.hpp"
#include "door/site_fields.hpp"

namespace lvb::door {
namespace {

static_assert(static_cast<int>(map::Combine::sum) == LVB_COMBINE_SUM);
static_assert(static_cast<int>(map::Facing::away) == LVB_FACING_AWAY);

constexpr double least_width_m = 0.001;

bool check_choice(Refusal &refusal, std::int32_t value, std::int32_t last, Place place, std::int32_t field) noexcept {
    return (value >= 0 && value <= last) || refuse(refusal, LVB_E_UNKNOWN_VALUE, place, field, value, 0.0, last);
}
bool check_unused(Refusal &refusal, double value, bool used, Place place, std::int32_t field) noexcept {
    return used || value == 0.0 || refuse_unused(refusal, value, place, field);
}

bool check_many(Refusal &refusal, const Lent &lent, std::uint32_t fewest, std::uint32_t most, std::size_t known,
                Place place) noexcept {
    if (lent.count < fewest || lent.count > most)
        return refuse(refusal, LVB_E_COUNT, place, lent.count_field, lent.count, fewest, most);
    return check_lent(refusal, lent, known, most, place);
}

// Whether all corners lie next to the line through the first and the corner that is farthest from it.
bool is_flat(const map::Area &area) noexcept {
    std::size_t far = 0;
    double most = 0.0;
    for (std::size_t i = 1; i < area.corners; ++i) {
        const double dx = area.x[i] - area.x[0], dy = area.y[i] - area.y[0];
        if (dx * dx + dy * dy <= most) continue;
        most = dx * dx + dy * dy;
        far = i;
    }
    const double wx = area.x[far] - area.x[0], wy = area.y[far] - area.y[0];
    const double least = least_width_m * math::sqrt(most);
    for (std::size_t i = 1; i < area.corners; ++i)
        if (math::abs(wx * (area.y[i] - area.y[0]) - wy * (area.x[i] - area.x[0])) > least) return false;
    return true;
}

bool take_area(Refusal &refusal, const lvb_site &in, std::uint32_t index, map::Area &area) noexcept {
    const auto at = static_cast<std::int32_t>(index);
    const Place place{LVB_STRUCT_AREA, -1, at};
    lvb_area copy;
    if (!take_element(refusal, in.areas, in.area_size, place, copy)) return false;
    if (copy.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, copy.reserved, 0.0, 0.0);
    if (copy.corner_count < 3 || copy.corner_count > LVB_MAX_CORNERS)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_CORNER_COUNT, copy.corner_count, 3.0, LVB_MAX_CORNERS);
    if (copy.x_m == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_X_M);
    if (copy.y_m == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_Y_M);
    for (std::uint32_t i = 0; i < copy.corner_count; ++i) {
        const Place corner{LVB_STRUCT_AREA, at, static_cast<std::int32_t>(i)};
        if (!check_range(refusal, copy.x_m[i], position_range.minimum, position_range.maximum, corner, LVB_FIELD_X_M) ||
            !check_range(refusal, copy.y_m[i], position_range.minimum, position_range.maximum, corner, LVB_FIELD_Y_M))
            return false;
    }
    area = {copy.x_m, copy.y_m, copy.corner_count};
    return !is_flat(area) || refuse(refusal, LVB_E_TABLE_DUPLICATE, place, LVB_FIELD_CORNER_COUNT, copy.corner_count);
}

bool take_screen(Refusal &refusal, const lvb_site &in, std::uint32_t index, map::Screen &screen) noexcept {
    const Place place = row_of(LVB_STRUCT_SCREEN, index);
    lvb_screen copy;
    if (!take_element(refusal, in.screens, in.screen_size, place, copy) ||
        !check_field(refusal, copy.x1_m, position_range, place, LVB_FIELD_X1_M) ||
        !check_field(refusal, copy.y1_m, position_range, place, LVB_FIELD_Y1_M) ||
        !check_field(refusal, copy.x2_m, position_range, place, LVB_FIELD_X2_M) ||
        !check_field(refusal, copy.y2_m, position_range, place, LVB_FIELD_Y2_M) ||
        !check_field(refusal, copy.bottom_m, height_range, place, LVB_FIELD_BOTTOM_M) ||
        !check_field(refusal, copy.top_m, height_range, place, LVB_FIELD_TOP_M) ||
        !check_field(refusal, copy.loss_db, screen_loss_range, place, LVB_FIELD_LOSS_DB))
        return false;
    if (!(copy.top_m > copy.bottom_m))
        return refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_TOP_M, copy.top_m, copy.bottom_m, height_range.maximum);
    const double dx = copy.x2_m - copy.x1_m, dy = copy.y2_m - copy.y1_m, width = math::sqrt(dx * dx + dy * dy);
    if (!check_range(refusal, width, least_width_m, 4e6, place, LVB_FIELD_X2_M)) return false;
    screen = {copy.x1_m,           copy.y1_m,           copy.x2_m,
              copy.y2_m,           copy.bottom_m,       copy.top_m,
              copy.bottom_m > 0.0, copy.loss_db != 0.0, math::power_of_db(-copy.loss_db)};
    return true;
}

// Whether a place is so near to a screen that it has no side.
bool stands_in(const map::Screen &screen, const map::Vector &at) noexcept {
    const double wx = screen.x2 - screen.x1, wy = screen.y2 - screen.y1;
    const double share = ((at.x - screen.x1) * wx + (at.y - screen.y1) * wy) / (wx * wx + wy * wy);
    const double along = share < 0.0 ? 0.0 : share > 1.0 ? 1.0 : share;
    const double dx = at.x - (screen.x1 + along * wx), dy = at.y - (screen.y1 + along * wy);
    const double over = at.z - screen.top, under = screen.bottom - at.z;
    const double up = over > 0.0 ? over : under > 0.0 ? under : 0.0;
    return (dx * dx + dy * dy) + up * up < map::nearest_m * map::nearest_m;
}

// How the pack's antenna is turned; it has no place of its own.
bool take_pack_antenna(Refusal &refusal, const lvb_site &in, map::Wearer &wearer) noexcept {
    wearer.has_antenna = in.pack_antenna != nullptr;
    if (!check_used(refusal, in.most_polarization_loss_db, wearer.has_antenna ? &most_polarization_loss_range : nullptr,
                    {LVB_STRUCT_SITE}, LVB_FIELD_MOST_POLARIZATION_LOSS_DB))
        return false;
    if (!wearer.has_antenna) return true;
    const Place place{LVB_STRUCT_ANTENNA, LVB_STAGE_PACK};
    lvb_antenna worn;
    if (!take(refusal, in.pack_antenna, worn, place, LVB_FIELD_PACK_ANTENNA) || !check_antenna(refusal, worn, place) ||
        !check_unused(refusal, worn.x_m, false, place, LVB_FIELD_X_M) ||
        !check_unused(refusal, worn.y_m, false, place, LVB_FIELD_Y_M) ||
        !check_unused(refusal, worn.z_m, false, place, LVB_FIELD_Z_M))
        return false;
    map::Worn &taken = wearer.antenna;
    taken.axes = axes_of(worn);
    const double most_db = in.most_polarization_loss_db;
    taken.least_polarization = most_db != 0.0 ? math::power_of_db(-most_db) : 0.0;
    taken.has_pattern = worn.pattern != nullptr;
    return !taken.has_pattern || (take_pattern(refusal, worn.pattern, LVB_STAGE_PACK, taken.pattern) &&
                                  check_polarization(refusal, worn, &taken.pattern, place));
}

bool take_facing(Refusal &refusal, const lvb_site &in, const map::Antenna *antennas, map::Wearer &wearer) noexcept {
    const Place place{LVB_STRUCT_SITE};
    const bool turns = in.body_table != nullptr || in.pack_antenna != nullptr;
    const bool by_antenna = turns && (in.facing == LVB_FACING_ANTENNA || in.facing == LVB_FACING_AWAY);
    const bool by_point = turns && in.facing == LVB_FACING_POINT, by_azimuth = turns && in.facing == LVB_FACING_AZIMUTH;
    if (!check_choice(refusal, in.facing, LVB_FACING_AWAY, place, LVB_FIELD_FACING) ||
        !check_unused(refusal, in.facing, turns, place, LVB_FIELD_FACING) ||
        !check_unused(refusal, in.facing_antenna, by_antenna, place, LVB_FIELD_FACING_ANTENNA) ||
        !check_unused(refusal, in.facing_azimuth_deg, by_azimuth, place, LVB_FIELD_FACING_AZIMUTH_DEG) ||
        !check_unused(refusal, in.facing_x_m, by_point, place, LVB_FIELD_FACING_X_M) ||
        !check_unused(refusal, in.facing_y_m, by_point, place, LVB_FIELD_FACING_Y_M) ||
        !check_field(refusal, in.facing_azimuth_deg, turn_range, place, LVB_FIELD_FACING_AZIMUTH_DEG) ||
        !check_field(refusal, in.facing_x_m, position_range, place, LVB_FIELD_FACING_X_M) ||
        !check_field(refusal, in.facing_y_m, position_range, place, LVB_FIELD_FACING_Y_M))
        return false;
    if (by_antenna && in.facing_antenna >= in.antenna_count)
        return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_FACING_ANTENNA, in.facing_antenna, 0.0,
                      in.antenna_count == 0 ? math::not_a_number : in.antenna_count - 1.0);
    wearer.facing = static_cast<map::Facing>(in.facing);
    wearer.azimuth_deg = in.facing_azimuth_deg;
    wearer.x = by_antenna ? antennas[in.facing_antenna].at.x : in.facing_x_m;
    wearer.y = by_antenna ? antennas[in.facing_antenna].at.y : in.facing_y_m;
    return true;
}

bool take_body(Refusal &refusal, const lvb_site &in, map::Wearer &wearer) noexcept {
    wearer.has_body = in.body_table != nullptr;
    return !wearer.has_body ||
           take_body_table(refusal, in.body_table, LVB_STAGE_NONE, LVB_FIELD_BODY_TABLE, wearer.body);
}

// The first limit in which two windows differ, or none.
std::int32_t differing_limit(const chain::Window &a, const chain::Window &b) noexcept {
    if (a.has_floor != b.has_floor || a.floor_dbm != b.floor_dbm) return LVB_FIELD_FLOOR_DBM;
    if (a.has_wanted != b.has_wanted || a.wanted_low_dbm != b.wanted_low_dbm) return LVB_FIELD_WANTED_LOW_DBM;
    if (a.wanted_high_dbm != b.wanted_high_dbm) return LVB_FIELD_WANTED_HIGH_DBM;
    const bool same_ceiling = a.has_ceiling == b.has_ceiling && a.ceiling_dbm == b.ceiling_dbm;
    return same_ceiling ? std::int32_t{LVB_FIELD_NONE} : std::int32_t{LVB_FIELD_CEILING_DBM};
}

// Air takes free space at 1 m, and whatever walls its path crosses; a path of another model is kept for the points.
bool take_air(Refusal &refusal, const lvb_link &link, const chain::Stage &stage, std::int32_t index,
              map::Antenna &antenna) noexcept {
    double loss = map::loss_at_1m_db(link.frequency_mhz);
    if (stage.has_path) {
        const Place place{LVB_STRUCT_PATH, index};
        const path::Path &path = stage.path;
        if (!check_reach(refusal, path, link.frequency_mhz, {LVB_STRUCT_LINK, index})) return false;
        if (path.model == path::Model::radiating_cable)
            return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_MODEL, LVB_PATH_RADIATING_CABLE);
        if (path.edges.count != 0) return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_EDGES);
        antenna.has_path = path.model != path::Model::free_space;
        if (antenna.has_path) antenna.path = path;
        else loss += path.obstacles_db;
    }
    antenna.far_db -= loss;
    antenna.near_db -= loss;
    return true;
}

// The pattern that a site gives to an antenna of a chain, or null.
const antenna::Pattern *given_pattern(const map::Wearer &wearer, const map::Antenna &antenna, bool is_own) noexcept {
    if (is_own) return antenna.has_pattern ? &antenna.pattern : nullptr;
    return wearer.has_antenna && wearer.antenna.has_pattern ? &wearer.antenna.pattern : nullptr;
}

// What all chains of a site share, and where the receiver stands.
struct Shared {
    chain::Window window{};
    double frequency_mhz = 0.0;
    std::int32_t last_stage = LVB_STAGE_NONE;
    bool has_receiver = false;
};

// Sums a chain to its level at 1 m, with the greatest gain of what the site gives a pattern.
bool take_chain(Refusal &refusal, const lvb_link *lent, TakenSite &taken, map::Antenna &antenna,
                Shared &shared) noexcept {
    lvb_link link;
    Order order;
    chain::Stage stage;
    if (!take(refusal, lent, link, {LVB_STRUCT_LINK}, LVB_FIELD_LINK) ||
        !check_field(refusal, link.frequency_mhz, frequency_range, {LVB_STRUCT_LINK}, LVB_FIELD_FREQUENCY_MHZ) ||
        !check_link_frame(refusal, link))
        return false;
    antenna.far_db = antenna.near_db = 0.0;
    antenna.has_path = false;
    bool is_own = !taken.inbound; // the next antenna is the site's
    for (std::uint32_t i = 0; i < link.stage_count; ++i) {
        const auto index = static_cast<std::int32_t>(i);
        if (!take_stage(refusal, link, i, stage, Heights::of_site) || !order.next(refusal, stage, index) ||
            !check_tables(refusal, stage, link.frequency_mhz, index) ||
            (stage.kind == chain::Kind::air && !take_air(refusal, link, stage, index, antenna)))
            return false;
        chain::Change change =
            chain::own_change(stage, link.frequency_mhz, temperature_of(link.temperature_degc, link.stated));
        if (stage.kind == chain::Kind::antenna) {
            const antenna::Pattern *given = given_pattern(taken.site.wearer, antenna, is_own);
            if (given != nullptr) change.far_db = change.near_db = antenna::maximum_dbi(*given);
            else if (is_own && stage.has_pattern)
                return refuse(refusal, LVB_E_UNUSED, {LVB_STRUCT_STAGE, index}, LVB_FIELD_PATTERN, LVB_KIND_ANTENNA);
            is_own = !is_own;
        }
        shared.has_receiver = stage.kind == chain::Kind::receiver;
        if (shared.has_receiver) shared.window = stage.window;
        shared.last_stage = index;
        antenna.far_db += change.far_db;
        antenna.near_db += change.near_db;
    }
    shared.frequency_mhz = link.frequency_mhz;
    if (!order.end(refusal)) return false;
    return order.air() >= 0 || refuse(refusal, LVB_E_MISSING, {LVB_STRUCT_LINK}, LVB_FIELD_STAGES, 0.0);
}

// A whole number where only rounding keeps a number from it: whole exponents of a square take no logarithm.
double nearly_whole(double x) noexcept {
    constexpr double rounding = 1e-13;
    if (x > map::most_whole_exponent) return x;
    // NOLINTNEXTLINE(bugprone-incorrect-roundings): far below 2^52, and what lies near a half is not nearly whole
    const auto whole = static_cast<double>(static_cast<std::uint32_t>(x + 0.5));
    return math::abs(x - whole) <= rounding ? whole : x;
}

// The antenna itself: its place, and its pattern in the form that the fastest loop takes.
bool take_place(Refusal &refusal, const lvb_antenna *lent, bool polarizes, map::Antenna &antenna) noexcept {
    const Place place{LVB_STRUCT_ANTENNA};
    lvb_antenna in;
    if (!take(refusal, lent, in, place, LVB_FIELD_ANTENNA) || !check_antenna(refusal, in, place)) return false;
    antenna.at = {in.x_m, in.y_m, in.z_m};
    antenna.axes = axes_of(in);
    antenna.has_pattern = in.pattern != nullptr;
    if (antenna.has_pattern && !take_pattern(refusal, in.pattern, LVB_STAGE_NONE, antenna.pattern)) return false;
    const antenna::Pattern *pattern = antenna.has_pattern ? &antenna.pattern : nullptr;
    const bool is_circular = antenna.has_pattern && antenna.pattern.circular; // which a helix is anyhow
    if (!check_unused(refusal, in.polarization_deg, polarizes, place, LVB_FIELD_POLARIZATION_DEG) ||
        !check_unused(refusal, in.ellipticity, polarizes || is_circular, place, LVB_FIELD_ELLIPTICITY) ||
        (polarizes && !check_polarization(refusal, in, pattern, place)))
        return false;
    if (!antenna.has_pattern) return true;
    const antenna::Vector &aim = antenna.axes.boresight;
    const double behind_db = antenna.pattern.gain_dbi - antenna.pattern.floor_dbi;
    antenna.cosine = {
        {aim.x, aim.y, aim.z}, nearly_whole(0.5 * antenna.pattern.exponent), math::power_of_db(behind_db)};
    return true;
}

// Tells which antenna a refusal is about, where it does not tell the row of a table.
bool of_antenna(Refusal &refusal, std::int32_t index) noexcept {
    const std::int32_t structure = refusal.place.structure;
    if (structure == LVB_STRUCT_LINK || structure == LVB_STRUCT_STAGE || structure == LVB_STRUCT_ANTENNA ||
        structure == LVB_STRUCT_PATTERN)
        refusal.place.row = index;
    return false;
}

bool check_shared(Refusal &refusal, std::int32_t index, const Shared &shared, TakenSite &taken) noexcept {
    map::Site &site = taken.site;
    if (!taken.has_chain) {
        site.frequency_mhz = shared.frequency_mhz;
        site.window = shared.window;
        taken.has_chain = true;
        taken.has_receiver = shared.has_receiver;
        return true;
    }
    if (shared.frequency_mhz != site.frequency_mhz)
        return refuse(refusal, LVB_E_CONFLICT, {LVB_STRUCT_LINK, -1, index}, LVB_FIELD_FREQUENCY_MHZ,
                      shared.frequency_mhz);
    const std::int32_t limit = differing_limit(shared.window, site.window);
    if (limit != LVB_FIELD_NONE && shared.has_receiver != taken.has_receiver)
        return refuse(refusal, LVB_E_CONFLICT, {LVB_STRUCT_LINK, -1, index}, LVB_FIELD_STAGES);
    return limit == LVB_FIELD_NONE ||
           refuse(refusal, LVB_E_CONFLICT, {LVB_STRUCT_STAGE, shared.last_stage, index}, limit);
}

bool check_two_ray(Refusal &refusal, const TakenSite &taken, const map::Antenna &antenna, std::int32_t index) noexcept {
    if (!antenna.has_path || antenna.path.model != path::Model::two_ray) return true;
    const double least = height_over_floor_range.minimum, most = height_over_floor_range.maximum;
    return check_range(refusal, antenna.at.z, least, most, {LVB_STRUCT_ANTENNA, -1, index}, LVB_FIELD_Z_M) &&
           (taken.has_own_heights ||
            check_range(refusal, taken.site.height_m, least, most, {LVB_STRUCT_SITE}, LVB_FIELD_PACK_HEIGHT_M));
}

bool check_screens(Refusal &refusal, const map::Site &site, const map::Antenna &antenna, std::int32_t index) noexcept {
    for (std::size_t i = 0; i < site.screen_count; ++i)
        if (stands_in(site.screens[i], antenna.at))
            return refuse(refusal, LVB_E_CONFLICT, {LVB_STRUCT_SCREEN, -1, static_cast<std::int32_t>(i)},
                          LVB_FIELD_ANTENNA, index);
    return true;
}

bool check_site(Refusal &refusal, const lvb_site &in, std::uint32_t fewest) noexcept {
    const Place place{LVB_STRUCT_SITE};
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    return check_choice(refusal, in.direction, LVB_DIRECTION_INBOUND, place, LVB_FIELD_DIRECTION) &&
           check_choice(refusal, in.combine, LVB_COMBINE_SUM, place, LVB_FIELD_COMBINE) &&
           check_field(refusal, in.pack_height_m, height_range, place, LVB_FIELD_PACK_HEIGHT_M) &&
           check_many(refusal,
                      {in.antennas, in.antenna_count, in.antenna_size, LVB_FIELD_ANTENNAS, LVB_FIELD_ANTENNA_COUNT,
                       LVB_FIELD_ANTENNA_SIZE},
                      fewest, LVB_MAX_SITE_ANTENNAS, sizeof(lvb_site_antenna), place) &&
           check_many(
               refusal,
               {in.areas, in.area_count, in.area_size, LVB_FIELD_AREAS, LVB_FIELD_AREA_COUNT, LVB_FIELD_AREA_SIZE}, 0,
               LVB_MAX_AREAS, sizeof(lvb_area), place) &&
           check_many(refusal,
                      {in.screens, in.screen_count, in.screen_size, LVB_FIELD_SCREENS, LVB_FIELD_SCREEN_COUNT,
                       LVB_FIELD_SCREEN_SIZE},
                      0, LVB_MAX_SCREENS, sizeof(lvb_screen), place);
}

} // namespace

void raise_references(map::Site &site, const map::Antenna &antenna) noexcept {
    const bool finite_far = antenna.far_db > -math::infinity, finite_near = antenna.near_db > -math::infinity;
    if (finite_far && !(antenna.far_db <= site.far_reference_db)) site.far_reference_db = antenna.far_db;
    if (finite_near && !(antenna.near_db <= site.near_reference_db)) site.near_reference_db = antenna.near_db;
}

void settle_references(TakenSite &taken) noexcept {
    map::Site &site = taken.site;
    // without any level there is nothing to refer to
    if (math::is_nan(site.far_reference_db)) site.far_reference_db = 0.0;
    if (math::is_nan(site.near_reference_db)) site.near_reference_db = 0.0;
    for (std::size_t i = 0; i < site.antenna_count; ++i) map::refer(site, taken.antennas[i]);
}

bool take_site_antenna(Refusal &refusal, const lvb_site_antenna *elements, std::uint32_t element_size,
                       std::uint32_t index, TakenSite &taken, map::Antenna &antenna) noexcept {
    const auto at = static_cast<std::int32_t>(index);
    const Place place{LVB_STRUCT_SITE_ANTENNA, -1, at};
    lvb_site_antenna in;
    if (!take_element(refusal, elements, element_size, place, in)) return false;
    if (in.antenna == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_ANTENNA);
    if (in.link == nullptr) return refuse(refusal, LVB_E_NULL, place, LVB_FIELD_LINK);
    Shared shared;
    antenna.swaps_heights = taken.inbound;
    if (!take_place(refusal, in.antenna, taken.site.wearer.has_antenna, antenna) ||
        !take_chain(refusal, in.link, taken, antenna, shared))
        return of_antenna(refusal, at);
    return check_shared(refusal, at, shared, taken) && check_two_ray(refusal, taken, antenna, at) &&
           check_screens(refusal, taken.site, antenna, at);
}

bool take_site(Refusal &refusal, const lvb_site *lent, std::uint32_t fewest, math::InstructionSet set,
               TakenSite &taken) noexcept {
    lvb_site in;
    if (!take(refusal, lent, in, {LVB_STRUCT_SITE}, LVB_FIELD_SITE) || !check_site(refusal, in, fewest)) return false;
    map::Site &site = taken.site;
    site.row = &map::row_loops_of(set);
    site.antennas = taken.antennas;
    site.screens = taken.screens;
    site.areas = taken.areas;
    site.antenna_count = in.antenna_count;
    site.screen_count = in.screen_count;
    site.area_count = in.area_count;
    site.combine = static_cast<map::Combine>(in.combine);
    site.height_m = in.pack_height_m;
    site.far_reference_db = site.near_reference_db = math::not_a_number;
    site.window = {};
    taken.inbound = in.direction == LVB_DIRECTION_INBOUND;
    if (!take_pack_antenna(refusal, in, site.wearer)) return false;
    for (std::uint32_t i = 0; i < in.area_count; ++i)
        if (!take_area(refusal, in, i, taken.areas[i])) return false;
    for (std::uint32_t i = 0; i < in.screen_count; ++i)
        if (!take_screen(refusal, in, i, taken.screens[i])) return false;
    for (std::uint32_t i = 0; i < in.antenna_count; ++i) {
        if (!take_site_antenna(refusal, in.antennas, in.antenna_size, i, taken, taken.antennas[i])) return false;
        raise_references(site, taken.antennas[i]);
    }
    if (!take_facing(refusal, in, taken.antennas, site.wearer) || !take_body(refusal, in, site.wearer)) return false;
    settle_references(taken);
    map::settle(site);
    return true;
}

bool check_axis(Refusal &refusal, double first_m, double step_m, std::uint64_t last, Place place,
                std::int32_t first_field, std::int32_t step_field, std::int32_t count_field) noexcept {
    if (!check_field(refusal, first_m, position_range, place, first_field) ||
        !check_field(refusal, step_m, grid_step_range, place, step_field))
        return false;
    const double end_m = first_m + static_cast<double>(last) * step_m;
    return end_m <= position_range.maximum ||
           refuse(refusal, LVB_E_COUNT, place, count_field, static_cast<double>(last) + 1.0, 0.0,
                  (position_range.maximum - first_m) / step_m + 1.0);
}

} // namespace lvb::door
