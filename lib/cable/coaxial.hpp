// A coaxial line from its dimensions and materials. Source: Pozar, Microwave Engineering, 2.2, 2.7 (line), 3.5 (modes).
//
// Valid input only: the outer diameter exceeds the inner one, factors and permittivity are at least 1.
#pragma once

namespace lvb::cable {

/// A conductor by its diameter, its conductivity over that of copper, and its resistance over that of a smooth round
/// one.
struct Conductor {
    double diameter_mm;
    double conductivity;
    double factor;
};

struct CoaxialLine {
    Conductor inner, outer;
    double relative_permittivity;
    double loss_tangent;
};

struct CoaxialProperties {
    double impedance_ohm, velocity_factor, capacitance_pf_per_m;
    double conductor_db_per_100m, dielectric_db_per_100m;
    double cutoff_mhz;
    bool deep_skin; ///< the skin is deeper than a tenth of the inner diameter
};

CoaxialProperties coaxial_properties(const CoaxialLine &line, double frequency_mhz, double temperature_degc) noexcept;

} // namespace lvb::cable
