// Tuning, solve, rank, compare, choose, locate and sure: what they answer, and what they refuse.
//
// Expected values are worked here from the named formula, over a chain whose levels are sums of entered decibels and
// one free-space loss (ITU-R P.525).
#include "run.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <set>

namespace desk_test {
namespace {

using Json = nlohmann::json;

constexpr double exact = 1e-6;

double free_space_db(double mhz, double metres) {
    return 20.0 * std::log10(4.0 * std::numbers::pi * metres * mhz / 299.792458);
}

// A chain whose far level is 20 - 3 - 5 - 10 = 2 dBm less the loss of the way, and its near level 12 dBm less it.
struct Chain {
    std::string link;
    std::string splitter = R"("loss_db": 3, "tolerance_db": 0.5)";
    std::string cable = R"("loss_db": 5, "tolerance_db": 1)";
    std::string transmit = R"("gain_dbi": 0)";
    std::string air;
    std::string body = R"("loss_db": 10, "tolerance_db": 3, "basis": "estimate")";
    std::string receiver = R"("floor_dbm": -70, "ceiling_dbm": -10)";
    std::string stock;
    std::string more_links;
};

constexpr double far_sum_dbm = 2.0;
constexpr double near_sum_dbm = 12.0;
constexpr double worst_db = 0.2 + 0.5 + 1.0 + 3.0;

std::string comma(const std::string &keys) { return keys.empty() ? "" : ", " + keys; }

std::string link_text(const Chain &chain, const std::string &name) {
    return "{\"name\": \"" + name + R"(", "frequency_mhz": 600, "far_distance_m": 20, "near_distance_m": 2)" +
           (chain.link.empty() ? "" : ",\n" + chain.link) + ",\n\"stages\": [\n" +
           R"({"kind": "source", "label": "pack", "power_dbm": 20, "tolerance_db": 0.2},)" + "\n" +
           R"({"kind": "passive", "label": "splitter", )" + chain.splitter + "},\n" +
           R"({"kind": "cable", "label": "run", )" + chain.cable + "},\n" + R"({"kind": "antenna", "label": "rod", )" +
           chain.transmit + "},\n" + R"({"kind": "air")" + comma(chain.air) + "},\n" +
           R"({"kind": "allowance", "label": "body", )" + chain.body + "},\n" +
           R"({"kind": "antenna", "label": "whip", "gain_dbi": 0},)" + "\n" +
           R"({"kind": "receiver", "label": "rack", )" + chain.receiver + "}]}";
}

std::string text_of(const Chain &chain) {
    return "{\"production\": \"T\",\n" + (chain.stock.empty() ? "" : "\"stock\": " + chain.stock + ",\n") +
           "\"links\": [\n" + link_text(chain, "A") + chain.more_links + "]}";
}

Printout ask(const Chain &chain, std::vector<std::string> words) {
    const TemporaryFile file(text_of(chain));
    words.insert(words.begin() + 1, file.path());
    return run(words);
}

Json told(const Chain &chain, std::vector<std::string> words, int code = 0) {
    words.emplace_back("--json");
    const Printout answer = ask(chain, words);
    EXPECT_EQ(answer.code, code) << answer.err;
    EXPECT_EQ(answer.err, "");
    return answer.out.empty() ? Json() : Json::parse(answer.out);
}

std::string page(const Chain &chain, const std::vector<std::string> &words, int code = 0) {
    const Printout answer = ask(chain, words);
    EXPECT_EQ(answer.code, code) << answer.err;
    std::string text;
    for (const std::string &line : lines_of(answer.out)) {
        EXPECT_LE(line.size(), 100u) << line;
        bool blank = true;
        for (const char c : line) {
            if (c != ' ') text += blank ? std::string(" ") + c : std::string(1, c);
            blank = c == ' ';
        }
    }
    return text;
}

void expect_in(const std::string &text, const std::string &words) {
    EXPECT_NE(text.find(words), std::string::npos) << "wanted: " << words << "\nin:" << text;
}

double number(const Json &value) { return value.is_null() ? std::nan("") : value.get<double>(); }

// ---- Tuning ----

Chain tuned(const std::string &tuning) {
    Chain chain;
    chain.link = "\"tuning\": " + tuning;
    return chain;
}

Json tuning_of(const Chain &chain, int code = 0) {
    return told(chain, {"budget"}, code).at("links").at(0).at("tuning");
}

TEST(DeskTuning, RangeIsJudgedAtItsWorst) {
    const Json tuning = tuning_of(tuned(R"({"first_mhz": 500, "last_mhz": 700, "count": 5})"));
    EXPECT_EQ(tuning.at("frequencies"), 5);
    EXPECT_EQ(tuning.at("verdict"), "holds");
    EXPECT_EQ(tuning.at("holds"), true);
    EXPECT_NEAR(number(tuning.at("lowest_margin").at("margin_db")), far_sum_dbm - free_space_db(700, 20) + 70, exact);
    EXPECT_EQ(tuning.at("lowest_margin").at("frequency_mhz"), 700.0);
    EXPECT_NEAR(number(tuning.at("highest_margin").at("margin_db")), far_sum_dbm - free_space_db(500, 20) + 70, exact);
    EXPECT_NEAR(number(tuning.at("lowest_headroom").at("headroom_db")), -10 - near_sum_dbm + free_space_db(500, 2),
                exact);
    EXPECT_EQ(tuning.at("lowest_headroom").at("frequency_mhz"), 500.0);
}

TEST(DeskTuning, LinkThatHoldsAtItsOwnFrequencyFailsWhereItDoesNot) {
    Chain chain = tuned(R"({"channels_mhz": [600, 2400, 1200]})");
    chain.body = R"("loss_db": 10)";
    chain.splitter = R"("loss_db": 3)";
    chain.cable = R"("loss_db": 5)";
    chain.receiver = R"("floor_dbm": -60, "ceiling_dbm": -10)";
    const double margin = far_sum_dbm - free_space_db(2400, 20) + 60;
    ASSERT_LT(margin, -0.2);
    ASSERT_GT(far_sum_dbm - free_space_db(600, 20) + 60, 0.2);
    const Json link = told(chain, {"budget"}, 1).at("links").at(0);
    EXPECT_EQ(link.at("verdict"), "holds");
    EXPECT_EQ(link.at("holds"), false);
    EXPECT_NEAR(number(link.at("tuning").at("lowest_margin").at("margin_db")), margin, exact);
    EXPECT_EQ(link.at("tuning").at("lowest_margin").at("frequency_mhz"), 2400.0);
    EXPECT_EQ(link.at("failures").at(0), "over its tuning DROPS OUT at 2400 MHz (far end)");
    expect_in(page(chain, {"budget"}, 1), "Tuning: 3 channels; lowest margin");
}

TEST(DeskTuning, LimitIsHeldAtTheFrequencyOfTheHighestGain) {
    Chain chain = tuned(R"({"first_ghz": 0.5, "last_ghz": 0.7, "count": 3})");
    chain.transmit = R"("gain_table": {"frequency_mhz": [500, 600, 700], "gain_dbi": [0, 1, 6]})";
    chain.link += R"(, "limits": [{"label": "ours", "quantity": "e.i.r.p.", "limit_dbm": 17}])";
    // 12 dBm into the antenna, +-1.7 dB: 13 dBm at 600 MHz holds, 18 dBm at 700 MHz does not.
    const Json link = told(chain, {"budget"}, 1).at("links").at(0);
    EXPECT_EQ(link.at("limits").at(0).at("verdict"), "holds");
    const Json &limit = link.at("tuning").at("limits").at(0);
    EXPECT_EQ(limit.at("verdict"), "exceeds the limit");
    EXPECT_NEAR(number(limit.at("room_db")), 17.0 - 18.0, exact);
    EXPECT_EQ(limit.at("frequency_mhz"), 700.0);
    EXPECT_NEAR(number(link.at("tuning").at("highest_eirp").at("eirp_dbm")), 18.0, exact);
}

TEST(DeskTuning, SaysWhereTheLinksOwnFrequencyLiesOutside) {
    expect_in(page(tuned(R"({"first_mhz": 610, "last_mhz": 620, "count": 3})"), {"budget"}),
              "NOTE: the link's own 600 MHz lie outside");
}

TEST(DeskTuning, Refusals) {
    const auto refused = [](const std::string &tuning, const std::string &words) {
        expect_refused(ask(tuned(tuning), {"budget"}), words);
    };
    refused("{}", ":4:11: links[0].tuning: first_mhz with last_mhz and count, or channels_mhz, is missing");
    refused(R"({"first_mhz": 500, "last_mhz": 600})", ":4:11: links[0].tuning: count is missing");
    refused(R"({"first_mhz": 500, "last_mhz": 600, "count": 2.5})",
            "links[0].tuning.count: 2.5 will not do; allowed are whole numbers from 2 to 10000");
    refused(R"({"channels_mhz": [600], "count": 2})",
            "links[0].tuning.count: channels_mhz stands in place of a range; give one of them");
    refused(R"({"channels_mhz": []})", "links[0].tuning.channels_mhz: a list of channels has 1 to 10000 of them");
    refused(R"({"first_mhz": 600, "last_mhz": 600, "count": 2})",
            "links[0].tuning.last_mhz: 600 does not lie above the first frequency");
    refused(R"({"first_mhz": 700, "last_mhz": 0.6, "count": 2})", "links[0].tuning.last_mhz: 0.6 does not lie above");
    refused(R"({"channels_mhz": [600, 610, 600]})",
            "links[0].tuning.channels_mhz[2]: 600 MHz stands in this list before");
    refused(R"({"channels_mhz": [600, -5]})",
            ":4:34: links[0].tuning.channels_mhz[1]: -5 is out of range; allowed 0.1 to 300000; in link 'A'");
    refused(R"({"first_mhz": 500, "last_mhz": 900000, "count": 3})",
            "links[0].tuning.last_mhz: 900000 is out of range; allowed 0.1 to 300000; in link 'A'");
    refused(R"({"first": 500})", "links[0].tuning.first: 'first' needs its unit");
    Chain chain = tuned(R"({"channels_mhz": [600, 900]})");
    chain.transmit = R"("gain_table": {"frequency_mhz": [500, 700], "gain_dbi": [0, 1]})";
    expect_refused(ask(chain, {"budget"}), "the link's 900 MHz lie outside this table; it serves 500 to 700 MHz");
}

// ---- Solve ----

std::vector<std::string> solve(const std::string &unknown, const std::vector<std::string> &more) {
    std::vector<std::string> words = {"solve", "A", "--unknown", unknown};
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

const double margin_db = far_sum_dbm - free_space_db(600, 20) + 70;

TEST(DeskSolve, DistanceByTheInverseSquareLaw) {
    const Json as_entered = told({}, solve("far_distance_m", {"--margin", "6"}));
    EXPECT_EQ(as_entered.at("outcome"), "found");
    EXPECT_NEAR(number(as_entered.at("value")), 20 * std::pow(10.0, (margin_db - 6) / 20), exact);
    EXPECT_NEAR(number(as_entered.at("reached_entered")), margin_db, exact);
    const Json worst = told({}, solve("far_distance_ft", {"--margin", "6", "--tolerances", "worst"}));
    EXPECT_NEAR(number(worst.at("value")), 20 * std::pow(10.0, (margin_db - worst_db - 6) / 20) / 0.3048, exact);
    const double rss = std::sqrt(0.2 * 0.2 + 0.5 * 0.5 + 1.0 + 9.0);
    const Json root = told({}, solve("far_distance_m", {"--margin", "6", "--tolerances", "rss"}));
    EXPECT_NEAR(number(root.at("value")), 20 * std::pow(10.0, (margin_db - rss - 6) / 20), exact);
}

TEST(DeskSolve, PowerLossAndHeadroomInThePersonsUnits) {
    const Json power = told({}, solve("power_mw", {"--stage", "pack", "--margin", "10"}));
    EXPECT_NEAR(number(power.at("value")), std::pow(10.0, (20 - margin_db + 10) / 10), exact);
    EXPECT_NEAR(number(power.at("entered")), 100.0, exact);
    const Json loss = told({}, solve("loss_db", {"--stage", "body", "--margin", "4"}), 1); // under 4.7 dB of tolerance
    EXPECT_NEAR(number(loss.at("value")), 10 + margin_db - 4, exact);
    EXPECT_EQ(loss.at("verdict"), "doubtful");
    EXPECT_LT(number(loss.at("lowest")), number(loss.at("highest")));
    const double headroom_db = -10 - near_sum_dbm + free_space_db(600, 2);
    const Json near = told({}, solve("near_distance_m", {"--headroom", "10"}));
    EXPECT_NEAR(number(near.at("value")), 2 * std::pow(10.0, (10 - headroom_db) / 20), exact);
    const Json eirp = told({}, solve("gain_dbi", {"--stage", "4", "--eirp", "15"}));
    EXPECT_NEAR(number(eirp.at("value")), 3.0, exact);
    EXPECT_EQ(eirp.at("stage"), "rod");
    expect_in(page({}, solve("gain_dbi", {"--stage", "rod", "--eirp", "15"})),
              "Answer: gain_dbi = 3 dBi gives 15.00 dBm");
}

// -120.96 dBm of noise in 200 kHz, 60 dB of noise figure, 15 dB that are needed: 24.04 dB over the entered floor.
Chain noisy_chain() {
    Chain chain;
    chain.link = R"("noise": {"bandwidth_khz": 200, "carrier_to_noise_db": 15})";
    chain.receiver = R"("floor_dbm": -70, "ceiling_dbm": -10, "noise_figure_db": 60)";
    return chain;
}
const double raised_db = 10.0 * std::log10(1.380649e-23 * 290.0 * 200e3 * 1e3) + 75.0 + 70.0;

TEST(DeskSolve, MarginStandsOverWhatTheNoiseAllows) {
    const Json distance = told(noisy_chain(), solve("far_distance_m", {"--margin", "1"}), 1); // under the tolerance
    EXPECT_NEAR(number(distance.at("value")), 20 * std::pow(10.0, (margin_db - raised_db - 1) / 20), 1e-3);
    expect_in(page(noisy_chain(), solve("far_distance_m", {"--margin", "1"}), 1),
              "In link 'A' the entered floor of -70 dBm lies below");
    // the floor itself is sought over what was entered
    const Json floor = told(noisy_chain(), solve("floor_dbm", {"--stage", "rack", "--margin", "1"}), 1);
    EXPECT_EQ(number(floor.at("entered")), -70.0);
}

// More power serves the far end, and then the near end, the limit or another frequency of the tuning may not hold.
TEST(DeskSolve, TellsTheVerdictOfTheLinkWithTheAnswerInIt) {
    const std::vector<std::string> words = solve("power_dbm", {"--stage", "pack", "--margin", "30"});
    Chain chain;
    chain.receiver = R"("floor_dbm": -70, "ceiling_dbm": -15)";
    const Json loud = told(chain, words, 1);
    EXPECT_EQ(loud.at("verdict"), "overloads");
    EXPECT_EQ(loud.at("holds"), false);
    expect_in(page(chain, words, 1), "With it: OVERLOADS: the near end lies");
    chain.receiver = R"("floor_dbm": -70, "ceiling_dbm": 20)";
    EXPECT_EQ(told(chain, words).at("holds"), true);
    chain.link = R"("limits": [{"label": "ours", "quantity": "e.i.r.p.", "limit_dbm": 18}])";
    EXPECT_EQ(told(chain, words, 1).at("failures"), Json::array({"a limit of power is EXCEEDED"}));
    chain.link = R"("tuning": {"channels_mhz": [600, 60000]})"; // 40 dB more loss at 60 GHz
    expect_in(page(chain, words, 1), "over its tuning DROPS OUT at 60000 MHz");
    chain.link = R"("tuning": {"channels_mhz": [590, 610]})";
    expect_in(page(chain, words),
              "With it: HOLDS as entered; 3 guesses carry no tolerance, and over its tuning 590 to 610 MHz");
    expect_in(page(chain, solve("loss_db", {"--stage", "body", "--margin", "60"}), 1),
              "Tuning: sought at 600 MHz only; the link's tuning 590 to 610 MHz is not considered");
}

TEST(DeskSolve, OutOfReachSaysHowFarItFallsShort) {
    // An allowance loses nothing at best: the margin grows by its 10 dB.
    const Json answer = told({}, solve("loss_db", {"--stage", "body", "--margin", "60"}), 1);
    EXPECT_EQ(answer.at("outcome"), "out of reach");
    EXPECT_LT(number(answer.at("reached")), 60.0);
    EXPECT_NEAR(number(answer.at("missing_db")), 60 - number(answer.at("reached")), exact);
    expect_in(page({}, solve("loss_db", {"--stage", "body", "--margin", "300"}), 1), "OUT OF REACH");
    const Json idle = told({}, solve("near_distance_m", {"--margin", "6"}), 1);
    EXPECT_EQ(idle.at("outcome"), "no effect");
}

TEST(DeskSolve, Refusals) {
    const auto refused = [](const Chain &chain, const std::vector<std::string> &words, const std::string &why) {
        expect_refused(ask(chain, words), why);
    };
    refused({}, solve("length_m", {"--margin", "6"}), "'length_m' belongs to a stage; say which one with --stage");
    refused({}, solve("far_distance_m", {}), "what is wanted is missing; say one of '--margin', '--headroom'");
    refused({}, solve("far_distance_m", {"--margin", "6", "--headroom", "3"}),
            "one thing is solved for: give --margin or --headroom");
    refused({}, solve("far_distance_m", {"--far-level", "-50", "--tolerances", "worst"}),
            "tolerances do not count in --far-level");
    refused({}, solve("far_distance_m", {"--margin", "6", "--tolerances", "all"}),
            "'all' is no way to count tolerances; there are 'none', 'worst', 'rss'");
    refused({}, solve("far_distance_m", {"--margin", "5000"}), "5000 is out of range; allowed -1000 to 1000");
    refused({}, solve("far_distance", {"--margin", "6"}),
            "the link has no 'far_distance' to solve for; the nearest is");
    refused({}, solve("gain_dbi", {"--stage", "rode", "--margin", "6"}),
            "link 'A' has no stage 'rode'; the nearest is 'rod'");
    refused({}, solve("length_m", {"--stage", "run", "--margin", "6"}),
            ":7:1: links[0].stages[2]: length_m is not given here, so there is nothing to solve; in link 'A'");
    Chain chain;
    chain.transmit = R"("gain_table": {"frequency_mhz": [500, 700], "gain_dbi": [0, 1]})";
    refused(chain, solve("gain_dbi", {"--stage", "rod", "--margin", "6"}),
            ":8:1: links[0].stages[3]: a table, a pattern or a computed cable stands here in place of gain_dbi");
    chain = {};
    chain.receiver = R"("ceiling_dbm": -10)";
    refused(chain, solve("far_distance_m", {"--margin", "6"}),
            ":12:1: links[0].stages[7]: there is no margin to solve for");
    expect_refused(ask({}, {"solve", "B", "--unknown", "far_distance_m", "--margin", "6"}),
                   "no link is named 'B'; the nearest is 'A'");
}

// ---- Rank ----

TEST(DeskRank, SharesOfLossAndVariance) {
    Chain chain; // with so much headroom that the far end decides
    chain.receiver = R"("floor_dbm": -70, "ceiling_dbm": 20)";
    const Json answer = told(chain, {"rank", "A"});
    EXPECT_EQ(answer.at("decided_by"), "far floor");
    const double variance = 0.04 + 0.25 + 1.0 + 9.0;
    const double losses = 3 + 5 + 10 + free_space_db(600, 20);
    EXPECT_NEAR(number(answer.at("loss_db")), losses, exact);
    EXPECT_EQ(answer.at("loss_stage"), "air");
    EXPECT_EQ(answer.at("variance_stage"), "body");
    EXPECT_EQ(answer.at("measure_stage"), "body");
    EXPECT_NEAR(number(answer.at("measure_worst_db")), 3.0, exact);
    const double rss = std::sqrt(variance) - std::sqrt(variance - 9.0);
    EXPECT_NEAR(number(answer.at("measure_rss_db")), rss, exact);
    // Half the distance brings 6.02 dB, half the dB of the allowance 5 dB.
    EXPECT_EQ(answer.at("help_stage"), "air");
    EXPECT_NEAR(number(answer.at("help_db")), 20 * std::log10(2.0), exact);
    const Json &body = answer.at("stages").at(5);
    EXPECT_NEAR(number(body.at("variance_share")), 9.0 / variance, exact);
    EXPECT_NEAR(number(body.at("loss_share")), 10.0 / losses, exact);
    EXPECT_NEAR(number(body.at("help_db")), 5.0, exact);
    EXPECT_EQ(body.at("variance_rank"), 1);
    // 20 log10(d) rises by 20 / (ln 10 d) for each metre; the difference that stands for it by 1e-8 of that.
    const double slope = -20.0 / (std::numbers::ln10 * 20.0);
    EXPECT_NEAR(number(answer.at("stages").at(4).at("far_db_per_distance_m")), slope, 1e-7);
    expect_in(page(chain, {"rank", "A"}),
              "'body' is the widest guess: once known, the worst case there shrinks by 3.00 dB");
}

TEST(DeskRank, SpeaksForTheLimitThatDecides) {
    Chain chain;
    chain.link = R"("tuning": {"channels_mhz": [590, 610]})";
    chain.receiver = R"("floor_dbm": -90, "ceiling_dbm": -20)"; // 38 dB of margin, 2 dB of headroom
    EXPECT_EQ(told(chain, {"rank", "A"}).at("decided_by"), "near ceiling");
    expect_in(page(chain, {"rank", "A"}), "(half the power or gain, twice the dB of a loss, twice the distance");
    expect_in(page(chain, {"rank", "A"}), "Tuning: ranked at 600 MHz only; the link's tuning 590 to 610 MHz is not");
    chain.receiver = R"("floor_dbm": -70, "ceiling_dbm": 20)";
    expect_in(page(chain, {"rank", "A"}), "(twice the power or gain, half the dB of a loss, half the distance");
    chain.receiver = R"("gain_db": 0)";
    EXPECT_TRUE(told(chain, {"rank", "A"}).at("decided_by").is_null());
    expect_in(page(chain, {"rank", "A"}), "Decided: by nothing: no floor and no ceiling is stated");
}

// ---- Compare ----

TEST(DeskCompare, DifferencesAddUpAndStagesArePairedByTheirLabels) {
    Chain chain;
    Chain other;
    other.splitter = R"("loss_db": 4.5, "tolerance_db": 0.25)";
    other.cable = R"("loss_db": 2})"
                  ",\n"
                  R"({"kind": "amplifier", "label": "booster", "gain_db": 7)";
    chain.more_links = ",\n" + link_text(other, "B");
    const Json answer = told(chain, {"compare", "A", "B"});
    EXPECT_NEAR(number(answer.at("far_level_db")), -1.5 + 3.0 + 7.0, exact);
    EXPECT_NEAR(number(answer.at("margin_db")), 8.5, exact);
    EXPECT_NEAR(number(answer.at("headroom_db")), -8.5, exact);
    EXPECT_NEAR(number(answer.at("eirp_db")), 8.5, exact);
    EXPECT_NEAR(number(answer.at("far_worst_db")), -0.25 - 1.0, exact);
    EXPECT_NEAR(number(answer.at("largest_db")), 7.0, exact);
    ASSERT_EQ(answer.at("pairs").size(), 9u);
    const Json &added = answer.at("pairs").at(answer.at("largest_pair").get<std::size_t>());
    EXPECT_EQ(added.at("matched"), "second only");
    EXPECT_EQ(added.at("second_label"), "booster");
    EXPECT_TRUE(added.at("first_label").is_null());
    EXPECT_EQ(answer.at("pairs").at(1).at("matched"), "by label");
    EXPECT_NEAR(number(answer.at("pairs").at(1).at("far_change_difference_db")), -1.5, exact);
    EXPECT_NEAR(number(answer.at("pairs").at(1).at("tolerance_difference_db")), -0.25, exact);
    expect_in(page(chain, {"compare", "A", "B"}), "booster +7.00 +7.00");
    expect_in(page(chain, {"compare", "A", "B"}), "in the second only");
    expect_in(page(chain, {"compare", "A", "B"}), "Second: 'B': 600 MHz, far 20 m, near 2 m");
}

TEST(DeskCompare, SecondLinkOfAnotherScenario) {
    Chain other;
    other.body = R"("loss_db": 12)";
    const TemporaryFile second(text_of(other));
    const Json answer = told({}, {"compare", "A", "A", "--in", second.path()});
    EXPECT_NEAR(number(answer.at("far_level_db")), -2.0, exact);
    EXPECT_NEAR(number(answer.at("near_level_db")), 0.0, exact);
    expect_refused(ask({}, {"compare", "A", "C"}), "no link is named 'C'");
}

// ---- Choose ----

struct Item {
    const char *name;
    double gain_db;
    unsigned cost;
};

constexpr std::array<Item, 3> runs = {{{"thin", -12, 10}, {"middle", -7, 25}, {"thick", -4, 60}}};
constexpr std::array<Item, 3> rods = {{{"stub", -2, 5}, {"whip", 2, 20}, {"panel", 7, 50}}};

std::string stock_text() {
    std::string text = "{";
    for (const Item &item : runs)
        text += std::string("\"") + item.name + R"(": {"stage": {"kind": "cable", "loss_db": )" +
                std::to_string(-item.gain_db) + R"(}, "cost": )" + std::to_string(item.cost) + "},\n";
    for (const Item &item : rods)
        text += std::string("\"") + item.name + R"(": {"stage": {"kind": "antenna", "gain_dbi": )" +
                std::to_string(item.gain_db) + R"(}, "cost": )" + std::to_string(item.cost) + "},\n";
    return text.substr(0, text.size() - 2) + "}";
}

Chain to_choose(const std::string &wanted) {
    Chain chain;
    chain.link = "\"wanted\": " + wanted;
    chain.cable = R"("loss_db": 5, "from_stock": ["thin", "middle", "thick"])";
    chain.transmit = R"("gain_dbi": 0, "from_stock": ["stub", "whip", "panel"])";
    chain.stock = stock_text();
    return chain;
}

// All sets that hold, the cheapest first: tried one by one.
std::vector<unsigned> costs_of_all(double margin, double eirp_limit) {
    std::vector<unsigned> costs;
    for (const Item &cable : runs)
        for (const Item &rod : rods) {
            const double eirp = 20 - 3 + cable.gain_db + rod.gain_db;
            const double far = eirp - free_space_db(600, 20) - 10;
            if (far + 70 >= margin && eirp <= eirp_limit) costs.push_back(cable.cost + rod.cost);
        }
    std::sort(costs.begin(), costs.end());
    return costs;
}

TEST(DeskChoose, CheapestSetsAsTriedOneByOne) {
    for (const double margin : {2.0, 10.0, 16.0, 20.0}) {
        const std::string wanted = "{\"margin_db\": " + std::to_string(margin) + ", \"eirp_limit_dbm\": 18}";
        const std::vector<unsigned> costs = costs_of_all(margin, 18.0);
        ASSERT_FALSE(costs.empty()) << margin;
        const Json answer = told(to_choose(wanted), {"choose", "--sets", "9"});
        EXPECT_EQ(answer.at("outcome"), "proven");
        ASSERT_EQ(answer.at("sets").size(), costs.size()) << margin;
        for (std::size_t i = 0; i < costs.size(); ++i) {
            const Json &set = answer.at("sets").at(i);
            EXPECT_EQ(set.at("cost"), costs[i]);
            EXPECT_GE(number(set.at("links").at(0).at("margin_db")), margin);
            EXPECT_LE(number(set.at("links").at(0).at("eirp_dbm")), 18.0);
        }
    }
    // Worst case: the tolerances of what was not chosen still count.
    const Json worst = told(to_choose(R"({"margin_db": 6, "tolerances": "against you"})"), {"choose", "--sets", "1"});
    EXPECT_EQ(worst.at("sets").at(0).at("cost"), costs_of_all(6.0 + 0.2 + 0.5 + 3.0, 1000.0).front());
    expect_in(page(to_choose(R"({"margin_db": 6})"), {"choose", "A"}), "proven to be the cheapest");
}

TEST(DeskChoose, SaysByHowMuchItFallsShort) {
    const Json answer = told(to_choose(R"({"margin_db": 50})"), {"choose"}, 1);
    EXPECT_EQ(answer.at("outcome"), "infeasible");
    const double best = 20 - 3 - 4 + 7 - free_space_db(600, 20) - 10 + 70; // thick run, panel
    EXPECT_NEAR(number(answer.at("misses").at(0).at("far_alone_db")), 50 - best, exact);
    expect_in(page(to_choose(R"({"margin_db": 50})"), {"choose"}, 1), "NO SET holds what is wanted");
}

// The search takes the floor from the chain as entered; what it chose must stand by its own noise: k 290 K in 200 kHz
// is -120.96 dBm, and with a noise figure of 60 dB and 20 dB of C/N -40.96 dBm at the antenna are needed, where -54
// arrive.
TEST(DeskChoose, SetThatItsOwnNoiseCoversDoesNotStand) {
    const auto text = [](const std::string &figure) {
        return R"({"production": "T", "stock": {"booster": {"stage": {"kind": "amplifier", "gain_db": 20,
 "noise_figure_db": )" +
               figure + R"(}, "cost": 1}}, "links": [{"name": "A", "frequency_mhz": 600, "far_distance_m": 20,
 "near_distance_m": 2, "noise": {"bandwidth_khz": 200, "carrier_to_noise_db": 20}, "stages": [
 {"kind": "source", "power_dbm": 0}, {"kind": "antenna", "gain_dbi": 0}, {"kind": "air"}, {"kind": "antenna", "gain_dbi": 0},
 {"kind": "amplifier", "label": "here", "gain_db": 20, "noise_figure_db": 3, "from_stock": ["booster"]},
 {"kind": "receiver", "floor_dbm": -100, "ceiling_dbm": 20, "noise_figure_db": 3}]}]})";
    };
    const Printout quiet = run({"choose", TemporaryFile(text("4")).path()});
    EXPECT_EQ(quiet.code, 0) << quiet.out << quiet.err;
    const Printout loud = run({"choose", TemporaryFile(text("60")).path()});
    EXPECT_EQ(loud.code, 1);
    EXPECT_NE(loud.out.find("; DROPS OUT:"), std::string::npos) << loud.out;
}

