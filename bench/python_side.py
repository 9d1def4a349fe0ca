"""The same work from Python: through NumPy, and levelbook through cffi, per call and per array.

  python_side.py PREPROCESSED_HEADER LIBRARY

Prints "task contender nanoseconds" for each measurement, the best of a few; the program levelbook-table asks for it
many times. Ends with an error when NumPy and levelbook do not agree.
"""
import math
import sys
import timeit

import numpy as np
from cffi import FFI

ffi = FFI()
with open(sys.argv[1]) as header:
    ffi.cdef(header.read())
lvb = ffi.dlopen(sys.argv[2])
best = lvb.lvb_best_instructions()


def pointer(array):
    return ffi.from_buffer("double[]", array)


def aligned(shape):
    count = int(np.prod(shape))
    room = np.zeros(count + 8)
    start = -room.ctypes.data // 8 % 8
    return room[start:start + count].reshape(shape)


def measure(task, contender, values, statement, **names):
    timer = timeit.Timer(statement, globals=dict(globals(), **names))
    number = 1
    while (once := timer.timeit(number)) < 0.002:
        number *= 4
    print(task, contender, min([once] + timer.repeat(4, number)) / number / values * 1e9)


def same(a, b):
    if not np.allclose(a, b, rtol=1e-9, atol=1e-9):
        sys.exit("NumPy and levelbook do not agree")


def columns(formula, x, y):
    return ffi.new("lvb_columns *", {"size": ffi.sizeof("lvb_columns"), "formula": formula, "instructions": best,
                                     "count": len(x), "argument_1": pointer(x), "result": pointer(y)})


def spread(low, high, count):
    x = aligned(count)
    x[:] = low + (high - low) * ((np.arange(count) * 0.6180339887498949) % 1.0)
    return x


# Columns.
for place, count in ("in_cache", 4096), ("out_of_cache", 1 << 22):
    y, z = aligned(count), aligned(count)
    x = spread(1.0, 300.0, count)
    call = columns(lvb.LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO, x, y)
    logarithm = "np.log10(x, out=z); np.multiply(z, 20.0, out=z)"
    measure("log_" + place, "numpy", count, logarithm, x=x, z=z)
    assert lvb.lvb_compute_columns(call, ffi.NULL, ffi.NULL) == lvb.LVB_OK
    same(y, z)
    if place == "in_cache":
        measure("python_array", "levelbook", count, "lvb.lvb_compute_columns(call, ffi.NULL, ffi.NULL)", call=call)
        measure("python_array", "plain", count, "[20.0 * math.log10(v) for v in x]", x=x.tolist())
        measure("python_array", "numpy", count, logarithm, x=x, z=z)
        measure("free_space", "numpy", count, logarithm + "; np.add(z, 28.1, out=z)", x=x, z=z)
    # NumPy's two ways: the power itself, and the exponential, which is less exact but may be faster.
    x = spread(-120.0, 20.0, count)
    measure("exp_" + place, "numpy", count, "np.multiply(x, 0.1, out=z); np.power(10.0, z, out=z)", x=x, z=z)
    measure("exp_" + place, "numpy", count, "np.multiply(x, 0.23025850929940458, out=z); np.exp(z, out=z)", x=x, z=z)
    call = columns(lvb.LVB_FORMULA_MW_FROM_DBM, x, y)
    assert lvb.lvb_compute_columns(call, ffi.NULL, ffi.NULL) == lvb.LVB_OK
    same(y / z, 1.0)

# Single calls.
measure("python_call", "levelbook", 1, "f(x)", f=lvb.lvb_dbm_from_mw, x=30.0)
measure("python_call", "plain", 1, "10.0 * log10(x)", log10=math.log10, x=30.0)
measure("python_call", "numpy", 1, "10.0 * log10(x)", log10=np.log10, x=30.0)

# The chain of chains.hpp with 12 stages.
def allowance(gain_db):
    return {"kind": lvb.LVB_KIND_ALLOWANCE, "basis": lvb.LVB_BASIS_ESTIMATE, "gain_db": gain_db, "tolerance_db": 3.0}


