// Columns: every formula, on every instruction set that runs here, gives the bits of the plain function of its name,
// whatever stands in the columns, how long they are and where they lie. The plain functions themselves are checked
// against published values and MPFR elsewhere.
#include "chain/chains.hpp"
#include "math/values.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>

namespace {

using namespace proof;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// The lines "LVB_FORMULA_NAME = number" of the header.
std::map<std::string, std::int32_t> formulas_of_the_header() {
    const std::string prefix = "LVB_FORMULA_";
    std::ifstream file(LEVELBOOK_HEADER);
    std::map<std::string, std::int32_t> found;
    for (std::string word, equals; file >> word;) {
        if (word.rfind(prefix, 0) != 0) continue;
        std::int32_t number = 0;
        if (!(file >> equals) || equals != "=" || !(file >> number)) {
            file.clear(); // named in a comment
            continue;
        }
        EXPECT_TRUE(found.emplace(word.substr(prefix.size()), number).second) << word << " twice";
    }
    return found;
}

std::string formula_name(const Function &function) {
    std::string name = function.name.substr(std::string("lvb_").size());
    for (char &c : name) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    return name;
}

TEST(Formulas, AreNumberedAsTheFunctionsOfTheHeader) {
    const auto header = formulas_of_the_header();
    EXPECT_GE(functions().size(), 76u);
    EXPECT_EQ(header.size(), functions().size() + 1); // with LVB_FORMULA_NONE
    std::int32_t row = 0;
    for (const Function &function : functions()) {
        ++row;
        const auto found = header.find(formula_name(function));
        ASSERT_NE(found, header.end()) << function.name << " has no LVB_FORMULA_";
        EXPECT_EQ(found->second, row) << function.name;
    }
}

constexpr std::size_t margin = 8; // values before and after a result that must stay as they are
constexpr double mark = -7.25e77;

/// Columns of one formula with what the plain function gives for them.
struct Case {
    const Function &function;
    std::int32_t formula;
    std::uint32_t single;
    std::size_t count;
    std::vector<double> arguments[3];
    std::vector<double> expected;
    std::uint64_t bad = 0, first_bad = 0;

    Case(std::int32_t number, std::uint32_t mask, std::size_t length, Kind kind, Random &random)
        : function(functions()[static_cast<std::size_t>(number - 1)]), formula(number), single(mask), count(length),
          expected(length) {
        for (std::size_t i = 0; i < function.arity(); ++i) {
            arguments[i].resize(is_single(i) ? 1 : length);
            for (double &x : arguments[i]) x = value_of(kind, function.range[i], random);
        }
        first_bad = length;
        for (std::size_t k = 0; k < length; ++k) {
            double x[3] = {};
            for (std::size_t i = 0; i < function.arity(); ++i) x[i] = arguments[i][is_single(i) ? 0 : k];
            expected[k] = function.call(x);
            if (std::isnan(expected[k]) && bad++ == 0) first_bad = k;
        }
    }
    bool is_single(std::size_t argument) const { return (single >> argument & 1u) != 0; }

