// The JSON answer: the same figures as a direct call of the library, null where the library has no number.
#include "run.hpp"

#include <gtest/gtest.h>
#include <levelbook/levelbook.h>
#include <nlohmann/json.hpp>

#include <set>
#include <utility>

namespace desk_test {
namespace {

using Json = nlohmann::json;

Json budget_of(const std::string &file, const std::string &link = "") {
    std::vector<std::string> words = {"budget", file, "--json"};
    if (!link.empty()) words.insert(words.end(), {"--link", link});
    const Printout answer = run(words);
    EXPECT_LE(answer.code, 1) << answer.err;
    return Json::parse(answer.out);
}

lvb_stage stage(int32_t kind, double gain_db, double tolerance_db, int32_t basis) {
    lvb_stage out{};
    out.kind = kind;
    out.gain_db = gain_db;
    out.tolerance_db = tolerance_db;
    out.basis = basis;
    return out;
}

void expect_end(const Json &told, const lvb_end &end) {
    EXPECT_EQ(told.at("distance_m").get<double>(), end.distance_m);
    EXPECT_EQ(told.at("level_dbm").get<double>(), end.level_dbm);
    EXPECT_EQ(told.at("worst_db").get<double>(), end.worst_db);
    EXPECT_EQ(told.at("rss_db").get<double>(), end.rss_db);
    EXPECT_EQ(told.at("margin_db").get<double>(), end.margin_db);
    EXPECT_EQ(told.at("headroom_db").get<double>(), end.headroom_db);
    EXPECT_EQ(told.at("from_middle_db").get<double>(), end.from_middle_db);
    EXPECT_EQ(told.at("zone"), lvb_zone_name(end.zone));
    EXPECT_EQ(told.at("zone_lowest"), lvb_zone_name(end.zone_lowest));
    EXPECT_EQ(told.at("zone_highest"), lvb_zone_name(end.zone_highest));
}

// The chain is entered here a second time, by hand, in the library's units.
TEST(DeskJson, AgreesWithADirectCallOfTheLibraryToTheLastBit) {
    lvb_stage stages[] = {
        stage(LVB_KIND_SOURCE, 0.0, 1.0, LVB_BASIS_DATA_SHEET),
        stage(LVB_KIND_ANTENNA, -3.0, 2.0, LVB_BASIS_ESTIMATE),
        stage(LVB_KIND_AIR, 0.0, 0.0, LVB_BASIS_NOT_LOOKED_UP),
        stage(LVB_KIND_ALLOWANCE, -20.0, 6.0, LVB_BASIS_ESTIMATE),
        stage(LVB_KIND_ANTENNA, 6.0, 1.0, LVB_BASIS_DATA_SHEET),
        stage(LVB_KIND_AMPLIFIER, 10.0, 1.0, LVB_BASIS_DATA_SHEET),
        stage(LVB_KIND_CABLE, 0.0, 0.5, LVB_BASIS_NOT_LOOKED_UP),
        stage(LVB_KIND_AMPLIFIER, 1.0, 1.0, LVB_BASIS_DATA_SHEET),
        stage(LVB_KIND_RECEIVER, 0.0, 0.0, LVB_BASIS_DATA_SHEET),
    };
    stages[0].level_dbm = lvb_dbm_from_mw(10.0);
    stages[6].cable_type = LVB_CABLE_RG_213_U;
    stages[6].length_m = 40.0;
    stages[6].connector_count = 2;
    stages[8].stated = LVB_STATED_FLOOR | LVB_STATED_WANTED | LVB_STATED_CEILING;
    stages[8].floor_dbm = -95.0;
    stages[8].wanted_low_dbm = -80.0;
    stages[8].wanted_high_dbm = -30.0;
    stages[8].ceiling_dbm = -20.0;
    lvb_link link{};
    link.size = sizeof link;
    link.stages = stages;
    link.stage_count = static_cast<uint32_t>(std::size(stages));
    link.stage_size = sizeof stages[0];
    link.frequency_mhz = 602.4;
    link.far_distance_m = 30.0;
    link.near_distance_m = 6.0;
    lvb_budget budget{};
    budget.size = sizeof budget;
    lvb_level levels[std::size(stages)] = {};
    // The link's own noise asks for more than the entered floor of -95 dBm, and judges in its place.
    for (const auto &[index, figure_db] : {std::pair{5, 3.0}, {7, 7.0}, {8, 8.0}}) {
        stages[index].stated |= LVB_STATED_NOISE_FIGURE;
        stages[index].noise_figure_db = figure_db;
    }
    lvb_noise_conditions conditions{};
    conditions.size = sizeof conditions;
    conditions.bandwidth_mhz = 0.2;
    conditions.external_noise_figure_db = 10.1;
    lvb_noise noise{};
    noise.size = sizeof noise;
    ASSERT_EQ(lvb_compute_noise(&link, &conditions, &noise, nullptr, 0, nullptr), LVB_OK);
    stages[8].floor_dbm = noise.receiver_noise_dbm + 20.0;
    ASSERT_GT(stages[8].floor_dbm, -95.0);
    ASSERT_EQ(lvb_compute_budget(&link, &budget, levels, sizeof levels[0], nullptr), LVB_OK);

    const Json told = budget_of(demo_file(), "Hand microphone, thrust").at("links").at(0);
    for (std::size_t i = 0; i < std::size(stages); ++i) {
        const Json &line = told.at("stages").at(i);
        EXPECT_EQ(line.at("kind"), lvb_kind_name(stages[i].kind));
        EXPECT_EQ(line.at("reference"), lvb_reference_name(levels[i].reference));
        EXPECT_EQ(line.at("basis"), lvb_basis_name(levels[i].basis));
        EXPECT_EQ(line.at("tolerance_db").get<double>(), stages[i].tolerance_db);
        EXPECT_EQ(line.at("far_change_db").get<double>(), levels[i].far_change_db);
        EXPECT_EQ(line.at("far_level_dbm").get<double>(), levels[i].far_level_dbm);
        EXPECT_EQ(line.at("far_worst_db").get<double>(), levels[i].far_worst_db);
        EXPECT_EQ(line.at("far_rss_db").get<double>(), levels[i].far_rss_db);
        EXPECT_EQ(line.at("near_change_db").get<double>(), levels[i].near_change_db);
        EXPECT_EQ(line.at("near_level_dbm").get<double>(), levels[i].near_level_dbm);
        EXPECT_EQ(line.at("near_worst_db").get<double>(), levels[i].near_worst_db);
        EXPECT_EQ(line.at("near_rss_db").get<double>(), levels[i].near_rss_db);
    }
    expect_end(told.at("far_end"), budget.far_end);
    expect_end(told.at("near_end"), budget.near_end);
    EXPECT_EQ(told.at("verdict"), lvb_verdict_name(budget.verdict));
    EXPECT_EQ(told.at("reference"), lvb_reference_name(budget.reference));
    EXPECT_EQ(told.at("decided_by").at("room_db").get<double>(), budget.decided_by_db);
    EXPECT_EQ(told.at("eirp_dbm").get<double>(), budget.eirp_dbm);
    EXPECT_EQ(told.at("eirp_worst_db").get<double>(), budget.eirp_worst_db);
    EXPECT_EQ(told.at("basis").at("guesses").get<uint32_t>(), budget.guesses);
    EXPECT_EQ(told.at("basis").at("guess_worst_db").get<double>(), budget.guess_worst_db);
    EXPECT_EQ(told.at("basis").at("guess_share").get<double>(), budget.guess_share);
    EXPECT_EQ(told.at("window").at("ceiling_dbm").get<double>(), -20.0);
    EXPECT_EQ(told.at("window").at("floor_dbm").get<double>(), -95.0);
    EXPECT_EQ(told.at("window").at("judged_floor_dbm").get<double>(), stages[8].floor_dbm);
}

TEST(DeskJson, SaysNullWhereTheLibraryHasNoNumber) {
    const TemporaryFile file(R"({"production": "T", "links": [{"name": "A", "frequency_mhz": 600,
        "stages": [{"kind": "source", "power_mw": 30}, {"kind": "receiver"}]}]})");
    const Json link = budget_of(file.path()).at("links").at(0);
    EXPECT_TRUE(link.at("eirp_dbm").is_null());
    EXPECT_TRUE(link.at("eirp_worst_db").is_null());
    EXPECT_TRUE(link.at("decided_by").is_null());
    EXPECT_TRUE(link.at("temperature_degc").is_null());
    EXPECT_TRUE(link.at("window").at("floor_dbm").is_null());
    EXPECT_TRUE(link.at("far_end").at("margin_db").is_null());
    EXPECT_TRUE(link.at("far_end").at("distance_m").is_null());
    EXPECT_EQ(link.at("verdict"), "not judged");
    EXPECT_EQ(link.at("not_judged").size(), 2u); // neither floor nor ceiling
}

