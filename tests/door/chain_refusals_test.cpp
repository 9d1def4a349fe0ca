// Bad chains: each gets its own status and a fault that names stage, field, value and range; results stay untouched.
#include "door/refusal.hpp"
#include "support/solving.hpp"

#include <limits>
#include <set>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::int32_t in_link = LVB_STRUCT_LINK, in_stage = LVB_STRUCT_STAGE;

// ---- The order of stages.

void out_of_order(std::vector<lvb_stage> stages, lvb_status status, std::int32_t at, std::string text) {
    Chain chain(std::move(stages));
    const double kind = chain.stages[static_cast<std::size_t>(at)].kind;
    refused(chain, {status, in_stage, LVB_FIELD_KIND, at, -1, kind, none, none, std::move(text)});
}

TEST(Order, NoSource) {
    Chain empty({});
    empty.stages.push_back(source(0.0)); // memory to point at
    empty.link.stages = empty.stages.data();
    empty.link.stage_count = 0;
    auto budget = sized<lvb_budget>();
    EXPECT_EQ(lvb_compute_budget(&empty.link, &budget, nullptr, 0, &empty.fault), LVB_E_NO_SOURCE);
    expect_fault(empty.fault, {LVB_E_NO_SOURCE, in_link, LVB_FIELD_STAGE_COUNT, -1, -1, 0.0, 1.0, LVB_MAX_STAGES,
                               "the chain must begin with a source."});
    for (std::int32_t kind = LVB_KIND_PASSIVE; kind <= LVB_KIND_RECEIVER; ++kind) {
        Chain chain({stage(kind, kind == LVB_KIND_CABLE ? -1.0 : 0.0), source(0.0)});
        refused(chain, {LVB_E_NO_SOURCE, in_stage, LVB_FIELD_KIND, 0, -1, static_cast<double>(kind), none, none,
                        std::string("stages[0] (") + lvb_kind_name(kind) + "): the chain must begin with a source."});
    }
}

TEST(Order, EachRuleOnce) {
    const lvb_stage pad = stage(LVB_KIND_PASSIVE, -1.0), allowance = stage(LVB_KIND_ALLOWANCE, -1.0);
    out_of_order({source(0), pad, source(0)}, LVB_E_SECOND_SOURCE, 2,
                 "stages[2] (source): a chain has only one source.");
    out_of_order({source(0), air(), antenna()}, LVB_E_NO_TRANSMIT_ANTENNA, 1,
                 "stages[1] (air): the air needs an antenna before it.");
    out_of_order({source(0), antenna(), air()}, LVB_E_NO_RECEIVE_ANTENNA, 2,
                 "stages[2] (air): the air needs an antenna after it.");
    out_of_order({source(0), antenna(), air(), allowance}, LVB_E_NO_RECEIVE_ANTENNA, 2,
                 "stages[2] (air): the air needs an antenna after it.");
    out_of_order({source(0), antenna(), air(), receiver()}, LVB_E_NO_RECEIVE_ANTENNA, 3,
                 "stages[3] (receiver): the air needs an antenna after it.");
    out_of_order({source(0), antenna(), air(), air(), antenna()}, LVB_E_SECOND_AIR, 3,
                 "stages[3] (air): a chain has only one air.");
    out_of_order({source(0), antenna(), air(), antenna(), air()}, LVB_E_SECOND_AIR, 4,
                 "stages[4] (air): a chain has only one air.");
    out_of_order({source(0), antenna(), antenna()}, LVB_E_ANTENNA_OUT_OF_PLACE, 2,
                 "stages[2] (antenna): an antenna stands before the air and one after it, and no other.");
    out_of_order({source(0), antenna(), air(), antenna(), pad, antenna()}, LVB_E_ANTENNA_OUT_OF_PLACE, 5,
                 "stages[5] (antenna): an antenna stands before the air and one after it, and no other.");
    out_of_order({source(0), receiver(), allowance}, LVB_E_AFTER_RECEIVER, 2,
                 "stages[2] (allowance): nothing follows the receiver.");
    out_of_order({source(0), receiver(), receiver()}, LVB_E_AFTER_RECEIVER, 2,
                 "stages[2] (receiver): nothing follows the receiver.");
    out_of_order({source(0), antenna(), receiver()}, LVB_E_STAGE_IN_AIR, 2,
                 "stages[2] (receiver): only air and allowances stand between the two antennas.");
    for (const lvb_stage &in : {pad, stage(LVB_KIND_AMPLIFIER, 10.0), stage(LVB_KIND_CABLE, -2.0)}) {
        const std::string text = std::string("stages[2] (") + lvb_kind_name(in.kind) +
                                 "): only air and allowances stand between the two antennas.";
        out_of_order({source(0), antenna(), in, air(), antenna()}, LVB_E_STAGE_IN_AIR, 2, text);
        out_of_order({source(0), antenna(), in}, LVB_E_STAGE_IN_AIR, 2, text);
        std::string later = text;
        later.replace(7, 1, "3");
        out_of_order({source(0), antenna(), air(), in, antenna()}, LVB_E_STAGE_IN_AIR, 3, later);
    }
    // allowances may stand between the antennas, on both sides of the air
    Chain chain({source(0), allowance, antenna(), allowance, air(), allowance, antenna(), allowance, receiver()});
    EXPECT_EQ(chain.compute(), LVB_OK);
}

