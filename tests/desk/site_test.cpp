// Maps, walks and placements of a site, against free space and straight lines computed here.
#include "run.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>

namespace desk_test {
namespace {

using Json = nlohmann::json;

// 5 dBm into an isotropic antenna at 600 MHz; a pack of 0 dBi with 10 dB of allowances; floor -60, ceiling -20 dBm.
constexpr double transmit_dbm = 5.0, frequency_mhz = 600.0, allowance_db = 10.0, floor_dbm = -60.0, ceiling_dbm = -20.0,
                 pack_m = 1.0;

std::string chain(const std::string &name, const std::string &more = "", const std::string &power = "5",
                  const std::string &frequency = "600") {
    return R"({"name": ")" + name + R"(", "frequency_mhz": )" + frequency + R"(, "far_distance_m": 30, "stages": [
 {"kind": "source", "power_dbm": )" +
           power + R"(}, {"kind": "antenna", "gain_dbi": 0}, {"kind": "air"},
 {"kind": "allowance", "loss_db": 10}, )" +
           more + R"({"kind": "antenna", "gain_dbi": 0},
 {"kind": "receiver", "floor_dbm": -60, "ceiling_dbm": -20}]})";
}

const std::string one_antenna = R"([{"label": "a", "link": "A", "place": {"x_m": 1, "y_m": 2, "z_m": 3}}])";
const std::string square = R"([{"name": "floor", "corners_m": [[0, 0], [6, 0], [6, 4], [0, 4]]}])";

std::string scenario(const std::string &site, const std::string &links = chain("A")) {
    return R"({"production": "T", "links": [)" + links + R"(], "sites": [{"name": "S", "direction": "outbound",
"combining": "best of", "pack_height_m": 1, "step_m": 1, )" +
           site + "}]}";
}

std::string plain_site(const std::string &more = "") {
    return scenario(R"("areas": )" + square + R"(, "antennas": )" + one_antenna + more);
}

// Free space by ITU-R P.525-4, equation (4), with its exact constant: 20 log10(4 pi d f / c).
double free_space_db(double distance_m) {
    constexpr double pi = 3.14159265358979323846, light_m_per_s = 299792458.0;
    return 20.0 * std::log10(4.0 * pi * distance_m * frequency_mhz * 1e6 / light_m_per_s);
}
double far_dbm(double dx, double dy, double dz) {
    return transmit_dbm - free_space_db(std::hypot(dx, dy, dz)) - allowance_db;
}

using Row = std::map<std::string, std::string>;

// Lines of a CSV file by the names of its columns; no field here has a comma in it.
std::vector<Row> csv(const std::string &path) {
    const std::vector<std::string> lines = lines_of(read_file(path));
    const auto split = [](const std::string &line) {
        std::vector<std::string> fields(1);
        for (const char c : line)
            if (c == ',') fields.emplace_back();
            else fields.back() += c;
        return fields;
    };
    std::vector<Row> rows;
    const std::vector<std::string> names = split(lines.at(0));
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const std::vector<std::string> fields = split(lines[i]);
        EXPECT_EQ(fields.size(), names.size()) << lines[i];
        Row row;
        for (std::size_t k = 0; k < names.size(); ++k) row[names[k]] = fields.at(k);
        rows.push_back(row);
    }
    return rows;
}

double number(const Row &row, const char *column) { return std::stod(row.at(column)); }

Json json_of(std::vector<std::string> words) {
    words.emplace_back("--json");
    const Printout told = run(words);
    EXPECT_LE(told.code, 1) << told.err;
    return Json::parse(told.out, nullptr, false);
}

// The page in one line, whatever its breaks.
std::string in_one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    while (text.find("  ") != std::string::npos) text.erase(text.find("  "), 1);
    return text;
}

TEST(Map, CsvHoldsFreeSpaceAtEveryPoint) {
    const TemporaryFolder folder;
    const std::string file = folder.write("s.json", plain_site()), out = folder.path() + "/map.csv";
    const Printout told = run({"map", file, "S", "--csv", out});
    EXPECT_EQ(told.code, 0) << told.err << told.out;
    const std::vector<Row> rows = csv(out);
    ASSERT_EQ(rows.size(), 24u);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const double x = 0.5 + static_cast<double>(i % 6), y = 0.5 + static_cast<double>(i / 6);
        EXPECT_DOUBLE_EQ(number(rows[i], "x_m"), x);
        EXPECT_DOUBLE_EQ(number(rows[i], "y_m"), y);
        const double level = far_dbm(x - 1.0, y - 2.0, 3.0 - pack_m);
        EXPECT_NEAR(number(rows[i], "level_dbm"), level, 1e-9);
        EXPECT_NEAR(number(rows[i], "margin_db"), level - floor_dbm, 1e-9);
        EXPECT_NEAR(number(rows[i], "headroom_db"), ceiling_dbm - (level + allowance_db), 1e-9);
        EXPECT_EQ(rows[i].at("zone"), "wanted band");
        EXPECT_EQ(rows[i].at("serving"), "a");
        EXPECT_EQ(rows[i].at("outage"), "");
    }
}

// k 290 K in 200 kHz is -120.96 dBm; a noise figure of 60 dB and a needed C/N of 20 dB ask for -40.96 dBm.
TEST(Map, FloorIsNeverBelowWhatAChainsNoiseAllows) {
    const auto noisy = [](std::string text) {
        text.insert(text.find("\"stages\""), R"("noise": {"bandwidth_khz": 200, "carrier_to_noise_db": 20}, )");
        return text.replace(text.rfind("\"floor_dbm\""), 0, "\"noise_figure_db\": 60, ");
    };
    const double needed_dbm = 10.0 * std::log10(1.380649e-23 * 290.0 * 200e3 * 1e3) + 80.0;
    const std::string antennas = R"([{"label": "a", "link": "A", "place": {"x_m": 1, "y_m": 2, "z_m": 3}},
        {"label": "b", "link": "B", "place": {"x_m": 50, "y_m": 2, "z_m": 3}}])";
    // one receiver: the chain without noise is judged as the one with it
    for (const std::string &links :
         {noisy(chain("A")) + "," + chain("B"), noisy(chain("A")) + "," + noisy(chain("B"))}) {
        const TemporaryFile file(scenario(R"("areas": )" + square + R"(, "antennas": )" + antennas, links));
        const Json told = json_of({"map", file.path(), "S"});
        EXPECT_NEAR(told.at("worst").at("margin_db").get<double>(), far_dbm(4.5, 1.5, 2.0) - needed_dbm, 1e-3);
        EXPECT_EQ(told.at("holds"), false);
        EXPECT_NE(
            told.at("cautions").at(0).get<std::string>().find("In link 'A' the entered floor of -60 dBm lies below"),
            std::string::npos);
        const Printout brief = run({"map", file.path(), "S", "--brief"});
        EXPECT_NE(brief.out.find("In link 'A' the entered floor of -60 dBm"), std::string::npos) << brief.out;
    }
}

TEST(Map, GraymapHoldsTheMarginInHalfDecibels) {
    // Two areas with a gap: columns 0, 1 and 4, 5.
    const TemporaryFolder folder;
    const std::string file =
        folder.write("s.json", scenario(R"("areas": [{"name": "l", "corners_m": [[0, 0], [2, 0], [2, 3], [0, 3]]},
 {"name": "r", "corners_m": [[4, 0], [6, 0], [6, 3], [4, 3]]}], "antennas": )" +
                                        one_antenna));
    const std::string out = folder.path() + "/map.pgm";
    EXPECT_EQ(run({"map", file, "S", "--pgm", out}).code, 0);
    // Netpbm's plain format: P2, comments from # to the line's end, width, height, maximum, then the greys.
    std::string text;
    for (const std::string &line : lines_of(read_file(out))) {
        EXPECT_LE(line.size(), 70u);
        text += line.substr(0, line.find('#')) + "\n";
    }
    std::istringstream stream(text);
    std::string magic;
    int width = 0, height = 0, most = 0;
    stream >> magic >> width >> height >> most;
    EXPECT_EQ(magic, "P2");
    EXPECT_EQ(width, 6);
    EXPECT_EQ(height, 3);
    EXPECT_EQ(most, 255);
    for (int line = 0; line < height; ++line)
        for (int column = 0; column < width; ++column) {
            int grey = -1;
            stream >> grey;
            const double y = 2.5 - line, x = 0.5 + column; // the top line is the greatest y
            const double margin = far_dbm(x - 1.0, y - 2.0, 3.0 - pack_m) - floor_dbm;
            if (column == 2 || column == 3) EXPECT_EQ(grey, 0);
            else EXPECT_NEAR(grey, 128.0 + 2.0 * margin, 0.5) << x << " " << y;
        }
    int more = 0;
    EXPECT_FALSE(stream >> more);
}

TEST(Map, TellsWorstAndHottestAndShares) {
    // 30 m long: where the level falls below -60 dBm, the walker drops out.
    const TemporaryFile file(scenario(R"("areas": [{"name": "run", "corners_m": [[0, 0], [60, 0], [60, 1], [0, 1]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0.5, "y_m": 0.5, "z_m": 3}}])"));
    int dropped = 0;
    for (int i = 0; i < 60; ++i) dropped += far_dbm(i, 0.0, 2.0) < floor_dbm ? 1 : 0;
    ASSERT_GT(dropped, 3);
    ASSERT_LT(dropped, 57);
    const Printout page = run({"map", file.path(), "S"});
    EXPECT_EQ(page.code, 1);
    char share[64];
    std::snprintf(share, sizeof share, "## %5.1f %%  drops out", 100.0 * dropped / 60.0);
    EXPECT_NE(page.out.find(share), std::string::npos) << page.out;
    const Json told = json_of({"map", file.path(), "S"});
    EXPECT_EQ(told.at("points"), 60);
    EXPECT_EQ(told.at("zones").at("dropout"), dropped);
    EXPECT_EQ(told.at("zones").at("wanted band"), 60 - dropped);
    EXPECT_EQ(told.at("worst").at("x_m"), 59.5);
    EXPECT_EQ(told.at("hottest").at("x_m"), 0.5);
    EXPECT_NEAR(told.at("worst").at("margin_db").get<double>(), far_dbm(59.0, 0.0, 2.0) - floor_dbm, 1e-9);
    EXPECT_NEAR(told.at("hottest").at("headroom_db").get<double>(),
                ceiling_dbm - (far_dbm(0.0, 0.0, 2.0) + allowance_db), 1e-9);
    EXPECT_EQ(told.at("holds"), false);
}

// The lines of the drawing without their frames, the top one first.
std::vector<std::string> drawing_of(const std::string &page) {
    std::vector<std::string> lines;
    for (const std::string &line : lines_of(page)) {
        const std::size_t begin = line.find('|'), end = line.rfind('|');
        if (begin == 11 && end > begin) lines.push_back(line.substr(begin + 1, end - begin - 1));
    }
    return lines;
}

