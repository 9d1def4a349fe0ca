// lvb_compute_noise and the fields of noise and linearity: what is refused, with every number of the fault.
#include "door/refusal.hpp"

#include <functional>
#include <limits>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::int32_t in_stage = LVB_STRUCT_STAGE, in_conditions = LVB_STRUCT_NOISE_CONDITIONS;

lvb_noise_conditions sound_conditions() {
    auto conditions = sized<lvb_noise_conditions>();
    conditions.bandwidth_mhz = 0.2;
    return conditions;
}

void lend(Chain &chain) {
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
}

void noise_refused(Chain chain, const lvb_noise_conditions &conditions, const Expected &expected) {
    lend(chain);
    Untouched<lvb_noise> noise;
    std::vector<lvb_noise_line> lines(chain.stages.size());
    std::memset(lines.data(), 0x5A, lines.size() * sizeof(lvb_noise_line));
    const std::vector<lvb_noise_line> before = lines;
    EXPECT_EQ(
        lvb_compute_noise(&chain.link, &conditions, &noise.result, lines.data(), sizeof(lvb_noise_line), &chain.fault),
        expected.status);
    EXPECT_TRUE(noise.holds());
    EXPECT_EQ(std::memcmp(before.data(), lines.data(), lines.size() * sizeof(lvb_noise_line)), 0);
    expect_fault(chain.fault, expected);
    EXPECT_EQ(lvb_compute_noise(&chain.link, &conditions, &noise.result, nullptr, 0, nullptr), expected.status);
}
void conditions_refused(const std::function<void(lvb_noise_conditions &)> &spoil, const Expected &expected) {
    lvb_noise_conditions conditions = sound_conditions();
    spoil(conditions);
    noise_refused(Chain(ordinary()), conditions, expected);
}

// ---- Fields of a stage: refused alike by the budget, which shares them.

struct Figure {
    std::uint32_t bit;
    std::int32_t field;
    double lvb_stage::*member;
    double minimum, maximum; // written from the comments of lvb_stage
    bool passive;
};
const Figure figures[] = {
    {LVB_STATED_NOISE_FIGURE, LVB_FIELD_NOISE_FIGURE_DB, &lvb_stage::noise_figure_db, 0.0, 100.0, false},
    {LVB_STATED_INTERCEPT, LVB_FIELD_INTERCEPT_DBM, &lvb_stage::intercept_dbm, -100.0, 150.0, true},
    {LVB_STATED_COMPRESSION, LVB_FIELD_COMPRESSION_DBM, &lvb_stage::compression_dbm, -100.0, 150.0, true},
};

// A chain with every kind of stage.
Chain whole() {
    return Chain({source(0.0), stage(LVB_KIND_PASSIVE), stage(LVB_KIND_AMPLIFIER), stage(LVB_KIND_CABLE, -1.0),
                  antenna(), air(), stage(LVB_KIND_ALLOWANCE), antenna(), receiver()});
}
std::int32_t index_of(const Chain &chain, std::int32_t kind) {
    for (std::size_t i = 0; i < chain.stages.size(); ++i)
        if (chain.stages[i].kind == kind) return static_cast<std::int32_t>(i);
    return -1;
}

TEST(NoiseFields, LieInTheirRangeForTheirKindsAndAreRefusedForOthers) {
    for (const Figure &figure : figures)
        for (std::int32_t kind = LVB_KIND_SOURCE; kind <= LVB_KIND_RECEIVER; ++kind) {
            SCOPED_TRACE(std::string(lvb_field_name(figure.field)) + " of " + lvb_kind_name(kind));
            const std::int32_t at = index_of(whole(), kind);
            const auto with = [&](double value, std::uint32_t stated) {
                Chain chain = whole();
                lvb_stage &in = chain.stages[static_cast<std::size_t>(at)];
                in.*figure.member = value;
                in.stated = stated;
                return chain;
            };
            const bool used =
                kind == LVB_KIND_AMPLIFIER || kind == LVB_KIND_RECEIVER || (kind == LVB_KIND_PASSIVE && figure.passive);
            auto range = sized<lvb_range>();
            EXPECT_EQ(lvb_describe_field(in_stage, kind, figure.field, &range, nullptr) == LVB_OK, used);
            if (!used) {
                refused(with(1.0, 0), {LVB_E_UNUSED, in_stage, figure.field, at, -1, 1.0});
                refused(with(nan, 0), {LVB_E_NAN, in_stage, figure.field, at});
                EXPECT_EQ(with(0.0, figure.bit).compute(), LVB_E_UNKNOWN_VALUE); // the bit alone
                continue;
            }
            EXPECT_EQ(range.minimum, figure.minimum);
            EXPECT_EQ(range.maximum, figure.maximum);
            EXPECT_EQ(range.required, 0);
            for (const double good : {figure.minimum, figure.maximum, 0.0})
                EXPECT_EQ(with(good, figure.bit).compute(), LVB_OK) << good;
            const auto expected = [&](lvb_status status, double value) {
                return Expected{status, in_stage, figure.field, at, -1, value, figure.minimum, figure.maximum};
            };
            const double low = std::nextafter(figure.minimum, -infinity),
                         high = std::nextafter(figure.maximum, infinity);
            refused(with(low, figure.bit), expected(LVB_E_BELOW_RANGE, low));
            refused(with(high, figure.bit), expected(LVB_E_ABOVE_RANGE, high));
            refused(with(infinity, figure.bit), expected(LVB_E_INFINITE, infinity));
            refused(with(nan, figure.bit), expected(LVB_E_NAN, nan));
            refused(with(3.0, 0), {LVB_E_NOT_STATED, in_stage, figure.field, at, -1, 3.0});
        }
}

