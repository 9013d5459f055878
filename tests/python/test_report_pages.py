"""The four pages of a report: their length, and severities in their signals."""

from __future__ import annotations

from pathlib import Path

import heatmatch as hm
import pytest
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
