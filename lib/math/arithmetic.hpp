// What the arithmetic of a compiler must be for the same bits everywhere: every file of the library that computes
// includes it, by way of the kernels or the constants.
#pragma once

#include <float.h>

#if defined(__FAST_MATH__) || defined(_M_FP_FAST)
#error "levelbook: fast-math changes results; it is not allowed in library files"
#endif

// x87 and its like carry more digits than binary64 from one operation to the next.
static_assert(FLT_EVAL_METHOD == 0,
              "levelbook: every operation must round to its own type (on x86: -msse2 -mfpmath=sse)");
