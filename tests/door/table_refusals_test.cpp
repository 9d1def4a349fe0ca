// Bad tables and bad cable runs, alone and on a stage.
#include "door/refusal.hpp"

#include <limits>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::int32_t in_cable = LVB_STRUCT_CABLE_TABLE, in_gain = LVB_STRUCT_GAIN_TABLE,
                       in_run = LVB_STRUCT_CABLE_RUN;

struct Columns {
    std::vector<double> mhz, values;
};

lvb_cable_table cable_table(const Columns &columns) {
    auto table = sized<lvb_cable_table>();
    table.row_count = static_cast<std::uint32_t>(columns.mhz.size());
    table.frequency_mhz = columns.mhz.data();
    table.attenuation_db_per_100m = columns.values.data();
    return table;
}
lvb_gain_table gain_table(const Columns &columns) {
    auto table = sized<lvb_gain_table>();
    table.row_count = static_cast<std::uint32_t>(columns.mhz.size());
    table.frequency_mhz = columns.mhz.data();
    table.gain_db = columns.values.data();
    return table;
}

lvb_cable_run sound_run() {
    auto run = sized<lvb_cable_run>();
    run.frequency_mhz = 500.0;
    run.length_m = 10.0;
    return run;
}

// Refuses a run with a table; and, where `stage_too`, a chain whose stage borrows the table, with the stage's number.
void refused_run(const lvb_cable_run &run, const lvb_cable_table *table, const Expected &expected) {
    Untouched<lvb_cable_loss> loss;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_cable_loss(&run, table, &loss.result, &fault), expected.status);
    EXPECT_TRUE(loss.holds());
    expect_fault(fault, expected);
    EXPECT_EQ(lvb_compute_cable_loss(&run, table, &loss.result, nullptr), expected.status);
    EXPECT_TRUE(loss.holds());
}
void refused_cable_table(const lvb_cable_table &table, Expected expected) {
    refused_run(sound_run(), &table, expected);
    Chain chain({source(0.0), stage(LVB_KIND_CABLE)}, 500.0);
    chain.stages[1].cable_table = &table;
    chain.stages[1].length_m = 10.0;
    expected.stage = 1;
    expected.text = "";
    refused(chain, expected);
}
void refused_gain_table(const lvb_gain_table &table, Expected expected) {
    Chain chain({source(0.0), stage(LVB_KIND_AMPLIFIER)}, 500.0);
    chain.stages[1].gain_table = &table;
    expected.stage = 1;
    refused(chain, expected);
}

