#include "print_budget.hpp"

#include "bars.hpp"
#include "print_terms.hpp"
#include "tuning.hpp"
#include "verdict.hpp"
#include "workings.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace desk {
namespace {

constexpr std::size_t page = page_columns;
constexpr std::size_t bar_columns = 20;
constexpr std::size_t window_columns = 80;

// One letter for the basis; the two guesses stand out.
char basis_mark(std::int32_t basis) {
    switch (basis) {
    case LVB_BASIS_MEASURED:
        return 'M';
    case LVB_BASIS_DATA_SHEET:
        return 'D';
    case LVB_BASIS_HANDBOOK:
        return 'H';
    case LVB_BASIS_FORMULA:
        return 'F';
    case LVB_BASIS_ESTIMATE:
        return 'e';
    default:
        return '?';
    }
}

// Levels beyond +-999.99 dBm need wider columns of figures; the label gives way.
struct Widths {
    int label = 24;
    int figure = 8;
};

Widths widths_of(const Computed &computed) {
    Widths widths;
    int widest = widths.figure;
    for (const lvb_level &level : computed.levels)
        for (const double figure : {level.far_level_dbm, level.near_level_dbm})
            widest = std::max(widest, static_cast<int>(two(figure).size()) + 1);
    widths.label -= 4 * (widest - widths.figure);
    widths.figure = widest;
    return widths;
}

std::string print_row(const Widths &widths, const std::string &label, const std::array<std::string, 4> &figures,
                      const std::string &rest) {
    std::string out =
        format("  %-*s ", widths.label, shorten(ascii(label), static_cast<std::size_t>(widths.label)).c_str());
    for (std::size_t i = 0; i < figures.size(); ++i)
        out += (i == 2 ? "  " : " ") + format("%*s", widths.figure, figures[i].c_str());
    return out + "  " + rest + "\n";
}

std::string print_workings(const Link &link, const Computed &computed, std::size_t index, std::int64_t tolerance) {
    const Stage &stage = link.stages[index];
    std::string words = workings(link, computed, index);
    if (tolerance != 0) words += "; +-" + two_decimals(tolerance) + " dB";
    if (!stage.note.empty()) words += "; " + stage.note;
    for (const std::string &sentence : note_sentences(computed.levels[index].notes)) words += "; NOTE: " + sentence;
    return wrap(ascii(words), page, "      ", "      ");
}

// The difference of the printed levels; after a null, where nothing is left to take a difference of, the change itself.
std::string change_words(std::int64_t level, std::int64_t before, double change_db) {
    return two_decimals(is_endless(before) ? hundredths(change_db) : level - before, true);
}

std::string print_rows(const Link &link, const Computed &computed, bool brief) {
    const Widths widths = widths_of(computed);
    const Scale scale = scale_of_chain(computed, bar_columns);
    std::string out = print_row(widths, "", {"far end", "", "near end", ""}, "");
    out.erase(out.find_last_not_of(" \n") + 1);
    out += "\n" + print_row(widths, "Stage", {"change", "level", "change", "level"},
                            format("%-9s  on %-*.0f%*.0f", "level is", static_cast<int>(bar_columns) - 6, scale.low_dbm,
                                   6, scale.high_dbm));
    std::int64_t far_before = 0;
    std::int64_t near_before = 0;
    std::int64_t tolerance_before = 0;
    for (std::size_t i = 0; i < link.stages.size(); ++i) {
        const lvb_level &level = computed.levels[i];
        const std::int64_t far = hundredths(level.far_level_dbm);
        const std::int64_t near = hundredths(level.near_level_dbm);
        const std::int64_t tolerance = hundredths(level.far_worst_db);
        out += print_row(widths, link.stages[i].label,
                         {change_words(far, far_before, level.far_change_db), two_decimals(far),
                          change_words(near, near_before, level.near_change_db), two_decimals(near)},
                         format("%-9s  %c  ", lvb_reference_name(level.reference), basis_mark(level.basis)) +
                             level_bar(scale, level.far_level_dbm, level.near_level_dbm));
        if (!brief) out += print_workings(link, computed, i, tolerance - tolerance_before);
        far_before = far;
        near_before = near;
        tolerance_before = tolerance;
    }
    return out;
}

std::string place_words(const lvb_stage &receiver, std::int32_t zone) {
    switch (zone) {
    case LVB_ZONE_DROPOUT:
        return "dropout: below the floor";
    case LVB_ZONE_LOW:
        return "receivable, but below the wanted band";
    case LVB_ZONE_WANTED:
        return (receiver.stated & LVB_STATED_WANTED) != 0 ? "inside the wanted band" : "inside the window";
    case LVB_ZONE_HIGH:
        return "receivable, but above the wanted band";
    case LVB_ZONE_OVERLOAD:
        return "overload: above the ceiling";
    default:
        return "not judged";
    }
}

// Where the tolerances together can take the level.
std::string tolerance_words(const lvb_stage &receiver, const lvb_end &end) {
    if (end.zone_lowest == end.zone && end.zone_highest == end.zone) return "; the tolerances do not change that";
    std::string words;
    if (end.zone_lowest != end.zone) words += "; all tolerances downwards: " + place_words(receiver, end.zone_lowest);
    if (end.zone_highest != end.zone) words += "; all tolerances upwards: " + place_words(receiver, end.zone_highest);
    return words;
}

std::string print_end(const char *name, const Link &link, const lvb_budget &budget, const lvb_end &end) {
    const lvb_stage receiver = judged_receiver(link);
    std::string words = two(end.level_dbm) + " dBm";
    if (end.distance_m > 0.0)
        words = "at " + (link.placed() ? two(end.distance_m) : plain(end.distance_m)) + " m " + words;
    if (&end == &budget.near_end && near_distance_missing(budget)) words += " (no near distance is given)";
    if (has_window(receiver)) words += ", " + place_words(receiver, end.zone);
    if ((receiver.stated & LVB_STATED_FLOOR) != 0) words += "; " + floor_words(receiver, end);
    if ((receiver.stated & LVB_STATED_CEILING) != 0) words += "; " + ceiling_words(receiver, end);
    words += "; tolerance +-" + two(end.worst_db) + " dB worst case, +-" + two(end.rss_db) + " dB root-sum-square";
    if (has_window(receiver) && end.worst_db > 0.0) words += tolerance_words(receiver, end);
    return wrap(words, page, format("  %-9s ", name), std::string(12, ' '));
}

std::string decision_words(const Link &link, const lvb_budget &budget) {
    const lvb_stage receiver = judged_receiver(link);
    switch (budget.decided_by) {
    case LVB_DECIDED_BY_FAR_FLOOR:
        return "the far end against the floor leaves least room: " + floor_words(receiver, budget.far_end);
    case LVB_DECIDED_BY_NEAR_CEILING:
        return "the near end against the ceiling leaves least room: " + ceiling_words(receiver, budget.near_end);
    default:
        return "nothing: no limit is stated";
    }
}

std::string guess_words(const lvb_budget &budget) {
    std::string words = std::to_string(budget.guesses) + " of " + std::to_string(budget.entries) + " entries";
    if (budget.guesses == 0) return words + ": every number rests on something";
    words += " (" + std::to_string(budget.estimated) + " estimated, " + std::to_string(budget.not_looked_up) +
             " not looked up)";
    const std::uint32_t bare = budget.guesses_without_tolerance;
    if (bare == budget.guesses) return words + "; none of them has a tolerance, so their part is unknown";
    words += "; they carry " + two(budget.guess_worst_db) + " dB of the far end's " + two(budget.far_end.worst_db) +
             " dB tolerance";
    if (bare == 0) return words + format(", %.0f %%", 100.0 * budget.guess_share);
    return words + "; " + std::to_string(bare) + " of them without a tolerance, so their part is unknown";
}

// The receiver's window, and where both ends of the walk lie.
std::string print_ends(const Link &link, const Computed &computed) {
    const lvb_budget &budget = computed.budget;
    const std::string window = window_drawing(link, computed, window_columns);
    return window + (window.empty() ? "" : "\n") + print_end("Far end:", link, budget, budget.far_end) +
           print_end("Near end:", link, budget, budget.near_end);
}

// What decides the verdict, what is radiated, and what the figures rest on.
std::string print_grounds(const Answer &answer) {
    const Link &link = *answer.link;
    const lvb_budget &budget = answer.computed.budget;
    std::string out = labelled("Decided:", decision_words(link, budget));
    if (!std::isnan(budget.eirp_dbm))
        out += labelled("Radiates:",
                        two(budget.eirp_dbm) + " dBm e.i.r.p. (" + power_words(budget.eirp_dbm) + "), +-" +
                            two(budget.eirp_worst_db) + " dB worst case; " +
                            (link.limits.empty() ? "not judged against any limit: your licence and the exposure "
                                                   "rules decide"
                                                 : "judged against the limits below; your licence and the "
                                                   "exposure rules decide"));
    out += print_tuning(link, answer.computed);
    out += print_walk(link, answer.computed) + print_fading(link, answer.computed) +
           print_noise(link, answer.computed) + print_limits(answer);
    return out + labelled("Guesses:", guess_words(budget));
}

} // namespace