def cable(length_m):
    return {"kind": lvb.LVB_KIND_CABLE, "cable_type": lvb.LVB_CABLE_RG_213_U, "connector_count": 2,
            "length_m": length_m, "tolerance_db": 0.5}


stages = ffi.new("lvb_stage[]", [
    {"kind": lvb.LVB_KIND_SOURCE, "basis": lvb.LVB_BASIS_DATA_SHEET, "level_dbm": 14.77, "tolerance_db": 0.5},
    {"kind": lvb.LVB_KIND_PASSIVE, "basis": lvb.LVB_BASIS_MEASURED, "gain_db": -3.5, "tolerance_db": 0.2},
    cable(1.5),
    {"kind": lvb.LVB_KIND_AMPLIFIER, "basis": lvb.LVB_BASIS_DATA_SHEET, "gain_db": 4.0, "tolerance_db": 0.5},
    {"kind": lvb.LVB_KIND_ANTENNA, "basis": lvb.LVB_BASIS_DATA_SHEET, "gain_db": 6.0, "tolerance_db": 1.0},
    {"kind": lvb.LVB_KIND_AIR, "tolerance_db": 1.0},
    allowance(-3.0), allowance(-10.0), allowance(-15.0),
    {"kind": lvb.LVB_KIND_ANTENNA, "basis": lvb.LVB_BASIS_ESTIMATE, "gain_db": -2.0, "tolerance_db": 1.0},
    cable(3.0),
    {"kind": lvb.LVB_KIND_RECEIVER, "basis": lvb.LVB_BASIS_DATA_SHEET,
     "stated": lvb.LVB_STATED_FLOOR | lvb.LVB_STATED_WANTED | lvb.LVB_STATED_CEILING, "floor_dbm": -95.0,
     "wanted_low_dbm": -80.0, "wanted_high_dbm": -40.0, "ceiling_dbm": -20.0},
])
link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stages": stages, "stage_count": len(stages),
                              "stage_size": ffi.sizeof("lvb_stage"), "frequency_mhz": 610.0, "far_distance_m": 40.0,
                              "near_distance_m": 3.0})
budget = ffi.new("lvb_budget *", {"size": ffi.sizeof("lvb_budget")})
assert lvb.lvb_compute_budget(link, budget, ffi.NULL, 0, ffi.NULL) == lvb.LVB_OK
measure("python_budget", "levelbook", 1, "lvb.lvb_compute_budget(link, budget, ffi.NULL, 0, ffi.NULL)")

# The grid. The law of the cable is set up before, as straight lines in sqrt(f) between the rows of its table.
row = ffi.new("lvb_cable_row *", {"size": ffi.sizeof("lvb_cable_row")})
rows = []
while lvb.lvb_describe_cable_row(lvb.LVB_CABLE_RG_213_U, len(rows), row, ffi.NULL) == lvb.LVB_OK:
    rows.append((row.frequency_mhz, row.attenuation_db_per_100m))
table_mhz, table_db = np.array(rows).T
roots = np.sqrt(table_mhz)
dielectric = np.diff(table_db / roots) / np.diff(roots)
conductor = table_db[:-1] / roots[:-1] - dielectric * roots[:-1]
frequency_mhz, distance_m = aligned(1000), aligned(1000)
frequency_mhz[:] = 470.0 + 0.224 * np.arange(1000)
distance_m[:] = 1.0 + 0.3 * np.arange(1000)
levels, ours, scratch = aligned((1000, 1000)), aligned((1000, 1000)), aligned(2000)
used = np.unique(np.searchsorted(table_mhz, frequency_mhz, side="right") - 1)
assert (dielectric[used] >= 0.0).all() and (conductor[used] >= 0.0).all()
LENGTHS_M, CONNECTORS, FLAT_DB = 1.5 + 3.0, 4, 14.77 - 3.5 + 4.0 + 6.0 - 3.0 - 10.0 - 15.0 - 2.0


