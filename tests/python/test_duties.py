"""Duties of codes, counts of checks and checks not made, in every output."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from html import unescape
from pathlib import Path
from typing import Any

import heatmatch as hm
import pytest
from heatmatch import _library as _core
from heatmatch.text.duties import checks_row, counts_html, duties_text
from heatmatch.text.results import candidate_text, ranking_text

# What a check that found nothing must never be called.
FORBIDDEN = re.compile(r"\b(safe|ok|passed|compliant|complies|approved)\b", re.IGNORECASE)


def flat(text: str) -> str:
    """The text on one line, markup left out."""
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", text)).split())


def answers(ranking: hm.Ranking, candidate: hm.Candidate) -> dict[str, str]:
    """Texts of a ranking and of a candidate."""
    return {
        "ranking": ranking_text(ranking),
        "ranking in US units": ranking_text(ranking, units="us"),
        "candidate": candidate_text(candidate),
        "candidate in US units": candidate_text(candidate, units="us"),
        "ranking in a notebook": ranking._repr_html_(),
        "candidate in a notebook": candidate._repr_html_(),
        "verdict": " ".join(_core.verdict(candidate)),
        "data": json.dumps(checks_row(candidate), ensure_ascii=False),
    }


@pytest.fixture(scope="module")
def told(demo_ranking: hm.Ranking, standing: hm.Candidate) -> dict[str, str]:
    return answers(demo_ranking, standing)


def test_nothing_is_called_safe(told: dict[str, str], demo_ranking: hm.Ranking) -> None:
    rejected = candidate_text(demo_ranking.rejected[0])
    for face, text in (told | {"rejected": rejected}).items():
        found = FORBIDDEN.search(flat(text))
        assert found is None, f"{face}: {found and found.group()}"


def test_every_answer_has_the_counts_and_the_list_directly_under_them(
    told: dict[str, str], standing: hm.Candidate, demo_ranking: hm.Ranking
) -> None:
    for face, candidate in {
        "ranking": demo_ranking[0],
        "candidate": standing,
        "ranking in a notebook": demo_ranking[0],
        "candidate in a notebook": standing,
    }.items():
        text = "".join(flat(told[face]).replace(" - ", " ").split())  # names break at hyphens
        counts = _core.counts_sentence(candidate)
        under = " ".join(" ".join(line.split()) for line in _core.not_checked_lines(candidate))
        assert "".join(f"{counts} {under}".split()) in text, face


def test_the_counts_are_those_of_the_margins(standing: hm.Candidate) -> None:
    severities = [margin.severity for margin in standing.margins]
    counts = standing.checks
    assert counts.made + counts.not_made == len(severities)
    assert counts.not_made == standing.not_assessed
    assert counts.dangers == severities.count("danger")
    assert counts.warnings == severities.count("warning")
    assert counts.cautions == severities.count("caution")
    assert counts.no_finding == severities.count("none")
    row = checks_row(standing)
    assert row["checks"]["made"] == counts.made
    listed = [(c["name"], c["subject"]) for g in row["not_checked"] for c in g["checks"]]
    for margin in standing.margins:
        if margin.severity == "not assessed" or margin.missing:
            assert (margin.name, margin.subject) in listed
    assert json.loads(json.dumps(row)) == row


def test_the_list_is_grouped_by_what_to_state(standing: hm.Candidate) -> None:
    made = [len(group.checks) for group in standing.not_checked if not group.judged]
    assert made == sorted(made, reverse=True)
    fields = [
        field for group in standing.not_checked if not group.judged for field in group.missing
    ]
    assert len(fields) == len(set(fields))


# Source: NEC 690.11: 80 V; 690.41(B): 30 V or 8 A; 690.12.
def test_the_demo_has_the_duties_of_its_code(demo_ranking: hm.Ranking) -> None:
    duties = {duty.name: duty for duty in demo_ranking[0].code_duties()}
    assert {duty.code for duty in duties.values()} == {"nec"}
    assert duties["arc-fault protection"].begins_v == 80
    assert duties["earth-fault protection"].begins_a == 8
    assert duties["labels"].met_by == "nobody stated"
    text = duties_text(demo_ranking[0])
    assert "Local codes and licensed practice decide." in flat(text)
    assert all(len(line) <= 80 for line in text.splitlines())
    for step in ("30 V", "60 V", "80 V"):
        assert step in text


def test_every_duty_cites_a_source(standing: hm.Candidate, starter: hm.Catalog) -> None:
    plain = hm.demo().to_dict()
    plain["site"].pop("code", None)
    ranking = hm.rank(starter, hm.Installation.from_dict(plain), top=1)
    duties = [*standing.code_duties(), *ranking[0].code_duties()]
    assert {duty.code for duty in duties} == {"nec", "iec"}
    for duty in duties:
        assert duty.source in hm.sources(), duty.name
        assert duty.description.endswith("."), duty.name
        assert repr(duty).startswith("<CodeDuty ")


def test_a_circuit_alone_has_the_same_duties_without_the_catalog(standing: hm.Candidate) -> None:
    alone = _core.code_duties(standing.circuit, standing.site)
    assert [duty.met_by for duty in alone] == [duty.met_by for duty in standing.code_duties()]
    assert all(duty.suitable_controls == [] for duty in alone)


def test_duties_change_no_rank(starter: hm.Catalog, demo_ranking: hm.Ranking) -> None:
    plain = hm.demo().to_dict()
    plain["site"] |= {"array_on": "ground"}
    again = hm.rank(starter, hm.Installation.from_dict(plain), top=5)
    titles = [one.circuit.title for one in again]
    assert titles == [one.circuit.title for one in demo_ranking[:5]]


def test_the_explorer_has_the_list_under_its_verdict(
    starter: hm.Catalog, demo: hm.Installation
) -> None:
    pytest.importorskip("ipywidgets")
    panel = hm.explore(starter, demo)
    shown = panel.status.value
    under = counts_html(panel.candidate, counts=False)
    assert shown.index("Checks made") < shown.index(under)
    assert FORBIDDEN.search(flat(shown)) is None


def test_the_report_has_the_list_under_its_verdict(tmp_path: Path, standing: hm.Candidate) -> None:
    pytest.importorskip("jinja2")
    pytest.importorskip("matplotlib")
    text = hm.report(standing, tmp_path / "report.html").read_text(encoding="utf-8")
    page = flat(re.sub(r'<span class="us">.*?</span>', "", text))
    counts = page.index("Checks made")
    assert counts < page.index("Never checked here") < page.index("Cautions")
    assert counts < page.rindex("Code requirements") < page.index("Cautions")
    assert page.rindex("Code requirements") < page.index("Heat of the")
    assert FORBIDDEN.search(page[: page.index("How it was computed")]) is None


def test_the_command_line_gives_them_as_data(command: Callable[..., Any], tmp_path: Path) -> None:
    path = tmp_path / "demo.json"
    path.write_text(hm.demo().to_json_text(), encoding="utf-8")
    data = json.loads(command("rank", path, "--top", "1", "--json").out)
    first = data["candidates"][0]
    assert set(first["checks"]) == {
        "made", "not_made", "warnings", "dangers", "cautions", "no_finding",
    }  # fmt: skip
    assert first["not_checked"]
    assert first["code_duties"]
    told = flat(command("rank", path, "--top", "1", "--full").out)
    assert told.count("Checks made") == 1
