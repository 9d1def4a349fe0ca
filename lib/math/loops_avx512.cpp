#define LVB_KERNEL kernel_avx512
#include "math/loops.inc"