def numpy_grid():
    root = np.sqrt(frequency_mhz)
    i = np.searchsorted(table_mhz[1:-1], frequency_mhz, side="right")
    cables = (conductor[i] + dielectric[i] * root) * root * (LENGTHS_M / 100.0)
    connectors = root * (CONNECTORS * 0.05 / math.sqrt(1000.0))
    by_frequency = (FLAT_DB - 20.0 * math.log10(4.0 * math.pi / 299.792458)) - cables - connectors
    by_frequency -= 20.0 * np.log10(frequency_mhz)
    by_distance = -20.0 * np.log10(distance_m)
    np.add(by_frequency[:, None], by_distance, out=levels)


grid = ffi.new("lvb_grid *", {"size": ffi.sizeof("lvb_grid"), "instructions": best, "link": link,
                              "frequency_count": 1000, "distance_count": 1000, "scratch": pointer(scratch),
                              "frequency_mhz": pointer(frequency_mhz), "distance_m": pointer(distance_m),
                              "level_dbm": pointer(ours)})
assert lvb.lvb_compute_grid(grid, ffi.NULL, ffi.NULL) == lvb.LVB_OK
numpy_grid()
same(levels, ours)
for task in "grid", "python_grid":
    measure(task, "numpy", 1000000, "numpy_grid()")
measure("python_grid", "levelbook", 1000000, "lvb.lvb_compute_grid(grid, ffi.NULL, ffi.NULL)")


# Draws: 65536 levels in dBm of a chain with one stage's tolerance, or with fading alone, into an array that is there
# already. On both sides a level is that of the chain without deviations plus one deviation of the same law in dB: that of
# a tolerance, or 10 log10 of the power that fading leaves, of mean 1 (20 log10 of the amplitude). levelbook: one call.
# NumPy: its own draws of the law, whole arrays at once and in place where it can; where there are two usual ways, both,
# and the quicker counts. Once by NumPy's usual generator, and once by its generator that counts, as levelbook's does.
DRAWS = 65536


def trials_of(law, fading, tallied=False, **more):
    far, near = aligned(DRAWS), aligned(DRAWS)
    air = fading != lvb.LVB_FADING_NONE
    kinds = ([lvb.LVB_KIND_SOURCE] + [lvb.LVB_KIND_ANTENNA, lvb.LVB_KIND_AIR, lvb.LVB_KIND_ANTENNA] * air)
    lent = ffi.new("lvb_stage[]", [{"kind": kind} for kind in kinds])
    lent[0].level_dbm = 14.77
    if not air:
        lent[0].tolerance_db = 1.0
    laws = ffi.new("lvb_spread[]", [{"law": law, "coverage_factor": 1.0 if law == lvb.LVB_LAW_NORMAL else 0.0}
                                    for _ in kinds])
    short = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stages": lent, "stage_count": len(kinds),
                                   "stage_size": ffi.sizeof("lvb_stage"), "frequency_mhz": 600.0,
                                   "far_distance_m": 40.0 if air else 0.0})
    request = ffi.new("lvb_trials *", {
        "size": ffi.sizeof("lvb_trials"), "instructions": best, "link": short, "spreads": laws,
        "spread_count": len(kinds), "spread_size": ffi.sizeof("lvb_spread"), "fading": fading, "seed": 1,
        "trial_count": DRAWS, "far_dbm": pointer(far), **more})
    tally = ffi.new("lvb_tally *", {"size": ffi.sizeof("lvb_tally")})
    assert lvb.lvb_compute_trials(request, tally, ffi.NULL) == lvb.LVB_OK
    kept.append((far, near, lent, laws, short, tally))
    return request, tally if tallied else ffi.NULL, far, tally.far_level_dbm


