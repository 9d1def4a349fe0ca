// Runs levelbook-desk and keeps what it printed.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace desk_test {

struct Printout {
    int code = -1; ///< exit code; minus the signal where the program crashed
    std::string out;
    std::string err;
};

Printout run(const std::vector<std::string> &arguments);

std::string demo_file();
/// The tables that the demo names, beside it.
std::vector<std::string> demo_tables();
std::string read_file(const std::string &path);
std::vector<std::string> lines_of(const std::string &text);

/// A file of its own in the temporary folder, removed at the end of its life.
class TemporaryFile {
  public:
    explicit TemporaryFile(const std::string &content);
    ~TemporaryFile();
    TemporaryFile(const TemporaryFile &) = delete;
    TemporaryFile &operator=(const TemporaryFile &) = delete;
    const std::string &path() const { return path_; }

  private:
    std::string path_;
};

/// A folder of its own in the temporary folder, removed with its files at the end of its life.
class TemporaryFolder {
  public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder &) = delete;
    TemporaryFolder &operator=(const TemporaryFolder &) = delete;
    const std::string &path() const { return path_; }
    /// Writes a file, over the one before it; the answer is its path.
    std::string write(const std::string &name, const std::string &content) const;

  private:
    std::string path_;
};

/// Fails the test unless the run was refused the agreed way: exit code 2, nothing on stdout, one line on stderr.
void expect_refused(const Printout &run, const std::string &words);

} // namespace desk_test
