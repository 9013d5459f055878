"""Temperatures of tables as whole degrees."""

from __future__ import annotations

from heatmatch import _core

UNKNOWN = "?"


def degrees(celsius: float | None, units: str) -> str:
    """A temperature as a whole number of the unit set's degrees, or `?`."""
    if celsius is None:
        return UNKNOWN
    text = _core.format_quantity(celsius, "°C", units=units, digits=8)
    return f"{float(text.split()[0]):.0f}"


def degree_unit(units: str) -> str:
    """The unit set's degrees."""
    return _core.format_quantity(0.0, "°C", units=units).split()[1]
