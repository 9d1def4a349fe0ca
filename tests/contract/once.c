/* The header alone. */
#include <levelbook/levelbook.h>

typedef int lvb_once_is_not_empty;
