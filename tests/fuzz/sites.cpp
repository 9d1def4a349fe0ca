// Maps, walks and placements over sites of every kind: refused whole, or what they tell holds together, with the same
// bits on every instruction set and in rows of their own.
#include "fuzz/stages.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

constexpr double nothing = -std::numeric_limits<double>::infinity();

/// A size that is seldom wrong: a site lends many structs, each of which would be refused.
std::uint32_t some_size(Bytes &bytes, std::size_t known) {
    return bytes.once_in(32) ? bytes.size_of(known) : static_cast<std::uint32_t>(known);
}

/// Whatever a site lends, kept as long as it is used; its memory is exactly as long as it says.
class Sites {
  public:
    explicit Sites(Bytes &bytes) : bytes_(bytes) {
        floor_ = bytes.between(-120.0, -40.0);
        polarizes_ = bytes.once_in(4);
        limits_ = bytes.once_in(4) ? bytes.below(8) * LVB_STATED_FLOOR : LVB_STATED_FLOOR | LVB_STATED_CEILING;
    }

    Memory antennas(std::uint32_t count) {
        Memory made(count * sizeof(lvb_site_antenna));
        for (std::uint32_t i = 0; i < count; ++i) {
            const lvb_site_antenna one{bytes_.once_in(64) ? nullptr : antenna(), bytes_.once_in(64) ? nullptr : link()};
            made.put(one, i * sizeof one);
        }
        return made;
    }

    lvb_site site(std::uint32_t antenna_count) {
        lvb_site made{};
        made.size = some_size(bytes_, sizeof made);
        made.direction = static_cast<std::int32_t>(bytes_.below(2));
        made.combine = static_cast<std::int32_t>(bytes_.below(2));
        made.antenna_count = antenna_count;
        made.antenna_size = sizeof(lvb_site_antenna);
        Memory &standing = keep(antennas(antenna_count));
        if (antenna_count != 0) made.antennas = standing.as<const lvb_site_antenna>();
        made.pack_height_m = bytes_.once_in(8) ? bytes_.number(-1000.0, 1000.0) : 1.5;
        made.area_count = bytes_.below(3);
        made.area_size = sizeof(lvb_area);
        Memory &areas = keep(Memory(made.area_count * sizeof(lvb_area)));
        for (std::uint32_t i = 0; i < made.area_count; ++i) areas.put(area(), i * sizeof(lvb_area));
        if (made.area_count != 0) made.areas = areas.as<const lvb_area>();
        made.screen_count = bytes_.below(3);
        made.screen_size = sizeof(lvb_screen);
        Memory &screens = keep(Memory(made.screen_count * sizeof(lvb_screen)));
        for (std::uint32_t i = 0; i < made.screen_count; ++i) screens.put(screen(), i * sizeof(lvb_screen));
        if (made.screen_count != 0) made.screens = screens.as<const lvb_screen>();
        if (bytes_.once_in(3)) face(made);
        if (polarizes_) made.pack_antenna = pack();
        if (polarizes_ && bytes_.once_in(2)) made.most_polarization_loss_db = bytes_.number(0.001, 200.0);
        if (bytes_.once_in(24)) spoil(made);
        return made;
    }

    template <class Struct>
    const Struct *lend(const Struct &made) {
        Memory &kept = keep(fuzz::result<Struct>(made.size));
        kept.put(made);
        if (!bytes_.once_in(16)) kept.zero_from(sizeof made);
        return kept.as<const Struct>();
    }

  private:
    Memory &keep(Memory made) {
        kept_.push_back(std::move(made));
        return kept_.back();
    }
    double place(double reach) { return bytes_.once_in(24) ? bytes_.number(-1e6, 1e6) : bytes_.between(-reach, reach); }

