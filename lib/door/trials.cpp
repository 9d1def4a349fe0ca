// Trials of a link, what they come to, and quantiles of their levels.
#include "decide/trials.hpp"
#include "door/check_chain.hpp"
#include "door/fields.hpp"
#include "door/instructions.hpp"
#include "door/many.hpp"
#include "math/bits.hpp"

namespace lvb::door {
namespace {

using math::piece;
using math::LVB_KERNEL::bits_of;

static_assert(static_cast<int>(math::Law::arc_sine) == LVB_LAW_ARC_SINE);
static_assert(static_cast<int>(decide::Fading::nakagami) == LVB_FADING_NAKAGAMI);

constexpr Range coverage_range{1.0, 10.0, false};
constexpr Range factor_range{-100.0, 100.0, false};
constexpr Range shape_range{0.5, 100.0, true};
constexpr Range shadowing_range{0.0, 50.0, false};
constexpr Range probability_range{0.0, 1.0, false};
constexpr double usual_coverage_factor = 2.0;
constexpr std::uint64_t largest_first_trial = std::uint64_t{1} << 52, largest_total = std::uint64_t{1} << 32;
constexpr std::uint32_t most_tallies = 65536;

// ---- Trials.

struct Asked {
    lvb_trials in;
    const math::Loops *loops;
    chain::Window window;
    decide::Levels levels;
    decide::Spread spreads[LVB_MAX_STAGES + 1]; ///< of stages with a tolerance, and shadowing
    decide::Trials trials;
};

bool check_frame(Refusal &refusal, const lvb_trials &in, const math::Loops *&loops) noexcept {
    const Place place{LVB_STRUCT_TRIALS};
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (!check_lent(refusal,
                    {in.spreads, in.spread_count, in.spread_size, LVB_FIELD_SPREADS, LVB_FIELD_SPREAD_COUNT,
                     LVB_FIELD_SPREAD_SIZE},
                    sizeof(lvb_spread), LVB_MAX_STAGES, place))
        return false;
    if (in.trial_count == 0)
        return refuse(refusal, LVB_E_MISSING, place, LVB_FIELD_TRIAL_COUNT, 0.0, 1.0, LVB_MAX_VALUES);
    if (in.trial_count > LVB_MAX_VALUES)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_TRIAL_COUNT, static_cast<double>(in.trial_count), 1.0,
                      LVB_MAX_VALUES);
    if (in.first_trial > largest_first_trial)
        return refuse(refusal, LVB_E_ABOVE_RANGE, place, LVB_FIELD_FIRST_TRIAL, static_cast<double>(in.first_trial),
                      0.0, static_cast<double>(largest_first_trial));
    return choose_loops(refusal, in.instructions, in.trial_count, place, loops);
}

// Fading with the numbers that belong to it, and only these.
bool check_fading(Refusal &refusal, const lvb_trials &in, bool has_air) noexcept {
    const Place place{LVB_STRUCT_TRIALS};
    if (in.fading < LVB_FADING_NONE || in.fading > LVB_FADING_NAKAGAMI)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_FADING, in.fading, LVB_FADING_NONE,
                      LVB_FADING_NAKAGAMI);
    if (in.fading != LVB_FADING_RICE && in.rice_factor_db != 0.0)
        return refuse_unused(refusal, in.rice_factor_db, place, LVB_FIELD_RICE_FACTOR_DB);
    if (in.fading != LVB_FADING_NAKAGAMI && in.nakagami_shape != 0.0)
        return refuse_unused(refusal, in.nakagami_shape, place, LVB_FIELD_NAKAGAMI_SHAPE);
    if (!check_field(refusal, in.rice_factor_db, factor_range, place, LVB_FIELD_RICE_FACTOR_DB) ||
        !check_field(refusal, in.shadowing_db, shadowing_range, place, LVB_FIELD_SHADOWING_DB) ||
        (in.fading == LVB_FADING_NAKAGAMI &&
         !check_field(refusal, in.nakagami_shape, shape_range, place, LVB_FIELD_NAKAGAMI_SHAPE)))
        return false;
    if (has_air) return true;
    if (in.fading != LVB_FADING_NONE) return refuse_unused(refusal, in.fading, place, LVB_FIELD_FADING);
    return in.shadowing_db == 0.0 || refuse_unused(refusal, in.shadowing_db, place, LVB_FIELD_SHADOWING_DB);
}

