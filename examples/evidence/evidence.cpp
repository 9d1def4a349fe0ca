// levelbook-evidence: prints, for a person, every published value that levelbook is checked against: what goes in, what
// the source prints, what levelbook gives, how far they lie apart and how far they may.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <exception>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "reference/judge.hpp"

namespace {

using namespace reference;

constexpr const char *usage = "usage: levelbook-evidence [--csv] [FOLDER]\n"
                              "Checks levelbook against the published values in FOLDER/*.ref and prints the table.\n"
                              "Exit code: 0 all agree, 1 some do not, 2 bad input.\n";

std::string number(double value, int digits = 9) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*g", digits, value);
    return text;
}

const char *known_as(Known known) {
    switch (known) {
    case Known::print:
        return "seen in print";
    case Known::companion:
        return "seen in a companion to the textbook, recomputed";
    case Known::implementation:
        return "coefficients seen in an implementation";
    case Known::derived:
        return "derived from exact constants or printed lines";
    case Known::practice:
        return "rule of the trade";
    case Known::unnamed:
        return "seen in a document that cannot be named";
    case Known::contract:
        return "the header's own promise, no evidence";
    case Known::memory:
        return "from memory only";
    }
    return "";
}

const char *verdict_word(Verdict verdict) {
    switch (verdict) {
    case Verdict::agrees:
        return "agrees";
    case Verdict::disagrees_as_said:
        return "disagrees as stated";
    case Verdict::memory_only:
        return "not counted";
    case Verdict::fails:
        return "FAILS";
    }
    return "";
}

std::string source_of(const Row &row) { return row.from->publication + "; " + row.from->place; }

// The stages of a chain one under another, as a person reads them.
std::string in_lines(const std::string &inputs) {
    std::string out;
    for (std::size_t at = 0; at < inputs.size();) {
        const std::size_t bar = std::min(inputs.find(" | ", at), inputs.find(" => ", at));
        out += inputs.substr(at, bar - at);
        if (bar == std::string::npos) break;
        out += "\n               ";
        at = bar + (inputs[bar + 1] == '|' ? 3 : 1);
    }
    return out;
}

// A field of a CSV file (RFC 4180).
std::string quoted(const std::string &text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + "\"";
}

void print_csv(const std::vector<Row> &rows) {
    std::printf("name,subject,inputs,printed,unit,levelbook,difference,tolerance,verdict,known,source,tolerance_reason,"
                "disagrees_because,remark\r\n");
    for (const Row &row : rows) {
        const Check &check = *row.check;
        const std::string texts[] = {check.name,
                                     row.from->subject,
                                     row.inputs,
                                     check.refusal ? "refused" : check.printed_text,
                                     check.unit,
                                     check.refusal ? "" : number(row.value, 12),
                                     check.refusal ? "" : number(row.difference, 6),
                                     check.refusal ? "" : number(row.tolerance, 6),
                                     verdict_word(row.verdict),
                                     std::string(1, static_cast<char>(row.from->known)),
                                     source_of(row),
                                     check.tolerance.reason,
                                     check.disagrees_because,
                                     check.remark};
        const char *comma = "";
        for (const std::string &text : texts) {
            std::printf("%s%s", comma, quoted(text).c_str());
            comma = ",";
        }
        std::printf("\r\n");
    }
}

void print_row(const Row &row) {
    const Check &check = *row.check;
    std::printf("  %s: %s\n    inputs     %s\n", check.name.c_str(), verdict_word(row.verdict),
                in_lines(row.inputs).c_str());
    if (check.refusal) std::printf("    expected   refusal: %s\n", check.remark.c_str());
    else {
        std::printf("    printed    %s %s\n    levelbook  %s %s\n", check.printed_text.c_str(), check.unit.c_str(),
                    number(row.value).c_str(), check.unit.c_str());
        std::printf("    difference %s %s, allowed %s: %s\n", number(row.difference, 4).c_str(), check.unit.c_str(),
                    number(row.tolerance, 4).c_str(), check.tolerance.reason.c_str());
    }
    if (check.disagrees) std::printf("    because    %s\n", check.disagrees_because.c_str());
    if (!check.remark.empty() && !check.refusal) std::printf("    remark     %s\n", check.remark.c_str());
    if (!row.message.empty()) std::printf("    note       %s\n", row.message.c_str());
    std::printf("    source     %s [%c, %s]\n", source_of(row).c_str(), static_cast<char>(row.from->known),
                known_as(row.from->known));
}

