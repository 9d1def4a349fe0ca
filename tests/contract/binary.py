"""Properties of the built libraries, read with readelf and nm (standard library only).

  binary.py shared LIBRARY HEADER SONAME    the shared object
  binary.py archive LIBRARY HEADER          the static archive
  binary.py size LIBRARY STRIP              the shared object stays small when it is stripped
  binary.py selfcheck CC STRIP              shows on seeded defects that each check can fail
"""
import os
import re
import subprocess
import sys
import tempfile

NEEDED = {"libc.so.6"}
# All that the library may import. Its mathematics is its own.
MEMORY = {"memcpy", "memset", "memmove", "memcmp"}
# The namespace of the kernels of one instruction set, in the objects that are compiled for it.
KERNELS = {
    "loops_avx2": "kernel_avx2",
    "loops_avx512": "kernel_avx512",
    "row_avx2": "kernel_avx2",
    "row_avx512": "kernel_avx512",
}
# Bytes of the stripped shared object, with little room above what it holds, so that growth is noticed: raise it knowingly.
LARGEST = 384 * 1024
# Weak references of the C start files.
START_FILES = {"__gmon_start__", "__cxa_finalize", "_ITM_deregisterTMCloneTable", "_ITM_registerTMCloneTable"}


def run(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True, env={**os.environ, "LC_ALL": "C"}).stdout


def header_functions(header):
    text = re.sub(r"/\*.*?\*/", "", open(header).read(), flags=re.S)
    return set(re.findall(r"LVB_API[^;(]*?\b(lvb_[a-z0-9_]+)\(", text))


def symbols(library, *options):
    """(name, type) of each line of nm that names a symbol."""
    found = []
    for line in run("nm", *options, library).splitlines():
        match = re.match(r"^(?:[0-9a-f]+)?\s+([A-Za-z])\s+(\S+)$", line)
        if match:
            found.append((match[2].split("@")[0], match[1]))
    return found


def members(archive):
    """(member, symbols) of each object of an archive: (name, type) of every symbol."""
    found = []
    for line in run("nm", archive).splitlines():
        if line.endswith(":"):
            found.append((line[:-1], []))
        match = re.match(r"^(?:[0-9a-f]+)?\s+([A-Za-z])\s+(\S+)$", line)
        if match and found:
            found[-1][1].append((match[2], match[1]))
    return found


def check_kernels(archive):
    """What was compiled for an instruction set belongs to it alone: a function that a linker could take for everyone's
    would run where that instruction set is missing. And no other object holds such instructions."""
    faults = []
    for member, every in members(archive):
        own = next((space for name, space in KERNELS.items() if member.startswith(name + ".")), None)
        if own is None:
            continue
        for name, kind in every:
            if kind in "Uwv":
                if name not in MEMORY | {"_GLOBAL_OFFSET_TABLE_"}:
                    faults.append(f"{member} calls {name}: out of its kernel")
            elif own not in name and not name.startswith(".L"):
                faults.append(f"{member} defines {name} ({kind}): out of its kernel")
    member = ""
    for line in run("objdump", "-d", "--no-show-raw-insn", archive).splitlines():
        match = re.match(r"^(\S+):\s+file format", line)
        if match:
            member = match[1]
        wide = re.search(r"%[yz]mm\d|%k[0-7]\b", line)
        allowed = next((name for name in KERNELS if member.startswith(name + ".")), None)
        if wide and (allowed is None or (allowed.endswith("_avx2") and wide[0][1] != "y")):
            faults.append(f"{member} holds wide instructions: {' '.join(line.split())}")
            member = "loops_avx512."  # once is enough
    return faults


def check_size(library, strip):
    with tempfile.TemporaryDirectory() as folder:
        stripped = os.path.join(folder, "stripped")
        run(strip, "-o", stripped, library)
        size = os.path.getsize(stripped)
    return [] if size < LARGEST else [f"size: {size} bytes stripped, {LARGEST} are too many"]


def sections(library):
    """(name, size, flags) of each section of every member."""
    found = []
    for line in run("readelf", "-SW", library).splitlines():
        match = re.match(r"^\s*\[\s*\d+\]\s+(\S+)\s+\S+\s+[0-9a-f]+\s+[0-9a-f]+\s+([0-9a-f]+)\s+[0-9a-f]+\s+([A-Zxop]*)\s", line)
        if match:
            found.append((match[1], int(match[2], 16), match[3]))
    return found


