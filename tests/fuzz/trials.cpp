// lvb_compute_trials with chains, laws and fading of every kind, what they come to, and quantiles of their levels:
// refused whole, or levels that are counted as they lie.
#include "fuzz/stages.hpp"

#include <algorithm>
#include <cmath>

namespace {

using fuzz::Bytes;
using fuzz::Memory;

struct Limits {
    double floor = -HUGE_VAL, ceiling = HUGE_VAL;
};

void require_tally(const lvb_tally &tally, const double *far, const double *near, std::size_t count,
                   const Limits &limits) {
    std::uint64_t far_below = 0, far_above = 0, near_below = 0, near_above = 0, inside = 0;
    for (std::size_t i = 0; i < count; ++i) {
        REQUIRE(!fuzz::is_nan(far[i]) && !fuzz::is_nan(near[i]));
        const bool holds =
            far[i] >= limits.floor && far[i] <= limits.ceiling && near[i] >= limits.floor && near[i] <= limits.ceiling;
        far_below += far[i] < limits.floor;
        far_above += far[i] > limits.ceiling;
        near_below += near[i] < limits.floor;
        near_above += near[i] > limits.ceiling;
        inside += holds;
    }
    REQUIRE(tally.trials == count && tally.reserved == 0 && tally.inside == inside);
    REQUIRE(tally.far_below == far_below && tally.far_above == far_above);
    REQUIRE(tally.near_below == near_below && tally.near_above == near_above);
}

// Of an element; a wrong one is too small, for the array holds no more.
std::uint32_t fuzz_size(Bytes &bytes) {
    constexpr std::uint32_t right = sizeof(lvb_tally);
    return bytes.once_in(32) ? bytes.byte() % right : right;
}

void require_sureness(Bytes &bytes, const lvb_tally &tally) {
    lvb_tally tallies[2] = {tally, tally};
    constexpr std::uint64_t lvb_tally::*counts[] = {
        &lvb_tally::trials,           &lvb_tally::inside,          &lvb_tally::far_below,
        &lvb_tally::far_above,        &lvb_tally::near_below,      &lvb_tally::near_above,
        &lvb_tally::far_squares_high, &lvb_tally::far_squares_low, &lvb_tally::near_squares_high,
        &lvb_tally::near_squares_low};
    for (const auto count : counts) {
        if (!bytes.once_in(12)) continue;
        lvb_tally &spoilt = tallies[bytes.below(2)];
        spoilt.*count = bytes.once_in(2) ? bytes.raw<std::uint64_t>() : spoilt.*count + bytes.below(3) - 1;
    }
    for (const auto sum : {&lvb_tally::far_sum, &lvb_tally::near_sum})
        if (bytes.once_in(8)) tallies[0].*sum = tallies[1].*sum = bytes.raw<std::int64_t>();
    for (const auto level : {&lvb_tally::far_level_dbm, &lvb_tally::near_level_dbm}) {
        if (bytes.once_in(8)) tallies[1].*level = bytes.any_number();
        if (bytes.once_in(8)) tallies[0].*level = tallies[1].*level; // both the same, whatever that is
    }
    if (bytes.once_in(32)) tallies[bytes.below(2)].reserved = bytes.byte();
    const std::uint32_t declared = bytes.size_of(sizeof(lvb_sureness));
    Memory result = fuzz::result<lvb_sureness>(declared);
    const std::vector<unsigned char> before = result.copy();
    fuzz::Fault fault(bytes);
    const std::uint32_t count = bytes.below(3), size = fuzz_size(bytes);
    const lvb_status status = lvb_compute_sureness(tallies, count, size, result.as<lvb_sureness>(), fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before);
        return;
    }
    const auto told = result.get<lvb_sureness>();
    for (const auto &[p, error] : {std::pair{told.inside_probability, told.inside_error},
                                   std::pair{told.far_below_probability, told.far_below_error},
                                   std::pair{told.near_above_probability, told.near_above_error}})
        REQUIRE(p >= 0.0 && p <= 1.0 && error > 0.0 && error < 0.5);
    REQUIRE(told.trials < 2 || (told.far_standard_deviation_db >= 0.0 && told.near_standard_deviation_db >= 0.0));
    REQUIRE(!fuzz::is_nan(told.far_mean_dbm) && !fuzz::is_nan(told.near_mean_dbm));
    REQUIRE(told.inside_probability + told.far_below_probability + told.far_above_probability < 1.0 + 1e-12);
    REQUIRE(told.inside_probability + told.near_below_probability + told.near_above_probability < 1.0 + 1e-12);
    REQUIRE(result.is_zero_from(sizeof told));
}