// Free space at 700 MHz costs 20 log10(700/600) dB more than at 600 MHz; the sets are judged there too.
TEST(DeskChoose, SetsAreJudgedOverTheTuning) {
    const std::string band = R"(, "lowest_mhz": 550, "highest_mhz": 650})";
    Chain chain = to_choose(R"({"margin_db": 2})");
    const std::string thick = "\"cost\": 60}";
    chain.stock.replace(chain.stock.find(thick), thick.size(), "\"cost\": 60" + band);
    const auto sets_of = [&](const std::string &tuning, int code) {
        Chain tuned = chain;
        tuned.link += ", \"tuning\": " + tuning;
        return told(tuned, {"choose", "--sets", "9"}, code);
    };
    const auto takes_thick = [](const Json &answer) {
        return answer.at("sets").dump().find("thick") != std::string::npos;
    };
    EXPECT_TRUE(takes_thick(sets_of(R"({"first_mhz": 550, "last_mhz": 650, "count": 3})", 0)));
    const Json outside = sets_of(R"({"channels_mhz": [651, 600]})", 0);
    EXPECT_FALSE(takes_thick(outside));
    EXPECT_EQ(outside.at("left_out").at(0).at("item"), "thick");

    // The cheapest set, thin and whip, keeps 2 dB at 600 MHz; at 2 GHz it lies 20 log10(2000/600) = 10.46 dB lower.
    const double margin = 20 - 3 - 12 + 2 - free_space_db(600, 20) - 10 + 70;
    const double there = 20 - 3 - 12 + 2 - free_space_db(2000, 20) - 10 + 70;
    ASSERT_GT(margin, 2);
    chain.receiver = "\"floor_dbm\": " + std::to_string(-70 + there + 0.5) + R"(, "ceiling_dbm": -10)";
    ASSERT_GT(margin - there - 0.5, 2); // still kept at 600 MHz
    const Json answer = sets_of(R"({"channels_mhz": [600, 2000]})", 1);
    const Json &first = answer.at("sets").at(0);
    EXPECT_EQ(first.at("cost"), 15);
    EXPECT_EQ(first.at("holds"), false);
    EXPECT_EQ(answer.at("holds"), false);
    EXPECT_NE(first.at("links").at(0).at("failures").dump().find("over its tuning DROPS OUT at 2000 MHz"),
              std::string::npos)
        << first;
    Chain tuned = chain;
    tuned.link += R"(, "tuning": {"channels_mhz": [600, 2000]})";
    expect_in(page(tuned, {"choose"}, 1), "Set 1, cost 15: DOES NOT HOLD");
}

