// Names of statuses, fields, structs and of the values in results, as the header writes or describes them.
#include "door/names.hpp"

namespace lvb::door {

// The header's own list of its constants is derived from it at build time; each function below picks one family.
#define LVB_NAME_OF_STRUCT(constant, type, name)                                                                       \
    case constant:                                                                                                     \
        return #type;

const char *struct_name(std::int32_t structure) noexcept {
    switch (structure) {
#include "levelbook_names.inc"
    default:
        return "unknown";
    }
}

namespace {

bool same_text(const char *a, const char *b) noexcept {
    for (; *a == *b; ++a, ++b)
        if (*a == '\0') return true;
    return false;
}

} // namespace
} // namespace lvb::door

extern "C" {

#define LVB_NAME_OF_STATUS(constant, name)                                                                             \
    case constant:                                                                                                     \
        return name;

const char *lvb_status_name(lvb_status status) {
    switch (status) {
#include "levelbook_names.inc"
    default:
        return "unknown";
    }
}

#define LVB_NAME_OF_FIELD(constant, member, name)                                                                      \
    case constant:                                                                                                     \
        return name;

const char *lvb_field_name(int32_t field) {
    switch (field) {
#include "levelbook_names.inc"
    default:
        return "unknown";
    }
}

#define LVB_NAME_OF_FORMULA(constant, function, name)                                                                  \
    case constant:                                                                                                     \
        return name;

const char *lvb_formula_name(int32_t formula) {
    switch (formula) {
#include "levelbook_names.inc"
    default:
        return "unknown";
    }
}

int32_t lvb_formula_from_name(const char *name) {
    using namespace lvb::door;
    if (name == nullptr) return LVB_FORMULA_NONE;
    for (int32_t formula = 1; formula <= formula_count; ++formula)
        if (same_text(name, lvb_formula_name(formula))) return formula;
    return LVB_FORMULA_NONE;
}

const char *lvb_kind_name(int32_t kind) {
    switch (kind) {
    case LVB_KIND_SOURCE:
        return "source";
    case LVB_KIND_PASSIVE:
        return "passive";
    case LVB_KIND_CABLE:
        return "cable";
    case LVB_KIND_AMPLIFIER:
        return "amplifier";
    case LVB_KIND_ANTENNA:
        return "antenna";
    case LVB_KIND_AIR:
        return "air";
    case LVB_KIND_ALLOWANCE:
        return "allowance";
    case LVB_KIND_RECEIVER:
        return "receiver";
    default:
        return "unknown";
    }
}

const char *lvb_basis_name(int32_t basis) {
    switch (basis) {
    case LVB_BASIS_NOT_LOOKED_UP:
        return "not looked up";
    case LVB_BASIS_ESTIMATE:
        return "estimate";
    case LVB_BASIS_HANDBOOK:
        return "handbook";
    case LVB_BASIS_DATA_SHEET:
        return "data sheet";
    case LVB_BASIS_MEASURED:
        return "measured";
    case LVB_BASIS_FORMULA:
        return "formula";
    default:
        return "unknown";
    }
}

const char *lvb_reference_name(int32_t reference) {
    switch (reference) {
    case LVB_REFERENCE_CONDUCTED:
        return "conducted";
    case LVB_REFERENCE_EIRP:
        return "e.i.r.p.";
    case LVB_REFERENCE_ISOTROPIC:
        return "isotropic";
    default:
        return "unknown";
    }
}

const char *lvb_zone_name(int32_t zone) {
    switch (zone) {
    case LVB_ZONE_NOT_JUDGED:
        return "not judged";
    case LVB_ZONE_DROPOUT:
        return "dropout";
    case LVB_ZONE_LOW:
        return "below the wanted band";
    case LVB_ZONE_WANTED:
        return "wanted band";
    case LVB_ZONE_HIGH:
        return "above the wanted band";
    case LVB_ZONE_OVERLOAD:
        return "overload";
    default:
        return "unknown";
    }
}

const char *lvb_outcome_name(int32_t outcome) {
    switch (outcome) {
    case LVB_OUTCOME_PROVEN:
        return "proven";
    case LVB_OUTCOME_NOT_PROVEN:
        return "not proven";
    case LVB_OUTCOME_INFEASIBLE:
        return "infeasible";
    case LVB_OUTCOME_SHORT_OF_STOCK:
        return "short of stock";
    case LVB_OUTCOME_UNDECIDED:
        return "undecided";
    default:
        return "unknown";
    }
}

const char *lvb_verdict_name(int32_t verdict) {
    switch (verdict) {
    case LVB_VERDICT_NOT_JUDGED:
        return "not judged";
    case LVB_VERDICT_HOLDS:
        return "holds";
    case LVB_VERDICT_DOUBTFUL:
        return "doubtful";
    case LVB_VERDICT_DROPS_OUT:
        return "drops out";
    case LVB_VERDICT_OVERLOADS:
        return "overloads";
    case LVB_VERDICT_DROPS_OUT_AND_OVERLOADS:
        return "drops out and overloads";
    default:
        return "unknown";
    }
}

} // extern "C"
