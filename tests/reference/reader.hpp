// Reader of the reference files: published values as plain text, in a line language described in README.md.
// It is strict: whatever it does not understand is refused with file and line.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reference/expression.hpp"

namespace reference {

/// How a value is known.
enum class Known : char {
    print = 'P',          ///< seen in print
    companion = 'C',      ///< inputs and page from a public companion to the textbook, recomputed
    implementation = 'I', ///< coefficients seen in a public implementation
    derived = 'D',        ///< derived from exact constants, or from the printed lines of the publication
    practice = 'R',       ///< a rule of the trade: common practice, no source
    unnamed = 'N',        ///< seen in print, in a document that cannot be named: checked, not counted as published
    contract = 'H',       ///< what the header promises: checked, no evidence
    memory = 'M'          ///< from memory: reported, never counted
};

/// A printed table of cable attenuation, per 100 m, that cases look up as a host's own.
struct Table {
    std::string name;
    std::string source;
    std::vector<double> frequency_mhz;
    std::vector<double> attenuation_db_per_100m;
};

struct Field {
    std::string name;
    Expression value;
};

struct Stage {
    int kind = 0;
    std::string label;
    int cable_type = 0; // of a cable: a type of the catalogue, or
    Table table;        // a host's table where it has rows
    std::vector<Field> fields;
};

/// What is computed before the checks of a case read its results.
struct SetUp {
    enum class Kind { none, cable, chain, path, coaxial, neighbours, rule };
    Kind kind = Kind::none;
    std::string text;     // the lines, for a person
    int cable_type = 0;   // a type of the catalogue, or
    Table table;          // a host's table where it has rows
    int path_model = 0;   // of a path: LVB_PATH_
    std::string citation; // of a rule
    std::vector<Field> fields;
    std::vector<Stage> stages;
};

struct Tolerance {
    double amount = 0.0; // 0: half a unit of the last printed digit
    std::string unit;    // "%" is relative to the printed value
    std::string reason;
};

/// One printed result, or one expected refusal.
struct Check {
    std::string name; // of the case, with a number
    int line = 0;
    std::size_t set_up = 0; // index into the case's set-ups
    std::string text;       // the expression as written
    Expression expression;
    std::string printed_text;
    double printed = 0.0;
    std::string unit;
    Tolerance tolerance;             // its amount filled in
    std::optional<double> disagrees; // stated amount: levelbook less printed
    std::string disagrees_because;
    bool refusal = false;       // the call must be refused
    std::string refusal_status; // of a chain or cable: the status' name
    std::string remark;
};

struct Case {
    std::string name;
    std::string subject;
    std::string file;
    int line = 0;
    std::string publication;
    std::string place; // section or page
    Known known = Known::print;
    std::vector<SetUp> set_ups; // the first is empty
    std::vector<Check> checks;
};

struct Library {
    std::vector<Case> cases;
    std::vector<Table> tables;
};

/// Adds a file's text; throws Malformed with "file:line: what".
void read_text(Library &library, const std::string &file, const std::string &text);
/// Adds all *.ref files of a folder, in order of their names; throws Malformed.
Library read_folder(const std::string &folder);
std::vector<std::string> files_of(const std::string &folder);

} // namespace reference
