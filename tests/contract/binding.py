"""A binding generator reads the preprocessed header with no hand edit and computes one budget.

  binding.py PREPROCESSED_HEADER LIBRARY
"""
import math
import sys

from cffi import FFI

ffi = FFI()
ffi.cdef(open(sys.argv[1]).read())
lvb = ffi.dlopen(sys.argv[2])

# 20 dBm, 0 dBi, free space at 600 MHz over 10 m, 0 dBi: the loss by 20 log10(4 pi d f / c)
stages = ffi.new("lvb_stage[]", [
    {"kind": lvb.LVB_KIND_SOURCE, "level_dbm": 20.0},
    {"kind": lvb.LVB_KIND_ANTENNA},
    {"kind": lvb.LVB_KIND_AIR},
    {"kind": lvb.LVB_KIND_ANTENNA},
    {"kind": lvb.LVB_KIND_RECEIVER, "stated": lvb.LVB_STATED_FLOOR, "floor_dbm": -90.0},
])
link = ffi.new("lvb_link *", {"size": ffi.sizeof("lvb_link"), "stages": stages, "stage_count": len(stages),
                              "stage_size": ffi.sizeof("lvb_stage"), "frequency_mhz": 600.0, "far_distance_m": 10.0})
budget = ffi.new("lvb_budget *", {"size": ffi.sizeof("lvb_budget")})
fault = ffi.new("lvb_fault *", {"size": ffi.sizeof("lvb_fault")})
assert lvb.lvb_compute_budget(link, budget, ffi.NULL, 0, fault) == lvb.LVB_OK, fault.field
expected = 20.0 - 20.0 * math.log10(4.0 * math.pi * 10.0 * 600e6 / 299792458.0)
assert abs(budget.far_end.level_dbm - expected) < 1e-9, (budget.far_end.level_dbm, expected)
assert budget.verdict == lvb.LVB_VERDICT_HOLDS

# 20 log10 of a column, and the same link as a grid over two frequencies and three distances
x = ffi.new("double[]", [1.0, 10.0, -1.0, 1000.0])
y = ffi.new("double[]", len(x))
bad = ffi.new("lvb_bad *", {"size": ffi.sizeof("lvb_bad")})
columns = ffi.new("lvb_columns *", {"size": ffi.sizeof("lvb_columns"), "formula": lvb.LVB_FORMULA_DB_FROM_AMPLITUDE_RATIO,
                                    "instructions": lvb.lvb_best_instructions(), "count": len(x), "argument_1": x,
                                    "result": y})
assert lvb.lvb_compute_columns(columns, bad, fault) == lvb.LVB_OK, fault.field
assert list(y)[:2] == [0.0, 20.0] and y[3] == 60.0 and math.isnan(y[2]), list(y)
assert (bad.count, bad.first) == (1, 2)
mhz, metres = ffi.new("double[]", [500.0, 600.0]), ffi.new("double[]", [5.0, 10.0, 20.0])
scratch, levels = ffi.new("double[]", 2 * len(metres)), ffi.new("double[]", len(mhz) * len(metres))
grid = ffi.new("lvb_grid *", {"size": ffi.sizeof("lvb_grid"), "frequency_count": len(mhz), "distance_count": len(metres),
                              "link": link, "frequency_mhz": mhz, "distance_m": metres, "scratch": scratch,
                              "level_dbm": levels, "instructions": lvb.lvb_best_instructions()})
assert lvb.lvb_compute_grid(grid, bad, fault) == lvb.LVB_OK, fault.field
assert levels[4] == budget.far_end.level_dbm and bad.count == 0
for i, f in enumerate(mhz):
    for k, d in enumerate(metres):
        exact = 20.0 - 20.0 * math.log10(4.0 * math.pi * d * f * 1e6 / 299792458.0)
        assert abs(levels[i * len(metres) + k] - exact) < 1e-9

# every struct has the size that the library knows, and every function of the header is there
for name, value in [(n, getattr(lvb, n)) for n in dir(lvb) if n.startswith("LVB_STRUCT_") and n != "LVB_STRUCT_NONE"]:
    struct = "lvb_" + name[len("LVB_STRUCT_"):].lower()
    assert ffi.sizeof(struct) == lvb.lvb_struct_size(value), struct
functions = [n for n in dir(lvb) if n.startswith("lvb_")]
assert len(functions) > 90, len(functions)
for function in functions:
    getattr(lvb, function)

# a refusal, in words
link.frequency_mhz = 0.0
assert lvb.lvb_compute_budget(link, budget, ffi.NULL, 0, fault) == lvb.LVB_E_MISSING
text = ffi.new("char[256]")
lvb.lvb_fault_text(fault, text, 256)
assert ffi.string(text) == b"lvb_link.frequency_mhz is missing; allowed 0.1 to 300000.", ffi.string(text)
print("far end", budget.far_end.level_dbm, "dBm through", len(functions), "functions read from the header")
