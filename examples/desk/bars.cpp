#include "bars.hpp"

#include "verdict.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace desk {
namespace {

constexpr double ten = 10.0;

Scale rounded_out(double low, double high, std::size_t columns) {
    return {ten * std::floor(low / ten), ten * std::ceil(high / ten) + 0.0, columns}; // + 0.0 takes the sign off a zero
}

// The limits, in one line: below the floor and above the ceiling x, the wanted band =, the rest a dash.
std::string draw_limits(const Scale &scale, const lvb_stage &receiver) {
    std::string line(scale.columns, '-');
    const auto fill = [&](std::size_t from, std::size_t to, char mark) {
        for (std::size_t i = from; i <= to && i < line.size(); ++i) line[i] = mark;
    };
    if ((receiver.stated & LVB_STATED_WANTED) != 0)
        fill(scale.column(receiver.wanted_low_dbm), scale.column(receiver.wanted_high_dbm), '=');
    if ((receiver.stated & LVB_STATED_FLOOR) != 0) {
        const std::size_t floor = scale.column(receiver.floor_dbm);
        if (floor > 0) fill(0, floor - 1, 'x');
        line[floor] = 'F';
    }
    if ((receiver.stated & LVB_STATED_CEILING) != 0) {
        const std::size_t ceiling = scale.column(receiver.ceiling_dbm);
        fill(ceiling + 1, line.size() - 1, 'x');
        line[ceiling] = 'C';
    }
    return line;
}

std::string draw_end(const Scale &scale, const lvb_end &end, char mark) {
    std::string line(scale.columns, ' ');
    const std::size_t lowest = scale.column(end.level_dbm - end.worst_db);
    const std::size_t highest = scale.column(end.level_dbm + end.worst_db);
    for (std::size_t i = lowest; i <= highest; ++i) line[i] = '~';
    line[scale.column(end.level_dbm)] = mark;
    return line;
}

} // namespace

std::size_t Scale::column(double level_dbm) const {
    const double share = std::clamp((level_dbm - low_dbm) / (high_dbm - low_dbm), 0.0, 1.0);
    return static_cast<std::size_t>(std::lround(share * static_cast<double>(columns - 1)));
}

Scale scale_of_chain(const Computed &computed, std::size_t columns) {
    double low = computed.levels.front().far_level_dbm;
    double high = low + 1.0; // never an empty scale
    for (const lvb_level &level : computed.levels) {
        for (const double level_dbm : {level.far_level_dbm, level.near_level_dbm})
            if (std::isfinite(level_dbm)) low = std::min(low, level_dbm); // in a null nothing is left
        high = std::max({high, level.far_level_dbm, level.near_level_dbm});
    }
    return rounded_out(low, high, columns);
}

std::string level_bar(const Scale &scale, double far_dbm, double near_dbm) {
    std::string line(scale.columns, '.');
    const std::size_t far = scale.column(far_dbm);
    const std::size_t near = scale.column(near_dbm);
    line[far] = 'f';
    line[near] = far == near ? '*' : 'n';
    return line;
}

std::string window_drawing(const Link &link, const Computed &computed, std::size_t columns) {
    const lvb_stage receiver = judged_receiver(link);
    if (!has_window(receiver)) return "";
    const lvb_end &far = computed.budget.far_end;
    const lvb_end &near = computed.budget.near_end;
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const lvb_end *end : {&far, &near}) {
        if (!std::isfinite(end->level_dbm)) continue; // drawn at the edge
        low = std::min(low, end->level_dbm - end->worst_db);
        high = std::max(high, end->level_dbm + end->worst_db + 1.0);
    }
    std::string legend;
    const auto include = [&](std::uint32_t bit, double least, double most, const std::string &words) {
        if ((receiver.stated & bit) == 0) return;
        low = std::min(low, least - 5.0); // so that something of the region beyond a limit is seen
        high = std::max(high, most + 5.0);
        legend += (legend.empty() ? "" : "   ") + words;
    };
    const auto two = [](double level) { return two_decimals(hundredths(level)); };
    include(LVB_STATED_FLOOR, receiver.floor_dbm, receiver.floor_dbm, "F floor " + two(receiver.floor_dbm));
    include(LVB_STATED_WANTED, receiver.wanted_low_dbm, receiver.wanted_high_dbm,
            "= wanted " + two(receiver.wanted_low_dbm) + " to " + two(receiver.wanted_high_dbm));
    include(LVB_STATED_CEILING, receiver.ceiling_dbm, receiver.ceiling_dbm, "C ceiling " + two(receiver.ceiling_dbm));

    const Scale scale = rounded_out(low, high, columns);
    const std::string left = format("%7.0f ", scale.low_dbm);
    const std::string blank(left.size(), ' ');
    std::string out = "  Receiver's window in dBm:   " + legend + "\n";
    out += "  " + left + draw_limits(scale, receiver) + format(" %.0f\n", scale.high_dbm);
    const auto end_line = [&](const char *name, std::string drawn) {
        drawn.erase(drawn.find_last_not_of(' ') + 1);
        out += format("  %7s ", name) + drawn + "\n";
    };
    end_line("far", draw_end(scale, far, 'f'));
    end_line("near", draw_end(scale, near, 'n'));
    return out;
}

} // namespace desk
