/* The C++ comfort alone and twice, for compilers that do not build the tests. */
#include <levelbook/levelbook.hpp>

levelbook::Answer<lvb_budget> comfort(const lvb_link &link);
levelbook::Answer<lvb_budget> comfort(const lvb_link &link) { return levelbook::compute_budget(link); }

levelbook::Answer<lvb_bad> columns(std::span<const double> metres, std::span<double> loss_db);
levelbook::Answer<lvb_bad> columns(std::span<const double> metres, std::span<double> loss_db) {
    return levelbook::compute_columns(LVB_FORMULA_FREE_SPACE_LOSS_DB, {600.0, metres}, loss_db);
}
levelbook::Answer<lvb_bad> grid(const lvb_link &link, std::span<const double> mhz, std::span<double> level_dbm);
levelbook::Answer<lvb_bad> grid(const lvb_link &link, std::span<const double> mhz, std::span<double> level_dbm) {
    return levelbook::compute_grid(link, mhz, mhz, {}, level_dbm);
}
