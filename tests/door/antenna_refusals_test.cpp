// Bad patterns, cuts, antennas and body tables, alone and on a stage.
#include "door/refusal.hpp"

#include <functional>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::int32_t in_pattern = LVB_STRUCT_PATTERN, in_around = LVB_STRUCT_AZIMUTH_CUT,
                       in_up = LVB_STRUCT_ELEVATION_CUT, in_body = LVB_STRUCT_BODY_TABLE, in_stage = LVB_STRUCT_STAGE,
                       in_antenna = LVB_STRUCT_ANTENNA;

lvb_pattern pattern_of(std::int32_t kind) {
    auto made = sized<lvb_pattern>();
    made.kind = kind;
    return made;
}
lvb_pattern helix() {
    auto made = pattern_of(LVB_PATTERN_HELIX);
    made.turns = 10.0;
    made.spacing_wavelengths = 0.24;
    made.circumference_wavelengths = 1.0;
    return made;
}

// A pattern is refused alone, on a stage with the stage's number, and on either antenna of a pointing.
void refused_pattern(const lvb_pattern &pattern, Expected expected) {
    Untouched<lvb_pattern_gain> gain;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pattern_gain(&pattern, 0.0, 0.0, &gain.result, &fault), expected.status);
    EXPECT_TRUE(gain.holds());
    expect_fault(fault, expected);
    EXPECT_EQ(lvb_compute_pattern_gain(&pattern, 0.0, 0.0, &gain.result, nullptr), expected.status);
    expected.text = "";
    Chain chain({source(0.0), antenna()});
    chain.stages[1].pattern = &pattern;
    expected.stage = 1;
    refused(chain, expected);
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    there.x_m = 3.0;
    here.pattern = &pattern;
    Untouched<lvb_pointing> pointing;
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing.result, &fault), expected.status);
    expected.stage = LVB_STAGE_TRANSMIT;
    expect_fault(fault, expected);
    EXPECT_EQ(lvb_compute_pointing(&there, &here, 600.0, &pointing.result, &fault), expected.status);
    expected.stage = LVB_STAGE_RECEIVE;
    expect_fault(fault, expected);
    EXPECT_TRUE(pointing.holds());
}

TEST(PatternRefusal, KindsAndTheFieldsTheyUse) {
    refused_pattern(pattern_of(5), {LVB_E_UNKNOWN_VALUE, in_pattern, LVB_FIELD_KIND, -1, -1, 5, 0, 4});
    refused_pattern(pattern_of(-1), {LVB_E_UNKNOWN_VALUE, in_pattern, LVB_FIELD_KIND, -1, -1, -1, 0, 4});
    struct Field {
        std::int32_t id;
        double lvb_pattern::*member;
    };
    const Field fields[] = {{LVB_FIELD_GAIN_DBI, &lvb_pattern::gain_dbi},
                            {LVB_FIELD_BEAM_WIDTH_DEG, &lvb_pattern::beam_width_deg},
                            {LVB_FIELD_FRONT_TO_BACK_DB, &lvb_pattern::front_to_back_db},
                            {LVB_FIELD_TURNS, &lvb_pattern::turns},
                            {LVB_FIELD_SPACING_WAVELENGTHS, &lvb_pattern::spacing_wavelengths},
                            {LVB_FIELD_CIRCUMFERENCE_WAVELENGTHS, &lvb_pattern::circumference_wavelengths}};
    int used = 0;
    for (std::int32_t kind = LVB_PATTERN_ISOTROPIC; kind <= LVB_PATTERN_HELIX; ++kind)
        for (const Field &field : fields) {
            lvb_pattern pattern = kind == LVB_PATTERN_HELIX ? helix() : pattern_of(kind);
            const double row[] = {0.0}, gain[] = {0.0};
            auto cut = sized<lvb_azimuth_cut>();
            cut.row_count = 1;
            cut.azimuth_deg = row;
            cut.gain_db = gain;
            if (kind == LVB_PATTERN_CUTS) pattern.azimuth_cut = &cut;
            if (kind == LVB_PATTERN_COSINE && field.id != LVB_FIELD_BEAM_WIDTH_DEG) pattern.gain_dbi = 6.0;
            auto range = sized<lvb_range>();
            const auto refuses = [&](double value, Expected expected) {
                pattern.*field.member = value;
                refused_pattern(pattern, expected);
            };
            if (lvb_describe_field(in_pattern, kind, field.id, &range, nullptr) != LVB_OK) {
                refuses(1.0, {LVB_E_UNUSED, in_pattern, field.id, -1, -1, 1.0, none, none,
                              std::string("lvb_pattern.") + lvb_field_name(field.id) +
                                  " is filled, but this kind of pattern has no use for it."});
                refuses(infinity, {LVB_E_INFINITE, in_pattern, field.id, -1, -1, infinity});
                refuses(nan, {LVB_E_NAN, in_pattern, field.id, -1, -1, nan});
                continue;
            }
            ++used;
            const double low = range.minimum, high = range.maximum;
            refuses(nan, {LVB_E_NAN, in_pattern, field.id, -1, -1, nan, low, high});
            if (low > 0.0 || low < -1.0)
                refuses(std::nextafter(low, -infinity),
                        {LVB_E_BELOW_RANGE, in_pattern, field.id, -1, -1, std::nextafter(low, -infinity), low, high});
            refuses(std::nextafter(high, infinity),
                    {LVB_E_ABOVE_RANGE, in_pattern, field.id, -1, -1, std::nextafter(high, infinity), low, high});
            refuses(infinity, {LVB_E_INFINITE, in_pattern, field.id, -1, -1, infinity, low, high});
            if (range.required != 0) refuses(0.0, {LVB_E_MISSING, in_pattern, field.id, -1, -1, 0.0, low, high});
            for (const double end : {low, high}) {
                pattern.*field.member = end;
                auto result = sized<lvb_pattern_gain>();
                EXPECT_EQ(lvb_compute_pattern_gain(&pattern, 33.0, 12.0, &result, nullptr), LVB_OK);
                EXPECT_FALSE(std::isnan(result.gain_dbi));
            }
        }
    EXPECT_EQ(used, 1 + 3 + 2 + 4); // isotropic, cosine, cuts, helix
}

