"""Sentences that are written in SI units, in the other unit set."""

from __future__ import annotations

import re
from collections.abc import Iterable

from heatmatch import _core
from heatmatch.display_text import wrap
from heatmatch.errors import InvalidInput
from heatmatch.sentence import Sentence

UNITS = ("si", "us")

_NUMBER = r"[-\u2212]?\d+(?:\.\d+)?(?:e[+-]?\d+)?"
# A number or a range and its unit; not the m of 9 m/s or of m2, not a part of 1,200.
_QUANTITY = re.compile(
    rf"(?<![\w.,])(?<!e[+-])(?:({_NUMBER})( to |-|\u2013))?({_NUMBER}) "
    r"(°C|K|mm2|mm|m|W/mK|W/m2K)(?![\w/²³·])"
)
# What stands in both unit sets already.
_BOTH = re.compile(rf"{_NUMBER} (?:°C|mm2|mm|m) \(({_NUMBER} (?:°F|AWG|in|ft))\)")


def checked_units(units: str) -> str:
    """The unit set, if it is one.

    Raises
    ------
    InvalidInput
        It is neither "si" nor "us".
    """
    if units not in UNITS:
        raise InvalidInput(f'units = "{units}" must be "si" or "us"; leave it out for SI')
    return units


def in_units(text: str, units: str) -> str:
    """The text with its temperatures, lengths and areas in that unit set.

    Numbers that already are in it stay as they are; of a range both ends are converted.
    """
    if units == "si":
        return text
    if isinstance(text, Sentence):
        if not _has_verbatim(text):
            return text.text(units)
        text = text.text(units)

    def shown(number: str, unit: str) -> str:
        value = float(number.replace("\u2212", "-"))
        return _core.format_quantity(value, unit, units=units, digits=3)

    def other(found: re.Match[str]) -> str:
        first, sign, last, unit = found.groups()
        after = shown(last, unit)
        if first is None:
            return after
        before = shown(first, unit)
        same = before.split(" ", 1)[1:] == after.split(" ", 1)[1:]
        return f"{before.split(' ', 1)[0] if same else before}{sign}{after}"

    return _QUANTITY.sub(other, _BOTH.sub(r"\1", text))


def _has_verbatim(sentence: Sentence) -> bool:
    """Whether a text without data is in it, whose numbers are known by their units alone."""
    parts = (part for part in sentence.arguments.values() if isinstance(part, list))
    return sentence.id == "base.verbatim" or any(
        _has_verbatim(inner) for part in parts for inner in part
    )


def listed(title: str, texts: Iterable[str], units: str, mark: str = "  ") -> list[str]:
    """Lines of a titled list, in that unit set; nothing where there is none."""
    lines = [wrap(f"{mark}{in_units(text, units)}", "    ") for text in texts]
    return ["", title, *lines] if lines else []
