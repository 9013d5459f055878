"""Sentences that are written in SI units, in the other unit set."""

from __future__ import annotations

import re
from collections.abc import Iterable

from heatmatch import _core
from heatmatch.display_text import wrap

# A number and its unit; not the m of 9 m/s or of m2.
_QUANTITY = re.compile(r"(?<![\w.])(-?\d+(?:\.\d+)?) (°C|K|mm2|mm|m|W/mK|W/m2K)(?![\w/²³·])")


def in_units(text: str, units: str) -> str:
    """The text with its temperatures, lengths and areas in that unit set.

    Numbers that already are in it stay as they are.
    """
    if units == "si":
        return text

    def other(found: re.Match[str]) -> str:
        return _core.format_quantity(float(found[1]), found[2], units=units, digits=3)

    return _QUANTITY.sub(other, text)


def listed(title: str, texts: Iterable[str], units: str, mark: str = "  ") -> list[str]:
    """Lines of a titled list, in that unit set; nothing where there is none."""
    lines = [wrap(in_units(f"{mark}{text}", units), "    ") for text in texts]
    return ["", title, *lines] if lines else []
