// What lvb_compute_path_loss and a path in a chain refuse: status, every number of the fault, and the sentence.
#include "door/refusal.hpp"
#include "path/paths.hpp"

#include <limits>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr std::int32_t in_path = LVB_STRUCT_PATH, in_edge = LVB_STRUCT_EDGE, in_call = LVB_STRUCT_NONE;

void refused(const lvb_path *path, double mhz, double metres, const Expected &expected) {
    Untouched<lvb_path_loss> loss;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_path_loss(path, mhz, metres, &loss.result, &fault), expected.status);
    EXPECT_TRUE(loss.holds());
    expect_fault(fault, expected);
    EXPECT_EQ(lvb_compute_path_loss(path, mhz, metres, &loss.result, nullptr), expected.status);
    EXPECT_TRUE(loss.holds());
}
void refused(Way way, const Expected &expected) { refused(way.lent(), 900.0, 10.0, expected); }
void refused_at(Way way, double mhz, double metres, const Expected &expected) {
    refused(way.lent(), mhz, metres, expected);
}

struct Number {
    std::int32_t field;
    double lvb_path::*member;
    double low, high;
    std::vector<std::int32_t> users, needers;
    bool pair = false; // of heights, or of a count and a loss
};
const std::vector<std::int32_t> all_but_cable = {LVB_PATH_FREE_SPACE, LVB_PATH_TWO_RAY, LVB_PATH_LOG_DISTANCE,
                                                 LVB_PATH_INDOOR, LVB_PATH_SITE_GENERAL};
const Number numbers[] = {
    {LVB_FIELD_TRANSMIT_HEIGHT_M, &lvb_path::transmit_height_m, 0.01, 1000.0, all_but_cable, {LVB_PATH_TWO_RAY}, true},
    {LVB_FIELD_RECEIVE_HEIGHT_M, &lvb_path::receive_height_m, 0.01, 1000.0, all_but_cable, {LVB_PATH_TWO_RAY}, true},
    {LVB_FIELD_RELATIVE_PERMITTIVITY,
     &lvb_path::relative_permittivity,
     1.0,
     1000.0,
     {LVB_PATH_TWO_RAY},
     {LVB_PATH_TWO_RAY}},
    {LVB_FIELD_CONDUCTIVITY_S_PER_M, &lvb_path::conductivity_s_per_m, 0.0, 1e8, {LVB_PATH_TWO_RAY}, {}},
    {LVB_FIELD_EXPONENT,
     &lvb_path::exponent,
     0.1,
     10.0,
     {LVB_PATH_LOG_DISTANCE, LVB_PATH_RADIATING_CABLE},
     {LVB_PATH_LOG_DISTANCE}},
    {LVB_FIELD_REFERENCE_DISTANCE_M, &lvb_path::reference_distance_m, 0.01, 1e6, {LVB_PATH_LOG_DISTANCE}, {}},
    {LVB_FIELD_REFERENCE_LOSS_DB, &lvb_path::reference_loss_db, 0.001, 300.0, {LVB_PATH_LOG_DISTANCE}, {}},
    {LVB_FIELD_POWER_LOSS_COEFFICIENT,
     &lvb_path::power_loss_coefficient,
     1.0,
     100.0,
     {LVB_PATH_INDOOR},
     {LVB_PATH_INDOOR}},
    {LVB_FIELD_LONGITUDINAL_LOSS_DB_PER_100M,
     &lvb_path::longitudinal_loss_db_per_100m,
     0.01,
     1000.0,
     {LVB_PATH_RADIATING_CABLE},
     {LVB_PATH_RADIATING_CABLE}},
    {LVB_FIELD_COUPLING_LOSS_DB,
     &lvb_path::coupling_loss_db,
     10.0,
     200.0,
     {LVB_PATH_RADIATING_CABLE},
     {LVB_PATH_RADIATING_CABLE}},
    {LVB_FIELD_LATERAL_DISTANCE_M, &lvb_path::lateral_distance_m, 0.1, 1000.0, {LVB_PATH_RADIATING_CABLE}, {}},
    {LVB_FIELD_STANDARD_DEVIATION_DB,
     &lvb_path::standard_deviation_db,
     0.1,
     30.0,
     {LVB_PATH_LOG_DISTANCE, LVB_PATH_INDOOR},
     {}},
};
bool holds(const std::vector<std::int32_t> &models, std::int32_t model) {
    return std::find(models.begin(), models.end(), model) != models.end();
}