def same_law(a, b):
    """Kolmogorov and Smirnov: samples of one law, of this size, lie further apart once in a million times."""
    both = np.concatenate([a, b])
    apart = np.searchsorted(np.sort(a), both, side="right") - np.searchsorted(np.sort(b), both, side="right")
    if np.abs(apart).max() > 2.7 * math.sqrt(2.0 / DRAWS) * DRAWS:
        sys.exit("NumPy and levelbook do not draw by the same law")


RICE = 10.0 ** 0.6  # 6 dB
kept = []
usual, counting = np.random.default_rng(1), np.random.Generator(np.random.Philox(1))
NONE = lvb.LVB_FADING_NONE
z, other = aligned(DRAWS), aligned(DRAWS)
in_db = "; np.log10(z, out=z); np.multiply(z, 10.0, out=z); np.add(z, level, out=z)"
for task, law, fading, more, ways in (
        ("rectangular", lvb.LVB_LAW_RECTANGULAR, NONE, {},
         ("z[:] = g.uniform(level - 1.0, level + 1.0, n)",
          "g.random(out=z); np.multiply(z, 2.0, out=z); np.add(z, level - 1.0, out=z)")),
        ("triangular", lvb.LVB_LAW_TRIANGULAR, NONE, {},
         ("z[:] = g.triangular(level - 1.0, level, level + 1.0, n)",
          "g.random(out=z); g.random(out=other); np.add(z, other, out=z); np.add(z, level - 1.0, out=z)")),
        ("normal", lvb.LVB_LAW_NORMAL, NONE, {},
         ("z[:] = g.normal(level, 1.0, n)", "g.standard_normal(out=z); np.add(z, level, out=z)")),
        ("arc_sine", lvb.LVB_LAW_ARC_SINE, NONE, {},
         ("g.random(out=z); np.multiply(z, 2.0 * math.pi, out=z); np.sin(z, out=z); np.add(z, level, out=z)",)),
        ("rayleigh", 0, lvb.LVB_FADING_RAYLEIGH, {}, ("g.standard_exponential(out=z)" + in_db,)),
        ("rice", 0, lvb.LVB_FADING_RICE, {"rice_factor_db": 6.0},
         ("g.standard_normal(out=z); np.multiply(z, deviation, out=z); np.add(z, steady, out=z); np.square(z, out=z); "
          "g.standard_normal(out=other); np.multiply(other, deviation, out=other); np.square(other, out=other); "
          "np.add(z, other, out=z)" + in_db,)),
        ("nakagami", 0, lvb.LVB_FADING_NAKAGAMI, {"nakagami_shape": 2.3},
         ("g.standard_gamma(2.3, out=z); np.multiply(z, 1.0 / 2.3, out=z)" + in_db,))):
    request, _, far, level = trials_of(law, fading, **more)
    measure("draw_" + task, "levelbook", DRAWS, "lvb.lvb_compute_trials(request, ffi.NULL, ffi.NULL)", request=request)
    names = {"n": DRAWS, "z": z, "other": other, "level": level, "steady": math.sqrt(RICE / (1.0 + RICE)),
             "deviation": math.sqrt(0.5 / (1.0 + RICE))}
    for way in ways:
        measure("draw_" + task, "numpy", DRAWS, way, g=usual, **names)
        same_law(far, z)
        measure("draw_" + task + "_counting", "numpy", DRAWS, way, g=counting, **names)
        same_law(far, z)
request, tally, _, _ = trials_of(lvb.LVB_LAW_NORMAL, NONE, True)
measure("draw_tallied", "levelbook", DRAWS, "lvb.lvb_compute_trials(request, tally, ffi.NULL)", request=request,
        tally=tally)


# Maps: the sites of sites.hpp. Values are points times antennas. NumPy computes them in two ways: as one writes it, with
# an array for everything, and in place, with arrays that are used again and nothing computed twice. Each is measured
# for the level alone, and for all that lvb_compute_map tells without a law of fading.
PACK_M, STEP_M, ANTENNA_Y_M, ANTENNA_Z_M = 1.25, 0.02, -2.0, 3.0
SIDE = 1000
FLOOR_DBM, LOW_DBM, HIGH_DBM, CEILING_DBM = -27.0, -25.0, -20.0, -18.0  # every zone comes up
x_m, y_m = np.meshgrid(STEP_M * np.arange(SIDE), STEP_M * np.arange(SIDE))


