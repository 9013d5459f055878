"""Quantities in plots in the unit set of the reader; what is plotted remains in SI units."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _library as _core
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_MOST_TICKS = 9


def shown(value: float, unit: str, units: str) -> str:
    """A quantity with three digits and its unit."""
    return str(_core.format_quantity(value, unit, units=units, digits=3))


def degrees(celsius: float, units: str) -> str:
    """A temperature in whole degrees, with its unit."""
    digits = 4 if abs(celsius) > 500.0 else 3
    text = str(_core.format_quantity(round(celsius), "°C", units=units, digits=digits))
    number, unit = text.split(" ", 1)
    return f"{float(number):.0f} {unit}"


def kelvin(difference: float, units: str) -> str:
    """A difference of temperatures with its sign."""
    text = str(_core.format_quantity(difference, "K", units=units, digits=2))
    return text if text.startswith("-") else f"+{text}"


def load_axis(ax: Axes, label: str, units: str) -> None:
    """Label and round ticks of a logarithmic axis of power per length; its limits are final."""
    number, unit = str(_core.format_quantity(1.0, "W/cm", units=units, digits=9)).split(" ", 1)
    low, high = ax.get_xlim()
    steps = [step * 10.0**n for n in (-2, -1, 0, 1, 2, 3) for step in (1, 2, 5)]
    ticks = [(tick / float(number), tick) for tick in steps]
    ticks = [(place, tick) for place, tick in ticks if low <= place <= high]
    ax.set_xticks([place for place, _ in ticks], [f"{tick:g}" for _, tick in ticks])
    ax.set_xticks([], minor=True)
    ax.set_xlim(low, high)
    ax.set_xlabel(f"{label} [{unit}]")


def duration(hours: float) -> str:
    """Seconds, minutes, hours or days, with two digits."""
    for size, unit in ((24.0, "days"), (1.0, "h"), (1 / 60, "min"), (1 / 3600, "s")):
        if hours >= 2.0 * size or unit == "s":
            return f"{hours / size:.2g} {unit}"
    raise AssertionError(hours)


def degree_axis(ax: Axes, label: str, units: str) -> None:
    """Label of a vertical axis in degrees Celsius, with ticks in the unit of the reader.

    Its limits must be final.
    """
    from matplotlib.ticker import MaxNLocator

    if checked_units(units) == "si":
        ax.set_ylabel(f"{label} [°C]")
        return
    freezing, boiling = (
        float(str(_core.format_quantity(c, "°C", units="us", digits=6)).split(" ")[0])
        for c in (0.0, 100.0)
    )
    step = (boiling - freezing) / 100.0
    low, high = ax.get_ylim()
    ticks = MaxNLocator(_MOST_TICKS).tick_values(freezing + step * low, freezing + step * high)
    places = [((tick - freezing) / step, tick) for tick in ticks]
    there = [(c, tick) for c, tick in places if low <= c <= high]
    ax.set_yticks([c for c, _ in there], [f"{tick:g}" for _, tick in there])
    ax.set_ylim(low, high)
    ax.set_ylabel(f"{label} [°F]")