def stack_is_executable(library):
    lines = [line for line in run("readelf", "-lW", library).splitlines() if "GNU_STACK" in line]
    return not lines or any("E" in line.split()[6] for line in lines)


def check_shared(library, functions, soname):
    faults = []
    dynamic = run("readelf", "-dW", library)
    needed = set(re.findall(r"\(NEEDED\).*\[(.*)\]", dynamic))
    if not needed <= NEEDED:
        faults.append(f"needs {sorted(needed - NEEDED)}")
    names = re.findall(r"\(SONAME\).*\[(.*)\]", dynamic)
    if names != [soname]:
        faults.append(f"soname {names}, not {soname}")
    if re.search(r"\((TEXTREL|RPATH|RUNPATH)\)", dynamic):
        faults.append("has text relocations or a run path")
    exported = {name for name, kind in symbols(library, "-D", "--defined-only") if kind != "A"}
    if exported != functions:
        faults.append(f"exports {sorted(exported - functions)} too much, {sorted(functions - exported)} too little")
    undefined = symbols(library, "-D", "--undefined-only")
    strong = {name for name, kind in undefined if kind == "U"} - MEMORY
    weak = {name for name, kind in undefined if kind in "wv"} - START_FILES
    if strong or weak:
        faults.append(f"imports {sorted(strong | weak)}")
    # the start files' own frame_dummy is the one entry of .init_array
    for name, size, _ in sections(library):
        if (name == ".init_array" and size > 8) or name.startswith((".ctors", ".preinit_array", ".tdata", ".tbss")):
            faults.append(f"section {name} of {size} bytes")
    if stack_is_executable(library):
        faults.append("asks for an executable stack")
    return faults


def check_archive(archive, functions):
    faults = []
    every = symbols(archive)
    defined = {name for name, kind in every if kind not in "Uwv"}
    undefined = {name for name, kind in every if kind in "Uwv"} - defined - MEMORY - {"_GLOBAL_OFFSET_TABLE_"}
    if undefined:
        faults.append(f"imports {sorted(undefined)}")
    public = {name for name, kind in every if kind == "T" and not name.startswith("_Z")}
    if public != functions:
        faults.append(f"defines {sorted(public - functions)} too much, {sorted(functions - public)} too little")
    foreign = {name for name, kind in every if kind in "TDBRVWuC" and name.startswith("_Z") and "3lvb" not in name}
    if foreign:
        faults.append(f"defines outside its own namespace {sorted(foreign)}")
    for name, size, flags in sections(archive):
        if size == 0:
            continue
        if name.startswith((".init_array", ".ctors", ".fini_array", ".dtors", ".preinit_array")):
            faults.append(f"section {name}: static initializers")
        # data that needs only relocation is constant once loaded
        if "W" in flags and not name.startswith(".data.rel.ro"):
            faults.append(f"section {name} of {size} bytes: writable data")
    stacks = [flags for name, _, flags in sections(archive) if name == ".note.GNU-stack"]
    if not stacks or any("X" in flags for flags in stacks):
        faults.append("asks for an executable stack")
    return faults + check_kernels(archive)


# Each source is sound but for one thing; the word must appear in what the checks say.
SOUND = "double lvb_one(double x) { return x; }\n"
DEFECTS = {
    "imports": "#include <stdlib.h>\n" + SOUND + "void *lvb_hide(void); __attribute__((visibility(\"hidden\"))) "
               "void *lvb_hide(void) { return malloc(3); }\n",
    "too much": SOUND + "double lvb_two(double x) { return x; }\n",
    "too little": "static double lvb_one(double x) { return x; }\ndouble (*const lvb_keep)(double) = lvb_one;\n",
    "init": SOUND + "static volatile int n; __attribute__((constructor)) static void start(void) { n = 1; }\n",
    "writable": SOUND + "static int counter = 3; __attribute__((visibility(\"hidden\"))) int *lvb_count(void) "
                "{ ++counter; return &counter; }\n",
    "executable": SOUND,
    "needs": SOUND,
    "log10": "#include <math.h>\ndouble lvb_one(double x) { return log10(x); }\n",
    "soname": SOUND,
}
ONLY_SHARED = {"needs", "soname"}
ONLY_ARCHIVE = {"writable"}


