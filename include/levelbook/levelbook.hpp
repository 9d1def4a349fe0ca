// levelbook in C++: thin comfort over levelbook.h. Header-only, never part of the ABI; needs C++20.
//
// Structs come with their size set, stages are given as a span, and a refusal comes back as a value:
//
//     const lvb_stage stages[] = {...};
//     auto link = levelbook::link(stages);
//     link.frequency_mhz = 600.0;
//     link.far_distance_m = 40.0;
//     if (const auto budget = levelbook::compute_budget(link)) use(budget->far_end.margin_db);
//     else show(budget.text());
#pragma once

#include <levelbook/levelbook.h>

#include <algorithm>
#include <concepts>
#include <cstdint>
#include <limits>
#include <span>
#include <string>

namespace levelbook {

/// A zeroed public struct with its size set. Since: 0.1.
template <class Struct>
requires requires(Struct s) {
    { s.size } -> std::same_as<std::uint32_t &>;
}
Struct sized() noexcept {
    Struct s{};
    s.size = sizeof(Struct);
    return s;
}

/// A link of some stages; the stages must outlive it. More than LVB_MAX_STAGES are refused when it is computed.
/// Since: 0.1.
inline lvb_link link(std::span<const lvb_stage> stages) noexcept {
    auto made = sized<lvb_link>();
    made.stages = stages.data();
    constexpr std::size_t most = std::numeric_limits<std::uint32_t>::max();
    made.stage_count = static_cast<std::uint32_t>(std::min(stages.size(), most));
    made.stage_size = sizeof(lvb_stage);
    return made;
}

/// The sentence of a fault. Since: 0.1.
inline std::string text(const lvb_fault &fault) {
    std::string sentence(lvb_fault_text(&fault, nullptr, 0), '\0');
    lvb_fault_text(&fault, sentence.data(), sentence.size() + 1);
    return sentence;
}

/// A result, or the fault that tells why there is none; the result is then zeroed but for its size. Since: 0.1.
template <class Result>
class Answer {
  public:
    explicit operator bool() const noexcept { return fault_.status == LVB_OK; }
    const Result &operator*() const noexcept { return result_; }
    const Result *operator->() const noexcept { return &result_; }
    const lvb_fault &fault() const noexcept { return fault_; }
    std::string text() const { return levelbook::text(fault_); }

    /// Runs one call that takes a result and a fault.
    template <class Call>
    static Answer of(Call call) {
        Answer answer;
        answer.fault_.status = call(&answer.result_, &answer.fault_);
        return answer;
    }

