// What a chain may hold and in which order: the checks of lvb_compute_budget.
#pragma once

#include "chain/ledger.hpp"
#include "door/check.hpp"

namespace lvb::door {

/// A link's own fields, checked; the stages are read one by one by take_stage.
Refusal take_link(const lvb_link *link, lvb_link &copy, chain::Conditions &conditions) noexcept;

/// One stage of a checked link, checked and turned into what the model takes.
Refusal take_stage(const lvb_link &link, std::uint32_t index, chain::Stage &stage) noexcept;

/// The order of stages: one source first, antennas on both sides of the air, the receiver last.
class Order {
  public:
    Refusal next(chain::Kind kind, std::int32_t index) noexcept;
    Refusal end() const noexcept;

  private:
    int antennas_ = 0;
    std::int32_t air_ = -1;
    bool receiver_ = false;
};

} // namespace lvb::door
