// Properties of the models of a path: limits, symmetry, monotony, and that each is what the header says.
#include "path/paths.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>
#include <limits>
#include <numbers>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

double free_space(double mhz, double metres) { return lvb_free_space_loss_db(mhz, metres); }

TEST(FreeSpacePath, AZeroedPathIsFreeSpaceToTheBit) {
    Random random(61);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(-1, 5), metres = random.log_uniform(-2, 9);
        Way way;
        EXPECT_EQ(way.at(mhz, metres), free_space(mhz, metres));
        EXPECT_EQ(way.loss.free_space_loss_db, way.loss.loss_db);
        EXPECT_EQ(way.loss.diffraction_loss_db, 0.0);
        EXPECT_EQ(way.loss.obstacle_loss_db, 0.0);
        EXPECT_EQ(way.loss.notes & LVB_NOTE_NEAR_FIELD, metres < lvb_wavelength_m_from_mhz(mhz) ? 2u : 0u);
        for (const double unknown : {way.loss.standard_deviation_db, way.loss.break_point_m, way.loss.grazing_angle_deg,
                                     way.loss.reflection_magnitude, way.loss.reflection_phase_deg})
            EXPECT_TRUE(std::isnan(unknown));
    }
}

TEST(FreeSpacePath, HeightsMakeTheDistanceOneAlongTheFloor) {
    Way way;
    EXPECT_EQ(way.heights(5.0, 2.0).at(600.0, 4.0), free_space(600.0, 5.0)); // 3, 4, 5
    EXPECT_EQ(way.heights(2.0, 2.0).at(600.0, 4.0), free_space(600.0, 4.0));
}

// ---- Two rays.

// A floor of vacuum reflects nothing: what remains is the direct ray, to the bit.
TEST(TwoRay, WithoutReflectionIsFreeSpaceOfTheDirectRayToTheBit) {
    Random random(62);
    for (int i = 0; i < 2000; ++i) {
        const double mhz = random.log_uniform(-1, 5), metres = random.log_uniform(-2, 9);
        const double transmit_m = random.log_uniform(-2, 3), receive_m = random.log_uniform(-2, 3);
        Way way = two_ray(transmit_m, receive_m);
        way.ground(1.0, 0.0, static_cast<std::int32_t>(random.below(2)));
        const double loss = way.at(mhz, metres);
        EXPECT_EQ(way.loss.reflection_magnitude, 0.0);
        EXPECT_EQ(loss, way.loss.free_space_loss_db);
        Way direct;
        EXPECT_EQ(loss, direct.heights(way.path.transmit_height_m, way.path.receive_height_m).at(mhz, metres));
    }
}

// Far beyond the break point every floor reflects nearly -1, and the loss is 40 log10 d - 20 log10 (ht hr), whatever
// the frequency. Source: Rappaport, Wireless Communications, 4.6. A real floor adds 1 + R, which falls with the
// distance as the rays' phase does: the law's slope is exact in the end, its constant where antennas stand some
// wavelengths high.
TEST(TwoRay, FollowsTheFourthPowerFarBeyondItsBreakPoint) {
    Random random(63);
    int checked = 0;
    for (int i = 0; i < 2000; ++i) {
        const double mhz = random.uniform(600.0, 6000.0);
        const double transmit_m = random.uniform(3.0, 10.0), receive_m = random.uniform(3.0, 10.0);
        const double permittivity = random.uniform(2.0, 30.0), conductivity = random.log_uniform(-4, 1);
        Way way = two_ray(transmit_m, receive_m);
        way.ground(permittivity, conductivity, LVB_POLARIZATION_HORIZONTAL);
        const double far = random.log_uniform(2.0, 5) *
                           lvb_two_ray_break_point_m(mhz, way.path.transmit_height_m, way.path.receive_height_m);
        if (far > 1e8) continue;
        ++checked;
        const double law =
            40.0 * std::log10(far) - 20.0 * std::log10(way.path.transmit_height_m * way.path.receive_height_m);
        EXPECT_NEAR(way.at(mhz, far), law, 0.1);
        EXPECT_NEAR(way.loss.reflection_magnitude, 1.0, 0.02);
        EXPECT_NEAR(std::fabs(way.loss.reflection_phase_deg), 180.0, 1.0);
    }
    EXPECT_GT(checked, 1500);
}