    const lvb_antenna *antenna() {
        lvb_antenna made{};
        made.size = some_size(bytes_, sizeof made);
        made.x_m = place(20.0);
        made.y_m = place(20.0);
        made.z_m = bytes_.once_in(24) ? bytes_.any_number() : bytes_.between(0.5, 6.0);
        made.azimuth_deg = bytes_.between(-360.0, 360.0);
        made.tilt_deg = bytes_.between(-90.0, 90.0);
        if (bytes_.once_in(2)) made.pattern = lenders_.patterns.pattern(bytes_);
        polarize(made, polarizes_);
        return lend(made);
    }
    const lvb_antenna *pack() {
        lvb_antenna made{};
        made.size = some_size(bytes_, sizeof made);
        made.azimuth_deg = bytes_.between(-360.0, 360.0);
        made.tilt_deg = bytes_.between(-90.0, 90.0);
        made.roll_deg = bytes_.once_in(4) ? bytes_.any_number() : bytes_.between(-360.0, 360.0);
        if (bytes_.once_in(32)) made.z_m = bytes_.any_number();
        if (bytes_.once_in(2)) made.pattern = lenders_.patterns.pattern(bytes_);
        polarize(made, true);
        return lend(made);
    }
    void polarize(lvb_antenna &made, bool likely) {
        const std::uint32_t seldom = likely ? 3 : 64;
        if (bytes_.once_in(seldom)) made.polarization_deg = bytes_.number(-360.0, 360.0);
        if (bytes_.once_in(seldom)) made.ellipticity = bytes_.number(-1.0, 1.0);
    }
    const lvb_link *link() {
        Memory &stages = keep(Memory(6 * sizeof(lvb_stage)));
        const std::int32_t kinds[] = {LVB_KIND_SOURCE,    LVB_KIND_ANTENNA, LVB_KIND_AIR,
                                      LVB_KIND_ALLOWANCE, LVB_KIND_ANTENNA, LVB_KIND_RECEIVER};
        for (std::size_t i = 0; i < 6; ++i) {
            lvb_stage stage{};
            stage.kind = kinds[i];
            if (stage.kind == LVB_KIND_SOURCE) stage.level_dbm = bytes_.between(-200.0, 150.0);
            if (stage.kind == LVB_KIND_ALLOWANCE)
                stage.gain_db = bytes_.once_in(2) ? -20.0 : bytes_.between(-200.0, 0.0);
            if (stage.kind == LVB_KIND_ANTENNA) stage.gain_db = bytes_.between(-60.0, 60.0);
            if (stage.kind == LVB_KIND_AIR && bytes_.once_in(4)) stage.path = lenders_.paths.make(bytes_);
            if (stage.kind == LVB_KIND_RECEIVER) {
                stage.stated = limits_;
                if ((limits_ & LVB_STATED_FLOOR) != 0) stage.floor_dbm = floor_;
                if ((limits_ & LVB_STATED_WANTED) != 0) stage.wanted_low_dbm = floor_ + 10.0;
                if ((limits_ & LVB_STATED_WANTED) != 0) stage.wanted_high_dbm = floor_ + 20.0;
                if ((limits_ & LVB_STATED_CEILING) != 0) stage.ceiling_dbm = floor_ + 30.0;
            }
            if (bytes_.once_in(64)) fuzz::spoil(bytes_, stage, lenders_);
            stages.put(stage, i * sizeof stage);
        }
        lvb_link made{};
        made.size = some_size(bytes_, sizeof made);
        made.stages = stages.as<const lvb_stage>();
        made.stage_count = bytes_.once_in(32) ? bytes_.below(7) : 6;
        made.stage_size = sizeof(lvb_stage);
        made.frequency_mhz = bytes_.once_in(32) ? bytes_.any_number() : 600.0;
        made.far_distance_m = bytes_.any_number(); // not used
        return lend(made);
    }
    lvb_area area() {
        lvb_area made{};
        made.corner_count = bytes_.once_in(16) ? bytes_.below(3) : 3 + bytes_.below(5);
        Memory &x = keep(Memory(8 * sizeof(double))), &y = keep(Memory(8 * sizeof(double)));
        for (std::size_t i = 0; i < 8; ++i) {
            const double step = bytes_.once_in(2) ? 1.0 : 0.37; // corners on the grid, and off it
            x.put(bytes_.once_in(64) ? bytes_.any_number() : step * (bytes_.below(30) - 10.0), i * sizeof(double));
            y.put(bytes_.once_in(64) ? bytes_.any_number() : step * (bytes_.below(30) - 10.0), i * sizeof(double));
        }
        made.x_m = bytes_.once_in(64) ? nullptr : x.as<const double>();
        made.y_m = bytes_.once_in(64) ? nullptr : y.as<const double>();
        return made;
    }
    lvb_screen screen() {
        lvb_screen made{};
        made.x1_m = place(15.0);
        made.y1_m = place(15.0);
        made.x2_m = place(15.0);
        made.y2_m = place(15.0);
        made.bottom_m = bytes_.once_in(2) ? 0.0 : bytes_.number(-1.0, 2.0);
        made.top_m = bytes_.once_in(16) ? bytes_.any_number() : bytes_.between(2.0, 5.0);
        made.loss_db = bytes_.once_in(2) ? 0.0 : bytes_.number(0.001, 200.0);
        return made;
    }
    void face(lvb_site &made) {
        if (!polarizes_ || bytes_.once_in(2)) made.body_table = lenders_.patterns.body(bytes_);
        made.facing = static_cast<std::int32_t>(bytes_.below(4));
        if (made.facing == LVB_FACING_AZIMUTH) made.facing_azimuth_deg = bytes_.number(-360.0, 360.0);
        if (made.facing == LVB_FACING_POINT) made.facing_x_m = bytes_.number(-10.0, 10.0);
        if (made.facing >= LVB_FACING_ANTENNA) made.facing_antenna = bytes_.below(8) % 5 == 4 ? bytes_.below(3) : 0;
    }
    void spoil(lvb_site &made) {
        switch (bytes_.below(8)) {
        case 0:
            made.direction = bytes_.raw<std::int32_t>();
            break;
        case 1:
            made.combine = bytes_.raw<std::int32_t>();
            break;
        case 2:
            made.facing = bytes_.raw<std::int32_t>();
            break;
        case 3:
            made.reserved = bytes_.raw<std::uint32_t>();
            break;
        case 4: // counts without memory behind them are only given where they must be refused
            made.antenna_count = LVB_MAX_SITE_ANTENNAS + 1 + bytes_.raw<std::uint16_t>();
            break;
        case 5:
            made.area_count = bytes_.once_in(4) ? 0 : LVB_MAX_AREAS + 1 + bytes_.raw<std::uint16_t>();
            break;
        case 6:
            made.antennas = nullptr;
            break;
        default:
            made.facing_y_m = bytes_.any_number();
            break;
        }
    }

