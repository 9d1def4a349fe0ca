#include "coexistence/neighbours.hpp"
#include "door/struct_fields.hpp"
#include "units/length.hpp"

namespace lvb::door {
namespace {

using math::not_a_number;

constexpr Place place{LVB_STRUCT_NEIGHBOURS};
constexpr double usual_rise_db = 1.0;
constexpr std::uint32_t known_bits = LVB_STATED_BLOCKING | LVB_STATED_TRANSMIT_NOISE | LVB_STATED_RECEIVER_NOISE;

bool states(const lvb_neighbours &in, std::uint32_t bit) noexcept { return (in.stated & bit) != 0; }

bool has_noise(const lvb_neighbours &in) noexcept {
    return states(in, LVB_STATED_TRANSMIT_NOISE) || in.transmit_noise_dbc_per_hz != 0.0;
}

bool check_bit(Refusal &refusal, const lvb_neighbours &in, std::uint32_t bit, double value,
               std::int32_t field) noexcept {
    return states(in, bit) || value == 0.0 || refuse(refusal, LVB_E_NOT_STATED, place, field, value);
}

// A value that has no effect without another.
bool check_use(Refusal &refusal, bool used, double value, std::int32_t field) noexcept {
    return used || value == 0.0 || refuse(refusal, LVB_E_UNUSED, place, field, value);
}

// The coupling comes from a measurement, or from separation, gains and frequencies.
bool check_coupling(Refusal &refusal, const lvb_neighbours &in) noexcept {
    if (in.coupling_loss_db != 0.0) {
        if (in.separation_m != 0.0)
            return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_SEPARATION_M, in.separation_m);
        return check_use(refusal, false, in.transmit_gain_dbi, LVB_FIELD_TRANSMIT_GAIN_DBI) &&
               check_use(refusal, false, in.receive_gain_dbi, LVB_FIELD_RECEIVE_GAIN_DBI) &&
               check_use(refusal, false, in.transmit_mhz, LVB_FIELD_TRANSMIT_MHZ) &&
               check_use(refusal, false, in.receive_mhz, LVB_FIELD_RECEIVE_MHZ);
    }
    if (in.separation_m == 0.0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_SEPARATION_M, 0.0, distance_range.minimum,
                      distance_range.maximum);
    return in.transmit_mhz != 0.0 || refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_TRANSMIT_MHZ, 0.0,
                                            frequency_range.minimum, frequency_range.maximum);
}

bool check_noise(Refusal &refusal, const lvb_neighbours &in) noexcept {
    const bool relative = in.transmit_noise_dbc_per_hz != 0.0;
    if (relative && states(in, LVB_STATED_TRANSMIT_NOISE))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_TRANSMIT_NOISE_DBC_PER_HZ,
                      in.transmit_noise_dbc_per_hz);
    if (relative && in.receiver_bandwidth_mhz == 0.0) {
        const Range &range = *find_range(neighbours_fields, LVB_FIELD_RECEIVER_BANDWIDTH_MHZ);
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_RECEIVER_BANDWIDTH_MHZ, 0.0, range.minimum,
                      range.maximum);
    }
    const bool noise = has_noise(in);
    if (states(in, LVB_STATED_RECEIVER_NOISE) && !noise)
        return refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_RECEIVER_NOISE_DBM, in.receiver_noise_dbm);
    return check_use(refusal, relative, in.receiver_bandwidth_mhz, LVB_FIELD_RECEIVER_BANDWIDTH_MHZ) &&
           check_use(refusal, noise, in.transmit_filter_db, LVB_FIELD_TRANSMIT_FILTER_DB) &&
           check_use(refusal, states(in, LVB_STATED_RECEIVER_NOISE), in.wanted_rise_db, LVB_FIELD_WANTED_RISE_DB);
}

