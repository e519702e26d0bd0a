#!/usr/bin/env python3
"""Every answer of the program in JSON against its schema, over presets, special cases and boards with faults.

    tests/export/program/schemas.py SAGITTA

The schemas are JSON Schema 2020-12; the judge is Debian's python3-jsonschema.
"""
import json
import pathlib
import subprocess
import sys
import tempfile
import warnings

from jsonschema import Draft202012Validator
from jsonschema.exceptions import best_match

# Later versions have another way to find a schema's neighbours, and say so; Debian's has this one alone.
warnings.simplefilter("ignore", DeprecationWarning)
from jsonschema import RefResolver  # noqa: E402

top = pathlib.Path(__file__).resolve().parents[3]
schemas = top / "export/program/schemas"
presets = sorted((top / "presets").glob("*.toml"))
cases = sorted((top / "tests/cases").glob("c*.toml")) + sorted((top / "tests/cases/families").glob("*.toml"))
judged = {}


def validator(name):
    schema = json.loads((schemas / name).read_text())
    Draft202012Validator.check_schema(schema)
    assert schema["$id"] == name, name
    return Draft202012Validator(schema, resolver=RefResolver((schemas / name).as_uri(), schema))


validators = {path.name: validator(path.name) for path in schemas.glob("*.json")}


def answer(name, *words, codes=(0,)):
    """Runs the program, and judges what it prints."""
    run = subprocess.run([sys.argv[1], *map(str, words)], capture_output=True, text=True)
    assert run.returncode in codes, (words, run.returncode, run.stderr)
    value = json.loads(run.stdout)
    error = best_match(validators[name].iter_errors(value))
    if error:
        place = "/".join(map(str, error.absolute_path))
        sys.exit(f"sagitta {' '.join(map(str, words))}\n{name}: at {place}: {error.message[:300]}")
    judged[name] = value
    return value


def strict(name, value):
    """A schema that takes an answer with a word too much or too few says nothing."""
    first = value[0] if isinstance(value, list) else value
    more = {**first, "unheard-of": 1}
    for key in [None] + [key for key in first if key not in ("heights", "pieces")]:
        wrong = more if key is None else {k: v for k, v in first.items() if k != key}
        whole = [wrong] + value[1:] if isinstance(value, list) else wrong
        assert not validators[name].is_valid(whole), (name, key)


def board(folder, name, more="", change=("", "")):
    """The standard preset with a change, and more at its end."""
    text = (top / "presets/heron-six.toml").read_text()
    assert change[0] in text, change
    path = pathlib.Path(folder) / name
    path.write_text(text.replace(*change, 1) + "\n" + more)
    return path


def check_all(folder):
    one = answer("check.json", "check", "--json", presets[0])
    strict("check.json", one)
    for path in cases:
        answer("check.json", "check", "--json", path, codes=(0, 1, 2))
    several = answer("check.json", "check", "--json", *presets)
    assert len(several) == len(presets)
    heights = board(folder, "height.toml", "[height]\naction = [2.0, 1.6]\n")
    assert answer("check.json", "check", "--json", heights, codes=(0, 1))["heights"]["strings"]
    broken = board(folder, "broken.toml", "[wood]\n", ("length = 648", "length = 25.5"))
    assert answer("check.json", "check", "--json", broken, codes=(2,))["problems"]
    stop = board(folder, "stop.toml", change=("width = 0.584", "width = 0.584\ndepth = 1.2"))
    assert answer("check.json", "check", "--json", stop, codes=(1,))["findings"][0]["severity"] == "stop"


def measure(folder):
    plain = board(folder, "plain.toml")
    strict("check-before.json", answer("check-before.json", "check", "--json", "--before", "slots", plain))
    thin = board(folder, "thin.toml", "[measured]\nblank_thickness = 6.0\n")
    refused = answer("check-before.json", "check", "--json", "--before", "slots", thin, codes=(1,))
    assert refused["answer"] == "refused"
    moved = board(folder, "moved.toml", "[measured]\nthickness = [[200, 0, 6.25]]\n")
    changed = answer("check-before.json", "check", "--json", "--before", "slots", moved, codes=(5,))
    assert changed["changes"]
    longer = ", ".join(f"{648.09 * (1 - 2 ** (-fret / 12)):.4f}" for fret in range(1, 23))
    slots = board(folder, "slots.toml", f"[measured]\nslots = [{longer}]\n")
    for path in (thin, slots):
        assert answer("rescue.json", "rescue", "--json", path)["ways"]
    strict("rescue.json", judged["rescue.json"])
    assert answer("compare.json", "compare", "--json", slots)["keys"]
    two = answer("compare.json", "compare", "--json", top / "presets/avocet-bound.toml", top / "presets/bittern-baritone.toml")
    # A radius at the heel is required with this profile: taken away alone it leaves no board that could be told.
    effects = {key["key"]: key["effect"] for key in two["keys"]}
    assert effects["surface.radius_at_heel"] is None and effects["scale.length"]
    strict("compare.json", judged["compare.json"])


def list_all():
    for name in ("keys", "findings", "presets"):
        strict(name + ".json", answer(name + ".json", name, "--json"))
    for path in presets:
        answer("frets.json", "frets", "--json", path)
    # A slot that the heel end parts has its pieces told.
    parted = answer("frets.json", "frets", "--json", top / "presets/stilt-classical.toml")
    assert any("pieces" in row for row in parted)
    strict("frets.json", judged["frets.json"])


def export(folder):
    to = pathlib.Path(folder)
    one = ["export", presets[0], "--only", "csv", "--json", "--if-changed", "--replace", "--to", to / "one"]
    assert not answer("export.json", *one)["unchanged"]
    assert answer("export.json", *one)["unchanged"]
    strict("export.json", judged["export.json"])
    assert len(answer("export.json", "export", *presets[:2], "--only", "csv", "--json", "--to", to / "two")) == 2
    answer("export.json", "trial", top / "presets/heron-six.toml", "--json", "--to", to / "strip")


with tempfile.TemporaryDirectory() as scratch:
    check_all(scratch)
    measure(scratch)
    list_all()
    export(scratch)
unused = set(validators) - set(judged) - {"parts.json"}
assert not unused, f"no answer was judged by {unused}"
print(f"{len(judged)} schemas, {len(presets) + len(cases)} boards: every answer is as its schema says")