bool take_spread(Refusal &refusal, const lvb_trials &in, std::uint32_t index, lvb_spread &spread) noexcept {
    const Place place = row_of(LVB_STRUCT_SPREAD, index);
    if (!take_element(refusal, in.spreads, in.spread_size, place, spread)) return false;
    if (spread.reserved != 0)
        return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, spread.reserved, 0.0, 0.0);
    if (spread.law < LVB_LAW_RECTANGULAR || spread.law > LVB_LAW_ARC_SINE)
        return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_LAW, spread.law, LVB_LAW_RECTANGULAR,
                      LVB_LAW_ARC_SINE);
    if (spread.law != LVB_LAW_NORMAL)
        return spread.coverage_factor == 0.0 ||
               refuse_unused(refusal, spread.coverage_factor, place, LVB_FIELD_COVERAGE_FACTOR);
    return check_field(refusal, spread.coverage_factor, coverage_range, place, LVB_FIELD_COVERAGE_FACTOR);
}

// The link's book without deviations, and what deviates. Spreads hold tolerances until their laws are known.
bool take_stages(Refusal &refusal, Asked &asked, bool &has_air) noexcept {
    lvb_link link;
    chain::Conditions conditions;
    // cppcheck-suppress ctuuninitvar ; `in` was taken, and the rest is filled here
    if (asked.in.link == nullptr) return refuse(refusal, LVB_E_NULL, {LVB_STRUCT_TRIALS}, LVB_FIELD_LINK);
    if (!take_link(refusal, asked.in.link, link, conditions)) return false;
    const std::uint32_t count = asked.in.spread_count;
    if (count != 0 && count != link.stage_count)
        return refuse(refusal, LVB_E_COUNT, {LVB_STRUCT_TRIALS}, LVB_FIELD_SPREAD_COUNT, count, link.stage_count,
                      link.stage_count);
    chain::Ledger ledger(conditions);
    std::uint32_t index = 0, spreads = 0;
    has_air = false;
    asked.window = {};
    if (!walk_stages(refusal, link, [&](const chain::Stage &stage) noexcept {
            ledger.enter(stage);
            has_air = has_air || stage.kind == chain::Kind::air;
            if (stage.kind == chain::Kind::receiver) asked.window = stage.window;
            if (stage.tolerance_db != 0.0)
                asked.spreads[spreads++] = {math::Law::rectangular, stage.kind == chain::Kind::allowance, index,
                                            stage.tolerance_db};
            ++index;
        }))
        return false;
    for (std::uint32_t i = 0, drawn = 0; i < count; ++i) {
        lvb_spread lent;
        if (!take_spread(refusal, asked.in, i, lent)) return false;
        if (drawn == spreads || asked.spreads[drawn].quantity != i) continue; // there is no tolerance to spread
        decide::Spread &spread = asked.spreads[drawn++];
        spread.law = static_cast<math::Law>(lent.law);
        if (spread.law == math::Law::normal)
            spread.scale_db /= lent.coverage_factor != 0.0 ? lent.coverage_factor : usual_coverage_factor;
    }
    if (asked.in.shadowing_db != 0.0)
        asked.spreads[spreads++] = {math::Law::normal, true, decide::shadowing_quantity, asked.in.shadowing_db};
    const chain::Result result = ledger.close();
    asked.levels = {result.far_end.level_dbm, result.near_end.level_dbm};
    asked.trials = {
        asked.spreads,           spreads,      static_cast<decide::Fading>(asked.in.fading), asked.in.rice_factor_db,
        asked.in.nakagami_shape, asked.in.seed};
    return true;
}

lvb_tally tally_of(const decide::Tally &tally, const decide::Levels &levels) noexcept {
    lvb_tally out{};
    out.trials = tally.trials;
    out.inside = tally.inside;
    out.far_below = tally.far_below;
    out.far_above = tally.far_above;
    out.near_below = tally.near_below;
    out.near_above = tally.near_above;
    out.far_sum = tally.far.sum;
    out.far_squares_high = tally.far.squares_high;
    out.far_squares_low = tally.far.squares_low;
    out.near_sum = tally.near.sum;
    out.near_squares_high = tally.near.squares_high;
    out.near_squares_low = tally.near.squares_low;
    out.far_level_dbm = levels.far_dbm;
    out.near_level_dbm = levels.near_dbm;
    return out;
}