class Placed:
    """Place, aim and exponent of an antenna; cos^exponent in power, or isotropic."""
    def __init__(self, i, exponent):
        self.x, self.y, self.z = 2.0 + 2.0 * i, ANTENNA_Y_M, ANTENNA_Z_M
        self.azimuth_deg, self.exponent = -10.0 + 5.0 * i, exponent
        self.aim = math.sin(math.radians(self.azimuth_deg)), math.cos(math.radians(self.azimuth_deg)), 0.0


class Summary:
    """Points, by zone and overloaded; the worst and the hottest."""
    def __init__(self, level, margin, headroom, zone, serving):
        self.points, self.in_zone = level.size, np.bincount(zone.ravel(), minlength=6)
        self.overloaded = np.count_nonzero(headroom < 0.0)
        self.worst, self.hottest = np.argmin(level), np.argmax(level)
        self.worst_level_dbm, self.hottest_level_dbm = level.flat[self.worst], level.flat[self.hottest]
        self.worst_margin_db, self.hottest_headroom_db = margin.flat[self.worst], headroom.flat[self.hottest]
        self.worst_serving, self.hottest_serving = serving.flat[self.worst], serving.flat[self.hottest]


def power_mw(antenna, level_at_1m_dbm):
    dx, dy, dz = x_m - antenna.x, y_m - antenna.y, PACK_M - antenna.z
    distance = np.sqrt(dx ** 2 + dy ** 2 + dz ** 2)
    power = 10.0 ** (level_at_1m_dbm / 10.0) / distance ** 2
    if antenna.exponent == 0.0:
        return power
    cosine = (dx * antenna.aim[0] + dy * antenna.aim[1] + dz * antenna.aim[2]) / distance
    return power * np.maximum(cosine, 0.0) ** antenna.exponent


def numpy_level(antennas, level_at_1m_dbm):
    powers = np.array([power_mw(antenna, level_at_1m_dbm) for antenna in antennas])
    return 10.0 * np.log10(powers.max(axis=0)), powers


def numpy_map(antennas, level_at_1m_dbm):
    level, powers = numpy_level(antennas, level_at_1m_dbm)
    serving = powers.argmax(axis=0)
    margin, headroom = level - FLOOR_DBM, CEILING_DBM - level
    zone = np.select([margin < 0.0, headroom < 0.0, level < LOW_DBM, level > HIGH_DBM],
                     [lvb.LVB_ZONE_DROPOUT, lvb.LVB_ZONE_OVERLOAD, lvb.LVB_ZONE_LOW, lvb.LVB_ZONE_HIGH],
                     lvb.LVB_ZONE_WANTED)
    return level, margin, headroom, zone, serving, Summary(level, margin, headroom, zone, serving)


square, ahead, power, strongest = (aligned((SIDE, SIDE)) for _ in range(4))
better = np.zeros((SIDE, SIDE), bool)
row_x_m, column_y_m = x_m[:1], y_m[:, :1]


