// Every plain function of doubles against the range that its lines in the header state.
#include "units/scalars.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <iomanip>
#include <sstream>

namespace {

using support::Function;

constexpr double infinity = std::numeric_limits<double>::infinity();

std::string told(const Function &scalar, const std::vector<double> &arguments) {
    std::ostringstream out;
    out << scalar.name << std::setprecision(17);
    for (const double x : arguments) out << ' ' << x;
    return out.str();
}

class Each : public testing::TestWithParam<Function> {};

TEST_P(Each, GivesNanOutsideItsRangeAndOnlyThere) {
    const Function &scalar = GetParam();
    const auto &intervals = scalar.range;
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
                const bool stated_exception = scalar.name == "lvb_thermal_noise_dbm" &&
                                              ((x[0] == 0.0 && x[1] == infinity) || (x[0] == infinity && x[1] == 0.0));
                EXPECT_EQ(std::isnan(scalar.call(x.data())), stated_exception) << told(scalar, x);
            }
        }
    }
}

// IEEE 754 leaves sign and payload of a NaN that arithmetic makes to the processor: x86 and ARM differ in the sign.
// Every NaN must be the library's own, whatever the reason. Columns give the bits of the function (math/columns_test).
TEST_P(Each, GivesOneAndTheSameNan) {
    using limits = std::numeric_limits<double>;
    constexpr std::uint64_t quiet = 0x7ff8000000000000;
    const double special[] = {0.0,
                              -0.0,
                              1.0,
                              -1.0,
                              infinity,
                              -infinity,
                              std::bit_cast<double>(quiet),
                              std::bit_cast<double>(quiet | std::uint64_t{1} << 63),
                              std::bit_cast<double>(quiet | 5),
                              limits::signaling_NaN(),
                              limits::denorm_min(),
                              -limits::denorm_min(),
                              limits::min(),
                              limits::max(),
                              -limits::max(),
                              -273.15,
                              -459.67,
                              90.0,
                              1e12,
                              3000.0,
                              -3000.0,
                              20000.0};
    const Function &scalar = GetParam();
    constexpr std::size_t count = std::size(special);
    std::size_t all = 1, seen = 0;
    for (std::size_t k = 0; k < scalar.arity(); ++k) all *= count;
    for (std::size_t i = 0; i < all; ++i) {
        const std::vector<double> x = {special[i % count], special[i / count % count], special[i / count / count]};
        const double got = scalar.call(x.data());
        if (!std::isnan(got)) continue;
        ++seen;
        EXPECT_EQ(std::bit_cast<std::uint64_t>(got), quiet) << told(scalar, x);
    }
    EXPECT_GT(seen, 0u);
}

TEST_P(Each, ReadsBothZerosAsZero) {
    const Function &scalar = GetParam();
    const auto &intervals = scalar.range;
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
    const Function &scalar = GetParam();
    const auto &intervals = scalar.range;
    const auto corner = [&](std::size_t k, bool high) {
        const auto &range = intervals[k];
        if (high) return range.high_belongs ? range.high : std::nextafter(range.high, -infinity);
        return range.low_belongs ? range.low : std::nextafter(range.low, infinity);
    };
    for (std::size_t mask = 0; mask < (std::size_t{1} << scalar.arity()); ++mask) {
        std::vector<double> x;
        for (std::size_t k = 0; k < scalar.arity(); ++k) x.push_back(corner(k, (mask >> k & 1) != 0));
        const bool stated_exception = scalar.name == "lvb_thermal_noise_dbm" && (x[0] == 0.0) != (x[1] == 0.0);
        EXPECT_EQ(std::isnan(scalar.call(x.data())), stated_exception) << told(scalar, x);
    }
}

INSTANTIATE_TEST_SUITE_P(Scalar, Each, testing::ValuesIn(support::functions()),
                         [](const auto &scalar) { return scalar.param.name; });

} // namespace
