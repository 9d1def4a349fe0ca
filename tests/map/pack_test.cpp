// The antenna of a pack that turns with its wearer: polarization and pattern at every point.
#include "map/sites.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
const double pi = std::acos(-1.0);
double azimuth_deg(double dx, double dy) { return std::atan2(dx, dy) * 180.0 / pi; }

/// One antenna at (0, 0) whose boresight is along y, and a pack at its height.
struct Facing {
    Stage stage{2.0};
    lvb_antenna pack = sized<lvb_antenna>();
    lvb_antenna &antenna = stage.add(chain_out(), 0.0, 0.0, 2.0);

    Facing() { stage.site.pack_antenna = &pack; }
    /// What of the level at (0, 5) is lost to polarization and pattern; near_db is what of the near level is.
    double lost_db(double *near_db = nullptr) {
        Mapped with(stage, 0.0, 5.0, 1.0, 1, 1);
        EXPECT_EQ(with.compute(stage.fault), LVB_OK) << lvb_field_name(stage.fault.field);
        Stage plain(2.0);
        plain.add(chain_out(), 0.0, 0.0, 2.0);
        Mapped without(plain, 0.0, 5.0, 1.0, 1, 1);
        EXPECT_EQ(without.compute(plain.fault), LVB_OK);
        if (near_db != nullptr) *near_db = with.headroom[0] - without.headroom[0];
        return without.level[0] - with.level[0];
    }
};

// Balanis, Antenna Theory, 2.12: the polarization loss factor is the squared cosine of the angle between two linear
// antennas, and a half between a linear and a circular one.
TEST(Pack, LosesWhatTheAngleBetweenTwoLinearAntennasSays) {
    for (const double angle_deg : {0.0, 20.0, 45.0, 60.0, 80.0})
        for (const bool rolls : {false, true}) {
            Facing upright;
            (rolls ? upright.antenna.roll_deg : upright.antenna.polarization_deg) = angle_deg;
            double near_db = 1.0;
            const double expected = -20.0 * std::log10(std::cos(angle_deg * pi / 180.0));
            EXPECT_NEAR(upright.lost_db(&near_db), expected, 1e-12) << angle_deg;
            EXPECT_NEAR(near_db, 0.0, 1e-12); // the wearer may turn
            Facing leaning;
            leaning.pack.roll_deg = angle_deg;
            EXPECT_NEAR(leaning.lost_db(), expected, 1e-12);
        }
    Facing slant;
    slant.antenna.polarization_deg = 45.0;
    EXPECT_NEAR(slant.lost_db(), 3.0103, 5e-5); // 10 log10 2
    Facing circular;
    circular.antenna.ellipticity = 1.0;
    circular.pack.roll_deg = 33.0;
    EXPECT_NEAR(circular.lost_db(), 3.0103, 5e-5);
}

TEST(Pack, CrossedReceivesNothingOrWhatReflectionsLeave) {
    Facing crossed;
    crossed.antenna.polarization_deg = 90.0;
    EXPECT_EQ(crossed.lost_db(), infinity);
    crossed.stage.site.most_polarization_loss_db = 20.0;
    EXPECT_NEAR(crossed.lost_db(), 20.0, 1e-12);
    crossed.antenna.polarization_deg = 60.0; // 6 dB by itself
    EXPECT_NEAR(crossed.lost_db(), 20.0 * std::log10(2.0), 1e-12);
    Facing senses; // right-hand against left-hand circular
    senses.antenna.ellipticity = 1.0;
    senses.pack.ellipticity = -1.0;
    senses.stage.site.facing_azimuth_deg = 180.0; // toward the antenna: behind, crossed elements have the other sense
    EXPECT_EQ(senses.lost_db(), infinity);
}

