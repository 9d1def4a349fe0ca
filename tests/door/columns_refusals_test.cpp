// Bad columns and grids: each gets its own status and a fault in numbers and words; results, scratch and counts stay
// untouched.
#include "door/refusal.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <vector>

namespace {

using namespace proof;

constexpr std::int32_t in_columns = LVB_STRUCT_COLUMNS, in_grid = LVB_STRUCT_GRID, in_link = LVB_STRUCT_LINK,
                       in_stage = LVB_STRUCT_STAGE;
constexpr double mark = -7.25e77;
constexpr double most = LVB_MAX_VALUES;
// The last number that has a name.
const double formulas = [] {
    std::int32_t last = 0;
    while (std::string(lvb_formula_name(last + 1)) != "unknown") ++last;
    return static_cast<double>(last);
}();

double best_set() { return lvb_best_instructions() & ~LVB_INSTRUCTIONS_ASKED; }

// Counts that no memory stands behind: one too many, and such that products and sizes in bytes wrap around to little.
const std::uint64_t hostile[] = {std::uint64_t{LVB_MAX_VALUES} + 1,
                                 std::uint64_t{1} << 32,
                                 std::uint64_t{1} << 61,
                                 (std::uint64_t{1} << 61) + 1,
                                 std::uint64_t{1} << 63,
                                 (std::uint64_t{1} << 63) + 2,
                                 std::numeric_limits<std::uint64_t>::max()};

// ---- Columns.

/// Sound columns of two arguments.
struct Columns {
    double first[3] = {1.0, 2.0, 3.0}, second[3] = {4.0, 5.0, 6.0}, result[3] = {mark, mark, mark};
    lvb_columns columns = sized<lvb_columns>();
    lvb_fault fault = sized<lvb_fault>();

