"""Plot of the trade-offs between heat, headroom and price."""

from __future__ import annotations

import warnings
from typing import TYPE_CHECKING, Any, cast

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.lettering import width_of
from heatmatch.plot.style import (
    COLOURS,
    LOAD,
    MUTED,
    PAPER,
    RULE,
    SMALL,
    TEXT,
    axes_or_new,
    set_title,
)
from heatmatch.text.bank import bank_name
from heatmatch.text.columns import clip

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

_NEAR_PX = 9.0
_LABELS = 12


def _title(candidate: _core.Candidate) -> str:
    circuit = candidate.circuit
    return f"{clip(circuit.owned.group, 18)} {circuit.panels} into {bank_name(circuit, 26)}"


def _price(candidate: _core.Candidate) -> str:
    return str(_core.price_sentence(candidate))


def pareto(ranking: _core.Ranking, *, ax: Axes | None = None) -> Axes:
    """Plot the Pareto-optimal candidates by heat, headroom and price.

    Markers are larger at a higher price to buy; at most twelve are numbered, as in
    ``ranking.pareto``. Other candidates are gray dots. On an interactive canvas a candidate under
    the pointer is described.

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
        s=9, color=RULE, label="candidates that are not Pareto-optimal",
    )  # fmt: skip
    prices = [c.price_to_buy for c in front]
    most = max((price for price in prices if price is not None), default=0.0) or 1.0
    for one, price in zip(front, prices, strict=True):
        size = 30.0 if price is None else 30.0 + 220.0 * price / most
        face = PAPER if price is None else COLOURS[3]
        where = (one.smallest_headroom, one.objective)
        ax.scatter(*where, s=size, facecolor=face, edgecolor=COLOURS[0], linewidth=0.9, zorder=3)
    first = ranking.recommended or next(iter(known), front[0])
    called = "recommended" if ranking.recommended else "first of the ranking"
    of_known = "" if ranking.recommended or not ranking[0].heat_unknown else " with known heat"
    ax.scatter(
        first.smallest_headroom, first.objective, s=330, facecolor="none", edgecolor=LOAD,
        linewidth=1.8, label=called + of_known, zorder=3,
    )  # fmt: skip
    ax.margins(0.08)
    left, right = ax.get_xlim()
    ax.set_xlim(left, right + 0.18 * (right - left))  # for the labels of the last
    ax.set_xlabel("smallest headroom (0: at the limit, 1: unused)")
    ax.set_ylabel(unit)
    set_title(ax, "Trade-offs; larger marker: higher price to buy")
    named = _named(front)
    _list(ax, front, named)
    _number(ax, front, named)
    _follow_pointer(ax, [*front, *known], unit)
    return ax


def _named(front: list[_core.Candidate]) -> list[int]:
    """Places of the candidates that have a label: the ends, and others evenly between."""
    if len(front) <= _LABELS:
        return list(range(len(front)))
    return sorted({round(i * (len(front) - 1) / (_LABELS - 1)) for i in range(_LABELS)})


def _number(ax: Axes, front: list[_core.Candidate], named: list[int]) -> None:
    """Number and price beside each marker, moved up or down to avoid overlap."""
    # The list beside the plot narrows it when it is laid out, so that is done first.
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", "Glyph .* missing")  # a box is drawn instead
        cast("Figure", ax.figure).draw_without_rendering()
    height, gap = SMALL * 1.35, 10.0  # of a label, and from a marker to it [points]
    points = 72.0 / ax.figure.dpi
    spots = points * ax.transData.transform([(c.smallest_headroom, c.objective) for c in front])
    leftmost = points * ax.get_window_extent().x0 + 2.0  # beyond it are the ticks
    taken = [(x - 6.0, x + 6.0, y) for x, y in spots]
    for place in named:
        x, y = spots[place]
        text = f"{place + 1}: {_price(front[place])}"
        width = width_of(text, SMALL) + 2.0
        # Right of the marker, or left of it; then ever further above and below.
        tries = [
            (across, height * ((step + 1) // 2) * (-1) ** step)
            for step in range(8 * len(front))
            for across in (gap, -gap - width)
        ]
        across, up = next(
            (across, up)
            for across, up in tries
            if x + across >= leftmost
            and all(
                x + across >= end or x + across + width <= begin or abs(y + up - level) >= height
                for begin, end, level in taken
            )
        )
        taken.append((x + across, x + across + width, y + up))
        line = {"arrowstyle": "-", "linewidth": 0.5, "color": MUTED}
        note = ax.annotate(
            text, (front[place].smallest_headroom, front[place].objective), (across, up),
            textcoords="offset points", ha="left", va="center", fontsize=SMALL, zorder=4,
            parse_math=False, arrowprops=line if up else None,
        )  # fmt: skip
        note.set_in_layout(False)


def _list(ax: Axes, front: list[_core.Candidate], named: list[int]) -> None:
    """The numbered candidates beside the plot, with purchase prices."""
    lines = [f"{place + 1:2d}  {_price(front[place])}: {_title(front[place])}" for place in named]
    if len(front) > len(named):
        lines.append(f"and {len(front) - len(named)} more, without a label")
    ax.legend(
        fontsize=TEXT, loc="lower left", bbox_to_anchor=(1.01, 0.0), borderaxespad=0.0,
        frameon=False,
    )  # fmt: skip
    ax.text(
        1.02, 1.0, "\n".join(lines), transform=ax.transAxes, va="top", fontsize=SMALL,
        parse_math=False, linespacing=1.3,
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
        "", (0, 0), (12, 12), textcoords="offset points", fontsize=TEXT, zorder=9, parse_math=False,
        bbox={"facecolor": PAPER, "edgecolor": COLOURS[0], "linewidth": 0.8},
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
