"""Checks maps and walks against NumPy and SciPy, which share nothing with the library but the published formulas: free
space, antennas of cos^n and half-wave dipoles turned by SciPy's rotations, best of and sum of powers, screens by ITU-R
P.526 in geometry of three dimensions, wearers and their antennas, areas by triangles, fading by SciPy's distributions, and walks by arc
length. Some points are published single links (Rappaport's rows as in *.ref, known C).

usage: map_test.py PREPROCESSED_HEADER LIBRARY
"""

import sys

import numpy
from cffi import FFI
from scipy import constants, integrate, special, stats
from scipy.spatial.transform import Rotation

ffi = FFI()
ffi.cdef(open(sys.argv[1]).read())
lvb = ffi.dlopen(sys.argv[2])
random = numpy.random.default_rng(5)
failures = 0
checks = 0
largest = {}


def check(name, value, expected, tolerance):
    """Arrays agree; infinities and NaN are the same on both sides."""
    global checks, failures
    value, expected = numpy.broadcast_arrays(numpy.asarray(value, float), numpy.asarray(expected, float))
    checks += value.size
    same = (value == expected) | (numpy.isnan(value) & numpy.isnan(expected))
    with numpy.errstate(invalid="ignore"):
        error = numpy.where(same, 0.0, numpy.abs(value - expected))
    error = numpy.where(numpy.isnan(error), numpy.inf, error)
    largest[name] = max(largest.get(name, 0.0), error.max(initial=0.0))
    wrong = ~(error <= tolerance)
    if wrong.any():
        failures += wrong.sum()
        first = numpy.argmax(wrong)
        print(f"{name}: levelbook {value.flat[first]!r}, NumPy {expected.flat[first]!r}, {wrong.sum()} of {wrong.size}")


def decibels(power):
    with numpy.errstate(divide="ignore"):
        return 10.0 * numpy.log10(power)


# ---- The library's side.

class Site:
    """Antennas with their chains, screens, areas and a wearer; numbers are handed over as they are."""
    def __init__(self, pack_m, **more):
        self.pack_m, self.kept, self.antennas, self.more = pack_m, [], [], more

    def new(self, kind, *fields):
        self.kept.append(ffi.new(kind, *fields))
        return self.kept[-1]

    def sized(self, kind, /, **fields):
        return self.new(f"{kind} *", {"size": ffi.sizeof(kind), **fields})

    def numbers(self, values):
        array = numpy.ascontiguousarray(values, float)
        self.kept.append(array)
        return ffi.from_buffer("double[]", array)

    def add(self, frequency_mhz, stages, pattern=None, **place):
        lent = self.new("lvb_stage[]", stages)
        link = self.sized("lvb_link", stages=lent, stage_count=len(stages), stage_size=ffi.sizeof("lvb_stage"),
                          frequency_mhz=frequency_mhz)
        if pattern is not None:
            place["pattern"] = self.sized("lvb_pattern", **pattern)
        self.antennas.append({"antenna": self.sized("lvb_antenna", **place), "link": link})

    def made(self):
        fields = dict(self.more)
        for name, element in ("screens", "lvb_screen"), ("areas", "lvb_area"), ("antennas", "lvb_site_antenna"):
            elements = self.antennas if name == "antennas" else fields.pop(name, [])
            fields[name] = self.new(f"{element}[]", elements) if elements else ffi.NULL
            fields[f"{name[:-1]}_count"], fields[f"{name[:-1]}_size"] = len(elements), ffi.sizeof(element)
        return self.sized("lvb_site", pack_height_m=self.pack_m, **fields)

    def map(self, x, y, **more):
        """All that a map tells over equally spaced x and y."""
        rows, columns = len(y), len(x)
        out = {name: numpy.full((rows, columns), -7.25e77) for name in ("level_dbm", "margin_db", "headroom_db")}
        if "fading" in more:
            out["outage"] = numpy.full((rows, columns), -7.25e77)
        out.update({name: numpy.full((rows, columns), -9, numpy.int32) for name in ("zone", "serving")})
        lent = {name: ffi.from_buffer("int32_t[]" if array.dtype == numpy.int32 else "double[]", array)
                for name, array in out.items()}
        call = self.sized("lvb_map", instructions=lvb.lvb_best_instructions(), site=self.made(), column_count=columns,
                          row_count=rows, x_m=x[0], y_m=y[0], step_x_m=x[1] - x[0] if columns > 1 else 1.0,
                          step_y_m=y[1] - y[0] if rows > 1 else 1.0, **lent, **more)
        out["summary"] = self.sized("lvb_map_summary")
        self.expect(lvb.lvb_compute_map(call, out["summary"], self.fault()))
        return out

    def fault(self):
        self.told = self.sized("lvb_fault")
        return self.told

    def expect(self, status):
        assert status == lvb.LVB_OK, (status, ffi.string(lvb.lvb_field_name(self.told.field)), self.told.value)


