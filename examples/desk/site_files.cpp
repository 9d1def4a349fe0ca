#include "site_files.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

namespace desk {
namespace {

// Empty where there is no number; -inf where nothing arrives.
std::string number_field(double number) { return std::isnan(number) ? "" : exact(number); }

// Quoted as RFC 4180 says.
std::string text_field(const std::string &text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) quoted += c == '"' ? "\"\"" : std::string(1, c);
    return quoted + "\"";
}

std::string label_field(const Site &site, std::int32_t antenna) {
    return antenna < 0 ? "" : text_field(site.antennas[static_cast<std::size_t>(antenna)].label);
}

const std::string point_columns = "level_dbm,margin_db,headroom_db,zone,serving,outage\n";

// What stands of a point behind its place, with the line's end.
std::string point_fields(const Points &points, std::size_t i) {
    return number_field(points.level_dbm[i]) + "," + number_field(points.margin_db[i]) + "," +
           number_field(points.headroom_db[i]) + "," + lvb_zone_name(points.zone[i]) + "," +
           label_field(*points.site, points.serving[i]) + "," +
           (points.outage.empty() ? "" : number_field(points.outage[i])) + "\n";
}

// Whether two names lead to one file, which need not be there yet.
bool same_file(const std::string &one, const std::string &other) {
    std::error_code error;
    if (std::filesystem::equivalent(one, other, error) && !error) return true;
    const auto whole = [&](const std::string &name) {
        return std::filesystem::weakly_canonical(std::filesystem::absolute(name, error), error);
    };
    const std::filesystem::path path = whole(one);
    return !path.empty() && path == whole(other);
}

} // namespace

std::string map_csv(const Survey &survey) {
    std::string text = "x_m,y_m," + point_columns;
    const Grid &grid = survey.grid;
    for (std::size_t i = 0; i < survey.size(); ++i)
        if (!survey.is_blank(i))
            text += exact(grid.x_of(grid.column_of(i))) + "," + exact(grid.y_of(grid.row_of(i))) + "," +
                    point_fields(survey, i);
    return text;
}

std::string map_pgm(const Survey &survey) {
    constexpr double at_floor = 128.0, greys_per_db = 2.0, lowest = 1.0, highest = 255.0;
    constexpr std::size_t greys_in_a_line = 17; // the format wants no line over 70 characters
    std::string text = format("P2\n# grey 0: no level; others: (grey - 128) / 2 dB over the floor\n"
                              "# top line: greatest y\n%zu %zu\n255\n",
                              survey.grid.columns, survey.grid.rows);
    for (std::size_t row = survey.grid.rows; row-- > 0;)
        for (std::size_t column = 0; column < survey.grid.columns; ++column) {
            const std::size_t i = row * survey.grid.columns + column;
            const double grey =
                survey.is_blank(i)
                    ? 0.0
                    : std::clamp(std::round(at_floor + greys_per_db * survey.margin_db[i]), lowest, highest);
            const bool ends = column + 1 == survey.grid.columns || (column + 1) % greys_in_a_line == 0;
            text += format("%.0f%c", grey, ends ? '\n' : ' ');
        }
    return text;
}

std::string walk_csv(const WalkSurvey &survey) {
    std::string text = "distance_m,time_s,x_m,y_m,z_m," + point_columns;
    for (std::size_t i = 0; i < survey.size(); ++i) {
        const double distance_m = survey.distance_m[i];
        const Way::At at = survey.way.at(distance_m);
        for (const double number : {distance_m, distance_m / survey.walk->speed_m_per_s, at.x_m, at.y_m, at.z_m})
            text += exact(number) + ",";
        text += point_fields(survey, i);
    }
    return text;
}

void check_outputs(const std::vector<std::string> &write, const std::vector<std::string> &read) {
    for (std::size_t i = 0; i < write.size(); ++i) {
        if (write[i].empty()) continue;
        if (write[i] == "-") throw Refusal("'-' is no file to write; the page stands on the standard output");
        for (const std::string &input : read)
            if (same_file(write[i], input))
                throw Refusal(ascii(write[i]) + ": the scenario is read from this file; it is not written over");
        for (std::size_t k = 0; k < i; ++k)
            if (!write[k].empty() && same_file(write[i], write[k]))
                throw Refusal(ascii(write[i]) + ": two outputs would be written to this file");
    }
}

void write_whole_file(const std::string &path, const std::string &text) {
    std::ofstream stream(path, std::ios::binary);
    if (!stream) throw Refusal(ascii(path) + ": cannot be written: " + std::strerror(errno));
    stream.write(text.data(), static_cast<std::streamsize>(text.size()));
    stream.close();
    if (!stream) throw Refusal(ascii(path) + ": could not be written to its end");
}

} // namespace desk
