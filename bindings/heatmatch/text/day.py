"""A simulation of days, a stagnation and a calibration as text of 80 columns."""

from __future__ import annotations

from heatmatch import _library as _core
from heatmatch.text.table import table_text, wrapped
from heatmatch.text.units import listed

_ENERGY_WIDTHS = (30, 9, 9)
_PEAKS_WIDTHS = (22, 9, 7, 9, 13, 14)
_SHORT = 6  # parts in a short answer
_MONTHS_WIDTHS = (6, 5, 6, 6, 6, 6, 6, 8, 6, 7, 7)


def day_text(run: _core.DayRun, *, units: str = "si") -> str:
    """A run as text: result, energy, highest temperature of every part, months."""
    energy, months = _core.energy_table(run), _core.months_table(run)
    peaks = _core.peaks_table(run, run.answer.peaks)
    lines = [
        *wrapped([energy.title], units),
        "",
        *wrapped(run.answer.sentences, units),
        "",
        table_text(energy, _ENERGY_WIDTHS, units),
        "",
        table_text(peaks, _PEAKS_WIDTHS, units),
        "",
        table_text(months, _MONTHS_WIDTHS, units),
        *wrapped(months.legend, units),
    ]
    if run.remarks:
        lines += ["", *wrapped(run.remarks, units)]
    lines += listed("assumed:", run.assumed, units)
    return "\n".join(lines)


def short_day_text(run: _core.DayRun, *, units: str = "si") -> str:
    """A run in short: result, the parts nearest to their limits, and what is left out."""
    peaks = _core.worst_peaks(run.answer.peaks, most=_SHORT)
    lines = [
        *wrapped([_core.energy_table(run).title], units),
        "",
        *wrapped(run.answer.sentences, units),
        "",
        table_text(_core.peaks_table(run, peaks), _PEAKS_WIDTHS, units),
        "",
        *wrapped([_core.shortened_days(len(run.answer.peaks) - len(peaks))], units),
    ]
    return "\n".join(lines)


def stagnation_text(stagnation: _core.Stagnation, *, units: str = "si") -> str:
    """A stagnation as text: result, and highest temperature of every part."""
    peaks = _core.peaks_table(stagnation.run, stagnation.peaks)
    lines = wrapped(stagnation.sentences, units)
    return "\n".join([*lines, "", table_text(peaks, _PEAKS_WIDTHS, units)])


def calibration_text(calibration: _core.Calibration, *, units: str = "si") -> str:
    """A calibration as text: result and remarks."""
    return "\n".join(wrapped([*calibration.sentences, *calibration.remarks], units))
