/* Must not compile under -Wpadded -Werror: shows that the header tests can fail. */
#include <levelbook/levelbook.h>

typedef struct lvb_with_a_hole {
    uint32_t size;
    double value;
    uint32_t tail;
} lvb_with_a_hole;
typedef char lvb_hole_is_there[sizeof(lvb_with_a_hole) > 20 ? 1 : -1];
