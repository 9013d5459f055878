"""The four pages of a report: their length, and severities in their signals."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._library import hold_points_table, plan_line
from heatmatch.text import look
from report_reader import Page

pytest.importorskip("jinja2")


def body_of(path: Path, units: str) -> str:
    """Everything before the appendix."""
    source = path.read_text(encoding="utf-8")
    body = source[source.index("<main>") : source.index("</main>") + len("</main>")]
    return Page(body).text(units)


def test_the_body_has_at_most_2500_words(
    tmp_path: Path, demo_ranking: hm.Ranking, standing: hm.Candidate, demo: hm.Installation
) -> None:
    for what in (demo_ranking, standing):
        path = hm.report(what, tmp_path / "r.html", installation=demo, force=True)
        for units in ("si", "us"):
            assert 500 < len(body_of(path, units).split()) <= 2500
        source = path.read_text(encoding="utf-8")
        assert source.count('<section class="page') == 4


def test_severities_are_in_their_signals(tmp_path: Path, standing: hm.Candidate) -> None:
    source = hm.report(standing, tmp_path / "r.html").read_text(encoding="utf-8")
    body = source[source.index("<main>") : source.index("</main>")]
    warnings = sum(1 for margin in standing.margins if margin.severity == "warning")
    assert body.count(look.chip("warning")) >= warnings > 0
    assert look.chip("none") not in body
    assert "other checks: no finding" in body


@pytest.fixture(scope="module")
def several(starter: hm.Catalog, demo: hm.Installation) -> hm.Installation:
    """The demo with two existing circuits."""
    plain = demo.to_dict()
    first = plain.pop("circuit") | {"name": "first"}
    second = first | {"name": "second", "group": "porch four", "panels": "4S1P"}
    return hm.Installation.from_dict(plain | {"circuits": [first, second]})


def test_work_for_licensed_persons_is_named_with_its_hold_point(
    tmp_path: Path, standing: hm.Candidate
) -> None:
    text = body_of(hm.report(standing, tmp_path / "r.html"), "si")
    rows = hold_points_table([standing]).rows
    assert len(rows) >= 6
    page = text[text.index("wiring list") : text.index("Limits and code requirements")]
    for job, hold, who, _ in rows:
        assert f"{job} {hold} {who}" in page
        assert " until " in hold
    assert "licensed electrician" in page


def test_the_meter_sheet_serves_a_reader_without_a_sun_meter(
    tmp_path: Path, standing: hm.Candidate
) -> None:
    text = body_of(hm.report(standing, tmp_path / "r.html"), "si")
    said = hm.meter_sheet(standing).without_sun_meter
    assert said
    for sentence in said:
        assert " ".join(sentence.split()) in text


def test_a_report_of_several_circuits_has_each_in_full(
    tmp_path: Path, starter: hm.Catalog, several: hm.Installation
) -> None:
    circuits = hm.assess_circuits(starter, several)
    assert len(circuits) == 2
    path = hm.report(circuits, tmp_path / "r.html", installation=several)
    source = path.read_text(encoding="utf-8")
    text = body_of(path, "si")
    assert source.count('<section class="page') == 4
    for page in ("Answer and bill", "wiring list", "Code requirements", "Season and meter sheet"):
        assert page in text
    for each in circuits:
        assert source.count(f'<h3 dir="auto">{each.circuit.name}</h3>') >= 4
        for check in hm.meter_sheet(each).checks:
            assert check.reading in text
    assert source.count("wiring list, by temperature zone") == 2
    assert source.count("Hook-up: ") == 2  # one drawing of all, in both unit sets


def test_a_report_of_a_plan_has_its_answer_and_its_bill(
    tmp_path: Path, starter: hm.Catalog, demo: hm.Installation
) -> None:
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    plan = hm.plan(starter, demo.replace({"elements": [rods]}))
    text = body_of(hm.report(plan, tmp_path / "r.html"), "si")
    assert text.index(plan.summary()[0]) < text.index("Hook-up and wires")
    assert f"{plan.bill.typical:.0f} USD" in text
    for each in plan.circuits:
        assert each.circuit.name in text
    empty = hm.plan(starter, demo.replace({"elements": [rods], "goals.volts_max": 5}))
    with pytest.raises(hm.InvalidInput, match="plan: circuits = none"):
        hm.report(empty, tmp_path / "none.html")


def test_the_line_of_the_plan_is_below_the_other_ways(
    tmp_path: Path, starter: hm.Catalog, demo: hm.Installation, demo_ranking: hm.Ranking
) -> None:
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    plan = hm.plan(starter, demo.replace({"elements": [rods]}))
    without = body_of(hm.report(demo_ranking, tmp_path / "a.html"), "si")
    made = body_of(hm.report(demo_ranking, tmp_path / "b.html", plan=plan), "si")
    assert str(plan_line(None)) in without
    assert str(plan_line(plan)) in made
    assert "1 circuits" not in made
    assert str(plan_line(None)) not in made


def test_the_command_reports_existing_circuits_and_the_plan(
    command: Callable[..., Any], several: hm.Installation, tmp_path: Path
) -> None:
    place = tmp_path / "place.json"
    place.write_text(several.to_json_text(), encoding="utf-8")
    out = tmp_path / "page.html"
    assert command("report", place, "-o", out, "--quiet").code in (0, 3)
    text = body_of(out, "si")
    assert "first" in text
    assert "second" in text
    done = command("report", place, "-o", out, "--force", "--plan", "--rank", "1")
    assert (done.code, "--plan and --rank" in done.err) == (1, True)
    rods = hm.AllowedElements(element="storage-rod-1000-240", count=2)
    place.write_text(several.replace({"elements": [rods]}).to_json_text(), encoding="utf-8")
    assert command("report", place, "-o", out, "--force", "--plan", "--quiet").code == 0
    assert "kWh a day of the season, for" in body_of(out, "si")
