#include "workings.hpp"

namespace desk {
namespace {

const Given *find(const GivenNumbers &numbers, std::int32_t field) {
    const auto given = numbers.find(field);
    return given == numbers.end() ? nullptr : &given->second;
}

std::string two(double value) { return two_decimals(hundredths(value)); }

std::string source_words(const Stage &stage) {
    const Given &power = stage.numbers.at(LVB_FIELD_LEVEL_DBM);
    std::string words = plain(power.value->number) + " " + power.key->unit;
    if (std::string_view(power.key->unit) != "dBm") words += " = " + two(stage.entry.level_dbm) + " dBm";
    return words;
}

std::string cable_words(const Link &link, const Stage &stage) {
    if (!is_computed_cable(stage)) return "as measured";
    const lvb_cable_loss loss = cable_loss(link, stage);
    const lvb_stage &entry = stage.entry;
    std::string words = stage.cable_table ? "own table" : stage.cable_name;
    words += " " + as_given(stage.numbers.at(LVB_FIELD_LENGTH_M));
    words += " x " + format("%.3f", loss.attenuation_db_per_100m) + " dB/100 m";
    if (link.temperature_degc) words += " at " + plain(*link.temperature_degc) + " degC";
    words += " = " + format("%.3f", loss.cable_loss_db) + " dB";
    if (entry.connector_count == 0) return words + ", no connectors";
    return words + ", " + std::to_string(entry.connector_count) + " connectors x " +
           format("%.4f", loss.connectors_loss_db / entry.connector_count) + " = " +
           format("%.3f", loss.connectors_loss_db) + " dB";
}

std::string air_words(const Link &link) {
    const auto loss = [&](double metres) { return two(lvb_free_space_loss_db(link.frequency_mhz, metres)) + " dB"; };
    std::string words = "free space 20 log10(m x MHz) - 27.552 at " + plain(link.frequency_mhz) +
                        " MHz: " + loss(link.far_distance_m) + " over " +
                        as_given(link.numbers.at(LVB_FIELD_FAR_DISTANCE_M));
    const Given *near = find(link.numbers, LVB_FIELD_NEAR_DISTANCE_M);
    if (near != nullptr) return words + ", " + loss(link.near_distance_m) + " over " + as_given(*near);
    return words + "; no near distance is given, so the near end is the same point";
}

std::string kind_words(const Link &link, const Stage &stage) {
    switch (stage.entry.kind) {
    case LVB_KIND_SOURCE:
        return source_words(stage);
    case LVB_KIND_CABLE:
        return cable_words(link, stage);
    case LVB_KIND_AIR:
        return air_words(link);
    case LVB_KIND_ALLOWANCE:
        return "taken at the far end only";
    default:
        return "";
    }
}

} // namespace

std::string as_given(const Given &given) {
    const std::string words = plain(given.value->number) + " " + given.key->unit;
    const double converted = given.key->to_library(given.value->number);
    const bool feet = std::string_view(given.key->unit) == "ft";
    return feet ? words + " (" + plain(converted) + " m)" : words;
}

std::string workings(const Link &link, const Stage &stage) {
    std::string words = lvb_kind_name(stage.entry.kind);
    const auto add = [&](const std::string &more) {
        if (!more.empty()) words += ", " + more;
    };
    add(kind_words(link, stage));
    if (const Given *gain = find(stage.numbers, LVB_FIELD_GAIN_DB)) {
        add(plain(gain->value->number) + " " + gain->key->unit);
        if (std::string_view(gain->key->unit) == "dBd") words += " = " + two(stage.entry.gain_db) + " dBi";
    }
    if (stage.gain_table)
        add("gain table of " + std::to_string(stage.gain_table->values.size()) + " rows from " +
            plain(stage.gain_table->frequency_mhz.front()) + " to " + plain(stage.gain_table->frequency_mhz.back()) +
            " MHz");
    for (const std::shared_ptr<const Table> *table : {&stage.gain_table, &stage.cable_table})
        if (*table && !(*table)->origin.empty()) add("table from: " + (*table)->origin);
    return words;
}

std::vector<std::string> note_sentences(std::uint32_t notes) {
    std::vector<std::string> sentences;
    if ((notes & LVB_NOTE_EXTRAPOLATED) != 0)
        sentences.emplace_back("the cable's attenuation is extrapolated: the frequency lies outside its table");
    if ((notes & LVB_NOTE_NEAR_FIELD) != 0)
        sentences.emplace_back("near field: a distance is under one wavelength, where free space does not apply");
    return sentences;
}

} // namespace desk
