// Patterns, places, paths, bodies, noise, limits, exposure and neighbours: what a scenario may say of them, what the
// page and the JSON answer tell, and what is refused.
//
// Expected values are printed ones, or worked here from the named formula; rows named with a book are those of
// tests/reference.
#include "run.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <complex>
#include <cstdio>
#include <numbers>
#include <sstream>

namespace desk_test {
namespace {

using Json = nlohmann::json;

constexpr double degree = std::numbers::pi / 180.0;
constexpr double dipole_dbi = 2.150880;            // half-wave dipole, Balanis, Antenna Theory, 4.6
constexpr double thermal_dbm_per_hz = -173.975188; // k 290 K, k of the SI
constexpr double exact = 1e-6;

double db(double ratio) { return 10.0 * std::log10(ratio); }
double ratio(double decibels) { return std::pow(10.0, decibels / 10.0); }
// ITU-R P.525 with the exact speed of light.
double free_space_db(double mhz, double metres) {
    return 20.0 * std::log10(4.0 * std::numbers::pi * metres * mhz / 299.792458);
}

// A link of 0 dBm whose pieces a test exchanges.
struct Pieces {
    std::string link = R"("far_distance_m": 20, "near_distance_m": 2)";
    std::string source = R"("power_dbm": 0)";
    std::string transmit = R"("gain_dbi": 0)";
    std::string air;
    std::string between;
    std::string receive = R"("gain_dbi": 0)";
    std::string behind;
    std::string receiver = R"("floor_dbm": -100, "ceiling_dbm": -10)";
    std::string frequency = "600";
    std::string scenario;
};

std::string text_of(const Pieces &pieces) {
    const auto more = [](const std::string &keys) { return keys.empty() ? "" : ",\n" + keys; };
    return "{\"production\": \"T\", \"links\": [{\"name\": \"A\",\n\"frequency_mhz\": " + pieces.frequency +
           more(pieces.link) + ",\n\"stages\": [\n{\"kind\": \"source\", " + pieces.source +
           "},\n{\"kind\": \"antenna\"" + more(pieces.transmit) + "},\n{\"kind\": \"air\"" + more(pieces.air) + "},\n" +
           pieces.between + "{\"kind\": \"antenna\"" + more(pieces.receive) + "},\n" + pieces.behind +
           "{\"kind\": \"receiver\", " + pieces.receiver + "}]}]" + more(pieces.scenario) + "}";
}

Printout page_of(const Pieces &pieces) { return run({"budget", TemporaryFile(text_of(pieces)).path()}); }

// The page's words with single spaces between.
std::string words_of_page(const Pieces &pieces) {
    const Printout page = page_of(pieces);
    EXPECT_EQ(page.err, "");
    std::string text;
    for (const std::string &line : lines_of(page.out)) {
        EXPECT_LE(line.size(), 100u) << line;
        std::istringstream words(line);
        for (std::string word; words >> word;) text += " " + word;
    }
    return text;
}

Json link_of(const Pieces &pieces) {
    const Printout answer = run({"budget", TemporaryFile(text_of(pieces)).path(), "--json"});
    EXPECT_EQ(answer.err, "");
    return answer.out.empty() ? Json() : Json::parse(answer.out).at("links").at(0);
}

void expect_words(const Pieces &pieces, const std::string &words) {
    const std::string text = words_of_page(pieces);
    EXPECT_NE(text.find(words), std::string::npos) << "wanted: " << words << "\nin:" << text;
}

double near_to(const Json &value) { return value.is_null() ? std::nan("") : value.get<double>(); }

// ---- Patterns ----

Json pattern_of(const std::string &pattern, const std::string &directions) {
    Pieces pieces;
    pieces.transmit = "\"pattern\": " + pattern + ", " + directions;
    return link_of(pieces).at("stages").at(1).at("pattern");
}

TEST(DeskPattern, HalfWaveDipoleOffItsBroadside) {
    const Json told = pattern_of(R"({"kind": "half-wave dipole"})",
                                 R"("far_azimuth_deg": 50, "far_elevation_deg": 60, "near_azimuth_deg": 0)");
    // Balanis, 4.6: cos(90 deg cos t) / sin t with t = 30 degrees from the axis
    const double off = std::cos(std::numbers::pi / 2 * std::cos(30 * degree)) / std::sin(30 * degree);
    EXPECT_NEAR(near_to(told.at("far_gain_dbi")), dipole_dbi + 20 * std::log10(off), exact);
    EXPECT_NEAR(near_to(told.at("near_gain_dbi")), 2.15, 0.005);
    EXPECT_NEAR(near_to(told.at("maximum_dbi")), 2.15, 0.005);
    EXPECT_EQ(told.at("kind"), "half-wave dipole");
}

TEST(DeskPattern, ThePageTellsBothDirectionsAndRadiatesTheLargest) {
    Pieces pieces;
    pieces.transmit = R"("pattern": {"kind": "cosine", "gain_dbi": 9, "front_to_back_db": 20, "source": "sheet 7"},
        "far_azimuth_deg": 180, "near_azimuth_deg": 0, "near_elevation_deg": -10)";
    const std::string text = words_of_page(pieces);
    EXPECT_NE(
        text.find("pattern cosine, at most 9.00 dBi; far -11.00 dBi towards azimuth 180.0, elevation 0.0 degrees; "
                  "near 8.80 dBi towards azimuth 0.0, elevation -10.0 degrees; pattern from: sheet 7"),
        std::string::npos)
        << text;
    EXPECT_NE(text.find("Radiates: 9.00 dBm e.i.r.p."), std::string::npos) << text;
    // the exponent of Kraus, example 2-4.2: 10^0.9 / 2 - 1
    EXPECT_NEAR(near_to(link_of(pieces).at("stages").at(1).at("near_change_db")),
                9.0 + 10.0 * (ratio(9.0) / 2.0 - 1.0) * std::log10(std::cos(10 * degree)), exact);
    EXPECT_NEAR(near_to(link_of(pieces).at("eirp_dbm")), 9.0, exact);
}

TEST(DeskPattern, HalfPowerLiesAtHalfTheBeamWidth) {
    const Json told = pattern_of(R"({"kind": "cosine", "beam_width_deg": 60})",
                                 R"("far_azimuth_deg": 30, "near_azimuth_deg": 0, "near_elevation_deg": 30)");
    EXPECT_NEAR(near_to(told.at("far_gain_dbi")) - near_to(told.at("maximum_dbi")), db(0.5), exact);
    EXPECT_NEAR(near_to(told.at("near_gain_dbi")) - near_to(told.at("maximum_dbi")), db(0.5), exact);
}

TEST(DeskPattern, HelixHasItsPrintedGain) {
    const Json told =
        pattern_of(R"({"kind": "helix", "turns": 16, "spacing_wavelengths": 0.25, "circumference_wavelengths": 1})",
                   R"("far_azimuth_deg": 13, "near_azimuth_deg": 0)");
    EXPECT_NEAR(near_to(told.at("near_gain_dbi")), 16.8, 0.05); // Kraus, Antennas, example 8-5.2
    EXPECT_NEAR(near_to(told.at("far_gain_dbi")) - near_to(told.at("near_gain_dbi")), -3.01,
                0.01); // half of 26 degrees
}

TEST(DeskPattern, IsotropicAndDbd) {
    const Json told = pattern_of(R"({"kind": "isotropic", "gain_dbd": 0})", R"("far_azimuth_deg": 0)");
    EXPECT_NEAR(near_to(told.at("far_gain_dbi")), 2.15, 0.005);
    Pieces pieces;
    pieces.transmit = R"("pattern": {"kind": "isotropic", "gain_dbi": 3})"; // it needs no direction
    EXPECT_NEAR(near_to(link_of(pieces).at("stages").at(1).at("far_change_db")), 3.0, exact);
}

TEST(DeskPattern, MeasuredCutsInTheScenarioAndInAFile) {
    const char *cuts = R"({"kind": "cuts", "gain_dbi": 8, "front_to_back_db": 25,
        "azimuth_cut": {"azimuth_deg": [-90, 0, 30, 90, 180], "gain_db": [-9, 0, -3, -9, -20], "source": "our range"},
        "elevation_cut": {"elevation_deg": [-90, 0, 90], "loss_db": [18, 0, 18]}})";
    const Json told = pattern_of(cuts, R"("far_azimuth_deg": 15, "far_elevation_deg": 5,
        "near_azimuth_deg": 180, "near_elevation_deg": -80)");
    EXPECT_NEAR(near_to(told.at("far_gain_dbi")), 8.0 - 1.5 - 1.0, exact); // half way to -3, a tenth of 10 degrees
    EXPECT_NEAR(near_to(told.at("near_gain_dbi")), 8.0 - 25.0, exact);     // no further below than front to back
    const TemporaryFolder folder;
    folder.write("cut.csv", "# ours\nazimuth_deg,gain_db,note\n-90,-9,\n0,0,\n30,-3,\n90,-9,\n180,-20,\n");
    Pieces pieces;
    pieces.transmit = R"("pattern": {"kind": "cuts", "gain_dbi": 8, "azimuth_cut": {"file": "cut.csv"}},
        "far_azimuth_deg": 15, "near_azimuth_deg": 0)";
    const Printout page = run({"budget", folder.write("s.json", text_of(pieces))});
    EXPECT_NE(page.out.find("cut from: cut.csv"), std::string::npos) << page.err << page.out;
    EXPECT_NE(page.out.find("far 6.50 dBi"), std::string::npos) << page.out;
    EXPECT_EQ(run({"table", folder.path() + "/cut.csv"}).out,
              "# cut.csv\nazimuth_deg,gain_db\n-90,-9\n0,0\n30,-3\n90,-9\n180,-20\n");
    EXPECT_EQ(run({"table", folder.write("e.csv", "elevation_deg,loss_db\n-90,3\n90,4\n")}).out,
              "# e.csv\nelevation_deg,gain_db\n-90,-3\n90,-4\n");
    EXPECT_EQ(run({"table", folder.write("b.csv", "facing_deg,loss_db\n0,16\n180,3\n")}).out,
              "# b.csv\nfacing_deg,loss_db\n0,16\n180,3\n");
}

