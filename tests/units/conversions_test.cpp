// Properties of the conversions: round trips, monotony, scaling, limits, and that the ways around agree.
#include "units/random.hpp"

#include <levelbook/levelbook.h>

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
using Function = double (*)(double);

struct Pair {
    const char *name;
    std::function<double(double)> there, back;
    double low, high; // exponents of ten where `logarithmic`, otherwise values
    bool logarithmic;
    double tolerance; // relative to the value (or 1)
};

double at(const Pair &pair, proof::Random &random) {
    return pair.logarithmic ? random.log_uniform(pair.low, pair.high) : random.uniform(pair.low, pair.high);
}

std::vector<Pair> pairs() {
    std::vector<Pair> all = {
        {"mw", lvb_dbm_from_mw, lvb_mw_from_dbm, -20, 9, true, 1e-13},
        {"w", lvb_dbm_from_w, lvb_w_from_dbm, -20, 9, true, 1e-13},
        {"w_dbw", lvb_dbw_from_w, lvb_w_from_dbw, -20, 9, true, 1e-13},
        {"mw_dbw", lvb_dbw_from_mw, lvb_mw_from_dbw, -20, 9, true, 1e-13},
        {"dbw", lvb_dbm_from_dbw, lvb_dbw_from_dbm, -300, 300, false, 1e-15},
        {"w_mw", lvb_mw_from_w, lvb_w_from_mw, -20, 20, true, 1e-15},
        {"volts", lvb_dbuv_from_volts, lvb_volts_from_dbuv, -12, 6, true, 1e-13},
        {"v_per_m", lvb_dbuv_per_m_from_v_per_m, lvb_v_per_m_from_dbuv_per_m, -12, 6, true, 1e-13},
        {"power_ratio", lvb_db_from_power_ratio, lvb_power_ratio_from_db, -20, 20, true, 1e-13},
        {"amplitude_ratio", lvb_db_from_amplitude_ratio, lvb_amplitude_ratio_from_db, -10, 10, true, 1e-13},
        {"feet", lvb_metres_from_feet, lvb_feet_from_metres, -9, 9, true, 1e-15},
        {"inches", lvb_metres_from_inches, lvb_inches_from_metres, -9, 9, true, 1e-15},
        {"yards", lvb_metres_from_yards, lvb_yards_from_metres, -9, 9, true, 1e-15},
        {"miles", lvb_metres_from_miles, lvb_miles_from_metres, -9, 9, true, 1e-15},
        {"wavelength", lvb_wavelength_m_from_mhz, lvb_mhz_from_wavelength_m, -6, 9, true, 1e-15},
        {"per_100m", lvb_db_per_100m_from_db_per_100ft, lvb_db_per_100ft_from_db_per_100m, -3, 3, true, 1e-15},
        {"degf", lvb_degc_from_degf, lvb_degf_from_degc, -459.67, 2000, false, 1e-13},
        {"kelvin", lvb_kelvin_from_degc, lvb_degc_from_kelvin, -273.15, 2000, false, 1e-13},
        {"reflection_vswr", lvb_reflection_from_vswr, lvb_vswr_from_reflection, 0, 3, true, 1e-12},
        {"reflection_return_loss", lvb_reflection_from_return_loss_db, lvb_return_loss_db_from_reflection, 0, 200,
         false, 1e-13},
        {"reflection_mismatch", lvb_reflection_from_mismatch_loss_db, lvb_mismatch_loss_db_from_reflection, 0, 20,
         false, 1e-13},
        {"vswr_return_loss", lvb_return_loss_db_from_vswr, lvb_vswr_from_return_loss_db, 0, 6, true, 1e-9},
        {"vswr_mismatch", lvb_vswr_from_mismatch_loss_db, lvb_mismatch_loss_db_from_vswr, 0, 100, false, 1e-13},
        {"return_mismatch", lvb_mismatch_loss_db_from_return_loss_db, lvb_return_loss_db_from_mismatch_loss_db, 0.001,
         30, false, 1e-12},
    };
    for (const double ohm : {1.0, 50.0, 75.0, 600.0}) {
        all.push_back({"volts_across_resistance", [=](double v) { return lvb_dbm_from_volts(v, ohm); },
                       [=](double l) { return lvb_volts_from_dbm(l, ohm); }, -12, 6, true, 1e-13});
        all.push_back({"dbuv_across_resistance", [=](double l) { return lvb_dbuv_from_dbm(l, ohm); },
                       [=](double l) { return lvb_dbm_from_dbuv(l, ohm); }, -300, 300, false, 1e-14});
        all.push_back({"isotropic", [=](double l) { return lvb_isotropic_dbm_from_dbuv_per_m(l, 10.0 * ohm); },
                       [=](double l) { return lvb_dbuv_per_m_from_isotropic_dbm(l, 10.0 * ohm); }, -300, 300, false,
                       1e-14});
    }
    return all;
}

