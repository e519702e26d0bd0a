#!/usr/bin/python3
"""Changed STEP files of necks, and what `sagitta check` says of them: it ends, and no number is wrong.

    tests/fuzz/necks.py PROGRAM FOLDER RUNS [SEED]

RUNS changed files of the three necks in tests/fuzz/neck, which gmsh makes; the same seed (1 when not given) makes the same
files. What the file really holds is read here without the program: the corners of its glue face and its unit. All faces of
these necks are plane and all edges straight, so the corners are the neck. A run is good when

- the program ends by itself, within its limits, with an exit code that the README names, and
- it gives no number for the neck's sides; or the number of the neck that was not changed, and the distances between the
  corners are unchanged; or another number, and the corners moved by that much.

A quarter of the changed files are those of a neck that is wider or narrower.

Each of the others is kept in FOLDER/found-*. Exit code 1 when there is one.
"""

import itertools
import json
import math
import os
import random
import re
import shutil
import subprocess
import sys

sys.dont_write_bytecode = True  # nothing is written beside the sources
from programs import CODES, put, run

BOARD = """format = 1
name = "zoo"
[scale]
length = 640
frets = 19
[strings]
count = 6
nut_spread = 45
saddle_spread = 55
[board]
thickness = 6.35
nut_width = 52
heel_width = 60
past_last_fret = 10
[surface]
profile = "flat"
[nut]
seat = "none"
[wire]
tang_depth = 1.6
[slots]
width = 0.58
[neck]
file = "neck.step"
%s
[limits]
neck-outside-board = -1000000
board-outside-neck = -1000000
"""
JOINT = {"bar": "", "channel": "", "body": "body_at = 330"}
LENGTH = {"bar": 440, "channel": 440, "body": 330}  # of the glue face, from corner to corner
HEEL = 640 * (1 - 2 ** (-19 / 12)) + 10  # where the board is 60 wide
SAME = 0.002  # mm: what a number or a distance may differ by and count as unchanged
TRUE = 0.01  # mm: what a number of an unchanged neck may be wrong by
TOLD = 0.02  # mm: what a number may be wrong by where the neck was changed
NUMBERS = [b"0.", b"-1.", b"1.E-09", b"1.E+09", b"1.E+300", b"-1.E+308", b"NaN", b"INF", b"2147483648", b"-0.", b"1.E999"]
NUMBER = rb"-?\d+\.\d*(?:E[-+]?\d+)?"
SIDES = ("neck-outside-board", "board-outside-neck")
PREFIX = {"MILLI": 1.0, "CENTI": 10.0, "DECI": 100.0, "MICRO": 1e-3, "KILO": 1e6, "$": 1000.0}


# What a file holds.

def entities(text):
    """{id: (name, arguments)} of the simple entities, {id: text} of all."""
    data = text[text.find(b"DATA;"):]
    whole = {}
    for match in re.finditer(rb"#(\d+)\s*=\s*([^;]*);", data):
        whole.setdefault(int(match.group(1)), match.group(2))
    return whole


def references(text):
    return [int(each) for each in re.findall(rb"#(\d+)", text)]


def millimetres(whole):
    """What the file's unit of length is in mm; None where it cannot be told."""
    units = [text for text in whole.values() if b"LENGTH_UNIT" in text]
    found = set()
    for text in units:
        if b"CONVERSION_BASED_UNIT" in text:
            return None
        match = re.search(rb"SI_UNIT\s*\(\s*(?:\.(\w+)\.|(\$))\s*,\s*\.METRE\.", text)
        if match:
            found.add(PREFIX.get((match.group(1) or match.group(2)).decode(), None))
    return found.pop() if len(found) == 1 else None


def corner(whole, vertex):
    """Coordinates of a VERTEX_POINT; None where the file does not have them."""
    try:
        point = whole[references(whole[vertex])[0]]
        if not point.startswith(b"CARTESIAN_POINT"):
            return None
        inner = point[point.index(b"(", point.index(b"(") + 1) + 1:point.rindex(b")")].rstrip(b" )\n")
        values = [float(each) for each in inner.split(b",")]
        return values if len(values) == 3 and all(map(math.isfinite, values)) else None
    except (KeyError, IndexError, ValueError):
        return None


