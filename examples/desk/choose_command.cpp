// Gear from the stock: the cheapest sets with which every link holds what it needs.
#include "decide_common.hpp"

#include "faults.hpp"
#include "print_budget.hpp"
#include "read_decisions.hpp"
#include "shortage.hpp"
#include "tuning.hpp"
#include "verdict.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

// A link whose gear is sought, lent to the library.
struct Sought {
    const Link *link;
    std::unique_ptr<Lent> lent;
};

// A place in a link for one of several items.
struct Place {
    std::size_t sought;
    std::size_t stage;
    std::vector<std::uint32_t> items;    // that may stand there
    std::vector<std::uint32_t> left_out; // that do not serve every frequency of the link's tuning
};

bool has_slot(const Link &link) {
    return std::any_of(link.stages.begin(), link.stages.end(),
                       [](const Stage &stage) { return stage.from_stock != nullptr; });
}

std::vector<Sought> sought_links(const Book &book, const std::vector<std::string> &names) {
    std::vector<Sought> all;
    for (const Link &link : book.scenario.links) {
        const bool named = std::find(names.begin(), names.end(), link.name) != names.end();
        if (names.empty() ? !has_slot(link) : !named) continue;
        if (!has_slot(link))
            book.document.refuse(*link.value, "nothing is to be chosen here: no stage has from_stock; in link " +
                                                  in_quotes(link.name));
        compute(book.document, link); // what is wrong with the link itself is told first
        all.push_back({&link, lend(book.document, link)});
    }
    for (const std::string &name : names) link_named(book.scenario, name); // refuses one that there is not
    if (all.empty())
        book.document.refuse(book.document.root(), "nothing is to be chosen: no stage of any link has from_stock");
    return all;
}

// The stock as if it were one long chain, so that it is lent like a link.
Link stock_as_link(const std::vector<StockItem> &stock) {
    Link chain;
    for (const StockItem &item : stock) chain.stages.push_back(item.stage);
    return chain;
}

struct Answered {
    lvb_chosen chosen{};
    std::vector<Place> places;                    ///< of each slot
    std::vector<std::vector<std::uint32_t>> sets; ///< the items of each set, slot by slot
    std::vector<std::uint64_t> costs;
    std::vector<lvb_miss> misses;            ///< of each link, where no set was found
    std::vector<std::vector<Judged>> judged; ///< of each set, link by link
};

// A part of an item that the library names by the item's index in `stage`; `row` is then a row of the table.
bool of_items_part(const lvb_fault &fault) {
    switch (fault.structure) {
    case LVB_STRUCT_GAIN_TABLE:
    case LVB_STRUCT_CABLE_TABLE:
    case LVB_STRUCT_PATTERN:
    case LVB_STRUCT_AZIMUTH_CUT:
    case LVB_STRUCT_ELEVATION_CUT:
        return true;
    default:
        return false;
    }
}

// Why something cannot be wanted of a link.
std::string why_unused(std::int32_t field) {
    switch (field) {
    case LVB_FIELD_MARGIN_DB:
        return "there is no margin to keep: no receiver with a floor ends this link";
    case LVB_FIELD_HEADROOM_DB:
        return "there is no headroom to keep: no receiver with a ceiling ends this link";
    case LVB_FIELD_EIRP_LIMIT_DBM:
        return "there is no e.i.r.p. to limit: this link has no antenna";
    default:
        return "there is no noise figure to limit: this link has no air, and so no receive side";
    }
}

