"""Plots of the power of a candidate over days and over the hours of a year."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    SMALL,
    STYLES,
    axes_or_new,
    heat_colours,
    ink_on,
    legend,
    set_title,
)
from heatmatch.text.season import MONTHS

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_Numbers = npt.NDArray[np.float64]
_DAYS = (("clear", 0.95), ("middling", 0.5), ("dull", 0.1))
_HOURS = 24


@dataclass(frozen=True)
class HourlyPower:
    """Power of each row of a weather [W], into the elements and at most, and when the row is."""

    element_w: _Numbers
    most_w: _Numbers
    hour: _Numbers  #: of the day, its middle [h]
    day: npt.NDArray[np.int64]  #: from 0 on
    month: npt.NDArray[np.uint8]


def check_equal_panels(circuit: _core.Circuit) -> None:
    """Raise InvalidInput for an array of several groups, whose planes may differ."""
    if circuit.equal_panels:
        return
    raise InvalidInput(
        f"candidate: array = {circuit.array_layout!r} must be of one group; "
        "use simulate_day for unlike panels"
    )


def hourly_power(candidate: _core.Candidate, weather: _core.Weather) -> HourlyPower:
    """The operating point of every row, for panels as they are today and a bank at work.

    Raises
    ------
    InvalidInput
        The rows of the weather do not follow each other in time.
    """
    if weather.first_hour is None:
        raise InvalidInput(
            "weather: first_hour = none must be known; consecutive hours are needed. "
            "Make it with from_installation, from_months, or from_frame without gaps"
        )
    circuit = candidate.circuit
    check_equal_panels(circuit)
    sun = weather.plane_irradiance_w_m2
    noct_c = circuit.panel_filled.noct_c
    cells = weather.cell_temperature_c(**({} if noct_c is None else {"noct_c": noct_c}))
    ohms, share = circuit.bank_ohm + circuit.wire_ohm, circuit.parallel / circuit.series
    element, most = np.zeros(len(sun)), np.zeros(len(sun))
    count = circuit.series * circuit.parallel
    for row in np.flatnonzero(sun > 0.0):
        curve = circuit.diode_today.at(
            irradiance_w_m2=float(sun[row]), cell_temperature_c=float(cells[row])
        )
        element[row] = curve.into_resistance(ohms * share).power_w
        most[row] = curve.maximum_power().power_w
    element *= count * circuit.bank_ohm / ohms
    most *= count
    # A row is shorter than its step where snow covers the panels during part of it.
    covered = weather.hours / weather.step_hours
    middle = weather.first_hour + weather.step_hours * (np.arange(len(sun)) + 0.5)
    return HourlyPower(
        element * covered,
        most * covered,
        np.mod(middle, float(_HOURS), dtype=np.float64),
        (middle // _HOURS).astype(np.int64),
        weather.month,
    )


def _month(candidate: _core.Candidate, weather: _core.Weather, month: int | None) -> int:
    """The month to draw: the one given, that of least heat in the season, or of least sun."""
    if month is not None:
        if isinstance(month, bool) or month not in range(1, 13):
            raise InvalidInput(f"month = {month!r} must be 1 to 12; January is 1")
        return month
    season = candidate.season
    if season is not None:
        there = [m for m in season.months if weather.days[m - 1] > 0.0]
        if there:
            return min(there, key=lambda m: float(season.kwh_per_day[m - 1]))
    sums = np.bincount(weather.month, weather.plane_irradiance_w_m2 * weather.hours, 13)[1:]
    known = np.flatnonzero(weather.days > 0.0)
    return 1 + int(min(known, key=lambda m: float(sums[m] / weather.days[m])))


def _whole_days(power: HourlyPower, weather: _core.Weather, month: int) -> list[int]:
    """The days of a month of which the weather has every step, the darkest first."""
    sun = np.bincount(power.day, weather.plane_irradiance_w_m2 * weather.hours)
    hours = np.bincount(power.day) * weather.step_hours
    within = np.bincount(power.day, power.month == month) * weather.step_hours
    # A month by another clock begins within a solar day: the month with most of it has that day.
    whole = (hours > _HOURS - 0.5 * weather.step_hours) & (within > 0.5 * _HOURS)
    return sorted((int(day) for day in np.flatnonzero(whole)), key=lambda day: float(sun[day]))


def day_power(
    candidate: _core.Candidate,
    weather: _core.Weather,
    *,
    month: int | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Plot power over a clear, an average and a dull day of one month.

    They are the whole days brighter than 95, 50 and 10 % of the month's days.

    Parameters
    ----------
    candidate : Candidate
        The circuit to draw, panels at their present age.
    weather : Weather
        Rows must follow each other in time.
    month : int, optional
        1 to 12. If not given, the month of least heat in the season; without a season, the month of
        least sun.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Power [W] over the hour of the day [h]; thin lines are maximum power of the array.

    Raises
    ------
    InvalidInput
        The rows do not follow each other, `month` is not 1 to 12, or the weather has no whole day
        of it.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``P = S N p R / (R + R_w)``: p is the power [W] of one panel into ``(R + R_w) N / S``, S panels
    in series, N strings in parallel, R and R_w the resistances of bank and wire [ohm].

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> ax = hm.plot.day_power(candidate, weather, month=1)
    >>> ax.get_legend().get_texts()[0].get_text()
    'clear day: ... kWh'
    """
    power = hourly_power(candidate, weather)
    wanted = _month(candidate, weather, month)
    darkest_first = _whole_days(power, weather, wanted)
    if not darkest_first:
        raise InvalidInput(
            f"month = {MONTHS[wanted - 1]} must be in the weather with at least one whole day; "
            "choose a month that it has"
        )
    ax = axes_or_new(ax)
    for (name, share), style, colour in zip(_DAYS, STYLES, COLOURS, strict=False):
        day = darkest_first[round(share * (len(darkest_first) - 1))]
        rows = np.flatnonzero(power.day == day)
        kwh, most_kwh = (
            watts[rows].sum() * weather.step_hours / 1000.0
            for watts in (power.element_w, power.most_w)
        )
        ax.plot(
            power.hour[rows], power.element_w[rows], color=colour, linestyle=style,
            label=f"{name} day: {kwh:.2f} of {most_kwh:.2f} kWh",
        )  # fmt: skip
        ax.plot(
            power.hour[rows], power.most_w[rows], color=colour, linestyle=style, linewidth=0.7,
            label="available from the panels" if name == "clear" else None,
        )  # fmt: skip
    ax.set_xlim(0.0, 24.0)
    ax.set_ylim(bottom=0.0)
    ax.set_xticks(range(0, 25, 3))
    ax.set_xlabel("mean solar time [h]")
    ax.set_ylabel("power into the elements [W]")
    title = f"{candidate.circuit.title}: days in {MONTHS[wanted - 1]}"
    set_title(ax, title, str(candidate.severity))
    legend(ax)
    return ax


