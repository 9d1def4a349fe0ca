"""Checks what has few published rows against a general-purpose library: constants, units, the half-wave dipole's
directivity and pattern, antennas of cos^n, pointing, polarization by Jones vectors, paths, noise and the distributions of
fading, as SciPy and NumPy compute them.

usage: scipy_test.py LIBRARY
"""

import ctypes
import sys

import numpy
from scipy import constants, integrate, optimize, special, stats
from scipy.spatial.transform import Rotation

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

def expect(name, value, expected, absolute):
    global checks, failures
    checks += 1
    if not abs(value - expected) <= absolute:
        failures += 1
        print(f"{name}: levelbook {value!r}, SciPy {expected!r}")


def in_db(ratio):
    return 10 * numpy.log10(ratio)


# Half-wave dipole over the angle from its axis: its pattern over the mean of that pattern, which SciPy integrates.
mean = integrate.quad(pattern, 0, numpy.pi)[0] / 2
for angle in (1.0, 20.0, 45.0, 51.0, 60.0, 90.0, 100.0, 135.0, 179.0):
    t = numpy.radians(angle)
    check("lvb_dipole_gain_dbi", [angle], in_db(pattern(t) / numpy.sin(t) / mean), absolute=1e-9)

# cos^n in a half space: directivity by integration over the sphere, half-power width by a root.
for n in (0.3, 1.0, 2.0, 4.0, 10.0, 40.0):
    whole = integrate.quad(lambda t: numpy.cos(t) ** n * numpy.sin(t), 0, numpy.pi / 2)[0]
    directivity = 2 / whole
    width = 2 * numpy.degrees(optimize.brentq(lambda t: numpy.cos(t) ** n - 0.5, 0, numpy.pi / 2, xtol=1e-14))
    check("lvb_gain_dbi_from_cosine_exponent", [n], in_db(directivity), absolute=1e-9)
    check("lvb_cosine_exponent_from_gain_dbi", [in_db(directivity)], n, absolute=1e-8)
    check("lvb_beam_width_deg_from_cosine_exponent", [n], width, absolute=1e-9)
    check("lvb_cosine_exponent_from_beam_width_deg", [width], n, relative=1e-9)


# Pointing: directions and polarization of turned antennas, by SciPy's rotations and Jones vectors.
class Antenna(ctypes.Structure):
    _fields_ = [("size", ctypes.c_uint32), ("reserved", ctypes.c_uint32)] + [
        (name, ctypes.c_double)
        for name in ("x", "y", "z", "azimuth", "tilt", "roll", "polarization", "ellipticity", "dimension")
    ] + [("pattern", ctypes.c_void_p), ("label", ctypes.c_void_p)]


class Pointing(ctypes.Structure):
    _fields_ = [("size", ctypes.c_uint32), ("notes", ctypes.c_uint32)] + [
        (name, ctypes.c_double)
        for name in ("distance", "transmit_azimuth", "transmit_elevation", "receive_azimuth", "receive_elevation",
                     "transmit_gain", "receive_gain", "polarization_loss", "far_field")
    ]


def turn_of(antenna):
    # x right, y ahead, z up: a roll turns up to the right, a tilt ahead to up, an azimuth ahead to the right
    return Rotation.from_euler("yxz", [antenna.roll, antenna.tilt, -antenna.azimuth], degrees=True)


def seen(antenna, line):
    right, ahead, up = turn_of(antenna).inv().apply(line)
    return numpy.degrees(numpy.arctan2(right, ahead)), numpy.degrees(numpy.arctan2(up, numpy.hypot(right, ahead)))


def field(antenna, line):
    p = numpy.radians(antenna.polarization)
    element = numpy.array([numpy.sin(p), 0, numpy.cos(p)])
    later = antenna.ellipticity * numpy.array([numpy.cos(p), 0, -numpy.sin(p)])
    whole = turn_of(antenna).apply(element) + 1j * turn_of(antenna).apply(later)
    across = whole - line * (whole @ line) / (line @ line)
    return across / numpy.linalg.norm(across)