// The links were computed before as they stand: what is refused here is an item, or what is wanted of a link.
[[noreturn]] void refuse(const Book &book, const std::vector<Sought> &sought, const lvb_fault &fault) {
    const Document &document = book.document;
    const std::vector<StockItem> &stock = book.scenario.stock;
    const std::int64_t item_at = of_items_part(fault)                 ? fault.stage
                                 : fault.structure == LVB_STRUCT_ITEM ? fault.row
                                                                      : -1;
    if (item_at >= 0 && static_cast<std::size_t>(item_at) < stock.size()) {
        const StockItem &item = stock[static_cast<std::size_t>(item_at)];
        const bool of_item = item.numbers.contains(fault.field) && !of_items_part(fault);
        refuse_fault(document, of_item ? static_cast<const Part &>(item) : Part{item.stage.value, item.stage.numbers},
                     fault, "; in the stock, " + in_quotes(item.name));
    }
    if (fault.row < 0 || static_cast<std::size_t>(fault.row) >= sought.size()) throw Refusal(fault_words(fault));
    const Link &link = *sought[static_cast<std::size_t>(fault.row)].link;
    const std::string where = "; in link " + in_quotes(link.name);
    const bool of_need = fault.structure == LVB_STRUCT_NEED && fault.stage == LVB_STAGE_NONE;
    if (of_need && fault.status == LVB_E_UNUSED && link.wanted)
        if (const auto given = link.wanted->numbers.find(fault.field); given != link.wanted->numbers.end())
            document.refuse(*given->second.value, why_unused(fault.field) + where);
    if (of_need && link.wanted) refuse_fault(document, *link.wanted, fault, where);
    if (fault.structure != LVB_STRUCT_NEED || fault.stage < 0) document.refuse(*link.value, fault_words(fault) + where);
    lvb_fault of_stage = fault;
    of_stage.structure = LVB_STRUCT_STAGE;
    of_stage.row = -1; // the index of the link, not a row of a table
    refuse_fault(document, link, of_stage);
}

// One item cannot stand in for every kind: the library would only tell numbers.
void check_kinds(const Book &book, const Link &link) {
    const auto class_of = [](std::int32_t kind) {
        const bool carried = kind == LVB_KIND_PASSIVE || kind == LVB_KIND_CABLE || kind == LVB_KIND_AMPLIFIER;
        return carried ? LVB_KIND_PASSIVE : kind;
    };
    for (const Stage &stage : link.stages)
        for (const std::uint32_t candidate : stage.candidates) {
            const StockItem &item = book.scenario.stock[candidate];
            const std::int32_t kind = class_of(stage.entry.kind);
            const bool choosable = kind == LVB_KIND_SOURCE || kind == LVB_KIND_ANTENNA || kind == LVB_KIND_PASSIVE;
            if (choosable && class_of(item.stage.entry.kind) == kind) continue;
            book.document.refuse(*stage.from_stock,
                                 in_quotes(item.name) + " is of kind " + lvb_kind_name(item.stage.entry.kind) +
                                     ", which cannot stand in for " + lvb_kind_name(stage.entry.kind) + "; in link " +
                                     in_quotes(link.name) + ", " + in_quotes(stage.label));
        }
}

// Whether an item serves all frequencies from the lowest to the highest, by its own band and by its table.
bool serves(const StockItem &item, double lowest_mhz, double highest_mhz) {
    const bool band = (item.lowest_mhz == 0.0 || item.lowest_mhz <= lowest_mhz) &&
                      (item.highest_mhz == 0.0 || item.highest_mhz >= highest_mhz);
    if (!band || item.stage.gain_table == nullptr || item.stage.gain_table->points.empty()) return band;
    const std::vector<double> &table_mhz = item.stage.gain_table->points;
    return table_mhz.front() <= lowest_mhz && table_mhz.back() >= highest_mhz;
}

std::vector<Place> places_of(const Book &book, const std::vector<Sought> &sought) {
    std::vector<Place> places;
    for (std::size_t n = 0; n < sought.size(); ++n) {
        const Link &link = *sought[n].link;
        for (std::size_t s = 0; s < link.stages.size(); ++s) {
            if (link.stages[s].candidates.empty()) continue;
            Place &place = places.emplace_back(Place{n, s, {}, {}});
            for (const std::uint32_t candidate : link.stages[s].candidates) {
                const bool tuned = !link.tuning || serves(book.scenario.stock[candidate], ends_of(*link.tuning).first,
                                                          ends_of(*link.tuning).second);
                (tuned ? place.items : place.left_out).push_back(candidate);
            }
        }
    }
    return places;
}