TEST(PatternRefusal, ACosineHasAGainOrAWidth) {
    lvb_pattern pattern = pattern_of(LVB_PATTERN_COSINE);
    refused_pattern(pattern, {LVB_E_MISSING, in_pattern, LVB_FIELD_GAIN_DBI, -1, -1, 0.0, 3.010299956639812, 60.0});
}

TEST(PatternRefusal, CutsBelongToCuts) {
    auto around = sized<lvb_azimuth_cut>();
    auto up = sized<lvb_elevation_cut>();
    for (const std::int32_t kind : {LVB_PATTERN_ISOTROPIC, LVB_PATTERN_HALF_WAVE_DIPOLE}) {
        lvb_pattern pattern = pattern_of(kind);
        pattern.azimuth_cut = &around;
        refused_pattern(pattern, {LVB_E_UNUSED, in_pattern, LVB_FIELD_AZIMUTH_CUT});
        pattern.azimuth_cut = nullptr;
        pattern.elevation_cut = &up;
        refused_pattern(pattern, {LVB_E_UNUSED, in_pattern, LVB_FIELD_ELEVATION_CUT});
    }
    refused_pattern(pattern_of(LVB_PATTERN_CUTS), {LVB_E_MISSING, in_pattern, LVB_FIELD_AZIMUTH_CUT, -1, -1, 0.0});
}

void refused_around(const std::vector<double> &angles, const std::vector<double> &gains, const Expected &expected) {
    auto cut = sized<lvb_azimuth_cut>();
    cut.row_count = static_cast<std::uint32_t>(angles.size());
    cut.azimuth_deg = angles.data();
    cut.gain_db = gains.data();
    lvb_pattern pattern = pattern_of(LVB_PATTERN_CUTS);
    pattern.azimuth_cut = &cut;
    refused_pattern(pattern, expected);
}
void refused_up(const std::vector<double> &angles, const std::vector<double> &gains, const Expected &expected) {
    auto cut = sized<lvb_elevation_cut>();
    cut.row_count = static_cast<std::uint32_t>(angles.size());
    cut.elevation_deg = angles.data();
    cut.gain_db = gains.data();
    lvb_pattern pattern = pattern_of(LVB_PATTERN_CUTS);
    pattern.elevation_cut = &cut;
    refused_pattern(pattern, expected);
}

