#define LVB_KERNEL kernel_baseline
#include "map/row.inc"
