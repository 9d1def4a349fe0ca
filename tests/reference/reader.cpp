#include "reference/reader.hpp"

#include <levelbook/levelbook.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "reference/judge.hpp"

namespace reference {
namespace {

constexpr std::string_view half_a_unit = "half a unit of the last printed digit";

struct Pair {
    std::string left;
    std::string right;
    bool split = false;
};

Pair split_at(std::string_view text, std::string_view mark) {
    const std::size_t at = text.find(mark);
    if (at == std::string_view::npos) return {std::string(trimmed(text)), "", false};
    return {std::string(trimmed(text.substr(0, at))), std::string(trimmed(text.substr(at + mark.size()))), true};
}

std::vector<std::string> split_all(std::string_view text, char mark) {
    std::vector<std::string> parts;
    std::size_t begin = 0;
    for (;;) {
        const std::size_t end = text.find(mark, begin);
        parts.emplace_back(trimmed(text.substr(begin, end - begin)));
        if (end == std::string_view::npos) return parts;
        begin = end + 1;
    }
}

bool is_name(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
}

// Half a unit of the last digit of a number as printed: 0.05 of "47.0", 0.005e-17 of "4.14e-17".
double half_unit_of(std::string_view printed) {
    const std::size_t e = printed.find_first_of("eE");
    const std::string_view mantissa = printed.substr(0, e);
    double power = e == std::string_view::npos ? 0.0 : parse_number(printed.substr(e + 1));
    const std::size_t point = mantissa.find('.');
    if (point != std::string_view::npos) power -= static_cast<double>(mantissa.size() - point - 1);
    return 0.5 * std::pow(10.0, power);
}

class Reader {
  public:
    Reader(Library &library, std::string file) : library_(library), file_(std::move(file)) {
        for (const Case &known : library.cases) names_.insert(known.name);
        for (const Table &known : library.tables) names_.insert(known.name);
    }

    void read(const std::string &text) {
        std::istringstream lines(text);
        std::string raw;
        try {
            while (std::getline(lines, raw)) {
                ++line_;
                const std::string_view line = trimmed(raw);
                if (!line.empty() && line.front() != '#') take(line);
            }
            close();
            if (subject_.empty()) throw Malformed("the file has no subject");
        } catch (const Malformed &error) {
            throw Malformed(file_ + ":" + std::to_string(line_) + ": " + error.what());
        }
    }

  private:
    void take(std::string_view line) {
        const std::size_t blank = line.find(' ');
        const std::string key(line.substr(0, blank));
        const std::string_view rest =
            blank == std::string_view::npos ? std::string_view{} : trimmed(line.substr(blank));
        static const struct {
            std::string_view key;
            void (Reader::*take)(std::string_view);
        } keys[] = {
            {"subject", &Reader::take_subject},
            {"table", &Reader::take_table},
            {"per", &Reader::take_per},
            {"rows", &Reader::take_rows},
            {"case", &Reader::take_case},
            {"source", &Reader::take_source},
            {"known", &Reader::take_known},
            {"cable", &Reader::take_cable},
            {"chain", &Reader::take_chain},
            {"coaxial", &Reader::take_coaxial},
            {"neighbours", &Reader::take_neighbours},
            {"stage", &Reader::take_stage},
            {"path", &Reader::take_path},
            {"rule", &Reader::take_rule},
            {"check", &Reader::take_check},
            {"refuses", &Reader::take_refusal},
            {"tolerance", &Reader::take_tolerance},
            {"disagrees", &Reader::take_disagrees},
            {"remark", &Reader::take_remark},
        };
        for (const auto &entry : keys)
            if (entry.key == key) {
                if (rest.empty()) throw Malformed("nothing after '" + key + "'");
                if (key != "subject" && subject_.empty()) throw Malformed("the subject must come first");
                (this->*entry.take)(rest);
                return;
            }
        throw Malformed("unknown key '" + key + "'");
    }

    void take_subject(std::string_view rest) {
        if (!subject_.empty()) throw Malformed("a second subject");
        subject_ = rest;
    }

    void take_name(std::string_view rest) {
        if (!is_name(rest)) throw Malformed("a name has small letters, digits and _ only: '" + std::string(rest) + "'");
        if (!names_.insert(std::string(rest)).second) throw Malformed("duplicate name '" + std::string(rest) + "'");
    }