Answered choose(const Book &book, const std::vector<Sought> &sought, const ChooseQuestion &question) {
    Answered answered;
    const Link chain = stock_as_link(book.scenario.stock);
    const Lent lent(chain);
    std::vector<lvb_item> items;
    for (std::size_t i = 0; i < book.scenario.stock.size(); ++i) {
        const StockItem &item = book.scenario.stock[i];
        items.push_back(
            {&lent.stage(i), nullptr, nullptr, item.cost, item.count, 0, item.lowest_mhz, item.highest_mhz});
    }
    std::vector<lvb_need> needs;
    for (const Sought &one : sought) {
        check_kinds(book, *one.link);
        lvb_need need = one.link->wanted ? one.link->wanted->entry : lvb_need{};
        need.link = &one.lent->link();
        needs.push_back(need);
    }
    answered.places = places_of(book, sought);
    std::vector<lvb_slot> slots;
    std::vector<std::uint32_t>
        nothing; // the library wants an item in every slot: what is entered, of which none is left
    nothing.reserve(answered.places.size());
    for (const Place &place : answered.places) {
        const std::uint32_t *first = place.items.data();
        if (place.items.empty()) {
            first = &nothing.emplace_back(static_cast<std::uint32_t>(items.size()));
            items.push_back({&sought[place.sought].lent->stage(place.stage), nullptr, nullptr, 0, 0, 0, 0.0, 0.0});
        }
        slots.push_back({static_cast<std::uint32_t>(place.sought), static_cast<std::uint32_t>(place.stage),
                         static_cast<std::uint32_t>(std::max<std::size_t>(place.items.size(), 1)), 0, first});
    }
    std::vector<std::uint32_t> sets(std::size_t{question.sets} * slots.size());
    answered.costs.resize(question.sets);
    answered.misses.resize(needs.size());
    lvb_choice choice = sized<lvb_choice>();
    choice.need_count = static_cast<std::uint32_t>(needs.size());
    choice.need_size = sizeof(lvb_need);
    choice.item_count = static_cast<std::uint32_t>(items.size());
    choice.item_size = sizeof(lvb_item);
    choice.slot_count = static_cast<std::uint32_t>(slots.size());
    choice.slot_size = sizeof(lvb_slot);
    choice.stage_size = sizeof(lvb_stage);
    choice.set_count = question.sets;
    choice.miss_size = sizeof(lvb_miss);
    choice.needs = needs.data();
    choice.items = items.data();
    choice.slots = slots.data();
    choice.step_limit = question.step_limit;
    choice.sets = sets.data();
    choice.costs = answered.costs.data();
    choice.misses = answered.misses.data();
    lvb_choice_scratch room = sized<lvb_choice_scratch>();
    lvb_fault fault = sized<lvb_fault>();
    if (lvb_compute_choice_scratch(&choice, &room, &fault) != LVB_OK) refuse(book, sought, fault);
    std::vector<double> scratch(room.ample_bytes / sizeof(double) + 1);
    choice.scratch = scratch.data();
    choice.scratch_bytes = scratch.size() * sizeof(double);
    answered.chosen.size = sizeof answered.chosen;
    if (lvb_compute_choice(&choice, &answered.chosen, &fault) != LVB_OK) refuse(book, sought, fault);
    for (std::size_t i = 0; i < answered.chosen.set_count; ++i) {
        const auto row = sets.begin() + static_cast<std::ptrdiff_t>(i * slots.size());
        answered.sets.emplace_back(row, row + static_cast<std::ptrdiff_t>(slots.size()));
    }
    return answered;
}

std::string label_of(const std::vector<Sought> &sought, const Place &place) {
    const Link &link = *sought[place.sought].link;
    return in_quotes(link.stages[place.stage].label) + " of " + in_quotes(link.name);
}

std::string names_of(const Book &book, const std::vector<std::uint32_t> &items) {
    std::vector<std::string> names;
    for (const std::uint32_t item : items) names.push_back(book.scenario.stock[item].name);
    return listed(names);
}

std::string missing_words(std::uint64_t count) {
    return std::to_string(count) + " more " + (count == 1 ? "is" : "are") + " needed";
}

// What of the stock is too little to fill the places, one sentence each.
std::vector<std::string> shortage_words(const Book &book, const std::vector<Sought> &sought, const Answered &answered) {
    std::vector<std::uint32_t> counts;
    for (const StockItem &item : book.scenario.stock) counts.push_back(item.count);
    std::vector<std::vector<std::uint32_t>> candidates;
    for (const Place &place : answered.places) {
        const double mhz = sought[place.sought].link->frequency_mhz;
        std::vector<std::uint32_t> &serving = candidates.emplace_back();
        std::copy_if(place.items.begin(), place.items.end(), std::back_inserter(serving),
                     [&](std::uint32_t item) { return serves(book.scenario.stock[item], mhz, mhz); });
    }
    std::vector<std::string> sentences;
    for (const Shortage &shortage : shortages(candidates, counts)) {
        std::string places;
        for (const std::size_t place : shortage.places)
            places += (places.empty() ? "" : ", ") + label_of(sought, answered.places[place]);
        sentences.push_back(shortage.items.empty()
                                ? places + ": no item of the stock serves its frequencies"
                                : places + " want " + std::to_string(shortage.places.size()) + " of " +
                                      names_of(book, shortage.items) + ", of which " + std::to_string(shortage.left) +
                                      (shortage.left == 1 ? " is" : " are") +
                                      " left: " + missing_words(shortage.places.size() - shortage.left));
    }
    return sentences;
}

