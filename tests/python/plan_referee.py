"""A referee of plans: every circuit judged alone by the library, chosen by another solver.

The arrays and banks are enumerated here. HiGHS (Huangfu and Hall 2018, Mathematical Programming
Computation 10) chooses among them; a choice that fails together is cut off, and it chooses again.
"""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import heatmatch as hm
import numpy as np
from plan_program import Program, typical
from unlike_networks import unlike_banks

Yard = dict[str, Any]

LIKE_VOLTAGE = 1.25  # Vmp of strings in parallel, the highest to the lowest
MAX_BANK = 4
# What `hm.rank` needs of a recommended circuit, too; named in libheatmatch/README.md.
DECIDING = {
    *("sheath temperature", "survivor sheath", "stagnation", "terminal temperature"),
    *("hot tail insulation", "wire", "insulation", "run current", "cold voltage", "dc breaking"),
    *("floor", "pressure", "vessel material", "reverse current", "element power"),
    "sheath voltage",
}


def arrays_of(yard: Yard, v_mp: list[float]) -> list[tuple[tuple[int, ...], ...]]:
    """Every array, as the panels of each group in each string."""
    counts = [group["count"] for group in yard["panels"]]
    strings = [one for one in itertools.product(*(range(n + 1) for n in counts)) if any(one)]
    volts = {one: float(np.dot(one, v_mp)) for one in strings}
    found = []
    for number in range(1, sum(counts) + 1):
        for array in itertools.combinations_with_replacement(strings, number):
            if any(
                sum(of) > most for of, most in zip(zip(*array, strict=True), counts, strict=True)
            ):
                continue
            each = [volts[string] for string in array]
            if max(each) <= LIKE_VOLTAGE * min(each) * (1 + 1e-9):
                found.append(array)
    return found


def as_circuit(yard: Yard, array: tuple[tuple[int, ...], ...]) -> dict[str, str]:
    """Equal strings of one group as a hook-up, others as a layout."""
    groups = [group["group"] for group in yard["panels"]]
    used = [g for g, _ in enumerate(groups) if any(string[g] for string in array)]
    if len(used) == 1 and len(set(array)) == 1:
        return {"group": groups[used[0]], "panels": f"{array[0][used[0]]}S{len(array)}P"}
    texts = [" + ".join(f"{groups[g]} x{n}" for g, n in enumerate(string) if n) for string in array]
    return {"array": " | ".join(texts)}


@dataclass
class Verdict:
    """Circuits judged in one store, with one bill."""

    bad: bool  # a danger, or a deciding check that could not be made
    careful: bool  # no danger with unstated facts at their careful ends either
    headroom: float
    bill: float  # without elements; infinite if not known
    pieces: int
    cold_v: float

    @classmethod
    def of(cls, candidates: list[hm.Candidate]) -> Verdict:
        margins = [margin for each in candidates for margin in each.margins]
        known = [margin for margin in margins if margin.severity != "not assessed"]
        heads = [m.headroom for m in known if m.consequence == "danger" and m.headroom is not None]
        lines = [line for each in candidates for line in each.bill.lines if line.kind != "wire"]
        bills = [each.bill.typical for each in candidates]
        return cls(
            bad=any(margin.severity == "danger" for margin in margins)
            or any(m.severity == "not assessed" and m.name in DECIDING for m in margins),
            careful=all(margin.worst_severity != "danger" for margin in margins),
            headroom=min([1.0, *heads]),
            bill=float("inf") if None in bills else sum(bills),
            pieces=round(sum(line.quantity for line in lines)),
            cold_v=max(each.circuit.cold_voltage_v for each in candidates),
        )


@dataclass
class Single:
    """A circuit that has no danger alone."""

    circuit: dict[str, str]
    panels: tuple[int, ...]
    elements: Counter[str]
    kwh: float
    alone: Verdict
    runs: Counter[str] = field(default_factory=Counter)  # metres and connectors on its bill


@dataclass
class Choice:
    """Circuits that pass together."""

    kwh: float
    bill: float
    pieces: int
    circuits: list[dict[str, str]]