void require_quantiles(Bytes &bytes, double *levels, std::size_t count) {
    std::vector<double> sorted(levels, levels + count);
    std::sort(sorted.begin(), sorted.end());
    if (bytes.once_in(16)) levels[bytes.below(static_cast<std::uint32_t>(count))] = bytes.any_number();
    const bool changed = !std::is_permutation(sorted.begin(), sorted.end(), levels);
    lvb_quantile asked[3] = {};
    for (lvb_quantile &one : asked) one.probability = bytes.once_in(16) ? bytes.any_number() : bytes.between(0.0, 1.0);
    fuzz::Fault fault(bytes);
    const std::size_t level_count = bytes.once_in(64) ? 0 : count;
    const std::uint32_t asked_count = bytes.below(4), asked_size = bytes.once_in(64) ? bytes.byte() : sizeof asked[0];
    const lvb_status status =
        lvb_compute_quantiles(levels, level_count, asked, asked_count, asked_size, fault.pointer());
    fault.require(status);
    if (status != LVB_OK || changed) return;
    REQUIRE(std::is_permutation(sorted.begin(), sorted.end(), levels));
    if (asked[0].error_db == 0.0 && asked[0].level_dbm == 0.0) return; // none was asked, or all are alike
    const double rank = std::ceil(asked[0].probability * static_cast<double>(count));
    REQUIRE(asked[0].level_dbm == sorted[rank < 1.0 ? 0 : static_cast<std::size_t>(rank) - 1]);
    REQUIRE(asked[0].error_db >= 0.0);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size) {
    Bytes bytes(data, size);
    fuzz::Lenders lenders;
    const std::vector<std::int32_t> kinds = fuzz::make_kinds(bytes);
    Memory stages(kinds.size() * sizeof(lvb_stage));
    std::vector<lvb_spread> spreads(kinds.size());
    Limits limits;
    bool air = false;
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        lvb_stage stage = fuzz::make_stage(bytes, kinds[i], lenders);
        if (bytes.once_in(2)) stage.tolerance_db = bytes.between(0.0, 6.0);
        if (bytes.once_in(48)) fuzz::spoil(bytes, stage, lenders);
        air = air || stage.kind == LVB_KIND_AIR;
        if ((stage.stated & LVB_STATED_FLOOR) != 0) limits.floor = stage.floor_dbm;
        if ((stage.stated & LVB_STATED_CEILING) != 0) limits.ceiling = stage.ceiling_dbm;
        stages.put(stage, i * sizeof stage);
        spreads[i].law = bytes.once_in(128) ? bytes.byte() : static_cast<std::int32_t>(bytes.below(4));
        if (spreads[i].law == LVB_LAW_NORMAL || bytes.once_in(128))
            spreads[i].coverage_factor = bytes.number(1.0, 10.0);
    }
    lvb_link link{};
    link.size = sizeof link;
    link.frequency_mhz = bytes.between(30.0, 3000.0);
    if (air) link.far_distance_m = bytes.number(0.01, 1000.0);
    link.stages = stages.as<const lvb_stage>();
    link.stage_count = static_cast<std::uint32_t>(kinds.size());
    link.stage_size = sizeof(lvb_stage);

    lvb_trials trials{};
    trials.size = bytes.size_of(sizeof trials);
    trials.instructions = bytes.once_in(32) ? bytes.byte() : std::int32_t{LVB_INSTRUCTIONS_BASELINE};
    trials.link = bytes.once_in(255) ? nullptr : &link;
    trials.spread_count = bytes.once_in(64) ? bytes.byte() : bytes.once_in(3) ? 0 : link.stage_count;
    if (trials.spread_count > link.stage_count) trials.spread_count = link.stage_count + 1; // refused by its count
    trials.spread_size = bytes.once_in(255) ? bytes.byte() % sizeof(lvb_spread) : sizeof(lvb_spread);
    trials.spreads = bytes.once_in(255) || trials.spread_count == 0 ? nullptr : spreads.data();
    trials.user = reinterpret_cast<const void *>(std::uintptr_t{bytes.byte()}); // never read
    if (air || bytes.once_in(32)) {
        trials.fading = bytes.once_in(64) ? bytes.byte() : static_cast<std::int32_t>(bytes.below(4));
        if (trials.fading == LVB_FADING_RICE || bytes.once_in(64)) trials.rice_factor_db = bytes.number(-100.0, 100.0);
        if (trials.fading == LVB_FADING_NAKAGAMI || bytes.once_in(64)) trials.nakagami_shape = bytes.number(0.5, 100.0);
        if (bytes.once_in(2)) trials.shadowing_db = bytes.number(0.0, 50.0);
    }
    trials.seed = bytes.raw<std::uint64_t>();
    trials.first_trial = bytes.once_in(8) ? bytes.raw<std::uint64_t>() >> bytes.below(40) : bytes.byte();
    const std::size_t count = 1 + bytes.below(400);
    trials.trial_count = bytes.once_in(64) ? 0 : count;
    Memory far(count * sizeof(double)), near(count * sizeof(double));
    const bool lends_far = !bytes.once_in(16), lends_near = !bytes.once_in(16);
    if (lends_far) trials.far_dbm = far.as<double>();
    if (lends_near) trials.near_dbm = near.as<double>();
    Memory request = fuzz::result<lvb_trials>(trials.size);
    request.put(trials);
    request.zero_from(sizeof trials);

    const std::uint32_t declared = bytes.size_of(sizeof(lvb_tally));
    Memory result = fuzz::result<lvb_tally>(declared);
    lvb_tally *tally = bytes.once_in(32) ? nullptr : result.as<lvb_tally>();
    const std::vector<unsigned char> before = result.copy(), far_before = far.copy(), near_before = near.copy();
    fuzz::Fault fault(bytes);
    const lvb_status status = lvb_compute_trials(request.as<lvb_trials>(), tally, fault.pointer());
    fault.require(status);
    if (status != LVB_OK) {
        REQUIRE(result.copy() == before && far.copy() == far_before && near.copy() == near_before);
        return 0;
    }
    if (tally == nullptr || !lends_far || !lends_near) return 0;
    REQUIRE(result.get<lvb_tally>().size == declared && result.is_zero_from(sizeof(lvb_tally)));
    require_tally(result.get<lvb_tally>(), far.as<double>(), near.as<double>(), count, limits);
    lvb_tally counted = result.get<lvb_tally>();
    counted.size = sizeof counted;
    require_sureness(bytes, counted);
    require_quantiles(bytes, far.as<double>(), count);
    return 0;
}
