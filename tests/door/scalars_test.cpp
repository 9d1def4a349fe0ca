// Every plain function of doubles against its own lines in the header: accuracy against the oracles, and range.
#include "antenna/oracle.hpp"
#include "noise/oracle.hpp"
#include "path/oracle.hpp"
#include "units/oracle.hpp"
#include "units/scalars.hpp"

#include <gtest/gtest.h>

#include <iomanip>
#include <sstream>

namespace {

using proof::Scalar;

constexpr double infinity = std::numeric_limits<double>::infinity();

const proof::Oracle *oracle_of(const std::string &function) {
    for (const auto *rows : {&proof::units_oracle::rows, &proof::antenna_oracle::rows, &proof::path_oracle::rows,
                             &proof::noise_oracle::rows})
        for (const proof::Oracle &oracle : *rows)
            if (function == oracle.function) return &oracle;
    return nullptr;
}

std::string told(const Scalar &scalar, const std::vector<double> &arguments) {
    std::ostringstream out;
    out << scalar.name << std::setprecision(17);
    for (const double x : arguments) out << ' ' << x;
    return out.str();
}

// No result can be nearer than the doubles are apart: one of the two that enclose the exact value always serves.
bool encloses(double got, long double exact) {
    if (static_cast<long double>(got) == exact) return true;
    if (static_cast<long double>(got) < exact) return static_cast<long double>(std::nextafter(got, infinity)) > exact;
    return static_cast<long double>(std::nextafter(got, -infinity)) < exact;
}

// Where the accuracy lines hold, as the header says above the conversions.
bool accuracy_holds(const proof::Interval &interval, double x) {
    const bool decibels = interval.argument.find("_db") != std::string::npos;
    return x == 0.0 || (std::fabs(x) >= 1e-100 && std::fabs(x) <= (decibels ? 1000.0 : 1e100));
}

class Each : public testing::TestWithParam<Scalar> {};

TEST_P(Each, KeepsItsStatedAccuracy) {
    const Scalar &scalar = GetParam();
    const proof::Oracle *oracle = oracle_of(scalar.name);
    ASSERT_NE(oracle, nullptr) << scalar.name << " has no oracle";
    const auto intervals = proof::intervals(scalar);
    const auto accuracy = proof::accuracy(scalar);
    proof::Random random(20250101);
    int misses = 0;
    long double worst = 0.0L;
    std::string worst_case;
    for (int i = 0; i < 20000; ++i) {
        std::vector<double> x;
        for (const auto &interval : intervals) {
            x.push_back(proof::sample(interval, random));
            while (!accuracy_holds(interval, x.back())) x.back() = proof::sample(interval, random);
        }
        const long double exact = oracle->value(proof::Reals(x.begin(), x.end()));
        const double got = scalar.call(x.data());
        if (std::isinf(exact) || std::isinf(got)) {
            // infinity is the right answer for itself and for what no double can hold
            EXPECT_EQ(got, static_cast<double>(exact)) << told(scalar, x);
            continue;
        }
        const long double excess = std::fabs(static_cast<long double>(got) - exact) / accuracy.allowed(exact);
        if (excess <= 1.0L || encloses(got, exact)) continue;
        ++misses;
        if (excess > worst || std::isnan(excess)) {
            worst = excess;
            std::ostringstream out;
            out << told(scalar, x) << " gives " << std::setprecision(17) << got << ", exactly " << std::setprecision(21)
                << exact;
            worst_case = out.str();
        }
    }
    EXPECT_EQ(misses, 0) << "of 20000; worst by a factor of " << worst << ": " << worst_case;
}

TEST_P(Each, GivesNanOutsideItsRangeAndOnlyThere) {
    const Scalar &scalar = GetParam();
    const auto intervals = proof::intervals(scalar);
    proof::Random random(20250102);
    for (std::size_t k = 0; k < intervals.size(); ++k) {
        const auto &range = intervals[k];
        std::vector<double> outside = {
            std::numeric_limits<double>::quiet_NaN(), range.low, range.high, -std::numeric_limits<double>::max(),
            std::numeric_limits<double>::max(),       -infinity, infinity};
        std::vector<double> inside;
        if (std::isfinite(range.low)) {
            outside.push_back(std::nextafter(range.low, -infinity));
            inside.push_back(std::nextafter(range.low, infinity));
        }
        if (std::isfinite(range.high)) {
            outside.push_back(std::nextafter(range.high, infinity));
            inside.push_back(std::nextafter(range.high, -infinity));
        }
        std::erase_if(outside, [&](double x) { return range.holds(x); });
        for (const double x : {range.low, range.high, std::numeric_limits<double>::max(),
                               -std::numeric_limits<double>::max(), std::numeric_limits<double>::denorm_min()})
            if (range.holds(x)) inside.push_back(x);
        ASSERT_FALSE(outside.empty());
        ASSERT_FALSE(inside.empty());
        for (int i = 0; i < 200; ++i) {
            std::vector<double> x;
            for (const auto &interval : intervals) x.push_back(proof::sample(interval, random));
            for (const double bad : outside) {
                x[k] = bad;
                EXPECT_TRUE(std::isnan(scalar.call(x.data()))) << told(scalar, x);
            }
            for (const double good : inside) {
                x[k] = good;
                const bool stated_exception = std::string(scalar.name) == "lvb_thermal_noise_dbm" &&
                                              ((x[0] == 0.0 && x[1] == infinity) || (x[0] == infinity && x[1] == 0.0));
                EXPECT_EQ(std::isnan(scalar.call(x.data())), stated_exception) << told(scalar, x);
            }
        }
    }
}

TEST_P(Each, ReadsBothZerosAsZero) {
    const Scalar &scalar = GetParam();
    const auto intervals = proof::intervals(scalar);
    for (std::size_t k = 0; k < intervals.size(); ++k) {
        if (!intervals[k].holds(0.0)) continue;
        std::vector<double> x;
        for (const auto &interval : intervals) x.push_back(interval.holds(0.5) ? 0.5 : interval.low + 1.0);
        x[k] = 0.0;
        const double plus = scalar.call(x.data());
        x[k] = -0.0;
        EXPECT_EQ(scalar.call(x.data()), plus) << scalar.name << ", argument " << k;
    }
}

// All arguments at ends that belong to their ranges, together.
TEST_P(Each, AnswersAtEveryCornerOfItsRange) {
    const Scalar &scalar = GetParam();
    const auto intervals = proof::intervals(scalar);
    const auto corner = [&](std::size_t k, bool high) {
        const auto &range = intervals[k];
        if (high) return range.high_inside ? range.high : std::nextafter(range.high, -infinity);
        return range.low_inside ? range.low : std::nextafter(range.low, infinity);
    };
    for (std::size_t mask = 0; mask < (std::size_t{1} << scalar.arity); ++mask) {
        std::vector<double> x;
        for (std::size_t k = 0; k < scalar.arity; ++k) x.push_back(corner(k, (mask >> k & 1) != 0));
        const bool stated_exception =
            std::string(scalar.name) == "lvb_thermal_noise_dbm" && (x[0] == 0.0) != (x[1] == 0.0);
        EXPECT_EQ(std::isnan(scalar.call(x.data())), stated_exception) << told(scalar, x);
    }
}

INSTANTIATE_TEST_SUITE_P(Scalar, Each, testing::ValuesIn(proof::scalars()),
                         [](const auto &scalar) { return std::string(scalar.param.name); });

TEST(Oracles, AreNotLeftOverFromFunctionsThatAreGone) {
    std::size_t found = 0;
    for (const Scalar &scalar : proof::scalars()) found += oracle_of(scalar.name) != nullptr ? 1u : 0u;
    EXPECT_EQ(found, proof::units_oracle::rows.size() + proof::antenna_oracle::rows.size() +
                         proof::path_oracle::rows.size() + proof::noise_oracle::rows.size());
}

} // namespace
