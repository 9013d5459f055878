"""Tables of the library laid out: as cells, and as text of 80 columns."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from heatmatch import _library as _core
from heatmatch.text.columns import clip, clip_middle, table, wrap
from heatmatch.text.sentence import Sentence
from heatmatch.text.units import told

# Names that may be cut where there is no room, so that the numbers beside them remain.
_CUT = {"group": clip, "subject": clip, "run": clip, "name": clip, "element": clip_middle}


def shown(sentence: Sentence, units: str = "si", width: int | None = None) -> str:
    """A sentence in that unit set; its name cut where the whole would be wider than `width`."""
    if width is None:
        return told(sentence, units)
    return told(cut(sentence, width, units), units)


def cut(sentence: Sentence, width: int, units: str = "si") -> Sentence:
    """The sentence with its first name that may be cut shortened to fit `width`."""
    arguments = sentence.arguments
    given = next((name for name in _CUT if isinstance(arguments.get(name), str)), None)
    if given is None:
        return sentence
    room = width - len(told(sentence, units)) + len(arguments[given])
    shorten = _CUT[given]
    return sentence.renamed(lambda name, text: shorten(text, room) if name == given else text)


def with_short_names(
    sentence: Sentence, widths: Mapping[str, int], middle: Mapping[str, int] | None = None
) -> Sentence:
    """The sentence with those names in at most so many characters; `middle`: their ends stay."""

    def short(name: str, text: str) -> str:
        if middle is not None and name in middle:
            return clip_middle(text, middle[name])
        return clip(text, widths[name]) if name in widths else text

    return sentence.renamed(short)


def texts(sentences: Iterable[str], units: str = "si") -> list[str]:
    """Sentences in that unit set; empty ones are omitted."""
    return [text for text in (told(sentence, units) for sentence in sentences) if text]


def heads(of: _core.Table, units: str = "si") -> list[str]:
    """The headings of a table's columns."""
    return [told(column.head, units) for column in of.columns]


def cells(
    of: _core.Table, units: str = "si", widths: Mapping[int, int] | None = None
) -> list[list[str]]:
    """The cells of a table, row by row; `widths`: characters of those columns, by their place."""
    room = widths or {}
    return [[shown(cell, units, room.get(i)) for i, cell in enumerate(row)] for row in of.rows]


def table_text(of: _core.Table, widths: Sequence[int], units: str = "si") -> str:
    """Columns of fixed width; numbers are aligned to the right, and where a width is negative."""
    room = {place: abs(width) for place, width in enumerate(widths)}
    signed = [
        -abs(width) if column.number else width
        for column, width in zip(of.columns, widths, strict=True)
    ]
    return table(heads(of, units), cells(of, units, room), signed)


def wrapped(sentences: Iterable[str], units: str = "si", indent: str = "  ") -> list[str]:
    """Sentences in lines of 80 columns, each on a new line."""
    return [wrap(text, indent) for text in texts(sentences, units)]
