"""Drawing of a circuit: panels, runs of wire with their devices, elements in the store."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, Any

from heatmatch import _library as _core
from heatmatch.plot.style import COLOURS, LOAD, axes_or_new, set_title
from heatmatch.text.bank import bank_name
from heatmatch.text.columns import clip, clip_middle

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_DRAWN = 4  # panels or elements in a row or column; more are shown by their number
_STEP = 1.25  # from one to the next
_RUN = 3.1  # width of a run
_PLUS, _MINUS = COLOURS[1], "black"


class _Drawing:
    """Lines, boxes and words on axes; the plus wire lies at `top`, the minus wire at 0."""

    def __init__(self, ax: Axes, top: float) -> None:
        self.ax = ax
        self.top = top

    def line(self, xs: list[float], ys: list[float], colour: str = "black", **how: Any) -> None:
        self.ax.plot(xs, ys, color=colour, linewidth=1.6, solid_capstyle="butt", **how)

    def word(self, x: float, y: float, text: str, **how: Any) -> None:
        style: dict[str, Any] = {"fontsize": 8, "ha": "center", "va": "center", "parse_math": False}
        self.ax.text(x, y, text, **(style | how))

    def box(self, x: float, y: float, width: float, height: float, **how: Any) -> None:
        from matplotlib.patches import Rectangle

        style: dict[str, Any] = {
            "facecolor": "white",
            "edgecolor": "black",
            "linewidth": 1.2,
            "zorder": 3,
        }
        corner = (x - width / 2, y - height / 2)
        self.ax.add_patch(Rectangle(corner, width, height, **(style | how)))

    def ladder(self, xs: list[float], count: int, draw: Any) -> None:
        """Equal things in series between plus and minus, one ladder for each x."""
        for x in xs:
            self.line([x, x], [0.0, self.top])
            for place in range(count):
                draw(x, self.top * (place + 0.5) / count)
        self.line([min(xs), max(xs)], [self.top, self.top], _PLUS)
        self.line([min(xs), max(xs)], [0.0, 0.0], _MINUS)


def _panel(drawing: _Drawing, x: float, y: float) -> None:
    drawing.box(x, y, 0.95, 0.78)
    drawing.word(x, y + 0.27, "+", fontsize=8, zorder=4)
    drawing.word(x, y - 0.27, "\N{MINUS SIGN}", fontsize=8, zorder=4)
    for share in (-0.16, 0.16):
        drawing.ax.plot(
            [x - 0.475, x + 0.475], [y + share * 0.78] * 2, color="0.6", linewidth=0.6, zorder=4
        )


def _element(drawing: _Drawing, x: float, y: float) -> None:
    drawing.box(x, y, 0.34, 0.82, facecolor=COLOURS[4])


def _shown(count: int) -> int:
    return min(count, _DRAWN)


def _not_shown(drawing: _Drawing, xs: list[float], series: int, parallel: int) -> None:
    """Total number where fewer are drawn: beside the last, and in the column."""
    patch = {"facecolor": "white", "edgecolor": "none", "pad": 1.0}
    if parallel > _DRAWN:
        x, y = (xs[-1] + xs[-2]) / 2, drawing.top
        drawing.word(
            x, y, f"\N{HORIZONTAL ELLIPSIS} x {parallel}", fontsize=7, bbox=patch, zorder=6
        )
    if series > _DRAWN:
        y = drawing.top * (_DRAWN - 1) / _DRAWN
        for x in xs:
            drawing.word(
                x, y, f"\N{HORIZONTAL ELLIPSIS} x {series}", fontsize=7, bbox=patch, zorder=6
            )


def _gauge(run: _core.RunParts) -> str:
    """Wire and length of a run in both unit sets."""
    length = run.run.length_m
    size = ""
    if run.wire is not None:
        area = run.wire.area_mm2
        awg = _core.format_quantity(area, "mm2", units="us", digits=3)
        size = f"{clip_middle(run.wire.id, 22)}\n{area:.3g} mm² ({awg})\n"
    return f"{size}{length:g} m ({length / 0.3048:.3g} ft) one way"


def _runs(drawing: _Drawing, circuit: _core.Circuit, x: float) -> float:
    """The runs one after another from x on, devices on them; where they end."""
    placed: dict[str, list[_core.PlacedDevice]] = {}
    for device in circuit.devices:
        if not _stands_aside(device):
            placed.setdefault(device.device.run or "", []).append(device)
    for run in circuit.runs:
        devices = placed.get(run.name, [])
        width = max(_RUN, 1.3 * len(devices) + 0.8)
        middle = x + width / 2
        drawing.line([x, x + width], [drawing.top] * 2, _PLUS)
        drawing.line([x, x + width], [0.0, 0.0], _MINUS)
        for end in (x, x + width):
            for y in (0.0, drawing.top):
                drawing.ax.plot(end, y, marker="o", color="black", markersize=3, zorder=4)
        drawing.word(middle, drawing.top + 0.42, clip(run.name, 26), fontsize=9)
        drawing.word(middle, -0.3, _gauge(run), va="top", fontsize=7)
        for place, device in enumerate(devices):
            _device(drawing, device, x + width * (place + 1) / (len(devices) + 1))
        x += width
    return x


def _stands_aside(device: _core.PlacedDevice) -> bool:
    """Whether no wire that is drawn goes through it: it only senses, or its run is not stated."""
    return device.device.run is None or device.device.duty == "senses only"


def _device(drawing: _Drawing, device: _core.PlacedDevice, x: float) -> None:
    """A device on the wires of its run that its poles open, its name between them."""
    both = device.device.poles_used > 1
    for y in (0.0, drawing.top) if both else (drawing.top,):
        drawing.box(x, y, 0.5, 0.3)
    lowest = 0.15 if both else drawing.top / 2
    drawing.line([x, x], [lowest, drawing.top - 0.15], "0.5", linestyle=(0, (1, 2)))
    name = "\n".join(textwrap.wrap(clip(device.control.id, 44), 14))
    patch = {"facecolor": "white", "edgecolor": "none", "pad": 1.0}
    text = f"{name}\n{_core.shown_word(device.device.duty)}"
    drawing.word(x, drawing.top / 2, text, fontsize=7, bbox=patch, zorder=5)


def _hookup(circuit: _core.Circuit) -> tuple[int, int]:
    """Series and parallel of the bank; unlike elements are drawn as one, with their layout."""
    if circuit.element is None:
        return 1, 1
    series, parallel = circuit.bank.rstrip("P").split("S")
    return int(series), int(parallel)


def _store(drawing: _Drawing, circuit: _core.Circuit, x: float) -> float:
    """The bank in its store from x on; where the store ends."""
    series, parallel = _hookup(circuit)
    xs = [x + 0.9 + i * _STEP * 0.8 for i in range(_shown(parallel))]
    drawing.line([x, xs[0]], [drawing.top] * 2, _PLUS)
    drawing.line([x, xs[0]], [0.0, 0.0], _MINUS)
    drawing.ladder(xs, _shown(series), lambda x, y: _element(drawing, x, y))
    _not_shown(drawing, xs, series, parallel)
    end = xs[-1] + 0.7
    drawing.box(
        (x + 0.35 + end) / 2, drawing.top / 2, end - x - 0.35, drawing.top + 0.7,
        facecolor="none", edgecolor=LOAD, linewidth=2.0, zorder=1,
    )  # fmt: skip
    drawing.word((x + end) / 2, drawing.top + 0.75, bank_name(circuit, 26), fontsize=9)
    heat = circuit.heat
    fill = "store" if heat is None else f"store: {clip(heat.medium.id, 20)}"
    # Beside the bond, which leaves the store at its left.
    drawing.word(x + 0.95, -0.6, fill, fontsize=8, color=LOAD, ha="left")
    aside = [d for d in circuit.devices if _stands_aside(d)]
    for place, device in enumerate(aside):
        y = drawing.top * (place + 0.5) / len(aside)
        doing = f"{_core.shown_word(device.device.duty)}, run not stated"
        if device.device.duty == "senses only":
            doing = f"senses only: {clip(device.device.senses or 'wall', 12)}"
            drawing.line([end, end + 0.5], [y, y], "0.4", linestyle=(0, (1, 2)))
        text = "\n".join(textwrap.wrap(f"{clip(device.control.id, 40)}, {doing}", 16))
        drawing.word(end + 0.55, y, text, fontsize=7, ha="left")
    return end + (2.4 if aside else 1.4)


def _earth(drawing: _Drawing, left: float, right: float) -> None:
    """The bond from frames to vessel, and to earth."""
    y = -2.15
    frame = left + 0.145  # the left edge of the lowest panels: the frames are bonded, not minus
    xs, ys = [frame, left, left, right, right], [0.5, 0.5, y, y, -0.35]
    drawing.line(xs, ys, "0.35", linestyle="--")
    middle = (left + right) / 2
    drawing.line([middle, middle], [y, y - 0.3], "0.35")
    for place, width in enumerate((0.5, 0.32, 0.14)):
        level = y - 0.3 - 0.1 * place
        drawing.line([middle - width / 2, middle + width / 2], [level, level], "0.35")
    text = "bond: panel frames, vessel and sheath to earth"
    drawing.word(middle + 0.5, y - 0.35, text, ha="left", fontsize=8)


def _array(drawing: _Drawing, circuit: _core.Circuit, strings: list[float]) -> str:
    """Draw the panels above their name, which is returned."""
    if circuit.equal_panels:
        drawing.ladder(strings, _shown(circuit.series), lambda x, y: _panel(drawing, x, y))
        _not_shown(drawing, strings, circuit.series, circuit.parallel)
        name = f"{clip(circuit.owned.group, 24)} {circuit.panels}"
        told = f"{name}\n{clip_middle(circuit.panel.id, 28)}"
    else:
        _unlike_strings(drawing, circuit, strings)
        name = clip(circuit.array_layout, 44)
        told = "\n".join(
            f"{chr(ord('a') + i)}: {clip(group.group, 24)}"
            for i, group in enumerate(circuit.groups)
        )
    drawing.word(strings[0] - 0.45, drawing.top + 0.72, told, fontsize=9, ha="left", va="bottom")
    return name


def _unlike_strings(drawing: _Drawing, circuit: _core.Circuit, xs: list[float]) -> None:
    """Strings of unlike panels, each marked by the letter of its group."""
    letters = {group.group: chr(ord("a") + i) for i, group in enumerate(circuit.groups)}
    for x, string in zip(xs, circuit.strings, strict=False):
        shown = string[:_DRAWN]
        drawing.line([x, x], [0.0, drawing.top])
        for place, group in enumerate(shown):
            y = drawing.top * (place + 0.5) / len(shown)
            _panel(drawing, x, y)
            drawing.word(x, y, letters[group], fontsize=9, zorder=5)
        _not_shown(drawing, [x, x], len(string), 1)
    drawing.line([min(xs), max(xs)], [drawing.top] * 2, _PLUS)
    drawing.line([min(xs), max(xs)], [0.0, 0.0], _MINUS)


def hookup_diagram(candidate: _core.Candidate, *, ax: Axes | None = None) -> Axes:
    """Draw the circuit: panels, runs with their devices, and the bank in its store.

    Plus is at the top, minus at the bottom. At most four panels or elements are drawn in a row or
    column, beside their number. The diagram shows order, not the place of covers, labels, glands or
    clamps.

    Parameters
    ----------
    candidate : Candidate
        The circuit to draw.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Without ticks or scale.

    Raises
    ------
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.hookup_diagram(candidate)
    >>> ax.axison
    False
    """
    ax = axes_or_new(ax)
    circuit = candidate.circuit
    rows = max(_shown(circuit.series), _shown(_hookup(circuit)[0]), 2)
    drawing = _Drawing(ax, 1.05 * rows)
    strings = [0.5 + i * _STEP for i in range(_shown(circuit.parallel))]
    group = _array(drawing, circuit, strings)
    begin = strings[-1] + 0.8
    drawing.line([strings[-1], begin], [drawing.top] * 2, _PLUS)
    drawing.line([strings[-1], begin], [0.0, 0.0], _MINUS)
    drawing.word(begin, drawing.top + 0.2, "+", fontsize=11)
    drawing.word(begin, -0.2, "\N{MINUS SIGN}", fontsize=11)
    end_of_runs = _runs(drawing, circuit, begin)
    right = _store(drawing, circuit, end_of_runs)
    _earth(drawing, strings[0] - 0.62, end_of_runs + 0.8)
    ax.set_xlim(-0.8, right + 0.3)
    ax.set_ylim(-3.0, drawing.top + 1.8)
    ax.set_aspect("equal")
    ax.set_axis_off()
    title = f"{group} into {bank_name(circuit, 40)}"
    set_title(ax, title)
    return ax
