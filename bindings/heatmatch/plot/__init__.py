"""Plots of candidates, weather, heat and days; functions take and return matplotlib Axes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.day import day_run, stagnation
from heatmatch.plot.day_energy import compare_days, day_energy
from heatmatch.plot.heat import sheath_by_power, time_to_limit
from heatmatch.plot.heat_path import heat_path
from heatmatch.plot.hookup_diagram import hookup_diagram
from heatmatch.plot.hookup_map import hookup_map
from heatmatch.plot.margins import margins
from heatmatch.plot.meter import meter_points
from heatmatch.plot.pareto import pareto
from heatmatch.plot.power import day_power, month_by_hour
from heatmatch.plot.scale import degrees
from heatmatch.plot.season import energy_against_ohms, months
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
from heatmatch.text.columns import clip
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "SUNS",
    "compare_days",
    "day_energy",
    "day_power",
    "day_run",
    "energy_against_ohms",
    "heat_path",
    "hookup_diagram",
    "hookup_map",
    "load_lines",
    "margins",
    "meter_points",
    "month_by_hour",
    "months",
    "pareto",
    "power_against_ohms",
    "sheath_by_power",
    "stagnation",
    "time_to_limit",
]

SUNS = ((1000.0, 45.0), (800.0, 40.0), (600.0, 35.0), (400.0, 30.0), (200.0, 25.0))


def _checked(suns: Sequence[tuple[float, float]]) -> Sequence[tuple[float, float]]:
    """The suns, if there is a line style for each."""
    if not 1 <= len(suns) <= len(STYLES):
        raise InvalidInput(
            f"suns = {len(suns)} pairs must be 1 to {len(STYLES)}; draw others in a second plot"
        )
    return suns


def load_lines(
    candidate: _core.Candidate,
    *,
    suns: Sequence[tuple[float, float]] = SUNS,
    units: str = "si",
    ax: Axes | None = None,
) -> Axes:
    """Plot I-V curves of the array with the load line of the bank.

    A dot marks each operating point, a tick each maximum power point; the shaded band is the
    tolerance of the elements.

    Parameters
    ----------
    candidate : Candidate
        The circuit to draw.
    suns : sequence of (float, float)
        Irradiance [W/m2] and cell temperature [°C] of each curve, shape (n, 2) with n = 1 to 5.
    units : {"si", "us"}
        Unit set of temperatures.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Array current [A] over array voltage [V].

    Raises
    ------
    InvalidInput
        `suns` is empty or longer than five, or `units` is unknown.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    Load line: ``I = V / (R + R_w)``. Power in the legend: ``P = I**2 R`` [W]. V and I are voltage
    [V] and current [A] of the array, R and R_w the resistances of bank and wire [ohm].

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.load_lines(candidate, suns=[(1000, 45), (400, 30)])
    >>> ax.get_xlabel(), ax.get_ylabel()
    ('array voltage [V]', 'array current [A]')
    """
    checked_units(units)
    ax = axes_or_new(ax)
    circuit = candidate.circuit
    array = circuit.array
    wire = circuit.wire_ohm
    highest_v = 0.0
    highest_a = 0.0
    for (sun, cell), style, colour in zip(_checked(suns), STYLES, COLOURS, strict=False):
        curve = array.at(irradiance_w_m2=sun, cell_temperature_c=cell)
        volts = np.linspace(0.0, curve.open_circuit_voltage_v, 300)
        amps = curve.current_a(volts)
        point = curve.into_resistance(circuit.bank_ohm + wire)
        watts = point.current_a**2 * circuit.bank_ohm
        label = f"{sun:.0f} W/m², cells {degrees(cell, units)}: {watts:.0f} W"
        ax.plot(volts, amps, color=colour, linestyle=style, label=label)
        best = curve.maximum_power()
        ax.plot(best.voltage_v, best.current_a, marker="|", color=colour, markersize=10)
        ax.plot(point.voltage_v, point.current_a, marker="o", color=LOAD, markersize=6)
        highest_v = max(highest_v, curve.open_circuit_voltage_v)
        highest_a = max(highest_a, curve.short_circuit_current_a)
    line_v = np.array([0.0, highest_v * 1.03])
    ax.fill_between(
        line_v,
        line_v / (circuit.bank_high_ohm + wire),
        line_v / (circuit.bank_low_ohm + wire),
        color=LOAD,
        alpha=0.15,
        linewidth=0,
        label="tolerance of the elements",
    )
    ohms = circuit.bank_ohm + wire
    label = f"load line, {ohms:.3g} ohm with wire"
    ax.plot(line_v, line_v / ohms, color=LOAD, linewidth=1.8, label=label)
    ax.set_xlim(0.0, highest_v * 1.03)
    ax.set_ylim(0.0, highest_a * 1.12)
    ax.set_xlabel("array voltage [V]")
    ax.set_ylabel("array current [A]")
    set_title(ax, circuit.title, str(candidate.severity))
    legend(ax)
    return ax


def power_against_ohms(
    candidate: _core.Candidate,
    *,
    suns: Sequence[tuple[float, float]] = SUNS,
    units: str = "si",
    ax: Axes | None = None,
) -> Axes:
    """Plot power into the bank against its resistance, for several irradiances.

    The bank is marked with its tolerance, the STC match (Vmp/Imp) as a dashed line.

    Parameters
    ----------
    candidate : Candidate
        The circuit whose array and bank are drawn.
    suns : sequence of (float, float)
        Irradiance [W/m2] and cell temperature [°C] of each curve, shape (n, 2) with n = 1 to 5.
    units : {"si", "us"}
        Unit set of temperatures.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Power [W] over resistance [ohm, logarithmic].

    Raises
    ------
    InvalidInput
        `suns` is empty or longer than five, or `units` is unknown.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``P(R) = V I R / (R + R_w)``. V [V] and I [A] are the operating point of the array into
    ``R + R_w``; R and R_w are the resistances of bank and wire [ohm].

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.power_against_ohms(candidate)
    >>> ax.get_xscale()
    'log'
    """
    checked_units(units)
    ax = axes_or_new(ax)
    circuit = candidate.circuit
    noon = circuit.stc_match_ohm
    ohms = np.geomspace(noon * 0.2, noon * 8.0, 300)
    wire = circuit.wire_ohm
    for (sun, cell), style, colour in zip(_checked(suns), STYLES, COLOURS, strict=False):
        curve = circuit.array.at(irradiance_w_m2=sun, cell_temperature_c=cell)
        watts = curve.into_resistance(ohms + wire).power_w * ohms / (ohms + wire)
        label = f"{sun:.0f} W/m², cells {degrees(cell, units)}"
        ax.plot(ohms, watts, color=colour, linestyle=style, label=label)
        best = int(np.argmax(watts))
        ax.plot(ohms[best], watts[best], marker="|", color=colour, markersize=9)
    ax.axvspan(circuit.bank_low_ohm, circuit.bank_high_ohm, color=LOAD, alpha=0.15, linewidth=0)
    ax.axvline(
        circuit.bank_ohm, color=LOAD, linewidth=1.8, label=f"this bank, {circuit.bank_ohm:.3g} ohm"
    )
    ax.axvline(
        noon,
        color=MUTED,
        linewidth=1.2,
        linestyle="--",
        label=f"Vmp/Imp by the label, {noon:.3g} ohm",
    )
    ohm_axis(ax, ohms[0], ohms[-1])
    ax.set_ylim(bottom=0.0)
    ax.set_ylabel("power into the elements [W]")
    title = f"{clip(circuit.array_layout, 60)}: power at each irradiance"
    set_title(ax, title, str(candidate.severity))
    legend(ax)
    return ax