std::string print_heading(const Scenario &scenario, const std::string &file, bool brief) {
    std::string out = wrap(ascii("Level book of " + scenario.production + " (" + file + ")"), page, "", "  ");
    if (!scenario.note.empty()) out += wrap(ascii(scenario.note), page, "  ", "  ");
    if (brief) return out;
    out += "\nHow to read it\n";
    const auto item = [&](const char *words) { out += wrap(words, page, "  - ", "    "); };
    item("far: the farthest point of the walk with every allowance taken, judged against the floor; near: the nearest "
         "point with none, judged against the ceiling. change: in dB; level: after the stage, in dBm.");
    item("Levels are rounded to 0.01 dB and each change is the difference of the printed levels, so the columns add up "
         "and a computed step can differ from its own rounding by 0.01 dB.");
    item("A level is conducted (in a cable), e.i.r.p. (radiated), or isotropic (what an isotropic antenna receives).");
    item("on: what the number rests on. M measured, D data sheet, H handbook, F formula; guesses are e estimate and "
         "? not looked up.");
    item("The bar shows where the level lies: f far, n near, * both. In the receiver's window ~ stands as far as the "
         "tolerances reach in the worst case.");
    return out;
}

std::string print_link(const Answer &answer, bool brief) {
    const Link &link = *answer.link;
    const Computed &computed = answer.computed;
    const lvb_budget &budget = computed.budget;
    std::string title = "LINK " + link.name;
    if (!link.direction.empty()) title += ", " + link.direction;
    title += ", " + plain(link.frequency_mhz) + " MHz";
    if (link.temperature_degc) title += ", cables at " + plain(*link.temperature_degc) + " degC";
    std::string out = std::string(page, '-') + "\n" + wrap(ascii(title), page, "", "  ");
    if (!link.note.empty() && !brief) out += wrap(ascii(link.note), page, "  ", "  ");
    out += "\n" + print_rows(link, computed, brief) + "\n";
    if (!brief) out += print_ends(link, computed);
    out += labelled("Verdict:", whole_verdict(answer));
    if (!brief) out += print_grounds(answer);
    for (const std::string &sentence : note_sentences(budget.notes)) out += labelled("NOTE:", sentence);
    return out;
}

