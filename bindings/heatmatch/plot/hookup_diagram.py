"""Drawing of circuits: panels, runs of wire with their devices, elements in the store."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, cast

from heatmatch import _library as _core
from heatmatch.plot.drawn_circuits import Circuits, drawn_circuits, stands_aside
from heatmatch.plot.lettering import LEADING, block_of, fitted, lines_of
from heatmatch.plot.sheet import DRAWN, Sheet
from heatmatch.plot.style import (
    COLOURS,
    HEAD,
    LOAD,
    MUTED,
    SMALL,
    TEXT,
    axes_or_new,
    set_title,
    signal_text,
)
from heatmatch.text import look
from heatmatch.text.table import texts
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

# Widths of the columns and heights of the parts of a row [pt].
_PANELS, _RUN, _STORE, _EDGE = 118.0, 100.0, 156.0, 14.0
_NAMES, _WIRES, _SIZES, _GAP = 50.0, 92.0, 40.0, 16.0
_LINE = SMALL * LEADING


class _Drawing:
    """Circuits below one another, with one store at the right."""

    def __init__(self, circuits: list[_core.Candidate], units: str) -> None:
        self.circuits, self.units = circuits, units
        self.labels = [_core.drawing_labels(each) for each in circuits]
        self.store = texts(_core.store_labels(circuits[0]), units)
        self.runs = max(1, *(len(each.circuit.runs) for each in circuits))
        self.aside = self._aside()
        self.stored = block_of(self.store, SMALL, _STORE - 20.0, 9)
        self.mark = self._mark()
        self.width = 2 * _EDGE + _PANELS + self.runs * _RUN + _STORE
        self.row = _NAMES + _WIRES + _SIZES + _GAP
        below = max(len(self.stored) * _LINE + 10.0, len(self.aside) * _LINE + 20.0, 30.0)
        self.below = below + 26.0
        self.above = 24.0 if self.mark else 4.0
        self.height = self.above + len(circuits) * self.row + self.below

    def _aside(self) -> list[str]:
        """Devices that no drawn wire goes through, one line each."""
        room = _PANELS + self.runs * _RUN - 30.0
        said: dict[str, None] = {}
        for each, labels in zip(self.circuits, self.labels, strict=True):
            for device, words in zip(each.circuit.devices, labels["devices"], strict=True):
                if stands_aside(device):
                    said[": ".join(texts(words, self.units))] = None
        lines: list[str] = []
        for text in said:
            first, *more = lines_of(text, SMALL, room - 10.0, 2)
            lines += [f"\N{WHITE CIRCLE} {first}", *(f"    {line}" for line in more)]
        return lines

    def _mark(self) -> tuple[str, str] | None:
        """Severity and text of the mark against building, of the circuit with the worst one."""
        worst: tuple[str, str] | None = None
        for each in self.circuits:
            points = _core.open_points(each)
            if points and (worst is None or points[0][0] == "danger"):
                danger = points[0][0] == "danger"
                said = (
                    _core.first_screen(each)["status"][1] if danger else _core.building_mark(each)
                )
                worst = ("danger" if danger else "warning", texts([said], self.units)[0])
                if danger:
                    break
        return worst

    def draw(self, ax: Axes, scale: float) -> None:
        self.sheet = Sheet(ax, scale)
        if self.mark is not None:
            severity, said = self.mark
            room = self.width - 2 * _EDGE - 20.0
            text = fitted(look.marked(severity, said), TEXT, room, bold=True)
            self.sheet.word(
                _EDGE, self.height - 10.0, text, TEXT, ha="left", **signal_text(severity)
            )
        tops = [self.height - self.above - i * self.row for i in range(len(self.circuits))]
        self.left, self.right = _EDGE + _PANELS, self.width - _EDGE - _STORE
        for candidate, labels, top in zip(self.circuits, self.labels, tops, strict=True):
            self._row(candidate, labels, top)
        self._store(tops[0])
        self._bond(tops[-1] - self.row)
        ax.set_xlim(0.0, self.width)
        ax.set_ylim(0.0, self.height)
        ax.set_axis_off()

    def _row(self, candidate: _core.Candidate, labels: dict[str, Any], top: float) -> None:
        circuit = candidate.circuit
        plus, minus = top - _NAMES, top - _NAMES - _WIRES
        said = texts(labels["array"], self.units)
        self._array(circuit, plus, minus)
        name = [circuit.name] if len(self.circuits) > 1 and circuit.name else []
        lines = block_of([*name, *self._groups(circuit, said[0])], SMALL, _PANELS - 4.0, 5)
        self.sheet.lines(_EDGE, plus + 7.0, lines, ha="left", va="bottom")
        volts = block_of(said[1:], SMALL, _PANELS - 14.0, 3)
        self.sheet.lines(_EDGE + 8.0, minus - 5.0, volts, ha="left", va="top")
        self._runs(candidate, labels, plus, minus)
        self._bank(circuit, labels, plus, minus)

    def _groups(self, circuit: _core.Circuit, said: str) -> list[str]:
        """The array in words; of several groups, the letter of each."""
        if circuit.equal_panels:
            return [said]
        return [f"{chr(97 + i)}: {group.group}" for i, group in enumerate(circuit.groups)]

    def _array(self, circuit: _core.Circuit, plus: float, minus: float) -> None:
        sheet = self.sheet
        strings = circuit.strings[:DRAWN]
        letters = {group.group: chr(97 + i) for i, group in enumerate(circuit.groups)}
        xs = [_EDGE + 24.0 + 27.0 * i for i in range(len(strings))]

        def draw(x: float, y: float, step: float, branch: int, place: int) -> None:
            letter = "" if circuit.equal_panels else letters[strings[branch][place]]
            sheet.panel(x, y, step, letter)

        sheet.ladder(xs, [len(string) for string in strings], plus, minus, draw)
        more = len(circuit.strings)
        if more > DRAWN:
            sheet.word(xs[-1] - 13.5, (plus + minus) / 2, f"\N{HORIZONTAL ELLIPSIS} x {more}")
        sheet.rails(xs[-1], self.left, plus, minus)
        sheet.word(self.left - 5.0, plus + 6.0, "+", HEAD)
        sheet.word(self.left - 5.0, minus + 6.0, "\N{MINUS SIGN}", HEAD)

    def _runs(
        self, candidate: _core.Candidate, labels: dict[str, Any], plus: float, minus: float
    ) -> None:
        sheet, circuit = self.sheet, candidate.circuit
        sheet.rails(self.left, self.right, plus, minus)
        if not circuit.runs:
            sheet.word((self.left + self.right) / 2, minus - 10.0, "wires not described")
            return
        wide = (self.right - self.left) / len(circuit.runs)
        severities = {check.run: str(check.severity) for check in candidate.check_wires()}
        named = list(zip(circuit.devices, labels["devices"], strict=True))
        for place, (run, words) in enumerate(zip(circuit.runs, labels["runs"], strict=True)):
            begin = self.left + place * wide
            middle = begin + wide / 2
            for x in (begin, begin + wide):
                sheet.dot(x, plus)
                sheet.dot(x, minus)
            self._run_name(run.name, severities.get(run.name, "none"), middle, plus, wide)
            size = block_of(texts(words, self.units), SMALL, wide - 8.0, 4)
            sheet.lines(middle, minus - 5.0, size, va="top")
            on_it = [(d, w) for d, w in named if d.device.run == run.name and not stands_aside(d)]
            for at, (device, called) in enumerate(on_it):
                share = wide / len(on_it)
                room = share - 6.0
                each = texts(called, self.units)
                most = int((_WIRES - 14.0) / _LINE) - 2
                name = [*lines_of(each[0], SMALL, room, most), *lines_of(each[1], SMALL, room, 2)]
                poles = device.device.poles_used
                sheet.device(begin + share * (at + 0.5), room, plus, minus, poles, name)

    def _run_name(self, name: str, severity: str, x: float, y: float, wide: float) -> None:
        """The name of a run above it; in its signal from a warning on."""
        if severity not in ("danger", "warning"):
            self.sheet.word(x, y + 7.0, fitted(name, TEXT, wide - 10.0), TEXT, va="bottom")
            return
        signal = look.SIGNALS[severity]
        text = fitted(f"{signal.mark} {name}", TEXT, wide - 14.0, bold=True)
        self.sheet.word(x, y + 9.0, text, TEXT, va="bottom", **signal_text(severity))

    def _bank(
        self, circuit: _core.Circuit, labels: dict[str, Any], plus: float, minus: float
    ) -> None:
        """The elements in the store; unlike ones are drawn as one."""
        sheet = self.sheet
        series, parallel = 1, 1
        if circuit.element is not None:
            series, parallel = (int(n) for n in circuit.bank.rstrip("P").split("S"))
        shown = min(parallel, DRAWN)
        begin = self.right + 26.0
        xs = [begin + 24.0 * i for i in range(shown)]
        sheet.rails(self.right, xs[0], plus, minus)
        sheet.ladder(xs, [series] * shown, plus, minus, lambda x, y, step, *_: sheet.element(
            x, y, step))  # fmt: skip
        if parallel > DRAWN:
            sheet.word(
                xs[-1] + 12.0, plus - 8.0, f"\N{HORIZONTAL ELLIPSIS} x {parallel}", ha="left"
            )
        room = _STORE - 20.0
        lines = block_of(texts(labels["bank"], self.units), SMALL, room, 4)
        sheet.lines(self.right + 12.0, plus + 7.0, lines, ha="left", va="bottom")
        works = block_of(texts(labels["working"], self.units), SMALL, room, 2)
        sheet.lines(self.right + 12.0, minus - 5.0, works, ha="left", va="top")

    def _store(self, top: float) -> None:
        """One box around all elements, and what lies where in it."""
        bottom = 22.0
        left, width = self.right + 4.0, _STORE
        self.sheet.box(left, bottom, width, top - bottom + 2.0, facecolor="none", edgecolor=LOAD,
                       linewidth=2.0, zorder=1)  # fmt: skip
        if not self.stored:
            self.stored = ["store not described"]
        self.sheet.lines(left + 8.0, bottom + 6.0, self.stored, ha="left", va="bottom", color=LOAD)

    def _bond(self, top: float) -> None:
        """Devices outside the current path, and the bond from frames to vessel and to earth."""
        sheet, level = self.sheet, 14.0
        sheet.lines(_EDGE + 10.0, top + 4.0, self.aside, ha="left", va="top")
        if any(d.device.duty == "senses only" for d in self.circuits[0].circuit.devices):
            y = top + 4.0 - _LINE / 2
            sheet.line([self.right - 14.0, self.right + 4.0], [y, y], COLOURS[2], linewidth=0.9,
                       linestyle=(0, (1, 2)))  # fmt: skip
        frame, corner = 4.0, self.right + 30.0
        first = self.height - self.above - _NAMES - 20.0
        sheet.line([_EDGE + 12.0, frame, frame, corner, corner], [first, first, level, level, 22.0],
                   MUTED, linestyle="--", linewidth=1.1)  # fmt: skip
        sheet.earth(_EDGE + 20.0, level, MUTED)
        text = "bond: panel frames, vessel and sheath to earth"
        sheet.word(_EDGE + 34.0, level - 8.0, text, ha="left", color=MUTED)


def diagram_size(circuits: Circuits) -> tuple[float, float]:
    """Width and height of a figure in which the drawing has its own size [in]."""
    drawing = _Drawing(drawn_circuits(circuits), "si")
    return (drawing.width + 16.0) / 72.0, (drawing.height + 40.0) / 72.0


def _scale(ax: Axes, drawing: _Drawing) -> float:
    """How much smaller than in its own size the drawing is on these axes."""
    wide, high = cast("Figure", ax.figure).get_size_inches() * 72.0
    if len(ax.figure.axes) > 1:
        place = ax.get_position()
        wide, high = wide * place.width, high * place.height
    return float(min(1.0, wide / (drawing.width + 16.0), high / (drawing.height + 40.0)))


def hookup_diagram(circuits: Circuits, *, units: str = "si", ax: Axes | None = None) -> Axes:
    """Draw circuits: panels, runs with their devices, and the elements in their store.

    Plus is at the top, minus at the bottom. At most four panels or elements are drawn in a row or
    column, beside their number. The diagram shows order, not the place of covers, labels, glands or
    clamps.

    Parameters
    ----------
    circuits : Candidate, sequence of Candidate, or Plan
        The circuits to draw, 1 to 8; several share the store of the first.
    units : {"si", "us"}
        Unit set of the labels.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given, large enough for all labels.

    Returns
    -------
    matplotlib.axes.Axes
        Without ticks or scale.

    Raises
    ------
    InvalidInput
        There is no circuit, there are more than eight, or `units` is unknown.
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
    drawing = _Drawing(drawn_circuits(circuits), checked_units(units))
    ax = axes_or_new(ax, ((drawing.width + 16.0) / 72.0, (drawing.height + 40.0) / 72.0))
    drawing.draw(ax, _scale(ax, drawing))
    several = len(drawing.circuits)
    first = drawing.circuits[0].circuit.title
    set_title(ax, first if several == 1 else f"{several} circuits in one store")
    return ax