    Bytes &bytes_;
    fuzz::Lenders lenders_;
    std::deque<Memory> kept_;
    double floor_;
    std::uint32_t limits_;
    bool polarizes_; ///< the site has a pack's antenna
};

std::int32_t some_instructions(Bytes &bytes) {
    const auto set = static_cast<std::int32_t>(bytes.below(4));
    return set > (lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED) ? 0 : set;
}

struct Results {
    Memory level, margin, headroom, outage, zone, serving;
    explicit Results(std::size_t values)
        : level(values * 8), margin(values * 8), headroom(values * 8), outage(values * 8), zone(values * 4),
          serving(values * 4) {}
    template <class Struct>
    void lend(Struct &made) {
        made.level_dbm = level.as<double>();
        made.margin_db = margin.as<double>();
        made.headroom_db = headroom.as<double>();
        made.zone = zone.as<std::int32_t>();
        made.serving = serving.as<std::int32_t>();
    }
    std::vector<unsigned char> copy() const {
        std::vector<unsigned char> all;
        for (const Memory *each : {&level, &margin, &headroom, &zone, &serving}) {
            const std::vector<unsigned char> bytes = each->copy();
            all.insert(all.end(), bytes.begin(), bytes.end());
        }
        return all;
    }
};

void compute_map(Bytes &bytes) {
    fuzz::Fault fault(bytes); // before the bytes may be used up
    const std::uint32_t size = some_size(bytes, sizeof(lvb_map_summary));
    Sites sites(bytes);
    lvb_map map{};
    map.size = some_size(bytes, sizeof map);
    map.instructions = some_instructions(bytes);
    map.column_count = bytes.once_in(8) ? 120 + bytes.below(20) : bytes.below(12);
    map.row_count = bytes.below(5);
    map.first_row = bytes.once_in(8) ? bytes.raw<std::uint32_t>() : bytes.below(4);
    map.x_m = bytes.once_in(16) ? bytes.any_number() : -10.0;
    map.y_m = bytes.once_in(16) ? bytes.any_number() : -9.0;
    map.step_x_m = bytes.once_in(16) ? bytes.any_number() : bytes.once_in(2) ? 1.0 : 0.37;
    map.step_y_m = bytes.once_in(16) ? bytes.any_number() : 1.0;
    const std::size_t values = map.column_count * map.row_count;
    Results results(values);
    results.lend(map);
    if (bytes.once_in(3)) {
        map.outage = results.outage.as<double>();
        map.fading = static_cast<std::int32_t>(bytes.below(7));
        if (map.fading > LVB_FADING_RAYLEIGH) map.fading_parameter = bytes.number(0.5, 30.0);
    }
    const lvb_site site = sites.site(bytes.once_in(16) ? 0 : 1 + bytes.below(3));
    map.site = bytes.once_in(64) ? nullptr : sites.lend(site);
    if (bytes.once_in(32)) map.reserved = bytes.raw<std::uint32_t>();
    if (bytes.once_in(32)) map.column_count = std::uint64_t{LVB_MAX_VALUES} + 1 + bytes.raw<std::uint32_t>();
    if (bytes.once_in(32) && values > 0) map.headroom_db = map.level_dbm + bytes.below(2) * (values - 1);

    Memory summary = fuzz::result<lvb_map_summary>(size);
    const bool give = !bytes.once_in(4);
    const std::vector<unsigned char> before = results.copy(), summary_before = summary.copy();
    const lvb_status status = lvb_compute_map(bytes.once_in(64) ? nullptr : sites.lend(map),
                                              give ? summary.as<lvb_map_summary>() : nullptr, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(results.copy() == before && summary.copy() == summary_before);
        return;
    }
    std::uint64_t counted = 0, zones[6] = {};
    for (std::size_t k = 0; k < values; ++k) {
        const auto level = results.level.get<double>(k * 8);
        const auto zone = results.zone.get<std::int32_t>(k * 4), serving = results.serving.get<std::int32_t>(k * 4);
        REQUIRE(zone >= LVB_ZONE_NOT_JUDGED && zone <= LVB_ZONE_OVERLOAD && !(level > 1e5));
        REQUIRE(serving >= -1 && serving < LVB_MAX_SITE_ANTENNAS && (serving == -1) == !(level > nothing));
        if (fuzz::is_nan(level)) {
            REQUIRE(zone == LVB_ZONE_NOT_JUDGED && fuzz::is_nan(results.margin.get<double>(k * 8)));
            continue;
        }
        ++counted;
        ++zones[zone];
        if (map.outage == nullptr) continue;
        const auto outage = results.outage.get<double>(k * 8);
        REQUIRE(outage >= 0.0 && outage <= 1.0);
    }
    if (give) {
        const auto told = summary.get<lvb_map_summary>();
        REQUIRE(told.size == size && summary.is_zero_from(sizeof told));
        REQUIRE(told.points == counted && told.points + told.outside + told.unmodelled == values);
        REQUIRE(told.not_judged == zones[0] && told.dropout == zones[1] && told.low == zones[2]);
        REQUIRE(told.wanted == zones[3] && told.high == zones[4] && told.overload == zones[5]);
        if (counted > 0) {
            const std::size_t at = (told.worst_row - map.first_row) * map.column_count + told.worst_column;
            REQUIRE(results.level.get<double>(at * 8) == told.worst_level_dbm);
        }
    }
    // one row alone, on the instruction set that every processor has
    if (values == 0 || map.size != sizeof map) return;
    Results alone(map.column_count);
    lvb_map row = map;
    const std::uint64_t r = bytes.below(static_cast<std::uint32_t>(map.row_count));
    row.instructions = LVB_INSTRUCTIONS_BASELINE;
    row.first_row += r;
    row.row_count = 1;
    alone.lend(row);
    if (row.outage != nullptr) row.outage = alone.outage.as<double>();
    REQUIRE(lvb_compute_map(&row, nullptr, nullptr) == LVB_OK);
    const std::size_t from = r * map.column_count * 8, length = map.column_count * 8;
    REQUIRE(std::memcmp(alone.level.copy().data(), results.level.copy().data() + from, length) == 0);
    REQUIRE(std::memcmp(alone.headroom.copy().data(), results.headroom.copy().data() + from, length) == 0);
}

