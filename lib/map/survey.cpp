#include "map/survey.hpp"

#include <cstring>

namespace lvb::map {
namespace {

bool earlier(const Extreme &a, const Extreme &b) noexcept {
    return a.row < b.row || (a.row == b.row && a.column < b.column);
}

// A piece of a row.
struct Part {
    std::uint64_t row, column, at; ///< `at` counts from the first point of the call
    std::size_t length;
};

// Where results of one kind go: straight to the caller's array, where it is asked for and has room for a whole piece.
template <class Value>
class Results {
  public:
    // cppcheck-suppress uninitMemberVar ; a piece is written before it is kept
    explicit Results(Value *all) noexcept : all_(all) {}

    Value *at(const Part &part) noexcept { return asked() && part.length == piece ? all_ + part.at : own_; }
    /// After the piece is computed.
    void keep(const Part &part) const noexcept {
        if (asked() && part.length != piece) std::memcpy(all_ + part.at, own_, part.length * sizeof(Value));
    }
    bool asked() const noexcept { return all_ != nullptr; }

  private:
    alignas(64) Value own_[piece];
    Value *all_;
};

// The first point of a piece with a value.
Extreme find(const Part &part, const Near &values, double value, const double *serving) noexcept {
    std::size_t i = 0;
    while (values.at(i) != value) ++i;
    return {value, math::not_a_number, part.row, part.column + i, static_cast<std::int32_t>(serving[i])};
}

void enter(Summary &summary, const Part &part, const PieceTally &tally, const Heard &heard, const Near &near) noexcept {
    const auto with = [&](std::int32_t fate) { return static_cast<std::uint64_t>(tally.with_fate[fate]); };
    std::uint64_t here = 0;
    for (std::int32_t fate = 0; fate <= dropped_overloaded; ++fate) {
        summary.in_zone[zone_of(fate)] += with(fate);
        here += with(fate);
    }
    const bool first = summary.points == 0 && here != 0; // its level may be -infinity
    summary.points += here;
    summary.outside += with(is_outside);
    summary.unmodelled += with(is_unmodelled);
    summary.overloaded += with(overload) + with(dropped_overloaded);
    if (first || tally.lowest < summary.worst.level)
        summary.worst = find(part, {heard.level, 0.0}, tally.lowest, heard.serving);
    if (first || tally.hottest > summary.hottest.level)
        summary.hottest = find(part, near, tally.hottest, heard.serving);
}

class Surveyor {
  public:
    // cppcheck-suppress uninitMemberVar ; pieces are written before they are read
    Surveyor(const Site &site, const Fading &fading, const Outputs &out, Summary *told) noexcept
        : site_(site), fading_(fading), limits_(limits_of(site.window)), told_(told), level_(out.level),
          margin_(out.margin), headroom_(out.headroom), outage_(out.outage), zone_(out.zone), serving_(out.serving) {}

    void take(const Points &points, double *mask, const Part &part) noexcept {
        const bool tells = told_ != nullptr || zone_.asked();
        const bool judges = tells || margin_.asked() || outage_.asked() || headroom_.asked();
        const Heard heard{level_.at(part), judges ? near_ : nullptr,
                          told_ != nullptr || serving_.asked() ? strongest_ : nullptr};
        hear(site_, points, mask, heard);
        if (judges) judge(heard, mask, part);
        if (serving_.asked()) site_.row->codes(strongest_, mask, -1.0, serving_.at(part));
        level_.keep(part);
        margin_.keep(part);
        headroom_.keep(part);
        outage_.keep(part);
        zone_.keep(part);
        serving_.keep(part);
    }

  private:
    void judge(const Heard &heard, const double *mask, const Part &part) noexcept {
        const double *margin = margin_.at(part);
        const Near near = near_of(site_, heard);
        site_.row->judge(heard.level, near, mask, limits_, judges(site_.window),
                         {margin_.at(part), headroom_.at(part), fate_});
        if (outage_.asked()) take_outage(margin, outage_.at(part), part.length);
        if (zone_.asked()) site_.row->zones(fate_, zone_.at(part));
        if (told_ == nullptr) return;
        PieceTally tally;
        site_.row->tally(heard.level, near, fate_, tally);
        enter(*told_, part, tally, heard, near);
    }
    void take_outage(const double *margin, double *outage, std::size_t length) const noexcept {
        for (std::size_t i = 0; i < length; ++i) outage[i] = fading_.at(margin[i]);
    }

    const Site &site_;
    const Fading &fading_;
    const Limits limits_;
    Summary *told_;
    Results<double> level_, margin_, headroom_, outage_;
    Results<std::int32_t> zone_, serving_;
    alignas(64) double near_[piece], strongest_[piece];
    alignas(64) std::int32_t fate_[piece];
};

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
    Summary summary;
    Surveyor surveyor(site, fading, out, told != nullptr ? &summary : nullptr);
    Points points;
    alignas(64) double mask[piece];
    points.on_row = true;
    for (double &z : points.z) z = site.height_m;
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
            surveyor.take(points, mask, part);
        }
    }
    if (summary.points != 0) {
        const Limits limits = limits_of(site.window);
        summary.worst.room = summary.worst.level - limits.floor;
        summary.hottest.room = limits.ceiling - summary.hottest.level;
        const Extreme &hottest = summary.hottest;
        if (!site.near_follows) // otherwise the antenna that is strongest by the far rule
            summary.hottest.serving =
                strongest_near(site, {grid.x_at(hottest.column), grid.y_at(hottest.row), site.height_m});
    }
    if (told != nullptr) *told = summary;
}

} // namespace lvb::map
