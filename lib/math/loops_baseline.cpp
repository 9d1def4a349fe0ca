#define LVB_KERNEL kernel_baseline
#include "math/loops.inc"
