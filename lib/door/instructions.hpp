// Which loops a call over many values runs.
#pragma once

#include "door/check.hpp"
#include "math/loops.hpp"

namespace lvb::door {

/// The instruction set for what the caller gave as `instructions`; the processor is asked unless the caller says that
/// it was.
bool choose_set(Refusal &refusal, std::int32_t instructions, std::uint64_t values, Place place,
                math::InstructionSet &set) noexcept;

/// The loops of that set.
bool choose_loops(Refusal &refusal, std::int32_t instructions, std::uint64_t values, Place place,
                  const math::Loops *&loops) noexcept;

} // namespace lvb::door
