"""What a meter sheet and a diagnosis say, as text of 80 columns."""

from __future__ import annotations

from heatmatch import _core
from heatmatch.display_heat import degree_unit, degrees
from heatmatch.display_text import table, wrap
from heatmatch.display_units import in_units, listed

SHEET_HEADER = ("sun", "cells", "Voc", "Isc", "array V", "bank V", "bank A", "bank W")
SHEET_WIDTHS = (5, -6, -6, -6, -8, -12, -12, -12)
DIAGNOSIS_HEADER = ("explanation", "weight", "misfit", "")
DIAGNOSIS_WIDTHS = (26, -7, -8, 22)


def _ends(band: _core.ExpectedBand, digits: int) -> str:
    """The ends of a band."""
    return f"{band.low:.{digits}f}-{band.high:.{digits}f}"


def sheet_legend(units: str = "si") -> str:
    """What the columns of the expected readings mean."""
    return (
        f"sun in W/m2, cells in {degree_unit(units)}, volts, amperes, watts; low to high by "
        "panels and ohms, meters on top"
    )


def sheet_cells(sheet: _core.MeterSheet, *, units: str = "si") -> list[tuple[str, ...]]:
    """The expected readings, a row for each sun and cell temperature."""
    return [
        (
            f"{row.irradiance_w_m2:.0f}",
            degrees(row.cell_temperature_c, units),
            f"{row.open_v.typical:.1f}",
            f"{row.short_a.typical:.2f}",
            f"{row.array_v.typical:.1f}",
            _ends(row.bank_v, 1),
            _ends(row.bank_a, 2),
            _ends(row.bank_w, 0),
        )
        for row in sheet.rows
    ]


def check_lines(check: _core.MeterCheck, units: str = "si") -> list[str]:
    """One check with what to expect and what it means if not."""
    reading, expect = in_units(check.reading, units), in_units(check.expect, units)
    lines = [f"{check.letter}  {reading}: {expect}", f"   {in_units(check.how, units)}"]
    if check.if_low:
        lines.append(f"   less: {in_units(check.if_low, units)}")
    if check.if_high:
        lines.append(f"   more: {in_units(check.if_high, units)}")
    return lines


def sheet_text(self: _core.MeterSheet, *, units: str = "si") -> str:
    """A meter sheet as text."""
    lines = [wrap(f"meter sheet: {self.title}"), ""]
    if self.rows:
        rows = table(SHEET_HEADER, sheet_cells(self, units=units), SHEET_WIDTHS)
        lines += [rows, wrap(sheet_legend(units)), ""]
    for check in self.checks:
        lines += [wrap(line, "   ") for line in check_lines(check, units)]
    lines += listed("not known:", self.not_known, units, "- ")
    lines += ["", *(wrap(in_units(text, units)) for text in self.remarks)]
    lines += listed("assumed:", self.assumed, units)
    return "\n".join(lines)


def diagnosis_cells(diagnosis: _core.Diagnosis) -> list[tuple[str, ...]]:
    """All explanations, those of the first group marked."""
    return [
        (
            hypothesis.name,
            f"{hypothesis.weight:.2f}",
            f"{hypothesis.misfit:.1f}",
            "cannot be told apart" if diagnosis.cannot_tell and i < diagnosis.group else "",
        )
        for i, hypothesis in enumerate(diagnosis.ranked)
    ]


def diagnosis_sentences(diagnosis: _core.Diagnosis, units: str = "si") -> list[str]:
    """What the explanations of the first group say, and what to measure next."""
    said = [in_units(item.sentence, units) for item in diagnosis.ranked[: diagnosis.group]]
    for measure in diagnosis.next[:2]:
        reading, how = in_units(measure.reading, units), in_units(measure.how, units)
        said.append(f"Measure next: {reading}. {how} {in_units(measure.tells, units)}")
    return said


def diagnosis_text(self: _core.Diagnosis, *, units: str = "si") -> str:
    """A diagnosis as text."""
    lines = [wrap(in_units(self.verdict, units)), ""]
    lines += [table(DIAGNOSIS_HEADER, diagnosis_cells(self), DIAGNOSIS_WIDTHS), ""]
    lines += [wrap(text) for text in diagnosis_sentences(self, units)]
    if self.ranked:
        lines += ["", f"evidence for {self.ranked[0].name}:"]
        lines += [wrap(f"- {in_units(text, units)}") for text in self.ranked[0].evidence]
    lines += [wrap(in_units(text, units)) for text in self.remarks]
    return "\n".join(lines)
