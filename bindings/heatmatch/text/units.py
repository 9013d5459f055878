"""Sentences in the unit set of the reader."""

from __future__ import annotations

from collections.abc import Iterable

from heatmatch.errors import InvalidInput
from heatmatch.text.columns import wrap
from heatmatch.text.sentence import Sentence

UNITS = ("si", "us")


def checked_units(units: str) -> str:
    """The unit set, if it is one.

    Raises
    ------
    InvalidInput
        It is neither "si" nor "us".
    """
    if units not in UNITS:
        raise InvalidInput(f'units = "{units}" must be "si" or "us"; omit it for SI')
    return units


def told(text: str, units: str) -> str:
    """A sentence in that unit set; any other text is unchanged."""
    return text.text(units) if isinstance(text, Sentence) else text


def listed(title: str, texts: Iterable[str], units: str, mark: str = "  ") -> list[str]:
    """Lines of a titled list, in that unit set; nothing where there is none."""
    lines = [wrap(f"{mark}{told(text, units)}", "    ") for text in texts]
    return ["", title, *lines] if lines else []