  private:
    Result result_ = sized<Result>();
    lvb_fault fault_ = sized<lvb_fault>();
};

/// Fills the fault for a count that does not suit the spans it came with; gives its status.
inline lvb_status refuse_count(lvb_fault &fault, std::int32_t structure, std::int32_t field, double count,
                               double minimum, double maximum) noexcept {
    fault.status = LVB_E_COUNT;
    fault.structure = structure;
    fault.field = field;
    fault.stage = fault.row = -1;
    fault.value = count;
    fault.minimum = minimum;
    fault.maximum = maximum;
    return LVB_E_COUNT;
}

/// Runs a call with lines for the stages of a link: none, or one for each, otherwise LVB_E_COUNT is returned.
template <class Line, class Call>
lvb_status with_lines(const lvb_link &link, std::span<Line> lines, lvb_fault &fault, Call call) {
    const auto count = static_cast<double>(lines.size());
    if (!lines.empty() && lines.size() != link.stage_count)
        return refuse_count(fault, LVB_STRUCT_LINK, LVB_FIELD_STAGE_COUNT, link.stage_count, count, count);
    return call(lines.empty() ? nullptr : lines.data());
}

/// lvb_compute_budget; `levels` is empty or has one element per stage, otherwise LVB_E_COUNT is returned.
/// Since: 0.1.
inline Answer<lvb_budget> compute_budget(const lvb_link &link, std::span<lvb_level> levels = {}) {
    return Answer<lvb_budget>::of([&](lvb_budget *budget, lvb_fault *fault) {
        return with_lines(link, levels, *fault, [&](lvb_level *lines) {
            return lvb_compute_budget(&link, budget, lines, sizeof(lvb_level), fault);
        });
    });
}

/// lvb_compute_cable_loss for a type of the catalogue, or for a host's table where one is given. Since: 0.1.
inline Answer<lvb_cable_loss> compute_cable_loss(const lvb_cable_run &run, const lvb_cable_table *table = nullptr) {
    return Answer<lvb_cable_loss>::of(
        [&](lvb_cable_loss *loss, lvb_fault *fault) { return lvb_compute_cable_loss(&run, table, loss, fault); });
}

/// lvb_compute_pattern_gain. Since: 0.1.
inline Answer<lvb_pattern_gain> compute_pattern_gain(const lvb_pattern &pattern, double azimuth_deg,
                                                     double elevation_deg) {
    return Answer<lvb_pattern_gain>::of([&](lvb_pattern_gain *gain, lvb_fault *fault) {
        return lvb_compute_pattern_gain(&pattern, azimuth_deg, elevation_deg, gain, fault);
    });
}

/// lvb_compute_pointing. Since: 0.1.
inline Answer<lvb_pointing> compute_pointing(const lvb_antenna &transmit, const lvb_antenna &receive,
                                             double frequency_mhz) {
    return Answer<lvb_pointing>::of([&](lvb_pointing *pointing, lvb_fault *fault) {
        return lvb_compute_pointing(&transmit, &receive, frequency_mhz, pointing, fault);
    });
}

/// What holds doubles side by side: a span, a vector, an array. Since: 0.1.
template <class Column>
concept Numbers = std::convertible_to<const Column &, std::span<const double>>;

/// An argument of a formula over columns: one value for all, or a column, which must outlive it. Since: 0.1.
class Argument {
  public:
    Argument() noexcept = default; ///< none
    Argument(double single) noexcept : single_(single), is_single_(true) {}
    template <Numbers Column>
    Argument(const Column &column) noexcept : column_(column), is_column_(true) {}

    bool is_single() const noexcept { return is_single_; }
    bool is_column() const noexcept { return is_column_; }
    std::size_t size() const noexcept { return column_.size(); }
    const double *data() const noexcept { return is_single_ ? &single_ : column_.data(); }

  private:
    double single_ = 0.0;
    std::span<const double> column_;
    bool is_single_ = false, is_column_ = false;
};

/// The arguments of a formula: {600.0, distances}. Since: 0.1.
struct Arguments {
    Argument first, second = {}, third = {};
};

/// lvb_compute_columns; every column is as long as the result, otherwise LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_bad> compute_columns(std::int32_t formula, const Arguments &arguments, std::span<double> result,
                                       std::int32_t instructions = LVB_INSTRUCTIONS_AUTOMATIC) {
    return Answer<lvb_bad>::of([&](lvb_bad *bad, lvb_fault *fault) {
        auto columns = sized<lvb_columns>();
        const Argument *const all[] = {&arguments.first, &arguments.second, &arguments.third};
        for (std::uint32_t i = 0; i < 3; ++i) {
            const auto length = static_cast<double>(all[i]->size());
            if (all[i]->is_column() && all[i]->size() != result.size())
                return refuse_count(*fault, LVB_STRUCT_COLUMNS, LVB_FIELD_COUNT, static_cast<double>(result.size()),
                                    length, length);
            if (all[i]->is_single()) columns.single |= 1u << i;
        }
        columns.formula = formula;
        columns.instructions = instructions;
        columns.count = result.size();
        columns.argument_1 = arguments.first.data();
        columns.argument_2 = arguments.second.data();
        columns.argument_3 = arguments.third.data();
        columns.result = result.data();
        return lvb_compute_columns(&columns, bad, fault);
    });
}