    void take_case(std::string_view rest) {
        close();
        take_name(rest);
        case_.emplace();
        case_->name = rest;
        case_->subject = subject_;
        case_->file = file_;
        case_->line = line_;
        case_->set_ups.emplace_back();
        known_ = false;
        tolerance_.reset();
    }

    void take_table(std::string_view rest) {
        close();
        take_name(rest);
        table_.emplace();
        table_->name = rest;
        per_metres_ = 0.0;
    }

    // Ends what is open, and says what it lacks.
    void close() {
        if (case_) {
            if (case_->publication.empty()) throw Malformed("case '" + case_->name + "' has no source");
            if (!known_) throw Malformed("case '" + case_->name + "' does not say how it is known");
            if (case_->checks.empty()) throw Malformed("case '" + case_->name + "' checks nothing");
            const SetUp &last = case_->set_ups.back();
            if (case_->set_ups.size() > 1 && case_->checks.back().set_up + 1 != case_->set_ups.size())
                throw Malformed("nothing is checked of '" + last.text + "'");
            agree_source_and_known();
            library_.cases.push_back(std::move(*case_));
        }
        if (table_) {
            if (table_->source.empty()) throw Malformed("table '" + table_->name + "' has no source");
            if (table_->frequency_mhz.empty()) throw Malformed("table '" + table_->name + "' has no rows");
            library_.tables.push_back(std::move(*table_));
        }
        case_.reset();
        table_.reset();
    }

    void agree_source_and_known() const {
        const struct {
            Known known;
            std::string_view source;
        } pinned[] = {{Known::practice, "common practice, no source"},
                      {Known::memory, "from memory"},
                      {Known::contract, "levelbook's own contract"},
                      {Known::derived, "derived from exact constants"}};
        for (const auto &pin : pinned) {
            const bool known = case_->known == pin.known;
            const bool source = case_->publication == pin.source;
            // a derived value may also name the publication whose lines it sums
            if ((source && !known) || (known && !source && pin.known != Known::derived))
                throw Malformed("case '" + case_->name + "': '" + std::string(pin.source) + "' and known " +
                                static_cast<char>(pin.known) + " go together");
        }
    }

    Case &open_case(std::string_view key) {
        if (!case_) throw Malformed("'" + std::string(key) + "' outside a case");
        return *case_;
    }

    Check &open_check(std::string_view key) {
        if (open_case(key).checks.empty()) throw Malformed("'" + std::string(key) + "' before a check");
        return case_->checks.back();
    }

    void take_source(std::string_view rest) {
        if (table_) {
            if (!table_->source.empty()) throw Malformed("a second source");
            table_->source = rest;
            return;
        }
        Case &to = open_case("source");
        if (!to.publication.empty()) throw Malformed("a second source");
        const Pair pair = split_at(rest, ";");
        if (pair.left.empty() || pair.right.empty()) throw Malformed("a source is 'publication; section or page'");
        to.publication = pair.left;
        to.place = pair.right;
    }

    void take_known(std::string_view rest) {
        Case &to = open_case("known");
        if (known_) throw Malformed("a second 'known'");
        if (rest.size() != 1 || std::string_view("PCIDRNHM").find(rest.front()) == std::string_view::npos)
            throw Malformed("known is one of P C I D R N H M, not '" + std::string(rest) + "'");
        to.known = static_cast<Known>(rest.front());
        known_ = true;
    }

    void take_per(std::string_view rest) {
        if (!table_) throw Malformed("'per' outside a table");
        if (rest == "100 m") per_metres_ = 100.0;
        else if (rest == "100 ft") per_metres_ = 30.48;
        else throw Malformed("a table is per 100 m or per 100 ft, not '" + std::string(rest) + "'");
    }

    void take_rows(std::string_view rest) {
        if (!table_) throw Malformed("'rows' outside a table");
        if (per_metres_ == 0.0) throw Malformed("'per' must come before 'rows'");
        for (const std::string &part : split_all(rest, ',')) {
            const Pair pair = split_at(part, ":");
            const double frequency = parse_number(pair.left);
            if (!table_->frequency_mhz.empty() && frequency <= table_->frequency_mhz.back())
                throw Malformed("the frequencies of a table rise");
            table_->frequency_mhz.push_back(frequency);
            table_->attenuation_db_per_100m.push_back(parse_number(pair.right) * 100.0 / per_metres_);
        }
    }

