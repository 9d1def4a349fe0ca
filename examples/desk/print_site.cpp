#include "print_site.hpp"

#include "tuning.hpp"

#include <algorithm>
#include <array>

namespace desk {
namespace {

constexpr char blank = ' ';

constexpr char unmodelled_mark = 'x';

// A kind of point on the drawing.
struct Step {
    char mark;
    std::string words;
    bool judged = true; ///< whether there can be such points: not below a floor that is not stated
};

Step zone_step(char mark, std::int32_t zone, const Grounds &grounds) {
    const bool wanted = grounds.has_wanted, floor = grounds.has_floor, ceiling = grounds.has_ceiling;
    switch (zone) {
    case LVB_ZONE_DROPOUT:
        return floor ? Step{mark, "drops out: below the floor"} : Step{mark, "not judged: no floor is stated", false};
    case LVB_ZONE_LOW:
        return {mark, wanted ? "below the wanted band" : "below a wanted band: none is stated", wanted};
    case LVB_ZONE_WANTED:
        return {mark,
                wanted             ? "inside the wanted band"
                : floor && ceiling ? "inside the window"
                : floor            ? "not below the floor"
                                   : "not above the ceiling",
                wanted || floor || ceiling};
    case LVB_ZONE_HIGH:
        return {mark, wanted ? "above the wanted band" : "above a wanted band: none is stated", wanted};
    case LVB_ZONE_OVERLOAD:
        return ceiling ? Step{mark, "overloads: near level above the ceiling"}
                       : Step{mark, "not judged: no ceiling is stated", false};
    default:
        return {mark, "not judged: no floor or ceiling is stated"};
    }
}

// What the drawing shows: its steps as the legend lists them, how bad each is, and the step of each point. A character
// that stands for several points shows the worst of them.
struct View {
    std::vector<Step> steps;
    std::vector<int> badness;         ///< of each step
    std::vector<std::size_t> at;      ///< the step of each point that is not blank
    std::vector<std::uint64_t> count; ///< of the points of each step
};

void count_points(View &view, const Survey &survey) {
    view.count.resize(view.steps.size());
    for (std::size_t i = 0; i < view.at.size(); ++i)
        if (!survey.is_blank(i)) ++view.count[view.at[i]];
}

View view_of_zones(const Survey &survey) {
    constexpr std::int32_t listed_zones[] = {LVB_ZONE_DROPOUT, LVB_ZONE_LOW,      LVB_ZONE_WANTED,
                                             LVB_ZONE_HIGH,    LVB_ZONE_OVERLOAD, LVB_ZONE_NOT_JUDGED};
    constexpr char marks[] = {'#', '-', '.', '+', '!', '?'};
    View view;
    std::array<std::size_t, 6> step_of{}; // by LVB_ZONE_
    for (std::size_t i = 0; i < std::size(listed_zones); ++i) {
        view.steps.push_back(zone_step(marks[i], listed_zones[i], survey));
        step_of[static_cast<std::size_t>(listed_zones[i])] = i;
    }
    view.badness = {5, 2, 0, 1, 4, 3};
    for (const std::int32_t zone : survey.zone) view.at.push_back(step_of[static_cast<std::size_t>(zone)]);
    count_points(view, survey);
    return view;
}

// "#" fails; behind it digits in rising order, the first step of them being the worst.
View view_of_digits(const std::string &fails, const std::vector<std::string> &words) {
    View view;
    view.steps.push_back({'#', fails, true});
    for (std::size_t i = 0; i < words.size(); ++i) view.steps.push_back({static_cast<char>('0' + i), words[i], true});
    return view;
}

// Steps of 3 dB: a factor of two of power each.
View view_of_margins(const Survey &survey) {
    constexpr double step_db = 3.0;
    constexpr std::size_t last = 9;
    std::vector<std::string> words;
    for (std::size_t i = 0; i < last; ++i)
        words.push_back(format("%.0f to %.0f dB above the floor", step_db * static_cast<double>(i),
                               step_db * static_cast<double>(i + 1)));
    words.push_back(format("%.0f dB or more above the floor", step_db * static_cast<double>(last)));
    View view = view_of_digits("drops out: below the floor", words);
    for (std::size_t i = 0; i <= last + 1; ++i) view.badness.push_back(static_cast<int>(last + 1 - i));
    for (const double margin_db : survey.margin_db)
        view.at.push_back(
            !(margin_db >= 0.0) ? 0 : 1 + static_cast<std::size_t>(std::min(std::floor(margin_db / step_db), 9.0)));
    count_points(view, survey);
    return view;
}

// Decades of the share of time.
View view_of_outage(const Survey &survey) {
    constexpr double bounds[] = {1e-5, 1e-4, 1e-3, 1e-2, 1e-1}; // above each begins the next digit
    const std::string allowed = plain(100.0 * survey.wanted_outage()) + " %";
    View view = view_of_digits("more often below the floor than the allowed " + allowed,
                               {"up to 0.001 % of the time below the floor", "up to 0.01 %", "up to 0.1 %", "up to 1 %",
                                "up to 10 %", "more than 10 %"});
    view.badness = {6, 0, 1, 2, 3, 4, 5};
    for (const double outage : survey.outage) {
        const auto above = [&](double bound) { return outage > bound; };
        const auto decade = static_cast<std::size_t>(std::count_if(std::begin(bounds), std::end(bounds), above));
        view.at.push_back(outage > survey.wanted_outage() ? 0 : 1 + decade);
    }
    count_points(view, survey);
    return view;
}

View view_of(const Survey &survey, const std::string &what) {
    if (what.empty() || what == "zones") return view_of_zones(survey);
    if (what == "margin" && !survey.has_floor)
        throw Refusal("a margin stands over the floor, and the receivers of this site state none");
    if (what == "margin") return view_of_margins(survey);
    if (what == "outage" && survey.outage.empty())
        throw Refusal("an outage needs a law of fading: the site has no fading");
    if (what == "outage") return view_of_outage(survey);
    const std::vector<std::string> known = {"zones", "margin", "outage"};
    throw Refusal("a map does not show " + in_quotes(what) + suggestion(what, known, "") + "; it shows " +
                  listed(known));
}

// How many points a character stands for. Characters are about twice as high as wide.
struct CellSize {
    std::size_t across = 1;
    std::size_t down = 1;
    std::size_t width = 2; ///< characters of a cell
};

CellSize cell_size_of(const Survey &survey) {
    constexpr std::size_t most_characters = 84, most_lines = 60;
    if (2 * survey.columns <= most_characters && survey.rows <= most_lines) return {};
    const auto parts = [](std::size_t whole, std::size_t part) { return (whole + part - 1) / part; };
    const std::size_t across = std::max(parts(survey.columns, most_characters), parts(survey.rows, 2 * most_lines));
    return {across, 2 * across, 1};
}

// The drawing, its first line being the lowest y.
class Drawing {
  public:
    Drawing(const Survey &survey, const View &view) : survey_(survey), scale_(cell_size_of(survey)) {
        const std::size_t wide = (survey.columns + scale_.across - 1) / scale_.across;
        const std::size_t high = (survey.rows + scale_.down - 1) / scale_.down;
        lines_.assign(high, std::string(wide * scale_.width, blank));
        std::vector<int> worst(wide * high, -1);
        for (std::size_t i = 0; i < view.at.size(); ++i) {
            if (survey.is_blank(i)) continue;
            const std::size_t x = (i % survey.columns) / scale_.across, y = (i / survey.columns) / scale_.down;
            const int badness = view.badness[view.at[i]];
            if (badness <= worst[y * wide + x]) continue;
            worst[y * wide + x] = badness;
            lines_[y].replace(x * scale_.width, scale_.width, scale_.width, view.steps[view.at[i]].mark);
        }
        for (std::size_t i = 0; i < survey.unmodelled.size(); ++i) {
            const std::size_t x = (i % survey.columns) / scale_.across, y = (i / survey.columns) / scale_.down;
            if (survey.unmodelled[i] && worst[y * wide + x] < 0)
                lines_[y].replace(x * scale_.width, scale_.width, scale_.width, unmodelled_mark);
        }
    }

