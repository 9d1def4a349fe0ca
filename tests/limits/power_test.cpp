// A link against a limit of power: conducted and radiated apart, tolerances, frequencies, the published rules.
#include "chain/random_chain.hpp"
#include "door/refusal.hpp"

#include <cmath>
#include <cstring>
#include <set>
#include <string>

namespace {

using proof::antenna;
using proof::Chain;
using proof::sized;
using proof::source;
using proof::stage;

lvb_limit limit_of(std::int32_t quantity, double limit_dbm) {
    auto limit = sized<lvb_limit>();
    limit.quantity = quantity;
    limit.limit_dbm = limit_dbm;
    return limit;
}

lvb_limit_result result_of(Chain &chain, const lvb_limit &limit) {
    auto result = sized<lvb_limit_result>();
    chain.link.stages = chain.stages.data();
    chain.link.stage_count = static_cast<std::uint32_t>(chain.stages.size());
    EXPECT_EQ(lvb_check_limit(&chain.link, &limit, &result, &chain.fault), LVB_OK) << proof::text_of(chain.fault);
    return result;
}
lvb_limit_result result_of(Chain &&chain, const lvb_limit &limit) { return result_of(chain, limit); }

// 20 dBm, 3 dB of combiner, 6 dBi.
std::vector<lvb_stage> outbound(double tolerance_db = 0.0) {
    return {source(20.0, tolerance_db), stage(LVB_KIND_PASSIVE, -3.0, tolerance_db), antenna(6.0)};
}

TEST(LimitOfPower, ConductedAndRadiatedAreNeverMixed) {
    const lvb_limit_result out = result_of(Chain(outbound()), limit_of(LVB_QUANTITY_EIRP, 20.0));
    EXPECT_EQ(out.transmitter_output_dbm, 20.0);
    EXPECT_EQ(out.antenna_input_dbm, 17.0);
    EXPECT_EQ(out.eirp_dbm, 23.0);
    EXPECT_NEAR(out.erp_dbm, 23.0 - 2.150880, 1e-6);
    // the same 20 dBm: met at the transmitter, missed in the air
    const struct {
        std::int32_t quantity, verdict;
        double level;
    } expected[] = {{LVB_QUANTITY_TRANSMITTER_OUTPUT, LVB_LIMIT_HOLDS, 20.0},
                    {LVB_QUANTITY_ANTENNA_INPUT, LVB_LIMIT_HOLDS, 17.0},
                    {LVB_QUANTITY_ERP, LVB_LIMIT_EXCEEDED, out.erp_dbm},
                    {LVB_QUANTITY_EIRP, LVB_LIMIT_EXCEEDED, 23.0}};
    for (const auto &one : expected) {
        const lvb_limit_result result = result_of(Chain(outbound()), limit_of(one.quantity, 20.0));
        EXPECT_EQ(result.verdict, one.verdict) << lvb_quantity_name(one.quantity);
        EXPECT_EQ(result.level_dbm, one.level);
        EXPECT_EQ(result.room_db, 20.0 - one.level);
    }
}

// A licence counts the direction of maximum radiation (ITU Radio Regulations 1.161), not that of the other antenna: a
// half-wave dipole (2.15 dBi, Balanis, Antenna Theory, 4.6) whose axis points at the walker radiates all the same.
TEST(LimitOfPower, APatternCountsInItsDirectionOfMaximumRadiation) {
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
    for (const double elevation_deg : {0.0, 60.0, 90.0}) {
        Chain chain(outbound(0.5));
        chain.stages[2].gain_db = 0.0;
        chain.stages[2].pattern = &pattern;
        chain.stages[2].far_elevation_deg = chain.stages[2].near_elevation_deg = elevation_deg;
        const lvb_limit_result result = result_of(chain, limit_of(LVB_QUANTITY_EIRP, 19.0));
        EXPECT_NEAR(result.eirp_dbm, 20.0 - 3.0 + 2.15, 0.005) << elevation_deg;
        EXPECT_NEAR(result.erp_dbm, 17.0, 1e-5) << elevation_deg;
        EXPECT_EQ(result.worst_db, 1.0); // of transmitter and combiner
        EXPECT_EQ(result.verdict, LVB_LIMIT_EXCEEDED);
    }
}

// 47 CFR 74.861: 250 mW at the transmitter with a 6 dBi antenna is a legal 1 W e.i.r.p. where the rule limits conducted
// power, and twenty times too much where it limits 50 mW e.i.r.p.
TEST(LimitOfPower, TheSameTransmitterUnderTwoRules) {
    Chain chain({source(lvb_dbm_from_mw(250.0)), antenna(6.0)});
    EXPECT_EQ(result_of(chain, limit_of(LVB_QUANTITY_TRANSMITTER_OUTPUT, lvb_dbm_from_mw(250.0))).verdict,
              LVB_LIMIT_HOLDS);
    const lvb_limit_result vhf = result_of(chain, limit_of(LVB_QUANTITY_EIRP, lvb_dbm_from_mw(50.0)));
    EXPECT_EQ(vhf.verdict, LVB_LIMIT_EXCEEDED);
    EXPECT_NEAR(vhf.room_db, 10.0 * std::log10(50.0 / 250.0) - 6.0, 1e-12);
}

TEST(LimitOfPower, TolerancesMakeItDoubtful) {
    for (const std::int32_t quantity :
         {LVB_QUANTITY_TRANSMITTER_OUTPUT, LVB_QUANTITY_ANTENNA_INPUT, LVB_QUANTITY_ERP, LVB_QUANTITY_EIRP}) {
        Chain chain(outbound(0.5));
        const double level = result_of(chain, limit_of(quantity, 0.0)).level_dbm;
        const double worst = quantity == LVB_QUANTITY_TRANSMITTER_OUTPUT ? 0.5 : 1.0;
        EXPECT_EQ(result_of(chain, limit_of(quantity, 0.0)).worst_db, worst);
        EXPECT_EQ(result_of(chain, limit_of(quantity, level - 0.01)).verdict, LVB_LIMIT_EXCEEDED);
        EXPECT_EQ(result_of(chain, limit_of(quantity, level)).verdict, LVB_LIMIT_DOUBTFUL);
        EXPECT_EQ(result_of(chain, limit_of(quantity, level + worst - 0.01)).verdict, LVB_LIMIT_DOUBTFUL);
        EXPECT_EQ(result_of(chain, limit_of(quantity, level + worst)).verdict, LVB_LIMIT_HOLDS);
    }
}

TEST(LimitOfPower, RoundingIsNoExcess) {
    Chain chain({source(0.1), stage(LVB_KIND_AMPLIFIER, 0.2), antenna(0.0)}); // 0.1 + 0.2 > 0.3 in binary64
    ASSERT_GT(result_of(chain, limit_of(LVB_QUANTITY_EIRP, 0.3)).level_dbm, 0.3);
    EXPECT_EQ(result_of(chain, limit_of(LVB_QUANTITY_EIRP, 0.3)).verdict, LVB_LIMIT_HOLDS);
    EXPECT_EQ(result_of(chain, limit_of(LVB_QUANTITY_EIRP, 0.3 - 2e-9)).verdict, LVB_LIMIT_EXCEEDED);
}

TEST(LimitOfPower, AnAmplifierIsTheTransmittersLastStage) {
    Chain booster({source(10.0, 0.5), stage(LVB_KIND_CABLE, -2.0, 0.25), stage(LVB_KIND_AMPLIFIER, 9.0, 0.25),
                   stage(LVB_KIND_PASSIVE, -4.0), antenna(0.0)});
    lvb_limit_result out = result_of(booster, limit_of(LVB_QUANTITY_TRANSMITTER_OUTPUT, 17.0));
    EXPECT_EQ(out.level_dbm, 17.0);
    EXPECT_EQ(out.worst_db, 1.0);
    // a lossy stage after the source is not the output, and a weak amplifier behind a strong source does not hide it
    Chain weak({source(20.0), stage(LVB_KIND_PASSIVE, -15.0), stage(LVB_KIND_AMPLIFIER, 5.0), antenna(0.0)});
    EXPECT_EQ(result_of(weak, limit_of(LVB_QUANTITY_TRANSMITTER_OUTPUT, 17.0)).level_dbm, 20.0);
    // a lower level with a wide tolerance may still be the one that exceeds
    Chain wide({source(20.0), stage(LVB_KIND_PASSIVE, -10.0, 2.0), stage(LVB_KIND_AMPLIFIER, 9.0, 1.0), antenna(0.0)});
    out = result_of(wide, limit_of(LVB_QUANTITY_TRANSMITTER_OUTPUT, 21.0));
    EXPECT_EQ(out.level_dbm, 20.0);
    EXPECT_EQ(out.worst_db, 2.0); // 10 + 9 + 3
    EXPECT_EQ(out.verdict, LVB_LIMIT_DOUBTFUL);
}

TEST(LimitOfPower, AllowancesDoNotLowerWhatIsRadiated) {
    Chain plain(outbound());
    Chain allowed({source(20.0), stage(LVB_KIND_ALLOWANCE, -10.0, 3.0), stage(LVB_KIND_PASSIVE, -3.0), antenna(6.0)});
    const lvb_limit limit = limit_of(LVB_QUANTITY_EIRP, 23.0);
    const lvb_limit_result a = result_of(plain, limit), b = result_of(allowed, limit);
    EXPECT_EQ(std::memcmp(&a, &b, sizeof a), 0);
}

TEST(LimitOfPower, TheRestOfTheChainChangesNothing) {
    const lvb_limit limit = limit_of(LVB_QUANTITY_EIRP, 23.0);
    std::vector<lvb_stage> whole = outbound(0.5);
    whole.insert(whole.end(), {proof::air(), stage(LVB_KIND_ALLOWANCE, -20.0, 5.0), antenna(3.0),
                               stage(LVB_KIND_AMPLIFIER, 90.0), proof::receiver(-90.0, -20.0)});
    Chain link(whole), transmit(outbound(0.5));
    link.link.far_distance_m = 40.0;
    transmit.link.far_distance_m = transmit.link.near_distance_m = 0.0;
    const lvb_limit_result a = result_of(link, limit), b = result_of(transmit, limit);
    EXPECT_EQ(std::memcmp(&a, &b, sizeof a), 0);
}

// The licence counts the direction of maximum radiation: turning the antenna away from the receiver lowers no e.i.r.p.
TEST(LimitOfPower, AnAntennaTurnedAwayRadiatesWhatItDid) {
    auto pattern = sized<lvb_pattern>();
    pattern.kind = LVB_PATTERN_COSINE;
    pattern.gain_dbi = 10.0;
    for (const double front_to_back_db : {0.0, 20.0}) { // 0: nothing at all is radiated behind it
        pattern.front_to_back_db = front_to_back_db;
        Chain chain({source(17.0, 0.5), antenna(), proof::air(), antenna(), proof::receiver()});
        chain.stages[1].pattern = &pattern;
        chain.stages[1].tolerance_db = 0.25;
        chain.stages[1].far_azimuth_deg = chain.stages[1].near_azimuth_deg = 180.0;
        const lvb_limit_result out = result_of(chain, limit_of(LVB_QUANTITY_EIRP, 20.0));
        EXPECT_EQ(out.verdict, LVB_LIMIT_EXCEEDED);
        EXPECT_EQ(out.eirp_dbm, 27.0);
        EXPECT_EQ(out.worst_db, 0.75);
        EXPECT_NEAR(out.erp_dbm, 27.0 - 2.150880, 1e-6);
        EXPECT_EQ(out.antenna_input_dbm, 17.0);
    }
}

// Against the budget of any chain: its e.i.r.p. and its levels without allowances.
TEST(LimitOfPower, AgreesWithTheBudget) {
    proof::Random random(711);
    int radiating = 0, turned = 0;
    for (int i = 0; i < 400; ++i) {
        proof::Lent lent;
        Chain chain = proof::ChainMaker(random, lent).make();
        if (chain.compute() != LVB_OK || std::isnan(chain.budget.eirp_dbm)) continue;
        ++radiating;
        const lvb_limit_result out = result_of(chain, limit_of(LVB_QUANTITY_EIRP, 10.0));
        EXPECT_EQ(out.level_dbm, chain.budget.eirp_dbm);
        EXPECT_EQ(out.worst_db, chain.budget.eirp_worst_db);
        EXPECT_GE(out.transmitter_output_dbm, chain.levels[0].near_level_dbm);
        std::size_t at = 0;
        while (chain.stages[at].kind != LVB_KIND_ANTENNA) ++at;
        EXPECT_EQ(out.antenna_input_dbm, chain.levels[at - 1].near_level_dbm);
        turned += out.level_dbm != chain.levels[at].near_level_dbm; // a pattern that points elsewhere
    }
    EXPECT_GT(radiating, 100);
    EXPECT_GT(turned, 50);
}

TEST(LimitOfPower, SaysNothingWhereTheRuleDoesNotReach) {
    lvb_limit limit = limit_of(LVB_QUANTITY_EIRP, -100.0);
    const auto verdict_at = [&](double mhz) {
        Chain chain(outbound());
        chain.link.frequency_mhz = mhz;
        const lvb_limit_result result = result_of(chain, limit);
        EXPECT_EQ(std::isnan(result.room_db), result.verdict == LVB_LIMIT_NOT_COVERED);
        EXPECT_EQ(result.level_dbm, 23.0);
        return result.verdict;
    };
    EXPECT_EQ(verdict_at(600.0), LVB_LIMIT_EXCEEDED); // no ends
    limit.lowest_mhz = 470.0;
    EXPECT_EQ(verdict_at(469.999), LVB_LIMIT_NOT_COVERED);
    EXPECT_EQ(verdict_at(470.0), LVB_LIMIT_EXCEEDED);
    EXPECT_EQ(verdict_at(6000.0), LVB_LIMIT_EXCEEDED);
    limit.highest_mhz = 608.0;
    EXPECT_EQ(verdict_at(608.0), LVB_LIMIT_EXCEEDED);
    EXPECT_EQ(verdict_at(608.001), LVB_LIMIT_NOT_COVERED);
    limit.lowest_mhz = 0.0;
    EXPECT_EQ(verdict_at(30.0), LVB_LIMIT_EXCEEDED);
}

TEST(LimitOfPower, WithoutAnAntennaOnlyTheTransmitterIsThere) {
    Chain bare({source(20.0), stage(LVB_KIND_PASSIVE, -3.0)});
    const lvb_limit_result out = result_of(bare, limit_of(LVB_QUANTITY_TRANSMITTER_OUTPUT, 20.0));
    EXPECT_EQ(out.verdict, LVB_LIMIT_HOLDS);
    EXPECT_TRUE(std::isnan(out.antenna_input_dbm) && std::isnan(out.erp_dbm) && std::isnan(out.eirp_dbm));
    for (const std::int32_t quantity : {LVB_QUANTITY_ANTENNA_INPUT, LVB_QUANTITY_ERP, LVB_QUANTITY_EIRP}) {
        const lvb_limit limit = limit_of(quantity, 20.0);
        proof::Untouched<lvb_limit_result> result;
        EXPECT_EQ(lvb_check_limit(&bare.link, &limit, &result.result, &bare.fault), LVB_E_NO_TRANSMIT_ANTENNA);
        EXPECT_TRUE(result.holds());
        proof::expect_fault(bare.fault, {LVB_E_NO_TRANSMIT_ANTENNA, LVB_STRUCT_LIMIT, LVB_FIELD_QUANTITY, -1, -1,
                                         static_cast<double>(quantity), proof::none, proof::none,
                                         "the limit needs a transmit antenna in the chain."});
    }
}

TEST(LimitOfPower, RefusesWrongLimitsAndChains) {
    Chain chain(outbound());
    result_of(chain, limit_of(LVB_QUANTITY_EIRP, 20.0)); // sound
    const auto refused = [&](const lvb_limit &limit, lvb_status status, std::int32_t field) {
        proof::Untouched<lvb_limit_result> result;
        EXPECT_STREQ(lvb_status_name(lvb_check_limit(&chain.link, &limit, &result.result, &chain.fault)),
                     lvb_status_name(status));
        EXPECT_TRUE(result.holds());
        EXPECT_STREQ(lvb_field_name(chain.fault.field), lvb_field_name(field));
    };
    refused(limit_of(0, 20.0), LVB_E_MISSING, LVB_FIELD_QUANTITY);
    refused(limit_of(5, 20.0), LVB_E_UNKNOWN_VALUE, LVB_FIELD_QUANTITY);
    refused(limit_of(-1, 20.0), LVB_E_UNKNOWN_VALUE, LVB_FIELD_QUANTITY);
    refused(limit_of(LVB_QUANTITY_ERP, 151.0), LVB_E_ABOVE_RANGE, LVB_FIELD_LIMIT_DBM);
    refused(limit_of(LVB_QUANTITY_ERP, std::nan("")), LVB_E_NAN, LVB_FIELD_LIMIT_DBM);
    lvb_limit limit = limit_of(LVB_QUANTITY_ERP, 20.0);
    limit.lowest_mhz = 1e-4;
    refused(limit, LVB_E_BELOW_RANGE, LVB_FIELD_LOWEST_MHZ);
    limit.lowest_mhz = 608.0;
    limit.highest_mhz = 470.0;
    refused(limit, LVB_E_ORDER, LVB_FIELD_HIGHEST_MHZ);
    limit.highest_mhz = HUGE_VAL;
    refused(limit, LVB_E_INFINITE, LVB_FIELD_HIGHEST_MHZ);
    chain.stages[1].gain_db = 1.0; // and whatever lvb_compute_budget refuses
    refused(limit_of(LVB_QUANTITY_ERP, 20.0), LVB_E_ABOVE_RANGE, LVB_FIELD_GAIN_DB);
}

TEST(LimitRules, AreWholeAndSayWhereTheyStand) {
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        auto rule = sized<lvb_limit_rule>();
        ASSERT_EQ(lvb_describe_limit_rule(i, &rule, nullptr), LVB_OK);
        EXPECT_LT(rule.lowest_mhz, rule.highest_mhz);
        EXPECT_EQ(rule.limit_dbm, lvb_dbm_from_mw(rule.power_mw));
        EXPECT_STRNE(lvb_quantity_name(rule.quantity), "unknown");
        for (const char *text : {rule.country, rule.citation, rule.edition, rule.remark})
            EXPECT_GT(std::strlen(text), 8u);
        // a rule is a limit
        Chain chain({source(lvb_dbm_from_mw(rule.power_mw)), antenna(0.0)});
        chain.link.frequency_mhz = rule.lowest_mhz;
        lvb_limit limit = limit_of(rule.quantity, rule.limit_dbm);
        limit.lowest_mhz = rule.lowest_mhz;
        limit.highest_mhz = rule.highest_mhz;
        EXPECT_EQ(result_of(chain, limit).verdict, LVB_LIMIT_HOLDS);
    }
    proof::Untouched<lvb_limit_rule> rule;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_describe_limit_rule(lvb_limit_rule_count(), &rule.result, &fault), LVB_E_NOT_FOUND);
    EXPECT_TRUE(rule.holds());
    EXPECT_EQ(fault.field, LVB_FIELD_RULE_INDEX);
}