    Columns() {
        columns.formula = LVB_FORMULA_FREE_SPACE_LOSS_DB;
        columns.count = 3;
        columns.argument_1 = first;
        columns.argument_2 = second;
        columns.result = result;
    }
    void refused(const Expected &expected) {
        Untouched<lvb_bad> bad;
        EXPECT_EQ(lvb_compute_columns(&columns, &bad.result, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_TRUE(bad.holds());
        EXPECT_EQ(lvb_compute_columns(&columns, nullptr, nullptr), expected.status);
        for (const double value : result) EXPECT_EQ(value, mark);
    }
};

TEST(ColumnsRefused, Sound) {
    Columns sound;
    auto bad = sized<lvb_bad>();
    EXPECT_EQ(lvb_compute_columns(&sound.columns, &bad, &sound.fault), LVB_OK);
    EXPECT_EQ(text_of(sound.fault), "nothing was refused.");
    EXPECT_EQ(sound.result[2], lvb_free_space_loss_db(3.0, 6.0));
    EXPECT_EQ(lvb_compute_columns(&sound.columns, nullptr, nullptr), LVB_OK);
}

TEST(ColumnsRefused, Formula) {
    Columns one;
    const std::string last = std::to_string(static_cast<int>(formulas));
    const std::string next = std::to_string(static_cast<int>(formulas) + 1);
    one.columns.formula = LVB_FORMULA_NONE;
    one.refused({LVB_E_MISSING, in_columns, LVB_FIELD_FORMULA, -1, -1, 0.0, 1.0, formulas,
                 "lvb_columns.formula is missing; allowed 1 to " + last + "."});
    one.columns.formula = static_cast<std::int32_t>(formulas) + 1;
    one.refused({LVB_E_UNKNOWN_VALUE, in_columns, LVB_FIELD_FORMULA, -1, -1, formulas + 1.0, 1.0, formulas,
                 "lvb_columns.formula is " + next + ", which this library does not know; allowed 1 to " + last + "."});
    for (const std::int32_t formula :
         {-1, 1000, std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()}) {
        one.columns.formula = formula;
        one.refused({LVB_E_UNKNOWN_VALUE, in_columns, LVB_FIELD_FORMULA, -1, -1, static_cast<double>(formula), 1.0,
                     static_cast<double>(formulas)});
    }
}

TEST(ColumnsRefused, Instructions) {
    Columns one;
    for (const std::int32_t instructions :
         {-1, 4, 5, 255, 256, 256 + 4, 256 + 255, 512, 512 + 1, 257 + 512, -256, -255,
          std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()}) {
        one.columns.instructions = instructions;
        one.refused({LVB_E_UNKNOWN_VALUE, in_columns, LVB_FIELD_INSTRUCTIONS, -1, -1, static_cast<double>(instructions),
                     0.0, best_set()});
        EXPECT_EQ(text_of(one.fault), "lvb_columns.instructions is " + std::to_string(instructions) +
                                          ", which this library or this processor does not have; allowed 0 to " +
                                          std::to_string(static_cast<int>(best_set())) +
                                          ", or what lvb_best_instructions gave.");
    }
    // a set that the processor lacks, asked for without ASKED; nothing to try where it has them all
    for (auto set = static_cast<std::int32_t>(best_set()) + 1; set <= LVB_INSTRUCTIONS_AVX512; ++set) {
        one.columns.instructions = set;
        one.refused({LVB_E_UNKNOWN_VALUE, in_columns, LVB_FIELD_INSTRUCTIONS, -1, -1, static_cast<double>(set), 0.0,
                     best_set()});
    }
}

TEST(ColumnsRefused, Counts) {
    for (const std::uint64_t count : hostile) {
        Columns one;
        one.columns.count = count;
        one.refused({LVB_E_COUNT, in_columns, LVB_FIELD_COUNT, -1, -1, static_cast<double>(count), 0.0, most});
    }
    Columns one;
    one.columns.count = std::uint64_t{LVB_MAX_VALUES} + 1;
    one.refused({LVB_E_COUNT, in_columns, LVB_FIELD_COUNT, -1, -1, most + 1.0, 0.0, most,
                 "lvb_columns.count is 1073741825; allowed 0 to 1073741824."});
    // whole and single arguments alike
    one.columns.single = 3;
    one.refused({LVB_E_COUNT, in_columns, LVB_FIELD_COUNT, -1, -1, most + 1.0, 0.0, most});
}

TEST(ColumnsRefused, NullPointers) {
    const auto null = [](std::int32_t field) {
        return Expected{.status = LVB_E_NULL,
                        .structure = in_columns,
                        .field = field,
                        .text = "lvb_columns." + std::string(lvb_field_name(field)) + " is null, but must be given."};
    };
    for (const std::uint32_t single : {0u, 1u, 2u, 3u}) {
        Columns one;
        one.columns.single = single;
        one.columns.argument_1 = nullptr;
        one.refused(null(LVB_FIELD_ARGUMENT_1));
        one.columns.argument_1 = one.first;
        one.columns.argument_2 = nullptr;
        one.refused(null(LVB_FIELD_ARGUMENT_2));
        one.columns.argument_2 = one.second;
        one.columns.result = nullptr;
        one.refused(null(LVB_FIELD_RESULT));
    }
    Columns three;
    three.columns.formula = LVB_FORMULA_ELLIPTICAL_POLARIZATION_LOSS_DB;
    three.refused(null(LVB_FIELD_ARGUMENT_3));
}

TEST(ColumnsRefused, ArgumentsAndSinglesTooMany) {
    Columns two;
    two.columns.argument_3 = two.first;
    two.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_ARGUMENT_3, -1, -1, none, none, none,
                 "lvb_columns.argument_3 is filled, but this formula has no use for it."});
    two.columns.count = 0; // also where no values are asked for
    two.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_ARGUMENT_3});

    Columns one;
    one.columns.formula = LVB_FORMULA_DBM_FROM_MW;
    one.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_ARGUMENT_2});
    one.columns.argument_2 = nullptr;
    for (const std::uint32_t single : {2u, 3u, 4u, 8u, 0x80000000u, 0xFFFFFFFFu}) {
        one.columns.single = single;
        one.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_SINGLE, -1, -1, static_cast<double>(single), 0.0, 1.0,
                     "lvb_columns.single is " + std::to_string(single) +
                         ", but this formula has fewer arguments; allowed 0 to 1."});
    }
    Columns other;
    for (const std::uint32_t single : {4u, 7u, 8u, 0xFFFFFFFCu}) {
        other.columns.single = single;
        other.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_SINGLE, -1, -1, static_cast<double>(single), 0.0, 3.0});
    }
    double third[3] = {10.0, 20.0, 30.0};
    Columns three;
    three.columns.formula = LVB_FORMULA_ELLIPTICAL_POLARIZATION_LOSS_DB;
    three.columns.argument_3 = third;
    for (const std::uint32_t single : {8u, 15u, 0x80000000u}) {
        three.columns.single = single;
        three.refused({LVB_E_UNUSED, in_columns, LVB_FIELD_SINGLE, -1, -1, static_cast<double>(single), 0.0, 7.0});
    }
}