std::string print_summary(const std::vector<Answer> &answers) {
    std::string out = std::string(page, '-') + "\nAll links\n";
    for (const Answer &answer : answers) {
        constexpr std::size_t name_columns = 34;
        const std::string name = shorten(ascii(answer.link->name), name_columns);
        out += wrap(whole_verdict(answer), page, format("  %-*s  ", static_cast<int>(name_columns), name.c_str()),
                    std::string(name_columns + 6, ' '));
    }
    return out;
}

std::vector<std::string> raised_floors(const Links &links, bool of_site) {
    std::vector<std::string> sentences;
    for (const Link *link : links)
        if (const std::string words =
                raised_floor_words(*link, of_site ? "a site is judged against the highest floor of its links"
                                                  : "the level is judged against that");
            !words.empty())
            sentences.push_back("In link " + in_quotes(link->name) + " " + words + ".");
    return sentences;
}

std::vector<std::string> cautions(const Links &links, bool of_site) {
    std::vector<std::string> sentences = raised_floors(links, of_site);
    for (std::uint32_t i = 0; i < lvb_caution_count(); ++i) sentences.emplace_back(lvb_caution_text(i));
    return sentences;
}

std::string print_cautions(const Links &links, bool of_site) {
    std::string out = std::string(page, '-') + "\nCautions\n";
    for (const std::string &sentence : cautions(links, of_site)) out += wrap(sentence, page, "  - ", "    ");
    return out;
}

} // namespace desk