    lvb_columns columns(std::int32_t instructions) const {
        auto made = sized<lvb_columns>();
        made.formula = formula;
        made.instructions = instructions;
        made.single = single;
        made.count = count;
        made.argument_1 = arguments[0].data();
        made.argument_2 = function.arity() > 1 ? arguments[1].data() : nullptr;
        made.argument_3 = function.arity() > 2 ? arguments[2].data() : nullptr;
        return made;
    }
    void check(const lvb_columns &columns, const std::string &how) const {
        auto told = sized<lvb_bad>();
        auto fault = sized<lvb_fault>();
        ASSERT_EQ(lvb_compute_columns(&columns, &told, &fault), LVB_OK) << function.name << how;
        for (std::size_t k = 0; k < count; ++k)
            ASSERT_TRUE(identical(columns.result[k], expected[k]))
                << function.name << how << ", value " << k << " of " << count << ", single " << single << std::hexfloat
                << ": " << columns.result[k] << ", but the function gives " << expected[k];
        EXPECT_EQ(told.count, bad) << function.name << how;
        EXPECT_EQ(told.first, first_bad) << function.name << how;
        EXPECT_EQ(told.size, sizeof told);
        EXPECT_EQ(told.reserved, 0u);
        EXPECT_EQ(fault.status, LVB_OK);
    }
    /// Into memory of its own, at a place that is off the alignment of vectors by `offset` values.
    void check_apart(std::int32_t instructions, std::size_t offset) const {
        std::vector<double> room(count + offset + 2 * margin, mark);
        lvb_columns made = columns(instructions);
        made.result = room.data() + margin + offset;
        check(made, ", instructions " + std::to_string(instructions) + ", offset " + std::to_string(offset));
        for (std::size_t k = 0; k < margin + offset; ++k) ASSERT_EQ(room[k], mark);
        for (std::size_t k = room.size() - margin; k < room.size(); ++k) ASSERT_EQ(room[k], mark);
    }
    /// In place of an argument, which lies off the alignment of vectors too.
    void check_in_place(std::int32_t instructions, std::size_t argument, std::size_t offset) const {
        std::vector<double> room(count + offset + margin, mark);
        std::copy(arguments[argument].begin(), arguments[argument].end(),
                  room.begin() + static_cast<std::ptrdiff_t>(offset));
        lvb_columns made = columns(instructions);
        made.result = room.data() + offset;
        (argument == 0 ? made.argument_1 : argument == 1 ? made.argument_2 : made.argument_3) = made.result;
        check(made, ", instructions " + std::to_string(instructions) + ", in place of argument " +
                        std::to_string(argument + 1));
        for (std::size_t k = room.size() - margin; k < room.size(); ++k) ASSERT_EQ(room[k], mark);
    }
};

bool is_slow(std::int32_t formula) { return support::is_slow(functions()[static_cast<std::size_t>(formula - 1)].name); }

class EveryFormula : public testing::TestWithParam<Kind> {};

TEST_P(EveryFormula, GivesTheBitsOfItsFunction) {
    Random random(91 + static_cast<std::uint64_t>(GetParam()));
    std::uint64_t good = 0, bad = 0;
    for (std::int32_t formula = 1; formula <= static_cast<std::int32_t>(functions().size()); ++formula) {
        const std::size_t arity = functions()[static_cast<std::size_t>(formula - 1)].arity();
        for (std::uint32_t single = 0; single < 1u << arity; ++single)
            for (const std::size_t count : std::initializer_list<std::size_t>{0, 1, 127, 128, 129, 1000}) {
                if (count > 129 && is_slow(formula)) continue;
                const Case made(formula, single, count, GetParam(), random);
                good += count - made.bad;
                bad += made.bad;
                for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) {
                    const std::int32_t instructions = set | LVB_INSTRUCTIONS_ASKED;
                    made.check_apart(instructions, random.below(margin));
                    for (std::size_t i = 0; i < arity; ++i)
                        if (!made.is_single(i)) made.check_in_place(instructions, i, random.below(margin));
                    if (HasFatalFailure() || HasNonfatalFailure()) return;
                }
            }
    }
    // the values do what they are there for
    EXPECT_GT(good, 100000u);
    if (GetParam() == Kind::ordinary) {
        EXPECT_EQ(bad, 0u);
    } else {
        EXPECT_GT(bad, 300u);
    }
}

std::string name_of(const testing::TestParamInfo<Kind> &info) {
    switch (info.param) {
    case Kind::ordinary:
        return "OfOrdinaryValues";
    case Kind::mixed:
        return "OfMixedValues";
    case Kind::special:
        return "OfSpecialValues";
    case Kind::any_bits:
        break;
    }
    return "OfAnyBits";
}
INSTANTIATE_TEST_SUITE_P(Columns, EveryFormula,
                         testing::Values(Kind::ordinary, Kind::mixed, Kind::special, Kind::any_bits), name_of);