TEST(Map, DrawsEverySquareWhereItIs) {
    const TemporaryFile file(scenario(R"("stage_front_y_m": 1.5, "areas": [
 {"name": "l", "corners_m": [[0, 0], [1, 0], [1, 1], [4, 1], [4, 3], [0, 3]]}], "antennas": [
 {"label": "a", "link": "A", "place": {"x_m": 3.5, "y_m": 0.5, "z_m": 3}},
 {"label": "b", "link": "A", "place": {"x_m": -9, "y_m": 0.5, "z_m": 3}}])"));
    const Printout page = run({"map", file.path(), "S"});
    // Only one square of the lowest row is in the area; the antenna stands beside it in the blank. The nearest point to
    // an antenna is (3.5, 1.5), the farthest (0.5, 2.5): 3.6 m in plan.
    EXPECT_EQ(drawing_of(page.out), (std::vector<std::string>{"W.......", "......H.", "..    a "})) << page.out;
    EXPECT_NE(page.out.find("|......H.| stage front\n"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("b  b at x -9 m, y 0.5 m, z 3 m, off the map"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("ahead (y) is up the page"), std::string::npos);
}

// The shares that a page tells behind each mark.
double share_of(const std::string &page, const std::string &mark) {
    const std::size_t at = page.find("\n  " + mark + " ");
    EXPECT_NE(at, std::string::npos) << mark << " in " << page;
    return at == std::string::npos ? std::nan("") : std::stod(page.substr(at + 5));
}

TEST(Map, ShowsMarginInStepsOfThreeDecibels) {
    // 60 m along one line: from 30 dB over the floor to below it
    const TemporaryFile file(scenario(R"("areas": [{"name": "run", "corners_m": [[0, 0], [40, 0], [40, 1], [0, 1]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0.5, "y_m": 0.5, "z_m": 2}}])"));
    const Printout page = run({"map", file.path(), "S", "--show", "margin"});
    std::string expected;
    std::map<std::string, int> squares;
    for (int i = 0; i < 40; ++i) {
        const double margin = far_dbm(i, 0.0, 1.0) - floor_dbm;
        const char mark = margin < 0.0 ? '#' : static_cast<char>('0' + std::min(9, static_cast<int>(margin / 3.0)));
        expected += std::string(2, mark);
        ++squares[std::string(2, mark)];
    }
    expected.replace(0, 1, "H"); // the nearest point
    expected.replace(78, 1, "W");
    ASSERT_GE(squares.size(), 5u);
    EXPECT_EQ(drawing_of(page.out), std::vector<std::string>{expected}) << page.out;
    for (const auto &[mark, count] : squares) EXPECT_NEAR(share_of(page.out, mark), 100.0 * count / 40.0, 0.051);
    EXPECT_NE(page.out.find("3 to 6 dB above the floor"), std::string::npos);
    for (const std::string &line : lines_of(page.out)) EXPECT_LE(line.size(), 100u) << line;
    EXPECT_EQ(page.code, run({"map", file.path(), "S"}).code); // what is drawn does not change what holds
    EXPECT_EQ(run({"map", file.path(), "S", "--show", "zones"}).out, run({"map", file.path(), "S"}).out);
}

TEST(Map, ShowsOutageInDecades) {
    const TemporaryFile file(scenario(R"("fading": {"model": "Rayleigh", "outage_percent": 20},
 "areas": [{"name": "run", "corners_m": [[0, 0], [40, 0], [40, 1], [0, 1]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0.5, "y_m": 0.5, "z_m": 2}}])"));
    const Printout page = run({"map", file.path(), "S", "--show", "outage"});
    std::string expected;
    std::set<char> seen;
    for (int i = 0; i < 40; ++i) {
        // Rayleigh: the power is exponential about its mean (Parsons, The Mobile Radio Propagation Channel, 5.4)
        const double outage = 1.0 - std::exp(-std::pow(10.0, (floor_dbm - far_dbm(i, 0.0, 1.0)) / 10.0));
        char mark = '0';
        for (const double bound : {1e-5, 1e-4, 1e-3, 1e-2, 1e-1}) mark = static_cast<char>(mark + (outage > bound));
        if (outage > 0.2) mark = '#';
        seen.insert(mark);
        expected += std::string(2, mark);
    }
    expected.replace(0, 1, "H");
    expected.replace(78, 1, "W");
    ASSERT_GE(seen.size(), 3u);
    EXPECT_EQ(drawing_of(page.out), std::vector<std::string>{expected}) << page.out;
    EXPECT_NE(page.out.find("more often below the floor than the allowed 20 %"), std::string::npos) << page.out;
}

// 3600 points around the antenna and one far away, which drops out: 0.03 %.
TEST(Map, AShareIsNeverRoundedToNothingOrAll) {
    std::string text = scenario(R"("areas": [{"name": "hall", "corners_m": [[0, 0], [30, 0], [30, 30], [0, 30]]},
 {"name": "door", "corners_m": [[70, 0], [70.5, 0], [70.5, 0.5], [70, 0.5]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 15, "y_m": 15, "z_m": 3}}])");
    text.replace(text.find("\"step_m\": 1"), 11, "\"step_m\": 0.5");
    ASSERT_GT(far_dbm(14.75, 14.75, 2.0), floor_dbm);
    ASSERT_LT(far_dbm(55.25, 14.75, 2.0), floor_dbm);
    const TemporaryFile file(text);
    const Printout page = run({"map", file.path(), "S"});
    EXPECT_NE(page.out.find("##  <0.1 %  drops out"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find(".. >99.9 %  inside the window"), std::string::npos) << page.out;
    EXPECT_NE(page.out.find("++       -  "), std::string::npos) << page.out;
}

TEST(Map, RefusesToShowWhatTheSiteDoesNotHave) {
    const TemporaryFile file(plain_site());
    const TemporaryFolder folder;
    const std::string csv_file = folder.path() + "/m.csv";
    expect_refused(run({"map", file.path(), "S", "--show", "outage", "--csv", csv_file}), "the site has no fading");
    EXPECT_FALSE(std::filesystem::exists(csv_file)); // nothing is written where nothing is answered
    expect_refused(run({"map", file.path(), "S", "--show", "margn"}),
                   "the nearest is 'margin'; it shows 'zones', 'margin', 'outage'");
    expect_refused(run({"map", file.path(), "S", "--show", "margin", "--json"}), "excludes");
    std::string open = chain("A");
    open.erase(open.find("\"floor_dbm\": -60, "), 17);
    const TemporaryFile without(scenario(R"("areas": )" + square + R"(, "antennas": )" + one_antenna, open));
    expect_refused(run({"map", without.path(), "S", "--show", "margin"}), "receivers of this site state none");
}

// A source of +-4 dB and a body of +-3 dB: 7 dB at the floor, 4 dB at the ceiling, where the body counts for nothing.
TEST(Map, DoubtfulWhereTheTolerancesAreMoreThanTheRoom) {
    std::string loose = chain("A");
    loose.replace(loose.find("\"loss_db\": 10"), 13, "\"loss_db\": 10, \"tolerance_db\": 3");
    loose.replace(loose.find("\"power_dbm\": 5"), 14, "\"power_dbm\": 5, \"tolerance_db\": 4");
    loose.insert(1, R"("tuning": {"channels_mhz": [590, 610]}, "fading": {"model": "Rayleigh", "outage_percent": 1},
 "limits": [{"label": "ours", "quantity": "e.i.r.p.", "limit_dbm": 30}], )");
    // Along y = 0.5 m from the antenna, 2 m above the packs.
    const auto site = [&](int from, int to) {
        const std::string a = std::to_string(from), b = std::to_string(to);
        return scenario(
            R"("areas": [{"name": "run", "corners_m": [[)" + a + ", 0], [" + b + ", 0], [" + b + ", 1], [" + a +
                R"(, 1]]}], "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0, "y_m": 0.5, "z_m": 3}}],
 "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 1, "corners_m": [[)" +
                std::to_string(from) + ", 0.5], [" + b + R"(, 0.5]]}],
 "placing": {"antennas": 1, "site_antennas": "leave out", "least_headroom_db": 0, "candidates": [
  {"label": "c", "link": "A", "place": {"x_m": 0, "y_m": 0.5, "z_m": 3}}]})",
            loose);
    };
    const TemporaryFolder folder;
    const std::string near = folder.write("near.json", site(3, 8)), far = folder.write("far.json", site(3, 18));
    int doubtful = 0;
    for (int i = 3; i < 18; ++i) doubtful += far_dbm(i + 0.5, 0.0, 2.0) - floor_dbm < 7.0 ? 1 : 0;
    ASSERT_GT(doubtful, 2);
    ASSERT_LT(doubtful, 15);
    ASSERT_GT(far_dbm(17.5, 0.0, 2.0), floor_dbm);
    ASSERT_GT(far_dbm(8.0, 0.0, 2.0) - floor_dbm, 7.0);
    ASSERT_GT(ceiling_dbm - far_dbm(3.0, 0.0, 2.0) - allowance_db, 4.0);
    for (const std::vector<std::string> &words :
         {std::vector<std::string>{"map", near, "S"}, {"walk", near, "S", "W"}, {"place", near, "S"}}) {
        const Printout page = run(words);
        EXPECT_EQ(page.code, 0) << page.out << page.err;
        const std::string text = in_one_line(page.out);
        EXPECT_NE(
            text.find("Left out: tolerances of +-7.00 dB at the floor and +-4.00 dB at the ceiling (the verdict "
                      "takes them); the fading of 'A'; the limits of 'A'; the tuning of 'A' 590 to 610 MHz (at 600 "
                      "MHz only)"),
            std::string::npos)
            << text;
        EXPECT_NE(text.find("600 MHz"), std::string::npos);
    }
    const Json told = json_of({"map", far, "S"});
    EXPECT_EQ(told.at("doubtful"), doubtful);
    EXPECT_EQ(told.at("holds"), false);
    EXPECT_NE(run({"map", far, "S"}).out.find("DOUBTFUL at " + std::to_string(doubtful) + " of 15 points"),
              std::string::npos);
    EXPECT_EQ(run({"map", far, "S"}).code, 1);
    EXPECT_EQ(run({"walk", far, "S", "W"}).code, 1);
    EXPECT_EQ(run({"place", far, "S"}).code, 1);
}

