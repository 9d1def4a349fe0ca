"""Checks lvb_compute_trials, lvb_compute_sureness and lvb_compute_quantiles from outside.

Words are drawn by a Philox4x32-10 of its own, which gives the published known answers. Every law is then compared
trial by trial with SciPy's inverse of its distribution function at the same number; laws without one (Nakagami) by a
test of Kolmogorov and Smirnov. Sums are compared with closed forms over many seeds, and with the additive model of JCGM
101:2008, 9.2.

usage: trials_test.py PREPROCESSED_HEADER LIBRARY
"""

import sys

import numpy
from cffi import FFI
from scipy import special, stats

ffi = FFI()
ffi.cdef(open(sys.argv[1]).read())
lvb = ffi.dlopen(sys.argv[2])
failures = checks = 0
MASK = numpy.uint64(0xFFFFFFFF)
HALF = numpy.uint64(32)


def check(name, holds, told=""):
    global checks, failures
    checks += 1
    if not holds:
        failures += 1
        print(f"{name}: does not hold {told}")


def philox(counter, key):
    """Philox4x32-10 on arrays of counters: Salmon, Moraes, Dror & Shaw, 2011, section 4.3."""
    c = [numpy.asarray(word, dtype=numpy.uint64) for word in counter]
    k = [int(word) for word in key]
    for _ in range(10):
        p, q = c[0] * numpy.uint64(0xD2511F53), c[2] * numpy.uint64(0xCD9E8D57)
        c = [(q >> HALF) ^ c[1] ^ numpy.uint64(k[0]), q & MASK, (p >> HALF) ^ c[3] ^ numpy.uint64(k[1]), p & MASK]
        k = [(k[0] + 0x9E3779B9) % 2**32, (k[1] + 0xBB67AE85) % 2**32]
    return c


# Source: known answers that the authors publish with Philox (file kat_vectors, philox4x32 10).
KNOWN = [("00000000 00000000 00000000 00000000", "00000000 00000000", "6627e8d5 e169c58d bc57ac4c 9b00dbd8"),
         ("ffffffff ffffffff ffffffff ffffffff", "ffffffff ffffffff", "408f276d 41c83b0e a20bc7c6 6d5451fd"),
         ("243f6a88 85a308d3 13198a2e 03707344", "a4093822 299f31d0", "d16cfe09 94fdcceb 5001e420 24126ea1")]


def words(text):
    return [int(word, 16) for word in text.split()]


for counter, key, answer in KNOWN:
    check("known answer", [int(word) for word in philox(words(counter), words(key))] == words(answer), counter)


def numbers(trials, seed, quantity, attempt=0):
    """The v of lvb_compute_trials, as its comment tells."""
    t = numpy.asarray(trials, dtype=numpy.uint64)
    c = t // numpy.uint64(128) * numpy.uint64(32) + t % numpy.uint64(32)
    made = philox((c & MASK, c >> HALF, numpy.full_like(c, quantity), numpy.full_like(c, attempt)),
                  (seed % 2**32, seed >> 32))
    word = numpy.choose((t % numpy.uint64(128) // numpy.uint64(32)).astype(int), made)
    return (2.0 * word.astype(float) + 1.0) / 2.0**32 - 1.0


class Link:
    """A conducted link (source and passives), or one with air, of stages (kind, gain, tolerance, law, factor)."""

    def __init__(self, stages, air=False, floor=None, ceiling=None):
        self.stages = ffi.new("lvb_stage[]", len(stages))
        self.spreads = ffi.new("lvb_spread[]", len(stages))
        for stage, spread, (kind, gain, tolerance, law, factor) in zip(self.stages, self.spreads, stages):
            stage.kind, stage.gain_db, stage.tolerance_db = kind, gain, tolerance
            spread.law, spread.coverage_factor = law, factor
        last = self.stages[len(stages) - 1]
        if floor is not None:
            last.stated |= lvb.LVB_STATED_FLOOR
            last.floor_dbm = floor
        if ceiling is not None:
            last.stated |= lvb.LVB_STATED_CEILING
            last.ceiling_dbm = ceiling
        self.link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stage_count": len(stages),
                                           "stage_size": ffi.sizeof("lvb_stage"), "stages": self.stages,
                                           "frequency_mhz": 600.0})
        if air:
            self.link.far_distance_m, self.link.near_distance_m = 40.0, 3.0
        self.count = len(stages)

    def run(self, first, count, seed, levels=True, **more):
        far, near = numpy.empty(count if levels else 0), numpy.empty(count if levels else 0)
        trials = ffi.new("lvb_trials *", {
            "size": ffi.sizeof("lvb_trials"), "instructions": lvb.lvb_best_instructions(), "link": self.link,
            "spread_count": self.count, "spread_size": ffi.sizeof("lvb_spread"), "spreads": self.spreads, "seed": seed,
            "first_trial": first, "trial_count": count, **more})
        if levels:
            trials.far_dbm = ffi.from_buffer("double[]", far, require_writable=True)
            trials.near_dbm = ffi.from_buffer("double[]", near, require_writable=True)
        tally = ffi.new("lvb_tally *", {"size": ffi.sizeof("lvb_tally")})
        fault = ffi.new("lvb_fault *", {"size": ffi.sizeof("lvb_fault")})
        status = lvb.lvb_compute_trials(trials, tally, fault)
        assert status == lvb.LVB_OK, (status, fault.field, fault.value)
        return far, near, tally


