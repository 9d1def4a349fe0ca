#include "chain/ledger.hpp"

#include "math/elementary.hpp"
#include "path/free_space.hpp"
#include "units/length.hpp"

namespace lvb::chain {
namespace {

// What a stage does to a tally once its sum has taken the change.
void enter_summed(Tally &tally, double change_db, double tolerance_db) noexcept {
    tally.change_db = change_db;
    tally.level_dbm = tally.sum.level();
    tally.worst_db += tolerance_db;
    tally.squares_db2 += tolerance_db * tolerance_db;
}

void enter_change(Tally &tally, double change_db, double tolerance_db) noexcept {
    tally.sum.add(change_db);
    enter_summed(tally, change_db, tolerance_db);
}

void enter_air(Tally &tally, double gain_db, double loss_db, double tolerance_db) noexcept {
    tally.sum.cross_air(gain_db, loss_db);
    enter_summed(tally, gain_db - loss_db, tolerance_db);
}

bool is_guess(Basis basis) noexcept { return basis == Basis::not_looked_up || basis == Basis::estimate; }

double middle_dbm(const Window &window) noexcept {
    if (window.has_wanted) return (window.wanted_low_dbm + window.wanted_high_dbm) / 2.0;
    if (window.has_floor && window.has_ceiling) return (window.floor_dbm + window.ceiling_dbm) / 2.0;
    return math::not_a_number;
}

End judge(const Window &window, const Tally &tally, double distance_m) noexcept {
    const double level = tally.level_dbm;
    return {distance_m,
            level,
            tally.worst_db,
            tally.rss_db(),
            window.has_floor ? level - window.floor_dbm : math::not_a_number,
            window.has_ceiling ? window.ceiling_dbm - level : math::not_a_number,
            level - middle_dbm(window),
            zone_of(window, level),
            zone_of(window, level - tally.worst_db),
            zone_of(window, level + tally.worst_db)};
}

} // namespace

Verdict verdict_of(const Window &window, const End &far_end, const End &near_end) noexcept {
    if (!window.has_floor && !window.has_ceiling) return Verdict::not_judged;
    const bool drops = window.has_floor && far_end.margin_db < 0.0;
    const bool overloads = window.has_ceiling && near_end.headroom_db < 0.0;
    if (drops && overloads) return Verdict::drops_out_and_overloads;
    if (drops) return Verdict::drops_out;
    if (overloads) return Verdict::overloads;
    // An allowance may be smaller than its tolerance, so the far end too can reach the ceiling.
    const bool may_drop = window.has_floor && far_end.margin_db < far_end.worst_db;
    const bool may_overload =
        window.has_ceiling && (near_end.headroom_db < near_end.worst_db || far_end.headroom_db < far_end.worst_db);
    return may_drop || may_overload ? Verdict::doubtful : Verdict::holds;
}

Decided decided_of(const Window &window, double margin_db, double headroom_db) noexcept {
    if (window.has_ceiling && !(margin_db <= headroom_db)) return {Decision::near_ceiling, headroom_db};
    if (window.has_floor) return {Decision::far_floor, margin_db};
    return {Decision::nothing, math::not_a_number};
}

double Tally::rss_db() const noexcept { return math::sqrt(squares_db2); }

Zone zone_of(const Window &window, double level_dbm) noexcept {
    if (!window.has_floor && !window.has_wanted && !window.has_ceiling) return Zone::not_judged;
    if (window.has_floor && level_dbm < window.floor_dbm) return Zone::dropout;
    if (window.has_ceiling && level_dbm > window.ceiling_dbm) return Zone::overload;
    if (window.has_wanted && level_dbm < window.wanted_low_dbm) return Zone::low;
    if (window.has_wanted && level_dbm > window.wanted_high_dbm) return Zone::high;
    return Zone::wanted;
}

Ledger::Ledger(const Conditions &conditions) noexcept
    : conditions_(conditions), line_{Reference::conducted, Basis::not_looked_up, {}, {}, {}},
      eirp_dbm_(math::not_a_number), eirp_worst_db_(math::not_a_number),
      path_standard_deviation_db_(math::not_a_number) {}

Change own_change(const Stage &stage, double frequency_mhz, double temperature_degc) noexcept {
    if (stage.has_pattern)
        return {antenna::gain_dbi(stage.pattern, stage.far_direction),
                antenna::gain_dbi(stage.pattern, stage.near_direction), stage.pattern.extrapolated};
    double db = stage.gain_table.rows > 0 ? gain_db_at(stage.gain_table, frequency_mhz) : stage.gain_db;
    bool extrapolated = false;
    if (stage.kind == Kind::source) db += stage.level_dbm;
    if (stage.has_cable) {
        const cable::Loss loss = cable::loss(stage.cable, frequency_mhz, temperature_degc);
        db -= loss.cable_db + loss.connectors_db;
        extrapolated = loss.attenuation.extrapolated;
    }
    if (stage.has_body) db -= body::loss_db(stage.body, stage.facing_deg);
    return {db, stage.kind == Kind::allowance ? 0.0 : db, extrapolated};
}

bool is_flat(const Stage &stage) noexcept { return stage.gain_table.rows == 0 && !stage.has_cable; }

void Ledger::cross_air(const Stage &stage, double gain_db) noexcept {
    const double frequency = conditions_.frequency_mhz, near = conditions_.near_distance_m;
    const auto loss = [&](double distance_m) noexcept {
        return stage.has_path ? path::loss_db(stage.path, frequency, distance_m)
                              : path::free_space_loss_db(frequency, distance_m);
    };
    enter_air(line_.far_end, gain_db, loss(conditions_.far_distance_m), stage.tolerance_db);
    enter_air(line_.near_end, gain_db, loss(near), stage.tolerance_db);
    line_.notes.near_field =
        stage.has_path ? path::is_near_field(stage.path, frequency, near) : units::is_near_field(frequency, near);
    line_.notes.near_not_given = !conditions_.near_is_given;
    line_.reference = Reference::isotropic;
    has_air_ = true;
    if (!stage.has_path) return;
    path_standard_deviation_db_ = path::standard_deviation_db(stage.path);
    if (path::is_fed_by_cable(stage.path)) eirp_dbm_ = eirp_worst_db_ = math::not_a_number;
}

const Line &Ledger::enter(const Stage &stage) noexcept {
    const double frequency = conditions_.frequency_mhz;
    const Change change = own_change(stage, frequency, conditions_.temperature_degc);
    line_.basis = stage.basis;
    line_.notes = {change.extrapolated, false, false,
                   stage.has_pattern && (change.far_db == -math::infinity || change.near_db == -math::infinity)};

    const double tolerance = stage.tolerance_db;
    const bool far_only = stage.kind == Kind::allowance;
    if (stage.kind == Kind::antenna && !has_air_) {
        // The licence counts the direction of maximum radiation, wherever the other antenna stands.
        Sum eirp = line_.near_end.sum;
        eirp.add(stage.has_pattern ? antenna::maximum_dbi(stage.pattern) : change.near_db);
        eirp_dbm_ = eirp.level();
        eirp_worst_db_ = line_.near_end.worst_db + tolerance;
    }
    if (stage.kind == Kind::air) {
        cross_air(stage, change.near_db); // air changes both ends alike but for the way
    } else {
        enter_change(line_.far_end, change.far_db, tolerance);
        enter_change(line_.near_end, change.near_db, far_only ? 0.0 : tolerance);
    }
    if (stage.kind == Kind::receiver) window_ = stage.window;
    if (stage.kind == Kind::antenna) line_.reference = has_air_ ? Reference::conducted : Reference::eirp;

    notes_.add(line_.notes);
    count(stage);
    return line_;
}

void Ledger::count(const Stage &stage) noexcept {
    ++entries_.by_basis[static_cast<std::size_t>(stage.basis)];
    if (!is_guess(stage.basis)) return;
    entries_.guess_worst_db += stage.tolerance_db;
    if (stage.tolerance_db == 0.0) ++entries_.guesses_without_tolerance;
}

Result Ledger::close() const noexcept {
    Result result{};
    result.reference = line_.reference;
    result.notes = notes_;
    result.entries = entries_;
    result.eirp_dbm = eirp_dbm_;
    result.eirp_worst_db = eirp_worst_db_;
    result.path_standard_deviation_db = path_standard_deviation_db_;
    result.far_end = judge(window_, line_.far_end, has_air_ ? conditions_.far_distance_m : 0.0);
    result.near_end = judge(window_, line_.near_end, has_air_ ? conditions_.near_distance_m : 0.0);
    result.verdict = verdict_of(window_, result.far_end, result.near_end);

    const Decided decided = decided_of(window_, result.far_end.margin_db, result.near_end.headroom_db);
    result.decided_by = decided.by;
    result.decided_by_db = decided.room_db;
    return result;
}

} // namespace lvb::chain
