#include "decide/effects.hpp"

#include "math/elementary.hpp"

namespace lvb::decide {
namespace {

using chain::Kind;
using chain::Ledger;
using chain::Line;
using chain::Stage;

constexpr double largest_db = 1e6; // also for infinite levels: sums of a whole chain still fit
// The search lets pass what fails by less than the rounding of grains; the ledger then decides.
constexpr double slack_db = 2e-6;
constexpr double slack_noise = 1e-9;

std::int64_t grains(double db) noexcept {
    const double held = db > largest_db ? largest_db : db < -largest_db ? -largest_db : db;
    return static_cast<std::int64_t>(held * grains_per_db + (held < 0.0 ? -0.5 : 0.5));
}

Noise noise_of(const Stage &stage, double change_db) noexcept {
    switch (stage.kind) {
    case Kind::passive:
    case Kind::cable:
        return {math::power_of_db_m1(0.0 - change_db), math::power_of_db(change_db)};
    case Kind::amplifier:
        return {math::power_of_db_m1(stage.noise_figure_db), math::power_of_db(change_db)};
    case Kind::receiver: // its noise figure is that of its input
        return {math::power_of_db_m1(stage.noise_figure_db), 1.0};
    default:
        return {};
    }
}

// Walks a link's stages in order and tells where each stands.
class Walk {
  public:
    explicit Walk(const Problem &problem, const Link &link) noexcept
        : problem_(problem), link_(link), ledger_(link.conditions) {}

    bool next_is_slot() const noexcept {
        return slot_ < link_.slot_count && problem_.slots[link_.first_slot + slot_].stage == stage_;
    }
    /// The stage that stands there unless it is a slot.
    const Stage &fixed() const noexcept { return link_.stages[stage_]; }
    const Line &enter(const Stage &stage) noexcept {
        if (next_is_slot()) ++slot_;
        ++stage_;
        behind_air_ = behind_air_ || stage.kind == Kind::air;
        radiated_ = radiated_ || stage.kind == Kind::antenna;
        return ledger_.enter(stage);
    }
    bool ended() const noexcept { return stage_ == link_.stage_count; }
    std::uint32_t slot() const noexcept { return link_.first_slot + slot_; }
    bool behind_air() const noexcept { return behind_air_; }
    bool radiated() const noexcept { return radiated_; }
    const Ledger &ledger() const noexcept { return ledger_; }

  private:
    const Problem &problem_;
    const Link &link_;
    Ledger ledger_;
    std::uint32_t stage_ = 0, slot_ = 0;
    bool behind_air_ = false, radiated_ = false;
};

// One stage by itself.
Effect effect_of(const Link &link, const Stage &stage, bool radiated, bool behind_air) noexcept {
    Ledger alone(link.conditions);
    const Line &line = alone.enter(stage);
    const double low_db = line.far_end.change_db - (link.worst_levels ? line.far_end.worst_db : 0.0);
    const double high_db = line.near_end.change_db + (link.worst_levels ? line.near_end.worst_db : 0.0);
    Effect effect{grains(low_db), grains(high_db), 0, {}};
    if (!radiated) {
        // An antenna may radiate more in its best direction than towards the other one: the ledger's own sum tells.
        const chain::Result closed = alone.close();
        const bool antenna = stage.kind == Kind::antenna;
        const double power_db = antenna ? closed.eirp_dbm : line.near_end.change_db;
        const double worst_db = antenna ? closed.eirp_worst_db : line.near_end.worst_db;
        effect.radiated = grains(power_db + (link.worst_radiated ? worst_db : 0.0));
    }
    if (behind_air && (link.required & needs_noise) != 0) effect.noise = noise_of(stage, line.far_end.change_db);
    return effect;
}

const chain::Window *window_of(const Link &link) noexcept {
    const Stage &last = link.stages[link.stage_count - 1];
    return (link.required & (needs_floor | needs_ceiling)) != 0 ? &last.window : nullptr;
}

} // namespace

Frame find_effects(const Problem &problem, const Link &link, Effect *effects) noexcept {
    Frame frame{0, 0, 0, 0, 0.0};
    Noise before; // fixed stages before the first slot
    std::int64_t low = 0, high = 0, power = 0;
    const Slot *last = nullptr;
    for (Walk walk(problem, link); !walk.ended();) {
        if (!walk.next_is_slot()) {
            const Stage &stage = walk.fixed();
            const Effect effect = effect_of(link, stage, walk.radiated(), walk.behind_air());
            low += effect.low;
            high += effect.high;
            power += effect.radiated;
            if (last == nullptr) before = before + effect.noise;
            else
                for (std::uint32_t i = 0; i < last->count; ++i)
                    effects[last->first + i].noise = effects[last->first + i].noise + effect.noise;
            walk.enter(stage);
            continue;
        }
        last = &problem.slots[walk.slot()];
        if (!walk.radiated()) ++frame.radiated_slots;
        for (std::uint32_t i = 0; i < last->count; ++i) {
            const Item &item = problem.items[problem.candidates[last->first + i]];
            effects[last->first + i] = effect_of(link, item.stage, walk.radiated(), walk.behind_air());
        }
        walk.enter(problem.items[problem.candidates[last->first]].stage);
    }
    const std::int64_t slack = grains(slack_db);
    if (const chain::Window *window = window_of(link)) {
        frame.low_needed = grains(window->floor_dbm + link.margin_db) - slack - low;
        frame.high_allowed = grains(window->ceiling_dbm - link.headroom_db) + slack - high;
    }
    frame.radiated_allowed = grains(link.radiated_limit_dbm) + slack - power;
    const double limit = math::power_of_db_m1(link.noise_limit_db);
    frame.noise_allowed = ((limit + (limit + 1.0) * slack_noise) - before.excess) * before.gain;
    return frame;
}

Shortfall shortfall_of(const Problem &problem, const Link &link, const std::uint32_t *chosen) noexcept {
    Noise so_far;
    Walk walk(problem, link);
    while (!walk.ended()) {
        const bool slot = walk.next_is_slot();
        const Stage &stage =
            slot ? problem.items[problem.candidates[chosen[walk.slot() - link.first_slot]]].stage : walk.fixed();
        const bool receiving = walk.behind_air();
        const Line &line = walk.enter(stage);
        if (receiving && (link.required & needs_noise) != 0) so_far = so_far + noise_of(stage, line.far_end.change_db);
    }
    const chain::Result result = walk.ledger().close();
    const double far_worst = link.worst_levels ? result.far_end.worst_db : 0.0;
    const double near_worst = link.worst_levels ? result.near_end.worst_db : 0.0;
    const double power_worst = link.worst_radiated ? result.eirp_worst_db : 0.0;
    return {{link.margin_db - (result.far_end.margin_db - far_worst),
             link.headroom_db - (result.near_end.headroom_db - near_worst),
             (result.eirp_dbm + power_worst) - link.radiated_limit_dbm,
             math::ten_log10_1p(so_far.excess) - link.noise_limit_db}};
}

} // namespace lvb::decide
