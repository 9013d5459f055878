"""Rankings made anew: a slider that is moved, and the demo again and again."""

from __future__ import annotations

import itertools
from collections.abc import Callable

import clock
import heatmatch as hm
import jobs
from clock import Line, duration, goal, ratio_of

Ranked = Callable[[bool], clock.Work]


def _line(job: str, once: Ranked, rounds: int, exact_rounds: int, most_s: float) -> Line:
    """One job, beside the same with every hour of the weather."""
    both = {"ours": once(False), "exact": once(True)}
    median = clock.median_in_turn(both, exact_rounds)
    ours = clock.median_in_turn({"ours": once(False)}, rounds)["ours"]
    return Line(
        f"{job}; median of {rounds}",
        duration(ours),
        f"{duration(median['exact'])} (the same with exact_weather=True)",
        ratio_of(median["exact"], median["ours"]),
        goal(ours / most_s, duration(most_s)),
    )


def lines(rounds: int, exact_rounds: int) -> list[Line]:
    """The demo with all elements at another record low each time; the demo itself."""
    catalog, demo, weather = hm.Catalog.starter(), hm.demo(), jobs.demo_weather()
    moved = list(itertools.islice(jobs.slider_positions(), rounds))
    positions = itertools.cycle(moved)
    pairings = hm.rank(catalog, moved[0], weather, top=20, keep_rejected=20).evaluated

    def slider(exact: bool) -> clock.Work:
        few = {"top": 20, "keep_rejected": 20}
        return lambda: hm.rank(catalog, next(positions), weather, exact_weather=exact, **few)

    def ranking(exact: bool) -> clock.Work:
        return lambda: hm.rank(catalog, demo, top=200, keep_rejected=200, exact_weather=exact)

    job = f"moving a slider: the demo, every element, {pairings:,} pairings"
    return [
        _line(job, slider, rounds, exact_rounds, 0.020),
        _line("ranking the demo, 200 kept and 200 rejected", ranking, rounds, exact_rounds, 0.035),
    ]