// On the axis of a dipole nothing is radiated: the level is gone, not some very small number.
TEST(DeskPattern, ANullIsToldAndDropsOut) {
    Pieces pieces;
    pieces.transmit = R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 0, "far_elevation_deg": 90,
        "near_azimuth_deg": 0)";
    const Printout page = page_of(pieces);
    EXPECT_EQ(page.code, 1);
    const std::string text = words_of_page(pieces);
    for (const char *words : {"far -infinite dBi, a null, towards azimuth 0.0, elevation 90.0 degrees",
                              "DROPS OUT: the far end lies infinitely far BELOW the floor",
                              "NOTE: null: towards the other antenna the pattern gives nothing at an end of the walk"})
        EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
    // Further steps are the steps themselves, and the bar keeps its scale.
    EXPECT_NE(text.find("air -54.03 -infinite -34.03 -31.88"), std::string::npos) << text; // 600 MHz, ITU-R P.525
    EXPECT_EQ(page.out.find("nan"), std::string::npos) << page.out;
    const Json told = link_of(pieces);
    EXPECT_TRUE(told.at("far_end").at("level_dbm").is_null());
    EXPECT_TRUE(told.at("far_end").at("margin_db").is_null());
    EXPECT_EQ(told.at("verdict"), "drops out");
    EXPECT_EQ(told.at("notes"), Json::array({"null"}));
    EXPECT_NEAR(near_to(told.at("eirp_dbm")), dipole_dbi, exact); // it radiates all the same
    pieces.transmit = R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 0, "far_elevation_deg": 90,
        "near_azimuth_deg": 0, "near_elevation_deg": 90)";
    EXPECT_EQ(page_of(pieces).code, 1); // both ends: nothing is left to draw
}

// ---- Places ----

TEST(DeskPlaces, TellDistancesDirectionsAndPolarization) {
    Pieces pieces;
    pieces.link = "\"note\": \"places\"";
    pieces.transmit = R"("pattern": {"kind": "half-wave dipole"}, "place": {"x_m": 1, "y_m": 2, "z_m": 5})";
    pieces.receive = R"("gain_dbi": 0,
        "far_place": {"x_m": 1, "y_m": 32, "z_m": 1, "azimuth_deg": 180, "polarization_deg": 45},
        "near_place": {"x_m": 4, "y_m": 2, "z_ft": 3.280839895013123, "azimuth_deg": -90})";
    const Json told = link_of(pieces);
    const double far_m = std::hypot(30.0, 4.0);
    const double near_m = 5.0; // 3, 4, 5
    EXPECT_NEAR(near_to(told.at("far_end").at("distance_m")), far_m, 1e-9);
    EXPECT_NEAR(near_to(told.at("near_end").at("distance_m")), near_m, 1e-9);
    const Json &pattern = told.at("stages").at(1).at("pattern");
    EXPECT_NEAR(near_to(pattern.at("far_elevation_deg")), -std::atan(4.0 / 30.0) / degree, 1e-9);
    EXPECT_NEAR(near_to(pattern.at("near_azimuth_deg")), 90.0, 1e-9);
    EXPECT_NEAR(near_to(pattern.at("near_elevation_deg")), -std::atan(4.0 / 3.0) / degree, 1e-9);
    EXPECT_NEAR(near_to(told.at("stages").at(2).at("far_change_db")), -free_space_db(600, far_m), exact);
    // Facing each other two linear antennas at 45 degrees lose half of the power (Balanis, 2.12); 7.6 degrees below
    // the boresight it is nearly that.
    EXPECT_NEAR(near_to(told.at("places").at("far_polarization_loss_db")), 3.01, 0.1);
    EXPECT_NEAR(near_to(told.at("places").at("near_polarization_loss_db")), 0.0, 1e-9);
    const std::string text = words_of_page(pieces);
    EXPECT_NE(
        text.find("Places: the antennas are 30.27 m apart far, 5.00 m near; the angle between their polarizations "
                  "costs"),
        std::string::npos)
        << text;
    EXPECT_NE(text.find("dB over 30.27 m by the places, 41.99 dB over 5.00 m by the places"), std::string::npos)
        << text;
    EXPECT_NE(text.find("Far end: at 30.27 m"), std::string::npos) << text;
}

TEST(DeskPlaces, OnePlaceEachLeavesTheNearEndUnjudged) {
    Pieces pieces;
    pieces.link = "\"note\": \"places\"";
    pieces.transmit = R"("pattern": {"kind": "half-wave dipole"}, "place": {"x_m": 0, "y_m": 0, "z_m": 4})";
    pieces.receive = R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 3, "z_m": 0, "largest_dimension_m": 3})";
    expect_words(pieces, "the near distance was not given, so near stands for the far distance");
    expect_words(pieces, "NOTE: an end of the walk lies nearer to the antenna than its pattern needs to form");
    const Json told = link_of(pieces);
    EXPECT_EQ(told.at("stages").at(1).at("far_change_db"), told.at("stages").at(1).at("near_change_db"));
    // 2 D^2 / lambda (IEEE Std 145)
    EXPECT_NEAR(near_to(told.at("places").at("far_field_distance_m")), 2.0 * 9.0 * 600.0 / 299.792458, 1e-9);
}

// A direction at the far end counts at the near end too where that is the same point.
TEST(DeskPattern, WithoutANearDistanceTheNearDirectionIsTheFarOne) {
    Pieces pieces;
    pieces.link = R"("far_distance_m": 20)";
    pieces.transmit = R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 0, "far_elevation_deg": 40)";
    const Json stage = link_of(pieces).at("stages").at(1);
    EXPECT_LT(near_to(stage.at("far_change_db")), 1.0);
    EXPECT_EQ(stage.at("far_change_db"), stage.at("near_change_db"));
}

// ---- Paths ----

double path_db(const std::string &path, const std::string &frequency, const std::string &distance) {
    Pieces pieces;
    pieces.frequency = frequency;
    pieces.link = "\"far_distance_m\": " + distance;
    pieces.air = "\"path\": " + path;
    const Json told = link_of(pieces);
    EXPECT_NEAR(near_to(told.at("path").at("far_loss_db")), -near_to(told.at("stages").at(2).at("far_change_db")),
                exact);
    return near_to(told.at("path").at("far_loss_db"));
}

TEST(DeskPath, ModelsGiveTheirPrintedValues) {
    // free space at 900 MHz over 100 m: 71.53 dB (ITU-R P.525), and as log-distance of exponent 2
    EXPECT_NEAR(path_db(R"({"model": "free space"})", "900", "100"), 71.5326, 0.00005);
    EXPECT_NEAR(path_db(R"({"model": "log-distance", "exponent": 2})", "900", "100"), 71.5326, 0.00005);
    EXPECT_NEAR(path_db(R"({"model": "log-distance", "exponent": 3, "reference_distance_m": 10,
                            "reference_loss_db": 50})",
                        "900", "100"),
                80.0, exact);
    // ITU-R P.1238, office, two floors of 15 + 4 dB for both
    EXPECT_NEAR(
        path_db(R"({"model": "indoor", "power_loss_coefficient": 30, "floors": 1, "floor_loss_db": 19})", "2000", "10"),
        87.021, 0.0005);
    // ITU-R P.1238-11, a public implementation's values
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "office in sight"})", "1000", "10"), 49.22, 0.005);
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "office out of sight"})", "10000", "10"), 77.93,
                0.005);
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "corridor in sight"})", "1000", "100"), 60.72,
                0.005);
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "corridor out of sight"})", "10000", "10"), 81.77,
                0.005);
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "industrial hall in sight"})", "1000", "100"),
                70.72, 0.005);
    EXPECT_NEAR(path_db(R"({"model": "site-general", "environment": "industrial hall out of sight"})", "10000", "100"),
                110.21, 0.005);
    // along 60 m, the coupling loss at 2 m to a dipole, and what a dipole has over an isotropic antenna (IEC 61196-4)
    EXPECT_NEAR(path_db(R"({"model": "radiating cable", "longitudinal_loss_db_per_100m": 4, "coupling_loss_db": 65})",
                        "600", "60"),
                2.4 + 65.0 + 2.15, 0.005);
    EXPECT_NEAR(
        path_db(R"({"model": "radiating cable", "longitudinal_loss_db_per_100ft": 1.2192, "coupling_loss_db": 65,
                            "lateral_distance_m": 4, "exponent": 1})",
                "600", "60"),
        2.4 + 65.0 + 2.15 + 3.01, 0.006);
    // three walls of 5 dB on top of free space
    EXPECT_NEAR(path_db(R"({"model": "free space", "walls": 3, "wall_loss_db": 5})", "900", "100"), 71.5326 + 15.0,
                0.00005);
}

// Rappaport, Wireless Communications, 4.5 and 4.6, worked here with complex numbers.
double two_ray_db(double mhz, double floor_m, double transmit_m, double receive_m, double permittivity,
                  double conductivity, bool vertical) {
    using Complex = std::complex<double>;
    const double lambda = 299.792458 / mhz;
    const double direct = std::hypot(floor_m, transmit_m - receive_m);
    const double reflected = std::hypot(floor_m, transmit_m + receive_m);
    const double grazing = std::atan2(transmit_m + receive_m, floor_m);
    const Complex e(permittivity, -conductivity / (2.0 * std::numbers::pi * mhz * 1e6 * 8.8541878128e-12));
    const Complex w = std::sqrt(e - std::cos(grazing) * std::cos(grazing));
    const Complex q = vertical ? e * std::sin(grazing) : Complex(std::sin(grazing));
    const Complex turn = std::polar(1.0, -2.0 * std::numbers::pi * (reflected - direct) / lambda);
    return free_space_db(mhz, direct) -
           20.0 * std::log10(std::abs(1.0 + (q - w) / (q + w) * (direct / reflected) * turn));
}

TEST(DeskPath, TwoRaysAreSummedAsComplexNumbers) {
    EXPECT_NEAR(path_db(R"({"model": "two-ray", "polarization": "vertical", "relative_permittivity": 5,
                            "transmit_height_m": 3, "receive_height_m": 1.1})",
                        "487.5", "120"),
                two_ray_db(487.5, 120, 3, 1.1, 5, 0, true), 1e-7);
    EXPECT_NEAR(path_db(R"({"model": "two-ray", "polarization": "horizontal", "relative_permittivity": 7,
                            "conductivity_s_per_m": 0.02, "transmit_height_ft": 10, "receive_height_ft": 5})",
                        "600", "40"),
                two_ray_db(600, 40, 3.048, 1.524, 7, 0.02, false), 1e-7);
}