TEST(TwoRay, LosesFortyDecibelsPerDecadeThereWhateverTheFloor) {
    Random random(73);
    for (int i = 0; i < 2000; ++i) {
        const double mhz = random.log_uniform(2, 4);
        const double transmit_m = random.uniform(0.5, 10.0), receive_m = random.uniform(0.5, 10.0);
        const double permittivity = random.uniform(2.0, 30.0), conductivity = random.log_uniform(-4, 1);
        Way way = two_ray(transmit_m, receive_m);
        way.ground(permittivity, conductivity, static_cast<std::int32_t>(random.below(2)));
        EXPECT_NEAR(way.at(mhz, 1e8) - way.at(mhz, 1e7), 40.0, 0.1);
    }
}

// For either polarization and any floor: to the first order in the grazing angle R = -1 + 2 q sin(angle), so that
// 1 + R exp(-j phase) is the phase times j - and that of a perfect floor - times 1 - j q (lambda / 2 pi)(1 / ht + 1 /
// hr). Source: derived from the coefficients of ITU-R P.2040.
TEST(TwoRay, IsShiftedByARealFloorAsItsCoefficientSays) {
    Random random(74);
    double largest[2] = {};
    for (int i = 0; i < 4000; ++i) {
        const double mhz = random.log_uniform(2.0, 3.8), ht = random.uniform(1.0, 10.0), hr = random.uniform(1.0, 10.0);
        const double permittivity = random.uniform(2.0, 30.0), conductivity = random.log_uniform(-4, 0.5);
        const auto polarization = static_cast<std::int32_t>(random.below(2));
        constexpr double electric_constant = 8.8541878128e-12; // F/m, CODATA
        const std::complex<double> e(permittivity, -conductivity / (2e6 * std::numbers::pi * mhz * electric_constant));
        const std::complex<double> q = (polarization == LVB_POLARIZATION_HORIZONTAL ? 1.0 : e) / std::sqrt(e - 1.0);
        const double lambda = 299.792458 / mhz;
        const double shift =
            -20.0 * std::log10(std::abs(1.0 - std::complex<double>(0.0, 1.0) * q * (lambda / (2.0 * std::numbers::pi)) *
                                                  (1.0 / ht + 1.0 / hr)));
        largest[polarization] = std::max(largest[polarization], std::fabs(shift));
        // where both the phase and the next order of the coefficient are below a thousandth or so
        const double far = 2000.0 * std::max(ht * hr / lambda, (ht + hr) * (std::abs(q) + 1.0));
        Way way = two_ray(ht, hr);
        way.ground(permittivity, conductivity, polarization);
        EXPECT_NEAR(way.at(mhz, far), 40.0 * std::log10(far) - 20.0 * std::log10(ht * hr) + shift, 0.02);
    }
    EXPECT_LT(largest[LVB_POLARIZATION_HORIZONTAL], 1.5);
    EXPECT_GT(largest[LVB_POLARIZATION_VERTICAL], 3.0); // no law without the floor's own term
}

// With a vertical field the floor's surface wave is missing, but the law is the same in the end.
TEST(TwoRay, FollowsItWithAVerticalFieldToo) {
    Way way = two_ray(2.0, 1.5);
    EXPECT_NEAR(way.at(600.0, 1e6) - way.at(600.0, 1e5), 40.0, 0.1);
    EXPECT_NEAR(way.at(600.0, 1e6), 240.0 - 20.0 * std::log10(3.0), 0.1);
}

