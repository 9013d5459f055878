"""How soon the explorer follows a slider, and how soon it is there.

Run with ``.venv/bin/python -m pytest tests/bench/bench_explorer.py --benchmark-enable -s``; the
last test prints a table beside the goals: 100 ms from a slider to the table, 2 s to the first
picture.
There is no peer that does the same: beside each stands ranking the changed installation anew.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from itertools import cycle
from typing import Any

import clock
import heatmatch as hm
import pytest

pytest.importorskip("ipywidgets")

SLIDERS = {
    "tilt_deg": (45.0, 50.0, 55.0, 60.0),
    "sun_pct": (80.0, 85.0, 90.0, 95.0, 100.0, 105.0, 110.0),
    "length_m": (8.0, 12.0, 16.0, 20.0),
    "k20_w_mk": (0.2, 0.22, 0.24, 0.26, 0.28, 0.3, 0.32, 0.34, 0.36, 0.38),
    "record_low_c": (-30.0, -20.0, -10.0),
}
FIRST = """\
import time
began = time.perf_counter()
import heatmatch as hm
panel = hm.explore(hm.Catalog.starter(), hm.demo())
assert panel.shown.value.startswith("<img")
print(time.perf_counter() - began)
"""


def panel_without_pictures() -> Any:
    """A panel whose pictures wait, as they do in a notebook while sliders move."""
    panel = hm.explore(hm.Catalog.starter(), hm.demo())
    panel._later = lambda work: None
    return panel


@pytest.mark.parametrize("name", SLIDERS)
def test_slider_to_table(benchmark: Callable[..., Any], name: str) -> None:
    panel = panel_without_pictures()
    values = cycle(SLIDERS[name])
    slider = panel.controls.sliders[name].slider

    def move() -> str:
        slider.value = next(values)
        return str(panel.table.value)

    assert "<table" in benchmark(move)


def test_print_sliders_and_first_paint(capsys: pytest.CaptureFixture[str]) -> None:
    panel = panel_without_pictures()
    lines = [
        f"Measured {clock.machine()}.",
        "",
        "| explorer, the demo | slowest | median | ranked anew | goal |",
    ]
    lines.append("| --- | ---: | ---: | ---: | --- |")
    for name, values in SLIDERS.items():
        slider = panel.controls.sliders[name].slider
        taken, anew = [], []
        for value in values:
            began = time.perf_counter()
            slider.value = value
            taken.append(time.perf_counter() - began)
            installation = panel.bench.installation(panel.choice)
            began = time.perf_counter()
            hm.rank(panel.bench.catalog, installation)
            anew.append(time.perf_counter() - began)
        lines.append(line_of(f"{name} to table, each value new", taken, anew, 0.1))
    first = [
        float(subprocess.run([sys.executable, "-c", FIRST], capture_output=True, text=True,
                             check=True).stdout)
        for _ in range(3)
    ]  # fmt: skip
    lines.append(line_of("first paint, imports and a picture with it", first, None, 2.0))
    with capsys.disabled():
        print("\n" + "\n".join(lines))


def line_of(what: str, taken: list[float], anew: list[float] | None, goal_s: float) -> str:
    """A line of the table: seconds as milliseconds, and whether the slowest meets the goal."""
    beside = "" if anew is None else f"{1e3 * statistics.median(anew):.0f} ms"
    verdict = "met" if max(taken) <= goal_s else f"missed, a factor of {max(taken) / goal_s:.2f}"
    return (
        f"| {what} | {1e3 * max(taken):.0f} ms | {1e3 * statistics.median(taken):.0f} ms "
        f"| {beside} | {1e3 * goal_s:.0f} ms: {verdict} |"
    )
