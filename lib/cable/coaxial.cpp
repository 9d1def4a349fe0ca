#include "cable/coaxial.hpp"

#include "cable/attenuation.hpp"
#include "math/elementary.hpp"
#include "units/length.hpp"

namespace lvb::cable {
namespace {

using math::pi;
using units::light_m_mhz;

constexpr double copper_ms_per_m = 58.0;                 // at 20 degC, IEC 60028
constexpr double neper_per_10_log = 0.23025850929940457; // ln(10) / 10
constexpr double db_per_100m_per_neper_per_m = 868.5889638065037;
constexpr double space_ohm = 59.9584916; // impedance of free space over 2 pi

// sqrt(pi f mu0 / s) with f in MHz, s in MS/m and mu0 = 4 pi 1e-7: the units cancel.
double surface_ohm(double frequency_mhz, double conductivity) noexcept {
    return 2.0 * pi * math::sqrt(1e-7 * frequency_mhz / (conductivity * copper_ms_per_m));
}
// Resistance per metre where the current flows in the skin.
double ohm_per_m(const Conductor &conductor, double frequency_mhz) noexcept {
    return conductor.factor * surface_ohm(frequency_mhz, conductor.conductivity) / (pi * conductor.diameter_mm) *
           1000.0;
}
// The skin's depth is the resistivity over the surface resistance.
double skin_mm(double frequency_mhz, double conductivity) noexcept {
    return 1e-3 / (conductivity * copper_ms_per_m * surface_ohm(frequency_mhz, conductivity));
}

} // namespace

CoaxialProperties coaxial_properties(const CoaxialLine &line, double frequency_mhz, double temperature_degc) noexcept {
    const double slowness = math::sqrt(line.relative_permittivity);
    const double logarithm = neper_per_10_log * math::ten_log10(line.outer.diameter_mm / line.inner.diameter_mm);
    const double ohms = ohm_per_m(line.inner, frequency_mhz) + ohm_per_m(line.outer, frequency_mhz);
    CoaxialProperties out;
    out.impedance_ohm = space_ohm / slowness * logarithm;
    out.velocity_factor = 1.0 / slowness;
    out.capacitance_pf_per_m = 1e6 * slowness / (light_m_mhz * out.impedance_ohm); // 1 / (v Z)
    out.conductor_db_per_100m =
        db_per_100m_per_neper_per_m * (ohms / (2.0 * out.impedance_ohm)) * conductor_factor(temperature_degc);
    out.dielectric_db_per_100m =
        db_per_100m_per_neper_per_m * (pi * frequency_mhz * slowness * line.loss_tangent / light_m_mhz);
    out.cutoff_mhz =
        2000.0 * light_m_mhz / (pi * (line.inner.diameter_mm + line.outer.diameter_mm) * slowness); // MHz m over mm
    out.deep_skin = skin_mm(frequency_mhz, line.inner.conductivity) > 0.1 * line.inner.diameter_mm;
    return out;
}

} // namespace lvb::cable
