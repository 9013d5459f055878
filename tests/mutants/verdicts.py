"""Verdicts of named dangerous installations, to compare two versions of the library.

    python tests/mutants/verdicts.py > now.txt
    PYTHONPATH=... python tests/mutants/verdicts.py > before.txt

One line a margin that a case of must_never_pass.jsonl expects: severity, careful severity.
With --table before.txt: the table of tests/README.md, that file beside what this library says.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "python"))

import case_yards  # noqa: E402

# What was too kind, and a yard that shows it.
POINTS = {
    "limit devices": (
        "limit that drives nothing by the plan",
        "limit on a wall that never gets warm",
    ),
    "water": ("tank of 40 litres on four panels",),
    "bonding": ("array on a house that nobody bonded", "bonding that nobody has stated"),
    "pressure": ("damp sand in a sealed drum",),
    "duties": ("shorting switch called a disconnect", "semiconductor as the only disconnect"),
    "fuses": ("string wire thinner than its fuse",),
    "touch": ("wet hands not ruled out",),
    "wood": ("wood beside the bucket not ruled out",),
    "ampacity": ("twenty loaded wires in one conduit", "conduit lying on a sunlit roof"),
    "placing": ("panel wire loose through the house",),
    "materials": ("polyethylene barrel of hot water", "polystyrene against a hot drum"),
    "survivors": ("survivor glows",),
    "covering": ("immersion element that may fall dry",),
    "polarity": ("polarised breaker in a string that others feed",),
}


def case_named(name: str) -> case_yards.Yard:
    return next(case for case in case_yards.cases("must_never_pass.jsonl") if case["name"] == name)


def pruned(record: case_yards.Yard, kind: str) -> case_yards.Yard:
    """A record without the fields that this version has not; what it has not, it cannot judge."""
    known = case_yards.known_fields()
    return {key: value for key, value in record.items() if f"{kind}.{key}" in known}


def yard_for_this_version(case: case_yards.Yard) -> case_yards.Yard:
    yard = case_yards.yard_of(case)
    for kind in ("site", "store"):
        if kind in yard:
            yard[kind] = pruned(yard[kind], kind)
    for run in yard["runs"]:
        run["surroundings"] = pruned(run["surroundings"], "runs.surroundings")
    for kind in ("runs", "devices"):
        known = [pruned(record, kind) for record in yard[kind]]
        for kept, record in zip(known, yard[kind], strict=True):
            kept.update({key: record[key] for key in ("surroundings",) if key in record})
        yard[kind] = known
    return yard


def badness(margin: object) -> tuple[int, bool]:
    """The worst; of equal ones one that was assessed."""
    return case_yards.worst(margin), str(margin.severity) != "not assessed"


def verdict(case: case_yards.Yard, expected: case_yards.Yard) -> str:
    """The worst margin that a case asks for: `warning, danger at worst`."""
    try:
        margins = case_yards.assess(yard_for_this_version(case)).margins
    except Exception as refused:  # a version that refuses the file has no verdict
        return f"refused: {str(refused).splitlines()[0][:60]}"
    names = expected["margin"] if isinstance(expected["margin"], list) else [expected["margin"]]
    fitting = [
        margin
        for margin in margins
        if margin.name in names and margin.subject.startswith(expected["subject"])
    ]
    if not fitting:
        return "no such margin"
    margin = max(fitting, key=badness)
    worst = str(getattr(margin, "worst_severity", ""))
    likely = str(margin.severity)
    return f"{likely}, {worst} at worst" if worst and worst != likely else likely


def name_of(expected: case_yards.Yard) -> str:
    names = expected["margin"]
    return " or ".join(names) if isinstance(names, list) else names


def refusal() -> str:
    """What is said of a fill that is not known: names come only where they are near."""
    yard = yard_for_this_version(case_named(POINTS["pressure"][0]))
    yard["store"]["medium"] = "mud"
    try:
        case_yards.assess(yard)
    except Exception as refused:
        return str(refused).splitlines()[0]
    return "taken"


def lines() -> dict[str, str]:
    """`point | case | margin` to verdict."""
    found = {}
    for point, names in POINTS.items():
        for case in map(case_named, names):
            for expected in case["expect"]:
                what = f"{point} | {case['name']} | {name_of(expected)}"
                found[what] = verdict(case, expected)
    found["suggestions | a fill called mud | (refused)"] = refusal()
    return found


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--table", type=Path, help="what an earlier library printed")
    asked = options.parse_args()
    if asked.table is None:
        for what, said in lines().items():
            print(f"{what} = {said}")
        return
    text = asked.table.read_text(encoding="utf-8")
    before = dict(line.rsplit(" = ", 1) for line in text.splitlines() if " = " in line)
    print("| what was too kind | yard | margin | before | now |\n|---|---|---|---|---|")
    for what, said in lines().items():
        print(f"| {what} | {before.get(what, 'not printed')} | {said} |")


if __name__ == "__main__":
    main()