    static int no_results(std::string_view) { return -1; }

    Field take_field(const std::string &part, bool (*known)(std::string_view)) const {
        const Pair pair = split_at(part, "=");
        if (!known(pair.left)) throw Malformed("unknown field '" + pair.left + "'");
        if (pair.right.empty()) throw Malformed("field '" + pair.left + "' has no value");
        return {pair.left, parse_expression(pair.right, no_results)};
    }

    static void add_field(std::vector<Field> &fields, Field field) {
        for (const Field &other : fields)
            if (other.name == field.name) throw Malformed("field '" + field.name + "' twice");
        fields.push_back(std::move(field));
    }

    // The set-up before must have been checked.
    SetUp &begin_set_up(SetUp::Kind kind, std::string_view key, std::string_view rest) {
        Case &to = open_case(key);
        if (to.set_ups.size() > 1 && (to.checks.empty() || to.checks.back().set_up + 1 != to.set_ups.size()))
            throw Malformed("nothing is checked of '" + to.set_ups.back().text + "'");
        SetUp &set_up = to.set_ups.emplace_back();
        set_up.kind = kind;
        set_up.text = std::string(key) + " " + std::string(rest);
        return set_up;
    }

    // cable type NAME; field = value; ... or cable table NAME [without MHZ]; field = value; ...
    void take_cable(std::string_view rest) {
        SetUp &set_up = begin_set_up(SetUp::Kind::cable, "cable", rest);
        const std::vector<std::string> parts = split_all(rest, ';');
        const Pair what = split_at(parts[0], " ");
        if (what.left == "type") set_up.cable_type = cable_type(what.right);
        else if (what.left == "table") set_up.table = table(what.right);
        else throw Malformed("a cable is 'type NAME' or 'table NAME', not '" + parts[0] + "'");
        for (std::size_t i = 1; i < parts.size(); ++i) add_field(set_up.fields, take_field(parts[i], is_cable_field));
    }

    static int cable_type(const std::string &name) {
        const int type = lvb_cable_type_from_name(name.c_str());
        if (type == LVB_CABLE_NONE) throw Malformed("unknown cable type '" + name + "'");
        return type;
    }

    // NAME, or NAME without MHZ
    Table table(const std::string &text) const {
        const Pair without = split_at(text, " without ");
        const auto found = std::find_if(library_.tables.begin(), library_.tables.end(),
                                        [&](const Table &known) { return known.name == without.left; });
        if (found == library_.tables.end()) throw Malformed("unknown table '" + without.left + "'");
        Table copy = *found;
        if (without.split) leave_out(copy, parse_number(without.right));
        return copy;
    }

    static void leave_out(Table &table, double frequency) {
        const auto at = std::find(table.frequency_mhz.begin(), table.frequency_mhz.end(), frequency);
        if (at == table.frequency_mhz.end() || table.frequency_mhz.size() == 1)
            throw Malformed("table '" + table.name + "' has no row to leave out there");
        table.attenuation_db_per_100m.erase(table.attenuation_db_per_100m.begin() + (at - table.frequency_mhz.begin()));
        table.frequency_mhz.erase(at);
    }

    // KEY field = value; ...
    void take_fields(SetUp::Kind kind, std::string_view key, std::string_view rest, bool (*known)(std::string_view)) {
        SetUp &set_up = begin_set_up(kind, key, rest);
        for (const std::string &part : split_all(rest, ';')) add_field(set_up.fields, take_field(part, known));
    }
    void take_chain(std::string_view rest) { take_fields(SetUp::Kind::chain, "chain", rest, is_link_field); }
    void take_coaxial(std::string_view rest) { take_fields(SetUp::Kind::coaxial, "coaxial", rest, is_coaxial_field); }
    void take_neighbours(std::string_view rest) {
        take_fields(SetUp::Kind::neighbours, "neighbours", rest, is_neighbours_field);
    }