void compute_walk(Bytes &bytes) {
    fuzz::Fault fault(bytes), counting(bytes); // before the bytes may be used up
    const std::uint32_t size = some_size(bytes, sizeof(lvb_walk_result));
    Sites sites(bytes);
    const std::uint32_t corners = bytes.once_in(16) ? bytes.below(2) : 2 + bytes.below(4);
    Memory x(corners * 8), y(corners * 8), z(corners * 8);
    for (std::uint32_t i = 0; i < corners; ++i) {
        x.put(bytes.once_in(32) ? bytes.any_number() : bytes.between(-20.0, 20.0), i * 8);
        y.put(bytes.once_in(32) ? bytes.any_number() : bytes.between(-20.0, 20.0), i * 8);
        z.put(bytes.once_in(32) ? bytes.any_number() : bytes.between(0.5, 3.0), i * 8);
    }
    lvb_walk walk{};
    walk.size = some_size(bytes, sizeof walk);
    walk.instructions = some_instructions(bytes);
    walk.corner_count = corners;
    walk.x_m = bytes.once_in(64) ? nullptr : x.as<const double>();
    walk.y_m = bytes.once_in(64) ? nullptr : y.as<const double>();
    walk.z_m = bytes.once_in(2) ? nullptr : z.as<const double>();
    walk.speed_m_per_s = bytes.once_in(16) ? bytes.any_number() : 1.4;
    walk.step_m = bytes.once_in(16) ? bytes.number(1.0, 1e6) : bytes.between(0.2, 3.0);
    const bool fades = bytes.once_in(2);
    if (fades) walk.fading = static_cast<std::int32_t>(bytes.below(7));
    if (walk.fading > LVB_FADING_RAYLEIGH) walk.fading_parameter = bytes.number(0.5, 30.0);
    const lvb_site site = sites.site(1 + bytes.below(2));
    walk.site = bytes.once_in(64) ? nullptr : sites.lend(site);

    std::uint64_t points = 0;
    const lvb_status counted = lvb_walk_point_count(sites.lend(walk), &points, counting.pointer());
    counting.require(counted);
    REQUIRE((counted == LVB_OK) == (points >= 2));
    if (counted != LVB_OK || points > 100000) return; // as many as there is memory for
    Results results(points);
    results.lend(walk);
    Memory distance(points * 8);
    walk.distance_m = distance.as<double>();
    if (fades && !bytes.once_in(4)) walk.outage = results.outage.as<double>();
    Memory result = fuzz::result<lvb_walk_result>(size);
    const std::vector<unsigned char> before = results.copy(), result_before = result.copy();
    const lvb_status status = lvb_compute_walk(sites.lend(walk), result.as<lvb_walk_result>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(results.copy() == before && result.copy() == result_before);
        return;
    }
    const auto told = result.get<lvb_walk_result>();
    REQUIRE(told.points == points && told.size == size && result.is_zero_from(sizeof told));
    REQUIRE(told.length_m > 0.0 && distance.get<double>((points - 1) * 8) == told.length_m);
    const double all_s = told.duration_s * (1.0 + 1e-9);
    REQUIRE(told.under_floor_s >= told.longest_under_floor_s && told.longest_under_floor_s >= 0.0);
    REQUIRE(told.over_ceiling_s >= told.longest_over_ceiling_s && told.longest_over_ceiling_s >= 0.0);
    REQUIRE(told.under_floor_s <= all_s && told.over_ceiling_s <= all_s);
    REQUIRE((walk.fading == LVB_FADING_NONE) == fuzz::is_nan(told.expected_under_floor_s));
    REQUIRE(!(told.expected_under_floor_s < 0.0) && !(told.expected_under_floor_s > all_s));
    REQUIRE(!(told.mean_outage < 0.0) && !(told.mean_outage > 1.0 + 1e-9));
    REQUIRE(fuzz::is_nan(told.longest_under_floor_m) == (told.longest_under_floor_s == 0.0));
    REQUIRE(!(told.worst_level_dbm > 1e5) && !(told.hottest_level_dbm < told.worst_level_dbm - 1e5));
}

