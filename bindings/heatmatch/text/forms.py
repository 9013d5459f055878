"""The text and HTML forms of the compiled classes, as notebooks show them."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from heatmatch import _library as _core
from heatmatch.text import look
from heatmatch.text.duties import counts_html, duties_html
from heatmatch.text.first_screen import first_screen_html
from heatmatch.text.plain import escape
from heatmatch.text.results import TABLE_ROWS, legend
from heatmatch.text.table import cells, heads
from heatmatch.text.units import told

if TYPE_CHECKING:
    from heatmatch._core import _Part


_LEFT, _RIGHT = "text-align:left", "text-align:right;font-variant-numeric:tabular-nums"
_SEVERITIES = {"no finding": "none"}  # as shown in a cell


def html_table(
    header: Sequence[str],
    rows: Iterable[Sequence[str]],
    caption: str,
    *,
    numbers: Collection[int] = (),
    severities: Collection[int] = (),
) -> str:
    """An HTML table; every text is escaped.

    `numbers` are the columns aligned to the right, `severities` those of severities.
    """

    def at(place: int) -> str:  # notebooks would set all texts at the right
        return f'style="{_RIGHT if place in numbers else _LEFT}"'

    def cell(place: int, text: str) -> str:
        if place not in severities:
            return escape(text)
        severity = _SEVERITIES.get(text, text)
        return look.chip(severity) if severity in look.SIGNALS else escape(text)

    head = "".join(f"<th {at(i)}>{escape(text)}</th>" for i, text in enumerate(header))
    body = "".join(
        "<tr>"
        + "".join(f"<td {at(i)}>{cell(i, text)}</td>" for i, text in enumerate(row))
        + "</tr>"
        for row in rows
    )
    title = f'<caption style="{_LEFT}">{escape(caption)}</caption>' if caption else ""
    return f"<table>{title}<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def number_columns(of: _core.Table) -> list[int]:
    """Places of the columns of numbers."""
    return [i for i, column in enumerate(of.columns) if column.number]


def severity_columns(of: _core.Table) -> list[int]:
    """Places of the columns of severities."""
    return [i for i, column in enumerate(of.columns) if column.head.id == "head.severity"]


def html_of(
    of: _core.Table,
    units: str = "si",
    caption: str | None = None,
    widths: Mapping[int, int] | None = None,
    rows: slice = slice(None),
) -> str:
    """A table of the library as HTML, under its own title by default; `rows`: only those."""
    title = told(of.title, units) if caption is None else caption
    return html_table(
        heads(of, units), cells(of, units, widths)[rows], title,
        numbers=number_columns(of), severities=severity_columns(of),
    )  # fmt: skip


def margins_of(
    candidate: _core.Candidate, units: str = "si", caption: str | None = None, **options: Any
) -> str:
    """The margins as HTML: those without a finding are folded."""
    widths = options.pop("widths", None)
    made = _core.margins_table(candidate, **options)
    found = sum(1 for margin in candidate.margins if margin.severity != "none")
    shown = html_of(made, units, caption, widths, slice(found))
    line = told(_core.no_finding_line(candidate), units)
    if not line:
        return shown
    rest = html_of(made, units, "", widths, slice(found, None))
    return f"{shown}<details><summary>{escape(line)}</summary>{rest}</details>"


def ranking_html(self: _core.Ranking) -> str:
    """A ranking as an HTML table for notebooks."""
    shown = self[:TABLE_ROWS]
    notes = paragraphs([legend(self), *self.remarks])
    marked = len(self) > 0
    made = _core.marked_table(self, TABLE_ROWS) if marked else _core.ranking_table(shown)
    first = next(iter([*self, *self.rejected]), None)
    counts = "" if first is None else paragraphs([f"{first.circuit.title}:"]) + counts_html(first)
    table = html_of(made, caption=_core.reasons_sentence(self), widths={1: 120, 3: 120})
    answer = "" if first is None else first_screen_html(self)
    return answer + table + counts + notes


def heat_html(candidate: _core.Candidate) -> str:
    """Temperatures in the store of a candidate as HTML, and its largest power."""
    made = _core.heat_table(candidate)
    return (html_of(made) if made.rows else "") + paragraphs(candidate.advice().sentences)


def bill_html(bill: _core.Bill, units: str = "si", remarks: Iterable[str] = ()) -> str:
    """A bill as HTML: the total beside the budget, then a row for each part."""
    said = [_core.bill_sentence(bill)]
    made = html_of(_core.bill_table(bill), units)
    return paragraphs(told(text, units) for text in said) + made + paragraphs(remarks)


def candidate_html(self: _core.Candidate) -> str:
    """A candidate as HTML: power, heat of the store, margins from the most severe on."""
    assumed = "".join(f"<li>{escape(text)}</li>" for text in self.assumed)
    season = paragraphs(self.remarks)
    if self.season is not None:
        season += paragraphs(_core.season_sentences(self))
        season += html_of(_core.season_table(self.season))
    return (
        season
        + html_of(_core.delivered_table(self))
        + heat_html(self)
        + counts_html(self)
        + margins_of(self, caption=_core.margins_plain_title())
        + bill_html(self.bill, remarks=_core.bill_remarks(self))
        + duties_html(self)
        + (f"<p>assumed:</p><ul>{assumed}</ul>" if assumed else "")
    )


def paragraphs(texts: Iterable[str]) -> str:
    """HTML paragraphs; every text is escaped."""
    return "".join(f"<p>{escape(text)}</p>" for text in texts)


def day_html(self: _core.DayRun) -> str:
    """A simulation of days as HTML: result, energy, peaks, months."""
    assumed = "".join(f"<li>{escape(text)}</li>" for text in self.assumed)
    months = _core.months_table(self)
    return (
        paragraphs(self.answer.sentences)
        + html_of(_core.energy_table(self))
        + html_of(_core.peaks_table(self, self.answer.peaks))
        + html_of(months)
        + paragraphs([*months.legend, *self.remarks])
        + (f"<p>assumed:</p><ul>{assumed}</ul>" if assumed else "")
    )


def stagnation_html(self: _core.Stagnation) -> str:
    """A stagnation as HTML."""
    peaks = _core.peaks_table(self.run, self.peaks)
    return paragraphs(self.sentences) + html_of(peaks, caption=_core.stagnation_title())


def calibration_html(self: _core.Calibration) -> str:
    """A calibration as HTML."""
    return paragraphs([*self.sentences, *self.remarks])


def sheet_html(self: _core.MeterSheet) -> str:
    """A meter sheet as two HTML tables that print in black and white."""
    return (
        html_of(_core.sheet_table(self), caption=_core.sheet_caption(self))
        + paragraphs(self.without_sun_meter)
        + html_of(_core.checks_table(self))
        + paragraphs([*_core.not_known_sentences(self), *self.remarks])
    )


def diagnosis_html(self: _core.Diagnosis) -> str:
    """A diagnosis as HTML, its verdict first."""
    return (
        paragraphs([self.verdict])
        + html_of(_core.diagnosis_table(self))
        + paragraphs([*_core.diagnosis_sentences(self), *self.remarks])
    )


def part_html(self: _Part) -> str:
    """A part's known fields as an HTML table for notebooks."""
    fields = {field["name"]: field for field in _core.glossary()[self.kind]}
    rows = []
    for name, value in self.to_dict().items():
        rows.append((name, f"{value} {fields[name]['unit']}".strip(), fields[name]["meaning"]))
    return html_table(("field", "value", "meaning"), rows, f"{self.kind} {self.id}")
