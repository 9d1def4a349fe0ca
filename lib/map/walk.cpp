#include "map/walk.hpp"

#include "math/elementary.hpp"

#include <cstring>

namespace lvb::map {
namespace {

double leg_m(const Walk &walk, std::size_t leg) noexcept {
    const double dx = walk.x[leg + 1] - walk.x[leg], dy = walk.y[leg + 1] - walk.y[leg];
    const double dz = walk.z == nullptr ? 0.0 : walk.z[leg + 1] - walk.z[leg];
    return math::sqrt((dx * dx + dy * dy) + dz * dz);
}

// Finds places in the order in which a walker comes to them.
class Walker {
  public:
    Walker(const Walk &walk, double height_m) noexcept : walk_(walk), height_(height_m), leg_m_(leg_m(walk, 0)) {}

    void put(double distance_m, Points &points, std::size_t i) noexcept {
        while (distance_m > begin_m_ + leg_m_ && leg_ + 2 < walk_.corners) {
            begin_m_ += leg_m_;
            leg_m_ = leg_m(walk_, ++leg_);
        }
        const double along = leg_m_ > 0.0 ? (distance_m - begin_m_) / leg_m_ : 0.0;
        const double share = along < 1.0 ? along : 1.0;
        points.x[i] = between(walk_.x, share);
        points.y[i] = between(walk_.y, share);
        points.z[i] = walk_.z == nullptr ? height_ : between(walk_.z, share);
    }

  private:
    double between(const double *corners, double share) const noexcept {
        return share == 1.0 ? corners[leg_ + 1] : corners[leg_] + share * (corners[leg_ + 1] - corners[leg_]);
    }

    const Walk &walk_;
    double height_, begin_m_ = 0.0, leg_m_;
    std::size_t leg_ = 0;
};

// Adds up the time below 0 of a room that runs straight from point to point.
class Below {
  public:
    explicit Below(double speed_m_per_s) noexcept : speed_(speed_m_per_s) {}

    void next(double at_m, double room) noexcept {
        if (has_before_) step(at_m, room);
        has_before_ = true;
        at_ = at_m;
        room_ = room;
    }
    Shortfall end() noexcept {
        close();
        return told_;
    }

  private:
    void step(double at_m, double room) noexcept {
        const double metres = at_m - at_;
        if (math::is_nan(room) || math::is_nan(room_)) return close();
        if (room_ < 0.0 && room < 0.0) return last(at_, metres);
        if (room_ < 0.0) {
            last(at_, share(room_, room) * metres);
            return close();
        }
        close();
        if (room < 0.0) last(at_m - share(room, room_) * metres, share(room, room_) * metres);
    }
    // The part of a step that lies below 0, from its lower end.
    static double share(double below, double above) noexcept {
        return below == -math::infinity ? 1.0 : below / (below - above);
    }
    void last(double from_m, double metres) noexcept {
        if (stretch_s_ == 0.0) from_ = from_m;
        stretch_s_ += metres / speed_;
        told_.total_s += metres / speed_;
    }
    void close() noexcept {
        if (stretch_s_ > told_.longest_s) {
            told_.longest_s = stretch_s_;
            told_.longest_at_m = from_;
        }
        stretch_s_ = 0.0;
    }

    double speed_, at_ = 0.0, room_ = 0.0, from_ = 0.0, stretch_s_ = 0.0;
    bool has_before_ = false;
    Shortfall told_;
};

// Adds up an outage over time, straight from point to point.
class Expected {
  public:
    explicit Expected(double speed_m_per_s) noexcept : speed_(speed_m_per_s) {}

    void next(double at_m, double outage) noexcept {
        if (!math::is_nan(outage) && !math::is_nan(outage_)) {
            const double seconds = (at_m - at_) / speed_;
            all_s_ += seconds;
            outage_s_ += 0.5 * (outage_ + outage) * seconds;
        }
        at_ = at_m;
        outage_ = outage;
    }
    double outage_s() const noexcept { return outage_s_; }
    double all_s() const noexcept { return all_s_; }