void compute_placements(Bytes &bytes) {
    fuzz::Fault fault(bytes), telling(bytes); // before the bytes may be used up
    Sites sites(bytes);
    lvb_place place{};
    place.size = some_size(bytes, sizeof place);
    place.instructions = some_instructions(bytes);
    place.place_count = 1 + bytes.below(2);
    place.candidate_count = bytes.once_in(16) ? bytes.below(3) : 2 + bytes.below(4);
    place.candidate_size = sizeof(lvb_site_antenna);
    Memory candidates = sites.antennas(place.candidate_count);
    place.candidates = bytes.once_in(64) ? nullptr : candidates.as<const lvb_site_antenna>();
    place.column_count = bytes.once_in(16) ? 0 : 1 + bytes.below(15);
    place.row_count = 1 + bytes.below(10);
    place.x_m = -8.0;
    place.y_m = bytes.once_in(16) ? bytes.any_number() : -8.0;
    place.step_x_m = place.step_y_m = bytes.once_in(16) ? bytes.any_number() : 1.0;
    place.least_headroom_db = bytes.number(0.0, 100.0);
    const lvb_site site = sites.site(bytes.below(2));
    place.site = bytes.once_in(64) ? nullptr : sites.lend(site);
    std::uint64_t room = 0;
    const lvb_status told = lvb_place_scratch_count(sites.lend(place), &room, telling.pointer());
    telling.require(told);
    REQUIRE((told == LVB_OK) == (room > 0));
    if (told != LVB_OK) return;
    Memory scratch(room * sizeof(double));
    place.scratch = scratch.as<double>();
    place.scratch_count = bytes.once_in(32) && room > 0 ? room - 1 : room;

    const std::uint32_t wanted = bytes.once_in(16) ? bytes.below(2) : 1 + bytes.below(5);
    Memory placements(wanted * sizeof(lvb_placement));
    const std::vector<unsigned char> before = placements.copy();
    std::uint32_t found = 77;
    const lvb_status status =
        lvb_compute_placements(sites.lend(place), placements.as<lvb_placement>(), sizeof(lvb_placement), wanted,
                               bytes.once_in(64) ? nullptr : &found, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(placements.copy() == before && found == 77);
        return;
    }
    REQUIRE(found <= wanted);
    for (std::uint32_t i = 0; i < found; ++i) {
        const auto one = placements.get<lvb_placement>(i * sizeof(lvb_placement));
        REQUIRE(one.first >= 0 && one.first < static_cast<std::int32_t>(place.candidate_count));
        REQUIRE(place.place_count == 1 ? one.second == -1 : one.second > one.first);
        REQUIRE(!fuzz::is_nan(one.worst_level_dbm) && !(one.hottest_headroom_db < place.least_headroom_db));
        if (i == 0) continue;
        const auto better = placements.get<lvb_placement>((i - 1) * sizeof(lvb_placement));
        REQUIRE(better.worst_level_dbm >= one.worst_level_dbm - 1e-9);
    }
}

