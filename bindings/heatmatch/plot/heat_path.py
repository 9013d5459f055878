"""Plot of the heat paths of an element: through the bed, and along its end to the panels."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
import numpy.typing as npt

from heatmatch import _library as _core
from heatmatch.plot.scale import degree_axis, degrees, shown
from heatmatch.plot.style import (
    COLOURS,
    HEAD,
    INK,
    LOAD,
    MUTED,
    RULE,
    SMALL,
    STYLES,
    TEXT,
    axes_or_new,
    set_title,
    signal_text,
)
from heatmatch.text import look
from heatmatch.text.columns import clip, clip_middle
from heatmatch.text.units import checked_units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_Numbers = npt.NDArray[np.float64]
LIMIT = INK
WIRE_M = 0.5  # of the wire at the element that is drawn, at most [m]


class _Path:
    """Stations side by side, each with its temperatures and its limit."""

    def __init__(self, ax: Axes, units: str) -> None:
        self.ax = ax
        self.units = units
        self.x = 0.0
        self.names: list[tuple[float, str]] = []
        # Limits to label once the height is known; the severity of one that is exceeded.
        self.notes: list[tuple[float, float, str, str | None]] = []
        self.unknown: list[tuple[float, float]] = []  # where a limit is not known
        self.highest_c = 40.0

    def station(self, name: str, width: float) -> tuple[float, float]:
        """Room for the next station: where it begins and ends."""
        start, end = self.x, self.x + width
        self.names.append((0.5 * (start + end), name))
        self.x = end + 0.25
        return start, end

    def limit(
        self,
        room: tuple[float, float],
        limit_c: float | None,
        what: str = "",
        *,
        beside_c: float | None = None,
        severity: str = "danger",
    ) -> None:
        """A limit as a bar over its station; an unknown one is noted above the value there."""
        middle = 0.5 * sum(room)
        if limit_c is None:
            self.unknown.append((middle, 45.0 if beside_c is None else beside_c))
            return
        self.ax.plot(room, [limit_c, limit_c], color=LIMIT, linewidth=3.0)
        beyond = beside_c is not None and beside_c > limit_c
        text = f"{what} {degrees(limit_c, self.units)}".strip()
        self.notes.append((middle, limit_c, text, severity if beyond else None))
        self.highest_c = max(self.highest_c, limit_c)

    def missing(self, room: tuple[float, float]) -> None:
        """A temperature that is not known."""
        self.ax.text(0.5 * sum(room), 20.0, "?", ha="center", fontsize=HEAD, color=LOAD)

    def seen(self, *celsius: float) -> None:
        self.highest_c = max(self.highest_c, *celsius)

    def finish(self, turn: float, fill: str) -> None:
        """Labels, now that the height of the axis is known; `turn` parts the two ways."""
        top = 1.2 * self.highest_c
        self.ax.set_ylim(0.0, top)
        self.ax.set_xlim(-0.25, self.x)
        for x, limit_c, text, beyond in self.notes:
            how = {} if beyond is None else signal_text(beyond)
            mark = "" if beyond is None else f"{look.SIGNALS[beyond].mark} "
            self._say(x, limit_c + 0.015 * top, mark + text, **({"color": LIMIT} | how))
        for x, celsius in self.unknown:
            self._say(x, celsius + 0.03 * top, "limit ?", color=MUTED)
        self.ax.axvline(turn, color=RULE, linewidth=0.8)
        self._say(0.5 * (turn - 0.25), 0.95 * top, f"out through the {fill}", color=MUTED)
        self._say(0.5 * (turn + self.x), 0.95 * top, "along its end to the panels", color=MUTED)
        self.ax.set_xticks([x for x, _ in self.names], [name for _, name in self.names])
        for label in self.ax.get_xticklabels():
            label.set(fontsize=SMALL, parse_math=False)
        self.ax.tick_params(axis="x", length=0)

    def _say(self, x: float, y: float, text: str, **how: Any) -> None:
        self.ax.text(x, y, text, ha="center", va="bottom", fontsize=SMALL, zorder=7, **how)


def _limit_of(candidate: _core.Candidate, name: str) -> float | None:
    return next((m.limit for m in candidate.margins if m.name == name), None)


def _fill_word(candidate: _core.Candidate) -> str:
    heat = candidate.circuit.heat
    return "liquid" if heat is not None and heat.liquid else "bed"


def _bed(path: _Path, candidate: _core.Candidate) -> None:
    """Coil, sheath, bed and wall; what is not computed is a question mark."""
    heat, point = candidate.circuit.heat, candidate.heat
    coil, sheath = path.station("coil", 0.9), path.station("sheath", 0.9)
    bed = path.station(f"{_fill_word(candidate)}, from the\nsheath outwards", 2.4)
    wall = path.station("wall", 0.9)
    sheath_part = candidate.circuit.sheath
    at = (None, None, None) if point is None else (point.coil_c, point.sheath_c, point.wall_c)
    path.limit(coil, None if heat is None else heat.coil_limit_c, beside_c=at[0])
    path.limit(sheath, None if sheath_part is None else sheath_part.verdict_limit_c, beside_c=at[1])
    path.limit(wall, _limit_of(candidate, "wall and lid"), beside_c=at[2])
    if heat is None or point is None:
        for room in (coil, sheath, bed, wall):
            path.missing(room)
        return
    middle = [0.5 * (start + end) for start, end in (coil, sheath, wall)]
    judged = [point.coil_c, point.sheath_c, point.wall_c]
    path.seen(*judged)
    path.ax.plot(middle, judged, "o", color=LOAD, markersize=7, label="judged")
    path.ax.plot(middle[:2], judged[:2], color=LOAD, linewidth=1.8)
    band = point.sheath_band
    path.ax.errorbar(
        [middle[1] + 0.25],
        [band.typical_c],
        yerr=[[band.typical_c - band.low_c], [band.high_c - band.typical_c]],
        fmt="_",
        color=COLOURS[2],
        capsize=5,
        label="low, typical, high" + ("" if heat.liquid else " by the fill"),
    )
    if heat.liquid:
        path.ax.plot(bed, [point.bed_mean_c] * 2, color=COLOURS[2], label="liquid, mixed")
        return
    power_w = candidate.bright.element_power_w * heat.elements
    beds = [heat.bed(conductivity=end) for end in ("low", "typical", "high")]
    element = candidate.circuit.elements[0]
    radius = 0.5 * (element.sheath_diameter_mm or 8.0) / 1000.0
    reach = max(beds[0].radius_m - float(np.hypot(*beds[0].legs.T).max()), 4.0 * radius)
    metres = np.geomspace(radius, reach, 80)
    fields: list[_Numbers] = [one.bed_temperature_c(metres, power_w=power_w) for one in beds]
    x = np.interp(np.log(metres), np.log([radius, reach]), bed)
    path.seen(float(fields[0][0]))
    path.ax.fill_between(
        x, np.min(fields, axis=0), np.max(fields, axis=0), color=COLOURS[4], alpha=0.6, linewidth=0
    )
    path.ax.plot(x, fields[1], color=COLOURS[2], linestyle=STYLES[1], label="bed, typical fill")
    near, far = shown(1000 * radius, "mm", path.units), shown(1000 * reach, "mm", path.units)
    distances = f"{near} … {far}"
    path.ax.text(
        0.5 * sum(bed), 4.0, distances, ha="center", va="bottom", fontsize=SMALL, color=MUTED
    )


def _end(path: _Path, candidate: _core.Candidate) -> None:
    """Cold end, terminal and the wire beside it."""
    tail = candidate.tail
    end, terminal = path.station("end of\nheat", 0.9), path.station("terminal", 0.9)
    seal = _limit_of(candidate, "end seal")
    allowed = _limit_of(candidate, "terminal temperature")
    lower = min((c for c in (seal, allowed) if c is not None), default=None)
    what = "seal" if lower is not None and lower == seal else ""
    path.limit(terminal, lower, what, beside_c=None if tail is None else tail.terminal_c)
    checks = {check.run: check for check in candidate.check_wires()}
    runs = [part.name for part in reversed(candidate.circuit.runs)]
    at_element = next((name for name in runs if checks[name].at_element), None)
    if at_element is not None:
        wire = path.station(_station(at_element, checks[at_element]), 2.4)
        _wire_limit(path, candidate, checks[at_element], wire)
        if tail is None or tail.runaway:
            _unknown(path, wire, checks[at_element].conductor_c)
    if tail is None or tail.runaway:
        path.missing(end)
        path.missing(terminal)
    else:
        stations = [0.5 * sum(end), 0.5 * sum(terminal)]
        celsius = [tail.heated_end_c, tail.terminal_c]
        path.seen(*celsius)
        path.ax.plot(stations, celsius, "o-", color=LOAD, markersize=7, linewidth=1.8)
        if at_element is not None:
            length = next(p.run.length_m for p in candidate.circuit.runs if p.name == at_element)
            drawn = min(WIRE_M, length)
            metres = np.linspace(0.0, drawn, 80)
            x = np.interp(metres, [0.0, drawn], wire)
            along: _Numbers = tail.wire_c(metres)
            path.ax.plot([stations[1], x[0]], [celsius[1], along[0]], color=LOAD, linewidth=1.8)
            path.ax.plot(x, along, color=LOAD, linewidth=1.8)
            text = shown(drawn, "m", path.units)
            path.ax.text(wire[1], 4.0, text, ha="right", va="bottom", fontsize=SMALL, color=MUTED)
    for name in runs:
        if name == at_element:
            continue
        room = path.station(_station(name, checks[name]), 2.0)
        _wire_limit(path, candidate, checks[name], room)
        _unknown(path, room, checks[name].conductor_c)


def _station(name: str, check: _core.WireCheck) -> str:
    """A run and its wire, short enough for the space below."""
    return f"{clip(name, 24)},\n{clip_middle(check.wire or 'no wire', 24)}"


def _wire_limit(
    path: _Path, candidate: _core.Candidate, check: _core.WireCheck, room: tuple[float, float]
) -> None:
    """The lowest limit of a run; at the element that for dry heat, not for a wet place."""
    found: list[tuple[float, str]] = [(limit.limit_c, limit.what) for limit in check.limits]
    if check.at_element:
        tail = [m for m in candidate.margins if m.name.startswith("hot tail ")]
        dry = [(m.limit, m.name.removeprefix("hot tail ")) for m in tail if m.limit is not None]
        found = dry or found
    if found:
        worse = "danger" if check.severity == "danger" else "warning"
        path.limit(room, *min(found), beside_c=check.conductor_c, severity=worse)
    else:
        path.limit(room, None, beside_c=check.conductor_c)


def _unknown(path: _Path, room: tuple[float, float], celsius: float | None) -> None:
    """A run of one temperature, or a question mark."""
    if celsius is None:
        path.missing(room)
        return
    path.seen(celsius)
    path.ax.plot(room, [celsius, celsius], color=LOAD, linewidth=1.8)


def heat_path(candidate: _core.Candidate, *, units: str = "si", ax: Axes | None = None) -> Axes:
    """Plot temperatures along both heat paths of an element, with the limit of each part.

    One path leads from coil and sheath through the bed to the wall. The other leads from the end of
    the heated length over terminal and wire to the panels. Temperatures are those judged in
    margins: cold, bright weather, with the fill conductivity at its worst end.

    Parameters
    ----------
    candidate : Candidate
        The circuit to draw. An unknown temperature is drawn as a question mark.
    units : {"si", "us"}
        Unit set of temperatures and lengths.
    ax : matplotlib.axes.Axes, optional
        Axes to draw on; new ones if not given.

    Returns
    -------
    matplotlib.axes.Axes
        Temperature [°C] at each part; distances are not to scale.

    Raises
    ------
    InvalidInput
        `units` is unknown.
    ImportError
        matplotlib is not installed.

    Examples
    --------
    >>> import heatmatch as hm
    >>> candidate = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> ax = hm.plot.heat_path(candidate)
    >>> ax.get_ylabel()
    'temperature [°C]'
    """
    checked_units(units)
    ax = axes_or_new(ax)
    path = _Path(ax, units)
    _bed(path, candidate)
    turn = path.x - 0.125
    _end(path, candidate)
    cells = max((at.cell_temperature_c for at in candidate.delivered), default=None)
    room = path.station("panels,\ncells", 0.9)
    path.limit(room, None, beside_c=cells)
    if cells is not None:
        ax.plot([0.5 * sum(room)], [cells], "o", color=LOAD, markersize=7)
    ax.plot([], [], color=LIMIT, linewidth=3.0, label="limit of the part")
    ax.set_xlabel("path of the heat (not to scale)")
    set_title(ax, candidate.circuit.title, str(candidate.severity))
    path.finish(turn, _fill_word(candidate))
    degree_axis(ax, "temperature", units)
    ax.legend(fontsize=TEXT, loc="upper right", bbox_to_anchor=(0.995, 0.93))
    return ax