TEST(PathRefused, EveryNumberInEveryModel) {
    for (const Number &number : numbers)
        for (const Way &sound : one_of_each()) {
            const std::int32_t model = sound.path.model;
            SCOPED_TRACE(std::string(lvb_field_name(number.field)) + " of model " + std::to_string(model));
            const auto with = [&](double value) {
                Way way = sound;
                if (number.pair && model != LVB_PATH_RADIATING_CABLE) way.heights(2.0, 2.0);
                way.path.*number.member = value;
                if (number.field == LVB_FIELD_LATERAL_DISTANCE_M && holds(number.users, model)) way.path.exponent = 1.0;
                return way;
            };
            if (!holds(number.users, model)) {
                refused(with(1.0), {LVB_E_UNUSED, in_path, number.field, -1, -1, 1.0, none, none,
                                    "lvb_path." + std::string(lvb_field_name(number.field)) +
                                        " is filled, but this model has no use for it."});
                refused(with(none), {LVB_E_NAN, in_path, number.field});
                refused(with(-infinity), {LVB_E_INFINITE, in_path, number.field, -1, -1, -infinity});
                continue;
            }
            const Expected range{LVB_OK, in_path, number.field, -1, -1, none, number.low, number.high};
            const auto expected = [&](lvb_status status, double value) {
                Expected made = range;
                made.status = status;
                made.value = value;
                return made;
            };
            const double below = number.low == 0.0 ? -1e-300 : std::nextafter(number.low, 0.0);
            const double above = std::nextafter(number.high, infinity);
            refused(with(below), expected(LVB_E_BELOW_RANGE, below));
            refused(with(above), expected(LVB_E_ABOVE_RANGE, above));
            refused(with(none), expected(LVB_E_NAN, none));
            refused(with(infinity), expected(LVB_E_INFINITE, infinity));
            // a height of 1000 m makes the straight line longer than the indoor models are stated for
            const bool too_long = number.pair && model >= LVB_PATH_INDOOR;
            const double metres = number.field == LVB_FIELD_REFERENCE_DISTANCE_M ? number.high : 20.0;
            for (const double good : {number.low, too_long ? 3.0 : number.high})
                EXPECT_EQ(with(good == 0.0 ? 1e-300 : good).compute(900.0, metres), LVB_OK);
            if (holds(number.needers, model) || number.pair) refused(with(0.0), expected(LVB_E_MISSING, 0.0));
            else EXPECT_EQ(with(0.0).compute(900.0, 20.0), LVB_OK);
            auto told = sized<lvb_range>();
            ASSERT_EQ(lvb_describe_field(in_path, 0, number.field, &told, nullptr), LVB_OK);
            EXPECT_EQ(told.minimum, number.low);
            EXPECT_EQ(told.maximum, number.high);
        }
}

TEST(PathRefused, Choices) {
    for (const std::int32_t model : {-1, 6, 1000000}) {
        Way way(model);
        refused(way, {LVB_E_UNKNOWN_VALUE, in_path, LVB_FIELD_MODEL, -1, -1, static_cast<double>(model), 0.0, 5.0});
    }
    refused(site(7), {LVB_E_UNKNOWN_VALUE, in_path, LVB_FIELD_ENVIRONMENT, -1, -1, 7.0, 0.0, 6.0});
    refused(site(-1), {LVB_E_UNKNOWN_VALUE, in_path, LVB_FIELD_ENVIRONMENT, -1, -1, -1.0, 0.0, 6.0});
    refused(site(0), {LVB_E_MISSING, in_path, LVB_FIELD_ENVIRONMENT, -1, -1, 0.0, 1.0, 6.0,
                      "lvb_path.environment is missing; allowed 1 to 6."});
    for (Way way : one_of_each()) {
        if (way.path.model == LVB_PATH_SITE_GENERAL) continue;
        way.path.environment = 1;
        refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_ENVIRONMENT, -1, -1, 1.0});
        way.path.environment = 0;
        way.path.polarization = 2;
        refused(way, {LVB_E_UNKNOWN_VALUE, in_path, LVB_FIELD_POLARIZATION, -1, -1, 2.0, 0.0, 1.0});
        way.path.polarization = 1;
        if (way.path.model == LVB_PATH_TWO_RAY) EXPECT_EQ(way.compute(900.0, 10.0), LVB_OK);
        else refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_POLARIZATION, -1, -1, 1.0});
    }
}

