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

/// lvb_compute_budget; `levels` is empty or has one element per stage, otherwise LVB_E_COUNT is returned.
/// Since: 0.1.
inline Answer<lvb_budget> compute_budget(const lvb_link &link, std::span<lvb_level> levels = {}) {
    return Answer<lvb_budget>::of([&](lvb_budget *budget, lvb_fault *fault) {
        if (!levels.empty() && levels.size() != link.stage_count) {
            fault->status = LVB_E_COUNT;
            fault->structure = LVB_STRUCT_LINK;
            fault->field = LVB_FIELD_STAGE_COUNT;
            fault->stage = fault->row = -1;
            fault->value = link.stage_count;
            fault->minimum = fault->maximum = static_cast<double>(levels.size());
            return lvb_status{LVB_E_COUNT};
        }
        return lvb_compute_budget(&link, budget, levels.empty() ? nullptr : levels.data(), sizeof(lvb_level), fault);
    });
}

/// lvb_compute_cable_loss for a type of the catalogue, or for a host's table where one is given. Since: 0.1.
inline Answer<lvb_cable_loss> compute_cable_loss(const lvb_cable_run &run, const lvb_cable_table *table = nullptr) {
    return Answer<lvb_cable_loss>::of(
        [&](lvb_cable_loss *loss, lvb_fault *fault) { return lvb_compute_cable_loss(&run, table, loss, fault); });
}

/// lvb_compute_path_loss. Since: 0.1.
inline Answer<lvb_path_loss> compute_path_loss(const lvb_path &path, double frequency_mhz, double distance_m) {
    return Answer<lvb_path_loss>::of([&](lvb_path_loss *loss, lvb_fault *fault) {
        return lvb_compute_path_loss(&path, frequency_mhz, distance_m, loss, fault);
    });
}

} // namespace levelbook
