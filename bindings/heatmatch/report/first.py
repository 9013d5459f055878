"""The first screen on the first page of a report."""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from heatmatch import _library as _core
from heatmatch.report.layout import Table, chip, laid_out, translated
from heatmatch.text import look
from heatmatch.text.units import told


def first_block(
    of: _core.Candidate | _core.Ranking, row_of: _core.Ranking | None = None
) -> dict[str, Any]:
    """Its status and blocks, laid out in both unit sets; `row_of`: the ranking it is of."""
    screen = _core.first_screen(of) if row_of is None else _core.first_screen(of, row_of)

    def line(severity: str | None, said: Any) -> tuple[Any, Any]:
        return "" if severity is None else chip(severity), translated([said])[0]

    def band(units: str) -> str:
        severity, said = screen["status"]
        return look.band(severity, told(said, units))

    return {
        "status": [Markup(band(units)) for units in ("si", "us")],  # noqa: S704 - escaped there
        "blocks": [
            (translated([label])[0], [line(*one) for one in lines])
            for label, lines in screen["blocks"]
        ],
        "closing": translated(screen["closing"]),
    }


def others_of(ranking: _core.Ranking | None) -> Table | None:
    """The other ways of a ranking."""
    others = None if ranking is None else _core.first_screen(ranking)["others"]
    # Its title is the head of the first column.
    return laid_out(others, "") if others is not None and others.rows else None