class InPlace:
    """The same with arrays of its own, which it does not make anew."""
    def __init__(self):
        self.level, self.margin, self.headroom = (aligned((SIDE, SIDE)) for _ in range(3))
        self.zone, self.serving = np.zeros((SIDE, SIDE), np.int32), np.zeros((SIDE, SIDE), np.int32)

    def take_level(self, antennas, level_at_1m_dbm, serving=None):
        for i, antenna in enumerate(antennas):
            dx, dy, dz = row_x_m - antenna.x, column_y_m - antenna.y, PACK_M - antenna.z
            np.add(dx * dx, dy * dy + dz * dz, out=square)
            np.divide(10.0 ** (level_at_1m_dbm / 10.0), square, out=power)
            if antenna.exponent > 0.0:
                np.add(dx * antenna.aim[0], dy * antenna.aim[1] + dz * antenna.aim[2], out=ahead)
                np.maximum(ahead, 0.0, out=ahead)
                np.multiply(ahead, ahead, out=ahead)
                np.divide(ahead, square, out=ahead)
                if antenna.exponent == 4.0:
                    np.multiply(ahead, ahead, out=ahead)
                else:
                    np.power(ahead, antenna.exponent / 2.0, out=ahead)
                np.multiply(power, ahead, out=power)
            if i == 0:
                strongest[:] = power
                continue
            if serving is not None:
                np.greater(power, strongest, out=better)
                np.copyto(serving, i, where=better)
            np.maximum(strongest, power, out=strongest)
        np.log10(strongest, out=self.level)
        np.multiply(self.level, 10.0, out=self.level)

    def take_zones(self):
        self.zone.fill(lvb.LVB_ZONE_WANTED)
        for comparison, values, limit, zone in ((np.greater, self.level, HIGH_DBM, lvb.LVB_ZONE_HIGH),
                                                (np.less, self.level, LOW_DBM, lvb.LVB_ZONE_LOW),
                                                (np.less, self.headroom, 0.0, lvb.LVB_ZONE_OVERLOAD),
                                                (np.less, self.margin, 0.0, lvb.LVB_ZONE_DROPOUT)):
            comparison(values, limit, out=better)
            np.copyto(self.zone, zone, where=better)

    def take(self, antennas, level_at_1m_dbm):
        self.serving.fill(0)
        self.take_level(antennas, level_at_1m_dbm, self.serving)
        np.subtract(self.level, FLOOR_DBM, out=self.margin)
        np.subtract(CEILING_DBM, self.level, out=self.headroom)
        self.take_zones()
        return (self.level, self.margin, self.headroom, self.zone, self.serving,
                Summary(self.level, self.margin, self.headroom, self.zone, self.serving))