TEST(DeskPath, AnEdgeCostsWhatBooksPrint) {
    Pieces pieces;
    pieces.frequency = "300"; // Ghasemi, example 6.3: 4 km and 6 km, 20 m above the line of sight: 10.9 dB
    pieces.link = R"("far_distance_m": 10000)";
    pieces.air = R"("path": {"model": "free space", "transmit_height_m": 100, "receive_height_m": 100,
        "edges": [{"distance_m": 4000, "height_m": 120, "note": "a roof"}]})";
    EXPECT_NEAR(near_to(link_of(pieces).at("path").at("far_diffraction_loss_db")), 10.9, 0.05);
    expect_words(pieces, "of this over edges 10.9");
    pieces.air = R"("path": {"model": "free space", "transmit_height_ft": 328.0839895, "receive_height_m": 100,
        "edges": [{"distance_ft": 13123.359580052494, "height_ft": 393.7007874015748}]})";
    EXPECT_NEAR(near_to(link_of(pieces).at("path").at("far_diffraction_loss_db")), 10.9, 0.05);
}

TEST(DeskPath, ThePageTellsModelParts) {
    Pieces pieces;
    pieces.frequency = "2000";
    pieces.air = R"("beyond_free_space_db": -1, "path": {"model": "site-general", "environment": "office out of sight",
        "floors": 1, "floor_loss_db": 10})";
    pieces.link = R"("far_distance_m": 20, "near_distance_m": 4)";
    const std::string text = words_of_page(pieces);
    // 24.6 log10(20) + 29.53 + 23.8 log10(2) + 10 = 78.70 dB; of it 10 dB of a floor; free space 64.49 dB
    for (const char *words :
         {"air, site-general (office out of sight) at 2000 MHz: 78.70 dB over 20 m, 61.51 dB over 4 m",
          "of this through walls and floors 10.00 dB far, 10.00 dB near",
          "free space would cost 64.49 dB far, 50.51 dB near", "-1 dB beyond the path",
          "Path: site-general: from place to place the loss has a standard deviation of 5.04 dB, and fading comes on "
          "top"})
        EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
    pieces.air = R"("path": {"model": "two-ray", "polarization": "vertical", "relative_permittivity": 5,
        "transmit_height_m": 3, "receive_height_m": 1.5})";
    pieces.frequency = "300"; // break point 4 h h / lambda (ITU-R P.1411): 18.01 m
    expect_words(pieces, "break point 18.01 m");
    expect_words(pieces, "Path: two-ray: the model states no standard deviation");
}

// ---- Bodies ----

TEST(DeskBody, LossOverFacing) {
    Pieces pieces;
    pieces.between = R"({"kind": "allowance", "label": "singer", "facing_deg": 22.5, "body_table":
        {"facing_deg": [0, 45, 180], "loss_db": [16, 12, 3], "source": "our walk"}},)"
                     "\n";
    const Json stage = link_of(pieces).at("stages").at(3);
    EXPECT_NEAR(near_to(stage.at("far_change_db")), -14.0, exact); // half way
    EXPECT_EQ(near_to(stage.at("near_change_db")), 0.0);
    expect_words(pieces,
                 "allowance, taken at the far end only, body table of 3 rows, facing 22.5 degrees: 14.00 dB loss, "
                 "table from: our walk");
}

// ---- Noise ----

Pieces noisy(const std::string &behind, const std::string &receiver, const std::string &noise) {
    Pieces pieces;
    pieces.link +=
        ", \"temperature_degc\": 16.85, \"noise\": {" + noise + "}"; // 290 K: figures of losses are the losses
    pieces.behind = behind;
    pieces.receiver = R"("floor_dbm": -100, "ceiling_dbm": -10)" + (receiver.empty() ? "" : ", " + receiver);
    return pieces;
}

TEST(DeskNoise, FloorIsThermalNoiseAndTheNoiseFigure) {
    const Pieces pieces = noisy("", R"("noise_figure_db": 8)", R"("bandwidth_khz": 200, "carrier_to_noise_db": 20)");
    const double floor = thermal_dbm_per_hz + db(200e3) + 8.0;
    const double level = -free_space_db(600, 20);
    const Json noise = link_of(pieces).at("noise");
    EXPECT_NEAR(near_to(noise.at("receiver_noise_dbm")), floor, exact);
    EXPECT_NEAR(near_to(noise.at("far_carrier_to_noise_db")), level - floor, exact);
    EXPECT_NEAR(near_to(noise.at("near_carrier_to_noise_db")), level + 20.0 - floor, exact); // a tenth of the distance
    EXPECT_NEAR(near_to(noise.at("margin_db")), level - floor - 20.0, exact);
    EXPECT_NEAR(near_to(noise.at("sensitivity_dbm")), floor + 20.0, exact);
    EXPECT_EQ(noise.at("verdict"), "holds");
    // -173.9752 + 53.0103 + 8 = -112.9649; 20 log10(12000) - 27.5522 = 54.0314
    expect_words(pieces,
                 "Noise: floor -112.96 dBm at the receiver's input, -112.96 dBm at the antenna's terminal, in 200 kHz; "
                 "noise figure of the receive side 8.00 dB, antenna at 290 K");
    expect_words(pieces,
                 "C/N: 58.93 dB far, 78.93 dB near (carrier to noise); needed 20 dB, so the far end has 38.93 dB to "
                 "spare; least level -92.96 dBm at the antenna's terminal");
    EXPECT_EQ(page_of(pieces).code, 0);
}

TEST(DeskNoise, CascadesGiveTheirPrintedFigures) {
    // Rappaport, example B.2: 3 dB of cable before 6 dB
    const Pieces cable = noisy(R"({"kind": "cable", "loss_db": 3},)"
                               "\n",
                               R"("noise_figure_db": 6)", R"("bandwidth_mhz": 0.03)");
    EXPECT_NEAR(near_to(link_of(cable).at("noise").at("noise_figure_db")), 9.0, 0.0001);
    expect_words(cable, "what is needed is not stated");
    EXPECT_EQ(page_of(cable).code, 0);
    // Roddy, example 12.6: an amplifier of 40 dB and 120 K before 12 dB: 120.43 K
    const Pieces amplifier = noisy(R"({"kind": "amplifier", "gain_db": 40, "noise_temperature_k": 120},)"
                                   "\n",
                                   R"("noise_figure_db": 12)", R"("bandwidth_mhz": 36)");
    const double figure = near_to(link_of(amplifier).at("noise").at("noise_figure_db"));
    EXPECT_NEAR(290.0 * (ratio(figure) - 1.0), 120.43, 0.005);
}

TEST(DeskNoise, OutsideNoiseAndWhatWasMeasured) {
    // an antenna 10 dB above 290 K: the powers add (ITU-R P.372)
    const Pieces outside =
        noisy("", R"("noise_figure_db": 3)", R"("bandwidth_khz": 200, "external_noise_figure_db": 10)");
    const double thermal = thermal_dbm_per_hz + db(200e3);
    EXPECT_NEAR(near_to(link_of(outside).at("noise").at("receiver_noise_dbm")), thermal + db(10.0 + ratio(3.0) - 1.0),
                exact);
    const Pieces cold = noisy("", R"("noise_figure_db": 3)", R"("bandwidth_khz": 200, "antenna_temperature_k": 29)");
    EXPECT_NEAR(near_to(link_of(cold).at("noise").at("receiver_noise_dbm")), thermal + db(0.1 + ratio(3.0) - 1.0),
                exact);
    const Pieces measured = noisy(R"({"kind": "cable", "loss_db": 4},)"
                                  "\n",
                                  "",
                                  R"("bandwidth_khz": 200, "noise_dbm": -95, "noise_at": "receiver",
        "interference_dbm": -91, "interference_at": "antenna", "carrier_to_noise_db": 60)");
    const Json noise = link_of(measured).at("noise");
    const double level = -free_space_db(600, 20) - 4.0;
    EXPECT_NEAR(near_to(noise.at("far_carrier_to_noise_db")), level + 95.0, exact);
    EXPECT_NEAR(near_to(noise.at("far_carrier_to_noise_plus_interference_db")), level + 95.0 - db(2.0),
                exact); // twice as much
    expect_words(measured, "as measured at the receiver");
    expect_words(measured, "with interference of -95.00 dBm there");
    expect_words(measured, "dB TOO LITTLE");
    // twice -95 dBm and 60 dB: no level between that and the entered floor of -100 dBm will do
    expect_words(measured,
                 "DROPS OUT: the far end lies 26.04 dB BELOW the floor; the entered floor of -100 dBm lies below what "
                 "noise and the needed C/N allow (-31.99 dBm), and the level is judged against that; TOO NOISY at the "
                 "far end");
    EXPECT_EQ(page_of(measured).code, 1);
    EXPECT_EQ(link_of(measured).at("holds"), false);
    EXPECT_EQ(link_of(measured).at("failures"), Json::array({"TOO NOISY at the far end"}));
}

