"""Checks lvb_locate_fault against full covariance matrices: every stage's deviation, the fault and the reading errors are
one normal vector, each stage in turn the culprit, and NumPy and SciPy do the rest (densities, conditioning, chi-square).
The expected bits are checked against the same bound of all stages' predictions, and against the mutual information itself,
integrated numerically.

usage: locate_test.py PREPROCESSED_HEADER LIBRARY
"""

import sys

import numpy
from cffi import FFI
from scipy import integrate, special, stats

ffi = FFI()
ffi.cdef(open(sys.argv[1]).read())
lvb = ffi.dlopen(sys.argv[2])
failures = 0
checks = 0
largest = {}
loss_of_bound = []
loss_of_choice = []


def check(name, value, expected, tolerance=1e-9):
    global checks, failures
    checks += 1
    error = abs(value - expected)
    largest[name] = max(largest.get(name, 0.0), error)
    if not error <= tolerance:
        failures += 1
        print(f"{name}: levelbook {value!r}, full matrices {expected!r}")


def chain(gains, tolerances):
    """A conducted chain: source, then amplifiers of the given gains, so that every point can be measured."""
    stages = ffi.new("lvb_stage[]", len(gains))
    for stage, gain, tolerance in zip(stages, gains, tolerances):
        stage.kind = lvb.LVB_KIND_AMPLIFIER
        stage.gain_db = gain
        stage.tolerance_db = tolerance
    stages[0].kind = lvb.LVB_KIND_SOURCE
    stages[0].gain_db = 0.0
    stages[0].level_dbm = gains[0]
    link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stage_count": len(gains),
                                  "stage_size": ffi.sizeof("lvb_stage"), "stages": stages, "frequency_mhz": 600.0})
    return link, stages


def locate(gains, tolerances, points, levels, uncertainties, uncertainty, probability, spread):
    link, stages = chain(gains, tolerances)
    readings = ffi.new("lvb_reading[]", len(points)) if points else []
    for reading, point, level, own in zip(readings, points, levels, uncertainties):
        reading.stage, reading.level_dbm, reading.uncertainty_db = point, level, own
    request = ffi.new("lvb_locate *", {
        "size": ffi.sizeof("lvb_locate"), "link": link, "readings": readings or ffi.NULL, "reading_count": len(points),
        "reading_size": ffi.sizeof("lvb_reading"), "uncertainty_db": uncertainty, "fault_probability": probability,
        "fault_spread_db": spread})
    result = ffi.new("lvb_locate_result *", {"size": ffi.sizeof("lvb_locate_result")})
    suspects = ffi.new("lvb_suspect[]", len(gains))
    fault = ffi.new("lvb_fault *", {"size": ffi.sizeof("lvb_fault")})
    status = lvb.lvb_locate_fault(request, result, suspects, ffi.sizeof("lvb_suspect"), fault)
    assert status == lvb.LVB_OK, (status, fault.field, fault.value)
    return result, suspects


def mutual_information(weights, means, variances):
    """Of a mixture's component and its value, in bits, by the trapezoidal rule on a grid far finer than its bumps."""
    deviations = numpy.sqrt(variances)
    low, high = (means - 9 * deviations).min(), (means + 9 * deviations).max()
    x = numpy.linspace(low, high, 1 + int((high - low) / (0.1 * deviations.min())))
    logs = stats.norm.logpdf(x[None, :], means[:, None], deviations[:, None])
    mixture = special.logsumexp(logs, axis=0, b=weights[:, None])
    terms = numpy.exp(logs) * (logs - mixture) / numpy.log(2.0)
    return float(weights @ integrate.trapezoid(terms, x, axis=1))


def bound(weights, means, variances):
    sums = variances[:, None] + variances[None, :]
    distance = (0.25 * (means[:, None] - means[None, :]) ** 2 / sums
                + 0.5 * numpy.log(0.5 * sums / numpy.sqrt(numpy.outer(variances, variances))))
    return float(-(weights @ numpy.log2(numpy.exp(-distance) @ weights)))


