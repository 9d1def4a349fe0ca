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

void refuse_bad_outputs(const Document &document, const SiteQuestion &question) {
    std::vector<std::string> read = table_files(document);
    read.push_back(document.file());
    check_outputs({question.csv, question.pgm}, read);
}

std::string page(const Scenario &scenario, const SiteQuestion &question, const Site &site, const std::string &words) {
    const Links links = links_of(scenario, site);
    std::string floors; // the cautions that even a brief page needs
    for (const std::string &sentence : raised_floors(links)) floors += labelled("CAUTION:", sentence);
    return wrap(ascii(question.site + ", " + scenario.production + " (" + question.file + ")"), page_columns, "",
                "  ") +
           words + (question.brief ? floors : print_cautions(scenario, links));
}

} // namespace

SiteAnswer answer_map(const SiteQuestion &question) {
    const Document document = read_json(question.file);
    const Scenario scenario = open_scenario(document);
    const Site &site = site_of(scenario, question);
    refuse_bad_outputs(document, question);
    const Survey survey = survey_map(document, scenario, site);
    if (!question.pgm.empty() && !survey.has_floor)
        throw Refusal("a graymap shows the margin over the floor, and the receivers of this site state none");
    if (!question.csv.empty()) write_whole_file(question.csv, map_csv(survey));
    if (!question.pgm.empty()) write_whole_file(question.pgm, map_pgm(survey));
    return {question.as_json ? map_json(scenario, question.file, survey)
                             : page(scenario, question, site,
                                    print_map(survey, links_of(scenario, site), question.show, question.brief)),
            failures(survey).empty()};
}

SiteAnswer answer_walk(const SiteQuestion &question) {
    const Document document = read_json(question.file);
    const Scenario scenario = open_scenario(document);
    const Site &site = site_of(scenario, question);
    if (site.walks.empty()) throw Refusal("the site " + in_quotes(site.name) + " has no walks");
    const Walk &walk = named(site.walks, question.walk, "walk");
    refuse_bad_outputs(document, question);
    const WalkSurvey survey = survey_walk(document, scenario, site, walk);
    if (!question.csv.empty()) write_whole_file(question.csv, walk_csv(survey));
    return {question.as_json ? walk_json(scenario, question.file, survey)
                             : page(scenario, question, site,
                                    print_walk(survey, links_of(scenario, site), question.show, question.brief)),
            failures(survey).empty()};
}

SiteAnswer answer_place(const SiteQuestion &question) {
    const Document document = read_json(question.file);
    const Scenario scenario = open_scenario(document);
    const Site &site = site_of(scenario, question);
    const PlacingSurvey survey = survey_places(document, scenario, site, question.most);
    return {question.as_json ? place_json(scenario, question.file, survey)
                             : page(scenario, question, site, print_places(survey, links_of(scenario, site))),
            failures(survey).empty()};
}

} // namespace desk
