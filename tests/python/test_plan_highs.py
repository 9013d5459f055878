"""The choice of a plan beside HiGHS (highspy), which chooses among the same circuits.

Each circuit's heat, bill and headroom alone are the library's, by `assess()`; which of them to
build is a 0/1 program of another solver (`plan_referee.py`). `pytest -s` prints a line a yard.
"""

from __future__ import annotations

import itertools
import os
import random
import re
from collections.abc import Iterator
from typing import Any

import heatmatch as hm
import pytest
from plan_referee import Choice, Referee, Yard

LONG = bool(os.environ.get("HEATMATCH_LONG_RUN"))
YARDS = 100 if LONG else 8
LEVELS = (0.3, 0.2, 0.1, 0.0)
ENOUGH = 0.95  # of the heat without headroom, for a level of headroom
TIE = 0.99
PANELS = ("silicon-60-cell-245", "silicon-36-cell-135", "cdte-100", "silicon-72-cell-300")
ELEMENTS = ("storage-rod-1000-240", "tubular-1000-120", "storage-rod-1050-230", "strip-500-240")
FOR_SALE = ("oven bake", "strip", "range coil")


def small_yard(seed: int) -> Yard:
    """A few panels and elements in the store of the demo, with goals that bind now and then."""
    dice = random.Random(seed)
    yard = hm.demo().to_dict()
    del yard["circuit"]
    left = dice.randint(3, 5 if LONG else 4)
    yard["panels"] = []
    for panel in dice.sample(PANELS, 3):
        count = min(left, dice.randint(1, 3))
        if count:
            group = {"group": f"all {panel}", "panel": panel, "count": count}
            yard["panels"].append({**group, "age_years": dice.randint(0, 20), "rear_blocked": True})
        left -= count
    names = dice.sample(ELEMENTS, 2)
    yard["elements"] = [{"element": name, "count": dice.randint(1, 2)} for name in names]
    if dice.random() < 0.4:
        filtered = {"family": [dice.choice(FOR_SALE)], "price_max": 60}
        yard["elements"].append({"any": filtered, "count": dice.randint(1, 2)})
    yard["goals"]["circuits_max"] = dice.randint(1, 3)
    yard["goals"]["budget"] = dice.choice((45, 100, 150, 250, 500))
    if dice.random() < 0.2:
        yard["goals"]["volts_max"] = dice.choice((60, 80, 120))
    if dice.random() < 0.2:
        yard["goals"]["headroom_min"] = dice.choice((0.05, 0.15, 0.35))
    if dice.random() < 0.1:
        yard["goals"]["parts_max"] = dice.randint(12, 24)
    for device in yard["devices"]:  # a circuit of its own has a contactor and a limit, too
        device["owned"] = dice.randint(1, 3)
    yard["store"]["diameter_m"] = dice.choice((0.45, 0.57, 0.8))
    yard["runs"][1]["owned_m"] = dice.choice((0, 6, 18))
    return yard


def expected(referee: Referee) -> tuple[float, list[Choice]]:
    """The level of headroom by the rule of `hm.plan`, and all within 1 % of the most heat at it."""
    base = referee.goals.get("headroom_min", 0.0)
    careful = referee.best(base, careful=True) is not None
    most = referee.best(base, careful=careful)
    if most is None:
        return base, []
    for level in (*(level for level in LEVELS if level > base), base):
        choices = referee.by_heat(level, careful=careful)
        best = next(choices, None)
        if best is not None and best.kwh >= ENOUGH * most.kwh:
            return level, [best, *near(best, choices)]
    raise AssertionError("the base has all of its own heat")


def near(best: Choice, choices: Iterator[Choice]) -> Iterator[Choice]:
    return itertools.takewhile(lambda each: each.kwh >= TIE * best.kwh, choices)


def tolerance(choices: list[Choice]) -> float:
    """Equal panels have one curve everywhere; those of unlike ones have grids of 48 and 64 ohms."""
    alike = [each for each in choices if each.kwh >= choices[0].kwh * (1 - 2e-4)]
    return 1e-3 if any("array" in circuit for each in alike for circuit in each.circuits) else 1e-9


def of_plan(plan: hm.Plan) -> list[dict[str, Any]]:
    circuits = []
    for each in plan.installation.to_dict()["circuits"]:
        circuits.append({key: value for key, value in each.items() if key != "name"})
    return circuits


@pytest.mark.parametrize("seed", range(YARDS))
def test_another_solver_finds_no_more_heat_and_no_smaller_bill(
    starter: hm.Catalog, seed: int
) -> None:
    yard = small_yard(seed)
    referee = Referee(starter, yard)
    level, choices = expected(referee)
    plan = hm.plan(starter, hm.Installation.from_dict(yard), referee.weather)
    if not choices:
        print(f"yard {seed}: {referee.tried} circuits tried, none passes")
        assert len(plan) == 0
        assert plan.summary()[0].startswith("No plan meets the goals")
        return
    best, within = choices[0], tolerance(choices)
    smallest = min(choices, key=lambda each: (round(each.bill, 6), len(each.circuits), each.pieces))
    error = plan.at_most_kwh / best.kwh - 1
    print(
        f"yard {seed}: {len(referee.singles)} of {referee.tried} circuits, "
        f"{len(best.circuits)} chosen, "
        f"{referee.joint_checks} checks together, {len(choices)} within 1 %: "
        f"{best.kwh:.6f} kWh, the plan's bound {error:+.1e} of it ({within:.0e} allowed); "
        f"bill {smallest.bill:.2f}, the plan's {plan.bill.typical:.2f}"
    )
    assert plan.headroom == pytest.approx(level), (plan.headroom, level)
    assert plan.at_most_kwh == pytest.approx(best.kwh, rel=within)
    assert plan.kwh >= TIE * best.kwh * (1 - within)
    assert plan.bill.typical == pytest.approx(smallest.bill, rel=1e-9), smallest
    assert len(plan) == len(smallest.circuits)
    alike = [each.kwh for each in choices if same_circuits(each.circuits, of_plan(plan))]
    assert plan.kwh in [pytest.approx(kwh, rel=1e-9) for kwh in alike]


def same_circuits(some: list[dict[str, Any]], others: list[dict[str, Any]]) -> bool:
    def strings(circuit: dict[str, Any]) -> Any:
        """Strings of an array in any order, panels of a string too."""
        text = circuit.get("array")
        if not text:
            return (circuit["group"], circuit["panels"])
        return tuple(sorted(tuple(sorted(map(one, s.split(" + ")))) for s in text.split(" | ")))

    def one(panels: str) -> str:
        return panels if " x" in panels else f"{panels} x1"

    def bank(circuit: dict[str, Any]) -> Any:
        """Unlike elements by their ids, in any order; their heat tells the rest."""
        ids = re.sub(
            r"([\w-]+) x(\d+)", lambda m: " ".join([m[1]] * int(m[2])), circuit.get("elements", "")
        )
        return (circuit.get("element"), circuit.get("bank"), sorted(re.findall(r"[\w-]+", ids)))

    def key(circuit: dict[str, Any]) -> str:
        return repr((bank(circuit), strings(circuit)))

    return sorted(map(key, some)) == sorted(map(key, others))