TEST(Order, UnknownKinds) {
    for (const std::int32_t kind :
         {9, -1, 100, std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()}) {
        Chain chain({source(0.0), stage(kind)});
        refused(chain, {LVB_E_UNKNOWN_KIND, in_stage, LVB_FIELD_KIND, 1, -1, static_cast<double>(kind), LVB_KIND_SOURCE,
                        LVB_KIND_RECEIVER});
    }
    Chain chain({source(0.0), stage(9)});
    refused(chain, {LVB_E_UNKNOWN_KIND, in_stage, LVB_FIELD_KIND, 1, -1, 9, 1, 8,
                    "stages[1].kind is 9, which this library does not know; allowed 1 (source) to 8 (receiver)."});
    Chain zeroed({source(0.0), lvb_stage{}});
    refused(zeroed, {LVB_E_MISSING, in_stage, LVB_FIELD_KIND, 1, -1, 0, 1, 8,
                     "stages[1].kind is missing; allowed 1 (source) to 8 (receiver)."});
}

// ---- Numbers: each field of each struct, at and beyond its bounds, which lvb_describe_field must tell alike.

struct Number {
    std::int32_t structure, kind, field;
    double minimum, maximum; // as the header's comments say
    bool required;
};

// written from the comments of lvb_link and lvb_stage
const Number numbers[] = {
    {in_link, 0, LVB_FIELD_FREQUENCY_MHZ, 0.1, 300000.0, true},
    {in_link, 0, LVB_FIELD_FAR_DISTANCE_M, 0.01, 1e9, false},
    {in_link, 0, LVB_FIELD_NEAR_DISTANCE_M, 0.01, 1e9, false},
    {in_link, 0, LVB_FIELD_TEMPERATURE_DEGC, -100.0, 200.0, false},
    {in_stage, LVB_KIND_SOURCE, LVB_FIELD_LEVEL_DBM, -200.0, 150.0, false},
    {in_stage, LVB_KIND_SOURCE, LVB_FIELD_GAIN_DB, -60.0, 60.0, false},
    {in_stage, LVB_KIND_PASSIVE, LVB_FIELD_GAIN_DB, -200.0, 0.0, false},
    {in_stage, LVB_KIND_CABLE, LVB_FIELD_GAIN_DB, -200.0, 0.0, false},
    {in_stage, LVB_KIND_CABLE, LVB_FIELD_LENGTH_M, 0.001, 10000.0, false},
    {in_stage, LVB_KIND_CABLE, LVB_FIELD_CONNECTOR_LOSS_DB, 0.0, 10.0, false},
    {in_stage, LVB_KIND_AMPLIFIER, LVB_FIELD_GAIN_DB, -60.0, 120.0, false},
    {in_stage, LVB_KIND_ANTENNA, LVB_FIELD_GAIN_DB, -60.0, 60.0, false},
    {in_stage, LVB_KIND_AIR, LVB_FIELD_GAIN_DB, -200.0, 30.0, false},
    {in_stage, LVB_KIND_ALLOWANCE, LVB_FIELD_GAIN_DB, -200.0, 0.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_GAIN_DB, -60.0, 60.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_FLOOR_DBM, -250.0, 150.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_WANTED_LOW_DBM, -250.0, 150.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_WANTED_HIGH_DBM, -250.0, 150.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_CEILING_DBM, -250.0, 150.0, false},
    {in_stage, LVB_KIND_SOURCE, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_PASSIVE, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_CABLE, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_AMPLIFIER, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_ANTENNA, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_AIR, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_ALLOWANCE, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
    {in_stage, LVB_KIND_RECEIVER, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false},
};

// A chain in which the value of one field decides alone whether it is refused; `at` is where the stage stands.
Chain chain_for(const Number &number, double value, std::int32_t &at) {
    std::vector<lvb_stage> stages = {source(0.0),
                                     stage(LVB_KIND_PASSIVE),
                                     stage(LVB_KIND_AMPLIFIER),
                                     stage(LVB_KIND_CABLE, -1.0),
                                     antenna(),
                                     air(),
                                     stage(LVB_KIND_ALLOWANCE),
                                     antenna(),
                                     receiver()};
    at = -1;
    if (number.structure == in_link) {
        // Far is as far as it may be, so that near decides alone, and the other way round.
        Chain chain({source(0.0), antenna(), air(), antenna()}, 600.0, 1e9);
        support::link_field(chain.link, number.field) = value;
        return chain;
    }
    for (std::size_t i = 0; i < stages.size() && at < 0; ++i)
        if (stages[i].kind == number.kind) at = static_cast<std::int32_t>(i);
    lvb_stage &in = stages[static_cast<std::size_t>(at)];
    if (number.field == LVB_FIELD_LENGTH_M || number.field == LVB_FIELD_CONNECTOR_LOSS_DB) {
        in.gain_db = 0.0;
        in.cable_type = LVB_CABLE_RG_213_U;
        in.length_m = 1.0;
        in.connector_count = 1;
    }
    if (number.field == LVB_FIELD_FLOOR_DBM) in.stated = LVB_STATED_FLOOR;
    if (number.field == LVB_FIELD_CEILING_DBM) in.stated = LVB_STATED_CEILING;
    if (number.field == LVB_FIELD_WANTED_LOW_DBM) in.stated = LVB_STATED_WANTED, in.wanted_high_dbm = 150.0;
    if (number.field == LVB_FIELD_WANTED_HIGH_DBM) in.stated = LVB_STATED_WANTED, in.wanted_low_dbm = -250.0;
    support::stage_field(in, number.field) = value;
    return Chain(stages);
}

TEST(Numbers, AreAcceptedUpToTheirBoundsAndRefusedBeyond) {
    for (const Number &number : numbers) {
        SCOPED_TRACE(std::string(lvb_field_name(number.field)) + " of " + lvb_kind_name(number.kind));
        std::int32_t at = -1;
        for (const double good : {number.minimum, number.maximum, std::nextafter(number.minimum, infinity),
                                  std::nextafter(number.maximum, -infinity)}) {
            // a cable of no gain, no type and no table is missing its type
            if (good == 0.0 && number.kind == LVB_KIND_CABLE && number.field == LVB_FIELD_GAIN_DB) continue;
            EXPECT_EQ(chain_for(number, good, at).compute(), LVB_OK) << good;
        }
        for (const double bad : {std::nextafter(number.minimum, -infinity), number.minimum - 1.0, -1e300})
            if (bad != 0.0)
                refused(chain_for(number, bad, at), {LVB_E_BELOW_RANGE, number.structure, number.field, at, -1, bad,
                                                     number.minimum, number.maximum});
        for (const double bad : {std::nextafter(number.maximum, infinity), number.maximum + 1.0, 1e300})
            refused(chain_for(number, bad, at),
                    {LVB_E_ABOVE_RANGE, number.structure, number.field, at, -1, bad, number.minimum, number.maximum});
        for (const double bad : {infinity, -infinity})
            refused(chain_for(number, bad, at),
                    {LVB_E_INFINITE, number.structure, number.field, at, -1, bad, number.minimum, number.maximum});
        Chain chain = chain_for(number, nan, at);
        chain.link.stages = chain.stages.data();
        chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
        Untouched<lvb_budget> budget;
        EXPECT_EQ(lvb_compute_budget(&chain.link, &budget.result, nullptr, 0, &chain.fault), LVB_E_NAN);
        EXPECT_TRUE(budget.holds());
        EXPECT_EQ(chain.fault.field, number.field);
        EXPECT_EQ(chain.fault.stage, at);
        EXPECT_TRUE(std::isnan(chain.fault.value));

        auto range = sized<lvb_range>();
        EXPECT_EQ(lvb_describe_field(number.structure, number.kind, number.field, &range, nullptr), LVB_OK);
        EXPECT_EQ(range.minimum, number.minimum);
        EXPECT_EQ(range.maximum, number.maximum);
        EXPECT_EQ(range.required, number.required ? 1 : 0);
        if (number.required)
            refused(chain_for(number, 0.0, at),
                    {LVB_E_MISSING, number.structure, number.field, at, -1, 0.0, number.minimum, number.maximum});
    }
}

TEST(Numbers, TheirSentences) {
    std::int32_t at = -1;
    refused(chain_for(numbers[0], -5.0, at),
            {LVB_E_BELOW_RANGE, in_link, LVB_FIELD_FREQUENCY_MHZ, -1, -1, -5.0, 0.1, 300000.0,
             "lvb_link.frequency_mhz is -5, which is too low; allowed 0.1 to 300000."});
    refused(chain_for(numbers[0], 0.0, at), {LVB_E_MISSING, in_link, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 0.0, 0.1,
                                             300000.0, "lvb_link.frequency_mhz is missing; allowed 0.1 to 300000."});
    refused(chain_for(numbers[1], 1e12, at),
            {LVB_E_ABOVE_RANGE, in_link, LVB_FIELD_FAR_DISTANCE_M, -1, -1, 1e12, 0.01, 1e9,
             "lvb_link.far_distance_m is 1e12, which is too high; allowed 0.01 to 1000000000."});
    refused(chain_for(numbers[6], 3.5, at), {LVB_E_ABOVE_RANGE, in_stage, LVB_FIELD_GAIN_DB, 1, -1, 3.5, -200.0, 0.0,
                                             "stages[1].gain_db is 3.5, which is too high; allowed -200 to 0."});
    refused(chain_for(numbers[6], infinity, at), {LVB_E_INFINITE, in_stage, LVB_FIELD_GAIN_DB, 1, -1, infinity, -200.0,
                                                  0.0, "stages[1].gain_db is infinity; allowed -200 to 0."});
    refused(chain_for(numbers[4], -infinity, at),
            {LVB_E_INFINITE, in_stage, LVB_FIELD_LEVEL_DBM, 0, -1, -infinity, -200.0, 150.0,
             "stages[0].level_dbm is -infinity; allowed -200 to 150."});
    refused(chain_for(numbers[0], nan, at), {LVB_E_NAN, in_link, LVB_FIELD_FREQUENCY_MHZ, -1, -1, none, 0.1, 300000.0,
                                             "lvb_link.frequency_mhz is not a number; allowed 0.1 to 300000."});
    refused(chain_for(numbers[8], -15.0, at),
            {LVB_E_BELOW_RANGE, in_stage, LVB_FIELD_LENGTH_M, 3, -1, -15.0, 0.001, 10000.0,
             "stages[3].length_m is -15, which is too low; allowed 0.001 to 10000."});
}

TEST(Numbers, AFieldOfAnotherKindIsRefusedAndNeverIgnored) {
    for (std::int32_t kind = LVB_KIND_SOURCE; kind <= LVB_KIND_RECEIVER; ++kind)
        for (const std::int32_t field :
             {LVB_FIELD_LEVEL_DBM, LVB_FIELD_LENGTH_M, LVB_FIELD_CONNECTOR_LOSS_DB, LVB_FIELD_FLOOR_DBM,
              LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM, LVB_FIELD_CEILING_DBM}) {
            auto range = sized<lvb_range>();
            if (lvb_describe_field(in_stage, kind, field, &range, nullptr) == LVB_OK) continue;
            Number number{in_stage, kind, LVB_FIELD_TOLERANCE_DB, 0.0, 100.0, false};
            std::int32_t at = -1;
            Chain chain = chain_for(number, 0.0, at);
            support::stage_field(chain.stages[static_cast<std::size_t>(at)], field) = 1.0;
            refused(chain, {LVB_E_UNUSED, in_stage, field, at, -1, 1.0});
            // NaN is told as what it is
            support::stage_field(chain.stages[static_cast<std::size_t>(at)], field) = nan;
            refused(chain, {LVB_E_NAN, in_stage, field, at});
        }
    Chain chain({source(0.0), stage(LVB_KIND_PASSIVE)});
    chain.stages[1].length_m = 3.0;
    refused(chain, {LVB_E_UNUSED, in_stage, LVB_FIELD_LENGTH_M, 1, -1, 3.0, none, none,
                    "stages[1].length_m is filled, but this kind of stage has no use for it."});
}

TEST(Numbers, WholeFieldsOfAnotherKind) {
    const auto table = sized<lvb_cable_table>();
    for (std::int32_t kind = LVB_KIND_SOURCE; kind <= LVB_KIND_RECEIVER; ++kind) {
        if (kind == LVB_KIND_CABLE) continue;
        std::int32_t at = -1;
        const auto chain = [&] { return chain_for({in_stage, kind, LVB_FIELD_TOLERANCE_DB, 0, 100, false}, 0.0, at); };
        Chain typed = chain();
        typed.stages[static_cast<std::size_t>(at)].cable_type = LVB_CABLE_RG_213_U;
        refused(typed, {LVB_E_UNUSED, in_stage, LVB_FIELD_CABLE_TYPE, at, -1, LVB_CABLE_RG_213_U});
        Chain connected = chain();
        connected.stages[static_cast<std::size_t>(at)].connector_count = 2;
        refused(connected, {LVB_E_UNUSED, in_stage, LVB_FIELD_CONNECTOR_COUNT, at, -1, 2.0});
        Chain tabled = chain();
        tabled.stages[static_cast<std::size_t>(at)].cable_table = &table;
        refused(tabled, {LVB_E_UNUSED, in_stage, LVB_FIELD_CABLE_TABLE, at});
    }
}

TEST(Numbers, BasisFlagsAndReserved) {
    for (const std::int32_t basis : {-1, 6, 1000}) {
        Chain chain({source(0.0), stage(LVB_KIND_PASSIVE, 0, 0, basis)});
        refused(chain, {LVB_E_UNKNOWN_VALUE, in_stage, LVB_FIELD_BASIS, 1, -1, static_cast<double>(basis), 0, 5,
                        "stages[1].basis is " + std::to_string(basis) +
                            ", which this library does not know; allowed 0 (not looked up) to 5 (formula)."});
    }
    Chain flagged({source(0.0)});
    flagged.stages[0].stated = LVB_STATED_FLOOR;
    refused(flagged, {LVB_E_UNKNOWN_VALUE, in_stage, LVB_FIELD_STATED, 0, -1, LVB_STATED_FLOOR, 0, 0,
                      "stages[0].stated has the bit LVB_STATED_FLOOR, which this kind of stage has no use for."});
    Chain receiving({source(0.0), receiver()});
    receiving.stages[1].stated = LVB_STATED_TEMPERATURE;
    refused(receiving, {LVB_E_UNKNOWN_VALUE, in_stage, LVB_FIELD_STATED, 1, -1, 1, 0, 14 + 2048 + 4096 + 8192});
    Chain linked({source(0.0)});
    linked.link.stated = 2;
    refused(linked, {LVB_E_UNKNOWN_VALUE, in_link, LVB_FIELD_STATED, -1, -1, 2, 0, 1,
                     "lvb_link.stated has the bit LVB_STATED_FLOOR, which this struct has no use for."});
    linked.link.stated = 1u << 31 | 1024 | LVB_STATED_TEMPERATURE;
    refused(linked, {LVB_E_UNKNOWN_VALUE, in_link, LVB_FIELD_STATED, -1, -1, double(linked.link.stated), 0, 1,
                     "lvb_link.stated has the bit 1024, which this library does not know."});
    Chain reserved({source(0.0), stage(LVB_KIND_PASSIVE)});
    reserved.stages[1].reserved = 7;
    refused(reserved, {LVB_E_RESERVED, in_stage, LVB_FIELD_RESERVED, 1, -1, 7, 0, 0,
                       "stages[1].reserved is reserved and must be zero."});
}

TEST(Stated, AValueWithoutItsBitIsRefused) {
    Chain warm({source(0.0)});
    warm.link.temperature_degc = 40.0;
    refused(warm, {LVB_E_NOT_STATED, in_link, LVB_FIELD_TEMPERATURE_DEGC, -1, -1, 40.0, none, none,
                   "lvb_link.temperature_degc is 40, but its bit LVB_STATED_TEMPERATURE in `stated` is not set."});
    for (const std::int32_t field :
         {LVB_FIELD_FLOOR_DBM, LVB_FIELD_WANTED_LOW_DBM, LVB_FIELD_WANTED_HIGH_DBM, LVB_FIELD_CEILING_DBM}) {
        Chain chain({source(0.0), receiver()});
        support::stage_field(chain.stages[1], field) = -80.0;
        const std::string bit = field == LVB_FIELD_FLOOR_DBM     ? "LVB_STATED_FLOOR"
                                : field == LVB_FIELD_CEILING_DBM ? "LVB_STATED_CEILING"
                                                                 : "LVB_STATED_WANTED";
        refused(chain, {LVB_E_NOT_STATED, in_stage, field, 1, -1, -80.0, none, none,
                        std::string("stages[1].") + lvb_field_name(field) + " is -80, but its bit " + bit +
                            " in `stated` is not set."});
    }
}

TEST(Window, ItsLimitsRise) {
    const auto limits = [](double floor, double low, double high, double ceiling) {
        return Chain({source(0.0), receiver(floor, low, high, ceiling)});
    };
    EXPECT_EQ(limits(-50, -50, -50, -50).compute(), LVB_OK); // equal limits are in order
    refused(limits(-50, -50.5, -40, -20),
            {LVB_E_ORDER, in_stage, LVB_FIELD_WANTED_LOW_DBM, 1, -1, -50.5, -50, 150,
             "stages[1].wanted_low_dbm is -50.5, which is below floor_dbm (-50); allowed -50 to 150."});
    refused(limits(-90, -40, -41, -20),
            {LVB_E_ORDER, in_stage, LVB_FIELD_WANTED_HIGH_DBM, 1, -1, -41, -40, 150,
             "stages[1].wanted_high_dbm is -41, which is below wanted_low_dbm (-40); allowed -40 to 150."});
    refused(limits(-90, -80, -40, -41), {LVB_E_ORDER, in_stage, LVB_FIELD_CEILING_DBM, 1, -1, -41, -40, 150});
    refused(Chain({source(0.0), receiver(-20.0, -90.0)}),
            {LVB_E_ORDER, in_stage, LVB_FIELD_CEILING_DBM, 1, -1, -90, -20, 150,
             "stages[1].ceiling_dbm is -90, which is below the limit before it (-20); allowed -20 to 150."});
}

TEST(Distances, AreGivenWhereThereIsAirAndInOrder) {
    Chain without(ordinary(), 600.0, 0.0);
    refused(without, {LVB_E_MISSING, in_link, LVB_FIELD_FAR_DISTANCE_M, 4, -1, 0.0, 0.01, 1e9,
                      "lvb_link.far_distance_m is missing; allowed 0.01 to 1000000000."});
    Chain turned(ordinary(), 600.0, 3.0, 40.0);
    refused(turned, {LVB_E_ORDER, in_link, LVB_FIELD_NEAR_DISTANCE_M, -1, -1, 40.0, 0.01, 3.0,
                     "lvb_link.near_distance_m is 40, which is above far_distance_m (3); allowed 0.01 to 3."});
    Chain only_near(ordinary(), 600.0, 0.0, 3.0);
    refused(only_near, {LVB_E_MISSING, in_link, LVB_FIELD_FAR_DISTANCE_M, 4, -1, 0.0, 0.01, 1e9});
}

// ---- Cable stages.

lvb_cable_table sound_table() {
    static const double mhz[] = {100.0, 1000.0};
    static const double db[] = {5.0, 17.0};
    auto table = sized<lvb_cable_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.attenuation_db_per_100m = db;
    return table;
}
lvb_gain_table flat_gain() {
    static const double mhz[] = {100.0, 1000.0};
    static const double db[] = {-2.0, -2.0};
    auto table = sized<lvb_gain_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.gain_db = db;
    return table;
}

TEST(CableStage, IsByTypeByTableOrAsMeasuredAndNeverTwoOfThem) {
    const auto table = sound_table();
    const auto gain = flat_gain();
    const auto with = [](auto &&change) {
        Chain chain({source(0.0), stage(LVB_KIND_CABLE)});
        change(chain.stages[1]);
        return chain;
    };
    refused(with([](lvb_stage &) {}), {LVB_E_MISSING, in_stage, LVB_FIELD_CABLE_TYPE, 1, -1, 0, 1, 14,
                                       "stages[1].cable_type is missing; allowed 1 to 14."});
    refused(with([](lvb_stage &in) { in.length_m = 5.0; }),
            {LVB_E_MISSING, in_stage, LVB_FIELD_CABLE_TYPE, 1, -1, 0, 1, 14});
    // a measured gain that is described as well
    refused(with([](lvb_stage &in) { in.gain_db = -1.0, in.length_m = 5.0; }),
            {LVB_E_UNUSED, in_stage, LVB_FIELD_LENGTH_M, 1, -1, 5.0});
    refused(with([](lvb_stage &in) { in.gain_db = -1.0, in.connector_count = 1; }),
            {LVB_E_UNUSED, in_stage, LVB_FIELD_CONNECTOR_COUNT, 1, -1, 1.0});
    refused(with([](lvb_stage &in) { in.gain_db = -1.0, in.connector_loss_db = 1.0; }),
            {LVB_E_UNUSED, in_stage, LVB_FIELD_CONNECTOR_LOSS_DB, 1, -1, 1.0});
    for (const std::int32_t type : {-1, 15, 1000})
        refused(with([=](lvb_stage &in) { in.cable_type = type, in.length_m = 5.0; }),
                {LVB_E_UNKNOWN_VALUE, in_stage, LVB_FIELD_CABLE_TYPE, 1, -1, static_cast<double>(type), 0, 14});
    refused(with([](lvb_stage &in) { in.cable_type = 4; }),
            {LVB_E_MISSING, in_stage, LVB_FIELD_LENGTH_M, 1, -1, 0, 0.001, 10000});
    refused(with([&](lvb_stage &in) { in.cable_table = &table; }),
            {LVB_E_MISSING, in_stage, LVB_FIELD_LENGTH_M, 1, -1, 0, 0.001, 10000});
    refused(with([&](lvb_stage &in) { in.cable_type = 4, in.cable_table = &table, in.length_m = 5.0; }),
            {LVB_E_CONFLICT, in_stage, LVB_FIELD_CABLE_TABLE, 1, -1, none, none, none,
             "stages[1].cable_table says again what another field already says; give one of them."});
    refused(with([&](lvb_stage &in) { in.cable_type = 4, in.gain_table = &gain, in.length_m = 5.0; }),
            {LVB_E_CONFLICT, in_stage, LVB_FIELD_GAIN_TABLE, 1});
    refused(with([](lvb_stage &in) { in.cable_type = 4, in.gain_db = -2.0, in.length_m = 5.0; }),
            {LVB_E_CONFLICT, in_stage, LVB_FIELD_GAIN_DB, 1, -1, -2.0});
    refused(with([](lvb_stage &in) { in.cable_type = 4, in.length_m = 5.0, in.connector_count = 1001; }),
            {LVB_E_ABOVE_RANGE, in_stage, LVB_FIELD_CONNECTOR_COUNT, 1, -1, 1001, 0, 1000});
    refused(with([](lvb_stage &in) { in.cable_type = 4, in.length_m = 5.0, in.connector_count = 0xFFFFFFFFu; }),
            {LVB_E_ABOVE_RANGE, in_stage, LVB_FIELD_CONNECTOR_COUNT, 1, -1, 4294967295.0, 0, 1000});
    refused(with([](lvb_stage &in) { in.cable_type = 4, in.length_m = 5.0, in.connector_loss_db = 0.1; }),
            {LVB_E_MISSING, in_stage, LVB_FIELD_CONNECTOR_COUNT, 1, -1, 0, 1, 1000});
    EXPECT_EQ(with([](lvb_stage &in) { in.cable_type = 4, in.length_m = 5.0, in.connector_count = 1000; }).compute(),
              LVB_OK);
    EXPECT_EQ(with([&](lvb_stage &in) { in.gain_table = &gain; }).compute(), LVB_OK);
    EXPECT_EQ(with([&](lvb_stage &in) { in.cable_table = &table, in.length_m = 5.0; }).compute(), LVB_OK);
}

TEST(CableStage, OutsideItsTable) {
    Chain high({source(0.0), cable(LVB_CABLE_RG_213_U, 5.0)}, 4800.1);
    refused(high, {LVB_E_OUTSIDE_TABLE, LVB_STRUCT_CABLE_TABLE, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 4800.1, 5.0, 4800.0,
                   "frequency_mhz is 4800.1, too far outside the table of stages[1]; allowed 5 to 4800."});
    Chain low({source(0.0), cable(LVB_CABLE_RG_213_U, 5.0)}, 4.9);
    refused(low, {LVB_E_OUTSIDE_TABLE, LVB_STRUCT_CABLE_TABLE, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 4.9, 5.0, 4800.0});
    const auto table = sound_table();
    Chain lent({source(0.0), stage(LVB_KIND_CABLE)}, 2000.5);
    lent.stages[1].cable_table = &table;
    lent.stages[1].length_m = 5.0;
    refused(lent, {LVB_E_OUTSIDE_TABLE, LVB_STRUCT_CABLE_TABLE, LVB_FIELD_FREQUENCY_MHZ, 1, -1, 2000.5, 10.0, 2000.0});
}

TEST(Stage, ItsGainStandsInOnePlace) {
    const auto gain = flat_gain();
    Chain chain({source(0.0), stage(LVB_KIND_PASSIVE, -3.0)});
    chain.stages[1].gain_table = &gain;
    refused(chain, {LVB_E_CONFLICT, in_stage, LVB_FIELD_GAIN_DB, 1, -1, -3.0});
}

// ---- The last stage refuses, and nothing of the many lines before it is written.

TEST(Refusal, ComesBeforeTheFirstLineIsWritten) {
    std::vector<lvb_stage> stages = {source(0.0)};
    while (stages.size() < LVB_MAX_STAGES) stages.push_back(stage(LVB_KIND_PASSIVE, -0.1));
    stages.back().kind = 99;
    refused(Chain(stages), {LVB_E_UNKNOWN_KIND, in_stage, LVB_FIELD_KIND, LVB_MAX_STAGES - 1, -1, 99, 1, 8});
}

TEST(Refusal, HostileCounts) {
    for (const std::uint32_t count : {std::uint32_t{LVB_MAX_STAGES + 1}, 0x80000000u, 0xFFFFFFFFu}) {
        Chain chain({source(0.0)});
        chain.link.stage_count = count;
        refused(chain,
                {LVB_E_COUNT, in_link, LVB_FIELD_STAGE_COUNT, -1, -1, static_cast<double>(count), 1, LVB_MAX_STAGES});
    }
    Chain chain({source(0.0)});
    chain.link.stage_count = 0xFFFFFFFFu;
    refused(chain, {LVB_E_COUNT, in_link, LVB_FIELD_STAGE_COUNT, -1, -1, 4294967295.0, 1, 1024,
                    "lvb_link.stage_count is 4294967295; allowed 1 to 1024."});
}

TEST(Refusal, AFaultIsClearedBySuccess) {
    Chain chain(ordinary());
    std::memset(&chain.fault, 0xA5, sizeof chain.fault);
    chain.fault.size = sizeof chain.fault;
    ASSERT_EQ(chain.compute(), LVB_OK);
    expect_fault(chain.fault,
                 {LVB_OK, LVB_STRUCT_NONE, LVB_FIELD_NONE, -1, -1, none, none, none, "nothing was refused."});
    EXPECT_EQ(chain.fault.size, sizeof chain.fault);
}

} // namespace
