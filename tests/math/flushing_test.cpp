// A thread that flushes subnormal numbers to zero, as audio threads do, gets the same bits wherever arguments and
// result are normal numbers: no subnormal number comes up in between that counts.
#include "chain/chains.hpp"
#include "math/values.hpp"

#include <gtest/gtest.h>

#include <iomanip>
#include <sstream>

#if defined(__SSE2__)
#include <immintrin.h>

namespace {

using namespace proof;

constexpr unsigned flush_results = 0x8000, read_as_zero = 0x0040; // FTZ and DAZ of the register MXCSR

class Flushing {
  public:
    Flushing() { _mm_setcsr(before_ | flush_results | read_as_zero); }
    ~Flushing() { _mm_setcsr(before_); }
    Flushing(const Flushing &) = delete;

  private:
    unsigned before_ = _mm_getcsr();
};

bool is_ordinary(double x) { return x == 0.0 || std::isnormal(x); }

/// Half of them ordinary, half of any size that a normal number has.
double normal_value(const support::Interval &range, Random &random) {
    for (;;) {
        const double x = value_of(random.below(2) != 0 ? Kind::ordinary : Kind::special, range, random);
        if (is_ordinary(x) && range.holds(x)) return x;
    }
}

TEST(Flushing, HappensHere) {
    const volatile double smallest = std::numeric_limits<double>::min();
    const Flushing flushing;
    EXPECT_TRUE(smallest * 0.5 == 0.0);
}

/// Some arguments at which flushing changes a normal result, as text; nothing where there are none.
std::string changed(const Function &function, Random &random) {
    for (int i = 0; i < function.share_of(40000); ++i) {
        double x[3] = {};
        for (std::size_t k = 0; k < function.arity(); ++k) x[k] = normal_value(function.range[k], random);
        const double expected = function.call(x);
        double got;
        {
            const Flushing flushing;
            got = function.call(x);
        }
        if (!std::isnormal(expected) || bits(got) == bits(expected)) continue;
        std::ostringstream out;
        out << std::setprecision(17) << x[0] << ' ' << x[1] << ' ' << x[2] << ": " << got << ", not " << expected;
        return out.str();
    }
    return {};
}

TEST(Flushing, ChangesNoNormalResultOfAFunction) {
    Random random(61);
    for (const Function &function : functions()) EXPECT_EQ(changed(function, random), "") << function.name;
}

TEST(Flushing, ChangesNoNormalResultInAColumn) {
    constexpr std::size_t count = 1024;
    Random random(62);
    for (std::size_t f = 0; f < functions().size(); ++f)
        for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) {
            const Function &function = functions()[f];
            std::vector<double> arguments[3], expected(count), got(count);
            for (std::size_t k = 0; k < function.arity(); ++k)
                for (std::size_t i = 0; i < count; ++i)
                    arguments[k].push_back(value_of(Kind::ordinary, function.range[k], random));
            auto columns = sized<lvb_columns>();
            columns.formula = static_cast<std::int32_t>(f + 1);
            columns.instructions = set | LVB_INSTRUCTIONS_ASKED;
            columns.count = count;
            columns.argument_1 = arguments[0].data();
            columns.argument_2 = function.arity() > 1 ? arguments[1].data() : nullptr;
            columns.argument_3 = function.arity() > 2 ? arguments[2].data() : nullptr;
            columns.result = expected.data();
            ASSERT_EQ(lvb_compute_columns(&columns, nullptr, nullptr), LVB_OK);
            columns.result = got.data();
            {
                const Flushing flushing;
                ASSERT_EQ(lvb_compute_columns(&columns, nullptr, nullptr), LVB_OK);
            }
            for (std::size_t i = 0; i < count; ++i)
                if (std::isnormal(expected[i])) {
                    ASSERT_EQ(bits(got[i]), bits(expected[i])) << function.name << " at " << i << ", set " << set;
                }
        }
}

} // namespace
#endif