// A second copying of every rule: 47 CFR 74.861(e)(1) and (d)(1) in the text before 89 FR 83789 (18 November 2024), 47
// CFR 15.236(d) as revised on 1 September 2021. That licensed stations have 653 to 657 MHz of the duplex gap was read
// in public band tables only.
TEST(LimitRules, AreAsPublished) {
    struct Published {
        const char *citation;
        double lowest_mhz, highest_mhz;
        std::int32_t quantity;
        double power_mw;
    };
    const char *const television = "47 CFR 74.861(e)(1)", *const other = "47 CFR 74.861(d)(1)",
                      *const unlicensed = "47 CFR 15.236(d)";
    constexpr std::int32_t conducted = LVB_QUANTITY_TRANSMITTER_OUTPUT, radiated = LVB_QUANTITY_EIRP;
    const std::vector<Published> published = {
        {unlicensed, 54.0, 72.0, radiated, 50.0},   {unlicensed, 76.0, 88.0, radiated, 50.0},
        {unlicensed, 174.0, 216.0, radiated, 50.0}, {unlicensed, 470.0, 608.0, radiated, 50.0},
        {unlicensed, 614.0, 616.0, radiated, 20.0}, {unlicensed, 657.0, 663.0, radiated, 20.0},
        {television, 54.0, 72.0, radiated, 50.0},   {television, 76.0, 88.0, radiated, 50.0},
        {television, 174.0, 216.0, radiated, 50.0}, {television, 470.0, 608.0, conducted, 250.0},
        {television, 653.0, 657.0, radiated, 20.0}, {other, 941.5, 952.0, conducted, 1000.0},
        {other, 952.85, 956.25, conducted, 1000.0}, {other, 956.45, 959.85, conducted, 1000.0},
        {other, 1435.0, 1525.0, conducted, 250.0},  {other, 6875.0, 6900.0, conducted, 1000.0},
        {other, 7100.0, 7125.0, conducted, 1000.0},
    };
    EXPECT_EQ(lvb_limit_rule_count(), published.size());
    for (const Published &one : published) {
        int found = 0;
        for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
            auto rule = sized<lvb_limit_rule>();
            ASSERT_EQ(lvb_describe_limit_rule(i, &rule, nullptr), LVB_OK);
            found += rule.lowest_mhz == one.lowest_mhz && rule.highest_mhz == one.highest_mhz &&
                     rule.quantity == one.quantity && rule.power_mw == one.power_mw &&
                     std::strcmp(rule.citation, one.citation) == 0;
        }
        EXPECT_EQ(found, 1) << one.citation << ' ' << one.lowest_mhz;
    }
}

