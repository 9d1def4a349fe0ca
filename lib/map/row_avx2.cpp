#define LVB_KERNEL kernel_avx2
#include "map/row.inc"