// A floor that was typed in does not make a level receivable that the link's own noise covers: the higher of both
// judges.
TEST(DeskNoise, FloorBelowWhatNoiseAndTheNeededRatioAllowIsRaised) {
    const double needed = thermal_dbm_per_hz + db(200e3) + 3.0 + 20.0; // k T B, noise figure, needed C/N: -97.96 dBm
    const std::string terms = R"("bandwidth_khz": 200, "carrier_to_noise_db": 20)";
    Pieces between = noisy("", R"("noise_figure_db": 3)", terms);
    const double level = -99.0; // over the entered floor of -100 dBm
    between.source = "\"power_dbm\": " + std::to_string(level + free_space_db(600, 20));
    const Json told = link_of(between);
    EXPECT_EQ(told.at("verdict"), "drops out");
    EXPECT_EQ(told.at("holds"), false);
    EXPECT_NEAR(near_to(told.at("far_end").at("margin_db")), level - needed, exact);
    EXPECT_NEAR(near_to(told.at("far_end").at("margin_db")), near_to(told.at("noise").at("margin_db")), exact);
    EXPECT_EQ(told.at("far_end").at("zone"), "dropout");
    EXPECT_EQ(near_to(told.at("window").at("floor_dbm")), -100.0); // as it was entered
    EXPECT_NEAR(near_to(told.at("window").at("judged_floor_dbm")), needed, exact);
    EXPECT_NEAR(near_to(told.at("noise").at("needed_level_dbm")), needed, exact);
    EXPECT_EQ(page_of(between).code, 1);
    const std::string raised = "the entered floor of -100 dBm lies below what noise and the needed C/N allow (-97.96 "
                               "dBm), and the level is judged against that";
    expect_words(between, "Verdict: DROPS OUT: the far end lies 1.04 dB BELOW the floor; " + raised);
    expect_words(between, "F floor -97.96");
    expect_words(between, "Cautions - In link 'A' " + raised + ".");

    Pieces over = between; // half a decibel over the noise, and one of tolerance
    over.source = "\"power_dbm\": " + std::to_string(needed + 0.5 + free_space_db(600, 20)) + ", \"tolerance_db\": 1";
    EXPECT_EQ(link_of(over).at("verdict"), "doubtful");
    expect_words(over, raised);

    // What fades below the floor fades into the noise: Rayleigh, 1 - exp(-1 / margin).
    over.link += R"(, "fading": {"model": "Rayleigh", "outage_percent": 99})";
    EXPECT_NEAR(near_to(link_of(over).at("fading").at("outage")), 1.0 - std::exp(-ratio(-0.5)), 1e-4);

    // The noise stands at the receiver's input, the window behind its gain.
    Pieces gain = between;
    gain.receiver += R"(, "gain_db": 5)";
    EXPECT_NEAR(near_to(link_of(gain).at("window").at("judged_floor_dbm")), needed + 5.0, exact);
    EXPECT_NEAR(near_to(link_of(gain).at("far_end").at("margin_db")), level - needed, exact);

    // The wanted band gives way; so does the ceiling's room, of which nothing is left.
    Pieces band = between;
    band.receiver = R"("floor_dbm": -100, "wanted_low_dbm": -99.5, "wanted_high_dbm": -98.5, "ceiling_dbm": -10,
        "noise_figure_db": 3)";
    EXPECT_EQ(link_of(band).at("verdict"), "drops out");
    EXPECT_EQ(near_to(link_of(band).at("window").at("wanted_low_dbm")), -99.5);
    Pieces ceiling = between;
    ceiling.receiver = R"("floor_dbm": -100, "ceiling_dbm": -98.5, "noise_figure_db": 3)";
    expect_words(ceiling, raised + "; no level under the ceiling is enough");
    EXPECT_EQ(page_of(ceiling).code, 1);
}

TEST(DeskNoise, FloorAboveTheNoiseStaysAsEntered) {
    const Pieces pieces = noisy("", R"("noise_figure_db": 3)", R"("bandwidth_khz": 200, "carrier_to_noise_db": 10)");
    const Json told = link_of(pieces);
    EXPECT_EQ(near_to(told.at("window").at("judged_floor_dbm")), -100.0);
    EXPECT_NEAR(near_to(told.at("far_end").at("margin_db")), 100.0 - free_space_db(600, 20), exact);
    EXPECT_EQ(words_of_page(pieces).find("entered floor"), std::string::npos);
    // what is needed is not known where no ratio, or no noise figure, is given
    EXPECT_TRUE(link_of(noisy("", R"("noise_figure_db": 3)", R"("bandwidth_khz": 200)"))
                    .at("noise")
                    .at("needed_level_dbm")
                    .is_null());
}

// Without a needed ratio a floor above the noise is believed, one below it is not.
TEST(DeskNoise, FloorBelowTheNoiseItselfFails) {
    Pieces pieces = noisy("", R"("noise_figure_db": 3)", R"("bandwidth_khz": 200)");
    EXPECT_EQ(link_of(pieces).at("failures"), Json::array());
    pieces.receiver = R"("floor_dbm": -125, "ceiling_dbm": -10, "noise_figure_db": 3)";
    const std::string failure = "the floor of -125 dBm lies BELOW THE NOISE (-117.96 dBm): say which "
                                "carrier_to_noise_db the receiver needs";
    EXPECT_EQ(link_of(pieces).at("failures"), Json::array({failure}));
    EXPECT_EQ(link_of(pieces).at("holds"), false);
    expect_words(pieces, failure);
    EXPECT_EQ(page_of(pieces).code, 1);
}

TEST(DeskNoise, ProductsOfTwoAndOfManyCarriers) {
    const Pieces pieces = noisy("", R"("noise_figure_db": 8, "intercept_dbm": -5, "compression_dbm": -15)",
                                R"("bandwidth_khz": 200, "carriers": 3)");
    const double near = -free_space_db(600, 2);
    const Json noise = link_of(pieces).at("noise");
    EXPECT_NEAR(near_to(noise.at("two_tone_dbm")), 3.0 * near + 10.0, exact); // 3 P - 2 IP3, Pozar, 10.3
    // one product of three tones, a + c - b, four times as strong, falls on the middle one of three
    EXPECT_NEAR(near_to(noise.at("products_dbm")), 3.0 * near + 10.0 + db(4.0), exact);
    EXPECT_NEAR(near_to(noise.at("spurious_free_range_db")),
                2.0 / 3.0 * (-5.0 - near_to(noise.at("antenna_noise_dbm"))), exact);
    EXPECT_EQ(noise.at("compressing_stage"), "receiver");
    EXPECT_NEAR(near_to(noise.at("compression_headroom_db")), -15.0 - near - db(3.0), exact); // powers add
    // -34.03 dBm at 2 m
    expect_words(pieces,
                 "Compress: 'receiver' compresses first, from -15.00 dBm at the antenna's terminal on: the near end's "
                 "level, of all 3 carriers together, lies 14.26 dB under it");
    expect_words(pieces,
                 "Products: two equal carriers at the near end's level make third-order products of -92.09 dBm each at "
                 "the receiver's input; 3 carriers at equal spacing -86.07 dBm together on the middle one");
}

TEST(DeskNoise, CallsOutTheAmplifierThatLowersRange) {
    const std::string amplifier = R"({"kind": "amplifier", "label": "line booster", "gain_db": 10, "noise_figure_db": 9,
        "intercept_dbm": 10, "compression_dbm": 0},)"
                                  "\n";
    const Pieces pieces = noisy(amplifier, R"("noise_figure_db": 4, "intercept_dbm": 0, "compression_dbm": -10)",
                                R"("bandwidth_khz": 200, "carrier_to_noise_db": 10)");
    const Json noise = link_of(pieces).at("noise");
    EXPECT_EQ(noise.at("range_lowering_stage"), "line booster");
    // With it: F = 10^0.9 + (10^0.4 - 1) / 10 (Friis); without 10^0.4.
    const double with = db(ratio(9.0) + (ratio(4.0) - 1.0) / 10.0);
    // Its intercept at the input is 0 dBm, the receiver's before it -10 dBm: 1 / I = 1 + 10, so -10.41 dBm
    // (Pozar, 10.3).
    const double range = 2.0 / 3.0 * ((-db(11.0) - with) - (0.0 - 4.0));
    char words[200];
    std::snprintf(words, sizeof words,
                  "CAUTION: the amplifier 'line booster' LOWERS RANGE, whatever it adds to the level: with it the "
                  "spurious-free range "
                  "changes by %.2f dB and carrier to noise by %.2f dB; leave it out where you can",
                  range, 4.0 - with);
    expect_words(pieces, words);
    // 10 dBm at the output belong to an input of 0 dBm; the receiver's -10 dBm lie behind 10 dB: -20 dBm.
    expect_words(pieces, "'receiver' compresses first, from -20.00 dBm");
}

TEST(DeskNoise, SaysWhatIsNotStated) {
    const std::string amplifier = R"({"kind": "amplifier", "label": "old booster", "gain_db": 10},)"
                                  "\n";
    const Pieces pieces = noisy(amplifier, R"("noise_figure_db": 4, "compression_dbm": -10)",
                                R"("bandwidth_khz": 200, "carrier_to_noise_db": 10)");
    expect_words(pieces, "Noise: not known: 'old booster' states no noise figure");
    expect_words(pieces, "Products: not known: 'old booster' states no intercept");
    expect_words(pieces, "others do not state theirs and may come first");
    EXPECT_EQ(page_of(pieces).code, 1); // a carrier to noise was asked for, and not judged
    EXPECT_EQ(link_of(pieces).at("failures"), Json::array({"noise not judged"}));
    const Pieces silent = noisy("", R"("noise_figure_db": 4)", R"("bandwidth_khz": 200)");
    expect_words(silent, "Compress: not known: no stage states its compression");
    Pieces near = noisy("", R"("noise_figure_db": 4, "compression_dbm": -40)", R"("bandwidth_khz": 200)");
    expect_words(near, "5.97 dB ABOVE it");
    expect_words(near, "; COMPRESSES at the near end");
    EXPECT_EQ(page_of(near).code, 1);
    near.source = R"("power_dbm": -7, "tolerance_db": 3)";
    expect_words(near, "noise or compression DOUBTFUL");
}

// Without a window nothing but the noise is judged, and nothing is drawn.
TEST(DeskNoise, AReceiverMayStateNothingElse) {
    Pieces pieces = noisy("", "", R"("bandwidth_khz": 200)");
    pieces.receiver = R"("noise_figure_db": 8)";
    const std::string text = words_of_page(pieces);
    EXPECT_EQ(text.find("Receiver's window"), std::string::npos) << text;
    EXPECT_NE(text.find("NOT JUDGED"), std::string::npos);
    EXPECT_NE(text.find("58.93 dB far"), std::string::npos) << text;
}

// ---- Fading ----

Json fading_of(const std::string &keys, double margin_db) {
    Pieces pieces;
    pieces.link += ", \"fading\": {" + keys + "}";
    pieces.receiver = "\"ceiling_dbm\": 20, \"floor_dbm\": " + std::to_string(-free_space_db(600, 20) - margin_db);
    return link_of(pieces).at("fading");
}

