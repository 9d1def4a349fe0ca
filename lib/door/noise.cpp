// Noise and linearity of a link's receive side. Two walks over the stages: one checks them and finds what the cascade
// takes, the other enters them into both books.
#include "chain/noise.hpp"
#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "noise/thermal.hpp"

namespace lvb::door {
namespace {

using chain::Kind;
using chain::Part;

static_assert(static_cast<int>(chain::Place::receiver) == LVB_PLACE_RECEIVER);

constexpr std::uint32_t usual_carriers = 2;

// A level has its place, and a place its level; without a place the level is zero.
bool take_measured(Refusal &refusal, std::int32_t at, std::int32_t at_field, double level_dbm, std::int32_t level_field,
                   Place place, chain::Measured &measured) noexcept {
    if (at < LVB_PLACE_NONE || at > LVB_PLACE_RECEIVER)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, at_field, at, LVB_PLACE_NONE, LVB_PLACE_RECEIVER);
    if (!check_field(refusal, level_dbm, *struct_range(place.structure, level_field), place, level_field)) return false;
    if (at == LVB_PLACE_NONE && level_dbm != 0.0)
        return refuse(refusal, LVB_E_MISSING, place, at_field, 0.0, LVB_PLACE_ANTENNA, LVB_PLACE_RECEIVER);
    measured = {static_cast<chain::Place>(at), level_dbm};
    return true;
}

bool take_conditions(Refusal &refusal, const lvb_noise_conditions *lent, chain::NoiseConditions &conditions) noexcept {
    const Place place{LVB_STRUCT_NOISE_CONDITIONS};
    lvb_noise_conditions in{};
    if (!take(refusal, lent, in, place, LVB_FIELD_CONDITIONS)) return false;
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (!check_stated(refusal, in.stated, LVB_STATED_CARRIER_TO_NOISE, place)) return false;
    const auto check = [&](double value, std::int32_t field) noexcept {
        return check_field(refusal, value, *struct_range(place.structure, field), place, field);
    };
    if (!check(in.carriers, LVB_FIELD_CARRIERS) || !check(in.bandwidth_mhz, LVB_FIELD_BANDWIDTH_MHZ) ||
        !check(in.antenna_temperature_k, LVB_FIELD_ANTENNA_TEMPERATURE_K) ||
        !check(in.external_noise_figure_db, LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB) ||
        !check(in.carrier_to_noise_db, LVB_FIELD_CARRIER_TO_NOISE_DB) ||
        !take_measured(refusal, in.noise_at, LVB_FIELD_NOISE_AT, in.noise_dbm, LVB_FIELD_NOISE_DBM, place,
                       conditions.noise) ||
        !take_measured(refusal, in.interference_at, LVB_FIELD_INTERFERENCE_AT, in.interference_dbm,
                       LVB_FIELD_INTERFERENCE_DBM, place, conditions.interference))
        return false;
    if (in.antenna_temperature_k != 0.0 && in.external_noise_figure_db != 0.0)
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB, in.external_noise_figure_db);
    conditions.has_needed = (in.stated & LVB_STATED_CARRIER_TO_NOISE) != 0;
    if (!conditions.has_needed && in.carrier_to_noise_db != 0.0)
        return refuse(refusal, LVB_E_NOT_STATED, place, LVB_FIELD_CARRIER_TO_NOISE_DB, in.carrier_to_noise_db);
    conditions.needed_db = in.carrier_to_noise_db;
    conditions.bandwidth_mhz = in.bandwidth_mhz;
    conditions.carriers = in.carriers != 0 ? in.carriers : usual_carriers;
    conditions.together_db = in.carriers != 0 ? math::ten_log10(in.carriers) : 0.0;
    conditions.antenna_db = in.antenna_temperature_k != 0.0 ? noise::over_reference_db(in.antenna_temperature_k)
                                                            : in.external_noise_figure_db;
    return true;
}

