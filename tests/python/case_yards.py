"""Installations of `tests/reference/*.jsonl`: a base, and what a case changes in it.

A change is a path and a value. A path goes into a list by name, part, group or element:
`runs/hot tail/wire`, `devices/snap-disc-fixed/set_c`. What stands under `stated` is left out where
the library has no such field yet; what stands under `set` never is.
"""

from __future__ import annotations

import copy
import functools
import json
from pathlib import Path
from typing import Any

import heatmatch as hm

ROOT = Path(__file__).resolve().parents[2]
REFERENCE = ROOT / "tests" / "reference"
SEVERITIES = ("none", "caution", "warning", "danger")
CATALOG = hm.Catalog.starter()

Yard = dict[str, Any]


@functools.cache
def cases(file: str) -> tuple[Yard, ...]:
    lines = (REFERENCE / file).read_text(encoding="utf-8").splitlines()
    return tuple(json.loads(line) for line in lines if line.strip())


@functools.cache
def bases() -> Yard:
    return json.loads((REFERENCE / "installation_bases.json").read_text(encoding="utf-8"))


def _step(place: Any, key: str) -> Any:
    """What lies under a key: a member, or the entry of a list that has this name."""
    if isinstance(place, dict):
        return place[key]
    names = ("name", "part", "group", "element")
    found = [item for item in place if key in [item.get(name) for name in names]]
    if not found:
        raise KeyError(f"no {key} in {place}")
    return found[-1]


def _parent(yard: Yard, path: str) -> tuple[Any, str]:
    *way, last = path.split("/")
    place: Any = yard
    for key in way:
        place = _step(place, key)
    return place, last


def put(yard: Yard, path: str, value: Any) -> None:
    place, last = _parent(yard, path)
    if path.startswith("devices/") and last == "part":
        for device in yard["devices"]:  # what drove the old part drives the new one
            driven = [value if old == place["part"] else old for old in device.get("drives", [])]
            device.update({"drives": driven} if driven else {})
    if isinstance(place, dict):
        place[last] = copy.deepcopy(value)
    else:
        place[place.index(_step(place, last))] = copy.deepcopy(value)


def take(yard: Yard, path: str) -> Any:
    """Removes what lies under a path and gives it; None if nothing does."""
    place, last = _parent(yard, path)
    if isinstance(place, dict):
        return place.pop(last, None)
    return place.pop(place.index(_step(place, last)))


@functools.cache
def known_fields() -> frozenset[str]:
    """Every field of an installation in the library: `store.vented`, `runs.inside`."""
    tables = hm.installation_glossary().items()
    return frozenset(f"{kind}.{row['name']}" for kind, rows in tables for row in rows)


def is_known(path: str) -> bool:
    """Whether the library has the field of a path; a name in the middle of it is left out."""
    way = path.split("/")
    kind = [way[0], *[key for key in way[1:-1] if key in ("surroundings", "measured")]]
    return f"{'.'.join(kind)}.{way[-1]}" in known_fields()


def _base(name: str, drop: tuple[str, ...] = ()) -> Yard:
    made = bases()[name]
    source = made["from"]
    if source.endswith(".json"):
        yard = json.loads((ROOT / source).read_text(encoding="utf-8"))
    else:
        yard = _base(source, drop)
    for path in made.get("remove", []):
        take(yard, path)
    for path, value in made.get("set", {}).items():
        put(yard, path, value)
    for path, value in made.get("stated", {}).items():
        if is_known(path) and path not in drop:
            put(yard, path, value)
    return yard


def base(name: str) -> Yard:
    return _owned(_base(name))


def yard_of(case: Yard) -> Yard:
    """The installation of a case, as a file would hold it."""
    yard = _base(case["base"])
    for path in case.get("remove", []):
        take(yard, path)
    if "circuit" in case:
        yard["circuit"] = dict(case["circuit"])
    for path, value in case.get("set", {}).items():
        put(yard, path, value)
    for member, items in case.get("add", {}).items():
        yard.setdefault(member, []).extend(copy.deepcopy(items))
    for path, value in case.get("stated", {}).items():
        if is_known(path):
            put(yard, path, value)
    return _owned(yard)


def _owned(yard: Yard) -> Yard:
    """With elements only of the circuit's kind, for a ranking then looks at little else."""
    parts = [device["part"] for device in yard["devices"]]
    for device in yard["devices"]:
        if "drives" in device:  # what is gone is not driven
            device["drives"] = [driven for driven in device["drives"] if driven in parts]
    if "circuits" in yard:
        return {key: value for key, value in yard.items() if key not in ("circuit", "elements")}
    series, parallel = counts(yard["circuit"]["bank"])
    owned = {"element": yard["circuit"]["element"], "count": series * parallel}
    return {**yard, "elements": [owned]}


def counts(hookup: str) -> tuple[int, int]:
    """Series and parallel of "2S1P"."""
    series, parallel = hookup.rstrip("P").split("S")
    return int(series), int(parallel)


def installation(yard: Yard) -> hm.Installation:
    return hm.Installation.from_dict(yard)


class Together:
    """Circuits of one store, with the margins of all."""

    def __init__(self, circuits: list[hm.Candidate]) -> None:
        self.candidates = circuits
        self.margins = [margin for each in circuits for margin in each.margins]


def assess(yard: Yard) -> hm.Candidate | Together:
    if "circuits" in yard:
        return Together(hm.assess_circuits(CATALOG, installation(yard)))
    return hm.assess(CATALOG, installation(yard))


def rank(yard: Yard) -> hm.Ranking:
    """A ranking of the circuit of this installation alone, whatever it costs."""
    circuit = yard["circuit"]
    goals = {key: value for key, value in yard["goals"].items() if key != "budget"}
    yard = {**yard, "goals": goals}
    return hm.rank(
        CATALOG,
        installation(yard),
        group=circuit["group"],
        element=circuit["element"],
        panels=circuit["panels"],
        bank=circuit["bank"],
        top=4,
        keep_rejected=4,
    )


def grade(severity: str) -> int:
    """0 for none to 3 for danger."""
    return SEVERITIES.index(str(severity))


def worst(margin: hm.Margin) -> int:
    """The careful severity as a number; what is not assessed counts as its consequence."""
    severity = getattr(margin, "worst_severity", margin.severity)
    return grade(margin.consequence if severity == "not assessed" else severity)


def found(candidate: hm.Candidate | Together, expected: Yard) -> int:
    """The worst severity that a candidate has where a case expects something; -1 if no margin."""
    names = expected["margin"]
    names = [names] if isinstance(names, str) else names
    fitting = [
        worst(margin)
        for margin in candidate.margins
        if margin.name in names and margin.subject.startswith(expected["subject"])
    ]
    return max(fitting, default=-1)