    // stage KIND, LABEL; field = value; ...   (a cable may have type = NAME or table = NAME)
    void take_stage(std::string_view rest) {
        Case &to = open_case("stage");
        SetUp &set_up = to.set_ups.back();
        if (set_up.kind != SetUp::Kind::chain) throw Malformed("'stage' without a chain");
        if (!to.checks.empty() && to.checks.back().set_up + 1 == to.set_ups.size())
            throw Malformed("'stage' after a check of the chain");
        const std::vector<std::string> parts = split_all(rest, ';');
        const Pair what = split_at(parts[0], ",");
        Stage stage;
        for (int kind = 1; std::string_view(lvb_kind_name(kind)) != "unknown"; ++kind)
            if (what.left == lvb_kind_name(kind)) stage.kind = kind;
        if (stage.kind == 0) throw Malformed("unknown kind of stage '" + what.left + "'");
        if (what.right.empty()) throw Malformed("a stage is 'kind, label'");
        stage.label = what.right;
        for (std::size_t i = 1; i < parts.size(); ++i) {
            const Pair field = split_at(parts[i], "=");
            if (field.left == "type") stage.cable_type = cable_type(field.right);
            else if (field.left == "table") stage.table = table(field.right);
            else add_field(stage.fields, take_field(parts[i], is_stage_field));
        }
        set_up.text += " | " + std::string(rest);
        set_up.stages.push_back(std::move(stage));
    }

    // path MODEL; field = value; ...
    void take_path(std::string_view rest) {
        SetUp &set_up = begin_set_up(SetUp::Kind::path, "path", rest);
        const std::vector<std::string> parts = split_all(rest, ';');
        set_up.path_model = path_model(parts[0]);
        if (set_up.path_model < 0) throw Malformed("unknown model of a path '" + parts[0] + "'");
        for (std::size_t i = 1; i < parts.size(); ++i) add_field(set_up.fields, take_field(parts[i], is_path_field));
    }

    // rule CITATION; frequency_mhz = value
    void take_rule(std::string_view rest) {
        SetUp &set_up = begin_set_up(SetUp::Kind::rule, "rule", rest);
        const std::vector<std::string> parts = split_all(rest, ';');
        if (parts.size() != 2) throw Malformed("a rule is 'CITATION; frequency_mhz = value'");
        if (!is_rule(parts[0])) throw Malformed("unknown rule '" + parts[0] + "'");
        set_up.citation = parts[0];
        add_field(set_up.fields, take_field(parts[1], is_rule_field));
    }

    void take_tolerance(std::string_view rest) {
        open_case("tolerance");
        if (rest == half_a_unit) {
            tolerance_ = Tolerance{0.0, "", std::string(half_a_unit)};
            return;
        }
        const Pair pair = split_at(rest, ":");
        if (pair.right.size() < 3) throw Malformed("a tolerance needs its reason: 'amount unit: reason'");
        const Pair amount = split_at(pair.left, " ");
        if (amount.right.empty()) throw Malformed("a tolerance needs its unit");
        const double number = parse_number(amount.left);
        if (!(number > 0.0) || !std::isfinite(number)) throw Malformed("a tolerance is a number above 0");
        tolerance_ = Tolerance{number, amount.right, pair.right};
    }

    Expression parse_check(std::string_view text) const {
        const SetUp::Kind kind = case_->set_ups.back().kind;
        Expression expression =
            parse_expression(text, [kind](std::string_view name) { return result_arity(kind, name); });
        if (!asks_the_library(expression))
            throw Malformed("the library computes nothing in '" + std::string(text) + "'");
        return expression;
    }

    Check &begin_check(std::string_view key) {
        Case &to = open_case(key);
        Check &check = to.checks.emplace_back();
        check.name = to.name + "." + std::to_string(to.checks.size());
        check.line = line_;
        check.set_up = to.set_ups.size() - 1;
        return check;
    }

