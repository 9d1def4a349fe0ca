// Limits of power, two systems side by side, coaxial lines: whatever comes, it is refused whole or the sums are right.
#include "fuzz/stages.hpp"
#include "support/link.hpp"

#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

// One call that takes a struct and fills another; gives the result where the call succeeds.
template <class In, class Out, class Call, class Check>
void compute(Bytes &bytes, const In &in, Call call, Check check) {
    Memory lent = fuzz::result<In>(in.size);
    lent.put(in);
    if (!bytes.once_in(16)) lent.zero_from(sizeof in);
    const std::uint32_t size = bytes.size_of(sizeof(Out));
    Memory result = fuzz::result<Out>(size);
    const std::vector<unsigned char> before = result.copy();
    fuzz::Fault fault(bytes);
    const In *from = bytes.once_in(64) ? nullptr : lent.as<const In>();
    Out *to = bytes.once_in(64) ? nullptr : result.as<Out>();
    const lvb_status status = call(from, to, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before);
        return;
    }
    const auto told = result.get<Out>();
    REQUIRE(told.size == size && result.is_zero_from(sizeof told));
    check(told);
}

void compute_line(Bytes &bytes) {
    lvb_coaxial_line line{};
    line.size = bytes.size_of(sizeof line);
    line.stated = bytes.once_in(16) ? bytes.raw<std::uint32_t>() : bytes.below(2);
    line.frequency_mhz = bytes.number(0.1, 300000.0);
    line.inner_diameter_mm = bytes.number(0.01, 20.0);
    line.outer_diameter_mm = bytes.number(1.0, 1000.0);
    line.inner_conductivity = bytes.number(0.001, 1.1);
    line.outer_conductivity = bytes.number(0.001, 1.1);
    line.inner_factor = bytes.number(1.0, 10.0);
    line.outer_factor = bytes.number(1.0, 10.0);
    line.relative_permittivity = bytes.number(1.0, 100.0);
    line.loss_tangent = bytes.number(0.0, 0.1);
    if (line.stated == LVB_STATED_TEMPERATURE) line.temperature_degc = bytes.number(-100.0, 200.0);
    compute<lvb_coaxial_line, lvb_coaxial_properties>(
        bytes, line, lvb_compute_coaxial_line, [](const lvb_coaxial_properties &told) {
            REQUIRE(std::isfinite(told.impedance_ohm) && told.impedance_ohm > 0.0);
            REQUIRE(told.velocity_factor > 0.0 && told.velocity_factor <= 1.0 && told.capacitance_pf_per_m > 0.0);
            REQUIRE(told.conductor_db_per_100m > 0.0 && told.dielectric_db_per_100m >= 0.0);
            REQUIRE(told.attenuation_db_per_100m == told.conductor_db_per_100m + told.dielectric_db_per_100m);
            REQUIRE(std::isfinite(told.attenuation_db_per_100m) && told.cutoff_mhz > 0.0);
            REQUIRE((told.notes & ~std::uint32_t{LVB_NOTE_ABOVE_CUTOFF | LVB_NOTE_DEEP_SKIN}) == 0);
        });
}

void compute_neighbours(Bytes &bytes) {
    lvb_neighbours in{};
    in.size = bytes.size_of(sizeof in);
    in.transmit_dbm = bytes.number(-200.0, 150.0);
    const bool measured = bytes.once_in(4);
    if (measured) in.coupling_loss_db = bytes.number(0.0, 250.0);
    if (!measured || bytes.once_in(16)) {
        in.transmit_gain_dbi = bytes.number(-100.0, 60.0);
        in.receive_gain_dbi = bytes.number(-100.0, 60.0);
        in.separation_m = bytes.number(0.01, 1000.0);
        in.transmit_mhz = bytes.number(0.1, 6000.0);
        in.receive_mhz = bytes.number(0.1, 6000.0);
    }
    in.receive_loss_db = bytes.number(0.0, 200.0);
    in.receive_filter_db = bytes.number(0.0, 200.0);
    in.stated = bytes.once_in(16) ? bytes.raw<std::uint32_t>() : bytes.below(8) * LVB_STATED_BLOCKING;
    if ((in.stated & LVB_STATED_BLOCKING) != 0) {
        in.blocking_dbm = bytes.number(-200.0, 150.0);
        in.wanted_margin_db = bytes.number(0.0, 100.0);
    }
    if ((in.stated & LVB_STATED_TRANSMIT_NOISE) != 0) in.transmit_noise_dbm = bytes.number(-300.0, 150.0);
    else if (bytes.once_in(2)) {
        in.transmit_noise_dbc_per_hz = bytes.number(-250.0, -1.0);
        in.receiver_bandwidth_mhz = bytes.number(1e-6, 1000.0);
    }
    if (bytes.once_in(2)) in.transmit_filter_db = bytes.number(0.0, 200.0);
    if ((in.stated & LVB_STATED_RECEIVER_NOISE) != 0) {
        in.receiver_noise_dbm = bytes.number(-250.0, 150.0);
        in.wanted_rise_db = bytes.number(0.01, 100.0);
    }
    if (bytes.once_in(16)) in.wanted_margin_db = bytes.any_number();
    if (bytes.once_in(16)) in.receiver_noise_dbm = bytes.any_number();
    compute<lvb_neighbours, lvb_coexistence>(bytes, in, lvb_compute_coexistence, [&](const lvb_coexistence &told) {
        REQUIRE(std::isfinite(told.coupling_loss_db) && std::isfinite(told.noise_coupling_loss_db));
        REQUIRE(std::isfinite(told.blocker_dbm));
        REQUIRE((told.notes & ~std::uint32_t{LVB_NOTE_NEAR_FIELD}) == 0);
        const bool blocking = !fuzz::is_nan(told.blocking_margin_db), rise = !fuzz::is_nan(told.noise_rise_db);
        REQUIRE(blocking == ((in.stated & LVB_STATED_BLOCKING) != 0));
        REQUIRE(blocking == (told.more_receive_filter_db >= 0.0));
        REQUIRE(rise == (told.more_transmit_filter_db >= 0.0) && (!rise || told.noise_rise_db >= 0.0));
        const bool distances = in.coupling_loss_db == 0.0;
        REQUIRE((told.blocking_separation_m > 0.0) == (blocking && distances));
        REQUIRE((told.noise_separation_m > 0.0) == (rise && distances));
    });
}