// A result may be a column of arguments, and may touch one; it may not lie over one in any other way.
TEST(ColumnsRefused, AResultThatOverlapsAColumn) {
    constexpr std::ptrdiff_t count = 300, middle = count + 1;
    const Expected overlap{LVB_E_CONFLICT,
                           in_columns,
                           LVB_FIELD_RESULT,
                           -1,
                           -1,
                           none,
                           none,
                           none,
                           "lvb_columns.result overlaps another array of the call."};
    const std::vector<double> before(3 * count + 2, 2.0);
    for (const std::ptrdiff_t apart : {std::ptrdiff_t{1}, std::ptrdiff_t{127}, count - 1, count, count + 1})
        for (const std::ptrdiff_t shift : {apart, -apart})
            for (const std::uint32_t argument : {0u, 1u}) {
                std::vector<double> room = before, other(count, 3.0);
                Columns one;
                one.columns.count = count;
                one.columns.argument_1 = argument == 0 ? room.data() + middle : other.data();
                one.columns.argument_2 = argument == 1 ? room.data() + middle : other.data();
                one.columns.result = room.data() + middle + shift;
                if (apart >= count) {
                    EXPECT_EQ(lvb_compute_columns(&one.columns, nullptr, nullptr), LVB_OK) << shift;
                    continue;
                }
                one.refused(overlap);
                EXPECT_EQ(room, before);
                // one that is the result does not excuse the other
                (argument == 0 ? one.columns.argument_2 : one.columns.argument_1) = one.columns.result;
                one.refused(overlap);
                // off by less than a value
                one.columns.result = reinterpret_cast<double *>(reinterpret_cast<char *>(room.data() + middle) + 4);
                one.refused(overlap);
                EXPECT_EQ(room, before);
            }
    Columns three;
    double third[4] = {10.0, 20.0, 30.0, 40.0};
    three.columns.formula = LVB_FORMULA_ELLIPTICAL_POLARIZATION_LOSS_DB;
    three.columns.argument_3 = third;
    three.columns.result = third + 1;
    three.refused(overlap);
    EXPECT_EQ(third[1], 20.0);
    three.columns.count = 0; // nothing is read or written
    EXPECT_EQ(lvb_compute_columns(&three.columns, nullptr, nullptr), LVB_OK);
}

TEST(ColumnsRefused, AWrongSizeOfTheCountOfBadValues) {
    Columns one;
    for (const std::uint32_t size : {0u, 23u, 4097u}) {
        Untouched<lvb_bad> bad;
        bad.result.size = size;
        EXPECT_EQ(lvb_compute_columns(&one.columns, &bad.result, &one.fault), LVB_E_STRUCT_SIZE);
        expect_fault(one.fault, {LVB_E_STRUCT_SIZE, LVB_STRUCT_BAD, LVB_FIELD_SIZE, -1, -1, static_cast<double>(size),
                                 sizeof(lvb_bad), 4096.0});
        for (const double value : one.result) EXPECT_EQ(value, mark);
    }
}

