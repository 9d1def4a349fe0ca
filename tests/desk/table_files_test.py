"""levelbook-desk reads Touchstone files as a general RF network library does (scikit-rf 0.15, from the Debian package),
and CSV files as Python's csv module writes and reads them.

Usage: table_files_test.py LEVELBOOK_DESK

Files of every unit, format, number of ports from 1 to 4 and way to wrap lines are generated from fixed random numbers,
and others are written by the library itself. For every parameter of every file the desk's frequencies and decibels are
compared with those of the library's own reader. The library knows one order of the option line, no [Two-Port Data
Order] (it gets the file without that line), no [Matrix Format] and no noise or information sections of version 2: those
are checked by hand in table_test.cpp.
"""

import contextlib
import csv
import io
import math
import os
import random
import subprocess
import sys
import tempfile
import warnings

warnings.simplefilter("ignore")
with contextlib.redirect_stdout(io.StringIO()):  # it tells that it found no plotting
    import skrf

TOLERANCE_DB = 1e-9
TOLERANCE_RELATIVE = 1e-12  # of frequencies

FORMATS = ("MA", "DB", "RI")
UNITS = ("Hz", "kHz", "MHz", "GHz")


def number(rng, value):
    """A number as instruments write it: in one of several forms."""
    return rng.choice(("%.9f", "%.12e", "%+.10E", "%.15g")) % value


def pair(rng, form):
    magnitude = 10 ** rng.uniform(-4, 0.5)
    angle = rng.uniform(-180, 180)
    if form == "MA":
        return magnitude, angle
    if form == "DB":
        return 20 * math.log10(magnitude), angle
    return magnitude * math.cos(math.radians(angle)), magnitude * math.sin(math.radians(angle))


def wrapped(rng, frequency, pairs, ports):
    """The lines of one frequency: one line up to 2 ports, else a line for each row, or as many pairs as fall."""
    style = "line" if ports <= 2 else rng.choice(("rows", "line", "any"))
    lines, line = [], [frequency]
    for i, (first, second) in enumerate(pairs):
        cut = style == "rows" and i % ports == 0 or style == "any" and rng.random() < 0.3
        if i > 0 and cut:
            lines.append(line)
            line = []
        line += [first, second]
    lines.append(line)
    return [rng.choice(("", " ", "\t")) + rng.choice((" ", "  ", "\t")).join(line) for line in lines]


def generate(rng, ports, unit, form, version):
    """A file's text."""
    rows = rng.randint(1, 12)
    scale = {"Hz": 1e6, "kHz": 1e3, "MHz": 1.0, "GHz": 1e-3}[unit]
    frequencies = sorted({round(rng.uniform(0.1, 6000), 3) for _ in range(rows)})
    spell = lambda word: rng.choice((word, word.lower(), word.upper()))
    reference = rng.choice(("50", "75", "50.0", "1e2"))
    lines = ["! generated", "", "! twice"]
    options = " ".join(("#", spell(unit), spell("S"), spell(form), spell("R"), reference))
    if version == 2:
        lines += ["[Version] 2.0", options, "[Number of Ports] %d" % ports]
        if ports == 2:
            lines += ["[Two-Port Data Order] 21_12"]
        # The library loses a single reference that stands on the keyword's line.
        lines += ["[Number of Frequencies] %d" % len(frequencies), "[Reference]", " ".join([reference] * ports),
                  "[Network Data]"]
    else:
        lines += [options]
    for mhz in frequencies:
        pairs = [tuple(number(rng, x) for x in pair(rng, form)) for _ in range(ports * ports)]
        lines += wrapped(rng, "%.12g" % (mhz * scale), pairs, ports)
        if rng.random() < 0.2:
            lines += [rng.choice(("", "! between"))]
        if rng.random() < 0.2:
            lines[-1] += " ! behind"
    if version == 2:
        lines += ["[End]"]
    elif ports == 2 and rng.random() < 0.3 and len(frequencies) > 1:
        for k in range(rng.randint(1, 3)):
            lines += ["%.9g 1.5 0.3 40 0.2" % (frequencies[0] * scale * (0.4 + 0.1 * k))]
    return rng.choice(("\n", "\r\n")).join(lines) + "\n"


