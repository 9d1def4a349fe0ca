"""Prints values of the reference files that are integrals of a definition, with mpmath: a second library beside SciPy.

It is no test: the rows that name it were copied from what it prints. It needs Debian's python3-mpmath (1.2.1 was used).

usage: integrals.py
"""

from mpmath import besseli, erfc, erfinv, exp, log10, mp, mpc, mpf, ncdf, npdf, nstr, pi, quad, sqrt

mp.dps = 25


def below(margin_db):
    """A level's ratio to its mean."""
    return mpf(10) ** (-mpf(margin_db) / 10)


def suzuki(margin_db, standard_deviation_db):
    """Outage of Rayleigh fading, averaged over a mean power that is normal in decibels."""
    return quad(lambda z: npdf(z) * (1 - exp(-below(margin_db + standard_deviation_db * z))), range(-16, 17))


def joint(correlation):
    """Density of the powers of two Rayleigh branches of mean 1."""
    apart = 1 - correlation
    return lambda x, y: exp(-(x + y) / apart) * besseli(0, 2 * sqrt(correlation * x * y) / apart) / apart


def correlated_selection(margin_db, correlation):
    """Both powers below a level."""
    level, density = below(margin_db), joint(mpf(correlation))
    return quad(lambda x: quad(lambda y: density(x, y), [0, level]), [0, level])


def correlated_maximal_ratio(margin_db, correlation):
    """Their sum below a level."""
    level, density = below(margin_db), joint(mpf(correlation))
    return quad(lambda x: quad(lambda y: density(x, y), [0, level - x]), [0, level])


def area(edge, standard_deviation_db, exponent):
    """Share of a disc that is served, ring by ring: the level falls with the distance, and shadowing spreads it."""
    z = sqrt(2) * erfinv(2 * mpf(edge) - 1)
    return quad(lambda r: 2 * r * ncdf(z - 10 * exponent * log10(r) / standard_deviation_db), [0, 0.05, 0.2, 0.5, 0.8, 1])


def two_edges_db(frequency_mhz, gaps_m, heights_m):
    """Loss behind two edges above a straight line: Vogler's double integral (NTIA Report 81-86, from memory), in the
    angles by which the way bends at the edges. The inner integral is an error function."""
    a, b, c = map(mpf, gaps_m)
    first, second = map(mpf, heights_m)
    k = 2 * pi * frequency_mhz * 10**6 / 299792458
    beta = (first / a - (second - first) / b) * sqrt(mpc(0, 1) * k * a * b / (2 * (a + b)))
    gamma = ((second - first) / b + second / c) * sqrt(mpc(0, 1) * k * b * c / (2 * (b + c)))
    alpha = sqrt(a * c / ((a + b) * (b + c)))

    def along(u):
        rest = gamma - alpha * u
        return exp(rest * rest - u * u - 2 * beta * u) * erfc(rest) * sqrt(pi) / 2

    field = sqrt(b * (a + b + c) / ((a + b) * (b + c))) / pi * quad(along, [0, 0.5, 1, 2, 4, 8, 16, 32])
    return -20 * log10(abs(field))


def show(name, function, digits, *rows):
    for row in rows:
        print(f"{name}{row}", nstr(function(*row), digits))


show("lvb_suzuki_outage_below_median_of_means", suzuki, 10, (10, 8), (20, 8), (20, 6), (30, 4), (5, 10))
show("lvb_correlated_selection_outage_below_mean", correlated_selection, 10, (10, "0.5"), (10, "0.9"), (0, "0.25"),
     (20, "0.5"), (15, "0.7"))
show("lvb_correlated_maximal_ratio_outage_below_mean", correlated_maximal_ratio, 10, (10, "0.5"), (10, "0.9"),
     (0, "0.25"), (20, "0.5"), (15, "0.7"))
show("lvb_area_coverage", area, 10, ("0.75", 8, 4), ("0.75", 8, 2), ("0.5", 8, 4), ("0.9", 6, 3), ("0.86", 8, 3.5))
show("diffraction_loss_db", two_edges_db, 10, (600, (20, 20, 20), (0, 0)), (600, (20, 20, 20), (1, 1)),
     (600, (30, 10, 50), (2, 3)), (600, (10, 40, 10), (1, 1)))
