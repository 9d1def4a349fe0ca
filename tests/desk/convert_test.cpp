// Unit questions against published values, and refusals of questions that cannot be answered.
#include "run.hpp"

#include "support/range.hpp"

#include <gtest/gtest.h>
#include <levelbook/levelbook.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <sstream>

namespace desk_test {
namespace {

// The number before the target unit: "30 mW = 14.7712 dBm".
double answer_of(const Printout &told) {
    const std::size_t equals = told.out.find(" = ");
    EXPECT_NE(equals, std::string::npos) << told.err;
    return equals == std::string::npos ? std::nan("") : std::strtod(told.out.c_str() + equals + 3, nullptr);
}

struct Published {
    std::vector<std::string> question;
    double printed;
    double precision; // half of the last printed digit, or what the source's rounded constant needs
    const char *source;
};

TEST(Convert, AgreesWithPublishedValues) {
    const Published values[] = {
        {{"30mW", "dBm"}, 14.77, 0.005, "10 log10(30), printed in many tables of levels"},
        {{"40ft", "dB_free_space", "--at", "600"}, 49.73, 0.005, "ITU-R P.525 with 1 ft = 0.3048 m, by hand"},
        {{"20dBm", "mW"}, 100.0, 1e-9, "printed dBm table"},
        {{"14dBm", "mW"}, 25.119, 0.0005, "printed dBm table"},
        {{"26dBm", "mW"}, 398.107, 0.0005, "printed dBm table"},
        {{"50W", "dBm"}, 47.0, 0.05, "Rappaport 2e, example 4.2"},
        {{"50W", "dBW"}, 17.0, 0.05, "Rappaport 2e, example 4.2"},
        {{"0dBm", "V", "--ohm", "50"}, 0.2236, 0.00005, "printed: 0 dBm is 0.2236 V in 50 ohm"},
        {{"-73.01dBm", "uV", "--ohm", "50"}, 50.0, 0.05, "printed: -73.01 dBm is 50 uV in 50 ohm"},
        {{"0dBm", "dBuV", "--ohm", "50"}, 106.99, 0.005, "printed: 50 ohm, dBuV = dBm + 106.99"},
        {{"17W_erp", "dBm_eirp"}, 44.44, 0.02, "Blake 2e, example 16.6, which takes 2.14 dB for the dipole"},
        {{"100W_eirp", "W/m2", "--m", "10000"}, 79.577e-9, 0.0005e-9, "Blake 2e, example 15.3"},
        {{"100W_eirp", "mV/m", "--m", "10000"}, 5.477, 0.003, "Blake 2e, example 15.4, which takes 30 for 29.98"},
        {{"2vswr", "dB_return"}, 9.54, 0.005, "printed table of VSWR"},
        {{"1.5vswr", "reflection"}, 0.2, 0.00005, "printed table of VSWR"},
        {{"3vswr", "dB_mismatch"}, 1.2494, 0.00005, "printed table of VSWR"},
        {{"73ohm", "dB_mismatch", "--ohm", "50"}, 0.1546, 0.00005, "Balanis, example 2.10"},
        {{"1.64power_ratio", "dB"}, 2.15, 0.005, "half-wave dipole, Kraus, example 2-10.2"},
        {{"2dB_noise_figure", "K_noise"}, 169.6, 0.05, "Blake 2e, example 1.11"},
        {{"1Hz", "dBm_noise", "--kelvin", "290"}, -173.975, 0.0005, "k T0 with the exact k of the SI"},
        {{"45deg", "dB_linear"}, 3.01, 0.005, "Balanis, example 2.11"},
        {{"75deg", "dB_linear"}, 11.74, 0.005, "Maini, example 7.3"},
        {{"1.58dB_axial", "dB_cross_polar"},
         20.83,
         0.03,
         "printed table of axial ratios, which rounds the axial ratio to 0.01 dB"},
        {{"4.97dB/100ft", "dB/100m"}, 16.3, 0.05, "RG-213/U at 450 MHz, printed in both units"},
        {{"68degF", "degC"}, 20.0, 1e-9, "NIST SP 811"},
        {{"1mi", "m"}, 1609.344, 1e-6, "NIST SP 811"},
        {{"1m", "m_far_field", "--at", "900"}, 6.0, 0.01, "Rappaport 2e, example 4.1, which takes c = 3e8"},
        {{"10km", "dB_free_space", "--at", "4000"}, 124.48, 0.015, "Maini, example 7.2, which takes c = 3e8"},
    };
    for (const Published &value : values) {
        SCOPED_TRACE(value.question[0] + " to " + value.question[1] + ": " + value.source);
        std::vector<std::string> words = {"convert"};
        words.insert(words.end(), value.question.begin(), value.question.end());
        const Printout told = run(words);
        EXPECT_EQ(told.code, 0) << told.err;
        EXPECT_NEAR(answer_of(told), value.printed, value.precision);
    }
}

TEST(Convert, TwelveToThirteenMetresCosts695Thousandths) {
    const double twelve = answer_of(run({"convert", "12m", "dB_free_space", "--at", "600"}));
    const double thirteen = answer_of(run({"convert", "13m", "dB_free_space", "--at", "600"}));
    EXPECT_NEAR(thirteen - twelve, 0.695, 0.0005); // 20 log10(13/12)
}

TEST(Convert, TakesValueAndUnitTogetherOrApart) {
    EXPECT_EQ(run({"convert", "30mW", "dBm"}).out, run({"convert", "30", "mW", "dBm"}).out);
    EXPECT_NEAR(answer_of(run({"convert", "30mw", "DBM"})), 14.77, 0.005);
    EXPECT_NE(run({"convert", "0mW", "dBm"}).out.find("= -infinity dBm"), std::string::npos);
}

TEST(Convert, KnowsOtherSpellings) {
    EXPECT_NEAR(answer_of(run({"convert", "68F", "C"})), 20.0, 1e-9); // NIST SP 811
    EXPECT_NEAR(answer_of(run({"convert", "40'", "metres"})), 12.192, 1e-9);
    EXPECT_NEAR(answer_of(run({"convert", "40feet", "m"})), 12.192, 1e-9);
    EXPECT_NEAR(answer_of(run({"convert", "10\"", "cm"})), 25.4, 1e-9);
    EXPECT_NEAR(answer_of(run({"convert", "1.5:1vswr", "reflection"})), 0.2, 1e-9); // (s - 1) / (s + 1)
    EXPECT_NEAR(answer_of(run({"convert", "1\u00B5V", "dBuV"})), 0.0, 1e-9);        // its definition
    EXPECT_NEAR(answer_of(run({"convert", "1V", "\u03BCV"})), 1e6, 1e-3);
}

TEST(Convert, OptionsTakeTheirUnit) {
    const double plain = answer_of(run({"convert", "40ft", "dB_free_space", "--at", "600"}));
    EXPECT_EQ(answer_of(run({"convert", "40ft", "dB_free_space", "--at", "600MHz"})), plain);
    EXPECT_EQ(answer_of(run({"convert", "40ft", "dB_free_space", "--at", "0.6GHz"})), plain);
    EXPECT_EQ(answer_of(run({"convert", "17dBm_eirp", "dBuV/m", "--ft", "100"})),
              answer_of(run({"convert", "17dBm_eirp", "dBuV/m", "--m", "30.48"})));
    expect_refused(run({"convert", "40ft", "dB_free_space", "--at", "3m"}), "--at is given in MHz, not in m");
    expect_refused(run({"convert", "17dBm_eirp", "dBuV/m", "--ft", "1", "--m", "1"}), "excludes");
    expect_refused(run({"convert", "17dBm_eirp", "dBuV/m"}), "needs --m (metres) or --ft");
}

TEST(Convert, AsksWhereItCouldBeWrongByABillion) {
    expect_refused(run({"convert", "30MW", "dBm"}), "'MW' can mean milli or mega: write mW for a thousandth");
    expect_refused(run({"convert", "3MV", "dBuV"}), "'MV' can mean milli or mega");
    expect_refused(run({"convert", "0dBm", "MW"}), "can mean milli or mega");
    EXPECT_EQ(run({"convert", "600mhz", "m"}).code, 0);
}

TEST(Convert, RefusesWhatItCannotAnswer) {
    expect_refused(run({"convert", "2,5m", "ft"}), "has a decimal comma: write 2.5m");
    expect_refused(run({"convert", "10dBm", "W/m2", "--m", "3"}), "radiated power can: write dBm_eirp");
    expect_refused(run({"convert", "-30mW", "dBm"}), "a power is 0 or more");
    expect_refused(run({"convert", "600MHz", "wavelength"}), "unknown unit 'wavelength'; 'levelbook-desk units' lists");
    expect_refused(run({"convert", "30mWW", "dBm"}), "unknown unit 'mWW'; the nearest is 'mW'");
    expect_refused(run({"convert", "30mW", "dBmm"}), "the nearest is 'dBm'");
    expect_refused(run({"convert", "30m", "W"}), "m cannot be converted to W; it can be to ft");
    expect_refused(run({"convert", "0dBm", "dBuV"}), "needs --ohm");
    expect_refused(run({"convert", "40m", "dB_free_space"}), "needs --at");
    expect_refused(run({"convert", "30mW", "dBm", "--ohm", "50"}), "has no use for --ohm");
    expect_refused(run({"convert", "-5mW", "dBm"}), "outside");
    expect_refused(run({"convert", "nanmW", "dBm"}), "");
    expect_refused(run({"convert", "infmW", "dBm"}), "");
    expect_refused(run({"convert", "1e999W", "dBm"}), "too large");
    expect_refused(run({"convert", "mW", "dBm"}), "does not begin with a number");
    expect_refused(run({"convert", "30", "dBm"}), "has no unit");
    expect_refused(run({"convert", "", ""}), "");
    expect_refused(run({"convert", "0.5vswr", "reflection"}), "outside");
    expect_refused(run({"convert", "2vswr", "dB_mismatch_low", "--with", "3m"}), "does not fit");
    expect_refused(run({"convert", "2vswr", "dB_mismatch_low", "--with", "0.2vswr"}), "does not fit");
    expect_refused(run({"convert", "40m", "dB_free_space", "--at", "-1"}), "outside");
}

struct Function {
    std::string name; // without its prefix
    const char *ranges;
    double (*compute)(const double *);
};

const Function functions[] = {
#define LVB_SCALAR_1(f, ranges, accuracy) {std::string(#f).substr(4), ranges, [](const double *x) { return f(x[0]); }},
#define LVB_SCALAR_2(f, ranges, accuracy)                                                                              \
    {std::string(#f).substr(4), ranges, [](const double *x) { return f(x[0], x[1]); }},
#define LVB_SCALAR_3(f, ranges, accuracy)                                                                              \
    {std::string(#f).substr(4), ranges, [](const double *x) { return f(x[0], x[1], x[2]); }},
#include "levelbook_scalars.inc"
};

// No conversion of the header is left out: the header's own list, each function called as the program must call it,
// with other numbers in every argument. (What the functions give is tested where they are tested.)
TEST(Convert, KnowsEveryConversionOfTheHeader) {
    EXPECT_GT(std::size(functions), 100u);
    const std::string listed = run({"units"}).out;
    for (const Function &function : functions) {
        const std::vector<support::Interval> arguments = support::read_range(function.ranges);
        double values[3] = {};
        std::vector<std::string> words = {"convert", function.name};
        for (std::size_t i = 0; i < arguments.size(); ++i) {
            std::ostringstream word;
            word << arguments[i].name << "=" << support::within(arguments[i], 0.37 + 0.2 * static_cast<double>(i));
            values[i] =
                std::strtod(word.str().c_str() + arguments[i].name.size() + 1, nullptr); // the digits that stand there
            words.push_back(word.str());
        }
        const double expected = function.compute(values);
        ASSERT_FALSE(std::isnan(expected)) << function.name;
        const Printout told = run(words);
        EXPECT_EQ(told.code, 0) << function.name << told.err;
        if (std::isinf(expected)) EXPECT_EQ(answer_of(told), expected) << function.name;
        else EXPECT_NEAR(answer_of(told), expected, std::abs(expected) * 1e-6) << function.name;
        EXPECT_NE(listed.find("\n  " + function.name + ":"), std::string::npos) << function.name;
    }
}

// Functions between two units are also found by these: the header's own list against the source of the table of rules.
TEST(Convert, KnowsEveryConversionBetweenUnits) {
    const std::string source = read_file(DESK_SOURCES "/units.cpp");
    int found = 0;
    for (const Function &function : functions) {
        const std::string name = "lvb_" + function.name;
        const bool called =
            source.find("<" + name + ">") != std::string::npos || source.find(name + "(in.") != std::string::npos;
        const bool between_units =
            function.name.find("_from_") != std::string::npos && support::read_range(function.ranges).size() == 1;
        EXPECT_TRUE(called || !between_units) << name;
        found += called ? 1 : 0;
    }
    EXPECT_GE(found, 80);
}

TEST(Convert, FunctionsByNameAgreeWithPublishedValues) {
    const Published values[] = {
        {{"helix_gain_dbi", "turns=16", "spacing_wavelengths=0.25", "circumference_wavelengths=1"},
         16.81,
         0.005,
         "Kraus, Antennas, example 8-5.2, which prints 16.8 dBi"},
        {{"gain_dbi_from_beam_widths", "beam_width_1_deg=20", "beam_width_2_deg=20"},
         20.13,
         0.01,
         "41253 / 400 of Kraus, Antennas, 2-4, by hand: 103.1"},
        {{"knife_edge_loss_db", "parameter=0"}, 6.03, 0.005, "J(0) of ITU-R P.526, 4.1: 6 dB at grazing"},
        {{"combiner_loss_db", "ways=4", "excess_db=0.5"}, 6.52, 0.005, "10 log10(4) = 6.02"},
        {{"third_order_product_dbm", "level_dbm=0", "intercept_dbm=20"}, -40.0, 1e-6, "3 P - 2 IP3, Pozar, 10.3"},
        {{"indoor_loss_db", "frequency_mhz=900", "distance_m=10", "power_loss_coefficient=33"},
         64.08,
         0.005,
         "ITU-R P.1238-9, (1), by hand: 59.08 + 33 - 28"},
        {{"business_noise_figure_db", "frequency_mhz=602.4"}, 10.11, 0.005, "44.3 - 12.3 log10(602.4), ITU-R P.372"},
        {{"exposure_distance_m", "eirp_dbm=30", "limit_w_per_m2=10", "reflection_factor=1"},
         0.0892,
         0.00005,
         "sqrt(1 / (4 pi 10)), by hand"},
        {{"lvb_combiner_loss_db", "ways=2", "excess_db=0"}, 3.01, 0.005, "10 log10(2), by its name in the header"},
        {{"exposure_limit_w_per_m2", "exposure=1", "audience=1", "frequency_mhz=600"},
         4.0,
         1e-6,
         "47 CFR 1.1310, table 1: f / 1500 = 0.4 mW/cm2 for the general population"},
        {{"lvb_exposure_limit_w_per_m2", "exposure=1", "audience=2", "frequency_mhz=1500"},
         50.0,
         1e-6,
         "47 CFR 1.1310, table 1: f / 300 = 5 mW/cm2 where people know of it"},
    };
    for (const Published &value : values) {
        SCOPED_TRACE(value.question[0] + ": " + value.source);
        std::vector<std::string> words = {"convert"};
        words.insert(words.end(), value.question.begin(), value.question.end());
        const Printout told = run(words);
        EXPECT_EQ(told.code, 0) << told.err;
        EXPECT_NEAR(answer_of(told), value.printed, value.precision);
    }
    EXPECT_NEAR(answer_of(run({"convert", "90deg_beam_width", "cosine_exponent"})), 2.0, 1e-6); // cos^2 45 deg = 1/2
    EXPECT_NEAR(answer_of(run({"convert", "2cosine_exponent", "dBi"})), 7.78,
                0.005); // directivity 2 (n + 1) = 6, Kraus
}

TEST(Convert, RefusesFunctionsThatItCannotAnswer) {
    expect_refused(run({"convert", "helix_gain_dbi", "turns=10"}), "helix_gain_dbi needs spacing_wavelengths");
    expect_refused(run({"convert", "combiner_loss_db", "ways=4", "ways=4"}), "ways is given twice");
    expect_refused(run({"convert", "combiner_loss_db", "ways=4", "loss=4"}), "'loss=4' is no argument");
    expect_refused(run({"convert", "combiner_loss_db", "4", "0.5"}), "each as name=value");
    expect_refused(run({"convert", "combiner_loss_db", "ways=4dB", "excess_db=0"}), "holds no number");
    expect_refused(run({"convert", "combiner_loss_db", "ways=nan", "excess_db=0"}), "holds no number");
    expect_refused(run({"convert", "combiner_loss_db", "ways=0", "excess_db=0"}), "ways [1, inf]");
    expect_refused(run({"convert", "combiner_los_db", "ways=4", "excess_db=0"}), "the nearest is 'combiner_loss_db'");
    expect_refused(run({"convert", "dbm_from_mw", "power_mw=1", "--at", "600"}), "no options");
    expect_refused(run({"convert", "1", "2", "3", "4"}), "convert takes a value with its unit");
    expect_refused(run({"convert", "dbm_from_mw"}), "");
    expect_refused(run({"convert", "lvb_combiner_los_db", "ways=4", "excess_db=0"}),
                   "no function 'lvb_combiner_los_db'; the nearest is 'combiner_loss_db'");
    for (const char *exposure : {"exposure=3", "exposure=1.5", "exposure=0"})
        expect_refused(
            run({"convert", "exposure_limit_w_per_m2", exposure, "audience=1", "frequency_mhz=600"}),
            "exposure 1 is 47 CFR 1.1310, 2 is ICNIRP 2020 (as others quote it); audience 1 is general public");
}

TEST(Cables, CatalogueNamesTheSourceOfEveryRow) {
    const Printout told = run({"cables"});
    EXPECT_EQ(told.code, 0);
    int rows = 0;
    for (const std::string &line : lines_of(told.out)) {
        EXPECT_LE(line.size(), 100u) << line;
        const std::size_t at = line.find("dB/100 ft  ");
        if (at == std::string::npos || line.find("MHz") > 20) continue;
        ++rows;
        ASSERT_GT(line.size(), at + 11) << line;
        const std::string letter = line.substr(at + 11, 1); // of the source, listed once
        EXPECT_NE(told.out.find("\n  " + letter + "  "), std::string::npos) << line;
    }
    EXPECT_GE(rows, 70);
    EXPECT_EQ(told.out.find("appendix H"), told.out.rfind("appendix H"));
}

// The words of a page with single spaces between.
std::string flat(const std::string &page) {
    std::string text = page;
    std::replace(text.begin(), text.end(), '\n', ' ');
    while (text.find("  ") != std::string::npos) text.erase(text.find("  "), 1);
    return text;
}

void expect_page(const Printout &told) {
    EXPECT_EQ(told.code, 0) << told.err;
    EXPECT_EQ(told.err, "");
    for (const std::string &line : lines_of(told.out)) EXPECT_LE(line.size(), 100u) << line;
}

TEST(Published, RulesTellRangeFigureAndEdition) {
    const Printout told = run({"rules"});
    expect_page(told);
    const std::string text = flat(told.out);
    // 47 CFR 74.861(e)(1)(ii): 250 mW in the 470 to 608 MHz band at the transmitter's output; (i): 50 mW in VHF
    EXPECT_NE(text.find("'47 CFR 74.861(e)(1)"), std::string::npos) << text;
    EXPECT_NE(text.find(" at most 250 mW (23.98 dBm)"), std::string::npos) << text;
    EXPECT_NE(text.find(" at most 50 mW (16.99 dBm)"), std::string::npos) << text;
    for (std::uint32_t i = 0; i < lvb_limit_rule_count(); ++i) {
        lvb_limit_rule rule{};
        rule.size = sizeof rule;
        ASSERT_EQ(lvb_describe_limit_rule(i, &rule, nullptr), LVB_OK);
        for (const std::string words : {rule.citation, rule.edition, rule.remark, rule.country})
            EXPECT_NE(text.find(flat(words)), std::string::npos) << words;
    }
    // 47 CFR 1.1310, table 1, at 600 MHz: 0.4 and 2 mW/cm2; at 100 MHz 0.2 and 1 mW/cm2
    EXPECT_NE(text.find("'47 CFR 1.1310', general public 2 2 3.133 4 6 10 10 10 10 "), std::string::npos) << text;
    EXPECT_NE(text.find("'47 CFR 1.1310', occupational 10 10 15.67 20 30 50 50 50 50 "), std::string::npos) << text;
    EXPECT_NE(text.find("was read where others quote it"), std::string::npos);
}

TEST(Published, AllowancesTellTheirSources) {
    const Printout told = run({"allowances"});
    expect_page(told);
    const std::string text = flat(told.out);
    // Vorobyov and Yarovoy, 2012, abstract: 10 to 35 dB at the torso, 5 to 10 dB at the head
    EXPECT_NE(text.find("antenna worn at belt or torso: 10 to 35 dB; from: Vorobyov and Yarovoy"), std::string::npos)
        << text;
    EXPECT_NE(text.find("antenna worn at the head: 5 to 10 dB; from: "), std::string::npos) << text;
    EXPECT_NE(text.find("one who holds a telephone, 900 MHz: 3 dB; from: Garg"), std::string::npos) << text;
    EXPECT_NE(text.find("common practice, no source"), std::string::npos) << text;
    EXPECT_EQ(text.find("nan"), std::string::npos) << text;
    expect_refused(run({"allowance"}), "the nearest is 'allowances'");
    expect_refused(run({"rules", "all"}), "all");
}

// Between the rows 450 MHz 16.3 and 850 MHz 24.7 dB/100 m, worked by hand from a sqrt(f) + b f:
// sqrt 21.2132 and 29.1548; b = (24.7/29.1548 - 16.3/21.2132) / 7.9416 = 0.0099270; a = 0.7683902 - 0.0099270 x 21.2132
// = 0.5578067; at 600 MHz 0.5578067 x 24.494897 + 0.0099270 x 600 = 19.620 dB/100 m, so 30 m cost 5.886 dB.
TEST(Cables, LooksUpAPieceOfCable) {
    const Printout metres = run({"cable", "RG-213/U", "--mhz", "600", "--m", "30"});
    EXPECT_EQ(metres.code, 0) << metres.err;
    const std::size_t at = metres.out.find("whole run");
    ASSERT_NE(at, std::string::npos) << metres.out;
    EXPECT_NEAR(std::strtod(metres.out.c_str() + at + 9, nullptr), 5.886, 0.0011);
    const Printout feet = run({"cable", "rg213", "--mhz", "600", "--ft", "98.4251968503937"});
    EXPECT_NE(metres.out.find("30 m (98.43 ft)"), std::string::npos) << metres.out;
    EXPECT_EQ(feet.out.substr(feet.out.find("attenuation")), metres.out.substr(metres.out.find("attenuation")));
}

} // namespace
} // namespace desk_test