TEST(DeskFading, OutagesAreThePrintedOnes) {
    const std::string one = R"(, "outage_percent": 1)";
    // Rappaport, 5.6.1: 1 - exp(-10^(-margin / 10)); tests/reference/fading.ref names the sources of the others
    const Json rayleigh = fading_of(R"("model": "Rayleigh")" + one, 10);
    EXPECT_NEAR(near_to(rayleigh.at("outage")), 1.0 - std::exp(-0.1), exact);
    EXPECT_NEAR(near_to(rayleigh.at("needed_margin_db")), -db(-std::log(0.99)), exact); // 19.98 dB
    EXPECT_EQ(near_to(rayleigh.at("wanted_outage")), 0.01);
    EXPECT_NEAR(near_to(fading_of(R"("model": "Rice", "k_db": 6)" + one, 10).at("outage")), 0.0164647, 1e-6);
    EXPECT_NEAR(near_to(fading_of(R"("model": "Nakagami", "shape": 1)" + one, 10).at("outage")), 1.0 - std::exp(-0.1),
                exact);
    // the normal distribution: 16 % lie more than one deviation below the median, 1 % more than 2.3263
    const Json shadowed = fading_of(R"("model": "log-normal", "standard_deviation_db": 5)" + one, 5);
    EXPECT_NEAR(near_to(shadowed.at("outage")), 0.5 * std::erfc(1.0 / std::sqrt(2.0)), exact);
    EXPECT_NEAR(near_to(shadowed.at("needed_margin_db")), 5.0 * 2.3263479, 1e-5);
    // without shadowing Suzuki is Rayleigh
    EXPECT_NEAR(near_to(fading_of(R"("model": "Suzuki", "standard_deviation_db": 0)" + one, 10).at("outage")),
                1.0 - std::exp(-0.1), exact);
    // the better of two independent branches fails where both do; each may then fail in a tenth
    const Json two = fading_of(R"("model": "Rayleigh", "branches": 2)" + one, 10);
    EXPECT_NEAR(near_to(two.at("outage")), std::pow(1.0 - std::exp(-0.1), 2.0), exact);
    EXPECT_NEAR(near_to(two.at("needed_margin_db")), -db(-std::log(0.9)), exact);
}

TEST(DeskFading, ThePageTellsWhetherTheMarginIsEnough) {
    Pieces pieces;
    pieces.link += R"(, "fading": {"model": "Rayleigh", "outage_percent": 0.1, "branches": 2})";
    // 45.97 dB above the floor; 1 - e^(-y) = sqrt(0.001) needs 14.93 dB
    expect_words(
        pieces, "Fading: Rayleigh about the far end's level, best of 2 branches: it falls below the floor in less than "
                "0.0001 % of places and times; the allowed 0.1 % needs 14.93 dB above the floor, so there are 31.04 dB "
                "to spare");
    EXPECT_EQ(page_of(pieces).code, 0);
    pieces.receiver = R"("floor_dbm": -64, "ceiling_dbm": -10)";
    expect_words(pieces, "dB TOO LITTLE");
    expect_words(pieces, "below the floor in 0.92 %"); // 9.97 dB above it: (1 - e^(-0.1007))^2
    expect_words(pieces, "FADES below the floor too often");
    EXPECT_EQ(page_of(pieces).code, 1);
    EXPECT_EQ(link_of(pieces).at("holds"), false);
    pieces.receiver = R"("ceiling_dbm": -10)";
    expect_refused(page_of(pieces),
                   "fading: fading asks how often the level falls below the floor; no floor_dbm is given");
}

// ---- Limits and exposure ----

Pieces limited(const std::string &limits, const std::string &power, const std::string &frequency = "600") {
    Pieces pieces;
    pieces.link += ", \"limits\": [" + limits + "]";
    pieces.source = power;
    pieces.receiver = R"("floor_dbm": -100, "ceiling_dbm": 20)";
    pieces.frequency = frequency;
    return pieces;
}

// 47 CFR 74.861(e)(1): 250 mW at the transmitter from 470 to 608 MHz.
TEST(DeskLimits, APublishedRuleByItsDesignation) {
    const char *rule = R"j({"rule": "47 CFR 74.861(e)(1)"})j";
    const Pieces at = limited(rule, R"("power_mw": 250)");
    expect_words(at, "Limit: 47 CFR 74.861(e)(1) (United States, ");
    expect_words(
        at, "transmitter output at most 23.98 dBm (250 mW) from 470 to 608 MHz: 23.98 dBm, +-0.00 dB worst case, 0.00 "
            "dB under: holds");
    expect_words(at, "judged against the limits below; your licence and the exposure rules decide");
    EXPECT_EQ(page_of(at).code, 0);
    const Pieces over = limited(rule, R"("power_mw": 300)");
    expect_words(over, "0.79 dB OVER: EXCEEDED"); // 10 log10(300 / 250)
    expect_words(over, "HOLDS as entered; 4 guesses carry no tolerance; a limit of power is EXCEEDED");
    EXPECT_EQ(page_of(over).code, 1);
    const Json told = link_of(over).at("limits").at(0);
    EXPECT_EQ(told.at("rule"), "47 CFR 74.861(e)(1)");
    EXPECT_NEAR(near_to(told.at("room_db")), db(250.0 / 300.0), exact);
    EXPECT_EQ(told.at("verdict"), "exceeds the limit");
    const Pieces doubtful = limited(rule, R"("power_mw": 240, "tolerance_db": 1)");
    expect_words(doubtful, "0.18 dB under: DOUBTFUL, the tolerances together can exceed it");
    EXPECT_EQ(page_of(doubtful).code, 1);
    const Pieces outside = limited(rule, R"("power_mw": 10)", "2441");
    expect_words(outside, "NOT COVERED, this says nothing of 2441 MHz");
    EXPECT_EQ(page_of(outside).code, 1);
    EXPECT_TRUE(link_of(outside).at("limits").at(0).at("room_db").is_null());
    // 15.236(d) limits what is radiated: 50 mW at 500 MHz
    expect_words(limited(R"j({"rule": "47 CFR 15.236(d)", "note": "no licence"})j", R"("power_mw": 50)", "500"),
                 "e.i.r.p. at most 16.99 dBm (50 mW) from 470 to 608 MHz: 16.99 dBm");
}

TEST(DeskLimits, AnOwnLimitInEveryQuantity) {
    const auto limit = [](const std::string &keys) {
        Pieces pieces = limited("{\"label\": \"licence\", " + keys + "}", R"("power_dbm": 20)");
        pieces.transmit = R"("gain_dbi": 6)";
        return link_of(pieces).at("limits").at(0);
    };
    EXPECT_NEAR(near_to(limit(R"("quantity": "e.i.r.p.", "limit_w": 1)").at("room_db")), 4.0, exact);
    EXPECT_NEAR(near_to(limit(R"("quantity": "e.r.p.", "limit_dbm": 30)").at("room_db")), 4.0 + dipole_dbi, exact);
    EXPECT_NEAR(near_to(limit(R"("quantity": "transmitter output", "limit_mw": 50)").at("room_db")), db(0.5), exact);
    EXPECT_NEAR(near_to(limit(R"("quantity": "antenna input", "limit_mw": 100, "lowest_mhz": 470)").at("room_db")), 0.0,
                exact);
    EXPECT_EQ(limit(R"("quantity": "antenna input", "limit_mw": 100, "highest_mhz": 470)").at("verdict"),
              "not covered by the rule");
    expect_words(
        limited(R"({"label": "licence", "quantity": "e.i.r.p.", "limit_w": 2, "lowest_mhz": 470})",
                R"("power_dbm": 20)"),
        "Limit: licence, e.i.r.p. at most 33.01 dBm (2 W) from 470 MHz on: 20.00 dBm, +-0.00 dB worst case, 13.01 dB "
        "under: holds");
}

// A licence counts the direction of maximum radiation, not that of the walker.
TEST(DeskLimits, APatternDoesNotHideWhatIsRadiated) {
    Pieces pieces = limited(R"({"label": "licence", "quantity": "e.i.r.p.", "limit_dbm": 20})", R"("power_dbm": 15)");
    pieces.transmit = R"("pattern": {"kind": "cosine", "gain_dbi": 9, "front_to_back_db": 20},
        "far_azimuth_deg": 180, "near_azimuth_deg": 180)";
    const Json told = link_of(pieces).at("limits").at(0);
    EXPECT_NEAR(near_to(told.at("level_dbm")), 24.0, exact);
    EXPECT_EQ(told.at("verdict"), "exceeds the limit");
}

Pieces exposed(const std::string &exposure, const std::string &source) {
    Pieces pieces;
    pieces.link += ", \"exposure\": {" + exposure + "}";
    pieces.source = source;
    pieces.receiver = R"("floor_dbm": -100, "ceiling_dbm": 20)";
    return pieces;
}

// 47 CFR 1.1310, general population: f / 1500 mW/cm2, so 4 W/m2 at 600 MHz; five times that where people know of it.
TEST(DeskExposure, TellsTheDistanceToKeep) {
    const double four_pi = 4.0 * std::numbers::pi;
    const auto distance = [](const std::string &exposure, const std::string &source) {
        return near_to(link_of(exposed(exposure, source)).at("exposure").at("distance_m"));
    };
    const std::string general = R"("rule": "47 CFR 1.1310", "audience": "general public")";
    EXPECT_NEAR(distance(general + R"(, "reflection_factor": 2.56)", R"("power_w": 50)"),
                std::sqrt(2.56 * 50.0 / (four_pi * 4.0)), exact);
    EXPECT_NEAR(
        distance(R"("rule": "47 CFR 1.1310", "audience": "occupational", "reflection_factor": 1)", R"("power_w": 50)"),
        std::sqrt(50.0 / (four_pi * 20.0)), exact);
    // ICNIRP 2020 for the public: f / 200 W/m2 from 400 MHz on
    EXPECT_NEAR(
        distance(R"("rule": "ICNIRP 2020", "audience": "general public", "reflection_factor": 4)", R"("power_w": 50)"),
        std::sqrt(4.0 * 50.0 / (four_pi * 3.0)), exact);
    EXPECT_NEAR(distance(R"("limit_mw_per_cm2": 1, "reflection_factor": 1)", R"("power_w": 50)"),
                std::sqrt(50.0 / (four_pi * 10.0)), exact);
    EXPECT_NEAR(distance(R"("limit_w_per_m2": 10, "reflection_factor": 1, "transmitters": 4)",
                         R"("power_w": 50, "tolerance_db": 1)"),
                std::sqrt(4.0 * 50.0 * ratio(1.0) / (four_pi * 10.0)), exact);
    const Pieces pieces = exposed(general + R"(, "reflection_factor": 2.56, "transmitters": 4)", R"("power_w": 50)");
    // sqrt(2.56 x 200 / (4 pi 4)) = 3.1915 m, told rounded up
    expect_words(
        pieces,
        "Exposure: people must keep 3.20 m or more away from the transmit antenna: 4 W/m2 for the general public "
        "by 47 CFR 1.1310 at 600 MHz, 53.01 dBm e.i.r.p. with every tolerance upwards, of 4 such transmitters "
        "together, reflections x 2.56; computed for the far field Guesses:");
    EXPECT_EQ(link_of(pieces).at("exposure").at("near_field"), false);
    EXPECT_EQ(link_of(pieces).at("exposure").at("keep_distance_m"), link_of(pieces).at("exposure").at("distance_m"));
    // sqrt(0.05 / (4 pi 4)) = 0.0315 m, under the wavelength of 0.49965 m: the larger one is told first
    const Pieces close = exposed(general + R"(, "reflection_factor": 1)", R"("power_mw": 50)");
    expect_words(close, "Exposure: people must keep 0.50 m or more away from the transmit antenna: 4 W/m2");
    expect_words(close, "computed for the far field, which would allow 0.04 m but does not hold nearer than a "
                        "wavelength; the antenna's maker may ask for more");
    const Json near_told = link_of(close).at("exposure");
    EXPECT_EQ(near_told.at("near_field"), true);
    EXPECT_NEAR(near_to(near_told.at("keep_distance_m")), 299.792458 / 600.0, exact);
    EXPECT_NEAR(near_to(near_told.at("distance_m")), std::sqrt(0.05 / (four_pi * 4.0)), exact);
    expect_words(
        exposed(R"("rule": "ICNIRP 2020", "audience": "occupational", "reflection_factor": 1)", R"("power_w": 50)"),
        "15 W/m2 for occupational exposure by ICNIRP 2020 at 600 MHz");
    expect_words(
        exposed(R"("rule": "ICNIRP 2020", "audience": "occupational", "reflection_factor": 1)", R"("power_w": 50)"),
        "the rule's figures were read where others quote them: check them");
    Pieces worn = exposed(R"("limit_w_per_m2": 10, "reflection_factor": 1)", R"("power_mw": 50)");
    worn.link += R"(, "direction": "inbound")";
    expect_words(worn, "a transmitter that is worn or held is judged by absorbed power, not by this");
    expect_words(worn, "10 W/m2 as given");
}

