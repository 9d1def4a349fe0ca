// Names of statuses, fields and structs, as the header writes them, and plain ones of its other values.
#include "door/names.hpp"

#include <cstddef>
#include <cstdint>
#include <iterator>

namespace lvb::door {
namespace {

// Tables without pointers: a library that is loaded at any address needs 32 bytes for each of these.
template <std::size_t width>
struct Named {
    std::int32_t value;
    char name[width];
};

template <std::size_t width, std::size_t count>
const char *name_in(const Named<width> (&all)[count], std::int32_t value) noexcept {
    for (const Named<width> &each : all)
        if (each.value == value) return each.name;
    return "unknown";
}

// The header's own list of its constants is derived from it at build time; each of these picks one family: names one
// after the other, each with its end, and their values in the same order.
struct Family {
    const char *names;
    const std::int16_t *values;
    std::size_t count;

    const char *name_of(std::int32_t value) const noexcept {
        const char *name = names;
        for (std::size_t i = 0; i < count; ++i, name = after(name))
            if (values[i] == value) return name;
        return "unknown";
    }
    // The value of a name, or `none`.
    std::int32_t value_of(const char *wanted, std::int32_t none) const noexcept {
        const char *name = names;
        for (std::size_t i = 0; i < count; ++i, name = after(name))
            if (same_text(name, wanted)) return values[i];
        return none;
    }

