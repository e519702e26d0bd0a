#!/usr/bin/env python3
"""Whether two builds of the program make the same bytes of the same boards.

    same_bytes.py make PROGRAM FOLDER BOARD_OR_FOLDER ..   what PROGRAM makes of each board, into FOLDER
    same_bytes.py compare FOLDER FOLDER                    every file that differs; exit code 1 when there is one

Of each board: `check --json` with its exit code, and the folder of `export` without pictures
and pages of paper. A board for which FOLDER has a
result already is not made again, so a run that was stopped goes on."""

import filecmp
import pathlib
import shutil
import subprocess
import sys

LONGEST = 600  # seconds for one command


def boards_in(places):
    for place in map(pathlib.Path, places):
        yield from sorted(place.rglob("*.toml")) if place.is_dir() else [place]


def run(command):
    try:
        done = subprocess.run(command, capture_output=True, timeout=LONGEST)
    except subprocess.TimeoutExpired:
        return b"timeout\n"
    return done.stdout + b"\nexit %d\n" % done.returncode


def make(program, folder, places):
    owns = {board: pathlib.Path(folder) / str(board.resolve()).strip("/").replace("/", "+") for board in boards_in(places)}
    for board, own in owns.items():
        if not (own / "check.json").exists():
            own.mkdir(parents=True, exist_ok=True)
            (own / "check.json").write_bytes(run([program, "check", "--json", str(board)]))
    for board, own in owns.items():
        if not (own / "export.txt").exists():
            shutil.rmtree(own / "folder", ignore_errors=True)
            made = run([program, "export", str(board), "--only", "step,stl,dxf,svg,csv,html", "--to", str(own / "folder")])
            (own / "export.txt").write_bytes(made.splitlines()[-1])


def differences(a, b):
    """The names below the folder `a` or `b` of what is not in both with the same bytes."""
    both = {p.relative_to(root) for root in (a, b) for p in root.rglob("*") if p.is_file()}
    for name in sorted(both):
        if not ((a / name).is_file() and (b / name).is_file() and filecmp.cmp(a / name, b / name, shallow=False)):
            yield name


def main():
    if len(sys.argv) > 4 and sys.argv[1] == "make":
        make(sys.argv[2], sys.argv[3], sys.argv[4:])
        return 0
    if len(sys.argv) == 4 and sys.argv[1] == "compare":
        found = list(differences(pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])))
        for name in found:
            print(name)
        return 1 if found else 0
    print(__doc__)
    return 2


if __name__ == "__main__":
    sys.exit(main())
