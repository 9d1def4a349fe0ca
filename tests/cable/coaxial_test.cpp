// Properties of coaxial lines computed from dimensions and materials: scaling, limits, symmetry, refusals.
#include "door/refusal.hpp"
#include "units/random.hpp"

#include <cmath>
#include <limits>

namespace {

using proof::Random;
using proof::sized;

lvb_coaxial_line line_of(double mhz, double inner_mm, double outer_mm) {
    auto line = sized<lvb_coaxial_line>();
    line.frequency_mhz = mhz;
    line.inner_diameter_mm = inner_mm;
    line.outer_diameter_mm = outer_mm;
    return line;
}

lvb_coaxial_line any_line(Random &random) {
    const double inner = random.log_uniform(-1, 1), mhz = random.log_uniform(0, 4);
    lvb_coaxial_line line = line_of(mhz, inner, inner * random.uniform(1.5, 8.0));
    line.inner_conductivity = random.uniform(0.05, 1.1);
    line.outer_conductivity = random.uniform(0.05, 1.1);
    line.inner_factor = random.uniform(1.0, 3.0);
    line.outer_factor = random.uniform(1.0, 3.0);
    line.relative_permittivity = random.uniform(1.0, 4.0);
    line.loss_tangent = random.log_uniform(-5, -2);
    return line;
}

lvb_coaxial_properties properties_of(const lvb_coaxial_line &line) {
    auto properties = sized<lvb_coaxial_properties>();
    EXPECT_EQ(lvb_compute_coaxial_line(&line, &properties, nullptr), LVB_OK);
    return properties;
}

void near(double a, double b, double relative = 1e-13) { EXPECT_NEAR(a, b, relative * std::fabs(b)); }

TEST(Coaxial, ConductorLossGrowsWithTheRootAndDielectricLossWithTheFrequency) {
    Random random(501);
    for (int i = 0; i < 500; ++i) {
        lvb_coaxial_line line = any_line(random);
        const auto before = properties_of(line);
        line.frequency_mhz *= 4.0;
        const auto after = properties_of(line);
        near(after.conductor_db_per_100m, 2.0 * before.conductor_db_per_100m);
        near(after.dielectric_db_per_100m, 4.0 * before.dielectric_db_per_100m);
        EXPECT_EQ(after.impedance_ohm, before.impedance_ohm);
        EXPECT_EQ(after.cutoff_mhz, before.cutoff_mhz);
        EXPECT_EQ(after.attenuation_db_per_100m, after.conductor_db_per_100m + after.dielectric_db_per_100m);
    }
}

TEST(Coaxial, AThickerLineOfTheSameShapeLosesLessAndCutsOffEarlier) {
    Random random(502);
    for (int i = 0; i < 500; ++i) {
        lvb_coaxial_line line = any_line(random);
        const auto thin = properties_of(line);
        line.inner_diameter_mm *= 2.0;
        line.outer_diameter_mm *= 2.0;
        const auto thick = properties_of(line);
        near(thick.impedance_ohm, thin.impedance_ohm);
        near(thick.conductor_db_per_100m, thin.conductor_db_per_100m / 2.0);
        near(thick.cutoff_mhz, thin.cutoff_mhz / 2.0);
        EXPECT_EQ(thick.dielectric_db_per_100m, thin.dielectric_db_per_100m); // of the material alone
    }
}

TEST(Coaxial, PermittivitySlowsTheWaveAndLowersTheImpedanceAlike) {
    Random random(503);
    for (int i = 0; i < 500; ++i) {
        lvb_coaxial_line line = any_line(random);
        line.relative_permittivity = 0.0;
        const auto empty = properties_of(line);
        EXPECT_EQ(empty.velocity_factor, 1.0);
        line.relative_permittivity = random.uniform(1.0, 10.0);
        const auto filled = properties_of(line);
        near(filled.velocity_factor, 1.0 / std::sqrt(line.relative_permittivity));
        near(filled.impedance_ohm, empty.impedance_ohm * filled.velocity_factor);
        near(filled.conductor_db_per_100m, empty.conductor_db_per_100m / filled.velocity_factor);
        near(filled.cutoff_mhz, empty.cutoff_mhz * filled.velocity_factor);
        near(filled.capacitance_pf_per_m, empty.capacitance_pf_per_m * line.relative_permittivity);
    }
}

// The current flows in both conductors: what one of them loses depends on its own diameter and material only.
TEST(Coaxial, EachConductorLosesForItself) {
    Random random(504);
    for (int i = 0; i < 500; ++i) {
        lvb_coaxial_line line = any_line(random);
        line.inner_factor = line.outer_factor = 1.0;
        line.inner_conductivity = line.outer_conductivity = 1.0;
        const double both = properties_of(line).conductor_db_per_100m;
        line.inner_factor = 2.0;
        const double inner = properties_of(line).conductor_db_per_100m - both; // the inner one once more
        line.inner_factor = 1.0;
        line.outer_factor = 2.0;
        const double outer = properties_of(line).conductor_db_per_100m - both;
        near(inner + outer, both, 1e-12);
        near(inner / outer, line.outer_diameter_mm / line.inner_diameter_mm, 1e-11);
        line.outer_factor = 1.0;
        line.inner_conductivity = line.outer_conductivity = 0.25; // twice the resistance of the skin
        near(properties_of(line).conductor_db_per_100m, 2.0 * both);
    }
}

// The least conductor loss of a given outer diameter lies at a ratio of 3.591 (ln x = 1 + 1/x), 77 ohm in air:
// textbooks.
TEST(Coaxial, LosesLeastAtTheRatioOfTheTextbooks) {
    double best = 0.0, least = std::numeric_limits<double>::infinity();
    for (double ratio = 2.0; ratio < 6.0; ratio += 0.001) {
        const double loss = properties_of(line_of(600.0, 10.0 / ratio, 10.0)).conductor_db_per_100m;
        if (loss >= least) continue;
        least = loss;
        best = ratio;
    }
    EXPECT_NEAR(best, 3.5911, 0.002);
    EXPECT_NEAR(properties_of(line_of(600.0, 10.0 / 3.5911, 10.0)).impedance_ohm, 76.65, 0.02);
}

TEST(Coaxial, ZeroIsCopperSmoothAndEmpty) {
    lvb_coaxial_line line = line_of(600.0, 2.0, 7.0);
    const auto zero = properties_of(line);
    line.inner_conductivity = line.outer_conductivity = 1.0;
    line.inner_factor = line.outer_factor = line.relative_permittivity = 1.0;
    line.stated = LVB_STATED_TEMPERATURE;
    line.temperature_degc = 20.0;
    const auto told = properties_of(line);
    EXPECT_EQ(std::memcmp(&zero, &told, sizeof zero), 0);
    EXPECT_EQ(zero.dielectric_db_per_100m, 0.0);
}

// IEC 60028: copper's resistance grows by 0.393 % per degree from 20 degC; the skin's by its root.
TEST(Coaxial, WarmConductorsLoseMore) {
    lvb_coaxial_line line = line_of(600.0, 2.0, 7.0);
    line.loss_tangent = 0.0003;
    const auto cool = properties_of(line);
    line.stated = LVB_STATED_TEMPERATURE;
    for (const double degc : {-100.0, 0.0, 20.0, 50.0, 200.0}) {
        line.temperature_degc = degc;
        const auto warm = properties_of(line);
        near(warm.conductor_db_per_100m, cool.conductor_db_per_100m * std::sqrt(1.0 + 0.00393 * (degc - 20.0)));
        EXPECT_EQ(warm.dielectric_db_per_100m, cool.dielectric_db_per_100m);
    }
}

TEST(Coaxial, NotesTheHigherModeAndADeepSkin) {
    EXPECT_EQ(properties_of(line_of(600.0, 2.0, 7.0)).notes, 0u);
    const double cutoff = properties_of(line_of(600.0, 2.0, 7.0)).cutoff_mhz;
    EXPECT_EQ(properties_of(line_of(cutoff, 2.0, 7.0)).notes, 0u);
    EXPECT_EQ(properties_of(line_of(cutoff * 1.000001, 2.0, 7.0)).notes, std::uint32_t{LVB_NOTE_ABOVE_CUTOFF});
    // the skin of copper is 66.1 um deep at 1 MHz: 0.0661 mm is a tenth of 0.661 mm
    EXPECT_EQ(properties_of(line_of(1.0, 0.66, 7.0)).notes, std::uint32_t{LVB_NOTE_DEEP_SKIN});
    EXPECT_EQ(properties_of(line_of(1.0, 0.662, 7.0)).notes, 0u);
}

TEST(Coaxial, RefusesWhatLiesOutside) {
    struct Wrong {
        double lvb_coaxial_line::*member;
        double value;
        lvb_status status;
        std::int32_t field;
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Wrong wrongs[] = {
        {&lvb_coaxial_line::frequency_mhz, 0.0, LVB_E_MISSING, LVB_FIELD_FREQUENCY_MHZ},
        {&lvb_coaxial_line::frequency_mhz, 0.09, LVB_E_BELOW_RANGE, LVB_FIELD_FREQUENCY_MHZ},
        {&lvb_coaxial_line::inner_diameter_mm, 0.0, LVB_E_MISSING, LVB_FIELD_INNER_DIAMETER_MM},
        {&lvb_coaxial_line::inner_diameter_mm, -2.0, LVB_E_BELOW_RANGE, LVB_FIELD_INNER_DIAMETER_MM},
        {&lvb_coaxial_line::outer_diameter_mm, 0.0, LVB_E_MISSING, LVB_FIELD_OUTER_DIAMETER_MM},
        {&lvb_coaxial_line::outer_diameter_mm, 1001.0, LVB_E_ABOVE_RANGE, LVB_FIELD_OUTER_DIAMETER_MM},
        {&lvb_coaxial_line::outer_diameter_mm, 2.0, LVB_E_ORDER, LVB_FIELD_OUTER_DIAMETER_MM},
        {&lvb_coaxial_line::outer_diameter_mm, 2.019, LVB_E_ORDER, LVB_FIELD_OUTER_DIAMETER_MM},
        {&lvb_coaxial_line::inner_conductivity, 1.2, LVB_E_ABOVE_RANGE, LVB_FIELD_INNER_CONDUCTIVITY},
        {&lvb_coaxial_line::outer_conductivity, nan, LVB_E_NAN, LVB_FIELD_OUTER_CONDUCTIVITY},
        {&lvb_coaxial_line::inner_factor, 0.5, LVB_E_BELOW_RANGE, LVB_FIELD_INNER_FACTOR},
        {&lvb_coaxial_line::outer_factor, HUGE_VAL, LVB_E_INFINITE, LVB_FIELD_OUTER_FACTOR},
        {&lvb_coaxial_line::relative_permittivity, 0.9, LVB_E_BELOW_RANGE, LVB_FIELD_RELATIVE_PERMITTIVITY},
        {&lvb_coaxial_line::loss_tangent, 0.11, LVB_E_ABOVE_RANGE, LVB_FIELD_LOSS_TANGENT},
        {&lvb_coaxial_line::loss_tangent, -1e-9, LVB_E_BELOW_RANGE, LVB_FIELD_LOSS_TANGENT},
        {&lvb_coaxial_line::temperature_degc, 25.0, LVB_E_NOT_STATED, LVB_FIELD_TEMPERATURE_DEGC},
    };
    for (const Wrong &wrong : wrongs) {
        lvb_coaxial_line line = line_of(600.0, 2.0, 7.0);
        line.*wrong.member = wrong.value;
        proof::Untouched<lvb_coaxial_properties> properties;
        auto fault = sized<lvb_fault>();
        EXPECT_STREQ(lvb_status_name(lvb_compute_coaxial_line(&line, &properties.result, &fault)),
                     lvb_status_name(wrong.status));
        EXPECT_TRUE(properties.holds());
        EXPECT_EQ(fault.structure, LVB_STRUCT_COAXIAL_LINE);
        EXPECT_STREQ(lvb_field_name(fault.field), lvb_field_name(wrong.field));
        EXPECT_TRUE(proof::same(fault.value, wrong.value));
    }
    lvb_coaxial_line line = line_of(600.0, 2.0, 2.02);
    EXPECT_NE(properties_of(line).impedance_ohm, 0.0); // just far enough
    line.stated = LVB_STATED_FLOOR;
    auto fault = sized<lvb_fault>();
    auto properties = sized<lvb_coaxial_properties>();
    EXPECT_EQ(lvb_compute_coaxial_line(&line, &properties, &fault), LVB_E_UNKNOWN_VALUE);
    line = line_of(600.0, 2.0, 2.0);
    EXPECT_EQ(lvb_compute_coaxial_line(&line, &properties, &fault), LVB_E_ORDER);
    EXPECT_EQ(proof::text_of(fault), "lvb_coaxial_line.outer_diameter_mm is 2, which is below 1.01 times "
                                     "inner_diameter_mm (2.02); allowed 2.02 to 1000.");
}

} // namespace
