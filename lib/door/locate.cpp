#include "decide/locate.hpp"
#include "door/check_chain.hpp"
#include "door/fields.hpp"

namespace lvb::door {
namespace {

static_assert(decide::most_readings == LVB_MAX_READINGS);

constexpr Range reading_level_range{-300.0, 200.0, false};
constexpr Range uncertainty_range{0.001, 100.0, true};
constexpr Range own_uncertainty_range{0.001, 100.0, false};
constexpr Range fault_probability_range{1e-6, 0.999999, false};
constexpr Range fault_spread_range{0.1, 100.0, false};
constexpr Range false_alarm_range{1e-6, 0.5, false};

Place place_of(std::uint32_t reading) noexcept { return row_of(LVB_STRUCT_READING, reading); }

struct Search {
    lvb_locate in;
    lvb_link link;
    std::uint32_t readings = 0; // of finite uncertainty
    decide::Reading reading[LVB_MAX_READINGS];
    double walk_db2[LVB_MAX_STAGES]; // variance of the departure after each stage
    bool conducted[LVB_MAX_STAGES];  // the level after it is
    bool last_word[LVB_MAX_STAGES];  // no allowance follows it
    std::int32_t air = -1;
};

bool check_locate(Refusal &refusal, const lvb_locate &in, Place place) noexcept {
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.reading_count > LVB_MAX_READINGS)
        return refuse(refusal, LVB_E_COUNT, place, LVB_FIELD_READING_COUNT, in.reading_count, 0.0, LVB_MAX_READINGS);
    return check_lent(refusal,
                      {in.readings, in.reading_count, in.reading_size, LVB_FIELD_READINGS, LVB_FIELD_READING_COUNT,
                       LVB_FIELD_READING_SIZE},
                      sizeof(lvb_reading), LVB_MAX_READINGS, place) &&
           check_field(refusal, in.uncertainty_db, uncertainty_range, place, LVB_FIELD_UNCERTAINTY_DB) &&
           check_field(refusal, in.fault_probability, fault_probability_range, place, LVB_FIELD_FAULT_PROBABILITY) &&
           check_field(refusal, in.fault_spread_db, fault_spread_range, place, LVB_FIELD_FAULT_SPREAD_DB) &&
           check_field(refusal, in.false_alarm, false_alarm_range, place, LVB_FIELD_FALSE_ALARM);
}

// Walks a link up to a stage, checked as lvb_compute_budget checks it, and shows every line.
template <class Show>
bool walk(Refusal &refusal, const lvb_link *lent, lvb_link &link, Show show) noexcept {
    chain::Conditions conditions;
    if (!take_link(refusal, lent, link, conditions)) return false;
    chain::Ledger ledger(conditions);
    std::uint32_t i = 0;
    return walk_stages(refusal, link,
                       [&](const chain::Stage &stage) noexcept { show(i++, stage.kind, ledger.enter(stage)); });
}

// A stage's tolerance is a limit of error, taken as uniform: JCGM 100:2008, 4.3.7.
constexpr double variance_of_limit = 1.0 / 3.0;

// The chain as entered; `level` gets what it predicts at the far end.
bool take_chain(Refusal &refusal, Search &search, double *level_dbm) noexcept {
    return walk(refusal, search.in.link, search.link,
                [&](std::uint32_t i, chain::Kind kind, const chain::Line &line) noexcept {
                    search.walk_db2[i] = line.far_end.squares_db2 * variance_of_limit;
                    search.conducted[i] = line.reference == chain::Reference::conducted;
                    search.last_word[i] = true;
                    if (kind == chain::Kind::allowance) search.last_word[i - 1] = false; // a source stands before it
                    if (kind == chain::Kind::air) search.air = static_cast<std::int32_t>(i);
                    level_dbm[i] = line.far_end.level_dbm;
                });
}

// The level that the chain predicts after a reading's stage over its distance.
bool predict_at(Refusal &refusal, const Search &search, const lvb_reading &in, Place place,
                double &level_dbm) noexcept {
    lvb_link link = search.link, walked;
    link.size = sizeof link;
    link.far_distance_m = in.distance_m;
    link.near_distance_m = 0.0;
    if (walk(refusal, &link, walked, [&](std::uint32_t i, chain::Kind, const chain::Line &line) noexcept {
            if (i == in.stage) level_dbm = line.far_end.level_dbm;
        }))
        return true;
    refusal.place = place; // the link holds at its own distance, so that it is the reading's that does not
    refusal.field = LVB_FIELD_DISTANCE_M;
    return false;
}

bool check_reading(Refusal &refusal, const Search &search, const lvb_reading &in, Place place) noexcept {
    if (in.reserved != 0) return refuse(refusal, LVB_E_RESERVED, place, LVB_FIELD_RESERVED, in.reserved, 0.0, 0.0);
    if (in.stage >= search.link.stage_count)
        return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_STAGE, in.stage, 0.0, search.link.stage_count - 1);
    if (!search.conducted[in.stage]) return refuse(refusal, LVB_E_NOT_FOUND, place, LVB_FIELD_STAGE, in.stage);
    if (!check_field(refusal, in.level_dbm, reading_level_range, place, LVB_FIELD_LEVEL_DBM)) return false;
    if (in.uncertainty_db != math::infinity &&
        !check_field(refusal, in.uncertainty_db, own_uncertainty_range, place, LVB_FIELD_UNCERTAINTY_DB))
        return false;
    if (!check_field(refusal, in.distance_m, distance_range, place, LVB_FIELD_DISTANCE_M)) return false;
    const bool over_air = search.air >= 0 && in.stage > static_cast<std::uint32_t>(search.air);
    return over_air || in.distance_m == 0.0 ||
           refuse(refusal, LVB_E_UNUSED, place, LVB_FIELD_DISTANCE_M, in.distance_m);
}

