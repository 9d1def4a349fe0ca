// What a search for a fault refuses, with every number of its fault, and that nothing is written then.
#include "decide/search.hpp"
#include "door/refusal.hpp"
#include "path/paths.hpp"

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::int32_t in_locate = LVB_STRUCT_LOCATE, in_reading = LVB_STRUCT_READING;

std::vector<lvb_stage> outbound() { return ordinary(); }

void refused(Search &search, const Expected &expected) {
    Untouched<lvb_locate_result> result;
    std::vector<lvb_suspect> suspects(search.chain.stages.size());
    std::memset(suspects.data(), 0x5A, suspects.size() * sizeof(lvb_suspect));
    const std::vector<lvb_suspect> before = suspects;
    for (lvb_fault *fault : {&search.fault, static_cast<lvb_fault *>(nullptr)}) {
        EXPECT_EQ(lvb_locate_fault(&search.request, &result.result, suspects.data(), sizeof(lvb_suspect), fault),
                  expected.status);
        EXPECT_TRUE(result.holds());
        EXPECT_EQ(std::memcmp(before.data(), suspects.data(), suspects.size() * sizeof(lvb_suspect)), 0);
    }
    expect_fault(search.fault, expected);
}

/// A sound search, changed so that it is refused.
template <class Change>
void refused(Change change, const Expected &expected) {
    Search search(outbound(), {{1, 0.2}, {7, -6.0}});
    change(search);
    refused(search, expected);
}

TEST(Refused, OptionsOfTheSearch) {
    const auto option = [](double lvb_locate::*member, std::int32_t field, double minimum, double maximum) {
        const auto set = [&](double value, lvb_status status) {
            refused([&](Search &search) { search.request.*member = value; },
                    {status, in_locate, field, -1, -1, value, minimum, maximum});
        };
        set(none, LVB_E_NAN);
        set(infinity, LVB_E_INFINITE);
        set(-1.0, LVB_E_BELOW_RANGE);
        set(0.5 * minimum, LVB_E_BELOW_RANGE);
        set(1.5 * maximum, LVB_E_ABOVE_RANGE);
    };
    option(&lvb_locate::uncertainty_db, LVB_FIELD_UNCERTAINTY_DB, 0.001, 100.0);
    option(&lvb_locate::fault_probability, LVB_FIELD_FAULT_PROBABILITY, 1e-6, 0.999999);
    option(&lvb_locate::fault_spread_db, LVB_FIELD_FAULT_SPREAD_DB, 0.1, 100.0);
    option(&lvb_locate::false_alarm, LVB_FIELD_FALSE_ALARM, 1e-6, 0.5);
    refused([](Search &search) { search.request.uncertainty_db = 0.0; },
            {LVB_E_MISSING, in_locate, LVB_FIELD_UNCERTAINTY_DB, -1, -1, 0.0, 0.001, 100.0,
             "lvb_locate.uncertainty_db is missing; allowed 0.001 to 100."});
    refused([](Search &search) { search.request.reserved = 3; },
            {LVB_E_RESERVED, in_locate, LVB_FIELD_RESERVED, -1, -1, 3.0, 0.0, 0.0});
}