def sureness(*tallies):
    array = ffi.new("lvb_tally[]", len(tallies))
    for to, tally in zip(array, tallies):
        ffi.memmove(ffi.addressof(to), tally, ffi.sizeof("lvb_tally"))
    result = ffi.new("lvb_sureness *", {"size": ffi.sizeof("lvb_sureness")})
    assert lvb.lvb_compute_sureness(array, len(tallies), ffi.sizeof("lvb_tally"), result, ffi.NULL) == lvb.LVB_OK
    return result


def quantiles(levels, probabilities):
    asked = ffi.new("lvb_quantile[]", len(probabilities))
    for quantile, probability in zip(asked, probabilities):
        quantile.probability = probability
    moved = levels.copy()
    status = lvb.lvb_compute_quantiles(ffi.from_buffer("double[]", moved, require_writable=True), moved.size, asked,
                                       len(probabilities), ffi.sizeof("lvb_quantile"), ffi.NULL)
    assert status == lvb.LVB_OK, status
    check("quantiles only move levels", numpy.array_equal(numpy.sort(moved), numpy.sort(levels)))
    return [(q.level_dbm, q.error_db) for q in asked]


SOURCE, PASSIVE, ANTENNA = lvb.LVB_KIND_SOURCE, lvb.LVB_KIND_PASSIVE, lvb.LVB_KIND_ANTENNA
AIR, ALLOWANCE, RECEIVER = lvb.LVB_KIND_AIR, lvb.LVB_KIND_ALLOWANCE, lvb.LVB_KIND_RECEIVER
RECTANGULAR, TRIANGULAR = lvb.LVB_LAW_RECTANGULAR, lvb.LVB_LAW_TRIANGULAR
NORMAL, ARC_SINE = lvb.LVB_LAW_NORMAL, lvb.LVB_LAW_ARC_SINE

# ---- Laws, trial by trial.

LAWS = {RECTANGULAR: (stats.uniform(-1, 2), 1e-13), TRIANGULAR: (stats.triang(0.5, -1, 2), 3e-12),
        ARC_SINE: (stats.arcsine(-1, 2), 3e-12), NORMAL: (stats.norm(), 2e-9)}
largest = {}
for law, (distribution, tolerance) in LAWS.items():
    for seed, first, count in ((0, 0, 5000), (7, 77, 5001), (2**64 - 1, 2**40 - 13, 5000), (3 << 32, 2**52 - 300, 300)):
        link = Link([(SOURCE, 0.0, 0.0, RECTANGULAR, 0.0), (PASSIVE, 0.0, 1.0, law, 1.0 if law == NORMAL else 0.0)])
        far, near, _ = link.run(first, count, seed)
        v = numbers(first + numpy.arange(count), seed, 1)
        # SciPy's inverses keep their digits at the lower side, and every law is even
        expected = numpy.copysign(distribution.ppf((1.0 - abs(v)) / 2.0), v)
        error = abs(far - expected).max()
        largest[law] = max(largest.get(law, 0.0), error)
        check(f"law {law}", error <= tolerance, f"{error}")
        check("both ends alike", numpy.array_equal(far, near))

# The numbers at both ends of what words can be: v as far out as it goes, and next to 0.
check("numbers", abs(numbers(numpy.arange(1 << 20), 5, 0)).max() < 1.0)

