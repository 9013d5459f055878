"""The report: one page that holds everything, in both unit sets, and nothing that could act."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch._library import margins_table, shown_margin_name
from heatmatch.text.units import told
from report_reader import Page, read

pytest.importorskip("jinja2")


@pytest.fixture(scope="module")
def page(
    tmp_path_factory: pytest.TempPathFactory, standing: hm.Candidate, demo: hm.Installation
) -> Page:
    path = tmp_path_factory.mktemp("report") / "report.html"
    assert hm.report(standing, path, installation=demo) == path
    return read(path)


PAGES = (
    "Answer and bill", "Hook-up and wires", "Limits and code requirements",
    "Season and meter sheet", "Appendix",
)  # fmt: skip


@pytest.mark.parametrize("units", ["si", "us"])
def test_every_margin_check_and_caution_is_there_in_both_unit_sets(
    page: Page, standing: hm.Candidate, units: str
) -> None:
    text = page.text(units)
    for row in margins_table(standing).rows:
        assert " ".join(told(row[4], units).split()) in text
        assert row[5] in text
    for caution in hm.cautions():
        assert caution in text
    sheet = hm.meter_sheet(standing)
    for check in sheet.checks:
        assert check.reading in text
    for assumed in standing.assumed:
        assert " ".join(told(assumed, units).split()) in text
    assert ("°F" in text) == (units == "us")
    for run in standing.circuit.runs:
        assert run.name in text


def test_it_begins_with_what_it_comes_to(page: Page, standing: hm.Candidate) -> None:
    text = page.text("si")
    assert "seedling house at Hollow Brook" in text
    season = standing.season
    assert season is not None
    answer = text.index("Not for building")
    pages = [text.index(f" {head} ") for head in PAGES]
    assert [answer, *pages[1:]] == sorted([answer, *pages[1:]])
    verdict = text.index(f"About {season.mean_kwh_per_day:.2f} kWh of heat on an average day")
    assert pages[2] < verdict < text.index("Cautions") < pages[3]
    assert "only a small part of the heating" in text


def test_it_holds_no_script_and_asks_nobody(page: Page) -> None:
    assert "script" not in page.tags
    assert page.addresses
    assert all(address.startswith("data:image/svg+xml;base64,") for address in page.addresses)
    assert page.tags.count("img") >= 8


def test_every_source_that_is_named_is_cited(page: Page, standing: hm.Candidate) -> None:
    text = page.text("si")
    sources = hm.sources()
    for key in {margin.source for margin in standing.margins} & set(sources):
        assert sources[key]["title"] in text


def test_a_ranking_tells_its_best_and_what_trades_for_what(
    tmp_path: Path, demo_ranking: hm.Ranking, demo: hm.Installation
) -> None:
    path = tmp_path / "ranking.html"
    hm.report(demo_ranking, path, installation=demo, units="us")
    page = read(path)
    text = page.text("us")
    for candidate in demo_ranking[:10]:
        assert f"{candidate.circuit.element.id} {candidate.circuit.bank}" in text
    assert "Trade-offs" in text
    assert demo_ranking.recommended is not None
    assert demo_ranking.recommended.circuit.title in text
    for name, count in demo_ranking.reasons.items():
        assert f"{shown_margin_name(name)} {count}" in text
    source = path.read_text(encoding="utf-8")
    assert 'id="unit-us" checked' in source
    assert 'id="unit-si" checked' not in source


def test_a_danger_comes_first(
    tmp_path: Path, starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def melting(plain: dict[str, Any]) -> None:
        plain["runs"][2]["wire"] = "nm-b-12-awg"

    installation = changed_demo(melting)
    path = tmp_path / "danger.html"
    hm.report(hm.assess(starter, installation), path, installation=installation)
    candidate = hm.assess(starter, installation)
    for units in ("si", "us"):
        text = read(path).text(units)
        heat = text.index("kWh of heat on an average day")
        assert text.index("DANGER: ") < heat
        dangers = [m for m in candidate.margins if m.severity == "danger"]
        assert dangers
        for margin in dangers:
            assert text.index(margin.sentence(units=units)) < heat
    assert "Do not build it this way." in text
    nothing_left = hm.rank(starter, installation)
    assert len(nothing_left) == 0
    hm.report(nothing_left, path, installation=installation)
    assert "No pairing is without danger. The best of the rejected" in read(path).text("si")


def test_without_weather_the_heat_is_held_against_what_the_space_loses(
    tmp_path: Path, standing: hm.Candidate
) -> None:
    path = hm.report(standing, tmp_path / "alone.html")
    space, season = standing.space, standing.season
    assert space is not None
    assert season is not None
    # Cover and air are all that a space of plastic loses by; the lift is heat over loss.
    loss_w_k = space.cover_w_k + space.air_w_k
    lift_k = season.kwh / (24.0 * season.days) * 1000.0 / loss_w_k
    text = read(path).text("si")
    assert f"loses {10 * loss_w_k:.0f} W when it is 10 K warmer" in text
    assert f"raises it by {lift_k:.2g} K" in text
    assert f"raises it by {1.8 * lift_k:.2g} °F" in read(path).text("us")


def test_what_is_to_be_found_out_is_named(page: Page, standing: hm.Candidate) -> None:
    unknown = [margin for margin in standing.margins if margin.missing]
    assert unknown
    for margin in unknown:
        said = f"{margin.sentence()} Not known: {', '.join(margin.missing)}."
        assert said in page.text("si")


def test_there_is_room_to_write_and_nothing_is_folded_away(
    tmp_path: Path, standing: hm.Candidate
) -> None:
    source = hm.report(standing, tmp_path / "r.html").read_text(encoding="utf-8")
    own = source[source.index("my readings") :]
    own = own[: own.index("</table>")]
    head, _, body = own.partition("</thead>")
    assert body.count("<td ") + body.count('<th scope="row"') == 8 * head.count("<th ")
    assert "<details open>" in source


def test_a_name_that_would_fill_pages_takes_no_number_away(
    tmp_path: Path, starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def renamed(plain: dict[str, Any]) -> None:
        plain["runs"][0]["name"] = plain["devices"][0]["run"] = "Ж" * 10_000

    installation = changed_demo(renamed)
    candidate = hm.assess(starter, installation)
    text = read(hm.report(candidate, tmp_path / "long.html", installation=installation)).text("si")
    named = [m.sentence() for m in candidate.margins if "Ж" * 10_000 in m.sentence()]
    assert named
    for sentence in named:
        assert f"…{'Ж' * 20}" in text
        assert sentence.rpartition("Ж")[2] in text
    assert "Ж" * 1000 not in text


def test_what_is_not_known_is_left_out_or_said(tmp_path: Path, starter: hm.Catalog) -> None:
    plain = {
        "heatmatch_installation": 1,
        "site": {"record_low_c": -20},
        "panels": [{"group": "row", "panel": "silicon-36-cell-135", "count": 1}],
        "elements": [{"element": "storage-rod-1000-240", "count": 1}],
    }
    path = tmp_path / "bare.html"
    hm.report(hm.rank(starter, hm.Installation.from_dict(plain)), path)
    text = read(path).text("si")
    assert "No run of wire is described, so no wire is assessed." in text
    assert "W averaged over the conditions" in text
    assert "No space is described" in text
    assert "not assessed" in text


ODD = {
    "script": "<script>alert(1)</script>",
    "formula": "=cmd|' /C calc'!A0",
    "long": "sand and rust " * 720,
    "hebrew": "תנור חול",
    "emoji": "☀️🔥👩‍🔧",
    "braces": "{{ 7 * 7 }} {% raw %} {0}",
    "quotes": "\"><img src=x onerror=alert(1)> ' &amp;",
}


def odd_names() -> list[Any]:
    """Two in the short run: one that would run, one that would be filled in."""
    short = {"script", "braces"}
    return [
        pytest.param(odd, id=name, marks=() if name in short else pytest.mark.long)
        for name, odd in ODD.items()
    ]


@pytest.mark.parametrize("odd", odd_names())
def test_odd_names_do_no_harm(
    tmp_path: Path, starter: hm.Catalog, demo: hm.Installation, odd: str
) -> None:
    plain = demo.to_dict()
    plain["name"] = odd
    plain["panels"][0]["group"] = plain["circuit"]["group"] = odd
    plain["runs"][0]["name"] = odd
    plain["devices"][0]["run"] = odd
    element = starter.elements["storage-rod-1000-240"].to_dict()
    plain["parts"] = {"elements": [element | {"label": odd, "notes": odd, "source": odd}]}
    installation = hm.Installation.from_dict(plain)
    path = tmp_path / "odd.html"
    hm.report(hm.assess(starter, installation), path, installation=installation)
    page = read(path)
    assert "script" not in page.tags
    assert all(address.startswith("data:") for address in page.addresses)
    shown = " ".join(odd.split())[:40]
    assert shown in page.text("si")
    assert path.stat().st_size < 4_000_000


def test_errors_name_what_is_wrong(
    tmp_path: Path, standing: hm.Candidate, starter: hm.Catalog, demo: hm.Installation
) -> None:
    with pytest.raises(hm.InvalidInput, match='units = "metric" must be "si" or "us"'):
        hm.report(standing, tmp_path / "r.html", units="metric")
    with pytest.raises(hm.InvalidInput, match="what = str must be a Ranking, a Plan, a Candidate"):
        hm.report("demo", tmp_path / "r.html")  # type: ignore[arg-type]
    with pytest.raises(hm.InvalidInput, match="candidates = none must be at least one"):
        hm.report(hm.rank(starter, demo, top=0, keep_rejected=0), tmp_path / "r.html")
    for wrong in (tmp_path / "none" / "r.html", tmp_path):
        with pytest.raises(hm.FileError, match="cannot write"):
            hm.report(standing, wrong)
    assert list(tmp_path.iterdir()) == []


def test_it_says_what_it_needs(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, standing: hm.Candidate
) -> None:
    monkeypatch.setitem(sys.modules, "jinja2", None)
    with pytest.raises(ImportError, match=r"pip install 'libheatmatch\[report\]'"):
        hm.report(standing, tmp_path / "r.html")


def test_months_without_a_tilt_leave_the_season_out(
    tmp_path: Path, starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    installation = changed_demo(lambda plain: plain["site"].pop("tilt_deg"))
    path = tmp_path / "flat.html"
    hm.report(hm.rank(starter, installation), path, installation=installation)
    text = read(path).text("si")
    assert "the site lacks tilt_deg" in text
    assert "not drawn: candidate: season = none" in text


# Temperatures, lengths and differences in SI units have no place in a page of US units, but for
# the formulas, labeled as such, and the sources.
def test_no_si_number_is_left_in_us_units(page: Page) -> None:
    text = page.text("us").split("How it was computed")
    told = text[0] + text[1].split("What was assumed")[1].split("Sources")[0]
    named = told.replace("(PV latching plug, 4 mm)", "")  # the name of a part
    assert re.findall(r"\d (?:°C|K|mm)\b", named) == []
    assert "°F" in told


def test_hot_air_makes_a_run_the_hot_end(
    tmp_path: Path, starter: hm.Catalog, changed_demo: Callable[..., hm.Installation]
) -> None:
    def hot(plain: dict[str, Any]) -> None:
        plain["runs"][1]["surroundings"] = {"kind": "open air", "air_c": 90}

    installation = changed_demo(hot)
    path = tmp_path / "hot.html"
    hm.report(hm.assess(starter, installation), path, installation=installation)
    assert "3 hot end along the wall array" in read(path).text("si")
