// Patterns and pointing against their formulas in 192 bits: turned step by step, where the library composes the axes.
#include "accuracy/real.hpp"
#include "chain/chains.hpp"
#include "units/random.hpp"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace {

using accuracy::arc_tangent_in_degrees;
using accuracy::cos_of_degrees;
using accuracy::Real;
using accuracy::sin_of_degrees;
using accuracy::squared;
using proof::Random;
using proof::sized;

Real smaller(const Real &a, const Real &b) { return a < b ? a : b; }
double distance(double got, const Real &exact) { return abs(Real(got) - exact).rounded(); }

// ---- Patterns.

Real dipole(const Real &elevation) { // cos(90 sin e) / cos e, with 1 - |sin e| by half angles
    const Real half = (90.0 - abs(elevation)) / 2.0;
    const Real lack = 2.0 * smaller(squared(sin_of_degrees(half)), squared(cos_of_degrees(half)));
    const Real square = squared(2.0 * Real::pi());
    Real sum = 0.0, term = 1.0; // Cin(2 pi)
    for (int k = 1; k < 80; ++k) {
        term = term * square / (2.0 * k * (2.0 * k - 1.0));
        sum = k % 2 ? sum + term / (2.0 * k) : sum - term / (2.0 * k);
    }
    return 20.0 * log10(sin_of_degrees(90.0 * lack) / cos_of_degrees(elevation)) + 10.0 * log10(4.0 / sum);
}

Real cosine(const Real &gain, const Real &exponent, const Real &azimuth, const Real &elevation) {
    return gain + 10.0 * exponent * log10(cos_of_degrees(azimuth) * cos_of_degrees(elevation));
}
Real exponent_of_width(const Real &width) { return -log10(Real(2.0)) / log10(cos_of_degrees(width / 2.0)); }

struct Asked {
    double azimuth, elevation, got;
};
Asked ask(const lvb_pattern &pattern, Random &random) {
    Asked asked{random.uniform(-360.0, 360.0), random.uniform(-90.0, 90.0), 0.0};
    if (random.below(2)) asked.azimuth = random.uniform(-90.0, 90.0) * random.uniform(0.0, 1.0);
    if (random.below(2)) asked.elevation *= random.log_uniform(-4.0, 0.0);
    auto result = sized<lvb_pattern_gain>();
    EXPECT_EQ(lvb_compute_pattern_gain(&pattern, asked.azimuth, asked.elevation, &result, nullptr), LVB_OK);
    asked.got = result.gain_dbi;
    return asked;
}

constexpr double allowed_db = 1e-12; // the header's, above -200 dBi

TEST(Patterns, LieWithinAPicodecibel) {
    Random random(81);
    for (int i = 0; i < 3000; ++i) {
        auto pattern = sized<lvb_pattern>();
        pattern.kind = LVB_PATTERN_HALF_WAVE_DIPOLE;
        Asked asked = ask(pattern, random);
        EXPECT_LE(distance(asked.got, dipole(asked.elevation)), allowed_db) << asked.elevation;

        pattern.kind = LVB_PATTERN_COSINE;
        pattern.gain_dbi = random.uniform(3.1, random.below(2) ? 20.0 : 60.0);
        asked = ask(pattern, random);
        if (asked.got > -200.0) {
            EXPECT_LE(distance(asked.got, cosine(pattern.gain_dbi, ten_to(Real(pattern.gain_dbi) / 10.0) / 2.0 - 1.0,
                                                 asked.azimuth, asked.elevation)),
                      allowed_db)
                << pattern.gain_dbi << " dBi, " << asked.azimuth << ' ' << asked.elevation;
        }

        pattern.gain_dbi = 0.0;
        pattern.beam_width_deg = random.below(2) ? random.uniform(20.0, 180.0) : random.log_uniform(-1.0, 2.2);
        asked = ask(pattern, random);
        const Real exponent = exponent_of_width(pattern.beam_width_deg);
        if (asked.got > -200.0) {
            EXPECT_LE(distance(asked.got,
                               cosine(10.0 * log10(2.0 * (exponent + 1.0)), exponent, asked.azimuth, asked.elevation)),
                      allowed_db)
                << pattern.beam_width_deg << " degrees, " << asked.azimuth << ' ' << asked.elevation;
        }

        pattern = sized<lvb_pattern>();
        pattern.kind = LVB_PATTERN_HELIX;
        pattern.turns = random.uniform(3.0, 100.0);
        pattern.spacing_wavelengths = random.uniform(0.1, 0.5);
        pattern.circumference_wavelengths = random.uniform(0.75, 1.33);
        asked = ask(pattern, random);
        const Real turns_by_spacing = Real(pattern.turns) * pattern.spacing_wavelengths;
        const Real gain = 10.0 * log10(12.0 * turns_by_spacing * squared(pattern.circumference_wavelengths));
        const Real width = 52.0 / (pattern.circumference_wavelengths * sqrt(turns_by_spacing));
        if (asked.got > -200.0) {
            EXPECT_LE(distance(asked.got, cosine(gain, exponent_of_width(width), asked.azimuth, asked.elevation)),
                      allowed_db);
        }
    }
}

