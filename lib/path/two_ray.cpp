#include "path/two_ray.hpp"

namespace lvb::path {
namespace {

Complex operator-(const Complex &a, const Complex &b) noexcept { return {a.real - b.real, a.imaginary - b.imaginary}; }
Complex operator*(const Complex &a, const Complex &b) noexcept {
    return {a.real * b.real - a.imaginary * b.imaginary, a.real * b.imaginary + a.imaginary * b.real};
}
double square_of(const Complex &a) noexcept { return a.real * a.real + a.imaginary * a.imaginary; }
Complex operator/(const Complex &a, const Complex &b) noexcept {
    const double square = square_of(b);
    const Complex product = a * Complex{b.real, -b.imaginary};
    return {product.real / square, product.imaginary / square};
}

// Root of a number with a positive real part; exact where the number is a square of a real one.
Complex root(const Complex &a) noexcept {
    const double real = math::sqrt((a.real + math::sqrt(square_of(a))) / 2.0);
    return {real, a.imaginary / (2.0 * real)};
}

// Conductivity as the imaginary part of the permittivity: s / (2 pi f e0), e0 = 1 / (mu0 c^2) with mu0 = 4 pi 1e-7 H/m.
constexpr double loss_per_s_per_m_at_1_mhz = 2.0e-7 * units::light_m_mhz * units::light_m_mhz * 1e6;

} // namespace

Reflection reflection(const Ground &ground, double frequency_mhz, double sine) noexcept {
    const Complex permittivity{ground.relative_permittivity,
                               -(loss_per_s_per_m_at_1_mhz * ground.conductivity_s_per_m / frequency_mhz)};
    // e - cos^2 as (e - 1) + sin^2: a ground of vacuum then reflects exactly nothing
    const Complex refracted = root({(permittivity.real - 1.0) + sine * sine, permittivity.imaginary});
    const Complex incident =
        ground.horizontal ? Complex{sine, 0.0} : Complex{permittivity.real * sine, permittivity.imaginary * sine};
    const Complex sum{incident.real + refracted.real, incident.imaginary + refracted.imaginary};
    return {(incident - refracted) / sum, Complex{2.0 * incident.real, 2.0 * incident.imaginary} / sum};
}

double reflected_ray_loss_db(const Rays &rays, const Reflection &reflection, double frequency_mhz) noexcept {
    // Direct and reflected ray over the direct one are 1 + R q e^(-jp), q = direct/reflected, p the phase of the
    // excess. Written as (1 + R) - R (1 - q e^(-jp)) nothing cancels however far the antennas are: with t = p/2 the
    // last bracket is (1 - q) + q (2 sin^2 t + 2j sin t cos t).
    const double half_turns_deg = rays.excess_m * frequency_mhz / units::light_m_mhz * 180.0;
    const double cosine = math::cos_deg(half_turns_deg);
    const double sine = math::sin_deg(half_turns_deg);
    const double ratio = rays.direct_m / rays.reflected_m;
    const Complex rest{rays.excess_m / rays.reflected_m + ratio * (2.0 * sine * sine), ratio * (2.0 * sine * cosine)};
    return 0.0 - math::ten_log10(square_of(reflection.one_plus - reflection.coefficient * rest));
}

} // namespace lvb::path
