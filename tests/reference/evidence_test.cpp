// levelbook-evidence as a person starts it: exit codes, the table as CSV, and one clear line on bad input.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "reference/judge.hpp"

namespace reference {
namespace {

struct Outcome {
    int exit_code = -1;
    std::string output; // with errors
};

Outcome start(const std::string &arguments) {
    Outcome outcome;
    std::FILE *pipe = popen((std::string(LEVELBOOK_EVIDENCE) + " " + arguments + " 2>&1").c_str(), "r");
    if (pipe == nullptr) return outcome;
    std::array<char, 4096> part;
    while (const std::size_t length = std::fread(part.data(), 1, part.size(), pipe))
        outcome.output.append(part.data(), length);
    const int status = pclose(pipe);
    if (WIFEXITED(status)) outcome.exit_code = WEXITSTATUS(status);
    return outcome;
}

// A folder with one file.
std::string folder_with(const std::string &name, const std::string &text) {
    const std::filesystem::path folder = std::filesystem::path(testing::TempDir()) / ("levelbook_evidence_" + name);
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "one.ref") << text;
    return folder.string();
}

const std::string head = "subject test\ncase one\nsource \"book\"; page 1\nknown P\n"
                         "tolerance half a unit of the last printed digit\n";

TEST(EvidenceProgram, PrintsTheTable) {
    const Outcome outcome = start("");
    EXPECT_EQ(outcome.exit_code, 0) << outcome.output;
    EXPECT_NE(outcome.output.find("rappaport_4_2.1: agrees"), std::string::npos);
    EXPECT_NE(outcome.output.find("summary"), std::string::npos);
    EXPECT_NE(outcome.output.find("walk test"), std::string::npos);
}

TEST(EvidenceProgram, WritesOneRecordOfCsvForEachRow) {
    std::size_t rows = 0;
    for (const Case &one : read_folder(LEVELBOOK_REFERENCE_FOLDER).cases) rows += one.checks.size();
    const Outcome outcome = start("--csv");
    EXPECT_EQ(outcome.exit_code, 0);
    std::size_t records = 0;
    std::size_t commas = 0; // outside quotes
    bool quoted = false;
    for (const char c : outcome.output) {
        if (c == '"') quoted = !quoted;
        if (c == ',' && !quoted) ++commas;
        if (c == '\n' && !quoted) ++records;
    }
    EXPECT_FALSE(quoted);
    EXPECT_EQ(records, rows + 1);
    EXPECT_EQ(commas, 13 * records) << "each record has 14 fields";
}

TEST(EvidenceProgram, DoublesQuotesInCsv) {
    const Outcome outcome = start("--csv " + folder_with("quotes", head + "check lvb_dbm_from_mw(1) gives 0 dBm\n"));
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_NE(outcome.output.find("\"\"\"book\"\"; page 1\""), std::string::npos) << outcome.output;
}

TEST(EvidenceProgram, ExitsWithOneWhereARowFails) {
    const std::string folder = folder_with("failing", head + "check lvb_dbm_from_mw(1) gives 9 dBm\n");
    const Outcome outcome = start(folder);
    EXPECT_EQ(outcome.exit_code, 1);
    EXPECT_NE(outcome.output.find("FAILS: one.1 (one.ref:6)"), std::string::npos) << outcome.output;
    EXPECT_EQ(start("--csv " + folder).exit_code, 1);
}

TEST(EvidenceProgram, ExitsWithTwoOnBadInput) {
    const Outcome bad = start(folder_with("bad", head + "chekc lvb_dbm_from_mw(1) gives 9 dBm\n"));
    EXPECT_EQ(bad.exit_code, 2);
    EXPECT_NE(bad.output.find("one.ref:6: unknown key 'chekc'"), std::string::npos) << bad.output;
    EXPECT_EQ(start("/nowhere").exit_code, 2);
    EXPECT_EQ(start("--tsv").exit_code, 2);
    EXPECT_EQ(start("/nowhere /nowhere").exit_code, 2);
}

TEST(EvidenceProgram, HelpsOnRequest) {
    const Outcome outcome = start("--help");
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_NE(outcome.output.find("usage: levelbook-evidence"), std::string::npos);
}

} // namespace
} // namespace reference
