"""Plot of the trade-offs between heat, headroom and price."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.style import COLOURS, LOAD, axes_or_new
from heatmatch.text.bank import bank_name
from heatmatch.text.columns import clip

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_NEAR_PX = 9.0
_LISTED = 14


def _title(candidate: _core.Candidate) -> str:
    circuit = candidate.circuit
    return f"{clip(circuit.owned.group, 18)} {circuit.panels} into {bank_name(circuit, 26)}"


def _price(candidate: _core.Candidate) -> str:
    return str(_core.price_sentence(candidate))


def pareto(ranking: _core.Ranking, *, ax: Axes | None = None) -> Axes:
    """Plot the Pareto-optimal candidates by heat, headroom and price.

    Markers are numbered as in ``ranking.pareto`` and larger at a higher price to buy. Other
    candidates are gray dots. On an interactive canvas a candidate under the pointer is described.

    Parameters
    ----------
    ranking : Ranking
        Candidates whose sheath temperature is unknown are left out.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Season energy [kWh], or mean power [W] without weather, over smallest headroom [1].

    Raises
    ------
    InvalidInput
        The ranking has no candidate, or none with a known sheath temperature.
    ImportError
        matplotlib is not installed.

    Notes
    -----
    A candidate is Pareto-optimal if no other one equals or beats it in heat, headroom (in steps of
    one percent) and price to buy at once.

    Examples
    --------
    >>> import heatmatch as hm
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), group="barn pair", top=5)
    >>> ax = hm.plot.pareto(ranking)
    >>> len(ranking.pareto) > 0
    True
    """
    front = ranking.pareto
    if not front and len(ranking):
        raise InvalidInput(
            "ranking: the sheath temperature is known for no element; give heated_length_mm and "
            "sheath_diameter_mm of one"
        )
    if not front:
        raise InvalidInput(
            "ranking: candidates = none must be at least one; see .rejected for the reasons"
        )
    ax = axes_or_new(ax)
    unit = "kWh of the season" if ranking.by_season else "W over the conditions"
    known = [c for c in ranking if not c.heat_unknown]
    ax.scatter(
        [c.smallest_headroom for c in known], [c.objective for c in known],
        s=9, color="0.75", label="candidates that are not Pareto-optimal",
    )  # fmt: skip
    prices = [c.price_to_buy for c in front]
    most = max((price for price in prices if price is not None), default=0.0) or 1.0
    for one, price in zip(front, prices, strict=True):
        size = 30.0 if price is None else 30.0 + 220.0 * price / most
        face = "white" if price is None else COLOURS[3]
        where = (one.smallest_headroom, one.objective)
        ax.scatter(*where, s=size, facecolor=face, edgecolor=COLOURS[0], linewidth=0.9, zorder=3)
    first = next(iter(known), front[0])
    of_known = " with known temperatures" if ranking[0].heat_unknown else ""
    ax.scatter(
        first.smallest_headroom, first.objective, s=330, facecolor="none", edgecolor=LOAD,
        linewidth=1.6, label="first of the ranking" + of_known, zorder=3,
    )  # fmt: skip
    ax.margins(0.08)
    left, right = ax.get_xlim()
    ax.set_xlim(left, right + 0.18 * (right - left))  # for the labels of the last
    _number(ax, front)
    ax.set_xlabel("smallest headroom (0: at the limit, 1: unused)")
    ax.set_ylabel(unit)
    ax.set_title("Trade-offs; larger marker: higher price to buy")
    _list(ax, front)
    _follow_pointer(ax, [*front, *known], unit)
    return ax


def _number(ax: Axes, front: list[_core.Candidate]) -> None:
    """Number and price beside each marker, moved up or down to avoid overlap."""
    height, gap = 8.5, 10.0  # of a label, and from a marker to it [points]
    # The list beside the plot narrows it when it is laid out: close markers are separated.
    points = 72.0 / ax.figure.dpi * np.array([0.55, 0.85])
    spots = ax.transData.transform([(c.smallest_headroom, c.objective) for c in front]) * points
    taken = [(x - 6.0, x + 6.0, y) for x, y in spots]
    for number, (one, (x, y)) in enumerate(zip(front, spots, strict=True), 1):
        text = f"{number}: {_price(one)}"
        width = 4.4 * len(text)
        # Right of the marker, or left of it; then ever further above and below.
        tries = [
            (across, height * ((step + 1) // 2) * (-1) ** step)
            for step in range(8 * len(front))
            for across in (gap, -gap - width)
        ]
        across, up = next(
            (across, up)
            for across, up in tries
            if all(
                x + across >= end or x + across + width <= begin or abs(y + up - level) >= height
                for begin, end, level in taken
            )
        )
        taken.append((x + across, x + across + width, y + up))
        line = {"arrowstyle": "-", "linewidth": 0.5, "color": "0.4"}
        ax.annotate(
            text, (one.smallest_headroom, one.objective), (across, up),
            textcoords="offset points", ha="left", va="center", fontsize=7, zorder=4,
            parse_math=False, arrowprops=line if up else None,
        )  # fmt: skip


def _list(ax: Axes, front: list[_core.Candidate]) -> None:
    """The numbered candidates beside the plot, with purchase prices."""
    lines = [
        f"{number:2d}  {_price(one)}: {_title(one)}"
        for number, one in enumerate(front[:_LISTED], 1)
    ]
    if len(front) > _LISTED:
        lines.append(f"and {len(front) - _LISTED} more")
    box = ax.legend(
        fontsize=8, loc="lower left", bbox_to_anchor=(1.01, 0.0), borderaxespad=0.0, frameon=False
    )
    box.set_in_layout(True)
    ax.text(
        1.02, 1.0, "\n".join(lines), transform=ax.transAxes, va="top", fontsize=8,
        parse_math=False, linespacing=1.4,
    )  # fmt: skip


def told(candidate: _core.Candidate, unit: str) -> str:
    """Text of a candidate at the pointer."""
    worst = candidate.worst
    margin = "" if worst is None else f"\n{worst.severity}: {_core.shown_margin_name(worst.name)}"
    return (
        f"{_title(candidate)}\n{candidate.objective:.0f} {unit}, "
        f"headroom {candidate.smallest_headroom:.2f}, to buy {_price(candidate)}{margin}"
    )


def _follow_pointer(ax: Axes, candidates: list[_core.Candidate], unit: str) -> None:
    """Shows the candidate nearest to the pointer, where the canvas follows one."""
    points = np.array([[c.smallest_headroom, c.objective] for c in candidates])
    note = ax.annotate(
        "", (0, 0), (12, 12), textcoords="offset points", fontsize=8, zorder=9, parse_math=False,
        bbox={"facecolor": "white", "edgecolor": COLOURS[0], "linewidth": 0.8},
    )  # fmt: skip
    note.set_visible(False)
    note.set_in_layout(False)

    def move(event: Any) -> None:
        shown = False
        if event.inaxes is ax:
            pixels = ax.transData.transform(points)
            far = np.hypot(pixels[:, 0] - event.x, pixels[:, 1] - event.y)
            nearest = int(np.argmin(far))
            if far[nearest] <= _NEAR_PX:
                note.xy = tuple(points[nearest])
                note.set_text(told(candidates[nearest], unit))
                shown = True
        if shown or note.get_visible():
            note.set_visible(shown)
            ax.figure.canvas.draw_idle()

    ax.figure.canvas.mpl_connect("motion_notify_event", move)