class Ours:
    """A site, and a map of it with everything or with the level alone."""
    def __init__(self, antennas, gain_dbi):
        self.stages = ffi.new("lvb_stage[]", [
            {"kind": lvb.LVB_KIND_SOURCE, "level_dbm": 14.77}, {"kind": lvb.LVB_KIND_ANTENNA, "gain_db": 6.0},
            {"kind": lvb.LVB_KIND_AIR}, {"kind": lvb.LVB_KIND_ANTENNA},
            {"kind": lvb.LVB_KIND_RECEIVER, "floor_dbm": FLOOR_DBM, "wanted_low_dbm": LOW_DBM,
             "stated": lvb.LVB_STATED_FLOOR | lvb.LVB_STATED_WANTED | lvb.LVB_STATED_CEILING,
             "wanted_high_dbm": HIGH_DBM, "ceiling_dbm": CEILING_DBM}])
        self.link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stages": self.stages, "stage_count": 5,
                                           "stage_size": ffi.sizeof("lvb_stage"), "frequency_mhz": 610.0})
        self.pattern = ffi.new("lvb_pattern *", {"size": ffi.sizeof("lvb_pattern"), "kind": lvb.LVB_PATTERN_COSINE,
                                                 "gain_dbi": gain_dbi})
        self.placed = [ffi.new("lvb_antenna *", {
            "size": ffi.sizeof("lvb_antenna"), "x_m": one.x, "y_m": one.y, "z_m": one.z,
            "azimuth_deg": one.azimuth_deg, "pattern": self.pattern if one.exponent > 0.0 else ffi.NULL})
            for one in antennas]
        self.antennas = ffi.new("lvb_site_antenna[]", [{"antenna": one, "link": self.link} for one in self.placed])
        self.site = ffi.new("lvb_site *", {
            "size": ffi.sizeof("lvb_site"), "antennas": self.antennas, "antenna_count": len(antennas),
            "antenna_size": ffi.sizeof("lvb_site_antenna"), "pack_height_m": PACK_M})
        self.level, self.margin, self.headroom = (aligned((SIDE, SIDE)) for _ in range(3))
        self.zone, self.serving = np.zeros((SIDE, SIDE), np.int32), np.zeros((SIDE, SIDE), np.int32)
        self.summary = ffi.new("lvb_map_summary *", {"size": ffi.sizeof("lvb_map_summary")})

    def call(self, **more):
        return ffi.new("lvb_map *", {
            "size": ffi.sizeof("lvb_map"), "instructions": best, "site": self.site, "column_count": SIDE,
            "row_count": SIDE, "step_x_m": STEP_M, "step_y_m": STEP_M, "level_dbm": pointer(self.level), **more})

    def call_with_everything(self):
        return self.call(margin_db=pointer(self.margin), headroom_db=pointer(self.headroom),
                         zone=ffi.from_buffer("int32_t[]", self.zone),
                         serving=ffi.from_buffer("int32_t[]", self.serving))

    def expect(self, level, margin, headroom, zone, serving, summary, powers):
        """Whether NumPy found the same, to 1e-9 dB; of antennas that are equal to that, either may serve."""
        told, near = self.summary, 1e-9
        for theirs, ours in (level, self.level), (margin, self.margin), (headroom, self.headroom):
            check(np.abs(theirs - ours).max() <= near)
        check(np.array_equal(zone, self.zone))
        chosen, our_choice = (np.take_along_axis(powers, which[None], 0) for which in (serving, self.serving))
        check(np.abs(10.0 * np.log10(chosen / our_choice)).max() <= near)
        in_zone = [told.not_judged, told.dropout, told.low, told.wanted, told.high, told.overload]
        check(in_zone == list(summary.in_zone) and min(in_zone[1:]) > 0)
        check(told.points == summary.points and told.overloaded == summary.overloaded)
        for name in "worst_level_dbm", "worst_margin_db", "hottest_level_dbm", "hottest_headroom_db":
            check(abs(getattr(told, name) - getattr(summary, name)) <= near)
        check(abs(level[told.worst_row, told.worst_column] - summary.worst_level_dbm) <= near)
        check(abs(level[told.hottest_row, told.hottest_column] - summary.hottest_level_dbm) <= near)


def check(holds):
    if not holds:
        sys.exit("NumPy and levelbook do not agree on a map")


in_place = InPlace()


def measure_map(task, count, exponent):
    antennas = [Placed(i, exponent) for i in range(count)]
    gain_dbi = lvb.lvb_gain_dbi_from_cosine_exponent(exponent) if exponent > 0.0 else 6.0
    level = 14.77 + gain_dbi - lvb.lvb_free_space_loss_db(610.0, 1.0)
    ours = Ours(antennas, gain_dbi)
    everything, only_level = ours.call_with_everything(), ours.call()
    powers = numpy_level(antennas, level)[1]
    assert lvb.lvb_compute_map(everything, ours.summary, ffi.NULL) == lvb.LVB_OK
    ours.expect(*numpy_map(antennas, level), powers)
    ours.expect(*in_place.take(antennas, level), powers)
    names = {"antennas": antennas, "level": level, "map": everything, "only_level": only_level, "told": ours.summary}
    for contender, statement in (("numpy", "numpy_level(antennas, level)"),
                                 ("numpy_in_place", "in_place.take_level(antennas, level)"),
                                 ("levelbook", "lvb.lvb_compute_map(only_level, ffi.NULL, ffi.NULL)")):
        measure(task, contender, count * SIDE * SIDE, statement, **names)
    for contender, statement in (("numpy", "numpy_map(antennas, level)"),
                                 ("numpy_in_place", "in_place.take(antennas, level)"),
                                 ("levelbook", "lvb.lvb_compute_map(map, told, ffi.NULL)")):
        measure(task + "_whole", contender, count * SIDE * SIDE, statement, **names)


measure_map("map_isotropic", 4, 0.0)
measure_map("map_even", 4, 4.0)
measure_map("map_any", 4, 2.97)
measure_map("map_single", 1, 0.0)
