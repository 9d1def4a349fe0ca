#include "math/loops.hpp"

#if defined(LVB_HAS_X86_LOOPS) // set where the build compiles them
#include <cpuid.h>
#endif

namespace lvb::math {

namespace kernel_baseline {
extern const Loops loops;
}

#if defined(LVB_HAS_X86_LOOPS)
namespace kernel_avx2 {
extern const Loops loops;
}
namespace kernel_avx512 {
extern const Loops loops;
}

namespace {

struct Processor {
    std::uint32_t saved_states; ///< bits of XCR0: which registers the operating system saves; 0 where it does not tell
    std::uint32_t features;     ///< register B of leaf 7

    bool has(InstructionSet set) const noexcept {
        constexpr std::uint32_t wide_states = 0x06, mask_states = 0xe6; // XMM and YMM; and with them opmask and ZMM
        switch (set) {
        case InstructionSet::avx2:
            return holds(wide_states, bit_AVX2);
        case InstructionSet::avx512:
            return holds(mask_states, bit_AVX2 | bit_AVX512F | bit_AVX512DQ | bit_AVX512VL);
        case InstructionSet::baseline:
            break;
        }
        return true;
    }

  private:
    bool holds(std::uint32_t states, std::uint32_t bits) const noexcept {
        return (saved_states & states) == states && (features & bits) == bits;
    }
};

// Each question may trap on a virtual machine, so all of them are asked here, once.
Processor ask_processor() noexcept {
    Processor processor{};
    unsigned a, b, c, d;
    if (__get_cpuid(1, &a, &b, &c, &d) == 0 || (c & bit_OSXSAVE) == 0) return processor;
    std::uint32_t high;
    __asm__ volatile("xgetbv" : "=a"(processor.saved_states), "=d"(high) : "c"(0));
    if (__get_cpuid_count(7, 0, &a, &b, &c, &d) != 0) processor.features = b;
    return processor;
}

} // namespace

bool has(InstructionSet set) noexcept { return set == InstructionSet::baseline || ask_processor().has(set); }

InstructionSet best_instruction_set() noexcept {
    const Processor processor = ask_processor();
    if (processor.has(InstructionSet::avx512)) return InstructionSet::avx512;
    return processor.has(InstructionSet::avx2) ? InstructionSet::avx2 : InstructionSet::baseline;
}

const Loops &loops_of(InstructionSet set) noexcept {
    switch (set) {
    case InstructionSet::avx512:
        return kernel_avx512::loops;
    case InstructionSet::avx2:
        return kernel_avx2::loops;
    case InstructionSet::baseline:
        break;
    }
    return kernel_baseline::loops;
}

#else

bool has(InstructionSet set) noexcept { return set == InstructionSet::baseline; }
InstructionSet best_instruction_set() noexcept { return InstructionSet::baseline; }
const Loops &loops_of(InstructionSet) noexcept { return kernel_baseline::loops; }

#endif

} // namespace lvb::math
