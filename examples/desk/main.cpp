// levelbook-desk: the level book for the person who plans the radio links of a show.
//
// Exit codes: 0 every link holds (or the question is answered), 1 some link does not or was not judged at every end, 2
// bad input or usage.
#include "budget_json.hpp"
#include "cables.hpp"
#include "convert.hpp"
#include "decide_commands.hpp"
#include "formulas.hpp"
#include "json_tree.hpp"
#include "numbers.hpp"
#include "print_budget.hpp"
#include "print_terms.hpp"
#include "published.hpp"
#include "site_commands.hpp"
#include "table_file.hpp"
#include "verdict.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cstdio>
#include <sstream>

namespace desk {
namespace {

std::vector<const Link *> chosen_links(const Scenario &scenario, const std::string &name) {
    if (!name.empty()) return {&named(scenario.links, name, "link")};
    std::vector<const Link *> all;
    for (const Link &link : scenario.links) all.push_back(&link);
    return all;
}

// The pairs of systems of which a chosen link is one side.
std::vector<Pair> answer_pairs(const Document &document, const Scenario &scenario,
                               const std::vector<const Link *> &chosen) {
    std::vector<Pair> pairs;
    for (const Neighbours &neighbours : scenario.neighbours) {
        const Link &transmitter = scenario.links[neighbours.transmitter];
        const Link &receiver = scenario.links[neighbours.receiver];
        const auto is_chosen = [&](const Link &link) {
            return std::find(chosen.begin(), chosen.end(), &link) != chosen.end();
        };
        if (!is_chosen(transmitter) && !is_chosen(receiver)) continue;
        pairs.push_back({&neighbours, &transmitter, &receiver,
                         compute(document, neighbours, {&transmitter, compute(document, transmitter), {}},
                                 {&receiver, compute(document, receiver), {}})});
    }
    return pairs;
}

Outcome budget(const std::string &file, const std::string &link_name, bool as_json, bool brief) {
    const Document document = read_json(file);
    const Scenario scenario = open_scenario(document);
    const std::vector<const Link *> chosen = chosen_links(scenario, link_name);
    std::vector<Answer> answers;
    for (const Link *link : chosen) answers.push_back(answer_link(document, *link));
    const std::vector<Pair> pairs = answer_pairs(document, scenario, chosen);

    Outcome outcome;
    for (const Answer &answer : answers)
        if (!holds(answer)) outcome.code = exit_does_not_hold;
    for (const Pair &pair : pairs)
        if (!holds(pair.coexistence)) outcome.code = exit_does_not_hold;
    if (as_json) {
        outcome.text = budget_json(scenario, file, answers, pairs);
        return outcome;
    }
    outcome.text = print_heading(scenario, file, brief) + print_summary(answers);
    for (const Answer &answer : answers) outcome.text += print_link(answer, brief);
    outcome.text += print_pairs(pairs) + print_cautions(chosen);
    return outcome;
}

// The name of a column of a table in the library's unit.
std::string library_name(const NumberKey &key, const std::vector<const NumberKey *> &columns) {
    for (const NumberKey *other : columns)
        if (other->field == key.field && (other->kinds & key.kinds) != 0 && other->to_library(1.0) == 1.0)
            return other->name;
    return key.name;
}

// Everything that a table's file can be over: frequency, or an angle of a pattern or a body.
std::vector<Columns> forms_of_table() {
    Columns frequency = over_frequency(keys_of_field(stage_keys(), LVB_FIELD_GAIN_DB, 0));
    for (const NumberKey &key : attenuation_keys()) frequency.values.push_back(&key);
    return {frequency, over_azimuth(), over_elevation(), over_facing()};
}

// All columns of all forms, each name once.
Columns any_form(const std::vector<Columns> &forms) {
    Columns all;
    const auto add = [](std::vector<const NumberKey *> &into, const std::vector<const NumberKey *> &keys) {
        for (const NumberKey *key : keys)
            if (std::none_of(into.begin(), into.end(),
                             [&](const NumberKey *known) { return std::string_view(known->name) == key->name; }))
                into.push_back(key);
    };
    for (const Columns &form : forms) {
        add(all.points, form.points);
        add(all.values, form.values);
    }
    return all;
}

// The form whose first column the file has; over frequency where it has none.
const Columns &form_of(const Value &root, const std::vector<Columns> &forms) {
    for (const Columns &form : forms)
        for (const NumberKey *key : form.points)
            if (root.find(key->name) != nullptr) return form;
    return forms.front();
}

// A table's file as this program reads it, in the form of a CSV file.
Outcome print_table(const std::string &file, const std::string &parameter_name) {
    const std::optional<Parameter> parameter = parameter_name.empty() ? Parameter() : parameter_in(parameter_name);
    if (!parameter_name.empty() && !is_touchstone(file)) throw Refusal("only a Touchstone file has parameters");
    if (!parameter)
        throw Refusal(in_quotes(parameter_name) + " is no parameter; write s21 for the way from port 1 to port 2");
    const std::vector<Columns> forms = forms_of_table();
    const TableFile read = read_table_file(file, any_form(forms), *parameter);
    const Columns &columns = form_of(read.document->root(), forms);
    const Table table = read_columns(Checks(*read.document), read.document->root(), columns);
    std::string text = "# " + ascii(read.origin) + "\n" + library_name(*table.point_column.key, columns.points) + "," +
                       library_name(*table.value_column.key, columns.values) + "\n";
    for (std::size_t i = 0; i < table.values.size(); ++i)
        text += exact(table.points[i]) + "," + exact(table.values[i]) + "\n";
    return {text};
}

// "30mW dBm" and "30 mW dBm" are both right.
Outcome answer_conversion(std::vector<std::string> words, const Inputs &inputs, const std::string &with) {
    if (asks_for_formula(words)) {
        if (inputs.given != needs_nothing || !with.empty())
            throw Refusal("a function takes its arguments as name=value, and no options");
        return {answer_formula(words)};
    }
    if (words.size() == 3) words = {words[0] + words[1], words[2]};
    if (words.size() != 2) throw Refusal("convert takes a value with its unit and a target unit: convert 30mW dBm");
    return {convert(words[0], words[1], inputs, with)};
}

Outcome outcome_of(const SiteAnswer &answer) { return {answer.text, answer.holds ? exit_holds : exit_does_not_hold}; }

// Declares the commands, lets CLI11 read the arguments, and gives the outcome.
class Program {
  public:
    Outcome run(int argc, char **argv) {
        app_.require_subcommand(1);
        app_.set_version_flag("--version", std::string("levelbook ") + lvb_version_text() + "\n");
        app_.footer(exit_codes("answered"));
        declare_budget();
        declare_convert();
        declare_cables();
        declare_published();
        declare_table();
        declare_sites();
        decide_.declare(app_);
        app_.footer(exit_codes("what was asked for holds or is answered",
                               "some link does not hold or was not judged at every end, or what was sought was not "
                               "found"));
        check_command(argc, argv);
        try {
            app_.parse(argc, argv);
        } catch (const CLI::Success &asked) { // --help or --version
            std::ostringstream text;
            std::ostringstream errors;
            app_.exit(asked, text, errors);
            return {text.str()};
        } catch (const CLI::ParseError &error) {
            throw Refusal(std::string(error.what()) + "; --help tells more");
        }
        return answer();
    }

