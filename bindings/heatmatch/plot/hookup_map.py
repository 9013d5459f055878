"""Plot of every panel hook-up against every element: the season's heat of each pairing."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.style import COLOURS, axes_or_new, heat_colours, ink_on
from heatmatch.text.bank import element_name
from heatmatch.text.columns import clip, clip_middle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_MOST = 25  # rows or columns that can be read
_ROOM = 0.62  # of a cell's height for its number

_Cell = tuple[str, str]


def _best(candidates: Iterable[_core.Candidate]) -> dict[_Cell, _core.Candidate]:
    """The candidate of most heat for each element and hook-up."""
    best: dict[_Cell, _core.Candidate] = {}
    for candidate in candidates:
        circuit = candidate.circuit
        cell = (element_name(circuit), f"{circuit.owned.group} {circuit.panels}")
        if cell not in best or candidate.objective > best[cell].objective:
            best[cell] = candidate
    return best


def _order(
    good: dict[_Cell, _core.Candidate], bad: dict[_Cell, _core.Candidate], place: int
) -> list[str]:
    """Names of rows or columns, those of most heat without danger first."""
    most: dict[str, tuple[float, float]] = {}
    for share, cells in ((0, good), (1, bad)):
        for cell, candidate in cells.items():
            heats = list(most.get(cell[place], (0.0, 0.0)))
            heats[share] = max(heats[share], candidate.objective)
            most[cell[place]] = (heats[0], heats[1])
    return sorted(most, key=lambda name: (-most[name][0], -most[name][1], name))


def hookup_map(ranking: _core.Ranking, *, ax: Axes | None = None) -> Axes:
    """Plot heat of every panel hook-up with every element, each with its best bank.

    Numbers in brackets on hatched ground have a danger. A ranking keeps only its best;
    ``hm.rank(..., top=2000, keep_rejected=5000)`` fills the map.

    Parameters
    ----------
    ranking : Ranking
        Its candidates and, for pairings without one, its rejected pairings are drawn.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Elements over hook-ups, at most 25 each, best first. Cells hold season energy [kWh], or mean
        power [W] without weather.

    Raises
    ------
    InvalidInput
        The ranking kept no pairing.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> ranking = hm.rank(hm.Catalog.starter(), hm.demo(), group="barn pair", top=5)
    >>> ax = hm.plot.hookup_map(ranking)
    >>> len(ax.images)
    1
    """
    good = _best(ranking.candidates)
    bad = {cell: one for cell, one in _best(ranking.rejected).items() if cell not in good}
    every = good | bad
    if not every:
        raise InvalidInput(
            "ranking: candidates = none must be at least one; rank with top and keep_rejected"
        )
    rows, columns = _order(good, bad, 0), _order(good, bad, 1)
    left_out = len(rows) + len(columns)
    rows, columns = rows[:_MOST], columns[:_MOST]
    left_out -= len(rows) + len(columns)
    ax = axes_or_new(ax)
    heat = np.full((len(rows), len(columns)), np.nan)
    for (element, hookup), one in every.items():
        if element in rows and hookup in columns:
            heat[rows.index(element), columns.index(hookup)] = one.objective
    top = float(np.nanmax(heat)) or 1.0
    ax.imshow(heat, cmap=heat_colours(), vmin=0.0, vmax=top, aspect="auto")
    _write(ax, rows, columns, every, bad, top)
    ax.set_xticks(
        range(len(columns)), [clip(name, 24) for name in columns], rotation=50, ha="right"
    )
    ax.set_yticks(range(len(rows)), [clip_middle(name, 28) for name in rows])
    for label in (*ax.get_xticklabels(), *ax.get_yticklabels()):
        label.set_parse_math(False)
        label.set_fontsize(8)
    unit = "kWh of the season" if ranking.by_season else "W over the conditions"
    ax.set_title(f"{unit}, each with its best bank", fontsize=11)
    ax.set_xlabel(_note(ranking, left_out), fontsize=8)
    return ax


def _write(
    ax: Axes,
    rows: list[str],
    columns: list[str],
    every: dict[_Cell, _core.Candidate],
    bad: dict[_Cell, _core.Candidate],
    top: float,
) -> None:
    """Number and bank in each cell, hatching where there is a danger, a dot where nothing is."""
    from matplotlib.patches import Rectangle

    shade = heat_colours()
    small = 7 if len(columns) > 10 else 8
    for y, element in enumerate(rows):
        for x, hookup in enumerate(columns):
            one = every.get((element, hookup))
            if one is None:
                ax.plot(x, y, marker=".", color="0.75", markersize=3)
                continue
            rejected = (element, hookup) in bad
            number = f"({one.objective:.0f})" if rejected else f"{one.objective:.0f}"
            colour = ink_on(shade(one.objective / top))
            ground = None
            if rejected:
                box = Rectangle((x - 0.5, y - 0.5), 1.0, 1.0, hatch="///", linewidth=0.0)
                box.set(facecolor="white", edgecolor="0.72")
                ax.add_patch(box)
                colour = COLOURS[0]
                ground = {"facecolor": "white", "edgecolor": "none", "pad": 0.6}
            ax.text(
                x, y, f"{number}\n{one.circuit.bank}", ha="center", va="center",
                color=colour, fontsize=small, linespacing=1.0, bbox=ground,
            )  # fmt: skip


def _note(ranking: _core.Ranking, left_out: int) -> str:
    """Remarks for the reader of the map."""
    lines = ["second line: bank; hatched, in brackets: it has a danger; dot: no pairing was kept"]
    kept = len(ranking.candidates) + len(ranking.rejected)
    # Pairings above the budget are counted, but not kept.
    told = ranking.evaluated - ranking.reasons.get("budget", 0)
    if kept < told:
        lines.append(f"{kept} of {ranking.evaluated} pairings were kept")
    if left_out > 0:
        lines.append(f"{left_out} further rows and columns are left out; the best are shown")
    return "\n".join(lines)