random = numpy.random.default_rng(7)
library.lvb_compute_pointing.argtypes = [ctypes.c_void_p, ctypes.c_void_p, ctypes.c_double] + 2 * [ctypes.c_void_p]
for _ in range(200):
    scene = []
    for _ in range(2):
        antenna = Antenna(size=ctypes.sizeof(Antenna))
        antenna.x, antenna.y, antenna.z = random.uniform(-20, 20, 3)
        antenna.azimuth, antenna.roll, antenna.polarization = random.uniform(-180, 180, 3)
        antenna.tilt, antenna.ellipticity = random.uniform(-90, 90), random.uniform(-1, 1)
        scene.append(antenna)
    pointing = Pointing(size=ctypes.sizeof(Pointing))
    status = library.lvb_compute_pointing(ctypes.byref(scene[0]), ctypes.byref(scene[1]), 600.0,
                                          ctypes.byref(pointing), None)
    expect("status", status, 0, 0)
    line = numpy.array([scene[1].x - scene[0].x, scene[1].y - scene[0].y, scene[1].z - scene[0].z])
    expect("distance_m", pointing.distance, numpy.linalg.norm(line), 1e-12)
    for name, antenna, way in (("transmit", scene[0], line), ("receive", scene[1], -line)):
        azimuth, elevation = seen(antenna, way)
        expect(name + "_azimuth_deg", getattr(pointing, name + "_azimuth"), azimuth,
               1e-10 / numpy.cos(numpy.radians(elevation)))
        expect(name + "_elevation_deg", getattr(pointing, name + "_elevation"), elevation, 1e-10)
    match = abs(field(scene[0], line) @ field(scene[1], line)) ** 2
    expect("polarization_loss_db", pointing.polarization_loss, -in_db(match), 1e-8)


# Knife edge: the recommendation's approximation against the exact Fresnel integral, from where it counts at all.
for v in numpy.arange(-0.78, 40.0, 0.005):
    sine, cosine = special.fresnel(v)
    exact = -20 * numpy.log10(numpy.hypot(1 - cosine - sine, cosine - sine) / 2)
    check("lvb_knife_edge_loss_db", [v], exact, relative=0.0, absolute=0.13)


class Edge(ctypes.Structure):
    _fields_ = [("distance_m", ctypes.c_double), ("height_m", ctypes.c_double)]


class Path(ctypes.Structure):
    _fields_ = (
        [("size", ctypes.c_uint32)]
        + [(name, ctypes.c_int32) for name in ("model", "environment", "polarization")]
        + [(name, ctypes.c_uint32) for name in ("floor_count", "wall_count", "edge_count", "edge_size")]
        + [("edges", ctypes.POINTER(Edge)), ("user", ctypes.c_void_p)]
        + [(name, ctypes.c_double) for name in (
            "transmit_height_m", "receive_height_m", "relative_permittivity", "conductivity_s_per_m", "exponent",
            "reference_distance_m", "reference_loss_db", "power_loss_coefficient", "floor_loss_db", "wall_loss_db",
            "longitudinal_loss_db_per_100m", "coupling_loss_db", "lateral_distance_m", "standard_deviation_db")]
    )


class PathLoss(ctypes.Structure):
    _fields_ = [("size", ctypes.c_uint32), ("notes", ctypes.c_uint32)] + [(name, ctypes.c_double) for name in (
        "loss_db", "base_loss_db", "diffraction_loss_db", "obstacle_loss_db", "free_space_loss_db",
        "standard_deviation_db", "break_point_m", "grazing_angle_deg", "reflection_magnitude", "reflection_phase_deg")]


library.lvb_compute_path_loss.argtypes = [ctypes.c_void_p, ctypes.c_double, ctypes.c_double] + 2 * [ctypes.c_void_p]


def exposure_limit(rule, audience, frequency):
    library.lvb_exposure_limit_w_per_m2.restype = ctypes.c_double
    library.lvb_exposure_limit_w_per_m2.argtypes = [ctypes.c_int32, ctypes.c_int32, ctypes.c_double]
    return library.lvb_exposure_limit_w_per_m2(rule, audience, frequency)


def path_loss(frequency, distance, edges=(), **fields):
    path = Path(size=ctypes.sizeof(Path), edge_count=len(edges), edge_size=ctypes.sizeof(Edge), **fields)
    tops = (Edge * len(edges))(*[Edge(*edge) for edge in edges])
    if edges:
        path.edges = tops
    loss = PathLoss(size=ctypes.sizeof(PathLoss))
    status = library.lvb_compute_path_loss(ctypes.byref(path), frequency, distance, ctypes.byref(loss), None)
    if status != 0:
        raise SystemExit(f"lvb_compute_path_loss refuses a sound path: {status}")
    return loss