WINDOW = {"stated": lvb.LVB_STATED_FLOOR | lvb.LVB_STATED_WANTED | lvb.LVB_STATED_CEILING, "floor_dbm": -70.0,
          "wanted_low_dbm": -62.0, "wanted_high_dbm": -45.0, "ceiling_dbm": -35.0}


def chain(level_dbm, gain_dbi=0.0, allowance_db=0.0, window=WINDOW):
    stages = [{"kind": lvb.LVB_KIND_SOURCE, "level_dbm": level_dbm},
              {"kind": lvb.LVB_KIND_ANTENNA, "gain_db": gain_dbi}, {"kind": lvb.LVB_KIND_AIR}]
    if allowance_db != 0.0:
        stages.append({"kind": lvb.LVB_KIND_ALLOWANCE, "gain_db": -allowance_db})
    return stages + [{"kind": lvb.LVB_KIND_ANTENNA}, {"kind": lvb.LVB_KIND_RECEIVER, **window}]


# ---- NumPy's side.

def spaced(first, step, count):
    return first + step * numpy.arange(count)


def way(x, y, z, antenna):
    """Vectors from an antenna to all points."""
    points = numpy.stack(numpy.broadcast_arrays(x, y, z), axis=-1)
    return points - numpy.array([antenna["x_m"], antenna["y_m"], antenna["z_m"]])


def free_space_db(frequency_mhz, metres):
    """ITU-R P.525."""
    return 20.0 * numpy.log10(4.0 * numpy.pi * metres * frequency_mhz * constants.mega / constants.c)


def axes(antenna):
    """Right, boresight and up of an antenna that is turned, as columns."""
    turn = Rotation.from_euler("yxz", [antenna.get("roll_deg", 0.0), antenna.get("tilt_deg", 0.0),
                                       -antenna.get("azimuth_deg", 0.0)], degrees=True)
    return turn.as_matrix()


def cosine_gain(antenna, vectors, exponent, back_db):
    """cos^n of power over the angle from boresight, of the gain 2 (n + 1) (Balanis, Antenna Theory 3e, 2.6)."""
    cosine = (vectors @ axes(antenna)[:, 1]) / numpy.linalg.norm(vectors, axis=-1)
    gain = numpy.where(cosine > 0.0, numpy.maximum(cosine, 1e-300) ** exponent, 0.0)
    return 2.0 * (exponent + 1.0) * numpy.maximum(gain, 10.0 ** (-back_db / 10.0) if back_db > 0.0 else 0.0)


DIPOLE_GAIN = 4.0 / (numpy.euler_gamma + numpy.log(2.0 * numpy.pi) - special.sici(2.0 * numpy.pi)[1])


def dipole_gain(antenna, vectors):
    """Half-wave dipole along the antenna's up (Balanis 4-84)."""
    along = (vectors @ axes(antenna)[:, 2]) / numpy.linalg.norm(vectors, axis=-1)
    return DIPOLE_GAIN * numpy.cos(numpy.pi / 2.0 * along) ** 2 / (1.0 - along ** 2)


def place(antenna):
    antenna.update(x_m=random.uniform(-8.0, 8.0), y_m=random.uniform(-8.0, 8.0), z_m=random.uniform(2.5, 6.0),
                   azimuth_deg=random.uniform(-180.0, 180.0), tilt_deg=random.uniform(-60.0, 30.0))
    return antenna


def zones(level, near):
    return numpy.select([level < WINDOW["floor_dbm"], near > WINDOW["ceiling_dbm"], level < WINDOW["wanted_low_dbm"],
                         level > WINDOW["wanted_high_dbm"]],
                        [lvb.LVB_ZONE_DROPOUT, lvb.LVB_ZONE_OVERLOAD, lvb.LVB_ZONE_LOW, lvb.LVB_ZONE_HIGH],
                        lvb.LVB_ZONE_WANTED)


