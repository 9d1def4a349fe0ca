/* The C++ comfort alone and twice, for compilers that do not build the tests. */
#include <levelbook/levelbook.hpp>

levelbook::Answer<lvb_budget> comfort(const lvb_link &link);
levelbook::Answer<lvb_budget> comfort(const lvb_link &link) { return levelbook::compute_budget(link); }