// Log-distance counts from 1 m on: the three squares nearer to the antenna have no level, but lie in the area.
TEST(Map, PointsOutsideThePathsModelHaveTheirOwnMark) {
    const TemporaryFile file(scenario(R"("path": {"model": "log-distance", "exponent": 2, "reference_distance_m": 1},
 "areas": [{"name": "run", "corners_m": [[0, 0], [8, 0], [8, 1], [0, 1]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": -5, "y_m": 0.5, "z_m": 1}},
              {"label": "b", "link": "A", "place": {"x_m": 4.5, "y_m": 0.5, "z_m": 1.5}}])"));
    const Printout page = run({"map", file.path(), "S"});
    EXPECT_EQ(page.code, 1) << page.err;
    const Json told = json_of({"map", file.path(), "S"});
    const int missing = told.at("unmodelled").get<int>();
    ASSERT_EQ(missing, 1) << page.out; // (4.5, 0.5) is 0.5 m away, its neighbours 1.12 m
    ASSERT_EQ(drawing_of(page.out).size(), 1u);
    EXPECT_EQ(drawing_of(page.out)[0].substr(8, 2), "bx") << page.out;
    EXPECT_NEAR(share_of(page.out, "xx"), 100.0 / 8.0, 0.051);
    EXPECT_NEAR(share_of(page.out, "..") + share_of(page.out, "!!") + share_of(page.out, "##"), 700.0 / 8.0, 0.2);
    EXPECT_NE(page.out.find("Shares of the area (8 points)"), std::string::npos);
    EXPECT_NE(page.out.find("among the points"), std::string::npos);
}

TEST(Map, TellsWhatIsNotJudgedAndWhatIsNearAndShaded) {
    std::string no_floor = chain("A");
    no_floor.replace(no_floor.find(R"("floor_dbm": -60, )"), 18, "");
    std::string no_ceiling = chain("A");
    no_ceiling.replace(no_ceiling.find(R"(, "ceiling_dbm": -20)"), 20, "");
    const std::string more = R"(, "stage_front_y_m": -4, "placing": {"antennas": 1, "site_antennas": "leave out",
 "least_headroom_db": 3, "candidates": [{"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 9, "z_m": 3}}]},
 "screens": [{"label": "wall", "from_m": [9, 0], "to_m": [9, 4], "top_m": 2, "loss_db": 7}])";
    const TemporaryFolder folder;
    const auto site = [&](const std::string &link) {
        return folder.write("s.json",
                            scenario(R"("areas": )" + square + R"(, "antennas": )" + one_antenna + more, link));
    };
    const Printout floorless = run({"map", site(no_floor), "S"});
    EXPECT_EQ(floorless.code, 1);
    EXPECT_NE(floorless.out.find("##       -  not judged: no floor is stated"), std::string::npos) << floorless.out;
    EXPECT_NE(floorless.out.find("NOT JUDGED at the floor: none is stated"), std::string::npos);
    EXPECT_NE(floorless.out.find("wall from x 9 m, y 0 m to x 9 m, y 4 m, z 0 to 2 m, 7 dB through it"),
              std::string::npos);
    EXPECT_NE(floorless.out.find("front is at y -4 m,"), std::string::npos) << floorless.out;
    EXPECT_EQ(run({"place", site(no_floor), "S"}).code, 1);
    const Printout open = run({"map", site(no_ceiling), "S"});
    EXPECT_EQ(open.code, 1);
    EXPECT_NE(open.out.find("!!       -  not judged: no ceiling is stated"), std::string::npos) << open.out;
    const Printout places = run({"place", site(no_ceiling), "S"});
    EXPECT_EQ(places.code, 1);
    EXPECT_NE(places.out.find("least_headroom_db"), std::string::npos) << places.out;
    EXPECT_EQ(places.out.find("under the ceiling"), std::string::npos) << places.out;
    // At 600 MHz the wavelength is 0.5 m: a pack 0.25 m under the antenna.
    std::string beside = plain_site();
    const std::string over = R"("x_m": 1, "y_m": 2, "z_m": 3)";
    beside.replace(beside.find(over), over.size(), R"("x_m": 1.5, "y_m": 2.5, "z_m": 1.25)");
    EXPECT_EQ(json_of({"map", folder.write("b.json", beside), "S"}).at("near_field"), 1);
    EXPECT_NE(run({"map", folder.path() + "/b.json", "S"}).out.find("near field: 1 point lies"), std::string::npos);
    EXPECT_EQ(json_of({"map", site(chain("A")), "S"}).at("near_field"), 0);
}

TEST(Map, LargeAreasAreDrawnByTheirWorstSquares) {
    // 400 by 8 squares: a character stands for 5 by 10. The level drops below the floor beyond some x.
    const TemporaryFile file(scenario(R"("areas": [{"name": "f", "corners_m": [[0, 0], [400, 0], [400, 8], [0, 8]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0, "y_m": 4, "z_m": 3}}])"));
    const Printout page = run({"map", file.path(), "S"});
    const std::vector<std::string> lines = drawing_of(page.out);
    ASSERT_EQ(lines.size(), 1u) << page.out;
    ASSERT_EQ(lines[0].size(), 80u);
    int first_dropout = 0; // the first column of which a square is under the floor
    while (far_dbm(first_dropout + 0.5, 3.5, 2.0) >= floor_dbm) ++first_dropout;
    EXPECT_EQ(lines[0].find('#'), static_cast<std::size_t>(first_dropout / 5)) << page.out;
    EXPECT_NE(in_one_line(page.out).find("shows the worst of 5 by 10 squares"), std::string::npos) << page.out;
}

// Squares of 1 m have their middles at 0.5, 1.5, ...: the riser lies between them, the others hold 6, 3 and 2 of them.
const std::string four_areas = R"([{"name": "stage", "corners_m": [[0, 0], [2, 0], [2, 3], [0, 3]]},
 {"name": "far, \"B\"", "corners_m": [[40, 0], [43, 0], [43, 1], [40, 1]]},
 {"name": "riser", "corners_m": [[0.6, 0.6], [1.4, 0.6], [1.4, 1.4], [0.6, 1.4]]},
 {"name": "mark", "corners_m": [[0, 0], [2, 0], [2, 1], [0, 1]]}])";

struct Extremes {
    double worst_dbm = HUGE_VAL, hottest_dbm = -HUGE_VAL; // the hottest without the allowance
};

// Over squares whose lowest and greatest columns and rows are given, of an antenna at a height over the packs.
Extremes extremes_of(int first_column, int last_column, int last_row, double x_m, double y_m, double over_m) {
    Extremes all;
    for (int column = first_column; column <= last_column; ++column)
        for (int row = 0; row <= last_row; ++row) {
            const double level = far_dbm(column + 0.5 - x_m, row + 0.5 - y_m, over_m);
            all.worst_dbm = std::min(all.worst_dbm, level);
            all.hottest_dbm = std::max(all.hottest_dbm, level + allowance_db);
        }
    return all;
}

std::string hundredths_of(double number) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f", number);
    return text;
}

// The fields of the line that begins so, behind its name, blanks between them.
std::string row_of(const std::string &page, const std::string &name) {
    for (const std::string &line : lines_of(page))
        if (line.rfind("  " + name + "  ", 0) == 0) return in_one_line(line.substr(name.size() + 3));
    return "no row " + name + " in " + page;
}

TEST(Areas, EachIsToldByItself) {
    const TemporaryFile file(scenario(R"("areas": )" + four_areas + R"(, "antennas": )" + one_antenna));
    const Extremes stage = extremes_of(0, 1, 2, 1.0, 2.0, 2.0), far = extremes_of(40, 42, 0, 1.0, 2.0, 2.0),
                   mark = extremes_of(0, 1, 0, 1.0, 2.0, 2.0);
    ASSERT_GT(stage.worst_dbm, floor_dbm);
    ASSERT_LT(far.worst_dbm, floor_dbm);
    const Printout page = run({"map", file.path(), "S"});
    EXPECT_EQ(page.code, 1) << page.err;
    const auto row = [](int points, const Extremes &all, const std::string &verdict) {
        return " " + std::to_string(points) + " " + hundredths_of(all.worst_dbm) + " " +
               hundredths_of(all.worst_dbm - floor_dbm) + " " + hundredths_of(all.hottest_dbm) + " " +
               hundredths_of(ceiling_dbm - all.hottest_dbm) + " " + verdict;
    };
    EXPECT_EQ(row_of(page.out, "stage"), row(6, stage, "holds")) << page.out;
    EXPECT_EQ(row_of(page.out, "far, \"B\""), row(3, far, "DROPS OUT")) << page.out;
    EXPECT_EQ(row_of(page.out, "riser"), " 0 - - - - NO POINT") << page.out;
    EXPECT_EQ(row_of(page.out, "mark"), row(2, mark, "holds")) << page.out;
    const Json told = json_of({"map", file.path(), "S"});
    ASSERT_EQ(told.at("areas").size(), 4u);
    const Json &second = told.at("areas")[1], &third = told.at("areas")[2];
    EXPECT_EQ(second.at("name"), "far, \"B\"");
    EXPECT_EQ(second.at("points"), 3);
    EXPECT_EQ(second.at("worst").at("x_m"), 42.5);
    EXPECT_NEAR(second.at("worst").at("level_dbm").get<double>(), far.worst_dbm, 1e-9);
    EXPECT_NEAR(second.at("hottest").at("headroom_db").get<double>(), ceiling_dbm - far.hottest_dbm, 1e-9);
    EXPECT_EQ(second.at("worst").at("serving"), "a");
    EXPECT_EQ(second.at("holds"), false);
    EXPECT_EQ(third.at("points"), 0);
    EXPECT_EQ(third.at("worst"), nullptr);
    EXPECT_EQ(third.at("holds"), false);
    EXPECT_EQ(told.at("areas")[0].at("holds"), true);
    EXPECT_EQ(told.at("points"), 9); // the mark lies within the stage
}

TEST(Areas, OneWithoutAPointIsNamedAndNotJudged) {
    const std::string all_near =
        std::regex_replace(four_areas, std::regex(R"(\[\[40, 0\], \[43, 0\], \[43, 1\], \[40, 1\]\])"),
                           "[[4, 0], [6, 0], [6, 1], [4, 1]]");
    const std::string rest = R"(, "antennas": )" + one_antenna +
                             R"(, "placing": {"antennas": 1, "site_antennas": "leave out", "least_headroom_db": 0,
 "candidates": [{"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 2, "z_m": 3}}]})";
    const TemporaryFolder folder;
    const std::string coarse = folder.write("c.json", scenario(R"("areas": )" + all_near + rest));
    for (const char *command : {"map", "place"}) {
        const Printout page = run({command, coarse, "S"});
        EXPECT_EQ(page.code, 1) << page.err;
        const std::string words = in_one_line(page.out);
        EXPECT_NE(words.find("Verdict: NOT JUDGED in 1 of 4 areas: no point of the grid lies in it"), std::string::npos)
            << page.out;
        EXPECT_NE(words.find("NOTE: no point of the grid lies in the area 'riser'"), std::string::npos) << page.out;
        EXPECT_NE(in_one_line(run({command, coarse, "S", "--brief"}).out).find("the area 'riser'"), std::string::npos);
        const Json told = json_of({command, coarse, "S"});
        EXPECT_EQ(told.at("missed_areas"), Json::array({"riser"}));
        EXPECT_EQ(told.at("areas")[2].at("points"), 0);
        EXPECT_EQ(told.at("holds"), false);
    }
    // in half the step all four have points
    std::string fine = scenario(R"("areas": )" + all_near + rest);
    fine.replace(fine.find("\"step_m\": 1"), 11, "\"step_m\": 0.5");
    folder.write("f.json", fine);
    for (const char *command : {"map", "place"}) {
        const Printout page = run({command, folder.path() + "/f.json", "S"});
        EXPECT_EQ(page.code, 0) << page.out << page.err;
        EXPECT_EQ(page.out.find("NOTE"), std::string::npos) << page.out;
        EXPECT_EQ(json_of({command, folder.path() + "/f.json", "S"}).at("missed_areas"), Json::array());
    }
}

TEST(Areas, OnlyTheOneThatFadesOrIsDoubtfulSaysSo) {
    std::string loose = chain("A");
    loose.replace(loose.find("\"power_dbm\": 5"), 14, "\"power_dbm\": 5, \"tolerance_db\": 3");
    const std::string areas = R"([{"name": "near", "corners_m": [[2, 0], [4, 0], [4, 1], [2, 1]]},
 {"name": "brink", "corners_m": [[17, 0], [19, 0], [19, 1], [17, 1]]}])";
    const TemporaryFile file(scenario(R"("fading": {"model": "Rayleigh", "outage_percent": 30}, "areas": )" + areas +
                                          R"(, "antennas": [{"label": "a", "link": "A",
 "place": {"x_m": 0, "y_m": 0.5, "z_m": 1}}])",
                                      loose));
    // Rayleigh below its mean by the margin m: 1 - exp(-10^(-m / 10)), the exponential law of power
    const auto margin = [](double x) { return far_dbm(x, 0.0, 0.0) - floor_dbm; };
    const auto outage = [&](double x) { return 1.0 - std::exp(-std::pow(10.0, -margin(x) / 10.0)); };
    ASSERT_GT(margin(18.5), 0.0);
    ASSERT_LT(margin(17.5), 3.0);
    ASSERT_GT(margin(3.5), 3.0);
    ASSERT_GT(outage(17.5), 0.3);
    ASSERT_LT(outage(3.5), 0.3);
    const Printout page = run({"map", file.path(), "S"});
    EXPECT_NE(row_of(page.out, "near").find("holds"), std::string::npos) << page.out;
    EXPECT_NE(row_of(page.out, "brink").find("FADES, DOUBTFUL"), std::string::npos) << page.out;
    const Json told = json_of({"map", file.path(), "S"});
    EXPECT_EQ(told.at("areas")[0].at("doubtful"), 0);
    EXPECT_EQ(told.at("areas")[1].at("doubtful"), 2);
    EXPECT_EQ(told.at("areas")[0].at("points_over_wanted"), 0);
    EXPECT_EQ(told.at("areas")[1].at("points_over_wanted"), 2);
}

