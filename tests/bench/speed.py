#!/usr/bin/env python3
"""Whether the program is as fast as SPEED.md says: ratios to the kernel's own ways, and processor time of commands.

    speed.py BUILD_FOLDER          measures, prints a table, exits with 1 when something is under its bar

Ratios come from one run of bench_chain. A command's processor time is the least of several runs, user and system, of
the program and all that it becomes; other programs at work change it by a third, so bars of time are to be judged on an
idle machine. Build bench_chain and sagitta first."""

import os
import pathlib
import re
import resource
import subprocess
import sys
import tempfile
import time

PRESETS = pathlib.Path(__file__).resolve().parents[2] / "presets"

# How many times as long the peer takes, at least; what is wanted in the end stands in SPEED.md.
RATIOS = {"exact-board": 250, "mesh": 20}

# Arguments of sagitta, most processor seconds, most seconds by the clock (None: not judged), runs.
COMMANDS = [
    (["--help"], 0.020, None, 10),
    (["keys"], 0.020, None, 10),
    (["frets", "heron-six"], 0.020, None, 10),
    (["check", "heron-six"], 0.030, None, 10),
    (["export", "heron-six", "--only", "step"], 0.35, None, 5),
    (["export", "heron-six"], None, 0.8, 5),
    (["export", "egret-figure"], None, 1.5, 3),
    (["export", "wave-border"], None, 3.5, 3),
]


def timed(command):
    """Processor and wall seconds of one run."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.monotonic()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    wall = time.monotonic() - start
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, wall


def measured(program, arguments, runs):
    """The least processor seconds and the least wall seconds of several runs."""
    words = [str(PRESETS / (word + ".toml")) if (PRESETS / (word + ".toml")).exists() else word for word in arguments]
    cpu, wall = [], []
    for _ in range(runs):
        with tempfile.TemporaryDirectory() as scratch:
            to = ["--to", os.path.join(scratch, "out")] if words[0] == "export" else []
            one, two = timed([program] + words + to)
            cpu.append(one)
            wall.append(two)
    return min(cpu), min(wall)


def judged(name, value, unit, good, bar):
    print(f"| {name} | {value:.3g} {unit} | {bar} | {'' if good else 'UNDER ITS BAR'} |")
    return good


def main():
    if len(sys.argv) != 2:
        print(__doc__)
        return 2
    build = pathlib.Path(sys.argv[1])
    print("| What | Measured | Bar | |\n|---|---|---|---|")
    good = True
    bench = subprocess.run([build / "bin/bench_chain"], check=True, capture_output=True, text=True).stdout
    ratios = {name: float(value) for name, value in re.findall(r"^ratio (\S+) (\S+)$", bench, re.M)}
    for name, bar in RATIOS.items():
        good &= judged(name, ratios.get(name, 0), "times", ratios.get(name, 0) >= bar, f"at least {bar} times")
    for arguments, most_cpu, most_wall, runs in COMMANDS:
        cpu, wall = measured(build / "bin/sagitta", arguments, runs)
        name = "`sagitta " + " ".join(arguments) + "`"
        if most_cpu:
            good &= judged(name, cpu, "s processor", cpu <= most_cpu, f"at most {most_cpu} s")
        if most_wall:
            good &= judged(name, wall, "s", wall <= most_wall, f"at most {most_wall} s, two idle cores")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