TEST(DeskCautions, AreTheLibrarys) {
    for (const Pieces &pieces : {Pieces(), limited(R"j({"rule": "47 CFR 74.861(e)(1)"})j", R"("power_mw": 50)"),
                                 exposed(R"("limit_w_per_m2": 10, "reflection_factor": 1)", R"("power_mw": 50)"),
                                 noisy("", "", R"("bandwidth_khz": 200)")})
        for (const char *words : {"walk test with the real packs over the whole area", "check what is in force",
                                  "exposure rules in force", "national rules or local codes", "the rules win"})
            expect_words(pieces, words);
}

// ---- Two systems side by side ----

std::string two_links(const std::string &pair, const std::string &noise = R"("noise": {"bandwidth_khz": 200},)") {
    return R"({"production": "T", "links": [
{"name": "out", "frequency_mhz": 500, "far_distance_m": 20, "near_distance_m": 2, "stages": [
  {"kind": "source", "power_dbm": 23}, {"kind": "cable", "loss_db": 3}, {"kind": "antenna", "gain_dbi": 6},
  {"kind": "air"}, {"kind": "antenna", "gain_dbi": 0}, {"kind": "receiver", "floor_dbm": -100, "ceiling_dbm": 10}]},
{"name": "in", "frequency_mhz": 600, "far_distance_m": 20, "near_distance_m": 2, )" +
           noise + R"("temperature_degc": 16.85, "stages": [
  {"kind": "source", "power_dbm": 10}, {"kind": "antenna", "gain_dbi": 0}, {"kind": "air"},
  {"kind": "antenna", "gain_dbi": 0}, {"kind": "cable", "loss_db": 5},
  {"kind": "receiver", "floor_dbm": -100, "ceiling_dbm": 10, "noise_figure_db": 8}]}],
"side_by_side": [
)" + pair + "]}";
}

TEST(DeskNeighbours, BlockingAndNoiseOfTheTransmitterBeside) {
    const std::string text = two_links(R"({"name": "racks", "transmitter": "out", "receiver": "in", "separation_m": 3,
        "transmit_gain_dbi": -4, "receive_gain_dbi": -2, "receive_filter_db": 10, "transmit_filter_db": 0.5,
        "blocking_dbm": -30, "wanted_margin_db": 6, "transmit_noise_dbc_per_hz": -140, "wanted_rise_db": 3})");
    const Printout answer = run({"budget", TemporaryFile(text).path(), "--json"});
    ASSERT_EQ(answer.err, "");
    const Json pair = Json::parse(answer.out).at("side_by_side").at(0);
    // 20 dBm at the antenna; ITU-R P.525; noise powers add (ITU-R P.372)
    const double coupling = free_space_db(500, 3) + 6.0;
    const double blocker = 20.0 - coupling - 5.0 - 10.0;
    EXPECT_NEAR(near_to(pair.at("coupling_loss_db")), coupling, exact);
    EXPECT_NEAR(near_to(pair.at("blocker_dbm")), blocker, exact);
    EXPECT_NEAR(near_to(pair.at("blocking_margin_db")), -30.0 - blocker, exact);
    EXPECT_EQ(near_to(pair.at("more_receive_filter_db")), 0.0);
    const double noise = 20.0 - 140.0 + db(200e3) - 0.5 - (free_space_db(600, 3) + 6.0) - 5.0;
    const double floor = thermal_dbm_per_hz + db(200e3) + 8.0; // the cable at 290 K adds as much as it takes
    EXPECT_NEAR(near_to(pair.at("noise_dbm")), noise, exact);
    EXPECT_NEAR(near_to(pair.at("noise_rise_db")), db(1.0 + ratio(noise - floor)), 1e-5);
    EXPECT_EQ(pair.at("holds"), true);
    const std::string page = run({"budget", TemporaryFile(text).path()}).out;
    for (const char *words :
         {"SIDE BY SIDE racks", "Blocking: arrives at the receiver with", "Noise:    the transmitter's noise"})
        EXPECT_NE(page.find(words), std::string::npos) << words << page;
    EXPECT_NE(run({"budget", TemporaryFile(text).path(), "--link", "out"}).out.find("SIDE BY SIDE"), std::string::npos);
}

TEST(DeskNeighbours, TooCloseIsToldWithWhatHelps) {
    const std::string text =
        two_links(R"({"name": "racks", "transmitter": "out", "receiver": "in", "coupling_loss_db": 30,
        "blocking_dbm": -30, "wanted_margin_db": 6, "transmit_noise_dbm": -60})");
    const Printout page = run({"budget", TemporaryFile(text).path()});
    EXPECT_EQ(page.code, 1);
    // 20 - 30 - 5 = -15 dBm is 15 dB above -30; 6 dB of room more: 21 dB
    for (const char *words : {"-15.00 dBm, 15.00 dB ABOVE", "21.00 dB more filter", "TOO MUCH"})
        EXPECT_NE(page.out.find(words), std::string::npos) << words << page.out;
}

// ---- Refusals ----

struct Wrong {
    Pieces pieces;
    const char *words; // with the line where a person finds it
};

Pieces with(std::string Pieces::*piece, const std::string &keys) {
    Pieces pieces;
    pieces.*piece = keys;
    return pieces;
}