// ---- Grids.

/// A sound grid of two frequencies and three distances.
struct Grid {
    Chain chain;
    double frequencies[2] = {500.0, 600.0}, distances[3] = {1.0, 10.0, 100.0};
    double scratch[6] = {mark, mark, mark, mark, mark, mark}, levels[6] = {mark, mark, mark, mark, mark, mark};
    lvb_grid grid = sized<lvb_grid>();
    lvb_fault fault = sized<lvb_fault>();

    explicit Grid(std::vector<lvb_stage> stages = ordinary()) : chain(std::move(stages)) {
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        grid.frequency_count = 2;
        grid.distance_count = 3;
        grid.link = &chain.link;
        grid.frequency_mhz = frequencies;
        grid.distance_m = distances;
        grid.scratch = scratch;
        grid.level_dbm = levels;
    }
    Grid(const Grid &) = delete;
    Grid &operator=(const Grid &) = delete;

    void refused(const Expected &expected) {
        Untouched<lvb_bad> bad;
        EXPECT_EQ(lvb_compute_grid(&grid, &bad.result, &fault), expected.status);
        expect_fault(fault, expected);
        EXPECT_TRUE(bad.holds());
        EXPECT_EQ(lvb_compute_grid(&grid, nullptr, nullptr), expected.status);
        for (const double value : scratch) EXPECT_EQ(value, mark);
        for (const double value : levels) EXPECT_EQ(value, mark);
    }
};

TEST(GridRefused, Sound) {
    Grid sound;
    EXPECT_EQ(lvb_compute_grid(&sound.grid, nullptr, &sound.fault), LVB_OK);
    EXPECT_EQ(text_of(sound.fault), "nothing was refused.");
    EXPECT_NE(sound.levels[5], mark);
}

TEST(GridRefused, EndReservedAndInstructions) {
    for (const std::int32_t end : {2, -1, std::numeric_limits<std::int32_t>::min()}) {
        Grid one;
        one.grid.end = end;
        one.refused({LVB_E_UNKNOWN_VALUE, in_grid, LVB_FIELD_END, -1, -1, static_cast<double>(end), 0.0, 1.0,
                     "lvb_grid.end is " + std::to_string(end) + ", which this library does not know; allowed 0 to 1."});
    }
    Grid one;
    one.grid.reserved = 7;
    one.refused({LVB_E_RESERVED, in_grid, LVB_FIELD_RESERVED, -1, -1, 7.0, 0.0, 0.0,
                 "lvb_grid.reserved is reserved and must be zero."});
    for (const std::int32_t instructions : {-1, 4, 256, 256 + 4, 512 + 1, -255}) {
        Grid other;
        other.grid.instructions = instructions;
        other.refused({LVB_E_UNKNOWN_VALUE, in_grid, LVB_FIELD_INSTRUCTIONS, -1, -1, static_cast<double>(instructions),
                       0.0, best_set()});
    }
    for (auto set = static_cast<std::int32_t>(best_set()) + 1; set <= LVB_INSTRUCTIONS_AVX512; ++set) {
        Grid other;
        other.grid.instructions = set;
        other.refused(
            {LVB_E_UNKNOWN_VALUE, in_grid, LVB_FIELD_INSTRUCTIONS, -1, -1, static_cast<double>(set), 0.0, best_set()});
    }
}

