"""Plots of heat: along the heat path of an element, against its power, and over time."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.scale import degree_axis, degrees, duration, load_axis, shown
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    MUTED,
    RULE,
    STYLES,
    TEXT,
    axes_or_new,
    legend,
    set_title,
    spot,
)
from heatmatch.text.bank import element_name
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_Numbers = npt.NDArray[np.float64]
CM_PER_M = 100.0
VERDICT, HARD = COLOURS[1], COLOURS[0]  # limits: for years, and at all
# Times that the logarithmic axis is marked with [h].
_TIMES = {
    10 / 3600: "10 s", 30 / 3600: "30 s", 1 / 60: "1 min", 5 / 60: "5 min", 0.25: "15 min",
    1.0: "1 h", 6.0: "6 h", 24.0: "1 day", 168.0: "1 week",
}  # fmt: skip


def _heat(candidate: _core.Candidate) -> _core.BankHeat:
    """The bank in its store, if its temperatures can be computed."""
    heat = candidate.circuit.heat
    if heat is not None and heat.known:
        return heat
    if heat is None:
        why, remedy = "none", "describe the store in the installation"
    elif heat.misfit:
        why, remedy = heat.misfit, "choose a larger vessel, or another element"
    else:
        why, remedy = "no " + ", ".join(heat.missing), "measure it"
    raise InvalidInput(f"candidate: heat in the store = {why} must be known; {remedy}")


def _granular(candidate: _core.Candidate) -> _core.BankHeat:
    heat = _heat(candidate)
    if heat.liquid:
        raise InvalidInput(
            f'candidate: medium "{heat.medium.id}" = liquid must be granular or solid; '
            "water mixes, so the sheath temperature hardly depends on power"
        )
    return heat


def _limits(ax: Axes, sheath: _core.Sheath | None, units: str) -> None:
    """The limits of a sheath as level lines; unknown limits are named in the legend."""
    if sheath is None:
        ax.plot([], [], " ", label="limits of the sheath: not known")
        return
    for limit, what, colour, style in (
        (sheath.verdict_limit_c, "for years", VERDICT, STYLES[1]),
        (sheath.hard_limit_c, "fails soon above", HARD, STYLES[0]),
    ):
        ax.axhline(
            limit,
            color=colour,
            linestyle=style,
            linewidth=1.1,
            label=f"{sheath.id}, {what}: {degrees(limit, units)}",
        )


def _rated_w(candidate: _core.Candidate) -> float | None:
    """The rated power of an element, where they are stated."""
    element = candidate.circuit.element
    return None if element is None else element.rated_w


def sheath_by_power(
    candidate: _core.Candidate, *, units: str = "si", ax: Axes | None = None
) -> Axes:
    """Plot sheath temperature against power of each element, with the sheath's limits.

    Parameters
    ----------
    candidate : Candidate
        Its elements in their store, after the bright days that its margins assume.
    units : {"si", "us"}
        Unit set of temperatures and lengths.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Temperature [°C] over power of each element [W].

    Raises
    ------
    InvalidInput
        Heat in the store is unknown, the store holds a liquid, or `units` is unknown.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    Judged curve: ``T = T_air + 1.1 (T_low - T_air)``. T_air is the air around the store [°C], T_low
    the sheath [°C] at the lowest conductivity of the fill.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.sheath_by_power(candidate)
    >>> ax.get_xlabel(), ax.get_ylabel()
    ('power of each element [W]', 'temperature [°C]')
    """
    checked_units(units)
    heat = _granular(candidate)
    ax = axes_or_new(ax)
    own_w = candidate.bright.element_power_w
    rated_w = _rated_w(candidate)
    most_w = heat.largest_element_w(with_stagnation=False)
    watts = np.linspace(0.0, 1.1 * max(own_w, most_w or 0.0, 0.5 * (rated_w or 0.0)), 120)
    points = [point for point in map(heat.at, watts.tolist()) if point is not None]
    low, typical, high = (
        np.array([getattr(point.sheath_band, end) for point in points])
        for end in ("low_c", "typical_c", "high_c")
    )
    judged = np.array([point.sheath_c for point in points])
    ax.fill_between(
        watts, low, high, color=COLOURS[4], alpha=0.6, linewidth=0, label="by the fill: low to high"
    )
    ax.plot(watts, typical, color=COLOURS[2], linestyle=STYLES[3], label="typical fill")
    ax.plot(watts, judged, color=LOAD, linewidth=1.8, label="judged: worst fill, +10 %")
    _limits(ax, heat.sheath, units)
    own = heat.at(own_w)
    if own is not None:
        celsius = own.sheath_c
        label = f"this circuit in cold, bright weather: {own_w:.0f} W, {degrees(celsius, units)}"
        beyond = heat.sheath is not None and celsius > heat.sheath.verdict_limit_c
        ax.plot(own_w, celsius, label=label, linestyle="none", **spot(beyond=beyond))
    if most_w is not None:
        label = f"limit of sheath and coil: {most_w:.0f} W every bright day"
        ax.axvline(most_w, color=LOAD, linestyle=STYLES[4], linewidth=1.2, label=label)
    if rated_w is not None:
        inside = rated_w <= watts[-1]
        if inside:
            ax.axvline(rated_w, color=MUTED, linestyle="--", linewidth=1.2)
        where = "" if inside else ", beyond this plot"
        ax.plot([], [], "--", color=MUTED, label=f"rated: {rated_w:.0f} W{where}")
    ax.set_xlim(0.0, watts[-1])
    top = 1000.0 if heat.sheath is None else 1.25 * heat.sheath.hard_limit_c
    ax.set_ylim(0.0, max(top, 1.1 * judged[-1]) if judged[-1] < 2.0 * top else 2.0 * top)
    ax.set_xlabel("power of each element [W]")
    degree_axis(ax, "temperature", units)
    count = heat.elements
    set_title(
        ax,
        f"{count} x {element_name(candidate.circuit)} in {heat.medium.id}, "
        f"{heat.charge_hours:g} h a day",
        str(candidate.severity),
    )
    legend(ax)
    return ax


def _time_curve(
    bed: _core.BedCharge, w_per_cm: _Numbers, limit_c: float, longest_h: float
) -> _Numbers:
    watts = w_per_cm * CM_PER_M * bed.heated_length_m
    hours: _Numbers = bed.hours_to_limit(watts, limit_c=limit_c, longest_h=longest_h)
    return np.where(np.isfinite(hours), hours, np.nan)


def time_to_limit(candidate: _core.Candidate, *, units: str = "si", ax: Axes | None = None) -> Axes:
    """Plot the time until the sheath reaches its limits against linear load.

    The bed starts at air temperature and is heated without pause. The line is the lowest
    conductivity of the fill; the band reaches to the highest.

    Parameters
    ----------
    candidate : Candidate
        Its elements in their store. Power in cold, bright weather and rated power are marked.
    units : {"si", "us"}
        Unit set of temperatures and lengths.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Time [h] over linear load [W/cm], both logarithmic.

    Raises
    ------
    InvalidInput
        Heat in the store is unknown, the store holds a liquid, the sheath's metal is unknown, or
        `units` is.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``q = P / (100 L)``: q is the linear load [W/cm], P the power [W] and L the heated length [m] of
    an element.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.time_to_limit(candidate)
    >>> ax.get_xscale(), ax.get_yscale()
    ('log', 'log')
    """
    checked_units(units)
    heat = _granular(candidate)
    careful, conducting = heat.bed(conductivity="low"), heat.bed(conductivity="high")
    if heat.sheath is None:
        raise InvalidInput(
            f'candidate: element "{element_name(candidate.circuit)}": sheath = unknown must be '
            "known; a magnet and a file distinguish steel, stainless steel and copper"
        )
    ax = axes_or_new(ax)
    metres = heat.heated_length_m / heat.elements
    own = candidate.bright.element_power_w / metres / CM_PER_M
    rated_w = _rated_w(candidate)
    rated = None if rated_w is None else rated_w / metres / CM_PER_M
    longest_h = 336.0
    first = (
        careful.largest_power_w(limit_c=heat.sheath.verdict_limit_c)
        / heat.heated_length_m
        / CM_PER_M
    )
    loads = np.geomspace(min(own, first) * 0.5, max(own, rated or 0.0, first) * 1.6, 400)
    for limit, what, colour, style in (
        (heat.sheath.verdict_limit_c, "for years", VERDICT, STYLES[1]),
        (heat.sheath.hard_limit_c, "fails soon above", HARD, STYLES[0]),
    ):
        soonest = _time_curve(careful, loads, limit, longest_h)
        latest = _time_curve(conducting, loads, limit, longest_h)
        latest = np.where(np.isnan(latest) & ~np.isnan(soonest), longest_h, latest)
        ax.fill_between(loads, soonest, latest, color=colour, alpha=0.14, linewidth=0)
        label = f"until {degrees(limit, units)} ({heat.sheath.id}, {what})"
        ax.plot(loads, soonest, color=colour, linestyle=style, linewidth=1.8, label=label)
    for load, what, colour, style, hit in (
        (own, "this circuit in cold, bright weather", LOAD, "-", "o"),
        (rated, "rated power", MUTED, "--", "s"),
    ):
        if load is None:
            ax.plot([], [], " ", label=f"{what}: not known")
            continue
        ax.axvline(load, color=colour, linestyle=style, linewidth=1.2)
        hours = float(
            _time_curve(careful, np.array([load]), heat.sheath.hard_limit_c, longest_h)[0]
        )
        when = "not reached" if np.isnan(hours) else f"after {duration(hours)}"
        hard = degrees(heat.sheath.hard_limit_c, units)
        label = f"{what}: {shown(load, 'W/cm', units)}, {hard} {when}"
        ax.plot(load, hours, hit, color=colour, linestyle=style, markersize=7, label=label)
    ax.set_xscale("log")
    ax.set_yscale("log")
    ax.set_yticks(list(_TIMES), list(_TIMES.values()))
    ax.set_yticks([], minor=True)
    ax.set_xlim(loads[0], loads[-1])
    load_axis(ax, "power per heated length, equal elements", units)
    ax.set_ylim(max(5 / 3600, 0.2 * float(soonest[-1])), longest_h)
    ax.axhline(heat.charge_hours, color=RULE, linewidth=0.8)
    ax.annotate(
        f"a day of {heat.charge_hours:g} h",
        (loads[0], heat.charge_hours),
        xytext=(4, 1),
        textcoords="offset points",
        va="bottom",
        fontsize=TEXT,
        color=MUTED,
    )
    ax.set_ylabel("time at constant power [s, min, h]")
    set_title(
        ax,
        f"{heat.elements} x {element_name(candidate.circuit)} in {heat.medium.id}, from cold",
        str(candidate.severity),
    )
    legend(ax)
    return ax