TEST(CutRefusal, RowsAreCheckedOneByOne) {
    constexpr std::int32_t azimuth = LVB_FIELD_AZIMUTH_DEG, gain = LVB_FIELD_GAIN_DB;
    refused_around({0, 120, 100}, {0, -5, -9},
                   {LVB_E_TABLE_UNSORTED, in_around, azimuth, -1, 2, 100, 120, 360,
                    "lvb_azimuth_cut.azimuth_deg[2] is 100, below the row before it (120); angles must rise."});
    refused_around({0, 120, 120}, {0, -5, -9}, {LVB_E_TABLE_DUPLICATE, in_around, azimuth, -1, 2, 120, 120, 360});
    refused_around({0, 120}, {0, -100.5}, {LVB_E_TABLE_TOO_STEEP, in_around, gain, -1, 1, -100.5, -100, 100});
    refused_around({0, 60, 120}, {0, -100, -101},
                   {LVB_E_TABLE_TOO_STEEP, in_around, gain, -1, 0, 0, -201, -1,
                    "lvb_azimuth_cut.gain_db[0] is 0, too far from the last row; allowed -201 to -1."});
    refused_around({0, 60, 360}, {0, -1, 0},
                   {LVB_E_TABLE_DUPLICATE, in_around, azimuth, -1, 0, 0, 360, 360,
                    "lvb_azimuth_cut.azimuth_deg[0] is 0, a whole turn from the last row."});
    refused_around({-10, 60, 351}, {0, -1, 0}, {LVB_E_ABOVE_RANGE, in_around, azimuth, -1, 2, 351, -10, 350});
    refused_around({-361, 0}, {0, 0}, {LVB_E_BELOW_RANGE, in_around, azimuth, -1, 0, -361, -360, 360});
    refused_around({0, nan}, {0, 0}, {LVB_E_NAN, in_around, azimuth, -1, 1, nan, -360, 360});
    refused_around({0, infinity}, {0, 0}, {LVB_E_INFINITE, in_around, azimuth, -1, 1, infinity, -360, 360});
    refused_around({0, 10}, {0, nan}, {LVB_E_NAN, in_around, gain, -1, 1, nan, -200, 60});
    refused_around({0, 10}, {0, -infinity}, {LVB_E_INFINITE, in_around, gain, -1, 1, -infinity, -200, 60});
    refused_around({0, 10}, {60.5, 0}, {LVB_E_ABOVE_RANGE, in_around, gain, -1, 0, 60.5, -200, 60});
    refused_around({}, {}, {LVB_E_TABLE_EMPTY, in_around, LVB_FIELD_ROW_COUNT, -1, -1, 0, 1, LVB_MAX_ROWS});

    constexpr std::int32_t elevation = LVB_FIELD_ELEVATION_DEG;
    refused_up({-90, 0, 80}, {0, 0, 0}, {LVB_E_BELOW_RANGE, in_up, elevation, -1, 2, 80, 90, 90});
    refused_up({-80, 0, 90}, {0, 0, 0}, {LVB_E_ABOVE_RANGE, in_up, elevation, -1, 0, -80, -90, -90});
    refused_up({90}, {0}, {LVB_E_ABOVE_RANGE, in_up, elevation, -1, 0, 90, -90, -90});
    refused_up({-90, 91}, {0, 0}, {LVB_E_ABOVE_RANGE, in_up, elevation, -1, 1, 91, -90, 90});
    refused_up({-90, 10, 5, 90}, {0, 0, 0, 0}, {LVB_E_TABLE_UNSORTED, in_up, elevation, -1, 2, 5, 10, 90});
    refused_up({-90, 90}, {-150, -20}, {LVB_E_TABLE_TOO_STEEP, in_up, gain, -1, 1, -20, -250, -50});
    refused_up({}, {}, {LVB_E_TABLE_EMPTY, in_up, LVB_FIELD_ROW_COUNT, -1, -1, 0, 1, LVB_MAX_ROWS});
}

TEST(CutRefusal, PointersAndCounts) {
    const double angle[] = {0.0}, gain[] = {0.0};
    auto cut = sized<lvb_azimuth_cut>();
    lvb_pattern pattern = pattern_of(LVB_PATTERN_CUTS);
    pattern.azimuth_cut = &cut;
    cut.row_count = 1;
    cut.gain_db = gain;
    refused_pattern(pattern, {LVB_E_NULL, in_around, LVB_FIELD_AZIMUTH_DEG});
    cut.azimuth_deg = angle;
    cut.gain_db = nullptr;
    refused_pattern(pattern, {LVB_E_NULL, in_around, LVB_FIELD_GAIN_DB});
    cut.gain_db = gain;
    cut.row_count = LVB_MAX_ROWS + 1;
    refused_pattern(pattern, {LVB_E_COUNT, in_around, LVB_FIELD_ROW_COUNT, -1, -1, LVB_MAX_ROWS + 1, 1, LVB_MAX_ROWS});
}