TEST(Refused, ArraysOfTheSearch) {
    refused([](Search &search) { search.request.reading_count = 65; },
            {LVB_E_COUNT, in_locate, LVB_FIELD_READING_COUNT, -1, -1, 65.0, 0.0, 64.0});
    refused([](Search &search) { search.request.readings = nullptr; },
            {LVB_E_NULL, in_locate, LVB_FIELD_READINGS, -1, -1, none, none, none,
             "lvb_locate.readings is null, but must be given."});
    refused([](Search &search) { search.request.reading_count = 0; },
            {LVB_E_MISSING, in_locate, LVB_FIELD_READING_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_READINGS,
             "lvb_locate.reading_count is missing; allowed 1 to 64."});
    for (const std::uint32_t size : {0u, 31u, 4097u})
        refused([&](Search &search) { search.request.reading_size = size; },
                {LVB_E_ELEMENT_SIZE, in_locate, LVB_FIELD_READING_SIZE, -1, -1, static_cast<double>(size),
                 sizeof(lvb_reading), 4096.0});
    refused([](Search &search) { search.request.link = nullptr; }, {LVB_E_NULL, LVB_STRUCT_NONE, LVB_FIELD_LINK});

    Search search(outbound(), {{7, -6.0}});
    Untouched<lvb_locate_result> result;
    for (const std::uint32_t size : {0u, 39u, 4097u}) {
        lvb_suspect suspect;
        std::memset(&suspect, 0x5A, sizeof suspect);
        const lvb_suspect before = suspect;
        EXPECT_EQ(lvb_locate_fault(&search.request, &result.result, &suspect, size, &search.fault), LVB_E_ELEMENT_SIZE);
        EXPECT_TRUE(result.holds());
        EXPECT_EQ(std::memcmp(&suspect, &before, sizeof before), 0);
        expect_fault(search.fault, {LVB_E_ELEMENT_SIZE, LVB_STRUCT_NONE, LVB_FIELD_SUSPECT_SIZE, -1, -1,
                                    static_cast<double>(size), sizeof(lvb_suspect), 4096.0});
    }
    search.request.readings = nullptr; // without readings neither their array nor their size is used
    search.request.reading_count = search.request.reading_size = 0;
    EXPECT_EQ(lvb_locate_fault(&search.request, &search.result, nullptr, 0, nullptr), LVB_OK);
}

TEST(Refused, Readings) {
    const auto reading = [](auto change, const Expected &expected) {
        refused([&](Search &search) { change(search.readings[1]); }, expected);
    };
    reading([](lvb_reading &in) { in.reserved = 1; },
            {LVB_E_RESERVED, in_reading, LVB_FIELD_RESERVED, -1, 1, 1.0, 0.0, 0.0});
    reading([](lvb_reading &in) { in.stage = 8; }, {LVB_E_NOT_FOUND, in_reading, LVB_FIELD_STAGE, -1, 1, 8.0, 0.0, 7.0,
                                                    "readings[1].stage is 8, of which there is none; allowed 0 to 7."});
    for (const std::uint32_t radiated : {3u, 4u, 5u})
        reading([&](lvb_reading &in) { in.stage = radiated; },
                {LVB_E_NOT_FOUND, in_reading, LVB_FIELD_STAGE, -1, 1, static_cast<double>(radiated), none, none,
                 "readings[1].stage is " + std::to_string(radiated) +
                     ", where the level is radiated: there is no point to measure."});
    const auto number = [&](double lvb_reading::*member, std::int32_t field, double value, lvb_status status,
                            double minimum, double maximum) {
        reading([&](lvb_reading &in) { in.*member = value; },
                {status, in_reading, field, -1, 1, value, minimum, maximum});
    };
    constexpr auto level = &lvb_reading::level_dbm, own = &lvb_reading::uncertainty_db,
                   metres = &lvb_reading::distance_m;
    number(level, LVB_FIELD_LEVEL_DBM, none, LVB_E_NAN, -300.0, 200.0);
    number(level, LVB_FIELD_LEVEL_DBM, -infinity, LVB_E_INFINITE, -300.0, 200.0);
    number(level, LVB_FIELD_LEVEL_DBM, -300.5, LVB_E_BELOW_RANGE, -300.0, 200.0);
    number(level, LVB_FIELD_LEVEL_DBM, 200.5, LVB_E_ABOVE_RANGE, -300.0, 200.0);
    number(own, LVB_FIELD_UNCERTAINTY_DB, none, LVB_E_NAN, 0.001, 100.0);
    number(own, LVB_FIELD_UNCERTAINTY_DB, -infinity, LVB_E_INFINITE, 0.001, 100.0);
    number(own, LVB_FIELD_UNCERTAINTY_DB, -0.3, LVB_E_BELOW_RANGE, 0.001, 100.0);
    number(own, LVB_FIELD_UNCERTAINTY_DB, 101.0, LVB_E_ABOVE_RANGE, 0.001, 100.0);
    number(metres, LVB_FIELD_DISTANCE_M, none, LVB_E_NAN, 0.01, 1e9);
    number(metres, LVB_FIELD_DISTANCE_M, infinity, LVB_E_INFINITE, 0.01, 1e9);
    number(metres, LVB_FIELD_DISTANCE_M, 0.001, LVB_E_BELOW_RANGE, 0.01, 1e9);
    refused([](Search &search) { search.readings[0].distance_m = 5.0; },
            {LVB_E_UNUSED, in_reading, LVB_FIELD_DISTANCE_M, -1, 0, 5.0, none, none,
             "readings[0].distance_m is filled, but this point has no use for it."});
    Way office(LVB_PATH_SITE_GENERAL); // it holds from 2 to 27 m
    office.path.environment = LVB_ENVIRONMENT_OFFICE_IN_SIGHT;
    refused(
        [&](Search &search) {
            search.chain.stages[4].path = office.lent();
            search.chain.link.far_distance_m = search.chain.link.near_distance_m = 20.0;
            search.readings[1].distance_m = 28.0;
        },
        {LVB_E_ABOVE_RANGE, in_reading, LVB_FIELD_DISTANCE_M, -1, 1, 28.0, 2.0, 27.0,
         "readings[1].distance_m is 28, which is too high; allowed 2 to 27."});
    Search on_the_bench(bench_chain(4, 0.5), {{3, 0.0}}); // no air at all
    on_the_bench.readings[0].distance_m = 5.0;
    refused(on_the_bench, {LVB_E_UNUSED, in_reading, LVB_FIELD_DISTANCE_M, -1, 0, 5.0});
}

