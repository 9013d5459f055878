"""Plot of every panel hook-up against every element: the season's heat of each pairing."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

import numpy as np

from heatmatch import _library as _core
from heatmatch.errors import InvalidInput
from heatmatch.plot.style import (
    RULE,
    SMALL,
    TEXT,
    axes_or_new,
    heat_colours,
    ink_on,
    set_title,
)
from heatmatch.text import look
from heatmatch.text.bank import element_name
from heatmatch.text.columns import clip, clip_middle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_MOST_ROWS, _MOST_COLUMNS = 40, 24

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

    Numbers in red with a triangle have a danger. A ranking keeps only its best;
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
        Elements over hook-ups, at most 40 and 24, best first. Cells hold season energy [kWh], or
        mean power [W] without weather.

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
    if not good and not bad:
        raise InvalidInput(
            "ranking: candidates = none must be at least one; rank with top and keep_rejected"
        )
    rows, columns = _order(good, bad, 0), _order(good, bad, 1)
    left_out = len(rows) + len(columns)
    rows, columns = rows[:_MOST_ROWS], columns[:_MOST_COLUMNS]
    left_out -= len(rows) + len(columns)
    ax = axes_or_new(ax, map_size(ranking))
    heat = np.full((len(rows), len(columns)), np.nan)
    for (element, hookup), one in good.items():
        if element in rows and hookup in columns:
            heat[rows.index(element), columns.index(hookup)] = one.objective
    top = max((one.objective for one in good.values()), default=0.0) or 1.0
    ax.imshow(heat, cmap=heat_colours(), vmin=0.0, vmax=top, aspect="auto")
    _write(ax, rows, columns, good, bad, top)
    ax.set_xlim(-0.5, len(columns) - 0.5)
    ax.set_ylim(len(rows) - 0.5, -0.5)
    ax.set_xticks(
        range(len(columns)), [clip(name, 24) for name in columns], rotation=50, ha="right",
        rotation_mode="anchor",
    )  # fmt: skip
    ax.set_yticks(range(len(rows)), [clip_middle(name, 28) for name in rows])
    unit = "kWh of the season" if ranking.by_season else "W over the conditions"
    set_title(ax, f"{unit}, each with its best bank")
    for label in (*ax.get_xticklabels(), *ax.get_yticklabels()):
        label.set(parse_math=False, fontsize=SMALL)
    ax.set_xlabel(_note(ranking, left_out), fontsize=TEXT)
    return ax


def map_size(ranking: _core.Ranking) -> tuple[float, float]:
    """Width and height of a figure in which every cell of the map can be read [in]."""
    cells = {*_best(ranking.candidates), *_best(ranking.rejected)}
    rows = min(_MOST_ROWS, len({element for element, _ in cells}))
    columns = min(_MOST_COLUMNS, len({hookup for _, hookup in cells}))
    return max(7.0, 2.4 + 0.5 * columns), 2.6 + 0.27 * max(4, rows)


def _write(
    ax: Axes,
    rows: list[str],
    columns: list[str],
    good: dict[_Cell, _core.Candidate],
    bad: dict[_Cell, _core.Candidate],
    top: float,
) -> None:
    """Number and bank in each cell; a danger in its signal, a dot where nothing was kept."""
    shade = heat_colours()
    danger = look.SIGNALS["danger"]
    for y, element in enumerate(rows):
        for x, hookup in enumerate(columns):
            one = good.get((element, hookup)) or bad.get((element, hookup))
            if one is None:
                ax.plot(x, y, marker=".", color=RULE, markersize=3)
                continue
            rejected = (element, hookup) not in good
            lead = f"{danger.mark} " if rejected else ""
            ax.text(
                x, y, f"{lead}{one.objective:.0f}\n{clip_middle(one.circuit.bank, 9)}",
                ha="center", va="center", fontsize=SMALL - 0.5, linespacing=0.95, parse_math=False,
                color=danger.fill if rejected else ink_on(shade(one.objective / top)),
            )  # fmt: skip


def _note(ranking: _core.Ranking, left_out: int) -> str:
    """Remarks for the reader of the map."""
    mark = look.SIGNALS["danger"].mark
    lines = [f"second line: bank; {mark} in red: it has a danger; dot: no pairing was kept"]
    kept = len(ranking.candidates) + len(ranking.rejected)
    # Pairings above the budget are counted, but not kept.
    told = ranking.evaluated - ranking.reasons.get("budget", 0)
    if kept < told:
        lines.append(f"{kept} of {ranking.evaluated} pairings were kept")
    if left_out > 0:
        lines.append(f"{left_out} further rows and columns are left out; the best are shown")
    return "\n".join(lines)
