// levelbook-evidence as a person starts it: exit codes, the table as CSV, and one clear line on bad input.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <vector>

#include "reference/judge.hpp"

extern char **environ;

namespace reference {
namespace {

struct Outcome {
    int exit_code = -1;
    std::string output; // with errors
};

// No shell stands between: a path may hold anything.
Outcome start(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), LEVELBOOK_EVIDENCE);
    std::vector<char *> words;
    for (std::string &argument : arguments) words.push_back(argument.data());
    words.push_back(nullptr);
    Outcome outcome;
    int ends[2];
    if (pipe(ends) != 0) return outcome;
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, ends[1], STDERR_FILENO);
    posix_spawn_file_actions_addclose(&actions, ends[0]);
    posix_spawn_file_actions_addclose(&actions, ends[1]);
    pid_t child = 0;
    const bool started = posix_spawn(&child, LEVELBOOK_EVIDENCE, &actions, nullptr, words.data(), environ) == 0;
    posix_spawn_file_actions_destroy(&actions);
    close(ends[1]);
    std::array<char, 4096> part;
    for (ssize_t length = 0; (length = read(ends[0], part.data(), part.size())) > 0;)
        outcome.output.append(part.data(), static_cast<std::size_t>(length));
    close(ends[0]);
    int status = 0;
    if (started && waitpid(child, &status, 0) == child && WIFEXITED(status)) outcome.exit_code = WEXITSTATUS(status);
    return outcome;
}

// A folder of its own with one file, while the object lives.
class Folder {
  public:
    explicit Folder(const std::string &text) {
        std::string name = (std::filesystem::path(testing::TempDir()) / "levelbook evidence XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) return;
        path_ = name;
        std::ofstream(path_ / "one.ref") << text;
    }
    ~Folder() {
        if (!path_.empty()) std::filesystem::remove_all(path_);
    }
    Folder(const Folder &) = delete;
    Folder &operator=(const Folder &) = delete;
    std::string path() const { return path_.string(); }

  private:
    std::filesystem::path path_;
};

const std::string head = "subject test\ncase one\nsource \"book\"; page 1\nknown P\n"
                         "tolerance half a unit of the last printed digit\n";

TEST(EvidenceProgram, PrintsTheTable) {
    const Outcome outcome = start({});
    EXPECT_EQ(outcome.exit_code, 0) << outcome.output;
    EXPECT_NE(outcome.output.find("rappaport_4_2.1: agrees"), std::string::npos);
    EXPECT_NE(outcome.output.find("summary"), std::string::npos);
    EXPECT_NE(outcome.output.find("walk test"), std::string::npos);
}

TEST(EvidenceProgram, WritesOneRecordOfCsvForEachRow) {
    std::size_t rows = 0;
    for (const Case &one : read_folder(LEVELBOOK_REFERENCE_FOLDER).cases) rows += one.checks.size();
    const Outcome outcome = start({"--csv"});
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
    const Folder folder(head + "check lvb_dbm_from_mw(1) gives 0 dBm\n");
    const Outcome outcome = start({"--csv", folder.path()});
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_NE(outcome.output.find("\"\"\"book\"\"; page 1\""), std::string::npos) << outcome.output;
}

TEST(EvidenceProgram, ExitsWithOneWhereARowFails) {
    const Folder folder(head + "check lvb_dbm_from_mw(1) gives 9 dBm\n");
    const Outcome outcome = start({folder.path()});
    EXPECT_EQ(outcome.exit_code, 1);
    EXPECT_NE(outcome.output.find("FAILS: one.1 (one.ref:6)"), std::string::npos) << outcome.output;
    EXPECT_EQ(start({"--csv", folder.path()}).exit_code, 1);
}

TEST(EvidenceProgram, ExitsWithTwoOnBadInput) {
    const Folder folder(head + "chekc lvb_dbm_from_mw(1) gives 9 dBm\n");
    const Outcome bad = start({folder.path()});
    EXPECT_EQ(bad.exit_code, 2);
    EXPECT_NE(bad.output.find("one.ref:6: unknown key 'chekc'"), std::string::npos) << bad.output;
    EXPECT_EQ(start({"/nowhere"}).exit_code, 2);
    EXPECT_EQ(start({"--tsv"}).exit_code, 2);
    EXPECT_EQ(start({"/nowhere", "/nowhere"}).exit_code, 2);
}

TEST(EvidenceProgram, HelpsOnRequest) {
    const Outcome outcome = start({"--help"});
    EXPECT_EQ(outcome.exit_code, 0);
    EXPECT_NE(outcome.output.find("usage: levelbook-evidence"), std::string::npos);
}

} // namespace
} // namespace reference