TEST(CableTable, RowsAreCheckedOneByOne) {
    const auto bad = [](std::vector<double> mhz, std::vector<double> db, Expected expected) {
        const Columns columns{std::move(mhz), std::move(db)};
        refused_cable_table(cable_table(columns), expected);
    };
    bad({100, 300, 200}, {5, 10, 12},
        {LVB_E_TABLE_UNSORTED, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 2, 200, 300, 1e6,
         "lvb_cable_table.frequency_mhz[2] is 200, below the row before it (300); frequencies must rise."});
    bad({100, 300, 300}, {5, 10, 12},
        {LVB_E_TABLE_DUPLICATE, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 2, 300, 300, 1e6,
         "lvb_cable_table.frequency_mhz[2] is 300, the same as in the row before it."});
    bad({100, 200}, {5, 20.5},
        {LVB_E_TABLE_TOO_STEEP, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 1, 20.5, 5, 20,
         "lvb_cable_table.attenuation_db_per_100m[1] is 20.5, too far from the row before it; allowed 5 to 20."});
    bad({100, 200, 400}, {5, 8, 7.5},
        {LVB_E_TABLE_TOO_STEEP, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 2, 7.5, 8, 32});
    bad({0, 200}, {5, 8},
        {LVB_E_MISSING, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 0, 0, 0.001, 1e6,
         "lvb_cable_table.frequency_mhz[0] is missing; allowed 0.001 to 1000000."});
    bad({-1, 200}, {5, 8}, {LVB_E_BELOW_RANGE, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 0, -1, 0.001, 1e6});
    bad({100, 1.5e6}, {5, 8}, {LVB_E_ABOVE_RANGE, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 1, 1.5e6, 0.001, 1e6});
    bad({100, infinity}, {5, 8}, {LVB_E_INFINITE, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 1, infinity, 0.001, 1e6});
    bad({100, nan}, {5, 8}, {LVB_E_NAN, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, 1, nan, 0.001, 1e6});
    bad({100, 200}, {5, nan}, {LVB_E_NAN, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 1, nan, 0.001, 1e5});
    bad({100, 200}, {0, 8}, {LVB_E_MISSING, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 0, 0, 0.001, 1e5});
    bad({100, 200}, {-5, 8}, {LVB_E_BELOW_RANGE, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 0, -5, 0.001, 1e5});
    bad({100, 200}, {5, 2e5}, {LVB_E_ABOVE_RANGE, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 1, 2e5, 0.001, 1e5});
    bad({100, 200}, {5, -infinity},
        {LVB_E_INFINITE, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1, 1, -infinity, 0.001, 1e5});
    bad({10, 20}, {5, 8},
        {LVB_E_OUTSIDE_TABLE, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 500, 1, 40,
         "frequency_mhz is 500, too far outside the table; allowed 1 to 40."});
    // at the bounds a table is sound
    for (const Columns &sound : {Columns{{0.001, 1e6}, {0.001, 1e5}}, Columns{{100, 200}, {5, 5}},
                                 Columns{{100, 200}, {5, 20}}, Columns{{500}, {5}}}) {
        const lvb_cable_table table = cable_table(sound);
        auto loss = sized<lvb_cable_loss>();
        lvb_cable_run run = sound_run();
        run.frequency_mhz = sound.mhz[0] < 1.0 ? 1.0 : sound.mhz[0];
        EXPECT_EQ(lvb_compute_cable_loss(&run, &table, &loss, nullptr), LVB_OK);
    }
}

TEST(CableTable, ItsFrame) {
    const Columns columns{{100, 1000}, {5, 17}};
    const auto with = [&](auto &&change) {
        lvb_cable_table table = cable_table(columns);
        change(table);
        return table;
    };
    refused_cable_table(with([](auto &t) { t.row_count = 0; }),
                        {LVB_E_TABLE_EMPTY, in_cable, LVB_FIELD_ROW_COUNT, -1, -1, 0, 1, LVB_MAX_ROWS,
                         "lvb_cable_table.row_count: the table has no rows."});
    for (const std::uint32_t count : {std::uint32_t{LVB_MAX_ROWS + 1}, 0xFFFFFFFFu})
        refused_cable_table(
            with([=](auto &t) { t.row_count = count; }),
            {LVB_E_COUNT, in_cable, LVB_FIELD_ROW_COUNT, -1, -1, static_cast<double>(count), 1, LVB_MAX_ROWS});
    refused_cable_table(with([](auto &t) { t.frequency_mhz = nullptr; }),
                        {LVB_E_NULL, in_cable, LVB_FIELD_FREQUENCY_MHZ, -1, -1, none, none, none,
                         "lvb_cable_table.frequency_mhz is null, but must be given."});
    refused_cable_table(with([](auto &t) { t.attenuation_db_per_100m = nullptr; }),
                        {LVB_E_NULL, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M});
    for (const std::uint32_t size :
         {0u, 4u, static_cast<std::uint32_t>(sizeof(lvb_cable_table)) - 1u, 4097u, 0xFFFFFFFFu})
        refused_cable_table(with([=](auto &t) { t.size = size; }),
                            {LVB_E_STRUCT_SIZE, in_cable, LVB_FIELD_SIZE, -1, -1, static_cast<double>(size),
                             sizeof(lvb_cable_table), 4096});
    // the most rows that a table may have
    Columns large;
    for (int i = 0; i < LVB_MAX_ROWS; ++i) {
        large.mhz.push_back(100.0 + i);
        large.values.push_back(5.0);
    }
    lvb_cable_table table = cable_table(large);
    auto loss = sized<lvb_cable_loss>();
    lvb_cable_run run = sound_run();
    EXPECT_EQ(lvb_compute_cable_loss(&run, &table, &loss, nullptr), LVB_OK);
    large.values.back() = 4.0;
    refused_cable_table(table, {LVB_E_TABLE_TOO_STEEP, in_cable, LVB_FIELD_ATTENUATION_DB_PER_100M, -1,
                                LVB_MAX_ROWS - 1, 4.0, 5.0, 5.0 * (65635.0 / 65634.0) * (65635.0 / 65634.0)});
}

