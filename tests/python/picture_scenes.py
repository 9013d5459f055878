"""Installations whose pictures are looked at and measured: the demo, many elements, many groups."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from typing import Any

import heatmatch as hm
from heatmatch import plot

FIVE_GROUPS = (
    ("barn pair of the old dairy", "silicon-60-cell-245", 2),
    ("porch four", "silicon-36-cell-135", 4),
    ("thin pair", "cdte-100", 2),
    ("row behind the long greenhouse", "silicon-72-cell-330", 6),
    ("loose ones", "silicon-60-cell-275", 3),
)


def forty_elements(starter: hm.Catalog, demo: hm.Installation) -> hm.Installation:
    """The demo with forty kinds of elements."""
    names = itertools.islice(starter.elements, 40)
    return demo.replace({"elements": [hm.AllowedElements(element=name, count=4) for name in names]})


def five_groups(starter: hm.Catalog, demo: hm.Installation) -> hm.Installation:
    """The demo with five groups of panels, two of them with long names."""
    plain = demo.to_dict()
    known = list(starter.panels)
    plain["panels"] = [
        {"group": group, "panel": panel if panel in known else known[place], "count": count}
        for place, (group, panel, count) in enumerate(FIVE_GROUPS)
    ]
    plain["circuit"] = {
        "group": FIVE_GROUPS[3][0], "panels": "2S3P", "element": "storage-rod-1000-240",
        "bank": "1S4P",
    }  # fmt: skip
    return hm.Installation.from_dict(plain)


def of_ranking(ranking: hm.Ranking, units: str) -> dict[str, Callable[[], Any]]:
    """The pictures of a ranking."""
    del units
    return {
        "pareto": lambda: plot.pareto(ranking),
        "map": lambda: plot.hookup_map(ranking),
    }


def of_candidate(one: hm.Candidate, weather: hm.Weather, units: str) -> dict[str, Any]:
    """The pictures of one circuit."""
    sheet = hm.meter_sheet(one)
    return {
        "diagram": lambda: plot.hookup_diagram(one, units=units),
        "load_lines": lambda: plot.load_lines(one, units=units),
        "power": lambda: plot.power_against_ohms(one, units=units),
        "energy": lambda: plot.energy_against_ohms(one, weather),
        "months": lambda: plot.months(one),
        "hours": lambda: plot.month_by_hour(one, weather),
        "day": lambda: plot.day_power(one, weather),
        "path": lambda: plot.heat_path(one, units=units),
        "sheath": lambda: plot.sheath_by_power(one, units=units),
        "time": lambda: plot.time_to_limit(one, units=units),
        "margins": lambda: plot.margins(one, units=units),
        "meter": lambda: plot.meter_points(sheet),
    }


def of_days(one: hm.Candidate, weather: hm.Weather, units: str) -> dict[str, Any]:
    """The pictures of simulated days."""
    week = hm.simulate_day(one, weather, month=12, days=7)
    dry = hm.simulate_day(one, weather, month=12, days=7, conductivity="low")
    still = hm.simulate_stagnation(one)
    return {
        "week": lambda: plot.day_run(week, units=units)[0],
        "energy of days": lambda: plot.day_energy(week),
        "stores": lambda: plot.compare_days({"typical": week, "dry": dry}, units=units)[0],
        "stagnation": lambda: plot.stagnation(still, units=units),
    }


def _not_drawn(figure: Any) -> set[int]:
    """Labels of ticks outside the limits of their axis: they exist, but are not drawn."""
    hidden = set()
    for ax in figure.axes:
        for axis in (ax.xaxis, ax.yaxis):
            low, high = sorted(axis.get_view_interval())
            for tick in axis.get_major_ticks():
                if not low <= tick.get_loc() <= high:
                    hidden |= {id(tick.label1), id(tick.label2)}
    return hidden


def overlaps(figure: Any) -> list[tuple[str, str]]:
    """Pairs of texts of a drawn figure whose boxes share more than a hair; none of them turned."""
    from matplotlib.text import Text

    figure.canvas.draw()
    renderer = figure.canvas.get_renderer()
    hidden = _not_drawn(figure)
    boxes = [
        # An annotation's own extent includes its arrow.
        (text.get_text(), Text.get_window_extent(text, renderer).padded(-1.0))
        for text in figure.findobj(Text)
        if text.get_visible()
        and text.get_text().strip()
        and not text.get_rotation()
        and id(text) not in hidden
    ]
    return [
        (one, other)
        for (one, box), (other, second) in itertools.combinations(boxes, 2)
        if box.overlaps(second)
    ]