def compare(gains, tolerances, points, excess, uncertainties, uncertainty, probability, spread):
    n, k = len(gains), len(points)
    levels = numpy.cumsum(gains)[points] + excess if k else numpy.array([])
    result, suspects = locate(gains, tolerances, points, levels, uncertainties, uncertainty, probability, spread)

    # One vector: n deviations, the fault, k reading errors. Observed: sums up to each point, plus fault, plus error.
    sums = numpy.array([[1.0 if i <= p else 0.0 for i in range(n)] for p in points]).reshape(k, n)
    deviations = numpy.diag(numpy.array(tolerances) ** 2 / 3.0)
    errors = numpy.diag(numpy.array([u if u > 0 else uncertainty for u in uncertainties]).reshape(k) ** 2)
    healthy = sums @ deviations @ sums.T + errors

    def log_density(covariance):
        return stats.multivariate_normal.logpdf(excess, numpy.zeros(k), covariance) if k else 0.0

    steps = [numpy.array([1.0 if c <= p else 0.0 for p in points]) for c in range(n)]
    logs = numpy.array([numpy.log1p(-probability) + log_density(healthy)]
                       + [numpy.log(probability / n) + log_density(healthy + spread**2 * numpy.outer(h, h)) for h in steps])
    posterior = numpy.exp(logs - logs.max())
    posterior /= posterior.sum()
    check("none_probability", result.none_probability, posterior[0])
    chi_square = float(excess @ numpy.linalg.solve(healthy, excess)) if k else 0.0
    check("chi_square", result.chi_square, chi_square, 1e-9 * max(1.0, chi_square))
    check("p_value", result.p_value, stats.chi2.sf(chi_square, k) if k else 1.0)
    for c in range(n):
        check("probability", suspects[c].probability, posterior[1 + c])
        gain = spread**2 * numpy.linalg.solve(healthy + spread**2 * numpy.outer(steps[c], steps[c]), steps[c]) if k else []
        check("fault_db", suspects[c].fault_db, float(gain @ excess) if k else 0.0)
        check("standard_deviation_db", suspects[c].standard_deviation_db,
              numpy.sqrt(spread**2 - (spread**2 * float(gain @ steps[c]) if k else 0.0)), 1e-8)

    # What a fault of any size at the most likely stage leaves unexplained: generalized least squares of one column.
    column = steps[result.stage]
    root = numpy.linalg.cholesky(healthy) if k else numpy.zeros((0, 0))
    whitened = numpy.linalg.solve(root, numpy.column_stack([column, excess])) if k else numpy.zeros((0, 2))
    seen = bool(column.any())
    rest = whitened[:, 1]
    if seen:
        size = numpy.linalg.lstsq(whitened[:, :1], whitened[:, 1], rcond=None)[0]
        rest = rest - whitened[:, :1] @ size
    degrees = k - 1 if seen else k
    check("fault_p_value", result.fault_p_value, stats.chi2.sf(float(rest @ rest), degrees) if degrees else 1.0)

    # The next reading after every stage, as every culprit predicts it.
    exact = []
    for q in range(n):
        row = numpy.array([1.0 if i <= q else 0.0 for i in range(n)])
        means, variances = numpy.zeros(n + 1), numpy.zeros(n + 1)
        for c in range(-1, n):
            seen, at_q = (steps[c], 1.0 if c <= q else 0.0) if c >= 0 else (numpy.zeros(k), 0.0)
            total = healthy + spread**2 * numpy.outer(seen, seen)
            cross = sums @ deviations @ row + spread**2 * seen * at_q
            gain = numpy.linalg.solve(total, cross) if k else numpy.array([])
            means[c + 1] = gain @ excess if k else 0.0
            variances[c + 1] = row @ deviations @ row + spread**2 * at_q - (gain @ cross if k else 0.0) + uncertainty**2
        check("expected_bits", suspects[q].expected_bits, max(0.0, bound(posterior, means, variances)), 1e-8)
        information = mutual_information(posterior, means, variances)
        exact.append(information)
        loss_of_bound.append(information - suspects[q].expected_bits)
        if suspects[q].expected_bits > information + 1e-6:
            global failures
            failures += 1
            print(f"expected_bits {suspects[q].expected_bits} above the mutual information {information}")
    best = max(range(n), key=lambda q: suspects[q].expected_bits)
    check("next_stage", result.next_stage, best, 0)
    loss_of_choice.append(max(exact) - exact[best])


# By hand: source, cable, amplifier of 0, -3 and +10 dB with 0.3, 0.6 and 0.3 dB of tolerance; 6 dB are lost at the end
# and nothing after the source.
compare([0.0, 3.0, 10.0], [0.3, 0.6, 0.3], [0, 2], numpy.array([0.0, -6.0]), [0.3, 0.3], 0.3, 0.5, 10.0)
compare([5.0, 1.0], [0.0, 0.0], [], numpy.array([]), [], 0.5, 0.5, 10.0)

random = numpy.random.default_rng(20260101)
for round in range(150):
    n = int(random.integers(1, 13))
    k = int(random.integers(0, 7))
    points = [int(p) for p in random.integers(0, n, k)]
    tolerances = [float(t) for t in random.choice([0.0, 0.3, 0.5, 1.0, 2.0], n)]
    gains = [float(g) for g in random.uniform(-10.0, 20.0, n)]
    excess = random.normal(0.0, 0.7, k)
    if random.integers(0, 3):
        culprit = random.integers(0, n)
        excess = excess + random.normal(0.0, 8.0) * numpy.array([1.0 if culprit <= p else 0.0 for p in points]).reshape(k)
    uncertainties = [float(u) for u in random.choice([0.0, 0.1, 0.3, 1.0], k)]
    compare(gains, tolerances, points, excess, uncertainties, float(random.choice([0.2, 0.5])),
            float(random.choice([0.05, 0.5, 0.9])), float(random.choice([5.0, 10.0, 20.0])))

for name, error in largest.items():
    print(f"{name}: largest difference {error:.1e}")
print(f"expected_bits lie below the mutual information by {numpy.mean(loss_of_bound):.3f} bit in the mean, "
      f"{max(loss_of_bound):.3f} at most")
print(f"the advised point tells less than the best one by {numpy.mean(loss_of_choice):.4f} bit in the mean, "
      f"{max(loss_of_choice):.3f} at most")
print(f"{checks} checks, {failures} failures")
sys.exit(1 if failures or checks < 4000 else 0)