/// A summary as a map gives it, whose every member may be spoilt.
lvb_map_summary some_summary(Bytes &bytes) {
    lvb_map_summary made{};
    made.size = some_size(bytes, sizeof made);
    if (made.size > sizeof made) made.size = sizeof made;
    if (bytes.once_in(8)) return made; // of no rows
    for (const auto zone : {&lvb_map_summary::not_judged, &lvb_map_summary::dropout, &lvb_map_summary::low,
                            &lvb_map_summary::wanted, &lvb_map_summary::high, &lvb_map_summary::overload}) {
        made.*zone = bytes.below(4);
        if (bytes.once_in(64)) made.*zone = bytes.raw<std::uint64_t>();
        made.points += made.*zone;
    }
    if (bytes.once_in(32)) made.points = bytes.raw<std::uint64_t>();
    made.outside = bytes.once_in(32) ? bytes.raw<std::uint64_t>() : bytes.byte();
    made.unmodelled = bytes.once_in(32) ? bytes.raw<std::uint64_t>() : bytes.byte();
    if (made.points != 0) made.overloaded = bytes.once_in(32) ? bytes.raw<std::uint64_t>() : bytes.below(2);
    made.worst_row = bytes.below(3);
    made.worst_column = bytes.below(3);
    made.hottest_row = bytes.below(3);
    made.hottest_column = bytes.below(3);
    made.worst_serving = bytes.once_in(32) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(33)) - 1;
    made.hottest_serving =
        bytes.once_in(32) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(bytes.below(33)) - 1;
    for (const auto number : {&lvb_map_summary::worst_level_dbm, &lvb_map_summary::worst_margin_db,
                              &lvb_map_summary::hottest_level_dbm, &lvb_map_summary::hottest_headroom_db})
        made.*number = bytes.once_in(16) ? bytes.any_number() : -10.0 * bytes.below(3); // equal ones too
    if (bytes.once_in(64)) made.reserved = bytes.byte();
    return made;
}

