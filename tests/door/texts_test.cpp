// The sentence of every fault, and every name.
#include "door/refusal.hpp"
#include "units/random.hpp"

#include <cfloat>
#include <clocale>
#include <limits>
#include <vector>

namespace {

using namespace proof;

constexpr double infinity = std::numeric_limits<double>::infinity();

// Every status there is with every struct and field and the largest numbers: short enough, and one sentence.
TEST(Texts, OfAnyFaultAreOneShortSentence) {
    const double hard[] = {0.0,       -0.0, 1.0,  -DBL_MAX, -1.23456789e-300, DBL_MIN,     4.9e-324,  infinity,
                           -infinity, none, 1e12, 0.1,      123456.789,       999999999.5, 1e9 - 0.25};
    for (lvb_status status = -600; status <= 1; ++status) {
        const bool known = std::strcmp(lvb_status_name(status), "unknown") != 0;
        if (!known && status % 50 != 0) continue; // all of these are told by one sentence
        for (std::int32_t structure = -1; structure <= LVB_STRUCT_EXTREME; ++structure)
            for (const std::int32_t field : std::initializer_list<std::int32_t>{
                     -1, 0, LVB_FIELD_ATTENUATION_DB_PER_100M, LVB_FIELD_SIZE, 99, LVB_FIELD_STATED, LVB_FIELD_KIND,
                     LVB_FIELD_FIELD, LVB_FIELD_OUTER_DIAMETER_MM, LVB_FIELD_CARRIER_TO_NOISE_DB, LVB_FIELD_PATTERN,
                     LVB_FIELD_FADING, LVB_FIELD_FACING, LVB_FIELD_FACING_ANTENNA})
                for (const double value : {hard[0], hard[3], hard[4], hard[7], hard[9], 4294967295.0, 5.0}) {
                    auto fault = sized<lvb_fault>();
                    fault.status = status;
                    fault.structure = structure;
                    fault.field = field;
                    fault.stage = std::numeric_limits<std::int32_t>::max();
                    fault.row = std::numeric_limits<std::int32_t>::max();
                    fault.value = value;
                    fault.minimum = -1.23456789e-300;
                    fault.maximum = -DBL_MAX;
                    char text[400];
                    const std::size_t length = lvb_fault_text(&fault, text, sizeof text);
                    ASSERT_LE(length, 255u) << text;
                    ASSERT_EQ(std::strlen(text), length);
                    ASSERT_EQ(text[length - 1], '.');
                }
    }
    for (const double value : hard) {
        auto fault = sized<lvb_fault>();
        fault.status = LVB_E_ABOVE_RANGE;
        fault.field = LVB_FIELD_LENGTH_M;
        fault.stage = fault.row = -1;
        fault.value = fault.minimum = fault.maximum = value;
        EXPECT_EQ(text_of(fault).back(), '.');
    }
}

TEST(Texts, NumbersAreWrittenPlainlyWhereTheyAreOfOrdinarySize) {
    const auto number = [](double value) {
        auto fault = sized<lvb_fault>();
        fault.status = LVB_E_NOT_STATED;
        fault.field = LVB_FIELD_LENGTH_M;
        fault.stage = fault.row = -1;
        fault.value = value;
        const std::string text = text_of(fault);
        const std::string before = "length_m is ", after = ", but its bit in `stated` is not set.";
        EXPECT_EQ(text.substr(0, before.size()), before);
        return text.substr(before.size(), text.size() - before.size() - after.size());
    };
    EXPECT_EQ(number(0.0), "0");
    EXPECT_EQ(number(1.0), "1");
    EXPECT_EQ(number(-1.0), "-1");
    EXPECT_EQ(number(10.0), "10");
    EXPECT_EQ(number(100.5), "100.5");
    EXPECT_EQ(number(0.5), "0.5");
    EXPECT_EQ(number(-0.05), "-0.05");
    EXPECT_EQ(number(0.001), "0.001");
    EXPECT_EQ(number(0.00012), "0.00012");
    EXPECT_EQ(number(1e-5), "1e-5");
    EXPECT_EQ(number(2.5e-300), "2.5e-300");
    EXPECT_EQ(number(123456.789), "123456.789");
    EXPECT_EQ(number(4294967295.0), "4294967295");
    EXPECT_EQ(number(999999999999.0), "999999999999");
    EXPECT_EQ(number(1e12), "1e12");
    EXPECT_EQ(number(-2.5e15), "-2.5e15");
    EXPECT_EQ(number(DBL_MAX), "1.79769313e308");
    EXPECT_EQ(number(infinity), "infinity");
    EXPECT_EQ(number(-infinity), "-infinity");
    EXPECT_EQ(number(none), "not a number");
    EXPECT_EQ(number(1.0 / 3.0), "0.333333333");
    EXPECT_EQ(number(0.9999999999), "1");
    EXPECT_EQ(number(99.99999999999), "100");
}

TEST(Texts, ReadBackAsTheNumberThatWasTold) { // to nine digits
    Random random(71);
    for (int i = 0; i < 5000; ++i) {
        const double value = random.sign() * random.log_uniform(-30.0, 30.0);
        auto fault = sized<lvb_fault>();
        fault.status = LVB_E_NOT_STATED;
        fault.field = LVB_FIELD_LENGTH_M;
        fault.stage = fault.row = -1;
        fault.value = value;
        EXPECT_NEAR(std::strtod(text_of(fault).c_str() + std::strlen("length_m is "), nullptr) / value, 1.0, 6e-9)
            << value;
    }
}

TEST(Texts, CapacityIsKeptAndTheLengthToldWhole) {
    auto fault = sized<lvb_fault>();
    fault.status = LVB_E_NULL;
    fault.field = LVB_FIELD_LINK;
    fault.stage = fault.row = -1;
    const std::string whole = "link is null, but must be given.";
    EXPECT_EQ(lvb_fault_text(&fault, nullptr, 0), whole.size());
    EXPECT_EQ(lvb_fault_text(&fault, nullptr, 100), whole.size());
    char text[64];
    std::memset(text, 'x', sizeof text);
    EXPECT_EQ(lvb_fault_text(&fault, text, 0), whole.size());
    EXPECT_EQ(text[0], 'x');
    EXPECT_EQ(lvb_fault_text(&fault, text, 1), whole.size());
    EXPECT_EQ(text[0], '\0');
    EXPECT_EQ(text[1], 'x');
    EXPECT_EQ(lvb_fault_text(&fault, text, whole.size()), whole.size()); // one short
    EXPECT_EQ(text, whole.substr(0, whole.size() - 1));
    EXPECT_EQ(lvb_fault_text(&fault, text, whole.size() + 1), whole.size()); // exact
    EXPECT_EQ(text, whole);
    EXPECT_EQ(text[whole.size() + 1], 'x');
}

TEST(Texts, WithoutAUsableFaultAreEmpty) {
    char text[16] = "xxxxxxx";
    EXPECT_EQ(lvb_fault_text(nullptr, text, sizeof text), 0u);
    EXPECT_STREQ(text, "");
    EXPECT_EQ(lvb_fault_text(nullptr, nullptr, 0), 0u);
    for (const std::uint32_t size : {0u, static_cast<std::uint32_t>(sizeof(lvb_fault)) - 1u, 4097u}) {
        auto fault = sized<lvb_fault>();
        fault.size = size;
        text[0] = 'x';
        EXPECT_EQ(lvb_fault_text(&fault, text, sizeof text), 0u);
        EXPECT_STREQ(text, "");
    }
}

TEST(Names, OfUnknownNumbersAreUnknown) {
    for (const std::int32_t number :
         {-1, 9999, std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()}) {
        EXPECT_STREQ(lvb_field_name(number), "unknown");
        EXPECT_STREQ(lvb_status_name(number), "unknown");
        EXPECT_STREQ(lvb_struct_name(number), "unknown");
        EXPECT_STREQ(lvb_instructions_name(number), "unknown");
        EXPECT_STREQ(lvb_note_name(static_cast<std::uint32_t>(number)), "unknown");
        EXPECT_EQ(lvb_struct_size(number), 0u);
    }
    EXPECT_STREQ(lvb_struct_name(LVB_STRUCT_NONE), "unknown");
    EXPECT_EQ(lvb_struct_size(LVB_STRUCT_NONE), 0u);
    EXPECT_STREQ(lvb_note_name(0), "unknown");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NULL | LVB_NOTE_NEAR_FIELD), "unknown");
}