def judge(name, told, far_mw, near_mw, combined):
    """Everything that follows from the powers of each antenna at each point."""
    together = numpy.sum if combined else numpy.max
    level, near = decibels(together(far_mw, axis=0)), decibels(together(near_mw, axis=0))
    # deep in a null the cosine itself is a rounded difference, here as there
    tolerance = numpy.where(level > -150.0, 1e-10, 1e-7)
    check(name, told["level_dbm"], level, tolerance)
    check(name + ", margin", told["margin_db"], level - WINDOW["floor_dbm"], tolerance)
    check(name + ", headroom", told["headroom_db"], WINDOW["ceiling_dbm"] - near, tolerance)
    check(name + ", zone", told["zone"], zones(level, near), 0.0)
    check(name + ", serving", told["serving"], numpy.where(far_mw.max(axis=0) > 0.0, far_mw.argmax(axis=0), -1), 0.0)
    summary, counts = told["summary"], numpy.bincount(zones(level, near).ravel(), minlength=6)
    check(name + ", shares", [summary.not_judged, summary.dropout, summary.low, summary.wanted, summary.high,
                              summary.overload], counts, 0.0)
    check(name + ", extremes", [summary.worst_level_dbm, summary.hottest_level_dbm], [level.min(), near.max()], 1e-10)
    check(name + ", places", [level[summary.worst_row, summary.worst_column],
                              near[summary.hottest_row, summary.hottest_column]], [level.min(), near.max()], 1e-10)
    check(name + ", strongest there", [summary.worst_serving, summary.hottest_serving],
          [far_mw[:, summary.worst_row, summary.worst_column].argmax() if level.min() > -numpy.inf else -1,
           near_mw[:, summary.hottest_row, summary.hottest_column].argmax()], 0.0)
    check(name + ", overloaded", summary.overloaded, (near > WINDOW["ceiling_dbm"]).sum(), 0.0)


# ---- Published single links, each a point of a map.

def published_links():
    # Rappaport, Wireless Communications 2e, example 4.2: 50 W at 900 MHz, -24.5 dBm at 100 m, -64.5 dBm at 10 km
    site = Site(1.5)
    site.add(900.0, chain(10.0 * numpy.log10(50e3)), z_m=1.5)
    level = site.map(spaced(100.0, 9900.0, 2), [0.0])["level_dbm"][0]
    check("Rappaport 4.2", level, [-24.5, -64.5], 0.05)
    # example 4.3: the same with a receive gain of 2 at 10 km, -91.5 dBW
    site = Site(1.5)
    stages = chain(10.0 * numpy.log10(50e3))
    stages[3]["gain_db"] = 10.0 * numpy.log10(2.0)
    site.add(900.0, stages, z_m=1.5)
    check("Rappaport 4.3", site.map([0.0], [10000.0])["level_dbm"][0, 0] - 30.0, -91.5, 0.05)
    # example 4.7: a knife edge 25 m above the line of sight at 900 MHz, 1 km from either end (v = 2.74): 21.7 dB by the
    # book's older approximation, 22 dB from its figure
    edge = {"x1_m": -9e5, "y1_m": 1000.0, "x2_m": 9e5, "y2_m": 1000.0, "top_m": 125.0}
    site, clear = Site(100.0, screens=[edge]), Site(100.0)
    for both in site, clear:
        both.add(900.0, chain(30.0), z_m=100.0)
    loss = clear.map([0.0], [2000.0])["level_dbm"] - site.map([0.0], [2000.0])["level_dbm"]
    check("Rappaport 4.7", loss, 21.7, 0.5)
    # example 4.6: 1 mV/m at 1 km, over a conducting ground to a receiver of 2.55 dB 1.5 m high and 5 km away, -92.68
    # dBm (the book takes the sine for its argument, c = 3e8 and 120 pi ohm: 0.12 dB)
    site = Site(1.5)
    stages = chain(10.0 * numpy.log10(4.0 * numpy.pi * 1e-3 ** 2 * 1000.0 ** 2 / 376.730313668 * 1e3))
    stages[2]["path"] = site.sized("lvb_path", model=lvb.LVB_PATH_TWO_RAY, relative_permittivity=1.0,
                                   conductivity_s_per_m=1e8, polarization=1, transmit_height_m=1.0,
                                   receive_height_m=1.0)  # the site has its own heights
    stages[3]["gain_db"] = 2.55
    site.add(900.0, stages, z_m=50.0)
    check("Rappaport 4.6", site.map([5000.0], [0.0])["level_dbm"], -92.68, 0.12)
    # example 4.11: 31.5 dB at 1 m, exponent 3.27, a floor of 24.4 dB and two walls of 13 dB, 30 m: 130.2 dB
    site = Site(1.5)
    stages = chain(0.0)
    stages[2]["path"] = site.sized("lvb_path", model=lvb.LVB_PATH_LOG_DISTANCE, reference_loss_db=31.5, exponent=3.27,
                                   floor_count=1, floor_loss_db=24.4, wall_count=2, wall_loss_db=13.0)
    site.add(914.0, stages, z_m=1.5)
    check("Rappaport 4.11", site.map([18.0], [24.0])["level_dbm"], -130.2, 0.05)