  private:
    // CLI11 itself would only say that a command is missing.
    void check_command(int argc, char **argv) const {
        if (argc < 2 || argv[1][0] == '-') return;
        std::vector<std::string> names;
        for (const CLI::App *command : app_.get_subcommands([](const CLI::App *) { return true; }))
            names.push_back(command->get_name());
        if (std::find(names.begin(), names.end(), argv[1]) != names.end()) return;
        throw Refusal("there is no command " + in_quotes(argv[1]) +
                      suggestion(argv[1], names, "; there are " + listed(names)));
    }
    void declare_budget() {
        budget_ = app_.add_subcommand("budget", "print the level book of every link of a scenario");
        budget_->footer(exit_codes("every link holds", "some link does not, or was not judged at every end"));
        budget_->add_option("scenario", file_, "scenario file (JSON)")->required();
        budget_->add_option("--link", link_, "only the link of this name");
        auto *json = budget_->add_flag("--json", as_json_, "print JSON");
        budget_->add_flag("--brief", brief_, "print only the levels and the verdict of each link")->excludes(json);
    }
    void declare_convert() {
        convert_ = app_.add_subcommand("convert", "answer a unit question: convert 30mW dBm");
        convert_
            ->add_option(
                "question", words_,
                "value with unit, and target unit; or a function of the library with name=value for each argument")
            ->expected(2, 4)
            ->required();
        convert_->add_option("--at", options_.mhz, "frequency in MHz");
        convert_->add_option("--ohm", options_.ohm, "impedance, or the line's, in ohm");
        auto *metres = convert_->add_option("--m", options_.metres, "distance in metres");
        convert_->add_option("--ft", options_.feet, "distance in feet")->excludes(metres);
        convert_->add_option("--kelvin", options_.kelvin, "temperature of a noise source in kelvin");
        convert_->add_option("--angle", options_.angle, "angle between polarizations in degrees");
        convert_->add_option("--with", with_, "second operand with its unit: 1.5vswr, 0.7ellipticity");
        units_ = app_.add_subcommand("units", "list the units, conversions and functions that convert knows");
    }
    void declare_cables() {
        cables_ = app_.add_subcommand("cables", "list the catalogue of cables with the source of every row");
        cable_ = app_.add_subcommand("cable", "look up one cable: cable RG-213/U --mhz 600 --m 30");
        cable_->add_option("type", question_.name, "designation in the catalogue");
        mhz_option_ = cable_->add_option("--mhz", question_.frequency_mhz, "frequency in MHz");
        auto *metres = cable_->add_option("--m", question_.length_m, "length in metres");
        auto *feet = cable_->add_option("--ft", feet_, "length in feet")->excludes(metres);
        cable_->add_option("--connectors", question_.connectors, "connectors in the run");
        cable_->add_option("--connector-loss-db", question_.connector_loss_db, "loss of each connector");
        auto *degc = cable_->add_option("--degc", question_.temperature_degc, "temperature in degrees Celsius");
        cable_->add_option("--degf", degf_, "temperature in degrees Fahrenheit")->excludes(degc);
        feet_option_ = feet;
        metres_option_ = metres;
    }

