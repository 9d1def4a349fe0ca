"""Checks what has few published rows against a general-purpose library: constants, units, the half-wave dipole's
directivity, polarization by Jones vectors and the distributions of fading, as SciPy and NumPy compute them.

usage: scipy_test.py LIBRARY
"""

import ctypes
import sys

import numpy
from scipy import constants, integrate, special, stats

library = ctypes.CDLL(sys.argv[1])
failures = 0
checks = 0


def check(name, arguments, expected, relative=1e-12, absolute=0.0):
    global checks, failures
    function = getattr(library, name)
    function.restype = ctypes.c_double
    function.argtypes = [ctypes.c_double] * len(arguments)
    value = function(*map(float, arguments))
    checks += 1
    if not abs(value - expected) <= max(absolute, relative * abs(expected)):
        failures += 1
        print(f"{name}{tuple(arguments)}: levelbook {value!r}, SciPy {expected!r}")


def jones(ellipticity, angle):
    """Unit Jones vector of an ellipse with its major axis at an angle."""
    rotation = numpy.array([[numpy.cos(angle), -numpy.sin(angle)], [numpy.sin(angle), numpy.cos(angle)]])
    vector = rotation @ numpy.array([1.0, 1j * ellipticity])
    return vector / numpy.linalg.norm(vector)


for x in (0.001, 1.0, 40.0, 12345.6789):
    check("lvb_metres_from_feet", [x], x * constants.foot)
    check("lvb_metres_from_inches", [x], x * constants.inch)
    check("lvb_metres_from_yards", [x], x * constants.yard)
    check("lvb_metres_from_miles", [x], x * constants.mile)
    check("lvb_feet_from_metres", [x], x / constants.foot)
    check("lvb_miles_from_metres", [x], x / constants.mile)
    check("lvb_wavelength_m_from_mhz", [x], constants.c / (x * constants.mega))
    check("lvb_db_per_100m_from_db_per_100ft", [x], x / constants.foot)
    check("lvb_degc_from_degf", [x], constants.convert_temperature(x, "F", "C"), absolute=1e-12)
    check("lvb_degf_from_degc", [x], constants.convert_temperature(x, "C", "F"), absolute=1e-12)
    check("lvb_kelvin_from_degc", [x], x + constants.zero_Celsius)

for bandwidth in (0.0125, 0.2, 6.0):
    for temperature in (4.0, 290.0, 1000.0):
        power = constants.k * temperature * bandwidth * constants.mega
        check("lvb_thermal_noise_dbm", [bandwidth, temperature], 10 * numpy.log10(power / constants.milli))

# Half-wave dipole: by the cosine integral, and by integrating its pattern over the sphere.
cosine_integral = numpy.euler_gamma + numpy.log(2 * numpy.pi) - special.sici(2 * numpy.pi)[1]
check("lvb_dbi_from_dbd", [0.0], 10 * numpy.log10(4 / cosine_integral), absolute=1e-10)


def pattern(t):
    return numpy.cos(numpy.pi / 2 * numpy.cos(t)) ** 2 / numpy.sin(t)


check("lvb_dbi_from_dbd", [0.0], 10 * numpy.log10(2 / integrate.quad(pattern, 0, numpy.pi)[0]), absolute=1e-9)

# Field strength and isotropic reception from the impedance of free space: since 2019 it is a
# measured constant, which agrees with 4 pi 1e-7 c to a few parts in 1e10 only.
impedance = constants.physical_constants["characteristic impedance of vacuum"][0]
for eirp, distance in ((0.0, 1.0), (17.0, 40.0)):
    watts = 10 ** ((eirp - 30) / 10)
    field = numpy.sqrt(watts * impedance / (4 * numpy.pi)) / distance
    check("lvb_field_strength_dbuv_per_m", [eirp, distance], 20 * numpy.log10(field / constants.micro), absolute=1e-8)
for field, frequency in ((0.0, 1.0), (68.0, 600.0)):
    wavelength = constants.c / (frequency * constants.mega)
    density = (10 ** (field / 20) * constants.micro) ** 2 / impedance
    received = density * wavelength**2 / (4 * numpy.pi)
    check("lvb_isotropic_dbm_from_dbuv_per_m", [field, frequency], 10 * numpy.log10(received / constants.milli),
          absolute=1e-8)

# Polarization: |<e1, e2>|^2 of Jones vectors seen from one side, 1 where both antennas radiate the same ellipse.
for first in (-1.0, -0.6, 0.0, 0.3, 1.0):
    for second in (-0.9, -0.2, 0.0, 0.5, 0.8):
        for angle in (0.0, 17.0, 45.0, 80.0, 133.0):
            match = abs(numpy.vdot(jones(first, 0.0), jones(second, numpy.radians(angle)))) ** 2
            check("lvb_elliptical_polarization_loss_db", [first, second, angle], -10 * numpy.log10(match),
                  absolute=1e-10)