bool take_reading(Refusal &refusal, Search &search, std::uint32_t index, const double *level_dbm) noexcept {
    lvb_reading in;
    if (!take_element(refusal, search.in.readings, search.in.reading_size, place_of(index), in) ||
        !check_reading(refusal, search, in, place_of(index)))
        return false;
    double predicted_dbm = level_dbm[in.stage];
    if (in.distance_m != 0.0 && !predict_at(refusal, search, in, place_of(index), predicted_dbm)) return false;
    if (predicted_dbm == -math::infinity) // behind a pattern's null there is nothing to compare with
        return refuse(refusal, LVB_E_NOT_FOUND, place_of(index), LVB_FIELD_STAGE, in.stage);
    if (in.uncertainty_db == math::infinity) return true;
    const double uncertainty = or_else(in.uncertainty_db, search.in.uncertainty_db);
    search.reading[search.readings++] = {in.stage, in.level_dbm - predicted_dbm, uncertainty * uncertainty};
    return true;
}

bool take_search(Refusal &refusal, const lvb_locate *lent, Search &search) noexcept {
    const Place place{LVB_STRUCT_LOCATE};
    double level_dbm[LVB_MAX_STAGES];
    if (!take(refusal, lent, search.in, place, LVB_FIELD_LOCATE) || !check_locate(refusal, search.in, place) ||
        !take_chain(refusal, search, level_dbm))
        return false;
    for (std::uint32_t i = 0; i < search.in.reading_count; ++i)
        if (!take_reading(refusal, search, i, level_dbm)) return false;
    return true;
}

// Shows every stage as a suspect.
template <class Show>
void accuse(const Search &search, const decide::Findings &findings, Show show) noexcept {
    const double variance = search.in.uncertainty_db * search.in.uncertainty_db;
    std::uint32_t number = 0; // spans without stages are not counted
    for (std::uint32_t i = 0; i < findings.spans(); ++i) {
        const decide::Span &span = findings.span(i);
        for (std::uint32_t stage = span.first; stage < span.end; ++stage) {
            lvb_suspect suspect{};
            suspect.span = number;
            suspect.probability = span.probability;
            suspect.fault_db = span.fault_db;
            suspect.standard_deviation_db = math::sqrt(span.variance_db2);
            suspect.expected_bits = search.conducted[stage] && search.last_word[stage]
                                        ? findings.expected_bits(i, stage, variance)
                                        : math::not_a_number;
            show(stage, i, suspect);
        }
        if (span.first < span.end) ++number;
    }
}

lvb_locate_result conclude(const Search &search, const decide::Findings &findings, lvb_suspect *suspects,
                           std::uint32_t suspect_size) noexcept {
    lvb_locate_result out{};
    out.reading_count = search.readings;
    out.chi_square = findings.chi_square();
    out.p_value = decide::chi_square_above(search.readings, out.chi_square);
    out.consistent = out.p_value >= or_else(search.in.false_alarm, 0.01) ? 1 : 0;
    out.none_probability = findings.none_probability();
    out.probability = out.expected_bits = -1.0; // below every stage's; the source, or its allowances, are a point
    char *element = reinterpret_cast<char *>(suspects);
    accuse(search, findings, [&](std::uint32_t stage, std::uint32_t i, const lvb_suspect &suspect) noexcept {
        if (suspect.probability > out.probability) {
            const decide::Span &span = findings.span(i);
            out.stage = stage;
            out.span_first = span.first;
            out.span_last = span.end - 1;
            out.probability = suspect.probability;
            out.span_probability = suspect.probability * (span.end - span.first);
            out.fault_db = suspect.fault_db;
            out.standard_deviation_db = suspect.standard_deviation_db;
            out.fault_p_value = decide::chi_square_above(findings.degrees(i), span.chi_square);
        }
        if (suspect.expected_bits > out.expected_bits) {
            out.next_stage = stage;
            out.expected_bits = suspect.expected_bits;
        }
        if (element != nullptr) give(element + std::size_t{stage} * suspect_size, suspect, suspect_size);
    });
    return out;
}

bool locate(Refusal &refusal, const lvb_locate *lent, lvb_locate_result *result, lvb_suspect *suspects,
            std::uint32_t suspect_size) noexcept {
    Search search;
    if (!take_search(refusal, lent, search) ||
        !check_result(refusal, result, LVB_STRUCT_LOCATE_RESULT, LVB_FIELD_RESULT) ||
        (suspects != nullptr &&
         !check_size(refusal, suspect_size, sizeof(lvb_suspect), LVB_E_ELEMENT_SIZE, {}, LVB_FIELD_SUSPECT_SIZE)))
        return false;
    const double spread = or_else(search.in.fault_spread_db, 10.0);
    const decide::Findings findings(
        {search.link.stage_count, search.walk_db2, or_else(search.in.fault_probability, 0.5), spread * spread},
        search.reading, search.readings);
    lvb_locate_result out = conclude(search, findings, suspects, suspect_size);
    give(result, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_locate_fault(const lvb_locate *locate, lvb_locate_result *result, lvb_suspect *suspects,
                                       uint32_t suspect_size, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept {
        return lvb::door::locate(refusal, locate, result, suspects, suspect_size);
    });
}
