// lvb_compute_noise with chains of every kind: whatever comes, it is refused whole or the book of noise is sound.
#include "fuzz/stages.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::is_nan;
using fuzz::Memory;

// What a stage may state of noise and linearity, now and then more.
void dress(Bytes &bytes, lvb_stage &stage) {
    const bool any = bytes.once_in(32);
    const bool active = stage.kind == LVB_KIND_AMPLIFIER || stage.kind == LVB_KIND_RECEIVER;
    const auto give = [&](std::uint32_t bit, double &value, double low, double high) {
        if (bytes.once_in(4)) return;
        value = bytes.number(low, high);
        if (!bytes.once_in(32)) stage.stated |= bit;
    };
    if (active || any) give(LVB_STATED_NOISE_FIGURE, stage.noise_figure_db, 0.0, 100.0);
    if (active || any || stage.kind == LVB_KIND_PASSIVE) {
        give(LVB_STATED_INTERCEPT, stage.intercept_dbm, -100.0, 150.0);
        give(LVB_STATED_COMPRESSION, stage.compression_dbm, -100.0, 150.0);
    }
}

lvb_noise_conditions make_conditions(Bytes &bytes) {
    lvb_noise_conditions conditions{};
    conditions.size = bytes.size_of(sizeof conditions);
    conditions.bandwidth_mhz = bytes.once_in(32) ? bytes.any_number() : bytes.between(1e-6, 20.0);
    if (bytes.once_in(3)) conditions.antenna_temperature_k = bytes.number(0.001, 1e6);
    else if (bytes.once_in(2)) conditions.external_noise_figure_db = bytes.number(-60.0, 120.0);
    if (bytes.once_in(3)) {
        conditions.noise_at = static_cast<std::int32_t>(bytes.below(bytes.once_in(16) ? 8 : 3));
        if (conditions.noise_at != 0) conditions.noise_dbm = bytes.number(-250.0, 150.0);
    }
    if (bytes.once_in(3)) {
        conditions.interference_at = static_cast<std::int32_t>(bytes.below(bytes.once_in(16) ? 8 : 3));
        if (conditions.interference_at != 0) conditions.interference_dbm = bytes.number(-250.0, 150.0);
    }
    if (bytes.once_in(2)) conditions.carriers = bytes.once_in(8) ? bytes.raw<std::uint32_t>() : 2 + bytes.below(100);
    if (bytes.once_in(2)) {
        conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
        if (bytes.once_in(32)) conditions.stated = bytes.raw<std::uint32_t>();
        conditions.carrier_to_noise_db = bytes.number(-100.0, 100.0);
    }
    if (bytes.once_in(64)) conditions.reserved = bytes.raw<std::uint32_t>();
    return conditions;
}

bool is_stage(std::int32_t index, std::int32_t first, std::uint32_t stages) {
    return index == -1 || (index > first && index < static_cast<std::int32_t>(stages));
}

void require_noise(const lvb_noise &noise, const lvb_noise_conditions &conditions, std::uint32_t stages) {
    REQUIRE(noise.first_stage >= 0 && noise.first_stage < static_cast<std::int32_t>(stages));
    for (const std::int32_t index :
         {noise.no_noise_figure_stage, noise.no_intercept_stage, noise.compressing_stage, noise.range_lowering_stage})
        REQUIRE(is_stage(index, noise.first_stage, stages));
    REQUIRE(fuzz::known(lvb_verdict_name(noise.verdict)));
    REQUIRE(((noise.notes & LVB_NOTE_NO_NOISE_FIGURE) != 0) == (noise.no_noise_figure_stage >= 0));
    REQUIRE(((noise.notes & LVB_NOTE_NO_INTERCEPT) != 0) == (noise.no_intercept_stage >= 0));
    REQUIRE(((noise.notes & LVB_NOTE_RANGE_LOWERED) != 0) == (noise.range_lowering_stage >= 0));
    // the cascade is known where every figure is
    REQUIRE(is_nan(noise.noise_figure_db) == (noise.no_noise_figure_stage >= 0));
    REQUIRE(is_nan(noise.input_intercept_dbm) == (noise.no_intercept_stage >= 0));
    REQUIRE(is_nan(noise.compression_dbm) == (noise.compressing_stage < 0));
    if (!is_nan(noise.noise_figure_db)) REQUIRE(noise.noise_figure_db >= 0.0 && noise.noise_temperature_k >= 0.0);
    const bool known = conditions.noise_at != LVB_PLACE_NONE || noise.no_noise_figure_stage < 0;
    REQUIRE(is_nan(noise.antenna_noise_dbm) != known && is_nan(noise.far_carrier_to_noise_db) != known);
    if (!known) REQUIRE(noise.verdict == LVB_VERDICT_NOT_JUDGED);
    const bool limited = (conditions.stated & LVB_STATED_CARRIER_TO_NOISE) != 0 || noise.compressing_stage >= 0;
    if (known) REQUIRE((noise.verdict != LVB_VERDICT_NOT_JUDGED) == limited);
    // a level is -infinity where an antenna's null lies in the other's direction
    constexpr double infinity = std::numeric_limits<double>::infinity();
    REQUIRE(std::isfinite(noise.gain_db) && noise.far_level_dbm < infinity && noise.near_level_dbm < infinity);
    if (!known) return;
    REQUIRE(std::isfinite(noise.antenna_noise_dbm) && std::isfinite(noise.receiver_noise_dbm));
    // interference only adds
    REQUIRE(noise.far_carrier_to_noise_plus_interference_db <= noise.far_carrier_to_noise_db + 1e-9);
    REQUIRE(noise.near_carrier_to_noise_plus_interference_db <= noise.near_carrier_to_noise_db + 1e-9);
}