def corners(text, vertices):
    """The corners in mm; None where one is missing."""
    whole = entities(text)
    unit = millimetres(whole)
    found = [corner(whole, each) for each in vertices]
    if unit is None or any(each is None for each in found):
        return None
    return [[unit * value for value in each] for each in found]


def mended(text):
    """The text with each entity's end where a changed byte took it: the kernel reads over that too."""
    return re.sub(rb"\)[^;\n](?=\n#\d+ = )", b");", text)


def distances(points):
    return [math.dist(a, b) for a, b in itertools.combinations(points, 2)]


def glue_corners(text, length):
    """The ids of the VERTEX_POINTs of a seed's glue face: four whose distances are those of the board's taper."""
    whole = entities(text)
    points = {each: corner(whole, each) for each, what in whole.items() if what.startswith(b"VERTEX_POINT")}
    half = [26, 26 + 4 * length / HEEL]
    nut = [pair for pair in itertools.combinations(points, 2)
           if abs(math.dist(points[pair[0]], points[pair[1]]) - 2 * half[0]) < 1e-6]
    ends = [pair for pair in itertools.combinations(points, 2)
            if abs(math.dist(points[pair[0]], points[pair[1]]) - 2 * half[1]) < 1e-6]
    for a, b in itertools.product(nut, ends):
        lengths = sorted(math.dist(points[i], points[k]) for i in a for k in b)
        if abs(lengths[0] - math.hypot(length, half[1] - half[0])) < 1e-6 and abs(
                lengths[3] - math.hypot(length, half[1] + half[0])) < 1e-6:
            return list(a + b)
    return None


# How a file is changed.

def real(value):
    """A number as STEP writes it: with a point."""
    text = "%.12G" % value
    mantissa, _, exponent = text.partition("E")
    return (mantissa + ("" if "." in mantissa else ".") + ("E" + exponent if exponent else "")).encode()


def flip(text, dice):
    for _ in range(dice.randint(1, 6)):
        at = dice.randrange(len(text))
        text = text[:at] + bytes([text[at] ^ (1 << dice.randrange(8))]) + text[at + 1:]
    return text


def cut_short(text, dice):
    return text[:dice.randrange(len(text))]


def number(text, dice):
    scale = dice.choice([0.5, 2, -1, 10, 0.1, 1.0001, 0.999, 1.01, 0.98])
    for _ in range(dice.randint(1, 2)):
        text = put(text, dice, NUMBER, lambda old, _: real(float(old) * scale + dice.choice([0, 0, 0.05, -0.3, 3])))
    return text


def huge(text, dice):
    return put(text, dice, NUMBER, lambda *_: dice.choice(NUMBERS))


def swapped(text, dice):
    ids = re.findall(rb"#\d+", text)
    a, b = dice.choice(ids), dice.choice(ids)
    if dice.randrange(2):
        return put(text, dice, rb"#\d+(?=[,)])", lambda *_: a)
    return re.sub(rb"#\d+(?=\s*=)", lambda m: b if m.group() == a else a if m.group() == b else m.group(), text)


def another_unit(text, dice):
    return text.replace(b".MILLI.", dice.choice([b".CENTI.", b"$", b".MICRO.", b".DECI.", b".KILO."]))


def moved_corner(text, dice, vertices):
    """A corner of the glue face moved in the file, and nothing that should move with it."""
    whole = entities(text)
    point = references(whole[dice.choice(vertices)])[0]
    return re.sub(rb"(#%d\s*=[^;]*;)" % point,
                  lambda m: put(m.group(1), dice, NUMBER, lambda old, _: real(float(old) + dice.choice([0.02, -0.1, 0.4, -2]))),
                  text, count=1)