# Of objects that are compiled for an instruction set: an inline function that is not the kernel's own, a function of
# others called, and such instructions in an ordinary object.
KERNEL_DEFECTS = {
    "defines _ZN3lvb6sharedEd": ("loops_avx2.cpp.o", "namespace lvb { inline double shared(double x) { return x + 1; } }\n"
                                 "namespace lvb::kernel_avx2 { extern double (*const f)(double); double (*const f)(double) = lvb::shared; }\n"),
    "calls log": ("loops_avx512.cpp.o", "extern \"C\" double log(double); namespace lvb::kernel_avx512 { double f(double x) { return log(x); } }\n"),
    "defines lvb_leak": ("loops_avx512.cpp.o", "extern \"C\" double lvb_leak(double x) { return x; }\n"),
    "wide instructions": ("other.cpp.o", "namespace lvb { void f(double *y) { for (int i = 0; i < 64; ++i) y[i] += 1.5; } }\n"),
}


def selfcheck_kernels(cc, folder):
    if os.uname().machine != "x86_64":
        return 0
    failures = 0
    for word, (member, source) in KERNEL_DEFECTS.items():
        cpp, o, a = (os.path.join(folder, name) for name in ("kernel.cpp", member, "kernel.a"))
        with open(cpp, "w") as file:
            file.write(source)
        if os.path.exists(a):
            os.remove(a)
        run(cc, "-x", "c++", "-std=c++20", "-O3", "-mavx2", "-fno-inline", "-fPIC", "-c", cpp, "-o", o)
        run("ar", "rcs", a, o)
        faults = check_kernels(a)
        if not any(word in fault for fault in faults):
            print(f"a seeded defect passes: {word}: {faults}")
            failures += 1
    return failures


def selfcheck_size(cc, strip, folder):
    c, so = os.path.join(folder, "big.c"), os.path.join(folder, "big.so")
    with open(c, "w") as file:
        file.write(f"const char lvb_big[{LARGEST}] = {{1}};\n")
    run(cc, "-shared", "-fPIC", c, "-o", so)
    if not any("size" in fault for fault in check_size(so, strip)):
        print("a large library passes")
        return 1
    return 0


def selfcheck(cc, strip):
    failures = 0
    with tempfile.TemporaryDirectory() as folder:
        def build(source, extra=(), soname="libone.so.0", link=()):
            c, o, so, a = (os.path.join(folder, "one" + end) for end in (".c", ".o", ".so", ".a"))
            with open(c, "w") as file:
                file.write(source)
            if os.path.exists(a):
                os.remove(a)
            run(cc, "-O1", "-fPIC", *extra, "-c", c, "-o", o)
            run(cc, "-shared", "-Wl,-soname," + soname, *link, o, "-o", so)
            run("ar", "rcs", a, o)
            return check_shared(so, {"lvb_one"}, "libone.so.0"), check_archive(a, {"lvb_one"})

        if build(SOUND) != ([], []):
            print("the sound library is refused:", build(SOUND))
            failures += 1
        for word, source in DEFECTS.items():
            extra, link, soname = (), (), "libone.so.0"
            if word == "executable":
                extra, link = ("-Wa,--execstack",), ("-Wl,-z,execstack",)
                if "clang" in run(cc, "--version"):
                    extra += ("-fno-integrated-as",)
            if word == "needs":
                link = ("-Wl,--no-as-needed", "-lpthread", "-ldl", "-l:libstdc++.so.6")
            if word == "log10":
                link = ("-lm",)
            if word == "soname":
                soname = "libother.so"
            shared, archive = build(source, extra, soname, link)
            for kind, faults, wanted in (("shared", shared, word not in ONLY_ARCHIVE),
                                         ("archive", archive, word not in ONLY_SHARED)):
                if wanted and not any(word in fault for fault in faults):
                    print(f"a seeded defect passes: {word}, {kind}: {faults}")
                    failures += 1
        failures += selfcheck_kernels(cc, folder) + selfcheck_size(cc, strip, folder)
    return failures


def main():
    if sys.argv[1] == "selfcheck":
        return selfcheck(sys.argv[2], sys.argv[3])
    if sys.argv[1] == "size":
        faults = check_size(sys.argv[2], sys.argv[3])
        print("\n".join(faults))
        return len(faults)
    functions = header_functions(sys.argv[3])
    if len(functions) < 90:
        print(f"only {len(functions)} functions read from the header")
        return 1
    faults = check_shared(sys.argv[2], functions, sys.argv[4]) if sys.argv[1] == "shared" else check_archive(sys.argv[2], functions)
    for fault in faults:
        print(sys.argv[2], fault)
    return len(faults)


if __name__ == "__main__":
    sys.exit(1 if main() else 0)
