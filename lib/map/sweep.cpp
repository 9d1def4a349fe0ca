#include "map/sweep.hpp"

#include "path/free_space.hpp"
#include "units/length.hpp"

namespace lvb::map {

using chain::Kind;

void Row::enter(const chain::Stage &stage) noexcept {
    const chain::Change change = chain::own_change(stage, frequency_mhz_, temperature_degc_);
    chain::Notes notes;
    notes.extrapolated = change.extrapolated;
    notes.null = change.far_db == -math::infinity || change.near_db == -math::infinity;
    notes_.add(notes);
    if (stage.kind == Kind::receiver) window_ = stage.window;
    if (stage.kind == Kind::antenna && !has_air_) {
        chain::Sum eirp = near_.sum;
        eirp.add(stage.has_pattern ? antenna::maximum_dbi(stage.pattern) : change.near_db);
        eirp_dbm_ = eirp.level();
    }
    far_.worst_db += stage.tolerance_db;
    if (stage.kind != Kind::allowance) near_.worst_db += stage.tolerance_db;
    if (stage.kind != Kind::air) {
        far_.sum.add(change.far_db);
        near_.sum.add(change.near_db);
        return;
    }
    has_air_ = true;
    has_path_ = stage.has_path;
    if (has_path_) path_ = stage.path;
    if (has_path_ && path::is_fed_by_cable(path_)) eirp_dbm_ = math::not_a_number; // as the ledger says
    End *const ends[] = {&far_, &near_};
    for (End *end : ends) {
        end->before_air_dbm = end->sum.level() + change.near_db;
        end->sum = {};
    }
}

double Row::loss_db(double distance_m) const noexcept {
    return has_path_ ? path::loss_db(path_, frequency_mhz_, distance_m)
                     : path::free_space_loss_db(frequency_mhz_, distance_m);
}

double Row::level_dbm(const End &end, double distance_m) const noexcept {
    return has_air_ ? (end.before_air_dbm - loss_db(distance_m)) + end.sum.since : end.sum.level();
}

bool Row::is_near_field(double distance_m) const noexcept {
    if (!has_air_) return false;
    return has_path_ ? path::is_near_field(path_, frequency_mhz_, distance_m)
                     : distance_m < units::wavelength_m_from_mhz(frequency_mhz_);
}

void Sweep::take_row(const Row &row) noexcept {
    window_ = row.window();
    far_worst_db = row.far_worst_db();
    near_worst_db = row.near_worst_db();
    eirp.take(row.eirp_dbm(), row.frequency_mhz(), 0.0);
}

void Sweep::take_far(const Row &row, double distance_m) noexcept {
    const double level = row.far_level_dbm(distance_m);
    far_level.take(level, row.frequency_mhz(), distance_m);
    if (window_.has_floor) margin.take(level - window_.floor_dbm, row.frequency_mhz(), distance_m);
}

void Sweep::take_near(const Row &row, double distance_m) noexcept {
    const double level = row.near_level_dbm(distance_m);
    near_level.take(level, row.frequency_mhz(), distance_m);
    if (window_.has_ceiling) headroom.take(window_.ceiling_dbm - level, row.frequency_mhz(), distance_m);
}

chain::Verdict Sweep::verdict() const noexcept {
    chain::End far_end{}, near_end{};
    far_end.margin_db = margin.lowest.value;
    far_end.headroom_db = window_.ceiling_dbm - far_level.highest.value;
    far_end.worst_db = far_worst_db;
    near_end.headroom_db = headroom.lowest.value;
    near_end.worst_db = near_worst_db;
    return chain::verdict_of(window_, far_end, near_end);
}

chain::Decided Sweep::decided() const noexcept {
    return chain::decided_of(window_, margin.lowest.value, headroom.lowest.value);
}

} // namespace lvb::map
