#include "door/check.hpp"

namespace lvb::door {

bool refuse(Refusal &refusal, lvb_status status, Place place, std::int32_t field, double value, double minimum,
            double maximum) noexcept {
    refusal = {status, place, field, value, minimum, maximum};
    return false;
}

bool refuse_outside(Refusal &refusal, double value, double minimum, double maximum, Place place,
                    std::int32_t field) noexcept {
    lvb_status status = value < minimum ? LVB_E_BELOW_RANGE : LVB_E_ABOVE_RANGE;
    if (math::is_nan(value)) status = LVB_E_NAN;
    if (math::abs(value) == math::infinity) status = LVB_E_INFINITE;
    return refuse(refusal, status, place, field, value, minimum, maximum);
}

bool refuse_unused(Refusal &refusal, double value, Place place, std::int32_t field) noexcept {
    lvb_status status = math::abs(value) == math::infinity ? LVB_E_INFINITE : LVB_E_UNUSED;
    if (math::is_nan(value)) status = LVB_E_NAN;
    return refuse(refusal, status, place, field, value);
}

bool check_unknown_tail(Refusal &refusal, const void *object, std::uint32_t size, std::size_t known,
                        Place place) noexcept {
    const auto *bytes = static_cast<const unsigned char *>(object);
    for (std::size_t i = known; i < size; ++i)
        if (bytes[i] != 0)
            return refuse(refusal, LVB_E_UNKNOWN_TAIL, place, LVB_FIELD_SIZE, size, 0.0, static_cast<double>(known));
    return true;
}

void fill(lvb_fault *fault, const Refusal &refusal) noexcept {
    lvb_fault told{};
    told.status = refusal.status;
    told.structure = refusal.place.structure;
    told.field = refusal.field;
    told.stage = refusal.place.stage;
    told.row = refusal.place.row;
    told.value = refusal.value;
    told.minimum = refusal.minimum;
    told.maximum = refusal.maximum;
    give(fault, told);
}

} // namespace lvb::door
