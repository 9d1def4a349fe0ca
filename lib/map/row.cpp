#include "map/row.hpp"

namespace lvb::map {

namespace kernel_baseline {
extern const RowLoops loops;
}

#if defined(LVB_HAS_X86_LOOPS) // set where the build compiles them
namespace kernel_avx2 {
extern const RowLoops loops;
}
namespace kernel_avx512 {
extern const RowLoops loops;
}

const RowLoops &row_loops_of(math::InstructionSet set) noexcept {
    switch (set) {
    case math::InstructionSet::avx512:
        return kernel_avx512::loops;
    case math::InstructionSet::avx2:
        return kernel_avx2::loops;
    case math::InstructionSet::baseline:
        break;
    }
    return kernel_baseline::loops;
}

#else

const RowLoops &row_loops_of(math::InstructionSet) noexcept { return kernel_baseline::loops; }

#endif

} // namespace lvb::map