    void declare_published() {
        rules_ = app_.add_subcommand("rules", "list the published limits of power and exposure with their editions");
        allowances_ = app_.add_subcommand("allowances", "list published losses by bodies and polarization with their "
                                                        "sources");
    }

    void declare_table() {
        table_ = app_.add_subcommand("table", "print the table of a CSV or Touchstone file as it is read");
        table_->add_option("file", file_, "file of a table (.csv, .s2p, .ts)")->required();
        table_->add_option("--parameter", parameter_, "parameter of a Touchstone file (s21 where it is left out)");
    }

    CLI::App *declare_site(const char *name, const char *what) {
        CLI::App *command = app_.add_subcommand(name, what);
        command->add_option("scenario", site_.file, "scenario file (JSON)")->required();
        command->add_option("site", site_.site, "name of a site in it (left out: tells which there are)");
        auto *json = command->add_flag("--json", site_.as_json, "print JSON");
        command->add_flag("--brief", site_.brief, "leave out legend, antennas and cautions")->excludes(json);
        return command;
    }
    void declare_sites() {
        map_ = declare_site("map", "print what arrives everywhere on a site, as a map of characters");
        walk_ = declare_site("walk", "tell where along a walk the link is under the floor or over the ceiling");
        walk_->add_option("walk", site_.walk, "name of a walk of the site (left out: tells which there are)");
        place_ = declare_site("place", "find where one or two antennas of a site serve best");
        map_->add_option("--pgm", site_.pgm, "write the margin over the floor as a portable graymap to this file");
        for (CLI::App *command : {map_, walk_}) {
            command
                ->add_option("--show", site_.show, "what to draw: zones (left out), margin in steps of 3 dB, or outage")
                ->excludes("--json");
            command->add_option("--csv", site_.csv, "write every point to this CSV file");
        }
        for (CLI::App *command : {map_, walk_})
            command->footer(exit_codes("every point is over the floor and under the ceiling",
                                       "some point is not, or is doubtful or not judged"));
        place_->footer(exit_codes("a placement that serves every point was found", "none was, or not every end is "
                                                                                   "judged"));
        constexpr int most_placements = 1000;
        place_->add_option("--most", site_.most, "placements to tell (left out: 5)")
            ->check(CLI::Range(1, most_placements));
    }