TEST(DeskTerms, RefusalsNameLineAndKey) {
    const auto transmit = [](const std::string &keys) { return with(&Pieces::transmit, keys); };
    const auto air = [](const std::string &keys) { return with(&Pieces::air, "\"path\": " + keys); };
    const auto link = [](const std::string &keys) {
        return with(&Pieces::link, "\"far_distance_m\": 20, \"near_distance_m\": 2,\n" + keys);
    };
    const auto body = [](const std::string &keys) {
        return with(&Pieces::between, "{\"kind\": \"allowance\", " + keys + "},\n");
    };
    const std::string ahead = R"(, "far_azimuth_deg": 0, "near_azimuth_deg": 0)";
    Pieces placed;
    placed.link = "\"note\": \"x\"";
    placed.transmit = R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 0, "z_m": 0})";
    placed.receive = R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 9, "z_m": 0})";
    const auto misplaced = [&](std::string Pieces::*piece, const std::string &keys) {
        Pieces pieces = placed;
        pieces.*piece = keys;
        return pieces;
    };
    const Wrong wrong[] = {
        // patterns
        {transmit(R"("pattern": {"kind": "cosin", "gain_dbi": 6})"),
         ":7:21: links[0].stages[1].pattern.kind: 'cosin' is no kind of pattern; the nearest is 'cosine'"},
        {transmit(R"("pattern": {"gain_dbi": 6})"), "stages[1].pattern: kind is missing"},
        {transmit(R"("pattern": {"kind": "helix", "gain_dbi": 6})"),
         ".pattern.gain_dbi: 'gain_dbi' is no key of a pattern of kind 'helix'"},
        {transmit(R"("pattern": {"kind": "helix", "turnes": 6})"), "the nearest is 'turns'"},
        {transmit(R"("pattern": {"kind": "helix", "turns": 6, "spacing_wavelengths": 0.25})" + ahead),
         "stages[1].pattern: circumference_wavelengths is missing"},
        {transmit(
             R"("pattern": {"kind": "helix", "turns": 2, "spacing_wavelengths": 0.25, "circumference_wavelengths": 1})" +
             ahead),
         "pattern.turns: 2 is out of range; allowed 3 to 100"},
        {transmit(R"("pattern": {"kind": "cosine"})" + ahead),
         "stages[1].pattern: gain_dbi, gain_dbd or beam_width_deg is missing"},
        {transmit(R"("pattern": {"kind": "cosine", "gain_dbi": 6, "gain_dbd": 4})" + ahead),
         "the same quantity stands on line 7 as gain_dbi"},
        {transmit(R"("pattern": {"kind": "cosine", "gain_dbi": 6, "front_to_back_db": 0})" + ahead),
         "front_to_back_db: 0 is out of range; allowed 0.1 to 200"},
        {transmit(R"("pattern": {"kind": "cosine", "gain_dbd": 0})" + ahead),
         "pattern.gain_dbd: 0 is out of range; allowed 0.8594195821 to 57.84911963"},
        {transmit(R"("pattern": {"kind": "isotropic"})"), "stages[1].pattern: gain_dbi or gain_dbd is missing"},
        {transmit(R"("pattern": {"kind": "cuts", "gain_dbi": 6})" + ahead),
         "pattern: azimuth_cut or elevation_cut is missing"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"azimuth_deg": [0, -5], "gain_db": [0, 0]}})" +
             ahead),
         "azimuth_cut.azimuth_deg[1]: -5 is lower than the row before it; angles must rise"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"azimuth_deg": [0, 360], "gain_db": [0, 0]}})" +
             ahead),
         "azimuth_deg[0]: 0 is the last row's angle again, a full turn later"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"azimuth_deg": [0, 90], "gain_db": [0, -190]}})" +
             ahead),
         "gain_db[1]: -190 differs by more than 100 dB from the row before it"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"azimuth_deg": [0], "gain_db": [0, 0]}})" +
             ahead),
         "this column has 2 rows, the azimuths have 1"},
        {transmit(R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"azimuth_deg": [], "gain_db": []}})" +
                  ahead),
         "azimuth_cut: this table has no rows"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"frequency_mhz": [0], "gain_db": [0]}})" +
             ahead),
         "'frequency_mhz' is no key of this table"},
        {transmit(R"("pattern": {"kind": "cuts", "gain_dbi": 6, "azimuth_cut": {"file": "x.s2p"}})" + ahead),
         "a Touchstone file holds gains over frequency; this table takes azimuth_deg"},
        {transmit(
             R"("pattern": {"kind": "cuts", "gain_dbi": 6, "elevation_cut": {"elevation_deg": [-80, 90], "gain_db": [0, 0]}})" +
             ahead),
         "elevation_deg[0]: -80 is out of range; allowed -90 to -90"},
        {transmit(R"("gain_dbi": 0, "pattern": {"kind": "half-wave dipole"})" + ahead),
         "stages[1].pattern: a pattern stands in place of gain_dbi; give one of them"},
        {transmit(
             R"("gain_table": {"frequency_mhz": [600], "gain_dbi": [1]}, "pattern": {"kind": "half-wave dipole"})" +
             ahead),
         "a pattern stands in place of a gain_table"},
        {transmit(R"("pattern": {"kind": "half-wave dipole"})"),
         "stages[1]: far_azimuth_deg is missing: where the pattern sees the other antenna"},
        {transmit(R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 0)"),
         "stages[1]: near_azimuth_deg is missing"},
        {transmit(R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 400, "near_azimuth_deg": 0)"),
         "far_azimuth_deg: 400 is out of range; allowed -360 to 360"},
        {transmit(R"("gain_dbi": 0, "far_azimuth_deg": 0)"),
         "far_azimuth_deg: a direction has a use only with a pattern"},
        {transmit(R"("gain_dbi": 0, "turns": 5)"), "turns belongs to a pattern"},
        {with(&Pieces::source, R"("power_dbm": 0, "pattern": {"kind": "isotropic"})"),
         "'pattern' is no key of a stage of kind 'source'"},
        // places
        {misplaced(&Pieces::receive, R"("gain_dbi": 0)"),
         "stages[3]: the other antenna has a place, so this one needs its place"},
        {misplaced(&Pieces::receive, R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 9})"),
         "stages[3].place: z_m or z_ft is missing"},
        {misplaced(&Pieces::receive, R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 9, "z": 3})"),
         "'z' needs its unit: 'z_m', 'z_ft'"},
        {misplaced(&Pieces::receive, R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 9, "z_m": 0, "tilt_deg": 95})"),
         "place.tilt_deg: 95 is out of range; allowed -90 to 90"},
        {misplaced(&Pieces::receive, R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 0.001, "z_m": 0})"),
         "place: this is 0.001 m from the other antenna; they must be 0.01 m apart or more"},
        {misplaced(&Pieces::receive, R"("gain_dbi": 0, "near_place": {"x_m": 0, "y_m": 9, "z_m": 0})"),
         "a near_place needs a far_place beside it"},
        {misplaced(
             &Pieces::receive,
             R"("gain_dbi": 0, "far_place": {"x_m": 0, "y_m": 9, "z_m": 0}, "near_place": {"x_m": 0, "y_m": 10, "z_m": 0})"),
         "near_place: this is 10 m from the other antenna, farther than the far place with 9 m"},
        {misplaced(
             &Pieces::receive,
             R"("gain_dbi": 0, "place": {"x_m": 0, "y_m": 9, "z_m": 0}, "far_place": {"x_m": 0, "y_m": 9, "z_m": 0})"),
         "far_place: this antenna has a place for both ends of the walk already"},
        {misplaced(&Pieces::link, R"("far_distance_m": 9)"),
         "far_distance_m: the places of the antennas tell the distance"},
        {misplaced(
             &Pieces::transmit,
             R"("pattern": {"kind": "half-wave dipole"}, "far_azimuth_deg": 0, "place": {"x_m": 0, "y_m": 0, "z_m": 0})"),
         "far_azimuth_deg: the places of the antennas tell the directions"},
        {misplaced(&Pieces::transmit, R"("pattern": {"kind": "cosine"}, "place": {"x_m": 0, "y_m": 0, "z_m": 0})"),
         "stages[1].pattern: gain_dbi, gain_dbd or beam_width_deg is missing"},
        {misplaced(&Pieces::frequency, "0.01"), "frequency_mhz: 0.01 is out of range"},
        {misplaced(&Pieces::air, R"("path": {"model": "free space", "transmit_height_m": 2, "receive_height_m": 2})"),
         "stages[2].path: heights would be said twice"},
        {misplaced(
             &Pieces::air,
             R"("path": {"model": "radiating cable", "longitudinal_loss_db_per_100m": 4, "coupling_loss_db": 60})"),
         "along a radiating cable the distance counts"},
        // paths
        {air(R"({"model": "tworay"})"),
         ":9:19: links[0].stages[2].path.model: 'tworay' is no model of a path; the nearest is 'two-ray'"},
        {air(R"({"exponent": 2})"), "stages[2].path: model is missing"},
        {air(R"({"model": "indoor", "exponent": 2})"), "'exponent' is no key of a path of model 'indoor'"},
        {air(R"({"model": "log-distance"})"), "stages[2].path: exponent is missing"},
        {air(R"({"model": "log-distance", "exponent": 12})"), "path.exponent: 12 is out of range; allowed 0.1 to 10"},
        {air(R"({"model": "log-distance", "exponent": 0})"), "path.exponent: 0 is out of range"},
        {air(R"({"model": "indoor"})"), "stages[2].path: power_loss_coefficient is missing"},
        {air(R"({"model": "site-general"})"), "stages[2].path: environment is missing"},
        {air(R"({"model": "site-general", "environment": "office"})"),
         "'office' is no environment; the nearest is 'office in sight'"},
        {air(R"({"model": "two-ray", "transmit_height_m": 2, "receive_height_m": 2, "relative_permittivity": 5})"),
         "stages[2].path: polarization is missing"},
        {air(R"({"model": "two-ray", "polarization": "vertical", "receive_height_m": 2, "relative_permittivity": 5})"),
         "stages[2].path: transmit_height_m or transmit_height_ft is missing"},
        {air(R"({"model": "free space", "walls": 2})"), "stages[2].path: wall_loss_db is missing"},
        {air(R"({"model": "free space", "wall_loss_db": 2})"), "stages[2].path: walls is missing"},
        {air(R"({"model": "free space", "walls": 1.5, "wall_loss_db": 2})"),
         "1.5 is no number of walls; allowed are whole numbers from 0 to 100"},
        {air(R"({"model": "free space", "edges": [{"distance_m": 5, "height_m": 2}]})"),
         "stages[2].path: transmit_height_m or transmit_height_ft is missing"},
        {air(R"({"model": "free space", "edges": [{"height_m": 2}]})"),
         "path.edges[0]: distance_m or distance_ft is missing"},
        {air(R"({"model": "free space", "transmit_height_m": 2, "receive_height_m": 2, "edges": [{"distance_m": 5, "height_m": 2}, {"distance_m": 5, "height_m": 2000}]})"),
         "path.edges[1].height_m: 2000 is out of range; allowed -1000 to 1000"},
        {air(R"({"model": "radiating cable", "longitudinal_loss_db_per_100m": 4})"),
         "stages[2].path: coupling_loss_db is missing"},
        // bodies
        {body(R"("body_table": {"facing_deg": [0], "loss_db": [3]})"), "stages[3]: facing_deg is missing"},
        {body(R"("loss_db": 3, "facing_deg": 0)"), "facing_deg: facing_deg has a use only with a body_table"},
        {body(R"("loss_db": 3, "facing_deg": 0, "body_table": {"facing_deg": [0], "loss_db": [3]})"),
         "body_table: a body_table stands in place of loss_db"},
        {body(R"("facing_deg": 0, "body_table": {"facing_deg": [0], "loss_db": [-3]})"),
         "body_table.loss_db[0]: -3 is out of range; allowed 0 to 200"},
        // noise
        {link(R"("noise": {"carriers": 4})"), "links[0].noise: bandwidth_mhz or bandwidth_khz is missing"},
        {link(R"("noise": {"bandwidth_khz": 0})"),
         ":4:28: links[0].noise.bandwidth_khz: 0 is out of range; allowed 0.001 to 100000000"},
        {link(R"("noise": {"bandwith_khz": 200})"), "the nearest is 'bandwidth_khz'"},
        {link(R"("noise": {"bandwidth_khz": 200, "carriers": 1})"),
         "1 is no number of carriers; allowed are whole numbers from 2 to 1000000"},
        {link(R"("noise": {"bandwidth_khz": 200, "antenna_temperature_k": 290, "external_noise_figure_db": 10})"),
         "noise.external_noise_figure_db: the antenna's noise is given by antenna_temperature_k or by "
         "external_noise_figure_db"},
        {link(R"("noise": {"bandwidth_khz": 200, "noise_dbm": -90})"),
         "noise: noise_at is missing: antenna (at its terminal) or receiver (at its input)"},
        {link(R"("noise": {"bandwidth_khz": 200, "interference_at": "antenna"})"),
         "noise: interference_dbm is missing"},
        {link(R"("noise": {"bandwidth_khz": 200, "noise_dbm": -90, "noise_at": "mast"})"),
         "'mast' is no place of a measured level; there are 'antenna', 'receiver'"},
        {link(R"("noise": {"bandwidth_khz": 200, "carrier_to_noise_db": 500})"),
         "carrier_to_noise_db: 500 is out of range; allowed -100 to 100"},
        {link(R"("noise": 200)"), "links[0].noise: this must be an object, not a number"},
        {with(&Pieces::receiver, R"("noise_figure_db": 120)"),
         "noise_figure_db: 120 is out of range; allowed 0 to 100"},
        {with(&Pieces::receiver, R"("noise_figure_db": 1, "noise_temperature_k": 70)"),
         "the same quantity stands on line 11 as noise_figure_db"},
        {with(&Pieces::transmit, R"("gain_dbi": 0, "noise_figure_db": 3)"),
         "noise_figure_db belongs to 'amplifier', 'receiver'"},
        // fading
        {link(R"("fading": {"model": "Rayleigh"})"), "fading: outage_percent is missing"},
        {link(R"("fading": {"outage_percent": 1})"), "fading: model is missing"},
        {link(R"("fading": {"model": "Raleigh", "outage_percent": 1})"),
         ":4:21: links[0].fading.model: 'Raleigh' is no model of fading; the nearest is 'Rayleigh'"},
        {link(R"("fading": {"model": "Rayleigh", "k_db": 3, "outage_percent": 1})"),
         "'k_db' is no key of fading of model 'Rayleigh'"},
        {link(R"("fading": {"model": "Rice", "outage_percent": 1})"), "fading: k_db is missing"},
        {link(R"("fading": {"model": "Nakagami", "outage_percent": 1})"), "fading: shape is missing"},
        {link(R"("fading": {"model": "Suzuki", "outage_percent": 1})"), "fading: standard_deviation_db is missing"},
        {link(R"("fading": {"model": "Rice", "k_db": 50, "outage_percent": 1})"),
         "k_db: 50 is out of range; allowed -100 to 40"},
        {link(R"("fading": {"model": "Nakagami", "shape": 0.1, "outage_percent": 1})"),
         "shape: 0.1 is out of range; allowed 0.5 to 100"},
        {link(R"("fading": {"model": "Rayleigh", "outage_percent": 100})"),
         "outage_percent: 100 is out of range; allowed 1e-07 to 99.9999"},
        {link(R"("fading": {"model": "Rayleigh", "outage_percent": 1, "branches": 0})"),
         "branches: 0 is out of range; allowed 1 to 100"},
        // limits
        {link(R"("limits": {})"), "links[0].limits: this must be a list, not an object"},
        {link(R"("limits": [])"), "links[0].limits: there must be at least one limit"},
        {link(R"("limits": [{"rule": "47 CFR 74.861"}])"),
         ":4:21: links[0].limits[0].rule: '47 CFR 74.861' is no rule that the library knows; the nearest is '47 CFR "
         "74.861(e)(1)'"},
        {link(R"j("limits": [{"rule": "47 CFR 15.236(d)", "limit_mw": 3}])j"),
         "'limit_mw' is no key of a published limit"},
        {link(R"("limits": [{"quantity": "e.i.r.p.", "limit_mw": 3}])"), "limits[0]: label is missing"},
        {link(R"("limits": [{"label": "x", "limit_mw": 3}])"), "limits[0]: quantity is missing"},
        {link(R"("limits": [{"label": "x", "quantity": "eirp", "limit_mw": 3}])"),
         "'eirp' is no quantity that a rule limits; the nearest is 'e.i.r.p.'"},
        {link(R"("limits": [{"label": "x", "quantity": "e.i.r.p."}])"),
         "limits[0]: limit_dbm or limit_mw or limit_w is missing"},
        {link(R"("limits": [{"label": "x", "quantity": "e.i.r.p.", "limit": 3}])"),
         "'limit' needs its unit: 'limit_dbm', 'limit_mw', 'limit_w'"},
        {link(R"("limits": [{"label": "x", "quantity": "e.i.r.p.", "limit_dbm": 300}])"),
         "limit_dbm: 300 is out of range; allowed -200 to 150"},
        {link(
             R"("limits": [{"label": "x", "quantity": "e.i.r.p.", "limit_dbm": 30, "lowest_mhz": 600, "highest_mhz": 500}])"),
         "highest_mhz: 500 lies below lowest_mhz 600"},
        // exposure
        {link(R"("exposure": {"reflection_factor": 1})"),
         "exposure: rule, limit_w_per_m2 or limit_mw_per_cm2 is missing"},
        {link(R"("exposure": {"rule": "47 CFR 1.1310", "reflection_factor": 1})"), "exposure: audience is missing"},
        {link(R"("exposure": {"rule": "47 CFR 1.1310", "audience": "crew", "reflection_factor": 1})"),
         "'crew' is no audience; there are 'general public', 'occupational'"},
        {link(R"("exposure": {"rule": "47 CFR 1.1307", "audience": "occupational", "reflection_factor": 1})"),
         "'47 CFR 1.1307' is no exposure rule that the library knows"},
        {link(R"("exposure": {"limit_w_per_m2": 10})"), "exposure: reflection_factor is missing"},
        {link(R"("exposure": {"limit_w_per_m2": 10, "reflection_factor": 5})"),
         "reflection_factor: 5 is out of range; allowed 1 to 4"},
        {link(R"("exposure": {"limit_mw_per_cm2": 0, "reflection_factor": 1})"), "limit_mw_per_cm2: 0 is out of range"},
        {link(R"("exposure": {"limit_w_per_m2": 10, "audience": "occupational", "reflection_factor": 1})"),
         "an own limit says already whom it protects"},
        {link(
             R"("exposure": {"rule": "ICNIRP 2020", "audience": "occupational", "limit_w_per_m2": 10, "reflection_factor": 1})"),
         "the limit stands here as limit_w_per_m2 too"},
        {link(R"("exposure": {"limit_w_per_m2": 10, "reflection_factor": 1, "transmitters": 1.5})"),
         "1.5 is no number of transmitters"},
        {link(R"("exposure": {"limit_w_per_m2": 10, "reflection_factor": 1, "transmitters": 0})"),
         "transmitters: 0 is out of range; allowed 1 to 1000"},
    };
    for (const Wrong &one : wrong) {
        SCOPED_TRACE(one.words);
        expect_refused(page_of(one.pieces), one.words);
    }
}

