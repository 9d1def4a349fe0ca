"""What README.md shows is what is there: the first program, what it prints, and every path.

  readme.py check ROOT BUILD PROGRAM        PROGRAM is the built first program
  readme.py selfcheck ROOT BUILD PROGRAM    shows on seeded defects that each check can fail
"""
import os
import re
import subprocess
import sys

FIRST = "examples/first_budget/first_budget.c"


def blocks(text):
    """(language, content) of every block of code: fenced, or indented by four blanks."""
    fenced = re.findall(r"^```(\w*)\n(.*?)^```$", text, flags=re.M | re.S)
    rest = re.sub(r"^```\w*\n.*?^```$", "", text, flags=re.M | re.S)
    return fenced + [("", match[0]) for match in re.finditer(r"(?:^ {4}\S.*\n)+", rest, flags=re.M)]


def check(text, root, build, program):
    faults = []
    found = blocks(text)
    programs = [content for language, content in found if language == "c"]
    if programs != [open(os.path.join(root, FIRST)).read()]:
        faults.append(f"the program is not {FIRST}")
    shown = re.search(re.escape(FIRST) + r".*\n\nprints\n\n```\n(.*?)^```$", text, flags=re.M | re.S)
    printed = subprocess.run([program], check=True, capture_output=True, text=True).stdout
    if shown is None or shown[1] != printed:
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


DEFECTS = [  # text, what it becomes, what the check must say
    ("lvb_dbm_from_mw(30.0)", "lvb_dbm_from_mw(31.0)", "the program is not"),
    ("far:  -", "far:  +", "the first program prints"),
    ("sh cmake/bootstrap.sh demo", "sh cmake/boot.sh demo", "there is no cmake/boot.sh"),
    ("build/bin/levelbook-desk convert", "build/bin/levelbook-book convert", "there is no build/bin/levelbook-book"),
    ("](LICENSE)", "](COPYING)", "there is no COPYING"),
]


def main():
    command, root, build, program = sys.argv[1:]
    text = open(os.path.join(root, "README.md")).read()
    if command == "check":
        faults = check(text, root, build, program)
    else:
        faults = []
        for sound, broken, said in DEFECTS:
            if sound not in text:
                faults.append(f"the text to seed a defect in is gone: {sound}")
            elif not any(said in fault for fault in check(text.replace(sound, broken), root, build, program)):
                faults.append(f"a seeded defect passes: {broken}")
    print("\n".join(faults))
    return len(faults)


if __name__ == "__main__":
    sys.exit(1 if main() else 0)
