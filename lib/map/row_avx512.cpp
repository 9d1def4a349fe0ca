#define LVB_KERNEL kernel_avx512
#include "map/row.inc"