TEST(Patterns, OfCutsLieWithinAPicodecibel) {
    Random random(82);
    for (int i = 0; i < 2000; ++i) {
        std::vector<double> azimuths, around, elevations = {-90.0}, up;
        for (double a = random.uniform(-180.0, 0.0), first = a; a < first + 359.0; a += random.uniform(1.0, 150.0)) {
            azimuths.push_back(a);
            around.push_back(random.uniform(-40.0, 0.0));
        }
        for (double e = random.uniform(-89.0, 0.0); e < 89.0; e += random.uniform(1.0, 60.0)) elevations.push_back(e);
        elevations.push_back(90.0);
        for (std::size_t k = 0; k < elevations.size(); ++k) up.push_back(random.uniform(-40.0, 0.0));
        auto azimuth_cut = sized<lvb_azimuth_cut>();
        azimuth_cut.row_count = static_cast<std::uint32_t>(azimuths.size());
        azimuth_cut.azimuth_deg = azimuths.data();
        azimuth_cut.gain_db = around.data();
        auto elevation_cut = sized<lvb_elevation_cut>();
        elevation_cut.row_count = static_cast<std::uint32_t>(elevations.size());
        elevation_cut.elevation_deg = elevations.data();
        elevation_cut.gain_db = up.data();
        auto pattern = sized<lvb_pattern>();
        pattern.kind = LVB_PATTERN_CUTS;
        pattern.gain_dbi = random.uniform(-5.0, 20.0);
        pattern.azimuth_cut = &azimuth_cut;
        pattern.elevation_cut = &elevation_cut;
        const Asked asked = ask(pattern, random);

        // the circle unrolled three times, and a straight search
        Real sum = pattern.gain_dbi;
        std::vector<Real> unrolled, gains;
        for (int turn = -2; turn <= 2; ++turn)
            for (std::size_t k = 0; k < azimuths.size(); ++k) {
                unrolled.push_back(Real(azimuths[k]) + 360.0 * turn);
                gains.push_back(around[k]);
            }
        std::size_t k = 0;
        while (!(Real(asked.azimuth) < unrolled[k + 1])) ++k;
        sum = sum + gains[k] +
              (gains[k + 1] - gains[k]) * (asked.azimuth - unrolled[k]) / (unrolled[k + 1] - unrolled[k]);
        k = 0;
        while (k + 2 < elevations.size() && asked.elevation >= elevations[k + 1]) ++k;
        sum = sum + up[k] +
              (Real(up[k + 1]) - up[k]) * (Real(asked.elevation) - elevations[k]) /
                  (Real(elevations[k + 1]) - elevations[k]);
        EXPECT_LE(distance(asked.got, sum), allowed_db) << asked.azimuth << ' ' << asked.elevation;
    }
}

// ---- Pointing.

using Point = std::array<Real, 3>;

