"""Earlier formats of saved rankings."""

from __future__ import annotations

from typing import Any

# Columns of version 1 that have another name since.
_RENAMED = {
    "noon_match_ohm": "stc_match_ohm",
    "season_noon_ohm": "season_stc_match_ohm",
    "season_noon_kwh": "season_stc_match_kwh",
    "near_short_share": "near_short_circuit_share",
}


def of_version_1(plain: dict[str, Any]) -> dict[str, Any]:
    """The content of a file of version 1 with the column names of today."""
    rows = plain.get("rows")
    if not isinstance(rows, list):
        return plain
    renamed = [
        {_RENAMED.get(key, key): value for key, value in row.items()}
        if isinstance(row, dict)
        else row
        for row in rows
    ]
    return {"rejected": [], **plain, "rows": renamed}


def of_version_2(plain: dict[str, Any]) -> dict[str, Any]:
    """The content of a file of version 2: it has no recommendation."""
    return {"recommended": None, "alternatives": {}, "lacking": "", **plain}