// Where loops hand over to the plain function: each end of every ordinary range, and one bit to either side, alone in a
// piece of ordinary values. Powers of ten and two beside the figures of formulas.inc, so that a moved figure is met
// too.
TEST(Columns, HaveNoSeamBetweenOrdinaryAndOtherValues) {
    Random random(96);
    const double infinity = std::numeric_limits<double>::infinity();
    std::vector<double> edges;
    for (const double x : {0.0,    0x1p-1022, 1e-290, 1e-300, 1e-310, 1.0,    2950.0,
                           3000.0, 3030.0,    3060.0, 3070.0, 3083.0, 3240.0, 6000.0,
                           6140.0, 6160.0,    6480.0, 1e12,   1e290,  1e300,  1.7976931348623157e308,
                           273.15, 459.67})
        for (const double sign : {1.0, -1.0})
            for (const double edge :
                 {sign * x, std::nextafter(sign * x, infinity), std::nextafter(sign * x, -infinity)})
                edges.push_back(edge);
    for (std::int32_t formula = 1; formula <= static_cast<std::int32_t>(functions().size()); ++formula) {
        if (is_slow(formula)) continue; // no loop, no seam
        const std::size_t arity = functions()[static_cast<std::size_t>(formula - 1)].arity();
        for (std::size_t argument = 0; argument < arity; ++argument)
            for (const double edge : edges) {
                Case made(formula, 0, 128, Kind::ordinary, random);
                const std::size_t at = random.below(128);
                made.arguments[argument][at] = edge;
                double x[3] = {};
                for (std::size_t i = 0; i < arity; ++i) x[i] = made.arguments[i][at];
                made.expected[at] = made.function.call(x);
                made.bad = std::isnan(made.expected[at]);
                made.first_bad = made.bad ? at : 128;
                for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set)
                    made.check_apart(set | LVB_INSTRUCTIONS_ASKED, 0);
                if (HasFatalFailure() || HasNonfatalFailure()) return;
            }
    }
}

// Whole columns of one value: what every piece is asked, all arguments answer alike.
TEST(Columns, MayHoldOneValueOnly) {
    Random random(99);
    for (std::int32_t formula = 1; formula <= static_cast<std::int32_t>(functions().size()); ++formula) {
        const std::size_t arity = functions()[static_cast<std::size_t>(formula - 1)].arity();
        for (std::uint32_t single = 0; single < 1u << arity; ++single)
            for (const double value : {0.0, -0.0, 1.0, 0.5, 1e-290, 3000.0, nan}) {
                Case made(formula, single, 256, Kind::ordinary, random);
                for (auto &argument : made.arguments) std::fill(argument.begin(), argument.end(), value);
                const double x[3] = {value, value, value};
                std::fill(made.expected.begin(), made.expected.end(), made.function.call(x));
                made.bad = std::isnan(made.expected[0]) ? 256 : 0;
                made.first_bad = made.bad != 0 ? 0 : 256;
                for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set)
                    made.check_apart(set | LVB_INSTRUCTIONS_ASKED, 0);
                if (HasFatalFailure() || HasNonfatalFailure()) return;
            }
    }
}

// The same column as two arguments, and as the result too.
TEST(Columns, MayShareOneColumn) {
    Random random(97);
    Case made(LVB_FORMULA_FREE_SPACE_LOSS_DB, 0, 400, Kind::mixed, random);
    made.arguments[1] = made.arguments[0];
    for (std::size_t k = 0; k < made.count; ++k)
        made.expected[k] = lvb_free_space_loss_db(made.arguments[0][k], made.arguments[0][k]);
    for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) {
        std::vector<double> room = made.arguments[0];
        lvb_columns columns = made.columns(set | LVB_INSTRUCTIONS_ASKED);
        columns.argument_1 = columns.argument_2 = columns.result = room.data();
        ASSERT_EQ(lvb_compute_columns(&columns, nullptr, nullptr), LVB_OK);
        for (std::size_t k = 0; k < made.count; ++k) ASSERT_TRUE(identical(room[k], made.expected[k])) << k;
    }
}

// A single value may lie in the result: it counts as it was before the call, wherever it lies.
TEST(Columns, MayHaveASingleValueInTheResult) {
    Random random(100);
    for (std::int32_t formula = 1; formula <= static_cast<std::int32_t>(functions().size()); ++formula) {
        const std::size_t arity = functions()[static_cast<std::size_t>(formula - 1)].arity();
        for (std::uint32_t single = 1; single < 1u << arity; ++single)
            for (const std::size_t at : std::initializer_list<std::size_t>{0, 1, 127, 128, 200, 299}) {
                if (at != 0 && is_slow(formula)) break;
                const Case made(formula, single, 300, Kind::ordinary, random);
                for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) {
                    std::vector<double> room(made.count);
                    lvb_columns columns = made.columns(set | LVB_INSTRUCTIONS_ASKED);
                    columns.result = room.data();
                    const double **given[] = {&columns.argument_1, &columns.argument_2, &columns.argument_3};
                    std::size_t place = at; // single values side by side
                    for (std::size_t i = 0; i < arity; ++i)
                        if (made.is_single(i)) {
                            room[place] = made.arguments[i][0];
                            *given[i] = &room[place];
                            place = (place + 1) % made.count;
                        }
                    made.check(columns, ", single values in the result from " + std::to_string(at));
                    if (HasFatalFailure() || HasNonfatalFailure()) return;
                }
            }
    }
}

