// The demo and its tables cut short and with bytes changed: whatever comes, the program answers or refuses, and never
// crashes.
#include "run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <regex>

namespace desk_test {
namespace {

// True where the program answered; a refusal names a file of the folder, line and column.
bool expect_an_answer_or_a_refusal(const std::vector<std::string> &arguments, const std::string &folder,
                                   const std::string &text) {
    const Printout answer = run(arguments);
    EXPECT_GE(answer.code, 0) << "crashed on:\n" << text;
    EXPECT_LE(answer.code, 2) << answer.err << text;
    if (answer.code < 2) {
        EXPECT_EQ(answer.err, "") << text;
        return true;
    }
    expect_refused(answer, "levelbook-desk: " + folder + "/");
    static const std::regex place("[^:]*: [^:]*:[0-9]+:[0-9]+: .+\n");
    EXPECT_TRUE(std::regex_match(answer.err, place)) << answer.err << text;
    return false;
}

// A copy of the demo beside its tables.
class MutatedDemo {
  public:
    MutatedDemo() {
        for (const std::string &name : demo_tables()) folder_.write(name, read_file(DESK_SOURCES "/demo/" + name));
    }
    bool expect_an_answer_or_a_refusal(const std::string &text) const {
        const std::string file = folder_.write("demo.json", text);
        return desk_test::expect_an_answer_or_a_refusal({"budget", file}, folder_.path(), text);
    }

  private:
    TemporaryFolder folder_;
};

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
    const MutatedDemo demo;
    std::mt19937 random(20240517); // fixed: every run is the same
    for (int i = 0; i < 200; ++i) {
        std::string text = whole;
        for (int k = 0; k < 1 + i % 4; ++k) text[random() % text.size()] = static_cast<char>(random() % 256);
        demo.expect_an_answer_or_a_refusal(text);
    }
}

// Changes that leave most files good JSON, so that they reach the scenario and the library.
TEST(Mutations, DigitsAndLettersExchanged) {
    const std::string whole = read_file(demo_file());
    const MutatedDemo demo;
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
        answered += demo.expect_an_answer_or_a_refusal(text) ? 1 : 0;
    }
    EXPECT_GT(answered, 20);
}

TEST(Mutations, PiecesRemovedAndDoubled) {
    const std::string whole = read_file(demo_file());
    const MutatedDemo demo;
    std::mt19937 random(20240519);
    for (int i = 0; i < 100; ++i) {
        const std::size_t at = random() % whole.size();
        const std::size_t length = random() % 80;
        std::string text = whole;
        if (i % 2 == 0) text.erase(at, length);
        else text.insert(at, whole.substr(at, length));
        demo.expect_an_answer_or_a_refusal(text);
    }
}

// Tables of every form; the names tell how each is read.
struct Original {
    std::string name;
    std::string text;
};

std::vector<Original> original_tables() {
    std::vector<Original> tables;
    for (const std::string &name : demo_tables()) tables.push_back({name, read_file(DESK_SOURCES "/demo/" + name)});
    tables.push_back({"noise.s2p",
                      "! noise\n# GHz S MA R 50\n2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 "
                      "40 .56 -85\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n"});
    tables.push_back({"three.s3p",
                      "# MHz S RI R 50 75 50\n1 .1 0 .2 0 .3 0\n.4 0 .5 0 .6 0\n.7 0 .8 0 .9 0\n2 .1 0 .2 0 "
                      ".3 0\n.4 0 .5 0 .6 0\n.7 0 .8 0 .9 0\n"});
    tables.push_back({"lower.ts",
                      "[Version] 2.1\n# Hz DB\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of "
                      "Frequencies] 2\n[Number of Noise Frequencies] 1\n[Matrix Format] Lower\n[Begin "
                      "Information]\n[Owner] me\n[End Information]\n[Reference]\n50\n75\n[Network "
                      "Data]\n1e6 -20 0 -3 0\n-20 0\n2e6 -20 0 -3.5 0\n-20 0\n[Noise Data]\n1e6 1 .1 0 "
                      ".5\n[End]\n"});
    tables.push_back({"quoted.csv", "# what\r\n\"frequency_hz\",\"note\",loss_db\r\n100e6,\"a \"\"b\"\"\r\n, "
                                    "c\",3.5\r\n200e6,,\"3.6\"\r\n"});
    return tables;
}

TEST(TableMutations, CutAtEveryByte) {
    const TemporaryFolder folder;
    for (const Original &table : original_tables())
        for (std::size_t length = 0; length < table.text.size(); length += 1 + table.text.size() / 80) {
            const std::string text = table.text.substr(0, length);
            expect_an_answer_or_a_refusal({"table", folder.write(table.name, text)}, folder.path(), text);
        }
}

TEST(TableMutations, BytesChangedRemovedAndDoubled) {
    const TemporaryFolder folder;
    std::mt19937 random(20240520); // fixed: every run is the same
    int answered = 0;
    int refused = 0;
    for (const Original &table : original_tables())
        for (int i = 0; i < 80; ++i) {
            std::string text = table.text;
            const std::size_t at = random() % text.size();
            const std::size_t length = random() % 20;
            if (i % 3 == 0) text[at] = static_cast<char>(random() % 256);
            else if (i % 3 == 1) text.erase(at, length);
            else text.insert(at, table.text.substr(at, length));
            const bool answer =
                expect_an_answer_or_a_refusal({"table", folder.write(table.name, text)}, folder.path(), text);
            ++(answer ? answered : refused);
        }
    EXPECT_GT(answered, 100);
    EXPECT_GT(refused, 100);
}

// Words of both formats in any order reach states that no change of a good file reaches.
TEST(TableMutations, WordsInAnyOrder) {
    const std::vector<std::string> words = {"[Version] 2.0\n",
                                            "# MHz S RI R 50\n",
                                            "#\n",
                                            "[Number of Ports] 2\n",
                                            "[Two-Port Data Order] 12_21\n",
                                            "[Number of Frequencies] 1\n",
                                            "[Reference] 50\n",
                                            "[Matrix Format] Upper\n",
                                            "[Network Data]\n",
                                            "[Noise Data]\n",
                                            "[End]\n",
                                            "[Begin Information]\n",
                                            "[End Information]\n",
                                            "1 2 3 4 5 6 7 8 9\n",
                                            "2 1 0 1 0 1 0\n",
                                            "1 2 3 4 5\n",
                                            "1 2\n",
                                            "[Number of Noise Frequencies] 1\n",
                                            "frequency_mhz",
                                            "gain_db",
                                            ",",
                                            "\n",
                                            "\"",
                                            "1",
                                            "-2",
                                            "note",
                                            "!",
                                            "[",
                                            "]",
                                            "\r",
                                            "#"};
    const TemporaryFolder folder;
    std::mt19937 random(20240521);
    for (int i = 0; i < 400; ++i) {
        std::string text;
        if (i % 2 == 0) text = "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n";
        for (std::size_t k = random() % 14; k > 0; --k) text += words[random() % words.size()];
        const std::string name = i % 3 == 0 ? "x.csv" : i % 3 == 1 ? "x.s2p" : "x.ts";
        expect_an_answer_or_a_refusal({"table", folder.write(name, text)}, folder.path(), text);
    }
}

} // namespace
} // namespace desk_test
