#include "coexistence/neighbours.hpp"

#include "math/elementary.hpp"
#include "path/free_space.hpp"

namespace lvb::coexistence {
namespace {

// A dB that lacks is a dB of filter, or of free space.
Remedy remedy(double lacking_db, double separation_m) noexcept {
    return {lacking_db <= 0.0 ? 0.0 : lacking_db, separation_m * math::ratio_of_db(lacking_db, 0.5, 0.0)};
}

} // namespace

double free_space_coupling_db(double frequency_mhz, double separation_m, double gains_dbi) noexcept {
    return path::free_space_loss_db(frequency_mhz, separation_m) - gains_dbi;
}

double noise_dbm(double transmit_dbm, double dbc_per_hz, double bandwidth_mhz) noexcept {
    return transmit_dbm + dbc_per_hz + math::decibels(bandwidth_mhz, 1.0, 60.0);
}

Effect effect(const Neighbours &n) noexcept {
    Effect out;
    out.blocker_dbm = n.transmit_dbm - n.coupling_db - n.receive_loss_db - n.receive_filter_db;
    out.blocking_margin_db = n.blocking_dbm - out.blocker_dbm;
    out.blocking = remedy(n.wanted_margin_db - out.blocking_margin_db, n.separation_m);

    out.noise_dbm = n.transmit_noise_dbm - n.transmit_filter_db - n.noise_coupling_db - n.receive_loss_db;
    const double over_db = out.noise_dbm - n.receiver_noise_dbm;
    out.noise_rise_db = math::ten_log10_1p(math::power_of_db(over_db));
    out.noise = remedy(over_db - math::ten_log10(math::power_of_db_m1(n.wanted_rise_db)), n.separation_m);
    return out;
}

} // namespace lvb::coexistence
