#include "cables.hpp"

#include "faults.hpp"
#include "text.hpp"

#include <algorithm>

namespace desk {
namespace {

constexpr std::size_t page = 100; // columns

lvb_cable_info describe(std::int32_t type) {
    lvb_cable_info info{};
    info.size = sizeof info;
    lvb_describe_cable(type, &info, nullptr);
    return info;
}

// Sources, each with the letter under which rows name it.
using Sources = std::vector<std::string>;

char letter_of(Sources &sources, const std::string &source) {
    const auto known = std::find(sources.begin(), sources.end(), source);
    const auto index = known - sources.begin();
    if (known == sources.end()) sources.push_back(source);
    return static_cast<char>('a' + index);
}

std::string print_row(std::int32_t type, std::uint32_t index, Sources &sources) {
    lvb_cable_row row{};
    row.size = sizeof row;
    lvb_describe_cable_row(type, index, &row, nullptr);
    const std::string numbers = format(
        "%9s MHz %8.2f dB/100 m %7.2f dB/100 ft  %c", plain(row.frequency_mhz).c_str(), row.attenuation_db_per_100m,
        lvb_db_per_100ft_from_db_per_100m(row.attenuation_db_per_100m), letter_of(sources, row.source));
    if (row.remark[0] == '\0') return numbers + "\n";
    return wrap(ascii(row.remark), page, numbers + "; ", std::string(numbers.size() + 2, ' '));
}

std::string print_type(std::int32_t type, Sources &sources) {
    const lvb_cable_info info = describe(type);
    std::string out =
        wrap(std::string(info.name) + ": " + info.description + "; usable from " + plain(info.usable_lowest_mhz) +
                 " to " + plain(info.usable_highest_mhz) + " MHz (outside the rows by extrapolation)",
             page, "", "    ");
    for (std::uint32_t i = 0; i < info.row_count; ++i) out += print_row(type, i, sources);
    return out;
}

std::string print_sources(const Sources &sources) {
    std::string out = "Sources\n";
    for (std::size_t i = 0; i < sources.size(); ++i)
        out += wrap(ascii(sources[i]), page, format("  %c  ", static_cast<char>('a' + i)), "     ");
    return out;
}

std::string why(const lvb_fault &fault) {
    const std::string words = fault_words(fault);
    const std::string structure = "lvb_cable_run."; // a name for programmers
    return words.starts_with(structure) ? words.substr(structure.size()) : words;
}

} // namespace

std::vector<std::string> catalogue_names() {
    std::vector<std::string> names;
    const auto count = static_cast<std::int32_t>(lvb_cable_type_count());
    for (std::int32_t type = 1; type <= count; ++type) names.emplace_back(describe(type).name);
    return names;
}

std::string not_in_catalogue(const std::string &name) {
    const std::vector<std::string> names = catalogue_names();
    return in_quotes(name) + " is not in the catalogue of cables" +
           suggestion(name, names, "; it holds " + listed(names));
}

std::string print_catalogue() {
    std::string out =
        "Cable types at 20 degC. Cables of one type differ by 5 to 10 % between makers (common practice,\n"
        "no source): measure your own, or enter its data sheet as an attenuation_table.\n";
    const auto count = static_cast<std::int32_t>(lvb_cable_type_count());
    Sources sources;
    for (std::int32_t type = 1; type <= count; ++type) out += "\n" + print_type(type, sources);
    return out + "\n" + print_sources(sources);
}

std::string answer_cable(const CableQuestion &question) {
    if (question.name.empty()) refuse_name("", catalogue_names(), "cable");
    lvb_cable_run run{};
    run.size = sizeof run;
    run.cable_type = lvb_cable_type_from_name(question.name.c_str());
    if (run.cable_type == LVB_CABLE_NONE) throw Refusal(not_in_catalogue(question.name));
    if (question.connector_loss_db && *question.connector_loss_db == 0.0)
        throw Refusal("a connector loss of 0 would stand for the usual one; for no loss leave the connectors out");
    run.frequency_mhz = question.frequency_mhz;
    run.length_m = question.length_m;
    run.connector_count = question.connectors;
    run.connector_loss_db = question.connector_loss_db.value_or(0.0);
    if (question.temperature_degc) {
        run.stated = LVB_STATED_TEMPERATURE;
        run.temperature_degc = *question.temperature_degc;
    }
    auto loss = sized<lvb_cable_loss>();
    auto fault = sized<lvb_fault>();
    if (lvb_compute_cable_loss(&run, nullptr, &loss, &fault) != LVB_OK) throw Refusal(why(fault));

    std::string out = format("%s, %s m (%.2f ft), at %s MHz and %s degC\n", describe(run.cable_type).name,
                             plain(run.length_m).c_str(), lvb_feet_from_metres(run.length_m),
                             plain(run.frequency_mhz).c_str(), plain(question.temperature_degc.value_or(20.0)).c_str());
    out += format("  attenuation  %9.3f dB/100 m = %.3f dB/100 ft%s\n", loss.attenuation_db_per_100m,
                  lvb_db_per_100ft_from_db_per_100m(loss.attenuation_db_per_100m),
                  (loss.notes & LVB_NOTE_EXTRAPOLATED) != 0 ? ", extrapolated: outside the published rows" : "");
    out += format("  cable        %9.3f dB\n", loss.cable_loss_db);
    const std::string each = run.connector_count == 0
                                 ? "none"
                                 : format("%u of %.3f dB", run.connector_count,
                                          loss.connectors_loss_db / static_cast<double>(run.connector_count));
    out += format("  connectors   %9.3f dB (%s)\n", loss.connectors_loss_db, each.c_str());
    out += format("  whole run    %9.3f dB\n", loss.loss_db);
    Sources sources;
    out += "\nPublished rows that this rests on:\n" + print_type(run.cable_type, sources);
    return out + print_sources(sources);
}

} // namespace desk