TEST(GridRefused, Counts) {
    for (const std::uint64_t count : hostile) {
        Grid one;
        one.grid.frequency_count = count;
        one.refused({LVB_E_COUNT, in_grid, LVB_FIELD_FREQUENCY_COUNT, -1, -1, static_cast<double>(count), 0.0, most});
        one.grid.frequency_count = 2;
        one.grid.distance_count = count;
        one.refused(
            {LVB_E_COUNT, in_grid, LVB_FIELD_DISTANCE_COUNT, -1, -1, static_cast<double>(count), 0.0, most / 2.0});
    }
    Grid no_frequencies; // a count of zero does not make the other free
    no_frequencies.grid.frequency_count = 0;
    no_frequencies.grid.distance_count = std::uint64_t{LVB_MAX_VALUES} + 1;
    no_frequencies.refused({LVB_E_COUNT, in_grid, LVB_FIELD_DISTANCE_COUNT, -1, -1, most + 1.0, 0.0, most,
                            "lvb_grid.distance_count is 1073741825; allowed 0 to 1073741824."});
    struct Counts {
        std::uint64_t frequencies, distances, allowed;
    };
    // the product is one step too large, or wraps around to a small number
    for (const Counts &counts :
         {Counts{32768, 32769, 32768}, Counts{LVB_MAX_VALUES, 2, 1}, Counts{3, 357913942, 357913941},
          Counts{4, std::uint64_t{1} << 62, 268435456}, Counts{LVB_MAX_VALUES, std::uint64_t{1} << 34, 1}}) {
        Grid one;
        one.grid.frequency_count = counts.frequencies;
        one.grid.distance_count = counts.distances;
        one.refused({LVB_E_COUNT, in_grid, LVB_FIELD_DISTANCE_COUNT, -1, -1, static_cast<double>(counts.distances), 0.0,
                     static_cast<double>(counts.allowed)});
    }
}

TEST(GridRefused, NullPointers) {
    const auto null = [](std::int32_t structure, std::int32_t field, const char *text) {
        return Expected{.status = LVB_E_NULL, .structure = structure, .field = field, .text = text};
    };
    Grid one;
    one.grid.link = nullptr;
    one.refused(null(in_grid, LVB_FIELD_LINK, "lvb_grid.link is null, but must be given."));
    one.grid.link = &one.chain.link;
    one.grid.frequency_mhz = nullptr;
    one.refused(null(in_grid, LVB_FIELD_FREQUENCY_MHZ, "lvb_grid.frequency_mhz is null, but must be given."));
    one.grid.frequency_mhz = one.frequencies;
    one.grid.distance_m = nullptr;
    one.refused(null(in_grid, LVB_FIELD_DISTANCE_M, "lvb_grid.distance_m is null, but must be given."));
    one.grid.distance_m = one.distances;
    one.grid.scratch = nullptr;
    one.refused(null(in_grid, LVB_FIELD_SCRATCH, "lvb_grid.scratch is null, but must be given."));
    one.grid.scratch = one.scratch;
    one.grid.level_dbm = nullptr;
    one.refused(null(in_grid, LVB_FIELD_LEVEL_DBM, "lvb_grid.level_dbm is null, but must be given."));
    one.grid.level_dbm = one.levels;
    one.chain.link.stages = nullptr;
    one.refused(null(in_link, LVB_FIELD_STAGES, "lvb_link.stages is null, but must be given."));
}

TEST(GridRefused, NullsThatAChainWithoutAirNeeds) {
    Grid one({source(10.0), stage(LVB_KIND_PASSIVE, -3.5)});
    one.grid.distance_m = nullptr;
    one.grid.scratch = nullptr;
    one.grid.frequency_mhz = nullptr;
    one.refused({LVB_E_NULL, in_grid, LVB_FIELD_FREQUENCY_MHZ});
    one.grid.frequency_mhz = one.frequencies;
    one.grid.level_dbm = nullptr;
    one.refused({LVB_E_NULL, in_grid, LVB_FIELD_LEVEL_DBM});
}