# ---- Fading and shadowing at the far end.

radio = [(SOURCE, 0.0, 0.0, RECTANGULAR, 0.0), (ANTENNA, 0.0, 0.0, RECTANGULAR, 0.0), (AIR, 0.0, 0.0, RECTANGULAR, 0.0),
         (ANTENNA, 0.0, 0.0, RECTANGULAR, 0.0)]
plain, plain_near, _ = Link(radio, air=True).run(0, 1, 0)
N = 200000
t = numpy.arange(N)


def faded(seed, **more):
    far, near, _ = Link(radio, air=True).run(0, N, seed, **more)
    check("fading is at the far end", numpy.all(near == plain_near[0]))
    return far - plain[0]


db = faded(11, fading=lvb.LVB_FADING_RAYLEIGH)
power = -numpy.log1p(-(1.0 + numbers(t, 11, 65537)) / 2.0)
error = abs(db - 10.0 * numpy.log10(power)).max()
check("Rayleigh", error < 1e-8, f"{error}")
check("Rayleigh's mean power", abs((10 ** (db / 10)).mean() - 1.0) < 4 / N**0.5)
db = faded(12, shadowing_db=6.0)
error = abs(db - 6.0 * special.ndtri((1.0 + numbers(t, 12, 65536)) / 2.0)).max()
check("shadowing", error < 2e-8, f"{error}")
for k_db in (-100.0, -3.0, 0.0, 6.0, 12.0, 40.0, 100.0):
    db = faded(13, fading=lvb.LVB_FADING_RICE, rice_factor_db=k_db)
    k = 10 ** (k_db / 10)
    # two phasors: the steady one, and one of exponential power that is turned by 180 v degrees against it
    steady, faded_part = (k / (k + 1)) ** 0.5, (-numpy.log1p(-(1.0 + numbers(t, 13, 65537)) / 2.0) / (k + 1)) ** 0.5
    power = abs(steady - faded_part * numpy.exp(1j * numpy.pi * numbers(t, 13, 65538))) ** 2
    error = abs(10 ** (db / 10) / power - 1).max()
    check(f"Rice {k_db} dB", error < 1e-5, f"{error}")  # of deep fades, where a difference of amplitudes is small
    if k_db < 30:
        p = stats.kstest(2 * (k + 1) * 10 ** (db / 10), stats.ncx2(2, 2 * k).cdf).pvalue if k > 1e-6 else 1.0
        check(f"Rice {k_db} dB by its law", p > 1e-4, f"{p}")
for shape in (0.5, 0.8, 1.0, 2.3, 10.0, 100.0):
    db = faded(14, fading=lvb.LVB_FADING_NAKAGAMI, nakagami_shape=shape)
    p = stats.kstest(10 ** (db / 10), stats.gamma(shape, scale=1 / shape).cdf).pvalue
    check(f"Nakagami {shape} by its law", p > 1e-4, f"{p}")
    mean = (10 ** (db / 10)).mean()
    check(f"Nakagami {shape}: mean power", abs(mean - 1) < 4 / (shape * N) ** 0.5, f"{mean}")

# What fades below a margin is what the library's outages tell, which SciPy checks elsewhere.
for name, more, outage in (
        ("Rayleigh", {"fading": lvb.LVB_FADING_RAYLEIGH}, lvb.lvb_rayleigh_outage_below_mean(10.0)),
        ("Rice", {"fading": lvb.LVB_FADING_RICE, "rice_factor_db": 6.0}, lvb.lvb_rice_outage_below_mean(10.0, 6.0)),
        ("Nakagami", {"fading": lvb.LVB_FADING_NAKAGAMI, "nakagami_shape": 0.6},
         lvb.lvb_nakagami_outage_below_mean(10.0, 0.6)),
        ("Suzuki", {"fading": lvb.LVB_FADING_RAYLEIGH, "shadowing_db": 8.0},
         lvb.lvb_suzuki_outage_below_median_of_means(10.0, 8.0))):
    share = numpy.mean(faded(15, **more) < -10.0)
    check(f"outage of {name}", abs(share - outage) < 4 * (outage / N) ** 0.5, f"{share} {outage}")

# ---- Sums against closed forms, over many seeds: within four standard errors, and their squares as chi-square.