    Outcome answer() {
        if (map_->parsed()) return outcome_of(answer_map(site_));
        if (walk_->parsed()) return outcome_of(answer_walk(site_));
        if (place_->parsed()) return outcome_of(answer_place(site_));
        if (budget_->parsed()) return budget(file_, link_, as_json_, brief_);
        if (const std::optional<Outcome> decided = decide_.answer()) return *decided;
        if (convert_->parsed()) return answer_conversion(words_, read_options(options_), with_);
        if (units_->parsed()) return {print_units()};
        if (table_->parsed()) return print_table(file_, parameter_);
        if (cables_->parsed()) return {print_catalogue()};
        if (rules_->parsed()) return {print_rules()};
        if (allowances_->parsed()) return {print_allowances()};
        return answer_piece_of_cable();
    }

    Outcome answer_piece_of_cable() {
        if (question_.name.empty()) return {answer_cable(question_)}; // which refuses, and lists the names
        if (mhz_option_->count() == 0) throw Refusal("cable needs a frequency: --mhz");
        if (feet_option_->count() + metres_option_->count() == 0) throw Refusal("cable needs a length: --m or --ft");
        if (feet_option_->count() > 0) question_.length_m = lvb_metres_from_feet(feet_);
        if (degf_) question_.temperature_degc = lvb_degc_from_degf(*degf_);
        return {answer_cable(question_)};
    }

    CLI::App app_{"levelbook-desk: link budgets for wireless in-ear monitors and microphones", "levelbook-desk"};
    CLI::App *budget_ = nullptr;
    CLI::App *convert_ = nullptr;
    CLI::App *units_ = nullptr;
    CLI::App *cables_ = nullptr;
    CLI::App *cable_ = nullptr;
    CLI::App *rules_ = nullptr;
    CLI::App *allowances_ = nullptr;
    CLI::App *table_ = nullptr;
    CLI::App *map_ = nullptr;
    CLI::App *walk_ = nullptr;
    CLI::App *place_ = nullptr;
    DecideCommands decide_;
    CLI::Option *mhz_option_ = nullptr;
    CLI::Option *feet_option_ = nullptr;
    CLI::Option *metres_option_ = nullptr;
    SiteQuestion site_;
    std::string file_;
    std::string link_;
    std::string parameter_;
    bool as_json_ = false;
    bool brief_ = false;
    std::vector<std::string> words_;
    OptionTexts options_;
    std::string with_;
    CableQuestion question_;
    double feet_ = 0.0;
    std::optional<double> degf_;
};

int run(int argc, char **argv) {
    try {
        const Outcome outcome = Program().run(argc, argv);
        const bool written = std::fputs(outcome.text.c_str(), stdout) >= 0 && std::fflush(stdout) == 0;
        if (!written) throw Refusal("the answer could not be written");
        return outcome.code;
    } catch (const std::exception &error) { // also std::bad_alloc: one line and exit code 2, whatever it is
        std::fprintf(stderr, "levelbook-desk: %s\n", ascii(error.what()).c_str());
        return exit_bad_input;
    }
}

} // namespace
} // namespace desk

int main(int argc, char **argv) { return desk::run(argc, argv); }
