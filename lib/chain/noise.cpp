#include "chain/noise.hpp"

#include "noise/products.hpp"
#include "noise/thermal.hpp"
#include "units/length.hpp"
#include "units/power.hpp"

namespace lvb::chain {
namespace {

using math::is_nan;
using units::power_sum_db;

constexpr double rounding_db = 1e-9; // a change under it is none

bool is_active(const Stage &stage) noexcept { return stage.kind == Kind::amplifier || stage.kind == Kind::receiver; }

// The cascade with one of its parts left out; a part beyond the last leaves out none.
Cascade cascade_without(const Part *parts, std::uint32_t count, std::uint32_t left_out) noexcept {
    Cascade cascade;
    for (std::uint32_t i = 0; i < count; ++i)
        if (i != left_out) cascade.add(parts[i]);
    return cascade;
}

double figure_db_of_noise(double noise_db) noexcept { return power_sum_db(0.0, noise_db); }
double temperature_k_of(double noise_db) noexcept {
    return noise::reference_temperature_k * math::power_of_db(noise_db);
}

double at_antenna(const Measured &measured, double gain_db) noexcept {
    return measured.at == Place::receiver ? measured.level_dbm - gain_db : measured.level_dbm;
}

} // namespace

Part part_of(const Stage &stage, double change_db, double temperature_degc) noexcept {
    switch (stage.kind) {
    case Kind::passive:
    case Kind::cable:
        return {change_db, noise::passive_noise_db(0.0 - change_db, units::kelvin_from_degc(temperature_degc)),
                is_nan(stage.intercept_dbm) ? -math::infinity : change_db - stage.intercept_dbm};
    case Kind::amplifier:
        return {change_db, noise::excess_db(stage.noise_figure_db), change_db - stage.intercept_dbm};
    case Kind::receiver:
        return {0.0, noise::excess_db(stage.noise_figure_db), -stage.intercept_dbm};
    default:
        return {0.0, -math::infinity, -math::infinity};
    }
}

void Cascade::add(const Part &part) noexcept {
    noise_db = power_sum_db(noise_db, part.noise_db - gain_db);
    bend_db = power_sum_db(bend_db, part.bend_db + gain_db);
    gain_db += part.gain_db;
}

NoiseBook::NoiseBook(const NoiseConditions &conditions, const Part *parts, std::uint32_t count,
                     const Line &antenna) noexcept
    : conditions_(conditions), parts_(parts), count_(count),
      floor_dbm_(noise::thermal_noise_dbm(conditions.bandwidth_mhz, noise::reference_temperature_k)),
      all_products_db_(noise::all_products_db(conditions.carriers)), far_start_(antenna.far_end),
      near_start_(antenna.near_end), far_end_(antenna.far_end), near_end_(antenna.near_end),
      whole_(cascade_without(parts, count, count)) {}

Products NoiseBook::products(double intercept_dbm, double level_dbm) const noexcept {
    const double two_tone_dbm = noise::third_order_product_dbm(level_dbm, intercept_dbm);
    return {two_tone_dbm, two_tone_dbm + all_products_db_};
}

const NoiseLine &NoiseBook::enter(const Stage &stage, std::int32_t index, const Line &entered) noexcept {
    const std::uint32_t number = entered_++;
    const Part &part = parts_[number];
    const double gain_before_db = so_far_.gain_db;
    so_far_.add(part);
    if (stage.kind != Kind::receiver) {
        far_end_ = entered.far_end;
        near_end_ = entered.near_end;
    }
    line_.notes = {};
    line_.gain_db = so_far_.gain_db;
    line_.stage_figure_db = figure_db_of_noise(part.noise_db);
    line_.figure_db = figure_db_of_noise(so_far_.noise_db);
    line_.temperature_k = temperature_k_of(so_far_.noise_db);
    line_.noise_dbm = floor_dbm_ + power_sum_db(conditions_.antenna_db, so_far_.noise_db) + so_far_.gain_db;
    line_.far_carrier_to_noise_db = far_end_.level_dbm - line_.noise_dbm;
    line_.near_carrier_to_noise_db = near_end_.level_dbm - line_.noise_dbm;
    line_.input_intercept_dbm = 0.0 - so_far_.bend_db;
    line_.output_intercept_dbm = line_.input_intercept_dbm + so_far_.gain_db;
    line_.products = products(line_.output_intercept_dbm, near_end_.level_dbm);
    line_.range_change_db = line_.carrier_to_noise_change_db = math::not_a_number;
    enter_compression(stage, index, gain_before_db);
    if (is_active(stage)) note_missing(stage, index);
    if (stage.kind == Kind::amplifier) compare_without(number, index);
    return line_;
}

void NoiseBook::note_missing(const Stage &stage, std::int32_t index) noexcept {
    line_.notes.no_noise_figure = is_nan(stage.noise_figure_db);
    line_.notes.no_intercept = is_nan(stage.intercept_dbm);
    line_.notes.no_compression = is_nan(stage.compression_dbm);
    if (line_.notes.no_noise_figure && no_noise_figure_ < 0) no_noise_figure_ = index;
    if (line_.notes.no_intercept && no_intercept_ < 0) no_intercept_ = index;
}

// An output whose gain has fallen by 1 dB belongs to an input that the gain alone would have made 1 dB greater.
void NoiseBook::enter_compression(const Stage &stage, std::int32_t index, double gain_before_db) noexcept {
    line_.compression_dbm = stage.kind == Kind::receiver ? stage.compression_dbm - gain_before_db
                                                         : (stage.compression_dbm + 1.0) - so_far_.gain_db;
    line_.headroom_db = line_.compression_dbm - (near_start_.level_dbm + conditions_.together_db);
    if (is_nan(line_.compression_dbm) || line_.compression_dbm >= compression_dbm_) return;
    compression_dbm_ = line_.compression_dbm;
    compressing_ = index;
}

void NoiseBook::compare_without(std::uint32_t part, std::int32_t index) noexcept {
    const Cascade without = cascade_without(parts_, count_, part);
    const double antenna = conditions_.antenna_db;
    const double carrier_to_noise = power_sum_db(antenna, without.noise_db) - power_sum_db(antenna, whole_.noise_db);
    const double range = noise::spurious_free_range_db(carrier_to_noise + without.bend_db, whole_.bend_db);
    line_.carrier_to_noise_change_db = carrier_to_noise;
    line_.range_change_db = range;
    const double cost = range < carrier_to_noise || is_nan(carrier_to_noise) ? range : carrier_to_noise;
    if (!(cost < -rounding_db)) return;
    line_.notes.range_lowered = true;
    if (!(cost < largest_cost_db_)) return;
    largest_cost_db_ = cost;
    range_lowering_ = index;
}

NoiseResult NoiseBook::close() const noexcept {
    const Measured &measured = conditions_.noise;
    const double gain = whole_.gain_db;
    NoiseResult result{};
    result.no_noise_figure_stage = no_noise_figure_;
    result.no_intercept_stage = no_intercept_;
    result.compressing_stage = compressing_;
    result.range_lowering_stage = range_lowering_;

    const bool is_measured = measured.at != Place::none;
    result.gain_db = gain;
    result.figure_db = figure_db_of_noise(whole_.noise_db);
    result.temperature_k = temperature_k_of(whole_.noise_db);
    result.antenna_temperature_k = temperature_k_of(conditions_.antenna_db);
    result.antenna_noise_dbm =
        is_measured ? at_antenna(measured, gain) : floor_dbm_ + power_sum_db(conditions_.antenna_db, whole_.noise_db);
    result.receiver_noise_dbm = measured.at == Place::receiver ? measured.level_dbm : result.antenna_noise_dbm + gain;
    const Measured &interference = conditions_.interference;
    result.receiver_interference_dbm = interference.at == Place::none       ? -math::infinity
                                       : interference.at == Place::receiver ? interference.level_dbm
                                                                            : interference.level_dbm + gain;

    const double both_dbm = power_sum_db(result.receiver_noise_dbm, result.receiver_interference_dbm);
    result.far_level_dbm = far_end_.level_dbm;
    result.near_level_dbm = near_end_.level_dbm;
    result.far_carrier_to_noise_db = far_end_.level_dbm - result.receiver_noise_dbm;
    result.near_carrier_to_noise_db = near_end_.level_dbm - result.receiver_noise_dbm;
    result.far_carrier_to_both_db = far_end_.level_dbm - both_dbm;
    result.near_carrier_to_both_db = near_end_.level_dbm - both_dbm;
    const double needed = conditions_.has_needed ? conditions_.needed_db : math::not_a_number;
    result.sensitivity_dbm = result.antenna_noise_dbm + needed;
    result.margin_db = result.far_carrier_to_both_db - needed;

    result.input_intercept_dbm = 0.0 - whole_.bend_db;
    result.output_intercept_dbm = result.input_intercept_dbm + gain;
    result.products = products(result.output_intercept_dbm, near_end_.level_dbm);
    result.spurious_free_range_db = noise::spurious_free_range_db(result.input_intercept_dbm, result.antenna_noise_dbm);
    result.compression_dbm = compression_dbm_;
    result.headroom_db = compression_dbm_ - (near_start_.level_dbm + conditions_.together_db);

    if (is_nan(result.antenna_noise_dbm)) return result; // never judged on half of what counts
    Window window{};
    window.has_floor = conditions_.has_needed;
    window.has_ceiling = compressing_ >= 0;
    End far_end{}, near_end{};
    far_end.margin_db = result.margin_db;
    far_end.headroom_db = compression_dbm_ - (far_start_.level_dbm + conditions_.together_db);
    far_end.worst_db = far_end_.worst_db;
    near_end.headroom_db = result.headroom_db;
    near_end.worst_db = near_end_.worst_db;
    result.verdict = verdict_of(window, far_end, near_end);
    return result;
}

} // namespace lvb::chain