/// lvb_compute_grid; `level_dbm` has one element for each distance at each frequency, and `scratch` two or more for
/// each distance (none where the link has no air), otherwise LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_bad> compute_grid(const lvb_link &link, std::span<const double> frequency_mhz,
                                    std::span<const double> distance_m, std::span<double> scratch,
                                    std::span<double> level_dbm, std::int32_t end = LVB_END_FAR,
                                    std::int32_t instructions = LVB_INSTRUCTIONS_AUTOMATIC) {
    return Answer<lvb_bad>::of([&](lvb_bad *bad, lvb_fault *fault) {
        const std::size_t rows = frequency_mhz.size(), columns = distance_m.size();
        const auto refuse = [&](double minimum, double maximum) {
            return refuse_count(*fault, LVB_STRUCT_GRID, LVB_FIELD_DISTANCE_COUNT, static_cast<double>(columns),
                                minimum, maximum);
        };
        if (rows != 0 && (level_dbm.size() % rows != 0 || level_dbm.size() / rows != columns)) {
            const double served = static_cast<double>(level_dbm.size()) / static_cast<double>(rows);
            return refuse(served, served);
        }
        if (!scratch.empty() && scratch.size() / 2 < columns)
            return refuse(0.0, static_cast<double>(scratch.size() / 2));
        auto grid = sized<lvb_grid>();
        grid.end = end;
        grid.instructions = instructions;
        grid.frequency_count = rows;
        grid.distance_count = columns;
        grid.link = &link;
        grid.frequency_mhz = frequency_mhz.data();
        grid.distance_m = distance_m.data();
        grid.scratch = scratch.empty() ? nullptr : scratch.data();
        grid.level_dbm = level_dbm.data();
        return lvb_compute_grid(&grid, bad, fault);
    });
}

/// lvb_compute_path_loss. Since: 0.1.
inline Answer<lvb_path_loss> compute_path_loss(const lvb_path &path, double frequency_mhz, double distance_m) {
    return Answer<lvb_path_loss>::of([&](lvb_path_loss *loss, lvb_fault *fault) {
        return lvb_compute_path_loss(&path, frequency_mhz, distance_m, loss, fault);
    });
}

/// lvb_compute_noise; `lines` is empty or has one element per stage, otherwise LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_noise> compute_noise(const lvb_link &link, const lvb_noise_conditions &conditions,
                                       std::span<lvb_noise_line> lines = {}) {
    return Answer<lvb_noise>::of([&](lvb_noise *noise, lvb_fault *fault) {
        return with_lines(link, lines, *fault, [&](lvb_noise_line *each) {
            return lvb_compute_noise(&link, &conditions, noise, each, sizeof(lvb_noise_line), fault);
        });
    });
}

/// lvb_compute_coexistence. Since: 0.1.
inline Answer<lvb_coexistence> compute_coexistence(const lvb_neighbours &neighbours) {
    return Answer<lvb_coexistence>::of([&](lvb_coexistence *coexistence, lvb_fault *fault) {
        return lvb_compute_coexistence(&neighbours, coexistence, fault);
    });
}

/// lvb_check_limit. Since: 0.1.
inline Answer<lvb_limit_result> check_limit(const lvb_link &link, const lvb_limit &limit) {
    return Answer<lvb_limit_result>::of(
        [&](lvb_limit_result *result, lvb_fault *fault) { return lvb_check_limit(&link, &limit, result, fault); });
}

/// lvb_compute_sweep; where results of each frequency go stands in the sweep. Since: 0.1.
inline Answer<lvb_sweep_result> compute_sweep(const lvb_sweep &sweep) {
    return Answer<lvb_sweep_result>::of(
        [&](lvb_sweep_result *result, lvb_fault *fault) { return lvb_compute_sweep(&sweep, result, fault); });
}

/// lvb_compute_solution. Since: 0.1.
inline Answer<lvb_solution> compute_solution(const lvb_solve &solve) {
    return Answer<lvb_solution>::of(
        [&](lvb_solution *solution, lvb_fault *fault) { return lvb_compute_solution(&solve, solution, fault); });
}

/// lvb_compute_ranking; `lines` is empty or has one element per stage, otherwise LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_ranking> compute_ranking(const lvb_link &link, std::span<lvb_contribution> lines = {}) {
    return Answer<lvb_ranking>::of([&](lvb_ranking *ranking, lvb_fault *fault) {
        return with_lines(link, lines, *fault, [&](lvb_contribution *each) {
            return lvb_compute_ranking(&link, ranking, each, sizeof(lvb_contribution), fault);
        });
    });
}