    // Puts a mark on the point; another one on the same takes the cell's second character, or both become '*'.
    void mark(std::size_t column, std::size_t row, char letter) {
        const std::size_t x = column / scale_.across * scale_.width, y = row / scale_.down;
        char &first = lines_[y][x];
        const bool taken = first == 'W' || first == 'H';
        if (!taken) first = letter;
        else if (scale_.width > 1) lines_[y][x + 1] = letter;
        else first = '*';
    }

    // Whether the place lies on the map; then it gets the letter.
    bool mark_at(double x_m, double y_m, char letter) {
        const double column = std::round((x_m - survey_.x_m) / survey_.site->step_m);
        const double row = std::round((y_m - survey_.y_m) / survey_.site->step_m);
        if (!(column >= 0.0 && column < static_cast<double>(survey_.columns) && row >= 0.0 &&
              row < static_cast<double>(survey_.rows)))
            return false;
        mark(static_cast<std::size_t>(column), static_cast<std::size_t>(row), letter);
        return true;
    }

    std::string print() const {
        constexpr std::size_t lines_between_labels = 5;
        std::string out;
        for (std::size_t line = lines_.size(); line-- > 0;) {
            const double low = edge(line * scale_.down);
            const double high = edge(std::min((line + 1) * scale_.down, survey_.rows));
            const bool labels = line % lines_between_labels == 0 || line + 1 == lines_.size();
            std::string text = labels ? format("  %8s |", plain(0.5 * (low + high)).c_str()) : "           |";
            text += lines_[line] + "|";
            const std::optional<double> &front = survey_.site->stage_front_y_m;
            const bool top = line + 1 == lines_.size();
            if (front && *front >= low && (*front < high || (top && *front == high))) text += " stage front";
            out += text + "\n";
        }
        const std::size_t wide = lines_.front().size();
        const std::string left = plain(survey_.x_of(0)), right = plain(survey_.x_of(survey_.columns - 1));
        out += format("       x/m  %s%*s\n", left.c_str(),
                      static_cast<int>(std::max(wide > left.size() ? wide - left.size() : 0, right.size() + 1)),
                      right.c_str());
        return out;
    }