# ---- Whole maps of patterns, best of and sum.

def whole_maps():
    for turn in range(60):
        frequency, pack, count = random.uniform(200.0, 3000.0), random.uniform(0.8, 2.0), random.integers(1, 6)
        x, y = spaced(-9.3, 0.37, 53), spaced(-8.9, 0.41, 47)
        combined, allowance = bool(turn % 2), random.choice([0.0, 12.5])
        site = Site(pack, combine=lvb.LVB_COMBINE_SUM if combined else lvb.LVB_COMBINE_BEST)
        far, near = [], []
        for _ in range(count):
            kind, antenna = random.integers(0, 3), place({})
            level = random.uniform(0.0, 20.0)
            vectors = way(x[None, :], y[:, None], pack, antenna)
            distance = numpy.linalg.norm(vectors, axis=-1)
            if kind == 0:
                gain, pattern = 10.0 ** 0.3, None
            elif kind == 1:
                exponent = random.choice([2.0, 4.0, 10.0, random.uniform(1.0, 30.0)])
                back = random.choice([0.0, 18.0])
                gain = cosine_gain(antenna, vectors, exponent, back)
                pattern = {"kind": lvb.LVB_PATTERN_COSINE, "front_to_back_db": back,
                           "gain_dbi": 10.0 * numpy.log10(2.0 * (exponent + 1.0))}
            else:
                antenna["roll_deg"] = random.uniform(-90.0, 90.0)
                gain, pattern = dipole_gain(antenna, vectors), {"kind": lvb.LVB_PATTERN_HALF_WAVE_DIPOLE}
            site.add(frequency, chain(level, 3.0, allowance), pattern, **antenna)
            here = 10.0 ** ((level - free_space_db(frequency, distance)) / 10.0) * gain
            near.append(here)
            far.append(here * 10.0 ** (-allowance / 10.0))
        judge("map", site.map(x, y), numpy.array(far), numpy.array(near), combined)


# ---- Screens: ITU-R P.526-15, 4.1 (one edge) and 5.1 (a finite one: top and sides, the average loss by the sum of their
# powers, -10 log10(1/j1^2 + 1/j2^2 + 1/j3^2) with j = 10^(J/20); known from a public implementation of
# models of diffraction, which quotes the section and also counts the lower edge).

def edge_loss_db(parameter):
    """P.526, equation 31."""
    u = parameter - 0.1
    return numpy.where(parameter > -0.78, 6.9 + 20.0 * numpy.log10(numpy.sqrt(u * u + 1.0) + u), 0.0)


def exact_edge_loss_db(parameter):
    """P.526, equation 30, with SciPy's Fresnel integrals."""
    sine, cosine = special.fresnel(parameter)
    return -20.0 * numpy.log10(numpy.sqrt((1.0 - cosine - sine) ** 2 + (cosine - sine) ** 2) / 2.0)


def line_distance(point, along, antenna, ways):
    """Of a straight line in space from the lines of sight."""
    across = numpy.cross(ways, along)
    return numpy.abs(((point - antenna) * across).sum(axis=-1)) / numpy.linalg.norm(across, axis=-1)