// A whip that lies across the wearer's back points at the antenna when the wearer turns by a quarter.
TEST(Pack, TurnsWithItsWearer) {
    for (const double faced_deg : {0.0, 30.0, -60.0, 90.0, 180.0, 270.0}) {
        Facing lying;
        lying.antenna.polarization_deg = 90.0;
        lying.pack.roll_deg = 90.0;
        lying.stage.site.facing_azimuth_deg = faced_deg;
        lying.stage.pattern(lying.pack, LVB_PATTERN_HALF_WAVE_DIPOLE);
        lvb_site &site = lying.stage.site;
        Mapped mapped(lying.stage, 0.0, 5.0, 1.0, 1, 1);
        ASSERT_EQ(mapped.compute(lying.stage.fault), LVB_OK);
        const double seen_deg = 90.0 - faced_deg; // between the whip and the line of sight
        const double s = std::sin(seen_deg * pi / 180.0), c = std::cos(seen_deg * pi / 180.0);
        const double dipole_db = 20.0 * std::log10(std::abs(std::cos(0.5 * pi * c) / s)); // Balanis, 4.6
        const double dipole_dbi =
            10.0 * std::log10(4.0 / 2.437653393057224); // the integral of (1 - cos t) / t up to 2 pi
        site.pack_antenna = nullptr;
        lying.antenna.polarization_deg = 0.0;
        const double turned = site.facing_azimuth_deg;
        site.facing_azimuth_deg = 0.0;
        Mapped isotropic(lying.stage, 0.0, 5.0, 1.0, 1, 1);
        ASSERT_EQ(isotropic.compute(lying.stage.fault), LVB_OK);
        const double own_dbi = -2.0; // of the stage, which the pattern replaces
        const double level = isotropic.level[0] - own_dbi + dipole_dbi + dipole_db;
        if (std::abs(s) < 1e-9) EXPECT_LT(mapped.level[0], -300.0) << turned;
        else EXPECT_NEAR(mapped.level[0], level, 1e-11) << turned;
        EXPECT_NEAR(mapped.headroom[0], isotropic.headroom[0] + own_dbi - dipole_dbi, 1e-11);
    }
}

TEST(Pack, NextToTheAntennaHasNoDirectionAndLosesNothing) {
    Facing crossed;
    crossed.antenna.polarization_deg = 90.0;
    Mapped at(crossed.stage, 0.0, 0.0, 1.0, 1, 1);
    ASSERT_EQ(at.compute(crossed.stage.fault), LVB_OK);
    constexpr double window_db = 65.0, allowance_db = 20.0; // which alone lies between the far and the near level
    EXPECT_NEAR(at.margin[0] + at.headroom[0], window_db - allowance_db, 1e-11);
}

/// Turns, patterns and polarization at random; a helix has the sense that it must have.
void turn_at_random(lvb_antenna &antenna, Stage &stage, Random &random) {
    antenna.azimuth_deg = random.uniform(-180.0, 180.0);
    antenna.tilt_deg = random.uniform(-60.0, 60.0);
    antenna.roll_deg = random.uniform(-180.0, 180.0);
    const std::uint64_t kind = random.below(4);
    if (kind == 0) {
        stage.pattern(antenna, LVB_PATTERN_HALF_WAVE_DIPOLE);
        return;
    }
    if (kind == 1) {
        lvb_pattern &helix = stage.pattern(antenna, LVB_PATTERN_HELIX);
        helix.turns = 5.0;
        helix.spacing_wavelengths = 0.24;
        helix.circumference_wavelengths = 1.1;
        antenna.ellipticity = random.below(2) ? 0.9 : -0.9;
        return;
    }
    if (kind == 2) stage.pattern(antenna, LVB_PATTERN_COSINE).gain_dbi = 7.0;
    antenna.polarization_deg = random.uniform(-180.0, 180.0);
    if (random.below(2)) antenna.ellipticity = random.uniform(-1.0, 1.0);
}

double azimuth_faced(const Stage &stage, double x, double y) {
    const lvb_site &site = stage.site;
    const bool by_antenna = site.facing >= LVB_FACING_ANTENNA;
    if (site.facing == LVB_FACING_AZIMUTH) return site.facing_azimuth_deg;
    const lvb_antenna &faced = stage.placed[site.facing_antenna];
    const double toward =
        azimuth_deg((by_antenna ? faced.x_m : site.facing_x_m) - x, (by_antenna ? faced.y_m : site.facing_y_m) - y);
    return site.facing == LVB_FACING_AWAY ? toward + 180.0 : toward;
}