TEST(GainTable, RowsAreCheckedOneByOne) {
    const auto bad = [](std::vector<double> mhz, std::vector<double> db, Expected expected) {
        const Columns columns{std::move(mhz), std::move(db)};
        refused_gain_table(gain_table(columns), expected);
    };
    bad({100, 300, 200}, {5, 10, 12},
        {LVB_E_TABLE_UNSORTED, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, 2, 200, 300, 1e6,
         "stages[1].gain_table.frequency_mhz[2] is 200, below the row before it (300); frequencies must rise."});
    bad({100, 100}, {5, 10}, {LVB_E_TABLE_DUPLICATE, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, 1, 100, 100, 1e6});
    bad({100, 1000}, {-50, 50.5},
        {LVB_E_TABLE_TOO_STEEP, in_gain, LVB_FIELD_GAIN_DB, 1, 1, 50.5, -150, 50,
         "stages[1].gain_table.gain_db[1] is 50.5, too far from the row before it; allowed -150 to 50."});
    bad({100, 1000}, {110, -50}, {LVB_E_TABLE_TOO_STEEP, in_gain, LVB_FIELD_GAIN_DB, 1, 1, -50, 10, 210});
    bad({100, 1000}, {5, 120.5}, {LVB_E_ABOVE_RANGE, in_gain, LVB_FIELD_GAIN_DB, 1, 1, 120.5, -60, 120});
    bad({100, 1000}, {-61, 0}, {LVB_E_BELOW_RANGE, in_gain, LVB_FIELD_GAIN_DB, 1, 0, -61, -60, 120});
    bad({100, 1000}, {5, nan}, {LVB_E_NAN, in_gain, LVB_FIELD_GAIN_DB, 1, 1, nan, -60, 120});
    bad({100, 1000}, {infinity, 5}, {LVB_E_INFINITE, in_gain, LVB_FIELD_GAIN_DB, 1, 0, infinity, -60, 120});
    bad({0, 1000}, {5, 5}, {LVB_E_MISSING, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, 0, 0, 0.001, 1e6});
    bad({100, 400}, {5, 5},
        {LVB_E_OUTSIDE_TABLE, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 500, 100, 400,
         "frequency_mhz is 500, too far outside the table of stages[1]; allowed 100 to 400."});
    bad({500.5, 600}, {5, 5}, {LVB_E_OUTSIDE_TABLE, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 500, 500.5, 600});
    bad({400}, {5}, {LVB_E_OUTSIDE_TABLE, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 500, 400, 400});
    // the values lie in the range that gain_db has for the kind
    const Columns gains{{100, 1000}, {0, 0.5}};
    const lvb_gain_table table = gain_table(gains);
    Chain chain({source(0.0), stage(LVB_KIND_PASSIVE)}, 500.0);
    chain.stages[1].gain_table = &table;
    refused(chain, {LVB_E_ABOVE_RANGE, in_gain, LVB_FIELD_GAIN_DB, 1, 1, 0.5, -200, 0});
    // exactly at its ends a table serves, and a step of 100 dB is allowed
    for (const Columns &sound : {Columns{{500, 1000}, {5, 6}}, Columns{{100, 500}, {-50, 50}}, Columns{{500}, {5}},
                                 Columns{{100, 500}, {50, -50}}}) {
        const lvb_gain_table good = gain_table(sound);
        Chain amplified({source(0.0), stage(LVB_KIND_AMPLIFIER)}, 500.0);
        amplified.stages[1].gain_table = &good;
        EXPECT_EQ(amplified.compute(), LVB_OK);
    }
}

