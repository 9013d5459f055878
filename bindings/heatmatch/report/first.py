"""The first screen on the first page of a report."""

from __future__ import annotations

from typing import Any

from markupsafe import Markup

from heatmatch import _library as _core
from heatmatch.report.layout import both_rows, chip, laid_out, translated
from heatmatch.text import look
from heatmatch.text.first_screen import others_rows
from heatmatch.text.units import told


def first_block(
    candidate: _core.Candidate, ranking: _core.Ranking | None, plan: _core.Plan | None
) -> dict[str, Any]:
    """Its status, blocks and other ways, laid out in both unit sets."""
    screen = _core.first_screen(candidate if ranking is None else ranking)

    def line(severity: str | None, said: Any) -> tuple[Any, Any]:
        return "" if severity is None else chip(severity), translated([said])[0]

    def band(units: str) -> str:
        severity, said = screen["status"]
        return look.band(severity, told(said, units))

    others = screen["others"]
    ways = None
    if others.columns:
        ways = laid_out(others)
        ways.rows = both_rows(lambda units: others_rows(others, plan, units))
    return {
        "status": [Markup(band(units)) for units in ("si", "us")],  # noqa: S704 - escaped there
        "blocks": [
            (translated([label])[0], [line(*one) for one in lines])
            for label, lines in screen["blocks"]
        ],
        "others": ways if ways is not None and ways.rows else None,
        "closing": translated(screen["closing"]),
    }