TEST(DirectionRefusal, AnglesOutsideTheirRange) {
    const lvb_pattern pattern = pattern_of(LVB_PATTERN_ISOTROPIC);
    Untouched<lvb_pattern_gain> gain;
    auto fault = sized<lvb_fault>();
    const auto refuses = [&](double azimuth, double elevation, const Expected &expected) {
        EXPECT_EQ(lvb_compute_pattern_gain(&pattern, azimuth, elevation, &gain.result, &fault), expected.status);
        EXPECT_TRUE(gain.holds());
        expect_fault(fault, expected);
    };
    refuses(361, 0, {LVB_E_ABOVE_RANGE, 0, LVB_FIELD_AZIMUTH_DEG, -1, -1, 361, -360, 360});
    refuses(-361, 0, {LVB_E_BELOW_RANGE, 0, LVB_FIELD_AZIMUTH_DEG, -1, -1, -361, -360, 360});
    refuses(0, 90.5, {LVB_E_ABOVE_RANGE, 0, LVB_FIELD_ELEVATION_DEG, -1, -1, 90.5, -90, 90});
    refuses(nan, 0, {LVB_E_NAN, 0, LVB_FIELD_AZIMUTH_DEG, -1, -1, nan, -360, 360});
    refuses(0, infinity, {LVB_E_INFINITE, 0, LVB_FIELD_ELEVATION_DEG, -1, -1, infinity, -90, 90});
}

// ---- On stages.

TEST(StageRefusal, PatternsAndBodiesBelongToTheirKinds) {
    const lvb_pattern pattern = pattern_of(LVB_PATTERN_HALF_WAVE_DIPOLE);
    const double facing[] = {0.0}, loss[] = {5.0};
    auto body = sized<lvb_body_table>();
    body.row_count = 1;
    body.facing_deg = facing;
    body.loss_db = loss;
    const std::vector<lvb_stage> sound = ordinary();
    struct Angle {
        std::int32_t id;
        double lvb_stage::*member;
    };
    const Angle angles[] = {{LVB_FIELD_FAR_AZIMUTH_DEG, &lvb_stage::far_azimuth_deg},
                            {LVB_FIELD_FAR_ELEVATION_DEG, &lvb_stage::far_elevation_deg},
                            {LVB_FIELD_NEAR_AZIMUTH_DEG, &lvb_stage::near_azimuth_deg},
                            {LVB_FIELD_NEAR_ELEVATION_DEG, &lvb_stage::near_elevation_deg},
                            {LVB_FIELD_FACING_DEG, &lvb_stage::facing_deg}};
    for (std::int32_t i = 0; i < 8; ++i) {
        const std::size_t k = static_cast<std::size_t>(i);
        const bool antenna = sound[k].kind == LVB_KIND_ANTENNA, allowance = sound[k].kind == LVB_KIND_ALLOWANCE;
        if (!antenna) {
            Chain chain(sound);
            chain.stages[k].pattern = &pattern;
            refused(chain, {LVB_E_UNUSED, in_stage, LVB_FIELD_PATTERN, i});
        }
        if (!allowance) {
            Chain chain(sound);
            chain.stages[k].body_table = &body;
            refused(chain, {LVB_E_UNUSED, in_stage, LVB_FIELD_BODY_TABLE, i});
        }
        for (const Angle &angle : angles) {
            Chain chain(sound); // an angle without what it belongs to
            chain.stages[k].*angle.member = 1.0;
            refused(chain, {LVB_E_UNUSED, in_stage, angle.id, i, -1, 1.0});
            chain.stages[k].*angle.member = nan;
            refused(chain, {LVB_E_NAN, in_stage, angle.id, i, -1, nan});
            const bool facing_angle = angle.id == LVB_FIELD_FACING_DEG;
            if (facing_angle ? !allowance : !antenna) continue;
            chain.stages[k].gain_db = 0.0;
            if (facing_angle) chain.stages[k].body_table = &body;
            else chain.stages[k].pattern = &pattern;
            auto range = sized<lvb_range>();
            ASSERT_EQ(lvb_describe_field(in_stage, sound[k].kind, angle.id, &range, nullptr), LVB_OK);
            EXPECT_EQ(range.maximum, angle.id == LVB_FIELD_FAR_ELEVATION_DEG || angle.id == LVB_FIELD_NEAR_ELEVATION_DEG
                                         ? 90.0
                                         : 360.0);
            chain.stages[k].*angle.member = range.maximum + 1.0;
            refused(chain,
                    {LVB_E_ABOVE_RANGE, in_stage, angle.id, i, -1, range.maximum + 1.0, range.minimum, range.maximum});
            chain.stages[k].*angle.member = range.minimum - 1.0;
            refused(chain,
                    {LVB_E_BELOW_RANGE, in_stage, angle.id, i, -1, range.minimum - 1.0, range.minimum, range.maximum});
            chain.stages[k].*angle.member = range.minimum;
            EXPECT_EQ(chain.compute(), LVB_OK);
            chain.stages[k].gain_db = -1.0;
            refused(chain, {LVB_E_CONFLICT, in_stage, LVB_FIELD_GAIN_DB, i, -1, -1.0});
            const double mhz[] = {500.0, 700.0}, db[] = {-1.0, -2.0};
            auto table = sized<lvb_gain_table>();
            table.row_count = 2;
            table.frequency_mhz = mhz;
            table.gain_db = db;
            chain.stages[k].gain_db = 0.0;
            chain.stages[k].gain_table = &table;
            refused(chain, {LVB_E_CONFLICT, in_stage, LVB_FIELD_GAIN_TABLE, i});
        }
    }
}

