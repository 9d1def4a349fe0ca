#include "map/survey.hpp"

#include <cstring>

namespace lvb::map {
namespace {

bool earlier(const Extreme &a, const Extreme &b) noexcept {
    return a.row < b.row || (a.row == b.row && a.column < b.column);
}

// A piece of a row: where its results go, if all are whole doubles of one array.
struct Part {
    std::uint64_t row, column, at; ///< `at` counts from the first point of the call
    std::size_t length;
};

void put(double *to, const Part &part, const double *values) noexcept {
    if (to != nullptr) std::memcpy(to + part.at, values, part.length * sizeof(double));
}
void put_codes(const Site &site, std::int32_t *to, const Part &part, const double *values, const double *mask,
               double otherwise) noexcept {
    if (to == nullptr) return;
    std::int32_t whole[piece];
    site.row->codes(values, mask, otherwise, whole);
    std::memcpy(to + part.at, whole, part.length * sizeof(std::int32_t));
}

// The first point of a piece with a value.
Extreme find(const Part &part, const double *values, double value, const double *serving) noexcept {
    std::size_t i = 0;
    while (values[i] != value) ++i;
    return {value, math::not_a_number, part.row, part.column + i, static_cast<std::int32_t>(serving[i])};
}

void enter(Summary &summary, const Part &part, const PieceTally &tally, const Heard &heard) noexcept {
    std::uint64_t here = 0;
    for (std::size_t z = 0; z < zones; ++z) {
        summary.in_zone[z] += static_cast<std::uint64_t>(tally.in_zone[z]);
        here += static_cast<std::uint64_t>(tally.in_zone[z]);
    }
    const bool first = summary.points == 0 && here != 0; // its level may be -infinity
    summary.points += here;
    summary.outside += static_cast<std::uint64_t>(tally.outside);
    summary.unmodelled += static_cast<std::uint64_t>(tally.unmodelled);
    summary.overloaded += static_cast<std::uint64_t>(tally.overloaded);
    if (first || tally.lowest < summary.worst.level)
        summary.worst = find(part, heard.level, tally.lowest, heard.serving);
    if (first || tally.hottest > summary.hottest.level)
        summary.hottest = find(part, heard.near, tally.hottest, heard.serving);
}

// Margins and what follows from them.
void judge(const Site &site, const Fading &fading, const Limits &limits, const Part &part, const Heard &heard,
           const Outputs &out) noexcept {
    double values[piece];
    if (out.margin != nullptr || out.outage != nullptr)
        site.row->add_scaled(heard.level, 1.0, math::is_nan(limits.floor) ? limits.floor : -limits.floor, values);
    put(out.margin, part, values);
    if (out.outage != nullptr)
        for (std::size_t i = 0; i < part.length; ++i) {
            const double margin = values[i];
            out.outage[part.at + i] =
                math::is_nan(margin) ? math::not_a_number : fading.outage(margin, fading.parameter);
        }
    if (out.headroom == nullptr) return;
    site.row->add_scaled(heard.near, -1.0, limits.ceiling, values);
    put(out.headroom, part, values);
}

} // namespace

void join(Summary &summary, const Summary &other) noexcept {
    const Extreme &worst = other.worst, &hottest = other.hottest;
    const bool worse =
        worst.level < summary.worst.level || (worst.level == summary.worst.level && earlier(worst, summary.worst));
    const bool hotter = hottest.level > summary.hottest.level ||
                        (hottest.level == summary.hottest.level && earlier(hottest, summary.hottest));
    if (other.points != 0 && (summary.points == 0 || worse)) summary.worst = worst;
    if (other.points != 0 && (summary.points == 0 || hotter)) summary.hottest = hottest;
    summary.points += other.points;
    summary.outside += other.outside;
    summary.unmodelled += other.unmodelled;
    summary.overloaded += other.overloaded;
    for (std::size_t z = 0; z < zones; ++z) summary.in_zone[z] += other.in_zone[z];
}

Limits limits_of(const chain::Window &window) noexcept {
    return {window.has_floor ? window.floor_dbm : math::not_a_number,
            window.has_wanted ? window.wanted_low_dbm : math::not_a_number,
            window.has_wanted ? window.wanted_high_dbm : math::not_a_number,
            window.has_ceiling ? window.ceiling_dbm : math::not_a_number};
}

bool judges(const chain::Window &window) noexcept {
    return window.has_floor || window.has_wanted || window.has_ceiling;
}

void survey(const Site &site, const Grid &grid, const Fading &fading, const Outputs &out, Summary *told) noexcept {
    const Limits limits = limits_of(site.window);
    const bool judged = judges(site.window), wants_serving = told != nullptr || out.serving != nullptr;
    Points points;
    Heard heard;
    alignas(64) double mask[piece], zone[piece];
    points.on_row = true;
    for (double &z : points.z) z = site.height_m;
    Summary summary;
    for (std::uint64_t r = 0; r < grid.rows; ++r) {
        const double y = grid.y_at(grid.first_row + r);
        for (double &each : points.y) each = y;
        for (std::uint64_t c = 0; c < grid.columns; c += piece) {
            const std::uint64_t left = grid.columns - c;
            const Part part{grid.first_row + r, c, r * grid.columns + c,
                            left < piece ? static_cast<std::size_t>(left) : piece};
            site.row->columns(static_cast<double>(c), grid.x, grid.step_x, points.x);
            mask_row(site, points.x, y, mask);
            for (std::size_t i = part.length; i < piece; ++i) mask[i] = beyond;
            hear(site, points, mask, wants_serving, heard);
            put(out.level, part, heard.level);
            judge(site, fading, limits, part, heard, out);
            if (told != nullptr || out.zone != nullptr)
                site.row->zones(heard.level, heard.near, mask, limits, judged, zone);
            put_codes(site, out.zone, part, zone, mask, 0.0);
            put_codes(site, out.serving, part, heard.serving, mask, -1.0);
            if (told == nullptr) continue;
            PieceTally tally;
            site.row->tally(heard.level, heard.near, mask, zone, limits.ceiling, tally);
            enter(summary, part, tally, heard);
        }
    }
    if (summary.points != 0) {
        summary.worst.room = summary.worst.level - limits.floor;
        summary.hottest.room = limits.ceiling - summary.hottest.level;
    }
    if (told != nullptr) *told = summary;
}

} // namespace lvb::map