TEST(Conversions, RoundTripsGiveTheValueBack) {
    proof::Random random(1);
    for (const Pair &pair : pairs())
        for (int i = 0; i < 500; ++i) {
            const double x = at(pair, random);
            EXPECT_NEAR(pair.back(pair.there(x)), x,
                        pair.tolerance * std::fmax(std::fabs(x), 300.0 * !pair.logarithmic))
                << pair.name;
        }
}

TEST(Conversions, AreMonotone) {
    proof::Random random(2);
    for (const Pair &pair : pairs()) {
        const double direction = pair.there(at({"", {}, {}, pair.low, pair.low, pair.logarithmic, 0}, random)) <
                                         pair.there(at({"", {}, {}, pair.high, pair.high, pair.logarithmic, 0}, random))
                                     ? 1.0
                                     : -1.0;
        for (int i = 0; i < 500; ++i) {
            const double x = at(pair, random);
            const double y = at(pair, random);
            if (std::fabs(x - y) < 1e-9 * std::fabs(x)) continue;
            EXPECT_GT(direction * (pair.there(std::fmax(x, y)) - pair.there(std::fmin(x, y))), 0.0)
                << pair.name << ' ' << x << ' ' << y;
        }
    }
}

TEST(Conversions, ProductsOfPowersAreSumsOfLevels) {
    proof::Random random(3);
    for (int i = 0; i < 1000; ++i) {
        const double a = random.log_uniform(-12, 12);
        const double b = random.log_uniform(-12, 12);
        EXPECT_NEAR(lvb_db_from_power_ratio(a * b), lvb_db_from_power_ratio(a) + lvb_db_from_power_ratio(b), 1e-12);
        EXPECT_NEAR(lvb_dbm_from_mw(a * b), lvb_dbm_from_mw(a) + lvb_db_from_power_ratio(b), 1e-12);
        EXPECT_NEAR(lvb_db_from_amplitude_ratio(a), lvb_db_from_power_ratio(a) * 2.0, 1e-12);
        const double db = random.uniform(-600.0, 600.0);
        EXPECT_NEAR(lvb_amplitude_ratio_from_db(db) / std::sqrt(lvb_power_ratio_from_db(db)), 1.0, 1e-12);
    }
}

TEST(Conversions, WaysAroundAgree) {
    proof::Random random(4);
    for (int i = 0; i < 1000; ++i) {
        const double w = random.log_uniform(-15, 6);
        const double ohm = random.log_uniform(0, 4);
        const double volts = std::sqrt(w * ohm);
        const double mhz = random.log_uniform(-1, 5);
        const double field = random.uniform(-50, 150);
        EXPECT_NEAR(lvb_dbm_from_w(w), lvb_dbm_from_mw(lvb_mw_from_w(w)), 2e-12);
        EXPECT_NEAR(lvb_dbm_from_w(w), lvb_dbm_from_dbw(lvb_dbw_from_w(w)), 2e-12);
        EXPECT_NEAR(lvb_dbm_from_w(w), lvb_dbm_from_dbw(lvb_dbw_from_mw(1000.0 * w)), 2e-12);
        EXPECT_NEAR(lvb_dbm_from_volts(volts, ohm), lvb_dbm_from_w(w), 2e-12);
        EXPECT_NEAR(lvb_dbuv_from_dbm(lvb_dbm_from_w(w), ohm), lvb_dbuv_from_volts(volts), 2e-12);
        EXPECT_NEAR(lvb_volts_from_dbm(lvb_dbm_from_w(w), ohm) / volts, 1.0, 1e-12);
        // a field through an isotropic aperture: power density E^2/Z0 times lambda^2/(4 pi)
        EXPECT_NEAR(lvb_isotropic_dbm_from_dbuv_per_m(field, mhz),
                    lvb_field_strength_dbuv_per_m(0.0, 1.0) * -1.0 + field - lvb_free_space_loss_db(mhz, 1.0), 1e-11);
    }
}