bool check_results(Refusal &refusal, const lvb_trials &in, const lvb_tally *tally) noexcept {
    const std::uint64_t levels = in.trial_count * sizeof(double);
    const Room rooms[] = {{tally, tally != nullptr ? declared_size(tally) : 0, LVB_FIELD_TALLY},
                          {in.far_dbm, levels, LVB_FIELD_FAR_DBM},
                          {in.near_dbm, levels, LVB_FIELD_NEAR_DBM}};
    return check_apart(refusal, rooms, {LVB_STRUCT_TRIALS});
}

bool compute_trials(Refusal &refusal, const lvb_trials *lent, lvb_tally *result) noexcept {
    Asked asked;
    bool has_air = false;
    if (!take(refusal, lent, asked.in, {LVB_STRUCT_TRIALS}, LVB_FIELD_TRIALS) ||
        (result != nullptr && !check_result(refusal, result, LVB_STRUCT_TALLY, LVB_FIELD_TALLY)) ||
        !check_frame(refusal, asked.in, asked.loops) || !take_stages(refusal, asked, has_air) ||
        !check_fading(refusal, asked.in, has_air) || !check_results(refusal, asked.in, result))
        return false;
    decide::Tally tally;
    double *far = asked.in.far_dbm, *near = asked.in.near_dbm;
    const std::uint64_t end = asked.in.first_trial + asked.in.trial_count;
    for (std::uint64_t trial = asked.in.first_trial; trial < end;) {
        const std::uint64_t number = trial / piece, start = number * piece;
        const auto from = static_cast<std::size_t>(trial - start);
        const auto to = end - start < piece ? static_cast<std::size_t>(end - start) : piece;
        const decide::Deviations deviations(*asked.loops, asked.trials, number);
        if (far != nullptr)
            decide::give_levels(*asked.loops, asked.levels.far_dbm, deviations.far_db + from, to - from, far),
                far += to - from;
        if (near != nullptr)
            decide::give_levels(*asked.loops, asked.levels.near_dbm, deviations.near_db + from, to - from, near),
                near += to - from;
        if (result != nullptr) decide::enter(tally, asked.window, asked.levels, deviations, from, to);
        trial += to - from;
    }
    if (result == nullptr) return true;
    lvb_tally out = tally_of(tally, asked.levels);
    give(result, out);
    return true;
}

// ---- What they come to.

// Sums that so many trials can come to, so that those of all tallies stay whole numbers; a level is one or -infinity.
bool check_end(Refusal &refusal, std::uint64_t trials, const decide::Moments &moments, double level_dbm, Place place,
               std::int32_t sum_field, std::int32_t squares_field, std::int32_t level_field) noexcept {
    constexpr std::uint64_t largest = decide::Moments::largest_deviation; // its square is 2^60
    const auto most = static_cast<double>(trials * largest), most_high = static_cast<double>(trials >> 4);
    if (!check_range(refusal, static_cast<double>(moments.sum), -most, most, place, sum_field) ||
        !check_range(refusal, static_cast<double>(moments.squares_high), 0.0, most_high, place, squares_field))
        return false;
    if (math::is_nan(level_dbm)) return refuse(refusal, LVB_E_NAN, place, level_field, level_dbm);
    return level_dbm < math::infinity || refuse(refusal, LVB_E_INFINITE, place, level_field, level_dbm);
}

