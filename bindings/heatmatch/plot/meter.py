"""Expected meter readings at the bank, with actual readings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch import _library as _core
from heatmatch.plot.style import COLOURS, LOAD, PAPER, SMALL, axes_or_new, legend, set_title

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def _named_spots(rows: list[_core.MeterRow]) -> list[tuple[str, tuple[float, float]]]:
    """Irradiances of rows, with one label for those of nearly the same voltage, and its place."""
    near = 0.1
    most_v = max((row.bank_v.typical for row in rows), default=1.0)
    groups: list[list[_core.MeterRow]] = []
    for row in sorted(rows, key=lambda each: each.bank_v.typical):
        if groups and row.bank_v.typical - groups[-1][0].bank_v.typical < near * most_v:
            groups[-1].append(row)
        else:
            groups.append([row])
    spots = []
    for group in groups:
        suns = sorted(row.irradiance_w_m2 for row in group)
        name = f"{suns[0]:.0f}" + (f" to {suns[-1]:.0f}" if len(suns) > 1 else "") + " W/m2"
        lowest = min(row.bank_a.low for row in group)
        spots.append((name, (group[-1].bank_v.typical, lowest)))
    return spots


def meter_points(
    sheet: _core.MeterSheet,
    readings: _core.Readings | None = None,
    *,
    label: str = "read",
    ax: Axes | None = None,
) -> Axes:
    """Plot expected voltage and current of the bank, with readings beside them.

    Every reading of a healthy bank lies between the two lines, at any irradiance. A higher
    resistance indicates an open element or a bad joint, a lower one shorted turns.

    Parameters
    ----------
    sheet : MeterSheet
        Expected values, from ``meter_sheet``.
    readings : Readings, optional
        Rows with both ``bank_v`` [V] and ``bank_a`` [A] are drawn.
    label : str
        Name of the readings in the legend.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Current [A] over voltage [V] of the bank.

    Raises
    ------
    ImportError
        matplotlib is not installed.

    Notes
    -----
    ``R = V / I``. Lines: lowest cold and highest hot resistance R of the bank [ohm].

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.meter_points(hm.meter_sheet(candidate))
    >>> float(ax.get_ylim()[0])
    0.0
    """
    ax = axes_or_new(ax)
    ohms = [check for check in sheet.checks if check.reading == "voltage over current at the bank"]
    rows = [] if readings is None else readings.rows
    points = [(r["bank_v"], r["bank_a"]) for r in rows if "bank_v" in r and "bank_a" in r]
    most_a = max([row.bank_a.high for row in sheet.rows] + [a for _, a in points], default=1.0)
    for check in ohms:
        for ohm, style in ((check.low, "--"), (check.high, "-.")):
            if ohm is not None:
                ax.plot(
                    [0.0, ohm * most_a],
                    [0.0, most_a],
                    style,
                    color=LOAD,
                    lw=1.2,
                    label=f"{ohm:.3g} ohm",
                )
    for i, row in enumerate(sheet.rows):
        v, a = row.bank_v, row.bank_a
        ax.errorbar(
            v.typical,
            a.typical,
            xerr=[[max(0.0, v.typical - v.low)], [max(0.0, v.high - v.typical)]],
            yerr=[[max(0.0, a.typical - a.low)], [max(0.0, a.high - a.typical)]],
            fmt="o" if i < len(sheet.rows) // 2 else "s",
            ms=4,
            mfc=PAPER,
            color=COLOURS[1],
            lw=0.9,
            label="expected, panels warm"
            if i == 0
            else ("expected, just uncovered" if i == len(sheet.rows) // 2 else None),
        )
    for suns, spot in _named_spots(sheet.rows[: len(sheet.rows) // 2]):
        ax.annotate(
            suns, spot, xytext=(0, -12), textcoords="offset points", fontsize=SMALL, ha="center"
        )
    if points:
        ax.plot(*zip(*points, strict=True), "X", ms=8, color=COLOURS[0], label=label)
    ax.set_xlim(left=0.0)
    ax.set_ylim(bottom=0.0)
    ax.set_xlabel("voltage at the bank [V]")
    ax.set_ylabel("bank current [A]")
    set_title(ax, f"{sheet.title}: what a meter should read")
    legend(ax)
    return ax