def screen_share(screen, antenna, targets, frequency_mhz):
    """What a screen leaves of the power, in vectors: the line of sight meets the screen's plane, and each edge counts by its
    distance from the line, inside positive."""
    ends = numpy.array([[screen["x1_m"], screen["y1_m"]], [screen["x2_m"], screen["y2_m"]]])
    wide = numpy.append(ends[1] - ends[0], 0.0)
    normal = numpy.cross(wide, [0.0, 0.0, 1.0])
    corner = numpy.append(ends[0], screen["bottom_m"])
    ways = targets - antenna
    before, behind = (corner - antenna) @ normal, (targets - corner) @ normal
    crosses = before * behind > 0.0
    with numpy.errstate(divide="ignore", invalid="ignore"):
        t = before / (ways @ normal)
    t = numpy.where(crosses, t, 0.5)
    met = antenna + t[..., None] * ways
    across = ((met - corner) @ wide) / (wide @ wide)
    height = met[..., 2]
    length = numpy.linalg.norm(ways, axis=-1)
    inside = (across >= 0.0) & (across <= 1.0) & (height >= screen["bottom_m"]) & (height <= screen["top_m"])
    if screen.get("loss_db", 0.0) > 0.0:
        return numpy.where(crosses & inside, 10.0 ** (-screen["loss_db"] / 10.0), 1.0), crosses & inside
    per_metre = numpy.sqrt(2.0 * frequency_mhz * constants.mega / constants.c * (1.0 / (t * length) +
                                                                               1.0 / ((1.0 - t) * length)))
    up = numpy.array([0.0, 0.0, 1.0])
    left = numpy.copysign(line_distance(corner, up, antenna, ways), across)
    right = numpy.copysign(line_distance(corner + wide, up, antenna, ways), 1.0 - across)
    edges = [left, right, screen["top_m"] - height] + ([height - screen["bottom_m"]] if screen["bottom_m"] > 0 else [])
    left_over = sum(10.0 ** (-edge_loss_db(edge * per_metre) / 10.0) for edge in edges)
    return numpy.where(crosses, numpy.minimum(left_over, 1.0), 1.0), crosses & inside


def screens():
    shaded = 0
    for turn in range(60):
        frequency, pack = random.uniform(300.0, 2500.0), random.uniform(0.9, 1.8)
        x, y = spaced(-6.05, 0.31, 40), spaced(1.03, 0.37, 31)
        stand = [{"x1_m": random.uniform(-4.0, 4.0), "y1_m": random.uniform(0.5, 9.0),
                  "x2_m": random.uniform(-4.0, 4.0), "y2_m": random.uniform(0.5, 9.0),
                  "bottom_m": random.choice([0.0, 0.6]), "top_m": random.uniform(1.2, 3.5),
                  "loss_db": random.choice([0.0, 0.0, 9.0])} for _ in range(1 + turn % 3)]
        site = Site(pack, screens=stand)
        antenna = {"x_m": random.uniform(-3.0, 3.0), "y_m": random.uniform(-4.0, -1.0), "z_m": random.uniform(1.5, 4.0)}
        site.add(frequency, chain(17.0), **antenna)
        vectors = way(x[None, :], y[:, None], pack, antenna)
        power = 10.0 ** ((17.0 - free_space_db(frequency, numpy.linalg.norm(vectors, axis=-1))) / 10.0)
        at = numpy.array([antenna["x_m"], antenna["y_m"], antenna["z_m"]])
        for screen in stand:
            share, hidden = screen_share(screen, at, vectors + at, frequency)
            shaded += hidden.sum()
            power = power * share
        judge("screens", site.map(x, y), power[None], power[None], False)
    assert shaded > 1000
    # One edge, the others a hundred kilometres away, from v = -0.7 to 5, against the exact integral: the approximation
    # that P.526 gives for v above -0.78 is within 0.13 dB of it (found here).
    edge = {"x1_m": -1e5, "y1_m": 10.0, "x2_m": 1e5, "y2_m": 10.0, "bottom_m": -10.0, "top_m": 2.0}
    site, clear = Site(2.0, screens=[edge]), Site(2.0)
    for both in site, clear:
        both.add(600.0, chain(17.0), z_m=2.0)
    unshaded = clear.map([0.0], [20.0])["level_dbm"]
    for parameter in numpy.linspace(-0.7, 5.0, 58):
        edge["top_m"] = 2.0 + parameter / numpy.sqrt(2.0 * 600e6 / constants.c * (1.0 / 10.0 + 1.0 / 10.0))
        check("one edge and the exact integral", unshaded - site.map([0.0], [20.0])["level_dbm"],
              exact_edge_loss_db(parameter), 0.13)


# ---- Wearers: interpolated losses by NumPy, angles by complex numbers.

def face(site, rule, point, azimuth, antennas, x, y):
    """Tells a site which way everybody faces: an azimuth, a point, or the second antenna. Gives the points and where those
    who stand there look, as complex numbers."""
    here = x[None, :] + 1j * y[:, None]
    if rule == lvb.LVB_FACING_AZIMUTH:
        site.more.update(facing_azimuth_deg=azimuth)
        return here, numpy.exp(1j * numpy.radians(90.0 - azimuth)) + 0.0 * here
    if rule == lvb.LVB_FACING_POINT:
        site.more.update(facing_x_m=point[0], facing_y_m=point[1])
    else:
        site.more.update(facing_antenna=1)
        point = numpy.array([antennas[1]["x_m"], antennas[1]["y_m"]])
    looks = complex(*point) - here
    return here, -looks if rule == lvb.LVB_FACING_AWAY else looks


