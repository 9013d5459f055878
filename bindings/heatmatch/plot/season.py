"""Plots of a season: its energy against load resistance, and its months."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.power import check_equal_panels
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    MUTED,
    STYLES,
    axes_or_new,
    legend,
    ohm_axis,
    set_title,
)
from heatmatch.text.season import MONTHS

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_FULL_SUN = {"irradiance_w_m2": 1000.0, "cell_temperature_c": 25.0}


@dataclass(frozen=True)
class _Array:
    """Equal panels behind a wire, with their energy over weather."""

    title: str
    diode: _core.Panel | _core.SingleDiode
    noct_c: float | None
    series: int
    parallel: int
    wire_ohm: float
    stc_match_ohm: float

    def curve(self, weather: _core.Weather, months: Sequence[int]) -> _core.EnergyCurve:
        return _core.EnergyCurve(self.diode, weather, months=months, noct_c=self.noct_c)

    def most_kwh(self, curve: _core.EnergyCurve) -> float:
        return self.series * self.parallel * curve.mpp_kwh

    def kwh(
        self, curve: _core.EnergyCurve, ohms: npt.NDArray[np.float64]
    ) -> npt.NDArray[np.float64]:
        """Energy into banks of these resistances; the load of one panel is P/S of them."""
        share = self.parallel / self.series
        each = curve.delivered_kwh(ohms * share, wire_ohm=self.wire_ohm * share)
        return self.series * self.parallel * each

    def best(self, curve: _core.EnergyCurve, ohms: npt.NDArray[np.float64]) -> tuple[float, float]:
        """The resistance with the most energy among or between these, and that energy."""
        top = int(np.argmax(self.kwh(curve, ohms)))
        fine = np.geomspace(ohms[max(0, top - 1)], ohms[min(len(ohms) - 1, top + 1)], 201)
        energies = self.kwh(curve, fine)
        return float(fine[np.argmax(energies)]), float(energies.max())


def _stc_match_ohm(diode: _core.SingleDiode) -> float:
    """Vmp/Imp in full sun [ohm]."""
    best = diode.at(**_FULL_SUN).maximum_power()
    return best.voltage_v / best.current_a


def _array(source: _core.Candidate | _core.Panel) -> _Array:
    if isinstance(source, _core.Candidate):
        circuit = source.circuit
        check_equal_panels(circuit)
        return _Array(
            f"{circuit.owned.group} {circuit.panels}",
            circuit.diode_today,
            circuit.panel_filled.noct_c,
            circuit.series,
            circuit.parallel,
            circuit.wire_ohm,
            max(
                0.0,
                _stc_match_ohm(circuit.diode_today) * circuit.series / circuit.parallel
                - circuit.wire_ohm,
            ),
        )
    if isinstance(source, _core.Panel):
        if source.v_mp is not None and source.i_mp is not None:
            stc_match_ohm = source.v_mp / source.i_mp
        else:
            stc_match_ohm = _stc_match_ohm(_core.fit_single_diode(source))
        return _Array(source.label, source, None, 1, 1, 0.0, stc_match_ohm)
    raise InvalidInput(
        f"candidate_or_panel = {type(source).__name__} must be a Candidate or a Panel; "
        'give ranking[0], or catalog.panels["..."]'
    )


def _weathers(weather: _core.Weather | Mapping[str, _core.Weather]) -> dict[str, _core.Weather]:
    """The weathers by name, if there is a line style for each."""
    named = dict(weather) if isinstance(weather, Mapping) else {"": weather}
    if not 1 <= len(named) <= len(STYLES):
        raise InvalidInput(
            f"weather = {len(named)} weathers must be 1 to {len(STYLES)}; "
            "draw others in a second plot"
        )
    return named


def _bank(ax: Axes, circuit: _core.Circuit) -> None:
    """The tolerance band of the circuit's bank."""
    ax.axvspan(
        circuit.bank_low_ohm,
        circuit.bank_high_ohm,
        color=LOAD,
        alpha=0.15,
        linewidth=0,
        label=f"this bank, {circuit.bank_ohm:.3g} ohm with its tolerance",
    )