  private:
    static const char *after(const char *name) noexcept {
        while (*name != '\0') ++name;
        return name + 1;
    }
};

// clang-format off
#define LVB_NAME_OF_STATUS(constant, name) name "\0"
constexpr char status_names[] =
#include "levelbook_names.inc"
    ;
#define LVB_NAME_OF_STATUS(constant, name) constant,
constexpr std::int16_t status_values[] = {
#include "levelbook_names.inc"
};
#define LVB_NAME_OF_FIELD(constant, member, name) name "\0"
constexpr char field_names[] =
#include "levelbook_names.inc"
    ;
#define LVB_NAME_OF_FIELD(constant, member, name) constant,
constexpr std::int16_t field_values[] = {
#include "levelbook_names.inc"
};
#define LVB_NAME_OF_STRUCT(constant, type, name) #type "\0"
constexpr char struct_names[] =
#include "levelbook_names.inc"
    ;
#define LVB_NAME_OF_STRUCT(constant, type, name) constant,
constexpr std::int16_t struct_values[] = {
#include "levelbook_names.inc"
};
#define LVB_NAME_OF_FORMULA(constant, function, name) name "\0"
constexpr char formula_names[] =
#include "levelbook_names.inc"
    ;
#define LVB_NAME_OF_FORMULA(constant, function, name) constant,
constexpr std::int16_t formula_values[] = {
#include "levelbook_names.inc"
};
// clang-format on

constexpr Family statuses{status_names, status_values, std::size(status_values)};
constexpr Family fields{field_names, field_values, std::size(field_values)};
constexpr Family structs{struct_names, struct_values, std::size(struct_values)};
constexpr Family formulas{formula_names, formula_values, std::size(formula_values)};

constexpr Named<10> instructions_names[] = {
    {LVB_INSTRUCTIONS_AUTOMATIC, "automatic"},
    {LVB_INSTRUCTIONS_BASELINE, "baseline"},
    {LVB_INSTRUCTIONS_AVX2, "AVX2"},
    {LVB_INSTRUCTIONS_AVX512, "AVX-512"},
};

constexpr Named<10> kind_names[] = {
    {LVB_KIND_SOURCE, "source"},       {LVB_KIND_PASSIVE, "passive"},   {LVB_KIND_CABLE, "cable"},
    {LVB_KIND_AMPLIFIER, "amplifier"}, {LVB_KIND_ANTENNA, "antenna"},   {LVB_KIND_AIR, "air"},
    {LVB_KIND_ALLOWANCE, "allowance"}, {LVB_KIND_RECEIVER, "receiver"},
};

constexpr Named<14> basis_names[] = {
    {LVB_BASIS_NOT_LOOKED_UP, "not looked up"}, {LVB_BASIS_ESTIMATE, "estimate"}, {LVB_BASIS_HANDBOOK, "handbook"},
    {LVB_BASIS_DATA_SHEET, "data sheet"},       {LVB_BASIS_MEASURED, "measured"}, {LVB_BASIS_FORMULA, "formula"},
};

constexpr Named<10> reference_names[] = {
    {LVB_REFERENCE_CONDUCTED, "conducted"},
    {LVB_REFERENCE_EIRP, "e.i.r.p."},
    {LVB_REFERENCE_ISOTROPIC, "isotropic"},
};

constexpr Named<22> zone_names[] = {
    {LVB_ZONE_NOT_JUDGED, "not judged"},      {LVB_ZONE_DROPOUT, "dropout"},
    {LVB_ZONE_LOW, "below the wanted band"},  {LVB_ZONE_WANTED, "wanted band"},
    {LVB_ZONE_HIGH, "above the wanted band"}, {LVB_ZONE_OVERLOAD, "overload"},
};

constexpr Named<24> verdict_names[] = {
    {LVB_VERDICT_NOT_JUDGED, "not judged"}, {LVB_VERDICT_HOLDS, "holds"},
    {LVB_VERDICT_DOUBTFUL, "doubtful"},     {LVB_VERDICT_DROPS_OUT, "drops out"},
    {LVB_VERDICT_OVERLOADS, "overloads"},   {LVB_VERDICT_DROPS_OUT_AND_OVERLOADS, "drops out and overloads"},
};

constexpr Named<13> decided_by_names[] = {
    {LVB_DECIDED_BY_NOTHING, "nothing"},
    {LVB_DECIDED_BY_FAR_FLOOR, "far floor"},
    {LVB_DECIDED_BY_NEAR_CEILING, "near ceiling"},
};

constexpr Named<5> end_names[] = {{LVB_END_FAR, "far"}, {LVB_END_NEAR, "near"}};

constexpr Named<30> note_names[] = {
    {LVB_NOTE_EXTRAPOLATED, "extrapolated"},
    {LVB_NOTE_NEAR_FIELD, "near field"},
    {LVB_NOTE_NEAR_NOT_GIVEN, "near distance not given"},
    {LVB_NOTE_INSIDE_FAR_FIELD_DISTANCE, "inside the far-field distance"},
    {LVB_NOTE_NULL, "null"},
    {LVB_NOTE_NO_NOISE_FIGURE, "no noise figure"},
    {LVB_NOTE_NO_INTERCEPT, "no intercept"},
    {LVB_NOTE_NO_COMPRESSION, "no compression"},
    {LVB_NOTE_RANGE_LOWERED, "range lowered"},
    {LVB_NOTE_ABOVE_CUTOFF, "above cutoff"},
    {LVB_NOTE_DEEP_SKIN, "deep skin"},
};

constexpr Named<17> pattern_names[] = {
    {LVB_PATTERN_ISOTROPIC, "isotropic"}, {LVB_PATTERN_HALF_WAVE_DIPOLE, "half-wave dipole"},
    {LVB_PATTERN_COSINE, "cosine"},       {LVB_PATTERN_CUTS, "cuts"},
    {LVB_PATTERN_HELIX, "helix"},
};

constexpr Named<16> path_names[] = {
    {LVB_PATH_FREE_SPACE, "free space"},     {LVB_PATH_TWO_RAY, "two-ray"},
    {LVB_PATH_LOG_DISTANCE, "log-distance"}, {LVB_PATH_INDOOR, "indoor"},
    {LVB_PATH_SITE_GENERAL, "site-general"}, {LVB_PATH_RADIATING_CABLE, "radiating cable"},
};

constexpr Named<29> environment_names[] = {
    {LVB_ENVIRONMENT_NONE, "none"},
    {LVB_ENVIRONMENT_OFFICE_IN_SIGHT, "office in sight"},
    {LVB_ENVIRONMENT_OFFICE_OUT_OF_SIGHT, "office out of sight"},
    {LVB_ENVIRONMENT_CORRIDOR_IN_SIGHT, "corridor in sight"},
    {LVB_ENVIRONMENT_CORRIDOR_OUT_OF_SIGHT, "corridor out of sight"},
    {LVB_ENVIRONMENT_INDUSTRIAL_IN_SIGHT, "industrial hall in sight"},
    {LVB_ENVIRONMENT_INDUSTRIAL_OUT_OF_SIGHT, "industrial hall out of sight"},
};

constexpr Named<11> polarization_names[] = {
    {LVB_POLARIZATION_VERTICAL, "vertical"},
    {LVB_POLARIZATION_HORIZONTAL, "horizontal"},
};

constexpr Named<9> place_names[] = {
    {LVB_PLACE_NONE, "none"},
    {LVB_PLACE_ANTENNA, "antenna"},
    {LVB_PLACE_RECEIVER, "receiver"},
};

constexpr Named<19> quantity_names[] = {
    {LVB_QUANTITY_TRANSMITTER_OUTPUT, "transmitter output"},
    {LVB_QUANTITY_ANTENNA_INPUT, "antenna input"},
    {LVB_QUANTITY_ERP, "e.r.p."},
    {LVB_QUANTITY_EIRP, "e.i.r.p."},
};

constexpr Named<24> limit_verdict_names[] = {
    {LVB_LIMIT_HOLDS, "holds"},
    {LVB_LIMIT_DOUBTFUL, "doubtful"},
    {LVB_LIMIT_EXCEEDED, "exceeds the limit"},
    {LVB_LIMIT_NOT_COVERED, "not covered by the rule"},
};

constexpr Named<14> exposure_names[] = {
    {LVB_EXPOSURE_47_CFR_1_1310, "47 CFR 1.1310"},
    {LVB_EXPOSURE_ICNIRP_2020, "ICNIRP 2020"},
};

constexpr Named<15> audience_names[] = {
    {LVB_AUDIENCE_GENERAL, "general public"},
    {LVB_AUDIENCE_OCCUPATIONAL, "occupational"},
};

constexpr Named<9> direction_names[] = {{LVB_DIRECTION_OUTBOUND, "outbound"}, {LVB_DIRECTION_INBOUND, "inbound"}};

constexpr Named<8> combine_names[] = {{LVB_COMBINE_BEST, "best of"}, {LVB_COMBINE_SUM, "sum"}};

constexpr Named<18> facing_names[] = {
    {LVB_FACING_AZIMUTH, "azimuth"},
    {LVB_FACING_POINT, "point"},
    {LVB_FACING_ANTENNA, "antenna"},
    {LVB_FACING_AWAY, "away from antenna"},
};

constexpr Named<11> fading_names[] = {
    {LVB_FADING_NONE, "none"},         {LVB_FADING_RAYLEIGH, "Rayleigh"},    {LVB_FADING_RICE, "Rice"},
    {LVB_FADING_NAKAGAMI, "Nakagami"}, {LVB_FADING_LOGNORMAL, "log-normal"}, {LVB_FADING_SUZUKI, "Suzuki"},
};

constexpr Named<27> goal_names[] = {
    {LVB_GOAL_MARGIN, "margin"},
    {LVB_GOAL_HEADROOM, "headroom"},
    {LVB_GOAL_BALANCE, "balance"},
    {LVB_GOAL_FAR_FROM_MIDDLE, "far level from the middle"},
    {LVB_GOAL_NEAR_FROM_MIDDLE, "near level from the middle"},
    {LVB_GOAL_FAR_LEVEL, "far level"},
    {LVB_GOAL_NEAR_LEVEL, "near level"},
    {LVB_GOAL_EIRP, "e.i.r.p."},
};

constexpr Named<23> tolerances_names[] = {
    {LVB_TOLERANCES_NONE, "as entered"},
    {LVB_TOLERANCES_WORST, "worst case"},
    {LVB_TOLERANCES_RSS, "root of sum of squares"},
};

constexpr Named<32> solution_names[] = {
    {LVB_SOLUTION_FOUND, "found"},
    {LVB_SOLUTION_AT_LOWEST, "out of reach at the lower bound"},
    {LVB_SOLUTION_AT_HIGHEST, "out of reach at the upper bound"},
    {LVB_SOLUTION_NO_EFFECT, "no effect"},
    {LVB_SOLUTION_NOT_STEADY, "not steady"},
};

constexpr Named<12> pair_names[] = {
    {LVB_PAIR_FIRST_ONLY, "first only"},
    {LVB_PAIR_SECOND_ONLY, "second only"},
    {LVB_PAIR_BY_KIND, "by kind"},
    {LVB_PAIR_BY_LABEL, "by label"},
};

constexpr Named<12> law_names[] = {
    {LVB_LAW_RECTANGULAR, "rectangular"},
    {LVB_LAW_TRIANGULAR, "triangular"},
    {LVB_LAW_NORMAL, "normal"},
    {LVB_LAW_ARC_SINE, "arc sine"},
};

constexpr Named<15> outcome_names[] = {
    {LVB_OUTCOME_PROVEN, "proven"},         {LVB_OUTCOME_NOT_PROVEN, "not proven"},
    {LVB_OUTCOME_INFEASIBLE, "infeasible"}, {LVB_OUTCOME_SHORT_OF_STOCK, "short of stock"},
    {LVB_OUTCOME_UNDECIDED, "undecided"},
};

} // namespace
} // namespace lvb::door