// What the links, each by itself with the whole stock, would take more of than there is.
std::string contest_words(const Book &book, const std::vector<Sought> &sought) {
    std::vector<std::uint32_t> taken(book.scenario.stock.size());
    ChooseQuestion one_set;
    one_set.sets = 1;
    for (const Sought &one : sought) {
        const std::vector<Sought> alone = sought_links(book, {one.link->name});
        for (const std::vector<std::uint32_t> &set : choose(book, alone, one_set).sets)
            for (const std::uint32_t item : set) ++taken[item];
    }
    std::string words;
    for (std::size_t i = 0; i < taken.size(); ++i)
        if (const StockItem &item = book.scenario.stock[i]; taken[i] > item.count)
            words += (words.empty() ? "" : ", ") + std::to_string(taken[i]) + " of " + in_quotes(item.name) +
                     " where " + std::to_string(item.count) + (item.count == 1 ? " is" : " are") + " left";
    return words.empty() ? "the links compete for the stock"
                         : "the links compete for the stock: each by itself at its cheapest, they would take " + words;
}

// A link with a set's items in its slots; the search took its noise from the chain as it was entered.
Link with_set(const Book &book, const std::vector<Sought> &sought, const Answered &answered,
              const std::vector<std::uint32_t> &set, std::size_t n) {
    Link link = *sought[n].link;
    for (std::size_t slot = 0; slot < set.size(); ++slot) {
        if (answered.places[slot].sought != n) continue;
        Stage &stage = link.stages[answered.places[slot].stage];
        const Stage &item = book.scenario.stock[set[slot]].stage;
        stage.entry = item.entry;
        stage.numbers = item.numbers;
        stage.cable_name = item.cable_name;
        stage.gain_table = item.gain_table;
        stage.cable_table = item.cable_table;
        stage.pattern = item.pattern;
    }
    return link;
}

bool all_hold(const std::vector<Judged> &links) {
    return std::all_of(links.begin(), links.end(), [](const Judged &link) { return link.holds; });
}

// Whether there is a set, and every one that is printed holds.
bool stands(const Answered &answered) {
    return !answered.judged.empty() && std::all_of(answered.judged.begin(), answered.judged.end(), all_hold);
}

std::string wanted_words(const Link &link) {
    if (!link.wanted) return "to be inside the window as entered";
    const lvb_need &need = link.wanted->entry;
    std::string words = "margin " + two(need.margin_db) + " dB, headroom " + two(need.headroom_db) + " dB";
    if ((need.stated & LVB_STATED_EIRP_LIMIT) != 0) words += ", e.i.r.p. at most " + two(need.eirp_limit_dbm) + " dBm";
    if (need.noise_figure_limit_db != 0.0) words += ", noise figure at most " + two(need.noise_figure_limit_db) + " dB";
    return words + (need.worst_case != 0 ? ", with every tolerance against you" : ", as entered");
}

std::string outcome_words(const lvb_chosen &chosen) {
    const std::string sets = std::to_string(chosen.set_count) + (chosen.set_count == 1 ? " set" : " sets");
    switch (chosen.outcome) {
    case LVB_OUTCOME_PROVEN:
        return sets + ", proven to be the cheapest";
    case LVB_OUTCOME_NOT_PROVEN:
        return sets + ", NOT PROVEN to be the cheapest: no set costs less than " + std::to_string(chosen.lower_bound);
    case LVB_OUTCOME_INFEASIBLE:
        return "NO SET holds what is wanted";
    case LVB_OUTCOME_SHORT_OF_STOCK:
        return "SHORT OF STOCK: it does not fill the places, whatever the levels";
    default:
        return "UNDECIDED: the search was stopped before a set was found, and none was ruled out";
    }
}

struct MissName {
    double lvb_miss::*value;
    const char *what;
    const char *how;
    const char *among;
    const char *name;
};

constexpr const char *alone = "if nothing else were asked", *besides = "among sets that hold all else",
                     *is_short = "short", *is_over = "over its limit";
