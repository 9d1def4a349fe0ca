// What the library tells of itself: version, struct sizes, ranges of fields.
#include "door/fields.hpp"

namespace {

#define LVB_TEXT_OF(x) #x
#define LVB_TEXT(x) LVB_TEXT_OF(x)
constexpr char version_text[] =
    LVB_TEXT(LVB_VERSION_MAJOR) "." LVB_TEXT(LVB_VERSION_MINOR) "." LVB_TEXT(LVB_VERSION_PATCH);

} // namespace

namespace lvb::door {
namespace {

bool has_ranges(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_LINK:
    case LVB_STRUCT_CABLE_RUN:
    case LVB_STRUCT_STAGE:
    case LVB_STRUCT_PATTERN:
    case LVB_STRUCT_ANTENNA:
    case LVB_STRUCT_COAXIAL_LINE:
    case LVB_STRUCT_NEIGHBOURS:
    case LVB_STRUCT_LIMIT:
    case LVB_STRUCT_PATH:
    case LVB_STRUCT_EDGE:
    case LVB_STRUCT_NOISE_CONDITIONS:
    case LVB_STRUCT_SITE:
    case LVB_STRUCT_AREA:
    case LVB_STRUCT_SCREEN:
    case LVB_STRUCT_MAP:
    case LVB_STRUCT_WALK:
    case LVB_STRUCT_PLACE:
        return true;
    default:
        return false;
    }
}

// What the fields of a struct depend on; most have one kind only.
struct Kinds {
    std::int32_t first, last;
};
Kinds kinds_of(std::int32_t structure) noexcept {
    switch (structure) {
    case LVB_STRUCT_STAGE:
        return {LVB_KIND_SOURCE, LVB_KIND_RECEIVER};
    case LVB_STRUCT_PATTERN:
        return {LVB_PATTERN_ISOTROPIC, LVB_PATTERN_HELIX};
    case LVB_STRUCT_MAP:
    case LVB_STRUCT_WALK:
        return {LVB_FADING_NONE, LVB_FADING_SUZUKI};
    default:
        return {0, 0};
    }
}
const Range *range_of(std::int32_t structure, std::int32_t kind, std::int32_t field) noexcept {
    switch (structure) {
    case LVB_STRUCT_STAGE:
        return stage_range(kind, field);
    case LVB_STRUCT_PATTERN:
        return pattern_range(kind, field);
    case LVB_STRUCT_MAP:
    case LVB_STRUCT_WALK:
        return faded_range(structure, kind, field);
    default:
        return struct_range(structure, field);
    }
}

bool describe_field(Refusal &refusal, std::int32_t structure, std::int32_t kind, std::int32_t field,
                    lvb_range *range) noexcept {
    if (!check_result(refusal, range, LVB_STRUCT_RANGE, LVB_FIELD_RANGE)) return false;
    if (!has_ranges(structure)) return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_STRUCTURE, structure);
    const Kinds kinds = kinds_of(structure);
    if (kind < kinds.first || kind > kinds.last)
        return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_KIND, kind, kinds.first, kinds.last);
    const Range *found = range_of(structure, kind, field);
    if (found == nullptr) return refuse(refusal, LVB_E_NOT_FOUND, {}, LVB_FIELD_FIELD, field);
    lvb_range out{};
    out.required = found->required ? 1 : 0;
    out.minimum = found->minimum;
    out.maximum = found->maximum;
    give(range, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" {

uint32_t lvb_version_number(void) {
    return 1000000u * LVB_VERSION_MAJOR + 1000u * LVB_VERSION_MINOR + LVB_VERSION_PATCH;
}

const char *lvb_version_text(void) { return version_text; }

#define LVB_NAME_OF_STRUCT(constant, type, name)                                                                       \
    case constant:                                                                                                     \
        return sizeof(type);

uint32_t lvb_struct_size(int32_t structure) {
    switch (structure) {
#include "levelbook_names.inc"
    default:
        return 0;
    }
}

lvb_status lvb_describe_field(int32_t structure, int32_t kind, int32_t field, lvb_range *range, lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault,
                  [&](Refusal &refusal) noexcept { return describe_field(refusal, structure, kind, field, range); });
}

} // extern "C"