void check_limit(Bytes &bytes) {
    fuzz::Lenders lenders;
    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    Memory stages(kinds.size() * sizeof(lvb_stage));
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        if (bytes.once_in(24)) fuzz::spoil(bytes, stage, lenders);
        stages.put(stage, i * sizeof stage);
    }
    lvb_link link{};
    link.size = sizeof link;
    link.stage_size = sizeof(lvb_stage);
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    link.stages = stages.as<const lvb_stage>();
    link.frequency_mhz = bytes.number(30.0, 3000.0);
    if (support::has_air(link)) link.far_distance_m = bytes.number(0.01, 1000.0);

    lvb_limit limit{};
    limit.size = bytes.size_of(sizeof limit);
    limit.quantity = bytes.once_in(16) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(1 + bytes.below(4));
    limit.limit_dbm = bytes.number(-200.0, 150.0);
    limit.lowest_mhz = bytes.once_in(2) ? bytes.number(0.001, 3000.0) : 0.0;
    limit.highest_mhz = bytes.once_in(2) ? bytes.number(0.001, 3000.0) : 0.0;
    const lvb_link *lent = bytes.once_in(64) ? nullptr : &link;
    compute<lvb_limit, lvb_limit_result>(
        bytes, limit,
        [&](const lvb_limit *in, lvb_limit_result *out, lvb_fault *fault) {
            return lvb_check_limit(lent, in, out, fault);
        },
        [&](const lvb_limit_result &told) {
            REQUIRE(fuzz::known(lvb_limit_verdict_name(told.verdict)) &&
                    fuzz::known(lvb_quantity_name(limit.quantity)));
            REQUIRE(std::isfinite(told.level_dbm) && told.worst_db >= 0.0);
            REQUIRE(std::isfinite(told.transmitter_output_dbm));
            REQUIRE(fuzz::is_nan(told.erp_dbm) == fuzz::is_nan(told.eirp_dbm));
            REQUIRE(fuzz::is_nan(told.antenna_input_dbm) == fuzz::is_nan(told.eirp_dbm));
            lvb_budget budget{};
            budget.size = sizeof budget;
            REQUIRE(lvb_compute_budget(lent, &budget, nullptr, 0, nullptr) == LVB_OK);
            REQUIRE(fuzz::is_nan(told.eirp_dbm) ? fuzz::is_nan(budget.eirp_dbm) : told.eirp_dbm == budget.eirp_dbm);
            if (limit.quantity == LVB_QUANTITY_EIRP) REQUIRE(told.worst_db == budget.eirp_worst_db);
            REQUIRE(fuzz::is_nan(told.room_db) == (told.verdict == LVB_LIMIT_NOT_COVERED));
            if (told.verdict == LVB_LIMIT_EXCEEDED) REQUIRE(told.room_db < 0.0);
            if (told.verdict == LVB_LIMIT_HOLDS) REQUIRE(told.room_db - told.worst_db > -1e-8);
            if (told.verdict == LVB_LIMIT_DOUBTFUL) REQUIRE(told.room_db > -1e-8 && told.worst_db > 0.0);
        });
}

void describe(Bytes &bytes) {
    const std::uint32_t index = bytes.once_in(4) ? bytes.raw<std::uint32_t>() : bytes.below(lvb_limit_rule_count() + 2);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_limit_rule));
    Memory rule = fuzz::result<lvb_limit_rule>(size);
    const std::vector<unsigned char> before = rule.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status =
        lvb_describe_limit_rule(index, bytes.once_in(64) ? nullptr : rule.as<lvb_limit_rule>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) REQUIRE(rule.copy() == before);
    else {
        const auto told = rule.get<lvb_limit_rule>();
        REQUIRE(told.size == size && rule.is_zero_from(sizeof told) && fuzz::known(lvb_quantity_name(told.quantity)));
        REQUIRE(told.lowest_mhz < told.highest_mhz && told.power_mw > 0.0);
    }
    const bool shown = index < lvb_caution_count();
    REQUIRE((std::strlen(lvb_caution_text(index)) > 0) == shown);
    const auto exposure = static_cast<std::int32_t>(bytes.below(4)),
               audience = static_cast<std::int32_t>(bytes.below(4));
    const double limit = lvb_exposure_limit_w_per_m2(exposure, audience, bytes.number(30.0, 300000.0));
    REQUIRE(fuzz::is_nan(limit) || (limit >= 2.0 && limit <= 50.0));
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(4)) {
    case 0:
        compute_line(bytes);
        break;
    case 1:
        compute_neighbours(bytes);
        break;
    case 2:
        check_limit(bytes);
        break;
    default:
        describe(bytes);
        break;
    }
    return 0;
}
