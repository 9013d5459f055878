"""The pictures of the explorer, drawn without a window and shown inside a page."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from heatmatch import _library as _core
from heatmatch import plot
from heatmatch.errors import InvalidInput
from heatmatch.explorer.choice import Choice, Workbench
from heatmatch.plot.drawing import data_address
from heatmatch.text.columns import clip
from heatmatch.text.plain import escape

_SIZE = (9.6, 4.6)

_Draw = Callable[[Workbench, Choice, _core.Ranking, _core.Candidate, Any], object]


def _with_weather(draw: Callable[..., object]) -> _Draw:
    """A plot that needs the candidate and its weather."""

    def drawn(
        bench: Workbench, choice: Choice, ranking: _core.Ranking, one: _core.Candidate, ax: Any
    ) -> object:
        del ranking
        weather = bench.weather(choice)
        if weather is None:
            raise InvalidInput(
                "weather = none must be given; give the installation its twelve months"
            )
        return draw(one, weather, ax=ax)

    return drawn


def _map(
    bench: Workbench, choice: Choice, ranking: _core.Ranking, one: _core.Candidate, ax: Any
) -> object:
    del ranking, one
    return plot.hookup_map(bench.rank(choice, top=2000, keep_rejected=5000), ax=ax)


PICTURES: dict[str, _Draw] = {
    "current, voltage and load line": lambda b, c, r, one, ax: plot.load_lines(one, ax=ax),
    "power over resistance": lambda b, c, r, one, ax: plot.power_against_ohms(one, ax=ax),
    "season over resistance": _with_weather(plot.energy_against_ohms),
    "months": lambda b, c, r, one, ax: plot.months(one, ax=ax),
    "hours of the year": _with_weather(plot.month_by_hour),
    "three days": _with_weather(plot.day_power),
    "temperatures from bed to wire": lambda b, c, r, one, ax: plot.heat_path(one, ax=ax),
    "margins": lambda b, c, r, one, ax: plot.margins(one, ax=ax),
    "trade-offs": lambda b, c, r, one, ax: plot.pareto(r, ax=ax),
    "every hook-up and element": _map,
    "hook-up": lambda b, c, r, one, ax: plot.hookup_diagram(one, ax=ax),
}


def picture_html(
    name: str,
    bench: Workbench,
    choice: Choice,
    ranking: _core.Ranking,
    candidate: _core.Candidate,
) -> str:
    """One of PICTURES as HTML.

    Raises
    ------
    Error
        What is drawn is not known of the candidate, for example its months without weather.
    """
    draw = PICTURES[name]
    source = data_address(lambda ax: draw(bench, choice, ranking, candidate, ax), _SIZE, kind="png")
    words = escape(f"{name}: {clip(candidate.circuit.title, 200)}", quote=True)
    return f'<img style="max-width:100%" alt="{words}" src="{source}">'