class Referee:
    """All circuits of a yard; each combination of them is judged at most once."""

    def __init__(self, catalog: hm.Catalog, yard: Yard) -> None:
        self.catalog = catalog
        self.yard = yard
        self.goals = yard["goals"]
        installation = hm.Installation.from_dict(yard)
        self.weather = hm.Weather.from_installation(installation)
        # Margins need no more of the weather than its brightest hour, if all is on one plane.
        brightest = max(self.weather.plane_irradiance_w_m2)
        self.one_plane = not any("tilt_deg" in group for group in yard["panels"])
        months = {key: value for key, value in self.goals.items() if key != "months"}
        self.in_brief = {**yard, "goals": months} if self.one_plane else yard
        self.brief = (
            hm.Weather.from_plane([brightest], [20.0], 1.0) if self.one_plane else self.weather
        )
        self.judged: dict[tuple[int, ...], Verdict] = {}
        self.owned: Counter[str] = Counter()
        self.for_sale: set[str] = set()
        self.most: Counter[str] = Counter()
        self.read_elements()
        self.owned_of_runs: Counter[str] = Counter()
        self.price_of: dict[str, float] = {}
        self.tried = 0
        self.joint_checks = 0
        self.singles: list[Single] = []
        self.make_singles()

    def read_elements(self) -> None:
        for entry in self.yard["elements"]:
            if "any" not in entry:
                self.owned[entry["element"]] += entry["count"]
                self.most[entry["element"]] += entry["count"]
                continue
            wanted = entry["any"]
            for name, element in self.catalog.elements.items():
                dear = typical(element) > wanted.get("price_max", float("inf"))
                if element.family in wanted["family"] and not dear:
                    self.for_sale.add(name)
                    self.most[name] += entry["count"]

    def assess(self, circuits: list[dict[str, str]], *, in_full: bool) -> list[hm.Candidate]:
        named = [{**each, "name": f"circuit {i + 1}"} for i, each in enumerate(sorted_(circuits))]
        yard = self.yard if in_full else self.in_brief
        # An assessed circuit is there, so it may have more elements than are owned.
        elements = [{"element": name, "count": 64} for name in self.most]
        installation = hm.Installation.from_dict({**yard, "elements": elements, "circuits": named})
        weather = self.weather if in_full else self.brief
        return hm.assess_circuits(self.catalog, installation, weather)

    def make_singles(self) -> None:
        v_mp = [self.catalog.panels[group["panel"]].v_mp for group in self.yard["panels"]]
        base = self.goals.get("headroom_min", 0.0)
        for array in arrays_of(self.yard, v_mp):
            for bank, elements in self.banks():
                self.tried += 1
                circuit = {**as_circuit(self.yard, array), **bank}
                (brief,) = self.assess([circuit], in_full=False)
                alone = Verdict.of([brief])
                if alone.bad or alone.headroom < base:
                    continue
                (full,) = self.assess([circuit], in_full=True)
                assert full.season is not None
                panels = tuple(map(sum, zip(*array, strict=True)))
                made = Single(circuit, panels, elements, full.season.kwh, alone)
                self.add_runs(made, full.bill)
                self.singles.append(made)

    def banks(self) -> Iterator[tuple[dict[str, str], Counter[str]]]:
        """Banks of equal elements, and networks of owned ones that differ."""
        for element, most in self.most.items():
            sizes = range(1, min(most, MAX_BANK) + 1)
            for series, parallel in itertools.product(sizes, sizes):
                if series * parallel > min(most, MAX_BANK):
                    continue
                bank = {"element": element, "bank": f"{series}S{parallel}P"}
                yield bank, Counter({element: series * parallel})
        for text, elements in unlike_banks(self.owned, MAX_BANK):
            yield {"elements": text}, elements

    def add_runs(self, single: Single, bill: hm.Bill) -> None:
        owned: Counter[str] = Counter()
        for line in bill.lines:
            if line.kind not in ("wire", "connector") or line.part is None:
                continue
            single.runs[line.part] += line.quantity
            owned[line.part] += line.owned
            kind = self.catalog.wires if line.kind == "wire" else self.catalog.connectors
            self.price_of[line.part] = typical(kind[line.part])
        for part, count in owned.items():
            self.owned_of_runs[part] = max(self.owned_of_runs[part], count)

    def together(self, chosen: tuple[int, ...]) -> Verdict:
        if len(set(chosen)) == len(chosen) == 1:
            return self.singles[chosen[0]].alone
        if chosen not in self.judged:
            self.joint_checks += 1
            circuits = [self.singles[i].circuit for i in chosen]
            self.judged[chosen] = Verdict.of(self.assess(circuits, in_full=False))
        return self.judged[chosen]

    def bill_of(self, chosen: tuple[int, ...]) -> float:
        """Elements that are not owned, and all else."""
        used: Counter[str] = Counter()
        for i in chosen:
            used += self.singles[i].elements
        elements = self.catalog.elements
        missing = {name: max(0, n - self.owned[name]) for name, n in used.items()}
        price = sum(n * typical(elements[name]) for name, n in missing.items() if n)
        return price + self.together(chosen).bill

    def passes(self, chosen: tuple[int, ...], headroom: float, careful: bool) -> bool:
        verdict = self.together(chosen)
        if verdict.bad or verdict.headroom < headroom or (careful and not verdict.careful):
            return False
        if "budget" in self.goals and self.bill_of(chosen) > self.goals["budget"] * (1 + 1e-12):
            return False
        return self.pieces_of(chosen) <= self.goals.get("parts_max", float("inf"))

    def pieces_of(self, chosen: tuple[int, ...]) -> int:
        return self.together(chosen).pieces

    def best(self, headroom: float, *, careful: bool) -> Choice | None:
        return next(self.by_heat(headroom, careful=careful), None)

    def smallest_failing(
        self, chosen: tuple[int, ...], headroom: float, careful: bool
    ) -> tuple[int, ...]:
        for count in range(2, len(chosen)):
            for some in itertools.combinations(chosen, count):
                if not self.passes(some, headroom, careful):
                    return some
        return chosen

    def alike(self, chosen: tuple[int, ...]) -> list[tuple[int, ...]]:
        """All with the same banks, which mostly fail too: fewer programs to solve."""
        by_bank: dict[tuple[str, ...], list[int]] = {}
        for i, single in enumerate(self.singles):
            by_bank.setdefault(bank_of(single.circuit), []).append(i)
        banks = [bank_of(self.singles[i].circuit) for i in chosen]
        counts = [group["count"] for group in self.yard["panels"]]
        found = set()
        for some in itertools.product(*(by_bank[bank] for bank in banks)):
            used = map(sum, zip(*(self.singles[i].panels for i in some), strict=True))
            if all(n <= most for n, most in zip(used, counts, strict=True)):
                found.add(tuple(sorted(some)))
        return sorted(found)

    def by_heat(self, headroom: float, *, careful: bool) -> Any:
        """What passes, by falling heat."""
        program = Program(self, headroom, careful=careful)
        while (chosen := program.solve()) is not None:
            if not self.passes(chosen, headroom, careful):
                for alike in self.alike(self.smallest_failing(chosen, headroom, careful)):
                    if not self.passes(alike, headroom, careful):
                        program.never(alike)
                continue
            program.cut_off(chosen)
            yield Choice(
                sum(self.singles[i].kwh for i in chosen),  # exactly, not the solver's
                self.bill_of(chosen),
                self.pieces_of(chosen),
                [self.singles[i].circuit for i in chosen],
            )


def bank_of(circuit: dict[str, str]) -> tuple[str, ...]:
    return tuple(circuit.get(name, "") for name in ("element", "bank", "elements"))


def sorted_(circuits: list[dict[str, str]]) -> list[dict[str, str]]:
    """In the order in which the circuits of a plan lie in its store."""
    names = ("element", "bank", "elements", "group", "panels", "array")
    return sorted(circuits, key=lambda circuit: [circuit.get(name, "") for name in names])