TEST(DeskTerms, AModelIsRefusedWhereItDoesNotHold) {
    Pieces pieces;
    pieces.link = "\"far_distance_m\": 200,\n\"near_distance_m\": 2";
    pieces.air = R"("path": {"model": "site-general", "environment": "office in sight"})";
    expect_refused(page_of(pieces), "far_distance_m: 200 is out of range; allowed 2 to 27"); // ITU-R P.1238-11, table 2
}

TEST(DeskTerms, ALinkWithoutAntennaHasNoLimitOfWhatIsRadiated) {
    const auto cable_check = [](const std::string &keys) {
        return run(
            {"budget", TemporaryFile(R"({"production": "T", "links": [{"name": "A", "frequency_mhz": 600, )" + keys +
                                     R"(, "stages": [{"kind": "source", "power_dbm": 0}, {"kind": "receiver"}]}]})")
                           .path()});
    };
    expect_refused(cable_check(R"("limits": [{"label": "x", "quantity": "e.i.r.p.", "limit_mw": 3}])"),
                   "limits[0]: this limits e.i.r.p., but the link has no antenna");
    expect_refused(cable_check(R"("exposure": {"limit_w_per_m2": 10, "reflection_factor": 1})"),
                   "exposure: this link has no antenna, so nobody is exposed to it");
    EXPECT_EQ(cable_check(R"("limits": [{"label": "x", "quantity": "transmitter output", "limit_mw": 3}])").code, 1);
    Pieces low =
        exposed(R"("rule": "47 CFR 1.1310", "audience": "general public", "reflection_factor": 1)", R"("power_w": 1)");
    low.frequency = "20"; // the library has no row below 30 MHz
    expect_refused(page_of(low), "exposure.rule: this rule says nothing of the link's 20 MHz");
}

TEST(DeskTerms, RefusalsOfNeighbours) {
    const std::string base = R"("name": "x", "transmitter": "out", "receiver": "in")";
    const struct {
        std::string keys;
        const char *words;
    } wrong[] = {
        {R"("name": "x", "transmitter": "outt", "receiver": "in")",
         "side_by_side[0].transmitter: 'outt' is no link of this scenario; the nearest is 'out'"},
        {R"("name": "x", "transmitter": "out", "receiver": "out")", "transmitter and receiver belong to the same link"},
        {R"("transmitter": "out", "receiver": "in")", "side_by_side[0]: name is missing"},
        {base, "separation_m or separation_ft is missing; or coupling_loss_db as measured"},
        {base + R"(, "separation_m": 3)", "transmit_gain_dbi is missing: the gain towards the other antenna"},
        {base + R"(, "coupling_loss_db": 30, "separation_m": 3, "transmit_gain_dbi": 0, "receive_gain_dbi": 0)",
         "give one of them"},
        {base + R"(, "coupling_loss_db": 300)", "coupling_loss_db: 300 is out of range"},
        {base + R"(, "coupling": 300)", "'coupling' is no key of two systems side by side"},
    };
    for (const auto &one : wrong) {
        SCOPED_TRACE(one.words);
        expect_refused(run({"budget", TemporaryFile(two_links("{" + one.keys + "}")).path()}), one.words);
    }
    const std::string noise = "{" + base + R"(, "coupling_loss_db": 30, "transmit_noise_dbm": -60})";
    expect_refused(run({"budget", TemporaryFile(two_links(noise, "")).path()}),
                   "receiver: this link says nothing of its noise");
}

// The pieces of JSON that the documentation shows for these are accepted.
TEST(Readme, ItsPiecesAreAnswered) {
    const std::string document = read_file(DESK_SOURCES "/README.md");
    const auto piece = [&](const std::string &first) {
        const std::size_t begin = document.find("```json\n" + first);
        EXPECT_NE(begin, std::string::npos) << first;
        return document.substr(begin + 8, document.find("```", begin + 8) - begin - 8);
    };
    Pieces pieces;
    std::string terms = piece("\"noise\"");
    pieces.link += ", " + terms;
    const Json told = link_of(pieces);
    EXPECT_EQ(told.at("limits").size(), 2u);
    EXPECT_FALSE(told.at("exposure").is_null());
    EXPECT_FALSE(told.at("fading").is_null());
    std::string antennas = piece("{ \"kind\": \"antenna\", \"label\": \"panel\"");
    const std::size_t second = antennas.find("{ \"kind\": \"antenna\", \"label\": \"pack whip\"");
    ASSERT_NE(second, std::string::npos);
    const std::string text = R"({"production": "T", "links": [{"name": "A", "frequency_mhz": 600, "stages": [
        {"kind": "source", "power_dbm": 0}, )" +
                             antennas.substr(0, second) + R"(, {"kind": "air"}, )" + antennas.substr(second) +
                             R"(, {"kind": "receiver", "floor_dbm": -90, "ceiling_dbm": -10}]}]})";
    const Printout page = run({"budget", TemporaryFile(text).path()});
    EXPECT_EQ(page.err, "");
    EXPECT_NE(page.out.find("Places:"), std::string::npos) << page.out;
}

} // namespace
} // namespace desk_test
