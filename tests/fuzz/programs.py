#!/usr/bin/python3
"""Runs the program on changed boards, drawings, necks and manifests, as a stranger would send them.

    tests/fuzz/programs.py PROGRAM FOLDER RUNS [SEED]

RUNS runs of each kind; the same seed (1 when not given) makes the same files. A run is good when it ends by itself within
ten seconds of the processor's time, so that a busy machine fails nothing, with an exit code that COMMANDS.md names. Each of the others is kept in FOLDER/found-*. Exit code 1 when
there is one.
"""

import json
import os
import random
import re
import resource
import shutil
import subprocess
import sys

LONGEST = 10  # seconds of the processor's time
WAIT = 300  # seconds by the clock, for what sleeps
CODES = {"check": {0, 1, 2, 4}, "compare": {0, 2, 4}, "export": {0, 1, 2, 3, 4}}
NUMBERS = ["0", "-1", "1", "1e-9", "1e9", "1e300", "nan", "inf", "2147483648", "-0.0", "24", "0.001", "99999"]
WORDS = ["shell", "", "flat", "compound", "blind", "board", "stl", "../x", "/dev/zero", "=1+1", "\\u0000", "\\u202E", "<&>", "A3"]


def changed(text, dice):
    """The text (bytes) with one to four changes of numbers, quoted texts, lines or bytes."""
    for _ in range(dice.randint(1, 4)):
        kind = dice.randrange(8)
        if kind < 3:
            text = put(text, dice, rb"-?\d+\.?\d*(?:[eE][-+]?\d+)?", another_number)
        elif kind == 3:
            text = put(text, dice, rb'(?<=")[^"\n]*(?=")', lambda _, d: d.choice(WORDS).encode())
        elif kind == 4 and text:
            at = dice.randrange(len(text))
            text = text[:at] + bytes([dice.randrange(256)]) * dice.randint(0, 3) + text[at + dice.randint(0, 8):]
        else:
            lines = text.splitlines(keepends=True) or [b""]
            source, to = dice.randrange(len(lines)), dice.randrange(len(lines))
            if dice.randrange(2):
                lines.insert(to, lines[source])
            else:
                del lines[source]
            text = b"".join(lines)
    return text


def put(text, dice, pattern, make):
    places = list(re.finditer(pattern, text))
    if not places:
        return text
    place = dice.choice(places)
    return text[:place.start()] + make(place.group(), dice) + text[place.end():]


def another_number(old, dice):
    if dice.randrange(2):
        return dice.choice(NUMBERS).encode()
    return b"%.10g" % (float(old) * dice.choice([0.5, 2, -1, 10, 0.1, 1.0001, 0.9, 1.1]))


def limit():
    resource.setrlimit(resource.RLIMIT_CPU, (LONGEST, LONGEST))


def run(words, into, out=subprocess.DEVNULL):
    """The exit code, negative for a signal; None where it does not end."""
    try:
        return subprocess.run(words, cwd=into, stdin=subprocess.DEVNULL, stdout=out,
                              stderr=subprocess.DEVNULL, timeout=WAIT, preexec_fn=limit).returncode
    except subprocess.TimeoutExpired:
        return None


class Campaign:
    def __init__(self, program, folder, top):
        self.program, self.folder, self.top = program, folder, top
        self.work = os.path.join(folder, "work")
        self.boards = self.texts(["presets", "tests/cases"], ".toml")
        self.drawings = [each for kind in ("svg", "dxf") for each in self.texts(["tests/fuzz/" + kind], "." + kind)]
        plain = os.path.join(top, "presets", "reed-tenor.toml")
        subprocess.run([program, "export", plain, "--only", "csv", "--to", os.path.join(folder, "seed")], check=True)
        subprocess.run([program, "export", plain, "--only", "step", "--stage", "board", "--to",
                        os.path.join(folder, "neck")], check=True)
        self.manifest = self.read(os.path.join(folder, "seed", "manifest.json"))
        self.neck = self.read(os.path.join(folder, "neck", "board.step"))
        self.plain = self.read(plain)

    @staticmethod
    def read(path):
        with open(path, "rb") as file:
            return file.read()

    def texts(self, folders, ending):
        found = []
        for folder in folders:
            below = os.path.join(self.top, folder)
            found += [(name, self.read(os.path.join(below, name))) for name in sorted(os.listdir(below)) if name.endswith(ending)]
        return found

    def write(self, name, text):
        with open(os.path.join(self.work, name), "wb") as file:
            file.write(text)

    def board(self, dice):
        self.write("board.toml", changed(dice.choice(self.boards)[1], dice))
        return ["check", "board.toml"]

    def drawing(self, dice):
        name, text = dice.choice(self.drawings)
        self.write("drawing" + os.path.splitext(name)[1], changed(text, dice))
        self.write("board.toml", self.plain + b'\n[[inlays]]\nshape = "artwork"\nfile = "drawing%s"\nfrets = [4]\nalong = 8\n'
                   b"depth = 1.2\n" % os.path.splitext(name)[1].encode())
        return ["check", "board.toml"]

    def read_neck(self, dice):
        self.write("neck.step", changed(self.neck, dice))
        self.write("board.toml", self.plain + b'\n[neck]\nnut_width = 42\nbody_width = 56\nbody_at = 400\nfile = "neck.step"\n')
        return ["check", "board.toml"]

    def made_again(self, dice):
        text = json.loads(self.manifest)
        if dice.randrange(3) == 0:
            text["board"] = changed(text["board"].encode(), dice).decode("utf-8", "replace")
        options = json.dumps(text["options"], indent=1).encode()
        try:
            text["options"] = json.loads(changed(options, dice))
            whole = json.dumps(text, indent=1).encode()
        except ValueError:
            whole = changed(self.manifest, dice)
        self.write("manifest.json", whole)
        return ["export", "manifest.json", "--to", "again"] if dice.randrange(2) else ["compare", "manifest.json", "manifest.json"]

    def one(self, kind, make, seed):
        shutil.rmtree(self.work, ignore_errors=True)
        os.makedirs(self.work)
        words = make(random.Random("%s %d" % (kind, seed)))
        code = run([self.program] + words, self.work)
        if code not in CODES[words[0]]:
            shutil.copytree(self.work, os.path.join(self.folder, "found-%s-%d" % (kind, seed)), dirs_exist_ok=True)
            print("%s %d: %s" % (kind, seed, "no end" if code is None else "exit code %d" % code), flush=True)
        return code


def main():
    program, folder, runs = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2]), int(sys.argv[3])
    seed = int(sys.argv[4]) if len(sys.argv) > 4 else 1
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    campaign = Campaign(program, folder, os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__)))))
    bad = 0
    for kind, make in (("board", campaign.board), ("drawing", campaign.drawing), ("neck", campaign.read_neck),
                       ("manifest", campaign.made_again)):
        counts = {}
        for i in range(runs):
            code = campaign.one(kind, make, seed * 1000000 + i)
            counts[code] = counts.get(code, 0) + 1
        shown = ", ".join("%s: %d" % ("no end" if code is None else code, n) for code, n in sorted(counts.items(), key=str))
        print("%s: %d runs, exit codes %s" % (kind, runs, shown), flush=True)
        allowed = CODES["check"] | CODES["export"]
        bad += sum(n for code, n in counts.items() if code not in allowed)
    bad += len([name for name in os.listdir(folder) if name.startswith("found-")])
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