// 1000 mW is a watt, 1 V across 50 ohm is 20 mW, 107 dBuV in 50 ohm is 0 dBm (to 0.01 dB): arithmetic of the
// definitions
TEST(Conversions, PlainFigures) {
    EXPECT_DOUBLE_EQ(lvb_dbm_from_mw(1.0), 0.0);
    EXPECT_DOUBLE_EQ(lvb_dbm_from_w(1.0), 30.0);
    EXPECT_DOUBLE_EQ(lvb_dbw_from_w(1.0), 0.0);
    EXPECT_DOUBLE_EQ(lvb_dbw_from_mw(1.0), -30.0);
    EXPECT_NEAR(lvb_dbm_from_volts(1.0, 50.0), lvb_dbm_from_mw(20.0), 1e-13);
    EXPECT_NEAR(lvb_dbm_from_dbuv(107.0, 50.0), 0.0, 0.011);
    EXPECT_DOUBLE_EQ(lvb_metres_from_feet(1.0), 0.3048);
    EXPECT_DOUBLE_EQ(lvb_metres_from_inches(12.0), lvb_metres_from_feet(1.0));
    EXPECT_DOUBLE_EQ(lvb_metres_from_yards(1.0), lvb_metres_from_feet(3.0));
    EXPECT_DOUBLE_EQ(lvb_metres_from_miles(1.0), lvb_metres_from_feet(5280.0));
    EXPECT_DOUBLE_EQ(lvb_wavelength_m_from_mhz(299.792458), 1.0);
    EXPECT_NEAR(lvb_degc_from_degf(-40.0), -40.0, 1e-12);
    EXPECT_NEAR(lvb_degf_from_degc(100.0), 212.0, 1e-12);
    EXPECT_DOUBLE_EQ(lvb_kelvin_from_degc(-273.15), 0.0);
}

TEST(Conversions, LimitsOfLevels) {
    for (const Function f : {lvb_dbm_from_mw, lvb_dbm_from_w, lvb_dbw_from_w, lvb_dbw_from_mw, lvb_dbuv_from_volts,
                             lvb_dbuv_per_m_from_v_per_m, lvb_db_from_power_ratio, lvb_db_from_amplitude_ratio}) {
        EXPECT_EQ(f(0.0), -infinity);
        EXPECT_EQ(f(infinity), infinity);
    }
    for (const Function f : {lvb_mw_from_dbm, lvb_w_from_dbm, lvb_w_from_dbw, lvb_mw_from_dbw, lvb_volts_from_dbuv,
                             lvb_v_per_m_from_dbuv_per_m, lvb_power_ratio_from_db, lvb_amplitude_ratio_from_db}) {
        EXPECT_EQ(f(-infinity), 0.0);
        EXPECT_EQ(f(infinity), infinity);
    }
    for (const Function f : {lvb_metres_from_feet, lvb_feet_from_metres, lvb_dbm_from_dbw, lvb_dbw_from_dbm,
                             lvb_metres_from_miles, lvb_miles_from_metres, lvb_db_per_100m_from_db_per_100ft}) {
        EXPECT_EQ(f(infinity), infinity);
        EXPECT_EQ(f(-infinity), -infinity);
    }
    EXPECT_EQ(lvb_dbm_from_volts(0.0, 50.0), -infinity);
    EXPECT_EQ(lvb_volts_from_dbm(-infinity, 50.0), 0.0);
}

TEST(Conversions, LengthsAreOdd) {
    proof::Random random(5);
    for (int i = 0; i < 200; ++i) {
        const double x = random.log_uniform(-9, 9);
        for (const Function f :
             {lvb_metres_from_feet, lvb_feet_from_metres, lvb_metres_from_inches, lvb_inches_from_metres,
              lvb_metres_from_yards, lvb_yards_from_metres, lvb_metres_from_miles, lvb_miles_from_metres})
            EXPECT_EQ(f(-x), -f(x));
    }
}

} // namespace