    // check EXPRESSION gives NUMBER UNIT
    void take_check(std::string_view rest) {
        open_case("check");
        const Pair pair = split_at(rest, " gives ");
        const Pair printed = split_at(pair.right, " ");
        if (printed.right.empty()) throw Malformed("a check is 'expression gives number unit'");
        if (!tolerance_) throw Malformed("a check needs a tolerance before it");
        if (case_->set_ups.back().kind == SetUp::Kind::chain && case_->set_ups.back().stages.empty())
            throw Malformed("the chain has no stages");
        Expression expression = parse_check(pair.left);
        Check &check = begin_check("check");
        check.text = pair.left;
        check.expression = std::move(expression);
        check.printed_text = printed.left;
        check.printed = parse_number(printed.left);
        if (std::isinf(check.printed) && tolerance_->reason == half_a_unit)
            throw Malformed("an infinite result has no last digit: give another tolerance");
        check.unit = printed.right;
        check.tolerance = *tolerance_;
        if (check.tolerance.reason == half_a_unit) {
            check.tolerance.unit = check.unit;
            check.tolerance.amount = half_unit_of(check.printed_text);
        }
        const std::string &unit = check.tolerance.unit;
        if (unit != "%" && unit != check.unit && !(unit == "dB" && check.unit.starts_with("dB")))
            throw Malformed("a tolerance in " + unit + " does not fit a result in " + check.unit);
    }

    // refuses EXPRESSION: reason, or for a chain or cable refuses LVB_E_NAME: reason
    void take_refusal(std::string_view rest) {
        open_case("refuses");
        const Pair pair = split_at(rest, ":");
        if (pair.right.size() < 3) throw Malformed("a refusal needs its reason: 'what: reason'");
        const bool by_status = case_->set_ups.back().kind != SetUp::Kind::none;
        Expression expression;
        if (by_status) {
            bool found = false;
            for (lvb_status status = -1; status > -1000; --status)
                found = found || pair.left == lvb_status_name(status);
            if (!found || pair.left == "unknown") throw Malformed("unknown status '" + pair.left + "'");
        } else expression = parse_check(pair.left);
        Check &check = begin_check("refuses");
        check.text = pair.left;
        check.expression = std::move(expression);
        check.refusal = true;
        if (by_status) check.refusal_status = pair.left;
        check.remark = pair.right;
    }

    // disagrees AMOUNT UNIT: reason; the amount is levelbook less printed
    void take_disagrees(std::string_view rest) {
        Check &check = open_check("disagrees");
        if (check.refusal || check.disagrees) throw Malformed("'disagrees' belongs to one check with a printed result");
        const Pair pair = split_at(rest, ":");
        if (pair.right.size() < 3) throw Malformed("a disagreement needs its reason: 'amount unit: reason'");
        const Pair amount = split_at(pair.left, " ");
        if (amount.right != check.tolerance.unit)
            throw Malformed("a disagreement is stated in the tolerance's unit, " + check.tolerance.unit);
        check.disagrees = parse_number(amount.left);
        if (!(std::fabs(*check.disagrees) > check.tolerance.amount))
            throw Malformed("a disagreement must be larger than the tolerance");
        check.disagrees_because = pair.right;
    }

    void take_remark(std::string_view rest) {
        Check &check = open_check("remark");
        if (!check.remark.empty()) throw Malformed("a second remark");
        check.remark = rest;
    }

    Library &library_;
    std::string file_;
    int line_ = 0;
    std::string subject_;
    std::set<std::string> names_;
    std::optional<Case> case_;
    std::optional<Table> table_;
    std::optional<Tolerance> tolerance_;
    bool known_ = false;
    double per_metres_ = 0.0;
};

} // namespace

void read_text(Library &library, const std::string &file, const std::string &text) { Reader(library, file).read(text); }

std::vector<std::string> files_of(const std::string &folder) {
    std::vector<std::string> files;
    std::error_code error;
    for (const auto &entry : std::filesystem::directory_iterator(folder, error))
        if (entry.path().extension() == ".ref") files.push_back(entry.path().filename().string());
    std::sort(files.begin(), files.end());
    return files;
}

Library read_folder(const std::string &folder) {
    Library library;
    const std::vector<std::string> files = files_of(folder);
    if (files.empty()) throw Malformed(folder + ": no *.ref files");
    for (const std::string &file : files) {
        std::ifstream stream(folder + "/" + file);
        if (!stream) throw Malformed(folder + "/" + file + ": cannot be read");
        std::ostringstream text;
        text << stream.rdbuf();
        read_text(library, file, text.str());
    }
    return library;
}

} // namespace reference