using namespace lvb::door;

extern "C" {

const char *lvb_status_name(lvb_status status) { return statuses.name_of(status); }
const char *lvb_field_name(int32_t field) { return fields.name_of(field); }
const char *lvb_struct_name(int32_t structure) { return structs.name_of(structure); }
const char *lvb_formula_name(int32_t formula) { return formulas.name_of(formula); }

int32_t lvb_formula_from_name(const char *name) {
    return name == nullptr ? std::int32_t{LVB_FORMULA_NONE} : formulas.value_of(name, LVB_FORMULA_NONE);
}

const char *lvb_instructions_name(int32_t instructions) {
    const bool asked = instructions > LVB_INSTRUCTIONS_ASKED; // with a set that can be asked for
    return name_in(instructions_names, asked ? instructions - LVB_INSTRUCTIONS_ASKED : instructions);
}

const char *lvb_note_name(uint32_t note) {
    for (const auto &each : note_names)
        if (static_cast<uint32_t>(each.value) == note) return each.name;
    return "unknown";
}

const char *lvb_kind_name(int32_t kind) { return name_in(kind_names, kind); }
const char *lvb_basis_name(int32_t basis) { return name_in(basis_names, basis); }
const char *lvb_reference_name(int32_t reference) { return name_in(reference_names, reference); }
const char *lvb_zone_name(int32_t zone) { return name_in(zone_names, zone); }
const char *lvb_verdict_name(int32_t verdict) { return name_in(verdict_names, verdict); }
const char *lvb_decided_by_name(int32_t decided_by) { return name_in(decided_by_names, decided_by); }
const char *lvb_end_name(int32_t end) { return name_in(end_names, end); }
const char *lvb_pattern_name(int32_t kind) { return name_in(pattern_names, kind); }
const char *lvb_path_name(int32_t model) { return name_in(path_names, model); }
const char *lvb_environment_name(int32_t environment) { return name_in(environment_names, environment); }
const char *lvb_polarization_name(int32_t polarization) { return name_in(polarization_names, polarization); }
const char *lvb_place_name(int32_t place) { return name_in(place_names, place); }
const char *lvb_quantity_name(int32_t quantity) { return name_in(quantity_names, quantity); }
const char *lvb_limit_verdict_name(int32_t verdict) { return name_in(limit_verdict_names, verdict); }
const char *lvb_exposure_name(int32_t exposure) { return name_in(exposure_names, exposure); }
const char *lvb_audience_name(int32_t audience) { return name_in(audience_names, audience); }
const char *lvb_direction_name(int32_t direction) { return name_in(direction_names, direction); }
const char *lvb_combine_name(int32_t combine) { return name_in(combine_names, combine); }
const char *lvb_facing_name(int32_t facing) { return name_in(facing_names, facing); }
const char *lvb_fading_name(int32_t fading) { return name_in(fading_names, fading); }
const char *lvb_goal_name(int32_t goal) { return name_in(goal_names, goal); }
const char *lvb_tolerances_name(int32_t tolerances) { return name_in(tolerances_names, tolerances); }
const char *lvb_solution_name(int32_t solution) { return name_in(solution_names, solution); }
const char *lvb_pair_name(int32_t pair) { return name_in(pair_names, pair); }
const char *lvb_law_name(int32_t law) { return name_in(law_names, law); }
const char *lvb_outcome_name(int32_t outcome) { return name_in(outcome_names, outcome); }

} // extern "C"