def month_by_hour(
    candidate: _core.Candidate, weather: _core.Weather, *, ax: Axes | None = None
) -> Axes:
    """Plot mean power into the elements for every hour of every month.

    Parameters
    ----------
    candidate : Candidate
        The circuit to draw, panels at their present age.
    weather : Weather
        Rows must follow each other in time.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Mean power [W] as color and number: hour of the day over month.

    Raises
    ------
    InvalidInput
        The rows do not follow each other.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.month_by_hour(candidate, hm.weather.from_installation(hm.demo()))
    >>> len(ax.get_xticks())
    12
    """
    power = hourly_power(candidate, weather)
    ax = axes_or_new(ax)
    mean = np.full((_HOURS, 12), np.nan)
    for month in range(12):
        days = float(weather.days[month])
        if days <= 0.0:
            continue
        of_month = power.month == month + 1
        hour = power.hour[of_month].astype(int)
        energy = np.bincount(hour, power.element_w[of_month], _HOURS) * weather.step_hours
        mean[:, month] = energy / days
    colours = heat_colours()
    top = float(np.nanmax(mean)) or 1.0
    image = ax.imshow(
        mean, cmap=colours, vmin=0.0, vmax=top, aspect="auto", origin="lower",
        extent=(-0.5, 11.5, 0.0, 24.0),
    )  # fmt: skip
    for month in range(12):
        for hour in range(_HOURS):
            watts = mean[hour, month]
            if np.isfinite(watts) and watts >= 0.5:
                shade = ink_on(colours(watts / top))
                ax.text(
                    month, hour + 0.5, f"{watts:.0f}", ha="center", va="center", fontsize=SMALL,
                    color=shade,
                )  # fmt: skip
    light = np.flatnonzero(np.nanmax(mean, axis=1) >= 0.5)
    if len(light):
        ax.set_ylim(max(0.0, light[0] - 1.0), min(24.0, light[-1] + 2.0))
    chosen = () if candidate.season is None else candidate.season.months
    names = [name + ("*" if i in chosen else "") for i, name in enumerate(MONTHS, 1)]
    ax.set_xticks(range(12), names)
    ax.set_ylabel("mean solar time [h]")
    ax.set_xlabel("month, * in the season")
    set_title(
        ax, f"{candidate.circuit.title}: mean power into the elements", str(candidate.severity)
    )
    bar = ax.figure.colorbar(image, ax=ax, pad=0.02)
    bar.set_label("W")
    bar.outline.set_edgecolor(LOAD)
    return ax