TEST(Map, CombinesAntennas) {
    const std::string two = R"([{"label": "a", "link": "A", "place": {"x_m": 0, "y_m": 0.5, "z_m": 1}},
 {"label": "b", "link": "B", "place": {"x_m": 10, "y_m": 0.5, "z_m": 1}}])";
    const std::string area = R"([{"name": "f", "corners_m": [[3, 0], [6, 0], [6, 1], [3, 1]]}])";
    const std::string links = chain("A") + "," + chain("B", "", "11");
    const std::string best = scenario(R"("areas": )" + area + R"(, "antennas": )" + two, links);
    std::string sum = best;
    sum.replace(sum.find("best of"), 7, "sum");
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/m.csv";
    for (const bool adds : {false, true}) {
        run({"map", folder.write("s.json", adds ? sum : best), "S", "--csv", out});
        const std::vector<Row> rows = csv(out);
        ASSERT_EQ(rows.size(), 3u);
        for (const Row &row : rows) {
            const double x = number(row, "x_m"), a = far_dbm(x, 0, 0), b = far_dbm(10.0 - x, 0, 0) + 6.0;
            const double powers = 10.0 * std::log10(std::pow(10.0, a / 10.0) + std::pow(10.0, b / 10.0));
            EXPECT_NEAR(number(row, "level_dbm"), adds ? powers : std::max(a, b), 1e-9);
            EXPECT_EQ(row.at("serving"), a >= b ? "a" : "b");
        }
        const std::string page = run({"map", folder.path() + "/s.json", "S"}).out;
        EXPECT_NE(page.find(adds ? "sum of the powers of 2 antennas" : "best of 2 antennas"), std::string::npos);
        EXPECT_NE(page.find("on one frequency also cancel"), std::string::npos) << page;
    }
}

TEST(Map, ScreenBodyAndFadingCount) {
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/m.csv";
    // A wall of 7 dB at x = 3 between the antenna at x = -2 and the far half. The wearer looks along +x, away from the
    // antenna: the body costs 18 dB. One Rayleigh branch below its mean by the margin m fails with 1 - exp(-1/m)
    // (textbook; the exponential law of power), two independent ones with the square of it.
    const std::string site = scenario(R"("areas": [{"name": "f", "corners_m": [[1, 0], [5, 0], [5, 1], [1, 1]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": -2, "y_m": 0.5, "z_m": 1}}],
 "screens": [{"label": "wall", "from_m": [3, -50], "to_ft": [9.842519685039370, 150], "top_m": 9, "loss_db": 7}],
 "fading": {"model": "Rayleigh", "outage_percent": 1, "branches": 2},
 "wearer": {"facing": "azimuth", "azimuth_deg": 90,
          "body_table": {"facing_deg": [0, 90, 180, 270], "loss_db": [2, 6, 18, 6]}})",
                                      // the chain's own body gives way to the site's
                                      chain("A", R"({"kind": "allowance", "facing_deg": 0,
 "body_table": {"facing_deg": [0, 180], "loss_db": [50, 50]}}, )"));
    EXPECT_LE(run({"map", folder.write("s.json", site), "S", "--csv", out}).code, 1);
    const std::vector<Row> rows = csv(out);
    ASSERT_EQ(rows.size(), 4u);
    for (const Row &row : rows) {
        const double x = number(row, "x_m"), level = far_dbm(x + 2.0, 0, 0) - 18.0 - (x > 3.0 ? 7.0 : 0.0);
        EXPECT_NEAR(number(row, "level_dbm"), level, 1e-9);
        EXPECT_NEAR(number(row, "headroom_db"), ceiling_dbm - (level + 18.0 + allowance_db), 1e-9);
        const double one = 1.0 - std::exp(-std::pow(10.0, (floor_dbm - level) / 10.0));
        EXPECT_NEAR(number(row, "outage"), one * one, 1e-12);
    }
}

// Balanis, Antenna Theory, 2.12: linear antennas that enclose an angle lose its squared cosine. All stands along y at
// one height, and the whip leans across the line of sight.
TEST(Map, AWhipThatLeansLosesPolarizationInPlaceOfTheAllowance) {
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/m.csv";
    const auto site = [&](const std::string &wearer) {
        return folder.write(
            "s.json", scenario(R"("areas": [{"name": "f", "corners_m": [[-0.5, 4], [0.5, 4], [0.5, 9], [-0.5, 9]]}],
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0, "y_m": 0, "z_m": 1}}])" +
                                   wearer,
                               chain("A", R"({"kind": "allowance", "label": "polarization", "loss_db": 3}, )")));
    };
    const auto losses = [&](const std::string &wearer, double greatest_dbi = 0.0) {
        EXPECT_LE(run({"map", site(wearer), "S", "--csv", out}).code, 1);
        std::vector<double> all;
        for (const Row &row : csv(out)) {
            const double y = number(row, "y_m");
            all.push_back(far_dbm(number(row, "x_m"), y, 0.0) - number(row, "level_dbm"));
            EXPECT_NEAR(number(row, "headroom_db"), ceiling_dbm - (transmit_dbm + greatest_dbi - free_space_db(y)),
                        greatest_dbi == 0.0 ? 1e-9 : 5e-3);
        }
        EXPECT_EQ(all.size(), 5u);
        return all;
    };
    const std::string leaning =
        R"(, "wearer": {"facing": "azimuth", "azimuth_deg": 180, "pack_antenna": {"roll_deg": )";
    for (const double loss : losses("")) EXPECT_NEAR(loss, 3.0, 1e-9);
    for (const double loss : losses(leaning + "60}}")) EXPECT_NEAR(loss, 3.0 + 20.0 * std::log10(2.0), 1e-9);
    for (const double loss : losses(leaning + R"(60}, "in_place_of": "polarization"})"))
        EXPECT_NEAR(loss, 20.0 * std::log10(2.0), 1e-9);
    const std::string lying = leaning + R"(90}, "in_place_of": "polarization", "most_polarization_loss_db": 18})";
    for (const double loss : losses(lying)) EXPECT_NEAR(loss, 18.0, 1e-9);
    // a half-wave dipole of 2.15 dBi that lies across whoever is turned by 30 degrees: cos(pi/2 cos 60) / sin 60,
    // Balanis 4.6
    for (const double loss :
         losses(R"(, "wearer": {"facing": "azimuth", "azimuth_deg": 30, "in_place_of": "polarization",
 "most_polarization_loss_db": 0.001, "pack_antenna": {"roll_deg": 90, "pattern": {"kind": "half-wave dipole"}}})",
                2.15))
        EXPECT_NEAR(loss, -2.15 - 20.0 * std::log10(std::sqrt(0.5) / std::sqrt(0.75)), 5e-3);
    const std::string page = in_one_line(run({"map", site(lying), "S"}).out);
    EXPECT_NE(page.find("Wearer: faces azimuth 180 degrees; the pack's antenna is turned with it (roll_deg 90), and "
                        "polarization is computed in place of the allowance 'polarization', 18 dB at most"),
              std::string::npos)
        << page;
    const Json told = json_of({"map", site(lying), "S"}).at("wearer");
    EXPECT_EQ(told.at("pack_antenna").at("roll_deg"), 90);
    EXPECT_EQ(told.at("most_polarization_loss_db"), 18);
    EXPECT_EQ(told.at("in_place_of"), "polarization");
    EXPECT_EQ(told.at("body_counts"), false);
}