TEST(GainTable, ItsFrame) {
    const Columns columns{{100, 1000}, {5, 7}};
    const auto with = [&](auto &&change) {
        lvb_gain_table table = gain_table(columns);
        change(table);
        return table;
    };
    refused_gain_table(with([](auto &t) { t.row_count = 0; }),
                       {LVB_E_TABLE_EMPTY, in_gain, LVB_FIELD_ROW_COUNT, 1, -1, 0, 1, LVB_MAX_ROWS,
                        "stages[1].gain_table.row_count: the table has no rows."});
    refused_gain_table(with([](auto &t) { t.row_count = LVB_MAX_ROWS + 1; }),
                       {LVB_E_COUNT, in_gain, LVB_FIELD_ROW_COUNT, 1, -1, LVB_MAX_ROWS + 1, 1, LVB_MAX_ROWS});
    refused_gain_table(with([](auto &t) { t.frequency_mhz = nullptr; }),
                       {LVB_E_NULL, in_gain, LVB_FIELD_FREQUENCY_MHZ, 1});
    refused_gain_table(with([](auto &t) { t.gain_db = nullptr; }),
                       {LVB_E_NULL, in_gain, LVB_FIELD_GAIN_DB, 1, -1, none, none, none,
                        "stages[1].gain_table.gain_db is null, but must be given."});
    for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_gain_table)) - 1u, 4097u})
        refused_gain_table(with([=](auto &t) { t.size = size; }),
                           {LVB_E_STRUCT_SIZE, in_gain, LVB_FIELD_SIZE, 1, -1, static_cast<double>(size),
                            sizeof(lvb_gain_table), 4096});
}

TEST(CableRun, EveryField) {
    const Columns columns{{100, 1000}, {5, 17}};
    const lvb_cable_table table = cable_table(columns);
    const auto bad = [&](auto &&change, Expected expected) {
        lvb_cable_run run = sound_run();
        change(run);
        refused_run(run, &table, expected);
    };
    struct Number {
        std::int32_t field;
        double lvb_cable_run::*member;
        double minimum, maximum;
        bool required;
    };
    // written from the comments of lvb_cable_run
    const Number numbers[] = {{LVB_FIELD_FREQUENCY_MHZ, &lvb_cable_run::frequency_mhz, 0.1, 300000, true},
                              {LVB_FIELD_LENGTH_M, &lvb_cable_run::length_m, 0.001, 10000, true},
                              {LVB_FIELD_TEMPERATURE_DEGC, &lvb_cable_run::temperature_degc, -100, 200, false},
                              {LVB_FIELD_CONNECTOR_LOSS_DB, &lvb_cable_run::connector_loss_db, 0, 10, false}};
    for (const Number &number : numbers) {
        const auto set = [&](double value) {
            return [&number, value](lvb_cable_run &run) {
                run.stated = LVB_STATED_TEMPERATURE;
                run.temperature_degc = 30.0;
                run.connector_count = 1;
                run.*number.member = value;
            };
        };
        const auto expected = [&](lvb_status status, double value) {
            return Expected{status, in_run, number.field, -1, -1, value, number.minimum, number.maximum};
        };
        bad(set(nan), expected(LVB_E_NAN, nan));
        bad(set(infinity), expected(LVB_E_INFINITE, infinity));
        bad(set(-infinity), expected(LVB_E_INFINITE, -infinity));
        bad(set(std::nextafter(number.maximum, infinity)),
            expected(LVB_E_ABOVE_RANGE, std::nextafter(number.maximum, infinity)));
        bad(set(number.minimum - 1.0), expected(LVB_E_BELOW_RANGE, number.minimum - 1.0));
        if (number.required) {
            bad(set(0.0), expected(LVB_E_MISSING, 0.0));
            bad(set(std::nextafter(number.minimum, -infinity)),
                expected(LVB_E_BELOW_RANGE, std::nextafter(number.minimum, -infinity)));
        }
        auto range = sized<lvb_range>();
        ASSERT_EQ(lvb_describe_field(in_run, 0, number.field, &range, nullptr), LVB_OK);
        EXPECT_EQ(range.minimum, number.minimum);
        EXPECT_EQ(range.maximum, number.maximum);
        EXPECT_EQ(range.required, number.required ? 1 : 0);
        if (number.field == LVB_FIELD_FREQUENCY_MHZ) continue; // the table serves 10 to 2000 MHz only
        for (const double good : {number.minimum, number.maximum}) {
            lvb_cable_run run = sound_run();
            set(good)(run);
            auto loss = sized<lvb_cable_loss>();
            EXPECT_EQ(lvb_compute_cable_loss(&run, &table, &loss, nullptr), LVB_OK);
        }
    }
    bad([](auto &run) { run.temperature_degc = 30; },
        {LVB_E_NOT_STATED, in_run, LVB_FIELD_TEMPERATURE_DEGC, -1, -1, 30});
    bad([](auto &run) { run.stated = 2; }, {LVB_E_UNKNOWN_VALUE, in_run, LVB_FIELD_STATED, -1, -1, 2, 0, 1});
    bad([](auto &run) { run.connector_count = 1001; },
        {LVB_E_ABOVE_RANGE, in_run, LVB_FIELD_CONNECTOR_COUNT, -1, -1, 1001, 0, 1000});
    bad([](auto &run) { run.connector_loss_db = 1; },
        {LVB_E_MISSING, in_run, LVB_FIELD_CONNECTOR_COUNT, -1, -1, 0, 1, 1000});
    bad([](auto &run) { run.cable_type = 4; },
        {LVB_E_CONFLICT, LVB_STRUCT_NONE, LVB_FIELD_TABLE, -1, -1, none, none, none,
         "table says again what another field already says; give one of them."});
    for (const std::int32_t type : {-1, 15})
        bad([=](auto &run) { run.cable_type = type; },
            {LVB_E_UNKNOWN_VALUE, in_run, LVB_FIELD_CABLE_TYPE, -1, -1, static_cast<double>(type), 0, 14});
    refused_run(sound_run(), nullptr,
                {LVB_E_MISSING, in_run, LVB_FIELD_CABLE_TYPE, -1, -1, 0, 1, 14,
                 "lvb_cable_run.cable_type is missing; allowed 1 to 14."});
}