TEST(PathRefused, WallsAndFloorsWithoutCountOrLoss) {
    for (Way way : one_of_each()) {
        way.path.floor_count = 2;
        refused(way, {LVB_E_MISSING, in_path, LVB_FIELD_FLOOR_LOSS_DB, -1, -1, 0.0, 0.0, 100.0});
        way.path.floor_loss_db = 100.5;
        refused(way, {LVB_E_ABOVE_RANGE, in_path, LVB_FIELD_FLOOR_LOSS_DB, -1, -1, 100.5, 0.0, 100.0});
        way.path.floor_loss_db = 10.0;
        way.path.floor_count = 0;
        refused(way, {LVB_E_MISSING, in_path, LVB_FIELD_FLOOR_COUNT, -1, -1, 0.0, 1.0, 100.0});
        way.path.floor_loss_db = 0.0;
        if (!takes_walls(way)) continue;
        way.path.wall_loss_db = 3.0;
        refused(way, {LVB_E_MISSING, in_path, LVB_FIELD_WALL_COUNT, -1, -1, 0.0, 1.0, 100.0});
        way.path.wall_count = 101;
        refused(way, {LVB_E_ABOVE_RANGE, in_path, LVB_FIELD_WALL_COUNT, -1, -1, 101.0, 0.0, 100.0});
        way.path.wall_count = 100;
        way.path.wall_loss_db = -1.0;
        refused(way, {LVB_E_BELOW_RANGE, in_path, LVB_FIELD_WALL_LOSS_DB, -1, -1, -1.0, 0.0, 100.0});
        way.path.wall_loss_db = 0.0;
        refused(way, {LVB_E_MISSING, in_path, LVB_FIELD_WALL_LOSS_DB, -1, -1, 0.0, 0.0, 100.0});
        way.path.wall_loss_db = 100.0;
        EXPECT_EQ(way.compute(900.0, 10.0), LVB_OK);
    }
}

// What a model's figures were measured through is not counted again.
TEST(PathRefused, WallsAndEdgesThatTheModelHolds) {
    for (Way way : {indoor(), site(LVB_ENVIRONMENT_OFFICE_IN_SIGHT), site(LVB_ENVIRONMENT_INDUSTRIAL_OUT_OF_SIGHT)}) {
        way.path.wall_count = 2;
        refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_WALL_COUNT, -1, -1, 2.0, none, none,
                      "lvb_path.wall_count is filled, but this model has no use for it."});
        way.path.wall_loss_db = 5.0;
        refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_WALL_LOSS_DB, -1, -1, 5.0});
        way.path.wall_count = 0;
        refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_WALL_LOSS_DB, -1, -1, 5.0});
    }
    std::vector<Way> ways = {indoor()};
    for (std::int32_t environment = 1; environment <= 6; ++environment) ways.push_back(site(environment));
    for (Way &way : ways) {
        way.heights(2.0, 2.0);
        way.edges = {{5.0, 2.2}};
        if (takes_edges(way)) EXPECT_EQ(way.compute(900.0, 10.0), LVB_OK);
        else refused(way, {LVB_E_UNUSED, in_path, LVB_FIELD_EDGE_COUNT, -1, -1, 1.0});
    }
}