// In either order two summaries come to the same, or are refused. At one point a map has one level only, so of equal
// levels at equal points there is no order.
void join_summaries(Bytes &bytes) {
    lvb_map_summary parts[2] = {some_summary(bytes), some_summary(bytes)};
    fuzz::Fault joining(bytes);
    lvb_map_summary told = parts[0];
    joining.require(lvb_join_map_summaries(&told, &parts[1], joining.pointer()));
    lvb_map_summary joined[2] = {parts[0], parts[1]};
    const lvb_status statuses[2] = {lvb_join_map_summaries(&joined[0], &parts[1], nullptr),
                                    lvb_join_map_summaries(&joined[1], &parts[0], nullptr)};
    REQUIRE((statuses[0] == LVB_OK) == (statuses[1] == LVB_OK));
    if (statuses[0] != LVB_OK) {
        for (int i = 0; i < 2; ++i) REQUIRE(std::memcmp(&joined[i], &parts[i], sizeof joined[i]) == 0);
        return;
    }
    const lvb_map_summary &a = joined[0], &b = joined[1];
    REQUIRE(a.points == parts[0].points + parts[1].points && a.points == b.points);
    REQUIRE(a.points == a.not_judged + a.dropout + a.low + a.wanted + a.high + a.overload);
    REQUIRE(a.outside == b.outside && a.unmodelled == b.unmodelled && a.overloaded == b.overloaded);
    REQUIRE(a.overloaded <= a.points);
    if (a.points == 0) return;
    REQUIRE(a.worst_level_dbm == b.worst_level_dbm && a.hottest_level_dbm == b.hottest_level_dbm);
    REQUIRE(a.worst_row == b.worst_row && a.worst_column == b.worst_column);
    REQUIRE(a.hottest_row == b.hottest_row && a.hottest_column == b.hottest_column);
    for (const lvb_map_summary &part : parts)
        REQUIRE(part.points == 0 ||
                (!(part.worst_level_dbm < a.worst_level_dbm) && !(part.hottest_level_dbm > a.hottest_level_dbm)));
}

void do_the_rest(Bytes &bytes) {
    lvb_antenna antenna{};
    antenna.size = bytes.size_of(sizeof antenna);
    antenna.x_m = bytes.number(-1e6, 1e6);
    const std::uint32_t count = bytes.below(6);
    Memory lent = fuzz::result<lvb_antenna>(antenna.size), rail(count * sizeof(lvb_antenna));
    lent.put(antenna);
    lent.zero_from(sizeof antenna);
    const std::vector<unsigned char> before = rail.copy();
    fuzz::Fault fault(bytes);
    const double to_x_m = bytes.number(-1e6, 1e6), to_z_m = bytes.number(-10.0, 10.0);
    const lvb_status status = lvb_spread_on_rail(lent.as<const lvb_antenna>(), to_x_m, 0.0, to_z_m, count,
                                                 rail.as<lvb_antenna>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) REQUIRE(rail.copy() == before);
    else REQUIRE(rail.get<lvb_antenna>().x_m == antenna.x_m && count >= 2);

    join_summaries(bytes);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(8)) {
    case 0:
    case 1:
    case 2:
        compute_map(bytes);
        break;
    case 3:
    case 4:
        compute_walk(bytes);
        break;
    case 5:
    case 6:
        compute_placements(bytes);
        break;
    default:
        do_the_rest(bytes);
        break;
    }
    return 0;
}