# Two rays, with the complex numbers and the electric constant of these libraries (the latter is measured since 2019).
for polarization in (0, 1):
    for permittivity, conductivity in ((5.0, 0.03), (15.0, 0.005), (2.0, 0.0), (1.0, 1e7)):
        for frequency in (174.0, 600.0, 2450.0):
            for transmit, receive, distance in ((3.0, 1.5, 10.0), (3.0, 1.5, 73.0), (8.0, 1.2, 300.0), (0.5, 0.5, 2.0)):
                loss = path_loss(frequency, distance, model=1, polarization=polarization, transmit_height_m=transmit,
                                 receive_height_m=receive, relative_permittivity=permittivity,
                                 conductivity_s_per_m=conductivity)
                hertz = frequency * constants.mega
                e = permittivity - 1j * conductivity / (2 * numpy.pi * hertz * constants.epsilon_0)
                grazing = numpy.arctan2(transmit + receive, distance)
                w = numpy.sqrt(e - numpy.cos(grazing) ** 2)
                q = numpy.sin(grazing) * (1 if polarization else e)
                r = (q - w) / (q + w)
                direct = numpy.hypot(distance, transmit - receive)
                reflected = numpy.hypot(distance, transmit + receive)
                k = 2 * numpy.pi * hertz / constants.c
                field = numpy.exp(-1j * k * direct) / direct + r * numpy.exp(-1j * k * reflected) / reflected
                expect("two-ray", loss.loss_db, -20 * numpy.log10(abs(field) / (2 * k)), 1e-6)
                expect("reflection", loss.reflection_magnitude, abs(r), 1e-9)
                expect("grazing angle", loss.grazing_angle_deg, numpy.degrees(grazing), 1e-11)
                phase = (loss.reflection_phase_deg - numpy.degrees(numpy.angle(r)) + 180) % 360 - 180
                expect("phase of the reflection", phase if abs(r) > 1e-9 else 0.0, 0.0, 1e-6)


# Power laws of indoor paths and of a radiating cable, from their printed coefficients; the dipole as above.
for frequency in (300.0, 863.0, 5200.0, 83500.0):
    for distance in (1.0, 12.5, 1000.0):
        for coefficient in (20.0, 28.0, 33.0):
            indoor = 2 * in_db(frequency) + coefficient * numpy.log10(distance) - 28
            check("lvb_indoor_loss_db", [frequency, distance, coefficient], indoor, absolute=1e-11)
            loss = path_loss(frequency, distance, model=3, power_loss_coefficient=coefficient, floor_count=2,
                             floor_loss_db=4.5)
            expect("indoor with floors", loss.loss_db, indoor + 9, 1e-10)
for environment, (alpha, beta, gamma, sigma) in enumerate(
        ((1.46, 34.62, 2.03, 3.76), (2.46, 29.53, 2.38, 5.04), (1.63, 28.12, 2.25, 4.07), (2.77, 29.27, 2.48, 7.63),
         (2.31, 24.52, 2.06, 2.69), (3.79, 21.01, 1.34, 9.05)), 1):
    for frequency in (650.0, 2400.0, 28000.0, 70000.0):
        for distance in (5.0, 13.4, 26.5):
            loss = path_loss(frequency, distance, model=4, environment=environment)
            expect("site-general", loss.loss_db,
                   alpha * in_db(distance) + beta + gamma * in_db(frequency / 1000), 1e-10)
            expect("its deviation", loss.standard_deviation_db, sigma, 1e-12)
for longitudinal, along, coupling in ((3.0, 1000.0, 65.0), (0.8, 37.0, 72.0), (12.0, 250.0, 55.0)):
    for exponent, across in ((0.0, 2.0), (1.0, 9.0), (1.0, 0.7), (2.0, 20.0), (1.4, 5.0)):
        loss = path_loss(900.0, along, model=5, longitudinal_loss_db_per_100m=longitudinal, coupling_loss_db=coupling,
                         exponent=exponent, lateral_distance_m=across)
        expect("radiating cable", loss.loss_db,
               longitudinal * along / 100 + coupling + in_db(4 / cosine_integral) + exponent * in_db(across / 2),
               1e-10)