// ---- Conditions.

struct Number {
    std::int32_t field;
    double lvb_noise_conditions::*member;
    double minimum, maximum; // written from the comments of lvb_noise_conditions
    bool required;
};
const Number numbers[] = {
    {LVB_FIELD_BANDWIDTH_MHZ, &lvb_noise_conditions::bandwidth_mhz, 1e-6, 1e5, true},
    {LVB_FIELD_ANTENNA_TEMPERATURE_K, &lvb_noise_conditions::antenna_temperature_k, 0.001, 1e12, false},
    {LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB, &lvb_noise_conditions::external_noise_figure_db, -60.0, 120.0, false},
    {LVB_FIELD_NOISE_DBM, &lvb_noise_conditions::noise_dbm, -250.0, 150.0, false},
    {LVB_FIELD_INTERFERENCE_DBM, &lvb_noise_conditions::interference_dbm, -250.0, 150.0, false},
    {LVB_FIELD_CARRIER_TO_NOISE_DB, &lvb_noise_conditions::carrier_to_noise_db, -100.0, 100.0, false},
};

TEST(Conditions, NumbersLieInTheirRanges) {
    for (const Number &number : numbers) {
        SCOPED_TRACE(lvb_field_name(number.field));
        const auto with = [&](double value) {
            return [&number, value](lvb_noise_conditions &conditions) {
                conditions.stated = LVB_STATED_CARRIER_TO_NOISE;
                conditions.noise_at = conditions.interference_at = LVB_PLACE_RECEIVER;
                conditions.*number.member = value;
            };
        };
        const auto expected = [&](lvb_status status, double value) {
            return Expected{status, in_conditions, number.field, -1, -1, value, number.minimum, number.maximum};
        };
        for (const double good : {number.minimum, number.maximum}) {
            lvb_noise_conditions conditions = sound_conditions();
            with(good)(conditions);
            Chain chain(ordinary());
            lend(chain);
            auto noise = sized<lvb_noise>();
            EXPECT_EQ(lvb_compute_noise(&chain.link, &conditions, &noise, nullptr, 0, nullptr), LVB_OK) << good;
        }
        const double low = std::nextafter(number.minimum, -infinity), high = std::nextafter(number.maximum, infinity);
        conditions_refused(with(low), expected(LVB_E_BELOW_RANGE, low));
        conditions_refused(with(high), expected(LVB_E_ABOVE_RANGE, high));
        conditions_refused(with(-infinity), expected(LVB_E_INFINITE, -infinity));
        conditions_refused(with(nan), expected(LVB_E_NAN, nan));
        if (number.required) conditions_refused(with(0.0), expected(LVB_E_MISSING, 0.0));
        auto range = sized<lvb_range>();
        ASSERT_EQ(lvb_describe_field(in_conditions, 0, number.field, &range, nullptr), LVB_OK);
        EXPECT_EQ(range.minimum, number.minimum);
        EXPECT_EQ(range.maximum, number.maximum);
        EXPECT_EQ(range.required, number.required ? 1 : 0);
    }
}