TEST(DeskChoose, LimitsOfTheLinkAndTolerancesMarkASet) {
    Chain chain = to_choose(R"({"margin_db": 25})");
    chain.link += R"(, "limits": [{"label": "ours", "quantity": "e.i.r.p.", "limit_dbm": 18}])";
    // 20 - 3 - 4 + 7 = 20 dBm with thick and panel, +-0.7 dB
    const Json answer = told(chain, {"choose"}, 1);
    EXPECT_EQ(answer.at("sets").at(0).at("links").at(0).at("failures"), Json::array({"a limit of power is EXCEEDED"}));
    expect_in(page(chain, {"choose"}, 1), "a limit of power is EXCEEDED");
    // Kept as entered, but 0.2 + 0.5 + 3 dB of tolerance are more than the margin.
    Chain narrow = to_choose("{}");
    const double best = 20 - 3 - 4 + 7 - free_space_db(600, 20) - 10;
    narrow.receiver = "\"floor_dbm\": " + std::to_string(best - 3.6) + R"(, "ceiling_dbm": -10)";
    const std::string words = page(narrow, {"choose"}, 1);
    expect_in(words, "DOUBTFUL: inside as entered, but the tolerances together can push the far end below the floor");
}

TEST(DeskChoose, SaysWhatIsShort) {
    Chain chain = to_choose("{}");
    chain.cable = R"("loss_db": 5, "from_stock": ["thin"])";
    chain.more_links = ",\n" + link_text(chain, "B");
    const Json answer = told(chain, {"choose"}, 1);
    EXPECT_EQ(answer.at("outcome"), "short of stock");
    EXPECT_EQ(answer.at("short_of"),
              Json::array({"'run' of 'A', 'run' of 'B' want 2 of 'thin', of which 1 is left: 1 more is needed"}));
    expect_in(page(chain, {"choose"}, 1), "Short: 'run' of 'A', 'run' of 'B' want 2 of 'thin'");
    Chain untuned = to_choose("{}");
    untuned.link += R"(, "tuning": {"channels_mhz": [600, 700]})";
    untuned.stock = R"({"thin": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1, "highest_mhz": 650}})";
    untuned.cable = R"("loss_db": 5, "from_stock": ["thin"])";
    untuned.transmit = R"("gain_dbi": 0)";
    expect_in(page(untuned, {"choose"}, 1), "Short: 'run' of 'A': no item of the stock serves its frequencies");
}