LAW_VARIANCE = {RECTANGULAR: 1 / 3, TRIANGULAR: 1 / 6, ARC_SINE: 1 / 2, NORMAL: 1 / 4}
window = (-14.5, -9.0)
mixed = [(SOURCE, 0.0, 0.7, NORMAL, 0.0), (PASSIVE, -3.0, 1.0, RECTANGULAR, 0.0), (PASSIVE, -4.0, 0.8, TRIANGULAR, 0.0),
         (PASSIVE, -5.0, 0.5, ARC_SINE, 0.0), (RECEIVER, 0.0, 0.0, RECTANGULAR, 0.0)]
normal = [(SOURCE, 0.0, 0.7, NORMAL, 1.0), (PASSIVE, -3.0, 1.0, NORMAL, 3.0), (PASSIVE, -9.0, 2.0, NORMAL, 2.0),
          (RECEIVER, 0.0, 0.0, RECTANGULAR, 0.0)]
uniform = [(SOURCE, 0.0, 1.0, RECTANGULAR, 0.0), (PASSIVE, -6.0, 1.0, RECTANGULAR, 0.0),
           (PASSIVE, -6.0, 1.0, RECTANGULAR, 0.0), (RECEIVER, 0.0, 0.0, RECTANGULAR, 0.0)]
SEEDS, M = 400, 4096


def irwin_hall(x, n):
    """Distribution function of the sum of n numbers that are uniform from -1 to 1."""
    y = (x + n) / 2
    return sum((-1) ** k * special.binom(n, k) * max(0.0, y - k) ** n for k in range(n + 1)) / special.factorial(n)


def over_seeds(name, stages, deviation, probabilities=None, exact_quantiles=None):
    link = Link(stages, floor=window[0], ceiling=window[1])
    deviates = {"mean": [], "deviation": [], "inside": [], "below": [], "above": []}
    quantile_deviates = []
    for seed in range(SEEDS):
        far, _, tally = link.run(0, M, 1000003 * seed + 17)
        told = sureness(tally)
        deviates["mean"].append((told.far_mean_dbm + 12.0) / told.far_mean_error_db)
        kurtosis = stats.kurtosis(far)
        deviates["deviation"].append((told.far_standard_deviation_db / deviation - 1) / ((kurtosis + 2) / 4 / M) ** 0.5)
        if probabilities is not None:
            for key, got, error, exact in zip(
                    ("below", "inside", "above"),
                    (told.far_below_probability, told.inside_probability, told.far_above_probability),
                    (told.far_below_error, told.inside_error, told.far_above_error), probabilities):
                if exact == 0.0:
                    check(f"{name}, {key}: never", got == 0.0)
                else:
                    deviates[key].append((got - exact) / error)
        if exact_quantiles is not None:
            for (level, error), exact in zip(quantiles(far, [p for p, _ in exact_quantiles]), exact_quantiles):
                quantile_deviates.append((level - exact[1]) / error)
    for key, values in deviates.items():
        if not values:
            continue
        values = numpy.array(values)
        # of so many standard normal numbers one beyond four comes up once in forty; their mean and squares tell more
        check(f"{name}, {key}: worst", abs(values).max() < 4.8, f"{abs(values).max()}")
        check(f"{name}, {key}: bias", abs(values.mean()) < 4 / SEEDS**0.5, f"{values.mean()}")
        check(f"{name}, {key}: spread", stats.chi2(SEEDS).sf((values**2).sum()) > 1e-5 and
              stats.chi2(SEEDS).cdf((values**2).sum()) > 1e-5, f"{(values**2).mean()}")
    if quantile_deviates:
        values = numpy.array(quantile_deviates)
        # the error of a quantile is itself estimated, to some tens of percent: deviates are wider than normal ones
        check(f"{name}, quantiles: spread", 0.7 < (values**2).mean() < 1.6, f"{(values**2).mean()}")
        check(f"{name}, quantiles: bias", abs(values.mean()) < 0.15, f"{values.mean()}")


sigma = (0.7**2 + (1 / 3) ** 2 + 1.0) ** 0.5
law = stats.norm(-12.0, sigma)
over_seeds("normal sum", normal, sigma,
           (law.cdf(window[0]), law.cdf(window[1]) - law.cdf(window[0]), law.sf(window[1])),
           [(p, law.ppf(p)) for p in (0.025, 0.1, 0.5, 0.9, 0.975)])
