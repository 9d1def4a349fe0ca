// The reader is strict: each way to write a reference file wrong is refused, with file and line.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "reference/reader.hpp"

namespace reference {
namespace {

const std::string head = "subject test\ncase one\nsource book; page 1\nknown P\n";
const std::string half = "tolerance half a unit of the last printed digit\n";
const std::string check = "check lvb_dbm_from_mw(1) gives 0 dBm\n";
const std::string table = "subject test\ntable t\nsource book\nper 100 m\nrows 100: 5, 200: 8, 400: 12\n";
const std::string chain = head + half + "chain frequency_mhz = 600\n";

std::string refusal_of(const std::string &text) {
    Library library;
    try {
        read_text(library, "wrong.ref", text);
    } catch (const Malformed &error) {
        return error.what();
    }
    return "accepted";
}

struct Wrong {
    const char *name;
    std::string text;
    std::string refusal; // file, line and a part of the sentence
};

void PrintTo(const Wrong &wrong, std::ostream *stream) { *stream << wrong.name; }

class Strictness : public testing::TestWithParam<Wrong> {};

TEST_P(Strictness, Refuses) {
    const std::string refusal = refusal_of(GetParam().text);
    const std::size_t colon = GetParam().refusal.find(": ");
    const std::string where = GetParam().refusal.substr(0, colon + 2);
    const std::string what = GetParam().refusal.substr(colon + 2);
    EXPECT_EQ(refusal.substr(0, where.size()), where) << refusal;
    EXPECT_NE(refusal.find(what), std::string::npos) << refusal;
}

const Wrong wrongs[] = {
    {"UnknownKey", head + "sources book\n", "wrong.ref:5: unknown key 'sources'"},
    {"NothingAfterKey", head + "remark\n", "wrong.ref:5: nothing after 'remark'"},
    {"NoSubject", "case one\n", "wrong.ref:1: the subject must come first"},
    {"EmptyFile", "# only a comment\n", "wrong.ref:1: the file has no subject"},
    {"SecondSubject", "subject a\nsubject b\n", "wrong.ref:2: a second subject"},
    {"BadName", "subject a\ncase One\n", "wrong.ref:2: small letters"},
    {"DuplicateName", head + half + check + "case one\n", "wrong.ref:7: duplicate name 'one'"},
    {"UnknownFieldOfALine", head + "coaxial impedance_ohm = 50\n", "wrong.ref:5: unknown field 'impedance_ohm'"},
    {"UnknownFieldOfNeighbours", head + "neighbours blocker_dbm = 1\n", "wrong.ref:5: unknown field 'blocker_dbm'"},
    {"RuleWithoutFrequency", head + "rule 47 CFR 15.236(d)\n", "wrong.ref:5: frequency_mhz = value"},
    {"UnknownRule", head + "rule 47 CFR 15.236; frequency_mhz = 600\n", "wrong.ref:5: unknown rule '47 CFR 15.236'"},
    {"UnknownFieldOfARule", head + "rule 47 CFR 15.236(d); distance_m = 1\n",
     "wrong.ref:5: unknown field 'distance_m'"},
    {"DuplicateNameOfTable", table + "case t\n", "wrong.ref:6: duplicate name 't'"},
    {"NoSource", "subject a\ncase one\nknown P\n" + half + check, "wrong.ref:5: has no source"},
    {"NoPlace", "subject a\ncase one\nsource book\n", "wrong.ref:3: publication; section or page"},
    {"SecondSource", head + "source other; page 2\n", "wrong.ref:5: a second source"},
    {"NotKnown", "subject a\ncase one\nsource book; page 1\n" + half + check, "wrong.ref:5: how it is known"},
    {"KnownUnknown", "subject a\ncase one\nsource book; page 1\nknown X\n", "wrong.ref:4: one of P C I D R N H M"},
    {"KnownTwice", head + "known C\n", "wrong.ref:5: a second 'known'"},
    {"PracticeWithSource", "subject a\ncase one\nsource book; page 1\nknown R\n" + half + check,
     "wrong.ref:6: go together"},
    {"MemoryWithSource", "subject a\ncase one\nsource book; page 1\nknown M\n" + half + check,
     "wrong.ref:6: go together"},
    {"PrintFromMemory", "subject a\ncase one\nsource from memory; page 1\nknown P\n" + half + check,
     "wrong.ref:6: go together"},
    {"ContractWithSource", "subject a\ncase one\nsource book; page 1\nknown H\n" + half + check,
     "wrong.ref:6: go together"},
    {"ContractAsEvidence", "subject a\ncase one\nsource levelbook's own contract; page 1\nknown D\n" + half + check,
     "wrong.ref:6: go together"},
    {"NoCheck", head + half, "wrong.ref:5: checks nothing"},
    {"NoTolerance", head + check, "wrong.ref:5: needs a tolerance"},
    {"ToleranceOfAnotherCase", head + half + check + "case two\nsource b; c\nknown P\n" + check,
     "wrong.ref:10: needs a tolerance"},
    {"ToleranceWithoutReason", head + "tolerance 0.1 dBm\n", "wrong.ref:5: needs its reason"},
    {"ToleranceWithEmptyReason", head + "tolerance 0.1 dBm:\n", "wrong.ref:5: needs its reason"},
    {"ToleranceWithoutUnit", head + "tolerance 0.1: because\n", "wrong.ref:5: needs its unit"},
    {"ToleranceNotANumber", head + "tolerance ten dBm: because\n", "wrong.ref:5: 'ten' is not a number"},
    {"ToleranceZero", head + "tolerance 0 dBm: because\n", "wrong.ref:5: above 0"},
    {"ToleranceNegative", head + "tolerance -1 dBm: because\n", "wrong.ref:5: above 0"},
    {"ToleranceInfinite", head + "tolerance infinity dBm: because\n", "wrong.ref:5: above 0"},
    {"ToleranceOtherUnit", head + "tolerance 1 m: because\n" + check, "wrong.ref:6: does not fit"},
    {"ToleranceDbForMetres", head + "tolerance 1 dB: because\ncheck lvb_metres_from_feet(1) gives 0.3 m\n",
     "wrong.ref:6: does not fit"},
    {"HalfAUnitOfInfinity", head + half + "check lvb_linear_polarization_loss_db(90) gives infinity dB\n",
     "wrong.ref:6: no last digit"},
    {"UnknownFunction", head + half + "check lvb_dbm_from_mW(1) gives 0 dBm\n",
     "wrong.ref:6: unknown function or result 'lvb_dbm_from_mW'"},
    {"StructFunctionIsNotPlain", head + half + "check lvb_version_number gives 0 dBm\n",
     "wrong.ref:6: unknown function or result"},
    {"TooFewArguments", head + half + "check lvb_free_space_loss_db(600) gives 0 dB\n",
     "wrong.ref:6: takes 2 arguments, not 1"},
    {"TooManyArguments", head + half + "check lvb_dbm_from_mw(1, 2) gives 0 dBm\n",
     "wrong.ref:6: takes 1 arguments, not 2"},
    {"NoArguments", head + half + "check lvb_dbm_from_mw gives 0 dBm\n", "wrong.ref:6: takes 1 arguments, not 0"},
    {"UnparsableArgument", head + half + "check lvb_dbm_from_mw(1..2) gives 0 dBm\n", "wrong.ref:6: missing ')'"},
    {"NoNumberAsArgument", head + half + "check lvb_dbm_from_mw(?) gives 0 dBm\n", "wrong.ref:6: is not a number"},
    {"OpenBracket", head + half + "check lvb_dbm_from_mw(1 gives 0 dBm\n", "wrong.ref:6: missing ')'"},
    {"RestBehindExpression", head + half + "check lvb_dbm_from_mw(1) 2 gives 0 dBm\n", "wrong.ref:6: unexpected '2'"},
    {"HalfAnExpression", head + half + "check lvb_dbm_from_mw(1) + gives 0 dBm\n", "wrong.ref:6: a value is missing"},
    {"NoPrintedValue", head + half + "check lvb_dbm_from_mw(1)\n", "wrong.ref:6: gives number unit"},
    {"NoUnit", head + half + "check lvb_dbm_from_mw(1) gives 0\n", "wrong.ref:6: gives number unit"},
    {"PrintedNotANumber", head + half + "check lvb_dbm_from_mw(1) gives 0,5 dBm\n",
     "wrong.ref:6: '0,5' is not a number"},
    {"PrintedNan", head + half + "check lvb_dbm_from_mw(1) gives nan dBm\n", "wrong.ref:6: 'nan' is not a number"},
    {"ChecksArithmeticOnly", head + half + "check 1 + 1 gives 2 dBm\n", "wrong.ref:6: computes nothing"},
    {"ResultWithoutSetUp", head + half + "check far_level_dbm gives 2 dBm\n",
     "wrong.ref:6: unknown function or result"},
    {"TooDeep", head + half + "check " + std::string(200, '(') + "1" + std::string(200, ')') + " gives 1 dB\n",
     "wrong.ref:6: too deeply nested"},
    {"TooManySigns", head + half + "check " + std::string(100000, '-') + "1 gives 1 dB\n",
     "wrong.ref:6: too deeply nested"},
    {"DisagreesBeforeCheck", head + half + "disagrees 1 dBm: misprint\n", "wrong.ref:6: before a check"},
    {"DisagreesWithoutReason", head + half + check + "disagrees 1 dBm\n", "wrong.ref:7: needs its reason"},
    {"DisagreesInOtherUnit", head + half + check + "disagrees 1 m: misprint\n", "wrong.ref:7: the tolerance's unit"},
    {"DisagreesWithinTolerance", head + half + check + "disagrees 0.5 dBm: misprint\n", "wrong.ref:7: larger than"},
    {"DisagreesTwice", head + half + check + "disagrees 1 dBm: misprint\ndisagrees 1 dBm: misprint\n",
     "wrong.ref:8: belongs to one check"},
    {"RefusalWithoutReason", head + "refuses lvb_dbm_from_mw(-1)\n", "wrong.ref:5: needs its reason"},
    {"RefusalOfUnknownStatus", chain + "stage source, s\nrefuses LVB_E_WRONG: because\n",
     "wrong.ref:8: unknown status"},
    {"RemarkTwice", head + half + check + "remark a\nremark b\n", "wrong.ref:8: a second remark"},
    {"CheckOutsideCase", "subject a\n" + check, "wrong.ref:2: outside a case"},
    {"UnknownCableType", head + "cable type RG-0/U; frequency_mhz = 1\n", "wrong.ref:5: unknown cable type 'RG-0/U'"},
    {"UnknownTable", head + "cable table none; frequency_mhz = 1\n", "wrong.ref:5: unknown table 'none'"},
    {"CableOfNothing", head + "cable RG-213/U; frequency_mhz = 1\n", "wrong.ref:5: 'type NAME' or 'table NAME'"},
    {"UnknownCableField", head + "cable type RG-213/U; lenght_m = 1\n", "wrong.ref:5: unknown field 'lenght_m'"},
    {"FieldTwice", head + "cable type RG-213/U; length_m = 1; length_m = 2\n", "wrong.ref:5: field 'length_m' twice"},
    {"FieldWithoutValue", head + "cable type RG-213/U; length_m =\n", "wrong.ref:5: has no value"},
    {"RowToLeaveOutIsNotThere",
     table + "case one\nsource b; c\nknown P\ncable table t without 300; frequency_mhz = 300\n",
     "wrong.ref:9: no row to leave out"},
    {"SetUpUnchecked", chain + "stage source, s\nchain frequency_mhz = 600\n", "wrong.ref:8: nothing is checked"},
    {"LastSetUpUnchecked", head + half + check + "chain frequency_mhz = 600\nstage source, s\n",
     "wrong.ref:8: nothing is checked"},
    {"UnknownLinkField", head + "chain frequency = 600\n", "wrong.ref:5: unknown field 'frequency'"},
    {"StageWithoutChain", head + "stage source, s\n", "wrong.ref:5: 'stage' without a chain"},
    {"StageAfterCheck", chain + "stage source, s\ncheck far_level_dbm gives 0 dBm\nstage antenna, a\n",
     "wrong.ref:9: 'stage' after a check"},
    {"UnknownKind", chain + "stage transmitter, s\n", "wrong.ref:7: unknown kind of stage 'transmitter'"},
    {"StageWithoutLabel", chain + "stage source; level_dbm = 0\n", "wrong.ref:7: a stage is 'kind, label'"},
    {"UnknownStageField", chain + "stage source, s; level = 0\n", "wrong.ref:7: unknown field 'level'"},
    {"ResultAsInput", chain + "stage source, s; level_dbm = far_level_dbm\n",
     "wrong.ref:7: unknown function or result 'far_level_dbm'"},
    {"ChainWithoutStages", chain + "check far_level_dbm gives 0 dBm\n", "wrong.ref:7: the chain has no stages"},
    {"UnknownResult", chain + "stage source, s\ncheck far_level gives 0 dBm\n",
     "wrong.ref:8: unknown function or result 'far_level'"},
    {"CableResultOfChain", chain + "stage source, s\ncheck loss_db gives 0 dB\n",
     "wrong.ref:8: unknown function or result 'loss_db'"},
    {"UnknownModelOfPath", head + "path three_ray; distance_m = 1\n",
     "wrong.ref:5: unknown model of a path 'three_ray'"},
    {"UnknownPathField", head + "path two_ray; height_m = 1\n", "wrong.ref:5: unknown field 'height_m'"},
    {"TableWithoutRows", "subject a\ntable t\nsource b\ncase one\n", "wrong.ref:4: has no rows"},
    {"TableWithoutSource", "subject a\ntable t\nper 100 m\nrows 1: 1\n", "wrong.ref:4: has no source"},
    {"TableWithoutUnit", "subject a\ntable t\nsource b\nrows 1: 1\n", "wrong.ref:4: 'per' must come before 'rows'"},
    {"TablePerYard", "subject a\ntable t\nper 100 yd\n", "wrong.ref:3: per 100 m or per 100 ft"},
    {"TableFalls", "subject a\ntable t\nper 100 m\nrows 2: 1, 1: 1\n", "wrong.ref:4: frequencies of a table rise"},
    {"TableRowNotANumber", "subject a\ntable t\nper 100 m\nrows 2: x\n", "wrong.ref:4: 'x' is not a number"},
};

std::string name_of(const testing::TestParamInfo<Wrong> &wrong) { return wrong.param.name; }

INSTANTIATE_TEST_SUITE_P(Reader, Strictness, testing::ValuesIn(wrongs), name_of);

TEST(Reader, AcceptsAWholeFile) {
    Library library;
    read_text(library, "right.ref",
              table + "case one\nsource book; page 1\nknown C\n# a comment\n" + half +
                  "cable table t without 200; frequency_mhz = 200; length_m = lvb_metres_from_feet(100)\n"
                  "check loss_db gives 2.4 dB\nremark read twice\n"
                  "tolerance 1 %: the book rounds\r\ncheck attenuation_db_per_100m gives 8 dB/100m\n"
                  "disagrees 2 %: not really\n");
    ASSERT_EQ(library.cases.size(), 1u);
    const Case &one = library.cases.front();
    EXPECT_EQ(one.publication, "book");
    EXPECT_EQ(one.place, "page 1");
    EXPECT_EQ(one.known, Known::companion);
    ASSERT_EQ(one.checks.size(), 2u);
    EXPECT_EQ(one.checks[0].name, "one.1");
    EXPECT_EQ(one.checks[0].line, 12);
    EXPECT_EQ(one.checks[0].remark, "read twice");
    EXPECT_EQ(one.checks[1].tolerance.reason, "the book rounds");
    EXPECT_EQ(one.checks[1].disagrees, 2.0);
    ASSERT_EQ(one.set_ups.size(), 2u);
    EXPECT_EQ(one.set_ups[1].table.frequency_mhz, (std::vector<double>{100.0, 400.0}));
}

TEST(Reader, ConvertsTablesFromFeet) {
    Library library;
    read_text(library, "right.ref", "subject a\ntable t\nsource b\nper 100 ft\nrows 1: 3.048\n");
    ASSERT_EQ(library.tables.size(), 1u);
    EXPECT_NEAR(library.tables[0].attenuation_db_per_100m[0], 10.0, 1e-12);
}

TEST(Reader, RefusesADuplicateNameInAnotherFile) {
    Library library;
    read_text(library, "first.ref", head + half + check);
    EXPECT_THROW(read_text(library, "second.ref", head + half + check), Malformed);
}

TEST(Reader, RefusesAFolderWithoutFiles) {
    EXPECT_THROW(read_folder("/nowhere"), Malformed);
    EXPECT_THROW(read_folder(testing::TempDir() + "/nothing-in-here"), Malformed);
}

TEST(Reader, SurvivesEveryCutOfAFile) {
    const std::string whole = table + "case one\nsource book; page 1\nknown C\n" + half +
                              "cable table t without 200; frequency_mhz = 200; length_m = lvb_metres_from_feet(100)\n"
                              "check loss_db gives 2.4 dB\ndisagrees 1 dB: no\n";
    std::size_t refused = 0;
    for (std::size_t length = 0; length < whole.size(); ++length)
        if (refusal_of(whole.substr(0, length)) != "accepted") ++refused;
    EXPECT_GT(refused, whole.size() / 2);
}

} // namespace
} // namespace reference