// Everybody turns the back to the near antenna: without the body's 40 dB it is the stronger one, with them the far one
// is (46 m against 4 m are 21 dB).
TEST(Map, TheHottestPointNamesTheAntennaThatMakesIt) {
    const TemporaryFile file(scenario(R"("areas": [{"name": "f", "corners_m": [[3, 1], [6, 1], [6, 3], [3, 3]]}],
 "antennas": [{"label": "near", "link": "A", "place": {"x_m": 1, "y_m": 2, "z_m": 3}},
              {"label": "far", "link": "A", "place": {"x_m": 50, "y_m": 2, "z_m": 3}}],
 "wearer": {"facing": "azimuth", "azimuth_deg": 90, "body_table": {"facing_deg": [-90, 0, 90, 180], "loss_db": [0, 0, 0, 40]}},
 "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 0.5, "corners_m": [[3, 2], [6, 2]]}])"));
    const Json map = json_of({"map", file.path(), "S"}), walk = json_of({"walk", file.path(), "S", "W"});
    for (const Json &told : {map, walk}) {
        EXPECT_EQ(told.at("hottest").at("serving"), "near");
        EXPECT_EQ(told.at("worst").at("serving"), "far");
        EXPECT_EQ(told.at("floor_dbm"), floor_dbm);
        EXPECT_EQ(told.at("ceiling_dbm"), ceiling_dbm);
    }
    EXPECT_NEAR(walk.at("hottest").at("level_dbm").get<double>(), far_dbm(2.0, 0.0, 2.0) + allowance_db, 1e-9);
    const std::string page = in_one_line(run({"map", file.path(), "S"}).out);
    EXPECT_NE(page.find("under the ceiling; strongest there is 'near'"), std::string::npos) << page;
    EXPECT_NE(page.find("under the floor; strongest there is 'far'"), std::string::npos) << page;
    EXPECT_NE(page.find("Allowed: 'allowance' 10 dB; what they hold for a body counts twice"), std::string::npos)
        << page;
}

TEST(Map, PathAndPatternStandInPlaceOfTheChains) {
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/m.csv";
    // Log-distance with exponent 3 from free space at 1 m; an isotropic pattern of 5 dBi.
    const std::string site = scenario(R"("areas": [{"name": "f", "corners_m": [[2, 0], [9, 0], [9, 1], [2, 1]]}],
 "path": {"model": "log-distance", "exponent": 3},
 "antennas": [{"label": "a", "link": "A", "place": {"x_m": 0, "y_m": 0.5, "z_m": 1},
               "pattern": {"kind": "isotropic", "gain_dbi": 5}}])");
    EXPECT_LE(run({"map", folder.write("s.json", site), "S", "--csv", out}).code, 1);
    const std::vector<Row> rows = csv(out);
    ASSERT_EQ(rows.size(), 7u);
    for (const Row &row : rows)
        EXPECT_NEAR(number(row, "level_dbm"),
                    transmit_dbm + 5.0 - free_space_db(1.0) - 30.0 * std::log10(number(row, "x_m")) - allowance_db,
                    1e-9);
}

TEST(Walk, TellsWhereTheLinkIsUnderTheFloorAndOverTheCeiling) {
    // From beside the antenna straight away from it; by P.525 the level crosses the floor at one distance and the near
    // level, without the allowance, the ceiling at another.
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/w.csv";
    const std::string file =
        folder.write("s.json", plain_site(R"(, "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.05,
 "corners_m": [[1.2, 2, 3], [81.2, 2, 3]]}])"));
    const double at_one_metre = free_space_db(1.0);
    const double floor_m = std::pow(10.0, (transmit_dbm - allowance_db - floor_dbm - at_one_metre) / 20.0);
    const double ceiling_m = std::pow(10.0, (transmit_dbm - ceiling_dbm - at_one_metre) / 20.0);
    ASSERT_LT(floor_m, 80.0);
    ASSERT_GT(ceiling_m, 0.3);
    const Printout page = run({"walk", file, "S", "W", "--csv", out});
    EXPECT_EQ(page.code, 1) << page.err;
    EXPECT_NE(page.out.find("under the floor for "), std::string::npos) << page.out;
    const Json told = json_of({"walk", file, "S", "W"});
    EXPECT_NEAR(told.at("length_m").get<double>(), 80.0, 1e-9);
    EXPECT_NEAR(told.at("duration_s").get<double>(), 40.0, 1e-9);
    EXPECT_EQ(told.at("worst").at("serving"), "a");
    EXPECT_NE(in_one_line(page.out).find("at 80 m of the walk (x 81.2 m, y 2 m); strongest there is 'a'"),
              std::string::npos)
        << page.out;
    // Straight lines between points 0.05 m apart.
    constexpr double by_steps_m = 1e-3;
    ASSERT_EQ(told.at("under_floor").size(), 1u);
    EXPECT_NEAR(told.at("under_floor")[0].at("from_m").get<double>(), floor_m - 0.2, by_steps_m);
    EXPECT_NEAR(told.at("under_floor")[0].at("to_m").get<double>(), 80.0, 1e-9);
    EXPECT_NEAR(told.at("under_floor")[0].at("to_x_m").get<double>(), 81.2, 1e-9);
    EXPECT_NEAR(told.at("under_floor_s").get<double>(), (80.2 - floor_m) / 2.0, by_steps_m);
    ASSERT_EQ(told.at("over_ceiling").size(), 1u);
    EXPECT_NEAR(told.at("over_ceiling")[0].at("from_m").get<double>(), 0.0, 1e-9);
    EXPECT_NEAR(told.at("over_ceiling")[0].at("to_m").get<double>(), ceiling_m - 0.2, by_steps_m);
    EXPECT_NEAR(told.at("over_ceiling_s").get<double>(), (ceiling_m - 0.2) / 2.0, by_steps_m);
    const std::vector<Row> rows = csv(out);
    ASSERT_EQ(rows.size(), 1601u);
    for (std::size_t i = 0; i < rows.size(); i += 100) {
        const double distance = 0.05 * static_cast<double>(i);
        EXPECT_NEAR(number(rows[i], "distance_m"), distance, 1e-9);
        EXPECT_NEAR(number(rows[i], "time_s"), distance / 2.0, 1e-9);
        EXPECT_NEAR(number(rows[i], "x_m"), 1.2 + distance, 1e-9);
        EXPECT_NEAR(number(rows[i], "z_m"), 3.0, 1e-9);
        EXPECT_NEAR(number(rows[i], "level_dbm"), far_dbm(0.2 + distance, 0, 0), 1e-9);
    }
}

TEST(Walk, SeveralStretchesAddUpToTheLibrarysTime) {
    // To and fro past the place where the level crosses the floor.
    const TemporaryFile file(plain_site(R"(, "walks": [{"name": "W", "speed_km_per_h": 3.6, "step_m": 0.3,
 "corners_m": [[2, 2], [90, 2], [2, 2], [90, 2], [2, 2]]}])"));
    const Json told = json_of({"walk", file.path(), "S", "W"});
    EXPECT_DOUBLE_EQ(told.at("speed_m_per_s").get<double>(), 1.0);
    ASSERT_EQ(told.at("under_floor").size(), 2u);
    EXPECT_NE(run({"walk", file.path(), "S", "W"}).out.find("in all, in 2 stretches:"), std::string::npos);
    double seconds = 0.0;
    for (const Json &stretch : told.at("under_floor")) seconds += stretch.at("seconds").get<double>();
    EXPECT_NEAR(seconds, told.at("under_floor_s").get<double>(), 1e-9);
}

// Straight away from the antenna the mean power falls with the square of the distance d. A Rayleigh branch (exponential
// power, Parsons, The Mobile Radio Propagation Channel, 5.4) is then below the floor with 1 - exp(-(d / f)^2), f being
// where the mean lies at the floor, and the best of two independent ones with the square of that. Both have integrals
// in the error function.
TEST(Walk, FadingHasItsMeanAndItsTimeInClosedForm) {
    const double floor_m = std::pow(10.0, (transmit_dbm - allowance_db - floor_dbm - free_space_db(1.0)) / 20.0);
    constexpr double from_m = 2.0, to_m = 22.0, speed_m_per_s = 2.0, wanted = 0.05, pi = 3.14159265358979323846;
    const auto gaussian = [&](double width_m) { // integral of exp(-(d / width)^2) along the walk
        return 0.5 * std::sqrt(pi) * width_m * (std::erf(to_m / width_m) - std::erf(from_m / width_m));
    };
    const TemporaryFolder folder;
    const std::string out = folder.path() + "/w.csv";
    for (const int branches : {1, 2}) {
        const std::string file =
            folder.write("s.json", plain_site(R"(, "fading": {"model": "Rayleigh", "outage_percent": 5, "branches": )" +
                                              std::to_string(branches) + R"(},
 "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.02, "corners_m": [[3, 2, 3], [23, 2, 3]]}])"));
        const Printout page = run({"walk", file, "S", "W", "--csv", out});
        EXPECT_EQ(page.code, 1) << page.err;
        const auto outage_at = [&](double distance_m) {
            return std::pow(1.0 - std::exp(-std::pow(distance_m / floor_m, 2.0)), branches);
        };
        const std::vector<Row> rows = csv(out);
        ASSERT_EQ(rows.size(), 1001u);
        int over = 0;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const double outage = outage_at(from_m + 0.02 * static_cast<double>(i));
            EXPECT_NEAR(number(rows[i], "outage"), outage, 1e-10);
            over += outage > wanted ? 1 : 0;
        }
        double under_floor_m = to_m - from_m - gaussian(floor_m);
        if (branches == 2) under_floor_m += gaussian(floor_m / std::sqrt(2.0)) - gaussian(floor_m);
        // the branches' outage comes up to what is wanted where 1 - exp(-(d / f)^2) is its root
        const double over_m = floor_m * std::sqrt(-std::log(1.0 - std::pow(wanted, 1.0 / branches)));
        ASSERT_GT(over_m, from_m + 1.0);
        ASSERT_LT(over_m, to_m - 1.0);
        const Json told = json_of({"walk", file, "S", "W"});
        const Json &fading = told.at("fading");
        constexpr double by_steps = 1e-4; // straight lines over 0.02 m
        EXPECT_NEAR(fading.at("mean_outage").get<double>(), under_floor_m / (to_m - from_m), by_steps);
        EXPECT_NEAR(fading.at("expected_under_floor_s").get<double>(), under_floor_m / speed_m_per_s, by_steps);
        EXPECT_NEAR(fading.at("highest_outage").get<double>(), outage_at(to_m), 1e-10);
        EXPECT_EQ(fading.at("wanted_outage"), wanted);
        EXPECT_EQ(fading.at("points_over_wanted"), over);
        EXPECT_NEAR(fading.at("over_wanted_s").get<double>(), (to_m - over_m) / speed_m_per_s, by_steps);
        ASSERT_EQ(fading.at("over_wanted").size(), 1u);
        EXPECT_NEAR(fading.at("over_wanted")[0].at("from_m").get<double>(), over_m - from_m, by_steps);
        EXPECT_NEAR(fading.at("over_wanted")[0].at("to_x_m").get<double>(), 23.0, 1e-9);
        EXPECT_EQ(told.at("holds"), false);
        const std::string words = in_one_line(page.out);
        char time[64];
        std::snprintf(time, sizeof time, "below the floor for %.10g s must be expected",
                      std::round(100.0 * under_floor_m / speed_m_per_s) / 100.0);
        EXPECT_NE(words.find(branches == 1 ? "Fading: Rayleigh: " + std::string(time)
                                           : "Fading: Rayleigh, best of 2 branches: " + std::string(time)),
                  std::string::npos)
            << page.out;
        EXPECT_NE(words.find("at 20 m of the walk (x 23 m, y 2 m)"), std::string::npos) << page.out;
        EXPECT_NE(words.find("more often below the floor than the 5 % that are allowed for "), std::string::npos);
        EXPECT_NE(words.find("FADES below the floor too often at " + std::to_string(over) + " of 1001 points"),
                  std::string::npos);
        EXPECT_EQ(words.find("Left out:"), std::string::npos) << page.out;
    }
}