TEST(StageRefusal, SentencesNameTheWayToTheRow) {
    const double angle[] = {0.0, 90.0}, gain[] = {0.0, 99.0};
    auto cut = sized<lvb_azimuth_cut>();
    cut.row_count = 2;
    cut.azimuth_deg = angle;
    cut.gain_db = gain;
    lvb_pattern pattern = pattern_of(LVB_PATTERN_CUTS);
    pattern.azimuth_cut = &cut;
    Chain chain({source(0.0), antenna()});
    chain.stages[1].pattern = &pattern;
    refused(chain, {LVB_E_ABOVE_RANGE, in_around, LVB_FIELD_GAIN_DB, 1, 1, 99, -200, 60,
                    "stages[1].pattern.azimuth_cut.gain_db[1] is 99, which is too high; allowed -200 to 60."});
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    there.x_m = 3.0;
    there.pattern = &pattern;
    auto pointing = sized<lvb_pointing>();
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing, &fault), LVB_E_ABOVE_RANGE);
    EXPECT_EQ(text_of(fault), "receive.pattern.azimuth_cut.gain_db[1] is 99, which is too high; allowed -200 to 60.");
    here.tilt_deg = 91.0;
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing, &fault), LVB_E_ABOVE_RANGE);
    EXPECT_EQ(text_of(fault), "transmit.tilt_deg is 91, which is too high; allowed -90 to 90.");
    const double loss[] = {0.0, 130.0};
    auto body = sized<lvb_body_table>();
    body.row_count = 2;
    body.facing_deg = angle;
    body.loss_db = loss;
    Chain worn({source(0.0), stage(LVB_KIND_ALLOWANCE)});
    worn.stages[1].body_table = &body;
    refused(worn, {LVB_E_TABLE_TOO_STEEP, in_body, LVB_FIELD_LOSS_DB, 1, 1, 130, -100, 100,
                   "stages[1].body_table.loss_db[1] is 130, too far from the row before it; allowed -100 to 100."});
}

// ---- Bodies, antennas, allowances.