def wearers():
    for turn in range(40):
        facing = numpy.sort(random.uniform(-180.0, 180.0, 7))
        loss = random.uniform(0.0, 25.0, 7)
        rule = turn % 4
        pack, frequency = 1.3, 650.0
        x, y = spaced(-5.0, 0.53, 21), spaced(-4.0, 0.47, 19)
        site = Site(pack)
        body = site.sized("lvb_body_table", row_count=7, facing_deg=site.numbers(facing), loss_db=site.numbers(loss))
        site.more.update(body_table=body, facing=rule)
        point, azimuth = random.uniform(-6.0, 6.0, 2), random.uniform(-360.0, 360.0)
        far, near, antennas = [], [], [place({}) for _ in range(3)]
        here, looks = face(site, rule, point, azimuth, antennas, x, y)
        for antenna in antennas:
            site.add(frequency, chain(15.0), **antenna)
            turned = numpy.degrees(numpy.angle((complex(antenna["x_m"], antenna["y_m"]) - here) / looks))
            power = 10.0 ** ((15.0 - free_space_db(frequency, numpy.linalg.norm(
                way(x[None, :], y[:, None], pack, antenna), axis=-1))) / 10.0)
            near.append(power)
            far.append(power * 10.0 ** (-numpy.interp(turned, facing, loss, period=360.0) / 10.0))
        told = site.map(x, y)
        judge("wearer", told, numpy.array(far), numpy.array(near), False)


# ---- The antennas of packs, which turn with their wearers. What is received is the product, without a conjugate, of the
# field that arrives and of the vector effective length of the antenna that receives it, which is the field that it would
# radiate (IEEE Std 145, known from quotations; Balanis, Antenna Theory, 2.12 and 2.15), here as complex vectors.

def elements(antenna):
    """Two crossed elements, the second a quarter period later, as one complex vector."""
    right, _, up = axes(antenna).T
    polarization, ellipticity = numpy.radians(antenna.get("polarization_deg", 0.0)), antenna.get("ellipticity", 0.0)
    first = numpy.cos(polarization) * up + numpy.sin(polarization) * right
    second = numpy.cos(polarization) * right - numpy.sin(polarization) * up
    return first - 1j * ellipticity * second


def carried(vector, looks):
    """A vector on one who looked along y and now looks in a direction, both as complex numbers."""
    plan = (vector[0] + 1j * vector[1]) if numpy.isrealobj(vector) else None
    if plan is None:
        return carried(vector.real, looks) + 1j * carried(vector.imag, looks)
    turned = plan * looks / numpy.abs(looks) / 1j
    return numpy.stack(numpy.broadcast_arrays(turned.real, turned.imag, vector[2]), axis=-1)


def radiated(element, lines):
    """The field across lines of sight, of length 1."""
    lines = lines / numpy.linalg.norm(lines, axis=-1, keepdims=True)
    field = element - (element * lines).sum(axis=-1)[..., None] * lines
    return field / numpy.linalg.norm(field, axis=-1, keepdims=True)


def turned_at_random(antenna):
    antenna.update(roll_deg=random.uniform(-180.0, 180.0), polarization_deg=random.uniform(-180.0, 180.0),
                   ellipticity=random.choice([0.0, random.uniform(-1.0, 1.0)]))
    return antenna


