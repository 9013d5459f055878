"""Plots of the energy of days: by month or day, and of several stores over one another."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.scale import degree_axis, degrees
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    PAPER,
    RULE,
    SMALL,
    STYLES,
    TEXT,
    axes_or_new,
    dress,
    legend,
    set_title,
    stacked_or_new,
)
from heatmatch.plot.time import RunPlot, checked_run
from heatmatch.text.season import MONTHS
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def day_energy(run: _core.DayRun, *, ax: Axes | None = None) -> Axes:
    """Plot energy per day, by month or by day.

    Bars show what the array could deliver, the energy into the elements, and the heat to the space
    (or out of the store, if no space is heated).

    Parameters
    ----------
    run : DayRun
        Result of ``simulate_day``. Bars are days if it lies within one month, else months.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Energy per day [kWh] over month or day.

    Raises
    ------
    InvalidInput
        `run` is not a DayRun.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``E = sum(P_i dt_i) / d``: P_i is the power of step i [kW], dt_i its length [h], d the number of
    days under the bar.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> ax = hm.plot.day_energy(hm.simulate_day(candidate, weather, month=12, days=2))
    >>> ax.get_xlabel()
    'day'
    """
    run = checked_run(run)
    ax = axes_or_new(ax)
    months = run.answer.months
    by_month = len(months) > 1
    step_h = np.diff(run.hours, prepend=0.0)
    if by_month:
        # A month that occurs twice is identified by its position in time.
        place = np.cumsum(np.diff(run.month.astype(int), prepend=int(run.month[0])) != 0)
        names = [MONTHS[dark.month - 1] if dark.month else "?" for dark in months]
    else:
        place = np.floor((run.first_hour + run.hours - 1e-6) / 24.0).astype(int)
        place -= place[0]
        names = [f"{i}" for i in range(1, int(place[-1]) + 2)]
    days = np.bincount(place, weights=step_h) / 24.0
    left = run.to_space_w if run.heats_space else run.released_w
    given_off = "from the store to the space" if run.heats_space else "given off by the store"
    at = np.arange(len(days))
    bars: list[tuple[npt.NDArray[np.float64], str, dict[str, Any]]] = [
        (
            run.available_w,
            "available from the panels",
            {"width": 0.84, "facecolor": "none", "edgecolor": COLOURS[0], "linewidth": 1.0},
        ),
        (
            run.power_w,
            "into the elements",
            {"width": -0.38, "align": "edge", "facecolor": COLOURS[1]},
        ),
        (
            left,
            given_off,
            {
                "width": 0.38,
                "align": "edge",
                "facecolor": LOAD,
                "hatch": "//",
                "edgecolor": PAPER,
                "linewidth": 0.0,
            },
        ),
    ]
    for values, label, how in bars:
        kwh = np.bincount(place, weights=values * step_h) / 1000.0 / np.where(days > 0, days, 1.0)
        ax.bar(at, kwh, label=f"{label}, mean {np.average(kwh, weights=days):.2f}", **how)
    ax.set_xticks(at, names, fontsize=TEXT if len(names) <= 14 else SMALL)
    ax.set_ylim(bottom=0.0)
    ax.set_xlabel("month" if by_month else "day")
    ax.set_ylabel("energy per day [kWh]")
    set_title(ax, f"{run.title}: {run.days:g} days")
    legend(ax)
    return ax


def compare_days(
    runs: Mapping[str, _core.DayRun], *, units: str = "si", axes: Sequence[Axes] | None = None
) -> tuple[Axes, ...]:
    """Plot heat output and bed temperature of several stores on common axes.

    Parameters
    ----------
    runs : mapping of str to DayRun
        Name to run, one to five, of the same days. Shaded nights are those of the first.
    units : {"si", "us"}
        Unit set of temperatures.
    axes : sequence of two matplotlib.axes.Axes, optional
        Axes to draw on, from top to bottom; those of a new figure if not given.

    Returns
    -------
    tuple of two matplotlib.axes.Axes
        Heat given off [W] and mean bed temperature [°C] over time.

    Raises
    ------
    InvalidInput
        There is no run, there are more than five, one is not a DayRun, their lengths differ,
        `units` is unknown, or `axes` are not two.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> day = {"month": 12, "days": 1}
    >>> runs = {
    ...     "typical fill": hm.simulate_day(candidate, weather, **day),
    ...     "dry fill": hm.simulate_day(candidate, weather, conductivity="low", **day),
    ... }
    >>> heat, bed = hm.plot.compare_days(runs)
    >>> [text.get_text().split(":")[0] for text in bed.get_legend().get_texts()]
    ['typical fill', 'dry fill']
    """
    checked_units(units)
    named = {name: checked_run(run) for name, run in runs.items()}
    if not 1 <= len(named) <= len(STYLES):
        raise InvalidInput(
            f"runs = {len(named)} runs must be 1 to {len(STYLES)}; draw others in a second plot"
        )
    first = next(iter(named.values()))
    for name, run in named.items():
        if abs(float(run.hours[-1] - first.hours[-1])) > 1e-6:
            raise InvalidInput(
                f'runs: "{name}" = {run.days:g} days must be {first.days:g} days as the first; '
                "simulate the same days"
            )
    heat, bed = stacked_or_new(axes, (1.0, 1.0))
    colours = (LOAD, *COLOURS[:4])
    RunPlot(first).shade_nights(heat, bed)
    for (name, run), style, colour in zip(named.items(), STYLES, colours, strict=False):
        plot = RunPlot(run)
        how = {"color": colour, "linestyle": style, "linewidth": 1.5}
        total = run.energy.to_space_kwh + run.energy.outside_kwh
        where = " (all of it outside)" if run.energy.to_space_kwh < 0.005 * total else ""
        if not where and run.energy.outside_kwh > 0.005 * total:
            where = f", {run.energy.to_space_kwh:.1f} of it to the space"
        plot.line(heat, run.released_w, "mean", label=f"{name}: {total:.1f} kWh{where}", **how)
        top = float(run.bed_mean_c.max())
        plot.line(bed, run.bed_mean_c, "mean", label=f"{name}: up to {degrees(top, units)}", **how)
    heat.axhline(0.0, color=RULE, linewidth=0.6)
    heat.set_ylabel("heat given off [W]")
    set_title(heat, f"{first.days:g} days: heat and temperature of the stores")
    dress(bed)
    degree_axis(bed, "bed, mean", units)
    for ax in (heat, bed):
        legend(ax)
    RunPlot(first).time_axis(bed)
    return heat, bed