// Either link could have the only panel, and neither keeps 21 dB of margin without it.
TEST(DeskChoose, SaysWhatLinksCompeteFor) {
    Chain chain = to_choose(R"({"margin_db": 21})");
    for (const char *run : {"\"cost\": 10}", "\"cost\": 25}", "\"cost\": 60}"}) {
        const std::size_t at = chain.stock.find(run);
        chain.stock.insert(at + std::string(run).size() - 1, ", \"count\": 2");
    }
    chain.more_links = ",\n" + link_text(chain, "B");
    const Json answer = told(chain, {"choose"}, 1);
    ASSERT_EQ(answer.at("outcome"), "infeasible");
    EXPECT_TRUE(answer.at("misses").at(0).at("out_of_reach").empty());
    expect_in(page(chain, {"choose"}, 1), "they would take 2 of 'panel' where 1 is left");
}

TEST(DeskChoose, SaysHowFarPowerIsOverItsLimit) {
    // The least e.i.r.p. of all sets is 20 - 3 - 12 - 2 = 3 dBm.
    const Chain chain = to_choose(R"({"eirp_limit_dbm": -1.6})");
    expect_in(page(chain, {"choose"}, 1), "the e.i.r.p. is 4.60 dB over its limit");
    const Json answer = told(to_choose(R"({"eirp_limit_dbm": -1.6, "margin_db": 50})"), {"choose"}, 1);
    const Json &miss = answer.at("misses").at(0);
    EXPECT_TRUE(miss.at("far_besides_db").is_null()); // no set holds all else, and so it says
    EXPECT_EQ(miss.at("out_of_reach"), Json::array({"far_besides_db", "near_besides_db", "eirp_besides_db"}));
}

