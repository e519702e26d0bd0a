#!/usr/bin/env python3
"""Mutation testing of the modeller: do the tests fail when a line of it is wrong?

    mutants.py draw SEED COUNT             prints COUNT mutants drawn over findings, plan, lift, inlay and polygon
    mutants.py run LIST BUILD [FIRST COUNT] makes each mutant of LIST, builds and runs the tests that could notice it

A mutant is one line of LIST: file:line | what stands there | what stands there instead | why it cannot be noticed (only
for those that change nothing that can be measured). `run` works on the checkout that it lies in: use a scratch clone with
a build folder of its own. One process makes all of them, one after the other; a file is always put back. It prints a line
a mutant (killed by which test, or SURVIVED), then how many survived, and ends with 0 only if none did that is not
explained in LIST.
"""

import pathlib
import random
import re
import resource
import signal
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
BOXES = ["findings", "plan", "lift", "inlay", "polygon"]
# Quick tests first: a mutant is killed by the first that fails.
TESTS = {
    "findings": ["findings", "lift"],
    "plan": ["plan", "lift", "findings", "mesh", "solid"],
    "lift": ["lift", "mesh", "findings", "solid"],
    "inlay": ["inlay", "findings", "plan", "solid"],
    "polygon": ["polygon", "inlay", "findings", "plan", "solid"],
    "layout": ["layout", "findings", "solid"],
    "surface": ["surface", "findings", "solid"],
}
LIMIT = {"inlay": ["--gtest_filter=-Figure.IsQuick*:Figure.AnswersACancel*"]}

# What is put in place of what. Each changes what the line computes, not only how it looks.
SWAPS = [
    (r"std::min\(", "std::max("),
    (r"std::max\(", "std::min("),
    (r" \+ ", " - "),
    (r" - ", " + "),
    (r" \* ", " / "),
    (r" / ", " * "),
    (r" && ", " || "),
    (r" \|\| ", " && "),
    (r" < ", " > "),
    (r" > ", " < "),
    (r"\bif \((?!const|auto|constexpr)", "if (!!!("),  # the whole condition is negated below
    (r"\.front\(\)", ".back()"),
    (r"\bcontinue;", ";"),
    (r"\breturn true;", "return false;"),
    (r"\breturn false;", "return true;"),
]


def code_lines(path):
    """Numbers and texts of the lines that hold code and no comment, include, template or message."""
    for number, text in enumerate(path.read_text().splitlines(), 1):
        bare = text.strip()
        if bare.startswith(("//", "#", "template", "using", "static_assert", "case")) or '"' in bare or "//" in bare:
            continue
        yield number, text


def negated(text):
    """`if (condition) rest` with the condition negated; None where it goes on in the next line."""
    start = text.index("if (") + 3
    depth = 0
    for i in range(start, len(text)):
        depth += {"(": 1, ")": -1}.get(text[i], 0)
        if depth == 0:
            return f"{text[:start]}(!{text[start:i + 1]}){text[i + 1:]}"
    return None


def sites(path):
    for number, text in code_lines(path):
        for pattern, instead in SWAPS:
            for match in re.finditer(pattern, text):
                if instead == "if (!!!(":
                    changed = negated(text)
                else:
                    changed = text[: match.start()] + instead + text[match.end() :]
                if changed:
                    yield number, text.strip(), changed.strip()


def draw(seed, count):
    every = []
    for box in BOXES:
        for path in sorted((ROOT / "modeler" / box).rglob("*.cpp")):
            every += [(path.relative_to(ROOT), *site) for site in sites(path)]
    for path, number, text, changed in random.Random(seed).sample(every, count):
        print(f"{path}:{number} | {text} | {changed}")


def read_list(path):
    for line in pathlib.Path(path).read_text().splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        place, text, changed, *why = (part.strip() for part in line.split(" | "))
        file, number = place.rsplit(":", 1)
        yield file, int(number), text, changed, why[0] if why else ""


def put(path, number, text, changed):
    """The line that holds `text`, at `number` or nearest to it, with `changed` in its place."""
    lines = path.read_text().splitlines(keepends=True)
    found = [i for i, line in enumerate(lines) if line.strip() == text]
    if not found:
        raise SystemExit(f"{path}: no line is \"{text}\" any more: draw this mutant again")
    i = min(found, key=lambda i: abs(i + 1 - number))
    lines[i] = lines[i].replace(text, changed)
    path.write_text("".join(lines))


def with_little_time():
    """A suite's processor time, however busy the machine is, s: those that a mutant never lets end are stopped."""
    resource.setrlimit(resource.RLIMIT_CPU, (600, 610))


def killed_by(box, build):
    """The first suite that fails to build or run; None when all pass."""
    for suite in TESTS[box]:
        made = subprocess.run(["ninja", "-C", build, "test_" + suite], capture_output=True, text=True)
        if made.returncode:
            return "the compiler"
        command = [f"{build}/bin/test_{suite}", "--gtest_brief=1", "--gtest_fail_fast=1", *LIMIT.get(suite, [])]
        ran = subprocess.run(
            command, capture_output=True, text=True, cwd=build, errors="replace", preexec_fn=with_little_time
        )
        if ran.returncode == -signal.SIGXCPU:
            return f"{suite}: no end"
        if ran.returncode:
            failed = re.search(r"\[  FAILED  \] ([^\s,]+)", ran.stdout)
            return f"{suite}: {failed.group(1) if failed else 'it crashed'}"
    return None


def run(mutants, build):
    survived, explained = [], 0
    for file, number, text, changed, why in mutants:
        path = ROOT / file
        before = path.read_text()
        try:
            put(path, number, text, changed)
            killer = killed_by(pathlib.Path(file).parts[1], build)
        finally:
            path.write_text(before)
        verdict = f"killed by {killer}" if killer else f"SURVIVED{': ' + why if why else ''}"
        print(f"{file}:{number} | {text} | {changed} | {verdict}", flush=True)
        if not killer:
            explained += bool(why)
            survived += [] if why else [f"{file}:{number}"]
    print(f"{len(mutants)} mutants: {len(survived)} survived, {explained} more change nothing that can be measured")
    return 1 if survived else 0


if __name__ == "__main__":
    if sys.argv[1:2] == ["draw"] and len(sys.argv) == 4:
        draw(int(sys.argv[2]), int(sys.argv[3]))
    elif sys.argv[1:2] == ["run"] and len(sys.argv) in (4, 6):
        every = list(read_list(sys.argv[2]))
        first, count = (int(a) for a in sys.argv[4:6]) if len(sys.argv) == 6 else (0, len(every))
        sys.exit(run(every[first : first + count], str(pathlib.Path(sys.argv[3]).resolve())))
    else:
        sys.exit(__doc__)
