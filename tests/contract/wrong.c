/* Must not compile: shows that the header is read, and that its first version of a function counts. */
#include <levelbook/levelbook.h>

LVB_API float lvb_dbm_from_mw(float power_mw);