# Fading: the distributions behind it, by their own functions or by integrating their definitions.
levels = (-12.0, -3.0, 0.0, 2.5, 10.0, 27.0, 60.0)
for margin in levels:
    level = 10 ** (-margin / 10)
    check("lvb_rayleigh_outage_below_mean", [margin], stats.expon.cdf(level))
    check("lvb_rayleigh_outage_below_median", [margin], -numpy.expm1(-level * numpy.log(2)))
    for k_db in (-30.0, 0.0, 6.0, 12.0):
        direct = 10 ** (k_db / 10)
        check("lvb_rice_outage_below_mean", [margin, k_db], special.chndtr(2 * (1 + direct) * level, 2, 2 * direct),
              relative=1e-9)
    for shape in (0.5, 1.0, 2.3, 8.0, 40.0):
        check("lvb_nakagami_outage_below_mean", [margin, shape], special.gammainc(shape, shape * level), relative=1e-11)
    for branches in (1, 2, 4, 7):
        check("lvb_maximal_ratio_outage_below_mean", [margin, branches], special.gammainc(branches, level),
              relative=1e-11)
    for deviation in (1.0, 4.0, 8.0, 12.0):
        check("lvb_lognormal_outage_below_median", [margin, deviation], special.ndtr(-margin / deviation),
              relative=1e-11)

        def rayleigh_where(z):
            return stats.norm.pdf(z) * -numpy.expm1(-(10 ** (-(margin + deviation * z) / 10)))

        check("lvb_suzuki_outage_below_median_of_means", [margin, deviation],
              integrate.quad(rayleigh_where, -16, 10, epsabs=0, epsrel=1e-12, limit=400, points=[-8, -4, 0])[0],
              relative=1e-9)
    for correlation in (0.1, 0.5, 0.9):
        apart = 1 - correlation

        def both_below(t):  # one at t, the other, of non-central chi-square distribution, below the level
            return 2 * numpy.exp(-t) * special.chndtr(2 * t / apart, 2, 2 * correlation * t / apart)

        check("lvb_correlated_selection_outage_below_mean", [margin, correlation],
              integrate.quad(both_below, 0, level, epsabs=0, epsrel=1e-11, limit=400)[0], relative=1e-8)
        p, q = 1 + numpy.sqrt(correlation), 1 - numpy.sqrt(correlation)

        def sum_below(t):
            return numpy.exp(-t / p) / p * -numpy.expm1(-(level - t) / q)

        check("lvb_correlated_maximal_ratio_outage_below_mean", [margin, correlation],
              integrate.quad(sum_below, 0, level, epsabs=0, epsrel=1e-11, limit=400)[0], relative=1e-9)
for outage in (1e-30, 1e-6, 0.01, 0.3, 0.5, 0.8, 0.9999):
    check("lvb_rayleigh_margin_below_mean_db", [outage], -10 * numpy.log10(-numpy.log1p(-outage)), absolute=1e-12)
    check("lvb_rayleigh_margin_below_median_db", [outage], -10 * numpy.log10(-numpy.log1p(-outage) / numpy.log(2)),
          absolute=1e-12)
    check("lvb_lognormal_margin_below_median_db", [outage, 6.0], -6 * special.ndtri(outage), absolute=1e-12)
    check("lvb_selection_outage", [outage, 3.0], outage**3)
    for shape in (0.5, 2.3, 8.0):
        check("lvb_nakagami_margin_below_mean_db", [outage, shape],
              -10 * numpy.log10(special.gammaincinv(shape, outage) / shape), absolute=1e-9)
    for k_db in (0.0, 8.0):
        direct = 10 ** (k_db / 10)
        if outage > 1e-12:  # further out chndtrix does not search
            check("lvb_rice_margin_below_mean_db", [outage, k_db],
                  -10 * numpy.log10(special.chndtrix(outage, 2, 2 * direct) / (2 * (1 + direct))), absolute=1e-6)
for edge in (0.05, 0.5, 0.9):
    for deviation, exponent in ((3.0, 2.0), (8.0, 3.5), (14.0, 2.2)):

        def covered(radius):
            return 2 * radius * special.ndtr(special.ndtri(edge) - 10 * exponent * numpy.log10(radius) / deviation)

        check("lvb_area_coverage", [edge, deviation, exponent], integrate.quad(covered, 0, 1, epsrel=1e-11)[0],
              relative=1e-8)

print(f"{checks} checks against SciPy, {failures} fail")
sys.exit(1 if failures or checks < 440 else 0)