TEST(GridRefused, ArraysThatOverlap) {
    const auto overlap = [](std::int32_t field) {
        return Expected{.status = LVB_E_CONFLICT,
                        .structure = in_grid,
                        .field = field,
                        .text =
                            "lvb_grid." + std::string(lvb_field_name(field)) + " overlaps another array of the call."};
    };
    // Frequencies 0 1, distances 10 11 12, scratch 20 to 25, levels 30 to 35: one of them is moved.
    double room[40];
    const auto fill = [&] { std::fill(std::begin(room), std::end(room), 100.0); };
    struct Moved {
        int frequencies, distances, scratch, levels;
        std::int32_t refused; ///< LVB_FIELD_NONE where they only touch
    };
    constexpr std::int32_t fine = LVB_FIELD_NONE;
    for (const Moved &at : {Moved{0, 10, 20, 30, fine},
                            {0, 10, 20, 20, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 25, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 26, fine},
                            {0, 10, 20, 15, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 14, fine},
                            {0, 10, 20, 0, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 1, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 2, fine},
                            {0, 10, 20, 4, fine},
                            {0, 10, 20, 5, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 10, LVB_FIELD_LEVEL_DBM},
                            {0, 10, 20, 12, LVB_FIELD_LEVEL_DBM},
                            {35, 10, 20, 30, LVB_FIELD_LEVEL_DBM},
                            {36, 10, 20, 30, fine},
                            {0, 10, 0, 30, LVB_FIELD_SCRATCH},
                            {0, 10, 1, 30, LVB_FIELD_SCRATCH},
                            {0, 10, 2, 30, fine},
                            {0, 10, 4, 30, fine},
                            {0, 10, 5, 30, LVB_FIELD_SCRATCH},
                            {0, 10, 10, 30, LVB_FIELD_SCRATCH},
                            {0, 10, 12, 30, LVB_FIELD_SCRATCH},
                            {0, 10, 13, 30, fine},
                            {10, 10, 20, 30, fine}}) { // what is only read may be shared
        Grid one;
        one.grid.frequency_mhz = room + at.frequencies;
        one.grid.distance_m = room + at.distances;
        one.grid.scratch = room + at.scratch;
        one.grid.level_dbm = room + at.levels;
        fill();
        if (at.refused == fine) {
            EXPECT_EQ(lvb_compute_grid(&one.grid, nullptr, nullptr), LVB_OK) << at.scratch << ", " << at.levels;
            continue;
        }
        one.refused(overlap(at.refused));
        for (const double value : room) EXPECT_EQ(value, 100.0);
    }
    // Without air only frequencies and levels are used.
    Grid without({source(10.0), stage(LVB_KIND_PASSIVE, -3.5)});
    without.grid.distance_m = without.grid.scratch = without.levels;
    EXPECT_EQ(lvb_compute_grid(&without.grid, nullptr, nullptr), LVB_OK);
    without.grid.frequency_mhz = without.levels + 1;
    std::fill(std::begin(without.levels), std::end(without.levels), mark);
    without.refused(overlap(LVB_FIELD_LEVEL_DBM));
}

// Nothing to compute: the chain is checked all the same.
TEST(GridRefused, ChainsOfGridsWithoutValues) {
    Grid one({source(10.0), stage(LVB_KIND_PASSIVE, 3.5)});
    one.grid.distance_count = 0;
    one.refused({LVB_E_ABOVE_RANGE, in_stage, LVB_FIELD_GAIN_DB, 1, -1, 3.5, -200.0, 0.0});
}

