// replay FOLDER COUNT: feeds a fuzz target every file of a corpus, and COUNT inputs made by a fixed generator: half of
// them at random, half by damaging files of the corpus. Without a fuzzer, and the same on every machine.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size);

namespace {

using Input = std::vector<std::uint8_t>;

std::vector<Input> read_corpus(const char *folder) {
    std::vector<std::filesystem::path> paths;
    for (const auto &entry : std::filesystem::directory_iterator(folder)) paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<Input> corpus;
    for (const auto &path : paths) {
        std::ifstream file(path, std::ios::binary);
        corpus.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    return corpus;
}

// A copy for each run, so that a sanitizer sees a read beyond its end.
void run(const Input &input) {
    const Input exact(input);
    LLVMFuzzerTestOneInput(exact.data(), exact.size());
}

} // namespace

int main(int argc, char **argv) {
    if (argc != 3) return std::fprintf(stderr, "usage: %s FOLDER COUNT\n", argv[0]), 2;
    const std::vector<Input> corpus = read_corpus(argv[1]);
    if (corpus.empty()) return std::fprintf(stderr, "%s holds no files\n", argv[1]), 1;
    for (const Input &input : corpus) run(input);

    std::mt19937_64 random(20260101);
    const long count = std::atol(argv[2]);
    for (long i = 0; i < count; ++i) {
        Input input;
        if (i % 2 == 0) {
            input.resize(random() % 512);
            for (std::uint8_t &byte : input) byte = static_cast<std::uint8_t>(random());
        } else {
            input = corpus[random() % corpus.size()];
            for (std::uint64_t hits = 1 + random() % 4; hits > 0 && !input.empty(); --hits)
                input[random() % input.size()] = static_cast<std::uint8_t>(random());
        }
        run(input);
    }
    std::printf("%zu files and %ld made inputs\n", corpus.size(), count);
    return 0;
}