def worn_antennas():
    for turn in range(60):
        rule, pack, frequency, most = turn % 4, 1.3, 650.0, random.choice([0.0, 15.0])
        x, y = spaced(-5.0, 0.53, 21), spaced(-4.0, 0.47, 19)
        worn = turned_at_random({"azimuth_deg": random.uniform(-180.0, 180.0), "tilt_deg": random.uniform(-60.0, 60.0)})
        site = Site(pack, facing=rule, most_polarization_loss_db=most)
        pattern, most_gain = None, 1.0
        if turn % 3 == 1:
            worn.update(polarization_deg=0.0, ellipticity=0.0)
            pattern, most_gain = {"kind": lvb.LVB_PATTERN_HALF_WAVE_DIPOLE}, DIPOLE_GAIN
        elif turn % 3 == 2:
            pattern, most_gain = {"kind": lvb.LVB_PATTERN_COSINE, "gain_dbi": decibels(6.0)}, 6.0  # cos^2
        lent = {"pattern": site.sized("lvb_pattern", **pattern)} if pattern else {}
        site.more.update(pack_antenna=site.sized("lvb_antenna", **worn, **lent))
        antennas = [turned_at_random(place({})) for _ in range(3)]
        point, azimuth = random.uniform(-6.0, 6.0, 2), random.uniform(-360.0, 360.0)
        _, looks = face(site, rule, point, azimuth, antennas, x, y)
        boresight, up = (carried(axis, looks) for axis in axes(worn).T[1:])
        far, near = [], []
        for antenna in antennas:
            site.add(frequency, chain(15.0), **antenna)
            lines = way(x[None, :], y[:, None], pack, antenna)
            distance = numpy.linalg.norm(lines, axis=-1)
            received = numpy.abs((radiated(elements(antenna), lines) * radiated(carried(elements(worn), looks), lines))
                                 .sum(axis=-1)) ** 2
            received = numpy.maximum(received, 10.0 ** (-most / 10.0) if most > 0.0 else 0.0)
            gain = numpy.ones(distance.shape)
            if turn % 3 == 1:
                along = (lines * up).sum(axis=-1) / distance
                gain = DIPOLE_GAIN * numpy.cos(numpy.pi / 2.0 * along) ** 2 / (1.0 - along ** 2)
            elif turn % 3 == 2:
                gain = 6.0 * numpy.maximum(-(lines * boresight).sum(axis=-1) / distance, 0.0) ** 2
            power = 10.0 ** ((15.0 - free_space_db(frequency, distance)) / 10.0)
            near.append(power * most_gain)
            far.append(power * gain * received)
        judge("worn antenna", site.map(x, y), numpy.array(far), numpy.array(near), False)


# ---- Areas: polygons put together of triangles.

def areas():
    for _ in range(30):
        site = Site(1.0, areas=[])
        site.add(600.0, chain(15.0), x_m=50.0, z_m=3.0)
        x, y = spaced(-5.0137, 0.0791, 127), spaced(-5.0093, 0.0831, 121)
        here = x[None, :] + 1j * y[:, None]
        inside = numpy.zeros(here.shape, bool)
        for _ in range(random.integers(1, 4)):
            # a star: its corners at rising angles around a point that sees them all
            middle, count = complex(*random.uniform(-2.0, 2.0, 2)), random.integers(4, 9)
            angles = numpy.arange(count) * 2.0 * numpy.pi / count + random.uniform(0.0, 0.5, count)
            corners = middle + random.uniform(0.5, 3.0, count) * numpy.exp(1j * angles)
            site.more["areas"].append({"corner_count": int(count), "x_m": site.numbers(corners.real),
                                       "y_m": site.numbers(corners.imag)})
            for a, b in zip(corners, numpy.roll(corners, -1)):
                sides = [((q - p).conjugate() * (here - p)).imag > 0.0 for p, q in ((middle, a), (a, b), (b, middle))]
                inside |= sides[0] & sides[1] & sides[2]
        told = site.map(x, y)
        # a point on the line between two triangles is in neither of the open ones: none of this grid lies there
        check("areas", numpy.isfinite(told["level_dbm"]), inside, 0.0)
        check("areas, points", [told["summary"].points, told["summary"].outside], [inside.sum(), (~inside).sum()], 0.0)


# ---- Outage at every point.

def suzuki(margin_db, standard_deviation_db):
    """Rayleigh around a lognormal mean, by SciPy's quadrature."""
    def of(t):
        return stats.norm.pdf(t) * -numpy.expm1(-10.0 ** ((-margin_db - standard_deviation_db * t) / 10.0))
    return integrate.quad(of, -9.0, 9.0, epsabs=1e-13, epsrel=1e-12, limit=400)[0]