class Campaign:
    def __init__(self, program, folder, top):
        self.program, self.folder = program, folder
        self.work = os.path.join(folder, "work")
        self.seeds = []
        os.makedirs(os.path.join(folder, "seeds"))
        for name in sorted(JOINT):
            text = self.made(top, name, 0)
            vertices = glue_corners(text, LENGTH[name])
            assert vertices, "no glue face in " + name
            code, sides = self.ask(name, text)
            assert sides and max(map(abs, sides)) < TRUE, (name, code, sides)
            others = []
            for wider in (0.15, -0.2, 0.4):
                other = self.made(top, name, wider)
                code, wide = self.ask(name, other)
                assert wide and abs(wide[0] - wider) < TRUE and abs(wide[1] + wider) < TRUE, (name, wider, code, wide)
                others.append(other)
            self.seeds.append((name, text, others, vertices, sides))

    def made(self, top, name, wider):
        """A neck as gmsh makes it, so much wider on each side; without the hour."""
        step = os.path.join(self.folder, "seeds", "%s%+g.step" % (name, wider))
        subprocess.run(["gmsh", "-0", os.path.join(top, "tests", "fuzz", "neck", name + ".geo"), "-setnumber", "wider", str(wider),
                        "-o", step, "-v", "0"], check=True, stdout=subprocess.DEVNULL)
        with open(step, "rb") as file:
            return re.sub(rb"'\d{4}-\d\d-\d\dT[^']*'", b"'2000-01-01T00:00:00'", file.read())

    def ask(self, name, text):
        """Exit code of the program, and what it says of the sides: how far each stands out, or None."""
        shutil.rmtree(self.work, ignore_errors=True)
        os.makedirs(self.work)
        for file, what in (("neck.step", text), ("board.toml", (BOARD % JOINT[name]).encode())):
            with open(os.path.join(self.work, file), "wb") as out:
                out.write(what)
        said = os.path.join(self.work, "said.json")
        with open(said, "wb") as out:
            code = run([self.program, "check", "--json", "board.toml"], self.work, out)
        try:
            with open(said, "rb") as file:
                values = {each["name"]: each["value"] for each in json.load(file)["findings"]}
        except ValueError:
            return code, None
        return code, [values[each] for each in SIDES] if all(each in values for each in SIDES) else None

    def fault(self, name, text, seed, vertices, sides):
        """What is wrong with the answer for a changed file, or None; and what kind of answer it was."""
        code, said = self.ask(name, text)
        if code not in CODES["check"] or code == 4:
            return "no end" if code is None else "exit code %d" % code, "ended badly"
        if said is None:
            return None, "no number"
        real, own = corners(text, vertices), corners(seed, vertices)
        change = max(abs(a - b) for a, b in zip(said, sides))
        if real is None and change < SAME and corners(mended(text), vertices) is not None:
            real = corners(mended(text), vertices)
        moved = 1e300 if real is None else max(abs(a - b) for a, b in zip(distances(real), distances(own)))
        if change < SAME:
            return (None if moved < TOLD else "the number did not change, the corners did by %g" % moved), "the same number"
        if real is None:
            return "a number from corners that the file does not have", "another number"
        return (None if change < moved + TOLD else "a number that changed by %g, corners by %g" % (change, moved)), "another number"

    def one(self, dice):
        name, seed, others, vertices, sides = dice.choice(self.seeds)
        kind = dice.choice([flip, flip, cut_short, number, number, number, huge, swapped, swapped, another_unit, moved_corner])
        from_ = seed if dice.randrange(4) else dice.choice(others)
        text = moved_corner(from_, dice, vertices) if kind == moved_corner else kind(from_, dice)
        fault, answer = self.fault(name, text, seed, vertices, sides)
        return fault, answer, "%s of %s" % (kind.__name__, name)


def main():
    program, folder, runs = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2]), int(sys.argv[3])
    seed = int(sys.argv[4]) if len(sys.argv) > 4 else 1
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    campaign = Campaign(program, folder, os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__)))))
    answers, bad = {}, 0
    for i in range(runs):
        fault, answer, what = campaign.one(random.Random("neck %d" % (seed * 1000000 + i)))
        answers[answer] = answers.get(answer, 0) + 1
        if fault:
            bad += 1
            shutil.copytree(campaign.work, os.path.join(folder, "found-%d" % i), dirs_exist_ok=True)
            print("%d: %s: %s" % (i, what, fault), flush=True)
        if (i + 1) % 200 == 0 or i + 1 == runs:
            counts = ", ".join("%s: %d" % each for each in sorted(answers.items()))
            print("%d changed necks: %s; %d bad" % (i + 1, counts, bad), flush=True)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