TEST(Walk, SeldomEnoughFadingHolds) {
    const TemporaryFile file(plain_site(R"(, "fading": {"model": "Rice", "k_db": 20, "outage_percent": 1},
 "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.5, "corners_m": [[2, 2], [3, 2]]}])"));
    const Printout page = run({"walk", file.path(), "S", "W"});
    EXPECT_EQ(page.code, 0) << page.out << page.err;
    EXPECT_NE(page.out.find("Outage:   never more often below the floor"), std::string::npos) << page.out;
    EXPECT_NE(in_one_line(page.out).find("below the floor for less than 0.01 s must be expected"), std::string::npos);
    const TemporaryFile plain(
        plain_site(R"(, "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.5, "corners_m": [[2, 2], [3, 2]]}])"));
    EXPECT_EQ(json_of({"walk", plain.path(), "S", "W"}).at("fading"), nullptr);
    EXPECT_EQ(run({"walk", plain.path(), "S", "W"}).out.find("Fading"), std::string::npos);
    expect_refused(run({"walk", plain.path(), "S", "W", "--show", "outage"}), "the site has no fading");
}

// 120 steps of 0.5 m, two points to a character: from 60 m away to the antenna.
TEST(Walk, IsDrawnByItsWorstPoints) {
    const TemporaryFile file(plain_site(R"(, "fading": {"model": "Rayleigh", "outage_percent": 20},
 "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.5, "corners_m": [[62, 2, 3], [2, 2, 3]]}])"));
    std::string zones, outages;
    for (int character = 0; character < 61; ++character) {
        const double farther_m = 61.0 - character; // the first of the two, and so the worse
        const double level = far_dbm(farther_m, 0.0, 0.0);
        zones += level < floor_dbm ? '#' : '.';
        const double outage = 1.0 - std::exp(-std::pow(10.0, (floor_dbm - level) / 10.0));
        char mark = '0';
        for (const double bound : {1e-5, 1e-4, 1e-3, 1e-2, 1e-1}) mark = static_cast<char>(mark + (outage > bound));
        outages += outage > 0.2 ? '#' : mark;
    }
    ASSERT_NE(zones.find('.'), std::string::npos);
    ASSERT_NE(zones.find('#'), std::string::npos);
    const std::string letters = "W" + std::string(59, ' ') + "H";
    const Printout page = run({"walk", file.path(), "S", "W"});
    EXPECT_EQ(drawing_of(page.out), (std::vector<std::string>{zones, letters})) << page.out;
    EXPECT_NE(in_one_line(page.out).find("shows the worst of 2 points"), std::string::npos);
    const Printout fades = run({"walk", file.path(), "S", "W", "--show", "outage"});
    EXPECT_EQ(drawing_of(fades.out), (std::vector<std::string>{outages, letters})) << fades.out;
    EXPECT_EQ(fades.code, page.code);
}

TEST(Place, TellsTheBestFirst) {
    // Of five places along a rail beside a strip the middle one is nearest to its farthest point; free space decides.
    const TemporaryFile file(scenario(R"("areas": [{"name": "f", "corners_m": [[0, 0], [9, 0], [9, 1], [0, 1]]}],
 "placing": {"antennas": 1, "least_headroom_db": 0, "candidates": [
  {"label": "rail", "link": "A", "place": {"x_m": 0.5, "y_m": 4.5, "z_m": 1}, "rail_to_m": [8.5, 4.5, 1],
   "positions": 5}]})"));
    std::vector<std::pair<double, int>> wanted; // worst level and position, best first
    for (int i = 0; i < 5; ++i) {
        double worst = HUGE_VAL;
        for (int point = 0; point < 9; ++point) worst = std::min(worst, far_dbm(point - 2.0 * i, 4.0, 0.0));
        wanted.emplace_back(worst, i + 1);
    }
    std::stable_sort(wanted.begin(), wanted.end(),
                     [](const auto &a, const auto &b) { return a.first > b.first + 1e-9; });
    ASSERT_EQ(wanted[0].second, 3);
    const Json told = json_of({"place", file.path(), "S", "--most", "4"});
    EXPECT_EQ(told.at("looked_at"), 5);
    ASSERT_EQ(told.at("placements").size(), 4u);
    for (std::size_t i = 0; i < 4; ++i) {
        const Json &placement = told.at("placements")[i];
        EXPECT_NEAR(placement.at("worst_level_dbm").get<double>(), wanted[i].first, 1e-9);
        EXPECT_NEAR(placement.at("worst_margin_db").get<double>(), wanted[i].first - floor_dbm, 1e-9);
        EXPECT_EQ(placement.at("antennas").at(0).at("label"), "rail, position " + std::to_string(wanted[i].second));
    }
    const Printout page = run({"place", file.path(), "S"});
    EXPECT_EQ(page.code, 0) << page.err;
    EXPECT_LT(page.out.find("1. rail, position 3: "), page.out.find("2. rail, position ")) << page.out;
}

TEST(Place, TwoAntennasBesideOrInsteadOfTheSites) {
    const auto told = [](const std::string &others) {
        const TemporaryFile file(scenario(
            R"("areas": [{"name": "f", "corners_m": [[0, 0], [9, 0], [9, 1], [0, 1]]}],
 "antennas": [{"label": "s", "link": "A", "place": {"x_m": 4.5, "y_m": 0.5, "z_m": 2}}],
 "placing": {"antennas": 2, "least_headroom_db": 0, )" +
            others + R"("candidates": [
  {"label": "l", "link": "A", "place": {"x_m": -3, "y_m": 0.5, "z_m": 2}},
  {"label": "m", "link": "A", "place": {"x_m": 4.5, "y_m": 0.5, "z_m": 4}},
  {"label": "r", "link": "A", "place": {"x_m": 12, "y_m": 0.5, "z_m": 2}}]})"));
        return json_of({"place", file.path(), "S"});
    };
    const auto worst_of = [](const std::vector<std::array<double, 2>> &antennas) { // x and height over the packs
        double worst = HUGE_VAL;
        for (int i = 0; i < 9; ++i) {
            double best = -HUGE_VAL;
            for (const auto &[x, z] : antennas) best = std::max(best, far_dbm(x - (0.5 + i), 0.0, z));
            worst = std::min(worst, best);
        }
        return worst;
    };
    const Json beside = told(""), instead = told(R"("site_antennas": "leave out", )");
    EXPECT_EQ(beside.at("looked_at"), 3);
    EXPECT_NEAR(beside.at("placements")[0].at("worst_level_dbm").get<double>(),
                worst_of({{4.5, 1.0}, {-3.0, 1.0}, {12.0, 1.0}}), 1e-9);
    // Without it the pairs l, m and m, r are equally bad at the other end, and l, r in the middle.
    const double lr = worst_of({{-3.0, 1.0}, {12.0, 1.0}}), lm = worst_of({{-3.0, 1.0}, {4.5, 3.0}});
    EXPECT_NEAR(instead.at("placements")[0].at("worst_level_dbm").get<double>(), std::max(lr, lm), 1e-9);
    EXPECT_EQ(instead.at("placements")[0].at("antennas").size(), 2u);
}

// At 600 MHz a wavelength is 0.5 m: the first candidate hangs 0.25 m over the middle of a square. A mast of 3 m has its
// far field from 2 D^2 / wavelength = 36 m on (IEEE Std 145), and so no point of the site in it.
TEST(Place, TellsTheNearFieldAndTheAreasOfTheBest) {
    const TemporaryFolder folder;
    const auto told = [&](const std::string &candidates) {
        return folder.write("s.json", scenario(R"("areas": [
 {"name": "left", "corners_m": [[0, 0], [3, 0], [3, 4], [0, 4]]},
 {"name": "right", "corners_m": [[3, 0], [6, 0], [6, 4], [3, 4]]}], "placing": {"antennas": 1, "least_headroom_db": 0,
 "candidates": [)" + candidates + "]}",
                                               chain("A", "", "-40")));
    };
    const std::string over = R"({"label": "over", "link": "A", "place": {"x_m": 2.5, "y_m": 1.5, "z_m": 1.25}})";
    const std::string away = R"({"label": "away", "link": "A", "place": {"x_m": 1, "y_m": 9, "z_m": 3}})";
    const std::string mast =
        R"({"label": "mast", "link": "A", "place": {"x_m": 1, "y_m": 12, "z_m": 3, "largest_dimension_m": 3}})";
    const std::string file = told(over + "," + away + "," + mast);
    const Json answer = json_of({"place", file, "S"});
    ASSERT_EQ(answer.at("placements").size(), 3u);
    EXPECT_EQ(answer.at("placements")[0].at("antennas")[0].at("label"), "over");
    EXPECT_EQ(answer.at("placements")[0].at("near_field"), 1);
    EXPECT_EQ(answer.at("placements")[1].at("near_field"), 0);
    EXPECT_EQ(answer.at("placements")[2].at("near_field"), 24);
    // the same words as of a map
    const std::string words = in_one_line(run({"place", file, "S"}).out);
    EXPECT_NE(words.find("NOTE: near field: 1 point lies nearer to an antenna than one wavelength, or than its pattern "
                         "needs to form, where levels do not hold"),
              std::string::npos)
        << words;
    EXPECT_NE(words.find("; 24 points in the near field of an antenna"), std::string::npos) << words;
    EXPECT_EQ(run({"place", told(away), "S"}).out.find("near field"), std::string::npos);
    // the areas are those of the best placement
    constexpr double weaker_db = -45.0;
    const Extremes left = extremes_of(0, 2, 3, 2.5, 1.5, 0.25), right = extremes_of(3, 5, 3, 2.5, 1.5, 0.25);
    EXPECT_NEAR(answer.at("areas")[0].at("worst").at("level_dbm").get<double>(), left.worst_dbm + weaker_db, 1e-9);
    EXPECT_NEAR(answer.at("areas")[1].at("worst").at("level_dbm").get<double>(), right.worst_dbm + weaker_db, 1e-9);
    EXPECT_EQ(answer.at("areas")[1].at("worst").at("serving"), "over");
    EXPECT_NE(words.find("Areas with placement 1 "), std::string::npos);
}