  private:
    double speed_, at_ = 0.0, outage_ = math::not_a_number, outage_s_ = 0.0, all_s_ = 0.0;
};

// Results of one piece of points, the first of which has the index `at`.
struct Found {
    std::uint64_t at;
    std::size_t length;
    double distance[piece], level[piece], own_near[piece], serving[piece], margin[piece], headroom[piece],
        outage[piece], mask[piece];
    std::int32_t fate[piece];
    Near near;
};

template <class Value>
void put(Value *to, const Found &found, const Value *values) noexcept {
    if (to != nullptr) std::memcpy(to + found.at, values, found.length * sizeof(Value));
}
void put_codes(const Site &site, const WalkOutputs &out, const Found &found) noexcept {
    std::int32_t codes[piece];
    site.row->zones(found.fate, codes);
    put(out.zone, found, codes);
    site.row->codes(found.serving, found.mask, -1.0, codes);
    put(out.serving, found, codes);
}

// Margin, headroom, outage and zone of the points whose distances are given.
void judge(const Site &site, const Fading &fading, const Points &points, Found &found) noexcept {
    const Heard heard{found.level, found.own_near, found.serving};
    hear(site, points, found.mask, heard);
    found.near = near_of(site, heard);
    site.row->judge(found.level, found.near, found.mask, limits_of(site.window), judges(site.window),
                    {found.margin, found.headroom, found.fate});
    for (std::size_t i = 0; i < piece; ++i) found.outage[i] = fading.at(found.margin[i]);
}

void enter(WalkSummary &summary, const Found &found, Below &under, Below &over, Expected &expected) noexcept {
    for (std::size_t i = 0; i < found.length; ++i) {
        const double at = found.distance[i], level = found.level[i], near = found.near.at(i);
        under.next(at, found.margin[i]);
        over.next(at, found.headroom[i]);
        expected.next(at, found.outage[i]);
        if (found.mask[i] != counted) {
            ++summary.unmodelled;
            continue;
        }
        const auto serving = static_cast<std::int32_t>(found.serving[i]);
        if (!(level >= summary.worst.level)) summary.worst = {level, found.margin[i], at, serving};
        if (!(near <= summary.hottest.level)) summary.hottest = {near, found.headroom[i], at, serving};
    }
}

std::int32_t strongest_near(const Site &site, const Walk &walk, double at_m) noexcept {
    Points points;
    Walker(walk, site.height_m).put(at_m, points, 0);
    return strongest_near(site, {points.x[0], points.y[0], points.z[0]});
}

} // namespace

double length_m(const Walk &walk) noexcept {
    double length = 0.0;
    for (std::size_t leg = 0; leg + 1 < walk.corners; ++leg) length += leg_m(walk, leg);
    return length;
}

double point_count(const Walk &walk, double length_m) noexcept {
    const double steps = length_m / walk.step_m;
    if (steps > 1e15) return steps;
    const auto whole = static_cast<double>(static_cast<std::uint64_t>(steps));
    return whole * walk.step_m < length_m ? whole + 2.0 : whole + 1.0;
}

WalkSummary follow(const Site &site, const Walk &walk, const Fading &fading, const WalkOutputs &out) noexcept {
    WalkSummary summary;
    summary.length_m = length_m(walk);
    summary.points = static_cast<std::uint64_t>(point_count(walk, summary.length_m));
    Walker walker(walk, site.height_m);
    Below under(walk.speed_m_per_s), over(walk.speed_m_per_s);
    Expected expected(walk.speed_m_per_s);
    Points points;
    Found found;
    for (found.at = 0; found.at < summary.points; found.at += piece) {
        const std::uint64_t left = summary.points - found.at;
        found.length = left < piece ? static_cast<std::size_t>(left) : piece;
        for (std::size_t i = 0; i < piece; ++i) {
            const std::uint64_t index = found.at + i;
            const bool is_last = index + 1 >= summary.points;
            found.distance[i] = is_last ? summary.length_m : static_cast<double>(index) * walk.step_m;
            found.mask[i] = i < found.length ? counted : beyond;
            walker.put(found.distance[i], points, i);
        }
        judge(site, fading, points, found);
        put(out.distance, found, found.distance);
        put(out.level, found, found.level);
        put(out.margin, found, found.margin);
        put(out.headroom, found, found.headroom);
        put(out.outage, found, found.outage);
        put_codes(site, out, found);
        enter(summary, found, under, over, expected);
    }
    summary.under_floor = under.end();
    summary.over_ceiling = over.end();
    summary.outage_s = fading.outage != nullptr ? expected.outage_s() : math::not_a_number;
    summary.judged_s = expected.all_s();
    if (!site.near_follows && summary.unmodelled < summary.points) // otherwise as by the far rule
        summary.hottest.serving = strongest_near(site, walk, summary.hottest.at_m);
    return summary;
}

} // namespace lvb::map
