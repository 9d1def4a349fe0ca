#include "site_commands.hpp"

#include "json_tree.hpp"
#include "numbers.hpp"
#include "print_budget.hpp"
#include "print_site.hpp"
#include "site_files.hpp"
#include "site_json.hpp"
#include "site_verdict.hpp"
#include "site_words.hpp"

#include <algorithm>

namespace desk {
namespace {

const Site &site_of(const Scenario &scenario, const SiteQuestion &question) {
    if (scenario.sites.empty()) throw Refusal(ascii(question.file) + " has no sites");
    return named(scenario.sites, question.site, "site");
}

// What a question is about.
struct Subject {
    explicit Subject(const SiteQuestion &question)
        : document(read_json(question.file)), scenario(open_scenario(document)), site(site_of(scenario, question)),
          links(links_of(scenario, site)) {}
    const Document document;
    const Scenario scenario;
    const Site &site;
    const Links links;
};

void refuse_bad_outputs(const Document &document, const SiteQuestion &question) {
    std::vector<std::string> read = table_files(document);
    read.push_back(document.file());
    check_outputs({question.csv, question.pgm}, read);
}

std::string page(const Subject &subject, const SiteQuestion &question, const std::string &words) {
    std::string floors; // the cautions that even a brief page needs
    for (const std::string &sentence : raised_floors(subject.links, true)) floors += labelled("CAUTION:", sentence);
    return wrap(ascii(question.site + ", " + subject.scenario.production + " (" + question.file + ")"), page_columns,
                "", "  ") +
           words + (question.brief ? floors : print_cautions(subject.links, true));
}

} // namespace

// Files are written last: nothing is where the question is refused.
SiteAnswer answer_map(const SiteQuestion &question) {
    const Subject about(question);
    refuse_bad_outputs(about.document, question);
    const Survey survey = survey_map(about.document, about.scenario, about.site);
    if (!question.pgm.empty() && !survey.has_floor)
        throw Refusal("a graymap shows the margin over the floor, and the receivers of this site state none");
    const std::string text = question.as_json
                                 ? map_json(about.scenario, question.file, survey)
                                 : page(about, question, print_map(survey, about.links, question.show, question.brief));
    if (!question.csv.empty()) write_whole_file(question.csv, map_csv(survey));
    if (!question.pgm.empty()) write_whole_file(question.pgm, map_pgm(survey));
    return {text, failures(survey).empty()};
}

SiteAnswer answer_walk(const SiteQuestion &question) {
    const Subject about(question);
    if (about.site.walks.empty()) throw Refusal("the site " + in_quotes(about.site.name) + " has no walks");
    const Walk &walk = named(about.site.walks, question.walk, "walk");
    refuse_bad_outputs(about.document, question);
    const WalkSurvey survey = survey_walk(about.document, about.scenario, about.site, walk);
    const std::string text =
        question.as_json ? walk_json(about.scenario, question.file, survey)
                         : page(about, question, print_walk(survey, about.links, question.show, question.brief));
    if (!question.csv.empty()) write_whole_file(question.csv, walk_csv(survey));
    return {text, failures(survey).empty()};
}

SiteAnswer answer_place(const SiteQuestion &question) {
    const Subject about(question);
    const PlacingSurvey survey = survey_places(about.document, about.scenario, about.site, question.most);
    return {question.as_json ? place_json(about.scenario, question.file, survey)
                             : page(about, question, print_places(survey, about.links)),
            failures(survey).empty()};
}

} // namespace desk
