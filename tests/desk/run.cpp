#include "run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <spawn.h>
#include <sstream>
#include <sys/wait.h>
#include <unistd.h>

extern char **environ;

namespace desk_test {
namespace {

std::string drain(std::FILE *file) {
    std::string text;
    std::rewind(file);
    char buffer[4096];
    for (std::size_t n = 0; (n = std::fread(buffer, 1, sizeof buffer, file)) > 0;) text.append(buffer, n);
    std::fclose(file);
    return text;
}

std::string temporary_name() {
    const char *folder = std::getenv("TMPDIR");
    return std::string(folder == nullptr ? "/tmp" : folder) + "/levelbook-desk-XXXXXX";
}

} // namespace

Printout run(const std::vector<std::string> &arguments) {
    std::vector<std::string> words = {DESK_PROGRAM};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<char *> argv;
    for (std::string &word : words) argv.push_back(word.data());
    argv.push_back(nullptr);

    std::FILE *out = std::tmpfile();
    std::FILE *err = std::tmpfile();
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, fileno(out), STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, fileno(err), STDERR_FILENO);
    pid_t child = 0;
    const int spawned = posix_spawn(&child, DESK_PROGRAM, &actions, nullptr, argv.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    Printout result;
    int status = 0;
    if (spawned == 0 && waitpid(child, &status, 0) == child)
        result.code = WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
    result.out = drain(out);
    result.err = drain(err);
    return result;
}

std::string demo_file() { return DESK_SOURCES "/demo/nine_tin_herons.json"; }

std::vector<std::string> demo_tables() {
    std::vector<std::string> names;
    for (const auto &entry : std::filesystem::directory_iterator(DESK_SOURCES "/demo"))
        if (entry.path().extension() != ".json") names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

std::string read_file(const std::string &path) {
    std::ifstream stream(path, std::ios::binary);
    EXPECT_TRUE(stream.good()) << path;
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<std::string> lines_of(const std::string &text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

TemporaryFile::TemporaryFile(const std::string &content) {
    path_ = temporary_name();
    const int file = mkstemp(path_.data());
    EXPECT_GE(file, 0);
    const ssize_t written = write(file, content.data(), content.size());
    EXPECT_EQ(written, static_cast<ssize_t>(content.size()));
    close(file);
}

TemporaryFile::~TemporaryFile() { std::remove(path_.c_str()); }

TemporaryFolder::TemporaryFolder() {
    path_ = temporary_name();
    EXPECT_NE(mkdtemp(path_.data()), nullptr);
}

TemporaryFolder::~TemporaryFolder() { std::filesystem::remove_all(path_); }

std::string TemporaryFolder::write(const std::string &name, const std::string &content) const {
    std::string path = path_ + "/" + name;
    std::ofstream stream(path, std::ios::binary);
    stream.write(content.data(), static_cast<std::streamsize>(content.size()));
    EXPECT_TRUE(stream.good()) << path;
    return path;
}

void expect_refused(const Printout &run, const std::string &words) {
    EXPECT_EQ(run.code, 2) << run.err;
    EXPECT_EQ(run.out, "");
    EXPECT_EQ(std::count(run.err.begin(), run.err.end(), '\n'), 1) << run.err;
    EXPECT_TRUE(run.err.ends_with('\n')) << run.err;
    EXPECT_TRUE(run.err.starts_with("levelbook-desk: ")) << run.err;
    EXPECT_NE(run.err.find(words), std::string::npos) << "wanted: " << words << "\ngot:    " << run.err;
}

} // namespace desk_test