TEST(LookUps, UnknownNumbers) {
    auto fault = sized<lvb_fault>();
    for (const std::int32_t type :
         {0, -1, 15, std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()}) {
        const Expected expected{
            LVB_E_NOT_FOUND, LVB_STRUCT_NONE, LVB_FIELD_CABLE_TYPE, -1, -1, static_cast<double>(type), 1, 14};
        Untouched<lvb_cable_info> info;
        EXPECT_EQ(lvb_describe_cable(type, &info.result, &fault), LVB_E_NOT_FOUND);
        EXPECT_TRUE(info.holds());
        expect_fault(fault, expected);
        Untouched<lvb_cable_row> row;
        EXPECT_EQ(lvb_describe_cable_row(type, 0, &row.result, &fault), LVB_E_NOT_FOUND);
        EXPECT_TRUE(row.holds());
        expect_fault(fault, expected);
    }
    for (const std::uint32_t index : {6u, 0xFFFFFFFFu}) { // RG-213/U has six rows
        Untouched<lvb_cable_row> row;
        EXPECT_EQ(lvb_describe_cable_row(LVB_CABLE_RG_213_U, index, &row.result, &fault), LVB_E_NOT_FOUND);
        EXPECT_TRUE(row.holds());
        expect_fault(fault,
                     {LVB_E_NOT_FOUND, LVB_STRUCT_NONE, LVB_FIELD_ROW_INDEX, -1, -1, static_cast<double>(index), 0, 5});
    }
    struct Asked {
        std::int32_t structure, kind, field;
        Expected expected;
    };
    const Asked asked[] = {
        {LVB_STRUCT_STAGE,
         0,
         LVB_FIELD_GAIN_DB,
         {LVB_E_NOT_FOUND, 0, LVB_FIELD_KIND, -1, -1, 0, 1, 8,
          "kind is 0, of which there is none; allowed 1 (source) to 8 (receiver)."}},
        {LVB_STRUCT_STAGE, 9, LVB_FIELD_GAIN_DB, {LVB_E_NOT_FOUND, 0, LVB_FIELD_KIND, -1, -1, 9, 1, 8}},
        {LVB_STRUCT_LINK, 1, LVB_FIELD_FREQUENCY_MHZ, {LVB_E_NOT_FOUND, 0, LVB_FIELD_KIND, -1, -1, 1, 0, 0}},
        {LVB_STRUCT_LINK, 0, LVB_FIELD_GAIN_DB, {LVB_E_NOT_FOUND, 0, LVB_FIELD_FIELD, -1, -1, LVB_FIELD_GAIN_DB}},
        {LVB_STRUCT_BUDGET,
         0,
         LVB_FIELD_FREQUENCY_MHZ,
         {LVB_E_NOT_FOUND, 0, LVB_FIELD_STRUCTURE, -1, -1, LVB_STRUCT_BUDGET}},
        {LVB_STRUCT_STAGE,
         LVB_KIND_PASSIVE,
         LVB_FIELD_LENGTH_M,
         {LVB_E_NOT_FOUND, 0, LVB_FIELD_FIELD, -1, -1, LVB_FIELD_LENGTH_M}},
        {99, 0, 99, {LVB_E_NOT_FOUND, 0, LVB_FIELD_STRUCTURE, -1, -1, 99}},
    };
    for (const Asked &one : asked) {
        Untouched<lvb_range> range;
        EXPECT_EQ(lvb_describe_field(one.structure, one.kind, one.field, &range.result, &fault), LVB_E_NOT_FOUND);
        EXPECT_TRUE(range.holds());
        expect_fault(fault, one.expected);
    }
}

