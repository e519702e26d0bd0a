#!/usr/bin/env python3
"""Runs the commands of the pages' code blocks, and compares what they print with what stands there.

    tests/export/program/pages.py BUILD-FOLDER

A block ```console holds commands, `$ ..`, each with what it prints. A line `...` stands for any lines, and `...` in a line
for any part of it. The blocks of a page are run one after the other in one folder. A command ends with 0, unless
the line `<!-- ends with N -->` stands above its block; what a reader does by hand between two blocks stands there as
`<!-- by hand: COMMAND -->`. In a block ```sh the last command of a line is run where it is one of our programs', and prints
what it likes; the rest of it builds and installs. Commands within running text must name a command and options that exist.
"""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

top = pathlib.Path(__file__).resolve().parents[3]
build = pathlib.Path(sys.argv[1]).resolve()
pages = [top / "README.md"] + sorted(
    page for part in ("modeler", "export", "viewer", "presets") for page in (top / part).rglob("*.md"))
known_blocks = {"console", "sh", "toml", "make", "text"}
faults, ran, spoken = [], 0, 0


def shell(command, folder):
    environment = {**os.environ, "PATH": f"{build / 'bin'}:{os.environ['PATH']}", "NO_COLOR": "1"}
    return subprocess.run(["bash", "-c", command], cwd=folder, env=environment, text=True, timeout=300,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT)


def matches(told, printed):
    """Whether the lines printed are those told, `...` standing for any."""
    pattern = ""
    for line in told:
        if line == "...":
            pattern += r"(?:.*\n)*"
        else:
            pattern += ".*".join(map(re.escape, line.split("..."))) + r"\n"
    return re.fullmatch(pattern, printed) is not None


def run_console(place, lines, folder, code):
    global ran
    told = []
    for line in lines:
        if line.startswith("$ "):
            told.append((line[2:], []))
        elif told:
            told[-1][1].append(line)
        else:
            faults.append(f"{place}: a block of commands begins with one: $ ..")
    for i, (command, output) in enumerate(told):
        result = shell(command, folder)
        ran += 1
        wanted = code if i == len(told) - 1 else 0
        if result.returncode != wanted:
            faults.append(f"{place}: $ {command}\n    ends with {result.returncode}: {result.stdout[:400]}")
        elif not matches(output, result.stdout):
            faults.append(f"{place}: $ {command}\n    prints:\n{result.stdout[:1500]}")


def run_sh(place, lines, folder):
    """Our own programs' part; what only builds is CI's to run."""
    global ran
    for line in lines:
        last = line.split(" && ")[-1]
        program = re.match(r"build/bin/(sagitta|sagitta-viewer) ", last)
        if program is None and not re.match(r"(cmake|ctest|apt|sudo|dpkg|tar|\.ci/)", last):
            faults.append(f"{place}: nobody runs: {line}")
        if program is None or (program[1] == "sagitta-viewer" and "--shot" not in last):
            continue
        result = shell(last, folder)
        ran += 1
        if result.returncode != 0:
            faults.append(f"{place}: {last}\n    ends with {result.returncode}: {result.stdout[:400]}")


helps = {}


def help_of(words):
    if words not in helps:
        result = shell(" ".join(words) + " --help", top)
        helps[words] = result.stdout if result.returncode == 0 else None
    return helps[words]


def judge_spoken(place, line):
    """Commands in running text: `sagitta check --before slots`."""
    global spoken
    for code in re.findall(r"`((?:sagitta|sagitta-viewer) [^`]+)`", line):
        words = code.split()
        asked = (words[0],)
        if words[0] == "sagitta" and not words[1].startswith("-") and words[1] != "COMMAND":
            asked = (words[0], words[1])
        text = help_of(asked)
        spoken += 1
        if text is None:
            faults.append(f"{place}: there is no command {' '.join(asked)}")
            continue
        for option in re.findall(r" (--[a-z-]+)", code):
            if not re.search(re.escape(option) + r"\b", text):
                faults.append(f"{place}: {' '.join(asked)} has no {option}")


keys = {key["key"] for key in json.loads(shell("sagitta keys --json", top).stdout)}
tables = {key.split(".")[0] for key in keys if "." in key}
endings = {"step", "stl", "3mf", "png", "dxf", "svg", "pdf", "csv", "json", "html", "toml", "md"}


def judge_keys(place, line):
    """Keys in running text: `slots.depth`."""
    for table, key in re.findall(r"`([a-z_]+)\.([a-z_0-9]+)[^`]*`", line):
        if table in tables and key not in endings and f"{table}.{key}" not in keys:
            faults.append(f"{place}: there is no key {table}.{key}")


def read_page(page, folder):
    kind, lines, begins, code = None, [], 0, 0
    for number, line in enumerate(page.read_text().splitlines(), 1):
        place = f"{page.relative_to(top)}:{begins or number}"
        if kind is None and line.startswith("```"):
            kind, lines, begins = line[3:], [], number
            if kind not in known_blocks:
                faults.append(f"{place}: a block is one of {', '.join(sorted(known_blocks))}")
        elif line == "```":
            if kind == "console":
                run_console(place, lines, folder, code)
            elif kind == "sh":
                run_sh(place, lines, folder)
            kind, begins, code = None, 0, 0
        elif kind is not None:
            lines.append(line)
        elif by_hand := re.fullmatch(r"<!-- by hand: (.*) -->", line):
            result = shell(by_hand[1], folder)
            if result.returncode != 0:
                faults.append(f"{place}: by hand: {result.stdout}")
        elif ends := re.fullmatch(r"<!-- ends with (\d) -->", line):
            code = int(ends[1])
        else:
            judge_spoken(place, line)
            judge_keys(place, line)


for page in pages:
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        (folder / "build").mkdir()
        (folder / "build/bin").symlink_to(build / "bin")
        (folder / "presets").symlink_to(top / "presets")
        read_page(page, folder)
for fault in faults:
    print(fault)
print(f"{ran} commands of {len(pages)} pages were run, {spoken} more are named in their text")
sys.exit(1 if faults or ran < 10 or spoken < 20 else 0)