void print_leave_one_out(const char *what, const std::vector<Table> &tables) {
    std::vector<LeftOut> all;
    for (const Table &table : tables)
        for (const LeftOut &one : leave_one_out(table)) all.push_back(one);
    if (all.empty()) return;
    std::sort(all.begin(), all.end(),
              [](const LeftOut &a, const LeftOut &b) { return std::fabs(a.percent) < std::fabs(b.percent); });
    const LeftOut &worst = all.back();
    std::printf("  %s: each of %zu rows that stand between two others, left out and predicted from the rest:\n"
                "    median %.1f %%, nine of ten within %.1f %%, worst %+.1f %% (%s at %s MHz, from %s and %s MHz)\n",
                what, all.size(), std::fabs(all[all.size() / 2].percent), std::fabs(all[all.size() * 9 / 10].percent),
                worst.percent, worst.table.c_str(), number(worst.frequency_mhz).c_str(),
                number(worst.below_mhz).c_str(), number(worst.above_mhz).c_str());
}

void print_summary(const Library &library, const std::vector<Row> &rows) {
    std::set<std::string> sources;
    std::map<Verdict, std::size_t> count;
    std::map<Known, std::size_t> known;
    const Row *worst = nullptr; // nearest to, or beyond, its tolerance
    for (const Row &row : rows) {
        const Known how = row.from->known;
        if (how == Known::print || how == Known::companion || how == Known::implementation)
            sources.insert(row.from->publication);
        ++count[row.verdict];
        ++known[row.from->known];
        const bool counted = row.verdict == Verdict::agrees && !row.check->refusal;
        const auto share = [](const Row &of) { return std::fabs(of.difference) / of.tolerance; };
        if (counted && (worst == nullptr || share(row) > share(*worst))) worst = &row;
    }
    std::printf("\nsummary\n  %zu rows in %zu cases from %zu published sources: %zu agree, %zu disagree as stated, %zu "
                "known from "
                "memory only and not counted, %zu fail\n",
                rows.size(), library.cases.size(), sources.size(), count[Verdict::agrees],
                count[Verdict::disagrees_as_said], count[Verdict::memory_only], count[Verdict::fails]);
    for (const auto &[how, rows_of] : known)
        std::printf("  %c %-50s %zu\n", static_cast<char>(how), known_as(how), rows_of);
    if (worst != nullptr)
        std::printf("  nearest to its tolerance: %s, off by %s of %s %s allowed\n", worst->check->name.c_str(),
                    number(worst->difference, 4).c_str(), number(worst->tolerance, 4).c_str(),
                    worst->check->unit.c_str());
    print_leave_one_out("cable catalogue", catalogue());
    print_leave_one_out("other cable tables", library.tables);
    for (const Row &row : rows)
        if (row.verdict == Verdict::disagrees_as_said)
            std::printf("  disagrees: %s, by %s %s: %s\n", row.check->name.c_str(), number(row.difference, 4).c_str(),
                        row.check->unit.c_str(), row.check->disagrees_because.c_str());
    for (const Row &row : rows)
        if (row.verdict == Verdict::fails)
            std::printf("  FAILS: %s (%s:%d): %s\n", row.check->name.c_str(), row.from->file.c_str(), row.check->line,
                        row.message.c_str());
    std::printf("A prediction does not replace a walk test; the regulator's and exposure rules in force decide.\n");
}

int run(const std::vector<std::string> &arguments) {
    bool csv = false;
    std::string folder = LEVELBOOK_REFERENCE_FOLDER;
    bool folder_given = false;
    for (const std::string &argument : arguments) {
        if (argument == "--help") return std::printf("%s", usage), 0;
        if (argument == "--csv" && !csv) csv = true;
        else if (!argument.starts_with("-") && !folder_given) {
            folder = argument;
            folder_given = true;
        } else return std::fprintf(stderr, "levelbook-evidence: unexpected '%s'\n%s", argument.c_str(), usage), 2;
    }
    const Library library = read_folder(folder);
    std::vector<Row> rows;
    for (const Case &one : library.cases)
        for (Row &row : judge(one)) rows.push_back(std::move(row));
    if (csv) print_csv(rows);
    else {
        std::string subject;
        for (const Row &row : rows) {
            if (row.from->subject != subject)
                std::printf("%s%s\n", subject.empty() ? "" : "\n", row.from->subject.c_str());
            subject = row.from->subject;
            print_row(row);
        }
        print_summary(library, rows);
    }
    if (std::fflush(stdout) != 0) return std::fprintf(stderr, "levelbook-evidence: cannot write\n"), 2;
    return std::any_of(rows.begin(), rows.end(), [](const Row &row) { return row.verdict == Verdict::fails; }) ? 1 : 0;
}

} // namespace

int main(int argc, char **argv) {
    try {
        return run({argv + 1, argv + argc});
    } catch (const std::exception &error) {
        std::fprintf(stderr, "levelbook-evidence: %s\n", error.what());
        return 2;
    }
}
