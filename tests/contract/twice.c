/* The header twice, after which everything is there once. */
#include <levelbook/levelbook.h>

typedef lvb_status (*lvb_twice_is_not_empty)(const lvb_link *, lvb_budget *, lvb_level *, uint32_t, lvb_fault *);