/// lvb_compute_comparison; `scratch` has lvb_comparison_scratch_bytes, and `pairs` is empty or has one element for each
/// stage of both links, otherwise LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_comparison> compute_comparison(const lvb_link &first, const lvb_link &second,
                                                 std::span<std::uint8_t> scratch, std::span<lvb_pair> pairs = {}) {
    return Answer<lvb_comparison>::of([&](lvb_comparison *comparison, lvb_fault *fault) {
        const double stages = static_cast<double>(first.stage_count) + second.stage_count;
        if (const auto count = static_cast<double>(pairs.size()); !pairs.empty() && count != stages)
            return refuse_count(*fault, LVB_STRUCT_COMPARE, LVB_FIELD_PAIRS, count, stages, stages);
        auto compare = sized<lvb_compare>();
        compare.first = &first;
        compare.second = &second;
        compare.scratch_bytes = scratch.size();
        compare.scratch = scratch.data();
        if (!pairs.empty()) {
            compare.pair_size = sizeof(lvb_pair);
            compare.pairs = pairs.data();
        }
        return lvb_compute_comparison(&compare, comparison, fault);
    });
}

/// lvb_compute_trials; where levels go stands in the trials. Since: 0.1.
inline Answer<lvb_tally> compute_trials(const lvb_trials &trials) {
    return Answer<lvb_tally>::of(
        [&](lvb_tally *tally, lvb_fault *fault) { return lvb_compute_trials(&trials, tally, fault); });
}

/// lvb_compute_sureness; more than 65536 tallies are refused. Since: 0.1.
inline Answer<lvb_sureness> compute_sureness(std::span<const lvb_tally> tallies) {
    return Answer<lvb_sureness>::of([&](lvb_sureness *sureness, lvb_fault *fault) {
        constexpr std::size_t most = std::numeric_limits<std::uint32_t>::max();
        return lvb_compute_sureness(tallies.data(), static_cast<std::uint32_t>(std::min(tallies.size(), most)),
                                    sizeof(lvb_tally), sureness, fault);
    });
}

/// lvb_compute_choice_scratch. Since: 0.1.
inline Answer<lvb_choice_scratch> compute_choice_scratch(const lvb_choice &choice) {
    return Answer<lvb_choice_scratch>::of([&](lvb_choice_scratch *scratch, lvb_fault *fault) {
        return lvb_compute_choice_scratch(&choice, scratch, fault);
    });
}

/// lvb_compute_choice; where sets go stands in the choice. Since: 0.1.
inline Answer<lvb_chosen> compute_choice(const lvb_choice &choice) {
    return Answer<lvb_chosen>::of(
        [&](lvb_chosen *chosen, lvb_fault *fault) { return lvb_compute_choice(&choice, chosen, fault); });
}

/// lvb_locate_fault; the locate has its link. `suspects` is empty or has one element per stage of it, otherwise
/// LVB_E_COUNT is returned. Since: 0.1.
inline Answer<lvb_locate_result> locate_fault(const lvb_locate &locate, std::span<lvb_suspect> suspects = {}) {
    return Answer<lvb_locate_result>::of([&](lvb_locate_result *result, lvb_fault *fault) {
        const auto call = [&](lvb_suspect *each) {
            return lvb_locate_fault(&locate, result, each, sizeof(lvb_suspect), fault);
        };
        return locate.link == nullptr ? call(nullptr) : with_lines(*locate.link, suspects, *fault, call);
    });
}

/// lvb_compute_map; where results go stands in the map. Since: 0.1.
inline Answer<lvb_map_summary> compute_map(const lvb_map &map) {
    return Answer<lvb_map_summary>::of(
        [&](lvb_map_summary *summary, lvb_fault *fault) { return lvb_compute_map(&map, summary, fault); });
}

/// lvb_compute_walk; where results go stands in the walk. Since: 0.1.
inline Answer<lvb_walk_result> compute_walk(const lvb_walk &walk) {
    return Answer<lvb_walk_result>::of(
        [&](lvb_walk_result *result, lvb_fault *fault) { return lvb_compute_walk(&walk, result, fault); });
}

} // namespace levelbook