TEST(TwoRay, IsTheSameFromBothEnds) {
    Random random(64);
    for (int i = 0; i < 1000; ++i) {
        Way way = random_way(random);
        if (way.path.transmit_height_m == 0.0) continue;
        const double mhz = random.uniform(650.0, 6000.0), metres = random.uniform(20.0, 25.0);
        Way back = way;
        back.heights(way.path.receive_height_m, way.path.transmit_height_m);
        const auto in_the_antenna = [&](const lvb_edge &edge) { // mirrored it would be nearer than is accepted
            return edge.distance_m < metres && edge.distance_m > metres - 0.0101;
        };
        if (std::any_of(way.edges.begin(), way.edges.end(), in_the_antenna)) continue;
        back.edges.clear();
        for (const lvb_edge &edge : way.edges)
            if (edge.distance_m < metres - 0.01)
                back.edges.insert(back.edges.begin(), {metres - edge.distance_m, edge.height_m});
        const double forth = way.at(mhz, metres);
        if (std::isnan(forth)) continue; // beyond what its model is stated for
        EXPECT_NEAR(back.at(mhz, metres), forth, 1e-7) << i << " model " << way.path.model;
    }
}

// |1 + R| lies between 0 and 2: never more than 6 dB above the direct ray; and the reflection is passive.
TEST(TwoRay, GainsAtMostSixDecibelsAndReflectsNoMoreThanItGets) {
    Random random(65);
    double most = 0.0;
    for (int i = 0; i < 5000; ++i) {
        const double transmit_m = random.log_uniform(-2, 2), receive_m = random.log_uniform(-2, 2);
        const double permittivity = random.log_uniform(0, 3);
        const double conductivity = random.below(3) ? random.log_uniform(-6, 8) : 0.0;
        Way way = two_ray(transmit_m, receive_m);
        way.ground(permittivity, conductivity, static_cast<std::int32_t>(random.below(2)));
        const double mhz = random.log_uniform(0, 5), metres = random.log_uniform(-1, 5);
        const double loss = way.at(mhz, metres);
        most = std::max(most, way.loss.free_space_loss_db - loss);
        EXPECT_LE(way.loss.free_space_loss_db - loss, 20.0 * std::log10(2.0) + 1e-9);
        EXPECT_GE(way.loss.reflection_magnitude, 0.0);
        EXPECT_LE(way.loss.reflection_magnitude, 1.0 + 1e-12);
        EXPECT_TRUE(std::isfinite(loss));
    }
    EXPECT_GT(most, 5.0); // the bound is met, not only kept
}

// tan of the angle of no reflection is 1 / sqrt(permittivity), for a vertical field over a lossless floor.
// Source: Rappaport, Wireless Communications, 4.5 (Brewster angle).
TEST(TwoRay, HasTheBrewsterAngle) {
    for (const double permittivity : {2.0, 5.0, 15.0}) {
        Way way = two_ray(1.0, 1.0);
        way.ground(permittivity, 0.0);
        ASSERT_EQ(way.compute(600.0, 2.0 * std::sqrt(permittivity)), LVB_OK);
        EXPECT_NEAR(way.loss.reflection_magnitude, 0.0, 1e-14);
        EXPECT_NEAR(way.loss.grazing_angle_deg, std::atan(1.0 / std::sqrt(permittivity)) * 180.0 / std::numbers::pi,
                    1e-12);
        EXPECT_NEAR(way.loss.loss_db, way.loss.free_space_loss_db, 1e-12);
    }
}

// ---- Log-distance, indoor, site-general.