TEST(Conditions, TheRestOfThem) {
    conditions_refused([](lvb_noise_conditions &c) { c.reserved = 7; },
                       {LVB_E_RESERVED, in_conditions, LVB_FIELD_RESERVED, -1, -1, 7.0, 0.0, 0.0});
    conditions_refused([](lvb_noise_conditions &c) { c.stated = LVB_STATED_FLOOR; },
                       {LVB_E_UNKNOWN_VALUE, in_conditions, LVB_FIELD_STATED, -1, -1, LVB_STATED_FLOOR, 0.0,
                        LVB_STATED_CARRIER_TO_NOISE});
    conditions_refused([](lvb_noise_conditions &c) { c.carriers = 1; },
                       {LVB_E_BELOW_RANGE, in_conditions, LVB_FIELD_CARRIERS, -1, -1, 1.0, 2.0, LVB_MAX_CARRIERS});
    conditions_refused(
        [](lvb_noise_conditions &c) { c.carriers = LVB_MAX_CARRIERS + 1; },
        {LVB_E_ABOVE_RANGE, in_conditions, LVB_FIELD_CARRIERS, -1, -1, LVB_MAX_CARRIERS + 1, 2.0, LVB_MAX_CARRIERS});
    conditions_refused([](lvb_noise_conditions &c) { c.noise_at = 3; },
                       {LVB_E_UNKNOWN_VALUE, in_conditions, LVB_FIELD_NOISE_AT, -1, -1, 3.0, 0.0, 2.0});
    conditions_refused([](lvb_noise_conditions &c) { c.interference_at = -1; },
                       {LVB_E_UNKNOWN_VALUE, in_conditions, LVB_FIELD_INTERFERENCE_AT, -1, -1, -1.0, 0.0, 2.0});
    conditions_refused([](lvb_noise_conditions &c) { c.noise_dbm = -100.0; },
                       {LVB_E_MISSING, in_conditions, LVB_FIELD_NOISE_AT, -1, -1, 0.0, 1.0, 2.0,
                        "lvb_noise_conditions.noise_at is missing; allowed 1 to 2."});
    conditions_refused([](lvb_noise_conditions &c) { c.interference_dbm = -100.0; },
                       {LVB_E_MISSING, in_conditions, LVB_FIELD_INTERFERENCE_AT, -1, -1, 0.0, 1.0, 2.0});
    conditions_refused([](lvb_noise_conditions &c) { c.carrier_to_noise_db = 20.0; },
                       {LVB_E_NOT_STATED, in_conditions, LVB_FIELD_CARRIER_TO_NOISE_DB, -1, -1, 20.0});
    conditions_refused(
        [](lvb_noise_conditions &c) {
            c.antenna_temperature_k = 100.0;
            c.external_noise_figure_db = 10.0;
        },
        {LVB_E_CONFLICT, in_conditions, LVB_FIELD_EXTERNAL_NOISE_FIGURE_DB, -1, -1, 10.0});
}

// ---- The chain and the call.

TEST(NoiseOfAChain, NeedsAReceiveSide) {
    for (const std::vector<lvb_stage> &stages :
         {std::vector<lvb_stage>{source(0.0), antenna()},
          std::vector<lvb_stage>{source(0.0), antenna(), stage(LVB_KIND_ALLOWANCE, -3.0)}})
        noise_refused(Chain(stages), sound_conditions(),
                      {LVB_E_NO_RECEIVE_ANTENNA, in_stage, LVB_FIELD_KIND, 1, -1, LVB_KIND_ANTENNA, none, none,
                       "stages[1] (antenna): the air needs an antenna after it."});
}

TEST(NoiseOfAChain, RefusesWhatABudgetRefuses) {
    noise_refused(Chain({source(0.0), air(), antenna()}), sound_conditions(),
                  {LVB_E_NO_TRANSMIT_ANTENNA, in_stage, LVB_FIELD_KIND, 1, -1, LVB_KIND_AIR});
    Chain late(ordinary());
    late.stages.back().tolerance_db = -1.0; // the last stage
    noise_refused(late, sound_conditions(),
                  {LVB_E_BELOW_RANGE, in_stage, LVB_FIELD_TOLERANCE_DB, 7, -1, -1.0, 0.0, 100.0});
    Chain without(ordinary());
    without.link.far_distance_m = 0.0;
    noise_refused(without, sound_conditions(),
                  {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 4, -1, 0.0, 0.01, 1e9});
    Chain no_frequency(ordinary(), 0.0);
    noise_refused(no_frequency, sound_conditions(),
                  {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 0.0, 0.1, 300000.0});
}

TEST(NoiseOfAChain, LinesOfAWrongSizeAreRefused) {
    for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_noise_line)) - 1u, 4097u}) {
        Chain chain(ordinary());
        lend(chain);
        const lvb_noise_conditions conditions = sound_conditions();
        Untouched<lvb_noise> noise;
        lvb_noise_line line{};
        EXPECT_EQ(lvb_compute_noise(&chain.link, &conditions, &noise.result, &line, size, &chain.fault),
                  LVB_E_ELEMENT_SIZE);
        EXPECT_TRUE(noise.holds());
        expect_fault(chain.fault, {LVB_E_ELEMENT_SIZE, LVB_STRUCT_NONE, LVB_FIELD_LINE_SIZE, -1, -1, double(size),
                                   sizeof(lvb_noise_line), 4096.0});
    }
}

TEST(NoiseOfAChain, LongerLinesGetAZeroTail) {
    constexpr std::size_t size = sizeof(lvb_noise_line) + 16;
    Chain chain(ordinary());
    lend(chain);
    const lvb_noise_conditions conditions = sound_conditions();
    auto noise = sized<lvb_noise>();
    std::vector<unsigned char> bytes(chain.stages.size() * size, 0xA5);
    ASSERT_EQ(lvb_compute_noise(&chain.link, &conditions, &noise, reinterpret_cast<lvb_noise_line *>(bytes.data()),
                                size, nullptr),
              LVB_OK);
    for (std::size_t i = 0; i < chain.stages.size(); ++i)
        for (std::size_t k = sizeof(lvb_noise_line); k < size; ++k) EXPECT_EQ(bytes[i * size + k], 0);
}

} // namespace
