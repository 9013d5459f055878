"""The pictures of the explorer, drawn without a window and shown inside a page."""

from __future__ import annotations

import base64
import io
import warnings
from collections.abc import Callable
from html import escape
from typing import Any

from heatmatch import _core, plot
from heatmatch.explorer_choice import Choice, Workbench

_DPI = 100
_SIZE = (9.6, 4.6)


def _figure(size: tuple[float, float] = _SIZE) -> tuple[Any, Any]:
    """A figure of its own with one pair of axes."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=size, layout="constrained", dpi=_DPI)
    FigureCanvasAgg(figure)
    return figure, figure.subplots()


def image_html(figure: Any, text: str) -> str:
    """A figure as an image inside the page, with its words for those who do not see it."""
    data = io.BytesIO()
    with warnings.catch_warnings():
        warnings.filterwarnings("ignore", "Glyph .* missing")  # a box is drawn in its place
        figure.savefig(data, format="png")
    code = base64.b64encode(data.getvalue()).decode("ascii")
    return (
        f'<img style="max-width:100%" alt="{escape(text, quote=True)}" '
        f'src="data:image/png;base64,{code}">'
    )


_Draw = Callable[[Workbench, Choice, _core.Ranking, _core.Candidate, Any], object]


def _energy(
    bench: Workbench, choice: Choice, ranking: _core.Ranking, one: _core.Candidate, ax: Any
) -> object:
    del ranking
    weather = bench.weather(choice)
    if weather is None:
        ax.text(0.02, 0.9, "needs weather: give the installation its twelve months")
        ax.set_axis_off()
        return ax
    return plot.energy_against_ohms(one, weather, ax=ax)


def _map(
    bench: Workbench, choice: Choice, ranking: _core.Ranking, one: _core.Candidate, ax: Any
) -> object:
    del ranking, one
    return plot.hookup_map(bench.rank(choice, top=2000, keep_rejected=5000), ax=ax)


PICTURES: dict[str, _Draw] = {
    "amperes, volts and load line": lambda b, c, r, one, ax: plot.load_lines(one, ax=ax),
    "power against ohms": lambda b, c, r, one, ax: plot.power_against_ohms(one, ax=ax),
    "season against ohms": _energy,
    "months": lambda b, c, r, one, ax: plot.months(one, ax=ax),
    "how hot from bed to wire": lambda b, c, r, one, ax: plot.heat_path(one, ax=ax),
    "margins": lambda b, c, r, one, ax: plot.margins(one, ax=ax),
    "what trades for what": lambda b, c, r, one, ax: plot.pareto(r, ax=ax),
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
    figure, ax = _figure()
    PICTURES[name](bench, choice, ranking, candidate, ax)
    return image_html(figure, f"{name}: {candidate.circuit.title}")
