"""Plots of simulated days: power, temperatures with their limits, the space; stagnation."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.scale import degree_axis, degrees, kelvin
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    RULE,
    STYLES,
    axes_or_new,
    legend,
    set_title,
    stacked_or_new,
)
from heatmatch.plot.time import RunPlot, checked_run
from heatmatch.text.columns import clip
from heatmatch.text.season import MONTHS
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

LIMIT = COLOURS[1]
# Series of a part in a run: list, label, color, line style.
_PARTS: tuple[tuple[str, str, str, Any], ...] = (
    ("sheath_c", "sheath", COLOURS[0], STYLES[0]),
    ("terminal_c", "terminal", COLOURS[1], STYLES[1]),
    ("bed_mean_c", "bed, mean", COLOURS[2], STYLES[2]),
    ("wall_c", "wall", LOAD, STYLES[0]),
    ("lid_c", "lid", LOAD, STYLES[3]),
)
# Part and meaning of the limit of each margin.
_LIMITS: dict[str, tuple[str, str]] = {
    "sheath temperature": ("sheath", "for years"),
    "terminal temperature": ("terminal", "itself"),
    "end seal": ("terminal", "end seal"),
    "hot tail insulation": ("terminal", "insulation"),
    "hot tail plating": ("terminal", "plating"),
    "hot tail joint": ("terminal", "joint"),
    "wall and lid": ("wall and lid", "wood"),
    "touch temperature": ("wall and lid", "touch"),
}
_LIMIT_STYLES = {"sheath": "-", "terminal": (0, (1, 2)), "wall and lid": (0, (9, 2, 1, 2))}


def _lowest_limits(peaks: Sequence[_core.PartPeak]) -> list[tuple[float, str, str]]:
    """The lowest limit of each part, lowest first, with its meaning."""
    lowest: dict[str, tuple[float, str, str]] = {}
    for peak in peaks:
        part, what = _LIMITS.get(peak.margin.name, ("", ""))
        limit = peak.margin.limit
        if not part or limit is None:
            continue
        lowest[part] = min(lowest.get(part, (np.inf, part, what)), (limit, part, what))
    return sorted(lowest.values())


def _temperatures(ax: Axes, plot: RunPlot, peaks: Sequence[_core.PartPeak], units: str) -> None:
    """Parts of the store, and their limits as far as the plot reaches; others in the legend."""
    highest, lowest = -np.inf, np.inf
    for name, usual, colour, style in _PARTS:
        in_liquid = name == "bed_mean_c" and plot.run.bed_model == "water"
        called = "liquid, mean" if in_liquid else usual
        values = getattr(plot.run, name)
        if values is None:
            ax.plot([], [], " ", label=f"{called}: not known")
            continue
        shown = plot.drawn(values, "highest")[1]
        highest, lowest = max(highest, float(values.max())), min(lowest, float(shown.min()))
        how = {"color": colour, "linestyle": style, "linewidth": 1.4}
        plot.line(
            ax, values, "highest", label=f"{called}, up to {degrees(values.max(), units)}", **how
        )
    limits = _lowest_limits(peaks)
    near = [limit for limit, _, _ in limits if limit <= 1.6 * highest]
    top = max([highest, *near])
    bottom = min(0.0, lowest)
    ax.set_ylim(bottom - 0.04 * (top - bottom), top + 0.08 * (top - bottom))
    for limit, part, what in limits:
        text = f"limit of {part} ({what}): {degrees(limit, units)}"
        if limit > top:
            ax.plot([], [], " ", label=f"{text}, beyond this plot")
        else:
            how = {"color": LIMIT, "linestyle": _LIMIT_STYLES[part], "linewidth": 1.1}
            ax.axhline(limit, label=text, **how)
    degree_axis(ax, plot.label("temperature", "highest"), units)


def _worst(peaks: Sequence[_core.PartPeak]) -> str | None:
    """Danger if a part passes a limit that means danger."""
    return "danger" if any(peak.margin.severity == "danger" for peak in peaks) else None


def _power(ax: Axes, plot: RunPlot) -> None:
    """Power available from the panels, into the elements, and out of the store."""
    run = plot.run
    label = f"available from the panels, {run.energy.available_kwh:.1f} kWh"
    plot.line(ax, run.available_w, "mean", color=COLOURS[3], linestyle=STYLES[1], label=label)
    times, watts = plot.drawn(run.power_w, "mean")
    ax.fill_between(times, watts, color=COLOURS[1], alpha=0.25, linewidth=0)
    label = f"into the elements, {run.energy.delivered_kwh:.1f} kWh"
    ax.plot(times, watts, color=COLOURS[1], label=label)
    given_off = run.energy.to_space_kwh + run.energy.outside_kwh
    label = f"given off by the store, {given_off:.1f} kWh"
    plot.line(ax, run.released_w, "mean", color=LOAD, linewidth=1.6, label=label)
    ax.axhline(0.0, color=RULE, linewidth=0.6)
    ax.set_ylabel(plot.label("power", "mean") + " [W]")


def _space(ax: Axes, plot: RunPlot, units: str) -> None:
    """The space with and without the store, outside, and the target."""
    run = plot.run
    if not run.heats_space:
        plot.line(ax, run.space_c, "lowest", color=LOAD, label="air around the store")
        degree_axis(ax, plot.label("air", "lowest"), units)
        return
    if float(np.abs(run.outside_c - run.space_unheated_c).max()) > 0.05:
        how = {"color": COLOURS[3], "linestyle": STYLES[4], "linewidth": 1.2}
        plot.line(ax, run.outside_c, "lowest", label="outside", **how)
        label = "space without the store"
    else:
        label = "space without the store, and outside"
    how = {"color": COLOURS[2], "linestyle": STYLES[1], "linewidth": 1.3}
    plot.line(ax, run.space_unheated_c, "lowest", label=label, **how)
    label = f"space with the store, {kelvin(run.answer.all.lift_k, units)} in the dark"
    plot.line(ax, run.space_c, "lowest", color=LOAD, linewidth=1.6, label=label)
    times, without = plot.drawn(run.space_unheated_c, "lowest")
    _, held = plot.drawn(run.space_c, "lowest")
    ax.fill_between(times, without, held, color=LOAD, alpha=0.25, linewidth=0)
    target = None if run.candidate.space is None else run.candidate.space.target_c
    if target is not None:
        label = f"target at night, {degrees(target, units)}"
        ax.axhline(target, color=LIMIT, linestyle="--", linewidth=1.2, label=label)
    degree_axis(ax, plot.label("air", "lowest"), units)


def day_run(
    run: _core.DayRun, *, units: str = "si", axes: Sequence[Axes] | None = None
) -> tuple[Axes, ...]:
    """Plot power, store temperatures and space temperature of simulated days.

    Nights, without sun on the panels, are shaded. A limit far above the highest temperature is
    listed in the legend only. Beyond a month each day is one point: mean power, highest temperature
    of the store, lowest of the space.

    Parameters
    ----------
    run : DayRun
        Result of ``simulate_day``.
    units : {"si", "us"}
        Unit set of temperatures.
    axes : sequence of three matplotlib.axes.Axes, optional
        Axes to draw on, from top to bottom; those of a new figure if not given.

    Returns
    -------
    tuple of three matplotlib.axes.Axes
        Power [W], store temperatures [°C] and air [°C] over time.

    Raises
    ------
    InvalidInput
        `run` is not a DayRun, `units` is unknown, or `axes` are not three.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> axes = hm.plot.day_run(hm.simulate_day(candidate, weather, month=12, days=1))
    >>> len(axes)
    3
    """
    plot = RunPlot(checked_run(run))
    checked_units(units)
    panels = stacked_or_new(axes, (1.0, 1.5, 1.1))
    power, heat, space = panels
    plot.shade_nights(*panels)
    _power(power, plot)
    set_title(power, f"{run.title}: {run.days:g} days", _worst(run.answer.peaks))
    _temperatures(heat, plot, run.answer.peaks, units)
    _space(space, plot, units)
    for ax in panels:
        legend(ax)
    plot.time_axis(space)
    return panels


def stagnation(stagnation: _core.Stagnation, *, units: str = "si", ax: Axes | None = None) -> Axes:
    """Plot store temperatures over fourteen cloudless days without heat extraction.

    Parameters
    ----------
    stagnation : Stagnation
        Result of ``simulate_stagnation``.
    units : {"si", "us"}
        Unit set of temperatures.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Temperatures [°C] over time, with the lowest limit of each part.

    Raises
    ------
    InvalidInput
        `stagnation` is not a Stagnation, or `units` is unknown.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.stagnation(hm.simulate_stagnation(candidate))
    >>> len(ax.lines) > 0
    True
    """
    if not isinstance(stagnation, _core.Stagnation):
        raise InvalidInput(
            f"stagnation = {type(stagnation).__name__} must be a Stagnation; "
            "hm.simulate_stagnation(candidate) gives one"
        )
    checked_units(units)
    ax = axes_or_new(ax)
    plot = RunPlot(stagnation.run)
    plot.shade_nights(ax)
    _temperatures(ax, plot, stagnation.peaks, units)
    plot.time_axis(ax)
    begins = MONTHS[stagnation.month - 1]
    title = f"no heat drawn, {plot.run.days:g} cloudless days from {begins} on"
    set_title(ax, f"{clip(plot.run.title, 50)}: {title}", _worst(stagnation.peaks))
    legend(ax)
    return ax
