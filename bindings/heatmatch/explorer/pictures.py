"""The pictures of the explorer, drawn without a window and shown inside a page."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from heatmatch import _library as _core
from heatmatch import plot
from heatmatch.errors import InvalidInput
from heatmatch.explorer.choice import Choice, Workbench
from heatmatch.plot.drawing import data_address
from heatmatch.plot.hookup_diagram import diagram_size
from heatmatch.plot.hookup_map import map_size
from heatmatch.text.columns import clip
from heatmatch.text.plain import escape

_SIZE = (9.6, 4.6)


@dataclass(frozen=True)
class Shown:
    """What a picture of the explorer is drawn from."""

    bench: Workbench
    choice: Choice
    ranking: _core.Ranking
    candidate: _core.Candidate
    units: str


_Draw = Callable[[Shown, Any], object]


def _with_weather(draw: Callable[..., object]) -> _Draw:
    """A plot that needs the candidate and its weather."""

    def drawn(of: Shown, ax: Any) -> object:
        weather = of.bench.weather(of.choice)
        if weather is None:
            raise InvalidInput(
                "weather = none must be given; give the installation its twelve months"
            )
        return draw(of.candidate, weather, ax=ax)

    return drawn


def _in_units(draw: Callable[..., object]) -> _Draw:
    """A plot of the candidate in the unit set of the panel."""
    return lambda of, ax: draw(of.candidate, units=of.units, ax=ax)


def _whole(of: Shown) -> _core.Ranking:
    """The ranking with all pairings that the map shows."""
    return of.bench.rank(of.choice, top=2000, keep_rejected=5000)


PICTURES: dict[str, _Draw] = {
    "current, voltage and load line": _in_units(plot.load_lines),
    "power over resistance": _in_units(plot.power_against_ohms),
    "season over resistance": _with_weather(plot.energy_against_ohms),
    "months": lambda of, ax: plot.months(of.candidate, ax=ax),
    "hours of the year": _with_weather(plot.month_by_hour),
    "three days": _with_weather(plot.day_power),
    "temperatures from bed to wire": _in_units(plot.heat_path),
    "margins": _in_units(plot.margins),
    "trade-offs": lambda of, ax: plot.pareto(of.ranking, ax=ax),
    "every hook-up and element": lambda of, ax: plot.hookup_map(_whole(of), ax=ax),
    "hook-up": _in_units(plot.hookup_diagram),
}


def _size(name: str, of: Shown) -> tuple[float, float]:
    """Width and height in which the texts of a picture have room [in]."""
    if name == "hook-up":
        return diagram_size(of.candidate)
    return map_size(_whole(of)) if name == "every hook-up and element" else _SIZE


def picture_html(name: str, of: Shown) -> str:
    """One of PICTURES as HTML.

    Raises
    ------
    Error
        What is drawn is not known of the candidate, for example its months without weather.
    """
    source = data_address(lambda ax: PICTURES[name](of, ax), _size(name, of), kind="png")
    words = escape(f"{name}: {clip(of.candidate.circuit.title, 200)}", quote=True)
    return f'<img style="max-width:100%" alt="{words}" src="{source}">'