void require_lines(const Memory &lines, std::uint32_t line_size, std::uint32_t stages, const lvb_noise &noise) {
    std::uint32_t notes = 0;
    lvb_noise_line before{};
    before.input_intercept_dbm = std::numeric_limits<double>::infinity();
    for (std::uint32_t i = 0; i < stages; ++i) {
        const auto line = lines.get<lvb_noise_line>(std::size_t{i} * line_size);
        for (std::size_t tail = sizeof line; tail < line_size; ++tail)
            REQUIRE(lines.get<unsigned char>(std::size_t{i} * line_size + tail) == 0);
        REQUIRE(line.reserved == 0);
        notes |= line.notes;
        if (static_cast<std::int32_t>(i) <= noise.first_stage) {
            REQUIRE(is_nan(line.gain_db) && is_nan(line.noise_dbm) && line.notes == 0);
            continue;
        }
        // noise only grows from stage to stage, and the intercept only falls
        if (!is_nan(line.noise_temperature_k)) REQUIRE(line.noise_temperature_k >= before.noise_temperature_k);
        if (!is_nan(line.input_intercept_dbm)) REQUIRE(line.input_intercept_dbm <= before.input_intercept_dbm);
        if (is_nan(before.noise_temperature_k)) REQUIRE(is_nan(line.noise_temperature_k));
        if (is_nan(before.input_intercept_dbm)) REQUIRE(is_nan(line.input_intercept_dbm));
        if (!is_nan(line.compression_dbm)) REQUIRE(noise.compression_dbm <= line.compression_dbm);
        if (!is_nan(line.two_tone_dbm) && line.products_dbm > line.two_tone_dbm)
            REQUIRE(std::isfinite(line.two_tone_dbm));
        before = line;
    }
    REQUIRE(notes == noise.notes);
    if (noise.first_stage + 1 == static_cast<std::int32_t>(stages)) return;
    REQUIRE(before.gain_db == noise.gain_db);
    REQUIRE(is_nan(before.noise_figure_db) || before.noise_figure_db == noise.noise_figure_db);
    REQUIRE(is_nan(before.input_intercept_dbm) || before.input_intercept_dbm == noise.input_intercept_dbm);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;

    lvb_link link = fuzz::make_link(bytes);
    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    bool air = false;
    for (const std::int32_t kind : kinds) air = air || kind == LVB_KIND_AIR;
    if (!air && !bytes.once_in(8)) link.far_distance_m = link.near_distance_m = 0.0;
    link.stage_size = sizeof(lvb_stage);
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    Memory stages(kinds.size() * sizeof(lvb_stage));
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        dress(bytes, stage);
        if (bytes.once_in(48)) fuzz::spoil(bytes, stage, lenders);
        stages.put(stage, i * sizeof stage);
    }
    link.stages = stages.as<const lvb_stage>();
    const std::vector<unsigned char> stages_before = stages.copy();
    Memory lent = fuzz::result<lvb_link>(link.size);
    lent.put(link);
    lent.zero_from(sizeof link);

    const lvb_noise_conditions conditions = make_conditions(bytes);
    Memory lent_conditions = fuzz::result<lvb_noise_conditions>(conditions.size);
    lent_conditions.put(conditions);
    if (!bytes.once_in(16)) lent_conditions.zero_from(sizeof conditions);
    const lvb_noise_conditions *conditions_pointer =
        bytes.once_in(64) ? nullptr : lent_conditions.as<const lvb_noise_conditions>();

    const std::uint32_t noise_size = bytes.size_of(sizeof(lvb_noise));
    Memory noise = fuzz::result<lvb_noise>(noise_size);
    const bool give_noise = !bytes.once_in(64);
    const std::uint32_t line_size = bytes.size_of(sizeof(lvb_noise_line));
    const bool line_size_is_good = line_size >= sizeof(lvb_noise_line) && line_size <= 4096;
    Memory lines(line_size_is_good ? kinds.size() * line_size : 1);
    const bool give_lines = !bytes.once_in(4);
    const std::vector<unsigned char> noise_before = noise.copy(), lines_before = lines.copy();

    fuzz::Fault fault(bytes);
    const lvb_link *link_pointer = bytes.once_in(64) ? nullptr : lent.as<const lvb_link>();
    const lvb_status status =
        lvb_compute_noise(link_pointer, conditions_pointer, give_noise ? noise.as<lvb_noise>() : nullptr,
                          give_lines ? lines.as<lvb_noise_line>() : nullptr, line_size, fault.pointer());
    fault.require(status);
    REQUIRE(stages.copy() == stages_before);
    if (status != LVB_OK) {
        REQUIRE(noise.copy() == noise_before && lines.copy() == lines_before);
        return 0;
    }
    const auto told = noise.get<lvb_noise>();
    REQUIRE(told.size == noise_size && noise.is_zero_from(sizeof told));
    require_noise(told, conditions, link.stage_count);
    if (give_lines) require_lines(lines, line_size, link.stage_count, told);

    // The same call again gives the same bytes, and a budget takes the chain too.
    Memory again = fuzz::result<lvb_noise>(noise_size);
    REQUIRE(lvb_compute_noise(link_pointer, conditions_pointer, again.as<lvb_noise>(), nullptr, 0, nullptr) == LVB_OK);
    REQUIRE(again.copy() == noise.copy());
    lvb_budget budget{};
    budget.size = sizeof budget;
    REQUIRE(lvb_compute_budget(link_pointer, &budget, nullptr, 0, nullptr) == LVB_OK);
    return 0;
}