bool check_neighbours(Refusal &refusal, const lvb_neighbours &in) noexcept {
    return check_stated(refusal, in.stated, known_bits, place) &&
           check_numbers(refusal, in, neighbours_fields, place) &&
           check_bit(refusal, in, LVB_STATED_BLOCKING, in.blocking_dbm, LVB_FIELD_BLOCKING_DBM) &&
           check_bit(refusal, in, LVB_STATED_TRANSMIT_NOISE, in.transmit_noise_dbm, LVB_FIELD_TRANSMIT_NOISE_DBM) &&
           check_bit(refusal, in, LVB_STATED_RECEIVER_NOISE, in.receiver_noise_dbm, LVB_FIELD_RECEIVER_NOISE_DBM) &&
           check_coupling(refusal, in) && check_noise(refusal, in) &&
           check_use(refusal, states(in, LVB_STATED_BLOCKING), in.wanted_margin_db, LVB_FIELD_WANTED_MARGIN_DB);
}

coexistence::Neighbours model_of(const lvb_neighbours &in) noexcept {
    coexistence::Neighbours out;
    out.transmit_dbm = in.transmit_dbm;
    const bool measured = in.coupling_loss_db != 0.0;
    const double receive_mhz = or_else(in.receive_mhz, in.transmit_mhz);
    const double gains = in.transmit_gain_dbi + in.receive_gain_dbi;
    const auto computed = [&](double mhz) noexcept {
        return coexistence::free_space_coupling_db(mhz, in.separation_m, gains);
    };
    out.coupling_db = measured ? in.coupling_loss_db : computed(in.transmit_mhz);
    out.noise_coupling_db = measured ? in.coupling_loss_db : computed(receive_mhz);
    out.separation_m = measured ? not_a_number : in.separation_m;
    out.receive_loss_db = in.receive_loss_db;
    out.receive_filter_db = in.receive_filter_db;
    out.transmit_filter_db = in.transmit_filter_db;
    out.blocking_dbm = states(in, LVB_STATED_BLOCKING) ? in.blocking_dbm : not_a_number;
    out.transmit_noise_dbm = states(in, LVB_STATED_TRANSMIT_NOISE) ? in.transmit_noise_dbm
                             : has_noise(in) ? coexistence::noise_dbm(in.transmit_dbm, in.transmit_noise_dbc_per_hz,
                                                                      in.receiver_bandwidth_mhz)
                                             : not_a_number;
    out.receiver_noise_dbm = states(in, LVB_STATED_RECEIVER_NOISE) ? in.receiver_noise_dbm : not_a_number;
    out.wanted_margin_db = in.wanted_margin_db;
    out.wanted_rise_db = or_else(in.wanted_rise_db, usual_rise_db);
    return out;
}

// Whether the separation, or one that is told, is closer than the longer of both wavelengths.
bool is_near(const lvb_neighbours &in, const coexistence::Effect &effect) noexcept {
    if (in.coupling_loss_db != 0.0) return false;
    const double receive_mhz = or_else(in.receive_mhz, in.transmit_mhz);
    const double lower = receive_mhz < in.transmit_mhz ? receive_mhz : in.transmit_mhz;
    return units::is_near_field(lower, in.separation_m) ||
           units::is_near_field(lower, effect.blocking.separation_m) || // not told is NaN
           units::is_near_field(lower, effect.noise.separation_m);
}

bool compute(Refusal &refusal, const lvb_neighbours *lent, lvb_coexistence *result) noexcept {
    lvb_neighbours in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_NEIGHBOURS) ||
        !check_result(refusal, result, LVB_STRUCT_COEXISTENCE, LVB_FIELD_COEXISTENCE) || !check_neighbours(refusal, in))
        return false;
    const coexistence::Neighbours model = model_of(in);
    const coexistence::Effect effect = coexistence::effect(model);
    lvb_coexistence out{};
    out.notes = is_near(in, effect) ? std::uint32_t{LVB_NOTE_NEAR_FIELD} : 0u;
    out.coupling_loss_db = model.coupling_db;
    out.noise_coupling_loss_db = model.noise_coupling_db;
    out.blocker_dbm = effect.blocker_dbm;
    out.blocking_margin_db = effect.blocking_margin_db;
    out.noise_dbm = effect.noise_dbm;
    out.noise_rise_db = effect.noise_rise_db;
    out.more_receive_filter_db = effect.blocking.more_filter_db;
    out.more_transmit_filter_db = effect.noise.more_filter_db;
    out.blocking_separation_m = effect.blocking.separation_m;
    out.noise_separation_m = effect.noise.separation_m;
    give(result, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_coexistence(const lvb_neighbours *neighbours, lvb_coexistence *coexistence,
                                              lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, neighbours, coexistence); });
}
