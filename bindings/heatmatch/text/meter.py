"""A meter sheet and a diagnosis as text of 80 columns."""

from __future__ import annotations

from heatmatch import _library as _core
from heatmatch.text.columns import wrap
from heatmatch.text.table import shown, table_text, wrapped
from heatmatch.text.units import listed

_SHEET_WIDTHS = (5, 6, 6, 6, 6, 8, 11, 11, 11)
_DIAGNOSIS_WIDTHS = (26, 7, 8, 22)


def _check_text(check: _core.MeterCheck, units: str) -> list[str]:
    """What to expect, and below it how to read it and what it means if not."""
    first, *others = _core.check_lines(check)
    lines = [shown(first, units), *(f"   {shown(line, units)}" for line in others)]
    return [wrap(line, "   ") for line in lines]


def sheet_text(self: _core.MeterSheet, *, units: str = "si") -> str:
    """A meter sheet as text."""
    lines = [*wrapped([_core.sheet_title(self)], units), ""]
    if self.rows:
        made = _core.sheet_table(self)
        lines += [table_text(made, _SHEET_WIDTHS, units), *wrapped(made.legend, units), ""]
    if self.without_sun_meter:
        lines += [*wrapped(self.without_sun_meter, units), ""]
    for check in self.checks:
        lines += _check_text(check, units)
    lines += listed("not known:", self.missing, units, "- ")
    lines += ["", *wrapped(self.remarks, units)]
    lines += listed("assumed:", self.assumed, units)
    return "\n".join(lines)


def short_diagnosis_text(self: _core.Diagnosis, *, units: str = "si") -> str:
    """A diagnosis of one reading as text: its verdict, explanations, and what to measure next."""
    return "\n".join(wrapped(_core.short_diagnosis(self), units))


def diagnosis_text(self: _core.Diagnosis, *, units: str = "si") -> str:
    """A diagnosis as text."""
    lines = [*wrapped([self.verdict], units), ""]
    lines += [table_text(_core.diagnosis_table(self), _DIAGNOSIS_WIDTHS, units), ""]
    lines += wrapped(_core.diagnosis_sentences(self), units)
    if self.ranked:
        lines += ["", *wrapped([_core.evidence_title(self)], units)]
        lines += [wrap(f"- {shown(text, units)}") for text in self.ranked[0].evidence]
    lines += wrapped(self.remarks, units)
    return "\n".join(lines)