// The chain is refused as lvb_compute_budget refuses it.
TEST(GridRefused, Chains) {
    struct Bad {
        std::vector<lvb_stage> stages;
        Expected expected;
    };
    lvb_stage unstated = receiver();
    unstated.floor_dbm = -90.0;
    const lvb_stage pad = stage(LVB_KIND_PASSIVE, -1.0);
    const Bad all[] = {
        {{pad}, {LVB_E_NO_SOURCE, in_stage, LVB_FIELD_KIND, 0, -1, LVB_KIND_PASSIVE}},
        {{source(0), source(0)}, {LVB_E_SECOND_SOURCE, in_stage, LVB_FIELD_KIND, 1, -1, LVB_KIND_SOURCE}},
        {{source(0), air()}, {LVB_E_NO_TRANSMIT_ANTENNA, in_stage, LVB_FIELD_KIND, 1, -1, LVB_KIND_AIR}},
        {{source(0), antenna(), air()}, {LVB_E_NO_RECEIVE_ANTENNA, in_stage, LVB_FIELD_KIND, 2, -1, LVB_KIND_AIR}},
        {{source(0), antenna(), pad}, {LVB_E_STAGE_IN_AIR, in_stage, LVB_FIELD_KIND, 2, -1, LVB_KIND_PASSIVE}},
        {{source(0), receiver(), pad}, {LVB_E_AFTER_RECEIVER, in_stage, LVB_FIELD_KIND, 2, -1, LVB_KIND_PASSIVE}},
        {{source(0), stage(9)}, {LVB_E_UNKNOWN_KIND, in_stage, LVB_FIELD_KIND, 1, -1, 9.0, 1.0, 8.0}},
        {{source(0), stage(LVB_KIND_PASSIVE, 1.0)},
         {LVB_E_ABOVE_RANGE, in_stage, LVB_FIELD_GAIN_DB, 1, -1, 1.0, -200.0, 0.0}},
        {{source(0), unstated}, {LVB_E_NOT_STATED, in_stage, LVB_FIELD_FLOOR_DBM, 1, -1, -90.0}},
    };
    for (const Bad &bad : all) {
        Grid one(bad.stages);
        one.refused(bad.expected);
        // the budget says the same
        auto budget = sized<lvb_budget>();
        auto fault = sized<lvb_fault>();
        EXPECT_EQ(lvb_compute_budget(&one.chain.link, &budget, nullptr, 0, &fault), bad.expected.status);
        EXPECT_EQ(text_of(one.fault), text_of(fault));
    }
}

TEST(GridRefused, LinksAndTables) {
    Grid one;
    one.chain.link.stage_count = 0;
    one.refused({LVB_E_NO_SOURCE, in_link, LVB_FIELD_STAGE_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_STAGES});
    one.chain.link.stage_count = LVB_MAX_STAGES + 1;
    one.refused({LVB_E_COUNT, in_link, LVB_FIELD_STAGE_COUNT, -1, -1, 1025.0, 1.0, LVB_MAX_STAGES});
    one.chain.link.stage_count = 1;
    one.chain.link.stage_size = 1;
    one.refused({LVB_E_ELEMENT_SIZE, in_link, LVB_FIELD_STAGE_SIZE, -1, -1, 1.0, sizeof(lvb_stage), 4096.0});
    one.chain.link.stage_size = sizeof(lvb_stage);
    one.chain.link.temperature_degc = 30.0;
    one.refused({LVB_E_NOT_STATED, in_link, LVB_FIELD_TEMPERATURE_DEGC, -1, -1, 30.0});
    one.chain.link.temperature_degc = 0.0;
    one.chain.link.size = 8;
    one.refused({LVB_E_STRUCT_SIZE, in_link, LVB_FIELD_SIZE, -1, -1, 8.0, sizeof(lvb_link), 4096.0});

    const double mhz[] = {500.0, 400.0}, db[] = {-1.0, -2.0};
    auto table = sized<lvb_gain_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.gain_db = db;
    Grid falling;
    falling.chain.stages[1].gain_db = 0.0;
    falling.chain.stages[1].gain_table = &table;
    falling.refused({LVB_E_TABLE_UNSORTED, LVB_STRUCT_GAIN_TABLE, LVB_FIELD_FREQUENCY_MHZ, 1, 1, 400.0, 500.0, 1e6});
}

TEST(GridRefused, AWrongSizeOfTheCountOfBadValues) {
    for (const std::uint32_t size : {0u, 23u, 4097u}) {
        Grid one;
        Untouched<lvb_bad> bad;
        bad.result.size = size;
        EXPECT_EQ(lvb_compute_grid(&one.grid, &bad.result, &one.fault), LVB_E_STRUCT_SIZE);
        expect_fault(one.fault, {LVB_E_STRUCT_SIZE, LVB_STRUCT_BAD, LVB_FIELD_SIZE, -1, -1, static_cast<double>(size),
                                 sizeof(lvb_bad), 4096.0});
        for (const double value : one.scratch) EXPECT_EQ(value, mark);
        for (const double value : one.levels) EXPECT_EQ(value, mark);
    }
}

} // namespace