// Of every field that exists, the description answers for exactly those that a kind uses.
TEST(LookUps, EveryFieldOfEveryKindIsDescribedOrNot) {
    auto range = sized<lvb_range>();
    int described = 0;
    for (std::int32_t structure = -1; structure <= 80; ++structure)
        for (std::int32_t kind = -1; kind <= 9; ++kind)
            for (std::int32_t field = -1; field <= 400; ++field)
                if (lvb_describe_field(structure, kind, field, &range, nullptr) == LVB_OK) {
                    ++described;
                    EXPECT_LT(range.minimum, range.maximum);
                }
    // link: 5 with the count of stages; run: 5; stages: tolerance 8, gain 8, source 1, cable 3, receiver 4
    // coaxial line 10, neighbours 17, limit 3; path: 14 numbers and 3 counts; edge: 2
    constexpr int antennas = 9 + 10 + 5; // antenna, patterns, directions and facing of a stage
    constexpr int noise = 2 + 3 + 3 + 7; // noise figure, intercept, compression, conditions
    // site, area, screen; a map's 7 and a walk's 6 for each of 6 laws, 4 of which have a parameter; placement
    constexpr int sites = 8 + 3 + 7 + 6 * (7 + 6) + 2 * 4 + 9;
    EXPECT_EQ(described, 5 + 5 + 8 + 8 + 1 + 3 + 4 + 10 + 17 + 3 + 14 + 3 + 2 + antennas + noise + sites);
    ASSERT_EQ(lvb_describe_field(LVB_STRUCT_LINK, 0, LVB_FIELD_STAGE_COUNT, &range, nullptr), LVB_OK);
    EXPECT_EQ(range.minimum, 1.0);
    EXPECT_EQ(range.maximum, LVB_MAX_STAGES);
    EXPECT_EQ(range.required, 1);
    for (const std::int32_t structure : {LVB_STRUCT_STAGE, LVB_STRUCT_CABLE_RUN}) {
        const std::int32_t kind = structure == LVB_STRUCT_STAGE ? LVB_KIND_CABLE : 0;
        ASSERT_EQ(lvb_describe_field(structure, kind, LVB_FIELD_CONNECTOR_COUNT, &range, nullptr), LVB_OK);
        EXPECT_EQ(range.minimum, 0.0);
        EXPECT_EQ(range.maximum, 1000.0);
        EXPECT_EQ(range.required, 0);
    }
}

} // namespace
