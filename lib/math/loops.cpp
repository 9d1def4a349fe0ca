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

// Which register states the operating system saves: bits of XCR0, 0 where it does not tell.
std::uint32_t saved_states() noexcept {
    unsigned a, b, c, d;
    if (__get_cpuid(1, &a, &b, &c, &d) == 0 || (c & bit_OSXSAVE) == 0) return 0;
    std::uint32_t low, high;
    __asm__ volatile("xgetbv" : "=a"(low), "=d"(high) : "c"(0));
    return low;
}

bool processor_has(InstructionSet set) noexcept {
    constexpr std::uint32_t wide_states = 0x06, mask_states = 0xe6; // XMM and YMM; and with them opmask and ZMM
    const std::uint32_t needed = set == InstructionSet::avx2 ? wide_states : mask_states;
    if ((saved_states() & needed) != needed) return false;
    unsigned a, b, c, d;
    if (__get_cpuid_count(7, 0, &a, &b, &c, &d) == 0) return false;
    const unsigned bits = set == InstructionSet::avx2 ? bit_AVX2 : bit_AVX2 | bit_AVX512F | bit_AVX512DQ | bit_AVX512VL;
    return (b & bits) == bits;
}

} // namespace

bool has(InstructionSet set) noexcept { return set == InstructionSet::baseline || processor_has(set); }

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
const Loops &loops_of(InstructionSet) noexcept { return kernel_baseline::loops; }

#endif

InstructionSet best_instruction_set() noexcept {
    if (has(InstructionSet::avx512)) return InstructionSet::avx512;
    return has(InstructionSet::avx2) ? InstructionSet::avx2 : InstructionSet::baseline;
}

} // namespace lvb::math
