"""What a run through days, a stagnation and a calibration say, as text of 80 columns."""

from __future__ import annotations

from collections.abc import Sequence

from heatmatch import _core
from heatmatch.display_heat import degree_unit, degrees
from heatmatch.display_season import MONTHS, daily
from heatmatch.display_text import table, wrap
from heatmatch.display_units import in_units, listed
from heatmatch.display_verdict import headroom_cell

ENERGY_HEADER = ("energy, kWh", "all days", "a day")
PEAKS_WIDTHS = (22, -9, -7, -9, 13, 14)
MONTH_WIDTHS = (6, -5, -6, -6, -6, -6, -6, -8, -6, -7, -7)
_ALL = "all"


def moment(run: _core.DayRun, hours: float) -> str:
    """That many hours after the beginning as day and clock, by the sun's mean time."""
    minutes = round(60.0 * (run.first_hour + hours))
    return f"day {minutes // 1440 + 1}, {minutes // 60 % 24}:{minutes % 60:02d}"


def kelvin(difference_k: float, units: str) -> str:
    """A difference of temperatures without its unit, to a tenth."""
    text = _core.format_quantity(difference_k, "K", units=units, digits=8)
    return f"{float(text.split()[0]):.1f}"


def kelvin_unit(units: str) -> str:
    """The unit set's differences of temperature."""
    return _core.format_quantity(0.0, "K", units=units).split()[1]


def _given_off(run: _core.DayRun) -> list[tuple[str, float]]:
    """What left the store; apart only where the space and what it loses are described."""
    energy = run.energy
    if not run.heats_space:
        return [("given off by the store", energy.to_space_kwh + energy.outside_kwh)]
    return [
        ("from the store to the space", energy.to_space_kwh),
        ("from the store to elsewhere", energy.outside_kwh),
    ]


def energy_cells(run: _core.DayRun) -> list[tuple[str, ...]]:
    """Where the energy came from and went."""
    energy = run.energy
    rows = [
        ("the panels could give", energy.available_kwh),
        ("into the elements", energy.in_kwh),
        ("lost in wire and joints", energy.wire_kwh),
        *_given_off(run),
        ("more in the store at the end", energy.stored_kwh),
    ]
    if energy.steam_kwh > 0.0:
        rows.append(("of that lost, as steam", energy.steam_kwh))
    # Adding zero keeps what rounds to nothing from being shown below it.
    return [
        (name, f"{round(kwh, 2) + 0.0:.2f}", f"{round(kwh / run.days, 2) + 0.0:.2f}")
        for name, kwh in rows
    ]


def peaks_header(units: str = "si") -> tuple[str, ...]:
    """The columns of the table of peaks."""
    return ("part", f"most, {degree_unit(units)}", "limit", "headroom", "severity", "when")


def peaks_cells(
    run: _core.DayRun, peaks: Sequence[_core.PartPeak], *, units: str = "si"
) -> list[tuple[str, ...]]:
    """The highest of every part against its limit."""
    return [
        (
            peak.margin.name.removesuffix(" temperature"),
            degrees(peak.margin.value, units),
            degrees(peak.margin.limit, units),
            headroom_cell(peak.margin),
            peak.margin.severity,
            moment(run, peak.hours),
        )
        for peak in peaks
    ]


def month_header(units: str = "si") -> tuple[str, ...]:
    """The columns of the table of months: energies in kWh a day, then what happens in the dark."""
    k, c = kelvin_unit(units), degree_unit(units)
    energies = ("most", "in", "space")
    return ("month", "days", *energies, "dark h", "warm h", "without", f"+ {k}",
            f"want {k}", f"low {c}")  # fmt: skip


MONTH_LEGEND = (
    "most, in, space: kWh a day that the panels could give, into the elements, from the store to "
    "the space; dark h: without sun on the panels; warm h: of them at or above what is wanted, "
    "without: the same without the store; +: the space warmer by the store, and want: what it "
    "wants, means of the dark hours; low: the space at its lowest in the dark."
)


def month_cells(run: _core.DayRun, *, units: str = "si") -> list[tuple[str, ...]]:
    """Each month, and all days where there are several."""
    months = run.answer.months
    rows = months if len(months) == 1 else [*months, run.answer.all]
    return [
        (
            MONTHS[dark.month - 1] if dark.month else _ALL,
            f"{dark.days:.0f}",
            daily(dark.available_kwh_day),
            daily(dark.in_kwh_day),
            daily(dark.to_space_kwh_day),
            f"{dark.dark_hours:.0f}",
            f"{dark.above_target_hours:.0f}",
            f"{dark.above_target_without_hours:.0f}",
            kelvin(dark.lift_k, units),
            kelvin(dark.wanted_k, units),
            degrees(dark.lowest_c, units),
        )
        for dark in rows
    ]


def day_title(run: _core.DayRun) -> str:
    """What lived through how many days."""
    return f"{run.title}: {run.days:g} days"


def day_text(run: _core.DayRun, *, units: str = "si") -> str:
    """A run as text: what it comes to, energy, the highest of every part, the months."""
    lines = [
        wrap(day_title(run)),
        "",
        *(wrap(sentence) for sentence in run.sentences(units=units)),
        "",
        table(ENERGY_HEADER, energy_cells(run), (30, -9, -9)),
        "",
        table(peaks_header(units), peaks_cells(run, run.answer.peaks, units=units), PEAKS_WIDTHS),
        "",
        table(month_header(units), month_cells(run, units=units), MONTH_WIDTHS),
        wrap(MONTH_LEGEND),
    ]
    if run.remarks:
        lines += ["", *(wrap(in_units(remark, units)) for remark in run.remarks)]
    lines += listed("assumed:", run.assumed, units)
    return "\n".join(lines)


def stagnation_text(stagnation: _core.Stagnation, *, units: str = "si") -> str:
    """A stagnation as text: what it comes to, and the highest of every part."""
    rows = peaks_cells(stagnation.run, stagnation.peaks, units=units)
    lines = [wrap(in_units(sentence, units)) for sentence in stagnation.sentences]
    return "\n".join([*lines, "", table(peaks_header(units), rows, PEAKS_WIDTHS)])


def calibration_text(calibration: _core.Calibration, *, units: str = "si") -> str:
    """A calibration as text: what it comes to, and what to take care of."""
    texts = [*calibration.sentences, *calibration.remarks]
    return "\n".join(wrap(in_units(text, units)) for text in texts)