TEST(PathRefused, Edges) {
    Way sound = Way().heights(2.0, 2.0);
    sound.edges = {{1.0, 1.0}, {2.0, 3.0}, {3.0, -1000.0}};
    EXPECT_EQ(sound.compute(900.0, 10.0), LVB_OK);

    Way far = sound;
    far.edges[1].distance_m = 1.1e9;
    refused(far, {LVB_E_ABOVE_RANGE, in_edge, LVB_FIELD_DISTANCE_M, -1, 1, 1.1e9, 0.01, 1e9,
                  "lvb_path.edges[1].distance_m is 1100000000, which is too high; allowed 0.01 to 1000000000."});
    Way at_the_antenna = sound;
    at_the_antenna.edges[0].distance_m = 0.0;
    refused(at_the_antenna, {LVB_E_MISSING, in_edge, LVB_FIELD_DISTANCE_M, -1, 0, 0.0, 0.01, 1e9});
    Way high = sound;
    high.edges[2].height_m = none;
    refused(high, {LVB_E_NAN, in_edge, LVB_FIELD_HEIGHT_M, -1, 2, none, -1000.0, 1000.0});
    Way without_heights = sound;
    without_heights.heights(0.0, 0.0);
    refused(without_heights, {LVB_E_MISSING, in_path, LVB_FIELD_TRANSMIT_HEIGHT_M, -1, -1, 0.0, 0.01, 1000.0});
    Way cable = radiating_cable();
    cable.edges = sound.edges;
    refused(cable, {LVB_E_UNUSED, in_path, LVB_FIELD_EDGE_COUNT, -1, -1, 3.0});

    lvb_path path = *sound.lent();
    path.edge_count = 0;
    refused(&path, 900.0, 10.0, {LVB_E_MISSING, in_path, LVB_FIELD_EDGE_COUNT, -1, -1, 0.0, 1.0, 1024.0});
    path.edge_count = 1025;
    refused(&path, 900.0, 10.0, {LVB_E_COUNT, in_path, LVB_FIELD_EDGE_COUNT, -1, -1, 1025.0, 0.0, 1024.0});
    path.edge_count = 3;
    path.edges = nullptr;
    refused(
        &path, 900.0, 10.0,
        {LVB_E_NULL, in_path, LVB_FIELD_EDGES, -1, -1, none, none, none, "lvb_path.edges is null, but must be given."});
    path.edges = sound.edges.data();
    for (const std::uint32_t size : {0u, 15u, 4097u}) {
        path.edge_size = size;
        refused(&path, 900.0, 10.0,
                {LVB_E_ELEMENT_SIZE, in_path, LVB_FIELD_EDGE_SIZE, -1, -1, static_cast<double>(size), 16.0, 4096.0});
    }
}

TEST(PathRefused, LongerEdgesAreSteppedOverAndTheirTailsChecked) {
    struct Longer {
        lvb_edge edge;
        std::uint64_t tail;
    } longer[] = {{{4.0, 3.0}, 0}, {{6.0, 2.5}, 0}};
    Way way = Way().heights(2.0, 2.0);
    way.edges = {longer[0].edge, longer[1].edge};
    const double loss = way.at(900.0, 10.0);
    lvb_path path = *way.lent();
    path.edges = &longer[0].edge;
    path.edge_size = sizeof(Longer);
    auto out = sized<lvb_path_loss>();
    ASSERT_EQ(lvb_compute_path_loss(&path, 900.0, 10.0, &out, nullptr), LVB_OK);
    EXPECT_EQ(out.loss_db, loss);
    longer[1].tail = 1;
    refused(&path, 900.0, 10.0,
            {LVB_E_UNKNOWN_TAIL, in_edge, LVB_FIELD_SIZE, -1, 1, 24.0, 0.0, 16.0,
             "lvb_path.edges[1]: the struct is longer than the 16 bytes that this library knows, "
             "and the rest is not zero."});
}

