// Every published value of the reference files, one test for each file, and what the body of evidence must hold.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "reference/judge.hpp"

namespace reference {
namespace {

const std::string folder = LEVELBOOK_REFERENCE_FOLDER;

const Library &library() {
    static const Library read = read_folder(folder);
    return read;
}

bool is_published(Known known) {
    return known == Known::print || known == Known::companion || known == Known::implementation;
}

class ReferenceFile : public testing::TestWithParam<std::string> {};

TEST_P(ReferenceFile, Agrees) {
    std::size_t counted = 0;
    for (const Case &one : library().cases) {
        if (one.file != GetParam()) continue;
        for (const Row &row : judge(one)) {
            if (row.verdict != Verdict::memory_only) ++counted;
            EXPECT_NE(row.verdict, Verdict::fails)
                << one.file << ":" << row.check->line << ": " << row.check->name << "\n  " << row.inputs
                << "\n  printed " << row.check->printed_text << " " << row.check->unit << ", levelbook " << row.value
                << ", difference " << row.difference << ", allowed " << row.tolerance << "\n  " << row.message << "\n  "
                << one.publication << "; " << one.place;
        }
    }
    EXPECT_GT(counted, 0u) << "nothing in this file counts as evidence";
}

std::string name_of(const testing::TestParamInfo<std::string> &info) {
    return info.param.substr(0, info.param.find('.'));
}

INSTANTIATE_TEST_SUITE_P(Published, ReferenceFile, testing::ValuesIn(files_of(folder)), name_of);

TEST(Evidence, HoldsAsManyRowsAndSourcesAsItDid) {
    std::set<std::string> publications;
    std::size_t published = 0;
    std::size_t derived = 0;
    std::size_t refusals = 0; // these are the header's own promises
    std::size_t chains = 0;
    for (const Case &one : library().cases) {
        if (is_published(one.known) && one.subject != "catalogue as printed") { // that is only a second copying
            publications.insert(one.publication);
            published += one.checks.size();
            if (one.set_ups.back().kind == reference::SetUp::Kind::chain) ++chains;
        }
        if (one.known == Known::derived) derived += one.checks.size();
        if (one.known == Known::contract) continue;
        for (const Check &check : one.checks) refusals += check.refusal ? 1u : 0u;
    }
    EXPECT_EQ(refusals, 0u) << "a refusal is no evidence";
    EXPECT_GE(publications.size(), 110u);
    EXPECT_GE(published, 600u);
    EXPECT_GE(derived, 240u);
    EXPECT_GE(chains, 23u) << "cases whose chain goes through lvb_compute_budget";
}

void collect(const Expression &expression, std::set<std::string_view> &functions) {
    if (expression.function != nullptr) functions.insert(expression.function->name);
    for (const Expression &part : expression.parts) collect(part, functions);
}

TEST(Evidence, CoversEveryPlainFunction) {
    std::set<std::string_view> covered;
    for (const Case &one : library().cases) {
        if (one.known == Known::memory || one.known == Known::contract) continue;
        for (const Check &check : one.checks)
            if (!check.refusal) collect(check.expression, covered);
        for (const reference::SetUp &set_up : one.set_ups) {
            for (const Field &field : set_up.fields) collect(field.value, covered);
            for (const Stage &stage : set_up.stages)
                for (const Field &field : stage.fields) collect(field.value, covered);
        }
    }
    for (const Function &function : plain_functions())
        EXPECT_TRUE(covered.contains(function.name)) << function.name << " has no reference row";
}

// Cases read from a text, judged.
std::vector<Row> judged(const std::string &text, Library &into) {
    read_text(into, "test.ref", "subject test\ncase one\n" + text);
    return judge(into.cases.front());
}

TEST(Judge, RefusesWhatLiesOutsideItsTolerance) {
    Library held;
    const auto rows =
        judged("source a; b\nknown P\ntolerance 0.1 dBm: why it is\ncheck lvb_dbm_from_mw(1) gives 0.05 dBm\n"
               "check lvb_dbm_from_mw(1) gives 0.2 dBm\n"
               "check lvb_dbm_from_mw(-1) gives 0 dBm\n",
               held);
    EXPECT_EQ(rows[0].verdict, Verdict::agrees);
    EXPECT_EQ(rows[1].verdict, Verdict::fails);
    EXPECT_EQ(rows[2].verdict, Verdict::fails) << "not a number agrees with nothing";
}

TEST(Judge, ChecksThatADisagreementIsWhatItIsSaidToBe) {
    Library held;
    const auto rows = judged("source a; b\nknown P\ntolerance 0.1 dBm: why it is\n"
                             "check lvb_dbm_from_mw(1) gives 3 dBm\ndisagrees -3 dBm: misprint\n"
                             "check lvb_dbm_from_mw(1) gives 3 dBm\ndisagrees 3 dBm: the wrong way round\n"
                             "check lvb_dbm_from_mw(1) gives 0 dBm\ndisagrees 1 dBm: it does agree\n",
                             held);
    EXPECT_EQ(rows[0].verdict, Verdict::disagrees_as_said);
    EXPECT_EQ(rows[1].verdict, Verdict::fails);
    EXPECT_EQ(rows[2].verdict, Verdict::fails);
}

TEST(Judge, NeverCountsMemory) {
    Library held;
    const auto rows = judged("source from memory; b\nknown M\ntolerance 0.1 dBm: why it is\n"
                             "check lvb_dbm_from_mw(1) gives 0 dBm\ncheck lvb_dbm_from_mw(1) gives 9 dBm\n",
                             held);
    EXPECT_EQ(rows[0].verdict, Verdict::memory_only);
    EXPECT_EQ(rows[1].verdict, Verdict::memory_only);
    EXPECT_NE(rows[0].message, rows[1].message);
}

TEST(Judge, TakesPercentOfThePrintedValue) {
    Library held;
    const auto rows =
        judged("source a; b\nknown P\ntolerance 1 %: why it is\ncheck lvb_mw_from_dbm(20) gives 100.9 mW\n"
               "check lvb_mw_from_dbm(20) gives 101.1 mW\n",
               held);
    EXPECT_EQ(rows[0].verdict, Verdict::agrees);
    EXPECT_EQ(rows[1].verdict, Verdict::fails);
}

TEST(Judge, ChecksRefusals) {
    Library held;
    const auto rows =
        judged("source a; b\nknown P\nrefuses lvb_dbm_from_mw(-1): negative\n"
               "refuses lvb_dbm_from_mw(1): is not refused\n"
               "chain frequency_mhz = 600\nstage antenna, first\nrefuses LVB_E_NO_SOURCE: no source\n"
               "chain frequency_mhz = 600\nstage antenna, first\nrefuses LVB_E_NAN: another reason\n"
               "chain frequency_mhz = 600\nstage source, first; level_dbm = 1\nrefuses LVB_E_NO_SOURCE: is not\n",
               held);
    EXPECT_EQ(rows[0].verdict, Verdict::agrees);
    EXPECT_EQ(rows[1].verdict, Verdict::fails);
    EXPECT_EQ(rows[2].verdict, Verdict::agrees);
    EXPECT_EQ(rows[3].verdict, Verdict::fails);
    EXPECT_EQ(rows[4].verdict, Verdict::fails);
}

TEST(Judge, SaysWhyAChainWasRefused) {
    Library held;
    const auto rows =
        judged("source a; b\nknown P\ntolerance 1 dB: why it is\nchain frequency_mhz = 600\nstage antenna, first\n"
               "check far_level_dbm gives 0 dBm\n",
               held);
    EXPECT_EQ(rows[0].verdict, Verdict::fails);
    EXPECT_NE(rows[0].message.find("refused"), std::string::npos);
}

TEST(Judge, FillsHalfAUnit) {
    Library held;
    const auto rows = judged("source a; b\nknown P\ntolerance half a unit of the last printed digit\n"
                             "check lvb_dbm_from_mw(1) gives 0.04 dBm\ncheck lvb_dbm_from_mw(1) gives 0 dBm\n"
                             "check lvb_w_from_dbm(-140) gives 1.0e-17 W\ncheck lvb_w_from_dbm(-140) gives 1.1e-17 W\n",
                             held);
    EXPECT_DOUBLE_EQ(rows[0].tolerance, 0.005);
    EXPECT_EQ(rows[0].verdict, Verdict::fails);
    EXPECT_DOUBLE_EQ(rows[1].tolerance, 0.5);
    EXPECT_EQ(rows[2].verdict, Verdict::agrees);
    EXPECT_NEAR(rows[2].tolerance, 0.05e-17, 1e-24);
    EXPECT_EQ(rows[3].verdict, Verdict::fails);
}

} // namespace
} // namespace reference
