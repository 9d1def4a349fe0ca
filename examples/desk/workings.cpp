#include "workings.hpp"

#include <algorithm>
#include <cmath>

namespace desk {
namespace {

const Given *find(const GivenNumbers &numbers, std::int32_t field) {
    const auto given = numbers.find(field);
    return given == numbers.end() ? nullptr : &given->second;
}

std::string source_words(const Stage &stage) {
    const Given &power = stage.numbers.at(LVB_FIELD_LEVEL_DBM);
    std::string words = plain(power.value->number) + " " + power.key->unit;
    if (std::string_view(power.key->unit) != "dBm") words += " = " + two(stage.entry.level_dbm) + " dBm";
    return words;
}

// A row of a cable's table, at 20 degC.
struct Row {
    double mhz;
    double db_per_100m;
};

std::vector<Row> rows_of(const Stage &stage) {
    std::vector<Row> rows;
    if (stage.cable_table) {
        for (std::size_t i = 0; i < stage.cable_table->values.size(); ++i)
            rows.push_back({stage.cable_table->points[i], stage.cable_table->values[i]});
        return rows;
    }
    lvb_cable_row row{};
    row.size = sizeof row;
    for (std::uint32_t i = 0; lvb_describe_cable_row(stage.entry.cable_type, i, &row, nullptr) == LVB_OK; ++i)
        rows.push_back({row.frequency_mhz, row.attenuation_db_per_100m});
    return rows;
}

// The first of the two neighbours that serve a frequency; those at the end serve what lies outside.
std::size_t lower_neighbour(std::size_t rows, double mhz, const auto &mhz_of) {
    std::size_t i = 0;
    while (i + 2 < rows && mhz_of(i + 1) <= mhz) ++i;
    return i;
}

// The law of lvb_cable_table through two rows: a sqrt(f) + b f, or a power of f where that needs a negative a or b.
std::string law_words(const Row &low, const Row &high) {
    const double root_low = std::sqrt(low.mhz);
    const double root_high = std::sqrt(high.mhz);
    const double b = (high.db_per_100m / root_high - low.db_per_100m / root_low) / (root_high - root_low);
    const double a = low.db_per_100m / root_low - b * root_low;
    if (a >= 0.0 && b >= 0.0) return format("%.6g sqrt(MHz) + %.6g MHz", a, b);
    const double power = std::log(high.db_per_100m / low.db_per_100m) / std::log(high.mhz / low.mhz);
    return format("%.3f (MHz / %s)^%.6f", low.db_per_100m, plain(low.mhz).c_str(), power);
}

// "from 16.300 at 450 and 24.700 at 850 MHz: 0.557807 sqrt(MHz) + 0.009927 MHz = 18.195 at 20 degC, x 1.0070 at 25
// degC"
std::string attenuation_words(const Link &link, const Stage &stage, double warm) {
    const double cold = cable_loss(link.frequency_mhz, std::nullopt, stage).attenuation_db_per_100m;
    const std::vector<Row> rows = rows_of(stage);
    const std::size_t i = lower_neighbour(rows.size(), link.frequency_mhz, [&](std::size_t k) { return rows[k].mhz; });
    const auto row = [&](const Row &one) { return format("%.3f at %s", one.db_per_100m, plain(one.mhz).c_str()); };
    std::string words = "from " + row(rows[i]);
    if (rows.size() > 1) words += " and " + row(rows[i + 1]);
    words +=
        " MHz: " + (rows.size() > 1 ? law_words(rows[i], rows[i + 1])
                                    : format("%.3f sqrt(MHz / %s)", rows[0].db_per_100m, plain(rows[0].mhz).c_str()));
    words += format(" = %.3f dB/100 m at 20 degC", cold);
    if (link.temperature_degc) words += format(", x %.4f at ", warm / cold) + plain(*link.temperature_degc) + " degC";
    return words;
}

// "between 540 MHz 11 dBi and 608 MHz 12 dBi: 11.026 dBi"
std::string gain_words(const Link &link, const Stage &stage, const Computed &computed, const lvb_level &level) {
    const Table &table = *stage.gain_table;
    const NumberKey &key = *table.value_column.key;
    double gain = level.far_change_db;
    if (stage.entry.kind == LVB_KIND_SOURCE) gain -= stage.entry.level_dbm;
    if (stage.entry.kind == LVB_KIND_AIR)
        gain += computed.path ? computed.path->far.loss_db
                              : lvb_free_space_loss_db(link.frequency_mhz, computed.budget.far_end.distance_m);
    const auto row = [&](std::size_t k) {
        const double value = table.value_column.value->items[k]->number;
        // As it was written; what a file holds may be computed from other numbers, and then has all digits.
        const std::string number = table.file == nullptr ? plain(value) : format("%.6g", value + 0.0);
        return plain(table.points[k]) + " MHz " + number + " " + key.unit;
    };
    const std::size_t count = table.values.size();
    std::string words = "gain table of " + std::to_string(count) + " rows, ";
    const auto exact = std::find(table.points.begin(), table.points.end(), link.frequency_mhz);
    if (exact != table.points.end()) return words + "at " + row(static_cast<std::size_t>(exact - table.points.begin()));
    const std::size_t i = lower_neighbour(count, link.frequency_mhz, [&](std::size_t k) { return table.points[k]; });
    return words + "between " + row(i) + " and " + row(i + 1) + ": " + format("%.3f ", key.from_library(gain) + 0.0) +
           key.unit;
}

std::string cable_words(const Link &link, const Stage &stage) {
    if (!is_computed_cable(stage)) return "as measured";
    const lvb_cable_loss loss = cable_loss(link.frequency_mhz, link.temperature_degc, stage);
    const lvb_stage &entry = stage.entry;
    std::string words = stage.cable_table ? "own table" : stage.cable_name;
    words += " " + as_given(stage.numbers.at(LVB_FIELD_LENGTH_M));
    words += " x " + format("%.3f", loss.attenuation_db_per_100m) + " dB/100 m";
    if (link.temperature_degc) words += " at " + plain(*link.temperature_degc) + " degC";
    words += " = " + format("%.3f", loss.cable_loss_db) + " dB (" +
             attenuation_words(link, stage, loss.attenuation_db_per_100m) + ")";
    if (entry.connector_count == 0) return words + ", no connectors";
    return words + ", " + std::to_string(entry.connector_count) +
           (entry.connector_count == 1 ? " connector x " : " connectors x ") +
           format("%.4f", loss.connectors_loss_db / entry.connector_count) + " = " +
           format("%.3f", loss.connectors_loss_db) + " dB";
}

// One end's distance, as it was given or as the places of the antennas tell it.
std::string distance_words(const Link &link, std::int32_t field, double metres) {
    const Given *given = find(link.numbers, field);
    return given != nullptr ? as_given(*given) : two(metres) + " m by the places";
}

bool near_is_given(const Link &link, const Computed &computed) {
    return computed.sights ? computed.sights->near_given : link.numbers.contains(LVB_FIELD_NEAR_DISTANCE_M);
}

// What both ends cost, with their distances.
std::string both_ends(const Link &link, const Computed &computed, double far_db, double near_db) {
    const lvb_budget &budget = computed.budget;
    std::string words =
        two(far_db) + " dB over " + distance_words(link, LVB_FIELD_FAR_DISTANCE_M, budget.far_end.distance_m);
    if (!near_is_given(link, computed)) return words + "; no near distance is given, so the near end is the same point";
    return words + ", " + two(near_db) + " dB over " +
           distance_words(link, LVB_FIELD_NEAR_DISTANCE_M, budget.near_end.distance_m);
}

std::string path_words_of(const Link &link, const Path &path, const Computed &computed) {
    const lvb_path_loss &far = computed.path->far;
    const lvb_path_loss &near = computed.path->near;
    std::string words = lvb_path_name(path.entry.model);
    if (path.entry.environment != LVB_ENVIRONMENT_NONE)
        words += std::string(" (") + lvb_environment_name(path.entry.environment) + ")";
    words += " at " + plain(link.frequency_mhz) + " MHz: " + both_ends(link, computed, far.loss_db, near.loss_db);
    const auto part = [&](const char *name, double far_db, double near_db) {
        words += std::string("; of this ") + name + " " + two(far_db) + " dB far, " + two(near_db) + " dB near";
    };
    if (!path.edges.empty()) part("over edges", far.diffraction_loss_db, near.diffraction_loss_db);
    if (far.obstacle_loss_db != 0.0) part("through walls and floors", far.obstacle_loss_db, near.obstacle_loss_db);
    if (path.entry.model == LVB_PATH_RADIATING_CABLE)
        return words + "; the distance is along the cable, and what stands for e.i.r.p. is the level at its feed";
    if (!std::isnan(far.break_point_m)) words += "; break point " + two(far.break_point_m) + " m";
    return words + "; free space would cost " + two(far.free_space_loss_db) + " dB far, " +
           two(near.free_space_loss_db) + " dB near";
}

std::string air_words(const Link &link, const Stage &stage, const Computed &computed) {
    if (stage.path) return path_words_of(link, *stage.path, computed);
    const auto loss = [&](double metres) { return lvb_free_space_loss_db(link.frequency_mhz, metres); };
    return "free space 20 log10(m x MHz) - 27.552 at " + plain(link.frequency_mhz) + " MHz: " +
           both_ends(link, computed, loss(computed.budget.far_end.distance_m),
                     loss(computed.budget.near_end.distance_m));
}

// To a tenth; a small negative angle is no "-0.0".
std::string tenth(double angle) { return format("%.1f", std::round(angle * 10.0) / 10.0 + 0.0); }

// "half-wave dipole, at most 2.15 dBi; far -3.10 dBi towards azimuth 30, elevation -5 degrees; near ..."
std::string pattern_words_of(const Pattern &pattern, const PatternGains &gains) {
    const auto end = [](const char *name, const lvb_pattern_gain &gain, double azimuth_deg, double elevation_deg) {
        return std::string("; ") + name + " " + two(gain.gain_dbi) + " dBi" +
               ((gain.notes & LVB_NOTE_NULL) != 0 ? ", a null," : "") + " towards azimuth " + tenth(azimuth_deg) +
               ", elevation " + tenth(elevation_deg) + " degrees";
    };
    std::string words = std::string("pattern ") + lvb_pattern_name(pattern.entry.kind) + ", at most " +
                        two(gains.far.maximum_dbi) + " dBi";
    words += end("far", gains.far, gains.far_azimuth_deg, gains.far_elevation_deg);
    words += end("near", gains.near, gains.near_azimuth_deg, gains.near_elevation_deg);
    for (const std::shared_ptr<const Table> *cut : {&pattern.azimuth_cut, &pattern.elevation_cut})
        if (*cut && !(*cut)->origin.empty()) words += "; cut from: " + (*cut)->origin;
    return pattern.source.empty() ? words : words + "; pattern from: " + pattern.source;
}

std::string allowance_words(const Stage &stage, const lvb_level &level) {
    std::string words = "taken at the far end only";
    if (!stage.body_table) return words;
    words += ", body table of " + std::to_string(stage.body_table->values.size()) + " rows, facing " +
             plain(stage.entry.facing_deg) + " degrees: " + two(0.0 - level.far_change_db) + " dB loss";
    return words;
}

std::string kind_words(const Link &link, const Computed &computed, std::size_t index) {
    const Stage &stage = link.stages[index];
    switch (stage.entry.kind) {
    case LVB_KIND_SOURCE:
        return source_words(stage);
    case LVB_KIND_CABLE:
        return cable_words(link, stage);
    case LVB_KIND_AIR:
        return air_words(link, stage, computed);
    case LVB_KIND_ALLOWANCE:
        return allowance_words(stage, computed.levels[index]);
    case LVB_KIND_ANTENNA:
        return stage.pattern ? pattern_words_of(*stage.pattern, *computed.patterns[index]) : "";
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

std::string workings(const Link &link, const Computed &computed, std::size_t index) {
    const Stage &stage = link.stages[index];
    const lvb_level &level = computed.levels[index];
    std::string words = lvb_kind_name(stage.entry.kind);
    const auto add = [&](const std::string &more) {
        if (!more.empty()) words += ", " + more;
    };
    add(kind_words(link, computed, index));
    if (const Given *gain = find(stage.numbers, LVB_FIELD_GAIN_DB)) {
        const bool beyond_path = stage.path && stage.entry.kind == LVB_KIND_AIR;
        add(plain(gain->value->number) + " " + (beyond_path ? "dB beyond the path" : gain->key->unit));
        if (std::string_view(gain->key->unit) == "dBd") words += " = " + two(stage.entry.gain_db) + " dBi";
    }
    if (stage.gain_table) add(gain_words(link, stage, computed, level));
    for (const std::shared_ptr<const Table> *table : {&stage.gain_table, &stage.cable_table, &stage.body_table})
        if (*table && !(*table)->origin.empty()) add("table from: " + (*table)->origin);
    return words;
}

std::vector<std::string> note_sentences(std::uint32_t notes) {
    std::vector<std::string> sentences;
    if ((notes & LVB_NOTE_EXTRAPOLATED) != 0)
        sentences.emplace_back("the cable's attenuation is extrapolated: the frequency lies outside its table");
    if ((notes & LVB_NOTE_NEAR_FIELD) != 0)
        sentences.emplace_back("near field: a distance is under one wavelength, where free space does not apply");
    if ((notes & LVB_NOTE_NULL) != 0)
        sentences.emplace_back("null: towards the other antenna the pattern gives nothing at an end of the walk");
    if ((notes & LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE) != 0)
        sentences.emplace_back("an end of the walk lies nearer to the antenna than its pattern needs to form");
    return sentences;
}

} // namespace desk
