"""What the plots share: the look, line styles, axes, title, legend, ticks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from heatmatch.errors import InvalidInput
from heatmatch.text import look
from heatmatch.text.columns import clip
from heatmatch.text.look import FAINT, HEAD, INK, MUTED, PAPER, RULE, SMALL, TEXT, ink_on

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "COLOURS", "FAINT", "HEAD", "INK", "LOAD", "MUTED", "PAPER", "RULE", "SMALL", "STYLES", "TEXT",
    "axes_or_new", "dress", "heat_colours", "ink_on", "legend", "ohm_axis", "set_title",
    "signal_text", "spot", "stacked_or_new",
]  # fmt: skip

# Dark to light; in black and white the line style also distinguishes them.
STYLES: tuple[Any, ...] = ("-", (0, (6, 2)), (0, (4, 2, 1, 2)), (0, (2, 2)), (0, (1, 2)))
COLOURS = look.SERIES
LOAD = look.HEAT
_TITLE = 100  # characters that fit above a plot


def _pyplot() -> Any:
    """The module matplotlib.pyplot, or an error that explains how to install it."""
    try:
        import matplotlib.pyplot as plt
    except ImportError as error:
        raise ImportError(
            "plots need matplotlib; install it with pip install 'libheatmatch[notebook]'"
        ) from error
    return plt


def axes_or_new(ax: Axes | None, size: tuple[float, float] = (9.0, 4.6)) -> Axes:
    """The given axes, or those of a new figure of that size [in]."""
    if ax is not None:
        return ax
    made: Axes = _pyplot().subplots(figsize=size, layout="constrained")[1]
    return made


def stacked_or_new(axes: Sequence[Axes] | None, heights: Sequence[float]) -> tuple[Axes, ...]:
    """The given axes, or those of a new figure, one above the other over one time."""
    if axes is None:
        size = (10.0, 2.2 * sum(heights) + 0.8)
        grid = {"height_ratios": list(heights)}
        made = _pyplot().subplots(
            len(heights), 1, sharex=True, figsize=size, layout="constrained", gridspec_kw=grid
        )
        made[0].get_layout_engine().set(hspace=0.06)  # so that the last ticks do not meet
        return tuple(made[1])
    given = tuple(axes)
    if len(given) != len(heights):
        raise InvalidInput(
            f"axes = {len(given)} axes must be {len(heights)}; give them from top to bottom"
        )
    return given


def heat_colours() -> Any:
    """From light to dark with more heat, also distinct in black and white."""
    from matplotlib.colors import LinearSegmentedColormap

    return LinearSegmentedColormap.from_list("heat", [look.PALEST, *COLOURS[::-1]])


def dress(ax: Axes) -> None:
    """Text of the axes in the one size of plots; no frame where there is no scale."""
    for label in (ax.xaxis.label, ax.yaxis.label):
        label.set_fontsize(TEXT)
    ax.tick_params(labelsize=TEXT)
    for side in ("top", "right"):
        ax.spines[side].set_visible(False)


def set_title(ax: Axes, text: str, severity: str | None = None) -> None:
    """Writes the title as it is, on one line: no part of a name is read as a formula.

    A danger of what is drawn is in the title, with its signal.
    """
    dress(ax)
    if severity == "danger":
        title = look.marked(severity, clip(text, _TITLE - 10))
        ax.set_title(title, parse_math=False, fontsize=HEAD, pad=9, **signal_text(severity))
        return
    ax.set_title(clip(text, _TITLE), parse_math=False, fontsize=HEAD, pad=9)


def signal_text(severity: str) -> dict[str, Any]:
    """Options of a text on the color of a severity."""
    signal = look.SIGNALS[severity]
    box = {"facecolor": signal.fill, "edgecolor": signal.edge, "pad": 2.5, "linewidth": 0.8}
    return {"color": signal.ink, "fontweight": "bold", "bbox": box}


def spot(*, beyond: bool) -> dict[str, Any]:
    """Options of the marker of a value: a triangle in its signal where a limit is exceeded."""
    if not beyond:
        return {"marker": "o", "color": LOAD, "markersize": 7}
    signal = look.SIGNALS["danger"]
    return {"marker": "^", "color": signal.fill, "markeredgecolor": signal.edge, "markersize": 11}


def legend(ax: Axes) -> None:
    """Put the legend beside the plot, where it covers no data."""
    ax.legend(fontsize=TEXT, loc="upper left", bbox_to_anchor=(1.01, 1.0), borderaxespad=0.0)


def ohm_axis(ax: Axes, lowest: float, highest: float) -> None:
    """A logarithmic axis of resistance with round ticks."""
    ax.set_xscale("log")
    ticks = [
        step * 10.0**power
        for power in range(-4, 6)
        for step in (1, 2, 5)
        if lowest <= step * 10.0**power <= highest
    ]
    ax.set_xticks(ticks, [f"{tick:g}" for tick in ticks])
    ax.set_xticks([], minor=True)
    ax.set_xlabel("resistance of the elements [ohm]")