TEST(DeskJson, TellsThatNoNearDistanceWasGiven) {
    const TemporaryFile file(R"({"production": "T", "links": [{"name": "A", "frequency_mhz": 600,
        "far_distance_m": 30, "stages": [{"kind": "source", "power_mw": 30}, {"kind": "antenna", "gain_dbi": 0},
        {"kind": "air"}, {"kind": "antenna", "gain_dbi": 0},
        {"kind": "receiver", "floor_dbm": -90, "ceiling_dbm": -20}]}]})");
    const Json link = budget_of(file.path()).at("links").at(0);
    EXPECT_EQ(link.at("notes"), Json::array({"near distance not given"}));
    EXPECT_EQ(link.at("not_judged").size(), 1u);
    EXPECT_EQ(link.at("near_end").at("distance_m"), 30.0);
}

// 30 mW is 14.77 dBm; 600 MHz over 40 ft is 49.73 dB; 12 m to 13 m costs 0.695 dB: worked from ITU-R P.525 and
// 1 ft = 0.3048 m by hand, and printed in many tables.
TEST(DeskJson, TradeCheck) {
    const auto air = [](const std::string &far, const std::string &near) {
        const TemporaryFile file(R"({"production": "T", "links": [{"name": "A", "frequency_ghz": 0.6, )" + far + ", " +
                                 near + R"(, "stages": [{"kind": "source", "power_mw": 30},
            {"kind": "antenna", "gain_dbi": 0}, {"kind": "air"}, {"kind": "antenna", "gain_dbi": 0}]}]})");
        return budget_of(file.path()).at("links").at(0).at("stages");
    };
    const Json in_feet = air(R"("far_distance_ft": 40)", R"("near_distance_ft": 40)");
    EXPECT_NEAR(in_feet[0].at("far_level_dbm").get<double>(), 14.77, 0.005);
    EXPECT_NEAR(in_feet[2].at("far_change_db").get<double>(), -49.73, 0.005);
    const Json a_metre = air(R"("far_distance_m": 13)", R"("near_distance_m": 12)");
    EXPECT_NEAR(a_metre[2].at("near_change_db").get<double>() - a_metre[2].at("far_change_db").get<double>(), 0.695,
                0.0005);
}

