// The demo file cut short and with bytes changed: whatever comes, the program answers or refuses, and never crashes.
#include "run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace desk_test {
namespace {

// True where the program answered.
bool expect_an_answer_or_a_refusal(const std::string &text) {
    const TemporaryFile file(text);
    const Printout answer = run({"budget", file.path()});
    EXPECT_GE(answer.code, 0) << "crashed on:\n" << text;
    EXPECT_LE(answer.code, 2) << answer.err << text;
    if (answer.code == 2) expect_refused(answer, file.path() + ":");
    else EXPECT_EQ(answer.err, "") << text;
    return answer.code < 2;
}

TEST(Mutations, FileCutAtEveryFewBytes) {
    const std::string whole = read_file(demo_file());
    int refused = 0;
    for (std::size_t length = 0; length + 3 < whole.size(); length += 61) { // the last bytes are line ends
        const TemporaryFile file(whole.substr(0, length));
        const Printout answer = run({"budget", file.path()});
        expect_refused(answer, "this is not JSON");
        refused += answer.code == 2 ? 1 : 0;
    }
    EXPECT_GT(refused, 100);
}

TEST(Mutations, BytesChanged) {
    const std::string whole = read_file(demo_file());
    std::mt19937 random(20240517); // fixed: every run is the same
    for (int i = 0; i < 200; ++i) {
        std::string text = whole;
        for (int k = 0; k < 1 + i % 4; ++k) text[random() % text.size()] = static_cast<char>(random() % 256);
        expect_an_answer_or_a_refusal(text);
    }
}

// Changes that leave most files good JSON, so that they reach the scenario and the library.
TEST(Mutations, DigitsAndLettersExchanged) {
    const std::string whole = read_file(demo_file());
    std::mt19937 random(20240518);
    const auto like = [&](char c) {
        if (c >= '0' && c <= '9') return static_cast<char>('0' + random() % 10);
        if (c >= 'a' && c <= 'z') return static_cast<char>('a' + random() % 26);
        return c;
    };
    int answered = 0;
    for (int i = 0; i < 200; ++i) {
        std::string text = whole;
        for (int k = 0; k < 3; ++k) {
            char &c = text[random() % text.size()];
            c = like(c);
        }
        answered += expect_an_answer_or_a_refusal(text) ? 1 : 0;
    }
    EXPECT_GT(answered, 20);
}

TEST(Mutations, PiecesRemovedAndDoubled) {
    const std::string whole = read_file(demo_file());
    std::mt19937 random(20240519);
    for (int i = 0; i < 100; ++i) {
        const std::size_t at = random() % whole.size();
        const std::size_t length = random() % 80;
        std::string text = whole;
        if (i % 2 == 0) text.erase(at, length);
        else text.insert(at, whole.substr(at, length));
        expect_an_answer_or_a_refusal(text);
    }
}

} // namespace
} // namespace desk_test