inner = numpy.linspace(-3, 3, 20001)
table = numpy.array([irwin_hall(x, 3) for x in inner])
over_seeds("uniform sum", uniform, 1.0,
           (irwin_hall(window[0] + 12.0, 3), 1.0 - irwin_hall(window[0] + 12.0, 3), 0.0),
           [(p, -12.0 + numpy.interp(p, table, inner)) for p in (0.025, 0.5, 0.975)])
over_seeds("mixed sum", mixed, (0.35**2 + 1 / 3 + 0.64 / 6 + 0.25 / 2) ** 0.5)

# ---- The additive model of JCGM 101:2008, 9.2: Y = X1 + X2 + X3 + X4. The limits of the 95 % interval that it prints
# are recalled from memory; closed forms (and a convolution) beside them decide.


def additive(tolerances, law, factor):
    return Link([(PASSIVE if i else SOURCE, 0.0, tolerance, law, factor) for i, tolerance in enumerate(tolerances)])


M = 1000000
root3 = 3**0.5
for name, link, deviation, exact, printed in (
        ("9.2.2", additive([1.0] * 4, NORMAL, 1.0), 2.0, stats.norm.ppf(0.975) * 2, 3.92),
        ("9.2.3", additive([root3] * 4, RECTANGULAR, 0.0), 2.0, 2 * root3 * (2 - (3 / 5) ** 0.25), 3.88),
        ("9.2.4", additive([root3] * 3 + [10 * root3], RECTANGULAR, 0.0), 103**0.5, None, 17.0)):
    far, _, tally = link.run(0, M, 101)
    told = sureness(tally)
    if exact is None:  # three small ones and a wide one: far inside, the sum is uniform but for its ends
        grid = numpy.linspace(-23.0, 23.0, 461)
        wide = (numpy.arange(400) + 0.5) / 200 - 1
        cdf = numpy.mean([[irwin_hall(x / root3 - 10 * w, 3) for x in grid] for w in wide], axis=0)
        exact = numpy.interp(0.975, cdf, grid)
    (low, low_error), (middle, middle_error), (high, high_error) = quantiles(far, (0.025, 0.5, 0.975))
    check(f"{name}: deviation", abs(told.far_standard_deviation_db - deviation) < 4 * deviation / (2 * M) ** 0.5)
    check(f"{name}: mean", abs(told.far_mean_dbm) < 4 * told.far_mean_error_db)
    check(f"{name}: low", abs(low + exact) < 4 * low_error + 1e-3, f"{low} {exact} {low_error}")
    check(f"{name}: high", abs(high - exact) < 4 * high_error + 1e-3, f"{high} {exact} {high_error}")
    half_a_digit = 0.05 if printed == 17.0 else 0.005
    check(f"{name}: as printed", abs(exact - printed) < half_a_digit, f"{exact}")

# ---- Quantiles and moments against NumPy.

generator = numpy.random.default_rng(3)
for count in (1, 2, 3, 10, 1000, 4097):
    for levels in (generator.normal(size=count), generator.integers(0, 4, count) * 1.0, numpy.zeros(count),
                   numpy.sort(generator.normal(size=count)),
                   numpy.where(generator.random(count) < 0.3, -numpy.inf, 1.0)):
        wanted = (0.0, 0.003, 0.25, 0.5, 2 / 3, 0.999, 1.0)
        for (level, _), p in zip(quantiles(levels, wanted), wanted):
            check("quantile", level == numpy.quantile(levels, p, method="inverted_cdf"), f"{count} {p}")
far, near, tally = Link(mixed, floor=window[0], ceiling=window[1]).run(5, 100001, 9)
told = sureness(tally)
check("mean", abs(told.far_mean_dbm - far.mean()) < 1e-6)
check("standard deviation", abs(told.far_standard_deviation_db - far.std(ddof=1)) < 1e-5)
check("counts", told.inside_probability == numpy.mean((far >= window[0]) & (far <= window[1])))

names = {RECTANGULAR: "rectangular", TRIANGULAR: "triangular", ARC_SINE: "arc sine", NORMAL: "normal"}
print("largest errors: " + ", ".join(f"{names[law]} {error:.1e}" for law, error in largest.items()))
print(f"{checks} checks, {failures} failures")
sys.exit(1 if failures or checks < 200 else 0)
