"""Text that fits its room in a drawing: wrapped by its measured width."""

from __future__ import annotations

import functools
import warnings
from collections.abc import Iterable

from heatmatch.text.columns import clip_middle

_LONGEST = 240  # characters that are measured
LEADING = 1.25  # from one line to the next, in sizes of type


def width_of(text: str, size: float, *, bold: bool = False) -> float:
    """Width of a line of text in the font of plots [pt]."""
    return _measured(text, size, bold)


def _measure(text: str, size: float, bold: bool) -> float:
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import text_to_path

    font = FontProperties(size=size, weight="bold" if bold else "normal")
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", "Glyph .* missing")  # a box is drawn instead
        width: float = text_to_path.get_text_width_height_descent(text, font, ismath=False)[0]
    return width


_measured = functools.lru_cache(maxsize=4096)(_measure)


def fitted(text: str, size: float, width: float, *, bold: bool = False) -> str:
    """The text on one line, cut in its middle where it is wider."""
    text = clip_middle(text, _LONGEST)
    if width_of(text, size, bold=bold) <= width:
        return text
    low, high = 1, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_of(clip_middle(text, middle), size, bold=bold) <= width:
            low = middle
        else:
            high = middle - 1
    return clip_middle(text, low)


def lines_of(text: str, size: float, width: float, most: int, *, bold: bool = False) -> list[str]:
    """The text in at most so many lines; the last one is cut where there is more."""
    words = clip_middle(text, _LONGEST).split(" ")
    lines: list[str] = []
    while words:
        if len(lines) == most - 1:
            return [*lines, fitted(" ".join(words), size, width, bold=bold)]
        taken = 1
        while taken < len(words):
            longer = " ".join(words[: taken + 1])
            if width_of(longer, size, bold=bold) > width:
                break
            taken += 1
        lines.append(fitted(" ".join(words[:taken]), size, width, bold=bold))
        words = words[taken:]
    return lines


def block_of(texts: Iterable[str], size: float, width: float, most: int) -> list[str]:
    """Several texts below each other, each on lines of its own."""
    lines: list[str] = []
    for text in texts:
        if len(lines) < most and text:
            lines += lines_of(text, size, width, most - len(lines))
    return lines