TEST(LogDistance, AgreesWithItsPlainFunctionAndWithFreeSpace) {
    Random random(66);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(2, 4), metres = random.log_uniform(0.5, 4),
                     exponent = random.uniform(1.0, 6.0);
        Way way = log_distance(exponent);
        EXPECT_NEAR(way.at(mhz, metres), lvb_log_distance_loss_db(free_space(mhz, 1.0), exponent, metres), 1e-12);
        way.path.reference_loss_db = 40.0;
        way.path.reference_distance_m = 3.0;
        EXPECT_NEAR(way.at(mhz, metres), lvb_log_distance_loss_db(40.0, exponent, metres / 3.0), 1e-12);
        EXPECT_EQ(way.at(mhz, 3.0), 40.0);
        EXPECT_NEAR(log_distance(2.0).at(mhz, metres), free_space(mhz, metres), 1e-12);
    }
}

TEST(Indoor, AgreesWithItsPlainFunctionAndAddsFloors) {
    Random random(67);
    for (int i = 0; i < 1000; ++i) {
        const double mhz = random.log_uniform(2.5, 5), metres = random.log_uniform(0, 3),
                     n = random.uniform(1.0, 100.0);
        Way way = indoor(n);
        EXPECT_EQ(way.at(mhz, metres), lvb_indoor_loss_db(mhz, metres, n));
        way.path.floor_count = 2;
        way.path.floor_loss_db = 9.5;
        EXPECT_NEAR(way.at(mhz, metres), lvb_indoor_loss_db(mhz, metres, n) + 19.0, 1e-12);
        EXPECT_EQ(way.loss.obstacle_loss_db, 19.0);
    }
    // coefficient 20 is the free-space slope; the recommendation's 28 stands for 27.55
    EXPECT_NEAR(lvb_indoor_loss_db(900.0, 20.0, 20.0), free_space(900.0, 20.0), 0.45);
}

TEST(SiteGeneral, GrowsWithDistanceAndFrequencyAsItsCoefficientsSay) {
    const double slopes[] = {1.46, 2.46, 1.63, 2.77, 2.31, 3.79}, powers[] = {2.03, 2.38, 2.25, 2.48, 2.06, 1.34};
    for (std::int32_t environment = 1; environment <= 6; ++environment) {
        Way way = site(environment);
        const double once = way.at(1000.0, 10.0);
        EXPECT_NEAR(way.at(1000.0, 20.0) - once, slopes[environment - 1] * 10.0 * std::log10(2.0), 1e-12);
        EXPECT_NEAR(way.at(10000.0, 10.0) - once, powers[environment - 1] * 10.0, 1e-12);
        EXPECT_GT(way.loss.standard_deviation_db, 2.0);
    }
}

// ---- Every model.

TEST(EveryModel, LosesMoreFurtherAway) {
    Random random(68);
    for (Way &way : one_of_each()) {
        if (way.path.model == LVB_PATH_TWO_RAY) continue; // it swings
        for (int i = 0; i < 300; ++i) {
            const double near = random.uniform(2.0, 100.0), far = near * (1.0 + random.log_uniform(-6, -0.3));
            EXPECT_LT(way.at(900.0, near), way.at(900.0, far)) << way.path.model;
        }
    }
}

TEST(EveryModel, SumsItsParts) {
    Random random(69);
    int edges = 0;
    for (int i = 0; i < 3000; ++i) {
        Way way = random_way(random);
        const double mhz = random.uniform(650.0, 6000.0), metres = random.uniform(4.0, 27.0);
        if (way.compute(mhz, metres) != LVB_OK) continue;
        const lvb_path_loss &loss = way.loss;
        EXPECT_EQ(loss.loss_db, loss.base_loss_db + loss.diffraction_loss_db + loss.obstacle_loss_db);
        EXPECT_EQ(std::isnan(loss.standard_deviation_db),
                  way.path.model != LVB_PATH_SITE_GENERAL && way.path.standard_deviation_db == 0.0);
        EXPECT_EQ(std::isnan(loss.break_point_m), way.path.model != LVB_PATH_TWO_RAY);
        EXPECT_GE(loss.diffraction_loss_db, 0.0);
        if (loss.diffraction_loss_db > 0.0) ++edges;
    }
    EXPECT_GT(edges, 200);
}

