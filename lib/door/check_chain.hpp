// What a chain may hold and in which order: the checks of lvb_compute_budget.
#pragma once

#include "chain/ledger.hpp"
#include "door/check.hpp"

namespace lvb::door {

/// A link's own fields, checked; the stages are read one by one by take_stage.
bool take_link(Refusal &refusal, const lvb_link *link, lvb_link &copy, chain::Conditions &conditions) noexcept;

/// What a link says besides its frequency and distances: stages, temperature.
bool check_link_frame(Refusal &refusal, const lvb_link &link) noexcept;

/// A link's distances are given with air, and only then; `air` is its index, or -1.
bool check_distances(Refusal &refusal, const lvb_link &link, std::int32_t air) noexcept;

/// One stage of a checked link, checked and turned into what the model takes.
bool take_stage(Refusal &refusal, const lvb_link &link, std::uint32_t index, chain::Stage &stage,
                Heights heights = Heights::of_path) noexcept;

/// Refuses a frequency that a stage's tables do not serve.
bool check_tables(Refusal &refusal, const chain::Stage &stage, double frequency_mhz, std::int32_t index) noexcept;

/// Refuses a link's frequency or distances where the path of this stage, which has one, does not hold.
bool check_walk(Refusal &refusal, const lvb_link &link, const chain::Stage &stage, std::int32_t index) noexcept;

/// Notes as a host reads them.
inline std::uint32_t bits_of(const chain::Notes &notes) noexcept {
    return (notes.extrapolated ? std::uint32_t{LVB_NOTE_EXTRAPOLATED} : 0u) |
           (notes.near_field ? std::uint32_t{LVB_NOTE_NEAR_FIELD} : 0u) |
           (notes.near_not_given ? std::uint32_t{LVB_NOTE_NEAR_NOT_GIVEN} : 0u) |
           (notes.null ? std::uint32_t{LVB_NOTE_NULL} : 0u);
}

/// The field by which an antenna has another gain than 0 dBi; 0 where none does.
std::int32_t gain_field(const chain::Stage &stage) noexcept;

/// The order of stages: one source first, antennas on both sides of the air, the receiver last.
class Order {
  public:
    bool next(Refusal &refusal, const chain::Stage &stage, std::int32_t index) noexcept;
    bool end(Refusal &refusal) const noexcept;
    std::int32_t air() const noexcept { return air_; } ///< index of the air, -1 where there is none

  private:
    bool enter_air(Refusal &refusal, const chain::Stage &stage, std::int32_t index) noexcept;

    int antennas_ = 0;
    std::int32_t transmit_ = -1;     // index of the first antenna
    std::int32_t transmit_gain_ = 0; // the field that gives it a gain, 0 where none does
    double transmit_gain_dbi_ = 0.0; // that gain, where it is a number
    std::int32_t air_ = -1;
    bool receiver_ = false;
};

/// Checks every stage of a checked link, their order and the distances; hands each sound stage to `use`.
template <class Use>
bool walk_stages(Refusal &refusal, const lvb_link &link, Use use) noexcept {
    Order order;
    chain::Stage stage;
    for (std::uint32_t i = 0; i < link.stage_count; ++i) {
        const auto index = static_cast<std::int32_t>(i);
        if (!take_stage(refusal, link, i, stage) || !order.next(refusal, stage, index) ||
            !check_tables(refusal, stage, link.frequency_mhz, index) ||
            (stage.has_path && !check_walk(refusal, link, stage, index)))
            return false;
        use(stage);
    }
    return order.end(refusal) && check_distances(refusal, link, order.air());
}

} // namespace lvb::door