Real dot(const Point &a, const Point &b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
Point cross(const Point &a, const Point &b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
Point unit(const Point &a) {
    const Real size = sqrt(dot(a, a));
    return {a[0] / size, a[1] / size, a[2] / size};
}

// From the stage into the antenna's own frame (right, ahead, up): its azimuth undone, then its tilt, then its roll.
Point seen_by(const lvb_antenna &antenna, const Point &d) {
    const Real sa = sin_of_degrees(antenna.azimuth_deg), ca = cos_of_degrees(antenna.azimuth_deg);
    const Real x1 = ca * d[0] - sa * d[1], y1 = sa * d[0] + ca * d[1];
    const Real st = sin_of_degrees(antenna.tilt_deg), ct = cos_of_degrees(antenna.tilt_deg);
    const Real y2 = ct * y1 + st * d[2], z2 = ct * d[2] - st * y1;
    const Real sr = sin_of_degrees(antenna.roll_deg), cr = cos_of_degrees(antenna.roll_deg);
    return {cr * x1 - sr * z2, y2, sr * x1 + cr * z2};
}

struct Jones {
    Real one, one_later, two, two_later;
};
// The field that an antenna radiates along a line, by components along two directions of the stage across that line.
Jones field_of(const lvb_antenna &antenna, const Point &first, const Point &second) {
    const Real sp = sin_of_degrees(antenna.polarization_deg), cp = cos_of_degrees(antenna.polarization_deg);
    const Point element = {sp, 0.0, cp}, later = {antenna.ellipticity * cp, 0.0, antenna.ellipticity * -sp};
    const Point one = seen_by(antenna, first), two = seen_by(antenna, second);
    return {dot(one, element), dot(one, later), dot(two, element), dot(two, later)};
}
Real polarization_loss(const lvb_antenna &a, const lvb_antenna &b, const Point &line) {
    const Point aside = unit(cross(line, {Real(0.36), Real(-0.48), Real(0.8)}));
    const Point other = unit(cross(line, aside));
    const Jones s = field_of(a, aside, other), t = field_of(b, aside, other);
    const Real in_phase = s.one * t.one - s.one_later * t.one_later + s.two * t.two - s.two_later * t.two_later;
    const Real later = s.one * t.one_later + s.one_later * t.one + s.two * t.two_later + s.two_later * t.two;
    const auto power = [](const Jones &j) {
        return squared(j.one) + squared(j.one_later) + squared(j.two) + squared(j.two_later);
    };
    return -10.0 * log10((squared(in_phase) + squared(later)) / (power(s) * power(t)));
}

lvb_antenna any_antenna(Random &random, bool turned) {
    auto antenna = sized<lvb_antenna>();
    for (double *place : {&antenna.x_m, &antenna.y_m, &antenna.z_m})
        *place = random.sign() * random.log_uniform(-2.0, 3.0);
    antenna.polarization_deg = random.uniform(-360.0, 360.0);
    if (random.below(2)) antenna.ellipticity = random.uniform(-1.0, 1.0);
    antenna.azimuth_deg = turned ? random.uniform(-360.0, 360.0) : 90.0 * static_cast<double>(random.below(8)) - 360.0;
    if (!turned) return antenna;
    antenna.tilt_deg = random.uniform(-90.0, 90.0);
    antenna.roll_deg = random.uniform(-360.0, 360.0);
    return antenna;
}

struct Worst {
    double distance_ulp = 0.0, azimuth = 0.0, elevation = 0.0, polarization = 0.0;
};

Worst worst_of(bool turned, std::uint64_t seed, int count) {
    Random random(seed);
    Worst worst;
    for (int i = 0; i < count; ++i) {
        const lvb_antenna transmit = any_antenna(random, turned), receive = any_antenna(random, turned);
        auto pointing = sized<lvb_pointing>();
        EXPECT_EQ(lvb_compute_pointing(&transmit, &receive, 600.0, &pointing, nullptr), LVB_OK);
        const Point line = {Real(receive.x_m) - transmit.x_m, Real(receive.y_m) - transmit.y_m,
                            Real(receive.z_m) - transmit.z_m};
        const Real size = sqrt(dot(line, line));
        worst.distance_ulp = std::fmax(worst.distance_ulp, distance(pointing.distance_m, size) / size.ulp());
        const Point seen = seen_by(transmit, line);
        const Real level = sqrt(squared(seen[0]) + squared(seen[1]));
        const Real azimuth = arc_tangent_in_degrees(seen[0], seen[1]);
        const Real elevation = arc_tangent_in_degrees(seen[2], level);
        double off = distance(pointing.transmit_azimuth_deg, azimuth);
        if (off > 180.0) off = std::fabs(off - 360.0);
        worst.azimuth = std::fmax(worst.azimuth, off * (level / size).rounded());
        worst.elevation = std::fmax(worst.elevation, distance(pointing.transmit_elevation_deg, elevation));
        const Real loss = polarization_loss(transmit, receive, line);
        if (loss < 60.0)
            worst.polarization = std::fmax(worst.polarization, distance(pointing.polarization_loss_db, loss));
    }
    return worst;
}

void tell(const char *what, const Worst &worst) {
    std::printf("%s: distance %.2f ULP, azimuth %.2g deg, elevation %.2g deg, polarization %.2g dB\n", what,
                worst.distance_ulp, worst.azimuth, worst.elevation, worst.polarization);
}

TEST(Pointing, KeepsItsStatedAccuracy) {
    const Worst along = worst_of(false, 83, 4000), turned = worst_of(true, 84, 4000);
    tell("along the axes", along);
    tell("turned", turned);
    for (const Worst &worst : {along, turned}) {
        EXPECT_LE(worst.distance_ulp, 2.0);
        EXPECT_LE(worst.azimuth, 1e-13); // times the cosine of the elevation
        EXPECT_LE(worst.elevation, 1e-13);
        EXPECT_LE(worst.polarization, 3e-12);
        EXPECT_GT(worst.polarization, 0.0); // not the library's own
    }
}

// On the ground and without turns an azimuth is the arc tangent of two given numbers, and nothing else.
TEST(Pointing, ArcTangentStaysBelowItsBound) {
    Random random(85);
    const auto here = sized<lvb_antenna>();
    double worst = 0.0;
    for (int i = 0; i < 100000; ++i) {
        auto there = sized<lvb_antenna>();
        there.x_m = random.sign() * random.log_uniform(-9.0, 6.0);
        there.y_m = random.sign() * random.log_uniform(-2.0, 6.0);
        if (random.below(2)) { // near the seams of the kernel
            const double turns =
                22.5 * static_cast<double>(random.below(16)) + random.sign() * random.log_uniform(-15.0, 1.0);
            there.x_m = there.y_m * std::tan(turns / 180.0 * 3.14159265358979312) + 0.0; // never -0
        }
        auto pointing = sized<lvb_pointing>();
        if (lvb_compute_pointing(&here, &there, 600.0, &pointing, nullptr) != LVB_OK) continue; // too far
        const Real exact = arc_tangent_in_degrees(there.x_m, there.y_m);
        if (!exact.is_zero()) worst = std::fmax(worst, distance(pointing.transmit_azimuth_deg, exact) / exact.ulp());
    }
    std::printf("arc tangent: %.2f ULP\n", worst);
    EXPECT_LE(worst, 2.5);
    EXPECT_GT(worst, 0.5);
}

} // namespace
