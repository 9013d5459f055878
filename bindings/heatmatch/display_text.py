"""Text of 80 columns: clipping, wrapping, tables."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Sequence

WIDTH = 80
# Names come from files of strangers: a terminal obeys control characters, and marks that turn the
# direction of writing show a line in another order than it has. Letters written from the right
# need neither.
_COMMANDS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")


def plain(text: str) -> str:
    """The text with a question mark for each character that a terminal would obey."""
    return _COMMANDS.sub("?", text)


def clip(text: str, width: int) -> str:
    """The text on one line, cut with an ellipsis where it is longer than `width`."""
    text = plain(" ".join(text.split()))
    return text if len(text) <= width else text[: max(0, width - 1)] + "…"


def clip_middle(text: str, width: int) -> str:
    """The same, but cut in its middle: ids differ at both ends."""
    text = plain(" ".join(text.split()))
    if len(text) <= width:
        return text
    tail = max(0, 2 * (width - 1) // 5)
    return text[: width - 1 - tail] + "…" + text[len(text) - tail :]


def wrap(text: str, indent: str = "  ") -> str:
    """The text in lines of 80 columns, following ones indented."""
    return plain(textwrap.fill(text, WIDTH, subsequent_indent=indent))


def table(header: Sequence[str], rows: Iterable[Sequence[str]], widths: Sequence[int]) -> str:
    """Columns of fixed width; a negative one is aligned to the right."""

    def line(cells: Sequence[str]) -> str:
        parts = []
        for text, width in zip(cells, widths, strict=True):
            shown = clip(text, abs(width))
            parts.append(shown.rjust(-width) if width < 0 else shown.ljust(width))
        return " ".join(parts).rstrip()

    return "\n".join([line(header), *(line(row) for row in rows)])