TEST(DeskJson, UnitsInKeysSayTheSame) {
    const auto far_level = [](const std::string &link_keys, const std::string &power, const std::string &length) {
        const TemporaryFile file(R"({"production": "T", "links": [{"name": "A", )" + link_keys +
                                 R"(, "stages": [{"kind": "source", )" + power +
                                 R"(}, {"kind": "cable", "cable_type": "RG-213/U", )" + length +
                                 R"(}, {"kind": "antenna", "gain_dbi": 0}, {"kind": "air"},
                                  {"kind": "antenna", "gain_dbi": 0}]}]})");
        return budget_of(file.path()).at("links").at(0).at("far_end").at("level_dbm").get<double>();
    };
    const double metric = far_level(R"("frequency_mhz": 600, "far_distance_m": 30.48, "temperature_degc": 30)",
                                    R"("power_dbm": 20)", R"("length_m": 15.24)");
    const double imperial = far_level(R"("frequency_ghz": 0.6, "far_distance_ft": 100, "temperature_degf": 86)",
                                      R"("power_mw": 100)", R"("length_ft": 50)");
    EXPECT_NEAR(metric, imperial, 1e-9);
    EXPECT_NEAR(metric,
                far_level(R"("frequency_mhz": 600, "far_distance_m": 30.48, "temperature_degc": 30)",
                          R"("power_dbw": -10)", R"("length_m": 15.24)"),
                1e-9);
}

void collect_keys(const Json &value, std::set<std::string> &keys) {
    if (value.is_object())
        for (const auto &[key, member] : value.items()) keys.insert(key);
    for (const Json &member : value)
        if (member.is_structured()) collect_keys(member, keys);
}

TEST(DeskJson, EveryFieldIsDocumented) {
    std::set<std::string> keys;
    collect_keys(budget_of(demo_file()), keys);
    EXPECT_GT(keys.size(), 50u);
    const std::string document = read_file(DESK_SOURCES "/README.md");
    for (const std::string &key : keys)
        EXPECT_NE(document.find("`" + key + "`"), std::string::npos) << key << " is not in README.md";
}

} // namespace
} // namespace desk_test