TEST(PathRefused, FrequencyAndDistance) {
    refused_at(Way(), 0.0, 10.0, {LVB_E_MISSING, in_call, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 0.0, 0.1, 300000.0});
    refused_at(Way(), none, 10.0, {LVB_E_NAN, in_call, LVB_FIELD_FREQUENCY_MHZ, -1, -1, none, 0.1, 300000.0});
    refused_at(Way(), 900.0, 0.0,
               {LVB_E_MISSING, in_call, LVB_FIELD_DISTANCE_M, -1, -1, 0.0, 0.01, 1e9,
                "distance_m is missing; allowed 0.01 to 1000000000."});
    refused_at(Way(), 900.0, -1.0, {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, -1.0, 0.01, 1e9});
    refused_at(indoor(), 299.0, 10.0, {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 299.0, 300.0, 1e5});
    refused_at(indoor(), 900.0, 0.5, {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, 0.5, 1.0, 1000.0});
    refused_at(radiating_cable(), 900.0, 10001.0,
               {LVB_E_ABOVE_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, 10001.0, 0.0, 10000.0});
    // the law begins at its reference: nearer it would fall below any loss
    Way law = log_distance(4.0);
    refused_at(law, 900.0, 0.5, {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, 0.5, 1.0, infinity});
    law.path.reference_distance_m = 100.0;
    EXPECT_EQ(law.compute(900.0, 100.0), LVB_OK);
    refused_at(law, 900.0, 99.0,
               {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, 99.0, 100.0, infinity,
                "distance_m is 99, which is too low; allowed 100 and more."});
    // what must lie in the model's range is the straight line
    EXPECT_EQ(law.heights(61.0, 1.0).compute(900.0, 80.0), LVB_OK);
    refused_at(indoor().heights(900.0, 1.0), 900.0, 800.0,
               {LVB_E_ABOVE_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, std::sqrt(800.0 * 800.0 + 899.0 * 899.0), 1.0,
                1000.0});

    const double reach[6][4] = {{300.0, 83500.0, 2.0, 27.0},  {300.0, 82000.0, 4.0, 30.0},
                                {300.0, 83500.0, 2.0, 160.0}, {625.0, 83500.0, 4.0, 94.0},
                                {625.0, 70280.0, 2.0, 101.0}, {625.0, 70280.0, 5.0, 108.0}};
    for (std::int32_t environment = 1; environment <= 6; ++environment) {
        const double(&r)[4] = reach[environment - 1];
        Way way = site(environment);
        for (const double mhz : {r[0], r[1]})
            for (const double metres : {r[2], r[3]}) EXPECT_EQ(way.compute(mhz, metres), LVB_OK);
        const double low = std::nextafter(r[0], 0.0), high = std::nextafter(r[1], infinity);
        refused_at(way, low, r[2], {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_FREQUENCY_MHZ, -1, -1, low, r[0], r[1]});
        refused_at(way, high, r[2], {LVB_E_ABOVE_RANGE, in_call, LVB_FIELD_FREQUENCY_MHZ, -1, -1, high, r[0], r[1]});
        const double near = std::nextafter(r[2], 0.0), far = std::nextafter(r[3], infinity);
        refused_at(way, r[0], near, {LVB_E_BELOW_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, near, r[2], r[3]});
        refused_at(way, r[0], far, {LVB_E_ABOVE_RANGE, in_call, LVB_FIELD_DISTANCE_M, -1, -1, far, r[2], r[3]});
    }
}

Chain chain_over(Way &way, double far_m, double near_m, double mhz = 900.0) {
    Chain chain({source(15.0), antenna(2.0), air(), antenna(3.0), receiver(-95.0, -20.0)}, mhz, far_m, near_m);
    chain.stages[2].path = way.lent();
    return chain;
}

TEST(PathInAChainRefused, TellsTheStage) {
    Way way = log_distance();
    way.path.exponent = 11.0;
    refused(chain_over(way, 20.0, 2.0), {LVB_E_ABOVE_RANGE, in_path, LVB_FIELD_EXPONENT, 2, -1, 11.0, 0.1, 10.0,
                                         "stages[2].path.exponent is 11, which is too high; allowed 0.1 to 10."});
    Way over = Way().heights(2.0, 2.0);
    over.edges = {{1.0, 1.0}, {2.0, 2000.0}};
    refused(chain_over(over, 20.0, 2.0),
            {LVB_E_ABOVE_RANGE, in_edge, LVB_FIELD_HEIGHT_M, 2, 1, 2000.0, -1000.0, 1000.0,
             "stages[2].path.edges[1].height_m is 2000, which is too high; allowed -1000 to 1000."});
    Way beyond = log_distance();
    beyond.path.reference_distance_m = 5.0;
    refused(chain_over(beyond, 20.0, 2.0),
            {LVB_E_BELOW_RANGE, LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, 2, -1, 2.0, 5.0, infinity});
    Way office = site(LVB_ENVIRONMENT_OFFICE_IN_SIGHT);
    refused(chain_over(office, 28.0, 2.0),
            {LVB_E_ABOVE_RANGE, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 2, -1, 28.0, 2.0, 27.0,
             "lvb_link.far_distance_m is 28, which is too high; allowed 2 to 27."});
    refused(chain_over(office, 20.0, 1.0),
            {LVB_E_BELOW_RANGE, LVB_STRUCT_LINK, LVB_FIELD_NEAR_DISTANCE_M, 2, -1, 1.0, 2.0, 27.0});
    refused(chain_over(office, 20.0, 2.0, 200.0),
            {LVB_E_BELOW_RANGE, LVB_STRUCT_LINK, LVB_FIELD_FREQUENCY_MHZ, 2, -1, 200.0, 300.0, 83500.0});
    refused(chain_over(office, 0.0, 0.0),
            {LVB_E_MISSING, LVB_STRUCT_LINK, LVB_FIELD_FAR_DISTANCE_M, 2, -1, 0.0, 0.01, 1e9});
    Chain wrong_size = chain_over(way, 20.0, 2.0);
    way.path.size = 8;
    refused(wrong_size,
            {LVB_E_STRUCT_SIZE, in_path, LVB_FIELD_SIZE, 2, -1, 8.0, static_cast<double>(sizeof(lvb_path)), 4096.0});
}

