"""The pictures of a report, as vector graphics inside the page."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from heatmatch import _library as _core
from heatmatch import plot
from heatmatch.plot.drawing import data_address
from heatmatch.text.bank import element_name
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

_CELSIUS = ("curves", "path", "margins", "days")


@dataclass(frozen=True)
class Picture:
    """A picture with its heading and its text alternative."""

    key: str
    title: str
    words: str
    source: str  #: a data: address
    celsius: bool  #: it shows temperatures, which plots have in degrees Celsius


def _map_height(ranking: _core.Ranking) -> float:
    """Inches for the map, so that the two lines of each cell fit."""
    everyone = [*ranking, *ranking.rejected]
    rows = min(25, len({element_name(candidate.circuit) for candidate in everyone}))
    return 2.4 + 0.36 * rows


def pictures(
    candidate: _core.Candidate,
    ranking: _core.Ranking | None,
    weather: _core.Weather | None,
    run: _core.DayRun | None,
) -> dict[str, Picture]:
    """All pictures possible with the known data, by name."""
    wide, tall = (9.6, 4.4), (9.6, 6.4)
    wanted: list[tuple[str, str, Callable[[Any], object], tuple[float, float], int]] = [
        ("hookup", "Hook-up", lambda ax: plot.hookup_diagram(candidate, ax=ax), (10.5, 5.0), 1),
        ("curves", "Current and voltage", lambda ax: plot.load_lines(candidate, ax=ax), wide, 1),
        ("path", "From bed to wire", lambda ax: plot.heat_path(candidate, ax=ax), wide, 1),
        ("margins", "Margins", lambda ax: plot.margins(candidate, ax=ax), tall, 1),
        ("months", "Months", lambda ax: plot.months(candidate, ax=ax), wide, 1),
    ]
    if weather is not None:
        wanted += [
            (
                "energy", "Season over resistance",
                lambda ax: plot.energy_against_ohms(candidate, weather, ax=ax), wide, 1,
            ),
            (
                "hours", "Hours of the year",
                lambda ax: plot.month_by_hour(candidate, weather, ax=ax), wide, 1,
            ),
            ("day", "Three days", lambda ax: plot.day_power(candidate, weather, ax=ax), wide, 1),
        ]  # fmt: skip
    if run is not None:
        wanted.append(("days", "A week", lambda axes: plot.day_run(run, axes=axes), (9.6, 8.0), 3))
    if ranking is not None:
        wanted += [
            ("front", "Trade-offs", lambda ax: plot.pareto(ranking, ax=ax), wide, 1),
            (
                "map", "Every hook-up and element",
                lambda ax: plot.hookup_map(ranking, ax=ax), (9.6, _map_height(ranking)), 1,
            ),
        ]  # fmt: skip
    made = {}
    for key, title, draw, size, rows in wanted:
        try:
            source = data_address(draw, size, kind="svg", rows=rows)
        except Exception as error:  # the rest of the page is still useful
            made[key] = Picture(key, title, f"{title}: not drawn: {error}"[:300], "", False)
            continue
        words = f"{title}: {_WORDS[key]}. {clip(candidate.circuit.title, 120)}"
        made[key] = Picture(key, title, words, source, key in _CELSIUS)
    return made