def energy_against_ohms(
    candidate_or_panel: _core.Candidate | _core.Panel,
    weather: _core.Weather | Mapping[str, _core.Weather],
    *,
    months: Sequence[int] | None = None,
    ax: Axes | None = None,
) -> Axes:
    """Plot the season's energy into a bank against its resistance.

    Level lines show the energy at the maximum power point, the dashed line the STC match (Vmp/Imp).

    Parameters
    ----------
    candidate_or_panel : Candidate or Panel
        Its array is drawn, or one panel. The bank of a candidate is marked with its tolerance.
    weather : Weather or mapping of str to Weather
        One weather, or one to five by name.
    months : sequence of int, optional
        Months of the season, 1 to 12. If not given, those of the candidate, the year for a panel.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Energy [kWh] over resistance [ohm, logarithmic].

    Raises
    ------
    InvalidInput
        The first argument is of another type, `months` are not months, or there are no or more than
        five weathers.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``E(R) = sum(P_i(R) dt_i)`` over the season: P_i is the power [kW] into R [ohm], without the
    loss in the wire, and dt_i the length [h] of row i of the weather.

    Examples
    --------
    >>> import heatmatch as hm
    >>> panel = hm.Catalog.starter().panels["silicon-60-cell-245"]
    >>> weather = hm.weather.from_installation(hm.demo())
    >>> ax = hm.plot.energy_against_ohms(panel, weather, months=[11, 12, 1])
    >>> ax.get_xscale()
    'log'
    """
    array = _array(candidate_or_panel)
    named = _weathers(weather)
    candidate = candidate_or_panel if isinstance(candidate_or_panel, _core.Candidate) else None
    circuit = None if candidate is None else candidate.circuit
    if months is None:
        season = None if candidate is None else candidate.season
        months = range(1, 13) if season is None else season.months
    curves = {name: array.curve(sky, list(months)) for name, sky in named.items()}
    ax = axes_or_new(ax)
    lowest, highest = array.stc_match_ohm * 0.2, array.stc_match_ohm * 8.0
    if circuit is not None:
        lowest, highest = min(lowest, circuit.bank_ohm * 0.6), max(highest, circuit.bank_ohm * 1.6)
    ohms = np.geomspace(lowest, highest, 300)
    for (name, curve), style, colour in zip(curves.items(), STYLES, COLOURS, strict=False):
        best_ohm, best_kwh = array.best(curve, ohms)
        most = array.most_kwh(curve)
        label = f"{name + ': ' if name else ''}best {best_ohm:.3g} ohm, {best_kwh:.0f} kWh"
        if most > 0.0:
            label += f" ({100 * best_kwh / most:.0f} %)"
        ax.plot(ohms, array.kwh(curve, ohms), color=colour, linestyle=style, label=label)
        ax.plot(best_ohm, best_kwh, marker="|", color=colour, markersize=12)
        ax.axhline(
            most,
            color=colour,
            linestyle=style,
            linewidth=0.7,
            label=f"{name + ': ' if name else ''}available from the panels {most:.0f} kWh",
        )
        if circuit is not None:
            own = float(array.kwh(curve, np.array([circuit.bank_ohm]))[0])
            ax.plot(circuit.bank_ohm, own, marker="o", color=LOAD, markersize=6)
    if circuit is not None:
        _bank(ax, circuit)
    ax.axvline(
        array.stc_match_ohm,
        color=MUTED,
        linewidth=1.2,
        linestyle="--",
        label=f"Vmp/Imp in full sun, {array.stc_match_ohm:.3g} ohm",
    )
    ohm_axis(ax, lowest, highest)
    ax.set_ylim(bottom=0.0)
    ax.set_ylabel("energy into the elements [kWh]")
    span = "the year" if len(set(months)) == 12 else " ".join(MONTHS[m - 1] for m in months)
    severity = None if candidate is None else str(candidate.severity)
    set_title(ax, f"{array.title}: energy of the season ({span})", severity)
    legend(ax)
    return ax


def months(candidate: _core.Candidate, *, ax: Axes | None = None) -> Axes:
    """Plot heat per day in each month, beside the energy at the maximum power point.

    Parameters
    ----------
    candidate : Candidate
        Ranked or assessed with weather.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Energy per day [kWh] over month; months of the season have a star.

    Raises
    ------
    InvalidInput
        The candidate has no season.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.months(candidate)
    >>> len(ax.get_xticks())
    12
    """
    season = candidate.season
    if season is None:
        raise InvalidInput(
            "candidate: season = none must be given; give weather data to rank or assess, or "
            "twelve monthly means to the installation"
        )
    ax = axes_or_new(ax)
    every = np.arange(12)
    chosen = np.isin(every + 1, season.months)
    ax.bar(
        every,
        season.mpp_kwh_per_day,
        width=0.8,
        facecolor="none",
        edgecolor=COLOURS[0],
        linewidth=1.0,
        label="available from the panels",
    )
    for mask, colour, hatch, label in (
        (chosen, COLOURS[1], None, "into the elements, season (*)"),
        (~chosen, COLOURS[4], "//", "into the elements, other months"),
    ):
        if mask.any():
            ax.bar(
                every[mask],
                np.asarray(season.kwh_per_day)[mask],
                width=0.56,
                facecolor=colour,
                edgecolor=COLOURS[0],
                linewidth=0.5,
                hatch=hatch,
                label=label,
            )
    ax.set_xticks(every, [MONTHS[m] + ("*" if chosen[m] else "") for m in every])
    ax.set_ylim(bottom=0.0)
    ax.set_xlabel("month")
    ax.set_ylabel("heat per day [kWh]")
    set_title(ax, candidate.circuit.title, str(candidate.severity))
    legend(ax)
    return ax