// What was measured around the law is told beside it and changes nothing else.
TEST(EmpiricalModels, TellTheHostsDeviation) {
    for (Way way : {indoor(), log_distance()}) {
        const double loss = way.at(900.0, 20.0);
        EXPECT_TRUE(std::isnan(way.loss.standard_deviation_db));
        way.path.standard_deviation_db = 9.5;
        EXPECT_EQ(way.at(900.0, 20.0), loss);
        EXPECT_EQ(way.loss.standard_deviation_db, 9.5);
    }
}

TEST(LogDistance, AddsItsWalls) {
    Way way = log_distance();
    const double open = way.at(900.0, 30.0);
    way.path.floor_count = 2;
    way.path.floor_loss_db = 9.5;
    way.path.wall_count = 3;
    way.path.wall_loss_db = 4.0;
    EXPECT_NEAR(way.at(900.0, 30.0), open + 31.0, 1e-12);
    EXPECT_EQ(way.loss.obstacle_loss_db, 31.0);
}

TEST(RadiatingCable, FallsOffAcrossByItsExponent) {
    Way way = radiating_cable();
    const double at_2_m = way.at(600.0, 50.0);
    way.path.lateral_distance_m = 2.0;
    EXPECT_EQ(way.at(600.0, 50.0), at_2_m);
    way.path.lateral_distance_m = 20.0;
    way.path.exponent = 1.0;
    EXPECT_NEAR(way.at(600.0, 50.0), at_2_m + 10.0, 1e-12);
    way.path.exponent = 2.0;
    EXPECT_NEAR(way.at(600.0, 50.0), at_2_m + 20.0, 1e-12);
    EXPECT_EQ(way.loss.free_space_loss_db, free_space(600.0, 20.0));
}

// ---- Edges.

constexpr double mhz = 600.0;

Way over(std::vector<lvb_edge> edges, double transmit_m = 1.5, double receive_m = 1.5) {
    Way way;
    way.edges = std::move(edges);
    return way.heights(transmit_m, receive_m);
}
double loss_behind(std::vector<lvb_edge> edges, double distance_m, double transmit_m = 1.5, double receive_m = 1.5) {
    Way way = over(std::move(edges), transmit_m, receive_m);
    EXPECT_EQ(way.compute(mhz, distance_m), LVB_OK);
    return way.loss.diffraction_loss_db;
}

TEST(Edges, OneIsItsPlainFunction) {
    Random random(70);
    for (int i = 0; i < 1000; ++i) {
        const double total = random.log_uniform(0.5, 4), at = total * random.uniform(0.05, 0.95);
        const double height = random.uniform(0.1, 8.0), line = 1.0 + (4.0 - 1.0) * (at / total);
        const double v = lvb_knife_edge_parameter(height - line, lvb_fresnel_radius_m(mhz, at, total - at));
        EXPECT_NEAR(loss_behind({{at, height}}, total, 1.0, 4.0), lvb_knife_edge_loss_db(v), 1e-9);
    }
}

TEST(Edges, BeyondTheReceiverAndFarBelowTheLineDoNotCount) {
    EXPECT_EQ(loss_behind({{10.0, 50.0}, {30.0, 50.0}}, 10.0), 0.0);
    EXPECT_EQ(loss_behind({{5.0, -50.0}, {6.0, -1.0}}, 10.0), 0.0);
    const double one = loss_behind({{5.0, 2.5}}, 10.0);
    EXPECT_EQ(loss_behind({{10.0, 50.0}, {5.0, 2.5}, {7.0, -40.0}}, 10.0), one);
}

