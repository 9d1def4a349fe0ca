// Every plain function against its line in the header and its row in the table.
#include "accuracy/oracles.hpp"
#include "accuracy/table.hpp"
#include "support/functions.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace {

using accuracy::figure;
using accuracy::Measured;
using accuracy::Row;

// How far a promise may stay behind what was measured: a fifth, and a rounding up.
constexpr double slack = 1.2, rounding = 0.1;

const std::vector<Row> &table() {
    static const std::vector<Row> rows = [] {
        std::ifstream file(LEVELBOOK_ACCURACY_TABLE);
        std::ostringstream text;
        text << file.rdbuf();
        return accuracy::rows_in(text.str());
    }();
    return rows;
}

Row row_of(const std::string &function) {
    for (const Row &row : table())
        if (row.function == function) return row;
    ADD_FAILURE() << function << " has no row in the table: build levelbook_accuracy_table";
    return {};
}

std::string told(const accuracy::Worst &worst) {
    std::ostringstream out;
    out.precision(17);
    for (const double x : worst.at) out << ' ' << x;
    return out.str();
}

class Function : public testing::TestWithParam<support::Function> {};

TEST_P(Function, KeepsItsStatedAccuracy) {
    const auto stated = proof::accuracy(GetParam());
    const Measured measured = accuracy::measure(GetParam(), support::is_slow(GetParam().name) ? 500 : 4000);
    EXPECT_LE(measured.ulp.error, stated.ulp) << told(measured.ulp);
    EXPECT_LE(measured.near_zero.error, stated.absolute) << told(measured.near_zero);

    const Row row = row_of(GetParam().name);
    EXPECT_LE(measured.ulp.error, figure(row.ulp)) << told(measured.ulp);
    EXPECT_LE(measured.near_zero.error, figure(row.near_zero)) << told(measured.near_zero);
    EXPECT_LE(measured.plain.error, figure(row.plain)) << told(measured.plain);
}

TEST_P(Function, StatesWhatTheTableShows) {
    const auto stated = proof::accuracy(GetParam());
    const Row row = row_of(GetParam().name);
    EXPECT_EQ(row.range, GetParam().range_line);
    EXPECT_EQ(row.stated, GetParam().accuracy_line);
    EXPECT_GE(std::stod(row.points), 100000.0);
    EXPECT_LE(figure(row.ulp), stated.ulp);
    EXPECT_GE(figure(row.ulp) * slack + rounding, stated.ulp) << "promises far less than was measured";
    EXPECT_LE(figure(row.near_zero), stated.absolute);
    EXPECT_GE(figure(row.near_zero) * 2.0, stated.absolute) << "promises far less than was measured";
    // Both in the same unit, and the one is the worst of all points.
    EXPECT_GE(figure(row.plain), figure(row.near_zero));
}

// Every argument as small or as large as its range allows, in all combinations: digits may be lost so far out, but
// where the exact result is a normal number, the result is neither infinite, nor zero, nor NaN, nor another number.
TEST_P(Function, GivesANumberWhereverTheExactResultIsOne) {
    constexpr double far_out = 1e-9; // relative; the worst that digits lost in subnormal numbers leave
    const accuracy::Oracle oracle = accuracy::oracle_of(GetParam().name);
    std::vector<std::vector<double>> extremes;
    for (const support::Interval &interval : GetParam().range) extremes.push_back(accuracy::extremes(interval));
    std::size_t all = 1, seen = 0;
    for (const auto &each : extremes) all *= each.size();
    for (std::size_t i = 0; i < all; ++i) {
        std::vector<double> x;
        std::size_t rest = i;
        for (const auto &each : extremes) {
            x.push_back(each[rest % each.size()]);
            rest /= each.size();
        }
        const accuracy::Real exact = oracle(x.data());
        if (!exact.is_number() || !std::isnormal(exact.rounded())) continue;
        ++seen;
        const double error = abs(accuracy::Real(GetParam().call(x.data())) - exact).rounded();
        const double allowed = std::fmax(far_out * std::fabs(exact.rounded()), proof::accuracy(GetParam()).absolute);
        std::ostringstream out;
        out.precision(17);
        for (const double argument : x) out << ' ' << argument;
        EXPECT_TRUE(error <= allowed) << "at" << out.str() << ": " << GetParam().call(x.data()) << ", exactly "
                                      << exact.rounded();
    }
    EXPECT_GT(seen, extremes[0].size() / 4);
}

INSTANTIATE_TEST_SUITE_P(Accuracy, Function, testing::ValuesIn(support::functions()),
                         [](const auto &scalar) { return scalar.param.name; });

TEST(Table, HoldsEveryFunctionOnceAndNothingElse) {
    EXPECT_EQ(table().size(), support::functions().size() + accuracy::kernels().size());
    EXPECT_EQ(accuracy::oracle_count(), support::functions().size());
}

// The bars of the project: decibels and their inverses within one unit in the last place, or 1e-13 dB near zero.
TEST(Bars, DecibelConversionsAndFreeSpaceLossLieWithinOneUlp) {
    int found = 0;
    for (const support::Function &scalar : support::functions()) {
        const std::string name = scalar.name;
        const bool level = name.starts_with("lvb_db") && name.find("_from_") != std::string::npos;
        const bool inverse = name.ends_with("_from_dbm") || name.ends_with("_from_dbw") || name.ends_with("_from_db") ||
                             name.ends_with("_from_dbuv") || name.ends_with("_from_dbuv_per_m");
        if (!level && !inverse && name != "lvb_free_space_loss_db") continue;
        ++found;
        EXPECT_LE(proof::accuracy(scalar).ulp, 1.0) << name;
        EXPECT_LE(proof::accuracy(scalar).absolute, 1e-13) << name;
    }
    EXPECT_GE(found, 29);
}

class KernelSearch : public testing::TestWithParam<accuracy::Kernel> {};

TEST_P(KernelSearch, StaysBelowItsBound) {
    const Measured measured = accuracy::search(GetParam(), 50000);
    EXPECT_LT(measured.ulp.error, GetParam().bound_ulp) << told(measured.ulp);
    const Row row = row_of(std::string("kernel of ") + GetParam().function);
    EXPECT_GE(std::stod(row.points), 1e7);
    EXPECT_LE(measured.ulp.error, figure(row.ulp)) << told(measured.ulp);
    EXPECT_LE(figure(row.ulp), GetParam().bound_ulp);
}

INSTANTIATE_TEST_SUITE_P(Accuracy, KernelSearch, testing::ValuesIn(accuracy::kernels()),
                         [](const auto &kernel) { return std::string(kernel.param.function); });

} // namespace
