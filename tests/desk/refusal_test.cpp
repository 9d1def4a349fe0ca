// Bad input: every class of it gives exit code 2 and one line that names the file, the line and the key.
#include "run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

namespace desk_test {
namespace {

struct Bad {
    const char *name; // of a file in bad/
    int line;
    const char *words; // path of the key and what is wrong with it
};

// Each file differs from good.json in one thing; the line is where a person finds that thing.
const Bad bad[] = {
    {"absurd_frequency", 10, "links[0].frequency_mhz: 1000000000 is out of range; allowed 0.1 to 300000"},
    {"absurd_gear_gain", 5, "gear.ant.gain_dbi: 90 is out of range; allowed -60 to 60 (used in links[0].stages[2])"},
    {"absurd_length_in_feet", 15,
     "links[0].stages[1].length_ft: 40000 is out of range; allowed 0.0032809 to 32808; in link 'A', 'cable'"},
    {"bad_utf8", 9,
     "links[0]: this is not JSON: syntax error while parsing value - invalid string: ill-formed UTF-8 byte"},
    {"cable_given_twice", 15,
     "links[0].stages[1].loss_db: a cable is given by one of cable_type, attenuation_table, gain_table and loss_db or "
     "gain_db; here stand cable_type and loss_db"},
    {"cable_in_the_air", 17,
     "links[0].stages[4]: an antenna must follow the air first; only air and allowances stand between the two "
     "antennas; "
     "in link 'A', 'cable'"},
    {"comment", 2, "this is not JSON: JSON has no comments: notes go into a note key"},
    {"distance_without_air", 6, "links[0].near_distance_m: this link has no air, so a distance has no use"},
    {"duplicate_gear", 5, "gear: the key 'tx' stands here twice"},
    {"duplicate_key", 10, "links[0]: the key 'frequency_mhz' stands here twice"},
    {"duplicated_row", 17,
     "links[0].stages[1].attenuation_table.frequency_mhz[1]: 100 stands in the row before it too"},
    {"empty_file", 1,
     "this is not JSON: syntax error while parsing value - unexpected end of input; expected '[', '{', or a literal"},
    {"empty_links", 3, "links: there must be at least one link"},
    {"empty_table", 16, "links[0].stages[1].attenuation_table: this table has no rows"},
    {"floor_above_ceiling", 19, "links[0].stages[5].ceiling_dbm: -20 lies below floor_dbm -10 (line 19)"},
    {"gain_and_table", 6, "gear.ant.gain_table: a gain_table stands in place of gain_dbi; give one of them"},
    {"gain_table_out_of_reach", 6,
     "gear.ant.gain_table: the link's 600 MHz lie outside this table; it serves 470 to 590 MHz (used in "
     "links[0].stages[2])"},
    {"gear_says_it_already", 14, "links[0].stages[0].power_mw: the gear already says this on line 4"},
    {"half_a_connector", 15,
     "links[0].stages[1].connectors: 1.5 is no number of connectors; allowed are whole numbers from 0 to 1000"},
    {"half_a_wanted_band", 19, "links[0].stages[5]: wanted_high_dbm is missing; a wanted band has two ends"},
    {"infinity", 10, "links[0]: this is not JSON: syntax error while parsing value - invalid literal"},
    {"key_of_another_kind", 16,
     "links[0].stages[2].length_m: 'length_m' is no key of a stage of kind 'antenna', which has no length; length_m "
     "belongs to 'cable'"},
    {"loss_that_gains", 15, "links[0].stages[1].loss_db: -3 is out of range; allowed 0 to 200"},
    {"near_beyond_far_in_feet", 12, "links[0].near_distance_ft: 200 lies beyond far_distance_m 40 (line 11)"},
    {"negative_connectors", 15,
     "links[0].stages[1].connectors: -1 is no number of connectors; allowed are whole numbers from 0 to 1000"},
    {"negative_distance", 11, "links[0].far_distance_m: -40 is out of range; allowed 0.01 to 1000000000"},
    {"negative_frequency", 10, "links[0].frequency_mhz: -600 is out of range; allowed 0.1 to 300000"},
    {"negative_length", 15, "links[0].stages[1].length_m: -1 is out of range; allowed 0.001 to 10000"},
    {"negative_power", 4, "gear.tx.power_mw: -30 is out of range; allowed 1e-20 to 1e+15 (used in links[0].stages[0])"},
    {"negative_tolerance", 17, "links[0].stages[3].tolerance_db: -1 is out of range; allowed 0 to 100"},
    {"nested_too_deeply", 3, "nested deeper than 32 levels"},
    {"no_cable_type", 15, "links[0].stages[1]: cable_type, attenuation_table, gain_table or loss_db is missing"},
    {"no_far_distance", 8, "links[0]: far_distance_m or far_distance_ft is missing"},
    {"no_gain", 16, "links[0].stages[2]: gain_dbi or gain_dbd or gain_table is missing"},
    {"no_length", 15, "links[0].stages[1]: length_m or length_ft is missing"},
    {"no_links", 1, "links is missing"},
    {"no_power", 14, "links[0].stages[0]: power_mw or power_w or power_dbm or power_dbw is missing"},
    {"no_receive_antenna", 19, "links[0].stages[5]: an antenna must follow the air before a receiver"},
    {"no_source", 14, "links[0].stages[0]: the chain must begin with a source, not with a passive"},
    {"no_stages", 5, "links[0].stages: the chain must begin with a source; in link"},
    {"no_transmit_antenna", 17, "links[0].stages[3]: the air needs an antenna before it"},
    {"not_a_number", 10, "links[0]: this is not JSON: syntax error while parsing value - invalid literal"},
    {"null_in_a_name", 15,
     "links[0].stages[1].cable_type: 'RG-213/U?x' is not in the catalogue of cables; the nearest is 'RG-213/U'"},
    {"null_number", 11, "links[0].far_distance_m: this must be a number, not null"},
    {"number_for_text", 9, "links[0].name: this must be a text, not a number"},
    {"number_too_large", 10, "links[0]: this number is too large"},
    {"object_for_list", 8,
     "links: this is not JSON: syntax error while parsing object key - unexpected '{'; expected string literal"},
    {"only_a_number", 1, "this must be an object, not a number"},
    {"same_link_name", 7, "links[1].name: a second link named 'A'"},
    {"second_air", 18, "links[0].stages[4]: a chain has only one air"},
    {"second_source", 15, "links[0].stages[1]: a chain has only one source"},
    {"stage_after_receiver", 19, "links[0].stages[6]: nothing follows the receiver"},
    {"steep_table", 17,
     "links[0].stages[1].attenuation_table.attenuation_db_per_100ft[1]: 9 is too far from the row before it; allowed 2 "
     "to 8"},
    {"table_out_of_reach", 16,
     "links[0].stages[1].attenuation_table: the link's 600 MHz lie outside this table; it serves 1 to 200 MHz"},
    {"text_after_the_end", 24,
     "this is not JSON: syntax error while parsing value - unexpected '}'; expected end of input"},
    {"text_for_number", 10, "links[0].frequency_mhz: this must be a number, not a text"},
    {"too_cold", 10, "links[0].temperature_degf: -500 is out of range; allowed -148 to 392"},
    {"trailing_comma", 12, "links[0]: this is not JSON: a comma too many before ,"},
    {"truncated", 12, "links[0]: this is not JSON: the file ends before the } that closes what was begun"},
    {"two_units", 12,
     "links[0].near_distance_ft: the same quantity stands on line 12 as near_distance_m; give one of them"},
    {"two_units_over_gear", 14,
     "links[0].stages[0].power_dbm: the same quantity stands on line 4 as power_mw; give one of them"},
    {"uneven_table", 17,
     "links[0].stages[1].attenuation_table.attenuation_db_per_100m: this column has 1 rows, the frequencies have 2"},
    {"unknown_basis", 17, "links[0].stages[3].basis: 'mesured' is no basis; the nearest is 'measured'"},
    {"unknown_cable", 15,
     "links[0].stages[1].cable_type: 'RG-231/U' is not in the catalogue of cables; the nearest is 'RG-213/U'"},
    {"unknown_direction", 9, "links[0].direction: 'inbond' is no direction; the nearest is 'inbound'"},
    {"unknown_gear", 16, "links[0].stages[2].gear: 'antt' is not in the gear list; the nearest is 'ant'"},
    {"unknown_key", 15,
     "links[0].stages[1].lenght_m: 'lenght_m' is no key of a stage of kind 'cable'; the nearest is 'length_m'"},
    {"unknown_kind", 17, "links[0].stages[3].kind: 'airr' is no kind of stage; the nearest is 'air'"},
    {"unknown_link_key", 11,
     "links[0].far_distence_m: 'far_distence_m' is no key of a link; the nearest is 'far_distance_m'"},
    {"unknown_root_key", 2, "productoin: 'productoin' is no key of a scenario; the nearest is 'production'"},
    {"unsorted_table", 17,
     "links[0].stages[1].attenuation_table.frequency_mhz[2]: 500 is lower than the row before it; frequencies must "
     "rise"},
    {"unused_gear_with_a_text", 6, "gear.spare.loss_db: this must be a number, not a text"},
    {"zero_connector_loss", 15,
     "links[0].stages[1].connector_loss_db: 0 would stand for the usual loss; for no loss leave the connectors out"},
    {"zero_frequency", 10, "links[0].frequency_mhz: 0 is out of range; allowed 0.1 to 300000"},
    {"zero_in_table", 17,
     "links[0].stages[1].attenuation_table.attenuation_db_per_100m[0]: 0 is out of range; allowed 0.001 to 100000"},
    {"zero_length", 15, "links[0].stages[1].length_m: 0 is out of range; allowed 0.001 to 10000"},
    {"zero_near_distance", 12, "links[0].near_distance_m: 0 is out of range; allowed 0.01 to 1000000000"},
    {"zero_power", 4, "gear.tx.power_mw: 0 is out of range; allowed 1e-20 to 1e+15 (used in links[0].stages[0])"},
};

TEST(Refusals, GoodFileIsGood) { EXPECT_EQ(run({"budget", DESK_TESTS "/good.json"}).code, 0); }

TEST(Refusals, EveryBadFileIsRefusedAtItsLineAndKey) {
    for (const Bad &expected : bad) {
        SCOPED_TRACE(expected.name);
        const std::string file = std::string(DESK_TESTS "/bad/") + expected.name + ".json";
        const Printout refused = run({"budget", file});
        expect_refused(refused, expected.words);
        expect_refused(refused, file + ":" + std::to_string(expected.line) + ":");
        expect_refused(run({"budget", file, "--json"}), expected.words);
    }
}

// good.json with one piece exchanged.
std::string mended(const std::string &right, const std::string &wrong) {
    std::string text = read_file(DESK_TESTS "/good.json");
    const std::size_t at = text.find(right);
    EXPECT_NE(at, std::string::npos) << right;
    return text.replace(at, right.size(), wrong);
}

void expect_slip(const std::string &right, const std::string &wrong, const std::string &words) {
    expect_refused(run({"budget", TemporaryFile(mended(right, wrong)).path()}), words);
}

TEST(Refusals, AWrongWordIsNeverSentTheWrongWay) {
    expect_slip("\"power_mw\": 30", "\"power\": 10",
                "gear.tx.power: 'power' needs its unit: 'power_mw', 'power_w', 'power_dbm', 'power_dbw'");
    expect_slip("\"length_m\": 10", "\"length\": 100", "'length' needs its unit: 'length_m', 'length_ft'");
    expect_slip("\"length_m\": 10", "\"length_cm\": 100", "'length_cm' needs its unit: 'length_m', 'length_ft'");
    expect_slip("\"gain_dbi\": 0", "\"gain_db\": 0", "'gain_db' needs its unit: 'gain_dbi', 'gain_dbd'");
    expect_slip("\"frequency_mhz\": 600", "\"frequency\": 600", "needs its unit: 'frequency_mhz', 'frequency_ghz'");
    expect_slip("\"kind\": \"air\"", "\"kind\": \"splitter\"", "passive (splitter, combiner, filter, pad)");
    expect_slip("\"kind\": \"air\"", "\"kind\": \"air\", \"frequency_mhz\": 600", "frequency_mhz belongs to the link");
    expect_slip("\"kind\": \"air\"", "\"kind\": \"air\", \"colour\": 600",
                "its keys are 'kind', 'label', 'basis', 'note', 'gain_table', 'tolerance_law', 'coverage_factor', "
                "'gear', 'from_stock', 'path', "
                "'beyond_free_space_db', 'tolerance_db'");
    expect_slip("\"gear\": \"tx\"", "\"gear\": \"mixer\"", "it holds 'tx', 'ant'");
    expect_slip("RG-213/U", "garden hose", "it holds 'RG-58C/U', 'RG-174/U'");
}

TEST(Refusals, OrderNamesBothSides) {
    expect_slip(
        "-90,", "95,",
        "ceiling_dbm: -20 lies below floor_dbm 95 (line 19); is a minus sign missing?; in link 'A', 'receiver'");
    expect_slip("-90,", "-90, \"wanted_low_dbm\": -30, \"wanted_high_dbm\": -40,",
                "wanted_high_dbm: -40 lies below wanted_low_dbm -30 (line 19);");
    expect_slip("\"far_distance_m\": 40,\n      \"near_distance_m\": 3",
                "\"far_distance_ft\": 100,\n      \"near_distance_ft\": 150",
                "near_distance_ft: 150 lies beyond far_distance_ft 100 (line 11)");
}

TEST(Refusals, ChainFaultsNameLinkAndLabel) {
    expect_slip("{ \"gear\": \"ant\" },\n        { \"kind\": \"receiver\"",
                "{ \"kind\": \"cable\", \"label\": \"paddle to rack\", \"loss_db\": 3 },\n"
                "        { \"kind\": \"receiver\"",
                "an antenna must follow the air first; only air and allowances stand between the two antennas; in link "
                "'A', 'paddle to rack'");
    expect_slip("{ \"kind\": \"air\" }", "{ \"kind\": \"passive\", \"loss_db\": 3 }, { \"kind\": \"air\" }",
                "the air must follow the antenna first");
}

TEST(Refusals, SteepGainTableIsToldInDecibels) {
    expect_slip("\"gain_dbi\": 0 }", "\"gain_table\": { \"frequency_mhz\": [500, 700], \"gain_dbi\": [-60, 50] } }",
                "50 differs by more than 100 dB from the row before it; allowed -160 to 40");
}

TEST(Refusals, EveryBadFileIsInTheTable) {
    std::set<std::string> named;
    for (const Bad &expected : bad) named.insert(expected.name);
    for (const auto &entry : std::filesystem::directory_iterator(DESK_TESTS "/bad"))
        EXPECT_TRUE(named.contains(entry.path().stem().string())) << entry.path();
}

struct SlipOfThePen {
    const char *right; // a piece of good.json, found once
    const char *wrong; // what a person writes in its place
    const char *words;
    const char *at; // where in the line the slip is found: from here on
};

TEST(Refusals, SlipsInJsonAreToldInAPersonsWords) {
    const SlipOfThePen slips[] = {
        {"_m\": 40,", "_m\": 3,5,", "a decimal comma: write 3.5", ",5"},
        {"\"power_mw\": 30 }", "\"power_mw\": 30, }", "a comma too many before }", ", }"},
        {"-20 }\n      ]", "-20 },\n      ]", "a comma too many before ]", ",\n"},
        {"-90,", "\u221290,", "this dash is not the minus sign -", "\u221290"},
        {"-90,", "\u201390,", "this dash is not the minus sign -", "\u201390"},
        {"30 }", "10mW }", "the unit goes into the key's name: write 10", "10mW"},
        {"30 }", "10 mW }", "the unit goes into the key's name: write 10", "mW"},
        {"30 }", ".5 }", "write 0.5", ".5"},
        {"30 }", "-.5 }", "write -0.5", "-.5"},
        {"30 }", "5. }", "write 5", "5. "},
        {"30 }", "05 }", "write 5", "05"},
        {"30 }", "+6 }", "no plus sign: write 6", "+6"},
        {"_m\": 40,", "_m\": 40", "a comma is missing before this", "\"near"},
        {"\"tx\" },", "\"tx\" }", "a comma is missing before this", "{ \"kind\": \"cable"},
        {"\"power_mw\": 30", "\"power_mw\" 30", "a colon is missing before this", "30 }"},
        {"\"Test\",", "\"Test\", // on tour", "JSON has no comments: notes go into a note key", "//"},
        {"\"Test\",", "\"Test\", /* on tour */", "JSON has no comments: notes go into a note key", "/*"},
        {"\"Test\",", "\"Test\", # on tour", "JSON has no comments: notes go into a note key", "# on"},
        {"30 }", "30 // a guess\n }", "JSON has no comments: notes go into a note key", "//"},
        {"\"Test\",", "'Test',", "this quote is not the straight double one", "'Test"},
        {"\"Test\",", "\"Test,", "this text does not end on its line", "\"Test"},
    };
    const std::string good = read_file(DESK_TESTS "/good.json");
    for (const SlipOfThePen &slip : slips) {
        SCOPED_TRACE(slip.wrong);
        std::string text = good;
        const std::size_t at = text.find(slip.right);
        ASSERT_NE(at, std::string::npos);
        text.replace(at, std::string(slip.right).size(), slip.wrong);
        const TemporaryFile file(text);
        const Printout refused = run({"budget", file.path()});
        const std::size_t place = text.find(slip.at, at);
        ASSERT_NE(place, std::string::npos);
        const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(place), '\n');
        const std::size_t column = place - (text.rfind('\n', place) + 1) + 1;
        expect_refused(refused, slip.words);
        expect_refused(refused, file.path() + ":" + std::to_string(line) + ":" + std::to_string(column) + ": ");
    }
}

// A slip is looked for in whatever comes, also where it is very long.
TEST(Refusals, EndlessWordsInJson) {
    for (const char *piece : {"x", "1", "-", "\"", "'", "\\", "1,", "+1"}) {
        std::string text = "[";
        for (int i = 0; i < 200000; ++i) text += piece;
        expect_refused(run({"budget", TemporaryFile(text).path()}), "");
    }
}

TEST(Refusals, MissingFileAndDirectory) {
    expect_refused(run({"budget", "/nowhere/at/all.json"}), "/nowhere/at/all.json: cannot be opened");
    expect_refused(run({"budget", "/tmp"}), "/tmp: this is a directory");
}

TEST(Refusals, HugeFile) {
    const TemporaryFile file("{\"production\": \"" + std::string(5u << 20u, 'x') + "\"}");
    expect_refused(run({"budget", file.path()}), "larger than 4194304 bytes");
}

TEST(Refusals, EndlessFile) { expect_refused(run({"budget", "/dev/zero"}), "larger than 4194304 bytes"); }

TEST(Refusals, MillionsOfValues) {
    std::string text = "[0";
    for (int i = 0; i < 300000; ++i) text += ",0";
    expect_refused(run({"budget", TemporaryFile(text + "]").path()}), "more than 100000 values");
}

TEST(Refusals, DeepNesting) {
    expect_refused(run({"budget", TemporaryFile(std::string(1000000, '[')).path()}), "nested deeper than 32 levels");
    std::string objects;
    for (int i = 0; i < 100000; ++i) objects += "{\"a\":";
    expect_refused(run({"budget", TemporaryFile(objects).path()}), "nested deeper than 32 levels");
}

TEST(Refusals, LongNamesAreCutInTheLine) {
    const std::string name(100000, 'k');
    const Printout refused = run({"budget", TemporaryFile("{\"" + name + "\\u000a\": 1}").path()});
    expect_refused(refused, "is no key of a scenario");
    EXPECT_LT(refused.err.size(), 400u);
}

TEST(Refusals, LongTexts) {
    expect_refused(run({"budget", TemporaryFile("{\n\"production\": \"" + std::string(1001, 'x') + "\"}").path()}),
                   ":2:15: production: this text is longer than 1000 bytes");
}

// Many stages of one gear share its long table.
TEST(Refusals, LongTableUsedOften) {
    std::string frequencies = "1";
    std::string gains = "0";
    for (int i = 2; i <= 20000; ++i) {
        frequencies += "," + std::to_string(i);
        gains += ",0";
    }
    std::string stages;
    for (int i = 0; i < 300; ++i) stages += ",{\"gear\":\"t\"}";
    const std::string link =
        "{\"name\":\"A\",\"frequency_mhz\":600,\"stages\":[{\"kind\":\"source\",\"power_dbm\":0}" + stages + "]}";
    const TemporaryFile file("{\"production\":\"T\",\"gear\":{\"t\":{\"kind\":\"passive\",\"gain_table\":{"
                             "\"frequency_mhz\":[" +
                             frequencies + "],\"gain_db\":[" + gains + "]}}},\"links\":[" + link + "]}");
    const Printout answer = run({"budget", file.path(), "--json"});
    EXPECT_EQ(answer.code, 1) << answer.err; // no receiver: not judged
}

TEST(Refusals, TooManyStages) {
    std::string stages = "{\"kind\": \"source\", \"power_dbm\": 0}";
    for (int i = 0; i < 1024; ++i) stages += ", {\"kind\": \"passive\", \"loss_db\": 0}";
    expect_refused(
        run({"budget", TemporaryFile("{\"production\": \"T\", \"links\": [{\"name\": \"A\", \"frequency_mhz\": 600,\n"
                                     "\"stages\": [" +
                                     stages + "]}]}")
                           .path()}),
        ":2:11: links[0].stages: ");
}

TEST(Refusals, WrongUsage) {
    expect_refused(run({}), "subcommand is required");
    expect_refused(run({"bugdet", "x.json"}), "the nearest is 'budget'");
    expect_refused(run({"budget"}), "scenario is required");
    expect_refused(run({"budget", demo_file(), "--jsn"}), "--jsn");
    expect_refused(run({"cable", "RG-213/U", "--mhz", "600"}), "--m or --ft");
    expect_refused(run({"cable", "RG-213/U", "--m", "3"}), "cable needs a frequency: --mhz");
    expect_refused(run({"cable", "RG-213/U", "--mhz", "600", "--m", "3", "--ft", "3"}), "excludes");
    expect_refused(run({"cable", "rg21", "--mhz", "600", "--m", "3"}), "the nearest is 'RG-213/U'");
    expect_refused(run({"cable", "RG-213/U", "--mhz", "nan", "--m", "3"}), "frequency_mhz is not a number");
    expect_refused(run({"cable", "RG-213/U", "--mhz", "9000", "--m", "3"}), "allowed 5 to 4800");
    expect_refused(run({"cable", "RG-213/U", "--mhz", "600", "--m", "0"}), "length_m is missing");
}

// Who leaves a name out, or does not know it, is told those that exist, each in quotes.
TEST(Refusals, NamesThatExistAreListed) {
    const std::string links = "; there are 'Monitors A, main stage', 'Monitors B, thrust', ";
    for (const char *command : {"rank", "solve", "compare", "sure", "locate"})
        expect_refused(run({command, demo_file()}), "the name of a link is missing" + links);
    expect_refused(run({"compare", demo_file(), "Monitors B, thrust"}), "the name of a link is missing" + links);
    expect_refused(run({"budget", demo_file(), "--link", "Tuba"}), "no link is named 'Tuba'" + links);
    expect_refused(run({"rank", demo_file(), "Tuba"}), "' and 1 more\n"); // of eleven, more than a line should hold
    expect_refused(run({"rank", demo_file(), "Monitors B"}),
                   "the nearest is 'Monitors B, thrust'; there are 'Monitors A, main stage', ");
    const std::string sites = "; there are 'arena, monitors A', 'arena, hand microphones'";
    for (const char *command : {"map", "walk", "place"}) {
        expect_refused(run({command, demo_file()}), "the name of a site is missing" + sites);
        expect_refused(run({command, demo_file(), "arena", "x"}), command == std::string("walk") ? sites : "x");
    }
    expect_refused(run({"map", demo_file(), "tent"}), "no site is named 'tent'" + sites);
    const std::string walks = "; there is 'to the far platform'";
    expect_refused(run({"walk", demo_file(), "arena, monitors A"}), "the name of a walk is missing" + walks);
    expect_refused(run({"walk", demo_file(), "arena, monitors A", "home"}), "no walk is named 'home'" + walks);
    expect_refused(run({"solve", demo_file(), "Line check, rack to paddle", "--margin", "3"}),
                   "say with --unknown what is sought: of the link 'frequency_mhz', ");
    expect_refused(run({"solve", demo_file(), "Line check, rack to paddle", "--margin", "3", "--unknown", "length_m",
                        "--stage", "paddle"}),
                   "has no stage 'paddle'; the nearest is 'rack to paddle'; it has 'line generator', 'rack to "
                   "paddle', 'power meter'");
    expect_refused(run({"cable"}), "the name of a cable is missing; there are 'RG-58C/U', 'RG-174/U', ");
    expect_refused(run({"tune"}), "there are 'budget', 'convert', ");
}

TEST(Refusals, HelpAndVersionAreNoErrors) {
    for (const char *word : {"--help", "--version"}) {
        const Printout told = run({word});
        EXPECT_EQ(told.code, 0);
        EXPECT_EQ(told.err, "");
        EXPECT_TRUE(told.out.ends_with('\n'));
    }
    EXPECT_NE(run({"--help"}).out.find("1 some link does not"), std::string::npos);
}

TEST(Refusals, FullDiskIsTold) {
    const Printout page = run({"budget", demo_file()});
    ASSERT_EQ(page.code, 1);
    // The shell opens the device; the program must notice that nothing arrives there.
    const std::string command = "'" DESK_PROGRAM "' cables > /dev/full 2> /dev/null";
    EXPECT_EQ(std::system(command.c_str()), 2 << 8);
}

} // namespace
} // namespace desk_test
