// Sweeps, solutions, rankings and comparisons of chains of every kind: refused whole, or answers that agree with the
// budget.
#include "fuzz/stages.hpp"
#include "support/link.hpp"
#include "support/solving.hpp"

#include <cmath>
#include <string>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

// A link that a fuzzer made, with its stages and what they borrow.
struct Made {
    fuzz::Lenders lenders;
    Memory stages{1}, lent{1};
    lvb_link link{};

    // Labels are read by comparisons only: elsewhere they point anywhere.
    Made(Bytes &bytes, bool labels) {
        static const char *const names[] = {nullptr, "", "pad", "pad 2", "north"};
        const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
        stages = Memory(kinds.size() * sizeof(lvb_stage));
        bool air = false;
        for (std::size_t i = 0; i < kinds.size(); ++i) {
            lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
            if (bytes.once_in(48)) fuzz::spoil(bytes, stage, lenders);
            stage.label = labels ? names[bytes.below(5)] : reinterpret_cast<const char *>(std::uintptr_t{bytes.byte()});
            air = air || stage.kind == LVB_KIND_AIR;
            stages.put(stage, i * sizeof stage);
        }
        link.size = bytes.size_of(sizeof link);
        link.frequency_mhz = bytes.between(30.0, 3000.0);
        if (air) link.far_distance_m = bytes.number(0.01, 1000.0);
        if (air && bytes.once_in(2)) link.near_distance_m = bytes.number(0.01, 100.0);
        if (bytes.once_in(3)) {
            link.stated = LVB_STATED_TEMPERATURE;
            link.temperature_degc = bytes.number(-100.0, 200.0);
        }
        link.stages = stages.as<const lvb_stage>();
        link.stage_count = static_cast<std::uint32_t>(kinds.size());
        link.stage_size = sizeof(lvb_stage);
        lent = fuzz::result<lvb_link>(link.size);
        lent.put(link);
        lent.zero_from(sizeof link);
        link.size = sizeof link;
    }
    const lvb_link *pointer(Bytes &bytes) const {
        return bytes.once_in(64) ? nullptr : const_cast<Memory &>(lent).as<const lvb_link>();
    }
    lvb_budget budget() const {
        lvb_budget budget{};
        budget.size = sizeof budget;
        REQUIRE(lvb_compute_budget(&link, &budget, nullptr, 0, nullptr) == LVB_OK);
        return budget;
    }
};

// One call that fills a result of some declared size; gives whether it succeeded.
template <class Out, class Call>
bool compute(Bytes &bytes, Memory &result, std::uint32_t size, Call call) {
    const std::vector<unsigned char> before = result.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = call(bytes.once_in(64) ? nullptr : result.as<Out>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before);
        return false;
    }
    std::uint32_t told;
    std::memcpy(&told, before.data(), sizeof told);
    REQUIRE(result.get<std::uint32_t>() == size && told == size && result.is_zero_from(sizeof(Out)));
    return true;
}
template <class In>
Memory lend(Bytes &bytes, const In &in) {
    Memory lent = fuzz::result<In>(in.size);
    lent.put(in);
    if (!bytes.once_in(16)) lent.zero_from(sizeof in);
    return lent;
}

void require_order(const lvb_extreme &low, const lvb_extreme &high) {
    REQUIRE(fuzz::is_nan(low.value) == fuzz::is_nan(high.value));
    REQUIRE(fuzz::is_nan(low.value) || low.value <= high.value);
    REQUIRE(fuzz::is_nan(low.value) == fuzz::is_nan(low.frequency_mhz));
}