// `room` is for how many trials there is still room.
bool check_tally(Refusal &refusal, const lvb_tally &tally, const lvb_tally &first, std::uint64_t room,
                 Place place) noexcept {
    if (tally.reserved != 0)
        return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, tally.reserved, 0.0, 0.0);
    if (tally.trials > room)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_TRIALS, static_cast<double>(tally.trials), 0.0,
                      static_cast<double>(room));
    constexpr std::uint64_t lvb_tally::*counts[] = {&lvb_tally::inside, &lvb_tally::far_below, &lvb_tally::far_above,
                                                    &lvb_tally::near_below, &lvb_tally::near_above};
    for (const auto count : counts)
        if (tally.*count > tally.trials)
            return refuse(refusal, LVB_E_BELOW_RANGE, place, LVB_FIELD_TRIALS, static_cast<double>(tally.trials),
                          static_cast<double>(tally.*count), static_cast<double>(largest_total));
    const std::uint64_t far_missed = tally.far_below + tally.far_above,
                        near_missed = tally.near_below + tally.near_above;
    const std::uint64_t least = tally.inside + (far_missed > near_missed ? far_missed : near_missed);
    const std::uint64_t most = tally.inside + far_missed + near_missed; // a trial that is not inside misses something
    if (tally.trials < least || tally.trials > most)
        return refuse_outside(refusal, static_cast<double>(tally.trials), static_cast<double>(least),
                              static_cast<double>(most), place, LVB_FIELD_TRIALS);
    if (!check_end(refusal, tally.trials, {tally.far_sum, tally.far_squares_high, tally.far_squares_low},
                   tally.far_level_dbm, place, LVB_FIELD_FAR_SUM, LVB_FIELD_FAR_SQUARES_HIGH,
                   LVB_FIELD_FAR_LEVEL_DBM) ||
        !check_end(refusal, tally.trials, {tally.near_sum, tally.near_squares_high, tally.near_squares_low},
                   tally.near_level_dbm, place, LVB_FIELD_NEAR_SUM, LVB_FIELD_NEAR_SQUARES_HIGH,
                   LVB_FIELD_NEAR_LEVEL_DBM))
        return false;
    if (bits_of(tally.far_level_dbm) != bits_of(first.far_level_dbm))
        return refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_FAR_LEVEL_DBM, tally.far_level_dbm);
    return bits_of(tally.near_level_dbm) == bits_of(first.near_level_dbm) ||
           refuse(refusal, LVB_E_CONFLICT, place, LVB_FIELD_NEAR_LEVEL_DBM, tally.near_level_dbm);
}

void add(decide::Tally &total, const lvb_tally &tally) noexcept {
    total.trials += tally.trials;
    total.inside += tally.inside;
    total.far_below += tally.far_below;
    total.far_above += tally.far_above;
    total.near_below += tally.near_below;
    total.near_above += tally.near_above;
    total.far.add({tally.far_sum, tally.far_squares_high, tally.far_squares_low});
    total.near.add({tally.near_sum, tally.near_squares_high, tally.near_squares_low});
}

lvb_sureness sureness_of(const decide::Tally &total, double far_dbm, double near_dbm) noexcept {
    const std::uint64_t n = total.trials;
    const double trials = static_cast<double>(n), root = math::sqrt(trials);
    lvb_sureness out{};
    out.trials = n;
    const auto share = [&](std::uint64_t hits, double &probability, double &error) noexcept {
        probability = static_cast<double>(hits) / trials;
        error = decide::probability_error(hits, n);
    };
    share(total.inside, out.inside_probability, out.inside_error);
    share(total.far_below, out.far_below_probability, out.far_below_error);
    share(total.far_above, out.far_above_probability, out.far_above_error);
    share(total.near_below, out.near_below_probability, out.near_below_error);
    share(total.near_above, out.near_above_probability, out.near_above_error);
    const double far_deviation = total.far.standard_deviation_db(n),
                 near_deviation = total.near.standard_deviation_db(n);
    const bool one = n < 2;
    out.far_mean_dbm = far_dbm + total.far.mean_db(n);
    out.far_standard_deviation_db = far_deviation;
    out.far_mean_error_db = one ? math::not_a_number : far_deviation / root;
    out.near_mean_dbm = near_dbm + total.near.mean_db(n);
    out.near_standard_deviation_db = near_deviation;
    out.near_mean_error_db = one ? math::not_a_number : near_deviation / root;
    return out;
}

