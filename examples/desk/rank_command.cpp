// What matters in a link: losses, tolerances, what helps most, and what to look up or to measure next.
#include "decide_common.hpp"

#include "faults.hpp"
#include "print_budget.hpp"
#include "tuning.hpp"

#include <cmath>

namespace desk {
namespace {

// A derivative of the level, with its unit and its name in JSON.
struct Slope {
    double lvb_contribution::*value;
    const char *name;
    const char *unit; ///< null: not on the page
};

constexpr Slope slopes[] = {
    {&lvb_contribution::db_per_db, "db_per_db", nullptr},
    {&lvb_contribution::db_per_m, "db_per_m", "dB for each m of cable"},
    {&lvb_contribution::db_per_connector, "db_per_connector", "dB for each connector"},
    {&lvb_contribution::db_per_connector_db, "db_per_connector_db", nullptr},
    {&lvb_contribution::db_per_degc, "db_per_degc", "dB for each degC"},
    {&lvb_contribution::far_db_per_mhz, "far_db_per_mhz", "dB for each MHz"},
    {&lvb_contribution::near_db_per_mhz, "near_db_per_mhz", nullptr},
    {&lvb_contribution::far_db_per_distance_m, "far_db_per_distance_m", "dB for each m of the far distance"},
    {&lvb_contribution::near_db_per_distance_m, "near_db_per_distance_m", "dB for each m of the near distance"},
    {&lvb_contribution::far_db_per_azimuth_deg, "far_db_per_azimuth_deg", "dB for each degree of azimuth"},
    {&lvb_contribution::far_db_per_elevation_deg, "far_db_per_elevation_deg", "dB for each degree of elevation"},
    {&lvb_contribution::near_db_per_azimuth_deg, "near_db_per_azimuth_deg", nullptr},
    {&lvb_contribution::near_db_per_elevation_deg, "near_db_per_elevation_deg", nullptr},
    {&lvb_contribution::db_per_facing_deg, "db_per_facing_deg", "dB for each degree of facing"},
};

using Lines = std::vector<lvb_contribution>;

std::string percent(double share) { return std::isnan(share) ? "-" : format("%.1f %%", 100.0 * share); }

std::string slope_words(const lvb_contribution &line) {
    std::string words;
    for (const Slope &slope : slopes) {
        const double value = line.*slope.value;
        if (slope.unit == nullptr || std::isnan(value) || std::abs(value) < 5e-5) continue;
        words += (words.empty() ? "" : ", ") + format("%+.4f ", value) + slope.unit;
    }
    return words;
}

std::string label_of(const Link &link, std::int32_t stage) {
    return "'" + ascii(link.stages[static_cast<std::size_t>(stage)].label) + "'";
}

// Without a window the library ranks as if the far end had a floor.
bool is_decided(const lvb_ranking &ranking) { return !std::isnan(ranking.decided_by_db); }

bool ceiling_decides(const lvb_ranking &ranking) { return ranking.decided_by == LVB_DECIDED_BY_NEAR_CEILING; }

std::string decided_words(const lvb_ranking &ranking) {
    if (!is_decided(ranking)) return "by nothing: no floor and no ceiling is stated; what helps the far end is told";
    return std::string(ceiling_decides(ranking) ? "the near end against the ceiling"
                                                : "the far end against the floor") +
           ", " + two(ranking.decided_by_db) + " dB of room";
}

std::string help_words(const Link &link, const lvb_ranking &ranking) {
    if (ranking.help_stage < 0) return "nothing helps";
    return label_of(link, ranking.help_stage) + " helps most: " + two(ranking.help_db) +
           " dB more room by a factor of two in it " +
           (ceiling_decides(ranking) ? "(half the power or gain, twice the dB of a loss, twice the distance)"
                                     : "(twice the power or gain, half the dB of a loss, half the distance)");
}

std::string page(const Book &book, const Link &link, const lvb_ranking &ranking, const Lines &lines) {
    std::string out = page_title("RANK", link.name + ", " + plain(link.frequency_mhz) + " MHz", book);
    out += table_row("Stage", {"far dB", "losses", "variance", "helps dB"});
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const lvb_contribution &line = lines[i];
        out += table_row(link.stages[i].label, {signed_two(line.far_change_db), percent(line.loss_share),
                                                percent(line.variance_share), signed_two(line.help_db)});
        if (const std::string words = slope_words(line); !words.empty())
            out += wrap(words, page_columns, "      ", "      ");
    }
    out += "\n" + labelled("Decided:", decided_words(ranking));
    out += labelled("Losses:", two(ranking.loss_db) + " dB in all" +
                                   (ranking.loss_stage < 0 ? "" : ", most in " + label_of(link, ranking.loss_stage)) +
                                   "; gains " + two(ranking.gain_db) + " dB");
    if (ranking.variance_stage >= 0)
        out += labelled("Widest:", label_of(link, ranking.variance_stage) + " has the largest tolerance");
    out += labelled("Helps:", help_words(link, ranking));
    if (ranking.measure_stage >= 0)
        out += labelled("Measure:", label_of(link, ranking.measure_stage) +
                                        " is the widest guess: once known, the worst case there shrinks by " +
                                        two(ranking.measure_worst_db) + " dB, the root-sum-square by " +
                                        two(ranking.measure_rss_db) + " dB");
    if (ranking.look_up_stage >= 0)
        out += labelled("Look up:", label_of(link, ranking.look_up_stage) +
                                        " is a guess without a tolerance and changes the level by " +
                                        two(std::abs(ranking.look_up_change_db)) + " dB");
    return out + print_untuned(link, "ranked") + print_cautions({&link});
}

Json label_or_null(const Link &link, std::int32_t stage) {
    return stage < 0 ? Json(nullptr) : Json(link.stages[static_cast<std::size_t>(stage)].label);
}

std::string json(const Book &book, const Link &link, const lvb_ranking &ranking, const Lines &lines) {
    Json out = json_head("rank", book, &link);
    out["decided_by"] = nullptr;
    if (is_decided(ranking)) out["decided_by"] = ceiling_decides(ranking) ? "near ceiling" : "far floor";
    out["room_db"] = ranking.decided_by_db;
    out["loss_db"] = ranking.loss_db;
    out["gain_db"] = ranking.gain_db;
    out["loss_stage"] = label_or_null(link, ranking.loss_stage);
    out["variance_stage"] = label_or_null(link, ranking.variance_stage);
    out["help_stage"] = label_or_null(link, ranking.help_stage);
    out["help_db"] = ranking.help_db;
    out["measure_stage"] = label_or_null(link, ranking.measure_stage);
    out["measure_worst_db"] = ranking.measure_worst_db;
    out["measure_rss_db"] = ranking.measure_rss_db;
    out["look_up_stage"] = label_or_null(link, ranking.look_up_stage);
    out["look_up_change_db"] = ranking.look_up_change_db;
    out["db_per_mhz"] = ranking.db_per_mhz;
    out["db_per_degc"] = ranking.db_per_degc;
    out["stages"] = Json::array();
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const lvb_contribution &line = lines[i];
        Json stage;
        stage["label"] = link.stages[i].label;
        stage["kind"] = lvb_kind_name(link.stages[i].entry.kind);
        stage["basis"] = lvb_basis_name(line.basis);
        stage["loss_rank"] = line.loss_rank;
        stage["variance_rank"] = line.variance_rank;
        stage["help_rank"] = line.help_rank;
        stage["far_change_db"] = line.far_change_db;
        stage["near_change_db"] = line.near_change_db;
        stage["loss_share"] = line.loss_share;
        stage["variance_share"] = line.variance_share;
        stage["worst_share"] = line.worst_share;
        stage["help_db"] = line.help_db;
        for (const Slope &slope : slopes) stage[slope.name] = line.*slope.value;
        out["stages"].push_back(stage);
    }
    return json_text(std::move(out), {&link});
}

} // namespace

Outcome answer_rank(const Asked &question) {
    const Book book(question.file);
    const Link &link = link_named(book.scenario, question.link);
    const std::unique_ptr<Lent> lent = lend(book.document, link);
    lvb_ranking ranking = sized<lvb_ranking>();
    Lines lines(link.stages.size());
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_ranking(&lent->link(), &ranking, lines.data(), sizeof lines[0], &fault) != LVB_OK)
        refuse_fault(book.document, link, fault);
    return {question.as_json ? json(book, link, ranking, lines) : page(book, link, ranking, lines)};
}

} // namespace desk
