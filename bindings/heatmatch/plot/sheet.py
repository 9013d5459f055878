"""The sheet on which circuits are drawn: one point of type is one unit, plus is above minus."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from heatmatch.plot.lettering import LEADING, fitted
from heatmatch.plot.style import COLOURS, INK, PAPER, SMALL, TEXT

if TYPE_CHECKING:
    from matplotlib.axes import Axes

PLUS, MINUS = COLOURS[1], INK
DRAWN = 4  # panels or elements in a row or column; more are shown by their number


class Sheet:
    """Lines, boxes and words; all sizes [pt] are multiplied by `scale` on small axes."""

    def __init__(self, ax: Axes, scale: float) -> None:
        self.ax = ax
        self.scale = scale

    def line(self, xs: Sequence[float], ys: Sequence[float], colour: str = INK, **how: Any) -> None:
        style: dict[str, Any] = {"linewidth": 1.5, "solid_capstyle": "butt"}
        self.ax.plot(xs, ys, color=colour, **(style | how))

    def box(self, left: float, bottom: float, width: float, height: float, **how: Any) -> None:
        from matplotlib.patches import Rectangle

        style: dict[str, Any] = {
            "facecolor": PAPER,
            "edgecolor": INK,
            "linewidth": 1.0,
            "zorder": 3,
        }
        self.ax.add_patch(Rectangle((left, bottom), width, height, **(style | how)))

    def word(self, x: float, y: float, text: str, size: float = SMALL, **how: Any) -> None:
        style: dict[str, Any] = {"ha": "center", "va": "center", "zorder": 5, "parse_math": False}
        self.ax.text(x, y, text, fontsize=size * self.scale, **(style | how))

    def lines(
        self, x: float, y: float, lines: Sequence[str], size: float = SMALL, **how: Any
    ) -> None:
        """Lines of text as one block."""
        if lines:
            self.word(x, y, "\n".join(lines), size, linespacing=LEADING * 0.92, **how)

    def dot(self, x: float, y: float) -> None:
        self.ax.plot(x, y, marker="o", color=INK, markersize=2.5 * self.scale, zorder=4)

    def rails(self, left: float, right: float, top: float, bottom: float) -> None:
        """Plus and minus wire."""
        self.line([left, right], [top, top], PLUS)
        self.line([left, right], [bottom, bottom], MINUS)

    def ladder(
        self, xs: Sequence[float], counts: Sequence[int], top: float, bottom: float,
        draw: Callable[[float, float, float, int, int], None],
    ) -> None:  # fmt: skip
        """Things in series between plus and minus, one ladder for each x."""
        self.rails(xs[0], xs[-1], top, bottom)
        for branch, (x, count) in enumerate(zip(xs, counts, strict=True)):
            self.line([x, x], [bottom, top])
            shown = min(count, DRAWN)
            step = (top - bottom) / shown
            for place in range(shown):
                draw(x, top - step * (place + 0.5), step, branch, place)
            if count > DRAWN:
                self._number(x, top - step * (DRAWN - 1), count)

    def _number(self, x: float, y: float, count: int) -> None:
        ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 0.8}
        self.word(x, y, f"\N{HORIZONTAL ELLIPSIS} x {count}", bbox=ground, zorder=6)

    def panel(self, x: float, y: float, step: float, letter: str = "") -> None:
        """A panel with its poles; the letter is that of its group."""
        high = min(20.0, step - 4.0)
        self.box(x - 11.0, y - high / 2, 22.0, high)
        for share in (-0.17, 0.17):
            self.line([x - 11.0, x + 11.0], [y + share * high] * 2, COLOURS[3], linewidth=0.6,
                      zorder=4)  # fmt: skip
        if letter:
            self.word(x, y, letter, TEXT, zorder=6)

    def element(self, x: float, y: float, step: float) -> None:
        high = min(26.0, step - 5.0)
        self.box(x - 5.0, y - high / 2, 10.0, high, facecolor=COLOURS[4])

    def device(
        self, x: float, width: float, top: float, bottom: float, poles: int, name: list[str]
    ) -> None:
        """A device on the wires that its poles open, its name between them."""
        both = poles > 1
        for y in (bottom, top) if both else (top,):
            self.box(x - 9.0, y - 4.5, 18.0, 9.0)
        lowest = bottom + 4.5 if both else (top + bottom) / 2
        self.line([x, x], [lowest, top - 4.5], COLOURS[2], linewidth=0.8, linestyle=(0, (1, 2)))
        ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 0.8}
        self.lines(x, (top + bottom) / 2, [fitted(text, SMALL, width) for text in name],
                   bbox=ground)  # fmt: skip

    def earth(self, x: float, y: float, colour: str) -> None:
        self.line([x, x], [y, y - 8.0], colour)
        for place, half in enumerate((8.0, 5.0, 2.0)):
            level = y - 8.0 - 3.0 * place
            self.line([x - half, x + half], [level, level], colour)
