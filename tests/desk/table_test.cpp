// Tables in files: what the standard says of Touchstone, what RFC 4180 says of CSV, and what is refused at which line.
//
// Source of the rules: IBIS Open Forum, Touchstone File Format Specification, versions 1.1 (2002), 2.0 (2009) and 2.1
// (2024); known from a public copy of 1.1 and from public summaries of 2.0 and 2.1. RFC 4180 from memory. Decibels are
// those of round numbers: 20 log10(0.5) = -6.0206, 20 log10(0.1) = -20 (IEC 60027-3). Files that a general RF network
// library reads too are compared with it in table_files_test.py.
#include "run.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>

namespace desk_test {
namespace {

struct Rows {
    std::string origin; // behind the # of the first line
    std::string header;
    std::vector<double> frequency_mhz;
    std::vector<double> values;
};

Rows rows_of(const Printout &table) {
    EXPECT_EQ(table.code, 0) << table.err;
    EXPECT_EQ(table.err, "");
    const std::vector<std::string> lines = lines_of(table.out);
    Rows rows;
    if (lines.size() < 2) return rows;
    rows.origin = lines[0];
    rows.header = lines[1];
    for (std::size_t i = 2; i < lines.size(); ++i) {
        char *rest = nullptr;
        rows.frequency_mhz.push_back(std::strtod(lines[i].c_str(), &rest));
        EXPECT_EQ(*rest, ',') << lines[i];
        rows.values.push_back(std::strtod(rest + 1, nullptr));
    }
    return rows;
}

Rows table(const std::string &name, const std::string &text, const std::string &parameter = "") {
    const TemporaryFolder folder;
    std::vector<std::string> arguments = {"table", folder.write(name, text)};
    if (!parameter.empty()) arguments.insert(arguments.end(), {"--parameter", parameter});
    return rows_of(run(arguments));
}

// The one gain of a file of one frequency.
double gain(const std::string &name, const std::string &text, const std::string &parameter = "") {
    const Rows rows = table(name, text, parameter);
    EXPECT_EQ(rows.values.size(), 1u) << text;
    return rows.values.empty() ? std::nan("") : rows.values.front();
}

constexpr double near = 1e-9;
const double half = -6.020599913279624; // 20 log10(1/2), to 16 digits

// ---- Touchstone, version 1 ----

TEST(Touchstone, OptionLineInAnyOrderAndCaseWithItsDefaults) {
    const std::string data = "\n0.5 0 0 0.5 30 1 0 0 0\n";
    // GHz S MA R 50 where nothing is said
    for (const char *options :
         {"#", "# GHz S MA R 50", "# r 50 ma s ghz", "#\tMa", "# GHZ", "# R 50", "# s R 50.0 gHz", "#GHz S MA R 50"}) {
        const Rows rows = table("x.s2p", options + data);
        ASSERT_EQ(rows.values.size(), 1u) << options;
        EXPECT_DOUBLE_EQ(rows.frequency_mhz[0], 500.0) << options;
        EXPECT_NEAR(rows.values[0], half, near) << options;
        EXPECT_EQ(rows.origin, "# x.s2p, s21, 50 ohm") << options;
        EXPECT_EQ(rows.header, "frequency_mhz,gain_db");
    }
    for (const auto &[unit, mhz] :
         std::vector<std::pair<std::string, double>>{{"hz", 0.0000005}, {"kHz", 0.0005}, {"MHZ", 0.5}, {"Ghz", 500.0}})
        EXPECT_DOUBLE_EQ(table("x.s2p", "# " + unit + data).frequency_mhz.at(0), mhz);
    EXPECT_EQ(table("x.s2p", "# R 75" + data).origin, "# x.s2p, s21, 75 ohm");
}

TEST(Touchstone, Formats) {
    EXPECT_NEAR(gain("x.s2p", "# DB\n1 0 0 -3.25 30 1 0 0 0\n"), -3.25, 0.0);
    EXPECT_NEAR(gain("x.s2p", "# MA\n1 0 0 0.1 -170 1 0 0 0\n"), -20.0, near);
    EXPECT_NEAR(gain("x.s2p", "# RI\n1 0 0 0.3 -0.4 1 0 0 0\n"), half, near); // 3, 4, 5
}

// Version 1.1, "1 and 2 Port networks": 21 stands before 12.
TEST(Touchstone, TwoPortsStandColumnByColumn) {
    const std::string file = "# DB\n1 -1 0 -2 0 -3 0 -4 0\n";
    EXPECT_EQ(gain("x.s2p", file, "s11"), -1.0);
    EXPECT_EQ(gain("x.s2p", file), -2.0);
    EXPECT_EQ(gain("x.s2p", file, "S21"), -2.0);
    EXPECT_EQ(gain("x.s2p", file, "s12"), -3.0);
    EXPECT_EQ(gain("x.s2p", file, "s22"), -4.0);
    EXPECT_EQ(gain("x.S2P", file, "s2_1"), -2.0);
    EXPECT_EQ(gain("x.s1p", "# DB\n1 -1 0\n", "s11"), -1.0);
}

// "3-port and 4-port networks" and above: row by row, at most four pairs in a line, each row on a new line.
TEST(Touchstone, MorePortsStandRowByRow) {
    const std::string three = "# DB R 50\n1 -11 0 -12 0 -13 0\n -21 0 -22 0 -23 0\n -31 0 -32 0 -33 0\n";
    for (const char *name : {"11", "12", "13", "21", "22", "23", "31", "32", "33"})
        EXPECT_EQ(gain("x.s3p", three, std::string("s") + name), -std::atof(name));
    std::string twelve = "# DB\n7";
    for (int row = 1; row <= 12; ++row)
        for (int column = 1; column <= 12; ++column) {
            if (column % 4 == 1 && row * column > 1) twelve += "\n";
            twelve += " -" + std::to_string(100 * row + column) + " 0";
        }
    EXPECT_EQ(gain("x.s12p", twelve), -201.0);
    EXPECT_EQ(gain("x.s12p", twelve, "s9_8"), -908.0);
    EXPECT_EQ(gain("x.s12p", twelve, "s98"), -908.0);
    EXPECT_EQ(gain("x.s12p", twelve, "s12_3"), -1203.0);
    EXPECT_EQ(table("x.s12p", twelve, "s12_3").origin, "# x.s12p, s12_3, 50 ohm");
}

// Pairs are never cut by a line's end, and nothing else is told by lines (a maintainer of the checker of the standard).
TEST(Touchstone, LinesMayEndAfterAnyPair) {
    EXPECT_EQ(gain("x.s2p", "# DB\n1 -1 0 -2 0\n-3 0 -4 0\n"), -2.0);
    EXPECT_EQ(gain("x.s2p", "# DB\n1\n-1 0\n-2 0\n-3 0 -4 0\n"), -2.0);
    EXPECT_EQ(table("x.s2p", "# DB\n1 -1 0\n-2 0\n-3 0\n-4 0\n2 0 0 -7 0 0 0 0 0\n").values,
              (std::vector<double>{-2.0, -7.0}));
}

TEST(Touchstone, CommentsLineEndsAndBlanks) {
    const Rows plain = table("x.s2p", "# DB MHz\n1 0 0 -1 0 0 0 0 0\n2 0 0 -2 0 0 0 0 0\n");
    EXPECT_EQ(plain.values, (std::vector<double>{-1.0, -2.0}));
    for (const char *text :
         {"! a\n!# RI\n\n# DB MHz ! GHz\n! b\n1 0 0 -1 0 0 0 0 0!c\n!3 0 0 0 0 0 0 0 0\n2 0 0 -2 0 0 0 0 0",
          "# DB MHz\r\n1 0 0 -1 0 0 0 0 0\r\n\r\n2 0 0 -2 0 0 0 0 0\r\n",
          "# DB MHz\r1 0 0 -1 0 0 0 0 0\r2 0 0 -2 0 0 0 0 0\r",
          "\t# \t DB\tMHz  \n\t 1\t0 0 -1.0 +0 0 0 0 0 \n  2e0 0 0 -0.2e1 0 0 0 0 0\t",
          "\xEF\xBB\xBF! gr\xC3\xBC\xC3\x9F\n# DB MHz\n1 0 0 -1 0 0 0 0 0\n2 0 0 -2 0 0 0 0 0\n"}) {
        const Rows rows = table("x.s2p", text);
        EXPECT_EQ(rows.values, plain.values) << text;
        EXPECT_EQ(rows.frequency_mhz, plain.frequency_mhz) << text;
    }
}

// Version 1.1: option lines after the first one are ignored.
TEST(Touchstone, OnlyTheFirstOptionLineCounts) {
    EXPECT_EQ(gain("x.s2p", "# DB MHz\n# RI Hz\n1 0 0 -1 0 0 0 0 0\n# Y\n"), -1.0);
}

// Version 1.1, "Adding Noise Parameters": the lowest noise frequency is at most the highest network frequency.
TEST(Touchstone, NoiseDataAreLeftOut) {
    // Example 8 of version 1.1 with its published numbers.
    const Rows rows = table("x.s2p", "!2-port network, S-parameter and noise data\n# GHZ S MA R 50\n"
                                     "2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n"
                                     "! NOISE PARAMETERS\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n");
    EXPECT_EQ(rows.frequency_mhz, (std::vector<double>{2000.0, 22000.0}));
    EXPECT_NEAR(rows.values.at(0), 11.0534, 5e-5); // 20 log10 3.57
    EXPECT_NEAR(rows.values.at(1), 2.2789, 5e-5);  // 20 log10 1.30
    EXPECT_EQ(gain("x.s2p", "# DB\n4 0 0 -2 0 0 0 0 0\n4 .7 .64 69 .38\n"), -2.0);
}

// Version 1.1 of the option line, defined in the document of version 2.1: one resistance for each port.
TEST(Touchstone, ResistanceOfEachPort) {
    const std::string three = "\n1 0 0 0 0 0 0\n-2 0 0 0 0 0\n0 0 0 0 0 0\n";
    EXPECT_EQ(table("x.s3p", "# DB R 50 75 0.01" + three).origin, "# x.s3p, s21, 50 to 75 ohm");
    EXPECT_EQ(table("x.s3p", "# DB R 50 75 0.01" + three, "s31").origin, "# x.s3p, s31, 50 to 0.01 ohm");
}

// ---- Touchstone, version 2 ----

const std::string head = "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n"
                         "[Number of Frequencies] 1\n";

std::string in_head(const std::string &right, const std::string &wrong, const std::string &rest) {
    std::string text = head;
    const std::size_t at = text.find(right);
    EXPECT_NE(at, std::string::npos) << right;
    return text.replace(at, right.size(), wrong) + rest;
}

TEST(Touchstone2, OrderOfTwoPorts) {
    const std::string data = "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[End]\n";
    EXPECT_EQ(gain("x.s2p", head + data), -2.0);
    EXPECT_EQ(gain("x.ts", head + data, "s12"), -3.0);
    EXPECT_EQ(gain("x.ts", in_head("21_12", "12_21", data)), -3.0);
    EXPECT_EQ(gain("x.ts", in_head("21_12", "12_21", data), "s12"), -2.0);
    EXPECT_EQ(gain("x.ts", in_head("21_12", "12_21", data), "s22"), -4.0);
}

TEST(Touchstone2, HalfMatricesAreSymmetric) {
    const std::string three = "[Version] 2.0\n# MHz DB\n[Number of Ports] 3\n[Number of Frequencies] 2\n";
    const std::string lower = three + "[Matrix Format] Lower\n[Network Data]\n1 -11 0\n-21 0 -22 0\n-31 0 -32 0 -33 0\n"
                                      "2 -11 0\n-21 0 -22 0\n-31 0 -32 0 -33 0\n[End]\n";
    const std::string upper = three + "[Matrix Format] UPPER\n[Network Data]\n1 -11 0 -21 0 -31 0\n-22 0 -32 0\n-33 0\n"
                                      "2 -11 0 -21 0 -31 0\n-22 0 -32 0\n-33 0\n[End]\n";
    for (const std::string &text : {lower, upper})
        for (const auto &[name, value] : std::vector<std::pair<std::string, double>>{{"s11", -11},
                                                                                     {"s12", -21},
                                                                                     {"s21", -21},
                                                                                     {"s13", -31},
                                                                                     {"s31", -31},
                                                                                     {"s22", -22},
                                                                                     {"s23", -32},
                                                                                     {"s32", -32},
                                                                                     {"s33", -33}})
            EXPECT_EQ(table("x.ts", text, name).values, (std::vector<double>{value, value})) << name << "\n" << text;
    const std::string two = "[Matrix Format] Lower\n[Network Data]\n1 -1 0\n-2 0 -4 0\n";
    EXPECT_EQ(gain("x.ts", head + two), -2.0);
    EXPECT_EQ(gain("x.ts", in_head("21_12", "12_21", two), "s12"), -2.0);
}

TEST(Touchstone2, ReferenceOverridesTheOptionLine) {
    const std::string data = "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n";
    for (const char *reference : {"[Reference] 75 60\n", "[reference]\n75 60\n", "[ Reference ] 75\n ! port 2\n60\n"})
        EXPECT_EQ(table("x.ts", head + reference + data).origin, "# x.ts, s21, 75 to 60 ohm") << reference;
    EXPECT_EQ(table("x.ts", head + "[Reference] 75 75\n" + data).origin, "# x.ts, s21, 75 ohm");
}

TEST(Touchstone2, NoiseInformationAndEnd) {
    EXPECT_EQ(gain("x.ts", head +
                               "[Number of Noise Frequencies] 2\n[Begin Information]\n[Owner] who?\n# RI\n1 2 3\n"
                               "[End\n[End Information]\n[Matrix Format] full\n[NETWORK DATA]\n"
                               "1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n0.5 1 .1 0 .5\n7 2 .1 0 .5\n[End]\n! the end\n"),
              -2.0);
    // Version 2.0 does not say that [End] must stand; 2.1 does.
    EXPECT_EQ(gain("x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n"), -2.0);
    EXPECT_EQ(gain("x.ts", in_head("2.0", "2.1", "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[End]")), -2.0);
    // Nothing but [Network Data] tells the noise of version 2: frequencies rise into the next section.
    EXPECT_EQ(gain("x.s1p",
                   "! c\n[Version] 2.0\n# DB\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network "
                   "Data]\n1 -1 0\n[End]\n",
                   "s11"),
              -1.0);
}

// ---- CSV ----

TEST(Csv, ColumnsInAnyOrderAndUnit) {
    EXPECT_EQ(table("x.csv", "frequency_mhz,gain_db\n470,-2.5\n480,3\n").values, (std::vector<double>{-2.5, 3.0}));
    EXPECT_EQ(table("x.CSV", "loss_db,frequency_mhz\n2.5,470\n").values, (std::vector<double>{-2.5}));
    for (const char *text : {"frequency_hz,gain_db\n470e6,1", "frequency_khz,gain_db\n470000,1",
                             "frequency_mhz,gain_db\n470,1", "frequency_ghz,gain_db\n0.47,1"})
        EXPECT_NEAR(table("x.csv", text).frequency_mhz.at(0), 470.0, 1e-12) << text;
    EXPECT_EQ(table("x.csv", "frequency_mhz,gain_dbi\n470,6\n").header, "frequency_mhz,gain_dbi");
    const Rows dipoles = table("x.csv", "frequency_mhz,gain_dbd\n470,0\n");
    EXPECT_EQ(dipoles.header, "frequency_mhz,gain_dbi");
    EXPECT_NEAR(dipoles.values.at(0), 2.15, 0.005); // a half-wave dipole, as ITU-R BS.561 rounds it
    const Rows cable = table("x.csv", "frequency_mhz,attenuation_db_per_100ft\n470,3.048\n");
    EXPECT_EQ(cable.header, "frequency_mhz,attenuation_db_per_100m");
    EXPECT_NEAR(cable.values.at(0), 10.0, 1e-12); // 1 ft is 0.3048 m
}

TEST(Csv, QuotesCommentsAndLineEnds) {
    const std::vector<double> expected = {-2.5, 3.0};
    for (const char *text : {"# of today\n\n  # more\nfrequency_mhz,gain_db\n\n470,-2.5\n# here\n480,3\n\n",
                             "frequency_mhz,gain_db\r\n470,-2.5\r\n480,3\r\n", "frequency_mhz,gain_db\r470,-2.5\r480,3",
                             "\xEF\xBB\xBF\"frequency_mhz\" , \"gain_db\"\n \"470\",\"-2.5\" \n\t480 , +3.0\t\n",
                             "frequency_mhz,gain_db,note\n470,-2.5,\"a, \"\"b\"\"\n# no comment\"\n480,3,\n",
                             "note,frequency_mhz,gain_db\n\"#1\",470,-25e-1\nx,480,.3e1\n"}) {
        const Rows rows = table("x.csv", text);
        EXPECT_EQ(rows.values, expected) << text;
        EXPECT_EQ(rows.frequency_mhz, (std::vector<double>{470.0, 480.0})) << text;
    }
}

TEST(Csv, PointsAndCommasDoNotDependOnTheLocale) {
    setenv("LC_ALL", "de_DE.UTF-8", 1);
    EXPECT_EQ(table("x.csv", "frequency_mhz,gain_db\n470.5,-2.5\n").values, (std::vector<double>{-2.5}));
    unsetenv("LC_ALL");
}

TEST(TableCommand, WhatItPrintsIsReadBackTheSame) {
    const TemporaryFolder folder;
    for (const std::string &name : demo_tables()) {
        const Printout first = run({"table", DESK_SOURCES "/demo/" + name});
        const Rows rows = rows_of(first);
        EXPECT_GE(rows.values.size(), 5u) << name;
        const Printout second = run({"table", folder.write("again.csv", first.out)});
        EXPECT_EQ(first.out.substr(first.out.find('\n')), second.out.substr(second.out.find('\n')));
    }
}

// ---- In a scenario ----

// good.json with a filter whose table stands in a file, and a cable.
std::string scenario(const std::string &filter, const std::string &cable) {
    std::string text = read_file(DESK_TESTS "/good.json");
    const std::string stage = "{ \"kind\": \"cable\", \"cable_type\": \"RG-213/U\", \"length_m\": 10 },";
    const std::size_t at = text.find(stage);
    EXPECT_NE(at, std::string::npos);
    text.replace(at, stage.size(),
                 "{ \"kind\": \"passive\", \"gain_table\": " + filter +
                     " },\n        { \"kind\": \"cable\", \"length_m\": 10, \"attenuation_table\": " + cable + " },");
    return text;
}

const std::string filter_file = "# MHz DB\n500 0 0 -1 0 -5 0 0 0\n700 0 0 -2 0 -7 0 0 0\n";
const std::string cable_file = "frequency_ghz,attenuation_db_per_100m\n0.6,20\n";
const std::string by_csv = R"({"file": "parts/cable.csv"})";

Printout budget(const std::string &filter, const std::string &cable = by_csv,
                const std::string &filter_text = filter_file, const std::string &cable_text = cable_file) {
    const TemporaryFolder folder;
    EXPECT_EQ(std::system(("mkdir '" + folder.path() + "/parts'").c_str()), 0);
    folder.write("filter.s2p", filter_text);
    folder.write("filter.csv", "frequency_mhz,loss_db\n500,1\n700,2\n");
    folder.write("parts/cable.csv", cable_text);
    Printout page = run({"budget", folder.write("scenario.json", scenario(filter, cable))});
    for (std::string *text : {&page.out, &page.err})
        for (std::size_t at; (at = text->find(folder.path() + "/")) != std::string::npos;)
            text->erase(at, folder.path().size() + 1);
    return page;
}

TEST(TableInScenario, StandsBesideTheScenario) {
    // Half way between -1 dB at 500 and -2 dB at 700 MHz; 10 m of 20 dB/100 m.
    const Printout page = budget(R"({"file": "filter.s2p"})");
    EXPECT_EQ(page.code, 0) << page.err;
    for (const char *words :
         {"between 500 MHz -1 dB gain and 700 MHz -2 dB gain: -1.500", "table from: filter.s2p, s21,",
          "own table 10 m x 20.000 dB/100 m = 2.000 dB", "table from: cable.csv"})
        EXPECT_NE(page.out.find(words), std::string::npos) << words << "\n" << page.out;
    // -5 and -7 dB the other way
    EXPECT_NE(budget(R"({"file": "filter.s2p", "parameter": "s12", "source": "our analyser"})").out.find("-6.000"),
              std::string::npos);
    EXPECT_NE(budget(R"({"file": "filter.csv"})").out.find("between 500 MHz 1 dB loss and 700 MHz 2 dB loss: 1.500 dB"),
              std::string::npos);
}

TEST(TableInScenario, RefusalsInTheScenario) {
    const auto refused = [](const std::string &filter, const std::string &words) {
        expect_refused(budget(filter), "scenario.json:15:" + words);
    };
    refused(R"({"file": "filter.s3p"})",
            "53: links[0].stages[1].gain_table.file: filter.s3p: cannot be opened: No such file");
    refused(R"({"file": "parts"})",
            "53: links[0].stages[1].gain_table.file: 'parts' is no name of a table: it must end in");
    refused(R"({"file": "filter.s2p", "parameter": "s2"})",
            "80: links[0].stages[1].gain_table.parameter: 's2' is no parameter; write s21 for the way from port 1");
    refused(R"({"file": "filter.s2p", "parameter": "s11"})",
            "80: links[0].stages[1].gain_table.parameter: s11 is a reflection; a stage's gain leads from one port");
    refused(R"({"file": "filter.csv", "parameter": "s21"})",
            "67: links[0].stages[1].gain_table.parameter: only a Touchstone file has parameters");
    refused(R"({"file": "filter.csv", "loss_db": [1]})",
            "67: links[0].stages[1].gain_table.loss_db: the columns of this table stand in its file; give one of them");
    refused(R"({"file": "filter.s2p\u0000.csv"})",
            "53: links[0].stages[1].gain_table.file: 'filter.s2p?.csv' is no name");
    refused(R"({"file": 7})", "53: links[0].stages[1].gain_table.file: this must be a text, not a number");
    expect_refused(
        budget(R"({"file": "filter.csv"})", R"({"file": "filter.s2p"})"),
        "scenario.json:16:74: links[0].stages[2].attenuation_table.file: a Touchstone file holds gains in dB; "
        "this table takes attenuation_db_per_100m");
    expect_refused(budget(R"({"file": "filter.s2p"})", by_csv, "# MHz DB\n500 0 0 -1 0 0 0 0 0\n"),
                   "scenario.json:15:44: links[0].stages[1].gain_table: the link's 600 MHz lie outside this table; it "
                   "serves 500 to 500 MHz; in link 'A', 'passive'");
}

TEST(TableInScenario, RefusalsInTheFile) {
    // What the library does not accept of a row is told where the row stands.
    expect_refused(
        budget(R"({"file": "filter.s2p"})", by_csv, "# MHz DB\n500 0 0 -1 0 0 0 0 0\n700 0 0 0.5 0 0 0 0 0\n"),
        "levelbook-desk: filter.s2p:3:9: gain_db[1]: 0.5 is out of range; allowed -200 to 0 (used in "
        "links[0].stages[1]); in link 'A', 'passive'");
    expect_refused(budget(R"({"file": "filter.s2p"})", by_csv, "# MHz DB\n0 0 0 -1 0 0 0 0 0\n700 0 0 -2 0 0 0 0 0\n"),
                   "levelbook-desk: filter.s2p:2:1: frequency_mhz[0]: 0 is out of range; allowed 0.001 to 1000000");
    expect_refused(
        budget(R"({"file": "filter.csv"})", by_csv, filter_file, "frequency_mhz,attenuation_db_per_100m\n1,20\n2,90\n"),
        "levelbook-desk: parts/cable.csv:3:3: attenuation_db_per_100m[1]: 90 is too far from the row before it");
    expect_refused(budget(R"({"file": "filter.csv"})", by_csv, filter_file, "frequency_mhz,loss_db\n1,20\n"),
                   "levelbook-desk: parts/cable.csv:1:15: loss_db: 'loss_db' is no key of this table");
    expect_refused(budget(R"({"file": "filter.s2p"})", by_csv, "# MHz DB\n500 0 0 -1 0 0 0 0 x\n"),
                   "levelbook-desk: filter.s2p:2:20: 'x' is no number");
}

// ---- Malformed files, each with its whole message ----

struct Malformed {
    const char *name;
    std::string text;
    const char *message; // behind the file's name
};

void expect_malformed(const std::vector<Malformed> &files) {
    for (const Malformed &file : files) {
        const TemporaryFolder folder;
        const std::string path = folder.write(file.name, file.text);
        const Printout refused = run({"table", path});
        expect_refused(refused, "");
        EXPECT_EQ(refused.err, "levelbook-desk: " + path + ":" + file.message + "\n") << file.text;
        EXPECT_EQ(refused.out, "");
    }
}

TEST(Touchstone, MalformedFilesOfVersion1) {
    const std::string v1 = "# MHz S RI R 50\n";
    expect_malformed({
        {"x.s2p", "", "1:1: the file ends before its option line"},
        {"x.s2p", "! nothing\n", "2:1: the file ends before its option line"},
        {"x.s2p", "1 0 0 .5 0 .5 0 0 0\n",
         "1:1: the option line must come first, as in # GHz S MA R 50 (these are its defaults)"},
        {"x.s2p", "#\n! no data\n", "3:1: the file ends before its first frequency"},
        {"x.ts", v1 + "1 0 0 .5 0 .5 0 0 0\n",
         "2:1: the number of ports is not told; name the file by it: .s2p for 2 ports"},
        {"x.s2p", "# THz\n1 0 0 .5 0 .5 0 0 0\n",
         "1:3: 'THz' is no word of an option line; it holds a unit (Hz, kHz, MHz, GHz), S, a format (DB, MA, RI), and "
         "R with ohms"},
        {"x.s2p", "# MHz Y RI\n1 0 0 .5 0 .5 0 0 0\n",
         "1:7: this file holds Y-parameters; only S-parameters are a gain, so convert it first"},
        {"x.s2p", "# g GHz\n1 0 0 .5 0 .5 0 0 0\n",
         "1:3: this file holds g-parameters; only S-parameters are a gain, so convert it first"},
        {"x.s2p", "# MHz GHz\n1 0 0 .5 0 .5 0 0 0\n", "1:7: 'GHz' says again what this line has said"},
        {"x.s2p", "# RI MHz ma\n1 0 0 .5 0 .5 0 0 0\n", "1:10: 'ma' says again what this line has said"},
        {"x.s2p", "# R 50 R 75\n1 0 0 .5 0 .5 0 0 0\n", "1:8: 'R' says again what this line has said"},
        {"x.s2p", "# MHz R\n1 0 0 .5 0 .5 0 0 0\n", "1:7: R needs a number of ohms behind it"},
        {"x.s2p", "# R 0\n1 0 0 .5 0 .5 0 0 0\n", "1:5: a reference must be more than 0 ohm"},
        {"x.s2p", "# R -50 S\n1 0 0 .5 0 .5 0 0 0\n", "1:5: a reference must be more than 0 ohm"},
        {"x.s2p", "# R 50 75 S\n1 0 0 .5 0 .5 0 0 0\n",
         "1:8: R takes one number of ohms, or at the end of the line one for each port"},
        {"x.s3p", "# S R 50 75\n1 0 0 .5 0 .5 0 0 0\n",
         "1:10: R takes one number of ohms, or at the end of the line one for each port"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 0\n",
         "2:1: here 8 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 0 0 0\n",
         "2:1: here 10 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0\n2 0 0 .5 0 .5 0 0 0\n", "2:1: this frequency has 7 of its 9 numbers"},
        {"x.s2p", v1 + "1 0 0 .5 0\n2 0 0 .5 0 .5 0 0 0\n", "2:1: this frequency has 5 of its 9 numbers"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 0 0\n2 0 0 .5 0 .5 0\n", "3:1: this frequency has 7 of its 9 numbers"},
        {"x.s2p", v1 + "0 0 .5 0\n1 0 0 .5 0 .5 0 0 0\n",
         "2:1: here 4 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 0 0\n0 0 .5 0\n",
         "3:1: here 4 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 zero 0\n", "2:17: 'zero' is no number"},
        {"x.s2p", v1 + "1,0 0 0 .5 0 .5 0 0 0\n", "2:1: '1,0' is no number"},
        {"x.s2p", v1 + "1 0 0 nan 0 .5 0 0 0\n", "2:7: 'nan' is no number"},
        {"x.s2p", v1 + "1 0 0 1e999 0 .5 0 0 0\n", "2:7: '1e999' is no number"},
        {"x.s2p", v1 + "1 0 0 0x1 0 .5 0 0 0\n", "2:7: '0x1' is no number"},
        {"x.s2p", v1 + "1 0 0 +-1 0 .5 0 0 0\n", "2:7: '+-1' is no number"},
        {"x.s2p", v1 + "1 0 0 0 0 .5 0 0 0\n", "2:7: s21 is 0 here, which is no number of decibels"},
        {"x.s2p", "# MA\n1 0 0 -.5 0 .5 0 0 0\n", "2:7: a magnitude is not below 0"},
        {"x.s2p", "# MA\n1 0 0 0 0 .5 0 0 0\n", "2:7: s21 is 0 here, which is no number of decibels"},
        {"x.s2p", v1 + "2 0 0 .5 0 .5 0 0 0\n1 0 0 .5 0 .5 0 0 0\n",
         "3:1: frequency_mhz[1]: 1 is lower than the row before it; frequencies must rise"},
        {"x.s2p", v1 + "1 0 0 .5 0 .5 0 0 0\n1 0 0 .5 0 .5 0 0 0\n",
         "3:1: frequency_mhz[1]: 1 stands in the row before it too"},
        {"x.s2p", v1 + "2 0 0 .5 0 .5 0 0 0\n1 1 .1 0 .5\n1 1 .1 0 .5\n",
         "4:1: the frequencies of the noise data must rise"},
        {"x.s2p", v1 + "2 0 0 .5 0 .5 0 0 0\n1 1 .1 0 .5\n3 0 0 .5 0 .5 0 0 0\n",
         "4:12: from here on there are more than the 5 numbers of one frequency"},
        {"x.s2p", v1 + "2 0 0 .5 0 .5 0 0 0\n1 1 .1 0\n",
         "3:1: here 4 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.s2p", v1 + "2 0 0 .5 0 .5 0 0 0\n3 1 .1 0 .5\n", "3:1: this frequency has 5 of its 9 numbers"},
        {"x.s1p", v1 + "1 .5 0\n", "2:1: this file has 1 port and so no s21"},
        {"x.s3p", v1 + "1 .1 0 .2 0 .3 0\n.4 0 .5 0 .6 0\n2 .1 0 .2 0 .3 0\n.4 0 .5 0 .6 0\n",
         "2:1: this frequency has 13 of its 19 numbers"},
        {"x.s3p", v1 + "1 .1 0 .2 0 .3 0\n.4 0 .5 0\n.7 0 .8 0 .9 0\n", "2:1: this frequency has 17 of its 19 numbers"},
        {"x.s3p", v1 + "1 .1 0 .2 0 .3 0\n.4 0 .5 0 .6 0\n.7 0 .8 0 .9 0 .9 0\n",
         "4:16: from here on there are more than the 19 numbers of one frequency"},
        {"x.s2p", v1 + "[Network Data]\n1 0 0 .5 0 .5 0 0 0\n",
         "2:1: only a file that begins with [Version] 2.0 has keywords"},
        {"x.s2p", "[Number of Ports] 2\n", "1:1: only a file that begins with [Version] 2.0 has keywords"},
        {"x.s2p", v1 + std::string("1 0 0 .5 0 .5 0 0 0\0\n", 21), "2:19: '0?' is no number"},
        {"x.s2p", v1 + "1 0 0 \342\210\2220.5 0 .5 0 0 0\n", "2:7: '?0.5' is no number"},
    });
}

TEST(Touchstone2, MalformedFiles) {
    expect_malformed({
        {"x.ts", "[Version] 3.0\n",
         "1:11: '3.0' is no version that is read here; they are 2.0 and 2.1, and 1 without this keyword"},
        {"x.ts", "[Version]\n", "1:1: 2.0 must follow this keyword"},
        {"x.ts", "[Version] 2.0 2.1\n", "1:15: nothing more follows here"},
        {"x.ts", "[Version 2.0\n", "1:1: this keyword has no ]"},
        {"x.ts", "#\n[Version] 2.0\n", "2:1: [Version] must be the first line that is no comment"},
        {"x.ts", "[Version] 2.0\n[Version] 2.0\n", "2:1: [Version] must be the first line that is no comment"},
        {"x.ts", "[Version] 2.0\n[Number of Ports] 2\n",
         "2:1: the option line must stand between [Version] and the other keywords"},
        {"x.ts", "[Version] 2.0\n1 2 3\n",
         "2:1: the option line must come first, as in # GHz S MA R 50 (these are its defaults)"},
        {"x.ts", "[Version] 2.0\n#\n[Two-Port Data Order] 21_12\n",
         "3:1: [Number of Ports] must stand before this keyword"},
        {"x.ts", "[Version] 2.0\n# R 50 75\n", "2:8: R takes one number of ohms; [Reference] takes one for each port"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] two\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:19: 'two' is no whole number from 1 to 99"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 0\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:19: '0' is no whole number from 1 to 99"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 100\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:19: '100' is no whole number from 1 to 99"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2 3\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:21: nothing more follows here"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports]\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:1: a whole number must follow this keyword"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] -2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "3:19: '-2' is no whole number from 1 to 99"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 3\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "4:1: only a file of 2 ports has this keyword"},
        {"x.s3p", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n", "3:1: the file's name tells of 3 ports"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21-12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "4:23: '21-12' is no order; there are '21_12' and '12_21'"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Number of Frequencies] 1\n[Network Data]\n1 -1 0 -2 0 "
         "-3 0 -4 0\n",
         "5:1: [Two-Port Data Order] must stand before this keyword"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Network Data]\n1 -1 0 -2 "
         "0 -3 0 -4 0\n",
         "5:1: [Number of Frequencies] must stand before this keyword"},
        {"x.ts", head + "[Number of Ports] 2\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:1: the same keyword stands on line 3"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "2\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "5:1: this announces 2, but the data hold 1"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n2 -1 0 -2 0 -3 0 -4 0\n[End]\n",
         "5:1: this announces 1, but the data hold 2"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1.5\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "5:25: '1.5' is no whole number from 1 to 65536"},
        {"x.ts",
         "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "70000\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "5:25: '70000' is no whole number from 1 to 65536"},
        {"x.ts", head + "[Matrix Format] Half\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:17: 'Half' is no matrix format; there are 'Full', 'Lower' and 'Upper'"},
        {"x.ts", head + "[Matrix Format] Lower\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "8:18: from here on there are more than the 7 numbers of one frequency"},
        {"x.ts", head + "[Mixed-Mode Order] D2,3 C2,3\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:1: mixed-mode parameters are not gains between ports; convert the file to single-ended first"},
        {"x.ts", head + "[Port Names] a b\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:1: '[port names]' is no keyword of Touchstone 2.0"},
        {"x.ts", head + "[Reference] 50\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n", "6:1: 1 reference for 2 ports"},
        {"x.ts", head + "[Reference] 50 75 50\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:19: more references than ports"},
        {"x.ts", head + "[Reference] 50 0\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:16: a reference must be more than 0 ohm"},
        {"x.ts", head + "[Reference] 50 ohm\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n", "6:16: 'ohm' is no number"},
        {"x.ts", head + "[Reference] 50\n", "6:1: 1 reference for 2 ports"},
        {"x.ts", head + "1 -1 0 -2 0 -3 0 -4 0\n", "6:1: [Network Data] must stand before the data"},
        {"x.ts", head + "", "6:1: the file ends before its first frequency"},
        {"x.ts", head + "[Network Data]\n", "5:1: this announces 1, but the data hold 0"},
        {"x.ts", head + "[Network Data] 1\n", "6:16: nothing follows this keyword on its line"},
        {"x.ts", head + "[End]\n", "6:1: the file ends without [Network Data]"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Matrix Format] Full\n",
         "8:1: this keyword must stand before [Network Data]"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Network Data]\n",
         "8:1: this keyword must stand before [Network Data]"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[End]\n1 2 3\n", "9:1: only comments follow [End]"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[End] of file\n",
         "8:7: nothing follows this keyword on its line"},
        {"x.ts",
         "[Version] 2.1\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
         "1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "8:1: [End] is missing; version 2.1 has it"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n1 1 .1 0 .5\n",
         "8:1: [Number of Noise Frequencies] must stand before [Network Data]"},
        {"x.ts",
         head + "[Number of Noise Frequencies] 2\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n1 1 .1 0 "
                ".5\n[End]\n",
         "6:1: this announces 2, but the data hold 1"},
        {"x.ts",
         head + "[Number of Noise Frequencies] 2\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n1 1 .1 0 .5\n1 "
                "1 .1 0 .5\n[End]\n",
         "11:1: the frequencies of the noise data must rise"},
        {"x.ts", head + "[Number of Noise Frequencies] 1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[End]\n",
         "6:1: noise data are announced, but none follow"},
        {"x.ts", head + "[Number of Noise Frequencies] 1\n[Noise Data]\n1 1 .1 0 .5\n",
         "7:1: [Noise Data] follows the network data, once"},
        {"x.ts",
         head + "[Number of Noise Frequencies] 1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n1 1 .1 0\n",
         "10:1: here 4 numbers stand; a line that begins with a frequency has an odd number of them"},
        {"x.ts",
         head + "[Number of Noise Frequencies] 1\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n[Noise Data]\n1 1 .1 0 "
                ".5\n[Noise Data]\n",
         "11:1: [Noise Data] follows the network data, once"},
        {"x.ts", "[Version] 2.0\n#DB\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n",
         "5:1: this file has 1 port and so no s21"},
        {"x.ts", head + "[Begin Information]\n[Owner] me\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:1: [End Information] is missing"},
        {"x.ts", head + "[End Information]\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n",
         "6:1: [Begin Information] must stand before this keyword"},
        {"x.ts", head + "[]\n[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n", "6:1: '[]' is no keyword of Touchstone 2.0"},
        {"x.ts", head + "[Network Data]\n1 -1 0 -2 0 -3 0 -4 0\n0.5 1 .1 0 .5\n",
         "8:1: this frequency has 5 of its 9 numbers"},
    });
}

