#include "tables/cables.hpp"

namespace lvb::tables {
namespace {

enum class Source { training_guide, national_society, emergency_page, line_table, licence_manual, corrugated_table };
enum class Remark { none, misprinted_in_feet, rounded };
enum class Per { hundred_metres, hundred_feet };

const char *text_of(Source source) noexcept {
    switch (source) {
    case Source::training_guide:
        return "two-way radio training guide, appendix H, dB/100 m; seen in print";
    case Source::national_society:
        return "Austrian national amateur radio society, wiki page Antennenkabel und -daempfung, 20 March 2010, dB/100 "
               "m; "
               "seen in print";
    case Source::emergency_page:
        return "emergency communications page on coaxial cable, dB/100 ft; seen in print";
    case Source::line_table:
        return "web page Attenuazione dei cavi per ricetrasmissioni, table of dB/100 ft from 30 to 2400 MHz; seen in "
               "print";
    case Source::licence_manual:
        return "American national amateur radio society, General Class licence manual, table 6-1 as corrected, dB/100 "
               "ft; "
               "seen in print";
    case Source::corrugated_table:
        return "web page Calculo de atenuacao dos cabos, dB/100 m; seen in print";
    }
    return "";
}

const char *text_of(Remark remark) noexcept {
    switch (remark) {
    case Remark::none:
        return "";
    case Remark::misprinted_in_feet:
        return "the same row's dB/100 ft is misprinted as 11.75; the value per 100 m is 10.82 dB/100 ft";
    case Remark::rounded:
        return "rounded coarsely: between 30 and 50 MHz it grows more slowly than any conductor";
    }
    return "";
}

struct Printed {
    double frequency_mhz;
    double value;
    Per per;
    Source source;
    Remark remark;
};

// Every type's rows stand together and rise in frequency; `first_row` says where each type begins.
constexpr Printed printed[] = {
    // RG-58C/U; the guide's row at 850 MHz (58.2 dB/100 m) lies 13 % above the other publications and is left out.
    {50.0, 10.8, Per::hundred_metres, Source::training_guide, Remark::none},
    {150.0, 20.0, Per::hundred_metres, Source::training_guide, Remark::none},
    {450.0, 35.5, Per::hundred_metres, Source::training_guide, Remark::misprinted_in_feet},
    {1300.0, 64.5, Per::hundred_metres, Source::national_society, Remark::none},
    {2400.0, 100.0, Per::hundred_metres, Source::national_society, Remark::none},
    // RG-174/U
    {30.0, 4.56, Per::hundred_feet, Source::licence_manual, Remark::none},
    {150.0, 10.3, Per::hundred_feet, Source::licence_manual, Remark::none},
    // RG-188A/U
    {50.0, 25.9, Per::hundred_metres, Source::training_guide, Remark::none},
    {150.0, 43.5, Per::hundred_metres, Source::training_guide, Remark::none},
    {450.0, 68.3, Per::hundred_metres, Source::training_guide, Remark::none},
    {850.0, 87.5, Per::hundred_metres, Source::training_guide, Remark::none},
    // RG-213/U
    {50.0, 4.9, Per::hundred_metres, Source::training_guide, Remark::none},
    {150.0, 8.9, Per::hundred_metres, Source::training_guide, Remark::none},
    {450.0, 16.3, Per::hundred_metres, Source::training_guide, Remark::none},
    {850.0, 24.7, Per::hundred_metres, Source::training_guide, Remark::none},
    {1300.0, 30.0, Per::hundred_metres, Source::national_society, Remark::none},
    {2400.0, 47.0, Per::hundred_metres, Source::national_society, Remark::none},
    // RG-214/U
    {30.0, 0.9, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 1.3, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 2.3, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 4.5, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 7.3, Per::hundred_feet, Source::line_table, Remark::none},
    // RG-223/U
    {30.0, 2.0, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 2.8, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 5.0, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 9.8, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 13.4, Per::hundred_feet, Source::line_table, Remark::none},
    // RG-303/U
    {50.0, 8.8, Per::hundred_metres, Source::training_guide, Remark::none},
    {150.0, 15.1, Per::hundred_metres, Source::training_guide, Remark::none},
    {450.0, 27.6, Per::hundred_metres, Source::training_guide, Remark::none},
    {850.0, 37.0, Per::hundred_metres, Source::training_guide, Remark::none},
    // RG-8 foam
    {50.0, 3.9, Per::hundred_metres, Source::training_guide, Remark::none},
    {150.0, 7.2, Per::hundred_metres, Source::training_guide, Remark::none},
    {450.0, 13.0, Per::hundred_metres, Source::training_guide, Remark::none},
    {850.0, 17.0, Per::hundred_metres, Source::training_guide, Remark::none},
    // RG-8X
    {10.0, 1.0, Per::hundred_feet, Source::emergency_page, Remark::none},
    {30.0, 2.0, Per::hundred_feet, Source::emergency_page, Remark::rounded},
    {50.0, 2.3, Per::hundred_feet, Source::emergency_page, Remark::rounded},
    {150.0, 4.7, Per::hundred_feet, Source::emergency_page, Remark::none},
    {450.0, 8.6, Per::hundred_feet, Source::emergency_page, Remark::none},
    {900.0, 13.0, Per::hundred_feet, Source::line_table, Remark::none},
    // foam 0.195 in
    {30.0, 2.0, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 2.5, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 4.4, Per::hundred_feet, Source::line_table, Remark::none},
    {220.0, 5.4, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 7.8, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 11.1, Per::hundred_feet, Source::line_table, Remark::none},
    {1200.0, 12.9, Per::hundred_feet, Source::line_table, Remark::none},
    {2400.0, 18.6, Per::hundred_feet, Source::line_table, Remark::none},
    // foam 0.240 in
    {30.0, 1.3, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 1.7, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 3.0, Per::hundred_feet, Source::line_table, Remark::none},
    {220.0, 3.7, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 5.3, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 7.6, Per::hundred_feet, Source::line_table, Remark::none},
    {1200.0, 8.8, Per::hundred_feet, Source::line_table, Remark::none},
    {2400.0, 12.7, Per::hundred_feet, Source::line_table, Remark::none},
    // foam 0.405 in
    {30.0, 0.7, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 0.9, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 1.5, Per::hundred_feet, Source::line_table, Remark::none},
    {220.0, 1.9, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 2.7, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 3.9, Per::hundred_feet, Source::line_table, Remark::none},
    {1200.0, 4.5, Per::hundred_feet, Source::line_table, Remark::none},
    {2400.0, 6.6, Per::hundred_feet, Source::line_table, Remark::none},
    // foam 0.600 in
    {30.0, 0.4, Per::hundred_feet, Source::line_table, Remark::none},
    {50.0, 0.5, Per::hundred_feet, Source::line_table, Remark::none},
    {150.0, 1.0, Per::hundred_feet, Source::line_table, Remark::none},
    {220.0, 1.2, Per::hundred_feet, Source::line_table, Remark::none},
    {450.0, 1.7, Per::hundred_feet, Source::line_table, Remark::none},
    {900.0, 2.5, Per::hundred_feet, Source::line_table, Remark::none},
    {1200.0, 2.9, Per::hundred_feet, Source::line_table, Remark::none},
    {2400.0, 4.3, Per::hundred_feet, Source::line_table, Remark::none},
    // corrugated 1/2 in
    {30.0, 1.26, Per::hundred_metres, Source::corrugated_table, Remark::none},
    {100.0, 2.34, Per::hundred_metres, Source::corrugated_table, Remark::none},
    {500.0, 5.5, Per::hundred_metres, Source::corrugated_table, Remark::none},
    {1000.0, 8.03, Per::hundred_metres, Source::corrugated_table, Remark::none},
    {2000.0, 12.0, Per::hundred_metres, Source::corrugated_table, Remark::none},
    {3000.0, 15.27, Per::hundred_metres, Source::corrugated_table, Remark::none},
};
constexpr std::size_t row_count = sizeof printed / sizeof printed[0];
constexpr std::size_t first_row[cable_types + 1] = {0, 5, 7, 11, 17, 22, 27, 31, 35, 41, 49, 57, 65, 73, 79};
static_assert(first_row[cable_types] == row_count);

struct Columns {
    double frequency_mhz[row_count];
    double attenuation_db_per_100m[row_count];
};

constexpr Columns columns = [] {
    Columns c{};
    for (std::size_t i = 0; i < row_count; ++i) {
        c.frequency_mhz[i] = printed[i].frequency_mhz;
        c.attenuation_db_per_100m[i] =
            printed[i].per == Per::hundred_feet ? printed[i].value / 0.3048 : printed[i].value;
    }
    return c;
}();

} // namespace

cable::Table cable_table(std::int32_t type) noexcept {
    const std::size_t first = first_row[type - 1];
    return {columns.frequency_mhz + first, columns.attenuation_db_per_100m + first, first_row[type] - first};
}

const char *cable_name(std::int32_t type) noexcept {
    switch (type) {
    case 1:
        return "RG-58C/U";
    case 2:
        return "RG-174/U";
    case 3:
        return "RG-188A/U";
    case 4:
        return "RG-213/U";
    case 5:
        return "RG-214/U";
    case 6:
        return "RG-223/U";
    case 7:
        return "RG-303/U";
    case 8:
        return "RG-8 foam";
    case 9:
        return "RG-8X";
    case 10:
        return "foam 0.195 in";
    case 11:
        return "foam 0.240 in";
    case 12:
        return "foam 0.405 in";
    case 13:
        return "foam 0.600 in";
    case 14:
        return "corrugated 1/2 in";
    }
    return "";
}

const char *cable_description(std::int32_t type) noexcept {
    switch (type) {
    case 1:
        return "solid polyethylene, 0.195 in, stranded tinned centre";
    case 2:
        return "solid polyethylene, 0.110 in";
    case 3:
        return "PTFE, 0.110 in";
    case 4:
        return "solid polyethylene, 0.405 in, stranded centre";
    case 5:
        return "solid polyethylene, 0.425 in, double braid";
    case 6:
        return "solid polyethylene, 0.212 in, double braid";
    case 7:
        return "PTFE, 0.170 in";
    case 8:
        return "foam polyethylene, 0.405 in, braid";
    case 9:
        return "foam polyethylene, 0.242 in, braid";
    case 10:
        return "foam polyethylene, foil and braid, solid centre";
    case 11:
        return "foam polyethylene, foil and braid, solid centre";
    case 12:
        return "foam polyethylene, foil and braid, solid centre";
    case 13:
        return "foam polyethylene, foil and braid, solid centre";
    case 14:
        return "foam polyethylene, corrugated copper tube";
    }
    return "";
}

CableRow cable_row(std::int32_t type, std::size_t row) noexcept {
    const std::size_t i = first_row[type - 1] + row;
    return {columns.frequency_mhz[i], columns.attenuation_db_per_100m[i], text_of(printed[i].source),
            text_of(printed[i].remark)};
}

} // namespace lvb::tables