TEST(BodyRefusal, TablesAndFacing) {
    const double facing[] = {0.0, 90.0}, loss[] = {1.0, 2.0};
    auto table = sized<lvb_body_table>();
    table.row_count = 2;
    table.facing_deg = facing;
    table.loss_db = loss;
    auto fault = sized<lvb_fault>();
    double result = -7.0;
    const auto refuses = [&](double angle, const Expected &expected) {
        EXPECT_EQ(lvb_compute_body_loss(&table, angle, &result, &fault), expected.status);
        EXPECT_EQ(result, -7.0);
        expect_fault(fault, expected);
    };
    refuses(400, {LVB_E_ABOVE_RANGE, 0, LVB_FIELD_FACING_DEG, -1, -1, 400, -360, 360});
    refuses(nan, {LVB_E_NAN, 0, LVB_FIELD_FACING_DEG, -1, -1, nan, -360, 360});
    EXPECT_EQ(lvb_compute_body_loss(&table, 0.0, nullptr, &fault), LVB_E_NULL);
    expect_fault(fault, {LVB_E_NULL, 0, LVB_FIELD_LOSS_DB});
    const double negative[] = {1.0, -0.5}, beyond[] = {0.0, 360.0};
    table.loss_db = negative;
    refuses(0, {LVB_E_BELOW_RANGE, in_body, LVB_FIELD_LOSS_DB, -1, 1, -0.5, 0, 200});
    table.loss_db = loss;
    table.facing_deg = beyond;
    refuses(0, {LVB_E_TABLE_DUPLICATE, in_body, LVB_FIELD_FACING_DEG, -1, 0, 0, 360, 360});
    table.facing_deg = nullptr;
    refuses(0, {LVB_E_NULL, in_body, LVB_FIELD_FACING_DEG});
}

TEST(AntennaRefusal, EveryFieldOfBoth) {
    struct Field {
        std::int32_t id;
        double lvb_antenna::*member;
    };
    const Field fields[] = {{LVB_FIELD_X_M, &lvb_antenna::x_m},
                            {LVB_FIELD_Y_M, &lvb_antenna::y_m},
                            {LVB_FIELD_Z_M, &lvb_antenna::z_m},
                            {LVB_FIELD_AZIMUTH_DEG, &lvb_antenna::azimuth_deg},
                            {LVB_FIELD_TILT_DEG, &lvb_antenna::tilt_deg},
                            {LVB_FIELD_ROLL_DEG, &lvb_antenna::roll_deg},
                            {LVB_FIELD_POLARIZATION_DEG, &lvb_antenna::polarization_deg},
                            {LVB_FIELD_ELLIPTICITY, &lvb_antenna::ellipticity},
                            {LVB_FIELD_LARGEST_DIMENSION_M, &lvb_antenna::largest_dimension_m}};
    for (const bool transmit : {true, false})
        for (const Field &field : fields) {
            auto bad = sized<lvb_antenna>(), good = sized<lvb_antenna>();
            good.x_m = good.y_m = 20.0;
            auto range = sized<lvb_range>();
            ASSERT_EQ(lvb_describe_field(in_antenna, 0, field.id, &range, nullptr), LVB_OK);
            const auto refuses = [&](double value, lvb_status status) {
                bad.*field.member = value;
                Untouched<lvb_pointing> pointing;
                auto fault = sized<lvb_fault>();
                EXPECT_EQ(lvb_compute_pointing(transmit ? &bad : &good, transmit ? &good : &bad, 600.0,
                                               &pointing.result, &fault),
                          status);
                EXPECT_TRUE(pointing.holds());
                expect_fault(fault, {status, in_antenna, field.id, transmit ? LVB_STAGE_TRANSMIT : LVB_STAGE_RECEIVE,
                                     -1, value, range.minimum, range.maximum});
            };
            refuses(nan, LVB_E_NAN);
            refuses(infinity, LVB_E_INFINITE);
            refuses(-infinity, LVB_E_INFINITE);
            refuses(std::nextafter(range.maximum, infinity), LVB_E_ABOVE_RANGE);
            if (range.minimum != 0.0) refuses(std::nextafter(range.minimum, -infinity), LVB_E_BELOW_RANGE);
            else refuses(-0.5, LVB_E_BELOW_RANGE);
            for (const double end : {range.minimum, range.maximum}) {
                bad.*field.member = end;
                auto pointing = sized<lvb_pointing>();
                EXPECT_EQ(lvb_compute_pointing(&bad, &good, 600.0, &pointing, nullptr), LVB_OK);
            }
        }
}