void sweep(Bytes &bytes) {
    const Made made(bytes, false);
    const std::size_t frequencies = 1 + bytes.below(5), distances = bytes.below(5);
    Memory mhz(frequencies * sizeof(double)), metres(distances * sizeof(double) + 1);
    for (std::size_t i = 0; i < frequencies; ++i)
        mhz.put(bytes.once_in(32) ? bytes.any_number() : bytes.between(30.0, 3000.0), i * sizeof(double));
    for (std::size_t i = 0; i < distances; ++i)
        metres.put(bytes.once_in(32) ? bytes.any_number() : bytes.between(0.01, 1000.0), i * sizeof(double));
    Memory margins(frequencies * sizeof(double)), headrooms(frequencies * sizeof(double));
    lvb_sweep in{};
    in.size = bytes.size_of(sizeof in);
    if (bytes.once_in(64)) in.reserved = bytes.byte();
    in.frequency_count = frequencies;
    in.distance_count = distances;
    in.link = made.pointer(bytes);
    if (bytes.once_in(2)) in.frequency_mhz = mhz.as<const double>();
    else in.first_mhz = bytes.number(0.1, 3000.0), in.last_mhz = bytes.number(0.1, 3000.0);
    if (bytes.once_in(64)) in.last_mhz = bytes.number(0.1, 3000.0);
    if (bytes.once_in(2) && distances != 0) in.distance_m = metres.as<const double>();
    if (bytes.once_in(2)) in.lowest_margin_db = margins.as<double>();
    if (bytes.once_in(2)) in.lowest_headroom_db = headrooms.as<double>();
    if (bytes.once_in(64)) in.lowest_headroom_db = margins.as<double>();
    // counts without memory behind them are only given where they must be refused
    if (bytes.once_in(64)) in.frequency_count = bytes.once_in(2) ? 0 : std::uint64_t{LVB_MAX_VALUES} + bytes.byte() + 1;
    if (bytes.once_in(64)) in.distance_count = std::uint64_t{LVB_MAX_VALUES} + bytes.byte() + 1;
    const Memory lent = lend(bytes, in);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_sweep_result));
    Memory result = fuzz::result<lvb_sweep_result>(size);
    const std::vector<unsigned char> margins_before = margins.copy(), headrooms_before = headrooms.copy();
    const bool null = bytes.once_in(64);
    if (!compute<lvb_sweep_result>(bytes, result, size, [&](lvb_sweep_result *out, lvb_fault *fault) {
            return lvb_compute_sweep(null ? nullptr : const_cast<Memory &>(lent).as<const lvb_sweep>(), out, fault);
        })) {
        REQUIRE(margins.copy() == margins_before && headrooms.copy() == headrooms_before);
        return;
    }
    const auto told = result.get<lvb_sweep_result>();
    REQUIRE(fuzz::known(lvb_verdict_name(told.verdict)));
    require_order(told.lowest_margin, told.highest_margin);
    require_order(told.lowest_headroom, told.highest_headroom);
    require_order(told.lowest_eirp, told.highest_eirp);
    REQUIRE(!fuzz::is_nan(told.lowest_level.value) && !fuzz::is_nan(told.highest_level.value));
    REQUIRE(told.far_worst_db >= told.near_worst_db && told.near_worst_db >= 0.0);
    if (told.verdict == LVB_VERDICT_DROPS_OUT) REQUIRE(told.lowest_margin.value < 0.0);
    if (told.verdict == LVB_VERDICT_OVERLOADS) REQUIRE(told.lowest_headroom.value < 0.0);
    for (std::size_t i = 0; i < frequencies && in.lowest_margin_db != nullptr; ++i) {
        const auto margin = margins.get<double>(i * sizeof(double));
        REQUIRE(fuzz::is_nan(margin) || margin >= told.lowest_margin.value);
    }
}

double figure_of(const lvb_budget &b, const lvb_solve &in) { return support::goal_of(b, in.goal, in.tolerances); }

double &member_of(Made &made, lvb_stage &stage, const lvb_solve &in) {
    return in.structure == LVB_STRUCT_LINK ? support::link_field(made.link, in.field)
                                           : support::stage_field(stage, in.field);
}

