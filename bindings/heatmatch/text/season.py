"""The season of a candidate as text of 80 columns."""

from __future__ import annotations

from heatmatch import _library as _core
from heatmatch.text.table import table_text, wrapped

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def season_text(candidate: _core.Candidate, *, units: str = "si") -> str:
    """Season of a candidate, as sentences and a table of months."""
    season = candidate.season
    if season is None:
        return ""
    lines = wrapped(_core.season_sentences(candidate), units)
    made = _core.season_table(season)
    if len(made.columns) > 1:
        lines += ["", table_text(made, (8, *(5 for _ in made.columns[1:])), units)]
    return "\n".join(lines)