TEST(Place, RefusesMoreAntennasThanASiteHas) {
    std::string antennas;
    for (int i = 0; i < 32; ++i)
        antennas += (i == 0 ? "" : ", ") + (R"({"label": "a)" + std::to_string(i)) +
                    R"(", "link": "A", "place": {"x_m": )" + std::to_string(i) + R"(, "y_m": 9, "z_m": 3}})";
    const std::string placing = R"(, "placing": {"antennas": 1, "least_headroom_db": 0, "candidates": [
  {"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 7, "z_m": 3}}]})";
    const TemporaryFile file(scenario(R"("areas": )" + square + R"(, "antennas": [)" + antennas + "]" + placing));
    expect_refused(run({"place", file.path(), "S"}),
                   "sites[0].placing: this site has 32 antennas already, and a site has 32 at most");
    EXPECT_LE(run({"map", file.path(), "S"}).code, 1);
}

TEST(Place, SaysWhereEveryPlacementOverloads) {
    const TemporaryFile file(scenario(R"("areas": )" + square + R"(, "placing": {"antennas": 1,
 "least_headroom_db": 100, "candidates": [{"label": "l", "link": "A", "place": {"x_m": 0, "y_m": 0, "z_m": 2}}]})"));
    const Printout page = run({"place", file.path(), "S"});
    EXPECT_EQ(page.code, 1) << page.err;
    EXPECT_NE(page.out.find("every placement leaves some point less than 100 dB under the ceiling"), std::string::npos);
    const Json told = json_of({"place", file.path(), "S"});
    EXPECT_EQ(told.at("areas"), nullptr);
    EXPECT_EQ(told.at("missed_areas"), Json::array());
}

struct BadSite {
    const char *find;
    const char *put;
    const char *words;
};

// One line each, so that the column alone tells the place; the words name the path of the key.
TEST(SiteRefusals, NameTheKey) {
    const std::string good = plain_site(R"(, "screens": [{"label": "s", "from_m": [9, 0], "to_m": [9, 4], "top_m": 2}],
 "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 0.5, "corners_m": [[0, 0], [5, 0]]}],
 "wearer": {"facing": "antenna", "antenna": "a", "body_table": {"facing_deg": [0, 180], "loss_db": [1, 9]}},
 "placing": {"antennas": 1, "least_headroom_db": 0, "candidates": [
  {"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 7, "z_m": 3}}]})");
    const TemporaryFolder folder;
    EXPECT_EQ(run({"map", folder.write("good.json", good), "S"}).code, 0);
    const BadSite bad[] = {
        {R"("step_m": 1)", R"("step_m": 0)", "sites[0].step_m: 0 is out of range; allowed 0.01 to 1000"},
        {R"("step_m": 1)", R"("step": 1)", "sites[0].step: 'step' needs its unit: 'step_m', 'step_ft'"},
        {R"("pack_height_m": 1, )", "", "sites[0]: pack_height_m or pack_height_ft is missing"},
        {R"("pack_height_m": 1,)", R"("pack_height_m": 5000,)", "sites[0].pack_height_m: 5000 is out of range"},
        {R"("combining": "best of")", R"("combining": "vote")", "sites[0].combining: 'vote' is no way of combining"},
        {R"("direction": "outbound")", R"("direction": "up")", "sites[0].direction: 'up' is no direction"},
        {R"([[0, 0], [6, 0], [6, 4], [0, 4]])", R"([[0, 0], [6, 0]])",
         "sites[0].areas[0].corners_m: there must be 3 to 1024 corners; here stand 2"},
        {R"([[0, 0], [6, 0], [6, 4], [0, 4]])", R"([[0, 0], [3, 3], [6, 6]])",
         "sites[0].areas[0]: all corners lie on one line"},
        {R"([6, 4])", R"([6])", "sites[0].areas[0].corners_m[2]: a point is [x, y]; here stand 1 numbers"},
        {R"([6, 4])", R"([6, "4"])", "sites[0].areas[0].corners_m[2][1]: this must be a number, not a text"},
        {R"([6, 4])", R"([6, 2e6])", "sites[0].areas[0].corners_m[2][1]: 2000000 is out of range"},
        {R"("link": "A", "place": {"x_m": 1, "y_m": 2)", R"("link": "Q", "place": {"x_m": 1, "y_m": 2)",
         "sites[0].antennas[0].link: 'Q' is no link of this scenario"},
        {R"("z_m": 3}}])", R"("z_m": 3e7}}])", "sites[0].antennas[0].place.z_m: 30000000 is out of range"},
        {R"("top_m": 2)", R"("top_m": -2)", "sites[0].screens[0].top_m: -2 is not above bottom_m"},
        {R"("top_m": 2)", R"("top_m": 2, "loss_db": 500)",
         "sites[0].screens[0].loss_db: 500 is out of range; allowed 0.001 to 200"},
        {R"("top_m": 2)", R"("top_m": 2, "loss_db": 0)",
         "sites[0].screens[0].loss_db: 0 is out of range; allowed 0.001 to 200"},
        {R"("pack_height_m": 1,)", R"("pack_height_m": -1,)",
         "sites[0].pack_height_m: -1 lies under the floor, which is 0"},
        {R"("z_m": 3}}])", R"("z_m": -3}}])", "sites[0].antennas[0].place.z_m: -3 lies under the floor"},
        {R"([5, 0]])", R"([5, 0, -2]])", "sites[0].walks[0].corners_m[1][2]: -2 lies under the floor"},
        {R"("z_m": 3}}]})", R"("z_m": 3}, "rail_to_m": [1, 7, 3], "positions": 3}]})",
         "sites[0].placing.candidates[0].rail_to_m: the rail ends in the place where it begins"},
        {R"("to_m": [9, 4])", R"("to_m": [9, 0])",
         "sites[0].screens[0].to_m: both ends of this screen are in one place"},
        {R"("from_m": [9, 0], "to_m": [9, 4])", R"("from_m": [0, 2], "to_m": [3, 2], "bottom_m": 1)",
         ""}, // good: the antenna is above it
        {R"("from_m": [9, 0], "to_m": [9, 4], "top_m": 2)", R"("from_m": [0, 2], "to_m": [3, 2], "top_m": 3)",
         "sites[0].antennas[0].place: this antenna stands in the screen 's'"},
        {R"("antenna": "a")", R"("antenna": "b")", "sites[0].wearer.antenna: 'b' is no antenna of this site"},
        {R"("facing_deg": [0, 180])", R"("facing_deg": [180, 0])", "sites[0].wearer.body_table.facing_deg[1]: "},
        {R"("loss_db": [1, 9])", R"("loss_db": [1, 900])", "sites[0].wearer.body_table.loss_db[1]: "},
        {R"("speed_m_per_s": 1)", R"("speed_m_per_s": 0)", "sites[0].walks[0].speed_m_per_s: 0 is out of range"},
        {R"("antennas": 1, "least)", R"("antennas": 3, "least)",
         "sites[0].placing.antennas: 3 is out of range; allowed 1 to 2"},
        {R"("z_m": 3}}]})", R"("z_m": 3}, "positions": 3}]})",
         "sites[0].placing.candidates[0].positions: positions have a use only on a rail"},
        {R"("z_m": 3}}]})", R"("z_m": 3}, "rail_to_m": [1, 2], "positions": 3}]})",
         "sites[0].placing.candidates[0].rail_to_m: a point is [x, y, z]; here stand 2 numbers"},
        {R"("name": "W")", R"("nom": "W")", "sites[0].walks[0].nom: 'nom' is no key of a walk"},
        {R"("best of", )", R"("best of", "path": {"model": "two-ray", "polarization": "vertical",
 "relative_permittivity": 5, "transmit_height_m": 3}, )",
         "sites[0].path: the heights are those of the antennas and packs"},
        {R"("step_m": 1, )", R"("step_m": 1, "fading": {"model": "Rice", "k_db": 4}, )",
         "sites[0].fading: outage_percent is missing"},
    };
    for (const BadSite &one : bad) {
        SCOPED_TRACE(one.put);
        std::string text = good;
        const std::size_t at = text.find(one.find);
        ASSERT_NE(at, std::string::npos) << one.find;
        text.replace(at, std::string(one.find).size(), one.put);
        const std::string file = folder.write("bad.json", text);
        if (std::string(one.words).empty()) EXPECT_LE(run({"map", file, "S"}).code, 1);
        else expect_refused(run({"map", file, "S"}), one.words);
    }
}

TEST(SiteRefusals, OfQuestions) {
    const TemporaryFolder folder;
    const std::string file = folder.write("s.json", plain_site(R"(, "walks": [{"name": "W", "speed_m_per_s": 1,
 "step_m": 0.5, "corners_m": [[1, 1], [1, 1]]}])"));
    expect_refused(run({"map", file, "s2"}), "no site is named 's2'; the nearest is 'S'");
    expect_refused(run({"walk", file, "S", "V"}), "no walk is named 'V'");
    expect_refused(run({"walk", file, "S", "W"}), "sites[0].walks[0]: this walk has no length");
    expect_refused(run({"place", file, "S"}), "sites[0]: placing is missing");
    expect_refused(run({"place", file, "S", "--most", "0"}), "--most");
    expect_refused(run({"map", file, "S", "--csv", folder.path() + "/none/m.csv"}), "cannot be written");
    expect_refused(run({"map", file, "S", "--brief", "--json"}), "excludes");
    expect_refused(run({"map", DESK_TESTS "/good.json", "S"}), "has no sites");
    std::string wide = plain_site();
    wide.replace(wide.find("[6, 4], [0, 4]"), 14, "[6, 9e5], [0, 9e5]");
    expect_refused(run({"map", folder.write("w.json", wide), "S"}), "sites[0].step_m: this step makes 5400000 points");
}

TEST(SiteRefusals, OfOutputsThatWouldDestroyWhatIsRead) {
    const TemporaryFolder folder;
    const std::string table = folder.write("run.csv", "frequency_mhz,gain_db\n500,-3\n700,-4\n");
    std::string text = plain_site(R"(, "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 0.5,
 "corners_m": [[0, 0], [5, 0]]}])");
    const std::string power = R"({"kind": "source", "power_dbm": 5}, )";
    text.insert(text.find(power) + power.size(), R"({"kind": "passive", "gain_table": {"file": "run.csv"}}, )");
    const std::string file = folder.write("s.json", text), out = folder.path() + "/m.csv";
    const std::string once_more = folder.path() + "/none/../s.json";
    expect_refused(run({"map", file, "S", "--csv", file}), "the scenario is read from this file");
    expect_refused(run({"map", file, "S", "--pgm", once_more}), "the scenario is read from this file");
    expect_refused(run({"walk", file, "S", "W", "--csv", table}), "the scenario is read from this file");
    expect_refused(run({"map", file, "S", "--csv", out, "--pgm", folder.path() + "/./m.csv"}), "two outputs");
    expect_refused(run({"map", file, "S", "--csv", "-"}), "'-' is no file to write");
    EXPECT_EQ(read_file(file), text);
    EXPECT_EQ(read_file(table), "frequency_mhz,gain_db\n500,-3\n700,-4\n");
    EXPECT_EQ(run({"map", file, "S", "--csv", out}).code, 0);
    EXPECT_EQ(run({"map", file, "S", "--csv", out}).code, 0); // an answer may be written again
}