TEST(DeskChoose, LinksShareTheStock) {
    // One of each item: the second link gets what the first one leaves.
    Chain chain = to_choose(R"({"margin_db": 2})");
    chain.more_links = ",\n" + link_text(to_choose(R"({"margin_db": 2})"), "B");
    const Json answer = told(chain, {"choose", "--sets", "1"});
    unsigned cheapest = std::numeric_limits<unsigned>::max();
    for (std::size_t i = 0; i < 9; ++i)
        for (std::size_t k = 0; k < 9; ++k) {
            const auto holds = [](std::size_t set) {
                return 20 - 3 + runs[set / 3].gain_db + rods[set % 3].gain_db - free_space_db(600, 20) - 10 + 70 >= 2;
            };
            const bool apart = i / 3 != k / 3 && i % 3 != k % 3;
            if (apart && holds(i) && holds(k))
                cheapest =
                    std::min(cheapest, runs[i / 3].cost + rods[i % 3].cost + runs[k / 3].cost + rods[k % 3].cost);
        }
    EXPECT_EQ(answer.at("sets").at(0).at("cost"), cheapest);
    EXPECT_EQ(answer.at("sets").at(0).at("links").size(), 2u);
    const Json one = told(chain, {"choose", "B", "--sets", "1"});
    EXPECT_EQ(one.at("sets").at(0).at("links").size(), 1u);
}