void solve(Bytes &bytes) {
    static const std::int32_t fields[] = {
        LVB_FIELD_FREQUENCY_MHZ,     LVB_FIELD_FAR_DISTANCE_M, LVB_FIELD_NEAR_DISTANCE_M, LVB_FIELD_TEMPERATURE_DEGC,
        LVB_FIELD_LEVEL_DBM,         LVB_FIELD_GAIN_DB,        LVB_FIELD_TOLERANCE_DB,    LVB_FIELD_LENGTH_M,
        LVB_FIELD_CONNECTOR_LOSS_DB, LVB_FIELD_FLOOR_DBM,      LVB_FIELD_WANTED_LOW_DBM,  LVB_FIELD_WANTED_HIGH_DBM,
        LVB_FIELD_CEILING_DBM};
    Made made(bytes, false);
    lvb_solve in{};
    in.size = bytes.size_of(sizeof in);
    const std::uint32_t which = bytes.below(13);
    in.field = bytes.once_in(32) ? bytes.raw<std::int32_t>() : fields[which];
    in.structure = bytes.once_in(32) ? bytes.raw<std::int32_t>() : which < 4 ? LVB_STRUCT_LINK : LVB_STRUCT_STAGE;
    if (which >= 4 || bytes.once_in(32))
        in.stage_index = bytes.below(made.link.stage_count + (bytes.once_in(16) ? 2 : 0));
    in.goal = bytes.once_in(32) ? bytes.raw<std::int32_t>() : static_cast<std::int32_t>(1 + bytes.below(8));
    in.tolerances = bytes.once_in(3) ? static_cast<std::int32_t>(bytes.below(4)) : 0;
    in.link = made.pointer(bytes);
    in.wanted = bytes.once_in(8) ? bytes.number(-1000.0, 1000.0) : bytes.between(-100.0, 100.0);
    const Memory lent = lend(bytes, in);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_solution));
    Memory result = fuzz::result<lvb_solution>(size);
    const bool null = bytes.once_in(64);
    if (!compute<lvb_solution>(bytes, result, size, [&](lvb_solution *out, lvb_fault *fault) {
            return lvb_compute_solution(null ? nullptr : const_cast<Memory &>(lent).as<const lvb_solve>(), out, fault);
        }))
        return;
    const auto told = result.get<lvb_solution>();
    REQUIRE(told.outcome >= LVB_SOLUTION_FOUND && told.outcome <= LVB_SOLUTION_NOT_STEADY && told.reserved == 0);
    REQUIRE(told.lowest <= told.highest && fuzz::known(lvb_field_name(told.bound_field)) == (told.bound_field != 0));
    REQUIRE(!fuzz::is_nan(told.reached) && told.reached_entered == figure_of(made.budget(), in));
    const bool valued = told.outcome <= LVB_SOLUTION_AT_HIGHEST;
    REQUIRE(valued != fuzz::is_nan(told.value));
    if (!valued) return;
    REQUIRE(told.value >= told.lowest && told.value <= told.highest && told.missing_db == in.wanted - told.reached);
    if (told.outcome != LVB_SOLUTION_FOUND)
        REQUIRE(told.value == (told.outcome == LVB_SOLUTION_AT_LOWEST ? told.lowest : told.highest));
    // entered, the budget takes it and gives what was told
    lvb_stage stage = made.stages.get<lvb_stage>(in.stage_index * sizeof(lvb_stage));
    member_of(made, stage, in) = told.value;
    made.stages.put(stage, in.stage_index * sizeof(lvb_stage));
    REQUIRE(figure_of(made.budget(), in) == told.reached);
}

void rank(Bytes &bytes) {
    const Made made(bytes, false);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_ranking)), step = bytes.size_of(sizeof(lvb_contribution));
    Memory result = fuzz::result<lvb_ranking>(size);
    const bool step_is_good = step >= sizeof(lvb_contribution) && step <= 4096;
    Memory lines(step_is_good ? made.link.stage_count * step : 1);
    const bool give_lines = !bytes.once_in(4);
    const std::vector<unsigned char> before = lines.copy();
    const lvb_link *lent = made.pointer(bytes);
    if (!compute<lvb_ranking>(bytes, result, size, [&](lvb_ranking *out, lvb_fault *fault) {
            return lvb_compute_ranking(lent, out, give_lines ? lines.as<lvb_contribution>() : nullptr, step, fault);
        })) {
        REQUIRE(lines.copy() == before);
        return;
    }
    const auto told = result.get<lvb_ranking>();
    const auto count = static_cast<std::int32_t>(made.link.stage_count);
    for (const std::int32_t stage :
         {told.loss_stage, told.variance_stage, told.help_stage, told.measure_stage, told.look_up_stage})
        REQUIRE(stage >= -1 && stage < count);
    REQUIRE(told.loss_db >= 0.0 && told.gain_db >= 0.0 && told.help_db >= 0.0);
    REQUIRE(told.measure_worst_db >= 0.0 && told.measure_rss_db >= 0.0);
    if (!give_lines) return;
    for (std::uint32_t i = 0; i < made.link.stage_count; ++i) {
        const auto line = lines.get<lvb_contribution>(std::size_t{i} * step);
        for (const std::uint32_t rank : {line.loss_rank, line.variance_rank, line.help_rank})
            REQUIRE(rank >= 1 && rank <= made.link.stage_count);
        REQUIRE(fuzz::is_nan(line.loss_share) || (line.loss_share >= 0.0 && line.loss_share <= 1.0));
        REQUIRE(line.help_db <= told.help_db);
        for (std::size_t tail = sizeof line; tail < step; ++tail)
            REQUIRE(lines.get<unsigned char>(std::size_t{i} * step + tail) == 0);
    }
}