TEST(Csv, MalformedFiles) {
    expect_malformed({
        {"x.csv", "", "1:1: this file has no header"},
        {"x.csv", "# nothing\n", "2:1: this file has no header"},
        {"x.csv", "frequency_mhz,gain_db\n", "2:1: no row follows the header"},
        {"x.csv", "470,1\n480,2\n",
         "1:1: 470: '470' is no key of this table; its keys are 'frequency_mhz', 'frequency_hz', 'frequency_khz', "
         "'frequency_ghz', 'azimuth_deg', 'elevation_deg', 'facing_deg', 'gain_db', 'loss_db', 'gain_dbi', 'gain_dbd', "
         "'beyond_free_space_db', 'attenuation_db_per_100m', "
         "'attenuation_db_per_100ft', 'note'"},
        {"x.csv", "frequency_mhz;gain_db\n470;1\n",
         "1:1: commas separate the columns here, and a point the decimals; this file has other separators"},
        {"x.csv", "frequency_mhz\tgain_db\n470\t1\n",
         "1:1: commas separate the columns here, and a point the decimals; this file has other separators"},
        {"x.csv", "frequency_mhz\n470\n",
         "1:1: gain_db or loss_db or gain_dbi or gain_dbd or beyond_free_space_db or attenuation_db_per_100m or "
         "attenuation_db_per_100ft is missing"},
        {"x.csv", "gain_db\n1\n", "1:1: frequency_mhz or frequency_hz or frequency_khz or frequency_ghz is missing"},
        {"x.csv", "frequency,gain_db\n470,1\n",
         "1:1: frequency: 'frequency' needs its unit: 'frequency_mhz', 'frequency_hz', 'frequency_khz', "
         "'frequency_ghz'"},
        {"x.csv", "frequency_mhz,gain\n470,1\n",
         "1:15: gain: 'gain' needs its unit: 'gain_db', 'gain_dbi', 'gain_dbd'"},
        {"x.csv", "Frequency_MHz,gain_db\n470,1\n",
         "1:1: Frequency_MHz: 'Frequency_MHz' is no key of this table; the nearest is 'frequency_mhz'"},
        {"x.csv", "frequency_mhz,phase_deg\n470,1\n",
         "1:15: phase_deg: 'phase_deg' is no key of this table; its keys are 'frequency_mhz', 'frequency_hz', "
         "'frequency_khz', 'frequency_ghz', 'azimuth_deg', 'elevation_deg', 'facing_deg', 'gain_db', 'loss_db', "
         "'gain_dbi', 'gain_dbd', "
         "'beyond_free_space_db', "
         "'attenuation_db_per_100m', 'attenuation_db_per_100ft', 'note'"},
        {"x.csv", "frequency_mhz,gain_db,loss_db\n470,1,-1\n",
         "1:23: loss_db: this column stands here as gain_db too; give one of them"},
        {"x.csv", "frequency_mhz,frequency_hz,gain_db\n470,470e6,1\n",
         "1:15: frequency_hz: this column stands here as frequency_mhz too; give one of them"},
        {"x.csv", "frequency_mhz,gain_db,gain_db\n470,1,1\n", "1:23: the column 'gain_db' stands here twice"},
        {"x.csv", "frequency_mhz,gain_db,\n470,1,\n", "1:23: this column has no name"},
        {"x.csv", "frequency_mhz,gain_db\n470,1\n480\n", "3:1: fields in this row: 1, in the header: 2"},
        {"x.csv", "frequency_mhz,gain_db\n470,1,5\n",
         "2:1: fields in this row: 3, in the header: 2; decimals take a point"},
        {"x.csv", "frequency_mhz,gain_db\n470,\"1,5\"\n", "2:5: gain_db[0]: '1,5' is no number; decimals take a point"},
        {"x.csv", "frequency_mhz,gain_db\n470,\n", "2:5: gain_db[0]: this field is empty"},
        {"x.csv", "frequency_mhz,gain_db\n470,one\n", "2:5: gain_db[0]: 'one' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,1 dB\n", "2:5: gain_db[0]: '1 dB' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,nan\n", "2:5: gain_db[0]: 'nan' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,1e999\n", "2:5: gain_db[0]: '1e999' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,0x10\n", "2:5: gain_db[0]: '0x10' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,\342\210\2225\n", "2:5: gain_db[0]: '?5' is no number"},
        {"x.csv", "frequency_mhz,gain_db\n470,\"1\n480,2\n", "2:5: this quote is not closed"},
        {"x.csv", "frequency_mhz,gain_db\n470,\"1\"2\n",
         "2:8: a comma or the end of the line must follow the closing quote"},
        {"x.csv", "frequency_mhz,gain_db\n470,1\"\n",
         "2:6: a quote within a field: put the whole field in quotes, and write this one twice"},
        {"x.csv", "frequency_mhz,gain_db\r\n480,1\r\n\r\n470,2\r\n",
         "4:1: frequency_mhz[1]: 470 is lower than the row before it; frequencies must rise"},
        {"x.csv", "frequency_mhz,gain_db\n470,1\n# again\n470.0,2\n",
         "4:1: frequency_mhz[1]: 470 stands in the row before it too"},
        {"x.csv", "frequency_mhz,gain_db,note\n470,1,\"a\nb\nc\"\n480,x,\n", "5:5: gain_db[1]: 'x' is no number"},
        {"x.csv", std::string("\0\n", 2),
         "1:1: '?': '?' is no key of this table; its keys are 'frequency_mhz', 'frequency_hz', 'frequency_khz', "
         "'frequency_ghz', 'azimuth_deg', 'elevation_deg', 'facing_deg', 'gain_db', 'loss_db', 'gain_dbi', 'gain_dbd', "
         "'beyond_free_space_db', 'attenuation_db_per_100m', "
         "'attenuation_db_per_100ft', 'note'"},
    });
}

TEST(TableCommand, WrongUsage) {
    expect_refused(run({"table"}), "file is required");
    expect_refused(run({"table", "/nowhere/x.s2p"}), "/nowhere/x.s2p: cannot be opened");
    expect_refused(run({"table", "/nowhere/x.s2p", "--parameter", "21"}), "'21' is no parameter");
    expect_refused(run({"table", "/nowhere/x.csv", "--parameter", "s21"}), "only a Touchstone file has parameters");
    for (const char *name : {"x", "x.s0p", "x.s100p", "x.sp", "x.s2p.txt", "csv", ""})
        expect_refused(run({"table", name}), "is no name of a table: it must end in .csv, .ts, or .s2p");
    const TemporaryFolder folder;
    expect_refused(run({"table", folder.write("x.csv", std::string(17u << 20u, ' '))}), "larger than 16777216 bytes");
}

} // namespace
} // namespace desk_test