// At every point the antennas see each other as lvb_compute_pointing says of them, whatever else a site has.
TEST(Pack, SeesAnAntennaAsPointingSaysAtEachPoint) {
    Random random(2026);
    std::size_t seen = 0;
    for (int turn = 0; turn < 60; ++turn) {
        Stage stage;
        stage.site.direction = static_cast<std::int32_t>(random.below(2));
        const bool inbound = stage.site.direction == LVB_DIRECTION_INBOUND;
        const double x_m = random.uniform(-5.0, 5.0), y_m = random.uniform(-5.0, 5.0);
        lvb_antenna &antenna = stage.add(chain_out(), x_m, y_m, random.uniform(1.0, 4.0));
        turn_at_random(antenna, stage, random);
        lvb_antenna pack = sized<lvb_antenna>();
        turn_at_random(pack, stage, random);
        stage.site.pack_antenna = &pack;
        stage.site.facing = static_cast<std::int32_t>(random.below(4));
        if (stage.site.facing == LVB_FACING_AZIMUTH) stage.site.facing_azimuth_deg = random.uniform(-360.0, 360.0);
        if (stage.site.facing == LVB_FACING_POINT) stage.site.facing_y_m = random.uniform(-20.0, 20.0);
        stage.screen(-3.0, 1.0, 3.0, 2.0, 0.0, 2.0, 8.0);
        Mapped mapped(stage, -6.0, -6.0, 0.77, 16, 16);
        ASSERT_EQ(mapped.compute(stage.fault), LVB_OK) << lvb_field_name(stage.fault.field);
        // the same without polarization, and with the gain of the pack's stage
        const lvb_site polarized = stage.site;
        const lvb_antenna given = antenna;
        stage.site.pack_antenna = nullptr;
        stage.site.facing = 0;
        stage.site.facing_azimuth_deg = stage.site.facing_y_m = 0.0;
        antenna.polarization_deg = antenna.ellipticity = 0.0;
        std::vector<lvb_stage> &chain = stage.chains[0];
        lvb_stage &pack_stage = chain[inbound ? 2 : 5];
        ASSERT_EQ(pack_stage.kind, LVB_KIND_ANTENNA);
        const double stage_dbi = pack_stage.gain_db;
        Mapped plain(stage, -6.0, -6.0, 0.77, 16, 16);
        ASSERT_EQ(plain.compute(stage.fault), LVB_OK);
        stage.site = polarized;
        for (std::size_t k = 0; k < mapped.level.size(); ++k) {
            lvb_antenna there = pack;
            there.x_m = mapped.x(k);
            there.y_m = mapped.y(k);
            there.z_m = stage.site.pack_height_m;
            there.azimuth_deg = std::remainder(pack.azimuth_deg + azimuth_faced(stage, there.x_m, there.y_m), 360.0);
            auto pointing = sized<lvb_pointing>();
            ASSERT_EQ(lvb_compute_pointing(&given, &there, 600.0, &pointing, nullptr), LVB_OK);
            const double turned_dbi = pack.pattern != nullptr ? pointing.receive_gain_dbi : stage_dbi;
            const double expected = plain.level[k] - stage_dbi + turned_dbi - pointing.polarization_loss_db;
            if (pointing.polarization_loss_db > 60.0 || turned_dbi < -60.0 || plain.level[k] < -200.0)
                continue; // next to a null, where directions lose digits
            ++seen;
            EXPECT_NEAR(mapped.level[k], expected, 1e-9) << turn << " " << k;
            auto gain = sized<lvb_pattern_gain>();
            double most_dbi = stage_dbi;
            if (pack.pattern != nullptr) {
                ASSERT_EQ(lvb_compute_pattern_gain(pack.pattern, 0.0, 0.0, &gain, nullptr), LVB_OK);
                most_dbi = gain.maximum_dbi;
            }
            EXPECT_NEAR(mapped.headroom[k], plain.headroom[k] + stage_dbi - most_dbi, 1e-11);
        }
    }
    EXPECT_GT(seen, 7000u); // of 15360, half of which lie behind a cosine
}

// Two vertical wires see each other without loss from everywhere.
TEST(Pack, UprightLosesNothingToAnUprightAntennaAnywhere) {
    Stage stage(1.0);
    lvb_antenna pack = sized<lvb_antenna>();
    stage.add(chain_out(), 0.3, 0.4, 6.0);
    Mapped without(stage, -6.0, -6.0, 0.5, 25, 25);
    ASSERT_EQ(without.compute(stage.fault), LVB_OK);
    stage.site.pack_antenna = &pack;
    Mapped with(stage, -6.0, -6.0, 0.5, 25, 25);
    ASSERT_EQ(with.compute(stage.fault), LVB_OK);
    for (std::size_t k = 0; k < with.level.size(); ++k) EXPECT_NEAR(with.level[k], without.level[k], 1e-11);
}

} // namespace