constexpr MissName miss_names[] = {
    {&lvb_miss::far_alone_db, "the margin", is_short, alone, "far_alone_db"},
    {&lvb_miss::near_alone_db, "the headroom", is_short, alone, "near_alone_db"},
    {&lvb_miss::eirp_alone_db, "the e.i.r.p.", is_over, alone, "eirp_alone_db"},
    {&lvb_miss::noise_alone_db, "the noise figure", is_over, alone, "noise_alone_db"},
    {&lvb_miss::far_besides_db, "the margin", is_short, besides, "far_besides_db"},
    {&lvb_miss::near_besides_db, "the headroom", is_short, besides, "near_besides_db"},
    {&lvb_miss::eirp_besides_db, "the e.i.r.p.", is_over, besides, "eirp_besides_db"},
    {&lvb_miss::noise_besides_db, "the noise figure", is_over, besides, "noise_besides_db"},
};

// Whether a link misses nothing by itself.
bool held_alone(const lvb_miss &miss) {
    return std::all_of(std::begin(miss_names), std::end(miss_names),
                       [&](const MissName &name) { return miss.*name.value == 0.0; });
}

std::string miss_words(const lvb_miss &miss) {
    std::string words;
    for (const MissName &name : miss_names) {
        const double value = miss.*name.value;
        if (!(value > 0.0) || std::isinf(value)) continue; // held, not asked, or told by the others
        words += (words.empty() ? "" : "; ") + std::string(name.what) + " is " + two(value) + " dB " + name.how + ", " +
                 name.among;
    }
    if (!words.empty()) return words;
    return held_alone(miss) ? "by itself it can be held" : "the search for what it misses did not end";
}

Links links_of(const std::vector<Sought> &sought) {
    Links links;
    for (const Sought &one : sought) links.push_back(one.link);
    return links;
}

std::string tuning_words(const Link &link) {
    return link.tuning ? "; sought at " + plain(link.frequency_mhz) + " MHz, with items that serve all of " +
                             range_words(*link.tuning) + ", and the sets are judged over that"
                       : "";
}

// Why there is no set.
std::string reasons(const Book &book, const std::vector<Sought> &sought, const Answered &answered,
                    const std::vector<std::string> &short_of) {
    std::string out;
    for (const std::string &sentence : short_of) out += labelled("Short:", ascii(sentence));
    if (answered.chosen.outcome != LVB_OUTCOME_INFEASIBLE) return out;
    for (std::size_t n = 0; n < sought.size(); ++n)
        out += labelled("Missed:", ascii("'" + sought[n].link->name + "': " + miss_words(answered.misses[n])));
    if (std::all_of(answered.misses.begin(), answered.misses.end(), held_alone))
        out += labelled("Contest:", ascii(contest_words(book, sought)));
    return out;
}

std::string page(const Book &book, const std::vector<Sought> &sought, const Answered &answered,
                 const std::vector<std::string> &short_of) {
    std::string out = page_title(
        "CHOOSE", std::to_string(sought.size()) + (sought.size() == 1 ? " link" : " links") + ", from the stock", book);
    for (const Sought &one : sought)
        out += labelled("Wanted:",
                        ascii("'" + one.link->name + "': " + wanted_words(*one.link) + tuning_words(*one.link)));
    for (const Place &place : answered.places)
        if (!place.left_out.empty())
            out +=
                labelled("Left out:", ascii("for " + label_of(sought, place) + ": " + names_of(book, place.left_out)));
    out += labelled("Answer:", outcome_words(answered.chosen));
    if (!answered.sets.empty() && !stands(answered))
        out += labelled("BUT:", "what is wanted is kept by every set, but one that is marked DOES NOT HOLD as budget "
                                "judges it; --sets tells more of them");
    for (std::size_t i = 0; i < answered.sets.size(); ++i) {
        out += "\n  Set " + std::to_string(i + 1) + ", cost " + std::to_string(answered.costs[i]) +
               (all_hold(answered.judged[i]) ? "\n" : ": DOES NOT HOLD\n");
        for (std::size_t n = 0; n < sought.size(); ++n) {
            const Judged &told = answered.judged[i][n];
            out += wrap(ascii("'" + sought[n].link->name + "': margin " + two(told.budget.far_end.margin_db) +
                              " dB, headroom " + two(told.budget.near_end.headroom_db) + " dB, e.i.r.p. " +
                              two(told.budget.eirp_dbm) + " dBm; " + told.words),
                        page_columns, "    ", "      ");
            for (std::size_t slot = 0; slot < answered.places.size(); ++slot)
                if (answered.places[slot].sought == n)
                    out += wrap(ascii(sought[n].link->stages[answered.places[slot].stage].label + ": " +
                                      book.scenario.stock[answered.sets[i][slot]].name),
                                page_columns, "      ", "        ");
        }
    }
    return out + reasons(book, sought, answered, short_of) + print_cautions(links_of(sought));
}