def read_by_desk(desk, path, parameter=None):
    options = [] if parameter is None else ["--parameter", parameter]
    told = subprocess.run([desk, "table", path] + options, capture_output=True, text=True)
    assert told.returncode == 0 and not told.stderr, (told.stderr, open(path).read())
    lines = told.stdout.splitlines()
    assert lines[1] == "frequency_mhz,gain_db", lines[1]
    return [tuple(float(field) for field in line.split(",")) for line in lines[2:]]


def read_by_library(path):
    with open(path, newline="") as file:
        text = file.read()
    shown = os.path.join(os.path.dirname(path), "shown." + path.rsplit(".", 1)[1])
    with open(shown, "w", newline="") as file:
        file.write(text.replace("[Two-Port Data Order] 21_12", ""))
    with contextlib.redirect_stdout(io.StringIO()):
        return skrf.io.touchstone.Touchstone(shown).get_sparameter_arrays()


def compare(desk, path, parameters):
    hertz, matrices = read_by_library(path)
    ports = matrices.shape[1]
    assert ports >= 1 and len(hertz) >= 1
    worst = 0.0
    names = [(i, j) for i in range(ports) for j in range(ports)]
    for i, j in names if parameters is None else parameters(names):
        rows = read_by_desk(desk, path, "s%d%d" % (i + 1, j + 1))
        assert len(rows) == len(hertz), (path, len(rows), len(hertz))
        for (mhz, gain), f, s in zip(rows, hertz, matrices[:, i, j]):
            assert abs(mhz * 1e6 - f) <= TOLERANCE_RELATIVE * f, (mhz, f, open(path).read())
            error = abs(gain - 20 * math.log10(abs(s)))
            assert error <= TOLERANCE_DB, (i, j, mhz, gain, s, open(path).read())
            worst = max(worst, error)
    return worst


def written_by_library(rng, folder, name, form, ports):
    frequency = skrf.Frequency(rng.uniform(100, 400), rng.uniform(500, 900), rng.randint(2, 9), "mhz")
    values = [[[complex(*pair(rng, "RI")) for _ in range(ports)] for _ in range(ports)] for _ in range(frequency.npoints)]
    network = skrf.Network(frequency=frequency, s=values, z0=50)
    network.write_touchstone(name, dir=folder, form=form.lower())
    return os.path.join(folder, name + ".s%dp" % ports)


def compare_csv(desk, path, rng):
    """One file of random numbers and notes, in a random one of the forms that the module writes."""
    rows = [(470 + k, rng.uniform(-60, 0), rng.choice(("", "a, b", 'say "c"', "two\nlines", "# no comment", "d")))
            for k in range(rng.randint(1, 9))]
    with open(path, "w", newline="") as file:
        writer = csv.writer(file, quoting=rng.choice((csv.QUOTE_ALL, csv.QUOTE_MINIMAL, csv.QUOTE_NONNUMERIC)),
                            lineterminator=rng.choice(("\n", "\r\n")))
        writer.writerow(("frequency_mhz", "gain_db", "note"))
        writer.writerows(rows)
    with open(path, newline="") as file:
        read = [(float(mhz), float(gain)) for mhz, gain, _ in list(csv.reader(file))[1:]]
    assert read_by_desk(desk, path) == read, open(path).read()


def main():
    desk = sys.argv[1]
    rng = random.Random(20261125)  # fixed: every run is the same
    few = lambda names: names if len(names) <= 4 else [(1, 0), *rng.sample(names, 2)]
    worst, files = 0.0, 0
    with tempfile.TemporaryDirectory() as folder:
        for ports in (1, 2, 3, 4):
            for form in FORMATS:
                for unit in UNITS:
                    for version in (1, 2):
                        name = "g.ts" if version == 2 and rng.random() < 0.5 else "g.s%dp" % ports
                        path = os.path.join(folder, name)
                        with open(path, "w", newline="") as file:
                            file.write(generate(rng, ports, unit, form, version))
                        error = compare(desk, path, few)
                        worst, files = max(worst, error), files + 1
                with contextlib.redirect_stdout(io.StringIO()):
                    path = written_by_library(rng, folder, "w%d%s" % (ports, form), form, ports)
                error = compare(desk, path, None)
                worst, files = max(worst, error), files + 1
        for _ in range(50):
            compare_csv(desk, os.path.join(folder, "c.csv"), rng)
    assert files == 4 * 3 * (4 * 2 + 1)
    print("50 CSV files alike; %d Touchstone files, largest difference %.3g dB" % (files, worst))


if __name__ == "__main__":
    main()
