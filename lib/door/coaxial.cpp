#include "cable/coaxial.hpp"
#include "door/struct_fields.hpp"

namespace lvb::door {
namespace {

constexpr double least_ratio = 1.01; // of the diameters

bool check_line(Refusal &refusal, const lvb_coaxial_line &line, Place place) noexcept {
    if (!check_stated(refusal, line.stated, LVB_STATED_TEMPERATURE, place) ||
        !check_numbers(refusal, line, coaxial_fields, place) ||
        !check_temperature(refusal, line.temperature_degc, line.stated, place))
        return false;
    const double least = least_ratio * line.inner_diameter_mm;
    return line.outer_diameter_mm >= least || refuse(refusal, LVB_E_ORDER, place, LVB_FIELD_OUTER_DIAMETER_MM,
                                                     line.outer_diameter_mm, least, diameter_range.maximum);
}

bool compute(Refusal &refusal, const lvb_coaxial_line *lent, lvb_coaxial_properties *properties) noexcept {
    const Place place{LVB_STRUCT_COAXIAL_LINE};
    lvb_coaxial_line line{};
    if (!take(refusal, lent, line, place, LVB_FIELD_LINE) ||
        !check_result(refusal, properties, LVB_STRUCT_COAXIAL_PROPERTIES, LVB_FIELD_PROPERTIES) ||
        !check_line(refusal, line, place))
        return false;
    const cable::CoaxialLine model{
        {line.inner_diameter_mm, or_else(line.inner_conductivity, 1.0), or_else(line.inner_factor, 1.0)},
        {line.outer_diameter_mm, or_else(line.outer_conductivity, 1.0), or_else(line.outer_factor, 1.0)},
        or_else(line.relative_permittivity, 1.0),
        line.loss_tangent};
    const cable::CoaxialProperties result =
        cable::coaxial_properties(model, line.frequency_mhz, temperature_of(line.temperature_degc, line.stated));
    lvb_coaxial_properties out{};
    out.notes = (line.frequency_mhz > result.cutoff_mhz ? std::uint32_t{LVB_NOTE_ABOVE_CUTOFF} : 0u) |
                (result.deep_skin ? std::uint32_t{LVB_NOTE_DEEP_SKIN} : 0u);
    out.impedance_ohm = result.impedance_ohm;
    out.velocity_factor = result.velocity_factor;
    out.capacitance_pf_per_m = result.capacitance_pf_per_m;
    out.conductor_db_per_100m = result.conductor_db_per_100m;
    out.dielectric_db_per_100m = result.dielectric_db_per_100m;
    out.attenuation_db_per_100m = result.conductor_db_per_100m + result.dielectric_db_per_100m;
    out.cutoff_mhz = result.cutoff_mhz;
    give(properties, out);
    return true;
}

} // namespace
} // namespace lvb::door

extern "C" lvb_status lvb_compute_coaxial_line(const lvb_coaxial_line *line, lvb_coaxial_properties *properties,
                                               lvb_fault *fault) {
    using namespace lvb::door;
    return answer(fault, [&](Refusal &refusal) noexcept { return compute(refusal, line, properties); });
}
