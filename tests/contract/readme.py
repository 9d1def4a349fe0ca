"""What README.md shows is what is there: the programs, what they print, and every path.

  readme.py check ROOT BUILD PROGRAM              PROGRAM is the built first program
  readme.py run ROOT BUILD COMPILER [PYTHON]      compiles and runs what is shown, as a reader would; PYTHON has cffi and NumPy
  readme.py check-selfcheck, run-selfcheck ...    show on seeded defects that each check can fail
"""
import os
import re
import subprocess
import sys
import tempfile

FIRST = "examples/first_budget/first_budget.c"


def blocks(text):
    """(language, content) of every block of code: fenced, or indented by four blanks."""
    fenced = re.findall(r"^```(\w*)\n(.*?)^```$", text, flags=re.M | re.S)
    rest = re.sub(r"^```\w*\n.*?^```$", "", text, flags=re.M | re.S)
    return fenced + [("", match[0]) for match in re.finditer(r"(?:^ {4}\S.*\n)+", rest, flags=re.M)]


def shown_output(text):
    shown = re.search(re.escape(FIRST) + r".*\n\nprints\n\n```\n(.*?)^```$", text, flags=re.M | re.S)
    return shown and shown[1]


def check(text, root, build, program):
    faults = []
    found = blocks(text)
    programs = [content for language, content in found if language == "c" and content.startswith("#include")]
    if programs != [open(os.path.join(root, FIRST)).read()]:
        faults.append(f"the program is not {FIRST}")
    printed = subprocess.run([program], check=True, capture_output=True, text=True).stdout
    if shown_output(text) != printed:
        faults.append(f"the first program prints\n{printed}")
    paths = {word for _, content in found for word in re.findall(r"(?<![\w./-])(?:[\w.-]+/)+[\w.-]*", content)}
    paths |= set(re.findall(r"\]\(([^):#]+)\)", text)) | set(re.findall(r"`(build/[^` ]+)`", text))
    paths -= {path for path in paths if path.startswith(("levelbook/", "./"))}  # what is installed, and what a block makes
    if len(paths) < 10:
        faults.append(f"only the paths {sorted(paths)} were read")
    for path in sorted(paths):
        place = os.path.join(build, path[len("build/"):]) if path.startswith("build/") else os.path.join(root, path)
        if not os.path.exists(place):
            faults.append(f"there is no {path}")
    return faults


def run(text, root, build, compiler, python=None):
    """Runs the lines that begin with cc, the pieces of C in a main of their own, and all of the Python as one program."""
    faults = []
    with tempfile.TemporaryDirectory() as place:
        for name, target in ("build", build), ("include", f"{root}/include"), ("examples", f"{root}/examples"):
            os.symlink(os.path.abspath(target), os.path.join(place, name))

        def must_print(what, expected, command, **more):
            done = subprocess.run(command, cwd=place, capture_output=True, text=True, **more)
            if done.returncode != 0 or not expected or done.stdout != expected:
                faults.append(f"{what} should print\n{expected}and prints\n{done.stdout}{done.stderr}")

        def comments(content):
            return "".join(line + "\n" for line in re.findall(r"^(?:/\*|#) prints (.*?)(?: \*/)?$", content, flags=re.M))

        lines = [line for _, content in blocks(text) for line in content.splitlines() if FIRST in line]
        if len(lines) != 1 or not lines[0].strip().startswith("cc "):
            return [f"there is not one line that compiles {FIRST}, but {lines}"]
        line = compiler + lines[0].strip()[len("cc"):]
        must_print("the line that compiles", shown_output(text), line, shell=True)
        pieces = [content for language, content in blocks(text) if language == "c" and not content.startswith("#include")]
        for content in pieces:
            with open(os.path.join(place, "piece.c"), "w") as file:
                file.write("#include <levelbook/levelbook.h>\n#include <stdio.h>\n"
                           f"int main(void) {{\n{content}return 0;\n}}\n")
            strict = line.replace(FIRST, "-pedantic -Wall -Wextra -Werror piece.c")
            must_print(f"the piece of C\n{content}", comments(content), strict, shell=True)
        scripts = [content for language, content in blocks(text) if language == "python"]
        if python:
            must_print("the Python", "".join(map(comments, scripts)), [python, "-c", "".join(scripts)])
        if not pieces or not scripts:
            faults.append("the README shows no piece of C, or no Python")
    return faults


DEFECTS = {  # text, what it becomes, what the check must say
    check: [
        ("lvb_dbm_from_mw(30.0)", "lvb_dbm_from_mw(31.0)", "the program is not"),
        ("far:  -", "far:  +", "the first program prints"),
        ("sh cmake/bootstrap.sh demo", "sh cmake/boot.sh demo", "there is no cmake/boot.sh"),
        ("build/bin/levelbook-desk convert", "build/bin/levelbook-book convert", "there is no build/bin/levelbook-book"),
        ("](LICENSE)", "](COPYING)", "there is no COPYING"),
    ],
    run: [
        ("build/lib/liblevelbook.a", "out/lib/liblevelbook.a", "the line that compiles should print"),
        ("/* prints 60.05", "/* prints 60.06", "the piece of C"),
        ("sizeof bad}", "sizeof bads}", "the piece of C"),
        ("# prints 49.73", "# prints 49.74", "the Python should print"),
        ("# prints 60.05", "# prints 60.06", "the Python should print"),
        ("ffi.cdef(header)", "ffi.cdef(head)", "the Python should print"),
    ],
}


def selfcheck(checks, text, *arguments):
    faults = []
    for sound, broken, said in DEFECTS[checks]:
        if said.startswith("the Python") and len(arguments) < 4:
            continue  # there is none to run it
        if sound not in text:
            faults.append(f"the text to seed a defect in is gone: {sound}")
        elif not any(said in fault for fault in checks(text.replace(sound, broken), *arguments)):
            faults.append(f"a seeded defect passes: {broken}")
    return faults


def main():
    command, root, *arguments = sys.argv[1:]
    text = open(os.path.join(root, "README.md")).read()
    checks = {"check": check, "run": run}[command.split("-")[0]]
    faults = selfcheck(checks, text, root, *arguments) if command.endswith("-selfcheck") else checks(text, root, *arguments)
    print("\n".join(faults))
    return len(faults)


if __name__ == "__main__":
    sys.exit(1 if main() else 0)