std::string json(const Book &book, const std::vector<Sought> &sought, const Answered &answered,
                 const std::vector<std::string> &short_of) {
    Json out = json_head("choose", book, nullptr);
    out["outcome"] = lvb_outcome_name(answered.chosen.outcome);
    out["lower_bound"] = answered.chosen.lower_bound;
    out["steps"] = answered.chosen.steps;
    out["holds"] = stands(answered);
    out["left_out"] = Json::array();
    for (const Place &place : answered.places)
        for (const std::uint32_t item : place.left_out)
            out["left_out"].push_back({{"link", sought[place.sought].link->name},
                                       {"stage", sought[place.sought].link->stages[place.stage].label},
                                       {"item", book.scenario.stock[item].name}});
    out["sets"] = Json::array();
    for (std::size_t i = 0; i < answered.sets.size(); ++i) {
        Json set;
        set["cost"] = answered.costs[i];
        set["holds"] = all_hold(answered.judged[i]);
        set["links"] = Json::array();
        for (std::size_t n = 0; n < sought.size(); ++n) {
            const Judged &told = answered.judged[i][n];
            Json link;
            link["name"] = sought[n].link->name;
            link["margin_db"] = told.budget.far_end.margin_db;
            link["headroom_db"] = told.budget.near_end.headroom_db;
            link["eirp_dbm"] = told.budget.eirp_dbm;
            link["verdict"] = lvb_verdict_name(told.budget.verdict);
            link["holds"] = told.holds;
            link["failures"] = told.failures;
            link["chosen"] = Json::array();
            for (std::size_t slot = 0; slot < answered.places.size(); ++slot)
                if (answered.places[slot].sought == n)
                    link["chosen"].push_back({{"stage", sought[n].link->stages[answered.places[slot].stage].label},
                                              {"item", book.scenario.stock[answered.sets[i][slot]].name}});
            set["links"].push_back(link);
        }
        out["sets"].push_back(set);
    }
    out["short_of"] = short_of;
    out["misses"] = Json::array();
    if (answered.chosen.outcome == LVB_OUTCOME_INFEASIBLE)
        for (std::size_t n = 0; n < sought.size(); ++n) {
            Json miss;
            miss["link"] = sought[n].link->name;
            miss["out_of_reach"] = Json::array();
            miss["not_searched"] = Json::array();
            for (const MissName &name : miss_names) {
                const double value = answered.misses[n].*name.value;
                miss[name.name] = value;
                if (std::isinf(value)) miss["out_of_reach"].push_back(name.name);
                if (std::isnan(value)) miss["not_searched"].push_back(name.name);
            }
            out["misses"].push_back(miss);
        }
    return json_text(std::move(out), links_of(sought));
}

} // namespace

Outcome answer_choose(const ChooseQuestion &question) {
    if (question.sets < 1 || question.sets > LVB_MAX_SETS)
        throw Refusal("--sets takes 1 to " + std::to_string(LVB_MAX_SETS));
    const Book book(question.file);
    if (book.scenario.stock.empty())
        book.document.refuse(book.document.root(), "stock is missing: the gear to choose from");
    const std::vector<Sought> sought = sought_links(book, question.links);
    Answered answered = choose(book, sought, question);
    for (const std::vector<std::uint32_t> &set : answered.sets) {
        std::vector<Judged> &links = answered.judged.emplace_back();
        for (std::size_t n = 0; n < sought.size(); ++n)
            links.push_back(judge(book.document, with_set(book, sought, answered, set, n)));
    }
    const std::vector<std::string> short_of = answered.chosen.outcome == LVB_OUTCOME_SHORT_OF_STOCK
                                                  ? shortage_words(book, sought, answered)
                                                  : std::vector<std::string>();
    const auto write = question.as_json ? json : page;
    return {write(book, sought, answered, short_of), stands(answered) ? exit_holds : exit_does_not_hold};
}

} // namespace desk