    const CellSize &scale() const { return scale_; }

    /// Whether some line of the drawing holds that y.
    bool reaches(double y_m) const { return y_m >= edge(0) && y_m <= edge(survey_.rows); }

  private:
    double edge(std::size_t row) const { return survey_.y_m + (static_cast<double>(row) - 0.5) * survey_.site->step_m; }

    const Survey &survey_;
    CellSize scale_;
    std::vector<std::string> lines_;
};

std::string counted(std::size_t count, const std::string &what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

std::string site_words(const Site &site, std::size_t antennas) {
    return std::string(site.direction == LVB_DIRECTION_OUTBOUND ? "outbound" : "inbound") + ", " +
           (site.combine == LVB_COMBINE_SUM ? "sum of the powers of " : "best of ") + counted(antennas, "antenna") +
           "; packs at " + plain(site.pack_height_m) + " m";
}

std::string label_of(const Site &site, std::int32_t antenna) {
    return antenna < 0 ? "nothing" : in_quotes(site.antennas[static_cast<std::size_t>(antenna)].label);
}

std::string floor_room(double margin_db) {
    if (std::isnan(margin_db)) return "no floor is stated";
    return two(std::abs(margin_db)) + " dB " + (margin_db < 0.0 ? "under the floor" : "above the floor");
}

std::string ceiling_room(double headroom_db) {
    if (std::isnan(headroom_db)) return "no ceiling is stated";
    return two(std::abs(headroom_db)) + " dB " + (headroom_db < 0.0 ? "over the ceiling" : "under the ceiling");
}

std::string percent(std::uint64_t part, std::uint64_t whole, int width) {
    return format("%*.1f %%", width, 100.0 * static_cast<double>(part) / static_cast<double>(whole));
}

std::string print_shares(const Survey &survey, const View &view) {
    const lvb_map_summary &summary = survey.summary;
    const std::uint64_t whole = summary.points + summary.unmodelled;
    std::string out = "\n  Shares of the area (" + counted(whole, "point") + ")\n";
    const auto row = [&](char mark, std::uint64_t count, const std::string &words, bool judged) {
        out +=
            "  " + std::string(2, mark) + " " + (judged ? percent(count, whole, 5) : "      -") + "  " + words + "\n";
    };
    for (std::size_t i = 0; i < view.steps.size(); ++i)
        if (view.count[i] > 0 || view.steps[i].mark != '?')
            row(view.steps[i].mark, view.count[i], view.steps[i].words, view.steps[i].judged);
    if (summary.unmodelled > 0)
        row(unmodelled_mark, summary.unmodelled,
            "not judged: nearer to an antenna, or farther from it, than its path holds", true);
    return out;
}

std::string point_words(const Survey &survey, std::uint64_t column, std::uint64_t row) {
    return "at x " + plain(survey.x_of(column)) + " m, y " + plain(survey.y_of(row)) + " m";
}

std::string print_extremes(const Survey &survey) {
    const lvb_map_summary &summary = survey.summary;
    const Site &site = *survey.site;
    const std::string among_judged = summary.unmodelled > 0 ? "; among the points that are judged" : "";
    std::string out =
        labelled("Worst:", "W " + point_words(survey, summary.worst_column, summary.worst_row) + ": " +
                               two(summary.worst_level_dbm) + " dBm, " + floor_room(summary.worst_margin_db) +
                               "; strongest there is " + ascii(label_of(site, summary.worst_serving)) + among_judged);
    out += labelled("Hottest:", "H " + point_words(survey, summary.hottest_column, summary.hottest_row) + ": " +
                                    two(summary.hottest_level_dbm) + " dBm with no allowance taken, " +
                                    ceiling_room(summary.hottest_headroom_db) + "; strongest there is " +
                                    ascii(label_of(site, summary.hottest_serving)) + among_judged);
    if (summary.dropout > 0 && summary.overloaded > summary.overload)
        out += labelled("Both:", counted(summary.overloaded - summary.overload, "point") +
                                     " below the floor would overload with no allowance taken");
    if (survey.outage.empty()) return out;
    return out + labelled("Fading:", "below the floor in up to " + share_words(survey.highest_outage()) +
                                         " of the time; " + percent(survey.over_outage(), summary.points, 0) +
                                         " of the points more often than the " + plain(100.0 * survey.wanted_outage()) +
                                         " % that are allowed");
}

std::string print_antennas(const Survey &survey, const std::vector<bool> &on_map) {
    std::string out = "\n  Antennas\n";
    for (std::size_t i = 0; i < on_map.size(); ++i) {
        const SiteAntenna &antenna = survey.site->antennas[i];
        const lvb_antenna &at = antenna.place.entry;
        out += wrap(ascii(antenna.label) + " at x " + plain(at.x_m) + " m, y " + plain(at.y_m) + " m, z " +
                        plain(at.z_m) + " m" + (on_map[i] ? "" : ", off the map"),
                    page_columns, format("  %c  ", static_cast<char>('a' + static_cast<char>(i % 26))), "     ");
    }
    return out;
}

std::string time_words(double seconds) { return plain(std::round(seconds * 100.0) / 100.0) + " s"; }

std::string metres(double length) { return plain(std::round(length * 100.0) / 100.0); }

std::string print_stretches(const WalkSurvey &survey, const std::vector<Stretch> &stretches, double total_s,
                            bool stated, const std::string &name, const std::string &where) {
    if (!stated) return labelled(name, "not judged: none is stated");
    if (stretches.empty()) return labelled(name, "never " + where);
    std::string out =
        labelled(name, where + " for " + time_words(total_s) + " in all, in " + std::to_string(stretches.size()) +
                           (stretches.size() == 1 ? " stretch:" : " stretches:"));
    for (const Stretch &stretch : stretches) {
        const WalkSurvey::At from = survey.at(stretch.from_m), to = survey.at(stretch.to_m);
        out += wrap(metres(stretch.from_m) + " m to " + metres(stretch.to_m) + " m of the walk (x " + metres(from.x_m) +
                        " m, y " + metres(from.y_m) + " m to x " + metres(to.x_m) + " m, y " + metres(to.y_m) +
                        " m): " + time_words((stretch.to_m - stretch.from_m) / survey.walk->speed_m_per_s),
                    page_columns, "    - ", "      ");
    }
    return out;
}

} // namespace

Links links_of(const Scenario &scenario, const Site &site) {
    Links links;
    const auto add = [&](const std::vector<SiteAntenna> &antennas) {
        for (const SiteAntenna &antenna : antennas)
            if (const Link *link = &scenario.links[antenna.link];
                std::find(links.begin(), links.end(), link) == links.end())
                links.push_back(link);
    };
    add(site.antennas);
    if (site.placing) add(site.placing->candidates);
    return links;
}

namespace {

void add_unjudged(const Grounds &grounds, std::vector<std::string> &failures) {
    if (!grounds.has_floor) failures.emplace_back("NOT JUDGED at the floor: none is stated");
    if (!grounds.has_ceiling) failures.emplace_back("NOT JUDGED at the ceiling: none is stated");
}

std::string at_points(std::uint64_t some, std::uint64_t whole) {
    return " at " + std::to_string(some) + " of " + counted(whole, "point");
}

const char *const doubtful_words = "the tolerances together can push it below the floor or above the ceiling";

} // namespace

std::vector<std::string> failures(const Survey &survey) {
    const lvb_map_summary &summary = survey.summary;
    const std::uint64_t whole = summary.points + summary.unmodelled;
    std::vector<std::string> all;
    const auto add = [&](std::uint64_t count, const std::string &what, const std::string &why) {
        if (count > 0) all.push_back(what + at_points(count, whole) + why);
    };
    add(summary.dropout, "DROPS OUT", "");
    add(summary.overloaded, "OVERLOADS", "");
    add(survey.over_outage(), "FADES below the floor too often", "");
    add(survey.doubtful, "DOUBTFUL", std::string(": ") + doubtful_words);
    add(summary.unmodelled, "NOT JUDGED", ": a path does not hold there");
    add_unjudged(survey, all);
    return all;
}

std::vector<std::string> failures(const WalkSurvey &survey) {
    const lvb_walk_result &result = survey.result;
    std::vector<std::string> all;
    if (result.worst_margin_db < 0.0) all.emplace_back("DROPS OUT");
    if (result.hottest_headroom_db < 0.0) all.emplace_back("OVERLOADS");
    if (survey.doubtful > 0)
        all.push_back("DOUBTFUL" + at_points(survey.doubtful, result.points) + ": " + doubtful_words);
    if (result.unmodelled > 0)
        all.push_back("NOT JUDGED" + at_points(result.unmodelled, result.points) + ": a path does not hold there");
    add_unjudged(survey, all);
    return all;
}

std::vector<std::string> failures(const PlacingSurvey &survey) {
    std::vector<std::string> all;
    if (survey.best.empty()) {
        all.emplace_back("NO PLACEMENT keeps the headroom at every point");
    } else {
        const lvb_placement &best = survey.best.front();
        if (best.worst_margin_db < 0.0) all.emplace_back("DROPS OUT at some point of the best placement");
        if (survey.is_doubtful(best.worst_margin_db, best.hottest_headroom_db))
            all.push_back(std::string("DOUBTFUL at the worst or hottest point of the best placement: ") +
                          doubtful_words);
    }
    add_unjudged(survey, all);
    return all;
}

namespace {

std::string verdict_line(const std::vector<std::string> &failures, const char *holds) {
    std::string words;
    for (const std::string &failure : failures) words += (words.empty() ? "" : "; ") + failure;
    return labelled("Verdict:", words.empty() ? std::string("HOLDS ") + holds : words);
}

// What the scenario has of the links, and of the site, that this answer does not take into account.
std::string print_left_out(const Grounds &grounds, const Links &links, bool fades) {
    std::string words;
    const auto add = [&](const std::string &what) { words += (words.empty() ? "" : "; ") + what; };
    if (grounds.far_worst_db > 0.0)
        add("tolerances of +-" + two(grounds.far_worst_db) + " dB at the floor and +-" + two(grounds.near_worst_db) +
            " dB at the ceiling (the verdict takes them)");
    if (!fades && grounds.site->fading) add("the site's fading (map takes it)");
    for (const Link *link : links) {
        const std::string of = " of " + in_quotes(link->name);
        if (link->fading) add("the fading" + of);
        if (!link->limits.empty()) add("the limits" + of);
        if (link->tuning)
            add("the tuning" + of + " " + range_words(*link->tuning) + " (at " + plain(grounds.frequency_mhz) +
                " MHz only)");
    }
    return words.empty() ? "" : labelled("Left out:", ascii(words));
}

// What a person must know of waves that meet, and of antennas that are near.
std::string print_notes(const Grounds &grounds, std::size_t antennas, std::uint64_t near_field) {
    const Site &site = *grounds.site;
    std::string out;
    if (antennas > 1 && (site.combine == LVB_COMBINE_SUM || site.direction == LVB_DIRECTION_OUTBOUND))
        out += labelled("NOTE:", "waves of several antennas on one frequency also cancel, in places less than a "
                                 "wavelength apart; " +
                                     std::string(site.combine == LVB_COMBINE_SUM
                                                     ? "the sum of their powers is the mean over such places"
                                                     : "the best of them counts here as if it were alone"));
    if (near_field > 0)
        out += labelled("NOTE:", "near field: " + counted(near_field, "point") + (near_field == 1 ? " lies" : " lie") +
                                     " nearer to an antenna than one wavelength, or than its pattern needs to form, "
                                     "where levels do not hold");
    return out;
}

std::string print_screens(const Site &site) {
    if (site.screens.empty()) return "";
    std::string out = "\n  Screens\n";
    for (const Screen &screen : site.screens) {
        const lvb_screen &at = screen.entry;
        out += wrap(ascii(screen.label) + " from x " + plain(at.x1_m) + " m, y " + plain(at.y1_m) + " m to x " +
                        plain(at.x2_m) + " m, y " + plain(at.y2_m) + " m, z " + plain(at.bottom_m) + " to " +
                        plain(at.top_m) + " m, " +
                        (at.loss_db > 0.0 ? plain(at.loss_db) + " dB through it" : "opaque, with edges"),
                    page_columns, "  -  ", "     ");
    }
    return out;
}

} // namespace

std::string print_map(const Survey &survey, const Links &links, const std::string &show, bool brief) {
    const Site &site = *survey.site;
    const View view = view_of(survey, show);
    Drawing drawing(survey, view);
    std::vector<bool> on_map;
    for (std::size_t i = 0; i < site.antennas.size(); ++i)
        on_map.push_back(drawing.mark_at(site.antennas[i].place.entry.x_m, site.antennas[i].place.entry.y_m,
                                         static_cast<char>('a' + static_cast<char>(i % 26))));
    const lvb_map_summary &summary = survey.summary;
    drawing.mark(summary.worst_column, summary.worst_row, 'W');
    drawing.mark(summary.hottest_column, summary.hottest_row, 'H');
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz; " +
                               std::to_string(survey.columns) + " by " + std::to_string(survey.rows) + " squares of " +
                               plain(site.step_m) + " m, each judged in its middle",
                           page_columns, "  ", "  ");
    if (!site.note.empty() && !brief) out += wrap(ascii(site.note), page_columns, "  ", "  ");
    out += "\n       y/m\n" + drawing.print();
    const std::string answer = print_shares(survey, view) + "\n" + print_extremes(survey) +
                               verdict_line(failures(survey), "at every point of the areas") +
                               print_left_out(survey, links, true) +
                               print_notes(survey, site.antennas.size(), survey.near_field);
    if (brief) return out + answer;
    const CellSize &scale = drawing.scale();
    std::string legend = "Seen from above: ahead (y) is up the page, right (x) is right.";
    if (site.stage_front_y_m)
        legend += " The stage front is at y " + plain(*site.stage_front_y_m) + " m" +
                  (drawing.reaches(*site.stage_front_y_m) ? "." : ", outside this drawing.");
    if (scale.across > 1 || scale.down > 1)
        legend += " A character shows the worst of " + std::to_string(scale.across) + " by " +
                  std::to_string(scale.down) + " squares.";
    legend += " W is the worst point, H the hottest, small letters are antennas; two marks in one place may show as *. "
              "Blank is outside the areas.";
    out += wrap(legend, page_columns, "  ", "  ");
    return out + print_antennas(survey, on_map) + print_screens(site) + answer;
}

std::string print_walk(const WalkSurvey &survey, const Links &links) {
    const Site &site = *survey.site;
    const lvb_walk_result &result = survey.result;
    const auto place = [&](double at_m) {
        const WalkSurvey::At at = survey.at(at_m);
        return "at " + metres(at_m) + " m of the walk (x " + metres(at.x_m) + " m, y " + metres(at.y_m) + " m)";
    };
    std::string out = wrap(site_words(site, site.antennas.size()) + "; " + plain(survey.frequency_mhz) + " MHz",
                           page_columns, "  ", "  ");
    out += labelled("Walk:", ascii(survey.walk->name) + ": " + metres(result.length_m) + " m at " +
                                 plain(survey.walk->speed_m_per_s) + " m/s, " + time_words(result.duration_s) +
                                 "; looked at every " + plain(survey.walk->step_m) + " m");
    if (result.unmodelled > 0)
        out += labelled("Unjudged:", "of " + counted(result.points, "point") + " " + std::to_string(result.unmodelled) +
                                         " lie where an antenna's path does not hold, and count for nothing");
    if (result.points > result.unmodelled) {
        out += labelled("Worst:", two(result.worst_level_dbm) + " dBm, " + floor_room(result.worst_margin_db) + ", " +
                                      place(result.worst_m));
        out += labelled("Hottest:", two(result.hottest_level_dbm) + " dBm with no allowance taken, " +
                                        ceiling_room(result.hottest_headroom_db) + ", " + place(result.hottest_m));
    }
    out += print_stretches(survey, survey.under_floor, result.under_floor_s, survey.has_floor,
                           "Floor:", "under the floor");
    out += print_stretches(survey, survey.over_ceiling, result.over_ceiling_s, survey.has_ceiling,
                           "Ceiling:", "over the ceiling");
    return out + verdict_line(failures(survey), "at every point of the walk") + print_left_out(survey, links, false) +
           print_notes(survey, site.antennas.size(), survey.near_field);
}

std::string placed_words(const PlacingSurvey &survey, const lvb_placement &placement) {
    const std::vector<SiteAntenna> &candidates = survey.site->placing->candidates;
    std::string words = candidates[static_cast<std::size_t>(placement.first)].label;
    if (placement.second >= 0) words += " and " + candidates[static_cast<std::size_t>(placement.second)].label;
    return words;
}

std::string print_places(const PlacingSurvey &survey, const Links &links) {
    const Site &site = *survey.site;
    const Placing &placing = *site.placing;
    const std::size_t standing = placing.keeps_antennas ? site.antennas.size() : 0;
    std::string out = wrap(
        site_words(site, standing + placing.antennas) + "; " + (standing == 0 ? "none" : std::to_string(standing)) +
            " of them in place already; looked at all " + counted(survey.looked_at, "placement") + " of " +
            counted(placing.candidates.size(), "candidate") + "; " + plain(survey.frequency_mhz) + " MHz; " +
            (survey.has_ceiling ? "every point must keep " + plain(placing.least_headroom_db) + " dB under the ceiling"
                                : "no ceiling is stated, so least_headroom_db counts for nothing"),
        page_columns, "  ", "  ");
    const std::string verdict = verdict_line(failures(survey), "at every point of the areas with the best of them") +
                                print_left_out(survey, links, false) +
                                print_notes(survey, standing + placing.antennas, 0);
    if (survey.best.empty())
        return out +
               labelled("None:", "every placement leaves some point less than " + plain(placing.least_headroom_db) +
                                     " dB under the ceiling") +
               verdict;
    std::size_t rank = 0;
    for (const lvb_placement &placement : survey.best) {
        out += wrap(ascii(placed_words(survey, placement)) + ": worst point " + two(placement.worst_level_dbm) +
                        " dBm, " + floor_room(placement.worst_margin_db) + "; hottest " +
                        two(placement.hottest_level_dbm) + " dBm, " + ceiling_room(placement.hottest_headroom_db),
                    page_columns, format("  %3zu. ", ++rank), "       ");
        for (const std::int32_t index : {placement.first, placement.second}) {
            if (index < 0) continue;
            const lvb_antenna &at = placing.candidates[static_cast<std::size_t>(index)].place.entry;
            out += format("       at x %s m, y %s m, z %s m, azimuth %s degrees\n", metres(at.x_m).c_str(),
                          metres(at.y_m).c_str(), metres(at.z_m).c_str(), plain(at.azimuth_deg).c_str());
        }
    }
    return out + verdict;
}

} // namespace desk