// A dipole turned end on hears nothing: there is no level to compare a reading with.
TEST(Refused, AReadingBehindANull) {
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    const auto turn = [&](Search &search) {
        search.chain.stages[6].pattern = &pattern;
        search.chain.stages[6].gain_db = 0.0;
        search.chain.stages[6].far_elevation_deg = 90.0;
    };
    refused(turn, {LVB_E_NOT_FOUND, in_reading, LVB_FIELD_STAGE, -1, 1, 7.0});
    Search search(outbound(), {{1, 0.2}}); // before it all is well
    turn(search);
    EXPECT_EQ(lvb_locate_fault(&search.request, &search.result, nullptr, 0, &search.fault), LVB_OK);
}

TEST(Refused, AReadingWithAnUnknownTail) {
    struct Longer {
        lvb_reading known;
        double more;
    } longer[2] = {};
    Search search(outbound(), {{1, 0.2}, {7, -6.0}});
    for (int i = 0; i < 2; ++i) longer[i].known = search.readings[static_cast<std::size_t>(i)];
    search.request.readings = &longer[0].known;
    search.request.reading_size = sizeof(Longer);
    const lvb_locate_result before = search.result;
    EXPECT_EQ(lvb_locate_fault(&search.request, &search.result, nullptr, 0, &search.fault), LVB_OK);
    EXPECT_EQ(std::memcmp(&before, &search.result, sizeof before), 0);
    longer[1].more = 1.0;
    refused(search, {LVB_E_UNKNOWN_TAIL, in_reading, LVB_FIELD_SIZE, -1, 1, sizeof(Longer), 0.0, sizeof(lvb_reading),
                     "readings[1]: the struct is longer than the 32 bytes that this library knows, and the rest is not "
                     "zero."});
}

// The chain is refused as lvb_compute_budget refuses it.
TEST(Refused, AChainThatIsNone) {
    const auto chain = [](auto change, const Expected &expected) {
        Search search(outbound(), {{1, 0.2}, {7, -6.0}});
        change(search.chain);
        refused(search, expected);
        EXPECT_EQ(lvb_compute_budget(&search.chain.link, &search.chain.budget, nullptr, 0, nullptr), expected.status);
    };
    chain([](Chain &in) { in.stages[2].length_m = -1.0; },
          {LVB_E_BELOW_RANGE, LVB_STRUCT_STAGE, LVB_FIELD_LENGTH_M, 2, -1, -1.0, 0.001, 10000.0});
    chain([](Chain &in) { in.stages[0].kind = LVB_KIND_ALLOWANCE, in.stages[0].level_dbm = 0.0; },
          {LVB_E_NO_SOURCE, LVB_STRUCT_STAGE, LVB_FIELD_KIND, 0, -1, LVB_KIND_ALLOWANCE});
    chain([](Chain &in) { in.link.stage_count = 5; },
          {LVB_E_NO_RECEIVE_ANTENNA, LVB_STRUCT_STAGE, LVB_FIELD_KIND, 4, -1, LVB_KIND_AIR});
    chain([](Chain &in) { in.link.far_distance_m = 0.0; },
          {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 4, -1, 0.0, 0.01, 1e9});
}

} // namespace