TEST(DeskChoose, Refusals) {
    expect_refused(ask({}, {"choose"}), ":1:1: stock is missing: the gear to choose from");
    Chain chain = to_choose("{}");
    chain.cable = R"("loss_db": 5, "from_stock": ["thinn"])";
    expect_refused(ask(chain, {"choose"}),
                   "links[0].stages[2].from_stock[0]: 'thinn' is not in the stock; the nearest");
    chain.cable = R"("loss_db": 5, "from_stock": ["thin", "thin"])";
    expect_refused(ask(chain, {"choose"}), "links[0].stages[2].from_stock[1]: 'thin' stands here twice");
    chain.cable = R"("loss_db": 5, "from_stock": ["panel"])";
    expect_refused(ask(chain, {"choose"}),
                   "links[0].stages[2].from_stock: 'panel' is of kind antenna, which cannot stand "
                   "in for cable; in link 'A', 'run'");
    chain = to_choose(R"({"margin_db": 500})");
    expect_refused(ask(chain, {"choose"}),
                   "links[0].wanted.margin_db: 500 is out of range; allowed 0 to 100; in link 'A'");
    chain = to_choose(R"({"tolerances": "all"})");
    expect_refused(ask(chain, {"choose"}), "links[0].wanted.tolerances: 'all' is no way to count tolerances");
    chain = to_choose("{}");
    chain.stock = R"({"thin": {"stage": {"kind": "cable", "loss_db": 3}}})";
    expect_refused(ask(chain, {"choose"}), ":2:19: stock.thin: cost is missing");
    chain.stock = R"({"thin": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1.5}})";
    expect_refused(ask(chain, {"choose"}), "stock.thin.cost: 1.5 will not do; allowed are whole numbers from 0 to");
    chain.stock = R"({"thin": {"stage": {"kind": "cable", "loss_db": 3000}, "cost": 1},
        "middle": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1}})";
    chain.cable = R"("loss_db": 5, "from_stock": ["thin", "middle"])";
    chain.transmit = R"("gain_dbi": 0)";
    expect_refused(ask(chain, {"choose"}),
                   ":2:58: stock.thin.stage.loss_db: 3000 is out of range; allowed 0 to 200; in the stock, 'thin'");
    chain.stock = R"({"thin": {"stage": {"kind": "cable", "attenuation_table": {"frequency_mhz": [500, 400],
        "attenuation_db_per_100m": [5, 4]}, "length_m": 3}, "cost": 1},
        "middle": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1}})";
    expect_refused(ask(chain, {"choose"}), ":2:29: stock.thin.stage: frequency_mhz[1] is 400, below the row before it "
                                           "(500); frequencies must rise; in the stock, 'thin'");
    chain.stock = R"({"thin": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1, "lowest_mhz": -4},
        "middle": {"stage": {"kind": "cable", "loss_db": 3}, "cost": 1}})";
    expect_refused(ask(chain, {"choose"}), "stock.thin.lowest_mhz: -4 is out of range");
    chain = to_choose(R"({"noise_figure_limit_db": 8})");
    expect_refused(ask(chain, {"choose"}),
                   "links[0].stages[7]: noise_figure_db or noise_temperature_k is missing; in link "
                   "'A', 'rack'");
    chain = to_choose(R"({"headroom_db": 3})");
    chain.receiver = R"("floor_dbm": -70)";
    expect_refused(
        ask(chain, {"choose"}),
        "links[0].wanted.headroom_db: there is no headroom to keep: no receiver with a ceiling ends this link; in");
    expect_refused(ask(to_choose("{}"), {"choose", "C"}), "no link is named 'C'");
    expect_refused(ask(to_choose("{}"), {"choose", "--sets", "0"}), "--sets takes 1 to 4096");
}

// ---- Locate ----

// Density of two normal values of mean 0.
double density(const std::array<double, 2> &x, double var_1, double var_2, double together) {
    const double determinant = var_1 * var_2 - together * together;
    const double form = (x[0] * x[0] * var_2 - 2 * x[0] * x[1] * together + x[1] * x[1] * var_1) / determinant;
    return std::exp(-0.5 * form) / std::sqrt(determinant);
}

TEST(DeskLocate, ProbabilitiesByBayesRuleOverFullCovariances) {
    // Read 0.1 dB too much after the splitter (17 dBm), and 4 dB too little after the run (12 dBm).
    const std::vector<std::string> words = {"locate", "A", "splitter=17.1", "run=8dBm", "--uncertainty", "0.3"};
    const Json answer = told({}, words, 1);
    const std::array<double, 2> apart = {0.1, -4.0};
    const double u2 = 0.09, s2 = 100.0;
    const double up_to_splitter = (0.04 + 0.25) / 3, up_to_run = (0.04 + 0.25 + 1.0) / 3;
    const auto likelihood = [&](std::size_t stage) { // the fault lies in the readings behind it
        const double first = stage <= 1 ? s2 : 0.0;
        const double second = stage <= 2 ? s2 : 0.0;
        return density(apart, up_to_splitter + u2 + first, up_to_run + u2 + second, up_to_splitter + first);
    };
    const std::size_t stages = 8;
    const double none = 0.5 * likelihood(stages);
    double total = none;
    for (std::size_t i = 0; i < stages; ++i) total += 0.5 / stages * likelihood(i);
    EXPECT_NEAR(number(answer.at("none_probability")), none / total, 1e-9);
    for (std::size_t i = 0; i < stages; ++i)
        EXPECT_NEAR(number(answer.at("suspects").at(i).at("probability")), 0.5 / stages * likelihood(i) / total, 1e-9)
            << i;
    EXPECT_EQ(answer.at("consistent"), false);
    EXPECT_EQ(answer.at("stage"), "run");
    EXPECT_NEAR(number(answer.at("readings").at(0).at("expected_dbm")), 17.0, exact);
    EXPECT_NEAR(number(answer.at("readings").at(1).at("expected_dbm")), 12.0, exact);
    expect_in(page({}, words, 1), "the readings DO NOT FIT a healthy chain");
}

// 4 dB too little after the splitter, and all is well again after the run: with the splitter to blame (or the source)
// the two readings, of 0.3 dB and with 1 dB of tolerance between, are 4 dB apart. Chi-square of one degree of freedom.
TEST(DeskLocate, ReadingsThatNoSingleFaultExplains) {
    const std::vector<std::string> words = {"locate", "A", "splitter=13", "run=12", "--uncertainty", "0.3"};
    const Json answer = told({}, words, 1);
    const double chi_square = 16.0 / (0.09 + 1.0 / 3 + 0.09);
    EXPECT_EQ(answer.at("span_last"), "splitter");
    EXPECT_NEAR(number(answer.at("fault_p_value")), std::erfc(std::sqrt(chi_square / 2)), 1e-9);
    expect_in(page({}, words, 1), "no single fault explains these readings; repeat the one after 'splitter'");
    const std::string plain = page({}, {"locate", "A", "splitter=17.1", "run=8", "--uncertainty", "0.3"}, 1);
    EXPECT_EQ(plain.find("no single fault"), std::string::npos);
}

