#define LVB_KERNEL kernel_avx2
#include "math/loops.inc"