TEST(SiteRefusals, OfThePacksAntenna) {
    const TemporaryFolder folder;
    const auto refused = [&](const std::string &wearer, const std::string &words, const std::string &place = "") {
        const std::string text = scenario(
            R"("areas": )" + square + R"(, "antennas": [{"label": "a", "link": "A", "place": {"x_m": 1, "y_m": 2, )" +
            place + R"("z_m": 3}}])" + wearer);
        expect_refused(run({"map", folder.write("bad.json", text), "S"}), words);
    };
    const auto worn = [](const std::string &antenna, const std::string &more = "") {
        return R"(, "wearer": {"facing": "azimuth", "azimuth_deg": 0, )" + more + R"("pack_antenna": {)" + antenna +
               "}}";
    };
    refused(R"(, "wearer": {"facing": "azimuth", "azimuth_deg": 0})",
            "sites[0].wearer: body_table or pack_antenna is missing");
    refused(worn(R"("tilt_deg": 91)"), "sites[0].wearer.pack_antenna.tilt_deg: 91 is out of range; allowed -90 to 90");
    refused(worn(R"("x_m": 1)"), "sites[0].wearer.pack_antenna.x_m: 'x_m' is no key of a pack's antenna");
    refused(worn("", R"("most_polarization_loss_db": 0, )"),
            "sites[0].wearer.most_polarization_loss_db: 0 is out of range; allowed 0.001 to 200");
    refused(worn("", R"("in_place_of": "q", )"),
            "sites[0].wearer.in_place_of: no link of this site has an allowance with this label");
    refused(worn(R"("polarization_deg": 30, "pattern": {"kind": "half-wave dipole"})"),
            "sites[0].wearer.pack_antenna.polarization_deg: ");
    refused(worn(R"("pattern": {"kind": "cosine", "gain_dbi": 1})"), "sites[0].wearer.pack_antenna.pattern.gain_dbi: ");
    refused(R"(, "wearer": {"facing": "azimuth", "azimuth_deg": 0, "in_place_of": "q",
 "body_table": {"facing_deg": [0, 180], "loss_db": [1, 9]}})",
            "sites[0].wearer.in_place_of: 'in_place_of' is no key of a wearer without pack_antenna");
    refused("", "sites[0].antennas[0].place.polarization_deg: ", R"("polarization_deg": 45, )");
}

TEST(SiteRefusals, OfChainsThatDoNotFit) {
    const TemporaryFolder folder;
    const auto told = [&](const std::string &links, const std::string &antennas) {
        return run({"map",
                    folder.write("s.json", scenario(R"("areas": )" + square + R"(, "antennas": )" + antennas, links)),
                    "S"});
    };
    const std::string two = R"([{"label": "a", "link": "A", "place": {"x_m": 1, "y_m": 2, "z_m": 3}},
 {"label": "b", "link": "B", "place": {"x_m": 3, "y_m": 2, "z_m": 3}}])";
    expect_refused(told(chain("A") + "," + chain("B", "", "5", "700"), two),
                   "sites[0].antennas[1].link: this chain has 700 MHz; all chains of a site have one frequency");
    std::string deaf = chain("B");
    deaf.replace(deaf.find("-60"), 3, "-70");
    expect_refused(told(chain("A") + "," + deaf, two),
                   "sites[0].antennas[1].link: this chain's receiver has another window");
    const std::string placing = one_antenna + R"(, "placing": {"antennas": 1, "least_headroom_db": 0, "candidates": [
 {"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 9, "z_m": 3}},
 {"label": "d", "link": "B", "place": {"x_m": 1, "y_m": 8, "z_m": 3}}]})";
    const std::string other = chain("A") + "," + chain("B", "", "5", "700");
    expect_refused(
        run({"place", folder.write("p.json", scenario(R"("areas": )" + square + R"(, "antennas": )" + placing, other)),
             "S"}),
        "sites[0].placing.candidates[1].link: this chain has 700 MHz");
    std::string inbound = chain("A");
    inbound.insert(1, R"("direction": "inbound", )");
    expect_refused(told(inbound, one_antenna), "sites[0].antennas[0].link: link 'A' is inbound, the site is outbound");
    std::string shaded = chain("A");
    shaded.replace(shaded.find(R"({"kind": "air"})"), 15,
                   R"({"kind": "air", "path": {"model": "free space", "transmit_height_m": 3, "receive_height_m": 1,
 "edges": [{"distance_m": 5, "height_m": 3}]}})");
    expect_refused(told(shaded, one_antenna), "sites[0].antennas[0].link: link 'A' has edges in its path");
    expect_refused(told(chain("A", "", "500"), one_antenna), "links[0].stages[0].power_dbm: 500 is out of range");
    std::string two_same = one_antenna;
    two_same.insert(two_same.size() - 1, "," + one_antenna.substr(1, one_antenna.size() - 2));
    expect_refused(told(chain("A"), two_same), "sites[0].antennas[1].label: a second antenna named 'a'");
    std::string no_floor = chain("A");
    no_floor.replace(no_floor.find(R"("floor_dbm": -60, )"), 18, "");
    const std::string fading =
        folder.write("f.json", scenario(R"("areas": )" + square + R"(, "antennas": )" + one_antenna +
                                            R"(, "fading": {"model": "Rayleigh", "outage_percent": 1})",
                                        no_floor));
    expect_refused(run({"map", fading, "S"}), "sites[0].fading: an outage needs a floor");
    std::string walked = read_file(fading);
    walked.insert(walked.rfind("}]}"), R"(, "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 1,
 "corners_m": [[0, 0], [5, 0]]}])");
    expect_refused(run({"walk", folder.write("f.json", walked), "S", "W"}), "sites[0].fading: an outage needs a floor");
    const std::string quiet =
        folder.write("q.json", scenario(R"("areas": )" + square + R"(, "antennas": )" + one_antenna, no_floor));
    expect_refused(run({"map", quiet, "S", "--pgm", folder.path() + "/m.pgm"}), "state none");
    const Printout page = run({"map", quiet, "S"});
    EXPECT_EQ(page.code, 1) << page.err;
    EXPECT_NE(page.out.find("no floor is stated"), std::string::npos);
}

// Whatever number stands there: an answer, or a refusal in one line with file, line and column.
TEST(SiteMutations, AnyNumberIsAnsweredOrRefused) {
    const std::string good = plain_site(R"(, "screens": [{"label": "s", "from_m": [9, 0], "to_m": [9, 4], "top_m": 2}],
 "walks": [{"name": "W", "speed_m_per_s": 1, "step_m": 0.5, "corners_m": [[0, 0], [5, 0, 2]]}],
 "wearer": {"facing": "point", "point_m": [3, 3], "body_table": {"facing_deg": [0, 180], "loss_db": [1, 9]},
  "pack_antenna": {"roll_deg": 20, "ellipticity": 0.25}, "most_polarization_loss_db": 30},
 "path": {"model": "two-ray", "polarization": "vertical", "relative_permittivity": 5},
 "fading": {"model": "Suzuki", "standard_deviation_db": 4, "outage_percent": 2},
 "placing": {"antennas": 1, "least_headroom_db": 0, "candidates": [
  {"label": "c", "link": "A", "place": {"x_m": 1, "y_m": 7, "z_m": 3}, "rail_to_m": [5, 7, 3], "positions": 3}]})");
    const TemporaryFolder folder;
    const std::regex number("[-0-9.]+"), place("levelbook-desk: [^:]*:[0-9]+:[0-9]+: .+\n");
    int answered = 0, refused = 0;
    for (std::sregex_iterator
             it(good.begin() + static_cast<std::ptrdiff_t>(good.find("\"sites\"")), good.end(), number),
         end;
         it != end; ++it)
        for (const char *put : {"0", "-7", "1e6", "1e-9", "1e300"}) {
            const std::size_t at = static_cast<std::size_t>(it->position()) + good.find("\"sites\"");
            std::string text = good;
            text.replace(at, static_cast<std::size_t>(it->length()), put);
            const std::string file = folder.write("s.json", text);
            for (const std::vector<std::string> &words :
                 {std::vector<std::string>{"map", file, "S"}, {"walk", file, "S", "W"}, {"place", file, "S"}}) {
                const Printout told = run(words);
                if (told.code == 0 || told.code == 1) {
                    EXPECT_FALSE(told.out.empty());
                    ++answered;
                    continue;
                }
                EXPECT_EQ(told.code, 2) << text;
                EXPECT_TRUE(std::regex_match(told.err, place)) << told.err << text;
                ++refused;
            }
        }
    EXPECT_GT(answered, 50);
    EXPECT_GT(refused, 50);
}

TEST(SiteReadme, ItsSiteIsMapped) {
    const std::string document = read_file(DESK_SOURCES "/README.md");
    const auto block = [&](const char *beginning) {
        const std::size_t at = document.find(beginning), end = document.find("```", at);
        return document.substr(at, end - at);
    };
    std::string text = block("{\n  \"production\": \"Nine Tin Herons\"");
    text = text.substr(0, text.rfind('}')) + "," + block("\"sites\": [") + "}";
    const TemporaryFile file(text);
    EXPECT_LE(run({"map", file.path(), "arena"}).code, 1) << run({"map", file.path(), "arena"}).err;
    EXPECT_LE(run({"walk", file.path(), "arena", "down the thrust"}).code, 1);
    EXPECT_LE(run({"place", file.path(), "arena"}).code, 1);
}

void collect_keys(const Json &value, std::set<std::string> &keys) {
    if (value.is_object())
        for (const auto &[key, member] : value.items()) keys.insert(key);
    for (const Json &member : value)
        if (member.is_structured()) collect_keys(member, keys);
}

TEST(SiteReadme, EveryFieldIsDocumented) {
    const std::string site = "arena, hand microphones", document = read_file(DESK_SOURCES "/README.md");
    std::set<std::string> keys;
    collect_keys(json_of({"map", demo_file(), site}), keys);
    collect_keys(json_of({"walk", demo_file(), site, "past the left paddle"}), keys);
    collect_keys(json_of({"place", demo_file(), site}), keys);
    collect_keys(json_of({"map", demo_file(), "arena, monitors A"}), keys); // with a wearer
    const TemporaryFile fading(plain_site(R"(, "fading": {"model": "Rayleigh", "outage_percent": 1},
 "walks": [{"name": "W", "speed_m_per_s": 2, "step_m": 0.5, "corners_m": [[2, 2], [90, 2]]}])"));
    collect_keys(json_of({"map", fading.path(), "S"}), keys);
    collect_keys(json_of({"walk", fading.path(), "S", "W"}), keys);
    EXPECT_GT(keys.size(), 50u);
    for (const std::string &key : keys) EXPECT_NE(document.find("`" + key + "`"), std::string::npos) << key;
}

} // namespace
} // namespace desk_test