std::uint32_t bits_of(const chain::NoiseNotes &notes) noexcept {
    return (notes.no_noise_figure ? std::uint32_t{LVB_NOTE_NO_NOISE_FIGURE} : 0u) |
           (notes.no_intercept ? std::uint32_t{LVB_NOTE_NO_INTERCEPT} : 0u) |
           (notes.no_compression ? std::uint32_t{LVB_NOTE_NO_COMPRESSION} : 0u) |
           (notes.range_lowered ? std::uint32_t{LVB_NOTE_RANGE_LOWERED} : 0u);
}

// Arithmetic makes a NaN with a sign of the processor's choice: the numbers of a result, from `first` on, get one.
template <class Result>
void settle(Result &result, std::size_t first, bool known = true) noexcept {
    for (std::size_t at = first; at < sizeof result; at += sizeof(double)) {
        double number;
        std::memcpy(&number, reinterpret_cast<char *>(&result) + at, sizeof number);
        if (known && !math::is_nan(number)) continue;
        std::memcpy(reinterpret_cast<char *>(&result) + at, &math::not_a_number, sizeof number);
    }
}

lvb_noise_line line_of(const chain::NoiseLine &line) noexcept {
    lvb_noise_line out{};
    out.notes = bits_of(line.notes);
    out.gain_db = line.gain_db;
    out.stage_noise_figure_db = line.stage_figure_db;
    out.noise_figure_db = line.figure_db;
    out.noise_temperature_k = line.temperature_k;
    out.noise_dbm = line.noise_dbm;
    out.far_carrier_to_noise_db = line.far_carrier_to_noise_db;
    out.near_carrier_to_noise_db = line.near_carrier_to_noise_db;
    out.input_intercept_dbm = line.input_intercept_dbm;
    out.output_intercept_dbm = line.output_intercept_dbm;
    out.compression_dbm = line.compression_dbm;
    out.compression_headroom_db = line.headroom_db;
    out.two_tone_dbm = line.products.two_tone_dbm;
    out.products_dbm = line.products.all_dbm;
    out.range_change_db = line.range_change_db;
    out.carrier_to_noise_change_db = line.carrier_to_noise_change_db;
    settle(out, offsetof(lvb_noise_line, gain_db));
    return out;
}

// The line of a stage before the receive side: nothing is known of it.
lvb_noise_line empty_line() noexcept {
    lvb_noise_line out{};
    settle(out, offsetof(lvb_noise_line, gain_db), false);
    return out;
}

lvb_noise noise_of(const chain::NoiseResult &result, std::uint32_t notes, std::int32_t first) noexcept {
    lvb_noise out{};
    out.verdict = static_cast<std::int32_t>(result.verdict);
    out.notes = notes;
    out.first_stage = first;
    out.no_noise_figure_stage = result.no_noise_figure_stage;
    out.no_intercept_stage = result.no_intercept_stage;
    out.compressing_stage = result.compressing_stage;
    out.range_lowering_stage = result.range_lowering_stage;
    out.gain_db = result.gain_db;
    out.noise_figure_db = result.figure_db;
    out.noise_temperature_k = result.temperature_k;
    out.antenna_temperature_k = result.antenna_temperature_k;
    out.antenna_noise_dbm = result.antenna_noise_dbm;
    out.receiver_noise_dbm = result.receiver_noise_dbm;
    out.receiver_interference_dbm = result.receiver_interference_dbm;
    out.far_level_dbm = result.far_level_dbm;
    out.near_level_dbm = result.near_level_dbm;
    out.far_carrier_to_noise_db = result.far_carrier_to_noise_db;
    out.near_carrier_to_noise_db = result.near_carrier_to_noise_db;
    out.far_carrier_to_noise_plus_interference_db = result.far_carrier_to_both_db;
    out.near_carrier_to_noise_plus_interference_db = result.near_carrier_to_both_db;
    out.sensitivity_dbm = result.sensitivity_dbm;
    out.margin_db = result.margin_db;
    out.input_intercept_dbm = result.input_intercept_dbm;
    out.output_intercept_dbm = result.output_intercept_dbm;
    out.compression_dbm = result.compression_dbm;
    out.compression_headroom_db = result.headroom_db;
    out.two_tone_dbm = result.products.two_tone_dbm;
    out.products_dbm = result.products.all_dbm;
    out.spurious_free_range_db = result.spurious_free_range_db;
    settle(out, offsetof(lvb_noise, gain_db));
    return out;
}

