"""Text of 80 columns: clipping, wrapping, tables."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Sequence

from heatmatch.text.plain import plain

WIDTH = 80


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
    return textwrap.fill(plain(text), WIDTH, subsequent_indent=indent)


def table(header: Sequence[str], rows: Iterable[Sequence[str]], widths: Sequence[int]) -> str:
    """Columns of fixed width; a negative one is aligned to the right.

    A heading that is aligned to the right and too long uses blanks of the heading before it.
    """

    def line(cells: Sequence[str], widths: Sequence[int]) -> str:
        parts = []
        for text, width in zip(cells, widths, strict=True):
            shown = clip(text, abs(width))
            parts.append(shown.rjust(-width) if width < 0 else shown.ljust(width))
        return " ".join(parts).rstrip()

    wide = list(widths)
    for i in range(1, len(wide)):
        more = len(header[i]) + wide[i]
        if wide[i] < 0 < more <= wide[i - 1] - len(header[i - 1]):
            wide[i] -= more
            wide[i - 1] -= more
    return "\n".join([line(header, wide), *(line(row, widths) for row in rows)])
