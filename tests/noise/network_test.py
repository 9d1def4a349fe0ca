"""Noise figures of cascades against a general RF network library, which joins noisy two-ports by their noise
correlation matrices and knows nothing of Friis's formula.

usage: network_test.py LIBRARY HEADER
"""

import random
import subprocess
import sys
import warnings

import cffi
import numpy

warnings.filterwarnings("ignore")
import skrf  # noqa: E402

header = subprocess.check_output(["cc", "-E", "-P", "-std=c99", "-DLVB_STATIC", sys.argv[2]], text=True)
ffi = cffi.FFI()
ffi.cdef(header)
library = ffi.dlopen(sys.argv[1])
frequency = skrf.Frequency(600, 600, 1, "mhz")
impedance = 50.0


def two_port(gain_db, figure_db):
    """A matched two-port whose least noise figure is reached from a matched source."""
    amplitude = 10 ** (gain_db / 20)
    network = skrf.Network(frequency=frequency, s=numpy.array([[[0, 0], [amplitude, 0]]], dtype=complex), z0=impedance)
    network.set_noise_a(frequency, nfmin_db=figure_db, gamma_opt=0, rn=impedance * (10 ** (figure_db / 10) - 1) / 2)
    return network


def levelbook_figure_db(stages):
    array = ffi.new("lvb_stage[]", len(stages) + 1)
    array[0].kind = library.LVB_KIND_SOURCE
    for stage, (gain_db, figure_db, passive) in zip(list(array)[1:], stages):
        stage.kind = library.LVB_KIND_PASSIVE if passive else library.LVB_KIND_AMPLIFIER
        stage.gain_db = gain_db
        if not passive:
            stage.stated = library.LVB_STATED_NOISE_FIGURE
            stage.noise_figure_db = figure_db
    link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stages": array, "stage_count": len(stages) + 1,
                                  "stage_size": ffi.sizeof("lvb_stage"), "frequency_mhz": 600.0,
                                  "stated": library.LVB_STATED_TEMPERATURE, "temperature_degc": 290 - 273.15})
    conditions = ffi.new("lvb_noise_conditions *", {"size": ffi.sizeof("lvb_noise_conditions"), "bandwidth_mhz": 0.2})
    noise = ffi.new("lvb_noise *", {"size": ffi.sizeof("lvb_noise")})
    status = library.lvb_compute_noise(link, conditions, noise, ffi.NULL, 0, ffi.NULL)
    if status != 0:
        raise SystemExit(f"refused: {status}")
    return noise.noise_figure_db


random.seed(4)
failures = 0
for case in range(60):
    stages = []
    for _ in range(random.randint(1, 6)):
        if random.random() < 0.4:
            loss = random.uniform(0.1, 12)
            stages.append((-loss, loss, True))  # at 290 K a loss is its own noise figure
        else:
            stages.append((random.uniform(-3, 25), random.uniform(0.3, 12), False))
    network = two_port(*stages[0][:2])
    for stage in stages[1:]:
        network = network ** two_port(*stage[:2])
    expected = 10 * numpy.log10(float(network.nf(impedance)[0]))
    figure = levelbook_figure_db(stages)
    if not abs(figure - expected) < 1e-9:
        failures += 1
        print(f"{stages}: levelbook {figure!r}, network library {expected!r}")
print(f"{case + 1} cascades, {failures} differ")
sys.exit(1 if failures else 0)