TEST(DeskLocate, ReadingsOfTheScenarioAndOverTheAir) {
    Chain chain;
    chain.link = R"("readings": {"uncertainty_db": 0.5, "levels": [{"after": "splitter", "level_dbm": 17.2},)"
                 R"( {"after": "rack", "level_dbm": -47.5, "distance_m": 10}]})";
    const Json answer = told(chain, {"locate", "A"});
    EXPECT_EQ(answer.at("consistent"), true);
    const std::string words = page(chain, {"locate", "A"});
    expect_in(words, "Suspect: none: the readings fit a healthy chain");
    expect_in(words, "holds every allowance, near the antenna too");
    EXPECT_EQ(words.find(" bits"), std::string::npos);
    EXPECT_NEAR(number(answer.at("readings").at(1).at("expected_dbm")), far_sum_dbm - free_space_db(600, 10), exact);
    // The same on the command line, in place of those of the file.
    const Json typed = told(chain, {"locate", "A", "splitter=17.2", "rack=-47.5@10"});
    EXPECT_EQ(typed.at("suspects"), answer.at("suspects"));
    // Without readings it tells where to begin.
    const Printout begin = ask({}, {"locate", "A", "--uncertainty", "0.5"});
    EXPECT_EQ(begin.code, 0) << begin.err;
    EXPECT_NE(begin.out.find("measure after"), std::string::npos);
}

TEST(DeskLocate, Refusals) {
    const auto refused = [](const std::vector<std::string> &more, const std::string &words) {
        std::vector<std::string> all = {"locate", "A"};
        all.insert(all.end(), more.begin(), more.end());
        expect_refused(ask({}, all), words);
    };
    refused({"run=8"}, "--uncertainty is missing: the standard uncertainty of a reading in dB");
    refused({"run=8", "--uncertainty", "0"}, "--uncertainty");
    refused({"run", "--uncertainty", "1"}, "'run' is no reading; write the stage and the level in dBm after it");
    refused({"run=loud", "--uncertainty", "1"}, "'run=loud': 'loud' is no level in dBm");
    refused({"runs=8", "--uncertainty", "1"}, "link 'A' has no stage 'runs'; the nearest is 'run'");
    refused({"rod=8", "--uncertainty", "1"}, "'rod=8': there is no point to measure at after 'rod'");
    refused({"run=8@3", "--uncertainty", "1"}, "'run=8@3': a distance has a use only after the air");
    refused({"run=8@x", "--uncertainty", "1"}, "after the @ stands the distance over the air in metres");
    refused({"run=900", "--uncertainty", "1"},
            "'run=900': level_dbm is 900, which is too high; allowed -300 to 200; in link 'A'");
    Chain chain;
    chain.link = R"("readings": {"uncertainty_db": 0.5, "levels": [{"after": "stage", "level_dbm": 1}]})";
    expect_refused(ask(chain, {"locate", "A"}),
                   ":4:58: links[0].readings.levels[0].after: link 'A' has no stage 'stage'");
    chain.link = R"("readings": {"uncertainty_db": 0.5, "levels": [{"after": "rod", "level_dbm": 1}]})";
    expect_refused(ask(chain, {"locate", "A"}), ":4:48: links[0].readings.levels[0]: there is no point to measure at");
    chain.link = R"("readings": {"uncertainty_db": 500, "levels": []})";
    expect_refused(ask(chain, {"locate", "A"}), "links[0].readings.uncertainty_db: 500 is out of range; allowed");
    chain.link = R"("readings": {"levels": []})";
    expect_refused(ask(chain, {"locate", "A"}), "links[0].readings: uncertainty_db is missing");
}

// ---- Sure ----

double normal_share(double x) { return 0.5 * std::erfc(-x / std::numbers::sqrt2); }

// One stage that spreads, by 2 dB standard deviation; the others are certain.
Chain one_normal(const std::string &floor_dbm) {
    Chain chain;
    chain.splitter = R"("loss_db": 3)";
    chain.cable = R"("loss_db": 5, "tolerance_db": 5, "tolerance_law": "normal", "coverage_factor": 2.5)";
    chain.body = R"("loss_db": 10)";
    chain.receiver = "\"floor_dbm\": " + floor_dbm;
    return chain;
}

TEST(DeskSure, ShareAndQuantilesOfTheNormalLaw) {
    const Json answer = told(one_normal("-54"), {"sure", "A", "--trials", "400000", "--quantiles", "5", "50", "97.5"});
    const double level = far_sum_dbm - free_space_db(600, 20);
    const double source = 0.2 / std::sqrt(3.0); // the source's tolerance is rectangular
    const double deviation = std::sqrt(4.0 + source * source);
    const double below = normal_share((-54 - level) / deviation); // the rectangular part is small beside the normal one
    const double error = number(answer.at("far_below_error"));
    EXPECT_NEAR(error, std::sqrt(below * (1 - below) / 400000), 0.02 * error);
    EXPECT_NEAR(number(answer.at("far_below_probability")), below, 5 * error);
    EXPECT_NEAR(number(answer.at("inside_probability")), 1 - below, 5 * error);
    EXPECT_NEAR(number(answer.at("far_mean_dbm")), level, 5 * deviation / std::sqrt(400000.0));
    EXPECT_NEAR(number(answer.at("far_standard_deviation_db")), deviation, 0.01 * deviation);
    const double of_normal[] = {-1.644853627, 0.0, 1.959963985}; // quantiles of the normal law, any table
    for (std::size_t i = 0; i < 3; ++i) {
        const Json &quantile = answer.at("far_quantiles").at(i);
        EXPECT_NEAR(number(quantile.at("level_dbm")), level + deviation * of_normal[i],
                    5 * number(quantile.at("error_db")))
            << i;
    }
}

TEST(DeskSure, RayleighFadingByItsClosedForm) {
    Chain chain = one_normal("-65");
    chain.cable = R"("loss_db": 5)";
    chain.link = R"("fading": {"model": "Rayleigh", "outage_percent": 10})";
    const Json answer = told(chain, {"sure", "A", "--trials", "400000"});
    const double margin = far_sum_dbm - free_space_db(600, 20) + 65;
    const double outage = 1 - std::exp(-std::pow(10.0, -margin / 10)); // the source's 0.2 dB moves it by less than 1 %
    EXPECT_NEAR(number(answer.at("far_below_probability")), outage,
                0.01 * outage + 5 * number(answer.at("far_below_error")));
    EXPECT_EQ(answer.at("fading"), "Rayleigh");
    chain.link = R"("fading": {"model": "log-normal", "standard_deviation_db": 6, "outage_percent": 10})";
    const Json shadowed = told(chain, {"sure", "A"});
    EXPECT_NEAR(number(shadowed.at("far_standard_deviation_db")), 6.0, 0.1);
    EXPECT_EQ(number(shadowed.at("shadowing_db")), 6.0);
    EXPECT_TRUE(shadowed.at("fading").is_null());
}

// Nakagami of shape 1, and Rice without a steady part, are Rayleigh (textbooks, Proakis 2.1).
TEST(DeskSure, OtherFadingWhereItIsRayleigh) {
    const double margin = far_sum_dbm - free_space_db(600, 20) + 65;
    const double outage = 1 - std::exp(-std::pow(10.0, -margin / 10));
    for (const char *model : {R"("model": "Nakagami", "shape": 1)", R"("model": "Rice", "k_db": -60)"}) {
        Chain chain = one_normal("-65");
        chain.cable = R"("loss_db": 5)";
        chain.link = std::string(R"("fading": {"outage_percent": 10, )") + model + "}";
        const Json answer = told(chain, {"sure", "A", "--trials", "400000"});
        EXPECT_NEAR(number(answer.at("far_below_probability")), outage,
                    0.01 * outage + 5 * number(answer.at("far_below_error")))
            << model;
    }
}

// Standard deviations of the laws: JCGM 100:2008, 4.3.7 and 4.3.9; arc sine: half-width over the root of 2, H.1.
TEST(DeskSure, LawsSpreadByTheirStandardDeviations) {
    const std::pair<const char *, double> laws[] = {
        {"rectangular", std::sqrt(3.0)}, {"triangular", std::sqrt(6.0)}, {"arc sine", std::sqrt(2.0)}, {"normal", 2.0}};
    for (const auto &[law, divisor] : laws) {
        Chain chain = one_normal("-54");
        chain.cable = std::string(R"("loss_db": 5, "tolerance_db": 6, "tolerance_law": ")") + law + "\"";
        const Json answer = told(chain, {"sure", "A"});
        const double wanted = std::hypot(6.0 / divisor, 0.2 / std::sqrt(3.0));
        EXPECT_NEAR(number(answer.at("far_standard_deviation_db")), wanted, 0.015 * wanted) << law;
        EXPECT_NEAR(number(answer.at("near_standard_deviation_db")), wanted, 0.015 * wanted) << law;
    }
}

