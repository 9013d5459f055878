"""What the plots share: palette, line styles, axes, legend, ticks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from heatmatch.errors import InvalidInput
from heatmatch.text.columns import clip

if TYPE_CHECKING:
    from matplotlib.axes import Axes

# Dark to light; in black and white the line style also distinguishes them.
STYLES: tuple[Any, ...] = ("-", (0, (6, 2)), (0, (4, 2, 1, 2)), (0, (2, 2)), (0, (1, 2)))
COLOURS = ("#3b1f2b", "#7a3b2e", "#b5651d", "#d39b3f", "#e0c389")
LOAD = "#1f5f5b"
_INK_LUMINANCE = 0.071  # of the darkest color, 0.05 of stray light added
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


def axes_or_new(ax: Axes | None) -> Axes:
    """The given axes, or those of a new figure."""
    if ax is not None:
        return ax
    made: Axes = _pyplot().subplots(figsize=(9.0, 4.6), layout="constrained")[1]
    return made


def stacked_or_new(axes: Sequence[Axes] | None, heights: Sequence[float]) -> tuple[Axes, ...]:
    """The given axes, or those of a new figure, one above the other over one time."""
    if axes is None:
        size = (10.0, 2.2 * sum(heights) + 0.8)
        grid = {"height_ratios": list(heights)}
        made = _pyplot().subplots(
            len(heights), 1, sharex=True, figsize=size, layout="constrained", gridspec_kw=grid
        )
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

    return LinearSegmentedColormap.from_list("heat", ["#fbf6ee", *COLOURS[::-1]])


def set_title(ax: Axes, text: str) -> None:
    """Writes the title as it is, on one line: no part of a name is taken for a formula."""
    ax.set_title(clip(text, _TITLE), parse_math=False)


def legend(ax: Axes) -> None:
    """Put the legend beside the plot, where it covers no data."""
    ax.legend(fontsize=8, loc="upper left", bbox_to_anchor=(1.01, 1.0), borderaxespad=0.0)


def ink_on(background: Sequence[float]) -> str:
    """The text color of higher contrast on a background of these shares of red, green and blue.

    Contrast of relative luminances as in WCAG 2.2 (from memory).
    """
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in background[:3]]
    luminance = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    return (
        "white" if 1.05 / (luminance + 0.05) > (luminance + 0.05) / _INK_LUMINANCE else COLOURS[0]
    )


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