TEST(Edges, ComeInAnyOrder) {
    Random random(71);
    for (int i = 0; i < 300; ++i) {
        std::vector<lvb_edge> edges;
        for (int k = 0; k < 5; ++k) edges.push_back({random.uniform(1.0, 49.0), random.uniform(0.5, 4.0)});
        const double loss = loss_behind(edges, 50.0);
        std::swap(edges[0], edges[random.below(5)]);
        std::swap(edges[2], edges[random.below(5)]);
        EXPECT_EQ(loss_behind(edges, 50.0), loss);
    }
}

TEST(Edges, AHigherOneLosesMoreOrTheSame) {
    for (double height = -1.0; height < 6.0; height += 0.01)
        EXPECT_LE(loss_behind({{4.0, height}}, 10.0), loss_behind({{4.0, height + 0.01}}, 10.0));
}

// Equally spaced edges that all touch the line of sight: the field is exactly 1 / (n + 1) of that in free space.
// Source: derived, the multiple Fresnel integral at zero height. The recommendation's correction brings the sum of
// knife edges there.
TEST(Edges, TouchingTheLineOfSightAreNearTheExactField) {
    EXPECT_NEAR(loss_behind({{10.0, 1.5}}, 20.0), 20.0 * std::log10(2.0), 0.02);
    EXPECT_NEAR(loss_behind({{10.0, 1.5}, {20.0, 1.5}}, 30.0), 20.0 * std::log10(3.0), 0.1);
    EXPECT_NEAR(loss_behind({{10.0, 1.5}, {20.0, 1.5}, {30.0, 1.5}}, 40.0), 20.0 * std::log10(4.0), 0.45);
}

// A small change of an edge changes the loss a little, also where a second edge sinks below the line of sight.
TEST(Edges, LossIsContinuous) {
    constexpr double step = 1e-5;
    double worst = 0.0;
    for (double first = -0.6; first < 1.2; first += 0.05)
        for (double second = -0.6; second < 1.2; second += 0.001) {
            const double change = loss_behind({{10.0, 1.5 + first}, {22.0, 1.5 + second + step}}, 30.0) -
                                  loss_behind({{10.0, 1.5 + first}, {22.0, 1.5 + second}}, 30.0);
            worst = std::max(worst, std::fabs(change));
        }
    EXPECT_LT(worst, 0.1);
}

TEST(KnifeEdge, Limits) {
    EXPECT_EQ(lvb_knife_edge_loss_db(infinity), infinity);
    EXPECT_EQ(lvb_knife_edge_loss_db(-infinity), 0.0);
    EXPECT_EQ(lvb_knife_edge_loss_db(-0.78), 0.0);
    EXPECT_NEAR(lvb_knife_edge_loss_db(std::numeric_limits<double>::max()),
                6.9 + 20.0 * std::log10(2.0) + 20.0 * 308.2547, 0.1);
    for (double v = -3.0; v < 50.0; v += 0.01) EXPECT_LE(lvb_knife_edge_loss_db(v), lvb_knife_edge_loss_db(v + 0.01));
    EXPECT_EQ(lvb_two_ray_break_point_m(600.0, 0.0, 2.0), 0.0);
}

TEST(FresnelRadius, IsSymmetricAndWidestInTheMiddle) {
    Random random(72);
    for (int i = 0; i < 1000; ++i) {
        const double a = random.log_uniform(-2, 6), b = random.log_uniform(-2, 6), f = random.log_uniform(0, 5);
        EXPECT_EQ(lvb_fresnel_radius_m(f, a, b), lvb_fresnel_radius_m(f, b, a));
        EXPECT_LE(lvb_fresnel_radius_m(f, a, b), lvb_fresnel_radius_m(f, (a + b) / 2.0, (a + b) / 2.0) * (1.0 + 1e-12));
        // an edge of one radius has the parameter sqrt(2)
        EXPECT_NEAR(lvb_knife_edge_parameter(lvb_fresnel_radius_m(f, a, b), lvb_fresnel_radius_m(f, a, b)),
                    std::numbers::sqrt2, 1e-15);
    }
}

} // namespace
