"""The order of the house, read from the sources under lib/ and from the header.

  house.py check ROOT        arrows, forbidden words, comments of the header
  house.py selfcheck ROOT    shows on seeded defects in a copy that each check can fail
"""
import os
import re
import shutil
import sys
import tempfile

# An arrow points from a folder to one further down; folders on one line do not know each other.
FLOORS = [["door"], ["decide"], ["map"], ["chain"], ["coexistence"],
          ["cable", "antenna", "body", "path", "fading", "noise", "limits"], ["tables"],
          ["units"], ["math"]]
FLOOR = {folder: floor for floor, folders in enumerate(FLOORS) for folder in folders}
# The catalogue holds tables in the form that the cable model takes; it is read by the door only.
ALLOWED_UP = {("tables", "cable/attenuation.hpp")}
READ_TABLES = {"door", "tables"}

FORBIDDEN = {
    "allocation": r"\b(malloc|calloc|realloc|free|strdup|alloca)\s*\(|\bnew\b(?!\w)|\bdelete\b(?!\s*;)",
    "printing": r"\b(printf|fprintf|sprintf|snprintf|puts|fputs|fopen|cout|cerr|iostream|cstdio|stdio\.h)\b",
    "locale": r"\b(setlocale|localeconv|locale\.h|clocale|strtod|strtof|atof|std::locale)\b",
    "state": r"\bthread_local\b|\bstatic\s+(?!constexpr\b|inline\b|const\b|_?[Aa]ssert|void\b|bool\b|double\b[^;=]*\()[\w:<>]+[^;(]*[;=]",
    "errno, signals, exit": r"\b(errno|signal|abort|exit|longjmp|raise)\s*[(=]|\bcerrno\b",
    "exceptions": r"\b(throw|catch|dynamic_cast|typeid)\b|\btry\s*\{",
    "fast mathematics": r"fast-math|ffast|FP_CONTRACT|STDC FENV|float_control|#pragma\s+(GCC|clang)\s+optimize|optimize\s*\(",
}


def without_comments(text):
    return re.sub(r'"(?:\\.|[^"\\])*"|//[^\n]*|/\*.*?\*/', lambda m: m[0] if m[0][0] == '"' else "", text, flags=re.S)


def without_strings(text):
    return re.sub(r'"(?:\\.|[^"\\])*"', '""', text)


def sources(root):
    for folder, _, files in os.walk(os.path.join(root, "lib")):
        for name in sorted(files):
            if name.endswith((".hpp", ".cpp", ".h")):
                yield os.path.join(folder, name)


