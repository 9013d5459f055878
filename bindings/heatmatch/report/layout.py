"""Texts and tables of a report laid out in both unit sets."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from markupsafe import Markup

from heatmatch import _library as _core
from heatmatch.text import look
from heatmatch.text.columns import clip, clip_middle
from heatmatch.text.forms import number_columns, severity_columns
from heatmatch.text.table import cells, heads
from heatmatch.text.units import told

LONGEST = 400  # characters of a cell; longer names are cut


@dataclass
class Table:
    """A table with its caption; cells are texts, or markup where unit sets differ."""

    caption: Any
    header: Sequence[Any]
    rows: Sequence[Sequence[Any]]
    notes: Sequence[Any] = field(default_factory=list)
    numbers: Sequence[int] = ()  #: columns aligned to the right


def _bounded(text: str) -> str:
    """The text on one line; around a name that would fill pages its ends stay, with the numbers."""
    line = clip(text, len(text))
    return line if len(line) <= 4 * LONGEST else clip_middle(line, 2 * LONGEST)


def either(si: str, us: str) -> Any:
    """A text in both unit sets, of which the page shows one; a plain text where they agree."""
    si, us = (_bounded(text) for text in (si, us))
    if si == us:
        return si
    return Markup('<span class="si">{}</span><span class="us">{}</span>').format(si, us)


def both(text_of: Callable[[str], str]) -> Any:
    """The text that a unit set has, for both of them."""
    return either(text_of("si"), text_of("us"))


def translated(texts: Iterable[str]) -> list[Any]:
    """Sentences that are written in SI units, in both unit sets."""
    return [either(text, told(text, "us")) for text in texts]


def both_rows(rows_of: Callable[[str], Iterable[Sequence[str]]]) -> list[list[Any]]:
    """Rows of cells, each cell in both unit sets."""
    pairs = zip(rows_of("si"), rows_of("us"), strict=True)
    return [[either(*cells) for cells in zip(si, us, strict=True)] for si, us in pairs]


def both_header(header_of: Callable[[str], Sequence[str]]) -> list[Any]:
    """A table's head in both unit sets."""
    return both_rows(lambda units: [header_of(units)])[0]


def chip(severity: str) -> Markup:
    """Mark and word of a severity on its color."""
    return Markup(look.chip(severity))  # noqa: S704 - made of the look alone


def laid_out(
    of: _core.Table,
    caption: Any = None,
    widths: Mapping[int, int] | None = None,
    rows: slice = slice(None),
) -> Table:
    """A table of the library in both unit sets, under its own title by default."""
    title = both(lambda units: told(of.title, units)) if caption is None else caption
    header = both_header(lambda units: heads(of, units))
    body = both_rows(lambda units: cells(of, units, widths)[rows])
    for place in severity_columns(of):
        for row in body:
            severity = "none" if row[place] == "no finding" else row[place]
            if severity in look.SIGNALS:
                row[place] = chip(severity)
    return Table(title, header, body, numbers=number_columns(of))