TEST(Columns, CountWhatIsBadWhereverItStands) {
    std::vector<double> x(300, 2.0), y(300);
    auto columns = sized<lvb_columns>();
    columns.formula = LVB_FORMULA_DBM_FROM_MW;
    columns.count = x.size();
    columns.argument_1 = x.data();
    columns.result = y.data();
    auto bad = sized<lvb_bad>();
    ASSERT_EQ(lvb_compute_columns(&columns, &bad, nullptr), LVB_OK);
    EXPECT_EQ(bad.count, 0u);
    EXPECT_EQ(bad.first, 300u); // none: the columns' count
    for (const std::size_t first : std::initializer_list<std::size_t>{0, 1, 127, 128, 255, 256, 299}) {
        std::fill(x.begin(), x.end(), 2.0);
        x[first] = -1.0;
        x[299] = nan;
        ASSERT_EQ(lvb_compute_columns(&columns, &bad, nullptr), LVB_OK);
        EXPECT_EQ(bad.count, first == 299 ? 1u : 2u);
        EXPECT_EQ(bad.first, first);
        EXPECT_TRUE(std::isnan(y[first]) && std::isnan(y[299]));
    }
    std::fill(x.begin(), x.end(), nan);
    ASSERT_EQ(lvb_compute_columns(&columns, &bad, nullptr), LVB_OK);
    EXPECT_EQ(bad.count, 300u);
    EXPECT_EQ(bad.first, 0u);
    columns.count = 0;
    ASSERT_EQ(lvb_compute_columns(&columns, &bad, nullptr), LVB_OK);
    EXPECT_EQ(bad.count, 0u);
    EXPECT_EQ(bad.first, 0u);
}

TEST(Columns, OfNoValuesNeedNoMemory) {
    for (std::int32_t formula = 1; formula <= static_cast<std::int32_t>(functions().size()); ++formula) {
        auto columns = sized<lvb_columns>();
        columns.formula = formula;
        auto bad = sized<lvb_bad>();
        EXPECT_EQ(lvb_compute_columns(&columns, &bad, nullptr), LVB_OK);
        EXPECT_EQ(bad.count, 0u);
        EXPECT_EQ(bad.first, 0u);
    }
}

// Automatic choice below and from 65536 values, and sets that the library asks for itself.
TEST(Columns, ChooseTheirInstructionsWithoutChangingABit) {
    Random random(98);
    for (const std::size_t count : std::initializer_list<std::size_t>{65535, 65536}) {
        const Case made(LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO, 0, count, Kind::mixed, random);
        made.check_apart(LVB_INSTRUCTIONS_AUTOMATIC, 1);
        made.check_apart(lvb_best_instructions(), 1);
        for (std::int32_t set = LVB_INSTRUCTIONS_BASELINE; set <= instruction_sets(); ++set) made.check_apart(set, 1);
    }
}

// Against the compiler's own runtime, which asks the processor and the operating system by itself.
TEST(Instructions, AreWhatTheProcessorHas) {
    const std::int32_t best = lvb_best_instructions();
    EXPECT_NE(best & LVB_INSTRUCTIONS_ASKED, 0);
    std::int32_t expected = LVB_INSTRUCTIONS_BASELINE;
#if defined(__x86_64__)
    if (__builtin_cpu_supports("avx2")) expected = LVB_INSTRUCTIONS_AVX2;
    if (__builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512vl"))
        expected = LVB_INSTRUCTIONS_AVX512;
#endif
    EXPECT_EQ(best, expected | LVB_INSTRUCTIONS_ASKED);
    EXPECT_EQ(lvb_best_instructions(), best);
}

} // namespace