def two_edges(wavelength, a, b, c, first, second):
    """Exact loss behind two edges over a straight line: the Fresnel-Kirchhoff integral over both planes. The inner one
    is an error function, the outer one runs along a line in the complex plane on which it does not swing."""
    k = 2 * numpy.pi / wavelength
    inner, outer, mixed = k * (1 / a + 1 / b) / 2, k * (1 / b + 1 / c) / 2, k / b / 2
    rest = outer - mixed**2 / inner
    turn = numpy.exp(-0.25j * numpy.pi)
    nodes, weights = numpy.polynomial.legendre.leggauss(400)
    length = (9 + abs(second) * numpy.sqrt(rest)) / numpy.sqrt(rest)
    x = second + (nodes + 1) / 2 * length * turn
    values = numpy.exp(-1j * rest * x * x) * special.erfc(numpy.sqrt(1j * inner) * (first - mixed * x / inner)) / 2
    total = numpy.sum(values * weights) * length / 2 * turn / numpy.sqrt(numpy.pi / (1j * rest))
    return -20 * numpy.log10(abs(total))


# The integral itself: equally spaced edges that touch the line leave 1 / (n + 1) of the field.
expect("two touching edges", two_edges(0.5, 10.0, 10.0, 10.0, 0.0, 0.0), 20 * numpy.log10(3.0), 1e-9)
random = numpy.random.default_rng(20250101)
wavelength = constants.c / 600e6
for _ in range(400):
    a, b, c = 10 ** random.uniform(0.7, 2.0, 3)
    if b < 0.1 * (a + b + c):
        continue  # there the integral cancels, in these digits
    first, second = random.uniform(0.0, 3.0, 2)
    first *= numpy.sqrt(wavelength * a * (b + c) / (a + b + c) / 2)
    second *= numpy.sqrt(wavelength * (a + b) * c / (a + b + c) / 2)
    loss = path_loss(600.0, a + b + c, [(a, 100 + first), (a + b, 100 + second)], transmit_height_m=100.0,
                     receive_height_m=100.0)
    expect(f"two edges {a, b, c, first, second}", loss.diffraction_loss_db,
            two_edges(wavelength, a, b, c, first, second), 1.5)
# Noise and linearity: sums of powers as a log-sum-exp, a loss between two temperatures, and third-order products by
# convolving the carriers' spectrum with itself (a + b - c): 2 n - 1 terms of it give the carrier itself back.
for a, b in ((-90.0, -107.0), (3.0, 4.0), (-120.0, -120.0), (30.0, -200.0)):
    check("lvb_power_sum_dbm", [a, b], 10 / numpy.log(10) * special.logsumexp([a * numpy.log(10) / 10, b * numpy.log(10) / 10]))
for loss, kelvin in ((0.01, 300.0), (3.0, 77.0), (20.0, 350.0)):
    through = 10 ** (-loss / 10)  # a source at 290 K behind it, over its noise without the loss's own
    check("lvb_passive_noise_figure_db", [loss, kelvin],
          10 * numpy.log10((290 * through + kelvin * (1 - through)) / (290 * through)))
library.lvb_two_tone_product_count.restype = library.lvb_three_tone_product_count.restype = ctypes.c_double
for carriers in (1, 2, 3, 8, 31, 100):
    spectrum = numpy.ones(carriers)
    products = numpy.convolve(numpy.convolve(spectrum, spectrum), spectrum[::-1])
    on_middle = products[carriers - 1 + (carriers - 1) // 2]
    two_tone = library.lvb_two_tone_product_count(ctypes.c_double(carriers))
    check("lvb_three_tone_product_count", [carriers], (on_middle - two_tone - (2 * carriers - 1)) / 2)


# External noise and exposure, from the printed coefficients and by interpolation along the printed straight lines.
for name, c, d, lowest, highest in (("city", 76.8, 27.7, 0.3, 250.0), ("residential", 72.5, 27.7, 0.3, 250.0),
                                    ("rural", 67.2, 27.7, 0.3, 250.0), ("quiet_rural", 53.6, 28.6, 0.3, 30.0),
                                    ("business", 44.3, 12.3, 200.0, 900.0), ("galactic", 52.0, 23.0, 10.0, 100.0)):
    for frequency in numpy.geomspace(lowest, highest, 9)[1:-1]:
        check(f"lvb_{name}_noise_figure_db", [frequency], c - d * numpy.log10(frequency), absolute=1e-11)
for audience, times in ((1, 1.0), (2, 5.0)):
    for frequency in (100.0, 174.0, 400.0, 600.0, 1300.0, 1999.0, 2000.0, 5800.0, 300000.0):
        expect("exposure", exposure_limit(2, audience, frequency),
               times * numpy.interp(frequency, [30, 400, 2000, 300000], [2, 2, 10, 10]), 1e-12)


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
sys.exit(1 if failures or checks < 11000 else 0)