// One set of rules says one thing of a frequency, and nothing of what is radio astronomy's or mobile services'.
TEST(LimitRules, NeverContradictEachOther) {
    const double others_mhz[][2] = {{608.0, 614.0}, {617.0, 652.0}, {663.0, 698.0}}; // 47 CFR 15.236(a)(4), 608 to 614
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        auto rule = sized<lvb_limit_rule>();
        ASSERT_EQ(lvb_describe_limit_rule(i, &rule, nullptr), LVB_OK);
        for (const auto &[lowest, highest] : others_mhz)
            EXPECT_TRUE(rule.highest_mhz <= lowest || rule.lowest_mhz >= highest) << rule.lowest_mhz;
        for (std::uint32_t k = 0; k < i; ++k) {
            auto before = sized<lvb_limit_rule>();
            ASSERT_EQ(lvb_describe_limit_rule(k, &before, nullptr), LVB_OK);
            const bool same_rules = std::strncmp(rule.citation, before.citation, std::strlen("47 CFR 74")) == 0;
            EXPECT_TRUE(!same_rules || rule.highest_mhz < before.lowest_mhz || rule.lowest_mhz > before.highest_mhz)
                << rule.citation << ' ' << rule.lowest_mhz << ' ' << before.lowest_mhz;
        }
    }
}

} // namespace
