"""The pictures of a report, as vector graphics inside the page."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from heatmatch import _library as _core
from heatmatch import plot
from heatmatch.plot.drawing import data_address
from heatmatch.plot.hookup_diagram import diagram_size
from heatmatch.plot.hookup_map import map_size
from heatmatch.text.columns import clip

# Text alternative of each picture; its numbers are in the tables.
_WORDS = {
    "hookup": "panels, wires with their devices, elements in their store, and the bond to earth",
    "curves": "I-V curves of the array at five irradiances, with operating points",
    "path": "temperatures and limits from the coil to the wall, and along the wire to the panels",
    "margins": "a bar for each margin: its headroom; below 0 the limit is exceeded",
    "months": "heat per day in each month, within the energy available from the panels",
    "energy": "heat of the season over the resistance of the bank, with this bank and the best one",
    "hours": "power into the elements for each hour of the day in each month",
    "day": "power into the elements on a clear, an average and a dull day of one month",
    "days": "power, temperatures of store and space, and their limits, over a week",
    "front": "heat of the season over the smallest headroom; larger dots: higher price",
    "map": "heat of the season for each hook-up of panels and each element with its best bank",
}

# Pictures whose texts differ between the unit sets.
_OF_UNITS = ("hookup", "curves", "path", "margins", "days")


@dataclass(frozen=True)
class Picture:
    """A picture with its heading and its text alternative."""

    key: str
    title: str
    words: str
    sources: dict[str, str]  #: unit set, or "both", to a data: address


def pictures(
    candidate: _core.Candidate,
    ranking: _core.Ranking | None,
    weather: _core.Weather | None,
    run: _core.DayRun | None,
) -> dict[str, Picture]:
    """All pictures of one circuit possible with the known data, by name."""
    wide, tall = (9.6, 4.4), (9.6, 6.0)
    wanted: list[tuple[str, str, Callable[[Any, str], object], tuple[float, float], int]] = [
        (
            "curves", "Current and voltage",
            lambda ax, units: plot.load_lines(candidate, units=units, ax=ax), wide, 1,
        ),
        (
            "path", "From bed to wire",
            lambda ax, units: plot.heat_path(candidate, units=units, ax=ax), wide, 1,
        ),
        (
            "margins", "Margins",
            lambda ax, units: plot.margins(candidate, units=units, ax=ax), tall, 1,
        ),
        ("months", "Months", lambda ax, _: plot.months(candidate, ax=ax), (9.6, 2.6), 1),
    ]  # fmt: skip
    if weather is not None:
        wanted += [
            (
                "energy", "Season over resistance",
                lambda ax, _: plot.energy_against_ohms(candidate, weather, ax=ax), wide, 1,
            ),
            (
                "hours", "Hours of the year",
                lambda ax, _: plot.month_by_hour(candidate, weather, ax=ax), wide, 1,
            ),
            ("day", "Three days", lambda ax, _: plot.day_power(candidate, weather, ax=ax), wide, 1),
        ]  # fmt: skip
    if run is not None:
        wanted.append(
            ("days", "A week", lambda axes, units: plot.day_run(run, units=units, axes=axes),
             (9.6, 8.0), 3)
        )  # fmt: skip
    if ranking is not None:
        wanted += [
            ("front", "Trade-offs", lambda ax, _: plot.pareto(ranking, ax=ax), wide, 1),
            (
                "map", "Every hook-up and element",
                lambda ax, _: plot.hookup_map(ranking, ax=ax), map_size(ranking), 1,
            ),
        ]  # fmt: skip
    return {one[0]: _picture(candidate, *one) for one in wanted}


def drawing(circuits: list[_core.Candidate]) -> Picture:
    """The drawing of all circuits."""
    return _picture(
        circuits[0], "hookup", "Hook-up",
        lambda ax, units: plot.hookup_diagram(circuits, units=units, ax=ax),
        diagram_size(circuits), 1,
    )  # fmt: skip


def _picture(
    candidate: _core.Candidate,
    key: str,
    title: str,
    draw: Callable[[Any, str], object],
    size: tuple[float, float],
    rows: int,
) -> Picture:
    """One picture, in both unit sets where they differ."""
    sets = ("si", "us") if key in _OF_UNITS else ("both",)
    try:
        sources = {
            units: data_address(_with(draw, units), size, kind="svg", rows=rows) for units in sets
        }
    except Exception as error:  # the rest of the page is still useful
        return Picture(key, title, f"{title}: not drawn: {error}"[:300], {})
    words = f"{title}: {_WORDS[key]}. {clip(candidate.circuit.title, 120)}"
    return Picture(key, title, words, sources)


def _with(draw: Callable[[Any, str], object], units: str) -> Callable[[Any], object]:
    return lambda ax: draw(ax, units)
