#include "decide/rank.hpp"

#include "door/check_chain.hpp"
#include "door/fields.hpp"

namespace lvb::door {
namespace {

using chain::Basis;
using chain::Kind;
using math::not_a_number;

constexpr decide::Span span_of(const Range &range) noexcept { return {range.minimum, range.maximum}; }
constexpr decide::Spans spans{span_of(frequency_range), span_of(distance_range), span_of(temperature_range),
                              span_of(turn_range), span_of(elevation_range)};

// What all stages together have, which shares are of.
struct Totals {
    double loss_db = 0.0, gain_db = 0.0;
    chain::Tally far_end{}, near_end{}; // after the last stage
    chain::Result result;

    bool near_decides() const noexcept { return result.decided_by == chain::Decision::near_ceiling; }
};

bool is_guess(Basis basis) noexcept { return basis == Basis::not_looked_up || basis == Basis::estimate; }

// What a stage changes at the far end by what it is; of a source not its level.
double gain_of(const chain::Stage &stage, const chain::Line &line) noexcept {
    return stage.kind == Kind::source ? line.far_end.change_db - stage.level_dbm : line.far_end.change_db;
}
double loss_of(const chain::Stage &stage, const chain::Line &line) noexcept {
    const double gain = gain_of(stage, line);
    return gain < 0.0 ? -gain : 0.0;
}

double share(double part, double whole) noexcept {
    if (part == 0.0) return whole < math::infinity ? 0.0 : not_a_number;
    return whole < math::infinity ? part / whole : not_a_number;
}

// The largest value so far and the stage that has it.
struct Largest {
    double value = 0.0;
    std::int32_t stage = -1;
    void take(double x, std::int32_t index) noexcept {
        if (x > value) value = x, stage = index;
    }
};

struct Ranks {
    double loss[LVB_MAX_STAGES], variance[LVB_MAX_STAGES], help[LVB_MAX_STAGES];
};

// 1 for the largest; of equal ones the earlier is ahead.
std::uint32_t rank_of(const double *values, std::uint32_t count, std::uint32_t index) noexcept {
    std::uint32_t rank = 1;
    for (std::uint32_t i = 0; i < count; ++i)
        if (values[i] > values[index] || (i < index && values[i] == values[index])) ++rank;
    return rank;
}

lvb_contribution contribution_of(const chain::Stage &stage, const chain::Line &line, const Totals &totals,
                                 const decide::Slopes &slopes, double help_db) noexcept {
    lvb_contribution out{};
    const double tolerance = stage.tolerance_db;
    out.basis = static_cast<std::int32_t>(stage.basis);
    out.far_change_db = line.far_end.change_db;
    out.near_change_db = line.near_end.change_db;
    out.loss_share = share(loss_of(stage, line), totals.loss_db);
    out.variance_share = share(tolerance * tolerance, totals.far_end.squares_db2);
    out.worst_share = share(tolerance, totals.far_end.worst_db);
    out.help_db = help_db;
    out.db_per_db = slopes.by_gain;
    out.db_per_m = slopes.by_length;
    out.db_per_connector = slopes.by_connector;
    out.db_per_connector_db = slopes.by_connector_loss;
    out.db_per_degc = slopes.by_temperature;
    out.far_db_per_mhz = slopes.far_by_frequency;
    out.near_db_per_mhz = slopes.near_by_frequency;
    out.far_db_per_distance_m = slopes.far_by_distance;
    out.near_db_per_distance_m = slopes.near_by_distance;
    out.far_db_per_azimuth_deg = slopes.far_by_azimuth;
    out.far_db_per_elevation_deg = slopes.far_by_elevation;
    out.near_db_per_azimuth_deg = slopes.near_by_azimuth;
    out.near_db_per_elevation_deg = slopes.near_by_elevation;
    out.db_per_facing_deg = slopes.by_facing;
    return out;
}

// The first walk finds every refusal, and what shares are of.
bool take_totals(Refusal &refusal, const lvb_link &link, const chain::Conditions &conditions, Totals &totals) noexcept {
    chain::Ledger ledger(conditions);
    if (!walk_stages(refusal, link, [&](const chain::Stage &stage) noexcept {
            const chain::Line &line = ledger.enter(stage);
            const double gain = gain_of(stage, line);
            totals.loss_db += loss_of(stage, line);
            if (gain > 0.0) totals.gain_db += gain;
            totals.far_end = line.far_end;
            totals.near_end = line.near_end;
        }))
        return false;
    totals.result = ledger.close();
    return true;
}

// The second walk tells of every stage.
lvb_ranking rank_all(const lvb_link &link, const chain::Conditions &conditions, const Totals &totals, Ranks &ranks,
                     char *element, std::uint32_t size) noexcept {
    Largest loss, variance, help, measure, look_up;
    double by_frequency = 0.0, by_temperature = 0.0, look_up_db = 0.0;
    std::int32_t index = 0;
    const bool near = totals.near_decides();
    chain::Ledger ledger(conditions);
    Refusal refusal;
    walk_stages(refusal, link, [&](const chain::Stage &stage) noexcept {
        const chain::Line &line = ledger.enter(stage);
        const decide::Slopes slopes = decide::slopes_of(stage, conditions, spans);
        const double help_db = near ? decide::near_help_db(stage, conditions, line.near_end.change_db, spans)
                                    : decide::far_help_db(stage, conditions, line.far_end.change_db, spans);
        const double tolerance = stage.tolerance_db;
        ranks.loss[index] = loss_of(stage, line);
        ranks.variance[index] = tolerance;
        ranks.help[index] = help_db;
        loss.take(ranks.loss[index], index);
        variance.take(tolerance, index);
        help.take(help_db, index);
        if (is_guess(stage.basis) && !(near && stage.kind == Kind::allowance)) measure.take(tolerance, index);
        if (is_guess(stage.basis) && tolerance == 0.0) {
            const double change = gain_of(stage, line);
            look_up.take(math::abs(change), index);
            if (look_up.stage == index) look_up_db = change;
        }
        by_frequency += near ? slopes.near_by_frequency : slopes.far_by_frequency;
        by_temperature += slopes.by_temperature;
        if (element != nullptr)
            give(element + static_cast<std::size_t>(index) * size,
                 contribution_of(stage, line, totals, slopes, help_db), size);
        ++index;
    });
    const chain::Tally &end = near ? totals.near_end : totals.far_end;
    const double rest_db2 = end.squares_db2 - measure.value * measure.value;
    lvb_ranking out{};
    out.decided_by = static_cast<std::int32_t>(totals.result.decided_by);
    out.loss_stage = loss.stage;
    out.variance_stage = variance.stage;
    out.help_stage = help.stage;
    out.measure_stage = measure.stage;
    out.look_up_stage = look_up.stage;
    out.decided_by_db = totals.result.decided_by_db;
    out.help_db = help.value;
    out.measure_worst_db = measure.value;
    out.measure_rss_db = measure.stage < 0 ? 0.0 : end.rss_db() - (rest_db2 > 0.0 ? math::sqrt(rest_db2) : 0.0);
    out.look_up_change_db = look_up_db;
    out.loss_db = totals.loss_db;
    out.gain_db = totals.gain_db;
    out.db_per_mhz = math::is_nan(by_frequency) ? not_a_number : by_frequency;
    out.db_per_degc = math::is_nan(by_temperature) ? not_a_number : by_temperature;
    return out;
}

void give_ranks(const Ranks &ranks, std::uint32_t stages, char *element, std::uint32_t size) noexcept {
    for (std::uint32_t i = 0; i < stages; ++i, element += size) {
        lvb_contribution line;
        std::memcpy(&line, element, sizeof line);
        line.loss_rank = rank_of(ranks.loss, stages, i);
        line.variance_rank = rank_of(ranks.variance, stages, i);
        line.help_rank = rank_of(ranks.help, stages, i);
        std::memcpy(element, &line, sizeof line);
    }
}

bool rank(Refusal &refusal, const lvb_link *lent, lvb_ranking *ranking, lvb_contribution *lines,
          std::uint32_t size) noexcept {
    lvb_link link;
    chain::Conditions conditions;
    Totals totals;
    Ranks ranks{};
    if (!take_link(refusal, lent, link, conditions) ||
        !check_result(refusal, ranking, LVB_STRUCT_RANKING, LVB_FIELD_RANKING) ||
        (lines != nullptr &&
         !check_size(refusal, size, sizeof(lvb_contribution), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_CONTRIBUTION_SIZE)) ||
        !take_totals(refusal, link, conditions, totals))
        return false;
    char *element = reinterpret_cast<char *>(lines);
    lvb_ranking out = rank_all(link, conditions, totals, ranks, element, size);
    if (element != nullptr) give_ranks(ranks, link.stage_count, element, size);
    give(ranking, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_ranking(const lvb_link *link, lvb_ranking *ranking, lvb_contribution *lines,
                                          uint32_t contribution_size, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return lvb::door::rank(refusal, link, ranking, lines, contribution_size);
    });
}