// The receive side of a checked chain: its parts, and the index of what stands before the first of them.
struct ReceiveSide {
    Part parts[LVB_MAX_STAGES];
    std::uint32_t count;
    std::int32_t first;
};

bool take_receive_side(Refusal &refusal, const lvb_link &link, const chain::Conditions &conditions,
                       ReceiveSide &side) noexcept {
    side.count = 0;
    side.first = 0;
    std::int32_t index = 0;
    bool has_air = false;
    const auto enter = [&](const chain::Stage &stage) noexcept {
        has_air = has_air || stage.kind == Kind::air;
        if (stage.kind == Kind::source || stage.kind == Kind::antenna) {
            side.count = 0;
            side.first = index;
        } else {
            const auto change = chain::own_change(stage, conditions.frequency_mhz, conditions.temperature_degc);
            side.parts[side.count++] = chain::part_of(stage, change.near_db, conditions.temperature_degc);
        }
        ++index;
    };
    if (!walk_stages(refusal, link, enter)) return false;
    return side.first == 0 || has_air ||
           refuse(refusal, LVB_E_NO_RECEIVE_ANTENNA, {LVB_STRUCT_STAGE, side.first}, LVB_FIELD_KIND, LVB_KIND_ANTENNA);
}

void write(char *lines, std::uint32_t line_size, std::uint32_t index, const lvb_noise_line &line) noexcept {
    if (lines != nullptr) give(lines + std::size_t{index} * line_size, line, line_size);
}

// The stages were checked: they are taken without a refusal.
lvb_noise keep_books(const lvb_link &link, const chain::Conditions &conditions,
                     const chain::NoiseConditions &noise_conditions, const ReceiveSide &side, char *lines,
                     std::uint32_t line_size) noexcept {
    Refusal none;
    chain::Stage stage;
    chain::Ledger ledger(conditions);
    const auto first = static_cast<std::uint32_t>(side.first);
    for (std::uint32_t i = 0; i < first; ++i) {
        take_stage(none, link, i, stage);
        ledger.enter(stage);
        write(lines, line_size, i, empty_line());
    }
    take_stage(none, link, first, stage);
    chain::NoiseBook book(noise_conditions, side.parts, side.count, ledger.enter(stage));
    write(lines, line_size, first, empty_line());
    std::uint32_t notes = 0;
    for (std::uint32_t i = first + 1; i < link.stage_count; ++i) {
        take_stage(none, link, i, stage);
        const lvb_noise_line line = line_of(book.enter(stage, static_cast<std::int32_t>(i), ledger.enter(stage)));
        notes |= line.notes;
        write(lines, line_size, i, line);
    }
    return noise_of(book.close(), notes, side.first);
}

bool compute(Refusal &refusal, const lvb_link *lent, const lvb_noise_conditions *lent_conditions, lvb_noise *noise,
             lvb_noise_line *lines, std::uint32_t line_size) noexcept {
    lvb_link link;
    chain::Conditions conditions;
    chain::NoiseConditions noise_conditions;
    ReceiveSide side;
    if (!take_link(refusal, lent, link, conditions) || !take_conditions(refusal, lent_conditions, noise_conditions) ||
        !check_result(refusal, noise, LVB_STRUCT_NOISE, LVB_FIELD_NOISE) ||
        (lines != nullptr &&
         !check_size(refusal, line_size, sizeof(lvb_noise_line), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_LINE_SIZE)) ||
        !take_receive_side(refusal, link, conditions, side))
        return false;
    lvb_noise out = keep_books(link, conditions, noise_conditions, side, reinterpret_cast<char *>(lines), line_size);
    give(noise, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_noise(const lvb_link *link, const lvb_noise_conditions *conditions, lvb_noise *noise,
                                        lvb_noise_line *lines, uint32_t line_size, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(
        fault, [&](Refusal &refusal) noexcept { return compute(refusal, link, conditions, noise, lines, line_size); });
}
