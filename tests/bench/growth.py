"""How time grows with the number of panels and with the rows of the weather."""

from __future__ import annotations

from typing import Any

import clock
import heatmatch as hm
import jobs
from clock import Line, duration


def _line(what: str, each: dict[int, float], unit: str, judged: bool = True) -> Line:
    """Time per thing at growing numbers; the ratio of the ends is 1 where growth is linear."""
    few, many = min(each), max(each)
    growth = each[many] / each[few]
    linear = 1.25  # what chance may add
    return Line(
        f"growth: {what}",
        f"{duration(each[many])} a {unit} at {many:,}",
        ", ".join(
            f"{duration(each[count])} at {count:,}" for count in sorted(each) if count < many
        ),
        f"{growth:.2f}",
        f"linear (1) or better: {'met' if growth <= linear else 'missed'}" if judged else "",
    )


def of_panels(runs: list[dict[str, Any]]) -> list[Line]:
    """Time per panel of a ranking of more and more panels, drawn at random from the list."""
    wall: dict[int, float] = {}
    cpu: dict[int, float] = {}
    for run in runs:
        count = run["panels"]
        wall[count] = min(wall.get(count, float("inf")), run["wall_s"] / count)
        cpu[count] = min(cpu.get(count, float("inf")), run["cpu_s"] / count)
    width = runs[0]["width"]
    return [
        # Other programs lengthen it: processor time is judged.
        _line(f"ranking more listed modules; {width}", wall, "module", judged=False),
        _line(f"the same in processor time; {width}", cpu, "module"),
    ]


def of_rows(finer: tuple[int, ...], rounds: int) -> list[Line]:
    """Time per row of taking in weather and ranking the demo with it once."""
    catalog, installation = hm.Catalog.starter(), next(jobs.slider_positions())
    columns = {times: (*jobs.finer_columns(times), jobs.months(times)) for times in finer}

    def job(times: int) -> clock.Work:
        sun, cell, month = columns[times]

        def take_in_and_rank() -> hm.Ranking:
            weather = hm.Weather.from_plane(sun, cell, 1.0 / times, month=month)
            return hm.rank(catalog, installation, weather, top=20, keep_rejected=20)

        return take_in_and_rank

    best = clock.best_in_turn({str(times): job(times) for times in finer}, rounds)
    each = {columns[times][0].size: best[str(times)] / columns[times][0].size for times in finer}
    many, few = (columns[times][0].size for times in (max(finer), min(finer)))
    more = (best[str(max(finer))] - best[str(min(finer))]) / (many - few)
    line = _line("weather of more rows, taken in, condensed and ranked with once", each, "row")
    line.ours += f"; each further row {duration(max(more, 0.0))}"
    return [line]
