"""The plan through Python and the command line."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest


@pytest.fixture(scope="module")
def yard(demo: hm.Installation) -> hm.Installation:
    """The demo with few elements, which is quick to plan."""
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    return demo.replace({"elements": [rods]})


@pytest.fixture(scope="module")
def plan(starter: hm.Catalog, yard: hm.Installation) -> hm.Plan:
    return hm.plan(starter, yard)


def test_its_circuits_are_those_of_an_assessment(plan: hm.Plan, starter: hm.Catalog) -> None:
    assessed = hm.assess_circuits(starter, plan.installation)
    assert len(assessed) == len(plan) > 0
    assert plan.kwh == pytest.approx(sum(each.season.kwh for each in assessed), rel=1e-12)
    assert all(each.severity != "danger" for each in assessed)
    assert min(each.smallest_headroom for each in assessed) >= plan.headroom
    assert plan.bill.typical is not None
    assert plan.bill.typical <= 150.0


def test_no_bound_is_below_its_heat(plan: hm.Plan) -> None:
    assert plan.gap >= 0.0
    assert plan.at_most_kwh >= plan.kwh
    assert all(bound >= plan.kwh for bound in plan.bounds.values())


def test_every_panel_is_used_or_left_out_with_the_reason(
    plan: hm.Plan, yard: hm.Installation
) -> None:
    used = sum(len(string) for each in plan.circuits for string in each.circuit.strings)
    assert used + sum(idle.count for idle in plan.idle) == sum(one.count for one in yard.panels)
    assert all(str(idle.why) for idle in plan.idle)


def test_it_has_more_heat_than_any_circuit_of_the_ranking(
    plan: hm.Plan, starter: hm.Catalog, yard: hm.Installation
) -> None:
    recommended = hm.rank(starter, yard).recommended
    assert recommended is not None
    assert plan.kwh >= recommended.season.kwh * 0.99  # 1 % goes to the smaller bill


def test_the_command_line_prints_heat_open_points_and_bill(
    yard: hm.Installation, tmp_path: Path, command: Callable[..., Any]
) -> None:
    path = tmp_path / "yard.json"
    path.write_text(yard.to_json_text(), encoding="utf-8")
    text = command("plan", path, "--quiet").out
    assert "kWh a day of the season, for" in text
    assert "Not for building" in text
    assert "bonding" in text
    assert "within the budget of 150 USD" in " ".join(text.split())
    data = json.loads(command("plan", path, "--quiet", "--json").out)
    assert data["kwh"] > 0.0
    assert data["circuits"]


def test_goals_that_no_plan_meets_are_answered(starter: hm.Catalog, yard: hm.Installation) -> None:
    nothing = hm.plan(starter, yard.replace({"goals.volts_max": 5}))
    assert len(nothing) == 0
    assert nothing.summary()[0].startswith("No plan meets the goals")


def test_unlocks_add_heat_and_say_their_price(
    starter: hm.Catalog, yard: hm.Installation, tmp_path: Path, command: Callable[..., Any]
) -> None:
    low = yard.replace({"goals.volts_max": 60})
    plan = hm.plan(starter, low)
    unlocks = plan.unlocks(starter)
    assert unlocks
    assert [each.kwh for each in unlocks] == sorted((each.kwh for each in unlocks), reverse=True)
    volts = next(each for each in unlocks if each.changed.goals.volts_max is None)
    assert volts.crosses_v == 80.0
    assert "80 V" in str(volts.said)
    then = hm.plan(starter, volts.changed.replace({"goals.headroom_min": plan.headroom}))
    assert then.kwh - plan.kwh == pytest.approx(volts.kwh, rel=0.05)
    path = tmp_path / "yard.json"
    path.write_text(low.to_json_text(), encoding="utf-8")
    assert "kWh a day more" in " ".join(command("plan", path, "--quiet", "--unlocks").out.split())
    data = json.loads(command("plan", path, "--quiet", "--unlocks", "--json").out)
    assert data["unlocks"][0]["kwh"] == pytest.approx(unlocks[0].kwh)


class Stopped(Exception):
    """Of a progress function."""


def test_a_plan_reports_progress_and_stops(starter: hm.Catalog, yard: hm.Installation) -> None:
    shares: list[float] = []
    hm.plan(starter, yard, progress=shares.append)
    assert shares == sorted(shares)
    assert shares
    assert all(0.0 <= share <= 1.0 for share in shares)

    def stop(share: float) -> None:
        raise Stopped

    with pytest.raises(Stopped):
        hm.plan(starter, yard, progress=stop)
