// How well the law of cable attenuation predicts printed rows that it does not see. Every printed row that stands
// between two others is left out in turn; the figures are those of the publications' own rounding and scatter too.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "reference/judge.hpp"

namespace reference {
namespace {

struct Figures {
    std::vector<LeftOut> rows; // by rising magnitude
    double median() const { return std::fabs(rows[rows.size() / 2].percent); }
    double nine_of_ten() const { return std::fabs(rows[rows.size() * 9 / 10].percent); }
    const LeftOut &worst() const { return rows.back(); }
};

Figures figures(const std::vector<Table> &tables) {
    Figures found;
    for (const Table &table : tables)
        for (const LeftOut &one : leave_one_out(table)) found.rows.push_back(one);
    std::sort(found.rows.begin(), found.rows.end(),
              [](const LeftOut &a, const LeftOut &b) { return std::fabs(a.percent) < std::fabs(b.percent); });
    return found;
}

void report(const Figures &of) {
    testing::Test::RecordProperty("rows", static_cast<int>(of.rows.size()));
    testing::Test::RecordProperty("median_percent", std::to_string(of.median()));
    testing::Test::RecordProperty("nine_of_ten_percent", std::to_string(of.nine_of_ten()));
    testing::Test::RecordProperty("worst_percent", std::to_string(of.worst().percent));
    testing::Test::RecordProperty("worst_row",
                                  of.worst().table + " at " + std::to_string(of.worst().frequency_mhz) + " MHz");
}

// Measured: 51 rows, median 1.3 %, nine of ten within 6.5 %, worst 13.6 % (RG-8X at 50 MHz, a row that its publication
// rounded so coarsely that the catalogue says so); without RG-8X worst 7.6 %.
TEST(LeaveOneOut, PredictsTheCatalogue) {
    const Figures all = figures(catalogue());
    report(all);
    EXPECT_GE(all.rows.size(), 51u);
    EXPECT_LT(all.median(), 1.5);
    EXPECT_LT(all.nine_of_ten(), 7.0);
    EXPECT_LT(std::fabs(all.worst().percent), 14.0);
    for (const LeftOut &row : all.rows)
        if (row.table != "RG-8X") {
            EXPECT_LT(std::fabs(row.percent), 8.0) << row.table << " at " << row.frequency_mhz << " MHz";
        }
}

// Measured: 68 rows, median 1.9 %, nine of ten within 6.6 %, worst 18.1 % (RG-5B/U at 10 MHz, predicted over two
// decades from 0.5 and 7.9).
TEST(LeaveOneOut, PredictsOtherPublications) {
    const Figures all = figures(read_folder(LEVELBOOK_REFERENCE_FOLDER).tables);
    report(all);
    EXPECT_GE(all.rows.size(), 68u);
    EXPECT_LT(all.median(), 2.1);
    EXPECT_LT(all.nine_of_ten(), 7.0);
    EXPECT_LT(std::fabs(all.worst().percent), 19.0);
}

// Smooth tables with three digits show the law itself rather than the printing.
TEST(LeaveOneOut, PredictsASmoothTableWithinOnePercent) {
    std::vector<Table> smooth;
    for (const Table &table : catalogue())
        if (table.name == "corrugated 1/2 in") smooth.push_back(table);
    ASSERT_EQ(smooth.size(), 1u);
    const Figures all = figures(smooth);
    ASSERT_EQ(all.rows.size(), 4u);
    EXPECT_LT(std::fabs(all.worst().percent), 1.0);
}

} // namespace
} // namespace reference