struct Family {
    const char *(*name)(std::int32_t);
    std::int32_t first;
    std::vector<const char *> names;
};

TEST(Names, OfKnownNumbers) {
    const Family families[] = {
        {lvb_instructions_name, 0, {"automatic", "baseline", "AVX2", "AVX-512"}},
        {lvb_kind_name, 1, {"source", "passive", "cable", "amplifier", "antenna", "air", "allowance", "receiver"}},
        {lvb_basis_name, 0, {"not looked up", "estimate", "handbook", "data sheet", "measured", "formula"}},
        {lvb_reference_name, 1, {"conducted", "e.i.r.p.", "isotropic"}},
        {lvb_zone_name,
         0,
         {"not judged", "dropout", "below the wanted band", "wanted band", "above the wanted band", "overload"}},
        {lvb_verdict_name, 0, {"not judged", "holds", "doubtful", "drops out", "overloads", "drops out and overloads"}},
        {lvb_decided_by_name, 0, {"nothing", "far floor", "near ceiling"}},
        {lvb_end_name, 0, {"far", "near"}},
        {lvb_pattern_name, 0, {"isotropic", "half-wave dipole", "cosine", "cuts", "helix"}},
        {lvb_path_name, 0, {"free space", "two-ray", "log-distance", "indoor", "site-general", "radiating cable"}},
        {lvb_environment_name,
         0,
         {"none", "office in sight", "office out of sight", "corridor in sight", "corridor out of sight",
          "industrial hall in sight", "industrial hall out of sight"}},
        {lvb_polarization_name, 0, {"vertical", "horizontal"}},
        {lvb_place_name, 0, {"none", "antenna", "receiver"}},
        {lvb_quantity_name, 1, {"transmitter output", "antenna input", "e.r.p.", "e.i.r.p."}},
        {lvb_limit_verdict_name, 1, {"holds", "doubtful", "exceeds the limit", "not covered by the rule"}},
        {lvb_exposure_name, 1, {"47 CFR 1.1310", "ICNIRP 2020"}},
        {lvb_audience_name, 1, {"general public", "occupational"}},
        {lvb_direction_name, 0, {"outbound", "inbound"}},
        {lvb_combine_name, 0, {"best of", "sum"}},
        {lvb_facing_name, 0, {"azimuth", "point", "antenna", "away from antenna"}},
        {lvb_fading_name, 0, {"none", "Rayleigh", "Rice", "Nakagami", "log-normal", "Suzuki"}},
        {lvb_goal_name,
         1,
         {"margin", "headroom", "balance", "far level from the middle", "near level from the middle", "far level",
          "near level", "e.i.r.p."}},
        {lvb_tolerances_name, 0, {"as entered", "worst case", "root of sum of squares"}},
        {lvb_solution_name,
         1,
         {"found", "out of reach at the lower bound", "out of reach at the upper bound", "no effect", "not steady"}},
        {lvb_pair_name, 1, {"first only", "second only", "by kind", "by label"}},
        {lvb_law_name, 0, {"rectangular", "triangular", "normal", "arc sine"}},
        {lvb_outcome_name, 1, {"proven", "not proven", "infeasible", "short of stock", "undecided"}},
    };
    for (const Family &family : families) {
        std::int32_t value = family.first;
        EXPECT_STREQ(family.name(value - 1), "unknown") << family.names[0];
        for (const char *name : family.names) EXPECT_STREQ(family.name(value++), name);
        EXPECT_STREQ(family.name(value), "unknown") << family.names[0];
        for (const std::int32_t far :
             {9999, std::numeric_limits<std::int32_t>::max(), std::numeric_limits<std::int32_t>::min()})
            EXPECT_STREQ(family.name(far), "unknown") << family.names[0];
    }
    EXPECT_STREQ(lvb_struct_name(LVB_STRUCT_LINK), "lvb_link");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_EXTRAPOLATED), "extrapolated");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NEAR_FIELD), "near field");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NEAR_NOT_GIVEN), "near distance not given");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE), "inside the far-field distance");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NULL), "null");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NO_NOISE_FIGURE), "no noise figure");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NO_INTERCEPT), "no intercept");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_NO_COMPRESSION), "no compression");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_RANGE_LOWERED), "range lowered");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_ABOVE_CUTOFF), "above cutoff");
    EXPECT_STREQ(lvb_note_name(LVB_NOTE_DEEP_SKIN), "deep skin");
}

TEST(Version, AgreesWithTheHeader) {
    EXPECT_EQ(lvb_version_number(), 1000000u * LVB_VERSION_MAJOR + 1000u * LVB_VERSION_MINOR + LVB_VERSION_PATCH);
    EXPECT_EQ(lvb_version_text(), std::to_string(LVB_VERSION_MAJOR) + "." + std::to_string(LVB_VERSION_MINOR) + "." +
                                      std::to_string(LVB_VERSION_PATCH));
}

} // namespace
