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