TEST(PathRefused, ARadiatingCableWhoseFallOffAcrossIsNotSaid) {
    Way cable = radiating_cable();
    EXPECT_EQ(cable.compute(900.0, 20.0), LVB_OK);
    cable.path.lateral_distance_m = 2.0; // where the coupling loss was measured
    EXPECT_EQ(cable.compute(900.0, 20.0), LVB_OK);
    cable.path.lateral_distance_m = 4.0;
    refused(cable, {LVB_E_MISSING, in_path, LVB_FIELD_EXPONENT, -1, -1, 0.0, 0.1, 10.0});
}

// What stands before a radiating cable is its feed.
TEST(PathInAChainRefused, AnAntennaOfARadiatingCable) {
    Way way = radiating_cable();
    Chain chain = chain_over(way, 20.0, 2.0);
    chain.stages[1].gain_db = 9.0;
    const Expected gain{LVB_E_UNUSED,
                        LVB_STRUCT_STAGE,
                        LVB_FIELD_GAIN_DB,
                        1,
                        -1,
                        9.0,
                        none,
                        none,
                        "stages[1].gain_db is filled, but this kind of stage has no use for it."};
    refused(chain, gain);
    const double mhz[] = {500.0, 1000.0}, db[] = {0.0, 1.0};
    auto table = sized<lvb_gain_table>();
    table.row_count = 2;
    table.frequency_mhz = mhz;
    table.gain_db = db;
    chain.stages[1].gain_db = 0.0;
    chain.stages[1].gain_table = &table;
    refused(chain, {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_GAIN_TABLE, 1});
    auto pattern = sized<lvb_pattern>();
    chain.stages[1].gain_table = nullptr;
    chain.stages[1].pattern = &pattern;
    refused(chain, {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATTERN, 1});
    chain.stages[1].pattern = nullptr;
    chain.stages[3].pattern = &pattern; // the receiving antenna is one
    chain.stages[3].gain_db = 0.0;
    EXPECT_EQ(chain.compute(), LVB_OK);
    chain.stages[3].pattern = nullptr;
    chain.stages[3].gain_table = &table;
    EXPECT_EQ(chain.compute(), LVB_OK);

    auto grid = sized<lvb_grid>();
    auto bad = sized<lvb_bad>();
    auto fault = sized<lvb_fault>();
    chain.stages[1].gain_db = 9.0;
    grid.link = &chain.link;
    grid.end = LVB_END_FAR;
    EXPECT_EQ(lvb_compute_grid(&grid, &bad, &fault), LVB_E_UNUSED);
    expect_fault(fault, gain);
}

TEST(PathInAChainRefused, BelongsToTheAirAlone) {
    Way way;
    for (const std::size_t at : {std::size_t{0}, std::size_t{1}, std::size_t{3}, std::size_t{4}}) {
        Chain chain = chain_over(way, 20.0, 2.0);
        chain.stages[at].path = way.lent();
        refused(chain,
                {LVB_E_UNUSED, LVB_STRUCT_STAGE, LVB_FIELD_PATH, static_cast<std::int32_t>(at), -1, none, none, none,
                 "stages[" + std::to_string(at) + "].path is filled, but this kind of stage has no use for it."});
    }
}

} // namespace
