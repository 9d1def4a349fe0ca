// Maps against MPFR: the level at points of random sites, every step computed anew in 192 bits from the header's
// formulas.
#include "accuracy/real.hpp"
#include "map/sites.hpp"

#include <gtest/gtest.h>

namespace {

using accuracy::Real;

const Real light_m_mhz = Real::decimal("299.792458");

struct Line {
    Real x, y, z;
    Real square() const { return x * x + y * y + z * z; }
};

Line line_to(const proof::Mapped &mapped, const proof::Stage &stage, const lvb_antenna &antenna, std::size_t k) {
    const auto column = static_cast<double>(k % mapped.map.column_count);
    const auto row = static_cast<double>(k / mapped.map.column_count);
    return {Real(mapped.map.x_m) + column * Real(mapped.map.step_x_m) - antenna.x_m,
            Real(mapped.map.y_m) + row * Real(mapped.map.step_y_m) - antenna.y_m,
            Real(stage.site.pack_height_m) - antenna.z_m};
}

/// The cosine between boresight and line of sight.
Real cosine_to(const lvb_antenna &antenna, const Line &line) {
    const Real level = cos_of_degrees(Real(antenna.tilt_deg));
    const Real ahead = line.x * sin_of_degrees(Real(antenna.azimuth_deg)) * level +
                       line.y * cos_of_degrees(Real(antenna.azimuth_deg)) * level +
                       line.z * sin_of_degrees(Real(antenna.tilt_deg));
    return ahead / sqrt(line.square());
}

Real free_space_db(double mhz, const Line &line) {
    return 20.0 * log10(4.0 * Real::pi() * sqrt(line.square()) * mhz / light_m_mhz);
}

/// The largest error of a map of one antenna with a cosine of some gain, where the cosine is greater than `least`; a
/// gain of 0 stands for an isotropic one.
double worst_db(proof::Random &random, double gain_dbi, double least) {
    proof::Stage stage(random.uniform(0.5, 2.0));
    const double mhz = random.uniform(200.0, 3000.0);
    const double x_m = random.uniform(-10.0, 10.0), y_m = random.uniform(-10.0, 10.0), z_m = random.uniform(2.5, 6.0);
    lvb_antenna &antenna =
        stage.add({proof::source(0.0), proof::antenna(), proof::air(), proof::antenna()}, x_m, y_m, z_m, mhz);
    antenna.azimuth_deg = random.uniform(-180.0, 180.0);
    antenna.tilt_deg = random.uniform(-60.0, 20.0);
    if (gain_dbi > 0.0) stage.pattern(antenna, LVB_PATTERN_COSINE).gain_dbi = gain_dbi;
    const double left_m = random.uniform(-15.0, -5.0), front_m = random.uniform(-15.0, -5.0);
    proof::Mapped mapped(stage, left_m, front_m, 0.37, 61, 43);
    EXPECT_EQ(mapped.compute(stage.fault), LVB_OK);
    const Real exponent = ten_to(Real(gain_dbi) / 10.0) / 2.0 - 1.0;
    double worst = 0.0;
    for (std::size_t k = 0; k < mapped.level.size(); ++k) {
        const Line line = line_to(mapped, stage, antenna, k);
        Real level = -free_space_db(mhz, line);
        if (gain_dbi > 0.0) {
            const Real cosine = cosine_to(antenna, line);
            if (!(Real(least) < cosine)) continue;
            level = level + gain_dbi + 10.0 * exponent * log10(cosine);
        }
        if (level < -1400.0) continue; // nothing, before long
        worst = std::fmax(worst, abs(Real(mapped.level[k]) - level).rounded());
    }
    return worst;
}

double worst_of_some(double gain_dbi, double least, int stages = 3) {
    proof::Random random(7);
    double worst = 0.0;
    for (int i = 0; i < stages; ++i) worst = std::fmax(worst, worst_db(random, gain_dbi, least));
    EXPECT_GT(worst, 0.0); // the sum in 192 bits is not the library's own
    return worst;
}

const double least_cosine = std::cos(89.0 * std::acos(-1.0) / 180.0); // as the header's line on accuracy says

TEST(Maps, OfAnIsotropicAntennaAreFreeSpace) { EXPECT_LE(worst_of_some(0.0, 0.0), 1e-12); }

TEST(Maps, OfCosinesLieWithinTenPicodecibels) {
    for (const double gain_dbi : {3.0103, 4.5, 6.0206, 9.0, 10.0, 15.0, 20.0, 30.0, 40.0})
        EXPECT_LE(worst_of_some(gain_dbi, least_cosine), 1e-11) << gain_dbi;
}

TEST(Maps, OfCosinesOfGreatGainLieWithinANanodecibel) {
    // a beam of a degree or two misses many of the stages
    for (const double gain_dbi : {50.0, 60.0}) EXPECT_LE(worst_of_some(gain_dbi, least_cosine, 40), 1e-9) << gain_dbi;
}

} // namespace