TEST(AntennaRefusal, ReservedDistanceAndFrequency) {
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    Untouched<lvb_pointing> pointing;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing.result, &fault), LVB_E_BELOW_RANGE);
    expect_fault(fault, {LVB_E_BELOW_RANGE, LVB_STRUCT_POINTING, LVB_FIELD_DISTANCE_M, -1, -1, 0.0, 0.01, 1e9});
    there.z_m = 1.0;
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 0.0, &pointing.result, &fault), LVB_E_MISSING);
    expect_fault(fault, {LVB_E_MISSING, 0, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 0.0, 0.1, 300000});
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 3e6, &pointing.result, &fault), LVB_E_ABOVE_RANGE);
    expect_fault(fault, {LVB_E_ABOVE_RANGE, 0, LVB_FIELD_FREQUENCY_MHZ, -1, -1, 3e6, 0.1, 300000});
    there.reserved = 1;
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing.result, &fault), LVB_E_RESERVED);
    expect_fault(fault, {LVB_E_RESERVED, in_antenna, LVB_FIELD_RESERVED, LVB_STAGE_RECEIVE, -1, 1, 0, 0,
                         "receive.reserved is reserved and must be zero."});
    EXPECT_TRUE(pointing.holds());
}

// The pattern says where a dipole's axis is; its field lies along it.
TEST(AntennaRefusal, ADipoleIsTurnedByItsRoll) {
    const lvb_pattern dipole = pattern_of(LVB_PATTERN_HALF_WAVE_DIPOLE);
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    there.y_m = 5.0;
    there.polarization_deg = 90.0;
    here.pattern = &dipole;
    here.polarization_deg = 90.0;
    Untouched<lvb_pointing> pointing;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing.result, &fault), LVB_E_UNUSED);
    expect_fault(fault, {LVB_E_UNUSED, in_antenna, LVB_FIELD_POLARIZATION_DEG, LVB_STAGE_TRANSMIT, -1, 90.0, none, none,
                         "transmit.polarization_deg is filled, but this antenna's pattern has no use for it."});
    here.polarization_deg = 0.0;
    here.ellipticity = 0.5;
    EXPECT_EQ(lvb_compute_pointing(&there, &here, 600.0, &pointing.result, &fault), LVB_E_UNUSED);
    expect_fault(fault, {LVB_E_UNUSED, in_antenna, LVB_FIELD_ELLIPTICITY, LVB_STAGE_RECEIVE, -1, 0.5});
    EXPECT_TRUE(pointing.holds());
    here.ellipticity = 0.0;
    here.roll_deg = 90.0; // now it is horizontal, and its null with it
    auto told = sized<lvb_pointing>();
    ASSERT_EQ(lvb_compute_pointing(&here, &there, 600.0, &told, &fault), LVB_OK);
    EXPECT_NEAR(told.polarization_loss_db, 0.0, 1e-12);
}

// A helix taken as linear would lose nothing against a linear antenna: 3 dB too little.
TEST(AntennaRefusal, AHelixStatesItsSense) {
    const lvb_pattern wound = helix();
    auto here = sized<lvb_antenna>(), there = sized<lvb_antenna>();
    there.y_m = 5.0;
    there.azimuth_deg = 180.0;
    there.pattern = &wound;
    Untouched<lvb_pointing> pointing;
    auto fault = sized<lvb_fault>();
    EXPECT_EQ(lvb_compute_pointing(&here, &there, 600.0, &pointing.result, &fault), LVB_E_MISSING);
    expect_fault(fault, {LVB_E_MISSING, in_antenna, LVB_FIELD_ELLIPTICITY, LVB_STAGE_RECEIVE, -1, 0.0, -1.0, 1.0,
                         "receive.ellipticity is missing; allowed -1 to 1."});
    EXPECT_TRUE(pointing.holds());
    auto told = sized<lvb_pointing>();
    there.ellipticity = lvb_ellipticity_from_axial_ratio_db(lvb_helix_axial_ratio_db(wound.turns));
    for (const double sense : {1.0, -1.0}) { // a linear antenna does not tell the senses apart
        there.ellipticity *= sense;
        ASSERT_EQ(lvb_compute_pointing(&here, &there, 600.0, &told, &fault), LVB_OK);
        EXPECT_NEAR(told.polarization_loss_db, 3.01, 0.25);
    }
}

TEST(AllowanceRefusal, RowsThatAreNotThere) {
    Untouched<lvb_allowance_info> info;
    auto fault = sized<lvb_fault>();
    const std::uint32_t count = lvb_allowance_count();
    EXPECT_EQ(lvb_describe_allowance(count, &info.result, &fault), LVB_E_NOT_FOUND);
    EXPECT_TRUE(info.holds());
    expect_fault(fault, {LVB_E_NOT_FOUND, 0, LVB_FIELD_ROW_INDEX, -1, -1, static_cast<double>(count), 0.0,
                         static_cast<double>(count - 1)});
}

} // namespace
