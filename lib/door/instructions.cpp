#include "door/instructions.hpp"

namespace lvb::door {
namespace {

// From here on asking the processor costs less than it brings.
constexpr std::uint64_t long_column = 65536;

} // namespace

bool choose_set(Refusal &refusal, std::int32_t instructions, std::uint64_t values, Place place,
                math::InstructionSet &set) noexcept {
    using math::InstructionSet;
    set = InstructionSet::baseline;
    if (instructions == LVB_INSTRUCTIONS_AUTOMATIC) {
        if (values >= long_column) set = math::best_instruction_set();
    } else {
        const bool asked = (instructions & LVB_INSTRUCTIONS_ASKED) != 0;
        const std::int32_t wanted = instructions & ~LVB_INSTRUCTIONS_ASKED;
        set = static_cast<InstructionSet>(wanted);
        if (wanted < LVB_INSTRUCTIONS_BASELINE || wanted > LVB_INSTRUCTIONS_AVX512 || !(asked || math::has(set)))
            return refuse(refusal, LVB_E_UNKNOWN_VALUE, place, LVB_FIELD_INSTRUCTIONS, instructions,
                          LVB_INSTRUCTIONS_AUTOMATIC, static_cast<double>(math::best_instruction_set()));
    }
    return true;
}

bool choose_loops(Refusal &refusal, std::int32_t instructions, std::uint64_t values, Place place,
                  const math::Loops *&loops) noexcept {
    math::InstructionSet set;
    if (!choose_set(refusal, instructions, values, place, set)) return false;
    loops = &math::loops_of(set);
    return true;
}

} // namespace lvb::door

extern "C" int32_t lvb_best_instructions(void) {
    return static_cast<int32_t>(lvb::math::best_instruction_set()) | LVB_INSTRUCTIONS_ASKED;
}