bool compute_sureness(Refusal &refusal, const lvb_tally *tallies, std::uint32_t count, std::uint32_t size,
                      lvb_sureness *result) noexcept {
    if (tallies == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_TALLIES);
    if (count == 0) return refuse(refusal, LVB_E_MISSING, {}, LVB_FIELD_TALLY_COUNT, 0.0, 1.0, most_tallies);
    if (count > most_tallies) return refuse(refusal, LVB_E_COUNT, {}, LVB_FIELD_TALLY_COUNT, count, 1.0, most_tallies);
    if (!check_size(refusal, size, sizeof(lvb_tally), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_TALLY_SIZE) ||
        !check_result(refusal, result, LVB_STRUCT_SURENESS, LVB_FIELD_SURENESS))
        return false;
    decide::Tally total;
    lvb_tally first{}, tally;
    for (std::uint32_t i = 0; i < count; ++i) {
        const Place place = row_of(LVB_STRUCT_TALLY, i);
        if (!take_element(refusal, tallies, size, place, tally)) return false;
        if (i == 0) first = tally;
        if (!check_tally(refusal, tally, first, largest_total - total.trials, place)) return false;
        add(total, tally);
    }
    if (total.trials == 0)
        return refuse(refusal, LVB_E_MISSING, {LVB_STRUCT_TALLY, -1, 0}, LVB_FIELD_TRIALS, 0.0, 1.0,
                      static_cast<double>(largest_total));
    lvb_sureness out = sureness_of(total, first.far_level_dbm, first.near_level_dbm);
    give(result, out);
    return true;
}

// ---- Quantiles.

bool compute_quantiles(Refusal &refusal, double *levels_dbm, std::uint64_t count, lvb_quantile *quantiles,
                       std::uint32_t quantile_count, std::uint32_t size) noexcept {
    if (levels_dbm == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_LEVELS_DBM);
    if (count == 0) return refuse(refusal, LVB_E_MISSING, {}, LVB_FIELD_COUNT, 0.0, 1.0, LVB_MAX_VALUES);
    if (count > LVB_MAX_VALUES)
        return refuse(refusal, LVB_E_COUNT, {}, LVB_FIELD_COUNT, static_cast<double>(count), 1.0, LVB_MAX_VALUES);
    if (quantiles == nullptr) return refuse(refusal, LVB_E_NULL, {}, LVB_FIELD_QUANTILES);
    if (quantile_count == 0)
        return refuse(refusal, LVB_E_MISSING, {}, LVB_FIELD_QUANTILE_COUNT, 0.0, 1.0, LVB_MAX_ROWS);
    if (quantile_count > LVB_MAX_ROWS)
        return refuse(refusal, LVB_E_COUNT, {}, LVB_FIELD_QUANTILE_COUNT, quantile_count, 1.0, LVB_MAX_ROWS);
    if (!check_size(refusal, size, sizeof(lvb_quantile), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_QUANTILE_SIZE)) return false;
    lvb_quantile one;
    for (std::uint32_t i = 0; i < quantile_count; ++i) {
        const Place place = row_of(LVB_STRUCT_QUANTILE, i);
        if (!take_element(refusal, quantiles, size, place, one) ||
            !check_field(refusal, one.probability, probability_range, place, LVB_FIELD_PROBABILITY))
            return false;
    }
    for (std::uint64_t i = 0; i < count; ++i)
        if (math::is_nan(levels_dbm[i])) return refuse(refusal, LVB_E_NAN, {}, LVB_FIELD_LEVELS_DBM, levels_dbm[i]);
    for (std::uint32_t i = 0; i < quantile_count; ++i) {
        char *element = reinterpret_cast<char *>(quantiles) + std::size_t{i} * size;
        std::memcpy(&one, element, sizeof one);
        const decide::Quantile found = decide::quantile(levels_dbm, count, one.probability);
        one.level_dbm = found.level_dbm;
        one.error_db = found.error_db;
        give(element, one, size);
    }
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

lvb_status lvb_compute_trials(const lvb_trials *trials, lvb_tally *tally, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute_trials(refusal, trials, tally); });
}

lvb_status lvb_compute_sureness(const lvb_tally *tallies, uint32_t tally_count, uint32_t tally_size,
                                lvb_sureness *sureness, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return compute_sureness(refusal, tallies, tally_count, tally_size, sureness);
    });
}

lvb_status lvb_compute_quantiles(double *levels_dbm, uint64_t count, lvb_quantile *quantiles, uint32_t quantile_count,
                                 uint32_t quantile_size, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return compute_quantiles(refusal, levels_dbm, count, quantiles, quantile_count, quantile_size);
    });
}

} // extern "C"