TEST(DeskSure, SeedDecidesTheDraws) {
    const Chain chain = one_normal("-54");
    const Json once = told(chain, {"sure", "A", "--seed", "7", "--trials", "1000"});
    EXPECT_EQ(once, [&] {
        Json again = told(chain, {"sure", "A", "--seed", "7", "--trials", "1000"});
        again["scenario"] = once.at("scenario"); // another temporary file
        return again;
    }());
    const Json other = told(chain, {"sure", "A", "--seed", "8", "--trials", "1000"});
    EXPECT_NE(once.at("far_mean_dbm"), other.at("far_mean_dbm"));
}

TEST(DeskSure, ExitCodeByTheShareThatIsWanted) {
    // Three standard deviations above the floor: 99.87 % and no more.
    const double floor = far_sum_dbm - free_space_db(600, 20) - 6.0;
    const Chain chain = one_normal(std::to_string(floor));
    EXPECT_EQ(ask(chain, {"sure", "A", "--at-least", "99"}).code, 0);
    EXPECT_EQ(ask(chain, {"sure", "A", "--at-least", "99.99"}).code, 1);
    expect_in(page(chain, {"sure", "A"}), "of the trials lie inside the window at both ends");
}

TEST(DeskSure, OneTrialTellsNoErrors) {
    const Json answer = told(one_normal("-54"), {"sure", "A", "--trials", "1"});
    EXPECT_TRUE(answer.at("far_mean_error_db").is_null());
    for (const Json &quantile : answer.at("far_quantiles")) {
        EXPECT_TRUE(quantile.at("error_db").is_null());
        EXPECT_NEAR(number(quantile.at("level_dbm")), number(answer.at("far_mean_dbm")), 1e-5); // as lvb_sureness says
    }
    expect_in(page(one_normal("-54"), {"sure", "A", "--trials", "1"}), "dBm (one trial tells no spread)");
    expect_in(page(one_normal("-54"), {"sure", "A", "--trials", "1"}), "Drawn: 1 trial, seed 1");
}

TEST(DeskSure, Refusals) {
    const auto told_no = [](const char *option, const char *value) {
        expect_refused(ask({}, {"sure", "A", option, value}), "is no whole number from 0 to 18446744073709551615");
    };
    told_no("--seed", "-1");
    told_no("--seed", "18446744073709551616");
    told_no("--seed", "1.5");
    told_no("--trials", "-5");
    Chain branches;
    branches.link = R"("fading": {"model": "Rayleigh", "outage_percent": 1, "branches": 1.5})";
    expect_refused(ask(branches, {"sure", "A"}), "links[0].fading.branches: 1.5 is not a whole number");
    expect_refused(ask({}, {"sure", "A", "--trials", "0"}), "--trials takes 1 to 10000000");
    expect_refused(ask({}, {"sure", "A", "--quantiles", "101"}), "--quantiles takes percents from 0 to 100, not 101");
    expect_refused(ask({}, {"sure", "A", "--at-least", "200"}), "--at-least takes a percent from 0 to 100");
    Chain chain;
    chain.cable = R"("loss_db": 5, "tolerance_db": 1, "tolerance_law": "bell")";
    expect_refused(ask(chain, {"sure", "A"}),
                   "links[0].stages[2].tolerance_law: 'bell' is no law of a tolerance; there "
                   "are 'rectangular', 'triangular', 'normal', 'arc sine'");
    chain.cable = R"("loss_db": 5, "tolerance_db": 1, "coverage_factor": 2)";
    expect_refused(ask(chain, {"sure", "A"}), "a coverage_factor has a use only with the tolerance_law 'normal'");
    chain.cable = R"("loss_db": 5, "tolerance_db": 1, "tolerance_law": "normal", "coverage_factor": 20)";
    expect_refused(ask(chain, {"sure", "A"}), "coverage_factor: 20 is out of range; allowed 1 to 10");
}

// ---- The demo's day ----

std::string day_file() { return DESK_SOURCES "/demo/one_day.json"; }

const std::vector<std::pair<std::vector<std::string>, int>> &day() {
    static const std::vector<std::pair<std::vector<std::string>, int>> commands = {
        {{"budget", day_file()}, 1},
        {{"rank", day_file(), "Platform as planned"}, 0},
        {{"choose", day_file()}, 0},
        {{"compare", day_file(), "Platform as planned", "Platform as built"}, 0},
        {{"solve", day_file(), "Platform as built", "--unknown", "far_distance_m", "--margin", "3"}, 1},
        {{"sure", day_file(), "Platform as planned"}, 0},
        {{"locate", day_file(), "Platform as built"}, 1},
    };
    return commands;
}

void collect_keys(const Json &value, std::set<std::string> &keys) {
    if (value.is_object())
        for (const auto &[key, member] : value.items()) keys.insert(key);
    for (const Json &member : value)
        if (member.is_structured()) collect_keys(member, keys);
}

TEST(DeskDay, EveryCommandAnswersWithinThePage) {
    for (const auto &[words, code] : day()) {
        const Printout answer = run(words);
        EXPECT_EQ(answer.code, code) << words[0] << answer.err;
        for (const std::string &line : lines_of(answer.out)) EXPECT_LE(line.size(), 100u) << line;
        EXPECT_NE(answer.out.find("walk test"), std::string::npos) << words[0];
    }
}

// Whatever stands in the file, the commands answer or refuse in one line, and never crash.
TEST(DeskDay, ChangedDigitsAndLettersNeverCrashACommand) {
    const std::string whole = read_file(day_file());
    std::mt19937 random(20240519); // fixed: every run is the same
    int answered = 0;
    for (std::size_t i = 0; i < 150; ++i) {
        std::string text = whole;
        for (int k = 0; k < 3; ++k) {
            char &c = text[random() % text.size()];
            if (c >= '0' && c <= '9') c = static_cast<char>('0' + random() % 10);
            else if (c >= 'a' && c <= 'z') c = static_cast<char>('a' + random() % 26);
        }
        const TemporaryFile file(text);
        std::vector<std::string> words = day()[i % day().size()].first;
        words[1] = file.path();
        const Printout answer = run(words);
        if (answer.code == 2) expect_refused(answer, "");
        else EXPECT_TRUE(answer.code == 0 || answer.code == 1) << answer.code << words[0] << "\n" << text;
        answered += answer.code < 2 ? 1 : 0;
    }
    EXPECT_GT(answered, 20);
}

TEST(DeskDay, TheFaultIsFoundInTheRun) {
    const Printout answer = run({"locate", day_file(), "Platform as built", "--json"});
    const Json found = Json::parse(answer.out);
    EXPECT_EQ(found.at("stage"), "rack to platform");
    EXPECT_GT(found.at("probability").get<double>(), 0.99);
}

TEST(DeskDay, EveryFieldOfJsonIsDocumented) {
    std::set<std::string> keys;
    for (auto [words, code] : day()) {
        words.emplace_back("--json");
        collect_keys(Json::parse(run(words).out), keys);
    }
    EXPECT_GT(keys.size(), 100u);
    const std::string document = read_file(DESK_SOURCES "/README.md");
    for (const std::string &key : keys)
        EXPECT_NE(document.find("`" + key + "`"), std::string::npos) << key << " is not in README.md";
}

} // namespace
} // namespace desk_test