def check_arrows(root):
    faults = []
    for path in sources(root):
        inside = os.path.relpath(path, os.path.join(root, "lib"))
        home = inside.split(os.sep)[0]
        if home not in FLOOR:
            faults.append(f"arrow: {inside} stands in no known folder")
            continue
        for kind, name in re.findall(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', without_comments(open(path).read()), flags=re.M):
            if name.startswith(("levelbook/", "levelbook_")):  # the latter are derived from it at build time
                if home != "door":
                    faults.append(f"arrow: {inside} includes the public header")
                continue
            if kind == "<":
                if "/" in name:
                    faults.append(f"arrow: {inside} includes <{name}>")
                continue
            target = name.split("/")[0]
            if target not in FLOOR:
                faults.append(f"arrow: {inside} includes {name}, which is in no known folder")
            elif target == "tables" and home not in READ_TABLES:
                faults.append(f"arrow: {inside} reads the catalogue {name}")
            elif target != home and FLOOR[target] <= FLOOR[home] and (home, name) not in ALLOWED_UP:
                faults.append(f"arrow: {inside} points up or sideways to {name}")
    return faults


def check_words(root):
    faults = []
    for path in sources(root):
        text = without_strings(without_comments(open(path).read()))
        inside = os.path.relpath(path, root)
        for what, pattern in FORBIDDEN.items():
            for match in re.finditer(pattern, text):
                line = text[: match.start()].count("\n") + 1
                faults.append(f"word: {inside}, about line {line}: {what}: {match[0].strip()[:60]}")
        if inside.startswith(os.path.join("lib", "door")) and re.search(r"^double .*std::", text, flags=re.M):
            faults.append(f"word: {inside}: a model in the door")
    return faults


def functions(root):
    """(name, returns, arguments, comment) of each function of the header."""
    text = open(os.path.join(root, "include/levelbook/levelbook.h")).read()
    found = []
    for match in re.finditer(r"(/\*\*(?:(?!\*/).)*\*/)?\s*\nLVB_API ([^;(]*?)\b(lvb_[a-z0-9_]+)\(([^;]*)\);", text, flags=re.S):
        found.append((match[3], match[2].strip(), " ".join(match[4].split()), " ".join((match[1] or "").replace("\n *", " ").split())))
    if len(found) != text.count("\nLVB_API "):
        raise SystemExit("house.py cannot read every function of the header")
    return found


def check_comments(root):
    faults = []
    for name, returns, arguments, comment in functions(root):
        wanted = ["Since: "]
        plain = returns == "double"
        if plain:
            wanted += ["Formula: ", "Source: ", "Range: ", "Refused: ", "Accuracy: "]
        if returns == "lvb_status":
            wanted += ["Refused: "]
        if name in ("lvb_compute_columns", "lvb_compute_grid", "lvb_compute_noise"):
            wanted += ["Accuracy: ", "Cost: "]
        told_elsewhere = name in ("lvb_compute_columns", "lvb_compute_grid") or name.endswith("_scratch")
        if name.startswith(("lvb_compute_", "lvb_check_")) and not told_elsewhere:
            wanted += ["Formula: ", "Source: ", "Range: ", "Accuracy: "]
        for word in wanted:
            if word not in comment:
                faults.append(f"comment: {name} lacks '{word.strip()}'")
        if plain:
            ranges = re.search(r"Range: (.*?)\. Refused:", comment)
            named = re.findall(r"([a-z0-9_]+) [\[(]", ranges[1]) if ranges else []
            taken = re.findall(r"double ([a-z0-9_]+)", arguments)
            if named != taken:
                faults.append(f"comment: {name} tells the range of {named}, but takes {taken}")
    return faults


def check(root):
    return check_arrows(root) + check_words(root) + check_comments(root)


HEADER = "include/levelbook/levelbook.h"
# file, what is put before its first line of code (or what is replaced by what), and what the check must say
DEFECTS = [
    ("lib/math/elementary.hpp", '#include "units/power.hpp"\n', "arrow: math/elementary.hpp points up"),
    ("lib/path/free_space.hpp", '#include "noise/thermal.hpp"\n', "points up or sideways"),
    ("lib/cable/attenuation.cpp", '#include "tables/cables.hpp"\n', "reads the catalogue"),
    ("lib/chain/ledger.hpp", "#include <levelbook/levelbook.h>\n", "includes the public header"),
    ("lib/tables/cables.cpp", '#include "chain/ledger.hpp"\n', "points up or sideways"),
    ("lib/units/power.hpp", "inline void *leak() { return malloc(1); }\n", "allocation"),
    ("lib/units/power.hpp", "inline int *leak() { return new int; }\n", "allocation"),
    ("lib/chain/ledger.cpp", "static int calls = 0;\n", "state"),
    ("lib/chain/ledger.cpp", "thread_local int calls;\n", "state"),
    ("lib/door/fault_text.cpp", "#include <cstdio>\n", "printing"),
    ("lib/door/fault_text.cpp", 'inline void f() { setlocale(0, ""); }\n', "locale"),
    ("lib/math/elementary.hpp", '#pragma GCC optimize("fast-math")\n', "fast mathematics"),
    (HEADER, (" *  Accuracy: 0.9 ULP. Since: 0.1. */\nLVB_API double lvb_mw_from_dbm", " */\nLVB_API double lvb_mw_from_dbm"),
     "lvb_mw_from_dbm lacks 'Accuracy:'"),
    (HEADER, (" *  Accuracy: 1e-12 dB for each stage of the stated formulas. Cost: as lvb_compute_budget. Since: 0.1. */\nLVB_API lvb_status lvb_check_limit",
              " *  Cost: as lvb_compute_budget. Since: 0.1. */\nLVB_API lvb_status lvb_check_limit"),
     "lvb_check_limit lacks 'Accuracy:'"),
    (HEADER, ("Range: frequency_mhz (0, inf), distance_m (0, inf).", "Range: frequency_mhz (0, inf), range_m (0, inf)."),
     "lvb_free_space_loss_db tells the range"),
]


def selfcheck(root):
    failures = 0
    with tempfile.TemporaryDirectory() as folder:
        for name in ("lib", "include"):
            shutil.copytree(os.path.join(root, name), os.path.join(folder, name))
        for path, change, said in DEFECTS:
            file = os.path.join(folder, path)
            sound = open(file).read()
            if isinstance(change, tuple):
                if change[0] not in sound:
                    print("the text to seed a defect in is gone:", change[0])
                    failures += 1
                bad = sound.replace(change[0], change[1], 1)
            else:
                bad = change + sound
            open(file, "w").write(bad)
            faults = check(folder)
            open(file, "w").write(sound)
            if not any(said in fault for fault in faults):
                print(f"a seeded defect passes: {path}: {said}: {faults}")
                failures += 1
    return failures


def main():
    if sys.argv[1] == "selfcheck":
        return selfcheck(sys.argv[2])
    faults = check(sys.argv[2])
    for fault in faults:
        print(fault)
    return len(faults)


if __name__ == "__main__":
    sys.exit(1 if main() else 0)
