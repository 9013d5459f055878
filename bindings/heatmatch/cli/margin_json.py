"""Margins and texts of results as plain data."""

from __future__ import annotations

from typing import Any

from heatmatch import _library as _core
from heatmatch.text.units import told


def texts_in(data: dict[str, Any], units: str, *names: str) -> dict[str, Any]:
    """Plain data with the texts, or lists of texts, of those names in that unit set."""

    def read(value: Any) -> Any:
        if isinstance(value, list):
            return [read(item) for item in value]
        return told(value, units) if isinstance(value, str) else value

    return {name: read(value) if name in names else value for name, value in data.items()}


def margin_json(margin: _core.Margin, units: str) -> dict[str, Any]:
    """A margin as plain data."""
    data = {
        "severity": margin.severity,
        "worst_severity": margin.worst_severity,
        "name": margin.name,
        "subject": margin.subject,
        "value": margin.value,
        "limit": margin.limit,
        "unit": margin.unit,
        "headroom": margin.headroom,
        "careful_headroom": margin.careful_headroom,
        "sentence": margin.sentence(units=units),
        "source": margin.source,
        "assumed": margin.assumed,
        "missing": margin.missing,
    }
    return texts_in(data, units, "assumed", "missing")