void compare(Bytes &bytes) {
    const Made first(bytes, true), second(bytes, true);
    const std::uint64_t room = lvb_comparison_scratch_bytes(first.link.stage_count, second.link.stage_count);
    REQUIRE(room == std::uint64_t{first.link.stage_count} * second.link.stage_count);
    Memory scratch(room);
    lvb_compare in{};
    in.size = bytes.size_of(sizeof in);
    in.pair_size = bytes.size_of(sizeof(lvb_pair));
    const bool step_is_good = in.pair_size >= sizeof(lvb_pair) && in.pair_size <= 4096;
    Memory pairs(step_is_good ? (first.link.stage_count + second.link.stage_count) * in.pair_size : 1);
    in.first = first.pointer(bytes);
    in.second = second.pointer(bytes);
    in.scratch = bytes.once_in(64) ? nullptr : scratch.as<std::uint8_t>();
    in.scratch_bytes = room;
    const bool short_of_room = room > 0 && bytes.once_in(64);
    if (short_of_room) in.scratch_bytes = bytes.below(static_cast<std::uint32_t>(room));
    in.pairs = bytes.once_in(4) ? nullptr : pairs.as<lvb_pair>();
    if (in.pairs == nullptr && !bytes.once_in(8)) in.pair_size = 0;
    const Memory lent = lend(bytes, in);
    const std::uint32_t size = bytes.size_of(sizeof(lvb_comparison));
    Memory result = fuzz::result<lvb_comparison>(size);
    const std::vector<unsigned char> scratch_before = scratch.copy(), before = pairs.copy();
    const bool null = bytes.once_in(64);
    if (!compute<lvb_comparison>(bytes, result, size, [&](lvb_comparison *out, lvb_fault *fault) {
            return lvb_compute_comparison(null ? nullptr : const_cast<Memory &>(lent).as<const lvb_compare>(), out,
                                          fault);
        })) {
        REQUIRE(scratch.copy() == scratch_before && pairs.copy() == before);
        return;
    }
    REQUIRE(!short_of_room);
    const auto told = result.get<lvb_comparison>();
    REQUIRE(told.by_label + told.by_kind + told.first_only + told.second_only == told.pair_count && told.reserved == 0);
    REQUIRE(told.by_label + told.by_kind + told.first_only == first.link.stage_count);
    REQUIRE(told.by_label + told.by_kind + told.second_only == second.link.stage_count);
    REQUIRE(told.by_label + told.by_kind >= 1); // the sources at least
    REQUIRE(told.largest_pair >= -1 && told.largest_pair < static_cast<std::int32_t>(told.pair_count));
    if (in.pairs == nullptr) return;
    std::int32_t a = 0, b = 0;
    for (std::uint32_t i = 0; i < told.pair_count; ++i) {
        const auto pair = pairs.get<lvb_pair>(std::size_t{i} * in.pair_size);
        REQUIRE(pair.first_stage == (pair.matched == LVB_PAIR_SECOND_ONLY ? -1 : a++));
        REQUIRE(pair.second_stage == (pair.matched == LVB_PAIR_FIRST_ONLY ? -1 : b++));
    }
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    switch (bytes.below(4)) {
    case 0:
        sweep(bytes);
        break;
    case 1:
        solve(bytes);
        break;
    case 2:
        rank(bytes);
        break;
    default:
        compare(bytes);
    }
    return 0;
}