def outages():
    x, y = spaced(-20.0, 3.1, 13), spaced(1.0, 9.7, 9)
    for law, parameter, outage in (
            (lvb.LVB_FADING_RAYLEIGH, 0.0, lambda margin, _: stats.expon.cdf(10.0 ** (-margin / 10.0))),
            (lvb.LVB_FADING_RICE, 6.0, lambda margin, k: stats.ncx2.cdf(
                2.0 * (10.0 ** (k / 10.0) + 1.0) * 10.0 ** (-margin / 10.0), 2.0, 2.0 * 10.0 ** (k / 10.0))),
            (lvb.LVB_FADING_NAKAGAMI, 2.5, lambda margin, m: stats.gamma.cdf(m * 10.0 ** (-margin / 10.0), m)),
            (lvb.LVB_FADING_LOGNORMAL, 5.0, lambda margin, s: stats.norm.cdf(-margin / s)),
            (lvb.LVB_FADING_SUZUKI, 4.0, numpy.vectorize(suzuki))):
        site = Site(1.2)
        site.add(700.0, chain(-12.0), z_m=4.0)
        told = site.map(x, y, fading=law, fading_parameter=parameter)
        vectors = way(x[None, :], y[:, None], 1.2, {"x_m": 0.0, "y_m": 0.0, "z_m": 4.0})
        margin = -12.0 - free_space_db(700.0, numpy.linalg.norm(vectors, axis=-1)) - WINDOW["floor_dbm"]
        assert margin.min() < -8.0 and margin.max() > 15.0, (margin.min(), margin.max())
        check(f"outage, law {law}", told["outage"], outage(margin, parameter), 1e-9)


# ---- Walks: places by arc length, levels as a map's, times by integrating the straight pieces.

def below(distance, room, speed):
    """For how long a room that runs straight from point to point is under 0, on a fine grid within each step."""
    fine = numpy.linspace(distance[0], distance[-1], 2000001)
    return numpy.mean(numpy.interp(fine, distance, room) < 0.0) * (distance[-1] - distance[0]) / speed


def walks():
    for _ in range(12):
        corners = random.uniform(-12.0, 12.0, (6, 2))
        height, speed, step = random.uniform(0.5, 2.0, 6), random.uniform(0.5, 2.0), random.uniform(0.05, 0.4)
        site, antennas = Site(1.0), [place({}) for _ in range(2)]
        for antenna in antennas:
            site.add(640.0, chain(0.0, allowance_db=14.0), **antenna)
        call = site.sized("lvb_walk", instructions=lvb.lvb_best_instructions(), site=site.made(), corner_count=6,
                          x_m=site.numbers(corners[:, 0]), y_m=site.numbers(corners[:, 1]), z_m=site.numbers(height),
                          speed_m_per_s=speed, step_m=step)
        count = ffi.new("uint64_t *")
        site.expect(lvb.lvb_walk_point_count(call, count, site.fault()))
        call.fading, call.fading_parameter = lvb.LVB_FADING_LOGNORMAL, 6.0
        arrays = {name: numpy.zeros(count[0])
                  for name in ("distance_m", "level_dbm", "margin_db", "headroom_db", "outage")}
        for name, array in arrays.items():
            setattr(call, name, ffi.from_buffer("double[]", array))
        result = site.sized("lvb_walk_result")
        site.expect(lvb.lvb_compute_walk(call, result, site.fault()))
        path = numpy.column_stack([corners, height])
        passed = numpy.append(0.0, numpy.cumsum(numpy.linalg.norm(numpy.diff(path, axis=0), axis=1)))
        along = numpy.append(numpy.arange(0.0, passed[-1], step), passed[-1])
        check("walk, distance", arrays["distance_m"], along, 1e-11)
        at = [numpy.interp(along, passed, path[:, axis]) for axis in range(3)]
        powers = numpy.array([10.0 ** (-free_space_db(640.0, numpy.linalg.norm(way(*at, antenna), axis=-1)) / 10.0)
                              for antenna in antennas])
        near = decibels(powers.max(axis=0))
        level = near - 14.0
        check("walk", arrays["level_dbm"], level, 1e-9)
        check("walk, times", [result.under_floor_s, result.over_ceiling_s],
              [below(along, level - WINDOW["floor_dbm"], speed), below(along, WINDOW["ceiling_dbm"] - near, speed)],
              3e-4)
        outage = stats.norm.cdf((WINDOW["floor_dbm"] - level) / 6.0)
        check("walk, outage", arrays["outage"], outage, 1e-10)
        check("walk, expected", [result.expected_under_floor_s, result.mean_outage],
              integrate.trapezoid(outage, along) / numpy.array([speed, passed[-1]]), 1e-9)
        check("walk, strongest", [result.worst_serving, result.hottest_serving],
              [powers[:, level.argmin()].argmax(), powers[:, near.argmax()].argmax()], 0.0)
        check("walk, extremes", [result.worst_level_dbm, result.hottest_level_dbm, result.duration_s],
              [level.min(), near.max(), passed[-1] / speed], 1e-9)


for part in published_links, whole_maps, screens, wearers, worn_antennas, areas, outages, walks:
    part()
print(f"{checks} values; largest differences: " + ", ".join(f"{name} {value:.1e}" for name, value in largest.items()))
sys.exit(1 if failures else 0)
