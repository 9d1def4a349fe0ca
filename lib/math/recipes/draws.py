# Coefficients of lib/math/draws.hpp, and the errors of their fits. Run: /usr/bin/python3 draws.py (NumPy, SciPy).
# Sollya, which makes the other coefficients, has no inverse of the normal distribution.
# Weighted least squares with Lawson's weights come near the least largest error.
import numpy as np
from numpy.polynomial import chebyshev, polynomial
from scipy.special import erfinv, ndtri

LONG = np.longdouble


def nodes(low, high, count):
    return low + (high - low) * (1 - np.cos(np.pi * (np.arange(count) + 0.5) / count)) / 2


def powers(coefficients, low, high):
    """Coefficients in powers of x of a Chebyshev series on [low, high]."""
    in_t = chebyshev.cheb2poly(np.asarray(coefficients, dtype=LONG))
    t = np.array([-(LONG(low) + high) / (LONG(high) - low), 2 / (LONG(high) - low)], dtype=LONG)
    out, power = np.zeros(len(in_t), dtype=LONG), np.ones(1, dtype=LONG)
    for c in in_t:
        out[: len(power)] += c * power
        power = polynomial.polymul(power, t)
    return out.astype(float)


def fit(x, f, weight, upper, lower, rounds=150):
    """P / Q of these degrees, Q(0) = 1, with weight |f - P / Q| as small as can be: powers of P, of Q, the error."""
    low, high = x.min(), x.max()
    basis = chebyshev.chebvander((2 * x - low - high) / (high - low), max(upper, lower))
    lawson, q, best = np.ones_like(x), np.ones_like(x), None
    for _ in range(rounds):
        scale = weight * np.sqrt(lawson) / q
        rows = np.hstack([basis[:, : upper + 1], -basis[:, 1 : lower + 1] * f[:, None]]) * scale[:, None]
        found = np.linalg.lstsq(rows, f * scale, rcond=1e-17)[0]
        q = 1 + basis[:, 1 : lower + 1] @ found[upper + 1 :]
        error = weight * np.abs(f - basis[:, : upper + 1] @ found[: upper + 1] / q)
        if best is None or error.max() < best[0]:
            best = error.max(), found
        lawson = lawson * (error / error.max() + 1e-3)
        lawson /= lawson.max()
    p = powers(best[1][: upper + 1], low, high)
    q = powers(np.concatenate([[1.0], best[1][upper + 1 :]]), low, high)
    return p / q[0], q / q[0], best[0]


def show(name, coefficients):
    print(name, ", ".join(float(c).hex() for c in coefficients))


# The normal deviate z of v = 2 u - 1 is v P(w) / Q(w), w = -ln(1 - v^2), for u of 33 bits.
w = nodes(0.0, -np.log(4 * 2.0**-33) + 1e-3, 4000)
v = np.sqrt(-np.expm1(-w))
tail = np.exp(-w) / (2 * (1 + v))
z = np.where(tail < 0.2, -ndtri(tail), np.sqrt(2) * erfinv(v))
p, q, error = fit(w, z / v, v, 7, 7)
show("normal P", p), show("normal Q", q)
print("largest error", error)

# ln m = s (2 + s^2 R(s^2)), s = (m - 1) / (m + 1), m from sqrt(1/2) to sqrt(2); the error is that of ln m to itself.
most = ((np.sqrt(2) - 1) / (np.sqrt(2) + 1)) ** 2
square = nodes(0.0, most * 1.0001, 2000)
series = sum(2 * square**k / (2 * k + 3) for k in range(24))
r, _, error = fit(square, series, square / 2, 2, 0)
show("logarithm R", r)
print("largest error", error)

# sin(pi v / 2) = v S(v^2).
square = nodes(0.0, 1.0, 2000)
v = np.sqrt(square)
sine, _, error = fit(square, np.sin(np.pi * v / 2) / v, v, 6, 0)
show("sine S", sine)
print("largest error", error)
